"""What a person reads in the dialogs: no parameter without its sentence, units where numbers are asked for, help that knows the parameters.

Each rule is a function that returns complaints, so that it can be shown a fault as well as the plugin.
"""

import re

import pytest
from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterDistance,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterNumber,
    QgsUnitTypes,
)

Flag = QgsProcessingParameterDefinition.Flag
UNITS = {"°", "°C", "%", "min", "s", "mm", "px", "hPa", "km/h", "h"}
WITHOUT_UNIT = {"F_NUMBER", "LIT_MIN", "LIT_MAX", "MOON_LIT_MAX", "PIXELS_W", "REFRACTION_K", "SCALE"}  # shares, ratios and counts
# what Qt's rich text shows in the panel beside a dialog
TAGS = {"p", "h3", "b", "i", "br", "ul", "li", "a"}


@pytest.fixture(scope="module")
def algorithms(provider):
    found = provider.algorithms()
    assert len(found) >= 12
    return found


def help_faults(name, parameter):
    sentence = parameter.help()
    if not sentence:
        return [f"{name} {parameter.name()} has no help"]
    if sentence == parameter.description():
        return [f"{name} {parameter.name()}: the help is the label"]
    return []


def unit_faults(name, parameter):
    if not isinstance(parameter, QgsProcessingParameterNumber) or parameter.dataType() == QgsProcessingParameterNumber.Type.Integer:
        return []
    units = re.findall(r"\[(.*?)\]", parameter.description())
    if isinstance(parameter, QgsProcessingParameterDistance):
        metres, _ = QgsUnitTypes.decodeDistanceUnit("meters")
        beside = parameter.defaultUnit() == metres and not parameter.parentParameterName()
        return [] if beside and not units else [f"{name} {parameter.name()}: metres stand beside the widget, and nowhere else"]
    if parameter.name() in WITHOUT_UNIT or (len(units) == 1 and units[0] in UNITS):
        return []
    return [f"{name} {parameter.name()}: '{parameter.description()}' tells no unit"]


def fold_faults(name, parameter):
    """A parameter without which nothing runs may not be folded away."""
    flags = parameter.flags()
    needed = not flags & Flag.FlagOptional and parameter.defaultValue() is None
    return [f"{name} {parameter.name()} is needed, but folded away"] if needed and flags & Flag.FlagAdvanced else []


def text_faults(algorithm):
    """Parameters that the help names and the algorithm lacks; line ends, of each of which QGIS makes a paragraph; tags Qt does not know."""
    text, names = algorithm.shortHelpString(), {definition.name() for definition in algorithm.parameterDefinitions()}
    named = set(re.findall(r"<i>([A-Z][A-Z_]+)</i>", text))
    unknown = [word for word in named - names if not any(name.startswith(f"{word}_") for name in names)]
    faults = [f"{algorithm.name()}: the help names {word}" for word in sorted(unknown)]
    faults += [f"{algorithm.name()}: the help has line ends"] if "\n" in text else []
    return faults + [f"{algorithm.name()}: <{tag}>" for tag in sorted(set(re.findall(r"</?(\w+)", text)) - TAGS)]


@pytest.mark.parametrize("rule", [help_faults, unit_faults, fold_faults])
def test_every_parameter(rule, algorithms):
    assert [fault for algorithm in algorithms for one in algorithm.parameterDefinitions() for fault in rule(algorithm.name(), one)] == []


def test_every_help_text(algorithms):
    own = [algorithm for algorithm in algorithms if algorithm.groupId() != "models"]  # QGIS itself makes a page of a model's sentences
    assert [fault for algorithm in own for fault in text_faults(algorithm)] == []
    assert [algorithm.name() for algorithm in algorithms if len(algorithm.shortHelpString()) < 80] == []
    assert [algorithm.name() for algorithm in algorithms if not algorithm.shortDescription()] == []


def test_no_sentence_is_left_of_a_parameter_that_is_gone(algorithms):
    from skyalidade.adapters.parameter_help import HELP

    names = {one.name() for algorithm in algorithms for one in algorithm.parameterDefinitions()}
    both = {f"{algorithm.name()}:{one.name()}" for algorithm in algorithms for one in algorithm.parameterDefinitions()}
    assert set(HELP) - names - both == set()


def test_faults_are_seen():
    assert help_faults("try", QgsProcessingParameterNumber("GAP", "Gap [°]")) == ["try GAP has no help"]
    double = QgsProcessingParameterNumber.Type.Double
    assert unit_faults("try", QgsProcessingParameterNumber("GAP", "Gap", double)) == ["try GAP: 'Gap' tells no unit"]
    assert unit_faults("try", QgsProcessingParameterNumber("GAP", "Gap [m]", double)) == ["try GAP: 'Gap [m]' tells no unit"]
    assert unit_faults("try", QgsProcessingParameterDistance("FAR", "As far as", 5, "SITES")) != []
    source = QgsProcessingParameterFeatureSource("SITES", "Sites", [QgsProcessing.SourceType.TypeVectorPoint])
    source.setFlags(source.flags() | Flag.FlagAdvanced)
    assert fold_faults("try", source) == ["try SITES is needed, but folded away"]


def test_a_help_text_out_of_date_is_seen():
    class Sightlines:
        def name(self):
            return "try"

        def parameterDefinitions(self):  # noqa: N802  QGIS's name
            return [QgsProcessingParameterNumber("APEX_MIN", "Top")]

        def shortHelpString(self):  # noqa: N802
            return "<p><i>APEX</i> and <i>GONE</i>\n<table></p>"

    assert text_faults(Sightlines()) == ["try: the help names GONE", "try: the help has line ends", "try: <table>"]


def test_alignments_runs_with_two_layers_and_nothing_else(run, layer):
    cameras = layer([(f"POINT({-33.0 + 0.01 * i} 36.0)",) for i in range(3)], kind="Point")
    subjects = layer([("POINT(-33.0 35.99)",)], kind="Point")
    outcome = run("alignments", {"CAMERAS": cameras, "SUBJECTS": subjects})
    assert "pairs: 3, bodies: 1, nights: 30" in outcome.log
    assert set(outcome.layers) == {"OUTPUT"}
    assert all(row["body"] == "core" and row["sun_deg"] <= -18 and row["alt_deg"] >= 10 for row in outcome.rows())


def test_lengths_may_be_texts_fields_and_blank_as_before(run, layer):
    subjects = layer([("POINT(-33.0 35.99)", 40)], kind="Point", fields=["h:double"])
    pair = {"CAMERAS": layer([("POINT(-33.0 36.0)",)], kind="Point"), "SUBJECTS": subjects}
    heights = [run("sightlines", {**pair, "SUBJECT_HEIGHT": value}).rows()[0]["height_deg"] for value in (40, "40", "field:h")]
    assert heights[0] > 2.0  # 40 m at 1.1 km
    assert heights[1:] == heights[:1] * 2
    assert run("sightlines", {**pair, "SUBJECT_HEIGHT": None, "SKIP_NEAR": None}).rows()[0]["height_deg"] == 0.0
