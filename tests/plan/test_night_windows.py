"""What holds of any night windows: conditions at random moments, the best minute, published tables, reasons, nights of every clock."""

from dataclasses import asdict, replace
from datetime import datetime, timezone
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from published import rows as published_rows
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
    tilt_deg,
)

from skyalidade.names import FIELDS, NIGHT_WINDOWS_FIELDS, WINDOWS_FIELDS
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.glow import Towns
from skyalidade.plan.night_windows import Places, find_night_windows, out_of_reach
from skyalidade.plan.targets import target

DAY_S = 86400.0
BODIES = ("core", "arch", "sun", "moon", "pole", "star", "galactic")
TOL_S, TOL_DEG = 0.5, 0.2 / 3600  # for the ends of windows, whichever is looser
NAMES = ("site", "site_id", "glow", "glow_town")  # columns that do not follow from the sky


def of(body):
    return target(body, star=STAR_ICRS_DEG, galactic_lon_deg=GALACTIC_LON_DEG)


def places_of(pairs, zones=("UTC",)):
    columns = np.array([[p.lon_deg, p.lat_deg, p.height_m] for p in pairs]).reshape(-1, 3).T
    return Places(*columns, list(zones), np.arange(len(pairs)) if len(zones) == len(pairs) else np.zeros(len(pairs), int))


def site(lon_deg, lat_deg, height_m=0.0):
    return Pair(lon_deg, lat_deg, height_m, 0.0, 0.0, 0.0)


def solve(pairs, body, first_night, last_night, asked=None, zones=("UTC",), **more):
    """Nights and windows, all blocks joined."""
    asked = asked or Asked(moon="down")
    found = list(find_night_windows(places_of(pairs, zones), of(body), first_night, last_night, Conditions(**asdict(asked)), **more))
    return tuple({name: np.concatenate([tables[k][name] for tables in found]) for name in found[0][k]} for k in (0, 1))


def utc_s(text):
    return np.datetime64(text, "s").astype(float)


def random_sites(count, seed):
    rng = np.random.default_rng(seed)
    return [site(rng.uniform(-180, 180), np.degrees(np.arcsin(rng.uniform(-1, 1))), rng.uniform(0, 4000)) for _ in range(count)]


def margin_of(body, places, pair, asked):
    found = margins(body, places, pair, asked)
    found.pop("azimuth")  # windows look anywhere
    return least(found)


class TestMembership:
    """A million pairs of a place and a moment for each body: inside a window exactly where every condition holds."""

    SITES = random_sites(100, seed=61)
    ASKED = {
        "core": Asked(tilt_min_deg=10.0, tilt_max_deg=85.0, sun_limit_deg=-6.0, moon="down_or_thin"),
        "arch": Asked(apex_min_deg=5.0, apex_max_deg=80.0, core_alt_min_deg=3.0, sun_limit_deg=0.0, moon="down"),
        "sun": Asked(alt_min_deg=-4.0),
        "moon": Asked(alt_min_deg=3.0, sun_limit_deg=10.0),
        "pole": Asked(sun_limit_deg=-3.0, moon="down_or_thin", moon_lit_max=0.5),
        "star": Asked(alt_min_deg=2.0, tilt_max_deg=80.0, apex_max_deg=85.0, sun_limit_deg=-3.0, moon="down"),
        "galactic": Asked(alt_min_deg=1.0, apex_min_deg=10.0, sun_limit_deg=-1.0, moon="any"),
    }
    FIRST, LAST = "2028-03-01", "2028-12-31"

    @pytest.fixture(scope="class")
    @classmethod
    def moments(cls):
        return np.sort(np.random.default_rng(62).uniform(utc_s(cls.FIRST) + 3 * DAY_S, utc_s(cls.LAST) - 2 * DAY_S, 10_000))

    @pytest.fixture(scope="class")
    @classmethod
    def places(cls, moments):
        table = plugin_table(moments)
        return [by_plugin(pair, table) for pair in cls.SITES]

    @pytest.mark.parametrize("body", BODIES)
    def test_at_a_million_random_moments(self, moments, places, body):
        asked = self.ASKED[body]
        _, windows = solve(self.SITES, body, self.FIRST, self.LAST, asked)
        inside_count = 0
        for number, pair in enumerate(self.SITES):
            mine = windows["site"] == number
            start, end = windows["t_start"][mine], windows["t_end"][mine]
            inside = np.searchsorted(start, moments, side="right") > np.searchsorted(end, moments, side="left")
            depth = margin_of(body, places[number], pair, asked)
            wrong = np.nonzero((inside != (depth >= 0.0)) & (np.abs(depth) > TOL_DEG))[0]
            edges = np.concatenate([start, end, [np.inf]])
            assert [i for i in wrong if np.abs(edges - moments[i]).min() > TOL_S] == [], pair
            inside_count += inside.sum()
        assert inside_count > 10_000  # of a million: enough to be wrong about


