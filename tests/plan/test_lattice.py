"""Moments of nights: every moment of the lattice is in or out as Skyfield alone says of it."""

import numpy as np
import pytest
import skyfield_places

from skyalidade.plan.alignments import Sites
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.lattice import heavens_of, moments_given, moments_of_nights, standing_at
from skyalidade.plan.nights import noons
from skyalidade.plan.targets import target

STEP_S = 900.0
SITES = Sites([-33.0, 12.0, 170.0], [36.0, 46.0, -44.0])
ZONES = ["UTC-02:00", "Europe/Rome", "Pacific/Auckland"]
FIRST, LAST = np.datetime64("2027-06-01"), np.datetime64("2027-06-08")
EDGE_DEG = 0.002  # a moment this near to a limit may fall to either side


def lattice(i):
    """All moments of the nights of a site."""
    noon, count = noons(SITES.lon_deg[i], ZONES, i, FIRST, LAST)
    first, last = float(noon), float(noon) + 86400.0 * int(count)
    return STEP_S * np.arange(np.ceil(first / STEP_S), np.ceil(last / STEP_S))


@pytest.mark.parametrize(
    ("body", "asked", "holds"),
    [
        ("core", {"pressure_hPa": 0.0}, lambda core, sun, moon: np.minimum(core - 10.0, -18.0 - sun)),
        (
            "core",
            {"pressure_hPa": 0.0, "moon": "down", "alt_max_deg": 22.0},
            lambda c, s, m: np.min([c - 10, -18 - s, 22 - c, -m], axis=0),
        ),
        ("moon", {"pressure_hPa": 0.0, "sun_min_deg": -8.0, "sun_limit_deg": 0.0}, lambda c, s, m: np.min([m, s + 8, -s], axis=0)),
        ("sun", {"pressure_hPa": 0.0}, lambda core, sun, moon: sun),
    ],
)
def test_moments_are_in_or_out_as_skyfield_says(body, asked, holds):
    found = moments_of_nights(SITES, ZONES, np.arange(3), FIRST, LAST, target(body), Conditions(**asked), STEP_S)
    assert np.all(found.t_utc_s % STEP_S == 0.0)
    assert np.all(np.diff(found.t_utc_s) > 0.0)
    for i in range(3):
        moments = lattice(i)
        observer = skyfield_places.Observer(SITES.lon_deg[i], SITES.lat_deg[i], 0.0, skyfield_places.times(moments))
        core, sun, (moon, _, moon_km) = (observer.altaz(skyfield_places.target(name)) for name in ("core", "sun", "moon"))
        moon_limit = moon + 34.0 / 60.0 + np.degrees(np.arcsin(1737.4 / moon_km)) if asked.get("moon") else moon
        margin = holds(core[0], sun[0], moon_limit)
        expected, doubtful = moments[margin >= 0.0], moments[np.abs(margin) < EDGE_DEG]
        mine = found.t_utc_s[found.asked[i]]
        assert expected.size > 0
        assert set(np.setxor1d(mine, expected)) <= set(doubtful)


def test_moments_given_that_would_fill_the_memory():
    """A million subjects in steps of a minute over twenty years would be 10 TB of yes and no."""
    with pytest.raises(ValueError, match=r"1.05e\+13 subjects and times would have to be looked at, over 50,000,000. Give a longer STEP,"):
        moments_given([60.0 * np.arange(10_500_000)], np.zeros(1_000_000, dtype=int))


def test_moments_given_belong_to_the_zones_of_their_sites():
    found = moments_given([np.array([100.0, 200.0]), np.array([200.0, 300.0]), np.array([900.0])], np.array([1, 0, 1]))
    assert found.t_utc_s.tolist() == [100.0, 200.0, 300.0]
    assert found.asked.tolist() == [[False, True, True], [True, True, False], [False, True, True]]


def test_standing_is_being_up_for_a_given_time():
    """The Sun counts until the last of its disc is gone, a fixed place until it sets; the arch as its core and top say."""
    moments = 1812240000.0 + 60.0 * np.arange(0, 1440, 7)
    for body in ("sun", "core", "arch"):
        heavens = heavens_of(target(body), moments.min(), moments.max())
        standing = standing_at(SITES, target(body), moments, Conditions(pressure_hPa=0.0), heavens)
        for i in range(3):
            observer = skyfield_places.Observer(SITES.lon_deg[i], SITES.lat_deg[i], 0.0, skyfield_places.times(moments))
            core, _, _ = observer.altaz(skyfield_places.target("core"))
            sun, _, sun_km = observer.altaz(skyfield_places.target("sun"))
            pole, _, _ = observer.altaz(skyfield_places.target("galactic_pole"))
            margin = {
                "sun": sun + np.degrees(np.arcsin(695700.0 / sun_km)),
                "core": core,
                "arch": np.minimum(core, 60.0 - (90.0 - np.abs(pole))),
            }[body]
            sure = np.abs(margin) > EDGE_DEG
            np.testing.assert_array_equal(standing.usable[i][sure], (margin >= 0.0)[sure])
            assert 0 < standing.usable[i].sum() < moments.size
