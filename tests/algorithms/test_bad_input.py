"""Bad input, for every algorithm: one sentence that says what to do, or a counted skip; never a traceback."""

import os
import tempfile
from contextlib import contextmanager
from pathlib import Path

import pytest
from qgis.core import QgsCoordinateReferenceSystem, QgsGeometry, QgsPoint, QgsProcessingException, QgsProperty, QgsVectorLayer
from qgis.PyQt.QtCore import QDate, QDateTime, QVariant

from skyalidade.names import ALIGNMENTS_FIELDS, FRAMING_FIELDS, NIGHT_WINDOWS_FIELDS, SIGHTLINES_FIELDS, SKY_POSITIONS_FIELDS

CAMERA, SUBJECT = "PointZ(-33 36 10)", "PointZ(-33 35.99 30)"
FIELDS = {
    "sightlines": SIGHTLINES_FIELDS,
    "framing": FRAMING_FIELDS,
    "alignments": ALIGNMENTS_FIELDS,
    "night_windows": NIGHT_WINDOWS_FIELDS,
    "sky_positions": SKY_POSITIONS_FIELDS,
}
ALL = list(FIELDS)
PAIRED = ["sightlines", "alignments", "framing"]
TIMED = ["alignments", "night_windows", "sky_positions"]
BY_NIGHT = ["alignments", "night_windows"]
NIGHTS = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-10"}


def layer_names(name):
    return ["CAMERAS", "SUBJECTS"] if name in PAIRED else ["SITES"]


def body_name(name):
    return "BODY" if name == "night_windows" else "BODIES"


@pytest.fixture
def good(layer):
    """Parameters with which an algorithm runs, and some of them changed."""

    def parameters(name, **changed):
        usual = {"CAMERAS": layer([(CAMERA,)]), "SUBJECTS": layer([(SUBJECT,)])} if name in PAIRED else {"SITES": layer([(CAMERA,)])}
        if name == "sky_positions":
            usual["START"] = "2027-06-06T00:00:00Z"
        if name in BY_NIGHT:
            usual.update(NIGHTS)
        return {**usual, **changed}

    return parameters


@pytest.mark.parametrize("name", ALL)
def test_the_good_parameters_are_good(run, good, name):
    """Else the refusals below would prove nothing."""
    out = run(name, good(name))
    assert len(out.rows()) > 0
    assert tuple(out.layers["OUTPUT"].fields().names()) == FIELDS[name]


# layers

EACH_LAYER = [(name, layer) for name in ALL for layer in layer_names(name)]


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_empty_layer_is_a_result_with_a_reason(run, good, layer, name, which):
    out = run(name, good(name, **{which: layer([])}))
    assert out.rows() == []
    assert tuple(out.layers["OUTPUT"].fields().names()) == FIELDS[name]
    assert f"{which}: 0 points from 0 features." in out.log
    assert "No " in out.feedback.said[-1]


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_null_and_empty_geometries_are_counted(run, good, layer, name, which):
    good_point = SUBJECT if which == "SUBJECTS" else CAMERA
    mixed = layer([(None,), (QgsGeometry(QgsPoint()),), (QgsGeometry.fromWkt("PointZ EMPTY"),), (good_point,)])
    out = run(name, good(name, **{which: mixed}))
    assert f"{which}: 1 points from 4 features." in out.log
    assert "with no geometry" in out.log or "with an empty geometry" in out.log
    assert sum(int(part.split()[0]) for part in out.log.split(f"{which}: skipped ")[1].split(".")[0].split(", ")) == 3
    assert len(out.rows()) > 0


@pytest.mark.parametrize("name", PAIRED)
def test_multipoints_are_taken_apart(run, good, layer, name):
    cameras = layer([("MultiPointZ((-33 36 10), (-33.001 36 10))",)], kind="MultiPointZ")
    out = run(name, good(name, CAMERAS=cameras))
    assert "CAMERAS: 2 points from 1 features." in out.log
    assert len({round(row["bearing_deg"], 6) for row in out.rows()}) == 2
    assert {row["camera_id"] for row in out.rows()} == {1}


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_line_layer_is_refused(refusal, good, layer, name, which):
    lines = layer([("LineString(-33 36, -33 35)",)], kind="LineString")
    assert refusal(name, good(name, **{which: lines})) == (
        f"{which}: 'points' holds LineString, not points. Choose a layer of points for the {which.lower()}."
    )


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_layer_without_crs_is_refused(refusal, good, layer, name, which):
    assert "has no CRS" in refusal(name, good(name, **{which: layer([(CAMERA,)], crs="")}))


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_layer_of_the_moon_is_refused(refusal, good, layer, name, which):
    moon = layer([(CAMERA,)])
    moon.setCrs(QgsCoordinateReferenceSystem.fromProj("+proj=longlat +R=1737400 +no_defs"))
    sentence = refusal(name, good(name, **{which: moon}))
    assert sentence.startswith(f"{which}: the CRS of 'points' (")
    assert sentence.endswith(") is one of another body than the Earth. Choose another layer, or set its CRS.")