class TestRows:
    """A row for each site and night, whatever is in it."""

    SITES = random_sites(25, seed=63)
    FIRST, LAST = "2027-04-01", "2027-09-30"

    @pytest.fixture(scope="class")
    @classmethod
    def found(cls):
        return solve(cls.SITES, "core", cls.FIRST, cls.LAST)

    def test_fields(self, found):
        night, windows = found
        for table, names in ((night, NIGHT_WINDOWS_FIELDS), (windows, WINDOWS_FIELDS)):
            wanted = {name for name in names if name not in NAMES}
            assert wanted <= table.keys()
            assert {len(column) for column in table.values()} == {len(table["site"])}
        assert len({name[:10] for name in FIELDS}) == len(FIELDS)

    def test_nights_in_order(self, found):
        night, _ = found
        count = 183
        assert night["site"].tolist() == np.repeat(np.arange(25), count).tolist()
        assert night["night"].tolist() == np.tile(np.arange(self.FIRST, "2027-10-01", dtype="datetime64[D]"), 25).tolist()

    def test_moments_lie_in_their_night(self, found):
        night, _ = found
        for name in ("sunset", "t_dusk", "t_dawn", "sunrise", "moonrise", "moonset", "t_utc"):
            after = night[name] - night["noon_utc_s"]
            known = np.isfinite(after)
            assert ((after >= 0.0) & (after < DAY_S))[known].all()
            assert known.mean() > (0.3 if name == "t_utc" else 0.7)

    def test_the_longest_window_is_told(self, found):
        night, windows = found
        for row in range(0, len(night["site"]), 7):
            mine = (windows["site"] == night["site"][row]) & (windows["night"] == night["night"][row])
            if not mine.any():
                assert np.isnan(night["minutes"][row])
                assert night["t_local"][row] is None
                assert night["reason"][row]
                continue
            assert night["reason"][row] is None
            best = np.argmax(windows["minutes"][mine])
            for name in ("t_start", "t_end", "t_utc", "minutes", "az_deg", "tilt_end", "moon_mag"):
                assert night[name][row] == windows[name][mine][best]
            assert night["all_min"][row] == pytest.approx(windows["minutes"][mine].sum())

    def test_a_reason_or_a_window(self, found):
        night, _ = found
        without = np.isnan(night["t_utc"])
        assert 0.1 < without.mean() < 0.9
        assert [reason is None for reason in night["reason"]] == (~without).tolist()

    def test_the_moon_may_split_a_night(self):
        """One that rises and sets within a long night leaves two windows: the longer is told with the night."""
        night, windows = solve([site(0.0, 75.0)], "pole", "2026-01-01", "2029-12-31", Asked(moon="down", sun_limit_deg=-6.0))
        assert (windows["t_start"][1:] >= windows["t_end"][:-1]).all()
        split, count = np.unique(windows["night"], return_counts=True)
        told_second = 0
        for date in split[count == 2]:
            minutes = windows["minutes"][windows["night"] == date]
            (told,) = night["minutes"][night["night"] == date]
            assert told == minutes.max() > minutes.min()
            told_second += told == minutes[1]
        assert 0 < told_second < (count == 2).sum()

    @pytest.mark.parametrize("body", ["core", "moon", "sun", "pole"])
    def test_fewer_nights_give_the_same_rows_of_those_nights(self, body):
        """Nothing is cut or lost at the edges of what is asked."""
        many, _ = solve(self.SITES[:12], body, "2027-04-20", "2027-05-20", Asked(moon="any", sun_limit_deg=10.0))
        few, _ = solve(self.SITES[:12], body, "2027-05-01", "2027-05-07", Asked(moon="any", sun_limit_deg=10.0))
        kept = (many["night"] >= np.datetime64("2027-05-01")) & (many["night"] <= np.datetime64("2027-05-07"))
        for name in ("sunset", "t_dawn", "moonrise", "t_utc", "t_start", "t_end", "dark_min"):
            assert few[name] == pytest.approx(many[name][kept], abs=0.1, nan_ok=True), name  # s; the best minute is flat
        assert few["reason"].tolist() == many["reason"][kept].tolist()

    def test_minutes_of_darkness_by_a_scan(self, found):
        night, _ = found
        for number in (0, 9, 20):
            pair = self.SITES[number]
            rows = np.nonzero(night["site"] == number)[0][::30]
            for row in rows:
                moments = SkyfieldTimes(night["noon_utc_s"][row] + np.arange(30.0, DAY_S, 60.0))
                places = by_skyfield(pair, moments)
                dark = places.altaz["sun"][0] < -18.0
                down = places.altaz["moon"][0] < -34.0 / 60.0 - places.moon_semi_deg
                assert night["dark_min"][row] == pytest.approx(dark.sum(), abs=2.0)  # a minute at either end
                assert night["clear_min"][row] == pytest.approx((dark & down).sum(), abs=4.0)

    @pytest.mark.parametrize("body", BODIES)
    def test_the_best_minute_is_the_highest(self, body):
        """Nowhere in a window does Skyfield see the body (for the arch the core) higher than at `t_utc`."""
        asked = Asked(moon="any", sun_limit_deg=-6.0)
        checked = 0
        for number, pair in enumerate([*self.SITES[:6], site(0.0, 89.9), site(20.0, -90.0), site(0.0, 0.0)]):
            _, windows = solve([pair], body, "2027-05-01", "2027-05-20", asked)
            for i in range(0, len(windows["site"]), 6):
                moments = np.linspace(windows["t_start"][i], windows["t_end"][i], 200)
                places = by_skyfield(pair, SkyfieldTimes(np.append(moments, windows["t_utc"][i])))
                alt = (places.altaz["core"] if body == "arch" else body_altaz(body, places))[0]
                assert alt[-1] >= alt[:-1].max() - TOL_DEG, (number, pair)
                assert windows["t_start"][i] <= windows["t_utc"][i] <= windows["t_end"][i]
                checked += 1
        assert checked > 10

    def test_places_at_start_best_and_end(self, found):
        _, windows = found
        for number in (2, 11, 17):
            pair, mine = self.SITES[number], windows["site"] == number
            ends = {"start": "t_start", "end": "t_end"}
            for name, moment in ends.items():
                places = by_skyfield(pair, SkyfieldTimes(windows[moment][mine]))
                core_alt, core_az = places.altaz["core"]
                off = (windows[f"az_{name}"][mine] - core_az + 180.0) % 360.0 - 180.0
                assert np.abs(off * np.cos(np.radians(core_alt))).max() < 0.4 / 3600  # deg; told a hair inside the window
                near_zenith = np.abs(core_alt) > 88.9
                tilt_off = (windows[f"tilt_{name}"][mine] - tilt_deg(places)) * np.cos(np.radians(core_alt))
                assert np.nanmax(np.abs(tilt_off)[~near_zenith]) < 0.4 / 3600
            places = by_skyfield(pair, SkyfieldTimes(windows["t_utc"][mine]))
            assert windows["alt_deg"][mine] == pytest.approx(seen(places.altaz["core"][0], pair.height_m), abs=0.001)
            assert windows["moon_lit"][mine] == pytest.approx(places.lit, abs=1e-5)
            assert (windows["moon_mag"][mine] == 0.0).all()  # the Moon is down

    def test_tilt_keeps_the_part_in_which_the_band_lies_so(self):
        flat, _ = solve([site(0.0, 40.0)], "core", "2027-05-20", "2027-06-10", Asked(moon="any", tilt_max_deg=40.0))
        upright, _ = solve([site(0.0, 40.0)], "core", "2027-05-20", "2027-06-10", Asked(moon="any", tilt_min_deg=40.0))
        whole, _ = solve([site(0.0, 40.0)], "core", "2027-05-20", "2027-06-10", Asked(moon="any"))
        assert flat["tilt_end"] == pytest.approx(40.0, abs=TOL_DEG * 5)
        assert upright["tilt_start"] == pytest.approx(40.0, abs=TOL_DEG * 5)
        assert flat["minutes"] + upright["minutes"] == pytest.approx(whole["minutes"], abs=1e-3)

    def test_apex_keeps_the_low_arch(self):
        low, _ = solve([site(0.0, 40.0)], "core", "2027-06-01", "2027-06-10", Asked(moon="any", alt_min_deg=0.0, apex_max_deg=45.0))
        places = by_skyfield(site(0.0, 40.0), SkyfieldTimes(low["t_end"]))
        assert 90.0 - np.abs(places.altaz["galactic_pole"][0]) == pytest.approx(45.0, abs=TOL_DEG)


