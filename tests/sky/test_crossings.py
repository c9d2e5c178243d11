"""Crossings of planes fixed to a site: the hard cases, against places at sampled moments."""

import numpy as np
import pytest
from skyfield_places import DAY_S, Observer, target, times

from skyalidade.sky import bodies, crossings, horizontal
from skyalidade.sky.crossings import Motion
from skyalidade.sky.ephemeris import default_ephemeris
from skyalidade.sky.tables import TimeTable, tracks

FIRST, DAYS = np.datetime64("2027-06-01").astype("datetime64[s]").astype(float), 40
TOL_DEG = 0.2 / 3600  # on the sky: the promise for an end
TOL_S = 0.05  # of a crossing that is not slow: the solver's last step
BODIES = {"sun": bodies.SUN, "moon": bodies.MOON, "core": bodies.CORE, "galactic_pole": bodies.GALACTIC_POLE}
# Pole to pole, dense where the cosine of a turn is small: at the poles for altitudes, on the equator for bearings due east and west
LATITUDES = np.array(
    [
        90,
        89.999,
        89.9,
        89,
        85,
        71,
        66.5,
        61.064,
        47,
        28.936,
        23.4,
        10,
        0.5,
        0.01,
        0,
        -0.01,
        -0.5,
        -12,
        -28.936,
        -33,
        -62.87,
        -88,
        -89.99,
        -90.0,
    ]
)
LONGITUDES = np.linspace(-180.0, 180.0, len(LATITUDES))


@pytest.fixture(scope="module")
def sky():
    span = FIRST, FIRST + DAYS * DAY_S
    sites = horizontal.Sites(LONGITUDES, LATITUDES, np.linspace(0, 5000, len(LATITUDES)))
    made = tracks(BODIES.values(), *span)
    t_utc_s = np.random.default_rng(41).uniform(*span, 20000)
    table = TimeTable(t_utc_s, BODIES.values())
    low, high = (np.full(len(sites), moment) for moment in default_ephemeris().tt_from_utc(span))
    places = {name: horizontal.true_altaz(sites, table, body) for name, body in BODIES.items()}
    return sites, {name: Motion(body, made[body], sites) for name, body in BODIES.items()}, low, high, t_utc_s, places


def check(found, inside, margin_deg, t_utc_s):
    """Membership at the samples, but within the promise of an end."""
    tt_s = default_ephemeris().tt_from_utc(t_utc_s)
    rows = np.broadcast_to(np.arange(len(inside))[:, None], inside.shape)
    held = found.contains(rows.ravel(), np.broadcast_to(tt_s, inside.shape).ravel()).reshape(inside.shape)
    wrong = (held != inside) & (np.abs(margin_deg) > TOL_DEG)
    assert not wrong.any(), [(LATITUDES[row], t_utc_s[k], margin_deg[row, k]) for row, k in zip(*np.nonzero(wrong))][:3]


@pytest.mark.parametrize("alt_deg", [-18.0, -0.8333, 0.0, 10.0, 23.3, 40.0, 61.0, 88.5])
@pytest.mark.parametrize("name", BODIES)
def test_above_an_altitude(sky, name, alt_deg):
    sites, motions, low, high, t_utc_s, places = sky
    found = motions[name].arcs(crossings.above(sites, alt_deg), low, high)
    alt = places[name][0]
    check(found, alt >= alt_deg, alt - alt_deg, t_utc_s)


@pytest.mark.parametrize("name", BODIES)
def test_at_the_altitude_of_its_own_culmination(sky, name):
    """Limits of each site's own: the highest place of the body in the whole time, a hair less, and the lowest."""
    sites, motions, low, high, t_utc_s, places = sky
    alt = places[name][0]
    for limit in (alt.max(axis=1) - 0.003, alt.min(axis=1) + 0.003, np.median(alt, axis=1)):
        found = motions[name].arcs(crossings.above(sites, limit), low, high)
        check(found, alt >= limit[:, None], alt - limit[:, None], t_utc_s)


@pytest.mark.parametrize("bearing_deg", [0.0, 45.0, 89.9, 90.0, 90.1, 180.0, 269.99, 270.0, 359.0])
@pytest.mark.parametrize("name", BODIES)
def test_clockwise_of_a_bearing(sky, name, bearing_deg):
    sites, motions, low, high, t_utc_s, places = sky
    found = motions[name].arcs(crossings.clockwise_of(sites, bearing_deg), low, high)
    alt, az = places[name]
    east_of = np.sin(np.radians(az - bearing_deg)) * np.cos(np.radians(alt))
    check(found, east_of >= 0.0, np.degrees(east_of), t_utc_s)
    other = motions[name].arcs(crossings.counterclockwise_of(sites, bearing_deg), low, high)
    check(other, east_of <= 0.0, np.degrees(east_of), t_utc_s)


def test_the_moons_upper_limb(sky):
    sites, motions, low, high, t_utc_s, places = sky
    alt_deg = -34.0 / 60.0
    found = motions["moon"].arcs(crossings.limb_above(sites, alt_deg, bodies.MOON_RADIUS_KM), low, high)
    vector_km = horizontal.topocentric(sites, TimeTable(t_utc_s, [bodies.MOON]), bodies.MOON)
    semi_deg = np.degrees(np.arcsin(1737.4 / np.linalg.norm(vector_km, axis=0)))  # IAU working group on cartographic coordinates
    margin = places["moon"][0] + semi_deg - alt_deg
    check(found, margin >= 0.0, margin, t_utc_s)


def test_crossings_by_skyfield(sky):
    """The moments themselves, put into Skyfield: rises of the Moon and passes of the core over a bearing."""
    sites, motions, low, high, _, _ = sky
    ephemeris = default_ephemeris()
    for name, plane, value in (
        ("moon", crossings.above(sites, 12.0), lambda alt, az: alt - 12.0),
        (
            "core",
            crossings.clockwise_of(sites, 200.0),
            lambda alt, az: np.degrees(np.sin(np.radians(az - 200.0)) * np.cos(np.radians(alt))),
        ),
    ):
        found = motions[name].arcs(plane, low, high)
        inner = found.start > found.low[found.row]
        assert inner.sum() > 300
        for row in np.unique(found.row[inner]):
            t_utc_s = ephemeris.utc_from_tt(found.start[inner & (found.row == row)])
            alt, az, _ = Observer(sites.lon_deg[row], sites.lat_deg[row], sites.height_m[row], times(t_utc_s)).altaz(target(name))
            assert np.abs(value(alt, az)).max() < TOL_DEG, (name, sites.lat_deg[row])


def test_the_turn_of_the_sky_is_counted(sky):
    """Each rise is followed by another after a turn of the sky: no day is passed over in forty."""
    sites, motions, low, high, _, _ = sky
    found = motions["core"].arcs(crossings.above(sites, 10.0), low, high)
    for row in np.nonzero(np.abs(LATITUDES) < 40)[0]:
        start = found.start[found.row == row]
        assert len(start) in (DAYS, DAYS + 1)
        apart = np.diff(start[1:])
        assert apart == pytest.approx(86164.1, abs=TOL_S + 0.1)  # s; a sidereal day, and what nutation and aberration do in one
