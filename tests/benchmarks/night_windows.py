"""How long night windows take: 1000 sites, a year, beside Skyfield's search for the same risings and settings; and their memory."""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "sky")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
from skyfield import almanac  # noqa: E402
from skyfield.api import wgs84  # noqa: E402
from skyfield_places import kernel, timescale  # noqa: E402
from skyfield_places import target as skyfield_body  # noqa: E402
from telling import Ratio, Section, in_turn, number, shown_s  # noqa: E402

from skyalidade.plan.ahead import THREADS  # noqa: E402
from skyalidade.plan.conditions import DOWN, Conditions  # noqa: E402
from skyalidade.plan.night_windows import Places, find_night_windows  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402

SITES, FIRST, LAST, NIGHTS = 1000, "2027-01-01", "2027-12-31", 365
KINDS = (("sun", -50.0 / 60.0), ("sun", -18.0), ("moon", None))  # rising and setting of each: six kinds of event
FIND_SITES, DISCRETE_SITES, ROUNDS = 12, 2, 4
LEAST_RATIO = {"find_risings and find_settings": 25, "find_discrete": 1000}
LARGE_SITES = 10_000  # to the end, with QGIS, into a GeoPackage
MOST_MEMORY_MB = 1000.0


def places(count):
    rng = np.random.default_rng(6)
    return Places(
        rng.uniform(-180, 180, count),
        np.degrees(np.arcsin(rng.uniform(-1, 1, count))),
        rng.uniform(0, 2000, count),
        ["UTC"],
        np.zeros(count, int),
    )


def solve(count, threads=THREADS):
    """Site-nights, and seconds; all columns of nights and windows of the core, moments in two clocks.

    One thread is measured by the processor's time, as Skyfield is; several by the clock, which on a busy machine speaks against them.
    """
    clock = time.process_time if threads == 1 else time.perf_counter
    start, rows = clock(), 0
    asked = (places(count), target("core"), FIRST, LAST, Conditions(moon=DOWN))
    for table, _ in find_night_windows(*asked, threads=threads):
        rows += len(table["site"])
    return rows, clock() - start


def clocks():
    """Seconds of the clock and of the processor; the lesser counts, as the latter tells those of all threads of the linear algebra."""
    return np.array([time.perf_counter(), time.process_time()])


def span():
    return (timescale().utc(2027, 1, day) for day in (1, 1 + NIGHTS))


def skyfield_sites(count):
    some = places(count)
    return [wgs84.latlon(lat, lon, elevation_m=height) for lon, lat, height in zip(some.lon_deg, some.lat_deg, some.height_m)]


def find():
    """Seconds of Skyfield's find_risings and find_settings for the six kinds of event and all sites, from a few."""
    first, last = span()
    almanac.find_risings(kernel()[399] + skyfield_sites(1)[0], skyfield_body("sun"), first, last)  # not counted
    start = clocks()
    for site in skyfield_sites(FIND_SITES):
        for body, horizon_deg in KINDS:
            for search in (almanac.find_risings, almanac.find_settings):
                search(kernel()[399] + site, skyfield_body(body), first, last, horizon_deg)
    return (clocks() - start).min() * SITES / FIND_SITES


def find_discrete():
    """Seconds of Skyfield's find_discrete with its own functions for the same events: Sun, twilights, Moon."""
    start = clocks()
    for site in skyfield_sites(DISCRETE_SITES):
        for changes in (
            almanac.sunrise_sunset(kernel(), site),
            almanac.dark_twilight_day(kernel(), site),
            almanac.risings_and_settings(kernel(), skyfield_body("moon"), site),
        ):
            almanac.find_discrete(*span(), changes)
    return (clocks() - start).min() * SITES / DISCRETE_SITES


def measure():
    """Site-nights; times of the plugin in one thread and as it runs, and of both of Skyfield's ways by their names (scaled)."""
    solve(10)  # files opened, code compiled
    works = {
        "one thread": lambda: solve(SITES, 1)[1],
        "plugin": lambda: solve(SITES)[1],
        "find_risings and find_settings": find,
        "find_discrete": find_discrete,
    }
    return SITES * NIGHTS, in_turn(works, ROUNDS)


def peak_mb():
    """Most memory this process has held. [MB]."""
    with open("/proc/self/status", encoding="ascii") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmHWM"))


def large():
    """Rows, seconds and peak of a process that runs the algorithm over many sites into a GeoPackage, QGIS and all."""
    told = subprocess.run([sys.executable, __file__, str(LARGE_SITES)], capture_output=True, text=True, check=True).stdout
    rows, seconds, peak = told.split()[-3:]
    return int(rows), float(seconds), float(peak)


def run_large(count):
    """What `large` runs."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    import rows
    from qgis.core import QgsApplication, QgsVectorLayer

    application = QgsApplication([], False)
    application.initQgis()
    from skyalidade.plugin import SkyAlidade

    plugin = SkyAlidade(None)
    plugin.initProcessing()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "nights.gpkg")
        asked = {"SITES": rows.points(count, 6), "SITE_NAME": "name", "FIRST_NIGHT": FIRST, "LAST_NIGHT": LAST}
        seconds = rows.end_to_end_s("night_windows", asked, path)
        written = QgsVectorLayer(str(path), "", "ogr").featureCount()
    plugin.unload()
    print(written, seconds, peak_mb(), flush=True)
    os._exit(0)  # QGIS may fail on its way out


NOTES = """- Sunset, sunrise, dusk and dawn at -18°, moonrise and moonset; the plugin solves the core's windows beside them and tells every
  column, in UTC and local time, in {threads} threads: {all_nights} site-nights a second, {single_nights} in one.
- Skyfield searches for the events alone. `find_risings` and `find_settings`: {find_sites} sites, scaled; `find_discrete` with its
  `sunrise_sunset`, `dark_twilight_day` and `risings_and_settings` of the Moon, at their own steps: {discrete_sites} sites, scaled.
- {large}
"""

LARGE = """{sites} sites, {nights} nights, the whole algorithm in QGIS into a GeoPackage: {rows} rows in {seconds}, at most {mb:.0f} MB held
  (promised: under {most:.0f} MB)."""


def section():
    found, times = measure()
    ratios = [
        Ratio(f"{SITES} sites, six kinds of event", times["plugin"], f"Skyfield's {name}", times[name], at_least=least)
        for name, least in LEAST_RATIO.items()
    ]
    ratios += [Ratio("the same in one thread", times["one thread"], f"Skyfield's {name}", times[name]) for name in LEAST_RATIO]
    rows, seconds, peak = large()
    told = LARGE.format(sites=number(LARGE_SITES), nights=NIGHTS, rows=number(rows), seconds=shown_s(seconds), mb=peak, most=MOST_MEMORY_MB)
    notes = NOTES.format(
        threads=THREADS,
        all_nights=number(found / times["plugin"].best_s),
        single_nights=number(found / times["one thread"].best_s),
        find_sites=FIND_SITES,
        discrete_sites=DISCRETE_SITES,
        large=told,
    )
    return Section("Night windows", f"{SITES} sites, {NIGHTS} nights", ratios, notes)


def test_ratio():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    _, times = measure()
    for name, least in LEAST_RATIO.items():
        assert times[name].best_s / times["plugin"].best_s >= least, name


def test_ten_thousand_sites_run_to_the_end():
    """Some minutes long."""
    rows, _, peak = large()
    assert rows == LARGE_SITES * NIGHTS
    assert peak < MOST_MEMORY_MB


if __name__ == "__main__":
    if len(sys.argv) > 1:
        run_large(int(sys.argv[1]))
    from report import tell

    tell(section())
