"""`standpoints` in QGIS: declaration, refusals, what is written and in which CRS, closed ground and its seasons, awkward layers, cancel."""

import elevation_models as dem
import numpy as np
import pytest
import skyfield_places
import walks
from qgis.core import QgsGeometry, QgsPointXY, QgsProcessingParameterDefinition, QgsProject, QgsWkbTypes
from qgis.PyQt.QtCore import QDate
from walks import UTM, off_deg

from skyalidade.names import BODIES, MOON_RULES, STANDPOINTS_FIELDS, STRETCHES_FIELDS, ZONES_FIELDS

E, N = walks.PLACES[UTM]
TIME = "2025-06-26T01:30:00Z"  # the core stands at 177° there
TIME_S = 1750901400.0
SOUTH = {"subject": (0.0, -600.0)}  # of the path, where the core stands
NO_AIR = {"PRESSURE": 0}
BODY_FIELDS = STANDPOINTS_FIELDS[STANDPOINTS_FIELDS.index("body") :]


def line(*east_north):
    return "LineString(" + ", ".join(f"{E + east} {N + north}" for east, north in east_north) + ")"


def square(east, north, half):
    corners = [(-half, -half), (half, -half), (half, half), (-half, half), (-half, -half)]
    return "Polygon((" + ", ".join(f"{E + east + dx} {N + north + dy}" for dx, dy in corners) + "))"


@pytest.fixture
def stand(run, layer):
    """A subject 20 m high at the centre, a path from west to east 300 m south of it, and what else is asked."""

    def outcome(*paths, subject=(0.0, 0.0), crs=UTM, cancel_at=None, kind="LineString", subjects=None, **asked):
        paths = paths or (line((-900.0, -300.0), (900.0, -300.0)),)
        given = {
            "SUBJECTS": subjects or layer([(f"Point({E + subject[0]} {N + subject[1]})", "Stone")], UTM, ["name:string"], "Point"),
            "PATHS": layer([(wkt, f"Way {i}") for i, wkt in enumerate(paths)], crs, ["name:string"], kind),
            "SUBJECT_NAME": "name",
            "PATH_NAME": "name",
            "SUBJECT_HEIGHT": 20,
            "POINTS": "memory:",
        }
        return run("standpoints", {**given, **asked}, cancel_at)

    return outcome


def by_skyfield(body, lon, lat, t_utc_s):
    """True altitude and azimuth at one place and moments."""
    observer = skyfield_places.Observer(float(lon), float(lat), 0.0, skyfield_places.times(np.atleast_1d(t_utc_s)))
    return observer.altaz(skyfield_places.target(body))[:2]


@pytest.fixture
def refused(refusal, layer):
    """The sentence that refuses some parameters beside good ones; None takes one away."""

    def sentence(**asked):
        good = {"SUBJECTS": layer([("Point(-33 36)",)]), "PATHS": layer([("LineString(-33 36, -33 36.01)",)], kind="LineString")}
        return refusal("standpoints", {**good, "POINTS": "memory:", "BEARING": 10, **asked})

    return sentence


# declaration


