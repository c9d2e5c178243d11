"""Standpoints by PROJ and Skyfield alone, where layers are awkward: seams of maps, closed ground, loops, faces, distances."""

import numpy as np
import pytest
import skyfield_places
import walks
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


# a walk about a few subjects, with everything asked


E, N = 500000.0, 3985000.0  # EPSG:32625, on its central meridian
EVENING = {"BODY": "core", "TIME": "2025-06-26T01:30:00Z", "TIME_END": "2025-06-26T02:30:00Z", "STEP": 30, "ALT_MIN": 0, "PRESSURE": 0}


def walked(rng, steps=30):
    heading = np.cumsum(rng.normal(0.0, 0.6, steps)) + rng.uniform(0.0, 6.0)
    way = np.column_stack([np.cumsum(80.0 * np.sin(heading)), np.cumsum(80.0 * np.cos(heading))])
    return way - way.mean(axis=0) + rng.normal(0.0, 100.0, 2) + (0.0, 300.0)  # north of the subjects: the core stands in the south


@pytest.fixture
def about(run, layer):
    """A run over four subjects and five paths, in an order, a CRS and turns of longitude; or of some of them alone."""
    rng = np.random.default_rng(3)
    subjects = [(f"Stone {i}", [(E, N) + rng.normal(0.0, 300.0, 2)]) for i in range(4)]
    paths = [(f"Way {i}", (E, N) + walked(rng)) for i in range(5)]

    def outcome(some_subjects=range(4), some_paths=range(5), turned_deg=None, **asked):
        def put(xy):
            if turned_deg is None:
                return xy
            lon, lat = Transformer.from_crs("EPSG:32625", "EPSG:4326", always_xy=True).transform(*np.transpose(xy))
            return np.column_stack([np.asarray(lon) + turned_deg, lat])

        crs = "EPSG:32625" if turned_deg is None else "EPSG:4326"
        stones = [("Point({!r} {!r})".format(*put(xy)[0].tolist()), name) for name, xy in subjects]
        ways = [(linestring(put(xy)), name) for name, xy in paths]
        given = {
            "SUBJECTS": layer([stones[i] for i in some_subjects], crs, ["name:string"], "Point"),
            "PATHS": layer([ways[i] for i in some_paths], crs, ["name:string"], "LineString"),
            "SUBJECT_NAME": "name",
            "PATH_NAME": "name",
            "SUBJECT_HEIGHT": 15,
            "AZ_TOLERANCE": 3,
            "MAX_DISTANCE": 1000,
        }
        return run("standpoints", {**given, **EVENING, **SINKS, **asked})

    return outcome


def told(*outcomes):
    """Numbers of the rows of all outcomes together, by name and place, in an order of their own."""
    rows = []
    for out in outcomes:
        for sink, along in (("POINTS", "chain_m"), ("STRETCHES", "from_m"), ("ZONES", None)):
            for row in out.rows(sink):
                at = row[along] if along else 0.0
                numbers = [value for name, value in row.items() if isinstance(value, float)]
                rows.append(((sink, row["subject"], row.get("path", ""), row["t_local"], round(at, 2)), numbers))
    return sorted(rows)


def agree(ours, theirs, within):
    assert [key[:4] for key, _ in ours] == [key[:4] for key, _ in theirs]
    np.testing.assert_allclose(np.concatenate([row for _, row in ours]), np.concatenate([row for _, row in theirs]), rtol=0, atol=within)


def test_rows_are_the_same_however_layers_are_put_together(about):
    """In another order, each subject and each path alone, and in degrees turned round the Earth."""
    whole = told(about())
    assert len(whole) > 40
    agree(whole, told(about([2, 0, 3, 1], [4, 1, 0, 3, 2])), 1e-6)
    agree(whole, told(*(about([i]) for i in range(4))), 1e-6)
    by_path = [row for row in told(*(about(some_paths=[i]) for i in range(5))) if row[0][0] != "ZONES"]
    agree([row for row in whole if row[0][0] != "ZONES"], by_path, 1e-6)
    in_degrees = told(about(turned_deg=0.0))
    for turned_deg in (-360.0, 360.0):
        agree(in_degrees, told(about(turned_deg=turned_deg)), 1e-5)


