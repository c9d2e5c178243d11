"""The band against astropy, which traces the galactic plane point by point and knows nothing of poles and tilts by formula."""

import astropy_places
import numpy as np
import pytest
from published import hms_deg, rows, values
from skyfield_places import Observer, apart_arcsec, target, times, unit_vectors

from skyalidade.sky import bodies, galactic, horizontal
from skyalidade.sky.tables import TimeTable

# Aberration moves each star by up to 20.5" toward one point, so that from a moving Earth the plane is a circle slightly less than great,
# and its pole is not where a star there would be seen: 20.5" times root two between a point of the plane and what the three axes say of it.
ABERRATION_DEG = 29.0 / 3600.0
AXES = (bodies.CORE, bodies.GALACTIC_Y, bodies.GALACTIC_POLE)
FIRST_UTC_S, LAST_UTC_S = np.array(["1995-01-01", "2026-06-01"], "datetime64[s]").astype(float)


def band(site, t_utc_s):
    table = TimeTable(t_utc_s, AXES)
    return galactic.band(*(horizontal.topocentric(horizontal.Sites(*site), table, axis) for axis in AXES))


def scene(number):
    """A random site and time."""
    rng = np.random.default_rng(100 + number)
    return (rng.uniform(-180, 180), np.degrees(np.arcsin(rng.uniform(-1, 1))), rng.uniform(0, 6000)), rng.uniform(FIRST_UTC_S, LAST_UTC_S)


def traced(site, t_utc_s):
    """Longitudes, altitudes and azimuths along the plane, first all round, then close to the core."""
    all_round, at_core = np.arange(0.0, 360.0, 0.25), np.array([-0.01, 0.0, 0.01])
    with astropy_places.offline():
        horizon = astropy_places.frame(t_utc_s, astropy_places.location(*site))
        return (all_round, *astropy_places.plane(all_round, horizon)), astropy_places.plane(at_core, horizon)


@pytest.mark.parametrize("number", range(40))
def test_top_feet_tilt_and_lean(number, record_property):
    site, t_utc_s = scene(number)
    (lon, alt, az), (core_alt, core_az) = traced(site, t_utc_s)
    ours = band(site, [t_utc_s])
    swing = 1.0 / max(np.sin(np.radians(ours.apex_deg[0, 0])), 0.01)  # a flat band's top and feet hang on the tenth decimal

    # the highest point, by a parabola through the highest three
    top = int(np.argmax(alt))
    near = alt[(top + np.array([-1, 0, 1])) % len(alt)]
    step = 0.5 * (near[0] - near[2]) / (near[0] - 2 * near[1] + near[2])
    top_alt = near[1] - 0.25 * (near[0] - near[2]) * step
    record_property("apex_astropy", 3600 * abs(ours.apex_deg[0, 0] - top_alt))
    assert ours.apex_deg[0, 0] == pytest.approx(top_alt, abs=ABERRATION_DEG + 1e-4)  # deg; 1e-4 for the parabola
    off_lon = (ours.apex_lon[0, 0] - lon[top] - 0.25 * step + 180.0) % 360.0 - 180.0
    assert abs(off_lon) < (2 * ABERRATION_DEG + 0.005) * swing  # deg; a parabola near the zenith

    # where it meets the horizon: a foot is a quarter turn from the top
    sinking = np.nonzero(alt * np.roll(alt, -1) < 0.0)[0]
    assert len(sinking) == 2
    feet = []
    for i in sinking:
        j = (i + 1) % len(alt)
        share = alt[i] / (alt[i] - alt[j])
        feet.append((az[i] + share * ((az[j] - az[i] + 180.0) % 360.0 - 180.0)) % 360.0)
    left, right = (float(foot[0, 0]) for foot in ours.feet_az)
    for foot in feet:
        off = min(abs((foot - mine + 180.0) % 360.0 - 180.0) for mine in (left, right))
        assert off < (2 * ABERRATION_DEG + 0.001) * swing  # deg; 0.001 for the straight line between points
    assert (right - left) % 360.0 == pytest.approx(180.0, abs=1e-9)
    # the top is on the feet's side where the plane is above the horizon: seen as a place, not as an azimuth that swings near the zenith
    top_alt_az = alt[top], az[top]
    assert apart_arcsec(ours.apex_deg[0, 0], ours.apex_az[0, 0], *top_alt_az) < 3600 * (
        0.13 + 3 * ABERRATION_DEG * swing
    )  # half a step of 0.25 deg

    # the slope of the plane at the core, from a chord of 0.02 deg
    before, _, after = unit_vectors(core_alt, core_az).T
    along = (after - before) * (1.0 if after[2] >= before[2] else -1.0)  # upward
    core = unit_vectors(core_alt[1], core_az[1])
    east = np.array([np.cos(np.radians(core_az[1])), -np.sin(np.radians(core_az[1])), 0.0])  # toward higher azimuth
    tilt = np.degrees(np.arctan2(abs(along @ np.cross(east, core)), abs(along @ east)))
    if abs(core_alt[1]) < 89.0:
        tolerance_deg = 2 * ABERRATION_DEG / np.cos(np.radians(core_alt[1]))  # of two directions a quarter turn apart
        record_property("tilt_astropy", 3600 * abs(ours.tilt_deg[0, 0] - tilt) * np.cos(np.radians(core_alt[1])))
        assert ours.tilt_deg[0, 0] == pytest.approx(tilt, abs=tolerance_deg + 1e-3)  # deg; 1e-3 for the chord
        if tolerance_deg < tilt < 90.0 - tolerance_deg:
            assert bool(ours.leans_left[0, 0]) == (along @ east < 0.0)
    assert (
        apart_arcsec(ours.core_true_deg[0, 0], ours.core_az_deg[0, 0], core_alt[1], core_az[1]) < 0.65
    )  # arcsec; astropy's system is 0.025" off


