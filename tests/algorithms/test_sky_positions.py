"""`sky_positions` in QGIS: declaration, times as people give them, rows held against Skyfield and against values of other libraries."""

import os
import time
from datetime import datetime, timedelta, timezone

import numpy as np
import published
import pytest
import skyfield_places
from qgis.core import QgsProcessingParameterDefinition, QgsVectorLayer
from qgis.PyQt.QtCore import QDate, QDateTime, Qt, QTime, QVariant

from skyalidade.names import BODIES, FIELDS, SKY_POSITIONS_FIELDS

SITE = "PointZ(-33 36 0)"
UTC_START = "2027-06-06T00:00:00Z"
TOL_DEG = 0.15 / 3600  # the tables' own 0.1" and a margin for the core's deflection of light
PRINTED_DEG = 0.006  # the published values are printed to 0.01°
TILT_DEG = 0.005 + 2 * 0.0057  # they trace the plane point by point: aberration shifts its points by up to 20.5"


def utc(row, name="t_utc"):
    return row[name].toUTC().toString("yyyy-MM-dd HH:mm:ss")


def times(outcome):
    return [utc(row) for row in outcome.rows()]


# declaration


def test_parameters_in_order(algorithm):
    sky_positions = algorithm("sky_positions")
    definitions = sky_positions.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("SITES", "DEM", "DEM_BAND", "BODIES", "STAR", "GALACTIC_LON", "START", "END", "STEP", "TIME_ZONE", "SITE_NAME"),
        *("CAMERA_HEIGHT", "TERRAIN_RADIUS", "SKIP_NEAR", "KEEP_FIELDS", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS", "OUTPUT"),
    ]
    advanced = [d.name() for d in definitions if d.flags() & QgsProcessingParameterDefinition.Flag.FlagAdvanced]
    assert advanced == [
        *("DEM_BAND", "STAR", "GALACTIC_LON", "CAMERA_HEIGHT", "TERRAIN_RADIUS", "SKIP_NEAR"),
        *("REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS"),
    ]


def test_bodies_are_static_texts(algorithm):
    sky_positions = algorithm("sky_positions")
    bodies = sky_positions.parameterDefinition("BODIES")
    assert bodies.usesStaticStrings()
    assert bodies.allowMultiple()
    assert bodies.options() == list(BODIES)


def test_its_help_holds_the_line_about_the_sun(algorithm):
    assert "ISO 12312-2" in algorithm("sky_positions").shortHelpString()


# what comes out


def test_fields_and_their_types(run, layer):
    fields = run("sky_positions", {"SITES": layer([(SITE,)]), "START": UTC_START}).layers["OUTPUT"].fields()
    assert tuple(fields.names()) == SKY_POSITIONS_FIELDS
    types = {"text": "QString", "int": "qlonglong", "real": "double", "datetime": "QDateTime"}
    assert [QVariant.typeToName(field.type()) for field in fields] == [types[FIELDS[name].kind] for name in SKY_POSITIONS_FIELDS]


@pytest.mark.parametrize("line", published.rows("band_2027_36N_33W"), ids=lambda line: line["utc"])
def test_against_astropy_s_published_night(run, layer, line):
    (row,) = run("sky_positions", {"SITES": layer([(SITE,)]), "START": line["utc"], "PRESSURE": 0}).rows()
    printed = {"core_alt_deg": "core_alt", "core_az_deg": "az_deg", "apex_deg": "apex_deg", "tilt_deg": "tilt_deg", "sun_deg": "sun_deg"}
    for name, ours in {**printed, "moon_deg": "moon_deg"}.items():
        assert row[ours] == pytest.approx(float(line[name]), abs=TILT_DEG if ours == "tilt_deg" else PRINTED_DEG), name
    assert row["apex_lon"] == pytest.approx(float(line["apex_lon"]), abs=0.09)  # printed to 0.1°, reproduced to 0.03°


