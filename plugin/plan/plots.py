"""Parts of an elevation model for which an exposure is worked out, as cells; maps stay outside."""

import numpy as np

from .exposure import Tile, region_around

EDGE = 1e-6  # of a cell: an extent that ends with one does not touch the next


def whole(grid):
    """All cells of a `ground.terrain.Grid`, as a Tile."""
    return Tile(0, 0, grid.rows, grid.cols)


def area_of(grid, x_min, x_max, y_min, y_max):
    """The cells that an extent of the map touches, as a Tile; None where it touches none."""
    cols, rows = _positions(grid, np.array([x_min, x_max, x_min, x_max]), np.array([y_min, y_min, y_max, y_max]))
    first = max(int(np.floor(rows.min() + EDGE)), 0), max(int(np.floor(cols.min() + EDGE)), 0)
    last = min(int(np.ceil(rows.max() - EDGE)), grid.rows), min(int(np.ceil(cols.max() - EDGE)), grid.cols)
    if last[0] <= first[0] or last[1] <= first[1]:
        return None
    return Tile(*first, last[0] - first[0], last[1] - first[1])


def region_for(area, grid, cell_m, radius_m, skip_m=None):
    """The cells whose ground may hide anything from an area, as a Tile.

    Parameters
    ----------
    area : Tile
    grid : ground.terrain.Grid
    cell_m : float
        The shorter side of a cell. [m]
    radius_m : float
        How far the ground is looked at. [m]
    skip_m : float, optional
        What is passed over. [m]
    """
    return region_around(area, grid.rows, grid.cols, int(np.ceil((radius_m + (skip_m or 0.0)) / cell_m)))


def transform_from(grid, row, col):
    """The geotransform of a raster from a cell on, as GDAL gives it."""
    x0, x_col, x_row, y0, y_col, y_row = grid.transform
    return x0 + x_col * col + x_row * row, x_col, x_row, y0 + y_col * col + y_row * row, y_col, y_row


def middles(grid, tiles):
    """Map coordinates x and y of the middles of tiles, each of shape (tiles,)."""
    col, row = np.transpose([tile.middle for tile in tiles]) + 0.5
    x0, x_col, x_row, y0, y_col, y_row = grid.transform
    return x0 + x_col * col + x_row * row, y0 + y_col * col + y_row * row


def _positions(grid, x, y):
    """Places on the map, in cells from the corner of the first one."""
    x0, x_col, x_row, y0, y_col, y_row = grid.transform
    x, y, area = x - x0, y - y0, x_col * y_row - x_row * y_col
    return (x * y_row - y * x_row) / area, (y * x_col - x * y_col) / area
