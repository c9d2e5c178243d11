"""Atmospheric refraction between true and apparent altitude.

Angles in degrees, any shape; results have the shape of altitude and air broadcast together. Good to about 0.1' above 5 deg, 0.5' at the
horizon; the air near the horizon is worth more than that on many nights, and no formula knows it.
"""

import numpy as np

STANDARD_PRESSURE_HPA = 1010.0
STANDARD_TEMPERATURE_C = 10.0
LOWEST_ALT_DEG = -1.0  # below this the formula has no meaning
NO_AIR_ALT_DEG = -5.0  # from there down no light reaches the site: refraction fades to nothing
INVERSION_STEPS = 25  # each shrinks the error at least four times


def refraction_saemundsson86(alt_true_deg, pressure_hPa=STANDARD_PRESSURE_HPA, temperature_C=STANDARD_TEMPERATURE_C):
    """How far refraction lifts a body that truly stands at an altitude.

    Parameters
    ----------
    alt_true_deg : array_like
        Altitude without air, of the body's centre. [deg]
    pressure_hPa, temperature_C : float
        Air at the site. [hPa, degree Celsius]

    Returns
    -------
    ndarray
        Add to `alt_true_deg` to get the apparent altitude. [deg]

    Notes
    -----
    T. Saemundsson, Sky and Telescope 72, 70 (1986), inverse of G. G. Bennett, J. Navigation 35, 255 (1982).
    """
    alt = np.maximum(alt_true_deg, LOWEST_ALT_DEG)
    standard_air_arcmin = 1.02 / np.tan(np.radians(alt + 10.3 / (alt + 5.11)))
    fade = np.clip((np.asarray(alt_true_deg) - NO_AIR_ALT_DEG) / (LOWEST_ALT_DEG - NO_AIR_ALT_DEG), 0.0, 1.0)
    air = pressure_hPa / STANDARD_PRESSURE_HPA * (273.0 + STANDARD_TEMPERATURE_C) / (273.0 + temperature_C)
    return np.maximum(standard_air_arcmin * air * fade, 0.0) / 60.0  # the formula dips under zero at the zenith


def standard_pressure(height_m):
    """Air pressure at a height in the ICAO standard atmosphere, scaled to 1010 hPa at sea level.

    Parameters
    ----------
    height_m : array_like
        Above sea level. [m]

    Returns
    -------
    ndarray
        [hPa]

    Notes
    -----
    Manual of the ICAO Standard Atmosphere (Doc 7488), troposphere: lapse 6.5 K per km from 288.15 K.
    """
    return STANDARD_PRESSURE_HPA * np.maximum(1.0 - 0.0065 * np.asarray(height_m, float) / 288.15, 0.0) ** 5.25588


def apparent_altitude(alt_true_deg, pressure_hPa=STANDARD_PRESSURE_HPA, temperature_C=STANDARD_TEMPERATURE_C):
    """Altitude at which a body is seen; the parameters are those of `refraction_saemundsson86`. [deg]."""
    return alt_true_deg + refraction_saemundsson86(alt_true_deg, pressure_hPa, temperature_C)


def true_altitude_of_apparent(alt_apparent_deg, pressure_hPa=STANDARD_PRESSURE_HPA, temperature_C=STANDARD_TEMPERATURE_C):
    """Altitude without air of a body seen at an altitude: the inverse of `apparent_altitude`, to 1e-9 deg.

    Parameters
    ----------
    alt_apparent_deg : array_like
        Altitude as seen. [deg]
    pressure_hPa, temperature_C : array_like
        Air at the site. [hPa, degree Celsius]

    Returns
    -------
    ndarray
        [deg]
    """
    alt_true_deg = np.asarray(alt_apparent_deg, float)
    for _ in range(INVERSION_STEPS):
        alt_true_deg = alt_apparent_deg - refraction_saemundsson86(alt_true_deg, pressure_hPa, temperature_C)
    return alt_true_deg
