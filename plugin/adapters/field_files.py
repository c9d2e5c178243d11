"""The field plan as waypoints with the walk, and as a calendar."""

import numpy as np

from ..names import PROVIDER_NAME
from ..plan.field_plan import subject_places
from . import field_words as words
from .field_page import walk_sentences
from .gpx import Track, Waypoint, gpx
from .ics import Event, calendar
from .translation import tr

PRODUCT, DOMAIN = f"-//{PROVIDER_NAME}//Field plan//EN", "skyalidade"
MOST_TOLD = 12  # alignments in the description of one waypoint: receivers show little


def gpx_of(planned, plan, on_foot, made_utc_s):
    """A GPX file: each camera, subject and parking once, each way once."""
    rows, told = planned.rows, words.Told(planned, plan)
    order = range(len(planned))
    subject_lon, subject_lat = subject_places(rows)
    declination = [None if np.isnan(value) else float(value) for value in rows["decl_deg"].tolist()]
    waypoints = []
    for (name, *_), own in _distinct((told.camera(row), *_near(rows["lon_deg"][row], rows["lat_deg"][row])) for row in order):
        place = float(rows["lon_deg"][own[0]]), float(rows["lat_deg"][own[0]])
        waypoints.append(Waypoint(*place, name, _alignments(told, own), "camera", declination[own[0]]))
    for (name, *_), own in _distinct((told.subject(row), *_near(subject_lon[row], subject_lat[row])) for row in order):
        waypoints.append(Waypoint(float(subject_lon[own[0]]), float(subject_lat[own[0]]), name, "", "subject"))
    for car in dict.fromkeys(on_foot.ways.parking[on_foot.ways.parking >= 0].tolist()):
        place = float(on_foot.parking_lon_deg[car]), float(on_foot.parking_lat_deg[car])
        waypoints.append(Waypoint(*place, on_foot.parking_name[car], "", "parking"))
    tracks = []
    for (walk, *_), own in _distinct((on_foot.name_of_walk(row), *_ends(on_foot.ways, row)) for row in order):
        segments = on_foot.segments(own[0])
        if segments:
            tracks.append(Track(walk, " ".join(walk_sentences(on_foot, own[0], str, str)), segments))
    return gpx(PROVIDER_NAME, tr("Field plan"), made_utc_s, waypoints, tracks)


def calendar_of(planned, plan, made_utc_s):
    """A calendar with an event for each alignment, in the order of time."""
    rows, told = planned.rows, words.Told(planned, plan)
    seen, events = {}, []
    for row in np.argsort(rows["t_utc"], kind="stable").tolist():
        lon, lat = float(rows["lon_deg"][row]), float(rows["lat_deg"][row])
        ids = (told.camera(row), f"{lon:.5f}", f"{lat:.5f}", told.subject(row), str(rows["body"][row]), str(told.night[row]))
        seen[ids] = seen.get(ids, 0) + 1
        is_moment = told.is_moment(row)
        events.append(
            Event(
                key="\n".join((*ids, str(seen[ids]))),
                start_utc_s=float(rows["t_utc" if is_moment else "t_start"][row]),
                end_utc_s=None if is_moment else float(rows["t_end"][row]),
                summary=tr("{body} over {subject}").format(body=told.body(row), subject=told.subject(row)),
                location=f"{told.camera(row)} ({words.coordinates(lon, lat)})",
                description="\n".join(_described(told, row, rows["body"][row])),
                lon_deg=lon,
                lat_deg=lat,
            )
        )
    return calendar(PRODUCT, DOMAIN, made_utc_s, events)


def _described(told, row, body):
    """What an event says beneath its title."""
    yield told.when(row)
    yield tr("Subject: {aim}").format(aim=told.aim(row))
    yield tr("{body}: {where}").format(body=told.body(row), where=told.where(row))
    yield from told.warnings(row)
    yield from words.cautions([body], False)


def _alignments(told, rows):
    """What the waypoint of a camera says: each subject, and when what stands over it."""
    lines, subject = [], None
    for row in rows[:MOST_TOLD]:
        if told.subject(row) != subject:
            subject = told.subject(row)
            lines.append(f"{subject}: {told.aim(row)}")
        lines.append(f"{told.body(row)}: {told.when(row)}")
    if len(rows) > MOST_TOLD:
        lines.append(tr("and {n:,} more").format(n=len(rows) - MOST_TOLD))
    return "\n".join(lines)


def _distinct(keys):
    """Keys in the order in which they are first met, each with the rows that have it."""
    found = {}
    for row, key in enumerate(keys):
        found.setdefault(key, []).append(row)
    return found.items()


def _near(lon_deg, lat_deg):
    """A place to a metre, so that the same one is met again."""
    return round(float(lon_deg), 5), round(float(lat_deg), 5)


def _ends(ways, row):
    """What tells one way from another."""
    return int(ways.walk[row]), int(ways.parking[row]), round(float(np.nan_to_num(ways.to_m[row])))
