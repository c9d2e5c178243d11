"""How results look: symbols, labels, aliases and times, on the layer that is shown and in the database that keeps it."""

from pathlib import Path

from qgis.core import (
    QgsCategorizedSymbolRenderer,
    QgsExpression,
    QgsMapLayer,
    QgsProcessingContext,
    QgsProcessingLayerPostProcessorInterface,
    QgsProcessingUtils,
    QgsVectorLayerSimpleLabeling,
)

from ..names import FIELDS, PROVIDER_NAME
from .translation import ENGLISH, language, tr

STYLES = Path(__file__).parent.parent / "styles"
PARTS = QgsMapLayer.StyleCategory.Symbology | QgsMapLayer.StyleCategory.Labeling | QgsMapLayer.StyleCategory.Temporal
KEEPERS = ("GPKG", "PostgreSQL database with PostGIS extension")  # as QGIS names the storages that keep styles
ALIASES = {name[:10]: field.alias for name, field in FIELDS.items()}  # a Shapefile keeps ten characters of a name
# what the expressions of labels say, as they write it
LABEL_BODIES = {"sun": "Sun", "moon": "Moon", "galactic": "plane"}
OTHER_BODIES = {"core": "core", "arch": "arch", "pole": "pole", "star": "star"}  # whose ids are said in English
LABEL_WORDS = ("fits", "does not fit", ", up to ", ", would at ", "° up", " nights, ", " to ", "skyline from ")

_dressers = {}  # by layer: QGIS holds no reference to a post-processor, and without one it is gone before it is called


def dress(layer, look, step_min=None):
    """Give a layer its look: a file of `styles/` by its stem, aliases, and how long an instant lasts in the Temporal Controller."""
    layer.loadNamedStyle(str(STYLES / f"{look}.qml"), PARTS)
    _translate_legend(layer.renderer())
    _translate_labels(layer)
    for index, name in enumerate(layer.fields().names()):
        if name[:10] in ALIASES:
            layer.setFieldAlias(index, tr(ALIASES[name[:10]]))
    if step_min is not None:
        layer.temporalProperties().setFixedDuration(step_min)


def _translate_legend(renderer):
    """The words of a legend in the language of the desktop."""
    if isinstance(renderer, QgsCategorizedSymbolRenderer):
        for index, category in enumerate(renderer.categories()):
            if category.label():
                renderer.updateCategoryLabel(index, tr(category.label()))


def _translate_labels(layer):
    """The words in the labels' expression in the language of the desktop; names of fields and values stay."""
    if language() == ENGLISH or not isinstance(layer.labeling(), QgsVectorLayerSimpleLabeling):
        return
    settings = layer.labeling().settings()
    told = settings.fieldName.replace(
        _pairs(LABEL_BODIES), _pairs({name: tr(word) for name, word in {**LABEL_BODIES, **OTHER_BODIES}.items()})
    )
    for word in LABEL_WORDS:
        told = told.replace(QgsExpression.quotedString(word), QgsExpression.quotedString(tr(word)))
    settings.fieldName = told
    layer.setLabeling(QgsVectorLayerSimpleLabeling(settings))


def _pairs(words):
    """Words by the id that they stand for, as a map in an expression."""
    return "map({})".format(", ".join(QgsExpression.quotedString(text) for pair in words.items() for text in pair))


def finish(layer_id, look, context, feedback, step_min=None):
    """Give a result its look, once its sink is closed.

    A temporary layer is dressed as it is. A GeoPackage or a PostGIS keeps the look as the default style of its layer; but what Processing
    loads does not ask for that style, so it is dressed when it arrives in the desktop.
    """
    layer = context.temporaryLayerStore().mapLayer(layer_id)
    if layer is not None:
        dress(layer, look, step_min)
        return
    _keep(layer_id, look, feedback, step_min)
    if context.willLoadLayerOnCompletion(layer_id):
        _dressers[layer_id] = Dresser(look, step_min)
        context.layerToLoadOnCompletionDetails(layer_id).setPostProcessor(_dressers[layer_id])


class Dresser(QgsProcessingLayerPostProcessorInterface):
    """Dresses a layer when it arrives in the desktop."""

    def __init__(self, look, step_min):
        super().__init__()
        self.look, self.step_min = look, step_min

    def postProcessLayer(self, layer, context, feedback):
        dress(layer, self.look, self.step_min)


def _keep(layer_id, look, feedback, step_min):
    """Save the look in the database; that one does not take it is no reason to lose the result."""
    own = QgsProcessingContext()  # without the project, whose layers belong to another thread
    layer = QgsProcessingUtils.mapLayerFromString(layer_id, own, True, QgsProcessingUtils.LayerHint.Vector)
    if layer is None or layer.storageType() not in KEEPERS:
        return
    dress(layer, look, step_min)
    related, ids, names, _, _ = layer.listStylesInDatabase()
    for style_id, name in list(zip(ids, names))[:related]:
        if name == PROVIDER_NAME:  # else QGIS would ask a person whether to write over it
            layer.deleteStyleFromDatabase(style_id)
    error = layer.saveStyleToDatabase(PROVIDER_NAME, tr("Symbols, labels, aliases and times"), True, "")
    if error:
        feedback.pushWarning(
            tr("The style could not be saved beside the rows of {layer}: {error} The rows are whole.").format(layer=layer_id, error=error)
        )
