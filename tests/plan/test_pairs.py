"""Pairing against a plain double loop over GeographicLib-tested geodesics, pole to pole and over the antimeridian."""

import tracemalloc

import numpy as np
import pytest
from pyproj import Geod

from skyalidade.plan import pairs

GEOD = Geod(ellps="WGS84")


def places(n, seed, where="world"):
    rng = np.random.default_rng(seed)
    if where == "world":
        return rng.uniform(-180, 180, n), np.degrees(np.arcsin(rng.uniform(-1, 1, n)))
    if where == "antimeridian":
        return (rng.uniform(179.0, 181.0, n) + 180.0) % 360.0 - 180.0, rng.uniform(-1, 1, n)
    if where == "pole":
        return rng.uniform(-180, 180, n), rng.uniform(89.5, 90, n)
    return rng.uniform(-33.2, -33.0, n), rng.uniform(36.0, 36.2, n)  # a reserve


def joined(blocks):
    blocks = [pairs.PairBlock(np.zeros(0, int), np.zeros(0, int), *np.zeros((3, 0)), {}, 0.0), *blocks]
    assert all(block.camera.size == block.subject.size == block.dist_m.size for block in blocks)
    left_out = {}
    for block in blocks:
        for reason, count in block.left_out.items():
            left_out[reason] = left_out.get(reason, 0) + count
    stacked = {
        name: np.concatenate([getattr(block, name) for block in blocks])
        for name in ("camera", "subject", "dist_m", "bearing_deg", "back_deg")
    }
    return stacked, left_out


def all_distances(cameras, subjects):
    camera, subject = (index.ravel() for index in np.mgrid[: cameras[0].size, : subjects[0].size])
    bearing, back, dist = GEOD.inv(cameras[0][camera], cameras[1][camera], subjects[0][subject], subjects[1][subject])
    return camera, subject, np.asarray(dist), np.asarray(bearing) % 360.0, np.asarray(back) % 360.0


@pytest.mark.parametrize("where", ["reserve", "antimeridian", "pole", "world"])
def test_all_within_a_distance(where):
    cameras, subjects = places(70, 1, where), places(60, 2, where)
    camera, subject, dist, bearing, back = all_distances(cameras, subjects)
    limit = np.median(dist)
    found, left_out = joined(pairs.pair_all(*cameras, *subjects, limit))
    near = dist <= limit
    assert 0 < near.sum() < dist.size
    assert found["camera"].tolist() == camera[near].tolist()
    assert found["subject"].tolist() == subject[near].tolist()
    assert found["dist_m"].tolist() == pytest.approx(dist[near], abs=1e-6)
    assert found["bearing_deg"] == pytest.approx(bearing[near], abs=1e-9)
    assert found["back_deg"] == pytest.approx(back[near], abs=1e-9)
    assert left_out == {pairs.TOO_FAR: (~near).sum()}


def test_all_without_a_limit():
    found, left_out = joined(pairs.pair_all(*places(7, 1), *places(9, 2)))
    assert found["camera"].size == 63
    assert left_out == {}


def test_coincident_points_are_left_out_and_counted():
    lon, lat = np.array([10.0, 180.0, 0.0, 11.0]), np.array([50.0, 20.0, 90.0, 51.0])
    other_lon, other_lat = np.array([10.0, -180.0, 77.0, 11.0]), np.array([50.0, 20.0, 90.0, 51.0])  # the same four places
    found, left_out = joined(pairs.pair_all(lon, lat, other_lon, other_lat, 1e9))
    assert found["camera"].size == 12
    assert left_out == {pairs.COINCIDENT: 4}
    assert (found["camera"] != found["subject"]).all()
    assert np.isfinite(found["bearing_deg"]).all()


def test_coincident_is_told_before_too_far():
    _, left_out = joined(pairs.pair_all([10.0], [50.0], [10.0, 11.0], [50.0, 50.0], 10.0))
    assert left_out == {pairs.COINCIDENT: 1, pairs.TOO_FAR: 1}


