"""Places of Sun, Moon and fixed directions against Skyfield's own topocentric ones, pole to pole and over the whole ephemeris."""

import numpy as np
import pytest
from skyfield_places import DAY_S, Observer, apart_arcsec, galactic_star, icrs_star, target, times

from skyalidade.sky import bodies, horizontal
from skyalidade.sky.tables import TimeTable

TOL_ARCSEC = {
    "core": 0.1,  # the promise; measured 0.003", of which Skyfield's deflection by Jupiter, Saturn and the Earth takes a part
    "sun": 0.1,  # the promise
    "moon": 0.05,  # the promise; the Moon's cubics leave 0.005"
}
BODIES = {"core": bodies.CORE, "sun": bodies.SUN, "moon": bodies.MOON}
SITES = 200
FIRST_UTC_S, LAST_UTC_S = 631756800.0 + 4 * DAY_S, 2642976000.0 - 4 * DAY_S  # 1990-01-08 to 2053-09-28, within the ephemeris


def random_sites(seed):
    """Even over the sphere, up to 6000 m, and by hand the poles, the antimeridian and the equator."""
    rng = np.random.default_rng(seed)
    lon = rng.uniform(-180, 180, SITES)
    lat = np.degrees(np.arcsin(rng.uniform(-1, 1, SITES)))
    height = rng.uniform(0, 6000, SITES)
    lat[:6], lon[:6] = [90, -90, 89.9999, 0, 0, -28.936], [0, 45, 12, 180, -180, 180]
    return lon, lat, height


def worst_arcsec(lon_deg, lat_deg, height_m, t_utc_s, names=tuple(BODIES)):
    """Greatest distance from Skyfield, a body."""
    table = TimeTable(t_utc_s, [BODIES[name] for name in names])
    ours = {name: horizontal.true_altaz(horizontal.Sites(lon_deg, lat_deg, height_m), table, BODIES[name]) for name in names}
    worst = dict.fromkeys(names, 0.0)
    theirs = times(t_utc_s)
    for s, site in enumerate(zip(lon_deg, lat_deg, height_m)):
        observer = Observer(*site, theirs)
        for name in names:
            alt, az, _ = observer.altaz(target(name))
            worst[name] = max(worst[name], apart_arcsec(ours[name][0][s], ours[name][1][s], alt, az).max())
    return worst


def record(record_property, worst):
    for name, arcsec in worst.items():
        record_property(f"{name}_skyfield", arcsec)


def test_two_thousand_times_over_the_whole_ephemeris(record_property):
    """Far between, so that the table takes its places straight from the ephemeris."""
    t_utc_s = np.random.default_rng(1).uniform(FIRST_UTC_S, LAST_UTC_S, 2000)
    worst = worst_arcsec(*random_sites(2), t_utc_s)
    record(record_property, worst)
    assert {name: arcsec for name, arcsec in worst.items() if not arcsec < TOL_ARCSEC[name]} == {}


@pytest.mark.parametrize("year", [1991, 2001, 2010, 2019, 2027, 2036, 2044, 2052])
def test_dense_times_that_are_interpolated(year, record_property):
    """Eight times 250 within ten days of mid December, when the Sun stands by the core and bends its light most."""
    first = np.datetime64(f"{year}-12-13T00:00:00", "s").astype(float)
    t_utc_s = np.random.default_rng(year).uniform(first, first + 10 * DAY_S, 250)
    lon, lat, height = random_sites(year)
    few = slice(0, 60)
    worst = worst_arcsec(lon[few], lat[few], height[few], t_utc_s)
    record(record_property, worst)
    assert {name: arcsec for name, arcsec in worst.items() if not arcsec < TOL_ARCSEC[name]} == {}


def test_the_core_is_bent_by_the_sun():
    """Without deflection the core would stand by up to 0.086" elsewhere in mid December: the tolerance alone would not notice."""
    first = np.datetime64("2027-12-17T00:00:00", "s").astype(float)
    t_utc_s = first + DAY_S * np.linspace(0.0, 4.0, 41)
    site = (20.0, -40.0, 0.0)
    alt, az = horizontal.true_altaz(horizontal.Sites(*site), TimeTable(t_utc_s, [bodies.CORE]), bodies.CORE)
    observer = Observer(*site, times(t_utc_s))
    bent = observer.altaz(target("core"))
    unbent = observer.at.observe(target("core")).apparent(deflectors=()).altaz()
    assert apart_arcsec(bent[0], bent[1], unbent[0].degrees, unbent[1].degrees).max() > 0.05
    assert apart_arcsec(alt[0], az[0], bent[0], bent[1]).max() < 0.02  # arcsec; daily cubics through a deflection that lasts days


def test_stars_over_the_whole_sky():
    rng = np.random.default_rng(5)
    t_utc_s = rng.uniform(FIRST_UTC_S, LAST_UTC_S, 50)
    lon, lat, height = random_sites(6)
    theirs = times(t_utc_s)
    worst = 0.0
    for site in zip(lon[:20], lat[:20], height[:20]):
        ra, dec = rng.uniform(0, 360), np.degrees(np.arcsin(rng.uniform(-1, 1)))
        body = bodies.star(ra, dec)
        alt, az = horizontal.true_altaz(horizontal.Sites(*site), TimeTable(t_utc_s, [body]), body)
        skyfield_alt, skyfield_az, _ = Observer(*site, theirs).altaz(icrs_star(ra, dec))
        worst = max(worst, apart_arcsec(alt[0], az[0], skyfield_alt, skyfield_az).max())
    assert worst < 0.1  # arcsec, as for the core


