"""The terrain skyline around points: how high the ground stands in every direction, and how far off what makes it is."""

import numpy as np

from ..ground.geodesic import direct

RAYS_AT_ONCE = 20_000
UNSEEN_M = 1.0  # where a direction shows no ground the drawn skyline comes back to the point, short of touching itself there


def azimuths_deg(step_deg):
    """Azimuths from north on, round the horizon. [deg]."""
    return np.arange(0.0, 360.0 - 1e-9, step_deg)


def terrain_horizon(lon_deg, lat_deg, lens_m, az_deg, relief, progress=None):
    """Find the skyline around points, in blocks.

    Parameters
    ----------
    lon_deg, lat_deg, lens_m : ndarray, shape (P,)
        Points and the heights of the lens by the relief's elevation model. [deg], [m]
    az_deg : ndarray, shape (A,)
        [deg]
    relief : Relief
    progress : callable, optional
        Takes what is done, 0 to 1; False from it ends the work, and no more blocks come.

    Yields
    ------
    dict of str to ndarray, shape (Q, A)
        Q of the points in every direction. Columns by field name `az_deg ground_deg dist_m z_m reach_m`; `site`, the index of the point;
        `lon_deg`, `lat_deg`, the place of the ground that makes the skyline. Where none was seen `ground_deg dist_m z_m` are nan, and the
        place is a metre from the point.
    """
    count = len(lon_deg)
    step = max(1, RAYS_AT_ONCE // len(az_deg))
    for first in range(0, count, step):
        index = np.arange(first, min(first + step, count))

        def share(part, done=first, some=index.size):
            return progress is None or progress((done + part * some) / count)

        places = [values[index, None] for values in (lon_deg, lat_deg, lens_m)]
        seen = relief.skyline(*places, az_deg, progress=share)
        if seen is None:
            return
        lon, lat, _ = direct(*places[:2], az_deg, np.where(np.isnan(seen.dist_m), UNSEEN_M, seen.dist_m))
        shape = seen.alt_deg.shape
        yield {
            "site": np.broadcast_to(index[:, None], shape),
            "az_deg": np.broadcast_to(az_deg, shape),
            "ground_deg": seen.alt_deg,
            "dist_m": seen.dist_m,
            "z_m": seen.height_m,
            "reach_m": seen.reach_m,
            "lon_deg": lon,
            "lat_deg": lat,
        }
