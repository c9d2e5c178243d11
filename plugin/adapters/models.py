"""Models that ship with the plugin, as algorithms of its provider: an id of their own, and outputs of one name in every QGIS."""

from pathlib import Path

from qgis.core import QgsProcessingModelAlgorithm, QgsProcessingParameterDefinition

from . import refusals
from .algorithm import GROUPS, Algorithm
from .translation import tr

FILES = sorted((Path(__file__).parent.parent / "models").glob("*.model3"))
GROUP = "models"


class Model(QgsProcessingModelAlgorithm):
    """A model from a file, whose stem is the id.

    QGIS names an output of a model by its step and itself, as `sight:Sightlines`, and newer ones in small letters; here it is `SIGHTLINES`.
    The steps must be registered when it is made, or it has no outputs.
    """

    def __init__(self, file):
        super().__init__()
        self._file = file
        self.fromFile(str(file))
        self.setHelpContent({name: tr(text) for name, text in self.helpContent().items() if text})
        self.updateDestinationParameters()
        self._qgis_names = {output.name().rpartition(":")[2].upper(): output.name() for output in self.destinationParameterDefinitions()}
        optional = self._outputs_on_branches()
        for name, qgis_name in self._qgis_names.items():
            output = self.parameterDefinition(qgis_name).clone()
            output.setName(name)
            if name in optional:
                output.setFlags(output.flags() | QgsProcessingParameterDefinition.Flag.FlagOptional)
            self.removeParameter(qgis_name)
            self.addParameter(output)
        for definition in self.parameterDefinitions():
            definition.setDescription(tr(definition.description()))
            definition.setHelp(self.helpContent().get(definition.name(), ""))

    def _outputs_on_branches(self):
        """Outputs of steps that are not always run, by their names here."""
        steps = [step for step in self.childAlgorithms().values() if any(before.conditionalBranch for before in step.dependencies())]
        return {label.upper() for step in steps for label in step.modelOutputs()}

    def name(self):
        return self._file.stem

    def displayName(self):
        return tr(super().name())

    def group(self):
        return tr(GROUPS[GROUP])

    def groupId(self):
        return GROUP

    def shortDescription(self):
        return self.helpContent().get("SHORT_DESCRIPTION", "")

    def createInstance(self):
        return Model(self._file)

    def checkParameterValues(self, parameters, context):
        for sentence in self._sentences(parameters, context):
            return False, sentence
        return super().checkParameterValues(Algorithm.as_qgis_takes_them(self, parameters), context)

    def _sentences(self, parameters, context):
        """What can be known to be wrong before any step is run; the rest each step tells when its turn comes."""
        yield from refusals.choices(self, parameters)
        yield from refusals.numbers(self, parameters, context)
        yield from refusals.zone(parameters)
        yield from refusals.nights(parameters)
        yield from refusals.moments(parameters, "TIME")
        yield from refusals.outputs(self, parameters)

    def processAlgorithm(self, parameters, context, feedback):
        names = self._qgis_names
        results = super().processAlgorithm({names.get(name, name): value for name, value in parameters.items()}, context, feedback)
        ours = {qgis_name: name for name, qgis_name in names.items()}
        return {ours.get(name, name): value for name, value in results.items()}
