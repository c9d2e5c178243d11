"""`alignments` in QGIS: declaration, stretches held against a minute-by-minute scan with Skyfield alone, nights, conditions, UNMET."""

from datetime import date, datetime, timedelta, timezone

import numpy as np
import pytest
import skyfield_places
from qgis.core import QgsGeometry, QgsPoint, QgsProcessingParameterDefinition, QgsProperty, QgsVectorLayer, QgsWkbTypes
from qgis.PyQt.QtCore import QDate, QVariant

from skyalidade.names import ALIGNMENTS_FIELDS, BODIES, FIELDS, MOON_RULES, PAIRINGS, UNMET_FIELDS

CAMERA = (-33.0, 36.0)
MINUTE_S = 60.0
NO_AIR = {"PRESSURE": 0}  # Skyfield's places are compared without refraction


def point(lon, lat, z=0.0):
    return QgsGeometry(QgsPoint(lon, lat, z))


def seconds(value):
    return value.toUTC().toMSecsSinceEpoch() / 1000.0


def day(value):
    return date(value.year(), value.month(), value.day())


@pytest.fixture
def find(run, layer):
    """Alignments of one camera with one subject about a kilometre away at a bearing."""

    def outcome(bearing=170.0, camera=CAMERA, **parameters):
        north, east = 0.009 * np.cos(np.radians(bearing)), 0.009 * np.sin(np.radians(bearing))
        subject = (camera[0] + east / np.cos(np.radians(camera[1])), camera[1] + north)
        nights = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-05"}
        layers = {"CAMERAS": layer([(point(*camera),)]), "SUBJECTS": layer([(point(*subject),)])}
        return run("alignments", {**layers, **nights, **parameters})

    return outcome


# declaration


def test_parameters_in_order(algorithm):
    alignments = algorithm("alignments")
    definitions = alignments.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("CAMERAS", "SUBJECTS", "DEM", "DEM_BAND", "BODIES", "STAR", "GALACTIC_LON", "FIRST_NIGHT", "LAST_NIGHT", "AZ_TOLERANCE"),
        *("ALT_MIN", "ALT_MAX", "GAP_MIN", "GAP_MAX", "USE_SKYLINE", "TILT_MIN", "TILT_MAX", "APEX_MIN", "APEX_MAX", "CORE_ALT_MIN"),
        *("MOON", "MOON_LIT_MAX", "SUN_LIMIT", "SUN_MIN", "LIT_MIN", "LIT_MAX"),
        *("CAMERA_NAME", "SUBJECT_NAME", "CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO"),
        *("PAIRING", "PAIR_FIELD", "PAIR_FIELD_SUBJECT", "MAX_DISTANCE", "TERRAIN_RADIUS", "SKIP_NEAR", "DEM_ACCURACY", "KEEP_FIELDS"),
        *("TIME_ZONE", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS", "OUTPUT", "UNMET"),
    ]


def test_enums_are_static_texts(algorithm):
    alignments = algorithm("alignments")
    enums = {name: alignments.parameterDefinition(name) for name in ("BODIES", "MOON", "PAIRING")}
    assert all(enum.usesStaticStrings() for enum in enums.values())
    assert {name: tuple(enum.options()) for name, enum in enums.items()} == {
        "BODIES": tuple(BODIES),
        "MOON": tuple(MOON_RULES),
        "PAIRING": tuple(PAIRINGS),
    }
    assert {name: enum.defaultValue() for name, enum in enums.items()} == {"BODIES": ["core"], "MOON": "any", "PAIRING": "all"}


def test_nothing_but_two_layers_must_be_given(algorithm):
    alignments = algorithm("alignments")
    definitions = alignments.parameterDefinitions()
    optional = QgsProcessingParameterDefinition.Flag.FlagOptional
    assert [d.name() for d in definitions if not d.flags() & optional and d.defaultValue() is None] == ["CAMERAS", "SUBJECTS", "OUTPUT"]


def test_unmet_is_not_made_by_default(algorithm):
    alignments = algorithm("alignments")
    assert not alignments.parameterDefinition("UNMET").createByDefault()


