"""What holds of any alignments: membership at a million moments, nights and their names, stretches longer than a day, the unmet."""

from dataclasses import asdict, replace
from datetime import datetime, timezone
from functools import lru_cache
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from skyfield_scan import (
    GALACTIC_LON_DEG,
    STAR_ICRS_DEG,
    Asked,
    Pair,
    SkyfieldTimes,
    body_altaz,
    by_plugin,
    by_skyfield,
    least,
    margins,
    plugin_table,
    seen,
)

from skyalidade.plan.alignments import Pairs, find_alignments
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.targets import target

DAY_S = 86400.0
BODIES = ("core", "arch", "sun", "moon", "pole", "star", "galactic")
TOL_S, TOL_DEG = 0.5, 0.2 / 3600  # the promise for the end of a stretch, whichever is looser


def of(body, star=STAR_ICRS_DEG):
    return target(body, star=star, galactic_lon_deg=GALACTIC_LON_DEG)


def plan_pairs(pairs, zones=("UTC",)):
    columns = np.array([[p.lon_deg, p.lat_deg, p.height_m, p.bearing_deg, p.base_alt_deg, p.top_alt_deg] for p in pairs]).reshape(-1, 6).T
    index = np.arange(len(pairs)) if len(zones) == len(pairs) else np.zeros(len(pairs), int)
    return Pairs(*columns, list(zones), index)


def solve(pairs, targets, first_night, last_night, asked, zones=("UTC",)):
    """Table and unmet, all blocks joined."""
    found = list(find_alignments(plan_pairs(pairs, zones), targets, first_night, last_night, Conditions(**asdict(asked))))
    return tuple({name: np.concatenate([block[k][name] for block in found]) for name in found[0][k]} for k in (0, 1))


def utc_s(text):
    return np.datetime64(text, "s").astype(float)


@lru_cache(maxsize=1)
def every_minute(first_utc_s, last_utc_s):
    return SkyfieldTimes(np.arange(first_utc_s, last_utc_s, 60.0))


def random_pairs(count, seed):
    rng = np.random.default_rng(seed)
    pairs = []
    for _ in range(count):
        base = rng.uniform(-4, 4)
        lat = np.degrees(np.arcsin(rng.uniform(-1, 1)))
        pairs.append(Pair(rng.uniform(-180, 180), lat, rng.uniform(0, 4000), rng.uniform(0, 360), base, base + rng.uniform(0, 12)))
    return pairs


class TestMembership:
    """A million pairs of a place and a moment for each body: inside a stretch exactly where every condition holds."""

    PAIRS = random_pairs(200, seed=31)
    ASKED = {
        "core": Asked(45.0, 3.0, 80.0, -5.0, 70.0, 10.0, 85.0, sun_limit_deg=-6.0, moon="down_or_thin"),
        "arch": Asked(45.0, None, None, -20.0, 60.0, 5.0, None, 5.0, 80.0, sun_limit_deg=0.0, moon="down"),
        "sun": Asked(60.0, -4.0, 80.0, -3.0, 60.0),
        "moon": Asked(60.0, 0.0, 85.0, -3.0, 70.0, sun_limit_deg=10.0, sun_min_deg=-60.0, lit_min=0.1, lit_max=0.9),
        "pole": Asked(60.0, sun_limit_deg=-3.0, sun_min_deg=-70.0, moon="down_or_thin", moon_lit_max=0.5),
        "star": Asked(60.0, 2.0, 85.0, -10.0, 75.0, None, 80.0, None, 85.0, sun_limit_deg=-3.0, moon="down"),
        "galactic": Asked(60.0, 1.0, None, None, 75.0, 10.0, None, 10.0, None, sun_limit_deg=-1.0, moon="down_or_thin", moon_lit_max=0.4),
    }
    FIRST, LAST = "2028-03-01", "2029-02-28"

    @pytest.fixture(scope="class")
    @classmethod
    def moments(cls):
        return np.sort(np.random.default_rng(32).uniform(utc_s(cls.FIRST) + 2 * DAY_S, utc_s(cls.LAST) - 2 * DAY_S, 5000))

    @pytest.fixture(scope="class")
    @classmethod
    def places(cls, moments):
        table = plugin_table(moments)
        return [by_plugin(pair, table) for pair in cls.PAIRS]

    @pytest.mark.parametrize("body", BODIES)
    def test_at_a_million_random_moments(self, moments, places, body):
        asked = self.ASKED[body]
        table, _ = solve(self.PAIRS, [of(body)], self.FIRST, self.LAST, asked)
        inside_count = 0
        for number, pair in enumerate(self.PAIRS):
            mine = table["pair"] == number
            start, end = np.sort(table["t_start"][mine]), np.sort(table["t_end"][mine])
            inside = np.searchsorted(start, moments, side="right") > np.searchsorted(end, moments, side="left")
            depth = least(margins(body, places[number], pair, asked))
            wrong = np.nonzero((inside != (depth >= 0.0)) & (np.abs(depth) > TOL_DEG))[0]
            edges = np.concatenate([start, end, [np.inf]])
            wrong = [i for i in wrong if np.abs(edges - moments[i]).min() > TOL_S]
            assert wrong == [], (pair, moments[wrong[:3]])
            inside_count += inside.sum()
        assert inside_count > 5000  # of a million: enough to be wrong about


