"""Moments at which a body is to be looked for: those of a lattice of time in which the conditions of a night hold, or those that are given.

Conditions are judged at the subject: the cameras stand within a few kilometres of it. Angles in degrees.
"""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from ..sky import arcs
from ..sky.bodies import MOON, SUN, Body
from ..sky.ephemeris import default_ephemeris
from ..words import Sentence
from . import circumstances, nights
from .conditions import ANY, Circumstances, Heavens, body_limits

DAY_S = 86400.0
CELLS = 100_000  # sites x moments worked on at once
MOST = 50_000_000  # sites x moments: some 2 GB while they are put in order
SITE_NIGHTS = 30_000  # sites x nights whose conditions are solved at once


class Moments(NamedTuple):
    """Moments of all sites, ascending, shape (T,) in s of UTC, and which of them count at each site, shape (S, T)."""

    t_utc_s: np.ndarray
    asked: np.ndarray


class Standing(NamedTuple):
    """What was found at moments that were given, shape (S, T): whether the body can be used, its altitude and that of the core."""

    usable: np.ndarray
    alt_deg: np.ndarray
    core_alt: np.ndarray


def heavens_of(target, first_utc_s, last_utc_s):
    """The motions of a target and of what a table tells beside it, over a span."""
    return Heavens([*circumstances.NEEDED, target.body], first_utc_s, last_utc_s)


