"""Where bodies stand, row by row: each row has its own site, moment and body. `plan.positions` has every site at every moment."""

import numpy as np

from ..sky import moonlight
from ..sky.bodies import MOON, SUN
from ..sky.tables import TimeTable
from . import circumstances

COLUMNS = ("az_deg", "alt_deg", "semi_deg", "apex_az", "apex_deg")


def places(sites, t_utc_s, targets, which, pressure_hPa=None, temperature_C=10.0):
    """Places of bodies.

    Parameters
    ----------
    sites : Sites
        R of them, one a row.
    t_utc_s : ndarray, shape (R,)
        Moments; nan where there is none. [s of UTC]
    targets : sequence of Target
    which : ndarray of int, shape (R,)
        Target of each row, by its number.
    pressure_hPa, temperature_C : float
        As in `circumstances.Air`.

    Returns
    -------
    dict of str to ndarray, shape (R,)
        `COLUMNS` by field name; nan where there is no moment.

    Raises
    ------
    ValueError
        Where a moment lies outside the ephemeris.
    """
    columns = {name: np.full(len(sites), np.nan) for name in COLUMNS}
    for number, target in enumerate(targets):
        rows = np.flatnonzero((which == number) & np.isfinite(t_utc_s))
        if rows.size:
            found = _places_of(target, sites.take(rows), t_utc_s[rows], pressure_hPa, temperature_C)
            for name, column in columns.items():
                column[rows] = found[name]
    return columns


def _places_of(target, sites, t_utc_s, pressure_hPa, temperature_C):
    moments, moment = np.unique(t_utc_s, return_inverse=True)
    table = TimeTable(moments, dict.fromkeys([*circumstances.NEEDED, target.body]))
    vectors = {body: _topocentric(sites, table.itrs(body)[:, moment], body) for body in table.bodies}
    lit = moonlight.lit_fraction(table.itrs(MOON), table.itrs(SUN))[moment]
    air = circumstances.Air(sites.height_m, pressure_hPa, temperature_C)
    columns = circumstances.light_and_band(vectors, lit, air)
    return {**columns, **circumstances.place_of(target, vectors, columns, air)}


def _topocentric(sites, itrs, body):
    """East, north, up of a body over each site at its own moment, shape (3, R)."""
    return np.einsum("eri,ir->er", sites.projections(body), np.concatenate([itrs, np.ones((1, itrs.shape[1]))]))
