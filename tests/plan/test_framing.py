"""Framing against a second way: corners in metres, the gnomonic projection and Skyfield's places."""

from dataclasses import replace

import numpy as np
import pytest
from gnomonic import picture
from pyproj import Geod
from skyfield_places import Observer, apart_arcsec, target, times

from skyalidade.plan.drawing import wedges
from skyalidade.plan.framing import ARCH, BETWEEN, BODY, ONCE, SUBJECT, TWICE, Shooting, frame_of, framing
from skyalidade.plan.places import places
from skyalidade.plan.targets import target as our_target
from skyalidade.sky.horizontal import Sites

GEOD = Geod(ellps="WGS84")
COUNT = 400


def lines(**columns):
    usual = {"dist_m": 500.0, "bearing_deg": 180.0, "base_alt_deg": -0.2, "top_alt_deg": 2.0, "width_deg": 1.0}
    return {name: np.atleast_1d(np.asarray(value, float)) for name, value in {**usual, **columns}.items()}


def body(count=1, **columns):
    usual = {"az_deg": 182.0, "alt_deg": 21.0, "semi_deg": np.nan, "apex_az": 90.0, "apex_deg": 40.0}
    return {name: np.broadcast_to(np.asarray(value, float), count) for name, value in {**usual, **columns}.items()}


def no_body(count=1):
    return {name: np.full(count, np.nan) for name in body()}


def shoot(focal=24.0, portrait=False, **how):
    return Shooting(frame_of("full_frame", focal, portrait=portrait), **how)


def framed(pair_lines, bodies, shooting, lat_deg=36.0):
    return framing(pair_lines, bodies, np.broadcast_to(np.float64(lat_deg), pair_lines["dist_m"].shape), shooting)


@pytest.fixture
def scenes():
    """Subjects from a needle to a wall that fills the view, bodies from the horizon to near the zenith."""
    rng = np.random.default_rng(48)
    base = rng.uniform(-8.0, 3.0, COUNT)
    pairs = lines(
        dist_m=rng.uniform(10.0, 5000.0, COUNT),
        bearing_deg=rng.uniform(0.0, 360.0, COUNT),
        base_alt_deg=base,
        top_alt_deg=base + rng.uniform(0.0, 30.0, COUNT),
        width_deg=rng.uniform(0.0, 70.0, COUNT),
    )
    sky = body(
        COUNT,
        az_deg=(pairs["bearing_deg"] + rng.normal(0.0, 25.0, COUNT)) % 360.0,
        alt_deg=rng.uniform(1.0, 75.0, COUNT),
        semi_deg=np.where(rng.random(COUNT) < 0.5, 0.26, np.nan),
    )
    return pairs, sky


def corners(pairs):
    """Azimuth and altitude of a subject's corners, from its corners in metres."""
    dist, half = pairs["dist_m"], pairs["dist_m"] * np.tan(np.radians(pairs["width_deg"] / 2.0))
    for side in (-1.0, 1.0):
        for alt in (pairs["base_alt_deg"], pairs["top_alt_deg"]):
            up = dist * np.tan(np.radians(alt))
            yield pairs["bearing_deg"] + side * np.degrees(np.arctan2(half, dist)), np.degrees(np.arctan2(up, np.hypot(half, dist)))


def limb(sky):
    """Azimuth and altitude of points on a body's limb, by spherical triangles; its centre where it has no disc."""
    radius, alt = np.radians(np.nan_to_num(sky["semi_deg"])), np.radians(sky["alt_deg"])
    for turn in np.linspace(0.0, 2.0 * np.pi, 720, endpoint=False):
        up = np.arcsin(np.sin(alt) * np.cos(radius) + np.cos(alt) * np.sin(radius) * np.cos(turn))
        across = np.arctan2(np.sin(turn) * np.sin(radius) * np.cos(alt), np.cos(radius) - np.sin(alt) * np.sin(up))
        yield sky["az_deg"] + np.degrees(across), np.degrees(up)


