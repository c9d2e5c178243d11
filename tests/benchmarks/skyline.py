"""How long skylines and lines of sight take on an elevation model, beside the bare cost of its heights and every crossing with the grid.

Printed besides: GRASS's r.horizon, where it is installed, and GDAL's viewshed, which answer other questions; and memory. Seconds are
those of the processor.
"""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "authorities", "ground")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import every_crossing  # noqa: E402
import grass_r_horizon  # noqa: E402
import numpy as np  # noqa: E402
import rough_ground  # noqa: E402
from osgeo import gdal  # noqa: E402
from telling import Ratio, Section, in_turn, memory_table, number, timed  # noqa: E402

from skyalidade.ground import sight, skyline, terrain  # noqa: E402

CRS, LON, LAT, CELL_M, TILE = "EPSG:32633", 15.0, 45.0, 10.0, 3000
CELLS = 2 * TILE  # 60 km
VIEWPOINTS, AZIMUTHS, RADIUS_M, EYE_M = 1000, 360, 25_000.0, 1.6
SPREAD = 0.04, 2  # degrees to each side, so that all rays end on the raster; seed
AZ = np.arange(AZIMUTHS) * (360.0 / AZIMUTHS)
PAIRS, LENGTH_M = 10_000, 5_000.0
CROSSING_VIEWPOINTS, CROSSING_PAIRS = 2, 500  # of all: scaled
GRASS_VIEWPOINTS, GRASS_STEP_DEG = 8, 0.02  # loading takes a second, and varies by more than 360 azimuths take
PART = 20  # of the work: the places of its heights are kept
REPEATS = 3  # of each; the quickest counts
MOST_BARE, LEAST_CROSSING = 2.0, 5.0
MEMORY_VIEWPOINTS = (1, 100, 1000)
BIG_CELLS, SMALL_TILE = 20_000, 500
MOST_GROWTH_MB = 100.0


def around(cells):
    """Level ground of so many cells each way, which takes no memory."""
    return rough_ground.around(LON, LAT, np.broadcast_to(np.float32(0), (cells, cells)), CRS, CELL_M)


def rough():
    """Rough ground that repeats itself once in each direction. float32, 144 MB."""
    return rough_ground.around(LON, LAT, np.tile(rough_ground.fractal(TILE, TILE, 1), (2, 2)), CRS, CELL_M)


def scatter(count, spread_deg, seed):
    """Longitudes and latitudes about the middle."""
    return np.array([[LON], [LAT]]) + np.random.default_rng(seed).uniform(-spread_deg, spread_deg, (2, count))


def viewpoints(model, count):
    lon, lat = scatter(count, *SPREAD)
    return lon[:, None], lat[:, None], model.height_m(lon, lat)[:, None] + EYE_M


def pairs(model):
    lon1, lat1 = scatter(PAIRS, *SPREAD)
    az = np.random.default_rng(3).uniform(0, 360, PAIRS)
    lon2, lat2, _ = every_crossing.WGS84.fwd(lon1, lat1, az, np.full(PAIRS, LENGTH_M))
    base = model.height_m(lon2, lat2)
    return lon1, lat1, model.height_m(lon1, lat1) + EYE_M, lon2, lat2, base, base + 100.0


class Gathers:
    """Counts the bilinear heights that a terrain is asked for, sums up the time they take, and keeps their places if wanted."""

    def __init__(self, keep=False):
        self.keep, self.places, self.samples, self.seconds = keep, [], 0, 0.0

    def __enter__(self):
        self.between = terrain.Terrain.between

        def between(model, col, row):
            start = time.process_time()
            height = self.between(model, col, row)
            self.seconds += time.process_time() - start
            self.samples += height.size
            if self.keep:
                self.places.append(np.array(np.broadcast_arrays(col, row)))
            return height

        terrain.Terrain.between = between
        return self

    def __exit__(self, *_):
        terrain.Terrain.between = self.between


