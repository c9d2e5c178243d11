"""`terrain_horizon` in QGIS: declaration, refusals, skylines whose shape follows from geometry, polygons anywhere, cancelling."""

import math

import elevation_models as dem
import numpy as np
import pytest
from elevation_models import EAST, NORTH, SCALE
from geographiclib.geodesic import Geodesic
from pyproj import Transformer
from qgis.core import NULL, QgsGeometry, QgsPointXY, QgsProcessingParameterDefinition, QgsWkbTypes
from qgis.PyQt.QtCore import QVariant

from skyalidade.names import FIELDS, PROFILE_FIELDS, SKYLINE_FIELDS

LENS_M, K = 1.5, 0.13
RADIUS_M = 6_371_000.0  # of the Earth, for heights: the meridian's differs by 0.2 percent, 2 mm of drop at 4 km
RING_M, RIDGE_M = 4000.0, 300.0  # on the grid
AT_RIDGE_M = 45.0  # samples at 4 km are 40 m apart, looked at more closely every 5 m; the ridge falls off by 0.5 m in as many
ALT_DEG = 0.025  # the ridge is cut off by up to 1.5 m where its top lies between two cells: 0.3 of half a cell


@pytest.fixture
def crater(tmp_path):
    """A round ridge about the middle, on ground at sea level."""

    def height(east, north):
        return np.maximum(0.0, RIDGE_M - 0.3 * np.abs(np.hypot(east, north) - RING_M))

    return dem.write(tmp_path / "crater.tif", *dem.around(height, half_m=6000.0))


@pytest.fixture
def horizon(run, layer):
    """A run over sites given in a CRS."""

    def outcome(sites, model, crs=dem.UTM, cancel_at=None, **parameters):
        made = layer([(f"POINT({x} {y})",) for x, y in sites], crs=crs, kind="Point")
        outputs = {"PROFILE": "memory:", "SKYLINE": "memory:"}
        return run("terrain_horizon", {"SITES": made, "DEM": model, **outputs, **parameters}, cancel_at)

    return outcome


def geographic(path, lon, lat, half_deg=0.05, cell_deg=5e-4, west=None):
    """A cone of 200 m around a place, on a geographic grid; `west` overrides the longitude of its west edge."""
    count = int(2 * half_deg / cell_deg)
    away = (np.arange(count) + 0.5) * cell_deg - half_deg
    away_m = np.hypot(away[None, :] * 111_320 * math.cos(math.radians(lat)), away[:, None] * 111_320)
    return dem.write(
        path,
        np.minimum(away_m / 10, 200.0),
        (lon - half_deg if west is None else west, cell_deg, 0, lat + half_deg, 0, -cell_deg),
        "EPSG:4326",
    )


# declaration


def test_parameters_in_order(algorithm):
    terrain_horizon = algorithm("terrain_horizon")
    definitions = terrain_horizon.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("SITES", "DEM", "DEM_BAND", "CAMERA_HEIGHT", "AZ_STEP", "TERRAIN_RADIUS", "SKIP_NEAR", "SITE_NAME", "KEEP_FIELDS"),
        *("REFRACTION_K", "MAX_ROWS", "PROFILE", "SKYLINE"),
    ]
    required = {
        d.name() for d in definitions if not d.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional and d.defaultValue() is None
    }
    assert required == {"SITES", "DEM", "PROFILE"}
    assert {d.name(): d.defaultValue() for d in definitions if d.name() in ("AZ_STEP", "TERRAIN_RADIUS", "CAMERA_HEIGHT")} == {
        "AZ_STEP": 1,
        "TERRAIN_RADIUS": 40_000,
        "CAMERA_HEIGHT": 1.5,
    }