@pytest.mark.parametrize("level", [False, True], ids=["tilted", "level"])
@pytest.mark.parametrize("portrait", [False, True], ids=["landscape", "portrait"])
@pytest.mark.parametrize("aim", [SUBJECT, BODY, BETWEEN])
def test_what_fits_and_how_large_it_is_by_gnomonic_projection(scenes, aim, portrait, level):
    pairs, sky = scenes
    margin, focal = 0.04, 18.0
    table, _ = framed(pairs, sky, shoot(focal, portrait, aim=aim, level=level, margin=margin))
    half = np.array([12.0, 18.0] if portrait else [18.0, 12.0]) / focal
    inside, edge = {}, np.full(COUNT, np.inf)
    for what, shape in (("subj_fits", list(corners(pairs))), ("body_fits", list(limb(sky)))):
        seen = np.array([picture(*place, table["aim_az"], table["aim_alt"]) for place in shape])
        parts = np.abs(seen) / (half * (1.0 - 2.0 * margin))[:, None]
        inside[what] = (parts <= 1.0).all(axis=(0, 1))
        edge = np.minimum(edge, np.abs(parts.max(axis=(0, 1)) - 1.0))
        if what == "subj_fits":
            low, high = seen.min(axis=0), seen.max(axis=0)
    clear = edge > 1e-4  # of half the frame: between the points of the limb
    for what, expected in inside.items():
        assert (table[what].astype(bool) == expected)[clear].all(), what
    assert (table["fits"].astype(bool) == (inside["subj_fits"] & inside["body_fits"]))[clear].all()
    assert inside["subj_fits"].sum() > 30
    assert inside["body_fits"].sum() > 30
    ahead = np.isfinite(table["subj_h_px"]) & np.isfinite(low).all(axis=0) & np.isfinite(high).all(axis=0)
    assert ahead.sum() > 0.7 * COUNT
    size_px = (high - low) * focal / 0.006
    assert table["subj_w_px"][ahead] == pytest.approx(size_px[0][ahead], rel=1e-6, abs=1e-4)
    assert table["subj_h_px"][ahead] == pytest.approx(size_px[1][ahead], rel=1e-6, abs=1e-4)
    assert table["subj_h_pct"][ahead] == pytest.approx(100.0 * table["subj_h_px"][ahead] / (6000 if portrait else 4000), rel=1e-12)


@pytest.mark.parametrize("level", [False, True], ids=["tilted", "level"])
@pytest.mark.parametrize("aim", [SUBJECT, BODY, BETWEEN])
def test_with_the_longest_focal_length_it_just_fits(scenes, aim, level):
    pairs, sky = scenes
    table, _ = framed(pairs, sky, shoot(aim=aim, level=level))
    known = np.flatnonzero(np.isfinite(table["fit_mm"]) & (table["fit_mm"] > 1.0))[:40]
    assert known.size > 20
    for i in known:
        one = [{name: column[i : i + 1] for name, column in columns.items()} for columns in (pairs, sky)]
        for share, fits in ((0.995, True), (1.005, False)):
            again, _ = framed(*one, shoot(share * table["fit_mm"][i], aim=aim, level=level))
            assert again["fits"].tolist() == [fits]


def test_where_the_camera_is_aimed(scenes):
    pairs, sky = scenes
    at_body, _ = framed(pairs, sky, shoot(aim=BODY))
    assert (at_body["aim_az"] == sky["az_deg"]).all()
    assert (at_body["aim_alt"] == sky["alt_deg"]).all()
    for aim in (SUBJECT, BODY, BETWEEN):
        level, _ = framed(pairs, sky, shoot(aim=aim, level=True))
        assert (level["aim_alt"] == 0.0).all()
    thin = {**pairs, "width_deg": np.zeros(COUNT), "base_alt_deg": pairs["top_alt_deg"]}
    at_subject, _ = framed(thin, sky, shoot(aim=SUBJECT))
    assert np.abs((at_subject["aim_az"] - thin["bearing_deg"] + 180.0) % 360.0 - 180.0).max() < 1e-9
    assert at_subject["aim_alt"] == pytest.approx(thin["top_alt_deg"], abs=1e-9)


def test_a_body_that_is_down_is_not_in_the_picture():
    down, _ = framed(lines(), body(alt_deg=-1.0), shoot())
    alone, _ = framed(lines(), no_body(), shoot())
    assert (down["aim_az"], down["aim_alt"]) == (alone["aim_az"], alone["aim_alt"])
    assert [down[name].tolist() for name in ("subj_fits", "body_fits", "fits")] == [[True], [False], [False]]
    assert np.isnan(down["fit_mm"])
    assert [alone[name].tolist() for name in ("subj_fits", "body_fits", "fits")] == [[True], [None], [True]]
    setting, _ = framed(lines(), body(alt_deg=-0.1, semi_deg=0.26), shoot())
    assert setting["body_fits"].tolist() == [True]  # its upper limb is up


