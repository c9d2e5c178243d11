"""Elevation models: raster layers whose heights are read through GDAL, window by window, in metres."""

import re
from dataclasses import dataclass

import numpy as np
from osgeo import gdal
from qgis.core import QgsCoordinateReferenceSystem

from ..plan.elevations import UNITS_M, heights_m
from ..plan.extent import Extent
from .crs import on_earth, transformed, wgs84
from .parameters import blank
from .translation import tr

COLOURS = (gdal.GCI_PaletteIndex, gdal.GCI_RedBand, gdal.GCI_GreenBand, gdal.GCI_BlueBand, gdal.GCI_AlphaBand)


@dataclass(frozen=True)
class Source:
    """What a raster layer says of itself, taken in the thread that the layer belongs to.

    `no_data` holds the ranges of values, ends included, that the layer's properties name as no data beside what the file says.
    """

    name: str
    file: str
    options: tuple
    crs: QgsCoordinateReferenceSystem
    band: int
    no_data: tuple


def source_of(algorithm, parameters, context):
    """The elevation model that the parameters name, or None where none is named.

    Raises
    ------
    ValueError
        With a sentence, where no heights can be read from it.
    """
    if algorithm.parameterDefinition("DEM") is None or blank(parameters.get("DEM")):
        return None
    layer = algorithm.parameterAsRasterLayer(parameters, "DEM", context)
    if layer is None or not layer.isValid():
        raise ValueError(tr("DEM: there is no raster that can be read. Choose an elevation model, or leave it blank."))
    if layer.providerType() != "gdal":
        raise ValueError(
            tr("DEM: '{name}' is no file but comes from '{provider}'. Export it to a GeoTIFF first, and choose that.").format(
                name=layer.name(), provider=layer.providerType()
            )
        )
    if not layer.crs().isValid():
        raise ValueError(
            tr("DEM: '{name}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.").format(name=layer.name())
        )
    if not on_earth(layer.crs()):
        raise ValueError(
            tr("{name}: the CRS of '{layer}' ({crs}) is one of another body than the Earth. Choose another layer, or set its CRS.").format(
                name="DEM", layer=layer.name(), crs=layer.crs().userFriendlyIdentifier()
            )
        )
    band = algorithm.parameterAsInt(parameters, "DEM_BAND", context)
    if not 1 <= band <= layer.bandCount():
        raise ValueError(
            tr("DEM_BAND is {band}, but the bands of '{name}' are numbered 1 to {last}. Choose one of them.").format(
                band=band, name=layer.name(), last=layer.bandCount()
            )
        )
    file, *rest = re.split(r"\|(?=option:|authcfg=|credential:)", layer.dataProvider().dataSourceUri())
    options = tuple(part[len("option:") :] for part in rest if part.startswith("option:"))
    no_data = tuple((part.min(), part.max()) for part in layer.dataProvider().userNoDataValues(band))
    return Source(layer.name(), file, options, layer.crs(), band, no_data)


def files_of(source):
    """Files that a raster is read from; more than one where it is a mosaic of others."""
    dataset = None if source is None else gdal.OpenEx(source.file, gdal.OF_RASTER, open_options=list(source.options))
    return [] if dataset is None else dataset.GetFileList() or []


class Raster:
    """Heights of an elevation model, to be read in windows.

    Attributes
    ----------
    extent : Extent
        Its cells on the Earth.
    unit_m : float
        Length of its vertical unit. [m]
    unit_told : str or None
        None where the file says nothing of that unit, or nothing that is known.
    impossible : int
        Heights read so far that no ground has: taken as not known.

    Raises
    ------
    ValueError
        With a sentence, where no heights can be read from it.
    """

    def __init__(self, source, transform_context):
        self._source, self.impossible = source, 0
        self._dataset = self._opened()
        self._band = self._dataset.GetRasterBand(source.band)
        if self._band.GetColorInterpretation() in COLOURS:
            raise ValueError(
                tr("DEM: band {band} of '{name}' holds colours, not heights. Choose another DEM_BAND, or another raster.").format(
                    band=source.band, name=source.name
                )
            )
        self._every_cell_known = bool(self._band.GetMaskFlags() & gdal.GMF_ALL_VALID)
        self._scale, self._offset = self._band.GetScale(), self._band.GetOffset()
        self.unit_m, self.unit_told = self._unit()
        self.extent = Extent(
            self._dataset.RasterYSize,
            self._dataset.RasterXSize,
            self._transform(),
            lambda lon_deg, lat_deg: transformed(lon_deg, lat_deg, wgs84(), source.crs, transform_context),
        )

    @property
    def name(self):
        return self._source.name

    def read(self, row, col, rows, cols):
        """Heights of a window, nan where not known, shape (rows, cols). [m]."""
        window = int(col), int(row), int(cols), int(rows)
        heights = self._values(self._band, window, gdal.GDT_Float64, "<f8").copy()
        if not self._every_cell_known:
            heights[self._values(self._band.GetMaskBand(), window, gdal.GDT_Byte, "u1") == 0] = np.nan
        heights, impossible = heights_m(heights, self._scale, self._offset, self._source.no_data, self.unit_m)
        self.impossible += impossible
        return heights

    def warn_of_impossible(self, feedback):
        """Tell how many heights were taken as not known, if any were."""
        if self.impossible:
            feedback.pushWarning(
                tr("DEM '{name}': {n:,} heights that no ground has, such as -9999, are taken as not known.").format(
                    name=self.name, n=self.impossible
                )
            )

    def _opened(self):
        try:
            dataset = gdal.OpenEx(self._source.file, gdal.OF_RASTER, open_options=list(self._source.options))
        except RuntimeError:  # only where someone has switched GDAL's exceptions on
            dataset = None
        if dataset is None:
            raise ValueError(tr("DEM: '{file}' cannot be opened. Is it still there?").format(file=self._source.file))
        return dataset

    def _transform(self):
        """GDAL's six numbers; straight from the file, since QGIS shows a rotated raster as a warped one."""
        transform = self._dataset.GetGeoTransform(can_return_null=True)
        if transform is None:
            raise ValueError(
                tr("DEM: '{name}' has no georeference, or one by control points alone. Warp it to a map first.").format(name=self.name)
            )
        return transform

    def _unit(self):
        """Length of the vertical unit, by the band or else by the CRS, and its name; metres and None where neither tells."""
        told = self._band.GetUnitType()
        if told.strip().lower() in UNITS_M:
            return UNITS_M[told.strip().lower()], told
        crs = self._dataset.GetSpatialRef()
        if crs is not None and (crs.IsCompound() or crs.IsVertical()):
            return crs.GetTargetLinearUnits("VERT_CS"), crs.GetAttrValue("VERT_CS|UNIT")
        return 1.0, None

    def _values(self, band, window, kind, letter):
        try:
            raw = band.ReadRaster(*window, buf_type=kind)
        except RuntimeError:
            raw = None
        if raw is None:
            raise ValueError(
                tr("DEM: '{name}' cannot be read at column {col}, row {row}: the file is damaged or cut short. Get it anew.").format(
                    name=self.name, col=window[0], row=window[1]
                )
            )
        return np.frombuffer(raw, dtype=letter).reshape(window[3], window[2])
