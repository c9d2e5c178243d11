"""Whether the ground lets the lens see a subject.

Results have the shape of the pairs, (P,). The ray bends with the air; its clearance is its height above the ground.
"""

from typing import NamedTuple

import numpy as np

from . import curvature, geodesic

SAMPLES = 400_000  # at once: 68 MB at their peak
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
        Ground nearer to the lens than this is passed over; two cells if not given. [m]
    accuracy_m : float
        Of the terrain's heights; a clearance smaller than this is uncertain. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.

    Returns
    -------
    Sight

    Notes
    -----
    Samples lie at most half a cell apart.
    """
    given = (lon1_deg, lat1_deg, lens_m, lon2_deg, lat2_deg, base_m, top_m)
    lon1, lat1, lens, lon2, lat2, base, top = np.broadcast_arrays(*(np.atleast_1d(np.asarray(value, float)) for value in given))
    bearing, _, dist = geodesic.inverse(lon1, lat1, lon2, lat2)
    fine1, coarse1 = terrain.cell_m(lon1, lat1)
    fine2, coarse2 = terrain.cell_m(lon2, lat2)
    begin = np.broadcast_to(CELLS_BEYOND_CAMERA * coarse1 if skip_near_m is None else float(skip_near_m), dist.shape)
    end = dist - CELLS_BEFORE_SUBJECT * coarse2
    result = np.full((3, dist.size), np.nan)
    tested = np.flatnonzero((end > begin) & np.isfinite(lens + base + top + fine1 + fine2))
    count = np.ceil((end - begin)[tested] / (0.5 * np.minimum(fine1, fine2)[tested])).astype(np.intp) + 1
    group = np.cumsum(count) // SAMPLES
    for number in np.unique(group):
        some, counts = tested[group == number], count[group == number]
        pairs = (value[some] for value in (lon1, lat1, lens, base, top, bearing, dist, begin, end))
        result[:, some] = _least(terrain, *pairs, counts, refraction_k)
    clear, block, hidden = result
    unsure = np.abs(clear) < accuracy_m * np.minimum(1.0, block / SHARED_M)
    sight = np.where(unsure, "uncertain", np.where(clear >= 0, "clear", "hidden")).astype(object)
    sight[np.isnan(clear)] = None
    return Sight(clear, block, hidden, sight)


def _least(terrain, lon, lat, lens, base, top, bearing, dist, begin, end, counts, refraction_k):
    """Least clearance, its distance, and what is hidden; shape (3, P)."""
    first = np.cumsum(counts) - counts
    pair = np.repeat(np.arange(counts.size), counts)
    away = begin[pair] + ((end - begin) / (counts - 1))[pair] * (np.arange(pair.size) - first[pair])
    course = terrain.path(lon, lat, bearing, dist)[:, :, pair]
    height = terrain.sample(*((course[:, 2] * away + course[:, 1]) * away + course[:, 0]))
    earth = curvature.radius_in_azimuth(lat, bearing)
    alt = curvature.altitude_deg(dist, top - lens, earth, refraction_k, lens)
    clearance = ray_height_m(away, alt[pair], earth[pair], lens[pair], refraction_k) - height
    least = np.fmin.reduceat(clearance, first)
    open_ended = (least >= 0) & np.logical_or.reduceat(np.isnan(height), first)
    least = np.where(open_ended, np.nan, least)
    at = np.minimum.reduceat(np.where(clearance == least[pair], away, np.inf), first)
    ground = np.fmax.reduceat(curvature.altitude_deg(away, height - lens[pair], earth[pair], refraction_k, lens[pair]), first)
    hidden = np.clip(ray_height_m(dist, ground, earth, lens, refraction_k) - base, 0.0, np.maximum(top - base, 0.0))
    return np.where(np.isnan(least), np.nan, np.stack([least, at, hidden]))


def ray_height_m(dist_m, alt_deg, radius_m, lens_m, refraction_k=curvature.REFRACTION_K):
    """Height of a ray of light at a distance: the inverse of `curvature.altitude_deg`. [m]."""
    half_angle = dist_m / (2.0 * radius_m)
    part = np.tan(np.radians(alt_deg) + (1.0 - refraction_k) * half_angle) * np.tan(half_angle)
    return lens_m + 2.0 * (radius_m + lens_m) * part / (1.0 - part)
