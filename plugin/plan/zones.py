"""The time zone of every place on Earth, offline.

The boundaries between zones come with the plugin (data/zones.npz; data/ZONES.md tells their origin). They are a map: strokes, straight
in longitude and latitude, each with a zone on either side; what no zone covers is open sea and keeps nautical time. A zone includes its
territorial sea, so that its edge lies some 22 km off the coast.

The zone of a place is what lies south of the first stroke met on the way north. A grid of cells, most of them within one zone, keeps
that way short.
"""

import functools
from pathlib import Path
from typing import NamedTuple

import numpy as np

from ..ground.curvature import radius_in_azimuth
from ..words import Sentence
from . import clock

BOUNDARIES_PATH = Path(__file__).parent.parent / "data" / "zones.npz"
NEAR_M = 2000.0  # from here on a boundary is too near to trust a simplified map, or a photographer to stay on one side
SEA = -1  # index of the zone that no boundary surrounds
CELL_DEG = 0.25
COLUMNS = round(360 / CELL_DEG)
ROWS = round(180 / CELL_DEG)
NAUTICAL_MERIDIANS_DEG = np.append(np.arange(-172.5, 180.0, clock.DEG_PER_HOUR), 180.0)  # between the zones of the open sea
ROUNDING_DEG = 1e-9  # a stroke is listed in each cell that it comes this near to
BLOCK = 4096  # sites taken at once, to bound memory


class Boundaries(NamedTuple):
    """Strokes from (x1, y1) to (x2, y2) in degrees, x1 <= x2, with the zones north and south of them (left and right of upright ones).

    Zones are indices of `names`; where two overlap, in disputed ground, `also` holds the name of the other one, elsewhere "".
    The strokes in cell i are `members[first[i]:first[i + 1]]`, and `centre[i]` is the zone in its middle. Cells are counted by rows from
    -180, -90; one row more stands beyond the north pole.
    """

    names: np.ndarray
    also: np.ndarray
    x1: np.ndarray
    y1: np.ndarray
    x2: np.ndarray
    y2: np.ndarray
    north: np.ndarray
    south: np.ndarray
    first: np.ndarray
    members: np.ndarray
    centre: np.ndarray


def find_zones(lon_deg, lat_deg):
    """Time zone of each site.

    Parameters
    ----------
    lon_deg, lat_deg : array_like (S,)
        The sites; any turn of longitude. [deg]

    Returns
    -------
    zone_names : list of str
        IANA names, or such as `UTC-02:00` at sea; each once, in alphabetical order.
    zone_index : ndarray of int (S,)
        Which of them holds.

    Raises
    ------
    ValueError
        A coordinate is not a number, or a latitude lies beyond 90 deg.

    Notes
    -----
    Boundaries are simplified by up to 220 m: nearer to one than that a site may be given its neighbour's zone.
    """
    lon, lat = _places(lon_deg, lat_deg)
    boundaries = _boundaries()
    nautical = clock.nautical_zone(lon)
    found = np.empty(lon.size, dtype=object)
    for block in _blocks(lon.size):
        zones = _zones_at(boundaries, _folded(lon[block]), lat[block])
        found[block] = np.where(zones == SEA, nautical[block], boundaries.names[zones])
    zone_names, zone_index = np.unique(found.astype(str), return_inverse=True)
    return zone_names.tolist(), zone_index


