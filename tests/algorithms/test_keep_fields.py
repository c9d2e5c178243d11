"""KEEP_FIELDS: what the cameras or sites tell goes with every row that comes of them."""

import pytest
from qgis.core import QgsProcessingParameterField, QgsVectorLayer
from qgis.PyQt.QtCore import QDate, QDateTime, Qt, QTime, QVariant

from skyalidade.names import ALIGNMENTS_FIELDS, FRAMING_FIELDS, NIGHT_WINDOWS_FIELDS, SIGHTLINES_FIELDS, SKY_POSITIONS_FIELDS, UNMET_FIELDS

NULL = (None, QVariant())
FIELDS = {
    "sightlines": SIGHTLINES_FIELDS,
    "framing": FRAMING_FIELDS,
    "alignments": ALIGNMENTS_FIELDS,
    "night_windows": NIGHT_WINDOWS_FIELDS,
    "sky_positions": SKY_POSITIONS_FIELDS,
}
FIRST_LAYER = {"sightlines": "CAMERAS", "framing": "CAMERAS", "alignments": "CAMERAS", "night_windows": "SITES", "sky_positions": "SITES"}
NIGHTS = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-03"}
CAMERA, OTHER = "Point(-33 36)", "Point(-33.002 36)"
SUBJECT, NORTH = "Point(-33 35.99)", "Point(-33 36.01)"
TYPES = ["park:string(40)", "stop:integer", "big:int8", "walk_km:double", "open:bool", "since:date", "seen:datetime"]
VALUES = ["Old Light", 7, 5_000_000_000, 1.25, True, QDate(2026, 5, 1), QDateTime(QDate(2026, 5, 1), QTime(6, 7, 8), Qt.TimeSpec.UTC)]


@pytest.fixture
def kept(run, layer):
    """Run an algorithm over points of the first layer, each a row of (WKT, value, ...), and keep fields."""

    def outcome(name, rows, fields, keep, kind="Point", **parameters):
        first = layer(rows, fields=fields, kind=kind)
        if name == "sky_positions":
            usual = {"SITES": first, "START": "2027-06-06T00:00:00Z", "BODIES": ["core", "moon"]}
        elif name == "night_windows":
            usual = {"SITES": first, **NIGHTS}
        else:
            usual = {"CAMERAS": first, "SUBJECTS": layer([(SUBJECT,)], kind="Point"), **(NIGHTS if name == "alignments" else {})}
        return run(name, {**usual, "KEEP_FIELDS": keep, **parameters})

    return outcome


@pytest.mark.parametrize("name", FIELDS)
def test_it_is_a_choice_of_fields_of_the_first_layer(algorithm, name):
    made = algorithm(name)
    definition = made.parameterDefinition("KEEP_FIELDS")
    assert isinstance(definition, QgsProcessingParameterField)
    assert definition.allowMultiple()
    assert definition.parentLayerParameterName() == FIRST_LAYER[name]
    assert definition.defaultValue() is None


@pytest.mark.parametrize("name", FIELDS)
def test_values_and_types_go_with_each_row_after_the_usual_fields(kept, name):
    names = [field.split(":")[0] for field in TYPES]
    out = kept(name, [(CAMERA, *VALUES), (OTHER, *[None] * len(VALUES))], TYPES, names)
    result = out.layers["OUTPUT"].fields()
    assert result.names() == [*FIELDS[name], *names]
    types = [QVariant.typeToName(result.field(field).type()) for field in names]
    assert types == ["QString", "int", "qlonglong", "double", "bool", "QDate", "QDateTime"]
    assert result.field("park").length() == 40
    number = "site_id" if FIRST_LAYER[name] == "SITES" else "camera_id"
    rows = {feature[number]: [feature[field] for field in names] for feature in out.layers["OUTPUT"].getFeatures()}
    assert rows[1] == VALUES
    assert all(value in NULL for value in rows[2])
    assert set(rows) == {1, 2}


@pytest.mark.parametrize("name", FIELDS)
def test_nothing_is_kept_unless_asked_for(kept, name):
    for blank in (None, "", []):
        assert tuple(kept(name, [(CAMERA, "x")], ["park:string"], blank).layers["OUTPUT"].fields().names()) == FIELDS[name]


@pytest.mark.parametrize("keep", [["stop", "park"], "stop;park", ["stop", "park", "stop"]], ids=["list", "text", "twice"])
def test_order_is_the_one_given(kept, keep):
    out = kept("sightlines", [(CAMERA, "x", 3)], ["park:string", "stop:integer"], keep)
    assert out.layers["OUTPUT"].fields().names()[-2:] == ["stop", "park"]


@pytest.mark.parametrize("name", FIELDS)
def test_parts_of_a_multipoint_share_their_feature_s_fields(kept, name):
    out = kept(
        name, [("MultiPoint((-33 36), (-33.002 36))", "x"), ("MultiPoint((-33.001 36))", "y")], ["park:string"], ["park"], "MultiPoint"
    )
    parks = [row["park"] for row in out.rows()]
    assert set(parks) == {"x", "y"}
    assert parks.count("x") == 2 * parks.count("y")


