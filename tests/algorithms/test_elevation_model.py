"""Algorithms over ground whose answers follow from plane geometry and the Earth's radius; and over ground that is not known."""

import math

import elevation_models as dem
import numpy as np
import pytest
from elevation_models import EAST, NORTH, SCALE
from osgeo import gdal
from qgis.core import NULL, QgsProcessingException, QgsProject, QgsRasterLayer, QgsVectorFileWriter

from skyalidade.adapters import relief

TERRAIN_COLUMNS = ("visible", "sight", "block_m", "clear_m", "hidden_m")
LENS_M, K = 1.5, 0.13
MAST_M = 80.0  # so high that the ground beside the camera is no matter
LAT = math.radians(36.009)
A_M, E2 = 6378137.0, 0.00669437999014
MERIDIAN_M = A_M * (1 - E2) / (1 - E2 * math.sin(LAT) ** 2) ** 1.5  # radius of the meridian: the closed forms below look north or south
BENT_M = MERIDIAN_M / (1 - K)  # the Earth as light sees it
WALL_M, WALL_FROM_M, WALL_TO_M, AWAY_M = 100.0, 1005.0, 1015.0, 3000.0  # on the grid, like all distances below: true ones are / SCALE
STEP_M = 0.15  # between two samples half a cell apart the ray rises or sinks by less
SECOND_DEG = 15 / 3600  # a body moves so far while a time is rounded to a second
EDGE_DEG = 0.015  # the skyline is looked for every 3 m here, so up to 3 m behind the edge
PLATEAU_M, EDGE_M = 600.0, 2005.0


def places(*grid_m):
    """Points by metres east and north of the middle, in the CRS of the elevation models."""
    return [(f"POINT({EAST + east} {NORTH + north})",) for east, north in grid_m]


@pytest.fixture
def wall(tmp_path):
    """Level ground with a wall to the north, east to west."""
    return dem.write(tmp_path / "wall.tif", *dem.around(lambda east, north: np.where((north > 1000) & (north < 1020), WALL_M, 0.0 * east)))


@pytest.fixture
def plateau(tmp_path):
    """Level ground that rises to a plateau in the south."""
    return dem.write(tmp_path / "plateau.tif", *dem.around(lambda east, north: np.where(north < -2000, PLATEAU_M, 0.0 * east)))


@pytest.fixture
def measured(run, layer):
    """Rows for places of cameras and subjects, in metres east and north."""

    def outcome(cameras, subjects, **parameters):
        made = [layer(places(*points), crs=dem.UTM, kind="Point") for points in (cameras, subjects)]
        return run("sightlines", {"CAMERAS": made[0], "SUBJECTS": made[1], **parameters})

    return outcome


def ray_m(x_m, top_m, s_m):
    """Height of the ray from the mast to a top at a distance, by the chord and the bulge of the Earth."""
    return MAST_M + (top_m - MAST_M) * x_m / s_m - x_m * (s_m - x_m) / (2 * BENT_M)


def skyline_deg(az_deg):
    """The plateau's edge, seen toward an azimuth near south."""
    away_m = EDGE_M / SCALE / math.cos(math.radians(az_deg - 180))
    return math.degrees(math.atan2(PLATEAU_M - LENS_M - away_m**2 / (2 * BENT_M), away_m))


# sightlines


@pytest.mark.parametrize(
    ("top_m", "sight"), [(150.0, "clear"), (145.0, "uncertain"), (138.0, "uncertain"), (120.0, "hidden"), (20.0, "hidden")]
)
def test_a_wall_between(measured, wall, top_m, sight):
    out = measured([(0, 0)], [(0, AWAY_M)], DEM=wall, CAMERA_HEIGHT=MAST_M, SUBJECT_HEIGHT=top_m)
    (row,) = out.rows()
    s, near, far = (distance / SCALE for distance in (AWAY_M, WALL_FROM_M, WALL_TO_M))
    edge = near if top_m > MAST_M else far  # a ray that sinks passes lowest over the far edge
    shadow_m = MAST_M + (WALL_M - MAST_M) * s / near + s * (s - near) / (2 * BENT_M)  # where the line over the wall meets the subject
    assert row["heights"] == "dem"
    assert row["dist_m"] == pytest.approx(s, abs=0.1)  # the scale grows by 1e-7 off the meridian
    assert row["clear_m"] == pytest.approx(ray_m(edge, top_m, s) - WALL_M, abs=STEP_M)
    assert row["block_m"] == pytest.approx(edge, abs=6.0)  # half a cell and its rounding
    assert row["hidden_m"] == pytest.approx(min(shadow_m, top_m), abs=3 * STEP_M)  # three times as far off as the wall
    assert row["sight"] == sight
    assert row["visible"] is (row["clear_m"] >= 0)
    assert (row["cam_z_m"], row["base_z_m"], row["top_z_m"]) == pytest.approx((MAST_M, 0.0, top_m))


