"""Heights between cells, and courses through a raster against geodesics by PROJ."""

import numpy as np
import pytest
from pyproj import Geod, Transformer

from skyalidade.ground import terrain

LENGTH_M = 40_000.0
CELL_M = 10.0


def to_map(crs):
    return Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform


def plain(lon, lat):
    return lon, lat


@pytest.mark.parametrize(
    ("crs", "lon", "lat", "cell"),
    [("EPSG:32633", 18.0, 60.0, CELL_M), ("EPSG:3857", 10.0, 60.0, 2 * CELL_M), ("EPSG:4326", 10.0, 60.0, CELL_M / 111_000)],
)
def test_course_follows_the_geodesic_to_half_a_cell_at_40_km(crs, lon, lat, cell):
    transform = to_map(crs) if crs != "EPSG:4326" else plain
    x, y = transform(lon, lat)
    ground = terrain.terrain(np.zeros((3, 3)), (x, cell, 0, y, 0, -cell), transform)
    az = np.arange(0.0, 360.0, 15.0)
    course = ground.path(lon, lat, az, LENGTH_M)
    for dist in np.linspace(1000, LENGTH_M, 40):
        lon2, lat2, _ = Geod(ellps="WGS84").fwd(np.full(az.shape, lon), np.full(az.shape, lat), az, np.full(az.shape, dist))
        exact = np.array(ground.position(lon2, lat2))
        found = course[:, 0] + course[:, 1] * dist + course[:, 2] * dist**2
        assert np.abs(found - exact).max() < 0.5


def test_bilinear_heights_of_a_plane_and_outside():
    row, col = np.mgrid[:5, :6]
    ground = terrain.terrain(2.0 * col + 3.0 * row, (0, 1, 0, 5, 0, -1), plain)
    assert ground.height_m([1.25, 5.5, 5.6], [4.0, 0.5, 2.0]) == pytest.approx([3.0, 22.0, np.nan], abs=1e-6, nan_ok=True)


def test_heights_beside_nodata_are_not_known_and_feet_are_metres():
    heights = np.full((4, 4), 100.0)
    heights[0, 0] = -9999
    ground = terrain.terrain(heights, (0, 1, 0, 4, 0, -1), plain, nodata=-9999, unit_m=0.3048)
    assert ground.height_m([1.0, 2.5], [3.0, 1.5]) == pytest.approx([np.nan, 30.48], abs=1e-4, nan_ok=True)


def test_sides_of_a_cell_in_degrees():
    ground = terrain.terrain(np.zeros((3, 3)), (10, 0.001, 0, 60, 0, -0.001), plain)
    short, long = ground.cell_m(10.001, 59.999)
    assert short == pytest.approx(55.80, abs=0.02)  # [m] handbooks: a degree of longitude at 60 deg is 55.80 km, of latitude 111.41 km
    assert long == pytest.approx(111.41, abs=0.02)


@pytest.mark.parametrize(
    ("heights", "transform", "unit_m", "words"),
    [
        (np.zeros((1, 5)), (0, 1, 0, 0, 0, -1), 1.0, "2 x 2"),
        (np.zeros((3, 3)), (0, 0, 0, 0, 0, 0), 1.0, "no area"),
        (np.full((3, 3), np.nan), (0, 1, 0, 0, 0, -1), 1.0, "no height"),
        (np.zeros((3, 3)), (0, 1, 0, 0, 0, -1), 0.0, "no length"),
    ],
)
def test_what_is_no_terrain_is_refused(heights, transform, unit_m, words):
    with pytest.raises(ValueError, match=words):
        terrain.terrain(heights, transform, plain, unit_m=unit_m)


def test_blocks_read_one_by_one_give_the_heights_of_the_whole():
    values = np.random.default_rng(3).uniform(0, 500, (1100, 700)).astype(np.float32)
    values[600, 100] = np.nan
    whole = terrain.terrain(values, (0, 1, 0, 1100, 0, -1), plain)
    asked, told = [], []

    def read(row, col, rows, cols):
        asked.append((row, col, rows, cols))
        return values[row : row + rows, col : col + cols]

    wanted = np.array([[True, True], [True, False], [False, True]])
    held = terrain.load(whole.grid, wanted, read, told.append)
    assert asked == [(0, 0, 513, 513), (0, 512, 513, 188), (512, 0, 513, 513), (1024, 512, 76, 188)]
    assert told == [0.25, 0.5, 0.75, 1.0]
    col, row = np.random.default_rng(1).uniform(-2, [[702], [1102]], (2, 4000))
    in_wanted = wanted[np.clip(row // 512, 0, 2).astype(int), np.clip(col // 512, 0, 1).astype(int)]
    assert held.sample(col, row) == pytest.approx(np.where(in_wanted, whole.sample(col, row), np.nan), nan_ok=True)
    assert held.sample(699.0, 1099.0) == values[-1, -1]
    assert held.gaps.tolist() == [[False, False], [True, True], [True, False]]
    assert held.bytes == 5 * 513 * 513 * 4


def test_reading_can_be_ended():
    grid = terrain.Grid(10, 10, (0, 1, 0, 10, 0, -1), plain)
    assert terrain.load(grid, np.array([[True]]), lambda *window: np.zeros(window[2:]), lambda part: False) is None


@pytest.mark.parametrize("wanted", [True, False])
def test_where_nothing_is_known_no_place_has_a_height(wanted):
    grid = terrain.Grid(10, 10, (0, 1, 0, 10, 0, -1), plain)
    held = terrain.load(grid, np.array([[wanted]]), lambda *window: np.full(window[2:], np.nan))
    assert np.isnan(held.height_m([5.0, 50.0], [5.0, 5.0])).all()
    assert held.highest_m == -np.inf
