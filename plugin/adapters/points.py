"""A layer of points as arrays: places on WGS 84, heights, names and the numbers taken from each feature."""

import math
from collections import Counter
from dataclasses import dataclass, field

import numpy as np
from qgis.core import NULL, QgsFeatureRequest, QgsPoint, QgsProcessingFeatureSource, QgsWkbTypes

from ..plan.elevations import HIGHEST_M, no_ground_has
from .crs import lon_lat
from .keeping import Kept, column_of
from .parameters import number_of, property_of_features
from .translation import counted, tr


@dataclass(frozen=True)
class Measure:
    """A number of each feature: the property it is read from (None: the same for all), its default and its least value."""

    name: str
    default: float  # NaN: blank
    prop: object = None
    low: float = -math.inf


@dataclass
class Points:
    """Points that can be used, one row a point, and how many features could not.

    All arrays have the shape (N,). `x`, `y` are in the layer's CRS, `z_m` is NaN where a point has no height, `keys` holds texts or None;
    `impossible` counts heights that no ground has, which are taken as none.
    """

    x: np.ndarray
    y: np.ndarray
    lon_deg: np.ndarray
    lat_deg: np.ndarray
    z_m: np.ndarray
    fid: np.ndarray
    name: np.ndarray
    keys: np.ndarray
    measures: dict
    features: int = 0
    impossible: int = 0
    kept: Kept = field(default_factory=Kept)
    skipped: Counter = field(default_factory=Counter)
    defaulted: Counter = field(default_factory=Counter)

    def __len__(self):
        return self.x.size

    def log(self, label, feedback):
        """Tell what was read and what was left out, by reason."""
        feedback.pushInfo(tr("{label}: {n:,} points from {total:,} features.").format(label=label, n=len(self), total=self.features))
        tell_what_is_missing(label, self.skipped, self.defaulted, feedback)
        if self.impossible:
            feedback.pushWarning(
                tr("{label}: {n:,} points have a Z that no ground has, such as -9999 or more than {high:,} m: it counts as none.").format(
                    label=label, n=self.impossible, high=int(HIGHEST_M)
                )
            )


def tell_what_is_missing(label, skipped, defaulted, feedback):
    """Tell how many features of a layer were left out, by reason, and in how many a value was blank."""
    if skipped:
        feedback.pushWarning(tr("{label}: skipped {reasons}.").format(label=label, reasons=counted(skipped)))
    for name, count in defaulted.items():
        feedback.pushInfo(tr("{label}: {name} is blank in {n:,} features: its default is taken.").format(label=label, n=count, name=name))


def measures_of(algorithm, parameters, least):
    """Numbers of each feature, by their parameters and least values: from a property, or the same for all."""
    measures = []
    for name, low in least.items():
        prop = property_of_features(parameters.get(name))
        default = number_of(algorithm, {} if prop else parameters, name)
        measures.append(Measure(name, np.nan if default is None else default, prop, low))
    return measures


def text_key(value):
    """A value of a field as the text that names it, the same for 3 and 3.0; None for null."""
    if value is None or value == NULL:
        return None
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return str(value).strip() or None


def parts(geometry):
    """The points a geometry is made of, and the reason when it is none."""
    if geometry.isNull():
        return [], tr("with no geometry")
    if geometry.isEmpty():
        return [], tr("with an empty geometry")
    if QgsWkbTypes.flatType(geometry.wkbType()) == QgsWkbTypes.Type.Point:
        return [geometry.constGet()], None
    pieces = [piece for piece in geometry.constParts() if isinstance(piece, QgsPoint) and not piece.isEmpty()]
    return pieces, None if pieces else tr("that hold no point")