@pytest.mark.parametrize(("name", "which"), EACH_LAYER)
def test_missing_layer_is_refused(refusal, good, name, which):
    sentence = refusal(name, good(name, **{which: "/no/such/layer.gpkg"}))
    assert sentence == f"{which}: there is no layer that can be read. Choose a layer of points for the {which.lower()}."


@pytest.mark.parametrize("name", ALL)
def test_field_that_the_layer_lacks_is_refused(refusal, good, name):
    which = layer_names(name)[0]
    field = "CAMERA_NAME" if name in PAIRED else "SITE_NAME"
    assert f"{field}: {which} has no field 'nickname'" in refusal(name, good(name, **{field: "nickname"}))


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize(
    ("crs", "place", "reason"),
    [
        ("EPSG:4326", (-33, 95), "with no place on the Earth"),
        ("EPSG:4326", (float("inf"), 36), "with no place on the Earth"),
        ("EPSG:32625", (1e30, 1e30), "with no place on the Earth"),
    ],
    ids=["latitude 95", "infinite", "far off the map"],
)
def test_places_off_the_earth_are_counted(run, good, layer, name, crs, place, reason):
    which = layer_names(name)[0]
    usable = CAMERA if crs == "EPSG:4326" else "PointZ(500000 3984000 10)"
    out = run(name, good(name, **{which: layer([(QgsGeometry(QgsPoint(*place)),), (usable,)], crs=crs)}))
    assert f"{which}: skipped 1 {reason}." in out.log
    assert f"{which}: 1 points from 2 features." in out.log


# heights

HEIGHTS = ["CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE"]


@pytest.mark.parametrize("name", PAIRED)
@pytest.mark.parametrize("height", HEIGHTS)
@pytest.mark.parametrize("value", [float("nan"), "nan", float("inf"), "-inf"], ids=str)
def test_heights_that_are_not_finite_are_refused(refusal, good, name, height, value):
    assert f"{height} is '{value}', which is no finite number" in refusal(name, good(name, **{height: value}))


@pytest.mark.parametrize("name", PAIRED)
@pytest.mark.parametrize("height", HEIGHTS)
def test_negative_heights_are_refused(refusal, good, name, height):
    assert refusal(name, good(name, **{height: -2})) == (f"{height} is -2 m, but it is measured upward from the ground. Give 0 or more.")


@pytest.mark.parametrize("name", PAIRED)
def test_bad_heights_in_a_field_are_skipped_and_counted(run, good, layer, name):
    rows = [(CAMERA, 1.5), (CAMERA, -1.0), (CAMERA, float("nan")), (CAMERA, float("inf")), (CAMERA, None)]
    cameras = layer(rows, fields=["tripod:double"])
    out = run(name, good(name, CAMERAS=cameras, CAMERA_HEIGHT=QgsProperty.fromField("tripod")))
    assert "CAMERAS: 2 points from 5 features." in out.log
    assert "CAMERAS: skipped 2 whose CAMERA_HEIGHT is no finite number, 1 whose CAMERA_HEIGHT is less than 0." in out.log
    assert "CAMERAS: CAMERA_HEIGHT is blank in 1 features: its default is taken." in out.log
    assert {row["camera_id"] for row in out.rows()} == {1, 5}


@pytest.mark.parametrize("name", PAIRED)
def test_height_from_a_field_that_is_not_there(refusal, good, name):
    sentence = refusal(name, good(name, SUBJECT_HEIGHT=QgsProperty.fromField("tall")))
    assert "SUBJECT_HEIGHT: SUBJECTS has no field 'tall'" in sentence


