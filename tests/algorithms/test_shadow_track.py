"""`shadow_track` in QGIS: declaration, refusals, points and lines, closed ground, ground by an elevation model, cancel."""

import elevation_models as dem
import numpy as np
import pytest
import skyfield_places
import walks
from qgis.core import QgsWkbTypes
from walks import UTM

from skyalidade.names import SHADOW_TRACK_FIELDS, TRACK_LINES_FIELDS

E, N = walks.PLACES[UTM]
START, END = "2025-06-25T17:00:00Z", "2025-06-25T19:00:00Z"
START_S = 1750870800.0
TOP_M, LENS_M = 40.0, 1.5


@pytest.fixture
def track(run, layer):
    """The Sun's shadow of a stone 40 m high, every 30 minutes of an afternoon."""

    def outcome(cancel_at=None, **asked):
        stone = layer([(f"Point({E} {N})", "Stone")], UTM, ["name:string"], "Point")
        given = {"SUBJECTS": stone, "SUBJECT_NAME": "name", "SUBJECT_HEIGHT": TOP_M, "BODY": "sun", "START": START, "END": END, "STEP": 30}
        return run("shadow_track", {**given, "LINES": "memory:", "PRESSURE": 0, **asked}, cancel_at)

    return outcome


def sun(lon, lat, moments):
    observer = skyfield_places.Observer(float(lon), float(lat), 0.0, skyfield_places.times(np.atleast_1d(moments)))
    return observer.altaz(skyfield_places.target("sun"))[:2]


def test_parameters_in_order(algorithm):
    shadow_track = algorithm("shadow_track")
    assert [definition.name() for definition in shadow_track.parameterDefinitions()] == [
        *("SUBJECTS", "BODY", "STAR", "GALACTIC_LON", "START", "END", "STEP", "GAP", "MAX_DISTANCE"),
        *("AREA", "CLOSED", "CLOSED_FROM", "CLOSED_TO", "KEEP_CLOSED", "SUBJECT_NAME", "CAMERA_HEIGHT"),
        *("SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO", "DEM", "DEM_BAND", "SKIP_NEAR", "DEM_ACCURACY"),
        *("TIME_ZONE", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS", "OUTPUT", "LINES"),
    ]
    defaults = {"BODY": "core", "GAP": 0, "STEP": 5, "MAX_DISTANCE": 5000}
    assert {name: shadow_track.parameterDefinition(name).defaultValue() for name in defaults} == defaults


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"START": None}, "START is blank"),
        ({"START": "noon"}, "'noon' is no time"),
        ({"END": "2025-06-25T16:00:00Z"}, "is before START"),
        ({"STEP": 0}, "STEP is 0"),
        ({"MAX_DISTANCE": 0}, "lets nothing through"),
        ({"BODY": "star"}, "BODY holds star"),
        ({"GAP": 91}, "GAP is 91"),
    ],
)
def test_what_can_be_known_before_is_refused(refusal, layer, asked, sentence):
    good = {"SUBJECTS": layer([("Point(-33 36)",)]), "START": START}
    assert sentence in refusal("shadow_track", {**good, **asked})


