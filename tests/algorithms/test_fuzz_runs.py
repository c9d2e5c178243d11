"""Every algorithm with parameters and layers that hypothesis makes as hostile as it can: a sentence or a result, never a Python error."""

import math
import re
from collections import Counter
from functools import wraps
from pathlib import Path

import elevation_models
import hostile
import pytest
from conftest import Feedback
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.configuration import set_hypothesis_home_dir
from hypothesis.internal.conjecture import providers
from qgis.core import NULL, QgsFeature, QgsField, QgsProcessingContext, QgsProcessingException, QgsProject, QgsVectorLayer
from qgis.PyQt.QtCore import QDateTime

from skyalidade.adapters.algorithm import Algorithm
from skyalidade.adapters.fields import TYPES

EXAMPLES = 12  # each, so that all take some ten seconds; thousands were tried
ALL = [
    *("sightlines", "alignments", "sky_positions", "night_windows", "standpoints", "shadow_track", "terrain_horizon", "framing"),
    *("skyline_view", "season_chart", "field_plan", "sky_exposure", "site_map"),
]
NO_WORDS = re.compile(r"\b(nan|inf|None|NaT|NULL|QVariant|Traceback|TypeError|ValueError|object at 0x\w+)\b(?!')")
TURNS = {"bearing_deg", "back_deg", "mag_deg", "grid_deg", "az_deg", "moon_az", "apex_az", "apex_lon", "az_start", "az_end", "target_deg"}
TURNS |= {"az_from", "az_to", "bearing_min", "bearing_max", "aim_az", "left_az", "right_az", "head_az"}
HALVES = {"alt_deg", "sun_deg", "moon_deg", "core_alt", "base_alt_deg", "top_alt_deg", "ground_deg", "apex_deg", "aim_alt", "head_alt"}
AT_LEAST_0 = {
    "dist_m",
    "minutes",
    "chain_m",
    "moon_lit",
    "hours",
    "nights",
    "dark_min",
    "clear_min",
    "glow",
    "hidden_m",
    "block_m",
    "err_deg",
}


def is_null(value):
    return value is None or value == NULL


set_hypothesis_home_dir(Path(__file__).resolve().parents[2] / "build" / "hypothesis")
providers._get_local_constants = providers.Constants  # numbers that it reads in modules loaded so far differ from run to run


@pytest.fixture
def raised(monkeypatch, provider):
    """What algorithms raise beside sentences for a person: QGIS turns it into such a sentence before anyone sees it."""
    wrong = []

    def watched(method):
        @wraps(method)
        def watching(self, *given):
            try:
                return method(self, *given)
            except QgsProcessingException:
                raise
            except Exception as error:
                wrong.append(error)
                raise

        return watching

    for made in {type(algorithm) for algorithm in provider.algorithms()}:
        for name in ("checkParameterValues", "prepareAlgorithm", "processAlgorithm"):
            if name in vars(made):
                monkeypatch.setattr(made, name, watched(getattr(made, name)))
    for name in ("checkParameterValues", "prepareAlgorithm"):
        monkeypatch.setattr(Algorithm, name, watched(getattr(Algorithm, name)))
    return wrong


@pytest.fixture
def results(run, layer):
    """Layers of results that others are made from."""
    cameras, subjects = layer([("PointZ(-33 36 10)",)]), layer([("PointZ(-33 35.99 30)",)])
    nights = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-05"}
    met = run("alignments", {"CAMERAS": cameras, "SUBJECTS": subjects, "AZ_TOLERANCE": 20, **nights})
    dark = run("night_windows", {"SITES": cameras, **nights})
    return {"ALIGNMENTS": met.layers["OUTPUT"], "NIGHTS": dark.layers["OUTPUT"], "kept": (met, dark)}


