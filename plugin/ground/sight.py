"""Whether the ground lets the lens see a subject.

Results have the shape of the pairs, (P,). The ray bends with the air; its clearance is its height above the ground.
"""

from typing import NamedTuple

import numpy as np

from . import curvature, geodesic
from .terrain import NEAREST_M

SAMPLES = 24_000  # at once: what they take fits a core's own memory
PAIRS = 20_000  # made ready at once: 10 MB
SLACK = 0.01  # of a cell: by which numbers of four bytes may place a sample outside the raster
SHARED_M = 100.0  # within this of the lens its own height carries part of the ground's error
CELLS_BEFORE_SUBJECT = 2.0
CELLS_BEYOND_CAMERA = 2.0


class Sight(NamedTuple):
    """Lines of sight, each array of shape (P,).

    `clear_m` least clearance of the ray to the top, `block_m` distance to where that is, `hidden_m` metres of the subject hidden, from its
    foot. Known ground that stands in the ray hides the top whatever the rest of the ground does: then they tell of what is known, and
    more may be hidden. Otherwise nan where some of the ground between is not known, and where the two are too near for any to lie
    between. `sight` "clear", "hidden", "uncertain", and None where `clear_m` is nan.
    """

    clear_m: np.ndarray
    block_m: np.ndarray
    hidden_m: np.ndarray
    sight: np.ndarray

    @property
    def visible(self):
        """Whether the ray to the top clears the ground: True, False, and None where `clear_m` is nan."""
        clears = (self.clear_m >= 0).astype(object)
        clears[np.isnan(self.clear_m)] = None
        return clears


