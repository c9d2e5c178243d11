"""The published values, many of them written down from memory, held against two libraries that know nothing of them.

A number that fails here must not prove anything elsewhere.
"""

import warnings

import ephem
import erfa
import numpy as np
import pytest
from astropy import coordinates, units
from astropy.time import Time
from astropy.utils import iers
from published import dms_deg, hms_deg, rows, values
from pymeeus.Epoch import Epoch
from pymeeus.Moon import Moon
from skyfield import earthlib

JD_1992_04_12 = 2448724.5
JD_1992_10_13 = 2448908.5


@pytest.fixture(autouse=True)
def earth_rotation_offline():
    with iers.conf.set_temp("auto_download", False), iers.conf.set_temp("auto_max_age", None):
        yield


def horizontal(hour_angle_deg, dec_deg, lat_deg):
    """The textbook formulas: altitude and azimuth from north."""
    h, d, p = np.radians([hour_angle_deg, dec_deg, lat_deg])
    alt = np.degrees(np.arcsin(np.sin(p) * np.sin(d) + np.cos(p) * np.cos(d) * np.cos(h)))
    return alt, np.degrees(np.arctan2(-np.sin(h) * np.cos(d), np.sin(d) * np.cos(p) - np.cos(d) * np.cos(h) * np.sin(p))) % 360.0


def test_meeus_13b_venus():
    book = values("meeus_1998")["13.b"]
    ra, dec = hms_deg(book["apparent_ra_hms"]), dms_deg(book["apparent_dec_dms"])
    alt, az = horizontal(hms_deg(book["apparent_sidereal_time_hms"]) + book["longitude_deg"] - ra, dec, book["latitude_deg"])
    assert [alt, az] == pytest.approx([book["altitude_deg"], book["azimuth_deg"]], abs=0.0002)  # deg; printed to 0.0001
    ut1 = 2446895.5 + (19 + 21 / 60) / 24
    gast = np.degrees(erfa.gst06a(ut1, 0.0, ut1 + 55.3 / 86400, 0.0))  # delta T of 1987
    assert gast == pytest.approx(hms_deg(book["apparent_sidereal_time_hms"]), abs=0.1 / 3600)  # deg; printed to 0.015"
    venus = ephem.Venus(ephem.Date("1987/4/10 19:21:00"))
    assert np.degrees([venus.g_ra, venus.g_dec]) == pytest.approx([ra, dec], abs=1.0 / 3600)  # deg; ephem keeps 1"


def test_meeus_25b_sun():
    book = values("meeus_1998")["25.b"]
    when = Time(JD_1992_10_13, format="jd", scale="tt")
    sun = coordinates.get_body("sun", when, ephemeris="builtin").transform_to(coordinates.TETE(obstime=when))
    there = [hms_deg(book["ra_hms"]), dms_deg(book["dec_dms"])]
    assert [sun.ra.deg, sun.dec.deg] == pytest.approx(there, abs=0.1 / 3600)  # deg; two ephemerides 0.06" apart
    assert sun.distance.au == pytest.approx(book["distance_au"], abs=1e-7)
    sun = ephem.Sun(ephem.Date(JD_1992_10_13 - 2415020 - 59.0 / 86400))  # delta T of 1992
    assert np.degrees([sun.g_ra, sun.g_dec]) == pytest.approx(there, abs=1.0 / 3600)  # deg; ephem keeps 1"


def test_meeus_47a_moon():
    book = values("meeus_1998")["47.a"]
    moon_au = erfa.moon98(JD_1992_04_12, 0.0)["p"]
    assert np.linalg.norm(moon_au) * 149597870.7 == pytest.approx(book["distance_km"], abs=0.06)  # km; printed to 0.1
    moon = ephem.Moon(ephem.Date(JD_1992_04_12 - 2415020 - 59.0 / 86400))
    on_ecliptic = ephem.Ecliptic(ephem.Equatorial(moon.g_ra, moon.g_dec, epoch=ephem.Date("1992/4/12")), epoch=ephem.Date("1992/4/12"))
    apart = np.degrees([on_ecliptic.lon, on_ecliptic.lat]) - [book["longitude_deg"], book["latitude_deg"]]
    assert np.abs(apart).max() * 3600 < book["series_error_arcsec"] + 10  # arcsec; ephem's ecliptic is the mean one: nutation is 10" here


