"""Geodesics against Karney's digits, an Australian worked example and GeographicLib; drawn lines against the true ones."""

import erfa
import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from published import dms_deg, rows, values
from pyproj import Geod, Transformer

from skyalidade.ground import geodesic

WGS84 = Geodesic.WGS84  # GeographicLib in Python: another program than PROJ, though by the same author
TOL_M = 1e-6  # the digits are given to a nanometre; a planner needs no more than this
TOL_DEG = 1e-9
DRAWN_TOL_M = 1.0  # the promise for every line on a map


def wrapped(deg):
    return (np.asarray(deg) + 180.0) % 360.0 - 180.0


@pytest.fixture(scope="module")
def karney():
    table = rows("geographiclib_testcases")
    return {name: np.array([float(row[name]) for row in table]) for name in table[0]}


def test_inverse_gives_karneys_digits(karney, record_property):
    bearing, back, dist = geodesic.inverse(karney["lon1_deg"], karney["lat1_deg"], karney["lon2_deg"], karney["lat2_deg"])
    record_property("geodesic_m", np.abs(dist - karney["dist_m"]).max())
    record_property("geodesic_deg", np.abs(wrapped(bearing - karney["azi1_deg"])).max())
    assert np.abs(dist - karney["dist_m"]).max() < TOL_M
    assert np.abs(wrapped(bearing - karney["azi1_deg"])).max() < TOL_DEG
    assert np.abs(wrapped(back - karney["azi2_deg"] - 180.0)).max() < TOL_DEG


def test_direct_gives_karneys_digits(karney):
    lon, lat, back = geodesic.direct(karney["lon1_deg"], karney["lat1_deg"], karney["azi1_deg"], karney["dist_m"])
    assert np.abs(wrapped(lon - karney["lon2_deg"])).max() < TOL_DEG
    assert np.abs(lat - karney["lat2_deg"]).max() < TOL_DEG
    assert np.abs(wrapped(back - karney["azi2_deg"] - 180.0)).max() < TOL_DEG


def test_flinders_peak_to_buninyong(record_property):
    example = values("flinders_peak")
    ends = [dms_deg(example[end][axis]) for end in ("from_dms", "to_dms") for axis in ("longitude", "latitude")]
    bearing, back, dist = geodesic.inverse(*ends)
    record_property("flinders_mm", 1e3 * abs(float(dist) - example["distance_m"]))
    assert dist == pytest.approx(example["distance_m"], abs=0.0005)  # printed to a millimetre
    assert bearing * 3600 == pytest.approx(dms_deg(example["azimuth_dms"]) * 3600, abs=0.005)  # printed to 0.01"
    assert back * 3600 == pytest.approx(dms_deg(example["reverse_azimuth_dms"]) * 3600, abs=0.005)


@pytest.mark.parametrize(
    ("ends", "bearing", "back"),
    [
        ((-33.0, 36.0, -33.0, 36.1), 0.0, 180.0),
        ((-33.0, 36.1, -33.0, 36.0), 180.0, 0.0),
        ((0.0, 0.0, 0.1, 0.0), 90.0, 270.0),
        ((0.1, 0.0, 0.0, 0.0), 270.0, 90.0),
        ((179.95, 0.0, -179.95, 0.0), 90.0, 270.0),  # the short way over the antimeridian
        ((180.0, 10.0, -180.0, 10.1), 0.0, 180.0),  # one meridian by two names
        ((30.0, 89.9, -150.0, 89.9), 0.0, 0.0),  # over the pole
        ((30.0, -89.9, -150.0, -89.9), 180.0, 180.0),
    ],
)
def test_directions_that_need_no_computing(ends, bearing, back):
    found_bearing, found_back, dist = geodesic.inverse(*ends)
    assert (found_bearing, found_back) == (pytest.approx(bearing, abs=1e-9), pytest.approx(back, abs=1e-9))
    assert 0.0 < dist < 25_000