@pytest.mark.parametrize("row", rows("band_2027_36N_33W"), ids=lambda row: row["utc"])
def test_the_table_of_a_night(row):
    ours = band((-33.0, 36.0, 0.0), [np.datetime64(row["utc"][:-1]).astype(float)])
    assert ours.apex_deg[0, 0] == pytest.approx(float(row["apex_deg"]), abs=0.005 + ABERRATION_DEG)  # deg; print, aberration
    assert ours.tilt_deg[0, 0] == pytest.approx(float(row["tilt_deg"]), abs=0.005 + 2 * ABERRATION_DEG)
    assert ours.apex_lon[0, 0] == pytest.approx(float(row["apex_lon"]), abs=0.05 + 2 * ABERRATION_DEG)
    on_sky = (ours.apex_az[0, 0] - float(row["apex_az"])) * np.cos(np.radians(float(row["apex_deg"])))
    assert on_sky == pytest.approx(0.0, abs=0.01 + 2 * ABERRATION_DEG)


def test_the_rule_of_the_low_arch():
    """Common practice, no source: about the June solstice at 40 N, in the hour after dusk, the top bears 60 to 95, under 50 deg high."""
    for year in (2024, 2027, 2031):
        t_utc_s = np.datetime64(f"{year}-06-21T12:00:00").astype(float) + np.arange(0.0, 43200.0, 60.0)
        sun = horizontal.true_altitude(horizontal.Sites(0.0, 40.0, 0.0), TimeTable(t_utc_s, [bodies.SUN]), bodies.SUN)[0]
        dusk = t_utc_s[np.argmax(sun < -18.0)]
        ours = band((0.0, 40.0, 0.0), dusk + np.arange(0.0, 3601.0, 300.0))
        assert ((ours.apex_az > 60.0) & (ours.apex_az < 95.0)).all()
        assert (ours.apex_deg < 50.0).all()
        assert ours.leans_left.all()  # it rises from the core to the north: to the left of one who looks south


def test_the_rule_of_the_core_at_forty_north():
    """Common practice, no source: never above about 21 deg, and only between azimuth 129 and 231 while up."""
    t_utc_s = np.datetime64("2027-06-21T12:00:00").astype(float) + np.arange(0.0, 86400.0, 60.0)
    alt, az = horizontal.true_altaz(horizontal.Sites(0.0, 40.0, 0.0), TimeTable(t_utc_s, [bodies.CORE]), bodies.CORE)
    assert alt.max() == pytest.approx(90.0 - 40.0 - 28.936, abs=0.15)  # deg; by spherical astronomy; precession since 2000 is 0.02
    up = az[alt > 0.0]
    assert [up.min(), up.max()] == pytest.approx([129.0, 231.0], abs=0.5)