def read_points(source, context, expression_context, feedback, fallback_name, name_field=None, key_field=None, measures=(), keep=()):
    """Read a point source once.

    Parameters
    ----------
    source : QgsProcessingFeatureSource
    expression_context : QgsExpressionContext
        Made for this source; properties are evaluated in it.
    fallback_name : str
        What a point without a name is called, its feature id after it; like all values of results never translated.
    name_field, key_field : str, optional
        Fields with the name and with the value that pairs.
    measures : sequence of Measure
    keep : sequence of str
        Fields whose values go with the points.
    """
    fields = source.fields()
    name_at, key_at = (fields.lookupField(name) if name else -1 for name in (name_field, key_field))
    keep_at = [fields.lookupField(name) for name in keep]
    properties = [measure for measure in measures if measure.prop is not None]
    for measure in properties:
        measure.prop.prepare(expression_context)
    request = QgsFeatureRequest()
    if not properties:
        request.setSubsetOfAttributes([i for i in (name_at, key_at, *keep_at) if i >= 0])

    rows, skipped, defaulted, features = [], Counter(), Counter(), 0
    for feature in source.getFeatures(request, QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
        if feedback.isCanceled():
            break
        features += 1
        pieces, reason = parts(feature.geometry())
        if reason:
            skipped[reason] += 1
            continue
        try:
            numbers = numbers_of(feature, properties, expression_context, defaulted)
        except ValueError as bad:
            skipped[str(bad)] += 1
            continue
        attributes = feature.attributes()
        name = text_key(attributes[name_at]) if name_at >= 0 else None
        key = text_key(attributes[key_at]) if key_at >= 0 else None
        fid = feature.id()
        rest = (fid, name or f"{fallback_name} {fid}", key, [attributes[i] for i in keep_at], *numbers)
        rows += [(piece.x(), piece.y(), piece.z(), *rest) for piece in pieces]
    points = _table(rows, source, context, measures, properties)
    points.features, points.defaulted = features, defaulted
    points.skipped.update(skipped)
    points.kept.fields = [fields.at(i) for i in keep_at]
    return points


def numbers_of(feature, properties, expression_context, defaulted):
    """The numbers a feature gives; ValueError with the reason when one cannot be used."""
    if not properties:
        return ()
    expression_context.setFeature(feature)
    numbers = []
    for measure in properties:
        value, known = measure.prop.value(expression_context, None)
        if not known or value is None or value == NULL:
            defaulted[measure.name] += 1
            numbers.append(measure.default)
            continue
        try:
            given = float(value)
        except (TypeError, ValueError, OverflowError):
            given = math.nan
        if not math.isfinite(given):
            raise ValueError(tr("whose {name} is no finite number").format(name=measure.name))
        if given < measure.low:
            raise ValueError(tr("whose {name} is less than {low:g}").format(name=measure.name, low=measure.low))
        numbers.append(given)
    return tuple(numbers)


def _table(rows, source, context, measures, properties):
    count = len(rows)
    columns = list(zip(*rows)) if rows else [()] * (7 + len(properties))
    x, y, z_m = (np.array(column, dtype=float) for column in columns[:3])
    read = {measure.name: np.array(column, dtype=float) for measure, column in zip(properties, columns[7:])}
    lon_deg, lat_deg = lon_lat(x, y, source.sourceCrs(), context.transformContext())
    usable = np.isfinite(lon_deg)
    lost = int(count - usable.sum())
    impossible = usable & no_ground_has(z_m)
    z_m[impossible] = np.nan
    texts = [np.array(column, dtype=object)[usable] if rows else np.empty(0, dtype=object) for column in columns[4:6]]
    return Points(
        *(column[usable] for column in (x, y, lon_deg, lat_deg, z_m)),
        fid=np.array(columns[3], dtype=np.int64)[usable],
        name=texts[0],
        keys=texts[1],
        measures={m.name: read[m.name][usable] if m.name in read else np.full(int(usable.sum()), m.default) for m in measures},
        kept=Kept(columns=[column_of(values)[usable] for values in zip(*columns[6])]),
        impossible=int(impossible.sum()),
        skipped=Counter({tr("with no place on the Earth"): lost} if lost else {}),
    )
