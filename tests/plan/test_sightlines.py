"""Sightlines against coordinates in space, and the rules for heights and usable bearings."""

import erfa
import numpy as np
import pytest
from pyproj import Geod

from skyalidade.plan import pairs
from skyalidade.plan.sightlines import LEVEL, NOT_FACING, Cameras, Subjects, is_facing, pair_arrays, sightlines

GEOD = Geod(ellps="WGS84")
Z_FIELDS = ("cam_z_m", "base_z_m", "top_z_m")


def measured(cameras, subjects, refraction_k=0.13):
    (block,) = pairs.pair_all(cameras.lon_deg, cameras.lat_deg, subjects.lon_deg, subjects.lat_deg)
    return sightlines(cameras, subjects, block, refraction_k)


def in_space_deg(lon1, lat1, height1, lon2, lat2, height2):
    """Altitude and azimuth without air, from geocentric coordinates."""
    place, seen = (
        erfa.gd2gc(1, np.radians(lon), np.radians(lat), height).T for lon, lat, height in ((lon1, lat1, height1), (lon2, lat2, height2))
    )
    lon, lat = np.radians(lon1), np.radians(lat1)
    east = np.stack([-np.sin(lon), np.cos(lon), 0.0 * lon])
    north = np.stack([-np.sin(lat) * np.cos(lon), -np.sin(lat) * np.sin(lon), np.cos(lat)])
    up = np.stack([np.cos(lat) * np.cos(lon), np.cos(lat) * np.sin(lon), np.sin(lat)])
    e, n, u = (((seen - place) * axis).sum(axis=0) for axis in (east, north, up))
    return np.degrees(np.arctan2(u, np.hypot(e, n))), np.degrees(np.arctan2(e, n)) % 360.0


def test_angles_without_air_are_those_in_space():
    rng = np.random.default_rng(2)
    n = 400
    lon, lat = rng.uniform(-180, 180, n), rng.uniform(-85, 85, n)
    lon2, lat2, _ = (np.asarray(values) for values in GEOD.fwd(lon, lat, rng.uniform(0, 360, n), rng.uniform(100, 60_000, n)))
    (z, z2), lens, base, height = rng.uniform(0, 4000, (2, n)), rng.uniform(0, 5, n), rng.uniform(0, 30, n), rng.uniform(0, 80, n)
    bearing, back, dist = (np.asarray(values) for values in GEOD.inv(lon, lat, lon2, lat2))
    block = pairs.PairBlock(np.arange(n), np.arange(n), dist, bearing % 360.0, back % 360.0, {}, 1.0)
    table, left_out = sightlines(Cameras(lon, lat, lens, z), Subjects(lon2, lat2, height, base, z_m=z2), block, 0.0)
    assert left_out == {}
    base_alt, azimuth = in_space_deg(lon, lat, z + lens, lon2, lat2, z2 + base)
    top_alt, _ = in_space_deg(lon, lat, z + lens, lon2, lat2, z2 + base + height)
    tol_deg = 0.05 / 3600.0  # the radius is that at the camera; see the tests of curvature
    assert np.abs(table["base_alt_deg"] - base_alt).max() < tol_deg
    assert np.abs(table["top_alt_deg"] - top_alt).max() < tol_deg
    assert np.abs(table["height_deg"] - (top_alt - base_alt)).max() < tol_deg
    off_azimuth = np.abs((table["bearing_deg"] - azimuth + 180.0) % 360.0 - 180.0)
    assert off_azimuth.max() * 3600.0 < 0.5  # the geodesic runs on the ellipsoid, the ray to 4 km: up to 0.11" for each km
    assert (table["cam_z_m"] == z + lens).all()
    assert (table["base_z_m"] == z2 + base).all()
    assert np.abs(table["top_z_m"] - (z2 + base + height)).max() < 1e-9


def one_pair(camera_z, subject_z, **subject):
    return measured(Cameras([-33.0], [36.0], 1.5, [camera_z]), Subjects([-33.0], [36.01], z_m=[subject_z], **subject))[0]


@pytest.mark.parametrize(
    ("camera_z", "subject_z", "source"),
    [
        (10.0, 20.0, "z"),
        (0.0, 20.0, "z"),  # a camera at the shore
        (20.0, 0.0, "z"),
        (-3.0, -2.0, "z"),
        (0.0, 0.0, "level"),  # Z that nobody has filled in
        (np.nan, 20.0, "level"),
        (10.0, np.nan, "level"),
        (np.nan, np.nan, "level"),
        (np.inf, 20.0, "level"),
        (10.0, -np.inf, "level"),
    ],
)
def test_one_source_of_heights_for_a_pair(camera_z, subject_z, source):
    table = one_pair(camera_z, subject_z, height_m=10.0)
    assert table["heights"].tolist() == [source]
    assert all(np.isnan(table[name][0]) == (source == LEVEL) for name in Z_FIELDS)
    assert np.isfinite(table["base_alt_deg"][0])


def test_level_ground_is_level_whatever_one_of_the_points_says():
    by_one, by_none = one_pair(2500.0, np.nan, height_m=10.0), one_pair(np.nan, np.nan, height_m=10.0)
    for name in ("base_alt_deg", "top_alt_deg", "height_deg"):
        assert by_one[name] == by_none[name]
    dist = by_none["dist_m"][0]
    flat_deg = np.degrees(np.arctan2(-1.5, dist))
    drop_deg = np.degrees(dist * 0.87 / (2 * 6371000.0))
    # the Earth's radius in this azimuth is smaller by 1 part in 470
    assert by_none["base_alt_deg"][0] == pytest.approx(flat_deg - drop_deg, abs=2e-5)


