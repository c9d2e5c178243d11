"""For how many minutes a night a body can be used from each cell of an elevation model, clear of the cell's own skyline.

A raster is worked on in tiles. `exposure` makes one tile out of arrays alone, and knows nothing of files, so that tiles may be made
anywhere and in any order:

    overview = survey(region, read)                                 once: the region in coarse cells
    paths = sky_paths(places, ...)                                  a place for each tile, its middle
    sky = sky_over(grid, lon_deg, lat_deg, paths[i], lens_m)        courses of light through the raster
    windows = windows_for(tile, sky, overview, read)                the tile, its halo, and coarser ground beyond
    minutes = exposure(tile, windows, sky)                          float32 (M, rows, cols)

`read(row, col, rows, cols)` gives heights in metres, nan where not known, as in `ground.terrain.load`.
"""

from typing import NamedTuple

import numpy as np

from ..ground import curvature
from ..ground.shadows import Ground, Light, Tile, Window, coarser, half_diagonal_m, near_cells, nearer_m, reach_m
from ..words import Sentence
from .ahead import THREADS, worked_ahead

TILE_CELLS, LEAST_TILE_CELLS = 1024, 128  # along the side of a tile, the least a power of 2 as blocks of files are
TILE_BYTES = 1 << 28  # of minutes, all months together
TILE_M = 15_000.0  # one sky serves it all: at its corners the light comes from up to 0.1° beside
HALO_CELLS = 256, 1024  # beyond the tile the ground is taken cell by cell so far, in cells four times as wide so far,
FACTOR = 4
OVERVIEW = FACTOR * FACTOR  # and in cells sixteen times as wide beyond
STRIP_CELLS = 32 * OVERVIEW, 512 * OVERVIEW  # rows and cols looked over at once
AT_ONCE = 8  # positions whose light is summed up together: a bit each
SUMMED_ROWS = 64  # at once: they stay in the processor's cache


class Sky(NamedTuple):
    """What shines on a tile, and how it is looked at; plain arrays and numbers.

    `course` (2, 3, P), `nearer_m` (2, P), `alt_deg` (P,), `earth_m` (P,): light from P positions of the body, at the middle of the tile, as
    in `ground.shadows.Light`. `minutes` (P, M): what each stands for in a mean night of each month. `lens_m`, `skip_m`, `cell_m`,
    `refraction_k`: as in `ground.shadows.Ground`. `radius_m`: how far the ground is looked at.
    """

    course: np.ndarray
    nearer_m: np.ndarray
    alt_deg: np.ndarray
    earth_m: np.ndarray
    minutes: np.ndarray
    lens_m: float
    skip_m: float
    cell_m: tuple
    radius_m: float
    refraction_k: float


class Overview(NamedTuple):
    """A region of an elevation model in coarse cells, and its lowest and highest ground; inf and -inf where none is known. [m]."""

    region: Tile
    window: Window
    lowest_m: float
    highest_m: float