def test_every_label_and_help_is_there(algorithm):
    for name in ("alignments", "sightlines", "sky_positions"):
        made = algorithm(name)
        labels = [definition.description() for definition in made.parameterDefinitions()]
        assert all(labels)
        assert len(set(labels)) == len(labels)
        assert len(made.shortHelpString()) > 500
        assert made.shortDescription()
        assert made.displayName()
        assert made.group()


# what comes out


def test_fields_and_their_types(find):
    layer = find(UNMET="memory:").layers["OUTPUT"]
    assert tuple(layer.fields().names()) == ALIGNMENTS_FIELDS
    types = {"text": "QString", "int": "qlonglong", "real": "double", "date": "QDate", "datetime": "QDateTime"}
    assert [QVariant.typeToName(field.type()) for field in layer.fields()] == [types[FIELDS[name].kind] for name in ALIGNMENTS_FIELDS]
    assert layer.wkbType() == QgsWkbTypes.Type.MultiLineString


def test_two_layers_and_nothing_else(run, layer):
    out = run("alignments", {"CAMERAS": layer([(point(*CAMERA),)]), "SUBJECTS": layer([(point(-33.0, 35.99),)])})
    assert "(pairs: 1, bodies: 1, nights: 30)" in out.feedback.said[-1]


def test_blank_nights_are_thirty_from_today_at_the_site(find):
    """The Sun stands in the south-east once a day all year."""

    def today():
        return datetime.now(tz=timezone(timedelta(hours=-2))).date()  # 33 W keeps UTC-02:00 at sea

    before = today()
    nights = sorted(day(row["night"]) for row in find(135.0, BODIES=["sun"], FIRST_NIGHT=None, LAST_NIGHT=None).rows())
    assert nights[0] in (before, today())
    assert [(night - nights[0]).days for night in nights] == list(range(30))


def scanned(bearing, camera, body, first, last, holds):
    """Stretches in which `holds(offset, altitude, sun)` is true, each to the minute, by Skyfield alone."""
    t = np.arange(first, last, MINUTE_S)
    observer = skyfield_places.Observer(*camera, 0.0, skyfield_places.times(t))
    alt, az, _ = observer.altaz(skyfield_places.target(body))
    sun, _, _ = observer.altaz(skyfield_places.target("sun"))
    true = holds((az - bearing + 180.0) % 360.0 - 180.0, alt, sun)
    edges = np.flatnonzero(np.diff(true.astype(int)))
    return [(t[start + 1], t[end]) for start, end in zip(edges[::2], edges[1::2])]


