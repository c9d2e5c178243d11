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
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QRectF, QUuid
from qgis.PyQt.QtGui import QColor
from qgis.PyQt.QtXml import QDomDocument

from ..plan.map_sheet import clear_of_ends, framed, graticule, round_length, usual_scale
from .sheet_flow import Flow
from .sheet_map import MapContent, is_crowded
from .sheet_north import north_arrow
from .sheet_sketch import BEYOND, extent_of
from .sheet_template import loaded
from .sheet_text import Letters, installed

MARGIN, LARGEST_SCALE, SUBJECTS_WITHIN = 0.1, 1000.0, 25_000.0  # of the map; subjects are fitted in up to the last
LONE_SCALE = 5000.0  # of one place alone: so that it can be found
GRID_MM, BAR_MM = 38.0, 28.0  # between lines of the grid, and of a segment of the scale bar: at most
ENDS_MM = {"x": (5.0, 4.5), "y": (5.0, 5.0)}  # nearer to a corner the numbers of lines would meet, or stand out over the frame
WIDER, WORLD_SCALE, SEA = 5.0, 20_000_000.0, "#DFE7EA"  # the overview: times the map, or where the project has no layers the world about it
LEAST_PT, LEAST_TEXT_PT = 5.5, 6.4  # of labels, and of what stands beneath the map
SMALLER = (0.96, 0.92, 0.88, 0.855)  # letters tried so that a sheet keeps to one page
GRATICULE = 0.9  # of half the overview's width, at most, between its lines
INK, RULE = "#222222", "#888888"
FITTED = "sheet_fitted"
POINT = QgsWkbTypes.GeometryType.PointGeometry


