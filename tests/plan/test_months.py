"""Months of nights: counts and bests by hand, seasons, and new-moon weekends against Skyfield's phases of the Moon."""

import numpy as np
import pytest
from skyfield import almanac
from skyfield_places import DAY_S, kernel, times, timescale

from skyalidade.names import MONTHS_FIELDS
from skyalidade.plan.months import by_month, new_moons

FIRST, LAST = "2027-01-01", "2028-12-31"


def skyfield_new_moons(first, last):
    """[s of UTC]."""
    span = times(np.array([np.datetime64(date, "s").astype(float) for date in (first, last)]))
    moments, phase = almanac.find_discrete(span[0], span[1], almanac.moon_phases(kernel()))
    dates = moments[phase == 0].utc_datetime()
    return np.array([date.timestamp() for date in dates])


def test_new_moons_are_skyfields():
    ours = new_moons(*(np.datetime64(date, "s").astype(float) for date in ("1995-01-10", "2050-12-20")))
    theirs = skyfield_new_moons("1995-01-10", "2050-12-20")
    inner = ours[(ours > theirs[0] - DAY_S) & (ours < theirs[-1] + DAY_S)]
    assert len(inner) == len(theirs) > 690
    # s; the Sun's own path is taken for the ecliptic: its latitude, up to 1", is 2 s of the Moon's way
    assert np.abs(inner - theirs).max() < 5.0
    assert ours[0] >= np.datetime64("1995-01-06", "s").astype(float)  # half a week more on either side, for the weekends there


def test_a_span_at_the_end_of_the_ephemeris():
    end = timescale().utc(2053, 10, 3).utc_datetime().timestamp()
    assert len(new_moons(end - 40 * DAY_S, end)) >= 1


@pytest.fixture
def nights():
    """Two sites over two years; what can be used is drawn by lot in a season."""
    rng = np.random.default_rng(70)
    dates = np.arange(FIRST, np.datetime64(LAST) + 1, dtype="datetime64[D]")
    night = np.tile(dates, 2)
    site = np.repeat([4, 9], len(dates))
    month_of_year = night.astype("datetime64[M]").astype(int) % 12 + 1
    season = (month_of_year >= 3) & (month_of_year <= 9)
    longest_min = np.where(season & (rng.random(len(night)) < 0.5), rng.integers(1, 300, len(night)), 0).astype(float)
    return site, night, night.astype("datetime64[s]").astype(float) + DAY_S / 2, longest_min, longest_min * 1.25


@pytest.fixture
def months(nights):
    return by_month(*nights, skyfield_new_moons("2026-12-20", "2029-01-10"))


def test_a_row_a_site_and_month(months):
    assert set(MONTHS_FIELDS) - {"site_id"} == months.keys()
    assert months["site"].tolist() == [4] * 24 + [9] * 24
    assert months["month"].tolist() == [f"{year}-{month:02}" for _ in range(2) for year in (2027, 2028) for month in range(1, 13)]


def test_counts_and_bests_are_those_of_the_nights(nights, months):
    site, night, _, longest_min, all_min = nights
    for row in range(48):
        mine = (site == months["site"][row]) & (night.astype("datetime64[M]") == np.datetime64(months["month"][row]))
        assert months["nights"][row] == (longest_min[mine] > 0).sum()
        assert months["hours"][row] == pytest.approx(all_min[mine].sum() / 60.0)
        if longest_min[mine].any():
            assert months["best_night"][row] == night[mine][np.argmax(longest_min[mine])]
            assert months["best_min"][row] == longest_min[mine].max()
        else:
            assert np.isnat(months["best_night"][row])
            assert np.isnan(months["best_min"][row])
            assert np.isnat(months["first_night"][row])


def test_the_season_of_each_year_by_itself(nights, months):
    site, night, _, longest_min, _ = nights
    for row in range(48):
        year, month = months["month"][row].split("-")
        if 3 <= int(month) <= 9:
            mine = (site == months["site"][row]) & (night.astype("datetime64[Y]") == np.datetime64(year)) & (longest_min > 0)
            assert months["first_night"][row] == night[mine][0]
            assert months["last_night"][row] == night[mine][-1]


def test_a_gap_as_long_as_the_moon_takes_ends_no_season():
    night = np.arange("2027-11-01", "2028-03-01", dtype="datetime64[D]")
    usable = np.zeros(len(night))
    usable[[3, 40, 80, 119]] = 10.0  # 37, 40 and 39 nights apart, over the new year
    found = by_month(np.zeros(len(night), int), night, night.astype("datetime64[s]").astype(float), usable, usable, np.array([]))
    assert {str(date) for date in found["first_night"]} == {"2027-11-04"}
    assert {str(date) for date in found["last_night"]} == {"2028-02-28"}
    assert found["new_moon"].tolist() == [None] * 4


def test_new_moon_weekends(nights, months):
    """For every new Moon the Saturday whose midnight is nearest, told in that Saturday's month; some months have two or none."""
    told = [date for text in months["new_moon"][:24] if text for date in text.split(", ")]
    noon_of_saturday = np.arange("2026-12-19", "2029-01-20", 7, dtype="datetime64[D]")  # 2026-12-19 is a Saturday
    assert noon_of_saturday[0].astype(object).weekday() == 5
    midnight = noon_of_saturday.astype("datetime64[s]").astype(float) + DAY_S
    nearest = [noon_of_saturday[np.argmin(np.abs(midnight - moon))] for moon in skyfield_new_moons("2026-12-20", "2029-01-10")]
    assert told == [str(date) for date in nearest if np.datetime64(FIRST) <= date <= np.datetime64(LAST)]
    for text, month in zip(months["new_moon"], months["month"]):
        assert all(date.startswith(month) for date in (text or month).split(", "))
    assert {0, 1} <= {len(text.split(", ")) if text else 0 for text in months["new_moon"]}


def test_no_nights():
    empty = np.array([])
    found = by_month(np.array([], int), np.array([], "datetime64[D]"), empty, empty, empty, np.array([1.8e9]))
    assert all(len(column) == 0 for column in found.values())