def test_parameters_in_order(algorithm):
    standpoints = algorithm("standpoints")
    assert [definition.name() for definition in standpoints.parameterDefinitions()] == [
        *("SUBJECTS", "PATHS", "BEARING", "BODY", "STAR", "GALACTIC_LON", "TIME", "TIME_END", "FIRST_NIGHT", "LAST_NIGHT", "STEP"),
        *("AZ_TOLERANCE", "MIN_DISTANCE", "MAX_DISTANCE", "AREA", "CLOSED", "CLOSED_FROM", "CLOSED_TO", "KEEP_CLOSED"),
        *("GAP_MIN", "GAP_MAX", "ALT_MIN", "ALT_MAX", "MOON", "MOON_LIT_MAX", "SUN_LIMIT", "SUN_MIN", "LIT_MIN", "LIT_MAX"),
        *("TILT_MIN", "TILT_MAX", "APEX_MIN", "APEX_MAX", "CORE_ALT_MIN", "PATH_NAME", "SUBJECT_NAME", "CAMERA_HEIGHT"),
        *("SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO", "KEEP_FIELDS", "POS_ERROR"),
        *("DEM", "DEM_BAND", "TERRAIN_RADIUS", "SKIP_NEAR", "DEM_ACCURACY", "USE_SKYLINE"),
        *("TIME_ZONE", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS", "POINTS", "STRETCHES", "ZONES"),
    ]


def test_enums_are_static_texts_and_defaults_are_as_told(algorithm):
    standpoints = algorithm("standpoints")
    body, moon = (standpoints.parameterDefinition(name) for name in ("BODY", "MOON"))
    assert body.usesStaticStrings()
    assert moon.usesStaticStrings()
    assert (tuple(body.options()), tuple(moon.options())) == (tuple(BODIES), tuple(MOON_RULES))
    assert body.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional
    defaults = {"AZ_TOLERANCE": 0.5, "MAX_DISTANCE": 5000, "STEP": 15, "POS_ERROR": 3, "KEEP_CLOSED": False, "BEARING": None}
    assert {name: standpoints.parameterDefinition(name).defaultValue() for name in defaults} == defaults


# refusals


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"BODY": "core", "TIME": TIME}, "BEARING and BODY are both given"),
        ({"BEARING": None}, "No direction is given"),
        ({"TIME": TIME}, "beside it TIME, which belong to a body"),
        ({"GAP_MIN": 3}, "beside it GAP_MIN"),
        ({"BEARING": None, "BODY": "core", "TIME_END": TIME}, "TIME_END is given without TIME"),
        ({"BEARING": None, "BODY": "core", "TIME": TIME, "FIRST_NIGHT": "2027-06-01"}, "TIME and nights are both given"),
        ({"BEARING": None, "BODY": "core", "TIME": "2027-06-06 05:00", "TIME_END": "2027-06-06 04:00"}, "is before TIME"),
        ({"BEARING": None, "BODY": "core", "TIME": "soon"}, "'soon' is no time"),
        ({"BEARING": None, "BODY": "star", "TIME": TIME}, "BODY holds star"),
        ({"BEARING": None, "BODY": "comet", "TIME": TIME}, "'comet' is not known"),
        ({"BEARING": "north"}, "no finite number"),
        ({"AZ_TOLERANCE": 90}, "more than 0 and less than 90"),
        ({"AZ_TOLERANCE": 0}, "more than 0 and less than 90"),
        ({"MAX_DISTANCE": 0}, "lets nothing through"),
        ({"MIN_DISTANCE": 900, "MAX_DISTANCE": 100}, "MIN_DISTANCE"),
        ({"STEP": 0}, "STEP is 0"),
        ({"CAMERA_HEIGHT": -1}, "measured upward"),
        ({"PATH_NAME": "label"}, "has no field 'label'"),
    ],
)
def test_what_can_be_known_before_is_refused(refused, asked, sentence):
    assert sentence in refused(**asked)


def test_layers_of_another_kind_are_refused(refused, layer):
    points = layer([("Point(-33 36)",)])
    assert "not lines" in refused(PATHS=points)
    assert "not polygons" in refused(AREA=points)
    assert "not points" in refused(SUBJECTS=layer([("LineString(0 0, 1 1)",)], kind="LineString"))
    assert "has no CRS" in refused(CLOSED=layer([("Polygon((0 0, 1 0, 1 1, 0 0))",)], crs="", kind="Polygon"))
    assert "has no field 'when'" in refused(CLOSED=layer([("Polygon((0 0, 1 0, 1 1, 0 0))",)], kind="Polygon"), CLOSED_FROM="when")


# what is written


def test_a_bearing(stand):
    """One place, by pyproj; the columns of a body are null."""
    outcome = stand(BEARING=20)
    ((x, y),) = [(point.asPoint().x(), point.asPoint().y()) for point in outcome.geometries("POINTS")]
    (row,) = outcome.rows("POINTS")
    assert tuple(row) == STANDPOINTS_FIELDS
    lon, lat = walks.to_wgs84(UTM)(np.array([x]), np.array([y]))
    subject = walks.to_wgs84(UTM)(E, N)
    bearing, dist = walks.bearing_deg(lon, lat, *subject)
    assert off_deg(bearing[0], 20.0) == pytest.approx(0.0, abs=1e-6)
    assert row["bearing_deg"] == pytest.approx(20.0, abs=1e-6)
    assert (row["subject"], row["path"], row["camera"]) == ("Stone", "Way 0", f"Way 0 {row['chain_m']:.0f} m")
    assert row["dist_m"] == pytest.approx(dist[0], abs=1e-6)
    assert row["chain_m"] == pytest.approx((x - E + 900.0) / 0.9996, abs=0.01)
    assert row["err_deg"] == pytest.approx(np.degrees(np.arctan(3.0 / dist[0])), abs=1e-9)
    assert row["top_alt_deg"] == pytest.approx(np.degrees(np.arctan(18.5 / dist[0])), abs=0.003)  # level ground, lens at 1.5 m
    assert (row["heights"], row["allowed"]) == ("level", True)
    assert [row[name] for name in (*BODY_FIELDS, "visible", "sight", "clear_m")] == [None] * (len(BODY_FIELDS) + 3)
    assert "1 standpoints" in outcome.log
    assert "Walking in the dark" in outcome.log
    assert "not a permit" in outcome.log


