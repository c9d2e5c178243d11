"""Partitions of a result: GeoParquet files with the fields of `names.py`, each there whole or not at all."""

import contextlib
import json
import os
import uuid
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import shapely

from ..names import FIELDS, free_name, short
from ..plan import wkb

GEOPARQUET = "1.1.0"
GEOMETRY = "geometry"
TYPES = {
    "text": pa.string(),
    "int": pa.int64(),
    "real": pa.float64(),
    "bool": pa.bool_(),
    "date": pa.date32(),
    "datetime": pa.timestamp("ms", tz="UTC"),
}
PART_MARK = ".part"  # begins the names of files that are not whole; readers of folders pass over names with a point before them


def path_of(folder, output, number, ending=".parquet"):
    """The file of a partition: in a folder for each output of a run, its name the same in all."""
    return Path(folder) / output / f"part-{number:06d}{ending}"


def remove_torn(folder):
    """Remove what runs that were ended left behind half written."""
    for torn in Path(folder).rglob(f"{PART_MARK}-*"):
        torn.unlink()


def part_of(path):
    """The name under which a file is written until it is whole, in a folder that is there."""
    path.parent.mkdir(parents=True, exist_ok=True)
    return path.parent / f"{PART_MARK}-{path.stem}-{uuid.uuid4().hex}"  # of all machines that share the folder


def give_name(part, path):
    """Give a file that is whole its name."""
    with open(part, "rb+") as file:
        os.fsync(file.fileno())
    os.replace(part, path)


class Partition:
    """One file of rows.

    Parameters
    ----------
    path : Path
        Its folder is made where it is not there.
    names : sequence of str
        Keys of `names.FIELDS`, in order.
    kind : str
        Of the geometries, `Point` or `MultiLineString`.
    kept : pyarrow.Schema
        Fields that are carried along behind the others.
    crs : dict
        PROJJSON.
    """

    def __init__(self, path, names, kind, kept, crs):
        self.path, self.rows, self._part = path, 0, part_of(path)
        self._names, self._kept = names, _kept_names(names, kept.names)
        fields = [pa.field(name, TYPES[FIELDS[name].kind]) for name in names]
        fields += [kept.field(old).with_name(new) for old, new in zip(kept.names, self._kept)]
        self.schema = pa.schema([*fields, pa.field(GEOMETRY, pa.binary())])
        self._about = {"encoding": "WKB", "geometry_types": [kind], "crs": crs}
        self._bounds = np.array([np.inf, np.inf, -np.inf, -np.inf])
        self._writer = None

    def write(self, table, kept, geometries, bounds):
        """Write rows.

        Parameters
        ----------
        table : mapping of str to array_like (N,)
            As `adapters.fields.columns` takes it; a name that it does not hold is null.
        kept : pyarrow.Table
            N rows of the fields carried along.
        geometries : pyarrow.Array
        bounds : sequence of 4 floats
            Least x and y, greatest x and y of the geometries.
        """
        if self._writer is None:
            self._writer = pq.ParquetWriter(self._part, self.schema, compression="zstd")
        count = len(geometries)
        columns = [_column(FIELDS[name].kind, table.get(name), count) for name in self._names]
        kept_columns = [column.combine_chunks() for column in kept.columns]
        self._writer.write_table(pa.Table.from_arrays([*columns, *kept_columns, geometries], schema=self.schema))
        self.rows += count
        low, high = np.fmin(self._bounds, bounds)[:2], np.fmax(self._bounds, bounds)[2:]
        self._bounds = np.concatenate([low, high])

    def close(self):
        """Give the file its name: from then on the partition is there. One without rows is a file too."""
        if self._writer is None:
            self._writer = pq.ParquetWriter(self._part, self.schema, compression="zstd")
        if np.isfinite(self._bounds).all():
            self._about["bbox"] = self._bounds.tolist()
        about = {"version": GEOPARQUET, "primary_column": GEOMETRY, "columns": {GEOMETRY: self._about}}
        self._writer.add_key_value_metadata({"geo": json.dumps(about)})
        self._writer.close()
        give_name(self._part, self.path)

    def abandon(self):
        """Leave nothing of it."""
        if self._writer is not None:
            with contextlib.suppress(OSError):  # what cannot be written is to be removed anyway
                self._writer.close()
        self._part.unlink(missing_ok=True)


def _kept_names(names, kept):
    """Names of the fields carried along, with a number where one is taken, as the Processing algorithms give them."""
    taken = {short(name) for name in (*names, "fid", "geom")}
    free = []
    for name in kept:
        free.append(free_name(name, taken))
        taken.add(short(free[-1]))
    return free


def _column(kind, values, count):
    if values is None:
        return pa.nulls(count, TYPES[kind])
    if kind == "real":
        column = np.asarray(values, dtype=float)
        return pa.array(column, mask=~np.isfinite(column))
    if kind == "datetime":
        seconds = np.floor(np.asarray(values, dtype=float) + 0.5)  # whole, rounded as in the layers of the algorithms
        known = np.isfinite(seconds)
        return pa.array(np.where(known, seconds * 1000.0, 0.0).astype(np.int64), mask=~known).cast(TYPES[kind])
    if kind == "date":
        return pa.array(np.asarray(values, dtype="datetime64[D]"), TYPES[kind])
    if kind == "int":
        return pa.array(np.asarray(values, dtype=np.int64))
    column = np.asarray(values, dtype=object)
    return pa.array(column, TYPES[kind], mask=column != column)  # noqa: PLR0124  nan alone differs from itself


def points(x, y):
    """Points as geometries, and their bounds."""
    data = wkb.points(x, y)
    offsets = np.arange(len(x) + 1, dtype=np.int32) * wkb.POINT_BYTES
    geometries = pa.Array.from_buffers(pa.binary(), len(x), [None, pa.py_buffer(offsets), pa.py_buffer(data)])
    return geometries, (x.min(), y.min(), x.max(), y.max()) if len(x) else (np.nan,) * 4


def lines(drawn, row):
    """Lines as geometries for rows, from well-known binary of which each row has one, and their bounds."""
    geometries = pa.array(drawn, pa.binary()).take(pa.array(row))
    return geometries, shapely.total_bounds(shapely.from_wkb(np.array(drawn, dtype=object))) if len(drawn) else (np.nan,) * 4
