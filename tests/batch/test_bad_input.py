"""What is refused, with a sentence that says what to do, before anything is written."""

import json
import shutil
import socket
import subprocess
import sys
import time
from types import SimpleNamespace

import pyarrow.dataset as dataset
import pytest
from partitioned import PATIENCE_S, SAMPLE, environment, files_of

from skyalidade.adapters.cautions import sun_line
from skyalidade.batch import cluster as workers
from skyalidade.batch.asked import SUN_LINE
from skyalidade.batch.command import main
from skyalidade.names import UNMET_FIELDS

NIGHTS = ("--first-night", "2027-03-01", "--last-night", "2027-03-05")


@pytest.fixture
def refused(capsys, sites, tmp_path):
    """The sentence with which the command refuses options for eight sites; fails when it takes them, or has written anything."""

    def sentence(*options, command="nights", layers=None):
        before = {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")}
        layers = ("--sites", sites(8)) if layers is None else layers
        arguments = [str(part) for part in (command, *layers, *NIGHTS, "--output", tmp_path / "out", *options)]
        try:
            code = main(arguments)
        except SystemExit as of_argparse:
            code = of_argparse.code
        assert code in (1, 2)
        assert {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")} == before
        return " ".join(capsys.readouterr().err.split("skyalidade.batch")[-1].split())

    return sentence


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("--first-night", "June"), "'June' is no date. Write it as 2027-06-06"),
        (("--last-night", "2027-02-01"), "--last-night (2027-02-01) is before --first-night (2027-03-01). Exchange them."),
        (("--last-night", "2061-01-01"), "from 2027-03-01 to 2061-01-02 leave the ephemeris (1990-01-03 to 2053-10-05)"),
        (("--time-zone", "Mars/Olympus"), "Mars/Olympus"),
        (("--alt-min", "95"), "'95' is not a number from -90 to 90"),
        (("--tilt-min", "60", "--tilt-max", "30"), "--tilt-min is above --tilt-max, so nothing can lie between them. Exchange them."),
        (("--body", "vega"), "invalid choice: 'vega'"),
        (("--body", "star"), "needs STAR: right ascension and declination"),
        (("--star", "400,0"), "Write right ascension (0 to 360) and declination (-90 to 90), such as 279.23,38.78"),
        (("--camera-height", "-1"), "'-1' is not a number of at least 0"),
        (("--camera-height", "expression:2*3"), "expressions need QGIS. Write a field with the number and give field:NAME"),
        (("--camera-height", "field:lens"), "SITES: there is no field 'lens'. Choose from: name."),
        (("--site-name", "nome"), "SITES: there is no field 'nome'. Choose from: name."),
        (("--towns", "towns.gpkg"), "Only --towns is given. Give both --towns and --town-population, or leave both blank."),
        (("--terrain-radius", "0"), "--terrain-radius leaves no ground beyond --skip-near"),
        (("--dem", "nothing.tif"), "DEM: nothing.tif is not there."),
        (("--dem", __file__), "cannot be opened as a raster"),
        (("--dem", SAMPLE / "dem.tif", "--dem-band", "2"), "DEM_BAND is 2, but"),
        (("--block", "0"), "'0' is not a whole number of 1 or more"),
        (("--sites", "nothing.gpkg"), "SITES: nothing.gpkg is not there."),
    ],
    ids=lambda value: None if isinstance(value, str) else " ".join(map(str, value))[:30],
)
def test_options(refused, options, told):
    assert told in refused(*options)


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("--az-tolerance", "90"), "--az-tolerance is 90. Give more than 0 and less than 90"),
        (("--bodies", "core,vega"), "'vega' is not known. Choose from core, arch,"),
        (("--pairing", "by_field"), "--pairing is by_field, but --pair-field is blank"),
        (("--face-from", "10"), "Only --face-from is given. Give both --face-from and --face-to"),
        (("--max-distance", "0"), "--max-distance is 0, which no sightline is shorter than"),
        (("--sun-min", "-5", "--sun-limit", "-10"), "--sun-min is above --sun-limit"),
    ],
    ids=lambda value: None if isinstance(value, str) else " ".join(value)[:30],
)
def test_options_of_alignments(refused, sites, options, told):
    layers = ("--cameras", sites(8), "--subjects", sites(8))
    assert told in refused(*options, command="alignments", layers=layers)


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("--sky-step", "0"), "--sky-step is 0. Give the degrees between two positions of the body"),
        (("--area", "3,2,0,1"), "'3,2,0,1' is no extent. Write four numbers: least x, greatest x, least y, greatest y"),
        (("--area", "0,1,0,1"), "--area does not meet"),
    ],
    ids=lambda value: None if isinstance(value, str) else " ".join(value),
)
def test_options_of_exposure(refused, options, told):
    assert told in refused(*options, command="exposure", layers=("--dem", SAMPLE / "dem.tif"))


