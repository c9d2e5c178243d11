"""Alignments: the stretches of time in which a body stands over a subject and every condition holds, and why there are none.

Nothing is sampled: each condition is a set of stretches between exact crossings, and an alignment is where all sets hold.
"""

from dataclasses import dataclass

import numpy as np

from ..sky import arcs, moonlight
from ..sky.bodies import MOON, MOON_RADIUS_KM, SUN
from ..sky.ephemeris import default_ephemeris
from ..sky.horizontal import Sites
from . import circumstances, clock, nights, unmet
from .azimuths import AzimuthRun, offset_deg
from .compass import add_magnetic
from .conditions import ANY, Circumstances, Heavens, body_limits, over_bearing
from .horizons import BLOCK_SKYLINES, Horizons, clear_of_skyline

DAY_S = 86400.0
NO_LENS_M = -1e6  # stands for an unknown one where sites are told apart
BLOCK_CELLS = 60_000  # pairs x turns x 2: what one condition works on at once; memory and the wait for a cancel hang on it
EDGE_S = 0.005  # over the error of a crossing, under what any clock shows
MOON_AHEAD_DEG, MOON_ASIDE_DEG = 60.0, 120.0


@dataclass(frozen=True)
class Pairs:
    """Cameras and their subjects; arrays of shape (P,).

    Attributes
    ----------
    lon_deg, lat_deg : ndarray
        Camera. [deg]
    height_m : ndarray
        Lens, above sea level; 0 where unknown. [m]
    bearing_deg : ndarray
        True bearing from camera to subject. [deg]
    base_alt_deg, top_alt_deg : ndarray
        Altitudes of the subject's foot and top from the lens. [deg]
    zone_names : sequence of str
    zone_index : ndarray of int
        Zone of each camera.
    lens_dem_m : ndarray, optional
        Lens, by the elevation model of the relief; nan where that does not reach. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    height_m: np.ndarray
    bearing_deg: np.ndarray
    base_alt_deg: np.ndarray
    top_alt_deg: np.ndarray
    zone_names: list
    zone_index: np.ndarray
    lens_dem_m: np.ndarray = np.nan

    def __post_init__(self):
        object.__setattr__(self, "lens_dem_m", np.broadcast_to(self.lens_dem_m, np.shape(self.lon_deg)))

    def __len__(self):
        return len(self.lon_deg)

    def take(self, index):
        """The pairs at a slice."""
        arrays = (self.lon_deg, self.lat_deg, self.height_m, self.bearing_deg, self.base_alt_deg, self.top_alt_deg)
        return Pairs(*(values[index] for values in arrays), self.zone_names, self.zone_index[index], self.lens_dem_m[index])


def find_alignments(pairs, targets, first_night, last_night, conditions, progress=None, relief=None):
    """Find all alignments of pairs with targets in a range of nights.

    Parameters
    ----------
    pairs : Pairs
        P of them.
    targets : sequence of Target
    first_night, last_night : datetime64[D] or ndarray of it, shape (P,)
        Dates of the first and the last evening, both included, in each pair's zone.
    conditions : Conditions
    progress : callable, optional
        Told the part that is done, 0 to 1, several times a second; False from it ends the search.
    relief : Relief, optional
        The ground: where it is known, the column `ground_deg`, and a condition if `conditions.use_skyline`.

    Yields
    ------
    table : dict of str to ndarray, shape (N,)
        Columns by the names of `names.ALIGNMENTS_FIELDS` as far as they follow from the sky, and `pair`, the index of the pair. Moments in
        s of UTC, unrounded; nan and None where there is no value.
    unmet : dict of str to ndarray, shape (M,)
        `pair body bearing_deg az_from az_to reason` of the pairs and targets without a row.

    Raises
    ------
    ValueError
        Nights outside the ephemeris, or the last before the first.
    """
    if not len(pairs) or not len(targets):
        return
    noon_utc_s, night_count = nights.noons(pairs.lon_deg, pairs.zone_names, pairs.zone_index, first_night, last_night)
    last_noon_utc_s = noon_utc_s + DAY_S * night_count
    bodies = [*circumstances.NEEDED, *(target.body for target in targets)]
    heavens = Heavens(bodies, noon_utc_s.min() - DAY_S, last_noon_utc_s.max() + DAY_S)
    step = max(1, BLOCK_CELLS // (2 * (int(night_count.max()) + 2)))
    if relief is not None:
        step = min(step, BLOCK_SKYLINES)
    steps = len(targets) * -(-len(pairs) // step)
    done = 0

    def go_on():
        return progress is None or progress(done / steps) is not False

    for first in range(0, len(pairs), step):
        part = slice(first, first + step)
        block = _Block(pairs.take(part), noon_utc_s[part], last_noon_utc_s[part], heavens, conditions, relief, go_on)
        for target in targets:
            found = block.find(target)
            if found is None:
                return
            for columns in found:
                columns["pair"] += first
            yield found
            done += 1
            if not go_on():
                return


class _Block:
    """Some pairs, worked on at once."""

    def __init__(self, pairs, noon_utc_s, last_noon_utc_s, heavens, conditions, relief, go_on):
        ephemeris = default_ephemeris()
        self.pairs, self.heavens, self.conditions = pairs, heavens, conditions
        self.noon_utc_s, self.last_noon_utc_s = noon_utc_s, last_noon_utc_s
        self.noon_tt_s, self.last_noon_tt_s = ephemeris.tt_from_utc(noon_utc_s), ephemeris.tt_from_utc(last_noon_utc_s)
        # A day more on either side, so that a stretch over the edge is known whole.
        self.low, self.high = ephemeris.tt_from_utc(noon_utc_s - DAY_S), ephemeris.tt_from_utc(last_noon_utc_s + DAY_S)
        self.sites = Sites(pairs.lon_deg, pairs.lat_deg, pairs.height_m)
        self.air = circumstances.Air(pairs.height_m, conditions.pressure_hPa, conditions.temperature_C)
        lens_dem_m = np.where(np.isfinite(pairs.lens_dem_m), pairs.lens_dem_m, NO_LENS_M)
        key = np.stack([pairs.lon_deg, pairs.lat_deg, pairs.height_m, lens_dem_m, noon_utc_s, last_noon_utc_s])
        _, one, self.site_index = np.unique(key, axis=1, return_index=True, return_inverse=True)
        self.site_index = self.site_index.reshape(-1)
        self.shared = Circumstances(heavens, self.sites.take(one), self.air.take(one), self.low[one], self.high[one])
        self.go_on, self.horizons = go_on, None
        if relief is not None:
            self.horizons = Horizons(relief, pairs.lon_deg[one], pairs.lat_deg[one], pairs.lens_dem_m[one], lambda part: go_on())

    def find(self, target):
        """Table of one target, and its pairs without a row; None when told not to go on."""
        motion = self.heavens.motion(target.body, self.sites)
        stages = []
        for stage in self._stages(target, motion):
            if not self.go_on():
                return None
            stages.append(stage)
        met = stages[-1][1]
        row, start, end = nights.cut_long(met, self.noon_tt_s)
        opposite = self._south_is_meant(target, motion, row, 0.5 * (start + end))
        t_s = AzimuthRun(motion, row, start, end, opposite).closest_to(self.pairs.bearing_deg)
        # A hair inside, so that what holds in the stretch is told, not what begins at its end.
        inside_s = np.minimum(EDGE_S, 0.5 * (end - start))
        t_s = np.clip(t_s, start + inside_s, end - inside_s)
        t_utc_s = default_ephemeris().utc_from_tt(t_s)
        asked = (t_utc_s >= self.noon_utc_s[row]) & (t_utc_s < self.last_noon_utc_s[row])
        table = self._table(target, row[asked], t_s[asked], start[asked], end[asked])
        without = self._unmet(target, motion, stages, np.bincount(row[asked], minlength=len(self.pairs)) == 0)
        return (table, without) if self.go_on() else None

    def _stages(self, target, motion):
        """Conditions one after the other, each with what still holds after it."""
        asked, shared, index = self.conditions, self.shared, self.site_index
        standing, over_top = body_limits(asked, target, shared, self.air, self.pairs.top_alt_deg, index)
        yield "standing", standing
        met = arcs.every(over_bearing(target, motion, self.pairs.bearing_deg, asked.tolerance_of(target), self.low, self.high), standing)
        yield "bearing", met
        of_site = {
            "tilt": shared.tilted(asked.tilt_min_deg, asked.tilt_max_deg),
            "apex": None if target.is_arch else shared.arched(asked.apex_min_deg, asked.apex_max_deg),
        }
        if target.body != SUN:
            limit_deg = target.sun_limit_deg if asked.sun_limit_deg is None else asked.sun_limit_deg
            of_site["darkness"] = shared.dark(limit_deg, asked.sun_min_deg)
            if target.body == MOON:
                of_site["phase"] = self._phase()
            elif asked.moon != ANY:
                of_site["moon"] = shared.moonless(asked.moon, asked.moon_lit_max)
        of_pair = {"gap": over_top, **{name: None if held is None else held.take(index) for name, held in of_site.items()}}
        for name, held in of_pair.items():
            if held is not None:
                met = arcs.every(met, held)
                yield name, met
        if self.horizons is not None and asked.use_skyline:
            yield "skyline", clear_of_skyline(self.horizons, index, target, motion, self.air, met)

    def _phase(self):
        least, most = self.conditions.lit_min, self.conditions.lit_max
        if least is None and most is None:
            return None
        return self.shared.moon_lit(0.0 if least is None else least, 1.0 if most is None else most)

    def _south_is_meant(self, target, motion, row, tt_s):
        """Where the arch's top has the azimuth of the south galactic pole, as the north one is up; None for other targets."""
        return motion.enu(row, tt_s)[2] > 0.0 if target.is_arch else None

    def _table(self, target, row, t_s, start, end):
        pairs, ephemeris = self.pairs, default_ephemeris()
        bodies = dict.fromkeys([*circumstances.NEEDED, target.body])
        vectors = {body: self.heavens.motion(body, self.sites).enu(row, t_s) for body in bodies}
        air = self.air.take(row)
        table = circumstances.light_and_band(vectors, self.heavens.lit(t_s), air)
        table.update(circumstances.place_of(target, vectors, table, air))
        bearing_deg, top_alt_deg = pairs.bearing_deg[row], pairs.top_alt_deg[row]
        table.update(circumstances.moonlight_of(target, table, moonlight.semidiameter_deg(vectors[MOON], MOON_RADIUS_KM)))
        zone_index = pairs.zone_index[row]
        table.update(
            pair=row.copy(),
            body=np.full(len(row), target.id, dtype=object),
            tz=np.asarray(pairs.zone_names, dtype=object)[zone_index],
            minutes=(end - start) / 60.0,
            bearing_deg=bearing_deg,
            d_az_deg=offset_deg(table["az_deg"], bearing_deg),
            top_alt_deg=top_alt_deg,
            d_alt_deg=table["alt_deg"] - top_alt_deg,
            place=place_against(table["alt_deg"], pairs.base_alt_deg[row], top_alt_deg),
            moon_side=_moon_side(table["moon_az"], table.pop("moon_up"), bearing_deg),
        )
        if self.horizons is not None:
            table["ground_deg"] = self.horizons.altitude_deg(self.site_index[row], table["az_deg"])
        for name, local, moment in (("t_utc", "t_local", t_s), ("t_start", "start_loc", start), ("t_end", "end_loc", end)):
            table[name] = ephemeris.utc_from_tt(moment)
            table[local] = clock.local_text(table[name], pairs.zone_names, zone_index)
        table["night"] = nights.night_of(table["t_utc"], pairs.lon_deg[row], pairs.zone_names, zone_index)[0]
        return table

    def _unmet(self, target, motion, stages, without):
        rows = np.nonzero(without)[0]
        standing = stages[0][1]
        within = standing.keep(without[standing.row] & self._reaches_nights(standing))
        reach = unmet.reach(target, motion, *nights.cut_long(within, self.noon_tt_s))
        az_from, az_to = (values[rows] for values in reach)
        bearing_deg, top_alt_deg = self.pairs.bearing_deg[rows], self.pairs.top_alt_deg[rows]
        held = [(name, np.bincount(met.row[self._reaches_nights(met)], minlength=len(self.pairs))[rows] > 0) for name, met in stages]
        return {
            "pair": rows,
            "body": np.full(len(rows), target.id, dtype=object),
            "bearing_deg": bearing_deg,
            "az_from": az_from,
            "az_to": az_to,
            "reason": unmet.reasons(target, self.conditions, bearing_deg, top_alt_deg, self._ground_deg(rows), az_from, az_to, held),
        }

    def _ground_deg(self, rows):
        """Altitude of the skyline on the bearing of pairs; nan where none is known."""
        if self.horizons is None:
            return np.full(len(rows), np.nan)
        return self.horizons.altitude_deg(self.site_index[rows], self.pairs.bearing_deg[rows])

    def _reaches_nights(self, met):
        """Which stretches reach into the nights asked."""
        return (met.end > self.noon_tt_s[met.row]) & (met.start < self.last_noon_tt_s[met.row])


