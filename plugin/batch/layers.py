"""Layers of points as Arrow tables: GeoParquet, one file or a folder of them, and whatever else OGR reads."""

import json
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import pyogrio
import pyproj

LAYER_MARK = "|layername="
PARQUET = (".parquet", ".geoparquet")
GEOMETRY = " geometry"  # a name that no field has
NOT_TOLD = "__HIVE_DEFAULT_PARTITION__"  # null, in the name of a folder


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
        read = _parquet(option, files, fields, Path(text)) if files[0].suffix in PARQUET else _ogr(option, text, fields)
    except (pyogrio.errors.DataSourceError, pyogrio.errors.DataLayerError, pa.ArrowInvalid) as unreadable:
        raise ValueError(f"{option}: {text} cannot be read: {' '.join(str(unreadable).split())}") from unreadable
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


def _parquet(option, files, fields, folder):
    first, *others = (_parquet_file(option, file, fields, _told_by_folders(file, folder)) for file in files)
    for file, (_, crs) in zip(files[1:], others):
        if crs != first[1]:
            raise ValueError(f"{option}: {file} has another CRS than {files[0]}. Write all files of the folder in one.")
    try:
        table = pa.concat_tables([first[0], *(table for table, _ in others)], promote_options="permissive")
    except pa.ArrowTypeError as apart:
        raise ValueError(f"{option}: a field is of one kind in some files of {folder}, and of another in others: {apart}") from apart
    return Layer(table.select(fields), np.arange(table.num_rows), table[GEOMETRY], first[1])


def _parquet_file(option, file, fields, told):
    about = _geo(option, file)
    geometry, column = about["primary_column"], about["columns"][about["primary_column"]]
    if column.get("encoding") != "WKB":
        raise ValueError(f"{option}: {file} holds geometries as {column.get('encoding')}, not as WKB. Write it anew with WKB.")
    there = [name for name in pq.read_schema(file).names if name != geometry]
    _require_fields(option, fields, [*there, *(name for name in told if name not in there)])
    table = pq.ParquetFile(file).read(columns=[geometry, *(name for name in fields if name in there)])
    columns = {GEOMETRY: table[geometry]}
    for name in fields:
        columns[name] = table[name] if name in there else pa.array([told[name]] * table.num_rows, pa.string())
    crs = column.get("crs", "OGC:CRS84")  # what the format means where nothing is told; null means not known
    return pa.table(columns), None if crs is None else pyproj.CRS.from_user_input(crs)


def _told_by_folders(file, folder):
    """Fields whose value the names of folders tell, as Hive and Spark write them: country=NO."""
    if not folder.is_dir():
        return {}
    named = (part.partition("=") for part in file.relative_to(folder).parent.parts if "=" in part)
    return {unquote(name): None if value == NOT_TOLD else unquote(value) for name, _, value in named}


def _geo(option, file):
    told = (pq.read_metadata(file).metadata or {}).get(b"geo")  # of the file: not every writer puts it into the schema
    if told is None:
        raise ValueError(f"{option}: {file} is Parquet without geometries, as it has no 'geo' metadata. Give a GeoParquet file.")
    try:
        about = json.loads(told)
        about["columns"][about["primary_column"]].get("encoding")
    except (ValueError, KeyError, TypeError, AttributeError) as damaged:
        raise ValueError(f"{option}: the 'geo' metadata of {file} cannot be read. Write it anew as GeoParquet.") from damaged
    return about
