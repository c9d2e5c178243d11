"""The ephemeris and the time scales: where Sun, Moon and Earth are, and how UTC, TT and the Earth's turning hang together.

Moments are seconds: `t_utc_s` counts UTC from 1970-01-01 with leap seconds left out (as computers do), `tt_s` counts Terrestrial Time from
2000-01-01 12:00 TT. A float64 resolves both to better than a microsecond.
"""

from functools import cache
from pathlib import Path

import numpy as np
from skyfield.api import load, load_file

from ..words import Sentence

DAY_S = 86400.0
J2000_JD = 2451545.0  # TT
UNIX_EPOCH_JD = 2440587.5  # UTC
J2000_UTC_S = (J2000_JD - UNIX_EPOCH_JD) * DAY_S
TT_MINUS_TAI_S = 32.184
EXCERPT_PATH = Path(__file__).parent.parent / "data" / "ephemeris.bsp"  # not resolved: a staged package is made of links
MARGIN_DAYS = 3.0  # light time, and the nodes beyond both ends that interpolation needs


class Ephemeris:
    """A planetary ephemeris with its time scales.

    Parameters
    ----------
    path : path-like
        An SPK file with the targets 3, 5, 6, 10, 301 and 399.

    Attributes
    ----------
    first_utc_s, last_utc_s : float
        Span in which places can be computed. [s of UTC]
    """

    def __init__(self, path):
        self.kernel = load_file(str(path))
        self.timescale = load.timescale(builtin=True)
        self._leap_tai_utc_s = np.concatenate([[10.0], np.asarray(self.timescale.leap_offsets, float)])
        self._leap_utc_s = (np.asarray(self.timescale.leap_dates) - UNIX_EPOCH_JD) * DAY_S
        self._leap_tt_s = self.tt_from_utc(self._leap_utc_s)
        segments = self.kernel.spk.segments
        first_jd = max(segment.start_jd for segment in segments) + MARGIN_DAYS
        last_jd = min(segment.end_jd for segment in segments) - MARGIN_DAYS
        self.first_utc_s = float(self.utc_from_tt((first_jd - J2000_JD) * DAY_S))
        self.last_utc_s = float(self.utc_from_tt((last_jd - J2000_JD) * DAY_S))

    def tt_from_utc(self, t_utc_s):
        """Terrestrial Time of moments given in UTC.

        Parameters
        ----------
        t_utc_s : array_like
            Moments, any shape. [s of UTC since 1970]

        Returns
        -------
        ndarray
            The same moments. [s of TT since J2000]
        """
        t_utc_s = np.asarray(t_utc_s, float)
        tai_minus_utc_s = self._leap_tai_utc_s[np.searchsorted(self._leap_utc_s, t_utc_s, side="right")]
        return t_utc_s - J2000_UTC_S + tai_minus_utc_s + TT_MINUS_TAI_S

    def utc_from_tt(self, tt_s):
        """UTC of moments given in Terrestrial Time: the inverse of `tt_from_utc`.

        Parameters
        ----------
        tt_s : array_like
            Moments, any shape. [s of TT since J2000]

        Returns
        -------
        ndarray
            The same moments; within a leap second, the second after it. [s of UTC since 1970]
        """
        tt_s = np.asarray(tt_s, float)
        tai_minus_utc_s = self._leap_tai_utc_s[np.searchsorted(self._leap_tt_s, tt_s, side="right")]
        return tt_s + J2000_UTC_S - tai_minus_utc_s - TT_MINUS_TAI_S

    def time(self, tt_s):
        """Skyfield's time of moments, shape (T,) or (). [s of TT since J2000]."""
        whole_days = np.floor(np.asarray(tt_s, float) / DAY_S)
        return self.timescale.tt_jd(J2000_JD + whole_days, np.asarray(tt_s, float) / DAY_S - whole_days)

    def require(self, first_utc_s, last_utc_s):
        """Refuse a span that the ephemeris does not hold.

        Raises
        ------
        ValueError
            With the span that it does hold.
        """
        if not (first_utc_s >= self.first_utc_s and last_utc_s <= self.last_utc_s):
            held = [str(np.datetime64(int(t), "s"))[:10] for t in (self.first_utc_s, self.last_utc_s)]
            raise ValueError(
                Sentence(
                    "The dates asked reach beyond the ephemeris, which can be used from {first} to {last}. Choose dates between.",
                    first=held[0],
                    last=held[1],
                )
            )


@cache
def default_ephemeris():
    """The excerpt of DE421 that comes with the plugin, opened once.

    Raises
    ------
    FileNotFoundError
        With the command that makes the excerpt.
    """
    if not EXCERPT_PATH.exists():
        raise FileNotFoundError(
            Sentence("The ephemeris {path} is missing. Stage the plugin with package.py, or install the release again.", path=EXCERPT_PATH)
        )
    return Ephemeris(EXCERPT_PATH)
