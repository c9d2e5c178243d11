"""Nights laid side by side, against hours read off a clock by the standard library's zoneinfo or written out by hand."""

from datetime import datetime
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from skyalidade.plan.season import TIMES, clock_changes, season

NAN = np.nan


def utc_s(text, zone):
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).timestamp()


def nights(zone, dates, **told):
    """Nights with local times as texts, None where there is none."""
    made = {"night": np.array(dates, dtype="datetime64[D]"), "lean": np.array(["left"] * len(dates), dtype=object)}
    for name in TIMES:
        made[name] = np.array([NAN if text is None else utc_s(text, zone) for text in told.get(name, [None] * len(dates))])
    for name in ("tilt_deg", "moon_lit", "dark_min"):
        made[name] = np.array(told.get(name, [0.0] * len(dates)))
    return made


def test_hours_upward_from_noon_in_order_of_dates():
    seen = season(
        nights(
            "Europe/Vienna",
            ["2027-06-06", "2027-06-04"],
            sunset=["2027-06-06 21:00", "2027-06-04 20:30"],
            sunrise=["2027-06-07 05:15", "2027-06-05 05:30"],
            t_start=["2027-06-07 00:30", None],
            t_end=["2027-06-07 01:30", None],
            t_utc=["2027-06-07 01:00", None],
        ),
        "Europe/Vienna",
    )
    assert seen.column.tolist() == [0, 2]
    np.testing.assert_allclose(seen.sun_down, [[0, 8.5, 17.5], [2, 9.0, 17.25]], atol=1e-6)
    np.testing.assert_allclose(seen.windows, [[2, 12.5, 13.5]], atol=1e-6)
    np.testing.assert_allclose(seen.best_h, [NAN, 13.0], atol=1e-6)
    assert seen.dark.shape == (0, 3)
    assert seen.noon_h == 12


def test_the_clock_on_the_wall_before_and_after_a_change():
    """Clocks in Vienna go from 02:00 to 03:00 on 2027-03-28 and from 03:00 to 02:00 on 2027-10-31 (European directive 2000/84/EC)."""
    dates = ["2027-03-27", "2027-10-30"]
    dusk, dawn = ["2027-03-27 20:00", "2027-10-30 20:00"], ["2027-03-28 05:00", "2027-10-31 05:00"]
    seen = season(nights("Europe/Vienna", dates, t_dusk=dusk, t_dawn=dawn), "Europe/Vienna")
    np.testing.assert_allclose(seen.dark[:, 1:], [[8.0, 17.0], [8.0, 17.0]], atol=1e-6)
    changes = clock_changes(seen.day, "Europe/Vienna")
    assert [(str(day), shift_h) for day, shift_h in changes] == [("2027-03-27", 1.0), ("2027-10-30", -1.0)]
    assert clock_changes(seen.day, "UTC-02:00") == []


def test_a_clock_far_from_the_sun_begins_elsewhere():
    """A site at 150 E by UTC: the night runs from 08:00 to 20:00."""
    seen = season(nights("UTC", ["2027-06-06"], sunset=["2027-06-06 08:00"], sunrise=["2027-06-06 20:00"]), "UTC")
    assert seen.noon_h == 3
    np.testing.assert_allclose(seen.sun_down, [[0, 5.0, 17.0]], atol=1e-6)


@pytest.mark.parametrize(
    ("rise", "sets", "up"),
    [
        ("2027-06-06 20:00", "2027-06-07 04:00", [[8.0, 16.0]]),
        ("2027-06-07 04:00", "2027-06-06 20:00", [[0.0, 8.0], [16.0, 24.0]]),
        ("2027-06-06 20:00", None, [[8.0, 24.0]]),
        (None, "2027-06-06 20:00", [[0.0, 8.0]]),
        (None, None, []),
    ],
)
def test_moon_up(rise, sets, up):
    seen = season(nights("UTC", ["2027-06-06"], moonrise=[rise], moonset=[sets]), "UTC")
    np.testing.assert_allclose(seen.moon_up[:, 1:], np.array(up).reshape(-1, 2), atol=1e-6)


def test_moon_stays_up_between_its_rise_and_its_set_days_later():
    rise, sets = [None, "2027-06-07 20:00", None, None, None], [None, None, None, "2027-06-09 22:00", None]
    seen = season(nights("UTC", [f"2027-06-{day:02d}" for day in range(6, 11)], moonrise=rise, moonset=sets), "UTC")
    assert sorted(seen.moon_up.tolist()) == [[1, 8.0, 24.0], [2, 0.0, 24.0], [3, 0.0, 10.0]]


def test_a_second_rise_of_the_night_before_does_not_mislead():
    """Risen, set and risen again in the first night, of which only the first rise is told: what follows is a set, so it was up."""
    rise, sets = ["2027-06-06 13:00", None, None], ["2027-06-07 11:30", None, "2027-06-08 20:00"]
    seen = season(nights("UTC", ["2027-06-06", "2027-06-07", "2027-06-08"], moonrise=rise, moonset=sets), "UTC")
    assert sorted(seen.moon_up.tolist()) == [[0, 1.0, 23.5], [1, 0.0, 24.0], [2, 0.0, 8.0]]


def test_after_the_last_rise_the_moon_stays_up():
    seen = season(nights("UTC", ["2027-06-06", "2027-06-07"], moonrise=["2027-06-06 20:00", None]), "UTC")
    assert sorted(seen.moon_up.tolist()) == [[0, 8.0, 24.0], [1, 0.0, 24.0]]


def test_where_one_end_or_both_are_lacking():
    told = {"sunset": [None, "2027-06-07 22:00", None], "dark_min": [1440.0, 100.0, 0.0]}
    seen = season(nights("UTC", ["2027-06-06", "2027-06-07", "2027-06-08"], **told), "UTC")
    np.testing.assert_allclose(seen.sun_down, [[0, 0.0, 24.0], [1, 10.0, 24.0]], atol=1e-6)
    np.testing.assert_allclose(seen.dark, [[0, 0.0, 24.0]], atol=1e-6)
