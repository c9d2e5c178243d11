"""Calendar files, read by the package icalendar; folding and escaping by the words of RFC 5545 (3.1, 3.3.11)."""

from datetime import datetime, timezone

import icalendar
import pytest

from skyalidade.adapters.ics import Event, calendar, escaped, folded

EVENT = Event("a", 1812160800.4, 1812162000.6, "Moon over Stone", "Meadow", "One\nTwo", -33.0, 36.0)
MADE = 1800000000.0


def read(*events):
    content = calendar("-//Sky Alidade//Field plan//EN", "skyalidade", MADE, events)
    return content, icalendar.Calendar.from_ical(content).walk("VEVENT")


def test_an_event():
    content, (event,) = read(EVENT)
    assert event.decoded("DTSTART") == datetime(2027, 6, 5, 2, 0, 0, tzinfo=timezone.utc)
    assert event.decoded("DTEND") == datetime(2027, 6, 5, 2, 20, 1, tzinfo=timezone.utc)  # rounded to the second
    assert event.decoded("DTSTAMP") == datetime(2027, 1, 15, 8, 0, 0, tzinfo=timezone.utc)
    assert event["SUMMARY"] == "Moon over Stone"
    assert event["DESCRIPTION"] == "One\nTwo"
    assert (event["GEO"].latitude, event["GEO"].longitude) == (36.0, -33.0)
    assert b"DTSTART:20270605T020000Z\r\n" in content
    assert not event.errors


@pytest.mark.parametrize("end_utc_s", [None, EVENT.start_utc_s, EVENT.start_utc_s + 0.05])
def test_a_moment_has_no_end(end_utc_s):
    _, (event,) = read(EVENT._replace(end_utc_s=end_utc_s))
    assert "DTEND" not in event
    assert "DURATION" not in event


def test_uid_hangs_on_the_key_alone():
    (_, (one,)), (_, (same,)), (_, (other,)) = (
        read(EVENT),
        read(EVENT._replace(summary="x", start_utc_s=5.0)),
        read(EVENT._replace(key="b")),
    )
    assert one["UID"] == same["UID"] != other["UID"]


@pytest.mark.parametrize(
    "text",
    [
        "a, b; c \\ d",
        "ends with \\",
        "two\nlines",
        "n" * 300,
        "灯台と断崖" * 60,
        "מגדלור צפון " * 30,
        "🌌" * 50,
        "e\u0301" * 80,
        "BEGIN:VEVENT",
        'quote " colon :',
    ],
)
def test_any_text_comes_back(text):
    content, (event,) = read(EVENT._replace(summary=text, location=text, description=text))
    assert event["SUMMARY"] == event["LOCATION"] == event["DESCRIPTION"] == text.strip("\n")
    assert all(len(line) <= 75 for line in content.split(b"\r\n"))
    for line in content.split(b"\r\n"):
        line.decode("utf-8")  # no character is cut


def test_control_characters_and_halves_of_characters_are_left_out():
    content, (event,) = read(EVENT._replace(summary="bell\x07 tab\t \r\nhalf \ud800"))
    assert event["SUMMARY"] == "bell tab\t \nhalf ?"
    assert b"\x07" not in content


def test_line_ends():
    content, _ = read(EVENT)
    assert content.endswith(b"END:VCALENDAR\r\n")
    assert content.count(b"\n") == content.count(b"\r\n") == content.count(b"\r")


def test_folding_at_75_octets():
    assert folded("x" * 75) == b"x" * 75 + b"\r\n"
    assert folded("x" * 76) == b"x" * 75 + b"\r\n x\r\n"
    assert folded("x" * 74 + "é") == b"x" * 74 + b"\r\n " + "é".encode() + b"\r\n"
    assert folded("x" * (75 + 74 + 1)) == b"x" * 75 + b"\r\n " + b"x" * 74 + b"\r\n x\r\n"


def test_escaping():
    assert escaped("a,b;c\\d\ne") == r"a\,b\;c\\d\ne"
    assert escaped(r"\n is no line end") == r"\\n is no line end"  # icalendar 6.3.1 reads this wrongly, as a line end


def test_no_event_is_a_calendar():
    content, events = read()
    assert events == []
    assert content.startswith(b"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Sky Alidade//Field plan//EN\r\n")
