"""Whose clock holds: the zone of each place where TIME_ZONE is blank, days on which a clock changes, and places where it is in doubt."""

import math
import time
from datetime import datetime, timezone
from zoneinfo import ZoneInfo

import pytest
from qgis.core import QgsVectorLayer

# Arizona keeps standard time, Utah north of 37° daylight saving (IANA time zone database); the border here follows the parallel of 37°.
ARIZONA, UTAH, FAR_FROM_BOTH = (-112.5, 36.99), (-112.5, 37.01), (-112.5, 36.5)
LISBON, SYDNEY, OCEAN = (-9.14, 38.72), (151.2, -33.87), (-33.0, 36.0)
WARNING = "of a zone whose clock differs during this run"


def points(layer, *places):
    return layer([(f"PointZ({lon} {lat} 0)", f"site at {lat:g}") for lon, lat in places], fields=["title:string"])


@pytest.fixture
def positions(run, layer):
    """Sky positions of places from a time on."""

    def outcome(places, start, **parameters):
        return run("sky_positions", {"SITES": points(layer, *places), "SITE_NAME": "title", "START": start, **parameters})

    return outcome


@pytest.fixture
def alignments(run, layer):
    """Alignments of the Sun with a subject 1 km from each place toward the equator, where it stands near noon."""

    def outcome(places, first, last, **parameters):
        subjects = points(layer, *((lon, lat - math.copysign(0.009, lat)) for lon, lat in places))
        nights = {"FIRST_NIGHT": first, "LAST_NIGHT": last, "PAIRING": "closest", "BODIES": ["sun"], "CAMERA_NAME": "title"}
        return run("alignments", {"CAMERAS": points(layer, *places), "SUBJECTS": subjects, **nights, **parameters})

    return outcome


# the zone of a place


