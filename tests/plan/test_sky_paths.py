"""Positions of a body with their minutes: no minute lost, none counted twice, each where Skyfield sees the body at that time."""

import numpy as np
import pytest
from skyfield.api import Star, load, wgs84

from skyalidade.plan.conditions import Conditions
from skyalidade.plan.night_windows import Places, find_night_windows
from skyalidade.plan.sky_paths import FIXED_STEP_DEG, MOVING_STEP_DEG, months_between, sky_paths, step_of
from skyalidade.plan.targets import target
from skyalidade.sky import ephemeris
from skyalidade.sky.bodies import CORE

LON, LAT = [15.0, -110.0, 30.0, 179.95], [45.0, 36.0, -33.0, -45.0]
FIRST, LAST = np.datetime64("2027-05-20"), np.datetime64("2027-07-10")
BODIES = ["core", "arch", "sun", "moon", "pole", "galactic"]


SITES = len(LON)


def places(count=SITES):
    zone_names = ["Europe/Vienna", "America/Denver", "Africa/Johannesburg", "Pacific/Auckland"]
    return Places(np.array(LON[:count]), np.array(LAT[:count]), np.full(count, 300.0), zone_names, np.arange(count))


def nights_of(count):
    return np.full(count, FIRST), np.full(count, LAST)


@pytest.mark.parametrize("body", BODIES)
def test_minutes_are_those_of_the_windows(body):
    """By site and month, whatever the step."""
    wanted, conditions = target(body, galactic_lon_deg=30.0), Conditions(moon="down")
    months = months_between(FIRST, LAST)
    assert months.astype(str).tolist() == ["2027-05", "2027-06", "2027-07"]
    ((table, windows),) = find_night_windows(places(), wanted, *nights_of(SITES), conditions)
    month = (windows["night"].astype("datetime64[M]") - months[0]).astype(int)
    minutes = np.zeros((SITES, 3))
    np.add.at(minutes, (windows["site"], month), windows["minutes"])
    assert (minutes.sum(axis=1) > 1000.0).any()
    for step_deg in (None, 5.0):
        paths = sky_paths(places(), wanted, *nights_of(SITES), conditions, months, step_deg)
        assert np.array([sky.minutes.sum(axis=0) for sky in paths]) == pytest.approx(minutes, abs=1e-5)  # [min]
        assert [sky.nights.tolist() for sky in paths] == [[12, 30, 10]] * SITES
        assert all((sky.minutes.sum(axis=1) > 0.0).all() for sky in paths)
    together = sky_paths(places(), wanted, *nights_of(SITES), conditions)
    assert np.array([sky.minutes.sum() for sky in together]) == pytest.approx(minutes.sum(axis=1), abs=1e-5)
    assert [sky.nights.tolist() for sky in together] == [[52]] * SITES


def skyfield_altaz(lon_deg, lat_deg, hour_angles_deg):
    """Where the core stands at hour angles, by Skyfield, on one day: azimuth and altitude without air. [deg]."""
    timescale, kernel = load.timescale(builtin=True), ephemeris.default_ephemeris().kernel
    site = wgs84.latlon(lat_deg, lon_deg, elevation_m=300.0)
    times = timescale.utc(2027, 6, 15, 0, np.arange(0, 1440, 1))
    core = Star(ra_hours=CORE.ra_deg / 15.0, dec_degrees=CORE.dec_deg)
    seen = (kernel[399] + site).at(times).observe(core).apparent()
    alt, az, _ = seen.altaz(pressure_mbar=0)
    hour = np.unwrap((times.gast * 15.0 + lon_deg - seen.radec(epoch="date")[0].hours * 15.0) % 360.0, period=360.0)
    nearest = [np.argmin(np.abs((hour - wanted + 180.0) % 360.0 - 180.0)) for wanted in hour_angles_deg]
    return az.degrees[nearest], alt.degrees[nearest]


@pytest.mark.parametrize("site", range(SITES))
def test_whole_steps_stand_at_whole_hour_angles(site):
    """What lies between two cuts an hour angle of 1 deg apart has its mean half way, if the body is up that long every night."""
    sky = sky_paths(places(), target("core"), *nights_of(SITES), Conditions(pressure_hPa=0.0))[site]
    whole = np.flatnonzero(sky.minutes[:, 0] > 0.99 * sky.minutes.max())
    hour = np.arange(-179.5, 180.0)
    az, alt = skyfield_altaz(LON[site], LAT[site], hour)
    away = np.hypot((sky.az_deg[whole, None] - az + 180.0) % 360.0 - 180.0, 0) * np.cos(np.radians(alt))
    apart = np.hypot(away, sky.alt_deg[whole, None] - alt).min(axis=1)
    assert whole.size >= 5
    assert apart.max() < 0.15  # [deg] Skyfield is asked each minute, which is 0.25 deg of the hour angle


def test_positions_are_as_many_as_steps():
    sky = sky_paths(places(1), target("core"), *nights_of(1), Conditions(alt_min_deg=0.0))[0]
    half = np.degrees(np.arccos(-np.tan(np.radians(LAT[0])) * np.tan(np.radians(CORE.dec_deg))))  # hour angle at the horizon
    assert len(sky.az_deg) == pytest.approx(2 * half, abs=4)  # refraction, and the ends
    coarse = sky_paths(places(1), target("core"), *nights_of(1), Conditions(alt_min_deg=0.0), step_deg=4.0)[0]
    assert len(coarse.az_deg) == pytest.approx(2 * half / 4, abs=2)
    assert (step_of(target("core")), step_of(target("moon"))) == (FIXED_STEP_DEG, MOVING_STEP_DEG)


def test_pole_is_one_position():
    sky = sky_paths(places(), target("pole"), *nights_of(SITES), Conditions())
    assert [len(one.az_deg) for one in sky] == [1] * SITES
    assert [one.alt_deg[0] for one in sky] == pytest.approx(np.abs(LAT), abs=0.05)  # refraction
    assert [one.az_deg[0] for one in sky] == pytest.approx([0.0 if lat > 0 else 180.0 for lat in LAT], abs=1e-6)


def test_a_body_that_is_never_up_has_no_positions():
    north = Places(np.array([15.0]), np.array([75.0]), np.zeros(1), ["UTC"], np.zeros(1, dtype=int))
    (sky,) = sky_paths(north, target("core"), *nights_of(1), Conditions())
    assert (len(sky.az_deg), sky.minutes.shape, sky.nights.tolist()) == (0, (0, 1), [52])


def test_it_ends_when_told_to():
    assert sky_paths(places(), target("core"), *nights_of(SITES), Conditions(), progress=lambda part: False) is None
