"""How things look on the map of a sheet: the symbols of the house, and labels that read on any ground."""

from qgis.core import (
    Qgis,
    QgsCategorizedSymbolRenderer,
    QgsFillSymbol,
    QgsLabelObstacleSettings,
    QgsLinePatternFillSymbolLayer,
    QgsLineSymbol,
    QgsMarkerLineSymbolLayer,
    QgsMarkerSymbol,
    QgsPalLayerSettings,
    QgsProperty,
    QgsRendererCategory,
    QgsSimpleLineSymbolLayer,
    QgsSimpleMarkerSymbolLayer,
    QgsSingleSymbolRenderer,
    QgsSymbolLayer,
    QgsTextBufferSettings,
    QgsTextFormat,
    QgsUnitTypes,
    QgsVectorLayerSimpleLabeling,
)
from qgis.PyQt.QtGui import QColor

from .translation import tr

INK, STANDPOINT, STANDPOINT_INK, GREY, GREY_INK, CASING = "#222222", "#0072B2", "#00507D", "#6E6E6E", "#4A4A4A", "#FFFFFF"
LABEL_PT = 7.0
# sight -> what the legend says; a line that terrain hides is dashed
SIGHTS = {
    "clear": "Sightline",
    "hidden": "Sightline, hidden",
    "uncertain": "Sightline, too close to tell",
    "": "Sightline, not tested",
}
_DASHES = {"hidden": "2;2", "uncertain": "6;1.5"}  # mm
_WIDTHS = {"hidden": 0.3}


def _looking(colour, size, label, label_without):
    """An open square, with a tick toward its subject where the field `grid_deg` tells its direction; in a legend to the right."""
    pen = {"outline_color": colour, "outline_width": f"{0.17 * size:.2f}"}
    square = {"name": "square", "size": str(size), "color": CASING, **pen}
    plain, symbol = QgsMarkerSymbol.createSimple(square), QgsMarkerSymbol.createSimple(square)
    tick = {"name": "line", "size": f"{0.8 * size:.2f}", "offset": f"0,{-0.9 * size:.2f}", "angle": "90", **pen}
    symbol.appendSymbolLayer(QgsSimpleMarkerSymbolLayer.create(tick))
    symbol.symbolLayer(1).setDataDefinedProperty(QgsSymbolLayer.Property.PropertyAngle, QgsProperty.fromField("grid_deg"))
    categories = {1: (symbol, label), 0: (plain, label_without)}
    return QgsCategorizedSymbolRenderer("looks", [QgsRendererCategory(looks, *own) for looks, own in categories.items()])


def camera():
    return _looking(INK, 3.0, tr("Camera and where it looks"), tr("Camera"))


def standpoint():
    return _looking(STANDPOINT, 2.4, tr("Standpoint, where it looks"), tr("Standpoint"))


def subject():
    """A filled triangle that stands on its foot."""
    triangle = {"name": "triangle", "size": "3.8", "color": INK, "outline_color": CASING, "outline_width": "0.3"}
    return QgsSingleSymbolRenderer(QgsMarkerSymbol.createSimple({**triangle, "vertical_anchor_point": "2"}))


def parking():
    """A filled disc in a ring."""
    disc = {"name": "circle", "size": "2.6", "color": INK, "outline_color": CASING, "outline_width": "0.7"}
    symbol = QgsMarkerSymbol.createSimple({**disc, "size": "3.4", "color": CASING, "outline_color": INK, "outline_width": "0.35"})
    symbol.appendSymbolLayer(QgsSimpleMarkerSymbolLayer.create({**disc, "size": "1.8", "outline_width": "0"}))
    return QgsSingleSymbolRenderer(symbol)


def here():
    """Where the sheet lies, in its overview."""
    square = {"name": "square", "size": "1.6", "color": INK, "outline_color": CASING, "outline_width": "0.3"}
    return QgsSingleSymbolRenderer(QgsMarkerSymbol.createSimple(square))


def sightline(sights):
    """Near-black in a white casing, a category for each of the sights that occur."""
    categories = [QgsRendererCategory(sight, _cased(sight), tr(label)) for sight, label in SIGHTS.items() if sight in sights]
    renderer = QgsCategorizedSymbolRenderer("sight", categories)
    renderer.setUsingSymbolLevels(True)
    return renderer


def _cased(sight):
    width = _WIDTHS.get(sight, 0.5)
    flat = {"capstyle": "flat", "joinstyle": "round"}
    symbol = QgsLineSymbol.createSimple({"line_color": CASING, "line_width": f"{width + 0.9:.2f}", **flat})
    line = {"line_color": INK, "line_width": str(width), **flat}
    if sight in _DASHES:
        line.update(use_custom_dash="1", customdash=_DASHES[sight])
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer.create(line))
    symbol.symbolLayer(1).setRenderingPass(1)  # above the casings of all, which would wipe out lines where many meet
    return symbol


