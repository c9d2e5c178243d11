"""Results of all algorithms arrive with their look, in memory and in a GeoPackage that is opened later."""

import elevation_models as dem
import pytest
from qgis.core import Qgis, QgsVectorLayer

from skyalidade.names import FIELDS

Mode = Qgis.VectorTemporalMode
CAMERA, SUBJECT = ("POINT(-33.0 36.0)",), ("POINT(-32.99 35.99)",)
NIGHTS = {"FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-20", "BODIES": ["moon", "core"], "AZ_TOLERANCE": 30}
TIMES = {"START": "2027-06-06T00:00Z", "END": "2027-06-06T01:00Z", "STEP": 20}
OUTPUTS = [
    ("sightlines", "OUTPUT", None, None),
    ("alignments", "OUTPUT", Mode.FeatureDateTimeStartAndEndFromFields, ("t_start", "t_end")),
    ("alignments", "UNMET", None, None),
    ("night_windows", "OUTPUT", Mode.FeatureDateTimeStartAndEndFromFields, ("t_start", "t_end")),
    ("night_windows", "WINDOWS", Mode.FeatureDateTimeStartAndEndFromFields, ("t_start", "t_end")),
    ("night_windows", "MONTHS", None, None),
    ("sky_positions", "OUTPUT", Mode.FeatureDateTimeInstantFromField, ("t_utc", "")),
    ("terrain_horizon", "PROFILE", None, None),
    ("terrain_horizon", "SKYLINE", None, None),
    *(("standpoints", output, Mode.FeatureDateTimeInstantFromField, ("t_utc", "")) for output in ("POINTS", "STRETCHES", "ZONES")),
    ("framing", "OUTPUT", None, None),
    ("framing", "HEADS", None, None),
    ("shadow_track", "OUTPUT", Mode.FeatureDateTimeInstantFromField, ("t_utc", "")),
    ("shadow_track", "LINES", Mode.FeatureDateTimeStartAndEndFromFields, ("t_start", "t_end")),
]


@pytest.fixture
def given(layer, tmp_path):
    """Parameters of an algorithm, for its shortest run."""

    def parameters(name):
        sites = {"SITES": layer([CAMERA], kind="Point")}
        if name == "terrain_horizon":
            return {
                **sites,
                "DEM": dem.write(tmp_path / "dem.tif", *dem.around(lambda east, north: 0.0 * east, 20_000, 100)),
                "PROFILE": "memory:",
            }
        if name == "shadow_track":
            return {"SUBJECTS": layer([SUBJECT], kind="Point"), "SUBJECT_HEIGHT": 20, **TIMES}
        if name == "standpoints":
            path = layer([("LINESTRING(-33.0 36.0, -32.98 36.0)",)], kind="LineString")
            one_night = {"BODY": "core", "TIME": TIMES["START"], "TIME_END": TIMES["END"], "STEP": TIMES["STEP"]}
            return {"SUBJECTS": layer([SUBJECT], kind="Point"), "PATHS": path, **one_night, "POINTS": "memory:"}
        if name == "night_windows":
            return {**sites, **{key: NIGHTS[key] for key in ("FIRST_NIGHT", "LAST_NIGHT")}}
        return {**sites, **TIMES} if name == "sky_positions" else pairs(name, layer)

    return parameters


def pairs(name, layer):
    pair = {"CAMERAS": layer([CAMERA], kind="Point"), "SUBJECTS": layer([SUBJECT], kind="Point")}
    return {**pair, **(NIGHTS if name == "alignments" else {})}


def check(shown, mode, fields):
    assert shown.isValid()
    assert shown.labelsEnabled()
    for index, name in enumerate(shown.fields().names()):
        if name in FIELDS:
            assert shown.attributeAlias(index) == FIELDS[name].alias
    times = shown.temporalProperties()
    assert times.isActive() == (fields is not None)
    if fields:
        assert times.mode() == mode
        assert (times.startField(), times.endField()) == fields


@pytest.mark.parametrize(("name", "output", "mode", "fields"), OUTPUTS)
def test_in_memory(run, given, name, output, mode, fields):
    check(run(name, {**given(name), output: "memory:"}).layers[output], mode, fields)


@pytest.mark.parametrize(("name", "output", "mode", "fields"), OUTPUTS)
def test_in_a_geopackage_opened_later(run, given, tmp_path, name, output, mode, fields):
    path = tmp_path / "result.gpkg"
    run(name, {**given(name), output: str(path)})
    opened = QgsVectorLayer(str(path), "opened later", "ogr")
    opened.loadDefaultStyle()  # as the desktop does
    check(opened, mode, fields)
    if name in ("sky_positions", "standpoints"):
        assert opened.temporalProperties().fixedDuration() == TIMES["STEP"]
