"""How long places take: azimuth and true altitude of 1000 sites at 1000 times, beside Skyfield, astropy and the bare arctangents."""

import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "sky")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import astropy_places  # noqa: E402
import numpy as np  # noqa: E402
from skyfield_places import Observer, target, times  # noqa: E402

from skyalidade.sky import bodies, horizontal  # noqa: E402
from skyalidade.sky.tables import TimeTable  # noqa: E402

SITES, TIMES = 1000, 1000
ASTROPY_SITES = 5  # of the thousand, all times: scaled by 200
BODIES = {"Moon": ("moon", bodies.MOON), "Sun": ("sun", bodies.SUN), "fixed direction": ("core", bodies.CORE)}
LEAST = {"skyfield": {"Moon": 100, "Sun": 100, "fixed direction": 100}, "astropy": {"Moon": 1000, "Sun": 1000, "fixed direction": 500}}
REPEATS = {"plugin": 20, "skyfield": 2, "astropy": 2}  # the quickest counts: what else the machine does is no part of the question


def seconds(work, repeats):
    """Least time of several runs. [s]."""
    taken = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return min(taken)


def scene():
    """Sites over the sphere; times over a year whose Earth rotation is measured, so that astropy need not guess it."""
    rng = np.random.default_rng(1)
    lon, lat = rng.uniform(-180, 180, SITES), np.degrees(np.arcsin(rng.uniform(-1, 1, SITES)))
    return lon, lat, rng.uniform(0, 3000, SITES), np.sort(rng.uniform(1735689600.0, 1767225600.0, TIMES))  # 2025


def measure():
    """For each body the seconds of: plugin, Skyfield, astropy (scaled). And the bare arctangents.

    Returns
    -------
    rows : dict of str to dict of str to float
    arctangents_s : float
    """
    lon, lat, height, t_utc_s = scene()
    sites = horizontal.Sites(lon, lat, height)
    warm = times(t_utc_s)
    Observer(lon[0], lat[0], height[0], warm).altaz(target("sun"))  # nutation and rotation of all times are kept from here on
    rows = {}
    for label, (name, body) in BODIES.items():

        def plugin(body=body):
            horizontal.true_altaz(sites, TimeTable(t_utc_s, [body]), body)

        def skyfield(name=name):
            for site in zip(lon, lat, height):
                Observer(*site, warm).altaz(target(name))

        def astropy(name=name):
            for site in list(zip(lon, lat, height))[:ASTROPY_SITES]:
                astropy_places.altaz_by_default(name, astropy_places.frame(t_utc_s, astropy_places.location(*site)))

        with astropy_places.offline():
            astropy()
            row = {"astropy": seconds(astropy, REPEATS["astropy"]) * SITES / ASTROPY_SITES}
        half = REPEATS["plugin"] // 2  # before and after the long run of the other, lest the machine be busy in one of them
        early_s = seconds(plugin, half)
        row["skyfield"] = seconds(skyfield, REPEATS["skyfield"])
        row["plugin"] = min(early_s, seconds(plugin, half))
        rows[label] = row
    return rows, arctangents()


def arctangents():
    """Two arctan2 for each of a million places, in pieces that fit the processor's cache. [s]."""
    chunk = horizontal.CHUNK_CELLS
    x, y = np.random.default_rng(2).normal(size=(2, chunk))

    def work():
        for _ in range(SITES * TIMES // chunk):
            np.arctan2(y, x)
            np.arctan2(x, y)

    return seconds(work, REPEATS["plugin"]) * SITES * TIMES / (SITES * TIMES // chunk * chunk)


def test_ratios():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    rows, _ = measure()
    for reference, least in LEAST.items():
        for label, ratio in least.items():
            assert rows[label][reference] / rows[label]["plugin"] >= ratio, (label, reference)


if __name__ == "__main__":
    measured, bare_s = measure()
    for label, row in measured.items():
        print(label, {name: f"{value:.3f} s" for name, value in row.items()})
    print(f"two arctan2: {bare_s:.3f} s")
