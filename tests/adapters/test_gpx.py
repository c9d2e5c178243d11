"""GPX files: read by GDAL, and held against the schema of GPX 1.1."""

from pathlib import Path

import numpy as np
import pytest
import xmlschema
from osgeo import ogr

from skyalidade.adapters.gpx import Track, Waypoint, gpx

SCHEMA = xmlschema.XMLSchema(str(Path(__file__).resolve().parents[1] / "authorities" / "gpx_1_1.xsd"))


def faults(content):
    """What in a file is against the schema."""
    return [error.reason for error in SCHEMA.iter_errors(content.decode())]


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
    ("right", "wrong"),
    [
        ('lon="-180.0000000"', 'lon="180.0"'),
        ('lat="90.0000000"', 'lat="90.1"'),
        ("</name><desc>line\nnext</desc>", "</name><name>again</name>"),
        ("<metadata>", "<trk/><metadata>"),
        ('version="1.1"', 'version="1.0"'),
        ("<type>camera</type>", "<kind>camera</kind>"),
        ("<magvar>0.00", "<magvar>-0.01"),
        ("T08:00:00Z", " 08:00"),
    ],
)
def test_the_schema_sees_a_fault(content, right, wrong):
    text = content.decode()
    assert right in text
    assert len(faults(text.replace(right, wrong, 1).encode())) >= 1


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
