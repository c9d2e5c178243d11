"""Nights: each lasts from one mean solar noon of the site to the next and is named by the date of its evening.

The mean solar noon stands at 12 h - longitude / 15 in UTC; the name is the date that the clock of the site's zone shows at it. Moments
are `t_utc_s`, zones are given as in `plan.clock`.
"""

import numpy as np

from ..words import Sentence
from . import clock

DAY_S = 86400.0
S_PER_DEG = 240.0  # the mean Sun moves 15 degrees in an hour
NOONS_TRIED = np.arange(-2, 4)  # about the date asked for: 12 h of longitude, up to 14 h of zone, and the day that a place may skip


def noons(lon_deg, zone_names, zone_index, first_night, last_night):
    """The noon at which a range of nights begins at each site, and how many nights follow.

    Parameters
    ----------
    lon_deg : array_like, (S,)
        Longitude of the sites, east positive. [deg]
    zone_names : sequence of str
    zone_index : array_like of int, (S,)
        Zone of each site.
    first_night, last_night : datetime64[D] or array_like of it, (S,)
        Names of the first and the last night, both included.

    Returns
    -------
    first_noon_utc_s : ndarray, (S,)
        Noon that begins the night named `first_night`. [s]
    count : ndarray of int, (S,)
        Nights up to and with `last_night`; the next begin each 86400 s later.

    Raises
    ------
    ValueError
        The last night lies before the first, or a zone is unknown.

    Notes
    -----
    Where a place has skipped a date (crossing the date line) no night bears its name and the count is less by one. Where a zone
    was chosen for far away, and noon falls near its midnight, daylight saving gives one name to two nights, which both count, and to
    none in spring.
    """
    lon, index, first, last = np.broadcast_arrays(
        np.asarray(lon_deg, dtype=float), zone_index, np.asarray(first_night, "datetime64[D]"), np.asarray(last_night, "datetime64[D]")
    )
    if (last < first).any():
        wrong = np.argmax((last < first).ravel())
        raise ValueError(
            Sentence(
                "The last night, {last}, lies before the first, {first}. Exchange them, or leave one blank.",
                last=str(last.flat[wrong]),
                first=str(first.flat[wrong]),
            )
        )
    start = _first_noon_dated(first, lon, zone_names, index)
    end = _first_noon_dated(last + 1, lon, zone_names, index)
    return start, np.rint((end - start) / DAY_S).astype(int)


def nights_asked(first_night, last_night, count, now_utc_s, zone_names, zone_index):
    """First and last night at each site, blanks filled: from the one of today at the site, a number of nights in all.

    Parameters
    ----------
    first_night, last_night : datetime64[D] or None
        None where left blank.
    count : int
    now_utc_s : float
        When it is today. [s]
    zone_names : sequence of str
    zone_index : ndarray of int, (S,)

    Returns
    -------
    first, last : ndarray of datetime64[D], (S,)
    """
    first = clock.dates(now_utc_s, zone_names, zone_index) if first_night is None else np.full(len(zone_index), first_night)
    last = first + (count - 1) if last_night is None else np.full(len(zone_index), last_night)
    return first, last


def span_utc_s(lon_deg, zone_names, zone_index, first_night, last_night):
    """First and last moment of the nights of all sites, arguments as for `noons`; 0 and 0 without a site. [s]."""
    noon_utc_s, count = noons(lon_deg, zone_names, zone_index, first_night, last_night)
    return (noon_utc_s.min(), (noon_utc_s + DAY_S * count).max()) if noon_utc_s.size else (0.0, 0.0)


def night_of(t_utc_s, lon_deg, zone_names, zone_index):
    """The night in which a moment lies.

    Parameters
    ----------
    t_utc_s : array_like
        Moments. [s]
    lon_deg : array_like
        Longitude of the site of each moment, broadcast with `t_utc_s`. [deg]
    zone_names : sequence of str
    zone_index : array_like of int
        Zone of each site, broadcast likewise.

    Returns
    -------
    night : ndarray of datetime64[D]
        Its name; NaT where the moment is not finite.
    noon_utc_s : ndarray
        Noon at which it began. [s]
    """
    noon_1970_s = _noon_1970_s(np.asarray(lon_deg, dtype=float))
    noon_utc_s = noon_1970_s + DAY_S * np.floor((np.asarray(t_utc_s, dtype=float) - noon_1970_s) / DAY_S)
    return clock.dates(noon_utc_s, zone_names, zone_index), noon_utc_s


def cut_long(stretches, noon_s):
    """Stretches over a day cut at the noons of their site, the others whole.

    Parameters
    ----------
    stretches : Arcs
        Of S sites.
    noon_s : ndarray, (S,)
        A noon of each site, on the scale of the stretches. [s]

    Returns
    -------
    row, start, end : ndarray, (N,)
        Site, begin and end of the pieces, in order.
    """
    row, noon = stretches.row, noon_s[stretches.row]
    first, last = np.floor((stretches.start - noon) / DAY_S), np.ceil((stretches.end - noon) / DAY_S)
    pieces = np.where(stretches.end - stretches.start > DAY_S, last - first, 1.0).astype(int)
    source = np.repeat(np.arange(len(row)), pieces)
    number = np.arange(len(source)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    cut = pieces[source] > 1
    day_s = noon[source] + DAY_S * (first[source] + number)
    start = np.where(cut, np.maximum(stretches.start[source], day_s), stretches.start[source])
    end = np.where(cut, np.minimum(stretches.end[source], day_s + DAY_S), stretches.end[source])
    return row[source], start, end


def _noon_1970_s(lon_deg):
    return 43200.0 - S_PER_DEG * lon_deg


def _first_noon_dated(date, lon_deg, zone_names, zone_index):
    """The earliest noon [s] whose local date is not before a date."""
    noon_1970_s = _noon_1970_s((lon_deg + 180.0) % 360.0 - 180.0)
    tried = (date.astype(np.int64)[..., np.newaxis] + NOONS_TRIED) * DAY_S + noon_1970_s[..., np.newaxis]
    reached = clock.dates(tried, zone_names, zone_index[..., np.newaxis]) >= date[..., np.newaxis]
    return np.take_along_axis(tried, np.argmax(reached, axis=-1)[..., np.newaxis], axis=-1)[..., 0]