def test_seen_from_a_pole_bearings_run_with_longitude():
    lon = np.array([10.0, 100.0, -80.0])
    for pole_lat, expected, expected_back in ((90.0, 180.0 - lon, 0.0), (-90.0, lon, 180.0)):
        bearing, back, dist = geodesic.inverse(0.0, pole_lat, lon, np.full(3, pole_lat * 0.99))
        assert np.abs(wrapped(bearing - expected)).max() < 1e-9
        assert np.abs(wrapped(back - expected_back)).max() < 1e-9
        assert np.ptp(dist) < TOL_M


def test_bearings_never_reach_360():
    lon = np.array([-1e-15, -1e-13, -1e-12, 0.0])
    bearing, back, _ = geodesic.inverse(0.0, 0.0, lon, 1.0)
    assert ((bearing >= 0.0) & (bearing < 360.0)).all()
    assert ((back >= 0.0) & (back < 360.0)).all()


@pytest.mark.parametrize(
    "ends", [(10.0, 50.0, 10.0, 50.0), (180.0, 50.0, -180.0, 50.0), (0.0, 90.0, 77.0, 90.0), (10.0, 0.0, 10.0, 0.0009e-5)], ids=str
)
def test_coincident_points_have_no_bearing(ends):
    bearing, back, dist = geodesic.inverse(*ends)
    assert np.isnan(bearing)
    assert np.isnan(back)
    assert dist < 0.001


def test_two_millimetres_have_a_bearing():
    bearing, _, dist = geodesic.inverse(10.0, 50.0, 10.0, 50.00000002)
    assert (bearing, dist) == (0.0, pytest.approx(0.0022, abs=1e-4))


@pytest.mark.parametrize("shape", [(), (0,), (3,), (2, 3)], ids=["scalar", "empty", "array", "sites by subjects"])
def test_shape_is_kept(shape):
    lon = np.full(shape, 10.0)
    for result in (*geodesic.inverse(lon, 50.0, 11.0, 51.0), *geodesic.direct(lon, 50.0, 30.0, 1000.0)):
        assert result.shape == shape
    assert geodesic.inverse(np.zeros((2, 1)), 0.0, np.ones(3), 0.0)[2].shape == (2, 3)


@pytest.mark.parametrize("bad", [(np.nan, 0.0), (np.inf, 0.0), (0.0, np.nan), (0.0, 90.001), (0.0, -91.0)])
def test_places_off_the_earth_are_refused(bad):
    with pytest.raises(ValueError, match="1 of 2 places"):
        geodesic.inverse([0.0, bad[0]], [0.0, bad[1]], 1.0, 1.0)
    with pytest.raises(ValueError, match="1 of 2 places"):
        geodesic.densified_lines([0.0, 1.0], [0.0, 1.0], [2.0, bad[0]], [2.0, bad[1]])


def test_places_in_space_as_erfa_puts_them():
    lon, lat = np.array([0.0, 12.0, -170.0, 180.0, 5.0]), np.array([0.0, 48.0, -33.0, 90.0, -90.0])
    assert np.abs(geodesic.in_space(lon, lat) - erfa.gd2gc(1, np.radians(lon), np.radians(lat), np.zeros(5)).T).max() < TOL_M


# --- lines as a map draws them ---------------------------------------------------------------------------------------------------


def ecef(lon_deg, lat_deg):
    """Points of the ellipsoid in space, from its textbook equation."""
    a, f = 6378137.0, 1 / 298.257223563
    lon, lat = np.radians(lon_deg), np.radians(lat_deg)
    n = a / np.sqrt(1 - f * (2 - f) * np.sin(lat) ** 2)
    return np.stack([n * np.cos(lat) * np.cos(lon), n * np.cos(lat) * np.sin(lon), n * (1 - f) ** 2 * np.sin(lat)])


def off_the_polyline_m(points, nodes):
    """Least distance of each of N points (3, C, N) from its own chain of C x (M - 1) short straight pieces (3, C, M)."""
    start, along = nodes[:, :, np.newaxis, :-1], np.diff(nodes, axis=-1)[:, :, np.newaxis, :]
    to_point = points[..., np.newaxis] - start
    length2 = np.maximum((along**2).sum(axis=0), 1e-12)
    t = np.clip((to_point * along).sum(axis=0) / length2, 0.0, 1.0)
    return np.sqrt(((to_point - t * along) ** 2).sum(axis=0)).min(axis=-1)


