"""How fast shadows pass over a raster, beside GRASS's r.horizon over the same cells and directions; and what a large one takes of memory.

r.horizon tells the altitude of the skyline, by the nearest cells and without a lens or refraction; the plugin tells whether a body at one
altitude is seen over it. Seconds are those of the processor; GRASS's loading and writing is left out by a run in one direction less.

    python tests/benchmarks/exposure.py             speed, and memory of one tile
    python tests/benchmarks/exposure.py DEM.tif     memory of the whole run over a file, such as one of 20 000 x 20 000 cells
"""

import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1] / part) for part in ("", "authorities", "ground")]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import grass_r_horizon  # noqa: E402
import numpy as np  # noqa: E402
import rough_ground  # noqa: E402

from skyalidade.ground import terrain  # noqa: E402
from skyalidade.plan.exposure import Tile, exposure, sky_over, survey, windows_for  # noqa: E402
from skyalidade.plan.sky_paths import Positions  # noqa: E402

CRS, LON, LAT, CELL_M, CELLS = "EPSG:32633", 15.0, 45.0, 10.0, 1024
AZIMUTHS, ALT_DEG, RADIUS_M, LENS_M = np.arange(10.0, 370.0, 45.0), (3.0, 12.0), 10_000.0, 1.5
GRASS_AZIMUTHS = 3  # one of them for loading and writing
REPEATS = 3  # the quickest counts


def rough():
    return rough_ground.around(LON, LAT, rough_ground.fractal(CELLS, CELLS, 1), CRS, CELL_M)


def plugin_s(ground, alt_deg):
    """Seconds for all azimuths, the looking over and the windows included."""
    grid, tile = terrain.Grid(CELLS, CELLS, ground.transform, ground.to_map), Tile(0, 0, CELLS, CELLS)
    count = AZIMUTHS.size
    positions = Positions(AZIMUTHS, np.full(count, alt_deg), np.ones((count, 1)), np.ones(1, dtype=int))

    def read(row, col, rows, cols):
        return ground.heights_m[row : row + rows, col : col + cols]

    taken = []
    for _ in range(REPEATS):
        start = time.process_time()
        sky = sky_over(grid, LON, LAT, positions, LENS_M, radius_m=RADIUS_M)
        exposure(tile, windows_for(tile, sky, survey(tile, read), read), sky)
        taken.append(time.process_time() - start)
    return min(taken)


def in_grass(raw):
    """Inside GRASS: seconds that a direction takes over the whole raster."""
    grass_r_horizon.load(
        raw, (CELLS, CELLS), rough_ground.around(LON, LAT, np.broadcast_to(np.float32(0), (CELLS, CELLS)), CRS, CELL_M).transform
    )
    taken = []
    for azimuths in (AZIMUTHS[:1], AZIMUTHS[:GRASS_AZIMUTHS]):
        start = os.times()
        for number, az in enumerate(azimuths):
            direction = (grass_r_horizon.NORTH_DEG - az) % 360.0
            grass_r_horizon.grass(
                "r.horizon",
                "-d",
                "elevation=heights",
                f"direction={direction}",
                f"maxdistance={RADIUS_M}",
                f"output=h{number}",
                "--overwrite",
            )
        taken.append(os.times().children_user - start.children_user)
    return (taken[1] - taken[0]) / (GRASS_AZIMUTHS - 1)


def grass_s(ground):
    """Seconds a direction takes GRASS, None where it is not installed."""
    if not shutil.which("grass"):
        return None
    with tempfile.TemporaryDirectory() as folder:
        raw = Path(folder, "heights")
        ground.heights_m.astype("<f4").tofile(raw)
        command = ["grass", "--tmp-location", CRS, "--exec", sys.executable, __file__, "grass", str(raw)]
        return float(subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[-1])


def measure():
    """Seconds a direction takes over the whole raster, by altitude; and GRASS, None without it."""
    ground = rough()
    return {alt: plugin_s(ground, alt) / AZIMUTHS.size for alt in ALT_DEG}, grass_s(ground)


if __name__ == "__main__":
    if sys.argv[1:2] == ["grass"]:
        print(in_grass(sys.argv[2]))
    else:
        plugin, grass = measure()
        for alt, seconds in plugin.items():
            beside = f", {grass / seconds:.0f} times r.horizon" if grass else ""
            print(f"a body {alt:g} deg high: {CELLS**2 / seconds / 1e6:.1f} million cells and directions a second{beside}")
        if grass:
            print(f"r.horizon: {CELLS**2 / grass / 1e6:.2f} million")
        print(f"most memory held: {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")