@pytest.mark.parametrize("name", PAIRED)
def test_height_from_an_expression_that_cannot_be_read(refusal, good, name):
    assert "SUBJECT_HEIGHT: the expression 2 + cannot be read" in refusal(
        name, good(name, SUBJECT_HEIGHT=QgsProperty.fromExpression("2 +"))
    )


@pytest.mark.parametrize("name", PAIRED)
def test_z_that_is_not_finite_counts_as_none(run, good, layer, name):
    cameras = layer([(QgsGeometry(QgsPoint(-33, 36, float("nan"))),)])
    assert {row["heights"] for row in run(name, good(name, CAMERAS=cameras)).rows()} == {"level"}


@pytest.mark.parametrize("z_m", [-9999.0, 1e9, -1e9, 1e308])
def test_z_that_no_ground_has_counts_as_none(run, layer, z_m):
    """The Moon was told 4e20 degrees up, seen from -1e9 m."""
    place = {"START": "2027-06-12T02:00Z", "BODIES": ["moon"]}
    odd, level = (run("sky_positions", {"SITES": layer([(f"PointZ(-33 36 {z!r})",)]), **place}) for z in (z_m, 0.0))
    assert "SITES: 1 points have a Z that no ground has, such as -9999 or more than 9,000 m: it counts as none." in odd.log
    assert odd.rows()[0] == level.rows()[0]


# nights and times


@pytest.mark.parametrize("name", BY_NIGHT)
def test_last_night_before_the_first(refusal, good, name):
    sentence = refusal(name, good(name, FIRST_NIGHT="2027-06-10", LAST_NIGHT="2027-06-01"))
    assert sentence == "LAST_NIGHT (2027-06-01) is before FIRST_NIGHT (2027-06-10). Exchange them."


@pytest.mark.parametrize("name", BY_NIGHT)
def test_last_night_that_has_passed_without_a_first(refusal, good, name):
    sentence = refusal(name, good(name, FIRST_NIGHT=None, LAST_NIGHT="2020-01-01"))
    assert sentence.startswith("LAST_NIGHT (2020-01-01) has passed, and FIRST_NIGHT is blank")


@pytest.mark.parametrize("null", [None, "", QVariant(), QDate(), QDateTime()], ids=["none", "empty", "null", "no date", "no time"])
def test_blanks_of_every_make(run, good, null):
    """What dialogs, scripts and models pass for a parameter that is left blank."""
    numbers = {name: null for name in ("AZ_TOLERANCE", "ALT_MIN", "SUN_LIMIT", "PRESSURE") if not isinstance(null, (QDate, QDateTime))}
    out = run("alignments", good("alignments", LAST_NIGHT=null, **numbers))
    assert "nights: 30)" in out.feedback.said[-1]
    numbers.pop("AZ_TOLERANCE", None)
    assert len(run("night_windows", good("night_windows", LAST_NIGHT=null, **numbers)).rows()) == 365


@pytest.mark.parametrize(
    ("nights", "sentence"),
    [
        ({"FIRST_NIGHT": "1950-01-01"}, "FIRST_NIGHT (1950-01-01) lies before the ephemeris (begins "),
        ({"LAST_NIGHT": "2061-03-04"}, "LAST_NIGHT (2061-03-04) lies after the ephemeris (ends "),
    ],
    ids=["before", "after"],
)
@pytest.mark.parametrize("name", BY_NIGHT)
def test_nights_outside_the_ephemeris(refusal, good, name, nights, sentence):
    assert sentence in refusal(name, good(name, **nights))


@pytest.mark.parametrize("name", BY_NIGHT)
def test_nights_that_reach_over_the_end_of_the_ephemeris(run, good, name):
    """The last night named is inside, but its morning is not: found during the run, and told all the same."""
    with pytest.raises(QgsProcessingException, match="ephemeris"):
        run(name, good(name, FIRST_NIGHT="2053-10-01", LAST_NIGHT="2053-10-05"))


@pytest.mark.parametrize(
    ("start", "sentence"),
    [("1950-01-01T00:00Z", "lies before the ephemeris"), ("2061-03-04T00:00Z", "lies after the ephemeris")],
    ids=["before", "after"],
)
def test_times_outside_the_ephemeris(refusal, good, start, sentence):
    assert sentence in refusal("sky_positions", good("sky_positions", START=start))


