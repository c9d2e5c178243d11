"""Heights of the ground from an elevation model held once in memory.

Heights in metres; longitudes (any turn), latitudes and bearings in degrees. The raster's own coordinate system enters as a function from
longitude and latitude to map coordinates, so that one code serves metres, feet and degrees. Positions in the raster are counted in cells
from the centre of the first one: `col` along the rows, `row` across them. Where a height is not known it is nan.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import Callable

import numpy as np

from ..words import Sentence
from . import geodesic

BLOCK_BITS = 9
BLOCK = 1 << BLOCK_BITS  # cells along a side of the blocks in which heights are held: a megabyte each
POLAR_DEG = 80.0  # latitude beyond which courses on cylindrical maps are looked at once more
PROBE_M = 50.0  # over which the size of a cell is measured
NEAREST_M = 1.0  # ground nearer to the lens is never looked at: its altitude is a height in numbers of four bytes by nearly nothing
RIM = np.arange(0.0, 360.0, 11.25)  # bearings at which a circle is drawn on the raster
RIM_MARGIN = 1.01  # between those
PATH_STEP = 64  # cells between places at which a line is looked for in blocks
AT_ONCE = 1_000_000  # places or pairs of place and block worked on together: some 50 MB


@dataclass(frozen=True)
class Grid:
    """Where the cells of a raster lie on the Earth.

    Parameters
    ----------
    rows, cols : int
    transform : sequence of 6 floats
        Map coordinates of a corner of cells, as GDAL gives it: x = t0 + t1 col + t2 row, y = t3 + t4 col + t5 row; rows may be turned.
    to_map : callable
        `to_map(lon_deg, lat_deg) -> x, y`, arrays (N,) in and out, longitude in [-180, 180].

    Raises
    ------
    ValueError
        Fewer than 2 x 2 cells, or cells without area.

    Notes
    -----
    A raster may cross the antimeridian, or count longitudes from 0 to 360; one that goes all round the Earth ends at its seam.
    """

    rows: int
    cols: int
    transform: tuple
    to_map: Callable

    def __post_init__(self):
        if min(self.rows, self.cols) < 2:
            raise ValueError(Sentence("Heights between cells need a raster of at least 2 x 2 cells. Choose a larger elevation model."))
        x_col, x_row, y_col, y_row = (self.transform[i] for i in (1, 2, 4, 5))
        if not np.isfinite(self.transform).all() or x_col * y_row == x_row * y_col:
            raise ValueError(Sentence("The elevation model's cells have no area. Give it a georeference first."))

    @cached_property
    def turn(self):
        """What a whole turn of longitude adds to x on a cylindrical map (geographic, Mercator, plate carrée); nan on any other."""
        lon, lat = np.tile(np.arange(-150.0, 180.0, 60.0), 2), np.repeat([-10.0, 40.0], 6)
        degree = self._x_y(lon + 1.0, lat)[0] - self._x_y(lon, lat)[0]
        with np.errstate(invalid="ignore"):
            alike = np.abs(degree - np.median(degree)) <= 1e-6 * np.abs(np.median(degree))
        return 360.0 * np.median(degree) if alike.sum() >= degree.size - 2 else np.nan  # both latitudes may meet the map's seam

    def position(self, lon_deg, lat_deg):
        """Position of places in cells, shape as the places; inf or nan where the map has no place for them."""
        return self._position(lon_deg, lat_deg, self._middle_x)

    def covers(self, col, row, slack=0.0):
        """Tell whether positions lie between the centres of cells, or outside by no more than a part of a cell."""
        return (col >= -slack) & (row >= -slack) & (col <= self.cols - 1 + slack) & (row <= self.rows - 1 + slack)

    def cell_m(self, lon_deg, lat_deg):
        """Sides of a cell on the ground at places: the shorter, the longer. [m]."""
        (col_e, col_n), (row_e, row_n) = self._cells_per_m(lon_deg, lat_deg)
        with np.errstate(divide="ignore", invalid="ignore"):
            area = np.abs(col_n * row_e - col_e * row_n)
            one, other = np.hypot(row_n, row_e) / area, np.hypot(col_n, col_e) / area
        return np.minimum(one, other), np.maximum(one, other)

    def path(self, lon_deg, lat_deg, bearing_deg, length_m):
        """Courses of geodesics through the raster, as parabolas.

        Parameters
        ----------
        lon_deg, lat_deg, bearing_deg, length_m : array_like, shape (R,)
            Starts, directions and lengths. [deg], [m]

        Returns
        -------
        ndarray, shape (2, 3, R)
            For col and for row: a, b, c of a + b d + c d^2, d being the distance along the geodesic in metres. nan where the map has no
            place for its ends, and where near a pole a geographic or Mercator map bends it too much for a parabola.

        Notes
        -----
        Through the start, the middle and the end of the geodesic. This takes in the convergence of the grid, its scale, and how both
        change on the way. At 40 km off by 0.01 m on usual maps; on geographic ones by 0.1 m at latitude 60, 0.9 m at 80, 4 m at 85.
        """
        lon, lat, bearing, length = np.broadcast_arrays(lon_deg, lat_deg, bearing_deg, length_m)
        x = _near(self._x_y(lon, lat)[0], self._middle_x, self.turn)
        start = np.array(self._position(lon, lat, x))
        to_middle, to_end = (
            np.array(self._position(*geodesic.direct(lon, lat, bearing, part * length)[:2], x)) - start for part in (0.5, 1.0)
        )
        course = np.stack([start, (4.0 * to_middle - to_end) / length, (2.0 * to_end - 4.0 * to_middle) / length**2], axis=1)
        polar = (np.abs(lat) > POLAR_DEG) & np.isfinite(self.turn)
        if polar.any():
            places = (value[polar] for value in (lon, lat, bearing, length, x))
            course[..., polar] = np.where(self._strays(course[..., polar], *places), np.nan, course[..., polar])
        return course

    def leaving_m(self, course):
        """Distances at which courses, shape (2, 3, R), that begin on the raster leave it; inf where they never do. [m]."""
        leaving = np.full(course.shape[2], np.inf)
        for (a, b, c), last in zip(course, (self.cols - 1, self.rows - 1)):
            for beyond, rate, bend in ((a - last, b, c), (-a, -b, -c)):  # below zero on the raster; where does it rise through it?
                with np.errstate(divide="ignore", invalid="ignore"):
                    root = np.sqrt(rate**2 - 4.0 * bend * beyond)
                    away = np.where(rate > 0, -2.0 * beyond / (rate + root), (root - rate) / (2.0 * bend))
                leaving = np.fmin(leaving, np.where(away >= 0, away, np.inf))
        return leaving

    def blocks_around(self, lon_deg, lat_deg, radius_m):
        """Which blocks of BLOCK x BLOCK cells hold ground within a radius of any of the places.

        Parameters
        ----------
        lon_deg, lat_deg : array_like, shape (N,)
        radius_m : float

        Returns
        -------
        ndarray of bool, shape (ceil(rows / BLOCK), ceil(cols / BLOCK))
            A few that are only nearly touched among them.
        """
        lon, lat = (np.ravel(value) for value in np.broadcast_arrays(np.asarray(lon_deg, float), np.asarray(lat_deg, float)))
        touched = self._no_blocks()
        col, row = self.position(lon, lat)
        placed = np.isfinite(col) & np.isfinite(row)
        at_once = max(1, AT_ONCE // touched.size)
        for first in range(0, placed.sum(), at_once):
            some = np.flatnonzero(placed)[first : first + at_once]
            touched |= self._discs(lon[some], lat[some], col[some], row[some], radius_m)
        return touched

    def blocks_along(self, lon1_deg, lat1_deg, lon2_deg, lat2_deg):
        """Which blocks of BLOCK x BLOCK cells geodesics pass through.

        Parameters
        ----------
        lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like, shape (N,)
            Their ends. [deg]

        Returns
        -------
        ndarray of bool, shape (ceil(rows / BLOCK), ceil(cols / BLOCK))
            A few that are only nearly touched among them.
        """
        ends = np.broadcast_arrays(*(np.asarray(value, float) for value in (lon1_deg, lat1_deg, lon2_deg, lat2_deg)))
        lon1, lat1, lon2, lat2 = (np.ravel(value) for value in ends)
        bearing, _, length = geodesic.inverse(lon1, lat1, lon2, lat2)
        course = self.path(lon1, lat1, np.nan_to_num(bearing), np.maximum(length, geodesic.COINCIDENT_M))
        bends = np.abs(course[:, 1]) * length + np.abs(course[:, 2]) * length**2
        course, length, bends = (value[..., np.isfinite(bends).all(axis=0)] for value in (course, length, bends))
        steps = np.ceil(bends.max(axis=0) / PATH_STEP).astype(np.intp) + 1
        touched = self._no_blocks()
        group = np.cumsum(steps) // AT_ONCE
        for number in np.unique(group):
            some = group == number
            line = np.repeat(np.flatnonzero(some), steps[some] + 1)
            number_on_line = np.arange(line.size) - np.repeat(np.cumsum(steps[some] + 1) - steps[some] - 1, steps[some] + 1)
            away = length[line] * number_on_line / steps[line]
            col, row = (course[:, 2, line] * away + course[:, 1, line]) * away + course[:, 0, line]
            self._mark(touched, col, row)
        return touched

    @property
    def _middle_x(self):
        return self.transform[0] + self.transform[1] * self.cols / 2.0 + self.transform[2] * self.rows / 2.0

    def _x_y(self, lon_deg, lat_deg):
        lon, lat = np.broadcast_arrays(np.asarray(lon_deg, dtype=float), np.asarray(lat_deg, dtype=float))
        with np.errstate(invalid="ignore"):
            one_turn = np.where(np.abs(lon) > 180.0, (lon + 180.0) % 360.0 - 180.0, lon)
            x, y = self.to_map(one_turn.ravel(), lat.flatten())
        return np.reshape(np.asarray(x, dtype=float), lon.shape), np.reshape(np.asarray(y, dtype=float), lon.shape)

    def _position(self, lon_deg, lat_deg, x_near):
        """Position in the turn of the map whose x is nearest to a given one."""
        x, y = self._x_y(lon_deg, lat_deg)
        x0, x_col, x_row, y0, y_col, y_row = self.transform
        area = x_col * y_row - x_row * y_col
        with np.errstate(invalid="ignore"):
            x, y = _near(x, x_near, self.turn) - x0, y - y0
            return (x * y_row - y * x_row) / area - 0.5, (y * x_col - x * y_col) / area - 0.5

    def _cells_per_m(self, lon_deg, lat_deg):
        """Columns, rows to metres eastward, northward; shape (2, 2, ...)."""
        lon, lat = np.broadcast_arrays(np.asarray(lon_deg, dtype=float), np.asarray(lat_deg, dtype=float))
        x = _near(self._x_y(lon, lat)[0], self._middle_x, self.turn)
        here = np.array(self._position(lon, lat, x))
        moved = [self._position(*geodesic.direct(lon, lat, bearing, PROBE_M)[:2], x) for bearing in (90.0, 0.0)]
        return np.stack([(np.array(there) - here) / PROBE_M for there in moved], axis=1)

    def _strays(self, course, lon, lat, bearing, length, x):
        """Tell where courses leave their geodesics, a quarter of the way along, by more than half of the longer side of a cell."""
        quarter = length / 4.0
        there = np.array(self._position(*geodesic.direct(lon, lat, bearing, quarter)[:2], x))
        off = (course[:, 2] * quarter + course[:, 1]) * quarter + course[:, 0] - there
        (col_e, col_n), (row_e, row_n) = self._cells_per_m(lon, lat)
        with np.errstate(divide="ignore", invalid="ignore"):
            off_m = np.hypot(off[0] * row_n - off[1] * col_n, off[1] * col_e - off[0] * row_e) / np.abs(col_e * row_n - col_n * row_e)
        return ~(off_m <= self.cell_m(lon, lat)[1] / 2.0)

    def _no_blocks(self):
        return np.zeros((-(-self.rows // BLOCK), -(-self.cols // BLOCK)), dtype=bool)

    def _discs(self, lon, lat, col, row, radius_m):
        """Blocks that discs touch: the place of a block nearest to the middle lies within the radius, measured on the ground there."""
        (col_e, col_n), (row_e, row_n) = self._cells_per_m(lon, lat)
        area = col_e * row_n - col_n * row_e

        def metres(cols, rows):
            return np.hypot((cols * row_n - rows * col_n) / area, (rows * col_e - cols * row_e) / area)

        rim = [self.path(lon, lat, bearing, radius_m) for bearing in RIM]
        away = [metres(*((course[:, 2] * radius_m + course[:, 1]) * radius_m)) for course in rim]
        reach = RIM_MARGIN * np.fmax.reduce(away)  # more than the radius where the map's scale shrinks on the way
        block_rows, block_cols = (np.arange(count)[:, None] * BLOCK for count in self._no_blocks().shape)
        cols = np.clip(col, block_cols, block_cols + BLOCK) - col
        rows = np.clip(row, block_rows, block_rows + BLOCK) - row
        return (metres(cols[None], rows[:, None]) <= reach).any(axis=-1)

    def _mark(self, touched, col, row):
        """Mark the blocks that hold places, and all within half a step of them."""
        last_row, last_col = touched.shape[0] - 1, touched.shape[1] - 1
        for cols in (col - PATH_STEP / 2.0 - 1.0, col + PATH_STEP / 2.0 + 1.0):
            for rows in (row - PATH_STEP / 2.0 - 1.0, row + PATH_STEP / 2.0 + 1.0):
                at_col, at_row = np.floor(cols / BLOCK), np.floor(rows / BLOCK)
                inside = (at_col >= 0) & (at_row >= 0) & (at_col <= last_col) & (at_row <= last_row)
                touched[at_row[inside].astype(np.intp), at_col[inside].astype(np.intp)] = True


@dataclass(frozen=True)
class Terrain:
    """An elevation model in memory.

    Parameters
    ----------
    grid : Grid
    blocks_m : ndarray, shape (blocks, rows, cols), float32
        Heights at the centres of cells, nan where not known. Each block repeats the first row and column of the next ones, so that the four
        cells around any place lie in one block. [m]
    first : ndarray of int, shape (block rows, block cols)
        Number among all values held of the one for cell (0, 0), if the block went on so far.
    gaps : ndarray of bool, shape (block rows, block cols)
        Blocks that are not held, or in which a height is not known.
    highest_m : float
        Nothing in it stands higher; -inf if no height is known. [m]
    """

    grid: Grid
    blocks_m: np.ndarray
    first: np.ndarray
    gaps: np.ndarray
    highest_m: float

    @property
    def bytes(self):
        """Memory that the heights take."""
        return self.blocks_m.nbytes

    def position(self, lon_deg, lat_deg):
        """See `Grid.position`."""
        return self.grid.position(lon_deg, lat_deg)

    def covers(self, col, row):
        """See `Grid.covers`."""
        return self.grid.covers(col, row)

    def cell_m(self, lon_deg, lat_deg):
        """See `Grid.cell_m`."""
        return self.grid.cell_m(lon_deg, lat_deg)

    def path(self, lon_deg, lat_deg, bearing_deg, length_m):
        """See `Grid.path`."""
        return self.grid.path(lon_deg, lat_deg, bearing_deg, length_m)

    def sample(self, col, row):
        """Bilinear heights at positions; nan outside, and beside cells that are not known. [m]."""
        col, row = np.broadcast_arrays(np.asarray(col, dtype=float), np.asarray(row, dtype=float))
        inside = self.covers(col, row)
        height = np.full(col.shape, np.nan)
        height[inside] = self.between(col[inside], row[inside])
        return height

    def between(self, col, row):
        """Bilinear heights at positions, arrays (N,) or more, which the raster covers; anything for others.

        In the precision of the positions: numbers of four bytes are wrong by 4 mm on the ground 40 km away, and twice as fast. [m]
        """
        left, above = np.trunc(col), np.trunc(row)  # a hair before the first cell is still in it
        at = self._number(left, above)
        right_part, below_part = np.subtract(col, left, out=left), np.subtract(row, above, out=above)
        flat, width = self.blocks_m.ravel(), self.blocks_m.shape[2]
        top = _toward(flat.take(at, mode="clip"), flat[1:].take(at, mode="clip"), right_part)
        bottom = _toward(flat[width:].take(at, mode="clip"), flat[width + 1 :].take(at, mode="clip"), right_part)
        return _toward(top, bottom, below_part)

    def near_gap(self, col, row):
        """Tell whether positions which the raster covers lie in blocks of which some ground is not known; anything for others."""
        if self.gaps.size == 1:
            return np.full(col.shape, self.gaps[0, 0])
        block = (row.astype(np.int32) >> BLOCK_BITS) * np.int32(self.gaps.shape[1]) + (col.astype(np.int32) >> BLOCK_BITS)
        return self.gaps.ravel().take(block, mode="clip")

    def height_m(self, lon_deg, lat_deg):
        """Heights of the ground at places, nan where not known. [m]."""
        return self.sample(*self.position(lon_deg, lat_deg))

    def buried(self, lon_deg, lat_deg, lens_m):
        """Tell whether lenses lie below the ground, where none can see; False where the ground is not known."""
        return np.asarray(lens_m, dtype=float) < self.height_m(lon_deg, lat_deg)

    def _number(self, col, row):
        """Number among all values held of the cell at a row and column, given as numbers without a fraction."""
        whole = np.int32 if self.blocks_m.size < 2**31 else np.intp  # the shorter are several times as fast
        col, row = col.astype(whole), row.astype(whole)
        block = None if self.first.size == 1 else (row >> BLOCK_BITS) * whole(self.first.shape[1]) + (col >> BLOCK_BITS)
        row *= whole(self.blocks_m.shape[2])
        row += col
        if block is None:
            return row.astype(np.intp, copy=False)
        at = self.first.ravel().take(block, mode="clip")
        at += row
        return at


def terrain(heights, transform, to_map, nodata=None, unit_m=1.0):
    """Make a terrain of a raster's values.

    Parameters
    ----------
    heights : array_like, shape (rows, cols)
        Values of the raster.
    transform, to_map
        As in `Grid`.
    nodata : float, optional
        The value that stands for no height.
    unit_m : float
        Length of the raster's vertical unit; 0.3048 for feet. [m]

    Raises
    ------
    ValueError
        Fewer than 2 x 2 cells, no height at all, cells without area, or a unit that is no length.
    """
    values = np.asarray(heights)
    if values.ndim != 2:
        raise ValueError(Sentence("Heights between cells need a raster of at least 2 x 2 cells. Choose a larger elevation model."))
    grid = Grid(*values.shape, tuple(float(value) for value in transform), to_map)
    if not (np.isfinite(unit_m) and unit_m > 0):
        raise ValueError(Sentence("A vertical unit of {unit} m is no length. Give 1 for metres, 0.3048 for feet.", unit=unit_m))
    block = np.empty((grid.rows + 1, grid.cols + 1), dtype=np.float32)
    _fill(block, values)
    if nodata is not None:
        block[block == np.float32(nodata)] = np.nan
    if np.isnan(block).all():
        raise ValueError(Sentence("The elevation model holds no height. Choose another band, or another model."))
    block *= np.float32(unit_m)
    return _terrain(grid, block[None], np.zeros((1, 1), dtype=np.intp), np.isnan(block).reshape(1, 1, -1).any(axis=-1))


def load(grid, wanted, read, progress=None):
    """Read the wanted blocks of a raster into memory.

    Parameters
    ----------
    grid : Grid
    wanted : ndarray of bool, shape (block rows, block cols)
        As `Grid.blocks_around` and `Grid.blocks_along` give it; joined by `|`.
    read : callable
        `read(row, col, rows, cols)` -> ndarray (rows, cols): heights in metres, nan where not known.
    progress : callable, optional
        Takes what is done, 0 to 1; False from it ends the work.

    Returns
    -------
    Terrain or None
        None when it was ended. Heights in other blocks are not known.
    """
    side = BLOCK + 1
    numbers = np.argwhere(wanted)
    blocks = np.full((len(numbers) + 1, side, side), np.nan, dtype=np.float32)  # the last one stands for all that are not held
    corner = BLOCK * (np.arange(wanted.shape[0])[:, None] * side + np.arange(wanted.shape[1]))
    first = len(numbers) * side**2 - corner
    gaps = np.ones(wanted.shape, dtype=bool)
    for done, (block_row, block_col) in enumerate(numbers):
        row, col = block_row * BLOCK, block_col * BLOCK
        _fill(blocks[done], read(row, col, min(side, grid.rows - row), min(side, grid.cols - col)))
        first[block_row, block_col] = done * side**2 - corner[block_row, block_col]
        gaps[block_row, block_col] = np.isnan(blocks[done]).any()
        if progress is not None and progress((done + 1) / len(numbers)) is False:
            return None
    return _terrain(grid, blocks, first, gaps)


def _near(x, x_near, turn):
    """Coordinates moved by whole turns to within half a turn of others."""
    return x if np.isnan(turn) else x - turn * np.round((x - x_near) / turn)


def _toward(one, other, part):
    """Values part of the way from ones to others, in their place: memory asked for anew costs more than the sums."""
    other -= one
    other *= part
    one += other
    return one


def _fill(block, values):
    """Write heights into a block; beyond the raster's last row and column the edge goes on, with no weight."""
    rows, cols = values.shape
    block[:rows, :cols] = values
    block[:rows, cols:] = block[:rows, cols - 1 : cols]
    block[rows:] = block[rows - 1]
    block[~np.isfinite(block)] = np.nan


def _terrain(grid, blocks, first, gaps):
    return Terrain(grid, blocks, first, gaps, float(np.fmax.reduce(blocks, axis=None, initial=-np.inf)))
