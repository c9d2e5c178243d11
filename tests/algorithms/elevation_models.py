"""Elevation models whose heights follow from a formula, written as files for the tests that read them."""

import numpy as np
from osgeo import gdal, osr

UTM = "EPSG:32625"  # central meridian 33° W, true to 0.9996 on it
SCALE = 0.9996
EAST, NORTH = 500_000.0, 3_985_000.0  # a place on that meridian, near 36° N
CELL_M = 10.0


def write(path, bands, transform, crs=UTM, *, kind=gdal.GDT_Float32, nodata=None, unit="m", scale=None, offset=None, mask=None, options=()):
    """Write one band (rows, cols) or several as a GeoTIFF; its path as text."""
    bands = np.atleast_3d(np.asarray(bands, dtype=float).T).T
    dataset = gdal.GetDriverByName("GTiff").Create(str(path), bands.shape[2], bands.shape[1], bands.shape[0], kind, list(options))
    if transform is not None:
        dataset.SetGeoTransform(transform)
    if crs:
        reference = osr.SpatialReference()
        reference.SetFromUserInput(crs)
        dataset.SetProjection(reference.ExportToWkt())
    for number, values in enumerate(bands, start=1):
        band = dataset.GetRasterBand(number)
        if nodata is not None:
            band.SetNoDataValue(nodata)
        if unit:
            band.SetUnitType(unit)
        if scale is not None:
            band.SetScale(scale)
        if offset is not None:
            band.SetOffset(offset)
        rows, cols = values.shape
        band.WriteRaster(0, 0, cols, rows, values.astype("<f8").tobytes(), buf_type=gdal.GDT_Float64)
    if mask is not None:
        dataset.CreateMaskBand(gdal.GMF_PER_DATASET)
        values = np.where(mask, 255, 0).astype("u1")
        dataset.GetRasterBand(1).GetMaskBand().WriteRaster(0, 0, values.shape[1], values.shape[0], values.tobytes())
    dataset = None
    return str(path)


def around(height_m, half_m=5000.0, cell_m=CELL_M):
    """Heights and transform of a square about (EAST, NORTH) in UTM, by a function of metres east and north of it."""
    count = int(2 * half_m / cell_m)
    middle = (np.arange(count) + 0.5) * cell_m - half_m
    heights = np.broadcast_to(height_m(middle[None, :], -middle[:, None]), (count, count))
    return heights, (EAST - half_m, cell_m, 0.0, NORTH + half_m, 0.0, -cell_m)
