"""The layers of a sheet's map, made for it on its own grid: what a legend names and an overview repeats."""

import math

import numpy as np
from qgis.core import NULL, QgsFeature, QgsGeometry, QgsPointXY, QgsVectorLayer, QgsWkbTypes

from . import field_words as words
from . import sheet_symbols as look
from .geometries import grid_bearings, points_of, sightlines_of
from .translation import tr

FIELDS = "field=label:string(0)&field=grid_deg:double&field=looks:integer&field=sight:string(0)"
LABEL_LETTERS = 26  # of a name on the map; the table has all of it
# Places on a map with their names, with all their marks, and standpoints with as many as there is room for: more would be a blot.
MOST_NAMES, MOST_MARKS, MOST_LABELS = 16, 24, 60
MOST_BEYOND = 3  # sightlines that go on beyond the map, with their subjects' names; more with their marks
APART_MM = 8.0  # from one arrowhead to the next of the same subject, at least
INSIDE_MM = 2.0  # from the map's edge to the arrowhead of a sightline that goes on beyond it
BEYOND = "beyond"  # what the legend leaves out
KINDS = {
    QgsWkbTypes.GeometryType.PointGeometry: "Point",
    QgsWkbTypes.GeometryType.LineGeometry: "MultiLineString",
    QgsWkbTypes.GeometryType.PolygonGeometry: "MultiPolygon",
}


def sketch(site, font, transform_context, extent, m_per_mm, named=True):
    """The layers of a site, the uppermost first.

    Parameters
    ----------
    site : sheet_sites.Site
    font : QFont
        Of labels.
    extent : QgsRectangle
        Of the map.
    m_per_mm : float
        Of the map, for a millimetre of paper.
    named : bool
        Whether places have their names on the map, as far as there are not too many; else their marks, by which the table has them.
    transform_context : QgsCoordinateTransformContext

    Returns
    -------
    list of QgsVectorLayer
        Those that hold anything.
    """
    maker = _Maker(site, font, transform_context, named)
    made = [
        maker.subjects(),
        maker.cameras(),
        maker.standpoints(),
        maker.parking(),
        maker.beyond(extent, m_per_mm),
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
    def __init__(self, site, font, transform_context, named=True):
        self.site, self.font, self.transform_context = site, font, transform_context
        self._named = named and len(site.places.name) <= MOST_NAMES

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
        labeling = look.labels(_bold(self.font), always=self._all, **look.beside(0.8, 10))
        return self._layer(tr("Subject"), QgsWkbTypes.GeometryType.PointGeometry, rows, look.subject(), labeling)

    def parking(self):
        rows = [(self._point(i), self._label(i), NULL, 0, "") for i in self.site.places.of("parking").tolist()]
        labeling = look.labels(self.font, always=self._all, **look.beside(0.8, 5))
        return self._layer(tr("Parking"), QgsWkbTypes.GeometryType.PointGeometry, rows, look.parking(), labeling)

    def here(self):
        """The sheet's first place."""
        return self._layer(tr("Site"), QgsWkbTypes.GeometryType.PointGeometry, [(self._point(0), "", NULL, 0, "")], look.here())

    def cameras(self):
        labeling = look.labels(_bold(self.font), always=self._all, **look.beside(1.0, 9))
        return self._looking("camera", self.site.lines, tr("Camera"), look.camera(), labeling)

    def standpoints(self):
        own = self.site.places.of("standpoint")
        labeling = look.labels(self.font, look.STANDPOINT_INK, self._all, **look.beside(0.8, 6)) if own.size <= MOST_LABELS else None
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
        sights = [sight if sight in look.SIGHTS else "" for sight in lines["sight"].tolist()]
        rows = [(geometry, "", NULL, 0, sights[i]) for i, geometry in self._drawn_lines()]
        return self._layer(tr("Sightline"), QgsWkbTypes.GeometryType.LineGeometry, rows, look.sightline(set(sights)))

    def beyond(self, extent, m_per_mm):
        """Where sightlines leave the map: an arrowhead each, with the subject's mark and how far off it is."""
        lines, places = self.site.lines, self.site.places
        marks = {places.name[i]: places.mark[i] for i in places.of("subject").tolist()}
        inner = extent.buffered(-INSIDE_MM * m_per_mm)
        crossings = [(i, _crossing(geometry, inner)) for i, geometry in self._drawn_lines()]
        crossings = _apart([(i, crossing) for i, crossing in crossings if crossing is not None], lines["subject"], APART_MM * m_per_mm)
        rows = []
        for i, (point, grid_deg) in crossings:
            mark, name = marks.get(lines["subject"][i], ""), _short(lines["subject"][i])
            distance = words.distance(float(lines["dist_m"][i]))
            label = tr("to {subject}, {distance}").format(subject=f"{mark} {name}".strip(), distance=distance)
            label = label if self._named and len(crossings) <= MOST_BEYOND else mark
            rows.append((QgsGeometry.fromPointXY(point), label, grid_deg, 1, ""))
        labeling = look.labels(self.font, always=self._all, **look.beside(0.8, 8))
        return self._layer(BEYOND, QgsWkbTypes.GeometryType.PointGeometry, rows, look.beyond(), labeling)

    def _drawn_lines(self):
        """Index and geometry on the grid of each sightline."""
        lines = self.site.lines
        ends = [lines[name].astype(float) for name in ("lon_deg", "lat_deg", "end_lon_deg", "end_lat_deg")]
        geometries = sightlines_of(*ends, self.site.crs, self.transform_context) if len(lines["camera"]) else []
        return [(i, geometry) for i, geometry in enumerate(geometries) if not geometry.isNull()]

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
            labeling = look.labels(self.font, look.GREY_INK, priority=3)
            yield self._layer(name, QgsWkbTypes.GeometryType.PolygonGeometry, rows, renderer, labeling)

    def _point(self, i):
        return points_of(self.site.x[i : i + 1], self.site.y[i : i + 1])[0]

    @property
    def _all(self):
        """Whether every place has its label, on others if need be."""
        return len(self.site.places.name) <= MOST_MARKS

    def _label(self, i):
        mark = self.site.places.mark[i]
        return f"{mark} {_short(self.site.places.name[i])}" if self._named else mark


def _crossing(line, rectangle):
    """Where a line leaves a rectangle, and its direction there, clockwise from the grid's north [deg]; None where it ends inside."""
    end = list(line.vertices())[-1]
    if rectangle.contains(end.x(), end.y()):
        return None
    inside = line.clipped(rectangle)
    if inside.isNull() or inside.isEmpty():
        return None
    before, last = list(inside.vertices())[-2:]
    return QgsPointXY(last), before.azimuth(last) % 360.0


def _apart(crossings, subjects, least):
    """Crossings, without those that stand near another one of the same subject."""
    kept = []
    for i, (point, deg) in crossings:
        if all(subjects[j] != subjects[i] or point.distance(other) >= least for j, (other, _) in kept):
            kept.append((i, (point, deg)))
    return kept


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
