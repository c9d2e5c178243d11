"""The shadow of ground on lines that run over a raster toward the light, one through each cell of a row of the tile.

Going along a line from the light on, the height below which all lies in shadow is a running maximum of the ground: of its heights where
lines cross rows and columns of cells, each less what the light has come down by since. Rows are worked on in blocks that stay in the
processor's cache; of rows whose cells under the lines step evenly several are seen by numpy at once.

`u` counts along that axis of the raster which lines follow more closely, `v` along the other; both in cells from the centre of its first.
"""

from typing import NamedTuple

import numpy as np

UNKNOWN_M = -1e7  # hides nothing, and neither does what lies half way to it
MARGIN = 2  # lines beside those that are needed
BLOCK = 32
ROUNDED = 1e-6  # of the numbers themselves: what a few sums of 4-byte numbers lose


class Span(NamedTuple):
    """The tile along u and v: number of its first cell, and how many."""

    u: int
    v: int
    rows: int
    cols: int


class Side:
    """A window whose rows follow u: heights, unknown ones filled, and their rises toward the next v; `u`, `v` its first cell's centre.

    Unknown ground lies around it: `beyond` rows and columns for rays that leave the window, and columns for a block of rows beside them.
    """

    def __init__(self, window, across, beyond):
        self.factor, self.beyond, self.cols = window.factor, beyond, beyond + BLOCK + 1
        around = [(beyond, beyond), (self.cols, self.cols)]
        heights = np.pad(window.heights_m.T if across else window.heights_m, around, constant_values=np.nan)
        self.heights_m = np.ascontiguousarray(heights)
        self.heights_m[np.isnan(self.heights_m)] = UNKNOWN_M
        self.rises_m = np.zeros_like(self.heights_m)
        np.subtract(self.heights_m[:, 1:], self.heights_m[:, :-1], out=self.rises_m[:, :-1])
        first = (window.col, window.row) if across else (window.row, window.col)
        self.u, self.v = (cell - past * window.factor + (window.factor - 1) / 2.0 for cell, past in zip(first, (beyond, self.cols)))
        known = self.heights_m > 0.1 * UNKNOWN_M
        self.largest_m = float(np.abs(self.heights_m).max(where=known, initial=0.0))
        self.steepest_m = float(np.abs(self.rises_m[:, :-1]).max(where=known[:, 1:] & known[:, :-1], initial=0.0))


class Line:
    """The course of a light as a function of u, and what the light comes down by along it.

    `along`, `beside` (3,): its u and v by the distance; `nearer_m`: how much nearer to the light than a cell the next v is; `height_m`: of
    the ground, in which lengths are longer than at sea level.
    """

    def __init__(self, along, beside, nearer_m, alt_deg, radius_m, refraction_k, height_m):
        self._along, self._beside, self._nearer_m = along, beside, nearer_m
        self.toward = 1 if along[1] > 0.0 else -1  # the way of u to the light
        self._longer = 1.0 + height_m / radius_m
        alt = np.radians(alt_deg)
        self._tan, self._bend = np.tan(alt), (1.0 - refraction_k) / (2.0 * radius_m * np.cos(alt) ** 2)

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


