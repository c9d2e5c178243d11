"""Shutter rules against figures in use; the fastest star and its trail against Skyfield's places through PROJ's gnomonic projection."""

import numpy as np
import pytest
from gnomonic import directions_in_picture, picture
from skyfield.api import wgs84
from skyfield_places import times

from skyalidade.lens.frame import Frame
from skyalidade.lens.shutter import fastest_declination_deg, rule_npf_s, rule_of_500_s, trail_px

FULL = (36.0, 24.0, 6000)
AIMS = [(180.0, 12.0, 36.0), (90.0, 0.0, -33.0), (0.0, 40.0, 51.0), (222.0, 30.0, -24.6), (140.0, 65.0, 5.0), (310.0, -15.0, 60.0)]
T_UTC_S = np.datetime64("2027-06-06T01:00:00").astype(float)


def test_npf_in_use():
    """14 mm f/2.8 with pixels of 4.3 µm: 8.8 s at -29°, 7.7 s at the equator (figures in use among photographers; no source)."""
    assert rule_npf_s(14.0, 2.8, 4.3, [-29.0, 0.0]) == pytest.approx([8.8, 7.7], abs=0.05)


@pytest.mark.parametrize(("focal", "crop", "seconds"), [(20.0, 1.0, 25.0), (24.0, 1.0, 20.8), (16.0, 1.5, 20.8), (25.0, 2.0, 10.0)])
def test_rule_of_500(focal, crop, seconds):
    """Common practice, no source."""
    assert rule_of_500_s(focal, crop) == pytest.approx(seconds, abs=0.05)


def sky_of(frame, aim_az, aim_alt, count=401):
    """Azimuths and altitudes of a grid of places in the picture, from the horizon up."""
    horizon = picture(aim_az, 0.0, aim_az, aim_alt)[1]
    if horizon >= frame.half_height:
        return np.zeros((2, 0))
    low = max(horizon + 1e-9, -frame.half_height)
    x, y = np.meshgrid(np.linspace(-1, 1, count) * frame.half_width, np.linspace(low, frame.half_height, count))
    az, alt = directions_in_picture(x, y, aim_az, aim_alt)
    assert alt.min() >= -1e-6
    return az.ravel(), alt.ravel()


@pytest.mark.parametrize("focal", [14.0, 50.0])
@pytest.mark.parametrize("portrait", [False, True], ids=["landscape", "portrait"])
@pytest.mark.parametrize(("az", "alt", "lat"), AIMS)
def test_declination_nearest_to_the_equator(focal, portrait, az, alt, lat):
    frame = Frame(focal, *FULL)
    frame = frame.upright if portrait else frame
    sky_az, sky_alt = sky_of(frame, az, alt)
    fastest = fastest_declination_deg(frame, az, alt, lat)
    if not sky_az.size:
        assert np.isnan(fastest)
        return
    az_rad, alt_rad, lat_rad = np.radians(sky_az), np.radians(sky_alt), np.radians(lat)
    dec = np.degrees(np.arcsin(np.sin(lat_rad) * np.sin(alt_rad) + np.cos(lat_rad) * np.cos(alt_rad) * np.cos(az_rad)))
    if dec.min() < 0 < dec.max():
        assert fastest == 0.0
    else:
        assert fastest == pytest.approx(dec[np.abs(dec).argmin()], abs=frame.fov_w_deg / 400)  # deg: the grid of places


@pytest.mark.parametrize("focal", [14.0, 50.0])
@pytest.mark.parametrize("portrait", [False, True], ids=["landscape", "portrait"])
@pytest.mark.parametrize(("az", "alt", "lat"), AIMS)
def test_longest_trail_by_skyfield(focal, portrait, az, alt, lat, record_property):
    """Stars all over the sky of the frame, placed by Skyfield at two times without refraction and projected by PROJ."""
    frame, shutter_s = Frame(focal, *FULL), 20.0
    frame = frame.upright if portrait else frame
    sky_az, sky_alt = sky_of(frame, az, alt, count=81)
    length = trail_px(frame, az, alt, lat, shutter_s)
    if not sky_az.size:
        assert np.isnan(length)
        return
    ends = [picture(*places, az, alt) for places in moved(wgs84.latlon(lat, -33.0), sky_az, sky_alt, shutter_s)]
    longest = np.hypot(*(ends[1] - ends[0])).max() * frame.focal_px
    record_property("trail", 100 * abs(float(length) / longest - 1.0))
    # A trail of 20 s is bent and its ends are not where it is fastest: a part in some hundreds; the grid holds the frame's corners
    assert length == pytest.approx(longest, rel=0.003)


def moved(site, az_deg, alt_deg, seconds):
    """Azimuths and altitudes of stars half the time before and after they stand at given ones, by Skyfield's rotations."""
    middle, *ends = (times(T_UTC_S + share * seconds) for share in (0.0, -0.5, 0.5))
    az, alt = np.radians(az_deg), np.radians(alt_deg)
    stars = site.rotation_at(middle).T @ np.stack([np.cos(alt) * np.cos(az), np.cos(alt) * np.sin(az), np.sin(alt)])  # north, east, up
    for moment in ends:
        north, east, up = site.rotation_at(moment) @ stars
        yield np.degrees(np.arctan2(east, north)) % 360.0, np.degrees(np.arcsin(up))


def test_the_rotations_of_skyfield_are_its_places():
    """What the test above leans on: a star's azimuth and altitude by Skyfield's own call, aberration and deflection left out."""
    site = wgs84.latlon(36.0, -33.0)
    (az, alt), _ = moved(site, np.array([77.0]), np.array([31.0]), 600.0)
    star = site.at(times(T_UTC_S)).from_altaz(alt_degrees=31.0, az_degrees=77.0)
    place = site.at(times(T_UTC_S - 300.0)).from_altaz(alt_degrees=float(alt[0]), az_degrees=float(az[0]))
    assert star.separation_from(place).degrees < 1e-6


def test_in_the_middle_of_a_long_lens_a_trail_is_the_turning_of_the_sky():
    """15.04" a second along the equator: focal length x angle / pixel."""
    frame = Frame(400.0, *FULL)
    expected = np.radians(15.041 / 3600.0 * 10.0) * 400.0 / 0.006
    assert trail_px(frame, 180.0, 54.0, 36.0, 10.0) == pytest.approx(expected, rel=0.005)  # off the middle it is drawn out by 0.3 %


def test_no_sky_no_stars():
    frame = Frame(50.0, *FULL)
    assert np.isnan(fastest_declination_deg(frame, 0.0, -40.0, 36.0))
    assert np.isnan(trail_px(frame, 0.0, -40.0, 36.0, 10.0))


@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["scalar", "array", "two axes"])
def test_shape_is_kept(shape):
    assert fastest_declination_deg(Frame(24.0, *FULL), np.full(shape, 10.0), 5.0, 36.0).shape == shape
    assert trail_px(Frame(24.0, *FULL), 10.0, 5.0, np.full(shape, 36.0), 10.0).shape == shape
