"""Shadow tracks: the places on the ground from which a body sits at a height over a subject's top, moment by moment.

Over a subject and at a moment all places from which the body stands over the subject lie on one line, outward from the subject and away
from the body. Along it the gap, body less top, is followed over the ground, and every place where it passes the one asked is solved. With a
gap of 0 that is where the tip of the shadow of the top falls, at the height of the lens. Angles in degrees, distances in metres.
"""

import numpy as np

from .outlook import Outlook
from .pairs import PairBlock
from .roots import roots
from .sightlines import Cameras, is_facing, sightlines
from .standpoints import NOT_FACING, Reach
from .zones_of_ground import Zones

ANY_DEG = 1.0  # half-width of the zone whose middle is followed; its size plays no part
SAMPLES = 400  # along a line, evenly in the logarithm, where no cell of an elevation model asks for more
LEAST_M = 0.1  # first sample
CELLS = 500_000  # samples at once
REACHED_DEG = 1e-4


class ShadowTrack:
    """Subjects and a body at moments.

    Parameters
    ----------
    subjects : plan.sightlines.Subjects
    aim : BodyBearing
    sky : Sky
        Of the same moments.
    lens_m : ndarray, shape (S,)
        Lens above the ground, one a subject. [m]
    gap_deg : float
    max_distance_m : float
    relief : Relief, optional
    refraction_k : float
    """

    def __init__(self, subjects, aim, sky, lens_m, gap_deg, max_distance_m, relief, refraction_k):
        self.outlook = Outlook(subjects, relief, refraction_k, sky)
        self.faces, self.aim, self.sky, self.relief, self.refraction_k = subjects, aim, sky, relief, refraction_k
        self.lens_m, self.gap_deg, self.max_distance_m = np.asarray(lens_m, dtype=float), gap_deg, max_distance_m

    def blocks(self, asked):
        """Crossings of all subjects and moments, block by block.

        Parameters
        ----------
        asked : ndarray of bool, shape (S, T)
            Moments that count for each subject.

        Yields
        ------
        table : dict of str to ndarray, shape (N,)
            As `crossings` gives it.
        left_out : dict of str to int
            Under bearings at which the subject is of no use.
        done : float
            Part of the work behind, 0 to 1.
        """
        subject, moment = np.nonzero(asked)
        samples = self._samples().size
        step = max(1, CELLS // samples)
        for first in range(0, subject.size, step):
            some = slice(first, first + step)
            yield (*self.crossings(subject[some], moment[some]), min(first + step, subject.size) / subject.size)

    def _samples(self):
        """Distances at which the gap is looked at; half a cell apart at most."""
        cell_m = self.outlook.cell_m()
        if cell_m is None:
            return np.geomspace(LEAST_M, self.max_distance_m, SAMPLES)
        count = max(int(np.ceil(self.max_distance_m / (0.5 * cell_m))), 2)
        near = np.geomspace(LEAST_M, 0.5 * cell_m, 20)[:-1]  # a low top casts its shadow close by
        return np.concatenate([near, np.linspace(0.5 * cell_m, self.max_distance_m, count)])

    def crossings(self, subject, moment):
        """Places outward from subjects at which the gap is the one asked.

        Parameters
        ----------
        subject, moment : ndarray of int, shape (L,)

        Returns
        -------
        table : dict of str to ndarray, shape (N,)
            `subject moment order lon_deg lat_deg dist_m bearing_deg z_m heights`, with a relief also `visible sight`, and what
            `Sky.columns` tells; by line, then outward. `order` is 1 for the first.
        left_out : dict of str to int
        """
        zones = Zones(self.outlook.subjects, self.aim, Reach(ANY_DEG, 0.0, self.max_distance_m), subject, moment)
        dist = self._samples()
        over = self._scan(zones, dist)
        known = np.isfinite(over)
        line, piece = np.nonzero(((over[:, 1:] >= 0.0) != (over[:, :-1] >= 0.0)) & known[:, 1:] & known[:, :-1])
        low, high = dist[piece], dist[piece + 1]

        def value(rows, at):
            lon, lat, _ = zones.place(line[rows], 0.5, at)
            over = self._over(zones, line[rows], lon, lat)
            return np.where(np.isfinite(over), over, -1.0)

        ends = [value(np.arange(line.size), at) for at in (low, high)]
        sure = (ends[0] >= 0.0) != (ends[1] >= 0.0)  # the scan may err by a hair where the gap only touches
        line, low, high = line[sure], low[sure], high[sure]
        found = roots(value, low, high, ends[0][sure], ends[1][sure], np.ones(line.size))
        reached = np.abs(value(np.arange(line.size), found)) < REACHED_DEG  # not so at the edge of what is known
        return self._table(zones, line[reached], found[reached])

    def _scan(self, zones, dist):
        """Gap less the one asked at samples along all lines, shape (L, samples)."""
        every = np.arange(zones.subject.size)
        lon, lat = zones.along(every, np.full(every.size, 0.5), dist)
        return self._over(zones, np.repeat(every, dist.size), lon.ravel(), lat.ravel()).reshape(lon.shape)

    def _over(self, zones, line, lon_deg, lat_deg):
        """Gap less the one asked at places of lines, nan where the ground is not known."""
        subject, moment = zones.subject[line], zones.moment[line]
        return self.outlook.gap_deg(moment, subject, lon_deg, lat_deg, self.lens_m[subject], by_relief_alone=True) - self.gap_deg

    def _table(self, zones, line, dist):
        lon, lat, _ = zones.place(line, 0.5, dist)
        subject, moment = zones.subject[line], zones.moment[line]
        bearing = self.aim.at(lon, lat, moment)  # the line is where the two are one
        facing = is_facing(bearing, self.faces.face_from_deg[subject], self.faces.face_to_deg[subject])
        line, dist, lon, lat, subject, moment, bearing = (values[facing] for values in (line, dist, lon, lat, subject, moment, bearing))
        first = np.searchsorted(line, line)
        lens_m = self.lens_m[subject]
        dem_m = np.full(line.size, np.nan) if self.relief is None else self.relief.ground_m(lon, lat)
        pairs = PairBlock(np.arange(line.size), subject, dist, bearing, np.full(line.size, np.nan), {}, 1.0)
        seen, _ = sightlines(Cameras(lon, lat, lens_m, np.nan, dem_m), self.outlook.subjects, pairs, self.refraction_k, self.relief)
        table = {
            "subject": subject,
            "moment": moment,
            "order": np.arange(line.size) - first + 1,
            "lon_deg": lon,
            "lat_deg": lat,
            "dist_m": dist,
            "bearing_deg": bearing,
            "z_m": np.where(seen["heights"] == "dem", dem_m, np.nan),
            "heights": seen["heights"],
            **{name: seen[name] for name in ("visible", "sight") if name in seen},
            **self.sky.columns(moment, lon, lat, seen["cam_z_m"]),
        }
        count = int((~facing).sum())
        return table, {NOT_FACING: count} if count else {}


def joined(table, steps):
    """Runs of first crossings of one subject at moments that follow each other: the lines of the track.

    Parameters
    ----------
    table : dict
        Rows with `subject`, `moment`, `order`, of all blocks, by subject and moment.
    steps : ndarray of int, shape (T,)
        Number of each moment on the steps of its run; a gap in it breaks a line.

    Returns
    -------
    list of ndarray of int
        Rows of each line, at least two.
    """
    first = np.flatnonzero(table["order"] == 1)
    if not first.size:
        return []
    subject, step = table["subject"][first], steps[table["moment"][first]]
    new = np.flatnonzero((subject[1:] != subject[:-1]) | (step[1:] != step[:-1] + 1)) + 1
    return [rows for rows in np.split(first, new) if rows.size > 1]
