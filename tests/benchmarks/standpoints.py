"""How long standpoints take, beside one geodesic call over all vertices, and beside a loop that asks for one geodesic at a time.

The scene is made up and proves nothing but speed: paths that wander about subjects within some kilometres.
"""

import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1])]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
from pyproj import Geod  # noqa: E402

from skyalidade.plan.aims import Bearing, BodyBearing  # noqa: E402
from skyalidade.plan.paths import Paths  # noqa: E402
from skyalidade.plan.sightlines import Subjects  # noqa: E402
from skyalidade.plan.standpoints import Reach, Search  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402

GEOD = Geod(ellps="WGS84")
VERTICES, REPEATS = 1000, 30
SUBJECTS, PATHS, PATH_VERTICES, TIMES = 200, 50, 100, 100
LOOP_CALLS = 20_000  # of the point by point loop that are run; the rest is scaled
NIGHT_UTC_S = 1812331800.0  # 2027-06-07 01:30 UTC
MOST_OF_ONE_CALL, LEAST_OF_LOOP = 3.0, 50.0


def wander(rng, vertices, step_deg):
    """Longitudes and latitudes of a walk."""
    heading = np.cumsum(rng.normal(0.0, 0.15, vertices)) + rng.uniform(0.0, 6.3)
    return np.cumsum(step_deg * np.sin(heading)) / 0.81, np.cumsum(step_deg * np.cos(heading))


def unchanged(x, y):
    return x, y


def one_path():
    """A path, a subject beside it, and a bearing under which it is seen from several places."""
    lon, lat = wander(np.random.default_rng(3), VERTICES, 2e-5)
    lon, lat = lon - 33.0, lat + 36.0
    subject = Subjects(lon.mean() + 0.002, lat.mean())
    seen = GEOD.inv(lon, lat, np.full(VERTICES, subject.lon_deg[0]), np.full(VERTICES, subject.lat_deg[0]))[0]
    return (lon, lat), subject, float(np.median(np.asarray(seen) % 360.0))


def quickest_s(work, repeats):
    """Shortest of several runs. [s]."""
    taken = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return min(taken)


def one_target():
    """Seconds of the search on a path that is laid, of laying it, and of one call over its vertices; and how many places are found."""
    (lon, lat), subject, bearing_deg = one_path()
    ends = np.full(VERTICES, subject.lon_deg[0]), np.full(VERTICES, subject.lat_deg[0])
    path = Paths(lon, lat, [0, VERTICES], [0], unchanged)

    def search():
        found = Search(path, subject, Bearing(bearing_deg), Reach())
        return [found.points(runs)[0]["u"].size for runs, _ in found.blocks()]

    taken = {
        "search": quickest_s(search, REPEATS),
        "laying": quickest_s(lambda: Paths(lon, lat, [0, VERTICES], [0], unchanged), REPEATS),
        "one call": quickest_s(lambda: GEOD.inv(lon, lat, *ends), REPEATS),
    }
    return {**taken, "places": sum(search())}


def a_layer():
    """Seconds of a search of all subjects, paths and times, of a loop over all of them, scaled, and how many places are found."""
    rng = np.random.default_rng(7)
    walks = [wander(rng, PATH_VERTICES, 1e-4) for _ in range(PATHS)]
    x, y = (np.concatenate([walk[axis] + rng.uniform(-0.01, 0.01) for walk in walks]) for axis in (0, 1))
    x, y = x - 33.0, y + 36.0
    subjects = Subjects(-33.0 + rng.uniform(-0.012, 0.012, SUBJECTS), 36.0 + rng.uniform(-0.01, 0.01, SUBJECTS))
    moments = NIGHT_UTC_S + 60.0 * np.arange(TIMES)

    def search():
        paths = Paths(x, y, PATH_VERTICES * np.arange(PATHS + 1), np.arange(PATHS), unchanged)
        found = Search(paths, subjects, BodyBearing(target("core"), moments), Reach())
        return sum(found.points(runs)[0]["u"].size for runs, _ in found.blocks())

    start = time.perf_counter()
    places = search()
    plugin_s = time.perf_counter() - start
    start = time.perf_counter()
    for i in range(LOOP_CALLS):
        GEOD.inv(x[i % x.size], y[i % x.size], subjects.lon_deg[i % SUBJECTS], subjects.lat_deg[i % SUBJECTS])
    loop_s = (time.perf_counter() - start) * SUBJECTS * PATHS * PATH_VERTICES * TIMES / LOOP_CALLS
    return {"search": plugin_s, "loop": loop_s, "places": places}


def test_ratios():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    one, layer = one_target(), a_layer()
    assert one["search"] <= MOST_OF_ONE_CALL * one["one call"]
    assert layer["loop"] >= LEAST_OF_LOOP * layer["search"]


if __name__ == "__main__":
    one, layer = one_target(), a_layer()
    path, taken = (
        f"{VERTICES} vertices, one target, {one['places']} places",
        {name: 1e3 * one[name] for name in ("search", "laying", "one call")},
    )
    print(f"{path}: " + ", ".join(f"{name} {ms:.2f} ms" for name, ms in taken.items()) + f", ratio {one['search'] / one['one call']:.2f}")
    print(
        f"{SUBJECTS} subjects x {PATHS} paths of {PATH_VERTICES} x {TIMES} times, {layer['places']} places: {layer['search']:.1f} s, "
        f"point by point {layer['loop']:.0f} s, ratio {layer['loop'] / layer['search']:.0f}"
    )
