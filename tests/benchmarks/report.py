"""Runs every measurement once and writes docs/performance.md: `python tests/benchmarks/report.py`, in the environment of tests/run.sh."""

import os
import platform
import sys
from datetime import datetime, timezone
from importlib.metadata import version
from pathlib import Path

import alignments
import night_windows
import numpy as np
import places
import rows
import skyline
import standpoints

PAGE = Path(__file__).resolve().parents[2] / "docs" / "performance.md"
LIBRARIES = ("numpy", "skyfield", "astropy")


def machine():
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    libraries = ", ".join(f"{name} {np.__version__ if name == 'numpy' else version(name)}" for name in LIBRARIES)
    return f"{cores} cores ({platform.machine()}), of which one is used; Python {platform.python_version()}, {libraries}"


def shown_s(seconds):
    return (
        f"{1e3 * seconds:.2f} ms"
        if seconds < 0.01
        else f"{seconds:.3f} s"
        if seconds < 1
        else f"{seconds:.1f} s"
        if seconds < 100
        else f"{seconds:,.0f} s".replace(",", " ")
    )


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


def nights_table(plugin_s, skyfield_s):
    yield "| | seconds | ratio |"
    yield "|---|---:|---:|"
    yield f"| plugin, windows and all columns included | {shown_s(plugin_s)} | |"
    for name, seconds in skyfield_s.items():
        yield f"| Skyfield's {name} | {shown_s(seconds)} | **{seconds / plugin_s:.0f}** |"


def ground_table(measured):
    yield "| | plugin | heights | heights alone | ratio | every crossing | ratio |"
    yield "|---|---:|---:|---:|---:|---:|---:|"
    for label, run in measured.items():
        plugin, bare, crossing = (shown_s(run[key]) for key in ("plugin", "bare", "crossing"))
        ratios, heights = skyline.ratios(run), f"{run['samples'] / 1e6:.0f} million"
        yield f"| {label} | {plugin} | {heights} | {bare} | **{ratios['bare']:.1f}** | {crossing} | **{ratios['crossing']:.0f}** |"


def beside_grass(one):
    if not one:
        return "GRASS was not installed for this run."
    return f"{1000 * one['r.horizon']:.1f} ms, where the plugin takes {1000 * one['plugin']:.1f} ms"


def ground_memory_table(peaks):
    yield "| raster | viewpoints | most memory held |"
    yield "|---:|---:|---:|"
    for (cells, count), peak in peaks.items():
        size = f"{cells:,} x {cells:,} cells".replace(",", " ") if count else "none: the libraries alone"
        yield f"| {size} | {count or ''} | {peak:.0f} MB |"


def standpoints_table(path, layer):
    yield "| | places | plugin | reference | ratio |"
    yield "|---|---:|---:|---:|---:|"
    rows = (
        (f"{standpoints.VERTICES} vertices, one subject, one bearing", path, "one call", path["search"] / path["one call"], 1),
        (
            f"{standpoints.SUBJECTS} subjects, {standpoints.PATHS} paths of {standpoints.PATH_VERTICES}, {standpoints.TIMES} times",
            *(layer, "loop", layer["loop"] / layer["search"], 0),
        ),
    )
    for label, taken, reference, ratio, digits in rows:
        count = f"{taken['places']:,}".replace(",", " ")
        yield f"| {label} | {count} | {shown_s(taken['search'])} | {shown_s(taken[reference])} | **{ratio:.{digits}f}** |"


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

## Night windows: {night_sites} sites, {night_count} nights, six kinds of event

{nights_table}

- Sunset, sunrise, dusk and dawn at -18°, moonrise and moonset; the plugin solves the core's windows beside them and tells every column, in
  UTC and local time, in {threads} threads: {site_nights} site-nights a second, {single_nights} in one.
- Skyfield searches for the events alone. `find_risings` and `find_settings`: {find_sites} sites, scaled; `find_discrete` with its
  `sunrise_sunset`, `dark_twilight_day` and `risings_and_settings` of the Moon, at their own steps: {discrete_sites} sites, scaled.
  Promised: {least_find} and {least_discrete} times.
- {large_sites} sites, {night_count} nights, the whole algorithm in QGIS into a GeoPackage: {large_rows} rows in {large_s}, at most
  {large_mb:.0f} MB held. Promised: under {most_mb:.0f} MB.

## Memory: the same search of alignments

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

## Ground: skylines and lines of sight on an elevation model of 10 m

{ground_table}

- Skylines of {viewpoints} viewpoints in {azimuths} azimuths, to {radius} km; {sights} lines of sight of {length} km, sampled each half
  cell. Rough fractal ground, a raster of {cells} x {cells} cells; seconds of the processor.
- Heights alone: as many bilinear heights by numpy from the plain array, at the very places (four values, three blends). The plugin
  takes them in a quicker way: of that the skylines are {own_skylines:.1f} times, the lines of sight {own_sights:.1f} times.
- Every crossing: numpy, ray by ray, at each crossing with a line through centres of cells; measured on {crossing_viewpoints} viewpoints and
  {crossing_pairs} pairs, and scaled. Where it finds the skyline beyond 200 m, the plugin's differs by {rms:.4f}° rms.
