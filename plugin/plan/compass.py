"""What compasses show at sites during a run: the declination of each site, worked out at both ends of the run, straight between.

Declination changes by some 0.1° a year and almost evenly: away from the magnetic poles the straight line is good to 0.03° over the five
years of the model, to 0.001° over one.
"""

import numpy as np

from ..ground import magnetic
from ..ground.magnetic import magnetic_bearing

MODEL = magnetic.model().name
FIRST_YEAR, LAST_YEAR = magnetic.model().epoch, magnetic.model().epoch + magnetic.SPAN_YEARS  # both ends of what the model holds for
LEAST_SPAN_YEARS = 0.1  # between the two dates worked out, so that a run of a moment divides by something


class Compass:
    """Compasses at S sites.

    Parameters
    ----------
    lon_deg, lat_deg, height_m : ndarray, shape (S,)
        [deg, m]
    first_utc_s, last_utc_s : float
        Span of the run. [s of UTC]

    Attributes
    ----------
    zone : ndarray of object, shape (S,)
        `blackout` or `caution` near the magnetic poles, else None, as in `magnetic.compass_zone`.
    covered : bool
        Whether the magnetic model holds for the whole span; where it does not, declinations are nan.
    of_use : bool
        Whether it holds for any part of the span.
    """

    def __init__(self, lon_deg, lat_deg, height_m, first_utc_s, last_utc_s):
        first, last = _years(np.array([first_utc_s, last_utc_s]))
        self.covered = bool(magnetic.within_model(first) & magnetic.within_model(last))
        self.of_use = bool((last >= FIRST_YEAR) & (first <= LAST_YEAR))
        self._first = np.clip(first, FIRST_YEAR, LAST_YEAR - LEAST_SPAN_YEARS)
        self._span = np.clip(last, self._first + LEAST_SPAN_YEARS, LAST_YEAR) - self._first
        before, after = (magnetic.field(lon_deg, lat_deg, height_m, year) for year in (self._first, self._first + self._span))
        self._declination_deg = before.declination_deg
        self._change_deg = 180.0 - (180.0 - after.declination_deg + before.declination_deg) % 360.0
        self.zone = magnetic.compass_zone(np.minimum(before.horizontal_nT, after.horizontal_nT))

    def declination_deg(self, site, t_utc_s):
        """Declination at moments.

        Parameters
        ----------
        site : ndarray of int
            Index of the site, broadcast with the moments.
        t_utc_s : ndarray
            [s of UTC]

        Returns
        -------
        ndarray
            East positive, in (-180, 180]; nan where the model does not hold at that moment. [deg]
        """
        years = _years(t_utc_s)
        declination = self._declination_deg[site] + self._change_deg[site] * (years - self._first) / self._span
        return np.where(magnetic.within_model(years), 180.0 - (180.0 - declination) % 360.0, np.nan)


def add_magnetic(table, compass, site, t_utc_s, bearing):
    """Add `decl_deg`, and `mag_deg` of a column of true bearings, to a table.

    Parameters
    ----------
    table : dict
    compass : Compass
    site : ndarray of int, shape (N,)
        Index of the site of each row among those of the compass.
    t_utc_s : array_like
        Moments of the rows, or one for all. [s of UTC]
    bearing : str
        Name of the column.
    """
    table["decl_deg"] = compass.declination_deg(site, t_utc_s)
    table["mag_deg"] = magnetic_bearing(table[bearing], table["decl_deg"])


def _years(t_utc_s):
    return magnetic.decimal_year(np.asarray(t_utc_s, float).astype("datetime64[s]"))
