"""Geometries of results, built from arrays, and bearings on the grid of the layer they go to."""

import numpy as np
from qgis.core import QgsGeometry, QgsPointXY

from ..plan.drawing import drawn_lines, grid_bearing_deg, short_steps
from .crs import transformed, wgs84

# WKB, little endian
MULTILINESTRING = b"\x01\x05\x00\x00\x00"
LINESTRING = b"\x01\x02\x00\x00\x00"
SAME_PLACE = 1.0  # map unit: two ends of a cut line nearer than this on a projected map are one place


def points_of(x, y):
    """A point geometry for each pair of coordinates."""
    return [QgsGeometry.fromPointXY(QgsPointXY(*xy)) for xy in zip(x.tolist(), y.tolist())]


def sightlines_of(lon1_deg, lat1_deg, lon2_deg, lat2_deg, crs, transform_context):
    """MultiLineStrings along the geodesics between places on WGS 84, in a CRS; null where the CRS cannot show the whole line.

    On a geographic map a line over the antimeridian is cut in two, on a projected one only where the map itself is cut there.
    """
    lines = drawn_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    x, y = transformed(lines.lon_deg, lines.lat_deg, wgs84(), crs, transform_context)
    if crs.isGeographic():
        x = x - 360.0 * np.round((x - lines.lon_deg) / 360.0)  # another datum may push a vertex on the antimeridian over it
    xy = np.column_stack([x, y]).astype("<f8")
    parts = lines.part_offsets.tolist()
    geometries = []
    for first, last in zip(lines.line_offsets[:-1].tolist(), lines.line_offsets[1:].tolist()):
        pieces = [xy[parts[i] : parts[i + 1]] for i in range(first, last)]
        if len(pieces) > 1 and not crs.isGeographic():
            pieces = _joined(pieces)
        geometries.append(_multilinestring(pieces))
    return geometries


def _joined(pieces):
    """Pieces whose ends fall together on the map made one again."""
    joined = [pieces[0]]
    for piece in pieces[1:]:
        if np.hypot(*(piece[0] - joined[-1][-1])) < SAME_PLACE:
            joined[-1] = np.concatenate([joined[-1], piece[1:]])
        else:
            joined.append(piece)
    return joined


def _multilinestring(pieces):
    geometry = QgsGeometry()
    if all(np.isfinite(piece).all() for piece in pieces):
        wkb = MULTILINESTRING + _count(pieces) + b"".join(LINESTRING + _count(piece) + piece.tobytes() for piece in pieces)
        geometry.fromWkb(wkb)
    return geometry


def _count(items):
    return len(items).to_bytes(4, "little")


def grid_bearings(lon_deg, lat_deg, bearing_deg, crs, transform_context):
    """Bearings from the north of a projected CRS's grid, by a short step through it; NaN where the CRS is geographic."""
    if crs.isGeographic():
        return np.full(np.shape(bearing_deg), np.nan)
    lon1, lat1, lon2, lat2 = short_steps(lon_deg, lat_deg, bearing_deg)
    x1, y1 = transformed(lon1, lat1, wgs84(), crs, transform_context)
    x2, y2 = transformed(lon2, lat2, wgs84(), crs, transform_context)
    return grid_bearing_deg(x2 - x1, y2 - y1)
