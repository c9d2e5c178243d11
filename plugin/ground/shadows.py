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

from typing import NamedTuple

import numpy as np

from . import curvature

NEAR_CELLS = 32  # along u, over which a cell's own ray is followed
CLOSE_CELLS = 8  # over which it is also looked at half way between two crossings
SAME = 0.01  # of a cell: crossings closer together are one
STRIP = 32  # rows worked on at once: they stay in the processor's cache
MARGIN = 2  # lines beside those that are needed
STEEPEST_DEG = 89.0  # light from higher up is taken as coming from here: no ground of a raster is as steep
PROBE_M = 50.0  # over which the sides of cells are measured
UNKNOWN_M = -1e7  # hides nothing, and neither does what lies half way to it


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


def near_cells(skip_m, cell_m):
    """Cells along u over which the own ray of a cell is followed: enough of them beyond what is passed over."""
    return max(NEAR_CELLS, int(np.ceil(skip_m / cell_m)) + 2)


class Ground:
    """A tile and the ground around it, ready for light from any side.

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
        self._near = near_cells(skip_m, cell_m[0])
        self._half_m = half_diagonal_m(tile, cell_m[1])
        self._sides = {}
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
        line = _Line(along, beside, light.nearer_m[1 if across else 0], light, self._k, self._mean_m)
        tile = self._tile
        span = _Span(tile.col, tile.row, tile.cols, tile.rows) if across else _Span(*tile)
        rise_m = self._highest_m - self._lowest_m - self._lens_m
        reach = float(reach_m(rise_m, light.alt_deg, light.radius_m, self._half_m, self._k))
        shadow = None
        for number in reversed(range(len(self._windows))):
            if number == 0 or not self._ends_within(self._windows[number - 1], light.course, reach):
                shadow = _Shadow(self._side(number, across), line, span, self._near, reach, shadow)
        lit = shadow.lit(self._lens_m, self._skip_m)
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
        if (number, across) not in self._sides:
            self._sides[number, across] = _Side(self._windows[number], across, self._near + 2 if number == 0 else 0)
        return self._sides[number, across]


class _Span(NamedTuple):
    """The tile along u and v: number of its first cell, and how many."""

    u: int
    v: int
    rows: int
    cols: int


class _Side:
    """A window whose rows follow u: heights, unknown ones filled, and their rises toward the next v; `u`, `v` its first cell's centre."""

    def __init__(self, window, across, beyond):
        heights = np.pad(window.heights_m.T if across else window.heights_m, beyond, constant_values=np.nan)
        self.heights_m = np.where(np.isnan(heights), np.float32(UNKNOWN_M), heights)
        self.rises_m = np.zeros_like(self.heights_m)
        np.subtract(self.heights_m[:, 1:], self.heights_m[:, :-1], out=self.rises_m[:, :-1])
        self.factor = window.factor
        first = (window.col, window.row) if across else (window.row, window.col)
        self.u, self.v = (cell - beyond + (window.factor - 1) / 2.0 for cell in first)


class _Line:
    """The course of a light as a function of u, and what the light comes down by along it."""

    def __init__(self, along, beside, nearer_m, light, refraction_k, height_m):
        self._along, self._beside, self._nearer_m = along, beside, nearer_m
        self.toward = 1 if along[1] > 0.0 else -1  # the way of u to the light
        self._longer = 1.0 + height_m / light.radius_m  # are lengths up there than at sea level
        alt = np.radians(min(light.alt_deg, STEEPEST_DEG))
        self._tan, self._bend = np.tan(alt), (1.0 - refraction_k) / (2.0 * light.radius_m * np.cos(alt) ** 2)

    def away_m(self, u):
        """Distance from the middle of the tile toward the light. [m]."""
        a, b, c = self._along
        return 2.0 * (u - a) / (b + self.toward * np.sqrt(np.maximum(b * b + 4.0 * c * (u - a), 0.0)))

    def v(self, u):
        """Position on the line through the middle of the tile."""
        a, b, c = self._beside
        away = self.away_m(u)
        return (c * away + b) * away + a

    def drop_m(self, u):
        """What the light comes down by to the middle of the tile. [m], float32."""
        away = self.away_m(u) * self._longer
        return ((self._bend * away + self._tan) * away).astype(np.float32)

    def more_m(self, u):
        """And how much more it does so on the line beside, whose v is greater by 1: that lies so much nearer to the light. [m], float32."""
        return (2.0 * self._bend * self._nearer_m * self.away_m(u)).astype(np.float32)


