"""`night_windows` in QGIS: declaration, the three outputs, published nights, towns, refusals, cancel and the command line."""

import numpy as np
import published
import pytest
from qgis.core import QgsProcessingException, QgsProcessingParameterDefinition, QgsVectorLayer
from qgis.PyQt.QtCore import QDate, QVariant

from skyalidade.names import BODIES, FIELDS, MONTHS_FIELDS, NIGHT_WINDOWS_FIELDS, WINDOWS_FIELDS

GREENWICH, OCEAN, SYDNEY = "PointZ(0 40 0)", "PointZ(-33 36 0)", "PointZ(149 -33 0)"
NULL = (None, QVariant())
JUNE = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-30"}
ALL = {"WINDOWS": "memory:", "MONTHS": "memory:"}
TYPES = {"text": "QString", "int": "qlonglong", "real": "double", "date": "QDate", "datetime": "QDateTime"}


def utc(row, name):
    return row[name].toUTC().toString("yyyy-MM-dd HH:mm:ss")


# declaration


def test_parameters_in_order(algorithm):
    night_windows = algorithm("night_windows")
    definitions = night_windows.parameterDefinitions()
    assert [definition.name() for definition in definitions] == [
        *("SITES", "DEM", "DEM_BAND", "BODY", "STAR", "GALACTIC_LON", "FIRST_NIGHT", "LAST_NIGHT", "ALT_MIN", "USE_SKYLINE"),
        *("TILT_MIN", "TILT_MAX", "APEX_MIN", "APEX_MAX", "CORE_ALT_MIN", "MOON", "MOON_LIT_MAX", "SUN_LIMIT"),
        *("TOWNS", "TOWN_POPULATION", "TOWN_NAME", "SITE_NAME", "CAMERA_HEIGHT", "TERRAIN_RADIUS", "SKIP_NEAR", "KEEP_FIELDS"),
        *("TIME_ZONE", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS", "OUTPUT", "WINDOWS", "MONTHS"),
    ]
    advanced = [d.name() for d in definitions if d.flags() & QgsProcessingParameterDefinition.Flag.FlagAdvanced]
    assert advanced == [
        *("DEM_BAND", "STAR", "GALACTIC_LON", "TILT_MIN", "TILT_MAX", "APEX_MIN", "APEX_MAX", "CORE_ALT_MIN", "MOON_LIT_MAX"),
        *("CAMERA_HEIGHT", "TERRAIN_RADIUS", "SKIP_NEAR", "REFRACTION_K", "PRESSURE", "TEMPERATURE", "MAX_ROWS"),
    ]


def test_choices_are_static_texts_with_the_customs(algorithm):
    night_windows = algorithm("night_windows")
    body, moon = (night_windows.parameterDefinition(name) for name in ("BODY", "MOON"))
    assert body.usesStaticStrings()
    assert not body.allowMultiple()
    assert body.options() == list(BODIES)
    assert (body.defaultValue(), moon.defaultValue()) == ("core", "down")


def test_only_the_first_output_is_made_unasked(algorithm, run, layer):
    night_windows = algorithm("night_windows")
    assert [sink.createByDefault() for sink in night_windows.destinationParameterDefinitions()] == [True, False, False]
    assert run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE}).layers.keys() == {"OUTPUT"}


def test_its_help_holds_the_cautions(algorithm):
    text = algorithm("night_windows").shortHelpString()
    assert "ISO 12312-2" in text
    assert "not alone" in text


# what comes out


def test_fields_and_their_types(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE, **ALL})
    for name, names in (("OUTPUT", NIGHT_WINDOWS_FIELDS), ("WINDOWS", WINDOWS_FIELDS), ("MONTHS", MONTHS_FIELDS)):
        fields = out.layers[name].fields()
        assert tuple(fields.names()) == names
        assert [QVariant.typeToName(field.type()) for field in fields] == [TYPES[FIELDS[field].kind] for field in names]


def test_a_year_where_the_last_night_is_blank(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,), (SYDNEY,)]), "FIRST_NIGHT": "2027-03-01", "MONTHS": "memory:"})
    rows = out.rows()
    assert len(rows) == 2 * 365
    assert rows[0]["night"] == QDate(2027, 3, 1)
    assert rows[-1]["night"] == QDate(2028, 2, 28)
    assert len(out.rows("MONTHS")) == 2 * 12
    assert "nights with a window (sites: 2, nights: 730)." in out.feedback.said[-1]


