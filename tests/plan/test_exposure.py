"""Minutes a night of whole tiles, beside the exact solver for single cells; far ground in coarse cells; tiles in any order."""

import numpy as np
import pytest
import rough_ground
from pyproj import Transformer

from skyalidade.ground import skyline, terrain
from skyalidade.plan import exposure as made
from skyalidade.plan.circumstances import Air
from skyalidade.plan.conditions import Conditions, Heavens
from skyalidade.plan.exposure import (
    HALO_CELLS,
    Tile,
    exposure,
    middle_height_m,
    region_around,
    sky_over,
    survey,
    tile_side,
    tiles,
    windows_for,
)
from skyalidade.plan.night_windows import Places, find_night_windows
from skyalidade.plan.relief import Relief
from skyalidade.plan.sky_paths import Positions, months_between, sky_paths
from skyalidade.plan.targets import target
from skyalidade.sky.bodies import CORE
from skyalidade.sky.ephemeris import default_ephemeris
from skyalidade.sky.horizontal import Sites, altitude_deg, azimuth_deg

FIRST, LAST = np.array(["2027-05-01"], "datetime64[D]"), np.array(["2027-07-31"], "datetime64[D]")
LENS_M = 1.5
UTM = "EPSG:32633"


class Model:
    """An elevation model in memory, read as a file is."""

    def __init__(self, ground):
        self.ground, self.grid = ground, terrain.Grid(*ground.heights_m.shape, ground.transform, ground.to_map)
        self.whole = Tile(0, 0, *ground.heights_m.shape)

    def read(self, row, col, rows, cols):
        part = self.ground.heights_m[row : row + rows, col : col + cols]
        assert part.shape == (rows, cols)
        return part.astype(float)

    def place(self, col, row):
        """Longitude and latitude. [deg]."""
        x0, dx, _, y0, _, dy = self.ground.transform
        x, y = x0 + dx * (np.asarray(col) + 0.5), y0 + dy * (np.asarray(row) + 0.5)
        return (
            (x, y) if self.ground.to_map(15.0, 45.0)[0] == 15.0 else Transformer.from_crs(UTM, "EPSG:4326", always_xy=True).transform(x, y)
        )


@pytest.fixture(scope="module")
def fractal():
    return Model(rough_ground.around(15.0, 45.0, rough_ground.fractal(2000, 2000, 1), UTM, 10.0))


@pytest.fixture(scope="module")
def jacksboro():
    return Model(rough_ground.jacksboro())


def path_over(model, tile, body="core", months=None, step_deg=None, **asked):
    """Positions of a body over the middle of a tile."""
    lon, lat = model.place(*tile.middle)
    overview = survey(model.whole, model.read)
    places = Places(np.array([lon]), np.array([lat]), np.array([middle_height_m(tile, overview)]), ["UTC"], np.zeros(1, dtype=int))
    (path,) = sky_paths(places, target(body), FIRST, LAST, Conditions(**asked), months, step_deg)
    return lon, lat, path, overview


def minutes_of(model, tile, body="core", months=None, step_deg=None, **asked):
    lon, lat, path, overview = path_over(model, tile, body, months, step_deg, **asked)
    sky = sky_over(model.grid, lon, lat, path, LENS_M)
    return exposure(tile, windows_for(tile, sky, overview, model.read), sky)


