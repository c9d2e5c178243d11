"""Magnetic declination by the World Magnetic Model 2025: what a compass needle says of north.

Degrees, metres, decimal years; arguments broadcast. Declination is counted from true north, positive where the needle points east of it.
The model is good to about half a degree over most of the Earth; rocks, iron and the Sun's weather are not in it.
"""

import functools
from pathlib import Path
from typing import NamedTuple

import numpy as np

from ..words import Sentence
from .curvature import ECCENTRICITY2, EQUATOR_M

COEFFICIENTS_PATH = Path(__file__).parent.parent / "data" / "wmm2025.cof"
SPAN_YEARS = 5.0  # for which a model's yearly changes are published
REFERENCE_RADIUS_M = 6371200.0  # of geomagnetism, a convention
BLACKOUT_NT = 2000.0  # horizontal intensity under which the model's authors call compasses unreliable
CAUTION_NT = 6000.0  # and under which they ask for caution
LEAST_DEG = 1e-6  # from the axis, 0.1 m: at a pole itself the formulas divide by 0
BLOCK = 8192  # places taken at once, to bound memory


class Model(NamedTuple):
    """Gauss coefficients g, h [nT] and their yearly changes at `epoch`; arrays (degree + 1, degree + 1) by degree and order."""

    name: str
    epoch: float
    g: np.ndarray
    h: np.ndarray
    g_change: np.ndarray
    h_change: np.ndarray


class Field(NamedTuple):
    """The magnetic field at places: its parts, the part that turns a compass needle, and the direction of that one."""

    north_nT: np.ndarray
    east_nT: np.ndarray
    down_nT: np.ndarray
    horizontal_nT: np.ndarray
    declination_deg: np.ndarray


def within_model(decimal_year):
    """Whether the model covers a date.

    Parameters
    ----------
    decimal_year : array_like
        Such as 2026.5.

    Returns
    -------
    ndarray of bool
        True from 2025.0 to 2030.0, both included.
    """
    year = np.asarray(decimal_year, dtype=float)
    epoch = model().epoch
    return (year >= epoch) & (year <= epoch + SPAN_YEARS)


def field(lon_deg, lat_deg, height_m, decimal_year):
    """Magnetic field of the Earth, as far as it changes slowly and over long distances.

    Parameters
    ----------
    lon_deg, lat_deg : array_like
        Places; at a pole the longitude tells which way north is. [deg]
    height_m : array_like
        Above the WGS 84 ellipsoid; above the sea will do, 100 m change nothing. [m]
    decimal_year : array_like
        When.

    Returns
    -------
    Field
        nan outside the years of the model, and where an argument is nan.

    Raises
    ------
    ValueError
        A latitude lies beyond 90 deg.

    Notes
    -----
    NOAA National Centers for Environmental Information and British Geological Survey, The US/UK World Magnetic Model for 2025-2030, 2024:
    spherical harmonics to degree 12, each coefficient changing evenly with time.
    """
    values = np.broadcast_arrays(*(np.asarray(value, dtype=float) for value in (lon_deg, lat_deg, height_m, decimal_year)))
    lon, lat, height, year = (value.ravel() for value in values)
    beyond = np.abs(lat) > 90.0
    if beyond.any():
        raise ValueError(
            Sentence(
                "{n} of {total} latitudes lie beyond 90°: give coordinates as longitude, then latitude, in degrees.",
                n=int(beyond.sum()),
                total=lat.size,
            )
        )
    parts = np.empty((3, lon.size))
    for start in range(0, lon.size, BLOCK):
        block = slice(start, start + BLOCK)
        parts[:, block] = _field(model(), lon[block], lat[block], height[block], year[block])
    north, east, down = np.where(within_model(year), parts, np.nan).reshape(3, *values[0].shape)
    return Field(north, east, down, np.hypot(north, east), np.degrees(np.arctan2(east, north)))


def declination_deg(lon_deg, lat_deg, height_m, decimal_year):
    """Angle from true north to magnetic north.

    Parameters
    ----------
    lon_deg, lat_deg : array_like
        Places. [deg]
    height_m : array_like
        Above the WGS 84 ellipsoid, or sea. [m]
    decimal_year : array_like
        When.

    Returns
    -------
    ndarray
        Positive where the needle points east of true north; nan outside the years of the model (`within_model` tells). [deg]

    Raises
    ------
    ValueError
        A latitude lies beyond 90 deg.
    """
    return field(lon_deg, lat_deg, height_m, decimal_year).declination_deg


def compass_zone(horizontal_nT):
    """Whether a compass can be trusted.

    Parameters
    ----------
    horizontal_nT : array_like
        Horizontal part of the field. [nT]

    Returns
    -------
    ndarray of object
        `blackout` below 2000 nT, around the magnetic poles: the needle is of no use; `caution` below 6000 nT: it may err by degrees; None
        elsewhere, and where the field is nan.
    """
    strength = np.asarray(horizontal_nT, dtype=float)
    return np.where(strength < BLACKOUT_NT, "blackout", np.where(strength < CAUTION_NT, "caution", None))


