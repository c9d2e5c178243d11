"""Declinations during a run, against the model asked at each moment itself."""

import datetime

import numpy as np
from numpy.testing import assert_allclose

from skyalidade.ground import magnetic
from skyalidade.plan.compass import Compass

# The straight line errs most in the middle: 0.027° over 5 years, 0.001° over one, in 20 000 places outside the caution zones
TOL_DEG = 0.03


def utc_s(*date):
    return datetime.datetime(*date, tzinfo=datetime.timezone.utc).timestamp()


def test_five_years_of_a_site_follow_the_model():
    rng = np.random.default_rng(4)
    lon, lat = rng.uniform(-180, 180, 300), np.degrees(np.arcsin(rng.uniform(-1, 1, 300)))
    compass = Compass(lon, lat, np.zeros(300), utc_s(2025, 1, 1), utc_s(2029, 12, 31))
    site = np.nonzero(compass.zone == None)[0]  # noqa: E711  an array of objects
    assert len(site) > 250
    for date in ((2025, 6, 1), (2026, 11, 25), (2028, 2, 29)):
        here = magnetic.declination_deg(lon[site], lat[site], 0.0, magnetic.decimal_year(datetime.date(*date)))
        assert_allclose(compass.declination_deg(site, utc_s(*date)), here, atol=TOL_DEG)


def test_noaa_value_at_the_moment_it_is_given_for():
    # NOAA, WMM2025 test values: 2025.0, 0 km, 80 N 0 E: 1.28; 0 N 120 E: -0.16; 80 S 240 E: 68.78
    compass = Compass(np.array([0.0, 120.0, 240.0]), np.array([80.0, 0.0, -80.0]), np.zeros(3), utc_s(2025, 1, 1), utc_s(2027, 1, 1))
    assert_allclose(compass.declination_deg(np.arange(3), utc_s(2025, 1, 1)), [1.28, -0.16, 68.78], atol=0.005)


def test_outside_the_years_of_the_model_there_is_none():
    compass = Compass(np.array([0.0]), np.array([40.0]), np.zeros(1), utc_s(2024, 6, 1), utc_s(2031, 1, 1))
    assert not compass.covered
    told = compass.declination_deg(np.zeros(3, int), np.array([utc_s(2024, 12, 1), utc_s(2027, 1, 1), utc_s(2030, 6, 1)]))
    assert np.isfinite(told).tolist() == [False, True, False]
    assert not Compass(np.array([0.0]), np.array([40.0]), np.zeros(1), utc_s(2040, 1, 1), utc_s(2041, 1, 1)).covered


def test_cautions_near_the_magnetic_poles():
    # The north magnetic dip pole of 2025 is at about 85.8° N, 139.3° E (NOAA NCEI, wandering of the poles; value from memory)
    compass = Compass(np.array([139.3, 10.0]), np.array([85.8, 50.0]), np.zeros(2), utc_s(2026, 1, 1), utc_s(2026, 1, 2))
    assert compass.zone.tolist() == ["blackout", None]
