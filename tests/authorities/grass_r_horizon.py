"""Asks GRASS's r.horizon for skylines of rough ground.

    grass --tmp-location EPSG:32633 --exec /usr/bin/python3 tests/authorities/grass_r_horizon.py

Writes grass_r_horizon.csv beside itself; wants grass-core (Debian), numpy, matplotlib and pyproj. Places are centres of cells, azimuths
those of the grid: elsewhere r.horizon takes the nearest cell, which is not the ground on the ray.
"""

import csv
import subprocess
import sys
import tempfile
from pathlib import Path

TABLE = Path(__file__).resolve().with_name("grass_r_horizon.csv")
sys.path[:0] = [str(TABLE.parents[1] / "ground")]

import numpy as np  # noqa: E402
import rough_ground  # noqa: E402

# UTM zone 33 but for its scale, which r.horizon leaves out; at the equator, where grid north is true north.
CRS, LON, LAT, CELL_M = "+proj=tmerc +lon_0=15 +k=1 +x_0=500000 +datum=WGS84", 15.0, 0.0, 25.0
PLACES = 40
NORTH_DEG = 90.0  # r.horizon counts counter-clockwise from the east


def ground():
    return rough_ground.around(LON, LAT, np.round(rough_ground.fractal(600, 600, 21)), CRS, CELL_M)


def grass(*words):
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout


def load(raw, shape, transform):
    """Load a file of bare heights, 4 bytes each, as the raster `heights`."""
    (rows, cols), (west, cell, _, north, _, _) = shape, transform
    edges = [f"north={north}", f"south={north - rows * cell}", f"west={west}", f"east={west + cols * cell}"]
    grass("r.in.bin", "-f", f"input={raw}", "output=heights", *edges, f"rows={rows}", f"cols={cols}", "bytes=4", "order=little")
    grass("g.region", "raster=heights")


def main():
    heights_m, transform, _ = ground()
    (rows, cols), (west, cell, _, north, _, _) = heights_m.shape, transform
    with tempfile.TemporaryDirectory() as folder:
        raw = Path(folder, "heights")
        raw.write_bytes(heights_m.astype("<f4").tobytes())
        load(raw, heights_m.shape, transform)
    rng = np.random.default_rng(11)
    with open(TABLE, "w", newline="", encoding="ascii") as file:
        out = csv.writer(file)
        out.writerow(["col", "row", "az_deg", "alt_deg"])
        for col, row in rng.integers((cols // 4, rows // 4), (cols * 3 // 4, rows * 3 // 4), (PLACES, 2)).tolist():
            place = f"coordinates={west + (col + 0.5) * cell},{north - (row + 0.5) * cell}"
            told = grass("r.horizon", "-d", "elevation=heights", "direction=0", "step=90", place)
            for line in told.splitlines()[1:]:
                grass_deg, alt_deg = map(float, line.split(","))
                out.writerow([col, row, (NORTH_DEG - grass_deg) % 360, alt_deg])


if __name__ == "__main__":
    main()
