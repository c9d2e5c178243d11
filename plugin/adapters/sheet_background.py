"""What lies beneath the map of a sheet: the project's visible layers, or the countries that QGIS brings; and where layers come from."""

import os
from datetime import datetime, timezone

from qgis.core import QgsApplication, QgsProviderRegistry, QgsVectorLayer

from .parameters import blank
from .sheet_symbols import land
from .translation import tr

WORLD = "resources/data/world_map.gpkg"
COUNTRIES = "countries"
INPUTS = ("SIGHTLINES", "ALIGNMENTS", "CAMERAS", "SUBJECTS", "STANDPOINTS", "ZONES", "PATHS", "WALK", "PARKING", "CLOSED")


def inputs_of(algorithm, parameters, context):
    """The layers that are given, by parameter."""
    given = {name: algorithm.parameterAsVectorLayer(parameters, name, context) for name in INPUTS if not blank(parameters.get(name))}
    return {name: layer for name, layer in given.items() if layer is not None}


def background_of(project, inputs):
    """Copies of the project's visible layers, the uppermost first, without those that are given; they may be used apart from it."""
    if project is None:
        return []
    sources = {_origin(layer) for layer in inputs}
    tree = project.layerTreeRoot()
    visible = [layer for layer in tree.layerOrder() if layer is not None and layer.isValid() and layer.isSpatial()]
    visible = [layer for layer in visible if tree.findLayer(layer.id()) is not None and tree.findLayer(layer.id()).isVisible()]
    copies = [layer.clone() for layer in visible if _origin(layer) not in sources]
    return [copy for copy in copies if copy is not None]


def without_labels(layers):
    """Copies of layers that bear no labels, for an overview."""
    copies = [layer.clone() for layer in layers]
    for layer in copies:
        if isinstance(layer, QgsVectorLayer):
            layer.setLabelsEnabled(False)
    return copies


def _origin(layer):
    """What tells whether two layers show the same table, whichever part of it."""
    uri = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    return (uri["path"], uri.get("layerName") or "") if uri.get("path") else (layer.source(), layer.providerType())


def world():
    """The countries that QGIS brings, for an overview; none where this QGIS does not."""
    layer = QgsVectorLayer(f"{os.path.join(QgsApplication.pkgDataPath(), WORLD)}|layername={COUNTRIES}", COUNTRIES, "ogr")
    if not layer.isValid():
        return []
    layer.setRenderer(land())
    layer.setLabelsEnabled(False)
    return [layer]


def told_of(inputs):
    """Layers with the day on which their file was last written, in one line."""
    told = []
    for name, layer in inputs.items():
        day = _day(layer)
        told.append(f"{name} {layer.name()} ({day})" if day else f"{name} {layer.name()}")
    return "; ".join(told)


def names_of(layers):
    """Names of layers in one line, or that there are none."""
    return ", ".join(layer.name() for layer in layers) or tr("none")


def _day(layer):
    """The day, in UTC, on which the file of a layer was last written; None where it has none."""
    path = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source()).get("path")
    if not path or not os.path.isfile(path):
        return None
    return datetime.fromtimestamp(os.path.getmtime(path), tz=timezone.utc).strftime("%Y-%m-%d")
