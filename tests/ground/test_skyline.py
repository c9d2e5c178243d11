"""Skylines against closed forms."""

import numpy as np
import pytest
from pyproj import Transformer

from skyalidade.ground import curvature, skyline, terrain

LON, LAT = 15.0, 45.0
TO_MAP = Transformer.from_crs("EPSG:4326", "EPSG:32633", always_xy=True).transform
BACK = Transformer.from_crs("EPSG:32633", "EPSG:4326", always_xy=True).transform


def around(heights, cell):
    rows, cols = heights.shape
    x, y = TO_MAP(LON, LAT)
    return terrain.terrain(heights, (x - cols * cell / 2, cell, 0, y + rows * cell / 2, 0, -cell), TO_MAP)


def test_dip_of_the_sea():
    found = skyline.skyline(around(np.zeros((601, 601)), 200.0), LON, LAT, 100.0, [0, 45, 90, 200], refraction_k=0.0)
    radius = curvature.radius_in_azimuth(LAT, np.array([0, 45, 90, 200]))
    dip = np.degrees(np.arccos(radius / (radius + 100.0)))
    assert np.abs(found.alt_deg + dip).max() < 1e-4  # [deg] the top of the curve is sampled every 0.13 % of its distance
    assert not found.at_radius.any()


@pytest.mark.parametrize("thick", [1, 4])
def test_wall_stands_as_high_as_its_near_edge(thick):
    heights = np.zeros((401, 401))
    heights[101 - thick : 101] = 300.0  # due north, 100 cells of 10 m; over the cell before it the ground rises to it
    found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0])
    near = 1000.0 / 0.9996  # [m] the scale of the map
    alt = np.degrees(np.arctan2(298.0 - near**2 * (1 - curvature.REFRACTION_K) / (2 * curvature.radius_in_azimuth(LAT, 0.0)), near))
    step = (0.3 + 0.01 * near) / skyline.FINE**2  # [m] between the places looked at
    assert found.dist_m[0] == pytest.approx(near, abs=step)
    # [deg] beside the edge of a level top 298 m / near^2 are lost in each metre; on a slope of 30, as of one row, 30 / near
    lost = 298.0 / near**2 if thick > 1 else 30.0 / near
    assert -np.degrees(lost * step) / 2 < found.alt_deg[0] - alt < 1e-3
    assert found.height_m[0] == pytest.approx(300.0, abs=0.01 if thick > 1 else 30.0 * step / 2)


def test_ray_ends_with_the_heights():
    heights = np.zeros((401, 401))
    heights[:, 250] = np.nan
    found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0, 45.0, 90.0])
    scale = 1 / 0.9996
    assert found.reach_m[0] == pytest.approx(2000.0 * scale, abs=0.01)  # [m] where the raster ends
    assert found.reach_m[1:] == pytest.approx([490.0 * np.sqrt(2) * scale, 490.0 * scale], abs=7.5)  # [m] samples there
    assert (found.reach_m[1:] <= np.array([490.0 * np.sqrt(2), 490.0]) * scale + 1e-6).all()
    assert np.isfinite(found.alt_deg).all()


@pytest.mark.parametrize(("az", "east", "north"), [(90.0, 190, 0), (270.0, -190, 0), (0.0, 0, 190), (180.0, 0, -190)])
def test_nothing_is_seen_beyond_the_edge(az, east, north):
    heights = np.zeros((401, 401))
    heights[190:211, 190:211] = 500.0  # behind the camera, all along the other edges
    for edge in (heights[0], heights[-1], heights[:, 0], heights[:, -1]):
        edge[:] = 500.0
    {90.0: heights[:, -1], 270.0: heights[:, 0], 0.0: heights[0], 180.0: heights[-1]}[az][:] = 0.0
    lon, lat = BACK(*np.add(TO_MAP(LON, LAT), (10.0 * east, 10.0 * north)))
    ahead = np.round(np.array([200 - north, 200 + east]) + 5 * np.array([-np.sign(north), np.sign(east)])).astype(int)
    heights[ahead[0] - 1 : ahead[0] + 2, ahead[1] - 1 : ahead[1] + 2] = 10.0
    found = skyline.skyline(around(heights, 10.0), lon, lat, 2.0, az)
    assert found.height_m == pytest.approx(10.0, abs=0.5)
    assert found.dist_m == pytest.approx(40.0, abs=0.5)  # [m] the near end of its level top
    assert found.reach_m == pytest.approx(100.0 / 0.9996, abs=0.01)


def test_ground_not_known_is_met_behind_the_skyline_too():
    heights = np.zeros((401, 401))
    heights[180:190] = 500.0
    heights[50] = np.nan
    held = around(heights, 10.0)
    assert skyline.skyline(held, LON, LAT, 2.0, 0.0).reach_m == pytest.approx(1490.0, abs=16.0)  # [m] a sample there
    assert skyline.skyline(held, LON, LAT, 2.0, 0.0).height_m == pytest.approx(500.0)


def test_ground_between_unknown_and_what_is_passed_over():
    heights = np.zeros((401, 401))
    heights[198:203, 198:203] = np.nan  # under the camera, whose height is known from elsewhere
    heights[:, 240] = 30.0
    found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0, 90.0], skip_near_m=50.0)
    assert found.height_m[1] == pytest.approx(30.0, abs=0.3)
    assert found.reach_m == pytest.approx([2000.8, 2000.8], abs=0.01)
    near = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0, 90.0], skip_near_m=10.0)
    assert np.isnan(near.alt_deg).all()  # nothing seen before the unknown
    assert near.reach_m.tolist() == [0.0, 0.0]


