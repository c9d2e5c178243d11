"""Layers too large for one desk: blocks of sites and tiles of terrain, worked out without QGIS on the machines of a Dask cluster."""
