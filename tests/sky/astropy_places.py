"""Places from astropy: another code, other constants, measured polar motion and Earth rotation, the same planetary ephemeris."""

import warnings
from contextlib import contextmanager

import erfa
import numpy as np
from astropy import coordinates, units
from astropy.time import Time
from astropy.utils import iers
from skyfield_places import EPHEMERIS_PATH

CORE_ICRS_DEG = (266.40499, -28.93617)  # Hipparcos, vol. 1, 1.5.3; astropy's own galactic frame is 0.025" off
LIGHT_KM_PER_S = 299792.458
AU_KM = 149597870.7


@contextmanager
def offline():
    """Earth rotation from the packaged table, ephemeris from the plugin's excerpt, and nothing from the net."""
    settings = iers.conf.set_temp("auto_download", False), iers.conf.set_temp("auto_max_age", None)
    with settings[0], settings[1], coordinates.solar_system_ephemeris.set(str(EPHEMERIS_PATH)), warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def location(lon_deg, lat_deg, height_m):
    return coordinates.EarthLocation.from_geodetic(lon_deg, lat_deg, height_m)


def frame(t_utc_s, site):
    """The horizon of a site or sites at moments; no refraction. Call within `offline`."""
    when = Time(np.floor(t_utc_s), np.asarray(t_utc_s) - np.floor(t_utc_s), format="unix", scale="utc")
    return coordinates.AltAz(obstime=when, location=site, pressure=0 * units.hPa)


def altaz(name, horizon):
    """True altitude and azimuth [deg] of `sun`, `moon` or `core`, arrays of times and sites one to one."""
    if name == "core":
        place = coordinates.SkyCoord(ra=CORE_ICRS_DEG[0] * units.deg, dec=CORE_ICRS_DEG[1] * units.deg)
    elif name == "sun":
        place = apparent_sun(horizon)
    else:
        place = coordinates.get_body(name, horizon.obstime, horizon.location)
    place = place.transform_to(horizon)
    return place.alt.deg, place.az.deg


def altaz_by_default(name, horizon):
    """The same by astropy's own shortest way: for measuring time, not for places."""
    if name == "core":
        place = coordinates.SkyCoord(ra=CORE_ICRS_DEG[0] * units.deg, dec=CORE_ICRS_DEG[1] * units.deg)
    else:
        place = coordinates.get_body(name, horizon.obstime, horizon.location)
    place = place.transform_to(horizon)
    return place.alt.deg, place.az.deg


def apparent_sun(horizon):
    """The Sun in topocentric Earth-fixed axes, light time and aberration put in by ERFA.

    astropy's own `get_body` bends the Sun's light by the Sun, a direction against itself, and lands up to 2" off.
    """
    when, site = horizon.obstime, horizon.location
    there, ground_speed = site.get_gcrs_posvel(when)
    earth, earth_speed = coordinates.get_body_barycentric_posvel("earth", when)
    observer_km = (earth + there).xyz.to_value("km")
    sun_km = coordinates.get_body_barycentric("sun", when).xyz.to_value("km") - observer_km
    for _ in range(2):
        light_s = np.linalg.norm(sun_km, axis=0) / LIGHT_KM_PER_S
        sun_km = coordinates.get_body_barycentric("sun", when - light_s * units.s).xyz.to_value("km") - observer_km
    distance_km = np.linalg.norm(sun_km, axis=0)
    beta = (earth_speed + ground_speed).xyz.to_value("km/s") / LIGHT_KM_PER_S
    seen = erfa.ab((sun_km / distance_km).T, beta.T, distance_km / AU_KM, np.sqrt(1.0 - (beta * beta).sum(axis=0)))
    gcrs = coordinates.GCRS(
        coordinates.CartesianRepresentation(*(seen.T * distance_km), unit="km"), obstime=when, obsgeoloc=there, obsgeovel=ground_speed
    )
    return gcrs.transform_to(coordinates.ITRS(obstime=when, location=site))


def plane(lon_deg, horizon):
    """True altitude and azimuth [deg] of points of the galactic plane, one horizon."""
    there = coordinates.SkyCoord(l=lon_deg * units.deg, b=np.zeros_like(lon_deg) * units.deg, frame="galactic").transform_to(horizon)
    return there.alt.deg, there.az.deg
