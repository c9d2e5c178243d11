"""`sightlines` in QGIS: declaration, and lines held against geographiclib, published surveys and plain vectors in space."""

import math

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from pyproj import Proj
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsGeometry,
    QgsPoint,
    QgsPointXY,
    QgsProcessingParameterDefinition,
    QgsProject,
    QgsProperty,
    QgsVectorLayer,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QVariant

from skyalidade.names import FIELDS, SIGHTLINES_FIELDS

ARCSEC = 1.0 / 3600.0
# Flinders Peak to Buninyong: Geoscience Australia, GDA94 technical manual (from memory; geographiclib and PROJ reproduce it).
FLINDERS = (144 + 25 / 60 + 29.52440 / 3600, -(37 + 57 / 60 + 3.72030 / 3600))
BUNINYONG = (143 + 55 / 60 + 35.38390 / 3600, -(37 + 39 / 60 + 10.15610 / 3600))
SURVEY_M = 54972.271
SURVEY_BEARING = 306 + 52 / 60 + 5.37 / 3600
SURVEY_BACK = 127 + 10 / 60 + 25.07 / 3600
SURVEY_GRID_BEARING = 305 + 17 / 60 + 1.72 / 3600  # zone 55, at Flinders Peak
PRINTED = 0.006 * ARCSEC


def point(lon, lat, z=None):
    return QgsGeometry(QgsPoint(lon, lat) if z is None else QgsPoint(lon, lat, z))


@pytest.fixture
def measured(run, layer):
    """Rows and geometries for lists of (lon, lat, z) of cameras and subjects."""

    def outcome(cameras, subjects, crs="EPSG:4326", **parameters):
        made = [layer([(point(*place),) for place in places], crs=crs) for places in (cameras, subjects)]
        return run("sightlines", {"CAMERAS": made[0], "SUBJECTS": made[1], "MAX_DISTANCE": 1e6, **parameters})

    return outcome


# declaration


def test_parameters_in_order(algorithm):
    sightlines = algorithm("sightlines")
    definitions = sightlines.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("CAMERAS", "SUBJECTS", "DEM", "DEM_BAND", "CAMERA_NAME", "SUBJECT_NAME", "CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE"),
        *("SUBJECT_WIDTH", "FACE_FROM", "FACE_TO", "PAIRING", "PAIR_FIELD", "PAIR_FIELD_SUBJECT", "MAX_DISTANCE"),
        *("SKIP_NEAR", "DEM_ACCURACY", "KEEP_FIELDS", "DATE", "REFRACTION_K", "MAX_ROWS", "OUTPUT"),
    ]
    required = {
        d.name() for d in definitions if not d.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional and d.defaultValue() is None
    }
    assert required == {"CAMERAS", "SUBJECTS", "OUTPUT"}


def test_defaults(algorithm):
    sightlines = algorithm("sightlines")
    defaults = {d.name(): d.defaultValue() for d in sightlines.parameterDefinitions()}
    assert {
        name: defaults[name] for name in ("CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_WIDTH", "PAIRING", "MAX_DISTANCE", "REFRACTION_K")
    } == {
        "CAMERA_HEIGHT": 1.5,
        "SUBJECT_HEIGHT": 0,
        "SUBJECT_WIDTH": 0,
        "PAIRING": "all",
        "MAX_DISTANCE": 50_000,
        "REFRACTION_K": 0.13,
    }
    assert defaults["MAX_ROWS"] == 20_000_000


def test_measures_may_come_from_each_feature(algorithm):
    sightlines = algorithm("sightlines")
    dynamic = {d.name(): d.dynamicLayerParameterName() for d in sightlines.parameterDefinitions() if d.isDynamic()}
    assert dynamic == {
        "CAMERA_HEIGHT": "CAMERAS",
        **dict.fromkeys(["SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO"], "SUBJECTS"),
    }


# what comes out


def test_fields_and_their_types(measured):
    layer = measured([(-33, 36)], [(-33, 36.01)]).layers["OUTPUT"]
    assert tuple(layer.fields().names()) == SIGHTLINES_FIELDS
    types = {"text": "QString", "int": "qlonglong", "real": "double", "bool": "bool"}
    assert [QVariant.typeToName(field.type()) for field in layer.fields()] == [types[FIELDS[name].kind] for name in SIGHTLINES_FIELDS]
    assert layer.wkbType() == QgsWkbTypes.Type.MultiLineString


