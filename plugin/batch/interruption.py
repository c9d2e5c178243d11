"""Ctrl+C, which waits for the end of a call of Dask: within one it would leave things half made, and tracebacks of Dask's own threads."""

import signal


class Interruption:
    """While it is entered, Ctrl+C is kept until `obey`, or the end, raises KeyboardInterrupt; pressed again, it is raised at once."""

    def __init__(self):
        self._asked = False
        self.wake = lambda: None  # called on Ctrl+C, by whoever waits

    def __enter__(self):
        self._before = signal.signal(signal.SIGINT, self._hear)
        return self

    def __exit__(self, error, *_):
        signal.signal(signal.SIGINT, self._before)
        if error is None:
            self.obey()

    def _hear(self, *_):
        if self._asked:
            raise KeyboardInterrupt
        self._asked = True
        self.wake()

    def obey(self):
        """Raise KeyboardInterrupt if Ctrl+C was pressed."""
        if self._asked:
            raise KeyboardInterrupt