@pytest.mark.parametrize(
    ("body", "bearing", "parameters", "holds"),
    [
        ("core", 170.0, {}, lambda off, alt, sun: (np.abs(off) <= 3) & (alt >= 10) & (sun <= -18)),
        ("core", 140.0, {"SUN_LIMIT": -12}, lambda off, alt, sun: (np.abs(off) <= 3) & (alt >= 10) & (sun <= -12)),
        (
            "core",
            150.0,
            {"ALT_MAX": 18.0, "AZ_TOLERANCE": 8},
            lambda off, alt, sun: (np.abs(off) <= 8) & (alt >= 10) & (alt <= 18) & (sun <= -18),
        ),
        ("sun", 100.0, {}, lambda off, alt, sun: (np.abs(off) <= 0.5) & (alt >= 0)),
        ("moon", 200.0, {}, lambda off, alt, sun: (np.abs(off) <= 0.5) & (alt >= 0)),
        (
            "moon",
            160.0,
            {"SUN_MIN": -8, "SUN_LIMIT": 0},
            lambda off, alt, sun: (np.abs(off) <= 0.5) & (alt >= 0) & (sun >= -8) & (sun <= 0),
        ),
    ],
    ids=["core", "core in twilight", "low core", "Sun", "Moon", "Moon at dusk"],
)
def test_stretches_against_a_scan_with_skyfield(find, body, bearing, parameters, holds):
    out = find(bearing, BODIES=[body], FIRST_NIGHT="2027-05-08", LAST_NIGHT="2027-06-12", **NO_AIR, **parameters)
    rows = sorted(out.rows(), key=lambda row: seconds(row["t_start"]))
    noon = datetime(2027, 5, 8, 12, tzinfo=timezone.utc).timestamp() + 33 * 240  # mean solar noon at 33 W
    exact = rows[0]["bearing_deg"]
    expected = scanned(exact, CAMERA, body, noon, noon + 36 * 86400, holds)
    assert len(expected) >= 1
    # stretches under two minutes may slip between the minutes of the scan
    found = [(seconds(row["t_start"]), seconds(row["t_end"])) for row in rows]
    long = [stretch for stretch in found if stretch[1] - stretch[0] > 2 * MINUTE_S]
    assert all(any(start <= a and b <= end for start, end in found) for a, b in expected)
    assert all(any(abs(start - a) <= MINUTE_S and abs(end - b) <= MINUTE_S for a, b in expected) for start, end in long)
    assert len(expected) <= len(found)
    # both ends: every condition holds two seconds inside (times are written to the second), one fails two seconds outside
    t = np.array([(start + 2, end - 2, start - 2, end + 2) for start, end in found]).ravel()
    observer = skyfield_places.Observer(*CAMERA, 0.0, skyfield_places.times(t))
    alt, az, _ = observer.altaz(skyfield_places.target(body))
    sun, _, _ = observer.altaz(skyfield_places.target("sun"))
    inside = holds((az - exact + 180.0) % 360.0 - 180.0, alt, sun).reshape(-1, 4)
    assert inside[:, :2].all()
    assert not inside[:, 2:].any()


def test_what_a_row_tells_by_skyfield(find):
    rows = find(150.0, BODIES=["core", "moon"], LAST_NIGHT="2027-07-01", **NO_AIR).rows()
    assert {row["body"] for row in rows} == {"core", "moon"}
    for row in rows:
        t = seconds(row["t_utc"])
        observer = skyfield_places.Observer(*CAMERA, 0.0, skyfield_places.times(np.array([t])))
        alt, az, _ = observer.altaz(skyfield_places.target(row["body"]))
        second = 20.0 / 3600  # a sky turns 15" in the second to which the moment is rounded
        assert row["alt_deg"] == pytest.approx(float(np.squeeze(alt)), abs=second)
        assert row["az_deg"] == pytest.approx(float(np.squeeze(az)), abs=2 * second)
        for ours, body in (("sun_deg", "sun"), ("moon_deg", "moon"), ("core_alt", "core")):
            theirs, _, _ = observer.altaz(skyfield_places.target(body))
            assert row[ours] == pytest.approx(float(np.squeeze(theirs)), abs=second)
        assert row["d_az_deg"] == pytest.approx(row["az_deg"] - row["bearing_deg"], abs=1e-9)
        assert row["d_alt_deg"] == pytest.approx(row["alt_deg"] - row["top_alt_deg"], abs=1e-9)
        assert (row["semi_deg"] in (None, QVariant())) == (row["body"] == "core")
        assert row["heights"] == "level"
        assert row["dist_m"] == pytest.approx(1000.0, abs=10.0)


def test_minutes_and_order_of_times(find):
    for row in find(150.0).rows():
        assert seconds(row["t_start"]) <= seconds(row["t_utc"]) <= seconds(row["t_end"])
        assert row["minutes"] * 60.0 == pytest.approx(seconds(row["t_end"]) - seconds(row["t_start"]), abs=1.0)
        assert row["t_utc"].time().msec() == 0


def test_local_times_in_a_named_zone(find):
    (row, *_) = find(150.0, TIME_ZONE="Atlantic/Azores").rows()
    local = datetime.fromisoformat(row["t_local"][:19] + row["t_local"][20:])
    assert row["tz"] == "Atlantic/Azores"
    assert local.timestamp() == seconds(row["t_utc"])
    assert local.utcoffset() == timedelta(0)  # summer time there: UTC (IANA time zone database)


