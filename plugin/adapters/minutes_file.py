"""A GeoTIFF of minutes a night, written tile by tile: there whole, with its style beside it, or as it was before."""

import os
import shutil
import xml.etree.ElementTree as ElementTree  # nosec B405 # reads the plugin's own style alone
from pathlib import Path

import numpy as np
from osgeo import gdal
from qgis.core import QgsProcessingException, QgsProcessingLayerPostProcessorInterface, QgsRasterLayer

from ..names import PROVIDER_ID
from .files import write_whole
from .looks import STYLES
from .translation import tr

NO_DATA = -9999.0
BLOCK = 128  # cells along the side of a block of the file
OPTIONS = ("TILED=YES", f"BLOCKXSIZE={BLOCK}", f"BLOCKYSIZE={BLOCK}", "COMPRESS=DEFLATE", "PREDICTOR=3", "BIGTIFF=IF_SAFER")
STEPS_MIN = (6, 12, 30, 60, 90, 120, 150, 180, 240)  # of the legend, so that it tells round numbers of hours
BYTES = 4  # a cell

_dressers = {}  # by layer: QGIS holds no reference to a post-processor, and without one it is gone before it is called


class MinutesFile:
    """A raster under a temporary name, until `finish`; `drop` removes it, and does nothing after that.

    Parameters
    ----------
    path : str
    rows, cols : int
    transform : sequence of 6 floats
        As GDAL gives it.
    crs : QgsCoordinateReferenceSystem
    bands : sequence of str
        What they are called.

    Raises
    ------
    QgsProcessingException
        With the reason, also from `write` and `finish`.
    """

    def __init__(self, path, rows, cols, transform, crs, bands):
        self._path = Path(path)
        need, free = BYTES * rows * cols * len(bands), shutil.disk_usage(self._path.parent).free
        if need > free:
            raise QgsProcessingException(
                tr("This may write up to {need:,} MB, but {folder} has {free:,} MB left. Choose a smaller AREA, or another folder.").format(
                    need=need // 1_000_000, folder=self._path.parent, free=free // 1_000_000
                )
            )
        self._part = self._path.with_name(f".{PROVIDER_ID}-{os.getpid()}.part.tif")
        self._most, self._sums = 0.0, np.zeros(len(bands))
        self._dataset = self._done(
            lambda: gdal.GetDriverByName("GTiff").Create(str(self._part), cols, rows, len(bands), gdal.GDT_Float32, OPTIONS)
        )
        self._dataset.SetGeoTransform(transform)
        self._dataset.SetProjection(crs.toWkt())
        for number, name in enumerate(bands, start=1):
            band = self._dataset.GetRasterBand(number)
            band.SetNoDataValue(NO_DATA)
            band.SetDescription(name)
            band.SetUnitType("min")

    def write(self, row, col, minutes):
        """Write a tile, shape (bands, rows, cols), nan where nothing is known."""
        known = np.isfinite(minutes)
        self._most = max(self._most, float(minutes[known].max(initial=0.0)))
        self._sums += np.where(known, minutes, 0.0).sum(axis=(1, 2), dtype=float)
        _, rows, cols = minutes.shape
        for number, values in enumerate(np.where(known, minutes, NO_DATA).astype("<f4"), start=1):
            band = self._dataset.GetRasterBand(number)
            self._done(lambda b=band, v=values: b.WriteRaster(col, row, cols, rows, v.tobytes(), buf_type=gdal.GDT_Float32) == gdal.CE_None)
            self._done(lambda b=band: b.FlushCache() in (None, gdal.CE_None))  # else it is held until it fills a twentieth of all memory

    def finish(self):
        """Give the raster its name, and put its style beside it, with a legend that fits it."""
        self._done(lambda: self._dataset.FlushCache() in (None, gdal.CE_None))
        self._dataset = None
        style = styled(self._most, 1 + int(np.argmax(self._sums)))
        try:
            os.replace(self._part, self._path)
        except OSError as failed:
            raise self._unwritten(failed.strerror) from failed
        write_whole(self._path.with_suffix(".qml"), style)

    def drop(self):
        """Remove what is not finished."""
        self._dataset = None
        if self._part.exists():
            self._part.unlink()

    def _done(self, act):
        """What GDAL gave, if it did as it was told."""
        gdal.ErrorReset()
        try:
            result = act()
        except RuntimeError as failed:  # only where someone has switched GDAL's exceptions on
            raise self._unwritten(str(failed)) from failed
        if not result or gdal.GetLastErrorType() >= gdal.CE_Failure:
            raise self._unwritten(gdal.GetLastErrorMsg())
        return result

    def _unwritten(self, reason):
        return QgsProcessingException(tr("{path} could not be written: {reason}").format(path=self._path, reason=reason))


def styled(most_min, band):
    """The style as bytes, its legend stretched to the most minutes there are, in whole parts of hours."""
    tree = ElementTree.parse(STYLES / "sky_exposure.qml")  # nosec B314 # the plugin's own
    items = tree.findall(".//colorrampshader/item")
    steps = len(items) - 1
    step = next((step for step in STEPS_MIN if step * steps >= most_min), STEPS_MIN[-1])
    for number, item in enumerate(items):
        item.set("value", str(number * step))
        item.set("label", tr("{hours:g} h").format(hours=number * step / 60.0))
    for part, name in (("rasterrenderer", "classification"), ("rasterrenderer/rastershader/colorrampshader", "")):
        of = tree.find(f".//{part}")
        for end, value in (("Min", 0), ("Max", step * steps)):
            of.set(f"{name}{end}" if name else f"{end.lower()}imumValue", str(value))
    tree.find(".//rasterrenderer").set("band", str(band))
    head = "<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>\n"
    return (head + ElementTree.tostring(tree.getroot(), encoding="unicode") + "\n").encode()


def show(path, context):
    """Dress the raster when it arrives in the desktop: what Processing loads from a file does not ask for the style beside it."""
    if context.willLoadLayerOnCompletion(path):
        _dressers[path] = Dresser()
        context.layerToLoadOnCompletionDetails(path).setPostProcessor(_dressers[path])


class Dresser(QgsProcessingLayerPostProcessorInterface):
    """Gives a raster the style that lies beside its file."""

    def postProcessLayer(self, layer, context, feedback):
        if isinstance(layer, QgsRasterLayer):
            layer.loadDefaultStyle()
