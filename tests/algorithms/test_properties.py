"""What holds of every run in QGIS, on small layers that hypothesis makes up: rows of parts and of the whole, ranges, nulls, clocks.

What holds of the numbers themselves is proven without QGIS in tests/plan/test_properties.py; here it is what layers become and rows tell.
"""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.configuration import set_hypothesis_home_dir
from hypothesis.internal.conjecture import providers
from qgis.core import NULL, QgsGeometry, QgsPoint
from qgis.PyQt.QtCore import QDate, QDateTime

from skyalidade.ground import geodesic
from skyalidade.names import ALIGNMENTS_FIELDS, BODIES, SIGHTLINES_FIELDS, SKY_POSITIONS_FIELDS, UNMET_FIELDS

set_hypothesis_home_dir(Path(__file__).resolve().parents[2] / "build" / "hypothesis")
# Hypothesis also tries numbers that it reads in the modules loaded so far: others in a run of all tests than in one of these alone.
providers._get_local_constants = providers.Constants

DAY_S = 86400.0
MODEL = datetime(2025, 1, 1, tzinfo=timezone.utc).timestamp(), datetime(2030, 1, 1, tzinfo=timezone.utc).timestamp()  # WMM2025's years
STAR, GALACTIC_LON = "80,61", 78.0
TOLERANCE_DEG, SUN_LIMIT_DEG = 20.0, -6.0
SECOND_DEG = 20.0 / 3600  # times are written to the second, in which a sky turns 15"


def examples(count):
    """The same examples in every run, without a clock on each; layers of all of them live until the test ends."""
    return settings(max_examples=count, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))


def is_null(value):
    return value is None or value == NULL


def plain(value):
    """A value of a row as Python has it."""
    if is_null(value):
        return None
    if isinstance(value, QDateTime):
        return value.toUTC().toMSecsSinceEpoch() / 1000.0
    return date(value.year(), value.month(), value.day()) if isinstance(value, QDate) else value


def rows_of(outcome, name="OUTPUT"):
    return [{field: plain(value) for field, value in row.items()} for row in outcome.rows(name)]


# Exact in binary, so that a turn is added without rounding
LONGITUDES = st.integers(-180 << 20, 180 << 20).map(lambda number: number / (1 << 20)) | st.sampled_from([180.0, -180.0, 0.0])
LATITUDES = st.sampled_from([90.0, -90.0, 0.0, 66.56, -66.56]) | st.floats(-90, 90)
ANYWHERE = st.tuples(LONGITUDES, LATITUDES)  # at sea mostly
# Whole degrees inland, under many clocks: the American west, Brazil, central Europe, southern Africa, India, Australia
LAND = ((-112, -100, 33, 46), (-60, -45, -20, -6), (5, 24, 45, 52), (16, 29, -28, 0), (74, 84, 16, 27), (120, 148, -31, -20))
INLAND = st.sampled_from(LAND).flatmap(lambda box: st.tuples(st.integers(*box[:2]).map(float), st.integers(*box[2:]).map(float)))
HEIGHTS = st.sampled_from([0.0, np.nan]) | st.floats(0, 3000)
NIGHTS = (
    st.dates(date(1990, 1, 9), date(2053, 9, 20))
    | st.dates(date(2024, 12, 25), date(2030, 1, 5))
    | st.dates(date(2025, 6, 1), date(2029, 6, 1))
)


@dataclass(frozen=True)
class Scene:
    """Cameras and subjects as (name, lon, lat, z), and the first night."""

    cameras: tuple
    subjects: tuple
    first: date

    def turned(self, of_cameras_deg, of_subjects_deg):
        return replace(
            self,
            cameras=tuple((name, lon + of_cameras_deg, lat, z) for name, lon, lat, z in self.cameras),
            subjects=tuple((name, lon + of_subjects_deg, lat, z) for name, lon, lat, z in self.subjects),
        )


@st.composite
def scenes(draw):
    """Three subjects about each of a few cameras, all on one side or the other of whatever line is near."""
    cameras, subjects = [], []
    for number in range(draw(st.integers(1, 3))):
        (lon, lat), z = draw(INLAND | ANYWHERE), draw(HEIGHTS)
        cameras.append((f"camera {number}", lon, lat, z))
        bearing, dist_m = draw(st.floats(0, 359)), draw(st.floats(20, 20000))
        for turn in (0.0, 110.0, 230.0):
            there = geodesic.direct(lon, lat, bearing + turn, dist_m)
            exact = round(float(there[0]) * (1 << 20)) / (1 << 20)
            subjects.append((f"subject {number} {turn:.0f}", exact, float(there[1]), draw(HEIGHTS)))
    return Scene(tuple(cameras), tuple(subjects), draw(NIGHTS))


