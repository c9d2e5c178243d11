"""The outlook from standpoints: how high the subject's top stands, what the ground lets be seen of it, and the body over it.

Places are given by arrays (N,). Angles in degrees, heights in metres.
"""

from dataclasses import replace

import numpy as np

from ..ground import geodesic
from ..ground.curvature import REFRACTION_K
from ..sky.ephemeris import default_ephemeris
from ..sky.horizontal import Sites, altitude_deg
from . import circumstances
from .alignments import place_against
from .pairs import PairBlock
from .sightlines import FROM_DEM, Cameras, sightlines

PLACE_COLUMNS = ("subject", "lon_deg", "lat_deg", "bearing_deg", "dist_m", "lens_m", "z_m")


class Sky:
    """A body at moments.

    Parameters
    ----------
    target : Target
    t_utc_s : ndarray, shape (T,)
        [s of UTC]
    heavens : Heavens
        With all that a table tells, as `lattice.heavens_of` makes it.
    conditions : Conditions
        For the air.
    """

    def __init__(self, target, t_utc_s, heavens, conditions):
        self.target, self.t_utc_s, self.heavens, self.conditions = target, np.asarray(t_utc_s, dtype=float), heavens, conditions
        self._tt_s = default_ephemeris().tt_from_utc(self.t_utc_s)

    def columns(self, moment, lon_deg, lat_deg, height_m):
        """What a table tells of the body, the light and the band over places; height 0 where it is not known."""
        tt_s, height_m = self._tt_s[moment], np.where(np.isfinite(height_m), height_m, 0.0)
        sites, air = Sites(lon_deg, lat_deg, height_m), self._air(height_m)
        bodies = dict.fromkeys([*circumstances.NEEDED, self.target.body])
        vectors = {body: self.heavens.motion(body, sites).enu(np.arange(len(sites)), tt_s) for body in bodies}
        columns = circumstances.light_and_band(vectors, self.heavens.lit(tt_s), air)
        columns.update(circumstances.place_of(self.target, vectors, columns, air))
        return {**columns, "body": np.full(tt_s.size, self.target.id, dtype=object), "t_utc": self.t_utc_s[moment]}

    def altitude_deg(self, moment, lon_deg, lat_deg, height_m):
        """Apparent altitude of the body over places."""
        height_m = np.where(np.isfinite(height_m), height_m, 0.0)
        sites = Sites(lon_deg, lat_deg, height_m)
        alt_deg = altitude_deg(*self.heavens.motion(self.target.body, sites).enu(np.arange(len(sites)), self._tt_s[moment]))
        # The arch's top is as far from the zenith as the galactic pole from the horizon.
        return self._air(height_m).apparent(90.0 - np.abs(alt_deg) if self.target.is_arch else alt_deg)

    def _air(self, height_m):
        return circumstances.Air(height_m, self.conditions.pressure_hPa, self.conditions.temperature_C)