def test_what_needs_an_elevation_model_is_null_without_one(measured):
    (row,) = measured([(-33, 36)], [(-33, 36.01)]).rows()
    for name in ("visible", "sight", "block_m", "clear_m", "hidden_m"):
        assert row[name] in (None, QVariant()), name
        assert row[name] is not False


def test_survey_of_two_hills(measured):
    (row,) = measured([FLINDERS], [BUNINYONG]).rows()
    assert row["dist_m"] == pytest.approx(SURVEY_M, abs=0.001)
    assert row["bearing_deg"] == pytest.approx(SURVEY_BEARING, abs=PRINTED)
    assert row["back_deg"] == pytest.approx(SURVEY_BACK, abs=PRINTED)
    assert row["grid_deg"] in (None, QVariant())  # the output is geographic


def test_grid_bearing_of_the_same_survey(run, layer):
    cameras = layer([(point(273741.297, 5796489.777),)], crs="EPSG:28355")  # Flinders Peak, map grid zone 55, same manual
    subjects = layer([(point(*BUNINYONG),)], crs="EPSG:4283")
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "MAX_DISTANCE": 1e5})
    (row,) = out.rows()
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:28355"
    assert row["grid_deg"] == pytest.approx(SURVEY_GRID_BEARING, abs=0.02 * ARCSEC)  # the grid coordinates are printed to 1 mm: 0.008"


@pytest.mark.parametrize(
    ("crs", "projection", "lon", "lat"),
    [
        ("EPSG:32625", "+proj=utm +zone=25 +ellps=WGS84", -34.9, 62.0),
        ("EPSG:32722", "+proj=utm +zone=22 +south +ellps=WGS84", -49.0, -55.0),
    ],
)
def test_grid_bearing_by_the_convergence_of_proj(run, layer, crs, projection, lon, lat):
    x, y = Proj(projection)(lon, lat)
    out = run("sightlines", {"CAMERAS": layer([(point(x, y),)], crs=crs), "SUBJECTS": layer([(point(lon + 0.1, lat + 0.02),)])})
    (row,) = out.rows()
    convergence = Proj(projection).get_factors(lon, lat).meridian_convergence
    assert row["grid_deg"] == pytest.approx((row["bearing_deg"] - convergence) % 360.0, abs=0.1 * ARCSEC)


@pytest.mark.parametrize(
    ("camera", "subject"),
    [
        ((-33.0, 36.0), (-33.2, 36.3)),
        ((179.9, -17.0), (-179.8, -16.9)),  # over the antimeridian
        ((0.0, 89.95), (170.0, 89.9)),  # over the pole
        ((12.0, 0.0), (12.4, 0.0)),  # along the equator
        ((180.0, 52.0), (-180.0, 52.2)),  # two names of one meridian
    ],
    ids=["ocean", "antimeridian", "pole", "equator", "one meridian"],
)
def test_bearings_and_distance_by_geographiclib(measured, camera, subject):
    (row,) = measured([camera], [subject]).rows()
    by = Geodesic.WGS84.Inverse(camera[1], camera[0], subject[1], subject[0])
    assert row["dist_m"] == pytest.approx(by["s12"], abs=1e-6)
    for ours, theirs in (("bearing_deg", by["azi1"]), ("back_deg", by["azi2"] + 180.0)):
        assert (row[ours] - theirs + 180.0) % 360.0 - 180.0 == pytest.approx(0.0, abs=1e-9)
        assert 0.0 <= row[ours] < 360.0


def in_space(lon, lat, height):
    """Earth-fixed coordinates on WGS 84, from the definition of the ellipsoid."""
    lon, lat = math.radians(lon), math.radians(lat)
    e2 = (2 - 1 / 298.257223563) / 298.257223563
    n = 6378137.0 / math.sqrt(1 - e2 * math.sin(lat) ** 2)
    ring = (n + height) * math.cos(lat)
    return np.array([ring * math.cos(lon), ring * math.sin(lon), (n * (1 - e2) + height) * math.sin(lat)])


def altitude_in_space(camera, subject):
    """Altitude of one place seen from another without air."""
    lon, lat = (math.radians(angle) for angle in camera[:2])
    up = np.array([math.cos(lat) * math.cos(lon), math.cos(lat) * math.sin(lon), math.sin(lat)])
    line = in_space(*subject) - in_space(*camera)
    return math.degrees(math.asin(line @ up / np.linalg.norm(line)))