@pytest.mark.parametrize("lat_deg", [-60.0, -29.0, 0.0, 27.1, 45.0, 62.9, 90.0])
def test_by_skyfields_axes(lat_deg, record_property):
    """Tilt, top and feet from Skyfield's apparent places of the same three directions: no aberration to allow for."""
    t_utc_s = 1.8e9 + np.arange(0.0, 86400.0, 977.0)
    site = (77.0, lat_deg, 300.0)
    ours = band(site, t_utc_s)
    observer = Observer(*site, times(t_utc_s))
    core, y, pole = (observer.altaz(target(name))[:2] for name in ("core", "galactic_y", "galactic_pole"))
    tol_deg = 0.1 / 3600  # the promise for a place
    assert 90.0 - np.abs(pole[0]) == pytest.approx(ours.apex_deg[0], abs=tol_deg)
    lower_pole_az = np.where(pole[0] > 0, pole[1] + 180.0, pole[1])
    apart = ((lower_pole_az - ours.apex_az[0] + 180.0) % 360.0 - 180.0) * np.cos(np.radians(pole[0]))
    record_property("apex_skyfield", 3600 * max(np.abs(90.0 - np.abs(pole[0]) - ours.apex_deg[0]).max(), np.abs(apart).max()))
    assert np.abs(apart).max() < tol_deg
    with np.errstate(invalid="ignore"):
        tilt = np.degrees(np.arcsin(np.abs(np.sin(np.radians(y[0]))) / np.cos(np.radians(core[0]))))
    clear = np.isfinite(ours.tilt_deg[0]) & (tilt < 85.0)  # an arcsin loses its digits toward 90
    assert clear.sum() > 20
    # the two formulas differ by the aberration's breach of the right angle between the directions
    tolerance_deg = 2 * ABERRATION_DEG / np.cos(np.radians(core[0][clear])) / np.cos(np.radians(tilt[clear]))
    assert (np.abs(tilt - ours.tilt_deg[0])[clear] < tolerance_deg).all()


def test_no_tilt_with_the_core_in_the_zenith():
    alt = np.radians([80.0, 88.9, 89.1, 90.0])
    core = np.stack([np.cos(alt), np.zeros(4), np.sin(alt)])
    y = np.stack([np.zeros(4), np.ones(4), np.zeros(4)])
    pole = np.cross(core, y, axis=0)
    found = galactic.band(core, y, pole)
    assert np.isfinite(found.tilt_deg).tolist() == [True, True, False, False]
    assert found.tilt_deg[:2] == pytest.approx(0.0, abs=1e-9)


def test_the_three_axes_are_those_of_the_catalogue():
    iau = values("galactic_system")
    assert bodies.CORE.ra_deg == pytest.approx(iau["centre_ra_deg"], abs=1e-5)  # deg; as printed
    assert bodies.CORE.dec_deg == pytest.approx(iau["centre_dec_deg"], abs=1e-5)
    pole = bodies.GALACTIC_POLE
    assert [pole.ra_deg, pole.dec_deg] == pytest.approx([iau["north_pole_ra_deg"], iau["north_pole_dec_deg"]], abs=1e-9)
    node = bodies.on_galactic_plane(iau["node_longitude_deg"])
    assert [node.ra_deg, node.dec_deg] == pytest.approx([iau["north_pole_ra_deg"] + 90.0, 0.0], abs=1e-9)


def test_the_core_is_not_the_radio_source():
    """The documents promise 0.07 deg between l = b = 0 and Sgr A*."""
    iau = values("galactic_system")
    source = iau["sagittarius_a_star"]
    degrees, minutes, seconds = source["dec_dms"]
    dec_deg = -(abs(degrees) + minutes / 60 + seconds / 3600)
    apart_deg = apart_arcsec(dec_deg, hms_deg(source["ra_hms"]), bodies.CORE.dec_deg, bodies.CORE.ra_deg) / 3600
    assert apart_deg == pytest.approx(source["separation_from_centre_deg"], abs=1e-4)


@pytest.mark.parametrize("shape", [(), (4,), (2, 5)], ids=["scalar", "array", "sites by times"])
def test_shape_is_kept(shape):
    directions = [np.full((3, *shape), 0.1 * (k + 1)) for k in range(3)]
    found = galactic.band(*directions)
    for name in ("core_true_deg", "core_az_deg", "tilt_deg", "leans_left", "apex_deg", "apex_az", "apex_lon"):
        assert getattr(found, name).shape == shape, name
