"""Which cells of a tile a light reaches, each told by its own ray over the near ground, and by the shadow on lines beyond.

Most cells need no ray of their own: those above the highest that a ray from between two lines may have met are lit, those below the lowest
are not. For the others the ray is followed from one crossing with the raster's lines to the next, first the near ones; who is shaded by
them, or lit for sure, is followed no farther. Neither changes what comes out.

Rays run alike from all cells of some rows.
"""

import numpy as np

from .sweep import BLOCK, UNKNOWN_M, split, stretches, view

NEAR_CELLS = 32  # along u, over which a cell's own ray is followed
CLOSE_CELLS = 8  # over which it is also looked at half way between two crossings
SAME = 0.01  # of a cell: crossings closer together are one
LEAST_ROWS, MOST_ROWS = 32, 256  # whose rays are taken as alike
TURNED = 0.002  # of a cell: and as many of them as end no farther beside their own


def near_cells(skip_m, cell_m):
    """Cells along u over which the own ray of a cell is followed: enough of them beyond what is passed over."""
    return max(NEAR_CELLS, int(np.ceil(skip_m / cell_m)) + 2)


class Field:
    """The cells of a tile on its finest side, `row` and `col` the first of them; how far ground between crossings may stand out.

    On a square of four cells heights are bilinear: the middle of a slanting chord lies by up to a quarter of the square's twist above its
    ends.
    """

    def __init__(self, side, span, skip_m, cell_m):
        self._span, self.row, self.col = span, int(span.u - side.u), int(span.v - side.v)
        self._reach = max(CLOSE_CELLS, int(np.ceil(skip_m / cell_m)) + 2) + 1
        rows, cols = (slice(first - self._reach, first + count + self._reach) for first, count in zip((self.row, self.col), span[2:]))
        rises = side.rises_m[rows, cols]
        twist = np.abs(rises[1:] - rises[:-1])
        twist[twist > -0.1 * UNKNOWN_M] = 0.0  # beside unknown ground no chord passes above its ends
        self._bulge_m = np.ascontiguousarray(0.25 * _highest(_highest(twist, self._reach).T, self._reach).T)

    def bulge_m(self, line):
        """How much higher than its crossings with rows and columns the close ground under the ray of a cell may be.

        An array (rows, cols), and what it is to be multiplied by.
        """
        u = self._span.u + np.array([0.0, self._span.rows - 1.0])
        slants = (line.v(u + line.toward * self._reach) - line.v(u)) / self._reach
        row, col = self._reach if line.toward > 0 else 0, self._reach - 1 if slants[0] > 0.0 else 1
        slant = np.float32(min(1.01 * np.abs(slants).max(), 1.0))  # no chord of a square has more of both sides
        return self._bulge_m[row : row + self._span.rows, col : col + self._span.cols], slant


def lit_cells(shadow, field, lens_m, skip_m):
    """Which cells of a tile are lit, shape (rows, cols) along u, v.

    Parameters
    ----------
    shadow : sweep.Shadow
        On the tile's finest side.
    field : Field
    lens_m, skip_m : float
        Of the camera above the ground; ground nearer to it is passed over. [m]
    """
    lit = np.empty((shadow.span.rows, shadow.span.cols), dtype=bool)
    levels, alike = _Levels(shadow, field), alike_rows(shadow)
    unsure = np.float32(shadow.unsure_m(alike))
    for first in range(0, len(lit), alike):
        rows = slice(first, min(first + alike, len(lit)))
        lit[rows] = _Strip(shadow, levels, rows, lens_m, skip_m, unsure).lit()
    return lit


def alike_rows(shadow):
    """How many rows of cells have rays that are taken as alike: those of the middle one."""
    turn = shadow.turn(1)
    return int(np.clip(TURNED / turn, LEAST_ROWS, MOST_ROWS)) if turn > 0.0 else MOST_ROWS