@pytest.mark.parametrize("name", BY_NIGHT)
@pytest.mark.parametrize("night", ["soon", "2027-13-01", "06.06.2027"])
def test_night_that_is_no_date(refusal, good, name, night):
    sentence = refusal(name, good(name, FIRST_NIGHT=night))
    assert sentence == f"FIRST_NIGHT: '{night}' is no date. Write it as 2027-06-06."


@pytest.mark.parametrize("start", ["soon", "2027-06-06T25:00", "2027-06-06T01:00+"])
def test_time_that_is_none(refusal, good, start):
    assert f"START: '{start}' is no time. Write it as" in refusal("sky_positions", good("sky_positions", START=start))


def test_blank_start(refusal, good):
    assert "START is blank" in refusal("sky_positions", good("sky_positions", START=None))


def test_end_before_start(refusal, good):
    assert "END" in refusal("sky_positions", good("sky_positions", END="2027-06-05T00:00Z"))


def test_end_before_start_where_only_one_has_an_offset(run, good):
    with pytest.raises(QgsProcessingException, match="END is before START"):
        run("sky_positions", good("sky_positions", END="2027-06-05 10:00"))


@pytest.mark.parametrize("step", [0, -5])
def test_step_that_leads_nowhere(refusal, good, step):
    assert "STEP is" in refusal("sky_positions", good("sky_positions", STEP=step))


@pytest.mark.parametrize("name", TIMED)
def test_unknown_time_zone(refusal, good, name):
    assert "TIME_ZONE: There is no time zone 'Europe/Berlyn'. Did you mean Europe/Berlin?" in refusal(
        name, good(name, TIME_ZONE="Europe/Berlyn")
    )


# bodies


@pytest.mark.parametrize("name", TIMED)
@pytest.mark.parametrize("star", ["266", "a,b", "266,-95", "400,10", "1,2,3", "nan,10"])
def test_malformed_star(refusal, good, name, star):
    sentence = refusal(name, good(name, **{body_name(name): "star"}, STAR=star))
    assert f"STAR is '{star}'. Write right ascension (0 to 360) and declination (-90 to 90) in degrees" in sentence


@pytest.mark.parametrize("name", TIMED)
def test_star_without_its_place(refusal, good, name):
    assert "STAR is blank" in refusal(name, good(name, **{body_name(name): "star"}))


@pytest.mark.parametrize("name", TIMED)
def test_place_on_the_plane_without_its_longitude(refusal, good, name):
    assert "GALACTIC_LON is blank" in refusal(name, good(name, **{body_name(name): "galactic"}))


@pytest.mark.parametrize("name", ["alignments", "sky_positions"])
def test_unknown_body(refusal, good, name):
    assert "BODIES: 'pluto' is not known. Choose from: core, arch" in refusal(name, good(name, BODIES=["core", "pluto"]))


@pytest.mark.parametrize("name", ["alignments", "sky_positions"])
def test_no_body(refusal, good, name):
    assert "BODIES" in refusal(name, good(name, BODIES=[]))


# conditions of alignments


@pytest.mark.parametrize("tolerance", [0, 90])
def test_tolerance_zero_or_ninety(refusal, good, tolerance):
    sentence = refusal("alignments", good("alignments", AZ_TOLERANCE=tolerance))
    assert sentence == f"AZ_TOLERANCE is {tolerance}. Give a half-width of more than 0 and less than 90 degrees, or leave it blank."


@pytest.mark.parametrize("low", ["ALT_MIN", "GAP_MIN", "TILT_MIN", "APEX_MIN", "SUN_MIN", "LIT_MIN"])
def test_lower_limit_above_the_upper(refusal, good, low):
    high = {"SUN_MIN": "SUN_LIMIT"}.get(low, low.replace("MIN", "MAX"))
    limits = {"LIT_MIN": (0.8, 0.2)}.get(low, (30, 20))
    sentence = refusal("alignments", good("alignments", **{low: limits[0], high: limits[1]}))
    assert sentence == f"{low} ({limits[0]:g}) is above {high} ({limits[1]:g}), so nothing can lie between them. Exchange them."


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"ALT_MAX": 5}, "ALT_MIN is 10 and ALT_MAX 5 for core where one is blank: nothing lies between. Give both."),
        ({"SUN_MIN": -8}, "SUN_MIN is -8 and SUN_LIMIT -18 for core where one is blank: nothing lies between. Give both."),
        ({"BODIES": ["arch"], "APEX_MIN": 70}, "APEX_MIN is 70 and APEX_MAX 60 for arch where one is blank"),
    ],
    ids=["altitude", "Sun", "apex"],
)
def test_limit_against_a_custom(refusal, run, good, changed, sentence):
    assert refusal("alignments", good("alignments", **changed)).startswith(sentence)