def test_each_place_by_skyfield_and_earth_fixed_trigonometry(about):
    """The core stands over the top, within the promised 0.001° and 0.01°, at every place that is told to reach it."""
    out = about()
    checked = 0
    for row, place in zip(out.rows("POINTS"), out.geometries("POINTS")):
        lon, lat = Transformer.from_crs("EPSG:32625", "EPSG:4326", always_xy=True).transform(place.asPoint().x(), place.asPoint().y())
        moment = row["t_utc"].toMSecsSinceEpoch() / 1000.0
        observer = skyfield_places.Observer(lon, lat, 0.0, skyfield_places.times(np.array([moment])))
        alt, az, _ = observer.altaz(skyfield_places.target("core"))
        assert row["az_deg"] == pytest.approx(az[0], abs=0.001)
        assert row["alt_deg"] == pytest.approx(alt[0], abs=0.001)
        assert row["miss_deg"] == pytest.approx((row["bearing_deg"] - az[0] + 180.0) % 360.0 - 180.0, abs=0.001)
        rise_m, run_m = 13.5 - row["dist_m"] ** 2 * (1.0 - 0.13) / (2.0 * 6.37e6), row["dist_m"]  # handbook: curvature less refraction
        assert row["top_alt_deg"] == pytest.approx(np.degrees(np.arctan2(rise_m, run_m)), abs=0.01)
        assert row["d_alt_deg"] == pytest.approx(alt[0] - row["top_alt_deg"], abs=0.002)
        checked += abs(row["miss_deg"]) < 1e-6
    assert checked > 10


def test_what_is_allowed_and_what_is_not_make_up_the_whole(about, layer):
    """Discs are closed and a rectangle is the area: where each place lies is plain, and the parts add up to what is free otherwise."""
    rng = np.random.default_rng(5)
    centres, radius = (E, N) + rng.normal(0.0, 350.0, (12, 2)) + (0.0, 200.0), 90.0
    turn = np.radians(np.arange(0.0, 361.0))
    discs = [np.column_stack([x + radius * np.sin(turn), y + radius * np.cos(turn)]) for x, y in centres]
    west, east, south, north = E - 500.0, E + 900.0, N - 900.0, N + 700.0
    box = [(west, south), (east, south), (east, north), (west, north), (west, south)]

    def polygon(ring):
        return linestring(ring).replace("LineString(", "Polygon((") + ")"

    grounds = {
        "CLOSED": layer([(polygon(np.vstack([disc[:-1], disc[:1]])),) for disc in discs], "EPSG:32625", kind="Polygon"),
        "AREA": layer([(polygon(box),)], "EPSG:32625", kind="Polygon"),
    }

    def inside(xy):
        """Metres inside of what is allowed; negative outside."""
        bounded = np.min([xy[:, 0] - west, east - xy[:, 0], xy[:, 1] - south, north - xy[:, 1]], axis=0)
        return np.minimum(bounded, np.hypot(*(xy[:, None, :] - centres).transpose(2, 0, 1)).min(axis=1) - radius)

    free, kept, dropped = about(), about(**grounds, KEEP_CLOSED=True), about(**grounds)
    states = np.array([row["allowed"] for row in kept.rows("POINTS")])
    places = np.array([tuple(place.asPoint()) for place in kept.geometries("POINTS")])
    assert {True, False} == set(states.tolist())
    np.testing.assert_array_equal(states, inside(places) > 0.0)
    assert len(dropped.rows("POINTS")) == states.sum()
    for sink, measure in (("STRETCHES", "length"), ("ZONES", "area")):
        whole, both, some = (sum(getattr(shape, measure)() for shape in out.geometries(sink)) for out in (free, kept, dropped))
        assert both == pytest.approx(whole, rel=1e-6)
        assert 0.1 * whole < some < 0.9 * whole
        for shape in dropped.geometries(sink):
            assert inside(np.array([(vertex.x(), vertex.y()) for vertex in shape.vertices()])).min() > -0.02  # m: a disc has 360 corners
        for shape, row in zip(kept.geometries(sink), kept.rows(sink)):
            if sink == "STRETCHES":
                middle = tuple(shape.interpolate(0.5 * shape.length()).asPoint())
                assert (inside(np.array([middle]))[0] > 0.0) == row["allowed"]


