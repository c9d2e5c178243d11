"""Layers read from a PostGIS and results written to it: types and times by psql alone, and what a lost connection leaves."""

import sqlite3
import tempfile
import threading
from contextlib import closing
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from qgis.core import NULL, QgsProcessingException, QgsProcessingFeedback, QgsProcessingUtils, QgsVectorLayer

from skyalidade.adapters.databases import BATCH

UTM = 32625
CAMERAS = """
    CREATE TABLE cameras (id serial PRIMARY KEY, name text, lens double precision, gated boolean, checked date, note text,
                          geom geometry(PointZ, 4326));
    INSERT INTO cameras (name, lens, gated, checked, note, geom) VALUES
        ('West Bench', 1.5, true, '2027-03-01', NULL, 'SRID=4326;POINT Z (-33 36 100)'),
        ('O''Brien "Flat" <b>', 2.0, false, NULL, 'löss', 'SRID=4326;POINT Z (-33.01 36.01 0)'),
        (NULL, NULL, NULL, NULL, NULL, 'SRID=4326;POINT Z (-33.02 36 120)'),
        ('nowhere', 1, true, NULL, NULL, NULL);
"""
SUBJECTS = f"""
    CREATE TABLE subjects (id serial PRIMARY KEY, name text, geom geometry(MultiPoint, {UTM}));
    INSERT INTO subjects (name, geom) VALUES
        ('Drovane Light', ST_Transform('SRID=4326;MULTIPOINT (-33.001 35.99, -33.03 35.98)'::geometry, {UTM}));
"""
PATHS = f"""
    CREATE TABLE paths (id serial PRIMARY KEY, name text, geom geometry(LineString, {UTM}));
    INSERT INTO paths (name, geom) VALUES
        ('Ridge', ST_Transform('SRID=4326;LINESTRING (-33.02 36, -33 36, -32.98 36.01)'::geometry, {UTM})), ('lost', NULL);
"""
NIGHTS = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-12", "AZ_TOLERANCE": 4}
KEPT = ["lens", "gated", "checked", "note"]
DAYS = {"BODIES": ["sun", "moon"], "START": "2027-06-01T00:00Z", "END": "2027-06-02T06:00Z", "STEP": 10}
DAYS_ROWS = 3 * 2 * 181  # three cameras with a place, two bodies, 30 hours
# each new table gets a trigger that does this before a row is put in
WATCH = """
    CREATE FUNCTION watched() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN {does} RETURN {row}; END $$;
    CREATE FUNCTION watch() RETURNS event_trigger LANGUAGE plpgsql AS $$
    DECLARE made record;
    BEGIN
        FOR made IN SELECT * FROM pg_event_trigger_ddl_commands() WHERE object_identity LIKE '%.positions' LOOP
            EXECUTE format('CREATE TRIGGER watched BEFORE INSERT ON %s FOR EACH ROW EXECUTE FUNCTION watched()', made.object_identity);
        END LOOP;
    END $$;
    CREATE EVENT TRIGGER watch ON ddl_command_end WHEN TAG IN ('CREATE TABLE') EXECUTE FUNCTION watch();
"""
STYLES = "SELECT stylename FROM layer_styles WHERE f_table_schema = 'public' AND f_table_name = '{}'"


@pytest.fixture
def opened(database):
    """Open a table as QGIS does from its browser; kept alive until the test ends."""
    kept = []

    def layer(table, **connection):
        made = QgsVectorLayer(database.uri(table, key="key='id'", **connection), table, "postgres")
        assert made.isValid()
        kept.append(made)
        return made

    return layer


@pytest.fixture
def sites(database, opened):
    database.sql(CAMERAS)
    return opened("cameras")


@pytest.fixture
def scene(database, sites, opened):
    database.sql(SUBJECTS)
    return {"CAMERAS": sites, "SUBJECTS": opened("subjects"), "CAMERA_NAME": "name", "SUBJECT_NAME": "name", "CAMERA_HEIGHT": "field:lens"}


def read(database, table):
    """The rows of a table as QGIS reads them, without the id that the table gives."""
    layer = QgsVectorLayer(database.uri(table, key="key='id'"), table, "postgres")
    assert layer.fields().names()[0] == "id"
    return [dict(zip(layer.fields().names()[1:], feature.attributes()[1:])) for feature in layer.getFeatures()]


def moment(text):
    return datetime.fromisoformat(text)


def plain(rows):
    return [{name: None if value == NULL else value for name, value in row.items()} for row in rows]


# reading and writing


