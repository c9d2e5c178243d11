"""The conditions of an alignment as sets of stretches of time: where the body stands, how dark it is, where the Moon is, how the band lies.

Each is made from crossings of planes (`sky.crossings`) and put together with and, or, not (`sky.arcs`). Rows are sites or pairs, as the
function says. Limits in degrees; times in s of TT.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..sky import arcs, crossings, moonlight
from ..sky.bodies import CORE, GALACTIC_POLE, GALACTIC_Y, MOON, MOON_RADIUS_KM, POLE, SUN
from ..sky.crossings import Motion
from ..sky.galactic import ZENITH_LIMIT_DEG
from ..sky.tables import tracks
from .circumstances import MOONRISE_ALT_DEG

ARCH_APEX_MAX_DEG = 60.0  # higher up the direction of the arch's top swings too fast to be of use
ANY, DOWN, DOWN_OR_THIN = "any", "down", "down_or_thin"


@dataclass(frozen=True)
class Conditions:
    """What is asked of an alignment; None where the customary value holds, or no limit. Angles in degrees.

    Attributes
    ----------
    az_tolerance_deg : float
        Half-width about the bearing, over 0 and under 90; customary by body.
    alt_min_deg, alt_max_deg : float
        Apparent altitude of the body, for the arch of the core; least customary by body.
    gap_min_deg, gap_max_deg : float
        Body's centre over the subject's top.
    tilt_min_deg, tilt_max_deg, apex_min_deg, apex_max_deg : float
        How the band lies; for the arch the apex is customarily at most 60.
    core_alt_min_deg : float
        Least apparent altitude of the core at which the arch counts.
    sun_limit_deg, sun_min_deg : float
        Geometric altitude of the Sun; the highest is customary by body. Not for the Sun itself.
    moon : str
        `any`, `down` or `down_or_thin`. Not for Sun and Moon themselves.
    moon_lit_max : float
        A Moon lit less than this counts as dark, with `down_or_thin`.
    lit_min, lit_max : float
        Lit fraction, for the Moon as body.
    pressure_hPa, temperature_C : float
        As in `circumstances.Air`.
    use_skyline : bool
        Body above the terrain skyline, where a relief is given.
    """

    az_tolerance_deg: Optional[float] = None
    alt_min_deg: Optional[float] = None
    alt_max_deg: Optional[float] = None
    gap_min_deg: Optional[float] = None
    gap_max_deg: Optional[float] = None
    tilt_min_deg: Optional[float] = None
    tilt_max_deg: Optional[float] = None
    apex_min_deg: Optional[float] = None
    apex_max_deg: Optional[float] = None
    core_alt_min_deg: float = 0.0
    sun_limit_deg: Optional[float] = None
    sun_min_deg: Optional[float] = None
    moon: str = ANY
    moon_lit_max: float = 0.25
    lit_min: Optional[float] = None
    lit_max: Optional[float] = None
    pressure_hPa: Optional[float] = None
    temperature_C: float = 10.0
    use_skyline: bool = True

    def tolerance_of(self, target):
        """Half-width about the bearing for a target. [deg]."""
        return target.az_tolerance_deg if self.az_tolerance_deg is None else self.az_tolerance_deg

    def apex_max_of(self, target):
        """Highest apex for a target, or None. [deg]."""
        return ARCH_APEX_MAX_DEG if self.apex_max_deg is None and target.is_arch else self.apex_max_deg

    def alt_min_of(self, target):
        """Least apparent altitude of a target, for the arch of the core. [deg]."""
        least = target.alt_min_deg if self.alt_min_deg is None else self.alt_min_deg
        return max(least, self.core_alt_min_deg) if target.is_arch else least


class Heavens:
    """The motions of all bodies over a span: made once, asked for any sites.

    Parameters
    ----------
    bodies : iterable of sky bodies
    first_utc_s, last_utc_s : float
        Span. [s of UTC]

    Raises
    ------
    ValueError
        Where the span leaves the ephemeris.
    """

    def __init__(self, bodies, first_utc_s, last_utc_s):
        self.tracks = tracks(dict.fromkeys(bodies), first_utc_s, last_utc_s)
        self._lit = {}

    def motion(self, body, sites):
        """`Motion` of a body over sites."""
        return Motion(body, self.tracks[body], sites)

    def lit(self, tt_s):
        """Lit fraction of the Moon at moments, any shape."""
        return moonlight.lit_fraction(self.tracks[MOON].at(tt_s), self.tracks[SUN].at(tt_s))

    def lit_stretches(self, least, most):
        """Stretches in which the lit fraction lies within limits, over the whole span: start and end."""
        if (least, most) not in self._lit:
            nodes_tt_s = self.tracks[SUN].nodes_tt_s
            self._lit[least, most] = moonlight.lit_stretches(
                self.tracks[MOON], self.tracks[SUN], nodes_tt_s[0], nodes_tt_s[-1], least, most
            )
        return self._lit[least, most]


class Circumstances:
    """Conditions that hang on the site and not on the bearing, for S sites; each is solved once.

    Parameters
    ----------
    heavens : Heavens
    sites : Sites
    air : Air
        Of the sites.
    low, high : ndarray, shape (S,)
        Span of each site. [s of TT]
    """

    def __init__(self, heavens, sites, air, low, high):
        self.heavens, self.sites, self.air = heavens, sites, air
        self.low, self.high = low, high
        self._solved = {}

    def _once(self, key, solve):
        if key not in self._solved:
            self._solved[key] = solve()
        return self._solved[key]

    def _above(self, body, alt_true_deg):
        return self.heavens.motion(body, self.sites).arcs(crossings.above(self.sites, alt_true_deg), self.low, self.high)

    def moon_up(self):
        """When the Moon's upper limb is above the level horizon, as almanacs reckon."""

        def solve():
            limb = crossings.limb_above(self.sites, MOONRISE_ALT_DEG, MOON_RADIUS_KM)
            return self.heavens.motion(MOON, self.sites).arcs(limb, self.low, self.high)

        return self._once("moon up", solve)

    def above(self, body, alt_true_deg):
        """When a body stands above one geometric altitude at all sites."""
        return self._once(("above", body, alt_true_deg), lambda: self._above(body, alt_true_deg))

    def apparent(self, body, least_deg, most_deg):
        """When a body is seen between two apparent altitudes; None for no upper limit."""

        def solve():
            up = self._above(body, self.air.true(least_deg))
            return up if most_deg is None else arcs.every(up, arcs.outside(self._above(body, self.air.true(most_deg))))

        return self._once(("apparent", body, least_deg, most_deg), solve)

    def dark(self, limit_deg, least_deg):
        """When the Sun stands between two geometric altitudes; None for no limit. None where there is no limit at all."""
        sets = []
        if limit_deg is not None:
            sets.append(self._once(("sun below", limit_deg), lambda: arcs.outside(self.above(SUN, limit_deg))))
        if least_deg is not None:
            sets.append(self.above(SUN, least_deg))
        return arcs.every(*sets) if sets else None

    def moonless(self, rule, lit_max):
        """When the Moon is down, or down or thin; None for any Moon."""
        if rule == ANY:
            return None
        moon_down = self._once("moon down", lambda: arcs.outside(self.moon_up()))
        if rule == DOWN:
            return moon_down
        return self._once(("dark", lit_max), lambda: arcs.either(moon_down, self.moon_lit(0.0, lit_max)))

    def moon_lit(self, least, most):
        """When the lit fraction lies within limits."""
        return arcs.of_all_rows(*self.heavens.lit_stretches(least, most), self.low, self.high)

    def tilted(self, least_deg, most_deg):
        """When the core is up and the band's tilt lies within limits; None for no limit."""

        def at_least(tilt_deg):
            # The tilt is tan = |up part of g_y| / |up part of g_z|: two directions in their plane stand on the same side of the horizon.
            tilt = np.radians(tilt_deg)
            y, pole = self.heavens.tracks[GALACTIC_Y], self.heavens.tracks[GALACTIC_POLE]
            horizon = crossings.above(self.sites, 0.0)
            sides = [
                Motion(GALACTIC_Y, y.plus(pole, np.cos(tilt), sign * np.sin(tilt)), self.sites).arcs(horizon, self.low, self.high)
                for sign in (1.0, -1.0)
            ]
            return arcs.alike(*sides)

        def solve():
            sets = [self.apparent(CORE, 0.0, None), arcs.outside(self.above(CORE, 90.0 - ZENITH_LIMIT_DEG))]
            if least_deg is not None and least_deg > 0.0:
                sets.append(at_least(least_deg))
            if most_deg is not None and most_deg < 90.0:  # every tilt is at most 90: where it touches that, nothing ends
                sets.append(arcs.outside(at_least(most_deg)))
            return arcs.every(*sets)

        if least_deg is None and most_deg is None:
            return None
        return self._once(("tilt", least_deg, most_deg), solve)

    def _apex_above(self, alt_true_deg):
        return apex_above(self.heavens.motion(GALACTIC_POLE, self.sites), alt_true_deg, self.low, self.high)

    def arched(self, least_deg, most_deg):
        """When the arch's top stands between two geometric altitudes; None for no limit."""

        def solve():
            sets = []
            if least_deg is not None:
                sets.append(self._apex_above(least_deg))
            if most_deg is not None:
                sets.append(arcs.outside(self._apex_above(most_deg)))
            return arcs.every(*sets)

        if least_deg is None and most_deg is None:
            return None
        return self._once(("apex", least_deg, most_deg), solve)


