"""How far about a place: the rectangle of longitude and latitude that holds all ground within a distance."""

import numpy as np

from ..ground.curvature import radius_in_azimuth

MARGIN = 1.01  # the radii at the place differ from those along the way


def around(lon_deg, lat_deg, radius_m):
    """West, south, east and north of the ground within a distance.

    Parameters
    ----------
    lon_deg, lat_deg : float
        The place. [deg]
    radius_m : float
        [m]

    Returns
    -------
    tuple of float or None
        [deg]; None where the ground reaches over the antimeridian or a pole, so that no rectangle holds it alone.
    """
    d_lat = MARGIN * np.degrees(radius_m / radius_in_azimuth(lat_deg, 0.0))
    south, north = lat_deg - d_lat, lat_deg + d_lat
    if south <= -89.0 or north >= 89.0:
        return None
    far = max(abs(south), abs(north))
    d_lon = MARGIN * np.degrees(radius_m / (radius_in_azimuth(far, 90.0) * np.cos(np.radians(far))))
    west, east = lon_deg - d_lon, lon_deg + d_lon
    return None if west <= -180.0 or east >= 180.0 else (float(west), float(south), float(east), float(north))