- GRASS's r.horizon, one place at a time, loading of the raster left out, mean of {grass_viewpoints} places: {grass}. It is
  written in C, takes the nearest cell, and knows neither the height of a lens nor refraction.
- GDAL's viewshed of one viewpoint to the same radius, which tells of every cell whether it is seen: {viewshed}.
- Promised: at most {most_bare:g} times the heights alone; {least_crossing:g} times as fast as every crossing.

{ground_memory}

Of a raster only the blocks are read that rays may reach, 4 bytes a height. Each number is the peak of a process of its own, without QGIS.

## Standpoints: where on a path

{standpoints}

- The first reference is one call of pyproj's geodesics for all vertices; the search, {one_ratio:.1f} times as long, solves each place to
  0.1 mm. Laying the path (its lengths and chainages, once for all subjects) takes {laying} ms more. Promised: at most {most_call:g} times.
- The second is a loop that asks pyproj for one geodesic at a time, for every subject, vertex and time; {calls} calls were run, and scaled.
  The plugin's time holds all: laying the paths, places of the core, search. Promised: at least {least_loop:g} times as fast.

## To measure again

`python tests/benchmarks/report.py` writes this page, in the environment that `tests/run.sh` makes; `places.py`, `alignments.py`,
`night_windows.py`, `rows.py`, `skyline.py` and `standpoints.py` beside it print their own part. The promises are tests only when asked for
by name (`python -m pytest tests/benchmarks/places.py tests/benchmarks/alignments.py tests/benchmarks/night_windows.py
tests/benchmarks/rows.py tests/benchmarks/skyline.py tests/benchmarks/standpoints.py`): a busy machine must not make the common run fail.
"""


def page():
    placed, bare_s = places.measure()
    found, solver_s, scan_s = alignments.measure()
    site_nights, single_s, windows_s, skyfield_s = night_windows.measure()
    large_rows, large_s, large_mb = night_windows.large()
    skylines, sights, one, viewshed_s = skyline.measure()
    path, layer = standpoints.one_target(), standpoints.a_layer()
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
        night_sites=night_windows.SITES,
        night_count=night_windows.NIGHTS,
        nights_table="\n".join(nights_table(windows_s, skyfield_s)),
        threads=night_windows.night_windows.THREADS,
        single_nights=f"{site_nights / single_s:,.0f}".replace(",", " "),
        site_nights=f"{site_nights / windows_s:,.0f}".replace(",", " "),
        find_sites=night_windows.FIND_SITES,
        discrete_sites=night_windows.DISCRETE_SITES,
        least_find=night_windows.LEAST_RATIO["find_risings and find_settings"],
        least_discrete=night_windows.LEAST_RATIO["find_discrete"],
        large_sites=f"{night_windows.LARGE_SITES:,}".replace(",", " "),
        large_rows=f"{large_rows:,}".replace(",", " "),
        large_s=shown_s(large_s),
        large_mb=large_mb,
        most_mb=night_windows.MOST_MEMORY_MB,
        memory="\n".join(memory_table(alignments.memory())),
        rows_table="\n".join(rows_table(rows.measure())),
        qgis=rows.version(),
        batch=rows.BATCH,
        row_runs=rows.REPEATS,
        most_ratio=rows.MOST_RATIO,
        ground_table="\n".join(ground_table({"skylines": skylines, "lines of sight": sights})),
        viewpoints=skyline.VIEWPOINTS,
        azimuths=skyline.AZIMUTHS,
        radius=f"{skyline.RADIUS_M / 1000:.0f}",
        sights=f"{skyline.PAIRS:,}".replace(",", " "),
        length=f"{skyline.LENGTH_M / 1000:.0f}",
        cells=f"{skyline.CELLS:,}".replace(",", " "),
        own_skylines=skyline.ratios(skylines)["own"],
        own_sights=skyline.ratios(sights)["own"],
        crossing_viewpoints=skyline.CROSSING_VIEWPOINTS,
        crossing_pairs=skyline.CROSSING_PAIRS,
        rms=skylines["rms_deg"],
        grass_viewpoints=skyline.GRASS_VIEWPOINTS,
        grass=beside_grass(one),
        viewshed=shown_s(viewshed_s),
        most_bare=skyline.MOST_BARE,
        least_crossing=skyline.LEAST_CROSSING,
        one_ratio=path["search"] / path["one call"],
        laying=f"{1e3 * path['laying']:.2f}",
        most_call=standpoints.MOST_OF_ONE_CALL,
        standpoints="\n".join(standpoints_table(path, layer)),
        calls=f"{standpoints.LOOP_CALLS:,}".replace(",", " "),
        least_loop=standpoints.LEAST_OF_LOOP,
        ground_memory="\n".join(ground_memory_table(skyline.memory())),
    )


if __name__ == "__main__":
    text = page()
    PAGE.parent.mkdir(exist_ok=True)
    PAGE.write_text(text, encoding="utf-8")
    sys.stdout.write(text)
