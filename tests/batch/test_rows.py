"""Rows of partitions are those that the Processing algorithms write."""

import numpy as np
import pyarrow as pa
import pyogrio
import pytest
from partitioned import ROUNDING, SAMPLE, assert_equal, table_of

from skyalidade.names import ALIGNMENTS_FIELDS, MONTHS_FIELDS, NIGHT_WINDOWS_FIELDS, UNMET_FIELDS, WINDOWS_FIELDS

VIEWPOINTS = f"{SAMPLE}/parks.gpkg|layername=viewpoints"
CAMERAS, SUBJECTS = (f"{SAMPLE}/reserve.gpkg|layername={name}" for name in ("cameras", "subjects"))
KEYS = {
    "nights": ("site_id", "night"),
    "windows": ("site_id", "t_start"),
    "months": ("site_id", "month"),
    "alignments": ("camera_id", "subject_id", "body", "t_start"),
    "unmet": ("camera_id", "subject_id", "body"),
}


@pytest.fixture
def processing(qgis_process, tmp_path):
    """Run an algorithm into GeoPackages and read them as partitions are."""

    def run(algorithm, outputs, *parameters):
        files = {name: tmp_path / f"{name}.gpkg" for name in outputs}
        told = qgis_process("run", f"skyalidade:{algorithm}", "--", *parameters, *(f"{name}={file}" for name, file in files.items()))
        assert told.returncode == 0, told.stderr
        return {name: _read(file, outputs[name]) for name, file in files.items()}

    return run


def _read(file, output):
    about, table = pyogrio.raw.read_arrow(file, layer=file.stem)
    table = table.rename_columns(["geometry" if name == about["geometry_name"] else name for name in table.column_names])
    columns = []
    for name in table.column_names:
        column = table[name]
        is_time = pa.types.is_timestamp(column.type)
        columns.append(column.cast(pa.timestamp("ms")).cast(pa.timestamp("ms", tz="UTC")) if is_time else column)
    return pa.table(columns, names=table.column_names).sort_by([(key, "ascending") for key in KEYS[output]])


def assert_the_same(batch_folder, of_qgis, output, fields):
    rows = table_of(batch_folder / output, *KEYS[output])
    assert rows.column_names[: len(fields)] == list(fields)
    assert rows.column_names[-1] == "geometry"
    one, other = (table.drop_columns(["geometry"]) for table in (rows, of_qgis))
    assert_equal(one, other, ROUNDING)
    return rows["geometry"], of_qgis["geometry"]


def test_night_windows(batch, processing, tmp_path):
    parameters = ("FIRST_NIGHT=2027-01-01", "LAST_NIGHT=2027-05-30", "SITE_NAME=name", "CAMERA_HEIGHT=field:lens_m", "KEEP_FIELDS=zone")
    outputs = {"OUTPUT": "nights", "WINDOWS": "windows", "MONTHS": "months"}
    of_qgis = processing("night_windows", outputs, f"SITES={VIEWPOINTS}", *parameters)
    options = ("--first-night", "2027-01-01", "--last-night", "2027-05-30", "--site-name", "name", "--camera-height", "field:lens_m")
    more = ("--keep-fields", "zone", "--windows", "--months", "--block", "9", "--workers", "2", "--output", tmp_path / "out")
    told = batch("nights", "--sites", VIEWPOINTS, *options, *more)
    assert told.returncode == 0, told.stderr
    fields = {"nights": NIGHT_WINDOWS_FIELDS, "windows": WINDOWS_FIELDS, "months": MONTHS_FIELDS}
    for parameter, output in outputs.items():
        places = assert_the_same(tmp_path / "out", of_qgis[parameter], output, (*fields[output], "zone"))
        assert places[0].to_pylist() == places[1].to_pylist()


def test_alignments_over_terrain(batch, processing, tmp_path):
    """With two bodies, a skyline, subjects' heights from a field and lines in the CRS of the cameras."""
    parameters = ("FIRST_NIGHT=2027-05-01", "LAST_NIGHT=2027-05-10", "BODIES=core", "BODIES=moon", "CAMERA_NAME=name", "MOON=down_or_thin")
    layers = (f"CAMERAS={CAMERAS}", f"SUBJECTS={SUBJECTS}", f"DEM={SAMPLE}/dem.tif", "SUBJECT_HEIGHT=field:height_m", "KEEP_FIELDS=name")
    outputs = {"OUTPUT": "alignments", "UNMET": "unmet"}
    of_qgis = processing("alignments", outputs, *layers, *parameters)
    options = ("--first-night", "2027-05-01", "--last-night", "2027-05-10", "--bodies", "core,moon", "--camera-name", "name")
    layers = ("--cameras", CAMERAS, "--subjects", SUBJECTS, "--dem", SAMPLE / "dem.tif", "--subject-height", "field:height_m")
    more = ("--moon", "down_or_thin", "--keep-fields", "name", "--unmet", "--block", "4", "--workers", "2", "--output", tmp_path / "out")
    told = batch("alignments", *layers, *options, *more)
    assert told.returncode == 0, told.stderr
    assert "no trees or buildings" in told.stderr
    drawn = assert_the_same(tmp_path / "out", of_qgis["OUTPUT"], "alignments", (*ALIGNMENTS_FIELDS, "name"))
    for one, other in zip(*(column.to_pylist() for column in drawn)):
        assert len(one) == len(other)
        assert np.allclose(np.frombuffer(one[18:], "<f8"), np.frombuffer(other[18:], "<f8"), rtol=0, atol=1e-6)  # m
    places = assert_the_same(tmp_path / "out", of_qgis["UNMET"], "unmet", (*UNMET_FIELDS, "name"))
    assert places[0].to_pylist() == places[1].to_pylist()
