"""Stretches of paths and zones of ground as geometries of the layer they go to."""

import numpy as np
from qgis.core import QgsCoordinateTransform, QgsCsException, QgsGeometry

from .crs import transformed, wgs84
from .seam import seam_of

# WKB, little endian
POLYGON = b"\x01\x03\x00\x00\x00"
LINESTRING = b"\x01\x02\x00\x00\x00"


class Shapes:
    """How shapes in the CRS of the paths are brought to that of an output.

    Parameters
    ----------
    source, target : QgsCoordinateReferenceSystem
    transform_context : QgsCoordinateTransformContext
    """

    def __init__(self, source, target, transform_context):
        self.source, self.target, self.transform_context = source, target, transform_context
        self._transform = QgsCoordinateTransform(source, target, transform_context)
        self._source_seam, self._target_seam = seam_of(source, transform_context), seam_of(target, transform_context)

    def lines(self, x, y, offsets):
        """Lines through vertices in the CRS of the paths; line i holds the vertices offsets[i] to offsets[i + 1]."""
        xy = np.column_stack([x, y]).astype("<f8")
        return [self.to_target(_of(LINESTRING, xy[first:last])) for first, last in zip(offsets[:-1].tolist(), offsets[1:].tolist())]

    def polygons(self, rings):
        """One geometry a zone, in the CRS of the paths, from `zones_of_ground.Rings`: its rings put together; and the zones in order."""
        x, y = transformed(rings.lon_deg, rings.lat_deg, wgs84(), self.source, self.transform_context)
        turn = self._source_seam.turn
        if turn > 0.0 and x.size:
            start = np.repeat(x[rings.offsets[:-1]], np.diff(rings.offsets))
            x = x - turn * np.rint((x - start) / turn)  # goes on over the antimeridian
        xy = np.column_stack([x, y]).astype("<f8")
        parts = {}
        for zone, first, last in zip(rings.zone.tolist(), rings.offsets[:-1].tolist(), rings.offsets[1:].tolist()):
            ring = xy[first:last]
            if np.isfinite(ring).all():
                parts.setdefault(zone, []).append(_of(POLYGON + (1).to_bytes(4, "little"), np.concatenate([ring, ring[:1]])))
        return list(parts), [_together(pieces) for pieces in parts.values()]

    def to_target(self, geometry):
        """The geometry in the CRS of the output, of several parts; null where that has no place for it."""
        moved = QgsGeometry(geometry)
        if not self._transform.isShortCircuited():
            try:
                moved.transform(self._transform)
            except QgsCsException:
                return QgsGeometry()
            moved = self._target_seam.joined(moved)
        moved = self._target_seam.cut(moved)
        moved.convertToMultiType()
        return moved


def _of(head, xy):
    geometry = QgsGeometry()
    geometry.fromWkb(head + len(xy).to_bytes(4, "little") + np.ascontiguousarray(xy).tobytes())
    return geometry


def _together(pieces):
    return pieces[0] if len(pieces) == 1 else QgsGeometry.unaryUnion(pieces)
