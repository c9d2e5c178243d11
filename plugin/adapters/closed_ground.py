"""Closed ground against where people stand and walk: inside or outside on the dates of a sheet, and how far the nearest is.

Distances are measured on an azimuthal map about each place, where those from its centre are those of the geodesics.
"""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsCoordinateTransform, QgsGeometry
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from ..plan.seasons import ALWAYS, closed_on, season
from .points import text_key
from .translation import date_told, day_told, tr

REACH_M = 20_000.0  # closed ground farther away is of no concern
GRID_ERROR = 1.02  # a grid is stretched by less
TOUCH_M = 1e-3  # nearer than this is inside


@dataclass(frozen=True)
class Closure:
    """A polygon of closed ground, on the grid of a map, with its name and its season in words; `held` on the dates of the sheet."""

    geometry: QgsGeometry
    name: str
    when: str
    held: bool


@dataclass(frozen=True)
class Finding:
    """What was found for a place, a way or ground: the closure it lies in, else the nearest within `REACH_M`, else None; how far that is.

    `length` is how much of a way, in `unit` m, or of ground, in m2, lies inside; a place has no unit.
    """

    closure: object
    inside: bool
    dist_m: float
    length: float = 0.0
    unit: str = ""


def closures_of(shapes, days, undated):
    """Closures from the shapes of the layer CLOSED, whose values are first and last day.

    Parameters
    ----------
    shapes : sequence of sheet_ground.Shape
    days : array_like of datetime64[D]
        On which people are out; none: any day of the year may be meant.
    undated : set
        Takes the ids of features whose season cannot be read: they are taken as always closed.
    """
    closures = []
    for shape in shapes:
        first, last = (_day_text(value) for value in shape.values)
        try:
            own = season(first, last)
        except ValueError:
            own = ALWAYS
            undated.add(shape.fid)
        held = bool(closed_on(own, days).any()) if len(days) else True
        closures.append(Closure(shape.geometry, shape.name or tr("closure {fid}").format(fid=shape.fid), _in_words(own), held))
    return closures


def _day_text(value):
    if isinstance(value, (QDate, QDateTime)):
        return value.toString(Qt.DateFormat.ISODate) if value.isValid() else None
    return text_key(value)


def _in_words(own):
    if own == ALWAYS:
        return tr("always")
    first, last = (day if day is None else day_told(*day) if own.every_year else date_told(day) for day in (own.first, own.last))
    if own.every_year:
        return tr("each year {first} to {last}").format(first=first, last=last)
    if first is None or last is None:
        return tr("until {last}").format(last=last) if first is None else tr("from {first}").format(first=first)
    return tr("{first} to {last}").format(first=first, last=last)


class Checked:
    """Closures that hold on a sheet's dates, asked about places, ways and zones.

    Parameters
    ----------
    closures : sequence of Closure
        On the grid of a map.
    crs : QgsCoordinateReferenceSystem
        Of that grid.
    """

    def __init__(self, closures, crs, transform_context):
        self._held = [closure for closure in closures if closure.held]
        self._crs, self._transform_context = crs, transform_context

    def place(self, lon_deg, lat_deg):
        """A place."""
        return self._finding(QgsGeometry.fromWkt("Point (0 0)"), self._about(lon_deg, lat_deg))

    def shape(self, geometry, lon_deg, lat_deg):
        """A way, or ground, on the grid of the map; near a place."""
        own = self._about(lon_deg, lat_deg)
        moved = QgsGeometry(geometry)
        moved.transform(QgsCoordinateTransform(self._crs, own, self._transform_context))
        return self._finding(moved, own)

    @staticmethod
    def _about(lon_deg, lat_deg):
        proj = f"+proj=aeqd +lat_0={lat_deg:.9f} +lon_0={lon_deg:.9f} +datum=WGS84 +units=m +no_defs"
        return QgsCoordinateReferenceSystem.fromProj(proj)

    def _finding(self, geometry, crs):
        to_own = QgsCoordinateTransform(self._crs, crs, self._transform_context)
        to_grid = QgsCoordinateTransform(crs, self._crs, self._transform_context)
        near = to_grid.transformBoundingBox(geometry.boundingBox().buffered(REACH_M * GRID_ERROR))
        nearest, nearest_m, around = None, np.inf, []
        for closure in self._held:
            if not closure.geometry.boundingBox().intersects(near):
                continue
            moved = QgsGeometry(closure.geometry)
            moved.transform(to_own)
            dist_m = geometry.distance(moved)
            if 0.0 <= dist_m < TOUCH_M:
                around.append((closure, moved))
            if 0.0 <= dist_m < nearest_m:
                nearest, nearest_m = closure, dist_m
        if around:
            common = geometry.intersection(QgsGeometry.unaryUnion([moved for _, moved in around]))
            length, unit = (common.area(), "m2") if geometry.area() else (common.length(), "m" if geometry.length() else "")
            return Finding(around[0][0], True, 0.0, length, unit)
        return Finding(nearest, False, nearest_m) if nearest_m <= REACH_M else Finding(None, False, np.inf)