def test_meeus_48a_lit_fraction():
    book = values("meeus_1998")["48.a"]
    assert (1 + np.cos(np.radians(book["phase_angle_deg"]))) / 2 == pytest.approx(book["lit_fraction"], abs=0.5e-4)  # printed to 4 digits
    moon = ephem.Moon(ephem.Date(JD_1992_04_12 - 2415020 - 59.0 / 86400))
    assert moon.phase / 100 == pytest.approx(book["lit_fraction"], abs=1e-4)
    when = Time(JD_1992_04_12, format="jd", scale="tt")
    sun, moon = (coordinates.get_body(name, when, ephemeris="builtin") for name in ("sun", "moon"))
    elongation = sun.separation(moon)
    phase = np.arctan2(sun.distance * np.sin(elongation), moon.distance - sun.distance * np.cos(elongation)).to_value("deg")
    assert phase == pytest.approx(book["phase_angle_deg"], abs=0.003)  # deg; the Moon's series is good to 10"


def test_meeus_49a_new_moon():
    book = values("meeus_1998")["49.a"]
    phase = Moon.moon_phase(Epoch(1977, 2, 15), "new")
    assert float(phase.jde()) == pytest.approx(book["when_jde"], abs=1e-5)  # days
    found = float(ephem.next_new_moon("1977/2/10")) + 2415020 + 47.6 / 86400  # delta T of 1977
    assert (found - book["when_jde"]) * 86400 == pytest.approx(0.0, abs=10.0)  # s; the book's periodic terms keep some 4 s


def test_nrel_worked_example():
    spa = values("nrel_spa_2008")
    when = Time("2003-10-17 19:30:30", scale="ut1").utc
    site = coordinates.EarthLocation.from_geodetic(spa["longitude_deg"], spa["latitude_deg"], spa["height_m"])
    sun = coordinates.get_body("sun", when, site, ephemeris="builtin").transform_to(coordinates.AltAz(obstime=when, location=site))
    assert sun.az.deg == pytest.approx(spa["azimuth_deg"], abs=0.6 / 3600)  # deg; polar motion, dT 67 s against 64.5
    observer = ephem.Observer()
    observer.lat, observer.lon = np.radians([spa["latitude_deg"], spa["longitude_deg"]])
    observer.elevation, observer.pressure, observer.temp = spa["height_m"], spa["pressure_hPa"], spa["temperature_C"]
    observer.date = when.datetime
    sun = ephem.Sun(observer)
    # ephem counts parallax from a sphere (some arcsec off in azimuth) and has its own refraction formula
    assert [90 - np.degrees(sun.alt), np.degrees(sun.az)] == pytest.approx([spa["zenith_deg"], spa["azimuth_deg"]], abs=0.003)  # deg


def test_galactic_system():
    iau = values("galactic_system")
    assert np.degrees(erfa.g2icrs(0.0, 0.0)) == pytest.approx([iau["centre_ra_deg"], iau["centre_dec_deg"]], abs=1e-5)  # deg; as printed
    pole = [iau["north_pole_ra_deg"], iau["north_pole_dec_deg"]]
    assert np.degrees(erfa.g2icrs(0.0, np.pi / 2)) == pytest.approx(pole, abs=1e-9)
    node_ra, node_dec = np.degrees(erfa.g2icrs(np.radians(iau["node_longitude_deg"]), 0.0))
    assert [node_ra, node_dec] == pytest.approx([iau["north_pole_ra_deg"] + 90.0, 0.0], abs=1e-9)
    lon_deg, lat_deg = [0.0, 0.0] * units.deg, [0.0, 90.0] * units.deg
    centre, pole_by_b1950 = coordinates.SkyCoord(l=lon_deg, b=lat_deg, frame="galactic").icrs
    assert [pole_by_b1950.ra.deg, pole_by_b1950.dec.deg] == pytest.approx(pole, abs=1e-5)
    source = iau["sagittarius_a_star"]
    star = coordinates.SkyCoord(hms_deg(source["ra_hms"]), dms_deg(source["dec_dms"]), unit="deg")
    assert star.separation(centre).deg == pytest.approx(source["separation_from_centre_deg"], abs=1e-4)  # deg; as printed


