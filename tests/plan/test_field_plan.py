"""Timetables: moments of Sun and Moon against PyEphem, arrival and leaving by closed forms, sheets and their order."""

from datetime import datetime, timedelta, timezone

import ephem
import numpy as np
import pytest

from skyalidade.plan.field_plan import field_plan, subject_places

TOL_S = 3.0  # PyEphem's Sun and Moon are good to about 1"; at latitude 60 they sink 0.1" in a hundredth of a second, 1" in 0.2 s
EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)


def utc_s(text):
    return datetime.fromisoformat(f"{text}+00:00").timestamp()


def rows(*given):
    """Alignments of (t_utc, minutes to either side or None, changes)."""
    base = {"lon_deg": -33.0, "lat_deg": 36.0, "stand": "A", "body": "core", "az_deg": 180.0, "alt_deg": 25.0}
    made = []
    for moment, half_min, changes in given:
        t = utc_s(moment)
        span = {"t_start": np.nan, "t_end": np.nan} if half_min is None else {"t_start": t - 60 * half_min, "t_end": t + 60 * half_min}
        made.append({**base, "t_utc": t, **span, **changes})
    names = made[0] if made else [*base, "t_utc", "t_start", "t_end"]
    texts = ("stand", "body")
    return {name: np.array([row[name] for row in made], dtype=object if name in texts else float) for name in names}


def plan(*given, walk_min=np.nan, arrive=45.0, pack_up=15.0, zone="UTC-02:00"):
    table = rows(*given)
    count = len(table["t_utc"])
    return field_plan(table, [zone], np.zeros(count, int), np.broadcast_to(walk_min, count).astype(float), arrive, pack_up)


def by_ephem(lon, lat, noon, kind):
    """First evening passage, last morning passage or Moon's rise and set after a noon, by PyEphem without its refraction."""
    observer = ephem.Observer()
    observer.lon, observer.lat, observer.pressure, observer.elevation = str(lon), str(lat), 0, 0
    observer.date = noon.replace("T", " ")
    stages = {"civil": "-6", "nautical": "-12", "astronomical": "-18"}
    name, _, side = kind.partition("_")
    if side:
        observer.horizon = stages[name]
        passage = observer.next_setting if side == "dusk" else observer.next_rising
        when = passage(ephem.Sun(), use_center=True)
    elif kind in ("sunset", "sunrise"):
        observer.horizon = "-0:50"  # of the centre: the almanacs' 34' and 16'
        when = (observer.next_setting if kind == "sunset" else observer.next_rising)(ephem.Sun(), use_center=True)
    else:
        observer.horizon = "-0:34"  # of the upper limb
        when = (observer.next_setting if kind == "moonset" else observer.next_rising)(ephem.Moon())
    return when.datetime().replace(tzinfo=timezone.utc).timestamp()


@pytest.mark.parametrize(
    ("lon", "lat", "night", "noon"),
    [
        (-33.0, 36.0, "2027-06-06T02:00:00", "2027-06-05T14:12:00"),
        (20.0, -24.0, "2027-08-10T20:00:00", "2027-08-10T10:40:00"),
        (-112.0, 37.0, "2028-03-20T09:00:00", "2028-03-19T19:28:00"),
        (179.95, -17.0, "2027-05-12T12:00:00", "2027-05-12T00:00:12"),
        (10.0, 60.0, "2026-01-20T22:00:00", "2026-01-20T11:20:00"),
    ],
)
def test_moments_by_pyephem(lon, lat, night, noon, record_property):
    sheets = plan((night, 10, {"lon_deg": lon, "lat_deg": lat})).sheets
    assert sheets["noon_utc_s"][0] == pytest.approx(utc_s(noon), abs=1.0)
    kinds = [*(f"{name}_{side}" for name in ("civil", "nautical", "astronomical") for side in ("dusk", "dawn")), "sunset", "sunrise"]
    for kind in [*kinds, "moonrise", "moonset"]:
        expected = by_ephem(lon, lat, noon, kind)
        if expected - utc_s(noon) < 86400.0:
            record_property("moments_pyephem", abs(float(sheets[kind][0]) - expected))
            assert sheets[kind][0] == pytest.approx(expected, abs=TOL_S), kind
        else:  # the Moon leaves out a day now and then
            assert np.isnan(sheets[kind][0]), kind


def test_a_night_in_order():
    found = plan(("2027-06-06T02:00:00", 15, {}), walk_min=40.0)
    kinds = found.events["kind"].tolist()
    assert kinds == [
        *("depart", "arrive", "sunset", "civil_dusk", "nautical_dusk", "moonset", "astronomical_dusk"),
        *("start", "closest", "end", "leave", "back"),
    ]
    assert (np.diff(found.events["t_utc_s"]) > 0).all()
    at = dict(zip(kinds, found.events["t_utc_s"]))
    assert at["sunset"] - at["arrive"] == 45 * 60
    assert at["arrive"] - at["depart"] == at["back"] - at["leave"] == 40 * 60
    assert at["leave"] - at["end"] == 15 * 60
    assert not found.sheets["dark_out"][0]
    assert found.sheets["dark_back"][0]
    assert str(found.sheets["night"][0]) == "2027-06-05"


