"""Ways on foot: from a parking place along a drawn walk to where somebody stands.

A walk is a chain of strokes; its length is that of the geodesics between its vertices, gaps between its parts and the steps off its ends
included, as the crow flies. Nothing is known of slopes.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from ..ground import geodesic
from ..ground.curvature import radius_in_azimuth

ON_WALK_M = 50.0  # nearer than this a place counts as lying on a walk: about the error of a drawn line and a phone together
ELSEWHERE_M = 500.0  # a walk that passes no nearer leads somewhere else: nobody knows what lies between
BLOCK_CELLS = 1_000_000  # places x strokes, or places x parking x walks, worked on at once
NONE = -1


@dataclass(frozen=True)
class Walks:
    """Lines to walk on, V vertices in all; neighbours of one walk are joined the short way round the world.

    Attributes
    ----------
    lon_deg, lat_deg : ndarray, shape (V,)
        [deg]
    part : ndarray of int, shape (V,)
        Part to which each vertex belongs, ascending.
    walk : ndarray of int, shape (V,)
        Walk to which each vertex belongs: 0 to W - 1, ascending, two vertices or more each.
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    part: np.ndarray
    walk: np.ndarray

    def __len__(self):
        return int(self.walk[-1]) + 1 if self.walk.size else 0

    def chain_m(self):
        """Distance of each vertex from the start of its walk, gaps between parts included, shape (V,). [m]."""
        run_m = np.zeros(self.walk.size)
        run_m[1:] = np.cumsum(geodesic.inverse(self.lon_deg[:-1], self.lat_deg[:-1], self.lon_deg[1:], self.lat_deg[1:])[2])
        return run_m - run_m[np.searchsorted(self.walk, self.walk)]


class Ways(NamedTuple):
    """The way to each of C places; lengths are nan and indices `NONE` where there is none.

    `walk` and `parking` are indices; `from_m` and `to_m` say which part of the walk is used, from the car's side to the place; `off_car_m`
    and `off_place_m` how far both ends lie off it. `length_m` is all of it. `straight_m` and `straight_deg` lead from the place to
    the parking as the crow flies.
    """

    walk: np.ndarray
    parking: np.ndarray
    from_m: np.ndarray
    to_m: np.ndarray
    off_car_m: np.ndarray
    off_place_m: np.ndarray
    length_m: np.ndarray
    straight_m: np.ndarray
    straight_deg: np.ndarray


def find_ways(lon_deg, lat_deg, parking_lon_deg, parking_lat_deg, walks):
    """Choose parking and walk for places.

    Parameters
    ----------
    lon_deg, lat_deg : ndarray, shape (C,)
        The places. [deg]
    parking_lon_deg, parking_lat_deg : ndarray, shape (K,)
        Where cars may stand; none serves. [deg]
    walks : Walks
        None serves.

    Returns
    -------
    Ways

    Notes
    -----
    That pair of walk and parking is taken which leaves the least way off the walk, all within `ON_WALK_M` being equal, and among equals
    the shortest. Without parking a walk begins at its farther end. Where no walk passes within `ELSEWHERE_M` the nearest parking is taken,
    and the length is not known.
    """
    count = len(lon_deg)
    found = {name: np.full(count, np.nan) for name in Ways._fields}
    found.update(walk=np.full(count, NONE), parking=np.full(count, NONE))
    cars = parking_lon_deg, parking_lat_deg
    if len(walks):
        _find_walks(found, lon_deg, lat_deg, *cars, walks)
    if len(parking_lon_deg):
        _find_nearest(found, lon_deg, lat_deg, *cars)
    has = found["parking"] != NONE
    car = found["parking"][has]
    bearing, _, dist = geodesic.inverse(lon_deg[has], lat_deg[has], parking_lon_deg[car], parking_lat_deg[car])
    found["straight_deg"][has], found["straight_m"][has] = bearing, dist
    return Ways(**found)