@pytest.mark.parametrize("lon_deg", [0.0, 17.0, 90.0, 211.5, 359.0])
def test_longitudes_of_the_galactic_plane(lon_deg):
    t_utc_s = np.random.default_rng(7).uniform(FIRST_UTC_S, LAST_UTC_S, 20)
    body = bodies.on_galactic_plane(lon_deg)
    alt, az = horizontal.true_altaz(horizontal.Sites(8.0, -33.0, 900.0), TimeTable(t_utc_s, [body]), body)
    skyfield_alt, skyfield_az, _ = Observer(8.0, -33.0, 900.0, times(t_utc_s)).altaz(galactic_star(lon_deg, 0.0))
    assert apart_arcsec(alt[0], az[0], skyfield_alt, skyfield_az).max() < 0.1  # arcsec, as for the core


def test_the_topocentric_distance_of_the_moon():
    t_utc_s = np.random.default_rng(8).uniform(FIRST_UTC_S, LAST_UTC_S, 100)
    table = TimeTable(t_utc_s, [bodies.MOON])
    vector_km = horizontal.topocentric(horizontal.Sites(-70.0, -24.0, 2600.0), table, bodies.MOON)[:, 0]
    skyfield_km = Observer(-70.0, -24.0, 2600.0, times(t_utc_s)).altaz(target("moon"))[2]
    # Skyfield counts the light time of the Moon along the Earth's way round the Sun: up to 40 km in length, nothing in direction
    assert np.abs(np.linalg.norm(vector_km, axis=0) - skyfield_km).max() < 45.0  # km; a geocentric distance is up to 6378 km off


@pytest.mark.parametrize("lat_deg", [90.0, 51.0, 0.5, -0.5, -33.0, -90.0])
def test_the_celestial_pole_stands_at_the_latitude(lat_deg):
    table = TimeTable([1.8e9, 1.81e9], [bodies.POLE])
    alt, az = horizontal.true_altaz(horizontal.Sites(30.0, lat_deg, 100.0), table, bodies.POLE)
    assert alt == pytest.approx(abs(lat_deg), abs=1e-9)  # deg; round-off
    north_deg = 0.0 if lat_deg > 0 else 180.0
    off = (az - north_deg + 180.0) % 360.0 - 180.0
    assert np.abs(off * np.cos(np.radians(alt))).max() < 1e-9  # deg, on the sky


@pytest.mark.parametrize(
    ("lon", "lat", "height", "t_utc_s", "shape"),
    [
        (10.0, 50.0, 0.0, 1.8e9, (1, 1)),
        ([10.0, 20.0], [50.0, 60.0], [0.0, 5.0], 1.8e9, (2, 1)),
        (10.0, 50.0, 0.0, [1.8e9, 1.9e9, 2.0e9], (1, 3)),
        ([10.0, 20.0], 50.0, 100.0, [1.8e9, 1.9e9, 2.0e9], (2, 3)),
        ([], [], [], [1.8e9], (0, 1)),
        ([10.0], [50.0], [0.0], [], (1, 0)),
    ],
    ids=["scalar", "sites", "times", "broadcast", "no site", "no time"],
)
@pytest.mark.parametrize("body", [bodies.SUN, bodies.MOON, bodies.CORE, bodies.POLE], ids=lambda body: body.name)
def test_results_are_sites_by_times(lon, lat, height, t_utc_s, shape, body):
    sites, table = horizontal.Sites(lon, lat, height), TimeTable(t_utc_s, [body])
    alt, az = horizontal.true_altaz(sites, table, body)
    assert alt.shape == az.shape == shape
    assert horizontal.true_altitude(sites, table, body) == pytest.approx(alt, abs=0.0)
    assert ((az >= 0.0) & (az < 360.0)).all()


def test_a_table_of_many_equals_tables_of_one():
    """Each site and time alone gives what the broadcast gives, however the work is cut into chunks."""
    lon, lat, height = random_sites(9)
    t_utc_s = 1.8e9 + np.arange(700) * 97.0
    alt, az = horizontal.true_altaz(horizontal.Sites(lon, lat, height), TimeTable(t_utc_s, [bodies.MOON]), bodies.MOON)
    rng = np.random.default_rng(10)
    for s, t in zip(rng.integers(0, SITES, 20), rng.integers(0, 700, 20)):
        one = horizontal.true_altaz(horizontal.Sites(lon[s], lat[s], height[s]), TimeTable([t_utc_s[t]], [bodies.MOON]), bodies.MOON)
        assert apart_arcsec(alt[s, t], az[s, t], one[0][0, 0], one[1][0, 0]) < 0.005  # arcsec; the interpolation's own error


@pytest.mark.parametrize("t_utc_s", [600000000.0, 2700000000.0])
def test_a_time_outside_the_ephemeris_is_refused_with_its_span(t_utc_s):
    with pytest.raises(ValueError, match=r"1990-01-\d\d to 2053-10-\d\d"):
        TimeTable([t_utc_s], [bodies.SUN])


def test_leap_seconds_are_counted():
    """Noon after the leap second at the end of 2016 is 86401 s of atomic time after the noon before."""
    noons = np.array(["2016-12-31T12:00:00", "2017-01-01T12:00:00"], "datetime64[s]").astype(float)
    alt, az = horizontal.true_altaz(horizontal.Sites(0.0, 10.0, 0.0), TimeTable(noons, [bodies.MOON]), bodies.MOON)
    skyfield_alt, skyfield_az, _ = Observer(0.0, 10.0, 0.0, times(noons)).altaz(target("moon"))
    assert apart_arcsec(alt[0], az[0], skyfield_alt, skyfield_az).max() < 0.05  # arcsec; a second of turning is 15"
