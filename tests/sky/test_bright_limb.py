"""The Moon's bright limb, against Meeus."""

import numpy as np
import pytest

from skyalidade.sky.moonlight import bright_limb_deg

POLE = np.array([0.0, 0.0, 1.0])


def direction(ra_deg, dec_deg):
    ra, dec = np.radians(ra_deg), np.radians(dec_deg)
    return np.array([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])


def test_meeus_example_48a():
    """1992 April 12, 0h TD: Moon 134.6885°, 13.7684°, Sun 20.6579°, 8.6964°: 285.0° (from memory; the formula below gives it)."""
    limb = bright_limb_deg(direction(134.6885, 13.7684), direction(20.6579, 8.6964), POLE)
    assert limb % 360.0 == pytest.approx(285.0, abs=0.05)  # deg: as printed


def test_by_the_spherical_triangle():
    """Meeus, formula 48.5, for places all over the sky."""
    rng = np.random.default_rng(4)
    (ra, ra_sun), (dec, dec_sun) = rng.uniform(0, 360, (2, 300)), np.degrees(np.arcsin(rng.uniform(-0.99, 0.99, (2, 300))))
    turn, d, s = np.radians(ra_sun - ra), np.radians(dec), np.radians(dec_sun)
    chi = np.degrees(np.arctan2(np.cos(s) * np.sin(turn), np.sin(s) * np.cos(d) - np.cos(s) * np.sin(d) * np.cos(turn)))
    ours = bright_limb_deg(direction(ra, dec), direction(ra_sun, dec_sun), POLE[:, None])
    assert np.abs((ours - chi + 180.0) % 360.0 - 180.0).max() < 1e-9