def test_the_line_is_the_sightline(run, layer, find):
    out = find(150.0)
    (drawn,) = {geometry.asWkt(6) for geometry in out.geometries()}
    assert drawn.startswith("MultiLineString ((-33 36, ")
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:4326"


def test_names_and_ids(run, layer):
    cameras = layer([(point(*CAMERA), "Gannet Point"), (point(-33.0, 36.001), None)], fields=["title:string"])
    subjects = layer([(point(-33.0, 35.99),)])
    nights = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-01"}
    out = run("alignments", {"CAMERAS": cameras, "SUBJECTS": subjects, "CAMERA_NAME": "title", **nights})
    assert {(row["camera"], row["camera_id"], row["subject"], row["subject_id"]) for row in out.rows()} == {
        ("Gannet Point", 1, "subject 1", 1),
        ("camera 2", 2, "subject 1", 1),
    }


# nights


def test_a_sunrise_belongs_to_the_evening_before(find):
    (row,) = find(70.0, BODIES=["sun"], AZ_TOLERANCE=2, FIRST_NIGHT="2027-06-01", LAST_NIGHT="2027-06-01").rows()
    assert row["t_local"].startswith("2027-06-02 0")
    assert row["night"] == QDate(2027, 6, 1)


@pytest.mark.parametrize(
    "first", ["2027-06-01", QDate(2027, 6, 1), date(2027, 6, 1), "2027-06-01T22:00:00"], ids=["text", "Qt", "Python", "time"]
)
def test_nights_as_they_come(find, first):
    nights = {day(row["night"]) for row in find(150.0, FIRST_NIGHT=first, LAST_NIGHT="2027-06-03").rows()}
    assert nights == {date(2027, 6, 1), date(2027, 6, 2), date(2027, 6, 3)}


def test_last_night_blank_is_thirty_in_all(find):
    nights = {day(row["night"]) for row in find(170.0, LAST_NIGHT=None).rows()}
    assert (min(nights), max(nights)) == (date(2027, 6, 1), date(2027, 6, 30))


# conditions


def test_moon_down_and_thin(find):
    kept = {}
    for rule in MOON_RULES:
        out = find(170.0, MOON=rule, FIRST_NIGHT="2027-06-01", LAST_NIGHT="2027-06-30")
        kept[rule] = {seconds(row["t_utc"]): row for row in out.rows()}
    assert all(row["moon_deg"] < -0.5 for row in kept["down"].values())
    assert all(row["moon_deg"] < -0.5 or row["moon_lit"] < 0.25 for row in kept["down_or_thin"].values())
    assert 0 < len(kept["down"]) < len(kept["any"])
    assert any(row["moon_deg"] > 0 for row in kept["any"].values())


def test_lit_part_of_the_moon_as_body(find):
    rows = find(150.0, BODIES=["moon"], LIT_MIN=0.9, LAST_NIGHT="2027-07-15").rows()
    assert rows
    assert all(row["moon_lit"] >= 0.9 for row in rows)
    assert len(rows) < len(find(150.0, BODIES=["moon"], LAST_NIGHT="2027-07-15").rows())


def test_gap_above_the_subject_s_top(find):
    heights = {"SUBJECT_HEIGHT": 100}  # at a kilometre: 5.6°
    rows = find(150.0, GAP_MIN=12, **heights).rows()
    assert rows
    assert all(row["d_alt_deg"] >= 12 - 1e-6 for row in rows)
    assert {row["place"] for row in rows} == {"above"}
    assert find(150.0, GAP_MIN=16, **heights).rows() == []


def test_tilt(find):
    free = find(150.0, AZ_TOLERANCE=20).rows()
    flat = find(150.0, AZ_TOLERANCE=20, TILT_MAX=30).rows()
    assert 0 < sum(row["minutes"] for row in flat) < sum(row["minutes"] for row in free)
    assert all(row["tilt_deg"] <= 30 + 1e-6 for row in flat)