def test_accuracy_and_what_is_near_are_asked_for(measured, wall):
    def sight(top_m, **how):
        return measured([(0, 0)], [(0, AWAY_M)], DEM=wall, CAMERA_HEIGHT=MAST_M, SUBJECT_HEIGHT=top_m, **how).rows()[0]["sight"]

    assert sight(145, DEM_ACCURACY=0) == "clear"
    assert sight(120, DEM_ACCURACY=50) == "uncertain"
    assert sight(120, SKIP_NEAR=1100) == "clear"


def test_points_beyond_the_model_keep_their_own_heights(run, layer, wall):
    cameras = layer([(f"POINT Z({EAST} {NORTH} 7)",), (f"POINT Z({EAST} {NORTH - 9000} 30)",)], crs=dem.UTM)
    subjects = layer([(f"POINT Z({EAST} {NORTH + 500} 60)",)], crs=dem.UTM)
    out = run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "DEM": wall, "SUBJECT_HEIGHT": 20})
    inside, outside = out.rows()
    assert (inside["heights"], inside["cam_z_m"], inside["sight"]) == ("dem", LENS_M, "clear")
    assert (outside["heights"], outside["cam_z_m"]) == ("z", 30 + LENS_M)
    assert all(outside[name] == NULL for name in TERRAIN_COLUMNS)
    assert "CAMERAS: the DEM tells nothing of 1 of 2 points: 1 outside it." in out.log
    assert "1 pairs from the DEM, 1 pairs from the Z of both points" in out.log


def test_ground_of_no_known_height(measured, tmp_path):
    heights, transform = dem.around(lambda east, north: np.where((abs(east) < 50) & (north > 400) & (north < 500), -9999.0, 5.0))
    holed = dem.write(tmp_path / "holed.tif", heights, transform, nodata=-9999)
    out = measured([(0, 0), (0, 450)], [(0, 900), (900, 0)], DEM=holed, SUBJECT_HEIGHT=10)
    over_hole, beside, from_hole, _ = out.rows()
    assert (over_hole["heights"], over_hole["sight"], over_hole["clear_m"]) == ("dem", NULL, NULL)
    assert beside["sight"] == "clear"
    assert (from_hole["heights"], from_hole["sight"]) == ("level", NULL)
    assert "CAMERAS: the DEM tells nothing of 1 of 2 points: 1 on ground of no known height." in out.log


@pytest.mark.parametrize("east", [0, 60_000])
def test_a_model_of_nothing_here_is_as_none(measured, tmp_path, east):
    heights, transform = dem.around(lambda east, north: 0.0 * east - 9999.0, 500)
    empty = dem.write(tmp_path / "empty.tif", heights, transform, nodata=-9999)
    out = measured([(east, 0)], [(east, 90)], DEM=empty)
    (row,) = out.rows()
    assert row["heights"] == "level"
    assert all(row[name] == NULL for name in TERRAIN_COLUMNS)
    assert "SUBJECTS: the DEM tells nothing of 1 of 1 points" in out.log
    assert "cells of" not in out.log  # nothing was used of it: no caution


def test_the_log_tells_what_the_terrain_is_worth(measured, wall):
    log = measured([(0, 0)], [(0, AWAY_M)], DEM=wall).log
    assert "DEM 'wall': 5 MB of it in memory; heights in m." in log  # 4 of its blocks of a megabyte, and one for those that are not held
    assert "The terrain is that of 'wall', in cells of 10 m. Elevation data have errors, and no trees or buildings" in log


def test_feet_are_metres_and_heights_without_a_unit_are_told(measured, tmp_path):
    heights, transform = dem.around(lambda east, north: np.where(north > 200, 1000.0, 100.0 + 0 * east), 500)
    for unit, base_m in (("ft", 304.8), ("", 1000.0)):
        out = measured([(0, 0)], [(0, 400)], DEM=dem.write(tmp_path / f"{unit}.tif", heights, transform, unit=unit))
        assert out.rows()[0]["base_z_m"] == pytest.approx(base_m, abs=1e-3)
        assert ("no known unit is told" in out.log) == (unit == "")


