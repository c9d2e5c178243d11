"""Stretches: the parts of paths from which the subject is seen in the direction wanted, within tolerance, with exact ends.

A part of a piece is cut wherever a condition begins or ends to hold along it; what holds in the middle of a part holds in all of it; parts
that touch are joined. Angles in degrees, distances in metres.
"""

from typing import NamedTuple

import numpy as np

from ..ground import geodesic
from .azimuths import offset_deg
from .roots import roots
from .sightlines import is_facing
from .standpoints import NEAREST_M

LEAST_M = 1e-3  # shorter parts are none


class Spans(NamedTuple):
    """Parts of pieces, arrays (K,); by moment, then subject, then along the path."""

    moment: np.ndarray
    subject: np.ndarray
    piece: np.ndarray
    u0: np.ndarray
    u1: np.ndarray

    def take(self, index):
        """The spans at an index array or mask."""
        return Spans(*(values[index] for values in self))


class Stretches(NamedTuple):
    """Joined spans; stretch i goes from span first[i] to last[i] and is drawn through vertices offsets[i] to offsets[i + 1]."""

    first: np.ndarray
    last: np.ndarray
    piece: np.ndarray
    u: np.ndarray
    offsets: np.ndarray


def spans_within(search, runs, conditions=(), most_m=None):
    """Parts of paths within the tolerance and the distances of a search, at bearings of use, where further conditions hold.

    Parameters
    ----------
    search : Search
    runs : Runs
        Of the search.
    conditions : sequence of callable
        `condition(moment, subject, piece, u)`, arrays (K,) in and out: not negative where it holds, and continuous along a path.
    most_m : float, optional
        The conditions may change no faster than over such lengths. [m]

    Returns
    -------
    Spans
    """
    reach = search.reach
    least_m, most_dist_m = max(reach.min_distance_m, NEAREST_M), reach.max_distance_m

    def distance(moment, subject, piece, u):
        lon, lat = search.paths.at(piece, u)
        return geodesic.inverse(lon, lat, search.subjects.lon_deg[subject], search.subjects.lat_deg[subject])[2]

    spans = _cut_at_closest(search, _within_tolerance(search, runs))
    limits = [lambda *place: most_dist_m - distance(*place)]
    if reach.min_distance_m > 0.0:
        limits.append(lambda *place: distance(*place) - least_m)
    for limit in limits:
        spans = _where(search, spans, limit)
    spans = _facing(search, spans)
    if conditions and most_m is not None:
        spans = _cut_evenly(search, spans, most_m)
    for condition in conditions:
        spans = _where(search, spans, condition)
    return spans


def _within_tolerance(search, runs):
    """Runs cut to where their miss is within tolerance."""
    tolerance = search.reach.tolerance_deg
    same_side = np.sign(runs.miss0) == np.sign(runs.miss1)
    outside = same_side & (np.minimum(np.abs(runs.miss0), np.abs(runs.miss1)) > tolerance)
    runs = runs.take(~outside)
    ends = [runs.u0.copy(), runs.u1.copy()]
    for at, miss in zip(ends, (runs.miss0, runs.miss1)):
        for level in (tolerance, -tolerance):
            row = np.flatnonzero(miss > level if level > 0.0 else miss < level)
            some = runs.take(row)

            def beyond(rows, u, some=some, level=level):
                return search.miss(some.moment[rows], some.subject[rows], some.piece[rows], u) - level

            at[row] = roots(beyond, some.u0, some.u1, some.miss0 - level, some.miss1 - level, search.paths.length_m[some.piece])
    return _in_order(search, Spans(runs.moment, runs.subject, runs.piece, *ends))


def _cut_at_closest(search, spans):
    """Cut where the piece comes closest to the subject: on either side the distance grows steadily."""
    u = search.closest_u(spans.subject, spans.piece)
    return _cut(search, spans, np.flatnonzero((u > spans.u0) & (u < spans.u1)), u)


def _cut_evenly(search, spans, most_m):
    count = np.maximum(np.ceil((spans.u1 - spans.u0) * search.paths.length_m[spans.piece] / most_m), 1).astype(np.int64)
    row = np.repeat(np.arange(count.size), count)
    number = np.arange(row.size) - np.repeat(np.cumsum(count) - count, count)
    step = ((spans.u1 - spans.u0) / count)[row]
    u0 = spans.u0[row] + number * step
    return spans.take(row)._replace(u0=u0, u1=np.where(number + 1 == count[row], spans.u1[row], spans.u0[row] + (number + 1) * step))


def _cut(search, spans, rows, u):
    """Cut some spans in two at places `u`, one a span."""
    first = spans._replace(u1=spans.u1.copy())
    first.u1[rows] = u[rows]
    second = spans.take(rows)._replace(u0=u[rows])
    return _in_order(search, Spans(*(np.insert(old, rows + 1, new) for old, new in zip(first, second))))


def _cut_at_roots(search, spans, value):
    """Cut where a function changes sign between the ends of spans."""
    before, after = (value(spans.moment, spans.subject, spans.piece, u) for u in (spans.u0, spans.u1))
    rows = np.flatnonzero((before >= 0.0) != (after >= 0.0))
    some = spans.take(rows)
    u = np.zeros(spans.u0.size)
    u[rows] = roots(
        lambda part, at: value(some.moment[part], some.subject[part], some.piece[part], at),
        *(some.u0, some.u1, before[rows], after[rows], search.paths.length_m[some.piece]),
    )
    return _cut(search, spans, rows, u)