class _Shadow:
    """Height below which all lies in shadow, on lines through the cells of a tile.

    It is told row by row of a side, from the light on, less what the light comes down by from there to the middle of the tile: so it never
    falls. On line number l, v is greater by `_first` + factor l than on the line through the middle.
    """

    def __init__(self, side, line, span, near, reach, before):
        self._side, self._line, self._span, self._near = side, line, span, near
        middle = line.v(span.u + np.array([0.0, (span.rows - 1) / 2.0, span.rows - 1.0]))
        self._first = span.v - middle.max() - MARGIN * side.factor
        self._count = int(np.ceil((span.v + span.cols - middle.min() - self._first) / side.factor)) + MARGIN + 1
        self._rows = self._in_order(reach)
        u = side.u + side.factor * self._rows
        self._height_m = np.empty((len(u), self._count), dtype=np.float32)
        self._run(u, self._entering(before, u))

    def _in_order(self, reach):
        """Numbers of the side's rows from where ground begins to matter, or the side, to the end of the tile."""
        side, span, toward = self._side, self._span, self._line.toward
        near, far = (span.u + span.rows - 1, span.u)[::toward]
        rows = np.arange(len(side.heights_m))[::-toward]
        u = side.u + side.factor * rows
        within = self._line.away_m(u) <= self._line.away_m(near) + reach
        # enough of them for the own rays of the first cells, and for a coarser side to look at two
        within |= (u - near) * toward <= (self._near + 2) * side.factor
        return rows[within & ((u - far) * toward > -side.factor)]

    def _run(self, u, now):
        """Let the shadow pass over the rows at u, and over the columns that lines cross between two of them."""
        heights, rises, toward = self._side.heights_m, self._side.rises_m, self._line.toward
        left, part = _split(self._place(u))
        column, way = self._columns_between(self._place(u))
        drop, more = self._line.drop_m(u), self._line.more_m(u)
        beside = self._beside(np.arange(self._count)).astype(np.float32)
        ground, tilt = np.empty((2, self._count), dtype=np.float32)

        def pass_over(start, first, rise, part, drop, more):
            """Ground part of the way from some heights on; of the window's columns those from `start` on lie under lines 0, 1, ..."""
            low, high = max(-start, 0), min(first.size - start, self._count)
            if high <= low:
                return
            some, columns = ground[low:high], slice(start + low, start + high)
            np.multiply(rise[columns], part, out=some)
            some += first[columns]
            np.multiply(beside[low:high], more, out=tilt[low:high])
            tilt[low:high] += drop
            some -= tilt[low:high]
            np.maximum(now[low:high], some, out=now[low:high])

        for i, row in enumerate(self._rows.tolist()):
            pass_over(int(left[i]), heights[row], rises[row], part[i], drop[i], more[i])
            self._height_m[i] = now
            if i < len(way) and not np.isnan(way[i]):
                rise = heights[row - toward] - heights[row]
                here = (values[i] + way[i] * (values[i + 1] - values[i]) for values in (drop, more))
                pass_over(int(column[i]), heights[row], rise, way[i], *here)

    @staticmethod
    def _columns_between(place):
        """Column that the first line crosses between one row and the next, and how far between; nan where none.

        All lines stand equally far from the columns beside them: they cross one at the same u.
        """
        left = np.floor(place).astype(int)
        column = np.maximum(left[:-1], left[1:])
        with np.errstate(divide="ignore", invalid="ignore"):
            way = np.where(left[:-1] != left[1:], (column - place[:-1]) / np.diff(place), np.nan)
        return column, way.astype(np.float32)

    def _beside(self, number):
        """How much greater v is on lines than on the one through the middle."""
        return self._first + self._side.factor * number

    def _place(self, u):
        """Column of the side, in its own cells, at which the first line passes u."""
        return (self._first + self._line.v(u) - self._side.v) / self._side.factor

    def _entering(self, before, u):
        """What lines bring with them, shape (count,), to the first row on which they stand on the side."""
        if before is None or not len(u):
            return np.full(self._count, UNKNOWN_M, dtype=np.float32)
        number, place = np.arange(self._count), self._place(u)
        last = self._side.heights_m.shape[1] - 1
        grows = place[-1] >= place[0]
        row = np.searchsorted(place, -number) if grows else np.searchsorted(-place, number - last)
        return before.at(u[np.minimum(row, len(u) - 1)], self._beside(number))

    def at(self, u, beside):
        """Height where lines whose v is greater by `beside` than that of the middle one pass u, shape (N,)."""
        side = self._side
        order = self._line.toward * (self._rows[0] - (u - side.u) / side.factor)
        line = (beside - self._first) / side.factor
        row = np.clip(np.floor(order).astype(int), 0, len(self._rows) - 2)
        left = np.clip(np.floor(line).astype(int), 0, self._count - 2)
        down, right = np.clip(order - row, 0.0, 1.0), np.clip(line - left, 0.0, 1.0)
        here, next_ = (self._height_m[i, left] * (1.0 - right) + self._height_m[i, left + 1] * right for i in (row, row + 1))
        return np.where(order < 0.0, UNKNOWN_M, here * (1.0 - down) + next_ * down).astype(np.float32)

    def lit(self, lens_m, skip_m):
        """Which cells of the tile are lit, shape (rows, cols) along u, v."""
        rows, cols = self._span.rows, self._span.cols
        lit = np.empty((rows, cols), dtype=bool)
        for first in range(0, rows, STRIP):
            count = min(STRIP, rows - first)
            u = self._span.u + first
            near = _Near(self._line, u + (count - 1) / 2.0, self._near, skip_m)
            highest = np.empty((count, cols), dtype=np.float32)
            self._far(highest, u)
            lit[first : first + count] = self._above(highest, u, near, lens_m)
        return lit

    def _far(self, highest, u):
        """Write the shadow of the ground beyond the near one into an array (rows, cols) for the rows from u on."""
        toward, rows = self._line.toward, u + np.arange(len(highest))
        order = toward * (self._rows[0] - (rows + toward * self._near - self._side.u)).astype(int)
        place = self._span.v - self._line.v(rows) - self._first
        left, part = _split(place)
        for i, (row, start) in enumerate(zip(order.tolist(), left.tolist())):
            shadow = self._height_m[max(row, 0), start : start + highest.shape[1] + 1]
            np.subtract(shadow[1:], shadow[:-1], out=highest[i])
            highest[i] *= part[i]
            highest[i] += shadow[:-1]

    def _drop_m(self, u):
        """What the light comes down by from every cell of the side's rows at u. [m], float32."""
        drop, more, middle = self._line.drop_m(u), self._line.more_m(u), self._line.v(u).astype(np.float32)
        v = (self._side.v + np.arange(self._side.heights_m.shape[1])).astype(np.float32)
        return (drop - more * middle)[:, None] + more[:, None] * v

    def _above(self, highest, u, near, lens_m):
        """Whether lenses over the rows from u on stand above the far shadow, shape (rows, cols), and above what their rays cross."""
        side, toward = self._side, self._line.toward
        count, cols = highest.shape
        row, col = int(u - side.u), int(self._span.v - side.v)
        low, high = sorted((0, toward * (self._near + 1)))
        block = slice(row + low, row + count + high)
        level = side.heights_m[block] - self._drop_m(u + np.arange(low, count + high))
        rises = side.rises_m[block]
        ground = np.empty_like(highest)

        def cells(values, k, j, more=0):
            return values[k - low : k - low + count + more, col + j : col + j + cols]

        for k, j, part in near.rows:
            np.multiply(cells(rises, k, j), part, out=ground)
            ground += cells(level, k, j)
            np.maximum(highest, ground, out=highest)
        for k, j, part in near.cols:
            np.subtract(cells(level, k + 1, j), cells(level, k, j), out=ground)
            ground *= part
            ground += cells(level, k, j)
            np.maximum(highest, ground, out=highest)
        for (k, down), (j, right) in near.between:
            rows = cells(rises, k, j, 1) * right
            rows += cells(level, k, j, 1)
            np.subtract(rows[1:], rows[:-1], out=ground)
            ground *= down
            ground += rows[:-1]
            np.maximum(highest, ground, out=highest)
        return cells(level, 0, 0) + np.float32(lens_m) >= highest