@pytest.mark.parametrize("name", FIELDS)
def test_skipped_points_do_not_shift_the_values(kept, name):
    rows = [("Point(-33 95)", "nowhere"), (None, "null"), (CAMERA, "x"), ("Point(inf 36)", "infinite"), (OTHER, "y")]
    number = "site_id" if FIRST_LAYER[name] == "SITES" else "camera_id"
    assert {(row[number], row["park"]) for row in kept(name, rows, ["park:string"], ["park"]).rows()} == {(3, "x"), (5, "y")}


def test_both_results_of_alignments(kept):
    out = kept(
        "alignments", [(CAMERA, "sees it"), (NORTH.replace("36.01", "35.98"), "looks north")], ["park:string"], ["park"], UNMET="memory:"
    )
    assert {row["park"] for row in out.rows()} == {"sees it"}
    assert {row["park"] for row in out.rows("UNMET")} == {"looks north"}
    assert tuple(out.layers["UNMET"].fields().names()) == (*UNMET_FIELDS, "park")


def test_names_that_are_taken_get_a_number_and_the_log_tells(kept):
    out = kept("sightlines", [(CAMERA, "x", 3.0, 9)], ["camera:string", "DIST_M:double", "stop:integer"], ["camera", "DIST_M", "stop"])
    assert out.layers["OUTPUT"].fields().names()[-3:] == ["camera_2", "DIST_M_2", "stop"]
    (row,) = out.rows()
    assert (row["camera"], row["camera_2"], row["DIST_M_2"], row["stop"]) == ("camera 1", "x", 3.0, 9)
    assert "OUTPUT: kept fields whose names were taken: camera is camera_2, DIST_M is DIST_M_2." in out.log


def test_names_are_compared_with_those_of_the_result_at_hand(kept):
    out = kept("alignments", [(CAMERA, "x")], ["night:string"], ["night"], UNMET="memory:")
    assert out.layers["OUTPUT"].fields().names()[-1] == "night_2"
    assert out.layers["UNMET"].fields().names()[-1] == "night"


def test_names_that_shorten_to_the_same_stay_apart_in_a_shapefile(kept, tmp_path):
    names = ["description_of_place", "description_of_path", "bearing_deg_wished"]
    out = kept("sightlines", [(CAMERA, "here", "there", 5.0)], [f"{n}:{'double' if 'bear' in n else 'string'}" for n in names], names)
    assert out.layers["OUTPUT"].fields().names()[-3:] == ["description_of_place", "descript_2", "bearing__2"]
    path = str(tmp_path / "lines.shp")
    kept(
        "sightlines", [(CAMERA, "here", "there", 5.0)], [f"{n}:{'double' if 'bear' in n else 'string'}" for n in names], names, OUTPUT=path
    )
    written = QgsVectorLayer(path, "lines", "ogr")
    (feature,) = written.getFeatures()
    assert written.fields().names()[-3:] == ["descriptio", "descript_2", "bearing__2"]
    assert feature.attributes()[-3:] == ["here", "there", 5.0]
    assert feature["bearing_de"] == pytest.approx(180.0, abs=1e-6)


@pytest.mark.parametrize("name", FIELDS)
def test_a_geopackage_s_own_columns_are_not_lost(kept, tmp_path, name):
    """Its `fid` numbers the rows of the result, and `geom` is its geometry: kept fields of these names get others."""
    path = str(tmp_path / "out.gpkg")
    kept(name, [(CAMERA, 41, "old")], ["fid:integer", "geom:string"], ["fid", "geom"], OUTPUT=path)
    written = QgsVectorLayer(path, "out", "ogr")
    assert written.fields().names() == ["fid", *FIELDS[name], "fid_2", "geom_2"]
    rows = [(feature["fid_2"], feature["geom_2"]) for feature in written.getFeatures()]
    assert len(rows) >= 1
    assert set(rows) == {(41, "old")}


@pytest.mark.parametrize("name", FIELDS)
def test_a_field_that_the_layer_lacks_is_refused(refusal, layer, name):
    points = layer([(CAMERA, "x")], fields=["park:string"], kind="Point")
    first = {"SITES": points, "START": "2027-06-06T00:00Z"} if name == "sky_positions" else {FIRST_LAYER[name]: points}
    sentence = refusal(name, {"SUBJECTS": points, **first, "KEEP_FIELDS": ["park", "nickname"]})
    assert sentence == f"KEEP_FIELDS: {FIRST_LAYER[name]} has no field 'nickname'. Choose one of: park."


@pytest.mark.parametrize("given", [["KEEP_FIELDS=park", "KEEP_FIELDS=stop"], ["KEEP_FIELDS=park;stop"]], ids=["each", "one text"])
def test_on_the_command_line(qgis_process, tmp_path, given):
    path = tmp_path / "sites.geojson"
    path.write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"park": "Old Light", "stop": 7},'
        ' "geometry": {"type": "Point", "coordinates": [-33, 36]}}]}',
        encoding="utf-8",
    )
    done = qgis_process("sky_positions", f"SITES={path}", "START=2027-06-06T00:00Z", *given, f"OUTPUT={tmp_path}/sky.gpkg")
    assert done.returncode == 0, done.stderr
    (row,) = QgsVectorLayer(f"{tmp_path}/sky.gpkg", "sky", "ogr").getFeatures()
    assert (row["park"], row["stop"]) == ("Old Light", 7)
