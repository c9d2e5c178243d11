"""The view from a tripod: ground, subjects, band, Sun, Moon and the way of a body, as directions, and where they fall in the picture.

Directions are azimuths and apparent altitudes in degrees. A scene holds what one camera sees at one moment; what is drawn of it, and how,
is no matter of this module.
"""

from collections import Counter
from dataclasses import dataclass, replace

import numpy as np

from ..lens.frame import Frame
from ..lens.projection import azimuth_altitude, directions, from_camera, in_camera, in_picture
from ..sky import moonlight
from ..sky.bodies import CORE, GALACTIC_POLE, GALACTIC_Y, MOON, SUN
from ..sky.horizontal import Sites, topocentric
from ..sky.tables import TimeTable
from . import circumstances
from .framing import BAND_HALF_WIDTH_DEG

BEYOND_FRAME = 1.15  # the picture shows so much more than the frame
RANGES = (0.02, 0.08, 0.25, 1.0)  # of the terrain's radius: ground is shaded by which of these it lies within
AZIMUTHS = 900  # of a skyline across the picture
BAND_STEP_DEG = 1.0
MARK_S = 600.0  # between marks on the way of a body
LIMB_POINTS = 60
ZENITH = np.array([0.0, 0.0, 1.0])


@dataclass(frozen=True)
class Moment:
    """The sky over a site at a moment.

    Attributes
    ----------
    t_utc_s : float
    columns : dict of str to float
        What `circumstances` tells of the moment and of the target, by field name.
    band : ndarray, shape (3, 2, N)
        Azimuth and altitude along the galactic plane and the two edges of its bright band.
    core, sun, moon : tuple of float
        Azimuth and altitude.
    sun_semi_deg, moon_semi_deg, limb_deg : float
        Semidiameters; where the Moon's bright limb is, counter-clockwise from the upward.
    way : ndarray, shape (3, M)
        Moment [s of UTC], azimuth and altitude of the target before, at and after the moment, a mark each.
    """

    t_utc_s: float
    columns: dict
    band: np.ndarray
    core: tuple
    sun: tuple
    moon: tuple
    sun_semi_deg: float
    moon_semi_deg: float
    limb_deg: float
    way: np.ndarray

    @property
    def lit_part(self):
        """Azimuth and altitude of the outline of the Moon's lit part, shape (2, N)."""
        turn = np.linspace(-np.pi / 2.0, np.pi / 2.0, LIMB_POINTS)
        sunward = np.concatenate([np.cos(turn), (1.0 - 2.0 * self.columns["moon_lit"]) * np.cos(turn[::-1])])
        across = np.concatenate([np.sin(turn), np.sin(turn[::-1])])
        return on_disc(self.moon, self.moon_semi_deg, self.limb_deg, sunward, across)


def on_disc(centre, semi_deg, turn_deg, along, across):
    """Azimuth and altitude of places on a disc.

    Parameters
    ----------
    centre : (float, float)
        Azimuth and altitude. [deg]
    semi_deg : float
        Radius. [deg]
    turn_deg : float
        Direction of `along` on the disc, counter-clockwise from the upward. [deg]
    along, across : ndarray, shape (N,)
        In radii; `across` is a right angle counter-clockwise of `along`.

    Returns
    -------
    ndarray, shape (2, N)
        [deg]
    """
    turn, radius = np.radians(turn_deg), np.tan(np.radians(semi_deg))
    left = np.sin(turn) * along + np.cos(turn) * across
    up = np.cos(turn) * along - np.sin(turn) * across
    return np.array(azimuth_altitude(from_camera(np.stack([-radius * left, radius * up, np.ones_like(left)]), *centre)))


