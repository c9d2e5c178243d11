"""Disks that are full or read-only, files that another program holds, outputs named like inputs: a sentence, and nothing lost."""

import json
import os
import shutil
import sqlite3
import subprocess
from contextlib import closing, contextmanager
from pathlib import Path

import elevation_models as dem
import numpy as np
import pytest
from conftest import Feedback
from geopackages import layers_of, table, with_layers
from osgeo import gdal
from qgis.core import QgsProcessingException, QgsProcessingFeatureSourceDefinition, QgsProject, QgsVectorLayer

TIME = {"START": "2027-06-06T00:00Z"}
NIGHTS = {"FIRST_NIGHT": "2027-06-06", "LAST_NIGHT": "2027-06-10"}
LONG = "x" * 20_000  # a name that takes more room than a row is reckoned to
ENDINGS = ["gpkg", "shp", "geojson", "csv", "fgb"]


# an output named like an input


@pytest.fixture
def stored(tmp_path):
    return with_layers(tmp_path / "stored.gpkg", "sites", "other")


def spellings(path):
    """Names under which a file is the same one."""
    linked = path.with_name("linked.gpkg")
    linked.symlink_to(path)
    hard = path.with_name("hard.gpkg")
    os.link(path, hard)
    return {
        "as it is": str(path),
        "roundabout": f"{path.parent}/./../{path.parent.name}/{path.name}",
        "without its ending": str(path)[: -len(".gpkg")],
        "linked": str(linked),
        "linked hard": str(hard),
        "its table": table(path, "sites"),
        "its table, loud": table(path, "SITES"),
        "as a database": f"ogr:dbname='{path}'",
    }


SPELLED = ["as it is", "roundabout", "without its ending", "linked", "linked hard", "its table", "its table, loud", "as a database"]


@pytest.mark.parametrize("spelled", SPELLED)
def test_output_named_like_its_input(refusal, stored, spelled):
    before = stored.read_bytes()
    output = spellings(stored)[spelled]
    sentence = refusal("sky_positions", {"SITES": f"{stored}|layername=sites", **TIME, "OUTPUT": output})
    assert sentence.startswith("OUTPUT: ")
    assert sentence.endswith(" is the layer of SITES, which would be lost. Choose another name.")
    assert stored.read_bytes() == before


def test_output_named_like_the_layer_of_a_project(refusal, stored):
    sites = QgsVectorLayer(f"{stored}|layername=sites", "sites", "ogr")
    QgsProject.instance().addMapLayer(sites)
    try:
        for given in (sites, sites.id(), "sites", QgsProcessingFeatureSourceDefinition(sites.id(), True)):
            assert "is the layer of SITES" in refusal("sky_positions", {"SITES": given, **TIME, "OUTPUT": str(stored)})
    finally:
        QgsProject.instance().removeMapLayer(sites.id())


def test_output_named_like_an_elevation_model_or_a_second_layer(refusal, stored, tmp_path):
    written = dem.write(tmp_path / "heights.tif", np.zeros((3, 3)), (dem.EAST, 10.0, 0.0, dem.NORTH, 0.0, -10.0))
    heights = str(tmp_path / "heights.gpkg")
    gdal.Translate(heights, written, format="GPKG")
    asked = {"SITES": f"{stored}|layername=sites", **TIME}
    assert "is the layer of DEM" in refusal("sky_positions", {**asked, "DEM": heights, "OUTPUT": heights})
    towns = with_layers(tmp_path / "towns.gpkg", "towns")
    asked = {"SITES": f"{stored}|layername=sites", **NIGHTS, "TOWNS": str(towns), "TOWN_POPULATION": "fid", "WINDOWS": str(towns)}
    assert "WINDOWS: " in refusal("night_windows", asked)


def test_a_new_table_beside_the_input_is_no_clash(run, stored):
    run("sky_positions", {"SITES": f"{stored}|layername=sites", **TIME, "OUTPUT": table(stored, "positions")})
    layers = layers_of(stored)
    assert layers["positions"] == (1, "Sky Alidade: 1 rows, whole.")
    assert layers["sites"] == layers["other"] == (1, "")


def test_an_input_without_a_name_is_the_first_layer(refusal, run, stored):
    asked = {"SITES": str(stored), **TIME}
    assert "is the layer of SITES" in refusal("sky_positions", {**asked, "OUTPUT": table(stored, "sites")})
    run("sky_positions", {**asked, "OUTPUT": table(stored, "other")})
    assert layers_of(stored)["sites"] == (1, "")


