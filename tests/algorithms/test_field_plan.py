"""`field_plan` in QGIS: declaration, refusals, the three files read back, walks, zones, awkward names and layers, cancel."""

import os
import re
import shutil
import subprocess
from datetime import datetime, timezone
from html.parser import HTMLParser
from pathlib import Path

import icalendar
import pypdfium2
import pytest
import xmlschema
from osgeo import ogr
from pyproj import Transformer
from qgis.core import QgsProcessingException, QgsVectorLayer
from qgis.PyQt.QtCore import QDateTime, Qt

from skyalidade.names import ALIGNMENTS_FIELDS, FIELDS, STANDPOINTS_FIELDS

KINDS = {"text": "string", "int": "integer", "real": "double", "bool": "boolean", "date": "date", "datetime": "datetime"}
FILES = {"HTML": "plan.html", "GPX": "plan.gpx", "CALENDAR": "plan.ics"}
SOUTH_M = "Point(-33 36.01)", "Point(-33 36)"  # camera and subject, due south of it
NIGHTS = {"FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-06"}


class Page(HTMLParser):
    """The rows of each sheet's tables and all that is said, as text; complains of what a page must not hold."""

    def __init__(self, content):
        super().__init__()
        self.sheets, self.said, self._cell, self._open = [], [], None, []
        self.feed(content)
        assert self._open == []

    def handle_starttag(self, tag, attributes):
        assert tag not in ("script", "link", "img", "iframe", "object", "b"), tag
        assert not any(name.startswith("on") or name in ("src", "href") for name, _ in attributes)
        if tag not in ("meta", "input", "line", "circle", "rect", "path", "br"):
            self._open.append(tag)
        if tag == "section":
            self.sheets.append([])
        if tag == "tr":
            self.sheets[-1].append([])
        if tag in ("td", "th"):
            self.sheets[-1][-1].append("")

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if self._open and self._open[-1] == tag and tag in ("text", "g"):
            self._open.pop()

    def handle_endtag(self, tag):
        assert self._open.pop() == tag

    def handle_data(self, text):
        if self._open and self._open[-1] == "style":
            assert "url(" not in text
            assert "@import" not in text
            return
        self.said.append(text)
        if {"td", "th"} & set(self._open):
            self.sheets[-1][-1][-1] += text

    @property
    def text(self):
        return "".join(self.said)

    def timetable(self, sheet=0):
        """Time and happening of each line."""
        return [(row[0], row[1]) for row in self.sheets[sheet] if re.match(r"\d\d:\d\d", row[0])]


class Plan:
    """What a run wrote."""

    def __init__(self, folder, outcome):
        self.folder, self.log = folder, outcome.log

    @property
    def page(self):
        return Page((self.folder / "plan.html").read_text(encoding="utf-8"))

    @property
    def events(self):
        return icalendar.Calendar.from_ical((self.folder / "plan.ics").read_bytes()).walk("VEVENT")

    def places(self, kind):
        source = ogr.Open(str(self.folder / "plan.gpx"))
        features = [feature for feature in source.GetLayer("waypoints") if feature["type"] == kind]
        return [(feature["name"], feature.GetGeometryRef().GetX(), feature.GetGeometryRef().GetY()) for feature in features]

    def tracks(self):
        source = ogr.Open(str(self.folder / "plan.gpx"))
        return [(feature["name"], [part.GetPoints() for part in feature.GetGeometryRef()]) for feature in source.GetLayer("tracks")]


@pytest.fixture
def planned(run, tmp_path):
    """Plan a layer; all three files are written."""

    def outcome(layer, cancel_at=None, **asked):
        files = {name: str(tmp_path / file) for name, file in FILES.items()}
        return Plan(tmp_path, run("field_plan", {"ALIGNMENTS": layer, **files, **asked}, cancel_at))

    return outcome


@pytest.fixture
def aligned(run, layer):
    """Alignments of the core over a subject, as `alignments` makes them."""

    def found(camera=SOUTH_M[0], subject=SOUTH_M[1], names=("Meadow", "Stone"), **asked):
        cameras, subjects = (layer([(wkt, name)], fields=["name:string(0)"], kind="Point") for wkt, name in zip((camera, subject), names))
        given = {"CAMERAS": cameras, "SUBJECTS": subjects, "CAMERA_NAME": "name", "SUBJECT_NAME": "name", "SUBJECT_HEIGHT": 20}
        return run("alignments", {**given, **NIGHTS, **asked}).layers["OUTPUT"]

    return found


