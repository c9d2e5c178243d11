"""Angles subtended, against the rules of the trade and trigonometry."""

import numpy as np
import pytest

from skyalidade.lens.angular_size import angular_height_deg, angular_width_deg, distance_of_width_m


def test_ten_metres_at_eleven_hundred_are_as_wide_as_the_moon():
    """Common practice, no source: 0.53 deg wide, a 10 m subject at about 1.1 km."""
    assert angular_width_deg(10.0, 1100.0) == pytest.approx(0.53, abs=0.02)


def test_a_step_across_the_sightline():
    """Common practice, no source: 57.3 x step / distance, 2 m at 20 m 5.7 deg."""
    assert angular_width_deg(2.0, 20.0) == pytest.approx(5.7, abs=0.05)


@pytest.mark.parametrize(
    ("width_m", "dist_m", "expected_deg"), [(2.0, 1.0, 90.0), (2.0, np.sqrt(3.0), 60.0), (0.0, 5.0, 0.0), (2.0, 0.0, 180.0)]
)
def test_triangles(width_m, dist_m, expected_deg):
    assert angular_width_deg(width_m, dist_m) == pytest.approx(expected_deg, abs=1e-12)


def test_height_is_top_less_foot():
    assert angular_height_deg([-1.0, 5.0], [2.0, 5.0]).tolist() == [3.0, 0.0]


@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["scalar", "array", "sites by subjects"])
def test_shape_is_kept(shape):
    assert angular_width_deg(np.full(shape, 3.0), 100.0).shape == shape


def test_unknown_width_stays_unknown():
    assert np.isnan(angular_width_deg(np.nan, 100.0))


def test_the_moon_is_as_wide_as_ten_metres_at_eleven_hundred():
    """Common practice, no source; and the way back."""
    assert distance_of_width_m(10.0, 0.53) == pytest.approx(1100.0, rel=0.02)
    assert angular_width_deg(10.0, distance_of_width_m(10.0, 0.53)) == pytest.approx(0.53, abs=1e-12)
