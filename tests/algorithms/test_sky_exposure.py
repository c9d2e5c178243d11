"""`sky_exposure` in QGIS: declaration, refusals, minutes as `night_windows` solves them at single cells, any grid, the file, its look."""

import os
import shutil

import elevation_models as dem
import numpy as np
import pytest
from elevation_models import EAST, NORTH
from osgeo import gdal
from qgis.core import (
    QgsProcessingContext,
    QgsProcessingException,
    QgsProcessingFeedback,
    QgsProcessingParameterDefinition,
    QgsRasterLayer,
)

import skyalidade.algorithms.sky_exposure as module

NIGHTS = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-07-15"}
COUNT = 45
CELLS, CELL_M = 200, 20.0
TOL_MEAN_MIN, TOL_MIN = (
    0.5,
    4.0,
)  # steps of 4 minutes at each rise over a ridge, a quarter of an hour of windows a night that are cut by one


def hills(east, north):
    """Ridges that hide the south from many places and not from all. [m]."""
    return 300.0 + 120.0 * np.sin(east / 300.0) * np.cos(north / 260.0) + 60.0 * np.sin((east + 2 * north) / 170.0)


@pytest.fixture
def model(tmp_path):
    return dem.write(tmp_path / "hills.tif", *dem.around(hills, half_m=CELLS * CELL_M / 2, cell_m=CELL_M))


@pytest.fixture
def minutes(run, tmp_path):
    """A run over a model: bands (bands, rows, cols), nan where there is no data, and the outcome."""

    def outcome(model, name="out.tif", cancel_at=None, **parameters):
        path = tmp_path / name
        out = run("sky_exposure", {"DEM": model, **NIGHTS, "OUTPUT": str(path), **parameters}, cancel_at)
        return read(path), out

    return outcome


def read(path):
    dataset = gdal.Open(str(path))
    values = np.frombuffer(dataset.ReadRaster(buf_type=gdal.GDT_Float64), "<f8").reshape(-1, dataset.RasterYSize, dataset.RasterXSize)
    assert dataset.GetRasterBand(1).GetNoDataValue() == -9999.0
    return np.where(values == -9999.0, np.nan, values)


def solved(run, layer, model, cells, **parameters):
    """Minutes a night at the centres of cells, row and col, by `night_windows` over the same model."""
    dataset = gdal.Open(model)
    x0, x_col, x_row, y0, y_col, y_row = dataset.GetGeoTransform()
    crs = "EPSG:" + dataset.GetSpatialRef().GetAuthorityCode(None)
    places = [(x0 + x_col * (c + 0.5) + x_row * (r + 0.5), y0 + y_col * (c + 0.5) + y_row * (r + 0.5)) for r, c in cells]
    sites = layer([(f"POINT({x!r} {y!r})",) for x, y in places], crs=crs, kind="Point")
    out = run("night_windows", {"SITES": sites, "DEM": model, **NIGHTS, "WINDOWS": "memory:", "CAMERA_HEIGHT": 1.5, **parameters})
    totals = np.zeros(len(places))
    for row in out.rows("WINDOWS"):
        totals[row["site_id"] - 1] += row["minutes"]
    return totals / COUNT


def some_cells(count=30, cells=CELLS, seed=4):
    return np.random.default_rng(seed).integers(5, cells - 5, (count, 2)).tolist()


def off(values, cells, exact):
    return np.array([values[row, col] for row, col in cells]) - exact


# declaration


def test_parameters_in_order(algorithm):
    exposure = algorithm("sky_exposure")
    definitions = exposure.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("DEM", "DEM_BAND", "BODY", "STAR", "GALACTIC_LON", "FIRST_NIGHT", "LAST_NIGHT", "PER_MONTH", "ALT_MIN"),
        *("TILT_MIN", "TILT_MAX", "APEX_MIN", "APEX_MAX", "CORE_ALT_MIN", "MOON", "MOON_LIT_MAX", "SUN_LIMIT", "AREA"),
        *("CAMERA_HEIGHT", "TERRAIN_RADIUS", "SKY_STEP", "SKIP_NEAR", "TIME_ZONE", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "OUTPUT"),
    ]
    optional = QgsProcessingParameterDefinition.Flag.FlagOptional
    assert {d.name() for d in definitions if not d.flags() & optional and d.defaultValue() is None} == {"DEM", "OUTPUT"}
    assert {d.name(): d.defaultValue() for d in definitions if d.name() in ("BODY", "MOON", "CAMERA_HEIGHT", "TERRAIN_RADIUS")} == {
        "BODY": "core",
        "MOON": "down",
        "CAMERA_HEIGHT": 1.5,
        "TERRAIN_RADIUS": 40_000,
    }


# what comes out


