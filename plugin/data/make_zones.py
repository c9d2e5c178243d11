#!/usr/bin/env python3
"""Make zones.npz, the boundaries between time zones, from the open data of the package timezonefinder.

Run once for each new edition of the boundaries, in an environment of its own (Python 3.11 or later), and commit what comes out:

    python3 -m venv ENV
    ENV/bin/pip install timezonefinder==9.0.0 timezonefinder-data==3.2026.3.post1 shapely==2.2.0 numpy==2.4.6
    ENV/bin/python plugin/data/make_zones.py

The land zones, with the territorial sea that belongs to them, divide the globe like a map: every stretch of boundary has one zone on its
left and one on its right. A boundary is simplified once, for both of its zones together, so that neighbours neither part nor overlap.
Each face of the resulting map gets the zone that timezonefinder itself names for a point inside it, and where zones overlap, as in
Xinjiang, the other one besides. What is in no zone is open sea.
"""

import sys
from pathlib import Path

import numpy as np
import shapely
from timezonefinder import TimezoneFinder

OUTPUT = Path(__file__).with_name("zones.npz")
TOLERANCE_DEG = 0.002  # of latitude: 220 m
STEPS_PER_DEG = 100_000  # of the grid on which vertices are kept: 1.1 m or less
SOURCE_STEPS_PER_DEG = 10_000_000  # of the data's own grid
SEA = "Etc/GMT"  # begins the names of the zones of the open sea, which longitude alone tells
UNCLAIMED = {"Etc/UTC": "UTC"}  # a part of Antarctica, under the name that the plugin gives this clock
HALF_TURN = 180 * STEPS_PER_DEG
POLE = 90 * STEPS_PER_DEG


def source_polygons(finder, names):
    """Every polygon of every zone: name, rings in whole steps of the data's grid, one row a vertex, the first not repeated."""
    for name in names:
        for polygon in finder.get_geometry(tz_name=name, coords_as_pairs=True):
            rings = [np.rint(np.asarray(ring) * SOURCE_STEPS_PER_DEG).astype(np.int64) for ring in polygon]
            yield name, [ring[(ring != np.roll(ring, 1, axis=0)).any(axis=1)] for ring in rings]


def packed(vertices):
    """One whole number for each vertex."""
    return (vertices[:, 0] << 32) + vertices[:, 1]


def unpacked(keys):
    low = ((keys + (1 << 31)) & ((1 << 32) - 1)) - (1 << 31)  # latitudes are negative too
    return np.stack([(keys - low) >> 32, low], axis=1)


def shared_arcs(rings):
    """Stretches of boundary between the places where three or more meet, each once."""
    keys = [packed(ring) for ring in rings]
    strokes = np.concatenate([np.stack([key, np.roll(key, -1)], axis=1) for key in keys])
    strokes = np.unique(np.sort(strokes, axis=1), axis=0)
    vertices, strokes_there = np.unique(strokes, return_counts=True)
    nodes = vertices[strokes_there != 2]
    arcs = {}
    for key in keys:
        at_node = np.flatnonzero(np.isin(key, nodes))
        first = at_node[0] if at_node.size else np.argmin(key)
        closed = np.append(np.roll(key, -first), key[first])
        cuts = [*(at_node - first), key.size] if at_node.size else [0, key.size]
        for start, end in zip(cuts[:-1], cuts[1:]):
            arc = closed[start : end + 1]
            forward = arc if (arc[0], arc[1]) <= (arc[-1], arc[-2]) else arc[::-1]
            arcs[(forward[0], forward[1], forward[-1], forward[-2], forward.size)] = forward
    return [unpacked(arc) for arc in arcs.values()]


def simplified(arc):
    """The arc with fewer vertices, nowhere further than the tolerance from the old one; a degree of longitude counts as its length."""
    scale = np.array([np.cos(np.radians(np.abs(arc[:, 1]).min() / SOURCE_STEPS_PER_DEG)), 1.0])
    line = shapely.simplify(shapely.linestrings(arc * scale), TOLERANCE_DEG * SOURCE_STEPS_PER_DEG, preserve_topology=False)
    steps = np.rint(shapely.get_coordinates(line) / scale)  # whole again, so that arcs still end where others do
    return shapely.linestrings(np.rint(steps * STEPS_PER_DEG / SOURCE_STEPS_PER_DEG))


def map_faces(lines):
    """Faces between lines."""
    noded = shapely.unary_union(shapely.multilinestrings(lines), grid_size=1.0)
    faces = shapely.get_parts(shapely.polygonize(shapely.get_parts(noded)))
    return shapely.orient_polygons(faces)  # the inside is on the left of every ring


def zones_of_faces(faces, polygons, finder):
    """Names of the zones that a point inside each face lies in, first the one that timezonefinder names; none for open sea."""
    points = shapely.get_coordinates(shapely.point_on_surface(faces)) / STEPS_PER_DEG
    first = [finder.timezone_at(lng=lon, lat=lat) for lon, lat in points.tolist()]
    zones = [() if name.startswith(SEA) else (name,) for name in first]
    for name, rings in polygons:
        shape = shapely.Polygon(rings[0], rings[1:])
        shapely.prepare(shape)
        for face in np.flatnonzero(shapely.contains_xy(shape, points * SOURCE_STEPS_PER_DEG)).tolist():
            if name not in zones[face]:
                zones[face] += (name,)
    return zones


