"""What a person sees of a run while it goes on."""

import sys
import time

EVERY_S = 10.0


def tell(sentence):
    """A sentence about the run."""
    print(sentence, file=sys.stderr, flush=True)


class Progress:
    """Partitions done, rows or cells a second and the time that is left, told every few seconds."""

    def __init__(self, done, total, counted):
        self._first, self.done, self.total, self.rows, self._counted = done, done, total, 0, counted
        self._begin_s = self._told_s = time.monotonic()

    def add(self, rows):
        """One more partition."""
        self.done += 1
        self.rows += rows
        self.show()

    def show(self):
        """Tell how far it is, unless that was told just now."""
        now_s = time.monotonic()
        if now_s - self._told_s < EVERY_S:
            return
        self._told_s = now_s
        passed_s = now_s - self._begin_s
        fresh = self.done - self._first
        left = f", about {_time(passed_s * (self.total - self.done) / fresh)} left" if fresh else ""
        rate = f"{self.rows / passed_s:,.0f} {self._counted}/s"
        tell(f"{self.done:,} of {self.total:,} partitions ({100.0 * self.done / self.total:.0f} %), {rate}{left}")

    @property
    def seconds(self):
        """Since it began."""
        return time.monotonic() - self._begin_s


def _time(seconds):
    minutes = seconds / 60.0
    return f"{seconds:.0f} s" if minutes < 2.0 else f"{minutes:.0f} min" if minutes < 120.0 else f"{minutes / 60.0:.1f} h"
