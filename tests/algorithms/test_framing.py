"""`framing` in QGIS: declaration, refusals, the two ways in, fields of view on the map, and heads."""

import math

import numpy as np
import pytest
from pyproj import Geod
from qgis.core import QgsGeometry, QgsPoint, QgsProcessingException, QgsProcessingParameterDefinition, QgsVectorLayer, QgsWkbTypes
from qgis.PyQt.QtCore import QDateTime, Qt, QVariant

from skyalidade.lens.frame import SENSORS
from skyalidade.names import FIELDS, FRAMING_FIELDS, HEADS_FIELDS
from skyalidade.names import SENSORS as SENSOR_NAMES

GEOD = Geod(ellps="WGS84")
NULL = (None, QVariant())
CAMERA, SUBJECT = "PointZ(-33 36.01 100)", "PointZ(-33 36 105)"  # the subject stands due south
TIME = "2027-06-06T03:30:00Z"  # the core at azimuth 186.72°, altitude 24.72° without air (astropy; see the table below)


@pytest.fixture
def pair(layer):
    return lambda camera=CAMERA, subject=SUBJECT, **crs: {"CAMERAS": layer([(camera,)], **crs), "SUBJECTS": layer([(subject,)], **crs)}


@pytest.fixture
def framed(run, pair):
    """Rows of a run with one pair of camera and subject."""

    def rows(**parameters):
        return run("framing", {**pair(), "SUBJECT_HEIGHT": 30, "SUBJECT_WIDTH": 20, "TIME": TIME, **parameters})

    return rows


# declaration


def test_parameters_in_order(algorithm):
    made = algorithm("framing")
    definitions = made.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("CAMERAS", "SUBJECTS", "SIGHTLINES", "PRESET", "FOCAL_MM", "ORIENTATION", "SENSOR_W_MM", "SENSOR_H_MM", "PIXELS_W"),
        *("BODY", "STAR", "GALACTIC_LON", "TIME", "TIME_ZONE", "AIM", "LEVEL", "MARGIN", "PANORAMA", "OVERLAP"),
        *("F_NUMBER", "SHUTTER_S", "FOCUS_M", "COC_MM", "STAR_BLUR", "REACH", "DEM", "DEM_BAND"),
        *("CAMERA_NAME", "SUBJECT_NAME", "CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO"),
        *("PAIRING", "PAIR_FIELD", "PAIR_FIELD_SUBJECT", "MAX_DISTANCE", "SKIP_NEAR", "DEM_ACCURACY", "KEEP_FIELDS", "REFRACTION_K"),
        *("PRESSURE", "TEMPERATURE", "MAX_ROWS", "OUTPUT", "HEADS"),
    ]
    optional = QgsProcessingParameterDefinition.Flag.FlagOptional
    assert {d.name() for d in definitions if not d.flags() & optional and d.defaultValue() is None} == {"OUTPUT"}


def test_defaults(algorithm):
    made = algorithm("framing")
    defaults = {d.name(): d.defaultValue() for d in made.parameterDefinitions()}
    wanted = {"PRESET": "full_frame", "FOCAL_MM": 24, "F_NUMBER": 2.8, "ORIENTATION": "landscape", "AIM": "between", "LEVEL": False}
    wanted.update(BODY="core", MARGIN=5, PANORAMA="pair", OVERLAP=30, STAR_BLUR=2, SHUTTER_S=None, FOCUS_M=None, COC_MM=None)
    assert {name: defaults[name] for name in wanted} == wanted


def test_every_sensor_is_told_as_it_is():
    assert list(SENSOR_NAMES) == list(SENSORS)
    for name, (width, height, pixels) in SENSORS.items():
        for number in (width, height, pixels):
            assert f"{number:g}" in SENSOR_NAMES[name]


def test_fields_and_their_types(framed):
    out = framed(HEADS="memory:")
    types = {"text": "QString", "int": "qlonglong", "real": "double", "bool": "bool", "datetime": "QDateTime"}
    for name, fields, kind in (
        ("OUTPUT", FRAMING_FIELDS, QgsWkbTypes.Type.MultiPolygon),
        ("HEADS", HEADS_FIELDS, QgsWkbTypes.Type.Point),
    ):
        made = out.layers[name]
        assert tuple(made.fields().names()) == fields
        assert [QVariant.typeToName(field.type()) for field in made.fields()] == [types[FIELDS[field].kind] for field in fields]
        assert made.wkbType() == kind


