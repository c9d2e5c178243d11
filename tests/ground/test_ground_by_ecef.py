"""Skylines and lines of sight against straight lines in Earth-fixed coordinates, to 40 km, without air.

PROJ gives geodesics, the map, and the way to Earth-fixed coordinates and back; nothing here knows a radius of the Earth or a bearing in
the grid. Pairs are joined by the chord itself, not by a geodesic.
"""

import every_crossing
import numpy as np
import pytest
import rough_ground
from every_crossing import WGS84
from pyproj import Transformer

from skyalidade.ground import sight, skyline, terrain

ECEF = Transformer.from_crs("EPSG:4979", "EPSG:4978", always_xy=True)
CELL_M, LENGTH_M, SKIP_M = 45.0, 40_000.0, 90.0
EYES_M = np.array([1.6, 60.0, 600.0])  # over the ground: from the highest most of the skyline stands beyond 10 km
PAIRS, STEPS = 300, 4000
PLACES = {
    "UTM": ("EPSG:32633", 15.1, 45.0, CELL_M, 0.0),
    "UTM, edge of the zone": ("EPSG:32633", 17.99, 60.0, CELL_M, 0.0),
    "UTM, rows turned": ("EPSG:32633", 13.0, -33.0, CELL_M, 25.0),
    "polar stereographic": ("EPSG:3413", 20.0, 79.0, CELL_M, 0.0),
    "over the pole": ("EPSG:3995", 100.0, 89.9, CELL_M, 0.0),
    "degrees": ("EPSG:4326", 10.0, 60.0, CELL_M / 55_800, 0.0),
}


@pytest.fixture(scope="module")
def heights():
    return rough_ground.fractal(2000, 2000, 7) + 1500.0


@pytest.fixture(params=PLACES, scope="module")
def place(request, heights):
    """Ground around a place, and the place's longitude and latitude."""
    crs, lon, lat, cell, turned_deg = PLACES[request.param]
    return rough_ground.around(lon, lat, heights, crs, cell, turned_deg), lon, lat


def ground_m(ground, lon, lat):
    return every_crossing.height_m(ground, *every_crossing.cells(ground, lon, lat))


def ecef_m(lon, lat, height):
    return np.array(ECEF.transform(*np.broadcast_arrays(lon, lat, height)))


def altitude_deg(lon0, lat0, lens, lon, lat, height):
    """Altitude over the plane that touches the ellipsoid under the lens. [deg]."""
    east, north = np.radians(lon0), np.radians(lat0)
    up = np.array([np.cos(north) * np.cos(east), np.cos(north) * np.sin(east), np.sin(north)])
    ray = ecef_m(lon, lat, height) - ecef_m(lon0, lat0, np.broadcast_to(lens, np.shape(height)))
    return np.degrees(np.arcsin(np.tensordot(up, ray, 1) / np.linalg.norm(ray, axis=0)))


def walk(lon, lat, az_deg, dist_m):
    """Places at distances along geodesics."""
    lon, lat, az, dist = np.broadcast_arrays(lon, lat, az_deg, dist_m)
    return WGS84.fwd(lon, lat, az, dist)[:2]


def test_skyline(place, record_property):
    ground, lon, lat = place
    lens, az = float(ground_m(ground, lon, lat)) + EYES_M[:, None], np.arange(0.0, 360.0, 10.0)
    found = skyline.skyline(terrain.terrain(*ground), lon, lat, lens, az, LENGTH_M, SKIP_M, refraction_k=0.0)
    assert found.alt_deg.shape == (EYES_M.size, az.size)
    assert found.dist_m.max() > 30_000

    there = walk(lon, lat, az, found.dist_m)
    told = altitude_deg(lon, lat, lens, *there, found.height_m)
    record_property("altitude_ecef", np.abs(found.alt_deg - told).max() * 3600)
    assert np.abs(found.alt_deg - told).max() * 3600 < 0.05  # ["] on a sphere of the radius along the ray: 0.05" to 60 km
    # [m] ground as steep as 1 in 2, where the ray may have left the geodesic by a tenth of a cell; half a cell was promised
    assert np.abs(found.height_m - ground_m(ground, *there)).max() < 0.1 * CELL_M / 2

    dist = np.concatenate([np.geomspace(SKIP_M, 10_000.0, 4700), np.arange(10_000.0, LENGTH_M, 10.0)])  # each 1/1000 farther, or less
    lon2, lat2 = walk(lon, lat, az[:, None], dist)
    height = ground_m(ground, lon2, lat2)
    alt = np.array([altitude_deg(lon, lat, one, lon2, lat2, height) for one in lens.ravel()])
    above = found.alt_deg - alt.max(axis=2)
    far = dist[alt.argmax(axis=2)] > 200.0
    assert np.sqrt((above[far] ** 2).mean()) < 0.05  # [deg] promised; samples grow by 1 %
    assert (
        above.max() < 0.02
    )  # [deg] nor does it see what is not there; half a thousandth of the distance, where the slope turns by as much as 0.7


def test_lines_of_sight(place):
    ground, lon, lat = place
    rng = np.random.default_rng(3)
    lon1, lat1 = walk(lon, lat, rng.uniform(0, 360, PAIRS), rng.uniform(0, 500, PAIRS))
    dist = rng.uniform(1000.0, LENGTH_M, PAIRS)
    lon2, lat2 = walk(lon1, lat1, rng.uniform(0, 360, PAIRS), dist)
    lens = ground_m(ground, lon1, lat1) + rng.choice(EYES_M, PAIRS)
    base = ground_m(ground, lon2, lat2)
    top = base + rng.uniform(0, 1000, PAIRS)
    model = terrain.terrain(*ground)
    found = sight.lines_of_sight(model, lon1, lat1, lens, lon2, lat2, base, top, SKIP_M, refraction_k=0.0)

    start, end = ecef_m(lon1, lat1, lens)[:, :, None], ecef_m(lon2, lat2, top)[:, :, None]

    def clearance_m(part):
        lon, lat, height = ECEF.transform(*(start + (end - start) * part), direction="INVERSE")
        return height - ground_m(ground, lon, lat)

    there = clearance_m((found.block_m / dist)[:, None])[:, 0]
    assert np.abs(there - found.clear_m).max() < 0.5  # [m] equal parts of a steep chord are no equal distances along the ground
    end_m = dist - 2 * np.max(model.cell_m(lon2, lat2), axis=0)
    least = clearance_m(np.linspace(SKIP_M / dist, end_m / dist, STEPS).T).min(axis=1)
    missed = found.clear_m - least
    assert np.sqrt((missed**2).mean()) < 0.3  # [m] half a cell of 45 m between samples, on ground that turns by 1 m in that
    assert missed.max() < 1.5
    sure = np.abs(least) > 1.5  # [m]
    assert sure.mean() > 0.9
    assert (found.visible[sure] == (least[sure] > 0)).all()
    assert 0.2 < found.visible.mean() < 0.8
