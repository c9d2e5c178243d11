"""How high the ground stands against the sky in every direction.

Results are (viewpoints, azimuths). Samples along a ray begin near the lens and grow coarser outward, as what they hide does; the best are
refined. A ray ends where the terrain's heights do.
"""

from typing import NamedTuple

import numpy as np

from . import curvature

FIRST_STEP_M = 0.3
GROWTH = 0.01  # of each step over the one before
BEST = 3  # peaks of a ray looked at more closely
FINE = 8  # places on either side of such a peak, up to the next sample
STRIDE = 48  # samples between two looks at whether anything farther could still rise
RAYS = 1440  # at once: 59 MB at their peak
EDGE = 0.98  # of the radius: a skyline beyond this could go on behind it


class Skyline(NamedTuple):
    """The skyline, each array of shape (viewpoints, azimuths); nan where no ground was seen.

    `alt_deg` altitude, `dist_m` and `height_m` of the ground that makes it, `reach_m` where the heights end (at most the radius),
    `at_radius` whether it lies at the radius, so that a longer one could raise it.
    """

    alt_deg: np.ndarray
    dist_m: np.ndarray
    height_m: np.ndarray
    reach_m: np.ndarray
    at_radius: np.ndarray


def skyline(terrain, lon_deg, lat_deg, lens_m, az_deg, radius_m=40000.0, skip_near_m=None, refraction_k=curvature.REFRACTION_K):
    """Find the skyline around viewpoints.

    Parameters
    ----------
    terrain : Terrain
    lon_deg, lat_deg, lens_m : array_like, shape (V,)
        Viewpoints, and the heights of the lens above the terrain's zero. [deg], [m]
    az_deg : array_like, shape (A,)
        True azimuths. [deg]
    radius_m : float
        How far to look. [m]
    skip_near_m : float, optional
        Ground nearer than this is passed over; two cells if not given. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.

    Returns
    -------
    Skyline

    Raises
    ------
    ValueError
        A radius that is not longer than what is passed over.
    """
    lon, lat, lens = np.broadcast_arrays(*(np.atleast_1d(np.asarray(value, float)) for value in (lon_deg, lat_deg, lens_m)))
    az = np.atleast_1d(np.asarray(az_deg, float))
    skip = np.broadcast_to(2.0 * terrain.cell_m(lon, lat)[1] if skip_near_m is None else float(skip_near_m), lon.shape)
    if not radius_m > np.nanmax(skip):
        raise ValueError(f"Within {radius_m:g} m there is no ground beyond the {np.nanmax(skip):g} m passed over. Look farther.")
    at_once = max(1, RAYS // az.size)
    parts = []
    for first in range(0, lon.size, at_once):
        some = slice(first, first + at_once)
        rays = (np.repeat(value[some], az.size) for value in (lon, lat, lens, skip))
        parts.append(_along_rays(terrain, *rays, np.tile(az, lon[some].size), radius_m, refraction_k))
    return Skyline(*(np.concatenate(values).reshape(lon.size, az.size) for values in zip(*parts)))


def _distances(radius_m):
    """Distances of the samples, the last one the radius. [m]."""
    count = int(np.ceil(np.log1p(radius_m * GROWTH / FIRST_STEP_M) / np.log1p(GROWTH)))
    return np.minimum(FIRST_STEP_M * np.expm1(np.arange(1, count + 1) * np.log1p(GROWTH)) / GROWTH, radius_m)


def _tangent(dist_m, rise_m, radius_m, lens_m, refraction_k):
    """Tangent of `curvature.altitude_deg`, without its inverse functions."""
    half_angle = dist_m / (2.0 * radius_m)
    straight = rise_m / ((2.0 * (radius_m + lens_m) + rise_m) * np.tan(half_angle))
    fall = np.tan((1.0 - refraction_k) * half_angle)
    return (straight - fall) / (1.0 + straight * fall)


def _place(course, dist_m):
    """Position in cells at distances along courses."""
    return (course[:, 2] * dist_m + course[:, 1]) * dist_m + course[:, 0]


def _along_rays(terrain, lon, lat, lens, skip, az, radius_m, refraction_k):
    """Skyline of single rays, shape (R,)."""
    course = terrain.path(lon, lat, az, radius_m)
    earth = curvature.radius_in_azimuth(lat, az)
    dist = _distances(radius_m)
    highest = _tangent(dist[:, None], terrain.highest_m - lens, earth, lens, refraction_k)
    could_rise = np.maximum.accumulate(highest[::-1], axis=0)[::-1]
    tangents = np.full((dist.size, lon.size), -np.inf)
    reach = np.full(lon.size, radius_m)
    best = np.full(lon.size, -np.inf)
    going = np.arange(lon.size)
    for first in range(0, dist.size, STRIDE):
        going = going[could_rise[first, going] > best[going]]
        if not going.size:
            break
        out = dist[first : first + STRIDE, None]
        height = terrain.sample(*_place(course[:, :, None, going], out))
        unknown = np.isnan(height)
        ended = unknown.any(axis=0)
        end = np.where(ended, unknown.argmax(axis=0), len(out))
        reach[going[ended]] = np.where(first + end > 0, dist[np.maximum(first + end - 1, 0)], 0.0)[ended]
        seen = (np.arange(len(out))[:, None] < end) & (out >= skip[going])
        tangent = np.where(seen, _tangent(out, height - lens[going], earth[going], lens[going], refraction_k), -np.inf)
        tangents[first : first + STRIDE, going] = tangent
        best[going] = np.maximum(best[going], tangent.max(axis=0))
        going = going[~ended]
    outside = ~terrain.covers(*_place(course[:, :, None, :], dist[:, None]))
    leaves = outside.any(axis=0)
    edge = np.where(outside.argmax(axis=0) > 0, dist[np.maximum(outside.argmax(axis=0) - 1, 0)], 0.0)
    reach = np.minimum(reach, np.where(leaves, edge, radius_m))
    best, away, height = _refined(terrain, course, dist, tangents, reach, skip, earth, lens, refraction_k)
    return np.degrees(np.arctan(best)), away, height, reach, away > EDGE * radius_m


def _refined(terrain, course, dist, tangents, reach, skip, earth, lens, refraction_k):
    """Look more closely around the highest peaks of each ray."""
    beside = np.full((1, tangents.shape[1]), -np.inf)
    padded = np.concatenate([beside, tangents, beside])
    peak = (tangents >= padded[:-2]) & (tangents >= padded[2:])
    order = np.argpartition(np.where(peak, tangents, -np.inf), -BEST, axis=0)[-BEST:]
    before, after = dist[np.maximum(order - 1, 0)], dist[np.minimum(order + 1, dist.size - 1)]
    part = np.arange(FINE + 1)[:, None, None] / FINE
    away = np.concatenate([before + (dist[order] - before) * part, dist[order] + (after - dist[order]) * part[1:]])
    away = np.clip(away, skip, np.maximum(reach, skip)).reshape(-1, tangents.shape[1])
    height = terrain.sample(*_place(course[:, :, None, :], away))
    tangent = _tangent(away, height - lens, earth, lens, refraction_k)
    tangent = np.where(np.isnan(tangent) | (away > reach), -np.inf, tangent)
    top = tangent.argmax(axis=0), np.arange(tangents.shape[1])
    some = np.isfinite(tangent[top])
    return tuple(np.where(some, value[top], np.nan) for value in (tangent, away, height))