@pytest.fixture
def told(layer):
    """A layer with all fields of alignments, or of standpoints, made by hand: rows of (WKT, changes)."""

    def made(*rows, fields=ALIGNMENTS_FIELDS, kind="LineString", crs="EPSG:4326"):
        base = {
            "camera": "Meadow",
            "camera_id": 1,
            "subject": "Stone",
            "subject_id": 1,
            "body": "core",
            "t_utc": utc(2027, 6, 6, 2, 0),
            "t_start": utc(2027, 6, 6, 1, 50),
            "t_end": utc(2027, 6, 6, 2, 10),
            "tz": "UTC-02:00",
            "az_deg": 180.0,
            "alt_deg": 25.0,
            "bearing_deg": 180.0,
            "mag_deg": 189.0,
            "dist_m": 1000.0,
            "top_alt_deg": 1.0,
            "d_alt_deg": 24.0,
        }
        values = [(wkt, *({**base, **changes}.get(name) for name in fields)) for wkt, changes in rows]
        return layer(values, crs, [f"{name}:{KINDS[FIELDS[name].kind]}" for name in fields], kind)

    return made


def utc(*moment):
    return QDateTime(*moment, 0, 0, Qt.TimeSpec.UTC)


LINE = "LineString(-33 36.01, -33 36)"


# declaration


def test_parameters_in_order(algorithm):
    plan = algorithm("field_plan")
    assert [definition.name() for definition in plan.parameterDefinitions()] == [
        *("ALIGNMENTS", "PARKING", "WALK", "WALK_SPEED", "ARRIVE_BEFORE", "PACK_UP", "PARKING_NAME", "WALK_NAME", "POS_ERROR"),
        *("TIME_ZONE", "MAX_ROWS", "HTML", "GPX", "CALENDAR"),
    ]
    assert (plan.parameterDefinition("WALK_SPEED").defaultValue(), plan.parameterDefinition("ARRIVE_BEFORE").defaultValue()) == (3, 45)
    assert [output.type() for output in plan.outputDefinitions()] == ["outputHtml", "outputFile", "outputFile"]


# from alignments


def test_a_sheet_a_night_with_what_alignments_found(planned, aligned):
    layer = aligned(BODIES=["core", "moon"], MOON="any")
    rows = [dict(zip(layer.fields().names(), feature.attributes())) for feature in layer.getFeatures()]
    assert {row["body"] for row in rows} == {"core", "moon"}
    plan = planned(layer)
    assert len(plan.page.sheets) == 2
    assert f"{len(rows)} alignments on 2 sheets" in plan.log
    first = [row for row in rows if row["body"] == "core"][0]
    lines = {text: time for time, text in plan.page.timetable()}
    assert lines["Milky Way core comes over Stone"] == rounded(first["t_start"])
    assert any(time == rounded(first["t_utc"]) and text.startswith("Milky Way core closest") for time, text in plan.page.timetable())
    assert lines["Milky Way core leaves Stone"] == rounded(first["t_end"])
    (cells,) = [row for row in plan.page.sheets[0] if row[0] == "Stone"]
    assert cells == ["Stone", "180.0° ± 0.2°", f"{first['mag_deg']:.1f}°", f"{first['dist_m']:,.0f} m", f"{first['top_alt_deg']:.1f}°"]
    (cells,) = [row for row in plan.page.sheets[0] if len(row) > 1 and row[1].startswith("Milky Way core closest")]
    assert cells[2:] == [f"{angle:.1f}°" for angle in (first["az_deg"], first["az_deg"] - first["decl_deg"], first["alt_deg"])]
    assert f"Magnetic declination {-first['decl_deg']:.1f}° west" in plan.page.text
    assert f"{first['d_alt_deg']:.1f}° above its top" in plan.page.text
    assert plan.places("camera") == [("Meadow", -33.0, 36.01)]
    ((_, lon, lat),) = plan.places("subject")
    assert (lon, lat) == pytest.approx((-33.0, 36.0), abs=1e-6)  # a tenth of a metre
    (event,) = [event for event in plan.events if event.decoded("DTSTART") == moment_of(first["t_start"])]
    angles = (first["az_deg"], first["az_deg"] - first["decl_deg"], first["alt_deg"])
    assert "azimuth {:.1f}° true, {:.1f}° magnetic, altitude {:.1f}°".format(*angles) in event["DESCRIPTION"]
    starts = sorted(event.decoded("DTSTART") for event in plan.events)
    assert starts == sorted(moment_of(row["t_start"]) for row in rows)


