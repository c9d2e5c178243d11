"""Shadow tracks held against the straight line through the Earth and astropy, a closed form, and a finer scan of rough ground."""

import astropy_places
import numpy as np
import pytest
import walks
from test_standpoints import JUNE_NIGHT_S, near
from walks import UTM, off_deg

from skyalidade.plan.aims import BodyBearing
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.lattice import heavens_of
from skyalidade.plan.outlook import Sky
from skyalidade.plan.shadow_track import ShadowTrack, joined
from skyalidade.plan.sightlines import Subjects
from skyalidade.plan.targets import target

UTM_E, UTM_N = walks.PLACES[UTM]
TOL_AZ_DEG, TOL_ALT_DEG = 0.001, 0.01  # promised
NO_AIR = Conditions(pressure_hPa=0.0)
LENS_M = 1.5


class Hills:
    """Ground by a formula, as a relief tells it; nowhere beyond 4 km east."""

    def __init__(self, height_m):
        self._height_m = height_m

    def ground_m(self, lon_deg, lat_deg):
        east = (np.asarray(lon_deg) + 33.0) * 90090.0
        north = (np.asarray(lat_deg) - 36.01) * 110960.0
        return np.where(east < 4000.0, self._height_m(east, north), np.nan)

    @property
    def terrain(self):
        return self

    def cell_m(self, lon_deg, lat_deg):
        return np.full(np.shape(lon_deg), 10.0), np.full(np.shape(lon_deg), 10.0)

    def lines_of_sight(self, lon1_deg, *rest, progress=None):
        nothing = np.full(np.shape(lon1_deg), np.nan)
        none = np.full(np.shape(lon1_deg), None, dtype=object)
        return type("Sight", (), {"block_m": nothing, "clear_m": nothing, "hidden_m": nothing, "visible": none, "sight": none})()


def track(body, moments, gap_deg=0.0, relief=None, height_m=40.0, max_m=5000.0, k=0.0, **of_subject):
    subject = near(UTM_E, UTM_N)
    dem_m = np.nan if relief is None else relief.ground_m(*subject)
    subjects = Subjects(*subject, height_m=height_m, dem_m=dem_m, **of_subject)
    moments = np.atleast_1d(moments)
    heavens = heavens_of(target(body), moments.min(), moments.max())
    sky = Sky(target(body), moments, heavens, NO_AIR)
    return ShadowTrack(subjects, BodyBearing(target(body), moments, heavens), sky, np.array([LENS_M]), gap_deg, max_m, relief, k)


def crossings(made):
    asked = np.ones((made.lens_m.size, made.sky.t_utc_s.size), dtype=bool)
    tables = [table for table, _, _ in made.blocks(asked)]
    return {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}


def rough(east, north):
    return 300.0 + 60.0 * np.sin(east / 170.0) * np.cos(north / 130.0) + 12.0 * np.sin(east / 41.0 + north / 37.0)


@pytest.mark.parametrize(("body", "hour"), [("sun", 9.0), ("moon", 15.0), ("core", 0.0)])
@pytest.mark.parametrize("gap_deg", [0.0, 2.0])
def test_at_every_place_the_body_sits_so_high_over_the_top(body, hour, gap_deg, record_property):
    """Azimuth and altitude of the line to the top in Earth-fixed coordinates, the body by astropy; every crossing over rough ground."""
    moments = JUNE_NIGHT_S + 3600.0 * hour + 900.0 * np.arange(6)
    relief = Hills(rough)
    table = crossings(track(body, moments, gap_deg, relief))
    assert table["order"].size >= 6
    subject = near(UTM_E, UTM_N)
    top_z = float(relief.ground_m(*subject)[0]) + 40.0
    for i in range(table["order"].size):
        lon, lat = table["lon_deg"][i], table["lat_deg"][i]
        lens_z = float(relief.ground_m(lon, lat)) + LENS_M
        az, alt = walks.direction_deg(lon, lat, lens_z, subject[0][0], subject[1][0], top_z)
        with astropy_places.offline():
            site = astropy_places.location(lon, lat, lens_z)
            body_alt, body_az = astropy_places.altaz(body, astropy_places.frame(moments[table["moment"][i]], site))
        record_property("track_places", 1)
        record_property("track_az", float(abs(off_deg(az, body_az))))
        record_property("track_alt", float(abs(body_alt - alt - gap_deg)))
        assert abs(off_deg(az, body_az)) < TOL_AZ_DEG
        assert body_alt - alt == pytest.approx(gap_deg, abs=TOL_ALT_DEG)
        assert table["z_m"][i] == pytest.approx(lens_z - LENS_M, abs=1e-6)
        assert (table["az_deg"][i], table["alt_deg"][i]) == pytest.approx((body_az, body_alt), abs=TOL_ALT_DEG)


