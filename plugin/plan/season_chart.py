"""A season as a chart shows it: a column a night, the clock on the wall upward from noon to noon, what lasts as boxes in the columns.

Windows and darkness are what rows of `night_windows` tell. Sun and Moon come from the sky again: rows name the first moonset of a night,
and near the poles there may be two; they have no sunset where the Sun stays up, and none where it stays down; and of the Moon's lit part
they tell in nights with a window alone.
"""

from dataclasses import dataclass

import numpy as np

from ..sky import arcs
from ..sky.bodies import MOON, SUN
from ..sky.ephemeris import default_ephemeris
from ..sky.horizontal import Sites, true_altitude
from ..sky.tables import TimeTable
from . import clock
from .circumstances import Air
from .conditions import Circumstances, Heavens
from .months import by_month, new_moons
from .night_windows import SUNRISE_ALT_DEG
from .nights import DAY_S, noons

HOUR_S = 3600.0
NOON_H = 12
NOON_SLACK_H = 3.0  # a clock that shows the Sun's noon no further from 12:00 than this has a chart from 12:00 to 12:00
TOGETHER_S = 2.0  # stretches that meet within the rounding of their moments are one
HALF_DAY_MIN = 720.0
MOMENTS = ("t_dusk", "t_dawn", "t_start", "t_utc", "t_end")  # of the rows


@dataclass(frozen=True)
class Stretches:
    """Stretches of time in order, none over another: `start` and `end`, shape (N,). [s of UTC]."""

    start: np.ndarray
    end: np.ndarray

    def within(self, other):
        """The parts that lie in other stretches."""
        source, start, end = cut(self.start, self.end, np.stack([other.start, other.end], axis=1).ravel())
        at = np.searchsorted(other.start, 0.5 * (start + end)) - 1
        inside = (at >= 0) & (0.5 * (start + end) < np.append(other.end, -np.inf)[at])
        return Stretches(start[inside], end[inside])


@dataclass(frozen=True)
class Boxes:
    """What lasts, by column: `column` counts from 0, `low_h` and `high_h` are hours of the clock after its foot; shape (B,)."""

    column: np.ndarray
    low_h: np.ndarray
    high_h: np.ndarray


@dataclass(frozen=True)
class Chart:
    """A chart of one site and body; arrays have shape (C,), one element a column, unless they say otherwise.

    Attributes
    ----------
    first_night : datetime64[D]
        Night of the first column; the others follow day by day.
    told : ndarray of bool
        Whether the night is among the rows.
    foot_h : int
        What the clock shows at the foot of a column. [h]
    sun_down, dark, moon, window : Boxes
        Sun below the horizon; below the limit asked; Moon up while the Sun is down; the longest window of each night.
    best : ndarray, shape (4, K)
        Of the windows: column, hours of the best minute after the foot, tilt [deg; nan], and 1 where the band leans left, else -1.
    tilt_deg : ndarray, shape (3, C)
        Tilt at start, best minute and end of the window; nan where there is none. [deg]
    moon_lit : ndarray
        Lit fraction of the Moon in the middle of the night.
    turns : ndarray, shape (2, K)
        Where clocks are put forward or back: column, and by how many hours.
    sun_limit_deg : float
        Where the Sun stands when it is dark, nan where no row tells of it. [deg]
    months : dict of str to ndarray
        A row a month, as `months.by_month` gives them.
    """

    first_night: np.datetime64
    told: np.ndarray
    foot_h: int
    sun_down: Boxes
    dark: Boxes
    moon: Boxes
    window: Boxes
    best: np.ndarray
    tilt_deg: np.ndarray
    moon_lit: np.ndarray
    turns: np.ndarray
    sun_limit_deg: float
    months: dict

    @property
    def nights(self):
        """Night of each column, datetime64[D]."""
        return self.first_night + np.arange(self.told.size)

    @property
    def new_and_full(self):
        """Columns in which the Moon is newest, and fullest, of all around."""
        lit = self.moon_lit
        inner = np.arange(1, lit.size - 1)
        turns = [inner[(sign * lit[inner] < sign * lit[inner - 1]) & (sign * lit[inner] <= sign * lit[inner + 1])] for sign in (1, -1)]
        return turns[0], turns[1]


