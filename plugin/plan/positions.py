"""Where bodies stand over sites at given times."""

import numpy as np

from ..sky import moonlight
from ..sky.bodies import MOON, SUN
from ..sky.horizontal import topocentric
from ..sky.tables import TimeTable
from . import circumstances, clock

BLOCK_CELLS = 50_000  # sites x times at once; some 60 columns of it are held


def sky_positions(sites, zone_names, zone_index, targets, t_utc_s, pressure_hPa=None, temperature_C=10.0):
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

    Yields
    ------
    dict of str to ndarray, shape (N,)
        Columns by field name, and `site`, the index of the site. Rows run by site, then body, then time. `t_utc` in s of UTC.

    Raises
    ------
    ValueError
        Where a moment lies outside the ephemeris.
    """
    t_utc_s = np.atleast_1d(np.asarray(t_utc_s, float))
    table = TimeTable(t_utc_s, [*circumstances.NEEDED, *(target.body for target in targets)]) if len(t_utc_s) else None
    zone_index = np.asarray(zone_index)
    site_step = max(1, BLOCK_CELLS // max(len(t_utc_s), 1))
    time_step = BLOCK_CELLS
    for site in range(0, len(sites), site_step):
        for time in range(0, len(t_utc_s), time_step):
            yield _block(
                sites, zone_names, zone_index, targets, table, (site, site_step), slice(time, time + time_step), pressure_hPa, temperature_C
            )


def _block(sites, zone_names, zone_index, targets, table, site_range, times, pressure_hPa, temperature_C):
    index = np.arange(site_range[0], min(sum(site_range), len(sites)))
    sites = sites.take(index)
    table = table.take(times)
    vectors = {body: topocentric(sites, table, body) for body in {*circumstances.NEEDED, *(target.body for target in targets)}}
    air = circumstances.Air(sites.height_m[:, None], pressure_hPa, temperature_C)
    shared = circumstances.light_and_band(vectors, moonlight.lit_fraction(table.itrs(MOON), table.itrs(SUN)), air)
    shape = (len(sites), len(table.t_utc_s))
    zones = zone_index[index][:, None]
    shared["t_utc"] = np.broadcast_to(clock.whole_seconds(table.t_utc_s), shape)
    shared["t_local"] = clock.local_text(shared["t_utc"], zone_names, np.broadcast_to(zones, shape))
    shared["tz"] = np.broadcast_to(np.asarray(zone_names, dtype=object)[zones], shape)
    shared["site"] = np.broadcast_to(index[:, None], shape)
    by_target = [
        {**shared, **circumstances.place_of(target, vectors, shared, air), "body": np.full(shape, target.id, dtype=object)}
        for target in targets
    ]
    return {name: np.stack([columns[name] for columns in by_target], axis=1).ravel() for name in by_target[0]} if by_target else {}
