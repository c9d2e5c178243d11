"""Lines of sight against closed forms."""

import numpy as np
import pytest
from pyproj import Geod, Transformer

from skyalidade.ground import curvature, sight, terrain

LON, LAT = 15.0, 45.0
TO_MAP = Transformer.from_crs("EPSG:4326", "EPSG:32633", always_xy=True).transform


def around(heights, cell):
    rows, cols = heights.shape
    x, y = TO_MAP(LON, LAT)
    return terrain.terrain(heights, (x - cols * cell / 2, cell, 0, y + rows * cell / 2, 0, -cell), TO_MAP)


def north(dist_m):
    dist_m = np.asarray(dist_m)
    lon, lat, _ = Geod(ellps="WGS84").fwd(*(np.full(dist_m.shape, value) for value in (LON, LAT, 0.0)), dist_m)
    return lon, lat


def test_ray_is_the_inverse_of_the_altitude():
    dist, alt = np.array([100.0, 5000.0, 60000.0]), np.array([-5.0, 0.0, 12.0])
    height = sight.ray_height_m(dist, alt, 6371000.0, 500.0)
    assert curvature.altitude_deg(dist, height - 500.0, 6371000.0, 0.13, 500.0) == pytest.approx(alt, abs=1e-10)


def test_hidden_behind_the_horizon_of_the_sea():
    found = sight.lines_of_sight(around(np.zeros((601, 601)), 200.0), LON, LAT, 10.0, *north(40_000), 0.0, 200.0, refraction_k=0.0)
    radius = curvature.radius_in_azimuth(LAT, 0.0)
    hidden = radius / np.cos(40_000 / radius - np.arccos(radius / (radius + 10.0))) - radius
    assert found.hidden_m[0] == pytest.approx(hidden, abs=0.05)  # [m] the horizon itself is sampled every 100 m
    assert found.visible[0]


@pytest.mark.parametrize("lens_m", [0.0, 1e-6, 1.5])
def test_wall_halfway_with_nothing_passed_over(lens_m):
    """A lens on the ground, looked at from the lens on: what is hidden is what the wall hides."""
    heights = np.zeros((401, 401))
    heights[149:152] = 20.0  # half the way, 49 to 51 cells of 10 m away
    ends = LON, LAT, lens_m, *north(1000.0 / 0.9996), 0.0, 100.0
    usual, whole = (sight.lines_of_sight(around(heights, 10.0), *ends, skip_near_m=skip) for skip in (None, 0.0))
    assert whole.hidden_m[0] == pytest.approx(usual.hidden_m[0], abs=0.5)  # [m] samples half a cell apart lie elsewhere
    assert 38.0 < whole.hidden_m[0] < 42.0


@pytest.mark.parametrize(("wall_m", "expected"), [(10.0, "clear"), (48.5, "uncertain"), (50.5, "uncertain"), (80.0, "hidden")])
def test_wall_halfway(wall_m, expected):
    heights = np.zeros((401, 401))
    heights[149:152] = wall_m  # 49 to 51 cells of 10 m away
    near, dist = 490.0 / 0.9996, 1000.0 / 0.9996  # [m] the scale of the map
    found = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 2.0, *north(dist), 0.0, 100.0)
    fall = (1 - curvature.REFRACTION_K) / (2 * curvature.radius_in_azimuth(LAT, 0.0))  # [1/m]
    bowed = near * (dist - near) * fall  # [m] by which the ray hangs below the line from lens to top: 0.02
    over_wall, over_ground = 2.0 + 98.0 * near / dist - bowed - wall_m, 2.0 + 98.0 * (20.0 / 0.9996) / dist
    if over_wall < over_ground:
        assert 0.0 <= found.clear_m[0] - over_wall + 1e-3 < 0.5  # [m] the ray rises by 0.49 in half a cell, the spacing of samples
        assert found.block_m[0] == pytest.approx(near, abs=5.0)
        beyond = 2.0 + (wall_m - 2.0) * dist / near
        # [m] half a cell beyond the edge of the level top a ray over it is lower by a part in 98
        assert found.hidden_m[0] == pytest.approx(min(beyond, 100.0), rel=0.011, abs=0.1)
    else:
        assert found.clear_m[0] == pytest.approx(over_ground, abs=0.01)  # [m] two cells beyond the camera, over level ground
        assert found.block_m[0] == pytest.approx(20.0, abs=0.01)
    assert found.sight[0] == expected
    assert found.visible[0] is bool(over_wall >= 0)