def test_a_body_at_a_time(stand):
    """The core over the stone, by Skyfield at the place that was written."""
    outcome = stand(BODY="core", TIME=TIME, **SOUTH, **NO_AIR)
    (row,) = outcome.rows("POINTS")
    lon, lat = walks.to_wgs84(UTM)(*(outcome.geometries("POINTS")[0].asPoint()))
    alt, az, _ = skyfield_places.Observer(float(lon), float(lat), 0.0, skyfield_places.times(np.array([TIME_S]))).altaz(
        skyfield_places.target("core")
    )
    assert row["bearing_deg"] == pytest.approx(az[0], abs=2e-5)
    assert (row["az_deg"], row["alt_deg"]) == pytest.approx((az[0], alt[0]), abs=2e-5)
    assert row["d_alt_deg"] == pytest.approx(alt[0] - row["top_alt_deg"], abs=2e-5)
    assert (row["body"], row["night"], row["place"], row["tz"]) == ("core", QDate(2025, 6, 25), "above", "UTC-02:00")
    assert row["t_utc"].toUTC().toString("yyyy-MM-dd HH:mm:ss") == "2025-06-26 01:30:00"
    assert row["t_local"] == "2025-06-25 23:30:00 -02:00"
    assert None not in [row[name] for name in ("tilt_deg", "lean", "apex_deg", "sun_deg", "moon_deg", "moon_lit", "mag_deg")]


def test_conditions_of_nights_are_told_to_be_none_of_a_given_time(stand):
    asked = {"BODY": "core", "TIME": TIME, **SOUTH}
    assert "for nights only" not in stand(**asked).log
    outcome = stand(**asked, MOON="down", SUN_LIMIT=-40)
    assert "SUN_LIMIT, MOON: for nights only" in outcome.log
    assert len(outcome.rows("POINTS")) == 1


def test_the_wall_clock_is_that_of_the_subject(stand):
    asked = {"BODY": "core", "TIME": "2025-06-25 23:30:00", **SOUTH}
    there, elsewhere = (stand(**asked, **zone).rows("POINTS")[0] for zone in ({}, {"TIME_ZONE": "UTC-01:00"}))
    assert there["t_local"] == "2025-06-25 23:30:00 -02:00"
    assert elsewhere["t_local"] == "2025-06-25 23:30:00 -01:00"
    assert there["chain_m"] != pytest.approx(elsewhere["chain_m"], abs=1.0)


def test_times_walk_along_the_path_and_tell_their_step(stand):
    outcome = stand(BODY="core", TIME=TIME, TIME_END="2025-06-26T02:30:00Z", STEP=10, **SOUTH)
    rows = outcome.rows("POINTS")
    assert [row["t_local"][11:16] for row in rows] == ["23:30", "23:40", "23:50", "00:00", "00:10", "00:20", "00:30"]
    assert np.all(np.diff([row["chain_m"] for row in rows]) > 3.0)  # the core goes westward, the camera eastward
    temporal = outcome.layers["POINTS"].temporalProperties()
    assert temporal.isActive()
    assert (temporal.startField(), temporal.fixedDuration()) == ("t_utc", 10.0)


def test_nights_hold_the_moments_in_which_conditions_hold(stand):
    """Each row is dark, high enough and on the lattice; every dark moment of the lattice has its row, as the path is long enough."""
    nights = {"FIRST_NIGHT": "2025-06-24", "LAST_NIGHT": "2025-06-26", "STEP": 20}
    outcome = stand(line((-3000.0, -300.0), (3000.0, -300.0)), BODY="core", **nights, **SOUTH, **NO_AIR)
    rows = outcome.rows("POINTS")
    found = {row["t_utc"].toMSecsSinceEpoch() / 1000.0 for row in rows}
    lon, lat = walks.to_wgs84(UTM)(E, N - 600.0)
    noon = np.datetime64("2025-06-24T14:12").astype("datetime64[s]").astype(float)  # mean solar, at 33 W
    moments = 1200.0 * np.arange(np.ceil(noon / 1200.0), np.ceil((noon + 3 * 86400.0) / 1200.0))
    (core, _), (sun, _) = (by_skyfield(name, lon, lat, moments) for name in ("core", "sun"))
    assert found == set(moments[(core >= 10.0) & (sun <= -18.0)].tolist())
    assert {row["night"].toString("yyyy-MM-dd") for row in rows} == {"2025-06-24", "2025-06-25", "2025-06-26"}
    assert all(row["sun_deg"] <= -17.99 and row["alt_deg"] >= 9.9 for row in rows)