def test_what_is_read_and_written(database, run, scene):
    destination = "postgres://" + database.uri("found")
    asked = {**scene, **NIGHTS, "KEEP_FIELDS": KEPT}
    assert run("alignments", {**asked, "OUTPUT": destination}).log.count("1 with no geometry") == 1
    expected = plain(run("alignments", asked).rows())
    assert len(expected) > 10
    assert plain(read(database, "found")) == expected

    types = dict(database.sql("SELECT column_name, data_type FROM information_schema.columns WHERE table_name = 'found'"))
    wanted = {"t_utc": "timestamp without time zone", "night": "date", "camera_id": "bigint", "az_deg": "double precision"}
    wanted.update(t_local="character varying", lens="double precision", gated="boolean", checked="date", note="character varying")
    assert {name: types[name] for name in wanted} == wanted
    shape = "SELECT type, srid, coord_dimension FROM geometry_columns WHERE f_table_name = 'found'"
    assert database.sql(shape) == [["MULTILINESTRING", "4326", "2"]]
    assert database.sql("SELECT DISTINCT camera, gated, checked IS NULL, note IS NULL, lens FROM found ORDER BY 1") == [
        ['O\'Brien "Flat" <b>', "f", "t", "f", "2"],
        ["West Bench", "t", "f", "t", "1.5"],
        ["camera 3", "", "t", "t", ""],
    ]
    assert database.sql("SELECT count(*) FROM found WHERE sight IS NOT NULL OR ground_deg IS NOT NULL") == [["0"]]  # no DEM: null, not true
    assert database.sql("SELECT bool_and(ST_IsValid(geom) AND ST_NPoints(geom) >= 2) FROM found") == [["t"]]


def test_times_are_utc_whatever_the_zones_of_server_and_computer(database, scene, qgis_process):
    """The server's zone is Los Angeles, the computer's Kolkata; the local time of each row tells the instant, with its offset."""
    layers = {name: "postgres://" + scene[name].source() for name in ("CAMERAS", "SUBJECTS")}
    asked = {**layers, **NIGHTS, "OUTPUT": "postgres://" + database.uri("found")}
    ran = qgis_process("alignments", *(f"{name}={value}" for name, value in asked.items()), environment_too={"TZ": "Asia/Kolkata"})
    assert ran.returncode == 0, ran.stderr
    rows = database.sql("SELECT t_utc, t_local, t_start, start_loc, t_end, end_loc FROM found")
    assert len(rows) > 10
    for row in rows:
        for utc, local in zip(row[::2], row[1::2]):
            assert moment(local).utcoffset() == timedelta(hours=-2)
            assert moment(local).replace(tzinfo=None) - timedelta(hours=-2) == moment(utc)


def test_paths_and_places_on_them(database, run, scene, opened):
    database.sql(PATHS)
    names = {"SUBJECTS": scene["SUBJECTS"], "PATHS": opened("paths"), "PATH_NAME": "name", "BEARING": 180, "AZ_TOLERANCE": 20}
    outputs = {name: "postgres://" + database.uri(name.lower()) for name in ("POINTS", "STRETCHES", "ZONES")}
    run("standpoints", {**names, **outputs})
    shapes = "SELECT f_table_name, type, srid FROM geometry_columns WHERE f_table_name IN ('points', 'stretches', 'zones') ORDER BY 1"
    assert database.sql(shapes) == [
        ["points", "POINT", str(UTM)],
        ["stretches", "MULTILINESTRING", str(UTM)],
        ["zones", "MULTIPOLYGON", str(UTM)],
    ]
    assert database.sql("SELECT DISTINCT path, allowed, t_utc IS NULL, visible IS NULL FROM points") == [["Ridge", "t", "t", "t"]]
    on_path = "SELECT max(ST_Distance(points.geom, paths.geom)) < 0.01 FROM points, paths WHERE paths.name = 'Ridge'"
    assert database.sql(on_path) == [["t"]]


def test_a_plan_from_a_table_is_that_from_a_layer(database, run, scene, tmp_path, opened):
    run("alignments", {**scene, **NIGHTS, "OUTPUT": "postgres://" + database.uri("found")})
    found = run("alignments", {**scene, **NIGHTS})
    files = []
    for name, layer in (("memory", found.layers["OUTPUT"]), ("table", opened("found"))):
        path = tmp_path / f"{name}.gpx"
        run("field_plan", {"ALIGNMENTS": layer, "GPX": str(path), "HTML": "", "CALENDAR": ""})
        files.append([line for line in path.read_text(encoding="utf-8").splitlines() if "<metadata>" not in line])
    assert files[0] == files[1]
    assert len(files[0]) > 5


