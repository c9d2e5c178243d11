"""Standpoints held against a walk in steps of 0.1 m with pyproj alone, against Earth-fixed trigonometry and against astropy."""

import astropy_places
import numpy as np
import pytest
import skyfield_places
import walks
from walks import GEOD, LON_LAT, UTM, WEB, off_deg

from skyalidade.plan.aims import Bearing, BodyBearing
from skyalidade.plan.paths import Paths
from skyalidade.plan.sightlines import Subjects
from skyalidade.plan.standpoints import NOT_FACING, TOO_FAR, TOO_NEAR, Reach, Search, position_error_deg
from skyalidade.plan.targets import target

SCAN_M = 0.1
ROOT_M = 1e-4  # promised along the path
TOL_DEG = 0.001  # promised of a bearing; a root good to 0.1 mm keeps 0.0006° at 10 m
JUNE_NIGHT_S = 1750901400.0  # 2025-06-26 01:30 UTC: the Earth's rotation was measured then
UTM_E, UTM_N = walks.PLACES[UTM]


def laid(x, y, crs=UTM, offsets=None, path_of_part=None):
    x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    offsets = [0, x.size] if offsets is None else offsets
    return Paths(x, y, offsets, [0] if path_of_part is None else path_of_part, walks.to_wgs84(crs))


def found(search):
    """All points of a search, block after block, and what was left out."""
    tables, left_out = [], {}
    for runs, _ in search.blocks():
        table, without = search.points(runs)
        tables.append(table)
        for why, count in without.items():
            left_out[why] = left_out.get(why, 0) + count
    return {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}, left_out


def points(path, subject, aim, reach=None, **of_subject):
    return found(Search(path, Subjects(*subject, **of_subject), aim, reach or Reach()))


def near(x, y, crs=UTM):
    """Longitude and latitude of one place, each an array of one."""
    return tuple(np.atleast_1d(value) for value in walks.to_wgs84(crs)(x, y))


# nothing missed, nothing invented