def test_stretches_and_zones(stand):
    """The stretch is where the zone crosses the path, and what lies in the zone is within tolerance."""
    outcome = stand(BEARING=20, AZ_TOLERANCE=3, MIN_DISTANCE=50, MAX_DISTANCE=1000, STRETCHES="memory:", ZONES="memory:")
    (stretch,), (zone,) = outcome.rows("STRETCHES"), outcome.rows("ZONES")
    assert (tuple(stretch), tuple(zone)) == (STRETCHES_FIELDS, ZONES_FIELDS)
    assert (stretch["bearing_min"], stretch["bearing_max"]) == pytest.approx((17.0, 23.0), abs=1e-6)
    assert (zone["target_deg"], zone["allowed"]) == (20.0, True)
    (part,), (ground,) = outcome.geometries("STRETCHES"), outcome.geometries("ZONES")
    assert part.wkbType() == QgsWkbTypes.Type.MultiLineString
    assert ground.wkbType() == QgsWkbTypes.Type.MultiPolygon
    assert ground.isGeosValid()
    crossing = QgsGeometry.fromWkt(line((-900.0, -300.0), (900.0, -300.0))).intersection(ground)
    assert part.hausdorffDistance(crossing) < 0.02  # m, the outline's own
    assert stretch["to_m"] - stretch["from_m"] == pytest.approx(part.length() / 0.9996, abs=0.01)
    rng = np.random.default_rng(0)
    x, y = E + rng.uniform(-1100, 1100, 4000), N + rng.uniform(-1100, 1100, 4000)
    bearing, dist = walks.bearing_deg(*walks.to_wgs84(UTM)(x, y), *walks.to_wgs84(UTM)(E, N))
    off = np.abs(off_deg(bearing, 20.0)) - 3.0
    inside = np.array([ground.contains(QgsPointXY(*xy)) for xy in zip(x.tolist(), y.tolist())])
    sure = (np.abs(off) > 0.05) & (np.abs(dist - 50.0) > 0.1) & (np.abs(dist - 1000.0) > 0.1)
    np.testing.assert_array_equal(inside[sure], ((off < 0.0) & (dist > 50.0) & (dist < 1000.0))[sure])


def test_a_gap_keeps_places_at_which_the_body_stands_so_high_over_the_top(stand):
    near, far = line((-400.0, -60.0), (400.0, -60.0)), line((-900.0, -300.0), (900.0, -300.0))
    asked = {"BODY": "core", "TIME": TIME, "AZ_TOLERANCE": 2, "STRETCHES": "memory:", "ZONES": "memory:"}
    subject = {"subject": (0.0, -500.0)}  # south of both: the core stands in the south
    free = stand(near, far, **subject, **asked)
    gaps = sorted(row["d_alt_deg"] for row in free.rows("POINTS"))
    assert len(gaps) == 2
    middle = sum(gaps) / 2.0
    held = stand(near, far, **subject, **asked, GAP_MIN=middle)
    assert [row["d_alt_deg"] for row in held.rows("POINTS")] == pytest.approx([gaps[1]])
    assert "1 with the body outside GAP_MIN to GAP_MAX" in held.log
    assert len(free.rows("STRETCHES")) == 2
    assert len(held.rows("STRETCHES")) == 1
    (ground,) = held.geometries("ZONES")
    assert ground.isGeosValid()
    for geometry, row in zip(free.geometries("POINTS"), free.rows("POINTS")):
        assert ground.contains(geometry) == (row["d_alt_deg"] > middle)
    assert 0.0 < ground.area() < free.geometries("ZONES")[0].area()


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:3857"])
def test_the_output_has_the_crs_of_the_subjects(stand, layer, crs):
    lon, lat = walks.to_wgs84(UTM)(E, N)
    subjects = layer([(f"Point({lon} {lat})", "Stone")], "EPSG:4326", ["name:string"], "Point")
    path = [(lon - 0.01, lat - 0.003), (lon + 0.01, lat - 0.003)]
    if crs != "EPSG:4326":
        path = list(zip(*walks.Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform(*zip(*path))))
    wkt = "LineString(" + ", ".join(f"{x} {y}" for x, y in path) + ")"
    outcome = stand(wkt, crs=crs, subjects=subjects, BEARING=20, STRETCHES="memory:", ZONES="memory:")
    for name in ("POINTS", "STRETCHES", "ZONES"):
        assert outcome.layers[name].crs().authid() == "EPSG:4326"
        assert len(outcome.rows(name)) == 1
    place = outcome.geometries("POINTS")[0].asPoint()
    bearing, _ = walks.bearing_deg(np.array([place.x()]), np.array([place.y()]), lon, lat)
    assert off_deg(bearing[0], 20.0) == pytest.approx(0.0, abs=1e-5)
    assert outcome.geometries("STRETCHES")[0].distance(outcome.geometries("POINTS")[0]) < 1e-9
    assert outcome.geometries("ZONES")[0].contains(outcome.geometries("POINTS")[0])


def test_points_serve_as_cameras(stand, run, layer):
    outcome = stand(BODY="core", TIME=TIME, **SOUTH)
    subjects = layer([(f"Point({E} {N - 600})",)], UTM, kind="Point")
    (line_of_sight,) = run("sightlines", {"CAMERAS": outcome.layers["POINTS"], "CAMERA_NAME": "camera", "SUBJECTS": subjects}).rows()
    (row,) = outcome.rows("POINTS")
    assert line_of_sight["camera"] == row["camera"]
    assert (line_of_sight["bearing_deg"], line_of_sight["dist_m"]) == pytest.approx((row["bearing_deg"], row["dist_m"]), abs=1e-6)


