"""Stretches cut by a skyline: at a million moments a body is let through exactly where it stands above the peaks."""

from collections import Counter
from dataclasses import asdict, replace

import numpy as np
import pytest
from skyfield_scan import STAR_ICRS_DEG, Asked, Pair, SkyfieldTimes, body_altaz, by_plugin, by_skyfield, plugin_table, seen

from skyalidade.ground.skyline import Skyline
from skyalidade.plan import horizons as module
from skyalidade.plan.alignments import Pairs, find_alignments
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.horizons import Horizons
from skyalidade.plan.targets import target

DAY_S = 86400.0
TOL_S, TOL_DEG = 0.5, 0.2 / 3600  # the promise for the end of a stretch, whichever is looser
CHORD_DEG = (
    2e-5  # between nodes 0.1° apart a great circle passes up to 0.05" over the straight line in azimuth and altitude, at 60° of altitude
)


class Peaks:
    """Ground whose skyline is a formula: crags of 0 to 20° on a swell, the same from everywhere, and unknown in the north-west."""

    def __init__(self, known_to_deg=300.0):
        self.known_to_deg, self.rays = known_to_deg, Counter()

    def altitude_deg(self, az_deg):
        az = np.radians(az_deg)
        crags = 6.0 + 5.0 * np.sin(3.0 * az) + 4.0 * np.abs(np.sin(23.0 * az)) + np.abs(np.sin(61.0 * az))
        return np.where(np.asarray(az_deg) % 360.0 > self.known_to_deg, np.nan, crags)

    def skyline(self, lon_deg, lat_deg, lens_m, az_deg, progress=None):
        if progress is not None and progress(0.0) is False:
            return None
        self.rays.update(zip(np.round(lon_deg, 6).tolist(), np.round(az_deg, 6).tolist()))
        assert np.isfinite(lens_m).all()
        nowhere = np.full(np.shape(az_deg), np.nan)
        return Skyline(self.altitude_deg(az_deg), nowhere, nowhere, nowhere, nowhere)

    def between_nodes_deg(self, az_deg):
        """The lattice's skyline by its definition: straight from node to node."""
        nodes = np.arange(3601) * 0.1
        return np.interp(np.asarray(az_deg) % 360.0, nodes, self.altitude_deg(nodes % 360.0))


def random_pairs(count, seed):
    rng = np.random.default_rng(seed)
    lat = np.degrees(np.arcsin(rng.uniform(-1, 1, count)))
    return [Pair(rng.uniform(-180, 180), lat[i], rng.uniform(0, 4000), rng.uniform(0, 360), -1.0, 3.0) for i in range(count)]


def plan_pairs(pairs, lens_dem_m=100.0):
    columns = np.array([[p.lon_deg, p.lat_deg, p.height_m, p.bearing_deg, p.base_alt_deg, p.top_alt_deg] for p in pairs]).T
    return Pairs(*columns, ["UTC"], np.zeros(len(pairs), int), np.full(len(pairs), lens_dem_m))


def solve(pairs, body, asked, relief, first="2028-03-01", last="2028-05-31", lens_dem_m=100.0, **more):
    one = target(body, star=STAR_ICRS_DEG)
    conditions = replace(Conditions(**asdict(asked)), **more)
    first, last = np.datetime64(first), np.datetime64(last)
    found = list(find_alignments(plan_pairs(pairs, lens_dem_m), [one], first, last, conditions, relief=relief))
    return tuple({name: np.concatenate([block[k][name] for block in found]) for name in found[0][k]} for k in (0, 1))


def inside(table, number, moments):
    mine = table["pair"] == number
    start, end = np.sort(table["t_start"][mine]), np.sort(table["t_end"][mine])
    edges = np.concatenate([start, end, [np.inf]])
    held = np.searchsorted(start, moments, side="right") > np.searchsorted(end, moments, side="left")
    return held, np.abs(edges[np.argsort(edges)][np.clip(np.searchsorted(np.sort(edges), moments), 0, len(edges) - 1)] - moments), edges