@pytest.mark.parametrize("far", [0.01, 0.1, 0.5])
def test_altitudes_without_air_by_vectors_in_space(measured, far):
    camera, subject = (-33.0, 36.0, 120.0), (-33.0 + far, 36.0 + far / 2, 40.0)
    out = measured([camera], [subject], REFRACTION_K=0, CAMERA_HEIGHT=2, SUBJECT_BASE=5, SUBJECT_HEIGHT=60)
    (row,) = out.rows()
    assert (row["heights"], row["cam_z_m"], row["base_z_m"], row["top_z_m"]) == ("z", 122.0, 45.0, 105.0)
    lens = (*camera[:2], 122.0)
    assert row["base_alt_deg"] == pytest.approx(altitude_in_space(lens, (*subject[:2], 45.0)), abs=0.1 * ARCSEC)
    assert row["top_alt_deg"] == pytest.approx(altitude_in_space(lens, (*subject[:2], 105.0)), abs=0.1 * ARCSEC)
    assert row["height_deg"] == pytest.approx(row["top_alt_deg"] - row["base_alt_deg"], abs=1e-12)


def test_curvature_less_refraction_of_the_surveying_handbooks(measured):
    """0.0683 m per km² at k 0.13 (handbooks give 0.0675 at 0.14): over 10 km a point of the lens's height lies 6.83 m below its level."""
    (row,) = measured([(-33.0, 36.0)], [(-33.0, 36.0901)], CAMERA_HEIGHT=10, SUBJECT_HEIGHT=10).rows()
    below_m = -math.tan(math.radians(row["top_alt_deg"])) * row["dist_m"]
    assert below_m / (row["dist_m"] / 1000) ** 2 == pytest.approx(0.0683, abs=0.0003)  # the radius along the meridian at 36°


def test_width(measured):
    """The Moon, 0.53° wide, covers 10 m at about 1.1 km (common practice)."""
    (row,) = measured([(-33.0, 36.0)], [(-33.0, 36.0 + 1.1 / 110.96)], SUBJECT_WIDTH=10).rows()
    assert row["width_deg"] == pytest.approx(0.53, abs=0.015)


@pytest.mark.parametrize(
    ("camera_z", "subject_z", "source"),
    [(10.0, 20.0, "z"), (0.0, 20.0, "z"), (0.0, 0.0, "level"), (None, 20.0, "level"), (float("nan"), 20.0, "level"), (-3.0, 0.0, "z")],
    ids=["both", "one is 0", "both are 0", "one without", "one not a number", "below the sea"],
)
def test_one_source_of_heights_a_pair(run, layer, camera_z, subject_z, source):
    kind = "Point" if camera_z is None else "PointZ"
    cameras = layer([(point(-33, 36, camera_z),)], kind=kind)
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": layer([(point(-33, 36.01, subject_z),)])})
    (row,) = out.rows()
    assert row["heights"] == source
    assert [row[name] in (None, QVariant()) for name in ("cam_z_m", "base_z_m", "top_z_m")] == [source == "level"] * 3
    assert ("1 pairs from the Z" in out.log) == (source == "z")
    assert ("1 pairs taken as level" in out.log) == (source == "level")


# pairs


def test_all_pairs_within_the_distance(measured):
    out = measured([(-33, 36), (-33, 36.1)], [(-33, 36.01), (-33, 36.05), (-33, 37)], MAX_DISTANCE=8000)
    assert [(row["camera_id"], row["subject_id"]) for row in out.rows()] == [(1, 1), (1, 2), (2, 2)]
    assert "Left out: 3 farther apart than MAX_DISTANCE." in out.log
    assert out.feedback.said[-1] == "3 sightlines (cameras: 2, subjects: 3)."


def test_many_pairs_are_counted_once(measured):
    cameras = [(-33 + i / 1e4, 36) for i in range(300)]
    out = measured(cameras, [(-33, 36.01 + i / 1e4) for i in range(100)] + [(-30, 36)], MAX_DISTANCE=8000)
    assert len(out.rows()) == 30_000
    assert "Left out: 300 farther apart than MAX_DISTANCE." in out.log
    assert "30,000 pairs of camera and subject." in out.log


def test_closest_subject_over_the_antimeridian(measured):
    out = measured([(179.99, 0), (0, 0)], [(179.9, 0), (-179.99, 0)], PAIRING="closest")
    assert [(row["camera_id"], row["subject_id"]) for row in out.rows()] == [(1, 2)]
    assert "1 cameras with no subject within MAX_DISTANCE" in out.log