# alignments and positions


@pytest.fixture
def core_behind_the_plateau(run, layer):
    """Alignments of the core with a subject in the south-south-west, in a night in which it sets."""

    def outcome(**parameters):
        layers = {"CAMERAS": layer(places((0, 0)), crs=dem.UTM), "SUBJECTS": layer(places((-400, -900)), crs=dem.UTM)}
        night = {"FIRST_NIGHT": "2027-07-05", "LAST_NIGHT": "2027-07-05", "AZ_TOLERANCE": 20, "ALT_MIN": 0, "SUBJECT_HEIGHT": 50}
        return run("alignments", {**layers, **night, **parameters})

    return outcome


def test_a_stretch_ends_where_the_core_sinks_behind_the_plateau(run, layer, core_behind_the_plateau, plateau):
    out = core_behind_the_plateau(DEM=plateau)
    (row,) = out.rows()
    end = row["t_end"].toString("yyyy-MM-dd'T'HH:mm:ss'Z'")
    sky = run("sky_positions", {"SITES": layer(places((0, 0)), crs=dem.UTM), "START": end, "DEM": plateau})
    (at_end,) = sky.rows()
    assert 195 < at_end["az_deg"] < 223  # well within the tolerance about 204: nothing else ends it
    assert at_end["alt_deg"] == pytest.approx(skyline_deg(at_end["az_deg"]), abs=EDGE_DEG + SECOND_DEG)
    assert at_end["alt_deg"] == pytest.approx(at_end["ground_deg"], abs=SECOND_DEG)
    assert row["ground_deg"] == pytest.approx(skyline_deg(row["az_deg"]), abs=EDGE_DEG)
    assert (row["heights"], row["sight"]) == ("dem", "clear")
    assert "in cells of 10 m" in out.log


def test_the_skyline_can_be_told_without_being_a_condition(core_behind_the_plateau, plateau):
    (held,), (told,), (without,) = (
        core_behind_the_plateau(**how).rows() for how in ({"DEM": plateau}, {"DEM": plateau, "USE_SKYLINE": False}, {})
    )
    assert told["t_end"] == without["t_end"] > held["t_end"]
    assert told["t_start"] == without["t_start"] == held["t_start"]
    assert told["ground_deg"] == held["ground_deg"]
    assert (without["ground_deg"], without["sight"]) == (NULL, NULL)


# night windows


@pytest.fixture
def core_in_a_night(run, layer):
    """Night windows of the core at places, in the night in which it sinks behind the plateau."""

    def outcome(*grid_m, **parameters):
        night = {"FIRST_NIGHT": "2027-07-05", "LAST_NIGHT": "2027-07-05", "ALT_MIN": 0}
        return run("night_windows", {"SITES": layer(places(*grid_m), crs=dem.UTM), **night, **parameters})

    return outcome


def test_a_window_ends_where_the_core_sinks_behind_the_plateau(run, layer, core_in_a_night, plateau):
    (row,) = core_in_a_night((0, 0), DEM=plateau).rows()
    times = [row[name].toString("yyyy-MM-dd'T'HH:mm:ss'Z'") for name in ("t_start", "t_end")]
    sky = [run("sky_positions", {"SITES": layer(places((0, 0)), crs=dem.UTM), "START": time, "DEM": plateau}).rows()[0] for time in times]
    assert sky[1]["az_deg"] == pytest.approx(row["az_end"], abs=SECOND_DEG * 2)
    assert sky[1]["alt_deg"] == pytest.approx(skyline_deg(row["az_end"]), abs=EDGE_DEG + SECOND_DEG)
    assert sky[0]["alt_deg"] > sky[0]["ground_deg"]
    assert row["az_deg"] == pytest.approx(180, abs=SECOND_DEG)  # highest due south, above the edge at 16 degrees


def test_the_skyline_is_no_condition_where_it_is_not_wanted(core_in_a_night, plateau):
    (held,), (unheld,), (without,) = (
        core_in_a_night((0, 0), **how).rows() for how in ({"DEM": plateau}, {"DEM": plateau, "USE_SKYLINE": False}, {})
    )
    assert held["t_end"] < without["t_end"] == unheld["t_end"]
    for name in ("sunset", "moonrise", "moonset", "dark_min", "clear_min"):  # of the level horizon, whatever the ground
        assert held[name] == without[name] or abs(held[name] - without[name]) < 1.0


