"""Sky positions against Skyfield, column by column, and the shape of what comes out."""

import numpy as np
import pytest
import skyfield_scan as scan_of
from skyfield_places import apart_arcsec
from skyfield_scan import GALACTIC_LON_DEG, STAR_ICRS_DEG, Pair, SkyfieldTimes, by_skyfield, wrapped

from skyalidade.plan import positions
from skyalidade.plan.positions import sky_positions
from skyalidade.plan.targets import target
from skyalidade.sky.horizontal import Sites

BODIES = ("core", "arch", "sun", "moon", "pole", "star", "galactic")
SITES = [(-33.0, 36.0, 250.0), (150.0, -33.5, 1100.0), (0.0, 90.0, 0.0), (-70.4, -24.6, 2600.0), (25.0, 70.0, 0.0)]
ZONES = ["UTC-02:00", "Australia/Sydney", "UTC", "America/Santiago", "Europe/Oslo"]
TOL_DEG = 0.1 / 3600  # the promise for a place
TOL_MOON_DEG = 0.05 / 3600
T_UTC_S = np.datetime64("2027-06-05T18:00:00").astype(float) + np.arange(0.0, 43200.0, 900.0)


def solve(t_utc_s=T_UTC_S, bodies=BODIES, sites=SITES, pressure_hPa=None, temperature_C=10.0):
    targets = [target(body, star=STAR_ICRS_DEG, galactic_lon_deg=GALACTIC_LON_DEG) for body in bodies]
    blocks = list(sky_positions(Sites(*np.array(sites).T), ZONES, np.arange(len(sites)), targets, t_utc_s, pressure_hPa, temperature_C))
    return {name: np.concatenate([block[name] for block in blocks]) for name in blocks[0]}


@pytest.mark.parametrize(("pressure_hPa", "temperature_C"), [(None, 10.0), (0.0, 10.0), (800.0, -15.0)])
def test_every_column_by_skyfield(pressure_hPa, temperature_C):
    table = solve(pressure_hPa=pressure_hPa, temperature_C=temperature_C)
    moments = SkyfieldTimes(T_UTC_S)
    for number, site in enumerate(SITES):
        places = by_skyfield(Pair(*site, 0.0, 0.0, 0.0), moments)
        for body in BODIES:
            mine = (table["site"] == number) & (table["body"] == body)
            row = {name: values[mine] for name, values in table.items()}
            assert row["t_utc"].tolist() == T_UTC_S.tolist()
            _check(row, places, body, site[2], pressure_hPa, temperature_C)


def _check(row, places, body, height_m, pressure_hPa, temperature_C):
    def apparent(alt_true_deg):
        return scan_of.seen(alt_true_deg, height_m, pressure_hPa, temperature_C)

    alt, az = scan_of.body_altaz(body, places)
    moon_deg, moon_az = places.altaz["moon"]
    core_true = places.altaz["core"][0]
    top_deg, top_az = scan_of.arch_top(places)
    for name, theirs, tol_deg in (
        ("alt_deg", apparent(alt), TOL_DEG),
        ("sun_deg", places.altaz["sun"][0], TOL_DEG),
        ("core_alt", apparent(core_true), TOL_DEG),
        ("apex_deg", top_deg, TOL_DEG),
        ("moon_deg", moon_deg, TOL_MOON_DEG),
        ("moon_sep", apart_arcsec(alt, az, moon_deg, moon_az) / 3600, TOL_DEG + TOL_MOON_DEG),
    ):
        assert np.abs(row[name] - theirs).max() < tol_deg, name
    level = np.cos(np.radians(places.altaz["galactic_pole"][0]))
    assert np.abs(wrapped(row["az_deg"] - az) * (level if body == "arch" else np.cos(np.radians(alt)))).max() < TOL_DEG
    assert np.abs(wrapped(row["apex_az"] - top_az) * level).max() < TOL_DEG
    assert row["moon_lit"] == pytest.approx(places.lit, abs=2e-6)  # share of the disc: 0.5" of elongation
    up = apparent(core_true) >= 0.0
    assert np.isfinite(row["tilt_deg"]).tolist() == (up & (np.abs(core_true) <= 89.0)).tolist()
    assert np.abs(row["tilt_deg"] - scan_of.tilt_deg(places))[up].max(initial=0.0) < 1.0 / 3600  # deg; the core is low or mid-high here
    stage = np.array(["night", "astronomical", "nautical", "civil", "day"])
    assert row["sky"].tolist() == stage[np.searchsorted([-18, -12, -6, -0.8333], row["sun_deg"])].tolist()
    assert np.isfinite(row["semi_deg"]).all() == (body in ("sun", "moon"))
    assert ((row["az_deg"] >= 0.0) & (row["az_deg"] < 360.0)).all()
    # the galactic longitude of the top: its place by longitude is its place by altitude and azimuth
    x, y = (np.sin(np.radians(places.altaz[name][0])) for name in ("core", "galactic_y"))
    assert np.abs(wrapped(row["apex_lon"] - np.degrees(np.arctan2(y, x)))).max() < 0.001  # deg


def test_one_row_a_site_body_and_time_in_that_order():
    table = solve()
    assert len(table["site"]) == len(SITES) * len(BODIES) * len(T_UTC_S)
    assert table["site"].tolist() == np.repeat(np.arange(len(SITES)), len(BODIES) * len(T_UTC_S)).tolist()
    assert table["body"].tolist() == np.tile(np.repeat(np.array(BODIES, object), len(T_UTC_S)), len(SITES)).tolist()
    assert table["tz"].tolist() == np.repeat(np.array(ZONES, object), len(BODIES) * len(T_UTC_S)).tolist()
    assert table["t_local"][0] == "2027-06-05 16:00:00 -02:00"


def test_blocks_do_not_change_what_comes_out(monkeypatch):
    whole = solve(bodies=("moon", "core"))
    monkeypatch.setattr(positions, "BLOCK_CELLS", 60)
    cut = solve(bodies=("moon", "core"))
    order = np.lexsort([cut["t_utc"], cut["body"] == "core", cut["site"]])
    for name in ("site", "t_utc", "az_deg", "alt_deg", "moon_sep"):
        assert cut[name][order] == pytest.approx(whole[name], abs=1e-9)


def test_without_air_the_altitude_is_the_geometric_one():
    table = solve(bodies=("sun", "moon"), pressure_hPa=0.0)
    assert table["alt_deg"][table["body"] == "sun"].tolist() == table["sun_deg"][table["body"] == "sun"].tolist()
    assert table["alt_deg"][table["body"] == "moon"].tolist() == table["moon_deg"][table["body"] == "moon"].tolist()


def test_standard_air_thins_with_height():
    table = solve(sites=[(10.0, 45.0, 0.0), (10.0, 45.0, 5000.0)], bodies=("sun",))
    lift = table["alt_deg"] - table["sun_deg"]
    low, high = lift[table["site"] == 0], lift[table["site"] == 1]
    bent = low > 1.0 / 3600
    assert high[bent] / low[bent] == pytest.approx(540.2 / 1013.25, abs=0.02)  # U.S. Standard Atmosphere 1976


def test_a_moment_outside_the_ephemeris_is_refused():
    with pytest.raises(ValueError, match="1990"):
        solve(t_utc_s=np.array([0.0]))


def test_no_body_no_rows():
    assert all(len(values) == 0 for block in sky_positions(Sites([0.0], [0.0]), ["UTC"], [0], [], T_UTC_S) for values in block.values())
