"""Outputs that would be written over an input, or over each other: QGIS would take what is there away before it reads it."""

import os
from typing import NamedTuple, Optional

from osgeo import gdal
from qgis.core import (
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterFolderDestination,
    QgsProcessingParameterMapLayer,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameters,
    QgsProcessingParameterVectorLayer,
    QgsProviderRegistry,
)

from .packages import ENDING
from .parameters import blank
from .sinks import destination_layer, destination_text, written_as
from .translation import tr

LAYERS = (
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterMapLayer,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterVectorLayer,
)


class Place(NamedTuple):
    """A file, and a table in it; None stands for the whole file."""

    path: str
    table: Optional[str]

    def takes(self, other):
        """Whether to write here takes away what is there."""
        both = self.path, other.path
        same = self.path == other.path or (all(map(os.path.exists, both)) and os.path.samefile(*both))
        return same and (self.table is None or other.table is None or self.table.lower() == other.table.lower())


def clashes(algorithm, parameters, context):
    """Outputs named like an input or like another output; a generator of sentences."""
    places = [(name, _place_of(layer)) for name, layer in layers_read(algorithm, parameters, context)]
    read, written = [(name, place) for name, place in places if place is not None], {}
    for definition in algorithm.destinationParameterDefinitions():
        name, text = definition.name(), destination_text(parameters.get(definition.name()))
        place = _destination(definition, parameters.get(name))
        if place is None:
            continue
        if isinstance(definition, QgsProcessingParameterFeatureSink) and "|" in place.path:
            yield tr(
                "{name}: the name {path} holds '|', behind which QGIS reads the name of a layer. Leave it out; a table in a GeoPackage "
                "is written as ogr:dbname='FILE.gpkg' table=\"NAME\" (geom)."
            ).format(name=name, path=text)
        for source, there in read:
            if place.takes(there):
                yield tr("{name}: {path} is the layer of {source}, which would be lost. Choose another name.").format(
                    name=name, path=place.path, source=source
                )
        for other, there in written.items():
            if place.takes(there):
                yield tr("{name} and {other} are both to be written to {path}. Give each a name of its own.").format(
                    name=name, other=other, path=place.path
                )
        written[name] = place


def _destination(definition, value):
    path, table = destination_layer(value)
    if path is None or isinstance(definition, QgsProcessingParameterFolderDestination):
        return None
    return Place(os.path.abspath(written_as(path) if isinstance(definition, QgsProcessingParameterFeatureSink) else path), table)


def layers_read(algorithm, parameters, context):
    """Name and layer of each layer that a run reads, of its selected features too."""
    for definition in algorithm.parameterDefinitions():
        name, value = definition.name(), parameters.get(definition.name())
        if blank(value):
            continue
        if isinstance(definition, QgsProcessingParameterMultipleLayers):
            layers = QgsProcessingParameters.parameterAsLayerList(definition, parameters, context)
        elif isinstance(definition, LAYERS):
            value = value.source if isinstance(value, QgsProcessingFeatureSourceDefinition) else value
            layers = [QgsProcessingParameters.parameterAsLayer(definition, {name: value}, context)]
        else:
            layers = []
        yield from ((name, layer) for layer in layers if layer is not None)


def _place_of(layer):
    """The file and the table that a layer is read from, or None where it is read from none."""
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    path, table = parts.get("path"), parts.get("layerName")
    if blank(path) or not os.path.exists(path):
        return None
    return Place(os.path.abspath(path), _first_layer(path) if blank(table) else table)


def _first_layer(path):
    """The layer for which a GeoPackage is read where none is named; None of other files, in which no table is written."""
    if not path.lower().endswith(ENDING):
        return None
    try:
        file = gdal.OpenEx(path, gdal.OF_VECTOR)
    except RuntimeError:  # no vector file, where another plugin has switched on GDAL's exceptions
        return None
    return file.GetLayer(0).GetName() if file is not None and file.GetLayerCount() else None