def _split(place):
    """Positions as whole cells and parts of one, float32."""
    left = np.floor(place).astype(int)
    return left, (place - left).astype(np.float32)


class _Near:
    """What a cell's own ray crosses, the same for all cells of some rows: steps k along u and j along v, and the part of the next step.

    `rows`: crossings with rows, (k, j, part along v). `cols`: with columns, (k, j, part along u). `between`: where ground begins to count
    and places between crossings, ((k, part along u), (j, part along v)).
    """

    def __init__(self, line, u, cells, skip_m):
        step = np.arange(cells + 1)
        away, beside = np.abs(line.away_m(u + line.toward * step) - line.away_m(u)), line.v(u + line.toward * step) - line.v(u)
        self.rows = self._crossings(step[1:], beside[1:], away[1:] >= skip_m, line.toward)
        across = np.arange(1, int(abs(beside[-1])) + 1)
        met = np.interp(across, np.abs(beside), step)
        columns = np.sign(beside[-1]) * across
        self.cols = [(k, j, part) for j, k, part in self._crossings(columns, line.toward * met, np.interp(met, step, away) >= skip_m, 1)]
        self.between = [self._within(step, beside, place, line.toward) for place in self._places(step, met, np.interp(skip_m, away, step))]

    @staticmethod
    def _places(step, met, first):
        """Where along u ground begins to count, and half way from there on between one crossing and the next."""
        crossings = np.sort(np.concatenate([step, met]))
        crossings = np.concatenate([[first], crossings[crossings > first + SAME]])
        crossings = crossings[crossings <= max(CLOSE_CELLS, first + 1)]
        return [first, *(0.5 * (crossings[1:] + crossings[:-1]))]

    @staticmethod
    def _within(step, beside, place, sign):
        """A place along u as step and part along u, and along v."""
        return [(int(np.floor(at)), np.float32(at - np.floor(at))) for at in (sign * place, np.interp(place, step, beside))]

    @staticmethod
    def _crossings(whole, place, counts, sign):
        """Steps that are whole along one axis, the place along the other in steps and parts, of those that count."""
        left, part = _split(place[counts])
        return list(zip((sign * whole[counts]).astype(int).tolist(), left.tolist(), part))
