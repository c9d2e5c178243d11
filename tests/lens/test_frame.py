"""Fields of view against tables in use, and what a frame holds against PROJ's gnomonic projection."""

import numpy as np
import pytest
from gnomonic import directions_in_picture, picture

from skyalidade.lens.frame import SENSORS, Frame
from skyalidade.lens.projection import directions, extent, in_camera

# Angles of view on 24 x 36 mm as handbooks of photography print them, to 0.1 deg (S. F. Ray, Applied Photographic Optics; from memory):
# focal length, across, bottom to top, corner to corner
HANDBOOK = [(14, 104.3, 81.2, 114.2), (24, 73.7, 53.1, 84.1), (35, 54.4, 37.8, 63.4), (50, 39.6, 27.0, 46.8), (200, 10.3, 6.9, 12.3)]
FULL = (36.0, 24.0, 6000)


@pytest.mark.parametrize(("focal", "across", "upward", "diagonal"), HANDBOOK)
def test_angles_of_view_of_the_handbook(focal, across, upward, diagonal):
    frame = Frame(focal, *FULL)
    assert (frame.fov_w_deg, frame.fov_h_deg) == pytest.approx((across, upward), abs=0.06)  # printed to 0.1 deg
    assert (frame.upright.fov_w_deg, frame.upright.fov_h_deg) == pytest.approx((upward, across), abs=0.06)
    assert diagonal == pytest.approx(np.degrees(2 * np.arctan(np.hypot(frame.half_width, frame.half_height))), abs=0.06)


@pytest.mark.parametrize(("focal", "across", "upward", "diagonal"), HANDBOOK)
def test_the_same_angles_between_the_directions_of_a_frame_s_edges(focal, across, upward, diagonal):
    """An independent way: the angle between vectors from the lens to the edges of the sensor."""
    for sensor, angle in ((36.0, across), (24.0, upward), (np.hypot(36.0, 24.0), diagonal)):
        one, other = np.array([sensor / 2, focal]), np.array([-sensor / 2, focal])
        assert angle == pytest.approx(np.degrees(np.arccos(one @ other / (one @ one))), abs=0.06)


def test_sensors_in_use():
    assert {name: round(Frame(50.0, *sensor).crop, 2) for name, sensor in SENSORS.items()} == {
        "full_frame": 1.0,
        "crop_1_5": 1.5,
        "four_thirds": 2.0,
        "medium": 0.79,  # the crop factors by which these sizes are known, common practice
    }


def test_pixels_are_square():
    frame = Frame(24.0, *FULL)
    assert (frame.pixels_h, frame.upright.pixels_w, frame.upright.pixels_h) == (4000.0, 4000.0, 6000.0)
    assert frame.pixel_mm == frame.upright.pixel_mm == 0.006
    assert frame.focal_px == 4000.0


@pytest.mark.parametrize("aim", [(200.0, 0.0), (200.0, 25.0), (350.0, -15.0), (80.0, 70.0)], ids=["level", "tilted", "down", "steep"])
@pytest.mark.parametrize("portrait", [False, True], ids=["landscape", "portrait"])
@pytest.mark.parametrize("margin", [0.0, 0.1])
def test_what_a_frame_holds_by_gnomonic_projection(aim, portrait, margin):
    frame = Frame(20.0, *FULL)
    frame = frame.upright if portrait else frame
    rng = np.random.default_rng(7)
    az, alt = rng.uniform(0.0, 360.0, 20000), np.degrees(np.arcsin(rng.uniform(-1.0, 1.0, 20000)))
    width, height = (24.0, 36.0) if portrait else (36.0, 24.0)
    x, y = picture(az, alt, *aim) * 20.0 / np.array([[width], [height]])  # parts of the frame, from its middle
    inside = (np.abs(x) <= 0.5 - margin) & (np.abs(y) <= 0.5 - margin)
    holds = frame.holds(extent(in_camera(directions(az, alt), *aim)), margin)
    edge = np.minimum(np.abs(np.abs(x) - 0.5 + margin), np.abs(np.abs(y) - 0.5 + margin)) < 1e-9
    assert inside.sum() > 200
    assert (holds == inside)[~edge].all()


def test_a_box_of_small_angles_would_be_wrong():
    """A body 34° to the side and 34° up lies outside a level frame that takes in 37° to the side and 37° up."""
    frame = Frame(24.0, 36.0, 36.0, 6000)
    seen = extent(in_camera(directions(34.0, 34.0), 0.0, 0.0))
    assert frame.fov_w_deg / 2 == pytest.approx(36.87, abs=0.01)
    assert seen.high == pytest.approx(np.tan(np.radians(34.0)) / np.cos(np.radians(34.0)))  # the picture of an almucantar is a hyperbola
    assert not frame.holds(seen)


def test_the_longest_focal_length_just_holds():
    seen = extent(in_camera(directions([-20.0, 5.0, 0.0], [30.0, -8.0, 3.0]), 0.0, 5.0), [0.0, 0.25, 0.0])
    for margin in (0.0, 0.05):
        longest = Frame(24.0, *FULL).longest_focal_mm(seen, margin)
        for i, focal in enumerate(longest):
            one = type(seen)(*(side[i] for side in seen))
            assert Frame(focal * 0.999, *FULL).holds(one, margin)
            assert not Frame(focal * 1.001, *FULL).holds(one, margin)


def test_no_focal_length_holds_what_is_behind():
    assert np.isnan(Frame(24.0, *FULL).longest_focal_mm(extent(in_camera(directions(180.0, 0.0), 0.0, 0.0))))


@pytest.mark.parametrize("aim_alt", [-60.0, -20.0, 0.0, 15.0, 26.0, 40.0, 80.0])
def test_sides_on_the_horizon_by_gnomonic_projection(aim_alt):
    """Along the sides of the frame, the azimuth of the place nearest to the horizon."""
    frame = Frame(24.0, *FULL)
    up = np.linspace(-frame.half_height, frame.half_height, 200001)
    az, alt = directions_in_picture(np.full_like(up, frame.half_width), up, 100.0, aim_alt)
    nearest = np.abs(alt).argmin() if alt.min() <= 0 <= alt.max() else (0 if aim_alt > 0 else -1)
    assert frame.half_azimuth_deg(aim_alt) == pytest.approx(az[nearest] - 100.0, abs=1e-3)  # deg: the places lie 5e-6 apart


@pytest.mark.parametrize("bad", [0.0, -24.0, np.nan, np.inf])
@pytest.mark.parametrize("which", range(4))
def test_a_frame_of_nothing_is_refused(bad, which):
    values = [24.0, 36.0, 24.0, 6000.0]
    values[which] = bad
    with pytest.raises(ValueError, match="greater than 0"):
        Frame(*values)