def named(scene, layer):
    """The layers of a scene as parameters."""

    def points(places):
        return layer([(QgsGeometry(QgsPoint(lon, lat, z)), name) for name, lon, lat, z in places], fields=("name:string",))

    names = {"CAMERA_NAME": "name", "SUBJECT_NAME": "name"}
    return {"CAMERAS": points(scene.cameras), "SUBJECTS": points(scene.subjects), "SUBJECT_HEIGHT": 12.0, **names}


def nights(scene, first=0, last=3):
    return {"FIRST_NIGHT": str(scene.first + timedelta(days=first)), "LAST_NIGHT": str(scene.first + timedelta(days=last))}


ASKED = {"STAR": STAR, "GALACTIC_LON": GALACTIC_LON, "AZ_TOLERANCE": TOLERANCE_DEG, "SUN_LIMIT": SUN_LIMIT_DEG, "MOON": "any"}
SOME_BODIES = st.lists(st.sampled_from(list(BODIES)), min_size=2, max_size=4, unique=True)


def in_order(rows):
    return sorted(rows, key=lambda row: (row["camera"], row["subject"], row.get("body", ""), row.get("t_utc", 0.0)))


def assert_same_rows(mine, theirs, but=("camera_id", "subject_id")):
    """Every column of every row is the same, but for the ids of features that were numbered anew."""
    assert len(mine) == len(theirs)
    for one, other in zip(in_order(mine), in_order(theirs)):
        for name, value in one.items():
            if name in but:
                continue
            if isinstance(value, float) and other[name] is not None:
                # Times round to seconds on either side of a half; azimuths meet at north.
                off = abs(value - other[name])
                limit = 1.0 if name.startswith("t_") else 1e-4
                assert min(off, abs(off - 360.0)) <= limit, (name, value, other[name])
            elif not name.endswith(("_local", "_loc")):  # the same times as texts
                assert value == other[name], (name, value, other[name])


# null: where, and why


def without_dem(names):
    """No DEM is given, so nothing is known of the ground between."""
    return {name: (lambda row: True) for name in ("visible", "sight", "block_m", "clear_m", "hidden_m", "ground_deg") if name in names}


def outside_magnetic_model(t_utc_s):
    return not MODEL[0] <= t_utc_s <= MODEL[1]


def band_is_down(row):
    return row["core_alt"] < 0.0 or row["core_alt"] > 88.99  # within a degree of the zenith the band has no tilt


SKY_NULLS = {
    "semi_deg": lambda row: row["body"] not in ("sun", "moon"),
    "tilt_deg": band_is_down,
    "lean": band_is_down,
    "moon_side": lambda row: row["moon_deg"] < -0.8,  # upper limb at -34', half the disc 14.7' to 16.8'
    "moon_mag": lambda row: row["body"] in ("sun", "moon") or row["sun_deg"] > -12.0 or row["alt_deg"] < 0.0 or row["moon_sep"] < 0.28,
    "mag_deg": lambda row: outside_magnetic_model(row["t_utc"]),
    "decl_deg": lambda row: outside_magnetic_model(row["t_utc"]),
}


def assert_nulls(row, names, rules):
    """Null exactly where a rule says so; within a quarter degree of its limits the side of the Moon may be either."""
    assert list(row) == list(names)
    for name in names:
        expected = rules[name](row) if name in rules else False
        if name == "moon_side" and -0.87 < row["moon_deg"] < -0.8:
            continue
        if name in ("tilt_deg", "lean") and row["core_alt"] > 88.99:
            continue
        assert (row[name] is None) == expected, (name, row)
        assert row[name] != ""


RANGES = {
    **dict.fromkeys(("bearing_deg", "back_deg", "mag_deg", "az_deg", "moon_az", "apex_az", "apex_lon"), (0.0, 359.9999999999999)),
    **dict.fromkeys(("alt_deg", "sun_deg", "moon_deg", "core_alt", "base_alt_deg", "top_alt_deg"), (-90.0, 90.0)),
    **dict.fromkeys(("tilt_deg", "apex_deg"), (0.0, 90.0)),
    **dict.fromkeys(("decl_deg", "d_az_deg"), (-180.0, 180.0)),
    **dict.fromkeys(("width_deg", "height_deg", "moon_sep"), (0.0, 180.0)),
    "moon_lit": (0.0, 1.0),
    "semi_deg": (0.24, 0.30),
}


def assert_ranges(row):
    for name, (low, high) in RANGES.items():
        if row.get(name) is not None:
            assert low <= row[name] <= high, (name, row[name])