def test_fields_and_their_types(horizon, crater):
    out = horizon([(EAST, NORTH)], crater, AZ_STEP=120)
    types = {"text": "QString", "int": "qlonglong", "real": "double"}
    for name, fields, kind in (
        ("PROFILE", PROFILE_FIELDS, QgsWkbTypes.Type.Point),
        ("SKYLINE", SKYLINE_FIELDS, QgsWkbTypes.Type.MultiPolygon),
    ):
        made = out.layers[name]
        assert tuple(made.fields().names()) == fields
        assert [QVariant.typeToName(field.type()) for field in made.fields()] == [types[FIELDS[field].kind] for field in fields]
        assert (made.wkbType(), made.crs().authid()) == (kind, dem.UTM)


def test_the_polygon_is_made_only_if_asked_for(run, layer, crater):
    out = run("terrain_horizon", {"SITES": layer([(f"POINT({EAST} {NORTH})",)], crs=dem.UTM), "DEM": crater, "PROFILE": "memory:"})
    assert list(out.layers) == ["PROFILE"]


# what comes out


def test_a_ridge_all_round(horizon, crater):
    out = horizon([(EAST, NORTH)], crater)
    rows, geometries = out.rows("PROFILE"), out.geometries("PROFILE")
    away_m = RING_M / SCALE
    alt_deg = math.degrees(math.atan2(RIDGE_M - LENS_M - away_m**2 * (1 - K) / (2 * RADIUS_M), away_m))
    assert [row["az_deg"] for row in rows] == list(range(360))
    assert [row["ground_deg"] for row in rows] == pytest.approx([alt_deg] * 360, abs=ALT_DEG)
    assert [row["dist_m"] for row in rows] == pytest.approx([away_m] * 360, abs=AT_RIDGE_M)
    assert [row["z_m"] for row in rows] == pytest.approx([RIDGE_M] * 360, abs=3.0)  # its top lies between cells
    square_m = [6000 / SCALE / max(abs(math.sin(math.radians(az))), abs(math.cos(math.radians(az)))) for az in range(360)]
    assert [row["reach_m"] for row in rows] == pytest.approx(
        square_m, abs=30
    )  # to within half a cell, seen aslant, and what a grid's square is off
    to_map = Transformer.from_crs("EPSG:4326", dem.UTM, always_xy=True)
    lon, lat = Transformer.from_crs(dem.UTM, "EPSG:4326", always_xy=True).transform(EAST, NORTH)
    for row, geometry in zip(rows, geometries):
        there = Geodesic.WGS84.Direct(lat, lon, row["az_deg"], row["dist_m"])
        assert geometry.asPoint().distance(QgsPointXY(*to_map.transform(there["lon2"], there["lat2"]))) < 0.01
    (ring,) = out.geometries("SKYLINE")
    assert ring.isGeosValid()
    assert ring.area() == pytest.approx(math.pi * RING_M**2, rel=0.02)
    assert ring.contains(QgsGeometry.fromPointXY(QgsPointXY(EAST, NORTH)))
    assert out.rows("SKYLINE")[0]["cam_z_m"] == pytest.approx(LENS_M)


def test_each_site_has_its_own_lens_and_name(run, layer, crater):
    sites = layer(
        [(f"POINT({EAST} {NORTH})", "low", 1.5), (f"POINT({EAST} {NORTH})", "high", 250.0)],
        crs=dem.UTM,
        fields=["who:string", "mast:double"],
    )
    how = {"SITE_NAME": "who", "CAMERA_HEIGHT": "field:mast", "KEEP_FIELDS": "mast", "AZ_STEP": 90}
    rows = run("terrain_horizon", {"SITES": sites, "DEM": crater, "PROFILE": "memory:", **how}).rows("PROFILE")
    assert [(row["site"], row["site_id"], row["mast"]) for row in rows] == [("low", 1, 1.5)] * 4 + [("high", 2, 250.0)] * 4
    assert rows[0]["ground_deg"] - rows[4]["ground_deg"] == pytest.approx(math.degrees(248.5 / RING_M), rel=0.02)


@pytest.mark.parametrize(("step", "count"), [(120, 3), (100, 4), (0.1, 3600), (7, 52)])
def test_azimuths_go_round_once(horizon, crater, step, count):
    rows = horizon([(EAST, NORTH)], crater, AZ_STEP=step).rows("PROFILE")
    assert [row["az_deg"] for row in rows] == pytest.approx([step * i for i in range(count)])