def test_an_output_folder_that_holds_anything_else(refused, tmp_path):
    out = tmp_path / "out"
    out.write_text("a file")
    assert "is a file. Give a folder." in refused()
    out.unlink()
    out.mkdir()
    (out / "notes.txt").write_text("mine")
    assert "holds files, but no run that could go on" in refused()
    (out / "run.json").write_text("{}")
    assert "holds another run: run.json there cannot be read" in refused()


def test_an_output_folder_within_the_folder_of_a_layer(refused, tmp_path):
    """Its partitions would be rows of the layer when the run goes on."""
    parts = tmp_path / "sites"
    parts.mkdir()
    (parts / "part.parquet").write_bytes(b"")
    told = refused("--output", parts / "deep" / "out", layers=("--sites", parts))
    assert f"OUTPUT: {parts}/deep/out lies in the folder of SITES, of which the results would become a part. Give another." in told


def test_an_output_folder_that_holds_another_run(batch, sites, tmp_path):
    """The options that are others are named, and so is a layer that was changed; the run that is there stays as it is."""
    layer, folder = tmp_path / "sites.gpkg", tmp_path / "out"
    layer.write_bytes(sites(8).read_bytes())

    def asked(*more):
        return batch("nights", "--sites", layer, *NIGHTS, "--workers", 1, "--output", folder, *more)

    assert asked("--alt-min", 15).returncode == 0
    before = files_of(folder / "nights")
    told = asked("--moon", "any")
    assert told.returncode == 1
    assert "holds another run: alt_min was 15.0, now blank; moon was down, now any. Give another folder, or remove" in told.stderr
    layer.write_bytes(sites(9).read_bytes())
    assert "holds another run: the files of sites are others, or were changed since." in asked("--alt-min", 15).stderr
    layer.write_bytes(sites(8).read_bytes())
    told = batch("nights", "--sites", f"{layer}|layername=sites_8", *NIGHTS, "--workers", 1, "--output", folder, "--alt-min", 15)
    assert "the files of sites are others" in told.stderr
    record = json.loads((folder / "run.json").read_text(encoding="utf-8"))
    (folder / "run.json").write_text(json.dumps({**record, "version": "0.0.1 (code 12345678)"}), encoding="utf-8")
    assert "its version is 0.0.1 (code 12345678), this one's 0.1.0" in asked("--alt-min", 15).stderr
    assert files_of(folder / "nights") == before


def test_a_folder_that_cannot_be_made(batch, sites, tmp_path):
    (tmp_path / "file").write_text("in the way")
    told = batch("nights", "--sites", sites(8), *NIGHTS, "--workers", 1, "--output", tmp_path / "file" / "out")
    assert told.returncode == 1
    assert f"OUTPUT: {tmp_path}/file/out cannot be written to: Not a directory. Give another folder." in told.stderr


def test_more_rows_than_the_disk_holds(refused, monkeypatch):
    monkeypatch.setattr(shutil, "disk_usage", lambda folder: SimpleNamespace(free=1_000))
    assert "OUTPUT: what is missing takes some 0.0 MB, but" in refused()