class Page:
    """The layout of one sheet.

    Parameters
    ----------
    document : QDomDocument
        The template.
    project : QgsProject
        A private one, in which the layers are.
    folder : Path
        For the pictures that it takes.

    Attributes
    ----------
    layout : QgsPrintLayout
    off_map : set of str
        Marks of places beyond the map's edge.
    scale, grid_m, graticule_deg : float
        Denominator of the map's scale, the distance between lines of its grid [m], and of the overview's in
        longitude and latitude [deg], None where it has none.
    extent : QgsRectangle
        Of the map, on the site's grid.
    missing_fonts : set of str
        Families that the template asks for and the computer has not.
    own : list of QgsVectorLayer
        The layers made for it.
    """

    def __init__(self, document, project, folder):
        self.project, self.layout, self._folder = project, loaded(document, project), folder
        self._items = {item.id(): item for item in self.layout.items() if isinstance(item, QgsLayoutItem) and item.id()}
        self.off_map, self.scale, self.grid_m, self.graticule_deg, self.own = set(), 0.0, 0.0, None, []
        self.missing_fonts, self.extent, self._contents = set(), None, []
        self.font = self._installed(self._items["body"])

    def close(self):
        """Let go of the layout, which must not outlive its project."""
        self._items.clear()
        self._contents = []
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

    def place(self, site, scale):
        """Lay the map over a site.

        Parameters
        ----------
        site : sheet_sites.Site
        scale : float or None
            Denominator; None for the scale that fits.
        """
        self.project.setCrs(site.crs)
        self.project.setEllipsoid("EPSG:7030")
        drawn = self._item("map")
        drawn.setMapRotation(0.0)
        drawn.setCrs(site.crs)
        drawn.setKeepLayerSet(True)
        width, height = drawn.rect().width() / 1000.0, drawn.rect().height() / 1000.0
        x, y, self.scale = self._framed(site, width, height, scale)
        self.grid_m = round_length(GRID_MM * self.scale / 1000.0)
        half_x, half_y = width * self.scale / 2.0, height * self.scale / 2.0
        x, y = (self._clear(axis, middle, half) for axis, middle, half in (("x", x, half_x), ("y", y, half_y)))
        self.extent = QgsRectangle(x - half_x, y - half_y, x + half_x, y + half_y)
        drawn.setExtent(self.extent)  # of the item's own proportions, which therefore stay
        inside = [self.extent.contains(*xy) for xy in zip(site.x.tolist(), site.y.tolist())]
        self.off_map = {mark for mark, seen in zip(site.places.mark.tolist(), inside) if not seen}

    def _clear(self, axis, middle, half):
        """The middle of an axis, moved so that no line of the grid stands near its ends."""
        free = (mm * self.scale / 1000.0 for mm in ENDS_MM[axis])
        return middle + clear_of_ends(middle - half, middle + half, self.grid_m, *free)

    def is_crowded(self, own):
        """Whether labels of layers stand upon each other where the map lies."""
        return is_crowded(self._item("map"), [layer for layer in own if layer.labelsEnabled() and layer.geometryType() == POINT])

    def draw(self, site, own, here, background, wide, go_on):
        """Show a site, once the map lies over it.

        Parameters
        ----------
        site : sheet_sites.Site
        own : list of QgsVectorLayer
            Its layers.
        here : QgsVectorLayer
            Where it lies, for the overview.
        background, wide : list of QgsMapLayer
            What lies beneath the map, and beneath the overview: the same, or where that is nothing the world.
        go_on : callable
            Whether to go on, asked while the layers are drawn.
        """
        drawn = self._item("map")
        self._contents = [MapContent(self.layout, drawn, own, background, go_on)]
        self._grid(drawn, site.crs)
        self._overview(site, here, wide, bool(background), go_on)
        self._legend(own, drawn)
        self._scale_bar(drawn)
        arrow = self._item("north")
        if arrow is not None:
            # A file, since what is told as a path that holds the picture itself is drawn in pixels.
            file = self._folder / f"north-{site.number}.svg"
            file.write_text(north_arrow(site.north.true_deg, site.north.declination_deg), encoding="ascii")
            arrow.setPicturePath(str(file))

    @staticmethod
    def _framed(site, width, height, scale):
        """Centre and denominator: standing places and ways fit, and the subjects and zones too while the map stays detailed."""
        standing = site.places.kind != "subject"  # parking too
        zones = extent_of([zone.geometry for zone in site.grounds["ZONES"]])
        ways = extent_of([way for _, way in site.walks])
        if not standing.any():  # people stand in the zones alone
            ways, zones = ([*own, *more] for own, more in zip(ways, zones)), ((), ())
        x, y = (np.append(own[standing], more) for own, more in zip((site.x, site.y), ways))
        if not x.size:
            x, y = site.x, site.y
        centre_x, centre_y, need = framed(x, y, width, height, MARGIN)
        most = max(SUBJECTS_WITHIN, need) if scale is None else scale
        for subject in np.argsort(np.hypot(site.x - centre_x, site.y - centre_y)).tolist():
            more_x, more_y = np.append(x, site.x[subject]), np.append(y, site.y[subject])
            seen = framed(more_x, more_y, width, height, MARGIN)
            if seen[2] > most:
                break
            x, y, (centre_x, centre_y, need) = more_x, more_y, seen
        seen = framed(np.append(x, zones[0]), np.append(y, zones[1]), width, height, MARGIN)
        if seen[2] <= most:
            centre_x, centre_y, need = seen
        return centre_x, centre_y, scale or usual_scale(max(need, LARGEST_SCALE if need else LONE_SCALE))

    def _grid(self, drawn, crs):
        grid = drawn.grid()
        grid.setCrs(crs)
        grid.setIntervalX(self.grid_m)
        grid.setIntervalY(self.grid_m)

    def _overview(self, site, here, layers, is_project, go_on):
        drawn = self._item("overview")
        if drawn is None:
            return
        drawn.setCrs(site.crs)
        drawn.setKeepLayerSet(True)
        if not is_project:
            drawn.setBackgroundColor(QColor(SEA))
        self._contents.append(MapContent(self.layout, drawn, [here], layers, go_on))
        width, height = drawn.rect().width(), drawn.rect().height()
        half, centre = max(self.extent.width(), self.extent.height()) / 2.0, self.extent.center()
        wide = WIDER * half if is_project else max(WIDER * half, WORLD_SCALE * width / 2000.0)
        high = wide * height / width
        drawn.setExtent(QgsRectangle(centre.x() - wide, centre.y() - high, centre.x() + wide, centre.y() + high))
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
            if layer.name() == BEYOND or not any(layer.getFeatures(QgsFeatureRequest(drawn.extent()))):
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
        bar.setMapUnitsPerScaleBarUnit(1.0)  # the unit says it all
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
        self._flow = self._laid(list(blocks), size_of(self._items["body"]))
        for name in ("body", "body_continued"):
            self._items[name].setText("")
        self._make_pages(self._flow.frames)
        QgsExpressionContextUtils.setLayoutVariables(self.layout, {f"sheet_{name}": value for name, value in variables.items()})
        self._fit_labels()
        for content in self._contents:
            content.lie_beneath()
        self.layout.refresh()

    def _laid(self, blocks, size_pt):
        """Blocks laid out in letters of a size; smaller where what would go on on a second page then fits on the first."""
        laid = []
        for part in (1.0, *SMALLER):
            flow = Flow(Letters(self.font, part * size_pt), lambda frame: self._boxes[min(frame, 1)][2:])
            flow.lay(blocks)
            if flow.frames == 1:
                return flow
            laid.append(flow)
            if flow.frames > 2 or part * size_pt <= LEAST_TEXT_PT:
                break
        return laid[0]

    def _box(self, name):
        item = self._items[name]
        return item.pagePos().x(), item.pagePos().y(), item.rect().width(), item.rect().height()

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
                letters = Letters(self._installed(label), size_of(label), font_of(label).bold())
                fitted, lines = letters.fitted(label.currentText(), label.rect().width(), label.rect().height(), LEAST_PT)
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