def _find_walks(found, lon_deg, lat_deg, parking_lon_deg, parking_lat_deg, walks):
    """Fill in the walks, and the parking on them, where a walk passes."""
    off_m, at_m = _beside(lon_deg, lat_deg, walks)
    off_m = np.where(off_m > ELSEWHERE_M, np.inf, off_m)
    car_off_m, car_at_m = _beside(parking_lon_deg, parking_lat_deg, walks)
    ends_m = walks.chain_m()[np.flatnonzero(np.append(np.diff(walks.walk) > 0, True))]
    passed = np.flatnonzero(np.isfinite(off_m).any(axis=1))
    step = max(1, BLOCK_CELLS // max(car_off_m.size, 1))
    for first in range(0, passed.size, step):
        some = passed[first : first + step]
        has_cars = car_off_m.size > 0
        chosen = _along(off_m[some], at_m[some], car_off_m, car_at_m) if has_cars else _from_end(off_m[some], at_m[some], ends_m)
        for name, column in chosen.items():
            found[name][some] = column


def _find_nearest(found, lon_deg, lat_deg, parking_lon_deg, parking_lat_deg):
    """Fill in the nearest parking where no walk passes."""
    left = np.flatnonzero(found["walk"] == NONE)
    step = max(1, BLOCK_CELLS // len(parking_lon_deg))
    for first in range(0, left.size, step):
        some = left[first : first + step]
        far_m = geodesic.inverse(lon_deg[some, np.newaxis], lat_deg[some, np.newaxis], parking_lon_deg, parking_lat_deg)[2]
        found["parking"][some] = far_m.argmin(axis=1)


def _along(off_m, at_m, car_off_m, car_at_m):
    """The best pair of walk and parking for each place: the columns of `Ways` that follow from the walk."""
    shape = (len(off_m), *car_off_m.shape)
    off = off_m[:, np.newaxis, :] + np.zeros(shape)
    beside = np.maximum(off, ON_WALK_M) + np.maximum(car_off_m, ON_WALK_M)
    length = np.abs(at_m[:, np.newaxis, :] - car_at_m) + off + car_off_m
    best = np.lexsort([length.reshape(len(off_m), -1), beside.reshape(len(off_m), -1)])[:, 0]
    car, walk = np.unravel_index(best, shape[1:])
    place = np.arange(len(off_m))
    return {
        "walk": walk,
        "parking": car,
        "from_m": car_at_m[car, walk],
        "to_m": at_m[place, walk],
        "off_car_m": car_off_m[car, walk],
        "off_place_m": off_m[place, walk],
        "length_m": length[place, car, walk],
    }


def _from_end(off_m, at_m, ends_m):
    """The best walk for each place, begun at its farther end."""
    from_m = np.where(at_m * 2.0 > ends_m, 0.0, ends_m)
    length = np.abs(at_m - from_m) + off_m
    walk = np.lexsort([length, np.maximum(off_m, ON_WALK_M)])[:, 0]
    place = np.arange(len(off_m))
    return {
        "walk": walk,
        "from_m": from_m[place, walk],
        "to_m": at_m[place, walk],
        "off_car_m": np.zeros(len(off_m)),
        "off_place_m": off_m[place, walk],
        "length_m": length[place, walk],
    }


def _beside(lon_deg, lat_deg, walks):
    """How far places lie from walks, and beside which metre of them, both of shape (C, W). [m]."""
    stroke = np.flatnonzero(np.diff(walks.walk) == 0)
    chain_m = walks.chain_m()
    first = np.searchsorted(walks.walk[stroke], np.arange(len(walks)))
    off_m, at_m = np.empty((2, len(lon_deg), len(walks)))
    step = max(1, BLOCK_CELLS // max(stroke.size, 1))
    for begin in range(0, len(lon_deg), step):
        part = slice(begin, begin + step)
        x, y = _plane(lon_deg[part], lat_deg[part], walks)
        dx, dy = x[:, stroke + 1] - x[:, stroke], y[:, stroke + 1] - y[:, stroke]
        square = np.maximum(dx**2 + dy**2, np.finfo(float).tiny)
        u = np.clip(-(x[:, stroke] * dx + y[:, stroke] * dy) / square, 0.0, 1.0)
        off = np.hypot(x[:, stroke] + u * dx, y[:, stroke] + u * dy)
        off_m[part] = np.minimum.reduceat(off, first, axis=1)
        for walk, (low, high) in enumerate(zip(first, np.append(first[1:], stroke.size))):
            nearest = low + off[:, low:high].argmin(axis=1)
            here = stroke[nearest]
            run_m = chain_m[here + 1] - chain_m[here]
            at_m[part, walk] = chain_m[here] + u[np.arange(len(nearest)), nearest] * run_m
    return off_m, at_m


def _plane(lon_deg, lat_deg, walks):
    """Vertices east and north of places, on the plane that touches the ellipsoid there: a part in 1000 off at 50 km. [m]."""
    lon, lat = lon_deg[:, np.newaxis], lat_deg[:, np.newaxis]
    d_lon = (walks.lon_deg - lon + 180.0) % 360.0 - 180.0
    east_m = radius_in_azimuth(lat, 90.0) * np.cos(np.radians((lat + walks.lat_deg) / 2.0)) * np.radians(d_lon)
    return east_m, radius_in_azimuth(lat, 0.0) * np.radians(walks.lat_deg - lat)


def walked(walks, walk, from_m, to_m):
    """The part of a walk between two of its metres, in that direction.

    Parameters
    ----------
    walks : Walks
    walk : int
    from_m, to_m : float
        From the start of the walk. [m]

    Returns
    -------
    list of (lon_deg, lat_deg)
        A pair of arrays for each of its parts that is touched.
    """
    own = np.flatnonzero(walks.walk == walk)
    chain_m, part = walks.chain_m()[own], walks.part[own]
    lon, lat = walks.lon_deg[own], walks.lat_deg[own]
    lon = lon[0] + np.concatenate([[0.0], np.cumsum((np.diff(lon) + 180.0) % 360.0 - 180.0)])  # goes on over the antimeridian
    low, high = sorted((from_m, to_m))
    ends = np.array([low, high])
    cut_lon, cut_lat = np.interp(ends, chain_m, lon), np.interp(ends, chain_m, lat)
    inside = (chain_m > low) & (chain_m < high)
    at = np.clip(np.searchsorted(chain_m, ends, side="right") - 1, 0, len(own) - 2)
    lon, lat = (np.concatenate([[cut[0]], values[inside], [cut[1]]]) for cut, values in ((cut_lon, lon), (cut_lat, lat)))
    part = np.concatenate([[part[at[0]]], part[inside], [part[at[1] + 1]]])
    if from_m > to_m:
        lon, lat, part = lon[::-1], lat[::-1], part[::-1]
    breaks = np.flatnonzero(np.diff(part)) + 1
    lon = (lon + 180.0) % 360.0 - 180.0
    return [piece for piece in zip(np.split(lon, breaks), np.split(lat, breaks)) if len(piece[0]) > 1]