def find_neighbours(lon_deg, lat_deg, zone_names, zone_index, t_utc_s, within_m=NEAR_M):
    """For sites near a boundary the zone beyond it, if its clock shows another time.

    Parameters
    ----------
    lon_deg, lat_deg : array_like (S,)
        The sites; any turn of longitude. [deg]
    zone_names : sequence of str
    zone_index : array_like of int (S,)
        The zone of each site, as `find_zones` gives it.
    t_utc_s : array_like
        Moments that matter, such as one a day of the season: zones whose clocks agree at all of them are no different. [s]
    within_m : float
        How near. [m]

    Returns
    -------
    other : ndarray of object (S,)
        Name of the nearest zone with another clock; None where there is none so near.
    dist_m : ndarray (S,)
        Distance to it; nan likewise. [m]

    Raises
    ------
    ValueError
        A coordinate is not a number, a latitude lies beyond 90 deg, or a zone is unknown.

    Notes
    -----
    Where zones overlap, as all over Xinjiang, two clocks are in use: the other one is named, at distance 0. The edge of a zone toward the
    open sea counts only for sites beyond it: ashore nobody keeps nautical time, but what looks like open sea may be an islet that the map
    lacks. At sea the meridians between nautical zones count too.
    """
    lon, lat = _places(lon_deg, lat_deg)
    boundaries = _boundaries()
    own = np.array(zone_names, dtype=object)[np.asarray(zone_index, dtype=int)]
    other = np.full(lon.size, None, dtype=object)
    dist_m = np.full(lon.size, np.nan)
    for block in _blocks(lon.size):
        at_lon, at_lat = _folded(lon[block]), lat[block]
        sides = [_sides_near(boundaries, at_lon, at_lat, within_m), _meridians_near(lon[block], at_lat, own[block], within_m)]
        site, name, dist = (np.concatenate(parts) for parts in zip(*sides))
        differs = _clocks_differ(own[block][site], name, t_utc_s)
        site, name, dist = site[differs], name[differs], dist[differs]
        order = np.lexsort([dist, site])
        nearest = order[np.unique(site[order], return_index=True)[1]]
        other[block.start + site[nearest]] = name[nearest]
        dist_m[block.start + site[nearest]] = dist[nearest]
    return other, dist_m


@functools.lru_cache(maxsize=1)
def _boundaries():
    with np.load(BOUNDARIES_PATH) as data:
        vertices = np.stack([np.cumsum(data["lon_step"]), np.cumsum(data["lat_step"])]) / int(data["steps_per_deg"])
        length = data["vertices_of_chain"]
        names, also = data["names"].astype(object), data["also"].astype(object)
        sides = np.stack([data["left"], data["right"]])
    start = np.delete(np.arange(vertices.shape[1]), np.cumsum(length) - 1)  # the last vertex of a chain begins no stroke
    (x1, y1), (x2, y2) = vertices[:, start], vertices[:, start + 1]
    north, south = np.repeat(sides, length - 1, axis=1)
    westward = x2 < x1
    x1, x2 = np.where(westward, [x2, x1], [x1, x2])
    y1, y2 = np.where(westward, [y2, y1], [y1, y2])
    north, south = np.where(westward, [south, north], [north, south])
    stroke, cell = _cells_crossed(x1, y1, x2, y2)
    order = np.argsort(cell, kind="stable")
    first = np.searchsorted(cell[order], np.arange((ROWS + 1) * COLUMNS + 1))
    centre = _zones_at_centres(x1, y1, x2, y2, south)
    return Boundaries(names, also, x1, y1, x2, y2, north, south, first, stroke[order], centre)


def _cells_crossed(x1, y1, x2, y2):
    """Strokes, and the cells they run through."""
    west = np.minimum(_column(x1 - ROUNDING_DEG), COLUMNS - 1)
    stroke, column = _ranges(np.maximum(west, 0), np.minimum(_column(x2 + ROUNDING_DEG), COLUMNS - 1))
    edge = column * CELL_DEG - 180.0
    ends = [_latitude(x1, y1, x2, y2, stroke, np.clip(x, x1[stroke], x2[stroke])) for x in (edge, edge + CELL_DEG)]
    upright = x1[stroke] == x2[stroke]
    ends = np.where(upright, [y1[stroke], y2[stroke]], ends)
    lowest, highest = _row(ends.min(axis=0) - ROUNDING_DEG), _row(ends.max(axis=0) + ROUNDING_DEG)
    part, row = _ranges(np.clip(lowest, 0, ROWS - 1), np.clip(highest, 0, ROWS - 1))
    return stroke[part], row * COLUMNS + column[part]


