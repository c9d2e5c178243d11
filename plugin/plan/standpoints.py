"""Standpoints: where on a path a subject is seen in the direction that is wanted.

Along a path the bearing to a subject is a continuous function, and so is the direction wanted at the running place. Paths are cut at their
vertices and where they come closest to the subject; between two such stations the bearing turns by less than 90 degrees one way, but for
the bending of geodesics on the map, which is looked at where it may decide. So no place is missed between stations, and none is sampled.

Angles in degrees, distances in metres. `miss` is the bearing less the direction wanted.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from ..ground import geodesic
from .aims import PER_M
from .azimuths import offset_deg, union_of_reaches
from .roots import roots
from .sightlines import NOT_FACING, is_facing

TOO_NEAR, TOO_FAR = "too_near", "too_far"  # places left out; NOT_FACING too
NEAREST_M = 0.01  # nearer to its foot point a subject has no direction
HALF_STEP_M = 0.5  # a path that wavers less than this about the line to its subject runs along it
STATION_CELLS = 1_000_000  # stations x moments worked on at once
SUBJECT_CELLS = 1_000_000  # subjects x vertices looked at at once
SAME_PLACE_M = 1e-4
CLOSEST_STEPS = 4  # each divides the error by thousands
SLOPE_PART = 1e-3  # of the way between two stations, over which a slope is measured
TURNING_STEPS = 40


class Stations(NamedTuple):
    """Places at which paths are cut for the search, arrays (N,), in order along the path for each subject; `linked` to the next."""

    subject: np.ndarray
    piece: np.ndarray
    u: np.ndarray
    lon_deg: np.ndarray
    lat_deg: np.ndarray
    bearing_deg: np.ndarray
    dist_m: np.ndarray
    linked: np.ndarray


class Runs(NamedTuple):
    """Parts of pieces on which the miss grows or falls steadily, arrays (K,); by moment, then subject, then along the path."""

    moment: np.ndarray
    subject: np.ndarray
    piece: np.ndarray
    u0: np.ndarray
    u1: np.ndarray
    miss0: np.ndarray
    miss1: np.ndarray
    dist0_m: np.ndarray
    dist1_m: np.ndarray
    joined: np.ndarray  # whether the next one goes on where this one ends

    def take(self, index):
        """The runs at an index array or mask; what is joined must be told anew."""
        return Runs(*(values[index] for values in self))


@dataclass(frozen=True)
class Reach:
    """What counts as seen in the direction wanted.

    Attributes
    ----------
    tolerance_deg : float
        Half-width, over 0 and under 90. [deg]
    min_distance_m, max_distance_m : float
        From camera to subject. [m]
    """

    tolerance_deg: float = 0.5
    min_distance_m: float = 0.0
    max_distance_m: float = 5000.0


class Search:
    """Paths and subjects, and the direction wanted.

    Parameters
    ----------
    paths : Paths
    subjects : plan.sightlines.Subjects
        S of them.
    aim : Bearing or BodyBearing
        With T moments.
    reach : Reach
    asked : ndarray of bool, shape (S, T), optional
        Moments that count for each subject; all if left out.
    """

    def __init__(self, paths, subjects, aim, reach, asked=None):
        self.paths, self.subjects, self.aim, self.reach, self.asked = paths, subjects, aim, reach, asked
        self._first = np.flatnonzero(paths.part[1:] == paths.part[:-1])  # vertices at which pieces begin
        self._first_in_space = geodesic.in_space(paths.lon_deg[self._first], paths.lat_deg[self._first])

    def blocks(self):
        """Runs within tolerance, block by block.

        Yields
        ------
        runs : Runs
        done : float
            Part of the work behind, 0 to 1.
        """
        count, moments = len(self.subjects.lon_deg), self.aim.t_utc_s.size
        for some in self._some_subjects():
            for before, after, stations in self._in_blocks(self._stations(some)):
                most = max(1, STATION_CELLS // max(stations.subject.size, 1))
                for start in range(0, moments, most):
                    stop = min(start + most, moments)
                    part = before + (after - before) * stop / moments
                    yield self._runs(stations, np.arange(start, stop)), (some[0] + part * some.size) / count

    def _some_subjects(self):
        """Indices of subjects, so many at a time as may be looked at at once."""
        count, step = len(self.subjects.lon_deg), max(1, SUBJECT_CELLS // max(len(self.paths), 1))
        return (np.arange(first, min(first + step, count)) for first in range(0, count, step))

    def _in_blocks(self, stations):
        """Stations, a few subjects at a time."""
        total = stations.subject.size
        if not total:
            return
        new = np.append(0, np.flatnonzero(np.diff(stations.subject)) + 1)
        cut = new[np.searchsorted(new, np.arange(0, total, STATION_CELLS // 8))[:-1]] if total > STATION_CELLS // 8 else new[:1]
        edges = np.unique(np.concatenate([[0], cut, [total]]))
        for start, stop in zip(edges[:-1].tolist(), edges[1:].tolist()):
            yield start / total, stop / total, Stations(*(values[start:stop] for values in stations))

    def _stations(self, some):
        """Stations of some subjects on all pieces that may come near enough."""
        paths, subjects = self.paths, self.subjects
        near = self.reach.max_distance_m + paths.length_m[self._first] + NEAREST_M
        here = geodesic.in_space(subjects.lon_deg[some], subjects.lat_deg[some])
        apart2 = sum(
            (there[None, :] - own[:, None]) ** 2 for own, there in zip(here, self._first_in_space)
        )  # the chord is the shortest way
        row, column = np.nonzero(apart2 <= near**2)
        subject, piece = some[row], self._first[column]
        last = np.append((subject[1:] != subject[:-1]) | (piece[1:] != piece[:-1] + 1), True)[: piece.size]
        at = np.flatnonzero(last) + 1
        vertex = np.insert(piece, at, piece[last] + 1)
        subject = np.insert(subject, at, subject[last])
        ends = np.zeros(vertex.size, dtype=bool)
        ends[at + np.arange(at.size)] = True
        lon, lat = paths.lon_deg[vertex], paths.lat_deg[vertex]
        bearing, _, dist = geodesic.inverse(lon, lat, subjects.lon_deg[subject], subjects.lat_deg[subject])
        return self._cut_where_closest(Stations(subject, vertex - ends, ends.astype(float), lon, lat, bearing, dist, ~ends))

    def _cut_where_closest(self, stations):
        """The same, with a station where a piece passes the subject so closely that the bearing turns by more than 90 degrees."""
        bearing, dist = stations.bearing_deg, stations.dist_m
        turn = np.abs(offset_deg(bearing[1:], bearing[:-1]))
        near = dist < NEAREST_M
        link = np.flatnonzero(stations.linked[:-1] & ~((turn <= 90.0) & ~near[1:] & ~near[:-1]))  # nan: on the subject
        if not link.size:
            return stations
        subject, piece, length_m = stations.subject[link], stations.piece[link], self.paths.length_m[stations.piece[link]]
        u = self.closest_u(subject, piece)
        _, _, least_m = self._sight(subject, piece, u)
        through = least_m < NEAREST_M
        aside = 2.0 * NEAREST_M / np.maximum(length_m, NEAREST_M)
        # Passing by: one station. Going through: one on either side, with nothing between.
        after = np.concatenate([link, link[through]])
        cut_u = np.concatenate([np.where(through, u - aside, u), (u + aside)[through]])
        goes_on = np.concatenate([~through, np.ones(through.sum(), dtype=bool)])
        linked = stations.linked.copy()
        linked[link[through & (u - aside <= 0.0)]] = False
        order = np.lexsort((cut_u, after))
        after, cut_u, goes_on = after[order], cut_u[order], goes_on[order]
        kept = (cut_u > 0.0) & (cut_u < 1.0)
        return self._inserted(stations._replace(linked=linked), after[kept], cut_u[kept], goes_on[kept])

    def _inserted(self, stations, after, u, linked):
        subject, piece = stations.subject[after], stations.piece[after]
        lon, lat = self.paths.at(piece, u)
        bearing, _, dist = geodesic.inverse(lon, lat, self.subjects.lon_deg[subject], self.subjects.lat_deg[subject])
        new = Stations(subject, piece, u, lon, lat, bearing, dist, linked)
        return Stations(*(np.insert(old, after + 1, values) for old, values in zip(stations, new)))

    def closest_u(self, subject, piece):
        """Where pieces come closest to their subjects."""
        paths, subjects = self.paths, self.subjects
        there = geodesic.in_space(subjects.lon_deg[subject], subjects.lat_deg[subject])
        along = geodesic.in_space(paths.lon_deg[piece + 1], paths.lat_deg[piece + 1]) - geodesic.in_space(
            paths.lon_deg[piece], paths.lat_deg[piece]
        )
        length2 = np.maximum((along**2).sum(axis=0), NEAREST_M**4)
        u = np.full(piece.size, 0.5)
        for _ in range(CLOSEST_STEPS):
            u = np.clip(u + ((there - geodesic.in_space(*paths.at(piece, u))) * along).sum(axis=0) / length2, 0.0, 1.0)
        return u

    def _sight(self, subject, piece, u):
        """Places on paths by longitude and latitude, and from there bearing and distance to the subject."""
        lon, lat = self.paths.at(piece, u)
        bearing, _, dist = geodesic.inverse(lon, lat, self.subjects.lon_deg[subject], self.subjects.lat_deg[subject])
        return (lon, lat), bearing, dist

    def miss(self, moment, subject, piece, u):
        """Bearing less the direction wanted, at places on paths. [deg]."""
        (lon, lat), bearing, _ = self._sight(subject, piece, u)
        return offset_deg(bearing, self.aim.at(lon, lat, moment))

    def _runs(self, stations, moments):
        """Runs of some moments whose miss comes within tolerance, or may."""
        wanted = self._wanted(stations, moments)
        miss = stations.bearing_deg[None, :] - wanted
        miss -= 360.0 * np.rint(miss / 360.0)
        start, end = miss[:, :-1], miss[:, 1:]
        bend, drift = self._bend(stations)[:-1], self._drift(stations, moments)
        limit = self.reach.tolerance_deg
        if bend.size and bend.max() * (1.0 + drift.max()) > limit:
            limit = np.maximum(bend[None, :] * (1.0 + drift)[:, None], limit)
        touched = (np.minimum(start, end) <= limit) & (np.maximum(start, end) >= -limit)
        touched &= (np.abs(start - end) < 180.0) & stations.linked[None, :-1]  # a leap from -180 to 180 is no passage through 0
        if self.asked is not None:
            touched &= self.asked[np.ix_(stations.subject[:-1], moments)].T
        t, i = np.nonzero(touched)
        piece = stations.piece[i]
        u1 = np.where(stations.piece[i + 1] == piece, stations.u[i + 1], 1.0)
        joined = np.append((t[1:] == t[:-1]) & (i[1:] == i[:-1] + 1), False)[: t.size]
        runs = Runs(
            moments[t],
            stations.subject[i],
            piece,
            stations.u[i],
            u1,
            miss[t, i],
            miss[t, i + 1],
            stations.dist_m[i],
            stations.dist_m[i + 1],
            joined,
        )
        return self._cut_where_turning(runs, bend[i] * (1.0 + drift[t]))

    def _wanted(self, stations, moments):
        """Directions wanted at stations, shape (moments, N); a vertex that several subjects are seen from is asked once."""
        aim = self.aim
        if aim.t_utc_s.size == 1 and not np.isfinite(aim.t_utc_s[0]):
            return aim.over(stations.lon_deg, stations.lat_deg, moments)
        key = stations.piece + stations.u
        _, first, place = np.unique(key, return_index=True, return_inverse=True)
        return aim.over(stations.lon_deg[first], stations.lat_deg[first], moments)[:, place.reshape(-1)]

    def _bend(self, stations):
        """How far the miss may leave the range of its two ends between stations, as the map bends geodesics. [deg]."""
        return 2.0 * PER_M * self.paths.length_m[stations.piece] * (1.0 + np.abs(np.tan(np.radians(stations.lat_deg))))

    def _drift(self, stations, moments):
        """The same for the direction wanted, as a multiple, shape (moments,)."""
        some = np.unique(stations.subject)
        return self.aim.drift(self.subjects.lon_deg[some], self.subjects.lat_deg[some], moments)

    def _cut_where_turning(self, runs, slack):
        """The same, cut where the miss turns back; looked at only where that may decide."""
        tolerance = self.reach.tolerance_deg
        least = np.full(slack.size, np.inf)
        for level in (0.0, tolerance, -tolerance):
            for miss in (runs.miss0, runs.miss1):
                least = np.minimum(least, np.abs(miss - level))
        doubtful = np.flatnonzero((least < slack) & (runs.u1 > runs.u0))
        if not doubtful.size:
            return runs
        some = runs.take(doubtful)
        turning = doubtful[self._rises(some, some.u0) != self._rises(some, some.u1)]
        if not turning.size:
            return runs
        some = runs.take(turning)
        rises, low, high = self._rises(some, some.u0), some.u0.copy(), some.u1.copy()
        for _ in range(TURNING_STEPS):
            middle = 0.5 * (low + high)
            same = self._rises(some, middle) == rises
            low, high = np.where(same, middle, low), np.where(same, high, middle)
        u = 0.5 * (low + high)
        _, bearing, dist = self._sight(some.subject, some.piece, u)
        miss = self.miss(some.moment, some.subject, some.piece, u)
        second = some._replace(u0=u, miss0=miss, dist0_m=dist)
        whole = Runs(*(values.copy() for values in runs))
        whole.u1[turning], whole.miss1[turning], whole.dist1_m[turning], whole.joined[turning] = u, miss, dist, True
        return Runs(*(np.insert(old, turning + 1, values) for old, values in zip(whole, second)))

    def _rises(self, runs, u):
        """Whether the miss grows at places of runs."""
        half = 0.5 * SLOPE_PART * (runs.u1 - runs.u0)
        u = np.clip(u, runs.u0 + half, runs.u1 - half)
        after, before = (self.miss(runs.moment, runs.subject, runs.piece, u + way * half) for way in (1.0, -1.0))
        return offset_deg(after, before) > 0.0

    def points(self, runs):
        """Places on paths from which the subject is seen in the direction wanted.

        Parameters
        ----------
        runs : Runs

        Returns
        -------
        table : dict of str to ndarray, shape (N,)
            `moment subject path piece u lon_deg lat_deg chain_m bearing_deg target_deg miss_deg dist_m`, by subject, moment, path,
            chainage.
        left_out : dict of str to int
            Places too near or too far, or under bearings at which the subject is of no use.

        Notes
        -----
        Where a path runs along the line to the subject, wavering less than half a step, the middle one of its crossings stands for all,
        or its middle where it has none.
        Where an end or a bend of a path comes within tolerance and no place nearby reaches the direction, that end or bend is given with
        its miss.
        """
        crosses = (runs.miss0 >= 0.0) != (runs.miss1 >= 0.0)
        group = self._groups(runs)
        row = np.flatnonzero(crosses)
        some = runs.take(row)
        u = roots(
            lambda rows, u: self.miss(some.moment[rows], some.subject[rows], some.piece[rows], u),
            *(some.u0, some.u1, some.miss0, some.miss1, self.paths.length_m[some.piece]),
        )
        middle = self._middle_of_each(runs, row, group)
        row, u = row[middle], u[middle]
        row_near, u_near = self._nearest_misses(runs, crosses, self._over_the_beginning(runs, group))
        return self._table(runs.take(np.concatenate([row, row_near])), np.concatenate([u, u_near]))

    def _groups(self, runs):
        """Number of the unbroken stretch within tolerance to which each run belongs."""
        ends = ~runs.joined | (np.abs(runs.miss1) > self.reach.tolerance_deg)
        return np.cumsum(np.append(0, ends[:-1]))[: ends.size]

    def _over_the_beginning(self, runs, group):
        """The groups, those that meet at the beginning of a loop being one."""
        if not self.paths.closed.any():
            return group
        paths, part = self.paths, self.paths.part[runs.piece]
        begins = (runs.u0 == 0.0) & (runs.piece == np.searchsorted(paths.part, part))
        ends = (runs.u1 == 1.0) & paths.closed[np.minimum(runs.piece + 1, len(paths) - 1)]
        begin, end = (
            np.flatnonzero(at & (np.abs(miss) <= self.reach.tolerance_deg)) for at, miss in ((begins, runs.miss0), (ends, runs.miss1))
        )
        loop = np.stack([runs.moment, runs.subject, part])[:, np.concatenate([begin, end])]
        loops, number = np.unique(loop, axis=1, return_inverse=True)
        number = number.reshape(-1)
        first = np.full(loops.shape[1], -1)
        first[number[: begin.size]] = group[begin]
        other = first[number[begin.size :]]
        one = np.arange(group.max(initial=-1) + 1)
        one[group[end[other >= 0]]] = other[other >= 0]
        return np.unique(one[group], return_inverse=True)[1].reshape(-1)

    def _middle_of_each(self, runs, row, group):
        """Which of the crossings, one a run of `row`, to keep: the middle one of those between which the path runs along the line."""
        aside_m = runs.dist1_m * np.abs(np.sin(np.radians(runs.miss1)))
        leaves = np.cumsum(np.append(0, aside_m > HALF_STEP_M))[:-1]
        new = np.append(True, (group[row[1:]] != group[row[:-1]]) | (leaves[row[1:]] != leaves[row[:-1]]))[: row.size]
        first = np.flatnonzero(new)
        return (first + np.append(first[1:], row.size) - 1) // 2

    def _nearest_misses(self, runs, crosses, group):
        """In stretches without a crossing the end of a run that misses least, or the middle of a stretch along the line."""
        if not group.size:
            return np.zeros(0, dtype=np.int64), np.zeros(0)
        miss0, miss1 = np.abs(runs.miss0), np.abs(runs.miss1)
        order = np.lexsort((np.minimum(miss0, miss1), group))
        best = order[np.flatnonzero(np.append(True, np.diff(group[order]) != 0))]
        u = np.where(miss0[best] <= miss1[best], runs.u0[best], runs.u1[best])

        aside_m = np.maximum(*(dist * np.sin(np.radians(miss)) for dist, miss in ((runs.dist0_m, miss0), (runs.dist1_m, miss1))))
        strays = (aside_m > HALF_STEP_M) | (np.maximum(miss0, miss1) > self.reach.tolerance_deg)
        length_m = (runs.u1 - runs.u0) * self.paths.length_m[runs.piece]
        whole_m = np.bincount(group, length_m)
        order = np.argsort(group, kind="stable")
        behind_m = np.cumsum(length_m[order]) - (np.cumsum(whole_m) - 0.5 * whole_m)[group[order]]  # past the middle of its stretch
        passing = order[(behind_m >= 0.0) & (behind_m - length_m[order] <= 0.0) & (length_m[order] > 0.0)]
        straight = np.bincount(group, strays) == 0.0
        middle = passing[np.unique(group[passing], return_index=True)[1]]
        middle = middle[straight[group[middle]]]
        past = np.empty(group.size)
        past[order] = behind_m
        best[group[middle]] = middle
        u[group[middle]] = runs.u1[middle] - past[middle] / self.paths.length_m[runs.piece[middle]]

        without = np.bincount(group, crosses) == 0.0
        return best[without], u[without]

    def _table(self, runs, u):
        paths, subject, piece = self.paths, runs.subject, runs.piece
        (lon, lat), bearing, dist = self._sight(subject, piece, u)
        target = self.aim.at(lon, lat, runs.moment)
        table = {
            "moment": runs.moment,
            "subject": subject,
            "path": paths.path[piece],
            "piece": piece,
            "u": u,
            "lon_deg": lon,
            "lat_deg": lat,
            "chain_m": paths.chain_at(piece, lon, lat),
            "bearing_deg": bearing,
            "target_deg": target,
            "miss_deg": offset_deg(bearing, target),
            "dist_m": dist,
        }
        near, far = dist < max(self.reach.min_distance_m, NEAREST_M), dist > self.reach.max_distance_m
        within = np.abs(table["miss_deg"]) <= self.reach.tolerance_deg  # not so where a run was kept for its slack
        facing = is_facing(bearing, self.subjects.face_from_deg[subject], self.subjects.face_to_deg[subject])
        kept = np.flatnonzero(within & ~near & ~far & facing)
        kept = kept[np.lexsort((table["chain_m"][kept], table["path"][kept], runs.moment[kept], subject[kept]))]
        kept = kept[~self._again({name: values[kept] for name, values in table.items()})]
        left_out = {TOO_NEAR: (within & near).sum(), TOO_FAR: (within & far).sum(), NOT_FACING: (within & ~near & ~far & ~facing).sum()}
        return {name: values[kept] for name, values in table.items()}, {why: int(n) for why, n in left_out.items() if n}

    def _again(self, table):
        """Which places come a second time: where a loop ends as it began, or where two pieces meet."""
        paths, piece = self.paths, table["piece"]
        end = np.minimum(piece + 1, len(paths) - 1)
        at_end_m = (1.0 - table["u"]) * paths.length_m[piece]
        ends_loop = paths.closed[end] & (at_end_m < SAME_PLACE_M)
        first_chain = paths.chain_m[np.searchsorted(paths.part, paths.part[piece])]
        chain = np.where(ends_loop, first_chain, table["chain_m"])
        order = np.lexsort((ends_loop, chain, paths.part[piece], table["moment"], table["subject"]))
        same = np.abs(np.diff(chain[order])) < SAME_PLACE_M
        for values in (paths.part[piece], table["moment"], table["subject"]):
            same &= values[order][1:] == values[order][:-1]
        again = np.zeros(piece.size, dtype=bool)
        again[order[1:][same]] = True
        return again

    def pairs(self):
        """Number of pairs of subject and path that have a piece within reach."""
        count = 0
        for some in self._some_subjects():
            stations = self._stations(some)
            count += np.unique(np.stack([stations.subject, self.paths.path[stations.piece]]), axis=1).shape[1]
        return count

    def bearings_seen(self):
        """Bearings under which subjects are seen from paths within reach, all pieces of a path taken together.

        Yields
        ------
        subject, path : int
        az_from, az_to : float
            Clockwise; 0 and 360 for the whole circle. [deg]
        """
        for some in self._some_subjects():
            stations = self._stations(some)
            near = (stations.dist_m <= self.reach.max_distance_m) & np.isfinite(stations.bearing_deg)
            link = np.flatnonzero(stations.linked[:-1] & near[:-1] & near[1:])
            pair = np.stack([stations.subject[link], self.paths.path[stations.piece[link]]])
            pairs, row = np.unique(pair, axis=1, return_inverse=True)
            start = stations.bearing_deg[link]
            end = start + offset_deg(stations.bearing_deg[link + 1], start)
            reaches = union_of_reaches(row.reshape(-1), np.minimum(start, end), np.maximum(start, end), pairs.shape[1])
            yield from zip(*pairs.tolist(), *(reach.tolist() for reach in reaches))


def position_error_deg(position_error_m, dist_m):
    """How far the bearing is off at most where a position is known to some metres. [deg]."""
    return np.degrees(np.arctan2(position_error_m, dist_m))