class Shadow:
    """Height below which all lies in shadow, on lines through the cells of a tile.

    `height_m` (rows, lines) is told row by row of a side, from the light on, less what the light comes down by from there to the middle of
    the tile: so it never falls. On line number l, v is greater by `_first` + factor l than on the line through the middle.

    On the finest side `most_m` and `least_m` (rows, lines) hold bounds for rays that run anywhere between a line and the next, from row
    `told_from` on: where they cross rows and columns they have met no ground higher than the one, and some as high as the other.
    """

    def __init__(self, side, line, span, near, reach, before):
        self.side, self.line, self.span, self.near = side, line, span, near
        middle = line.v(span.u + np.array([0.0, (span.rows - 1) / 2.0, span.rows - 1.0]))
        self._first = span.v - middle.max() - MARGIN * side.factor
        self._count = int(np.ceil((span.v + span.cols - middle.min() - self._first) / side.factor)) + MARGIN + 1
        self._rows = self._in_order(reach)
        u = side.u + side.factor * self._rows
        self.height_m = np.empty((len(u), self._count), dtype=np.float32)
        self.told_from = len(u)
        if side.factor == 1:
            first = span.u if line.toward < 0 else span.u + span.rows - 1
            self.told_from = max(int(line.toward * (u[0] - first)) - near - 1, 0) // BLOCK * BLOCK
        self.most_m, self.least_m = np.empty((2, len(u) - self.told_from, self._count), dtype=np.float32)
        if len(u):
            self._run(u, self._entering(before, u))

    def order(self, u):
        """Number of the side's row at u, in the order in which the light passes over them."""
        return self.line.toward * (self._rows[0] - (u - self.side.u) / self.side.factor)

    def under(self, u, v):
        """Line that passes u just before v, in whole lines and a part of the way to the next."""
        return split((v - self.line.v(u) - self._first) / self.side.factor)

    def at(self, u, beside):
        """Height where lines whose v is greater by `beside` than that of the middle one pass u, shape (N,)."""
        order, line = self.order(u), (beside - self._first) / self.side.factor
        row = np.clip(np.floor(order).astype(int), 0, len(self._rows) - 2)
        left = np.clip(np.floor(line).astype(int), 0, self._count - 2)
        down, right = np.clip(order - row, 0.0, 1.0), np.clip(line - left, 0.0, 1.0)
        here, next_ = (self.height_m[i, left] * (1.0 - right) + self.height_m[i, left + 1] * right for i in (row, row + 1))
        return np.where(order < 0.0, UNKNOWN_M, here * (1.0 - down) + next_ * down).astype(np.float32)

    def unsure_m(self, alike):
        """How far `most_m` and `least_m` may miss for rays that are taken as alike from the cells of so many rows. [m].

        They begin a little beside their line; heights between cells were taken without what the light comes down by from one to the next;
        and sums were rounded.
        """
        u = self.span.u + np.array([0.0, self.span.rows - 1.0])
        ahead = u + self.line.toward * self.near
        more, drop = (np.abs(told(np.concatenate([u, ahead]))).max() for told in (self.line.more_m, self.line.drop_m))
        lost = ROUNDED * (self.side.largest_m + drop + self._count * more)
        return float(self.turn(alike) * self.side.steepest_m + 2.0 * more + lost)

    def turn(self, alike):
        """How far, in cells, own rays that are taken as alike from the cells of so many rows may end beside where they do."""
        u = self.span.u + np.array([0.0, self.span.rows - 1.0])
        beside = self.line.v(u + self.line.toward * self.near) - self.line.v(u)
        return abs(beside[1] - beside[0]) * 0.5 * alike / max(self.span.rows - 1, 1)

    def _in_order(self, reach):
        """Numbers of the side's rows from where ground begins to matter, or the side, to the end of the tile."""
        side, span, toward = self.side, self.span, self.line.toward
        near, far = (span.u + span.rows - 1, span.u)[::toward]
        rows = np.arange(len(side.heights_m))[::-toward]
        u = side.u + side.factor * rows
        within = self.line.away_m(u) <= self.line.away_m(near) + reach
        # enough of them for the own rays of the first cells, and for a coarser side to look at two
        within |= (u - near) * toward <= (self.near + 2) * side.factor
        return rows[within & ((u - far) * toward > -side.factor)]

    def _run(self, u, now):
        """Let the shadow pass over the rows at u, and over the columns that lines cross between two of them."""
        place, beside = self._place(u), self._beside(np.arange(self._count)).astype(np.float32)
        drop, more = self.line.drop_m(u), self.line.more_m(u)
        left, part = split(place)
        column, way = _columns_between(place)
        crossed = np.flatnonzero(np.isfinite(way))
        column, way = column[crossed], way[crossed]
        between = [values[crossed] + way * np.diff(values)[crossed] for values in (drop, more)]
        under = _Under(self.side, self._rows, self._count, -self.line.toward)
        buffers = np.empty((5, BLOCK, self._count), dtype=np.float32)
        for first in range(0, len(u), BLOCK):
            rows = slice(first, min(first + BLOCK, len(u)))
            ground, tilt, crossing, cells, low = buffers[:, : rows.stop - first]
            telling = first >= self.told_from
            _tilt(beside, drop[rows], more[rows], tilt)
            under.rows(rows, left[rows], part[rows], tilt, ground, cells if telling else None)
            if telling:
                _pairs(np.minimum, ground, cells, low)
            some = slice(*np.searchsorted(crossed, (first - 1, rows.stop - 1)))
            _tilt(beside, *(values[some] for values in between), tilt[: some.stop - some.start])
            under.columns(crossed[some], column[some], way[some], tilt, crossing, ground, first - 1)
            if telling:
                _pairs(np.maximum, ground, cells, cells)
                told = slice(first - self.told_from, rows.stop - self.told_from)
                if first == self.told_from:
                    most, least = (which(now, np.append(now[1:], now[-1])) for which in (np.maximum, np.minimum))
                most, least = _running_max(most, cells, self.most_m[told]), _running_max(least, low, self.least_m[told])
            now = _running_max(now, ground, self.height_m[rows])

    def _beside(self, number):
        """How much greater v is on lines than on the one through the middle."""
        return self._first + self.side.factor * number

    def _place(self, u):
        """Column of the side, in its own cells, at which the first line passes u."""
        return (self._first + self.line.v(u) - self.side.v) / self.side.factor

    def _entering(self, before, u):
        """What lines bring with them, shape (count,), to the first row on which they stand on the side."""
        if before is None:
            return np.full(self._count, UNKNOWN_M, dtype=np.float32)
        heights, beyond, cols = self.side.heights_m, self.side.beyond, self.side.cols
        number, place = np.arange(self._count), self._place(u) - cols
        last = heights.shape[1] - 1 - 2 * cols
        grows = place[-1] >= place[0]
        row = np.searchsorted(place, -number) if grows else np.searchsorted(-place, number - last)
        unknown = beyond - self._rows[0] if self.line.toward < 0 else self._rows[0] + 1 + beyond - len(heights)
        return before.at(u[np.clip(row, max(unknown, 0), len(u) - 1)], self._beside(number))