def test_fields_of_paths_go_with_points_and_stretches(run, layer):
    paths = layer([(line((-900.0, -300.0), (900.0, -300.0)), "easy", 3)], UTM, ["grade:string", "path:integer"], "LineString")
    subjects = layer([(f"Point({E} {N})",)], UTM, kind="Point")
    asked = {
        "SUBJECTS": subjects,
        "PATHS": paths,
        "BEARING": 20,
        "KEEP_FIELDS": ["grade", "path"],
        "POINTS": "memory:",
        "STRETCHES": "memory:",
    }
    outcome = run("standpoints", asked)
    for name in ("POINTS", "STRETCHES"):
        (row,) = outcome.rows(name)
        assert (row["grade"], row["path_2"], row["path"]) == ("easy", 3, "path 1")


def test_the_lens_may_differ_from_path_to_path(run, layer):
    rows = [(line((-900.0, -300.0), (900.0, -300.0)), mast) for mast in (1.0, 11.0)]
    paths = layer(rows, UTM, ["mast:double"], "LineString")
    subjects = layer([(f"Point({E} {N})",)], UTM, kind="Point")
    low, high = run(
        "standpoints",
        {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 20, "CAMERA_HEIGHT": "field:mast", "SUBJECT_HEIGHT": 21, "POINTS": "memory:"},
    ).rows("POINTS")
    assert np.tan(np.radians(low["top_alt_deg"])) == pytest.approx(2.0 * np.tan(np.radians(high["top_alt_deg"])), rel=1e-3)


# where one may stand

SHUT = {"CLOSED_FROM": "first", "CLOSED_TO": "last"}


@pytest.fixture
def shut(layer):
    """Polygons with their seasons; the place of bearing 20 lies about 109 m west of the subject's meridian."""
    return lambda *rows, crs=UTM: layer([*rows], crs, ["first:string", "last:string"], "Polygon")


def test_nobody_is_sent_into_closed_ground(stand, shut):
    closed = {"CLOSED": shut((square(-109.0, -300.0, 5.0), None, None)), **SHUT}
    asked = {"BEARING": 20, "AZ_TOLERANCE": 2, "STRETCHES": "memory:", "ZONES": "memory:"}
    outcome = stand(**asked, **closed)
    assert outcome.rows("POINTS") == []
    assert "1 outside AREA or in closed ground" in outcome.log
    pieces = outcome.geometries("STRETCHES")
    hole = QgsGeometry.fromWkt(square(-109.0, -300.0, 5.0))
    assert len(pieces) == 2
    assert all(piece.intersection(hole).length() < 1e-6 for piece in pieces)
    whole = stand(**asked)
    assert sum(piece.length() for piece in pieces) == pytest.approx(whole.geometries("STRETCHES")[0].length() - 10.0, abs=1e-6)
    (ground,) = outcome.geometries("ZONES")
    assert ground.intersection(hole).area() < 1e-6
    assert ground.area() == pytest.approx(whole.geometries("ZONES")[0].difference(hole).area(), rel=1e-9)

    kept = stand(**asked, **closed, KEEP_CLOSED=True)
    assert [row["allowed"] for row in kept.rows("POINTS")] == [False]
    assert [row["allowed"] for row in kept.rows("STRETCHES")] == [True, False, True]
    assert sorted(row["allowed"] for row in kept.rows("ZONES")) == [False, True]
    ends = [(row["from_m"], row["to_m"]) for row in kept.rows("STRETCHES")]
    assert [ends[0][1], ends[1][1]] == pytest.approx([ends[1][0], ends[2][0]], abs=1e-6)


def test_area_is_where_one_may_stand(stand, shut):
    asked = {"BEARING": 20, "AZ_TOLERANCE": 2, "STRETCHES": "memory:"}
    inside = stand(**asked, AREA=shut((square(-109.0, -300.0, 5.0), None, None)))
    assert len(inside.rows("POINTS")) == 1
    assert inside.geometries("STRETCHES")[0].length() == pytest.approx(10.0, abs=1e-6)
    outside = stand(**asked, AREA=shut((square(109.0, -300.0, 5.0), None, None)))
    assert outside.rows("POINTS") == outside.rows("STRETCHES") == []


@pytest.mark.parametrize(
    ("first", "last", "allowed"),
    [
        ("06-01", "06-24", True),
        ("06-01", "06-25", False),  # the date of the evening
        ("06-26", "07-31", False),  # the date of the moment, 00:30 the morning after
        ("06-27", "07-31", True),
        ("11-01", "06-25", False),  # over New Year
        ("2025-06-25", "2025-06-25", False),
        ("2024-06-25", "2024-06-26", True),
        (None, None, False),
        ("midsummer", None, False),  # not to be read: closed, with a warning
    ],
)
def test_seasons_go_by_the_evening_and_the_moment(stand, shut, first, last, allowed):
    closed = shut((square(0.0, -300.0, 800.0), first, last))
    outcome = stand(BODY="core", TIME="2025-06-26 00:30:00", CLOSED=closed, **SHUT, **SOUTH)
    assert len(outcome.rows("POINTS")) == allowed
    assert ("cannot be read" in outcome.log) == (first == "midsummer")


