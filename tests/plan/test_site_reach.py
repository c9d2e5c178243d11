"""The rectangle about a place holds all ground within a distance, by GeographicLib."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from skyalidade.plan.site_reach import around


@pytest.mark.parametrize("place", [(0.0, 0.0), (-33.0, 36.0), (20.0, 69.0), (100.0, -77.0), (170.0, 5.0)])
@pytest.mark.parametrize("radius_m", [100.0, 20_000.0, 200_000.0])
def test_nothing_within_the_distance_is_left_out(place, radius_m):
    lon, lat = place
    west, south, east, north = around(lon, lat, radius_m)
    ends = [Geodesic.WGS84.Direct(lat, lon, az, radius_m) for az in np.linspace(0.0, 360.0, 73)]
    lons, lats = np.array([end["lon2"] for end in ends]), np.array([end["lat2"] for end in ends])
    assert west < lons.min() < lons.max() < east
    assert south < lats.min() < lats.max() < north
    assert north - south < 1.1 * (lats.max() - lats.min())
    assert east - west < 1.3 * (lons.max() - lons.min())


@pytest.mark.parametrize("place", [(179.95, 10.0), (-179.95, 10.0), (0.0, 88.95), (0.0, -90.0)])
def test_over_the_antimeridian_and_the_poles_there_is_none(place):
    assert around(*place, 20_000.0) is None