def tile_side(cell_m, months=1):
    """Cells along the side of a tile, for cells of that size in metres and so many months."""
    most = min(TILE_M / cell_m, np.sqrt(TILE_BYTES / (np.dtype(np.float32).itemsize * max(months, 1))))
    return int(np.clip(most // LEAST_TILE_CELLS * LEAST_TILE_CELLS, LEAST_TILE_CELLS, TILE_CELLS))


def tiles(region, side):
    """Tiles that make up a region, itself a Tile, row by row."""
    return [
        Tile(row, col, min(side, region.row + region.rows - row), min(side, region.col + region.cols - col))
        for row in range(region.row, region.row + region.rows, side)
        for col in range(region.col, region.col + region.cols, side)
    ]


def survey(region, read, progress=None):
    """Look over a region once.

    Parameters
    ----------
    region : Tile
        All ground that any tile may look at.
    read : callable
    progress : callable, optional
        Told the part that is done, 0 to 1; False from it ends the work.

    Returns
    -------
    Overview or None
        None when it was ended.
    """
    heights = np.full([-(-count // OVERVIEW) for count in region[2:]], np.nan, dtype=np.float32)
    lowest, highest = np.inf, -np.inf
    rows, cols = STRIP_CELLS
    for row in range(0, region.rows, rows):
        for col in range(0, region.cols, cols):
            part = read(region.row + row, region.col + col, min(rows, region.rows - row), min(cols, region.cols - col))
            lowest, highest = (
                float(np.fmin.reduce(part, axis=None, initial=lowest)),
                float(np.fmax.reduce(part, axis=None, initial=highest)),
            )
            means = coarser(Window(part.astype(np.float32), row, col), OVERVIEW).heights_m
            heights[row // OVERVIEW :, col // OVERVIEW :][: means.shape[0], : means.shape[1]] = means
            if progress is not None and progress((row + rows * (col + cols) / (region.cols + cols)) / (region.rows + rows)) is False:
                return None
    return Overview(region, Window(heights, region.row, region.col, OVERVIEW), lowest, highest)


def region_around(area, grid_rows, grid_cols, halo):
    """The cells within so many of an area, as far as the raster goes, as a Tile."""
    return _shared(_wider(area, halo), Tile(0, 0, grid_rows, grid_cols))


def middle_height_m(tile, overview):
    """Height of the ground about the middle of a tile, 0 where it is not known. [m]."""
    window = overview.window
    col, row = tile.middle
    height = window.heights_m[int((row - window.row) / OVERVIEW), int((col - window.col) / OVERVIEW)]
    return float(height) if np.isfinite(height) else 0.0


def sky_over(grid, lon_deg, lat_deg, positions, lens_m, skip_m=None, radius_m=40_000.0, refraction_k=curvature.REFRACTION_K):
    """What shines on a tile.

    Parameters
    ----------
    grid : ground.terrain.Grid
    lon_deg, lat_deg : float
        The middle of the tile. [deg]
    positions : sky_paths.Positions
        Of the body there.
    lens_m : float
        Above the ground. [m]
    skip_m : float, optional
        Ground nearer than this is passed over; two cells if not given. [m]
    radius_m : float
        How far the ground is looked at, or somewhat farther. [m]
    refraction_k : float

    Returns
    -------
    Sky

    Raises
    ------
    ValueError
        Near a pole, where a geographic map bends rays too much.
    """
    count = len(positions.az_deg)
    lon, lat = np.full(count, float(lon_deg)), np.full(count, float(lat_deg))
    cell_m = tuple(float(side[0]) for side in grid.cell_m(np.array([lon_deg]), np.array([lat_deg])))
    course = grid.path(lon, lat, positions.az_deg, radius_m)
    if not np.isfinite(course).all():
        raise ValueError(
            Sentence(
                "Rays of {km:g} km about latitude {lat:.1f}° are no smooth lines on the elevation model's map. Warp it to a polar map, or "
                "give a shorter TERRAIN_RADIUS.",
                km=radius_m / 1000.0,
                lat=float(lat_deg),
            )
        )
    earth_m = curvature.radius_in_azimuth(lat, positions.az_deg)
    minutes = positions.minutes / np.maximum(positions.nights, 1)
    skip = 2.0 * cell_m[1] if skip_m is None else skip_m
    nearer = nearer_m(grid, lon_deg, lat_deg, positions.az_deg)
    return Sky(course, nearer, positions.alt_deg, earth_m, minutes, lens_m, skip, cell_m, radius_m, refraction_k)


def windows_for(tile, sky, overview, read):
    """The ground that a tile needs: as many windows as its light may have met ground in.

    Parameters
    ----------
    tile : Tile
    sky : Sky
        Over it.
    overview : Overview
    read : callable

    Returns
    -------
    list of Window
    """
    near = near_cells(sky.skip_m, sky.cell_m[0]) + 2
    needed = _needed(tile, sky, overview, near)
    fine, wide = (_shared(needed, _wider(tile, max(halo, near))) for halo in HALO_CELLS)
    heights = Window(read(*wide).astype(np.float32), wide.row, wide.col)
    row, col = fine.row - wide.row, fine.col - wide.col
    windows = [Window(heights.heights_m[row : row + fine.rows, col : col + fine.cols], fine.row, fine.col)]
    if wide != fine:
        windows.append(coarser(heights, FACTOR))
    if needed != wide:
        windows.append(overview.window)
    return windows


def exposure(tile, windows, sky, progress=None, threads=THREADS):
    """Minutes of a mean night from the cells of a tile.

    Parameters
    ----------
    tile : Tile
    windows : sequence of Window
        As `windows_for` gives them.
    sky : Sky
        Over the tile.
    progress : callable, optional
        Told the part that is done, 0 to 1, several times a second; False from it ends the work.
    threads : int
        In which positions are worked on, as in `ahead.worked_ahead`; they change nothing in what comes out.

    Returns
    -------
    ndarray, shape (M, rows, cols), float32, or None
        nan where the ground is not known; None when it was ended. [min]
    """
    ground = Ground(tile, windows, sky.lens_m, sky.skip_m, sky.cell_m, sky.refraction_k)
    positions = range(len(sky.alt_deg) if ground.known.any() else 0)

    def lit(i, _):
        return ground.lit(Light(sky.course[..., i], sky.nearer_m[:, i], sky.alt_deg[i], sky.earth_m[i]))

    def go_on(i):
        return progress is None or progress(i / len(positions)) is not False

    minutes = np.zeros((sky.minutes.shape[1], tile.rows, tile.cols), dtype=np.float32)
    bits = np.zeros((tile.rows, tile.cols), dtype=np.uint8)
    done = 0
    for i, cells in worked_ahead(lit, positions, go_on, threads):
        bits |= cells.view(np.uint8) << np.uint8(i % AT_ONCE)
        done = i + 1
        if done % AT_ONCE == 0 or done == len(positions):
            _sum_up(minutes, bits, sky.minutes[i - i % AT_ONCE : done])
            bits[:] = 0
    if done < len(positions):
        return None
    minutes[:, ~ground.known] = np.nan
    return minutes


def _sum_up(minutes, bits, worth):
    """Add to minutes (M, rows, cols) what each of up to 8 positions is worth, (P, M), where its bit is set."""
    held = np.unpackbits(np.arange(1 << AT_ONCE, dtype=np.uint8)[:, None], axis=1, bitorder="little")[:, : len(worth)]
    sums = (held @ worth).T.astype(np.float32)
    for first in range(0, len(bits), SUMMED_ROWS):
        rows = slice(first, first + SUMMED_ROWS)
        which = bits[rows].astype(np.intp)
        for month, sum_ in zip(minutes, sums):
            month[rows] += sum_.take(which, mode="clip")


def _needed(tile, sky, overview, near):
    """The cells that a tile's light may have met before, of the region that is looked over."""
    rise_m = overview.highest_m - overview.lowest_m - sky.lens_m
    beside_m = half_diagonal_m(tile, sky.cell_m[1])
    away = np.minimum(reach_m(rise_m, sky.alt_deg, sky.earth_m, beside_m, sky.refraction_k), sky.radius_m)
    _, b, c = sky.course.swapaxes(0, 1)
    moved = np.concatenate([np.zeros((2, 1)), (c * away + b) * away], axis=1)
    (col, row), (last_col, last_row) = np.floor(moved.min(axis=1)).astype(int), np.ceil(moved.max(axis=1)).astype(int)
    around = Tile(tile.row + row, tile.col + col, tile.rows + last_row - row, tile.cols + last_col - col)
    return _shared(_wider(around, near), overview.region)


def _wider(tile, cells):
    return Tile(tile.row - cells, tile.col - cells, tile.rows + 2 * cells, tile.cols + 2 * cells)


def _shared(one, other):
    """The cells of both."""
    row, col = max(one.row, other.row), max(one.col, other.col)
    rows = min(one.row + one.rows, other.row + other.rows) - row
    cols = min(one.col + one.cols, other.col + other.cols) - col
    return Tile(row, col, rows, cols)
