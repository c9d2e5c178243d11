"""How long the shutter may stay open before stars become trails, by the rules in use, and how long the trails are.

Times in seconds, focal lengths in millimetres, angles in degrees. The fastest star of a frame is the one whose declination is nearest to
0. Only that part of a frame is looked at which lies above the level horizon.
"""

import numpy as np

from .projection import directions, in_camera

EARTH_TURN_RAD_PER_S = 7.292115e-5  # WGS 84: against the stars
STEPS_A_SIDE = 16  # at which a frame's edges are asked for their trails


def rule_of_500_s(focal_mm, crop):
    """Longest shutter by the rule of 500. [s]; common practice, no source."""
    return 500.0 / (crop * np.asarray(focal_mm, dtype=float))


def rule_npf_s(focal_mm, f_number, pixel_um, dec_deg):
    """Longest shutter by the NPF rule.

    Parameters
    ----------
    focal_mm, f_number : array_like
    pixel_um : array_like
        Spacing of the pixels. [µm]
    dec_deg : array_like
        Declination of the star. [deg]

    Returns
    -------
    ndarray
        [s]

    Notes
    -----
    By F. Michaud, Société astronomique du Havre, with his constants (from memory; 16.9, 0.10 and 13.7 are also in use). It is made for the
    middle of a picture.
    """
    focal_mm = np.asarray(focal_mm, dtype=float)
    return (16.856 * f_number + 0.0997 * focal_mm + 13.713 * pixel_um) / (focal_mm * np.cos(np.radians(dec_deg)))


def fastest_declination_deg(frame, aim_az_deg, aim_alt_deg, lat_deg):
    """Declination nearest to 0 in the sky of a frame.

    Parameters
    ----------
    frame : Frame
    aim_az_deg, aim_alt_deg : array_like
        Where the camera is aimed. [deg]
    lat_deg : array_like
        Latitude of the site. [deg]

    Returns
    -------
    ndarray
        0 where the equator passes through the frame; nan where the frame holds no sky. [deg]

    Notes
    -----
    Off the equator the sine of the declination has no extremum but at the poles, and along a straight side of the frame it is nearest to
    0 at an end: the corners decide.
    """
    aim_az_deg, aim_alt_deg, lat_deg = np.broadcast_arrays(aim_az_deg, aim_alt_deg, lat_deg)
    low = _lowest_of_sky(frame, aim_alt_deg)
    high, side = np.full(low.shape, frame.half_height), np.full(low.shape, frame.half_width)
    corners = np.stack([np.stack([x, y, np.ones(low.shape)]) for x in (-side, side) for y in (low, high)], axis=1)
    pole = _pole_in_camera(aim_az_deg, aim_alt_deg, lat_deg)
    sin_dec = (corners * pole[:, np.newaxis]).sum(axis=0) / np.sqrt((corners**2).sum(axis=0))
    least = np.take_along_axis(sin_dec, np.abs(sin_dec).argmin(axis=0)[np.newaxis], axis=0)[0]
    crossed = (sin_dec.min(axis=0) <= 0.0) & (sin_dec.max(axis=0) >= 0.0)
    return np.where(crossed, 0.0, np.degrees(np.arcsin(np.clip(least, -1.0, 1.0))))


def trail_px(frame, aim_az_deg, aim_alt_deg, lat_deg, shutter_s):
    """Length of the longest star trail in a frame.

    Parameters
    ----------
    frame, aim_az_deg, aim_alt_deg, lat_deg
        As for `fastest_declination_deg`.
    shutter_s : array_like
        [s]

    Returns
    -------
    ndarray
        The speed at which the star crosses the picture, times the time: for trails that are short against the frame. Toward the sides of
        a wide picture a trail is drawn out, and longer than the rules know. nan where the frame holds no sky. [px]

    Notes
    -----
    The square of the speed is a subharmonic function of the place in the picture, so that it is greatest on the edge.
    """
    aim_az_deg, aim_alt_deg, lat_deg = np.broadcast_arrays(aim_az_deg, aim_alt_deg, lat_deg)
    low = _lowest_of_sky(frame, aim_alt_deg)
    along = np.linspace(0.0, 1.0, STEPS_A_SIDE + 1)
    ends = np.zeros_like(along), np.ones_like(along)
    u = np.concatenate([along, along, *ends]).reshape((-1,) + (1,) * low.ndim)
    v = np.concatenate([*ends, along, along]).reshape(u.shape)
    x, y = (2.0 * u - 1.0) * frame.half_width, low + v * (frame.half_height - low)
    right, up, ahead = _pole_in_camera(aim_az_deg, aim_alt_deg, lat_deg)
    # the turning of (x, y, 1) about the pole, and what of it is seen in the plane ahead
    dx, dy, dz = up - ahead * y, ahead * x - right, right * y - up * x
    speed = np.hypot(dx - x * dz, dy - y * dz).max(axis=0) * EARTH_TURN_RAD_PER_S
    return frame.focal_px * speed * shutter_s


def _lowest_of_sky(frame, aim_alt_deg):
    """Lower end of the sky in the picture at distance 1: without roll the horizon is level in it. nan where there is none."""
    low = np.maximum(-np.tan(np.radians(aim_alt_deg)), -frame.half_height)
    return np.where(low < frame.half_height, low, np.nan)


def _pole_in_camera(aim_az_deg, aim_alt_deg, lat_deg):
    return in_camera(directions(0.0, lat_deg), aim_az_deg, aim_alt_deg)
