"""The conditions of an alignment evaluated at given moments from places alone, by their definitions: no crossings, no solver.

Each condition becomes a margin in degrees on the sky that is not negative while it holds. Places come from Skyfield, or, where a million of
them are wanted, from the plugin's own tables, which other tests hold against Skyfield.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np
from skyfield_places import Observer, galactic_star, icrs_star, kernel, target, times

from skyalidade.sky import bodies, horizontal, moonlight
from skyalidade.sky.tables import TimeTable

MOON_RADIUS_KM = 1737.4  # IAU working group on cartographic coordinates
STANDARD_P_HPA, STANDARD_T_C = 1010.0, 10.0

# What is customary for each body: half-width about the bearing, least altitude, highest Sun. [deg]
CUSTOMARY = {
    "core": (3.0, 10.0, -18.0),
    "arch": (5.0, 0.0, -18.0),
    "sun": (0.5, 0.0, None),
    "moon": (0.5, 0.0, None),
    "pole": (2.0, 0.0, -18.0),
    "star": (1.0, 0.0, -18.0),
    "galactic": (5.0, 10.0, -18.0),
}
ARCH_APEX_MAX_DEG = 60.0
STAR_ICRS_DEG = (80.0, 61.0)
GALACTIC_LON_DEG = 78.0


@dataclass(frozen=True)
class Pair:
    """A camera and what it looks at. [deg, m]."""

    lon_deg: float
    lat_deg: float
    height_m: float
    bearing_deg: float
    base_alt_deg: float
    top_alt_deg: float

    @property
    def noon_1970_s(self):
        """Mean solar noon of the first day of 1970. [s]."""
        return 43200.0 - 240.0 * self.lon_deg


@dataclass(frozen=True)
class Places:
    """True altitudes and azimuths by name, at the same moments. [deg]."""

    altaz: dict
    moon_semi_deg: np.ndarray
    lit: np.ndarray

    def take(self, index):
        return Places({name: (alt[index], az[index]) for name, (alt, az) in self.altaz.items()}, self.moon_semi_deg[index], self.lit[index])


class SkyfieldTimes:
    """Moments with what does not hang on the site, computed once."""

    def __init__(self, t_utc_s):
        self.t_utc_s = np.asarray(t_utc_s, float)
        self.skyfield = times(self.t_utc_s)
        earth = kernel()[399].at(self.skyfield)
        sun, moon = (earth.observe(kernel()[number]).apparent().position.km for number in (10, 301))
        to_sun = sun - moon
        cosine = -(moon * to_sun).sum(axis=0) / np.sqrt((moon * moon).sum(axis=0) * (to_sun * to_sun).sum(axis=0))
        self.lit = 0.5 + 0.5 * cosine


def by_skyfield(pair, moments):
    """Places over a pair's camera at `SkyfieldTimes`."""
    observer = Observer(pair.lon_deg, pair.lat_deg, pair.height_m, moments.skyfield)
    altaz, moon_km = {}, None
    for name in ("core", "galactic_y", "galactic_pole", "sun", "moon"):
        alt, az, distance_km = observer.altaz(target(name))
        altaz[name] = alt, az
        if name == "moon":
            moon_km = distance_km
    altaz["star"] = observer.altaz(icrs_star(*STAR_ICRS_DEG))[:2]
    altaz["galactic"] = observer.altaz(galactic_star(GALACTIC_LON_DEG, 0.0))[:2]
    altaz["pole"] = celestial_pole(pair, moments.lit.shape)
    return Places(altaz, np.degrees(np.arcsin(MOON_RADIUS_KM / moon_km)), moments.lit)


def celestial_pole(pair, shape):
    """The pole above the horizon, by definition."""
    return np.full(shape, abs(pair.lat_deg)), np.full(shape, 0.0 if pair.lat_deg >= 0 else 180.0)


