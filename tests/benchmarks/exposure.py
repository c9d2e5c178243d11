"""How fast shadows pass over a raster, beside GRASS's r.horizon over the same cells and directions; and the memory of a large one.

r.horizon tells the altitude of the skyline, by the nearest cells and without a lens or refraction; the plugin tells whether a body at one
altitude is seen over it. GRASS's loading and writing is left out by a run in fewer directions.

    python tests/benchmarks/exposure.py
"""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "authorities", "ground")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import grass_r_horizon  # noqa: E402
import numpy as np  # noqa: E402
import rough_ground  # noqa: E402
from telling import Ratio, Section, in_turn, memory_table, number, timed  # noqa: E402

from skyalidade.ground import terrain  # noqa: E402
from skyalidade.plan.exposure import Tile, exposure, sky_over, survey, windows_for  # noqa: E402
from skyalidade.plan.sky_paths import Positions  # noqa: E402

CRS, LON, LAT, CELL_M, CELLS = "EPSG:32633", 15.0, 45.0, 10.0, 1024
AZIMUTHS, ALT_DEG, RADIUS_M, LENS_M = np.arange(10.0, 370.0, 45.0), (3.0, 12.0), 10_000.0, 1.5
GRASS_AZIMUTHS = 3  # one of them for loading and writing
REPEATS = 3
LEAST_GRASS = 30.0
BIG_CELLS, SMALL_TILE, BIG_ALT_DEG = 20_000, 1000, 12.0  # a raster that repeats itself, so that the ground takes no memory
MOST_MB = 4000.0
NOTES = """- {cells} x {cells} cells of 10 m of rough fractal ground, {azimuths} azimuths, ground looked at to {radius} km, the windows
  of the raster included: {rates} million cells and directions a second{grass}.
- GRASS's r.horizon, in C, finds the altitude of the skyline itself, by the nearest cells, without a lens and without refraction; the plugin
  whether a body at one altitude is seen, by each cell's own ray over the nearest 32 cells, or by bounds that no such ray can pass.
- Memory of a tile of {tile} x {tile} cells in a raster of {big} x {big}, its overview included; a process of its own, without QGIS:

{memory}
"""


def rough():
    return rough_ground.around(LON, LAT, rough_ground.fractal(CELLS, CELLS, 1), CRS, CELL_M)


def positions(alt_deg):
    """A body in all azimuths at one altitude."""
    count = AZIMUTHS.size
    return Positions(AZIMUTHS, np.full(count, alt_deg), np.ones((count, 1)), np.ones(1, dtype=int))


def shadows(grid, tile, region, read, alt_deg):
    """All azimuths over a tile, looking over the region and reading included."""
    sky = sky_over(grid, LON, LAT, positions(alt_deg), LENS_M, radius_m=RADIUS_M)
    return exposure(tile, windows_for(tile, sky, survey(region, read), read), sky)


def in_grass(raw):
    """Inside GRASS: seconds that a direction takes over the whole raster."""
    level = np.broadcast_to(np.float32(0), (CELLS, CELLS))
    grass_r_horizon.load(raw, level.shape, rough_ground.around(LON, LAT, level, CRS, CELL_M).transform)
    taken = []
    for azimuths in (AZIMUTHS[:1], AZIMUTHS[:GRASS_AZIMUTHS]):
        start = os.times()
        for az in azimuths:
            asked = [f"direction={(grass_r_horizon.NORTH_DEG - az) % 360.0}", f"maxdistance={RADIUS_M}", "output=skyline"]
            grass_r_horizon.grass("r.horizon", "-d", "elevation=heights", *asked, "--overwrite")
        taken.append(os.times().children_user - start.children_user)
    return (taken[1] - taken[0]) / (GRASS_AZIMUTHS - 1)


def measure():
    """Seconds of a direction over the whole raster: {name: Taken}, the plugin by the body's altitude, and GRASS where it is installed."""
    ground = rough()
    grid, whole = terrain.Grid(CELLS, CELLS, ground.transform, ground.to_map), Tile(0, 0, CELLS, CELLS)

    def read(row, col, rows, cols):
        return ground.heights_m[row : row + rows, col : col + cols]

    works = {alt: lambda alt=alt: timed(lambda: shadows(grid, whole, whole, read, alt)) / AZIMUTHS.size for alt in ALT_DEG}
    if not shutil.which("grass"):
        return in_turn(works, REPEATS)
    with tempfile.TemporaryDirectory() as folder:
        raw = Path(folder, "heights")
        ground.heights_m.astype("<f4").tofile(raw)
        command = ["grass", "--tmp-location", CRS, "--exec", sys.executable, __file__, "grass", str(raw)]

        def r_horizon():
            return float(subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[-1])

        return in_turn({**works, "r.horizon": r_horizon}, REPEATS)


def held(cells):
    """Peak of this process after a tile in the middle of a raster of so many cells each way; of the libraries alone for 0. [MB]."""
    if cells:
        heights = rough_ground.fractal(SMALL_TILE, SMALL_TILE, 1)
        _, transform, to_map = rough_ground.around(LON, LAT, np.broadcast_to(np.float32(0), (cells, cells)), CRS, CELL_M)

        def read(row, col, rows, cols):
            return heights[np.ix_(np.arange(row, row + rows) % SMALL_TILE, np.arange(col, col + cols) % SMALL_TILE)]

        tile = Tile(*((cells - CELLS) // 2,) * 2, CELLS, CELLS)
        shadows(terrain.Grid(cells, cells, transform, to_map), tile, Tile(0, 0, cells, cells), read, BIG_ALT_DEG)
    with open("/proc/self/status", encoding="ascii") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmHWM"))


def memory():
    """Peaks of processes of their own, by the size of the raster. [MB]."""
    if not os.path.exists("/proc/self/status"):
        return {}
    runs = {cells: [sys.executable, __file__, "held", str(cells)] for cells in (0, BIG_CELLS)}
    return {
        cells: float(subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[-1])
        for cells, command in runs.items()
    }


def ratios_of(taken):
    grass = taken.get("r.horizon")
    if grass is None:
        return []
    return [Ratio(f"a direction, a body {alt:g}° high", taken[alt], "GRASS r.horizon", grass, at_least=LEAST_GRASS) for alt in ALT_DEG]


def rate(taken):
    return f"{CELLS**2 / taken.best_s / 1e6:.1f}"


def section():
    taken, peaks = measure(), memory()
    notes = NOTES.format(
        cells=number(CELLS),
        azimuths=AZIMUTHS.size,
        radius=f"{RADIUS_M / 1000:.0f}",
        rates=" and ".join(rate(taken[alt]) for alt in ALT_DEG),
        grass=f", GRASS {rate(taken['r.horizon'])}" if "r.horizon" in taken else "; GRASS was not installed for this run",
        tile=number(CELLS),
        big=number(BIG_CELLS),
        memory=memory_table(
            "shadows over",
            {f"{number(cells)} x {number(cells)} cells" if cells else "nothing: the libraries alone": mb for cells, mb in peaks.items()},
        ),
    )
    return Section("Exposure", "shadows over a raster", ratios_of(taken), notes)


def test_ratio():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    assert [ratio for ratio in ratios_of(measure()) if not ratio.kept] == []


def test_memory_of_a_large_raster():
    assert memory()[BIG_CELLS] < MOST_MB


if __name__ == "__main__":
    if sys.argv[1:2] == ["grass"]:
        print(in_grass(sys.argv[2]))
    elif sys.argv[1:2] == ["held"]:
        print(held(int(sys.argv[2])))
    else:
        from report import tell

        tell(section())
