"""Where people may stand: the polygons of AREA without those of CLOSED, in the CRS of the paths."""

from collections import Counter

import numpy as np
from qgis.core import (
    NULL,
    QgsCoordinateTransform,
    QgsCsException,
    QgsFeatureRequest,
    QgsGeometry,
    QgsLineString,
    QgsPoint,
    QgsProcessingException,
    QgsProcessingFeatureSource,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from ..plan.seasons import ALWAYS, closed_on, season
from .parameters import text_of
from .seam import seam_of
from .translation import counted, said, tr

STROKES = 1000.0  # of a side, at least, where the other CRS may bend it: 1 km bends by 2 cm
NAMED = 5  # features named in the log


class Access:
    """Allowed ground: in AREA, if it is given, and not in what is closed on the day.

    Attributes
    ----------
    given : bool
        Whether anything bounds it.
    """

    def __init__(self, algorithm, parameters, context, feedback, crs):
        self._crs, self._context, self._feedback = crs, context, feedback
        area = self._read(algorithm, parameters, "AREA")
        self._area = None if area is None else QgsGeometry.unaryUnion([geometry for geometry, _ in area])
        self._closed = self._read(algorithm, parameters, "CLOSED") or []
        self.given = self._area is not None or bool(self._closed)
        self._days, self._sets, self._grounds = {}, [], {}
        if self._closed:
            always = sum(own == ALWAYS for _, own in self._closed)
            feedback.pushInfo(
                tr("Closed ground: {n:,} polygons, {seasonal:,} of them in seasons.").format(
                    n=len(self._closed), seasonal=len(self._closed) - always
                )
            )

    def sets_of(self, night, day):
        """Number of the set of polygons that are closed, for rows.

        Parameters
        ----------
        night, day : ndarray of datetime64[D], shape (N,)
            Date of the evening and date of the moment: closed on either is closed. NaT: closed in every season.
        """
        pair = np.stack([night.astype(np.int64), day.astype(np.int64)]) if night.size else np.zeros((2, 0), dtype=np.int64)
        distinct, where = np.unique(pair, axis=1, return_inverse=True)
        days = distinct.astype("datetime64[D]")
        closed = np.array([closed_on(own, days[0]) | closed_on(own, days[1]) for _, own in self._closed], dtype=bool)
        numbers = []
        for column in range(distinct.shape[1]):
            held = tuple(np.flatnonzero(closed[:, column]).tolist()) if len(self._closed) else ()
            if held not in self._days:
                self._days[held] = len(self._sets)
                self._sets.append(held)
            numbers.append(self._days[held])
        return np.array(numbers, dtype=np.int64)[where.reshape(-1)]

    def allows(self, x, y, number):
        """Whether points in the CRS of the paths may be stood on, each under a set of closed polygons."""
        allowed = np.ones(x.size, dtype=bool)
        if not self.given:
            return allowed
        for i, (own, x_i, y_i) in enumerate(zip(number.tolist(), x.tolist(), y.tolist())):
            area, closed = self._ground(own)
            point = QgsPoint(x_i, y_i)
            allowed[i] = not (area is not None and not area[1].intersects(point) or closed is not None and closed[1].intersects(point))
        return allowed

    def parts(self, line, number):
        """The allowed parts of a straight line between two points, as pairs of shares of its length, in order."""
        if not self.given:
            return [(0.0, 1.0)]
        area, closed = self._ground(number)
        stroke = QgsGeometry(QgsLineString([QgsPoint(*end) for end in line]))
        kept = stroke if area is None or area[1].contains(stroke.constGet()) else stroke.intersection(area[0])
        if closed is not None and closed[1].intersects(kept.constGet()):
            kept = kept.difference(closed[0])
        if kept.equals(stroke):
            return [(0.0, 1.0)]
        (x0, y0), (x1, y1) = line
        length2 = (x1 - x0) ** 2 + (y1 - y0) ** 2
        shares = []
        for part in kept.constParts() if not kept.isEmpty() else ():
            if isinstance(part, QgsLineString):
                ends = [((p.x() - x0) * (x1 - x0) + (p.y() - y0) * (y1 - y0)) / length2 for p in (part.startPoint(), part.endPoint())]
                shares.append((max(0.0, min(ends)), min(1.0, max(ends))))
        return sorted(share for share in shares if share[1] > share[0])

    def split(self, polygon, number):
        """The allowed and the other part of a polygon."""
        area, closed = self._ground(number)
        kept = polygon if area is None else polygon.intersection(area[0])
        if closed is not None:
            kept = kept.difference(closed[0])
        return _polygons(kept), _polygons(polygon.difference(kept))

    def _ground(self, number):
        """AREA and the closed polygons of a set, each as a geometry with its engine, or None."""
        if number not in self._grounds:
            closed = [self._closed[i][0] for i in self._sets[number]]
            self._grounds[number] = [_prepared(self._area), _prepared(QgsGeometry.unaryUnion(closed) if closed else None)]
        return self._grounds[number]

    def _read(self, algorithm, parameters, name):
        """Polygons and their seasons, or None where the layer is not given."""
        source = algorithm.parameterAsSource(parameters, name, self._context)
        if source is None:
            return None
        season_at = [source.fields().lookupField(text_of(parameters, f"{name}_{end}") or "") for end in ("FROM", "TO")]
        to_paths = QgsCoordinateTransform(source.sourceCrs(), self._crs, self._context.transformContext())
        seam = seam_of(self._crs, self._context.transformContext())
        read, skipped, repaired, undated = [], Counter(), [], []
        for feature in source.getFeatures(QgsFeatureRequest(), QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
            if self._feedback.isCanceled():
                break
            geometry = feature.geometry()
            if geometry.isNull() or geometry.isEmpty():
                skipped[tr("with no geometry")] += 1
                continue
            ground = self._in_crs_of_paths(geometry, to_paths, seam, name, feature.id(), repaired)
            read.append((seam.repeated(ground), self._season(feature, season_at, undated)))
        if skipped:
            self._feedback.pushWarning(tr("{label}: skipped {reasons}.").format(label=name, reasons=counted(skipped)))
        if repaired:
            self._feedback.pushWarning(
                tr("{label}: {n:,} polygons were not valid and have been repaired: features {ids}.").format(
                    label=name, n=len(repaired), ids=_few(repaired)
                )
            )
        if undated:
            self._feedback.pushWarning(
                tr("{label}: the season of {n:,} polygons cannot be read; they are taken as always closed: {features}").format(
                    label=name, n=len(undated), features=_few(undated)
                )
            )
        return read

    def _in_crs_of_paths(self, geometry, to_paths, seam, name, fid, repaired):
        if geometry.type() != QgsWkbTypes.GeometryType.PolygonGeometry:
            raise QgsProcessingException(tr("{name}: feature {fid} is no polygon. Remove it.").format(name=name, fid=fid))
        if not geometry.isGeosValid():
            geometry = geometry.makeValid()
            geometry = _polygons(geometry)
            if geometry.isEmpty() or not geometry.isGeosValid():
                raise QgsProcessingException(
                    tr("{name}: the polygon of feature {fid} crosses itself and cannot be repaired. Draw it again.").format(
                        name=name, fid=fid
                    )
                )
            repaired.append(fid)
        if to_paths.isShortCircuited():
            return geometry
        geometry = geometry.densifyByDistance(max(geometry.boundingBox().width(), geometry.boundingBox().height()) / STROKES)
        try:
            geometry.transform(to_paths)
        except QgsCsException as lost:
            raise QgsProcessingException(
                tr("{name}: the polygon of feature {fid} has no place in the CRS of the paths. Choose another CRS for the paths.").format(
                    name=name, fid=fid
                )
            ) from lost
        geometry = seam.joined(geometry)
        return geometry if geometry.isGeosValid() else geometry.makeValid()

    @staticmethod
    def _season(feature, season_at, undated):
        first, last = (_day_text(feature.attributes()[at]) if at >= 0 else None for at in season_at)
        try:
            return season(first, last)
        except ValueError as wrong:
            undated.append(f"{feature.id()} ({said(wrong)})")
            return ALWAYS


def _polygons(geometry):
    """The polygons of what is left of polygons: where two only touch, lines and points are left too."""
    return QgsGeometry.collectGeometry([part for part in geometry.asGeometryCollection() if part.area() > 0.0])


def _prepared(geometry):
    if geometry is None:
        return None
    engine = QgsGeometry.createGeometryEngine(geometry.constGet())
    engine.prepareGeometry()
    return geometry, engine


def _day_text(value):
    if isinstance(value, (QDate, QDateTime)):
        return value.toString(Qt.DateFormat.ISODate) if value.isValid() else None
    return None if value is None or value == NULL else str(value)


def _few(names):
    shown = ", ".join(str(name) for name in names[:NAMED])
    return tr("{few} and {n:,} more").format(few=shown, n=len(names) - NAMED) if len(names) > NAMED else shown
