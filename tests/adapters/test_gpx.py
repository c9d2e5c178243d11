"""GPX files: read by GDAL, and held against the rules of the GPX 1.1 schema.

The rules are written down from memory of gpx.xsd (topografix.com/GPX/1/1), which is not at hand: order and number of children, attributes,
the ranges of latitude, longitude and magnetic variation.
"""

import re
from xml.etree import ElementTree

import numpy as np
import pytest
from osgeo import ogr

from skyalidade.adapters.gpx import Track, Waypoint, gpx

NS = "{http://www.topografix.com/GPX/1/1}"
# element -> children in their order; a * may stand any number of times
WPT = [
    *("ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link*", "sym", "type", "fix", "sat", "hdop", "vdop", "pdop"),
    *("ageofdgpsdata", "dgpsid", "extensions"),
]
CHILDREN = {
    "gpx": ["metadata", "wpt*", "rte*", "trk*", "extensions"],
    "metadata": ["name", "desc", "author", "copyright", "link*", "time", "keywords", "bounds", "extensions"],
    "wpt": WPT,
    "trkpt": WPT,
    "trk": ["name", "cmt", "desc", "src", "link*", "number", "type", "extensions", "trkseg*"],
    "trkseg": ["trkpt*", "extensions"],
}
POINTS = ("wpt", "trkpt", "rtept")
DATE_TIME = re.compile(r"-?\d{4,}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)?")


def faults(content):
    """What in a file is against the schema."""
    root = ElementTree.fromstring(content)
    found = [] if root.tag == NS + "gpx" else [f"root {root.tag}"]
    if root.get("version") != "1.1" or not root.get("creator"):
        found.append("version or creator")
    for element in root.iter():
        if not element.tag.startswith(NS):
            found.append(f"foreign {element.tag}")
            continue
        name = element.tag[len(NS) :]
        found += _order(name, [child.tag[len(NS) :] for child in element])
        if name in POINTS:
            found += _point(element.attrib)
        if name == "magvar" and not 0.0 <= float(element.text) < 360.0:
            found.append(f"magvar {element.text}")
        if name == "time" and not DATE_TIME.fullmatch(element.text):
            found.append(f"time {element.text}")
    return found


def _order(name, children):
    rule = CHILDREN.get(name, [])
    names = [child.rstrip("*") for child in rule]
    unknown = [child for child in children if child not in names]
    if unknown:
        return [f"{name} holds {unknown[0]}"]
    places = [names.index(child) for child in children]
    repeated = [child for child in set(children) if children.count(child) > 1 and child + "*" not in rule]
    return [f"{name}: order"] * (places != sorted(places)) + [f"{name}: {child} twice" for child in repeated]


def _point(attributes):
    if set(attributes) != {"lat", "lon"}:
        return [f"attributes {sorted(attributes)}"]
    lat, lon = float(attributes["lat"]), float(attributes["lon"])
    inside = -90.0 <= lat <= 90.0 and -180.0 <= lon < 180.0
    is_decimal = all(re.fullmatch(r"-?\d+(\.\d+)?", text) for text in attributes.values())
    return [] if inside and is_decimal else [f"place {attributes}"]


@pytest.fixture
def content():
    waypoints = [
        Waypoint(180.0, -17.0, "Two <rocks> & 'one' ]]>", "line\nnext", "camera", -0.001),
        Waypoint(-0.00000001, 90.0, "灯台 מגדלור", "", "subject"),
        Waypoint(12.3456789, -0.00000001, "n" * 300, "bell\x07, half \ud800", "parking"),
    ]
    track = Track(
        "Way", "over", [(np.array([179.9, 180.0]), np.array([-17.0, -17.1])), (np.array([-180.0, -179.9]), np.array([-17.1, -17.2]))]
    )
    return gpx("Sky Alidade", "Plan", 1800000000.0, waypoints, [track])


def test_keeps_the_schema(content):
    assert faults(content) == []


def test_an_empty_plan_keeps_it_too():
    assert faults(gpx("Sky Alidade", "Plan", 0.0, [], [])) == []


@pytest.mark.parametrize(
    ("right", "wrong", "fault"),
    [
        ('lon="-180.0000000"', 'lon="180.0"', "place"),
        ('lat="90.0000000"', 'lat="90.1"', "place"),
        ("</name><desc>line\nnext</desc>", "</name><name>again</name>", "wpt: name twice"),
        ("<metadata>", "<trk/><metadata>", "gpx: order"),
        ('version="1.1"', 'version="1.0"', "version"),
        ("<type>camera</type>", "<kind>camera</kind>", "wpt holds kind"),
        ("<magvar>0.00", "<magvar>-0.01", "magvar"),
        ("T08:00:00Z", " 08:00", "time"),
    ],
)
def test_the_rules_see_a_fault(content, right, wrong, fault):
    text = content.decode()
    assert right in text
    assert any(found.startswith(fault) for found in faults(text.replace(right, wrong, 1).encode()))


def test_gdal_reads_it(content, tmp_path):
    file = tmp_path / "plan.gpx"
    file.write_bytes(content)
    source = ogr.Open(str(file))
    points = [(f.GetGeometryRef().GetX(), f.GetGeometryRef().GetY(), f["name"], f["type"]) for f in source.GetLayer("waypoints")]
    assert points[0] == (-180.0, -17.0, "Two <rocks> & 'one' ]]>", "camera")
    assert points[1] == (0.0, 90.0, "灯台 מגדלור", "subject")
    assert points[2][2] == "n" * 300
    (track,) = source.GetLayer("tracks")
    assert track["name"] == "Way"
    assert [track.GetGeometryRef().GetGeometryRef(part).GetPointCount() for part in range(2)] == [2, 2]
