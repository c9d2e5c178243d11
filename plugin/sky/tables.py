"""Where bodies stand in Earth-fixed axes, computed once for all sites: as smooth tracks over a span, or at a list of times.

Vectors are apparent and geocentric: light time, aberration by the Earth's motion and, for fixed directions, deflection of light are in; the
observer's place and the diurnal aberration are added per site. Vectors put x, y, z, r on axis 0; r is the length. Moving bodies are in km,
fixed directions are unit vectors.

A track is kept in the *turning frame*: Earth-fixed axes turned back by a uniform rotation (`TURN_RAD_PER_S`). There, bodies move slowly and
a cubic through four nodes is enough; the turning itself is exact. Polar motion (under 0.6") is left out, as Skyfield does by default.
"""

import numpy as np
from skyfield.api import Star
from skyfield.constants import C_AUDAY

from .bodies import Body, FixedDirection
from .ephemeris import DAY_S, default_ephemeris

TURN_RAD_PER_S = 2.0 * np.pi * 1.00273790935 / DAY_S  # mean sidereal rate; what is left is part of the tracks
NODES_BEYOND = 2
CHUNK_TIMES = 2000  # moments that go through the series of nutation and ephemeris at once: 60 years of them would take half a gigabyte


class Track:
    """Piecewise cubics of several slow quantities over evenly spaced nodes.

    Parameters
    ----------
    first_tt_s, step_s : float
        First node and spacing. [s]
    values : ndarray, shape (quantities, nodes)
        Each interval takes the cubic through its two nodes and the next on either side; the first and last interval are not used.
    """

    def __init__(self, first_tt_s, step_s, values):
        before, left, right, after = (values[:, i : values.shape[1] - 3 + i] for i in range(4))
        cubics = np.stack(
            [
                left,
                right - left / 2.0 - before / 3.0 - after / 6.0,
                (before + right) / 2.0 - left,
                (after - before) / 6.0 + (left - right) / 2.0,
            ]
        )
        self._cubics = np.ascontiguousarray(cubics)  # shape (4, quantities, intervals)
        self._first_tt_s = first_tt_s + step_s  # of the first usable interval
        self._step_s = step_s
        self._made_from = (first_tt_s, step_s, values)
        self.nodes_tt_s = self._first_tt_s + step_s * np.arange(cubics.shape[2] + 1)
        self.nodes = values[:, 1:-1]

    def plus(self, other, share, other_share):
        """Track of a weighted sum of two directions; `r` is the length of the sum."""
        first_tt_s, step_s, values = self._made_from
        x = share * values[:3] + other_share * other._made_from[2][:3]
        return Track(first_tt_s, step_s, np.concatenate([x, np.linalg.norm(x, axis=0)[None]]))

    def at(self, tt_s, rates=False):
        """Values at moments within the nodes.

        Parameters
        ----------
        tt_s : ndarray, shape (...)
            Moments. [s of TT]
        rates : bool
            Whether the rates are wanted too. [per s]

        Returns
        -------
        ndarray, shape (quantities, ...), or two of them
        """
        u = (tt_s - self._first_tt_s) / self._step_s
        interval = u.astype(np.intp)
        u -= interval
        c0, c1, c2, c3 = self._cubics.take(interval, axis=2, mode="clip")
        # ((c3 u + c2) u + c1) u + c0, and beside it by the same steps its rate; in place, since fresh arrays cost more than sums
        values = c3 * u
        values += c2
        if rates:
            slopes = c3
            slopes *= u
            slopes += values
        values *= u
        values += c1
        if rates:
            slopes *= u
            slopes += values
            slopes /= self._step_s
        values *= u
        values += c0
        return (values, slopes) if rates else values


def _orientation(ephemeris, tt_s):
    """Rotations from GCRS to the turning frame at moments, shape (3, 3, T)."""

    def rotation(tt_s):
        time = ephemeris.time(tt_s)
        lag = time.gast * (np.pi / 12.0) - TURN_RAD_PER_S * tt_s
        cos, sin = np.cos(lag), np.sin(lag)
        x, y, z = time.M
        return np.stack([cos * x + sin * y, cos * y - sin * x, z])

    return _in_chunks(rotation, tt_s)


def _geocentric(ephemeris, body, tt_s):
    """Apparent vectors in GCRS at moments, shape (3, T), as the module says."""
    time = ephemeris.time(tt_s)
    earth = ephemeris.kernel[399].at(time)
    if isinstance(body, FixedDirection):
        apparent = earth.observe(Star(ra_hours=body.ra_deg / 15.0, dec_degrees=body.dec_deg)).apparent().position.km
        return apparent / np.linalg.norm(apparent, axis=0)
    astrometric = earth.observe(ephemeris.kernel[body.target])
    # Aberration as the Earth's way during the light time keeps the length right, on which the Moon's parallax hangs.
    light_days = np.linalg.norm(astrometric.position.au, axis=0) / C_AUDAY
    return astrometric.position.km + earth.velocity.km_per_s * (light_days * DAY_S)


