"""How long standpoints take, beside one geodesic call over all vertices, and beside a loop that asks for one geodesic at a time.

The scene is made up and proves nothing but speed: paths that wander about subjects within some kilometres.
"""

import sys
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1])]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
from pyproj import Geod  # noqa: E402
from telling import Ratio, Section, in_turn, number, shown_s, timed  # noqa: E402

from skyalidade.plan.aims import Bearing, BodyBearing  # noqa: E402
from skyalidade.plan.paths import Paths  # noqa: E402
from skyalidade.plan.sightlines import Subjects  # noqa: E402
from skyalidade.plan.standpoints import Reach, Search  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402

GEOD = Geod(ellps="WGS84")
VERTICES, REPEATS = 1000, 30
ROUNDS = 3  # of the large search and the loop, in turn
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


def one_target():
    """Times of the search on a path that is laid, of laying it, and of one call over its vertices; and how many places are found."""
    (lon, lat), subject, bearing_deg = one_path()
    ends = np.full(VERTICES, subject.lon_deg[0]), np.full(VERTICES, subject.lat_deg[0])
    path = Paths(lon, lat, [0, VERTICES], [0], unchanged)

    def search():
        found = Search(path, subject, Bearing(bearing_deg), Reach())
        return [found.points(runs)[0]["u"].size for runs, _ in found.blocks()]

    works = {
        "search": search,
        "laying": lambda: Paths(lon, lat, [0, VERTICES], [0], unchanged),
        "one call": lambda: GEOD.inv(lon, lat, *ends),
    }
    taken = in_turn({name: lambda work=work: timed(work) for name, work in works.items()}, REPEATS)
    return {**taken, "places": sum(search())}


def a_layer():
    """Times of a search of all subjects, paths and times, and of a loop over all of them, scaled; and how many places are found."""
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

    places = search()

    def loop():
        for i in range(LOOP_CALLS):
            GEOD.inv(x[i % x.size], y[i % x.size], subjects.lon_deg[i % SUBJECTS], subjects.lat_deg[i % SUBJECTS])

    taken = in_turn({"search": lambda: timed(search), "loop": lambda: timed(loop)}, ROUNDS)
    return {"search": taken["search"], "loop": taken["loop"].times(SUBJECTS * PATHS * PATH_VERTICES * TIMES / LOOP_CALLS), "places": places}


NOTES = """- One path: against one call of pyproj's geodesics for all its vertices; each of the {one_places} places is solved to 0.1 mm.
  Laying the path (its lengths and chainages, once for all subjects) takes {laying} more.
- {subjects} subjects, {paths} paths of {path_vertices} vertices, {times} times, {places} places: against a loop that asks pyproj for one
  geodesic at a time, for every subject, vertex and time; {calls} calls were run, and scaled. The plugin's time holds all: laying the
  paths, places of the core, search.
"""


def section():
    one, layer = one_target(), a_layer()
    ratios = [
        Ratio(f"a path of {VERTICES} vertices", one["search"], "one call for its vertices", one["one call"], at_most=MOST_OF_ONE_CALL),
        Ratio(f"{SUBJECTS} subjects, {PATHS} paths", layer["search"], "geodesics one by one", layer["loop"], at_least=LEAST_OF_LOOP),
    ]
    notes = NOTES.format(
        one_places=one["places"],
        laying=shown_s(one["laying"].best_s),
        subjects=SUBJECTS,
        paths=PATHS,
        path_vertices=PATH_VERTICES,
        times=TIMES,
        places=number(layer["places"]),
        calls=number(LOOP_CALLS),
    )
    return Section("Standpoints", "where on a path", ratios, notes)


def test_ratios():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    assert [ratio for ratio in section().ratios if not ratio.kept] == []


if __name__ == "__main__":
    from report import tell

    tell(section())