# what comes out


def test_a_pair_and_the_core(framed):
    """Places of the core by astropy 7 without air, 36N 33W (the camera stands 0.01° north of it)."""
    (row,) = framed(PRESSURE=0).rows()
    assert (row["az_deg"], row["alt_deg"]) == pytest.approx((186.72, 24.72), abs=0.02)
    assert row["d_az_deg"] == pytest.approx(row["az_deg"] - 180.0)
    assert row["d_alt_deg"] == pytest.approx(row["alt_deg"] - row["top_alt_deg"])
    assert (row["body"], row["t_local"], row["tz"], row["place"]) == ("core", "2027-06-06 01:30:00 -02:00", "UTC-02:00", "above")
    assert row["t_utc"] == QDateTime(2027, 6, 6, 3, 30, 0, 0, Qt.TimeSpec.UTC)
    assert (row["fits"], row["subj_fits"], row["body_fits"]) == (True, True, True)
    # 30 m at 1.1 km through 24 mm on pixels of 6 µm, a little more toward the frame's edge
    assert row["subj_h_px"] == pytest.approx(30.0 / row["dist_m"] * 4000.0, rel=0.06)
    assert row["fit_mm"] > 24.0
    assert (row["pano_rows"], row["pano_cols"], row["pano_shots"]) == (1, 1, 1)
    assert row["sight"] in NULL


@pytest.mark.parametrize(("orientation", "fits"), [("landscape", False), ("portrait", True)])
def test_upright_where_the_body_stands_high(framed, orientation, fits):
    """Subject and core lie 25° apart, one above the other: more than the 22° that 60 mm takes in landscape, less than the 33° upright."""
    (row,) = framed(FOCAL_MM=60, ORIENTATION=orientation).rows()
    assert row["fits"] is fits
    shorter, longer = sorted((math.degrees(2 * math.atan(12 / 60)), math.degrees(2 * math.atan(18 / 60))))
    upward = shorter if orientation == "landscape" else longer
    assert row["fov_h_deg"] == pytest.approx(upward)


def test_a_level_camera_cuts_off_what_a_tilted_one_holds(framed):
    tilted, level = (framed(FOCAL_MM=28, LEVEL=level).rows()[0] for level in (False, True))
    assert (tilted["fits"], level["fits"], level["aim_alt"]) == (True, False, 0.0)
    assert level["subj_fits"]
    assert level["fit_mm"] < 28


def test_preset_and_own_numbers(framed):
    crop, own, mixed = (
        framed(**given).rows()[0]
        for given in (
            {"PRESET": "crop_1_5"},
            {"PRESET": "medium", "SENSOR_W_MM": 24, "SENSOR_H_MM": 16, "PIXELS_W": 6000},
            {"PRESET": "crop_1_5", "PIXELS_W": 3000},
        )
    )
    assert [own[name] for name in ("fov_w_deg", "npf_s", "hyper_m")] == [crop[name] for name in ("fov_w_deg", "npf_s", "hyper_m")]
    assert mixed["subj_h_px"] == pytest.approx(crop["subj_h_px"] / 2)
    assert crop["rule500_s"] == pytest.approx(500 / (1.5 * 24))


def test_without_a_time_the_subject_alone_is_framed(framed):
    (row,) = framed(TIME=None).rows()
    assert all(row[name] in NULL for name in ("body", "t_utc", "t_local", "az_deg", "alt_deg", "d_az_deg", "place", "body_fits"))
    assert row["fits"] is True
    assert row["aim_az"] == pytest.approx(180.0)
    assert row["aim_alt"] == pytest.approx((row["base_alt_deg"] + row["top_alt_deg"]) / 2, abs=0.01)


def test_a_body_that_is_down_is_told(framed):
    out = framed(TIME="2027-06-06T12:00:00Z")
    assert out.rows()[0]["body_fits"] is False
    assert "1 sightlines whose body is below the horizon" in out.log


def test_the_moon_tells_from_where_it_is_as_large(framed):
    (row,) = framed(BODY="moon", TIME="2027-06-18T22:00:00Z").rows()
    assert row["disc_w_m"] == pytest.approx(20.0 / (2 * math.tan(math.radians(row["semi_deg"]))), rel=1e-6)
    assert row["disc_h_m"] == pytest.approx(30.0 / (2 * math.tan(math.radians(row["semi_deg"]))), rel=1e-3)
    assert row["disc_w_m"] == pytest.approx(2200.0, rel=0.08)  # 10 m at about 1.1 km, common practice; the Moon's width changes


