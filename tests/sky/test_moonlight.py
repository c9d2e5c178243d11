"""Lit fraction, semidiameter and separation against Meeus, Skyfield and astropy; brightness of moonlight against another implementation."""

import astropy_places
import numpy as np
import pytest
from published import rows, values
from skyfield_places import DAY_S, Observer, kernel, target, times

from skyalidade.sky import bodies, horizontal, moonlight
from skyalidade.sky.ephemeris import default_ephemeris
from skyalidade.sky.tables import TimeTable, tracks

FIRST_UTC_S, LAST_UTC_S = 631756800.0 + 4 * DAY_S, 2642976000.0 - 4 * DAY_S  # 1990-01-08 to 2053-09-28

TOL_LIT = (
    7e-5  # share of the disc; the plugin goes by apparent places, Skyfield here by geometric: aberration, some 30" of elongation at 120 deg
)


def lit(t_utc_s):
    table = TimeTable(t_utc_s, [bodies.MOON, bodies.SUN])
    return moonlight.lit_fraction(table.itrs(bodies.MOON), table.itrs(bodies.SUN))


def test_meeus_48a(record_property):
    book = values("meeus_1998")["48.a"]
    t_utc_s = np.datetime64("1992-04-12T00:00:00").astype(float) - (26 + 32.184)  # leap seconds of 1992, TT ahead of TAI
    record_property("meeus_lit", abs(lit([t_utc_s])[0] - book["lit_fraction"]))
    assert lit([t_utc_s])[0] == pytest.approx(book["lit_fraction"], abs=1e-4)  # printed to 4 digits, the Moon's series good to 10"


def test_lit_fraction_from_the_earths_centre(record_property):
    t_utc_s = np.random.default_rng(21).uniform(FIRST_UTC_S, LAST_UTC_S, 500)
    moon = kernel()[399].at(times(t_utc_s)).observe(kernel()[301])
    theirs = moon.fraction_illuminated(kernel()[10])
    record_property("lit_centre", np.abs(lit(t_utc_s) - theirs).max())
    assert np.abs(lit(t_utc_s) - theirs).max() < TOL_LIT


def test_lit_fraction_on_the_ground_differs_by_parallax_only(record_property):
    """What the docstring admits: 0.008."""
    t_utc_s = np.random.default_rng(22).uniform(FIRST_UTC_S, LAST_UTC_S, 500)
    observer = Observer(-33.0, 36.0, 0.0, times(t_utc_s))
    theirs = observer.at.observe(kernel()[301]).fraction_illuminated(kernel()[10])
    record_property("lit_ground", np.abs(lit(t_utc_s) - theirs).max())
    assert np.abs(lit(t_utc_s) - theirs).max() < 0.0085


@pytest.mark.parametrize(("body", "radius_km"), [(bodies.SUN, 695700.0), (bodies.MOON, 1737.4)], ids=["sun", "moon"])
def test_semidiameter(body, radius_km):
    """Radii: IAU 2015 resolution B3 (Sun), IAU working group on cartographic coordinates (Moon); distances from Skyfield."""
    t_utc_s = np.random.default_rng(23).uniform(FIRST_UTC_S, LAST_UTC_S, 300)
    vector_km = horizontal.topocentric(horizontal.Sites(20.0, 1.0, 0.0), TimeTable(t_utc_s, [body]), body)[:, 0]
    distance_km = Observer(20.0, 1.0, 0.0, times(t_utc_s)).altaz(target(body.name))[2]
    theirs = np.degrees(np.arcsin(radius_km / distance_km))
    ours = moonlight.semidiameter_deg(vector_km, body.radius_km)
    assert np.abs(ours - theirs).max() * 3600 < 0.15  # arcsec; 45 km of light time in the Moon's distance
    assert 0.24 < ours.min() < ours.max() < 0.285  # deg: perigee in the zenith to apogee on the horizon


