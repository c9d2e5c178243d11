"""What a standpoint is looked for: a bearing, or the place of a body in the sky at some moments.

An aim tells which bearing is wanted at a place. That of a body is its azimuth there, which differs by 0.009 degrees a kilometre from place
to place: it is never carried over from the subject. Angles in degrees.
"""

import numpy as np

from ..ground.geodesic import EARTH_RADIUS_M
from ..sky.ephemeris import default_ephemeris
from ..sky.horizontal import Sites, altitude_deg, azimuth_deg
from .conditions import Heavens

PER_M = float(np.degrees(1.0 / EARTH_RADIUS_M))  # the Earth's curvature: the direction of the plumb line turns by so much a metre
STEEPEST = 1000.0  # tangent of an altitude; nearer to the zenith an azimuth means nothing


class Bearing:
    """One true bearing, whenever and wherever.

    Parameters
    ----------
    bearing_deg : float
        [deg]
    """

    def __init__(self, bearing_deg):
        self.bearing_deg = float(bearing_deg) % 360.0
        self.t_utc_s = np.full(1, np.nan)

    def over(self, lon_deg, lat_deg, moments):
        """Bearings wanted at M places, shape (1, M)."""
        return np.full((1, np.size(lon_deg)), self.bearing_deg)

    def at(self, lon_deg, lat_deg, moment):
        """Bearings wanted at M places, shape (M,)."""
        return np.full(np.shape(lon_deg), self.bearing_deg)

    def drift(self, lon_deg, lat_deg, moments):
        """How much faster the bearing wanted turns from place to place than the plumb line: not at all, shape (1,)."""
        return np.zeros(1)


class BodyBearing:
    """Where a body stands at moments.

    Parameters
    ----------
    target : Target
    t_utc_s : array_like, shape (T,)
        In any order. [s of UTC]
    heavens : Heavens, optional
        That holds the target's body over the moments; made if left out.

    Raises
    ------
    ValueError
        A moment lies outside the ephemeris.
    """

    def __init__(self, target, t_utc_s, heavens=None):
        self.target, self.t_utc_s = target, np.atleast_1d(np.asarray(t_utc_s, dtype=float))
        self.heavens = heavens or Heavens([target.body], self.t_utc_s.min(), self.t_utc_s.max())
        self._tt_s = default_ephemeris().tt_from_utc(self.t_utc_s)

    def over(self, lon_deg, lat_deg, moments):
        """Azimuths at M places, at N moments given by index, shape (N, M)."""
        sites = Sites(lon_deg, lat_deg)
        return self._azimuth(sites, np.arange(len(sites))[None, :], self._tt_s[moments][:, None])

    def at(self, lon_deg, lat_deg, moment):
        """Azimuths at M places, each at the moment of an index, shape (M,)."""
        return self._azimuth(Sites(lon_deg, lat_deg), np.arange(np.size(lon_deg)), self._tt_s[moment])

    def drift(self, lon_deg, lat_deg, moments):
        """How much faster the azimuth turns from place to place than the plumb line: the tangent of the altitude, shape (N,)."""
        sites = Sites(lon_deg, lat_deg)
        alt_deg = altitude_deg(*self._enu(sites, np.arange(len(sites))[None, :], self._tt_s[moments][:, None]))
        return np.minimum(np.abs(np.tan(np.radians(alt_deg))), STEEPEST).max(axis=1, initial=0.0)

    def _enu(self, sites, rows, tt_s):
        return self.heavens.motion(self.target.body, sites).enu(rows, tt_s)

    def _azimuth(self, sites, rows, tt_s):
        east, north, up = self._enu(sites, rows, tt_s)
        if self.target.is_arch:  # its top has the azimuth of that galactic pole which is down
            east, north = np.where(up > 0.0, -east, east), np.where(up > 0.0, -north, north)
        return azimuth_deg(east, north)