class TestPublished:
    """Tables computed with astropy, without refraction (tests/authorities)."""

    @pytest.fixture(scope="class")
    @classmethod
    def year(cls):
        return solve([site(0.0, 40.0)], "core", "2025-01-01", "2025-12-31", Asked(moon="any", pressure_hPa=0.0))[0]

    @pytest.mark.parametrize("row", published_rows("dark_core_2025_40N"), ids=lambda row: row["night"])
    def test_dark_hours_of_the_core_a_night_a_month(self, year, row):
        (at,) = np.nonzero(year["night"] == np.datetime64(row["night"]))[0]
        if not row["first"]:
            assert year["reason"][at] == "core is above 10° only by day or in twilight"
            return
        noon = utc_s(row["night"]) + DAY_S / 2
        for name, printed in (("t_start", row["first"]), ("t_end", row["last"])):
            hours, minutes = map(int, printed.split(":"))
            assert year[name][at] == pytest.approx(noon + ((hours - 12) % 24) * 3600.0 + minutes * 60.0, abs=60.0)  # s; read to the minute

    def test_the_low_arch_of_a_june_evening(self):
        """In the hour after dusk at 40 N the arch's top bears between 60 and 95 deg under 50 deg (common practice, no source)."""
        asked = Asked(moon="any", apex_max_deg=90.0)
        night, _ = solve([site(0.0, 40.0)], "arch", "2025-06-18", "2025-06-22", asked)
        assert (night["t_start"] == night["t_dusk"]).all()
        places = by_skyfield(site(0.0, 40.0), SkyfieldTimes(np.concatenate([night["t_start"], night["t_start"] + 3600.0])))
        apex_deg = 90.0 - np.abs(places.altaz["galactic_pole"][0])
        assert apex_deg.max() < 50.0
        assert ((night["az_start"] > 60.0) & (night["az_start"] < 95.0)).all()

    @pytest.mark.parametrize("row", published_rows("band_2027_36N_33W")[1:4], ids=lambda row: row["utc"])
    def test_rows_of_an_evening(self, row):
        """A window that begins when the core stands as high as it did at a row of the table begins at its moment, as the band lay then."""
        alt_deg = float(row["core_alt_deg"])
        asked = Asked(moon="any", pressure_hPa=0.0, alt_min_deg=alt_deg)
        night, _ = solve([site(-33.0, 36.0)], "core", "2027-06-05", "2027-06-05", asked)
        end = "start" if float(row["core_az_deg"]) < 180.0 else "end"
        # printed to 0.005 deg, while the core climbs by 0.003 deg a second at the first row and a sixth of that at the last
        assert night[f"t_{end}"][0] == pytest.approx(utc_s(row["utc"][:-1]), abs=20.0)
        assert night[f"az_{end}"][0] == pytest.approx(float(row["core_az_deg"]), abs=0.08)
        assert night[f"tilt_{end}"][0] == pytest.approx(float(row["tilt_deg"]), abs=0.09)


