"""Local clocks against the published rules of the zones, and against Python's zoneinfo one moment at a time."""

import os
import subprocess
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from skyalidade.plan import clock

UTC = timezone.utc


def utc_s(text):
    """Seconds since 1970 of an ISO moment given in UTC."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC).timestamp()


def shown(utc_text, zone_name):
    return clock.local_text(np.array([utc_s(utc_text)]), [zone_name], np.array([0]))[0]


# Each rule is law or the published comment of the IANA time zone database (file named beside it); wordings from memory.
PUBLISHED = [
    # Directive 2000/84/EC, articles 2 and 3: summer time from 01:00 UTC on the last Sunday of March to 01:00 UTC on the last of October
    ("2026-03-29 00:59:59", "Europe/Berlin", "2026-03-29 01:59:59 +01:00"),
    ("2026-03-29 01:00:00", "Europe/Berlin", "2026-03-29 03:00:00 +02:00"),
    ("2026-10-25 00:59:59", "Europe/Berlin", "2026-10-25 02:59:59 +02:00"),
    ("2026-10-25 01:00:00", "Europe/Berlin", "2026-10-25 02:00:00 +01:00"),
    ("2026-10-25 01:00:00", "Atlantic/Azores", "2026-10-25 00:00:00 -01:00"),
    # US Energy Policy Act of 2005, section 110: second Sunday of March to first Sunday of November, 2 a.m. local
    ("2026-03-08 08:59:59", "America/Denver", "2026-03-08 01:59:59 -07:00"),
    ("2026-03-08 09:00:00", "America/Denver", "2026-03-08 03:00:00 -06:00"),
    ("2026-11-01 07:59:59", "America/Denver", "2026-11-01 01:59:59 -06:00"),
    ("2026-11-01 08:00:00", "America/Denver", "2026-11-01 01:00:00 -07:00"),
    ("2026-06-13 05:04:31", "America/Denver", "2026-06-12 23:04:31 -06:00"),
    ("2026-06-13 05:04:31", "America/Phoenix", "2026-06-12 22:04:31 -07:00"),  # northamerica: no daylight saving in Arizona
    # northamerica: Newfoundland changed at one minute past midnight until 2011: not on any quarter hour
    ("2010-03-14 03:30:59", "America/St_Johns", "2010-03-14 00:00:59 -03:30"),
    ("2010-03-14 03:31:00", "America/St_Johns", "2010-03-14 01:01:00 -02:30"),
    # australasia: Lord Howe moves by half an hour, first Sundays of April and October at 2 a.m.
    ("2026-01-15 00:00:00", "Australia/Lord_Howe", "2026-01-15 11:00:00 +11:00"),
    ("2026-07-15 00:00:00", "Australia/Lord_Howe", "2026-07-15 10:30:00 +10:30"),
    # australasia: Chatham stands 45 minutes before New Zealand, changing with it at 2:45
    ("2026-07-15 00:00:00", "Pacific/Chatham", "2026-07-15 12:45:00 +12:45"),
    ("2026-01-15 00:00:00", "Pacific/Chatham", "2026-01-15 13:45:00 +13:45"),
    ("2026-06-12 18:14:00", "Asia/Kathmandu", "2026-06-12 23:59:00 +05:45"),  # asia: Nepal +5:45 since 1986
    # australasia: the Line Islands of Kiribati crossed the date line: there was no 1994-12-31 there
    ("1994-12-31 09:59:59", "Pacific/Kiritimati", "1994-12-30 23:59:59 -10:00"),
    ("1994-12-31 10:00:00", "Pacific/Kiritimati", "1995-01-01 00:00:00 +14:00"),
    # australasia: Samoa had no 2011-12-30
    ("2011-12-30 09:59:59", "Pacific/Apia", "2011-12-29 23:59:59 -10:00"),
    ("2011-12-30 10:00:00", "Pacific/Apia", "2011-12-31 00:00:00 +14:00"),
    ("2026-06-13 11:59:59", "Etc/GMT+12", "2026-06-12 23:59:59 -12:00"),  # etcetera: POSIX signs, west positive
    ("2053-10-01 00:00:00", "UTC", "2053-10-01 00:00:00 +00:00"),
    ("1990-01-01 00:00:00", "UTC-02:00", "1989-12-31 22:00:00 -02:00"),
]


@pytest.mark.parametrize(("utc_text", "zone_name", "expected"), PUBLISHED)
def test_published_rules(utc_text, zone_name, expected):
    assert shown(utc_text, zone_name) == expected


EVERYWHERE = [
    "America/Denver",
    "Pacific/Kiritimati",
    "Etc/GMT+12",
    "Asia/Kathmandu",
    "America/St_Johns",
    "Africa/Casablanca",  # changes about each Ramadan
    "Australia/Lord_Howe",
]


def test_a_hundred_thousand_moments_like_zoneinfo():
    rng = np.random.default_rng(20260612)
    t_utc_s = rng.uniform(utc_s("1990-01-01"), utc_s("2053-10-01"), 100_000)
    index = rng.integers(0, len(EVERYWHERE), t_utc_s.size)
    texts = clock.local_text(t_utc_s, EVERYWHERE, index)
    dates = clock.dates(t_utc_s, EVERYWHERE, index)
    zones = [ZoneInfo(name) for name in EVERYWHERE]
    for t, i, text, date in zip(clock.whole_seconds(t_utc_s), index, texts, dates):
        moment = datetime.fromtimestamp(int(t), UTC).astimezone(zones[i])
        assert text == moment.strftime("%Y-%m-%d %H:%M:%S ") + moment.isoformat()[-6:]
        assert str(date) == str(moment.date()) or abs(moment.hour * 3600 + moment.minute * 60 + moment.second - 43200) == 43200


def test_every_second_about_a_change():
    """Second by second about a change that falls on no quarter hour."""
    zone = ZoneInfo("America/St_Johns")
    around = np.arange(utc_s("2009-11-01 02:20:00"), utc_s("2009-11-01 02:45:00"))
    expected = [datetime.fromtimestamp(t, UTC).astimezone(zone).utcoffset().total_seconds() for t in around]
    assert len(set(expected)) == 2
    assert clock.utc_offsets_s(around, ["America/St_Johns"], np.zeros(around.size, int)).tolist() == expected


@pytest.mark.parametrize(
    ("seconds", "expected"),
    [
        (-0.4, "1970-01-01 00:00:00 +00:00"),
        (-0.6, "1969-12-31 23:59:59 +00:00"),
        (-86400.51, "1969-12-30 23:59:59 +00:00"),
        (0.5, "1970-01-01 00:00:01 +00:00"),  # halves go up, before 1970 and after
        (-0.5, "1970-01-01 00:00:00 +00:00"),
        (59.999, "1970-01-01 00:01:00 +00:00"),
    ],
)
def test_rounding_to_the_whole_second(seconds, expected):
    assert clock.local_text(np.array([seconds]), ["UTC"], np.array([0]))[0] == expected


def test_a_moment_that_rounds_into_the_new_offset_shows_it():
    just_before = utc_s("2026-03-29 01:00:00") - 0.2  # the written second is the change itself
    assert clock.local_text(np.array([just_before]), ["Europe/Berlin"], np.array([0]))[0] == "2026-03-29 03:00:00 +02:00"


def test_unknown_moments_stay_unknown():
    t_utc_s = np.array([np.nan, 0.0, np.inf])
    assert clock.local_text(t_utc_s, ["UTC"], np.zeros(3, int)).tolist() == [None, "1970-01-01 00:00:00 +00:00", None]
    assert np.isnat(clock.dates(t_utc_s, ["UTC"], np.zeros(3, int))).tolist() == [True, False, True]


@pytest.mark.parametrize("shape", [(), (0,), (3,), (2, 3)], ids=["scalar", "empty", "array", "sites by times"])
def test_shape_is_kept(shape):
    t_utc_s = np.full(shape, 86399.0)
    assert clock.local_text(t_utc_s, ["UTC"], 0).shape == shape
    assert clock.dates(t_utc_s, ["UTC"], 0).shape == shape
    assert clock.utc_offsets_s(t_utc_s, ["UTC"], 0).shape == shape


def test_sites_by_times_take_one_zone_a_site():
    t_utc_s = np.array([[0.0, 3600.0]])
    texts = clock.local_text(t_utc_s, ["UTC", "UTC+05:45"], np.array([[0], [1]]))
    assert texts[1].tolist() == ["1970-01-01 05:45:00 +05:45", "1970-01-01 06:45:00 +05:45"]


@pytest.mark.parametrize("computer_zone", ["Asia/Kolkata", "America/Los_Angeles", "Pacific/Kiritimati"])
def test_the_computers_own_zone_plays_no_part(computer_zone):
    """The same numbers from an interpreter that lives in another zone."""
    program = (
        "import numpy as np; from datetime import datetime; from skyalidade.plan import clock, nights; import time;"
        "print(time.tzname[0], clock.local_text(np.array([1781327071.0]), ['America/Denver'], 0)[0],"
        "clock.instants(datetime(2026, 6, 12, 23, 4, 31), ['America/Denver'])[0][0],"
        "clock.dates(np.array([1781327071.0]), ['Pacific/Kiritimati'], 0)[0],"
        "nights.noons([-105.0], ['America/Denver'], [0], np.datetime64('2026-06-12'), np.datetime64('2026-06-12'))[0][0])"
    )
    search = os.pathsep.join(path for path in sys.path if path)
    done = subprocess.run(
        [sys.executable, "-W", "ignore", "-c", program],
        env={**os.environ, "TZ": computer_zone, "PYTHONPATH": search},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    tzname, *rest = done.stdout.split()
    assert tzname == time_name(computer_zone)  # the interpreter did live there
    noon = utc_s("2026-06-12 19:00:00")  # 12 h + 105/15 h
    assert rest == ["2026-06-12", "23:04:31", "-06:00", "1781327071.0", "2026-06-13", str(noon)]


def time_name(zone_name):
    return datetime(2026, 1, 1, tzinfo=ZoneInfo(zone_name)).tzname()


@pytest.mark.parametrize(
    ("lon_deg", "expected"),
    [
        # nautical zones: 15 degrees wide about the multiples of 15, halved along the 180th meridian (Bowditch, American Practical
        # Navigator, chapter on time; from memory)
        (0.0, "UTC"),
        (7.4, "UTC"),
        (7.6, "UTC+01:00"),
        (-33.0, "UTC-02:00"),
        (-37.4, "UTC-02:00"),
        (-37.6, "UTC-03:00"),
        (172.6, "UTC+12:00"),
        (180.0, "UTC+12:00"),
        (-172.6, "UTC-12:00"),
        (-180.0, "UTC-12:00"),
        (190.0, "UTC-11:00"),
        (-545.0, "UTC+12:00"),
        # our own choice on the border itself: the zone nearer to Greenwich
        (7.5, "UTC"),
        (-7.5, "UTC"),
        (22.5, "UTC+01:00"),
        (-22.5, "UTC-01:00"),
    ],
)
def test_nautical_zones(lon_deg, expected):
    assert clock.nautical_zone(lon_deg) == expected


def test_nautical_zones_of_many_places():
    assert clock.nautical_zone(np.array([[0.0, -33.0], [100.0, -100.0]])).tolist() == [["UTC", "UTC-02:00"], ["UTC+07:00", "UTC-07:00"]]


def test_a_place_without_longitude_has_no_zone():
    with pytest.raises(ValueError, match="1 of 2 longitudes"):
        clock.nautical_zone([0.0, np.nan])


@pytest.mark.parametrize(
    ("name", "hours"), [("UTC", 0), ("UTC+00:00", 0), ("UTC-02:00", -2), ("UTC+05:45", 5.75), ("UTC+14:00", 14), ("UTC-12:00", -12)]
)
def test_fixed_zones(name, hours):
    assert clock.zone(name).utcoffset(None) == timedelta(hours=hours)


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("Europe/Berlyn", "Europe/Berlin"),
        ("europe/berlin", "Europe/Berlin"),
        ("Denver", "America/Denver"),
        ("America", "IANA"),  # a folder of the database, not a zone
        ("", "IANA"),
        ("../etc/passwd", "IANA"),
        ("/etc/localtime", "IANA"),
        ("UTC-2", "UTC-02:00"),
        ("UTC+25:00", "UTC-02:00"),
        ("UTC+05:75", "UTC-02:00"),
        ("Mars/Olympus", "IANA"),
        ("Europe/Berlin\x00", "IANA"),
        ("localtime", "IANA"),  # on some systems a link to the computer's own zone
        ("right/Europe/Berlin", "IANA"),  # counts leap seconds
        ("Factory", "IANA"),
        (None, "IANA"),
    ],
)
def test_an_unknown_zone_is_refused_with_a_hint(name, hint):
    with pytest.raises(ValueError, match="time zone") as caught:
        clock.zone(name)
    assert hint in str(caught.value)


def test_no_zone_data_at_all_is_said_plainly(monkeypatch):
    def nothing(_name):
        raise clock.zoneinfo.ZoneInfoNotFoundError("none")

    monkeypatch.setattr(clock.zoneinfo, "ZoneInfo", nothing)
    monkeypatch.setattr(clock.zoneinfo, "available_timezones", set)
    clock.zone.cache_clear()
    try:
        with pytest.raises(ValueError, match="tzdata"):
            clock.zone("Europe/Berlin")
        assert clock.zone("UTC-02:00").utcoffset(None) == timedelta(hours=-2)  # needs no data
    finally:
        clock.zone.cache_clear()


def test_wall_clock_in_each_zone():
    t_utc_s, notes = clock.instants(datetime(2026, 6, 12, 22, 0), ["America/Denver", "America/Phoenix", "UTC+05:45"])
    assert t_utc_s.tolist() == [utc_s("2026-06-13 04:00:00"), utc_s("2026-06-13 05:00:00"), utc_s("2026-06-12 16:15:00")]
    assert notes == []


def test_a_moment_with_offset_is_that_moment_in_every_zone():
    wall = datetime(2026, 6, 12, 22, 0, 0, 250_000, tzinfo=timezone(timedelta(hours=2)))
    t_utc_s, notes = clock.instants(wall, ["America/Denver", "UTC"])
    assert t_utc_s.tolist() == [utc_s("2026-06-12 20:00:00") + 0.25] * 2
    assert notes == []


@pytest.mark.parametrize(
    ("zone_name", "wall"),
    [
        ("Europe/Berlin", datetime(2026, 3, 29, 2, 30)),
        ("Europe/Berlin", datetime(2026, 3, 29, 2, 0)),
        ("America/Denver", datetime(2026, 3, 8, 2, 59, 59)),
        ("Pacific/Apia", datetime(2011, 12, 30, 12, 0)),
        ("Australia/Lord_Howe", datetime(2026, 10, 4, 2, 15)),
    ],
)
def test_a_skipped_hour_is_refused(zone_name, wall):
    with pytest.raises(ValueError, match=zone_name) as caught:
        clock.instants(wall, ["UTC", zone_name])
    assert f"{wall:%Y-%m-%d %H:%M:%S}" in str(caught.value)


@pytest.mark.parametrize(
    ("zone_name", "wall", "first_utc"),
    [
        ("Europe/Berlin", datetime(2026, 10, 25, 2, 30), "2026-10-25 00:30:00"),
        ("America/Denver", datetime(2026, 11, 1, 1, 0), "2026-11-01 07:00:00"),
        ("Australia/Lord_Howe", datetime(2026, 4, 5, 1, 45), "2026-04-04 14:45:00"),
    ],
)
def test_of_a_repeated_hour_the_first_is_taken_and_told(zone_name, wall, first_utc):
    for fold in (0, 1):  # whatever the caller's datetime says
        t_utc_s, notes = clock.instants(wall.replace(fold=fold), ["UTC", zone_name])
        assert t_utc_s[1] == utc_s(first_utc)
        assert len(notes) == 1
        assert zone_name in notes[0]


def test_the_edges_of_skipped_and_repeated_hours_are_plain():
    for wall in (
        datetime(2026, 3, 29, 1, 59, 59),
        datetime(2026, 3, 29, 3, 0),
        datetime(2026, 10, 25, 1, 59, 59),
        datetime(2026, 10, 25, 3, 0),
    ):
        assert clock.instants(wall, ["Europe/Berlin"])[1] == []


def test_text_and_wall_clock_are_inverse():
    rng = np.random.default_rng(7)
    t_utc_s = np.floor(rng.uniform(utc_s("1990-01-01"), utc_s("2053-10-01"), 500))
    for text, t in zip(clock.local_text(t_utc_s, ["Pacific/Chatham"], 0), t_utc_s):
        date, hour, offset = text.split(" ")
        assert clock.instants(datetime.fromisoformat(f"{date}T{hour}{offset}"), ["Pacific/Chatham"])[0][0] == t


def test_moments_out_of_the_calendar_are_refused():
    with pytest.raises(ValueError, match="1 of 2 moments"):
        clock.local_text(np.array([0.0, 1e15]), ["UTC"], 0)