def strokes_between_zones(faces, zones):
    """Strokes of the map as rows x1, y1, x2, y2, left, right; x1 <= x2; none with one zone on both sides; -1 for open sea."""
    left = {}
    for face, zone in zip(faces, zones):
        for ring in shapely.get_rings(face):
            vertices = [tuple(vertex) for vertex in shapely.get_coordinates(ring).astype(int).tolist()]
            left.update(dict.fromkeys(zip(vertices[:-1], vertices[1:]), zone))
    rows = []
    for start, end in sorted({(min(stroke), max(stroke)) for stroke in left}):
        sides = left.get((start, end), -1), left.get((end, start), -1)
        if sides[0] != sides[1]:
            rows.append((*start, *end, *sides))
    return np.array(rows)


def without_seams(strokes):
    """Leave out what only closes the map: its edge at the south pole, and the antimeridian where it runs through a zone."""
    at_pole = (np.abs(strokes[:, 1]) == POLE) & (strokes[:, 1] == strokes[:, 3])
    on_seam = (np.abs(strokes[:, 0]) == HALF_TURN) & (strokes[:, 0] == strokes[:, 2])
    seam = strokes[on_seam]
    sides = {}
    for x in (-HALF_TURN, HALF_TURN):
        here = seam[seam[:, 0] == x]
        cuts = np.unique(seam[:, [1, 3]])
        sides[x] = {}
        for _, y1, _, y2, *zones in here.tolist():
            inside = cuts[(cuts >= y1) & (cuts <= y2)].tolist()
            sides[x].update({stretch: max(zones) for stretch in zip(inside[:-1], inside[1:])})  # the other one is the outside, -1
    west, east = sides[HALF_TURN], sides[-HALF_TURN]
    kept = [
        (HALF_TURN, y1, HALF_TURN, y2, west.get((y1, y2), -1), east.get((y1, y2), -1))
        for y1, y2 in sorted(set(west) | set(east))
        if west.get((y1, y2), -1) != east.get((y1, y2), -1)
    ]
    print(f"{len(kept)} strokes of the antimeridian part two zones")
    return np.concatenate([strokes[~at_pole & ~on_seam], np.array(kept, dtype=strokes.dtype).reshape(-1, 6)])


def chained(strokes):
    """Chains of strokes with the same two sides: lists of vertices, left zones, right zones."""
    chains, left, right = [], [], []
    for sides in np.unique(strokes[:, 4:], axis=0):
        ends = strokes[(strokes[:, 4:] == sides).all(axis=1), :4].reshape(-1, 2, 2)
        flipped = strokes[(strokes[:, [5, 4]] == sides).all(axis=1), :4].reshape(-1, 2, 2)[:, ::-1]
        if sides[0] > sides[1] and flipped.size:
            continue  # met already as the other side
        lines = shapely.multilinestrings(shapely.linestrings(np.concatenate([ends, flipped])))
        for line in shapely.get_parts(shapely.line_merge(lines, directed=True)):
            chains.append(shapely.get_coordinates(line).astype(np.int32))
            left.append(sides[0])
            right.append(sides[1])
    return chains, left, right


def main():
    finder = TimezoneFinder(in_memory=True)
    names = sorted(name for name in finder.timezone_names if not name.startswith(SEA))
    polygons = list(source_polygons(finder, names))
    arcs = shared_arcs([ring for _, rings in polygons for ring in rings])
    faces = map_faces([simplified(arc) for arc in arcs])
    zones = zones_of_faces(faces, polygons, finder)
    lost = set(names).difference(*zones)
    if lost:
        sys.exit(f"No face of the map is in {', '.join(sorted(lost))}: some boundary does not close. Nothing was written.")
    kinds = sorted(set(zones) - {()})
    strokes = without_seams(strokes_between_zones(faces, [kinds.index(zone) if zone else -1 for zone in zones]))
    chains, left, right = chained(strokes)
    vertices = np.concatenate(chains)
    np.savez_compressed(
        OUTPUT,
        names=np.array([UNCLAIMED.get(kind[0], kind[0]) for kind in kinds]),
        also=np.array([kind[1] if len(kind) > 1 else "" for kind in kinds]),
        lon_step=np.diff(vertices[:, 0], prepend=0).astype(np.int32),  # differences: they compress to a third
        lat_step=np.diff(vertices[:, 1], prepend=0).astype(np.int32),
        vertices_of_chain=np.array([len(chain) for chain in chains], dtype=np.int32),
        left=np.array(left, dtype=np.int16),
        right=np.array(right, dtype=np.int16),
        steps_per_deg=np.int32(STEPS_PER_DEG),
    )
    print(f"{sum(map(len, arcs))} vertices in {len(arcs)} arcs became {len(vertices)} in {len(chains)} chains, {len(faces)} faces")
    print(f"{OUTPUT.name}: {OUTPUT.stat().st_size / 1e6:.2f} MB, {len(names)} zones")
    print("Overlaps:", ", ".join(" and ".join(kind) for kind in kinds if len(kind) > 1))


if __name__ == "__main__":
    main()
