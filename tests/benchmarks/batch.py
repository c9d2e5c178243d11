"""How many rows a second the batch command makes with one worker and with two, what a task costs beside its work, and what bounds more."""

import contextlib
import os
import pickle
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "sky")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
import pyogrio  # noqa: E402
from telling import Ratio, Section, number, table, taken  # noqa: E402

os.environ.setdefault("DASK_LOGGING__DISTRIBUTED", "critical")
SITES, NIGHTS, ROUNDS = 1000, 365, 3
ROWS_A_BLOCK = 200_000
EMPTY_TASKS, COMMAND_SITES = 1000, 20_000
MILLION, WORKERS = 1_000_000, (1, 16, 256)
LEAST_OF_TWO = 1.5  # times as fast as one
DISK_MB = 256


def write_sites(folder, count=SITES):
    """A GeoPackage of invented sites all over the world."""
    rng = np.random.default_rng(6)
    places = np.stack([rng.uniform(-180, 180, count), np.degrees(np.arcsin(rng.uniform(-1, 1, count)))], axis=1)
    binary = np.array([b"\x01\x01\x00\x00\x00" + place.astype("<f8").tobytes() for place in places], dtype=object)
    file = Path(folder) / "sites.gpkg"
    names = np.array([f"Site {i}" for i in range(count)], dtype=object)
    pyogrio.raw.write(file, binary, [names], ["name"], crs="EPSG:4326", geometry_type="Point", driver="GPKG")
    return file


def asked_of(file, folder):
    """Job and blocks of a year of nights."""
    from skyalidade.batch import asked

    options = ("--first-night", "2027-01-01", "--last-night", "2027-12-31", "--site-name", "name", "--block", "100")
    told = asked.parser().parse_args(["nights", "--sites", str(file), *options, "--output", str(folder)])
    with contextlib.redirect_stderr(None):
        return asked.nights(told, time.time())[:2]


def run_s(client, job, blocks, folder):
    """What came of a run, and the bytes written."""
    from skyalidade.batch.interruption import Interruption
    from skyalidade.batch.run import run

    folder.mkdir()
    outcome = run(client, job, blocks, folder, Interruption())
    assert not outcome.failed
    assert outcome.rows["nights"] == len(blocks.whole.points) * NIGHTS
    return outcome, sum(file.stat().st_size for file in Path(folder).rglob("*.parquet"))


def nothing(number):
    """What a task that does nothing takes along and gives back."""
    return number


def task_s(client):
    """Seconds of the processor that a task costs scheduler and command, which are one process here: of many that do nothing."""
    begin = time.process_time()
    client.gather([client.submit(nothing, i, pure=False) for i in range(EMPTY_TASKS)])
    return (time.process_time() - begin) / EMPTY_TASKS


def disk_mb_s(folder):
    """How fast a file reaches the disk."""
    data = np.random.default_rng(1).bytes(1 << 20)
    begin = time.perf_counter()
    with open(Path(folder) / "disk", "wb") as file:
        for _ in range(DISK_MB):
            file.write(data)
        file.flush()
        os.fsync(file.fileno())
    return DISK_MB * 1.048576 / (time.perf_counter() - begin)


def command_s(folder):
    """Seconds of the processor a site that the command needs before it hands out (reading, zones, nights), and while (cutting, packing)."""
    file = write_sites(folder, COMMAND_SITES)
    begin = time.process_time()
    job, blocks = asked_of(file, folder)
    read = time.process_time()
    for i in range(len(blocks)):
        pickle.dumps((job, blocks.take(i)))
    return (read - begin) / COMMAND_SITES, (time.process_time() - read) / COMMAND_SITES


