"""Tiles of minutes are those that the Processing algorithm writes, and one file shows them as one."""

import subprocess
import sys

import numpy as np
import pytest
from osgeo import gdal, osr
from partitioned import SAMPLE, environment

from skyalidade.batch.rasters import rasterio

NIGHTS = ("--first-night", "2027-05-25", "--last-night", "2027-06-10")
DEM = SAMPLE / "dem.tif"
SHARE = 0.4  # of the sample's model: more than one tile, less than all of it


@pytest.fixture
def area():
    """An extent that ends within cells, over the seam between two tiles."""
    with rasterio.open(DEM) as file:
        left, cell, _, top, _, down = file.transform.to_gdal()
        return left + 703.0, left + SHARE * cell * file.width, top + down * file.height + 3.0, top - 1.0


def test_minutes(batch, qgis_process, area, tmp_path):
    x_min, x_max, y_min, y_max = area
    parameters = (
        "FIRST_NIGHT=2027-05-25",
        "LAST_NIGHT=2027-06-10",
        "PER_MONTH=true",
        "SKY_STEP=15",
        f"AREA={x_min},{x_max},{y_min},{y_max}",
    )
    told = qgis_process("run", "skyalidade:sky_exposure", "--", f"DEM={DEM}", *parameters, f"OUTPUT={tmp_path}/one.tif")
    assert told.returncode == 0, told.stderr
    options = (*NIGHTS, "--per-month", "--sky-step", 15, f"--area={x_min},{x_max},{y_min},{y_max}", "--workers", 2)
    told = batch("exposure", "--dem", DEM, *options, "--output", tmp_path / "out")
    assert told.returncode == 0, told.stderr
    tiles = sorted((tmp_path / "out" / "exposure").iterdir())
    assert [tile.name for tile in tiles] == ["part-000000.tif", "part-000001.tif"]
    with rasterio.open(tmp_path / "one.tif") as one, rasterio.open(tmp_path / "out" / "exposure.vrt") as mosaic:
        assert mosaic.descriptions == one.descriptions == ("2027-05", "2027-06")
        assert (mosaic.transform.to_gdal(), mosaic.crs, mosaic.nodata, mosaic.units) == (
            one.transform.to_gdal(),
            one.crs,
            one.nodata,
            one.units,
        )
        minutes, expected = mosaic.read(), one.read()
        assert 30.0 < expected.max() < 24 * 60
        assert np.abs(minutes - expected).max() <= 1e-4  # min: the sum of 32-bit numbers hangs on how many threads add them

    (tmp_path / "out" / "exposure.vrt").unlink()
    tiles[1].unlink()
    kept = tiles[0].stat()
    told = batch("exposure", "--dem", DEM, *options, "--output", tmp_path / "out")
    assert "Going on: 1 of 2 partitions are there already." in told.stderr
    assert (tiles[0].stat().st_ino, tiles[0].stat().st_mtime_ns) == (kept.st_ino, kept.st_mtime_ns)
    with rasterio.open(tmp_path / "out" / "exposure.vrt") as mosaic:
        assert np.array_equal(mosaic.read(), minutes)
    assert not list((tmp_path / "out").rglob(".part-*"))


@pytest.mark.parametrize("epsg", [4326, 32612, 5514, 2056])
def test_crs_of_an_elevation_model(tmp_path, epsg):
    """Told by its number alone in the file, and with PROJ_DATA naming the data of the system's PROJ, as in the tests' environment."""
    file, reference = tmp_path / "dem.tif", osr.SpatialReference()
    reference.ImportFromEPSG(epsg)
    made = gdal.GetDriverByName("GTiff").Create(str(file), 4, 3, 1, gdal.GDT_Float32)
    made.SetProjection(reference.ExportToWkt())
    made.SetGeoTransform((5.0, 0.1, 0.0, 45.0, 0.0, -0.1))
    made.GetRasterBand(1).Fill(100.0)
    del made
    script = (
        "from threading import Thread; from skyalidade.batch.terrain import *; "  # a worker works in a thread
        f"Thread(target=lambda: print(pyproj.CRS(Ground(Dem({str(file)!r}, 1, {{}})).wkt).to_epsg())).start()"
    )
    told = subprocess.run([sys.executable, "-P", "-c", script], env=environment(), capture_output=True, text=True, check=False)
    assert told.stdout.split() == [str(epsg)], told.stderr


def test_a_tile_that_cannot_be_written_is_told(tmp_path):
    """With room for a part of it, as on a full disk."""
    script = (
        "import resource, numpy as np; from pathlib import Path; from skyalidade.batch.exposure import TileFile; "
        f"tile = TileFile(Path({str(tmp_path)!r}, 'part-000000.tif'), ['all']); resource.setrlimit(resource.RLIMIT_FSIZE, (10000, 10000)); "
        "tile.write(np.random.default_rng(1).uniform(0, 300, (1, 256, 256)), (0, 1, 0, 0, 0, -1), 'EPSG:3857'); tile.close()"
    )
    told = subprocess.run([sys.executable, "-P", "-c", script], env=environment(), capture_output=True, text=True, check=False)
    assert told.returncode == 1
    assert "File too large" in told.stderr
    assert list(tmp_path.glob("part-*")) == []