def offset_s(zone_name, t_utc_s):
    if zone_name.startswith("UTC"):
        hours, minutes = int(zone_name[3:6] or 0), int(zone_name[7:9] or 0)
        return 3600 * hours + (-60 if "-" in zone_name else 60) * minutes
    return datetime.fromtimestamp(t_utc_s, timezone.utc).astimezone(ZoneInfo(zone_name)).utcoffset().total_seconds()


def assert_reads_back(text, t_utc_s, zone_name):
    read = datetime.fromisoformat(text.replace(" +", "+").replace(" -", "-"))
    assert read.timestamp() == t_utc_s
    assert read.utcoffset().total_seconds() == offset_s(zone_name, t_utc_s)


# sightlines


def test_sightlines_of_swapped_layers_have_each_others_bearings(run, layer):
    lines = []

    @examples(15)
    @given(scenes())
    def each(scene):
        there = rows_of(run("sightlines", named(scene, layer)))
        back = rows_of(run("sightlines", named(replace(scene, cameras=scene.subjects, subjects=scene.cameras), layer)))
        back = [{**row, "camera": row["subject"], "subject": row["camera"]} for row in back]
        assert len(there) == len(back)
        for one, other in zip(in_order(there), in_order(back)):
            assert abs(one["dist_m"] - other["dist_m"]) < 1e-6
            for mine, theirs in (("bearing_deg", "back_deg"), ("back_deg", "bearing_deg")):
                assert abs((one[mine] - other[theirs] + 180.0) % 360.0 - 180.0) < 1e-6
        lines.extend(there)

    each()
    assert len(lines) > 50


def test_sightlines_lie_in_their_ranges_and_are_null_for_a_reason(run, layer):
    rules = {
        **without_dem(SIGHTLINES_FIELDS),
        "grid_deg": lambda row: True,  # the result is in a geographic CRS
        **{name: (lambda row: row["heights"] == "level") for name in ("cam_z_m", "base_z_m", "top_z_m")},
    }
    heights = []

    @examples(40)
    @given(scenes())
    def each(scene):
        day_s = datetime(scene.first.year, scene.first.month, scene.first.day, tzinfo=timezone.utc).timestamp()
        compass = {name: (lambda row: outside_magnetic_model(day_s)) for name in ("mag_deg", "decl_deg")}
        for row in rows_of(run("sightlines", {**named(scene, layer), "SUBJECT_WIDTH": 3.0, "DATE": str(scene.first)})):
            assert_nulls(row, SIGHTLINES_FIELDS, {**rules, **compass})
            assert_ranges(row)
            heights.append((row["heights"], row["decl_deg"] is None))

    each()
    assert {("z", True), ("z", False), ("level", True), ("level", False)} <= set(heights)


# alignments


def test_alignments_lie_in_their_ranges_and_are_null_for_a_reason(run, layer):
    found = []

    @examples(20)
    @given(scenes(), SOME_BODIES)
    def each(scene, bodies):
        for row in rows_of(run("alignments", {**named(scene, layer), **nights(scene), **ASKED, "BODIES": bodies})):
            assert_nulls(row, ALIGNMENTS_FIELDS, {**without_dem(ALIGNMENTS_FIELDS), **SKY_NULLS})
            assert_ranges(row)
            assert row["t_start"] <= row["t_utc"] <= row["t_end"]
            assert abs(row["t_end"] - row["t_start"] - 60.0 * row["minutes"]) <= 2.01  # two roundings, and a leap second now and then
            level = np.cos(np.radians(max(row["alt_deg"], 0.0)))
            assert (abs(row["d_az_deg"]) - TOLERANCE_DEG) * level < 1e-4
            assert row["body"] == "sun" or row["sun_deg"] < SUN_LIMIT_DEG + 1e-4
            found.append((row["body"], row["decl_deg"] is None))

    each()
    assert len({body for body, _ in found}) >= 5
    assert {without for _, without in found} == {True, False}


def test_alignments_belong_to_a_night_that_was_asked_for_and_tell_local_time(run, layer):
    zones = set()

    @examples(15)
    @given(scenes(), SOME_BODIES)
    def each(scene, bodies):
        longitudes = {name: lon for name, lon, _, _ in scene.cameras}
        for row in rows_of(run("alignments", {**named(scene, layer), **nights(scene), **ASKED, "BODIES": bodies})):
            noon = 43200.0 - 240.0 * longitudes[row["camera"]]
            noon += DAY_S * np.floor((row["t_utc"] - noon) / DAY_S)
            begins = datetime.fromtimestamp(noon, timezone.utc) + timedelta(seconds=offset_s(row["tz"], noon))
            assert row["night"] == begins.date()
            assert scene.first <= row["night"] <= scene.first + timedelta(days=3)
            for utc, local in (("t_utc", "t_local"), ("t_start", "start_loc"), ("t_end", "end_loc")):
                assert_reads_back(row[local], row[utc], row["tz"])
            zones.add(row["tz"])

    each()
    assert len(zones) >= 5