def test_without_a_time_every_season_is_closed(stand, shut):
    assert stand(BEARING=20, CLOSED=shut((square(0.0, -300.0, 800.0), "2001-01-01", "2001-01-02")), **SHUT).rows("POINTS") == []


def test_polygons_in_another_crs(stand, shut):
    corners = [(-150.0, -330.0), (-60.0, -330.0), (-60.0, -270.0), (-150.0, -270.0), (-150.0, -330.0)]
    lon, lat = walks.to_wgs84(UTM)(*(np.array(values) for values in zip(*[(E + dx, N + dy) for dx, dy in corners])))
    wkt = "Polygon((" + ", ".join(f"{x} {y}" for x, y in zip(lon, lat)) + "))"
    asked = {"BEARING": 20, "AZ_TOLERANCE": 20, "STRETCHES": "memory:"}
    cut = stand(**asked, CLOSED=shut((wkt, None, None), crs="EPSG:4326"))
    whole = stand(**asked)
    lengths = [sum(part.length() for part in outcome.geometries("STRETCHES")) for outcome in (whole, cut)]
    assert cut.rows("POINTS") == []
    assert lengths[0] - lengths[1] == pytest.approx(90.0, abs=0.01)


def test_polygons_that_are_not_valid_are_repaired_or_refused_by_their_id(stand, shut):
    bow = f"Polygon(({E - 150} {N - 330}, {E - 60} {N - 270}, {E - 60} {N - 330}, {E - 150} {N - 270}, {E - 150} {N - 330}))"
    outcome = stand(BEARING=20, CLOSED=shut((bow, None, None)))
    assert "have been repaired: features 1" in outcome.log
    flat = f"Polygon(({E} {N}, {E + 10} {N}, {E} {N}, {E} {N}))"
    with pytest.raises(Exception, match="feature 1 crosses itself and cannot be repaired"):
        stand(BEARING=20, CLOSED=shut((flat, None, None)))


# awkward layers


def test_paths_that_cannot_be_walked_are_counted(stand):
    outcome = stand(
        None,
        "LineString EMPTY",
        f"LineString({E} {N}, {E} {N})",
        f"LineString({E} {N})",
        line((-900.0, -300.0), (900.0, -300.0)),
        BEARING=20,
    )
    assert len(outcome.rows("POINTS")) == 1
    assert "1 with no geometry" in outcome.log
    assert "1 lines from 5 features" in outcome.log


@pytest.mark.parametrize(
    ("kind", "wkt"),
    [
        ("LineStringZ", f"LineStringZ({E - 900} {N - 300} 50, {E + 900} {N - 300} 50)"),
        ("LineStringM", f"LineStringM({E - 900} {N - 300} 7, {E + 900} {N - 300} 8)"),
        ("LineStringZM", f"LineStringZM({E - 900} {N - 300} 50 7, {E + 900} {N - 300} 50 8)"),
        ("MultiLineString", f"MultiLineString(({E - 900} {N - 300}, {E} {N - 300}), ({E + 50} {N - 300}, {E + 900} {N - 300}))"),
        ("CompoundCurve", f"CompoundCurve(({E - 900} {N - 300}, {E - 50} {N - 300}, {E + 900} {N - 300}))"),
    ],
)
def test_lines_of_every_kind(stand, kind, wkt):
    (row,) = stand(wkt, kind=kind, BEARING=20).rows("POINTS")
    assert row["chain_m"] == pytest.approx((900.0 - 109.0) / 0.9996, abs=1.0)


def test_heights_of_path_and_subject(run, layer):
    """Z of both ends: 50 m along the path, 80 m at the foot."""
    paths = layer([(f"LineStringZ({E - 900} {N - 300} 50, {E + 900} {N - 300} 50)",)], UTM, kind="LineStringZ")
    subjects = layer([(f"PointZ({E} {N} 80)",)], UTM)
    asked = {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 20, "SUBJECT_HEIGHT": 20, "POINTS": "memory:"}
    (row,) = run("standpoints", asked).rows("POINTS")
    assert row["heights"] == "z"
    assert row["top_alt_deg"] == pytest.approx(np.degrees(np.arctan(48.5 / row["dist_m"])), abs=0.003)