def test_what_is_passed_over_ends_where_it_is_said_to():
    heights = np.zeros((401, 401))
    heights[:200] = 100.0
    heights[:160] = 0.0
    for skip in (50.0, 123.4, 300.0):
        found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, 0.0, skip_near_m=skip)
        assert found.dist_m == pytest.approx(skip, rel=1e-6)  # the level top is highest at its near end
        assert found.height_m == pytest.approx(100.0)


def test_lens_in_the_ground_or_off_the_raster_sees_nothing():
    found = skyline.skyline(around(np.full((41, 41), 10.0), 10.0), [LON, LON, LON + 1, LON], LAT, [9.0, 10.0, 12.0, np.nan], 90.0)
    assert np.isfinite(found.alt_deg).tolist() == [False, True, False, False]
    assert np.isfinite(found.reach_m).tolist() == [False, True, False, False]


def test_heights_in_blocks_give_the_same():
    heights = np.random.default_rng(6).uniform(0, 40, (1300, 1200)).astype(np.float32)
    whole = around(heights, 10.0)
    lon, lat = LON + np.array([[0.0], [0.01]]), LAT + np.array([[0.0], [-0.01]])
    wanted = whole.grid.blocks_around(lon, lat, 2500.0)
    held = terrain.load(whole.grid, wanted, lambda row, col, rows, cols: heights[row : row + rows, col : col + cols])
    assert 1 < wanted.sum() < wanted.size
    lens, az = whole.height_m(lon, lat) + 5.0, np.arange(0.0, 360.0, 5.0)
    one, other = (skyline.skyline(ground, lon, lat, lens, az, 2500.0) for ground in (whole, held))
    assert all((first == second).all() for first, second in zip(one, other))
    assert (skyline.skyline(held, lon, lat, lens, az, 9000.0).reach_m < 9000.0).any()


def test_skyline_across_the_antimeridian():
    heights, cell = np.random.default_rng(7).uniform(0, 60, (400, 400)), 1.0 / 3600.0
    here, there = (terrain.terrain(heights, (west, cell, 0, 200 * cell, 0, -cell), lambda lon, lat: (lon, lat)) for west in (0.0, 179.95))
    az = np.arange(0.0, 360.0, 10.0)
    one = skyline.skyline(here, 0.0502, 0.0, 70.0, az, 3000.0)
    for lon in (180.0002, -179.9998):
        other = skyline.skyline(there, lon, 0.0, 70.0, az, 3000.0)
        assert other.alt_deg == pytest.approx(one.alt_deg, abs=0.01)  # [deg] rounding of coordinates may move a place looked at


@pytest.mark.parametrize("lens_m", [0.0, 1.5, 20.0])
def test_wall_is_seen_with_nothing_passed_over(lens_m):
    """From the lens on: 0 m away no altitude can be told, and once that ended the search."""
    heights = np.zeros((401, 401))
    heights[:101] = 300.0
    usual, whole = (skyline.skyline(around(heights, 10.0), LON, LAT, lens_m, [0.0, 20.0, 340.0], skip_near_m=skip) for skip in (None, 0.0))
    assert whole.alt_deg == pytest.approx(usual.alt_deg, abs=1e-6)  # [deg] the same wall, 16° high
    assert whole.alt_deg.min() > 14.0


def test_skyline_at_the_radius_is_told():
    row = np.mgrid[:401, :401][0]
    found = skyline.skyline(around((401.0 - row) ** 2 / 100, 10.0), LON, LAT, 406.0, [0.0], radius_m=1500.0)
    assert found.at_radius.all()


def test_radius_within_what_is_passed_over_is_refused():
    with pytest.raises(ValueError, match="Look farther"):
        skyline.skyline(around(np.zeros((5, 5)), 10.0), LON, LAT, 2.0, [0.0], radius_m=10.0)


def test_viewpoints_and_azimuths_broadcast():
    ground = around(np.random.default_rng(4).uniform(0, 30, (301, 301)), 10.0)
    lon, lat = np.array([[LON], [LON + 0.002]]), np.array([[LAT], [LAT + 0.001]])
    az = np.random.default_rng(5).uniform(0, 360, 50)
    lens = ground.height_m(lon, lat) + 2.0
    fan = skyline.skyline(ground, lon, lat, lens, az)
    order = np.random.default_rng(6).permutation(100)  # neighbours seldom share a viewpoint, nor the courses that go with it
    rays = (np.broadcast_to(value, (2, 50)).ravel()[order] for value in (lon, lat, lens, az))
    single = skyline.skyline(ground, *rays)
    assert fan.alt_deg.shape == (2, 50)
    assert np.isfinite(fan.alt_deg).all()
    assert fan.alt_deg.ravel()[order] == pytest.approx(single.alt_deg, abs=1e-4)  # [deg] courses of a fan
    assert skyline.skyline(ground, [[]], [[]], [[]], az[:0]).alt_deg.size == 0


def test_work_tells_how_far_it_is_and_can_be_ended():
    ground, told = around(np.zeros((41, 41)), 10.0), []
    assert skyline.skyline(ground, LON, LAT, 2.0, np.arange(0, 360, 0.1), progress=told.append) is not None
    assert told == sorted(told)
    assert told[-1] == 1.0
    assert skyline.skyline(ground, LON, LAT, 2.0, [0.0], progress=lambda part: False) is None
