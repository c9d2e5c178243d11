"""Skylines and lines of sight against closed forms: a sea, an island beyond its horizon, a cone, a ridge.

All lie on an azimuthal map, on which straight lines from the middle are geodesics, to scale. With k = 1 light bends as much as the
Earth, and the forms are those of a plane.
"""

import numpy as np
import pytest
import rough_ground
from every_crossing import WGS84, radius_m
from published import values

from skyalidade.ground import sight, skyline, terrain

LON, LAT = 15.0, 60.0
AZIMUTHAL = f"+proj=aeqd +lat_0={LAT} +lon_0={LON} +datum=WGS84"
HANDBOOK = values("curved_earth")
PLANE = 1.0 - 1e-6  # coefficient of refraction; 1 itself lies outside what air does over long ways


def model(heights, cell):
    return terrain.terrain(*rough_ground.around(LON, LAT, heights, AZIMUTHAL, cell))


def north_and_east_m(count, cell):
    """Places of the centres of cells, seen from the middle one; shapes (count, 1) and (1, count)."""
    from_middle = (np.arange(count) - count // 2) * cell
    return -from_middle[:, None], from_middle[None, :]


@pytest.fixture(scope="module")
def sea():
    return model(np.zeros((1001, 1001)), 500.0)


class TestSea:
    """The horizon of a lens `h` above a sea on a sphere of radius R dips by arccos(R / (R + h)) and is R times as far."""

    AZ = np.array([0.0, 30.0, 90.0, 200.0])

    @pytest.mark.parametrize("lens_m", [2.0, 25.0, 400.0, 3000.0])
    def test_dip_without_air(self, lens_m, sea):
        found = skyline.skyline(sea, LON, LAT, lens_m, self.AZ, 240_000.0, 100.0, refraction_k=0.0)
        dip = np.arccos(1.0 / (1.0 + lens_m / radius_m(LAT, self.AZ)))
        # [deg] half a step of 0.5 % beside the top of a curve that falls with the square: 1e-5 of the dip; the ellipsoid is no sphere
        assert np.abs(found.alt_deg + np.degrees(dip)).max() < 1e-4 * np.degrees(dip.max())
        assert found.dist_m == pytest.approx(dip * radius_m(LAT, self.AZ), rel=0.01)  # samples grow by 1 %
        assert found.height_m == pytest.approx(np.zeros(4), abs=1e-6)

    @pytest.mark.parametrize("refraction_k", [0.0, 0.13])
    def test_handbook(self, refraction_k, sea):
        root = np.sqrt(100.0)
        found = skyline.skyline(sea, LON, LAT, 100.0, self.AZ, 60_000.0, 100.0, refraction_k=refraction_k)
        # The handbooks' sphere has 6371 km, the radii along these azimuths 6383 to 6394 km; printed to three digits.
        assert -found.alt_deg * 60 / root == pytest.approx(HANDBOOK["dip_arcmin_per_root_m"][str(refraction_k)], rel=0.003)
        assert found.dist_m / 1000 / root == pytest.approx(HANDBOOK["sea_horizon_km_per_root_m"][str(refraction_k)], rel=0.012)

    @pytest.mark.parametrize("refraction_k", [0.0, 0.13])
    @pytest.mark.parametrize(("lens_m", "dist_km"), [(2.0, 20.0), (10.0, 40.0), (100.0, 60.0), (600.0, 150.0)])
    def test_hidden_beyond_the_horizon(self, lens_m, dist_km, refraction_k, sea):
        az = np.array([10.0, 100.0])
        lon2, lat2, _ = WGS84.fwd(np.full(2, LON), np.full(2, LAT), az, np.full(2, dist_km * 1000))
        found = sight.lines_of_sight(sea, LON, LAT, lens_m, lon2, lat2, 0.0, 2000.0, 1000.0, refraction_k=refraction_k)
        flatter = radius_m(LAT, az) / (1.0 - refraction_k)  # what bent light makes of the Earth, to first order in k
        hidden = flatter / np.cos(dist_km * 1000 / flatter - np.arccos(flatter / (flatter + lens_m))) - flatter
        assert found.hidden_m == pytest.approx(
            hidden, rel=2e-3, abs=0.02
        )  # [m] the form is of first order in k; a sample 125 m beside the horizon
        assert found.visible.all()
        assert (found.clear_m > 0.0).all()

    @pytest.mark.parametrize("refraction_k", [0.0, 0.13, 0.5])
    def test_ray_between_two_of_one_height_comes_lowest_halfway(self, refraction_k, sea):
        dist, height = 80_000.0, 200.0
        lon2, lat2, _ = WGS84.fwd(LON, LAT, 100.0, dist)
        found = sight.lines_of_sight(sea, LON, LAT, height, lon2, lat2, 0.0, height, 1000.0, refraction_k=refraction_k)
        flatter = radius_m(LAT, 100.0) / (1.0 - refraction_k)
        assert found.clear_m[0] == pytest.approx((flatter + height) * np.cos(dist / 2 / flatter) - flatter, abs=0.1)  # [m] first order in k
        assert found.block_m[0] == pytest.approx(dist / 2, abs=1000.0)  # [m] a flat minimum: 0.08 m higher there


class TestCone:
    """A cone of slope s whose top stands A above the lens, D away, seen over a plane.

    An angle phi beside its top, its outline has the tangent (A / D) cos phi - |sin phi| sqrt(s^2 - (A / D)^2): the greatest of
    (A - s r(t)) / t over the ray, r being the distance of the ray's point from the axis.
    """

    CELL_M, COUNT, SLOPE = 10.0, 1601, 0.4

    def cone(self, dist):
        north, east = north_and_east_m(self.COUNT, self.CELL_M)
        return 1000.0 - self.SLOPE * np.hypot(north - dist, east)

    @pytest.mark.parametrize("rise_m", [-100.0, 0.0, 60.0])
    @pytest.mark.parametrize("dist_m", [500.0, 2000.0, 6000.0])
    def test_outline(self, dist_m, rise_m):
        az = np.concatenate([np.arange(0.0, 60.0, 3.0), np.arange(300.0, 360.0, 3.0)])
        beside, steep = np.radians(az), rise_m / dist_m
        falls = np.sqrt(self.SLOPE**2 - steep**2)
        far = dist_m / (np.cos(beside) + np.abs(np.sin(beside)) * steep / falls)  # where the ray touches the cone
        az, beside, far = az[far < 7500], beside[far < 7500], far[far < 7500]
        assert az.size > 20

        ground = model(self.cone(dist_m), self.CELL_M)
        found = skyline.skyline(ground, LON, LAT, 1000.0 - rise_m, az, 7900.0, 20.0, refraction_k=PLANE)
        tangent = steep * np.cos(beside) - np.abs(np.sin(beside)) * falls
        rounded = self.SLOPE * self.CELL_M / 8 / dist_m  # an eighth of a cell beside the top
        assert np.abs(found.alt_deg - np.degrees(np.arctan(tangent))).max() < 0.01 + np.degrees(rounded)  # [deg] samples grow by 1 %
        assert found.dist_m == pytest.approx(far, rel=0.04)  # a flat maximum
        assert found.dist_m[0] == pytest.approx(dist_m, abs=self.CELL_M / 4)
        assert found.height_m[0] == pytest.approx(1000.0, abs=self.SLOPE * self.CELL_M / 4)

    @pytest.mark.parametrize("top_m", [850.0, 1000.0, 1300.0])
    def test_ray_over_its_top(self, top_m):
        lens, dist, length = 1050.0, 2000.0, 5000.0
        lon2, lat2, _ = WGS84.fwd(LON, LAT, 0.0, length)
        ground = model(self.cone(dist), self.CELL_M)
        found = sight.lines_of_sight(ground, LON, LAT, lens, lon2, lat2, 0.0, top_m, refraction_k=PLANE)
        steep = (top_m - lens) / length
        # The ray comes nearest to the cone over its top, as long as it is less steep than that.
        assert found.clear_m[0] == pytest.approx(lens + steep * dist - 1000.0, abs=2 * self.SLOPE * self.CELL_M / 4)
        assert found.block_m[0] == pytest.approx(dist, abs=self.CELL_M / 2)
        hidden = lens + (1000.0 - lens) * length / dist
        assert found.hidden_m[0] == pytest.approx(min(hidden, top_m), abs=self.SLOPE * self.CELL_M / 4 * length / dist)


@pytest.mark.parametrize("dist_m", [300.0, 3000.0])
def test_ridge_of_one_height_sinks_with_the_cosine(dist_m):
    north, _ = north_and_east_m(1601, 10.0)
    heights = np.broadcast_to(np.maximum(200.0 - np.abs(north - dist_m), 0.0), (1601, 1601))
    az = np.arange(-60.0, 61.0, 4.0)
    found = skyline.skyline(model(heights, 10.0), LON, LAT, 20.0, az, 7900.0, 20.0, refraction_k=PLANE)
    far = dist_m / np.cos(np.radians(az))
    assert found.dist_m == pytest.approx(far, rel=0.002)
    assert found.alt_deg == pytest.approx(np.degrees(np.arctan2(180.0, far)), abs=0.06)  # [deg] a thousandth of the way down its side


def test_the_nearer_of_two_ridges_hides_the_other_until_the_lens_climbs():
    north, _ = north_and_east_m(1601, 10.0)
    near, far = (height - 0.5 * np.abs(north - dist) for height, dist in ((100.0, 1000.0), (300.0, 4000.0)))
    heights = np.broadcast_to(np.maximum(np.maximum(near, far), 0.0), (1601, 1601))
    # From a lens at h both stand at one altitude where (100 - h) / 1000 = (300 - h) / 4000.
    equal = 100.0 / 3.0
    found = skyline.skyline(model(heights, 10.0), LON, LAT, [equal - 3.0, equal + 3.0], 0.0, 7900.0, 20.0, refraction_k=PLANE)
    assert found.dist_m == pytest.approx([1000.0, 4000.0], abs=10.0)
