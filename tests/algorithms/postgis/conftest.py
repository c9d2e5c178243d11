"""A PostgreSQL with PostGIS of the tests' own: its cluster lies in a temporary folder and listens on loopback alone."""

import os
import pwd
import random
import secrets
import shutil
import socket
import subprocess
import tempfile
import time
from contextlib import suppress
from pathlib import Path

import pytest

PORTS = range(20_000, 32_000)  # below those that the system gives to connections: no one takes one while the server is down
TRIES = 5
PATIENCE_S = 300.0  # only a server that hangs takes as long
USER, DATABASE = "alidade", "field"
SERVERS = Path("/usr/lib/postgresql")
PACKAGE = "postgresql-postgis"


def programs():
    """The folder of a server's programs that has PostGIS beside it, the newest one; None where there is none."""
    extensions = sorted(Path("/usr/share/postgresql").glob("*/extension/postgis.control"), key=lambda path: float(path.parts[4]))
    folders = [SERVERS / path.parts[4] / "bin" for path in extensions]
    return next((folder for folder in reversed(folders) if (folder / "initdb").exists()), None)


def install():
    """Debian's package, where it is missing."""
    as_root = [] if os.getuid() == 0 else ["sudo"]
    how = {"check": True, "stdout": subprocess.DEVNULL, "env": {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}}
    try:
        subprocess.run([*as_root, "apt-get", "update"], **how)
        subprocess.run([*as_root, "apt-get", "install", "-y", "--no-install-recommends", PACKAGE], **how)
    except (OSError, subprocess.CalledProcessError) as failed:
        pytest.fail(f"Please install PostgreSQL with PostGIS (Debian: {PACKAGE}), then run this again: {failed}")


def free_port():
    while True:
        port = random.choice(PORTS)
        with suppress(OSError), socket.socket() as free:
            free.bind(("127.0.0.1", port))
            return port


class Cluster:
    """A server that is started, stopped and asked without QGIS."""

    def __init__(self, folder):
        self.programs, self.folder, self.password = programs(), folder, secrets.token_hex(8)
        (folder / "password").write_text(self.password)
        if os.getuid() == 0:  # whom initdb refuses
            owner = pwd.getpwnam("postgres")
            for path in (folder, folder / "password"):
                os.chown(path, owner.pw_uid, owner.pw_gid)
        self._run("initdb", "--username", USER, "--auth", "scram-sha-256", "--pwfile", folder / "password", "--no-sync", "--encoding=UTF8")
        self._start_at_a_free_port()
        self.sql(f"CREATE DATABASE {DATABASE}", "postgres")
        self.sql("CREATE EXTENSION postgis")

    def _run(self, program, *arguments):
        as_nobody = ["setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups"] if os.getuid() == 0 else []
        command = [*as_nobody, self.programs / program, *arguments, "--pgdata", self.folder / "data"]
        # what the server says later goes to its own log: a pipe that it kept would never end
        subprocess.run(command, check=True, cwd=self.folder, stdout=subprocess.DEVNULL, stdin=subprocess.DEVNULL)

    def _start_at_a_free_port(self):
        for more in reversed(range(TRIES)):
            self.port = free_port()
            try:
                return self.start()
            except subprocess.CalledProcessError:  # another server may have come before this one
                if not more:
                    raise

    def start(self):
        options = f"-h 127.0.0.1 -p {self.port} -k '' -c fsync=off -c timezone=America/Los_Angeles"
        self._run("pg_ctl", "start", "--wait", "--silent", "--log", self.folder / "log", "--options", options)

    def stop(self):
        """At once, as when the power fails."""
        self._run("pg_ctl", "stop", "--mode=immediate", "--silent")

    def sql(self, command, database=DATABASE):
        """What psql prints, without heads: rows as lists of texts."""
        psql = [self.programs / "psql", "--no-psqlrc", "-qAt", "-F", "\t", "-v", "ON_ERROR_STOP=1", "-h", "127.0.0.1", "-p", str(self.port)]
        environment = {**os.environ, "PGPASSWORD": self.password}
        ran = subprocess.run(
            [*psql, "-U", USER, "-d", database, "-c", command], env=environment, capture_output=True, text=True, check=False
        )
        assert ran.returncode == 0, ran.stderr
        return [line.split("\t") for line in ran.stdout.splitlines()]

    def uri(self, table, geometry="geom", schema="public", key="", **others):
        """A table as QGIS names it; `others` are other words for the connection."""
        words = {"dbname": DATABASE, "host": "127.0.0.1", "port": self.port, "user": USER, "password": self.password, **others}
        connection = " ".join(f"{name}='{value}'" for name, value in words.items())
        return f'{connection} {key} table="{schema}"."{table}" ({geometry})'

    def wait_for(self, condition):
        """Ask until a condition in SQL holds; it may speak of a table that is not there yet."""
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            with suppress(AssertionError):
                if self.sql(f"SELECT {condition}") == [["t"]]:
                    return
            time.sleep(0.05)
        pytest.fail(f"never: {condition}")


@pytest.fixture(scope="session")
def cluster():
    if programs() is None:
        install()
    folder = Path(tempfile.mkdtemp(prefix="alidade-pg-"))  # pytest's own is closed to other users
    running = Cluster(folder)
    yield running
    with suppress(subprocess.CalledProcessError):
        running.stop()
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def database(cluster):
    """The cluster with nothing in it but PostGIS."""
    yield cluster
    cluster.sql("DROP EVENT TRIGGER IF EXISTS watch; DROP FUNCTION IF EXISTS watch, watched CASCADE")
    ours = "SELECT format('%I', tablename) FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'spatial_ref_sys'"
    for (table,) in cluster.sql(ours):
        cluster.sql(f"DROP TABLE {table} CASCADE")
