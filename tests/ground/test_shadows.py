"""Shadows of a tile: closed forms on level ground and behind a wall, and the exact skyline of single cells on rough and real ground."""

import every_crossing
import every_ray
import numpy as np
import pytest
import rough_ground
from every_crossing import WGS84, Profile

from skyalidade.ground import curvature, shadows, skyline, terrain
from skyalidade.ground.shadows import Ground, Light, Tile, Window

CELL_M, LENS_M, K = 10.0, 1.5, 0.13
SIDES_M = CELL_M, CELL_M
EARTH_M = 6_371_000.0
CELLS = 500  # at which the exact skyline is asked
LEAST_EXACT, LEAST_WITHIN_ONE = 0.85, 0.99  # shares of them, promised


def plane_light(tile, az_deg, alt_deg, cell_m=CELL_M):
    """Light over a plane map whose rows run west to east."""
    (col, row), az = tile.middle, np.radians(az_deg)
    course = np.array([[col, np.sin(az) / cell_m, 0.0], [row, -np.cos(az) / cell_m, 0.0]])
    return Light(course, cell_m * np.array([np.sin(az), -np.cos(az)]), alt_deg, EARTH_M)


def toward_m(tile, az_deg, cell_m=CELL_M):
    """How much nearer to the light the cells of a tile are than its middle. [m]."""
    (col, row), az = tile.middle, np.radians(az_deg)
    cols, rows = tile.col + np.arange(tile.cols), tile.row + np.arange(tile.rows)
    return cell_m * ((cols - col) * np.sin(az) - (rows - row)[:, None] * np.cos(az))


@pytest.mark.parametrize("az_deg", [0.0, 33.0, 90.0, 225.0, 301.0])
@pytest.mark.parametrize("refraction_k", [0.0, 0.13])
def test_level_sea(az_deg, refraction_k):
    """Over a sphere the horizon lies arccos(R / (R + h)) under the level; the air takes off k of its distance's half angle twice."""
    lens_m, cell_m = 100.0, 100.0
    tile = Tile(495, 495, 10, 10)
    ground = Ground(tile, [Window(np.zeros((1000, 1000), dtype=np.float32), 0, 0)], lens_m, 200.0, (cell_m, cell_m), refraction_k)
    radius = EARTH_M / (1.0 - refraction_k)  # light that bends k times as much as the Earth sees an Earth so much larger
    dip_deg = np.degrees(np.arccos(radius / (radius + lens_m)))
    # altitudes are those at the middle of the tile: seen from its corners 700 m nearer or farther by up to 0.006 deg
    assert not ground.lit(plane_light(tile, az_deg, -dip_deg - 0.008, cell_m)).any()
    assert ground.lit(plane_light(tile, az_deg, -dip_deg + 0.008, cell_m)).all()


@pytest.mark.parametrize("az_deg", [90.0, 75.0, 45.0, 35.0, 270.0, 250.0, 310.0, 20.0])
@pytest.mark.parametrize("alt_deg", [1.0, 5.0, 20.0])
def test_wall(az_deg, alt_deg):
    """A wall a cell wide along a column: it stands in the light of all cells from which its edge, by the law of sines, is as high."""
    height_m, half = 80.0, 1200
    heights = np.zeros((2 * half, 2 * half), dtype=np.float32)
    heights[:, half] = height_m
    east = np.sin(np.radians(az_deg)) > 0
    tile = Tile(half - 100, half - 310 if east else half + 10, 200, 300)
    lit = Ground(tile, [Window(heights, 0, 0)], LENS_M, 2 * CELL_M, SIDES_M, K).lit(plane_light(tile, az_deg, alt_deg))
    cols = tile.col + np.arange(tile.cols)
    away = np.broadcast_to(CELL_M * (half - cols) / np.sin(np.radians(az_deg)), lit.shape)
    edge_deg = every_crossing.altitude_deg(Profile(away, None, EARTH_M), height_m, LENS_M, K)
    body_deg = alt_deg + np.degrees((1.0 - K) * toward_m(tile, az_deg) / EARTH_M)
    sure = np.abs(edge_deg - body_deg) > 0.002  # [deg] 4 bytes a height, and the second power of the distance for the law of sines
    assert sure.mean() > 0.98
    assert (lit == (body_deg > edge_deg))[sure].all()
    assert 0 < lit[sure].sum() < sure.sum() or alt_deg < 2.0 or alt_deg > 10.0


