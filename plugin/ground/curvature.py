"""How the curved Earth and its air set the altitude of distant ground.

Distances along the ellipsoid and heights above it in metres, angles in degrees; arguments broadcast. `refraction_k` is the coefficient of
terrestrial refraction: a sight line bends k times as much as the Earth. Near 0.13 over land by day; on clear nights close to the
ground it may reach several times that, which no formula knows.
"""

import numpy as np

EQUATOR_M = 6378137.0  # WGS 84
FLATTENING = 1.0 / 298.257223563
ECCENTRICITY2 = FLATTENING * (2.0 - FLATTENING)
REFRACTION_K = 0.13  # Gauss, from the survey of Hanover


def radius_in_azimuth(lat_deg, az_deg):
    """Radius of curvature of the WGS 84 ellipsoid along an azimuth.

    Parameters
    ----------
    lat_deg : array_like
        Geodetic latitude. [deg]
    az_deg : array_like
        Direction of the line. [deg]

    Returns
    -------
    ndarray
        From 6335 km (along the meridian at the equator) to 6400 km (at the poles). [m]

    Notes
    -----
    Euler's theorem on the two principal radii.
    """
    lat, az = np.radians(lat_deg), np.radians(az_deg)
    w2 = 1.0 - ECCENTRICITY2 * np.sin(lat) ** 2
    prime_vertical_m = EQUATOR_M / np.sqrt(w2)
    meridian_m = prime_vertical_m * (1.0 - ECCENTRICITY2) / w2
    return 1.0 / (np.cos(az) ** 2 / meridian_m + np.sin(az) ** 2 / prime_vertical_m)


def altitude_deg(dist_m, rise_m, radius_m, refraction_k=REFRACTION_K, height_m=0.0):
    """Altitude at which a point of the ground is seen.

    Parameters
    ----------
    dist_m : array_like
        Distance to the point along the ellipsoid. [m]
    rise_m : array_like
        Its height less that of the lens. [m]
    radius_m : array_like
        Of the Earth along the line, as `radius_in_azimuth` gives it. [m]
    refraction_k : float
        Coefficient of terrestrial refraction; 0 without air.
    height_m : array_like
        Height of the lens above the ellipsoid, or sea; at 3000 m lengths are greater by 1 part in 2000. [m]

    Returns
    -------
    ndarray
        Above the horizontal plane of the lens. [deg]

    Notes
    -----
    The law of tangents in the triangle of lens, point and centre of the Earth, exact on the sphere of that radius; refraction lifts the
    point by half of k times the angle at the centre. Without air within 0.05" of ellipsoidal coordinates to 60 km and 0.5" to 200 km, for
    heights to 6000 m; with the height of the lens left out it may be off by a thousandth of the altitude there.
    """
    half_angle = np.minimum(np.asarray(dist_m, dtype=float) / np.asarray(radius_m) / 2.0, np.pi / 2.0)  # not past the antipodes
    chord_m = (2.0 * (np.asarray(radius_m) + height_m) + rise_m) * np.tan(half_angle)
    return np.degrees(np.arctan2(rise_m, chord_m) - (1.0 - refraction_k) * half_angle)
