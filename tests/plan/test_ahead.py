"""Work done ahead in threads: the same results in the same order as without, and an end when it is asked for."""

import threading
import time

import numpy as np
import pytest

from skyalidade.plan import ahead, night_windows
from skyalidade.plan.ahead import worked_ahead
from skyalidade.plan.conditions import DOWN, Conditions
from skyalidade.plan.targets import target

PATIENCE_S = 300.0  # only work that hangs takes as long
BOTH = pytest.mark.parametrize("threads", [1, 2, 3])


def always(_block):
    return True


@BOTH
def test_results_come_in_the_order_of_the_blocks(threads):
    def work(block, _go_on):
        time.sleep(0.002 * (block % 3))  # later ones are ready first
        return block * block

    assert list(worked_ahead(work, range(20), always, threads)) == [(n, n * n) for n in range(20)]


@BOTH
def test_nothing_to_do(threads):
    assert list(worked_ahead(None, [], always, threads)) == []


@BOTH
def test_what_a_block_raises_is_raised_in_its_turn(threads):
    def work(block, _go_on):
        if block == 2:
            raise TimeoutError("block 2")
        return block

    results = worked_ahead(work, range(9), always, threads)
    assert [next(results), next(results)] == [(0, 0), (1, 1)]
    with pytest.raises(TimeoutError, match="block 2"):
        next(results)


@BOTH
def test_false_ends_the_work_in_hand(threads):
    """Work that would never end by itself; the caller is asked often enough for a cancel to be obeyed within a second."""
    seen, started = [], threading.Event()

    def work(block, go_on):
        started.set()
        end_s = time.monotonic() + PATIENCE_S
        while go_on():
            assert time.monotonic() < end_s, "the work in hand was not told"
            time.sleep(0.01)
        seen.append(block)

    def go_on(_block):
        return not started.is_set()

    assert len(list(worked_ahead(work, range(50), go_on, threads))) <= 1  # by one thread the block in hand is given back
    assert 1 <= len(seen) <= threads + 1, "the work in hand was told, and at most what stood next begun"
    assert ahead.ASK_S <= 0.5


@pytest.mark.parametrize("threads", [2, 3])
def test_a_caller_who_takes_no_more_leaves_no_thread_behind(threads):
    before = set(threading.enumerate())
    results = worked_ahead(lambda block, go_on: block, range(1000), always, threads)
    assert next(results) == (0, 0)
    results.close()
    assert set(threading.enumerate()) <= before  # others may end meanwhile


@pytest.mark.parametrize("threads", [2, 3])
def test_only_the_callers_thread_is_asked(threads):
    askers = set()

    def go_on(_block):
        askers.add(threading.current_thread())
        return True

    assert len(list(worked_ahead(lambda block, go_on: go_on(), range(30), go_on, threads))) == 30
    assert askers == {threading.current_thread()}


def test_night_windows_are_the_same_in_any_number_of_threads(monkeypatch):
    rng = np.random.default_rng(8)
    lon_deg, lat_deg = rng.uniform(-180, 180, 30), rng.uniform(-70, 70, 30)
    places = night_windows.Places(lon_deg, lat_deg, np.zeros(30), ["UTC"], np.zeros(30, int))
    monkeypatch.setattr(night_windows, "BLOCK_CELLS", 600)  # many small blocks

    def tables(threads):
        asked = (places, target("core"), "2027-05-01", "2027-06-30", Conditions(moon=DOWN))
        found = list(night_windows.find_night_windows(*asked, threads=threads))
        assert len(found) > 10
        return [{name: np.concatenate([pair[k][name] for pair in found]) for name in found[0][k]} for k in (0, 1)]

    for alone, together in zip(tables(1), tables(3)):
        assert alone.keys() == together.keys()
        for name, column in alone.items():
            np.testing.assert_array_equal(column, together[name], err_msg=name)