def test_the_sun_line(framed):
    assert "Never look at the Sun" in framed(BODY="sun", TIME="2027-06-06T12:00:00Z").log
    assert "Never look at the Sun" not in framed().log


def test_local_time_is_that_of_the_camera(framed):
    (row,) = framed(TIME="2027-06-06 01:30:00").rows()
    assert row["t_utc"] == QDateTime(2027, 6, 6, 3, 30, 0, 0, Qt.TimeSpec.UTC)
    (row,) = framed(TIME="2027-06-06 05:30:00", TIME_ZONE="Europe/Berlin").rows()
    assert row["t_utc"] == QDateTime(2027, 6, 6, 3, 30, 0, 0, Qt.TimeSpec.UTC)


# sightlines as they are drawn


def test_sightlines_give_what_cameras_and_subjects_give(run, pair, framed):
    asked = {"SUBJECT_HEIGHT": 30, "SUBJECT_WIDTH": 20}
    lines = run("sightlines", {**pair(), **asked}).layers["OUTPUT"]
    (by_lines,) = run("framing", {"SIGHTLINES": lines, "TIME": TIME}).rows()
    (by_points,) = framed().rows()
    for name in FRAMING_FIELDS:
        if isinstance(by_points[name], float):
            tol_deg = 1e-5 if name in ("mag_deg", "decl_deg") else 0.0  # reckoned at the lens, not on the ground
            assert by_lines[name] == pytest.approx(by_points[name], rel=1e-12, abs=tol_deg), name
        else:
            assert by_lines[name] == by_points[name], name


@pytest.mark.parametrize("where", ["memory:", "alignments.gpkg"])
def test_alignments_bring_body_and_time(run, pair, tmp_path, where):
    nights = {"BODIES": ["core", "moon"], "FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-08", "SUBJECT_HEIGHT": 30}
    file = where if where == "memory:" else str(tmp_path / where)
    found = run("alignments", {**pair(), **nights, "OUTPUT": file})
    lines = found.layers["OUTPUT"] if where == "memory:" else QgsVectorLayer(file, "found", "ogr")
    wanted = [dict(zip(lines.fields().names(), feature.attributes())) for feature in lines.getFeatures()]
    out = run("framing", {"SIGHTLINES": lines})
    assert len(wanted) > 4
    assert {row["body"] for row in wanted} == {"core", "moon"}
    for row, alignment in zip(out.rows(), wanted):
        assert (row["body"], row["t_local"], row["camera"]) == (alignment["body"], alignment["t_local"], alignment["camera"])
        assert row["alt_deg"] == pytest.approx(alignment["alt_deg"], abs=0.005)  # deg: the time is rounded to a second
        assert row["d_az_deg"] == pytest.approx(alignment["d_az_deg"], abs=0.01)
        assert row["subj_h_px"] in NULL
    assert "has no base_alt_deg" in out.log
    assert "has no width_deg" in out.log


def test_time_given_stands_over_that_of_the_lines(run, pair):
    nights = {"BODIES": ["moon"], "FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-06", "SUBJECT_HEIGHT": 30}
    lines = run("alignments", {**pair(), **nights}).layers["OUTPUT"]
    rows = run("framing", {"SIGHTLINES": lines, "TIME": TIME}).rows()
    assert rows
    assert {(row["body"], row["t_local"]) for row in rows} == {("core", "2027-06-06 01:30:00 -02:00")}


LINE_FIELDS = ["bearing_deg:double", "dist_m:double", "top_alt_deg:double"]


def test_lines_that_cannot_be_used_are_counted(run, layer):
    line = "LineString(-33 36.01, -33 36)"
    rows = [
        (line, 180.0, 1000.0, 2.0),
        (line, None, 1000.0, 2.0),
        (line, 180.0, 0.0, 2.0),
        (line, 180.0, 1000.0, 95.0),
        (None, 180.0, 1000.0, 2.0),
    ]
    out = run("framing", {"SIGHTLINES": layer(rows, fields=LINE_FIELDS, kind="LineString"), "TIME": TIME})
    assert len(out.rows()) == 1
    assert "1 lines from 5 features" in out.log
    assert "2 whose dist_m, altitudes or width_deg no subject has" in out.log
    assert "1 whose bearing_deg, dist_m or top_alt_deg is blank" in out.log
    assert "1 with no geometry" in out.log