def test_near_ground_is_passed_over_and_the_radius_ends_the_view(horizon, crater):
    out = horizon([(EAST, NORTH)], crater, AZ_STEP=90, TERRAIN_RADIUS=2000)
    assert [row["reach_m"] for row in out.rows("PROFILE")] == [2000.0] * 4
    assert all(row["ground_deg"] < 0 for row in out.rows("PROFILE"))
    beyond = horizon([(EAST, NORTH)], crater, AZ_STEP=90, SKIP_NEAR=4500)
    assert all(4500 <= row["dist_m"] <= 4600 for row in beyond.rows("PROFILE"))  # from there on the ridge's outer slope falls


def test_sites_beyond_the_model_are_left_out_and_counted(horizon, crater):
    out = horizon([(EAST, NORTH), (EAST + 50_000, NORTH)], crater, AZ_STEP=90)
    assert len(out.rows("PROFILE")) == 4
    assert len(out.rows("SKYLINE")) == 1
    assert "SITES: the DEM tells nothing of 1 of 2 points: 1 outside it." in out.log
    nothing = horizon([(EAST + 50_000, NORTH)], crater)
    assert nothing.rows("PROFILE") == []
    assert "No skyline: there is no site on ground whose height the DEM knows." in nothing.log


def test_a_direction_in_which_no_ground_is_known_is_null(horizon, tmp_path):
    heights, transform = dem.around(lambda east, north: np.where((east > 8) & (abs(north) < 80), -9999.0, 3.0), 500)
    model = dem.write(tmp_path / "dem.tif", heights, transform, nodata=-9999)
    out = horizon([(EAST, NORTH)], model, AZ_STEP=90)
    rows, geometries = out.rows("PROFILE"), out.geometries("PROFILE")
    assert [row["ground_deg"] == NULL for row in rows] == [geometry.isNull() for geometry in geometries] == [False, True, False, False]
    assert rows[1]["reach_m"] < 20
    (ring,) = out.geometries("SKYLINE")
    assert ring.isGeosValid()


@pytest.mark.parametrize(
    ("lon", "lat", "west", "crs", "parts"),
    [
        (10.0, 47.0, None, "EPSG:4326", 1),
        (180.0, 52.0, None, "EPSG:4326", 2),
        (-179.99, -17.0, -180.04, "EPSG:4326", 2),
        (179.99, -40.0, None, "EPSG:4272", 2),  # a datum that lies some metres off
        (179.99, 65.0, 179.94, "EPSG:3857", 2),  # that map is cut there
        (179.99, 65.0, 179.94, "EPSG:3413", 1),  # that one is not
        (180.0, -17.0, 179.95, "EPSG:32760", 1),
    ],
)
def test_polygons_over_the_antimeridian(horizon, tmp_path, lon, lat, west, crs, parts):
    model = geographic(tmp_path / "dem.tif", lon, lat, west=west)
    x, y = Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform(lon, lat)
    out = horizon([(x, y)], model, crs=crs, AZ_STEP=5)
    (ring,) = out.geometries("SKYLINE")
    assert ring.isGeosValid()
    assert len(ring.asMultiPolygon()) == parts
    assert ring.buffer(1e-6, 4).contains(QgsGeometry.fromPointXY(QgsPointXY(x, y)))
    about = max(row["dist_m"] for row in out.rows("PROFILE"))
    to_lon_lat = Transformer.from_crs(crs, "EPSG:4326", always_xy=True)
    for vertex in ring.vertices():
        there = to_lon_lat.transform(vertex.x(), vertex.y())
        assert Geodesic.WGS84.Inverse(lat, lon, there[1], there[0])["s12"] <= about + 1.0


