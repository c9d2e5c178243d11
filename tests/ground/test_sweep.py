"""Rows that numpy sees at once are those that were asked for."""

import numpy as np
import pytest

from skyalidade.ground.sweep import stretches, view


@pytest.mark.parametrize("slope", [0.0, 0.1, -0.37, 0.5, 0.83, -1.0, 1.04])
def test_stretches_step_evenly_and_leave_nothing_out(slope):
    cols = np.floor(7.3 + slope * np.arange(40)).astype(int).tolist()
    rows = np.arange(90, 50, -1).tolist()
    found = stretches(rows, cols)
    assert [first for first, *_ in found] == [0, *(last for _, last, *_ in found[:-1])]
    assert found[-1][1] == 40
    for first, last, down, step in found:
        assert abs(step) <= 1
        assert rows[first:last] == [rows[first] + i * down for i in range(last - first)]
        assert cols[first:last] == [cols[first] + i * step for i in range(last - first)]
    assert len(found) < 40 or abs(slope) > 1.0


def test_stretches_of_rows_apart():
    assert stretches([9, 6, 3, 2, 1], [4, 5, 6, 7, 8]) == [(0, 3, -3, 1), (3, 5, -1, 1)]
    assert stretches([9], [4]) == [(0, 1, 0, 0)]
    assert stretches([], []) == []


@pytest.mark.parametrize("step", [(1, 0), (-1, 0), (-1, 1), (-1, -1), (-3, 1), (2, -1)])
def test_view(step):
    array = np.arange(600, dtype=np.float32).reshape(20, 30)
    seen = view(array, 10, 8, (4, 15), step)
    assert (seen == [array[10 + i * step[0], 8 + i * step[1] : 23 + i * step[1]] for i in range(4)]).all()


def test_a_view_beyond_the_array_is_refused():
    with pytest.raises((ValueError, TypeError)):
        view(np.zeros((20, 30), dtype=np.float32), 17, 8, (4, 25), (1, 0))
