"""Seasons as columns of nights: the arranging by hand, and every hour of whole charts against Skyfield's own altitudes."""

from datetime import datetime, timezone
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from skyfield import almanac
from skyfield_places import Observer, kernel, target, times

from skyalidade.plan import season_chart
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.night_windows import Places, find_night_windows
from skyalidade.plan.season_chart import Stretches, Wall, chart_of, cut, joined, stretches, years
from skyalidade.plan.targets import target as our_target

DAY_S, HOUR_S = 86400.0, 3600.0
NAN = np.nan
GRAZE_DEG = 0.002  # a second of the Sun's or Moon's climb, and what the almanacs' 0.8333 leaves of 50'
MOON_RADIUS_KM = 1737.4


def utc(text):
    return datetime.fromisoformat(text).replace(tzinfo=timezone.utc).timestamp()


def rows_at(lon, lat, zone_name, first, last, body="core", **asked):
    places = Places(np.array([lon]), np.array([lat]), np.array([0.0]), [zone_name], np.array([0]))
    nights = (np.array([night], "datetime64[D]") for night in (first, last))
    ((table, _),) = find_night_windows(places, our_target(body), *nights, Conditions(**{"moon": "down", **asked}))
    return table


def year_at(lon, lat, zone_name, first="2027-01-01", last="2027-12-31", **asked):
    return chart_of(rows_at(lon, lat, zone_name, first, last, **asked), zone_name, lon, lat)


def holds(boxes, column, hour):
    return bool(((boxes.column == column) & (boxes.low_h <= hour) & (hour < boxes.high_h)).any())


# arranging


def test_cut_at_edges():
    source, start, end = cut(np.array([0.0, 10.0]), np.array([5.0, 30.0]), np.array([2.0, 12.0, 20.0, 30.0]))
    assert source.tolist() == [0, 0, 1, 1, 1]
    assert start.tolist() == [0, 2, 10, 12, 20]
    assert end.tolist() == [2, 5, 12, 20, 30]


def test_cut_at_nothing():
    source, start, end = cut(np.array([0.0]), np.array([5.0]), np.array([]))
    assert (source.tolist(), start.tolist(), end.tolist()) == ([0], [0], [5])


@pytest.mark.parametrize(
    ("begin", "end", "always", "held"),
    [
        (10, 20, False, [(10, 20)]),
        (20, 10, False, [(0, 10), (20, 86400)]),  # it holds at both noons, not between
        (10, NAN, False, [(10, 86400)]),
        (NAN, 10, False, [(0, 10)]),
        (NAN, NAN, False, []),
        (NAN, NAN, True, [(0, 86400)]),
        (10, 20, True, [(10, 20)]),  # what a night tells counts
    ],
)
def test_one_night(begin, end, always, held):
    found = stretches(np.array([begin], float), np.array([end], float), np.array([0.0]), np.array([always]))
    assert list(zip(found.start.tolist(), found.end.tolist())) == held


def test_stretches_that_meet_are_one():
    noons = DAY_S * np.arange(3)
    found = stretches(np.array([50.0, NAN, NAN]), np.array([NAN, NAN, DAY_S * 2 + 7]), noons, np.array([False, True, False]))
    assert (found.start.tolist(), found.end.tolist()) == ([50], [2 * DAY_S + 7])


def test_joined_in_any_order():
    found = joined(np.array([100.0, 0.0, 10.0, 200.0]), np.array([150.0, 50.0, 20.0, 250.0]))
    assert (found.start.tolist(), found.end.tolist()) == ([0, 100, 200], [50, 150, 250])
    assert joined(np.array([]), np.array([])).start.size == 0


def test_within():
    found = Stretches(np.array([0.0, 40.0]), np.array([30.0, 50.0])).within(Stretches(np.array([10.0, 25.0]), np.array([20.0, 45.0])))
    assert list(zip(found.start, found.end)) == [(10, 20), (25, 30), (40, 45)]


# the clock on the wall: summer time by Directive 2000/84/EC, articles 2 and 3, at 01:00 UTC on the last Sundays of March and October


def wall(zone_name, first, count, lon=0.0):
    noon_utc_s = utc(f"{first}T12:00") - 240.0 * lon + DAY_S * np.arange(count)
    return Wall(zone_name, np.datetime64(first, "D"), count, noon_utc_s)


def boxes(walls, start, end):
    found = walls.boxes(Stretches(np.array([utc(start)]), np.array([utc(end)])))
    return list(zip(found.column.tolist(), found.low_h.tolist(), found.high_h.tolist()))