def apex_above(pole_motion, alt_true_deg, low, high):
    """When the arch's top stands above geometric altitudes, shape (R,) or (). [deg]; it is never under the horizon."""
    # The top is as far from the zenith as the galactic pole is from the horizon.
    from_zenith_deg = 90.0 - np.clip(alt_true_deg, 0.0, 90.0)
    sites = pole_motion.sites
    return arcs.every(
        arcs.outside(pole_motion.arcs(crossings.above(sites, from_zenith_deg), low, high)),
        pole_motion.arcs(crossings.above(sites, -from_zenith_deg), low, high),
    )


def body_limits(conditions, target, circumstances, air, top_alt_deg, site_index):
    """When the body is high enough, and no higher than asked, at each pair.

    Parameters
    ----------
    conditions : Conditions
    target : Target
    circumstances : Circumstances
        Of the S sites.
    air : Air
        Of the P pairs.
    top_alt_deg : ndarray, shape (P,)
        Altitude of the subject's top. [deg]
    site_index : ndarray of int, shape (P,)
        Site of each pair.

    Returns
    -------
    standing, over_top : Arcs of P rows
        Within the altitude limits; and, None if no gap is asked, within the gap over the subject's top.
    """
    core_or_body = CORE if target.is_arch else target.body
    standing = circumstances.apparent(core_or_body, conditions.alt_min_of(target), conditions.alt_max_deg).take(site_index)
    if target.is_arch:
        apex = circumstances.arched(conditions.apex_min_deg, conditions.apex_max_of(target)).take(site_index)
        standing = arcs.every(standing, apex)
    if conditions.gap_min_deg is None and conditions.gap_max_deg is None:
        return standing, None
    sites = circumstances.sites.take(site_index)
    motion = circumstances.heavens.motion(target.body, sites)

    def higher_than(alt_deg):
        if not target.is_arch:
            return motion.arcs(crossings.above(sites, alt_deg), standing.low, standing.high)
        return apex_above(motion, alt_deg, standing.low, standing.high)

    sets = []
    if conditions.gap_min_deg is not None:
        sets.append(higher_than(air.true(top_alt_deg + conditions.gap_min_deg)))
    if conditions.gap_max_deg is not None:
        sets.append(arcs.outside(higher_than(air.true(top_alt_deg + conditions.gap_max_deg))))
    return standing, arcs.every(*sets)