def test_unmet_is_every_pair_and_body_without_a_row(run, layer):
    counts = np.zeros(2, int)

    @examples(15)
    @given(scenes(), SOME_BODIES)
    def each(scene, bodies):
        asked = {**named(scene, layer), **nights(scene), **ASKED, "BODIES": bodies}
        out = run("alignments", {**asked, "UNMET": "memory:"})
        met = {(row["camera"], row["subject"], row["body"]) for row in rows_of(out)}
        unmet = [(row["camera"], row["subject"], row["body"]) for row in rows_of(out, "UNMET")]
        pairs = {(row["camera"], row["subject"]) for row in rows_of(run("sightlines", named(scene, layer)))}
        assert len(set(unmet)) == len(unmet)
        assert met.isdisjoint(unmet)
        assert met | set(unmet) == {(*pair, body) for pair in pairs for body in bodies}
        for row in rows_of(out, "UNMET"):
            nowhere = "is never seen" in row["reason"] or "stays in the zenith" in row["reason"]
            assert_nulls(row, UNMET_FIELDS, {name: (lambda row, null=nowhere: null) for name in ("az_from", "az_to")})
        counts[:] += len(met), len(unmet)

    each()
    assert (counts > 30).all()


def test_alignments_are_the_same_a_turn_of_longitude_away(run, layer):
    rows = []

    @examples(10)
    @given(scenes(), SOME_BODIES, st.sampled_from([360.0, -360.0]), st.sampled_from([360.0, 0.0, -360.0]))
    def each(scene, bodies, turn, other_turn):
        asked = {**nights(scene), **ASKED, "BODIES": bodies}
        if any(abs(lon) == 180.0 for _, lon, _, _ in scene.cameras):
            asked["TIME_ZONE"] = "UTC+12:00"  # left blank, the sign would tell on which side of the date line the camera stands
        here = rows_of(run("alignments", {**named(scene, layer), **asked}))
        assert_same_rows(here, rows_of(run("alignments", {**named(scene.turned(turn, other_turn), layer), **asked})))
        rows.extend(here)

    each()
    assert len(rows) > 50


def test_alignments_of_layers_and_nights_in_parts_are_those_of_the_whole(run, layer):
    rows = []

    @examples(7)
    @given(scenes(), SOME_BODIES, st.integers(0, 2))
    def each(scene, bodies, cut):
        asked = {**ASKED, "BODIES": bodies}
        whole = rows_of(run("alignments", {**named(scene, layer), **nights(scene), **asked}))
        by_cameras = [replace(scene, cameras=some) for some in (scene.cameras[:1], scene.cameras[1:])]
        by_subjects = [replace(scene, subjects=some) for some in (scene.subjects[:2], scene.subjects[2:])]
        for parts in (by_cameras, by_subjects):
            apart = [run("alignments", {**named(part, layer), **nights(scene), **asked}) for part in parts]
            assert_same_rows(whole, [row for out in apart for row in rows_of(out)])
        apart = [run("alignments", {**named(scene, layer), **nights(scene, *some), **asked}) for some in ((0, cut), (cut + 1, 3))]
        assert_same_rows(whole, [row for out in apart for row in rows_of(out)])
        rows.extend(whole)

    each()
    assert len(rows) > 50


# sky positions


def test_positions_lie_in_their_ranges_and_are_null_for_a_reason(run, layer):
    found = []

    @examples(20)
    @given(scenes(), SOME_BODIES)
    def each(scene, bodies):
        times = {"START": f"{scene.first} 21:00Z", "END": f"{scene.first + timedelta(days=1)} 03:00Z", "STEP": 90}
        sites = {"SITES": named(scene, layer)["CAMERAS"], "SITE_NAME": "name"}
        rows = rows_of(run("sky_positions", {**sites, **times, "STAR": STAR, "GALACTIC_LON": GALACTIC_LON, "BODIES": bodies}))
        assert len(rows) == len(scene.cameras) * len(bodies) * 5
        for row in rows:
            assert_nulls(row, SKY_POSITIONS_FIELDS, {**without_dem(SKY_POSITIONS_FIELDS), **SKY_NULLS})
            assert_ranges(row)
            assert_reads_back(row["t_local"], row["t_utc"], row["tz"])
            found.append((row["body"], row["mag_deg"] is None))

    each()
    assert {body for body, _ in found} == set(BODIES)
    assert {without for _, without in found} == {True, False}
