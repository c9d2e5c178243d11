"""The part of an elevation model for which an exposure is worked out: its cells, its tiles and where on the Earth these lie."""

import numpy as np

from ..plan import plots
from ..plan.exposure import middle_height_m, tile_side, tiles
from .cautions import tell_of_terrain
from .crs import lon_lat
from .parameters import blank, number_of
from .raster import Raster
from .translation import tr

# argument of plan.exposure.sky_over -> parameter
HOW = {"lens_m": "CAMERA_HEIGHT", "skip_m": "SKIP_NEAR", "radius_m": "TERRAIN_RADIUS", "refraction_k": "REFRACTION_K"}


class Plot:
    """Cells of an elevation model, and how they are looked at, for so many months together.

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

    def __init__(self, algorithm, parameters, context, months):
        self.raster, self.crs = Raster(algorithm.dem, context.transformContext()), algorithm.dem.crs
        self.how = {name: number_of(algorithm, parameters, parameter) for name, parameter in HOW.items()}
        grid = self.raster.extent.grid
        self.area = self._area(algorithm, parameters, context)
        self.transform = plots.transform_from(grid, self.area.row, self.area.col)
        (lon,), (lat,) = self._places([self.area], context)
        if not np.isfinite(lon + lat):
            raise ValueError(
                tr("DEM: the middle of '{name}' is no place on the Earth. Check the layer's CRS.").format(name=self.raster.name)
            )
        self._cell_m = tuple(float(side) for side in grid.cell_m(lon, lat))
        self.region = plots.region_for(self.area, grid, self._cell_m[0], self.how["radius_m"], self.how["skip_m"])
        self.tiles = tiles(self.area, tile_side(self._cell_m[1], months))
        self.lon_deg, self.lat_deg = self._places(self.tiles, context)
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
            return plots.whole(grid)
        extent = algorithm.parameterAsExtent(parameters, "AREA", context, self.crs)
        area = plots.area_of(grid, extent.xMinimum(), extent.xMaximum(), extent.yMinimum(), extent.yMaximum())
        if area is None:
            raise ValueError(
                tr("AREA does not meet the DEM '{name}'. Choose an extent on it, or leave AREA blank.").format(name=self.raster.name)
            )
        return area

    def _places(self, tiles, context):
        """Longitudes and latitudes of the middles of tiles. [deg]."""
        return lon_lat(*plots.middles(self.raster.extent.grid, tiles), self.crs, context.transformContext())
