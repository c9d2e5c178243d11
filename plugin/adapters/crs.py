"""Coordinates between the CRS of a layer and longitude and latitude on WGS 84."""

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsCoordinateTransform, QgsCsException, QgsGeometry

WGS84 = "EPSG:4326"
WGS84_3D = "EPSG:4979"  # what GeoJSON with heights arrives as
LINE_WKB_HEADER = np.array([1, 2, 0, 0, 0], dtype=np.uint8).tobytes()  # little endian, LineString


def wgs84():
    return QgsCoordinateReferenceSystem(WGS84)


def on_earth(crs):
    """Whether a CRS is one of the Earth, as PROJ knows it; True where it does not."""
    return crs.celestialBodyName() in ("Earth", "")


def output_crs(crs):
    """The CRS that results of a layer in this CRS are written in."""
    return wgs84() if crs.authid() == WGS84_3D else crs


def transformed(x, y, source_crs, target_crs, transform_context):
    """Transform coordinates; NaN where the transform has no answer.

    Parameters
    ----------
    x, y : array_like (N,)
        Coordinates in `source_crs`, x east and y north.

    Returns
    -------
    x, y : ndarray (N,)
    """
    x, y = np.array(x, dtype=float), np.array(y, dtype=float)
    transform = QgsCoordinateTransform(source_crs, target_crs, transform_context)
    if x.size == 0 or transform.isShortCircuited():
        return x, y
    try:
        return _all_at_once(x, y, transform)
    except QgsCsException:
        return _one_by_one(x, y, transform)


def _all_at_once(x, y, transform):
    line = QgsGeometry()
    count = np.array([x.size], dtype="<u4").tobytes()
    line.fromWkb(LINE_WKB_HEADER + count + np.column_stack([x, y]).astype("<f8").tobytes())
    line.transform(transform)
    xy = np.frombuffer(line.asWkb().data(), dtype="<f8", offset=9).reshape(-1, 2)
    xy = np.where(np.isfinite(xy).all(axis=1, keepdims=True), xy, np.nan)
    return xy[:, 0], xy[:, 1]


def _one_by_one(x, y, transform):
    """Slow, only where one of the points has no place in the other CRS: the rest of them still have."""
    for i in range(x.size):
        try:
            point = transform.transform(x[i], y[i])
            x[i], y[i] = point.x(), point.y()
        except QgsCsException:
            x[i] = y[i] = np.nan
    lost = ~(np.isfinite(x) & np.isfinite(y))
    x[lost] = y[lost] = np.nan
    return x, y


def lon_lat(x, y, crs, transform_context):
    """Longitude, any turn, and latitude on WGS 84 of points in a CRS; NaN where there is no such place on the Earth."""
    lon, lat = transformed(x, y, crs, wgs84(), transform_context)
    with np.errstate(invalid="ignore"):
        lost = ~(np.abs(lat) <= 90.0) | ~np.isfinite(lon)
    return np.where(lost, np.nan, lon), np.where(lost, np.nan, lat)