def cut(start, end, edges):
    """Stretches cut at edges.

    Parameters
    ----------
    start, end : ndarray, shape (N,)
    edges : ndarray, shape (E,)
        Ascending.

    Returns
    -------
    source, start, end : ndarray, shape (M,)
        Pieces in order, with the index of the stretch each comes from.
    """
    first, last = np.searchsorted(edges, start, side="right"), np.searchsorted(edges, end, side="left")
    pieces = np.maximum(last - first, 0) + 1
    source = np.repeat(np.arange(len(start)), pieces)
    number = first[source] + np.arange(len(source)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    bounds = np.concatenate([[-np.inf], edges, [np.inf]])
    return source, np.maximum(start[source], bounds[number]), np.minimum(end[source], bounds[number + 1])


def stretches(begin_utc_s, end_utc_s, noon_utc_s, always):
    """When something holds, from the moments at which it begins and ends in each night.

    Parameters
    ----------
    begin_utc_s, end_utc_s : ndarray, shape (N,)
        One of each in a night, in any order; nan where there is none. [s of UTC]
    noon_utc_s : ndarray, shape (N,)
        Noon at which the night begins, ascending. [s of UTC]
    always : ndarray of bool, shape (N,)
        Whether it holds all the time in a night that tells neither.

    Returns
    -------
    Stretches
    """
    next_noon = noon_utc_s + DAY_S
    begins, ends = np.isfinite(begin_utc_s), np.isfinite(end_utc_s)
    turned = begins & ends & (end_utc_s < begin_utc_s)  # it holds at both noons, and not between
    from_noon = turned | (ends & ~begins) | (always & ~begins & ~ends)
    start = np.concatenate([np.where(from_noon, noon_utc_s, begin_utc_s), begin_utc_s[turned]])
    end = np.concatenate([np.where(ends, end_utc_s, next_noon), next_noon[turned]])
    known = np.isfinite(start) & np.concatenate([begins | ends | always, turned[turned]])
    return joined(start[known], end[known])


def joined(start, end):
    """Stretches in any order as `Stretches`; those that meet or overlap are one."""
    order = np.argsort(start, kind="stable")
    start, end = start[order], np.maximum.accumulate(end[order]) if len(end) else end
    first = np.ones(len(start), dtype=bool)
    first[1:] = start[1:] > end[:-1] + TOGETHER_S
    return Stretches(start[first], end[np.append(first[1:], True)] if len(end) else end)


class Wall:
    """The clock on the wall as columns: which night's column a moment stands in, and how high.

    Parameters
    ----------
    zone_name : str
    first_night : datetime64[D]
    count : int
        Columns.
    noon_utc_s : ndarray
        Noons of the Sun at the site, of which the clock tells how far it is from the Sun. [s of UTC]

    Notes
    -----
    A column holds 24 h of the clock. The hour that a clock skips is in no box; of an hour that it shows twice both are in the same place.
    """

    def __init__(self, zone_name, first_night, count, noon_utc_s):
        self.zone_name, self.first_night, self.count = zone_name, first_night, count
        shown_h = np.median((noon_utc_s + clock.utc_offsets_s(noon_utc_s, [zone_name], 0)) % DAY_S) / HOUR_S
        self.foot_h = NOON_H if abs(shown_h - NOON_H) <= NOON_SLACK_H else int(np.rint(shown_h)) % 24
        foot_s = first_night.astype("datetime64[s]").astype(float) + HOUR_S * self.foot_h
        self._feet_s = foot_s + DAY_S * np.arange(count + 1)
        self._turn_utc_s, self._step_s = clock.changes(zone_name, foot_s - DAY_S, self._feet_s[-1] + DAY_S)

    def place(self, t_utc_s):
        """Column and hours after its foot of moments; columns beyond either end are not in the chart."""
        wall_s = t_utc_s + clock.utc_offsets_s(t_utc_s, [self.zone_name], 0) - self._feet_s[0]
        column = np.floor(wall_s / DAY_S)
        return column, (wall_s - DAY_S * column) / HOUR_S

    def boxes(self, held):
        """The boxes of `Stretches`."""
        _, start, end = cut(held.start, held.end, self._turn_utc_s)
        offset_s = clock.utc_offsets_s(0.5 * (start + end), [self.zone_name], 0)
        _, low, high = cut(start + offset_s, end + offset_s, self._feet_s)
        column = np.searchsorted(self._feet_s, 0.5 * (low + high)) - 1
        shown = (column >= 0) & (column < self.count) & (high > low)
        foot = self._feet_s[column[shown]]
        return Boxes(column[shown], (low[shown] - foot) / HOUR_S, (high[shown] - foot) / HOUR_S)

    def turns(self):
        """Column and hours of each change of the clock in the chart, shape (2, K)."""
        column, _ = self.place(self._turn_utc_s)
        shown = (column >= 0) & (column < self.count)
        return np.stack([column[shown], self._step_s[shown] / HOUR_S])


def chart_of(rows, zone_name, lon_deg, lat_deg):
    """The chart of one site and body.

    Parameters
    ----------
    rows : dict of str to ndarray, shape (N,)
        Of `names.NIGHT_WINDOWS_FIELDS`: `night` (datetime64[D], ascending, each once), the moments of `MOMENTS` in seconds of UTC,
        `minutes`, `dark_min`, `tilt_start`, `tilt_deg`, `tilt_end` with nan where they are null, and `lean`.
    zone_name : str
    lon_deg, lat_deg : float
        The site. [deg]

    Returns
    -------
    Chart

    Raises
    ------
    ValueError
        Nights outside the ephemeris, or a zone that nobody knows.
    """
    night = rows["night"]
    first, count = night[0], int((night[-1] - night[0]).astype(int)) + 1
    nights = first + np.arange(count)
    column = (night - first).astype(int)
    noon_utc_s = noons(np.full(count, lon_deg), [zone_name], 0, nights, nights)[0]
    noon = noon_utc_s[column]
    wall = Wall(zone_name, first, count, noon_utc_s)

    sun_down, moon, lit = _sun_and_moon(lon_deg, lat_deg, noon_utc_s, joined(noon, noon + DAY_S))
    dark = stretches(rows["t_dusk"], rows["t_dawn"], noon, np.nan_to_num(rows["dark_min"]) > HALF_DAY_MIN)
    has = np.isfinite(rows["t_start"]) & np.isfinite(rows["t_end"])
    windows = joined(rows["t_start"][has], rows["t_end"][has])

    told = np.zeros(count, dtype=bool)
    told[column] = True
    tilt_deg = np.full((3, count), np.nan)
    tilt_deg[:, column] = [rows[name] for name in ("tilt_start", "tilt_deg", "tilt_end")]
    best_column, best_h = wall.place(rows["t_utc"][has])
    best = np.stack([best_column, best_h, rows["tilt_deg"][has], np.where(rows["lean"][has] == "left", 1.0, -1.0)])
    return Chart(
        *(first, told, wall.foot_h),
        *(wall.boxes(held) for held in (sun_down, dark, moon, windows)),
        best[:, (best_column >= 0) & (best_column < count)],
        tilt_deg,
        lit,
        wall.turns(),
        _sun_limit_deg(lon_deg, lat_deg, rows),
        _months(rows, noon, noon_utc_s),
    )


def _sun_and_moon(lon_deg, lat_deg, noon_utc_s, told):
    """When the Sun is down and when the Moon is up meanwhile, in the nights told; and its lit fraction in the middle of all nights."""
    ephemeris = default_ephemeris()
    heavens = Heavens((SUN, MOON), noon_utc_s[0], noon_utc_s[-1] + DAY_S)
    low, high = ephemeris.tt_from_utc(noon_utc_s[[0, -1]] + [0.0, DAY_S])
    seen = Circumstances(heavens, Sites(lon_deg, lat_deg), Air(np.zeros(1)), np.array([low]), np.array([high]))

    def as_stretches(held):
        return Stretches(ephemeris.utc_from_tt(held.start), ephemeris.utc_from_tt(held.end))

    sun_down = as_stretches(arcs.outside(seen.above(SUN, SUNRISE_ALT_DEG))).within(told)
    return sun_down, as_stretches(seen.moon_up()).within(sun_down), heavens.lit(ephemeris.tt_from_utc(noon_utc_s + 0.5 * DAY_S))


def _sun_limit_deg(lon_deg, lat_deg, rows):
    """Altitude of the Sun when a night begins to be dark: rows tell the moment, and not what was asked."""
    dusk_utc_s = rows["t_dusk"][np.isfinite(rows["t_dusk"])][:1]
    return float(true_altitude(Sites(lon_deg, lat_deg), TimeTable(dusk_utc_s, (SUN,)), SUN)[0, 0]) if dusk_utc_s.size else np.nan


def _months(rows, noon_utc_s, all_noons_utc_s):
    moons = new_moons(all_noons_utc_s[0], all_noons_utc_s[-1] + DAY_S)
    minutes = np.nan_to_num(rows["minutes"])
    return by_month(np.zeros(len(minutes), dtype=int), rows["night"], noon_utc_s, minutes, minutes, moons)


def years(nights):
    """Pictures that nights fill, a year each from the date of the first on.

    Parameters
    ----------
    nights : ndarray of datetime64[D]
        Ascending.

    Returns
    -------
    ndarray of int
        Number of the picture of each night, from 0.
    """
    month = nights.astype("datetime64[M]")
    day = (nights - month).astype(int)
    months = (month - month[0]).astype(int)
    return (months - (day < day[0])) // 12