def test_a_subject_on_the_path_and_a_path_through_it(stand):
    outcome = stand(line((-300.0, 0.0), (300.0, 0.0)), BEARING=20)
    assert outcome.rows("POINTS") == []
    seen = stand(line((-300.0, 0.0), (300.0, 0.0)), BEARING=90, AZ_TOLERANCE=1)
    assert [row["dist_m"] > 0.01 for row in seen.rows("POINTS")] == [True]


def test_a_body_below_the_horizon_says_so_with_its_altitude(stand):
    outcome = stand(BODY="sun", TIME=TIME)
    assert outcome.rows("POINTS") == []
    alt, _ = by_skyfield("sun", *walks.to_wgs84(UTM)(E, N), TIME_S)
    assert f"the Sun stands at {alt[0]:.1f}° of altitude, below the horizon" in outcome.log
    assert "Never look at the Sun" in outcome.log


def test_no_solution_is_an_empty_layer_and_tells_the_bearings_that_there_are(stand):
    outcome = stand(BEARING=200, STRETCHES="memory:", ZONES="memory:")
    assert outcome.rows("POINTS") == outcome.rows("STRETCHES") == []
    assert "Way 0 sees Stone at bearings from 288.4° clockwise to 71.6°; wanted: 200.0°." in outcome.log
    assert "1 farther than MAX_DISTANCE" in stand(BEARING=20, MAX_DISTANCE=100).log
    assert "No path comes within MAX_DISTANCE (100 m) of a subject" in stand(BEARING=20, MAX_DISTANCE=100, subject=(0.0, 9000.0)).log


def test_faces_and_distances_are_counted(stand, layer):
    subjects = layer([(f"Point({E} {N})", 90.0, 270.0)], UTM, ["a:double", "b:double"], "Point")
    faced = {"FACE_FROM": "field:a", "FACE_TO": "field:b", "SUBJECT_NAME": None}
    assert "1 outside FACE_FROM to FACE_TO" in stand(BEARING=20, subjects=subjects, **faced).log
    assert "1 nearer than MIN_DISTANCE" in stand(BEARING=20, MIN_DISTANCE=400).log


def test_across_the_antimeridian(run, layer):
    """A path in degrees whose neighbouring vertices lie on either side; zone and stretch are cut there, the point lies in the world."""
    subjects = layer([("Point(179.9999 -17)",)], kind="Point")
    paths = layer([("LineString(179.995 -17.002, -179.995 -17.002)",)], kind="LineString")
    asked = {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 340, "AZ_TOLERANCE": 30, "MAX_DISTANCE": 1000}
    outcome = run("standpoints", {**asked, **dict.fromkeys(("POINTS", "STRETCHES", "ZONES"), "memory:")})
    (row,) = outcome.rows("POINTS")
    place = outcome.geometries("POINTS")[0].asPoint()
    bearing, dist = walks.bearing_deg(np.array([place.x()]), np.array([place.y()]), 179.9999, -17.0)
    assert -180.0 <= place.x() < -179.99
    assert off_deg(bearing[0], 340.0) == pytest.approx(0.0, abs=1e-5)
    assert row["dist_m"] == pytest.approx(dist[0], abs=1e-4)
    for name in ("STRETCHES", "ZONES"):
        (shape,) = outcome.geometries(name)
        assert shape.boundingBox().xMinimum() >= -180.0
        assert shape.boundingBox().xMaximum() <= 180.0
        assert shape.constGet().numGeometries() == 2


def test_closed_ground_is_closed_on_either_side_of_the_antimeridian(run, layer):
    """The path is drawn from the east; the standpoint lies west of the line, in a polygon that is drawn there."""
    subjects = layer([("Point(179.9999 -17)",)], kind="Point")
    paths = layer([("LineString(179.995 -17.002, -179.995 -17.002)",)], kind="LineString")
    shut = layer([("Polygon((-180 -17.01, -179.99 -17.01, -179.99 -16.99, -180 -16.99, -180 -17.01))",)], kind="Polygon")
    asked = {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 340, "POINTS": "memory:", "STRETCHES": "memory:", "ZONES": "memory:"}
    assert len(run("standpoints", asked).rows("POINTS")) == 1
    outcome = run("standpoints", {**asked, "CLOSED": shut, "MAX_DISTANCE": 500})
    assert outcome.rows("POINTS") == outcome.rows("STRETCHES") == []
    (zone,) = outcome.geometries("ZONES")
    assert zone.boundingBox().xMinimum() > 179.0


def test_rows_beyond_the_limit_are_refused(stand):
    with pytest.raises(Exception, match="more than MAX_ROWS"):
        stand(BODY="core", TIME=TIME, TIME_END="2025-06-26T03:30:00Z", STEP=1, MAX_ROWS=5)


def test_cancelling_leaves_what_was_written_and_says_so(stand):
    nights = {"FIRST_NIGHT": "2025-06-01", "LAST_NIGHT": "2025-06-30", "STEP": 5}
    outcome = stand(line((-3000.0, -300.0), (3000.0, -300.0)), BODY="core", ZONES="memory:", cancel_at=72, **nights, **SOUTH)
    assert "Cancelled" in outcome.log
    assert outcome.feedback.shares == sorted(outcome.feedback.shares)


