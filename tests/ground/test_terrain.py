"""Heights between cells, and courses through a raster against geodesics by PROJ."""

import numpy as np
import pytest
from pyproj import Geod, Transformer

from skyalidade.ground import terrain

LENGTH_M = 40_000.0
CELL_M = 10.0
ARCSEC = 1.0 / 3600.0


def to_map(crs):
    return Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform


def plain(lon, lat):
    return lon, lat


@pytest.mark.parametrize(
    ("crs", "lon", "lat", "cell"),
    [
        ("EPSG:32633", 18.0, 60.0, CELL_M),
        ("EPSG:3031", 40.0, -89.9, CELL_M),
        ("EPSG:3413", 20.0, 65.0, CELL_M),
        ("EPSG:3857", 10.0, 60.0, 2 * CELL_M),
        ("EPSG:4326", 10.0, 60.0, ARCSEC),
        ("EPSG:4326", 180.0, -82.0, ARCSEC),
    ],
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


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:3857"])
def test_course_that_a_parabola_cannot_follow_near_a_pole_is_not_known(crs):
    transform = to_map(crs)
    (x, y), cell = transform(10.0, 84.9), ARCSEC if crs == "EPSG:4326" else CELL_M * 11
    ground = terrain.Grid(3, 3, (x, cell, 0, y, 0, -cell), transform)
    known = [np.isfinite(ground.path(10.0, lat, [0.0, 45.0, 90.0], LENGTH_M)).all(axis=(0, 1)) for lat in (60.0, 80.0, 89.5)]
    assert np.all(known, axis=1).tolist() == [True, True, False]


@pytest.mark.parametrize("west", [179.0, -181.0, 539.0])
@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:3857"])
def test_elevation_model_across_the_antimeridian(west, crs):
    turn = 360.0 if crs == "EPSG:4326" else 2 * np.pi * 6378137.0
    cell = turn / 36000
    ground = terrain.terrain(np.tile(np.arange(200.0), (200, 1)), (west / 360 * turn, cell, 0, 100 * cell, 0, -cell), to_map(crs))
    for lon in (179.505, 180.505, -179.495, 540.505):
        assert ground.height_m(lon, 0.0) == pytest.approx((lon - 179.0) % 360 * 100 - 0.5, abs=1e-3)
    col = ground.path(179.9, 0.1, 90.0, LENGTH_M)[0]
    assert col[1] * LENGTH_M == pytest.approx(LENGTH_M / (6378137.0 * np.pi / 18000), rel=1e-5)  # [cells] of 0.01 deg of the equator
    assert ground.cell_m(180.0, 0.0)[0] == pytest.approx(6335439.0 * np.pi / 18000 if crs == "EPSG:4326" else 1105.8, rel=1e-3)


def test_longitudes_from_0_to_360():
    ground = terrain.terrain(np.tile(np.arange(360.0), (180, 1)), (0, 1, 0, 90, 0, -1), plain)
    assert ground.height_m([-170.0, 190.0, 10.0, 370.0, -0.2], 10.0) == pytest.approx([189.5, 189.5, 9.5, 9.5, np.nan], nan_ok=True)


def test_a_turn_of_longitude_is_known_from_the_map():
    grids = {crs: terrain.Grid(2, 2, (0, 1, 0, 0, 0, -1), to_map(crs)) for crs in ("EPSG:4326", "EPSG:3857", "EPSG:3832", "EPSG:32633")}
    assert grids["EPSG:4326"].turn == pytest.approx(360.0)
    assert grids["EPSG:3857"].turn == pytest.approx(2 * np.pi * 6378137.0)
    assert grids["EPSG:3832"].turn == pytest.approx(2 * np.pi * 6378137.0)  # Mercator about longitude 150
    assert np.isnan(grids["EPSG:32633"].turn)


def turned(rows, cols, cell=10.0, turn_deg=30.0):
    """A raster whose rows are turned, around 15 E 45 N."""
    x, y = to_map("EPSG:32633")(15.0, 45.0)
    along, across = cell * np.cos(np.radians(turn_deg)), cell * np.sin(np.radians(turn_deg))
    x0, y0 = x - along * cols / 2 - across * rows / 2, y - across * cols / 2 + along * rows / 2
    return terrain.Grid(rows, cols, (x0, along, across, y0, across, -along), to_map("EPSG:32633"))


def test_turned_rows():
    grid = turned(301, 201)
    row, col = np.mgrid[:301, :201] + 0.5
    x0, x_col, x_row, y0, y_col, y_row = grid.transform
    x, y = x0 + x_col * col + x_row * row, y0 + y_col * col + y_row * row
    ground = terrain.terrain((x - x.mean()) / 5 + (y - y.mean()) / 7, grid.transform, grid.to_map)
    lon, lat = 15.0 + np.array([0.0, 0.004, -0.003]), 45.0 + np.array([0.0, 0.002, 0.006])
    x1, y1 = grid.to_map(lon, lat)
    assert ground.height_m(lon, lat) == pytest.approx((x1 - x.mean()) / 5 + (y1 - y.mean()) / 7, abs=1e-3)  # [m] of single precision
    assert ground.cell_m(lon, lat) == pytest.approx(np.full((2, 3), 10.0 / 0.9996), rel=1e-4)  # [m] scale on the central meridian


def test_where_courses_leave():
    grid, rng = turned(301, 201), np.random.default_rng(2)
    lon, lat, az = 15.0 + rng.uniform(-0.01, 0.01, 500), 45.0 + rng.uniform(-0.01, 0.01, 500), rng.uniform(0, 360, 500)
    starts = grid.covers(*grid.position(lon, lat))
    course = grid.path(lon[starts], lat[starts], az[starts], 5000.0)
    dist = np.arange(0.0, 5000.0)
    col, row = ((part[2, :, None] * dist + part[1, :, None]) * dist + part[0, :, None] for part in course)
    assert grid.leaving_m(course) == pytest.approx(grid.covers(col, row).argmin(axis=1) - 0.5, abs=0.501)  # [m] looked at every metre
    assert np.isinf(grid.leaving_m(np.zeros((2, 3, 1)) + [[[100.0], [0.0], [0.0]]])).all()


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


GRIDS = {
    "metres": terrain.Grid(4000, 3000, (480_000, 10, 0, 5_010_000, 0, -10), to_map("EPSG:32633")),
    "turned": turned(4000, 3000),
    "degrees": terrain.Grid(4000, 6000, (14, ARCSEC, 0, 71, 0, -ARCSEC), plain),
}
MIDDLE = {"metres": (14.95, 45.0), "turned": (15.02, 45.01), "degrees": (14.8, 70.5)}


@pytest.mark.parametrize("kind", GRIDS)
def test_blocks_hold_all_the_ground_around_places(kind):
    grid, rng = GRIDS[kind], np.random.default_rng(8)
    lon, lat = (middle + rng.uniform(-0.05, 0.05, 3) for middle in MIDDLE[kind])
    touched = grid.blocks_around(lon, lat, 6000.0)
    az, dist, place = rng.uniform(0, 360, 90_000), 6000.0 * np.sqrt(rng.uniform(0, 1, 90_000)), np.repeat(np.arange(3), 30_000)
    met = blocks_met(grid, *Geod(ellps="WGS84").fwd(lon[place], lat[place], az, dist)[:2])
    assert (met <= touched).all()
    assert touched.sum() <= met.sum() + 4  # discs graze the corners of a few
    assert not touched.all()


@pytest.mark.parametrize("kind", GRIDS)
def test_blocks_hold_all_the_ground_along_lines(kind):
    grid, rng = GRIDS[kind], np.random.default_rng(9)
    (lon1, lon2), (lat1, lat2) = (middle + rng.uniform(-0.2, 0.2, (2, 60)) for middle in MIDDLE[kind])
    every = np.zeros_like(grid.blocks_along(lon1, lat1, lon2, lat2))
    for ends in zip(lon1, lat1, lon2, lat2):
        touched = grid.blocks_along(*ends)
        az, _, length = Geod(ellps="WGS84").inv(*ends)
        start = (np.full(8001, value) for value in (*ends[:2], az))
        met = blocks_met(grid, *Geod(ellps="WGS84").fwd(*start, np.linspace(0.0, length, 8001))[:2])
        assert (met <= touched).all()
        assert touched.sum() <= 2 * met.sum() + 1  # those within 33 cells of a line come along
        every |= touched
    assert (every == grid.blocks_along(lon1, lat1, lon2, lat2)).all()
    assert not grid.blocks_along([], [], [], []).any()


def blocks_met(grid, lon, lat):
    col, row = grid.position(lon, lat)
    inside = grid.covers(col, row)
    met = np.zeros((-(-grid.rows // terrain.BLOCK), -(-grid.cols // terrain.BLOCK)), dtype=bool)
    met[row[inside].astype(int) // terrain.BLOCK, col[inside].astype(int) // terrain.BLOCK] = True
    return met


def test_places_off_the_map_touch_no_block():
    assert not GRIDS["metres"].blocks_around([15.0, 100.0], [90.0, -60.0], 5000.0).any()


def test_lens_below_the_ground():
    ground = terrain.terrain([[10.0, 20.0], [10.0, 20.0]], (0, 1, 0, 2, 0, -1), plain)
    assert ground.buried([1.0, 1.0, 1.0, 5.0], 1.0, [14.9, 15.0, 16.0, -9.0]).tolist() == [True, False, False, False]


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


def test_a_hair_outside_is_as_on_the_edge():
    values = np.random.default_rng(3).uniform(0, 500, (1030, 520)).astype(np.float32)
    whole = terrain.terrain(values, (0, 1, 0, 1030, 0, -1), plain)
    held = terrain.load(whole.grid, np.ones((3, 2), dtype=bool), lambda row, col, *size: values[row : row + size[0], col : col + size[1]])
    col, row = np.array([0.0, 519.0, 7.0, 7.0, 0.0, 519.0]), np.array([5.0, 5.0, 0.0, 1029.0, 0.0, 1029.0])
    hair = 1e-4 * np.array([[-1, 1, 0, 0, -1, 1], [0, 0, -1, 1, -1, 1]])  # what numbers of four bytes may do
    for ground in (whole, held):
        assert ground.between(col + hair[0], row + hair[1]) == pytest.approx(values[row.astype(int), col.astype(int)], abs=0.11)  # [m]


def test_reading_can_be_ended():
    grid = terrain.Grid(10, 10, (0, 1, 0, 10, 0, -1), plain)
    assert terrain.load(grid, np.array([[True]]), lambda *window: np.zeros(window[2:]), lambda part: False) is None


@pytest.mark.parametrize("wanted", [True, False])
def test_where_nothing_is_known_no_place_has_a_height(wanted):
    grid = terrain.Grid(10, 10, (0, 1, 0, 10, 0, -1), plain)
    held = terrain.load(grid, np.array([[wanted]]), lambda *window: np.full(window[2:], np.nan))
    assert np.isnan(held.height_m([5.0, 50.0], [5.0, 5.0])).all()
    assert held.highest_m == -np.inf