def bare_s(heights_m, places):
    """Bilinear heights at places: what they cost numpy, four values of the plain array and three blends. [s]."""
    values, width = heights_m.ravel(), np.int32(heights_m.shape[1])
    start = time.process_time()
    for col, row in places:
        left, upper = col.astype(np.int32), row.astype(np.int32)
        right, down = col - left, row - upper
        cell = upper * width + left
        above, below = values.take(cell), values.take(cell + width)
        above = above + (values.take(cell + 1) - above) * right
        below = below + (values.take(cell + width + 1) - below) * right
        above += (below - above) * down
    return time.process_time() - start


def measured(work, part, heights_m, plain):
    """Times, in turn, of the work, of its heights alone as numpy takes them at the places of a part, and of the plain way.

    And how many heights those are, and how many times as long as its own taking of them the work is.
    """
    with Gathers(keep=True) as kept:
        part()
    runs = []

    def plugin():
        with Gathers() as gathers:
            seconds = timed(work)
        runs.append((seconds / gathers.seconds, gathers.samples))
        return seconds

    works = {"plugin": plugin, "bare": lambda: bare_s(heights_m, kept.places), "crossing": lambda: timed(plain)}
    told = in_turn(works, REPEATS)
    own, samples = runs[0]
    return {**told, "bare": told["bare"].times(samples / kept.samples), "samples": samples, "own": own}


