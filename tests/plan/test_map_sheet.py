"""Zones, scales and round lengths of a sheet's map."""

import numpy as np
import pytest
from pyproj import CRS
from pyproj.aoi import AreaOfInterest
from pyproj.database import query_utm_crs_info

from skyalidade.plan.map_sheet import SCALES, clear_of_ends, framed, graticule, grid_zone, round_length, usual_scale


def test_zones_are_those_whose_area_of_use_holds_the_place():
    """The EPSG database, as PROJ brings it, knows the area of each zone; asking it is slow, so fifteen places."""
    rng = np.random.default_rng(20270606)
    lon, lat = rng.uniform(-180.0, 180.0, 15), rng.uniform(-79.9, 55.9, 15)
    for place in zip(lon.tolist(), lat.tolist()):
        known = query_utm_crs_info("WGS 84", AreaOfInterest(place[0], place[1], place[0], place[1]))
        epsg, name = grid_zone(*place)
        assert str(epsg) in {own.code for own in known}
        assert CRS.from_epsg(epsg).name == f"WGS 84 / UTM zone {name}"


@pytest.mark.parametrize(
    ("place", "epsg", "name"),
    [
        ((-33.0, 36.0), 32625, "25N"),
        ((-180.0, -16.8), 32701, "1S"),
        ((180.0, -16.8), 32701, "1S"),
        ((179.999, -16.8), 32760, "60S"),
        ((540.0, 10.0), 32601, "1N"),
        ((0.0, 0.0), 32631, "31N"),
        ((5.3, 60.4), 32632, "32N"),  # Bergen: the widened zone, not 31
        ((2.9, 60.4), 32631, "31N"),
        ((15.6, 78.2), 32633, "33N"),  # Longyearbyen
        ((8.9, 78.2), 32631, "31N"),
        ((21.0, 78.2), 32635, "35N"),
        ((41.9, 84.0), 32637, "37N"),
        ((42.1, 78.2), 32638, "38N"),
        ((12.0, 84.1), 5041, "UPS north"),
        ((12.0, -80.1), 5042, "UPS south"),
    ],
)
def test_zones_with_a_rule_of_their_own(place, epsg, name):
    assert grid_zone(*place) == (epsg, name)


def test_ups_has_its_eastings_first():
    for place in ((0.0, 89.0), (0.0, -89.0)):
        assert [axis.name for axis in CRS.from_epsg(grid_zone(*place)[0]).axis_info] == ["Easting", "Northing"]


@pytest.mark.parametrize(("least", "scale"), [(1, 100), (1000, 1000), (1001, 1250), (2400, 2500), (7600, 10_000), (26_000, 30_000)])
def test_scales(least, scale):
    assert usual_scale(least) == scale


def test_a_scale_beyond_all_usual_ones_is_taken_as_it_is():
    assert usual_scale(2.0 * SCALES.max()) == 2.0 * SCALES.max()


@pytest.mark.parametrize(("length", "shorter"), [(1, 1), (1.99, 1), (4.9, 2), (5, 5), (9.99, 5), (10, 10), (730, 500), (0.3, 0.2)])
def test_round_lengths(length, shorter):
    assert round_length(length) == pytest.approx(shorter, rel=1e-12)


def test_what_is_framed_lies_within_its_margin():
    x, y = np.array([0.0, 1000.0, 300.0]), np.array([50.0, -150.0, 0.0])
    centre_x, centre_y, denominator = framed(x, y, 0.2, 0.1, 0.1)
    assert (centre_x, centre_y) == (500.0, -50.0)
    assert denominator == pytest.approx(1000.0 / 0.16)  # 0.16 m of 0.2 m are free
    assert framed([7.0], [8.0], 0.2, 0.1, 0.1) == (7.0, 8.0, 0.0)


@pytest.mark.parametrize(
    ("low", "high", "moved"),
    [
        (150, 450, 0),
        (190, 450, 10),
        (175, 450, -5),
        (170, 470, 0),
        (-10, 250, 10),
        (150, 410, 10),
        (150, 415, 5),
        (150, 400, 0),
    ],  # a line may leave the map
)
def test_lines_of_a_grid_stand_clear_of_both_ends(low, high, moved):
    assert clear_of_ends(low, high, 100.0, 30.0, 20.0) == pytest.approx(moved, abs=1e-3)


def test_no_axis_is_without_a_clear_place():
    """Any place and length of an axis: after the least move no line is too near, and that move is less than what is kept free."""
    rng = np.random.default_rng(7)
    for low, length in zip(rng.uniform(-1e7, 1e7, 300), rng.uniform(200.0, 5000.0, 300)):
        moved = clear_of_ends(low, low + length, 100.0, 30.0, 20.0)
        lines = 100.0 * np.arange(np.ceil((low + moved) / 100.0), np.floor((low + moved + length) / 100.0) + 1)
        assert lines[0] - low - moved >= 30.0 - 1e-3
        assert low + moved + length - lines[-1] >= 20.0 - 1e-3
        assert abs(moved) <= 50.0


@pytest.mark.parametrize(
    ("length", "lat", "lines"), [(120_000, 0.0, (1.0, 1.0)), (120_000, 60.0, (2.0, 1.0)), (120_000, 89.9, (30.0, 1.0))]
)
def test_lines_of_longitude_stand_wider_toward_the_poles(length, lat, lines):
    assert graticule(length, lat) == lines