class Outlook:
    """How to look from standpoints.

    Parameters
    ----------
    subjects : plan.sightlines.Subjects
    relief : Relief, optional
    refraction_k : float
        Coefficient of terrestrial refraction.
    sky : Sky, optional
        Where a body is wanted.
    gap_min_deg, gap_max_deg : float, optional
        Body's centre over the subject's top.
    """

    def __init__(self, subjects, relief=None, refraction_k=REFRACTION_K, sky=None, gap_min_deg=None, gap_max_deg=None):
        self.subjects = replace(subjects, face_from_deg=np.nan, face_to_deg=np.nan)  # the search has seen to that
        self.relief, self.refraction_k, self.sky, self.gap_min_deg, self.gap_max_deg = relief, refraction_k, sky, gap_min_deg, gap_max_deg

    @property
    def has_gap(self):
        """Whether the body is to stand at a height over the subject's top."""
        return self.sky is not None and (self.gap_min_deg is not None or self.gap_max_deg is not None)

    def add_to(self, table, lens_m, z_m):
        """Add the subject's altitude, and with a body where it stands and the light, to standpoints.

        Parameters
        ----------
        table : dict
            As `Search.points` gives it.
        lens_m, z_m : ndarray, shape (N,)
            Lens above the ground; ground as drawn, nan where not known. [m]
        """
        table.update(lens_m=lens_m, z_m=z_m)
        seen = self._sightlines(*(table[name] for name in PLACE_COLUMNS), None)
        table.update({name: seen[name] for name in ("top_alt_deg", "base_alt_deg", "heights", "cam_z_m")})
        if self.sky is not None:
            table.update(self.sky.columns(table["moment"], table["lon_deg"], table["lat_deg"], table["cam_z_m"]))
            table["d_alt_deg"] = table["alt_deg"] - table["top_alt_deg"]
            table["place"] = place_against(table["alt_deg"], table["base_alt_deg"], table["top_alt_deg"])

    def add_ground(self, table):
        """Add what the ground lets be seen, `visible sight clear_m` and under a body `ground_deg`, to a table from `add_to`."""
        if self.relief is None or not table["moment"].size:
            return
        seen = self._sightlines(*(table[name] for name in PLACE_COLUMNS), self.relief)
        table.update({name: seen[name] for name in ("visible", "sight", "clear_m")})
        if self.sky is not None:
            lens_dem_m = self.relief.ground_m(table["lon_deg"], table["lat_deg"]) + table["lens_m"]
            table["ground_deg"] = self.relief.skyline(table["lon_deg"], table["lat_deg"], lens_dem_m, table["az_deg"]).alt_deg

    def is_within_gap(self, table):
        """Whether the body stands at a height over the subject's top that is asked, in a complete table."""
        within = np.ones(table["moment"].size, dtype=bool)
        if self.has_gap and self.gap_min_deg is not None:
            within &= table["d_alt_deg"] >= self.gap_min_deg
        if self.has_gap and self.gap_max_deg is not None:
            within &= table["d_alt_deg"] <= self.gap_max_deg
        return within

    def gap_deg(self, moment, subject, lon_deg, lat_deg, lens_m, z_m=np.nan, by_relief_alone=False):
        """Body's centre over the subject's top; nan, if asked, where the relief does not know the ground and does the subject's."""
        bearing, _, dist = geodesic.inverse(lon_deg, lat_deg, self.subjects.lon_deg[subject], self.subjects.lat_deg[subject])
        bearing = np.where(np.isfinite(bearing), bearing, 0.0)
        z_m, lens_m = np.broadcast_to(z_m, dist.shape), np.broadcast_to(lens_m, dist.shape)
        seen = self._sightlines(subject, lon_deg, lat_deg, bearing, dist, lens_m, z_m, None)
        gap_deg = self.sky.altitude_deg(moment, lon_deg, lat_deg, seen["cam_z_m"]) - seen["top_alt_deg"]
        if by_relief_alone:
            gap_deg[np.isfinite(self.subjects.dem_m[subject]) & (seen["heights"] != FROM_DEM)] = np.nan
        return gap_deg

    def gap_conditions(self, paths, lens_m):
        """The gap as conditions along paths, for `stretches.spans_within`; `lens_m` one a path. [m]."""

        def gap_deg(moment, subject, piece, u):
            return self.gap_deg(moment, subject, *paths.at(piece, u), lens_m[paths.path[piece]], paths.height_m(piece, u))

        limits = []
        if self.has_gap and self.gap_min_deg is not None:
            limits.append(lambda *place: gap_deg(*place) - self.gap_min_deg)
        if self.has_gap and self.gap_max_deg is not None:
            limits.append(lambda *place: self.gap_max_deg - gap_deg(*place))
        return limits

    def gap_holds(self, lens_m):
        """The gap as a condition on any ground, for `zones_of_ground.Zones.narrowed`."""

        def holds(subject, moment, lon_deg, lat_deg):
            gap_deg = self.gap_deg(moment, subject, lon_deg, lat_deg, lens_m)
            over = np.inf if self.gap_min_deg is None else gap_deg - self.gap_min_deg
            return np.minimum(over, np.inf if self.gap_max_deg is None else self.gap_max_deg - gap_deg)

        return holds

    def cell_m(self):
        """Shorter side of the relief's cells at the subjects, None without a relief. [m]."""
        if self.relief is None:
            return None
        cells = self.relief.terrain.cell_m(self.subjects.lon_deg, self.subjects.lat_deg)[0]
        return float(np.nanmin(cells)) if np.isfinite(cells).any() else None

    def _sightlines(self, subject, lon_deg, lat_deg, bearing_deg, dist_m, lens_m, z_m, relief):
        dem_m = np.nan if self.relief is None else self.relief.ground_m(lon_deg, lat_deg)
        cameras = Cameras(lon_deg, lat_deg, lens_m, z_m, dem_m)
        pairs = PairBlock(np.arange(np.size(lon_deg)), subject, dist_m, bearing_deg, np.full(np.shape(lon_deg), np.nan), {}, 1.0)
        return sightlines(cameras, self.subjects, pairs, self.refraction_k, relief)[0]
