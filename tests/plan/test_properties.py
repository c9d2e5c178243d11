"""What holds whatever is asked, on examples that hypothesis looks for: places, nights, bodies and conditions of all kinds.

Places include both poles, the equator and both sides of the antimeridian; nights are any of the ephemeris. The search for examples starts
the same way in every run.
"""

import math
from dataclasses import asdict, dataclass, replace
from datetime import date, datetime, timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.configuration import set_hypothesis_home_dir
from hypothesis.internal.conjecture import providers
from skyfield_scan import (
    ARCH_APEX_MAX_DEG,
    CUSTOMARY,
    GALACTIC_LON_DEG,
    STAR_ICRS_DEG,
    Asked,
    Pair,
    by_plugin,
    least,
    margins,
    plugin_table,
)

from skyalidade.ground import curvature, geodesic
from skyalidade.names import ALIGNMENTS_FIELDS, BODIES, SKY_POSITIONS_FIELDS
from skyalidade.plan import azimuths, clock, nights
from skyalidade.plan.alignments import Pairs, find_alignments
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.pairs import pair_all, pair_by_field, pair_closest
from skyalidade.plan.positions import sky_positions
from skyalidade.plan.sightlines import Cameras, Subjects, sightlines
from skyalidade.plan.targets import target
from skyalidade.sky import arcs, bodies, crossings, galactic, horizontal
from skyalidade.sky.ephemeris import default_ephemeris
from skyalidade.sky.tables import TimeTable, tracks

set_hypothesis_home_dir(Path(__file__).resolve().parents[2] / "build" / "hypothesis")
# Hypothesis also tries numbers that it reads in the modules loaded so far: others in a run of all tests than in one of these alone.
providers._get_local_constants = providers.Constants

DAY_S = 86400.0
TOL_S, TOL_DEG = 0.5, 0.2 / 3600  # the promise for the end of a stretch, whichever is looser
TOL_LIT = 1e-7  # the ends of a lit stretch are found to 0.01 s
SAME_S = 0.02  # runs of other nights interpolate between other nodes

# Clocks of whole hours and not, with and without daylight saving, of both ends of the date line, of a place that skipped a
# day (Apia, 2011), and those kept at sea
ZONES = (
    *("UTC", "UTC-02:00", "UTC+12:00", "UTC-12:00", "UTC+05:30", "Europe/Berlin", "America/Denver", "America/St_Johns", "Asia/Kathmandu"),
    *("Australia/Lord_Howe", "Pacific/Chatham", "Pacific/Kiritimati", "Pacific/Niue", "Pacific/Apia", "Africa/Casablanca"),
)


def examples(count):
    """The same examples in every run, without a clock on each."""
    return settings(max_examples=count, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))


def between(low, high):
    return st.floats(low, high, allow_nan=False)


def maybe(values):
    """Blank as often as not."""
    return st.none() | values


LONGITUDES = st.sampled_from([180.0, -180.0, 0.0, 179.9999, -179.9999]) | between(-180, 180)
LATITUDES = st.sampled_from([90.0, -90.0, 0.0, 89.9999, -89.9, 66.56, -66.56, 23.44, -23.44, -28.936, 61.064]) | between(-90, 90)
HEIGHTS = st.sampled_from([0.0, -430.0]) | between(0, 6000)
BEARINGS = st.sampled_from([0.0, 90.0, 180.0, 270.0]) | between(0, 359.999999)
BEARINGS_APART = 0.0, 55.0, 120.0, 200.0, 290.0  # about a camera, from the bearing drawn
FIRST_NIGHTS = st.dates(date(1990, 1, 7), date(2053, 9, 20)) | st.dates(date(2024, 1, 1), date(2030, 12, 31))


@st.composite
def camera_and_subject(draw):
    base = draw(between(-20, 40))
    top = base + draw(between(0, 30))
    return Pair(draw(LONGITUDES), draw(LATITUDES), draw(HEIGHTS), draw(BEARINGS), base, top)


@st.composite
def conditions(draw, body):
    """Of all kinds, half of them blank, none of which contradict each other."""
    _, alt_min_deg, sun_limit_deg = CUSTOMARY[body]

    def limits(low, high, customary_low=None, customary_high=None):
        least = draw(maybe(between(low, 0.6 * high + 0.4 * low)))
        floor = next((limit for limit in (least, customary_low) if limit is not None), low)
        most = draw(maybe(between(floor + 0.1 * (high - floor), high)))
        ceiling = customary_high if most is None else most
        return (None if least is not None and ceiling is not None and least > ceiling else least), most

    alt = limits(-20.0, 90.0, customary_low=alt_min_deg)
    sun_limit = draw(maybe(between(-25.0, 20.0)))
    darkest = sun_limit_deg if sun_limit is None else sun_limit
    return Asked(
        draw(st.none() | between(0.05, 89.9) | between(10, 60)),
        *alt,
        *limits(-60.0, 80.0),
        *limits(0.0, 90.0),
        *limits(0.0, 90.0, customary_high=ARCH_APEX_MAX_DEG if body == "arch" else None),
        draw(st.just(0.0) | between(-5, 30)),
        sun_limit,
        draw(maybe(between(-70.0, 20.0 if darkest is None else darkest))),
        draw(st.sampled_from(["any", "any", "down", "down_or_thin"])),
        draw(between(0, 1)),
        *limits(0.0, 1.0),
        draw(st.sampled_from([None, None, 0.0]) | between(300, 1100)),
        draw(between(-40, 40)),
    )


def at_any_hour(search):
    """The same search by day too: rows at all hours, also at noon, where a night ends."""
    return replace(search, asked=replace(fewer(search.asked), az_tolerance_deg=40.0, alt_min_deg=-80.0, sun_limit_deg=90.0, moon="any"))


def either_way(some_searches):
    return some_searches | some_searches.map(at_any_hour)


FEW_CONDITIONS = {"az_tolerance_deg", "alt_min_deg", "sun_limit_deg", "moon", "moon_lit_max", "temperature_C"}


def fewer(asked):
    """With most of the limits blank, so that rows are many."""
    return replace(Asked(), **{name: value for name, value in asdict(asked).items() if name in FEW_CONDITIONS})


@dataclass(frozen=True)
class Search:
    """Everything that a search for alignments is given."""

    pairs: tuple
    zones: tuple
    body: str
    first: np.datetime64
    last: np.datetime64
    asked: Asked

    def found(self, **changes):
        """Table and unmet of the search, or of one that differs."""
        return solve(replace(self, **changes))


@st.composite
def searches(draw, cameras=3, longitudes=None):
    """A body over several subjects round each camera."""
    pairs = []
    for _ in range(cameras):
        pair = draw(camera_and_subject())
        if longitudes is not None:
            pair = replace(pair, lon_deg=draw(longitudes))
        pairs += [replace(pair, bearing_deg=(pair.bearing_deg + turn) % 360.0) for turn in BEARINGS_APART]
    zones = draw(st.lists(st.sampled_from(ZONES), min_size=len(pairs), max_size=len(pairs)))
    body = draw(st.sampled_from(list(BODIES)))
    asked = draw(conditions(body).map(fewer) | conditions(body) | conditions(body).map(fewer))
    first = np.datetime64(draw(FIRST_NIGHTS))
    return Search(tuple(pairs), tuple(zones), body, first, first + draw(st.integers(0, 9)), asked)


