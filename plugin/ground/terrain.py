"""Heights of the ground from an elevation model held once in memory.

Heights in metres; longitudes, latitudes and bearings in degrees. The raster's own coordinate system enters as a function from longitude
and latitude to map coordinates, so that one code serves metres, feet and degrees. Positions in the raster are counted in cells from the
centre of the first one: `col` along the rows, `row` across them. Where a height is not known it is nan.
"""

from dataclasses import dataclass
from typing import Callable

import numpy as np

from . import geodesic

PROBE_M = 50.0  # over which the size of a cell is measured


@dataclass(frozen=True)
class Terrain:
    """An elevation model in memory.

    Parameters
    ----------
    heights_m : ndarray, shape (rows, cols), float32
        Heights at the centres of the cells, nan where not known. [m]
    transform : tuple of 6 floats
        Map coordinates of a corner of cells: x = t0 + t1 col + t2 row, y = t3 + t4 col + t5 row; rows may be turned.
    to_map : callable
        `to_map(lon_deg, lat_deg) -> x, y`, arrays in and out.
    highest_m : float
        Nothing in it stands higher. [m]
    """

    heights_m: np.ndarray
    transform: tuple
    to_map: Callable
    highest_m: float

    def position(self, lon_deg, lat_deg):
        """Position of places in cells, shape as the places; inf or nan where the map has no place for them."""
        x, y = (np.asarray(value, dtype=float) for value in self.to_map(np.asarray(lon_deg, float), np.asarray(lat_deg, float)))
        x0, x_col, x_row, y0, y_col, y_row = self.transform
        area = x_col * y_row - x_row * y_col
        col = ((x - x0) * y_row - (y - y0) * x_row) / area - 0.5
        row = ((y - y0) * x_col - (x - x0) * y_col) / area - 0.5
        return col, row

    def covers(self, col, row):
        """Tell whether positions lie between the centres of cells."""
        rows, cols = self.heights_m.shape
        return (col >= 0) & (row >= 0) & (col <= cols - 1) & (row <= rows - 1)

    def sample(self, col, row):
        """Bilinear heights at positions; nan outside, and beside cells that are not known. [m]."""
        rows, cols = self.heights_m.shape
        inside = self.covers(col, row)
        col, row = np.where(inside, col, 0.0), np.where(inside, row, 0.0)
        left = np.minimum(col.astype(np.intp), cols - 2)
        above = np.minimum(row.astype(np.intp), rows - 2)
        right_part, below_part = col - left, row - above
        first = above * cols + left
        flat = self.heights_m.ravel()
        top = flat.take(first) * (1.0 - right_part) + flat.take(first + 1) * right_part
        bottom = flat.take(first + cols) * (1.0 - right_part) + flat.take(first + cols + 1) * right_part
        return np.where(inside, top * (1.0 - below_part) + bottom * below_part, np.nan)

    def height_m(self, lon_deg, lat_deg):
        """Heights of the ground at places, nan where not known. [m]."""
        return self.sample(*self.position(lon_deg, lat_deg))

    def cell_m(self, lon_deg, lat_deg):
        """Sides of a cell on the ground at places: the shorter, the longer. [m]."""
        lon, lat = np.broadcast_arrays(np.asarray(lon_deg, float), np.asarray(lat_deg, float))
        col, row = self.position(lon, lat)
        moves = []
        for bearing in (0.0, 90.0):
            there = geodesic.direct(lon, lat, bearing, PROBE_M)
            col2, row2 = self.position(there[0], there[1])
            moves.append(((col2 - col) / PROBE_M, (row2 - row) / PROBE_M))
        (col_n, row_n), (col_e, row_e) = moves
        area = np.abs(col_n * row_e - col_e * row_n)
        one, other = np.hypot(row_n, row_e) / area, np.hypot(col_n, col_e) / area
        return np.minimum(one, other), np.maximum(one, other)

    def path(self, lon_deg, lat_deg, bearing_deg, length_m):
        """Courses of geodesics through the raster, as parabolas.

        Parameters
        ----------
        lon_deg, lat_deg, bearing_deg, length_m : array_like, shape (R,)
            Starts, directions and lengths. [deg], [m]

        Returns
        -------
        ndarray, shape (2, 3, R)
            For col and for row: a, b, c of a + b d + c d^2, d being the distance along the geodesic in metres.

        Notes
        -----
        Through the start, the middle and the end of the geodesic. This takes in the convergence of the grid, its scale, and how both
        change on the way.
        """
        lon, lat, bearing, length = np.broadcast_arrays(lon_deg, lat_deg, bearing_deg, length_m)
        middle, end = (geodesic.direct(lon, lat, bearing, part * length) for part in (0.5, 1.0))
        start = np.array(self.position(lon, lat))
        to_middle = np.array(self.position(middle[0], middle[1])) - start
        to_end = np.array(self.position(end[0], end[1])) - start
        return np.stack([start, (4.0 * to_middle - to_end) / length, (2.0 * to_end - 4.0 * to_middle) / length**2], axis=1)


def terrain(heights, transform, to_map, nodata=None, unit_m=1.0):
    """Make a terrain of a raster's values.

    Parameters
    ----------
    heights : array_like, shape (rows, cols)
        Values of the raster.
    transform : sequence of 6 floats
        As GDAL gives it.
    to_map : callable
        `to_map(lon_deg, lat_deg) -> x, y` in the raster's coordinate system.
    nodata : float, optional
        The value that stands for no height.
    unit_m : float
        Length of the raster's vertical unit; 0.3048 for feet. [m]

    Raises
    ------
    ValueError
        Fewer than 2 x 2 cells, no height at all, cells without area, or a unit that is no length.
    """
    values = np.array(heights, dtype=np.float32)
    if values.ndim != 2 or min(values.shape) < 2:
        raise ValueError("Heights between cells need a raster of at least 2 x 2 cells. Choose a larger elevation model.")
    x_col, x_row, y_col, y_row = (transform[i] for i in (1, 2, 4, 5))
    if not np.isfinite(transform).all() or x_col * y_row == x_row * y_col:
        raise ValueError("The elevation model's cells have no area. Give it a georeference first.")
    if not (np.isfinite(unit_m) and unit_m > 0):
        raise ValueError(f"A vertical unit of {unit_m} m is no length. Give 1 for metres, 0.3048 for feet.")
    unknown = ~np.isfinite(values)
    if nodata is not None:
        unknown |= values == np.float32(nodata)
    if unknown.all():
        raise ValueError("The elevation model holds no height here. Choose another band, or a model that covers the places.")
    values *= np.float32(unit_m)
    values[unknown] = np.nan
    return Terrain(values, tuple(float(value) for value in transform), to_map, float(np.nanmax(values)))
