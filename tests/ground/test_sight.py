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
    return Geod(ellps="WGS84").fwd(LON, LAT, 0.0, dist_m)[:2]


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


@pytest.mark.parametrize(("wall_m", "expected"), [(10.0, "clear"), (50.5, "uncertain"), (80.0, "hidden")])
def test_wall_halfway(wall_m, expected):
    heights = np.zeros((401, 401))
    heights[149:152] = wall_m
    found = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 2.0, *north(1000.4), 0.0, 100.0)
    assert found.sight[0] == expected
    assert found.visible[0] == (wall_m < 50)  # the ray stands at 50 m over its near side
    first_m = 2.0 + 98.0 * 20.0 / 1000.4  # two cells beyond the camera, over level ground
    # [m] the ray rises by 0.5 in half a cell, the spacing of samples; the near side of the wall is 10 m short of halfway
    assert found.clear_m[0] == pytest.approx(min(50.0 - wall_m, first_m), abs=0.6)


def test_unknown_ground_between_and_none_between():
    heights = np.zeros((401, 401))
    heights[150] = np.nan
    lon, lat = np.transpose([north(1000.0), north(30.0)])
    found = sight.lines_of_sight(around(heights, 10.0), LON, LAT, 2.0, lon, lat, 0.0, 10.0)
    assert np.isnan(found.clear_m).all()
    assert list(found.sight) == [None, None]