# Each limit from strict to loose
LIMITS = {
    "az_tolerance_deg": (0.05, 89.9),
    "alt_min_deg": (60.0, -80.0),
    "alt_max_deg": (-10.0, 90.0),
    "gap_min_deg": (50.0, -100.0),
    "gap_max_deg": (-40.0, 120.0),
    "tilt_min_deg": (90.0, 0.0),
    "tilt_max_deg": (0.0, 90.0),
    "apex_min_deg": (90.0, 0.0),
    "apex_max_deg": (0.0, 90.0),
    "core_alt_min_deg": (50.0, -80.0),
    "sun_limit_deg": (-50.0, 90.0),
    "sun_min_deg": (50.0, -90.0),
    "moon_lit_max": (0.0, 1.0),
    "lit_min": (1.0, 0.0),
    "lit_max": (0.0, 1.0),
}
ONLY_FOR = {"lit_min": "moon", "lit_max": "moon", "core_alt_min_deg": "arch"}
NOT_FOR = {"sun_limit_deg": ("sun",), "sun_min_deg": ("sun",), "moon": ("sun", "moon"), "moon_lit_max": ("sun", "moon")}
MOON_RULES = "down", "down_or_thin", "any"


def suits(name, body):
    return body not in NOT_FOR.get(name, ()) and body == ONLY_FOR.get(name, body)


def limit(name, share):
    """One limit, a share of the way from strict to loose."""
    if name == "moon":
        return {"moon": MOON_RULES[min(int(3 * share), 2)]}
    strict, loose = LIMITS[name]
    return {name: strict + share * (loose - strict), **({"moon": "down_or_thin"} if name == "moon_lit_max" else {})}


def limited(search, limits):
    """The same search at any hour, wide open but for some limits."""
    search = at_any_hour(search)
    return replace(search, asked=replace(search.asked, **{"apex_max_deg": 90.0, **limits}))


def limited_in(search, name, share):
    body = search.body if suits(name, search.body) else ONLY_FOR.get(name, "core")
    return limited(replace(search, body=body), limit(name, share))


@st.composite
def limited_in_several(draw, search):
    """None of them contradict each other in the looser half of their ways."""
    names = draw(st.lists(st.sampled_from([name for name in BINDING if suits(name, search.body)]), min_size=2, max_size=4, unique=True))
    return limited(search, {key: value for name in names for key, value in limit(name, draw(between(0.6, 1))).items()})


BINDING = [*LIMITS, "moon"]
SEVERAL = "several limits"


def asking(name):
    """Searches in which one limit binds, or several do."""
    if name == SEVERAL:
        return searches(cameras=2).flatmap(limited_in_several)
    return st.builds(limited_in, searches(cameras=2), st.just(name), between(0.3, 1))


def of(body):
    return target(body, star=STAR_ICRS_DEG, galactic_lon_deg=GALACTIC_LON_DEG)


def solve(search):
    columns = np.array([[p.lon_deg, p.lat_deg, p.height_m, p.bearing_deg, p.base_alt_deg, p.top_alt_deg] for p in search.pairs]).T
    pairs = Pairs(*columns, list(search.zones), np.arange(len(search.pairs)))
    blocks = list(find_alignments(pairs, [of(search.body)], search.first, search.last, Conditions(**asdict(search.asked))))
    return tuple({name: np.concatenate([block[k][name] for block in blocks]) for name in blocks[0][k]} for k in (0, 1))


def joined(tables):
    return {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}


def take(table, index):
    return {name: values[index] for name, values in table.items()}


class Tally:
    """What was seen over all examples of a property: that it was not true for want of anything to be wrong about."""

    def __init__(self, **wanted):
        self.wanted, self.seen = wanted, dict.fromkeys(wanted, 0)

    def __enter__(self):
        return self

    def add(self, **counts):
        for name, count in counts.items():
            self.seen[name] += int(count)

    def __exit__(self, kind, error, trace):
        if kind is None:
            assert all(self.seen[name] >= wanted for name, wanted in self.wanted.items()), (self.seen, self.wanted)


def assert_same_rows(mine, theirs, tol_s=SAME_S):
    """Two tables hold the same rows in the same order."""
    assert mine["pair"].tolist() == theirs["pair"].tolist()
    for name in ("body", "night", "tz"):
        assert mine[name].tolist() == theirs[name].tolist(), name
    for name in ("t_utc", "t_start", "t_end"):
        assert np.abs(mine[name] - theirs[name]).max(initial=0.0) < tol_s, name


# sightlines


@st.composite
def places(draw, count):
    return np.array([[draw(LONGITUDES), draw(LATITUDES)] for _ in range(count)]).T


@st.composite
def ends_of_sightlines(draw):
    """Cameras, and subjects at any distance up to where the shortest way begins to be more than one."""
    lon, lat = draw(places(count=draw(st.integers(1, 8))))
    bearing = np.array([draw(BEARINGS) for _ in lon])
    dist_m = np.array([draw(between(0.01, 1e5) | between(0.01, 1.9e7)) for _ in lon])
    return lon, lat, *geodesic.direct(lon, lat, bearing, dist_m)[:2]


@examples(150)
@given(ends_of_sightlines())
def test_a_reversed_pair_has_the_back_bearing_and_the_same_distance(ends):
    lon1, lat1, lon2, lat2 = ends
    there, back = joined_blocks(pair_all(lon1, lat1, lon2, lat2)), joined_blocks(pair_all(lon2, lat2, lon1, lat1))
    order = np.lexsort((back["subject"], back["camera"]))
    swapped = np.lexsort((there["camera"], there["subject"]))
    there, back = take(there, swapped), take(back, order)
    assert there["camera"].tolist() == back["subject"].tolist()
    assert there["subject"].tolist() == back["camera"].tolist()
    near = there["dist_m"] < 1.98e7  # beyond, around the antipode, the shortest way is not one alone
    assert np.abs(there["dist_m"] - back["dist_m"]).max(initial=0.0) < 1e-7
    tol_deg = np.degrees(5e-8 / np.minimum(there["dist_m"], 1e5)) + 1e-10  # 50 nm sideways
    for mine, theirs in (("bearing_deg", "back_deg"), ("back_deg", "bearing_deg")):
        off = np.abs(azimuths.offset_deg(there[mine], back[theirs]))
        assert (off < tol_deg)[near].all()
        assert ((there[mine] >= 0.0) & (there[mine] < 360.0)).all()


def joined_blocks(blocks):
    return joined([{name: getattr(block, name) for name in ("camera", "subject", "dist_m", "bearing_deg", "back_deg")} for block in blocks])


