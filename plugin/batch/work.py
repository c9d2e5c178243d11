"""What a worker does with one block: all its files, or none."""

import errno
import socket
import time
from dataclasses import dataclass
from pathlib import Path

from .version import version


@dataclass(frozen=True)
class Done:
    """What came of a block: rows of each output, and how long it took by the clock and of the processor."""

    rows: dict
    seconds: float
    processor_s: float


def work(job, block, number, folder, wanted_version):
    """Work out a block and write its partitions.

    Parameters
    ----------
    job : Nights, Alignments or Exposure
    block : as `fill` of the job takes it
    number : int
    folder : str
        Of the run, as all workers see it.
    wanted_version : str

    Raises
    ------
    ValueError
        With a sentence: another version here, no room, a folder that is not there.
    """
    if version() != wanted_version:
        raise ValueError(f"this worker has Sky Alidade {version()}, the run {wanted_version}. Install the same on all")
    if not Path(folder).is_dir():
        raise ValueError(f"{folder} is not there on {socket.gethostname()}. The output folder must be one that all workers share")
    begin, begin_processor = time.perf_counter(), time.process_time()
    sinks = {}
    try:
        sinks = job.sinks(Path(folder), number)
        job.fill(block, sinks)
        for name in reversed(job.outputs):  # the first last: where it is there, all are
            sinks[name].close()
    except OSError as failed:
        raise ValueError(_told(failed, folder)) from failed
    finally:
        for sink in sinks.values():
            sink.abandon()
    rows = {name: sink.rows for name, sink in sinks.items()}
    return Done(rows, time.perf_counter() - begin, time.process_time() - begin_processor)


def _told(failed, folder):
    if failed.errno in (errno.ENOSPC, errno.EDQUOT, errno.EFBIG):
        return f"no room is left to write to {folder} on {socket.gethostname()} ({failed.strerror}). Make room there"
    return f"{folder} on {socket.gethostname()} cannot be written to: {failed}"
