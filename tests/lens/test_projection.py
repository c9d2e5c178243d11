"""Where directions fall in a rectilinear picture, by PROJ's gnomonic projection, and discs by points on their limb."""

import numpy as np
import pytest
from gnomonic import by_proj, picture

from skyalidade.lens.projection import Extent, around, azimuth_altitude, centred_aim, directions, extent, from_camera, in_camera

AIMS = [(0.0, 0.0), (183.0, 0.0), (359.5, 21.0), (90.0, -12.0), (222.0, 63.0), (10.0, 88.0)]
TOL_CENTRED = 1e-4  # of the focal length, twice what the middle is off: 0.003 deg, where shapes lie 60 deg apart and high
TOL = 1e-9  # of the focal length: rounding; PROJ's inverse trigonometry is good to 1e-10


@pytest.fixture
def rng():
    return np.random.default_rng(20270606)


def limb(az_deg, alt_deg, radius_deg, count=20000):
    """Directions on the limb of a disc, by turning its centre about two axes across it."""
    centre = directions(az_deg, alt_deg)
    level = np.array([centre[1], -centre[0], 0.0]) / np.hypot(*centre[:2])
    turn, radius = np.linspace(0.0, 2.0 * np.pi, count), np.radians(radius_deg)
    around_it = np.multiply.outer(level, np.cos(turn)) + np.multiply.outer(np.cross(centre, level), np.sin(turn))
    return centre[:, None] * np.cos(radius) + around_it * np.sin(radius)


@pytest.mark.parametrize("aim", AIMS)
def test_places_in_the_picture_by_gnomonic_projection(rng, aim, record_property):
    az, alt = rng.uniform(0.0, 360.0, 2000), np.degrees(np.arcsin(rng.uniform(-1.0, 1.0, 2000)))
    right, up, ahead = in_camera(directions(az, alt), *aim)
    near = ahead > 0.05
    assert near.sum() > 500
    for x, y in (by_proj(*aim)((az[near] + 180.0) % 360.0 - 180.0, alt[near]), picture(az[near], alt[near], *aim)):
        off = np.hypot(right[near] / ahead[near] - x, up[near] / ahead[near] - y) / np.maximum(np.hypot(x, y), 1.0)
        record_property("gnomonic", off.max())
        assert right[near] / ahead[near] == pytest.approx(x, abs=1e-7, rel=1e-9)
        assert up[near] / ahead[near] == pytest.approx(y, abs=1e-7, rel=1e-9)


@pytest.mark.parametrize("aim", AIMS)
def test_and_back(rng, aim):
    az, alt = rng.uniform(0.0, 360.0, 100), rng.uniform(-89.0, 89.0, 100)
    there = azimuth_altitude(from_camera(in_camera(directions(az, alt), *aim), *aim))
    assert np.abs((there[0] - az + 180.0) % 360.0 - 180.0).max() < TOL
    assert there[1] == pytest.approx(alt, abs=TOL)


@pytest.mark.parametrize(("az", "alt"), [(0.0, 0.0), (20.0, 15.0), (-38.0, 33.0), (45.0, -5.0)])
@pytest.mark.parametrize("radius", [0.26, 5.0])
def test_a_disc_reaches_as_far_as_its_limb(az, alt, radius):
    sides = extent(in_camera(directions(az, alt), 5.0, 10.0), radius)
    right, up, ahead = in_camera(limb(az, alt, radius), 5.0, 10.0)
    x, y = right / ahead, up / ahead
    assert tuple(sides) == pytest.approx((x.min(), x.max(), y.min(), y.max()), abs=1e-6)  # the limb's points lie 1e-4 rad apart


def test_what_is_not_wholly_ahead_reaches_to_infinity():
    behind, across, beside = (extent(in_camera(directions(az, 0.0), 0.0, 0.0), 1.0) for az in (170.0, 89.5, 85.0))
    assert not np.isfinite([behind.left, behind.right]).any()
    assert np.isinf(across.right)
    assert np.isfinite(beside).all()


@pytest.mark.parametrize("level", [False, True])
def test_the_middle_of_a_centred_picture_is_the_middle_of_what_it_holds(rng, level):
    bearing, d_az, top, alt = rng.uniform(0, 360, 500), rng.uniform(-60, 60, 500), rng.uniform(-5, 20, 500), rng.uniform(0, 65, 500)
    shapes = np.stack([directions(bearing, -1.0), directions(bearing, top), directions(bearing + d_az, alt)], axis=1)
    radii = np.zeros((3, 500))
    radii[2] = 0.26
    aim_az, aim_alt = centred_aim(shapes, radii, bearing + d_az / 2.0, alt / 2.0, level)
    sides = around(extent(in_camera(shapes, aim_az, aim_alt), radii))
    assert np.abs(sides.left + sides.right).max() < TOL_CENTRED
    if level:
        assert (aim_alt == 0.0).all()
    else:
        assert np.abs(sides.low + sides.high).max() < TOL_CENTRED


def test_what_lies_all_round_leaves_the_aim_where_it_began():
    shapes = np.stack([directions(0.0, 0.0), directions(190.0, 5.0)], axis=1)
    assert centred_aim(shapes, np.zeros(2), 95.0, 2.5) == (95.0, 2.5)


def test_several_extents_together():
    together = around(Extent(*np.array([[-2.0, -1.0], [1.0, 3.0], [-0.5, 0.0], [0.2, 0.1]])))
    assert tuple(together) == (-2.0, 3.0, -0.5, 0.2)


@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["scalar", "array", "two axes"])
def test_shape_is_kept(shape):
    seen = in_camera(directions(np.full(shape, 3.0), 1.0), 0.0, 0.0)
    assert seen.shape == (3, *shape)
    assert extent(seen).left.shape == shape
