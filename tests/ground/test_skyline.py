"""Skylines against closed forms."""

import numpy as np
import pytest
from pyproj import Transformer

from skyalidade.ground import curvature, skyline, terrain

LON, LAT = 15.0, 45.0
TO_MAP = Transformer.from_crs("EPSG:4326", "EPSG:32633", always_xy=True).transform


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


def test_wall():
    heights = np.zeros((401, 401))
    heights[97:101] = 300.0  # due north, 100 cells of 10 m; its top is 4 cells wide
    found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0])
    assert found.dist_m[0] == pytest.approx(1000.4, abs=2.0)  # [m] scale 0.9996; an eighth of a step of 10 m
    assert found.alt_deg[0] == pytest.approx(np.degrees(np.arctan2(298.0, 1000.4)), abs=0.05)  # [deg] 2 m farther on its level top are 0.03


def test_ray_ends_with_the_heights():
    heights = np.zeros((401, 401))
    heights[:, 250] = np.nan
    found = skyline.skyline(around(heights, 10.0), LON, LAT, 2.0, [0.0, 90.0])
    assert found.reach_m == pytest.approx([2000.8, 490.0], abs=20.0)  # [m] a step there
    assert np.isfinite(found.alt_deg).all()


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
    az = np.array([10.0, 100.0, 300.0])
    lens = ground.height_m(lon, lat) + 2.0
    fan = skyline.skyline(ground, lon, lat, lens, az)
    single = skyline.skyline(ground, *(np.broadcast_to(value, (2, 3)).ravel() for value in (lon, lat, lens, az)))
    assert fan.alt_deg.shape == (2, 3)
    assert np.isfinite(fan.alt_deg).all()
    assert fan.alt_deg.ravel() == pytest.approx(single.alt_deg, abs=1e-4)  # [deg] courses shared by a viewpoint
    assert skyline.skyline(ground, [[]], [[]], [[]], az[:0]).alt_deg.size == 0


def test_work_tells_how_far_it_is_and_can_be_ended():
    ground, told = around(np.zeros((41, 41)), 10.0), []
    assert skyline.skyline(ground, LON, LAT, 2.0, np.arange(0, 360, 0.1), progress=told.append) is not None
    assert told == sorted(told)
    assert told[-1] == 1.0
    assert skyline.skyline(ground, LON, LAT, 2.0, [0.0], progress=lambda part: False) is None
