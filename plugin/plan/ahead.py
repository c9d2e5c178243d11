"""Blocks of work done in threads ahead of the one who takes their results: numpy lets the others run while it works on an array."""

import os
import threading
from collections import deque
from concurrent.futures import ThreadPoolExecutor, TimeoutError

THREADS = min(2, os.cpu_count() or 1)  # more of them wait for one another: between the arrays there is Python
ASK_S = 0.1  # how often it is asked whether to go on


def worked_ahead(work, blocks, go_on, threads=THREADS):
    """Results of blocks, in the order of the blocks.

    Parameters
    ----------
    work : callable
        Takes a block and a callable without arguments, which tells False once the work is to end; it may be called in several threads at
        once.
    blocks : iterable
    go_on : callable
        Takes a block; asked in the thread of the caller alone, several times a second while that block is waited for. False from it
        ends the work.
    threads : int
        With 1 the caller's own thread does all the work, and may ask from within it.

    Yields
    ------
    block, result
        Until `go_on` tells False.

    Raises
    ------
    Exception
        That of the first block whose work raised one.
    """
    if threads == 1:
        for block in blocks:
            if not go_on(block):
                return
            yield block, work(block, lambda block=block: go_on(block))
        return
    stop, blocks, waiting = threading.Event(), iter(blocks), deque()
    with ThreadPoolExecutor(threads) as pool:
        try:
            while True:
                while len(waiting) < threads + 1:  # one more than is worked on, so that no thread waits for the caller
                    block = next(blocks, None)
                    if block is None:
                        break
                    waiting.append((block, pool.submit(work, block, lambda: not stop.is_set())))
                if not waiting:
                    return
                block, future = waiting.popleft()
                if not go_on(block):
                    return
                while True:
                    try:
                        result = future.result(ASK_S)
                        break
                    except TimeoutError:
                        if future.done():
                            raise
                        if not go_on(block):
                            return
                yield block, result
        finally:
            stop.set()
            for _, future in waiting:
                future.cancel()