def test_the_hour_that_clocks_skip_is_empty():
    walls = wall("Europe/Madrid", "2027-03-20", 14)
    assert boxes(walls, "2027-03-28T00:00", "2027-03-28T03:00") == [(7, 13, 14), (7, 15, 17)]
    assert walls.turns().tolist() == [[7], [1]]


def test_the_hour_that_clocks_repeat_is_there_twice():
    walls = wall("Europe/Madrid", "2027-10-25", 14)
    assert boxes(walls, "2027-10-31T00:00", "2027-10-31T02:00") == [(5, 14, 15), (5, 14, 15)]
    assert walls.turns().tolist() == [[5], [-1]]


def test_a_stretch_over_noon_goes_on_at_the_foot_of_the_next_column():
    assert boxes(wall("UTC", "2027-06-01", 3), "2027-06-01T20:00", "2027-06-02T15:00") == [(0, 8, 24), (1, 0, 3)]


def test_what_lies_beyond_the_chart_is_left_out():
    assert boxes(wall("UTC", "2027-06-01", 1), "2027-05-31T20:00", "2027-06-03T15:00") == [(0, 0, 24)]


@pytest.mark.parametrize(
    ("zone_name", "lon", "foot"),
    [("Europe/Madrid", -8.0, 12), ("Asia/Shanghai", 74.0, 15), ("UTC", 138.0, 3), ("UTC", -155.0, 22), ("Asia/Shanghai", 80.0, 12)],
)
def test_the_foot_is_noon_unless_the_clock_is_far_from_the_sun(zone_name, lon, foot):
    """12:00 where the Sun's noon stands within 3 h of it on the clock: 15 degrees an hour; 74 E keeps the clock of 120 E here."""
    assert wall(zone_name, "2027-01-01", 30, lon).foot_h == foot


@pytest.mark.parametrize(
    ("first", "shown"),
    [
        ("2027-01-01", {"2027-12-31": 0, "2028-01-01": 1, "2028-12-31": 1}),
        ("2026-11-25", {"2027-11-24": 0, "2027-11-25": 1, "2028-11-24": 1, "2028-11-25": 2}),
        ("2028-02-29", {"2029-02-28": 0, "2029-03-01": 1}),
    ],
)
def test_years_from_the_first_night_on(first, shown):
    nights = np.arange(first, "2029-12-31", dtype="datetime64[D]")
    picture = dict(zip(nights.astype(str).tolist(), years(nights).tolist()))
    assert {night: picture[night] for night in shown} == shown
    assert np.bincount(years(nights)).max() <= 366


# whole charts

SITES = [
    (-6.0, 37.0, "Europe/Madrid"),
    (149.0, -33.0, "Australia/Sydney"),
    (24.5, 69.6, "Europe/Oslo"),  # midnight Sun, and a Moon that stays up or down
    (0.0, -75.0, "UTC"),  # the Sun stays down all day
    (0.0, -88.0, "UTC"),  # and it stays dark
    (-179.9, 68.6, "Asia/Anadyr"),  # an eastern clock in western longitude
    (-157.4, 1.9, "Pacific/Kiritimati"),  # 14 h ahead
    (74.5, 37.5, "Asia/Shanghai"),  # the Sun's noon after 15:00
]


@pytest.mark.parametrize(("lon", "lat", "zone_name"), SITES)
def test_every_box_by_skyfield(lon, lat, zone_name, record_property):
    """At random minutes of the clock: Sun down, dark and Moon up are drawn where Skyfield's altitudes say so, and nowhere else."""
    chart = year_at(lon, lat, zone_name)
    rng = np.random.default_rng(7)
    column, hour = rng.integers(1, chart.told.size - 1, 3000), rng.uniform(0.0, 24.0, 3000)
    wall_s = chart.nights[column].astype("datetime64[s]").astype(float) + HOUR_S * (chart.foot_h + hour)
    local = [datetime.fromtimestamp(second, tz=timezone.utc).replace(tzinfo=None) for second in wall_s.tolist()]
    t_utc_s = np.array([moment.replace(tzinfo=ZoneInfo(zone_name)).timestamp() for moment in local])
    both = [[moment.replace(tzinfo=ZoneInfo(zone_name), fold=fold).utcoffset() for moment in local] for fold in (0, 1)]
    once = np.array([first == second for first, second in zip(*both)])  # neither skipped nor shown twice
    seen = Observer(lon, lat, 0.0, times(t_utc_s))
    sun_deg, (moon_deg, _, moon_km) = seen.altaz(target("sun"))[0], seen.altaz(target("moon"))
    limb_deg = moon_deg + np.degrees(np.arcsin(MOON_RADIUS_KM / moon_km)) + 34.0 / 60.0
    sun_down_deg = -50.0 / 60.0 - sun_deg
    moonlit_deg = np.minimum(limb_deg, sun_down_deg)
    for held, above_deg in ((chart.sun_down, sun_down_deg), (chart.dark, -18.0 - sun_deg), (chart.moon, moonlit_deg)):
        drawn = np.array([holds(held, *place) for place in zip(column, hour)])
        clear = once & (np.abs(above_deg) > GRAZE_DEG)
        record_property("chart_minutes", int(clear.sum()))
        assert clear.sum() > 2900
        assert np.flatnonzero((drawn != (above_deg > 0.0)) & clear).tolist() == []