ASKED = {
    "core": Asked(80.0, -5.0, sun_limit_deg=30.0),
    "arch": Asked(80.0, None, None, apex_max_deg=89.0, sun_limit_deg=90.0),
    "sun": Asked(85.0, -3.0),
    "moon": Asked(85.0, -3.0),
    "pole": Asked(60.0, sun_limit_deg=10.0),
    "star": Asked(85.0, -3.0, sun_limit_deg=60.0),
}


class TestMembership:
    """What the skyline takes away of the stretches that hold without it, at random moments."""

    PAIRS = random_pairs(40, seed=71)

    @pytest.fixture(scope="class")
    @classmethod
    def moments(cls):
        first, last = (np.datetime64(date, "s").astype(float) for date in ("2028-03-03", "2028-05-29"))
        return np.sort(np.random.default_rng(72).uniform(first, last, 5000))

    @pytest.fixture(scope="class")
    @classmethod
    def places(cls, moments):
        table = plugin_table(moments)
        return [by_plugin(pair, table) for pair in cls.PAIRS]

    @pytest.mark.parametrize("body", ASKED)
    def test_a_stretch_is_where_the_body_stands_above_the_peaks(self, moments, places, body):
        peaks = Peaks()
        with_skyline, _ = solve(self.PAIRS, body, ASKED[body], peaks)
        without, _ = solve(self.PAIRS, body, ASKED[body], peaks, use_skyline=False)
        counts = Counter()
        for number, pair in enumerate(self.PAIRS):
            held, _, edges = inside(with_skyline, number, moments)
            wanted, _, more_edges = inside(without, number, moments)
            alt_true, az = body_altaz(body, places[number])
            depth = seen(alt_true, pair.height_m) - peaks.between_nodes_deg(az)
            depth[np.isnan(depth)] = 90.0  # no ground known: nothing in the way
            wrong = np.nonzero((held != (wanted & (depth >= 0.0))) & (np.abs(depth) > TOL_DEG + CHORD_DEG))[0]
            near = np.abs(np.concatenate([edges, more_edges]) - moments[wrong][:, None]).min(axis=1, initial=np.inf) <= TOL_S
            assert near.all(), (pair, moments[wrong[~near]][:3], depth[wrong[~near]][:3])
            counts.update({"kept": held.sum(), "taken": (wanted & ~held).sum()})
        assert min(counts.values()) > 500, counts  # enough to be wrong about

    @pytest.mark.parametrize("body", ["core", "sun", "moon", "star"])
    def test_ends_stand_on_the_skyline_by_skyfield(self, body):
        peaks = Peaks(360.0)
        pairs = self.PAIRS[:12]
        with_skyline, _ = solve(pairs, body, ASKED[body], peaks, last="2028-03-06")
        without, _ = solve(pairs, body, ASKED[body], peaks, "2028-02-26", "2028-03-09", use_skyline=False)
        checked = 0
        for number, pair in enumerate(pairs):
            ends = np.concatenate([with_skyline[name][with_skyline["pair"] == number] for name in ("t_start", "t_end")])
            plain = np.concatenate([without[name][without["pair"] == number] for name in ("t_start", "t_end")])
            new = ends[np.abs(ends[:, None] - np.append(plain, np.inf)).min(axis=1) > 1.0]
            checked += len(new)
            alt, az = body_altaz(body, by_skyfield(pair, SkyfieldTimes(new)))
            off_deg = seen(alt, pair.height_m) - peaks.between_nodes_deg(az)
            assert (np.abs(off_deg) < 4.0 * TOL_DEG + CHORD_DEG).all(), (pair, np.abs(off_deg).max() * 3600)  # crags of 4° a degree
        assert checked > 30


def test_a_body_behind_several_peaks_comes_out_between_them():
    peaks = Peaks()
    pairs = [Pair(0.0, 40.0, 0.0, 180.0, -1.0, 3.0)]
    rows, _ = solve(pairs, "core", Asked(80.0, 0.0, sun_limit_deg=90.0), peaks, first="2028-06-01", last="2028-06-01")
    assert len(rows["pair"]) >= 3
    assert (rows["alt_deg"] > rows["ground_deg"] - TOL_DEG).all()


