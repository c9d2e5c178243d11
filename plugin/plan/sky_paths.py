"""Where a body stands while it can be used, and for how many minutes of all nights: what an exposure is made from.

The exact windows of `night_windows` are cut where the body's hour angle is a whole number of steps. What lies between the same two cuts,
for Sun and Moon also in the same step of declination, is one position. No minute is lost or counted twice; against a skyline a position is
seen or not as a whole.
"""

from typing import NamedTuple

import numpy as np

from ..sky.bodies import Body, PoleDirection
from ..sky.ephemeris import DAY_S, default_ephemeris
from ..sky.horizontal import Sites
from . import circumstances, nights
from .conditions import Heavens
from .night_windows import find_night_windows

FIXED_STEP_DEG, MOVING_STEP_DEG = 1.0, 2.0  # where none is given: bodies among the stars; Sun and Moon, which take many more positions
TURN = 2.0 * np.pi


class Positions(NamedTuple):
    """Positions of a body over a place.

    `az_deg`, `alt_deg` (P,): where it stands, apparent. `minutes` (P, M): how long it does so in all nights of each of M months, or of the
    whole range where M is 1. `nights` (M,): how many nights those have.
    """

    az_deg: np.ndarray
    alt_deg: np.ndarray
    minutes: np.ndarray
    nights: np.ndarray


def step_of(target):
    """The step that is customary for a target. [deg]."""
    return MOVING_STEP_DEG if isinstance(target.body, Body) else FIXED_STEP_DEG


def months_between(first_night, last_night):
    """The months that hold nights of a range, datetime64[M]."""
    return np.arange(np.min(first_night).astype("datetime64[M]"), np.max(last_night).astype("datetime64[M]") + 1)


def sky_paths(places, target, first_night, last_night, conditions, months=None, step_deg=None, progress=None):
    """Positions of a target over places.

    Parameters
    ----------
    places : night_windows.Places
        S of them.
    target : Target
    first_night, last_night : ndarray of datetime64[D], shape (S,)
    conditions : Conditions
        As for `find_night_windows`; the skyline plays no part.
    months : ndarray of datetime64[M], shape (M,), optional
        As `months_between` gives them; if not given, all nights are taken together.
    step_deg : float, optional
        Of the hour angle and of the declination; customary for the target if not given. [deg]
    progress : callable, optional
        Told the part that is done, 0 to 1; False from it ends the work.

    Returns
    -------
    list of Positions, or None
        One for each place; None when it was ended.

    Raises
    ------
    ValueError
        As `find_night_windows`.
    """
    noon_utc_s, count = nights.noons(places.lon_deg, places.zone_names, places.zone_index, first_night, last_night)
    span = noon_utc_s.min() - DAY_S, (noon_utc_s + DAY_S * (count + 1)).max()
    sky = _Sky(places, target, conditions, Heavens([*circumstances.NEEDED, target.body], *span), step_deg or step_of(target))
    found = []
    for table, windows in find_night_windows(places, target, first_night, last_night, conditions, progress):
        month, night_month = (_month(columns["night"], months) for columns in (windows, table))
        for site in range(len(found), int(table["site"].max()) + 1):
            own, mine = table["site"] == site, windows["site"] == site
            bands = 1 if months is None else len(months)
            positions = sky.positions(site, *(windows[name][mine] for name in ("t_start", "t_end")), month[mine], bands)
            found.append(Positions(*positions, np.bincount(night_month[own], minlength=bands)))
    return found if len(found) == len(places) else None


def _month(night, months):
    """Number of the month of nights."""
    if months is None:
        return np.zeros(len(night), dtype=int)
    return (night.astype("datetime64[M]") - months[0]).astype(int)


class _Sky:
    """How a target moves over places."""

    def __init__(self, places, target, conditions, heavens, step_deg):
        self._target = target
        self._turn_steps = max(int(np.rint(360.0 / step_deg)), 1)
        self._step = TURN / self._turn_steps
        self._sites = Sites(places.lon_deg, places.lat_deg, places.height_m)
        self._air = circumstances.Air(places.height_m, conditions.pressure_hPa, conditions.temperature_C)
        bodies = dict.fromkeys([*circumstances.NEEDED, target.body])
        self._motions = {body: heavens.motion(body, self._sites) for body in bodies}
        self._motion = self._motions[target.body]

    def positions(self, site, start_utc_s, end_utc_s, month, months):
        """Azimuths, altitudes and minutes a month of what lies in windows over a place."""
        tt_from_utc = default_ephemeris().tt_from_utc
        window, turn, start, end = self._pieces(site, tt_from_utc(start_utc_s), tt_from_utc(end_utc_s))
        if not len(window):
            return np.empty(0), np.empty(0), np.zeros((0, months))
        middle = 0.5 * (start + end)
        _, which = np.unique(turn + self._turn_steps * self._declination(middle), return_inverse=True)
        count = which.max() + 1
        minutes = np.bincount(which * months + month[window], (end - start) / 60.0, minlength=count * months).reshape(count, months)
        return (*_means(*self._place(site, middle), which, end - start), minutes)

    def _pieces(self, site, start, end):
        """Windows cut at whole steps of the hour angle: window, step within a turn, start and end."""
        if isinstance(self._target.body, PoleDirection):
            return np.arange(len(start)), np.zeros(len(start), dtype=int), start, end
        lon = np.radians(self._sites.lon_deg[site])
        first, last = ((self._motion.hour_angle(t) + lon) / self._step for t in (start, end))
        first, last = np.floor(first).astype(int), np.ceil(last).astype(int)
        pieces = np.maximum(last - first, 1)
        window = np.repeat(np.arange(len(start)), pieces)
        number = first[window] + np.arange(len(window)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
        low, high = (self._motion.time_of_hour_angle(self._step * n - lon) for n in (number, number + 1))
        low = np.where(number == first[window], start[window], low)
        high = np.where(number == last[window] - 1, end[window], high)
        return window, number % self._turn_steps, low, high

    def _declination(self, tt_s):
        """Steps of the declination of a body that moves among the stars."""
        if not isinstance(self._target.body, Body):
            return np.zeros(len(tt_s), dtype=int)
        _, _, z, r = self._motion.track.at(tt_s)
        return np.floor(np.arcsin(z / r) / self._step).astype(int)

    def _place(self, site, tt_s):
        """Azimuth and apparent altitude of the target. [deg]."""
        vectors = {body: motion.enu(np.full(len(tt_s), site), tt_s) for body, motion in self._motions.items()}
        air = self._air.take(np.full(len(tt_s), site))
        az_deg, alt_deg = circumstances.direction_of(self._target, vectors, circumstances.band_of(vectors, air))
        return az_deg, air.apparent(alt_deg)


def _means(az_deg, alt_deg, which, weight):
    """Mean directions of groups, weighted. [deg]."""
    az, alt = np.radians(az_deg), np.radians(alt_deg)
    vector = np.cos(alt) * np.sin(az), np.cos(alt) * np.cos(az), np.sin(alt)
    east, north, up = (np.bincount(which, weight * part) for part in vector)
    return np.degrees(np.arctan2(east, north)) % 360.0, np.degrees(np.arctan2(up, np.hypot(east, north)))
