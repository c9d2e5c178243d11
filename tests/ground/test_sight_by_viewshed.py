"""Lines of sight against GDAL's viewshed, by statistics.

GDAL hands what hides from ring to ring of cells between two neighbours each; on the eight main directions that is exact, elsewhere, and
beside the diagonals most, it errs. So cells count that are decided by more than 5 m, and where the two differ the height of the ground at
every crossing with the grid says who is right.
"""

import every_crossing
import numpy as np
import pytest
import rough_ground
from osgeo import gdal
from pyproj import CRS, Transformer

from skyalidade.ground import sight, terrain

LON, LAT, CELL_M, CELLS = 15.0, 45.0, 90.0, 601
AZIMUTHAL = f"+proj=aeqd +lat_0={LAT} +lon_0={LON} +datum=WGS84"  # a straight line from the middle is a geodesic, to scale
LENS_M, TOP_M = 30.0, 10.0  # above the ground
REFRACTION_K = 0.13
DECIDED_M, BESIDE_DIAGONAL_DEG, LEAST_AGREEMENT = 5.0, 2.0, 0.999
SAMPLE = 12_000


def viewshed(ground, curvature):
    """Cells that GDAL calls visible from the middle one."""
    rows, cols = ground.heights_m.shape
    raster = gdal.GetDriverByName("MEM").Create("", cols, rows, 1, gdal.GDT_Float32)
    raster.SetGeoTransform(ground.transform)
    raster.SetProjection(CRS(AZIMUTHAL).to_wkt("WKT1_GDAL"))
    band = raster.GetRasterBand(1)
    band.WriteArray(ground.heights_m)
    x, y = ground.to_map(LON, LAT)
    seen = gdal.ViewshedGenerate(band, "MEM", "", [], x, y, LENS_M, TOP_M, 1, 0, 0, -1, curvature, gdal.GVM_Edge, 0)
    return seen.ReadAsArray() == 1


@pytest.fixture(scope="module")
def scene():
    """Ground; sampled cells, their distance, their angle to the nearest diagonal, and what the plugin says of them."""
    ground = rough_ground.around(LON, LAT, rough_ground.fractal(CELLS, CELLS, 3, 150.0), AZIMUTHAL, CELL_M)
    rng = np.random.default_rng(5)
    row, col = rng.integers(0, CELLS, (2, SAMPLE))
    east, north = col - CELLS // 2, CELLS // 2 - row
    row, col, east, north = (part[np.hypot(east, north) > 5] for part in (row, col, east, north))
    diagonal_deg = np.abs(np.degrees(np.arctan2(north, east)) % 90 - 45)
    lon, lat = Transformer.from_crs(AZIMUTHAL, "EPSG:4326", always_xy=True).transform(east * CELL_M, north * CELL_M)
    base = ground.heights_m[row, col].astype(float)
    lens = float(ground.heights_m[CELLS // 2, CELLS // 2]) + LENS_M
    found = sight.lines_of_sight(terrain.terrain(*ground), LON, LAT, lens, lon, lat, base, base + TOP_M, refraction_k=REFRACTION_K)
    return ground, (row, col), (lens, lon, lat, base + TOP_M), diagonal_deg, found


def test_agreement(scene, record_property):
    ground, cell, (lens, lon, lat, top), diagonal_deg, found = scene
    seen = viewshed(ground, 1.0 - REFRACTION_K)[cell]
    counts = (np.abs(found.clear_m) > DECIDED_M) & (diagonal_deg > BESIDE_DIAGONAL_DEG)
    differ = np.flatnonzero(counts & (seen != found.visible))
    agreement = 1.0 - differ.size / counts.sum()
    record_property("viewshed_cells", int(counts.sum()))
    record_property("viewshed_agree", 100 * agreement)
    assert seen[counts].sum() > 1000
    assert (~seen[counts]).sum() > 1000
    assert agreement >= LEAST_AGREEMENT
    two = 2 * CELL_M
    for i in differ:
        clear = every_crossing.sight(ground, LON, LAT, lens, lon[i], lat[i], top[i], two, two, REFRACTION_K)[0]
        assert (clear >= 0) == found.visible[i]


def test_a_flat_earth_agrees_less(scene):
    ground, cell, _, diagonal_deg, found = scene
    counts = (np.abs(found.clear_m) > DECIDED_M) & (diagonal_deg > BESIDE_DIAGONAL_DEG)
    assert (viewshed(ground, 0.0)[cell] == found.visible)[counts].mean() < LEAST_AGREEMENT  # what is measured can fail