class _Under:
    """What ground of a side lies under some lines in rows that follow each other in the order of the light."""

    def __init__(self, side, rows, count, down):
        self._side, self._rows, self._count, self._down = side, rows.tolist(), count, down

    def rows(self, rows, left, part, tilt, ground, cells=None):
        """Heights part of the way from cells to the next ones beside, and if wanted of those, less what the light comes down by."""
        heights, rises = self._side.heights_m, self._side.rises_m
        grounds = (ground,) if cells is None else (ground, cells)
        for some, lines, row, col, step in self._stretches(self._rows[rows], left.tolist(), grounds):
            here = ground[some, lines]
            np.multiply(view(rises, row, col, here.shape, step), part[some, None], out=here)
            here += view(heights, row, col, here.shape, step)
            if cells is not None:
                np.subtract(view(heights, row, col + 1, here.shape, step), tilt[some, lines], out=cells[some, lines])
        ground -= tilt

    def columns(self, rows, column, way, tilt, spare, ground, first):
        """Raise ground, whose rows are those after `first`, to heights part of the way to them, less what the light comes down by."""
        heights, numbers, reached = self._side.heights_m, [self._rows[row] for row in rows.tolist()], (rows - first).tolist()
        for some, lines, row, col, step in self._stretches(numbers, column.tolist()):
            crossing = spare[some, lines]
            here = view(heights, row, col, crossing.shape, step)
            np.subtract(view(heights, row + self._down, col, crossing.shape, step), here, out=crossing)
            crossing *= way[some, None]
            crossing += here
            crossing -= tilt[some, lines]
            there = ground[reached[some.start] : reached[some.stop - 1] + 1 : max(step[0] * self._down, 1), lines]
            np.maximum(there, crossing, out=there)

    def _stretches(self, rows, left, grounds=()):
        """Rows whose cells under the lines step evenly: which of them, lines on the side, row and column of their first cell, steps.

        In the grounds that are given unknown is written under other lines.
        """
        width = self._side.heights_m.shape[1] - 1
        for first, last, *step in stretches(rows, left):
            some, start, end = slice(first, last), left[first], left[last - 1]
            low, high = max(-start, -end, 0), min(width - start, width - end, self._count)
            if high - low < self._count:
                for ground in grounds:
                    ground[some] = UNKNOWN_M
            if low < high:
                yield some, slice(low, high), rows[first], start + low, step


def _tilt(beside, drop, more, out):
    """What the light comes down by on every line of some rows."""
    np.multiply(beside, more[:, None], out=out)
    out += drop[:, None]


def stretches(rows, cols):
    """Stretches of cells that step evenly, and by no more than a column: first, end, and step of each along rows and columns."""
    found, first, count = [], 0, len(rows)
    while first < count:
        last, step = first + 1, (0, 0)
        if last < count and abs(cols[last] - cols[first]) <= 1:
            step = rows[last] - rows[first], cols[last] - cols[first]
            while last < count and cols[last] - cols[last - 1] == step[1] and rows[last] - rows[last - 1] == step[0]:
                last += 1
        found.append((first, last, *step))
        first = last
    return found


def view(array, row, col, shape, step):
    """Part of an array from a cell on, each of its rows so many rows and columns farther than the one before."""
    width, size = array.shape[1], array.itemsize
    return np.ndarray(shape, array.dtype, array, (row * width + col) * size, ((step[0] * width + step[1]) * size, size))


def split(place):
    """Positions as whole cells and parts of one, float32."""
    left = np.floor(place).astype(int)
    return left, (place - left).astype(np.float32)


def _pairs(which, ground, cells, out):
    """The highest, or the lowest, of the ground under a line, under the next one and of the cell between them.

    All rows are taken as one, over which numpy runs four times as fast; so what it tells of the last line means nothing.
    """
    ground, cells, out = (values.reshape(-1) for values in (ground, cells, out))
    which(cells[:-1], ground[:-1], out=out[:-1])
    which(out[:-1], ground[1:], out=out[:-1])


def _running_max(now, values, out):
    """Write the highest of what was before and of all rows so far, row by row; the last one."""
    for value, here in zip(values, out):
        np.maximum(now, value, out=here)
        now = here
    return now


def _columns_between(place):
    """Column that the first line crosses between one row and the next, and how far between; nan where none.

    All lines stand equally far from the columns beside them: they cross one at the same u.
    """
    left = np.floor(place).astype(int)
    column = np.maximum(left[:-1], left[1:])
    with np.errstate(divide="ignore", invalid="ignore"):
        way = np.where(left[:-1] != left[1:], (column - place[:-1]) / np.diff(place), np.nan)
    return column, way.astype(np.float32)
