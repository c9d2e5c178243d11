"""How a body's azimuth runs through a stretch of time: when it comes closest to a bearing, and which azimuths it passes.

Azimuth grows or falls steadily but for turning back (in the tropics the Sun, elsewhere every star that culminates between pole and zenith).
Between two transits of the meridian it turns back once or not at all, so stretches are cut there. Times in s of TT, angles in degrees.
"""

import numpy as np

from ..sky.crossings import clockwise_of
from ..sky.horizontal import azimuth_deg, in_turn_deg

TRANSITS = 3  # at most so many in a stretch of a day
TURN_S = 0.01


class AzimuthRun:
    """Stretches of at most a day, cut where the azimuth turns back or the body crosses the meridian.

    Parameters
    ----------
    motion : Motion
        Over R sites.
    row : ndarray of int, shape (N,)
        Site of each stretch.
    start, end : ndarray, shape (N,)
        [s of TT]
    opposite : ndarray of bool, shape (N,), optional
        Where the direction opposite to the body is meant.

    Attributes
    ----------
    edges : ndarray, shape (N, 9)
        Ascending; some coincide. [s of TT]
    az_deg : ndarray, shape (N, 9)
        Azimuth at the edges. [deg]
    """

    def __init__(self, motion, row, start, end, opposite=None):
        self.motion, self.row = motion, row
        lon = np.radians(motion.sites.lon_deg[row])
        first = np.ceil((motion.hour_angle(start) + lon) / np.pi)
        transits = motion.time_of_hour_angle((first[:, None] + np.arange(TRANSITS)) * np.pi - lon[:, None])
        edges = np.concatenate([start[:, None], np.clip(transits, start[:, None], end[:, None]), end[:, None]], axis=1)
        self.edges = np.sort(np.concatenate([edges, self._turnings(edges)], axis=1), axis=1)
        east, north, _ = motion.enu(row[:, None], self.edges)
        sign = 1.0 if opposite is None else np.where(opposite, -1.0, 1.0)[:, None]
        self.az_deg = azimuth_deg(sign * east, sign * north)

    def _clockwise(self, row, tt_s):
        """Whether the azimuth grows."""
        (meridian, east, axis), (d_meridian, d_east, d_axis) = self.motion.meridian_frame(row, tt_s, rates=True)
        sin_lat, cos_lat = self.motion.sites.sin_lat[row], self.motion.sites.cos_lat[row]
        north, d_north = cos_lat * axis - sin_lat * meridian, cos_lat * d_axis - sin_lat * d_meridian
        return north * d_east - east * d_north >= 0.0

    def _turnings(self, edges):
        grows = self._clockwise(self.row[:, None], edges)
        turnings = edges[:, :-1].copy()
        line, piece = np.nonzero(grows[:, 1:] != grows[:, :-1])
        low, high, at_low = edges[line, piece], edges[line, piece + 1], grows[line, piece]
        while len(low) and (high - low).max() > TURN_S:
            middle = 0.5 * (low + high)
            same = self._clockwise(self.row[line], middle) == at_low
            low, high = np.where(same, middle, low), np.where(same, high, middle)
        turnings[line, piece] = 0.5 * (low + high)
        return turnings

    def closest_to(self, bearing_deg):
        """Moments at which the azimuth is closest to bearings, shape (R,), each row's own; the first if several.

        The stretches must lie within 90° of the bearing. Returns shape (N,). [s of TT]
        """
        off_deg = offset_deg(self.az_deg, bearing_deg[self.row][:, None])
        best = np.argmin(np.abs(off_deg), axis=1)
        t_s = np.take_along_axis(self.edges, best[:, None], axis=1)[:, 0]
        passes = (off_deg[:, 1:] >= 0.0) != (off_deg[:, :-1] >= 0.0)
        line = np.nonzero(passes.any(axis=1))[0]
        piece = np.argmax(passes[line], axis=1)
        plane = clockwise_of(self.motion.sites, bearing_deg)
        low, high = self.edges[line, piece], self.edges[line, piece + 1]
        rows = self.row[line]
        values = [self.motion.value(plane, rows, t) for t in (low, high)]
        t_s[line] = self.motion.roots(plane, rows, low, high, *values)
        return t_s

    def moved_deg(self):
        """How far the azimuth moves between the edges, clockwise positive, shape (N, 8). [deg]."""
        grows = self._clockwise(self.row[:, None], 0.5 * (self.edges[:, 1:] + self.edges[:, :-1]))
        ahead = (self.az_deg[:, 1:] - self.az_deg[:, :-1]) % 360.0
        standing = self.edges[:, 1:] - self.edges[:, :-1] <= TURN_S
        moved = np.where(grows, ahead, ahead - 360.0)
        return np.where(standing | (ahead == 0.0), offset_deg(ahead, 0.0), moved)

    def reach(self):
        """Azimuths passed, clockwise from the first to the second, which may exceed 360. Each of shape (N,). [deg]."""
        run = np.concatenate([np.zeros((len(self.row), 1)), np.cumsum(self.moved_deg(), axis=1)], axis=1)
        return self.az_deg[:, 0] + run.min(axis=1), self.az_deg[:, 0] + run.max(axis=1)


def offset_deg(az_deg, bearing_deg):
    """Azimuth less bearing, in (-180, 180]. [deg]."""
    return 180.0 - in_turn_deg(180.0 - (az_deg - bearing_deg))


def union_of_reaches(row, from_deg, to_deg, rows):
    """One range of azimuths a row that holds all ranges of the row: all but the widest gap between them.

    Parameters
    ----------
    row : ndarray of int, shape (N,)
        Row of each range.
    from_deg, to_deg : ndarray, shape (N,)
        Clockwise. [deg]
    rows : int
        Number of rows.

    Returns
    -------
    az_from, az_to : ndarray, shape (rows,)
        Clockwise, in [0, 360); 0 and 360 for the whole circle, nan where a row has no range. [deg]
    """
    az_from, az_to = np.full(rows, np.nan), np.full(rows, np.nan)
    if not len(row):
        return az_from, az_to
    begin = in_turn_deg(from_deg)
    order = np.lexsort((begin, row))
    row, begin, length = row[order], begin[order], (to_deg - from_deg)[order]
    first = np.concatenate([[True], row[1:] != row[:-1]])
    apart = 2000.0 * row  # one running maximum serves all rows
    covered = np.maximum.accumulate(begin + length + apart) - apart
    last = np.concatenate([np.nonzero(first)[0][1:], [len(row)]]) - 1
    wrapped = (covered[last] - 360.0)[np.cumsum(first) - 1]  # what the ranges that pass north cover beyond it
    before = np.maximum(np.where(first, -np.inf, np.concatenate([[0.0], covered[:-1]])), wrapped)
    gap = begin - before
    widest = np.lexsort((-gap, row))[np.nonzero(first)[0]]
    present = row[widest]
    open_circle = gap[widest] > 0.0
    az_from[present] = np.where(open_circle, begin[widest], 0.0)
    az_to[present] = np.where(open_circle, in_turn_deg(before[widest]), 360.0)
    return az_from, az_to
