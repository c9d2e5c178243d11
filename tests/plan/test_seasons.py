"""Seasons of closed ground: once, every year, over New Year, and days that are not known."""

from datetime import date, timedelta

import numpy as np
import pytest

from skyalidade.plan.seasons import ALWAYS, closed_on, season


def days(first, count):
    return [first + timedelta(days=i) for i in range(count)]


@pytest.mark.parametrize(
    ("first", "last", "holds"),
    [
        ("2027-03-01", "2027-10-15", lambda day: date(2027, 3, 1) <= day <= date(2027, 10, 15)),
        ("2027-03-01", None, lambda day: day >= date(2027, 3, 1)),
        ("", "2027-03-01T12:00:00", lambda day: day <= date(2027, 3, 1)),
        ("03-01", "10-15", lambda day: (3, 1) <= (day.month, day.day) <= (10, 15)),
        ("--11-01", "--02-29", lambda day: (day.month, day.day) >= (11, 1) or (day.month, day.day) <= (2, 29)),
        ("9-5", None, lambda day: (day.month, day.day) >= (9, 5)),
        (None, "9-5", lambda day: (day.month, day.day) <= (9, 5)),
        ("07-04", "07-04", lambda day: (day.month, day.day) == (7, 4)),
        (None, None, lambda day: True),
    ],
)
def test_every_day_of_four_years_by_the_calendar(first, last, holds):
    """Python's own dates, one by one."""
    all_days = days(date(2025, 6, 1), 1461)
    found = closed_on(season(first, last), np.array(all_days, dtype="datetime64[D]"))
    assert found.tolist() == [holds(day) for day in all_days]


def test_an_unknown_day_is_closed():
    """Nobody is sent into closed ground because a date was not given."""
    for own in (ALWAYS, season("03-01", "10-15"), season("2027-03-01", "2027-10-15"), season(None, "2020-01-01")):
        assert closed_on(own, np.array(["NaT"], dtype="datetime64[D]")).all()


@pytest.mark.parametrize(
    ("first", "last"),
    [("spring", None), ("13-01", "12-01"), ("02-30", None), ("2027-02-29", None), ("2027-03-01", "10-15"), ("2027-10-15", "2027-03-01")],
)
def test_what_is_no_season_is_refused_with_what_to_write(first, last):
    with pytest.raises(ValueError, match="Write|give|Exchange"):
        season(first, last)
