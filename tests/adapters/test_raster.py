"""Heights as they arrive from files: units, scales, masks, any CRS, any turn; and what is no elevation model is told so."""

import re
from types import SimpleNamespace

import elevation_models as dem
import numpy as np
import pytest
from osgeo import gdal
from pyproj import CRS, Transformer
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransformContext,
    QgsProcessingAlgorithm,
    QgsProcessingContext,
    QgsRasterLayer,
    QgsRasterRange,
)

from skyalidade.adapters import parameters as take
from skyalidade.adapters.raster import Raster, source_of

FOOT_M, SURVEY_FOOT_M = 0.3048, 1200 / 3937  # international, and that of the United States' surveys: both by definition
TOL_M = 1e-3  # float32 of some hundred metres, and bilinear weights of it
PLANE_TOL_M = 0.02  # the planes below are planes in the map's coordinates; a coordinate is good to a millimetre


class Taking(QgsProcessingAlgorithm):
    """An algorithm that takes an elevation model and does nothing."""

    def initAlgorithm(self, configuration=None):  # noqa: N802  QGIS's name
        for parameter in take.dem():
            self.addParameter(parameter)

    def createInstance(self):  # noqa: N802
        return Taking()

    def name(self):
        return "taking"

    def displayName(self):  # noqa: N802
        return "taking"


@pytest.fixture
def raster(qgis_app):
    """Open an elevation model by path or layer."""

    def opened(value, **parameters):
        algorithm = Taking().create()
        source = source_of(algorithm, {"DEM": value, **parameters}, QgsProcessingContext())
        return Raster(source, QgsCoordinateTransformContext())

    return opened


def heights_at(raster, lon_deg, lat_deg, radius_m=200.0):
    """Heights of the ground at places, by reading what lies around them."""
    raster.extent.want_around(lon_deg, lat_deg, radius_m)
    return raster.extent.relief(raster.read).ground_m(np.asarray(lon_deg), np.asarray(lat_deg))


def plane(rows, cols, transform):
    """A slope in map coordinates: its heights at the centres of cells, and as a function of x, y."""
    t0, t1, t2, t3, t4, t5 = transform
    col, row = np.arange(cols) + 0.5, (np.arange(rows) + 0.5)[:, None]
    x_mid, y_mid = t0 + t1 * cols / 2 + t2 * rows / 2, t3 + t4 * cols / 2 + t5 * rows / 2
    unit = np.hypot(t1, t4)

    def height(x, y):
        return 300.0 + 0.4 * (x - x_mid) / unit - 0.7 * (y - y_mid) / unit

    return height(t0 + t1 * col + t2 * row, t3 + t4 * col + t5 * row), height


@pytest.mark.parametrize(
    ("crs", "transform"),
    [
        ("EPSG:32625", (499_000.0, 10.0, 0.0, 3_986_000.0, 0.0, -10.0)),
        ("EPSG:32625", (499_000.0, 10.0, 0.0, 3_984_000.0, 0.0, 10.0)),  # rows run northward
        ("EPSG:32625", (499_400.0, 8.0, 6.0, 3_984_600.0, 6.0, -8.0)),  # turned by 37 degrees, as GDAL alone tells
        ("EPSG:4326", (-33.01, 1e-4, 0.0, 36.02, 0.0, -1e-4)),
        ("EPSG:4326", (326.99, 1e-4, 0.0, 36.02, 0.0, -1e-4)),  # longitudes from 0 to 360
        ("EPSG:4167", (-180.01, 1e-4, 0.0, -29.99, 0.0, -1e-4)),  # another datum, over the antimeridian
        ("EPSG:3413", (-10_000.0, 100.0, 0.0, 10_000.0, 0.0, -100.0)),  # polar stereographic, over the pole itself
        ("EPSG:2193", (1_700_000.0, 25.0, 0.0, 5_400_000.0, 0.0, -25.0)),  # northing before easting by authority
    ],
)
def test_heights_in_any_crs(raster, tmp_path, crs, transform):
    values, height = plane(200, 200, transform)
    opened = raster(dem.write(tmp_path / "dem.tif", values, transform, crs))
    col, row = np.random.default_rng(5).uniform(5, 195, (2, 60))
    x, y = (transform[i] + transform[i + 1] * col + transform[i + 2] * row for i in (0, 3))
    lon, lat = Transformer.from_crs(CRS(crs), CRS("EPSG:4326"), always_xy=True).transform(x, y)
    assert heights_at(opened, lon, lat, 1000.0) == pytest.approx(height(x, y), abs=PLANE_TOL_M)


