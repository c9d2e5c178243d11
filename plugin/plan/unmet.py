"""Why a pair has no alignment, in words, with the azimuths that the body does reach."""

import numpy as np

from ..sky import crossings
from .azimuths import AzimuthRun, union_of_reaches
from .conditions import DOWN, has_azimuth


def reach(target, motion, row, start, end):
    """Azimuths that a target reaches in stretches of at most a day, all stretches of a site taken together.

    Parameters
    ----------
    target : Target
    motion : Motion
        Of the target's body over R sites.
    row : ndarray of int, shape (N,)
        Site of each stretch.
    start, end : ndarray, shape (N,)
        [s of TT]

    Returns
    -------
    az_from, az_to : ndarray, shape (R,)
        Clockwise; 0 and 360 for the whole circle, nan where there is no stretch or the target stays in the zenith. [deg]
    """
    rows = len(motion.sites)
    kept = has_azimuth(target, motion.sites)[row]
    row, start, end = row[kept], start[kept], end[kept]
    if not target.is_arch:
        return union_of_reaches(row, *AzimuthRun(motion, row, start, end).reach(), rows)
    # The top's direction leaps where the pole crosses the horizon: each side of that is a run of its own.
    plane = crossings.above(motion.sites, 0.0)
    turns = []
    for up in (False, True):
        here = (motion.value(plane, row, 0.5 * (start + end)) > 0.0) == up
        run = AzimuthRun(motion, row[here], start[here], end[here], np.full(here.sum(), up))
        turns.append((row[here], *run.reach()))
    return union_of_reaches(*(np.concatenate(parts) for parts in zip(*turns)), rows)


def reasons(target, conditions, bearing_deg, top_alt_deg, ground_deg, az_from, az_to, held):
    """A sentence for each of M pairs without a row.

    Parameters
    ----------
    target : Target
    conditions : Conditions
    bearing_deg, top_alt_deg, ground_deg : ndarray, shape (M,)
        Of the subject, its top, and the terrain skyline on the bearing. [deg]
    az_from, az_to : ndarray, shape (M,)
        Azimuths reached; nan as `reach` tells. [deg]
    held : list of (str, ndarray of bool, shape (M,))
        Conditions in the order in which they were applied, and whether anything was left after each.

    Returns
    -------
    ndarray of object, shape (M,)
    """
    texts = np.full(len(bearing_deg), None, dtype=object)
    undecided = np.ones(len(bearing_deg), bool)
    for name, left in held:
        for i in np.nonzero(undecided & ~left)[0]:
            texts[i] = _sentence(name, target, conditions, bearing_deg[i], top_alt_deg[i], ground_deg[i], az_from[i], az_to[i])
        undecided &= left
    texts[undecided] = (
        f"{_capital(target.phrase)} is closest to the bearing just outside the nights asked: ask for a night more at either end."
    )
    return texts


def _sentence(name, target, conditions, bearing_deg, top_alt_deg, ground_deg, az_from, az_to):
    who = _capital(target.phrase)
    passes = f"{who} passes bearing {bearing_deg:.1f}°, but"
    if name == "standing":
        return f"{who} is never seen {height(target, conditions)} in these nights."
    if name == "bearing":
        if np.isnan(az_from):
            return f"{who} stays in the zenith, over no bearing."
        if az_to - az_from == 360.0:
            return f"Bearing {bearing_deg:.1f}° is never reached by {target.phrase} {height(target, conditions)}."
        way = " through north" if az_from > az_to else ""
        where = f"at {az_from:.1f}°" if az_from == az_to else f"between {az_from:.1f}° and {az_to:.1f}°{way}"
        return f"Bearing {bearing_deg:.1f}° is never reached: {target.phrase} stands {where} while {height(target, conditions)}."
    if name == "gap":
        gap = between(conditions.gap_min_deg, conditions.gap_max_deg)
        return f"{passes} never {gap} over the subject's top, which stands at {top_alt_deg:.1f}°."
    if name == "skyline":
        return f"{passes} never above the terrain skyline, which is {ground_deg:.1f}° high there."
    if name == "darkness":
        limit = target.sun_limit_deg if conditions.sun_limit_deg is None else conditions.sun_limit_deg
        return f"{passes} never with the Sun {between(conditions.sun_min_deg, limit)}."
    if name == "moon":
        return f"{passes} never with the Moon {'down' if conditions.moon == DOWN else f'down or lit under {conditions.moon_lit_max:g}'}."
    if name == "phase":
        lit = " and ".join(
            f"{word} {limit:g}" for word, limit in (("at least", conditions.lit_min), ("at most", conditions.lit_max)) if limit is not None
        )
        return f"{passes} never lit {lit}."
    if name == "tilt":
        return f"{passes} never while the band's tilt at the core is {between(conditions.tilt_min_deg, conditions.tilt_max_deg)}."
    return f"{passes} never while the arch's top stands {between(conditions.apex_min_deg, conditions.apex_max_deg)}."


def height(target, conditions):
    """The altitude limits of a target in words."""
    least = conditions.alt_min_of(target)
    if not target.is_arch:
        return between(least, conditions.alt_max_deg)
    apex = between(conditions.apex_min_deg, conditions.apex_max_of(target))
    return f"{apex} with the core {between(least, conditions.alt_max_deg)}"


def between(least, most):
    """Limits in words, None for no limit. [deg]."""
    if least is None:
        return f"below {most:g}°"
    return f"above {least:g}°" if most is None else f"between {least:g}° and {most:g}°"


def _capital(phrase):
    return phrase[0].upper() + phrase[1:]
