"""Sky exposure of a tile of an elevation model: the raster that `sky_exposure` writes, in pieces, and one file that shows them as one."""

import html
import os
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Optional

import numpy as np

from ..plan import plots
from ..plan.exposure import Overview, Tile, exposure, sky_over, windows_for
from ..plan.sky_paths import Positions
from .partitions import give_name, part_of, path_of
from .rasters import Affine, MemoryFile, own_projections
from .terrain import Dem, Ground

NO_DATA = -9999.0
BLOCK = 128  # cells along the side of a block of a file
MOSAIC, OVERVIEW = "exposure.vrt", "overview.npy"
# a VRT of GDAL
RASTER = """\
<VRTDataset rasterXSize="{area.cols}" rasterYSize="{area.rows}">
<SRS>{wkt}</SRS>
<GeoTransform>{transform}</GeoTransform>
{bands}</VRTDataset>
"""
BAND = """\
<VRTRasterBand dataType="Float32" band="{number}">
<Description>{name}</Description>
<UnitType>min</UnitType>
<NoDataValue>{no_data}</NoDataValue>
{sources}</VRTRasterBand>
"""
SOURCE = """\
<SimpleSource>
<SourceFilename relativeToVRT="1">{file}</SourceFilename>
<SourceBand>{number}</SourceBand>
<SrcRect xOff="0" yOff="0" xSize="{tile.cols}" ySize="{tile.rows}"/>
<DstRect xOff="{col}" yOff="{row}" xSize="{tile.cols}" ySize="{tile.rows}"/>
</SimpleSource>
"""


@dataclass(frozen=True)
class TileBlock:
    """A tile, its middle [deg] and the positions of the body over that."""

    tile: Tile
    lon_deg: float
    lat_deg: float
    positions: Positions


@dataclass(frozen=True)
class TileBlocks:
    """The tiles of an area."""

    area: Tile
    tiles: list
    lon_deg: np.ndarray
    lat_deg: np.ndarray
    paths: list

    def __len__(self):
        return len(self.tiles)

    def take(self, number):
        """The block of a number."""
        return TileBlock(self.tiles[number], self.lon_deg[number], self.lat_deg[number], self.paths[number])


@dataclass(frozen=True)
class Exposure:
    """What is asked of every tile.

    Attributes
    ----------
    overview : plan.exposure.Overview
        Of the ground beyond the tiles; without its heights once they are `stored`.
    how : dict
        For `plan.exposure.sky_over`.
    bands : list of str
        What they are called.
    heights_file : Path, optional
        Of the overview.
    """

    outputs = ("exposure",)
    ending, counted = ".tif", "cells"
    dem: Dem
    overview: Overview
    how: dict
    bands: list
    heights_file: Optional[Path] = None

    def stored(self, folder):
        """The same with the heights of its overview in a file, so that megabytes do not go along with every tile."""
        file, window = folder / OVERVIEW, self.overview.window
        part = part_of(file)
        with open(part, "wb") as opened:
            np.save(opened, window.heights_m)
        give_name(part, file)
        return replace(self, overview=self.overview._replace(window=window._replace(heights_m=None)), heights_file=file)

    def sinks(self, folder, number):
        """The file of a tile, by the name of its output."""
        return {"exposure": TileFile(path_of(folder, "exposure", number, self.ending), self.bands)}

    @staticmethod
    def told(block):
        """Which block it is, in words."""
        return f"{block.tile.rows:,} x {block.tile.cols:,} cells from row {block.tile.row:,}, column {block.tile.col:,}"

    def fill(self, block, sinks):
        """Write the minutes of a tile."""
        ground = Ground(self.dem)
        grid = ground.extent.grid
        overview = self.overview
        if self.heights_file is not None:
            overview = overview._replace(window=overview.window._replace(heights_m=_heights(self.heights_file)))
        sky = sky_over(grid, block.lon_deg, block.lat_deg, block.positions, **self.how)
        windows = windows_for(block.tile, sky, overview, ground.read)
        minutes = exposure(block.tile, windows, sky, threads=1)  # the other cores have workers of their own
        sinks["exposure"].write(minutes, plots.transform_from(grid, block.tile.row, block.tile.col), ground.wkt)
        ground.close()


@lru_cache(maxsize=1)
def _heights(file):
    return np.load(file)


class TileFile:
    """A GeoTIFF of minutes a night, there whole or not at all; `rows` are its cells."""

    def __init__(self, path, bands):
        self.path, self.rows, self._part, self._bands = path, 0, part_of(path), bands

    def write(self, minutes, transform, wkt):
        """Write minutes, shape (bands, rows, cols), nan where nothing is known."""
        bands, rows, cols = minutes.shape
        profile = {"driver": "GTiff", "width": cols, "height": rows, "count": bands, "dtype": "float32", "nodata": NO_DATA, "crs": wkt}
        profile.update(tiled=True, blockxsize=BLOCK, blockysize=BLOCK, compress="DEFLATE", predictor=3)
        with own_projections(), MemoryFile() as memory:  # what GDAL cannot write when it closes a file on a full disk it does not tell
            with memory.open(transform=Affine.from_gdal(*transform), **profile) as file:
                file.write(np.where(np.isfinite(minutes), minutes, NO_DATA).astype(np.float32))
                file.descriptions, file.units = self._bands, ["min"] * bands
            self._part.write_bytes(memory.read())
        self.rows = rows * cols

    def close(self):
        """Give the file its name."""
        give_name(self._part, self.path)

    def abandon(self):
        """Leave nothing of it, if it has no name yet."""
        self._part.unlink(missing_ok=True)


def write_mosaic(folder, area, tiles, transform, wkt, bands):
    """Write a raster that shows the tiles of an area as one: a GDAL VRT, which names their files.

    Parameters
    ----------
    folder : Path
        Of the run.
    area : Tile
    tiles : list of Tile
    transform : sequence of 6 floats
        Of the area.
    wkt : str
    bands : list of str
    """
    files = [path_of(folder, "exposure", number, Exposure.ending).relative_to(folder).as_posix() for number in range(len(tiles))]
    shown = ""
    for number, name in enumerate(bands, start=1):
        places = ((file, tile, tile.row - area.row, tile.col - area.col) for file, tile in zip(files, tiles))
        sources = "".join(SOURCE.format(file=file, number=number, tile=tile, row=row, col=col) for file, tile, row, col in places)
        shown += BAND.format(number=number, name=html.escape(name), no_data=NO_DATA, sources=sources)
    numbers = ", ".join(repr(float(number)) for number in transform)
    mosaic = RASTER.format(area=area, wkt=html.escape(wkt), transform=numbers, bands=shown)
    part = part_of(folder / MOSAIC)
    part.write_text(mosaic, encoding="utf-8")
    os.replace(part, folder / MOSAIC)
