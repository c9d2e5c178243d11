"""What holds whatever places and times: windows lie in darkness, layers in parts give the rows of the whole, a turn of longitude none else.

`test_properties.py` holds the same of sightlines and alignments. The search for examples starts the same way in every run.
"""

from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.configuration import set_hypothesis_home_dir
from hypothesis.internal.conjecture import providers
from qgis.core import NULL, QgsGeometry, QgsPoint
from qgis.PyQt.QtCore import QDate, QDateTime

set_hypothesis_home_dir(Path(__file__).resolve().parents[2] / "build" / "hypothesis")
providers._get_local_constants = providers.Constants  # numbers that it reads in modules loaded so far differ from run to run

TOL_S = 1.01  # times are written as whole seconds, which may round to either side
TOL = 1e-4  # of degrees and parts of them; blocks of other sizes are summed in another order
TOL_M, TOL_MIN = 0.01, 0.02
MINUTES = ("minutes", "dark_min", "clear_min")
IDS = ("site_id", "camera_id", "subject_id", "path_id")  # features are numbered anew
BODIES = st.sampled_from(["core", "arch", "sun", "moon", "pole", "star", "galactic"])
STAR = {"STAR": "80,61", "GALACTIC_LON": 78.0}
# exact in binary, so that a turn is added without rounding; off 180°, where the side tells the date
LONGITUDES = st.integers(-179 << 16, 179 << 16).map(lambda number: number / (1 << 16))
LATITUDES = st.sampled_from([90.0, -90.0, 0.0, 66.56, -66.56, 48.0]) | st.floats(-90, 90)
PLACES = st.lists(st.tuples(LONGITUDES, LATITUDES), min_size=2, max_size=5, unique=True)
NIGHTS = st.dates(date(1990, 2, 1), date(2053, 9, 1))


def examples(count):
    return settings(max_examples=count, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))


def plain(value):
    if value is None or value == NULL:
        return None
    if isinstance(value, QDateTime):
        return value.toUTC().toMSecsSinceEpoch() / 1000.0
    return date(value.year(), value.month(), value.day()) if isinstance(value, QDate) else value


def rows_of(outcome, name="OUTPUT"):
    return [{field: plain(value) for field, value in row.items()} for row in outcome.rows(name)]


def of_layer(layer, places, turn_deg=0.0, height_m=100.0):
    """A layer of named points."""
    return layer([(QgsGeometry(QgsPoint(lon + turn_deg, lat, height_m)), f"{lon} {lat}") for lon, lat in places], fields=("name:string",))


def key(row):
    """What tells a row of a place from all others; times to the minute, since a second may round to either side."""
    names = ("site", "camera", "subject", "path", "body", "night", "month", "order")
    t_utc_s = row.get("t_utc") or row.get("t_start") or 0.0
    return [str(row.get(name)) for name in names], round(t_utc_s / 60.0), row.get("bearing_deg") or 0.0


def assert_same(mine, theirs):
    assert len(mine) == len(theirs)
    for one, other in zip(sorted(mine, key=key), sorted(theirs, key=key)):
        for name, value in one.items():
            if name in IDS or name.endswith(("_loc", "_local")):
                continue
            if isinstance(value, float) and other[name] is not None:
                limit = (
                    TOL_S if value > 1e8 else TOL_M if name.endswith("_m") else 0.1 if name in ("minutes", "dark_min", "clear_min") else TOL
                )
                off = abs(value - other[name])
                assert min(off, abs(off - 360.0)) <= limit, (name, value, other[name], one)
            else:
                assert value == other[name], (name, value, other[name], one)


def nights(first, count=3):
    return {"FIRST_NIGHT": str(first), "LAST_NIGHT": str(first + timedelta(days=count))}


def times(first):
    return {"START": f"{first}T18:00Z", "END": f"{first + timedelta(days=1)}T06:00Z", "STEP": 45}


def asked_of(name, first, body):
    """Parameters beside the layers of places."""
    body_of = {"BODIES": [body]} if name == "sky_positions" else {"BODY": body}
    return {
        "night_windows": {**nights(first), **body_of, **STAR, "SITE_NAME": "name", "MOON": "any", "SUN_LIMIT": -6.0, "ALT_MIN": 0.0},
        "sky_positions": {**times(first), **body_of, **STAR, "SITE_NAME": "name"},
        "framing": {"TIME": f"{first}T22:00Z", "BODIES": [body], **STAR, "CAMERA_NAME": "name", "SUBJECT_NAME": "name"},
        "shadow_track": {**times(first), **body_of, **STAR, "SUBJECT_NAME": "name", "SUBJECT_HEIGHT": 40.0},
    }[name]


def inputs_of(name, layer, places, turn_deg=0.0):
    if name == "framing":  # every camera with a subject of its own, a kilometre or two north or south of it
        there = [(lon, lat + 0.015 if lat < 0 else lat - 0.015) for lon, lat in places]
        pair = {"CAMERAS": of_layer(layer, places, turn_deg), "SUBJECTS": of_layer(layer, there, turn_deg, 120.0)}
        return {**pair, "MAX_DISTANCE": 3000.0}
    return {("SUBJECTS" if name == "shadow_track" else "SITES"): of_layer(layer, places, turn_deg)}