def test_the_result_is_opened_styled_and_marked_as_whole(database, run, sites, tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    run("sky_positions", {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")})
    assert database.sql("SELECT obj_description('positions'::regclass)") == [[f"Sky Alidade: {DAYS_ROWS:,} rows, whole."]]
    assert database.sql(STYLES.format("positions")) == [["Sky Alidade"]]
    layer = QgsVectorLayer(database.uri("positions", key="key='id'"), "positions", "postgres")
    layer.loadDefaultStyle()
    assert layer.temporalProperties().isActive()
    assert layer.attributeAlias(layer.fields().indexOf("az_deg")) == "Azimuth [° true]"
    assert list(tmp_path.iterdir()) == []  # the file in which the rows waited is gone


@pytest.mark.parametrize("prefix", ["postgres:", "postgis:", "postgres://"])
def test_all_ways_of_naming_a_database(database, algorithm, context, sites, prefix):
    parameters = {"SITES": sites, **DAYS, "OUTPUT": prefix + database.uri("named")}
    results, _ = algorithm("sky_positions").run(parameters, context, QgsProcessingFeedback(False), {}, False)
    layer = QgsProcessingUtils.mapLayerFromString(results["OUTPUT"], context)
    assert layer.featureCount() == DAYS_ROWS


# computing first, writing last


def test_a_cancelled_run_leaves_the_older_table_as_it_was(database, run, sites):
    database.sql("CREATE TABLE positions (id serial PRIMARY KEY, kept text); INSERT INTO positions (kept) VALUES ('mine')")
    outcome = run("sky_positions", {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")}, cancel_at=30)
    assert "OUTPUT: cancelled before the table was written; it is as it was." in outcome.log
    assert database.sql("SELECT kept FROM positions") == [["mine"]]
    assert outcome.layers == {}


def test_there_is_no_table_before_all_is_computed(database, algorithm, context, sites):
    """Asked at each step of the progress; what follows the last of them is the writing."""
    feedback, seen = QgsProcessingFeedback(False), []
    feedback.progressChanged.connect(lambda share: seen.append(*database.sql("SELECT to_regclass('positions') IS NULL")))
    parameters = {"SITES": sites, **DAYS, "END": "2027-07-01T06:00Z", "OUTPUT": "postgres://" + database.uri("positions")}
    algorithm("sky_positions").run(parameters, context, feedback, {}, False)
    assert seen == [["t"]] * len(seen)
    assert len(seen) > 5
    assert database.sql("SELECT to_regclass('positions') IS NULL") == [["f"]]


def test_a_run_that_fails_while_computing_leaves_no_file_behind(database, run, sites, tmp_path, monkeypatch):
    from skyalidade.algorithms import sky_positions

    whole = sky_positions.sky_positions

    def part(*given):
        yield next(whole(*given))
        raise ValueError("something went wrong in the middle")

    monkeypatch.setattr(sky_positions, "sky_positions", part)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    with pytest.raises(QgsProcessingException, match="in the middle"):
        run("sky_positions", {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")})
    assert list(tmp_path.iterdir()) == []
    assert database.sql("SELECT to_regclass('positions') IS NULL") == [["t"]]


def test_a_run_that_is_cancelled_while_writing_leaves_no_file_behind(database, algorithm, context, sites, tmp_path, monkeypatch):
    from skyalidade.adapters import databases

    feedback, said = QgsProcessingFeedback(False), []
    monkeypatch.setattr(feedback, "pushWarning", said.append)
    in_order = databases._in_order
    monkeypatch.setattr(databases, "_in_order", lambda *row: (feedback.cancel(), in_order(*row))[1])
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    asked = {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")}
    algorithm("sky_positions").run(asked, context, feedback, {}, False)
    assert [text for text in said if "cancelled. The table is not whole." in text]
    assert list(tmp_path.iterdir()) == []


# a connection that is lost


def rows_told(text):
    assert "OUTPUT: writing to the table public.positions (field) stopped after " in text
    return int(text.split("stopped after ")[1].split(" of ")[0].replace(",", ""))


def waiting_rows(text):
    """How many rows the file holds that is named in the sentence; it is taken away."""
    path = Path(text.split("kept in the file ")[1].split(": load")[0])
    with closing(sqlite3.connect(path)) as rows:
        count = rows.execute("SELECT count(*) FROM rows").fetchone()[0]
    path.unlink()
    path.parent.rmdir()
    return count


def test_a_connection_ended_while_writing(database, run, sites):
    """The part has neither the style nor the mark of the whole table that stood there before; a person's own style stays."""
    asked = {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")}
    run("sky_positions", asked)
    database.sql(
        "INSERT INTO layer_styles (f_table_catalog, f_table_schema, f_table_name, f_geometry_column, stylename) "
        "VALUES ('field', 'public', 'positions', 'geom', 'mine')"
    )
    assert sorted(database.sql(STYLES.format("positions"))) == [["Sky Alidade"], ["mine"]]
    database.sql(WATCH.format(does="IF NEW.id > 450 THEN PERFORM pg_terminate_backend(pg_backend_pid()); END IF;", row="NEW"))
    with pytest.raises(QgsProcessingException) as lost:
        run("sky_positions", asked)
    assert rows_told(str(lost.value)) == 450 // BATCH * BATCH
    assert f"of {DAYS_ROWS:,} rows" in str(lost.value)
    assert database.sql("SELECT count(*) FROM positions") == [["400"]]
    assert database.sql(STYLES.format("positions")) == [["mine"]]
    assert database.sql("SELECT obj_description('positions'::regclass) IS NULL") == [["t"]]
    assert database.password not in str(lost.value)
    assert waiting_rows(str(lost.value)) == DAYS_ROWS


def test_the_server_dies_while_writing(database, sites, qgis_process):
    """Killed at once while a row waits to be written: the rows told are those that the server finds when it is back."""
    database.sql(WATCH.format(does="IF NEW.id > 250 THEN PERFORM pg_sleep(3600); END IF;", row="NEW"))
    asked = {"SITES": "postgres://" + sites.source(), **DAYS, "OUTPUT": "postgres://" + database.uri("positions")}
    ran = []
    words = [f"{name}={each}" for name, value in asked.items() for each in (value if isinstance(value, list) else [value])]
    writing = threading.Thread(target=lambda: ran.append(qgis_process("sky_positions", *words)))
    writing.start()
    try:
        database.wait_for("(SELECT count(*) >= 200 FROM positions)")
    finally:
        database.stop()
        writing.join()
        database.start()
    assert ran[0].returncode == 1
    told = " ".join(ran[0].stderr.split())
    assert int(database.sql("SELECT count(*) FROM positions")[0][0]) == rows_told(told) > 0
    assert database.sql("SELECT obj_description('positions'::regclass) IS NULL, to_regclass('layer_styles') IS NULL") == [["t", "t"]]
    assert database.password not in ran[0].stderr  # what QGIS itself prints of the parameters goes elsewhere
    assert waiting_rows(told) == DAYS_ROWS


def test_rows_that_the_table_did_not_keep_are_missed(database, run, sites):
    """What a connection that comes back had promised: here a trigger drops each tenth row without a word."""
    database.sql(WATCH.format(does="IF NEW.id % 10 = 0 THEN RETURN NULL; END IF;", row="NEW"))
    with pytest.raises(QgsProcessingException) as lost:
        run("sky_positions", {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri("positions")})
    assert rows_told(str(lost.value)) == DAYS_ROWS - DAYS_ROWS // 10
    assert database.sql("SELECT obj_description('positions'::regclass) IS NULL") == [["t"]]
    assert waiting_rows(str(lost.value)) == DAYS_ROWS


# refusals


@pytest.mark.parametrize(
    ("where", "sentence"),
    [
        ({"port": 1}, "OUTPUT: The database of the table public.found (field) does not answer."),
        ({"password": "wrong-one"}, "OUTPUT: The database of the table public.found (field) does not answer."),
        ({"schema": "nowhere"}, "OUTPUT: The schema nowhere does not exist."),
        ({"schema": "pg_catalog", "user": "guest", "password": "guest"}, "OUTPUT: No table may be made in the schema pg_catalog"),
        ({"dbname": "postgres"}, "OUTPUT: The database of the table public.found (postgres) has no PostGIS."),
        ({"table": "cameras"}, "OUTPUT: the table public.cameras (field) is the layer of SITES, which would be lost."),
    ],
    ids=["no server", "wrong password", "no schema", "no right", "no PostGIS", "the input"],
)
def test_refusals(database, refusal, sites, where, sentence):
    database.sql("DO $$ BEGIN CREATE ROLE guest LOGIN PASSWORD 'guest'; EXCEPTION WHEN duplicate_object THEN NULL; END $$")
    told = refusal("sky_positions", {"SITES": sites, **DAYS, "OUTPUT": "postgres://" + database.uri(**{"table": "found", **where})})
    assert told.startswith(sentence)
    assert database.password not in told
    assert "wrong-one" not in told
    assert database.sql("SELECT count(*) FROM cameras") == [["4"]]


def test_a_table_of_another_kind_is_said(database, refusal, opened):
    database.sql(PATHS)
    assert "holds LineString, not points" in refusal("sky_positions", {"SITES": opened("paths"), **DAYS})