def test_where_only_the_top_is_known_there_is_no_size():
    table, _ = framed(lines(base_alt_deg=np.nan), body(), shoot())
    assert np.isnan(table["subj_h_px"])
    assert np.isnan(table["disc_h_m"])
    assert table["fits"].tolist() == [True]


def test_moon_as_wide_as_ten_metres_at_eleven_hundred():
    """Common practice, no source: 0.53° wide, a 10 m subject at about 1.1 km."""
    wide = np.degrees(2.0 * np.arctan(5.0 / 300.0))
    table, _ = framed(lines(dist_m=300.0, width_deg=wide, base_alt_deg=0.0, top_alt_deg=0.0), body(semi_deg=0.265), shoot())
    assert table["disc_w_m"] == pytest.approx(1081.0, abs=1.0)  # 10 m / (2 tan 0.265°)
    assert np.isnan(table["disc_h_m"])


# focus and shutter


@pytest.mark.parametrize(("dist_m", "how_often"), [(3.0, TWICE), (10.0, ONCE)])
def test_the_stars_rule_the_focus(dist_m, how_often):
    """24 mm f/2.8, stars within 2 pixels of 6 µm: focus at 17.2 m, sharp from 4.9 m to 0.03 mm (see the tests of focus)."""
    table, _ = framed(lines(dist_m=dist_m), body(), shoot())
    assert table["star_m"] == pytest.approx(24.0**2 / (2.8 * 0.012) / 1000.0 + 0.024)
    assert table["sharp_m"] == pytest.approx(4.905, abs=0.001)
    assert table["focus"].tolist() == [how_often]
    assert table["focus_m"].tolist() == [dist_m]
    assert table["blur_px"] == pytest.approx(24.0**2 / (2.8 * (1000.0 * dist_m - 24.0)) / 0.006)
    held, _ = framed(lines(dist_m=dist_m), body(), shoot(focus_m=float(table["star_m"][0])))
    assert held["blur_px"] == pytest.approx(2.0)
    assert held["near_m"] == pytest.approx(held["sharp_m"])
    assert np.isnan(held["far_m"])  # nothing is too far to be sharp


def test_the_circle_of_confusion_goes_with_the_sensor():
    small = Shooting(frame_of("four_thirds", 12.0))
    table, _ = framed(lines(), body(), small)
    assert table["hyper_m"] == pytest.approx(12.0**2 / (2.8 * 0.015) / 1000.0 + 0.012, rel=0.002)  # half the full frame's, common practice
    given, _ = framed(lines(), body(), replace(small, coc_mm=0.020))
    assert given["hyper_m"] == pytest.approx(12.0**2 / (2.8 * 0.020) / 1000.0 + 0.012)


def test_a_chosen_shutter_and_the_one_of_the_rule():
    by_rule, _ = framed(lines(), body(), shoot())
    chosen, _ = framed(lines(), body(), shoot(shutter_s=20.0))
    assert by_rule["shutter_s"].tolist() == by_rule["npf_s"].tolist() == chosen["npf_s"].tolist()
    assert chosen["shutter_s"].tolist() == [20.0]
    assert chosen["trail_px"] / by_rule["trail_px"] == pytest.approx(20.0 / by_rule["npf_s"])


# panoramas


def held(frame, heads, az, alt):
    """Whether each place is in some frame of a panorama, by gnomonic projection."""
    inside = np.zeros(az.shape, dtype=bool)
    for head in zip(*heads):
        x, y = picture(az, alt, *head)
        inside |= (np.abs(x) <= frame.half_width * (1 + 1e-9)) & (np.abs(y) <= frame.half_height * (1 + 1e-9))
    return inside


@pytest.mark.parametrize("apex_deg", [5.0, 25.0, 60.0, 88.0])
@pytest.mark.parametrize("focal", [14.0, 24.0, 35.0])
def test_the_whole_arch_and_the_subject_are_in_the_panorama(apex_deg, focal):
    """The band to 10° on either side of the plane, by turning a circle about its pole."""
    pairs, sky = lines(bearing_deg=150.0, width_deg=8.0), body(apex_az=77.0, apex_deg=apex_deg)
    shooting = shoot(focal, portrait=True, panorama=ARCH)
    table, mosaic = framed(pairs, sky, shooting)
    lon, lat = np.meshgrid(np.radians(np.linspace(-180, 180, 181)), np.radians(np.linspace(-10, 10, 9)))
    along, across, pole = np.cos(lat) * np.sin(lon), np.cos(lat) * np.cos(lon), np.sin(lat)
    tip = np.radians(apex_deg)  # the plane is tipped up about the line of its feet
    ahead, up = across * np.cos(tip) - pole * np.sin(tip), across * np.sin(tip) + pole * np.cos(tip)
    az, alt = 77.0 + np.degrees(np.arctan2(along, ahead)), np.degrees(np.arcsin(np.clip(up, -1, 1)))
    seen = alt >= 0
    _, row, column, *heads = mosaic.heads()
    assert held(shooting.frame, heads, az[seen], np.minimum(alt[seen], 89.999)).all()
    for place in corners(pairs):
        assert held(shooting.frame, heads, *place).all()
    assert table["pano_shots"].tolist() == [row.size]
    assert (table["pano_rows"].tolist(), table["pano_cols"].tolist()) == ([row.max()], [column.max()])


