"""Blocks of points: what one task works on, and how a layer is divided into them."""

from dataclasses import dataclass

import numpy as np

from ..plan.nights import DAY_S, nights_asked, noons, span_utc_s
from ..plan.span import ephemeris_span_utc_s
from ..plan.zones import find_zones
from .points import Points

ROWS_A_BLOCK = 200_000  # some 3 s of work and 30 MB of file
LEAST_POINTS = 20  # which a block has however many rows they make
CELLS_A_SIDE = 1 << 16  # of the squares that tell which places are neighbours


@dataclass(frozen=True)
class Block:
    """Some points, arrays (N,): the zone of each among `zone_names`, and the names of its first and last night."""

    points: Points
    zone_names: list
    zone_index: np.ndarray
    first_night: np.ndarray
    last_night: np.ndarray

    def take(self, index):
        """The block of the points at an index array or a slice."""
        arrays = (values[index] for values in (self.zone_index, self.first_night, self.last_night))
        return Block(self.points.take(index), self.zone_names, *arrays)


@dataclass(frozen=True)
class Blocks:
    """A layer of points in blocks, and the span of its nights.

    Attributes
    ----------
    whole : Block
        All points.
    nights : ndarray of int
        How many each of them has.
    span_utc_s : (float, float)
    """

    whole: Block
    nights: np.ndarray
    span_utc_s: tuple
    parts: list

    def __len__(self):
        return len(self.parts)

    def take(self, number):
        """The block of a number."""
        return self.whole.take(self.parts[number])


def blocks_of(points, time_zone, first_night, last_night, count, now_utc_s, rows_a_night, block_points=None, by_place=False):
    """Divide points into blocks.

    Parameters
    ----------
    points : Points
    time_zone : str or None
        None for the zone of each place.
    first_night, last_night : datetime64[D] or None
        Blanks are filled as `plan.nights.nights_asked` says.
    count, now_utc_s
        As there.
    rows_a_night : float
        How many rows a point and night make at most.
    block_points : int, optional
        Points of a block; as many as make some `ROWS_A_BLOCK` rows if None.
    by_place : bool
        Whether neighbours come together, as they look at the same ground; else in the order of the layer.

    Raises
    ------
    ValueError
        Nights in the wrong order, or outside the ephemeris.
    """
    lon_deg, lat_deg = points.lon_deg, points.lat_deg
    zone_names, zone_index = ([time_zone], np.zeros(len(points), int)) if time_zone else find_zones(lon_deg, lat_deg)
    zoned = (zone_names, zone_index)
    first, last = nights_asked(first_night, last_night, count, now_utc_s, *zoned)
    _, nights = noons(lon_deg, *zoned, first, last)
    span = span_utc_s(lon_deg, *zoned, first, last)
    if len(points):
        _refuse_outside_ephemeris(span)
    order = _by_place(lon_deg, lat_deg) if by_place else np.arange(len(points))
    if block_points:
        ends = np.arange(block_points, len(points), block_points)
    else:
        most = max(rows_a_night * float(nights.max(initial=1)), 1.0)
        ends = np.arange(max(int(ROWS_A_BLOCK / most), LEAST_POINTS), len(points), max(int(ROWS_A_BLOCK / most), LEAST_POINTS))
    return Blocks(Block(points, *zoned, first, last), nights, span, np.split(order, ends))


def _refuse_outside_ephemeris(span):
    limits = ephemeris_span_utc_s()
    if span[0] - DAY_S < limits[0] or span[1] + DAY_S > limits[1]:  # the search looks a day beyond
        (begin, end), (first, last) = ([str(np.datetime64(int(moment), "s"))[:10] for moment in pair] for pair in (span, limits))
        raise ValueError(f"The nights from {begin} to {end} leave the ephemeris ({first} to {last}). Give others within it.")


def _by_place(lon_deg, lat_deg):
    """An order in which neighbours follow each other: along the curve that takes the squares of each square together."""
    x = ((lon_deg + 180.0) % 360.0 / 360.0 * (CELLS_A_SIDE - 1)).astype(np.uint64)
    y = ((lat_deg + 90.0) / 180.0 * (CELLS_A_SIDE - 1)).astype(np.uint64)
    return np.argsort(_spread(x) | (_spread(y) << np.uint64(1)), kind="stable")


def _spread(number):
    """The bits of a number of 16 bits with a zero before each."""
    for shift, mask in ((8, 0x00FF00FF), (4, 0x0F0F0F0F), (2, 0x33333333), (1, 0x55555555)):
        number = (number | (number << np.uint64(shift))) & np.uint64(mask)
    return number
