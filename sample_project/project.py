"""Build reserve.qgz, the project that shows the invented reserve, and (with an argument) pictures of its map and its layout.

Run with a Python that can import QGIS and the staged plugin, after build.py and found.py: python3 sample_project/project.py [FOLDER]
Build it with the oldest QGIS served: newer ones open its projects, not the other way round.
"""

import os
import re
import sys
import zipfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["QT_HASH_SEED"] = "0"  # attributes in the same order each time
os.environ["GDAL_PAM_ENABLED"] = "NO"  # no statistics file beside the DEM

from qgis.core import (
    Qgis,
    QgsApplication,
    QgsBilinearRasterResampler,
    QgsColorRampShader,
    QgsCoordinateReferenceSystem,
    QgsDateTimeRange,
    QgsExpressionContext,
    QgsExpressionContextUtils,
    QgsFillSymbol,
    QgsGeometryGeneratorSymbolLayer,
    QgsHillshadeRenderer,
    QgsLabelingEngineSettings,
    QgsLabelObstacleSettings,
    QgsLayoutExporter,
    QgsLayoutItemLabel,
    QgsLayoutItemLegend,
    QgsLayoutItemMap,
    QgsLayoutItemPage,
    QgsLayoutItemPicture,
    QgsLayoutItemScaleBar,
    QgsLayoutMeasurement,
    QgsLegendStyle,
    QgsLinePatternFillSymbolLayer,
    QgsLineSymbol,
    QgsMapLayer,
    QgsMapLayerLegendUtils,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsMarkerSymbol,
    QgsPalLayerSettings,
    QgsPrintLayout,
    QgsProcessingModelAlgorithm,
    QgsProject,
    QgsProperty,
    QgsRasterLayer,
    QgsRasterShader,
    QgsRectangle,
    QgsReferencedRectangle,
    QgsRuleBasedLabeling,
    QgsSimpleLineSymbolLayer,
    QgsSimpleMarkerSymbolLayer,
    QgsSingleBandPseudoColorRenderer,
    QgsSingleSymbolRenderer,
    QgsTextBufferSettings,
    QgsTextFormat,
    QgsUnitTypes,
    QgsVectorLayer,
    QgsVectorLayerSimpleLabeling,
    QgsWkbTypes,
    QgsXmlUtils,
)
from qgis.PyQt.QtCore import QDateTime, QRectF, QSize, Qt
from qgis.PyQt.QtGui import QColor, QFont, QPainter

from skyalidade import expressions
from skyalidade.names import FIELDS

HERE = Path(__file__).resolve().parent
PLUGIN = HERE.parent / "plugin"
PROJECT = HERE / "reserve.qgz"
TITLE = "Quenmar Reserve, an invented island"
VIEW = (496000.0, 3981000.0, 504400.0, 3990600.0)

INK, STANDPOINT, GREY, CASING = "#222222", "#0072B2", "#6E6E6E", "#FFFFFF"
CAMERA_INK, CORE = "#00507D", "#CC79A7"
SEA = "#DCE6EA"
GROUND = [(0.5, "#E9E4D6"), (120, "#E2DBC9"), (350, "#D3C8B4"), (720, "#F3F1EC")]

# Styles of the cameras
PLAIN, LIVE = "plain", "live"
SUBJECT = 'make_point("faces_e", "faces_n")'  # not looked up in the other layer: that waits for QGIS's main thread, forever in a script
SIGHTLINE = f"make_line($geometry, {SUBJECT})"
BEARING = (
    f"format_number(sight_bearing($geometry, {SUBJECT}, @layer_crs), 1) || '°  ' || "
    f"format_number(sight_distance($geometry, {SUBJECT}, @layer_crs), 0) || ' m'"
)
# Where the core stands at the time of the Temporal Controller, else at SKY_TIME. A map is drawn from the grid's north, a bearing is from
# the true one: the second call is the angle between the two, the bearing of a step along the grid.
SKY_TIME = "2027-06-07T01:30:00Z"  # half past eleven in the evening of 6 June
WHEN = "coalesce(@map_start_time, @sky_time)"
CORE_RAY = f"""CASE WHEN sky_altitude('core', $geometry, @layer_crs, {WHEN}) > 0 THEN
    make_line($geometry, project($geometry, 700, radians(
        sky_azimuth('core', $geometry, @layer_crs, {WHEN}) - sight_bearing($geometry, translate($geometry, 0, 100), @layer_crs))))
END"""
NIGHT_UTC = "2027-06-06T22:00:00Z", "2027-06-07T07:00:00Z"  # what the Temporal Controller steps through
STEP_MIN = 10

