"""Nights: mean solar noon to mean solar noon, named by the date of their evening."""

from datetime import datetime, timezone

import numpy as np
import pytest

from skyalidade.plan import clock, nights

DAY_S = 86400.0


def utc_s(text):
    return datetime.fromisoformat(text).replace(tzinfo=timezone.utc).timestamp()


def day(text):
    return np.datetime64(text, "D")


# The rule itself (12 h - longitude / 15 in UTC; the date in the zone at that noon) worked by hand
@pytest.mark.parametrize(
    ("lon_deg", "zone_name", "night", "noon_utc"),
    [
        (0.0, "UTC", "2026-06-12", "2026-06-12 12:00:00"),
        (-105.0, "America/Denver", "2026-06-12", "2026-06-12 19:00:00"),
        (150.0, "Australia/Sydney", "2026-06-12", "2026-06-12 02:00:00"),
        (180.0, "UTC+12:00", "2026-06-12", "2026-06-12 00:00:00"),
        (-180.0, "UTC-12:00", "2026-06-12", "2026-06-13 00:00:00"),  # the same instant as the noon of 2026-06-13 at +180, one date apart
        (-157.5, "Pacific/Kiritimati", "2026-06-12", "2026-06-11 22:30:00"),  # Honolulu's longitude, tomorrow's date
        (-176.5, "Pacific/Chatham", "2026-06-12", "2026-06-11 23:46:00"),
        (180.0, "Etc/GMT+12", "2026-06-12", "2026-06-13 00:00:00"),
        (-105.0, "Asia/Tokyo", "2026-06-12", "2026-06-11 19:00:00"),  # a zone chosen for far away: 4 h on the 12th there
        (85.3, "Asia/Kathmandu", "2026-06-12", "2026-06-12 06:18:48"),
    ],
)
def test_noon_that_begins_a_night(lon_deg, zone_name, night, noon_utc):
    first_noon_utc_s, count = nights.noons([lon_deg], [zone_name], [0], day(night), day(night))
    assert first_noon_utc_s.tolist() == [utc_s(noon_utc)]
    assert count.tolist() == [1]


def test_both_ends_are_included():
    _, count = nights.noons([-105.0, 10.0], ["America/Denver", "Europe/Berlin"], [0, 1], day("2026-01-01"), day("2026-12-31"))
    assert count.tolist() == [365, 365]


def test_a_sunrise_belongs_to_the_evening_before():
    dawn_in_denver = utc_s("2026-06-12 11:30:00")  # 5:30 by the clock there
    named, noon_utc_s = nights.night_of(np.array([dawn_in_denver]), [-105.0], ["America/Denver"], [0])
    assert named[0] == day("2026-06-11")
    assert noon_utc_s[0] == utc_s("2026-06-11 19:00:00")


def test_noon_itself_begins_the_new_night():
    noon = utc_s("2026-06-12 19:00:00")
    named, _ = nights.night_of(np.array([noon - 0.001, noon]), -105.0, ["America/Denver"], 0)
    assert named.tolist() == [day("2026-06-11").item(), day("2026-06-12").item()]


PLACES = {  # name of zone -> longitude [deg]
    "America/Denver": -105.0,
    "Pacific/Kiritimati": -157.4,
    "Pacific/Apia": -171.8,
    "Pacific/Kwajalein": 167.7,
    "Etc/GMT+12": -179.9,
    "Asia/Kathmandu": 85.3,
    "Pacific/Chatham": -176.5,
    "UTC-02:00": -33.0,
    "Asia/Tokyo": -105.0,
}


@pytest.mark.parametrize("zone_name", PLACES)
def test_nights_of_sixty_years_follow_each_other(zone_name):
    """Asked one by one, the nights tile time without gap or overlap, and each moment lies in the night that is named for it."""
    every_night = np.arange(day("1990-01-02"), day("2053-09-30"))
    lon_deg = np.full(every_night.size, PLACES[zone_name])
    index = np.zeros(every_night.size, int)
    start, count = nights.noons(lon_deg, [zone_name], index, every_night, every_night)
    end = start + count * DAY_S
    assert (start[1:] == end[:-1]).all()
    lost_dates = every_night[count == 0]
    assert lost_dates.tolist() == [day(text).item() for text in DATES_THAT_NEVER_WERE.get(zone_name, [])]
    whole_start, whole_count = nights.noons(lon_deg[:1], [zone_name], [0], every_night[0], every_night[-1])
    assert (whole_start[0], whole_count[0]) == (start[0], count.sum())
    moments = start + np.random.default_rng(1).uniform(0.0, DAY_S, start.size)
    kept = count == 1
    named, noon_utc_s = nights.night_of(moments, lon_deg, [zone_name], index)
    assert (named[kept] == every_night[kept]).all()
    assert (noon_utc_s[kept] == start[kept]).all()


# IANA time zone database, file australasia (from memory): dates that places skipped as they crossed the date line
DATES_THAT_NEVER_WERE = {
    "Pacific/Kiritimati": ["1994-12-31"],
    "Pacific/Apia": ["2011-12-30"],
    "Pacific/Kwajalein": ["1993-08-21"],
}


def test_the_same_place_by_either_longitude():
    asked = (["UTC-11:00"], [0], day("2026-06-12"), day("2026-06-20"))
    assert nights.noons([-170.0], *asked)[0] == nights.noons([190.0], *asked)[0]


def test_one_range_for_each_site():
    start, count = nights.noons([0.0, 0.0], ["UTC"], [0, 0], np.array([day("2026-06-12"), day("2026-06-14")]), day("2026-06-14"))
    assert count.tolist() == [3, 1]
    assert start[1] - start[0] == 2 * DAY_S


def test_last_before_first_is_refused():
    with pytest.raises(ValueError, match="2026-06-11.*before.*2026-06-12"):
        nights.noons([0.0], ["UTC"], [0], day("2026-06-12"), day("2026-06-11"))


def test_today_is_the_sites_own_date():
    now = utc_s("2026-11-25 22:00:00")
    assert clock.dates(now, ["Pacific/Kiritimati", "America/Denver"], [0, 1]).tolist() == [
        day("2026-11-26").item(),
        day("2026-11-25").item(),
    ]


def test_a_noon_near_midnight_of_a_far_zone_may_name_two_nights_or_none():
    """A zone chosen for far away: daylight saving repeats a name in autumn and skips one in spring, and no night is lost."""
    lon_deg = np.full(365, 173.0)  # noon at 00:28 UTC: 23:28 of the day before in the winter of the Azores, 00:28 in their summer
    zone_name = "Atlantic/Azores"
    every_night = np.arange(day("2026-01-01"), day("2027-01-01"))
    start, count = nights.noons(lon_deg, [zone_name], np.zeros(365, int), every_night, every_night)
    assert sorted(count.tolist()) == [0] + [1] * 363 + [2]
    assert (np.diff(start) == DAY_S * count[:-1]).all()
