"""`site_map` in QGIS: declaration."""

from qgis.core import QgsProcessingAlgorithm, QgsProcessingParameterDefinition

BLOCK = ["APPLICANT", "ACTIVITY", "GROUP_SIZE", "VEHICLES", "HOURS", "LIGHTING", "CONTACT", "EMERGENCY", "PERMIT_NO"]
LAYERS = ["SIGHTLINES", "ALIGNMENTS", "CAMERAS", "SUBJECTS", "STANDPOINTS", "ZONES", "PATHS", "WALK", "CLOSED", "DEM"]


def test_declaration(algorithm):
    made = algorithm("site_map")
    parameters = {parameter.name(): parameter for parameter in made.parameterDefinitions()}
    assert set(LAYERS + BLOCK) < set(parameters)
    optional = {name for name, own in parameters.items() if own.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional}
    assert set(LAYERS + BLOCK + ["SHEET_BY", "TITLE", "SCALE", "TEMPLATE", "FOLDER", "PICTURES"]) <= optional
    assert parameters["SHEET_BY"].defaultValue() == "camera"
    assert (parameters["PAPER"].options(), parameters["PAPER"].defaultValue()) == (["a4", "letter"], "a4")
    assert (parameters["ORIENTATION"].options(), parameters["ORIENTATION"].defaultValue()) == (["portrait", "landscape"], "portrait")
    assert made.flags() & QgsProcessingAlgorithm.Flag.FlagNoThreading
    assert [output.name() for output in made.outputDefinitions()] == ["OUTPUT", "FOLDER", "PICTURES", "SHEETS"]