def test_rows_stand_at_their_site_in_its_crs(run, layer):
    sites = layer([("PointZ(500000 3984000 10)",), ("PointZ(510000 3984000 10)",)], crs="EPSG:32625")
    out = run("night_windows", {"SITES": sites, **JUNE, **ALL})
    for name in ("OUTPUT", "WINDOWS", "MONTHS"):
        assert out.layers[name].crs().authid() == "EPSG:32625"
        at = {(row["site_id"], geometry.asPoint().x()) for row, geometry in zip(out.rows(name), out.geometries(name))}
        assert at == {(1, 500000.0), (2, 510000.0)}


@pytest.mark.parametrize("line", published.rows("dark_core_2025_40N"), ids=lambda line: line["night"])
def test_against_astropy_s_published_year(run, layer, line):
    sites = {"SITES": layer([(GREENWICH,)]), "MOON": "any", "PRESSURE": 0, "TIME_ZONE": "UTC"}
    (row,) = run("night_windows", {**sites, "FIRST_NIGHT": line["night"], "LAST_NIGHT": line["night"]}).rows()
    if not line["first"]:
        assert row["reason"] == "core is above 10° only by day or in twilight"
        assert row["t_start"] in NULL or row["t_start"].isNull()
        assert row["minutes"] in NULL
        return
    assert row["reason"] in NULL
    for name, printed in (("start_loc", line["first"]), ("end_loc", line["last"])):
        told, (hours, minutes) = row[name], map(int, printed.split(":"))
        off_s = int(told[11:13]) * 3600 + int(told[14:16]) * 60 + int(told[17:19]) - hours * 3600 - minutes * 60
        assert abs(off_s) <= 60  # read to the minute, partly cut off
    assert row["minutes"] == pytest.approx(row["t_start"].secsTo(row["t_end"]) / 60.0, abs=1 / 60)


def test_names_ids_kept_fields_and_clocks(run, layer):
    sites = layer([(OCEAN, "Gannet Point", "Quenmar"), (SYDNEY, None, "Vell")], fields=["title:string", "park:string"])
    out = run("night_windows", {"SITES": sites, "SITE_NAME": "title", "KEEP_FIELDS": ["park"], **JUNE, **ALL})
    for name in ("OUTPUT", "WINDOWS", "MONTHS"):
        assert {(row["site"], row["site_id"], row["park"]) for row in out.rows(name)} == {
            ("Gannet Point", 1, "Quenmar"),
            ("site 2", 2, "Vell"),
        }
    assert {(row["tz"], row["sunset_loc"][-6:]) for row in out.rows()} == {("UTC-02:00", "-02:00"), ("Australia/Sydney", "+10:00")}
    for row in out.rows():
        assert row["sunset_loc"][:10] == row["night"].toString("yyyy-MM-dd")


def test_rows_tell_their_body(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,)]), "BODY": "moon", **JUNE, "WINDOWS": "memory:"})
    assert {row["body"] for name in ("OUTPUT", "WINDOWS") for row in out.rows(name)} == {"moon"}


def test_windows_hold_what_the_night_tells(run, layer):
    out = run("night_windows", {"SITES": layer([("PointZ(0 -75 0)",)]), "SUN_LIMIT": -12, **JUNE, "WINDOWS": "memory:"})
    windows = out.rows("WINDOWS")
    assert len(windows) > len([row for row in out.rows() if row["reason"] in NULL])  # nights that the Moon splits
    for row in out.rows():
        mine = [window for window in windows if window["night"] == row["night"]]
        if row["reason"] in NULL:
            longest = max(mine, key=lambda window: window["minutes"])
            assert {name: longest[name] for name in WINDOWS_FIELDS} == {name: row[name] for name in WINDOWS_FIELDS}
        else:
            assert mine == []


def test_months_sum_up_the_nights(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,)]), "FIRST_NIGHT": "2027-01-01", "LAST_NIGHT": "2027-12-31", **ALL})
    nights, windows = out.rows(), out.rows("WINDOWS")
    usable = [row for row in nights if row["reason"] in NULL]
    for month in out.rows("MONTHS"):
        mine = [row for row in usable if row["night"].toString("yyyy-MM") == month["month"]]
        hours = sum(row["minutes"] for row in windows if row["night"].toString("yyyy-MM") == month["month"]) / 60
        assert month["nights"] == len(mine)
        assert month["hours"] == pytest.approx(hours)
        if mine:
            assert month["best_min"] == max(row["minutes"] for row in mine)
            assert (month["first_night"], month["last_night"]) == (usable[0]["night"], usable[-1]["night"])
    # new moons fall on 4 June, 4 July and 2 August 2027, the day of a total eclipse
    told = {month["month"]: month["new_moon"] for month in out.rows("MONTHS")}
    assert (told["2027-06"], told["2027-07"]) == ("2027-06-05", "2027-07-03, 2027-07-31")


