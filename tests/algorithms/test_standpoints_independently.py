"""Standpoints by PROJ, shapely and Skyfield alone, where layers are awkward: seams of maps, closed ground, loops, faces, distances."""

import numpy as np
import pytest
from pyproj import Geod, Transformer
from qgis.core import QgsPointXY

GEOD = Geod(ellps="WGS84")
SINKS = dict.fromkeys(("POINTS", "STRETCHES", "ZONES"), "memory:")
TAVEUNI = (179.9999, -17.0)  # the antimeridian crosses that island; nothing else here is its
WORLD_M = 2.0 * 20037508.342789244  # of EPSG:3857, from edge to edge


def from_wgs84(crs):
    return Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform


def linestring(xy):
    return "LineString(" + ", ".join(f"{x!r} {y!r}" for x, y in np.asarray(xy, dtype=float).tolist()) + ")"


# over the antimeridian


@pytest.mark.parametrize("subjects_in", ["EPSG:4326", "EPSG:3857", "EPSG:32760"])
@pytest.mark.parametrize("paths_in", ["EPSG:4326", "EPSG:3857", "EPSG:32760", "EPSG:3832"])
def test_no_shape_is_drawn_around_the_world(run, layer, paths_in, subjects_in):
    """In UTM 60 and EPSG:3832 the ground goes on over 180°, in degrees and EPSG:3857 it is cut there: as large in each of them."""
    way = np.array([from_wgs84(paths_in)(lon, TAVEUNI[1] - 0.003) for lon in np.linspace(179.99, 180.01, 21)])
    if paths_in == "EPSG:3857":
        way[:, 0] %= WORLD_M
    subjects = layer([("Point({!r} {!r})".format(*from_wgs84(subjects_in)(*TAVEUNI)),)], subjects_in, kind="Point")
    asked = {"SUBJECTS": subjects, "PATHS": layer([(linestring(way),)], paths_in, kind="LineString"), "BEARING": 340}
    out = run("standpoints", {**asked, "AZ_TOLERANCE": 40, "MAX_DISTANCE": 1000, **SINKS})
    unit_m = 111_000.0 if subjects_in == "EPSG:4326" else 1.0
    cut = subjects_in != "EPSG:32760"
    for name, widest_m in (("STRETCHES", 750.0), ("ZONES", 900.0)):  # 333 m x 2.1; 2 x 1000 m x sin 40 within the half plane
        (shape,) = out.geometries(name)
        assert shape.isGeosValid()
        assert shape.constGet().numGeometries() == 1 + cut
        wide = sum(part.boundingBox().width() for part in shape.asGeometryCollection()) * unit_m
        assert 0.5 * widest_m < wide < 1.6 * widest_m


@pytest.mark.parametrize("turned_deg", [-360.0, 0.0, 360.0])
@pytest.mark.parametrize("paths_from", [179.995, -180.005, 539.995])
@pytest.mark.parametrize("role", ["AREA", "CLOSED"])
def test_ground_beyond_the_antimeridian_is_closed_or_allowed_there(run, layer, role, paths_from, turned_deg):
    """A polygon east of 180°, told with any turn, and a path drawn on over it."""
    east = np.array([-180.0, -179.9]) + turned_deg
    polygon = f"Polygon(({east[0]} -17.1, {east[1]} -17.1, {east[1]} -16.9, {east[0]} -16.9, {east[0]} -17.1))"
    path = linestring([(paths_from, -17.002), (paths_from + 0.01, -17.002)])
    asked = {"SUBJECTS": layer([("Point(179.9999 -17)",)], kind="Point"), "PATHS": layer([(path,)], kind="LineString")}
    asked.update({"AZ_TOLERANCE": 10, "MAX_DISTANCE": 1000, role: layer([(polygon,)], kind="Polygon"), **SINKS})
    beyond, before = (run("standpoints", {**asked, "BEARING": bearing}) for bearing in (340, 20))
    kept, emptied = (beyond, before) if role == "AREA" else (before, beyond)
    assert emptied.rows("POINTS") == []
    assert len(kept.rows("POINTS")) == 1
    allowed = -1.0 if role == "AREA" else 1.0
    for out in (beyond, before):
        for name in SINKS:
            for shape in out.geometries(name):
                assert all(vertex.x() * allowed > 0.0 or abs(vertex.x()) == 180.0 for vertex in shape.vertices())


