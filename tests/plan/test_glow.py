"""Glow of towns: Walker's law at its own example, and sums over directions by hand."""

import tracemalloc

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from skyalidade.plan.glow import Glow, Towns, walker77


def test_walkers_own_rule_of_thumb():
    """A town of 3160 people adds a tenth of a natural sky at 10 km: his I = 0.01 P d^-2.5 (PASP 89, 405, 1977; from memory)."""
    assert walker77(3162.3, 10.0) == pytest.approx(0.1, rel=1e-4)
    assert walker77(1e6, 100.0) == pytest.approx(0.1)
    assert walker77(2000.0, [0.0, 0.5, 1.0]).tolist() == [20.0] * 3  # within a town the law has no meaning: as 1 km off


@pytest.fixture(scope="module")
def scene():
    rng = np.random.default_rng(80)
    site = rng.uniform(-3, 3, 40) + 179.0, rng.uniform(40, 44, 40)  # on both sides of the antimeridian
    town = np.where(rng.random(80) < 0.5, -180.0, 180.0) + rng.uniform(-4, 4, 80), rng.uniform(39, 45, 80)
    return site, Towns(*town, rng.integers(0, 200_000, 80).astype(float), np.array([f"town {i}" for i in range(80)], dtype=object))


def by_hand(lon, lat, towns, az_deg):
    """Glow and brightest town, one geodesic after the other."""
    total, brightest, name = 0.0, 0.0, None
    for town_lon, town_lat, people, town in zip(towns.lon_deg, towns.lat_deg, towns.population, towns.name):
        line = Geodesic.WGS84.Inverse(lat, lon, town_lat, town_lon)
        if line["s12"] <= 150e3 and abs((line["azi1"] - az_deg + 180.0) % 360.0 - 180.0) <= 20.0:
            glow = 0.01 * people * max(line["s12"] / 1000.0, 1.0) ** -2.5
            total += glow
            if glow > brightest:
                brightest, name = glow, town
    return total, name


def test_the_sum_over_towns_in_a_direction(scene):
    (lon, lat), towns = scene
    rng = np.random.default_rng(81)
    site, az_deg = rng.integers(0, 40, 120), rng.uniform(0, 360, 120)
    glow, town = Glow(lon, lat, towns).toward(site, az_deg)
    expected = [by_hand(lon[i], lat[i], towns, az) for i, az in zip(site, az_deg)]
    assert glow == pytest.approx([value for value, _ in expected], rel=1e-9)
    assert town.tolist() == [name for _, name in expected]
    assert 10 < (glow == 0.0).sum() < 110


def test_large_layers_go_in_parts(scene, monkeypatch):
    (lon, lat), towns = scene
    site, az_deg = np.repeat(np.arange(40), 5), np.tile(np.arange(0.0, 360.0, 72.0), 40)
    whole = Glow(lon, lat, towns).toward(site, az_deg)
    monkeypatch.setattr("skyalidade.plan.glow.CELLS", 50)
    monkeypatch.setattr("skyalidade.plan.glow.BLOCK_PAIRS", 300)
    parts = Glow(lon, lat, towns).toward(site, az_deg)
    assert whole[0].tolist() == parts[0].tolist()
    assert whole[1].tolist() == parts[1].tolist()


def test_many_sites_among_many_towns_are_held_in_part_and_can_be_cancelled():
    """5000 sites that see 5000 towns each took 1.5 GB, and the better part of a minute in which nobody was asked."""
    rng = np.random.default_rng(82)
    count = 600
    lon, lat = rng.uniform(0.0, 1.0, count), rng.uniform(50.0, 51.0, count)
    people, name = rng.uniform(1e3, 1e5, 2 * count), np.full(2 * count, "town", dtype=object)
    towns = Towns(rng.uniform(0.0, 1.0, 2 * count), rng.uniform(50.0, 51.0, 2 * count), people, name)
    site, asked = np.arange(count), []
    tracemalloc.start()
    whole, _ = Glow(lon, lat, towns).toward(site, np.full(count, 90.0), lambda: asked.append(0) or True)
    held = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert (whole > 0.0).sum() > count // 2
    assert held < 60e6  # bytes: with all 720 000 pairs at once it was 86 MB
    assert len(asked) >= 3
    begun = iter([True])
    part, _ = Glow(lon, lat, towns).toward(site, np.full(count, 90.0), lambda: next(begun, False))
    assert 0 < (part > 0.0).sum() < (whole > 0.0).sum()


def test_no_direction_no_glow_and_no_towns_none():
    none = Towns(np.array([]), np.array([]), np.array([]), np.array([], dtype=object))
    glow, town = Glow(np.array([0.0]), np.array([50.0]), none).toward(np.array([0, 0]), np.array([np.nan, 30.0]))
    assert np.isnan(glow[0])
    assert glow[1] == 0.0
    assert town.tolist() == [None, None]


def test_a_town_on_the_site_shines_in_no_direction():
    here = Towns(np.array([0.0, 0.0]), np.array([50.0, 50.1]), np.array([1e6, 1e4]), np.array(["here", "north"], dtype=object))
    glow, town = Glow(np.array([0.0]), np.array([50.0]), here).toward(np.array([0]), np.array([0.0]))
    assert glow[0] == pytest.approx(100.0 * 11.12**-2.5, rel=0.01)  # a tenth of a degree of latitude
    assert town.tolist() == ["north"]
