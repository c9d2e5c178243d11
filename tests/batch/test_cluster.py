"""A scheduler and workers as processes of their own: one killed in the middle, others that cannot do the work, a client that is killed."""

import os
import signal
import time

import pytest
from partitioned import assert_equal, files_of, table_of, wait_for

from skyalidade.batch.version import version

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
    before = _settled(folder / "nights")
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
    _, told = run.communicate(timeout=60)
    assert run.returncode == 130
    assert told.endswith("Interrupted. Give the same command again to go on: the partitions that are done are kept.\n")
    assert "Traceback" not in told, told


def _settled(folder):
    """The files once the workers of a killed client have ended too."""
    before = None
    while before != (before := files_of(folder)):
        time.sleep(1.0)  # three times as long as a partition takes
    return before


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

    cluster.add_worker()  # with room; what falls to the other one is tried again
    told = batch(*halves, "--tries", 50)
    assert told.returncode == 0
    assert_as_alone(folder, alone)


def test_a_scheduler_that_is_lost(cluster, begun, sites, tmp_path):
    cluster.add_worker()
    run = begun(*asked(sites(SITES), tmp_path / "out", "--scheduler", cluster.address))
    wait_for(lambda: len(files_of(tmp_path / "out" / "nights")) >= 2, "partitions")
    cluster.scheduler.kill()
    _, told = run.communicate(timeout=30)
    assert run.returncode == 1
    assert "The scheduler was lost. Start it again, then give the same command" in told
    assert "Traceback" not in told, told
