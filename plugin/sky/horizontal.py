"""Horizontal coordinates: where bodies of a time table stand over sites.

Results are (sites, times). Azimuth is clockwise from true north, altitude is geometric: topocentric, of the centre, without refraction.
Angles in degrees.
"""

import numpy as np

from .bodies import Body, PoleDirection

EQUATORIAL_RADIUS_KM = 6378.137  # WGS 84
FLATTENING = 1.0 / 298.257223563  # WGS 84
EARTH_TURN_RAD_PER_S = 7.292115e-5  # WGS 84
LIGHT_KM_PER_S = 299792.458
CHUNK_CELLS = 1 << 15  # sites x times worked on at once: the arrays of a chunk stay in the processor's cache


class Sites:
    """Places on the ground.

    Parameters
    ----------
    lon_deg, lat_deg : array_like, shape (S,) or ()
        WGS 84, longitude east positive. [deg]
    height_m : array_like
        Above the ellipsoid; sea level serves, its difference cannot be seen. [m]

    Attributes
    ----------
    meridian_km, axial_km : ndarray, shape (S,)
        Distance from the Earth's axis and height over the equator's plane. [km]
    aberration : ndarray, shape (S,)
        Speed of the ground, as a part of that of light.
    """

    def __init__(self, lon_deg, lat_deg, height_m=0.0):
        self.lon_deg, self.lat_deg, self.height_m = np.broadcast_arrays(
            *(np.atleast_1d(np.asarray(values, float)) for values in (lon_deg, lat_deg, height_m))
        )
        lat = np.radians(self.lat_deg)
        self.sin_lat, self.cos_lat = np.sin(lat), np.cos(lat)
        self.cos_lat = np.where(np.abs(self.lat_deg) == 90.0, 0.0, self.cos_lat)
        flat = (1.0 - FLATTENING) ** 2
        curvature_km = EQUATORIAL_RADIUS_KM / np.sqrt(self.cos_lat**2 + flat * self.sin_lat**2)
        height_km = self.height_m / 1000.0
        self.meridian_km = (curvature_km + height_km) * self.cos_lat
        self.axial_km = (curvature_km * flat + height_km) * self.sin_lat
        self.aberration = EARTH_TURN_RAD_PER_S * self.meridian_km / LIGHT_KM_PER_S

    def __len__(self):
        return len(self.lon_deg)

    def take(self, index):
        """The sites at an index array or slice, as new `Sites`."""
        return Sites(self.lon_deg[index], self.lat_deg[index], self.height_m[index])

    def projections(self, body):
        """What turns a body's Earth-fixed x, y, z, r, 1 into east, north, up: shape (3, S, 5).

        For the pole, the end of the axis that is above the horizon is taken.
        """
        lon = np.radians(self.lon_deg)
        sin_lon, cos_lon = np.sin(lon), np.cos(lon)
        rows = np.zeros((3, len(self), 5))
        rows[0, :, 0], rows[0, :, 1] = -sin_lon, cos_lon
        rows[1, :, 0], rows[1, :, 1], rows[1, :, 2] = -self.sin_lat * cos_lon, -self.sin_lat * sin_lon, self.cos_lat
        rows[2, :, 0], rows[2, :, 1], rows[2, :, 2] = self.cos_lat * cos_lon, self.cos_lat * sin_lon, self.sin_lat
        if isinstance(body, PoleDirection):
            rows[1:, :, 2] *= np.where(self.lat_deg < 0.0, -1.0, 1.0)
            return rows
        rows[0, :, 3] = self.aberration
        if isinstance(body, Body):
            rows[1, :, 4] = self.sin_lat * self.meridian_km - self.cos_lat * self.axial_km
            rows[2, :, 4] = -self.cos_lat * self.meridian_km - self.sin_lat * self.axial_km
        return rows


def _blocks(sites, times):
    """Slices over sites and times whose product stays within a chunk."""
    time_step = min(times, CHUNK_CELLS) or 1
    site_step = max(1, CHUNK_CELLS // time_step)
    for s in range(0, sites, site_step):
        for t in range(0, times, time_step):
            yield slice(s, s + site_step), slice(t, t + time_step)


def topocentric(sites, table, body):
    """Topocentric vectors.

    Parameters
    ----------
    sites : Sites
    table : TimeTable
    body : Body, FixedDirection or PoleDirection
        One of the table's.

    Returns
    -------
    ndarray, shape (3, S, T)
        East, north, up; in km for moving bodies, unit vectors (to the diurnal aberration) for fixed ones.
    """
    x = table.itrs(body)
    return sites.projections(body) @ np.concatenate([x, np.ones((1, x.shape[1]))])


def true_altitude(sites, table, body):
    """Geometric altitude of a body's centre, shape (S, T). [deg]; see `true_altaz` for the parameters."""
    return _altaz(sites, table, body, want_azimuth=False)[0]


def true_altaz(sites, table, body):
    """Geometric altitude and azimuth of a body's centre.

    Parameters
    ----------
    sites : Sites
    table : TimeTable
    body : Body, FixedDirection or PoleDirection
        One of the table's.

    Returns
    -------
    alt_deg, az_deg : ndarray, shape (S, T)
        Altitude; azimuth in [0, 360). [deg]
    """
    return _altaz(sites, table, body, want_azimuth=True)


def _altaz(sites, table, body, want_azimuth):
    x = table.itrs(body)
    x = np.concatenate([x, np.ones((1, x.shape[1]))])
    rows = sites.projections(body)
    alt_deg = np.empty((len(sites), x.shape[1]))
    az_deg = np.empty_like(alt_deg) if want_azimuth else None
    for s, t in _blocks(*alt_deg.shape):
        east, north, up = rows[:, s] @ x[:, t]
        alt_deg[s, t] = altitude_deg(east, north, up)
        if want_azimuth:
            az_deg[s, t] = azimuth_deg(east, north)
    return alt_deg, az_deg


def altitude_deg(east, north, up):
    """Altitude of vectors, any shape. [deg]."""
    alt = np.arctan2(up, np.sqrt(east * east + north * north))
    alt *= 180.0 / np.pi
    return alt


def azimuth_deg(east, north):
    """Azimuth of vectors, any shape, in [0, 360). [deg]."""
    az = np.arctan2(east, north)
    az *= 180.0 / np.pi
    az += 360.0 * (az < 0.0)
    return np.where(az >= 360.0, 0.0, az)  # a negative angle too small to be taken from 360


def in_turn_deg(angle_deg):
    """Angles brought to [0, 360), any shape. [deg]."""
    turned = np.mod(angle_deg, 360.0)
    return np.where(turned == 360.0, 0.0, turned)  # the remainder of -1e-15
