"""Magnetic bearings through the algorithms: NOAA's values of the World Magnetic Model 2025, its years, and places near its poles."""

from datetime import datetime, timedelta, timezone

import published
import pytest
from qgis.PyQt.QtCore import QVariant

from skyalidade.ground.magnetic import decimal_year, declination_deg
from skyalidade.plan.elevations import HIGHEST_M

NULL = (None, QVariant())
YEARS = "Magnetic bearings are null outside 2025 to 2030, the years for which WMM-2025 holds."
EQUATOR = (120.0, 0.0)
BLACKOUT, CAUTION = (139.3, 85.8), (-75.0, 79.0)  # at the magnetic pole of the north, and 2000 km from it, in the Nares Strait


def near(angle):
    """Angles that are the same but for a turn."""
    return pytest.approx(angle % 360.0, abs=0.005)


def date_of(year):
    first = datetime(int(year), 1, 1, tzinfo=timezone.utc)
    return first + (first.replace(year=first.year + 1) - first) * (year - int(year))


@pytest.fixture
def sightline(run, layer):
    """Rows and log of a camera at each place with a subject about 1 km north or south of it, on the side of the equator."""

    def outcome(*places, z=0, name="sightlines", **parameters):
        cameras, subjects = [], []
        for lon, lat in places:
            cameras.append((f"PointZ({lon} {lat} {z})",))
            subjects.append((f"PointZ({lon} {lat + (-0.009 if lat > 0 else 0.009)} {z})",))
        return run(name, {"CAMERAS": layer(cameras), "SUBJECTS": layer(subjects), "PAIRING": "closest", **parameters})

    return outcome


def on_the_ground(name):
    """Published values at heights that a point of a layer may have; those in the air are asked of the model itself, in tests/ground."""
    return [row for row in published.rows(name) if float(row["height_m"]) <= HIGHEST_M]


@pytest.mark.parametrize("value", on_the_ground("noaa_wmm2025_published"), ids=lambda value: f"{value['source']} {value['lat_deg']}")
def test_values_printed_by_the_model_s_makers(sightline, value):
    date = round_to_day(date_of(float(value["decimal_year"])))
    (row,) = sightline((value["lon_deg"], float(value["lat_deg"])), z=value["height_m"], DATE=date).rows()
    assert row["decl_deg"] == pytest.approx(float(value["declination_deg"]), abs=0.6 * 10.0 ** -int(value["digits"]))
    assert row["mag_deg"] == near(row["bearing_deg"] - float(value["declination_deg"]))


def round_to_day(moment):
    return (moment + timedelta(hours=12)).date()