def moment_of(value):
    return value.toPyDateTime().replace(tzinfo=timezone.utc)


def rounded(moment):
    """Clock at UTC-02:00 to the nearest minute."""
    return moment.addSecs(-2 * 3600 + 30).time().toString("HH:mm")


def test_timetable_in_order_with_sunset_and_darkness(planned, aligned):
    table = planned(aligned()).page.timetable()
    # of 5 June 2027 at 36 N 33 W by PyEphem, held in tests/plan/test_field_plan.py: sunset 21:25:37 UTC
    assert [time for time, _ in table[:2]] == ["18:41", "19:26"]
    assert [text for _, text in table[:6]] == [
        *("Be at the camera", "Sunset", "Civil twilight ends", "Nautical twilight ends", "Moonset"),
        "Astronomical twilight ends: full darkness",
    ]
    assert table[-1][1].startswith("Leave")


def test_cautions(planned, told):
    text = planned(told((LINE, {}))).page.text
    assert "Walking in the dark: cliffs, tides" in text
    assert "decided by the land manager" in text
    assert "Sun: never look" not in text
    assert "elevation model" not in text
    plan = planned(told((LINE, {"body": "sun", "sight": "hidden"})))
    assert "Sun: never look at it" in plan.page.text
    assert "Never look at the Sun" in plan.log
    assert "Sun: never look at it" in plan.events[0]["DESCRIPTION"]
    assert "The terrain hides the top of Stone from Meadow." in plan.page.text
    assert "without trees or buildings" in plan.page.text


def test_moon_and_sky_are_told_where_the_layer_tells_them(planned, told):
    moon = {"sky": "night", "moon_deg": 23.04, "moon_lit": 0.451, "moon_side": "side"}
    assert "24.0° above its top · full darkness · Moon up at 23.0° · 45 % lit · its light from the side" in (
        planned(told((LINE, moon))).page.text
    )
    assert "24.0° above its top · Moon down" in planned(told((LINE, {"moon_deg": -0.9}))).page.text


def test_short_stretches_are_told_in_one_line(planned, told):
    short = {"t_start": utc(2027, 6, 6, 1, 59), "t_end": utc(2027, 6, 6, 2, 1)}
    page = planned(told((LINE, short))).page
    assert [text for _, text in page.timetable() if "Stone" in text] == [
        "Milky Way core closest to the bearing of Stonefor 120 s · 24.0° above its top"
    ]


def test_the_strip_and_the_dial(planned, told, tmp_path):
    """The strip's mark of an alignment at midnight stands on the hour's tick; the dial's line leads where the subject lies."""
    planned(told((LINE, {"bearing_deg": 120.0})))
    content = (tmp_path / "plan.html").read_text(encoding="utf-8")
    (label,) = re.findall(r'<text x="([\d.]+)" y="84"[^>]*>00:00</text>', content)
    (mark,) = re.findall(r'<line x1="([\d.]+)" x2="[\d.]+" y1="4" y2="44" stroke="var\(--ink\)" stroke-width="2"/>', content)
    assert mark == label
    lights = ["day", "civil", "nautical", "astronomical", "night", "astronomical", "nautical", "civil", "day"]
    assert re.findall(f'fill="var\\(--({"|".join(set(lights))})\\)"', content) == lights
    ((x, y),) = re.findall(r'<line x2="([-\d.]+)" y2="([-\d.]+)" stroke="var\(--line\)"', content)
    assert (float(x), float(y)) == pytest.approx((34 * 0.866, 34 * 0.5), abs=0.06)


# printed


