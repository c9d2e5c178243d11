"""Time zones of places against the unsimplified polygons, IANA's own table of places, and common knowledge."""

import re

import numpy as np
import pytest
from published import FOLDER, rows

from skyalidade.plan import clock, zones

TOL_M = 250.0  # boundaries are simplified by up to 220 m and kept on a grid of 1 m
DAY_S = 86400.0
NOONS_S = 1735732800.0 + DAY_S * np.arange(365)  # 12:00 UTC of each day of 2025: what clocks were, no later edition of the zones changes


def found(lon_deg, lat_deg):
    zone_names, zone_index = zones.find_zones(lon_deg, lat_deg)
    return np.array(zone_names, dtype=object)[zone_index]


def neighbour(lon_deg, lat_deg, t_utc_s=NOONS_S):
    zone_names, zone_index = zones.find_zones([lon_deg], [lat_deg])
    other, dist_m = zones.find_neighbours([lon_deg], [lat_deg], zone_names, zone_index, t_utc_s)
    return zone_names[0], other[0], dist_m[0]


def plugin_name(name):
    """What the plugin calls a zone of the sea: Etc/GMT+2 is two hours behind UTC."""
    sea = re.fullmatch(r"Etc/GMT([+-])(\d+)", name)
    if sea:
        return f"UTC{'-' if sea[1] == '+' else '+'}{int(sea[2]):02}:00"
    return "UTC" if name in ("Etc/GMT", "Etc/UTC") else name


@pytest.fixture(scope="module")
def reference():
    table = rows("timezonefinder_2026c")

    def numbers(field):
        return np.array([float(row[field] or np.inf) for row in table])

    columns = {field: numbers(field) for field in ("lon_deg", "lat_deg", "border_m", "other_m")}
    columns["zone"] = np.array([plugin_name(row["zone"]) for row in table], dtype=object)
    columns["other"] = np.array([row["other"] or None for row in table], dtype=object)
    return columns


def test_places_all_over_the_globe(reference, record_property):
    wrong = found(reference["lon_deg"], reference["lat_deg"]) != reference["zone"]
    on_meridian = (reference["lon_deg"] + 7.5) % 15.0 == 0.0  # between two nautical zones, where either name is right
    wrong &= ~on_meridian
    record_property("zones_wrong", int(wrong[:20_000].sum()))
    record_property("zones_border", reference["border_m"][wrong].max())
    assert reference["border_m"][wrong].max() < TOL_M
    assert wrong[:20_000].sum() <= 5  # of those uniform over the globe: measured 1
    assert wrong[20_000:].mean() < 0.04  # within 4 km of a boundary: measured 2.9 %


def test_zones_beyond_the_boundary(reference):
    lon, lat = reference["lon_deg"], reference["lat_deg"]
    zone_names, zone_index = zones.find_zones(lon, lat)
    own = np.array(zone_names, dtype=object)[zone_index]
    other, dist_m = zones.find_neighbours(lon, lat, zone_names, zone_index, NOONS_S)
    ashore = np.array([name is None or not name.startswith("UTC") for name in other])  # the reference has no meridians at sea
    sure = (own == reference["zone"]) & ashore
    near = np.array([name is not None for name in other])
    assert near[sure & (reference["other_m"] < zones.NEAR_M - TOL_M)].all()
    assert not near[sure & (reference["other_m"] > zones.NEAR_M + TOL_M)].any()
    both = sure & near & (reference["other_m"] < np.inf)
    assert both.sum() > 1000
    assert np.abs(dist_m - reference["other_m"])[both].max() < TOL_M
    assert (other == reference["other"])[both].mean() > 0.95  # others lie where three zones meet, or two overlap


def test_places_that_zones_are_named_after():
    """IANA's zone.tab gives them to a minute of arc, some 2 km: Monaco's falls into France."""
    lines = [line.split("\t") for line in (FOLDER / "iana_zone.tab").read_text().splitlines() if not line.startswith("#")]

    def degrees(text):
        size = len(text) - len(text.lstrip("+-"))
        digits = text[size:]
        width = 3 if len(digits) in (5, 7) else 2
        parts = [digits[:width], *re.findall("..", digits[width:])]
        return (-1 if text[0] == "-" else 1) * sum(int(part) / 60**power for power, part in enumerate(parts))

    places = [re.fullmatch(r"([+-]\d+)([+-]\d+)", line[1]).groups() for line in lines]
    lat, lon = np.array([[degrees(part) for part in place] for place in places]).T
    names = np.array([line[2] for line in lines], dtype=object)
    assert len(names) > 400
    assert names[found(lon, lat) != names].tolist() == ["Europe/Monaco"]


