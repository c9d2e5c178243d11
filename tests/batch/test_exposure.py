"""Tiles of minutes are those that the Processing algorithm writes, and one file shows them as one."""

import numpy as np
import pytest
import rasterio
from partitioned import SAMPLE

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