def add_lines(table, lines, names, compass):
    """Add what the sightlines of pairs tell to a table of alignments: who is who, `dist_m heights sight`, and what a compass shows.

    Parameters
    ----------
    table : dict of str to ndarray
        As `find_alignments` yields it.
    lines : dict of str to ndarray
        The pairs, as `plan.sightlines.sightlines` measures them.
    names : dict of str to ndarray
        Further columns, a row a pair.
    compass : Compass
        Of the cameras.
    """
    known = {**names, **{name: lines[name] for name in ("dist_m", "heights", "sight") if name in lines}}
    table.update({name: column[table["pair"]] for name, column in known.items()})
    add_magnetic(table, compass, lines["camera_index"][table["pair"]], table["t_utc"], "bearing_deg")


def place_against(alt_deg, base_alt_deg, top_alt_deg):
    """Where a body stands against a subject: `above` its top, `behind` it, or `below` its foot."""
    return np.where(alt_deg > top_alt_deg, "above", np.where(alt_deg >= base_alt_deg, "behind", "below")).astype(object)


def _moon_side(moon_az, moon_up, bearing_deg):
    """Where the light of a Moon that is up comes from, for one who looks along the bearing."""
    off_deg = np.abs(offset_deg(moon_az, bearing_deg))
    side = np.where(off_deg < MOON_AHEAD_DEG, "ahead", np.where(off_deg <= MOON_ASIDE_DEG, "side", "behind")).astype(object)
    return np.where(moon_up, side, None)