def test_pairs_by_field(run, layer):
    cameras = layer([(point(-33, 36), "north"), (point(-33, 36.001), "south"), (point(-33, 36.002), None)], fields=["side:string"])
    subjects = layer([(point(-33, 36.01), "south"), (point(-33, 36.02), "north"), (point(-33, 36.03), "west")], fields=["face:string"])
    out = run(
        "sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "PAIRING": "by_field", "PAIR_FIELD": "side", "PAIR_FIELD_SUBJECT": "face"}
    )
    assert [(row["camera_id"], row["subject_id"]) for row in out.rows()] == [(1, 2), (2, 1)]
    assert "1 cameras whose PAIR_FIELD is blank" in out.log
    assert "1 subjects whose PAIR_FIELD no camera has" in out.log


def test_pairs_by_a_number_and_a_text(run, layer):
    cameras = layer([(point(-33, 36), 7)], fields=["stop:integer"])
    subjects = layer([(point(-33, 36.01), "7"), (point(-33, 36.02), "8")], fields=["stop:string"])
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "PAIRING": "by_field", "PAIR_FIELD": "stop"})
    assert [row["subject_id"] for row in out.rows()] == [1]


def test_faces(run, layer):
    """A gate of use from the south only, seen from south, north and east."""
    cameras = layer([(point(-33, 36),), (point(-33, 36.02),), (point(-32.99, 36.01),)])
    subjects = layer([(point(-33, 36.01), 315, 45)], fields=["from:double", "to:double"])
    faces = {"FACE_FROM": QgsProperty.fromField("from"), "FACE_TO": QgsProperty.fromField("to")}
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, **faces})
    assert [row["camera_id"] for row in out.rows()] == [1]
    assert "Left out: 2 outside FACE_FROM to FACE_TO." in out.log


def test_half_a_face_is_refused(refusal, layer):
    points = layer([(point(-33, 36),)])
    assert "Only FACE_TO is given" in refusal("sightlines", {"CAMERAS": points, "SUBJECTS": points, "FACE_TO": 40})


def test_no_pair_at_all_is_a_result_with_its_reason(measured):
    out = measured([(-33, 36)], [(-33, 37)], MAX_DISTANCE=1000)
    assert out.rows() == []
    assert out.feedback.said[-1] == "No sightlines: 1 farther apart than MAX_DISTANCE."


def test_names_from_fields_and_without(run, layer):
    cameras = layer([(point(-33, 36), "Gannet Point"), (point(-33, 36.001), None)], fields=["title:string"])
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": layer([(point(-33, 36.01),)]), "CAMERA_NAME": "title"})
    assert [(row["camera"], row["subject"]) for row in out.rows()] == [("Gannet Point", "subject 1"), ("camera 2", "subject 1")]


def test_heights_from_fields_and_expressions(run, layer):
    subjects = layer([(point(-33, 36.01), 12.0, 2), (point(-33, 36.02), 24.0, 3)], fields=["tall:double", "storeys:integer"])
    cameras = layer([(point(-33, 36, 10),)])
    rows = {}
    for kind, value in {
        "field": QgsProperty.fromField("tall"),
        "expression": QgsProperty.fromExpression('"storeys" * 4'),
        "field in text": "field:tall",
        "expression in text": 'expression:"storeys" * 4',
    }.items():
        out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "SUBJECT_HEIGHT": value})
        rows[kind] = [round(math.tan(math.radians(row["height_deg"])) * row["dist_m"], 1) for row in out.rows()]
    assert rows["field"] == rows["field in text"] == [12.0, 24.0]
    assert rows["expression"] == rows["expression in text"] == [8.0, 12.0]


# lines and CRS


def transformed(geometry, source, target):
    transform = QgsCoordinateTransform(QgsCoordinateReferenceSystem(source), QgsCoordinateReferenceSystem(target), QgsProject.instance())
    copy = QgsGeometry(geometry)
    copy.transform(transform)
    return copy


