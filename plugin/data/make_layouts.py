"""Make the layout templates of `site_map`: plugin/layouts/site_map_PAPER_TURN.qpt.

Run with a Python that can import the oldest QGIS served, since newer ones open its layouts: python3 plugin/data/make_layouts.py
A template has two pages: the sheet, and what each further page of it looks like. `site_map` fills in the items by their ids.
"""

import os
import re
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["QT_HASH_SEED"] = "0"  # attributes in the same order each time

from qgis.core import (
    QgsApplication,
    QgsCoordinateReferenceSystem,
    QgsFillSymbol,
    QgsLayoutItem,
    QgsLayoutItemLabel,
    QgsLayoutItemLegend,
    QgsLayoutItemMap,
    QgsLayoutItemMapGrid,
    QgsLayoutItemMapOverview,
    QgsLayoutItemPage,
    QgsLayoutItemPicture,
    QgsLayoutItemScaleBar,
    QgsLayoutItemShape,
    QgsLayoutMeasurement,
    QgsLayoutPoint,
    QgsLayoutSize,
    QgsLegendStyle,
    QgsLineSymbol,
    QgsPrintLayout,
    QgsProject,
    QgsReadWriteContext,
    QgsRectangle,
    QgsTextFormat,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor, QFont

LAYOUTS = Path(__file__).parents[1] / "layouts"
FONT, INK, FAINT, PAPER = "DejaVu Sans", "#222222", "#555555", "#FFFFFF"
SIZES = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
EDGE, HEAD, FOOT = 10.0, 34.5, 12.0  # free edge; down to where the map begins; up to where the text ends
NUMBERS = 5.0  # left of the map and beneath it, for the numbers of the grid
SCALE_LINE = 11.0  # beneath them
SIDE = 44.0  # the column beside an upright map
BELOW = 35.0  # the row beneath a map across
PLACEHOLDER = "Text and tables go here, in these letters."
LEFT, CENTRE, RIGHT = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignHCenter, Qt.AlignmentFlag.AlignRight


class Template:
    """One template."""

    def __init__(self, paper, turn):
        self.width, self.height = SIZES[paper] if turn == "portrait" else SIZES[paper][::-1]
        self.project = QgsProject()
        self.project.setCrs(QgsCoordinateReferenceSystem("EPSG:4326"))
        self.layout = QgsPrintLayout(self.project)
        self.layout.initializeDefaults()
        self.layout.setName("Site map")
        page = self.layout.pageCollection().page(0)
        page.setPageSize(QgsLayoutSize(self.width, self.height))
        more = QgsLayoutItemPage(self.layout)
        more.setPageSize(QgsLayoutSize(self.width, self.height))
        self.layout.pageCollection().addPage(more)
        self.turn, self.page = turn, 0
        self.across()
        self._head(15.0, 10.5)
        (self._upright if turn == "portrait" else self._across)()
        self._foot()
        self.page = 1
        self._head(11.0, 10.5)
        self._label("body_continued", PLACEHOLDER, EDGE, HEAD - 1.0, self.width - 2 * EDGE, self.height - HEAD + 1.0 - FOOT, self.text_pt)
        self._foot()

    def across(self):
        self.text_pt = 7.5 if self.turn == "portrait" else 6.8

    # what pages have in common

    def _head(self, title_pt, title_mm):
        right = 48.0
        whole = self.width - 2 * EDGE
        title = self._label("title", "[% @sheet_title %]", EDGE, 7.5, whole - right, title_mm, title_pt, bold=True)
        title.setVAlign(Qt.AlignmentFlag.AlignBottom)
        self._label("count", "[% @sheet_count %]", self.width - EDGE - right, 8.8, right, 5.0, 8.0, align=RIGHT, colour=FAINT)
        self._label("permit", "[% @sheet_permit %]", self.width - EDGE - right, 13.2, right, 5.0, 8.0, align=RIGHT)
        self._label("site", "[% @sheet_site %]", EDGE, 18.5, whole, 5.0, 9.5)
        strip = self._label("notice", "[% @sheet_notice %]", EDGE, 25.0, whole, 6.0, 9.0, bold=True, align=CENTRE)
        strip.setFrameEnabled(True)
        strip.setFrameStrokeWidth(QgsLayoutMeasurement(0.4))
        strip.setVAlign(Qt.AlignmentFlag.AlignVCenter)

    def _foot(self):
        y, whole = self.height - FOOT + 3.0, self.width - 2 * EDGE
        rule = QgsLayoutItemShape(self.layout)
        rule.setShapeType(QgsLayoutItemShape.Shape.Rectangle)
        rule.setSymbol(QgsFillSymbol.createSimple({"color": INK, "outline_style": "no"}))
        self._add(rule, "", EDGE, y - 1.2, whole, 0.2)
        self._label("made", "[% @sheet_made %]", EDGE, y, 0.72 * whole, 4.0, 6.5, colour=FAINT)
        page = "[% @sheet_page_word %] [% @layout_page %] / [% @layout_numpages %]"
        self._label("page", page, EDGE + 0.74 * whole, y, 0.26 * whole, 4.0, 6.5, align=RIGHT, colour=FAINT)

    # the sheet

    def _upright(self):
        map_width, map_height = self.width - 2 * EDGE - NUMBERS - SIDE - 3.0, 0.385 * self.height
        left = EDGE + NUMBERS
        self._map(left, HEAD, map_width, map_height)
        bottom = HEAD + map_height + NUMBERS
        self._scale(left, bottom, map_width)
        side = self.width - EDGE - SIDE
        self._north(side, HEAD, 15.0, 25.0, side + 16.0, HEAD + 1.0, SIDE - 16.0, 24.0)
        self._overview(side, HEAD + map_height - 36.0, SIDE, 36.0)
        self._legend(side - 1.5, HEAD + 27.0, SIDE)
        top = bottom + SCALE_LINE + 1.0
        self._label("body", PLACEHOLDER, EDGE, top, self.width - 2 * EDGE, self.height - top - FOOT, self.text_pt)

    def _across(self):
        text = 124.0
        map_width = self.width - 2 * EDGE - NUMBERS - text - 5.0
        left, row = EDGE + NUMBERS, self.height - FOOT - BELOW
        map_height = row - HEAD - NUMBERS - SCALE_LINE - 1.0
        self._map(left, HEAD, map_width, map_height)
        self._scale(left, HEAD + map_height + NUMBERS, map_width)
        self._north(EDGE, row, 15.0, 25.0, EDGE + 16.0, row + 1.0, 27.0, 30.0)
        self._legend(EDGE + 44.0, row - 1.5, 60.0)
        self._overview(left + map_width - 38.0, row, 38.0, BELOW - 5.0)
        self._label("body", PLACEHOLDER, self.width - EDGE - text, HEAD - 1.0, text, self.height - HEAD + 1.0 - FOOT, self.text_pt)

    def _map(self, x, y, width, height):
        drawn = QgsLayoutItemMap(self.layout)
        drawn.attemptResize(QgsLayoutSize(width, height))
        drawn.setExtent(QgsRectangle(0.0, 0.0, width, height))
        self._add(drawn, "map", x, y, width, height)
        drawn.setFrameEnabled(True)
        drawn.setFrameStrokeWidth(QgsLayoutMeasurement(0.3))
        grid = drawn.grid()
        grid.setEnabled(True)
        grid.setStyle(QgsLayoutItemMapGrid.GridStyle.Solid)
        grid.setLineSymbol(QgsLineSymbol.createSimple({"line_color": "0,0,0,60", "line_width": "0.1"}))
        grid.setAnnotationEnabled(True)
        grid.setAnnotationPrecision(0)
        grid.setAnnotationTextFormat(self._format(6.0, False, FAINT))
        grid.setAnnotationFrameDistance(0.8)
        inside, outside = QgsLayoutItemMapGrid.AnnotationPosition.InsideMapFrame, QgsLayoutItemMapGrid.AnnotationPosition.OutsideMapFrame
        sides, hidden = QgsLayoutItemMapGrid.BorderSide, QgsLayoutItemMapGrid.DisplayMode.HideAll
        for side, shown in ((sides.Left, True), (sides.Bottom, True), (sides.Right, False), (sides.Top, False)):
            grid.setAnnotationPosition(outside if shown else inside, side)
            if not shown:
                grid.setAnnotationDisplay(hidden, side)
        grid.setAnnotationDirection(QgsLayoutItemMapGrid.AnnotationDirection.Vertical, sides.Left)
        self.drawn = drawn

    def _scale(self, x, y, width):
        bar = QgsLayoutItemScaleBar(self.layout)
        bar.setStyle("Single Box")
        bar.setLinkedMap(self.drawn)
        bar.setUnits(QgsUnitTypes.DistanceUnit.DistanceMeters)
        bar.setTextFormat(self._format(7.0, False, INK))
        bar.setHeight(1.8)
        bar.setBoxContentSpace(0.0)
        bar.setLabelBarSpace(0.8)
        bar.setNumberOfSegmentsLeft(0)
        bar.setNumberOfSegments(2)
        self._add(bar, "scalebar", x, y, 70.0, 9.0)
        self._label("scale", "[% @sheet_scale %]", x + 0.6 * width, y + 0.5, 0.4 * width, 9.0, 7.0, align=RIGHT)

    def _north(self, x, y, width, height, text_x, text_y, text_width, text_height):
        arrow = QgsLayoutItemPicture(self.layout)
        arrow.setResizeMode(QgsLayoutItemPicture.ResizeMode.Zoom)
        self._add(arrow, "north", x, y, width, height)
        self._label("north_text", "[% @sheet_north %]", text_x, text_y, text_width, text_height, 6.5)

    def _legend(self, x, y, width):
        legend = QgsLayoutItemLegend(self.layout)
        legend.setAutoUpdateModel(False)
        legend.setResizeToContents(True)
        fonts = {QgsLegendStyle.Style.Title: 7.5, QgsLegendStyle.Style.Group: 7.5, QgsLegendStyle.Style.Subgroup: 7.0}
        for style, size in {**fonts, QgsLegendStyle.Style.SymbolLabel: 7.0}.items():
            legend.setStyleFont(style, self._font(size, size > 7.0))
        for style in (QgsLegendStyle.Style.Symbol, QgsLegendStyle.Style.Subgroup):
            legend.rstyle(style).setMargin(QgsLegendStyle.Side.Top, 0.9)
        legend.rstyle(QgsLegendStyle.Style.SymbolLabel).setMargin(QgsLegendStyle.Side.Left, 1.2)
        legend.setSymbolWidth(7.5)
        legend.setSymbolHeight(3.0)
        legend.setBoxSpace(1.5)
        self._add(legend, "legend", x, y, width, 20.0)

    def _overview(self, x, y, width, height):
        drawn = QgsLayoutItemMap(self.layout)
        drawn.attemptResize(QgsLayoutSize(width, height))
        drawn.setExtent(QgsRectangle(0.0, 0.0, width, height))
        self._add(drawn, "overview", x, y, width, height)
        drawn.setFrameEnabled(True)
        drawn.setFrameStrokeWidth(QgsLayoutMeasurement(0.2))
        seen = QgsLayoutItemMapOverview("sheet", drawn)
        seen.setFrameSymbol(QgsFillSymbol.createSimple({"style": "no", "outline_color": INK, "outline_width": "0.5"}))
        drawn.overviews().addOverview(seen)
        grid = drawn.grid()
        grid.setEnabled(True)
        grid.setCrs(QgsCoordinateReferenceSystem("EPSG:4326"))
        grid.setLineSymbol(QgsLineSymbol.createSimple({"line_color": "0,0,0,70", "line_width": "0.1"}))
        self._label("overview_text", "[% @sheet_overview %]", x, y + height + 0.6, width, 3.5, 6.0, colour=FAINT)

    # items

    def _label(self, name, text, x, y, width, height, size, bold=False, align=LEFT, colour=INK):
        label = QgsLayoutItemLabel(self.layout)
        label.setText(text)
        label.setFont(self._font(size, bold))
        label.setFontColor(QColor(colour))
        label.setMarginX(0.0)
        label.setMarginY(0.0)
        label.setHAlign(align)
        label.setVAlign(Qt.AlignmentFlag.AlignTop)
        return self._add(label, name, x, y, width, height)

    def _add(self, item, name, x, y, width, height):
        item.setId(name)
        item.setReferencePoint(QgsLayoutItem.ReferencePoint.UpperLeft)
        self.layout.addLayoutItem(item)
        item.attemptResize(QgsLayoutSize(width, height))
        item.attemptMove(QgsLayoutPoint(x, y), True, False, self.page)
        return item

    @staticmethod
    def _font(size, bold=False):
        font = QFont(FONT)
        font.setPointSizeF(size)
        font.setBold(bold)
        return font

    def _format(self, size, bold, colour):
        text = QgsTextFormat()
        text.setFont(self._font(size, bold))
        text.setSize(size)
        text.setSizeUnit(QgsUnitTypes.RenderUnit.RenderPoints)
        text.setColor(QColor(colour))
        return text

    def save(self, path):
        """Write the template, the same for the same maker."""
        self.layout.saveAsTemplate(str(path), QgsReadWriteContext())
        text, seen = path.read_text(encoding="utf-8"), {}
        made_up = r"\{[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\}"
        text = re.sub(made_up, lambda match: seen.setdefault(match[0], f"{{00000000-0000-4000-8000-{len(seen):012d}}}"), text)
        path.write_text(text, encoding="utf-8")


def main():
    """Make all of them."""
    application = QgsApplication([], False)
    application.initQgis()
    LAYOUTS.mkdir(exist_ok=True)
    for paper in SIZES:
        for turn in ("portrait", "landscape"):
            Template(paper, turn).save(LAYOUTS / f"site_map_{paper}_{turn}.qpt")
    application.exitQgis()


if __name__ == "__main__":
    main()