class TestNights:
    """A night begins at mean solar noon and is named by the date that the zone's clock shows then."""

    ZONES = ("UTC", "Pacific/Kiritimati", "Pacific/Niue", "America/Denver", "Pacific/Apia", "UTC-02:00", "UTC+12:00", "UTC-12:00")
    LONGITUDES = (0.0, -157.4, -169.9, -111.0, -172.0, -33.0, 180.0, -180.0)

    def pairs(self, body):
        return [Pair(lon, 20.0, 0.0, 120.0 if body == "moon" else 180.0, 0.0, 5.0) for lon in self.LONGITUDES]

    @staticmethod
    def name_of(t_utc_s, lon_deg, zone_name):
        """By the definition, with Python's own calendar."""
        noon = 43200.0 - 240.0 * lon_deg
        noon += DAY_S * np.floor((t_utc_s - noon) / DAY_S)
        if zone_name.startswith("UTC"):
            hours = int(zone_name[3:6] or 0)
            return np.datetime64(int(noon + 3600 * hours), "s").astype("datetime64[D]")
        return np.datetime64(datetime.fromtimestamp(noon, timezone.utc).astimezone(ZoneInfo(zone_name)).date())

    @pytest.mark.parametrize("body", ["core", "moon", "sun"])
    def test_each_row_bears_the_name_of_its_night(self, body):
        table, _ = solve(self.pairs(body), [of(body)], "2027-04-20", "2027-05-20", Asked(20.0, sun_limit_deg=-6.0), self.ZONES)
        named = [self.name_of(t, self.LONGITUDES[p], self.ZONES[p]) for t, p in zip(table["t_utc"], table["pair"])]
        assert len(named) > 100
        assert table["night"].tolist() == [name.astype(object) for name in named]
        assert table["tz"].tolist() == [self.ZONES[p] for p in table["pair"]]
        assert (table["night"] >= np.datetime64("2027-04-20")).all()
        assert (table["night"] <= np.datetime64("2027-05-20")).all()

    @pytest.mark.parametrize("body", ["core", "moon", "sun"])
    def test_fewer_nights_give_the_same_rows_of_those_nights(self, body):
        """Nothing is cut or lost at the edges of what is asked."""
        asked = Asked(20.0, sun_limit_deg=-6.0)
        many, _ = solve(self.pairs(body), [of(body)], "2027-04-20", "2027-05-20", asked, self.ZONES)
        few, _ = solve(self.pairs(body), [of(body)], "2027-05-01", "2027-05-07", asked, self.ZONES)
        kept = (many["night"] >= np.datetime64("2027-05-01")) & (many["night"] <= np.datetime64("2027-05-07"))
        assert few["pair"].tolist() == many["pair"][kept].tolist()
        for name in ("t_utc", "t_start", "t_end"):
            assert few[name] == pytest.approx(many[name][kept], abs=0.002)  # s; the tracks have other nodes

    @pytest.mark.parametrize(
        ("date", "named"),
        [
            ("2027-11-03", "2027-11-02"),  # the Sun is 16 min early: its transit belongs to the night that ends at mean noon
            ("2027-02-11", "2027-02-11"),  # 14 min late
        ],
    )
    def test_the_sun_over_a_subject_due_south(self, date, named):
        """A stretch across the noon is given whole, once, in the night of its transit."""
        pair = Pair(0.0, 45.0, 0.0, 180.0, 0.0, 5.0)
        table, _ = solve([pair], [of("sun")], named, named, Asked(20.0))
        assert len(table["t_utc"]) == 1
        noon = utc_s(date) + DAY_S / 2
        assert table["t_start"][0] < noon < table["t_end"][0]
        assert abs(table["t_utc"][0] - noon) < 17 * 60
        assert table["night"][0] == np.datetime64(named)
        assert table["d_az_deg"][0] == pytest.approx(0.0, abs=TOL_DEG)

    def test_a_sunrise_belongs_to_the_evening_before(self):
        pair = Pair(0.0, 45.0, 0.0, 90.0, -1.0, 0.0)
        table, _ = solve([pair], [of("sun")], "2027-03-20", "2027-03-20", Asked(5.0))
        assert [str(np.datetime64(int(t), "s"))[:10] for t in table["t_utc"]] == ["2027-03-21"]

    def test_local_texts(self):
        table, _ = solve(self.pairs("core"), [of("core")], "2027-05-01", "2027-05-03", Asked(20.0), self.ZONES)
        for utc, text, zone_name in zip(table["t_start"], table["start_loc"], table["tz"]):
            if not zone_name.startswith("UTC"):
                local = datetime.fromtimestamp(round(utc), timezone.utc).astimezone(ZoneInfo(zone_name))
                offset = local.strftime("%z")
                assert text == f"{local:%Y-%m-%d %H:%M:%S} {offset[:3]}:{offset[3:]}"


