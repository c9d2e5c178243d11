"""The part of an elevation model for which an exposure is worked out: its cells, its tiles and where on the Earth these lie."""

import numpy as np

from ..plan.exposure import Tile, middle_height_m, region_around, tile_side, tiles
from .cautions import tell_of_terrain
from .crs import lon_lat
from .parameters import blank, number_of
from .raster import Raster
from .translation import tr

EDGE = 1e-6  # of a cell: an extent that ends with one does not touch the next
# argument of plan.exposure.sky_over -> parameter
HOW = {"lens_m": "CAMERA_HEIGHT", "skip_m": "SKIP_NEAR", "radius_m": "TERRAIN_RADIUS", "refraction_k": "REFRACTION_K"}


class Plot:
    """Cells of an elevation model, and how they are looked at.

    Attributes
    ----------
    raster : Raster
    crs : QgsCoordinateReferenceSystem
    area, region : Tile
        The cells asked for; those whose ground may hide anything from them.
    transform : tuple
        Of the area, as GDAL gives it.
    tiles : list of Tile
    lon_deg, lat_deg : ndarray, shape (tiles,)
        Their middles. [deg]
    how : dict
        For `plan.exposure.sky_over`.

    Raises
    ------
    ValueError
        With a sentence, where no heights can be read, or the area lies beside them.
    """

    def __init__(self, algorithm, parameters, context):
        self.raster, self.crs = Raster(algorithm.dem, context.transformContext()), algorithm.dem.crs
        self.how = {name: number_of(algorithm, parameters, parameter) for name, parameter in HOW.items()}
        grid = self.raster.extent.grid
        self.area = self._area(algorithm, parameters, context)
        self.transform = self._moved(self.area.col, self.area.row)
        (lon,), (lat,) = self._places([self.area.middle], context)
        if not np.isfinite(lon + lat):
            raise ValueError(
                tr("DEM: the middle of '{name}' is no place on the Earth. Check the layer's CRS.").format(name=self.raster.name)
            )
        self._cell_m = tuple(float(side) for side in grid.cell_m(lon, lat))
        halo = int(np.ceil((self.how["radius_m"] + (self.how["skip_m"] or 0.0)) / self._cell_m[0]))
        self.region = region_around(self.area, grid.rows, grid.cols, halo)
        self.tiles = tiles(self.area, tile_side(self._cell_m[1]))
        self.lon_deg, self.lat_deg = self._places([tile.middle for tile in self.tiles], context)
        if not np.isfinite(self.lon_deg + self.lat_deg).all():
            raise ValueError(
                tr("DEM: a part of '{name}' is no place on the Earth. Choose an AREA within its map.").format(name=self.raster.name)
            )

    def heights_m(self, overview):
        """Heights of the ground about the middles of the tiles, 0 where it is not known. [m]."""
        return np.array([middle_height_m(tile, overview) for tile in self.tiles])

    def log(self, feedback):
        """Tell of the elevation model."""
        raster = self.raster
        feedback.pushInfo(
            tr("DEM '{name}': heights in {unit}.").format(name=raster.name, unit=raster.unit_told or tr("metres, as no known unit is told"))
        )
        raster.warn_of_impossible(feedback)
        tell_of_terrain(raster.name, *self._cell_m, feedback)

    def _area(self, algorithm, parameters, context):
        """The cells that the parameter AREA touches."""
        grid = self.raster.extent.grid
        if blank(parameters.get("AREA")):
            return Tile(0, 0, grid.rows, grid.cols)
        extent = algorithm.parameterAsExtent(parameters, "AREA", context, self.crs)
        cols, rows = self._positions(extent)
        first = max(int(np.floor(rows.min() + EDGE)), 0), max(int(np.floor(cols.min() + EDGE)), 0)
        last = min(int(np.ceil(rows.max() - EDGE)), grid.rows), min(int(np.ceil(cols.max() - EDGE)), grid.cols)
        if last[0] <= first[0] or last[1] <= first[1]:
            raise ValueError(
                tr("AREA does not meet the DEM '{name}'. Choose an extent on it, or leave AREA blank.").format(name=self.raster.name)
            )
        return Tile(*first, last[0] - first[0], last[1] - first[1])

    def _positions(self, extent):
        """Corners of an extent of the map, in cells from the corner of the first one."""
        x0, x_col, x_row, y0, y_col, y_row = self.raster.extent.grid.transform
        x = np.array([extent.xMinimum(), extent.xMaximum(), extent.xMinimum(), extent.xMaximum()]) - x0
        y = np.array([extent.yMinimum(), extent.yMinimum(), extent.yMaximum(), extent.yMaximum()]) - y0
        area = x_col * y_row - x_row * y_col
        return (x * y_row - y * x_row) / area, (y * x_col - x * y_col) / area

    def _moved(self, col, row):
        """The geotransform of the raster from a cell on."""
        x0, x_col, x_row, y0, y_col, y_row = self.raster.extent.grid.transform
        return x0 + x_col * col + x_row * row, x_col, x_row, y0 + y_col * col + y_row * row, y_col, y_row

    def _places(self, positions, context):
        """Longitudes and latitudes of positions, col and row, counted from the centre of the first cell. [deg]."""
        col, row = np.transpose(positions) + 0.5
        x0, x_col, x_row, y0, y_col, y_row = self.raster.extent.grid.transform
        return lon_lat(x0 + x_col * col + x_row * row, y0 + y_col * col + y_row * row, self.crs, context.transformContext())
