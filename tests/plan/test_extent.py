"""Which part of an elevation model is read, and what sightlines and skylines make of it, on a grid of degrees at the equator."""

import numpy as np
import pytest

from skyalidade.plan import pairs
from skyalidade.plan.drawing import unrolled_ring
from skyalidade.plan.extent import BLOCK_BYTES, Extent
from skyalidade.plan.sightlines import Cameras, Subjects, pair_arrays, sightlines
from skyalidade.plan.terrain_horizon import azimuths_deg, terrain_horizon

CELL_DEG = 0.001  # 111 m
ROWS, COLS = 1100, 2100  # 3 by 5 blocks, 1.1 by 2.1 degrees
RIDGE_M, RIDGE_DEG = 500.0, 0.10  # north to south


@pytest.fixture
def extent():
    return Extent(ROWS, COLS, (0.0, CELL_DEG, 0.0, 0.55, 0.0, -CELL_DEG), lambda lon, lat: (lon, lat))


def ridge(row, col, rows, cols):
    """Heights of a window: a ridge two cells wide on a meridian, level ground at 100 m elsewhere, none known beyond 2 degrees east."""
    lon = (col + np.arange(cols) + 0.5) * CELL_DEG
    height = np.where(np.abs(lon - RIDGE_DEG) < CELL_DEG, RIDGE_M, np.where(lon > 2.0, np.nan, 100.0))
    return np.broadcast_to(height, (rows, cols))