class _Levels:
    """Heights around a tile less what the light has come down by, from `above` rows before it on; columns are the side's."""

    def __init__(self, shadow, field):
        side, span, line, near = shadow.side, shadow.span, shadow.line, shadow.near + 1
        (self.bulge_m, self.slant), self.col, self.width = field.bulge_m(line), field.col, side.heights_m.shape[1]
        self.above, below = (0, near) if line.toward > 0 else (near, 0)
        rows, cols = slice(field.row - self.above, field.row + span.rows + below), slice(field.col - near, field.col + span.cols + near)
        u, v = side.u + np.arange(rows.start, rows.stop), (side.v + np.arange(cols.start, cols.stop)).astype(np.float32)
        drop, more = line.drop_m(u), line.more_m(u)
        drop -= more * line.v(u).astype(np.float32)
        self.level_m = np.empty((len(u), self.width), dtype=np.float32)
        self._levels, self._rises = self.level_m.reshape(-1), side.rises_m[rows].reshape(-1)
        heights = side.heights_m[rows]
        for i in range(0, len(u), BLOCK):
            level = self.level_m[i : i + BLOCK, cols]
            np.multiply(more[i : i + BLOCK, None], v, out=level)
            level += drop[i : i + BLOCK, None]
            np.subtract(heights[i : i + BLOCK, cols], level, out=level)

    def level(self, k, j, cells):
        """Levels k rows and j columns from cells, which are counted along rows of this width."""
        return self._at(self._levels, k, j, cells)

    def rise(self, k, j, cells):
        """How much higher than there the ground in the next column is."""
        return self._at(self._rises, k, j, cells)

    def _at(self, values, k, j, cells):
        start = (self.above + k) * self.width + self.col + j
        return values[start:].take(cells, mode="clip")  # all of them are there; to have numpy look takes twice as long as all the rest


class _Strip:
    """Rows of a tile whose cells' own rays run alike."""

    def __init__(self, shadow, levels, rows, lens_m, skip_m, unsure_m):
        self._shadow, self._levels, self._rows, self._cols = shadow, levels, rows, shadow.span.cols
        self._lens_m, self._unsure_m = np.float32(lens_m), unsure_m
        u = shadow.span.u + np.arange(rows.start, rows.stop)
        self._steps = Steps(shadow.line, 0.5 * (u[0] + u[-1]), shadow.near, skip_m)
        self._order, (self._left, self._part) = shadow.order(u).astype(int), shadow.under(u, shadow.span.v)

    def lit(self):
        """Which cells are lit."""
        lit, shaded = np.empty((2, len(self._order), self._cols), dtype=bool)
        buffers = np.empty((2, BLOCK, self._cols), dtype=np.float32)
        for first in range(0, len(lit), BLOCK):
            some = slice(first, min(first + BLOCK, len(lit)))
            self._tell(some, lit[some], shaded[some], *buffers[:, : some.stop - first])
        unsure = np.equal(lit, shaded, out=shaded)
        cells = np.flatnonzero(unsure)
        lit.reshape(-1)[cells] = self._by_own_rays(cells, np.count_nonzero(unsure, axis=1))
        return lit

    def _tell(self, some, lit, shaded, low, high):
        """Write which cells of some rows are lit, and which are not, by what any ray from between two lines has met."""
        levels, steps, way = self._levels, self._steps, -self._shadow.line.toward
        rows = slice(self._rows.start + some.start, self._rows.start + some.stop)
        level = levels.level_m[levels.above :][rows, levels.col : levels.col + self._cols]
        np.add(level, self._lens_m + self._unsure_m, out=high)
        np.multiply(levels.bulge_m[rows], levels.slant, out=low)
        low += self._unsure_m - self._lens_m
        np.subtract(level, low, out=low)
        bounds = (
            (np.greater_equal, low[::way], steps.start, self._shadow.most_m, lit[::way]),
            (np.less, high[::way], steps.whole, self._shadow.least_m, shaded[::way]),
        )
        left, order = self._left[some][::way].tolist(), (self._order[some][::way] - self._shadow.told_from).tolist()
        for first, last, *step in stretches(order, left):
            for told, lens, ahead, ground, out in bounds:
                ground = view(ground, order[first] - ahead, left[first], (last - first, self._cols), step)
                told(lens[first:last], ground, out=out[first:last])

    def _by_own_rays(self, cells, counts):
        """Whether some cells, by their number within the rows, are lit, shape (N,); in every row so many of them."""
        shadow, steps, levels = self._shadow, self._steps, self._levels
        places = self._places(levels.width, np.arange(self._rows.start, self._rows.stop), 0, cells, counts)
        lens = levels.level(0, 0, places) + self._lens_m
        beyond = self._places(shadow.most_m.shape[1], self._order - steps.close - shadow.told_from, self._left, cells, counts)
        sure = lens - self._unsure_m
        beyond_sure = shadow.most_m.reshape(-1).take(beyond, mode="clip") <= sure
        sure -= levels.slant * levels.bulge_m[self._rows].reshape(-1).take(cells, mode="clip")
        highest = np.full(len(cells), UNKNOWN_M, dtype=np.float32)

        self._pass(highest, places, steps.close_rows, steps.close_cols, steps.between[:1])
        lit = highest <= lens
        done = lit & beyond_sure
        done &= highest <= sure
        which = np.flatnonzero(lit > done)
        places, lens, highest, beyond_sure = (values.take(which, mode="clip") for values in (places, lens, highest, beyond_sure))
        self._pass(highest, places, (), (), steps.between[1:])
        seen = highest <= lens
        lit[which] = seen
        some = np.flatnonzero(seen > beyond_sure)
        which, places, lens, highest = (values.take(some, mode="clip") for values in (which, places, lens, highest))
        self._pass(highest, places, steps.rows, steps.cols, ())
        np.maximum(highest, self._far(cells[which], np.repeat(np.arange(len(counts)), counts)[which]), out=highest)
        lit[which] = highest <= lens
        return lit

    def _places(self, width, row, col, cells, counts):
        """Where some cells lie in an array of that width, if the first cells of the rows lie at `row` and `col`."""
        starts = row * width + col - np.arange(len(counts)) * self._cols
        return np.repeat(starts, counts) + cells

    def _pass(self, highest, cells, rows, cols, between):
        """Raise the highest ground to what the rays of cells cross."""
        level, rise = self._levels.level, self._levels.rise
        for k, j, part in rows:
            ground = rise(k, j, cells)
            ground *= part
            ground += level(k, j, cells)
            np.maximum(highest, ground, out=highest)
        for k, j, part in cols:
            here, ground = level(k, j, cells), level(k + 1, j, cells)
            ground -= here
            ground *= part
            ground += here
            np.maximum(highest, ground, out=highest)
        for (k, down), (j, right) in between:
            here, ground = rise(k, j, cells), rise(k + 1, j, cells)
            for values, row in ((here, k), (ground, k + 1)):
                values *= right
                values += level(row, j, cells)
            ground -= here
            ground *= down
            ground += here
            np.maximum(highest, ground, out=highest)

    def _far(self, cells, row):
        """The shadow of the ground beyond the near one, over cells in rows."""
        shadow, cols = self._shadow, self._cols
        first = np.maximum(self._order - shadow.near, 0) * shadow.height_m.shape[1] + self._left - np.arange(len(self._left)) * cols
        place, heights = first[row] + cells, shadow.height_m.reshape(-1)
        here, far = heights.take(place), heights.take(place + 1)
        far -= here
        far *= self._part[row]
        far += here
        return far


