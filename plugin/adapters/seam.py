"""The seam of a map: where the antimeridian is its left and right edge, shapes that cross it go on beyond the edge, or are cut there."""

from typing import NamedTuple

import numpy as np
from qgis.core import QgsGeometry, QgsLineString, QgsPolygon, QgsRectangle

from .crs import transformed, wgs84

LATITUDES = (0.0, 60.0)  # at which the edges of the map must stand over each other
SAME = 1e-9  # of the map's width


class Seam(NamedTuple):
    """The left edge of a map, and how wide the world is on it, in units of the map; 0 where the map has no such edges."""

    left: float
    turn: float

    def leaves(self, box):
        """Whether a rectangle reaches beyond the edges."""
        return self.turn > 0.0 and (box.xMinimum() < self.left or box.xMaximum() > self.left + self.turn)

    def joined(self, geometry):
        """The geometry, its lines and rings going on over the seam where neighbours are more than half the world apart."""
        if self.turn == 0.0 or geometry.boundingBox().width() <= 0.5 * self.turn:
            return geometry
        parts = [self._part(part.segmentize()) for part in geometry.constParts()]
        return QgsGeometry.collectGeometry([QgsGeometry(part) for part in parts])

    def _part(self, part):
        if part.dimension() == 1:
            return self._line(part)
        outer = self._line(part.exteriorRing())
        inner = [self._line(part.interiorRing(i), outer.xAt(0)) for i in range(part.numInteriorRings())]
        return QgsPolygon(outer, inner)

    def _line(self, line, beside=None):
        points = line.points()
        x = gone_on(np.array([point.x() for point in points]), self.turn)
        if beside is not None:
            x -= self.turn * np.rint((x[0] - beside) / self.turn)
        return QgsLineString(x.tolist(), [point.y() for point in points])

    def cut(self, geometry):
        """The geometry cut at the seam, what lies beyond it moved to where it belongs."""
        box, parts = geometry.boundingBox(), []
        if not self.leaves(box):
            return geometry
        world = QgsGeometry.fromRect(QgsRectangle(self.left, box.yMinimum() - 1.0, self.left + self.turn, box.yMaximum() + 1.0))
        first, last = (int(np.floor((x - self.left) / self.turn)) for x in (box.xMinimum(), box.xMaximum()))
        for turns in range(first, last + 1):
            moved = QgsGeometry(geometry)
            moved.translate(-self.turn * turns, 0.0)
            parts.append(moved.intersection(world))
        kind = geometry.type()
        pieces = [piece for part in parts if not part.isEmpty() for piece in part.asGeometryCollection() if piece.type() == kind]
        return QgsGeometry.collectGeometry(pieces)

    def repeated(self, geometry):
        """The geometry, and again a turn to either side: there for shapes that go on over the seam."""
        if self.turn == 0.0:
            return geometry
        middle = geometry.boundingBox().center().x() - self.left
        copies = []
        for turns in (-1.0, 0.0, 1.0):
            moved = QgsGeometry(geometry)
            moved.translate(self.turn * (turns - np.floor(middle / self.turn)), 0.0)
            copies += moved.asGeometryCollection()
        return QgsGeometry.collectGeometry(copies)


def seam_of(crs, transform_context):
    """The seam of a map: at 180° in degrees, and of projections about Greenwich that draw meridians upright."""
    if crs.isGeographic():
        return Seam(-180.0, 360.0)
    lon, lat = np.meshgrid((-180.0, 180.0), LATITUDES)
    x, y = transformed(lon.ravel(), lat.ravel(), wgs84(), crs, transform_context)
    turn, near = x[1] - x[0], SAME * np.abs(x[0])
    upright = np.abs(x[:2] - x[2:]).max() <= near and np.abs(y[::2] - y[1::2]).max() <= near
    return Seam(float(x[0]), float(turn)) if upright and turn > near else Seam(0.0, 0.0)


def gone_on(x, turn):
    """Coordinates that go on where neighbours are more than half a turn apart."""
    return x - turn * np.concatenate([[0.0], np.cumsum(np.rint(np.diff(x) / turn))])
