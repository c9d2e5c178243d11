"""Layers, runs of the command, and a Dask cluster of separate processes over loopback."""

import asyncio
import contextlib
import json
import resource
import signal
import subprocess
import sys
from pathlib import Path

import numpy as np
import pyogrio
import pytest
from distributed import Client
from distributed.core import rpc
from partitioned import PATIENCE_S, STAGE, command, environment, wait_for


@pytest.fixture
def batch():
    """Run the command in a process of its own; gives its exit code and what was said."""

    def run(*arguments, **variables):
        how = {"capture_output": True, "text": True, "check": False, "timeout": 2 * PATIENCE_S}
        told = subprocess.run(command(*arguments), env={**environment(), **variables}, **how)
        assert "Traceback" not in told.stderr, told.stderr
        return told

    return run


@pytest.fixture
def begun():
    """Begin the command in a process of its own, which is ended with the test."""
    with contextlib.ExitStack() as stack:

        def hear():
            signal.signal(signal.SIGINT, signal.SIG_DFL)  # of a shell in the background it would be deaf to Ctrl+C

        def begin(*arguments):
            # a group of its own, as in a terminal
            how = {"stderr": subprocess.PIPE, "text": True, "start_new_session": True, "preexec_fn": hear}
            process = subprocess.Popen(command(*arguments), env=environment(), **how)
            stack.callback(_end, process)
            return process

        yield begin


def _end(process):
    if process.poll() is None:
        process.kill()
    process.communicate()


class Cluster:
    """A scheduler and workers, each a process of its own."""

    def __init__(self, folder, stack):
        self._folder, self._stack, self.address = folder, stack, str(folder / "scheduler.json")
        self._count = 0
        self.scheduler = self._start("scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--scheduler-file", self.address)
        wait_for(self._tells_its_address, "the scheduler")

    def add_worker(self, stage=STAGE, most_file_bytes=None):
        """Start a worker, and wait until the scheduler knows it; without a nanny, so that one that is killed stays away."""

        def limited():
            if most_file_bytes is not None:
                resource.setrlimit(resource.RLIMIT_FSIZE, (most_file_bytes, most_file_bytes))

        self._count += 1
        scratch = self._folder / f"worker-{self._count}"
        options = ("--nthreads", "1", "--no-nanny", "--no-dashboard", "--host", "127.0.0.1", "--local-directory", scratch)
        options += ("--name", scratch.name)
        process = self._start("worker", "--scheduler-file", self.address, *options, stage=stage, preexec_fn=limited)
        wait_for(lambda: scratch.name in asyncio.run(self._names_of_workers()), "a worker")
        return process

    def wait_for_workers(self, count):
        """Until the scheduler knows of so many."""
        with Client(scheduler_file=self.address) as client:
            client.wait_for_workers(count, timeout=PATIENCE_S)

    def _tells_its_address(self):
        """The file is written in place: it may be there and not be whole."""
        with contextlib.suppress(FileNotFoundError, json.JSONDecodeError):
            return "address" in json.loads(Path(self.address).read_text(encoding="utf-8"))

    async def _names_of_workers(self):
        """Those that the scheduler knows."""
        async with rpc(json.loads(Path(self.address).read_text(encoding="utf-8"))["address"]) as scheduler:
            return {worker["name"] for worker in (await scheduler.identity())["workers"].values()}

    def _start(self, role, *options, stage=STAGE, **how):
        arguments = [sys.executable, "-P", "-m", "dask", role, *map(str, options)]
        process = subprocess.Popen(arguments, env=environment(stage), cwd=self._folder, stderr=subprocess.DEVNULL, **how)
        self._stack.callback(_end, process)
        return process


@pytest.fixture
def cluster(tmp_path_factory):
    with contextlib.ExitStack() as stack:
        yield Cluster(tmp_path_factory.mktemp("cluster"), stack)


@pytest.fixture
def other_stage(tmp_path):
    """The plugin as another version of itself: all the same but for what it calls itself."""
    package = tmp_path / "other" / "skyalidade"
    package.mkdir(parents=True)
    for path in (STAGE / "skyalidade").iterdir():
        if path.name != "metadata.txt":
            (package / path.name).symlink_to(path.resolve())
    told = (STAGE / "skyalidade" / "metadata.txt").read_text(encoding="utf-8")
    (package / "metadata.txt").write_text(told.replace("version=", "version=99.", 1), encoding="utf-8")
    return package.parent


@pytest.fixture(scope="session")
def sites(tmp_path_factory):
    """Write a GeoPackage of invented sites all over the world."""
    folder = tmp_path_factory.mktemp("layers")

    def write(count):
        file = folder / f"sites_{count}.gpkg"
        rng = np.random.default_rng(10)
        places = zip(rng.uniform(-180.0, 180.0, count), rng.uniform(-60.0, 70.0, count))
        binary = np.array([b"\x01\x01\x00\x00\x00" + np.array(place, "<f8").tobytes() for place in places], dtype=object)
        names = np.array([f"Site {i}" for i in range(count)], dtype=object)
        if not file.exists():
            pyogrio.raw.write(file, binary, [names], ["name"], crs="EPSG:4326", geometry_type="Point", driver="GPKG")
        return file

    return write
