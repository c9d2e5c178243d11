"""A layer of lines as arrays: the vertices of all parts in the layer's own CRS, names and the numbers taken from each feature."""

from collections import Counter
from dataclasses import dataclass, field

import numpy as np
from qgis.core import QgsFeatureRequest, QgsLineString, QgsProcessingFeatureSource, QgsWkbTypes

from .crs import lon_lat
from .keeping import Kept, column_of
from .points import numbers_of, tell_what_is_missing, text_key
from .seam import gone_on
from .translation import tr

WKB_HEADER = 9  # byte order, type, number of points


@dataclass
class Lines:
    """Paths that can be used, one row a feature (N,), and how many could not; part j holds the vertices part_offsets[j] and on."""

    crs: object
    x: np.ndarray
    y: np.ndarray
    z_m: np.ndarray
    part_offsets: np.ndarray
    path_of_part: np.ndarray
    fid: np.ndarray
    name: np.ndarray
    measures: dict
    features: int = 0
    kept: Kept = field(default_factory=Kept)
    skipped: Counter = field(default_factory=Counter)
    defaulted: Counter = field(default_factory=Counter)

    def __len__(self):
        return self.fid.size

    def log(self, label, feedback):
        """Tell what was read and what was left out, by reason."""
        feedback.pushInfo(tr("{label}: {n:,} lines from {total:,} features.").format(label=label, n=len(self), total=self.features))
        tell_what_is_missing(label, self.skipped, self.defaulted, feedback)


def read_lines(source, context, expression_context, feedback, fallback_name, name_field=None, measures=(), keep=()):
    """Read a line source once; the parameters are those of `points.read_points`."""
    fields = source.fields()
    name_at = fields.lookupField(name_field) if name_field else -1
    keep_at = [fields.lookupField(name) for name in keep]
    properties = [measure for measure in measures if measure.prop is not None]
    for measure in properties:
        measure.prop.prepare(expression_context)
    request = QgsFeatureRequest()
    if not properties:
        request.setSubsetOfAttributes([i for i in (name_at, *keep_at) if i >= 0])
    crs, transform_context = source.sourceCrs(), context.transformContext()

    parts, part_path, rows, skipped, defaulted, features = [], [], [], Counter(), Counter(), 0
    for feature in source.getFeatures(request, QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
        if feedback.isCanceled():
            break
        features += 1
        pieces, reason = _parts(feature.geometry(), crs, transform_context)
        try:
            numbers = () if reason else numbers_of(feature, properties, expression_context, defaulted)
        except ValueError as bad:
            reason = str(bad)
        if reason:
            skipped[reason] += 1
            continue
        attributes, fid = feature.attributes(), feature.id()
        name = text_key(attributes[name_at]) if name_at >= 0 else None
        parts += pieces
        part_path += [len(rows)] * len(pieces)
        rows.append((fid, name or f"{fallback_name} {fid}", [attributes[i] for i in keep_at], *numbers))
    columns = list(zip(*rows)) if rows else [()] * (3 + len(properties))
    read = {measure.name: np.array(column, dtype=float) for measure, column in zip(properties, columns[3:])}
    vertices = np.concatenate(parts) if parts else np.zeros((0, 3))
    return Lines(
        crs,
        *vertices.T,
        part_offsets=np.cumsum([0, *map(len, parts)]),
        path_of_part=np.array(part_path, dtype=np.int64),
        fid=np.array(columns[0], dtype=np.int64),
        name=column_of(columns[1]),
        measures={m.name: read.get(m.name, np.full(len(rows), m.default)) for m in measures},
        features=features,
        kept=Kept([fields.at(i) for i in keep_at], [column_of(values) for values in zip(*columns[2])]),
        skipped=skipped,
        defaulted=defaulted,
    )


def _parts(geometry, crs, transform_context):
    """Vertices x, y, z of each part of a line, shape (V, 3), and the reason when there is none that can be walked."""
    if geometry.isNull():
        return [], tr("with no geometry")
    if geometry.isEmpty():
        return [], tr("with an empty geometry")
    if geometry.type() != QgsWkbTypes.GeometryType.LineGeometry:
        return [], tr("that are no lines")
    parts = [_vertices(part if isinstance(part, QgsLineString) else part.segmentize()) for part in geometry.constParts()]
    parts = [part for part in map(_without_repeats, parts) if len(part) > 1]
    if not parts:
        return [], tr("of no length")
    if crs.isGeographic():
        for part in parts:
            part[:, 0] = gone_on(part[:, 0] - 360.0 * np.rint(part[0, 0] / 360.0), 360.0)
    if not all(np.isfinite(lon_lat(part[:, 0], part[:, 1], crs, transform_context)).all() for part in parts):
        return [], tr("with no place on the Earth")
    return parts, None


def _vertices(line):
    """x, y, z of the vertices of a line, z nan where there is none."""
    wkb_type = line.wkbType()
    has_z, has_m = QgsWkbTypes.hasZ(wkb_type), QgsWkbTypes.hasM(wkb_type)
    values = np.frombuffer(line.asWkb().data(), dtype="<f8", offset=WKB_HEADER).reshape(-1, 2 + has_z + has_m)
    z = values[:, 2:3] if has_z else np.full((len(values), 1), np.nan)
    return np.concatenate([values[:, :2], z], axis=1)


def _without_repeats(vertices):
    """Vertices without those that were drawn again on the spot."""
    return vertices[np.append(True, (np.diff(vertices[:, :2], axis=0) != 0.0).any(axis=1))[: len(vertices)]]