def off_the_geodesic_m(ends, vertex_lon, vertex_lat, drawn_lon, drawn_lat):
    """How far drawn points (C, N) between the C + 1 vertices of one line lie from the geodesic; the truth is PROJ's direct problem.

    PROJ is held to GeographicLib's digits above. Each piece of the geodesic is cut in 64, so its own chords are under 3 mm off.
    """
    geod = Geod(ellps="WGS84")
    azimuth, _, length = geod.inv(*ends)
    chainage = geod.inv(np.full(vertex_lon.size, ends[0]), np.full(vertex_lon.size, ends[1]), vertex_lon, vertex_lat)[2]
    assert chainage[-1] == pytest.approx(length, abs=1e-6)
    assert (np.diff(chainage) > 0).all()
    s = chainage[:-1, np.newaxis] + np.diff(chainage)[:, np.newaxis] * np.linspace(0.0, 1.0, 65)
    lon, lat, _ = geod.fwd(np.full(s.size, ends[0]), np.full(s.size, ends[1]), np.full(s.size, azimuth), s.ravel())
    return off_the_polyline_m(ecef(drawn_lon, drawn_lat), ecef(np.reshape(lon, s.shape), np.reshape(lat, s.shape)))


ALONG = np.linspace(0.0, 1.0, 33)


def drawn_in_lon_lat(lon, lat):
    """Points on the straight strokes between vertices in a map of plain longitude and latitude; the stroke takes the short way round."""
    step = wrapped(np.diff(lon))
    return lon[:-1, np.newaxis] + step[:, np.newaxis] * ALONG, lat[:-1, np.newaxis] + np.diff(lat)[:, np.newaxis] * ALONG


def line_from(lon, lat, bearing, length):
    return (lon, lat, *Geod(ellps="WGS84").fwd(lon, lat, bearing, length)[:2])


def past_the_pole(miss_m, length):
    """A line whose middle passes the north pole at a distance."""
    geod = Geod(ellps="WGS84")
    lon, lat, _ = geod.fwd(25.0, 90.0, 180.0 - 25.0, miss_m)
    one, two = (geod.fwd(lon, lat, side, length / 2)[:2] for side in (90.0, 270.0))
    return (*one, *two)


LINES = {
    "50 km at 45": line_from(10.0, 45.0, 70.0, 50_000),
    "5 km at 36": line_from(-33.0, 36.0, 200.0, 5_000),
    "across the equator": line_from(-0.2, -0.2, 45.0, 60_000),
    "along the equator": (0.0, 0.0, 0.4, 0.0),
    "along a meridian": (15.0, -40.0, 15.0, 40.0),
    **{f"500 km at 80, bearing {bearing}": line_from(20.0, 80.0, bearing, 500_000) for bearing in range(0, 360, 30)},
    "500 km at -80": line_from(20.0, -80.0, 110.0, 500_000),
    "6000 km": line_from(-70.0, 45.0, 60.0, 6_000_000),
    "half way round": line_from(10.0, 30.0, 40.0, 19_000_000),
    **{f"{miss_m} m past the pole": past_the_pole(miss_m, 500_000) for miss_m in (1e-3, 0.3, 0.7, 1.0, 2.0, 5.0, 30.0, 1000.0, 50_000.0)},
    "over the pole": (30.0, 89.0, -150.0, 89.0),
    "over the pole, uneven": (30.0, 89.9, -150.0, 87.3),
    "over the south pole": (30.0, -85.0, -150.0, -88.0),
    "from the pole": (0.0, 90.0, 77.0, 88.0),
    "to the pole": (77.0, 88.0, 0.0, 90.0),
    "to the south pole": (77.0, -88.0, -120.0, -90.0),
    "100 m near the pole": line_from(0.0, 89.9995, 85.0, 100.0),
    "across the antimeridian": (179.8, 51.0, -179.7, 51.3),
    "1 m": line_from(10.0, 60.0, 75.0, 1.0),
}