@pytest.mark.parametrize("name", ["fractal", "jacksboro"])
def test_minutes_are_those_of_night_windows(name, request, record_property):
    """At single cells: `night_windows` solves when the body stands above their own skyline."""
    model, count = request.getfixturevalue(name), 60
    side = tile_side(93.0 if name == "jacksboro" else 10.0)
    side = min(side, 400)
    tile = Tile(*((size - side) // 2 for size in model.ground.heights_m.shape), side, side)
    minutes = minutes_of(model, tile, moon="down")[0]
    cells = np.random.default_rng(3).integers(0, tile.rows, (2, count))
    lon, lat = model.place(tile.col + cells[1], tile.row + cells[0])
    relief = Relief(terrain.terrain(*model.ground))
    ground_m = relief.ground_m(lon, lat)
    places = Places(lon, lat, ground_m, ["UTC"], np.zeros(count, dtype=int), ground_m + LENS_M)
    nights = (np.repeat(night, count) for night in (FIRST, LAST))
    exact = np.zeros(count)
    for table, _ in find_night_windows(places, target("core"), *nights, Conditions(moon="down"), relief=relief):
        np.add.at(exact, table["site"], table["all_min"] / 92)
    off = minutes[cells[0], cells[1]] - exact
    record_property("minutes_mean", abs(off.mean()))
    record_property("minutes_rms", off.std())
    assert exact.max() - exact.min() > 20.0
    assert abs(off.mean()) < 0.3  # [min]
    assert off.std() < 1.0  # [min] steps of 4 minutes end where the body rises over the ridge and where it sinks behind one
    assert np.abs(off).max() < 5.0


@pytest.mark.parametrize("name", ["fractal", "jacksboro"])
def test_one_sky_serves_a_tile(name, request, record_property):
    """Positions of the core at its cells themselves, of the whole tile to its corners, against the skylines there."""
    model, count = request.getfixturevalue(name), 500
    side = 1024 if name == "fractal" else 200
    tile = Tile(*((size - side) // 2 for size in model.ground.heights_m.shape), side, side)
    lon0, lat0, path, overview = path_over(model, tile)
    heavens = Heavens([CORE], 1.8e9, 1.8e9 + 3 * 86400.0)
    tt = default_ephemeris().tt_from_utc(np.array([1.8e9 + 86400.0]))[0] + np.arange(0.0, 86164.0, 480.0)  # every 2 deg

    def seen(lon, lat, height):
        sites = Sites(np.atleast_1d(lon), np.atleast_1d(lat), height)
        rows = np.repeat(np.arange(len(sites))[:, None], len(tt), axis=1)
        vector = heavens.motion(CORE, sites).enu(rows, np.broadcast_to(tt, rows.shape))
        air = Air(np.broadcast_to(height, (len(sites),)))
        return azimuth_deg(*vector[:2]), air.take(rows).apparent(altitude_deg(*vector))

    az, alt = (values[0] for values in seen(lon0, lat0, middle_height_m(tile, overview)))
    up = alt > 1.0
    positions = Positions(az[up], alt[up], np.ones((up.sum(), 1)), np.ones(1, dtype=int))
    sky = sky_over(model.grid, lon0, lat0, positions, LENS_M)
    counts = exposure(tile, windows_for(tile, sky, overview, model.read), sky)[0]
    cells = np.random.default_rng(5).integers(0, side, (2, count))
    cells[:, :4] = [[0, 0, side - 1, side - 1], [0, side - 1, 0, side - 1]]
    lon, lat = model.place(tile.col + cells[1], tile.row + cells[0])
    ground = terrain.terrain(*model.ground)
    lens = ground.height_m(lon, lat) + LENS_M
    az, alt = (values[:, up] for values in seen(lon, lat, lens))
    line = skyline.skyline(ground, lon[:, None], lat[:, None], lens[:, None], az, 40_000.0)
    off = counts[cells[0], cells[1]] - (alt >= line.alt_deg).sum(axis=1)
    exact, within = (off == 0).mean(), (np.abs(off) <= 1).mean()
    record_property("one_sky_exact", 100 * exact)
    record_property("one_sky_within", 100 * within)
    assert exact >= 0.85
    assert within >= 0.99


def test_far_ground_in_coarse_cells(fractal, monkeypatch, record_property):
    """Down to the horizon over rough ground: coarse cells beyond 256 change the number of positions seen from few; nearer, from more."""
    tile = Tile(872, 872, 256, 256)
    lon, lat, path, overview = path_over(fractal, tile, step_deg=2.0, alt_min_deg=0.0)
    sky = sky_over(fractal.grid, lon, lat, path._replace(minutes=np.full((len(path.az_deg), 1), 92.0), nights=np.array([92])), LENS_M)
    fine = exposure(tile, [made.Window(fractal.ground.heights_m, 0, 0)], sky)
    for halo, shares in ((HALO_CELLS, (0.95, 0.999)), ((64, 256), (0.75, 0.98))):
        monkeypatch.setattr(made, "HALO_CELLS", halo)
        windows = windows_for(tile, sky, overview, fractal.read)
        off = np.rint(exposure(tile, windows, sky) - fine)
        told = (off == 0).mean(), (np.abs(off) <= 1).mean()
        if halo == HALO_CELLS:
            record_property("coarse_same", 100 * told[0])
        assert told[0] > shares[0]
        assert told[1] > shares[1]
    assert [window.factor for window in windows] == [1, 4, 16]


def test_tiles_fit_together(fractal):
    """A cell's minutes hang on the tile it is in by no more than the sky does from one middle to another."""
    one = minutes_of(fractal, Tile(800, 800, 256, 256), step_deg=3.0)[0]
    parts = [minutes_of(fractal, tile, step_deg=3.0)[0] for tile in tiles(Tile(800, 800, 256, 256), 128)]
    joined = np.block([parts[:2], parts[2:]])
    assert np.abs(joined - one).mean() < 0.2  # [min] of positions that are worth 12 minutes each
    assert (np.abs(joined - one) < 1.0).mean() > 0.95


def test_level_ground_sees_all_and_nothing_is_seen_by_what_is_not_known():
    model = Model(rough_ground.around(15.0, 45.0, np.zeros((300, 300), dtype=np.float32), UTM, 10.0))
    model.ground.heights_m[100:110, 140:160] = np.nan
    tile = Tile(64, 64, 150, 150)
    months = months_between(FIRST, LAST)
    minutes = minutes_of(model, tile, months=months)
    _, _, path, _ = path_over(model, tile, months=months)
    assert minutes.shape == (3, 150, 150)
    assert minutes.dtype == np.float32
    unknown = np.isnan(model.ground.heights_m[64:214, 64:214])
    assert (np.isnan(minutes) == unknown).all()
    wanted = path.minutes.sum(axis=0) / [31, 30, 31]
    assert minutes[:, ~unknown].min(axis=1) == pytest.approx(wanted, rel=1e-5)
    assert minutes[:, ~unknown].max(axis=1) == pytest.approx(wanted, rel=1e-5)


def test_it_ends_when_told_to(fractal):
    tile = Tile(800, 800, 128, 128)
    lon, lat, path, overview = path_over(fractal, tile)
    sky = sky_over(fractal.grid, lon, lat, path, LENS_M)
    told = []
    assert exposure(tile, windows_for(tile, sky, overview, fractal.read), sky, lambda part: told.append(part) or len(told) < 3) is None
    assert len(told) == 3
    assert survey(fractal.whole, fractal.read, lambda part: False) is None


def test_threads_change_nothing(fractal):
    tile = Tile(800, 800, 200, 300)
    lon, lat, path, overview = path_over(fractal, tile, months=months_between(FIRST, LAST), step_deg=2.0)
    sky = sky_over(fractal.grid, lon, lat, path, LENS_M)
    windows = windows_for(tile, sky, overview, fractal.read)
    one, two, five = (exposure(tile, windows, sky, threads=threads) for threads in (1, 2, 5))
    assert len(path.az_deg) % 8 != 0  # summed up by eights, and the rest
    assert np.ptp(one[0]) > 20.0
    assert (one == two).all()
    assert (one == five).all()


@pytest.mark.parametrize("count", [1, 7, 8, 9, 40])
def test_minutes_are_the_sum_of_what_is_lit(fractal, count):
    tile = Tile(800, 800, 100, 150)
    rng = np.random.default_rng(count)
    worth = rng.random((count, 3)) * 100.0
    positions = Positions(rng.random(count) * 360.0, rng.random(count) * 25.0, worth, np.array([31, 28, 31]))
    lon, lat = fractal.place(*tile.middle)
    sky = sky_over(fractal.grid, lon, lat, positions, LENS_M)
    windows = windows_for(tile, sky, survey(fractal.whole, fractal.read), fractal.read)
    ground = made.Ground(tile, windows, LENS_M, sky.skip_m, sky.cell_m)
    expected = np.zeros((3, 100, 150))
    for i in range(count):
        light = made.Light(sky.course[..., i], sky.nearer_m[:, i], sky.alt_deg[i], sky.earth_m[i])
        expected += ground.lit(light) * (worth[i] / [31, 28, 31])[:, None, None]
    assert exposure(tile, windows, sky) == pytest.approx(expected, abs=1e-3)


def test_survey(fractal):
    region = Tile(100, 50, 1000, 900)
    found = survey(region, fractal.read)
    heights = fractal.ground.heights_m[100:1100, 50:950]
    assert (found.lowest_m, found.highest_m) == (heights.min(), heights.max())
    assert found.window[1:] == (100, 50, 16)
    assert found.window.heights_m.shape == (63, 57)
    assert found.window.heights_m[3, 5] == pytest.approx(heights[48:64, 80:96].mean(), abs=1e-3)
    assert found.window.heights_m[62, 56] == pytest.approx(heights[992:, 896:].mean(), abs=1e-3)


def test_tiles():
    area = Tile(10, 20, 300, 500)
    parts = tiles(area, 200)
    held = np.zeros((400, 600), dtype=int)
    for row, col, rows, cols in parts:
        held[row : row + rows, col : col + cols] += 1
    assert len(parts) == 6
    assert (held[10:310, 20:520] == 1).all()
    assert held.sum() == 300 * 500
    assert region_around(area, 400, 600, 50) == Tile(0, 0, 360, 570)
    assert [tile_side(cell_m) for cell_m in (1.0, 10.0, 15.0, 20.0, 90.0, 5000.0)] == [1024, 1024, 896, 640, 128, 128]


def test_tiles_of_many_months_hold_no_more_than_a_few():
    """768 months are all that the ephemeris knows."""
    assert [tile_side(1.0, months) for months in (0, 1, 12, 64, 65, 240, 768)] == [1024, 1024, 1024, 1024, 896, 512, 256]
    assert max(tile_side(cell_m, months) ** 2 * months * 4 for cell_m in (1.0, 10.0, 15.0, 90.0) for months in range(1, 769)) <= 2**28


def test_rays_that_a_map_bends_too_much_are_refused():
    grid = terrain.Grid(100, 100, (20.0, 5e-4, 0.0, 89.0, 0.0, -5e-4), lambda lon, lat: (lon, lat))
    positions = Positions(np.array([45.0]), np.array([30.0]), np.ones((1, 1)), np.ones(1, dtype=int))
    with pytest.raises(ValueError, match="Warp it to a polar map"):
        sky_over(grid, 20.02, 88.98, positions, LENS_M)


def test_a_tile_of_which_nothing_is_known(fractal):
    lon, lat, path, _ = path_over(fractal, Tile(800, 800, 64, 64))
    sky, unknown = sky_over(fractal.grid, lon, lat, path, LENS_M), np.full((64, 64), np.nan, dtype=np.float32)
    assert np.isnan(exposure(Tile(800, 800, 64, 64), [made.Window(unknown, 800, 800)], sky)).all()
