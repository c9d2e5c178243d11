"""Ground for tests: rough, seamless, the same on every run; and the real grid that matplotlib ships."""

from pathlib import Path
from typing import Callable, NamedTuple

import matplotlib
import numpy as np
from pyproj import Transformer

HURST = 0.8  # of fractal ground; common for mountains
JACKSBORO = Path(matplotlib.get_data_path()) / "sample_data" / "jacksboro_fault_dem.npz"


class Ground(NamedTuple):
    """What `terrain.terrain` takes: heights [m], geotransform, and the function from longitude and latitude to the map."""

    heights_m: np.ndarray
    transform: tuple
    to_map: Callable


def fractal(rows, cols, seed, rms_m=250.0):
    """Fractal heights about 0, whose opposite edges fit each other. [m], float32."""
    rng = np.random.default_rng(seed)
    frequency = np.hypot(np.fft.fftfreq(rows)[:, None], np.fft.rfftfreq(cols))
    frequency[0, 0] = np.inf
    spectrum = frequency ** -(HURST + 1) * np.exp(2j * np.pi * rng.random(frequency.shape))
    heights = np.fft.irfft2(spectrum, (rows, cols))
    return (heights * (rms_m / heights.std())).astype(np.float32)


def to_map(crs):
    if crs == "EPSG:4326":
        return lambda lon_deg, lat_deg: (np.asarray(lon_deg), np.asarray(lat_deg))
    return Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform


def around(lon_deg, lat_deg, heights_m, crs, cell, turned_deg=0.0):
    """Lay heights around a place, whose middle cell then has its centre there; cells in units of the map."""
    project = to_map(crs)
    x, y = project(lon_deg, lat_deg)
    along, across = cell * np.cos(np.radians(turned_deg)), cell * np.sin(np.radians(turned_deg))
    row, col = (count // 2 + 0.5 for count in heights_m.shape)
    transform = (x - along * col - across * row, along, across, y - across * col + along * row, across, -along)
    return Ground(heights_m, transform, project)


def jacksboro():
    """Read the elevation grid around the Jacksboro fault, Tennessee, in matplotlib's sample data: 3" cells, whole metres."""
    grid = np.load(JACKSBORO)
    # Its `ymin` is the northern edge and its `ymax` the southern one.
    transform = (float(grid["xmin"]), float(grid["dx"]), 0.0, float(grid["ymin"]), 0.0, -float(grid["dy"]))
    return Ground(grid["elevation"].astype(np.float32), transform, to_map("EPSG:4326"))
