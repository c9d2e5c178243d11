"""What a hostile layer or a hostile path cannot do: write markup, write elsewhere, or have anything fetched."""

import os
import socket
import sys
import threading
import time
import urllib.request
import zipfile
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

import elevation_models
import icalendar
import pytest
from osgeo import gdal
from qgis.core import (
    QgsBlockingNetworkRequest,
    QgsFeature,
    QgsField,
    QgsNetworkAccessManager,
    QgsProcessingException,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterFolderDestination,
    QgsProcessingParameterRasterDestination,
    QgsProcessingParameterVectorDestination,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QCoreApplication, QUrl, QVariant
from qgis.PyQt.QtNetwork import QNetworkRequest

from skyalidade.provider import ALGORITHMS


def can_be_held(name):
    """Whether a feature takes a name from Python: newer bindings refuse half a letter, and tell "?" where a layer holds one."""
    try:
        QgsFeature().setAttributes([name])
    except SystemError:
        return False
    return True


HOSTILE = [
    "<script>alert(1)</script><img src=x onerror=alert(1)>",
    "\"' onload='alert(1)' --></style></title><b>",
    "../../../escaped",
    "/etc/escaped",
    "..\\..\\C:\\escaped",
    "CON",
    "a\x00b\x1b[31m\x85\u2028\ufffe",
    "{0}{name.__class__}%s%n$x$\\frac{",
    "x\r\nEND:VEVENT\r\nBEGIN:VALARM\r\nATTACH;VALUE=URI:http://example.org/x\r\n",
    "]]></name><extensions>&xxe; <!-- ",
    "long " * 60,
    "\u202eרשע <b>",
    "[% @project_path %] [% 1/0 %]",
    "=cmd|' /C calc'!A0",
    *filter(can_be_held, ["half a letter \ud800"]),
]
ALLOWED_TAGS = {
    *("html", "head", "meta", "title", "style", "body", "label", "input", "section", "header", "div", "h1", "h2", "p", "bdi", "small"),
    *("table", "thead", "tbody", "tr", "th", "td", "ul", "li", "br", "a", "span", "img", "svg", "circle", "line", "text", "path", "rect"),
}
PATIENCE_S = 300.0  # a watch that sees nothing takes as long
NIGHTS = {"FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-07"}
TIMES = {"START": "2027-06-06T02:00Z", "END": "2027-06-06T02:30Z", "STEP": 30}
# what an algorithm is asked besides its layers, to have results within seconds
ASKED = {
    "alignments": {**NIGHTS, "BODIES": ["core", "sun", "moon"], "AZ_TOLERANCE": 40},
    "night_windows": NIGHTS,
    "sky_positions": TIMES,
    "shadow_track": {**TIMES, "BODY": "moon"},
    "skyline_view": {**TIMES, "END": None, "PIXELS_W": 600},
    "sky_exposure": {**NIGHTS, "SKY_STEP": 10},
    "standpoints": {"BEARING": 180, "AZ_TOLERANCE": 30},
}


# scenes


def named(names, places):
    return [(f"Point ({x} {y})", name, 1000.0) for name, (x, y) in zip(names, places)]


@pytest.fixture
def ground(tmp_path):
    heights, transform = elevation_models.around(lambda east, north: 100.0 + 0.01 * east + 0.0 * north, half_m=3000.0, cell_m=30.0)
    return elevation_models.write(tmp_path / "ground.tif", heights, transform)


@pytest.fixture
def layers(layer, ground):
    """Everything an algorithm may ask for, by the parameter's name; every name in it is hostile."""

    def made(names=HOSTILE):
        east, north = elevation_models.EAST, elevation_models.NORTH
        row = [(east + 60.0 * i, north) for i in range(len(names))]
        fields = ("name:string(1000)", "people:double")
        points = layer(named(names, row), "EPSG:32625", fields, "Point")
        subjects = layer(named(names[:3], [(x, y - 900.0) for x, y in row]), "EPSG:32625", fields, "Point")
        lines = layer(
            [(f"LineString ({x} {y - 30}, {x + 20} {y + 400})", name, 0.0) for name, (x, y) in zip(names, row)],
            "EPSG:32625",
            fields,
            "LineString",
        )
        return {
            **dict.fromkeys(("CAMERAS", "SITES", "PARKING", "TOWNS"), points),
            **dict.fromkeys(("PATHS", "WALK"), lines),
            "SUBJECTS": subjects,
            **{f"{name}_NAME": "name" for name in ("CAMERA", "SITE", "PARKING", "TOWN", "SUBJECT", "PATH", "WALK")},
            "TOWN_POPULATION": "people",
            "DEM": ground,
        }

    return made


@pytest.fixture
def asked(algorithm, layers, run):
    """The parameters of an algorithm, with hostile layers; results go where `outputs` says."""

    def parameters(name, outputs, names=HOSTILE):
        wanted = algorithm(name)
        definitions = {definition.name(): definition for definition in wanted.parameterDefinitions()}
        known = layers(names)
        if "ALIGNMENTS" in definitions:
            found = run(
                "alignments", {key: known[key] for key in ("CAMERAS", "SUBJECTS", "CAMERA_NAME", "SUBJECT_NAME")} | ASKED["alignments"]
            )
            known["ALIGNMENTS"] = kept.setdefault(name, found).layers["OUTPUT"]
        if "NIGHTS" in definitions:
            found = run("night_windows", {key: known[key] for key in ("SITES", "SITE_NAME")} | NIGHTS)
            known["NIGHTS"] = kept.setdefault(name, found).layers["OUTPUT"]
        for definition in wanted.destinationParameterDefinitions():
            if isinstance(definition, QgsProcessingParameterFolderDestination):
                known[definition.name()] = str(outputs)
            elif isinstance(definition, (QgsProcessingParameterFileDestination, QgsProcessingParameterRasterDestination)):
                known[definition.name()] = str(outputs / f"{definition.name().lower()}.{definition.defaultFileExtension()}")
            else:
                known[definition.name()] = "memory:"
        return {key: value for key, value in known.items() if key in definitions} | ASKED.get(name, {})

    kept = {}
    return parameters


def algorithms():
    return [each.ID for each in ALGORITHMS]


def files_under(folder):
    return {path for path in Path(folder).rglob("*") if path.is_file()}


class Markup(HTMLParser):
    """Tags, attributes and text of a page, style left out."""

    def __init__(self, page):
        super().__init__(convert_charrefs=True)
        self.tags, self.attributes, self.text, self._style = set(), [], [], False
        self.feed(page.read_text(encoding="utf-8"))

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes += attrs
        self._style = tag == "style"

    def handle_data(self, data):
        if self._style:
            self.style = data
            self._style = False
        else:
            self.text.append(data)


# names


@pytest.mark.parametrize("name", ["field_plan", "skyline_view", "season_chart"])
def test_names_are_text_in_every_file(run, asked, tmp_path, name):
    outputs = tmp_path / "deep" / "er" / "out"
    outputs.mkdir(parents=True)
    parameters = asked(name, outputs)
    before = files_under(tmp_path)
    run(name, parameters)
    made = files_under(tmp_path) - before
    assert made
    assert {path.parent for path in made} == {outputs}
    assert all(path.name.isascii() and len(path.name) < 120 and path.name[0].isalpha() | path.name[0].isdigit() for path in made)
    for path in made:
        {".html": page_is_harmless, ".gpx": xml_is_harmless, ".svg": xml_is_harmless, ".ics": calendar_is_harmless}.get(
            path.suffix, lambda path: path.stat().st_size > 0 or pytest.fail(f"{path} is empty")
        )(path)


def page_is_harmless(path):
    page = Markup(path)
    assert page.tags <= ALLOWED_TAGS
    assert not [attribute for attribute, _ in page.attributes if attribute.startswith("on")]
    own = {other.name for other in path.parent.iterdir()}
    for attribute, value in page.attributes:
        if attribute in ("src", "href"):
            assert value in own or value.startswith("#")
    assert "http" not in page.style
    assert "url(" not in page.style
    text = " ".join("".join(page.text).split())
    for name in HOSTILE[:3]:
        assert " ".join(name.split()) in text


def xml_is_harmless(path):
    root = ElementTree.parse(path).getroot()  # which refuses what is not well-formed
    for element in root.iter():
        local = element.tag.split("}")[-1]
        assert local not in ("script", "foreignObject", "extensions", "a", "link", "animate", "set")
        for attribute, value in element.attrib.items():
            assert not attribute.lower().startswith("on")
            assert "javascript:" not in value
            if attribute.endswith("}href"):
                assert value.startswith(("#", "data:image/png;base64,"))
    if path.suffix == ".gpx":
        told = [element.text for element in root.iter() if element.tag.endswith("}name")]
        assert HOSTILE[0] in told
        assert HOSTILE[9].strip() in told


def calendar_is_harmless(path):
    read = icalendar.Calendar.from_ical(path.read_bytes())
    assert {part.name for part in read.walk()} == {"VCALENDAR", "VEVENT"}
    properties = {line.split(b":")[0].split(b";")[0] for line in path.read_bytes().replace(b"\r\n ", b"").split(b"\r\n")}
    known = "BEGIN END VERSION PRODID CALSCALE UID DTSTAMP DTSTART DTEND SUMMARY LOCATION GEO DESCRIPTION"
    assert properties <= {*known.encode().split(), b""}
    assert any("<script>alert(1)</script>" in str(event["LOCATION"]) for event in read.walk("VEVENT"))


@pytest.mark.parametrize(
    "name", ["sightlines", "alignments", "night_windows", "sky_positions", "standpoints", "terrain_horizon", "framing"]
)
def test_names_go_into_tables_as_they_are(run, asked, tmp_path, name):
    parameters = asked(name, tmp_path)
    outcome = run(name, parameters)
    output = "POINTS" if name == "standpoints" else "PROFILE" if name == "terrain_horizon" else "OUTPUT"
    column = "path" if name == "standpoints" else "site" if "SITES" in parameters else "camera"
    told = {row[column] for row in outcome.rows(output)}
    assert {text.strip() for text in HOSTILE if "\x00" not in text} <= told


@pytest.mark.parametrize("ending", ["kml", "gml", "xlsx", "ods"])
def test_names_are_text_in_layers_of_xml(run, asked, tmp_path, ending):
    """GDAL puts a text with markup into a section that "]]>" ends, and lets characters pass that XML has not."""
    link = "<x>]]></SimpleData></SchemaData></ExtendedData></Placemark><NetworkLink><Link><href>http://example.org/</href></Link></NetworkLink>"
    names = [*HOSTILE, "\x01\x02\x1f", "\ufffe\uffff", link]
    parameters = {**asked("sky_positions", tmp_path, names), "OUTPUT": str(tmp_path / f"out.{ending}")}
    run("sky_positions", parameters)
    files = {f"out.{ending}": (tmp_path / f"out.{ending}").read_bytes()}
    if ending in ("xlsx", "ods"):
        with zipfile.ZipFile(tmp_path / f"out.{ending}") as packed:
            files = {name: packed.read(name) for name in packed.namelist() if name.endswith(".xml")}
    elements = [element for content in files.values() for element in ElementTree.fromstring(content).iter()]
    assert not [element for element in elements if element.tag.endswith("}NetworkLink")]
    assert HOSTILE[0] in {element.text for element in elements}  # not every GDAL reads fields of KML
    assert QgsVectorLayer(str(tmp_path / f"out.{ending}"), "found", "ogr").featureCount() == 2 * len(names)


@pytest.mark.parametrize("ending", ["kml", "gml"])
@pytest.mark.parametrize("name", ['"/><NetworkLink/><a b="', "a<b", "c\x01d", "1st", "löss & sand"])
def test_names_of_kept_fields_are_names_in_layers_of_xml(run, layer, tmp_path, ending, name):
    """GDAL writes them as they are."""
    sites = layer([("Point(-33 36)",)])
    sites.dataProvider().addAttributes([QgsField(name, QVariant.Type.String)])
    sites.updateFields()
    output = tmp_path / f"out.{ending}"
    out = run("sky_positions", {"SITES": sites, **TIMES, "END": None, "KEEP_FIELDS": [name], "OUTPUT": str(output)})
    assert f"{name} is " in out.log
    assert not [element for element in ElementTree.parse(output).iter() if element.tag.endswith("NetworkLink")]
    assert QgsVectorLayer(str(output), "found", "ogr").featureCount() == 1


def test_a_format_that_cannot_hold_the_fields_is_told_by_its_own_name(run, asked, tmp_path):
    with pytest.raises(QgsProcessingException, match=f"Could not create layer {tmp_path}/out.gpx"):
        run("sky_positions", {**asked("sky_positions", tmp_path, ["one"]), "OUTPUT": str(tmp_path / "out.gpx")})
    assert not list(tmp_path.glob(".skyalidade*"))


# paths


PATHS = [
    "../../escaped",
    "a\x00b",
    "n" * 300,
    "~root/escaped",
    "CON",
    "$HOME/x",
    "`id`",
    "x; touch y",
    "file:///escaped",
    "http://127.0.0.1:9/x",
    "half a letter \ud800",
    "two\nlines",
]


@pytest.mark.parametrize("path", PATHS)
@pytest.mark.parametrize("name", ["sightlines", "field_plan", "season_chart"])
def test_only_the_named_path_is_written(algorithm, run, asked, context, tmp_path, monkeypatch, name, path):
    """A path is that path and nothing else: no variable, home or command in it is followed; what cannot be a path is refused."""
    inside = tmp_path / "one" / "two" / "three"
    inside.mkdir(parents=True)
    monkeypatch.chdir(inside)
    parameters, wanted = asked(name, inside, HOSTILE[:2]), algorithm(name)
    for definition in wanted.destinationParameterDefinitions():
        if not isinstance(definition, QgsProcessingParameterVectorDestination) and not parameters[definition.name()].startswith("memory"):
            extension = "" if isinstance(definition, QgsProcessingParameterFolderDestination) else f".{definition.defaultFileExtension()}"
            parameters[definition.name()] = path + extension
    if name == "sightlines":
        parameters["OUTPUT"] = path + ".gpkg"
    before = files_under(tmp_path)
    taken, sentence = wanted.checkParameterValues(parameters, context)
    if not taken:
        assert sentence
        assert "Traceback" not in sentence
        assert files_under(tmp_path) == before
        return
    refused = ""
    try:
        run(name, parameters)
    except QgsProcessingException as sentence:  # QGIS's own, of a scheme that it does not know
        refused = str(sentence)
    assert "Traceback" not in refused
    named_folder = Path(os.path.normpath(inside / path))
    made = files_under(tmp_path) - before
    assert made or refused
    assert all(file.parent == named_folder or str(file).startswith(str(named_folder)) for file in made)


@pytest.mark.parametrize("name", ["season_chart", "skyline_view"])
def test_a_link_in_the_folder_is_not_written_through(run, asked, tmp_path, name):
    """A picture takes the place of a link that bears its name; what the link points to stays."""
    outputs, precious = tmp_path / "out", tmp_path / "precious"
    outputs.mkdir()
    parameters = asked(name, outputs, HOSTILE[:1])
    run(name, parameters)
    precious.write_text("mine")
    made = sorted(path.name for path in outputs.iterdir())
    for file in made:
        (outputs / file).unlink()
        (outputs / file).symlink_to(precious)
    run(name, parameters)
    assert precious.read_text() == "mine"
    assert sorted(path.name for path in outputs.iterdir()) == made


# the network


WATCHED = {"on": False, "seen": []}


def _audit(event, arguments):
    if WATCHED["on"] and event in ("socket.connect", "socket.getaddrinfo", "socket.gethostbyname", "urllib.Request", "http.client.connect"):
        WATCHED["seen"].append((event, str(arguments)))


sys.addaudithook(_audit)


@pytest.fixture
def nothing_fetched(monkeypatch):
    """Sees Python's sockets, Qt's requests, and, by a proxy that all of libcurl would take, those of GDAL and PROJ."""
    WATCHED["seen"].clear()
    trap = socket.create_server(("127.0.0.1", 0))
    trap.settimeout(0.2)
    open_trap = threading.Event()
    open_trap.set()

    def wait():
        while open_trap.is_set():
            try:
                trap.accept()
                WATCHED["seen"].append(("proxy", "libcurl"))
            except OSError:
                continue

    waiting = threading.Thread(target=wait, daemon=True)
    waiting.start()
    for variable in ("http_proxy", "https_proxy", "HTTPS_PROXY", "ALL_PROXY"):
        monkeypatch.setenv(variable, f"http://127.0.0.1:{trap.getsockname()[1]}")
    manager = QgsNetworkAccessManager.instance()

    def seen(request):
        WATCHED["seen"].append(("Qt", request.request().url().toString()))

    manager.requestAboutToBeCreated["QgsNetworkRequestParameters"].connect(seen)
    WATCHED["on"] = True
    yield WATCHED["seen"]
    WATCHED["on"] = False
    open_trap.clear()
    waiting.join()
    trap.close()
    manager.requestAboutToBeCreated["QgsNetworkRequestParameters"].disconnect(seen)


@pytest.mark.parametrize("name", algorithms())
def test_nothing_is_fetched(run, asked, algorithm, context, tmp_path, nothing_fetched, name):
    parameters = asked(name, tmp_path, ["one", "two"])
    run(name, parameters)
    assert nothing_fetched == []


def test_what_is_fetched_would_be_seen(nothing_fetched):
    """The three watches themselves: Python, GDAL's libcurl, Qt."""
    with pytest.raises(OSError, match="."):  # refused, or cut off by the proxy
        urllib.request.urlopen("http://127.0.0.1:1/", timeout=1)
    gdal.VSIStatL("/vsicurl/http://example.invalid/x.tif")
    QgsBlockingNetworkRequest().get(QNetworkRequest(QUrl("http://127.0.0.1:1/")))
    end_s = time.monotonic() + PATIENCE_S
    while not {"socket.connect", "proxy", "Qt"} <= {watch for watch, _ in nothing_fetched}:
        assert time.monotonic() < end_s, nothing_fetched
        QCoreApplication.processEvents()  # the requests of other threads are told by the event loop