@pytest.mark.parametrize(("lat", "model_crs"), [(90.0, "EPSG:3413"), (89.99, "EPSG:3413"), (-89.98, "EPSG:3031")])
def test_polygons_around_a_pole(horizon, tmp_path, lat, model_crs):
    count, cell_m = 300, 100.0
    away = (np.arange(count) + 0.5) * cell_m - count * cell_m / 2
    heights = np.minimum(np.hypot(away[None, :], away[:, None]) / 10, 900.0)
    model = dem.write(tmp_path / "dem.tif", heights, (-15_000, cell_m, 0, 15_000, 0, -cell_m), model_crs)
    out = horizon([(25.0, lat)], model, crs="EPSG:4326", AZ_STEP=2)
    (ring,) = out.geometries("SKYLINE")
    assert ring.isGeosValid()
    box = ring.boundingBox()
    assert (box.xMinimum(), box.xMaximum()) == (-180.0, 180.0)
    assert max(abs(box.yMinimum()), abs(box.yMaximum())) == 90.0
    x, y = Transformer.from_crs("EPSG:4326", model_crs, always_xy=True).transform(25.0, lat)
    (flat,) = horizon([(x, y)], model, crs=model_crs, AZ_STEP=2).geometries("SKYLINE")
    assert flat.isGeosValid()
    assert flat.contains(QgsGeometry.fromPointXY(QgsPointXY(0, 0)))  # the pole


# refusals and cancelling


def test_refusals(refusal, layer, crater, tmp_path):
    given = {"SITES": layer([(f"POINT({EAST} {NORTH})",)], crs=dem.UTM), "PROFILE": "memory:"}
    assert refusal("terrain_horizon", given) == "DEM is blank. Choose an elevation model: a raster of heights."
    assert "no raster that can be read" in refusal("terrain_horizon", {**given, "DEM": str(tmp_path)})
    given["DEM"] = crater
    assert "AZ_STEP is 0. Give the degrees" in refusal("terrain_horizon", {**given, "AZ_STEP": 0})
    assert "AZ_STEP is 121" in refusal("terrain_horizon", {**given, "AZ_STEP": 121})
    assert "AZ_STEP is 'nan'" in refusal("terrain_horizon", {**given, "AZ_STEP": float("nan")})
    assert "CAMERA_HEIGHT is -1 m" in refusal("terrain_horizon", {**given, "CAMERA_HEIGHT": -1})
    assert "no ground lies between" in refusal("terrain_horizon", {**given, "TERRAIN_RADIUS": 0})
    assert "does not exist" in refusal("terrain_horizon", {**given, "PROFILE": str(tmp_path / "no" / "p.gpkg")})


def test_a_radius_within_two_cells_and_too_many_rows(horizon, crater):
    with pytest.raises(Exception, match="Within 15 m there is no ground beyond the 20"):
        horizon([(EAST, NORTH)], crater, TERRAIN_RADIUS=15)
    with pytest.raises(Exception, match="up to 360 rows, more than MAX_ROWS"):
        horizon([(EAST, NORTH)], crater, MAX_ROWS=359)


def test_cancelling_keeps_what_is_written(horizon, crater):
    sites = [(EAST + 10 * i, NORTH) for i in range(200)]
    out = horizon(sites, crater, cancel_at=50)
    count = len(out.rows("PROFILE"))
    assert 0 < count < 200 * 360
    assert f"Cancelled: {count:,} points on skylines written." in out.log
    whole = horizon(sites, crater)
    assert len(whole.rows("PROFILE")) == 200 * 360
    assert whole.feedback.shares == sorted(whole.feedback.shares)


def test_at_the_command_line(qgis_process, tmp_path, crater):
    site = tmp_path / "site.geojson"
    lon, lat = Transformer.from_crs(dem.UTM, "EPSG:4326", always_xy=True).transform(EAST, NORTH)
    site.write_text(f'{{"type": "Point", "coordinates": [{lon}, {lat}]}}')
    done = qgis_process("terrain_horizon", f"SITES={site}", f"DEM={crater}", f"PROFILE={tmp_path / 'profile.gpkg'}")
    assert done.returncode == 0, done.stderr
    assert "360 points on skylines (sites: 1, azimuths: 360)." in done.stdout
