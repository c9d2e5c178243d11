"""Partitions of results as tables, and how they are compared; what the processes of a run need."""

import contextlib
import os
import sys
import time
from pathlib import Path

import numpy as np
import pyarrow as pa
from pyarrow import dataset

STAGE = Path(__file__).resolve().parents[2] / "build" / "stage"
SAMPLE = Path(__file__).resolve().parents[2] / "sample_project"
PATIENCE_S = 300.0  # only a run that hangs takes as long, on a busy machine too
ROUNDING = 1e-12  # relative; in the last digits numpy rounds by where in an array a number stands


def environment(stage=STAGE):
    """Of a process that has a staged plugin, and the libraries of this one."""
    here = [path for path in sys.path if path and path != str(STAGE)]
    return {**os.environ, "PYTHONPATH": os.pathsep.join([str(stage), *here]), "DASK_LOGGING__DISTRIBUTED": "critical"}


def command(*arguments):
    """The command with arguments."""
    return [sys.executable, "-P", "-m", "skyalidade.batch", *map(str, arguments)]


def wait_for(true, what):
    """Wait until something is true."""
    end_s = time.monotonic() + PATIENCE_S
    while not true():
        assert time.monotonic() < end_s, f"waited in vain for {what}"
        time.sleep(0.02)


def ended(group):
    """Whether no process of a group lives; those that have ended and that no one has asked after do not."""
    for stat in Path("/proc").glob("[0-9]*/stat"):
        with contextlib.suppress(OSError):
            state, _, of = stat.read_text(encoding="utf-8", errors="replace").rpartition(")")[2].split()[:3]
            if int(of) == group and state not in ("Z", "X"):
                return False
    return True


def files_of(folder):
    """The partitions that are there, with what tells whether they were written anew."""
    return {path.name: (path.stat().st_ino, path.stat().st_mtime_ns) for path in Path(folder).glob("part-*.parquet")}


def table_of(folder, *keys):
    """All rows of a folder, in the order of some columns."""
    table = dataset.dataset(folder, format="parquet").to_table()
    return table.sort_by([(key, "ascending") for key in keys])


def assert_equal(one, other, tolerance=0.0):
    """The same rows: equal, but for numbers within a tolerance of each other, relative where they are over 1."""
    assert one.column_names == other.column_names
    assert one.num_rows == other.num_rows > 0
    for name in one.column_names:
        a, b = one[name], other[name]
        if tolerance and pa.types.is_floating(b.type):
            a, b = a.to_numpy(), b.to_numpy()
            assert np.array_equal(np.isnan(a), np.isnan(b)), name
            apart = np.abs(a - b) / np.maximum(np.abs(b), 1.0)
            assert np.nanmax(apart, initial=0.0) <= tolerance, f"{name}: {np.nanmax(apart)}"
        else:
            assert a.to_pylist() == b.to_pylist(), name
