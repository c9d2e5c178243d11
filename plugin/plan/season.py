"""The nights of a site laid side by side: from noon to noon by the clock of the site.

Columns of `plan.night_windows` go in, hours of the clock after the noon that begins each night come out, 0 to 24. What passes a noon is cut
there. In a night in which the clock is changed the hours are those it shows, before and after: a stretch over the change is drawn longer
or shorter than it lasts.
"""

from dataclasses import dataclass

import numpy as np

from . import clock

NOON_H = 12
STEP_H = 3  # a clock so many hours off the Sun has another noon
WHOLE_NIGHT_MIN = 1435.0  # so much darkness without a dusk is darkness all round
TIMES = ("sunset", "sunrise", "t_dusk", "t_dawn", "moonrise", "moonset", "t_start", "t_end", "t_utc")


@dataclass(frozen=True)
class Season:
    """Nights of a site, N of them in the order of their dates; stretches are rows of column, begin and end [h].

    Attributes
    ----------
    day : ndarray of datetime64[D], shape (N,)
        Dates of the evenings.
    column : ndarray of int, shape (N,)
        Days from the first date: where a night stands.
    sun_down, dark, moon_up, windows : ndarray, shape (K, 3)
        Sun under the horizon; under its limit; Moon over the horizon; body as it was asked for.
    best_h : ndarray, shape (N,)
        The best minute; nan where there is no window. [h]
    tilt_deg, moon_lit : ndarray, shape (N,)
        Of the band at the best minute, and the Moon's lit part; nan where not known.
    leans_left : ndarray of bool, shape (N,)
    noon_h : int
        What the clock shows where a column begins: 12, in zones chosen from far away what is nearest to noon, in steps of 3. [h]
    """

    day: np.ndarray
    column: np.ndarray
    sun_down: np.ndarray
    dark: np.ndarray
    moon_up: np.ndarray
    windows: np.ndarray
    best_h: np.ndarray
    tilt_deg: np.ndarray
    moon_lit: np.ndarray
    leans_left: np.ndarray
    noon_h: int


def season(nights, zone_name):
    """Lay nights side by side.

    Parameters
    ----------
    nights : dict of str to ndarray, shape (N,)
        `night` as dates, `TIMES` in s of UTC, `tilt_deg lean moon_lit dark_min`; nan and None where not known.
    zone_name : str
        Zone of the site's clock.

    Returns
    -------
    Season
    """
    order = np.argsort(nights["night"], kind="stable")
    nights = {name: np.asarray(column)[order] for name, column in nights.items()}
    day = nights["night"].astype("datetime64[D]")
    column = (day - day[:1]).astype(int)
    hours = {name: _hours(nights[name], day, zone_name) for name in TIMES}
    noon_h = _noon_h(hours["sunset"], hours["sunrise"])
    hours = {name: column_h - noon_h for name, column_h in hours.items()}
    round_the_clock = nights["dark_min"] >= WHOLE_NIGHT_MIN
    return Season(
        day,
        column,
        _stretches(column, *_open_ended(hours["sunset"], hours["sunrise"], nights["dark_min"] > 0.0)),
        _stretches(column, *_open_ended(hours["t_dusk"], hours["t_dawn"], round_the_clock)),
        _moon_up(column, hours["moonrise"], hours["moonset"]),
        _stretches(column, hours["t_start"], hours["t_end"]),
        np.where(np.isfinite(hours["t_start"]), hours["t_utc"], np.nan),
        np.asarray(nights["tilt_deg"], dtype=float),
        np.asarray(nights["moon_lit"], dtype=float),
        nights["lean"] == "left",
        noon_h,
    )


def clock_changes(day, zone_name):
    """Nights in which the clock is changed.

    Parameters
    ----------
    day : ndarray of datetime64[D], shape (N,)
        In order.
    zone_name : str

    Returns
    -------
    list of (datetime64[D], float)
        Date of the evening, and by how much the clock is put forward. [h]
    """
    days = np.arange(day[0], day[-1] + 2)
    noon_s = days.astype("datetime64[s]").astype(float) + 3600.0 * NOON_H
    # the offset at local noon, by way of the offset at noon in UTC: no clock is changed about noon
    offset_s = clock.utc_offsets_s(noon_s - clock.utc_offsets_s(noon_s, [zone_name], 0), [zone_name], 0)
    shift_h = np.diff(offset_s) / 3600.0
    return [(days[i], float(shift_h[i])) for i in np.flatnonzero(shift_h).tolist()]


def _noon_h(sunset_h, sunrise_h):
    """Where columns begin, from the middle of the nights."""
    middle_h = (sunset_h + sunrise_h) / 2.0
    middle_h = middle_h[np.isfinite(middle_h)]
    if middle_h.size == 0:
        return NOON_H
    return NOON_H + STEP_H * int(np.rint((np.median(middle_h) - 24.0) / STEP_H))


def _hours(t_utc_s, day, zone_name):
    """Hours by the clock after the midnight that begins each day; nan where there is no moment."""
    t_utc_s = np.asarray(t_utc_s, dtype=float)
    local_s = t_utc_s + clock.utc_offsets_s(t_utc_s, [zone_name], 0)
    return (local_s - day.astype("datetime64[s]").astype(float)) / 3600.0


def _open_ended(begin_h, end_h, all_night):
    """Begins and ends where only one is known: from or to the noon; both noons where neither is, but it holds all night."""
    begin_known, end_known = np.isfinite(begin_h), np.isfinite(end_h)
    begin_h = np.where(begin_known, begin_h, np.where(end_known | all_night, 0.0, np.nan))
    return begin_h, np.where(end_known, end_h, np.where(begin_known | all_night, 24.0, np.nan))


def _stretches(column, begin_h, end_h):
    rows = np.stack([column.astype(float), np.clip(begin_h, 0.0, 24.0), np.clip(end_h, 0.0, 24.0)], axis=1)
    return rows[np.isfinite(rows).all(axis=1) & (rows[:, 2] > rows[:, 1])]


def _moon_up(column, rise_h, set_h):
    """From rise to set; from the noon where it sets first, to the next noon where it rises last; all day between a rise and a set."""
    rises, sets = np.isfinite(rise_h), np.isfinite(set_h)
    sets_first, rises_last = sets & ~(rise_h < set_h), rises & ~(set_h > rise_h)
    once = _stretches(column, np.where(sets_first, np.nan, rise_h), set_h)
    evening = _stretches(column, np.where(sets_first, 0.0, np.nan), set_h)
    morning = _stretches(column, rise_h, np.where(rises_last, 24.0, np.nan))
    known = np.flatnonzero(rises | sets)
    following = np.searchsorted(
        known, np.arange(column.size)
    )  # the next night with a rise or set says what went before; after the last, it
    up = np.append(sets_first[known], rises_last[known[-1:]] if known.size else False)[following]
    all_day = _stretches(column, np.where(~(rises | sets) & up, 0.0, np.nan), np.full(column.size, 24.0))
    return np.concatenate([once, evening, morning, all_day])
