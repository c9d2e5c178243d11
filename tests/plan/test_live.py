"""One place at one moment: against astropy and Skyfield, and without a second look into the ephemeris."""

import numpy as np
import pytest
from skyfield_places import Observer, galactic_star, icrs_star, target, times
from skyfield_scan import seen

from skyalidade.plan import live
from skyalidade.plan.targets import target as body_of
from skyalidade.sky.ephemeris import default_ephemeris

TOL_ASTROPY_DEG = 0.01 + 0.6 / 3600  # the table's last digit, rounded; and polar motion, which astropy knows
TOL_SKYFIELD_DEG = 0.05 / 3600  # the Moon's: a cubic between nodes an eighth of a day apart
PLACES = [(-33.0, 36.0, 250.0), (179.99, -16.8, 0.0), (25.0, 70.0, 1200.0), (0.0, 90.0, 0.0), (-70.4, -24.6, 2600.0)]

# Computed with astropy, no refraction, at 36 N 33 W, height 0: UTC, core alt / az, arch top alt / az, tilt
BY_ASTROPY = [
    ("2027-06-06T00:00", 12.14, 140.19, 25.40, 77.13, 22.48),
    ("2027-06-06T01:00", 18.95, 151.88, 37.47, 88.50, 32.94),
    ("2027-06-06T02:00", 23.42, 165.16, 49.61, 96.78, 45.07),
    ("2027-06-06T03:30", 24.72, 186.72, 67.41, 107.77, 64.99),
    ("2027-06-06T06:00", 12.69, 219.02, 85.73, 308.06, 85.64),
]


def utc_s(text):
    return np.datetime64(text).astype("datetime64[s]").astype(float)


@pytest.mark.parametrize(("time", "core_alt", "core_az", "top_alt", "top_az", "tilt"), BY_ASTROPY)
def test_core_arch_and_tilt_by_astropy(time, core_alt, core_az, top_alt, top_az, tilt):
    where = -33.0, 36.0, 0.0, utc_s(time)
    for body, alt, az in (("core", core_alt, core_az), ("arch", top_alt, top_az)):
        found_az, found_alt = live.direction(body_of(body), *where)
        assert found_az == pytest.approx(az, abs=TOL_ASTROPY_DEG / np.cos(np.radians(alt)))
        assert found_alt == pytest.approx(seen(alt, 0.0, None, 10.0), abs=TOL_ASTROPY_DEG)
    # the table has the tilt by an arcsine, which turns aberration, 20.5" at the most, into more the nearer the band is to upright
    assert live.tilt_deg(*where) == pytest.approx(tilt, abs=TOL_ASTROPY_DEG + 20.5 / 3600 * np.tan(np.radians(tilt)))


@pytest.mark.parametrize("time", ["1990-01-05T00:00", "2016-12-31T23:59:59", "2027-06-05T23:59:59", "2027-06-06T00:00", "2053-10-04T12:00"])
@pytest.mark.parametrize(("lon_deg", "lat_deg", "height_m"), PLACES)
def test_every_body_by_skyfield_also_where_days_and_the_ephemeris_end(lon_deg, lat_deg, height_m, time):
    sky = Observer(lon_deg, lat_deg, height_m, times(utc_s(time)))
    bodies = {"core": target("core"), "sun": target("sun"), "moon": target("moon"), "star": icrs_star(80.0, 61.0)}
    bodies["galactic"] = galactic_star(78.0, 0.0)
    for body, known in bodies.items():
        alt, az, _ = sky.altaz(known)
        _assert_there(body, (lon_deg, lat_deg, height_m), time, alt, az)
    _assert_there("pole", (lon_deg, lat_deg, height_m), time, abs(lat_deg), 0.0 if lat_deg >= 0 else 180.0)


def _assert_there(body, place, time, alt_deg, az_deg):
    found_az, found_alt = live.direction(body_of(body, (80.0, 61.0), 78.0), *place, utc_s(time))
    assert abs((found_az - az_deg + 180.0) % 360.0 - 180.0) * np.cos(np.radians(alt_deg)) < TOL_SKYFIELD_DEG, body
    assert 0.0 <= found_az < 360.0
    assert found_alt == pytest.approx(seen(alt_deg, place[2], None, 10.0), abs=TOL_SKYFIELD_DEG), body


def test_no_tilt_while_the_core_is_down():
    assert np.isnan(live.tilt_deg(-33.0, 36.0, 0.0, utc_s("2027-06-06T12:00")))


def test_a_dragged_point_and_running_time_ask_the_ephemeris_once_a_day_and_body(monkeypatch):
    asked = []
    tracks = live.tracks
    monkeypatch.setattr(live, "tracks", lambda bodies, *span: asked.append(bodies) or tracks(bodies, *span))
    live._track.cache_clear()
    live._table.cache_clear()
    for step in range(50):
        live.direction(body_of("core"), -33.0 + 1e-5 * step, 36.0, 0.0, utc_s("2031-03-03T03:00"))
        live.direction(body_of("core"), -33.0, 36.0, 0.0, utc_s("2031-03-03T03:00") + 60.0 * step)
    assert len(asked) == 1
    live.tilt_deg(-33.0, 36.0, 0.0, utc_s("2031-03-03T03:00"))
    assert len(asked) == 3  # the other two axes of the band
    live.direction(body_of("core"), -33.0, 36.0, 0.0, utc_s("2031-03-04T03:00"))
    assert len(asked) == 4


@pytest.mark.parametrize("edge", ["first_utc_s", "last_utc_s"])
def test_moments_outside_the_ephemeris_are_refused(edge):
    end = getattr(default_ephemeris(), edge)
    live.direction(body_of("moon"), 0.0, 0.0, 0.0, end)
    with pytest.raises(ValueError, match="Choose dates between"):
        live.direction(body_of("moon"), 0.0, 0.0, 0.0, end + (1.0 if edge == "last_utc_s" else -1.0))


def test_sightline_has_no_bearing_on_the_spot():
    bearing, dist = live.sightline(10.0, 50.0, 10.0, 50.0)
    assert np.isnan(bearing)
    assert dist == 0.0