def _zones_at_centres(x1, y1, x2, y2, south):
    """Zone in the middle of each cell."""
    middle = (np.arange(COLUMNS) + 0.5) * CELL_DEG - 180.0
    stroke, column = _ranges(np.searchsorted(middle, x1), np.searchsorted(middle, x2) - 1)
    crossing = column * 360.0 + _latitude(x1, y1, x2, y2, stroke, middle[column])
    order = np.argsort(crossing)
    cell_row, cell_column = np.divmod(np.arange((ROWS + 1) * COLUMNS), COLUMNS)
    met = np.searchsorted(crossing[order], cell_column * 360.0 + (cell_row + 0.5) * CELL_DEG - 90.0)
    column, zone = np.append(column[order], COLUMNS), np.append(south[stroke[order]], SEA)
    return np.where(column[met] == cell_column, zone[met], SEA)


def _zones_at(boundaries, lon, lat):
    """Index of the zone at places, lon within [-180, 180)."""
    zones = np.full(lon.size, SEA)
    column, row = _column(lon), _row(lat)
    left = np.arange(lon.size)
    while left.size:
        cell = row[left] * COLUMNS + column[left]
        undivided = boundaries.first[cell] == boundaries.first[cell + 1]
        zones[left[undivided]] = boundaries.centre[cell[undivided]]
        left, cell = left[~undivided], cell[~undivided]
        pair, place = _ranges(boundaries.first[cell], boundaries.first[cell + 1] - 1)
        stroke, site = boundaries.members[place], left[pair]
        spans = (boundaries.x1[stroke] <= lon[site]) & (lon[site] < boundaries.x2[stroke])
        stroke, site = stroke[spans], site[spans]
        met = _latitude(*boundaries[2:6], stroke, lon[site])
        ahead = (met > lat[site]) & (met <= (row[site] + 1) * CELL_DEG - 90.0)
        stroke, site, met = stroke[ahead], site[ahead], met[ahead]
        order = np.lexsort([met, site])
        found, nearest = np.unique(site[order], return_index=True)
        zones[found] = boundaries.south[stroke[order][nearest]]
        left = np.setdiff1d(left, found, assume_unique=True)
        row[left] += 1
    return zones


def _sides_near(boundaries, lon, lat, within_m):
    """Zones at sites and beyond strokes near them: index of the site, name, distance [m]; open sea is left out."""
    east_m, north_m = _metres_per_degree(lat)
    reach_lat = within_m / north_m
    reach_lon = np.minimum(within_m / np.maximum(east_m, within_m / 180.0), 180.0 - CELL_DEG)
    site, row = _ranges(np.maximum(_row(lat - reach_lat), 0), np.minimum(_row(lat + reach_lat), ROWS - 1))
    part, column = _ranges(_column(lon - reach_lon)[site], _column(lon + reach_lon)[site])
    site, cell = site[part], row[part] * COLUMNS + column % COLUMNS
    pair, place = _ranges(boundaries.first[cell], boundaries.first[cell + 1] - 1)
    site, stroke = site[pair], boundaries.members[place]
    x = _folded(boundaries.x1[stroke] - lon[site]) * east_m[site]
    y = (boundaries.y1[stroke] - lat[site]) * north_m[site]
    dx = (boundaries.x2 - boundaries.x1)[stroke] * east_m[site]
    dy = (boundaries.y2 - boundaries.y1)[stroke] * north_m[site]
    along = np.clip(-(x * dx + y * dy) / (dx**2 + dy**2), 0.0, 1.0)
    dist = np.hypot(x + along * dx, y + along * dy)
    near = dist <= within_m
    site, stroke, dist = site[near], stroke[near], dist[near]
    own = _zones_at(boundaries, lon, lat)
    site = np.concatenate([np.arange(lon.size), site, site])
    zones = np.concatenate([own, boundaries.north[stroke], boundaries.south[stroke]])
    dist = np.concatenate([np.zeros(lon.size), dist, dist])
    named = np.concatenate([np.where(zones == SEA, "", names[zones]) for names in (boundaries.names, boundaries.also)])
    ashore = named != ""
    return np.tile(site, 2)[ashore], named[ashore], np.tile(dist, 2)[ashore]