def test_a_night_behind_the_skyline(core_in_a_night, tmp_path):
    cliff = dem.write(tmp_path / "cliff.tif", *dem.around(lambda east, north: np.where(north < -300, PLATEAU_M, 0.0 * east)))
    (row,) = core_in_a_night((0, 0), DEM=cliff).rows()
    assert row["reason"] == "core stays behind the terrain skyline while all else holds"
    assert row["t_start"] == NULL


def test_sites_outside_the_model_have_a_level_horizon(core_in_a_night, plateau):
    out = core_in_a_night((0, 0), (0, 90_000), DEM=plateau)
    inside, outside = out.rows()
    (alone,) = core_in_a_night((0, 90_000)).rows()
    assert "SITES: the DEM tells nothing of 1 of 2 points: 1 outside it." in out.log
    assert outside["t_end"] == alone["t_end"] > inside["t_end"]
    assert "in cells of 10 m" in out.log


def test_ground_far_from_the_sightline_is_read_too(core_behind_the_plateau, tmp_path):
    heights, transform = dem.around(lambda east, north: np.where(north < -8000, 2000.0, 0.0 * east), 12_000)
    (row,) = core_behind_the_plateau(DEM=dem.write(tmp_path / "far.tif", heights, transform)).rows()
    away_m = 8005 / SCALE / math.cos(math.radians(row["az_deg"] - 180))
    alt_deg = math.degrees(math.atan2(2000 - LENS_M - away_m**2 / (2 * BENT_M), away_m))
    assert row["ground_deg"] == pytest.approx(alt_deg, abs=2 * EDGE_DEG)  # four times as far, samples four times as far apart


def test_rays_that_end_early_or_find_their_ground_at_the_end_are_counted(run, layer, tmp_path):
    rising = dem.write(
        tmp_path / "rising.tif", *dem.around(lambda east, north: np.maximum(0.0, -north) + 0 * east)
    )  # 45 degrees to the south
    sites = layer(places((0, 0)), crs=dem.UTM)
    time = {"SITES": sites, "START": "2027-07-05T22:00:00Z", "BODIES": "core"}
    assert (
        "Skylines: 2 of 2 rays end with the DEM, or where it has a gap, before TERRAIN_RADIUS."
        in run("sky_positions", {**time, "DEM": rising}).log
    )
    log = run("sky_positions", {**time, "DEM": rising, "TERRAIN_RADIUS": 2000}).log
    assert "Skylines: 2 of 2 rays find their highest ground at TERRAIN_RADIUS (2,000 m). Raise it." in log
    assert "end with the DEM" not in log


def test_positions_take_the_height_of_the_lens(run, layer, plateau):
    sites = layer([(*places((0, 0))[0], 100.0)], crs=dem.UTM, fields=["mast:double"], kind="Point")
    time = {"SITES": sites, "START": "2027-07-06T02:00:00Z", "DEM": plateau}
    low, high = (run("sky_positions", {**time, **how}).rows()[0] for how in ({}, {"CAMERA_HEIGHT": "field:mast"}))
    away_m = EDGE_M / SCALE / math.cos(math.radians(low["az_deg"] - 180))
    assert low["ground_deg"] - high["ground_deg"] == pytest.approx(math.degrees(98.5 / away_m) * math.cos(math.radians(15)) ** 2, rel=0.03)


# refusals


@pytest.mark.parametrize("name", ["sightlines", "alignments", "night_windows", "sky_positions"])
def test_what_is_no_elevation_model_is_refused_before_the_run(refusal, layer, tmp_path, name):
    points = layer(places((0, 0)), crs=dem.UTM)
    given = {"SITES": points} if name in ("night_windows", "sky_positions") else {"CAMERAS": points, "SUBJECTS": points}
    given.update({"START": "2027-07-06T02:00:00Z"} if name == "sky_positions" else {})
    path = dem.write(tmp_path / "dem.tif", np.zeros((9, 9)), (0, 10, 0, 0, 0, -10))
    assert "no raster that can be read" in refusal(name, {**given, "DEM": str(tmp_path / "none.tif")})
    assert "DEM_BAND is 2" in refusal(name, {**given, "DEM": path, "DEM_BAND": 2})
    bare = dem.write(tmp_path / "bare.tif", np.zeros((9, 9)), None, crs=None)
    assert "'bare' has no CRS" in refusal(name, {**given, "DEM": bare})
    assert "SKIP_NEAR is -1" in refusal(name, {**given, "DEM": path, "SKIP_NEAR": -1})


