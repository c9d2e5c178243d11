"""A sheet as a layout: a template filled in with the map of a site and with its words, on as many pages as they take."""

import numpy as np
from qgis.core import (
    QgsExpressionContextUtils,
    QgsFeatureRequest,
    QgsLayoutItem,
    QgsLayoutItemLabel,
    QgsLayoutItemPage,
    QgsLegendRenderer,
    QgsLegendStyle,
    QgsReadWriteContext,
    QgsRectangle,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import QRectF, QUuid
from qgis.PyQt.QtGui import QColor
from qgis.PyQt.QtXml import QDomDocument

from ..plan.map_sheet import clear_of_corner, framed, graticule, round_length, usual_scale
from .sheet_flow import Flow
from .sheet_north import north_arrow
from .sheet_sketch import extent_of
from .sheet_template import loaded
from .sheet_text import Letters, installed

MARGIN, LARGEST_SCALE, SUBJECTS_WITHIN = 0.1, 1000.0, 25_000.0  # of the map; subjects are fitted in up to the last
GRID_MM, BAR_MM = 38.0, 28.0  # between lines of the grid, and of a segment of the scale bar: at most
CORNER_MM = 4.0  # nearer to the corner the numbers of two lines would meet
WIDER, WORLD_SCALE, SEA = 5.0, 20_000_000.0, "#DFE7EA"  # the overview: times the map, or where the project has no layers the world about it
LEAST_PT = 5.5
GRATICULE = 0.9  # of half the overview's width, at most, between its lines
INK, RULE = "#222222", "#888888"
FITTED = "sheet_fitted"


class Page:
    """The layout of one sheet.

    Parameters
    ----------
    document : QDomDocument
        The template.
    project : QgsProject
        A private one, in which the layers are.

    Attributes
    ----------
    layout : QgsPrintLayout
    off_map : set of str
        Marks of places beyond the map's edge.
    scale, grid_m, graticule_deg : float
        Denominator of the map's scale, the distance between lines of its grid [m], and of the overview's in
        longitude and latitude [deg], None where it has none.
    missing_fonts : set of str
        Families that the template asks for and the computer has not.
    own : list of QgsVectorLayer
        The layers made for it.
    """

    def __init__(self, document, project):
        self.project, self.layout = project, loaded(document, project)
        self._items = {item.id(): item for item in self.layout.items() if isinstance(item, QgsLayoutItem) and item.id()}
        self.off_map, self.scale, self.grid_m, self.graticule_deg, self.own = set(), 0.0, 0.0, None, []
        self.missing_fonts = set()
        self.font = self._installed(self._items["body"])

    def close(self):
        """Let go of the layout, which must not outlive its project."""
        self._items.clear()
        self.layout = self.project = None

    def _installed(self, label):
        asked = font_of(label)
        font = installed(asked)
        if font.family() != asked.family():
            self.missing_fonts.add(asked.family())
        return font

    def _item(self, name):
        return self._items.get(name)

    # the map

    def draw(self, site, own, here, background, wide, scale):
        """Show a site.

        Parameters
        ----------
        site : sheet_sites.Site
        own : list of QgsVectorLayer
            Its layers.
        here : QgsVectorLayer
            Where it lies, for the overview.
        background, wide : list of QgsMapLayer
            What lies beneath the map, and beneath the overview: the same, or where that is nothing the world.
        scale : float or None
            Denominator; None for the scale that fits.
        """
        self.project.setCrs(site.crs)
        self.project.setEllipsoid("EPSG:7030")
        drawn = self._item("map")
        drawn.setCrs(site.crs)
        drawn.setKeepLayerSet(True)
        drawn.setLayers([*own, *background])
        width, height = (length / 1000.0 for length in (drawn.sizeWithUnits().width(), drawn.sizeWithUnits().height()))
        x, y, self.scale = self._framed(site, width, height, scale)
        self.grid_m = round_length(GRID_MM * self.scale / 1000.0)
        half_x, half_y = width * self.scale / 2.0, height * self.scale / 2.0
        west = clear_of_corner(x - half_x, self.grid_m, CORNER_MM * self.scale / 1000.0)
        extent = QgsRectangle(west, y - half_y, west + 2.0 * half_x, y + half_y)
        drawn.setExtent(extent)  # of the item's own proportions, which therefore stay
        inside = [extent.contains(*xy) for xy in zip(site.x.tolist(), site.y.tolist())]
        self.off_map = {mark for mark, seen in zip(site.places.mark.tolist(), inside) if not seen}
        self._grid(drawn, site.crs)
        self._overview(site, here, wide, bool(background), (x, y), (half_x, half_y))
        self._legend(own, drawn)
        self._scale_bar(drawn)
        arrow = self._item("north")
        if arrow is not None:
            arrow.setPicturePath(north_arrow(site.north.true_deg, site.north.declination_deg))

    @staticmethod
    def _framed(site, width, height, scale):
        """Centre and denominator: standing places, ways and zones fit, and the subjects too while the map stays detailed."""
        standing = site.places.kind != "subject"  # parking too
        walk_x, walk_y = extent_of([way for _, way in site.walks] + [zone.geometry for zone in site.grounds["ZONES"]])
        x, y = np.append(site.x[standing], walk_x), np.append(site.y[standing], walk_y)
        if not x.size:
            x, y = site.x, site.y
        centre_x, centre_y, need = framed(x, y, width, height, MARGIN)
        if scale is not None:
            return centre_x, centre_y, scale
        for subject in np.argsort(np.hypot(site.x - centre_x, site.y - centre_y)).tolist():
            more_x, more_y = np.append(x, site.x[subject]), np.append(y, site.y[subject])
            seen = framed(more_x, more_y, width, height, MARGIN)
            if seen[2] > max(SUBJECTS_WITHIN, need):
                break
            x, y, (centre_x, centre_y, need) = more_x, more_y, seen
        return centre_x, centre_y, usual_scale(max(need, LARGEST_SCALE))

    def _grid(self, drawn, crs):
        grid = drawn.grid()
        grid.setCrs(crs)
        grid.setIntervalX(self.grid_m)
        grid.setIntervalY(self.grid_m)

    def _overview(self, site, here, layers, is_project, centre, half):
        drawn = self._item("overview")
        if drawn is None:
            return
        drawn.setCrs(site.crs)
        drawn.setKeepLayerSet(True)
        drawn.setLayers([here, *layers])
        if not is_project:
            drawn.setBackgroundColor(QColor(SEA))
        width, height = drawn.sizeWithUnits().width(), drawn.sizeWithUnits().height()
        wide = WIDER * max(half) if is_project else max(WIDER * max(half), WORLD_SCALE * width / 2000.0)
        high = wide * height / width
        drawn.setExtent(QgsRectangle(centre[0] - wide, centre[1] - high, centre[0] + wide, centre[1] + high))
        if drawn.overviews().size():
            drawn.overview().setLinkedMap(self._item("map"))
        if drawn.grid().enabled():
            self.graticule_deg = graticule(GRATICULE * wide, float(site.places.lat_deg[0]))
            drawn.grid().setIntervalX(self.graticule_deg[0])
            drawn.grid().setIntervalY(self.graticule_deg[1])

    def _legend(self, own, drawn):
        legend = self._item("legend")
        if legend is None:
            return
        legend.setLinkedMap(drawn)
        legend.setAutoUpdateModel(False)
        root = legend.model().rootGroup()
        root.clear()
        for layer in own:
            if not any(layer.getFeatures(QgsFeatureRequest(drawn.extent()))):
                continue
            node = root.addLayer(layer)
            if layer.renderer().type() == "categorizedSymbol":  # its categories say it all
                QgsLegendRenderer.setNodeLegendStyle(node, QgsLegendStyle.Style.Hidden)
        legend.adjustBoxSize()

    def _scale_bar(self, drawn):
        bar = self._item("scalebar")
        if bar is None:
            return
        bar.setLinkedMap(drawn)
        segment_m = round_length(BAR_MM * self.scale / 1000.0)
        in_km = segment_m >= 1000.0
        bar.setUnits(QgsUnitTypes.DistanceUnit.DistanceKilometers if in_km else QgsUnitTypes.DistanceUnit.DistanceMeters)
        bar.setMapUnitsPerScaleBarUnit(1000.0 if in_km else 1.0)
        bar.setUnitLabel("km" if in_km else "m")
        bar.setUnitsPerSegment(segment_m / (1000.0 if in_km else 1.0))
        bar.refresh()

    # the words

    def write(self, blocks, variables):
        """Lay out blocks beneath the map and on further pages, and fill in the labels of the template.

        Parameters
        ----------
        blocks : iterable
            Of `sheet_flow`.
        variables : dict of str to str
            What labels of the template may name, `[% @sheet_title %]`.
        """
        boxes = [self._box(name) for name in ("body", "body_continued")]
        self._boxes = boxes
        self._flow = Flow(Letters(self.font, size_of(self._items["body"])), lambda frame: boxes[min(frame, 1)][2:])
        self._flow.lay(blocks)
        for name in ("body", "body_continued"):
            self._items[name].setText("")
        self._make_pages(self._flow.frames)
        QgsExpressionContextUtils.setLayoutVariables(self.layout, {f"sheet_{name}": value for name, value in variables.items()})
        self._fit_labels()
        self.layout.refresh()

    def _box(self, name):
        item = self._items[name]
        where, size = item.pagePositionWithUnits(), item.sizeWithUnits()
        return where.x(), where.y(), size.width(), size.height()

    def _make_pages(self, count):
        """As many pages as there are frames: without the second of the template, or with copies of it."""
        pages = self.layout.pageCollection()
        own = [item for item in self.layout.items() if _is_placed(item) and item.page() == 1]
        if count == 1:
            for item in own:
                self.layout.removeLayoutItem(item)
            pages.deletePage(1)
            return
        for _ in range(2, count):
            page = QgsLayoutItemPage(self.layout)
            page.setPageSize(pages.page(1).sizeWithUnits())
            pages.addPage(page)
        for number in range(2, count):
            for item, made in zip(own, self.layout.addItemsFromXml(*_copied(own))):
                made.attemptMove(item.pagePositionWithUnits(), True, False, number)

    def paint(self, painter, number, dots_per_mm):
        """Paint the blocks of a page over its layout: as text that nothing reads as an expression, thousands of lines in a moment."""
        painter.save()
        painter.scale(dots_per_mm, dots_per_mm)
        x, y, _, _ = self._boxes[min(number, 1)]
        painter.translate(x, y)
        for rule in self._flow.rules:
            if rule.frame == number:
                painter.fillRect(QRectF(rule.x, rule.y, rule.width, rule.thickness), QColor(RULE))
        painter.setPen(QColor(INK))
        for line in self._flow.lines:
            if line.frame == number:
                line.letters.paint(painter, line.x, line.y, line.width, line.text, line.right)
        painter.restore()

    def _fit_labels(self):
        """Fit what the template's labels say into them: in smaller letters, on more lines."""
        for label in self.layout.items():
            if isinstance(label, QgsLayoutItemLabel) and "@sheet_" in label.text():
                size = label.sizeWithUnits()
                letters = Letters(self._installed(label), size_of(label), font_of(label).bold())
                fitted, lines = letters.fitted(label.currentText(), size.width(), size.height(), LEAST_PT)
                _set_text(label, "\n".join(lines))
                set_letters(label, fitted)

    @property
    def pages(self):
        """How many there are."""
        return self.layout.pageCollection().pageCount()

    def undrawable(self):
        """Letters that it says and no font of the computer has."""
        said = {self.font.family(): (Letters(self.font, LEAST_PT), set())}
        said[self.font.family()][1].update(*(line.text for line in self._flow.lines))
        for label in self.layout.items():
            if isinstance(label, QgsLayoutItemLabel):
                font = font_of(label)
                said.setdefault(font.family(), (Letters(font, LEAST_PT), set()))[1].update(label.currentText())
        return {letter for letters, text in said.values() for letter in letters.undrawable(sorted(text))}


def _copied(items):
    """Items as XML, each with an id of its own: a layout that changes moves items by their ids."""
    document, context = QDomDocument(), QgsReadWriteContext()
    copied = document.createElement("Copied")
    for item in items:
        item.writeXml(copied, document, context)
        copied.lastChildElement().setAttribute("uuid", QUuid.createUuid().toString())
    return copied, document, context


def _is_placed(item):
    return isinstance(item, QgsLayoutItem) and not isinstance(item, QgsLayoutItemPage)


def _set_text(label, text):
    """Let a label say a text as it is: a variable's value is never read as an expression."""
    QgsExpressionContextUtils.setLayoutItemVariable(label, FITTED, text)
    label.setText(f"[% @{FITTED} %]")
    label.setMarginX(0.0)
    label.setMarginY(0.0)


def font_of(label):
    """The font of a label, whichever way this QGIS keeps it."""
    return label.textFormat().font() if hasattr(label, "textFormat") else label.font()


def size_of(label):
    """The size of its letters, in points."""
    return label.textFormat().size() if hasattr(label, "textFormat") else label.font().pointSizeF()


def set_letters(label, letters):
    """Give a label its letters."""
    if hasattr(label, "textFormat"):
        text = label.textFormat()
        text.setFont(letters.font)
        text.setSize(letters.size_pt)
        text.setSizeUnit(QgsUnitTypes.RenderUnit.RenderPoints)
        label.setTextFormat(text)
    else:
        label.setFont(letters.font)