def values_of_noaa(count):
    rows = on_the_ground("noaa_wmm2025")
    return rows[:: len(rows) // count]


@pytest.mark.parametrize("value", values_of_noaa(25), ids=lambda value: f"{value['lon_deg']} {value['lat_deg']}")
def test_magnetic_azimuths_of_a_body_by_noaa_s_own_program(run, layer, value):
    start = date_of(float(value["decimal_year"])).isoformat(timespec="seconds")
    site = layer([(f"PointZ({value['lon_deg']} {value['lat_deg']} {value['height_m']})",)])
    (row,) = run("sky_positions", {"SITES": site, "START": start, "PRESSURE": 0}).rows()
    off = (row["az_deg"] - row["mag_deg"] - float(value["declination_deg"]) + 180.0) % 360.0 - 180.0
    # horizontally weak fields turn fast: 1 nT is 0.03° at 2000 nT; NOAA's numbers are printed to 0.000001°
    assert off == pytest.approx(0.0, abs=max(2e-6, 0.02 / float(value["horizontal_nT"])))


def test_alignments_on_the_day_of_a_value_of_noaa_s(sightline):
    value = next(row for row in on_the_ground("noaa_wmm2025") if 30 < float(row["lat_deg"]) < 60)  # where the Sun passes due south
    date = round_to_day(date_of(float(value["decimal_year"])))
    night = {"FIRST_NIGHT": date, "LAST_NIGHT": date, "BODIES": ["sun"]}
    (row,) = sightline((float(value["lon_deg"]), float(value["lat_deg"])), z=value["height_m"], name="alignments", **night).rows()
    assert row["decl_deg"] == pytest.approx(float(value["declination_deg"]), abs=0.001)  # a day more
    assert row["mag_deg"] == near(row["bearing_deg"] - row["decl_deg"])


def test_declination_moves_along_a_run(sightline):
    rows = sightline((10.0, 50.0), name="alignments", FIRST_NIGHT="2026-01-01", LAST_NIGHT="2026-12-31", BODIES=["sun"]).rows()
    for row in (rows[0], rows[180], rows[-1]):
        moment = datetime.fromtimestamp(row["t_utc"].toSecsSinceEpoch(), tz=timezone.utc).replace(tzinfo=None)
        assert row["decl_deg"] == pytest.approx(float(declination_deg(10.0, 50.0, 0.0, decimal_year(moment))), abs=0.001)
    assert rows[-1]["decl_deg"] - rows[0]["decl_deg"] > 0.1


def test_date_blank_is_today(sightline, monkeypatch):
    """As it will be on a day of the model's years."""
    noon = datetime(2027, 8, 9, 12, tzinfo=timezone.utc)
    monkeypatch.setattr("skyalidade.adapters.moments.now_utc_s", noon.timestamp)
    (row,) = sightline(EQUATOR).rows()
    (today,) = sightline(EQUATOR, DATE=noon.date()).rows()
    (earlier,) = sightline(EQUATOR, DATE="2025-01-01").rows()
    assert row["decl_deg"] == pytest.approx(today["decl_deg"], abs=0.001)
    assert row["decl_deg"] != earlier["decl_deg"]


def test_date_that_is_none(refusal, layer):
    points = layer([("PointZ(0 0 0)",)])
    assert refusal("sightlines", {"CAMERAS": points, "SUBJECTS": points, "DATE": "soon"}) == (
        "DATE: 'soon' is no date. Write it as 2027-06-06."
    )


@pytest.mark.parametrize("date", ["2024-12-31", "2030-01-02"])
def test_outside_the_model_s_years_null_and_one_warning(sightline, date):
    out = sightline(EQUATOR, (10, 50), DATE=date)
    assert len(out.rows()) == 2
    for row in out.rows():
        assert row["decl_deg"] in NULL
        assert row["mag_deg"] in NULL
    assert out.feedback.said.count(YEARS) == 1


@pytest.mark.parametrize("date", ["2025-01-01", "2030-01-01"])
def test_the_first_and_the_last_day_of_the_model(sightline, date):
    out = sightline(EQUATOR, DATE=date)
    assert out.rows()[0]["decl_deg"] not in NULL
    assert YEARS not in out.log


def test_a_run_over_the_end_of_the_model(sightline):
    out = sightline((10, 50), name="alignments", FIRST_NIGHT="2029-12-28", LAST_NIGHT="2030-01-03", BODIES=["sun"], AZ_TOLERANCE=60)
    known = {row["t_utc"].toUTC().date().year(): row["decl_deg"] not in NULL for row in out.rows()}
    assert known == {2029: True, 2030: False}
    assert out.feedback.said.count(YEARS) == 1


def test_sky_positions_outside_the_model_s_years(run, layer):
    out = run("sky_positions", {"SITES": layer([("PointZ(0 0 0)",)] * 3), "START": "2031-03-04T00:00Z", "BODIES": ["core", "moon"]})
    assert {row["mag_deg"] in NULL for row in out.rows()} == {True}
    assert out.feedback.said.count(YEARS) == 1


def test_places_near_a_magnetic_pole_are_counted_in_one_warning(sightline):
    out = sightline(BLACKOUT, CAUTION, CAUTION, (10, 50), DATE="2026-06-01")
    told = [line for line in out.feedback.said if "magnetic pole" in line]
    assert told == [
        "Near a magnetic pole a compass needle hardly turns: of 4 points 2 where it may err by degrees, 1 where it is of no use. "
        "Steer by true bearings there."
    ]
    assert all(row["mag_deg"] not in NULL for row in out.rows())


def test_no_caution_where_compasses_work_nor_where_there_are_no_magnetic_bearings(sightline):
    assert "magnetic pole" not in sightline((10, 50), DATE="2026-06-01").log
    assert "magnetic pole" not in sightline(BLACKOUT, DATE="2035-06-01").log


@pytest.mark.parametrize("name", ["sightlines", "alignments", "sky_positions"])
def test_help_tells_the_model_its_years_and_its_error(algorithm, name):
    text = algorithm(name).shortHelpString()
    for said in ("World Magnetic Model 2025", "2025 to 2030", "half a degree"):
        assert said in text
