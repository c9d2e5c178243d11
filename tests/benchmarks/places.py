"""How long places take: azimuth and true altitude of 1000 sites at 1000 times, beside Skyfield, astropy and the bare arctangents."""

import sys
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "sky")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import astropy_places  # noqa: E402
import numpy as np  # noqa: E402
from skyfield_places import Observer, target, times  # noqa: E402
from telling import Ratio, Section, in_turn, shown_s, timed  # noqa: E402

from skyalidade.sky import bodies, horizontal  # noqa: E402
from skyalidade.sky.tables import TimeTable  # noqa: E402

SITES, TIMES = 1000, 1000
ASTROPY_SITES = 5  # of the thousand, all times: scaled by 200
BODIES = {"Moon": ("moon", bodies.MOON), "Sun": ("sun", bodies.SUN), "fixed direction": ("core", bodies.CORE)}
LEAST = {"skyfield": {"Moon": 100, "Sun": 100, "fixed direction": 100}, "astropy": {"Moon": 1000, "Sun": 1000, "fixed direction": 500}}
ROUNDS, QUICK_RUNS = 3, 7  # of all in turn; and of the plugin in each: the quickest counts


def scene():
    """Sites over the sphere; times over a year whose Earth rotation is measured, so that astropy need not guess it."""
    rng = np.random.default_rng(1)
    lon, lat = rng.uniform(-180, 180, SITES), np.degrees(np.arcsin(rng.uniform(-1, 1, SITES)))
    return lon, lat, rng.uniform(0, 3000, SITES), np.sort(rng.uniform(1735689600.0, 1767225600.0, TIMES))  # 2025


def measure():
    """For each body the time of plugin, Skyfield and astropy (scaled); and that of the bare arctangents.

    Returns
    -------
    rows : dict of str to dict of str to Taken
    arctangents : Taken
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
            row = in_turn(
                {
                    "plugin": lambda plugin=plugin: [timed(plugin) for _ in range(QUICK_RUNS)],
                    "skyfield": lambda skyfield=skyfield: timed(skyfield),
                    "astropy": lambda astropy=astropy: timed(astropy) * SITES / ASTROPY_SITES,
                },
                ROUNDS,
            )
        rows[label] = row
    return rows, arctangents()


def arctangents():
    """Two arctan2 for each of a million places, in pieces that fit the processor's cache."""
    chunk = horizontal.CHUNK_CELLS
    x, y = np.random.default_rng(2).normal(size=(2, chunk))

    def work():
        for _ in range(SITES * TIMES // chunk):
            np.arctan2(y, x)
            np.arctan2(x, y)

    return in_turn({"bare": lambda: timed(work)}, 5)["bare"].times(SITES * TIMES / (SITES * TIMES // chunk * chunk))


NOTES = """- The plugin's time holds everything: the table of the times (light time, aberration, nutation) and the {sites} sites. numpy's
  two arctan2 for each place, which no way to an azimuth and an altitude can do without, take {bare} of it.
- Skyfield: `(earth + site).at(t).observe(body).apparent().altaz()`, a loop over all sites with one shared `t` whose nutation is computed
  beforehand; all of it was run.
- astropy: `get_body`, or the catalogue place, into `AltAz`, a loop over sites, after a first run that is not counted; measured on
  {astropy_sites} sites and all times, and scaled by {scale}.
"""


def section():
    rows, bare = measure()
    ratios = [
        Ratio(label, row["plugin"], against, row[name], at_least=LEAST[name][label])
        for label, row in rows.items()
        for name, against in (("skyfield", "Skyfield, warm"), ("astropy", "astropy"))
    ]
    notes = NOTES.format(sites=SITES, bare=shown_s(bare.best_s), astropy_sites=ASTROPY_SITES, scale=SITES // ASTROPY_SITES)
    return Section("Places", f"azimuth and true altitude of {SITES} sites at {TIMES} times", ratios, notes)


def test_ratios():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    assert [ratio for ratio in section().ratios if not ratio.kept] == []


if __name__ == "__main__":
    from report import tell

    tell(section())
