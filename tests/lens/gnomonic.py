"""A second way to a rectilinear picture: PROJ's gnomonic projection of the sphere, longitude for azimuth and latitude for altitude."""

import numpy as np
from pyproj import Proj


def picture(az_deg, alt_deg, aim_az_deg, aim_alt_deg):
    """x to the right and y up in the picture at distance 1; infinite where it is not ahead of the camera."""
    project = Proj(proj="gnom", lon_0=(aim_az_deg + 180.0) % 360.0 - 180.0, lat_0=aim_alt_deg, R=1.0)
    az, alt = np.broadcast_arrays((np.asarray(az_deg, float) + 180.0) % 360.0 - 180.0, np.asarray(alt_deg, float))
    return np.array(project(az, alt))


def directions_in_picture(x, y, aim_az_deg, aim_alt_deg):
    """Azimuth and altitude of places in the picture. [deg]."""
    project = Proj(proj="gnom", lon_0=(aim_az_deg + 180.0) % 360.0 - 180.0, lat_0=aim_alt_deg, R=1.0)
    az, alt = project(np.asarray(x, float), np.asarray(y, float), inverse=True)
    return np.asarray(az) % 360.0, np.asarray(alt)
