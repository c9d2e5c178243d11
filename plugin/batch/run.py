"""A run: blocks go to the workers, a few for each at a time; those that fail are tried again and named."""

import contextlib
import math
import queue
import time
from dataclasses import dataclass, field

from distributed.comm import CommClosedError

from .partitions import path_of, remove_torn
from .progress import Progress, tell
from .version import version
from .work import work

BLOCKS_A_THREAD = 3  # handed out at a time: one at work, and others at hand when it is done
LOOK_S = 5.0  # between looks at the workers


@dataclass
class Outcome:
    """What came of a run."""

    partitions: int
    resumed: int
    rows: dict = field(default_factory=dict)
    failed: dict = field(default_factory=dict)  # number of the partition -> why
    seconds: float = 0.0
    busy_s: float = 0.0  # of all workers together, over their blocks, by the clock
    processor_s: float = 0.0  # the same, of their processors


def run(client, job, blocks, folder, interruption, tries=3):
    """Work out all blocks that are not done yet.

    Parameters
    ----------
    client : distributed.Client
    job : Nights, Alignments or Exposure
    blocks : object with `__len__` and `take`
    folder : Path
    interruption : Interruption
    tries : int
        How often a block is tried before it is given up.

    Returns
    -------
    Outcome

    Raises
    ------
    ValueError
        With a sentence, where the scheduler is lost.
    KeyboardInterrupt
        Between two blocks, where Ctrl+C was pressed.
    """
    remove_torn(folder)
    waiting = [number for number in range(len(blocks)) if not path_of(folder, job.outputs[0], number, job.ending).exists()]
    outcome = Outcome(len(blocks), len(blocks) - len(waiting), dict.fromkeys(job.outputs, 0))
    if outcome.resumed:
        tell(f"Going on: {outcome.resumed:,} of {outcome.partitions:,} partitions are there already.")
    _Turns(client, job, blocks, folder, interruption, tries, waiting[::-1], outcome).go()
    return outcome


class _Turns:
    """The blocks that wait, those that are out, and what comes back."""

    def __init__(self, client, job, blocks, folder, interruption, tries, waiting, outcome):
        self._client, self._job, self._blocks, self._folder = client, job, blocks, str(folder)
        self._tries, self._waiting, self._outcome = tries, waiting, outcome
        self._out, self._tried, self._back = {}, {}, queue.SimpleQueue()
        self._interruption, interruption.wake = interruption, lambda: self._back.put((None, None))
        self._progress = Progress(outcome.resumed, outcome.partitions, job.counted)
        self._workers, self._placed, self._threads, self._looked_s = [], {}, 1, -math.inf

    def go(self):
        """Until nothing waits and nothing is out."""
        try:
            self._look()
            self._hand_out()
            while self._out:
                with contextlib.suppress(queue.Empty):
                    returned = self._back.get(timeout=LOOK_S)
                    self._interruption.obey()
                    self._take_back(returned)
                self._look()
                self._hand_out()
        except CommClosedError:
            self._lost()
        self._outcome.seconds = self._progress.seconds

    def _hand_out(self):
        if not self._waiting:
            return
        room = BLOCKS_A_THREAD * self._threads - len(self._out)
        for _ in range(min(room, len(self._waiting))):
            number = self._waiting.pop()
            self._tried[number] = self._tried.get(number, 0) + 1
            name = f"{self._job.outputs[0]}-{number:06d}-try-{self._tried[number]}"
            asked = (self._job, self._blocks.take(number), number, self._folder, version())
            future = self._client.submit(work, *asked, key=name, pure=False, **self._place(number))
            self._out[number] = future
            future.add_done_callback(lambda done, number=number: self._back.put((number, done)))

    def _place(self, number):
        """The first try of a block goes where Dask likes; each other one to the next worker, as one may be at fault."""
        if self._tried[number] == 1 or not self._workers:
            return {}
        self._placed[number] = self._workers[(number + self._tried[number]) % len(self._workers)]
        return {"workers": [self._placed[number]]}

    def _take_back(self, returned):
        number, future = returned
        if self._out.get(number) is not future:
            return
        self._forget(number)
        if future.status == "finished":
            done = future.result()
            for name, rows in done.rows.items():
                self._outcome.rows[name] += rows
            self._outcome.busy_s += done.seconds
            self._outcome.processor_s += done.processor_s
            self._progress.add(done.rows[self._job.outputs[0]])
            return
        if future.status != "error":
            self._lost()
        self._failed(number, _reason(future.exception()))

    def _forget(self, number):
        self._placed.pop(number, None)
        return self._out.pop(number)

    def _failed(self, number, reason):
        name, tried = f"partition {number} ({self._job.told(self._blocks.take(number))})", self._tried[number]
        if tried < self._tries:
            tell(f"{name} failed and is tried again ({tried + 1} of {self._tries}): {reason}.")
            self._waiting.insert(0, number)
        else:
            tell(f"{name} failed {tried} times and is given up: {reason}.")
            self._outcome.failed[number] = reason

    def _look(self):
        """See now and then whether scheduler and workers are there."""
        now_s = time.monotonic()
        if now_s - self._looked_s < LOOK_S:
            return
        if self._client.status != "running":
            self._lost()
        there, self._looked_s = self._client.nthreads(), now_s
        if not there:
            tell("No worker is left; waiting for one.")
        self._workers, self._threads = sorted(there), max(sum(there.values()), 1)
        for number in [number for number, worker in self._placed.items() if worker not in there]:
            self._forget(number).cancel()
            self._failed(number, "its worker was lost")
        self._progress.show()

    def _lost(self):
        raise ValueError("The scheduler was lost. Start it again, then give the same command: the partitions that are done are kept.")


def _reason(error):
    """Why, in a line."""
    return " ".join(str(error).split()).rstrip(".") or type(error).__name__
