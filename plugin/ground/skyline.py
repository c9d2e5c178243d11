"""How high the ground stands against the sky in every direction.

Results have the common shape of viewpoints and azimuths. Samples along a ray begin near the lens and grow coarser outward, as what they
hide does; around the highest the ray is looked at more closely. A ray ends where the terrain's heights do.
"""

from typing import NamedTuple

import numpy as np

from ..words import Sentence
from . import curvature
from .terrain import NEAREST_M

FIRST_STEP_M = 0.3
GROWTH = 0.01  # of each step over the one before
BEST = 5  # samples of a ray looked at more closely
FINE = 6  # places on either side of such a sample, up to the next one; and around the highest of these once more
PART = np.arange(-FINE, FINE + 1, dtype=np.float32) / FINE
STRIDE = 64  # samples between two looks at whether anything farther could still rise
GAP_STRIDE = 16  # cells between two looks for blocks where some ground is not known
RAYS = 480  # sampled at once: what they take fits a core's own memory
COURSES = 7200  # worked out at once: 8 MB
FAN = 12  # azimuths at which a viewpoint's courses are worked out when many more are wanted
EDGE = 0.98  # of the radius: a skyline beyond this could go on behind it
CELLS_BEYOND_CAMERA = 2.0


class Skyline(NamedTuple):
    """The skyline, each array of the common shape of what was asked; nan where no ground was seen.

    `alt_deg` altitude, `dist_m` and `height_m` of the ground that makes it, `reach_m` where the heights end (at most the radius),
    `at_radius` whether it lies at the radius, so that a longer one could raise it.
    """

    alt_deg: np.ndarray
    dist_m: np.ndarray
    height_m: np.ndarray
    reach_m: np.ndarray
    at_radius: np.ndarray


def skyline(
    terrain,
    lon_deg,
    lat_deg,
    lens_m,
    az_deg,
    radius_m=40000.0,
    skip_near_m=None,
    refraction_k=curvature.REFRACTION_K,
    progress=None,
):
    """Find the skyline around viewpoints.

    Parameters
    ----------
    terrain : Terrain
    lon_deg, lat_deg, lens_m, az_deg : array_like
        Viewpoints, the heights of the lens above the terrain's zero, true azimuths. They broadcast: (V, 1) with (A,) gives every azimuth
        of every viewpoint, (R,) with (R,) gives single rays. [deg], [m]
    radius_m : float
        How far to look. [m]
    skip_near_m : float, optional
        Ground nearer than this is passed over; two cells if not given, `terrain.NEAREST_M` at least. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.
    progress : callable, optional
        Takes what is done, 0 to 1; False from it ends the work.

    Returns
    -------
    Skyline or None
        None when it was ended. A lens below the ground at its place sees nothing, see `Terrain.buried`.

    Raises
    ------
    ValueError
        A radius that is not longer than what is passed over.
    """
    lon, lat, lens, az = (np.asarray(value, dtype=float) for value in (lon_deg, lat_deg, lens_m, az_deg))
    skip = CELLS_BEYOND_CAMERA * terrain.cell_m(lon, lat)[1] if skip_near_m is None else np.asarray(skip_near_m, dtype=float)
    skip = np.maximum(skip, NEAREST_M)
    farthest = np.fmax.reduce(skip, axis=None, initial=0.0)
    if not radius_m > farthest:
        raise ValueError(
            Sentence(
                "Within {radius:g} m there is no ground beyond the {near:g} m passed over. Look farther.",
                radius=radius_m,
                near=float(farthest),
            )
        )
    lens = np.where(terrain.buried(lon, lat, lens), np.nan, lens)
    given = np.broadcast_arrays(lon, lat, lens, skip, az)
    shape, count = given[0].shape, given[0].size
    found = np.full((4, count), np.nan)
    for start in range(0, count, COURSES):
        seeing, rays = _rays(terrain, *(value.flat[start : start + COURSES] for value in given), radius_m, refraction_k)
        for first in range(0, seeing.size, RAYS):
            some = slice(first, first + RAYS)
            found[:, start + seeing[some]] = _along(terrain, _Rays(*(value[..., some] for value in rays)), radius_m, refraction_k)
            if progress is not None and progress((start + seeing[some][-1] + 1) / count) is False:
                return None
    return Skyline(*found.reshape(4, *shape), (found[1] > EDGE * radius_m).reshape(shape))


