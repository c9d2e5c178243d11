"""Which camera looks at which subject.

Cameras and subjects are places in degrees (arrays (C,) and (S,)); pairs come as indices into them, block by block, so that memory is
bounded however many there are. Distances are geodesic ones, also over the antimeridian and the poles. What is left out is
counted by reason.
"""

from dataclasses import dataclass, replace

import numpy as np

from ..ground import geodesic
from ..words import Sentence

# Reasons for which something is left out; pairs, cameras or subjects are counted as the words say
COINCIDENT = "coincident"  # pairs: camera on subject, no bearing
TOO_FAR = "too_far"  # pairs
CAMERA_WITHOUT_KEY = "camera_without_key"
SUBJECT_WITHOUT_KEY = "subject_without_key"
CAMERA_WITHOUT_PARTNER = "camera_without_partner"  # its value occurs in no subject
SUBJECT_WITHOUT_PARTNER = "subject_without_partner"
CAMERA_WITHOUT_NEAR_SUBJECT = "camera_without_near_subject"

BLOCK_PAIRS = 200_000  # some 50 MB with all that is computed for a pair
CLUSTER_CAMERAS = 64  # neighbours that look for their closest subjects together
CLUSTER_SUBJECTS = 16  # the nearest to a cluster, for a first bound of its distances
SLACK_M = 1e-6  # rounding of coordinates in space: 1e-9 m


@dataclass(frozen=True)
class PairBlock:
    """Some pairs; arrays (P,), P may be 0.

    Attributes
    ----------
    camera, subject : ndarray of int
        Indices of camera and subject.
    dist_m, bearing_deg, back_deg : ndarray
        As `geodesic.inverse` gives them.
    left_out : dict of str to int
        How many were left out since the last block, by reason.
    done : float
        Part of the work that is done, 0 to 1.
    """

    camera: np.ndarray
    subject: np.ndarray
    dist_m: np.ndarray
    bearing_deg: np.ndarray
    back_deg: np.ndarray
    left_out: dict
    done: float


def pair_all(camera_lon_deg, camera_lat_deg, subject_lon_deg, subject_lat_deg, max_distance_m=np.inf, block_pairs=BLOCK_PAIRS):
    """Every camera with every subject.

    Parameters
    ----------
    camera_lon_deg, camera_lat_deg : array_like, (C,)
        Cameras. [deg]
    subject_lon_deg, subject_lat_deg : array_like, (S,)
        Subjects. [deg]
    max_distance_m : float
        Pairs farther apart are left out. [m]
    block_pairs : int
        Pairs looked at for one block; never less than those of one camera.

    Yields
    ------
    PairBlock
        In the order of cameras, and of subjects within each.

    Raises
    ------
    ValueError
        A place is not on the Earth, or the distance is not greater than 0.
    """
    cameras, subjects = _Places(camera_lon_deg, camera_lat_deg), _Places(subject_lon_deg, subject_lat_deg)
    first = np.zeros(cameras.size, dtype=np.int64)
    count = np.full(cameras.size, subjects.size)
    yield from _grouped(cameras, subjects, np.arange(subjects.size), first, count, _checked(max_distance_m), block_pairs)


def pair_by_field(
    camera_lon_deg,
    camera_lat_deg,
    camera_keys,
    subject_lon_deg,
    subject_lat_deg,
    subject_keys,
    max_distance_m=np.inf,
    block_pairs=BLOCK_PAIRS,
):
    """Each camera with the subjects that carry the same value.

    Parameters
    ----------
    camera_lon_deg, camera_lat_deg, subject_lon_deg, subject_lat_deg : array_like
        As for `pair_all`. [deg]
    camera_keys, subject_keys : sequence
        Values of a field. They are equal if they read the same: 12, 12.0 and " 12" are; None, nan and blank text match nothing.
    max_distance_m, block_pairs
        As for `pair_all`.

    Yields
    ------
    PairBlock
        In the order of cameras, and of subjects within each; the first holds no pairs, but the counts of values.

    Raises
    ------
    ValueError
        As for `pair_all`.
    """
    cameras, subjects = _Places(camera_lon_deg, camera_lat_deg), _Places(subject_lon_deg, subject_lat_deg)
    numbers = {}
    of_camera, of_subject = (np.array([_number(key, numbers) for key in keys], dtype=np.int64) for keys in (camera_keys, subject_keys))
    partners = np.argsort(of_subject, kind="stable")
    first, last = (np.searchsorted(of_subject[partners], of_camera, side) for side in ("left", "right"))
    count = np.where(of_camera >= 0, last - first, 0)
    left_out = {
        CAMERA_WITHOUT_KEY: int((of_camera < 0).sum()),
        SUBJECT_WITHOUT_KEY: int((of_subject < 0).sum()),
        CAMERA_WITHOUT_PARTNER: int(((of_camera >= 0) & (count == 0)).sum()),
        SUBJECT_WITHOUT_PARTNER: int(((of_subject >= 0) & ~np.isin(of_subject, of_camera)).sum()),
    }
    yield _without_pairs(left_out, 0.0)
    yield from _grouped(cameras, subjects, partners, first, count, _checked(max_distance_m), block_pairs)