@pytest.mark.parametrize("name", ["night_windows", "sky_positions", "framing", "shadow_track"])
def test_layers_in_parts_and_a_turn_away_give_the_rows_of_the_whole(run, layer, name):
    total = []

    @examples(6)
    @given(PLACES, NIGHTS, BODIES, st.sampled_from([360.0, -360.0]))
    def each(places, first, body, turn_deg):
        asked = asked_of(name, first, body)
        whole = rows_of(run(name, {**inputs_of(name, layer, places), **asked}))
        cut = len(places) // 2
        parts = [run(name, {**inputs_of(name, layer, some), **asked}) for some in (places[:cut], places[cut:])]
        if name != "framing":  # cameras of one part may see subjects of another
            assert_same(whole, [row for part in parts for row in rows_of(part)])
        assert_same(whole, rows_of(run(name, {**inputs_of(name, layer, places, turn_deg), **asked})))
        total.extend(whole)

    each()
    assert len(total) > 15


def test_windows_lie_in_darkness_and_in_their_order(run, layer):
    windows = []

    @examples(10)
    @given(PLACES, NIGHTS, BODIES, st.sampled_from(["any", "down", "down_or_thin"]))
    def each(places, first, body, moon):
        asked = {**asked_of("night_windows", first, body), "MOON": moon, "WINDOWS": "memory:"}
        out = run("night_windows", {"SITES": of_layer(layer, places), **asked})
        rows, parts = rows_of(out), rows_of(out, "WINDOWS")
        if all(abs(lat) < 80.0 for _, lat in places):  # at a pole whose clocks change at solar noon a date is skipped
            assert len(rows) == 4 * len(places)
        of_night = {}
        for part in parts:
            of_night.setdefault((part["site"], part["night"]), []).append(part)
        for row in rows:
            assert (row["minutes"] is None) == (row["reason"] is not None)
            if body != "sun":  # for which there is no darkness
                assert 0.0 <= row["clear_min"] <= row["dark_min"] + 0.05 <= 1441.0
            mine = of_night.get((row["site"], row["night"]), [])
            assert bool(mine) == (row["minutes"] is not None)
            if not mine:
                continue
            assert row["minutes"] == pytest.approx(max(part["minutes"] for part in mine), abs=0.02)
            if body not in ("sun", "moon"):
                assert sum(part["minutes"] for part in mine) <= row["clear_min"] + 0.1
        for row in parts + [row for row in rows if row["minutes"] is not None]:
            assert row["t_start"] <= row["t_utc"] <= row["t_end"]
            assert abs(row["t_end"] - row["t_start"] - 60.0 * row["minutes"]) <= 2.02  # two roundings, and a leap second now and then
            assert 0.0 <= row["az_deg"] < 360.0
            assert -1e-6 <= row["alt_deg"] <= 90.0 or body == "arch"
        for row in rows:
            dusk, dawn = row["t_dusk"], row["t_dawn"]
            if row["minutes"] is not None and body != "sun" and dusk is not None and dawn is not None and dusk < dawn:
                assert dusk - TOL_S <= row["t_start"] <= row["t_end"] <= dawn + TOL_S
        windows.extend(parts)

    each()
    assert len(windows) > 50


def test_standpoints_of_layers_in_parts_and_where_they_look(run, layer):
    total = []

    @examples(8)
    @given(st.integers(-170, 170), st.integers(-75, 75), st.integers(0, 359), st.integers(0, 2**16))
    def each(lon, lat, bearing_deg, seed):
        subjects = [(lon + ((seed >> i) % 5) / 512, lat + ((seed >> 2 * i) % 7) / 512) for i in range(3)]
        ends = [(f"LineString({lon - 0.02 + i / 200} {lat - 0.021}, {lon + 0.011} {lat + 0.02 - i / 300})", f"path {i}") for i in range(3)]
        asked = {"BEARING": float(bearing_deg), "SUBJECT_NAME": "name", "PATH_NAME": "name", "POINTS": "memory:", "STRETCHES": "memory:"}

        def found(some_subjects, some_paths):
            paths = layer(some_paths, fields=("name:string",), kind="LineString")
            out = run("standpoints", {"SUBJECTS": of_layer(layer, some_subjects), "PATHS": paths, **asked})
            return rows_of(out, "POINTS"), rows_of(out, "STRETCHES")

        whole = found(subjects, ends)
        for parts in ([(subjects[:1], ends), (subjects[1:], ends)], [(subjects, ends[:2]), (subjects, ends[2:])]):
            apart = [found(*part) for part in parts]
            for number in range(2):
                assert_same(whole[number], [row for part in apart for row in part[number]])
        for row in whole[0]:
            assert abs((row["bearing_deg"] - bearing_deg - row["miss_deg"] + 180.0) % 360.0 - 180.0) < 1e-9
            assert abs(row["miss_deg"]) <= 0.5 + 1e-6
        total.extend(whole[0])

    each()
    assert len(total) > 5