class TestLongStretches:
    """Only what lasts over a day is cut, at the noons."""

    PAIR = Pair(30.0, 85.0, 0.0, 0.0, 0.0, 2.0)
    FIRST, LAST = "2027-12-15", "2027-12-19"

    def noons(self):
        return utc_s(self.FIRST) + self.PAIR.noon_1970_s + DAY_S * np.arange(5)

    def test_the_pole_in_the_polar_night(self):
        table, _ = solve([self.PAIR], [of("pole")], self.FIRST, self.LAST, Asked())
        assert table["t_start"] == pytest.approx(self.noons(), abs=1e-3)
        assert table["minutes"] == pytest.approx(1440.0, abs=1e-4)
        assert table["night"].tolist() == np.arange(self.FIRST, "2027-12-20", dtype="datetime64[D]").tolist()
        assert table["t_utc"] == pytest.approx(table["t_start"], abs=0.01)  # s; it stands still: the first moment, told from just inside

    def test_a_star_that_swings_about_the_bearing(self):
        star = (0.0, 89.0)
        table, _ = solve([self.PAIR], [of("star", star)], self.FIRST, self.LAST, Asked(30.0))
        assert table["t_start"] == pytest.approx(self.noons(), abs=1e-3)
        assert np.abs(table["d_az_deg"]).max() < TOL_DEG / np.cos(np.radians(85.0))
        turn_s = 86164.1 / 2  # twice a turn it stands on the meridian; the first of the two is told
        assert (table["t_utc"] - table["t_start"] <= turn_s).all()

    def test_a_stretch_just_under_a_day_is_whole(self):
        """The Sun at the pole is over a bearing of half-width 89.9 for 11 h 59 min, at whatever hour: never cut."""
        pair = Pair(0.0, 90.0, 0.0, 180.0, 0.0, 2.0)
        table, _ = solve([pair], [of("sun")], "2027-07-10", "2027-07-15", Asked(89.9))
        assert table["minutes"] == pytest.approx(1440 * 179.8 / 360, abs=0.2)
        assert len(table["minutes"]) == 6