def test_lit_part_by_skyfield():
    """Skyfield's own fraction, at the midnight of the Sun; 0.01: nights have one number, and two minutes of a day are 0.0001."""
    chart = year_at(-6.0, 37.0, "Europe/Madrid")
    midnight = utc("2027-01-01T12:00") + 240.0 * 6.0 + DAY_S * (np.arange(365) + 0.5)
    assert chart.moon_lit == pytest.approx(almanac.fraction_illuminated(kernel(), "moon", times(midnight)), abs=0.001)


def test_new_and_full_moons_by_skyfield():
    """The middle of the night is at most half a day from the moment."""
    chart = year_at(-6.0, 37.0, "Europe/Madrid")
    t, phase = almanac.find_discrete(*times(np.array([utc("2027-01-03T00:00"), utc("2027-12-29T00:00")])), almanac.moon_phases(kernel()))
    moments = np.array([moment.utc_datetime().timestamp() for moment in t])
    for columns, wanted in zip(chart.new_and_full, (0, 2)):
        middle = utc("2027-01-01T12:00") + 240.0 * 6.0 + DAY_S * (columns + 0.5)
        assert middle == pytest.approx(moments[phase == wanted], abs=0.55 * DAY_S)


@pytest.mark.parametrize("limit", [-18.0, -12.0])
def test_the_suns_limit_is_found_from_the_rows(limit):
    assert year_at(-6.0, 37.0, "Europe/Madrid", sun_limit_deg=limit).sun_limit_deg == pytest.approx(limit, abs=1e-4)


def test_windows_stand_where_the_rows_tell():
    rows = rows_at(-6.0, 37.0, "Europe/Madrid", "2027-01-01", "2027-12-31")
    chart = chart_of(rows, "Europe/Madrid", -6.0, 37.0)
    has = rows["start_loc"] != None  # noqa: E711  each element is compared
    assert np.unique(chart.window.column).tolist() == np.flatnonzero(has).tolist()
    for name, edge in (("start_loc", chart.window.low_h), ("end_loc", chart.window.high_h)):
        told = [(int(text[11:13]) + 12) % 24 + int(text[14:16]) / 60 + int(text[17:19]) / 3600 for text in rows[name][has]]
        assert edge == pytest.approx(told, abs=0.6 / 3600)  # half a second of rounding
    assert chart.best[0].tolist() == np.flatnonzero(has).tolist()
    assert chart.best[2].tolist() == rows["tilt_deg"][has].tolist()
    assert set(chart.best[3].tolist()) == {-1.0, 1.0}


def test_nights_that_are_not_told_stay_empty():
    rows = rows_at(-6.0, 37.0, "Europe/Madrid", "2027-06-01", "2027-06-30")
    some = np.r_[0:10, 15:30]
    chart = chart_of({name: column[some] for name, column in rows.items()}, "Europe/Madrid", -6.0, 37.0)
    assert np.flatnonzero(~chart.told).tolist() == [10, 11, 12, 13, 14]
    for held in (chart.sun_down, chart.dark, chart.moon, chart.window):
        assert not np.isin(held.column, [10, 11, 12, 13, 14]).any()
    assert chart.moon_lit.size == 30


def test_a_body_without_a_limit_of_darkness_has_no_dark_hours():
    chart = year_at(-6.0, 37.0, "Europe/Madrid", body="moon", last="2027-02-28")
    assert chart.dark.column.size == 0
    assert np.isnan(chart.sun_limit_deg)


def test_one_night_alone():
    chart = year_at(-6.0, 37.0, "Europe/Madrid", "2027-06-06", "2027-06-06")
    assert chart.told.tolist() == [True]
    assert [columns.size for columns in chart.new_and_full] == [0, 0]


def test_moments_are_those_of_the_rows():
    assert set(season_chart.MOMENTS) <= rows_at(0.0, 40.0, "UTC", "2027-06-06", "2027-06-06").keys()
