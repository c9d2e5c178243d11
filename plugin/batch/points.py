"""A layer of points as arrays: places on WGS 84, heights, names and the numbers taken from each feature."""

import math
from collections import Counter
from dataclasses import dataclass, field, fields

import numpy as np
import pyarrow as pa
import pyproj
import shapely

from ..plan.elevations import HIGHEST_M, no_ground_has
from .layers import read_layer

FIELD_PREFIX = "field:"
WGS84, WGS84_3D = "EPSG:4326", "EPSG:4979"
EARTH_M, OTHER_BODY = 6_378_137.0, 0.005  # as PROJ tells bodies apart: by the semi-major axis, relative
NO_POINT = "that hold no point"
POINT = 0  # as shapely numbers the types of geometries


@dataclass(frozen=True)
class Points:
    """Points that can be used, one row a point (N,), as `adapters.points.Points` has them; `kept` holds fields that go along."""

    x: np.ndarray
    y: np.ndarray
    lon_deg: np.ndarray
    lat_deg: np.ndarray
    z_m: np.ndarray
    fid: np.ndarray
    name: np.ndarray
    keys: np.ndarray
    measures: dict
    kept: pa.Table

    def __len__(self):
        return self.x.size

    def take(self, index):
        """The points at an array of indices, or a slice."""
        index = np.arange(len(self))[index]
        arrays = {part.name: getattr(self, part.name)[index] for part in fields(self)[:8]}
        measures = {name: numbers[index] for name, numbers in self.measures.items()}
        return Points(**arrays, measures=measures, kept=self.kept.take(index))


@dataclass
class Read:
    """What came of a layer: its points, its CRS, how many features it has, which were skipped and where a default was taken."""

    points: Points
    crs: pyproj.CRS
    features: int
    skipped: Counter = field(default_factory=Counter)
    defaulted: Counter = field(default_factory=Counter)
    impossible: int = 0  # heights that no ground has

    def sentences(self, option):
        """What is to be said of it."""
        yield f"{option}: {len(self.points):,} points from {self.features:,} features."
        if self.skipped:
            reasons = ", ".join(f"{count:,} {reason}" for reason, count in self.skipped.most_common())
            yield f"{option}: skipped {reasons}."
        for name, count in self.defaulted.items():
            yield f"{option}: {name} is blank in {count:,} features: its default is taken."
        if self.impossible:
            told = f"such as -9999 or more than {HIGHEST_M:,.0f} m: it counts as none."
            yield f"{option}: {self.impossible:,} points have a Z that no ground has, {told}"


def read_points(option, text, fallback_name, name=None, key=None, measures=None, keep=()):
    """Read a layer of points.

    Parameters
    ----------
    option : str
        That names the layer.
    text : str
        As for `layers.read_layer`.
    fallback_name : str
        What a point without a name is called, its feature id after it.
    name, key : str, optional
        Fields with the name, and with the value that pairs.
    measures : dict of str to (given, default, least)
        Numbers by the name of their option: a number for all, or 'field:NAME'.
    keep : sequence of str
        Fields that go along.

    Raises
    ------
    ValueError
        With a sentence, where the layer cannot be read or a measure is none.
    """
    measures = measures or {}
    wanted = [name, key, *(_field_of(told) for told, *_ in measures.values()), *keep]
    layer = read_layer(option, text, [column for column in wanted if column])
    require_earth(option, text, layer.crs)
    read = Read(None, layer.crs, layer.table.num_rows)
    usable = np.ones(read.features, dtype=bool)
    numbers = {label: _measured(label, layer.table, *about, read, usable) for label, about in measures.items()}
    feature, x, y, z_m = _parts(layer.wkb, read, usable)
    if read.features and read.skipped[NO_POINT] == read.features:
        raise ValueError(f"{option}: {text} holds no points, but lines, polygons or others. Give a layer of points.")
    lon_deg, lat_deg = lon_lat(x, y, layer.crs)
    placed = np.isfinite(lon_deg)
    read.skipped.update({"with no place on the Earth": int((~placed).sum())} if not placed.all() else {})
    impossible = placed & no_ground_has(z_m)
    z_m[impossible] = np.nan
    read.impossible = int(impossible.sum())
    at = feature[placed]
    names, keys = (_texts(layer.table, column) for column in (name, key))
    fallback = np.array([f"{fallback_name} {fid}" for fid in layer.fid.tolist()], dtype=object)
    names = np.where(names == None, fallback, names)  # noqa: E711  each element is compared
    places = (column[placed] for column in (x, y, lon_deg, lat_deg, z_m))
    measured = {label: column[at] for label, column in numbers.items()}
    read.points = Points(*places, layer.fid[at], names[at], keys[at], measured, layer.table.select(list(keep)).take(at))
    return read