def test_best_is_seen_by_skyfield(run, layer):
    """One row against Skyfield directly: azimuth at the best minute, of the Moon."""
    import skyfield_places

    out = run("night_windows", {"SITES": layer([(OCEAN,)]), "BODY": "moon", "PRESSURE": 0, **JUNE})
    rows = [row for row in out.rows() if row["reason"] in NULL]
    moments = np.array([row["t_utc"].toSecsSinceEpoch() for row in rows], float)
    alt, az, _ = skyfield_places.Observer(-33.0, 36.0, 0.0, skyfield_places.times(moments)).altaz(skyfield_places.target("moon"))
    assert [row["alt_deg"] for row in rows] == pytest.approx(alt, abs=1e-4)  # whole seconds: nothing at the highest
    off = (np.array([row["az_deg"] for row in rows]) - az + 180.0) % 360.0 - 180.0
    assert np.abs(off * np.cos(np.radians(alt))).max() < 0.0025  # half a second of turning
    assert len(rows) > 25


def test_sun_caution_in_the_log(run, layer):
    assert "ISO 12312-2" in run("night_windows", {"SITES": layer([(OCEAN,)]), "BODY": "sun", **JUNE}).log
    assert "ISO 12312-2" not in run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE}).log


def test_moonlight_on_the_core(run, layer):
    down = run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE}).rows()
    any_moon = run("night_windows", {"SITES": layer([(OCEAN,)]), "MOON": "any", **JUNE}).rows()
    assert {row["moon_mag"] for row in down if row["reason"] in NULL} == {0.0}
    assert max(row["moon_mag"] for row in any_moon) > 2.0  # with the full Moon beside the core


# towns


@pytest.fixture
def towns(layer):
    """A city to the south, another to the north, a village close by in the south, one nobody counted and one that cannot be."""
    return layer(
        [
            ("Point(-33 35.2)", "Southend", 80_000),
            ("Point(-33 36.9)", "Northend", 900_000),
            ("Point(-33 35.9)", "Hamlet", 20),
            ("Point(-33 35.8)", "Uncounted", None),
            ("Point(-33 35.7)", "Impossible", -5),
        ],
        fields=["name:string", "people:integer"],
        kind="Point",
    )


def test_glow_of_towns(run, layer, towns):
    asked = {"SITES": layer([(OCEAN,)]), "TOWNS": towns, "TOWN_POPULATION": "people", "TOWN_NAME": "name", **JUNE, "WINDOWS": "memory:"}
    out = run("night_windows", asked)
    assert "TOWNS: 4 points from 5 features." in out.log
    assert "TOWNS: skipped 1 whose TOWN_POPULATION is less than 0." in out.log
    assert "TOWNS: TOWN_POPULATION is blank in 1 features" in out.log
    south = [row for row in out.rows() if row["reason"] in NULL and 165 < row["az_deg"] < 195]
    assert len(south) > 5
    for row in south:
        assert row["glow_town"] == "Southend"
        assert row["glow"] == pytest.approx(0.01 * (80_000 * 88.8**-2.5 + 20 * 11.1**-2.5), rel=0.01)  # km along the meridian
    assert all(row["glow"] in NULL for row in out.rows() if row["reason"] not in NULL)
    assert {row["glow_town"] for row in out.rows("WINDOWS")} >= {"Southend"}


def test_without_towns_glow_is_null(run, layer):
    rows = run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE}).rows()
    assert all(row["glow"] in NULL and row["glow_town"] in NULL for row in rows)


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({}, "TOWNS is given, but TOWN_POPULATION is blank. Choose the field"),
        ({"TOWN_POPULATION": "souls"}, "TOWN_POPULATION: TOWNS has no field 'souls'. Choose one of: name, people."),
        ({"TOWN_POPULATION": "name"}, "TOWN_POPULATION: the field 'name' of TOWNS holds string, not numbers."),
        ({"TOWN_POPULATION": "people", "TOWN_NAME": "nick"}, "TOWN_NAME: TOWNS has no field 'nick'"),
        ({"TOWNS": "/no/such.gpkg", "TOWN_POPULATION": "people"}, "TOWNS: there is no layer that can be read."),
        ({"TOWNS": None, "TOWN_POPULATION": "people"}, "TOWN_POPULATION is given, but TOWNS is blank."),
    ],
    ids=["no field", "unknown field", "texts", "unknown name", "no layer", "no towns"],
)
def test_towns_that_cannot_be_used(refusal, layer, towns, changed, sentence):
    assert refusal("night_windows", {"SITES": layer([(OCEAN,)]), "TOWNS": towns, **JUNE, **changed}).startswith(sentence)


