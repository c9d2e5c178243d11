"""Measure every number of docs/accuracy.md again: `python tests/benchmarks/accuracy.py`, in the environment of tests/run.sh.

The tests tell what they measure by pytest's `record_property`; here they are run and the worst of each is shown beside what the documents
say. With --write the documents are renewed: each number in them that bears a name, as in `0.0021<!--sun_skyfield-->"`.
"""

import math
import re
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]
PAGES = [TOP / "docs" / "accuracy.md", TOP / "README.md"]
NAMED = re.compile(r"([\d.][\d.e -]*?)<!--(\w+)-->")
TESTS = (
    *("sky/test_horizontal.py", "sky/test_horizontal_by_astropy.py", "sky/test_published_places.py", "sky/test_galactic.py"),
    *("sky/test_refraction.py", "sky/test_moonlight.py", "plan/test_alignments_by_skyfield.py", "plan/test_night_windows_by_skyfield.py"),
    *("plan/test_standpoints.py", "plan/test_shadow_track.py", "plan/test_sightlines.py", "plan/test_horizons_on_real_ground.py"),
    *("plan/test_zones.py", "plan/test_field_plan.py", "plan/test_season_chart.py", "plan/test_exposure.py"),
    *("ground", "lens", "charts/test_skyline_view.py"),
)
COUNTS = {"ends", "ends_grazing", "sun_events", "moon_events", "events_disputed", "passages", "standpoints_checked", "track_places"} | {
    *("viewshed_cells", "zones_wrong", "skyline_ends", "chart_minutes", "ends_by_the_moon")
}
LEAST = {
    "viewshed_agree",
    *(f"{what}_{how}" for what in ("shadows_rough", "shadows_real", "one_sky") for how in ("exact", "within")),
    "coarse_same",
}  # the more the better


class Told:
    """What the tests of a run tell: {name: [value, ...]}, and those that failed."""

    def __init__(self):
        self.values, self.failed = {}, []

    def pytest_runtest_logreport(self, report):
        if report.failed:
            self.failed.append(report.nodeid)
        if report.when == "call":
            for name, value in report.user_properties:
                self.values.setdefault(name, []).append(value)


def measure():
    """The worst of each number, or the sum of counts, by name; the run ends where a test fails."""
    told = Told()
    pytest.main(["-q", "--rootdir", str(TOP), *(str(TOP / "tests" / name) for name in TESTS)], plugins=[told])
    if told.failed:
        sys.exit(f"{len(told.failed)} tests failed: what they measure is not told.")
    return {name: (sum if name in COUNTS else min if name in LEAST else max)(values) for name, values in told.values.items()}


def shown(name, value):
    """A count as it is, anything else to two digits, rounded to the worse side."""
    if name in COUNTS:
        return f"{value:,.0f}".replace(",", " ") if value >= 10_000 else f"{value:.0f}"
    if name in LEAST:
        return f"{math.floor(100 * value) / 100:.2f}".rstrip("0").rstrip(".")
    if value == 0:
        return "0"
    unit = 10.0 ** (math.floor(math.log10(value)) - 1)
    value = math.ceil(value / unit - 1e-9) * unit
    return f"{value:.1e}".replace("e-0", "e-") if value < 1e-4 else f"{value:.{max(0, -math.floor(math.log10(unit)))}f}"


def said():
    """The numbers that the documents name: {name: {text, ...}}."""
    found = {}
    for page in PAGES:
        for text, name in NAMED.findall(page.read_text(encoding="utf-8")):
            found.setdefault(name, set()).add(text)
    return found


def main(write):
    """Measure, show, and renew the documents if asked to."""
    measured = {name: shown(name, value) for name, value in measure().items()}
    for name, texts in sorted(said().items()):
        now = measured.get(name, "not measured")
        print(f"{name:<22} {now:>12}   {'as the documents say' if texts == {now} else 'the documents say ' + ', '.join(sorted(texts))}")
    for name in sorted(measured.keys() - said().keys()):
        print(f"{name:<22} {measured[name]:>12}   (not in the documents)")
    for page in PAGES if write else ():
        text = page.read_text(encoding="utf-8")
        page.write_text(NAMED.sub(lambda found: f"{measured.get(found[2], found[1])}<!--{found[2]}-->", text), encoding="utf-8")
    return said().keys() - measured.keys()


if __name__ == "__main__":
    sys.exit(f"Not measured: {', '.join(sorted(missing))}" if (missing := main("--write" in sys.argv[1:])) else 0)