class TestUnmet:
    """A row for each pair and body without alignment, with the azimuths that the body does reach."""

    NIGHTS = "2027-05-20", "2027-06-04"

    @pytest.mark.parametrize(
        ("body", "alt_min_deg", "lat_deg"),
        [
            *(("core", None, 40.0), ("core", 0.0, 40.0), ("sun", 5.0, 40.0), ("moon", 20.0, 40.0), ("galactic", None, 40.0)),
            *(("core", None, -12.0), ("core", 0.0, -12.0), ("sun", 5.0, -12.0), ("galactic", None, -12.0)),
            *(("core", None, 47.0), ("sun", 0.0, 47.0), ("moon", 3.0, 47.0), ("star", 20.0, 47.0)),
        ],
    )
    def test_azimuths_reached(self, body, alt_min_deg, lat_deg):
        pair = Pair(-33.0, lat_deg, 100.0, 0.0, 0.0, 5.0)
        asked = Asked(alt_min_deg=alt_min_deg, sun_limit_deg=90.0)
        first, last = (utc_s(night) + pair.noon_1970_s for night in self.NIGHTS)
        places = by_skyfield(pair, every_minute(first, last + DAY_S))
        alt, az = body_altaz(body, places)
        limit_deg = alt_min_deg if alt_min_deg is not None else 10.0
        reached = np.sort(az[seen(alt, pair.height_m) >= limit_deg])
        gap = np.diff(np.append(reached, reached[0] + 360.0))
        widest = int(np.argmax(gap))
        opposite = (reached[widest] + gap[widest] / 2) % 360.0
        _, unmet = solve([replace(pair, bearing_deg=opposite)], [of(body)], *self.NIGHTS, asked)
        assert unmet["pair"].tolist() == [0]
        assert unmet["body"].tolist() == [body]
        assert unmet["bearing_deg"].tolist() == [opposite]
        scanned = reached[(widest + 1) % len(reached)], reached[widest]
        found = unmet["az_from"][0], unmet["az_to"][0]
        for mine, theirs, outward in zip(found, scanned, (-1.0, 1.0)):
            beyond = outward * ((mine - theirs + 180.0) % 360.0 - 180.0)
            assert -TOL_DEG <= beyond < 0.35  # deg; the scan's minute falls short of the end by up to 15' along the body's way
        for azimuth in found:
            assert f"{azimuth:.1f}°" in unmet["reason"][0]
        assert f"{opposite:.1f}°" in unmet["reason"][0]

    def test_the_whole_circle(self):
        """Above its own altitude at the pole the core stands all round: any bearing is met."""
        pair = Pair(0.0, -89.0, 0.0, 10.0, 0.0, 1.0)
        table, unmet = solve([pair], [of("core")], "2027-06-01", "2027-06-02", Asked())
        assert len(table["pair"]) == 2
        assert len(unmet["pair"]) == 0

    def test_rows_and_unmet_make_up_all_pairs_and_bodies(self):
        pairs = random_pairs(40, seed=33)
        table, unmet = solve(pairs, [of(body) for body in BODIES], "2027-05-20", "2027-06-20", Asked())
        met = set(zip(table["pair"].tolist(), table["body"].tolist()))
        not_met = list(zip(unmet["pair"].tolist(), unmet["body"].tolist()))
        assert len(not_met) == len(set(not_met)) > 0
        assert met
        assert met.isdisjoint(not_met)
        assert met | set(not_met) == {(number, body) for number in range(40) for body in BODIES}
        assert all(isinstance(reason, str) and reason.endswith(".") for reason in unmet["reason"])

    @pytest.mark.parametrize(
        ("body", "bearing_deg", "asked", "words"),
        [
            ("core", 180.0, Asked(alt_min_deg=30.0), "never seen"),  # culminates at 21 deg at 40 N
            ("core", 0.0, Asked(), "never reached"),
            ("core", 180.0, Asked(gap_min_deg=60.0), "top"),
            ("core", 180.0, Asked(tilt_max_deg=5.0), "tilt"),
            ("moon", 180.0, Asked(lit_min=0.999999), "lit"),
            ("moon", 180.0, Asked(sun_limit_deg=-80.0), "Sun"),
            ("core", 180.0, Asked(apex_max_deg=10.0), "arch"),
        ],
    )
    def test_the_reason_names_the_condition_that_failed(self, body, bearing_deg, asked, words):
        pair = Pair(0.0, 40.0, 0.0, bearing_deg, 0.0, 5.0)
        table, unmet = solve([pair], [of(body)], "2027-06-01", "2027-06-10", asked)
        assert len(table["pair"]) == 0
        assert words in unmet["reason"][0]

    def test_in_winter_the_reason_is_the_daylight(self):
        """In December the core stands over the bearing by day only."""
        pair = Pair(0.0, 40.0, 0.0, 180.0, 0.0, 5.0)
        _, unmet = solve([pair], [of("core")], "2027-12-10", "2027-12-20", Asked())
        assert "Sun" in unmet["reason"][0]