@pytest.mark.parametrize(
    ("place", "zone"),
    [
        (LISBON, "Europe/Lisbon"),
        (SYDNEY, "Australia/Sydney"),
        ((-157.4, 1.9), "Pacific/Kiritimati"),  # UTC+14
        ((-170.7, -14.3), "Pacific/Pago_Pago"),  # UTC-11
        ((178.4, -18.1), "Pacific/Fiji"),
        ((-179.0, -18.5), "Pacific/Fiji"),  # the same islands beyond the antimeridian
        (OCEAN, "UTC-02:00"),
        ((-179.0, 40.0), "UTC-12:00"),
        ((179.0, 40.0), "UTC+12:00"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_blank_zone_is_that_of_the_place(positions, place, zone):
    (row,) = positions([place], "2027-06-06T12:00Z").rows()
    assert row["tz"] == zone
    local = datetime.fromisoformat(row["t_local"][:19] + row["t_local"][20:])
    assert local == datetime(2027, 6, 6, 12, tzinfo=timezone.utc)
    if "/" in zone:
        assert local.utcoffset() == local.astimezone(ZoneInfo(zone)).utcoffset()


def test_sites_of_many_zones_at_once_and_the_log_names_them(positions):
    out = positions([LISBON, SYDNEY, LISBON, OCEAN], "2027-06-06T12:00Z")
    assert [row["tz"] for row in out.rows()] == ["Europe/Lisbon", "Australia/Sydney", "Europe/Lisbon", "UTC-02:00"]
    assert "Time zone of each place, as TIME_ZONE is blank: 2 in Europe/Lisbon, 1 in Australia/Sydney, 1 in UTC-02:00." in out.log


def test_a_layer_of_the_world_does_not_fill_the_log(positions):
    out = positions([(lon, 45.0) for lon in range(-180, 180, 5)], "2027-06-06T12:00Z")
    told = next(line for line in out.feedback.said if line.startswith("Time zone of each place"))
    assert len({row["tz"] for row in out.rows()}) > 20
    assert told.count(" in ") == 12
    assert " more" in told


def test_a_named_zone_holds_everywhere(positions):
    out = positions([LISBON, SYDNEY], "2027-06-06T12:00Z", TIME_ZONE="Asia/Kolkata")
    assert {row["t_local"] for row in out.rows()} == {"2027-06-06 17:30:00 +05:30"}


# clocks that change in the night (Lisbon: 2027-03-28 forward, 2027-10-31 back, both at 01:00 UTC; IANA time zone database)


@pytest.fixture(params=["UTC", "Europe/Lisbon"])
def computer(request, monkeypatch):
    """The zone of the computer."""
    monkeypatch.setenv("TZ", request.param)
    time.tzset()
    yield
    monkeypatch.undo()
    time.tzset()


def test_hour_that_the_computer_s_clock_skips_is_one_elsewhere(positions, computer):
    (row,) = positions([SYDNEY], "2027-03-28 01:30").rows()
    assert row["t_local"] == "2027-03-28 01:30:00 +11:00"


def test_hour_that_the_place_s_own_clock_skips_is_refused_during_the_run(positions, computer):
    with pytest.raises(Exception, match="2027-03-28 01:30:00 does not exist in Europe/Lisbon"):
        positions([LISBON], "2027-03-28 01:30")


def test_hour_that_occurs_twice_at_the_place_is_told(positions):
    out = positions([LISBON], "2027-10-31 01:30")
    (row,) = out.rows()
    assert row["t_local"] == "2027-10-31 01:30:00 +01:00"
    assert "2027-10-31 01:30:00 occurs twice in Europe/Lisbon" in out.log


@pytest.mark.parametrize(("start", "offsets"), [("2027-03-28T00:30Z", "+00:00 +01:00"), ("2027-10-31T00:30Z", "+01:00 +00:00")])
def test_a_night_across_the_change(positions, start, offsets):
    rows = positions([LISBON], start, END=f"{start[:10]}T01:30Z", STEP=60).rows()
    assert [row["t_local"][20:] for row in rows] == offsets.split()


def test_alignments_tell_the_clock_of_each_camera(alignments):
    """In March the Sun is due south some minutes after mean solar noon, so that each night begins with it."""
    rows = alignments([LISBON, SYDNEY], "2027-03-27", "2027-03-28").rows()
    assert {(row["tz"], row["night"].day(), row["t_local"][:10], row["t_local"][20:]) for row in rows} == {
        ("Europe/Lisbon", 27, "2027-03-27", "+00:00"),
        ("Europe/Lisbon", 28, "2027-03-28", "+01:00"),
        ("Australia/Sydney", 27, "2027-03-27", "+11:00"),
        ("Australia/Sydney", 28, "2027-03-28", "+11:00"),
    }


def test_the_night_is_named_by_the_date_of_the_place(alignments):
    """Kiritimati's noon is the noon of its own date, a day ahead of Hawaii's on nearly the same meridian."""
    rows = alignments([(-157.4, 1.9), (-157.8, 21.4)], "2027-12-01", "2027-12-01").rows()
    noon = {row["tz"]: row["t_utc"].toUTC().toString("yyyy-MM-dd") for row in rows}
    assert noon == {"Pacific/Kiritimati": "2027-12-01", "Pacific/Honolulu": "2027-12-02"}


# places near another clock


def test_a_place_near_another_clock_is_told_once_with_both_zones(positions):
    out = positions([ARIZONA, FAR_FROM_BOTH], "2027-06-06T04:00Z", BODIES=["core", "arch"], END="2027-06-06T08:00Z")
    told = [line for line in out.feedback.said if WARNING in line]
    assert told == [
        "1 of 2 points lie within 2 km of a zone whose clock differs during this run, or where two are in use: "
        "1 in America/Phoenix near America/Denver (site at 36.99). Ask which clock holds there; TIME_ZONE sets it."
    ]


def test_places_near_a_boundary_are_grouped(positions):
    some = [(-112.5 - i / 1000, 36.99) for i in range(5)]
    out = positions([*some, UTAH], "2027-06-06T04:00Z")
    (told,) = (line for line in out.feedback.said if WARNING in line)
    assert told.startswith("6 of 6 points")
    assert "5 in America/Phoenix near America/Denver (site at 36.99); 1 in America/Denver near America/Phoenix (site at 37.01)." in told


def test_many_names_are_cut_short(positions):
    out = positions([(-112.5, 36.99 + i / 1000) for i in range(5)], "2027-06-06T04:00Z")
    assert "(site at 36.99, site at 36.991, site at 36.992 and 2 more)" in out.log


def test_clocks_that_agree_during_the_run_are_no_matter(positions):
    assert WARNING not in positions([ARIZONA], "2027-01-06T04:00Z").log


def test_a_run_from_winter_into_summer_is_told(alignments):
    winter = alignments([ARIZONA], "2027-01-01", "2027-03-01")
    both = alignments([ARIZONA], "2027-01-01", "2027-03-20")
    assert WARNING not in winter.log
    assert both.log.count(WARNING) == 1


def test_a_named_zone_leaves_no_doubt(positions):
    assert WARNING not in positions([ARIZONA], "2027-06-06T04:00Z", TIME_ZONE="America/Phoenix").log


@pytest.mark.parametrize("computer", ["Asia/Kolkata", "America/Los_Angeles"])
def test_the_computer_s_zone_plays_no_part_at_a_place(qgis_process, tmp_path, computer):
    (tmp_path / "sites.geojson").write_text(
        '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {},'
        f' "geometry": {{"type": "Point", "coordinates": [{LISBON[0]}, {LISBON[1]}]}}}}]}}',
        encoding="utf-8",
    )
    given = [f"SITES={tmp_path}/sites.geojson", "START=2027-10-31 03:30", f"OUTPUT={tmp_path}/sky.gpkg"]
    done = qgis_process("sky_positions", *given, environment_too={"TZ": computer})
    assert done.returncode == 0, done.stderr
    (row,) = QgsVectorLayer(f"{tmp_path}/sky.gpkg", "sky", "ogr").getFeatures()
    assert (row["tz"], row["t_local"]) == ("Europe/Lisbon", "2027-10-31 03:30:00 +00:00")
    assert row["t_utc"].toString("yyyy-MM-dd HH:mm:ss") == "2027-10-31 03:30:00"
