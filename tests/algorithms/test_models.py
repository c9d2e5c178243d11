"""The models that ship with the plugin: what a person sees of them, and that they do what their steps do, wherever they are run from."""

import gc
import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from conftest import Feedback
from geographiclib.geodesic import Geodesic
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsPointXY,
    QgsProcessingAlgorithm,
    QgsProcessingContext,
    QgsProcessingModelAlgorithm,
    QgsProcessingParameterDefinition,
    QgsProject,
)

from skyalidade.adapters.models import FILES

TOP = Path(__file__).resolve().parents[2]
RESERVE = TOP / "sample_project" / "reserve.gpkg"
DEM = str(TOP / "sample_project" / "dem.tif")
OUTPUTS = {
    "plan_one_subject": {"SIGHTLINE", "ALIGNMENTS", "UNMET"},
    "park_season": {"NIGHTS", "MONTHS", "CHARTS"},
    "permit_package": {"STANDPOINTS", "ZONES", "SIGHTLINES", "ALIGNMENTS", "SHEETS"},
}
CAMERA, SUBJECT = (-33.0021, 35.9862), (-33.0012, 35.9771)
CLICKS = {"CAMERA": "-33.0021,35.9862 [EPSG:4326]", "SUBJECT": "-33.0012,35.9771 [EPSG:4326]"}
JUNE = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-12"}
TEMPORARY = "memory:"

pytestmark = pytest.mark.usefixtures("qgis_processing", "provider")  # QGIS's own algorithms, of which some steps are


@pytest.fixture
def layers(tmp_path):
    """Layers of a copy of the sample: QGIS leaves a mark in what it opens."""
    copy = tmp_path / "reserve.gpkg"
    copy.write_bytes(RESERVE.read_bytes())
    return lambda name: f"{copy}|layername={name}"


def permit_of(layers):
    return {
        "SUBJECTS": layers("subjects"),
        "SUBJECT_NAME": "name",
        "SUBJECT_HEIGHT_FIELD": "height_m",
        "PATHS": layers("paths"),
        "PATH_NAME": "name",
        "TIME": "2027-06-06T23:30:00",
        "AREA": layers("allowed"),
        "CLOSED": layers("closed"),
        "CLOSED_FROM": "closed_from",
        "CLOSED_TO": "closed_to",
        **JUNE,
    }


@pytest.fixture
def permit(layers):
    return permit_of(layers)


# What a person sees


def test_the_provider_lists_every_file(provider):
    models = [algorithm for algorithm in provider.algorithms() if isinstance(algorithm, QgsProcessingModelAlgorithm)]
    assert {model.name() for model in models} == {file.stem for file in FILES} == set(OUTPUTS)
    assert {(model.id(), model.groupId()) for model in models} == {(f"skyalidade:{name}", "models") for name in OUTPUTS}
    assert all(" " in model.displayName() and model.shortDescription() for model in models)


def test_they_come_again_when_the_provider_is_refreshed(provider):
    before = sorted(algorithm.id() for algorithm in provider.algorithms())
    provider.refreshAlgorithms()
    assert sorted(algorithm.id() for algorithm in provider.algorithms()) == before


@pytest.mark.parametrize("name", OUTPUTS)
def test_everything_is_told(algorithm, name):
    model = algorithm(name)
    assert model.canExecute()[0]
    assert {output.name() for output in model.destinationParameterDefinitions()} == OUTPUTS[name]
    for definition in model.parameterDefinitions():
        assert definition.description()
        assert definition.name().isupper()
    for definition in model.destinationParameterDefinitions():
        assert definition.help()
    steps = list(model.childAlgorithms().values())
    assert all(step.description() and step.comment().description() for step in steps)
    assert all(output.comment().description() for step in steps for output in step.modelOutputs().values())
    own = [component.parameterName() for component in model.parameterComponents().values()]
    assert sorted(own) == sorted({definition.name() for definition in model.parameterDefinitions()} - OUTPUTS[name])
    help_text = model.shortHelpString()
    assert all(definition.description() in help_text for definition in model.parameterDefinitions() if definition.help())


@pytest.mark.parametrize("name", OUTPUTS)
def test_what_is_left_out_means_the_default_that_is_shown(algorithm, name):
    """A model hands on what it is given: what is left out is up to the steps."""
    model = algorithm(name)
    for step in model.childAlgorithms().values():
        for parameter, sources in step.parameterSources().items():
            if step.algorithmId().startswith("skyalidade:") and sources[0].parameterName():
                ours, theirs = model.parameterDefinition(sources[0].parameterName()), step.algorithm().parameterDefinition(parameter)
                assert theirs.defaultValue() in (ours.defaultValue(), [ours.defaultValue()]), parameter


