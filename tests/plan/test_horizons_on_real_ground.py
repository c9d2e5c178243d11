"""Stretches cut by the skyline of real ground, against Skyfield's places and every crossing of the ray in the body's own direction.

The solver asks a lattice of azimuths a tenth of a degree apart; here each ray is followed where the body stands.
"""

import sys
from pathlib import Path

import numpy as np
import pytest
from skyfield_scan import Pair, SkyfieldTimes, body_altaz, by_skyfield, seen

sys.path.append(str(Path(__file__).parents[1] / "ground"))
import every_crossing  # noqa: E402
import rough_ground  # noqa: E402

from skyalidade.ground.terrain import terrain  # noqa: E402
from skyalidade.plan.alignments import Pairs, find_alignments  # noqa: E402
from skyalidade.plan.conditions import Conditions  # noqa: E402
from skyalidade.plan.relief import Relief  # noqa: E402
from skyalidade.plan.targets import target  # noqa: E402

SKIP_M = 186.0  # two cells of 3"
NEAR_M = 1000.0  # cells of 3" tell little of nearer ground
RMS_DEG = 0.01  # of the skyline itself; straight lines between nodes 0.1° apart add little to it. A Moon is 0.5° wide
COUNT = 14


@pytest.fixture(scope="module")
def ground():
    return rough_ground.jacksboro()


@pytest.fixture(scope="module")
def cameras(ground):
    lon, lat = np.transpose(np.array([-84.25, 36.59]) + np.random.default_rng(21).uniform(-0.08, 0.08, (COUNT, 2)))
    lens_m = terrain(*ground).height_m(lon, lat) + 1.6
    bearing = np.resize([95.0, 110.0, 125.0, 235.0, 250.0, 265.0, 280.0], COUNT)
    return lon, lat, lens_m, bearing


@pytest.mark.parametrize("body", ["sun", "moon"])
def test_a_stretch_begins_and_ends_at_the_ridge(ground, cameras, body, record_property):
    lon, lat, lens_m, bearing = cameras
    flat = np.full(COUNT, -1.0)
    pairs = Pairs(lon, lat, lens_m, bearing, flat, flat + 2.0, ["UTC"], np.zeros(COUNT, int), lens_m)
    relief = Relief(terrain(*ground), 40_000.0, SKIP_M)
    asked = Conditions(az_tolerance_deg=20.0, alt_min_deg=-4.0)
    span = np.datetime64("2027-03-01"), np.datetime64("2027-03-28")
    tables = [table for table, _ in find_alignments(pairs, [target(body)], *span, asked, relief=relief)]
    found = {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}
    assert (found["alt_deg"] > found["ground_deg"] - 1e-4).all()

    off_deg = []
    for number in range(COUNT):
        mine = found["pair"] == number
        ends = np.concatenate([found["t_start"][mine], found["t_end"][mine]])
        pair = Pair(lon[number], lat[number], lens_m[number], bearing[number], -1.0, 1.0)
        alt_true, az = body_altaz(body, by_skyfield(pair, SkyfieldTimes(ends)))
        alt, dist, _ = every_crossing.skyline(ground, lon[number], lat[number], lens_m[number], az, 40_000.0, SKIP_M, 0.13)
        inner = np.abs((az - bearing[number] + 180.0) % 360.0 - 180.0) < 19.99  # not an end of the sector
        off_deg += (seen(alt_true, lens_m[number]) - alt)[inner & (dist > NEAR_M)].tolist()
    record_property("skyline_ends", len(off_deg))
    record_property("skyline_ends_off", np.sqrt(np.mean(np.square(off_deg))))
    assert len(off_deg) > 60
    assert np.sqrt(np.mean(np.square(off_deg))) < RMS_DEG
