"""Ways on foot against pyproj's geodesics: lengths, which walk and which parking, and what is left off the walk."""

import numpy as np
import pytest
from pyproj import Geod

from skyalidade.plan.ways import NONE, Walks, find_ways, walked

GEOD = Geod(ellps="WGS84")
LON, LAT = -33.0, 36.0
TOL_M = 0.01  # a stroke straight in longitude and latitude, of a kilometre, against the geodesic: millimetres


def at(bearing_deg, dist_m, lon=LON, lat=LAT):
    lon, lat, _ = GEOD.fwd(lon, lat, bearing_deg, dist_m)
    return lon, lat


def walks(*lines):
    """Walks of parts of (lon, lat)."""
    lon, lat, part, walk = [], [], [], []
    for number, line in enumerate(lines):
        for piece in line if isinstance(line[0], list) else [line]:
            lon += [place[0] for place in piece]
            lat += [place[1] for place in piece]
            part += [max(part, default=-1) + 1] * len(piece)
            walk += [number] * len(piece)
    return Walks(np.array(lon, float), np.array(lat, float), np.array(part, int), np.array(walk, int))


def ways(places, cars, trails):
    return find_ways(*np.array(places, float).reshape(-1, 2).T, *np.array(cars, float).reshape(-1, 2).T, trails)


NOWHERE = walks()
CAR, BEND, CAMERA = at(270, 900), at(0, 600, *at(270, 900)), (LON, LAT)
TRAIL = [CAR, BEND, CAMERA]
TRAIL_M = 600.0 + GEOD.inv(*BEND, *CAMERA)[2]


@pytest.mark.parametrize("line", [TRAIL, TRAIL[::-1]], ids=["outward", "homeward"])
def test_length_along_a_walk_drawn_either_way(line):
    trails = walks(line)
    found = ways([CAMERA], [CAR], trails)
    assert found.length_m[0] == pytest.approx(TRAIL_M, abs=TOL_M)
    assert found.straight_m[0] == pytest.approx(900.0, abs=TOL_M)
    assert found.straight_deg[0] == pytest.approx(270.0, abs=0.01)
    ((lon, lat),) = walked(trails, 0, found.from_m[0], found.to_m[0])
    assert (lon[0], lat[0], lon[-1], lat[-1]) == pytest.approx((*CAR, *CAMERA), abs=1e-7)
    assert len(lon) == 3


def test_steps_off_the_walk_count_as_the_crow_flies():
    camera, car = at(180, 40, *at(90, 500)), at(0, 30, *at(90, 100))
    found = ways([camera], [car], walks([at(90, 0), at(90, 1000)]))
    assert found.off_place_m[0] == pytest.approx(40.0, abs=0.1)
    assert found.off_car_m[0] == pytest.approx(30.0, abs=0.1)
    assert found.length_m[0] == pytest.approx(400.0 + 40.0 + 30.0, abs=0.3)


def test_the_parking_on_the_walk_is_taken_before_a_nearer_one_off_it():
    over_the_gorge = at(180, 100)
    found = ways([CAMERA], [over_the_gorge, CAR], walks(TRAIL))
    assert found.parking[0] == 1
    assert found.length_m[0] == pytest.approx(TRAIL_M, abs=TOL_M)


def test_of_two_walks_that_lead_there_the_shorter():
    straight = [CAR, CAMERA]
    found = ways([CAMERA], [CAR], walks(TRAIL, straight))
    assert found.walk[0] == 1
    assert found.length_m[0] == pytest.approx(900.0, abs=TOL_M)


def test_a_walk_elsewhere_is_none():
    found = ways([at(0, 5000), CAMERA], [CAR], walks(TRAIL))
    assert found.walk.tolist() == [NONE, 0]
    assert found.parking.tolist() == [0, 0]
    assert np.isnan(found.length_m).tolist() == [True, False]


def test_a_walk_that_passes_by_stands_before_one_that_does_not():
    passing, elsewhere = [at(90, 0), at(90, 800)], [at(0, 560), at(90, 3000, *at(0, 560))]
    car = at(90, 1500, *at(0, 560))  # on the walk 560 m off, and farther than that from the one that passes
    found = ways([CAMERA], [car], walks(passing, elsewhere))
    assert found.walk[0] == 0
    assert found.off_place_m[0] == pytest.approx(0.0, abs=TOL_M)
    assert found.off_car_m[0] == pytest.approx(np.hypot(700.0, 560.0), abs=1.0)


def test_without_parking_it_begins_at_the_farther_end():
    near_its_start = at(0, 100, *CAR)
    found = ways([near_its_start], [], walks(TRAIL))
    assert found.parking[0] == NONE
    assert np.isnan(found.straight_m[0])
    assert found.length_m[0] == pytest.approx(TRAIL_M - 100.0, abs=TOL_M)


def test_without_a_walk_the_nearest_parking_and_no_length():
    found = ways([CAMERA], [at(10, 2000), at(200, 1500)], NOWHERE)
    assert (found.parking[0], found.straight_m[0]) == (1, pytest.approx(1500.0, abs=TOL_M))
    assert np.isnan(found.length_m[0])


def test_nothing_given():
    found = ways([CAMERA], [], NOWHERE)
    assert (found.walk[0], found.parking[0]) == (NONE, NONE)
    assert np.isnan(found.length_m[0])
    assert ways([], [], NOWHERE).walk.size == 0


def test_gaps_between_parts_are_walked_too():
    parts = [[at(90, 0), at(90, 300)], [at(90, 500), at(90, 800)]]
    trails = walks(parts)
    found = ways([at(90, 800)], [at(90, 0)], trails)
    assert found.length_m[0] == pytest.approx(800.0, abs=TOL_M)
    assert [len(lon) for lon, _ in walked(trails, 0, found.from_m[0], found.to_m[0])] == [2, 2]


def test_over_the_antimeridian():
    west, east = at(270, 700, 180.0, -17.0), at(90, 800, 180.0, -17.0)
    for line in ([west, east], [west, (east[0] + 360.0, east[1])]):
        trails = walks(line)
        found = ways([east], [west], trails)
        assert found.length_m[0] == pytest.approx(1500.0, abs=TOL_M)
        ((lon, _),) = walked(trails, 0, found.from_m[0], found.to_m[0])
        assert lon == pytest.approx([west[0], east[0]])


def test_many_places_are_worked_on_in_blocks(monkeypatch):
    rng = np.random.default_rng(1)
    places, cars = rng.uniform(-0.01, 0.01, (2, 40, 2)) + [LON, LAT]
    trails = walks(*[rng.uniform(-0.01, 0.01, (5, 2)) + [LON, LAT] for _ in range(4)])
    whole = ways(places, cars, trails)
    monkeypatch.setattr("skyalidade.plan.ways.BLOCK_CELLS", 7)
    for one, other in zip(whole, ways(places, cars, trails)):
        np.testing.assert_array_equal(one, other)