class TestRun:
    """How a run behaves, whatever it finds."""

    def test_rows_are_the_same_however_pairs_are_put_together(self):
        pairs = random_pairs(30, seed=34)
        asked = Asked(20.0, sun_limit_deg=-6.0)
        together, _ = solve(pairs, [of("core"), of("moon")], "2027-05-01", "2027-05-20", asked)
        for number in (0, 7, 29):
            alone, _ = solve([pairs[number]], [of("core"), of("moon")], "2027-05-01", "2027-05-20", asked)
            mine = together["pair"] == number
            assert together["body"][mine].tolist() == alone["body"].tolist()
            for name in ("t_utc", "t_start", "t_end"):
                assert together[name][mine] == pytest.approx(alone[name], abs=0.002)  # s; the tracks have other nodes

    def test_rows_of_a_pair_and_body_are_in_order_and_apart(self):
        table, _ = solve(random_pairs(50, seed=35), [of("sun"), of("moon")], "2027-05-01", "2027-06-20", Asked(30.0))
        for number in range(50):
            for body in ("sun", "moon"):
                mine = (table["pair"] == number) & (table["body"] == body)
                assert (table["t_start"][mine] < table["t_end"][mine]).all()
                assert (table["t_end"][mine][:-1] <= table["t_start"][mine][1:]).all()

    def test_no_pairs_or_no_bodies(self):
        assert list(find_alignments(plan_pairs([]), [of("core")], "2027-05-01", "2027-05-02", Conditions())) == []
        assert list(find_alignments(plan_pairs(random_pairs(2, 36)), [], "2027-05-01", "2027-05-02", Conditions())) == []

    def test_the_last_night_before_the_first_is_refused(self):
        with pytest.raises(ValueError, match="before the first"):
            solve(random_pairs(1, 37), [of("core")], "2027-05-02", "2027-05-01", Asked())

    @pytest.mark.parametrize(("first", "last"), [("1980-01-01", "1980-01-02"), ("2053-10-01", "2053-12-01")])
    def test_nights_outside_the_ephemeris_are_refused_with_its_span(self, first, last):
        with pytest.raises(ValueError, match="1990"):
            solve(random_pairs(1, 38), [of("core")], first, last, Asked())

    def test_progress_grows_and_can_stop_the_run(self):
        pairs = plan_pairs(random_pairs(300, seed=39))
        told = []
        blocks = list(find_alignments(pairs, [of("core"), of("sun")], "2027-01-01", "2027-12-31", Conditions(), told.append))
        assert told == sorted(told)
        assert len(told) > 2
        assert told[0] >= 0.0
        assert told[-1] <= 1.0
        assert told[-1] == pytest.approx(1.0)
        year = "2027-01-01", "2027-12-31"
        assert list(find_alignments(pairs, [of("core"), of("sun")], *year, Conditions(), lambda part: False)) == []
        half = list(find_alignments(pairs, [of("core"), of("sun")], *year, Conditions(), lambda part: part < 0.5))
        assert 0 < len(half) < len(blocks)
        for whole, kept in zip(blocks, half):
            assert whole[0]["t_start"].tolist() == kept[0]["t_start"].tolist()

    def test_pairs_at_one_camera_are_as_pairs_apart(self):
        """Conditions of a camera are solved once for all its subjects: each still gets its own."""
        camera = Pair(10.0, 30.0, 500.0, 0.0, 0.0, 3.0)
        bearings = [100.0, 150.0, 180.0, 240.0]
        nights, asked = ("2027-06-01", "2027-06-10"), Asked(10.0, moon="down")
        one, _ = solve([replace(camera, bearing_deg=bearing) for bearing in bearings], [of("core")], *nights, asked)
        for number, bearing in enumerate(bearings):
            alone, _ = solve([replace(camera, bearing_deg=bearing)], [of("core")], *nights, asked)
            assert one["t_start"][one["pair"] == number] == pytest.approx(alone["t_start"], abs=1e-6)
