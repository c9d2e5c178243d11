"""Geometries of results, built from arrays, and bearings on the grid of the layer they go to."""

import numpy as np
from qgis.core import QgsGeometry, QgsPointXY, QgsPolygon, QgsRectangle

from ..plan import wkb
from ..plan.drawing import SAME_PLACE, drawn_wkb, grid_bearing_deg, short_steps, unrolled_ring
from .crs import transformed, wgs84


def points_of(x, y):
    """A point geometry for each pair of coordinates."""
    return [QgsGeometry.fromPointXY(QgsPointXY(*xy)) for xy in zip(x.tolist(), y.tolist())]


def places_of(lon_deg, lat_deg, crs, transform_context):
    """A point geometry in a CRS for each place on WGS 84; null where the place is nan, or the CRS has no room for it."""
    known = np.flatnonzero(np.isfinite(lon_deg))
    x, y = transformed(lon_deg[known], lat_deg[known], wgs84(), crs, transform_context)
    drawn = np.isfinite(x)
    geometries = [QgsGeometry()] * len(lon_deg)
    for i, geometry in zip(known[drawn].tolist(), points_of(x[drawn], y[drawn])):
        geometries[i] = geometry
    return geometries


def rings_of(lon_deg, lat_deg, crs, transform_context):
    """MultiPolygons in a CRS of rings around places on WGS 84, shape (rings, vertices); null where the CRS cannot show a whole ring.

    As with sightlines, a ring over the antimeridian is cut in two on a geographic map, on a projected one only where that is cut there.
    """
    return [_ring(*ring, crs, transform_context) for ring in zip(lon_deg, lat_deg)]


def _ring(lon_deg, lat_deg, crs, transform_context):
    lon, lat = unrolled_ring(lon_deg, lat_deg)
    if lon.min() >= -180.0 and lon.max() <= 180.0:
        rings = [(lon, lat)]
    elif crs.isGeographic() or _is_cut_at_antimeridian(lat_deg, crs, transform_context):
        rings = _cut_in_turns(lon, lat)
    else:
        rings = [(np.append(lon_deg, lon_deg[0]), np.append(lat_deg, lat_deg[0]))]
    drawn = []
    for lon, lat in rings:
        x, y = transformed(lon, lat, wgs84(), crs, transform_context)
        if crs.isGeographic():
            x = x - 360.0 * np.round((x - lon) / 360.0)
        drawn.append(np.column_stack([x, y]).astype("<f8"))
    if not all(np.isfinite(ring).all() for ring in drawn):
        return QgsGeometry()
    one = (1).to_bytes(4, "little")
    rings = (wkb.POLYGON + one + wkb.count_of(ring) + ring.tobytes() for ring in drawn)
    return _geometry(wkb.MULTIPOLYGON + wkb.count_of(drawn) + b"".join(rings))


def _is_cut_at_antimeridian(lat_deg, crs, transform_context):
    x, y = transformed([-180.0, 180.0], np.repeat(np.mean(lat_deg), 2), wgs84(), crs, transform_context)
    return not np.hypot(x[1] - x[0], y[1] - y[0]) < SAME_PLACE


def _cut_in_turns(lon, lat):
    """The parts of an unrolled ring in each turn of longitude, as rings within one turn; those that meet there are joined."""
    whole = QgsGeometry.fromPolygonXY([[QgsPointXY(*place) for place in zip(lon.tolist(), lat.tolist())]])
    parts = []
    for turn in range(int(np.floor((lon.min() + 180.0) / 360.0)), int(np.ceil((lon.max() + 180.0) / 360.0))):
        part = whole.intersection(QgsGeometry.fromRect(QgsRectangle(360.0 * turn - 180.0, -90.0, 360.0 * turn + 180.0, 90.0)))
        part.translate(-360.0 * turn, 0.0)
        parts.append(part)
    joined = QgsGeometry.unaryUnion(parts)  # named, since its pieces live no longer than it does
    pieces = [piece for piece in joined.constParts() if isinstance(piece, QgsPolygon)]
    return [np.array([(vertex.x(), vertex.y()) for vertex in piece.exteriorRing().points()]).T for piece in pieces]


def sightlines_of(lon1_deg, lat1_deg, lon2_deg, lat2_deg, crs, transform_context):
    """MultiLineStrings along the geodesics between places on WGS 84, in a CRS; null where the CRS cannot show the whole line.

    On a geographic map a line over the antimeridian is cut in two, on a projected one only where the map itself is cut there.
    """

    def to_map(lon_deg, lat_deg):
        return transformed(lon_deg, lat_deg, wgs84(), crs, transform_context)

    drawn = drawn_wkb(lon1_deg, lat1_deg, lon2_deg, lat2_deg, to_map, crs.isGeographic())
    return [_geometry(binary) for binary in drawn]


def _geometry(binary):
    """A geometry of well-known binary; null for None."""
    geometry = QgsGeometry()
    if binary is not None:
        geometry.fromWkb(binary)
    return geometry


def grid_bearings(lon_deg, lat_deg, bearing_deg, crs, transform_context):
    """Bearings from the north of a projected CRS's grid, by a short step through it; NaN where the CRS is geographic."""
    if crs.isGeographic():
        return np.full(np.shape(bearing_deg), np.nan)
    lon1, lat1, lon2, lat2 = short_steps(lon_deg, lat_deg, bearing_deg)
    x1, y1 = transformed(lon1, lat1, wgs84(), crs, transform_context)
    x2, y2 = transformed(lon2, lat2, wgs84(), crs, transform_context)
    return grid_bearing_deg(x2 - x1, y2 - y1)