def moments_of_nights(sites, zone_names, zone_index, first_night, last_night, target, conditions, step_s):
    """Moments on whole steps of UTC in which every condition of place and time holds; gaps over a subject are none of them.

    Parameters
    ----------
    sites : Sites
        S of them.
    zone_names : sequence of str
    zone_index : ndarray of int, shape (S,)
    first_night, last_night : datetime64[D] or ndarray of it, shape (S,)
    target : Target
    conditions : Conditions
    step_s : float
        [s]

    Returns
    -------
    Moments

    Raises
    ------
    ValueError
        Where they are too many to be held.
    """
    noon_utc_s, count = nights.noons(sites.lon_deg, zone_names, zone_index, first_night, last_night)
    last_utc_s = noon_utc_s + DAY_S * count
    heavens = heavens_of(target, noon_utc_s.min(), last_utc_s.max())
    step = max(1, SITE_NIGHTS // int(count.max()))
    found = []
    for first in range(0, len(sites), step):
        some = slice(first, first + step)
        row, number = _numbers(sites.take(some), noon_utc_s[some], last_utc_s[some], heavens, target, conditions, step_s)
        found.append((row + first, number))
    row, number = (np.concatenate(parts) for parts in zip(*found))
    numbers, at = np.unique(number, return_inverse=True)
    _refuse_too_many(len(sites) * numbers.size, step_s)
    asked = np.zeros((len(sites), numbers.size), dtype=bool)
    asked[row, at.reshape(-1)] = True
    return Moments(numbers * step_s, asked)


def _numbers(sites, noon_utc_s, last_utc_s, heavens, target, conditions, step_s):
    """Sites and numbers of the steps at which all conditions hold, each of shape (N,)."""
    ephemeris = default_ephemeris()
    air = circumstances.Air(sites.height_m, conditions.pressure_hPa, conditions.temperature_C)
    shared = Circumstances(heavens, sites, air, ephemeris.tt_from_utc(noon_utc_s), ephemeris.tt_from_utc(last_utc_s))
    met = arcs.every(*(held for held in _sets(target, conditions, shared, air) if held is not None))
    start, end = ephemeris.utc_from_tt(met.start), ephemeris.utc_from_tt(met.end)
    _refuse_too_many(float(np.sum(end - start)) / step_s, step_s)
    first = np.ceil(np.maximum(start, noon_utc_s[met.row]) / step_s).astype(np.int64)
    steps = np.maximum(np.ceil(np.minimum(end, last_utc_s[met.row]) / step_s).astype(np.int64) - first, 0)
    row = np.repeat(met.row, steps)
    return row, np.repeat(first - (np.cumsum(steps) - steps), steps) + np.arange(row.size)


def _refuse_too_many(count, step_s):
    if count > MOST:
        raise ValueError(
            Sentence(
                "{n:.3g} subjects and times would have to be looked at, a STEP of {step:g} min apart, over {most:,}. "
                "Give a longer STEP, fewer nights or fewer subjects.",
                n=count,
                step=step_s / 60.0,
                most=MOST,
            )
        )


def _sets(target, asked, shared, air):
    """Sets of stretches of time in which each condition holds, None for those not asked."""
    of_place = replace(asked, gap_min_deg=None, gap_max_deg=None)
    yield body_limits(of_place, target, shared, air, None, np.arange(len(shared.sites)))[0]
    yield shared.tilted(asked.tilt_min_deg, asked.tilt_max_deg)
    yield None if target.is_arch else shared.arched(asked.apex_min_deg, asked.apex_max_deg)
    if target.body == SUN:
        return
    yield shared.dark(target.sun_limit_deg if asked.sun_limit_deg is None else asked.sun_limit_deg, asked.sun_min_deg)
    if target.body != MOON:
        yield None if asked.moon == ANY else shared.moonless(asked.moon, asked.moon_lit_max)
    elif asked.lit_min is not None or asked.lit_max is not None:
        yield shared.moon_lit(0.0 if asked.lit_min is None else asked.lit_min, 1.0 if asked.lit_max is None else asked.lit_max)


def moments_given(times_of_zone, zone_index):
    """Moments that a person gives, which may differ between zones.

    Parameters
    ----------
    times_of_zone : sequence of ndarray
        [s of UTC]
    zone_index : ndarray of int, shape (S,)

    Returns
    -------
    Moments

    Raises
    ------
    ValueError
        Where they are too many to be held.
    """
    t_utc_s = np.unique(np.concatenate([np.zeros(0), *(times_of_zone[zone] for zone in np.unique(zone_index))]))
    count = len(zone_index) * t_utc_s.size
    if count > MOST:
        raise ValueError(
            Sentence(
                "{n:.3g} subjects and times would have to be looked at, over {most:,}. Give a longer STEP, less time or fewer subjects.",
                n=float(count),
                most=MOST,
            )
        )
    in_zone = np.array([np.isin(t_utc_s, times) for times in times_of_zone])
    return Moments(t_utc_s, in_zone[zone_index])


def standing_at(sites, target, t_utc_s, conditions, heavens):
    """Whether a body can be used at moments that a person gives: whether it is up, and within the altitudes asked.

    Parameters
    ----------
    sites : Sites
        S of them.
    target : Target
    t_utc_s : ndarray, shape (T,)
    conditions : Conditions
        `alt_min_deg` is the horizon if None, not what is customary; the other limits that it holds count for the arch alone.
    heavens : Heavens

    Returns
    -------
    Standing
    """
    step = max(1, CELLS // max(len(t_utc_s), 1))
    parts = [_standing(sites.take(slice(i, i + step)), target, t_utc_s, conditions, heavens) for i in range(0, len(sites), step)]
    return Standing(*(np.concatenate(values) for values in zip(*parts)))


def _standing(sites, target, t_utc_s, conditions, heavens):
    rows, tt_s = np.arange(len(sites))[:, None], default_ephemeris().tt_from_utc(t_utc_s)[None, :]
    air = circumstances.Air(sites.height_m, conditions.pressure_hPa, conditions.temperature_C).take((slice(None), None))
    vectors = {body: heavens.motion(body, sites).enu(rows, tt_s) for body in dict.fromkeys([*circumstances.NEEDED, target.body])}
    table = circumstances.light_and_band(vectors, heavens.lit(tt_s), air)
    table.update(circumstances.place_of(target, vectors, table, air))
    judged = table["core_alt"] if target.is_arch else table["alt_deg"]
    least = 0.0 if conditions.alt_min_deg is None else conditions.alt_min_deg
    if target.is_arch:
        least = max(least, conditions.core_alt_min_deg)
    elif conditions.alt_min_deg is None and isinstance(target.body, Body):
        least = -table["semi_deg"]  # up until the last of the disc is gone
    usable = judged >= least
    if conditions.alt_max_deg is not None:
        usable &= judged <= conditions.alt_max_deg
    if target.is_arch:
        usable &= table["apex_deg"] <= conditions.apex_max_of(target)
        if conditions.apex_min_deg is not None:
            usable &= table["apex_deg"] >= conditions.apex_min_deg
    return Standing(usable, table["alt_deg"], table["core_alt"])
