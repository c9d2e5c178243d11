"""Local clocks: from seconds of UTC to what a watch at the site shows, and back.

A moment is `t_utc_s`, seconds of UTC since 1970-01-01T00:00Z without leap seconds. Zones are names: those of the IANA time zone
database, or fixed ones written `UTC-02:00` as they hold at sea. Many moments share few zones: `zone_names` is a short list, and
`zone_index` tells for each moment which of them holds (any shape that broadcasts with the moments; 0 for all). The computer's
own zone plays no part.
"""

import difflib
import functools
import re
import zoneinfo
from datetime import datetime, timedelta, timezone

import numpy as np

from .. import libraries  # noqa: F401  brings the zones to computers that hold none
from ..words import Sentence

DAY_S = 86400
EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)
FIRST_UTC_S = -62135510400.0  # 0001-01-02 and 9999-12-30: a day inside what the calendar of Python can say in any zone
LAST_UTC_S = 253402128000.0
DEG_PER_HOUR = 15.0
LARGEST_OFFSET_MIN = 14 * 60  # the Line Islands of Kiribati, UTC+14:00
FIXED_ZONE = re.compile(r"UTC([+-])(\d\d):([0-5]\d)")
# Not clocks of a place: the computer's own zone, a placeholder, and the copies that count leap seconds
NO_ZONES = ("localtime", "Factory", "posixrules", "right/", "posix/")


def nautical_zone(lon_deg):
    """Name of the zone that ships keep at a longitude: whole hours, 15 degrees wide.

    Parameters
    ----------
    lon_deg : array_like
        Longitude, east positive; any turn. [deg]

    Returns
    -------
    str or ndarray of object
        `UTC` from -7.5 to +7.5, else such as `UTC-02:00`; of the shape of `lon_deg`. On the border of two zones the one nearer to
        Greenwich; +180 is `UTC+12:00`, -180 `UTC-12:00`.

    Raises
    ------
    ValueError
        A longitude is not a number.
    """
    lon = np.asarray(lon_deg, dtype=float)
    bad = ~np.isfinite(lon)
    if bad.any():
        raise ValueError(
            Sentence(
                "{n} of {total} longitudes are not numbers: a place without longitude has no time zone.", n=int(bad.sum()), total=lon.size
            )
        )
    turned = np.where(np.abs(lon) > 180.0, (lon + 180.0) % 360.0 - 180.0, lon)
    hours = np.copysign(np.ceil(np.abs(turned) / DEG_PER_HOUR - 0.5), turned).astype(int)
    names = np.array([_fixed_name(hour * 3600) for hour in range(-12, 13)], dtype=object)
    return names[hours + 12]


@functools.cache
def zone(name):
    """The clock of a zone.

    Parameters
    ----------
    name : str
        IANA name such as `Europe/Berlin`, or a fixed offset written `UTC-02:00`.

    Returns
    -------
    datetime.tzinfo

    Raises
    ------
    ValueError
        No such zone, or the computer holds no time zone data.
    """
    text = str(name)
    fixed = FIXED_ZONE.fullmatch("UTC+00:00" if text == "UTC" else text)
    if fixed:
        sign, hours, minutes = fixed.groups()
        offset_min = int(hours) * 60 + int(minutes)
        if offset_min <= LARGEST_OFFSET_MIN:
            return timezone(timedelta(minutes=-offset_min if sign == "-" else offset_min), text)
    elif not text.startswith(NO_ZONES):
        try:
            return zoneinfo.ZoneInfo(text)
        except (ValueError, OSError, zoneinfo.ZoneInfoNotFoundError):  # unknown, ill formed, or a folder of the database
            pass
    raise ValueError(_unknown_zone(text))