def test_no_line_is_a_result_with_a_reason(run, layer):
    out = run("framing", {"SIGHTLINES": layer([], fields=LINE_FIELDS, kind="LineString"), "TIME": TIME})
    assert out.rows() == []
    assert out.feedback.said[-1] == "No fields of view: there is no sightline that can be used."


def test_fields_of_sightlines_are_kept(run, layer):
    rows = [("LineString(-33 36.01, -33 36)", 180.0, 1000.0, 2.0, "A")]
    lines = layer(rows, fields=[*LINE_FIELDS, "permit:string"], kind="LineString")
    (row,) = run("framing", {"SIGHTLINES": lines, "KEEP_FIELDS": ["permit"], "TIME": TIME}).rows()
    assert row["permit"] == "A"


# on the map


def test_a_field_of_view_by_pyproj(framed):
    out = framed(REACH=2000)
    (row,), (geometry,) = out.rows(), out.geometries()
    ring = [(point.x(), point.y()) for point in geometry.asMultiPolygon()[0][0]]
    assert ring[0] == ring[-1] == (-33.0, 36.01)
    for az in (row["left_az"], row["right_az"]):
        lon, lat, _ = GEOD.fwd(-33.0, 36.01, az, 2000.0)
        assert min(GEOD.inv(lon, lat, *vertex)[2] for vertex in ring) < 0.001  # m
    half = math.degrees(math.atan2(18.0 / 24.0, 1.0 / math.cos(math.radians(row["aim_alt"]))))  # on the horizon, which the frame holds
    assert (row["right_az"] - row["left_az"]) / 2 == pytest.approx(half)
    sector_m2 = math.radians(2 * half) / 2 * 2000.0**2
    assert abs(GEOD.polygon_area_perimeter(*zip(*ring))[0]) == pytest.approx(sector_m2, rel=0.001)  # 48 chords to the arc


def test_blank_reach_is_a_quarter_beyond_the_subject(framed):
    (row,), (geometry,) = (lambda out: (out.rows(), out.geometries()))(framed())
    far = max(GEOD.inv(-33.0, 36.01, point.x(), point.y())[2] for point in geometry.asMultiPolygon()[0][0])
    assert far == pytest.approx(1.25 * row["dist_m"], abs=0.01)


def test_over_the_antimeridian_it_is_cut_in_two(run, pair):
    out = run("framing", {**pair("Point(179.99 -17)", "Point(-179.99 -17)", kind="Point"), "REACH": 5000})
    (geometry,) = out.geometries()
    assert len(geometry.asMultiPolygon()) == 2
    assert geometry.boundingBox().width() > 359.0
    assert geometry.isGeosValid()


def test_in_a_projected_crs(run, layer):
    cameras, subjects = (layer([(f"PointZ(500000 {north} 10)",)], crs="EPSG:32625") for north in (3984000, 3983000))
    out = run("framing", {"CAMERAS": cameras, "SUBJECTS": subjects, "REACH": 1000})
    (geometry,) = out.geometries()
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:32625"
    assert geometry.boundingBox().yMaximum() == pytest.approx(3984000, abs=1e-3)
    assert geometry.boundingBox().yMinimum() == pytest.approx(3983000, abs=1.0)


# panoramas


def test_heads_of_the_arch(framed):
    out = framed(PANORAMA="arch", HEADS="memory:", ORIENTATION="portrait")
    (row,), heads = out.rows(), out.rows("HEADS")
    assert len(heads) == row["pano_shots"] > 5
    assert max(head["pano_row"] for head in heads) == row["pano_rows"]
    assert max(head["pano_col"] for head in heads) == row["pano_cols"]
    assert {(head["camera"], head["subject"], head["body"]) for head in heads} == {("camera 1", "subject 1", "core")}
    assert all(geometry.asPoint().x() == -33.0 for geometry in out.geometries("HEADS"))
    assert f"1 fields of view, {len(heads)} head positions." in out.log
    apart = np.diff(sorted({round(head["head_alt"], 9) for head in heads}))
    assert (apart <= row["fov_h_deg"] * 0.7 + 1e-9).all()  # field x (1 - overlap), common practice


def test_more_heads_than_allowed(framed):
    with pytest.raises(QgsProcessingException, match=r"frames and more, above MAX_ROWS \(100\)"):
        framed(PANORAMA="arch", HEADS="memory:", FOCAL_MM=400, MAX_ROWS=100)


# refusals


