"""Sets of stretches of time, one set a row: and, or, not. Everything that asks "when" is put together from these.

The stretches of a row are disjoint and in order. Times are seconds on any scale, the same for all sets that are combined.
"""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Arcs:
    """For each of R rows a set of stretches within the row's span.

    Attributes
    ----------
    row : ndarray of int, shape (N,)
        Row of each stretch, ascending.
    start, end : ndarray, shape (N,)
        Ascending within a row. [s]
    low, high : ndarray, shape (R,)
        Span in which the sets are known. [s]
    """

    row: np.ndarray
    start: np.ndarray
    end: np.ndarray
    low: np.ndarray
    high: np.ndarray

    def __len__(self):
        return len(self.row)

    def counts(self):
        """Number of stretches of each row, shape (R,)."""
        return np.bincount(self.row, minlength=len(self.low))

    def contains(self, row, t_s):
        """Whether moments lie in a stretch of their row; both shapes (M,)."""
        origin, width = self._scale()
        place = np.searchsorted(self.row * width + (self.start - origin), row * width + (t_s - origin), side="right") - 1
        hit = (place >= 0) & (self.row[place] == row) if len(self.row) else np.zeros(len(row), bool)
        return hit & (t_s <= self.end[place]) if len(self.row) else hit

    def take(self, index):
        """The sets of the rows at an index array, shape (M,), as M rows; a row may be taken many times."""
        first = np.searchsorted(self.row, index, side="left")
        count = np.searchsorted(self.row, index, side="right") - first
        row = np.repeat(np.arange(len(index)), count)
        source = np.arange(len(row)) + np.repeat(first - (np.cumsum(count) - count), count)
        return Arcs(row, self.start[source], self.end[source], self.low[index], self.high[index])

    def keep(self, mask):
        """Only the stretches where a mask, shape (N,), is true."""
        return Arcs(self.row[mask], self.start[mask], self.end[mask], self.low, self.high)

    def _scale(self):
        """Origin and row width with which (row, time) becomes one sortable number."""
        origin = self.low.min() if len(self.low) else 0.0
        return origin, (self.high.max() - origin if len(self.low) else 0.0) + 1.0


def _where(sets, kept_counts):
    """Where the number of sets that hold is one of `kept_counts`."""
    low, high = sets[0].low, sets[0].high
    rows = np.arange(len(low))
    row = np.concatenate([rows, *(s.row for s in sets), *(s.row for s in sets), rows])
    time = np.concatenate([low, *(s.start for s in sets), *(s.end for s in sets), high])
    held = sum(len(s) for s in sets)
    step = np.concatenate([np.zeros(len(low), np.int8), np.ones(held, np.int8), -np.ones(held, np.int8), np.zeros(len(low), np.int8)])
    origin, width = sets[0]._scale()
    # A stable sort is quick on runs that are in order already.
    key = row * width + (time - origin)
    order = np.argsort(key, kind="stable")
    key = key[order]
    settled = np.ones(len(key), bool)
    settled[:-1] = key[1:] != key[:-1]  # what changes at one moment changes at once: no count in between is true
    keeps = np.zeros(len(sets) + 1, bool)
    keeps[list(kept_counts)] = True
    inside = keeps[np.cumsum(step[order], dtype=np.int64)[settled]]
    row, time = row[order][settled], time[order][settled]
    last = np.ones(len(row), bool)
    last[:-1] = row[1:] != row[:-1]
    inside[last] = False
    before = np.zeros(len(row), bool)
    before[1:] = inside[:-1]  # the end of a row is outside, so nothing leaks into the next
    starts, ends = inside & ~before, before & ~inside
    arcs = Arcs(row[starts], time[starts], time[ends], low, high)
    return arcs.keep(arcs.end > arcs.start)


def every(*sets):
    """Where all of the sets hold."""
    return sets[0] if len(sets) == 1 else _where(sets, [len(sets)])


def either(*sets):
    """Where at least one of the sets holds."""
    return sets[0] if len(sets) == 1 else _where(sets, range(1, len(sets) + 1))


def outside(arcs):
    """Where the set does not hold, within its span."""
    rows = np.arange(len(arcs.low))
    first = np.searchsorted(arcs.row, rows, side="left")  # a row's gaps begin at its low and at each of its ends
    row = np.insert(arcs.row, first, rows)
    start = np.insert(arcs.end, first, arcs.low)
    end = np.insert(arcs.start, np.searchsorted(arcs.row, rows, side="right"), arcs.high)
    gaps = Arcs(row, start, end, arcs.low, arcs.high)
    return gaps.keep(end > start)


def alike(first, second):
    """Where two sets both hold or both do not."""
    return _where([first, second], [0, 2])


def always(low, high):
    """The whole span of each row."""
    return Arcs(np.arange(len(low)), low, high, low, high)


def of_all_rows(start, end, low, high):
    """The same stretches, shapes (K,), in every row, cut to the rows' spans."""
    count = len(low)
    row = np.repeat(np.arange(count), len(start))
    arcs = Arcs(row, np.maximum(np.tile(start, count), low[row]), np.minimum(np.tile(end, count), high[row]), low, high)
    return arcs.keep(arcs.end > arcs.start)