class TestPolesAndDays:
    """Where the Sun does not rise and set each day."""

    def test_the_equinox_at_the_pole(self):
        """One sunrise a year, some 30 hours before the equinox (2027-03-20 20:25 UTC), as the limb clears the horizon in refraction."""
        night, _ = solve([site(0.0, 90.0)], "core", "2027-01-01", "2027-12-31")
        (rise,) = night["sunrise"][np.isfinite(night["sunrise"])]
        (fall,) = night["sunset"][np.isfinite(night["sunset"])]
        assert utc_s("2027-03-18T00:00") < rise < utc_s("2027-03-19T12:00")
        assert utc_s("2027-09-24T12:00") < fall < utc_s("2027-09-26T00:00")
        places = by_skyfield(site(0.0, 90.0), SkyfieldTimes([rise, fall]))
        assert places.altaz["sun"][0] == pytest.approx(-50.0 / 60.0, abs=TOL_DEG)
        assert set(night["reason"]) == {"core stays below 10°", "no darkness this night: the Sun stays above -18°"}

    @pytest.mark.parametrize("lon", [0.0, -77.0])
    def test_the_south_pole(self, lon):
        """The core stands at 29 deg all year; the Moon is up for half of each month."""
        night, windows = solve([site(lon, -90.0, 2800.0)], "core", "2027-01-01", "2027-12-31")
        assert np.isfinite(night["t_dusk"]).sum() == np.isfinite(night["t_dawn"]).sum() == 1
        dark = night["dark_min"] > 1439.9
        assert 75 < dark.sum() < 90
        whole = dark & (night["clear_min"] > 1439.9)
        assert np.abs(night["minutes"][whole] - 1440.0).max() < 0.01
        assert 30 < whole.sum() < 50
        assert night["alt_deg"][whole] == pytest.approx(29.0, abs=0.2)
        assert "Moon up all night" in set(night["reason"])
        assert windows["minutes"].max() <= 1440.0 + 1e-6

    def test_polar_day_and_polar_night(self):
        night, _ = solve([site(25.0, 71.0)], "core", "2027-01-01", "2027-12-31")
        month = night["night"].astype("datetime64[M]")
        june, december = (month == np.datetime64(f"2027-{number:02}") for number in (6, 12))
        assert (night["dark_min"][june] == 0.0).all()
        for name in ("sunset", "sunrise", "t_dusk", "t_dawn"):
            assert np.isnan(night[name][june]).all()
        assert set(night["reason"][june]) == {"no darkness this night: the Sun stays above -18°"}
        assert np.isnan(night["sunset"][december]).all()
        assert np.isfinite(night["t_dusk"][december]).all()  # twilight at noon: the night of the pole is not dark all day here
        assert set(night["reason"][december]) == {"core stays below 10°"}

    def test_the_moon_for_days_above_the_horizon(self):
        """At 80 N it neither rises nor sets for days; as the body it is cut at the noons."""
        night, windows = solve([site(0.0, 80.0)], "moon", "2027-12-01", "2027-12-31", Asked())
        assert (windows["minutes"] <= 1440.0 + 1e-6).all()
        long = windows["minutes"] > 1439.99
        assert long.sum() > 5
        assert np.isnan(night["dark_min"]).all()  # no limit for the Sun was asked
        assert np.isnan(night["t_dusk"]).all()