@pytest.fixture
def usual(layer, results, tmp_path):
    """Parameters with which each algorithm runs, and is done soon."""
    names = {"fields": hostile.FIELDS}
    value = [None] * (len(hostile.FIELDS) - 1)
    points = layer([("PointZ(-33 36 10)", "one", *value), ("PointZ(-33.001 36 nan)", "two", *value)], **names)
    subjects = layer([("PointZ(-33 35.99 30)", "tower", *value)], **names)
    paths = layer([("LineString(-33.02 36.005, -33 36.001, -32.98 36.01)", "trail", *value)], kind="LineString", **names)
    heights = hostile.models(tmp_path, elevation_models.write)
    pair, nights = {"CAMERAS": points, "SUBJECTS": subjects}, {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-03"}
    time = {"START": "2027-06-06T00:00Z", "STEP": 10}
    few = {"MAX_ROWS": 3000}
    given = {
        "sightlines": {**pair, **few},
        "alignments": {**pair, **nights, **few, "UNMET": "memory:"},
        "sky_positions": {"SITES": points, **time, **few},
        "night_windows": {"SITES": points, **nights, **few, "WINDOWS": "memory:", "MONTHS": "memory:"},
        "standpoints": {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 180.0, **few},
        "shadow_track": {"SUBJECTS": subjects, "BODY": "moon", **time, **few},
        "terrain_horizon": {"SITES": points, "DEM": heights[0], "AZ_STEP": 30, **few},
        "framing": {**pair, **few},
        "skyline_view": {**pair, "START": "2027-06-06T00:00Z", "FOLDER": str(tmp_path / "views"), "MAX_PICTURES": 2},
        "season_chart": {"NIGHTS": results["NIGHTS"], "FOLDER": str(tmp_path / "charts"), "MAX_PICTURES": 2},
        "field_plan": {"ALIGNMENTS": results["ALIGNMENTS"], **{n: str(tmp_path / f"plan.{n}") for n in ("HTML", "GPX", "CALENDAR")}},
        "sky_exposure": {
            "DEM": heights[0],
            **nights,
            "AREA": "-33.01,-33.0,36.0,36.01 [EPSG:4326]",
            "OUTPUT": str(tmp_path / "minutes.tif"),
        },
        "site_map": {**pair, "OUTPUT": str(tmp_path / "map.pdf")},
    }
    return given, heights


def _as_text(value):
    if is_null(value):
        return None
    return value.toString("yyyy-MM-ddTHH:mm:ssZ") if isinstance(value, QDateTime) else str(value)


@st.composite
def told_amiss(draw, layer, keep):
    """A result of ours in which some values were changed by hand, or were lost in another format."""
    values = [*hostile.TEXTS, *hostile.MOMENTS, 0, -5.0, 1e300, float("nan"), True]
    changes = draw(st.lists(st.tuples(st.integers(0, 60), st.sampled_from(values)), min_size=1, max_size=3))
    as_texts, placed = draw(st.booleans()), draw(st.booleans())
    made = QgsVectorLayer("MultiPoint?crs=EPSG:4326", "told", "memory")
    kinds = [QgsField(field.name(), TYPES["text"]) if as_texts else QgsField(field) for field in layer.fields()]
    made.dataProvider().addAttributes(kinds)
    made.updateFields()
    rows = []
    for feature in layer.getFeatures():
        attributes = [_as_text(value) if as_texts else value for value in feature.attributes()]
        for at, value in changes:
            attributes[at % len(attributes)] = value
        row = QgsFeature(made.fields())
        row.setAttributes(attributes)
        if placed:
            row.setGeometry(feature.geometry())
        rows.append(row)
    made.dataProvider().addFeatures(rows)
    keep.append(made)
    return made


def assert_plain(name, row, geometry):
    """No number that is none, no bearing outside its circle, no end before its start."""
    for field, value in row.items():
        if is_null(value):
            continue
        if isinstance(value, float):
            assert math.isfinite(value), (name, field, row)
        if field in TURNS:
            assert 0.0 <= value < 360.0, (name, field, value)
        elif field in HALVES:
            assert -90.0 <= value <= 90.0, (name, field, value)
        elif field in AT_LEAST_0:
            assert value >= 0.0, (name, field, value)
    moments = [row[field] for field in ("t_start", "t_utc", "t_end") if not is_null(row.get(field))]
    assert moments == sorted(moments), (name, row)
    assert all(math.isfinite(vertex.x()) and math.isfinite(vertex.y()) for vertex in geometry.vertices()), (name, geometry.asWkt()[:200])


@st.composite
def hostile_parameters(draw, base, definitions, results, heights, keep):
    """Parameters with which an algorithm runs, one to four of them changed."""
    parameters = dict(base)
    for name in draw(st.lists(st.sampled_from(sorted(definitions)), min_size=1, max_size=4, unique=True)):
        source = hostile.sources(keep)
        if name in results:
            source = told_amiss(results[name], keep) | told_amiss(results[name], keep) | source
        rasters = st.sampled_from([*heights, None, "/no/such.tif", "https://example.invalid/x.tif", 5, []])
        strategy = hostile.values_of(definitions[name], source, rasters)
        if strategy is not None:
            parameters[name] = draw(strategy, label=name)
    return parameters


@pytest.mark.parametrize("name", ALL)
def test_a_sentence_or_a_result(name, algorithm, usual, results, raised):
    given_for, heights = usual
    prepared = algorithm(name)  # owns the definitions
    definitions = {d.name(): d for d in prepared.parameterDefinitions() if not d.isDestination()}
    keep, tally = [], Counter()

    @settings(max_examples=EXAMPLES, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))
    @given(hostile_parameters(given_for[name], definitions, results, heights, keep))
    def each(parameters):
        raised.clear()
        tally[outcome(algorithm(name), parameters, raised)] += 1
        keep.clear()

    each()
    assert tally["ran"] + tally["stopped"] > 0


def outcome(prepared, parameters, raised):
    """Run what passes the algorithm's own check; how it ended."""
    context, feedback = QgsProcessingContext(), Feedback()
    context.setProject(QgsProject.instance())
    try:
        return _outcome(prepared, parameters, raised, context, feedback)
    finally:
        context.temporaryLayerStore().removeAllMapLayers()


def _outcome(prepared, parameters, raised, context, feedback):
    for destination in prepared.destinationParameterDefinitions():
        if destination.type() == "sink":
            parameters.setdefault(destination.name(), "memory:")
    taken, sentence = prepared.checkParameterValues(parameters, context)
    assert not raised, raised
    if not taken:
        assert len(sentence) > 10
        return "refused"
    try:
        results = prepared.run(parameters, context, feedback, {}, False)[0]
    except QgsProcessingException as stopped:
        results, sentence = None, str(stopped)
    assert not raised, raised
    if results is None:
        assert not NO_WORDS.search(sentence), sentence
        assert len(sentence) > 10
        return "stopped"
    assert not NO_WORDS.search(feedback.log), feedback.log
    for output, layer_id in results.items():
        layer = context.getMapLayer(layer_id) if isinstance(layer_id, str) else None
        for feature in layer.getFeatures() if isinstance(layer, QgsVectorLayer) else ():
            assert_plain(output, dict(zip(layer.fields().names(), feature.attributes())), feature.geometry())
    return "ran"