def test_wall_passed_over():
    """A wall nearer than SKIP_NEAR hides nothing, also where that is more than the own rays of cells are followed for."""
    heights = np.zeros((400, 400), dtype=np.float32)
    heights[:, 200] = 50.0
    tile = Tile(150, 100, 100, 100)
    skip_m = 305.0
    lit = Ground(tile, [Window(heights, 0, 0)], LENS_M, skip_m, SIDES_M, K).lit(plane_light(tile, 90.0, 2.0))
    away = CELL_M * (200 - tile.col - np.arange(tile.cols))
    assert (lit == (away + CELL_M < skip_m)).all()  # heights between cells: it falls over one more


def cell_places(ground, tile, cells):
    """Longitude and latitude of cells, counted within a tile, of an upright geographic or UTM raster."""
    x0, dx, _, y0, _, dy = ground.transform
    x, y = x0 + dx * (tile.col + cells[1] + 0.5), y0 + dy * (tile.row + cells[0] + 0.5)
    if ground.to_map(15.0, 45.0)[0] == 15.0:
        return x, y
    from pyproj import Transformer

    return Transformer.from_crs("EPSG:32633", "EPSG:4326", always_xy=True).transform(x, y)


GROUNDS = {
    "fractal": lambda: rough_ground.around(15.0, 45.0, rough_ground.fractal(1500, 1500, 1), "EPSG:32633", 10.0),
    "turned": lambda: rough_ground.around(18.5, 45.0, rough_ground.fractal(1500, 1500, 2), "EPSG:32633", 10.0),  # 2.5 deg of convergence
    "Jacksboro": rough_ground.jacksboro,
}


