"""How long alignments take: 1000 pairs, a year, core, Sun and Moon, beside a scan with Skyfield every minute; and what memory they take."""

import os
import subprocess
import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "sky")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
from skyfield_places import DAY_S, Observer, times  # noqa: E402
from skyfield_places import target as skyfield_body  # noqa: E402
from telling import Ratio, Section, in_turn, memory_table, number  # noqa: E402

from skyalidade.plan.alignments import Pairs, find_alignments  # noqa: E402
from skyalidade.plan.conditions import Conditions  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402

PAIRS, FIRST, LAST, NIGHTS = 1000, "2027-01-01", "2027-12-31", 365
BODIES = ("core", "sun", "moon")
SCAN_PAIRS, SCAN_DAYS, SCAN_STEP_S = 2, 30, 60.0
LEAST_RATIO, ROUNDS = 500, 3
MEMORY_PAIRS = (100, 1000, 5000)
MOST_GROWTH_MB = 100.0  # from the fewest to the most pairs: blocks, not pairs, rule


def pairs(count):
    rng = np.random.default_rng(3)
    base = rng.uniform(-3, 3, count)
    return Pairs(
        rng.uniform(-180, 180, count),
        np.degrees(np.arcsin(rng.uniform(-1, 1, count))),
        rng.uniform(0, 2000, count),
        rng.uniform(0, 360, count),
        base,
        base + rng.uniform(0, 10, count),
        ["UTC"],
        np.zeros(count, int),
    )


def solve(count):
    """Rows found, and seconds."""
    start, rows = time.process_time(), 0
    for table, _ in find_alignments(pairs(count), [target(body) for body in BODIES], FIRST, LAST, Conditions()):
        rows += len(table["pair"])
    return rows, time.process_time() - start


def scan():
    """Seconds of Skyfield's default `apparent()` for the same pairs and year, from a small part; the shared time table is warm."""
    some = pairs(SCAN_PAIRS)
    moments = times(np.datetime64(FIRST, "s").astype(float) + np.arange(0.0, SCAN_DAYS * DAY_S, SCAN_STEP_S))
    Observer(some.lon_deg[0], some.lat_deg[0], some.height_m[0], moments).altaz(skyfield_body("sun"))
    start = time.process_time()
    for site in zip(some.lon_deg, some.lat_deg, some.height_m):
        observer = Observer(*site, moments)
        for body in BODIES:
            observer.altaz(skyfield_body(body))
    return (time.process_time() - start) * (PAIRS / SCAN_PAIRS) * (NIGHTS / SCAN_DAYS)


def measure():
    """Rows; times of the solver and of the scan (scaled)."""
    solve(10)  # files opened, code compiled
    rows = []

    def plugin():
        found, seconds = solve(PAIRS)
        rows.append(found)
        return seconds

    return rows, in_turn({"plugin": plugin, "scan": scan}, ROUNDS)


def peak_mb():
    """Most memory this process has held. [MB]."""
    with open("/proc/self/status", encoding="ascii") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmHWM"))


def memory():
    """Peak of a process of its own for each number of pairs, 0 pairs being the bare imports. [MB]."""
    if not os.path.exists("/proc/self/status"):
        return {}
    peaks = {}
    for count in (0, *MEMORY_PAIRS):
        told = subprocess.run([sys.executable, __file__, str(count)], capture_output=True, text=True, check=True).stdout
        peaks[count] = float(told.splitlines()[-1])
    return peaks


NOTES = """- {rows} rows with all their columns. The scan: Skyfield's default `apparent()`, every minute, one warm table of times for all;
  the places alone, which know each end to a minute. It was measured on {scan_pairs} pairs and {scan_days} days, and scaled.
- Pairs are worked on in blocks, and rows leave as they are found, so that memory does not grow with them. Each number is the peak of a
  process of its own, without QGIS:

{memory}
"""


def section():
    rows, times = measure()
    ratio = Ratio(f"{PAIRS} pairs", times["plugin"], "Skyfield every minute", times["scan"], at_least=LEAST_RATIO)
    peaks = {f"{count} pairs" if count else "nothing: the libraries alone": peak for count, peak in memory().items()}
    notes = NOTES.format(rows=number(rows[0]), scan_pairs=SCAN_PAIRS, scan_days=SCAN_DAYS, memory=memory_table("searched", peaks))
    return Section("Alignments", f"{PAIRS} pairs, {NIGHTS} nights, core, Sun and Moon", [ratio], notes)


def test_ratio():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    _, times = measure()
    assert times["scan"].best_s / times["plugin"].best_s >= LEAST_RATIO


def test_memory_is_flat():
    peaks = memory()
    assert peaks[MEMORY_PAIRS[-1]] - peaks[MEMORY_PAIRS[0]] < MOST_GROWTH_MB


if __name__ == "__main__":
    if len(sys.argv) > 1:
        if int(sys.argv[1]):
            solve(int(sys.argv[1]))
        print(peak_mb())
    else:
        from report import tell

        tell(section())
