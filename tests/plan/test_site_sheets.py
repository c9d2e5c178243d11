"""Rows gathered by sheet, and the places of a sheet."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from skyalidade.plan.site_sheets import lines_of, places_of, sheets_of, standing_of, with_parking

SAME_M = 1e-6  # PROJ and GeographicLib agree to nanometres


def texts(*values):
    column = np.empty(len(values), dtype=object)
    column[:] = values
    return column


def lines(*rows, key=None):
    """A table of lines due south from points at 36°N: (camera, subject, longitude)."""
    count = len(rows)
    table = {
        "camera": texts(*(row[0] for row in rows)),
        "subject": texts(*(row[1] for row in rows)),
        "lon_deg": np.array([row[2] for row in rows], dtype=float),
        "lat_deg": np.full(count, 36.0),
        "bearing_deg": np.full(count, 180.0),
        "mag_deg": np.full(count, 189.0),
        "dist_m": np.full(count, 1000.0),
        "sight": texts(*["clear"] * count),
        "allowed": texts(*[None] * count),
    }
    return table if key is None else {**table, "key": texts(*key)}


def points(column, *names, lon=0.0, key=None):
    table = {column: texts(*names), "lon_deg": lon + np.arange(len(names), dtype=float), "lat_deg": np.full(len(names), 36.0)}
    return table if key is None else {**table, "key": texts(*key)}


def rows_of(sheets, table):
    return {sheet.key: sheet.rows[table].tolist() for sheet in sheets}


def test_cameras_say_which_sheets_there_are():
    tables = {
        "cameras": points("camera", "A", "B", key=("A", "B")),
        "sightlines": lines(("B", "x", 1), ("A", "x", 0), ("C", "x", 2), key=("B", "A", "C")),
        "alignments": lines(("A", "y", 0), key=("A",)),
        "subjects": points("subject", "x", "y", "z"),
    }
    sheets, unused = sheets_of(tables)
    assert [sheet.key for sheet in sheets] == ["A", "B"]
    assert rows_of(sheets, "sightlines") == {"A": [1], "B": [0]}
    assert rows_of(sheets, "alignments") == {"A": [0], "B": []}
    assert rows_of(sheets, "subjects") == {"A": [0, 1], "B": [0]}
    assert unused == {"sightlines": 1}


def test_tables_without_the_field_follow_the_cameras():
    tables = {
        "alignments": lines(("A", "x", 0), ("B", "x", 1), ("A", "y", 0), key=("2027-06-05", "2027-06-06", "2027-06-06")),
        "sightlines": lines(("A", "x", 0), ("B", "x", 1), ("C", "x", 2)),
        "cameras": points("camera", "A", "B", "C"),
    }
    sheets, unused = sheets_of(tables)
    assert rows_of(sheets, "cameras") == {"2027-06-05": [0], "2027-06-06": [0, 1]}
    assert rows_of(sheets, "sightlines") == {"2027-06-05": [0], "2027-06-06": [0, 1]}
    assert unused == {"cameras": 1, "sightlines": 1}


@pytest.mark.parametrize("key", [None, (None, None)])
def test_no_value_at_all_is_one_sheet_with_everything(key):
    tables = {"cameras": points("camera", "A", "B", key=key), "subjects": points("subject", "x", "y")}
    sheets, unused = sheets_of(tables)
    assert [sheet.key for sheet in sheets] == [None]
    assert rows_of(sheets, "cameras") == {None: [0, 1]}
    assert rows_of(sheets, "subjects") == {None: [0, 1]}
    assert unused == {}


def test_blank_values_are_on_no_sheet():
    sheets, unused = sheets_of({"cameras": points("camera", "A", "B", key=("a", None))})
    assert rows_of(sheets, "cameras") == {"a": [0]}
    assert unused == {"cameras": 1}


def test_standpoints_whose_values_are_no_sheets_are_on_every_sheet():
    tables = {"cameras": points("camera", "A", "B", key=("A", "B")), "standpoints": lines(("p", "x", 0), ("q", "x", 1), key=("p", "q"))}
    assert rows_of(sheets_of(tables)[0], "standpoints") == {"A": [0, 1], "B": [0, 1]}


def test_nothing_is_one_empty_sheet():
    (sheet,), unused = sheets_of({})
    assert (sheet.rows, unused) == ({}, {})
    own = lines_of({}, sheet.rows)
    assert len(own["camera"]) == len(places_of({}, sheet.rows, own).name) == 0


def test_lines_are_drawn_once_and_end_where_the_geodesic_does():
    tables = {"sightlines": lines(("A", "x", 0)), "alignments": lines(("A", "x", 0), ("A", "x", 0), ("A", "y", 0))}
    (sheet,), _ = sheets_of(tables)
    own = lines_of(tables, sheet.rows)
    assert own["subject"].tolist() == ["x", "y"]
    exact = Geodesic.WGS84.Direct(36.0, 0.0, 180.0, 1000.0)
    assert own["end_lat_deg"] == pytest.approx(exact["lat2"], abs=SAME_M / 111e3)
    assert own["back_deg"] == pytest.approx(0.0)


def test_places_each_once_and_marked():
    tables = {
        "cameras": points("camera", "A"),
        "sightlines": lines(("A", "x", 0), ("A", "y", 0)),
        "standpoints": lines(("A", "x", 0), ("p", "x", 0), ("p", "x", 3)),
        "subjects": points("subject", "z"),
    }
    (sheet,), _ = sheets_of(tables)
    places = places_of(tables, sheet.rows, lines_of(tables, sheet.rows))
    told = list(zip(places.mark.tolist(), places.name.tolist(), places.lon_deg.tolist()))
    # the standpoint A is the camera A; x is seen from two places 3 degrees apart, so it is two
    assert told == [("C1", "A", 0.0), ("P1", "p", 0.0), ("P2", "p", 3.0), ("S1", "x", 0.0), ("S2", "x", 3.0), ("S3", "y", 0.0)]
    more = with_parking(places, texts("Gate"), np.array([0.5]), np.array([36.0]))
    assert (more.mark[-1], more.kind[-1], more.name[-1]) == ("K1", "parking", "Gate")
    assert more.mark[:-1].tolist() == places.mark.tolist()


def test_lines_that_begin_at_standpoints_make_no_cameras_of_them():
    tables = {"standpoints": lines(("p", "x", 0)), "alignments": lines(("p", "x", 0), ("A", "x", 1))}
    (sheet,), _ = sheets_of(tables)
    places = places_of(tables, sheet.rows, lines_of(tables, sheet.rows))
    assert list(zip(places.kind, places.name))[:2] == [("camera", "A"), ("standpoint", "p")]
    assert places.of("camera").size == places.of("standpoint").size == 1


def test_a_subject_drawn_and_the_end_of_a_line_to_it_are_one_place():
    exact = Geodesic.WGS84.Direct(36.0, 0.0, 180.0, 1000.0)
    for metres, count in ((0.5, 1), (3.0, 2)):
        beside = Geodesic.WGS84.Direct(exact["lat2"], exact["lon2"], 90.0, metres)
        tables = {
            "sightlines": lines(("A", "x", 0)),
            "subjects": {"subject": texts("x"), "lon_deg": np.array([beside["lon2"]]), "lat_deg": np.array([beside["lat2"]])},
        }
        (sheet,), _ = sheets_of(tables)
        assert len(places_of(tables, sheet.rows, lines_of(tables, sheet.rows)).of("subject")) == count


def test_standpoints_as_lines():
    tables = {"standpoints": lines(("p", "x", 0))}
    (sheet,), _ = sheets_of(tables)
    own = standing_of(tables, sheet.rows)
    assert (own["camera"].tolist(), own["back_deg"].tolist()) == (["p"], [0.0])
    assert standing_of({}, {}) == {}