def test_by_field():
    cameras, subjects = places(6, 1, "reserve"), places(5, 2, "reserve")
    camera_keys = ["arch", "arch", "ruin", None, "nowhere", 12]
    subject_keys = ["ruin", "arch", "12", "", "stack"]
    found, left_out = joined(pairs.pair_by_field(*cameras, camera_keys, *subjects, subject_keys))
    assert list(zip(found["camera"], found["subject"])) == [(0, 1), (1, 1), (2, 0), (5, 2)]
    assert left_out == {
        pairs.CAMERA_WITHOUT_KEY: 1,
        pairs.SUBJECT_WITHOUT_KEY: 1,
        pairs.CAMERA_WITHOUT_PARTNER: 1,
        pairs.SUBJECT_WITHOUT_PARTNER: 1,
    }


@pytest.mark.parametrize(
    ("camera_key", "subject_key", "match"),
    [
        (12, 12.0, True),
        ("12", 12, True),  # a text field and a number field
        (" arch", "arch ", True),
        ("Arch", "arch", False),
        (1.5, "1.5", True),
        (True, "True", True),
        (float("nan"), float("nan"), False),
        (None, None, False),
        ("", "", False),
        (2**60 + 1, 2**60, False),  # ids beyond what a real number keeps apart
        (np.int64(7), "7", True),
    ],
)
def test_what_counts_as_the_same_value(camera_key, subject_key, match):
    found, _ = joined(pairs.pair_by_field([0.0], [0.0], [camera_key], [1.0], [1.0], [subject_key]))
    assert found["camera"].size == match


def test_by_field_obeys_the_distance():
    found, left_out = joined(pairs.pair_by_field([0.0, 0.0], [0.0, 1.0], ["a", "a"], [0.0], [0.1], ["a"], 50_000.0))
    assert found["camera"].tolist() == [0]
    assert left_out == {pairs.TOO_FAR: 1}


def test_by_field_of_many_groups_like_a_double_loop():
    rng = np.random.default_rng(5)
    cameras, subjects = places(300, 1, "reserve"), places(200, 2, "reserve")
    camera_keys, subject_keys = rng.integers(0, 40, 300), rng.integers(20, 60, 200)
    found, _ = joined(pairs.pair_by_field(*cameras, camera_keys, *subjects, subject_keys, block_pairs=100))
    expected = [(c, s) for c in range(300) for s in range(200) if camera_keys[c] == subject_keys[s]]
    assert list(zip(found["camera"], found["subject"])) == expected


@pytest.mark.parametrize("where", ["reserve", "antimeridian", "pole", "world"])
@pytest.mark.parametrize("numbers", [(300, 200), (40, 1), (1, 40), (50, 3)])
def test_closest_is_closest(where, numbers):
    cameras, subjects = places(numbers[0], 3, where), places(numbers[1], 4, where)
    _, _, dist, _, _ = all_distances(cameras, subjects)
    dist = dist.reshape(numbers)
    found, left_out = joined(pairs.pair_closest(*cameras, *subjects))
    assert found["camera"].tolist() == list(range(numbers[0]))
    assert found["subject"].tolist() == np.argmin(dist, axis=1).tolist()
    assert found["dist_m"] == pytest.approx(dist.min(axis=1), abs=1e-6)
    assert left_out == {}


def test_closest_is_not_by_degrees():
    """At 60 N a degree of longitude is as long as half a degree of latitude."""
    found, _ = joined(pairs.pair_closest([0.0], [60.0], [0.0, 1.0], [60.6, 60.0]))
    assert found["subject"].tolist() == [1]


def test_closest_is_not_by_the_chord():
    """A third of the way to the antipode the chord is the shorter northward, and the geodesic along the equator."""
    lon, lat = np.array([60.0, 0.0]), np.array([0.0, 60.24])
    chords = np.linalg.norm(ecef(lon, lat) - ecef(0.0, 0.0)[:, np.newaxis], axis=0)
    lengths = np.asarray(GEOD.inv([0, 0], [0, 0], lon, lat)[2])
    assert (np.argmin(chords), np.argmin(lengths)) == (1, 0)
    found, _ = joined(pairs.pair_closest([0.0], [0.0], lon, lat))
    assert found["subject"].tolist() == [0]