def test_the_column_tells_the_skyline_in_the_bodys_direction_also_when_it_is_no_condition():
    peaks = Peaks()
    rows, _ = solve(random_pairs(20, seed=5), "moon", ASKED["moon"], peaks, last="2028-03-10", use_skyline=False)
    told = np.isfinite(rows["ground_deg"])
    assert np.allclose(rows["ground_deg"][told], peaks.between_nodes_deg(rows["az_deg"][told]), atol=1e-9)
    assert (rows["alt_deg"][told] < rows["ground_deg"][told]).any()
    unknown = rows["az_deg"] > peaks.known_to_deg
    assert unknown.any()
    assert np.isnan(rows["ground_deg"][unknown]).all()


def test_a_ray_is_followed_once_and_only_where_it_is_needed():
    peaks = Peaks()
    pairs = [Pair(10.0, 40.0, 0.0, 180.0, -1.0, 3.0), Pair(10.0, 40.0, 0.0, 190.0, -1.0, 3.0)]
    solve(pairs, "core", Asked(3.0, 0.0, sun_limit_deg=90.0), peaks)
    assert max(peaks.rays.values()) == 1
    assert 60 <= len(peaks.rays) <= 200  # two bearings, ±3°, whole degrees, a tenth apart


def test_without_a_lens_on_the_model_nothing_is_told_or_taken_away():
    peaks = Peaks()
    pairs = random_pairs(10, seed=8)
    with_relief, _ = solve(pairs, "moon", ASKED["moon"], peaks, last="2028-03-20", lens_dem_m=np.nan)
    without, _ = solve(pairs, "moon", ASKED["moon"], None, last="2028-03-20")
    assert not peaks.rays
    assert np.isnan(with_relief["ground_deg"]).all()
    assert np.array_equal(with_relief["t_start"], without["t_start"])
    assert np.array_equal(with_relief["t_end"], without["t_end"])


def test_a_pair_that_the_skyline_leaves_nothing_is_told_why():
    class Wall(Peaks):
        def altitude_deg(self, az_deg):
            return np.full(np.shape(az_deg), 60.0)

    rows, unmet = solve([Pair(0.0, 40.0, 0.0, 180.0, -1.0, 3.0)], "core", Asked(3.0), Wall(), first="2028-06-01", last="2028-06-10")
    assert not len(rows["pair"])
    assert unmet["reason"].tolist() == ["The core passes bearing 180.0°, but never above the terrain skyline, which is 60.0° high there."]


def test_a_cancel_while_rays_are_followed_ends_the_search():
    class Stopped(Peaks):
        cancelled = False

        def skyline(self, *places, progress=None):
            self.cancelled = True
            return super().skyline(*places, progress=progress)

    peaks = Stopped()
    pairs, asked = plan_pairs(random_pairs(10, seed=9)), Conditions(alt_min_deg=-3.0, az_tolerance_deg=85.0)
    night = np.datetime64("2028-03-01")
    assert list(find_alignments(pairs, [target("moon")], night, night + 9, asked, lambda part: not peaks.cancelled, peaks)) == []
    assert peaks.cancelled
    assert not peaks.rays


class TestHorizons:
    def test_a_skyline_lies_straight_between_its_nodes(self):
        peaks = Peaks(360.0)
        horizons = Horizons(peaks, np.array([1.0, 2.0]), np.zeros(2), np.zeros(2))
        az = np.random.default_rng(3).uniform(0, 360, 500)
        point = np.arange(500) % 2
        assert np.allclose(horizons.altitude_deg(point, az), peaks.between_nodes_deg(az), atol=1e-9)
        assert horizons.altitude_deg(np.array([0, 0]), np.array([0.0, 359.95])) == pytest.approx(peaks.between_nodes_deg([0.0, 359.95]))

    def test_bounds_are_those_of_all_nodes_in_the_cells_and_the_one_that_ends_them(self):
        peaks = Peaks(360.0)
        horizons = Horizons(peaks, np.array([1.0]), np.zeros(1), np.zeros(1))
        first, last = np.array([350, 10, -20]), np.array([365, 11, 340])
        horizons.find(np.zeros(3, int), first * module.CELL, last * module.CELL)
        low, high = horizons.bounds_deg(np.zeros(3, int), first, last)
        for k in range(3):
            nodes = peaks.altitude_deg(np.arange(first[k] * 10, last[k] * 10 + 1) % 3600 * 0.1)
            assert (low[k], high[k]) == (nodes.min(), nodes.max())