class Nights:
    """The sky at moments and around them, made once for all sites.

    Parameters
    ----------
    t_utc_s : array_like, shape (T,)
        [s of UTC]
    target : Target
    way_s : float
        How long before and after each moment the target's way is wanted. [s]
    pressure_hPa, temperature_C : float
        As in `circumstances.Air`.

    Raises
    ------
    ValueError
        Where a moment lies outside the ephemeris.
    """

    def __init__(self, t_utc_s, target, way_s=3600.0, pressure_hPa=None, temperature_C=10.0):
        self.t_utc_s, self.target = np.atleast_1d(np.asarray(t_utc_s, dtype=float)), target
        self._air = pressure_hPa, temperature_C
        marks = MARK_S * np.arange(-np.floor(way_s / MARK_S), np.floor(way_s / MARK_S) + 1.0)
        self._way_utc_s = self.t_utc_s[:, np.newaxis] + marks
        self._table = TimeTable(self.t_utc_s, dict.fromkeys([*circumstances.NEEDED, target.body]))
        around = [CORE, GALACTIC_Y, GALACTIC_POLE] if target.is_arch else [target.body]
        self._way_table = TimeTable(self._way_utc_s.ravel(), around)

    def over(self, lon_deg, lat_deg, height_m):
        """The moments over a site.

        Parameters
        ----------
        lon_deg, lat_deg, height_m : float

        Returns
        -------
        list of Moment, T of them
        """
        sites = Sites(lon_deg, lat_deg, height_m)
        air = circumstances.Air(sites.height_m[0], *self._air)
        vectors = {body: topocentric(sites, self._table, body)[:, 0] for body in self._table.bodies}
        lit = moonlight.lit_fraction(self._table.itrs(MOON), self._table.itrs(SUN))
        columns = circumstances.light_and_band(vectors, lit, air)
        columns.update(circumstances.place_of(self.target, vectors, columns, air))
        limb = moonlight.bright_limb_deg(vectors[MOON], vectors[SUN], ZENITH[:, np.newaxis])
        way = self._way(sites, air)
        return [
            Moment(
                float(t_utc_s),
                {name: column[i] for name, column in columns.items()},
                _band(*(vectors[body][:, i] for body in (CORE, GALACTIC_Y, GALACTIC_POLE)), air),
                *(_seen(vectors[body][:, i], air) for body in (CORE, SUN, MOON)),
                *(float(moonlight.semidiameter_deg(vectors[body][:, i], body.radius_km)) for body in (SUN, MOON)),
                float(limb[i]),
                np.stack([self._way_utc_s[i], *way[:, i]]),
            )
            for i, t_utc_s in enumerate(self.t_utc_s)
        ]

    def _way(self, sites, air):
        """Azimuth and altitude of the target at the marks, shape (2, T, M)."""
        vectors = {body: topocentric(sites, self._way_table, body)[:, 0] for body in self._way_table.bodies}
        if self.target.is_arch:
            lowest = vectors[GALACTIC_POLE] * np.where(vectors[GALACTIC_POLE][2] > 0.0, -1.0, 1.0)
            az_deg, pole_alt_deg = azimuth_altitude(lowest)
            alt_deg = 90.0 + pole_alt_deg  # the arch's top is as far from the zenith as the pole from the horizon
        else:
            az_deg, alt_deg = azimuth_altitude(vectors[self.target.body])
        return np.stack([az_deg, air.apparent(alt_deg)]).reshape(2, *self._way_utc_s.shape)


def _seen(vector, air):
    az_deg, alt_deg = azimuth_altitude(vector)
    return float(az_deg), float(air.apparent(alt_deg))


def _band(core, y, pole, air):
    """The plane and the edges of its band, from north round by longitude."""
    lon = np.radians(np.arange(-180.0, 180.0 + BAND_STEP_DEG, BAND_STEP_DEG))
    along = np.multiply.outer(core, np.cos(lon)) + np.multiply.outer(y, np.sin(lon))
    lines = []
    for lat_deg in (0.0, BAND_HALF_WIDTH_DEG, -BAND_HALF_WIDTH_DEG):
        lat = np.radians(lat_deg)
        az_deg, alt_deg = azimuth_altitude(np.cos(lat) * along + np.sin(lat) * pole[:, np.newaxis])
        lines.append((az_deg, air.apparent(alt_deg)))
    return np.array(lines)


