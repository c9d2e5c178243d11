"""Geodesics on the WGS 84 ellipsoid, and lines that draw them on a map.

Longitudes (east positive), latitudes and bearings in degrees, distances in metres along the ellipsoid. Bearings run clockwise from true
north, 0 <= bearing < 360. Arguments broadcast, and results have their common shape. A drawn line is a chain of vertices; many
lines are kept in flat arrays with offsets, so that nothing is done vertex by vertex in Python.
"""

from typing import NamedTuple

import numpy as np
from pyproj import Geod

from ..words import Sentence

COINCIDENT_M = 0.001  # nearer than this two points have no bearing
EARTH_RADIUS_M = 6371008.8  # mean; for the size of small deviations only
VERTEX_MARGIN = 0.6  # a stroke is halved when its middle is off by this part of the tolerance: elsewhere it may be off by more
LEAST_BEND = 1.0  # of a straight stroke against the geodesic, in units of 1 / Earth radius: what a map projection may do anywhere
MOST_BEND = 6.0  # about latitude 80; nearer to a pole strokes are halved one by one
SEAM_DEG = 1e-9  # 0.1 mm: a vertex this near to the antimeridian lies on it
HALVINGS = 40  # of a stroke across the antimeridian: 10 km to 10 nm

WGS84 = Geod(ellps="WGS84")


class Lines(NamedTuple):
    """Chains of vertices; line i holds the vertices offsets[i] to offsets[i + 1]."""

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    offsets: np.ndarray


class MultiLines(NamedTuple):
    """Lines of several parts; line i holds the parts line_offsets[i] to line_offsets[i + 1], part j the vertices part_offsets[j] and on."""

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    part_offsets: np.ndarray
    line_offsets: np.ndarray