@pytest.mark.parametrize(
    "name", ["FOCAL_MM", "F_NUMBER", "SENSOR_W_MM", "SENSOR_H_MM", "PIXELS_W", "SHUTTER_S", "COC_MM", "STAR_BLUR", "FOCUS_M"]
)
@pytest.mark.parametrize("value", [0, -3])
def test_nothing_and_less_are_no_lens(refusal, pair, name, value):
    sentence = refusal("framing", {**pair(), name: value})
    assert sentence.startswith(f"{name} is {value}. Give a number ")


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ({"SENSOR_W_MM": 24, "SENSOR_H_MM": 36}, "SENSOR_H_MM (36) is more than SENSOR_W_MM (24)"),
        ({"SENSOR_W_MM": 10}, "SENSOR_H_MM (24) is more than SENSOR_W_MM (10)"),
        ({"FOCUS_M": 0.02}, "FOCUS_M is 0.02 m, within the focal length of 24 mm"),
        ({"OVERLAP": 5}, "OVERLAP is 5. Give a number from 10 to 80"),
        ({"MARGIN": 50}, "MARGIN is 50. Give a number from 0 to 40"),
        ({"REACH": 0}, "REACH is 0. Give the metres"),
        ({"PRESET": "phone"}, "PRESET: 'phone' is not known"),
        ({"PANORAMA": "arch"}, "PANORAMA is arch, but TIME is blank"),
        ({"AIM": "body"}, "AIM is body, but TIME is blank"),
        ({"TIME": "2061-03-04T00:00Z"}, "TIME (2061-03-04 00:00:00+00:00) lies after the ephemeris"),
        ({"TIME": "1950-01-01T00:00Z"}, "lies before the ephemeris"),
        ({"TIME": "soon"}, "TIME: 'soon' is no time"),
        ({"BODY": "star"}, "BODY holds star"),
        ({"TIME_ZONE": "Europe/Atlantis"}, "TIME_ZONE: There is no time zone"),
    ],
)
def test_refusals(refusal, pair, given, sentence):
    assert sentence in refusal("framing", {**pair(), **given})


def test_either_lines_or_points(refusal, run, pair, layer):
    lines = run("sightlines", pair()).layers["OUTPUT"]
    assert refusal("framing", {**pair(), "SIGHTLINES": lines}).startswith("SIGHTLINES and CAMERAS or SUBJECTS are given.")
    assert refusal("framing", {}) == "CAMERAS is blank. Choose cameras and subjects, or SIGHTLINES."
    other = layer([("LineString(0 0, 1 1)",)], kind="LineString")
    assert refusal("framing", {"SIGHTLINES": other}) == (
        "SIGHTLINES: 'points' has no field bearing_deg, dist_m, top_alt_deg. Choose a result of sightlines or alignments."
    )
    assert "holds PointZ, not lines" in refusal("framing", {"SIGHTLINES": layer([(CAMERA,)])})
    assert "no layer that can be read" in refusal("framing", {"SIGHTLINES": "/no/such/layer.gpkg"})
    bare = layer([("LineString(0 0, 1 1)", 180.0, 1000.0, 2.0)], fields=LINE_FIELDS, kind="LineString", crs="")
    assert "has no CRS" in refusal("framing", {"SIGHTLINES": bare})
    assert "KEEP_FIELDS: SIGHTLINES has no field 'permit'" in refusal("framing", {"SIGHTLINES": lines, "KEEP_FIELDS": ["permit"]})


def test_a_line_whose_time_the_ephemeris_does_not_reach(run, layer):
    rows = [("LineString(-33 36.01, -33 36)", 180.0, 1000.0, 2.0, QDateTime(2061, 3, 4, 0, 0, 0, 0, Qt.TimeSpec.UTC))]
    lines = layer(rows, fields=[*LINE_FIELDS, "t_utc:datetime"], kind="LineString")
    with pytest.raises(QgsProcessingException, match="ephemeris"):
        run("framing", {"SIGHTLINES": lines})


def test_multipoints_at_the_height_of_geometry(run, layer):
    """A layer with heights in EPSG:4979 gives polygons in EPSG:4326."""
    cameras, subjects = (layer([(QgsGeometry(QgsPoint(-33, lat, 10)),)], crs="EPSG:4979") for lat in (36.01, 36.0))
    out = run("framing", {"CAMERAS": cameras, "SUBJECTS": subjects})
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:4326"
    assert len(out.rows()) == 1