def path():
    """A thin dashed line in a white casing."""
    symbol = QgsLineSymbol.createSimple({"line_color": CASING, "line_width": "0.9", "capstyle": "round", "joinstyle": "round"})
    dashed = {"line_color": GREY, "line_width": "0.35", "customdash": "2;1", "use_custom_dash": "1"}
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer.create(dashed))
    return QgsSingleSymbolRenderer(symbol)


def walk():
    """Dots in the colour of standpoints: where people go."""
    symbol = QgsLineSymbol.createSimple({"line_color": "255,255,255,0", "line_width": "0"})
    dots = QgsMarkerLineSymbolLayer.create({"interval": "1.5", "rotate": "0", "placement": "interval"})
    dot = {"name": "circle", "size": "1.0", "color": STANDPOINT, "outline_color": CASING, "outline_width": "0.15"}
    dots.setSubSymbol(QgsMarkerSymbol.createSimple(dot))
    symbol.changeSymbolLayer(0, dots)
    return QgsSingleSymbolRenderer(symbol)


def zone():
    """An outline and a tint in the colour of standpoints."""
    symbol = QgsFillSymbol.createSimple({"color": "0,114,178,40", "outline_color": STANDPOINT, "outline_width": "0.3"})
    return QgsSingleSymbolRenderer(symbol)


def closed():
    """Grey hatching."""
    symbol = QgsFillSymbol.createSimple({"style": "no", "outline_color": GREY, "outline_width": "0.35"})
    symbol.appendSymbolLayer(QgsLinePatternFillSymbolLayer.create({"angle": "45", "distance": "1.3", "color": GREY, "line_width": "0.2"}))
    return QgsSingleSymbolRenderer(symbol)


def closed_at_other_times():
    """The outline alone, dashed."""
    edge = {"style": "no", "outline_color": GREY, "outline_width": "0.3", "outline_style": "dash"}
    return QgsSingleSymbolRenderer(QgsFillSymbol.createSimple(edge))


def land():
    """Quiet land for an overview without a background of the project's."""
    return QgsSingleSymbolRenderer(QgsFillSymbol.createSimple({"color": "#ECE9E2", "outline_color": "#9A9A9A", "outline_width": "0.15"}))


def beyond():
    """An arrowhead at the map's edge, where a sightline goes on."""
    head = {"name": "filled_arrowhead", "size": "2.6", "color": INK, "outline_color": CASING, "outline_width": "0.2"}
    symbol = QgsMarkerSymbol.createSimple(head)
    turned = QgsProperty.fromExpression('"grid_deg" - 90')  # the arrowhead points east
    symbol.symbolLayer(0).setDataDefinedProperty(QgsSymbolLayer.Property.PropertyAngle, turned)
    return QgsSingleSymbolRenderer(symbol)


def labels(font, colour=INK, always=False, **placed):
    """The field `label` beside each feature, with a white edge; it is shown as it is, never read as an expression.

    Those that are `always` shown stand on others only where no place is free.
    """
    edge = QgsTextBufferSettings()
    edge.setEnabled(True)
    edge.setSize(0.7)
    edge.setColor(QColor(CASING))
    text = QgsTextFormat()
    text.setFont(font)
    text.setSize(LABEL_PT)
    text.setSizeUnit(QgsUnitTypes.RenderUnit.RenderPoints)
    text.setColor(QColor(colour))
    text.setBuffer(edge)
    settings = QgsPalLayerSettings()
    settings.setFormat(text)
    settings.fieldName, settings.isExpression = "label", False
    for key, value in placed.items():
        setattr(settings, key, value)
    if always and hasattr(settings, "placementSettings"):  # since QGIS 3.26
        places = settings.placementSettings()
        places.setOverlapHandling(Qgis.LabelOverlapHandling.AllowOverlapIfRequired)
        settings.setPlacementSettings(places)
    else:
        settings.displayAll = always
    around = QgsLabelObstacleSettings()
    around.setIsObstacle(True)
    around.setFactor(2)
    settings.setObstacleSettings(around)
    return QgsVectorLayerSimpleLabeling(settings)


def beside(dist_mm, priority):
    """Placement of labels beside points, wherever there is room; the points keep other labels off."""
    return {
        "placement": QgsPalLayerSettings.Placement.OrderedPositionsAroundPoint,
        "dist": dist_mm,
        "priority": priority,
        "offsetType": QgsPalLayerSettings.OffsetType.FromSymbolBounds,
    }