@pytest.mark.parametrize("name", GROUNDS)
@pytest.mark.parametrize("turned_deg", [0.0, 180.0])
def test_counts_of_cells(name, turned_deg, record_property):
    """How many positions of a body are seen from each cell, by the skyline that `terrain_horizon` finds for it."""
    ground = GROUNDS[name]()
    model = terrain.terrain(*ground)
    side = 200
    tile = Tile(*((count - side) // 2 for count in ground.heights_m.shape), side, side)
    corner = np.array([[(side - 1) / 2.0], [(side - 1) / 2.0]])
    lon0, lat0 = (float(value[0]) for value in cell_places(ground, tile, corner))
    hour = np.arange(-60.0, 61.0)
    az, alt = path_of_a_star(-28.9, lat0, hour)  # of any body that rises no higher than the core
    up = alt > 0.0
    az, alt = (az[up] + turned_deg) % 360.0, alt[up]
    sides = tuple(map(float, model.cell_m(lon0, lat0)))
    earth = curvature.radius_in_azimuth(lat0, az)
    course = model.path(np.full(az.size, lon0), np.full(az.size, lat0), az, 40_000.0)
    made = Ground(tile, [Window(ground.heights_m, 0, 0)], LENS_M, 2 * sides[1], sides)
    nearer = shadows.nearer_m(model.grid, lon0, lat0, az)
    lit = np.array([made.lit(Light(course[..., i], nearer[:, i], alt[i], earth[i])) for i in range(az.size)])

    cells = np.random.default_rng(7).integers(0, side, (2, CELLS))
    lon, lat = cell_places(ground, tile, cells)
    lens = model.height_m(lon, lat) + LENS_M
    seen = skyline.skyline(model, lon[:, None], lat[:, None], lens[:, None], az, 40_000.0, 2 * sides[1])
    bearing, _, away = WGS84.inv(np.full(CELLS, lon0), np.full(CELLS, lat0), lon, lat)
    toward = away[:, None] * np.cos(np.radians(bearing[:, None] - az))
    body = alt + np.degrees((1.0 - K) * toward / earth)
    off = lit[:, cells[0], cells[1]].sum(axis=0) - (body >= seen.alt_deg).sum(axis=1)
    exact, within = (off == 0).mean(), (np.abs(off) <= 1).mean()
    what = "real" if name == "Jacksboro" else "rough"
    record_property(f"shadows_{what}_exact", 100 * exact)
    record_property(f"shadows_{what}_within", 100 * within)
    assert 0.1 < (body >= seen.alt_deg).mean() < 0.95
    assert exact >= LEAST_EXACT
    assert within >= LEAST_WITHIN_ONE


def gaps():
    ground = rough_ground.around(15.0, 45.0, rough_ground.fractal(700, 700, 5), "EPSG:32633", 10.0)
    heights = ground.heights_m
    heights[np.random.default_rng(0).random(heights.shape) < 0.002] = np.nan
    heights[100:180, 300:420] = heights[400:, :250] = np.nan
    heights[300:, 350] += 400.0  # a cliff on both sides
    return ground


SAVINGS = {  # ground, side of the tile, ground passed over in cells, coarser windows
    "fractal": (GROUNDS["fractal"], 256, 2.0, False),
    "turned": (GROUNDS["turned"], 150, 2.0, True),
    "Jacksboro": (GROUNDS["Jacksboro"], 300, 2.0, False),
    "gaps": (gaps, 400, 0.0, False),
    "far": (gaps, 300, 40.5, True),
    "wide": (lambda: rough_ground.around(15.0, 65.0, rough_ground.fractal(400, 400, 6, 800.0), "EPSG:4326", 0.01), 200, 2.0, False),
}


@pytest.mark.parametrize("name", SAVINGS)
def test_what_is_saved_changes_no_cell(name, monkeypatch):
    """Most cells are told without their own ray, others without the end of it: just as if all had been followed to their end."""
    make, side, skip, coarse = SAVINGS[name]
    ground = make()
    model = terrain.terrain(*ground)
    tile = Tile(*((count - side) // 2 for count in ground.heights_m.shape), side, side)
    lon, lat = (float(value[0]) for value in cell_places(ground, tile, np.full((2, 1), (side - 1) / 2.0)))
    sides = tuple(map(float, model.cell_m(lon, lat)))
    windows = [Window(ground.heights_m, 0, 0)]
    if coarse:
        first = [start - 40 for start in tile[:2]]
        fine = ground.heights_m[first[0] : first[0] + side + 80, first[1] : first[1] + side + 80]
        windows = [Window(fine, *first), shadows.coarser(windows[0], 4)]
    made = Ground(tile, windows, LENS_M, skip * sides[1], sides)
    az, alt = np.concatenate([np.arange(0.0, 360.0, 15.0), [44.9, 89.99, 180.01]]), np.resize([-0.5, 2.0, 6.0, 11.0, 19.0, 34.0, 80.0], 27)
    course, earth = model.path(np.full(az.size, lon), np.full(az.size, lat), az, 40_000.0), curvature.radius_in_azimuth(lat, az)
    nearer = shadows.nearer_m(model.grid, lon, lat, az)
    lights = [Light(course[..., i], nearer[:, i], alt[i], earth[i]) for i in range(az.size)]
    lit = np.array([made.lit(light) for light in lights])
    with every_ray.followed(monkeypatch):
        slowly = np.array([made.lit(light) for light in lights])
    assert 0.1 < lit[:, made.known].mean() < 0.95
    assert (lit != slowly)[:, made.known].sum() == 0


def path_of_a_star(dec_deg, lat_deg, hour_deg):
    """Azimuth and altitude by spherical trigonometry. [deg]."""
    dec, lat, hour = np.radians(dec_deg), np.radians(lat_deg), np.radians(hour_deg)
    up = np.sin(lat) * np.sin(dec) + np.cos(lat) * np.cos(dec) * np.cos(hour)
    east, north = -np.cos(dec) * np.sin(hour), np.cos(lat) * np.sin(dec) - np.sin(lat) * np.cos(dec) * np.cos(hour)
    return np.degrees(np.arctan2(east, north)) % 360.0, np.degrees(np.arcsin(up))


def test_gap_hides_nothing_but_is_looked_across():
    heights = np.zeros((100, 300), dtype=np.float32)
    heights[:, 200] = 60.0
    heights[:, 120:180] = np.nan
    tile = Tile(40, 50, 20, 100)
    ground = Ground(tile, [Window(heights, 0, 0)], LENS_M, 2 * CELL_M, SIDES_M, K)
    lit = ground.lit(plane_light(tile, 90.0, 3.0))
    away = CELL_M * (200 - tile.col - np.arange(tile.cols))
    known = np.isfinite(heights[0, 50:150])
    assert (ground.known == known).all()
    hidden = np.degrees(np.arctan((60.0 - LENS_M) / away)) > 3.0  # curvature is worth 0.01 deg here
    assert (lit[:, known] == ~hidden[known]).all()
    assert hidden[known].any()
    assert not hidden[known].all()


def test_coarser_cells_are_means_of_what_is_known():
    heights = np.arange(30, dtype=np.float32).reshape(5, 6)
    heights[0, :4] = heights[1:4, 0] = np.nan
    coarse = shadows.coarser(Window(heights, 7, 9), 4)
    assert coarse[1:] == (7, 9, 4)
    assert coarse.heights_m.shape == (2, 2)
    assert coarse.heights_m[0, 0] == np.nanmean(heights[:4, :4])
    assert coarse.heights_m[1, 1] == heights[4, 4:].mean()
    assert np.isnan(shadows.coarser(Window(heights * np.nan, 0, 0), 4).heights_m).all()


@pytest.mark.parametrize("refraction_k", [0.0, 0.13])
def test_reach(refraction_k):
    """Ground at the reach stands just as high as the body, by the law of sines."""
    alt = np.array([0.5, 5.0, 30.0, 60.0])
    away = shadows.reach_m(1000.0, alt, EARTH_M, 0.0, refraction_k)
    seen = every_crossing.altitude_deg(Profile(away, None, EARTH_M), 1000.0, 0.0, refraction_k)
    assert (seen <= alt + 0.02).all()  # [deg] never much too short
    assert np.abs(seen - alt).max() < 0.06  # [deg] the second power of the distance is that of a body near the horizon
    assert shadows.reach_m(1000.0, np.array([-1.0, 0.0]), EARTH_M, 0.0).tolist() == [np.inf, np.inf]
    assert (shadows.reach_m(-5.0, alt, EARTH_M, 0.0) == 0.0).all()


@pytest.mark.parametrize("az_deg", [0.0, 30.0, 60.0, 90.0, 180.0, 215.0, 270.0, 325.0])
@pytest.mark.parametrize("beyond", [0, 8, 24, 32, 48])
def test_a_wall_just_beyond_the_finest_window(az_deg, beyond):
    """Ground that only a coarser window holds hides what it hides, also where it begins: no strip of it is passed over."""
    half, side, halo = 400, 64, 64
    away = np.abs(np.arange(-half, half) + 0.5)
    away = np.maximum(away[:, None], away)  # a square wall of coarse cells all round the window
    first = half - side // 2 - halo
    heights = np.where((away > side / 2 + halo + beyond) & (away < side / 2 + halo + beyond + 8), 300.0, 0.0).astype(np.float32)
    tile, whole = Tile(first + halo, first + halo, side, side), Window(heights, 0, 0)
    fine = Window(heights[first:-first, first:-first], first, first)
    made = [Ground(tile, windows, LENS_M, 2 * CELL_M, SIDES_M, K) for windows in ([whole], [fine, shadows.coarser(whole, 4)])]
    for alt_deg in (4.0, 60.0):
        light = plane_light(tile, az_deg, alt_deg)
        near, far = (ground.lit(light) for ground in made)
        assert near.all() == (alt_deg == 60.0)
        assert (near == far).all()
