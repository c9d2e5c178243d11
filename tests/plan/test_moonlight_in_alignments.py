"""`moon_mag` of alignments: brightening by Krisciunas and Schaefer at Skyfield's places, and where it is 0 or has no meaning."""

import numpy as np
import pytest
from skyfield_scan import Asked, Pair, SkyfieldTimes, by_skyfield
from test_alignments import of, solve

NIGHTS = "2027-05-15", "2027-06-15"
PAIR = Pair(-33.0, 36.0, 100.0, 180.0, 0.0, 2.0)
TWILIGHT = Asked(az_tolerance_deg=60.0, sun_limit_deg=-6.0)


@pytest.fixture(scope="module")
def table():
    return solve([PAIR], [of("core")], *NIGHTS, TWILIGHT)[0]


def by_hand(places):
    """The paper's formulas, written down once more; extinction 0.172, dark zenith 79 nL."""
    (core_alt, core_az), (moon_alt, moon_az) = (np.radians(places.altaz[name]) for name in ("core", "moon"))
    cosine = np.sin(core_alt) * np.sin(moon_alt) + np.cos(core_alt) * np.cos(moon_alt) * np.cos(core_az - moon_az)
    rho, phase = np.degrees(np.arccos(cosine)), np.degrees(np.arccos(2 * places.lit - 1))
    mass, moon_mass = ((1 - 0.96 * np.cos(alt) ** 2) ** -0.5 for alt in (core_alt, moon_alt))
    scatter = 10**5.36 * (1.06 + cosine**2) + np.where(rho < 10, 6.2e7 / rho**2, 10 ** (6.15 - rho / 40))
    light = 10 ** (-0.4 * (3.84 + 0.026 * phase + 4e-9 * phase**4))
    moonlight = scatter * light * 10 ** (-0.4 * 0.172 * moon_mass) * (1 - 10 ** (-0.4 * 0.172 * mass))
    return 2.5 * np.log10(1 + moonlight / (79 * 10 ** (-0.4 * 0.172 * (mass - 1)) * mass)), rho


def test_it_is_that_of_the_moon_at_skyfields_places(table):
    places = by_skyfield(PAIR, SkyfieldTimes(table["t_utc"]))
    added, rho = by_hand(places)
    up = np.array([side is not None for side in table["moon_side"]])
    lit = up & np.isfinite(table["moon_mag"])
    assert 5 < lit.sum() < len(up) - 5
    assert rho[lit].min() < 10.0 < rho[lit].max()  # with the Moon beside the core too
    # refraction lifts the core by up to 0.09 deg, which the paper leaves out
    assert table["moon_mag"][lit] == pytest.approx(added[lit], abs=0.03)


def test_it_is_nothing_with_the_moon_down(table):
    down = np.array([side is None for side in table["moon_side"]]) & (table["sun_deg"] <= -12.0)
    assert down.sum() > 5
    assert (table["moon_mag"][down] == 0.0).all()


def test_it_is_null_in_bright_twilight():
    table = solve([PAIR], [of("core")], "2027-01-01", "2027-12-31", TWILIGHT)[0]
    bright = table["sun_deg"] > -12.0
    assert 0 < bright.sum() < len(bright)
    assert (np.isnan(table["moon_mag"]) == bright).all()


@pytest.mark.parametrize("body", ["sun", "moon"])
def test_it_is_null_for_sun_and_moon_themselves(body):
    assert np.isnan(solve([PAIR], [of(body)], *NIGHTS, Asked(20.0))[0]["moon_mag"]).all()


def test_it_is_null_for_what_is_down():
    table = solve([PAIR], [of("core")], *NIGHTS, Asked(89.0, alt_min_deg=-60.0))[0]
    table_east = solve([Pair(-33.0, 36.0, 100.0, 110.0, 0.0, 2.0)], [of("core")], *NIGHTS, Asked(5.0, alt_min_deg=-60.0))[0]
    for one in (table, table_east):
        assert (np.isnan(one["moon_mag"]) == (one["alt_deg"] < 0.0)).all()
    assert (table_east["alt_deg"] < 0.0).all()