def _where(search, spans, condition):
    """Where a condition holds."""
    spans = _cut_at_roots(search, spans, condition)
    middle = 0.5 * (spans.u0 + spans.u1)
    return spans.take(condition(spans.moment, spans.subject, spans.piece, middle) >= 0.0)


def _facing(search, spans):
    """Where the subject is of use."""
    limits = [values[spans.subject] for values in (search.subjects.face_from_deg, search.subjects.face_to_deg)]
    if not np.isfinite(limits[0]).any():
        return spans
    subjects = search.subjects

    def beyond(edge_deg):
        def value(moment, subject, piece, u):
            lon, lat = search.paths.at(piece, u)
            bearing = geodesic.inverse(lon, lat, subjects.lon_deg[subject], subjects.lat_deg[subject])[0]
            off = offset_deg(bearing, edge_deg[subject])
            return np.where(np.isfinite(off) & (np.abs(off) < 90.0), off, 1.0)  # the far side of the edge is no edge

        return value

    for edge_deg in (subjects.face_from_deg, subjects.face_to_deg):
        spans = _cut_at_roots(search, spans, beyond(edge_deg))
    lon, lat = search.paths.at(spans.piece, 0.5 * (spans.u0 + spans.u1))
    bearing = geodesic.inverse(lon, lat, subjects.lon_deg[spans.subject], subjects.lat_deg[spans.subject])[0]
    return spans.take(is_facing(bearing, subjects.face_from_deg[spans.subject], subjects.face_to_deg[spans.subject]))


def _in_order(search, spans):
    """Spans long enough to stand on."""
    return spans.take((spans.u1 - spans.u0) * search.paths.length_m[spans.piece] > 0.0)


def join(paths, spans, kind=None):
    """Put spans together that touch.

    Parameters
    ----------
    paths : Paths
    spans : Spans
    kind : ndarray, shape (K,), optional
        Spans of different kinds stay apart.

    Returns
    -------
    Stretches
        Those of at least a millimetre; N of them.
    """
    next_piece = spans.piece[1:] == spans.piece[:-1] + 1
    touches = ((spans.piece[1:] == spans.piece[:-1]) & (spans.u0[1:] == spans.u1[:-1])) | (
        next_piece & (spans.u1[:-1] == 1.0) & (spans.u0[1:] == 0.0)
    )
    for values in (spans.moment, spans.subject, *([] if kind is None else [kind])):
        touches &= values[1:] == values[:-1]
    first = np.flatnonzero(np.append(True, ~touches)[: spans.piece.size])
    last = np.append(first[1:], spans.piece.size)[: first.size] - 1
    length = np.cumsum((spans.u1 - spans.u0) * paths.length_m[spans.piece])
    long_enough = length[last] - np.append(0.0, length)[first] >= LEAST_M
    first, last = first[long_enough], last[long_enough]
    count = last - first + 2
    offsets = np.append(0, np.cumsum(count))
    number = np.arange(offsets[-1]) - np.repeat(offsets[:-1], count)
    span = np.minimum(np.repeat(first, count) + number, np.repeat(last, count))
    at_end = number == np.repeat(count - 1, count)
    return Stretches(first, last, spans.piece[span], np.where(at_end, spans.u1[span], spans.u0[span]), offsets)


def table_of(search, spans, stretches):
    """What a table tells of stretches.

    Parameters
    ----------
    search : Search
    spans : Spans
    stretches : Stretches
        Of these spans.

    Returns
    -------
    dict of str to ndarray, shape (N,)
        `moment subject path from_m to_m bearing_min bearing_max target_deg`; bearings clockwise from the first to the second, so that the
        first is the greater where a stretch is seen across north. `target_deg` holds in the middle.
    """
    paths = search.paths
    lon, lat = paths.at(stretches.piece, stretches.u)
    count = np.diff(stretches.offsets)
    subject = np.repeat(spans.subject[stretches.first], count)
    bearing, _, _ = geodesic.inverse(lon, lat, search.subjects.lon_deg[subject], search.subjects.lat_deg[subject])
    start = np.repeat(bearing[stretches.offsets[:-1]], count)
    turned = offset_deg(bearing, start)
    begin, end = stretches.offsets[:-1], stretches.offsets[1:] - 1
    chain = paths.chain_at(stretches.piece, lon, lat)
    middle = (begin + end) // 2
    moment = spans.moment[stretches.first]
    least, most = (
        (bearing[begin] + reduce.reduceat(turned, begin)) % 360.0 if begin.size else np.zeros(0) for reduce in (np.minimum, np.maximum)
    )
    return {
        "moment": moment,
        "subject": spans.subject[stretches.first],
        "path": paths.path[spans.piece[stretches.first]],
        "from_m": chain[begin],
        "to_m": chain[end],
        "bearing_min": least,
        "bearing_max": most,
        "target_deg": search.aim.at(lon[middle], lat[middle], moment),
    }