def test_two_outputs_of_one_name(refusal, layer, tmp_path):
    asked = {"SITES": layer([("Point(-33 36)",)]), **NIGHTS, "OUTPUT": str(tmp_path / "out.gpkg")}
    sentence = refusal("night_windows", {**asked, "MONTHS": str(tmp_path / "out")})
    assert sentence == f"MONTHS and OUTPUT are both to be written to {tmp_path / 'out.gpkg'}. Give each a name of its own."
    assert "are both to be written to" in refusal("night_windows", {**asked, "MONTHS": table(tmp_path / "out.gpkg", "months")})


def test_tracks_named_like_the_walk_they_are_made_from(refusal, layer, tmp_path):
    track = tmp_path / "walk.gpx"
    track.write_text(
        '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1" creator="a test">'
        '<trk><trkseg><trkpt lat="36" lon="-33"/><trkpt lat="36.01" lon="-33"/></trkseg></trk></gpx>',
        encoding="utf-8",
    )
    fields = ["camera:string", "subject:string", "body:string", "t_utc:datetime"]
    fields += [f"{name}:double" for name in ("az_deg", "alt_deg", "bearing_deg", "dist_m")]
    asked = {"ALIGNMENTS": layer([], fields=fields), "WALK": f"{track}|layername=tracks"}
    assert "is the layer of WALK" in refusal("field_plan", {**asked, "GPX": str(track), "OUTPUT": None})