def test_a_polygon_of_another_crs_closes_both_sides_of_the_antimeridian(run, layer):
    corners = [(179.995, -17.003), (180.005, -17.003), (180.005, -17.001), (179.995, -17.001), (179.995, -17.003)]
    ring = ", ".join("{!r} {!r}".format(*from_wgs84("EPSG:32760")(*corner)) for corner in corners)
    paths = layer([("LineString(179.99 -17.002, -179.99 -17.002)",)], kind="LineString")
    asked = {"SUBJECTS": layer([("Point(180 -17)",)], kind="Point"), "PATHS": paths, "BEARING": 0, "AZ_TOLERANCE": 85, **SINKS}
    out = run("standpoints", {**asked, "CLOSED": layer([(f"Polygon(({ring}))",)], "EPSG:32760", kind="Polygon")})
    assert out.rows("POINTS") == []
    ends = sorted(x % 360.0 for shape in out.geometries("STRETCHES") for x in (vertex.x() for vertex in shape.vertices()))
    assert ends[0] < 179.995 < ends[-1]
    assert not [x for x in ends if 179.99501 < x < 180.00499]


def test_the_whole_world_is_allowed_as_if_nothing_bounded_it(run, layer):
    asked = {"SUBJECTS": layer([("Point(180 -17)",)], kind="Point"), "BEARING": 340, "AZ_TOLERANCE": 40, "MAX_DISTANCE": 1000, **SINKS}
    asked["PATHS"] = layer([("LineString(179.99 -17.002, -179.99 -17.002)",)], kind="LineString")
    world = layer([("Polygon((-180 -90, 180 -90, 180 90, -180 90, -180 -90))",)], kind="Polygon")
    free, bounded = run("standpoints", asked), run("standpoints", {**asked, "AREA": world})
    assert len(bounded.rows("POINTS")) == len(free.rows("POINTS")) == 1
    for name in ("STRETCHES", "ZONES"):
        assert sum(shape.area() + shape.length() for shape in bounded.geometries(name)) == pytest.approx(
            sum(shape.area() + shape.length() for shape in free.geometries(name)), rel=1e-9
        )


# loops


@pytest.mark.parametrize("begun_deg", [0.0, 2.0, 90.0, 178.5, 181.0])
def test_a_loop_around_the_subject_has_one_standpoint_wherever_it_begins(run, layer, begun_deg):
    """The subject bears 180° from one place of a ring, whether or not an end of the drawing lies within tolerance of it."""
    turn = np.radians(begun_deg + np.linspace(0.0, 360.0, 73))
    ring = np.column_stack([-33.0 + 0.004 * np.sin(turn), 36.0 + 0.003 * np.cos(turn)])
    ring[-1] = ring[0]
    asked = {"SUBJECTS": layer([("Point(-33 36)",)], kind="Point"), "PATHS": layer([(linestring(ring),)], kind="LineString")}
    out = run("standpoints", {**asked, "BEARING": 180, "AZ_TOLERANCE": 6, **SINKS})
    ((row, place),) = zip(out.rows("POINTS"), out.geometries("POINTS"))
    assert row["miss_deg"] == pytest.approx(0.0, abs=1e-6)
    assert place.asPoint().x() == pytest.approx(-33.0, abs=1e-9)
    assert place.asPoint().y() > 36.0


# near a pole


@pytest.mark.parametrize("most_m", [400.0, 1000.0])
@pytest.mark.parametrize("bearing", [20.0, 180.0, 290.0])
def test_a_zone_beside_a_pole_is_right_or_is_not_drawn(run, layer, bearing, most_m):
    """1,117 m from the north pole: there the bearings of neighbours differ by tens of degrees, and beyond the pole none is left."""
    subject = (40.0, 89.99)
    x, y = from_wgs84("EPSG:3413")(*subject)
    paths = layer([(linestring([(x - 300.0, y - 100.0), (x + 300.0, y - 120.0)]),)], "EPSG:3413", kind="LineString")
    asked = {"SUBJECTS": layer([(f"Point({x!r} {y!r})",)], "EPSG:3413", kind="Point"), "PATHS": paths, "BEARING": bearing}
    out = run("standpoints", {**asked, "AZ_TOLERANCE": 30, "MAX_DISTANCE": most_m, **SINKS})
    if most_m > 500.0:
        assert out.geometries("ZONES") == []
        assert "ZONES: 1 left out, as MAX_DISTANCE reaches over 40 % of the way from subject to pole" in out.log
        return
    (zone,) = out.geometries("ZONES")
    assert zone.isGeosValid()
    rng = np.random.default_rng(0)
    lon, lat, _ = GEOD.fwd(*(np.full(1000, value) for value in subject), rng.uniform(0, 360, 1000), rng.uniform(1, 1.1 * most_m, 1000))
    seen, _, dist = GEOD.inv(lon, lat, *(np.full(1000, value) for value in subject))
    off = np.abs((seen - bearing + 180.0) % 360.0 - 180.0) - 30.0
    inside = np.array([zone.contains(QgsPointXY(*xy)) for xy in zip(*from_wgs84("EPSG:3413")(lon, lat))])
    sure = (np.abs(np.radians(off) * dist) > 0.1) & (np.abs(dist - most_m) > 0.1)  # m
    np.testing.assert_array_equal(inside[sure], ((off < 0.0) & (dist < most_m))[sure])
    assert 100 < inside.sum() < 300
