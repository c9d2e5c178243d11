"""`site_map`: the map that goes with an application for a permit, a sheet a site."""

from qgis.core import QgsProcessingAlgorithm, QgsProcessingException, QgsProcessingOutputNumber

from ..adapters import refusals, sheet_parameters
from ..adapters.algorithm import Algorithm
from ..adapters.translation import tr


class SiteMap(Algorithm):
    """A sheet for each site."""

    ID = "site_map"
    GROUP = "stand"
    TITLE = "Site map"
    SUMMARY = "A map for a permit: where people stand and walk, closed ground, coordinates, bearings and a timetable, a sheet a site"
    TAGS = ("permit", "print", "layout", "PDF", "map", "sheet", "closure", "application")
    LAYERS = ("CAMERAS", "SUBJECTS", "STANDPOINTS")
    LAYER_OF_FIELD = {
        "CAMERA_NAME": "CAMERAS",
        "SUBJECT_NAME": "SUBJECTS",
        "CLOSED_NAME": "CLOSED",
        "CLOSED_FROM": "CLOSED",
        "CLOSED_TO": "CLOSED",
    }

    def flags(self):
        return super().flags() | QgsProcessingAlgorithm.Flag.FlagNoThreading

    def initAlgorithm(self, configuration=None):
        parts = (sheet_parameters.layers, sheet_parameters.words, sheet_parameters.hours, sheet_parameters.print_options)
        for parameter in (parameter for part in parts for parameter in part()):
            self.addParameter(parameter)
        self.addOutput(QgsProcessingOutputNumber("SHEETS", tr("Sheets made")))

    def refusals(self, parameters, context):
        yield from refusals.layers(self, parameters, ("SIGHTLINES", "PATHS", "WALK"), context, refusals.LINES)
        yield from refusals.layers(self, parameters, ("ZONES", "CLOSED"), context, refusals.POLYGONS)
        yield from refusals.zone(parameters)

    def processAlgorithm(self, parameters, context, feedback):
        raise QgsProcessingException(tr("The sheets of this version cannot be drawn yet: only its parameters are there."))
