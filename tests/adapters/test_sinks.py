"""What writing rows leaves as it was."""

import gc

import pytest

from skyalidade.adapters.sinks import uncollected


def fail():
    with uncollected():
        assert not gc.isenabled()
        raise ValueError("full")


@pytest.mark.parametrize("searching", [True, False])
def test_the_search_for_cycles_is_afterwards_as_it_was(searching):
    before = gc.isenabled()
    (gc.enable if searching else gc.disable)()
    try:
        with pytest.raises(ValueError, match="full"):
            fail()
        assert gc.isenabled() is searching
    finally:
        (gc.enable if before else gc.disable)()