def measure():
    """Seconds of runs by the number of workers, with the parts that they are made of."""
    from skyalidade.batch.cluster import client_of

    outcomes, tasks = {1: [], 2: []}, []
    with tempfile.TemporaryDirectory() as folder:
        file = write_sites(folder)
        job, blocks = asked_of(file, folder)
        with contextlib.ExitStack() as stack:
            clients = {count: stack.enter_context(client_of(workers=count)) for count in outcomes}
            for count, client in clients.items():
                run_s(client, job, blocks, Path(folder, f"warm-{count}"))  # libraries loaded, tables made
            for turn in range(ROUNDS):
                for count, client in clients.items():
                    outcome, size = run_s(client, job, blocks, Path(folder, f"{turn}-{count}"))
                    outcomes[count].append(outcome)
                tasks.append(task_s(clients[1]))
        quickest = min(outcomes[1], key=lambda outcome: outcome.seconds)
        parts = {
            "beside_s": (quickest.seconds - quickest.busy_s) / len(blocks),
            "block_s": min(outcome.processor_s for outcome in outcomes[1]) / len(blocks),
            "task_s": min(tasks),
            "command_s": min(command_s(folder) for _ in range(ROUNDS)),
            "disk_mb_s": max(disk_mb_s(folder) for _ in range(ROUNDS)),
            "row_bytes": size / (SITES * NIGHTS),
            "blocks": len(blocks),
        }
    return {count: taken([outcome.seconds for outcome in of_count]) for count, of_count in outcomes.items()}, parts


def projected(parts, workers):
    """Seconds of a million sites, a year: reading; then computing, handing out and writing at the same time."""
    read_s, hand_out_s = (MILLION * seconds for seconds in parts["command_s"])
    compute_s = parts["block_s"] * parts["blocks"] / SITES * MILLION / workers
    hand_out_s += parts["task_s"] * MILLION * NIGHTS / ROWS_A_BLOCK
    write_s = parts["row_bytes"] * MILLION * NIGHTS / 1e6 / parts["disk_mb_s"]
    return read_s, {"computing": compute_s, "handing out": hand_out_s, "the disk": write_s}


def shown_time(seconds):
    """Hours, minutes or seconds."""
    return f"{seconds / 3600:.1f} h" if seconds > 7200 else f"{seconds / 60:.0f} min" if seconds > 120 else f"{seconds:.0f} s"


def section():
    """For docs/performance.md."""
    seconds, parts = measure()
    rows = SITES * NIGHTS
    lines = []
    for workers in WORKERS:
        read_s, beside = projected(parts, workers)
        whole_s = read_s + max(beside.values())
        lines.append((number(workers), *map(shown_time, (read_s, *beside.values(), whole_s)), max(beside, key=beside.get)))
    each = f"{number(rows / seconds[1].best_s)} rows a second with one worker, {number(rows / seconds[2].best_s)} with two"
    block = f"A block of {number(rows / parts['blocks'])} rows takes {parts['block_s']:.2f} s of a processor"
    beside = f"{1e3 * parts['beside_s']:.0f} ms pass on a worker between two blocks"
    task = f"a task that does nothing costs scheduler and command {1e3 * parts['task_s']:.1f} ms"
    read, hand_out = (f"{1e6 * a_site_s:.0f} µs" for a_site_s in parts["command_s"])
    body = f"""
{number(SITES)} sites, a year of nights, {parts["blocks"]} partitions, a cluster on this machine: {each}.
{block}; {beside}; {task}.
Before it hands out, the command reads a site, finds its zone and counts its nights in {read}; then it cuts out and packs it in {hand_out}.
A row takes {parts["row_bytes"]:.0f} bytes; files reach this disk at {parts["disk_mb_s"]:.0f} MB/s.

Projected from these, not measured: a million sites, a year, in partitions of 200 000 rows, on workers as fast as this one.

{chr(10).join(table(("workers", "reading", "computing", "handing out", "one disk", "whole", "bound by"), lines))}

Reading comes first. Then workers compute, each its share; one process, the command with its scheduler, hands out to all of them; and one
disk, as fast as this one, takes what all write: at the same time, so that the slowest of the three and the reading make the whole.
"""
    two = Ratio("two workers", seconds[2], "one worker", seconds[1], at_least=LEAST_OF_TWO)
    return Section("Batch", "rows a second by the number of workers, and what more of them are bound by", [two], body)


def test_two_workers():
    """Only when this file is named to pytest, on a machine with two cores at rest."""
    seconds, _ = measure()
    assert seconds[1].best_s / seconds[2].best_s >= LEAST_OF_TWO


if __name__ == "__main__":
    from report import tell

    tell(section())