@pytest.mark.parametrize("crs", [UTM, WEB, LON_LAT])
@pytest.mark.parametrize("seed", range(6))
def test_a_walk_in_steps_of_a_decimetre_finds_the_same_places(seed, crs, record_property):
    """Every passage of the scan is found to 0.1 mm and no other, for eight bearings; distances to the subject from 3 m to 1 km."""
    x, y = walks.wander(seed, 40, 25.0, crs)
    lon, lat, chain = walks.along(x, y, SCAN_M, crs)
    rng = np.random.default_rng(100 + seed)
    subject = np.array([lon[lon.size // 2] + rng.normal(0.0, 1e-4), lat[lat.size // 2] + rng.normal(0.0, 1e-4)])[:, None]
    seen, dist = walks.bearing_deg(lon, lat, *subject)
    path, passed = laid(x, y, crs), 0
    for wanted in np.arange(11.25, 360.0, 45.0):
        table, _ = points(path, subject, Bearing(wanted), Reach(0.001))  # so narrow that ends and bends do not count
        expected = walks.passages(chain, off_deg(seen, wanted))
        roots = table["chain_m"][np.abs(table["miss_deg"]) < 1e-6]
        assert roots.size == expected.size
        bent_m = SCAN_M**2 / np.interp(expected, chain, dist)  # what the straight line between two places of the scan may be off
        assert np.all(np.abs(roots - expected) < ROOT_M + bent_m)
        far = np.interp(expected, chain, dist) > 50.0
        record_property("chainage", 1e3 * np.abs(roots - expected)[far].max(initial=0.0))
        passed += expected.size
    record_property("passages", passed)
    assert passed > 0


@pytest.mark.parametrize("crs", [UTM, LON_LAT])
def test_chainage_is_the_sum_of_short_geodesics(crs):
    x, y = walks.wander(3, 12, 900.0, crs)  # long strokes: those of a map in degrees bend by centimetres
    lon, lat, chain = walks.along(x, y, 5.0, crs)
    path = laid(x, y, crs)
    assert len(path) > x.size  # vertices were added
    at_vertices = [int(np.argmin(np.hypot(path.lon_deg - own, path.lat_deg - other))) for own, other in zip(*walks.to_wgs84(crs)(x, y))]
    nearest = [int(np.argmin(np.hypot(lon - own, lat - other))) for own, other in zip(*walks.to_wgs84(crs)(x, y))]
    np.testing.assert_allclose(path.chain_m[at_vertices], chain[nearest], rtol=0, atol=2e-4)  # m, on 11 km


def test_a_root_is_good_to_a_tenth_of_a_millimetre_along_the_path():
    """A path straight north, a subject east of it: by plane trigonometry on a sphere this small the place is known."""
    x, y = np.full(2, UTM_E), np.array([UTM_N, UTM_N + 800.0])
    subject = near(UTM_E + 300.0, UTM_N + 400.0)
    table, _ = points(laid(x, y), subject, Bearing(60.0))
    lon, lat = table["lon_deg"], table["lat_deg"]
    slope = []
    for metres in (-0.01, 0.01):  # how the bearing turns with the way, by pyproj
        moved = GEOD.fwd(lon, lat, [0.0], [metres])
        slope.append(walks.bearing_deg(np.array(moved[0]), np.array(moved[1]), *subject)[0])
    deg_per_m = (slope[1] - slope[0])[0] / 0.02
    miss = off_deg(walks.bearing_deg(lon, lat, *subject)[0], 60.0)[0]
    assert abs(miss / deg_per_m) < ROOT_M
    assert table["chain_m"].size == 1


# forward by other ways


@pytest.mark.parametrize("body", ["core", "moon", "sun"])
def test_the_body_stands_over_the_subject_by_astropy_and_earth_fixed_trigonometry(body, record_property):
    """The azimuth of the body at the place found, by astropy, is the azimuth of the subject, by the straight line through the Earth."""
    moment = JUNE_NIGHT_S + {"core": 0.0, "moon": 15 * 3600.0, "sun": 9 * 3600.0}[body]
    checked = 0
    for seed in range(4):
        x, y = walks.wander(seed, 60, 60.0)
        subject = near(np.mean(x) + 350.0, np.mean(y) - 200.0)
        table, _ = points(laid(x, y), subject, BodyBearing(target(body), [moment]), Reach(0.1))
        roots = np.flatnonzero(np.abs(table["miss_deg"]) < 1e-6)
        for i in roots:
            lon, lat = table["lon_deg"][i], table["lat_deg"][i]
            with astropy_places.offline():
                site = astropy_places.location(lon, lat, 0.0)
                alt, az = astropy_places.altaz(body, astropy_places.frame(moment, site))
            seen, _ = walks.direction_deg(lon, lat, 0.0, subject[0][0], subject[1][0], 0.0)
            assert alt > 0.0
            record_property("standpoint_az", float(abs(off_deg(seen, az))))
            assert abs(off_deg(seen, az)) < TOL_DEG
            assert abs(off_deg(seen, table["target_deg"][i])) < TOL_DEG
        checked += roots.size
    record_property("standpoints_checked", checked)
    assert checked >= 3


def test_the_body_is_taken_where_the_camera_stands():
    """Its azimuth 4 km east of the subject is another one, by hundredths of a degree."""
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E + 4000.0, UTM_E + 4000.0], [UTM_N - 1500.0, UTM_N + 4500.0])
    aim = BodyBearing(target("moon"), [JUNE_NIGHT_S + 18 * 3600.0])
    table, _ = points(path, subject, aim)
    here = aim.at(*subject, np.zeros(1, dtype=int))
    assert table["dist_m"][0] > 3900.0
    assert 0.01 < abs(off_deg(here, table["target_deg"]))[0] < 0.05
    assert abs(table["miss_deg"][0]) < 1e-7


def test_the_top_of_the_arch_stands_opposite_the_galactic_pole_that_is_up():
    """Skyfield's pole at two places and ten hours: the arch's top bears as the end of its axis that is down."""
    moments = JUNE_NIGHT_S - 14400.0 + 3600.0 * np.arange(10)
    aim = BodyBearing(target("arch"), moments)
    pole = skyfield_places.target("galactic_pole")
    for lon, lat in ((-33.0, 36.0), (150.0, -30.0)):
        pole_alt, pole_az, _ = skyfield_places.Observer(lon, lat, 0.0, skyfield_places.times(moments)).altaz(pole)
        expected = np.where(pole_alt > 0.0, pole_az + 180.0, pole_az)
        everywhere = np.full(10, lon), np.full(10, lat), np.arange(10)
        for found_deg in (aim.over(np.array([lon]), np.array([lat]), np.arange(10))[:, 0], aim.at(*everywhere)):
            assert np.abs(off_deg(found_deg, expected)).max() < 1e-4


def test_every_moment_is_solved_as_if_it_were_the_only_one():
    x, y = walks.wander(8, 80, 40.0)
    subjects = Subjects(*near(np.mean(x) + np.array([200.0, -300.0]), np.mean(y) + np.array([100.0, 50.0])))
    moments = JUNE_NIGHT_S + 1200.0 * np.arange(9)
    asked = np.random.default_rng(0).random((2, 9)) > 0.2
    together, _ = found(Search(laid(x, y), subjects, BodyBearing(target("core"), moments), Reach(0.4), asked))
    count = 0
    for m, moment in enumerate(moments):
        alone, _ = found(Search(laid(x, y), subjects, BodyBearing(target("core"), [moment]), Reach(0.4), asked[:, m : m + 1]))
        rows = together["moment"] == m
        np.testing.assert_array_equal(together["subject"][rows], alone["subject"])
        np.testing.assert_allclose(together["chain_m"][rows], alone["chain_m"], rtol=0, atol=2e-4)
        count += rows.sum()
    assert count > 5


def test_subjects_in_blocks_give_what_they_give_at_once(monkeypatch):
    x, y = walks.wander(5, 120, 30.0)
    rng = np.random.default_rng(2)
    subjects = Subjects(*near(np.mean(x) + rng.normal(0, 400, 30), np.mean(y) + rng.normal(0, 400, 30)))
    search = Search(laid(x, y), subjects, Bearing(200.0), Reach(1.0))
    whole, _ = found(search)
    monkeypatch.setattr("skyalidade.plan.standpoints.STATION_CELLS", 700)
    monkeypatch.setattr("skyalidade.plan.standpoints.SUBJECT_CELLS", 500)
    pieces, _ = found(search)
    done = [part for _, part in search.blocks()]
    assert len(done) > 10
    assert done == sorted(done)
    assert done[-1] == pytest.approx(1.0)
    assert whole["subject"].size > 20
    for name in whole:
        np.testing.assert_allclose(pieces[name], whole[name], rtol=0, atol=1e-7)


# the step rule


def test_a_step_of_two_metres_at_twenty_moves_the_bearing_by_5_7_degrees():
    """57.3 x step / distance; trade rule, no source."""
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 30.0, UTM_E + 30.0], [UTM_N - 20.0, UTM_N - 20.0])
    straight, aside = (points(path, subject, Bearing(bearing))[0]["chain_m"][0] for bearing in (0.0, 360.0 - np.degrees(np.arctan(0.1))))
    assert aside - straight == pytest.approx(2.0, abs=0.15)  # m: north of the grid is not true north here by a hair
    assert position_error_deg(2.0, 20.0) == pytest.approx(5.7, abs=0.05)
    assert position_error_deg(3.0, 143.0) == pytest.approx(1.2, abs=0.01)  # as a report prints it


