"""Lines of sight against the height of the ground at every crossing of the ray with a line through centres of cells."""

import every_crossing
import numpy as np
import pytest
import rough_ground
from every_crossing import WGS84

from skyalidade.ground import sight, terrain

CELL_M, EYE_M, PAIRS = 10.0, 1.6, 400
TOL_M = 2.0  # ground whose slope turns by 0.8 at a crossing stands so much higher there than a quarter of a cell away, the farthest sample
PLACES = {
    "UTM": ("EPSG:32633", 15.2, 45.0, CELL_M, 0.0),
    "UTM, edge of the zone": ("EPSG:32633", 17.99, 60.0, CELL_M, 0.0),
    "UTM, rows turned": ("EPSG:32633", 15.2, -20.0, CELL_M, 30.0),
    "polar stereographic": ("EPSG:3413", 20.0, 79.0, CELL_M, 0.0),
    "degrees": ("EPSG:4326", 15.2, 60.0, CELL_M / 55_800, 0.0),
}


@pytest.fixture(scope="module")
def heights():
    return rough_ground.fractal(1600, 1600, 5)


def ground_m(ground, lon, lat):
    return every_crossing.height_m(ground, *every_crossing.cells(ground, lon, lat))


def pairs(ground, lon, lat, longest_m):
    """Cameras 1.6 m above the ground, subjects whose feet stand up to 50 m above it and whose tops up to 300 m higher: seven arrays."""
    rng = np.random.default_rng(6)
    lon1, lat1 = lon + rng.uniform(-0.01, 0.01, PAIRS), lat + rng.uniform(-0.01, 0.01, PAIRS)
    lon2, lat2, _ = WGS84.fwd(lon1, lat1, rng.uniform(0, 360, PAIRS), rng.uniform(200.0, longest_m, PAIRS))
    base = ground_m(ground, lon2, lat2) + rng.uniform(0, 50, PAIRS)
    return lon1, lat1, ground_m(ground, lon1, lat1) + EYE_M, lon2, lat2, base, base + rng.uniform(1.0, 300.0, PAIRS)


def reference(ground, given, skip_m, before_m):
    """Least clearance, where it is, and the lowest height seen at the subject; shape (3, pairs)."""
    lon1, lat1, lens, lon2, lat2, _, top = given
    before = np.broadcast_to(before_m, lon1.shape)
    rays = zip(lon1, lat1, lens, lon2, lat2, top, np.broadcast_to(skip_m, lon1.shape), before)
    return np.transpose([every_crossing.sight(ground, *ray) for ray in rays])


@pytest.mark.parametrize("place", PLACES)
def test_clearance_and_what_is_hidden(place, heights, record_property):
    crs, lon, lat, cell, turned_deg = PLACES[place]
    ground = rough_ground.around(lon, lat, heights, crs, cell, turned_deg)
    given = pairs(ground, lon, lat, 5000.0)
    model = terrain.terrain(*ground)
    found = sight.lines_of_sight(model, *given, skip_near_m=2 * CELL_M)
    clear, block, seen = reference(ground, given, 2 * CELL_M, 2 * np.max(model.cell_m(*given[3:5]), axis=0))

    missed = found.clear_m - clear
    record_property("clearance_crossing", np.sqrt((missed**2).mean()))
    assert np.sqrt((missed**2).mean()) < TOL_M / 5
    assert np.abs(missed).max() < TOL_M
    sure = np.abs(clear) > TOL_M
    assert sure.mean() > 0.7
    assert (found.visible[sure] == (clear[sure] >= 0)).all()
    assert 0.1 < found.visible.mean() < 0.9
    assert (np.abs(found.block_m - block) < 2 * CELL_M).mean() > 0.95  # the rest are two places of nearly one clearance

    dist = WGS84.inv(*given[:2], *given[3:5])[2]
    base, top = given[5:]
    hidden = np.clip(seen - base, 0.0, top - base)
    # What hides stands nearer to the lens than the subject, and its error grows with the distance.
    assert (np.abs(found.hidden_m - hidden) < TOL_M * dist / found.block_m + 0.01 * dist).all()
    partly = (hidden > 0.0) & (hidden < top - base) & (block > 0.1 * dist)
    assert partly.sum() > 3
    assert np.sqrt(((found.hidden_m - hidden)[partly] ** 2).mean()) < 2 * TOL_M


def test_from_two_cells_beyond_the_camera_if_nothing_is_said(heights):
    ground = rough_ground.around(15.0, 45.0, heights, "EPSG:32633", CELL_M)
    given = pairs(ground, 15.0, 45.0, 1000.0)
    found = sight.lines_of_sight(terrain.terrain(*ground), *given)
    clear = reference(ground, given, 2 * CELL_M, 2 * CELL_M)[0]
    assert found.clear_m == pytest.approx(clear, abs=TOL_M)


def test_sight_is_uncertain_within_the_accuracy_of_the_model_or_less_near_the_tripod(heights):
    ground = rough_ground.around(15.0, 45.0, heights, "EPSG:32633", CELL_M)
    found = sight.lines_of_sight(terrain.terrain(*ground), *pairs(ground, 15.0, 45.0, 5000.0), accuracy_m=8.0)
    uncertain = np.abs(found.clear_m) < 8.0 * np.minimum(1.0, found.block_m / 100.0)
    expected = np.where(uncertain, "uncertain", np.where(found.clear_m >= 0, "clear", "hidden"))
    assert list(found.sight) == list(expected)
    assert {"clear", "hidden", "uncertain"} == set(expected)


def test_ray_that_meets_unknown_ground_is_not_known(heights):
    holed = heights.copy()
    holed[:, 900:903] = np.nan  # 1 km to the east
    ground = rough_ground.around(15.0, 45.0, holed, "EPSG:32633", CELL_M)
    lon2, lat2, _ = WGS84.fwd([15.0] * 3, [45.0] * 3, [90.0, 90.0, 270.0], [900.0, 3000.0, 3000.0])
    found = sight.lines_of_sight(terrain.terrain(*ground), 15.0, 45.0, 900.0, lon2, lat2, 500.0, 900.0)
    assert list(np.isnan(found.clear_m)) == [False, True, False]
    assert [found.visible[i] for i in range(3)] == [True, None, True]
    assert found.sight[1] is None
    assert np.isnan(found.block_m[1])
    assert np.isnan(found.hidden_m[1])
