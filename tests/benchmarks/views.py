"""How long a view takes, and what part of it is not matplotlib's: `python tests/benchmarks/views.py`, in the environment of tests/run.sh.

A hundred views over one elevation model of 10 m cells, to 25 km, which is read once, as is the table of the sky.
"""

import sys
import tempfile
import time
from pathlib import Path

import numpy as np

TOP = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(TOP / "build" / "stage"), str(TOP / "tests" / "ground")]

from rough_ground import around, fractal  # noqa: E402
from telling import Ratio, Section, taken  # noqa: E402

from skyalidade.charts import sheets, skyline_view  # noqa: E402
from skyalidade.charts.themes import PRINT  # noqa: E402
from skyalidade.ground.terrain import terrain  # noqa: E402
from skyalidade.plan.framing import frame_of  # noqa: E402
from skyalidade.plan.relief import Relief  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402
from skyalidade.plan.view import Nights, Scene, azimuths_across, ground_of  # noqa: E402

VIEWS, RADIUS_M, CELL_M, CELLS = 100, 25_000.0, 10.0, 5400
MOST_OF_MATPLOTLIB = 1.5
LON_DEG, LAT_DEG = -33.0, 36.0
T_UTC_S = np.datetime64("2027-06-06T01:00:00").astype(float)


def measure(views=VIEWS):
    """Seconds of each view: the plan's, the drawing's, and the writing's of PNG and SVG."""
    relief = Relief(terrain(*around(LON_DEG, LAT_DEG, fractal(CELLS, CELLS, 3), "EPSG:32625", CELL_M)), RADIUS_M)
    lon, lat = (middle + np.random.default_rng(8).uniform(-0.01, 0.01, views) for middle in (LON_DEG, LAT_DEG))
    frame, spent_s = frame_of("full_frame", 20.0), {"plan": [], "drawing": [], "writing": []}
    skyline_view.draw(scene(Nights([T_UTC_S], target("core")), relief, lon[0], lat[0], frame), ["warm"], [], PRINT)
    before = time.process_time()
    nights = Nights([T_UTC_S], target("core"))
    with tempfile.TemporaryDirectory() as folder:
        for i in range(views):
            seen = scene(nights, relief, lon[i], lat[i], frame)
            planned = time.process_time()
            figure = skyline_view.draw(seen, ["A view", "of the benchmark"], ["00:00"] * seen.moment.way.shape[1], PRINT)
            drawn = time.process_time()
            for ending in ("png", "svg"):
                sheets.save(figure, Path(folder) / f"view.{ending}")
            written = time.process_time()
            for name, end, begin in (("plan", planned, before), ("drawing", drawn, planned), ("writing", written, drawn)):
                spent_s[name].append(end - begin)
            before = written
    return spent_s


def scene(nights, relief, lon_deg, lat_deg, frame):
    (moment,) = nights.over(lon_deg, lat_deg, 100.0)
    moment.columns["body"] = "core"
    aim = moment.columns["az_deg"], 10.0
    lens_m = float(relief.ground_m(lon_deg, lat_deg)) + 1.5
    return Scene(frame, *aim, moment, ground_of(relief, lon_deg, lat_deg, lens_m, azimuths_across(frame, *aim)), [])


NOTES = """- {views} skyline views of one viewpoint each over one elevation model of 10 m cells, to {radius:.0f} km, which is read once:
  ground, band, bodies and frame worked out and handed to matplotlib ({plan:.0%}), drawn by it ({drawing:.0%}), and written as
  PNG and SVG ({writing:.0%}).
"""


def section():
    spent = measure()
    each = [sum(parts) for parts in zip(*spent.values())]
    by_matplotlib = [drawing + writing for drawing, writing in zip(spent["drawing"], spent["writing"])]
    ratio = Ratio("a skyline view", taken(each), "drawing and writing it", taken(by_matplotlib), at_most=MOST_OF_MATPLOTLIB)
    shares = {name: sum(seconds) / sum(each) for name, seconds in spent.items()}
    return Section("Pictures", "what the lens sees", [ratio], NOTES.format(views=VIEWS, radius=RADIUS_M / 1000, **shares))


if __name__ == "__main__":
    from report import tell

    tell(section())
