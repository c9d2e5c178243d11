"""The plugin's places against the worked examples of Meeus and of NREL, and against the table of the band.

The books give geocentric places; they are carried to a site by the sidereal time and the textbook formulas, so that the site's side of the
plugin (parallax, flattening, azimuth) is held against them too.
"""

import erfa
import numpy as np
import pytest
from published import dms_deg, hms_deg, rows, values
from skyfield_places import apart_arcsec, timescale

from skyalidade.sky import bodies, horizontal, refraction
from skyalidade.sky.tables import TimeTable

AU_KM = 149597870.7
TT_MINUS_UTC_1992_S = 32.184 + np.array([26, 27])  # before and after the leap second of July 1992
SITES = [(0.0, 0.0, 0.0), (-77.0656, 38.9214, 100.0), (150.0, -33.0, 2000.0), (30.0, 80.0, 0.0)]  # lon, lat, height: chosen, not published


def utc_of_ut1(utc_s):
    """Moment at which UT1 reads what UTC reads at a given one. [s]."""
    days, seconds = np.divmod(utc_s, 86400.0)
    return utc_s - float(timescale().utc(1970, 1, 1 + int(days), 0, 0, seconds).dut1)


def topocentric_by_hand(place_km, gast_rad, lon_deg, lat_deg, height_m):
    """Altitude and azimuth of a geocentric place on the equator of date, from a site on the ellipsoid."""
    lon, lat = np.radians([lon_deg, lat_deg])
    fixed = erfa.rz(gast_rad, np.eye(3)) @ place_km
    offset = fixed - erfa.gd2gc(1, lon, lat, height_m) / 1000.0
    east = np.array([-np.sin(lon), np.cos(lon), 0.0])
    up = np.array([np.cos(lat) * np.cos(lon), np.cos(lat) * np.sin(lon), np.sin(lat)])
    north = np.cross(up, east)
    e, n, u = east @ offset, north @ offset, up @ offset  # diurnal aberration, at most 0.32", is left to the tolerances
    return np.degrees(np.arctan2(u, np.hypot(e, n))), np.degrees(np.arctan2(e, n)) % 360.0


def ours(body, site, t_utc_s):
    alt, az = horizontal.true_altaz(horizontal.Sites(*site), TimeTable([t_utc_s], [body]), body)
    return alt[0, 0], az[0, 0]


def gast(t_utc_s):
    days, seconds = np.divmod(t_utc_s, 86400.0)
    return timescale().utc(1970, 1, 1 + int(days), 0, 0, seconds).gast * np.pi / 12.0


def test_meeus_13b_through_a_star_put_where_venus_was(record_property):
    book = values("meeus_1998")["13.b"]
    t_utc_s = utc_of_ut1(np.datetime64("1987-04-10T19:21:00").astype(float))
    # The ephemeris begins in 1990: the same sidereal time comes back five years later ...
    ra, dec = np.radians([hms_deg(book["apparent_ra_hms"]), dms_deg(book["apparent_dec_dms"])])
    wanted_gast = np.radians(hms_deg(book["apparent_sidereal_time_hms"]))
    t_utc_s += 5 * 365.25 * 86400.0
    for _ in range(3):  # ... and so does the direction, put back to ICRS for that moment
        t_utc_s += ((wanted_gast - gast(t_utc_s) + np.pi) % (2 * np.pi) - np.pi) / 7.292115e-5
    tt_jd = 2440587.5 + (t_utc_s + TT_MINUS_UTC_1992_S[0]) / 86400.0
    eo = erfa.eo06a(tt_jd, 0.0)
    ra_icrs, dec_icrs, _ = erfa.atic13(ra + eo, dec, tt_jd, 0.0)
    body = bodies.star(np.degrees(ra_icrs), np.degrees(dec_icrs))
    alt, az = ours(body, (book["longitude_deg"], book["latitude_deg"], 0.0), t_utc_s)
    apart = apart_arcsec(alt, az, book["altitude_deg"], book["azimuth_deg"])
    record_property("meeus_venus", apart)
    assert apart < 1.0  # arcsec; print 0.4", diurnal aberration 0.25"