# maps that turn and stretch the ground


MAPS = {  # somewhere on each, and its units in a metre: grids up to 127° off true north, feet, far out of a zone
    "EPSG:3413": (-900_000.0, 300_000.0, 1.0),
    "EPSG:3031": (1_200_000.0, -900_000.0, 1.0),
    "EPSG:2264": (1_600_000.0, 700_000.0, 3.2808),
    "EPSG:32660": (832_000.0, 100_000.0, 1.0),
    "EPSG:2193": (2_300_000.0, 5_100_000.0, 1.0),
    "EPSG:3035": (2_700_000.0, 1_500_000.0, 1.0),
}


@pytest.mark.parametrize("crs", MAPS)
def test_a_walk_in_steps_of_a_decimetre_on_maps_of_all_kinds(run, layer, crs):
    """A path straight on its own map, some of its vertices drawn twice: places and parts as pyproj finds them step by step."""
    x0, y0, unit = MAPS[crs]
    rng = np.random.default_rng(len(crs) + int(x0) % 97)
    way = np.repeat((x0, y0) + 0.4 * unit * walked(rng, 20), rng.integers(1, 3, 20), axis=0)
    lon, lat, chain = walks.along(*way.T, 0.1, crs)
    subject = [float(value) for value in walks.to_wgs84(crs)(*(way.mean(axis=0) + unit * np.array([14.0, -11.0])))]
    seen, dist = walks.bearing_deg(lon, lat, *subject)
    given = {"SUBJECTS": layer([("Point({!r} {!r})".format(*subject),)], kind="Point"), "MAX_DISTANCE": 50_000}
    given["PATHS"] = layer([(linestring(way),)], crs, kind="LineString")
    passed = 0
    assert dist.min() > 1.0  # m: nearer a step is too wide for the scan
    for bearing in (0.0, 40.0, 77.0, 130.0, 200.0, 250.0, 300.0, 360.0):
        miss = walks.off_deg(seen, bearing)
        out = run("standpoints", {**given, **SINKS, "BEARING": bearing, "AZ_TOLERANCE": 4})
        expected = walks.passages(chain, miss)
        roots = np.array([row["chain_m"] for row in out.rows("POINTS") if abs(row["miss_deg"]) < 1e-3])
        assert roots.size == expected.size
        assert np.all(np.abs(roots - expected) < 1e-3 + 0.01 / np.interp(expected, chain, dist))  # m: the step squared over the distance
        within = np.flatnonzero(np.diff(np.concatenate([[False], np.abs(miss) <= 4.0, [False]]).astype(int)))
        begin, end = chain[within[0::2]], chain[within[1::2] - 1]
        parts = [(row["from_m"], row["to_m"]) for row in out.rows("STRETCHES")]
        assert len(parts) == begin.size
        np.testing.assert_allclose(np.reshape(sorted(parts), (-1, 2)).T, [begin, end], rtol=0, atol=0.11)  # m, a step of the scan
        passed += expected.size
    assert passed > 3


# along the line


@pytest.mark.parametrize("steps", [1, 7, 1000])
@pytest.mark.parametrize("ends_m", [(-900.0, 0.0), (-900.0, -300.0)])
def test_a_straight_way_to_the_subject_is_stood_on_in_its_middle(run, layer, ends_m, steps):
    """Due west of the subject, up to it and short of it: one place, halfway, not at the subject's foot."""
    lon, lat, _ = GEOD.fwd(*(np.full(2, value) for value in (-33.0, 36.0)), np.full(2, 90.0), ends_m)
    way = np.column_stack([np.linspace(*lon, steps + 1), np.linspace(*lat, steps + 1)])
    asked = {"SUBJECTS": layer([("Point(-33 36)",)], kind="Point"), "PATHS": layer([(linestring(way),)], kind="LineString")}
    out = run("standpoints", {**asked, "BEARING": 90, **SINKS})
    ((row,), (part,)) = out.rows("POINTS"), out.rows("STRETCHES")
    length_m = ends_m[1] + 900.0
    assert row["chain_m"] == pytest.approx(0.5 * length_m, abs=1.0)
    assert abs(row["miss_deg"]) < 0.01
    assert (part["from_m"], part["to_m"]) == pytest.approx((0.0, length_m), abs=0.1)