def utc_offsets_s(t_utc_s, zone_names, zone_index):
    """How far local clocks are ahead of UTC at given moments.

    Parameters
    ----------
    t_utc_s : array_like
        Moments. [s]
    zone_names : sequence of str
    zone_index : array_like of int
        Which zone holds, broadcast with `t_utc_s`.

    Returns
    -------
    ndarray
        Local less UTC, positive to the east; nan where the moment is not finite. [s]

    Raises
    ------
    ValueError
        Unknown zone, or a moment outside the years 1 to 9999.

    Notes
    -----
    Each zone is asked at the ends of each UTC day that occurs; where the two answers differ the change is found to the second by
    halving. Two changes that undo each other within one UTC day would be missed; there is none in the zones since 1990.
    """
    t, index = np.broadcast_arrays(np.asarray(t_utc_s, dtype=float), zone_index)
    offsets_s = np.full(t.shape, np.nan)
    known = np.isfinite(t)
    moments = t[known]
    outside = (moments < FIRST_UTC_S) | (moments > LAST_UTC_S)
    if outside.any():
        raise ValueError(
            Sentence(
                "{n} of {total} moments lie outside the years 1 to 9999: check their unit, seconds since 1970.",
                n=int(outside.sum()),
                total=moments.size,
            )
        )
    if not moments.size:
        return offsets_s
    day = np.floor(moments / DAY_S).astype(np.int64)
    first_day = day.min()
    day_span = int(day.max() - first_day) + 1
    keys, of_key = _distinct(index[known].astype(np.int64) * day_span + (day - first_day))
    clocks = [zone(name) for name in zone_names]
    changes = [_day_offsets(clocks[key // day_span], int(key % day_span + first_day)) for key in keys.tolist()]
    before_s, change_s, after_s = np.array(changes).T
    if np.array_equal(before_s, after_s):
        offsets_s[known] = before_s[of_key]
    else:
        offsets_s[known] = np.where(moments < change_s[of_key], before_s[of_key], after_s[of_key])
    return offsets_s


def whole_seconds(t_utc_s):
    """Moments [s] rounded as they are written: to the nearest second, halves up; nan stays nan."""
    return np.floor(np.asarray(t_utc_s, dtype=float) + 0.5)


def local_text(t_utc_s, zone_names, zone_index):
    """Date, time and offset as the clock at the site shows them.

    Parameters
    ----------
    t_utc_s : array_like
        Moments. [s]
    zone_names : sequence of str
    zone_index : array_like of int
        Which zone holds, broadcast with `t_utc_s`.

    Returns
    -------
    ndarray of object
        Such as `2026-06-12 23:04:31 -06:00`, rounded to the whole second; None where the moment is not finite.

    Raises
    ------
    ValueError
        Unknown zone, or a moment outside the years 1 to 9999.
    """
    t = whole_seconds(t_utc_s)
    offsets_s = utc_offsets_s(t, zone_names, zone_index)
    texts = np.full(offsets_s.shape, None, dtype=object)
    known = np.isfinite(offsets_s)
    if not known.any():
        return texts
    ahead_s = offsets_s[known].astype(np.int64)
    whole_s = np.broadcast_to(t, offsets_s.shape)[known].astype(np.int64) + ahead_s
    offset_s, of_offset = _distinct(ahead_s + DAY_S)  # from 0 upward: no clock is a day behind
    tails = _letters(np.array([" " + _offset_text(seconds - DAY_S) for seconds in offset_s.tolist()]))
    day = whole_s // DAY_S
    first_day = day.min()
    dates_from = np.arange(first_day, day.max() + 1).astype("datetime64[D]")
    letters = np.empty((len(day), 19 + tails.shape[1]), np.uint8)
    letters[:, :10] = _letters(np.datetime_as_string(dates_from))[day - first_day, :10]
    letters[:, 10:19] = _times_of_day()[whole_s - DAY_S * day]
    letters[:, 19:] = tails[of_offset]
    texts[known] = letters.astype(np.uint32).view(f"U{letters.shape[1]}")[:, 0].astype(object)
    return texts


@functools.cache
def _times_of_day():
    """Letters of the time of day, a space before it, by the second; shape (86400, 9)."""
    midnight = np.datetime64("2000-01-01", "s")
    letters = _letters(np.datetime_as_string(midnight + np.arange(DAY_S)))[:, 10:19].copy()
    letters[:, 0] = ord(" ")  # instead of the T of ISO 8601
    return letters


def dates(t_utc_s, zone_names, zone_index):
    """Calendar date at the site.

    Parameters
    ----------
    t_utc_s : array_like
        Moments. [s]
    zone_names : sequence of str
    zone_index : array_like of int
        Which zone holds, broadcast with `t_utc_s`.

    Returns
    -------
    ndarray of datetime64[D]
        NaT where the moment is not finite.

    Raises
    ------
    ValueError
        Unknown zone, or a moment outside the years 1 to 9999.
    """
    local_s = np.asarray(t_utc_s, dtype=float) + utc_offsets_s(t_utc_s, zone_names, zone_index)
    known = np.isfinite(local_s)
    days = np.floor(np.where(known, local_s, 0.0) / DAY_S).astype("datetime64[D]")
    return np.where(known, days, np.datetime64("NaT", "D"))


def instants(wall, zone_names):
    """The moment that a date and time means in each of several zones.

    Parameters
    ----------
    wall : datetime.datetime
        With an offset: that moment, whatever the zones. Without: what the clock of each zone shows.
    zone_names : sequence of str

    Returns
    -------
    t_utc_s : ndarray, one for each zone
        Moments. [s]
    notes : list of str
        A sentence for each zone whose clock shows the time twice; the first of the two is taken.

    Raises
    ------
    ValueError
        Unknown zone, or a time that the clock of a zone skips.
    """
    if wall.utcoffset() is not None:
        return np.full(len(zone_names), (wall - EPOCH).total_seconds()), []
    moments, notes = zip(*[_instant(wall, name) for name in zone_names]) if len(zone_names) else ((), ())
    return np.array(moments, dtype=float), [note for note in notes if note]


def changes(zone_name, first_utc_s, last_utc_s):
    """When a clock is put forward or back.

    Parameters
    ----------
    zone_name : str
    first_utc_s, last_utc_s : float
        Span; whole days of UTC that touch it are looked at. [s]

    Returns
    -------
    t_utc_s, step_s : ndarray, shape (K,)
        Moments from which the new time holds, and by how much it is ahead of the old. [s]

    Raises
    ------
    ValueError
        Unknown zone.
    """
    held = zone(zone_name)
    days = range(int(first_utc_s // DAY_S), int(last_utc_s // DAY_S) + 1)
    found = [(late, after_s - before_s) for before_s, late, after_s in (_day_offsets(held, day) for day in days) if before_s != after_s]
    return np.array(found, dtype=float).reshape(-1, 2).T


def _instant(wall, zone_name):
    first = wall.replace(tzinfo=zone(zone_name), fold=0)
    second = first.replace(fold=1)
    shown = f"{wall:%Y-%m-%d %H:%M:%S}"
    note = None
    if first.utcoffset() < second.utcoffset():  # PEP 495: so it is in a gap, and the other way round in a fold
        raise ValueError(
            Sentence(
                "{time} does not exist in {zone}: the clocks go forward over it. Choose another time, or give the time with its offset "
                "from UTC.",
                time=shown,
                zone=zone_name,
            )
        )
    if first.utcoffset() > second.utcoffset():
        offset = _offset_text(first.utcoffset().total_seconds())
        note = Sentence(
            "{time} occurs twice in {zone}, where the clocks go back; the first, at {offset}, is taken.",
            time=shown,
            zone=zone_name,
            offset=offset,
        )
    return (first - EPOCH).total_seconds(), note


@functools.lru_cache(maxsize=1 << 18)
@functools.lru_cache(maxsize=100_000)
def _day_offsets(clock, day):
    """Offsets [s] at the two ends of a UTC day (counted from 1970) and the moment [s] between them from which the second holds."""
    early, late = day * DAY_S, (day + 1) * DAY_S
    before_s, after_s = _offset_s(clock, early), _offset_s(clock, late)
    while before_s != after_s and late - early > 1:
        middle = (early + late) // 2
        if _offset_s(clock, middle) == before_s:
            early = middle
        else:
            late = middle
    return before_s, late, after_s


def _letters(texts):
    """Letters of ASCII texts of one array, one row a text, as small as they can be."""
    return texts.view(np.uint32).reshape(texts.size, -1).astype(np.uint8)


def _distinct(numbers):
    """As `numpy.unique` with the inverse, of integers from 0 upward: where they lie close, counted and not sorted."""
    if numbers.max() > 4 * numbers.size + 1_000_000:
        return np.unique(numbers, return_inverse=True)
    present = np.zeros(numbers.max() + 1, bool)
    present[numbers] = True
    return np.flatnonzero(present), np.cumsum(present)[numbers] - 1


def _offset_s(clock, t_utc_s):
    return (EPOCH + timedelta(seconds=t_utc_s)).astimezone(clock).utcoffset().total_seconds()


def _offset_text(offset_s):
    minutes, seconds = divmod(round(abs(offset_s)), 60)
    tail = f":{seconds:02}" if seconds else ""  # local mean times of long ago
    return f"{'-' if offset_s < 0 else '+'}{minutes // 60:02}:{minutes % 60:02}{tail}"


def _fixed_name(offset_s):
    return f"UTC{_offset_text(offset_s)}" if offset_s else "UTC"


def _unknown_zone(text):
    known = sorted(name for name in zoneinfo.available_timezones() if not name.startswith(NO_ZONES))
    if not known:
        return Sentence(
            "The time zone '{zone}' cannot be looked up: this Python holds no time zone data. Install its package tzdata, or give a fixed "
            "offset such as UTC-02:00.",
            zone=text,
        )
    tails = {name.rsplit("/", 1)[-1].lower(): name for name in known}
    by_lower_case = {**tails, **{name.lower(): name for name in known}}
    close = difflib.get_close_matches(text.lower(), by_lower_case, n=1, cutoff=0.75) if text else []
    hint = Sentence(" Did you mean {zone}?", zone=by_lower_case[close[0]]) if close else ""
    return Sentence(
        "There is no time zone '{zone}'.{hint} Give an IANA name such as Europe/Berlin, or a fixed offset such as UTC-02:00.",
        zone=text,
        hint=hint,
    )
