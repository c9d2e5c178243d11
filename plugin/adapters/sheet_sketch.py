"""The layers of a sheet's map, made for it on its own grid: what a legend names and an overview repeats."""

import math

import numpy as np
from qgis.core import NULL, QgsFeature, QgsGeometry, QgsVectorLayer, QgsWkbTypes

from . import sheet_symbols as look
from .geometries import grid_bearings, points_of, sightlines_of
from .translation import tr

FIELDS = "field=label:string(0)&field=grid_deg:double&field=looks:integer&field=sight:string(0)"
LABEL_LETTERS = 26  # of a name on the map; the table has all of it
MOST_LABELS = 60  # standpoints on a map: more would be a blot
KINDS = {
    QgsWkbTypes.GeometryType.PointGeometry: "Point",
    QgsWkbTypes.GeometryType.LineGeometry: "MultiLineString",
    QgsWkbTypes.GeometryType.PolygonGeometry: "MultiPolygon",
}


def sketch(site, font, transform_context):
    """The layers of a site, the uppermost first.

    Parameters
    ----------
    site : sheet_sites.Site
    font : QFont
        Of labels.
    transform_context : QgsCoordinateTransformContext

    Returns
    -------
    list of QgsVectorLayer
        Those that hold anything.
    """
    maker = _Maker(site, font, transform_context)
    made = [
        maker.subjects(),
        maker.cameras(),
        maker.standpoints(),
        maker.parking(),
        maker.sightlines(),
        maker.walks(),
        maker.paths(),
        maker.zones(),
    ]
    return [layer for layer in (*made, *maker.closed()) if layer is not None]


def here(site, font, transform_context):
    """The layer that shows in an overview where a site lies."""
    return _Maker(site, font, transform_context).here()


