"""When bodies cross planes fixed to a site: the one primitive behind every event.

"The body stands above an altitude" and "the body stands clockwise of an azimuth" are both `m . v - k |v| + c >= 0`, with v the topocentric
vector and m a direction fixed to the ground. As the Earth turns, m . v is a cosine of the body's hour angle with slowly changing terms: in
each turn it has one highest and one lowest value, the time is cut there, and a piece holds one crossing or none. Nothing is scanned, so
nothing short is missed.

Near a pole (altitudes) and for bearings near 90° and 270° at the equator the cosine is so small that slow terms rule; there a turn is cut
in eighths, and at the sign changes of the rate.

Rows are sites (or pairs), shape (R,). Times are seconds of TT since J2000.
"""

from dataclasses import dataclass

import numpy as np

from .arcs import Arcs
from .bodies import Body, PoleDirection
from .tables import TURN_RAD_PER_S

SMALL_SWING = 0.05  # of the cosine, relative to the distance: below it the slow terms may turn within a turn
CUT_RAD = 0.002  # a highest value missed by this hides a grazing pass of at most 0.4"
ROOT_S = 1e-4  # what may remain of a crossing's error: less than any body moves by 0.002"
UNMODELLED = 0.05  # share of the curvature that is not the cosine's: parallax, and the body's own motion
NEWTON_STEPS, ALL_STEPS = 12, 60


@dataclass(frozen=True)
class Plane:
    """Planes fixed to sites: m in each site's meridian frame, and the two constants; every array of shape (R,).

    Attributes
    ----------
    meridian, east, axis : ndarray
        Parts of m: away from the Earth's axis in the site's meridian, east, along the axis.
    k : ndarray
        Share of the distance that m . v must exceed.
    c_km : ndarray
        Constant; for limbs. [km]
    """

    meridian: np.ndarray
    east: np.ndarray
    axis: np.ndarray
    k: np.ndarray
    c_km: np.ndarray


def _plane(sites, east, north, up, k=0.0, c_km=0.0):
    parts = (up * sites.cos_lat - north * sites.sin_lat, east, up * sites.sin_lat + north * sites.cos_lat, k, c_km)
    return Plane(*(np.broadcast_to(part, (len(sites),)).astype(float) for part in parts))


def above(sites, alt_deg):
    """Holds while a body's centre stands above a geometric altitude, shape (R,) or (). [deg]."""
    return _plane(sites, 0.0, 0.0, 1.0, k=np.sin(np.radians(alt_deg)))


def limb_above(sites, alt_deg, radius_km):
    """Holds while the upper limb of a body stands above a geometric altitude. [deg, km]."""
    alt = np.radians(alt_deg)
    return _plane(sites, 0.0, 0.0, 1.0, k=np.sin(alt), c_km=radius_km * np.cos(alt))


def clockwise_of(sites, az_deg):
    """Holds while a body stands less than half a turn clockwise of an azimuth, shape (R,) or (). [deg]."""
    az = np.radians(az_deg)
    return _plane(sites, np.cos(az), -np.sin(az), 0.0)


def counterclockwise_of(sites, az_deg):
    """Holds while a body stands less than half a turn counter-clockwise of an azimuth, shape (R,) or (). [deg]."""
    az = np.radians(az_deg)
    return _plane(sites, -np.cos(az), np.sin(az), 0.0)


