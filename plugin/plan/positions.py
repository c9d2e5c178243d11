"""Where bodies stand over sites at given times."""

import numpy as np

from ..sky import moonlight
from ..sky.bodies import MOON, SUN
from ..sky.horizontal import topocentric
from ..sky.tables import TimeTable
from . import circumstances, clock
from .horizons import BLOCK_SKYLINES, Horizons

BLOCK_CELLS = 50_000  # sites x times at once; some 60 columns of it are held


def sky_positions(
    sites, zone_names, zone_index, targets, t_utc_s, pressure_hPa=None, temperature_C=10.0, relief=None, lens_dem_m=None, progress=None
):
    """Positions of targets over sites, in blocks.

    Parameters
    ----------
    sites : Sites
        S of them.
    zone_names : sequence of str
    zone_index : ndarray of int, shape (S,)
        Zone of each site.
    targets : sequence of Target
    t_utc_s : ndarray, shape (T,)
        Moments. [s of UTC]
    pressure_hPa, temperature_C : float
        As in `circumstances.Air`.
    relief : Relief, optional
        The ground, for the column `ground_deg`.
    lens_dem_m : ndarray, shape (S,)
        Lens at each site, by the relief's elevation model; nan where that does not reach. [m]
    progress : callable, optional
        Asked now and then while skylines are found; after a False from it no more blocks come.

    Yields
    ------
    dict of str to ndarray, shape (N,)
        Columns by field name, and `site`, the index of the site. Rows run by site, then body, then time, for up to `BLOCK_CELLS` times;
        then for the next. `t_utc` in s of UTC.

    Raises
    ------
    ValueError
        Where a moment lies outside the ephemeris.
    """
    t_utc_s = np.atleast_1d(np.asarray(t_utc_s, float))
    bodies = dict.fromkeys([*circumstances.NEEDED, *(target.body for target in targets)])
    for first_time in range(0, len(t_utc_s), BLOCK_CELLS):
        table = TimeTable(t_utc_s[first_time : first_time + BLOCK_CELLS], bodies)
        step = max(1, BLOCK_CELLS // len(table.t_utc_s))
        if relief is not None:
            step = min(step, BLOCK_SKYLINES)
        for first_site in range(0, len(sites), step):
            index = np.arange(first_site, min(first_site + step, len(sites)))
            air = circumstances.Air(sites.height_m[index][:, None], pressure_hPa, temperature_C)
            columns = _block(sites.take(index), index, zone_names, np.asarray(zone_index)[index], targets, table, air)
            if relief is not None and len(index) and targets:
                horizons = Horizons(relief, sites.lon_deg[index], sites.lat_deg[index], lens_dem_m[index], progress)
                columns["ground_deg"] = horizons.altitude_deg(columns["site"] - first_site, columns["az_deg"])
                if horizons.stopped:
                    return
            yield columns


def _block(sites, index, zone_names, zone_index, targets, table, air):
    vectors = {body: topocentric(sites, table, body) for body in table.bodies}
    shared = circumstances.light_and_band(vectors, moonlight.lit_fraction(table.itrs(MOON), table.itrs(SUN)), air)
    shape = (len(sites), len(table.t_utc_s))
    zones = zone_index[:, None]
    shared["t_utc"] = np.broadcast_to(clock.whole_seconds(table.t_utc_s), shape)
    shared["t_local"] = clock.local_text(shared["t_utc"], zone_names, np.broadcast_to(zones, shape))
    shared["tz"] = np.broadcast_to(np.asarray(zone_names, dtype=object)[zones], shape)
    shared["site"] = np.broadcast_to(index[:, None], shape)
    by_target = [
        {**shared, **circumstances.place_of(target, vectors, shared, air), "body": np.full(shape, target.id, dtype=object)}
        for target in targets
    ]
    return {name: np.stack([columns[name] for columns in by_target], axis=1).ravel() for name in by_target[0]} if by_target else {}
