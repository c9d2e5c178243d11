"""Lines and polygons around a site: read as far as a sheet looks, brought to the grid of its map."""

from dataclasses import dataclass

from qgis.core import (
    QgsCoordinateTransform,
    QgsCsException,
    QgsFeatureRequest,
    QgsGeometry,
    QgsProcessingException,
    QgsProcessingFeatureSource,
    QgsRectangle,
    QgsWkbTypes,
)

from ..plan.site_reach import around
from .crs import wgs84
from .drawn import place_in
from .parameters import text_of
from .points import text_key
from .seam import seam_of
from .sheet_parameters import sheet_by
from .sheet_tables import key_text
from .translation import tr

STROKES = 200.0  # of a side, at least, where the grid may bend it
CLIPPED = 1.5  # of how far a sheet looks: beyond, shapes are cut off before they are brought to the grid


@dataclass(frozen=True)
class Shape:
    """A feature on the grid of the map: its id, the value of the sheets' field, its subject, name, and other values as they are."""

    geometry: QgsGeometry
    fid: int
    key: object
    subject: object
    name: object
    values: tuple


class Ground:
    """A layer of lines or polygons.

    Parameters
    ----------
    name : str
        Of the parameter.
    kind : QgsWkbTypes.GeometryType
        Of its geometries.
    fields : sequence of str
        Parameters that name fields: the first holds the name of a feature, the others what `Shape.values` holds.

    Attributes
    ----------
    crooked, lost : int
        How many were repaired, and how many parts have no place on a map's grid.
    """

    def __init__(self, algorithm, parameters, name, kind, fields, context):
        self.name, self._kind, self._context = name, kind, context
        self._source = algorithm.parameterAsSource(parameters, name, context)
        self.given = self._source is not None
        self._at = [self._place(text_of(parameters, field)) for field in fields]
        self._key_at, self._subject_at = self._place(sheet_by(parameters)), self._place("subject")
        self.keyed, self.crooked, self.lost = self._key_at >= 0, 0, 0

    def _place(self, field):
        return place_in(self._source.fields(), field) if self.given and field else -1

    def keys(self):
        """The values of the sheets' field that occur."""
        return {key_text(value) for value in self._source.uniqueValues(self._key_at)} if self.keyed else set()

    def subjects(self):
        """The subjects for which its features are, where they tell."""
        return {text_key(value) for value in self._source.uniqueValues(self._subject_at)} if self._subject_at >= 0 else set()

    def near(self, lon_deg, lat_deg, radius_m, crs):
        """Shapes within a distance of a place, in a CRS: at least all of those."""
        if not self.given:
            return []
        window = self._window(lon_deg, lat_deg, CLIPPED * radius_m)
        request = QgsFeatureRequest()
        if window is not None:
            request.setFilterRect(window)
        to_map = QgsCoordinateTransform(self._source.sourceCrs(), crs, self._context.transformContext())
        seam = seam_of(self._source.sourceCrs(), self._context.transformContext())
        found = []
        for feature in self._source.getFeatures(request, QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
            geometry = self._on_map(feature, window, to_map, seam)
            if geometry is not None:
                attributes = feature.attributes()
                name, *values = [attributes[at] if at >= 0 else None for at in self._at] or [None]
                key = key_text(attributes[self._key_at]) if self.keyed else None
                subject = text_key(attributes[self._subject_at]) if self._subject_at >= 0 else None
                found.append(Shape(geometry, feature.id(), key, subject, text_key(name), tuple(values)))
        return found

    def _window(self, lon_deg, lat_deg, radius_m):
        """The rectangle of the layer that holds the ground within a distance; None where it is all of it, at seams and poles."""
        box = around(lon_deg, lat_deg, radius_m)
        if box is None:
            return None
        rectangle = QgsRectangle(*box)
        crs = self._source.sourceCrs()
        if crs == wgs84():
            return rectangle
        to_layer = QgsCoordinateTransform(wgs84(), crs, self._context.transformContext())
        try:
            window = to_layer.transformBoundingBox(rectangle)
        except QgsCsException:
            return None
        return window if window.isFinite() and not window.isEmpty() else None

    def _on_map(self, feature, window, to_map, seam):
        """The geometry of a feature on the grid; None where nothing of it is near."""
        geometry = feature.geometry()
        if geometry.isNull() or geometry.isEmpty():
            return None
        if geometry.type() != self._kind:
            raise QgsProcessingException(
                tr("{name}: feature {fid} is of another kind. Remove it.").format(name=self.name, fid=feature.id())
            )
        if geometry.type() == QgsWkbTypes.GeometryType.PolygonGeometry and not geometry.isGeosValid():
            geometry = geometry.makeValid()
            self.crooked += 1
        geometry = seam.joined(geometry)
        if window is not None:
            geometry = geometry.clipped(window)
        parts = [part for part in geometry.asGeometryCollection() if part.type() == self._kind]
        moved = [part for part in (self._moved(part, to_map) for part in parts) if part is not None]
        return QgsGeometry.collectGeometry(moved) if moved else None

    def _moved(self, part, to_map):
        """A part on the grid, as finely as that bends it; None where it has no place there."""
        if to_map.isShortCircuited():
            return part
        side = max(part.boundingBox().width(), part.boundingBox().height())
        part = part.densifyByDistance(side / STROKES) if side > 0.0 else part
        try:
            part.transform(to_map)
        except QgsCsException:
            self.lost += 1
            return None
        return part