PLUGIN_BODIES = {
    "core": bodies.CORE,
    "galactic_y": bodies.GALACTIC_Y,
    "galactic_pole": bodies.GALACTIC_POLE,
    "sun": bodies.SUN,
    "moon": bodies.MOON,
    "star": bodies.star(*STAR_ICRS_DEG),
    "galactic": bodies.on_galactic_plane(GALACTIC_LON_DEG),
}


def plugin_table(t_utc_s):
    """The plugin's own table of all bodies at moments."""
    return TimeTable(t_utc_s, PLUGIN_BODIES.values())


def by_plugin(pair, table):
    """The same places as `by_skyfield`, from the plugin's tables."""
    sites = horizontal.Sites(pair.lon_deg, pair.lat_deg, pair.height_m)
    altaz = {name: tuple(values[0] for values in horizontal.true_altaz(sites, table, body)) for name, body in PLUGIN_BODIES.items()}
    altaz["pole"] = celestial_pole(pair, table.t_utc_s.shape)
    moon_km = horizontal.topocentric(sites, table, bodies.MOON)[:, 0]
    lit = moonlight.lit_fraction(table.itrs(bodies.MOON), table.itrs(bodies.SUN))
    return Places(altaz, np.degrees(np.arcsin(MOON_RADIUS_KM / np.linalg.norm(moon_km, axis=0))), lit)


def seen(alt_true_deg, height_m, pressure_hPa=None, temperature_C=STANDARD_T_C):
    """Apparent altitude: Saemundsson 1986, fading from true -1 to -5 deg; the standard atmosphere if no pressure is given."""
    if pressure_hPa is None:
        pressure_hPa = STANDARD_P_HPA * (1.0 - 2.25577e-5 * height_m) ** 5.25588
    alt = np.maximum(alt_true_deg, -1.0)
    lift_arcmin = 1.02 / np.tan(np.radians(alt + 10.3 / (alt + 5.11)))
    lift_arcmin = lift_arcmin * pressure_hPa / STANDARD_P_HPA * (273.0 + STANDARD_T_C) / (273.0 + temperature_C)
    fade = np.clip((np.asarray(alt_true_deg) + 5.0) / 4.0, 0.0, 1.0)
    return alt_true_deg + np.maximum(lift_arcmin * fade, 0.0) / 60.0


def wrapped(angle_deg):
    """In [-180, 180)."""
    return (angle_deg + 180.0) % 360.0 - 180.0


def arch_top(places):
    """True altitude and azimuth of the plane's highest point: opposite its upper pole, as far from the zenith as that from the horizon."""
    alt, az = places.altaz["galactic_pole"]
    return 90.0 - np.abs(alt), np.where(alt >= 0.0, az + 180.0, az) % 360.0


def body_altaz(body, places):
    return arch_top(places) if body == "arch" else places.altaz[body]


def d_az_deg(body, places, pair):
    return wrapped(body_altaz(body, places)[1] - pair.bearing_deg)


def tilt_deg(places):
    """Angle of the plane to the horizontal at the core: the two other axes' parts along the vertical."""
    y, pole = (np.abs(np.sin(np.radians(places.altaz[name][0]))) for name in ("galactic_y", "galactic_pole"))
    return np.degrees(np.arctan2(y, pole))


@dataclass(frozen=True)
class Asked:
    """Conditions as a person gives them; None where the customary value holds."""

    az_tolerance_deg: Optional[float] = None
    alt_min_deg: Optional[float] = None
    alt_max_deg: Optional[float] = None
    gap_min_deg: Optional[float] = None
    gap_max_deg: Optional[float] = None
    tilt_min_deg: Optional[float] = None
    tilt_max_deg: Optional[float] = None
    apex_min_deg: Optional[float] = None
    apex_max_deg: Optional[float] = None
    core_alt_min_deg: float = 0.0
    sun_limit_deg: Optional[float] = None
    sun_min_deg: Optional[float] = None
    moon: str = "any"
    moon_lit_max: float = 0.25
    lit_min: Optional[float] = None
    lit_max: Optional[float] = None
    pressure_hPa: Optional[float] = None
    temperature_C: float = STANDARD_T_C


