"""The World Magnetic Model against values that its makers publish, and against their own program."""

from datetime import date

import numpy as np
import pytest
from published import rows

from skyalidade.ground import magnetic

TOL_NT = 1e-3  # the same formulas in another order; the reference is written to 0.0001 nT
TOL_DEG = 1e-5  # the reference is written to 1e-6


def columns(stem):
    table = rows(stem)
    return {name: np.array([float(row[name]) for row in table]) for name in table[0] if name != "source"}


@pytest.fixture(scope="module")
def noaa():
    return columns("noaa_wmm2025")


def places(table):
    return [table[name] for name in ("lon_deg", "lat_deg", "height_m", "decimal_year")]


def test_published_declinations():
    table = columns("noaa_wmm2025_published")
    declination = magnetic.declination_deg(*places(table))
    assert (np.abs(declination - table["declination_deg"]) < 0.6 * 10.0 ** -table["digits"]).all()  # half a digit, and rounding


def test_field_of_noaas_program(noaa, record_property):
    field = magnetic.field(*places(noaa))
    for name in ("north_nT", "east_nT", "down_nT", "horizontal_nT"):
        assert np.abs(getattr(field, name) - noaa[name]).max() < TOL_NT
    off = (field.declination_deg - noaa["declination_deg"] + 180.0) % 360.0 - 180.0
    record_property("declination", np.abs(off).max())
    assert np.abs(off).max() < TOL_DEG
    assert (noaa["horizontal_nT"] < magnetic.BLACKOUT_NT).sum() > 30  # the reference holds the hard places


def test_field_has_no_sources():
    """Outside the Earth div B = 0 and curl B = 0: by differences over 2 km, along the parallel, the meridian and the vertical."""
    lon, lat, height, year = 15.0, 50.0, 100_000.0, 2027.0
    step_m = 1000.0
    radius_m = 6_478_000.0  # of both curvatures to 0.4 %; they make corrections of 1e-3 of the terms only
    north_deg = np.degrees(step_m / radius_m)
    east_deg = north_deg / np.cos(np.radians(lat))
    around = {
        "n": magnetic.field(lon, lat + north_deg, height, year),
        "s": magnetic.field(lon, lat - north_deg, height, year),
        "e": magnetic.field(lon + east_deg, lat, height, year),
        "w": magnetic.field(lon - east_deg, lat, height, year),
        "u": magnetic.field(lon, lat, height + step_m, year),
        "d": magnetic.field(lon, lat, height - step_m, year),
    }
    here = magnetic.field(lon, lat, height, year)

    def slope(name, plus, minus):
        return (getattr(around[plus], name) - getattr(around[minus], name)) / (2.0 * step_m)

    tan = np.tan(np.radians(lat))
    divergence = slope("north_nT", "n", "s") + slope("east_nT", "e", "w") - slope("down_nT", "u", "d")
    divergence -= (2.0 * here.down_nT + here.north_nT * tan) / radius_m
    assert abs(divergence) < 0.01 * abs(slope("down_nT", "u", "d"))
    curl_up = slope("north_nT", "e", "w") - slope("east_nT", "n", "s") + here.east_nT * tan / radius_m
    assert abs(curl_up) < 0.01 * abs(slope("north_nT", "n", "s"))


def test_scalar_array_and_broadcast(noaa):
    lon, lat, height, year = (value[:6] for value in places(noaa))
    together = magnetic.declination_deg(lon, lat, height, year)
    assert together.shape == (6,)
    assert [float(magnetic.declination_deg(*place)) for place in zip(lon, lat, height, year)] == pytest.approx(together, abs=1e-12)
    grid = magnetic.declination_deg(lon, lat, 0.0, np.array([2025.0, 2027.0])[:, np.newaxis])
    assert grid.shape == (2, 6)
    assert grid[1] == pytest.approx(magnetic.declination_deg(lon, lat, 0.0, 2027.0), abs=1e-12)
    assert magnetic.declination_deg([], [], [], 2026.0).shape == (0,)