def blocks(extent):
    """Rows and columns of the blocks that are read."""
    asked = []
    extent.relief(lambda row, col, rows, cols: asked.append((row // 512, col // 512)) or ridge(row, col, rows, cols))
    return asked


def test_nothing_is_wanted_until_it_is_asked_for(extent):
    assert (extent.count, extent.is_whole, blocks(extent)) == (0, False, [])
    extent.want_around([30.0], [0.0], 10_000.0)  # far from it
    assert extent.count == 0


def test_what_is_asked_for_is_joined(extent):
    extent.want_around([0.2], [0.5])
    assert blocks(extent) == [(0, 0)]
    extent.want_along([0.6], [0.5], [1.9], [0.45])
    assert blocks(extent) == [(0, 0), (0, 1), (0, 2), (0, 3)]
    extent.want_around([1.8], [-0.52], 20_000.0)
    assert blocks(extent) == [(0, 0), (0, 1), (0, 2), (0, 3), (1, 3), (2, 3)]
    assert extent.bytes == 7 * BLOCK_BYTES
    extent.want_around([1.0], [0.0], 300_000.0)
    assert extent.is_whole
    assert extent.count == 15


def test_relief_is_as_it_is_asked_for(extent):
    extent.want_around([0.2], [0.5])
    relief = extent.relief(ridge, radius_m=1234.0, refraction_k=0.2)
    assert (relief.radius_m, relief.refraction_k, relief.skip_near_m) == (1234.0, 0.2, None)
    assert extent.relief(ridge, lambda part: False) is None


# what a run makes of it


def test_heights_have_one_source_and_the_ridge_hides(extent):
    cameras = {"lon_deg": [0.05, 0.05, 0.05], "lat_deg": [0.0, 0.01, 0.3]}
    subjects = {"lon_deg": [0.15], "lat_deg": [0.0]}
    (block,) = pairs.pair_all(*cameras.values(), *subjects.values())
    extent.want_along(*(np.asarray(values) for values in ([0.05, 0.05], [0.0, 0.01], [0.15, 0.15], [0.0, 0.0])))
    relief = extent.relief(ridge)
    ground = [relief.ground_m(*map(np.asarray, points.values())) for points in (cameras, subjects)]
    ground[0][2] = np.nan  # as if the model did not reach there
    told = Cameras(**cameras, z_m=7.0, dem_m=ground[0]), Subjects(**subjects, z_m=9.0, dem_m=ground[1], height_m=[30.0])
    table, _ = sightlines(*told, block, relief=relief)
    assert table["heights"].tolist() == ["dem", "dem", "z"]
    assert table["cam_z_m"].tolist() == [101.5, 101.5, 8.5]
    assert table["sight"].tolist() == ["hidden", "hidden", None]
    assert table["visible"].tolist() == [False, False, None]
    assert table["hidden_m"][:2] == pytest.approx([30.0, 30.0])
    assert np.isnan([table[name][2] for name in ("clear_m", "block_m", "hidden_m")]).all()
    assert pair_arrays(table, told[0], ["UTC"], [0, 0, 0])["lens_dem_m"] == pytest.approx([101.5, 101.5, np.nan], nan_ok=True)
    assert sightlines(*told, block, relief=relief, progress=lambda part: False) is None


def test_a_skyline_of_several_points_in_blocks(extent, monkeypatch):
    monkeypatch.setattr("skyalidade.plan.terrain_horizon.RAYS_AT_ONCE", 8)
    lon, lat = np.array([0.05, 0.06, 0.15]), np.array([0.0, 0.1, 0.0])
    extent.want_around(lon, lat, 30_000.0)
    relief, told = extent.relief(ridge, radius_m=30_000.0), []
    tables = list(terrain_horizon(lon, lat, np.full(3, 101.5), azimuths_deg(90.0), relief, told.append))
    assert [table["site"].tolist() for table in tables] == [[[0] * 4, [1] * 4], [[2] * 4]]
    assert told == sorted(told)
    assert told[-1] == 1.0
    toward = np.concatenate([table["z_m"] for table in tables])[:, [1, 3]]
    assert toward[:, 0] == pytest.approx([RIDGE_M, RIDGE_M, 100.0], abs=1.0)  # eastward: two points before the ridge, one behind it
    assert toward[2, 1] == pytest.approx(RIDGE_M, abs=1.0)
    east = tables[0]
    assert east["lon_deg"][0, 1] == pytest.approx(RIDGE_DEG, abs=2 * CELL_DEG)
    assert east["lat_deg"][0, 1] == pytest.approx(0.0, abs=1e-9)
    assert list(terrain_horizon(lon, lat, np.full(3, 101.5), azimuths_deg(90.0), relief, lambda part: False)) == []
    assert list(terrain_horizon(lon[:0], lat[:0], lon[:0], azimuths_deg(90.0), relief)) == []


@pytest.mark.parametrize(("step", "count"), [(1.0, 360), (0.1, 3600), (7.0, 52), (120.0, 3), (360 / 7, 7)])
def test_azimuths_go_round_once(step, count):
    az = azimuths_deg(step)
    assert az == pytest.approx(step * np.arange(count))
    assert az[-1] < 360.0


# the ring on a sheet of longitude and latitude


def test_a_ring_is_closed():
    lon, lat = unrolled_ring([10.0, 11.0, 10.5], [50.0, 50.0, 51.0])
    assert lon.tolist() == [10.0, 11.0, 10.5, 10.0]
    assert lat.tolist() == [50.0, 50.0, 51.0, 50.0]


def test_a_ring_over_the_antimeridian_runs_on():
    lon, lat = unrolled_ring([179.5, -179.5, -179.5, 179.5], [1.0, 1.0, -1.0, -1.0])
    assert lon == pytest.approx([179.5, 180.5, 180.5, 179.5, 179.5])
    assert lon[0] == lon[-1]


@pytest.mark.parametrize(("turn", "pole"), [(1.0, -90.0), (-1.0, 90.0)])
def test_a_ring_round_a_pole_is_closed_along_it(turn, pole):
    lon, lat = unrolled_ring(26.359195997506248 + turn * np.arange(0.0, 360.0, 60.0), np.full(6, np.copysign(89.0, pole)))
    assert lon[-4] - turn * 360.0 == lon[0]  # exactly: the seam's two edges fall together
    assert lon[-4:] == pytest.approx([lon[0] + turn * 360.0, lon[0] + turn * 360.0, lon[0], lon[0]])
    assert lat[-4:].tolist() == [lat[0], pole, pole, lat[0]]