class Motion:
    """How a body moves over sites: its track, and the sites' places and speeds.

    Parameters
    ----------
    body : Body, FixedDirection or PoleDirection
    track : Track
        The body's.
    sites : Sites
        R of them.
    """

    def __init__(self, body, track, sites):
        self.track = track
        self.sites = sites
        self._moves = finite = isinstance(body, Body)
        polar = isinstance(body, PoleDirection)
        self._lon = np.radians(sites.lon_deg)
        self._meridian_km = sites.meridian_km * finite
        self._axial_km = sites.axial_km * finite
        self._aberration = sites.aberration * (not polar)
        self._flip = np.where(sites.lat_deg < 0.0, -1.0, 1.0) if polar else None
        x, y = track.nodes[:2]
        self._hour_angle_nodes = TURN_RAD_PER_S * track.nodes_tt_s - np.unwrap(np.arctan2(y, x))  # at Greenwich

    def hour_angle(self, tt_s):
        """Hour angle at Greenwich, counted on without end, to about 0.01°. [rad]."""
        return np.interp(tt_s, self.track.nodes_tt_s, self._hour_angle_nodes)

    def time_of_hour_angle(self, hour_angle):
        """When the hour angle at Greenwich has a value: the inverse of `hour_angle`. [s]."""
        return np.interp(hour_angle, self._hour_angle_nodes, self.track.nodes_tt_s)

    def meridian_frame(self, rows, tt_s, rates=False):
        """Topocentric vector in the site's meridian frame (meridian, east, axis), and its rate.

        Parameters
        ----------
        rows : ndarray of int
            Sites, broadcast with the times.
        tt_s : ndarray
            Moments. [s of TT]
        rates : bool

        Returns
        -------
        vector : tuple of three ndarray
            [km, or unit vectors]
        rate : tuple of three ndarray
            Only where `rates`. [per s]
        """
        angle = TURN_RAD_PER_S * tt_s + self._lon[rows]
        cos, sin = np.cos(angle), np.sin(angle)
        if rates:
            (x, y, z, r), (dx, dy, dz, _) = self.track.at(tt_s, rates=True)
        else:
            x, y, z, r = self.track.at(tt_s)
        if self._flip is not None:
            z = z * self._flip[rows]
        meridian, east = x * cos + y * sin, y * cos - x * sin
        vector = (meridian - self._meridian_km[rows], east + self._aberration[rows] * r, z - self._axial_km[rows])
        if not rates:
            return vector
        return vector, (TURN_RAD_PER_S * east + dx * cos + dy * sin, dy * cos - dx * sin - TURN_RAD_PER_S * meridian, dz)

    def enu(self, rows, tt_s):
        """Topocentric vectors east, north, up at moments, shape (3, ...); parameters as in `meridian_frame`."""
        meridian, east, axis = self.meridian_frame(rows, tt_s)
        sin_lat, cos_lat = self.sites.sin_lat[rows], self.sites.cos_lat[rows]
        return np.stack([east, cos_lat * axis - sin_lat * meridian, cos_lat * meridian + sin_lat * axis])

    def value(self, plane, rows, tt_s):
        """What must not be negative for the plane's condition to hold. [km, or share of a unit vector]."""
        meridian, east, axis = self.meridian_frame(rows, tt_s)
        value = plane.meridian[rows] * meridian + plane.east[rows] * east + plane.axis[rows] * axis
        k, c = plane.k[rows], plane.c_km[rows]
        if k.any():
            value -= k * np.sqrt(meridian * meridian + east * east + axis * axis)
        return value + c if c.any() else value

    def value_rate_swing(self, plane, rows, tt_s):
        """The value, its rate, and the part of it that turns with the hour angle."""
        (meridian, east, axis), (d_meridian, d_east, d_axis) = self.meridian_frame(rows, tt_s, rates=True)
        a, b, c, k = plane.meridian[rows], plane.east[rows], plane.axis[rows], plane.k[rows]
        swing = a * (meridian + self._meridian_km[rows]) + b * east
        value = a * meridian + b * east + c * axis + plane.c_km[rows]
        rate = a * d_meridian + b * d_east + c * d_axis
        if k.any():
            distance = np.sqrt(meridian * meridian + east * east + axis * axis)
            value -= k * distance
            rate -= k * (meridian * d_meridian + east * d_east + axis * d_axis) / distance
        return value, rate, swing

    def arcs(self, plane, low, high):
        """When the plane's condition holds, within spans.

        Parameters
        ----------
        plane : Plane
            R rows, as the sites.
        low, high : ndarray, shape (R,)
            Span of each row. [s of TT]

        Returns
        -------
        Arcs
        """
        swing = np.hypot(plane.meridian, plane.east)
        x, y, _, r = self.track.nodes
        small = swing * (np.hypot(x, y) / r).min() < SMALL_SWING
        if small.all() or not small.any():
            return self._arcs(plane, low, high, np.arange(len(low)), bool(small.all()) and len(small) > 0)
        parts = [self._arcs(plane, low, high, np.nonzero(small == kind)[0], kind) for kind in (False, True)]
        row, start, end = (np.concatenate([getattr(part, name) for part in parts]) for name in ("row", "start", "end"))
        order = np.argsort(row, kind="stable")
        return Arcs(row[order], start[order], end[order], low, high)

    def _arcs(self, plane, low, high, rows, small):
        edges = self._cuts(plane, low[rows], high[rows], rows, small)
        values = self.value(plane, rows[:, None], edges)
        inside = values >= 0.0
        line, piece = np.nonzero(inside[:, 1:] != inside[:, :-1])
        t_s = self.roots(plane, rows[line], edges[line, piece], edges[line, piece + 1], values[line, piece], values[line, piece + 1])
        entering = inside[line, piece + 1]

        # What holds at the start and each crossing must add up to what holds at the end.
        held = inside[:, 0] + np.bincount(line, np.where(entering, 1, -1), minlength=len(rows))
        if not np.array_equal(held, inside[:, -1]):
            raise AssertionError("the crossings of a plane do not add up over the span")

        every_row = np.arange(len(rows))
        starts = _in_order(every_row[inside[:, 0]], low[rows[inside[:, 0]]], line[entering], t_s[entering])
        ends = _in_order(line[~entering], t_s[~entering], every_row[inside[:, -1]], high[rows[inside[:, -1]]])
        return Arcs(rows[starts[0]], starts[1], ends[1], low, high)

    def _cuts(self, plane, low, high, rows, small):
        """Edges of pieces that hold one crossing or none, shape (rows, pieces + 1); pieces may be empty."""
        if self._flip is not None:
            return np.stack([low, high], axis=1)  # the pole does not move
        per_turn = 8 if small else 2
        phase = self._lon[rows] + np.arctan2(plane.east[rows], plane.meridian[rows])
        unit = 2.0 * np.pi / per_turn
        first = np.ceil((self.hour_angle(low) + phase) / unit)
        last = np.floor((self.hour_angle(high) + phase) / unit)
        count = int((last - first).max(initial=-1.0)) + 1
        numbers = first[:, None] + np.arange(count)
        cuts = self.time_of_hour_angle(unit * numbers - phase[:, None])
        low, high = low[:, None], high[:, None]
        if small:
            edges = np.concatenate([low, np.clip(cuts, low, high), high], axis=1)
            return self._with_turnings(plane, rows, edges)
        if self._moves:  # a fixed direction is highest and lowest where its hour angle puts it
            cuts = self._extremes(plane, rows, np.clip(cuts, low, high))
        edges = np.concatenate([low, np.clip(cuts, low, high), high], axis=1)
        return np.maximum.accumulate(edges, axis=1)  # where slow terms rule, highest and lowest meet and may pass each other

    def _extremes(self, plane, rows, cuts):
        """Highest and lowest values, from the moments at which the hour angle alone would put them."""
        rows = np.broadcast_to(rows[:, None], cuts.shape)
        _, rate, swing = self.value_rate_swing(plane, rows, cuts)
        step = np.arcsin(np.clip(rate / (TURN_RAD_PER_S * swing), -1.0, 1.0))
        cuts = cuts + step / TURN_RAD_PER_S
        for _ in range(3):
            far = np.abs(step) > CUT_RAD**0.5  # the error left is at most about the square of the step
            if not far.any():
                break
            _, rate, swing = self.value_rate_swing(plane, rows[far], cuts[far])
            step = np.zeros_like(cuts)
            step[far] = np.clip(rate / (TURN_RAD_PER_S * swing), -0.3, 0.3)
            cuts = cuts + step / TURN_RAD_PER_S
        return cuts

    def _with_turnings(self, plane, rows, edges):
        """Edges, and between them the moments at which the rate changes sign."""

        def rate_at(line, t_s):
            return self.value_rate_swing(plane, rows[line], t_s)[1]

        every_line = np.broadcast_to(np.arange(len(rows))[:, None], edges.shape)
        rising = rate_at(every_line, edges) >= 0.0
        turnings = edges[:, :-1].copy()
        line, piece = np.nonzero(rising[:, 1:] != rising[:, :-1])
        low, high = edges[line, piece], edges[line, piece + 1]
        rising_at_low = rising[line, piece]
        for _ in range(20):  # halves three hours to a hundredth of a second
            middle = 0.5 * (low + high)
            same = (rate_at(line, middle) >= 0.0) == rising_at_low
            low, high = np.where(same, middle, low), np.where(same, high, middle)
        turnings[line, piece] = 0.5 * (low + high)
        return np.sort(np.concatenate([edges, turnings], axis=1), axis=1)

    def roots(self, plane, rows, low, high, value_low, value_high):
        """The one crossing in each piece, from the cosine through the two values: steps to second order, kept inside the piece."""
        span = value_low - value_high
        share = np.arccos(np.clip(-(value_low + value_high) / np.where(span == 0.0, 1.0, span), -1.0, 1.0)) / np.pi
        t_s = low + share * (high - low)
        at_low = value_low >= 0.0
        low, high = low.copy(), high.copy()
        active = np.arange(len(t_s))
        for step_number in range(ALL_STEPS):
            now = t_s[active]
            value, rate, swing = self.value_rate_swing(plane, rows[active], now)
            same = (value >= 0.0) == at_low[active]
            low[active[same]] = now[same]
            high[active[~same]] = now[~same]
            a, b = low[active], high[active]
            middle = 0.5 * (a + b)
            with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
                step = -value / rate
                bend = 0.5 * TURN_RAD_PER_S**2 * swing / rate * step  # the cosine's second derivative is its negative
                newton = now + step * (1.0 + bend)
                left = np.abs(step) * (np.abs(bend) * (UNMODELLED + 2.0 * np.abs(bend)) + (TURN_RAD_PER_S * step) ** 2)
            trusted = (newton >= a) & (newton <= b) if step_number < NEWTON_STEPS else np.zeros(len(now), bool)
            t_s[active] = np.where(trusted, newton, middle)
            done = np.where(trusted, left < ROOT_S, b - a < ROOT_S)
            active = active[~done]
            if not len(active):
                return t_s
        raise AssertionError("a crossing of a plane was not found within its piece")


def _in_order(first_rows, first_times, second_rows, second_times):
    """Two lists of (row, time), each in order, merged by row; within a row the first list's come first."""
    row = np.concatenate([first_rows, second_rows])
    order = np.argsort(row, kind="stable")
    return row[order], np.concatenate([first_times, second_times])[order]