def test_heights_add_up():
    """The ground, then the sill above it, then the top above the sill."""
    table = one_pair(100.0, 200.0, height_m=30.0, base_m=4.0)
    assert [table[name][0] for name in Z_FIELDS] == [101.5, 204.0, 234.0]


def test_air_lifts_by_its_share():
    """Handbooks: 0.0785 m per km2 of drop without air, 0.0683 with k 0.13 (from memory)."""
    places = Cameras([0.0], [45.0], 0.0, [500.0]), Subjects([0.0], [45.3], z_m=[500.0])
    without, with_air = (measured(*places, k)[0] for k in (0.0, 0.13))
    km = without["dist_m"][0] / 1000.0
    for table, per_km2 in ((without, 0.0785), (with_air, 0.0683)):
        drop_m = -np.tan(np.radians(table["base_alt_deg"][0])) * km * 1000.0
        assert drop_m == pytest.approx(per_km2 * km**2, rel=0.002)


def test_width_and_height_of_the_moons_size():
    """Common practice, no source: a 10 m subject at about 1.1 km is as wide as the Moon, 0.53 deg."""
    table = one_pair(np.nan, np.nan, width_m=10.0, height_m=10.0)
    assert table["width_deg"][0] == pytest.approx(0.53 * 1100.0 / table["dist_m"][0], rel=0.02)
    assert table["height_deg"][0] == pytest.approx(table["width_deg"][0], rel=0.001)


@pytest.mark.parametrize(
    ("bearing", "start", "end", "facing"),
    [
        (45.0, 0.0, 90.0, True),
        (0.0, 0.0, 90.0, True),
        (90.0, 0.0, 90.0, True),
        (90.1, 0.0, 90.0, False),
        (350.0, 330.0, 30.0, True),  # through north
        (10.0, 330.0, 30.0, True),
        (180.0, 330.0, 30.0, False),
        (350.0, -30.0, 30.0, True),
        (10.0, 30.0, 330.0, False),
        (180.0, 30.0, 330.0, True),
        (123.0, 0.0, 360.0, True),
        (123.0, 360.0, 0.0, True),
        (123.0, np.nan, np.nan, True),
        (90.0, 90.0, 90.0, True),
        (91.0, 90.0, 90.0, False),
        (0.0, 360.0, 10.0, True),
        (359.9999999999999, 0.0, 10.0, False),
    ],
)
def test_usable_bearings(bearing, start, end, facing):
    assert is_facing(bearing, start, end) == facing


def test_pairs_that_do_not_face_the_subject_are_left_out_and_counted():
    cameras = Cameras([0.0, 0.1, 0.0, -0.1], [-0.1, 0.0, 0.1, 0.0])  # south, east, north, west of the first subject
    subjects = Subjects([0.0, 0.0], [0.0, 0.001], face_from_deg=[300.0, np.nan], face_to_deg=[100.0, np.nan])
    table, left_out = measured(cameras, subjects)
    of_first = table["subject_index"] == 0
    assert table["camera_index"][of_first].tolist() == [0, 3]  # looking north and east
    assert (~of_first).sum() == 4
    assert left_out == {NOT_FACING: 2}
    assert len({values.size for values in table.values()}) == 1


@pytest.mark.parametrize(
    "make",
    [
        lambda: Cameras([0.0, 1.0], [0.0, 0.0], [1.5, -0.1]),
        lambda: Cameras([0.0, 1.0], [0.0, 0.0], [1.5, np.nan]),
        lambda: Subjects([0.0, 1.0], [0.0, 0.0], height_m=[1.0, -1.0]),
        lambda: Subjects([0.0, 1.0], [0.0, 0.0], base_m=[1.0, np.inf]),
        lambda: Subjects([0.0, 1.0], [0.0, 0.0], face_from_deg=[1.0, 2.0], face_to_deg=[1.0, np.nan]),
    ],
)
def test_what_cannot_be_is_refused_and_counted(make):
    with pytest.raises(ValueError, match="1 of 2"):
        make()


def test_one_number_stands_for_all():
    cameras = Cameras([0.0, 1.0, 2.0], [0.0, 0.0, 0.0])
    assert cameras.lens_m.tolist() == [1.5] * 3
    assert np.isnan(cameras.z_m).all()


def test_no_pairs_give_empty_columns():
    block = pairs.PairBlock(np.zeros(0, int), np.zeros(0, int), *np.zeros((3, 0)), {}, 1.0)
    table, left_out = sightlines(Cameras([0.0], [0.0]), Subjects([1.0], [0.0]), block)
    assert {values.shape for values in table.values()} == {(0,)}
    assert left_out == {}


def test_arrays_for_the_search_of_alignments():
    cameras = Cameras([0.0, 0.1, 0.2], [50.0, 50.0, 50.0], 2.0, [1000.0, np.nan, 0.0])
    table, _ = measured(cameras, Subjects([0.3, 0.4], [50.0, 50.0], z_m=[900.0, np.nan]))
    arrays = pair_arrays(table, cameras, ["UTC", "Europe/London"], [0, 1, 1])
    assert arrays["height_m"].tolist() == [1002.0, 1002.0, 0.0, 0.0, 2.0, 2.0]  # the camera's own, known or not with the subject's
    assert arrays["zone_index"].tolist() == [0, 0, 1, 1, 1, 1]
    assert arrays["lon_deg"].tolist() == [0.0, 0.0, 0.1, 0.1, 0.2, 0.2]
    assert arrays["bearing_deg"] is table["bearing_deg"]
    assert set(arrays) == {
        "lon_deg",
        "lat_deg",
        "height_m",
        "bearing_deg",
        "base_alt_deg",
        "top_alt_deg",
        "zone_names",
        "zone_index",
        "lens_dem_m",
    }
