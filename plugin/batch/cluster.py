"""The workers: those of this machine, or of a Dask cluster that runs already."""

import contextlib
import logging
import os
import signal
import tempfile
from pathlib import Path

from distributed import Client, LocalCluster

from .version import version

REACH_S = 15.0  # to reach a scheduler, and until it has a worker


@contextlib.contextmanager
def client_of(scheduler=None, workers=None):
    """A client with workers that can do the work.

    Parameters
    ----------
    scheduler : str, optional
        Address of one that runs, or of a file that tells it; a cluster over this machine's cores if None.
    workers : int, optional
        Of this machine; one a core if None.

    Raises
    ------
    ValueError
        With a sentence: no scheduler, no worker, or workers of another version.
    """
    logging.getLogger("distributed.client").setLevel(logging.CRITICAL)  # a connection that is lost is told by the run
    with contextlib.ExitStack() as stack:
        if scheduler is None:
            scratch = stack.enter_context(tempfile.TemporaryDirectory(prefix="skyalidade-"))
            count = workers or len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else workers or os.cpu_count()
            about = {"threads_per_worker": 1, "dashboard_address": None, "local_directory": scratch}
            with _deaf():
                cluster = stack.enter_context(LocalCluster(n_workers=count, host="127.0.0.1", **about))
            client = stack.enter_context(Client(cluster))
        else:
            client = stack.enter_context(_reached(scheduler))
        require_same_version(client)
        yield client


@contextlib.contextmanager
def _deaf():
    """Processes begun meanwhile do not hear Ctrl+C: the command alone does, and ends them."""
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _reached(scheduler):
    where = {"scheduler_file": scheduler} if scheduler.endswith(".json") else {"address": scheduler}
    try:
        if "scheduler_file" in where and not Path(scheduler).exists():  # Dask would wait for it without end
            raise FileNotFoundError(scheduler)
        client = Client(**where, timeout=REACH_S)
    except (OSError, TimeoutError, ValueError) as unreachable:
        raise ValueError(
            f"SCHEDULER: there is no Dask scheduler to be reached at {scheduler} within {REACH_S:g} s. Start one with 'dask scheduler', "
            "and give the address that it tells, such as tcp://10.0.0.1:8786."
        ) from unreachable
    try:
        client.wait_for_workers(1, timeout=REACH_S)
    except TimeoutError as none:
        client.close()
        raise ValueError(f"SCHEDULER: {scheduler} has no workers. Start some with 'dask worker {scheduler} --nthreads 1'.") from none
    return client


def require_same_version(client):
    """Refuse workers that would make other rows.

    Raises
    ------
    ValueError
        With both versions.
    """
    others = {}
    for worker, told in client.run(version, on_error="return").items():
        if isinstance(told, Exception):
            told = f"none that can be used ({told})"
        if told != version():
            others.setdefault(told, []).append(worker)
    for told, where in others.items():
        raise ValueError(
            f"{len(where)} workers, such as {where[0]}, have another version of Sky Alidade: {told}; this one is {version()}. Install the "
            "same plugin on all, with PYTHONPATH naming the folder that holds skyalidade/."
        )


def require_shared(client, option, path):
    """Refuse workers that do not see a file or folder.

    Raises
    ------
    ValueError
        With one of them.
    """
    blind = [worker for worker, there in client.run(os.path.exists, str(path)).items() if not there]
    if blind:
        raise ValueError(
            f"{option}: {path} is not there for {len(blind)} workers, such as {blind[0]}. Give a place that all of them see by this name."
        )
