"""A run that is killed, fails or is cancelled: what is left never looks like a result that is whole."""

import json
import os
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest
from conftest import Feedback
from geopackages import layers_of, table, with_layers
from qgis.core import QgsProcessingException, QgsProcessingOutputLayerDefinition, QgsProject, QgsRectangle, QgsVectorLayer

SITES = 200
HOUR = {"START": "2027-06-06T00:00Z", "END": "2027-06-06T01:00Z", "STEP": 10}
ROWS = 288_200  # QGIS writes 106,040 of them as the first part of a table; half of them take longer than any killer is late
MONTH = ["START=2027-06-06T00:00Z", "END=2027-07-06T00:00Z", "STEP=30"]


@pytest.fixture
def sites_file(tmp_path):
    path = tmp_path / "sites.geojson"
    points = [{"type": "Point", "coordinates": [-33 + i / 1000, 36]} for i in range(SITES)]
    features = [{"type": "Feature", "properties": {}, "geometry": point} for point in points]
    path.write_text(json.dumps({"type": "FeatureCollection", "features": features}), encoding="utf-8")
    return path


@pytest.fixture
def killed(command_line, sites_file):
    """Kill -9 a run of qgis_process when it tells that so much of its work is done."""
    binary, environment, home = command_line

    def at(percent, output):
        process = subprocess.Popen(
            [binary, "run", "skyalidade:sky_positions", "--", f"SITES={sites_file}", *MONTH, f"OUTPUT={output}"],
            env=environment,
            cwd=home,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        told = ""
        while not told.endswith(f"...{percent}"):
            letter = process.stdout.read(1)
            assert letter, f"the run ended before it was killed: {told}"
            told += letter
        process.send_signal(signal.SIGKILL)
        process.communicate()
        assert process.returncode == -signal.SIGKILL

    return at


@pytest.mark.parametrize("percent", [10, 50])
def test_killed_while_a_file_is_written(killed, tmp_path, percent):
    output = tmp_path / "out.gpkg"
    killed(percent, output)
    assert output.exists()  # it was being written
    assert not layers_of(output)


@pytest.mark.parametrize("ending", ["csv", "geojson", "shp"])
def test_killed_while_a_file_of_another_format_is_written(killed, tmp_path, ending):
    """Rows of a CSV look like a result however few there are: what was there before stays, until the new one is whole."""
    output = tmp_path / f"out.{ending}"
    output.write_text("old", encoding="utf-8")
    before = {path.name for path in tmp_path.iterdir()}
    killed(50, output)
    assert output.read_text(encoding="utf-8") == "old"
    (left,) = {path.name for path in tmp_path.iterdir()} - before
    assert left.startswith(".skyalidade-")
    assert (tmp_path / left / output.name).stat().st_size > 0  # it was being written


@pytest.mark.parametrize("ending", ["csv", "geojson", "shp", "fgb", "tab", "kml"])
def test_a_file_of_another_format_gets_its_name_when_it_is_whole(algorithm, context, layer, tmp_path, ending):
    """All its files, and the layer that QGIS loads is the one that was named."""
    output = tmp_path / f"out.{ending}"
    destination = QgsProcessingOutputLayerDefinition(str(output), QgsProject.instance())
    destination.destinationName = "Sky of the night"
    parameters = {"SITES": layer([("Point(-33 36)",)]), **HOUR, "OUTPUT": destination}
    results, _ = algorithm("sky_positions").run(parameters, context, Feedback(), {}, False)
    assert results["OUTPUT"].startswith(str(output))
    assert {path.stem for path in tmp_path.iterdir()} == {"out"}
    assert list(context.layersToLoadOnCompletion()) == [results["OUTPUT"]]
    assert context.layerToLoadOnCompletionDetails(results["OUTPUT"]).name == "Sky of the night"
    found = QgsVectorLayer(results["OUTPUT"], "found", "ogr")
    assert found.featureCount() == 7
    assert "skyalidade" not in found.dataProvider().subLayers()[0]
    context.setLayersToLoadOnCompletion({})


def test_the_spatial_index_of_an_older_shapefile_goes_with_it(run, layer, tmp_path):
    """Left behind, it would tell of rows that lie elsewhere."""
    output = tmp_path / "out.shp"
    run("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **HOUR, "OUTPUT": str(output)})
    old = QgsVectorLayer(str(output), "old", "ogr")
    old.dataProvider().createSpatialIndex()
    assert (tmp_path / "out.qix").exists()
    run("sky_positions", {"SITES": layer([("Point(20 60)",)]), **HOUR, "OUTPUT": str(output)})
    new = QgsVectorLayer(str(output), "new", "ogr")
    assert len(list(new.getFeatures(QgsRectangle(19, 59, 21, 61)))) == 7


def test_killed_while_a_table_is_written_into_a_geopackage(killed, run, layer, tmp_path):
    """QGIS writes these a part at a time: there are rows, the description says what they are, and no mark of an older table is left."""
    output = with_layers(tmp_path / "out.gpkg", "old")
    run("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **HOUR, "OUTPUT": table(output, "new")})
    assert layers_of(output)["new"] == (7, "Sky Alidade: 7 rows, whole.")
    killed(50, table(output, "new"))
    layers = layers_of(output)
    assert layers["old"] == (1, "")
    rows, description = layers["new"]
    assert 0 < rows < ROWS
    assert description == "Sky Alidade: being written, not whole."
    with closing(sqlite3.connect(output)) as database:
        assert database.execute("SELECT count(*) FROM layer_styles").fetchone() == (0,)


def test_a_run_that_ends_marks_its_layers_as_whole(run, layer, tmp_path):
    sites = layer([("Point(-33 36)",), ("Point(-33 37)",)])
    night = {"FIRST_NIGHT": "2027-06-06", "LAST_NIGHT": "2027-06-10"}
    files = {name: str(tmp_path / f"{name}.gpkg") for name in ("OUTPUT", "WINDOWS", "MONTHS")}
    run("night_windows", {"SITES": sites, **night, **files})
    told = [layers_of(path)[name][1] for name, path in files.items()]
    assert told == ["Sky Alidade: 10 rows, whole.", "Sky Alidade: 10 rows, whole.", "Sky Alidade: 2 rows, whole."]


def test_two_results_in_one_geopackage(run, layer, tmp_path):
    output = tmp_path / "out.gpkg"
    night = {"FIRST_NIGHT": "2027-06-06", "LAST_NIGHT": "2027-06-10"}
    both = {"OUTPUT": table(output, "nights"), "WINDOWS": table(output, "windows")}
    run("night_windows", {"SITES": layer([("Point(-33 36)",)]), **night, **both})
    layers = layers_of(output)
    assert layers["nights"] == (5, "Sky Alidade: 5 rows, whole.")
    assert layers["windows"] == (5, "Sky Alidade: 5 rows, whole.")


@pytest.mark.parametrize("named", [False, True], ids=["file", "table"])
def test_a_cancelled_layer_says_that_it_is_not_whole(run, layer, tmp_path, named):
    output = tmp_path / "out.gpkg"
    many = layer([(f"Point(-33 {36 + i / 1e4})",) for i in range(600)])
    parameters = {"SITES": many, **HOUR, "STEP": 1, "OUTPUT": table(with_layers(output, "old"), "out") if named else str(output)}
    out = run("sky_positions", parameters, cancel_at=5.0)
    rows, description = layers_of(output)["out"]
    assert 0 < rows < 600 * 61
    assert description == f"Sky Alidade: {rows:,} rows, then cancelled, not whole."
    assert f"{rows:,} of 36,600 positions written" in out.log


def of_many_rows(layer):
    return {"SITES": layer([("Point(-33 36)",)] * 50), "START": "2027-06-06T00:00Z", "END": "2027-06-07T00:00Z", "STEP": 20}


@pytest.fixture
def broken(monkeypatch):
    """A fault in the middle of the computation, after the first block of rows."""
    from skyalidade.algorithms import sky_positions

    whole = sky_positions.sky_positions

    def part(*given):
        yield next(whole(*given))
        raise ValueError("something went wrong in the middle")

    monkeypatch.setattr(sky_positions, "sky_positions", part)


@pytest.mark.parametrize("ending", ["gpkg", "shp", "geojson", "csv", "fgb", "tab"])
def test_a_run_that_fails_leaves_no_file(run, layer, broken, tmp_path, ending):
    with pytest.raises(QgsProcessingException, match="in the middle"):
        run("sky_positions", {**of_many_rows(layer), "OUTPUT": str(tmp_path / f"out.{ending}")})
    assert list(tmp_path.iterdir()) == []


def test_a_run_that_fails_leaves_no_table(run, layer, broken, tmp_path):
    output = with_layers(tmp_path / "out.gpkg", "old")
    with pytest.raises(QgsProcessingException, match="in the middle"):
        run("sky_positions", {**of_many_rows(layer), "OUTPUT": table(output, "new")})
    assert layers_of(output) == {"old": (1, "")}


# the project's own files

WRITER = """
import os, signal, sys
from skyalidade.adapters.files import write_whole
replace = os.replace
os.replace = lambda *names: os.kill(os.getpid(), signal.SIGKILL)
write_whole(sys.argv[1], b"new" * 1000)
"""


def test_killed_while_a_page_is_written(tmp_path):
    """Pages, tracks, calendars and pictures are written beside their name, which they get when they are whole."""
    page = tmp_path / "plan.html"
    page.write_text("old", encoding="utf-8")
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    killed = subprocess.run([sys.executable, "-c", WRITER, page], env=environment, check=False, capture_output=True)
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    assert page.read_text(encoding="utf-8") == "old"