class TestClocks:
    """Nights and texts by the clock of each site."""

    def test_utc_plus_14_and_minus_12(self):
        """Two sides of the date line: one evening, two names; each sunset is named by its own date."""
        pairs = [site(-157.4, 1.9), site(-157.4, 1.9), site(180.0, 0.0), site(-180.0, 0.0)]
        zones = ["Pacific/Kiritimati", "UTC-12:00", "UTC+12:00", "UTC-12:00"]
        night, _ = solve(pairs, "core", "2027-05-01", "2027-05-05", zones=zones)
        for number, hours in enumerate((14, -12, 12, -12)):
            mine = night["site"] == number
            local = night["sunset"][mine] + 3600.0 * hours
            if number != 1:  # there -12 stands for a clock far from the Sun's, 1.5 h off
                assert (np.floor(local / DAY_S).astype("datetime64[D]") == night["night"][mine]).all()
            assert all(text.endswith(f"{hours:+03}:00") for text in night["sunset_loc"][mine])
        first = [night["sunset"][night["site"] == number][0] for number in range(4)]
        assert first[0] - first[1] == pytest.approx(-DAY_S, abs=120.0)
        assert first[2] - first[3] == pytest.approx(-DAY_S, abs=120.0)

    def test_the_antimeridian_is_no_seam(self):
        east, west = (solve([site(lon, -20.0)], "core", "2027-05-01", "2027-05-31", zones=["UTC"])[0] for lon in (180.0, -180.0))
        both = {round(t / 10.0) for t in east["t_start"][np.isfinite(east["t_start"])]}
        other = {round(t / 10.0) for t in west["t_start"][np.isfinite(west["t_start"])]}
        assert len(both & other) >= 20

    @pytest.mark.parametrize(
        ("zone", "lon", "lat", "night", "offsets"),
        [
            ("America/Denver", -111.0, 37.3, "2027-03-13", ("-07:00", "-06:00")),  # spring: 02:00 becomes 03:00 on 14 March
            ("America/Denver", -111.0, 37.3, "2027-11-06", ("-06:00", "-07:00")),
            ("Australia/Sydney", 149.0, -33.0, "2027-04-03", ("+11:00", "+10:00")),
            ("Australia/Lord_Howe", 159.1, -31.5, "2027-10-02", ("+10:30", "+11:00")),  # by half an hour
        ],
    )
    def test_nights_on_which_the_clocks_change(self, zone, lon, lat, night, offsets):
        found, _ = solve([site(lon, lat)], "core", night, night, Asked(moon="any"), zones=[zone])
        assert found["sunset_loc"][0][:10] == night
        assert (found["sunset_loc"][0][-6:], found["srise_loc"][0][-6:]) == offsets
        for utc, text in (("sunset", "sunset_loc"), ("t_dusk", "dusk_loc"), ("t_dawn", "dawn_loc"), ("sunrise", "srise_loc")):
            local = datetime.fromtimestamp(np.floor(found[utc][0] + 0.5), timezone.utc).astimezone(ZoneInfo(zone))
            assert found[text][0] == f"{local:%Y-%m-%d %H:%M:%S} {local:%z}"[:-2] + ":" + f"{local:%z}"[-2:]
        lasted = found["t_dawn"][0] - found["t_dusk"][0]
        assert found["dark_min"][0] == pytest.approx(lasted / 60.0, abs=1e-3)  # the changed hour neither adds nor takes

    def test_a_skipped_date_is_no_night(self):
        """Samoa went from 29 to 31 December 2011."""
        night, _ = solve([site(-172.0, -13.8)], "core", "2011-12-28", "2012-01-02", zones=["Pacific/Apia"])
        assert [str(date)[-5:] for date in night["night"]] == ["12-28", "12-29", "12-31", "01-01", "01-02"]

    def test_a_leap_second_moves_nothing(self):
        """2016-12-31 ended with one: nights still begin at their noon, moments stay in theirs."""
        night, _ = solve([site(0.0, -30.0)], "core", "2016-12-25", "2017-01-10", Asked(moon="any"))
        assert (np.diff(night["noon_utc_s"]) == DAY_S).all()
        places = by_skyfield(site(0.0, -30.0), SkyfieldTimes(night["sunset"]))
        assert np.abs(places.altaz["sun"][0] + 50.0 / 60.0).max() < TOL_DEG