@pytest.mark.parametrize("name", LINES)
def test_drawn_in_lon_lat_within_a_metre(name):
    ends = LINES[name]
    lon, lat, offsets = geodesic.densified_lines(*ends)
    assert offsets.tolist() == [0, lon.size]
    assert (lon[0], lat[0], lon[-1], lat[-1]) == ends  # the ends as they were given
    assert (np.abs(lon) <= 180.0).all()
    assert off_the_geodesic_m(ends, lon, lat, *drawn_in_lon_lat(lon, lat)).max() < DRAWN_TOL_M


def test_a_thousand_random_lines_within_a_metre():
    rng = np.random.default_rng(11)
    n = 1000
    lon1, lat1 = rng.uniform(-180, 180, n), np.degrees(np.arcsin(rng.uniform(-1, 1, n)))
    lat1[: n // 2] = np.copysign(90.0 - 10 ** rng.uniform(-5, 1, n // 2), lat1[: n // 2])  # half of them near the poles
    lon2, lat2, _ = Geod(ellps="WGS84").fwd(lon1, lat1, rng.uniform(0, 360, n), 10 ** rng.uniform(0, 6, n))
    lon, lat, offsets = geodesic.densified_lines(lon1, lat1, lon2, lat2)
    worst = 0.0
    for i, (first, end) in enumerate(zip(offsets[:-1], offsets[1:])):
        one_lon, one_lat = lon[first:end], lat[first:end]
        ends = (lon1[i], lat1[i], lon2[i], lat2[i])
        worst = max(worst, off_the_geodesic_m(ends, one_lon, one_lat, *drawn_in_lon_lat(one_lon, one_lat)).max())
    assert worst < DRAWN_TOL_M
    assert worst > 0.3  # vertices are not wasted


@pytest.mark.parametrize(
    ("epsg", "ends"),
    [
        (32633, line_from(12.0, 60.0, 80.0, 150_000)),  # a UTM zone
        (32633, line_from(18.0, 10.0, 20.0, 500_000)),
        (3857, line_from(10.0, 70.0, 80.0, 500_000)),  # web maps
        (3413, line_from(20.0, 80.0, 30.0, 500_000)),  # polar stereographic, north
        (3031, line_from(20.0, -75.0, 30.0, 500_000)),  # and south
        (3035, line_from(30.0, 60.0, 300.0, 500_000)),  # equal areas, Europe
        (2193, line_from(179.0, -40.0, 60.0, 300_000)),  # New Zealand, over the antimeridian
        (2154, line_from(-3.0, 44.0, 70.0, 500_000)),  # conic, France
        (4087, line_from(10.0, 70.0, 80.0, 500_000)),  # plain longitude and latitude in metres
    ],
)
def test_drawn_in_a_projection_within_a_metre(epsg, ends):
    lon, lat, _ = geodesic.densified_lines(*ends)
    crs = Transformer.from_crs(4326, epsg, always_xy=True)
    x, y = crs.transform(lon, lat)
    drawn_lon, drawn_lat = crs.transform(
        x[:-1, np.newaxis] + np.diff(x)[:, np.newaxis] * ALONG, y[:-1, np.newaxis] + np.diff(y)[:, np.newaxis] * ALONG, direction="INVERSE"
    )
    assert off_the_geodesic_m(ends, lon, lat, drawn_lon, drawn_lat).max() < DRAWN_TOL_M


def test_vertices_lie_on_geographiclibs_line():
    lon1, lat1, lon2, lat2 = LINES["500 km at 80, bearing 60"]
    lon, lat, _ = geodesic.densified_lines(lon1, lat1, lon2, lat2)
    line = WGS84.InverseLine(lat1, lon1, lat2, lon2)
    for one_lon, one_lat in zip(lon[1:-1:20], lat[1:-1:20]):
        place = line.Position(WGS84.Inverse(lat1, lon1, one_lat, one_lon)["s12"])
        assert WGS84.Inverse(place["lat2"], place["lon2"], one_lat, one_lon)["s12"] < 1e-6


def test_many_lines_at_once_are_the_lines_one_by_one():
    ends = np.array(list(LINES.values())).T
    lon, lat, offsets = geodesic.densified_lines(*ends)
    for i, one in enumerate(LINES.values()):
        alone = geodesic.densified_lines(*one)
        assert np.array_equal(lon[offsets[i] : offsets[i + 1]], alone.lon_deg)
        assert np.array_equal(lat[offsets[i] : offsets[i + 1]], alone.lat_deg)


def test_a_tighter_tolerance_is_kept():
    ends = LINES["50 km at 45"]
    lon, lat, _ = geodesic.densified_lines(*ends, tol_m=0.01)
    assert off_the_geodesic_m(ends, lon, lat, *drawn_in_lon_lat(lon, lat)).max() < 0.01


def test_lines_stay_light():
    """Vertices are spent where the map bends: some dozens by a pole, one every few kilometres elsewhere."""
    assert np.diff(geodesic.densified_lines(*LINES["50 km at 45"]).offsets) < 20
    assert np.diff(geodesic.densified_lines(*LINES["5.0 m past the pole"]).offsets) < 200


def test_no_lines_and_lines_without_length():
    assert geodesic.densified_lines([], [], [], []).offsets.tolist() == [0]
    lon, lat, offsets = geodesic.densified_lines([5.0, 180.0], [6.0, 0.0], [5.0, -180.0], [6.0, 0.0])
    assert offsets.tolist() == [0, 2, 4]
    assert (lon.tolist(), lat.tolist()) == ([5.0, 5.0, 180.0, -180.0], [6.0, 6.0, 0.0, 0.0])


# --- cut at the antimeridian -----------------------------------------------------------------------------------------------------


def parts_of(*ends):
    """The parts of one line as lists of (lon, lat)."""
    cut = geodesic.split_at_antimeridian(geodesic.densified_lines(*ends))
    assert cut.line_offsets.tolist() == [0, cut.part_offsets.size - 1]
    return [np.column_stack([cut.lon_deg[i:j], cut.lat_deg[i:j]]) for i, j in zip(cut.part_offsets[:-1], cut.part_offsets[1:])]


CROSSINGS = {
    "50 km": (179.8, 51.0, -179.7, 51.3),
    "westward": (-179.7, 51.3, 179.8, 51.0),
    "south": (-179.0, -77.0, 178.0, -78.0),
    "500 km at 80": line_from(175.0, 80.0, 60.0, 500_000),
    "30 m past the pole": (89.0, 89.0, -91.02, 89.0),
    "a long way": (100.0, 40.0, -100.0, 40.0),
}


@pytest.mark.parametrize("name", CROSSINGS)
def test_crossing_latitude(name):
    """The antimeridian is met where GeographicLib's line meets it, found by halving."""
    lon1, lat1, lon2, lat2 = CROSSINGS[name]
    one, two = parts_of(lon1, lat1, lon2, lat2)
    eastward = wrapped(lon2 - lon1) > 0
    assert (one[-1, 0], two[0, 0]) == ((180.0, -180.0) if eastward else (-180.0, 180.0))
    assert one[-1, 1] == two[0, 1]
    line = WGS84.InverseLine(lat1, lon1, lat2, lon2)
    low, high = 0.0, line.s13
    for _ in range(60):
        middle = (low + high) / 2
        here = line.Position(middle)["lon2"]
        before = (here > 0) == eastward and abs(here) < 180.0
        low, high = (middle, high) if before else (low, middle)
    place = line.Position(low)
    assert WGS84.Inverse(place["lat2"], place["lon2"], one[-1, 1], 180.0)["s12"] < 0.001  # promised to a metre, reached to a millimetre


@pytest.mark.parametrize("name", CROSSINGS)
def test_no_stroke_runs_round_the_world(name):
    for part in parts_of(*CROSSINGS[name]):
        assert len(part) >= 2
        assert np.abs(np.diff(part[:, 0])).max() <= 180.0
        assert np.abs(part[:, 0]).max() <= 180.0


def test_cut_lines_stay_within_a_metre():
    ends = CROSSINGS["500 km at 80"]
    one, two = parts_of(*ends)
    for part in (one, two):
        drawn = (part[:-1, k, np.newaxis] + np.diff(part[:, k])[:, np.newaxis] * ALONG for k in (0, 1))
        own_ends = (*part[0], *part[-1])
        assert off_the_geodesic_m(own_ends, part[:, 0], part[:, 1], *drawn).max() < DRAWN_TOL_M
    azimuths = [Geod(ellps="WGS84").inv(*part[0], *part[-1])[0] for part in (one, two)]
    assert wrapped(azimuths[0] - geodesic.inverse(*ends)[0]) == pytest.approx(0.0, abs=1e-6)  # the first part runs along the line itself


@pytest.mark.parametrize(
    ("ends", "longitudes"),
    [
        ((179.0, 10.0, 180.0, 10.2), [[179.0, 180.0]]),  # ends on the seam
        ((179.0, 10.0, -180.0, 10.2), [[179.0, 180.0]]),  # the same, by its other name
        ((180.0, 10.0, -179.0, 10.2), [[-180.0, -179.0]]),  # begins on it
        ((-180.0, 10.0, 179.0, 10.2), [[180.0, 179.0]]),
        ((180.0, 10.0, 180.0, 11.0), [[180.0, 180.0]]),  # runs along it
        ((180.0, 10.0, -180.0, 11.0), [[180.0, 180.0]]),
        ((-180.0, 10.0, 180.0, 11.0), [[-180.0, -180.0]]),
        ((10.0, 10.0, 11.0, 11.0), [[10.0, 11.0]]),  # nowhere near
        ((179.5, 0.0, -179.5, 0.0), [[179.5, 180.0], [-180.0, -179.5]]),
        ((0.0, 89.0, 180.0, 89.0), [[0.0, 180.0]]),  # over the pole on to the seam
    ],
)
def test_on_and_along_the_seam(ends, longitudes):
    assert [[part[0, 0], part[-1, 0]] for part in parts_of(*ends)] == longitudes


def test_over_the_pole_every_part_is_drawable():
    for ends in (
        LINES["over the pole"],
        LINES["1.0 m past the pole"],
        LINES["from the pole"],
        (0.0, 90.0, -170.0, 89.0),
        (170.0, 89.0, 0.0, 90.0),
    ):
        for part in parts_of(*ends):
            assert np.abs(np.diff(part[:, 0])).max() <= 180.0
            assert (np.abs(part[:, 1]) <= 90.0).all()


def test_a_vertex_on_the_seam_is_used_as_it_stands():
    lines = geodesic.Lines(np.array([179.0, 180.0, -179.0]), np.array([1.0, 2.0, 3.0]), np.array([0, 3]))
    cut = geodesic.split_at_antimeridian(lines)
    assert cut.lon_deg.tolist() == [179.0, 180.0, -180.0, -179.0]
    assert cut.lat_deg.tolist() == [1.0, 2.0, 2.0, 3.0]
    assert cut.part_offsets.tolist() == [0, 2, 4]
    assert cut.line_offsets.tolist() == [0, 2]


def test_many_lines_are_cut_like_single_ones():
    every = [*LINES.values(), *CROSSINGS.values()]
    cut = geodesic.split_at_antimeridian(geodesic.densified_lines(*np.array(every).T))
    assert cut.line_offsets.size == len(every) + 1
    for i, ends in enumerate(every):
        bounds = cut.part_offsets[cut.line_offsets[i] : cut.line_offsets[i + 1] + 1]
        alone = parts_of(*ends)
        assert len(alone) == bounds.size - 1
        for part, a, b in zip(alone, bounds[:-1], bounds[1:]):
            assert np.array_equal(part, np.column_stack([cut.lon_deg[a:b], cut.lat_deg[a:b]]))


def test_no_lines_no_parts():
    cut = geodesic.split_at_antimeridian(geodesic.densified_lines([], [], [], []))
    assert (cut.part_offsets.tolist(), cut.line_offsets.tolist()) == ([0], [0])
