"""Night windows: for each site and night when it is dark, when the Moon is away, when the body stands as it is wanted, and why not.

Nothing is sampled: each condition is a set of stretches between exact crossings, and a window is where all sets hold. A window belongs to
the night in which its best minute lies and is told whole; only what lasts over a day is cut, at the noons.
"""

from dataclasses import dataclass

import numpy as np

from ..names import WINDOWS_FIELDS
from ..sky import arcs, moonlight
from ..sky.bodies import CORE, MOON, MOON_RADIUS_KM, POLE, SUN, Body
from ..sky.ephemeris import DAY_S, default_ephemeris
from ..sky.horizontal import Sites
from ..sky.tables import tracks
from ..words import Opening, Sentence, one, recognised
from . import circumstances, clock, nights
from .ahead import THREADS, worked_ahead
from .alignments import BLOCK_CELLS, EDGE_S
from .altitudes import highest
from .conditions import DOWN, Circumstances, Heavens, body_limits
from .glow import Glow
from .horizons import BLOCK_SKYLINES, Horizons, clear_of_skyline
from .unmet import LIMITS, between, height

SUNRISE_ALT_DEG = -50.0 / 60.0  # centre, geometric: refraction 34', semidiameter 16', as almanacs reckon
MINUTES_A_DAY = 1440.0
ASKED_IN_ORDER = (
    "dark",
    "standing",
    "clear",
    "tilt",
    "apex",
    "by night",
    "moonless",
    "skyline",
)  # the first to leave nothing is the reason

BARE = {
    "core": Sentence("core"),
    "arch": Sentence("arch's top"),
    "sun": Sentence("Sun"),
    "moon": Sentence("Moon"),
    "pole": Sentence("celestial pole"),
    "star": Sentence("star"),
}

# patterns of what `reason` tells, and of their parts beside BARE and `unmet.LIMITS`
REASONS = {
    "beside": "the window is told with the night beside this one, in which the best minute lies",
    "light": "no darkness this night: the Sun stays above {limit:g}°",
    "never": "{who} is never {seen}",
    "low": "{who} stays below {least:g}°",
    "moon": "Moon {up} all night",
    "tilt": "the band's tilt is never {tilt} while {who} is {seen}",
    "apex": "the arch's top never stands {apex} while {who} is {seen}",
    "by day": "{who} is {seen} only by day or in twilight",
    "moonlit": "Moon {up} while {who} is {seen} in the dark",
    "skyline": "{who} stays behind the terrain skyline while all else holds",
    "and tilt": "{seen} and the band's tilt {tilt}",
    "with tilt": "{seen} with the band's tilt {tilt}",
    "with apex": "{seen} with the arch's top {apex}",
    "plane": "plane at galactic longitude {lon:g}°",
    "up": "up",
    "lit": "up and lit over {lit:g}",
}

# a moment of a table, and the same in the site's zone
NIGHT_MOMENTS = {
    "sunset": "sunset_loc",
    "t_dusk": "dusk_loc",
    "t_dawn": "dawn_loc",
    "sunrise": "srise_loc",
    "moonrise": "mrise_loc",
    "moonset": "mset_loc",
}
WINDOW_MOMENTS = {"t_start": "start_loc", "t_utc": "t_local", "t_end": "end_loc"}


@dataclass(frozen=True)
class Places:
    """Where windows are asked for; arrays of shape (S,).

    Attributes
    ----------
    lon_deg, lat_deg : ndarray
        [deg]
    height_m : ndarray
        Above sea level; 0 where unknown. [m]
    zone_names : sequence of str
    zone_index : ndarray of int
        Zone of each place.
    lens_dem_m : ndarray, optional
        Lens, by the elevation model of the relief; nan where that does not reach. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    height_m: np.ndarray
    zone_names: list
    zone_index: np.ndarray
    lens_dem_m: np.ndarray = np.nan

    def __post_init__(self):
        object.__setattr__(self, "lens_dem_m", np.broadcast_to(self.lens_dem_m, np.shape(self.lon_deg)))

    def __len__(self):
        return len(self.lon_deg)

    def take(self, index):
        """The places at a slice."""
        arrays = (self.lon_deg, self.lat_deg, self.height_m)
        return Places(*(values[index] for values in arrays), self.zone_names, self.zone_index[index], self.lens_dem_m[index])


def known_height_m(lens_dem_m, z_m):
    """Heights for the air at places: of the lens by an elevation model, else the place's own, else sea level. [m]."""
    return np.where(np.isfinite(lens_dem_m), lens_dem_m, np.where(np.isfinite(z_m), z_m, 0.0))