class _Maker:
    def __init__(self, site, font, transform_context):
        self.site, self.font, self.transform_context = site, font, transform_context

    def _layer(self, name, kind, rows, renderer, labeling=None):
        """A layer of rows: geometry, label, angle on the map, whether it looks anywhere, sight. None where there are none."""
        if not rows:
            return None
        layer = QgsVectorLayer(f"{KINDS[kind]}?crs=EPSG:{self.site.epsg}&{FIELDS}", name, "memory")
        features = []
        for geometry, *values in rows:
            feature = QgsFeature(layer.fields())
            feature.setGeometry(geometry)
            feature.setAttributes(values)
            features.append(feature)
        layer.dataProvider().addFeatures(features)
        layer.updateExtents()
        layer.setRenderer(renderer)
        if labeling is not None:
            layer.setLabeling(labeling)
            layer.setLabelsEnabled(True)
        return layer

    def subjects(self):
        site = self.site
        rows = [(self._point(i), self._label(i), NULL, 0, "") for i in site.places.of("subject").tolist()]
        labeling = look.labels(_bold(self.font), **look.beside(0.8, 10))
        return self._layer(tr("Subject"), QgsWkbTypes.GeometryType.PointGeometry, rows, look.subject(), labeling)

    def parking(self):
        rows = [(self._point(i), self._label(i), NULL, 0, "") for i in self.site.places.of("parking").tolist()]
        labeling = look.labels(self.font, **look.beside(0.8, 5))
        return self._layer(tr("Parking"), QgsWkbTypes.GeometryType.PointGeometry, rows, look.parking(), labeling)

    def here(self):
        """The sheet's first place."""
        return self._layer(tr("Site"), QgsWkbTypes.GeometryType.PointGeometry, [(self._point(0), "", NULL, 0, "")], look.here())

    def cameras(self):
        labeling = look.labels(_bold(self.font), **look.beside(1.0, 9))
        return self._looking("camera", self.site.lines, tr("Camera"), look.camera(), labeling)

    def standpoints(self):
        own = self.site.places.of("standpoint")
        labeling = look.labels(self.font, look.STANDPOINT_INK, **look.beside(0.8, 6)) if own.size <= MOST_LABELS else None
        return self._looking("standpoint", self.site.standing, tr("Standpoint"), look.standpoint(), labeling)

    def _looking(self, kind, lines, name, renderer, labeling):
        """Squares with a tick for each line that begins there; the label is told once."""
        rows = []
        for i in self.site.places.of(kind).tolist():
            angles = self._angles(i, lines)
            for number, angle in enumerate(angles or [None]):
                label = self._label(i) if number == 0 else ""
                rows.append((self._point(i), label, NULL if angle is None else angle, int(angle is not None), ""))
        occurring = {row[3] for row in rows}
        for looks in {0, 1} - occurring:
            renderer.deleteCategory(renderer.categoryIndexForValue(looks))
        return self._layer(name, QgsWkbTypes.GeometryType.PointGeometry, rows, renderer, labeling)

    def _angles(self, i, lines):
        """Bearings, on the map's grid, of the lines that begin at a place; each once."""
        places = self.site.places
        own = np.flatnonzero(np.asarray(lines["camera"], dtype=object) == places.name[i]) if lines else np.empty(0, dtype=int)
        if not own.size:
            return []
        bearing = np.unique(np.round(lines["bearing_deg"][own].astype(float), 3))
        lon, lat = (np.full(bearing.size, column[i]) for column in (places.lon_deg, places.lat_deg))
        return grid_bearings(lon, lat, bearing, self.site.crs, self.transform_context).tolist()

    def sightlines(self):
        lines = self.site.lines
        if not len(lines["camera"]):
            return None
        ends = [lines[name].astype(float) for name in ("lon_deg", "lat_deg", "end_lon_deg", "end_lat_deg")]
        geometries = sightlines_of(*ends, self.site.crs, self.transform_context)
        sights = [sight if sight in look.SIGHTS else "" for sight in lines["sight"].tolist()]
        rows = [(geometry, "", NULL, 0, sight) for geometry, sight in zip(geometries, sights) if not geometry.isNull()]
        return self._layer(tr("Sightline"), QgsWkbTypes.GeometryType.LineGeometry, rows, look.sightline(set(sights)))

    def walks(self):
        rows = [(_multi(way), "", NULL, 0, "") for _, way in self.site.walks]
        return self._layer(tr("Walk in"), QgsWkbTypes.GeometryType.LineGeometry, rows, look.walk())

    def paths(self):
        return self._shapes(tr("Path"), "PATHS", QgsWkbTypes.GeometryType.LineGeometry, look.path())

    def zones(self):
        return self._shapes(tr("Zone to stand in"), "ZONES", QgsWkbTypes.GeometryType.PolygonGeometry, look.zone())

    def _shapes(self, name, ground, kind, renderer):
        rows = [(_multi(shape.geometry), "", NULL, 0, "") for shape in self.site.grounds[ground]]
        return self._layer(name, kind, rows, renderer)

    def closed(self):
        """Closed ground on the sheet's dates, and that of other times."""
        looks = {
            True: (tr("Closed on these dates"), look.closed()),
            False: (tr("Closed at other times"), look.closed_at_other_times()),
        }
        for held, (name, renderer) in looks.items():
            rows = [(_multi(own.geometry), _short(own.name), NULL, 0, "") for own in self.site.closures if own.held is held]
            labeling = look.labels(self.font, look.GREY, priority=3)
            yield self._layer(name, QgsWkbTypes.GeometryType.PolygonGeometry, rows, renderer, labeling)

    def _point(self, i):
        return points_of(self.site.x[i : i + 1], self.site.y[i : i + 1])[0]

    def _label(self, i):
        return f"{self.site.places.mark[i]} {_short(self.site.places.name[i])}"


def _multi(geometry):
    made = QgsGeometry(geometry)
    made.convertToMultiType()
    return made


def _short(name):
    return name if len(name) <= LABEL_LETTERS else name[: LABEL_LETTERS - 1].rstrip() + "…"


def _bold(font):
    made = type(font)(font)
    made.setBold(True)
    return made


def extent_of(geometries):
    """Corners of what geometries cover, as x and y."""
    boxes = [geometry.boundingBox() for geometry in geometries]
    x = [value for box in boxes for value in (box.xMinimum(), box.xMaximum())]
    y = [value for box in boxes for value in (box.yMinimum(), box.yMaximum())]
    return [value for value in x if math.isfinite(value)], [value for value in y if math.isfinite(value)]