def test_minutes_are_those_that_night_windows_solves(run, layer, model, minutes):
    values, out = minutes(model)
    cells = some_cells()
    exact = solved(run, layer, model, cells)
    missed = off(values[0], cells, exact)
    assert values.shape == (1, CELLS, CELLS)
    assert np.ptp(exact) > 20.0
    assert abs(missed.mean()) < TOL_MEAN_MIN
    assert np.abs(missed).max() < TOL_MIN
    assert "cells of 20 m" in out.log
    assert "trees" in out.log
    assert "Walking in the dark" in out.log
    assert "solar filter" not in out.log


@pytest.mark.parametrize(
    "asked",
    [
        {"BODY": "moon", "SUN_LIMIT": -6, "LAST_NIGHT": "2027-06-10"},
        {"BODY": "arch", "MOON": "any", "CORE_ALT_MIN": 5},
        {"BODY": "star", "STAR": "279.235,38.784", "MOON": "down_or_thin", "ALT_MIN": 8, "SUN_LIMIT": -12},
        {"BODY": "sun", "LAST_NIGHT": "2027-06-03"},
        {"BODY": "pole"},
        {"BODY": "core", "TILT_MIN": 30, "CAMERA_HEIGHT": 12, "SKIP_NEAR": 150},
    ],
    ids=lambda asked: asked["BODY"],
)
def test_bodies_and_conditions(run, layer, model, minutes, asked):
    values, out = minutes(model, **asked)
    cells = some_cells(12)
    nights = COUNT if "LAST_NIGHT" not in asked else int(asked["LAST_NIGHT"][-2:])
    exact = solved(run, layer, model, cells, **asked) * COUNT / nights
    missed = off(values[0], cells, exact)
    turns = 4.0 if asked["BODY"] in ("sun", "moon") else 1.0  # steps twice as wide, the horizon passed at a slant on few nights
    assert exact.max() > 10.0
    assert abs(missed.mean()) < TOL_MEAN_MIN * turns
    assert np.abs(missed).max() < TOL_MIN * turns
    assert ("solar filter" in out.log) == (asked["BODY"] == "sun")


def geographic(path):
    cell = 2e-4
    lon, lat = -33.0 + cell * (np.arange(CELLS) - CELLS / 2 + 0.5), 58.0 - cell * (np.arange(CELLS) - CELLS / 2 + 0.5)
    heights = hills((lon + 33.0)[None, :] * 59_000.0, (lat - 58.0)[:, None] * 111_320.0)
    return dem.write(path, heights, (-33.0 - cell * CELLS / 2, cell, 0, 58.0 + cell * CELLS / 2, 0, -cell), "EPSG:4326")


def turned(path):
    """Rows that run 30 deg off the grid of UTM, itself 1.7 deg off true north."""
    (heights, _), turn = dem.around(hills, half_m=CELLS * CELL_M / 2, cell_m=CELL_M), np.radians(30.0)
    along, across = CELL_M * np.cos(turn), CELL_M * np.sin(turn)
    return dem.write(path, heights, (EAST + 250_000.0, along, across, NORTH, across, -along))


def in_feet(path):
    heights, transform = dem.around(hills, half_m=CELLS * CELL_M / 2, cell_m=CELL_M)
    return dem.write(path, heights / 0.3048, transform, unit="ft")


@pytest.mark.parametrize("make", [geographic, turned, in_feet])
def test_any_grid_and_unit(run, layer, minutes, tmp_path, make):
    model = make(tmp_path / "model.tif")
    # cells of 12 by 22 m, where it does not get dark in June
    asked = {"BODY": "star", "STAR": "266.4,-12", "SUN_LIMIT": -6, "ALT_MIN": 2} if make is geographic else {}
    values, _ = minutes(model, **asked)
    cells = some_cells(20)
    exact = solved(run, layer, model, cells, **asked)
    missed = off(values[0], cells, exact)
    assert np.ptp(exact) > 5.0
    assert abs(missed.mean()) < TOL_MEAN_MIN
    assert np.abs(missed).max() < TOL_MIN
    source, made = gdal.Open(model), gdal.Open(str(tmp_path / "out.tif"))
    assert made.GetGeoTransform() == pytest.approx(source.GetGeoTransform(), abs=1e-9)
    assert made.GetSpatialRef().IsSame(source.GetSpatialRef(), ["IGNORE_DATA_AXIS_TO_SRS_AXIS_MAPPING=YES"])


def test_a_band_for_each_month(model, minutes, tmp_path):
    values, _ = minutes(model)
    months, _ = minutes(model, "months.tif", PER_MONTH=True)
    made = gdal.Open(str(tmp_path / "months.tif"))
    assert [made.GetRasterBand(number).GetDescription() for number in (1, 2)] == ["2027-06", "2027-07"]
    assert made.GetRasterBand(1).GetUnitType() == "min"
    assert gdal.Open(str(tmp_path / "out.tif")).GetRasterBand(1).GetDescription() == "2027-06-01 to 2027-07-15"
    assert (30 * months[0] + 15 * months[1]) / COUNT == pytest.approx(values[0], abs=1e-3)


