"""The layer of towns whose glow is reckoned, as arrays."""

from qgis.core import QgsProperty

from ..plan.glow import Towns
from . import refusals
from .parameters import blank, text_of
from .points import Measure, read_points
from .translation import tr

POPULATION = "TOWN_POPULATION"


def towns_of(algorithm, parameters, context, feedback):
    """The towns of the layer TOWNS that can be used; None where no layer is given."""
    if blank(parameters.get("TOWNS")):
        return None
    source = algorithm.parameterAsSource(parameters, "TOWNS", context)
    people = Measure(POPULATION, 0.0, QgsProperty.fromField(text_of(parameters, POPULATION)), 0.0)
    expression_context = algorithm.createExpressionContext(parameters, context, source)
    read = read_points(source, context, expression_context, feedback, "town", text_of(parameters, "TOWN_NAME"), measures=[people])
    read.log("TOWNS", feedback)
    return Towns(read.lon_deg, read.lat_deg, read.measures[POPULATION], read.name)


def town_refusals(algorithm, parameters, context):
    """A layer of towns that cannot be read, or without the number of their people."""
    field = text_of(parameters, POPULATION)
    if blank(parameters.get("TOWNS")):
        if field:
            yield tr("{name} is given, but TOWNS is blank. Choose the layer of towns, or leave both blank.").format(name=POPULATION)
        return
    yield from refusals.layers(algorithm, parameters, ("TOWNS",), context)
    if not field:
        yield tr("TOWNS is given, but {name} is blank. Choose the field of the towns that holds how many people live there.").format(
            name=POPULATION
        )
        return
    fields = algorithm.parameterAsSource(parameters, "TOWNS", context).fields()
    if fields.lookupField(field) >= 0 and not fields.field(field).isNumeric():
        yield tr("{name}: the field '{field}' of TOWNS holds {kind}, not numbers. Choose one with the number of people.").format(
            name=POPULATION, field=field, kind=fields.field(field).typeName() or tr("values of another kind")
        )