@pytest.mark.parametrize(
    ("unit", "crs", "unit_m", "told"),
    [
        ("m", dem.UTM, 1.0, "m"),
        ("metre", dem.UTM, 1.0, "metre"),
        ("ft", dem.UTM, FOOT_M, "ft"),
        ("US survey foot", dem.UTM, SURVEY_FOOT_M, "US survey foot"),
        ("", dem.UTM + "+6360", SURVEY_FOOT_M, "US survey foot"),  # NAVD88 height (ftUS)
        ("", dem.UTM + "+8228", FOOT_M, "foot"),  # NAVD88 height (ft)
        ("", dem.UTM, 1.0, None),
        ("furlong", dem.UTM, 1.0, None),
    ],
)
def test_units_of_heights(raster, tmp_path, unit, crs, unit_m, told):
    heights, transform = dem.around(lambda east, north: 1000.0 + 0 * east, 100.0)
    opened = raster(dem.write(tmp_path / "dem.tif", heights, transform, crs, unit=unit))
    assert opened.read(0, 0, 2, 3) == pytest.approx(np.full((2, 3), 1000.0 * unit_m), abs=TOL_M)
    assert opened.unit_told == told
    lon, lat = Transformer.from_crs(dem.UTM, "EPSG:4326", always_xy=True).transform([dem.EAST], [dem.NORTH])
    assert heights_at(opened, lon, lat, 10.0) == pytest.approx(1000.0 * unit_m, abs=TOL_M)  # also where the CRS has a vertical part


def test_scale_offset_and_whole_numbers(raster, tmp_path):
    raw = np.arange(16).reshape(4, 4) * 100
    raw[1, 2] = -32768
    path = dem.write(
        tmp_path / "dem.tif", raw, (0, 10, 0, 0, 0, -10), kind=gdal.GDT_Int16, nodata=-32768, scale=0.1, offset=-50.0, unit="ft"
    )
    expected = (raw * 0.1 - 50.0) * FOOT_M
    expected[1, 2] = np.nan
    assert raster(path).read(0, 0, 4, 4) == pytest.approx(expected, abs=TOL_M, nan_ok=True)


def test_windows_are_parts_of_the_whole(raster, tmp_path):
    values = np.random.default_rng(1).uniform(0, 900, (40, 60)).astype("f4")
    opened = raster(dem.write(tmp_path / "dem.tif", values, (0, 10, 0, 0, 0, -10)))
    assert (opened.read(np.int64(7), np.int64(11), 5, 9) == values[7:12, 11:20]).all()


def test_what_is_not_known(raster, tmp_path):
    values = np.full((4, 5), 250.0)
    values[0, 0], values[1, 1], values[2, 2], values[2, 4] = np.nan, -9999.0, 3.4e38, -32768.0
    mask = np.ones((4, 5), dtype=bool)
    mask[3, 3] = False
    opened = raster(dem.write(tmp_path / "dem.tif", values, (0, 10, 0, 0, 0, -10), mask=mask))
    unknown = np.isnan(opened.read(0, 0, 4, 5))
    assert [tuple(place) for place in np.argwhere(unknown)] == [(0, 0), (1, 1), (2, 2), (2, 4), (3, 3)]
    assert opened.impossible == 3  # none of them is declared: the log tells of them


def test_the_layers_own_no_data_counts_too(raster, tmp_path):
    path = dem.write(tmp_path / "dem.tif", [[0.0, 5.0], [12.0, 100.0]], (0, 10, 0, 0, 0, -10), unit="ft")
    layer = QgsRasterLayer(path, "with the sea left out")
    layer.dataProvider().setUserNoDataValue(1, [QgsRasterRange(-1.0, 5.0)])
    expected = np.array([[np.nan, np.nan], [12 * FOOT_M, 100 * FOOT_M]])
    assert raster(layer).read(0, 0, 2, 2) == pytest.approx(expected, nan_ok=True)
    assert raster(path).read(0, 0, 2, 2)[0, 0] == 0.0


def test_a_band_is_chosen(raster, tmp_path):
    path = dem.write(tmp_path / "dem.tif", [np.full((3, 3), 7.0), np.full((3, 3), 8.0)], (0, 10, 0, 0, 0, -10))
    assert raster(path).read(0, 0, 1, 1) == 7.0
    assert raster(path, DEM_BAND=2).read(0, 0, 1, 1) == 8.0


# what cannot be read


def test_no_raster_at_all(raster):
    assert source_of(Taking().create(), {"DEM": None}, QgsProcessingContext()) is None
    assert source_of(Taking().create(), {"DEM": ""}, QgsProcessingContext()) is None
    with pytest.raises(ValueError, match="no raster that can be read"):
        raster("/nowhere/dem.tif")