# Gazetteer knowledge, from memory: where a place lies to 0.01 degree or so, and the clock it keeps in mid June and mid December.
KNOWN = [
    ("Denver", -104.99, 39.74, "America/Denver", -6, -7),
    ("Monument Valley, in the Navajo Nation, which keeps summer time", -110.11, 36.98, "America/Denver", -6, -7),
    ("Second Mesa, in the Hopi Reservation inside it, which does not", -110.50, 35.79, "America/Phoenix", -7, -7),
    ("Kathmandu", 85.32, 27.72, "Asia/Kathmandu", 5.75, 5.75),
    ("Maseru, Lesotho, inside South Africa", 27.48, -29.31, "Africa/Maseru", 2, 2),
    ("Büsingen, a German village inside Switzerland", 8.69, 47.697, "Europe/Busingen", 2, 1),
    ("Llívia, a Spanish town inside France", 1.98, 42.464, "Europe/Madrid", 2, 1),
    ("Hvar, an island", 16.44, 43.17, "Europe/Zagreb", 2, 1),
    ("Easter Island", -109.35, -27.12, "Pacific/Easter", -6, -5),
    ("Lord Howe Island, half an hour of summer time", 159.08, -31.55, "Australia/Lord_Howe", 10.5, 11),
    ("Chatham Islands", -176.56, -43.95, "Pacific/Chatham", 12.75, 13.75),
    ("Taveuni, Fiji, on the antimeridian", 179.99, -16.80, "Pacific/Fiji", 12, 12),
    ("Taveuni, east of it", -179.99, -16.80, "Pacific/Fiji", 12, 12),
    ("Wrangel Island, on the antimeridian", 180.0, 71.23, "Asia/Anadyr", 12, 12),
    ("Uelen, Chukotka, in the western hemisphere", -169.81, 66.16, "Asia/Anadyr", 12, 12),
    ("Attu, Alaska, in the eastern hemisphere", 172.9, 52.9, "America/Adak", -9, -10),
    ("Kiritimati, Line Islands of Kiribati", -157.40, 1.87, "Pacific/Kiritimati", 14, 14),
    ("Baker Island, without people or a clock of its own", -176.48, 0.19, "UTC-12:00", -12, -12),
    ("Longyearbyen, Svalbard", 15.63, 78.22, "Arctic/Longyearbyen", 2, 1),
    ("Amundsen-Scott South Pole Station, New Zealand's clock", 0.0, -90.0, "Antarctica/McMurdo", 12, 13),
    ("North Pole, no clock: that of the longitude", 0.0, 90.0, "UTC", 0, 0),
    ("mid Atlantic", -33.0, 36.0, "UTC-02:00", -2, -2),
]


@pytest.mark.parametrize(("lon_deg", "lat_deg", "name", "june_h", "december_h"), [row[1:] for row in KNOWN], ids=[row[0] for row in KNOWN])
def test_known_places(lon_deg, lat_deg, name, june_h, december_h):
    assert found([lon_deg], [lat_deg]).tolist() == [name]
    mid_june_s, mid_december_s = 1781524800.0, 1797336000.0  # 2026-06-15 and 2026-12-15, 12:00 UTC
    assert (clock.utc_offsets_s([mid_june_s, mid_december_s], [name], 0) / 3600.0).tolist() == [june_h, december_h]


def test_the_night_on_which_the_clock_changes():
    """US Energy Policy Act of 2005, section 110: in 2026 on 8 March, from 2 to 3 a.m. local standard time."""
    zone_names, zone_index = zones.find_zones([-104.99, -112.07], [39.74, 33.45])  # Denver, Phoenix
    nine_utc_s = 1772960400.0
    texts = clock.local_text(nine_utc_s + np.array([-1.0, 0.0]), zone_names, zone_index[:, np.newaxis])
    assert texts[0].tolist() == ["2026-03-08 01:59:59 -07:00", "2026-03-08 03:00:00 -06:00"]
    assert texts[1].tolist() == ["2026-03-08 01:59:59 -07:00", "2026-03-08 02:00:00 -07:00"]


def test_a_boundary_counts_only_while_the_clocks_differ():
    """New Mexico and Arizona meet on the 32nd meridian west of Washington, 109°02'48" W; only the former keeps summer time."""
    name, other, dist_m = neighbour(-109.035, 34.0)
    assert (name, other) == ("America/Denver", "America/Phoenix")
    assert dist_m == pytest.approx((109.0467 - 109.035) * 92_385.0, abs=TOL_M)  # a degree of the parallel of 34°
    assert neighbour(-109.058, 34.0)[:2] == ("America/Phoenix", "America/Denver")
    assert neighbour(-109.035, 34.0, NOONS_S[:31])[1] is None  # January
    assert neighbour(-109.020, 34.0)[1] is None  # 2.5 km off


