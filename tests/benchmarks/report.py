"""Runs every measurement once and writes docs/performance.md: `python tests/benchmarks/report.py`, in the environment of tests/run.sh."""

import os
import platform
import sys
from datetime import datetime, timezone
from importlib.metadata import version
from pathlib import Path

import alignments
import numpy as np
import places
import rows

PAGE = Path(__file__).resolve().parents[2] / "docs" / "performance.md"
LIBRARIES = ("numpy", "skyfield", "astropy")


def machine():
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    libraries = ", ".join(f"{name} {np.__version__ if name == 'numpy' else version(name)}" for name in LIBRARIES)
    return f"{cores} cores ({platform.machine()}), of which one is used; Python {platform.python_version()}, {libraries}"


def shown_s(seconds):
    return f"{seconds:.3f} s" if seconds < 1 else f"{seconds:.1f} s" if seconds < 100 else f"{seconds:,.0f} s".replace(",", " ")


def places_table(rows):
    yield "| | plugin | Skyfield, warm | ratio | astropy | ratio |"
    yield "|---|---:|---:|---:|---:|---:|"
    for label, row in rows.items():
        ratios = [row[reference] / row["plugin"] for reference in ("skyfield", "astropy")]
        yield (
            f"| {label} | {shown_s(row['plugin'])} | {shown_s(row['skyfield'])} | **{ratios[0]:.0f}** "
            f"| {shown_s(row['astropy'])} | **{ratios[1]:.0f}** |"
        )


def memory_table(peaks):
    yield "| pairs | most memory held |"
    yield "|---:|---:|"
    for count, peak in peaks.items():
        yield f"| {count or 'none: the libraries alone'} | {peak:.0f} MB |"


def rows_table(measured):
    yield "| | rows | fields | end to end | bare | ratio |"
    yield "|---|---:|---:|---:|---:|---:|"
    for label, run in measured.items():
        count = f"{run['rows']:,}".replace(",", " ")
        ratio = run["plugin"] / run["bare"]
        yield f"| {label} | {count} | {run['fields']} | {shown_s(run['plugin'])} | {shown_s(run['bare'])} | **{ratio:.1f}** |"


TEMPLATE = """# Speed and memory

Written by `python tests/benchmarks/report.py` on {date}; all numbers are of that one run.
Machine: {machine}.
A speed by itself says little about another machine: read the ratios.

## Places: azimuth and true altitude of {sites} sites at {times} times

{places}

- The plugin's time holds everything: the table of the times (light time, aberration, nutation) and the {sites} sites. numpy's two
  arctan2 for each place, which no way to an azimuth and an altitude can do without, take {bare} of it.
- Skyfield: `(earth + site).at(t).observe(body).apparent().altaz()`, a loop over all sites with one shared `t` whose nutation is
  computed beforehand; all of it was run.
- astropy: `get_body`, or the catalogue place, into `AltAz`, a loop over sites, after a first run that is not counted; measured on
  {astropy_sites} sites and all times, and scaled by {astropy_scale}.
- Of {plugin_runs} runs of the plugin and {skyfield_runs} of each library the quickest counts.
- Promised: {least_skyfield} times Skyfield; {least_astropy} times astropy for Moon and Sun, {least_fixed} for fixed directions.

## Alignments: {pairs} pairs, {nights} nights, core, Sun and Moon

{rows} rows with all their columns in **{solver}**. A scan of the same with Skyfield's default `apparent()`, every minute, one warm table of
times for all, takes {scan} for the places alone: **{ratio} times** as long, and knows each end to a minute. The scan was
measured on {scan_pairs} pairs and {scan_days} days, and scaled. Promised: {least_ratio} times.

## Memory: the same search

{memory}

Pairs are worked on in blocks, and rows leave as they are found, so that memory does not grow with them. Each number is the peak of a
process of its own, without QGIS.

## Rows: from layers to a closed GeoPackage

{rows_table}

- End to end is a whole run of the algorithm in QGIS {qgis}: points read, transformed and paired, time zones and declinations looked up,
  rows worked out, lines drawn along geodesics, all written, the style saved beside them.
- Bare is the same rows, with their values and geometries (WKB) ready in memory, made into features and written to a GeoPackage through
  the same sink, in batches of {batch}: the least that an algorithm in Python can take.
- Both in turn, {row_runs} times; the quickest of each counts. Promised: at most {most_ratio:g} times the bare cost.

## To measure again

`python tests/benchmarks/report.py` writes this page, in the environment that `tests/run.sh` makes; `places.py`, `alignments.py` and
`rows.py` beside it print their own part. The promises are tests only when asked for by name (`python -m pytest tests/benchmarks/places.py
tests/benchmarks/alignments.py tests/benchmarks/rows.py`): a busy machine must not make the common run fail.
"""


def page():
    placed, bare_s = places.measure()
    found, solver_s, scan_s = alignments.measure()
    return TEMPLATE.format(
        date=f"{datetime.now(timezone.utc):%Y-%m-%d}",
        machine=machine(),
        sites=places.SITES,
        times=places.TIMES,
        places="\n".join(places_table(placed)),
        bare=shown_s(bare_s),
        astropy_sites=places.ASTROPY_SITES,
        astropy_scale=places.SITES // places.ASTROPY_SITES,
        plugin_runs=places.REPEATS["plugin"],
        skyfield_runs=places.REPEATS["skyfield"],
        least_skyfield=places.LEAST["skyfield"]["Moon"],
        least_astropy=places.LEAST["astropy"]["Moon"],
        least_fixed=places.LEAST["astropy"]["fixed direction"],
        pairs=alignments.PAIRS,
        nights=alignments.NIGHTS,
        rows=found,
        solver=shown_s(solver_s),
        scan=shown_s(scan_s),
        ratio=f"{scan_s / solver_s:.0f}",
        scan_pairs=alignments.SCAN_PAIRS,
        scan_days=alignments.SCAN_DAYS,
        least_ratio=alignments.LEAST_RATIO,
        memory="\n".join(memory_table(alignments.memory())),
        rows_table="\n".join(rows_table(rows.measure())),
        qgis=rows.version(),
        batch=rows.BATCH,
        row_runs=rows.REPEATS,
        most_ratio=rows.MOST_RATIO,
    )


if __name__ == "__main__":
    text = page()
    PAGE.parent.mkdir(exist_ok=True)
    PAGE.write_text(text, encoding="utf-8")
    sys.stdout.write(text)