def test_where_the_body_stands_at_begin_and_end():
    found = plan(("2027-06-06T02:00:00", 15, {}))
    az = {kind: found.events["az_deg"][found.events["kind"] == kind][0] for kind in ("start", "closest", "end")}
    # PyEphem's place of galactic (0, 0), J2000
    observer = ephem.Observer()
    observer.lon, observer.lat, observer.pressure, observer.elevation = "-33", "36", 0, 0
    core = ephem.FixedBody()
    core._ra, core._dec, core._epoch = np.radians(266.40499), np.radians(-28.93617), ephem.J2000
    for kind, minutes in (("start", -15), ("end", 15)):
        observer.date = (datetime(2027, 6, 6, 2, tzinfo=timezone.utc) + timedelta(minutes=minutes)).strftime("%Y/%m/%d %H:%M:%S")
        core.compute(observer)
        assert az[kind] == pytest.approx(np.degrees(core.az), abs=0.005)  # deg
    assert az["closest"] == 180.0  # the row's own


@pytest.mark.parametrize("body", ["star", "galactic", "comet", None])
def test_a_body_whose_place_is_not_known_has_no_azimuth_at_the_ends(body):
    found = plan(("2027-06-06T02:00:00", 15, {"body": body}))
    assert np.isnan(found.events["az_deg"][found.events["kind"] == "start"]).all()


def test_a_moment_has_neither_begin_nor_end():
    found = plan(("2027-06-06T02:00:00", None, {}))
    assert "start" not in found.events["kind"]
    assert "end" not in found.events["kind"]
    assert found.sheets["leave"][0] == utc_s("2027-06-06T02:15:00")


@pytest.mark.parametrize(
    ("moment", "changes", "dark_out"),
    [
        ("2027-06-05T19:00:00", {"body": "moon"}, False),  # in the afternoon, before sunset
        ("2027-06-06T09:00:00", {"body": "sun"}, False),  # the morning after
        ("2027-06-06T07:20:00", {"body": "sun"}, False),  # some minutes after sunrise at 06:55 UTC: arrival lies in civil twilight
        ("2027-06-20T22:00:00", {"lat_deg": 80.0, "body": "sun"}, False),  # the Sun never sets
        ("2026-12-20T22:00:00", {"lat_deg": 80.0, "body": "moon"}, True),  # nor rises
    ],
)
def test_without_a_sunset_before_it_arrival_goes_by_the_alignment(moment, changes, dark_out):
    found = plan((moment, 5, changes))
    assert found.sheets["sunless"][0]
    assert found.sheets["arrive"][0] == utc_s(moment) - (5 + 45) * 60
    assert found.sheets["dark_out"][0] == dark_out


def test_rows_of_a_night_and_place_share_a_sheet_in_the_order_of_nights():
    found = plan(
        ("2027-06-08T02:00:00", 5, {}),
        ("2027-06-06T02:00:00", 5, {"stand": "B"}),
        ("2027-06-06T01:00:00", 5, {}),
        ("2027-06-05T23:00:00", 5, {"body": "moon"}),
        ("2027-06-06T03:00:00", 90, {}),
    )
    assert found.sheet_of_row.tolist() == [2, 1, 0, 0, 0]
    assert [str(night) for night in found.sheets["night"]] == ["2027-06-05", "2027-06-05", "2027-06-07"]
    assert found.sheets["first"].tolist() == [3, 1, 0]
    assert found.sheets["last"].tolist() == [4, 1, 0]
    assert found.sheets["leave"][0] == utc_s("2027-06-06T04:45:00")
    assert found.events["sheet"].tolist() == sorted(found.events["sheet"].tolist())


def test_each_place_has_its_own_way_in_and_out():
    found = plan(("2027-06-06T01:00:00", 5, {}), ("2027-06-06T03:00:00", 5, {}), walk_min=[30.0, 50.0])
    sheets = found.sheets
    assert sheets["arrive"][0] - sheets["depart"][0] == 30 * 60
    assert sheets["back"][0] - sheets["leave"][0] == 50 * 60


def test_what_falls_outside_is_not_in_the_timetable():
    found = plan(("2027-06-06T09:00:00", 5, {"body": "sun"}))
    assert set(found.events["kind"]) == {"arrive", "moonrise", "start", "closest", "end", "leave"}
    assert np.isfinite(found.sheets["sunset"][0])


def test_no_row_is_a_plan_without_sheets():
    found = plan()
    assert found.sheet_of_row.size == found.events["sheet"].size == 0


def test_at_the_edges_of_the_ephemeris():
    from skyalidade.plan.span import ephemeris_span_utc_s

    first, last = (EPOCH + timedelta(seconds=int(edge)) for edge in ephemeris_span_utc_s())
    for moment in (first + timedelta(hours=1), last - timedelta(hours=1)):
        found = plan((moment.replace(tzinfo=None).isoformat(timespec="seconds"), None, {}))
        assert "arrive" in found.events["kind"]


def test_subjects_by_bearing_and_distance():
    table = {"lon_deg": np.array([179.99]), "lat_deg": np.array([-17.0]), "bearing_deg": np.array([90.0]), "dist_m": np.array([5000.0])}
    lon, lat = subject_places(table)
    assert lon[0] == pytest.approx(-179.963, abs=0.001)  # 5000 m are 0.047° there
    assert lat[0] == pytest.approx(-17.0, abs=1e-4)