LAYOUT = "Reserve, A4"
WORDS_OF_MAP = "Sightlines with true bearing and distance; pink: where the core of the Milky Way stands at 23:30 (UTC-02:00) on 6 June 2027"
LEGEND = {
    "cameras": "Camera, its tick to the subject",
    "subjects": "Subject",
    "paths": "Path",
    "allowed": "Area in which one may stand",
    "closed": "Closed ground",
}
NOTICE = (
    "An invented place: nothing here was surveyed. Bearings are from true north. A planning aid, not a survey and not a permit: access and "
    "closures are decided by the land manager and local law."
)


def ground_tint():
    """The DEM as quiet tints: sea, then lowland to summit."""
    layer = QgsRasterLayer(str(HERE / "dem.tif"), "ground", "gdal")
    ramp = QgsColorRampShader(0, GROUND[-1][0])
    ramp.setColorRampType(QgsColorRampShader.Type.Interpolated)
    stops = [(0.0, SEA, "sea"), (0.4, SEA, "sea")] + [(height, colour, f"{height:.0f} m") for height, colour in GROUND]
    ramp.setColorRampItemList([QgsColorRampShader.ColorRampItem(height, QColor(colour), label) for height, colour, label in stops])
    shader = QgsRasterShader()
    shader.setRasterShaderFunction(ramp)
    renderer = QgsSingleBandPseudoColorRenderer(layer.dataProvider(), 1, shader)
    renderer.setClassificationMin(0)
    renderer.setClassificationMax(GROUND[-1][0])
    layer.setRenderer(renderer)
    return layer


def relief():
    """The DEM as hillshade, multiplied over the tints."""
    layer = QgsRasterLayer(str(HERE / "dem.tif"), "relief", "gdal")
    renderer = QgsHillshadeRenderer(layer.dataProvider(), 1, 315, 45)
    renderer.setZFactor(1.0)
    renderer.setMultiDirectional(True)
    layer.setRenderer(renderer)
    layer.setBlendMode(QPainter.CompositionMode.CompositionMode_Multiply)
    layer.brightnessFilter().setBrightness(55)
    layer.brightnessFilter().setContrast(5)
    layer.setOpacity(0.75)
    layer.resampleFilter().setZoomedInResampler(QgsBilinearRasterResampler())
    layer.resampleFilter().setZoomedOutResampler(QgsBilinearRasterResampler())
    layer.resampleFilter().setMaxOversampling(4)
    return layer


def vector(name, symbol):
    """A layer of the GeoPackage with one symbol."""
    layer = QgsVectorLayer(f"{HERE / 'reserve.gpkg'}|layername={name}", name, "ogr")
    layer.setRenderer(QgsSingleSymbolRenderer(symbol))
    return layer


def label(layer, expression, size, colour, weight=QFont.Weight.Normal, **placed):
    """Label the layer."""
    layer.setLabeling(QgsVectorLayerSimpleLabeling(labelled(expression, size, colour, weight, **placed)))
    layer.setLabelsEnabled(True)
    return layer


def labelled(expression, size, colour, weight=QFont.Weight.Normal, **placed):
    """How labels look: DejaVu Sans with a white edge, so that it reads on shaded ground."""
    edge = QgsTextBufferSettings()
    edge.setEnabled(True)
    edge.setSize(0.8)
    edge.setColor(QColor(255, 255, 255, 220))
    text = QgsTextFormat()
    text.setFont(QFont("DejaVu Sans", -1, weight))
    text.setSize(size)
    text.setColor(QColor(colour))
    text.setBuffer(edge)
    settings = QgsPalLayerSettings()
    settings.setFormat(text)
    settings.fieldName, settings.isExpression = expression, True
    for key, value in placed.items():
        setattr(settings, key, value)
    return settings


def beside(dist, priority):
    """Placement beside a point, wherever there is room; the point itself keeps labels off."""
    around = QgsLabelObstacleSettings()
    around.setIsObstacle(True)
    around.setFactor(2)
    placed = {"placement": QgsPalLayerSettings.Placement.OrderedPositionsAroundPoint, "dist": dist, "priority": priority}
    return dict(placed, offsetType=QgsPalLayerSettings.OffsetType.FromSymbolBounds)


