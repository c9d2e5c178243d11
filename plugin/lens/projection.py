"""Rectilinear pictures: where directions fall in the picture of a camera that is held without roll.

Directions are vectors east, north, up on axis 0. The camera is aimed at an azimuth and an altitude, its upper edge up; in its own axes a
vector is right, up, forward. The picture is the plane at distance 1 ahead, x to the right and y up in it; times the focal length they
are lengths on the sensor. A straight line in space is straight in the picture. Angles in degrees; arguments broadcast.
"""

from typing import NamedTuple

import numpy as np

CENTRING_STEPS = 30  # each leaves at most four fifths of the error, where shapes are far apart and high; elsewhere far less

LEAST_AHEAD = 0.0175  # sine of a degree


class Extent(NamedTuple):
    """Sides of a shape in the picture; infinite where it is not wholly ahead of the camera."""

    left: np.ndarray
    right: np.ndarray
    low: np.ndarray
    high: np.ndarray


def directions(az_deg, alt_deg):
    """Unit vectors of azimuths and altitudes, shape (3, ...)."""
    az, alt = np.radians(az_deg), np.radians(alt_deg)
    return np.stack(np.broadcast_arrays(np.sin(az) * np.cos(alt), np.cos(az) * np.cos(alt), np.sin(alt)))


def azimuth_altitude(vectors):
    """Azimuth in [0, 360) and altitude of vectors, shape (3, ...). [deg]."""
    east, north, up = vectors
    az = np.degrees(np.arctan2(east, north)) % 360.0
    return np.where(az < 360.0, az, 0.0), np.degrees(np.arctan2(up, np.hypot(east, north)))  # the remainder of -1e-15 is 360


def in_camera(vectors, aim_az_deg, aim_alt_deg):
    """Vectors in the camera's axes.

    Parameters
    ----------
    vectors : ndarray, shape (3, ...)
        East, north, up.
    aim_az_deg, aim_alt_deg : array_like
        Broadcast with the vectors' further axes. [deg]

    Returns
    -------
    ndarray, shape (3, ...)
        Right, up, forward.
    """
    east, north, up = vectors
    sin_az, cos_az, sin_alt, cos_alt = _turn(aim_az_deg, aim_alt_deg)
    ahead = sin_az * east + cos_az * north
    return np.stack(np.broadcast_arrays(cos_az * east - sin_az * north, cos_alt * up - sin_alt * ahead, cos_alt * ahead + sin_alt * up))


def from_camera(vectors, aim_az_deg, aim_alt_deg):
    """The inverse of `in_camera`."""
    right, upper, forward = vectors
    sin_az, cos_az, sin_alt, cos_alt = _turn(aim_az_deg, aim_alt_deg)
    ahead = cos_alt * forward - sin_alt * upper
    return np.stack(
        np.broadcast_arrays(cos_az * right + sin_az * ahead, cos_az * ahead - sin_az * right, sin_alt * forward + cos_alt * upper)
    )


def in_picture(vectors):
    """Places of directions in the picture, x and y on axis 0; nan where they are not ahead of the camera by at least a degree.

    Parameters
    ----------
    vectors : ndarray, shape (3, ...)
        Right, up, forward.

    Returns
    -------
    ndarray, shape (2, ...)
    """
    ahead = vectors[2] > LEAST_AHEAD * np.sqrt((vectors**2).sum(axis=0))
    return np.where(ahead, vectors[:2], np.nan) / np.where(ahead, vectors[2], 1.0)


def extent(vectors, radius_deg=0.0):
    """How far discs reach in the picture.

    Parameters
    ----------
    vectors : ndarray, shape (3, ...)
        Their centres, right, up, forward.
    radius_deg : array_like
        Their radii as angles; 0 for a point. [deg]

    Returns
    -------
    Extent
        Exact: a disc off the middle is drawn out into an ellipse.
    """
    x, y, ahead = vectors
    sin_radius = np.sin(np.radians(radius_deg)) * np.sqrt((np.asarray(vectors) ** 2).sum(axis=0))
    sides = []
    for across in (x, y):
        # the plane through the camera and a side of the picture touches the disc's cone
        middle, far = np.arctan2(across, ahead), np.hypot(across, ahead)
        with np.errstate(invalid="ignore", divide="ignore"):
            half = np.arcsin(np.where(sin_radius < far, sin_radius / far, np.nan))
        for side, sign in ((middle - half, -1.0), (middle + half, 1.0)):
            seen = np.abs(side) < np.pi / 2.0
            sides.append(np.where(seen, np.tan(np.where(seen, side, 0.0)), sign * np.inf))
    return Extent(*sides)


def around(extents):
    """The extent of several shapes together: those along the first axis."""
    return Extent(*(fewest(side, axis=0) for side, fewest in zip(extents, (np.min, np.max, np.min, np.max))))


def centred_aim(vectors, radius_deg, aim_az_deg, aim_alt_deg, level=False):
    """Where to aim so that the middle of the picture is the middle of what it is to hold.

    Parameters
    ----------
    vectors : ndarray, shape (3, K, ...)
        K shapes, east, north, up.
    radius_deg : ndarray, shape (K, ...)
        Their radii as angles. [deg]
    aim_az_deg, aim_alt_deg : ndarray, shape (...)
        Where to begin, and what stays where the shapes are not all ahead of the camera. [deg]
    level : bool
        The camera stays level: only its azimuth is sought.

    Returns
    -------
    aim_az_deg, aim_alt_deg : ndarray, shape (...)
        [deg]
    """
    az, alt = (np.array(angle, dtype=float) for angle in np.broadcast_arrays(aim_az_deg, aim_alt_deg))
    if level:
        alt = np.zeros_like(alt)
    for _ in range(CENTRING_STEPS):
        sides = around(extent(in_camera(vectors, az, alt), radius_deg))
        with np.errstate(invalid="ignore"):
            x, y = (sides.left + sides.right) / 2.0, (sides.low + sides.high) / 2.0
        y = np.zeros_like(y) if level else y
        ahead = np.isfinite(x) & np.isfinite(y)
        middle = np.stack([np.where(ahead, x, 0.0), np.where(ahead, y, 0.0), np.ones_like(x)])
        new_az, new_alt = azimuth_altitude(from_camera(middle, az, alt))
        az, alt = np.where(ahead, new_az, az), np.where(ahead & np.logical_not(level), new_alt, alt)
    return az, alt


def _turn(aim_az_deg, aim_alt_deg):
    """Sine and cosine of azimuth and altitude."""
    az, alt = np.radians(aim_az_deg), np.radians(aim_alt_deg)
    return np.sin(az), np.cos(az), np.sin(alt), np.cos(alt)