def pair_closest(camera_lon_deg, camera_lat_deg, subject_lon_deg, subject_lat_deg, max_distance_m=np.inf, block_pairs=BLOCK_PAIRS):
    """Each camera with its closest subject, by geodesic distance; coincident ones are passed over.

    Parameters
    ----------
    camera_lon_deg, camera_lat_deg, subject_lon_deg, subject_lat_deg, max_distance_m
        As for `pair_all`.
    block_pairs : int
        Cells of the largest matrix of distances.

    Yields
    ------
    PairBlock
        Without pairs while the search goes on, and at the end all pairs in the order of cameras. Of equals the first subject.

    Raises
    ------
    ValueError
        As for `pair_all`.

    Notes
    -----
    The chord through the Earth is never longer than the geodesic, so the geodesic to any subject bounds the chord to the closest one.
    Cameras are taken in clusters: what lies farther from the middle of a cluster than its radius and that bound is no closest
    subject of any of its cameras. Among the rest the nearest by chord gives a better bound, and geodesics decide between the few
    that are left.
    """
    cameras, subjects = _Places(camera_lon_deg, camera_lat_deg), _Places(subject_lon_deg, subject_lat_deg)
    limit_m = _checked(max_distance_m)
    if not cameras.size or not subjects.size:
        yield _without_pairs({CAMERA_WITHOUT_NEAR_SUBJECT: cameras.size}, 1.0)
        return
    closest = np.full(cameras.size, -1, dtype=np.int64)
    looked_at = 0
    for some in _clusters(cameras.xyz_m, np.arange(cameras.size)):
        among = _within_reach(cameras, subjects, some, limit_m)
        rows = max(block_pairs // max(among.size, 1), 1)
        coincident = 0
        for at in range(0, some.size, rows):
            closest[some[at : at + rows]], found_coincident = _closest_among(cameras, subjects, some[at : at + rows], among, limit_m)
            coincident += found_coincident
        looked_at += some.size
        yield _without_pairs({COINCIDENT: coincident}, 0.99 * looked_at / cameras.size)
    found = np.flatnonzero(closest >= 0)
    bearing, back, dist = geodesic.inverse(*cameras.at(found), *subjects.at(closest[found]))
    left_out = {CAMERA_WITHOUT_NEAR_SUBJECT: cameras.size - found.size}
    yield PairBlock(found, closest[found], dist, bearing, back, _counted(left_out), 1.0)


def pair_by(kind, cameras, subjects, max_distance_m=np.inf):
    """The pairs of a kind of pairing.

    Parameters
    ----------
    kind : str
        One of `names.PAIRINGS`.
    cameras, subjects : objects with `lon_deg`, `lat_deg`, `keys`, each (N,)
        The keys play a part in `by_field` alone.
    max_distance_m : float
        As for `pair_all`. [m]

    Yields
    ------
    PairBlock
        Not one where there is no camera or no subject.
    """
    places = (cameras.lon_deg, cameras.lat_deg, subjects.lon_deg, subjects.lat_deg)
    if not len(cameras.lon_deg) or not len(subjects.lon_deg):
        return iter(())
    if kind == "closest":
        return pair_closest(*places, max_distance_m)
    if kind == "by_field":
        return pair_by_field(*places[:2], cameras.keys, *places[2:], subjects.keys, max_distance_m)
    return pair_all(*places, max_distance_m)


def cut_up(blocks, most):
    """The same pairs in blocks of so many at most."""
    before = 0.0
    for block in blocks:
        count = block.camera.size
        if count <= most:
            yield block
        else:
            for first in range(0, count, most):
                piece = slice(first, first + most)
                arrays = {name: getattr(block, name)[piece] for name in ("camera", "subject", "dist_m", "bearing_deg", "back_deg")}
                done = before + (block.done - before) * min(first + most, count) / count
                yield replace(block, left_out={} if first else block.left_out, done=done, **arrays)
        before = block.done


class _Places:
    """Places in degrees and in space."""

    def __init__(self, lon_deg, lat_deg):
        self.lon_deg, self.lat_deg = (np.asarray(values, dtype=float).ravel() for values in (lon_deg, lat_deg))
        self.size = self.lon_deg.size
        self.xyz_m = geodesic.in_space(self.lon_deg, self.lat_deg)

    def at(self, index):
        return self.lon_deg[index], self.lat_deg[index]


def _grouped(cameras, subjects, partners, first, count, limit_m, block_pairs):
    """Pairs of each camera with its `count` partners from `first` on, measured block by block."""
    total = np.cumsum(count)
    start = 0
    while start < cameras.size:
        before = total[start] - count[start]
        end = max(int(np.searchsorted(total, before + block_pairs, side="right")), start + 1)
        some = slice(start, end)
        camera = np.repeat(np.arange(start, end), count[some])
        rank = np.arange(camera.size) - np.repeat(total[some] - count[some] - before, count[some])
        yield _measured(cameras, subjects, camera, partners[first[camera] + rank], limit_m, end / cameras.size)
        start = end


def _measured(cameras, subjects, camera, subject, limit_m, done):
    chord2 = ((cameras.xyz_m[:, camera] - subjects.xyz_m[:, subject]) ** 2).sum(axis=0)
    near = chord2 <= (limit_m + SLACK_M) ** 2  # the chord is the shortest way: geodesics only where they may decide
    camera, subject = camera[near], subject[near]
    bearing, back, dist = geodesic.inverse(*cameras.at(camera), *subjects.at(subject))
    coincident = np.isnan(bearing)
    kept = (dist <= limit_m) & ~coincident
    left_out = {COINCIDENT: int(coincident.sum()), TOO_FAR: near.size - int(kept.sum()) - int(coincident.sum())}
    return PairBlock(camera[kept], subject[kept], dist[kept], bearing[kept], back[kept], _counted(left_out), done)


def _clusters(xyz_m, some):
    """Cut places in halves along the longest axis until few are left together."""
    if some.size <= CLUSTER_CAMERAS:
        yield some
        return
    axis = np.argmax(np.ptp(xyz_m[:, some], axis=1))
    middle = some.size // 2
    some = some[np.argpartition(xyz_m[axis, some], middle)]
    yield from _clusters(xyz_m, some[:middle])
    yield from _clusters(xyz_m, some[middle:])


def _within_reach(cameras, subjects, some, limit_m):
    """Subjects among which the closest of some cameras are."""
    middle = cameras.xyz_m[:, some].mean(axis=1)
    radius_m = np.sqrt(((cameras.xyz_m[:, some] - middle[:, np.newaxis]) ** 2).sum(axis=0).max())
    from_middle2 = ((subjects.xyz_m - middle[:, np.newaxis]) ** 2).sum(axis=0)
    tried = np.argpartition(from_middle2, min(CLUSTER_SUBJECTS, subjects.size) - 1)[:CLUSTER_SUBJECTS]
    nearest = tried[np.argmin(_apart2(cameras.xyz_m[:, some, np.newaxis], subjects.xyz_m[:, np.newaxis, tried]), axis=1)]
    bearing, _, dist = geodesic.inverse(*cameras.at(some), *subjects.at(nearest))
    bound_m = min(np.where(np.isnan(bearing), np.inf, dist).max(), limit_m)
    return np.flatnonzero(from_middle2 <= (radius_m + bound_m + SLACK_M) ** 2)


def _closest_among(cameras, subjects, some, among, limit_m):
    """Index of the closest of some subjects to each of some cameras, or -1; and how many pairs are coincident."""
    if not among.size:
        return -1, 0
    chord2 = _apart2(cameras.xyz_m[:, some, np.newaxis], subjects.xyz_m[:, np.newaxis, among])
    coincident = int(np.isinf(chord2).sum())
    nearest = among[np.argmin(chord2, axis=1)]
    bound_m = np.minimum(geodesic.inverse(*cameras.at(some), *subjects.at(nearest))[2], limit_m) + SLACK_M
    row, column = np.nonzero(chord2 <= bound_m[:, np.newaxis] ** 2)
    bearing, _, dist = geodesic.inverse(*cameras.at(some[row]), *subjects.at(among[column]))
    kept = (dist <= limit_m) & ~np.isnan(bearing)
    row, column, dist = row[kept], column[kept], dist[kept]
    order = np.lexsort((column, dist, row))
    row, first = np.unique(row[order], return_index=True)
    closest = np.full(some.size, -1, dtype=np.int64)
    closest[row] = among[column[order][first]]
    return closest, coincident


def _apart2(one, two):
    """Squared chords, infinite where the places are coincident. [m2]."""
    chord2 = (one[0] - two[0]) ** 2
    chord2 += (one[1] - two[1]) ** 2
    chord2 += (one[2] - two[2]) ** 2
    chord2[chord2 < geodesic.COINCIDENT_M**2] = np.inf
    return chord2


def _number(key, numbers):
    """A number for a value as it reads, -1 for none."""
    if isinstance(key, (float, np.floating)) and float(key).is_integer():
        key = int(key)
    text = "" if key is None or key != key else str(key).strip()  # only nan differs from itself
    return numbers.setdefault(text, len(numbers)) if text else -1


def _without_pairs(left_out, done):
    return PairBlock(np.zeros(0, dtype=np.int64), np.zeros(0, dtype=np.int64), *np.zeros((3, 0)), _counted(left_out), done)


def _counted(left_out):
    return {reason: count for reason, count in left_out.items() if count}


def _checked(max_distance_m):
    if not max_distance_m > 0.0:
        raise ValueError(
            Sentence("The largest distance is {most} m and lets nothing through: give one greater than 0.", most=max_distance_m)
        )
    return float(max_distance_m)