def test_an_area_is_part_of_the_whole(model, minutes, tmp_path):
    values, _ = minutes(model)
    west, north = EAST - CELLS * CELL_M / 2 + 40 * CELL_M, NORTH + CELLS * CELL_M / 2 - 30 * CELL_M
    extent = f"{west},{west + 50 * CELL_M},{north - 60 * CELL_M},{north} [EPSG:32625]"
    part, _ = minutes(model, "part.tif", AREA=extent)
    assert part.shape == (1, 60, 50)
    assert gdal.Open(str(tmp_path / "part.tif")).GetGeoTransform() == (west, CELL_M, 0.0, north, 0.0, -CELL_M)
    missed = part[0] - values[0, 30:90, 40:90]
    assert np.abs(missed).mean() < 0.2  # [min] the middle of the tile lies elsewhere


def test_no_data_stays_so(minutes, tmp_path):
    heights, transform = dem.around(hills, half_m=CELLS * CELL_M / 2, cell_m=CELL_M)
    heights = heights.copy()
    heights[50:60, 80:120] = -32768.0
    values, _ = minutes(dem.write(tmp_path / "holes.tif", heights, transform, nodata=-32768.0))
    unknown = np.zeros((CELLS, CELLS), dtype=bool)
    unknown[50:60, 80:120] = True
    assert (np.isnan(values[0]) == unknown).all()


def test_a_body_that_is_never_up(model, minutes):
    values, out = minutes(model, ALT_MIN=60)
    assert (values == 0.0).all()
    assert "Lower ALT_MIN" in out.log


def test_no_dark_night(minutes, tmp_path):
    cell = 1e-3
    model = dem.write(tmp_path / "north.tif", np.zeros((50, 50)), (20.0, cell, 0, 75.0, 0, -cell), "EPSG:4326")
    values, out = minutes(model, BODY="star", STAR="0,60")
    assert (values == 0.0).all()
    assert "0 everywhere" in out.log


# the file and its look


def test_it_opens_styled_with_a_legend_in_hours(model, minutes, tmp_path):
    values, _ = minutes(model, PER_MONTH=True)
    layer = QgsRasterLayer(str(tmp_path / "out.tif"), "minutes")
    assert layer.crs().authid() == dem.UTM
    renderer = layer.renderer()
    assert renderer.type() == "singlebandpseudocolor"
    items = renderer.shader().rasterShaderFunction().colorRampItemList()
    assert items[0].value == 0.0
    assert items[-1].value >= np.nanmax(values) > items[-1].value / 2.5
    assert [item.label for item in items] == [f"{item.value / 60:g} h" for item in items]
    assert renderer.usesBands() == [1 + int(np.argmax(values.sum(axis=(1, 2))))]
    assert [text for text, _ in renderer.legendSymbologyItems()] == [item.label for item in items]


def test_it_is_dressed_when_it_arrives_in_the_desktop(algorithm, context, model, tmp_path):
    path = str(tmp_path / "out.tif")
    context.addLayerToLoadOnCompletion(path, QgsProcessingContext.LayerDetails("minutes", context.project(), "OUTPUT"))
    asked = {"DEM": model, "FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-01", "OUTPUT": path}
    feedback = QgsProcessingFeedback()
    _, done = algorithm("sky_exposure").run(asked, context, feedback)
    assert done
    layer = QgsRasterLayer(path, "minutes", "gdal", QgsRasterLayer.LayerOptions(False))  # as Processing loads it: without the style beside
    assert layer.renderer().type() != "singlebandpseudocolor"
    context.layerToLoadOnCompletionDetails(path).postProcessor().postProcessLayer(layer, context, feedback)
    assert layer.renderer().type() == "singlebandpseudocolor"


def left(folder):
    return sorted(name for name in os.listdir(folder) if "part" in name)


def test_cancelled_it_leaves_what_was_there(model, minutes, tmp_path):
    minutes(model)
    before = (tmp_path / "out.tif").read_bytes()
    _, out = minutes(model, cancel_at=60, PER_MONTH=True)
    assert (tmp_path / "out.tif").read_bytes() == before
    assert left(tmp_path) == []
    assert "Cancelled" in out.log
    assert out.feedback.shares == sorted(out.feedback.shares)


def test_what_fails_leaves_what_was_there(model, minutes, tmp_path, monkeypatch):
    minutes(model)
    before = (tmp_path / "out.tif").read_bytes()

    def broken(*_):
        raise ValueError("the file is cut short")

    monkeypatch.setattr(module, "exposure", broken)
    with pytest.raises(QgsProcessingException, match="cut short"):
        minutes(model)
    assert (tmp_path / "out.tif").read_bytes() == before
    assert left(tmp_path) == []


