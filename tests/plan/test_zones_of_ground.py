"""Zones of ground: their outlines and what lies in them, by pyproj alone; points tried at random are in where they should be."""

import numpy as np
import pytest
import walks
from test_standpoints import JUNE_NIGHT_S, near
from walks import GEOD, UTM, off_deg

from skyalidade.plan.aims import Bearing, BodyBearing
from skyalidade.plan.sightlines import Subjects, is_facing
from skyalidade.plan.standpoints import Reach
from skyalidade.plan.targets import target
from skyalidade.plan.zones_of_ground import EDGE_M, Zones

UTM_E, UTM_N = walks.PLACES[UTM]
SUBJECT = near(UTM_E, UTM_N)


def inside(rings, lon, lat):
    """Whether places lie in any of the rings: even-odd rule on longitude and latitude."""
    hit = np.zeros(lon.size, dtype=bool)
    for first, last in zip(rings.offsets[:-1], rings.offsets[1:]):
        x, y = rings.lon_deg[first:last], rings.lat_deg[first:last]
        x2, y2 = np.roll(x, -1), np.roll(y, -1)
        crosses = (y[:, None] > lat) != (y2[:, None] > lat)
        with np.errstate(divide="ignore", invalid="ignore"):
            at = x[:, None] + (lat - y[:, None]) / (y2 - y)[:, None] * (x2 - x)[:, None]
        hit |= (crosses & (lon < at)).sum(axis=0) % 2 == 1
    return hit


def tried(count, most_m, seed=0):
    """Places about the subject, evenly over the disc."""
    rng = np.random.default_rng(seed)
    away, back = most_m * np.sqrt(rng.uniform(0.0, 1.0, count)), rng.uniform(0.0, 360.0, count)
    lon, lat, _ = GEOD.fwd(np.full(count, SUBJECT[0][0]), np.full(count, SUBJECT[1][0]), back, away)
    return np.array(lon), np.array(lat)


@pytest.mark.parametrize("faces", [(np.nan, np.nan), (215.0, 245.0), (300.0, 210.0), (231.0, 220.0)])
@pytest.mark.parametrize("aim", [Bearing(225.0), BodyBearing(target("core"), [JUNE_NIGHT_S + 3600.0])])
def test_places_are_in_where_bearing_distance_and_face_are_as_asked(aim, faces):
    reach = Reach(25.0, 40.0, 3000.0)
    lon, lat = tried(20_000, 3300.0)
    bearing, dist = walks.bearing_deg(lon, lat, *SUBJECT)
    wanted = aim.at(lon, lat, np.zeros(lon.size, dtype=int))
    miss = np.abs(off_deg(bearing, wanted))
    expected = (miss <= 25.0) & (dist >= 40.0) & (dist <= 3000.0) & is_facing(bearing, *faces)
    rings = Zones(Subjects(*SUBJECT, face_from_deg=faces[0], face_to_deg=faces[1]), aim, reach, [0], [0]).rings()
    edge_deg = np.degrees(2.0 * EDGE_M / np.maximum(dist, 1.0)) + 1e-4
    near_edge = (np.abs(miss - 25.0) < edge_deg) | (np.abs(dist - 40.0) < 0.02) | (np.abs(dist - 3000.0) < 0.02)
    for face in faces:
        near_edge |= np.abs(off_deg(bearing, face)) < edge_deg
    assert expected.sum() > 50
    np.testing.assert_array_equal(inside(rings, lon, lat)[~near_edge], expected[~near_edge])


def test_outlines_stand_at_the_tolerance_and_the_distances_exactly():
    aim = BodyBearing(target("moon"), [JUNE_NIGHT_S + 18 * 3600.0])
    rings = Zones(Subjects(*SUBJECT), aim, Reach(0.5, 20.0, 5000.0), [0], [0]).rings()
    bearing, dist = walks.bearing_deg(rings.lon_deg, rings.lat_deg, *SUBJECT)
    miss = off_deg(bearing, aim.at(rings.lon_deg, rings.lat_deg, np.zeros(dist.size, dtype=int)))
    on_edge, on_arc = np.abs(np.abs(miss) - 0.5) < 1e-6, (np.abs(dist - 20.0) < 1e-5) | (np.abs(dist - 5000.0) < 1e-5)
    assert np.all(on_edge | on_arc)
    assert np.all(np.abs(miss) <= 0.5 + 1e-6)


def test_a_zone_that_narrows_to_a_condition():
    """A ring of 500 to 900 m by one condition, in strips that lie side by side."""
    zones = Zones(Subjects(*SUBJECT), Bearing(100.0), Reach(3.0, 0.0, 2000.0), [0], [0])
    rings = zones.narrowed(lambda subject, moment, lon, lat: 200.0 - np.abs(walks.bearing_deg(lon, lat, *SUBJECT)[1] - 700.0), 20.0)
    lon, lat = tried(40_000, 1000.0, 1)
    bearing, dist = walks.bearing_deg(lon, lat, *SUBJECT)
    expected = (np.abs(off_deg(bearing, 100.0)) <= 3.0) & (np.abs(dist - 700.0) <= 200.0)
    near_edge = (np.abs(np.abs(off_deg(bearing, 100.0)) - 3.0) < 0.01) | (np.abs(np.abs(dist - 700.0) - 200.0) < 0.05)
    assert expected.sum() > 50
    np.testing.assert_array_equal(inside(rings, lon, lat)[~near_edge], expected[~near_edge])


def test_stopping_a_zone_gives_back_what_there_is():
    zones = Zones(Subjects(*near(UTM_E + np.zeros(3), UTM_N + np.zeros(3))), Bearing(0.0), Reach(), [0, 1, 2], [0, 0, 0])
    asked = []

    def go_on():
        asked.append(1)
        return len(asked) < 3

    rings = zones.narrowed(lambda subject, moment, lon, lat: np.ones(lon.size), 100.0, go_on)
    assert set(rings.zone.tolist()) < {0, 1, 2}


def test_lines_outward_lie_where_each_place_does():
    aim = BodyBearing(target("moon"), [JUNE_NIGHT_S + 18 * 3600.0])
    zones = Zones(Subjects(*SUBJECT), aim, Reach(20.0), [0], [0])
    dist, share = np.linspace(0.5, 5000.0, 400), np.array([0.0, 0.3, 1.0])
    lon, lat = zones.along(np.zeros(3, dtype=int), share, dist)
    exact = zones.place(np.zeros(1200, dtype=int), np.repeat(share, 400), np.tile(dist, 3))
    assert GEOD.inv(lon.ravel(), lat.ravel(), *exact[:2])[2].max() < 1e-3  # m