@pytest.mark.parametrize(
    ("lon", "lat", "height"),
    [(-33.0, 36.0, 0.0), (171.5, -43.2, 1200.0), (180.0, 0.0, 0.0), (-180.0, 65.0, 0.0), (20.0, 90.0, 0.0), (-60.0, -90.0, 2800.0)],
    ids=["north", "south, 1200 m", "antimeridian", "antimeridian west", "north pole", "south pole"],
)
def test_against_skyfield(run, layer, lon, lat, height):
    out = run(
        "sky_positions",
        {
            "SITES": layer([(f"PointZ({lon} {lat} {height})",)]),
            "BODIES": ["core", "sun", "moon"],
            "START": "2031-03-04T05:06:07Z",
            "END": "2031-03-05T05:06:07Z",
            "STEP": 360,
            "PRESSURE": 0,
        },
    )
    rows = out.rows()
    assert len(rows) == 3 * 5
    observer = {}
    for row in rows:
        moment = utc(row)
        t = datetime.fromisoformat(moment + "+00:00").timestamp()
        place = observer.setdefault(moment, skyfield_places.Observer(lon, lat, height, skyfield_places.times(np.array([t]))))
        alt, az, _ = place.altaz(skyfield_places.target(row["body"]))
        assert row["alt_deg"] == pytest.approx(float(np.squeeze(alt)), abs=TOL_DEG)
        off = (row["az_deg"] - float(np.squeeze(az)) + 180.0) % 360.0 - 180.0
        assert abs(off) * np.cos(np.radians(row["alt_deg"])) < TOL_DEG


def test_air_lifts_by_pressure_and_temperature(run, layer):
    """Refraction goes with pressure and with 283 / (273 + t), in standard units (Meeus, Astronomical Algorithms, chapter 16)."""
    sites = {"SITES": layer([(SITE,)]), "START": UTC_START}
    none, usual, thin, cold = (
        run("sky_positions", {**sites, **air}).rows()[0]["alt_deg"]
        for air in ({"PRESSURE": 0}, {}, {"PRESSURE": 505}, {"TEMPERATURE": -40})
    )
    assert (thin - none) / (usual - none) == pytest.approx(505 / 1010, rel=1e-6)  # at sea level
    assert (cold - none) / (usual - none) == pytest.approx(283 / 233, rel=1e-6)
    assert (usual - none) * 60 == pytest.approx(1.02 / np.tan(np.radians(12.138 + 10.3 / 17.248)), abs=0.01)  # arcmin, Saemundsson 1986


def test_names_ids_and_order(run, layer):
    sites = layer([(SITE, "Gannet Point"), ("PointZ(-32 36 0)", None)], fields=["title:string"])
    rows = run("sky_positions", {"SITES": sites, "SITE_NAME": "title", "BODIES": ["sun", "moon"], "START": UTC_START}).rows()
    assert [(row["site"], row["site_id"], row["body"]) for row in rows] == [
        *(("Gannet Point", 1, "sun"), ("Gannet Point", 1, "moon")),
        *(("site 2", 2, "sun"), ("site 2", 2, "moon")),
    ]


def test_what_is_not_computed_yet_is_null(run, layer):
    (row,) = run("sky_positions", {"SITES": layer([(SITE,)]), "START": UTC_START}).rows()
    assert not row["ground_deg"]
    assert not row["semi_deg"]  # the core has no disc


def test_star_and_plane(run, layer):
    out = run(
        "sky_positions",
        {
            "SITES": layer([(SITE,)]),
            "BODIES": ["core", "star", "galactic"],
            "STAR": "266.40499, -28.93617",
            "GALACTIC_LON": 0,
            "START": UTC_START,
        },
    )
    core, star, plane = out.rows()
    # the core as Hipparcos gives it in ICRS (ESA SP-1200, vol. 1, 1.5.3), printed to 0.00001°
    assert star["alt_deg"] == pytest.approx(core["alt_deg"], abs=2e-5)
    assert plane["az_deg"] == pytest.approx(core["az_deg"], abs=1e-9)