def test_limit_against_the_custom_of_one_body_of_two(run, good):
    """The Moon may stand there, so the core alone has no result."""
    out = run("alignments", good("alignments", BODIES=["core", "moon"], ALT_MAX=5, UNMET="memory:"))
    assert "core" in {row["body"] for row in out.rows("UNMET")}


@pytest.mark.parametrize(("limit", "value"), [("ALT_MIN", 95), ("ALT_MAX", -91), ("LIT_MAX", 2), ("TILT_MIN", -1), ("SUN_LIMIT", 100)])
def test_limits_out_of_range(refusal, good, limit, value):
    assert f"{limit} is {value}. Give a number from" in refusal("alignments", good("alignments", **{limit: value}))


@pytest.mark.parametrize("name", PAIRED)
def test_pairing_by_no_field(refusal, good, name):
    assert "PAIR_FIELD" in refusal(name, good(name, PAIRING="by_field"))


@pytest.mark.parametrize("name", PAIRED)
def test_longest_sightline_of_nothing(refusal, good, name):
    assert "MAX_DISTANCE is 0" in refusal(name, good(name, MAX_DISTANCE=0))


# places at the edges of the map


@pytest.mark.parametrize("name", PAIRED)
@pytest.mark.parametrize("lat", [90, -90])
def test_camera_at_a_pole(run, good, layer, name, lat):
    near = lat - 0.1 if lat > 0 else lat + 0.1
    out = run(name, good(name, CAMERAS=layer([(f"PointZ(10 {lat} 0)",)]), SUBJECTS=layer([(f"PointZ(10 {near} 0)",)]), ALT_MIN=-90))
    for row in out.rows():
        assert row["bearing_deg"] == pytest.approx(180.0 if lat > 0 else 0.0, abs=1e-6)  # along its own meridian
    assert name == "alignments" or len(out.rows()) == 1


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("lon", [180, -180])
def test_longitude_180(run, good, layer, name, lon):
    there = layer([(f"PointZ({lon} 10 0)",)])
    changed = {"CAMERAS": there, "SUBJECTS": layer([("PointZ(179.99 9.98 0)",)])} if name in PAIRED else {"SITES": there}
    assert len(run(name, good(name, **changed)).rows()) > 0


@pytest.mark.parametrize("name", PAIRED)
def test_camera_on_its_subject_is_skipped_and_counted(run, good, layer, name):
    out = run(name, good(name, CAMERAS=layer([(SUBJECT,), (CAMERA,)])))
    assert "1 with the camera on its subject" in out.log
    assert {row["camera_id"] for row in out.rows()} == {2}


# guards


@pytest.mark.parametrize("name", ALL)
def test_more_rows_than_allowed(run, good, layer, name):
    three = layer([(CAMERA,)] * 3)
    changed = {"sky_positions": {"SITES": three}, "alignments": {}}.get(name, {"CAMERAS": three})
    with pytest.raises(QgsProcessingException, match=r"up to (3|10) rows, more than MAX_ROWS \(2\)"):
        run(name, good(name, MAX_ROWS=2, **changed))


NOBODY = 65534  # the user without rights, on every Linux


@contextmanager
def as_anybody():
    """Root may write anywhere: be someone else meanwhile."""
    if os.geteuid() != 0:
        yield
        return
    os.setresuid(NOBODY, NOBODY, 0)
    try:
        yield
    finally:
        os.setresuid(0, 0, 0)


@pytest.fixture
def locked():
    """A folder that everyone may look into, and none but root may write to, with a file that is there already."""
    with tempfile.TemporaryDirectory() as folder:
        old = Path(folder, "old.gpkg")
        old.touch(0o444)
        os.chmod(folder, 0o555)
        yield old
        os.chmod(folder, 0o755)


@pytest.mark.parametrize("name", ALL)
def test_folder_that_may_not_be_written_to(refusal, good, locked, name):
    parameters = good(name, OUTPUT=str(locked.with_name("out.gpkg")))
    with as_anybody():
        sentence = refusal(name, parameters)
    assert sentence == f"OUTPUT: The folder {locked.parent} may not be written to. Choose another one."


