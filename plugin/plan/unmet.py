"""Why a pair has no alignment, in words, with the azimuths that the body does reach."""

import numpy as np

from ..sky import crossings
from ..words import Opening, Sentence, one
from .azimuths import AzimuthRun, union_of_reaches
from .conditions import DOWN, has_azimuth

# patterns of altitude limits in words
LIMITS = {
    "below": "below {most:g}°",
    "above": "above {least:g}°",
    "between": "between {least:g}° and {most:g}°",
    "arch": "{apex} with the core {limits}",
}


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
    texts[undecided] = one(
        Opening("{who} is closest to the bearing just outside the nights asked: ask for a night more at either end.", who=target.phrase)
    )
    return texts


def _sentence(name, target, conditions, bearing_deg, top_alt_deg, ground_deg, az_from, az_to):
    who, passes = target.phrase, {"who": target.phrase, "bearing": bearing_deg}
    if name == "standing":
        return Opening("{who} is never seen {height} in these nights.", who=who, height=height(target, conditions))
    if name == "bearing":
        return _never_reached(who, height(target, conditions), bearing_deg, az_from, az_to)
    if name == "gap":
        gap = between(conditions.gap_min_deg, conditions.gap_max_deg)
        pattern = "{who} passes bearing {bearing:.1f}°, but never {gap} over the subject's top, which stands at {top:.1f}°."
        return Opening(pattern, **passes, gap=gap, top=top_alt_deg)
    if name == "skyline":
        pattern = "{who} passes bearing {bearing:.1f}°, but never above the terrain skyline, which is {ground:.1f}° high there."
        return Opening(pattern, **passes, ground=ground_deg)
    if name == "darkness":
        limit = target.sun_limit_deg if conditions.sun_limit_deg is None else conditions.sun_limit_deg
        pattern = "{who} passes bearing {bearing:.1f}°, but never with the Sun {limits}."
        return Opening(pattern, **passes, limits=between(conditions.sun_min_deg, limit))
    if name == "moon" and conditions.moon == DOWN:
        return Opening("{who} passes bearing {bearing:.1f}°, but never with the Moon down.", **passes)
    if name == "moon":
        pattern = "{who} passes bearing {bearing:.1f}°, but never with the Moon down or lit under {lit:g}."
        return Opening(pattern, **passes, lit=conditions.moon_lit_max)
    if name == "phase":
        return Opening("{who} passes bearing {bearing:.1f}°, but never lit {limits}.", **passes, limits=_phase(conditions))
    if name == "tilt":
        pattern = "{who} passes bearing {bearing:.1f}°, but never while the band's tilt at the core is {limits}."
        return Opening(pattern, **passes, limits=between(conditions.tilt_min_deg, conditions.tilt_max_deg))
    pattern = "{who} passes bearing {bearing:.1f}°, but never while the arch's top stands {limits}."
    return Opening(pattern, **passes, limits=between(conditions.apex_min_deg, conditions.apex_max_deg))


def _never_reached(who, seen, bearing_deg, az_from, az_to):
    """Where a body stands that never stands over a bearing."""
    if np.isnan(az_from):
        return Opening("{who} stays in the zenith, over no bearing.", who=who)
    parts = {"bearing": bearing_deg, "who": who, "height": seen, "first": az_from, "last": az_to}
    if az_to - az_from == 360.0:
        return Sentence("Bearing {bearing:.1f}° is never reached by {who} {height}.", **parts)
    if az_from == az_to:
        return Sentence("Bearing {bearing:.1f}° is never reached: {who} stands at {first:.1f}° while {height}.", **parts)
    if az_from > az_to:
        pattern = "Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° through north while {height}."
        return Sentence(pattern, **parts)
    return Sentence("Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° while {height}.", **parts)


def _phase(conditions):
    """Limits of the lit part in words."""
    least, most = conditions.lit_min, conditions.lit_max
    if most is None:
        return Sentence("at least {least:g}", least=least)
    return (
        Sentence("at most {most:g}", most=most)
        if least is None
        else Sentence("at least {least:g} and at most {most:g}", least=least, most=most)
    )


def height(target, conditions):
    """The altitude limits of a target in words."""
    least = conditions.alt_min_of(target)
    if not target.is_arch:
        return between(least, conditions.alt_max_deg)
    apex = between(conditions.apex_min_deg, conditions.apex_max_of(target))
    return Sentence(LIMITS["arch"], apex=apex, limits=between(least, conditions.alt_max_deg))


def between(least, most):
    """Limits in words, None for no limit. [deg]."""
    if least is None:
        return Sentence(LIMITS["below"], most=most)
    if most is None:
        return Sentence(LIMITS["above"], least=least)
    return Sentence(LIMITS["between"], least=least, most=most)
