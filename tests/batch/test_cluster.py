"""A scheduler and workers as processes of their own: one killed in the middle, others that cannot do the work, a client that is killed."""

import os
import signal
from types import SimpleNamespace

import numpy as np
import pytest
from partitioned import PATIENCE_S, assert_equal, ended, files_of, table_of, wait_for

from skyalidade.batch.interruption import Interruption
from skyalidade.batch.run import run
from skyalidade.batch.version import version
from skyalidade.batch.work import Done

SITES, BLOCK = 240, 8
PARTITIONS = SITES // BLOCK


def asked(layer, folder, *more):
    nights = ("--first-night", "2027-03-01", "--last-night", "2027-04-29")
    return ("nights", "--sites", layer, "--site-name", "name", *nights, "--windows", "--block", BLOCK, "--output", folder, *more)


@pytest.fixture(scope="module")
def alone(tmp_path_factory, sites):
    """What one process gives, in one block and without any cluster."""
    from skyalidade.batch import asked as options
    from skyalidade.batch.work import work

    folder = tmp_path_factory.mktemp("alone")
    told = options.parser().parse_args([str(part) for part in asked(sites(SITES), folder, "--block", SITES)])
    job, blocks, _ = options.nights(told, now_utc_s=0.0)
    assert len(blocks) == 1
    work(job, blocks.take(0), 0, str(folder), version())
    return folder


def assert_as_alone(folder, alone):
    for output, keys in (("nights", ("site_id", "night")), ("windows", ("site_id", "t_start"))):
        assert_equal(table_of(folder / output, *keys), table_of(alone / output, *keys), tolerance=1e-12)


def test_a_worker_that_is_killed_in_the_middle(cluster, begun, sites, tmp_path, alone):
    folder = tmp_path / "out"
    workers = [cluster.add_worker() for _ in range(2)]
    run = begun(*asked(sites(SITES), folder, "--scheduler", cluster.address))
    wait_for(lambda: len(files_of(folder / "nights")) >= 4, "partitions")
    workers[0].send_signal(signal.SIGKILL)
    assert workers[0].wait() == -signal.SIGKILL
    assert len(files_of(folder / "nights")) < PARTITIONS - 4, "it was killed too late to matter"
    assert run.wait() == 0
    assert len(files_of(folder / "nights")) == PARTITIONS
    assert_as_alone(folder, alone)


def test_a_client_that_is_killed_goes_on_where_it_was(begun, batch, sites, tmp_path, alone):
    """With the workers of this machine, which end with it."""
    folder = tmp_path / "out"
    run = begun(*asked(sites(SITES), folder, "--workers", 2))
    wait_for(lambda: len(files_of(folder / "nights")) >= 5, "partitions")
    run.send_signal(signal.SIGKILL)
    run.wait()
    wait_for(lambda: ended(run.pid), "the workers of the client that was killed")
    before = files_of(folder / "nights")
    assert 5 <= len(before) < PARTITIONS
    (folder / "nights" / ".part-000000-1-1").write_bytes(b"torn")  # what a worker killed while it writes leaves
    told = batch(*asked(sites(SITES), folder, "--workers", 2))
    assert told.returncode == 0
    after = files_of(folder / "nights")
    assert len(after) == PARTITIONS
    assert {name: after[name] for name in before} == before, "partitions that were done were done again"
    assert f"Going on: {len(before)} of {PARTITIONS} partitions are there already." in told.stderr
    assert f"This time {(PARTITIONS - len(before)) * BLOCK * 60:,} rows of nights" in told.stderr
    assert not list(folder.rglob(".part-*"))
    assert_as_alone(folder, alone)

    told = batch(*asked(sites(SITES), folder, "--workers", 1))
    assert told.returncode == 0
    assert "This time 0 rows" in told.stderr
    assert files_of(folder / "nights") == after


def test_a_run_that_is_interrupted(begun, sites, tmp_path):
    """Ctrl+C reaches every process of a terminal; one answers."""
    folder = tmp_path / "out"
    run = begun(*asked(sites(SITES), folder, "--workers", 2))
    wait_for(lambda: files_of(folder / "nights"), "a partition")
    os.killpg(run.pid, signal.SIGINT)
    _, told = run.communicate(timeout=PATIENCE_S)
    assert run.returncode == 130
    assert told.endswith("Interrupted. Give the same command again to go on: the partitions that are done are kept.\n")
    assert "Traceback" not in told, told


JOB = SimpleNamespace(outputs=("nights",), ending=".parquet", counted="rows", told=lambda block: "one site")
DONE = Done({"nights": 1}, 0.0, 0.0)


class Dask:
    """Stands for a client. `answer(key, workers)` gives what comes of a block: Done, an error, or None where nothing ever does."""

    status = "running"

    def __init__(self, answer):
        self.workers = [f"tcp://127.0.0.1:{port}" for port in (1, 2, 3)]
        self.asked, self.cancelled, self._answer = [], [], answer

    def nthreads(self):
        return dict.fromkeys(self.workers, 1)

    def submit(self, *_, key, workers=None, **__):
        self.asked.append((key, workers))
        told = self._answer(key, workers)
        future = SimpleNamespace(status="error" if isinstance(told, Exception) else "finished", exception=lambda: told)
        future.result, future.cancel = lambda: self.result(told), lambda: self.cancelled.append(key)
        future.add_done_callback = lambda call: told is None or call(future)
        return future

    def result(self, told):
        return told


