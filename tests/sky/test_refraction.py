"""Refraction against its published values and against Bennett's formula as Skyfield carries it."""

import numpy as np
import pytest
from published import values
from skyfield import earthlib

from skyalidade.sky import refraction

PUBLISHED = values("refraction")
FUNCTIONS = [refraction.refraction_saemundsson86, refraction.apparent_altitude, refraction.true_altitude_of_apparent]
AIRS = [(1010.0, 10.0), (1050.0, -40.0), (470.0, -20.0), (300.0, 40.0)]  # hPa, deg C: sea level, a Siberian winter, 6000 m, beyond use


@pytest.mark.parametrize(("true_deg", "arcmin"), PUBLISHED["true_altitude_deg_to_refraction_arcmin"])
def test_published_lift_of_a_true_altitude(true_deg, arcmin):
    assert refraction.refraction_saemundsson86(true_deg) * 60 == pytest.approx(arcmin, abs=0.05)  # arcmin; printed to 0.1


@pytest.mark.parametrize(("apparent_deg", "arcmin"), PUBLISHED["apparent_altitude_deg_to_refraction_arcmin"])
def test_published_refraction_at_an_apparent_altitude(apparent_deg, arcmin):
    lift_deg = apparent_deg - refraction.true_altitude_of_apparent(apparent_deg)
    assert lift_deg * 60 == pytest.approx(arcmin, abs=0.25)  # arcmin; the formulas are inverse to each other to 0.2'


def test_the_worked_example_of_nrel():
    spa = values("nrel_spa_2008")
    lift_deg = refraction.refraction_saemundsson86(39.872046, spa["pressure_hPa"], spa["temperature_C"])
    assert 90.0 - 39.872046 - lift_deg == pytest.approx(spa["zenith_deg"], abs=5e-6)  # deg; as printed


@pytest.mark.parametrize(
    ("pressure_hPa", "temperature_C", "lowest_deg", "tol_arcmin"),
    [
        (1010.0, 10.0, 0.0, 0.5),  # the difference that the documents admit at the horizon ...
        (1010.0, 10.0, 5.0, 0.1),  # ... and above 5 deg
        (
            470.0,
            -20.0,
            0.0,
            1.2,
        ),  # thin air scales one at the true, the other at the seen altitude
        (470.0, -20.0, 5.0, 0.1),
    ],
)
def test_near_bennett(pressure_hPa, temperature_C, lowest_deg, tol_arcmin, record_property):
    alt_deg = np.linspace(lowest_deg, 89.0, 500)
    theirs = earthlib.refract(alt_deg, temperature_C, pressure_hPa) - alt_deg
    off = np.abs(refraction.refraction_saemundsson86(alt_deg, pressure_hPa, temperature_C) - theirs).max() * 60
    record_property(f"bennett_{pressure_hPa:.0f}_{lowest_deg:.0f}", off)
    assert off < tol_arcmin


@pytest.mark.parametrize(("pressure_hPa", "temperature_C"), AIRS)
def test_there_and_back(pressure_hPa, temperature_C):
    true_deg = np.concatenate([np.linspace(-90.0, 90.0, 20001), [-5.0, -1.0, 0.0]])
    seen_deg = refraction.apparent_altitude(true_deg, pressure_hPa, temperature_C)
    back_deg = refraction.true_altitude_of_apparent(seen_deg, pressure_hPa, temperature_C)
    assert np.abs(back_deg - true_deg).max() < 1e-8  # deg; a limit set as apparent is solved as true, at 0.2" = 6e-5 deg


@pytest.mark.parametrize(("pressure_hPa", "temperature_C"), AIRS)
def test_what_stands_higher_is_seen_higher(pressure_hPa, temperature_C):
    seen_deg = refraction.apparent_altitude(np.linspace(-90.0, 90.0, 100001), pressure_hPa, temperature_C)
    assert (np.diff(seen_deg) > 0).all()


def test_never_negative_and_falling_with_altitude():
    lift = refraction.refraction_saemundsson86(np.linspace(-1, 90, 1000))
    assert (lift >= 0).all()
    assert (np.diff(lift) <= 0).all()


def test_fades_evenly_between_one_and_five_degrees_below():
    full = refraction.refraction_saemundsson86(-1.0)
    assert full * 60 == pytest.approx(1.02 / np.tan(np.radians(-1 + 10.3 / 4.11)), abs=1e-9)  # arcmin; Saemundsson 1986
    below = refraction.refraction_saemundsson86(np.array([-2.0, -3.0, -4.0, -5.0, -6.0, -18.0, -90.0]))
    assert below / full == pytest.approx([0.75, 0.5, 0.25, 0.0, 0.0, 0.0, 0.0], abs=1e-12)


def test_grows_with_pressure_and_falls_with_warmth():
    standard = refraction.refraction_saemundsson86(7.0)
    assert refraction.refraction_saemundsson86(7.0, pressure_hPa=505.0) == pytest.approx(standard / 2)
    assert refraction.refraction_saemundsson86(7.0, temperature_C=293.0) == pytest.approx(standard / 2)  # twice 283 K
    assert refraction.refraction_saemundsson86(np.linspace(-90, 90, 181), pressure_hPa=0.0) == pytest.approx(0.0, abs=0.0)


def test_standard_air_at_heights():
    """The published table starts from 1013.25 hPa, the refraction formula's standard air from 1010."""
    height_m, pressure_hPa = np.transpose(PUBLISHED["standard_atmosphere"]["height_m_to_pressure_hPa"])
    ours = refraction.standard_pressure(height_m) / 1010.0 * 1013.25
    assert ours == pytest.approx(pressure_hPa, rel=1e-3)  # geometric against geopotential height: 0.08 % at 6000 m
    assert refraction.standard_pressure(0.0) == pytest.approx(1010.0)


@pytest.mark.parametrize(
    "function", [refraction.refraction_saemundsson86, refraction.apparent_altitude, refraction.true_altitude_of_apparent]
)
@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["scalar", "array", "sites by times"])
def test_shape_is_kept(function, shape):
    assert np.shape(function(np.full(shape, 5.0))) == shape


@pytest.mark.parametrize(
    "function", [refraction.refraction_saemundsson86, refraction.apparent_altitude, refraction.true_altitude_of_apparent]
)
def test_air_of_each_site_is_broadcast(function):
    both = function(np.array([[5.0, 6.0, 7.0], [5.0, 6.0, 7.0]]), np.array([[1010.0], [500.0]]), 10.0)
    assert both[1] == pytest.approx(function(np.array([5.0, 6.0, 7.0]), 500.0, 10.0), abs=1e-12)
    assert (both[0] != both[1]).all()