def test_refraction_by_another_formula_and_by_the_gas_law():
    table = values("refraction")
    for apparent_deg, arcmin in table["apparent_altitude_deg_to_refraction_arcmin"]:
        assert earthlib.refraction(apparent_deg, 10.0, 1010.0) * 60 == pytest.approx(arcmin, abs=0.05)  # arcmin
    for true_deg, arcmin in table["true_altitude_deg_to_refraction_arcmin"]:
        lift = float(earthlib.refract(np.array([true_deg]), 10.0, 1010.0)[0]) - true_deg
        assert lift * 60 == pytest.approx(arcmin, abs=0.25)  # arcmin; the two formulas are 0.2' apart on the horizon
    for height_m, pressure_hPa in table["standard_atmosphere"]["height_m_to_pressure_hPa"]:
        lapse = 0.0065 / 288.15  # K/m over K: the standard atmosphere's own definition; heights geopotential
        geopotential_m = height_m * 6356766.0 / (6356766.0 + height_m)
        assert 1013.25 * (1 - lapse * geopotential_m) ** 5.25588 == pytest.approx(pressure_hPa, rel=2e-4)


def test_band_table_by_astropy_and_by_erfa():
    table = rows("band_2027_36N_33W")
    site = coordinates.EarthLocation.from_geodetic(-33.0, 36.0, 0.0)
    icrs = [erfa.g2icrs(np.radians(lon_deg), np.radians(lat_deg)) for lon_deg, lat_deg in ((0, 0), (90, 0), (0, 90))]
    with warnings.catch_warnings(), iers.conf.set_temp("iers_degraded_accuracy", "warn"):
        warnings.simplefilter("ignore")
        for row in table:
            when = Time(row["utc"][:-1])
            frame = coordinates.AltAz(obstime=when, location=site)
            printed = [float(row[name]) for name in ("core_alt_deg", "core_az_deg", "sun_deg", "moon_deg")]
            core = coordinates.SkyCoord(l=0 * units.deg, b=0 * units.deg, frame="galactic").transform_to(frame)
            sun, moon = (coordinates.get_body(name, when, site, ephemeris="builtin").transform_to(frame) for name in ("sun", "moon"))
            assert [core.alt.deg, core.az.deg, sun.alt.deg, moon.alt.deg] == pytest.approx(printed, abs=0.01)  # deg; as printed
            along = np.linspace(0.0, 360.0, 7200, endpoint=False)
            plane = coordinates.SkyCoord(l=along * units.deg, b=0 * along * units.deg, frame="galactic").transform_to(frame)
            top = int(np.argmax(plane.alt.deg))
            assert plane.alt.deg[top] == pytest.approx(float(row["apex_deg"]), abs=0.01)  # deg
            assert along[top] == pytest.approx(float(row["apex_lon"]), abs=0.15)  # deg; printed to 0.1, traced to 0.05
            # erfa knows neither nutation nor aberration here: mean place of 2027 by the Earth rotation angle, good to 0.01 deg of tilt
            era = erfa.era00(when.jd1, when.jd2) + np.radians(-33.0)
            celestial = erfa.c2i06a(when.tt.jd1, when.tt.jd2)
            up = np.array([np.cos(np.radians(36.0)), 0.0, np.sin(np.radians(36.0))])
            sines = [up @ erfa.rz(era, celestial) @ erfa.s2c(ra, dec) for ra, dec in icrs]
            tilt = np.degrees(np.arcsin(sines[1] / np.sqrt(1 - sines[0] ** 2)))
            assert tilt == pytest.approx(float(row["tilt_deg"]), abs=0.02)  # deg; printed to 0.01, aberration 0.006
            assert 90 - np.degrees(np.arcsin(abs(sines[2]))) == pytest.approx(float(row["apex_deg"]), abs=0.02)


def test_nights_of_the_15th_by_ephem():
    """The ends, put into ephem: one of the two limits is met there within what a minute of print allows."""
    centre = ephem.FixedBody()
    iau = values("galactic_system")
    centre._ra, centre._dec = np.radians([iau["centre_ra_deg"], iau["centre_dec_deg"]])
    observer = ephem.Observer()
    observer.lat, observer.lon, observer.pressure = np.radians(40.0), 0.0, 0.0
    minute_deg = 0.25  # a minute of the sky's turn
    met = 0
    for row in rows("dark_core_2025_40N"):
        for name in ("first", "last"):
            if not row[name]:
                continue
            observer.date = row["night"].replace("-", "/") + " " + row[name]
            if row[name] < "12":
                observer.date += 1
            centre.compute(observer)
            margins = np.degrees(centre.alt) - 10.0, -18.0 - np.degrees(ephem.Sun(observer).alt)
            assert min(map(abs, margins)) < minute_deg, row
            assert min(margins) > -minute_deg, row
            met += 1
    assert met == 18