# awkward paths


def test_a_path_through_the_subject():
    """On either side the subject bears one way all along; the subject itself is no standpoint."""
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E, UTM_E], [UTM_N - 200.0, UTM_N + 300.0])
    ahead = walks.bearing_deg(*near(UTM_E, UTM_N - 200.0), *subject)[0][0]
    table, _ = points(path, subject, Bearing(ahead + 0.2))
    assert np.all(table["chain_m"] < 200.0)
    assert np.all(np.abs(table["miss_deg"] + 0.2) < 0.01)  # comes no nearer than 0.2°, and says so
    across, _ = points(path, subject, Bearing(ahead + 90.0))
    assert across["chain_m"].size == 0


def test_a_vertex_on_the_subject():
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 100.0, UTM_E, UTM_E + 100.0], [UTM_N - 100.0, UTM_N, UTM_N - 100.0])
    for wanted in (0.0, 30.0, 90.0, 180.0, 270.0, 330.0):
        table, _ = points(path, subject, Bearing(wanted), Reach(0.4))
        assert table["chain_m"].size == 0
    towards = walks.bearing_deg(*near(UTM_E - 100.0, UTM_N - 100.0), *subject)[0][0]
    table, _ = points(path, subject, Bearing(towards), Reach(0.4))
    assert table["chain_m"].size == 1
    assert table["dist_m"][0] >= 0.01


@pytest.mark.parametrize("aside_m", [0.02, 0.3, 3.0])
def test_a_path_that_passes_the_subject_closely_sees_it_all_round_one_side(aside_m):
    """The bearing turns by nearly half a turn within metres: each bearing of that side once, none of the other."""
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 400.0, UTM_E + 450.0], [UTM_N - aside_m, UTM_N - aside_m])
    for wanted in (300.0, 350.0, 10.0, 80.0):
        table, _ = points(path, subject, Bearing(wanted), Reach(0.2))
        assert table["chain_m"].size == 1
        assert off_deg(walks.bearing_deg(table["lon_deg"], table["lat_deg"], *subject)[0], wanted)[0] == pytest.approx(0.0, abs=TOL_DEG)
    for wanted in (110.0, 180.0, 250.0):
        assert points(path, subject, Bearing(wanted), Reach(0.2))[0]["chain_m"].size == 0


