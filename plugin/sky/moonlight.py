"""The Moon's light: how much of the disc is lit and when, how large discs are, how far apart bodies stand."""

import numpy as np

from .ephemeris import DAY_S

ROOT_S = 0.01  # by then the lit fraction has moved less than 1e-8


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