class _Rays(NamedTuple):
    """Rays that begin on the terrain, each array of shape (R,), the courses (2, 3, R).

    `bend` makes the drop of the level behind a level ray at a distance: bend d^2. `end` is where the heights end.
    """

    course: np.ndarray
    lens: np.ndarray
    skip: np.ndarray
    earth: np.ndarray
    bend: np.ndarray
    end: np.ndarray


def _distances(radius_m):
    """Distances of the samples, the last one the radius. [m]."""
    count = int(np.ceil(np.log1p(radius_m * GROWTH / FIRST_STEP_M) / np.log1p(GROWTH)))
    return np.minimum(FIRST_STEP_M * np.expm1(np.arange(1, count + 1) * np.log1p(GROWTH)) / GROWTH, radius_m)


def _rays(terrain, lon, lat, lens, skip, az, radius_m, refraction_k):
    """Which of the rays can see, and all that is known of those before looking at the ground."""
    course = _courses(terrain, lon, lat, az, radius_m)
    seeing = np.flatnonzero(terrain.covers(*course[:, 0]) & np.isfinite(course).all(axis=(0, 1)) & np.isfinite(lens))
    course, lat, lens, skip, az = (value[..., seeing] for value in (course, lat, lens, skip, az))
    earth = curvature.radius_in_azimuth(lat, az)
    end = np.minimum(terrain.grid.leaving_m(course), radius_m)
    if terrain.gaps.any() and seeing.size:
        end = _known_to(terrain, course, skip, end)
    return seeing, _Rays(course, lens, skip, earth, (1.0 - refraction_k) / (2.0 * earth), end)


def _along(terrain, rays, radius_m, refraction_k):
    """Altitude, distance, height and reach of the skyline on rays, shape (4, R)."""
    dist = _distances(radius_m)
    dist = np.concatenate([[rays.skip.min()], dist[dist > rays.skip.min()]])
    tangents = _march(terrain, rays, dist)
    away, seen = _refined(terrain, rays, dist, tangents)
    height = terrain.between(*_place(rays.course, away))
    alt = curvature.altitude_deg(away, height - rays.lens, rays.earth, refraction_k, rays.lens)
    return np.stack([*np.where(seen, [alt, away, height], np.nan), rays.end])


def _place(course, dist_m):
    """Position in cells at distances along courses, arrays that broadcast."""
    return ((place[2] * dist_m + place[1]) * dist_m + place[0] for place in course)