def test_a_path_that_aims_at_the_subject_gives_a_few_points_not_one_a_vertex():
    """A thousand vertices, rounded to the decimetre, along the line to the subject: one standpoint."""
    subject = near(UTM_E, UTM_N)
    away = np.linspace(4800.0, 200.0, 1000)
    x, y = np.round(UTM_E + away * np.sin(2.0), 1), np.round(UTM_N + away * np.cos(2.0), 1)
    wanted = walks.bearing_deg(*near(UTM_E + 1000.0 * np.sin(2.0), UTM_N + 1000.0 * np.cos(2.0)), *subject)[0][0]
    table, _ = points(laid(x, y), subject, Bearing(wanted))
    miss = off_deg(walks.bearing_deg(*near(x, y), *subject)[0], wanted)
    assert np.count_nonzero((miss[1:] >= 0.0) != (miss[:-1] >= 0.0)) > 50  # so many times it passes through
    assert table["chain_m"].size == 1
    assert abs(table["miss_deg"][0]) < 1e-6


def test_waverings_wider_than_a_step_are_places_of_their_own():
    subject = near(UTM_E, UTM_N)
    away = np.linspace(1000.0, 500.0, 11)
    x, y = UTM_E + 3.0 * (-1.0) ** np.arange(11), UTM_N - away
    table, _ = points(laid(x, y), subject, Bearing(0.0), Reach(2.0))
    assert table["chain_m"].size == 10


def test_a_loop_counts_its_beginning_once():
    """It begins and ends where the subject bears exactly as wanted; the other such place is on its far side."""
    subject = near(UTM_E + 500.0, UTM_N)
    x = UTM_E + np.array([0.0, -80.0, -80.0, 80.0, 80.0, 0.0])
    y = UTM_N + np.array([0.0, -60.0, 60.0, 60.0, -60.0, 0.0])
    path = laid(x, y)
    assert path.closed.sum() == 1
    wanted = walks.bearing_deg(*near(x[0], y[0]), *subject)[0][0]
    table, _ = points(path, subject, Bearing(wanted), Reach(0.01))
    assert sorted(np.round(table["chain_m"]).tolist()) == sorted({round(value) for value in table["chain_m"].tolist()})
    assert np.sum((table["chain_m"] < 1.0) | (table["chain_m"] > path.chain_m[-1] - 1.0)) == 1


def test_double_roots_at_a_vertex_are_one_place():
    """The vertex lies on the line and both strokes leave it to one side: it touches, and counts once."""
    subject = near(UTM_E, UTM_N)
    x, y = UTM_E + np.array([-50.0, 0.0, -50.0]), UTM_N + np.array([-450.0, -400.0, -350.0])
    wanted = walks.bearing_deg(*near(x[1], y[1]), *subject)[0][0]
    table, _ = points(laid(x, y), subject, Bearing(wanted))
    assert table["chain_m"].size == 1
    assert table["chain_m"][0] == pytest.approx(np.hypot(50.0, 50.0), abs=0.1)


def test_an_end_that_comes_near_and_does_not_reach_is_told_with_its_miss():
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 300.0, UTM_E - 2.0], [UTM_N - 500.0, UTM_N - 500.0])
    last = walks.bearing_deg(path.lon_deg[-1:], path.lat_deg[-1:], *subject)[0][0]
    table, _ = points(path, subject, Bearing(last - 0.3))
    assert table["chain_m"].tolist() == pytest.approx([path.chain_m[-1]], abs=1e-4)
    assert table["miss_deg"][0] == pytest.approx(0.3, abs=1e-6)
    assert points(path, subject, Bearing(last - 0.6))[0]["chain_m"].size == 0


def test_parts_of_a_path_follow_each_other_and_gaps_do_not_count():
    x = UTM_E + np.array([0.0, 100.0, 400.0, 500.0])
    y = UTM_N + np.zeros(4)
    path = laid(x, y, offsets=[0, 2, 4], path_of_part=[0, 0])
    assert path.chain_m.tolist() == pytest.approx([0.0, 100.04, 100.04, 200.08], abs=0.01)  # 0.9996 is the scale of the map
    subject = near(UTM_E + 450.0, UTM_N + 200.0)
    table, _ = points(path, subject, Bearing(0.0))
    assert table["chain_m"][0] == pytest.approx(150.06, abs=0.5)
    gap, _ = points(path, near(UTM_E + 250.0, UTM_N + 200.0), Bearing(0.0))
    assert gap["chain_m"].size == 0