@pytest.mark.parametrize("name", ALL)
def test_file_that_may_not_be_written_to(refusal, good, locked, name):
    locked.parent.chmod(0o777)
    parameters = good(name, OUTPUT=str(locked))
    with as_anybody():
        sentence = refusal(name, parameters)
    assert sentence == f"OUTPUT: The file {locked} may not be written to. Choose another name."


@pytest.mark.parametrize("name", ALL)
def test_output_folder_that_does_not_exist(refusal, good, tmp_path, name):
    sentence = refusal(name, good(name, OUTPUT=str(tmp_path / "absent" / "out.gpkg")))
    assert sentence == f"OUTPUT: The folder {tmp_path / 'absent'} does not exist. Make it, or choose another one."


def rows_that_none_must_see_whole(name, layer):
    """Parameters that make several blocks of rows, and how many rows there would be."""
    many = layer([(f"PointZ(-33 {36 + i / 1e4} 10)",) for i in range(600)])
    pairs = {"CAMERAS": many, "SUBJECTS": layer([(f"PointZ(-33.01 {36 + i / 1e4} 10)",) for i in range(100)])}
    return {
        "sightlines": (pairs, 60_000),
        "framing": (pairs, 60_000),
        "alignments": ({"CAMERAS": many, "FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2028-05-31"}, 600 * 100),
        "night_windows": ({"SITES": many, "LAST_NIGHT": "2028-05-31"}, 600 * 366),
        "sky_positions": ({"SITES": many, "END": "2027-06-06T16:00Z", "STEP": 10}, 600 * 97),
    }[name]


@pytest.mark.parametrize("name", ALL)
def test_cancel_in_the_middle(run, good, layer, name):
    changed, whole = rows_that_none_must_see_whole(name, layer)
    part = run(name, good(name, **changed), cancel_at=5.0)
    assert 0 < len(part.rows()) < whole
    assert part.feedback.said[-1].startswith(f"Cancelled: {len(part.rows()):,} ")


# the real binary: exit codes


@pytest.fixture
def files(tmp_path):
    """Layers on disk."""
    paths = {}
    for stem, lat in (("cameras", 36.0), ("subjects", 35.99)):
        paths[stem] = tmp_path / f"{stem}.geojson"
        paths[stem].write_text(
            '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "one"},'
            f' "geometry": {{"type": "Point", "coordinates": [-33, {lat}]}}}}]}}',
            encoding="utf-8",
        )
    return paths


def on_command_line(name, files):
    given = [f"CAMERAS={files['cameras']}", f"SUBJECTS={files['subjects']}"] if name in PAIRED else [f"SITES={files['cameras']}"]
    if name == "sky_positions":
        given.append("START=2027-06-06T00:00Z")
    return given + ([f"{key}={value}" for key, value in NIGHTS.items()] if name in BY_NIGHT else [])


@pytest.mark.parametrize("name", ALL)
def test_exit_codes(qgis_process, files, tmp_path, name):
    good = qgis_process(name, *on_command_line(name, files), f"OUTPUT={tmp_path}/out.gpkg")
    assert good.returncode == 0, good.stderr
    bad = qgis_process(name, *on_command_line(name, files), "MAX_ROWS=0", f"OUTPUT={tmp_path}/none.gpkg")
    assert bad.returncode == 1
    assert "MAX_ROWS is 0. Give a number at least 1." in bad.stderr + bad.stdout
    assert "Traceback" not in bad.stderr + bad.stdout
    assert not (tmp_path / "none.gpkg").exists()


def test_nothing_found_is_a_result(qgis_process, files, tmp_path):
    """The Sun never stands in the north of a northern site."""
    output = tmp_path / "none.gpkg"
    swapped = [f"CAMERAS={files['subjects']}", f"SUBJECTS={files['cameras']}", "FIRST_NIGHT=2027-06-01", "LAST_NIGHT=2027-06-10"]
    done = qgis_process("alignments", *swapped, "BODIES=sun", f"OUTPUT={output}", f"UNMET={tmp_path}/unmet.gpkg")
    assert done.returncode == 0, done.stderr
    assert "No alignment" in done.stdout
    assert QgsVectorLayer(str(output), "out", "ogr").featureCount() == 0
    (row,) = QgsVectorLayer(f"{tmp_path}/unmet.gpkg", "unmet", "ogr").getFeatures()
    assert "is never reached" in row["reason"]