@pytest.fixture
def printed(tmp_path):
    """Print a page by Chromium; the text of each page of paper."""

    def made(plan, paper):
        page = tmp_path / "printed.html"
        content = (plan.folder / "plan.html").read_text(encoding="utf-8")
        page.write_text(content.replace("@page {", f"@page {{ size: {paper};"), encoding="utf-8")
        arguments = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-pdf-header-footer"]
        places = [f"--user-data-dir={tmp_path / 'chromium'}", f"--print-to-pdf={tmp_path / 'printed.pdf'}", page.as_uri()]
        subprocess.run([shutil.which("chromium"), *arguments, *places], check=True, capture_output=True, timeout=120)
        return [" ".join(page.get_textpage().get_text_range().split()) for page in pypdfium2.PdfDocument(tmp_path / "printed.pdf")]

    return made


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_a_sheet_is_a_page_of_paper(planned, told, ground, printed, paper):
    """Six alignments of a night with parking, walk, warnings and the Sun's caution; two nights."""
    rows = []
    for day in (6, 8):
        for i in range(6):
            times = {name: utc(2027, 6, day, 1, 10 * i + minute) for name, minute in (("t_start", 0), ("t_utc", 3), ("t_end", 6))}
            body = "sun" if i == 0 else "core"
            rows.append((LINE, {**times, "subject": f"Standing Stone {i}", "body": body, "sight": "uncertain" if i == 1 else "clear"}))
    pages = printed(planned(told(*rows), **ground), paper)
    assert len(pages) == 2
    for page in pages:
        assert all(f"closest to the bearing of Standing Stone {i}" in page for i in range(6))
        assert "Back at the car" in page
        assert "decided by the land manager" in page
        assert "Sun: never look at it" in page


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_long_names_keep_to_a_page_of_paper(planned, told, ground, printed, paper):
    name = "The very long name of a place by the water where the old keepers' path leaves the road for the cliffs and the sea"
    rows = []
    for i in range(3):
        times = {key: utc(2027, 6, 6, 1, 10 * i + minute) for key, minute in (("t_start", 0), ("t_utc", 3), ("t_end", 6))}
        rows.append((LINE, {**times, "camera": name, "subject": f"{name} {i}"}))
    pages = printed(planned(told(*rows), **ground), paper)
    assert len(pages) == 1
    assert all(pages[0].count(f"{name} {i}") == 4 for i in range(3))


def test_forty_alignments_of_a_night_go_on_with_nothing_cut(planned, told, printed):
    rows = []
    for i in range(40):
        times = {key: utc(2027, 6, 6, 1, i) for key in ("t_start", "t_utc", "t_end")}
        rows.append((LINE, {**times, "subject": f"Stone {i:02d}"}))
    pages = printed(planned(told(*rows)), "A4")
    assert len(pages) <= 3
    assert all(f"closest to the bearing of Stone {i:02d}" in " ".join(pages) for i in range(40))
    assert "decided by the land manager" in pages[-1]


def test_a_dial_of_many_subjects_is_no_blot(planned, told, tmp_path):
    planned(told(*((LINE, {"subject": f"Stone {i}", "bearing_deg": 150.0 + i}) for i in range(40))))
    content = (tmp_path / "plan.html").read_text(encoding="utf-8")
    assert len(re.findall(r'<line x2="[-\d.]+" y2="[-\d.]+" stroke="var\(--line\)" stroke-width="0.5"/>', content)) == 40
    assert len(re.findall(r'<path d="M[-\d. ]+h8l-4 -8z"', content)) == 4


# from standpoints


def test_standpoints_share_a_sheet_a_path(run, layer, planned):
    subjects = layer([("Point(-33 36)", "Stone")], fields=["name:string"], kind="Point")
    paths = layer([("LineString(-33.02 36.02, -32.98 36.02)", "Rim")], fields=["name:string"], kind="LineString")
    given = {"SUBJECTS": subjects, "PATHS": paths, "PATH_NAME": "name", "SUBJECT_NAME": "name", "BODY": "core", "POINTS": "memory:"}
    span = {"TIME": "2027-06-06T02:00:00Z", "TIME_END": "2027-06-06T03:00:00Z", "STEP": 30}
    plan = planned(run("standpoints", {**given, **span}).layers["POINTS"])
    (sheet,) = plan.page.sheets
    closest = [text for _, text in plan.page.timetable() if "over Stone" in text]
    assert len(closest) == 3
    assert all(re.match(r"Rim [\d ]+ m: Milky Way core over Stone", text) for text in closest)
    assert len([row for row in sheet if row[0].startswith("Rim ")]) == 3
    assert len(plan.places("camera")) == 3
    assert len(plan.places("subject")) == 1
    assert all("DTEND" not in event for event in plan.events)


def test_places_that_are_not_allowed_are_told(planned, told):
    layer = told(("Point(-33 36.01)", {"allowed": False}), fields=STANDPOINTS_FIELDS, kind="Point")
    assert "Meadow lies in closed ground, or outside the area allowed." in planned(layer).page.text


def test_standpoints_in_a_bearing_have_no_night(planned, run, layer):
    subjects, paths = layer([("Point(-33 36)",)], kind="Point"), layer([("LineString(-33.02 36.02, -32.98 36.02)",)], kind="LineString")
    points = run("standpoints", {"SUBJECTS": subjects, "PATHS": paths, "BEARING": 180, "POINTS": "memory:"}).layers["POINTS"]
    plan = planned(points)
    assert "skipped 1 with no time in t_utc (standpoints in a BEARING belong to no night)" in plan.log
    assert "Nothing to plan" in plan.page.text
    assert plan.events == []
    assert plan.places("camera") == []