def test_the_line_between_the_diomede_islands():
    """The treaty line of 1867, 168°58'37" W, runs between them: 21 hours apart."""
    name, other, dist_m = neighbour(-168.954, 65.756)
    assert (name, other) == ("America/Nome", "Asia/Anadyr")
    assert dist_m == pytest.approx((168.97694 - 168.954) * 45_850.0, abs=TOL_M)  # a degree of the parallel of 65.756°


@pytest.mark.parametrize(
    ("lon_deg", "lat_deg", "other"),
    [
        (179.99, -30.0, "UTC-12:00"),
        (-179.99, -30.0, "UTC+12:00"),
        (180.0, -30.0, "UTC-12:00"),
        (-180.0, -30.0, "UTC+12:00"),
        (540.0, -30.0, "UTC+12:00"),
        (-37.51, 36.0, "UTC-02:00"),
        (-37.49, 36.0, "UTC-03:00"),
        (-37.45, 36.0, None),
        (7.5, 0.0, "UTC+01:00"),
        (-7.5, 0.0, "UTC-01:00"),
    ],
)
def test_meridians_between_nautical_zones(lon_deg, lat_deg, other):
    assert neighbour(lon_deg, lat_deg)[1] == other


def test_two_clocks_on_one_ground():
    """All of Xinjiang officially keeps Beijing's time; the one of Ürümqi, two hours behind, is in use beside it (IANA's file asia)."""
    assert neighbour(87.62, 43.82) == ("Asia/Urumqi", "Asia/Shanghai", 0.0)
    assert neighbour(103.83, 36.06)[:2] == ("Asia/Shanghai", None)  # Lanzhou


def test_the_edge_toward_the_sea_counts_only_from_outside():
    """Portugal's territorial sea ends 12 nautical miles off Cabo da Roca, 9.50° W: at some 9.76° W."""
    assert neighbour(-9.50, 38.78)[:2] == ("Europe/Lisbon", None)  # on the cape
    lon = np.arange(-9.85, -9.70, 0.001)
    names = found(lon, np.full(lon.size, 38.78))
    assert set(names) == {"UTC-01:00", "Europe/Lisbon"}
    edge = np.flatnonzero(names == "Europe/Lisbon")[0]
    assert neighbour(lon[edge - 1], 38.78)[:2] == ("UTC-01:00", "Europe/Lisbon")
    assert neighbour(lon[edge], 38.78)[:2] == ("Europe/Lisbon", None)


def test_a_turn_of_longitude_changes_nothing(reference):
    lon, lat = reference["lon_deg"][::20], reference["lat_deg"][::20]
    assert (found(lon + 360.0, lat) == found(lon, lat)).all()
    assert (found(lon - 360.0, lat) == found(lon, lat)).all()


def test_sites_do_not_depend_on_their_company(reference):
    lon, lat = reference["lon_deg"][-2000:], reference["lat_deg"][-2000:]
    together = zones.find_neighbours(lon, lat, *zones.find_zones(lon, lat), NOONS_S)[0]
    apart = [
        zones.find_neighbours(lon[part], lat[part], *zones.find_zones(lon[part], lat[part]), NOONS_S)[0]
        for part in (slice(700), slice(700, None))
    ]
    assert np.concatenate(apart).tolist() == together.tolist()


@pytest.fixture
def drawn_map(tmp_path, monkeypatch):
    """Let a map drawn in the test stand in for the true one: rows of x1, y1, x2, y2, left, right."""

    def draw(*strokes):
        ends = np.array([stroke[:4] for stroke in strokes]).reshape(-1, 2)
        steps = np.rint(ends * 100).astype(int)
        names = sorted({name for stroke in strokes for name in stroke[4:]} - {"sea"})
        left, right = ([names.index(stroke[side]) if stroke[side] != "sea" else zones.SEA for stroke in strokes] for side in (4, 5))
        np.savez(
            tmp_path / "zones.npz",
            names=names,
            also=[""] * len(names),
            lon_step=np.diff(steps[:, 0], prepend=0),
            lat_step=np.diff(steps[:, 1], prepend=0),
            steps_per_deg=100,
            vertices_of_chain=[2] * len(strokes),
            left=left,
            right=right,
        )
        monkeypatch.setattr(zones, "BOUNDARIES_PATH", tmp_path / "zones.npz")
        zones._boundaries.cache_clear()

    yield draw
    zones._boundaries.cache_clear()