def test_subject_and_body_are_in_the_panorama(scenes):
    pairs, sky = scenes
    shooting = shoot(50.0)
    table, mosaic = framed(pairs, sky, shooting)
    view, _, _, az, alt = mosaic.heads()
    assert np.bincount(view, minlength=COUNT).tolist() == table["pano_shots"].tolist()
    shapes = [*corners(pairs), *list(limb(sky))[::90]]
    for i in range(0, COUNT, 7):
        mine = view == i
        for place_az, place_alt in shapes:
            assert held(shooting.frame, (az[mine], alt[mine]), place_az[i : i + 1], place_alt[i : i + 1]).all()


def test_what_fits_needs_one_frame_aimed_as_it_is(scenes):
    table, mosaic = framed(*scenes, shoot(20.0))
    fits = table["fits"].astype(bool)
    assert 0 < fits.sum() < COUNT
    assert (table["pano_shots"][fits] == 1).all()
    view, _, _, az, alt = mosaic.heads()
    for i in np.flatnonzero(fits)[:20]:
        assert (az[view == i].tolist(), alt[view == i].tolist()) == ([table["aim_az"][i]], [table["aim_alt"][i]])


# places and wedges


def test_places_row_by_row_by_skyfield():
    rng = np.random.default_rng(11)
    count = 60
    lon, lat, height = rng.uniform(-180, 180, count), rng.uniform(-80, 80, count), rng.uniform(0, 3000, count)
    t_utc_s = np.datetime64("2027-01-01").astype("datetime64[s]").astype(float) + rng.integers(0, 365 * 24, count) * 3600.0
    t_utc_s[5] = np.nan
    which = rng.integers(0, 3, count)
    found = places(Sites(lon, lat, height), t_utc_s, [our_target(name) for name in ("core", "sun", "moon")], which, pressure_hPa=0.0)
    assert all(np.isnan(column[5]) for column in found.values())
    for i in np.delete(np.arange(count), 5):
        alt, az, _ = Observer(lon[i], lat[i], height[i], times(t_utc_s[i : i + 1])).altaz(target(("core", "sun", "moon")[which[i]]))
        assert apart_arcsec(found["alt_deg"][i], found["az_deg"][i], alt[0], az[0]) < 0.1  # the promise for a place
        assert np.isnan(found["semi_deg"][i]) == (which[i] == 0)


def test_corners_of_wedges_by_pyproj():
    lon, lat = np.array([-33.0, 179.99, 10.0, 0.0]), np.array([36.0, -17.0, 69.0, 89.9])
    left, right, dist = np.array([170.0, 60.0, 300.0, 350.0]), np.array([190.0, 140.0, 20.0, 30.0]), np.array([900.0, 40_000.0, 5e4, 3e4])
    ring_lon, ring_lat = wedges(lon, lat, left, right, dist)
    assert (ring_lat[:, 0] == lat).all()
    assert (ring_lon[:, 0] == lon).all()
    for i in range(4):
        for az, vertex in ((left[i], 8), (right[i], 56)):
            end_lon, end_lat, _ = GEOD.fwd(lon[i], lat[i], az, dist[i])
            assert GEOD.inv(end_lon, end_lat, ring_lon[i, vertex], ring_lat[i, vertex])[2] < 1e-3
        bearing, _, far = (np.array(v) for v in GEOD.inv(*np.broadcast_arrays(lon[i], lat[i], ring_lon[i, 8:57], ring_lat[i, 8:57])))
        assert far == pytest.approx(dist[i], abs=1e-3)
        turned = (bearing - left[i]) % 360.0
        assert (np.diff(turned[1:]) > 0).all()
