"""Panoramas: steps by the rules in use, and no place of the view left out, by PROJ's gnomonic projection."""

import numpy as np
import pytest
from gnomonic import picture
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.internal.conjecture import providers

from skyalidade.lens.frame import Frame
from skyalidade.lens.panorama import mosaic

providers._get_local_constants = providers.Constants  # numbers that it reads in modules loaded so far differ from run to run

FULL = (36.0, 24.0, 6000)


def one(frame, left, width, low, high, overlap):
    return mosaic(frame, [left], [width], [low], [high], overlap)


def held(frame, heads_az, heads_alt, az, alt):
    """Whether each place is in some frame."""
    inside = np.zeros(az.shape, dtype=bool)
    for head in zip(heads_az, heads_alt):
        x, y = picture(az, alt, *head)
        inside |= (np.abs(x) <= frame.half_width * (1 + 1e-9)) & (np.abs(y) <= frame.half_height * (1 + 1e-9))
    return inside


def places(left, width, low, high, count=25):
    az, alt = np.meshgrid(left + width * np.linspace(0, 1, count), low + (high - low) * np.linspace(0, 1, count))
    return az.ravel() % 360.0, np.clip(alt.ravel(), -89.9999, 89.9999)


@pytest.mark.parametrize(("focal", "overlap", "frames"), [(24.0, 0.3, 10), (24.0, 0.5, 14), (35.0, 0.3, 14), (50.0, 0.3, 20)])
def test_a_level_round_held_upright(focal, overlap, frames):
    """Step = field x (1 - overlap), common practice: 53.1, 37.8 and 27.0 deg across, an upright frame on the level horizon."""
    view = one(Frame(focal, *FULL).upright, 0.0, 360.0, -5.0, 5.0, overlap)
    assert view.frames.tolist() == [frames] == [np.ceil(360.0 / (2 * np.degrees(np.arctan(12.0 / focal)) * (1 - overlap)))]


def test_rows_at_an_altitude_step_by_step_over_cosine():
    """Common practice, no source: a row at 60° needs half the frames; a long lens has no use for what the rule forgets."""
    frame = Frame(300.0, *FULL)
    level, high = (one(frame, 0.0, 120.0, middle - 0.5, middle + 0.5, 0.3).frames[0] for middle in (0.0, 60.0))
    assert high == pytest.approx(level / 2.0, abs=1.0)


def test_heads_run_upward_and_from_left_to_right():
    frame = Frame(50.0, *FULL)
    view, row, column, az, alt = one(frame, 350.0, 60.0, 0.0, 30.0, 0.3).heads()
    assert view.tolist() == [0] * len(az)
    assert row.tolist() == sorted(row)
    assert alt.tolist() == sorted(alt)
    for number in set(row):
        turned = (az[row == number] - 350.0) % 360.0
        assert column[row == number].tolist() == list(range(1, turned.size + 1))
        assert turned.tolist() == sorted(turned)
        assert np.diff(turned) == pytest.approx(turned[0] * 2)  # even steps, half a one at the side
    assert ((az >= 0.0) & (az < 360.0)).all()


def test_several_views_at_once_are_those_one_by_one():
    frame = Frame(24.0, *FULL)
    views = np.array([[10.0, 100.0, 0.0, 20.0], [300.0, 0.0, 5.0, 5.0], [0.0, 360.0, -10.0, 90.0]])
    together = mosaic(frame, *views.T, 0.3)
    for i, view in enumerate(views):
        alone = one(frame, *view, 0.3)
        assert together.frames[i] == alone.frames[0]
        mine = together.heads()[0] == i
        assert together.heads()[3][mine].tolist() == alone.heads()[3].tolist()
        assert together.heads()[4][mine].tolist() == alone.heads()[4].tolist()


def test_a_point_takes_one_frame_aimed_at_it():
    view, row, column, az, alt = one(Frame(24.0, *FULL), 123.0, 0.0, 7.0, 7.0, 0.3).heads()
    assert (view.tolist(), row.tolist(), column.tolist(), az.tolist(), alt.tolist()) == ([0], [1], [1], [123.0], [7.0])


@settings(max_examples=150, deadline=None, derandomize=True, database=None)
@given(
    focal=st.sampled_from([8.0, 10.0, 14.0, 20.0, 24.0, 35.0, 50.0]),
    portrait=st.booleans(),
    left=st.floats(0.0, 360.0),
    width=st.floats(0.0, 360.0),
    low=st.floats(-40.0, 80.0),
    height=st.floats(0.0, 90.0),
    overlap=st.floats(0.1, 0.6),
)
def test_no_place_of_the_view_is_left_out(focal, portrait, left, width, low, height, overlap):
    frame = Frame(focal, *FULL)
    frame = frame.upright if portrait else frame
    high = min(low + height, 90.0)
    _, _, _, az, alt = one(frame, left, width, low, high, overlap).heads()
    assert held(frame, az, alt, *places(left, width, low, high)).all()


def test_the_bare_rule_would_leave_gaps():
    """14 mm held level in two rows up to 75°: by step / cos h alone the lower corners of the upper row would not meet."""
    frame, left, width, low, high = Frame(12.0, *FULL).upright, 0.0, 190.0, 12.6, 84.8
    step = frame.fov_w_deg * 0.9 / np.cos(np.radians((low + high) / 2.0))
    count = int(np.ceil(width / step))
    heads_az = left + (np.arange(count) + 0.5) * width / count
    by_rule = held(frame, heads_az, np.full(count, (low + high) / 2.0), *places(left, width, low, high))
    assert not by_rule.all()
    _, _, _, az, alt = one(frame, left, width, low, high, 0.1).heads()
    assert held(frame, az, alt, *places(left, width, low, high)).all()
