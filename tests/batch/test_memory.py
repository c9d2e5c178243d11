"""The ground of a block is read in parts where it would fill the memory, and refused with a number where even one point's would."""

import numpy as np
import pytest
from partitioned import ROUNDING, SAMPLE, assert_equal, table_of
from test_rows import KEYS

from skyalidade.batch import memory, terrain
from skyalidade.batch.arguments import parser
from skyalidade.batch.asked import alignments, nights
from skyalidade.plan.extent import BLOCK_BYTES

NIGHTS = ("--first-night", "2027-05-01", "--last-night", "2027-05-06", "--output", "out")
CAMERAS, SUBJECTS = (f"{SAMPLE}/reserve.gpkg|layername={name}" for name in ("cameras", "subjects"))
MADE = {
    "nights": (nights, ("--sites", CAMERAS, "--moon", "any", "--windows", "--months")),
    "alignments": (alignments, ("--cameras", CAMERAS, "--subjects", SUBJECTS, "--bodies", "core,moon", "--unmet", "--pairing", "closest")),
}


@pytest.fixture(params=MADE)
def filled(request, tmp_path):
    """Rows of the one block of a layer, by output, with so much room for its ground."""
    make, layers = MADE[request.param]
    asked = parser().parse_args([request.param, *layers, "--dem", str(SAMPLE / "dem.tif"), "--terrain-radius", "1000", *NIGHTS])
    job, blocks, _ = make(asked, 0.0)
    (number,) = range(len(blocks))

    def rows():
        folder = tmp_path / str(np.random.default_rng().integers(1 << 60))
        sinks = job.sinks(folder, number)
        job.fill(blocks.take(number), sinks)
        for sink in sinks.values():
            sink.close()
        return {name: table_of(folder / name, *KEYS[name]) for name in sinks}

    return rows


def test_rows_are_the_same_however_little_fits(filled, monkeypatch):
    read = []
    relief = terrain.Ground.relief
    monkeypatch.setattr(terrain.Ground, "relief", lambda ground: (read.append(ground.extent.bytes), relief(ground))[1])
    whole = filled()
    (need,) = read
    room = need - BLOCK_BYTES
    monkeypatch.setattr(terrain, "room_bytes", lambda: room)
    read.clear()
    parts = filled()
    assert len(read) > 1
    assert max(read) <= room
    for name, table in whole.items():
        assert_equal(parts[name], table, ROUNDING)


def test_what_one_point_looks_at_does_not_fit(filled, monkeypatch):
    monkeypatch.setattr(terrain, "room_bytes", lambda: 1_500_000)
    with pytest.raises(ValueError, match=r"DEM: the ground that '.*' looks at takes [2-9] MB of memory, more than the 2 MB that a worker"):
        filled()


def test_room_is_known_here():
    assert 1e6 < memory.room_bytes() < 1e14