def lines_of_sight(
    terrain,
    lon1_deg,
    lat1_deg,
    lens_m,
    lon2_deg,
    lat2_deg,
    base_m,
    top_m,
    skip_near_m=None,
    accuracy_m=2.0,
    refraction_k=curvature.REFRACTION_K,
    progress=None,
):
    """Follow lines of sight over the ground.

    Parameters
    ----------
    terrain : Terrain
    lon1_deg, lat1_deg, lens_m : array_like, shape (P,)
        Cameras, and the heights of their lenses. [deg], [m]
    lon2_deg, lat2_deg, base_m, top_m : array_like, shape (P,)
        Subjects, and the heights of foot and top. [deg], [m]
    skip_near_m : float, optional
        Ground nearer to the lens than this is passed over; two cells if not given, `terrain.NEAREST_M` at least. [m]
    accuracy_m : float
        Of the terrain's heights; a clearance smaller than this is uncertain. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.
    progress : callable, optional
        Takes what is done, 0 to 1; False from it ends the work.

    Returns
    -------
    Sight or None
        None when it was ended. A lens below the ground at its place sees nothing, see `Terrain.buried`.

    Notes
    -----
    Samples lie at most half a cell apart. The worst are found in short numbers and measured in long ones.
    """
    given = (lon1_deg, lat1_deg, lens_m, lon2_deg, lat2_deg, base_m, top_m)
    given = np.broadcast_arrays(*(np.atleast_1d(np.asarray(value, float)) for value in given))
    shape, (lon1, lat1, lens, lon2, lat2, base, top) = given[0].shape, (value.ravel() for value in given)
    lens = np.where(terrain.buried(lon1, lat1, lens), np.nan, lens)
    found = np.full((3, lens.size), np.nan)
    for start in range(0, lens.size, PAIRS):
        some = slice(start, start + PAIRS)
        ends = (value[some] for value in (lon1, lat1, lens, lon2, lat2, base, top))
        tested, counts, lines = _lines(terrain, *ends, skip_near_m, refraction_k)
        first, worst, unknown = 0, np.empty((2, tested.size)), np.empty(tested.size, dtype=bool)
        while first < tested.size:  # longest first, so that those followed together are of one length
            some = slice(first, first + max(1, SAMPLES // counts[first]))
            worst[:, some], unknown[some] = _worst(terrain, _Lines(*(value[..., some] for value in lines)), counts[first])
            first = some.stop
            if progress is not None and progress(min(start + first, lens.size) / lens.size) is False:
                return None
        found[:, start + tested] = _least(terrain, lines, worst, unknown, refraction_k)
    clear, block, hidden = found.reshape(3, *shape)
    unsure = np.abs(clear) < accuracy_m * np.minimum(1.0, block / SHARED_M)
    sight = np.where(unsure, "uncertain", np.where(clear >= 0, "clear", "hidden")).astype(object)
    sight[np.isnan(clear)] = None
    return Sight(clear, block, hidden, sight)


class _Lines(NamedTuple):
    """Lines of sight between whose ends there is ground to look at, each array of shape (P,).

    `course` (2, 3, P) and the height of the `ray` to the top (4, P) are polynomials of the part of the way from `begin` to `begin + span`.
    """

    course: np.ndarray
    ray: np.ndarray
    begin: np.ndarray
    span: np.ndarray
    dist: np.ndarray
    alt: np.ndarray
    earth: np.ndarray
    lens: np.ndarray
    base: np.ndarray
    top: np.ndarray
    edge: np.ndarray


def _lines(terrain, lon1, lat1, lens, lon2, lat2, base, top, skip_near_m, refraction_k):
    """Which pairs have ground between them to look at, longest first; how many samples each takes; all else that is known before."""
    bearing, _, dist = geodesic.inverse(lon1, lat1, lon2, lat2)
    (fine1, coarse1), (fine2, coarse2) = terrain.cell_m(lon1, lat1), terrain.cell_m(lon2, lat2)
    skip = CELLS_BEYOND_CAMERA * coarse1 if skip_near_m is None else float(skip_near_m)
    begin = np.broadcast_to(np.maximum(skip, NEAREST_M), dist.shape)
    span = dist - CELLS_BEFORE_SUBJECT * coarse2 - begin
    course = terrain.path(lon1, lat1, np.nan_to_num(bearing), np.maximum(dist, geodesic.COINCIDENT_M))
    tested = np.flatnonzero((span > 0) & np.isfinite(lens + base + top + fine1 + fine2 + course.sum(axis=(0, 1))))
    counts = np.ceil(2.0 * span[tested] / np.minimum(fine1, fine2)[tested]).astype(np.intp) + 1
    longest = np.argsort(-counts, kind="stable")
    tested, counts = tested[longest], counts[longest]
    chosen = (value[..., tested] for value in (lat1, lens, base, top, bearing, dist, begin, span, course))
    lat1, lens, base, top, bearing, dist, begin, span, course = chosen
    earth = curvature.radius_in_azimuth(lat1, bearing)
    alt = curvature.altitude_deg(dist, top - lens, earth, refraction_k, lens)
    a, b, c = course.swapaxes(0, 1)
    course = np.stack([a + (b + c * begin) * begin, (b + 2.0 * c * begin) * span, c * span**2], axis=1)
    nodes = np.arange(4)[:, None] / 3.0
    ray = np.linalg.solve(nodes ** np.arange(4), ray_height_m(begin + span * nodes, alt, earth, lens, refraction_k))
    start, bulge = course[:, 0], np.abs(course[:, 2]) / 4.0
    low, high = np.minimum(start, course.sum(axis=1)) - bulge, np.maximum(start, course.sum(axis=1)) + bulge
    edge = ~(terrain.covers(*low) & terrain.covers(*high))
    return tested, counts, _Lines(course, ray, begin, span, dist, alt, earth, lens, base, top, edge)


def _worst(terrain, lines, count):
    """Parts of the way to the least clearance and to the least by distance, shape (2, P); whether some ground is not known, (P,)."""
    part = np.linspace(0.0, 1.0, count)
    powers = (part ** np.arange(4)[:, None]).astype(np.float32)
    col, row = (place.T.astype(np.float32) @ powers[:3] for place in lines.course)
    clearance = lines.ray.T.astype(np.float32) @ powers
    clearance -= terrain.between(col, row)
    if lines.edge.any():
        clearance[~terrain.grid.covers(col, row, SLACK)] = np.nan
    least = clearance.argmin(axis=1)
    unknown = np.isnan(clearance[np.arange(least.size), least])  # the first nan, where there is one
    if unknown.any():
        clearance[np.isnan(clearance)] = np.inf
        least = clearance.argmin(axis=1)
    clearance /= np.stack([lines.begin, lines.span], axis=1).astype(np.float32) @ powers[:2]
    return part[[least, clearance.argmin(axis=1)]], unknown


def _least(terrain, lines, worst, unknown, refraction_k):
    """Least clearance, its distance, and what is hidden; shape (3, P)."""
    clear, block, _ = _measured(terrain, lines, worst[0], refraction_k)
    _, _, alt = _measured(terrain, lines, worst[1], refraction_k)
    shown_from = ray_height_m(lines.dist, alt, lines.earth, lines.lens, refraction_k)
    hidden = np.clip(shown_from - lines.base, 0.0, np.maximum(lines.top - lines.base, 0.0))
    open_ended = unknown & ~(clear < 0)
    return np.where(open_ended, np.nan, [clear, block, hidden])


def _measured(terrain, lines, part, refraction_k):
    """Clearance of the ray part of the way, the distance there, and the altitude of the ground."""
    away = lines.begin + lines.span * part
    height = terrain.between(*((place[2] * part + place[1]) * part + place[0] for place in lines.course))
    clear = ray_height_m(away, lines.alt, lines.earth, lines.lens, refraction_k) - height
    return clear, away, curvature.altitude_deg(away, height - lines.lens, lines.earth, refraction_k, lines.lens)


def ray_height_m(dist_m, alt_deg, radius_m, lens_m, refraction_k=curvature.REFRACTION_K):
    """Height of a ray of light at a distance: the inverse of `curvature.altitude_deg`. [m]."""
    half_angle = dist_m / (2.0 * radius_m)
    part = np.tan(np.radians(alt_deg) + (1.0 - refraction_k) * half_angle) * np.tan(half_angle)
    return lens_m + 2.0 * (radius_m + lens_m) * part / (1.0 - part)