def test_how_thin_a_moon_is_thin(find):
    nights = {"MOON": "down_or_thin", "FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-30"}
    up = {
        limit: [row["moon_lit"] for row in find(170.0, MOON_LIT_MAX=limit, **nights).rows() if row["moon_deg"] > 0] for limit in (0.1, 0.9)
    }
    assert all(lit < 0.1 for lit in up[0.1])
    assert any(lit > 0.1 for lit in up[0.9])


def test_most_lit_part_of_the_moon_as_body(find):
    rows = find(150.0, BODIES=["moon"], LIT_MAX=0.5, LAST_NIGHT="2027-07-15").rows()
    assert rows
    assert all(row["moon_lit"] <= 0.5 + 1e-6 for row in rows)


@pytest.mark.parametrize(("limit", "value"), [("APEX_MIN", 55), ("APEX_MAX", 55)])
def test_height_of_the_arch_s_top(find, limit, value):
    rows = find(160.0, AZ_TOLERANCE=20, **{limit: value}).rows()
    assert rows
    assert all((row["apex_deg"] - value) * (1 if limit == "APEX_MIN" else -1) >= -1e-6 for row in rows)
    assert sum(row["minutes"] for row in rows) < sum(row["minutes"] for row in find(160.0, AZ_TOLERANCE=20).rows())


def test_the_core_s_height_counts_for_the_arch(find):
    low, high = (
        find(80.0, BODIES=["arch"], SUN_LIMIT=-12, AZ_TOLERANCE=15, CORE_ALT_MIN=least, FIRST_NIGHT="2027-05-01").rows()
        for least in (0, 16)
    )
    assert min(row["core_alt"] for row in low) < 16
    assert high
    assert all(row["core_alt"] >= 16 - 1e-6 for row in high)


def test_cold_air_lifts_more(find):
    """Refraction goes with 283 / (273 + t): at 10° altitude 5.4' grow by 0.9' from 10 to -30 degrees."""
    mild, cold = (
        find(137.5, AZ_TOLERANCE=20, ALT_MAX=10.2, ALT_MIN=10, TEMPERATURE=celsius, FIRST_NIGHT="2027-06-05").rows()[0]["t_start"]
        for celsius in (10, -30)
    )
    assert 2 <= mild.toSecsSinceEpoch() - cold.toSecsSinceEpoch() <= 30  # the core climbs about 0.15' a second there


def test_height_of_a_subject_from_its_field(run, layer):
    subjects = layer([(point(-33.0, 35.991), 100.0), (point(-33.0, 35.991), 10.0)], fields=["tall:double"])
    parameters = {"CAMERAS": layer([(point(*CAMERA),)]), "SUBJECTS": subjects, "SUBJECT_HEIGHT": QgsProperty.fromField("tall")}
    out = run("alignments", {**parameters, "FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-01"})
    tops = {row["subject_id"]: row["top_alt_deg"] for row in out.rows()}
    assert tops[1] == pytest.approx(np.degrees(np.arctan2(98.5, 998.5)), abs=0.02)
    assert tops[2] == pytest.approx(np.degrees(np.arctan2(8.5, 998.5)), abs=0.02)


def test_bodies_all_at_once(find):
    parameters = {"BODIES": list(BODIES), "STAR": "279.235,38.784", "GALACTIC_LON": 30, "AZ_TOLERANCE": 30, "SUN_LIMIT": -10}
    rows = find(90.0, LAST_NIGHT="2027-07-05", UNMET="memory:", **parameters)
    assert {row["body"] for row in rows.rows()} | {row["body"] for row in rows.rows("UNMET")} == set(BODIES)
    arch = [row for row in rows.rows() if row["body"] == "arch"]
    assert arch
    assert all(row["apex_deg"] <= 60 + 1e-6 and row["core_alt"] >= -1e-6 for row in arch)


def test_the_sun_s_caution_is_in_the_log(find):
    assert "ISO 12312-2" in find(135.0, BODIES=["core", "sun"]).log
    assert "ISO 12312-2" not in find(135.0).log


# nothing found


