"""What every Sky Alidade algorithm answers QGIS in the same way."""

from contextlib import contextmanager
from pathlib import Path

from qgis.core import (
    QgsProcessingAlgorithm,
    QgsProcessingException,
    QgsProcessingParameterDateTime,
    QgsProcessingParameterDistance,
    QgsProcessingParameterNumber,
)
from qgis.PyQt.QtGui import QIcon

from . import refusals
from .clashes import clashes
from .moments import date_of, moment
from .parameter_help import help_of
from .parameters import blank, property_of_features
from .raster import source_of
from .translation import language, said, tr

HELP = Path(__file__).parent.parent / "help"
ICONS = Path(__file__).parent.parent / "icons"

GROUPS = {
    "sight": "Lines of sight",
    "stand": "Where to stand",
    "nights": "Nights and alignments",
    "sky": "Sky",
    "models": "Several steps at once",
}


@contextmanager
def in_words():
    """Turn the sentence of an error from the pure folders into what QGIS shows a person."""
    try:
        yield
    except (ValueError, FileNotFoundError) as wrong:
        raise QgsProcessingException(said(wrong)) from wrong


class Algorithm(QgsProcessingAlgorithm):
    """Id, texts and refusals; `LAYERS` are the sources, `LAYER_OF_FIELD` the layer each field parameter belongs to.

    `dem` is the elevation model of a run that is prepared, if it has one.
    """

    ID = GROUP = TITLE = SUMMARY = ""
    TAGS = ()
    LAYERS = ()
    LAYER_OF_FIELD = {}
    dem = None

    def name(self):
        return self.ID

    def displayName(self):
        return tr(self.TITLE)

    def shortDescription(self):
        return tr(self.SUMMARY)

    def tags(self):
        return [tr(tag) for tag in self.TAGS]

    def group(self):
        return tr(GROUPS[self.GROUP])

    def groupId(self):
        return self.GROUP

    def shortHelpString(self):
        translated = HELP / language() / f"{self.ID}.html"
        page = translated if translated.exists() else HELP / f"{self.ID}.html"
        return " ".join(page.read_text(encoding="utf-8").split())  # QGIS makes a paragraph of every line

    def icon(self):
        return QIcon(self.svgIconPath())

    def svgIconPath(self):
        return str(ICONS / f"{self.ID}.svg")

    def createInstance(self):
        return type(self)()

    def addParameter(self, parameter, createOutput=True):
        """As QGIS does, with the sentence that tells of the parameter, and the unit of a length where no widget shows it."""
        if not parameter.help():
            parameter.setHelp(tr(help_of(self.ID, parameter.name())))
        if isinstance(parameter, QgsProcessingParameterDistance):
            also = tr("In metres, also from a field; the dialog takes other units.")
            unit = also if parameter.isDynamic() else tr("In metres; the dialog takes other units.")
            parameter.setHelp(f"{parameter.help()} {unit}")
        return super().addParameter(parameter, createOutput)

    def refusals(self, parameters, context):
        """Sentences about what is wrong with this algorithm's own parameters."""
        return ()

    def checkParameterValues(self, parameters, context):
        for sentence in self._sentences(parameters, context):
            return False, sentence
        return super().checkParameterValues(self.as_qgis_takes_them(parameters), context)

    def prepareAlgorithm(self, parameters, context, feedback):
        for sentence in self._sentences(parameters, context):  # again: a model runs its steps without having them checked
            raise QgsProcessingException(sentence)
        with in_words():
            self.dem = source_of(self, parameters, context)
        return True

    def _sentences(self, parameters, context):
        yield from refusals.layers(self, parameters, self.LAYERS, context)
        yield from refusals.fields(self, parameters, self.LAYER_OF_FIELD, context)
        yield from refusals.choices(self, parameters)
        yield from refusals.numbers(self, parameters, context)
        yield from refusals.dem(self, parameters, context)
        yield from self.refusals(parameters, context)
        yield from clashes(self, parameters, context)
        yield from refusals.outputs(self, parameters)
        yield from refusals.databases(self, parameters, context)

    def as_qgis_takes_them(self, parameters):
        """The parameters in forms that QGIS's own check accepts: Python's dates as texts, 'field:NAME' as a property, blanks as none."""
        taken = dict(parameters)
        for definition in self.parameterDefinitions():
            name, value = definition.name(), parameters.get(definition.name())
            if isinstance(definition, QgsProcessingParameterDateTime) and blank(value):
                taken.pop(name, None)
            elif isinstance(definition, QgsProcessingParameterDateTime):
                date_only = definition.dataType() == QgsProcessingParameterDateTime.Type.Date
                # in UTC: QGIS takes a time without a zone for the computer's, whose clock may skip it
                taken[name] = str(date_of(value)) if date_only else f"{moment(value).replace(tzinfo=None).isoformat(timespec='seconds')}Z"
            elif isinstance(definition, QgsProcessingParameterNumber):
                if definition.isDynamic() and property_of_features(value) is not None:
                    taken[name] = property_of_features(value)
                elif blank(value):
                    taken.pop(name, None)
        return taken