def margins(body, places, pair, asked):
    """Margin of each condition. [deg on the sky; `lit` as a share of the disc].

    Returns
    -------
    dict of str to ndarray
        Not negative while the condition holds.
    """

    def apparent(alt_true_deg):
        return seen(alt_true_deg, pair.height_m, asked.pressure_hPa, asked.temperature_C)

    tolerance_deg, alt_min_deg, sun_limit_deg = CUSTOMARY[body]
    tolerance_deg = tolerance_deg if asked.az_tolerance_deg is None else asked.az_tolerance_deg
    alt_min_deg = alt_min_deg if asked.alt_min_deg is None else asked.alt_min_deg
    apex_max_deg = ARCH_APEX_MAX_DEG if asked.apex_max_deg is None and body == "arch" else asked.apex_max_deg
    alt_true, _ = body_altaz(body, places)
    alt = apparent(alt_true)
    core_alt = apparent(places.altaz["core"][0])
    standing = core_alt if body == "arch" else alt
    apex_deg, _ = arch_top(places)
    sun_deg = places.altaz["sun"][0]
    # an arc of azimuth is smaller on the sky the higher the body (for the arch: the pole that gives its direction) stands
    level = np.cos(np.radians(places.altaz["galactic_pole"][0] if body == "arch" else alt_true))

    found = {"azimuth": (tolerance_deg - np.abs(d_az_deg(body, places, pair))) * level, "alt_min": standing - alt_min_deg}
    if body == "pole" and abs(pair.lat_deg) == 90.0:
        found["azimuth"] = np.full(alt.shape, -90.0)  # in the zenith, over no bearing
    if asked.alt_max_deg is not None:
        found["alt_max"] = asked.alt_max_deg - standing
    if body == "arch":
        found["core_alt_min"] = core_alt - asked.core_alt_min_deg
    if asked.gap_min_deg is not None:
        found["gap_min"] = alt - pair.top_alt_deg - asked.gap_min_deg
    if asked.gap_max_deg is not None:
        found["gap_max"] = asked.gap_max_deg - (alt - pair.top_alt_deg)
    if asked.apex_min_deg is not None:
        found["apex_min"] = apex_deg - asked.apex_min_deg
    if apex_max_deg is not None:
        found["apex_max"] = apex_max_deg - apex_deg
    if asked.tilt_min_deg is not None or asked.tilt_max_deg is not None:
        tilt = tilt_deg(places)
        axes = (places.altaz[name][0] for name in ("galactic_y", "galactic_pole"))
        size = np.hypot(*(np.sin(np.radians(alt)) for alt in axes))  # cosine of the core's altitude
        found["tilt_core_up"] = core_alt
        found["tilt_zenith"] = 89.0 - np.abs(places.altaz["core"][0])
        if asked.tilt_min_deg is not None:
            found["tilt_min"] = (tilt - asked.tilt_min_deg) * size
        if asked.tilt_max_deg is not None:
            found["tilt_max"] = (asked.tilt_max_deg - tilt) * size
    if body != "sun":
        limit_deg = sun_limit_deg if asked.sun_limit_deg is None else asked.sun_limit_deg
        if limit_deg is not None:
            found["sun_limit"] = limit_deg - sun_deg
        if asked.sun_min_deg is not None:
            found["sun_min"] = sun_deg - asked.sun_min_deg
    if body not in ("sun", "moon") and asked.moon != "any":
        down = -34.0 / 60.0 - places.moon_semi_deg - places.altaz["moon"][0]
        # lit share as if it were degrees: its sign counts, and its nearness is judged by name
        found["moon"] = down if asked.moon == "down" else np.maximum(down, asked.moon_lit_max - places.lit)
    if body == "moon" and asked.lit_min is not None:
        found["lit_min"] = places.lit - asked.lit_min
    if body == "moon" and asked.lit_max is not None:
        found["lit_max"] = asked.lit_max - places.lit
    return found


def least(found):
    """The margin of all conditions together."""
    return np.minimum.reduce(list(found.values()))