def test_distances_and_faces_leave_out_and_are_counted():
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 900.0, UTM_E + 900.0], [UTM_N - 300.0, UTM_N - 300.0])
    assert points(path, subject, Bearing(10.0))[0]["chain_m"].size == 1
    cases = [
        (Reach(0.5, 400.0, 5000.0), {}, TOO_NEAR),
        (Reach(0.5, 0.0, 303.0), {}, TOO_FAR),
        (Reach(), {"face_from_deg": 20.0, "face_to_deg": 350.0}, NOT_FACING),
    ]
    for reach, face, why in cases:
        table, left_out = points(path, subject, Bearing(10.0), reach, **face)
        assert table["chain_m"].size == 0
        assert left_out == {why: 1}


@pytest.mark.parametrize(("lon", "lat"), [(179.9995, -17.0), (25.0, 89.9), (-70.0, -89.95), (0.0, 0.0)])
def test_the_antimeridian_and_the_poles_are_places_like_others(lon, lat):
    """A stroke due east past the subject, in degrees that go on beyond 180; bearings by pyproj."""
    metres = 111320.0 * np.cos(np.radians(lat))
    x, y = lon + np.array([-300.0, 300.0]) / metres, np.full(2, lat)
    subject = (np.array([lon]), np.array([lat + 0.001]))
    table, _ = points(laid(x, y, LON_LAT), subject, Bearing(20.0))
    assert table["chain_m"].size == 1
    seen, dist = walks.bearing_deg(table["lon_deg"], table["lat_deg"], *subject)
    assert off_deg(seen, 20.0)[0] == pytest.approx(0.0, abs=TOL_DEG)
    assert dist[0] < 130.0


def test_the_bearings_that_paths_cover():
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 300.0, UTM_E + 300.0], [UTM_N - 300.0, UTM_N - 300.0])
    search = Search(path, Subjects(*subject), Bearing(180.0), Reach())
    ((subject_index, path_index, start, end),) = search.bearings_seen()
    assert (subject_index, path_index) == (0, 0)
    ends = walks.bearing_deg(path.lon_deg[[0, -1]], path.lat_deg[[0, -1]], *subject)[0]
    assert (start, end) == pytest.approx((ends[1], ends[0]), abs=1e-9)  # through north
    assert search.pairs() == 1


def test_no_path_and_no_subject_give_no_blocks_and_no_error():
    nothing = Paths([], [], [0], [], walks.to_wgs84(UTM))
    assert [done for _, done in Search(nothing, Subjects([-33.0], [36.0]), Bearing(1.0), Reach()).blocks()] == []
    path = laid([UTM_E, UTM_E + 1.0], [UTM_N, UTM_N])
    assert list(Search(path, Subjects([], []), Bearing(1.0), Reach()).blocks()) == []


@pytest.mark.parametrize("aside_m", [5.4, 5.5, 5.6])
def test_where_the_bearing_turns_back_between_vertices_the_passage_is_found(aside_m):
    """A stroke nearly aimed at a subject 4.5 km off, at 60 N: the meridians converge as fast as the subject moves aside."""
    to_lon_lat = walks.to_wgs84("EPSG:32632")
    x, y = np.array([500000.0, 500900.0]), np.full(2, 6651000.0)
    subject = tuple(np.atleast_1d(value) for value in to_lon_lat(504950.0, y[0] + aside_m))
    lon, lat, chain = walks.along(x, y, 0.1, "EPSG:32632")
    seen = walks.bearing_deg(lon, lat, *subject)[0]
    turned = off_deg(seen, seen[0])
    top = turned.max()
    assert 0.0 < top > turned[-1]
    path = laid(x, y, "EPSG:32632")
    wanted = seen[0] + top - 0.01 * (top - max(turned[-1], 0.0))  # both ends of the stroke lie on one side of it
    passages = walks.passages(chain, off_deg(seen, wanted))
    assert passages.size == 2
    assert np.ptp(np.searchsorted(path.chain_m, passages)) == 0  # and no vertex lies between
    table, _ = points(path, subject, Bearing(wanted))
    assert table["chain_m"].size == 1  # between the two the path is less than half a step off the line: one place, and a stretch
    assert abs(table["miss_deg"][0]) < 1e-9
    assert np.min(np.abs(passages - table["chain_m"][0])) < 0.5
