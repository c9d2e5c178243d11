"""Elevation models as files: which ground a block of places needs, read in windows."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pyproj

from ..plan.elevations import UNITS_M, heights_m
from ..plan.extent import Extent
from ..plan.plots import middles, whole
from .memory import room_bytes
from .points import WGS84, lon_lat, require_earth, transformed
from .rasters import ColorInterp, MaskFlags, Window, own_projections, rasterio

COLOURS = (ColorInterp.palette, ColorInterp.red, ColorInterp.green, ColorInterp.blue, ColorInterp.alpha)


@dataclass(frozen=True)
class Dem:
    """An elevation model to be read, and how to look over it: arguments of `plan.relief.Relief`."""

    file: str
    band: int
    how: dict

    @property
    def radius_m(self):
        """How far skylines are looked for. [m]."""
        return self.how["radius_m"]


class Ground:
    """A raster of heights that is open.

    Attributes
    ----------
    extent : plan.extent.Extent
        What is wanted of it.
    wkt : str
        Its CRS.

    Raises
    ------
    ValueError
        With a sentence, where no heights can be read from it.
    """

    def __init__(self, dem):
        self._dem = dem
        try:
            with own_projections():
                self._file = rasterio.open(dem.file)
        except rasterio.errors.RasterioIOError as unreadable:
            raise ValueError(f"DEM: {dem.file} cannot be opened as a raster. Is it there, and on every worker?") from unreadable
        if self._file.crs is None:
            raise ValueError(f"DEM: {dem.file} has no CRS, so nobody knows where it lies. Give it one first.")
        if not 1 <= dem.band <= self._file.count:
            raise ValueError(
                f"DEM_BAND is {dem.band}, but the bands of {dem.file} are numbered 1 to {self._file.count}. Choose one of them."
            )
        if self._file.colorinterp[dem.band - 1] in COLOURS:
            raise ValueError(f"DEM: band {dem.band} of {dem.file} holds colours, not heights. Choose another band, or another raster.")
        with own_projections():
            self.wkt = self._file.crs.to_wkt()
        self._crs = pyproj.CRS.from_wkt(self.wkt)
        require_earth("DEM", dem.file, self._crs)
        transform = self._file.transform.to_gdal()
        self.extent = Extent(self._file.height, self._file.width, transform, self._to_map)

    @property
    def name(self):
        """What it is called in sentences."""
        return Path(self._dem.file).stem

    def lon_lat(self, x, y):
        """Longitude and latitude of places on its map; nan where it has none. [deg]."""
        return lon_lat(x, y, self._crs)

    def cell_m(self, area=None):
        """Sides of the cell in the middle of an area, or of all, on the ground: the shorter, the longer. [m]."""
        lon_deg, lat_deg = self.lon_lat(*middles(self.extent.grid, [area or whole(self.extent.grid)]))
        return tuple(float(side[0]) for side in self.extent.grid.cell_m(lon_deg, lat_deg))

    def relief(self):
        """What is wanted of it, as a plan takes it."""
        return self.extent.relief(self.read, **self._dem.how)

    def close(self):
        """Let go of the file."""
        self._file.close()

    def _to_map(self, lon_deg, lat_deg):
        return transformed(lon_deg, lat_deg, pyproj.CRS(WGS84), self._crs)

    def _unit_m(self):
        told = (self._file.units[self._dem.band - 1] or "").strip().lower()
        if told in UNITS_M:
            return UNITS_M[told]
        vertical = [axis for axis in self._crs.axis_info if axis.direction == "up"]
        return vertical[0].unit_conversion_factor if vertical else 1.0

    def read(self, row, col, rows, cols):
        """Heights of a window, nan where not known, shape (rows, cols). [m]."""
        band, window = self._dem.band, Window(int(col), int(row), int(cols), int(rows))
        try:
            numbers = self._file.read(band, window=window).astype(float)
            if MaskFlags.all_valid not in self._file.mask_flag_enums[band - 1]:
                numbers[self._file.read_masks(band, window=window) == 0] = np.nan
        except rasterio.errors.RasterioIOError as damaged:
            raise ValueError(f"DEM: {self._dem.file} cannot be read at column {col}, row {row}: damaged or cut short.") from damaged
        scale, offset = self._file.scales[band - 1], self._file.offsets[band - 1]
        return heights_m(numbers, scale, offset, unit_m=self._unit_m())[0]


def fill_over(ground_of, block, fill):
    """Fill in the rows of a block of points in one go, or, where its ground does not fit into memory, part by part in its order.

    Parameters
    ----------
    ground_of : callable
        From a block to a `Ground`, of which all is wanted that the block looks at.
    block : blocks.Block
    fill : callable
        Takes a part of the block, and the `plan.relief.Relief` of its ground.

    Raises
    ------
    ValueError
        With the numbers, where the ground of a single point does not fit.
    """
    ground, room = ground_of(block), room_bytes()
    need = ground.extent.bytes
    if need <= room:
        relief = ground.relief()
        ground.close()
        fill(block, relief)
        return
    ground.close()
    if len(block.points) < 2:
        raise ValueError(
            f"DEM: the ground that '{block.points.name[0]}' looks at takes {need / 1e6:,.0f} MB of memory, more than the "
            f"{room / 1e6:,.0f} MB that a worker may fill with it here. Take a shorter --terrain-radius or --max-distance, a DEM of larger "
            "cells, or fewer workers with more memory"
        )
    middle = len(block.points) // 2
    for half in (slice(None, middle), slice(middle, None)):
        fill_over(ground_of, block.take(half), fill)
