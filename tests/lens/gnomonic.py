"""A second way to a rectilinear picture: the gnomonic projection of the sphere, longitude for azimuth and latitude for altitude."""

import numpy as np
from pyproj import Proj


def by_proj(aim_az_deg, aim_alt_deg):
    """PROJ's, of a sphere of radius 1."""
    return Proj(proj="gnom", lon_0=(aim_az_deg + 180.0) % 360.0 - 180.0, lat_0=aim_alt_deg, R=1.0)


def picture(az_deg, alt_deg, aim_az_deg, aim_alt_deg):
    """x to the right and y up in the picture at distance 1; infinite where it is not ahead of the camera; all arguments broadcast.

    J. P. Snyder, Map Projections: A Working Manual (USGS Professional Paper 1395, 1987), gnomonic, equations 5-3 and 22-3 to 22-5 (from
    memory; PROJ reproduces them).
    """
    turn, alt, aim = np.radians(np.subtract(az_deg, aim_az_deg)), np.radians(alt_deg), np.radians(aim_alt_deg)
    ahead = np.sin(aim) * np.sin(alt) + np.cos(aim) * np.cos(alt) * np.cos(turn)
    across, up = np.cos(alt) * np.sin(turn), np.cos(aim) * np.sin(alt) - np.sin(aim) * np.cos(alt) * np.cos(turn)
    return np.where(ahead > 0.0, np.array([across, up]) / np.where(ahead > 0.0, ahead, 1.0), np.inf)


def directions_in_picture(x, y, aim_az_deg, aim_alt_deg):
    """Azimuth and altitude of places in the picture. [deg]."""
    az, alt = by_proj(aim_az_deg, aim_alt_deg)(np.asarray(x, float), np.asarray(y, float), inverse=True)
    return np.asarray(az) % 360.0, np.asarray(alt)