def magnetic_bearing(bearing_deg, declination_deg):
    """What a compass shows for a true bearing.

    Parameters
    ----------
    bearing_deg : array_like
        From true north. [deg]
    declination_deg : array_like
        East positive. [deg]

    Returns
    -------
    ndarray
        From magnetic north, 0 <= bearing < 360. [deg]
    """
    turned = np.mod(np.asarray(bearing_deg, dtype=float) - declination_deg, 360.0)
    return np.where(turned == 360.0, 0.0, turned)  # what a tiny negative angle is rounded to


def decimal_year(date):
    """Calendar dates as years with a fraction.

    Parameters
    ----------
    date : array_like of datetime64, or datetime.date
        Such as 2026-07-02.

    Returns
    -------
    ndarray
        Such as 2026.498630: the share of the year that is over when the day, or moment, begins; nan for NaT.
    """
    moments = np.asarray(date, dtype="datetime64[us]")
    years = moments.astype("datetime64[Y]")
    begins, ends = years.astype("datetime64[us]"), (years + 1).astype("datetime64[us]")
    return years.astype(int) + 1970 + (moments - begins) / (ends - begins)


@functools.lru_cache(maxsize=1)
def model():
    """The model that comes with the plugin.

    Returns
    -------
    Model
    """
    lines = COEFFICIENTS_PATH.read_text(encoding="ascii").splitlines()
    epoch, name, _ = lines[0].split()
    rows = [[float(word) for word in line.split()] for line in lines[1:] if not line.startswith("9999")]
    degree, order, *columns = np.array(rows).T
    tables = np.zeros((4, int(degree.max()) + 1, int(degree.max()) + 1))
    tables[:, degree.astype(int), order.astype(int)] = columns
    return Model(name, float(epoch), *tables)


def _field(model, lon, lat, height, year):
    """Field toward north, east, down (3, S)."""
    phi = np.radians(np.clip(lat, LEAST_DEG - 90.0, 90.0 - LEAST_DEG))
    prime_vertical_m = EQUATOR_M / np.sqrt(1.0 - ECCENTRICITY2 * np.sin(phi) ** 2)
    across = (prime_vertical_m + height) * np.cos(phi)
    along = (prime_vertical_m * (1.0 - ECCENTRICITY2) + height) * np.sin(phi)
    radius = np.hypot(across, along)
    legendre, slope = _legendre(along / radius, across / radius, len(model.g))
    turn = np.arange(len(model.g))[:, np.newaxis] * np.radians(lon)
    cos, sin = np.cos(turn), np.sin(turn)
    north, east, down = np.zeros((3, lon.size))
    for n in range(1, len(model.g)):
        m = np.arange(n + 1)[:, np.newaxis]
        g = model.g[n, m] + model.g_change[n, m] * (year - model.epoch)
        h = model.h[n, m] + model.h_change[n, m] * (year - model.epoch)
        wave = g * cos[: n + 1] + h * sin[: n + 1]
        wave_slope = m * (h * cos[: n + 1] - g * sin[: n + 1])
        fade = (REFERENCE_RADIUS_M / radius) ** (n + 2)
        north -= fade * (wave * slope[n, : n + 1]).sum(axis=0)
        east -= fade * (wave_slope * legendre[n, : n + 1]).sum(axis=0) * radius / across
        down -= fade * (n + 1) * (wave * legendre[n, : n + 1]).sum(axis=0)
    tilt = np.arctan2(along, across) - phi  # from the geodetic vertical to the geocentric one
    return np.stack([north * np.cos(tilt) - down * np.sin(tilt), east, north * np.sin(tilt) + down * np.cos(tilt)])


def _legendre(sin, cos, size):
    """Schmidt semi-normalised Legendre functions of a latitude, and their slopes, by degree and order (size, size, S)."""
    legendre, slope = np.zeros((2, size, size, sin.size))
    legendre[0, 0] = 1.0
    for n in range(1, size):
        step = 1.0 if n == 1 else np.sqrt(1.0 - 0.5 / n)
        legendre[n, n] = step * cos * legendre[n - 1, n - 1]
        slope[n, n] = step * (cos * slope[n - 1, n - 1] - sin * legendre[n - 1, n - 1])
        m = np.arange(n)[:, np.newaxis]
        last, before = (2 * n - 1) / np.sqrt(n**2 - m**2), np.sqrt(((n - 1) ** 2 - m**2) / (n**2 - m**2))  # at n = 1 the latter is 0
        legendre[n, :n] = last * sin * legendre[n - 1, :n] - before * legendre[n - 2, :n]
        slope[n, :n] = last * (sin * slope[n - 1, :n] + cos * legendre[n - 1, :n]) - before * slope[n - 2, :n]
    return legendre, slope
