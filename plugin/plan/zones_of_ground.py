"""Zones of ground: all places from which a subject is seen in the direction wanted, within tolerance, between two distances.

A place of a zone is named by its distance from the subject and its share of the way from one edge of the zone to the other, 0 at the edge
of least bearing. The edges are no geodesics: along them the bearing at the running place is what is wanted there. Angles in degrees,
distances in metres.
"""

from typing import NamedTuple

import numpy as np

from ..ground import geodesic
from .aims import Bearing
from .azimuths import offset_deg
from .standpoints import NEAREST_M

EDGE_M = 0.01  # how far a straight stroke of an outline may leave the edge
TURNS = 60  # of the search for a place, at most; each divides its error by Earth radius / distance, next to a pole by 1.5
POLE_PART = 0.4  # of the way to a pole, within which a bearing bounds a zone
PLACE_M = 1e-7
STRIPS = 400  # at most, across a zone that is narrowed
SAMPLES = 200  # along a strip of a zone, where no cell asks for more
KNOT_M = 250.0
HALVINGS = 16  # of half a cell: under a millimetre


class Rings(NamedTuple):
    """Outlines, arrays over all vertices; ring i is part of `zone[i]` and holds the vertices offsets[i] to offsets[i + 1]."""

    zone: np.ndarray
    lon_deg: np.ndarray
    lat_deg: np.ndarray
    offsets: np.ndarray