# walks


@pytest.fixture
def ground(layer):
    parking = layer([("Point(-33.01 36.01)", "North car park")], fields=["name:string"], kind="Point")
    walk = layer([("LineString(-33 36.01, -33.005 36.012, -33.01 36.01)", "Rim trail")], fields=["name:string"], kind="LineString")
    return {"PARKING": parking, "PARKING_NAME": "name", "WALK": walk, "WALK_NAME": "name"}


def test_a_walk(planned, told, ground):
    plan = planned(told((LINE, {})), **ground)
    # two legs of hypot(0.005° x 90 165 m, 0.002° x 110 960 m) at this latitude
    assert "From North car park along Rim trail: 1,005 m, 21 min at 3 km/h. Slopes and rests are not counted." in plan.page.text
    table = plan.page.timetable()
    assert [text for _, text in table[:2]] == ["Leave the car", "Be at the camera"]
    assert [time for time, _ in table[:2]] == ["18:21", "18:41"]
    assert table[-1][1] == "Back at the car"
    assert plan.places("parking") == [("North car park", -33.01, 36.01)]
    ((name, (points,)),) = plan.tracks()
    assert name == "Rim trail"
    assert [(round(x, 6), round(y, 6)) for x, y, *_ in points] == [(-33.01, 36.01), (-33.005, 36.012), (-33.0, 36.01)]


@pytest.mark.parametrize(
    ("with_walk", "asked", "marked"),
    [
        (True, {}, ["Leave"]),  # out before sunset, back after midnight
        (False, {}, ["Leave"]),
        (True, {"ARRIVE_BEFORE": 0, "WALK_SPEED": 20}, ["Leave"]),  # at sunset there is light enough
        (True, {"TIME": (2027, 6, 6, 6, 58), "WALK_SPEED": 1}, ["Leave the car"]),  # the Sun is up: 06:55 UTC, civil dawn 06:25
        (False, {"TIME": (2027, 6, 6, 6, 58)}, ["Be at the camera"]),
    ],
)
def test_walks_in_the_dark_are_marked(planned, told, ground, with_walk, asked, marked):
    asked = dict(asked)
    moments = dict.fromkeys(("t_start", "t_utc", "t_end"), utc(*asked.pop("TIME"))) if "TIME" in asked else {}
    page = planned(told((LINE, moments)), **(ground if with_walk else {}), **asked).page
    dark = " in the dark: lamp, known path"
    assert [text[: -len(dark)] for _, text in page.timetable() if text.endswith(dark)] == marked


def test_waypoints_and_walk_keep_the_schema(planned, told, ground):
    plan = planned(told((LINE, {}), (LINE, {"camera": "東京 <b>", "decl_deg": -3.25})), **ground)
    schema = xmlschema.XMLSchema(str(Path(__file__).resolve().parents[1] / "authorities" / "gpx_1_1.xsd"))
    assert [error.reason for error in schema.iter_errors(str(plan.folder / "plan.gpx"))] == []
    assert {kind for kind in ("camera", "subject", "parking") if plan.places(kind)} == {"camera", "subject", "parking"}
    assert plan.tracks()


def test_half_the_speed_takes_twice_as_long(planned, told, ground):
    assert "41 min at 1.5 km/h" in planned(told((LINE, {})), WALK_SPEED=1.5, **ground).page.text


def test_a_walk_that_passes_by_at_a_distance(planned, told, ground):
    away = "LineString(-33 36.012, -33 36)"  # 222 m north of an end; the last leg leads west and 26° north: 222 m x cos 26°
    assert "The drawn walk passes 199 m from the camera" in planned(told((away, {})), **ground).page.text


def test_parking_alone_tells_no_time(planned, told, ground):
    plan = planned(told((LINE, {})), PARKING=ground["PARKING"])
    assert "902 m off as the crow flies (bearing 270.0°). No walk is known: nor is its time." in plan.page.text
    assert plan.page.timetable()[0][1] == "Be at the camera"
    assert plan.tracks() == []


def test_a_walk_without_parking(planned, told, ground):
    plan = planned(told((LINE, {})), WALK=ground["WALK"])
    assert "From its farther end along walk 1: 1,005 m" in plan.page.text
    assert plan.places("parking") == []


