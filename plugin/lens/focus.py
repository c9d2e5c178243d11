"""Focus: what is sharp, and what becomes of the stars.

A thin lens; distances in metres from it, focal lengths and circles of blur in millimetres. Arguments broadcast. A distance is nan where
a lens cannot be focused on it, within its focal length.
"""

import numpy as np


def hyperfocal_m(focal_mm, f_number, blur_mm):
    """Nearest distance to focus on at which what is infinitely far is blurred no more than a circle.

    Parameters
    ----------
    focal_mm, f_number : array_like
    blur_mm : array_like
        Diameter of the circle on the sensor. [mm]

    Returns
    -------
    ndarray
        [m]
    """
    focal_mm = np.asarray(focal_mm, dtype=float)
    return (focal_mm**2 / (np.asarray(f_number) * blur_mm) + focal_mm) / 1000.0


def star_blur_mm(focal_mm, f_number, focus_m):
    """Diameter of the circle into which a star is blurred by focusing nearer. [mm]."""
    behind_mm = _beyond_focal_mm(focal_mm, focus_m)
    return np.asarray(focal_mm, dtype=float) ** 2 / (np.asarray(f_number) * behind_mm)


def sharp_limits_m(focal_mm, f_number, coc_mm, focus_m):
    """Nearest and farthest distance at which things are blurred no more than the circle of confusion.

    Parameters
    ----------
    focal_mm, f_number : array_like
    coc_mm : array_like
        Circle of confusion. [mm]
    focus_m : array_like
        Distance focused on. [m]

    Returns
    -------
    near_m, far_m : ndarray
        `far_m` is infinite from the hyperfocal distance on. [m]
    """
    focal_m = np.asarray(focal_mm, dtype=float) / 1000.0
    hyperfocal = hyperfocal_m(focal_mm, f_number, coc_mm)
    beyond_m = _beyond_focal_mm(focal_mm, focus_m) / 1000.0
    focus = beyond_m + focal_m
    near = focus * (hyperfocal - focal_m) / (hyperfocal + focus - 2.0 * focal_m)
    short = hyperfocal - focus
    with np.errstate(divide="ignore", invalid="ignore"):
        far = np.where(short > 0.0, focus * (hyperfocal - focal_m) / short, np.inf)
    return near, np.where(np.isnan(focus), np.nan, far)


def _beyond_focal_mm(focal_mm, focus_m):
    """How much farther than the focal length the focus lies, nan where it does not. [mm]."""
    beyond_mm = 1000.0 * np.asarray(focus_m, dtype=float) - focal_mm
    return np.where(beyond_mm > 0.0, beyond_mm, np.nan)