def require_earth(option, text, crs):
    """Refuse a CRS of another body.

    Raises
    ------
    ValueError
        With a sentence.
    """
    ellipsoid = crs.ellipsoid
    if ellipsoid is not None and abs(ellipsoid.semi_major_metre / EARTH_M - 1.0) > OTHER_BODY:
        raise ValueError(f"{option}: the CRS of {text} ({crs.name}) is one of another body than the Earth. Give another, or set its CRS.")


def lon_lat(x, y, crs):
    """Longitude, any turn, and latitude on WGS 84; nan where there is no such place on the Earth."""
    lon, lat = transformed(x, y, crs, pyproj.CRS(WGS84))
    with np.errstate(invalid="ignore"):
        lost = ~(np.abs(lat) <= 90.0) | ~np.isfinite(lon)
    return np.where(lost, np.nan, lon), np.where(lost, np.nan, lat)


def transformed(x, y, source, target):
    """Coordinates in another CRS, x east and y north; nan where there are none."""
    if source == target:
        return np.array(x, float), np.array(y, float)
    x, y = pyproj.Transformer.from_crs(source, target, always_xy=True).transform(np.array(x, float), np.array(y, float))
    lost = ~(np.isfinite(x) & np.isfinite(y))
    return np.where(lost, np.nan, x), np.where(lost, np.nan, y)


def output_crs(crs):
    """The CRS that results of a layer in this one are written in."""
    return pyproj.CRS(WGS84) if crs == pyproj.CRS(WGS84_3D) else crs


def _field_of(told):
    """The field that a measure is taken from; None where it is a number for all."""
    return told[len(FIELD_PREFIX) :] if isinstance(told, str) else None


def _measured(label, table, told, default, least, read, usable):
    """Numbers of all features; those whose number cannot be used are skipped."""
    field_name = _field_of(told)
    if field_name is None:
        return np.full(read.features, default if told is None else told)
    column = table[field_name]
    given = np.array([_number(value) for value in column.to_pylist()], dtype=float)
    blank, known = np.array(column.is_null()), np.isfinite(given)
    _skip(read, usable, ~known & ~blank, f"whose {label} is no finite number")
    _skip(read, usable, known & (given < least), f"whose {label} is less than {least:g}")
    read.defaulted.update({label: int(blank.sum())} if blank.any() else {})
    return np.where(blank, default, given)


def _skip(read, usable, bad, reason):
    """Skip features that have not been skipped for another reason."""
    bad = bad & usable
    if bad.any():
        read.skipped[reason] += int(bad.sum())
        usable &= ~bad


def _parts(wkb, read, usable):
    """The points that geometries are made of: index of the feature, and coordinates, z nan where there is none."""
    geometries = shapely.from_wkb(wkb.to_numpy(zero_copy_only=False), on_invalid="ignore")
    _skip(read, usable, shapely.is_missing(geometries), "with no geometry")
    _skip(read, usable, shapely.is_empty(geometries), "with an empty geometry")
    parts, feature = shapely.get_parts(geometries, return_index=True)
    held = (shapely.get_type_id(parts) == POINT) & ~shapely.is_empty(parts)
    _skip(read, usable, ~np.isin(np.arange(usable.size), feature[held]), NO_POINT)
    held &= usable[feature]
    return feature[held], *shapely.get_coordinates(parts[held], include_z=True).T.copy()


def _texts(table, name):
    """Values of a field as the texts that name them, the same for 3 and 3.0; None for null and blank, and where no field is named."""
    if not name:
        return np.full(table.num_rows, None, dtype=object)
    return np.array([_text(value) for value in table[name].to_pylist()], dtype=object)


def _text(value):
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return None if value is None else str(value).strip() or None


def _number(value):
    try:
        return float(value)
    except (TypeError, ValueError):
        return math.nan