class Zones:
    """Zones of subjects at moments; Z of them.

    Parameters
    ----------
    subjects : plan.sightlines.Subjects
    aim : Bearing or BodyBearing
    reach : Reach
    subject, moment : array_like of int, shape (Z,)
    """

    def __init__(self, subjects, aim, reach, subject, moment):
        self.subjects, self.aim, self.reach = subjects, aim, reach
        self.subject, self.moment = np.asarray(subject, dtype=np.int64), np.asarray(moment, dtype=np.int64)

    def near_pole(self):
        """Which zones reach so near a pole that a bearing bounds no zone there.

        Places that have pole and subject under one angle lie on a circle through both, so that there are two of them in one distance, or
        none, beyond the pole. The azimuth of a body turns with the meridians, and has its zone anywhere.
        """
        if not isinstance(self.aim, Bearing):
            return np.zeros(self.subject.size, dtype=bool)
        lon, lat = self.subjects.lon_deg[self.subject], self.subjects.lat_deg[self.subject]
        _, _, to_pole_m = geodesic.inverse(lon, lat, lon, np.copysign(90.0, lat))
        return self.reach.max_distance_m > POLE_PART * to_pole_m

    def place(self, zone, share, dist_m, turn=0):
        """Places of zones.

        Parameters
        ----------
        zone : array_like of int, shape (N,)
        share, dist_m : array_like, shape (N,)
            From the edge of least bearing, 0, to the other, 1; from the subject. [m]
        turn : int
            Where a subject is of use between two bearings that leave two parts of a zone: which of them, -1, 0 or 1.

        Returns
        -------
        lon_deg, lat_deg : ndarray, shape (N,)
        width_deg : ndarray, shape (N,)
            From edge to edge, there; negative where this turn leaves nothing. [deg]
        """
        lon, lat, _, width_deg = self._solved(zone, share, dist_m, turn)
        return lon, lat, width_deg

    def along(self, zone, share, dist_m, turn=0):
        """Places of zones on lines outward.

        Parameters
        ----------
        zone, share : ndarray, shape (L,)
        dist_m : ndarray, shape (D,)
            Ascending. [m]
        turn : int
            As for `place`.

        Returns
        -------
        lon_deg, lat_deg : ndarray, shape (L, D)
            Laid exactly every `KNOT_M`; between, the direction from the subject is a straight function of the way, good to a millimetre.
        """
        knots = np.append(np.arange(0.0, dist_m[-1], KNOT_M) + NEAREST_M, dist_m[-1])
        back = self._solved(np.repeat(zone, knots.size), np.repeat(share, knots.size), np.tile(knots, zone.size), turn)[2]
        back = back.reshape(zone.size, knots.size)
        cell = np.clip(np.searchsorted(knots, dist_m, side="right") - 1, 0, knots.size - 2)
        part = (dist_m - knots[cell]) / (knots[cell + 1] - knots[cell])
        back = back[:, cell] + part * (back[:, cell + 1] - back[:, cell])
        subject = self.subject[zone][:, None]
        return geodesic.direct(self.subjects.lon_deg[subject], self.subjects.lat_deg[subject], back, dist_m)[:2]

    def _solved(self, zone, share, dist_m, turn):
        zone, share, dist_m = np.broadcast_arrays(zone, share, dist_m)
        subject, moment = self.subject[zone], self.moment[zone]
        lon0, lat0 = self.subjects.lon_deg[subject], self.subjects.lat_deg[subject]
        back = self.aim.at(lon0, lat0, moment) + 180.0
        for _ in range(TURNS):
            lon, lat, bearing = geodesic.direct(lon0, lat0, back, dist_m)
            wanted = self.aim.at(lon, lat, moment)
            low, high = self._edges(subject, wanted, turn)
            off = offset_deg(bearing, wanted + low + share * np.maximum(high - low, 0.0))
            back = back - off
            if not off.size or (np.radians(np.abs(off)) * dist_m).max() < PLACE_M:
                break
        return lon, lat, back, high - low

    def _edges(self, subject, wanted, turn):
        """Edges of zones about the directions wanted, cut to where the subject is of use."""
        start, end = self.subjects.face_from_deg[subject], self.subjects.face_to_deg[subject]
        tolerance = np.full(wanted.shape, self.reach.tolerance_deg)
        all_round = ~np.isfinite(start) | (np.abs(end - start) >= 360.0)
        middle = offset_deg(start + 0.5 * ((end - start) % 360.0), wanted) + 360.0 * turn
        half = 0.5 * ((end - start) % 360.0)
        low, high = np.maximum(-tolerance, middle - half), np.minimum(tolerance, middle + half)
        whole = 1.0 if turn == 0 else -1.0
        return np.where(all_round, -tolerance * whole, low), np.where(all_round, tolerance * whole, high)

    def rings(self):
        """Outlines of all zones, some in two parts.

        Returns
        -------
        Rings
        """
        count = self.subject.size
        every = np.arange(count)
        parts = []
        for turn in (-1, 0, 1):
            zone = every[self.place(every, 0.5, self._middle_m(), turn)[2] > 0.0] if count else every
            if zone.size:
                parts.append(self._outlines(zone, 0.0, 1.0, self._least_m(), self.reach.max_distance_m, turn))
        return _together(parts)

    def narrowed(self, holds, cell_m=None, go_on=None):
        """Outlines of the parts of zones in which a condition holds.

        Parameters
        ----------
        holds : callable
            `holds(subject, moment, lon_deg, lat_deg)`, arrays (N,): not negative where the condition holds.
        cell_m : float, optional
            Ground on which it hangs changes over such lengths. [m]
        go_on : callable, optional
            Asked now and then; after a False from it no more is looked at.

        Returns
        -------
        Rings
            Strips side by side, no wider than a cell where they end; to be put together.
        """
        parts = []
        span_m = self.reach.max_distance_m - self._least_m()
        step_m = span_m / SAMPLES if cell_m is None else min(0.5 * cell_m, span_m / 2.0)
        width_m = 2.0 * np.radians(self.reach.tolerance_deg) * self.reach.max_distance_m
        strips = int(np.clip(np.ceil(width_m / (cell_m or width_m)), 1, STRIPS))
        dist = self._least_m() + np.minimum(step_m * np.arange(int(np.ceil(span_m / step_m)) + 1), span_m)
        for turn in (-1, 0, 1):
            for zone in range(self.subject.size):
                if go_on is not None and go_on() is False:
                    return _together(parts)
                if self.place([zone], 0.5, self._middle_m(), turn)[2][0] > 0.0:
                    parts += self._strips(zone, turn, strips, dist, holds)
        return _together(parts)

    def _strips(self, zone, turn, strips, dist, holds):
        """Pieces of the strips of one zone."""
        share = (np.arange(strips) + 0.5) / strips

        def held(lon, lat):
            return holds(np.full(lon.size, self.subject[zone]), np.full(lon.size, self.moment[zone]), lon, lat)

        def value(share, dist_m):
            return held(*self.place(np.full(share.size, zone), share, dist_m, turn)[:2])

        lon, lat = self.along(np.full(strips, zone), share, dist, turn)
        grid = held(lon.ravel(), lat.ravel()).reshape(lon.shape)
        inside = np.concatenate([np.zeros((strips, 1), bool), grid >= 0.0, np.zeros((strips, 1), bool)], axis=1)
        strip, begin = np.nonzero(inside[:, 1:] & ~inside[:, :-1])
        _, end = np.nonzero(inside[:, :-1] & ~inside[:, 1:])
        outside, inward = np.concatenate([begin - 1, end]), np.concatenate([begin, end - 1])
        near, far = np.split(self._edge_between(value, np.tile(share[strip], 2), dist, outside, inward), 2)
        kept = far > near
        strip, near, far = strip[kept], near[kept], far[kept]
        return [self._outlines(np.full(strip.size, zone), strip / strips, (strip + 1) / strips, near, far, turn)] if strip.size else []

    @staticmethod
    def _edge_between(value, share, dist, outside, inside):
        """Distance at which a condition begins to hold, between a sample where it does not and the next where it does."""
        there = (outside >= 0) & (outside < dist.size)
        low, high = dist[np.clip(outside, 0, dist.size - 1)], dist[inside]
        low = np.where(there, low, high)
        for _ in range(HALVINGS):
            middle = 0.5 * (low + high)
            held = value(share, middle) >= 0.0 if share.size else np.zeros(0, bool)
            low, high = np.where(held, low, middle), np.where(held, middle, high)
        return high

    def _least_m(self):
        return max(self.reach.min_distance_m, NEAREST_M)

    def _middle_m(self):
        return 0.5 * (self._least_m() + self.reach.max_distance_m)

    def _outlines(self, zone, share0, share1, near_m, far_m, turn):
        """Outlines between two shares and two distances, one for each of some zones."""
        share0, share1, near_m, far_m = (np.broadcast_to(values, zone.shape)[:, None] for values in (share0, share1, near_m, far_m))
        bend = 1.0 + np.abs(np.tan(np.radians(self.subjects.lat_deg[self.subject[zone]]))).max()
        length_m = float((far_m - near_m).max())
        along = np.linspace(0.0, 1.0, 1 + max(1, int(np.ceil(length_m * np.sqrt(bend / (8.0 * geodesic.EARTH_RADIUS_M * EDGE_M))))))
        angle = np.radians(2.0 * self.reach.tolerance_deg) * float((share1 - share0).max())
        across, across_near = (
            np.linspace(0.0, 1.0, 1 + max(1, int(np.ceil(angle / np.sqrt(8.0 * EDGE_M / float(dist_m.max()))))))
            for dist_m in (far_m, near_m)
        )
        out = near_m + along * (far_m - near_m)
        over, over_near = (share0 + part * (share1 - share0) for part in (across, across_near))
        legs = [
            (np.broadcast_to(share0, out.shape), out),
            (over[:, 1:], np.broadcast_to(far_m, over[:, 1:].shape)),
            (np.broadcast_to(share1, out.shape)[:, 1:], out[:, -2::-1]),
            (over_near[:, -2:0:-1], np.broadcast_to(near_m, over_near[:, 1:-1].shape)),
        ]
        share, dist = (np.concatenate([leg[side] for leg in legs], axis=1) for side in (0, 1))
        lon, lat, _ = self.place(np.repeat(zone, share.shape[1]), share.ravel(), dist.ravel(), turn)
        return Rings(zone, lon, lat, np.arange(zone.size + 1) * share.shape[1])


def _together(parts):
    if not parts:
        return Rings(np.zeros(0, dtype=np.int64), np.zeros(0), np.zeros(0), np.zeros(1, dtype=np.int64))
    offsets = [0]
    for part in parts:
        offsets.extend((offsets[-1] + part.offsets[1:]).tolist())
    zone, lon, lat = (np.concatenate([getattr(part, name) for part in parts]) for name in ("zone", "lon_deg", "lat_deg"))
    return Rings(zone, lon, lat, np.array(offsets))