def cameras():
    """Cameras with the sightline to the subject they face and its bearing, which follow while a camera is dragged; "plain": without."""
    layer = label(vector("cameras", camera_mark()), '"name"', 7.5, CAMERA_INK, **beside(1.2, 7))
    layer.styleManager().renameStyle(layer.styleManager().currentStyle(), PLAIN)
    layer.styleManager().addStyleFromLayer(LIVE)
    layer.styleManager().setCurrentStyle(LIVE)
    symbol = camera_mark()
    symbol.setDataDefinedAngle(QgsProperty.fromExpression(f"degrees(azimuth($geometry, {SUBJECT}))"))
    symbol.insertSymbolLayer(0, generated(SIGHTLINE, CASING, 1.5))
    symbol.insertSymbolLayer(1, generated(SIGHTLINE, INK, 0.4))
    symbol.insertSymbolLayer(0, generated(CORE_RAY, CORE, 0.7))
    layer.setRenderer(QgsSingleSymbolRenderer(symbol))
    name = labelled('"name"', 7.5, CAMERA_INK, **beside(1.2, 7))
    bearing = labelled(BEARING, 7, INK, placement=QgsPalLayerSettings.Placement.Line, dist=0.5, priority=9, overrunDistance=15)
    bearing.geometryGeneratorEnabled, bearing.geometryGenerator = True, SIGHTLINE
    bearing.geometryGeneratorType = QgsWkbTypes.GeometryType.LineGeometry
    rules = QgsRuleBasedLabeling.Rule(None)
    for settings, words in ((name, "name"), (bearing, "true bearing and distance to the subject it faces")):
        rules.appendChild(QgsRuleBasedLabeling.Rule(settings, 0, 0, "", words))
    layer.setLabeling(QgsRuleBasedLabeling(rules))
    return layer


def camera_mark():
    """An open square with a tick toward the subject it faces."""
    symbol = QgsMarkerSymbol.createSimple(
        {"name": "square", "size": "2.6", "color": "255,255,255,90", "outline_color": STANDPOINT, "outline_width": "0.5"}
    )
    tick = {"name": "line", "size": "2.4", "outline_color": STANDPOINT, "outline_width": "0.5", "offset": "0,-2.5"}
    symbol.appendSymbolLayer(QgsSimpleMarkerSymbolLayer.create(tick))
    symbol.setDataDefinedAngle(QgsProperty.fromField("faces_deg"))
    return symbol


def generated(expression, colour, width):
    """A line that an expression makes of each feature."""
    made = QgsGeometryGeneratorSymbolLayer.create({"geometryModifier": expression, "SymbolType": "Line"})
    made.setSubSymbol(QgsLineSymbol.createSimple({"line_color": colour, "line_width": str(width), "capstyle": "flat"}))
    return made


def alignments():
    """What the plugin found for three nights, in the look in which it gives it, and seen in its minutes by the Temporal Controller."""
    layer = QgsVectorLayer(f"{HERE / 'found.gpkg'}|layername=alignments", "alignments", "ogr")
    parts = QgsMapLayer.StyleCategory.Symbology | QgsMapLayer.StyleCategory.Labeling | QgsMapLayer.StyleCategory.Temporal
    layer.loadNamedStyle(str(PLUGIN / "styles" / "alignments.qml"), parts)
    for index, name in enumerate(layer.fields().names()):
        if name in FIELDS:
            layer.setFieldAlias(index, FIELDS[name].alias)
    return layer


def subjects():
    """Filled triangles that stand on their foot."""
    properties = {"name": "triangle", "size": "3.4", "color": INK, "outline_color": CASING, "outline_width": "0.3"}
    symbol = QgsMarkerSymbol.createSimple(dict(properties, vertical_anchor_point="2"))
    return label(vector("subjects", symbol), '"name"', 8.5, INK, QFont.Weight.Bold, **beside(1.0, 10))


def paths():
    """A thin dark line in a white casing."""
    symbol = QgsLineSymbol.createSimple({"line_color": CASING, "line_width": "1.0", "capstyle": "round", "joinstyle": "round"})
    line = {"line_color": INK, "line_width": "0.35", "customdash": "2;1", "use_custom_dash": "1"}
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer.create(line))
    return label(vector("paths", symbol), '"name"', 6.5, INK, placement=QgsPalLayerSettings.Placement.Line, dist=0.6, priority=6)


def closed():
    """Grey hatching, with the reason and the days."""
    symbol = QgsFillSymbol.createSimple({"style": "no", "outline_color": GREY, "outline_width": "0.3"})
    symbol.appendSymbolLayer(QgsLinePatternFillSymbolLayer.create({"angle": "45", "distance": "1.1", "color": GREY, "line_width": "0.18"}))
    days = "if(\"closed_from\" = '01-01' and \"closed_to\" = '12-31', 'all year', \"closed_from\" || ' to ' || \"closed_to\")"
    return label(vector("closed", symbol), f"\"name\" || '\\nclosed ' || {days}", 6.5, "#4A4A4A", priority=5)


