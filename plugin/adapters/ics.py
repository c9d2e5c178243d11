"""Calendar files: iCalendar, RFC 5545."""

import hashlib
import re
from datetime import datetime, timedelta, timezone
from typing import NamedTuple, Optional

LINE_OCTETS = 75  # RFC 5545, 3.1: longer lines are folded
CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")  # RFC 5545, 3.3.11: no control characters in texts
EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)


class Event(NamedTuple):
    """Something to be there for; `end_utc_s` is None for a mere moment. `key` names it alike whenever the file is made again."""

    key: str
    start_utc_s: float
    end_utc_s: Optional[float]
    summary: str
    location: str
    description: str
    lon_deg: float
    lat_deg: float


def calendar(product, domain, made_utc_s, events):
    """An iCalendar file.

    Parameters
    ----------
    product : str
        What makes it, such as `-//Name//Part//EN`.
    domain : str
        Behind the @ of each UID.
    made_utc_s : float
        When it is made. [s of UTC]
    events : sequence of Event

    Returns
    -------
    bytes
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{product}", "CALSCALE:GREGORIAN"]
    for event in events:
        lines += [
            "BEGIN:VEVENT",
            f"UID:{hashlib.sha256(event.key.encode('utf-8', 'replace')).hexdigest()[:32]}@{domain}",
            f"DTSTAMP:{_utc(made_utc_s)}",
            f"DTSTART:{_utc(event.start_utc_s)}",
            *_end(event),
            f"SUMMARY:{escaped(event.summary)}",
            f"LOCATION:{escaped(event.location)}",
            f"GEO:{event.lat_deg:.6f};{event.lon_deg:.6f}",
            f"DESCRIPTION:{escaped(event.description)}",
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return b"".join(folded(line) for line in lines)


def _end(event):
    """The line with the end; none where it is that of the start, which RFC 5545 (3.6.1) would not have."""
    if event.end_utc_s is not None and _utc(event.end_utc_s) != _utc(event.start_utc_s):
        yield f"DTEND:{_utc(event.end_utc_s)}"


def escaped(text):
    """A text as the value of a property."""
    text = CONTROL.sub("", text.replace("\r\n", "\n").replace("\r", "\n"))
    for letter in "\\;,":
        text = text.replace(letter, "\\" + letter)
    return text.replace("\n", "\\n")


def folded(line):
    """A content line with its end, cut between characters into lines of 75 octets at most."""
    octets, pieces, room = line.encode("utf-8", "replace"), [], LINE_OCTETS
    while len(octets) > room:
        cut = room
        while octets[cut] & 0xC0 == 0x80:  # within a character
            cut -= 1
        pieces.append(octets[:cut])
        octets, room = octets[cut:], LINE_OCTETS - 1  # the blank that begins a folded line counts
    return b"\r\n ".join([*pieces, octets]) + b"\r\n"


def _utc(t_utc_s):
    return (EPOCH + timedelta(seconds=int(t_utc_s + 0.5))).strftime("%Y%m%dT%H%M%SZ")