def test_a_layer_of_lines_for_towns(refusal, layer):
    lines = layer([("LineString(-33 36, -33 35)", 5)], kind="LineString", fields=["people:integer"])
    assert "not points" in refusal("night_windows", {"SITES": layer([(OCEAN,)]), "TOWNS": lines, "TOWN_POPULATION": "people", **JUNE})


# bad and hopeless input


def test_higher_than_the_core_ever_climbs(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,), (GREENWICH,)]), "ALT_MIN": 60, **JUNE})
    assert len([text for text in out.feedback.said if "does not climb" in text]) == 1
    assert "does not climb to 60° at any of these sites: it does so only between latitude -58.9° and 1.1°. Lower ALT_MIN." in out.log
    assert {row["reason"] for row in out.rows()} == {"core stays below 60°"}
    assert "60 nights without a window: core stays below 60°." in out.log
    assert out.feedback.said[-1] == "No night has a window (sites: 2, nights: 60): the field reason tells why."


def test_reachable_at_one_of_the_sites(run, layer):
    out = run("night_windows", {"SITES": layer([(OCEAN,), (SYDNEY,)]), "ALT_MIN": 60, **JUNE})
    assert "does not climb" not in out.log
    assert {row["site_id"] for row in out.rows() if row["reason"] in NULL} == {2}


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"ALT_MIN": 95}, "ALT_MIN is 95. Give a number from -90 to 90."),
        ({"TILT_MIN": 50, "TILT_MAX": 20}, "TILT_MIN (50) is above TILT_MAX (20), so nothing can lie between them. Exchange them."),
        (
            {"BODY": "arch", "APEX_MIN": 70},
            "APEX_MIN is 70, but APEX_MAX is blank, which means 60 for arch: nothing lies between. Give both.",
        ),
        ({"BODY": "star"}, "BODY holds star (Star or other fixed place (STAR)), but STAR is blank."),
        ({"BODY": "galactic"}, "BODY holds galactic, but GALACTIC_LON is blank."),
        ({"BODY": "pluto"}, "BODY: 'pluto' is not known. Choose from: core"),
        ({"MOON": "full"}, "MOON: 'full' is not known. Choose from: any, down, down_or_thin."),
        ({"LAST_NIGHT": "2027-05-01"}, "LAST_NIGHT (2027-05-01) is before FIRST_NIGHT (2027-06-01). Exchange them."),
    ],
)
def test_refusals(refusal, layer, changed, sentence):
    assert refusal("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE, **changed}).startswith(sentence)


def test_more_rows_than_allowed(run, layer):
    with pytest.raises(QgsProcessingException, match=r"up to 60 rows, more than MAX_ROWS \(59\)"):
        run("night_windows", {"SITES": layer([(OCEAN,), (SYDNEY,)]), "MAX_ROWS": 59, **JUNE})


def test_cancel_leaves_whole_rows(run, layer):
    many = layer([(f"PointZ(-33 {36 + i / 1e3} 10)",) for i in range(300)])
    out = run("night_windows", {"SITES": many, "FIRST_NIGHT": "2027-01-01", "LAST_NIGHT": "2027-12-31"}, cancel_at=40.0)
    assert 0 < len(out.rows()) < 300 * 365
    assert out.feedback.said[-1] == f"Cancelled: {len(out.rows()):,} nights written."
    assert out.feedback.shares == sorted(out.feedback.shares)


def test_on_the_command_line(qgis_process, tmp_path):
    (tmp_path / "sites.geojson").write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "one"},'
        ' "geometry": {"type": "Point", "coordinates": [-33, 36]}}]}',
        encoding="utf-8",
    )
    outputs = [f"{name}={tmp_path}/{name.lower()}.gpkg" for name in ("OUTPUT", "WINDOWS", "MONTHS")]
    done = qgis_process("night_windows", f"SITES={tmp_path}/sites.geojson", "FIRST_NIGHT=2027-06-01", "LAST_NIGHT=2027-07-31", *outputs)
    assert done.returncode == 0, done.stderr
    counts = [QgsVectorLayer(f"{tmp_path}/{name}.gpkg", name, "ogr").featureCount() for name in ("output", "windows", "months")]
    assert counts[0] == 61
    assert 20 < counts[1] < 70
    assert counts[2] == 2
