"""Geometries as well-known binary, little endian, as files and QGIS take them."""

import numpy as np

POINT = b"\x01\x01\x00\x00\x00"
LINESTRING = b"\x01\x02\x00\x00\x00"
POLYGON = b"\x01\x03\x00\x00\x00"
MULTILINESTRING = b"\x01\x05\x00\x00\x00"
MULTIPOLYGON = b"\x01\x06\x00\x00\x00"
POINT_BYTES = len(POINT) + 16


def count_of(items):
    """How many items follow."""
    return len(items).to_bytes(4, "little")


def points(x, y):
    """Points, shape (N, POINT_BYTES), of coordinates (N,)."""
    table = np.empty((len(x), POINT_BYTES), dtype=np.uint8)
    table[:, : len(POINT)] = np.frombuffer(POINT, dtype=np.uint8)
    table[:, len(POINT) :] = np.column_stack([x, y]).astype("<f8").view(np.uint8).reshape(len(x), 16)
    return table


def multilinestring(pieces):
    """One geometry of lines, each an array of vertices (V, 2); None where a vertex has no place."""
    if not all(np.isfinite(piece).all() for piece in pieces):
        return None
    lines = (LINESTRING + count_of(piece) + piece.astype("<f8").tobytes() for piece in pieces)
    return MULTILINESTRING + count_of(pieces) + b"".join(lines)