def test_neither_parking_nor_walk(planned, told):
    assert "No way from a car is known" in planned(told((LINE, {}))).page.text


# names, zones, places


@pytest.mark.parametrize(
    "name", ["n" * 300, "word " * 60, "灯台と断崖の上", "מגדלור <b> & \"צפון\" 'א'", "</bdi></section>{0}%s", "e\u0301 🌌", "a,b;c"]
)
def test_names(planned, aligned, name):
    name = name.strip()
    layer = aligned(names=(f"{name} 1", f"{name} 2"))
    plan = planned(layer)
    page = plan.page
    assert f"{name} 1" in page.text
    assert any(text == f"Milky Way core leaves {name} 2" for _, text in page.timetable())
    assert [place[0] for place in plan.places("camera")] == [f"{name} 1"]
    assert plan.events[0]["SUMMARY"] == f"Milky Way core over {name} 2"
    assert plan.events[0]["LOCATION"].startswith(f"{name} 1 (36.01000° N, 33.00000° W)")


def test_the_zone_of_the_layer_then_that_of_the_place(planned, told):
    for changes, asked, zone, clock in (
        ({}, {}, "Times: UTC-02:00", "00:00"),
        ({"tz": None}, {}, "Times: UTC-02:00", "00:00"),  # the open sea
        ({"tz": "Nowhere/Land"}, {}, "Times: UTC-02:00", "00:00"),
        ({"tz": "Europe/Lisbon"}, {}, "Times: Europe/Lisbon, UTC+01:00", "03:00"),
        ({}, {"TIME_ZONE": "Asia/Kolkata"}, "Times: Asia/Kolkata, UTC+05:30", "07:30"),
    ):
        page = planned(told((LINE, changes)), **asked).page
        assert zone in page.text
        assert any(time == clock and "closest" in text for time, text in page.timetable()), (changes, asked)


def test_a_night_in_which_the_clocks_change(planned, told):
    moments = {"t_start": utc(2027, 3, 28, 0, 30), "t_utc": utc(2027, 3, 28, 1, 30), "t_end": utc(2027, 3, 28, 2, 30)}
    page = planned(told(("LineString(10 47, 10 46.99)", {**moments, "tz": "Europe/Berlin"}))).page
    assert "Times: Europe/Berlin, UTC+01:00 / UTC+02:00" in page.text
    closest = [(time, text[:6]) for time, text in page.timetable() if "Stone" in text]
    assert [time for time, _ in closest] == ["01:30 +01:00", "03:30 +02:00", "04:30 +02:00"]


def test_over_the_antimeridian(planned, aligned, layer):
    alignments = aligned(
        "Point(179.995 -17)", "Point(-179.995 -17.001)", BODIES="star", STAR="279.23,38.78", ALT_MIN=-90, SUN_LIMIT=90, AZ_TOLERANCE=89
    )
    parking = layer([("Point(-179.999 -17)",)], kind="Point")
    walk = layer([("LineString(180.001 -17, 179.995 -17)",)], kind="LineString")
    plan = planned(alignments, PARKING=parking, WALK=walk)
    ((_, lon, _),) = plan.places("subject")
    assert lon == pytest.approx(-179.995, abs=1e-6)
    assert "639 m, 13 min" in plan.page.text  # 0.006° x 106 470 m
    ((_, (points,)),) = plan.tracks()
    assert [point[0] for point in points] == pytest.approx([-179.999, 179.995])


def test_in_a_projected_crs(planned, told, ground):
    to_utm = Transformer.from_crs("EPSG:4326", "EPSG:32625", always_xy=True)
    (x1, y1), (x2, y2) = (to_utm.transform(-33.0, lat) for lat in (36.01, 36.0))
    layer = told((f"LineString({x1} {y1}, {x2} {y2})", {}), crs="EPSG:32625")
    ((_, lon, lat),) = planned(layer, **ground).places("camera")
    assert (lon, lat) == pytest.approx((-33.0, 36.01), abs=1e-6)


@pytest.mark.parametrize(("month", "sky", "light"), [(6, "day", "day"), (6, None, "day"), (12, "night", "night"), (12, None, "night")])
def test_where_the_sun_neither_sets_nor_rises(planned, told, tmp_path, month, sky, light):
    moments = {name: utc(2027, month, 21, 23, minute) for name, minute in (("t_start", 10), ("t_utc", 20), ("t_end", 30))}
    page = planned(told(("LineString(10 84.99, 10 85)", {**moments, "body": "moon", "sky": sky, "tz": None}))).page
    assert [text[:5] for _, text in page.timetable()] == ["Be at", "Moon ", "Moon ", "Moon ", "Leave"]
    assert page.text.count("in the dark: lamp") == (2 if light == "night" else 0)
    assert re.findall(r'height="40" fill="var\(--(\w+)\)"', (tmp_path / "plan.html").read_text(encoding="utf-8")) == [light]


