"""Stretches of paths within tolerance, held against a walk in steps of 0.1 m with pyproj alone."""

import numpy as np
import pytest
import walks
from test_standpoints import laid, near
from walks import LON_LAT, UTM, off_deg

from skyalidade.plan import stretches
from skyalidade.plan.aims import Bearing
from skyalidade.plan.sightlines import Subjects, is_facing
from skyalidade.plan.standpoints import Reach, Search

SCAN_M = 0.1
UTM_E, UTM_N = walks.PLACES[UTM]


def found(search, conditions=(), most_m=None):
    """Table of all stretches of a search."""
    tables = []
    for runs, _ in search.blocks():
        spans = stretches.spans_within(search, runs, conditions, most_m)
        tables.append(stretches.table_of(search, spans, stretches.join(search.paths, spans)))
    return {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}


def walked(chain, inside):
    """Chainage of first and last place of each stretch of a walk."""
    edge = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]])))
    return chain[edge[::2]], chain[edge[1::2] - 1]


def check(table, chain, inside):
    """The same stretches, ends within one step of the walk, but for those shorter than two steps."""
    first, last = walked(chain, inside)
    long = table["to_m"] - table["from_m"] > 2.0 * SCAN_M
    sure = last - first > 2.0 * SCAN_M
    assert long.sum() >= sure.sum() > 0
    for start, end in zip(first[sure], last[sure]):
        nearest = np.argmin(np.abs(table["from_m"] - start))
        assert -1e-3 <= start - table["from_m"][nearest] <= SCAN_M + 1e-3
        assert -1e-3 <= table["to_m"][nearest] - end <= SCAN_M + 1e-3
    for start, end in zip(table["from_m"][long], table["to_m"][long]):
        assert inside[(chain > start + 1e-3) & (chain < end - 1e-3)].all()


@pytest.mark.parametrize("crs", [UTM, LON_LAT])
@pytest.mark.parametrize("seed", range(5))
def test_a_walk_in_steps_of_a_decimetre_is_within_tolerance_at_the_same_places(seed, crs):
    x, y = walks.wander(seed, 60, 25.0, crs)
    lon, lat, chain = walks.along(x, y, SCAN_M, crs)
    subject = np.array([lon.mean() + 0.001, lat.mean() + 0.0005])[:, None]
    seen, dist = walks.bearing_deg(lon, lat, *subject)
    path = laid(x, y, crs)
    reach = Reach(7.0, float(np.quantile(dist, 0.15)), float(np.quantile(dist, 0.9)))
    for wanted in np.quantile(off_deg(seen, seen[0]), [0.2, 0.5, 0.8]) + seen[0]:
        inside = (np.abs(off_deg(seen, wanted)) <= 7.0) & (dist >= reach.min_distance_m) & (dist <= reach.max_distance_m)
        check(found(Search(path, Subjects(*subject), Bearing(wanted), reach)), chain, inside)


def test_bearings_of_use_cut_stretches():
    x, y = walks.wander(2, 60, 25.0)
    lon, lat, chain = walks.along(x, y, SCAN_M)
    subject = np.array([lon.mean(), lat.mean()])[:, None]
    seen, dist = walks.bearing_deg(lon, lat, *subject)
    wanted = float(np.median(seen))
    inside = (np.abs(off_deg(seen, wanted)) <= 40.0) & is_facing(seen, wanted - 25.0, wanted + 8.0) & (dist > 0.01)
    subjects = Subjects(*subject, face_from_deg=wanted - 25.0, face_to_deg=wanted + 8.0)
    check(found(Search(laid(x, y), subjects, Bearing(wanted), Reach(40.0))), chain, inside)


@pytest.mark.parametrize(("least_m", "most_m"), [(320.0, 5000.0), (0.0, 330.0), (305.0, 350.0)])
def test_distances_cut_a_stroke_that_passes_the_subject(least_m, most_m):
    """Both ends of the stroke are beyond the limits, or within; in the middle it is otherwise."""
    x, y = np.array([UTM_E - 260.0, UTM_E + 240.0]), np.full(2, UTM_N - 300.0)
    lon, lat, chain = walks.along(x, y, SCAN_M)
    subject = near(UTM_E, UTM_N)
    _, dist = walks.bearing_deg(lon, lat, *subject)
    search = Search(laid(x, y), Subjects(*subject), Bearing(0.0), Reach(80.0, least_m, most_m))
    check(found(search), chain, (dist >= least_m) & (dist <= most_m))


def test_a_condition_that_changes_quickly_is_found_as_finely_as_asked():
    """Ground in waves of 30 m: stretches where it is high."""
    x, y = np.array([UTM_E - 500.0, UTM_E + 500.0]), np.full(2, UTM_N - 400.0)
    lon, lat, chain = walks.along(x, y, SCAN_M)
    subject = near(UTM_E, UTM_N)
    path = laid(x, y)

    def wave(moment, subject, piece, u):
        return np.sin(2.0 * np.pi * path.chain_at(piece, *path.at(piece, u)) / 30.0)

    seen, _ = walks.bearing_deg(lon, lat, *subject)
    inside = (np.abs(off_deg(seen, 0.0)) <= 30.0) & (np.sin(2.0 * np.pi * chain / 30.0) >= 0.0)
    check(found(Search(path, Subjects(*subject), Bearing(0.0), Reach(30.0)), [wave], 5.0), chain, inside)


def test_a_path_that_aims_at_the_subject_is_one_stretch():
    subject = near(UTM_E, UTM_N)
    x, y = UTM_E + np.zeros(500), UTM_N - np.linspace(3000.0, 100.0, 500)
    wanted = walks.bearing_deg(*near(UTM_E, UTM_N - 1000.0), *subject)[0][0]
    table = found(Search(laid(x, y), Subjects(*subject), Bearing(wanted), Reach()))
    assert table["from_m"].tolist() == pytest.approx([0.0], abs=1e-3)
    assert table["to_m"].tolist() == pytest.approx([2900.0 / 0.9996], abs=0.5)


def test_bearings_run_clockwise_through_north():
    subject = near(UTM_E, UTM_N)
    path = laid([UTM_E - 100.0, UTM_E + 100.0], [UTM_N - 300.0, UTM_N - 300.0])
    table = found(Search(path, Subjects(*subject), Bearing(0.0), Reach(2.0)))
    assert (table["bearing_min"][0], table["bearing_max"][0]) == pytest.approx((358.0, 2.0), abs=1e-6)


def test_kinds_stay_apart():
    subject = near(UTM_E, UTM_N)
    path = laid(UTM_E + np.linspace(-20.0, 20.0, 5), np.full(5, UTM_N - 300.0))
    search = Search(path, Subjects(*subject), Bearing(0.0), Reach(10.0))
    ((runs, _),) = search.blocks()
    spans = stretches.spans_within(search, runs)
    assert stretches.join(path, spans).first.size == 1
    joined = stretches.join(path, spans, spans.piece < 2)
    assert path.chain_m[spans.piece[joined.first]].tolist() == pytest.approx([0.0, 20.008], abs=1e-2)
