"""Layers of points as Arrow tables: GeoParquet, one file or a folder of them, and whatever else OGR reads."""

import json
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import pyogrio
import pyproj

LAYER_MARK = "|layername="
PARQUET = (".parquet", ".geoparquet")


@dataclass(frozen=True)
class Layer:
    """A layer that has been read: its rows (N,), the ids of its features, their geometries as well-known binary."""

    table: pa.Table
    fid: np.ndarray
    wkb: pa.ChunkedArray
    crs: pyproj.CRS


def files_of(text):
    """The files that the name of a layer means."""
    path = Path(text.split(LAYER_MARK)[0])
    if not path.is_dir():
        return [path]
    inside = (file.relative_to(path) for file in path.rglob("*") if file.is_file())
    files = sorted(path / file for file in inside if not any(part[0] in "._" for part in file.parts))
    return [file for file in files if file.suffix in PARQUET] or files


def read_layer(option, text, fields):
    """Read a layer.

    Parameters
    ----------
    option : str
        That names it, for what is said.
    text : str
        A file, a folder of GeoParquet files, or FILE|layername=NAME.
    fields : iterable of str
        The columns wanted.

    Raises
    ------
    ValueError
        With a sentence, where it cannot be read.
    """
    files, fields = files_of(text), list(dict.fromkeys(fields))
    if not files or not all(file.exists() for file in files):
        raise ValueError(f"{option}: {text.split(LAYER_MARK)[0]} is not there. Give a GeoParquet or GeoPackage file of points.")
    try:
        read = _parquet(option, files, fields) if files[0].suffix in PARQUET else _ogr(option, text, fields)
    except (pyogrio.errors.DataSourceError, pyogrio.errors.DataLayerError, pa.ArrowInvalid) as unreadable:
        raise ValueError(f"{option}: {text} cannot be read: {unreadable}") from unreadable
    if read.crs is None:
        raise ValueError(f"{option}: {text} has no CRS, so nobody knows where it lies. Set the layer's CRS first.")
    return read


def _require_fields(option, wanted, there):
    missing = [name for name in wanted if name not in there]
    if missing:
        raise ValueError(f"{option}: there is no field '{missing[0]}'. Choose from: {', '.join(there) or 'none at all'}.")


def _ogr(option, text, fields):
    path, _, name = text.partition(LAYER_MARK)
    layers = [layer for layer, kind in pyogrio.list_layers(path).tolist() if kind is not None]  # styles are a layer without geometries
    if not layers:
        raise ValueError(f"{option}: {path} has no layer with geometries. Give a layer of points.")
    if not name and len(layers) > 1:
        raise ValueError(f"{option}: {path} holds the layers {', '.join(layers)}. Say which, as in '{path}{LAYER_MARK}{layers[0]}'.")
    if name and name not in layers:
        raise ValueError(f"{option}: {path} has no layer '{name}'. Choose from: {', '.join(layers)}.")
    layer = name or layers[0]
    _require_fields(option, fields, pyogrio.read_info(path, layer=layer)["fields"].tolist())
    about, table = pyogrio.raw.read_arrow(path, layer=layer, columns=fields, return_fids=True)
    fid, geometry = about["fid_column"] or "OGC_FID", about["geometry_name"] or "wkb_geometry"
    crs = pyproj.CRS.from_user_input(about["crs"]) if about["crs"] else None
    return Layer(table.select(fields), table[fid].to_numpy(), table[geometry], crs)


def _parquet(option, files, fields):
    about = _geo(option, files[0])
    geometry = about["primary_column"]
    column = about["columns"][geometry]
    if column.get("encoding") != "WKB":
        raise ValueError(f"{option}: {files[0]} holds geometries as {column.get('encoding')}, not as WKB. Write it anew with WKB.")
    names = [name for name in pq.read_schema(files[0]).names if name != geometry]
    _require_fields(option, fields, names)
    table = pa.concat_tables([pq.ParquetFile(file).read(columns=[geometry, *fields]) for file in files])
    told = column.get("crs", "OGC:CRS84")  # what the format means where nothing is told; null means not known
    crs = None if told is None else pyproj.CRS.from_user_input(told)
    return Layer(table.select(fields), np.arange(table.num_rows), table[geometry], crs)


def _geo(option, file):
    told = (pq.read_metadata(file).metadata or {}).get(b"geo")  # of the file: not every writer puts it into the schema
    if told is None:
        raise ValueError(f"{option}: {file} is Parquet without geometries, as it has no 'geo' metadata. Give a GeoParquet file.")
    return json.loads(told)
