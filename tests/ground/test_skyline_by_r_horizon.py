"""Skylines against those of GRASS's r.horizon, recorded in tests/authorities.

It looks along the grid, from the ground itself and without air, on a sphere of 6371 km whose surface is measured as a plane; skylines
below the horizontal it does not tell well.
"""

import grass_r_horizon
import numpy as np
import pytest
from pyproj import Transformer

from skyalidade.ground import skyline, terrain

TOL_RMS_DEG = 0.02  # samples that grow by 1 %; and a slope of 30 deg stands 0.004 deg lower on a sphere, 900 m high, than over a plane
FAR_M = 200.0
LIFT_M = 0.001  # lest rounding put the lens under the ground; 200 m away worth 0.0003 deg


@pytest.fixture(scope="module")
def answers():
    told = np.genfromtxt(grass_r_horizon.TABLE, delimiter=",", names=True)
    return told[told["alt_deg"] > 0.0]


def test_cardinal_azimuths(answers, record_property):
    ground = grass_r_horizon.ground()
    west, cell, _, north, _, _ = ground.transform
    to_degrees = Transformer.from_crs(grass_r_horizon.CRS, "EPSG:4326", always_xy=True).transform
    lon, lat = to_degrees(west + (answers["col"] + 0.5) * cell, north - (answers["row"] + 0.5) * cell)
    lens = ground.heights_m[answers["row"].astype(int), answers["col"].astype(int)] + LIFT_M
    model = terrain.terrain(*ground)
    found = skyline.skyline(model, lon, lat, lens, answers["az_deg"], 20_000.0, skip_near_m=0.99 * cell, refraction_k=0.0)
    missed = found.alt_deg - answers["alt_deg"]
    far = found.dist_m > FAR_M
    record_property("skyline_grass", np.sqrt((missed[far] ** 2).mean()))
    assert far.sum() > 50
    assert np.sqrt((missed[far] ** 2).mean()) < TOL_RMS_DEG
    assert np.sqrt((missed**2).mean()) < 0.05  # [deg]
    assert found.dist_m.max() > 3500.0  # [m] where curvature is worth 0.016 deg