# Longitudes to which a turn can be added without rounding
EXACT_LONGITUDES = st.integers(-180 << 20, 180 << 20).map(lambda number: number / (1 << 20)) | st.sampled_from([180.0, -180.0, 0.0])


@st.composite
def exact_places(draw):
    return np.array([[draw(EXACT_LONGITUDES), draw(LATITUDES)] for _ in range(draw(st.integers(1, 8)))]).T


@examples(100)
@given(exact_places(), exact_places(), st.sampled_from([360.0, -360.0]), st.sampled_from([360.0, 0.0, -360.0]))
def test_pairs_are_the_same_a_turn_of_longitude_away(cameras, subjects, turn, other_turn):
    keys = [number % 2 for number in range(8)]
    for pairing, values in ((pair_all, ((), ())), (pair_by_field, (([*keys],), ([*keys],))), (pair_closest, ((), ()))):
        of_cameras, of_subjects = (
            [keys_of[: ends.shape[1]] for keys_of in given_keys] for given_keys, ends in zip(values, (cameras, subjects))
        )
        here = joined_blocks(pairing(*cameras, *of_cameras, *subjects, *of_subjects))
        shifted = joined_blocks(pairing(cameras[0] + turn, cameras[1], *of_cameras, subjects[0] + other_turn, subjects[1], *of_subjects))
        for name in here:
            if name == "subject" and pairing is pair_closest:
                continue  # of two subjects at one distance either may be met first
            if name in ("bearing_deg", "back_deg"):
                near = here["dist_m"] < 1.98e7
                assert np.abs(azimuths.offset_deg(here[name], shifted[name]))[near].max(initial=0.0) < 1e-6
            else:
                assert np.abs(here[name] - shifted[name]).max(initial=0.0) < 1e-6, name


@examples(60)
@given(places(7), places(5), st.integers(1, 6), st.integers(1, 4))
def test_pairs_of_a_layer_are_those_of_its_parts(cameras, subjects, camera_cut, subject_cut):
    whole = joined_blocks(pair_all(*cameras, *subjects, block_pairs=6))
    parts = []
    for some in (slice(0, camera_cut), slice(camera_cut, None)):
        for others in (slice(0, subject_cut), slice(subject_cut, None)):
            part = joined_blocks(pair_all(*cameras[:, some], *subjects[:, others]))
            part["camera"] += some.start
            part["subject"] += others.start
            parts.append(part)
    parts = joined(parts)
    parts = take(parts, np.lexsort((parts["subject"], parts["camera"])))
    for name, values in whole.items():
        assert values.tolist() == parts[name].tolist(), name
    closest = joined_blocks(pair_closest(*cameras, *subjects))
    apart = [joined_blocks(pair_closest(*cameras[:, some], *subjects)) for some in (slice(0, camera_cut), slice(camera_cut, None))]
    assert closest["dist_m"].tolist() == joined(apart)["dist_m"].tolist()


@st.composite
def uplands(draw, count):
    """Ground heights, some unknown, some 0."""
    return np.array([draw(st.sampled_from([np.nan, 0.0]) | between(-400, 8000)) for _ in range(count)])


@examples(100)
@given(ends_of_sightlines(), st.data())
def test_columns_of_sightlines_lie_in_their_ranges_and_none_is_nan_without_a_reason(ends, data):
    count = len(ends[0])
    cameras = Cameras(*ends[:2], lens_m=data.draw(between(0, 100)), z_m=data.draw(uplands(count)))
    subjects = Subjects(
        *ends[2:],
        height_m=data.draw(between(0, 900)),
        base_m=data.draw(between(0, 900)),
        width_m=data.draw(between(0, 900)),
        z_m=data.draw(uplands(count)),
    )
    blocks = [sightlines(cameras, subjects, block) for block in pair_all(*ends)]
    assert not any(left_out for _, left_out in blocks)
    table = joined([columns for columns, _ in blocks])
    heights = {"cam_z_m", "base_z_m", "top_z_m"}
    camera_z, subject_z = cameras.z_m[table["camera_index"]], subjects.z_m[table["subject_index"]]
    level = np.isnan(camera_z) | np.isnan(subject_z) | ((camera_z == 0.0) & (subject_z == 0.0))
    assert (table["heights"] == np.where(level, "level", "z")).all()
    for name, values in table.items():
        if name in heights:
            assert np.isnan(values).tolist() == level.tolist(), name
        else:
            assert not is_null(values).any(), name
    in_ranges(table, bearing_deg=(0, 360), back_deg=(0, 360), base_alt_deg=(-90, 90), top_alt_deg=(-90, 90))
    in_ranges(table, height_deg=(0, 180), width_deg=(0, 180), dist_m=(0, 20004000))
    assert (table["top_alt_deg"] >= table["base_alt_deg"]).all()


@examples(200)
@given(
    between(0.01, 2.0004e7) | st.sampled_from([2.0003e7, 1.99e7, 50e3]),
    st.sampled_from([0.0]) | between(-6000, 9000),
    LATITUDES,
    BEARINGS,
    st.sampled_from([0.0, 0.13]) | between(0, 0.9),
)
def test_ground_at_any_distance_is_seen_within_the_sky(dist_m, rise_m, lat_deg, az_deg, refraction_k):
    radius_m = curvature.radius_in_azimuth(lat_deg, az_deg)
    low, high = (curvature.altitude_deg(dist_m, rise, radius_m, refraction_k) for rise in (rise_m, rise_m + 100.0))
    assert -90.0 <= low <= high <= 90.0


def is_null(values):
    if values.dtype == object:
        return np.array([value is None or value == "" for value in values], bool)
    return np.isnan(values) if values.dtype.kind == "f" else np.isnat(values) if values.dtype.kind == "M" else np.zeros(values.shape, bool)


CYCLES = {"bearing_deg", "back_deg", "az_deg", "moon_az", "apex_az", "apex_lon", "az_from"}


def in_ranges(table, **limits):
    """Values lie within limits, both included but for a whole turn."""
    for name, (low, high) in limits.items():
        values = table[name][~np.isnan(table[name])]
        assert ((values >= low) & ((values < high) if name in CYCLES else (values <= high))).all(), (name, values.min(), values.max())


# angles

ANY = between(-1e6, 1e6) | st.sampled_from([-1e-300, 1e-300, -1e-17, 1e-14, -0.0, 360.0, -360.0, 180.0, -180.0])


@examples(200)
@given(ANY, ANY)
def test_angles_lie_in_their_turn(first, second):
    one, other = np.array([first]), np.array([second])
    assert 0.0 <= horizontal.azimuth_deg(one, other)[0] < 360.0
    assert -180.0 < azimuths.offset_deg(one, other)[0] <= 180.0
    assert 0.0 <= geodesic.direct(one / 1e6 * 180, other / 1e6 * 90, other % 360.0, 1000.0)[2][0] < 360.0
    assert abs(math.remainder(azimuths.offset_deg(one, other)[0] - (first - second), 360.0)) < 1e-6