def test_ground_close_to_the_tripod_shares_its_error():
    heights = np.zeros((401, 401))
    heights[:, 203:] = np.arange(198) * 0.1  # rises by 0.1 m a cell from 3 cells east of the camera on
    lon, lat, _ = Geod(ellps="WGS84").fwd(LON, LAT, 90.0, 1000.4)
    near = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 0.3, lon, lat, 9.0, 30.0)
    assert near.block_m[0] == pytest.approx(20.0, abs=0.01)  # [m] two cells
    assert 0.4 < near.clear_m[0] < 2.0
    assert near.sight[0] == "clear"  # 0.9 m there stand against 2 m x 20 / 100


def test_unknown_ground_between_and_none_between():
    heights = np.zeros((401, 401))
    heights[150] = np.nan
    lon, lat = np.transpose([north(1000.0), north(30.0), north(400.0), north(0.0)])
    found = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 2.0, lon, lat, 0.0, 10.0)
    assert np.isnan([found.clear_m, found.block_m, found.hidden_m])[:, [0, 1, 3]].all()
    assert list(found.sight) == [None, None, "clear", None]
    assert list(found.visible) == [None, None, True, None]


def test_known_ground_in_the_ray_hides_whatever_the_rest_does():
    heights = np.zeros((401, 401))
    heights[150] = np.nan
    heights[170:173] = 200.0
    found = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 2.0, *north(1000.0), 0.0, 10.0)
    assert found.visible[0] is False
    assert found.sight[0] == "hidden"
    assert found.clear_m[0] == pytest.approx(2.0 + 8.0 * 0.28 - 200.0, abs=0.1)
    assert found.hidden_m[0] == pytest.approx(10.0)  # the whole of it


def test_line_that_leaves_the_heights_is_not_known():
    ground = around(np.zeros((41, 41)), 10.0)
    assert np.isnan(sight.lines_of_sight(ground, LON, LAT, 2.0, *north(500.0), 0.0, 10.0).clear_m[0])
    assert sight.lines_of_sight(ground, LON, LAT, 2.0, *north(200.08), 0.0, 10.0).sight[0] == "clear"  # as far as the last centre


def test_lens_in_the_ground_sees_nothing_and_pairs_keep_their_order():
    rng = np.random.default_rng(11)
    ground = around(rng.uniform(0, 20, (401, 401)), 10.0)
    lon, lat, _ = Geod(ellps="WGS84").fwd(np.full(60, LON), np.full(60, LAT), rng.uniform(0, 360, 60), rng.uniform(100, 1500, 60))
    lens = np.where(np.arange(60) % 7 == 0, -1.0, 30.0)
    found = sight.lines_of_sight(ground, LON, LAT, lens, lon, lat, ground.height_m(lon, lat), 40.0)
    assert [value is None for value in found.sight] == (lens < 0).tolist()
    for pair in range(0, 60, 9):
        one = sight.lines_of_sight(ground, LON, LAT, lens[pair], lon[pair], lat[pair], ground.height_m(lon[pair], lat[pair]), 40.0)
        # [m] samples are set anew for each length, half a cell apart on slopes of up to 2
        assert one.clear_m[0] == pytest.approx(found.clear_m[pair], abs=1.0, nan_ok=True)


def test_shapes_progress_and_the_end():
    ground, told = around(np.zeros((401, 401)), 10.0), []
    lon, lat = north(np.linspace(300.0, 1500.0, 3))
    found = sight.lines_of_sight(ground, [[LON], [LON + 0.001]], LAT, 2.0, lon, lat, 0.0, [[10.0], [20.0]], progress=told.append)
    assert found.clear_m.shape == found.sight.shape == found.visible.shape == (2, 3)
    assert told[-1] == 1.0
    assert sight.lines_of_sight(ground, LON, LAT, 2.0, lon, lat, 0.0, 10.0, progress=lambda part: False) is None
    assert sight.lines_of_sight(ground, [], [], [], [], [], [], []).sight.shape == (0,)
