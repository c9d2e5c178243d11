"""Places straight from Skyfield, by its own documented calls, as the reference for the plugin's tables.

Nothing of the plugin's sky is used here but the path of its ephemeris; constants come from the authorities.
"""

from functools import cache
from pathlib import Path

import erfa
import numpy as np
from skyfield.api import Star, load, load_file, wgs84

import skyalidade

DAY_S = 86400.0
EPHEMERIS_PATH = Path(skyalidade.__path__[0]) / "data" / "ephemeris.bsp"


@cache
def kernel():
    return load_file(str(EPHEMERIS_PATH))


@cache
def timescale():
    return load.timescale(builtin=True)


def times(t_utc_s):
    """Skyfield's times of moments in POSIX seconds; the day's number carries the leap seconds."""
    days, seconds = np.divmod(np.asarray(t_utc_s, float), DAY_S)
    return timescale().utc(1970, 1, 1 + days.astype(int), 0, 0, seconds)


def galactic_star(lon_deg, lat_deg):
    """A direction given in the galactic system, by ERFA's Hipparcos constants."""
    ra, dec = erfa.g2icrs(np.radians(lon_deg), np.radians(lat_deg))
    return Star(ra_hours=np.degrees(ra) / 15.0, dec_degrees=np.degrees(dec))


def icrs_star(ra_deg, dec_deg):
    return Star(ra_hours=ra_deg / 15.0, dec_degrees=dec_deg)


def target(name):
    """`sun`, `moon`, or one of the three axes of the galactic system."""
    if name in ("sun", "moon"):
        return kernel()[{"sun": 10, "moon": 301}[name]]
    return galactic_star(*{"core": (0.0, 0.0), "galactic_y": (90.0, 0.0), "galactic_pole": (0.0, 90.0)}[name])


class Observer:
    """One site, many times: the observer's own place is computed once for all its bodies."""

    def __init__(self, lon_deg, lat_deg, height_m, skyfield_times):
        site = wgs84.latlon(lat_deg, lon_deg, elevation_m=height_m)
        self.at = (kernel()[399] + site).at(skyfield_times)

    def altaz(self, body):
        """True altitude, azimuth [deg] and distance [km] of a Skyfield body: apparent place without refraction."""
        alt, az, distance = self.at.observe(body).apparent().altaz()
        return alt.degrees, az.degrees, distance.km


def unit_vectors(alt_deg, az_deg):
    """East, north, up on axis 0."""
    alt, az = np.radians(alt_deg), np.radians(az_deg)
    return np.stack([np.cos(alt) * np.sin(az), np.cos(alt) * np.cos(az), np.sin(alt)])


def apart_arcsec(alt_a_deg, az_a_deg, alt_b_deg, az_b_deg):
    """Angle between two directions, good for the smallest. [arcsec]."""
    chord = unit_vectors(alt_a_deg, az_a_deg) - unit_vectors(alt_b_deg, az_b_deg)
    return 3600.0 * np.degrees(2.0 * np.arcsin(np.minimum(np.sqrt((chord * chord).sum(axis=0)) / 2.0, 1.0)))