@pytest.mark.parametrize("site", SITES)
def test_meeus_25b_sun(site, record_property):
    book = values("meeus_1998")["25.b"]
    t_utc_s = np.datetime64("1992-10-13T00:00:00").astype(float) - TT_MINUS_UTC_1992_S[1]
    place_km = book["distance_au"] * AU_KM * erfa.s2c(np.radians(hms_deg(book["ra_hms"])), np.radians(dms_deg(book["dec_dms"])))
    theirs = topocentric_by_hand(place_km, gast(t_utc_s), *site)
    apart = apart_arcsec(*ours(bodies.SUN, site, t_utc_s), *theirs)
    record_property("meeus_sun", apart)
    assert apart < 0.5  # arcsec; example 0.05", diurnal aberration 0.32"


@pytest.mark.parametrize("site", SITES)
def test_meeus_47a_moon(site, record_property):
    book = values("meeus_1998")["47.a"]
    t_utc_s = np.datetime64("1992-04-12T00:00:00").astype(float) - TT_MINUS_UTC_1992_S[0]
    tt_jd = 2448724.5
    of_date = erfa.s2c(np.radians(book["longitude_deg"]), np.radians(book["latitude_deg"]))
    obliquity = erfa.obl06(tt_jd, 0.0) + erfa.nut06a(tt_jd, 0.0)[1]
    place_km = book["distance_km"] * (erfa.rx(-obliquity, np.eye(3)) @ of_date)
    theirs = topocentric_by_hand(place_km, gast(t_utc_s), *site)
    apart = apart_arcsec(*ours(bodies.MOON, site, t_utc_s), *theirs)
    record_property("meeus_moon", apart)
    assert apart < 3.0  # arcsec; DE421 is 1.95" from the example; parallax is up to 3400"


def test_the_worked_example_of_nrel(record_property):
    spa = values("nrel_spa_2008")
    t_utc_s = utc_of_ut1(np.datetime64("2003-10-17T19:30:30").astype(float))
    alt, az = ours(bodies.SUN, (spa["longitude_deg"], spa["latitude_deg"], spa["height_m"]), t_utc_s)
    seen = refraction.apparent_altitude(alt, spa["pressure_hPa"], spa["temperature_C"])
    record_property("nrel", 3600 * max(abs(90.0 - seen - spa["zenith_deg"]), abs(az - spa["azimuth_deg"])))
    assert 90.0 - seen == pytest.approx(spa["zenith_deg"], abs=0.6 / 3600)  # deg; the example is 0.5" from DE421 (dT 67 s, shorter series)
    assert az == pytest.approx(spa["azimuth_deg"], abs=0.6 / 3600)


@pytest.mark.parametrize("row", rows("band_2027_36N_33W"), ids=lambda row: row["utc"])
def test_core_sun_and_moon_through_a_night(row):
    """Printed to 0.01 deg."""
    t_utc_s = np.datetime64(row["utc"][:-1]).astype(float)
    site = (-33.0, 36.0, 0.0)
    core_alt, core_az = ours(bodies.CORE, site, t_utc_s)
    assert [core_alt, core_az] == pytest.approx([float(row["core_alt_deg"]), float(row["core_az_deg"])], abs=0.011)
    assert ours(bodies.SUN, site, t_utc_s)[0] == pytest.approx(float(row["sun_deg"]), abs=0.011)
    assert ours(bodies.MOON, site, t_utc_s)[0] == pytest.approx(float(row["moon_deg"]), abs=0.011)


@pytest.mark.parametrize("row", rows("dark_core_2025_40N"), ids=lambda row: row["night"])
def test_dark_hours_of_the_core_a_night_a_month(row):
    """Core above 10 deg, Sun below -18 deg, by a scan of 10 s; the table is read to the minute."""
    noon = (np.datetime64(row["night"]) + np.timedelta64(12, "h")).astype("datetime64[s]").astype(float)
    t_utc_s = noon + np.arange(0.0, 86400.0, 10.0)
    table, site = TimeTable(t_utc_s, [bodies.CORE, bodies.SUN]), horizontal.Sites(0.0, 40.0, 0.0)
    dark = (horizontal.true_altitude(site, table, bodies.CORE)[0] > 10.0) & (horizontal.true_altitude(site, table, bodies.SUN)[0] < -18.0)
    if not row["first"]:
        assert not dark.any()
        return
    assert (np.diff(np.nonzero(dark)[0]) == 1).all()  # one stretch
    for name, found in (("first", t_utc_s[dark][0]), ("last", t_utc_s[dark][-1])):
        hours, minutes = map(int, row[name].split(":"))
        printed = noon + ((hours - 12) % 24) * 3600.0 + minutes * 60.0
        assert found == pytest.approx(printed, abs=70.0)  # s; a minute of print, a step of the scan
