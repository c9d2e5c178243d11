"""Partitions as files: valid GeoParquet by a validator that is not ours, with the types and the rounding of the layers."""

import json
import subprocess
import sys
from datetime import date, datetime, timezone
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import pyproj
import pytest

from skyalidade.batch.partitions import Partition, lines, path_of, points, remove_torn
from skyalidade.plan.drawing import drawn_wkb

FIELDS = ("site", "site_id", "night", "t_utc", "minutes", "visible", "glow_town")
ROWS = {
    "site": np.array(["Ötztal", "b", None], dtype=object),
    "site_id": np.array([1, 2, 3]),
    "night": np.array(["2027-06-06", "NaT", "1999-12-31"], dtype="datetime64[D]"),
    "t_utc": np.array([1812345678.5, np.nan, -0.4]),
    "minutes": np.array([1.5, np.nan, np.inf]),
    "visible": np.array([True, None, False], dtype=object),
}
VALIDATOR = Path(sys.executable).parent / "geoparquet-validator"


def partition(folder, crs="EPSG:4326", kind="Point", kept=None):
    kept = pa.schema([]) if kept is None else kept
    return Partition(path_of(folder.parent, folder.name, 7), FIELDS, kind, kept, pyproj.CRS(crs).to_json_dict())


def assert_valid(file):
    """By geoparquet-validator, which knows the rules of the format."""
    told = subprocess.run([VALIDATOR, "check", "--class", "core", "--json", file], capture_output=True, text=True, check=False)
    assert told.returncode == 0, told.stdout
    assert "fail" not in {test.get("status", "").lower() for test in json.loads(told.stdout).get("tests", [])}


def test_values(tmp_path):
    made = partition(tmp_path)
    made.write(ROWS, pa.table({}), *points(np.array([1.0, 2.0, 3.0]), np.array([4.0, 5.0, 6.0])))
    assert list(tmp_path.glob("*.parquet")) == [], "it has its name before it is whole"
    made.close()
    table = pq.read_table(tmp_path / "part-000007.parquet")
    assert table.column_names == [*FIELDS, "geometry"]
    assert table["site"].to_pylist() == ["Ötztal", "b", None]
    assert table["night"].to_pylist() == [date(2027, 6, 6), None, date(1999, 12, 31)]
    # half a second up, as the layers of the algorithms
    whole = [datetime.fromtimestamp(1812345679, tz=timezone.utc), None, datetime(1970, 1, 1, tzinfo=timezone.utc)]
    assert table["t_utc"].to_pylist() == whole
    assert table["minutes"].to_pylist() == [1.5, None, None]
    assert table["visible"].to_pylist() == [True, None, False]
    assert table["glow_town"].to_pylist() == [None] * 3
    assert_valid(tmp_path / "part-000007.parquet")


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:32612"])
def test_lines_and_their_bounds(tmp_path, crs):
    map_of = pyproj.Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform
    drawn = drawn_wkb([-110.0, -109.9], [40.0, 40.1], [-110.1, -109.8], [40.2, 40.0], map_of, crs == "EPSG:4326")
    made = partition(tmp_path, crs, "MultiLineString")
    made.write(ROWS, pa.table({}), *lines(drawn, np.array([1, 0, 1])))
    made.close()
    file = tmp_path / "part-000007.parquet"
    assert pq.read_table(file)["geometry"].to_pylist() == [drawn[1], drawn[0], drawn[1]]
    assert_valid(file)
    told = json.loads(pq.read_metadata(file).metadata[b"geo"])["columns"]["geometry"]
    ends = np.array(map_of([-110.0, -109.9, -110.1, -109.8], [40.0, 40.1, 40.2, 40.0]))
    assert np.allclose(told["bbox"], [*ends.min(axis=1), *ends.max(axis=1)], rtol=0, atol=1e-6 * np.abs(ends).max())


def test_one_without_rows_is_a_file_too(tmp_path):
    partition(tmp_path).close()
    assert pq.read_table(tmp_path / "part-000007.parquet").num_rows == 0
    assert_valid(tmp_path / "part-000007.parquet")


def test_fields_carried_along_get_a_free_name(tmp_path):
    kept = pa.table({"site": [5, 6, 7], "glow_town": ["x", "y", "z"]})
    made = partition(tmp_path, kept=kept.schema)
    made.write(ROWS, kept, *points(np.zeros(3), np.zeros(3)))
    made.close()
    table = pq.read_table(tmp_path / "part-000007.parquet")
    assert table.column_names[-3:] == ["site_2", "glow_town_2", "geometry"]
    assert table["site_2"].to_pylist() == [5, 6, 7]


def test_one_that_is_abandoned_leaves_nothing(tmp_path):
    made = partition(tmp_path)
    made.write(ROWS, pa.table({}), *points(np.zeros(3), np.zeros(3)))
    made.abandon()
    assert list(tmp_path.iterdir()) == []


def test_torn_ones_are_removed_and_whole_ones_are_not(tmp_path):
    partition(tmp_path / "nights").close()
    (tmp_path / "nights" / ".part-000008-1-1").write_bytes(b"torn")
    remove_torn(tmp_path)
    assert [path.name for path in (tmp_path / "nights").iterdir()] == ["part-000007.parquet"]