def ecef(lon_deg, lat_deg):
    a, f = 6378137.0, 1 / 298.257223563
    lon, lat = np.radians(lon_deg), np.radians(lat_deg)
    n = a / np.sqrt(1 - f * (2 - f) * np.sin(lat) ** 2)
    return np.stack([n * np.cos(lat) * np.cos(lon), n * np.cos(lat) * np.sin(lon), n * (1 - f) ** 2 * np.sin(lat)])


def test_closest_passes_over_a_coincident_subject():
    found, left_out = joined(pairs.pair_closest([10.0], [50.0], [12.0, 10.0, 11.0, 10.0], [50.0, 50.0, 50.0, 50.0]))
    assert found["subject"].tolist() == [2]
    assert left_out == {pairs.COINCIDENT: 2}


def test_closest_too_far_is_counted_by_cameras():
    found, left_out = joined(pairs.pair_closest([0.0, 5.0], [0.0, 0.0], [0.1, 0.2], [0.0, 0.0], 50_000.0))
    assert found["camera"].tolist() == [0]
    assert left_out == {pairs.CAMERA_WITHOUT_NEAR_SUBJECT: 1}


def test_of_equals_the_first_is_closest():
    found, _ = joined(pairs.pair_closest([0.0], [0.0], [0.0, 0.0, 0.1], [0.1, 0.1, 0.0], 50_000.0))
    assert found["subject"].tolist() == [0]


def test_closest_with_nothing_but_coincident_subjects():
    found, left_out = joined(pairs.pair_closest([0.0], [0.0], [0.0, 0.0], [0.0, 0.0]))
    assert found["camera"].size == 0
    assert left_out == {pairs.COINCIDENT: 2, pairs.CAMERA_WITHOUT_NEAR_SUBJECT: 1}


@pytest.mark.parametrize(("cameras", "subjects"), [(0, 0), (0, 3), (3, 0)])
def test_empty_layers(cameras, subjects):
    one, two = places(cameras, 1), places(subjects, 2)
    assert joined(pairs.pair_all(*one, *two))[0]["camera"].size == 0
    assert joined(pairs.pair_by_field(*one, ["a"] * cameras, *two, ["a"] * subjects))[0]["camera"].size == 0
    found, left_out = joined(pairs.pair_closest(*one, *two))
    assert found["camera"].size == 0
    assert left_out.get(pairs.CAMERA_WITHOUT_NEAR_SUBJECT, 0) == cameras


def test_blocks_do_not_change_the_result():
    cameras, subjects = places(40, 1, "reserve"), places(30, 2, "reserve")
    whole = joined(pairs.pair_all(*cameras, *subjects, 5_000.0))
    blocks = list(pairs.pair_all(*cameras, *subjects, 5_000.0, block_pairs=35))
    assert len(blocks) == 40  # a camera at a time
    assert [block.done for block in blocks] == pytest.approx(np.arange(1, 41) / 40)
    for name, values in joined(blocks)[0].items():
        assert np.array_equal(values, whole[0][name])
    assert joined(blocks)[1] == whole[1]
    small = joined(pairs.pair_closest(*cameras, *subjects, 5_000.0, block_pairs=35))
    assert np.array_equal(small[0]["subject"], joined(pairs.pair_closest(*cameras, *subjects, 5_000.0))[0]["subject"])


def peak_mb(blocks):
    tracemalloc.start()
    for _ in blocks:
        pass
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return peak / 1e6


def test_memory_is_bounded():
    """A million pairs, and the closest of 4e8, in blocks."""
    assert peak_mb(pairs.pair_all(*places(1000, 1, "reserve"), *places(1000, 2, "reserve"))) < 200
    assert peak_mb(pairs.pair_closest(*places(20_000, 1, "reserve"), *places(20_000, 2, "reserve"))) < 200


def test_closest_tells_how_far_it_is():
    done = [block.done for block in pairs.pair_closest(*places(2000, 1), *places(400, 2))]
    assert len(done) > 10  # so often the caller may stop
    assert done == sorted(done)
    assert done[-1] == 1.0


@pytest.mark.parametrize("max_distance_m", [0.0, -1.0, np.nan])
def test_a_distance_that_lets_nothing_through_is_refused(max_distance_m):
    with pytest.raises(ValueError, match="greater than 0"):
        list(pairs.pair_all([0.0], [0.0], [1.0], [1.0], max_distance_m))