def test_the_moon_is_larger_in_the_zenith_than_on_the_horizon():
    """By up to 1.7 %: the distance is that from the site, not from the Earth's centre."""
    t_utc_s = 1.8e9 + np.arange(0, 30 * DAY_S, 600.0)
    table = TimeTable(t_utc_s, [bodies.MOON])
    vector_km = horizontal.topocentric(horizontal.Sites(20.0, 15.0, 0.0), table, bodies.MOON)[:, 0]
    high = np.argmax(vector_km[2] / np.linalg.norm(vector_km, axis=0))
    geocentric_km = np.linalg.norm(table.itrs(bodies.MOON)[:3, high])
    ratio = moonlight.semidiameter_deg(vector_km[:, high], 1737.4) / np.degrees(np.arcsin(1737.4 / geocentric_km))
    assert ratio == pytest.approx(geocentric_km / (geocentric_km - 6378.0), abs=0.0015)


@pytest.mark.parametrize("body", [bodies.CORE, bodies.SUN], ids=["core", "sun"])
def test_separation_from_the_moon(body):
    t_utc_s = np.random.default_rng(24).uniform(FIRST_UTC_S, LAST_UTC_S, 300)
    table = TimeTable(t_utc_s, [bodies.MOON, body])
    site = horizontal.Sites(-33.0, 36.0, 50.0)
    ours = moonlight.separation_deg(*(horizontal.topocentric(site, table, one)[:, 0] for one in (bodies.MOON, body)))
    observer = Observer(-33.0, 36.0, 50.0, times(t_utc_s))
    moon, other = (observer.at.observe(target(name)).apparent() for name in ("moon", body.name))
    theirs = moon.separation_from(other).degrees
    assert np.abs(ours - theirs).max() * 3600 < 0.15  # arcsec; the promises for both bodies added


def test_separation_against_astropy():
    t_utc_s = np.random.default_rng(25).uniform(FIRST_UTC_S, 1.77e9, 60)
    lon, lat, height = -33.0, 36.0, 50.0
    with astropy_places.offline():
        horizon = astropy_places.frame(t_utc_s, astropy_places.location(lon, lat, height))
        alt, az = np.radians([astropy_places.altaz(name, horizon) for name in ("moon", "core")]).transpose(1, 0, 2)
    cosine = np.sin(alt[0]) * np.sin(alt[1]) + np.cos(alt[0]) * np.cos(alt[1]) * np.cos(az[0] - az[1])
    table = TimeTable(t_utc_s, [bodies.MOON, bodies.CORE])
    site = horizontal.Sites(lon, lat, height)
    ours = moonlight.separation_deg(*(horizontal.topocentric(site, table, body)[:, 0] for body in (bodies.MOON, bodies.CORE)))
    assert np.abs(ours - np.degrees(np.arccos(cosine))).max() * 3600 < 0.3  # arcsec; polar motion turns both alike


@pytest.mark.parametrize("shape", [(), (4,), (2, 5)], ids=["scalar", "array", "sites by times"])
def test_separation_is_exact_at_both_ends_and_keeps_its_shape(shape):
    x = np.broadcast_to(np.array([1.0, 2.0, 3.0]).reshape(3, *[1] * len(shape)), (3, *shape))
    assert moonlight.separation_deg(x, 5.0 * x).shape == shape
    assert np.abs(moonlight.separation_deg(x, 5.0 * x)).max() < 1e-7  # deg; an arccos would give 1e-6
    assert np.abs(moonlight.separation_deg(x, -x) - 180.0).max() < 1e-7


@pytest.mark.parametrize("limits", [(0.0, 0.25), (0.3, 0.7), (0.99, 1.0), (0.0, 1.0)])
def test_lit_stretches_against_a_scan(limits):
    first, last = 1.8e9, 1.8e9 + 200 * DAY_S
    made = tracks([bodies.MOON, bodies.SUN], first - DAY_S, last + DAY_S)
    span = default_ephemeris().tt_from_utc([first, last])
    start, end = moonlight.lit_stretches(made[bodies.MOON], made[bodies.SUN], *span, *limits)
    t_utc_s = np.arange(first, last, 600.0)
    moon = kernel()[399].at(times(t_utc_s)).observe(kernel()[301])
    theirs = moon.fraction_illuminated(kernel()[10])
    tt_s = default_ephemeris().tt_from_utc(t_utc_s)
    inside = ((tt_s[:, None] >= start) & (tt_s[:, None] <= end)).any(axis=1)
    clear = np.minimum(np.abs(theirs - limits[0]), np.abs(theirs - limits[1])) > TOL_LIT
    if limits != (0.0, 1.0):
        assert 0 < inside.sum() < len(inside)
    assert (inside == ((theirs >= limits[0]) & (theirs <= limits[1])))[clear].all()


