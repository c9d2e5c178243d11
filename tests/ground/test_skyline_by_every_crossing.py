"""Skylines against the height of the ground at every crossing of a ray with a line through centres of cells."""

import every_crossing
import numpy as np
import pytest
import rough_ground

from skyalidade.ground import skyline, terrain

CELL_M, EYE_M, SKIP_M = 10.0, 1.6, 20.0
AZ = np.arange(0.0, 360.0, 2.0)
FAR_M, TOL_RMS_DEG = 200.0, 0.05  # as the project promises: nearer, the elevation model itself errs by more
PLACES = {
    "UTM": ("EPSG:32633", 15.2, 45.0, CELL_M, 0.0),
    "UTM, edge of the zone": ("EPSG:32633", 17.99, 60.0, CELL_M, 0.0),
    "UTM, rows turned": ("EPSG:32633", 15.2, -20.0, CELL_M, 30.0),
    "polar stereographic": ("EPSG:3413", 20.0, 79.0, CELL_M, 0.0),
    "degrees": ("EPSG:4326", 15.2, 60.0, CELL_M / 55_800, 0.0),
    "Mercator, whose metres are half metres": ("EPSG:3857", 15.0, 60.0, 2 * CELL_M, 0.0),
}


@pytest.fixture(scope="module")
def heights():
    return rough_ground.fractal(2400, 2400, 1)


def viewpoints(ground, lon, lat, count, spread_deg=0.01):
    rng = np.random.default_rng(4)
    lon, lat = lon + rng.uniform(-spread_deg, spread_deg, count), lat + rng.uniform(-spread_deg, spread_deg, count)
    return lon, lat, every_crossing.height_m(ground, *every_crossing.cells(ground, lon, lat)) + EYE_M


def reference(ground, places, az, *limits):
    """Altitude, distance and end of the ground, each (viewpoints, azimuths)."""
    return np.transpose([every_crossing.skyline(ground, *place, az, *limits) for place in zip(*places)], (1, 0, 2))


@pytest.mark.parametrize("place", PLACES)
def test_rms_where_the_skyline_is_far(place, heights, record_property):
    crs, lon, lat, cell, turned_deg = PLACES[place]
    ground = rough_ground.around(lon, lat, heights, crs, cell, turned_deg)
    places = viewpoints(ground, lon, lat, 4)
    found = skyline.skyline(terrain.terrain(*ground), *(part[:, None] for part in places), AZ, 15_000.0, SKIP_M)
    alt, dist, end = reference(ground, places, AZ, 15_000.0, SKIP_M)
    missed = found.alt_deg - alt
    far = dist > FAR_M
    rms = np.sqrt((missed[far] ** 2).mean())
    record_property("skyline_crossing", rms)
    assert far.sum() > 200
    assert rms < TOL_RMS_DEG
    assert np.abs(missed[far]).max() < 0.5  # [deg] no summit is lost
    assert np.abs(found.reach_m - end).max() < CELL_M
    same = np.abs(found.dist_m - dist) < 0.02 * dist + CELL_M
    assert same[far].mean() > 0.95  # the rest are summits of nearly one altitude, or higher ones within a cell between its crossings
    assert missed[far & ~same].min() > -TOL_RMS_DEG


def test_only_ground_beyond_what_is_passed_over_counts(heights):
    ground = rough_ground.around(15.2, 45.0, heights, "EPSG:32633", CELL_M)
    places = viewpoints(ground, 15.2, 45.0, 3)
    found = skyline.skyline(terrain.terrain(*ground), *(part[:, None] for part in places), AZ, 8000.0, skip_near_m=2000.0)
    alt, dist, _ = reference(ground, places, AZ, 8000.0, 2000.0)
    assert found.dist_m.min() >= 2000.0
    assert np.sqrt(((found.alt_deg - alt) ** 2).mean()) < TOL_RMS_DEG
    assert found.at_radius[dist == 8000.0].mean() > 0.95  # the rest are summits of nearly one altitude
    assert (dist[found.at_radius] > 0.97 * 8000.0).mean() > 0.95


def test_two_cells_are_passed_over_if_nothing_is_said(heights):
    ground = rough_ground.around(15.2, 45.0, heights, "EPSG:32633", CELL_M)
    model, places = terrain.terrain(*ground), [part[:, None] for part in viewpoints(ground, 15.2, 45.0, 3)]
    silent, told = (skyline.skyline(model, *places, AZ, 5000.0, skip) for skip in (None, 2 * CELL_M / 0.9996))  # scale on the meridian
    assert silent.alt_deg == pytest.approx(told.alt_deg, abs=0.1)  # [deg] of two cells a thousandth: 20 m x 1e-4 on the steepest ground


def test_air_lifts_what_is_far(heights):
    ground = rough_ground.around(15.2, 45.0, heights, "EPSG:32633", CELL_M)
    lon, lat, lens = viewpoints(ground, 15.2, 45.0, 1)
    model = terrain.terrain(*ground)
    for refraction_k in (0.0, 0.13, 0.5):
        found = skyline.skyline(model, lon, lat, lens + 600.0, AZ, 11_000.0, SKIP_M, refraction_k=refraction_k)
        alt = reference(ground, (lon, lat, lens + 600.0), AZ, 11_000.0, SKIP_M, refraction_k)[0, 0]
        assert np.sqrt(((found.alt_deg - alt) ** 2).mean()) < 0.005  # [deg] at 10 km a k of 0.13 is worth 0.006 deg


@pytest.mark.parametrize(
    ("lon", "az", "shape"),
    [(15.2, 30.0, ()), ([15.2, 15.21], 30.0, (2,)), ([[15.2], [15.21]], [0.0, 30.0, 350.0], (2, 3)), ([15.2, 15.21], [30.0, 60.0], (2,))],
    ids=["scalar", "viewpoints", "viewpoints by azimuths", "pairs"],
)
def test_shapes_broadcast(lon, az, shape, heights):
    ground = rough_ground.around(15.2, 45.0, heights, "EPSG:32633", CELL_M)
    found = skyline.skyline(terrain.terrain(*ground), lon, 45.0, 900.0, az, 3000.0, SKIP_M)
    for lon1, az1, alt in zip(*(np.broadcast_to(part, shape).ravel() for part in (lon, az, found.alt_deg))):
        expected = every_crossing.skyline(ground, lon1, 45.0, 900.0, [az1], 3000.0, SKIP_M)[0, 0]
        assert alt == pytest.approx(expected, abs=TOL_RMS_DEG)
    assert all(part.shape == shape for part in (found.alt_deg, found.dist_m, found.height_m, found.reach_m, found.at_radius))


@pytest.mark.parametrize("width", [3, 30])
def test_unknown_ground_ends_the_ray(width, heights):
    holed = heights.copy()
    holed[:, 1700 : 1700 + width] = np.nan  # 5 km to the east, where samples are 50 m apart
    ground = rough_ground.around(15.2, 45.0, holed, "EPSG:32633", CELL_M)
    lens = float(heights[1200, 1200]) + 200.0
    found = skyline.skyline(terrain.terrain(*ground), 15.2, 45.0, lens, AZ, 15_000.0, SKIP_M)
    alt, _, end = reference(ground, np.transpose([(15.2, 45.0, lens)]), AZ, 15_000.0, SKIP_M)[:, 0]
    assert ((end > 4970) & (end < 9000)).sum() > 50
    assert np.abs(found.reach_m - end).max() < 3 * CELL_M
    assert np.sqrt(((found.alt_deg - alt) ** 2).mean()) < TOL_RMS_DEG