def test_a_scheduler_that_is_not_there(refused, monkeypatch):
    monkeypatch.setattr(workers, "REACH_S", 1.0)
    with socket.socket() as silent:
        silent.bind(("127.0.0.1", 0))  # a port that no one listens on, nor comes to meanwhile
        address = f"tcp://127.0.0.1:{silent.getsockname()[1]}"
        begin = time.monotonic()
        told = refused("--scheduler", address)
    assert f"there is no Dask scheduler to be reached at {address} within 1 s. Start one with 'dask scheduler'" in told
    assert time.monotonic() - begin < PATIENCE_S
    assert "there is no Dask scheduler to be reached at nothing.json" in refused("--scheduler", "nothing.json")


def test_a_scheduler_without_workers(refused, monkeypatch, cluster):
    """It has all the time that it needs to answer; workers have a second to come."""
    wait = workers.Client.wait_for_workers
    monkeypatch.setattr(workers, "REACH_S", PATIENCE_S)
    monkeypatch.setattr(workers.Client, "wait_for_workers", lambda client, count, timeout: wait(client, count, timeout / PATIENCE_S))
    assert "has no workers. Start some with 'dask worker" in refused("--scheduler", cluster.address)


def test_workers_that_do_not_see_the_folder(tmp_path):
    seen = {"tcp://10.0.0.1:1": True, "tcp://10.0.0.2:1": False, "tcp://10.0.0.3:1": False}
    client = SimpleNamespace(run=lambda question, path: {worker: question(path) and there for worker, there in seen.items()})
    with pytest.raises(ValueError, match=r"OUTPUT: .* is not there for 2 workers, such as tcp://10.0.0.2:1. Give a place that all of them"):
        workers.require_shared(client, "OUTPUT", tmp_path)


@pytest.mark.parametrize("library", ["distributed", "pyarrow", "pyogrio", "rasterio", "shapely"])
def test_without_a_library_it_says_how_to_add_them(library):
    script = f"import sys; sys.modules['{library}'] = None; from skyalidade.batch.command import main; sys.exit(main(['nights']))"
    told = subprocess.run([sys.executable, "-P", "-c", script], env=environment(), capture_output=True, text=True, check=False)
    assert told.returncode == 1
    (sentence,) = told.stderr.strip().splitlines()
    assert f"This needs the library {library} (" in sentence
    assert sentence.endswith('-m pip install "dask[distributed]" pyarrow pyogrio rasterio shapely')


def test_a_layer_without_a_point(batch, sites, tmp_path):
    told = batch("nights", "--sites", sites(0), *NIGHTS, "--months", "--workers", 1, "--output", tmp_path / "out")
    assert told.returncode == 0
    assert "SITES: 0 points from 0 features." in told.stderr
    assert dataset.dataset(tmp_path / "out" / "nights").to_table().num_rows == 0
    assert dataset.dataset(tmp_path / "out" / "months").to_table().num_rows == 0


def test_partitions_without_a_row(batch, sites, tmp_path):
    """No camera has a subject within a metre: each partition is there, and empty."""
    layers = ("--cameras", sites(8), "--subjects", sites(240), "--max-distance", "1", "--unmet")
    told = batch("alignments", *layers, *NIGHTS, "--block", 4, "--workers", 1, "--output", tmp_path / "out")
    assert told.returncode == 0
    assert len(files_of(tmp_path / "out" / "alignments")) == 2
    assert dataset.dataset(tmp_path / "out" / "alignments").to_table().num_rows == 0
    assert dataset.dataset(tmp_path / "out" / "unmet").to_table().column_names == [*UNMET_FIELDS, "geometry"]


def test_the_sun_is_told_of_as_in_the_algorithms(refused, capsys, qgis_app):
    assert sun_line() == SUN_LINE
    refused("--body", "sun", "--site-name", "nome")