def test_the_sun_s_caution_is_in_the_log(run, layer):
    sites = layer([(SITE,)])
    assert "ISO 12312-2" in run("sky_positions", {"SITES": sites, "BODIES": ["sun"], "START": UTC_START}).log
    assert "ISO 12312-2" not in run("sky_positions", {"SITES": sites, "BODIES": ["moon"], "START": UTC_START}).log


def test_closing_line_counts(run, layer):
    out = run("sky_positions", {"SITES": layer([(SITE,)]), "START": UTC_START, "END": "2027-06-06T01:00:00Z", "STEP": 15})
    assert out.feedback.said[-1] == "5 positions (sites: 1, bodies: 1, times: 5)."


# times


def test_steps_from_first_to_last_both_included(run, layer):
    out = run("sky_positions", {"SITES": layer([(SITE,)]), "START": UTC_START, "END": "2027-06-06T00:25:00Z", "STEP": 10})
    assert times(out) == ["2027-06-06 00:00:00", "2027-06-06 00:10:00", "2027-06-06 00:20:00"]


@pytest.mark.parametrize(
    ("start", "expected"),
    [
        ("2027-06-06T01:30:00Z", "2027-06-06 01:30:00"),
        ("2027-06-06 01:30:00 +02:00", "2027-06-05 23:30:00"),
        ("2027-06-06T01:30:00-0330", "2027-06-06 05:00:00"),
        ("2027-06-06 01:30", "2027-06-06 03:30:00"),  # the wall clock at 33 W, UTC-02:00
        (datetime(2027, 6, 6, 1, 30, tzinfo=timezone(timedelta(hours=2))), "2027-06-05 23:30:00"),
        (QDateTime(QDate(2027, 6, 6), QTime(1, 30), Qt.TimeSpec.UTC), "2027-06-06 01:30:00"),
        (QDateTime(QDate(2027, 6, 6), QTime(1, 30), Qt.TimeSpec.OffsetFromUTC, 7200), "2027-06-05 23:30:00"),
        (QDateTime(QDate(2027, 6, 6), QTime(1, 30)), "2027-06-06 03:30:00"),  # as a dialog gives it: a wall clock
    ],
    ids=["Z", "offset", "offset without colon", "wall clock", "Python", "Qt in UTC", "Qt with offset", "Qt from a dialog"],
)
def test_times_as_they_come(run, layer, start, expected):
    assert times(run("sky_positions", {"SITES": layer([(SITE,)]), "START": start})) == [expected]


@pytest.mark.parametrize("computer", ["Asia/Kolkata", "America/Los_Angeles"])
def test_the_computer_s_zone_plays_no_part(run, layer, computer, monkeypatch):
    monkeypatch.setenv("TZ", computer)
    time.tzset()
    try:
        wall = QDateTime(QDate(2027, 6, 6), QTime(1, 30))
        out = run("sky_positions", {"SITES": layer([(SITE,)]), "START": wall, "END": "2027-06-06T03:30Z"})
        (row,) = out.rows()
    finally:
        monkeypatch.undo()
        time.tzset()
    assert utc(row) == "2027-06-06 03:30:00"
    assert row["t_local"] == "2027-06-06 01:30:00 -02:00"


def test_wall_clock_of_each_site_s_own_zone(run, layer):
    out = run("sky_positions", {"SITES": layer([("PointZ(-33 36 0)",), ("PointZ(151 -33 0)",)]), "START": "2027-06-06 22:00"})
    assert [(row["site_id"], utc(row), row["tz"]) for row in out.rows()] == [
        (1, "2027-06-07 00:00:00", "UTC-02:00"),
        (2, "2027-06-06 12:00:00", "Australia/Sydney"),
    ]
    assert "Time zone of each place, as TIME_ZONE is blank: 1 in Australia/Sydney, 1 in UTC-02:00." in out.log


def test_named_zone(run, layer):
    out = run("sky_positions", {"SITES": layer([(SITE,)]), "START": "2027-06-06 22:00", "TIME_ZONE": "Atlantic/Azores"})
    (row,) = out.rows()
    # the Azores keep UTC-1, in summer UTC (IANA time zone database)
    assert (utc(row), row["t_local"], row["tz"]) == ("2027-06-06 22:00:00", "2027-06-06 22:00:00 +00:00", "Atlantic/Azores")
    assert "Time zone" not in out.log


