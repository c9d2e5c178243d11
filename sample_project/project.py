"""Build reserve.qgz, the project that shows the invented reserve, and (with an argument) a picture of it.

Run with a Python that can import QGIS, after build.py: python3 sample_project/project.py [PICTURE.png]
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
    QgsApplication,
    QgsBilinearRasterResampler,
    QgsColorRampShader,
    QgsCoordinateReferenceSystem,
    QgsFillSymbol,
    QgsHillshadeRenderer,
    QgsLabelingEngineSettings,
    QgsLabelObstacleSettings,
    QgsLinePatternFillSymbolLayer,
    QgsLineSymbol,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsMarkerSymbol,
    QgsPalLayerSettings,
    QgsProject,
    QgsProperty,
    QgsRasterLayer,
    QgsRasterShader,
    QgsRectangle,
    QgsReferencedRectangle,
    QgsSimpleLineSymbolLayer,
    QgsSimpleMarkerSymbolLayer,
    QgsSingleBandPseudoColorRenderer,
    QgsSingleSymbolRenderer,
    QgsTextBufferSettings,
    QgsTextFormat,
    QgsVectorLayer,
    QgsVectorLayerSimpleLabeling,
)
from qgis.PyQt.QtCore import QDateTime, QSize, Qt
from qgis.PyQt.QtGui import QColor, QFont, QPainter

HERE = Path(__file__).parent
PROJECT = HERE / "reserve.qgz"
TITLE = "Quenmar Reserve, an invented island"
VIEW = (496000.0, 3981000.0, 504400.0, 3990600.0)

INK, STANDPOINT, GREY, CASING = "#222222", "#0072B2", "#6E6E6E", "#FFFFFF"
SEA = "#DCE6EA"
GROUND = [(0.5, "#E9E4D6"), (120, "#E2DBC9"), (350, "#D3C8B4"), (720, "#F3F1EC")]


def ground_tint():
    """The DEM as quiet tints: sea, then lowland to summit."""
    layer = QgsRasterLayer(str(HERE / "dem.tif"), "ground", "gdal")
    ramp = QgsColorRampShader(0, GROUND[-1][0])
    ramp.setColorRampType(QgsColorRampShader.Interpolated)
    stops = [(0.0, SEA, "sea"), (0.4, SEA, "sea")] + [(height, colour, f"{height:.0f} m") for height, colour in GROUND]
    ramp.setColorRampItemList([QgsColorRampShader.ColorRampItem(height, QColor(colour), label) for height, colour, label in stops])
    shader = QgsRasterShader()
    shader.setRasterShaderFunction(ramp)
    layer.setRenderer(QgsSingleBandPseudoColorRenderer(layer.dataProvider(), 1, shader))
    return layer


def relief():
    """The DEM as hillshade, multiplied over the tints."""
    layer = QgsRasterLayer(str(HERE / "dem.tif"), "relief", "gdal")
    renderer = QgsHillshadeRenderer(layer.dataProvider(), 1, 315, 45)
    renderer.setZFactor(1.0)
    renderer.setMultiDirectional(True)
    layer.setRenderer(renderer)
    layer.setBlendMode(QPainter.CompositionMode_Multiply)
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


def label(layer, expression, size, colour, weight=QFont.Normal, **placed):
    """Label the layer: DejaVu Sans with a white edge, so that it reads on shaded ground."""
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
    layer.setLabeling(QgsVectorLayerSimpleLabeling(settings))
    layer.setLabelsEnabled(True)
    return layer


def beside(dist, priority):
    """Placement beside a point, wherever there is room; the point itself keeps labels off."""
    around = QgsLabelObstacleSettings()
    around.setIsObstacle(True)
    around.setFactor(2)
    placed = {"placement": QgsPalLayerSettings.OrderedPositionsAroundPoint, "dist": dist, "priority": priority}
    return dict(placed, offsetType=QgsPalLayerSettings.FromSymbolBounds)


def cameras():
    """Open squares with a tick toward the subject they face."""
    symbol = QgsMarkerSymbol.createSimple(
        {"name": "square", "size": "2.6", "color": "255,255,255,90", "outline_color": STANDPOINT, "outline_width": "0.5"}
    )
    tick = {"name": "line", "size": "2.4", "outline_color": STANDPOINT, "outline_width": "0.5", "offset": "0,-2.5"}
    symbol.appendSymbolLayer(QgsSimpleMarkerSymbolLayer.create(tick))
    symbol.setDataDefinedAngle(QgsProperty.fromField("faces_deg"))
    return label(vector("cameras", symbol), '"name"', 7.5, "#00507D", **beside(1.2, 7))


def subjects():
    """Filled triangles that stand on their foot."""
    properties = {"name": "triangle", "size": "3.4", "color": INK, "outline_color": CASING, "outline_width": "0.3"}
    symbol = QgsMarkerSymbol.createSimple(dict(properties, vertical_anchor_point="2"))
    return label(vector("subjects", symbol), '"name"', 8.5, INK, QFont.Bold, **beside(1.0, 10))


def paths():
    """A thin dark line in a white casing."""
    symbol = QgsLineSymbol.createSimple({"line_color": CASING, "line_width": "1.0", "capstyle": "round", "joinstyle": "round"})
    line = {"line_color": INK, "line_width": "0.35", "customdash": "2;1", "use_custom_dash": "1"}
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer.create(line))
    return label(vector("paths", symbol), '"name"', 6.5, INK, placement=QgsPalLayerSettings.Line, dist=0.6, priority=6)


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
    facts.setCreationDateTime(QDateTime(2027, 1, 1, 0, 0, 0, 0, Qt.UTC))
    project.setMetadata(facts)
    inside = project.labelingEngineSettings()
    inside.setFlag(QgsLabelingEngineSettings.UsePartialCandidates, False)
    project.setLabelingEngineSettings(inside)
    project.setFilePathStorage(project.filePathStorage().Relative)
    for layer in (ground_tint(), relief(), allowed(), closed(), paths(), subjects(), cameras()):
        if not layer.isValid():
            sys.exit(f"{layer.name()}: not a valid layer. Run build.py first.")
        project.addMapLayer(layer)
    project.viewSettings().setDefaultViewExtent(QgsReferencedRectangle(QgsRectangle(*VIEW), project.crs()))
    raw = PROJECT.with_suffix(".qgs")
    project.write(str(raw))
    text = reproducible(raw.read_text(encoding="utf-8"))
    raw.unlink()
    with zipfile.ZipFile(PROJECT, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr(zipfile.ZipInfo("reserve.qgs", (2027, 1, 1, 0, 0, 0)), text, zipfile.ZIP_DEFLATED)


def draw(picture):
    """Open the project as a user would and draw its default view."""
    project = QgsProject.instance()
    project.read(str(PROJECT))
    settings = QgsMapSettings()
    settings.setLayers(project.layerTreeRoot().layerOrder())
    settings.setDestinationCrs(project.crs())
    settings.setExtent(QgsRectangle(*VIEW))
    settings.setOutputDpi(150)
    settings.setOutputSize(QSize(1400, 1600))
    settings.setLabelingEngineSettings(project.labelingEngineSettings())
    settings.setFlag(QgsMapSettings.UseRenderingOptimization, False)
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    job.renderedImage().save(str(picture))


def main():
    """Build, and draw where a picture is asked for."""
    application = QgsApplication([], False)
    application.initQgis()
    build()
    if len(sys.argv) > 1:
        draw(sys.argv[1])
    application.exitQgis()


if __name__ == "__main__":
    main()