def find_night_windows(places, target, first_night, last_night, conditions, progress=None, relief=None, towns=None, threads=THREADS):
    """Find the windows of a target over places in a range of nights.

    Parameters
    ----------
    places : Places
        S of them.
    target : Target
    first_night, last_night : datetime64[D] or ndarray of it, shape (S,)
        Dates of the first and the last evening, both included, in each place's zone.
    conditions : Conditions
        Those about a bearing or a subject play no part.
    progress : callable, optional
        Told the part that is done, 0 to 1, several times a second; False from it ends the search.
    relief : Relief, optional
        The ground, whose skyline hides the target if `conditions.use_skyline`.
    towns : glow.Towns, optional
        Whose glow is told.
    threads : int
        That work ahead, as in `ahead.worked_ahead`; with a relief there is one.

    Yields
    ------
    table : dict of str to ndarray, shape (N,)
        A row a place and night, by place: columns of `names.NIGHT_WINDOWS_FIELDS` as far as they follow from the sky, with `site` the
        index of the place, `noon_utc_s` at which the night begins, `all_min`, the length of all its windows, and `seen`, whether the
        target stands as high as is asked. Moments in s of UTC, unrounded; nan, NaT and None where there is no value.
    windows : dict of str to ndarray, shape (M,)
        Columns of `names.WINDOWS_FIELDS` likewise, a row a window, in the order of time.

    Raises
    ------
    ValueError
        Nights outside the ephemeris, or the last before the first.
    """
    if not len(places):
        return
    noon_utc_s, night_count = nights.noons(places.lon_deg, places.zone_names, places.zone_index, first_night, last_night)
    last_noon_utc_s = noon_utc_s + DAY_S * night_count
    heavens = Heavens([*circumstances.NEEDED, target.body], noon_utc_s.min() - DAY_S, last_noon_utc_s.max() + DAY_S)
    step = max(1, BLOCK_CELLS // (4 * (int(night_count.max()) + 2)))  # half as many as conditions allow: each night is a row to write
    if relief is not None:
        step = min(step, BLOCK_SKYLINES)

    def search(first, go_on):
        part = slice(first, first + step)
        block = _Block(places.take(part), noon_utc_s[part], night_count[part], heavens, target, conditions, relief, towns, go_on)
        return block.find()

    def go_on(first):
        return progress is None or progress(first / len(places)) is not False

    # An elevation model is read by one thread alone.
    for first, found in worked_ahead(search, range(0, len(places), step), go_on, threads if relief is None else 1):
        if found is None:
            return
        for columns in found:
            columns["site"] += first
        yield found
    if progress is not None:
        progress(1.0)


def out_of_reach(target, conditions, lat_deg, first_utc_s, last_utc_s):
    """Say where a target climbs to its least altitude in a span of time, if it does so at none of the sites.

    Parameters
    ----------
    target : Target
    conditions : Conditions
    lat_deg : ndarray
        Sites. [deg]
    first_utc_s, last_utc_s : float
        [s of UTC]

    Returns
    -------
    str or None
        None where it reaches that altitude at a site, refraction and parallax left out.
    """
    least_deg = conditions.alt_min_of(target)
    body = CORE if target.is_arch else target.body
    if body == POLE:
        south, north = -least_deg, least_deg
        outside = np.abs(lat_deg) < least_deg
    else:
        x, y, z, _ = tracks([body], first_utc_s, last_utc_s)[body].nodes
        declination_deg = np.degrees(np.arctan2(z, np.hypot(x, y)))
        south, north = declination_deg.min() - 90.0 + least_deg, declination_deg.max() + 90.0 - least_deg
        outside = (lat_deg < south) | (lat_deg > north)
    if not outside.all():
        return None
    who = Sentence("the core") if target.is_arch else target.phrase
    parts = {"who": who, "least": least_deg, "south": max(south, -90.0), "north": min(north, 90.0)}
    if body == POLE:
        return Opening(
            "{who} does not climb to {least:g}° at any of these sites: it does so only south of latitude {south:.1f}° or north of "
            "{north:.1f}°. Lower ALT_MIN.",
            **parts,
        )
    return Opening(
        "{who} does not climb to {least:g}° at any of these sites: it does so only between latitude {south:.1f}° and {north:.1f}°. "
        "Lower ALT_MIN.",
        **parts,
    )


class _Block:
    """Some places, worked on at once. A row is a place and night, all nights of a place after one another."""

    def __init__(self, places, noon_utc_s, night_count, heavens, target, conditions, relief, towns, go_on):
        self.places, self.heavens, self.target, self.conditions, self.go_on = places, heavens, target, conditions, go_on
        self.ephemeris = default_ephemeris()
        self.noon_utc_s, self.night_count = noon_utc_s, night_count
        self.first_row = np.cumsum(night_count) - night_count
        self.site = np.repeat(np.arange(len(places)), night_count)
        self.row_noon_utc_s = noon_utc_s[self.site] + DAY_S * (np.arange(len(self.site)) - self.first_row[self.site])
        # A day more on either side, so that a window over the edge is known whole.
        low, high = (self.ephemeris.tt_from_utc(t) for t in (noon_utc_s - DAY_S, noon_utc_s + DAY_S * (night_count + 1)))
        self.sites = Sites(places.lon_deg, places.lat_deg, places.height_m)
        self.air = circumstances.Air(places.height_m, conditions.pressure_hPa, conditions.temperature_C)
        self.shared = Circumstances(heavens, self.sites, self.air, low, high)
        self.glow = None if towns is None else Glow(places.lon_deg, places.lat_deg, towns)
        self.horizons = None
        if relief is not None and conditions.use_skyline:
            self.horizons = Horizons(relief, places.lon_deg, places.lat_deg, places.lens_dem_m, lambda part: go_on())

    def find(self):
        """Both tables, or None when told not to go on."""
        stages = {}
        for name, held in self._stages():
            if not self.go_on():
                return None
            stages[name] = held
        windows = self._windows(stages["met"])
        if not self.go_on():
            return None
        table = self._table(stages)
        longest = self._longest(windows, table)
        minutes = {name: self._minutes(held) for name, held in stages.items() if name in ASKED_IN_ORDER and held is not None}
        table["seen"] = minutes["standing"] > 0.0
        table["reason"] = np.where(longest < 0, self._reasons(minutes), None)
        row = windows.pop("row")
        windows.update({name: table[name][row] for name in ("site", "body", "night", "tz")})
        return (table, windows) if self.go_on() else None

    def _stages(self):
        """Sets of the conditions by themselves, and one after the other as `met`, with what still holds at each."""
        target, asked, shared = self.target, self.conditions, self.shared
        limit_deg = self._sun_limit_deg()
        dark = shared.dark(limit_deg, None)
        yield "dark", dark
        moonless = None if isinstance(target.body, Body) else shared.moonless(asked.moon, asked.moon_lit_max)
        yield "clear", dark if moonless is None else moonless if dark is None else arcs.every(dark, moonless)
        level = np.zeros(len(self.places))
        met, _ = body_limits(asked, target, shared, self.air, level, np.arange(len(level)))
        yield "standing", met
        ways = {
            "tilt": shared.tilted(asked.tilt_min_deg, asked.tilt_max_deg),
            "apex": None if target.is_arch else shared.arched(asked.apex_min_deg, asked.apex_max_deg),
            "by night": dark,
            "moonless": moonless,
        }
        for name, held in ways.items():
            if held is not None:
                met = arcs.every(met, held)
                yield name, met
        if self.horizons is not None:
            motion = self.heavens.motion(target.body, self.sites)
            met = clear_of_skyline(self.horizons, np.arange(len(level)), target, motion, self.air, met)
            yield "skyline", met
        yield "met", met

    def _sun_limit_deg(self):
        """Highest Sun that counts as dark; None for no limit."""
        if self.target.body == SUN:
            return None
        return self.target.sun_limit_deg if self.conditions.sun_limit_deg is None else self.conditions.sun_limit_deg

    # rows

    def _row_of(self, site, t_utc_s):
        """Row of the night in which moments at sites lie, and whether it is one that was asked for."""
        number = np.floor((t_utc_s - self.noon_utc_s[site]) / DAY_S).astype(np.int64)
        return self.first_row[site] + number, (number >= 0) & (number < self.night_count[site])

    def _first_of_rows(self, site, tt_s):
        """Of moments in order the first in each row, nan where there is none. [s of UTC]."""
        return self._last_of_rows(site[::-1], tt_s[::-1])

    def _last_of_rows(self, site, tt_s):
        t_utc_s = self.ephemeris.utc_from_tt(tt_s)
        row, asked = self._row_of(site, t_utc_s)
        found = np.full(len(self.site), np.nan)
        found[row[asked]] = t_utc_s[asked]
        return found

    def _minutes(self, held):
        """How long a set holds in each row. [min]."""
        begin, end = ((self.ephemeris.utc_from_tt(t) - self.noon_utc_s[held.row]) / DAY_S for t in (held.start, held.end))
        first = np.floor(begin)
        count = (np.ceil(end) - first).astype(np.int64)
        piece = np.repeat(np.arange(len(held)), count)
        number = first[piece] + np.arange(len(piece)) - (np.cumsum(count) - count)[piece]
        length = np.minimum(end[piece], number + 1.0) - np.maximum(begin[piece], number)
        site = held.row[piece]
        asked = (number >= 0) & (number < self.night_count[site])
        row = self.first_row[site[asked]] + number[asked].astype(np.int64)
        return MINUTES_A_DAY * np.bincount(row, length[asked], minlength=len(self.site))

    def _table(self, stages):
        """What a night is, whatever is seen in it."""
        sun, moon = self.shared.above(SUN, SUNRISE_ALT_DEG), self.shared.moon_up()
        bright = None if stages["dark"] is None else self.shared.above(SUN, self._sun_limit_deg())
        unknown = np.full(len(self.site), np.nan)
        zone_index = self.places.zone_index[self.site]
        table = {
            "site": self.site.copy(),
            "body": np.full(len(self.site), self.target.id, dtype=object),
            "night": clock.dates(self.row_noon_utc_s, self.places.zone_names, zone_index),
            "tz": np.asarray(self.places.zone_names, dtype=object)[zone_index],
            "noon_utc_s": self.row_noon_utc_s,
            "sunset": self._first_of_rows(*_endings(sun)),
            "t_dusk": unknown if bright is None else self._first_of_rows(*_endings(bright)),
            "t_dawn": unknown if bright is None else self._last_of_rows(*_beginnings(bright)),
            "sunrise": self._last_of_rows(*_beginnings(sun)),
            "moonrise": self._first_of_rows(*_beginnings(moon)),
            "moonset": self._first_of_rows(*_endings(moon)),
            "dark_min": unknown if bright is None else self._minutes(stages["dark"]),
            "clear_min": unknown if stages["clear"] is None else self._minutes(stages["clear"]),
        }
        self._add_local(table, NIGHT_MOMENTS, zone_index)
        return table

    def _add_local(self, table, moments, zone_index):
        texts = clock.local_text(np.stack([table[name] for name in moments]), self.places.zone_names, zone_index)
        table.update(zip(moments.values(), texts))

    # windows

    def _windows(self, met):
        """All windows of the nights asked, `row` being that of the night."""
        target, heavens = self.target, self.heavens
        site, start, end = nights.cut_long(met, self.ephemeris.tt_from_utc(self.noon_utc_s))
        body = CORE if target.is_arch else target.body
        best = highest(body, heavens.motion(body, self.sites), site, start, end)
        # A hair inside, so that what holds in the window is told, not what begins at its end.
        inside_s = np.minimum(EDGE_S, 0.5 * (end - start))
        first, last = start + inside_s, end - inside_s
        best = np.clip(best, first, last)
        t_utc_s = self.ephemeris.utc_from_tt(best)
        row, asked = self._row_of(site, t_utc_s)
        site, start, end, first, last, best, row = (values[asked] for values in (site, start, end, first, last, best, row))

        vectors = {body: heavens.motion(body, self.sites).enu(site, best) for body in dict.fromkeys([*circumstances.NEEDED, target.body])}
        air = self.air.take(site)
        windows = circumstances.light_and_band(vectors, heavens.lit(best), air)
        windows.update(circumstances.place_of(target, vectors, windows, air))
        windows.update(circumstances.moonlight_of(target, windows, moonlight.semidiameter_deg(vectors[MOON], MOON_RADIUS_KM)))
        for name, moments in (("start", first), ("end", last)):
            windows[f"az_{name}"], windows[f"tilt_{name}"] = self._way(site, moments)
        windows.update(
            row=row,
            minutes=(end - start) / 60.0,
            **{name: self.ephemeris.utc_from_tt(moments) for name, moments in zip(WINDOW_MOMENTS, (start, best, end))},
        )
        self._add_local(windows, WINDOW_MOMENTS, self.places.zone_index[site])
        if self.glow is not None:
            windows["glow"], windows["glow_town"] = self.glow.toward(site, windows["az_deg"], self.go_on)
        return windows

    def _way(self, site, tt_s):
        """Azimuth of the target and tilt of the band. [deg]."""
        bodies = dict.fromkeys([*circumstances.OF_BAND, self.target.body])
        vectors = {body: self.heavens.motion(body, self.sites).enu(site, tt_s) for body in bodies}
        band = circumstances.band_of(vectors, self.air.take(site))
        return circumstances.direction_of(self.target, vectors, band)[0], band["tilt_deg"]

    def _longest(self, windows, table):
        """Add to a table the longest window of each row, the first of equals; its index, -1 where there is none."""
        row, minutes = windows["row"], windows["minutes"]
        order = np.lexsort((-minutes, row))
        distinct, first = np.unique(row[order], return_index=True)
        longest = np.full(len(self.site), -1)
        longest[distinct] = order[first]
        has = longest >= 0
        for name in windows.keys() & set(WINDOWS_FIELDS):
            column = windows[name]
            blank = np.full(len(self.site), None if column.dtype == object else np.nan, dtype=column.dtype)
            blank[has] = column[longest[has]]
            table[name] = blank
        table["all_min"] = np.bincount(row, minutes, minlength=len(self.site))
        return longest

    # why not

    def _reasons(self, minutes):
        """The first condition that leaves nothing of each row, in words."""
        texts = np.empty(len(self.site), dtype=object)
        texts[:] = one(Sentence(REASONS["beside"]))
        for name in reversed([name for name in ASKED_IN_ORDER if name in minutes]):
            texts[minutes[name] == 0.0] = one(_sentence(name, self.target, self.conditions))
        return texts


def _sentence(name, target, asked):
    """What is said of a night in which a condition leaves nothing."""
    who, seen = _bare(target), height(target, asked)
    up = Sentence(REASONS["up"]) if asked.moon == DOWN else Sentence(REASONS["lit"], lit=asked.moon_lit_max)
    if name == "dark":
        limit_deg = target.sun_limit_deg if asked.sun_limit_deg is None else asked.sun_limit_deg
        return Sentence(REASONS["light"], limit=limit_deg)
    if name == "standing":
        if target.is_arch:
            return Sentence(REASONS["never"], who=who, seen=seen)
        return Sentence(REASONS["low"], who=who, least=asked.alt_min_of(target))
    if name == "clear":
        return Sentence(REASONS["moon"], up=up)
    if name == "tilt":
        tilt = between(asked.tilt_min_deg, asked.tilt_max_deg)
        return Sentence(REASONS["tilt"], tilt=tilt, who=who, seen=seen)
    if (asked.tilt_min_deg, asked.tilt_max_deg) != (None, None):
        pattern = REASONS["and tilt"] if target.is_arch else REASONS["with tilt"]
        seen = Sentence(pattern, seen=seen, tilt=between(asked.tilt_min_deg, asked.tilt_max_deg))
    if name == "apex":
        apex = between(asked.apex_min_deg, asked.apex_max_deg)
        return Sentence(REASONS["apex"], apex=apex, who=who, seen=seen)
    if not target.is_arch and (asked.apex_min_deg, asked.apex_max_deg) != (None, None):
        seen = Sentence(REASONS["with apex"], seen=seen, apex=between(asked.apex_min_deg, asked.apex_max_deg))
    if name == "by night":
        return Sentence(REASONS["by day"], who=who, seen=seen)
    if name == "moonless":
        return Sentence(REASONS["moonlit"], up=up, who=who, seen=seen)
    return Sentence(REASONS["skyline"], who=who)


def reason_of(text):
    """A reason as a table holds it, as the sentence that it was, so that it can be told in another language; else the text itself."""
    return recognised(text, (*REASONS.values(), *LIMITS.values(), *BARE.values()))


def _bare(target):
    """The body without its article."""
    if target.id == "galactic":
        return Sentence(REASONS["plane"], **target.phrase.parts)
    return BARE[target.id]


def _beginnings(held):
    """Site and moment of the beginnings of stretches, but for those that began before the span."""
    known = held.start > held.low[held.row]
    return held.row[known], held.start[known]


def _endings(held):
    known = held.end < held.high[held.row]
    return held.row[known], held.end[known]