@pytest.mark.parametrize("band", [0, 2, -1])
def test_a_band_that_is_not_there(raster, tmp_path, band):
    path = dem.write(tmp_path / "dem.tif", np.zeros((3, 3)), (0, 10, 0, 0, 0, -10))
    with pytest.raises(ValueError, match=rf"DEM_BAND is {band}, .* numbered 1 to 1"):
        raster(path, DEM_BAND=band)


def test_a_picture_is_no_elevation_model(raster, tmp_path):
    path = dem.write(tmp_path / "dem.tif", np.zeros((3, 3, 3)), (0, 10, 0, 0, 0, -10), kind=gdal.GDT_Byte, options=["PHOTOMETRIC=RGB"])
    with pytest.raises(ValueError, match="colours, not heights"):
        raster(path)


def test_without_a_crs(raster, tmp_path):
    layer = QgsRasterLayer(dem.write(tmp_path / "dem.tif", np.zeros((3, 3)), (0, 10, 0, 0, 0, -10), crs=None), "lost")
    layer.setCrs(QgsCoordinateReferenceSystem())
    with pytest.raises(ValueError, match="'lost' has no CRS"):
        raster(layer)


def test_without_a_georeference(raster, tmp_path):
    layer = QgsRasterLayer(dem.write(tmp_path / "dem.tif", np.zeros((3, 3)), None), "plain")
    layer.setCrs(QgsCoordinateReferenceSystem(dem.UTM))
    with pytest.raises(ValueError, match="no georeference"):
        raster(layer)


def test_too_few_cells(raster, tmp_path):
    with pytest.raises(ValueError, match="2 x 2"):
        raster(dem.write(tmp_path / "dem.tif", np.zeros((1, 9)), (0, 10, 0, 0, 0, -10)))


def test_what_is_no_file(raster):
    layer = SimpleNamespace(isValid=lambda: True, providerType=lambda: "wms", name=lambda: "tiles")
    algorithm = SimpleNamespace(parameterDefinition=lambda name: True, parameterAsRasterLayer=lambda *given: layer)
    with pytest.raises(ValueError, match="'tiles' is no file but comes from 'wms'. Export it"):
        source_of(algorithm, {"DEM": "tiles"}, None)


def test_a_file_that_is_gone(raster, tmp_path):
    path = dem.write(tmp_path / "dem.tif", np.zeros((3, 3)), (0, 10, 0, 0, 0, -10))
    source = source_of(Taking().create(), {"DEM": path}, QgsProcessingContext())
    (tmp_path / "dem.tif").unlink()
    with pytest.raises(ValueError, match="cannot be opened"):
        Raster(source, QgsCoordinateTransformContext())


def test_a_file_that_is_cut_short(raster, tmp_path):
    path = tmp_path / "dem.tif"
    dem.write(path, np.random.default_rng(1).uniform(0, 9, (400, 400)), (0, 10, 0, 0, 0, -10))
    opened = raster(str(path))
    with open(path, "r+b") as file:
        file.truncate(2000)
    with pytest.raises(ValueError, match=re.escape("cannot be read at column 0, row 300")):
        opened.read(300, 0, 50, 50)


# large ones


def test_of_a_large_raster_only_what_is_wanted_is_read(raster, tmp_path):
    path = tmp_path / "large.tif"
    options = ["TILED=YES", "SPARSE_OK=TRUE", "COMPRESS=DEFLATE"]
    dataset = gdal.GetDriverByName("GTiff").Create(str(path), 20_000, 20_000, 1, gdal.GDT_Float32, options)
    dataset.SetGeoTransform((400_000.0, 10.0, 0.0, 4_100_000.0, 0.0, -10.0))
    dataset.SetProjection(QgsCoordinateReferenceSystem(dem.UTM).toWkt())
    dataset.GetRasterBand(1).WriteRaster(10_000, 11_500, 2, 2, np.full(4, 77.0).tobytes(), buf_type=gdal.GDT_Float64)
    dataset = None
    opened = raster(str(path))
    read, cells = opened.read, []

    def counting(row, col, rows, cols):
        cells.append(rows * cols)
        return read(row, col, rows, cols)

    lon, lat = Transformer.from_crs(dem.UTM, "EPSG:4326", always_xy=True).transform(500_010.0, 3_984_990.0)
    opened.extent.want_around([lon], [lat], 5000.0)
    relief = opened.extent.relief(counting)
    assert relief.ground_m(lon, lat) == pytest.approx(77.0)
    # 10 km are 1000 cells: three blocks of 512 each way at the most, out of 40
    assert sum(cells) <= 9 * 513**2 < 0.006 * 20_000**2
    assert opened.extent.bytes == relief.terrain.bytes == (len(cells) + 1) * 513**2 * 4
