"""Walks over made-up ground for the tests of standpoints, and what pyproj alone says of the places on them.

Nothing of the plugin is used here. A walk is a line in map coordinates that runs straight between its vertices; places on it are taken as
a ruler on the map would: so many metres from the last vertex.
"""

import numpy as np
from pyproj import Geod, Transformer

GEOD = Geod(ellps="WGS84")
UTM, WEB, LON_LAT = "EPSG:32625", "EPSG:3857", "EPSG:4326"
PLACES = {UTM: (500000.0, 3985000.0), WEB: (-3673500.0, 4300000.0), LON_LAT: (-33.0, 36.01)}  # about one place on the open sea


def to_wgs84(crs):
    transformer = Transformer.from_crs(crs, LON_LAT, always_xy=True)
    return lambda x, y: tuple(np.asarray(values) for values in transformer.transform(x, y))


def wander(seed, vertices, step_m, crs=UTM):
    """Vertices of a walk that turns at random, in a CRS; steps of about so many metres."""
    rng = np.random.default_rng(seed)
    heading = np.cumsum(rng.normal(0.0, 0.5, vertices)) + rng.uniform(0.0, 2.0 * np.pi)
    step = rng.uniform(0.2, 1.8, vertices) * step_m
    unit = {UTM: (1.0, 1.0), WEB: (1.236, 1.236), LON_LAT: (1.0 / 90090.0, 1.0 / 110960.0)}[crs]  # map units in a metre, at 36 N
    x0, y0 = PLACES[crs]
    return x0 + np.cumsum(step * np.sin(heading)) * unit[0], y0 + np.cumsum(step * np.cos(heading)) * unit[1]


def along(x, y, spacing_m, crs=UTM):
    """Places every so many metres along each stretch between vertices, both its ends among them.

    Returns
    -------
    lon_deg, lat_deg, chain_m : ndarray
        `chain_m` is the sum of the geodesics from place to place.
    """
    lon, lat = to_wgs84(crs)(x, y)
    _, _, length = GEOD.inv(lon[:-1], lat[:-1], lon[1:], lat[1:])
    parts = [np.linspace(0.0, 1.0, 2 + int(part // spacing_m))[: None if i == length.size - 1 else -1] for i, part in enumerate(length)]
    piece = np.repeat(np.arange(length.size), [part.size for part in parts])
    u = np.concatenate(parts)
    lon, lat = to_wgs84(crs)(x[piece] + u * (x[piece + 1] - x[piece]), y[piece] + u * (y[piece + 1] - y[piece]))
    _, _, step = GEOD.inv(lon[:-1], lat[:-1], lon[1:], lat[1:])
    return lon, lat, np.concatenate([[0.0], np.cumsum(step)])


def bearing_deg(lon, lat, subject_lon, subject_lat):
    """True bearing and distance from places to a subject, by PROJ's geodesics."""
    bearing, _, dist = GEOD.inv(lon, lat, np.full(np.shape(lon), subject_lon), np.full(np.shape(lon), subject_lat))
    return np.asarray(bearing) % 360.0, np.asarray(dist)


def off_deg(angle, other):
    return (np.asarray(angle) - other + 180.0) % 360.0 - 180.0


def passages(chain, miss):
    """Chainages at which a miss passes 0 from place to place, not by leaping over 180."""
    at = np.flatnonzero(((miss[1:] >= 0.0) != (miss[:-1] >= 0.0)) & (np.abs(miss[1:] - miss[:-1]) < 180.0))
    return chain[at] + (chain[at + 1] - chain[at]) * miss[at] / (miss[at] - miss[at + 1])


GEOCENTRIC = Transformer.from_crs("EPSG:4979", "EPSG:4978", always_xy=True)  # PROJ's formula, not the plugin's


def direction_deg(lon, lat, height_m, lon2, lat2, height2_m):
    """Azimuth and altitude of the straight line from places to one other, by trigonometry in Earth-fixed coordinates."""
    lon, lat, height_m = np.broadcast_arrays(lon, lat, height_m)
    here, there = (np.stack(GEOCENTRIC.transform(*place)) for place in ((lon, lat, height_m), (lon2, lat2, height2_m)))
    x, y, z = (there[axis] - here[axis] for axis in range(3))
    sin_lon, cos_lon, sin_lat, cos_lat = (f(np.radians(angle)) for angle in (lon, lat) for f in (np.sin, np.cos))
    outward = cos_lon * x + sin_lon * y
    east, north, up = cos_lon * y - sin_lon * x, cos_lat * z - sin_lat * outward, cos_lat * outward + sin_lat * z
    return np.degrees(np.arctan2(east, north)) % 360.0, np.degrees(np.arctan2(up, np.hypot(east, north)))