def _courses(terrain, lon, lat, az, radius_m):
    """Courses of rays, shape (2, 3, R).

    Around one viewpoint they are smooth functions of azimuth, of which all but the first few harmonics vanish with powers of distance over
    radius of the Earth: from a fan of azimuths all others follow.
    """
    new = np.concatenate([[True], (np.diff(lon) != 0) | (np.diff(lat) != 0)])
    if lon.size < 2 * FAN * new.sum():
        return terrain.path(lon, lat, az, radius_m)
    fan = terrain.path(lon[new, None], lat[new, None], np.arange(FAN) * 360.0 / FAN, radius_m)
    if not np.isfinite(fan).all():
        return terrain.path(lon, lat, az, radius_m)
    waves = np.fft.rfft(fan)[..., : (FAN + 1) // 2] / FAN
    waves[..., 1:] *= 2.0
    turns = np.exp(1j * np.radians(az)[:, None] * np.arange(waves.shape[-1]))
    return np.einsum("ijrk,rk->ijr", waves[:, :, np.cumsum(new) - 1], turns).real


def _march(terrain, rays, dist):
    """Tangents of the altitudes of samples, shape (R, S), -inf where there is none to see.

    Tangents to first order, rise / d - bend d: they differ from `curvature.altitude_deg` by a part in a thousand, alike along a ray.
    """
    powers = np.stack([np.ones_like(dist), dist, dist**2]).astype(np.float32)
    inverse = np.stack([1.0 / dist, dist]).astype(np.float32)
    cols, rows = rays.course.swapaxes(1, 2).astype(np.float32)
    less = np.stack([rays.lens, rays.bend], axis=1).astype(np.float32)
    tangents = np.full((rays.lens.size, dist.size), -np.inf, dtype=np.float32)
    best = np.full(rays.lens.size, -np.inf, dtype=np.float32)
    going = np.arange(rays.lens.size)
    # The tangent of ground of one height rises with distance up to its horizon, above all it has been, and falls beyond: so the next
    # sample tells what all farther ones could reach. Only light that bends more than the Earth (k > 1) lifts it again, most at the end.
    highest_rise = terrain.highest_m - rays.lens
    for first in range(0, dist.size, STRIDE):
        some = slice(first, first + STRIDE)
        out = dist[some]
        rises = np.maximum(*(highest_rise[going] / away - rays.bend[going] * away for away in (out[0], dist[-1]))) > best[going]
        going = going[rises & (rays.end[going] >= out[0])]
        if not going.size:
            break
        skip, end = rays.skip[going, None], rays.end[going, None]
        col, row = cols[going] @ powers[:, some], rows[going] @ powers[:, some]
        tangent = terrain.between(col, row)
        tangent *= inverse[0, some]
        tangent -= less[going] @ inverse[:, some]
        if out[0] < skip.max():
            tangent[out < skip] = -np.inf
        if out[-1] > end.min():
            tangent[out > end] = -np.inf
        if terrain.gaps.any():
            tangent[np.isnan(tangent)] = -np.inf  # clipped at a corner
        tangents[going, some] = tangent
        best[going] = np.maximum(best[going], tangent.max(axis=1))
    return tangents


def _known_to(terrain, course, skip, end):
    """Where the known ground of rays ends beyond what is passed over, to a cell; their end where all of it is known. [m]."""
    step_m = 1.0 / np.hypot(*course[:, 1]).max()  # a cell, or a little less
    out = np.arange(0.0, end.max() + GAP_STRIDE * step_m, GAP_STRIDE * step_m)
    near = terrain.near_gap(*_place(course[..., None], out)) & (out <= end[:, None])
    ray, stride = np.nonzero(near[:, :-1] | near[:, 1:])
    away = out[stride, None] + step_m * np.arange(GAP_STRIDE)
    unknown = np.isnan(terrain.between(*_place(course[:, :, ray, None], away)))
    unknown &= (away >= skip[ray, None]) & (away <= end[ray, None])
    met = unknown.any(axis=1)
    reach = end.copy()
    np.minimum.at(reach, ray[met], away[met, unknown[met].argmax(axis=1)] - step_m)
    return np.maximum(reach, 0.0)


def _refined(terrain, rays, dist, tangents):
    """Look more closely around the highest samples of each ray: distance of the skyline, and whether there is one, shape (R,)."""
    every = np.arange(rays.end.size)
    order = np.empty((rays.end.size, BEST), dtype=np.intp)
    seen = np.zeros(rays.end.size, dtype=bool)
    for number in range(BEST):
        order[:, number] = tangents.argmax(axis=1)
        seen |= np.isfinite(tangents[every, order[:, number]])
        tangents[every, order[:, number]] = -np.inf
    short = _Rays(*(value.astype(np.float32) for value in rays._replace(end=np.maximum(rays.end, rays.skip))))
    before, here, after = (dist.astype(np.float32)[np.clip(order + step, 0, dist.size - 1)] for step in (-1, 0, 1))
    best = _highest_between(terrain, short, before, here, after)
    step = (FIRST_STEP_M + GROWTH * best) / FINE
    return _highest_between(terrain, short, best - step, best, best + step)[:, 0].astype(float), seen


def _highest_between(terrain, rays, before, here, after):
    """Distance of the highest of the places on either side of some, shapes (R, N), up to the next ones; shape (R, 1)."""
    before, here, after = (value[:, :, None] for value in (before, here, after))
    away = np.concatenate([here + (here - before) * PART[:FINE], here + (after - here) * PART[FINE:]], axis=2).reshape(rays.end.size, -1)
    away = np.clip(away, rays.skip[:, None], rays.end[:, None])
    tangent = (terrain.between(*_place(rays.course[..., None], away)) - rays.lens[:, None]) / away - rays.bend[:, None] * away
    tangent[np.isnan(tangent)] = -np.inf
    return np.take_along_axis(away, tangent.argmax(axis=1)[:, None], axis=1)
