"""GPX 1.1 files: waypoints and tracks, for phones and hand-held receivers."""

import re
from datetime import datetime, timedelta, timezone
from typing import NamedTuple, Optional
from xml.etree import ElementTree  # nosec B405 # writes XML, reads none

NAMESPACE = "http://www.topografix.com/GPX/1/1"
SCHEMA = "http://www.topografix.com/GPX/1/1/gpx.xsd"
INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"
NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # XML 1.0, production 2
EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)


class Waypoint(NamedTuple):
    """A place. `declination_deg` is from true to magnetic north, east positive, or None."""

    lon_deg: float
    lat_deg: float
    name: str
    description: str
    kind: str
    declination_deg: Optional[float] = None


class Track(NamedTuple):
    """A way; `segments` are pairs of arrays of longitudes and latitudes. [deg]."""

    name: str
    description: str
    segments: list


def gpx(creator, title, made_utc_s, waypoints, tracks):
    """A GPX 1.1 file.

    Parameters
    ----------
    creator, title : str
    made_utc_s : float
        When the file is made. [s of UTC]
    waypoints : sequence of Waypoint
    tracks : sequence of Track

    Returns
    -------
    bytes
    """
    ElementTree.register_namespace("", NAMESPACE)
    ElementTree.register_namespace("xsi", INSTANCE)
    root = ElementTree.Element(
        _tag("gpx"), {"version": "1.1", "creator": creator, f"{{{INSTANCE}}}schemaLocation": f"{NAMESPACE} {SCHEMA}"}
    )
    metadata = ElementTree.SubElement(root, _tag("metadata"))
    _add(metadata, "name", title)
    _add(metadata, "time", (EPOCH + timedelta(seconds=int(made_utc_s))).strftime("%Y-%m-%dT%H:%M:%SZ"))
    for waypoint in waypoints:
        point = ElementTree.SubElement(root, _tag("wpt"), _place(waypoint.lon_deg, waypoint.lat_deg))
        if waypoint.declination_deg is not None:
            _add(point, "magvar", f"{round(waypoint.declination_deg, 2) % 360.0:.2f}")
        _add(point, "name", waypoint.name)
        _add(point, "desc", waypoint.description)
        _add(point, "type", waypoint.kind)
    for track in tracks:
        line = ElementTree.SubElement(root, _tag("trk"))
        _add(line, "name", track.name)
        _add(line, "desc", track.description)
        for lon_deg, lat_deg in track.segments:
            segment = ElementTree.SubElement(line, _tag("trkseg"))
            for place in zip(lon_deg.tolist(), lat_deg.tolist()):
                ElementTree.SubElement(segment, _tag("trkpt"), _place(*place))
    return ElementTree.tostring(root, encoding="utf-8", xml_declaration=True)


def _tag(name):
    return f"{{{NAMESPACE}}}{name}"


def _add(parent, name, text):
    """A child with a text, unless that is empty."""
    if text:
        ElementTree.SubElement(parent, _tag(name)).text = NOT_IN_XML.sub("\ufffd", text)


def _place(lon_deg, lat_deg):
    """Attributes of a point, to a centimetre; the schema wants -180 <= lon < 180."""
    lon_deg = (round(lon_deg, 7) + 180.0) % 360.0 - 180.0
    return {"lat": f"{lat_deg:.7f}", "lon": f"{lon_deg:.7f}"}
