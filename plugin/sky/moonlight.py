"""The Moon's light: how much of the disc is lit, how large discs are, how far apart bodies stand."""

import numpy as np


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


def semidiameter_deg(vector_km, radius_km):
    """Half the angle that a body's disc subtends, from its topocentric vector, components on axis 0. [deg]."""
    return np.degrees(np.arcsin(radius_km / np.sqrt((vector_km * vector_km).sum(axis=0))))