@examples(200)
@given(between(-1, 1) | st.sampled_from([0.0, -1e-20, 1e-20]), BEARINGS, BEARINGS | st.sampled_from([1e-13, 359.9999999]))
def test_the_band_of_any_direction_lies_in_its_ranges(sin_alt, az_deg, turn_deg):
    """A core at an altitude and azimuth, and the plane turned about it."""
    up, (az, turn) = np.array([0.0, 0.0, 1.0]), np.radians([az_deg, turn_deg])
    level = np.array([np.sin(az), np.cos(az), 0.0])
    cos_alt = np.sqrt(1.0 - sin_alt * sin_alt)
    core = cos_alt * level + sin_alt * up
    higher, aside = cos_alt * up - sin_alt * level, np.array([np.cos(az), -np.sin(az), 0.0])
    y = np.cos(turn) * aside + np.sin(turn) * higher
    band = galactic.band(*(vector[:, None] for vector in (core, y, np.cross(core, y))))
    made = {"apex_deg": band.apex_deg, "apex_az": band.apex_az, "apex_lon": band.apex_lon, "tilt_deg": band.tilt_deg}
    in_ranges(made, apex_deg=(0, 90), apex_az=(0, 360), apex_lon=(0, 360), tilt_deg=(0, 90))
    assert np.isnan(band.tilt_deg[0]) == (abs(band.core_true_deg[0]) > 89.0)
    assert band.apex_deg[0] >= abs(band.core_true_deg[0]) - 1e-6  # the top is the highest point of the plane


@examples(200)
@given(st.lists(st.tuples(st.integers(0, 2), between(-720, 720) | ANY, between(0, 360) | st.just(0.0)), min_size=1, max_size=6))
def test_reaches_taken_together_hold_each_and_lie_in_their_turn(ranges):
    rows, begin, length = (np.array(values) for values in zip(*ranges))
    begin = np.fmod(begin, 720.0)
    az_from, az_to = azimuths.union_of_reaches(rows.astype(int), begin, begin + length, 3)
    for row, start, run in zip(rows, begin, length):
        low, high = az_from[row], az_to[row]
        assert 0.0 <= low < 360.0
        assert (0.0 <= high < 360.0) or (low, high) == (0.0, 360.0)
        if high != 360.0:
            whole = (high - low) % 360.0
            ahead = (start - low + 1e-9) % 360.0
            assert ahead + run <= whole + 2e-9, (low, high)
    assert np.isnan(az_from[np.setdiff1d(np.arange(3), rows)]).all()


# sets of stretches

SPAN = 0.0, 12.0


