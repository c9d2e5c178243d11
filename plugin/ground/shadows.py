"""Which ground stands in a body's light, for all cells of a tile at once.

Lines run over the raster toward the light, one through each row or column of cells. Going along a line from the light on, the height below
which all lies in shadow is a running maximum: of the ground, each height less what the light has come down by since. A cell is lit where
its lens stands above that. Near the cell, where a line half a cell away passes over other ground, the cell's own ray is followed instead,
from one crossing with the raster's lines to the next.

The light is that of a body infinitely far away: at a place nearer to it by a distance s it stands higher by s over the Earth's radius, and
so one altitude, that at the middle of the tile, serves all cells. Ground beyond a gap in the heights is seen across it.

Heights and distances in metres; positions in cells from the centre of the raster's first one, as in `terrain`. `u` counts along that axis
of the raster which lines follow more closely, `v` along the other.
"""

import threading
from typing import NamedTuple

import numpy as np

from . import curvature
from .own_rays import Field, lit_cells, near_cells
from .sweep import Line, Shadow, Side, Span

STEEPEST_DEG = 89.0  # light from higher up is taken as coming from here: no ground of a raster is as steep
PROBE_M = 50.0  # over which the sides of cells are measured


class Window(NamedTuple):
    """A part of an elevation model.

    `heights_m` (rows, cols), float32, nan where not known. `row`, `col`: the first of the raster's cells in it. `factor`: how many of
    those one of its own cells is wide; each of its heights is then their mean.
    """

    heights_m: np.ndarray
    row: int
    col: int
    factor: int = 1


class Tile(NamedTuple):
    """The cells asked for: the first one, and how many, along the raster's rows and columns."""

    row: int
    col: int
    rows: int
    cols: int

    @property
    def middle(self):
        """Position of its middle: col, row."""
        return self.col + (self.cols - 1) / 2.0, self.row + (self.rows - 1) / 2.0


class Light(NamedTuple):
    """The light of a body at the middle of a tile.

    `course` (2, 3): the geodesic toward it through the raster, as `Grid.path` gives it; `nearer_m` (2,): how much nearer to the light than
    a cell the next column and the next row are; `alt_deg`: its apparent altitude; `radius_m`: of the Earth along the course.
    """

    course: np.ndarray
    nearer_m: np.ndarray
    alt_deg: float
    radius_m: float