class TestReasons:
    """Why a night has no window, in plain words; the first condition that leaves nothing."""

    @pytest.mark.parametrize(
        ("body", "pair", "nights", "asked", "reason"),
        [
            ("core", site(0.0, 55.0), ("2027-06-10", "2027-06-25"), Asked(), "no darkness this night: the Sun stays above -18°"),
            (
                "core",
                site(0.0, 66.0),
                ("2027-06-10", "2027-06-25"),
                Asked(sun_limit_deg=-1.0),
                "no darkness this night: the Sun stays above -1°",
            ),
            ("core", site(0.0, 40.0), ("2027-05-10", "2027-05-25"), Asked(alt_min_deg=30.0), "core stays below 30°"),
            ("core", site(0.0, 40.0), ("2027-12-10", "2027-12-25"), Asked(), "core is above 10° only by day or in twilight"),
            (
                "arch",
                site(0.0, 40.0),
                ("2027-05-10", "2027-05-12"),
                Asked(apex_max_deg=1.0),
                "arch's top is never below 1° with the core above 0°",
            ),
            ("pole", site(0.0, 40.0), ("2027-05-10", "2027-05-12"), Asked(alt_min_deg=41.0), "celestial pole stays below 41°"),
            ("moon", site(0.0, 89.0), ("2027-12-01", "2027-12-05"), Asked(), "Moon stays below 0°"),
            (
                "core",
                site(0.0, 40.0),
                ("2027-05-10", "2027-05-12"),
                Asked(tilt_max_deg=5.0),
                "the band's tilt is never below 5° while core is above 10°",
            ),
            (
                "core",
                site(0.0, 40.0),
                ("2027-05-10", "2027-05-12"),
                Asked(apex_max_deg=5.0),
                "the arch's top never stands below 5° while core is above 10°",
            ),
        ],
        ids=["no darkness", "no dusk", "low", "by day", "arch", "pole", "Moon down", "tilt", "apex"],
    )
    def test_the_sentence(self, body, pair, nights, asked, reason):
        night, windows = solve([pair], body, *nights, replace(asked, moon="any"))
        assert set(night["reason"]) == {reason}
        assert len(windows["site"]) == 0

    def test_the_moon_all_night(self):
        """The full Moon of 2027-05-20 is up from dusk to dawn."""
        night, _ = solve([site(0.0, 40.0)], "core", "2027-05-20", "2027-05-20")
        assert night["reason"].tolist() == ["Moon up all night"]
        assert (night["dark_min"][0] > 100.0) & (night["clear_min"][0] == 0.0)

    def test_the_moon_while_it_matters(self):
        """A last quarter rises before the core does at the end of March."""
        night, _ = solve([site(0.0, 40.0)], "core", "2027-03-29", "2027-03-29")
        assert night["reason"].tolist() == ["Moon up while core is above 10° in the dark"]
        thin, _ = solve([site(0.0, 40.0)], "core", "2027-03-29", "2027-03-29", Asked(moon="down_or_thin", moon_lit_max=0.3))
        assert thin["reason"].tolist() == ["Moon up and lit over 0.3 while core is above 10° in the dark"]

    def test_a_window_told_with_another_night(self):
        """The Sun transits up to 16 min before mean noon or after: some nights have two windows of it and others none."""
        night, windows = solve([site(0.0, 45.0)], "sun", "2027-01-01", "2027-12-31", Asked())
        without = np.nonzero(np.isnan(night["t_utc"]))[0]
        assert 0 < len(without) < 4
        assert all("beside this one" in night["reason"][row] for row in without)
        assert abs(len(windows["site"]) - 365) <= 1

    @pytest.mark.parametrize(
        ("body", "alt_min_deg", "lat", "words"),
        [
            ("core", 40.0, 40.0, ("The core", "40", "between latitude -78.9° and 21.1°")),
            ("core", 40.0, 20.0, None),
            ("arch", 40.0, 40.0, ("The core", "40", "between latitude -78.9° and 21.1°")),
            ("pole", 50.0, -40.0, ("The celestial pole", "50", "south of latitude -50.0° or north of 50.0°")),
        ],
    )
    def test_the_latitude_that_is_wanted(self, body, alt_min_deg, lat, words):
        span = utc_s("2027-01-01"), utc_s("2028-01-01")
        asked = Conditions(alt_min_deg=alt_min_deg)
        sentence = words and "{} does not climb to {}° at any of these sites: it does so only {}. Lower ALT_MIN.".format(*words)
        assert out_of_reach(of(body), asked, np.array([lat, lat]), *span) == sentence
        assert out_of_reach(of(body), asked, np.array([lat, -55.0]), *span) is None

    def test_the_sun_within_the_nights_asked(self):
        """In January it climbs to 50 deg nowhere north of 23 + 40 deg less what the season takes."""
        sentence = out_of_reach(of("sun"), Conditions(alt_min_deg=50.0), np.array([45.0]), utc_s("2027-01-01"), utc_s("2027-01-05"))
        north = float(sentence.split(" and ")[1].split("°")[0])
        assert north == pytest.approx(-22.6 + 40.0, abs=0.3)  # declination of the Sun on 4 January (almanacs, from memory)