def inverse(lon1_deg, lat1_deg, lon2_deg, lat2_deg):
    """Bearing and distance from first places to second ones.

    Parameters
    ----------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like
        The places. [deg]

    Returns
    -------
    bearing_deg : ndarray
        At the first place toward the second; nan where the two are less than 1 mm apart. [deg]
    back_deg : ndarray
        At the second place toward the first; nan likewise. [deg]
    dist_m : ndarray
        Length of the geodesic. [m]

    Raises
    ------
    ValueError
        A coordinate is not a number, or a latitude lies beyond 90 deg.

    Notes
    -----
    PROJ's geodesics: C. F. F. Karney, J. Geodesy 87, 43 (2013), DOI 10.1007/s00190-012-0578-z. At a pole the bearing is counted
    from the meridian of the longitude given.
    """
    shape, (lon1, lat1, lon2, lat2) = _flat(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    _refuse_bad_places(lon1, lat1)
    _refuse_bad_places(lon2, lat2)
    bearing, back, dist = _by_proj(WGS84.inv, lon1, lat1, lon2, lat2)
    apart = dist >= COINCIDENT_M
    bearing = np.where(apart, _full_turn(bearing), np.nan)
    back = np.where(apart, _full_turn(back), np.nan)
    return bearing.reshape(shape), back.reshape(shape), dist.reshape(shape)


def direct(lon_deg, lat_deg, bearing_deg, dist_m):
    """Place reached from another along a geodesic.

    Parameters
    ----------
    lon_deg, lat_deg : array_like
        Where to start. [deg]
    bearing_deg : array_like
        Where to head. [deg]
    dist_m : array_like
        How far. [m]

    Returns
    -------
    lon_deg, lat_deg : ndarray
        The place, longitude in [-180, 180]. [deg]
    back_deg : ndarray
        Bearing there toward the start. [deg]

    Raises
    ------
    ValueError
        A coordinate is not a number, or a latitude lies beyond 90 deg.
    """
    shape, (lon, lat, bearing, dist) = _flat(lon_deg, lat_deg, bearing_deg, dist_m)
    _refuse_bad_places(lon, lat)
    lon2, lat2, back = _by_proj(WGS84.fwd, lon, lat, bearing, dist)
    return lon2.reshape(shape), lat2.reshape(shape), _full_turn(back).reshape(shape)


def in_space(lon_deg, lat_deg):
    """Places of the ellipsoid in Earth-fixed coordinates; the chord between two is never longer than the geodesic.

    Parameters
    ----------
    lon_deg, lat_deg : array_like
        The places. [deg]

    Returns
    -------
    ndarray, (3, ...)
        x toward longitude 0, z toward the north pole. [m]

    Raises
    ------
    ValueError
        A coordinate is not a number, or a latitude lies beyond 90 deg.
    """
    lon_deg, lat_deg = np.asarray(lon_deg, dtype=float), np.asarray(lat_deg, dtype=float)
    _refuse_bad_places(lon_deg, lat_deg)
    x, y, z = _unit_vector(lon_deg, lat_deg)
    prime_vertical_m = WGS84.a / np.sqrt(1.0 - WGS84.es * z**2)
    return prime_vertical_m * np.stack([x, y, (1.0 - WGS84.es) * z])


def densified_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg, tol_m=1.0):
    """Geodesics with so many vertices that the straight strokes of a map between them stay near.

    Parameters
    ----------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like, (L,)
        Ends of the lines. [deg]
    tol_m : float
        How far a stroke may lie from the geodesic, drawn straight in longitude and latitude or in a projection that bends geodesics
        no more than that or than 1 / Earth radius (the usual national, zonal, polar and web projections). [m]

    Returns
    -------
    Lines
        Vertices in [-180, 180]; first and last are the ends as given. A stroke over the antimeridian goes the short way: a
        geographic layer needs `split_at_antimeridian` before it is drawn.

    Raises
    ------
    ValueError
        A coordinate is not a number, or a latitude lies beyond 90 deg.

    Notes
    -----
    A straight stroke in longitude and latitude turns against the geodesic by tan(lat) sin(az) (1 + cos^2(az)) / R a metre (from the
    derivative of its azimuth, on the sphere), and so a stroke of length d is off by d^2 / 8 times that: the first vertices are set evenly
    by this. Near a pole it changes within a stroke: there strokes are halved until the middle of each, taken straight on the map,
    lies on the middle taken straight through the Earth.
    """
    _, (lon1, lat1, lon2, lat2) = _flat(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    bearing, back, length = inverse(lon1, lat1, lon2, lat2)
    bearing = np.where(np.isnan(bearing), 0.0, bearing)
    lon1, lon2 = _one_turn(lon1), _one_turn(lon2)
    bend = np.maximum(_bend(lat1, bearing), _bend(lat2, np.where(np.isnan(back), 0.0, back)))
    stroke_m = np.sqrt(8.0 * VERTEX_MARGIN * tol_m * EARTH_RADIUS_M / np.clip(bend, LEAST_BEND, MOST_BEND))
    strokes = np.maximum(np.ceil(length / stroke_m), 1).astype(np.int64)
    offsets = np.concatenate([[0], np.cumsum(strokes + 1)])
    line = np.repeat(np.arange(lon1.size), strokes + 1)
    chainage = (np.arange(line.size) - offsets[line]) / strokes[line] * length[line]
    halve = np.ones(line.size, dtype=bool)  # strokes, each named by its first vertex, whose middle has not been looked at
    halve[offsets[1:] - 1] = False
    lon, lat = _along(lon1, lat1, bearing, line, chainage)
    while True:
        lon[offsets[:-1]], lat[offsets[:-1]] = lon1, lat1
        lon[offsets[1:] - 1], lat[offsets[1:] - 1] = lon2, lat2
        first = np.flatnonzero(halve)
        off = _middle_off_m(lon[first], lat[first], lon[first + 1], lat[first + 1]) > VERTEX_MARGIN * tol_m
        first = first[off & (chainage[first + 1] - chainage[first] > tol_m)]
        if not first.size:
            return Lines(lon, lat, offsets)
        middle = (chainage[first] + chainage[first + 1]) / 2.0
        new_lon, new_lat = _along(lon1, lat1, bearing, line[first], middle)
        halve[:] = False
        halve[first] = True
        lon, lat = np.insert(lon, first + 1, new_lon), np.insert(lat, first + 1, new_lat)
        chainage, halve = np.insert(chainage, first + 1, middle), np.insert(halve, first + 1, True)
        line = np.insert(line, first + 1, line[first])
        offsets = np.searchsorted(line, np.arange(lon1.size + 1))


def split_at_antimeridian(lines):
    """Cut lines where they cross longitude 180, so that a geographic layer draws none of them round the world.

    Parameters
    ----------
    lines : Lines
        Longitudes in [-180, 180]; neighbouring vertices are joined the short way.

    Returns
    -------
    MultiLines
        Each crossing ends a part at +-180 and begins the next at -+180, at the latitude of the geodesic there (good to a
        millimetre). A vertex within 0.1 mm of the antimeridian is written on the side of its neighbours.
    """
    lon, lat, offsets = lines
    step = np.diff(lon, append=lon[-1:])
    step[offsets[1:] - 1] = 0.0  # from one line to the next
    if not (np.abs(step) > 180.0).any():
        return MultiLines(lon, lat, offsets, np.arange(offsets.size))
    side, lon = _sides(lon, step, offsets)
    before = np.flatnonzero(np.diff(side, append=side[-1:]) * (np.diff(_line_of(offsets), append=offsets.size) == 0))
    sign = np.sign(side[before + 1] - side[before]).astype(float)
    on_seam = np.abs(lon[before]) == 180.0
    seam_lat = np.where(on_seam, lat[before], _crossing_lat(lon, lat, before, sign))
    # a part ends on the seam, by the vertex that stands there or by a new one, and the next begins with its twin
    ends, twins = before[~on_seam], before
    at = np.concatenate([ends, twins]) + 1
    order = np.argsort(at, kind="stable")
    new_lon = np.concatenate([180.0 * sign[~on_seam], -180.0 * sign])[order]
    new_lat = np.concatenate([seam_lat[~on_seam], seam_lat])[order]
    at = at[order]
    is_twin = np.concatenate([np.zeros(ends.size, dtype=bool), np.ones(twins.size, dtype=bool)])[order]
    part_starts = np.insert(np.isin(np.arange(lon.size), offsets[:-1]), at, is_twin)
    line_starts = np.insert(np.isin(np.arange(lon.size), offsets[:-1]), at, False)
    part_offsets = np.append(np.flatnonzero(part_starts), part_starts.size)
    line_offsets = np.append(np.flatnonzero(line_starts[part_starts]), part_offsets.size - 1)
    return MultiLines(np.insert(lon, at, new_lon), np.insert(lat, at, new_lat), part_offsets, line_offsets)


def _sides(lon, step, offsets):
    """Crossings of the seam up to each vertex of a line, eastward positive; and longitudes, on the seam by the side of the line."""
    line = _line_of(offsets)
    turns = np.concatenate([[0], np.cumsum(-np.sign(step) * (np.abs(step) > 180.0))[:-1]]).astype(np.int64)
    turns -= turns[offsets[:-1]][line]
    index = np.arange(lon.size)
    seam = 180.0 - np.abs(lon) < SEAM_DEG
    last_clear = np.maximum.accumulate(np.where(seam, -1, index))
    next_clear = np.minimum.accumulate(np.where(seam, lon.size, index)[::-1])[::-1]
    source = np.where(last_clear >= offsets[line], last_clear, np.where(next_clear < offsets[line + 1], next_clear, offsets[line]))
    side = turns[source]
    return side, np.where(seam, np.copysign(180.0, lon + 360.0 * (turns - side)), lon)


def _crossing_lat(lon, lat, before, sign):
    """Latitude at which the geodesic from a vertex to the next meets the antimeridian, by halving. [deg]."""
    lon1, lat1 = lon[before], lat[before]
    bearing, _, length = _by_proj(WGS84.inv, lon1, lat1, lon[before + 1], lat[before + 1])
    wanted = 180.0 - sign * lon1  # degrees to go; longitude along a geodesic runs one way only
    low, high = np.zeros(before.size), length
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        here, _, _ = _by_proj(WGS84.fwd, lon1, lat1, bearing, middle)
        short = (sign * (here - lon1) + 90.0) % 360.0 - 90.0 < wanted
        low, high = np.where(short, middle, low), np.where(short, high, middle)
    return _by_proj(WGS84.fwd, lon1, lat1, bearing, (low + high) / 2.0)[1]


def _along(lon1, lat1, bearing, line, chainage):
    """Vertices at distances along lines."""
    return _by_proj(WGS84.fwd, lon1[line], lat1[line], bearing[line], chainage)[:2]


def _by_proj(problem, *values):
    """`WGS84.inv` or `WGS84.fwd` of arrays (N,); a single value goes as a list, since of an array of one pyproj would make a number."""
    if values[0].size == 1:
        values = [value.tolist() for value in values]
    return [np.asarray(result) for result in problem(*values)]


def _bend(lat_deg, bearing_deg):
    lat, bearing = np.radians(lat_deg), np.radians(bearing_deg)
    return np.abs(np.tan(lat) * np.sin(bearing)) * (1.0 + np.cos(bearing) ** 2)


def _middle_off_m(lon1, lat1, lon2, lat2):
    """Distance between the middle of a short stroke in longitude and latitude and that of the geodesic. [m]."""
    ends = _unit_vector(lon1, lat1) + _unit_vector(lon2, lat2)
    middle = _unit_vector(lon1 + ((lon2 - lon1 + 180.0) % 360.0 - 180.0) / 2.0, (lat1 + lat2) / 2.0)
    return EARTH_RADIUS_M * np.sqrt(((ends / np.sqrt((ends**2).sum(axis=0)) - middle) ** 2).sum(axis=0))


def _unit_vector(lon_deg, lat_deg):
    lon, lat = np.radians(lon_deg), np.radians(lat_deg)
    return np.stack([np.cos(lat) * np.cos(lon), np.cos(lat) * np.sin(lon), np.sin(lat)])


def _line_of(offsets):
    """Number of the line to which each vertex belongs."""
    return np.repeat(np.arange(offsets.size - 1), np.diff(offsets))


def _full_turn(deg):
    turned = deg % 360.0
    return np.where(turned < 360.0, turned, 0.0)  # the remainder of -1e-15 is 360


def _one_turn(lon_deg):
    return np.where(np.abs(lon_deg) > 180.0, (lon_deg + 180.0) % 360.0 - 180.0, lon_deg)


def _flat(*arrays):
    """Common shape, and copies in one dimension as PROJ takes them."""
    full = np.broadcast_arrays(*[np.asarray(array, dtype=float) for array in arrays])
    return full[0].shape, [np.array(array).ravel() for array in full]


def _refuse_bad_places(lon_deg, lat_deg):
    bad = ~(np.isfinite(lon_deg) & (np.abs(lat_deg) <= 90.0))
    if bad.any():
        raise ValueError(
            Sentence(
                "{n} of {total} places are not on the Earth (not a number, or latitude beyond 90 degrees): leave them out, or check "
                "their CRS.",
                n=int(bad.sum()),
                total=bad.size,
            )
        )