def coarser(window, factor):
    """The window in cells so many times as wide, each with the mean of its known heights; the last ones may reach beyond it."""
    beyond = [(0, -count % factor) for count in window.heights_m.shape]
    heights = np.pad(window.heights_m, beyond, constant_values=np.nan)
    rows, cols = (count // factor for count in heights.shape)
    blocks = heights.reshape(rows, factor, cols, factor)
    known = np.isfinite(blocks)
    count = known.sum(axis=(1, 3))
    total = np.where(known, blocks, np.float32(0)).sum(axis=(1, 3), dtype=float)
    means = np.where(count > 0, total / np.maximum(count, 1), np.nan)
    return Window(means.astype(np.float32), window.row, window.col, window.factor * factor)


def half_diagonal_m(tile, cell_m):
    """How far the cells of a tile lie from its middle, for cells whose longer side is given. [m]."""
    return 0.5 * float(np.hypot(tile.rows, tile.cols)) * cell_m


def reach_m(rise_m, alt_deg, radius_m, beside_m, refraction_k=curvature.REFRACTION_K):
    """Distance beyond which no ground hides a body, inf where there is none.

    Parameters
    ----------
    rise_m : float
        The highest ground less the lowest lens. [m]
    alt_deg, radius_m : array_like
        Apparent altitude of the body, and radius of the Earth toward it. [deg], [m]
    beside_m : float
        How far the lens may be from where the body has that altitude. [m]
    refraction_k : float
    """
    lowest_deg = np.minimum(alt_deg, STEEPEST_DEG) - np.degrees(beside_m / radius_m)
    tan, bend = np.tan(np.radians(lowest_deg)), (1.0 - refraction_k) / (2.0 * radius_m)
    rise = np.maximum(rise_m, 0.0)
    with np.errstate(divide="ignore", invalid="ignore"):
        away = 2.0 * rise / (tan + np.sqrt(tan * tan + 4.0 * bend * rise))
        return np.where((tan > 0.0) & np.isfinite(away), away, np.inf)


def nearer_m(grid, lon_deg, lat_deg, az_deg):
    """How much nearer to light from azimuths than a cell the next column and the next row are, shape (2, P), at a place. [m]."""
    (_, col, _), (_, row, _) = grid.path(np.full(2, lon_deg), np.full(2, lat_deg), np.array([90.0, 0.0]), PROBE_M)
    east_north = np.linalg.inv(np.stack([col, row]))  # of a column, of a row; they may be turned, and of different length
    return np.stack([np.sin(np.radians(az_deg)), np.cos(np.radians(az_deg))], axis=1).dot(east_north).T


class Ground:
    """A tile and the ground around it, ready for light from any side; several threads may ask it at once.

    Parameters
    ----------
    tile : Tile
    windows : sequence of Window
        The finest first: it holds the tile. Each next one is coarser and holds the one before. What lies outside hides nothing.
    lens_m : float
        Of the camera above the ground. [m]
    skip_m : float
        Ground nearer to the camera than this is passed over. [m]
    cell_m : (float, float)
        Shorter and longer side of a cell. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.
    """

    def __init__(self, tile, windows, lens_m, skip_m, cell_m, refraction_k=curvature.REFRACTION_K):
        self._tile, self._windows, self._lens_m, self._skip_m, self._k = tile, windows, lens_m, skip_m, refraction_k
        self._cell_m, self._near = cell_m[0], near_cells(skip_m, cell_m[0])
        self._half_m = half_diagonal_m(tile, cell_m[1])
        self._sides, self._fields, self._making = {}, {}, threading.Lock()
        finest = windows[0]
        row, col = tile.row - finest.row, tile.col - finest.col
        heights = finest.heights_m[row : row + tile.rows, col : col + tile.cols]
        self.known = np.isfinite(heights)
        self._lowest_m = float(np.fmin.reduce(heights, axis=None, initial=np.inf))
        self._highest_m = max(float(np.fmax.reduce(window.heights_m, axis=None, initial=-np.inf)) for window in windows)
        self._mean_m = float(heights[self.known].mean(dtype=float)) if self.known.any() else 0.0

    def lit(self, light):
        """Which cells of the tile the light reaches, shape (rows, cols); of those of no known height nothing is told."""
        across = abs(light.course[0, 1]) > abs(light.course[1, 1])
        along, beside = light.course if across else light.course[::-1]
        alt_deg = min(light.alt_deg, STEEPEST_DEG)
        line = Line(along, beside, light.nearer_m[1 if across else 0], alt_deg, light.radius_m, self._k, self._mean_m)
        tile = self._tile
        span = Span(tile.col, tile.row, tile.cols, tile.rows) if across else Span(*tile)
        rise_m = self._highest_m - self._lowest_m - self._lens_m
        reach = float(reach_m(rise_m, light.alt_deg, light.radius_m, self._half_m, self._k))
        shadow = None
        for number in reversed(range(len(self._windows))):
            if number == 0 or not self._ends_within(self._windows[number - 1], light.course, reach):
                shadow = Shadow(self._side(number, across), line, span, self._near, reach, shadow)
        lit = lit_cells(shadow, self._field(span, across), self._lens_m, self._skip_m)
        return lit.T if across else lit

    def _ends_within(self, window, course, reach):
        """Whether the rays of all cells stay within a window as far as ground can hide anything."""
        if not np.isfinite(reach):
            return False
        (_, b, c), tile = course.T, self._tile
        col, row = (c * reach + b) * reach
        rows, cols = (count * window.factor for count in window.heights_m.shape)
        inside_cols = window.col <= tile.col + col and tile.col + tile.cols + col <= window.col + cols
        return inside_cols and window.row <= tile.row + row and tile.row + tile.rows + row <= window.row + rows

    def _side(self, number, across):
        with self._making:
            if (number, across) not in self._sides:
                self._sides[number, across] = Side(self._windows[number], across, self._near + 2 if number == 0 else 0)
            return self._sides[number, across]

    def _field(self, span, across):
        side = self._side(0, across)
        with self._making:
            if across not in self._fields:
                self._fields[across] = Field(side, span, self._skip_m, self._cell_m)
            return self._fields[across]