def test_a_full_disk_is_told(model, minutes, monkeypatch, tmp_path):
    monkeypatch.setattr(gdal.Band, "WriteRaster", lambda *_, **__: gdal.CE_Failure)
    with pytest.raises(QgsProcessingException, match=r"out\.tif could not be written"):
        minutes(model)
    assert os.listdir(tmp_path) == ["hills.tif"]


def test_more_than_the_disk_has_room_for(model, minutes, monkeypatch, tmp_path):
    usage = shutil.disk_usage(tmp_path)
    monkeypatch.setattr(shutil, "disk_usage", lambda _: usage._replace(free=CELLS * CELLS * 4 * 2 - 1))
    with pytest.raises(QgsProcessingException, match="up to 0 MB, but .* 0 MB left"):
        minutes(model, PER_MONTH=True)
    assert os.listdir(tmp_path) == ["hills.tif"]
    values, _ = minutes(model)
    assert np.isfinite(values).all()


# refusals


@pytest.fixture
def refused(refusal, model, tmp_path):
    def sentence(**parameters):
        return refusal("sky_exposure", {"DEM": model, **NIGHTS, "OUTPUT": str(tmp_path / "out.tif"), **parameters})

    return sentence


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"LAST_NIGHT": "2027-05-01"}, "Exchange them"),
        ({"FIRST_NIGHT": "2061-01-01", "LAST_NIGHT": "2061-02-01"}, "after the ephemeris"),
        ({"FIRST_NIGHT": "soon"}, "is no date"),
        ({"BODY": "star"}, "STAR is blank"),
        ({"BODY": "comet"}, "Choose from"),
        ({"SKY_STEP": 0}, "SKY_STEP is 0"),
        ({"TERRAIN_RADIUS": 50, "SKIP_NEAR": 100}, "no ground lies between"),
        ({"TILT_MIN": 60, "TILT_MAX": 30}, "Exchange them"),
        ({"CAMERA_HEIGHT": -2}, "Give 0 or more"),
        ({"TIME_ZONE": "Atlantis"}, "TIME_ZONE"),
        ({"DEM": None}, "DEM"),
        ({"OUTPUT": "/nowhere/at/all/out.tif"}, "does not exist"),
        ({"OUTPUT": "out.png"}, "ends in .tif"),
    ],
)
def test_refused_with_a_sentence(refused, changed, words):
    assert words in refused(**changed)


def test_its_own_input_is_never_written_over(refused, model, tmp_path):
    link = tmp_path / "other_name.tif"
    link.symlink_to(model)
    mosaic = str(tmp_path / "mosaic.vrt")
    gdal.BuildVRT(mosaic, [model]).FlushCache()
    for model_read, output in ((model, model), (model, str(link)), (mosaic, model)):
        assert "would be lost" in refused(DEM=model_read, OUTPUT=output)


def test_a_model_without_crs(refused, tmp_path):
    assert "no CRS" in refused(DEM=dem.write(tmp_path / "bare.tif", np.zeros((9, 9)), (0, 10, 0, 0, 0, -10), crs=None))


def test_a_folder_that_may_not_be_written_to(refused, monkeypatch):
    monkeypatch.setattr(os, "access", lambda *_: False)  # root, who runs the tests in some places, may write anywhere
    assert "may not be written to" in refused()


@pytest.mark.parametrize(
    ("make", "extent", "words"),
    [
        (lambda path: dem.write(path, *dem.around(hills, half_m=500.0)), "0,10,0,10 [EPSG:32625]", "does not meet the DEM"),
        (lambda path: dem.write(path, np.full((50, 50), -9999.0), dem.around(hills)[1]), None, "knows no height"),
        (lambda path: dem.write(path, np.zeros((50, 50)), (0, 1, 0, 120, 0, -1), "EPSG:4326"), None, "no place on the Earth"),
    ],
)
def test_found_during_the_run(minutes, tmp_path, make, extent, words):
    with pytest.raises(QgsProcessingException, match=words):
        minutes(make(tmp_path / "model.tif"), AREA=extent)
    assert not (tmp_path / "out.tif").exists()


def test_in_qgis_process(qgis_process, model, tmp_path):
    done = qgis_process("sky_exposure", f"DEM={model}", "FIRST_NIGHT=2027-06-01", "LAST_NIGHT=2027-06-05", f"OUTPUT={tmp_path / 'out.tif'}")
    assert done.returncode == 0, done.stderr
    assert read(tmp_path / "out.tif").max() > 60.0
    assert (tmp_path / "out.qml").exists()