def test_progress_comes_to_its_end(stand):
    outcome = stand(BODY="core", TIME=TIME, STRETCHES="memory:", ZONES="memory:", **SOUTH)
    assert outcome.feedback.shares[-1] == 100.0
    assert outcome.feedback.shares == sorted(outcome.feedback.shares)


def test_the_project_is_left_alone(stand):
    before = QgsProject.instance().mapLayers().keys()
    stand(BEARING=20)
    assert QgsProject.instance().mapLayers().keys() == before


# over ground


def hill(east, north):
    """A gentle slope up to the north, a wall east to west 100 m south of the path, and a mountain far in the south-south-west."""
    wall = np.where((north < -385.0) & (north > -425.0), 30.0, 0.0)
    mountain = 2200.0 * np.exp(-(((east + 300.0) / 300.0) ** 2 + ((north + 3500.0) / 300.0) ** 2))
    return 100.0 + 0.02 * north + wall * (east < 0.0) + mountain


@pytest.fixture
def ground(tmp_path):
    return dem.write(tmp_path / "ground.tif", *dem.around(hill))


def test_heights_and_sight_are_those_of_sightlines(stand, run, layer, ground):
    """The same columns as `sightlines` gives for the places found; hidden behind the wall in the west, in sight in the east."""
    asked = {"DEM": ground, "SUBJECT_HEIGHT": 20, **SOUTH}
    times = {"BODY": "core", "TIME": "2025-06-26T00:30:00Z", "TIME_END": "2025-06-26T04:30:00Z", "STEP": 30}
    outcome = stand(**times, **asked, USE_SKYLINE=False)
    subjects = layer([(f"Point({E} {N - 600})",)], UTM, kind="Point")
    pairs = {"CAMERAS": outcome.layers["POINTS"], "SUBJECTS": subjects, "DEM": ground, "SUBJECT_HEIGHT": 20}
    rows = outcome.rows("POINTS")
    for mine, line_of_sight in zip(rows, run("sightlines", pairs).rows()):
        for name in ("heights", "visible", "sight"):
            assert mine[name] == line_of_sight[name]
        assert (mine["top_alt_deg"], mine["clear_m"]) == pytest.approx((line_of_sight["top_alt_deg"], line_of_sight["clear_m"]), abs=1e-6)
    assert {row["heights"] for row in rows} == {"dem"}
    assert {row["visible"] for row in rows} == {True, False}
    assert "in cells of 10 m" in outcome.log


def test_a_body_behind_the_terrain_is_left_out_and_counted(stand, ground):
    """The mountain hides the core in some directions; the skyline told is that of `terrain_horizon`'s own ray."""
    asked = {"DEM": ground, "BODY": "core", "TIME": "2025-06-26T01:00:00Z", "TIME_END": "2025-06-26T04:30:00Z", "STEP": 15, **SOUTH}
    kept, every = stand(**asked).rows("POINTS"), stand(**asked, USE_SKYLINE=False).rows("POINTS")
    behind = [row for row in every if row["alt_deg"] < row["ground_deg"]]
    assert 0 < len(behind) < len(every)
    assert [row["t_local"] for row in kept] == [row["t_local"] for row in every if row not in behind]
    assert f"{len(behind)} with the body behind the terrain" in stand(**asked).log
    near_mountain = max(every, key=lambda row: row["ground_deg"])
    assert 183.0 < near_mountain["az_deg"] < 191.0


def test_a_zone_is_narrowed_by_the_ground(stand, ground):
    """Points on a path through the zone are in it exactly where the core stands so high over the top."""
    path = line((-60.0, 200.0), (-10.0, -250.0), (-1.0, -590.0))  # up the zone from the subject
    asked = {"DEM": ground, "BODY": "core", "TIME": TIME, "AZ_TOLERANCE": 8, "MAX_DISTANCE": 900, **SOUTH, "USE_SKYLINE": False}
    held = stand(path, **asked, GAP_MIN=4, GAP_MAX=22, ZONES="memory:", STRETCHES="memory:")
    (zone,), pieces = held.geometries("ZONES"), held.geometries("STRETCHES")
    whole = stand(path, **asked, ZONES="memory:", STRETCHES="memory:")
    assert zone.isGeosValid()
    assert 0.0 < zone.area() < whole.geometries("ZONES")[0].area()
    along, within = (sum(piece.length() for piece in outcome.geometries("STRETCHES")) for outcome in (whole, held))
    assert 0.0 < within < along
    assert zone.intersection(whole.geometries("STRETCHES")[0]).length() == pytest.approx(within, abs=15.0)  # m: strips are a cell wide
    for piece in pieces:
        assert piece.intersection(zone).length() > 0.8 * piece.length()