def test_a_block_that_failed_goes_to_the_next_worker(tmp_path):
    """To each in turn: a worker whose disk is full fails quickly, and Dask would hand it all that others have no hands for."""
    dask = Dask(lambda key, workers: OSError("no room"))
    outcome = run(dask, JOB, np.arange(1), tmp_path, Interruption(), tries=4)
    assert outcome.failed == {0: "no room"}
    assert dask.asked[0] == ("nights-000000-try-1", None)
    assert sorted(place for _, (place,) in dask.asked[1:]) == dask.workers


def test_a_block_whose_worker_has_gone_is_tried_again(tmp_path, monkeypatch):
    """Dask waits without end for the one worker that may do it."""
    monkeypatch.setattr("skyalidade.batch.run.LOOK_S", 0.0)

    def answer(key, workers):
        if workers and len(dask.workers) > 1:
            dask.workers.remove(*workers)
            return None
        return DONE if workers else OSError("no room")

    dask = Dask(answer)
    outcome = run(dask, JOB, np.arange(1), tmp_path, Interruption(), tries=5)
    assert (outcome.failed, outcome.rows) == ({}, {"nights": 1})
    assert dask.cancelled == ["nights-000000-try-2", "nights-000000-try-3"]


def test_an_interruption_waits_for_the_end_of_a_call_of_dask(tmp_path):
    """Within one it leaves callbacks of Dask's own threads behind, which tell tracebacks."""
    whole = []

    class Pressed(Dask):
        def result(self, told):
            signal.raise_signal(signal.SIGINT)
            whole.append(told)
            return told

    before = signal.getsignal(signal.SIGINT)
    with pytest.raises(KeyboardInterrupt), Interruption() as interruption:
        run(Pressed(lambda *_: DONE), JOB, np.arange(2), tmp_path, interruption)
    assert whole == [DONE]
    assert signal.getsignal(signal.SIGINT) is before


def test_an_interruption_asked_for_twice_is_obeyed_at_once():
    with pytest.raises(KeyboardInterrupt), Interruption():  # noqa: PT012
        signal.raise_signal(signal.SIGINT)
        with pytest.raises(KeyboardInterrupt):
            signal.raise_signal(signal.SIGINT)


def test_an_interruption_is_obeyed_at_the_end_at_the_latest():
    with pytest.raises(KeyboardInterrupt), Interruption():
        signal.raise_signal(signal.SIGINT)


def test_workers_of_another_version_are_refused_with_both(cluster, batch, sites, tmp_path, other_stage):
    cluster.add_worker(other_stage)
    told = batch(*asked(sites(8), tmp_path / "out", "--scheduler", cluster.address))
    assert told.returncode == 1
    assert f"have another version of Sky Alidade: 99.{version()}; this one is {version()}." in told.stderr
    assert not (tmp_path / "out").exists()


def test_a_worker_of_another_version_that_comes_later(sites, tmp_path):
    """Each block is told the version of its run."""
    from skyalidade.batch.work import work

    with pytest.raises(ValueError, match=r"this worker has Sky Alidade .*, the run 99\.0\. Install the same on all"):
        work(None, None, 0, str(tmp_path), "99.0")


def test_workers_without_the_plugin_are_refused(cluster, batch, sites, tmp_path):
    cluster.add_worker(tmp_path)
    told = batch(*asked(sites(8), tmp_path / "out", "--scheduler", cluster.address))
    assert told.returncode == 1
    assert "have another version of Sky Alidade: none that can be used (" in told.stderr
    assert "No module named 'skyalidade'" in told.stderr
    assert f"this one is {version()}" in told.stderr


def test_a_disk_that_is_full_on_a_worker(cluster, batch, sites, tmp_path, alone):
    """A limit on the size of files stands for the disk: writing fails in the same place and way."""
    folder = tmp_path / "out"
    halves = (*asked(sites(SITES), folder, "--scheduler", cluster.address), "--block", SITES // 2)
    cluster.add_worker(most_file_bytes=20_000)
    told = batch(*halves, "--tries", 2)
    assert told.returncode == 1
    assert "partition 1 (120 sites, from 'Site 120') failed and is tried again (2 of 2): no room is left to write to" in told.stderr
    assert "2 partitions failed: " in told.stderr
    assert "Make room there" in told.stderr
    assert [path for path in folder.rglob("*") if path.is_file()] == [folder / "run.json"], "something torn was left"

    cluster.add_worker()  # with room; what falls to the other one is tried again elsewhere
    cluster.wait_for_workers(2)
    told = batch(*halves)
    assert told.returncode == 0
    assert_as_alone(folder, alone)


def test_a_scheduler_that_is_lost(cluster, begun, sites, tmp_path):
    cluster.add_worker()
    run = begun(*asked(sites(SITES), tmp_path / "out", "--scheduler", cluster.address))
    wait_for(lambda: len(files_of(tmp_path / "out" / "nights")) >= 2, "partitions")
    cluster.scheduler.kill()
    _, told = run.communicate(timeout=PATIENCE_S)
    assert run.returncode == 1
    assert "The scheduler was lost. Start it again, then give the same command" in told
    assert "Traceback" not in told, told
