"""What the maps of a sheet show, drawn beneath their frames and grids so that it can be stopped while it is drawn.

QGIS draws a map of a layout in one go, and turns all of it, labels too, into an image where one of its layers is drawn with opacity or
blending. Here only such a layer becomes one; where layers blend, which no PDF can, those of the background do, and the rest stays as it is.
"""

from qgis.core import (
    QgsGeometry,
    QgsLabelBlockingRegion,
    QgsLayoutItem,
    QgsMapRendererCustomPainterJob,
    QgsMapRendererParallelJob,
    QgsMapRendererSequentialJob,
    QgsRectangle,
    QgsVectorLayer,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QEventLoop, QPointF, QRectF, QSizeF, QTimer
from qgis.PyQt.QtGui import QPainter

TRIAL_DPI = 150
BEAT_MS = 50  # how often it is asked whether to go on
CLEAR_MM = 4.0  # about own places, in which the background has no labels where these are part of an image
ITEM = 65536 + 4177  # a kind of item of one's own: QGraphicsItem.UserType, and more than QGIS has kinds


class MapContent(QgsLayoutItem):
    """The layers of a map of a layout.

    Parameters
    ----------
    drawn : QgsLayoutItemMap
        Where it lies; it keeps its frame, its grid and its overviews and loses its layers.
    own, background : list of QgsMapLayer
        The uppermost first; all of the first lie above the second.
    go_on : callable
        Whether to go on.
    """

    def __init__(self, layout, drawn, own, background, go_on):
        super().__init__(layout)
        self._drawn, self._own, self._background, self._go_on = drawn, own, background, go_on
        self.setBackgroundEnabled(drawn.hasBackground())
        self.setBackgroundColor(drawn.backgroundColor())
        drawn.setLayers([])
        drawn.setBackgroundEnabled(False)
        layout.addLayoutItem(self)
        self.attemptSetSceneRect(drawn.mapRectToScene(drawn.rect()))

    def type(self):
        return ITEM

    def lie_beneath(self):
        """Take the place right under the map; to be done last, since items that are added shift those that lie over one another."""
        self.setZValue(self._drawn.zValue() - 0.5)

    def draw(self, context):
        """Draw the layers; called by QGIS, a dot being the unit."""
        rendering = context.renderContext()
        painter, dots_per_mm = rendering.painter(), rendering.scaleFactor()
        size = QSizeF(self.rect().width() * dots_per_mm, self.rect().height() * dots_per_mm)
        settings = self._drawn.mapSettings(self._drawn.extent(), size, dots_per_mm * 25.4, False)
        painter.save()
        painter.setClipRect(QRectF(QPointF(0.0, 0.0), size))
        if any(map(_blends, self._background)):
            self._paint_image(settings, painter)
            self._paint(settings, self._own, painter)
        else:
            self._paint(settings, [*self._own, *self._background], painter)
        painter.restore()

    def _paint(self, settings, layers, painter):
        settings.setLayers(layers)
        self._run(QgsMapRendererCustomPainterJob(settings, painter))

    def _paint_image(self, settings, painter):
        settings.setLayers(self._background)
        settings.setLabelBlockingRegions([QgsLabelBlockingRegion(geometry) for geometry in self._taken(settings)])
        job = QgsMapRendererParallelJob(settings)
        self._run(job)
        if self._go_on():
            painter.drawImage(QPointF(0.0, 0.0), job.renderedImage())
        settings.setLabelBlockingRegions([])

    def _taken(self, settings):
        """Where own places stand on the map."""
        half = CLEAR_MM * settings.outputDpi() / 25.4 * settings.mapUnitsPerPixel()
        for layer in self._own:
            if layer.geometryType() == QgsWkbTypes.GeometryType.PointGeometry:
                for feature in layer.getFeatures():
                    point = feature.geometry().asPoint()
                    yield QgsGeometry.fromRect(QgsRectangle(point.x() - half, point.y() - half, point.x() + half, point.y() + half))

    def _run(self, job):
        """Wait until a job is done or has stopped; the window lives on meanwhile, and its button to cancel with it."""
        loop, beat = QEventLoop(), QTimer()
        job.finished.connect(loop.quit)
        beat.timeout.connect(lambda: None if self._go_on() else job.cancelWithoutBlocking())
        beat.start(BEAT_MS)
        job.start()
        if job.isActive():
            loop.exec()
        beat.stop()


def is_crowded(drawn, layers):
    """Whether labels of layers stand upon each other on a map, or find no place there.

    Parameters
    ----------
    drawn : QgsLayoutItemMap
        Laid over its site.
    layers : list of QgsVectorLayer
        The only ones that are asked.
    """
    dots_per_mm = TRIAL_DPI / 25.4
    size = QSizeF(drawn.rect().width() * dots_per_mm, drawn.rect().height() * dots_per_mm)
    settings = drawn.mapSettings(drawn.extent(), size, TRIAL_DPI, False)
    settings.setLayers(layers)
    job = QgsMapRendererSequentialJob(settings)
    job.start()
    job.waitForFinished()
    placed = [QgsGeometry(label.labelGeometry) for label in job.takeLabelingResults().labelsWithinRect(drawn.extent())]
    wanted = [feature for layer in layers for feature in layer.getFeatures() if feature["label"]]
    seen = [feature for feature in wanted if feature.geometry().intersects(drawn.extent())]
    if len(placed) < len(seen):
        return True
    return any(one.intersection(other).area() > 0.0 for i, one in enumerate(placed) for other in placed[:i] if one.intersects(other))


def _blends(layer):
    """Whether a layer mingles with what lies beneath it in a way that only an image can show."""
    plain = QPainter.CompositionMode.CompositionMode_SourceOver
    if layer.blendMode() != plain:
        return True
    if not isinstance(layer, QgsVectorLayer):
        return False
    labeling = layer.labeling() if layer.labelsEnabled() else None
    return layer.featureBlendMode() != plain or (labeling is not None and labeling.requiresAdvancedEffects())
