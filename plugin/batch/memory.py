"""How much of its memory a worker may fill with ground."""

import math

import psutil
from distributed import get_worker

SHARE = 0.5  # of what is free, as in the algorithms


def room_bytes():
    """What the ground of one block may take here: half of what is free, or of a worker's own limit, divided among its threads."""
    free = psutil.virtual_memory().available
    try:
        worker = get_worker()
    except ValueError:  # not on one
        return SHARE * free
    limit = worker.memory_manager.memory_limit or math.inf  # it is ended by its own nanny beyond
    return SHARE * min(free, limit / worker.state.nthreads)
