"""The sample reserve: its files are whole, its project opens anywhere, and the demo tells what Skyfield tells.

The reserve is invented, so its expected rows only show that nothing changed; what is true is asked of Skyfield and GeographicLib.
"""

import csv
import importlib.util
import os
import re
import shutil
import subprocess
import sys
import zipfile
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from osgeo import gdal, ogr, osr
from qgis.core import QgsProject
from skyfield.api import Star, load, load_file, wgs84

TOP = Path(__file__).resolve().parents[1]
SAMPLE = TOP / "sample_project"
STAGE = TOP / "build" / "stage"
BUDGET_BYTES = 10_000_000
COUNTS = {"cameras": 12, "subjects": 6, "paths": 3, "allowed": 4, "closed": 3}

TOL_AZ_DEG = 0.003  # the moment is stored to the second: in half of one the sky turns 0.0021°, times the secant of the altitude
TOL_ALT_DEG = 0.01  # Skyfield takes Bennett's refraction, the plugin Saemundsson's: 0.2' apart at 10°
TOL_BEARING_DEG = 1e-6  # coordinates pass through a projection

AIRLESS = ("pole", "dark")  # the Sun's depth is counted without refraction

gdal.UseExceptions()
ogr.UseExceptions()


def module_of(name):
    """A script of the sample project, which is no package."""
    spec = importlib.util.spec_from_file_location(f"sample_{name}", SAMPLE / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def layers():
    """Rows of each layer: attributes, and the geometry under "shape"."""
    package = ogr.Open(str(SAMPLE / "reserve.gpkg"))
    return {
        layer.GetName(): [dict(feature.items(), shape=feature.GetGeometryRef().Clone()) for feature in layer]
        for layer in (package.GetLayer(i) for i in range(package.GetLayerCount()))
    }


class Ground:
    """The elevation model, read between the centres of its cells."""

    def __init__(self, file):
        self.raster = gdal.Open(str(file))
        self.west, self.cell, _, self.north, _, _ = self.raster.GetGeoTransform()
        self.z = self.raster.ReadAsArray().astype(float)

    def height(self, e, n):
        col, row = (np.asarray(e) - self.west) / self.cell - 0.5, (self.north - np.asarray(n)) / self.cell - 0.5
        c, r = np.floor(col + 1e-6).astype(int), np.floor(row + 1e-6).astype(int)
        across, down = col - c, row - r
        upper = self.z[r, c] * (1 - across) + self.z[r, c + 1] * across
        lower = self.z[r + 1, c] * (1 - across) + self.z[r + 1, c + 1] * across
        return upper * (1 - down) + lower * down


@pytest.fixture(scope="module")
def ground():
    return Ground(SAMPLE / "dem.tif")


def test_layers_and_counts(layers):
    assert {name: len(rows) for name, rows in layers.items()} == COUNTS
    assert {row["kind"] for row in layers["subjects"]} == {"lighthouse", "natural arch", "stack", "ruin", "lone tree", "summit cairn"}


def test_names_are_unique(layers):
    names = [row["name"] for rows in layers.values() for row in rows]
    assert len(set(names)) == len(names)


def test_coordinates_are_projected_and_points_have_height():
    package = ogr.Open(str(SAMPLE / "reserve.gpkg"))
    for name in COUNTS:
        layer = package.GetLayer(name)
        assert layer.GetSpatialRef().GetAuthorityCode(None) == "32625", name
        assert layer.GetGeomType() in (ogr.wkbPoint25D, ogr.wkbLineString, ogr.wkbPolygon), name
    assert {package.GetLayer(name).GetGeomType() for name in ("cameras", "subjects")} == {ogr.wkbPoint25D}


def test_points_stand_on_the_ground(layers, ground):
    for row in layers["cameras"] + layers["subjects"]:
        e, n, z = row["shape"].GetPoint()
        assert z > 0, row["name"]
        assert z == pytest.approx(float(ground.height(e, n)), abs=0.001), row["name"]  # stored to the millimetre


def test_elevation_model(ground):
    band = ground.raster.GetRasterBand(1)
    assert (ground.raster.RasterXSize, ground.raster.RasterYSize, ground.cell) == (880, 1040, 10.0)
    assert osr.SpatialReference(wkt=ground.raster.GetProjection()).GetAuthorityCode(None) == "32625"
    assert band.GetNoDataValue() == -9999.0
    assert ground.z.min() == 0.0  # the sea is ground at height 0: no cell is empty
    assert 500 < ground.z.max() < 1000
    edge = np.concatenate([ground.z[0], ground.z[-1], ground.z[:, 0], ground.z[:, -1]])
    assert not edge.any()  # an island


def test_cameras_may_stand_where_they_stand(layers):
    for camera in layers["cameras"]:
        assert any(area["shape"].Contains(camera["shape"]) for area in layers["allowed"]), camera["name"]
        assert not any(area["shape"].Contains(camera["shape"]) for area in layers["closed"]), camera["name"]


def test_closures_are_days_of_the_year_and_touch_paths(layers):
    for area in layers["closed"]:
        for field in ("closed_from", "closed_to"):
            datetime.strptime("2027-" + area[field], "%Y-%m-%d")  # noqa: DTZ007  a day of each year, no moment
    crossed = {path["name"] for path in layers["paths"] for area in layers["closed"] if path["shape"].Crosses(area["shape"])}
    assert crossed == {"Bench Path", "East Coast Path"}


def test_pairs_of_a_sector_see_each_other(layers, ground):
    # curvature less refraction: 0.0683 m a km² (k 0.13)
    pairs = [(c, s) for c in layers["cameras"] for s in layers["subjects"] if c["sector"] == s["sector"]]
    assert len(pairs) == 20
    for camera, subject in pairs:
        e0, n0, z0 = camera["shape"].GetPoint()
        e1, n1, z1 = subject["shape"].GetPoint()
        dist_m = np.hypot(e1 - e0, n1 - n0)
        assert 80 < dist_m < 6000
        eye, top = z0 + camera["lens_m"], z1 + subject["base_m"] + subject["height_m"]
        run = np.arange(20.0, dist_m - 20.0, 5.0)
        bulge = 0.0683e-6 * run * (dist_m - run)
        share = run / dist_m
        clear = eye + share * (top - eye) - ground.height(e0 + share * (e1 - e0), n0 + share * (n1 - n0)) - bulge
        assert clear.min() > 0, (camera["name"], subject["name"])


def test_small_enough_for_a_repository():
    assert sum(file.stat().st_size for file in SAMPLE.rglob("*") if file.is_file() and "__pycache__" not in file.parts) < BUDGET_BYTES


def test_project_opens_elsewhere(tmp_path, qgis_app):
    for name in ("reserve.qgz", "reserve.gpkg", "found.gpkg", "dem.tif"):
        shutil.copy(SAMPLE / name, tmp_path)
    project = QgsProject()
    assert project.read(str(tmp_path / "reserve.qgz"))
    found = list(project.mapLayers().values())
    assert {layer.name() for layer in found} == {*COUNTS, "alignments", "ground", "relief"}
    for layer in found:
        assert layer.isValid(), layer.name()
        assert Path(layer.source().split("|")[0]).parent == tmp_path, layer.name()  # its own copy, not the checkout's


def test_project_tells_nothing_of_the_machine():
    with zipfile.ZipFile(SAMPLE / "reserve.qgz") as packed:
        text = packed.read("reserve.qgs").decode()
    sources = re.findall(r"<datasource>(.+?)</datasource>", text)
    assert len(sources) == 8
    assert all(source.startswith("./") for source in sources)
    assert not re.findall(r"saveUser|saveDateTime|[\">=]/\w+/", text)  # nobody, and no absolute path


def test_builder_makes_what_is_committed(layers):
    build = module_of_builder()
    assert [row[0] for row in build.CAMERAS] == [row["name"] for row in layers["cameras"]]
    assert [row[0] for row in build.SUBJECTS] == [row["name"] for row in layers["subjects"]]
    for row, camera in zip(build.CAMERAS, layers["cameras"]):
        assert build.metres(row[3], row[4]) == pytest.approx(camera["shape"].GetPoint()[:2], abs=0.05)  # decimetres


def module_of_builder():
    sys.path.insert(0, str(SAMPLE))  # it imports its neighbour
    try:
        return module_of("build")
    finally:
        sys.path.remove(str(SAMPLE))


# What the demo prints


def found(**changed):
    row = {"camera": "a", "subject": "b", "body": "core", "night": "2027-06-01", "t_utc": "2027-06-02T01:00:00Z"}
    return {**row, "minutes": 20.0, "moon_side": None, "moon_lit": 0.5, "sun_deg": -30.0, "d_alt_deg": 5.0, **changed}


def test_best_are_dark_then_long_then_early():
    demo = module_of("demo")
    bright = found(camera="bright", moon_side="side", moon_lit=0.25, minutes=90.0)
    thin = found(camera="thin", moon_side="side", moon_lit=0.249, night="2027-06-05")
    late, early, long = found(camera="late", night="2027-06-09"), found(camera="early"), found(camera="long", minutes=21.0)
    chosen = demo.best([bright, late, thin, early, long], ("core",), demo.darkest_longest_first, 10)
    assert [row["camera"] for row in chosen] == ["long", "early", "thin", "late", "bright"]


def test_best_shows_a_camera_and_subject_once_and_counts_its_nights():
    demo = module_of("demo")
    nights = [found(night=f"2027-06-{day:02d}") for day in range(1, 6)]
    bright = found(night="2027-06-20", moon_side="ahead", moon_lit=0.9)
    (row,) = demo.best([bright, *nights, dict(nights[0])], ("core",), demo.darkest_longest_first, 10)
    assert (row["night"], row["nights"]) == ("2027-06-01", 5)


@pytest.fixture(scope="module")
def demo_run(tmp_path_factory):
    """One run of the demo for a user who has nothing but this plugin: what it printed and its folder."""
    home, out = tmp_path_factory.mktemp("home"), tmp_path_factory.mktemp("sample")
    settings = home / "qgis" / "profiles" / "default" / "QGIS" / "QGIS3.ini"
    settings.parent.mkdir(parents=True)
    settings.write_text("[PythonPlugins]\nskyalidade=true\n[qgis]\nwalForSqlite3=false\n")  # no mark left in the sample
    user = {"HOME": home, "XDG_CONFIG_HOME": home / ".config", "QGIS_CUSTOM_CONFIG_PATH": home / "qgis", "QGIS_PLUGINPATH": STAGE}
    program = shutil.which("qgis_process.bin") or shutil.which("qgis_process")  # Debian 12's qgis_process is a wrapper that fails
    environment = {**os.environ, **user, "QGIS_PROCESS": program, "QT_QPA_PLATFORM": "offscreen", "PYTHONIOENCODING": "utf-8"}
    done = subprocess.run(
        [sys.executable, SAMPLE / "demo.py", out], env=environment, capture_output=True, encoding="utf-8", check=False, cwd=TOP
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout, out


def rows_of(file):
    with open(file, newline="", encoding="utf-8") as stream:
        return list(csv.DictReader(stream))


def utc_of(text):
    """The moment of "2027-06-12 23:04:31 -06:00"."""
    return datetime.strptime(text, "%Y-%m-%d %H:%M:%S %z")


def test_demo_fits_the_page_and_cautions(demo_run):
    printed, out = demo_run
    where = os.path.relpath(out, TOP)  # its length is this machine's
    assert max(len(line) for line in printed.splitlines() if where not in line) <= 120
    for word in ("solar filter", "Walking in the dark", "not a permit", "land manager", "invented", "UTC-02:00"):
        assert word in " ".join(printed.split())
    assert len(re.findall(r"^2027-\d\d-\d\d  \d\d:\d\d ", printed, flags=re.M)) == 16  # ten, and three each


def test_demo_is_stable(demo_run):
    _, out = demo_run
    new, old = rows_of(out / "best.csv"), rows_of(SAMPLE / "expected" / "best.csv")
    assert [row.keys() for row in new] == [row.keys() for row in old]
    words = ("night", "body", "camera", "subject", "nights", "moon_side")
    assert [[row[name] for name in words] for row in new] == [[row[name] for name in words] for row in old]
    for a, b in zip(new, old):
        assert abs(utc_of(a["t_local"]) - utc_of(b["t_local"])) <= timedelta(seconds=1)  # rounded to the second
        for name in ("minutes", "bearing_deg", "alt_deg", "d_alt_deg", "ground_deg", "tilt_deg", "sun_deg", "moon_lit"):
            assert (a[name] == "") == (b[name] == ""), name
            assert float(a[name] or 0) == pytest.approx(float(b[name] or 0), abs=0.02), name  # the least of the digits kept, doubled


@pytest.fixture(scope="module")
def sky():
    """Skyfield's view: `sky(place, t_utc, body) -> alt, az`; the air is standard air at the lens, 10 °C."""
    kernel, timescale = load_file(str(STAGE / "skyalidade" / "data" / "ephemeris.bsp")), load.timescale(builtin=True)
    # l=0 b=0 and the north galactic pole in ICRS (Hipparcos, vol. 1, 1.5.3)
    core = Star(ra_hours=266.40499 / 15, dec_degrees=-28.93617)
    pole = Star(ra_hours=192.85948 / 15, dec_degrees=27.12825)
    bodies = {"core": core, "pole": pole, "moon": kernel["moon"], "sun": kernel["sun"], "dark": kernel["sun"]}

    def altaz(lon, lat, z_m, moment, body):
        site = kernel["earth"] + wgs84.latlon(lat, lon, elevation_m=z_m)
        time = timescale.from_datetimes(moment) if isinstance(moment, list) else timescale.from_datetime(moment)
        place = site.at(time).observe(bodies[body]).apparent()
        pressure = 1010.0 * (1 - 0.0065 * z_m / 288.15) ** 5.25588  # ICAO Doc 7488
        alt, az, _ = place.altaz() if body in AIRLESS else place.altaz(temperature_C=10.0, pressure_mbar=pressure)
        return alt.degrees, az.degrees

    return altaz


def reference(epsg):
    """A CRS with longitude, or east, first."""
    crs = osr.SpatialReference()
    crs.ImportFromEPSG(epsg)
    crs.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    return crs


@pytest.fixture(scope="module")
def places(layers):
    """Longitude, latitude and height of each point by name."""
    way = osr.CoordinateTransformation(reference(32625), reference(4326))
    points = {row["name"]: row["shape"].GetPoint() for row in layers["cameras"] + layers["subjects"]}
    return {name: (*way.TransformPoint(e, n)[:2], z) for name, (e, n, z) in points.items()}


@pytest.fixture(scope="module")
def results(demo_run):
    """The rows of the layers that the demo wrote, by name."""
    names = ("sightlines", "alignments", "unmet", "sky_positions", "profile", "skyline")
    return {name: module_of("demo").read(demo_run[1] / f"{name}.gpkg") for name in names}


def test_bearings_are_geographiclibs(results, places):
    rows = results["sightlines"]
    assert len(rows) == 65  # all pairs but those that FACE_FROM and FACE_TO leave out
    for row in rows:
        (lon1, lat1, _), (lon2, lat2, _) = places[row["camera"]], places[row["subject"]]
        true = Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2)
        assert row["bearing_deg"] == pytest.approx(true["azi1"] % 360, abs=TOL_BEARING_DEG)
        assert row["dist_m"] == pytest.approx(true["s12"], abs=0.001)


def test_lines_of_sight_are_those_of_the_cells(demo_run, results, layers, ground):
    """Straight on the grid, whose north turns by 0.02° at the most over the island, in steps of 2 m."""
    cameras, subjects = ({row["name"]: row for row in layers[name]} for name in ("cameras", "subjects"))
    for row in results["sightlines"]:
        camera, subject = cameras[row["camera"]], subjects[row["subject"]]
        (e0, n0, z0), (e1, n1, z1) = (point["shape"].GetPoint() for point in (camera, subject))
        dist_m = np.hypot(e1 - e0, n1 - n0)
        eye, top = z0 + camera["lens_m"], z1 + subject["base_m"] + subject["height_m"]
        run = np.arange(20.0, dist_m - 20.0, 2.0)
        share = run / dist_m
        ray = eye + share * (top - eye) - 0.0683e-6 * run * (dist_m - run)
        clear = ray - ground.height(e0 + share * (e1 - e0), n0 + share * (n1 - n0))
        assert row["clear_m"] == pytest.approx(clear.min(), abs=1.5)  # [m] rough ground between two samples of either
        assert row["heights"] == "dem"
        told = "uncertain" if abs(row["clear_m"]) < 2 * min(1, row["block_m"] / 100) else "clear" if row["clear_m"] > 0 else "hidden"
        assert row["sight"] == told
    counts = [sum(row["sight"] == sight for row in results["sightlines"]) for sight in ("clear", "hidden", "uncertain")]
    assert min(counts) > 5
    assert "leaves {} clear and hides {}; {} pass".format(*counts) in " ".join(demo_run[0].split())


def test_the_gallery_is_drawn_from_the_demo(demo_run, tmp_path):
    done = subprocess.run(
        [sys.executable, SAMPLE / "gallery.py", demo_run[1], tmp_path],
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    drawn = {picture.name: picture for picture in tmp_path.glob("*.png")}
    kept = {picture.name: picture for picture in (TOP / "docs" / "gallery").glob("*.png")}
    assert (
        drawn.keys()
        == kept.keys()
        == set(re.findall(r"\((\w+\.png)\)", (TOP / "docs" / "gallery" / "README.md").read_text(encoding="utf-8")))
    )
    for name, picture in kept.items():
        assert picture.stat().st_size < 300_000
        new, old = (gdal.Open(str(file)).ReadAsArray() for file in (drawn[name], picture))
        assert new.shape == old.shape


def test_skylines_go_round_every_camera(results):
    assert len(results["profile"]) == 12 * 360
    assert len(results["skyline"]) == 12
    assert max(row["ground_deg"] for row in results["profile"]) > 15  # under the volcano


@pytest.mark.parametrize("body", ["core", "arch", "moon", "sun"])
def test_skyfield_sees_the_body_there(results, layers, places, sky, body):
    rows = [row for row in results["alignments"] if row["body"] == body]
    assert len(rows) > 300
    lens = {row["name"]: row["lens_m"] for row in layers["cameras"]}
    for row in rows[:: len(rows) // 25]:
        lon, lat, z = places[row["camera"]]
        moment = utc_of(row["t_local"])
        if body == "arch":  # the highest point of a great circle is opposite its pole
            pole_alt, pole_az = sky(lon, lat, z + lens[row["camera"]], moment, "pole")
            assert row["apex_deg"] == pytest.approx(90 - abs(pole_alt), abs=0.01)  # aberration of the pole, 20"
            az = (pole_az + 180) % 360 if pole_alt > 0 else pole_az
            tol = 0.03  # 20" divided by the cosine of the altitude
        else:
            alt, az = sky(lon, lat, z + lens[row["camera"]], moment, body)
            tol = TOL_AZ_DEG / np.cos(np.radians(alt))
            if alt > 5:
                assert row["alt_deg"] == pytest.approx(alt, abs=TOL_ALT_DEG)
        assert abs((row["az_deg"] - az + 180) % 360 - 180) < tol
        widest = {"core": 3.0, "arch": 5.0, "moon": 0.5, "sun": 0.5}[body]
        assert abs((az - row["bearing_deg"] + 180) % 360 - 180) < widest + tol


def test_standpoints_told_in_words_hold_in_geographiclib_and_skyfield(demo_run, layers, places, sky):
    """Each place of the layer again: on its path, in open ground, and the core stands over the subject there; its sentence is printed."""
    printed = " ".join(demo_run[0].split())
    paths = {row["name"]: row["shape"] for row in layers["paths"]}
    package = ogr.Open(str(demo_run[1] / "standpoints.gpkg"))
    way = osr.CoordinateTransformation(*(reference(epsg) for epsg in (32625, 4326)))
    told = []
    for feature in package.GetLayer(0):
        row, place = feature.items(), feature.GetGeometryRef()
        lon, lat, _ = way.TransformPoint(*place.GetPoint()[:2])
        subject_lon, subject_lat, _ = places[row["subject"]]
        line = Geodesic.WGS84.Inverse(lat, lon, subject_lat, subject_lon)
        alt, az = sky(lon, lat, 0.0, utc_of(row["t_local"]), "core")
        assert abs((line["azi1"] - az + 180) % 360 - 180) < TOL_AZ_DEG / np.cos(np.radians(alt))
        assert row["dist_m"] == pytest.approx(line["s12"], abs=0.001)
        assert place.Distance(paths[row["path"]]) < 1e-3
        assert any(area["shape"].Contains(place) for area in layers["allowed"])
        assert not any(area["shape"].Contains(place) for area in layers["closed"])
        if row["subject"] in module_of("demo").STANDING:
            told.append(
                f"{row['path']}, {row['chain_m']:.1f} m from its start, bearing {line['azi1'] % 360:.1f}° (within {row['err_deg']:.1f}°)"
            )
    assert len(told) >= 4
    assert all(sentence in printed for sentence in told)


def test_best_rows_hold_in_skyfield(demo_run, layers, places, sky):
    """Each printed row again from its text alone: the body over the subject, the Sun's depth, and the Moon down where it says so."""
    lens = {row["name"]: row["lens_m"] for row in layers["cameras"]}
    rows = [row for row in rows_of(demo_run[1] / "best.csv") if row["body"] in ("core", "moon", "sun")]
    assert len(rows) >= 8
    for row in rows:
        lon, lat, z = places[row["camera"]]
        alt, az = sky(lon, lat, z + lens[row["camera"]], utc_of(row["t_local"]), row["body"])
        assert abs((az - float(row["bearing_deg"]) + 180) % 360 - 180) < 0.5
        assert float(row["alt_deg"]) == pytest.approx(alt, abs=0.05)  # refraction formulas differ by 0.7' near the horizon
        depth, _ = sky(lon, lat, z + lens[row["camera"]], utc_of(row["t_local"]), "dark")
        assert float(row["sun_deg"]) == pytest.approx(depth, abs=0.02)
        moon_alt, _ = sky(lon, lat, z + lens[row["camera"]], utc_of(row["t_local"]), "moon")
        if abs(moon_alt) > 1:  # not where the limb and the air decide
            assert (row["moon_side"] == "") == (moon_alt < 0)


def test_minutes_of_the_best_are_skyfields(demo_run, layers, places, sky):
    """How long the core stands over the subject in darkness, counted in steps of Skyfield's."""
    lens = {row["name"]: row["lens_m"] for row in layers["cameras"]}
    rows = [row for row in rows_of(demo_run[1] / "best.csv") if row["body"] == "core"]
    assert len(rows) >= 3
    step_s = 5
    for row in rows:
        lon, lat, z = places[row["camera"]]
        z += lens[row["camera"]]
        moments = [utc_of(row["t_local"]) + timedelta(seconds=second) for second in range(-3600, 3600, step_s)]
        alt, az = sky(lon, lat, z, moments, "core")
        depth, _ = sky(lon, lat, z, moments, "dark")
        top_alt_deg = float(row["alt_deg"]) - float(row["d_alt_deg"])
        least_deg = max(10, top_alt_deg, float(row["ground_deg"]))
        over = (np.abs((az - float(row["bearing_deg"]) + 180) % 360 - 180) <= 3) & (alt >= least_deg) & (depth <= -18)
        assert float(row["minutes"]) == pytest.approx(over.sum() * step_s / 60, abs=2 * step_s / 60)  # a step at either end


def test_every_pair_and_body_is_answered_once(results):
    met, unmet = ({(row["camera"], row["subject"], row["body"]) for row in results[name]} for name in ("alignments", "unmet"))
    assert len(met) + len(unmet) == len(met | unmet) == 20 * 4


def test_positions_cover_the_night(results):
    rows = results["sky_positions"]
    assert len(rows) == 12 * 4 * 55  # cameras, bodies, 21:00 to 06:00 every ten minutes
    assert {row["t_local"][-6:] for row in rows} == {"-02:00"}