def test_hour_that_occurs_twice_is_told(run, layer):
    # Berlin, 2027-10-31: 3 h summer time is followed by 2 h (IANA time zone database)
    out = run("sky_positions", {"SITES": layer([("PointZ(13 52 0)",)]), "START": "2027-10-31 02:30", "TIME_ZONE": "Europe/Berlin"})
    assert times(out) == ["2027-10-31 00:30:00"]
    assert "twice" in out.log


def test_hour_that_daylight_saving_skips_is_refused(refusal, layer):
    text = refusal("sky_positions", {"SITES": layer([("PointZ(13 52 0)",)]), "START": "2027-03-28 02:30", "TIME_ZONE": "Europe/Berlin"})
    assert "2027-03-28 02:30:00 does not exist in Europe/Berlin" in text


# CRS and layers


def test_output_in_the_crs_of_the_sites(run, layer):
    sites = layer([("PointZ(499000 4100000 12)",)], crs="EPSG:32625")
    out = run("sky_positions", {"SITES": sites, "START": UTC_START})
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:32625"
    assert out.geometries()[0].asWkt() == "Point (499000 4100000)"


def test_multipoint_is_taken_apart(run, layer):
    sites = layer([("MultiPointZ((-33 36 0), (-32 36 0))",)], kind="MultiPointZ")
    out = run("sky_positions", {"SITES": sites, "START": UTC_START})
    assert [geometry.asWkt() for geometry in out.geometries()] == ["Point (-33 36)", "Point (-32 36)"]
    assert [row["site_id"] for row in out.rows()] == [1, 1]


def test_geojson_with_heights_gives_epsg_4326(run, tmp_path):
    path = tmp_path / "sites.geojson"
    path.write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {},'
        ' "geometry": {"type": "Point", "coordinates": [-33, 36, 250]}}]}',
        encoding="utf-8",
    )
    sites = QgsVectorLayer(str(path), "sites", "ogr")
    assert sites.crs().authid() == "EPSG:4979"  # else this test tells nothing
    out = run("sky_positions", {"SITES": sites, "START": UTC_START})
    assert out.layers["OUTPUT"].crs().authid() == "EPSG:4326"
    assert out.geometries()[0].asWkt() == "Point (-33 36)"


def test_longitudes_from_0_to_360(run, layer):
    west, east = (run("sky_positions", {"SITES": layer([(f"PointZ({lon} 36 0)",)]), "START": UTC_START}).rows()[0] for lon in (-33, 327))
    assert east["az_deg"] == pytest.approx(west["az_deg"], abs=1e-9)
    assert east["tz"] == "UTC-02:00"


# the command line


def test_qgis_process_writes_a_geopackage(qgis_process, tmp_path):
    (tmp_path / "sites.geojson").write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "Gannet Point"},'
        ' "geometry": {"type": "Point", "coordinates": [-33, 36]}}]}',
        encoding="utf-8",
    )
    output = tmp_path / "sky.gpkg"
    done = qgis_process(
        "sky_positions",
        f"SITES={tmp_path}/sites.geojson",
        "SITE_NAME=name",
        "BODIES=core",
        "BODIES=moon",
        "START=2027-06-06T01:30:00+02:00",
        f"OUTPUT={output}",
    )
    assert done.returncode == 0, done.stderr
    assert "2 positions (sites: 1, bodies: 2, times: 1)." in done.stdout
    written = QgsVectorLayer(str(output), "sky", "ogr")
    rows = [dict(zip(written.fields().names(), feature.attributes())) for feature in written.getFeatures()]
    assert [(row["site"], row["body"], row["t_local"]) for row in rows] == [
        ("Gannet Point", "core", "2027-06-05 21:30:00 -02:00"),
        ("Gannet Point", "moon", "2027-06-05 21:30:00 -02:00"),
    ]
    assert os.path.getsize(output) > 0