def test_more_places_than_a_block(noaa):
    lon, lat, height, year = (np.tile(value, 25) for value in places(noaa))
    assert lon.size > magnetic.BLOCK
    declination = magnetic.declination_deg(lon, lat, height, year).reshape(25, -1)
    assert np.ptp(declination, axis=0).max() == 0.0


@pytest.mark.parametrize(
    ("decimal_year", "inside"), [(2024.99, False), (2025.0, True), (2029.99, True), (2030.0, True), (2030.01, False), (np.nan, False)]
)
def test_years_of_the_model(decimal_year, inside):
    assert magnetic.within_model(decimal_year) == inside
    assert np.isfinite(magnetic.declination_deg(15.0, 50.0, 300.0, decimal_year)) == inside


def test_unknown_height_gives_no_number():
    assert np.isnan(magnetic.declination_deg([15.0, 16.0], 50.0, [np.nan, 0.0], 2026.0)).tolist() == [True, False]


def test_a_turn_of_longitude_changes_nothing():
    assert magnetic.declination_deg(-170.0, 60.0, 0.0, 2026.0) == pytest.approx(
        magnetic.declination_deg(190.0, 60.0, 0.0, 2026.0), abs=1e-9
    )


@pytest.mark.parametrize("lat_deg", [90.0, -90.0])
def test_at_a_pole_north_turns_with_longitude(lat_deg):
    """The needle points one way; true north, counted along the meridian, turns."""
    lon = np.array([0.0, 90.0, 200.0])
    needle = magnetic.declination_deg(lon, lat_deg, 0.0, 2026.0) + np.sign(lat_deg) * -lon
    assert np.abs((needle - needle[0] + 180.0) % 360.0 - 180.0).max() < 1e-3


def test_latitudes_beyond_the_poles_are_refused():
    with pytest.raises(ValueError, match="1 of 2 latitudes lie beyond 90°"):
        magnetic.declination_deg([0.0, 0.0], [50.0, 91.0], 0.0, 2026.0)


def test_compass_zones():
    assert magnetic.compass_zone([1999.9, 2000.0, 5999.9, 6000.0, np.nan]).tolist() == ["blackout", "caution", "caution", None, None]
    # The magnetic poles of 2025 (NOAA, from memory): 86° N 139° E, 64° S 136° E
    lon, lat = [139.0, 136.0, -110.0, 15.0], [86.0, -64.0, 75.0, 50.0]
    zones = magnetic.compass_zone(magnetic.field(lon, lat, 0.0, 2026.9).horizontal_nT)
    assert zones.tolist() == ["blackout", "blackout", "caution", None]


@pytest.mark.parametrize(
    ("bearing_deg", "declination_deg", "expected"),
    [
        (100.0, 10.0, 90.0),  # "east is least"
        (100.0, -10.0, 110.0),  # "west is best"
        (5.0, 10.0, 355.0),
        (355.0, -10.0, 5.0),
        (10.0, 10.0, 0.0),
        (0.0, 1e-15, 0.0),
        (90.0, np.nan, np.nan),
    ],
)
def test_magnetic_bearing(bearing_deg, declination_deg, expected):
    bearing = magnetic.magnetic_bearing(bearing_deg, declination_deg)
    assert bearing == pytest.approx(expected, abs=1e-9, nan_ok=True)
    assert not bearing >= 360.0


def test_decimal_years():
    days = np.array(["2025-01-01", "2025-12-06", "2028-12-31", "NaT"], dtype="datetime64[D]")
    expected = [2025.0, 2025.0 + 339 / 365, 2028.0 + 365 / 366, np.nan]
    assert magnetic.decimal_year(days) == pytest.approx(expected, abs=1e-12, nan_ok=True)
    assert magnetic.decimal_year(date(2025, 12, 6)) == pytest.approx(2025.92876712, abs=1e-8)  # as NOAA's program counts
    assert magnetic.decimal_year(np.datetime64("2026-07-02T12:00")) == pytest.approx(2026.5, abs=1e-12)