def _turning(ephemeris, body, tt_s, rotation):
    """Vectors x, y, z, r in the turning frame, shape (4, T), from rotations, shape (3, 3, T)."""
    if not isinstance(body, (Body, FixedDirection)):
        x = np.zeros((3, len(tt_s)))
        x[2] = 1.0
    else:
        x = np.einsum("ijt,jt->it", rotation, _in_chunks(lambda tt_s: _geocentric(ephemeris, body, tt_s), tt_s))
    return np.concatenate([x, np.linalg.norm(x, axis=0)[None]])


def _in_chunks(quantity, *arrays):
    """A quantity worked out for some moments (last axis) at a time."""
    starts = range(0, max(arrays[0].shape[-1], 1), CHUNK_TIMES)
    return np.concatenate([quantity(*(array[..., i : i + CHUNK_TIMES] for array in arrays)) for i in starts], axis=-1)


def _nodes(first_tt_s, last_tt_s, step_s):
    start = np.floor(first_tt_s / step_s) - NODES_BEYOND
    stop = np.ceil(last_tt_s / step_s) + NODES_BEYOND
    return step_s * np.arange(start, stop + 1)


def tracks(bodies, first_utc_s, last_utc_s, ephemeris=None):
    """Tracks of bodies over a span.

    Parameters
    ----------
    bodies : iterable of Body, FixedDirection or PoleDirection
    first_utc_s, last_utc_s : float
        Span. [s of UTC]
    ephemeris : Ephemeris, optional

    Returns
    -------
    dict of body to Track
        Quantities x, y, z, r.

    Raises
    ------
    ValueError
        Where the span leaves the ephemeris.
    """
    ephemeris = ephemeris or default_ephemeris()
    ephemeris.require(first_utc_s, last_utc_s)
    span = ephemeris.tt_from_utc([first_utc_s, last_utc_s])
    daily_tt_s = _nodes(*span, DAY_S)
    daily_rotation = _orientation(ephemeris, daily_tt_s)
    orientation = Track(daily_tt_s[0], DAY_S, daily_rotation.reshape(9, -1))

    made = {}
    for body in bodies:
        step_s = body.step_days * DAY_S
        if step_s == DAY_S:
            tt_s, rotation = daily_tt_s, daily_rotation
        else:
            tt_s = _nodes(*span, step_s)
            rotation = orientation.at(tt_s).reshape(3, 3, -1)
        made[body] = Track(tt_s[0], step_s, _turning(ephemeris, body, tt_s, rotation))
    return made


class TimeTable:
    """The Earth-fixed vectors of bodies at a list of times: made once, used for every site.

    Parameters
    ----------
    t_utc_s : array_like, shape (T,)
        Moments, in any order. [s of UTC]
    bodies : iterable of Body, FixedDirection or PoleDirection
    ephemeris : Ephemeris, optional
    made : dict of body to Track, optional
        Tracks of the bodies over a span that holds the moments, where they were made before.

    Attributes
    ----------
    t_utc_s : ndarray, shape (T,)
    bodies : tuple

    Raises
    ------
    ValueError
        Where a moment lies outside the ephemeris.
    """

    def __init__(self, t_utc_s, bodies, ephemeris=None, made=None):
        ephemeris = ephemeris or default_ephemeris()
        self.t_utc_s = np.atleast_1d(np.asarray(t_utc_s, float))
        tt_s = ephemeris.tt_from_utc(self.t_utc_s)
        self.bodies = tuple(dict.fromkeys(bodies))
        span = (self.t_utc_s.min(), self.t_utc_s.max()) if len(tt_s) else (ephemeris.first_utc_s,) * 2
        ephemeris.require(*span)
        if made is None and len(tt_s) * DAY_S * min((body.step_days for body in self.bodies), default=1.0) > span[1] - span[0]:
            made = tracks(self.bodies, *span, ephemeris)
        if made is not None:
            turning = {body: track.at(tt_s) for body, track in made.items()}
        else:  # sparse times: straight from the ephemeris is less work, and exact
            rotation = _orientation(ephemeris, tt_s)
            turning = {body: _turning(ephemeris, body, tt_s, rotation) for body in self.bodies}
        angle = TURN_RAD_PER_S * tt_s
        cos, sin = np.cos(angle), np.sin(angle)
        self._fixed = {body: np.stack([cos * x + sin * y, cos * y - sin * x, z, r]) for body, (x, y, z, r) in turning.items()}

    def itrs(self, body):
        """Apparent geocentric vectors x, y, z, r of a body in Earth-fixed axes, shape (4, T)."""
        return self._fixed[body]