@pytest.mark.parametrize(
    ("lon_deg", "own", "other"),
    [
        (179.99, "Asia/Tokyo", "Asia/Kathmandu"),
        (-179.99, "Asia/Kathmandu", "Asia/Tokyo"),
        (180.01, "Asia/Kathmandu", "Asia/Tokyo"),
        (180.0, "Asia/Kathmandu", "Asia/Tokyo"),
        (-179.95, "Asia/Kathmandu", None),
        (-179.0, "UTC-12:00", "Asia/Kathmandu"),
    ],
)
def test_a_boundary_on_the_antimeridian(drawn_map, lon_deg, own, other):
    """On the Earth of today only open sea lies beyond such a one."""
    drawn_map(
        (179.0, 10.0, 180.0, 10.0, "Asia/Tokyo", "sea"),
        (180.0, 10.0, 180.0, 11.0, "Asia/Tokyo", "Asia/Kathmandu"),
        (180.0, 11.0, 179.0, 11.0, "Asia/Tokyo", "sea"),
        (179.0, 11.0, 179.0, 10.0, "Asia/Tokyo", "sea"),
        (-180.0, 10.0, -179.0, 10.0, "Asia/Kathmandu", "sea"),
        (-179.0, 10.0, -179.0, 11.0, "Asia/Kathmandu", "sea"),
        (-179.0, 11.0, -180.0, 11.0, "Asia/Kathmandu", "sea"),
    )
    assert neighbour(lon_deg, 10.5)[:2] == (own, other)


def test_a_stroke_that_leaves_the_cell_before_it_is_met(drawn_map):
    """Above the place, and still within its cell, runs the southern end of a boundary that is met beyond another one."""
    drawn_map(
        (0.02, 10.0, 0.24, 10.0, "Asia/Tokyo", "sea"),
        (0.24, 10.0, 0.24, 10.3, "Asia/Tokyo", "sea"),
        (0.24, 10.3, 0.2, 10.3, "Asia/Tokyo", "Asia/Kathmandu"),
        (0.2, 10.3, 0.05, 10.26, "Asia/Tokyo", "Asia/Kathmandu"),
        (0.05, 10.26, 0.02, 10.0, "Asia/Tokyo", "Asia/Kathmandu"),
        (0.24, 10.3, 0.24, 10.6, "Asia/Kathmandu", "sea"),
        (0.24, 10.6, 0.0, 10.2, "Asia/Kathmandu", "sea"),
        (0.0, 10.2, 0.02, 10.0, "Asia/Kathmandu", "sea"),
    )
    assert found([0.1, 0.1, 0.1, 0.1], [9.9, 10.1, 10.3, 10.5]).tolist() == ["UTC", "Asia/Tokyo", "Asia/Kathmandu", "UTC"]


def test_the_map_is_consistent():
    """On a meridian what lies south of a stroke lies north of the next one; the first and the last have open sea or the pole beyond."""
    boundaries = zones._boundaries()
    for lon in np.random.default_rng(7).uniform(-180.0, 180.0, 500):
        met = np.flatnonzero((boundaries.x1 <= lon) & (lon < boundaries.x2))
        lat = zones._latitude(*boundaries[2:6], met, lon)
        met, lat = met[np.argsort(lat)], np.sort(lat)
        apart = np.diff(lat) > 1e-4  # at the very place where strokes meet their order is a matter of rounding
        assert (boundaries.north[met[:-1]][apart] == boundaries.south[met[1:]][apart]).all()
        assert boundaries.north[met[-1]] == zones.SEA


def test_every_zone_has_a_clock():
    names = zones._boundaries().names.tolist()
    assert len(names) > 400
    for name in names:
        clock.zone(name)


def test_no_site():
    zone_names, zone_index = zones.find_zones([], [])
    assert (zone_names, zone_index.tolist()) == ([], [])
    other, dist_m = zones.find_neighbours([], [], zone_names, zone_index, NOONS_S)
    assert (other.tolist(), dist_m.tolist()) == ([], [])


@pytest.mark.parametrize(("lon_deg", "lat_deg"), [([0.0, np.nan], [0.0, 0.0]), ([0.0, 1.0], [0.0, 90.1]), ([0.0, 1.0], [np.nan, 1.0])])
def test_places_without_coordinates_are_refused(lon_deg, lat_deg):
    with pytest.raises(ValueError, match="1 of 2 places have no longitude, or no latitude"):
        zones.find_zones(lon_deg, lat_deg)