@pytest.mark.parametrize(
    ("crs", "ends"),
    [
        ("EPSG:4326", [(-33.0, 62.0), (-25.0, 63.0)]),
        ("EPSG:32625", [(-33.0, 62.0), (-25.0, 63.0)]),
        ("EPSG:4326", [(20.0, 84.0), (90.0, 85.0)]),
        ("EPSG:3031", [(20.0, -70.0), (30.0, -71.0)]),
    ],
    ids=["geographic", "transverse Mercator", "near the pole", "polar stereographic"],
)
def test_drawn_line_keeps_within_a_metre_of_the_geodesic(run, layer, crs, ends):
    cameras = layer([(transformed(point(*ends[0]), "EPSG:4326", crs),)], crs=crs)
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": layer([(point(*ends[1]),)]), "MAX_DISTANCE": 1e7})
    (drawn,) = out.geometries()
    line = Geodesic.WGS84.InverseLine(ends[0][1], ends[0][0], ends[1][1], ends[1][0])
    for share in np.linspace(0, 1, 501):
        place = line.Position(share * line.s13)
        on_map = transformed(point(place["lon2"], place["lat2"]), "EPSG:4326", crs)
        nearest = transformed(QgsGeometry.fromPointXY(drawn.closestSegmentWithContext(on_map.asPoint())[1]), crs, "EPSG:4326").asPoint()
        assert Geodesic.WGS84.Inverse(place["lat2"], place["lon2"], nearest.y(), nearest.x())["s12"] < 1.0


def test_antimeridian_in_a_geographic_crs_cuts_the_line(measured):
    (geometry,) = measured([(179.9, -17.0)], [(-179.8, -16.8)]).geometries()
    west, east = geometry.asMultiPolyline()
    assert west[0] == QgsPointXY(179.9, -17.0)
    assert (west[-1].x(), east[0].x()) == (180.0, -180.0)
    assert east[-1] == QgsPointXY(-179.8, -16.8)
    assert all(x.x() > 0 for x in west)
    assert all(x.x() < 0 for x in east)
    by = Geodesic.WGS84.Inverse(-17.0, 179.9, -16.8, -179.8)
    through = Geodesic.WGS84.Inverse(-17.0, 179.9, west[-1].y(), 180.0)
    assert through["azi1"] == pytest.approx(by["azi1"], abs=1e-5)  # the cut lies on the geodesic, to a millimetre


@pytest.mark.parametrize(("crs", "pieces"), [("EPSG:3832", 1), ("EPSG:3857", 2)], ids=["map of the Pacific", "map cut at the antimeridian"])
def test_antimeridian_on_a_projected_map(run, layer, crs, pieces):
    cameras = layer([(transformed(point(179.9, -17.0), "EPSG:4326", crs),)], crs=crs)
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": layer([(point(-179.8, -16.8),)])})
    (geometry,) = out.geometries()
    assert len(geometry.asMultiPolyline()) == pieces
    assert geometry.length() == pytest.approx(out.rows()[0]["dist_m"] / math.cos(math.radians(16.9)), rel=0.01)  # Mercator's scale


def test_each_layer_in_its_own_crs(run, layer):
    cameras = layer([(point(-33, 36),)])
    subjects = layer([(transformed(point(-33.01, 36.02), "EPSG:4326", "EPSG:3857"),)], crs="EPSG:3857")
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects})
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:4326"
    assert out.rows()[0]["dist_m"] == pytest.approx(Geodesic.WGS84.Inverse(36, -33, 36.02, -33.01)["s12"], abs=1e-3)


def test_geojson_with_heights_gives_epsg_4326(run, layer, tmp_path):
    path = tmp_path / "cameras.geojson"
    path.write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {},'
        ' "geometry": {"type": "Point", "coordinates": [-33, 36, 250]}}]}',
        encoding="utf-8",
    )
    cameras = QgsVectorLayer(str(path), "cameras", "ogr")
    assert cameras.crs().authid() == "EPSG:4979"  # else this test tells nothing
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": layer([(point(-33, 36.01, 20),)])})
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:4326"
    assert out.rows()[0]["cam_z_m"] == 251.5


# the command line


def test_qgis_process_takes_heights_from_a_field(qgis_process, tmp_path):
    for stem, lat in (("cameras", 36.0), ("subjects", 36.01)):
        (tmp_path / f"{stem}.geojson").write_text(
            '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "one", "tall": 30.0},'
            f' "geometry": {{"type": "Point", "coordinates": [-33, {lat}]}}}}]}}',
            encoding="utf-8",
        )
    output = tmp_path / "lines.gpkg"
    done = qgis_process(
        "sightlines",
        *(f"CAMERAS={tmp_path}/cameras.geojson", f"SUBJECTS={tmp_path}/subjects.geojson", "SUBJECT_HEIGHT=field:tall", f"OUTPUT={output}"),
    )
    assert done.returncode == 0, done.stderr
    (row,) = QgsVectorLayer(str(output), "lines", "ogr").getFeatures()
    assert math.tan(math.radians(row["height_deg"])) * row["dist_m"] == pytest.approx(30.0, abs=0.01)
    assert row["visible"] in (None, QVariant())