@dataclass(frozen=True)
class Scene:
    """What a camera sees.

    Attributes
    ----------
    frame : Frame
    aim_az_deg, aim_alt_deg : float
        [deg]
    moment : Moment
    ground : list of (float, ndarray, ndarray)
        Far to near: a distance, the first the one to which the ground is known all across, and azimuth and altitude of the skyline of what
        lies within it; a single level one, of distance nan, where no terrain is known. [m], [deg]
    subjects : list of (str, ndarray, bool)
        Name; azimuth and altitude of the corners, shape (2, 4); whether the top is hidden.
    """

    frame: Frame
    aim_az_deg: float
    aim_alt_deg: float
    moment: Moment
    ground: list
    subjects: list

    @property
    def half_size(self):
        """Half the width and height of the picture at distance 1."""
        return BEYOND_FRAME * self.frame.half_width, BEYOND_FRAME * self.frame.half_height

    def at(self, az_deg, alt_deg):
        """Places of directions in the picture at distance 1, x and y on axis 0; nan where they are behind the camera."""
        return in_picture(in_camera(directions(az_deg, alt_deg), self.aim_az_deg, self.aim_alt_deg))

    @staticmethod
    def on_disc(centre, semi_deg, along, across):
        """Azimuth and altitude of places on a disc, as the function of that name, from the upward."""
        return on_disc(centre, semi_deg, 0.0, along, across)


def azimuths_across(frame, aim_az_deg, aim_alt_deg):
    """Azimuths from one side of a picture to the other; all round where it comes near the zenith or the nadir. [deg]."""
    width, height = BEYOND_FRAME * frame.half_width, BEYOND_FRAME * frame.half_height
    steepest = np.abs(aim_alt_deg) + np.degrees(np.arctan(height))
    if steepest >= 89.0:
        half = 180.0
    else:
        corners = from_camera(np.array([[width, width], [-height, height], [1.0, 1.0]]), 0.0, aim_alt_deg)
        half = float(np.max(azimuth_altitude(corners)[0]))
    return aim_az_deg + np.linspace(-half, half, AZIMUTHS)


def ground_of(relief, lon_deg, lat_deg, lens_dem_m, az_deg):
    """Skylines of the ground within several distances, far to near, as `Scene.ground` holds them.

    Parameters
    ----------
    relief : Relief or None
    lon_deg, lat_deg, lens_dem_m : float
        The lens, by the relief's heights; nan where they do not reach. [deg], [m]
    az_deg : ndarray, shape (N,)
        [deg]
    """
    if relief is None or not np.isfinite(lens_dem_m):
        return [(np.nan, az_deg, np.zeros_like(az_deg))]
    layers = []
    for share in RANGES[::-1]:
        reach_m = share * relief.radius_m
        near = relief if share == 1.0 else replace(relief, radius_m=reach_m, met=Counter())
        seen = near.skyline(np.full(az_deg.shape, lon_deg), np.full(az_deg.shape, lat_deg), lens_dem_m, az_deg % 360.0)
        layers.append((float(np.min(seen.reach_m)) if share == 1.0 else reach_m, az_deg, seen.alt_deg))
    return layers


def corners_of(lines):
    """Azimuth and altitude of the corners of subjects, shape (P, 2, 4): foot left and right, top right and left.

    Parameters
    ----------
    lines : dict of str to ndarray, shape (P,)
        Sightlines: `bearing_deg base_alt_deg top_alt_deg width_deg`.
    """
    half = np.radians(lines["width_deg"] / 2.0)
    corners = []
    for side, name in ((-1.0, "base_alt_deg"), (1.0, "base_alt_deg"), (1.0, "top_alt_deg"), (-1.0, "top_alt_deg")):
        alt_deg = np.degrees(np.arctan(np.tan(np.radians(lines[name])) * np.cos(half)))  # a corner is farther off than the middle
        corners.append(np.stack([lines["bearing_deg"] + side * np.degrees(half), alt_deg], axis=1))
    return np.stack(corners, axis=2)
