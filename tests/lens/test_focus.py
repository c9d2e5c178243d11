"""Focus against a worked example in use, and against rays through a thin lens."""

import numpy as np
import pytest

from skyalidade.lens.focus import hyperfocal_m, sharp_limits_m, star_blur_mm

LENSES = [(14.0, 2.8), (24.0, 1.8), (50.0, 8.0), (135.0, 2.0)]


def blur_by_rays_mm(focal_mm, f_number, focus_m, dist_m):
    """Width on the sensor of the cone of light from a point, by the lens equation 1/f = 1/object + 1/image and similar triangles."""
    image_mm, sensor_mm = (1.0 / (1.0 / focal_mm - 1.0 / (1000.0 * far)) for far in (dist_m, focus_m))
    return focal_mm / f_number * abs(image_mm - sensor_mm) / image_mm


def test_worked_example_of_the_hyperfocal_distance():
    """50 mm at f/8 with a circle of 0.03 mm: 10.467 m, and from half of that on all is sharp (a common textbook example; from memory)."""
    assert hyperfocal_m(50.0, 8.0, 0.03) == pytest.approx(10.467, abs=0.0005)
    near, far = sharp_limits_m(50.0, 8.0, 0.03, hyperfocal_m(50.0, 8.0, 0.03))
    assert near == pytest.approx(10.467 / 2, abs=0.0005)
    assert np.isinf(far)


@pytest.mark.parametrize(("focal", "f_number"), LENSES)
def test_at_the_hyperfocal_distance_stars_are_blurred_to_the_circle(focal, f_number):
    focus = hyperfocal_m(focal, f_number, 0.03)
    assert star_blur_mm(focal, f_number, focus) == pytest.approx(0.03, rel=1e-9)
    assert blur_by_rays_mm(focal, f_number, focus, 1e9) == pytest.approx(0.03, rel=1e-6)


@pytest.mark.parametrize(("focal", "f_number"), LENSES)
@pytest.mark.parametrize("focus", [0.5, 3.0, 20.0, 400.0])
def test_blur_of_stars_by_rays(focal, f_number, focus):
    assert star_blur_mm(focal, f_number, focus) == pytest.approx(blur_by_rays_mm(focal, f_number, focus, 1e12), rel=1e-6)


@pytest.mark.parametrize(("focal", "f_number"), LENSES)
@pytest.mark.parametrize("focus", [0.5, 3.0, 20.0])
def test_limits_of_sharpness_by_rays(focal, f_number, focus):
    near, far = sharp_limits_m(focal, f_number, 0.03, focus)
    assert near < focus < far
    assert blur_by_rays_mm(focal, f_number, focus, near) == pytest.approx(0.03, rel=1e-9)
    if np.isfinite(far):
        assert blur_by_rays_mm(focal, f_number, focus, far) == pytest.approx(0.03, rel=1e-9)
    else:
        assert blur_by_rays_mm(focal, f_number, focus, 1e12) <= 0.03


def test_limits_by_the_short_formulas_of_the_trade():
    """H s / (H + s) and H s / (H - s), which leave out the focal length against the distance: common practice, no source."""
    hyperfocal, focus = hyperfocal_m(50.0, 8.0, 0.03), 4.0
    limits = hyperfocal * focus / (hyperfocal + focus), hyperfocal * focus / (hyperfocal - focus)
    assert sharp_limits_m(50.0, 8.0, 0.03, focus) == pytest.approx(limits, rel=0.05 / 4.0)  # focal length to distance


def test_no_lens_is_focused_within_its_focal_length():
    assert np.isnan(star_blur_mm(50.0, 2.8, [0.05, 0.03])).all()
    assert np.isnan(sharp_limits_m(50.0, 2.8, 0.03, 0.04)).all()


@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["scalar", "array", "two axes"])
def test_shape_is_kept(shape):
    focus = np.full(shape, 5.0)
    assert star_blur_mm(24.0, 2.8, focus).shape == shape
    assert [limit.shape for limit in sharp_limits_m(24.0, 2.8, 0.03, focus)] == [shape] * 2