def test_parts_of_one_camera_are_places_of_their_own(planned, told):
    page = planned(told((LINE, {}), ("LineString(-33 36.02, -33 36)", {"dist_m": 2000.0, "bearing_deg": 180.5}))).page
    assert "36.01000° N, 33.00000° W" in page.text
    assert "36.02000° N, 33.00000° W" in page.text


def test_past_nights_and_years_without_a_magnetic_model(planned, told):
    moments = {"t_start": utc(2001, 6, 20, 1, 50), "t_utc": utc(2001, 6, 20, 2, 0), "t_end": utc(2001, 6, 20, 2, 10), "mag_deg": None}
    plan = planned(told((LINE, moments)))
    assert "Night of 2001-06-19" in plan.page.text
    assert "Magnetic bearings are not known" in plan.page.text
    assert plan.events[0].decoded("DTSTART") == datetime(2001, 6, 20, 1, 50, tzinfo=timezone.utc)


@pytest.mark.parametrize("name", ["alignments.gpkg", "alignments.shp", "alignments.geojson"])
def test_from_a_file(planned, run, layer, tmp_path, name):
    cameras, subjects = (layer([(wkt,)], kind="Point") for wkt in SOUTH_M)
    file = str(tmp_path / name)
    run("alignments", {"CAMERAS": cameras, "SUBJECTS": subjects, **NIGHTS, "OUTPUT": file})
    read = QgsVectorLayer(file, "found", "ogr")
    plan = planned(read)
    assert len(plan.events) == read.featureCount() == 2
    assert all(24 * 60 > (event.decoded("DTEND") - event.decoded("DTSTART")).total_seconds() / 60 > 1 for event in plan.events)


def test_uids_stay_when_the_plan_is_made_again(planned, told):
    layer = told((LINE, {}), (LINE, {"body": "moon"}), (LINE, {"t_utc": utc(2027, 6, 6, 2, 5)}))
    first, again = ([str(event["UID"]) for event in planned(layer).events] for _ in range(2))
    assert first == again
    assert len(set(first)) == 3


# nothing found, and rows that cannot be used


def test_no_row_at_all(planned, told):
    plan = planned(told())
    assert "Nothing to plan" in plan.page.text
    assert "Nothing to plan: The layer holds no alignment." in plan.log
    assert plan.events == []


def test_rows_that_cannot_be_used_are_counted(planned, told):
    plan = planned(
        told(
            (LINE, {}),
            (None, {}),
            (LINE, {"t_utc": None}),
            (LINE, {"dist_m": None}),
            (LINE, {"bearing_deg": None}),
            (LINE, {"t_start": utc(2027, 6, 6, 2, 5)}),
            (LINE, {"t_utc": utc(2061, 1, 1, 0, 0)}),
        )
    )
    assert len(plan.events) == 1
    for reason in (
        "1 rows from 7 features",
        "1 with no geometry",
        "1 with no time in t_utc",
        "2 whose bearing_deg or dist_m is blank",
        "1 whose t_start, t_utc and t_end are not in that order",
        "1 whose t_utc lies outside the years of the ephemeris",
    ):
        assert reason in plan.log


def test_blank_names_and_numbers(planned, told):
    blank = ("camera", "subject", "body", "mag_deg", "top_alt_deg", "d_alt_deg", "az_deg", "alt_deg")
    plan = planned(told((LINE, dict.fromkeys(blank))))
    (cells,) = [row for row in plan.page.sheets[0] if row[0] == "subject"]
    assert cells == ["subject", "180.0° ± 0.2°", "–", "1,000 m", "–"]
    assert "None" not in plan.page.text
    assert "nan" not in plan.page.text


# refusals


@pytest.fixture
def refused(refusal, told, tmp_path):
    def sentence(**asked):
        return refusal("field_plan", {"ALIGNMENTS": told((LINE, {})), "HTML": str(tmp_path / "plan.html"), **asked})

    return sentence