def measure_skylines(ground, model):
    places = viewpoints(model, VIEWPOINTS)

    def skylines(count):
        return skyline.skyline(model, *(part[:count] for part in places), AZ, RADIUS_M, 2 * CELL_M)

    some, exact = list(zip(*(part[:CROSSING_VIEWPOINTS, 0] for part in places))), []

    def plain():
        exact[:] = [every_crossing.skyline(ground, *place, AZ, RADIUS_M, 2 * CELL_M) for place in some]

    run = measured(lambda: skylines(VIEWPOINTS), lambda: skylines(VIEWPOINTS // PART), ground.heights_m, plain)
    run["crossing"] = run["crossing"].times(VIEWPOINTS / CROSSING_VIEWPOINTS)
    alt, dist, _ = np.transpose(exact, (1, 0, 2))
    run["rms_deg"] = np.sqrt(((skylines(CROSSING_VIEWPOINTS).alt_deg - alt)[dist > 200.0] ** 2).mean())
    return run


def measure_sights(ground, model):
    given = pairs(model)

    def sights(count):
        sight.lines_of_sight(model, *(part[:count] for part in given), 2 * CELL_M)

    lon1, lat1, lens, lon2, lat2, _, top = (part[:CROSSING_PAIRS] for part in given)

    def plain():
        for ray in zip(lon1, lat1, lens, lon2, lat2, top):
            every_crossing.sight(ground, *ray, 2 * CELL_M, 2 * CELL_M)

    run = measured(lambda: sights(PAIRS), lambda: sights(PAIRS // PART), ground.heights_m, plain)
    run["crossing"] = run["crossing"].times(PAIRS / CROSSING_PAIRS)
    return run


def measure_viewshed(ground, model):
    """A viewpoint to the same radius, in turn: GDAL's viewshed, all cells seen instead of a skyline, and the plugin's skyline."""
    raster = gdal.GetDriverByName("MEM").Create("", CELLS, CELLS, 1, gdal.GDT_Float32)
    raster.SetGeoTransform(ground.transform)
    band = raster.GetRasterBand(1)
    band.WriteArray(ground.heights_m)
    x, y = ground.to_map(LON, LAT)
    place = [part[:1] for part in viewpoints(model, 1)]

    def viewshed():
        gdal.ViewshedGenerate(band, "MEM", "", [], x, y, EYE_M, 0, 1, 0, 0, -1, 0.87, gdal.GVM_Edge, RADIUS_M)

    def plugin():
        skyline.skyline(model, *place, AZ, RADIUS_M, 2 * CELL_M)

    works = {"viewshed": viewshed, "plugin": plugin}
    return in_turn({name: lambda work=work: timed(work) for name, work in works.items()}, REPEATS)


def in_grass(raw):
    """Inside GRASS: seconds a viewpoint takes, from many azimuths less a single one, which loads the raster as well."""
    grass_r_horizon.load(raw, (CELLS, CELLS), around(CELLS).transform)
    taken = {GRASS_STEP_DEG: 0.0, 360.0: 0.0}
    for x, y in np.transpose(rough_ground.to_map(CRS)(*scatter(VIEWPOINTS, *SPREAD)))[:GRASS_VIEWPOINTS].tolist():
        place = ["elevation=heights", f"coordinates={x},{y}", f"maxdistance={RADIUS_M}", "direction=0"]
        for step_deg in taken:
            start = os.times()
            grass_r_horizon.grass("r.horizon", "-d", *place, f"step={step_deg}")
            taken[step_deg] += os.times().children_user - start.children_user
    return (taken[GRASS_STEP_DEG] - taken[360.0]) * AZIMUTHS / (360.0 / GRASS_STEP_DEG - 1) / GRASS_VIEWPOINTS


def measure_r_horizon(ground, model):
    """Times that a viewpoint takes GRASS, loading left out, and the plugin: the same few, in turn. Nothing where GRASS is not installed."""
    if not shutil.which("grass"):
        return {}
    places = [part[:GRASS_VIEWPOINTS] for part in viewpoints(model, VIEWPOINTS)]
    with tempfile.TemporaryDirectory() as folder:
        raw = Path(folder, "heights")
        ground.heights_m.tofile(raw)
        command = ["grass", "--tmp-location", CRS, "--exec", sys.executable, __file__, "grass", str(raw)]

        def r_horizon():
            return float(subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[-1])

        def plugin():
            return timed(lambda: skyline.skyline(model, *places, AZ, RADIUS_M, 2 * CELL_M)) / GRASS_VIEWPOINTS

        return in_turn({"r.horizon": r_horizon, "plugin": plugin}, REPEATS)


def peak_mb():
    """Most memory this process has held. [MB]."""
    with open("/proc/self/status", encoding="ascii") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmHWM"))


def held(cells, count):
    """Peak of this process after it has read the ground that the viewpoints want and found their skylines. [MB]."""
    if not count:
        return peak_mb()
    tile = rough_ground.fractal(SMALL_TILE, SMALL_TILE, 1)  # the ground itself is to take no memory but the plugin's
    _, transform, to_map = around(cells)
    grid = terrain.Grid(cells, cells, transform, to_map)

    def read(row, col, rows, cols):
        return tile[np.ix_(np.arange(row, row + rows) % SMALL_TILE, np.arange(col, col + cols) % SMALL_TILE)]

    lon, lat = scatter(count, *SPREAD)
    model = terrain.load(grid, grid.blocks_around(lon, lat, RADIUS_M), read)
    skyline.skyline(model, *viewpoints(model, count), AZ, RADIUS_M)
    return peak_mb()


def memory():
    """Peaks of processes of their own: for each raster and number of viewpoints. [MB]."""
    if not os.path.exists("/proc/self/status"):
        return {}
    peaks = {}
    for cells, count in [(0, 0), *((CELLS, count) for count in MEMORY_VIEWPOINTS), (BIG_CELLS, 1)]:
        told = subprocess.run([sys.executable, __file__, str(cells), str(count)], capture_output=True, text=True, check=True).stdout
        peaks[cells, count] = float(told.splitlines()[-1])
    return peaks


def measure():
    """Skylines; lines of sight; a viewpoint's skyline beside GRASS (nothing without it), and beside GDAL's viewshed: dicts of Taken."""
    ground = rough()
    model = terrain.terrain(*ground)
    return measure_skylines(ground, model), measure_sights(ground, model), measure_r_horizon(ground, model), measure_viewshed(ground, model)


def ratios_of(label, run):
    return [
        Ratio(label, run["plugin"], "its heights alone", run["bare"], at_most=MOST_BARE),
        Ratio(label, run["plugin"], "every crossing", run["crossing"], at_least=LEAST_CROSSING),
    ]


NOTES = """- Skylines of {viewpoints} viewpoints in {azimuths} azimuths, to {radius} km ({skyline_heights} million heights); {sights} lines
  of sight of {length} km, sampled each half cell ({sight_heights} million). Rough fractal ground, a raster of {cells} x {cells}
  cells of 10 m; seconds of the processor.
- Heights alone: as many bilinear heights by numpy from the plain array, at the very places (four values, three blends). The plugin takes
  them in a quicker way: of that the skylines are {own_skylines:.1f} times, the lines of sight {own_sights:.1f} times.
- Every crossing: numpy, ray by ray, at each crossing with a line through centres of cells; measured on {crossing_viewpoints} viewpoints
  and {crossing_pairs} pairs, and scaled. Where it finds the skyline beyond 200 m, the plugin's differs by {rms:.4f}° rms.
- GRASS's r.horizon, one place at a time, loading of the raster left out, mean of {grass_viewpoints} places{grass}. It is written in C,
  takes the nearest cell, and knows neither the height of a lens nor refraction.
- GDAL's viewshed of one viewpoint to the same radius answers another question: of every cell whether it is seen.
- Of a raster only the blocks are read that rays may reach, 4 bytes a height. Each number is the peak of a process of its own, without
  QGIS:

{memory}
"""


def section():
    skylines, sights, one, viewshed = measure()
    ratios = ratios_of("skylines", skylines) + ratios_of("lines of sight", sights)
    if one:
        ratios.append(Ratio("a viewpoint's skyline", one["plugin"], "GRASS r.horizon", one["r.horizon"]))
    ratios.append(Ratio("a viewpoint's skyline", viewshed["plugin"], "GDAL's viewshed", viewshed["viewshed"]))
    peaks = {
        f"{count} viewpoints, {number(cells)} x {number(cells)} cells" if count else "nothing: the libraries alone": peak
        for (cells, count), peak in memory().items()
    }
    notes = NOTES.format(
        viewpoints=VIEWPOINTS,
        azimuths=AZIMUTHS,
        radius=f"{RADIUS_M / 1000:.0f}",
        skyline_heights=f"{skylines['samples'] / 1e6:.0f}",
        sights=number(PAIRS),
        length=f"{LENGTH_M / 1000:.0f}",
        sight_heights=f"{sights['samples'] / 1e6:.0f}",
        cells=number(CELLS),
        own_skylines=skylines["own"],
        own_sights=sights["own"],
        crossing_viewpoints=CROSSING_VIEWPOINTS,
        crossing_pairs=CROSSING_PAIRS,
        rms=skylines["rms_deg"],
        grass_viewpoints=GRASS_VIEWPOINTS,
        grass="" if one else ": not installed for this run",
        memory=memory_table("skylines of", peaks),
    )
    return Section("Ground", "skylines and lines of sight on an elevation model", ratios, notes)


def test_ratio():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    skylines, sights, _, _ = measure()
    assert [ratio for run in (skylines, sights) for ratio in ratios_of("", run) if not ratio.kept] == []


def test_memory_is_flat():
    peaks = memory()
    assert peaks[CELLS, MEMORY_VIEWPOINTS[-1]] - peaks[CELLS, MEMORY_VIEWPOINTS[0]] < MOST_GROWTH_MB
    assert peaks[BIG_CELLS, 1] < BIG_CELLS**2 * 4 / 1e6 / 2


if __name__ == "__main__":
    if sys.argv[1:2] == ["grass"]:
        print(in_grass(sys.argv[2]))
    elif len(sys.argv) > 1:
        print(held(*map(int, sys.argv[1:])))
    else:
        from report import tell

        tell(section())
