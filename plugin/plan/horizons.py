"""Where bodies stand against the terrain skyline, and when they stand above it.

A skyline is found on a lattice of azimuths, as far as it is asked for. Between two nodes it is the great circle through them, a plane fixed
to the site: a body stands above it or not, may pass behind several peaks, and each crossing is solved. Times in s of TT, angles in degrees.
"""

import numpy as np

from ..sky import arcs, crossings
from ..sky.horizontal import altitude_deg, azimuth_deg
from .azimuths import AzimuthRun, offset_deg

BLOCK_SKYLINES = 500  # points whose skylines are best held at once: 35 MB
NODES = 3600  # round the horizon: 3.5 m apart at 2 km, 70 m at 40 km
STEP_DEG = 360.0 / NODES
CELL = 10  # nodes whose highest and lowest tell at once that a body is clear, or hidden
LONGEST_S = 86_000.0  # of a piece to work on: less than a turn of the stars
SLACK_DEG = 0.05  # a body that moves among the stars may stand so much higher than in the meridian
PASSES = 2  # of narrowing runs down to where a body may meet its skyline
NARROW_S = 1.0  # 15" on the sky, of the slack
ROOT_S = 0.01
JOIN_S = 0.05  # a gap or a stretch as short as this is rounding at a node


class Horizons:
    """Skylines over P points.

    Parameters
    ----------
    relief : Relief
    lon_deg, lat_deg, lens_m : ndarray, shape (P,)
        Points, and the height of the lens by the elevation model; nan where that does not reach. [deg], [m]
    progress : callable, optional
        Asked now and then while rays are followed; False from it stops them, and `stopped` is true from then on.
    """

    def __init__(self, relief, lon_deg, lat_deg, lens_m, progress=None):
        self._relief, self._progress, self.stopped = relief, progress, False
        self._places = lon_deg, lat_deg, lens_m
        self._alt_deg = np.full((len(lon_deg), NODES), np.nan)
        self._found = np.repeat(~np.isfinite(lens_m)[:, None], NODES, axis=1)  # as far as it can be

    def altitude_deg(self, point, az_deg):
        """Altitude of the skyline of points at azimuths, both shape (N,); nan where no ground is known. [deg]."""
        place = np.asarray(az_deg, float) / STEP_DEG
        left = np.floor(place)
        part = place - left
        left = left.astype(np.int64)
        self.find(point, left, left + 1)
        ends = self.nodes_deg(point, left), self.nodes_deg(point, left + 1)
        return np.where(part == 0.0, ends[0], ends[0] * (1.0 - part) + ends[1] * part)

    def nodes_deg(self, point, node):
        """Altitudes at nodes that have been found. [deg]."""
        return self._alt_deg[point, node % NODES]

    def bounds_deg(self, point, first, last):
        """The lowest and the highest of the skyline in runs of whole cells, shape (N,); -90 where no ground is known. [deg]."""
        known = np.where(np.isnan(self._alt_deg), -90.0, self._alt_deg).reshape(len(self._alt_deg), -1, CELL)
        beside = np.roll(known[:, :, 0], -1, axis=1)  # a cell ends with the first node of the next
        count = last - first
        begin = np.cumsum(count) - count
        line = np.repeat(np.arange(len(count)), count)
        cell = (first[line] + np.arange(len(line)) - begin[line]) % (NODES // CELL)
        lowest, highest = np.minimum(known.min(axis=2), beside), np.maximum(known.max(axis=2), beside)
        return np.minimum.reduceat(lowest[point[line], cell], begin), np.maximum.reduceat(highest[point[line], cell], begin)

    def find(self, point, first, last):
        """Find the nodes from first to last, ends included, of N points, which may occur several times."""
        length = np.minimum(last - first, NODES - 1) + 1
        first = first % NODES
        edges = np.zeros((len(self._found), 2 * NODES + 1), dtype=np.int32)
        np.add.at(edges, (point, first), 1)
        np.add.at(edges, (point, first + length), -1)
        held = np.cumsum(edges, axis=1) > 0
        row, node = np.nonzero((held[:, :NODES] | held[:, NODES:-1]) & ~self._found)
        if self.stopped or not len(row):
            return
        seen = self._relief.skyline(*(values[row] for values in self._places), node * STEP_DEG, progress=self._progress)
        if seen is None:
            self.stopped = True
            return
        self._alt_deg[row, node] = seen.alt_deg
        self._found[row, node] = True


def clear_of_skyline(horizons, point, target, motion, air, met):
    """The parts of stretches of time in which a target stands above the skyline.

    Parameters
    ----------
    horizons : Horizons
    point : ndarray of int, shape (R,)
        Point whose skyline a row has.
    target : Target
    motion : Motion
        Of the target's body over the R rows' sites.
    air : Air
        Of the rows.
    met : Arcs
        Stretches of the R rows.

    Returns
    -------
    Arcs
        In directions in which no ground is known nothing is taken away.
    """
    row, start, end = _short(target, motion, met)
    view = _View(target, motion)
    runs = AzimuthRun(motion, row, start, end, view.is_opposite(row, 0.5 * (start + end)))
    stretch, piece = np.nonzero(runs.edges[:, 1:] > runs.edges[:, :-1])
    row = row[stretch]
    start, end = runs.edges[stretch, piece], runs.edges[stretch, piece + 1]
    az_from = runs.az_deg[stretch, piece]
    az_to = az_from + runs.moved_deg()[stretch, piece]
    if not len(row):
        return met
    parts = []
    for _ in range(PASSES):
        clear, (row, start, end, az_from, az_to) = _narrowed(horizons, point, view, air, row, start, end, az_from, az_to)
        parts.append(clear)
    parts.append(_above(horizons, point, view, air, row, start, end, az_from, az_to))
    return _joined(*(np.concatenate(values) for values in zip(*parts)), met)


class _View:
    """The direction of a target, also of the arch's top, which no body has."""

    def __init__(self, target, motion):
        self._is_arch, self._motion = target.is_arch, motion

    def enu(self, row, tt_s):
        """Vectors toward the target, of any length, shape (3, ...)."""
        east, north, up = self._motion.enu(row, tt_s)
        if self._is_arch:  # as high as the galactic pole is from the zenith, away from that pole which is up
            return np.stack([-up * east, -up * north, east * east + north * north])
        return np.stack([east, north, up])

    def altitude_deg(self, row, tt_s):
        """Geometric altitude. [deg]."""
        return altitude_deg(*self.enu(row, tt_s))

    def azimuth_deg(self, row, tt_s):
        """Azimuth. [deg]."""
        return azimuth_deg(*self.enu(row, tt_s)[:2])

    def is_opposite(self, row, tt_s):
        """Where the target has the azimuth opposite to its body's; None for what is a body."""
        return self._motion.enu(row, tt_s)[2] > 0.0 if self._is_arch else None


def _short(target, motion, met):
    """Stretches of less than a day, and for the arch on one side of the leap of its top's azimuth."""
    sets = [met]
    if target.is_arch:
        north_up = motion.arcs(crossings.above(motion.sites, 0.0), met.low, met.high)
        sets = [arcs.every(met, north_up), arcs.every(met, arcs.outside(north_up))]
    row, start, end = (np.concatenate([getattr(part, name) for part in sets]) for name in ("row", "start", "end"))
    pieces = np.ceil((end - start) / LONGEST_S).astype(np.int64)
    source = np.repeat(np.arange(len(row)), pieces)
    number = np.arange(len(source)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    step_s = ((end - start) / np.maximum(pieces, 1))[source]
    begin = start[source] + number * step_s
    return row[source], begin, np.where(number + 1 == pieces[source], end[source], begin + step_s)


def _narrowed(horizons, point, view, air, row, start, end, az_from, az_to):
    """Of runs of steady azimuth the parts above all of their skyline, and what is left between its lowest and its highest.

    Between two transits of the meridian a body rises or sinks.
    """
    cells = np.stack([np.floor(np.minimum(az_from, az_to)), np.floor(np.maximum(az_from, az_to)) + 1.0]).astype(np.int64)
    horizons.find(point[row], CELL * cells[0], CELL * cells[1])
    lowest, highest = horizons.bounds_deg(point[row], *cells)
    at_start, at_end = (view.altitude_deg(row, t) for t in (start, end))
    rises = at_end >= at_start
    passed = []
    for limit_deg in (air.take(row).true(lowest) - SLACK_DEG, air.take(row).true(highest) + SLACK_DEG):
        is_over = at_start > limit_deg
        changes = np.nonzero(is_over != (at_end > limit_deg))[0]
        t_s = _bisected(lambda i, t, limit=limit_deg: view.altitude_deg(row[i], t) > limit[i], changes, start, end, is_over, NARROW_S)
        passed.append(np.where(is_over == (at_end > limit_deg), np.where(is_over == rises, start, end), t_s))
    over = np.where(rises, passed[1], start), np.where(rises, end, passed[1])
    begin, finish = np.where(rises, passed[0], passed[1]), np.where(rises, passed[1], passed[0])
    some, left = over[1] > over[0], finish > begin
    row_left = row[left]
    moved_deg = [offset_deg(view.azimuth_deg(row_left, t[left]), az_from[left]) for t in (begin, finish)]
    return (row[some], over[0][some], over[1][some]), (row_left, begin[left], finish[left], *(az_from[left] + m for m in moved_deg))


def _above(horizons, point, view, air, row, start, end, az_from, az_to):
    """Stretches above the skyline within runs of steady azimuth: row, start, end."""
    run, left, begin, finish = _between_nodes(view, row, start, end, az_from, az_to)
    row = row[run]
    normal = _planes(horizons, point[row], left, air.take(row))
    known = np.isfinite(normal[0])

    def height(index, tt_s):
        return (normal[:, index] * view.enu(row[index], tt_s)).sum(axis=0)

    every = np.arange(len(row))
    middle = _turning(height, begin, finish)
    edges = np.stack([begin, middle, finish])
    inside = np.stack([height(every, t) >= 0.0 for t in edges]) | ~known
    parts = []
    for low, high, at_low, at_high in zip(edges[:-1], edges[1:], inside[:-1], inside[1:]):
        root = _bisected(lambda index, t: height(index, t) >= 0.0, np.nonzero(at_low != at_high)[0], low, high, at_low)
        some = (at_low | at_high) & (high > low)
        parts.append((row[some], np.where(at_low, low, root)[some], np.where(at_high, high, root)[some]))
    return [np.concatenate(values) for values in zip(*parts)]


def _between_nodes(view, row, start, end, az_from, az_to):
    """Runs cut at the nodes they pass: run, the node left of each piece, its begin and end."""
    grows = az_to >= az_from
    sign = np.where(grows, 1.0, -1.0)
    first = np.where(grows, np.floor(az_from / STEP_DEG), np.ceil(az_from / STEP_DEG) - 1.0).astype(np.int64)
    last = np.where(grows, np.ceil(az_to / STEP_DEG) - 1.0, np.floor(az_to / STEP_DEG)).astype(np.int64)
    count = np.maximum(np.abs(last - first) * (sign * (last - first) > 0.0), 0) + 1
    run = np.repeat(np.arange(len(row)), count)
    number = np.arange(len(run)) - np.repeat(np.cumsum(count) - count, count)
    left = first[run] + np.where(grows, 1, -1)[run] * number
    node_deg = (left + ~grows[run]) * STEP_DEG  # at which the piece begins, but for the first
    away_deg = sign[run] * (node_deg - az_from[run])

    def before(index, tt_s):
        off = (sign[run[index]] * (view.azimuth_deg(row[run[index]], tt_s) - az_from[run[index]]) + 90.0) % 360.0 - 90.0
        return off < away_deg[index]

    later = np.nonzero(number > 0)[0]
    begin = np.where(number == 0, start[run], _bisected(before, later, start[run], end[run], np.ones(len(run), dtype=bool)))
    ends_run = np.append(run[1:] != run[:-1], True) if len(run) else np.zeros(0, dtype=bool)
    return run, left, begin, np.where(ends_run, end[run], np.append(begin[1:], 0.0)[: len(run)])


def _planes(horizons, point, left, air):
    """Normals, on the upper side, of the planes through the nodes at both ends of pieces, shape (3, N); nan where one is unknown."""
    sides = []
    for node in (left, left + 1):
        az, alt = np.radians(node * STEP_DEG), np.radians(air.true(horizons.nodes_deg(point, node)))
        sides.append(np.stack([np.sin(az) * np.cos(alt), np.cos(az) * np.cos(alt), np.sin(alt)]))
    return np.cross(sides[1], sides[0], axis=0)


def _turning(height, begin, end):
    """When the height over a plane turns within pieces; their begin where it does not."""
    every = np.arange(len(begin))

    def rises(index, tt_s):
        return height(index, tt_s + ROOT_S) >= height(index, tt_s - ROOT_S)

    at_begin = rises(every, begin)
    turns = np.nonzero((at_begin != rises(every, end)) & (end - begin > 4.0 * ROOT_S))[0]
    return _bisected(rises, turns, begin, end, at_begin)


def _bisected(state, index, low, high, at_low, within_s=ROOT_S):
    """When a state changes, for the pieces at an index; `low` for the others. Each is halved by itself: the same beside any others."""
    found = low.copy()
    low, high, at_low = low[index], high[index], at_low[index]
    wide = np.flatnonzero(high - low > within_s)
    while wide.size:
        middle = 0.5 * (low[wide] + high[wide])
        same = state(index[wide], middle) == at_low[wide]
        low[wide[same]], high[wide[~same]] = middle[same], middle[~same]
        wide = wide[high[wide] - low[wide] > within_s]
    found[index] = 0.5 * (low + high)
    return found


def _joined(row, start, end, met):
    """Stretches in any order, those that touch made one."""
    order = np.lexsort((start, row))
    row, start, end = row[order], start[order], end[order]
    new = np.ones(len(row), dtype=bool)
    new[1:] = (row[1:] != row[:-1]) | (start[1:] - end[:-1] > JOIN_S)
    row, start, end = row[new], start[new], end[np.append(new[1:], True)] if len(row) else end
    joined = arcs.Arcs(row, start, end, met.low, met.high)
    return joined.keep(end - start > JOIN_S)
