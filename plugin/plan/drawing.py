"""Sightlines, skylines and fields of view as a map shows them: the vertices that draw them, and bearings from the north of a grid."""

import numpy as np

from ..ground.geodesic import densified_lines, direct, split_at_antimeridian
from . import wkb

EXACT_DEG = 2.0**-30  # 0.1 mm: multiples of it stay exact when turns are added, so that both edges of a seam fall together
RAY_STEPS, ARC_STEPS = 8, 48  # of a wedge: its arc lies within 0.06 % of the distance, its sides within 2 m at 50 km
SAME_PLACE = 1.0  # map unit: two ends of a cut line nearer than this on a projected map are one place
HALF_STEP_M = 50.0  # to either side of the camera: short against any projection's bending, long against the rounding of its coordinates


def drawn_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg):
    """Geodesics with vertices enough to be drawn within 1 m, cut at the antimeridian.

    Parameters
    ----------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like, (L,)
        Ends of the lines. [deg]

    Returns
    -------
    ground.geodesic.MultiLines
    """
    return split_at_antimeridian(densified_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg))


def drawn_wkb(lon1_deg, lat1_deg, lon2_deg, lat2_deg, to_map, is_geographic):
    """Geodesics as MultiLineStrings on a map, in well-known binary.

    Parameters
    ----------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : array_like, (L,)
        Ends of the lines. [deg]
    to_map : callable
        `to_map(lon_deg, lat_deg) -> x, y`, nan where the map has no place.
    is_geographic : bool
        On a geographic map a line over the antimeridian is cut in two, on a projected one only where the map itself is cut there.

    Returns
    -------
    list of bytes or None
        None where the map cannot show the whole line.
    """
    lines = drawn_lines(lon1_deg, lat1_deg, lon2_deg, lat2_deg)
    x, y = to_map(lines.lon_deg, lines.lat_deg)
    if is_geographic:
        x = x - 360.0 * np.round((x - lines.lon_deg) / 360.0)  # another datum may push a vertex on the antimeridian over it
    xy = np.column_stack([x, y])
    parts = lines.part_offsets.tolist()
    drawn = []
    for first, last in zip(lines.line_offsets[:-1].tolist(), lines.line_offsets[1:].tolist()):
        pieces = [xy[parts[i] : parts[i + 1]] for i in range(first, last)]
        drawn.append(wkb.multilinestring(pieces if is_geographic else _joined(pieces)))
    return drawn


def _joined(pieces):
    """Pieces whose ends fall together on the map made one again."""
    joined = [pieces[0]]
    for piece in pieces[1:]:
        if np.hypot(*(piece[0] - joined[-1][-1])) < SAME_PLACE:
            joined[-1] = np.concatenate([joined[-1], piece[1:]])
        else:
            joined.append(piece)
    return joined


def unrolled_ring(lon_deg, lat_deg):
    """A closed ring on a sheet of longitude and latitude, its longitudes running on across the antimeridian.

    Parameters
    ----------
    lon_deg, lat_deg : array_like, (N,)
        Vertices around a place, the first not repeated. [deg]

    Returns
    -------
    lon_deg, lat_deg : ndarray, (N + 1,) or (N + 4,)
        The first repeated as the last; a ring that runs round a pole is closed along it. [deg]
    """
    lon, lat = np.asarray(lon_deg, dtype=float), np.asarray(lat_deg, dtype=float)
    turned = lon[0] + np.cumsum((np.diff(lon, append=lon[0]) + 180.0) % 360.0 - 180.0)
    run = np.append(lon[0], turned[:-1])
    if abs(turned[-1] - lon[0]) < 180.0:
        return np.append(run, lon[0]), np.append(lat, lat[0])
    pole = np.copysign(90.0, lat.mean())
    run[0] = np.round(lon[0] / EXACT_DEG) * EXACT_DEG
    last = run[0] + np.copysign(360.0, turned[-1] - lon[0])
    return np.append(run, [last, last, run[0], run[0]]), np.append(lat, [lat[0], pole, pole, lat[0]])


def short_steps(lon_deg, lat_deg, bearing_deg):
    """Ends of a short step along each bearing, the place in its middle.

    Parameters
    ----------
    lon_deg, lat_deg, bearing_deg : array_like, (L,)
        Places and true bearings. [deg]

    Returns
    -------
    lon1_deg, lat1_deg, lon2_deg, lat2_deg : ndarray, (L,)
        Where each step begins and ends. [deg]
    """
    lon1, lat1, _ = direct(lon_deg, lat_deg, bearing_deg, -HALF_STEP_M)
    lon2, lat2, _ = direct(lon_deg, lat_deg, bearing_deg, HALF_STEP_M)
    return lon1, lat1, lon2, lat2


def grid_bearing_deg(east, north):
    """Bearing of a step on a grid, clockwise from the grid's north.

    Parameters
    ----------
    east, north : array_like
        The step, in any unit.

    Returns
    -------
    ndarray
        0 <= bearing < 360. [deg]
    """
    turned = np.degrees(np.arctan2(east, north)) % 360.0
    return np.where(turned < 360.0, turned, 0.0)  # the remainder of -1e-15 is 360


def wedges(lon_deg, lat_deg, left_az_deg, right_az_deg, dist_m):
    """Outlines of the ground between two bearings, out to a distance.

    Parameters
    ----------
    lon_deg, lat_deg : array_like, (W,)
        The places from which they open. [deg]
    left_az_deg, right_az_deg : array_like, (W,)
        Bearings of the sides, clockwise from left to right, less than 360 apart. [deg]
    dist_m : array_like, (W,)
        Along the geodesics. [m]

    Returns
    -------
    lon_deg, lat_deg : ndarray, (W, V)
        Rings, clockwise from the place, which is not repeated. [deg]
    """
    lon, lat, left, right, dist = (
        np.asarray(values, dtype=float)[..., np.newaxis]
        for values in np.broadcast_arrays(lon_deg, lat_deg, left_az_deg, right_az_deg, dist_m)
    )
    out, across = np.linspace(0.0, 1.0, RAY_STEPS + 1), np.linspace(0.0, 1.0, ARC_STEPS + 1)
    share_of_dist = np.concatenate([out, np.ones(ARC_STEPS - 1), out[:0:-1]])
    share_of_turn = np.concatenate([np.zeros(RAY_STEPS), across, np.ones(RAY_STEPS - 1)])
    ring_lon, ring_lat, _ = direct(lon, lat, left + share_of_turn * ((right - left) % 360.0), share_of_dist * dist)
    ring_lon[:, :1], ring_lat[:, :1] = lon, lat
    return ring_lon, ring_lat