def allowed():
    """A thin outline in the colour of standpoints."""
    properties = {"style": "no", "outline_color": STANDPOINT, "outline_width": "0.35", "outline_style": "dot"}
    return vector("allowed", QgsFillSymbol.createSimple(properties))


def reproducible(text):
    """The project's text without what changes from run to run: who, when, and made-up ids."""
    text = re.sub(r' (saveUser|saveUserFull|saveDateTime)="[^"]*"', "", text)
    text = re.sub(
        r"\s*<individual-layer-settings>.*?</individual-layer-settings>", "", text, flags=re.S
    )  # defaults, in the order of addresses
    seen = {}
    made_up = r"[0-9a-f]{8}([-_])(?:[0-9a-f]{4}\1){3}[0-9a-f]{12}"
    return re.sub(made_up, lambda match: seen.setdefault(match[0].replace("-", "_"), f"{len(seen):08d}"), text)


def build():
    """Write the project file; the layers' paths in it are relative."""
    project = QgsProject.instance()
    project.clear()
    project.setTitle(TITLE)
    project.setCrs(QgsCoordinateReferenceSystem("EPSG:32625"))
    project.setEllipsoid("EPSG:7030")
    facts = project.metadata()
    facts.setAuthor("Sky Alidade")
    facts.setAbstract("An invented place for trying the algorithms. Nothing in it was surveyed.")
    facts.setCreationDateTime(QDateTime(2027, 1, 1, 0, 0, 0, 0, Qt.TimeSpec.UTC))
    project.setMetadata(facts)
    inside = project.labelingEngineSettings()
    inside.setFlag(QgsLabelingEngineSettings.Flag.UsePartialCandidates, False)
    project.setLabelingEngineSettings(inside)
    project.setFilePathStorage(project.filePathStorage().Relative)
    for layer in (ground_tint(), relief(), allowed(), closed(), paths(), alignments(), cameras(), subjects()):
        if not layer.isValid():
            sys.exit(f"{layer.name()}: not a valid layer. Run build.py first.")
        project.addMapLayer(layer)
    project.layerTreeRoot().findLayer(project.mapLayersByName("alignments")[0]).setItemVisibilityChecked(False)
    for node in project.layerTreeRoot().findLayers():
        node.setExpanded(node.name() == "alignments")
    QgsExpressionContextUtils.setProjectVariable(project, "sky_time", SKY_TIME)
    steps = project.timeSettings()
    steps.setTemporalRange(QgsDateTimeRange(*(QDateTime.fromString(moment, Qt.DateFormat.ISODate) for moment in NIGHT_UTC)))
    steps.setTimeStepUnit(QgsUnitTypes.TemporalUnit.TemporalMinutes)
    steps.setTimeStep(STEP_MIN)
    project.layoutManager().addLayout(layout(project))
    project.writeProject.connect(embed_models)
    project.viewSettings().setDefaultViewExtent(QgsReferencedRectangle(QgsRectangle(*VIEW), project.crs()))
    raw = PROJECT.with_suffix(".qgs")
    project.write(str(raw))
    text = reproducible(raw.read_text(encoding="utf-8"))
    raw.unlink()
    with zipfile.ZipFile(PROJECT, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr(zipfile.ZipInfo("reserve.qgs", (2027, 1, 1, 0, 0, 0)), text, zipfile.ZIP_DEFLATED)


def layout(project):
    """A sheet to print: map, what its marks mean, scale, north."""
    page = QgsPrintLayout(project)
    page.initializeDefaults()
    page.setName(LAYOUT)
    page.pageCollection().page(0).setPageSize("A4", QgsLayoutItemPage.Orientation.Portrait)
    sheet = QgsLayoutItemMap(page)
    sheet.setId("map")
    sheet.attemptSetSceneRect(QRectF(10, 24, 190, 217))  # before anything else: a map without a size stays blank
    sheet.setExtent(QgsRectangle(*VIEW))
    sheet.setFrameEnabled(True)
    sheet.setFrameStrokeWidth(QgsLayoutMeasurement(0.2))
    page.addLayoutItem(sheet)
    words(page, TITLE, (10, 8, 190, 9), 16, QFont.Weight.Bold)
    words(page, WORDS_OF_MAP, (10, 17, 190, 6), 8)
    words(page, NOTICE, (10, 277, 190, 10), 8)
    legend(page, sheet)
    scale = QgsLayoutItemScaleBar(page)
    scale.setLinkedMap(sheet)
    scale.setStyle("Single Box")
    scale.setUnits(QgsUnitTypes.DistanceUnit.DistanceKilometers)
    scale.setUnitLabel("km")
    scale.setUnitsPerSegment(1.0)
    scale.setNumberOfSegments(2)
    scale.setNumberOfSegmentsLeft(0)
    scale.setHeight(2.0)
    scale.setFont(page_font(8))
    page.addLayoutItem(scale)
    scale.attemptSetSceneRect(QRectF(140, 262, 50, 12))
    north = QgsLayoutItemPicture(page)
    north.setPicturePath(":/images/north_arrows/layout_default_north_arrow.svg")
    north.setLinkedMap(sheet)
    north.setNorthMode(QgsLayoutItemPicture.NorthMode.TrueNorth)
    page.addLayoutItem(north)
    north.attemptSetSceneRect(QRectF(184, 27, 13, 16))
    return page


def legend(page, sheet):
    """What the marks mean, below the map."""
    made = QgsLayoutItemLegend(page)
    made.setLinkedMap(sheet)
    made.setAutoUpdateModel(False)
    root = made.model().rootGroup()
    root.removeAllChildren()
    for name, told in LEGEND.items():
        node = root.addLayer(page.project().mapLayersByName(name)[0])
        node.setCustomProperty("legend/title-label", told)
        if name == "cameras":
            QgsMapLayerLegendUtils.setLegendNodeCustomSymbol(node, 0, camera_mark())  # without the lines that are made of each
            made.model().refreshLayerLegend(node)
    made.setColumnCount(3)
    made.setSymbolWidth(6)
    for part in (QgsLegendStyle.Style.SymbolLabel, QgsLegendStyle.Style.Subgroup, QgsLegendStyle.Style.Group):
        style = made.style(part)
        style.setFont(page_font(8))
        made.setStyle(part, style)
    page.addLayoutItem(made)
    made.attemptSetSceneRect(QRectF(10, 244, 125, 30))


def page_font(size, weight=QFont.Weight.Normal):
    font = QFont("DejaVu Sans", -1, weight)
    font.setPointSizeF(size)
    return font


def words(page, text, box, size, weight=QFont.Weight.Normal):
    """A text on the sheet."""
    item = QgsLayoutItemLabel(page)
    item.setText(text)
    item.setFont(page_font(size, weight))
    page.addLayoutItem(item)
    item.attemptSetSceneRect(QRectF(*box))


def embed_models(document):
    """Put the plugin's models into the project, where the Processing toolbox shows them."""
    models = document.createElement("projectModels")
    for file in sorted((PLUGIN / "models").glob("*.model3")):
        model = QgsProcessingModelAlgorithm()
        model.fromFile(str(file))
        models.appendChild(QgsXmlUtils.writeVariant(model.toVariant(), document))
    document.elementsByTagName("qgis").at(0).appendChild(models)


def draw(folder):
    """Open the project as a user would; draw its default view and its layout."""
    project = QgsProject.instance()
    project.read(str(PROJECT))
    settings = QgsMapSettings()
    settings.setLayers(project.layerTreeRoot().checkedLayers())
    settings.setDestinationCrs(project.crs())
    settings.setExtent(QgsRectangle(*VIEW))
    settings.setOutputDpi(150)
    settings.setOutputSize(QSize(1400, 1600))
    settings.setLabelingEngineSettings(project.labelingEngineSettings())
    settings.setFlag(Qgis.MapSettingsFlag.UseRenderingOptimization, False)
    settings.setExpressionContext(QgsExpressionContext(QgsExpressionContextUtils.globalProjectLayerScopes(None)))
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    job.renderedImage().save(str(folder / "map.png"))
    exporter = QgsLayoutExporter(project.layoutManager().layoutByName(LAYOUT))
    how = QgsLayoutExporter.ImageExportSettings()
    how.dpi = 110
    exporter.exportToImage(str(folder / "layout.png"), how)


def main():
    """Build, and draw where a folder is given."""
    application = QgsApplication([], False)
    application.initQgis()
    registered = expressions.register()
    build()
    if len(sys.argv) > 1:
        draw(Path(sys.argv[1]))
    QgsProject.instance().clear()
    expressions.unregister(registered)
    application.exitQgis()


if __name__ == "__main__":
    main()
