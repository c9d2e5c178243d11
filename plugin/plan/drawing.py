"""Sightlines as a map shows them: the chains of vertices that draw them, and their bearing from the north of a grid."""

import numpy as np

from ..ground.geodesic import densified_lines, direct, split_at_antimeridian

HALF_STEP_M = 50.0  # to either side of the camera: short against any projection's bending, long against the rounding of its coordinates


def drawn_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg):
    """Geodesics with vertices enough to be drawn within 1 m, cut at the antimeridian.

    Parameters
    ----------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like, (L,)
        Ends of the lines. [deg]

    Returns
    -------
    ground.geodesic.MultiLines
    """
    return split_at_antimeridian(densified_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg))


def short_steps(lon_deg, lat_deg, bearing_deg):
    """Ends of a short step along each bearing, the place in its middle.

    Parameters
    ----------
    lon_deg, lat_deg, bearing_deg : array_like, (L,)
        Places and true bearings. [deg]

    Returns
    -------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : ndarray, (L,)
        Where each step begins and ends. [deg]
    """
    lon1, lat1, _ = direct(lon_deg, lat_deg, bearing_deg, -HALF_STEP_M)
    lon2, lat2, _ = direct(lon_deg, lat_deg, bearing_deg, HALF_STEP_M)
    return lon1, lat1, lon2, lat2


def grid_bearing_deg(east, north):
    """Bearing of a step on a grid, clockwise from the grid's north.

    Parameters
    ----------
    east, north : array_like
        The step, in any unit.

    Returns
    -------
    ndarray
        0 <= bearing < 360. [deg]
    """
    turned = np.degrees(np.arctan2(east, north)) % 360.0
    return np.where(turned < 360.0, turned, 0.0)  # the remainder of -1e-15 is 360