def test_the_tip_of_the_shadow_on_level_ground(track):
    """By Skyfield at the places written: as long as the top is high over the lens, away from the Sun."""
    outcome = track()
    rows, places = outcome.rows(), outcome.geometries()
    assert tuple(rows[0]) == SHADOW_TRACK_FIELDS
    assert [row["t_local"][11:16] for row in rows] == ["15:00", "15:30", "16:00", "16:30", "17:00"]
    for i, (row, place) in enumerate(zip(rows, places)):
        lon, lat = walks.to_wgs84(UTM)(place.asPoint().x(), place.asPoint().y())
        alt, az = sun(lon, lat, START_S + 1800.0 * i)
        bearing, dist = walks.bearing_deg(np.atleast_1d(lon), np.atleast_1d(lat), *walks.to_wgs84(UTM)(E, N))
        assert bearing[0] == pytest.approx(az[0], abs=1e-4)
        assert dist[0] == pytest.approx((TOP_M - LENS_M) / np.tan(np.radians(alt[0])), rel=1e-4)
        assert (row["dist_m"], row["bearing_deg"], row["alt_deg"]) == pytest.approx((dist[0], bearing[0], alt[0]), abs=1e-4)
        assert (row["order"], row["allowed"], row["heights"], row["body"], row["subject"]) == (1, True, "level", "sun", "Stone")
    (line,) = outcome.rows("LINES")
    assert tuple(line) == TRACK_LINES_FIELDS
    assert (line["start_loc"][11:16], line["end_loc"][11:16]) == ("15:00", "17:00")
    (drawn,) = outcome.geometries("LINES")
    assert drawn.wkbType() == QgsWkbTypes.Type.MultiLineString
    assert [drawn.vertexAt(i).distance(*place.asPoint()) for i, place in enumerate(places)] == pytest.approx([0.0] * 5, abs=1e-6)
    for words in ("Never look at the Sun", "Walking in the dark", "not a permit"):
        assert words in outcome.log


def test_a_gap_brings_one_nearer_the_longer_way(track):
    low, high = ([row["dist_m"] for row in track(GAP=gap).rows()] for gap in (0, 5))
    assert all(far > near for near, far in zip(low, high))


def test_over_ground_the_shadow_ends_on_the_slope_and_goes_on_beyond(track, tmp_path):
    """A rampart east of the stone catches the low Sun's shadow; the ground beyond lies in the shadow of the rampart."""
    ground = dem.write(tmp_path / "ground.tif", *dem.around(lambda east, north: np.where((east > 55) & (east < 85), 25.0, 0.0 * north)))
    asked = {"START": "2025-06-25T20:00:00Z", "END": None, "DEM": ground}
    level, outcome = track(START=asked["START"], END=None).rows(), track(**asked)
    rows = outcome.rows()
    assert [row["order"] for row in rows] == [1, 2, 3]
    assert 55.0 < rows[0]["dist_m"] < 70.0  # on the near slope, at 55 to 65 m east
    assert rows[2]["dist_m"] == pytest.approx(level[0]["dist_m"], rel=2e-3)
    assert [row["heights"] for row in rows] == ["dem"] * 3
    assert rows[2]["visible"] is False or rows[2]["sight"] in ("hidden", "uncertain")
    assert rows[0]["z_m"] > 5.0


def test_closed_ground_breaks_the_line(track, layer):
    whole = track()
    x, y = whole.geometries()[2].asPoint()
    shut = f"Polygon(({x - 1} {y - 1}, {x + 1} {y - 1}, {x + 1} {y + 1}, {x - 1} {y + 1}, {x - 1} {y - 1}))"
    closed = {"CLOSED": layer([(shut, "06-25", "06-25")], UTM, ["a:string", "b:string"], "Polygon"), "CLOSED_FROM": "a", "CLOSED_TO": "b"}
    outcome = track(**closed)
    assert [row["t_local"][11:16] for row in outcome.rows()] == ["15:00", "15:30", "16:30", "17:00"]
    assert [(row["start_loc"][11:16], row["end_loc"][11:16]) for row in outcome.rows("LINES")] == [("15:00", "15:30"), ("16:30", "17:00")]
    assert "1 outside AREA or in closed ground" in outcome.log
    assert [row["allowed"] for row in track(**closed, KEEP_CLOSED=True).rows()] == [True, True, False, True, True]


def test_a_body_below_the_horizon_leaves_nothing_and_says_so(track):
    outcome = track(START="2025-06-26T01:00:00Z", END=None)
    assert outcome.rows() == []
    assert "the Sun stands at -2" in outcome.log
    assert "No places" in outcome.log


def test_rows_beyond_the_limit_are_refused(track):
    with pytest.raises(Exception, match="more than MAX_ROWS"):
        track(STEP=1, MAX_ROWS=10)


def test_cancelling_says_so(track):
    outcome = track(STEP=0.01, cancel_at=10)
    assert "Cancelled" in outcome.log
