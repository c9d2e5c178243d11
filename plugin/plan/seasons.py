"""Seasons of closed ground: between two dates once, or between two days of every year."""

import re
from datetime import date
from typing import NamedTuple, Optional

import numpy as np

from ..words import Sentence

FIRST_DAY, LAST_DAY = (1, 1), (12, 31)
_EVERY_YEAR = re.compile(r"(?:--)?(\d{1,2})-(\d{1,2})")
_ONCE = re.compile(r"(\d{4})-(\d{2})-(\d{2})(?:[T ].*)?")
LEAP_YEAR = 2000  # in which every month and day that can be is


class Season(NamedTuple):
    """First and last day of a closure, both included; None where it has no end on that side. A day is a date, or month and day."""

    first: Optional[object]
    last: Optional[object]
    every_year: bool = False


ALWAYS = Season(None, None)


def season(first, last):
    """The season between two days as a table tells them.

    Parameters
    ----------
    first, last : str or None
        `2027-03-01`, or `03-01` for each year; None or empty for no end on that side.

    Returns
    -------
    Season

    Raises
    ------
    ValueError
        A text that is no day, or one of each kind.
    """
    (begin, begin_yearly), (end, end_yearly) = _day(first), _day(last)
    if begin is None and end is None:
        return ALWAYS
    if begin is not None and end is not None and begin_yearly != end_yearly:
        raise ValueError(
            Sentence("'{first}' and '{last}' are not of one kind: give two dates with a year, or two days without.", first=first, last=last)
        )
    if begin_yearly or end_yearly:
        return Season(begin or FIRST_DAY, end or LAST_DAY, True)
    if begin is not None and end is not None and end < begin:
        raise ValueError(Sentence("'{last}' lies before '{first}'. Exchange them.", first=first, last=last))
    return Season(begin, end)


def _day(text):
    """A day, and whether it comes every year."""
    text = "" if text is None else str(text).strip()
    if not text:
        return None, False
    yearly, once = _EVERY_YEAR.fullmatch(text), _ONCE.fullmatch(text)
    try:
        if yearly:
            day = date(LEAP_YEAR, *(int(number) for number in yearly.groups()))
            return (day.month, day.day), True
        if once:
            return date(*(int(number) for number in once.groups())), False
    except ValueError:
        pass
    raise ValueError(Sentence("'{text}' is no day. Write 2027-03-01, or 03-01 for each year.", text=text))


def closed_on(season, days):
    """Whether ground is closed on days.

    Parameters
    ----------
    season : Season
    days : array_like of datetime64[D]
        NaT where the day is not known: closed then, lest anybody be sent into closed ground.

    Returns
    -------
    ndarray of bool
    """
    days = np.asarray(days, dtype="datetime64[D]")
    if not season.every_year:
        after = True if season.first is None else days >= np.datetime64(season.first, "D")
        before = True if season.last is None else days <= np.datetime64(season.last, "D")
        return after & before | np.isnat(days)
    months = days.astype("datetime64[M]")
    month = months.astype(np.int64) % 12 + 1
    key = 100 * month + (days - months.astype("datetime64[D]")).astype(np.int64) + 1
    first, last = (100 * month + day for month, day in (season.first, season.last))
    held = (key >= first) & (key <= last) if first <= last else (key >= first) | (key <= last)  # over New Year
    return held | np.isnat(days)
