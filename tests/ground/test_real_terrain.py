"""Skylines and lines of sight on ground nobody here made: around the Jacksboro fault, Tennessee, in matplotlib's sample data.

A geographic raster of 3" cells (74 by 92 m) and whole metres: its flat valleys and steps of one metre are met by no fractal.
"""

import every_crossing
import numpy as np
import pytest
import rough_ground
from every_crossing import WGS84

from skyalidade.ground import sight, skyline, terrain

MIDDLE, PLACES, PAIRS = (-84.25, 36.59), 12, 300
LONGER_SIDE_M, SKIP_M = 93.0, 186.0
AZ = np.arange(0.0, 360.0, 4.0)


@pytest.fixture(scope="module")
def ground():
    return rough_ground.jacksboro()


def spots(ground, count, spread_deg, seed):
    """Places around the middle, and the heights of their ground."""
    lon, lat = np.transpose(np.array(MIDDLE) + np.random.default_rng(seed).uniform(-spread_deg, spread_deg, (count, 2)))
    return lon, lat, every_crossing.height_m(ground, *every_crossing.cells(ground, lon, lat))


def test_as_it_was_shipped(ground):
    assert ground.heights_m.shape == (344, 403)
    assert (ground.heights_m.min(), ground.heights_m.max()) == (236, 1076)


def test_heights(ground):
    lon, lat, height = spots(ground, 1000, 0.14, 1)
    assert terrain.terrain(*ground).height_m(lon, lat) == pytest.approx(height, abs=0.01)  # [m] heights of 4 bytes; slopes x 1e-9 deg


@pytest.mark.parametrize("refraction_k", [0.0, 0.13])
def test_skyline(ground, refraction_k, record_property):
    lon, lat, height = spots(ground, PLACES, 0.08, 2)
    lens = height + np.resize([1.6, 30.0], PLACES)
    places = (part[:, None] for part in (lon, lat, lens))
    found = skyline.skyline(terrain.terrain(*ground), *places, AZ, 40_000.0, SKIP_M, refraction_k)
    rays = [every_crossing.skyline(ground, *place, AZ, 40_000.0, SKIP_M, refraction_k) for place in zip(lon, lat, lens)]
    alt, dist, end = np.transpose(rays, (1, 0, 2))
    far = dist > 200.0
    missed = (found.alt_deg - alt)[far]
    record_property("skyline_real", np.sqrt((missed**2).mean()))
    assert far.mean() > 0.7
    assert dist.max() > 15_000.0
    assert np.sqrt((missed**2).mean()) < 0.05  # [deg] promised
    assert np.abs(found.reach_m - end).max() < 1.0  # [m] the edge, which both find along a geodesic


def test_lines_of_sight(ground, record_property):
    lon1, lat1, foot = spots(ground, PAIRS, 0.12, 3)
    lon2, lat2, base = spots(ground, PAIRS, 0.12, 4)
    lens, top = foot + 1.6, base + np.random.default_rng(5).uniform(5.0, 400.0, PAIRS)
    found = sight.lines_of_sight(terrain.terrain(*ground), lon1, lat1, lens, lon2, lat2, base, top, SKIP_M)
    rays = zip(lon1, lat1, lens, lon2, lat2, top)
    clear, _, seen = np.transpose([every_crossing.sight(ground, *ray, SKIP_M, 2 * LONGER_SIDE_M) for ray in rays])
    missed = found.clear_m - clear
    record_property("clearance_real", np.sqrt((missed**2).mean()))
    assert np.sqrt((missed**2).mean()) < 2.0  # [m] slopes of 1 in 3 turn at a crossing, a quarter of a cell from the nearest sample
    sure = np.abs(clear) > 8.0
    assert sure.mean() > 0.7
    assert (found.visible[sure] == (clear[sure] >= 0)).all()
    assert 0.1 < found.visible.mean() < 0.9
    dist = WGS84.inv(lon1, lat1, lon2, lat2)[2]
    hidden = np.clip(seen - base, 0.0, top - base)
    assert (np.abs(found.hidden_m - hidden) < 8.0 * dist / found.block_m).all()  # what hides stands nearer, and its error grows outward
