"""Skylines and lines of sight the plain way: the height of the ground wherever a ray crosses a line through centres of cells.

It knows nothing of the plugin: geodesics by PROJ, heights between two neighbours, exact triangles on the sphere that has the Earth's
radius in the azimuth of the ray. The air lifts what stands an angle theta away, seen from the Earth's centre, by k theta / 2.
One ray at a time: slow, and easy to check by eye.
"""

from typing import NamedTuple

import numpy as np
from pyproj import Geod

WGS84 = Geod(ellps="WGS84")
NODE_M = 250.0  # a geodesic leaves its chord by 0.002 m in this, on any map used here

EDGE = 1e-6  # of a cell: a crossing with the edge itself is found to the digits of the map


class Profile(NamedTuple):
    """Ground along a ray. [m]."""

    dist_m: np.ndarray
    height_m: np.ndarray
    radius_m: float


def radius_m(lat_deg, az_deg):
    """Radius of the ellipsoid along an azimuth, by Euler's theorem. [m]."""
    narrow = 1.0 - WGS84.es * np.sin(np.radians(lat_deg)) ** 2
    along, across = WGS84.a * (1.0 - WGS84.es) / narrow**1.5, WGS84.a / np.sqrt(narrow)
    return 1.0 / (np.cos(np.radians(az_deg)) ** 2 / along + np.sin(np.radians(az_deg)) ** 2 / across)


def cells(ground, lon_deg, lat_deg):
    """Place in the raster, counted from the centre of its first cell: col, row."""
    x0, a, b, y0, c, d = ground.transform
    x, y = ground.to_map(lon_deg, lat_deg)
    return np.tensordot(np.linalg.inv([[a, b], [c, d]]), np.array([x - x0, y - y0]), 1) - 0.5


def height_m(ground, col, row):
    """Bilinear height; nan outside. [m]."""
    rows, cols = ground.heights_m.shape
    over = np.maximum(np.maximum(-col, col - (cols - 1)), np.maximum(-row, row - (rows - 1)))
    left = np.clip(np.floor(col), 0, cols - 2).astype(int, casting="unsafe")
    upper = np.clip(np.floor(row), 0, rows - 2).astype(int, casting="unsafe")
    right, down = col - left, row - upper
    z = ground.heights_m
    above = z[upper, left] * (1 - right) + z[upper, left + 1] * right
    below = z[upper + 1, left] * (1 - right) + z[upper + 1, left + 1] * right
    return np.where(over < EDGE, above * (1 - down) + below * down, np.nan)


def line_crossings(dist, place):
    """Distances at which a coordinate, known at some distances, is a whole number."""
    floor = np.floor(place)
    count = np.abs(np.diff(floor)).astype(int)
    piece = np.repeat(np.arange(count.size), count)
    nth = np.arange(piece.size) - np.repeat(np.cumsum(count) - count, count)
    whole = np.where(floor[piece + 1] > floor[piece], floor[piece] + 1 + nth, floor[piece] - nth)
    step = np.diff(dist)[piece]
    return dist[piece] + (whole - place[piece]) / (place[piece + 1] - place[piece]) * step


def profile(ground, lon_deg, lat_deg, az_deg, begin_m, end_m):
    """Ground along a geodesic from one distance to another, or to the edge of the heights."""
    dist = np.linspace(0.0, end_m, max(2, int(np.ceil(end_m / NODE_M)) + 1))
    lon, lat, _ = WGS84.fwd(*(np.full(dist.shape, value) for value in (lon_deg, lat_deg, az_deg)), dist)
    col, row = cells(ground, lon, lat)
    every = np.concatenate([[begin_m, end_m], line_crossings(dist, col), line_crossings(dist, row)])
    every = np.sort(every[(every >= begin_m) & (every <= end_m)])
    height = height_m(ground, np.interp(every, dist, col), np.interp(every, dist, row))
    known = np.isfinite(height)
    last = every.size if known.all() else np.argmin(known)
    return Profile(every[:last], height[:last], radius_m(lat_deg, az_deg))


def altitude_deg(ray, height_m, lens_m, refraction_k):
    """Apparent altitude of points at the distances of a profile. [deg]."""
    theta = ray.dist_m / ray.radius_m
    outward, lens = ray.radius_m + height_m, ray.radius_m + lens_m
    return np.degrees(np.arctan2(outward * np.cos(theta) - lens, outward * np.sin(theta)) + refraction_k * theta / 2)


def ray_m(ray, alt_deg, lens_m, refraction_k):
    """Height of the light that reaches the lens from an apparent altitude, at the distances of a profile. [m]."""
    theta = ray.dist_m / ray.radius_m
    straight = np.radians(alt_deg) - refraction_k * theta / 2
    return (ray.radius_m + lens_m) * np.cos(straight) / np.cos(straight + theta) - ray.radius_m


def skyline(ground, lon_deg, lat_deg, lens_m, az_deg, radius_m=40_000.0, skip_m=0.0, refraction_k=0.13):
    """Altitude [deg] and distance [m] of the skyline in several azimuths, and where the ground ends [m]: shape (3, A)."""
    found = []
    for az in az_deg:
        ray = profile(ground, lon_deg, lat_deg, az, skip_m, radius_m)
        alt = altitude_deg(ray, ray.height_m, lens_m, refraction_k)
        highest = np.argmax(alt)
        found.append((alt[highest], ray.dist_m[highest], ray.dist_m[-1]))
    return np.transpose(found)


def sight(ground, lon1_deg, lat1_deg, lens_m, lon2_deg, lat2_deg, top_m, skip_m, before_m, refraction_k=0.13):
    """Least clearance of the ray to the top [m], where it is [m], and the lowest height seen at the subject [m]: shape (3,)."""
    az, _, dist = WGS84.inv(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    ray = profile(ground, lon1_deg, lat1_deg, az, skip_m, dist - before_m)
    there = Profile(np.array([dist]), np.array([top_m]), ray.radius_m)
    clear = ray_m(ray, altitude_deg(there, top_m, lens_m, refraction_k), lens_m, refraction_k) - ray.height_m
    least = np.argmin(clear)
    seen = ray_m(there, altitude_deg(ray, ray.height_m, lens_m, refraction_k).max(), lens_m, refraction_k)
    return np.array([clear[least], ray.dist_m[least], seen[0]])
