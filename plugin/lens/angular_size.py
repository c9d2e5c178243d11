"""Angles that a subject subtends at the camera.

Lengths in metres, angles in degrees; arguments broadcast. Width is an angle along the horizon, the bearings of the two edges apart, and
height one of altitude, top less foot: together the subject's box in azimuth and altitude.
"""

import numpy as np


def angular_width_deg(width_m, dist_m):
    """Bearings between the two edges of a subject.

    Parameters
    ----------
    width_m : array_like
        Across the line of sight, half of it to each side. [m]
    dist_m : array_like
        Horizontal distance to the middle. [m]

    Returns
    -------
    ndarray
        180 at no distance at all. [deg]
    """
    return np.degrees(2.0 * np.arctan2(width_m, 2.0 * np.asarray(dist_m, dtype=float)))


def angular_height_deg(base_alt_deg, top_alt_deg):
    """Altitude of a subject's top above that of its foot.

    Parameters
    ----------
    base_alt_deg, top_alt_deg : array_like
        Altitudes of foot and top. [deg]

    Returns
    -------
    ndarray
        [deg]
    """
    return np.subtract(top_alt_deg, base_alt_deg)


def distance_of_width_m(width_m, angle_deg):
    """Distance at which a width fills an angle: from there a subject is as large as a disc of that angle.

    Parameters
    ----------
    width_m : array_like
        [m]
    angle_deg : array_like
        More than 0, less than 180. [deg]

    Returns
    -------
    ndarray
        [m]
    """
    return np.asarray(width_m, dtype=float) / (2.0 * np.tan(np.radians(angle_deg) / 2.0))
