"""What can stand in the sky: Sun, Moon, the celestial pole, and fixed directions such as the galactic core.

The galactic system is the IAU's of 1958 as the Hipparcos mission fixed it in ICRS (ESA SP-1200, vol. 1, section 1.5.3): pole at right
ascension 192.85948°, declination 27.12825°, galactic longitude of the celestial pole 122.93192°. "Core" is l = 0, b = 0 of that system; the
radio source Sgr A* (Reid and Brunthaler 2004) stands 0.072° from it, a seventh of the Moon's width.
"""

from dataclasses import dataclass

import numpy as np

from ..words import Sentence

GALACTIC_POLE_RA_DEG = 192.85948
GALACTIC_POLE_DEC_DEG = 27.12825
CELESTIAL_POLE_GALACTIC_LON_DEG = 122.93192

SUN_RADIUS_KM = 695700.0  # IAU 2015 resolution B3, nominal
MOON_RADIUS_KM = 1737.4  # IAU working group on cartographic coordinates 2015, mean


@dataclass(frozen=True)
class Body:
    """A body that moves: found in the ephemeris.

    Attributes
    ----------
    name : str
    target : int
        SPK number.
    radius_km : float
    step_days : float
        Spacing of interpolation nodes at which cubics stay within 0.005". [d]
    """

    name: str
    target: int
    radius_km: float
    step_days: float


@dataclass(frozen=True)
class FixedDirection:
    """A direction fixed among the stars.

    Attributes
    ----------
    name : str
    ra_deg, dec_deg : float
        ICRS. [deg]
    """

    name: str
    ra_deg: float
    dec_deg: float

    step_days = 1.0
    radius_km = 0.0


@dataclass(frozen=True)
class PoleDirection:
    """The north end of the axis on which the Earth turns; sites south of the equator look at its other end."""

    name: str = "pole"

    step_days = 1.0
    radius_km = 0.0


def _galactic_axes():
    """Rows toward (l, b) = (0, 0), (90, 0) and the pole, as ICRS unit vectors, shape (3, 3)."""
    ra, dec, lon = np.radians([GALACTIC_POLE_RA_DEG, GALACTIC_POLE_DEC_DEG, CELESTIAL_POLE_GALACTIC_LON_DEG])
    pole = np.array([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])
    toward_celestial_pole = np.array([0.0, 0.0, 1.0]) - np.sin(dec) * pole  # projected on the plane: that is longitude 122.9°
    toward_celestial_pole /= np.linalg.norm(toward_celestial_pole)
    ahead = np.cross(pole, toward_celestial_pole)
    core = np.cos(lon) * toward_celestial_pole - np.sin(lon) * ahead
    return np.array([core, np.cross(pole, core), pole])


GALACTIC_AXES = _galactic_axes()


def _fixed(name, vector):
    x, y, z = vector
    return FixedDirection(name, float(np.degrees(np.arctan2(y, x)) % 360.0), float(np.degrees(np.arctan2(z, np.hypot(x, y)))))


def on_galactic_plane(lon_deg):
    """The place on the galactic plane at a galactic longitude. [deg]."""
    lon = np.radians(lon_deg)
    return _fixed("galactic", np.cos(lon) * GALACTIC_AXES[0] + np.sin(lon) * GALACTIC_AXES[1])


def star(ra_deg, dec_deg):
    """A fixed place given in ICRS.

    Parameters
    ----------
    ra_deg, dec_deg : float
        Right ascension and declination. [deg]

    Raises
    ------
    ValueError
        Where the declination lies beyond the poles or a number is not finite.
    """
    if not (np.isfinite(ra_deg) and -90.0 <= dec_deg <= 90.0):
        raise ValueError(
            Sentence(
                "There is no place at right ascension {ra}°, declination {dec}°: declination runs from -90 to 90.", ra=ra_deg, dec=dec_deg
            )
        )
    return FixedDirection("star", float(ra_deg) % 360.0, float(dec_deg))


SUN = Body("sun", 10, SUN_RADIUS_KM, step_days=1.0)
MOON = Body("moon", 301, MOON_RADIUS_KM, step_days=0.125)
POLE = PoleDirection()
CORE = _fixed("core", GALACTIC_AXES[0])
GALACTIC_Y = _fixed("galactic y", GALACTIC_AXES[1])
GALACTIC_POLE = _fixed("galactic pole", GALACTIC_AXES[2])