@st.composite
def stretches(draw, rows=3):
    """A set a row: random, empty or whole; ends fall together often, as the times are few."""
    row, start, end = [], [], []
    for number in range(rows):
        edges = sorted(draw(st.sets(st.integers(0, 12), max_size=8)))
        edges = edges[: len(edges) // 2 * 2]
        row += [number] * (len(edges) // 2)
        start += edges[::2]
        end += edges[1::2]
    low, high = (np.full(rows, moment) for moment in SPAN)
    return arcs.Arcs(np.array(row, int), np.array(start, float), np.array(end, float), low, high)


def told(made):
    """Rows, starts and ends, after a look at their order."""
    same = made.row[1:] == made.row[:-1]
    assert (np.diff(made.row) >= 0).all()
    assert (made.start < made.end).all()
    assert (made.end[:-1][same] < made.start[1:][same]).all(), "stretches of a row that touch are one"
    assert (made.start >= SPAN[0]).all()
    assert (made.end <= SPAN[1]).all()
    return made.row.tolist(), made.start.tolist(), made.end.tolist()


@examples(150)
@given(stretches(), stretches(), stretches())
def test_laws_of_and_or_not(a, b, c):
    every, either, outside = arcs.every, arcs.either, arcs.outside
    assert told(outside(every(a, b, c))) == told(either(outside(a), outside(b), outside(c)))
    assert told(outside(either(a, b, c))) == told(every(outside(a), outside(b), outside(c)))
    assert told(outside(outside(a))) == told(a)
    assert told(every(a, b)) == told(every(b, a))
    assert told(either(a, b, c)) == told(either(c, either(b, a)))
    assert told(every(a, either(b, c))) == told(either(every(a, b), every(a, c)))
    assert told(either(a, every(a, b))) == told(a)
    assert told(every(a, arcs.always(a.low, a.high))) == told(a)
    assert len(every(a, outside(a))) == 0
    assert told(either(a, outside(a))) == told(arcs.always(a.low, a.high))


@examples(150)
@given(stretches(), stretches())
def test_laws_of_alike(a, b):
    both, none = arcs.every(a, b), arcs.outside(arcs.either(a, b))
    assert told(arcs.alike(a, b)) == told(arcs.either(both, none))
    assert told(arcs.alike(a, a)) == told(arcs.always(a.low, a.high))
    assert len(arcs.alike(a, arcs.outside(a))) == 0


@examples(200)
@given(stretches(), st.lists(st.integers(0, 2), min_size=1, max_size=5), between(*SPAN))
def test_rows_taken_hold_what_they_held(a, index, t_s):
    index = np.array(index)
    taken = a.take(index)
    rows = np.arange(len(index))
    moments = np.full(len(index), t_s)
    plain = [any(start <= t_s <= end for row, start, end in zip(a.row, a.start, a.end) if row == wanted) for wanted in index]
    assert taken.contains(rows, moments).tolist() == plain


# crossings

FIXED = {"core": bodies.CORE, "sun": bodies.SUN, "moon": bodies.MOON, "galactic_pole": bodies.GALACTIC_POLE}


CROSSINGS_DAYS = 10
# Where the daily swing is small against what changes from day to day: altitudes near the poles, bearings due east and west near the equator
HARD_LATITUDES = between(87, 90) | between(-90, -87) | between(-3, 3)


@st.composite
def planes(draw):
    """At each site a plane in which the body stands at some moment."""
    count = draw(st.integers(1, 6))
    lon = np.array([draw(LONGITUDES) for _ in range(count)])
    lat = np.array([draw(LATITUDES | HARD_LATITUDES) for _ in range(count)])
    shares = np.array([draw(between(0, 1)) for _ in range(count)])
    kinds = st.sampled_from(["above", "clockwise_of", "counterclockwise_of"])
    return lon, lat, shares, draw(kinds), draw(FIRST_NIGHTS), draw(st.sampled_from(list(FIXED)))


def test_crossings_of_a_plane_alternate():
    """Between two ends the condition holds, or does not, throughout: looked at between all of them."""
    with Tally(ends=500) as tally:

        @examples(40)
        @given(planes())
        def alternate(drawn):
            lon, lat, shares, kind, first, name = drawn
            span = np.datetime64(first, "s").astype(float) + np.array([-DAY_S, (CROSSINGS_DAYS - 1) * DAY_S])
            body, sites = FIXED[name], horizontal.Sites(lon, lat, 0.0)

            def altaz(row, t_utc_s):
                table = TimeTable(t_utc_s.ravel(), [body])
                return tuple(values[0].reshape(t_utc_s.shape) for values in horizontal.true_altaz(sites.take([row]), table, body))

            then = span[0] + shares * (span[1] - span[0])
            limit = np.array([altaz(row, then[[row]])[kind != "above"][0] for row in range(len(lon))])
            low, high = (np.full(len(lon), moment) for moment in default_ephemeris().tt_from_utc(span))
            made = crossings.Motion(body, tracks([body], *span)[body], sites).arcs(getattr(crossings, kind)(sites, limit), low, high)
            for row in range(len(lon)):
                mine = made.row == row
                edges = np.concatenate([low[:1], np.stack([made.start[mine], made.end[mine]], axis=1).ravel(), high[:1]])
                assert (np.diff(edges) >= 0.0).all()
                moments = edges[:-1, None] + np.diff(edges)[:, None] * np.array([0.01, 0.2, 0.5, 0.8, 0.99])
                alt, az = altaz(row, default_ephemeris().utc_from_tt(moments))
                if kind == "above":
                    margin = alt - limit[row]
                else:
                    way = azimuths.offset_deg(az, limit[row]) * (1.0 if kind == "clockwise_of" else -1.0)
                    margin = np.degrees(np.sin(np.radians(way)) * np.cos(np.radians(alt)))
                holds = np.arange(len(edges) - 1)[:, None] % 2 == 1
                some = np.diff(edges) > 0.0
                assert (np.where(holds, margin, -margin)[some] > -TOL_DEG).all()
                tally.add(ends=len(edges) - 2)

        alternate()


# alignments: what each row tells

# Columns that follow from layers, and not from the sky
OF_LAYERS = {"camera", "camera_id", "subject", "subject_id", "dist_m", "heights", "mag_deg", "decl_deg", "ground_deg", "sight", "moon_mag"}


def may_be_null(table, core_true_deg=None):
    """For each column that may be null: where it is, surely and perhaps."""
    no_disc = ~np.isin(table["body"].astype(str), ("sun", "moon"))
    no_tilt = table["core_alt"] < 0.0
    near_zenith = table["core_alt"] > 88.99  # within a degree of the zenith the band has no tilt
    moon_down = table["moon_deg"] < -34.0 / 60.0 - 0.29  # Moon's semidiameter: 0.244 to 0.288 deg
    return {
        "semi_deg": (no_disc, no_disc),
        "tilt_deg": (no_tilt, no_tilt | near_zenith),
        "lean": (no_tilt, no_tilt | near_zenith),
        "moon_side": (moon_down, table["moon_deg"] < -34.0 / 60.0 - 0.24),
    }


def nulls_have_reasons(table, names):
    """Null where the rules say so and nowhere else."""
    rules = may_be_null(table)
    for name in names:
        null = is_null(table[name])
        surely, perhaps = rules.get(name, (np.zeros(null.shape, bool),) * 2)
        assert null[surely].all(), name
        assert not null[~perhaps].any(), name


SKY_RANGES = {
    **dict.fromkeys(("az_deg", "apex_az", "apex_lon"), (0, 360)),
    **dict.fromkeys(("alt_deg", "sun_deg", "moon_deg", "core_alt"), (-90, 90)),
    **dict.fromkeys(("tilt_deg", "apex_deg"), (0, 90)),
    "moon_lit": (0, 1),
    "moon_sep": (0, 180),
    "semi_deg": (0.24, 0.30),  # Moon from 356 400 km less the Earth's radius to 406 700 km; Sun 0.262 to 0.272
}


def test_rows_lie_in_their_ranges_and_nothing_is_null_without_a_reason():
    with Tally(rows=50, searches_with_rows=5) as tally:

        @examples(30)
        @given(searches())
        def each(search):
            table, _ = search.found()
            assert set(ALIGNMENTS_FIELDS) - OF_LAYERS <= set(table)
            nulls_have_reasons(table, set(ALIGNMENTS_FIELDS) - OF_LAYERS)
            in_ranges(table, **SKY_RANGES, bearing_deg=(0, 360), moon_az=(0, 360), minutes=(0, 1440.0001))
            assert set(table["place"]) <= {"above", "behind", "below"}
            assert set(table["sky"]) <= {"day", "civil", "nautical", "astronomical", "night"}
            assert set(table["lean"]) <= {"left", "right", None}
            assert set(table["moon_side"]) <= {"ahead", "side", "behind", None}
            assert (table["body"] == search.body).all()
            tally.add(rows=len(table["pair"]), searches_with_rows=len(table["pair"]) > 0)

        each()


def test_rows_tell_one_story():
    """Start, moment and end follow each other, and what is a difference or a copy of other columns agrees with them."""
    with Tally(rows=30) as tally:

        @examples(20)
        @given(searches())
        def each(search):
            table, _ = search.found()
            assert (table["t_start"] <= table["t_utc"]).all()
            assert (table["t_utc"] <= table["t_end"]).all()
            assert (
                np.abs(table["minutes"] * 60.0 - (table["t_end"] - table["t_start"])).max(initial=0.0) < 1.01
            )  # a leap second may lie within
            tolerance_deg = CUSTOMARY[search.body][0] if search.asked.az_tolerance_deg is None else search.asked.az_tolerance_deg
            level = np.cos(np.radians(np.maximum(table["alt_deg"], 0.0)))
            assert ((np.abs(table["d_az_deg"]) - tolerance_deg) * level <= TOL_DEG).all()
            assert np.abs(azimuths.offset_deg(table["az_deg"], table["bearing_deg"]) - table["d_az_deg"]).max(initial=0.0) < 1e-9
            assert np.abs(table["alt_deg"] - table["top_alt_deg"] - table["d_alt_deg"]).max(initial=0.0) < 1e-9
            bearings, tops = (np.array([getattr(pair, name) for pair in search.pairs]) for name in ("bearing_deg", "top_alt_deg"))
            assert table["bearing_deg"].tolist() == bearings[table["pair"]].tolist()
            assert table["top_alt_deg"].tolist() == tops[table["pair"]].tolist()
            assert table["tz"].tolist() == [search.zones[pair] for pair in table["pair"]]
            same = (table["pair"][1:] == table["pair"][:-1]) if len(table["pair"]) else np.zeros(0, bool)
            assert (table["t_end"][:-1][same] <= table["t_start"][1:][same]).all()
            tally.add(rows=len(table["pair"]))

        each()


STREWN = np.array([0.0, 0.05, 0.37, 0.71, 0.95, 1.0])  # parts of a stretch
BESIDE_S = 1.0  # of a stretch: outside of it
# Limit -> the margin that tells of it
MARGINS = {
    **{f"{name}_deg": name for name in ("alt_min", "alt_max", "gap_min", "gap_max", "tilt_min", "tilt_max", "apex_min", "apex_max")},
    "az_tolerance_deg": "azimuth",
    "core_alt_min_deg": "core_alt_min",
    "sun_min_deg": "sun_min",
    "lit_min": "lit_min",
    "lit_max": "lit_max",
    "moon_lit_max": "moon",
}


def of_search(search, pair, sky):
    """Margins of all conditions at the moments of a plugin table, by their definitions, and how near to nothing each counts as none."""
    found = margins(search.body, by_plugin(search.pairs[pair], sky), search.pairs[pair], search.asked)
    return {name: found[name] + (TOL_LIT if name.startswith("lit") else TOL_DEG) for name in found}


@pytest.mark.parametrize("name", [*BINDING, SEVERAL])
def test_every_condition_holds_throughout_each_stretch(name):
    """Darkness, altitudes, gap, tilt, arch, Moon and bearing, at moments strewn over each stretch."""
    with Tally(moments=30, bound=30 if name in MARGINS else 0) as tally:

        @examples(12 if name == SEVERAL else 5)
        @given(asking(name))
        def each(search):
            table, _ = search.found()
            length = table["t_end"] - table["t_start"]
            edge = np.minimum(TOL_S, length / 2)
            moments = table["t_start"] + np.clip(STREWN[:, None] * length, edge, length - edge)
            sky = plugin_table(moments.ravel())
            for pair in np.unique(table["pair"]):
                mine = table["pair"] == pair
                found = of_search(search, pair, sky)
                for margin_name, margin in found.items():
                    assert (margin.reshape(moments.shape)[:, mine] >= 0.0).all(), margin_name
                count = len(STREWN) * mine.sum()
                tally.add(moments=count, bound=count if MARGINS.get(name) in found else 0)

        each()


@pytest.mark.parametrize("name", [*BINDING, SEVERAL])
def test_no_moment_at_which_all_conditions_hold_is_outside_the_stretches(name):
    """Two nights more at either end are searched: a stretch may belong to the night beside, and clocks are up to 14 h apart."""
    with Tally(moments=20) as tally:

        @examples(10 if name == SEVERAL else 3)
        @given(asking(name), st.integers(0, 2**32 - 1))
        def each(search, seed):
            table, _ = search.found(first=search.first - 2, last=search.last + 2)
            begin, end = ((day + 1).astype("datetime64[s]").astype(float) for day in (search.first, search.last))
            beside = np.concatenate([table["t_start"] - BESIDE_S, table["t_end"] + BESIDE_S])
            rng = np.random.default_rng(seed)
            moments = np.concatenate([rng.uniform(begin - DAY_S / 2, end + 10 * 3600.0, 200), rng.permutation(beside)[:50]])
            moments = moments[(moments > begin - DAY_S / 2) & (moments < end + 10 * 3600.0)]
            sky = plugin_table(moments)
            for pair in range(len(search.pairs)):
                mine = table["pair"] == pair
                hold = least(of_search(search, pair, sky)) >= 2.0 * TOL_DEG
                inside = covered(moments, table["t_start"][mine], table["t_end"][mine], TOL_S)
                assert inside[hold].all(), moments[hold & ~inside]
                tally.add(moments=hold.sum())

        each()


def covered(moments, starts, ends, tol_s):
    """Whether moments lie in any of some stretches."""
    return ((moments >= starts[:, None] - tol_s) & (moments <= ends[:, None] + tol_s)).any(axis=0)


def test_no_other_moment_of_a_stretch_is_closer_to_the_bearing():
    with Tally(rows=80) as tally:

        @examples(15)
        @given(st.sampled_from([*BINDING, SEVERAL]).flatmap(asking))
        def each(search):
            table, _ = search.found()
            moments = table["t_start"] + np.linspace(0.0, 1.0, 21)[:, None] * (table["t_end"] - table["t_start"])
            sky = plugin_table(moments.ravel())
            for pair in np.unique(table["pair"]):
                mine = table["pair"] == pair
                az_deg = azimuth_of(search.body, by_plugin(search.pairs[pair], sky)).reshape(moments.shape)[:, mine]
                off_deg = np.abs(azimuths.offset_deg(az_deg, search.pairs[pair].bearing_deg))
                # What 10 ms change in the direction: the moment is told from that much inside of a stretch.
                rate = np.abs(np.diff(off_deg, axis=0)).max(axis=0) / np.maximum((moments[1] - moments[0])[mine], 1e-3)
                near_zenith = np.isin(search.body, ("arch",)) | (table["alt_deg"][mine] > 89.0)
                ahead = (off_deg >= np.abs(table["d_az_deg"][mine]) - 0.001 - 0.02 * rate).all(axis=0)
                assert (ahead | near_zenith).all()
                tally.add(rows=mine.sum())

        each()


def azimuth_of(body, places_then):
    if body != "arch":
        return places_then.altaz[body][1]
    alt, az = places_then.altaz["galactic_pole"]
    return np.where(alt >= 0.0, az + 180.0, az) % 360.0


# alignments: nights and clocks


def offset_of(zone_name, t_utc_s):
    """Local less UTC. [s]."""
    if zone_name.startswith("UTC"):
        sign, hours, minutes = (zone_name[3:4], int(zone_name[4:6] or 0), int(zone_name[7:9] or 0))
        return (-1 if sign == "-" else 1) * (3600 * hours + 60 * minutes)
    at = datetime(1970, 1, 1, tzinfo=timezone.utc) + timedelta(seconds=float(t_utc_s))
    return at.astimezone(ZoneInfo(zone_name)).utcoffset().total_seconds()


def night_named(t_utc_s, lon_deg, zone_name):
    """The date that the zone's clock shows at the mean solar noon before a moment: by the definition."""
    noon = 43200.0 - 240.0 * lon_deg
    noon += DAY_S * math.floor((t_utc_s - noon) / DAY_S)
    return np.datetime64(math.floor((noon + offset_of(zone_name, noon)) / DAY_S), "D")


def test_rows_belong_to_the_night_that_they_name_and_it_was_asked_for():
    with Tally(rows=80) as tally:

        @examples(15)
        @given(searches().map(at_any_hour))
        def each(search):
            table, _ = search.found()
            for pair, t_utc_s, night in zip(table["pair"], table["t_utc"], table["night"]):
                assert night == night_named(t_utc_s, search.pairs[pair].lon_deg, search.zones[pair])
                assert search.first <= night <= search.last
            tally.add(rows=len(table["pair"]))

        each()


def test_local_texts_read_back_to_the_moments():
    with Tally(rows=80, zones=15) as tally:

        @examples(15)
        @given(searches().map(at_any_hour))
        def each(search):
            table, _ = search.found()
            for utc, local in (("t_utc", "t_local"), ("t_start", "start_loc"), ("t_end", "end_loc")):
                reads_back(table[utc], table[local], table["tz"])
            tally.add(rows=len(table["tz"]), zones=len(set(table["tz"])))

        each()


def reads_back(moments, texts, zone_names):
    for t_utc_s, text, zone_name in zip(moments, texts, zone_names):
        read = datetime.fromisoformat(text.replace(" +", "+").replace(" -", "-"))
        assert abs(read.timestamp() - t_utc_s) <= 0.5
        assert read.utcoffset().total_seconds() == offset_of(zone_name, read.timestamp())


def changes():
    """Moments at which clocks of the zones change, to the hour, and what zone it is."""
    found = []
    for name in ZONES:
        hours = np.datetime64("2024-01-01T00").astype(int) + np.arange(0, 3 * 366 * 24, 24)
        offsets = np.array([offset_of(name, 3600.0 * hour) for hour in hours.tolist()])
        found += [(3600.0 * hour, name) for hour in hours[1:][np.diff(offsets) != 0.0].tolist()]
    return found


NEAR_CHANGES = st.sampled_from(changes()).flatmap(lambda found: st.tuples(between(found[0] - DAY_S, found[0]), st.just(found[1])))


@examples(120)
@given(st.lists(st.tuples(between(6.3e8, 2.64e9), st.sampled_from(ZONES)) | NEAR_CHANGES, min_size=5, max_size=20))
def test_any_moment_reads_back_from_its_local_text(drawn):
    moments, zone_names = zip(*drawn)
    texts = clock.local_text(np.array(moments), list(zone_names), np.arange(len(moments)))
    reads_back(moments, texts, zone_names)


@examples(200)
@given(between(6.4e8, 2.63e9), LONGITUDES, st.sampled_from(ZONES))
def test_a_night_asked_for_by_the_name_of_a_moment_holds_it(t_utc_s, lon_deg, zone_name):
    """Unless its clock gives one name to two nights, where daylight saving shifts a noon that is its midnight."""
    night, noon_utc_s = nights.night_of(np.array([t_utc_s]), lon_deg, [zone_name], 0)
    assert noon_utc_s[0] <= t_utc_s < noon_utc_s[0] + DAY_S
    start, count = nights.noons([lon_deg], [zone_name], [0], night, night)
    assert 1 <= count[0] <= 2
    assert start[0] <= t_utc_s < start[0] + count[0] * DAY_S


# alignments: one run and several


def test_rows_are_the_same_a_turn_of_longitude_away():
    with Tally(rows=80) as tally:

        @examples(30)
        @given(either_way(searches(longitudes=EXACT_LONGITUDES)), st.sampled_from([360.0, -360.0]))
        def each(search, turn):
            table, unmet = search.found()
            shifted, shifted_unmet = search.found(pairs=tuple(replace(pair, lon_deg=pair.lon_deg + turn) for pair in search.pairs))
            assert_same_rows(table, shifted)
            assert unmet["reason"].tolist() == shifted_unmet["reason"].tolist()
            tally.add(rows=len(table["pair"]))

        each()


@pytest.mark.parametrize("lat_deg", [90.0, -90.0])
def test_a_celestial_pole_that_stays_in_the_zenith_is_over_no_bearing(lat_deg):
    """As it does on the Earth's pole alone, by whatever turn the longitude is written; a hair beside it there is north, or south."""
    night, toward_deg = np.datetime64("2000-01-01"), 0.0 if lat_deg > 0.0 else 180.0
    on_it = [Pair(1 / (1 << 20) + turn, lat_deg, 0.0, bearing, 0.0, 0.0) for turn in (0.0, 360.0, -360.0) for bearing in (0.0, 77.0, 180.0)]
    beside = [replace(pair, lat_deg=np.nextafter(lat_deg, 0.0)) for pair in on_it]
    search = Search((), ("UTC",) * len(on_it), "pole", night, night, Asked(sun_limit_deg=90.0))
    table, unmet = search.found(pairs=tuple(on_it))
    assert len(table["pair"]) == 0
    assert set(unmet["reason"]) == {"The celestial pole stays in the zenith, over no bearing."}
    assert np.isnan([unmet["az_from"], unmet["az_to"]]).all()
    table, unmet = search.found(pairs=tuple(beside))
    assert set(table["bearing_deg"]) == {toward_deg}
    assert len(table["pair"]) == 3
    assert set(unmet["az_from"]) == set(unmet["az_to"]) == {toward_deg}


def test_pairs_in_two_runs_give_the_rows_of_one():
    with Tally(rows=80) as tally:

        @examples(20)
        @given(either_way(searches()), st.integers(0, 15))
        def each(search, cut):
            table, unmet = search.found()
            parts = []
            for first, some in ((0, slice(0, cut)), (min(cut, len(search.pairs)), slice(cut, None))):
                if search.pairs[some]:
                    part = search.found(pairs=search.pairs[some], zones=search.zones[some])
                    for columns in part:
                        columns["pair"] += first
                    parts.append(part)
            both, both_unmet = (joined([part[k] for part in parts]) for k in (0, 1))
            assert_same_rows(table, both)
            assert unmet["pair"].tolist() == both_unmet["pair"].tolist()
            assert unmet["reason"].tolist() == both_unmet["reason"].tolist()
            tally.add(rows=len(table["pair"]))

        each()


def test_nights_in_two_runs_give_the_rows_of_one():
    with Tally(rows=80) as tally:

        @examples(20)
        @given(either_way(searches()), st.integers(1, 9))
        def each(search, cut):
            table, _ = search.found()
            cut = min(search.first + cut, search.last)
            if cut > search.first:
                early, late = search.found(last=cut - 1)[0], search.found(first=cut)[0]
                both = joined([early, late])
                order = np.lexsort((both["t_start"], both["pair"]))
                assert_same_rows(table, take(both, order))
                tally.add(rows=len(table["pair"]))

        each()


@pytest.mark.parametrize("name", BINDING)
def test_a_looser_condition_or_longer_span_loses_no_time(name):
    """What was found lies within what is found then; the night beside is searched too, to which a longer stretch may belong."""
    with Tally(rows=20, more=1) as tally:

        @examples(10)
        @given(searches(cameras=2), st.data())
        def each(search, data):
            share = data.draw(st.sampled_from([0.0, 0.4]) if name == "moon" else between(0.2, 1))
            looser = st.sampled_from([0.4, 0.9]) if name == "moon" else between(share, 1)
            strict, loose = (limited_in(search, name, way) for way in (share, data.draw(looser)))
            table, _ = strict.found()
            wider, _ = loose.found(first=loose.first - 1 - data.draw(st.integers(0, 3)), last=loose.last + 1)
            holds_all_of(wider, table)
            same_nights = (wider["night"] >= strict.first) & (wider["night"] <= strict.last)
            tally.add(rows=len(table["pair"]), more=total_s(take(wider, same_nights)) > total_s(table) > 0.0)

        each()


def total_s(table):
    return (table["t_end"] - table["t_start"]).sum()


def holds_all_of(wider, table):
    """Each stretch of a table lies within those of a wider one, its cuts at noon joined again."""
    for pair, start, end in zip(table["pair"], table["t_start"], table["t_end"]):
        mine = wider["pair"] == pair
        gaps = stretch_without(start, end, wider["t_start"][mine], wider["t_end"][mine])
        assert gaps <= TOL_S, (pair, start, end)


def stretch_without(start, end, starts, ends):
    """How much of a stretch none of some others covers. [s]."""
    order = np.argsort(starts)
    at, left = start, 0.0
    for low, high in zip(starts[order], ends[order]):
        if low >= end:
            break
        left += max(0.0, low - at)
        at = max(at, high)
    return left + max(0.0, end - at)


OPEN_ENDED = {
    "alt_max_deg": 90.0,
    "gap_min_deg": -180.0,
    "gap_max_deg": 180.0,
    "apex_min_deg": 0.0,
    "apex_max_deg": 90.0,
    "sun_min_deg": -90.0,
    "lit_min": 0.0,
    "lit_max": 1.0,
}


def test_limits_that_limit_nothing_change_nothing():
    """The ends of each range, given where they were blank."""
    with Tally(rows=50) as tally:

        @examples(30)
        @given(either_way(searches(cameras=2)), st.sampled_from(list(OPEN_ENDED)))
        def each(search, name):
            asked = replace(search.asked, **{name: None})
            if search.body == "arch":
                asked = replace(asked, apex_max_deg=None if name == "apex_max_deg" else 90.0)
                name = "apex_min_deg" if name == "apex_max_deg" else name  # blank means 60 there
            table, _ = search.found(asked=asked)
            limited, _ = search.found(asked=replace(asked, **{name: OPEN_ENDED[name]}))
            assert_same_rows(table, limited)
            tally.add(rows=len(table["pair"]))

        each()


@pytest.mark.parametrize("tilt", [(0.0, None), (None, 90.0), (0.0, 90.0)])
def test_any_tilt_is_no_limit_to_a_core_that_is_up(tilt):
    """But where it comes within a degree of the zenith, where the band has no tilt."""
    with Tally(rows=80) as tally:

        @examples(12)
        @given(searches(cameras=2))
        def each(search):
            low_core = tuple(replace(pair, lat_deg=pair.lat_deg if abs(pair.lat_deg + 28.9) > 1.5 else 40.0) for pair in search.pairs)
            search = replace(at_any_hour(search), body="core", pairs=low_core)
            asked = replace(search.asked, alt_min_deg=1.0)
            table, _ = search.found(asked=asked)
            tilted, _ = search.found(asked=replace(asked, tilt_min_deg=tilt[0], tilt_max_deg=tilt[1]))
            assert_same_rows(table, tilted)
            tally.add(rows=len(table["pair"]))

        each()


def test_unmet_is_what_the_table_lacks():
    with Tally(met=40, unmet=30, reached=15) as tally:

        @examples(30)
        @given(either_way(searches()))
        def each(search):
            table, unmet = search.found()
            met, without = set(table["pair"].tolist()), unmet["pair"].tolist()
            assert len(set(without)) == len(without)
            assert met.isdisjoint(without)
            assert met | set(without) == set(range(len(search.pairs)))
            assert (unmet["body"] == search.body).all()
            assert unmet["bearing_deg"].tolist() == [search.pairs[pair].bearing_deg for pair in without]
            for az_from, az_to, reason in zip(unmet["az_from"], unmet["az_to"], unmet["reason"]):
                assert reason.endswith(".")
                nowhere = "is never seen" in reason or "stays in the zenith" in reason
                assert np.isnan(az_from) == np.isnan(az_to) == nowhere, reason
                assert nowhere or (0.0 <= az_from < 360.0 and 0.0 <= az_to < 360.0) or (az_from, az_to) == (0.0, 360.0)
            tally.add(met=len(met), unmet=len(without), reached=np.isfinite(unmet["az_from"]).sum())

        each()


# positions


@st.composite
def skies(draw):
    count = draw(st.integers(1, 5))
    lon, lat = draw(places(count=count))
    height = np.array([draw(HEIGHTS) for _ in range(count)])
    zone_index = np.array([draw(st.integers(0, len(ZONES) - 1)) for _ in range(count)])
    moments = np.array(sorted(draw(st.lists(between(6.315e8, 2.643e9), min_size=1, max_size=6))))
    chosen = draw(st.lists(st.sampled_from(list(BODIES)), min_size=1, max_size=7, unique=True))
    return lon, lat, height, zone_index, moments, chosen, draw(st.sampled_from([None, 0.0]) | between(300, 1100))


def positions_of(lon, lat, height, zone_index, moments, chosen, pressure_hPa):
    blocks = sky_positions(
        horizontal.Sites(lon, lat, height), list(ZONES), zone_index, [of(body) for body in chosen], moments, pressure_hPa
    )
    return joined(list(blocks))


@examples(30)
@given(skies())
def test_positions_lie_in_their_ranges_and_nothing_is_null_without_a_reason(sky):
    table = positions_of(*sky)
    names = set(SKY_POSITIONS_FIELDS) - {"site", "site_id", "mag_deg", "ground_deg"}
    assert names <= set(table)
    table["moon_side"] = np.where(table["moon_deg"] < -0.85, None, "").astype(object)  # only alignments tell it
    nulls_have_reasons(table, names)
    in_ranges(table, **SKY_RANGES)
    reads_back(table["t_utc"], table["t_local"], table["tz"])
    assert len(table["site"]) == len(sky[0]) * len(sky[4]) * len(sky[5])


@examples(25)
@given(skies(), st.integers(1, 4), st.integers(1, 5))
def test_positions_of_sites_and_times_apart_are_those_together(sky, site_cut, time_cut):
    lon, lat, height, zone_index, moments, chosen, pressure_hPa = sky
    whole = positions_of(*sky)
    parts = []
    for some in (slice(0, site_cut), slice(site_cut, None)):
        for times in (slice(0, time_cut), slice(time_cut, None)):
            if len(lon[some]) and len(moments[times]):
                part = positions_of(lon[some], lat[some], height[some], zone_index[some], moments[times], chosen, pressure_hPa)
                part["site"] = part["site"] + some.start
                parts.append(part)
    parts = joined(parts)

    def in_order(table):
        return take(table, np.lexsort((table["t_utc"], table["body"].astype(str), table["site"])))

    whole, parts = in_order(whole), in_order(parts)
    for name in ("site", "body", "t_utc", "t_local", "tz", "sky", "lean"):
        assert whole[name].tolist() == parts[name].tolist(), name
    for name in ("alt_deg", "sun_deg", "moon_deg", "moon_lit", "core_alt", "tilt_deg", "apex_deg"):
        assert np.allclose(whole[name], parts[name], rtol=0.0, atol=1e-6, equal_nan=True), (
            name
        )  # deg; tables of other moments have other nodes


@examples(25)
@given(skies(), st.sampled_from([360.0, -360.0]))
def test_positions_are_the_same_a_turn_of_longitude_away(sky, turn):
    exact = np.round(sky[0] * (1 << 20)) / (1 << 20)
    here, shifted = positions_of(exact, *sky[1:]), positions_of(exact + turn, *sky[1:])
    level = np.cos(np.radians(here["alt_deg"]))
    assert np.abs(azimuths.offset_deg(here["az_deg"], shifted["az_deg"]) * level).max() < 1e-9
    for name in ("alt_deg", "sun_deg", "moon_deg", "moon_sep", "core_alt", "apex_deg"):
        assert np.abs(here[name] - shifted[name]).max() < 1e-9, name