def test_they_are_what_their_maker_makes(tmp_path):
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path / "qgis")}
    maker = TOP / "plugin" / "models" / "make_models.py"
    done = subprocess.run([sys.executable, maker, tmp_path], env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    for file in FILES:
        made, kept = QgsProcessingModelAlgorithm(), QgsProcessingModelAlgorithm()
        assert made.fromFile(str(tmp_path / file.name))
        assert kept.fromFile(str(file))
        assert told_by(made) == told_by(kept), f"{file.name}: run plugin/models/make_models.py with the oldest QGIS served"


def told_by(model):
    """What a model's file says, less what each QGIS writes in its own way."""
    told = model.toVariant()
    told.pop("internal_version", None)
    what = ("parameter_type", "description", "default", "flags")
    inputs = {name: values for name, values in told["parameterDefinitions"].items() if name.isupper()}
    told["parameterDefinitions"] = {name: [values[key] for key in what] for name, values in inputs.items()}
    return told


# One subject from two clicks


def test_two_clicks_give_what_layers_give(run, layer):
    told = {
        "CAMERA_CALLED": 'Fold\'s \\ "Pasture"',
        "SUBJECT_CALLED": "Ruin",
        "SUBJECT_HEIGHT": 9,
        "BODIES": ["core", "arch"],
        "DEM": DEM,
        **JUNE,
    }
    made = run("plan_one_subject", {**CLICKS, **told, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY, "UNMET": TEMPORARY})
    ends = {
        name: layer([(f"Point ({lon} {lat})", called)], fields=["name:string"], kind="Point")
        for name, (lon, lat), called in (("CAMERAS", CAMERA, told["CAMERA_CALLED"]), ("SUBJECTS", SUBJECT, "Ruin"))
    }
    shared = {**ends, "CAMERA_NAME": "name", "SUBJECT_NAME": "name", "SUBJECT_HEIGHT": 9, "DEM": DEM}
    assert made.rows("SIGHTLINE") == run("sightlines", {**shared, "DATE": JUNE["FIRST_NIGHT"]}).rows()
    by_step = run("alignments", {**shared, "BODIES": ["core", "arch"], **JUNE, "UNMET": TEMPORARY})
    assert made.rows("ALIGNMENTS") == by_step.rows()
    assert made.rows("UNMET") == by_step.rows("UNMET")
    assert {row["camera"] for row in made.rows("ALIGNMENTS")} == {told["CAMERA_CALLED"]}
    assert len(made.rows("ALIGNMENTS")) > 5


def test_the_bearing_between_clicks_of_two_crs_is_geographiclibs(run):
    true = Geodesic.WGS84.Inverse(*CAMERA[::-1], *SUBJECT[::-1])
    way = QgsCoordinateTransform(*(QgsCoordinateReferenceSystem(crs) for crs in ("EPSG:4326", "EPSG:32625")), QgsProject.instance())
    point = way.transform(QgsPointXY(*CAMERA))
    clicks = {**CLICKS, "CAMERA": f"{point.x():.3f},{point.y():.3f} [EPSG:32625]"}
    (row,) = run("plan_one_subject", {**clicks, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY, **JUNE}).rows("SIGHTLINE")
    assert row["bearing_deg"] == pytest.approx(true["azi1"] % 360, abs=1e-4)  # deg: the click is written to the millimetre
    assert row["dist_m"] == pytest.approx(true["s12"], abs=0.002)
    assert (row["camera"], row["subject"]) == ("Camera", "Subject")  # where nothing else is said


def test_results_are_styled_and_temporal(run):
    made = run("plan_one_subject", {**CLICKS, **JUNE, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY})
    alignments, sightline = made.layers["ALIGNMENTS"], made.layers["SIGHTLINE"]
    assert alignments.temporalProperties().isActive()
    assert (alignments.temporalProperties().startField(), alignments.temporalProperties().endField()) == ("t_start", "t_end")
    assert {type(layer.renderer()).__name__ for layer in (alignments, sightline)} == {"QgsCategorizedSymbolRenderer"}
    assert alignments.attributeAlias(alignments.fields().lookupField("bearing_deg")) == "Bearing, camera to subject [° true]"


def test_clicks_on_one_spot_find_nothing_and_say_so(run):
    made = run("plan_one_subject", {**CLICKS, "CAMERA": CLICKS["SUBJECT"], "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY, **JUNE})
    assert made.rows("SIGHTLINE") == made.rows("ALIGNMENTS") == []
    assert "No sightlines: 1 with the camera on its subject." in made.log


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        ({"FIRST_NIGHT": "2027-06-02", "LAST_NIGHT": "2027-05-01"}, "Exchange them"),
        ({"FIRST_NIGHT": "soon"}, "is no date"),
        ({"BODIES": ["venus"]}, "is not known. Choose from"),
        ({"SUBJECT_HEIGHT": -1}, "Give 0 or more"),
        ({"TIME_ZONE": "Mars/Hill"}, "no time zone 'Mars/Hill'"),
        ({"ALIGNMENTS": "/nowhere/at/all.gpkg"}, "ALIGNMENTS"),
    ],
)
def test_what_is_wrong_is_refused_before_a_step_is_run(algorithm, context, wrong, sentence):
    given = {**CLICKS, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY, **wrong}
    taken, text = algorithm("plan_one_subject").checkParameterValues(given, context)
    assert not taken
    assert sentence in text


@pytest.mark.parametrize(("wrong", "sentence"), [({"AZ_TOLERANCE": 90}, "less than 90 degrees"), ({"BODIES": ["star"]}, "STAR is blank")])
def test_what_only_a_step_can_know_is_refused_by_it(algorithm, context, wrong, sentence):
    """QGIS does not check the values of steps: they do it themselves."""
    feedback = Feedback()
    given = {**CLICKS, **JUNE, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY, **wrong}
    _, done = algorithm("plan_one_subject").run(given, context, feedback)
    assert not done
    assert sentence in feedback.log


def test_a_cancelled_model_stops(run):
    made = run(
        "plan_one_subject",
        {**CLICKS, "FIRST_NIGHT": "2020-01-01", "LAST_NIGHT": "2039-12-31", "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY},
        cancel_at=1,
    )
    assert made.feedback.isCanceled()
    assert "Model processed OK" not in made.log or "Cancelled" in made.log


# The season of a park


def test_a_season_is_that_of_night_windows(run, layers):
    asked = {"SITES": layers("subjects"), "SITE_NAME": "name", "MOON": "any", "FIRST_NIGHT": "2027-05-20", "LAST_NIGHT": "2027-07-02"}
    made = run("park_season", {**asked, "NIGHTS": TEMPORARY, "MONTHS": TEMPORARY})
    by_step = run("night_windows", {**asked, "MONTHS": TEMPORARY})
    assert made.rows("NIGHTS") == by_step.rows()
    assert made.rows("MONTHS") == by_step.rows("MONTHS")
    assert len(made.rows("NIGHTS")) == 6 * 44
    assert made.layers["NIGHTS"].temporalProperties().isActive()


@pytest.mark.parametrize("wanted", [True, False])
def test_charts_are_drawn_where_they_are_wanted(run, layers, tmp_path, wanted):
    asked = {"SITES": layers("subjects"), "SITE_NAME": "name", **JUNE, "NIGHTS": TEMPORARY, "MONTHS": TEMPORARY}
    run("park_season", {**asked, "DRAW_CHARTS": wanted, "CHARTS": str(tmp_path / "charts")})
    assert len(list((tmp_path / "charts").glob("*.png"))) == (6 if wanted else 0)


def test_the_charts_folder_may_be_left_out(algorithm):
    optional = QgsProcessingParameterDefinition.Flag.FlagOptional
    model = algorithm("park_season")
    assert {name for name in OUTPUTS["park_season"] if model.parameterDefinition(name).flags() & optional} == {"CHARTS", "MONTHS"}


# In batch


def test_rows_of_a_batch_do_not_hang_on_each_other(algorithm):
    """As the batch dialog runs them: one algorithm, row by row, each in a context of its own."""
    from processing.gui.AlgorithmExecutor import execute

    model = algorithm("plan_one_subject")
    assert model.flags() & QgsProcessingAlgorithm.Flag.FlagSupportsBatch
    bearings = []
    for click in ("-33.0012,35.9771 [EPSG:4326]", "-33.0100,35.9862 [EPSG:4326]", "-33.0012,35.9771 [EPSG:4326]"):
        given = {**CLICKS, **JUNE, "SUBJECT": click, "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY}
        context = QgsProcessingContext()
        done, results = execute(model, given, context, Feedback())
        assert done
        (line,) = context.getMapLayer(results["SIGHTLINE"]).getFeatures()
        bearings.append(line["bearing_deg"])
    assert bearings[0] == bearings[2] != bearings[1]


def test_permit_packages_of_a_batch_do_not_hang_on_each_other(algorithm, permit, tmp_path):
    from processing.gui.AlgorithmExecutor import execute

    found = []
    for number, time in enumerate(("2027-06-06T23:30:00", "2027-06-07T01:30:00", "2027-06-06T23:30:00")):
        sheets = tmp_path / f"{number}.pdf"
        context = QgsProcessingContext()
        given = {**permit, "TIME": time, **dict.fromkeys(LAYERS["permit_package"], TEMPORARY), "SHEETS": str(sheets)}
        done, results = execute(algorithm("permit_package"), given, context, Feedback())
        assert done
        assert sheets.read_bytes().startswith(b"%PDF-")
        found.append(sorted(row["camera"] for row in context.getMapLayer(results["STANDPOINTS"]).getFeatures()))
        del context
        gc.collect()  # its layers must go before QGIS does
    assert found[0] == found[2] != found[1]


# By qgis_process: each by its id, and as a file


RUNS = {
    "plan_one_subject": lambda layers: {**CLICKS, "SUBJECT_HEIGHT": 9, **JUNE},
    "park_season": lambda layers: {"SITES": layers("subjects"), "SITE_NAME": "name", **JUNE},
    "permit_package": permit_of,
}
LAYERS = {
    "plan_one_subject": ("SIGHTLINE", "ALIGNMENTS"),
    "park_season": ("NIGHTS", "MONTHS"),
    "permit_package": ("STANDPOINTS", "ZONES", "SIGHTLINES", "ALIGNMENTS"),
}
BESIDE = {"plan_one_subject": {}, "park_season": {"CHARTS": "charts"}, "permit_package": {"SHEETS": "sheets.pdf"}}  # no layers


def rows_of(file):
    """Rows of a GeoPackage's table, and whether it keeps a style."""
    with closing(sqlite3.connect(file)) as database:
        (table,) = database.execute("select table_name from gpkg_contents where data_type = 'features'").fetchone()
        styles = database.execute("select count(*) from layer_styles where f_table_name = ? and styleName = 'Sky Alidade'", (table,))
        return database.execute(f'select * from "{table}"').fetchall(), styles.fetchone()[0] == 1


def as_arguments(parameters):
    return [f"{name}={value}" for name, value in parameters.items()]


@pytest.mark.parametrize("name", RUNS)
def test_qgis_process_runs_them_by_id_and_as_files_alike(qgis_process, layers, tmp_path, name):
    given = RUNS[name](layers)
    files = {output: tmp_path / f"{output}.gpkg" for output in LAYERS[name]}
    for folder in ("by_id", "as_file"):
        (tmp_path / folder).mkdir()
    beside = {output: tmp_path / "by_id" / file for output, file in BESIDE[name].items()}
    done = qgis_process(name, *as_arguments({**given, **files, **beside}))
    assert done.returncode == 0, done.stdout + done.stderr
    by_id = {output: rows_of(file) for output, file in files.items()}
    assert all(rows and styled for rows, styled in by_id.values())

    file = next(file for file in FILES if file.stem == name)
    raw = QgsProcessingModelAlgorithm()
    raw.fromFile(str(file))
    raw.updateDestinationParameters()
    names = {output.name().rpartition(":")[2].upper(): output.name() for output in raw.destinationParameterDefinitions()}
    again = {output: tmp_path / f"{output}_again.gpkg" for output in files}
    rest = {names[output]: tmp_path / "as_file" / file for output, file in BESIDE[name].items()}
    done = qgis_process(str(file), *as_arguments({**given, **rest, **{names[output]: path for output, path in again.items()}}))
    assert done.returncode == 0, done.stdout + done.stderr
    assert {output: rows_of(path) for output, path in again.items()} == by_id
    if name == "permit_package":
        assert [(tmp_path / folder / "sheets.pdf").read_bytes()[:5] for folder in ("by_id", "as_file")] == [b"%PDF-", b"%PDF-"]


def test_qgis_process_tells_what_is_wrong(qgis_process):
    done = qgis_process(
        "plan_one_subject", *as_arguments({**CLICKS, "FIRST_NIGHT": "2060-01-01", "SIGHTLINE": TEMPORARY, "ALIGNMENTS": TEMPORARY})
    )
    assert done.returncode == 1
    assert "lies after the ephemeris" in done.stdout + done.stderr
