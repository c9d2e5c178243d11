"""Paths: lines on the ground that run straight between their vertices in the coordinates in which they were drawn.

A place on a path is named by a piece and the part of it that lies behind, `u` from 0 to 1; piece i runs from vertex i to vertex i + 1. How
map coordinates become longitude and latitude enters as a function, so that one code serves metres, feet and degrees. Vertices are added so
that no piece is long: then its length is that of the geodesic between its ends.
"""

import numpy as np

from ..ground import geodesic

PIECE_M = 1000.0  # where the map bends geodesics no more than 1 / Earth radius: the way is then longer than the geodesic by 1 part in 10^9
MOST_BEND = 1000.0  # of a meridian at 89.94 degrees, in units of 1 / Earth radius: nearer to a pole a path on a map in degrees is no path


class Paths:
    """Paths made ready for a search.

    Parameters
    ----------
    x, y : array_like, shape (W,)
        Vertices of all parts of all paths, in map coordinates.
    part_offsets : array_like of int, shape (P + 1,)
        Part j holds the vertices part_offsets[j] to part_offsets[j + 1].
    path_of_part : array_like of int, shape (P,)
        Path to which each part belongs, ascending.
    to_wgs84 : callable
        `to_wgs84(x, y) -> lon_deg, lat_deg`, arrays in and out.
    z_m : array_like, optional
        Heights of the vertices; not known if left out. [m]

    Attributes
    ----------
    x, y, z_m, lon_deg, lat_deg : ndarray, shape (V,)
        Vertices, those that were added among them.
    part, path : ndarray of int, shape (V,)
        Part and path of each vertex.
    length_m : ndarray, shape (V,)
        Of the piece that begins at a vertex; 0 at the last vertex of a part. [m]
    chain_m : ndarray, shape (V,)
        Distance along the path from its start; gaps between parts do not count. [m]
    """

    def __init__(self, x, y, part_offsets, path_of_part, to_wgs84, z_m=None):
        x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
        z_m = np.full(x.shape, np.nan) if z_m is None else np.asarray(z_m, dtype=float)
        self.to_wgs84 = to_wgs84
        lon, lat = to_wgs84(x, y)
        part = np.repeat(np.arange(len(path_of_part)), np.diff(part_offsets))
        length_m = _lengths(lon, lat, part)
        cuts = _cuts(length_m, lat)
        if (cuts > 1).any():
            piece = np.repeat(np.arange(x.size), cuts)
            u = (np.arange(piece.size) - np.repeat(np.cumsum(cuts) - cuts, cuts)) / cuts[piece]
            x, y, z_m = (_between(values, piece, u) for values in (x, y, z_m))
            part = part[piece]
            lon, lat = to_wgs84(x, y)
            length_m = _lengths(lon, lat, part)
        self.x, self.y, self.z_m, self.lon_deg, self.lat_deg, self.part, self.length_m = x, y, z_m, lon, lat, part, length_m
        self.path = np.asarray(path_of_part, dtype=np.int64)[part]
        run_m = np.cumsum(length_m) - length_m
        first = np.searchsorted(self.path, self.path)
        self.chain_m = run_m - run_m[first] if run_m.size else run_m
        self.closed = self._closed_parts()

    def __len__(self):
        return len(self.x)

    def _closed_parts(self):
        """Vertices that end a loop: each is the same place as the first of its part."""
        first = np.searchsorted(self.part, self.part)
        last = np.append(self.part[1:] != self.part[:-1], True) if len(self) else np.zeros(0, bool)
        return last & (first < np.arange(len(self))) & (self.x == self.x[first]) & (self.y == self.y[first])

    def at(self, piece, u):
        """Longitude and latitude of places on paths. [deg]."""
        return self.to_wgs84(*self.map_at(piece, u))

    def map_at(self, piece, u):
        """Map coordinates of places on paths."""
        return _between(self.x, piece, u), _between(self.y, piece, u)

    def height_m(self, piece, u):
        """Height of places on paths, as drawn; nan where not known. [m]."""
        return _between(self.z_m, piece, u)

    def chain_at(self, piece, lon_deg, lat_deg):
        """Distance along the path of places on its pieces, given by their coordinates. [m]."""
        _, _, beyond_m = geodesic.inverse(self.lon_deg[piece], self.lat_deg[piece], lon_deg, lat_deg)
        return self.chain_m[piece] + beyond_m


def _between(values, piece, u):
    """Straight between the ends of pieces."""
    start, end = values[piece], values[np.minimum(piece + 1, values.size - 1)]
    return np.where(u == 0.0, start, np.where(u == 1.0, end, start + u * (end - start)))


def _lengths(lon, lat, part):
    length_m = np.zeros(lon.size)
    same = np.flatnonzero(part[1:] == part[:-1])
    length_m[same] = geodesic.inverse(lon[same], lat[same], lon[same + 1], lat[same + 1])[2]
    return length_m


def _cuts(length_m, lat_deg):
    """How many pieces to make of each; a straight stroke on a map in degrees bends by tan(lat) / Earth radius."""
    bend = np.minimum(1.0 + np.abs(np.tan(np.radians(lat_deg))), MOST_BEND)
    return np.maximum(np.ceil(length_m * bend / PIECE_M), 1).astype(np.int64)