class TestGlow:
    """Towns told with the windows."""

    def test_glow_along_the_azimuth_of_the_body(self):
        pair = site(0.0, 40.0)
        towns = Towns(
            np.array([0.0, 0.5]), np.array([39.5, 40.5]), np.array([50_000.0, 900_000.0]), np.array(["South", "North"], dtype=object)
        )
        night, windows = solve([pair], "core", "2027-07-01", "2027-07-05", Asked(moon="any"), towns=towns)
        dist_km = 55.5  # half a degree of latitude
        assert windows["glow_town"].tolist() == ["South"] * 5
        assert windows["glow"] == pytest.approx(0.01 * 50_000 * dist_km**-2.5, rel=0.01)
        assert (night["glow"] == windows["glow"]).all()
        none, _ = solve([pair], "core", "2027-12-20", "2027-12-20", towns=towns)
        assert np.isnan(none["glow"]).all()
        assert none["glow_town"].tolist() == [None]


class TestRun:
    """How a run behaves, whatever it finds."""

    def test_rows_are_the_same_however_sites_are_put_together(self):
        pairs = random_sites(120, seed=64)
        together, _ = solve(pairs, "core", "2027-01-01", "2027-12-31")
        for number in (0, 81, 119):
            alone, _ = solve([pairs[number]], "core", "2027-01-01", "2027-12-31")
            mine = together["site"] == number
            for name in ("sunset", "t_dawn", "moonset", "t_start", "t_end", "dark_min"):
                assert together[name][mine] == pytest.approx(alone[name], abs=0.002, nan_ok=True)  # s; the tracks have other nodes
            assert together["reason"][mine].tolist() == alone["reason"].tolist()

    def test_no_sites(self):
        assert list(find_night_windows(places_of([]), of("core"), "2027-05-01", "2027-05-02", Conditions())) == []

    def test_refusals(self):
        with pytest.raises(ValueError, match="before the first"):
            solve(random_sites(1, 65), "core", "2027-05-02", "2027-05-01")
        with pytest.raises(ValueError, match="1990"):
            solve(random_sites(1, 65), "core", "1980-05-02", "1980-05-02")

    def test_progress_grows_and_can_stop_the_run(self):
        places, asked = places_of(random_sites(300, seed=66)), Conditions(moon="down")
        told = []
        whole = list(find_night_windows(places, of("core"), "2027-01-01", "2027-12-31", asked, told.append))
        assert told == sorted(told)
        assert len(set(told)) > 3
        assert told[-1] == 1.0
        assert list(find_night_windows(places, of("core"), "2027-01-01", "2027-12-31", asked, lambda part: False)) == []
        half = list(find_night_windows(places, of("core"), "2027-01-01", "2027-12-31", asked, lambda part: part < 0.5))
        assert 0 < len(half) < len(whole)