def test_on_level_ground_the_shadow_is_as_long_as_the_top_is_high_over_the_lens():
    """One crossing: distance x tan(altitude) = height over the lens; less than the curvature's 5 mm here."""
    table = crossings(track("sun", JUNE_NIGHT_S + 3600.0 * np.array([8.0, 9.0, 11.0, 13.0])))
    assert table["order"].tolist() == [1, 1, 1, 1]
    length = (40.0 - LENS_M) / np.tan(np.radians(table["alt_deg"]))
    np.testing.assert_allclose(table["dist_m"], length, rtol=1e-4)
    assert set(table["heights"]) == {"level"}
    assert np.isnan(table["z_m"]).all()


def test_every_crossing_of_a_scan_ten_times_as_fine_is_there_in_order():
    """Steps of 0.5 m along the line, laid by pyproj; the same crossings within a step, from the first outward."""
    moments = JUNE_NIGHT_S + 3600.0 * np.array([18.6, 19.0, 19.3, 19.5])  # a low Sun
    relief = Hills(rough)
    made = track("sun", moments, 1.0, relief)
    table = crossings(made)
    subject = near(UTM_E, UTM_N)
    several = 0
    for m in range(moments.size):
        dist = np.arange(0.5, 5000.0, 0.5)
        back = made.aim.at(*subject, np.array([m])) + 180.0
        for _ in range(4):  # the azimuth is that at the running place
            start = (np.full(dist.size, values[0]) for values in subject)
            lon, lat, seen = (np.array(values) for values in walks.GEOD.fwd(*start, np.broadcast_to(back, dist.shape), dist))
            back = back - off_deg(seen, made.aim.at(lon, lat, np.full(dist.size, m)))
        lens_z = relief.ground_m(lon, lat) + LENS_M
        _, top = walks.direction_deg(lon, lat, lens_z, subject[0][0], subject[1][0], float(relief.ground_m(*subject)[0]) + 40.0)
        over = made.sky.altitude_deg(np.full(dist.size, m), lon, lat, lens_z) - top - 1.0
        known = np.isfinite(over)  # up to 4 km east
        expected = walks.passages(dist[known], over[known])
        rows = table["moment"] == m
        assert table["order"][rows].tolist() == list(range(1, expected.size + 1))
        np.testing.assert_allclose(table["dist_m"][rows], expected, rtol=0, atol=0.05)
        several += expected.size > 1
    assert several > 0


def test_ground_that_is_not_known_ends_a_track_and_makes_none():
    """Westward light: the shadow falls eastward, and beyond 4 km nobody knows the ground."""
    moments = JUNE_NIGHT_S + 3600.0 * np.array([20.2])
    near_edge = Hills(lambda east, north: np.where(east > 1000.0, 5.0, 0.0 * east))
    table = crossings(track("sun", moments, 0.0, near_edge, height_m=300.0, max_m=5000.0))
    assert np.all(table["dist_m"] < 4000.0 / np.sin(np.radians(table["bearing_deg"] - 180.0)) + 1.0)


def test_bearings_of_use_are_counted():
    made = track("sun", JUNE_NIGHT_S + 3600.0 * np.array([9.0]), face_from_deg=200.0, face_to_deg=300.0)
    table, left_out = made.crossings(np.array([0]), np.array([0]))
    assert table["order"].size == 0
    assert left_out == {"not_facing": 1}


def test_lines_join_first_crossings_of_moments_that_follow_each_other():
    table = {
        "subject": np.array([0, 0, 0, 0, 0, 1, 1, 1]),
        "moment": np.array([0, 0, 1, 3, 4, 0, 1, 2]),
        "order": np.array([1, 2, 1, 1, 1, 1, 2, 1]),
    }
    lines = joined(table, np.arange(5))
    assert [rows.tolist() for rows in lines] == [[0, 2], [3, 4]]  # the second subject's first crossing at 1 is missing