# Brightness of the sky in moonlight


def nanolamberts(mag_arcsec2):
    """R. H. Garstang, PASP 98, 364 (1986), equation 19, from memory: 34.08 exp(20.7233 - 0.92104 V)."""
    return 34.08 * np.exp(20.7233 - 0.92104 * mag_arcsec2)


@pytest.mark.parametrize("row", rows("krisciunas_schaefer_1991"), ids=lambda row: row["sep_deg"])
def test_moonlight_is_that_of_another_implementation(row, record_property):
    zenith, moon_zenith, sep, phase, extinction, printed = (float(value) for value in row.values())
    ours = moonlight.scattered_moonlight_krisciunas91(phase, sep, moon_zenith, zenith, extinction)
    record_property("moonlight", abs(ours / nanolamberts(printed) - 1.0))
    assert ours == pytest.approx(nanolamberts(printed), rel=1e-6)  # printed to a millionth of a magnitude


def test_the_dark_zenith_is_the_papers():
    """79.0 nL is V 21.587 mag per square arcsecond (from memory); the horizon is 1.7 mag brighter, as 5 air masses glow less 0.69 mag."""
    assert moonlight.dark_sky_krisciunas91(0.0) == pytest.approx(nanolamberts(21.587), rel=1e-3)
    brighter = 2.5 * np.log10(moonlight.dark_sky_krisciunas91(90.0) / moonlight.dark_sky_krisciunas91(0.0))
    assert brighter == pytest.approx(2.5 * np.log10(5.0) - 4 * 0.172, abs=1e-9)


def test_near_the_moon_light_grows_as_the_inverse_square():
    """Within 10 deg dust scatters 6.2e7 / rho^2 (equation 20's remark, from memory); at 10 deg the two laws meet within 22 %."""
    molecules = 10**5.36 * (1.06 + np.cos(np.radians([1.0, 2.0])) ** 2)
    near = moonlight.scattered_moonlight_krisciunas91(0.0, [1.0, 2.0], 30.0, 30.0)
    assert near[0] / near[1] == pytest.approx((6.2e7 + molecules[0]) / (6.2e7 / 4 + molecules[1]), rel=1e-12)
    inside, beyond = moonlight.scattered_moonlight_krisciunas91(0.0, [9.999, 10.001], 30.0, 30.0)
    assert inside / beyond == pytest.approx(1.0, abs=0.22)


def test_brightening_goes_by_what_makes_moonlight():
    """More by a fuller, higher and nearer Moon; nothing by a new one."""

    def added(lit=0.9, sep=60.0, moon_alt=40.0, alt=25.0):
        return moonlight.brightening_mag(lit, sep, moon_alt, alt)

    assert added() == pytest.approx(2.6, abs=0.6)  # mag: moonlit skies are 18.5 to 19.5 (common practice, no source)
    assert added(lit=1.0) > added() > added(lit=0.5) > added(lit=0.05) > 0.0
    assert added(lit=0.0) < 0.02
    assert added(moon_alt=80.0) > added() > added(moon_alt=5.0) > added(moon_alt=0.0)
    assert added(sep=20.0) > added(sep=40.0) > added()
    assert added(moon_alt=-0.5) == added(moon_alt=0.0)
    assert np.isfinite(added(alt=np.array([0.0, 90.0]), moon_alt=np.array([90.0, 0.0]))).all()


@pytest.mark.parametrize("shape", [(), (4,), (2, 5)], ids=["scalar", "array", "sites by times"])
def test_brightening_keeps_its_shape(shape):
    assert moonlight.brightening_mag(np.full(shape, 0.5), 50.0, np.full(shape, 30.0), 20.0).shape == shape