def _meridians_near(lon, lat, own, within_m):
    """Nautical zones beyond the meridians near sites at sea: index of the site, name, distance [m]."""
    nautical = clock.nautical_zone(lon)
    gap = _folded(NAUTICAL_MERIDIANS_DEG[:, np.newaxis] - lon)
    gap = gap[np.abs(gap).argmin(axis=0), np.arange(lon.size)]
    beyond = clock.nautical_zone(lon + gap + [[-1.0], [1.0]])
    dist = np.abs(gap) * _metres_per_degree(lat)[0]
    side, site = np.nonzero((own == nautical) & (beyond != nautical) & (dist <= within_m))
    return site, beyond[side, site], dist[site]


def _clocks_differ(names, others, t_utc_s):
    """Whether the clocks of pairs of zones ever differ at the moments."""
    differ = names != others
    pairs, of_pair = np.unique(np.stack([names[differ], others[differ]]).astype(str), axis=1, return_inverse=True)
    known, index = np.unique(pairs, return_inverse=True)
    moments = np.unique(np.asarray(t_utc_s, dtype=float))
    offsets_s = clock.utc_offsets_s(moments, known.tolist(), np.arange(known.size)[:, np.newaxis])
    first, second = offsets_s[index.reshape(pairs.shape)]
    differ[differ] = (first != second).any(axis=1)[of_pair.ravel()]
    return differ


def _places(lon_deg, lat_deg):
    lon, lat = (values.ravel() for values in np.broadcast_arrays(np.asarray(lon_deg, float), np.asarray(lat_deg, float)))
    bad = ~(np.isfinite(lon) & (np.abs(lat) <= 90.0))
    if bad.any():
        raise ValueError(
            Sentence(
                "{n} of {total} places have no longitude, or no latitude from -90 to 90: a place without both has no time zone.",
                n=int(bad.sum()),
                total=lon.size,
            )
        )
    return lon, lat


def _folded(lon):
    """The same longitudes within [-180, 180)."""
    return np.where(np.abs(lon) <= 180.0, np.where(lon == 180.0, -180.0, lon), (lon + 180.0) % 360.0 - 180.0)


def _metres_per_degree(lat):
    """Lengths of one degree of longitude, of latitude."""
    one = np.radians(1.0)
    return radius_in_azimuth(lat, 90.0) * np.cos(np.radians(lat)) * one, radius_in_azimuth(lat, 0.0) * one


def _latitude(x1, y1, x2, y2, stroke, lon):
    """Where strokes cross meridians; an end of an upright one."""
    width = np.maximum((x2 - x1)[stroke], np.finfo(float).tiny)
    return y1[stroke] + (lon - x1[stroke]) / width * (y2 - y1)[stroke]


def _column(lon):
    return np.floor((lon + 180.0) / CELL_DEG).astype(int)


def _row(lat):
    return np.floor((lat + 90.0) / CELL_DEG).astype(int)


def _ranges(first, last):
    """All whole numbers from first to last, for each pair of them; with the index of the pair."""
    count = np.maximum(last - first + 1, 0)
    index = np.repeat(np.arange(count.size), count)
    return index, np.arange(index.size) - np.repeat(np.cumsum(count) - count, count) + first[index]


def _blocks(size):
    return [slice(start, min(start + BLOCK, size)) for start in range(0, size, BLOCK)]
