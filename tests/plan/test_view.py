"""The view from a tripod against Skyfield's places and plain geometry."""

import numpy as np
import pytest
from gnomonic import picture
from skyfield_places import Observer, apart_arcsec, galactic_star, target, times

from skyalidade.lens.frame import Frame
from skyalidade.plan.targets import target as our_target
from skyalidade.plan.view import BEYOND_FRAME, Nights, Scene, azimuths_across, corners_of, ground_of, on_disc

SITE = (-33.0, 36.0, 250.0)
T_UTC_S = np.datetime64("2027-06-14T00:30:00").astype(float) + np.array([0.0, 5400.0])
FRAME = Frame(20.0, 36.0, 24.0, 6000)
TOL_ARCSEC = 0.1  # the promise for a place


def over(body="core", **how):
    return Nights(T_UTC_S, our_target(body), pressure_hPa=0.0, **how).over(*SITE)


@pytest.mark.parametrize("name", ["core", "sun", "moon"])
def test_places_by_skyfield(name):
    alt, az, _ = Observer(*SITE, times(T_UTC_S)).altaz(target(name))
    for moment, their_alt, their_az in zip(over(), alt, az):
        our_az, our_alt = getattr(moment, name)
        assert apart_arcsec(our_alt, our_az, their_alt, their_az) < TOL_ARCSEC


def test_the_band_by_skyfield():
    moment = over()[0]
    observer = Observer(*SITE, times(T_UTC_S[:1]))
    for line, lat in zip(moment.band, (0.0, 10.0, -10.0)):
        for i in range(0, 361, 45):
            alt, az, _ = observer.altaz(galactic_star(i - 180.0, lat))
            assert apart_arcsec(line[1, i], line[0, i], alt[0], az[0]) < 60.0  # three axes know of aberration, not each point: 1/60°


@pytest.mark.parametrize("body", ["core", "moon"])
def test_the_way_of_a_body_by_skyfield(body):
    for moment in over(body, way_s=1800.0):
        t_utc_s, az, alt = moment.way
        assert (t_utc_s - moment.t_utc_s).tolist() == [-1800.0, -1200.0, -600.0, 0.0, 600.0, 1200.0, 1800.0]
        their_alt, their_az, _ = Observer(*SITE, times(t_utc_s)).altaz(target(body))
        assert apart_arcsec(alt, az, their_alt, their_az).max() < TOL_ARCSEC


def test_the_way_of_the_arch_passes_its_top():
    for moment in over("arch", way_s=600.0):
        assert moment.way[1:, 1] == pytest.approx([moment.columns["az_deg"], moment.columns["alt_deg"]], abs=1e-6)


def test_air_lifts_all_of_it():
    lifted, bare = Nights(T_UTC_S, our_target("moon")).over(*SITE)[0], over("moon")[0]
    for name in ("core", "moon"):
        assert 0.0 < getattr(lifted, name)[1] - getattr(bare, name)[1] < 0.1  # deg: both stand over 15°
    assert (lifted.way[2] > bare.way[2]).all()


def test_a_disc_is_round_and_turned_as_told():
    turn = np.linspace(0.0, 2.0 * np.pi, 100)
    az, alt = on_disc((222.0, 29.0), 0.26, 0.0, np.cos(turn), np.sin(turn))
    assert apart_arcsec(alt, az, *np.full((2, 100), [[29.0], [222.0]])) / 3600.0 == pytest.approx(0.26, abs=1e-6)
    top_az, top_alt = on_disc((222.0, 29.0), 0.26, 0.0, np.array([1.0]), np.array([0.0]))
    assert (top_az[0], top_alt[0]) == pytest.approx((222.0, 29.26), abs=1e-4)
    left_az, _ = on_disc((222.0, 29.0), 0.26, 90.0, np.array([1.0]), np.array([0.0]))
    assert left_az[0] < 222.0  # to the left of one who looks at it


def test_the_lit_part_is_as_large_as_told_and_faces_the_sun():
    for moment in over("moon"):
        outline = picture(*moment.lit_part, *moment.moon)
        x, y = outline
        area = abs(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1))) / 2.0
        radius = np.tan(np.radians(moment.moon_semi_deg))
        assert area / (np.pi * radius**2) == pytest.approx(moment.columns["moon_lit"], abs=0.002)  # 60 points to a half circle
        toward = on_disc(moment.moon, moment.moon_semi_deg, moment.limb_deg, np.array([1.0, -1.0]), np.zeros(2))
        apart = apart_arcsec(toward[1], toward[0], *np.full((2, 2), [[moment.sun[1]], [moment.sun[0]]]))
        assert (apart[1] - apart[0]) / 3600.0 == pytest.approx(2.0 * moment.moon_semi_deg, abs=1e-4)  # the whole disc nearer


def test_a_moment_outside_the_ephemeris_is_refused():
    with pytest.raises(ValueError, match="ephemeris"):
        Nights([4e9], our_target("core"))


@pytest.mark.parametrize("aim_alt", [-20.0, 0.0, 15.0, 40.0])
def test_azimuths_reach_across_the_picture(aim_alt):
    az = azimuths_across(FRAME, 200.0, aim_alt)
    half = BEYOND_FRAME * FRAME.half_width
    for end, sign in ((az[0], -1.0), (az[-1], 1.0)):
        alt = np.linspace(-89.0, 89.0, 2000)
        x, y = picture(end, alt, 200.0, aim_alt)
        inside = np.abs(y) < BEYOND_FRAME * FRAME.half_height * 0.999
        assert (x[inside] * sign > half * 0.999).all()
    assert np.median(az) == pytest.approx(200.0)


def test_azimuths_run_all_round_where_the_zenith_is_in_the_picture():
    az = azimuths_across(FRAME, 200.0, 70.0)
    assert (az[0], az[-1]) == (20.0, 380.0)


def test_places_in_the_picture_by_gnomonic_projection():
    scene = Scene(FRAME, 182.0, 14.0, over()[0], [], [])
    az, alt = np.array([150.0, 182.0, 200.0, 10.0]), np.array([5.0, 40.0, -3.0, 0.0])
    assert scene.at(az, alt)[:, :3] == pytest.approx(picture(az, alt, 182.0, 14.0)[:, :3], abs=1e-12)
    assert np.isnan(scene.at(az, alt)[:, 3]).all()


def test_corners_of_subjects_from_metres():
    lines = {name: np.array([value]) for name, value in (("bearing_deg", 90.0), ("base_alt_deg", -2.0), ("top_alt_deg", 20.0))}
    lines["width_deg"] = np.degrees(2.0 * np.arctan([5.0 / 40.0]))  # 10 m at 40 m
    az, alt = corners_of(lines)[0]
    across, far = 40.0 * np.tan(np.radians(az - 90.0)), 40.0 / np.cos(np.radians(az - 90.0))
    assert across == pytest.approx([-5.0, 5.0, 5.0, -5.0])
    up = far * np.tan(np.radians(alt))
    assert up == pytest.approx([40.0 * np.tan(np.radians(angle)) for angle in (-2.0, -2.0, 20.0, 20.0)])


def test_without_terrain_the_horizon_is_level():
    for relief, lens in ((None, 100.0), (object(), np.nan)):
        ((reach, az, alt),) = ground_of(relief, -33.0, 36.0, lens, np.arange(5.0))
        assert np.isnan(reach)
        assert az.tolist() == [0.0, 1.0, 2.0, 3.0, 4.0]
        assert (alt == 0.0).all()
