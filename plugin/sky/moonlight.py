"""The Moon's light: how much of the disc is lit and when, how bright it makes the sky, how large discs are, how far apart bodies stand."""

import numpy as np

from .ephemeris import DAY_S

ROOT_S = 0.01  # by then the lit fraction has moved less than 1e-8
DARK_ZENITH_NL = 79.0  # a night without Moon or lights, V 21.59 mag per square arcsecond
EXTINCTION_MAG = 0.172  # per air mass, in V, where the model's measurements were made: Mauna Kea, 2800 m
AUREOLE_DEG = 10.0  # closer to the Moon than this the light scattered by dust grows with another law


def lit_fraction(moon, sun):
    """Lit part of the Moon's disc as seen from the Earth's centre.

    Parameters
    ----------
    moon, sun : ndarray, shape (3 or more, ...)
        Geocentric vectors, x, y, z first, in the same axes and unit.

    Returns
    -------
    ndarray, shape (...)
        0 new to 1 full. From the ground it differs by up to 0.008 (parallax).

    Notes
    -----
    (1 + cos i) / 2 with the phase angle i at the Moon: Meeus, Astronomical Algorithms, chapter 48.
    """
    to_earth, to_sun = -moon[:3], sun[:3] - moon[:3]
    return 0.5 + 0.5 * cosine_between(to_earth, to_sun)


def cosine_between(a, b):
    """Cosine of the angle between vectors, components on axis 0."""
    return (a * b).sum(axis=0) / np.sqrt((a * a).sum(axis=0) * (b * b).sum(axis=0))


def separation_deg(a, b):
    """Angle between vectors, components on axis 0; good for small and large angles. [deg]."""
    a, b = a / np.sqrt((a * a).sum(axis=0)), b / np.sqrt((b * b).sum(axis=0))
    difference, total = a - b, a + b
    return np.degrees(2.0 * np.arctan2(np.sqrt((difference * difference).sum(axis=0)), np.sqrt((total * total).sum(axis=0))))


def bright_limb_deg(moon, sun, pole):
    """Direction on the Moon's disc in which the middle of its bright limb lies.

    Parameters
    ----------
    moon, sun : ndarray, shape (3, ...)
        Vectors from the observer, components on axis 0, in the same axes.
    pole : ndarray, shape (3, ...)
        From which the angle is counted: the celestial pole, or the zenith.

    Returns
    -------
    ndarray, shape (...)
        Counter-clockwise for one who looks at the Moon, -180 to 180; from the celestial pole that is by east. [deg]

    Notes
    -----
    Meeus, Astronomical Algorithms, chapter 48, formula 48.5, in vectors.
    """
    ahead = moon / np.sqrt((moon * moon).sum(axis=0))
    left = np.cross(pole, ahead, axis=0)
    up = pole - (pole * ahead).sum(axis=0) * ahead
    return np.degrees(np.arctan2((sun * left).sum(axis=0), (sun * up).sum(axis=0)))


def semidiameter_deg(vector_km, radius_km):
    """Half the angle that a body's disc subtends, from its topocentric vector, components on axis 0. [deg]."""
    return np.degrees(np.arcsin(radius_km / np.sqrt((vector_km * vector_km).sum(axis=0))))


def scattered_moonlight_krisciunas91(phase_angle_deg, sep_deg, moon_zenith_deg, zenith_deg, extinction_mag=EXTINCTION_MAG):
    """Brightness that moonlight adds to a place of the sky, by V light.

    Parameters
    ----------
    phase_angle_deg : array_like
        Angle at the Moon between Sun and Earth: 0 full, 180 new. [deg]
    sep_deg : array_like
        Angle from the Moon to the place, more than 0. [deg]
    moon_zenith_deg, zenith_deg : array_like
        Zenith distances of the Moon and of the place, up to 90. [deg]
    extinction_mag : float
        Of the air. [mag per air mass]

    Returns
    -------
    ndarray
        All broadcast together. [nanolamberts]

    Notes
    -----
    K. Krisciunas and B. E. Schaefer, PASP 103, 1033 (1991), doi:10.1086/132921, equations 3, 9, 15, 20 and 21; they found 8 to 23 % between
    model and measurements. A full Moon within some degrees of phase angle 0 is brighter than the model's by up to a third.
    """
    phase = np.abs(phase_angle_deg)
    moon_light = 10.0 ** (-0.4 * (3.84 + 0.026 * phase + 4e-9 * phase**4))
    by_molecules = 10.0**5.36 * (1.06 + np.cos(np.radians(sep_deg)) ** 2)
    by_dust = np.where(np.less(sep_deg, AUREOLE_DEG), 6.2e7 / np.square(sep_deg), 10.0 ** (6.15 - np.divide(sep_deg, 40.0)))
    reaching = 10.0 ** (-0.4 * extinction_mag * scattering_air_mass_krisciunas91(moon_zenith_deg))
    scattered = 1.0 - 10.0 ** (-0.4 * extinction_mag * scattering_air_mass_krisciunas91(zenith_deg))
    return (by_molecules + by_dust) * moon_light * reaching * scattered