def test_a_name_with_the_sign_behind_which_layers_are_named(refusal, layer, tmp_path):
    """QGIS would write a file of that name, and not find it again."""
    output = f"{tmp_path}/out.gpkg|layername=sites"
    sentence = refusal("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **TIME, "OUTPUT": output})
    assert sentence.startswith(f"OUTPUT: the name {output} holds '|', behind which QGIS reads the name of a layer.")


# files that another program holds


@contextmanager
def locked(path, how):
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute(f"BEGIN {how}")
        yield
        other.execute("ROLLBACK")


@pytest.mark.parametrize("how", ["EXCLUSIVE", "IMMEDIATE"])
@pytest.mark.parametrize("named", [False, True], ids=["file", "table"])
def test_a_geopackage_that_another_program_is_writing_to(refusal, layer, stored, how, named):
    before = stored.read_bytes()
    with locked(stored, how):
        output = table(stored, "out") if named else str(stored)
        sentence = refusal("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **TIME, "OUTPUT": output})
    assert sentence == f"OUTPUT: Another program is writing to {stored}. Close it there, or choose another name."
    assert stored.read_bytes() == before


def test_a_geopackage_that_another_program_only_reads(run, layer, stored):
    with closing(sqlite3.connect(stored)) as other:
        assert other.execute("SELECT count(*) FROM sites").fetchone() == (1,)
        run("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **TIME, "OUTPUT": table(stored, "out")})
    assert layers_of(stored)["out"] == (1, "Sky Alidade: 1 rows, whole.")


def test_a_lock_that_comes_when_the_run_has_begun(algorithm, context, layer, stored, monkeypatch):
    """A sentence, and the layers that were there are still there."""
    monkeypatch.setattr("skyalidade.adapters.packages.is_locked", lambda path: False)
    parameters = {"SITES": layer([("Point(-33 36)",)]), **TIME, "OUTPUT": table(stored, "out")}
    with locked(stored, "EXCLUSIVE"), pytest.raises(QgsProcessingException, match="locked"):
        algorithm("sky_positions").run(parameters, context, Feedback(), {}, False)
    assert layers_of(stored) == {"sites": (1, ""), "other": (1, "")}


# disks


@contextmanager
def mounted(folder, *options):
    """A file system of its own on a folder; needs the rights to mount."""
    mounting = ["mount", *options, str(folder)]
    if shutil.which("mount") is None or subprocess.run(mounting, check=False, capture_output=True).returncode != 0:
        pytest.skip("no rights to mount a file system on this machine")
    try:
        yield folder
    finally:
        subprocess.run(["umount", "--lazy", str(folder)], check=True)


@pytest.fixture
def small_disk(tmp_path):
    """A function that mounts a disk of some kilobytes until the test ends."""
    folder = tmp_path / "disk"
    folder.mkdir()
    opened = []

    def of(kilobytes):
        opened.append(mounted(folder, "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs"))
        return opened[-1].__enter__()

    yield of
    for disk in opened:
        disk.__exit__(None, None, None)


@pytest.fixture
def long_rows(layer):
    """A hundred sites with long names: 2 MB, reckoned as 60 kB."""
    return {"SITES": layer([("Point(-33 36)", LONG)] * 100, fields=["name:string(30000,0)"]), "SITE_NAME": "name", **TIME}


@pytest.mark.parametrize("ending", ["gpkg", "geojson", "csv", "fgb"])
@pytest.mark.parametrize("kilobytes", [100, 400, 1900])
def test_a_disk_that_fills(run, long_rows, small_disk, kilobytes, ending):
    """In the first rows, in the midst, and when the last of them is written out at the end."""
    disk = small_disk(kilobytes)
    with pytest.raises(QgsProcessingException, match=r"OUTPUT: writing stopped after \d+ rows: (the disk is full|Unexpected I/O failure)"):
        run("sky_positions", {**long_rows, "OUTPUT": str(disk / f"out.{ending}")})
    assert list(disk.iterdir()) == []


def test_a_shapefile_on_a_disk_that_fills(run, long_rows, small_disk):
    disk = small_disk(80)  # a Shapefile cuts names after 254 letters
    with pytest.raises(QgsProcessingException, match="the disk is full. Make room"):
        run("sky_positions", {**long_rows, "OUTPUT": str(disk / "out.shp")})
    assert list(disk.iterdir()) == []


def test_a_disk_that_fills_while_a_table_is_written(run, long_rows, small_disk):
    output = with_layers(small_disk(600) / "out.gpkg", "old")
    with pytest.raises(QgsProcessingException, match="the disk is full. Make room"):
        run("sky_positions", {**long_rows, "OUTPUT": table(output, "new")})
    assert layers_of(output)["old"] == (1, "")
    assert "whole." not in layers_of(output).get("new", (0, ""))[1].replace("not whole.", "")


def test_a_disk_without_room_for_the_rows_is_refused_with_their_number(run, layer, small_disk):
    disk = small_disk(3000)
    month = {"START": "2027-06-01T00:00Z", "END": "2027-07-01T00:00Z", "STEP": 1}
    with pytest.raises(QgsProcessingException, match=r"This may write up to 43,201 rows, 25 MB, but .* has 3 MB left. Ask for less."):
        run("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **month, "OUTPUT": str(disk / "out.gpkg")})
    assert list(disk.iterdir()) == []


def test_a_read_only_disk(refusal, layer, tmp_path):
    """Where even root may not write."""
    folder = tmp_path / "disk"
    folder.mkdir()
    with mounted(folder, "-t", "tmpfs", "-o", "ro", "tmpfs"):
        sentence = refusal("sky_positions", {"SITES": layer([("Point(-33 36)",)]), **TIME, "OUTPUT": str(folder / "out.gpkg")})
    assert sentence == f"OUTPUT: The folder {folder} may not be written to. Choose another one."


def test_exit_codes_and_the_input_byte_for_byte(qgis_process, small_disk, stored, tmp_path):
    disk = small_disk(400)
    names = tmp_path / "sites.geojson"
    point = {"type": "Point", "coordinates": [-33, 36]}
    features = [{"type": "Feature", "properties": {"name": LONG}, "geometry": point}] * 100
    names.write_text(json.dumps({"type": "FeatureCollection", "features": features}), encoding="utf-8")
    full = qgis_process("sky_positions", f"SITES={names}", "SITE_NAME=name", "START=2027-06-06T00:00Z", f"OUTPUT={disk}/out.gpkg")
    assert full.returncode == 1
    assert "the disk is full. Make room, or write elsewhere" in full.stdout + full.stderr
    assert "Traceback" not in full.stdout + full.stderr
    before = stored.read_bytes()
    over = qgis_process("sky_positions", f"SITES={stored}|layername=sites", "START=2027-06-06T00:00Z", f"OUTPUT={stored}")
    assert over.returncode == 1
    assert "is the layer of SITES, which would be lost" in over.stdout + over.stderr
    assert stored.read_bytes() == before


def test_a_page_on_a_full_disk_leaves_the_old_one(small_disk):
    from skyalidade.adapters.files import write_whole

    page = Path(small_disk(100), "plan.html")
    page.write_bytes(b"old")
    with pytest.raises(QgsProcessingException, match=f"{page} could not be written: No space left on device"):
        write_whole(page, b"x" * 200_000)
    assert page.read_bytes() == b"old"
    assert [path.name for path in page.parent.iterdir()] == ["plan.html"]
