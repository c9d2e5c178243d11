"""`sightlines`: the lines of sight from cameras to subjects, with bearing, distance and angles."""

from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm
from ..adapters.translation import tr


class Sightlines(Algorithm):
    """A line for each pair of camera and subject."""

    ID = "sightlines"
    GROUP = "sight"
    TITLE = "Sightlines"
    SUMMARY = (
        "True bearing, distance, altitude and angular size of each subject, seen from each camera, with the line drawn along the Earth"
    )
    TAGS = ("bearing", "azimuth", "distance", "line of sight", "geodesic", "camera", "photography")
    LAYERS = ("CAMERAS", "SUBJECTS")
    LAYER_OF_FIELD = {
        "CAMERA_NAME": "CAMERAS",
        "SUBJECT_NAME": "SUBJECTS",
        "PAIR_FIELD": "CAMERAS",
        "PAIR_FIELD_SUBJECT": "SUBJECTS",
    }

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.cameras_and_subjects(),
            *take.names_and_heights(),
            *take.pairing(),
            take.refraction_k(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Sightlines"), QgsProcessing.SourceType.TypeVectorLine),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        yield from refusals.pairing(self, parameters, context)