def has_azimuth(target, sites):
    """Where the target has an azimuth, shape (R,): at the Earth's poles the celestial pole stays in the zenith."""
    return (target.body != POLE) | (sites.cos_lat > 0.0)


def over_bearing(target, motion, bearing_deg, tolerance_deg, low, high):
    """When the body stands within a tolerance of a bearing, at each pair.

    Parameters
    ----------
    target : Target
    motion : Motion
        Of the target's body over the P pairs' sites.
    bearing_deg : ndarray, shape (P,)
        [deg]
    tolerance_deg : float
        Over 0 and under 90. [deg]
    low, high : ndarray, shape (P,)
        [s of TT]

    Returns
    -------
    Arcs
    """
    sides = [
        motion.arcs(crossings.clockwise_of(motion.sites, bearing_deg - tolerance_deg), low, high),
        motion.arcs(crossings.counterclockwise_of(motion.sites, bearing_deg + tolerance_deg), low, high),
    ]
    if target.body == POLE:
        met = arcs.every(*sides)
        return met.keep(has_azimuth(target, motion.sites)[met.row])
    if not target.is_arch:
        return arcs.every(*sides)
    # The arch's top has the azimuth of that galactic pole which is down.
    north_up = motion.arcs(crossings.above(motion.sites, 0.0), low, high)
    south_over = arcs.every(north_up, *(arcs.outside(side) for side in sides))
    north_over = arcs.every(arcs.outside(north_up), *sides)
    return arcs.either(south_over, north_over)