def test_a_radius_without_ground_is_refused(refusal, layer):
    points = layer(places((0, 0)), crs=dem.UTM)
    assert "no ground lies between SKIP_NEAR (500 m) and it" in refusal(
        "alignments", {"CAMERAS": points, "SUBJECTS": points, "SKIP_NEAR": 500, "TERRAIN_RADIUS": 500}
    )


def test_a_model_that_would_fill_the_memory_is_refused(measured, wall, monkeypatch):
    monkeypatch.setattr(relief, "_free_bytes", lambda: 6_000_000)
    with pytest.raises(QgsProcessingException, match=r"takes 5 MB of memory, more than half of the 6 MB free. Take fewer points"):
        measured([(0, 0)], [(0, AWAY_M)], DEM=wall)


def test_free_memory_is_known_here():
    assert 10_000_000 < relief._free_bytes() < 1e14


# large ones, cancelling, and the command line


def large(path, cells=6000):
    options = ["TILED=YES", "SPARSE_OK=TRUE"]
    dataset = gdal.GetDriverByName("GTiff").Create(str(path), cells, cells, 1, gdal.GDT_Float32, options)
    dataset.SetGeoTransform((EAST - 5.0 * cells, 10.0, 0.0, NORTH + 5.0 * cells, 0.0, -10.0))
    dataset.SetProjection(QgsRasterLayer(dem.write(path.with_suffix(".crs.tif"), np.zeros((2, 2)), (0, 1, 0, 0, 0, -1)), "").crs().toWkt())
    return str(path)


def test_a_large_model_is_read_in_part(measured, tmp_path):
    out = measured([(0, 0)], [(0, AWAY_M)], DEM=large(tmp_path / "large.tif", 20_000), SUBJECT_HEIGHT=5)
    assert out.rows()[0]["sight"] == "clear"
    assert "'large': 3 MB of it in memory" in out.log  # of 1600: the two blocks under the line, and one for all others


@pytest.mark.parametrize("name", ["sightlines", "alignments", "night_windows", "sky_positions"])
def test_cancelled_while_reading(run, layer, tmp_path, name):
    model = large(tmp_path / "large.tif")
    cameras, subjects = layer(places((0, 25_000)), crs=dem.UTM), layer(places((0, -25_000)), crs=dem.UTM)
    if name == "sky_positions":
        given = {"SITES": cameras, "START": "2027-07-06T02:00:00Z"}
    elif name == "night_windows":
        given = {"SITES": cameras, "FIRST_NIGHT": "2027-07-05", "LAST_NIGHT": "2027-07-05"}
    else:
        given = {"CAMERAS": cameras, "SUBJECTS": subjects, "MAX_DISTANCE": 1e5}
        given.update({"FIRST_NIGHT": "2027-07-05", "LAST_NIGHT": "2027-07-05"} if name == "alignments" else {})
    out = run(name, {**given, "DEM": model}, cancel_at=2)
    assert out.rows() == []
    assert "Cancelled: 0" in out.log
    assert max(share for share in out.feedback.shares if share < 100) < 4  # a tenth of the run is reading: it stopped within that
    whole = run(name, {**given, "DEM": model})
    assert len(whole.rows()) >= 1
    assert whole.feedback.shares == sorted(whole.feedback.shares)


def test_at_the_command_line(qgis_process, layer, tmp_path, plateau):
    files = {}
    for name, made in (("CAMERAS", places((0, 0))), ("SUBJECTS", places((0, -3000)))):
        files[name] = str(tmp_path / f"{name}.gpkg")
        options = QgsVectorFileWriter.SaveVectorOptions()
        QgsVectorFileWriter.writeAsVectorFormatV3(layer(made, crs=dem.UTM), files[name], QgsProject.instance().transformContext(), options)
    given = [f"{name}={value}" for name, value in {**files, "DEM": plateau, "OUTPUT": tmp_path / "out.gpkg"}.items()]
    done = qgis_process("sightlines", *given)
    assert done.returncode == 0, done.stderr
    assert "1 pairs from the DEM" in done.stdout
    assert "in cells of 10 m" in done.stdout + done.stderr
    refused = qgis_process("sightlines", *given, "DEM_BAND=3")
    assert refused.returncode == 1
    assert "DEM_BAND is 3" in refused.stdout + refused.stderr