def test_unmet_tells_why(find):
    out = find(0.0, UNMET="memory:")
    assert out.rows() == []
    assert tuple(out.layers["UNMET"].fields().names()) == UNMET_FIELDS
    (row,) = out.rows("UNMET")
    assert "earing 0.0° is never reached: the core stands between " in row["reason"]
    # at 36 N the core climbs over 10° between azimuths symmetric about south
    assert row["az_from"] + row["az_to"] == pytest.approx(360.0, abs=0.1)
    assert out.geometries("UNMET")[0].asWkt() == "Point (-33 36)"
    assert "No alignments (pairs: 1, bodies: 1, nights: 5): UNMET tells why for each pair." in out.log


def test_pairs_with_a_result_are_not_among_the_unmet(find):
    assert find(170.0, UNMET="memory:").rows("UNMET") == []


def test_without_unmet_the_log_tells_why_and_of_it(find):
    out = find(0.0)
    assert "UNMET" not in out.layers
    reason, end = out.feedback.said[-2:]
    assert reason.startswith("1 of 1 pairs and bodies without an alignment, such as camera 1 to subject 1: Bearing ")
    assert "is never reached: the core stands between 1" in reason
    assert end == "No alignments (pairs: 1, bodies: 1, nights: 5): ask for the output UNMET to see why for each pair."


def test_many_reasons_are_told_by_their_kinds(run, layer):
    """Subjects all around but in the south: the core's azimuths are not theirs; by day it is not dark in the south."""
    around = [(-33.0 + 0.01 * np.sin(turn), 36.0 + 0.01 * np.cos(turn)) for turn in np.radians([300, 330, 0, 30, 60, 180, 181])]
    parameters = {"CAMERAS": layer([(point(*CAMERA),)]), "SUBJECTS": layer([(point(*place),) for place in around])}
    out = run("alignments", {**parameters, "FIRST_NIGHT": "2027-12-20", "LAST_NIGHT": "2027-12-21"})
    told = [line for line in out.feedback.said if "without an alignment" in line]
    assert [line.split(", such as")[0] for line in told] == [f"{n} of 7 pairs and bodies without an alignment" for n in (5, 2)]
    assert "camera 1 to subject 1: Bearing 3" in told[0]
    assert "camera 1 to subject 6: The core passes bearing 180.0°, but never with the Sun below -18°." in told[1]


def test_reasons_are_for_runs_without_any_result(find):
    out = find(240.0, BODIES=["core", "sun"], UNMET="memory:")  # the Sun stands there, the core never does
    assert {row["body"] for row in out.rows()} == {"sun"}
    assert {row["body"] for row in out.rows("UNMET")} == {"core"}
    assert "without an alignment" not in out.log


# the command line


@pytest.mark.parametrize("computer", ["UTC", "Asia/Kolkata", "America/Los_Angeles"])
def test_qgis_process_writes_utc_whatever_the_computer_s_zone(qgis_process, tmp_path, computer):
    for stem, lat in (("cameras", 36.0), ("subjects", 35.99)):
        (tmp_path / f"{stem}.geojson").write_text(
            '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "one"},'
            f' "geometry": {{"type": "Point", "coordinates": [-33, {lat}]}}}}]}}',
            encoding="utf-8",
        )
    output = tmp_path / "alignments.gpkg"
    given = [f"CAMERAS={tmp_path}/cameras.geojson", f"SUBJECTS={tmp_path}/subjects.geojson", "BODIES=core", "BODIES=sun"]
    nights = ["FIRST_NIGHT=2027-06-05", "LAST_NIGHT=2027-06-05", "TIME_ZONE=UTC", "SUN_LIMIT=-12"]
    done = qgis_process("alignments", *given, *nights, f"OUTPUT={output}", environment_too={"TZ": computer})
    assert done.returncode == 0, done.stderr
    layer = QgsVectorLayer(str(output), "alignments", "ogr")
    rows = [dict(zip(layer.fields().names(), feature.attributes())) for feature in layer.getFeatures()]
    assert {row["body"] for row in rows} == {"core", "sun"}
    for row in rows:
        assert row["t_utc"].toString("yyyy-MM-dd HH:mm:ss") + " +00:00" == row["t_local"]  # the wall clock that the file keeps is UTC