def test_layers_that_are_no_alignments(refused, layer):
    assert refused(ALIGNMENTS=layer([("LineString(0 0, 1 1)", 1.0)], fields=["bearing_deg:double"], kind="LineString")) == (
        "ALIGNMENTS: 'points' has no field camera, subject, body, t_utc, az_deg, alt_deg, dist_m. "
        "Choose a result of alignments, or the POINTS of standpoints."
    )
    assert "no layer that can be read" in refused(ALIGNMENTS=None)
    assert "no layer that can be read" in refused(ALIGNMENTS="/no/such.gpkg")


def test_polygons_and_layers_without_a_crs(refused, told):
    zone = "Polygon((0 0, 1 0, 1 1, 0 0))"
    assert "holds Polygon. Choose the lines of alignments" in refused(ALIGNMENTS=told((zone, {}), kind="Polygon"))
    assert "has no CRS" in refused(ALIGNMENTS=told((LINE, {}), crs=""))


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"HTML": None}, "Nothing is to be written. Give a file for HTML, GPX or CALENDAR"),
        ({"HTML": "/no/such/folder/plan.html"}, "HTML: The folder /no/such/folder does not exist."),
        ({"GPX": "/"}, "GPX: / is a folder."),
        ({"GPX": "/x", "CALENDAR": "/x"}, "GPX and CALENDAR are the same file, /x. Give each its own."),
        ({"WALK_SPEED": 0}, "WALK_SPEED is 0. Give a number from 0.1 to 20."),
        ({"ARRIVE_BEFORE": -5}, "ARRIVE_BEFORE is -5. Give a number from 0 to 1440."),
        ({"TIME_ZONE": "Europe/Atlantis"}, "TIME_ZONE: There is no time zone"),
    ],
)
def test_refusals(refused, asked, sentence):
    assert sentence in refused(**asked)


def test_wrong_kinds_of_layers(refused, ground):
    assert "PARKING: 'points' holds LineString, not points" in refused(PARKING=ground["WALK"])
    assert "WALK: 'points' holds Point, not lines" in refused(WALK=ground["PARKING"])
    assert "PARKING_NAME: PARKING has no field 'nickname'" in refused(PARKING=ground["PARKING"], PARKING_NAME="nickname")


def test_a_folder_that_may_not_be_written_to(refused, tmp_path, monkeypatch):
    monkeypatch.setattr("skyalidade.adapters.sinks.os.access", lambda path, mode: False)  # as for anybody but root
    assert f"HTML: The folder {tmp_path} may not be written to." in refused()


def test_more_rows_than_asked_for(planned, told):
    with pytest.raises(QgsProcessingException, match=r"3 alignments are more than MAX_ROWS \(2\)"):
        planned(told(*[(LINE, {})] * 3), MAX_ROWS=2)


# whole or not at all


def test_a_file_that_fails_leaves_what_was_there(planned, told, tmp_path, monkeypatch):
    (tmp_path / "plan.html").write_text("before")

    def fail(*paths):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("skyalidade.adapters.files.os.replace", fail)
    with pytest.raises(QgsProcessingException, match=r"plan.html could not be written: No space left on device"):
        planned(told((LINE, {})))
    assert os.listdir(tmp_path) == ["plan.html"]
    assert (tmp_path / "plan.html").read_text() == "before"


def test_cancelled_before_anything_is_written(planned, told, tmp_path):
    nights = [(LINE, {"camera": f"C{i}", "camera_id": i}) for i in range(50)]
    plan = planned(told(*nights), cancel_at=20)
    assert "Cancelled: nothing was written." in plan.log
    assert list(tmp_path.iterdir()) == []


def test_only_what_is_asked_for(run, told, tmp_path):
    file = tmp_path / "only.ics"
    run("field_plan", {"ALIGNMENTS": told((LINE, {})), "CALENDAR": str(file)})
    assert [path.name for path in tmp_path.iterdir()] == ["only.ics"]


def test_on_the_command_line(qgis_process, run, layer, tmp_path):
    cameras, subjects = (layer([(wkt,)], kind="Point") for wkt in SOUTH_M)
    file = tmp_path / "alignments.gpkg"
    run("alignments", {"CAMERAS": cameras, "SUBJECTS": subjects, **NIGHTS, "OUTPUT": str(file)})
    names = {name: tmp_path / f"by_command_{file}" for name, file in FILES.items()}
    done = qgis_process("field_plan", f"ALIGNMENTS={file}", *(f"{name}={path}" for name, path in names.items()))
    assert done.returncode == 0, done.stderr
    assert all(Path(path).stat().st_size > 500 for path in names.values())
    assert "2 alignments on 2 sheets" in done.stdout
