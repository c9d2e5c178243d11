"""One place at one moment, asked again and again: what a map asks while a point is dragged or time runs on.

What does not hang on the place is kept from question to question, so that only the first one about a day waits for the ephemeris.
Angles in degrees.
"""

from functools import lru_cache

from ..ground import geodesic
from ..sky.ephemeris import DAY_S, default_ephemeris
from ..sky.horizontal import Sites, topocentric
from ..sky.tables import TimeTable, tracks
from . import circumstances

KEPT_DAYS = 2000  # of all bodies together: a year of rows, each with its own night; 2 kB each
KEPT_MOMENTS = 256


def direction(target, lon_deg, lat_deg, height_m, t_utc_s):
    """Where a target stands.

    Parameters
    ----------
    target : Target
    lon_deg, lat_deg, height_m : float
        The place. [deg, deg, m above sea level]
    t_utc_s : float
        The moment. [s of UTC]

    Returns
    -------
    az_deg, alt_deg : float
        Azimuth clockwise from true north, and apparent altitude in standard air. [deg]

    Raises
    ------
    ValueError
        The moment lies outside the ephemeris.
    """
    bodies = circumstances.OF_BAND if target.is_arch else (target.body,)
    vectors, air = _sky(bodies, lon_deg, lat_deg, height_m, t_utc_s)
    columns = circumstances.band_of(vectors, air) if target.is_arch else None
    az_deg, alt_true_deg = circumstances.direction_of(target, vectors, columns)
    return float(az_deg[0, 0]), float(air.apparent(alt_true_deg)[0, 0])


def tilt_deg(lon_deg, lat_deg, height_m, t_utc_s):
    """Angle of the band of the Milky Way to the horizontal at the core, 0 flat to 90 upright; nan unless the core is up. [deg].

    The parameters and errors are those of `direction`.
    """
    vectors, air = _sky(circumstances.OF_BAND, lon_deg, lat_deg, height_m, t_utc_s)
    return float(circumstances.band_of(vectors, air)["tilt_deg"][0, 0])


def sightline(lon1_deg, lat1_deg, lon2_deg, lat2_deg):
    """Bearing at the first place toward the second, nan where they are one, and their distance; by `geodesic.inverse`. [deg, m]."""
    bearing_deg, _, dist_m = geodesic.inverse(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    return float(bearing_deg), float(dist_m)


def _sky(bodies, lon_deg, lat_deg, height_m, t_utc_s):
    """Topocentric vectors of bodies, each of shape (3, 1, 1), and the air."""
    site, table = Sites(lon_deg, lat_deg, height_m), _table(bodies, t_utc_s)
    return {body: topocentric(site, table, body) for body in bodies}, circumstances.Air(site.height_m[:, None])


@lru_cache(maxsize=KEPT_MOMENTS)
def _table(bodies, t_utc_s):
    ephemeris = default_ephemeris()
    ephemeris.require(t_utc_s, t_utc_s)
    day = t_utc_s // DAY_S
    return TimeTable(t_utc_s, bodies, made={body: _track(body, day) for body in bodies})


@lru_cache(maxsize=KEPT_DAYS)
def _track(body, day):
    """A body's track over a day of UTC, as far as the ephemeris goes."""
    ephemeris = default_ephemeris()
    return tracks([body], max(day * DAY_S, ephemeris.first_utc_s), min((day + 1.0) * DAY_S, ephemeris.last_utc_s))[body]