def scattering_air_mass_krisciunas91(zenith_deg):
    """Air through which light is scattered, 1 in the zenith, 5 on the horizon; as in `scattered_moonlight_krisciunas91`."""
    return 1.0 / np.sqrt(1.0 - 0.96 * np.sin(np.radians(zenith_deg)) ** 2)


def dark_sky_krisciunas91(zenith_deg, extinction_mag=EXTINCTION_MAG):
    """Brightness of a dark sky at zenith distances, equation 2 of `scattered_moonlight_krisciunas91`'s paper. [nanolamberts]."""
    air_mass = scattering_air_mass_krisciunas91(zenith_deg)
    return DARK_ZENITH_NL * 10.0 ** (-0.4 * extinction_mag * (air_mass - 1.0)) * air_mass


def brightening_mag(lit, sep_deg, moon_alt_deg, alt_deg):
    """How much brighter moonlight makes a place of an otherwise dark sky.

    Parameters
    ----------
    lit : array_like
        Lit fraction of the Moon.
    sep_deg : array_like
        Angle from the Moon to the place, more than 0. [deg]
    moon_alt_deg, alt_deg : array_like
        Altitudes of the Moon and of the place; below 0 taken as 0. [deg]

    Returns
    -------
    ndarray
        All broadcast together; not negative. [mag per square arcsecond]
    """
    phase_angle_deg = np.degrees(np.arccos(np.clip(2.0 * np.asarray(lit) - 1.0, -1.0, 1.0)))
    moon_zenith_deg, zenith_deg = (90.0 - np.maximum(alt, 0.0) for alt in (moon_alt_deg, alt_deg))
    added = scattered_moonlight_krisciunas91(phase_angle_deg, sep_deg, moon_zenith_deg, zenith_deg)
    return 2.5 * np.log10(1.0 + added / dark_sky_krisciunas91(zenith_deg))


def lit_stretches(moon, sun, first_tt_s, last_tt_s, least, most):
    """When the lit fraction lies within limits.

    Parameters
    ----------
    moon, sun : Track
        Over the span.
    first_tt_s, last_tt_s : float
        Span. [s of TT]
    least, most : float
        Limits, both included; the fraction runs from 0 to 1.

    Returns
    -------
    start, end : ndarray, shape (K,)
        In order. [s of TT]

    Notes
    -----
    The fraction is a slow wave of a month: days are cut where it turns, then hold one crossing of a limit or none.
    """

    def lit(tt_s):
        return lit_fraction(moon.at(tt_s), sun.at(tt_s))

    def grows(tt_s):
        return lit(tt_s + 30.0) > lit(tt_s - 30.0)

    days = np.linspace(first_tt_s, last_tt_s, int(np.ceil((last_tt_s - first_tt_s) / DAY_S)) + 1)
    inner = np.clip(days, first_tt_s + 30.0, last_tt_s - 30.0)
    edges = np.sort(np.concatenate([days, _halve(grows, inner)]))
    cuts = [_halve(lambda tt_s, limit=limit: lit(tt_s) > limit, edges) for limit in (least, most)]
    edges = np.unique(np.concatenate([edges, *cuts]))
    middle = lit(0.5 * (edges[1:] + edges[:-1]))
    inside = np.concatenate([[False], (middle >= least) & (middle <= most), [False]])
    return edges[inside[1:] & ~inside[:-1]], edges[inside[:-1] & ~inside[1:]]


def new_moons(moon, sun, first_tt_s, last_tt_s):
    """When the Moon passes the Sun in ecliptic longitude.

    Parameters
    ----------
    moon, sun : Track
        Over the span.
    first_tt_s, last_tt_s : float
        Span. [s of TT]

    Returns
    -------
    ndarray, shape (K,)
        In order. [s of TT]
    """

    def is_past(tt_s):
        toward_sun, rate = sun.at(tt_s, rates=True)
        ahead = np.cross(np.cross(toward_sun[:3], rate[:3], axis=0), toward_sun[:3], axis=0)  # in the ecliptic, a right angle on
        return (moon.at(tt_s)[:3] * ahead).sum(axis=0) > 0.0

    days = np.linspace(first_tt_s, last_tt_s, int(np.ceil((last_tt_s - first_tt_s) / DAY_S)) + 1)
    passed = _halve(is_past, days)
    return passed[(moon.at(passed)[:3] * sun.at(passed)[:3]).sum(axis=0) > 0.0]  # the others are full


def _halve(holds, edges):
    """Moments between edges at which a condition changes, by halving."""
    state = holds(edges)
    piece = np.nonzero(state[1:] != state[:-1])[0]
    low, high, at_low = edges[piece], edges[piece + 1], state[piece]
    while len(low) and (high - low).max() > ROOT_S:
        middle = 0.5 * (low + high)
        same = holds(middle) == at_low
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    return 0.5 * (low + high)