class Steps:
    """What a cell's own ray crosses, the same for all cells of some rows: steps k along u and j along v, and the part of the next step.

    `rows`: crossings with rows, (k, j, part along v). `cols`: with columns, (k, j, part along u); `close_rows`, `close_cols` are those up
    to `close` steps along u, and the others have the rest. `between`: where ground begins to count and places between close crossings,
    ((k, part along u), (j, part along v)). Ground counts in part from step `start` on, from step `whole` on all of it.
    """

    def __init__(self, line, u, cells, skip_m):
        step = np.arange(cells + 1)
        u_there = u + line.toward * step
        away, beside = np.abs(line.away_m(u_there) - line.away_m(u)), line.v(u_there) - line.v(u)
        first = np.interp(skip_m, away, step)
        self.start, self.whole = int(np.floor(first)), int(np.ceil(first))
        self.close = max(CLOSE_CELLS, self.whole + 1)
        counts = away[1:] >= skip_m
        rows = _crossings(line.toward * step[1:][counts], beside[1:][counts])
        near = int((step[1:][counts] <= self.close).sum())
        self.close_rows, self.rows = rows[:near], rows[near:]
        across = np.arange(1, int(abs(beside[-1])) + 1)
        met = np.interp(across, np.abs(beside), step)
        counts = np.interp(met, step, away) >= skip_m
        cols = [(k, j, part) for j, k, part in _crossings((np.sign(beside[-1]) * across)[counts], line.toward * met[counts])]
        near = int((met[counts] <= self.close).sum())
        self.close_cols, self.cols = cols[:near], cols[near:]
        places = _places(step, met, first)
        at = (_halves(line.toward * places), _halves(np.interp(places, step, beside)))
        self.between = list(zip(*at))


def _places(step, met, first):
    """Where along u ground begins to count, and half way from there on between one crossing and the next."""
    crossings = np.sort(np.concatenate([step, met]))
    crossings = np.concatenate([[first], crossings[crossings > first + SAME]])
    crossings = crossings[crossings <= max(CLOSE_CELLS, first + 1)]
    return np.concatenate([[first], 0.5 * (crossings[1:] + crossings[:-1])])


def _halves(place):
    left, part = split(place)
    return list(zip(left.tolist(), part))


def _crossings(whole, place):
    """Steps that are whole along one axis, and the place along the other in steps and parts."""
    left, part = split(place)
    return list(zip(whole.astype(int).tolist(), left.tolist(), part))


def _highest(values, count):
    """Highest of each so many rows that follow each other."""
    done = 1
    while done < count:
        more = min(done, count - done)
        values = np.maximum(values[:-more], values[more:])
        done += more
    return values
