"""`sightlines`: the lines of sight from cameras to subjects, with bearing, distance and angles."""

from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.bearings import compass_of
from ..adapters.crs import output_crs
from ..adapters.geometries import grid_bearings, sightlines_of
from ..adapters.moments import date_utc_s
from ..adapters.pairing import Pairing
from ..adapters.progress import part_of, reporter
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.translation import tr
from ..names import SIGHTLINES_FIELDS
from ..plan.compass import add_magnetic


class Sightlines(Algorithm):
    """A line for each pair of camera and subject."""

    ID = "sightlines"
    GROUP = "sight"
    TITLE = "Sightlines"
    SUMMARY = (
        "True bearing, distance, altitude and angular size of each subject, seen from each camera, whether terrain hides it, "
        "with the line drawn along the Earth"
    )
    TAGS = ("bearing", "azimuth", "distance", "line of sight", "geodesic", "camera", "photography")
    LAYERS = ("CAMERAS", "SUBJECTS")
    LAYER_OF_FIELD = {
        "CAMERA_NAME": "CAMERAS",
        "SUBJECT_NAME": "SUBJECTS",
        "PAIR_FIELD": "CAMERAS",
        "PAIR_FIELD_SUBJECT": "SUBJECTS",
        "KEEP_FIELDS": "CAMERAS",
    }

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.cameras_and_subjects(),
            *take.dem(),
            *take.names_and_heights(),
            *take.pairing(),
            take.skip_near(),
            take.dem_accuracy(),
            take.keep_fields("CAMERAS", tr("Fields of the cameras to keep")),
            take.helped(
                take.day("DATE", tr("Date of the magnetic bearings; blank: today")), tr("A compass needle turns by some 0.1° a year.")
            ),
            take.refraction_k(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Sightlines"), QgsProcessing.SourceType.TypeVectorLine),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        yield from refusals.pairing(self, parameters, context)
        yield from refusals.dates(parameters, "DATE")

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        with in_words():
            pairing = Pairing(self, parameters, context, feedback)
            limit = self.parameterAsInt(parameters, "MAX_ROWS", context)
            refuse_too_many(pairing.most(limit, feedback), limit, parameters, ["OUTPUT"])
            t_utc_s = date_utc_s(parameters, "DATE")
            compass = compass_of(pairing.cameras, t_utc_s, t_utc_s, feedback)

        crs = output_crs(self.parameterAsSource(parameters, "CAMERAS", context).sourceCrs())
        output = Table(
            self, parameters, "OUTPUT", context, SIGHTLINES_FIELDS, pairing.cameras.kept, QgsWkbTypes.Type.MultiLineString, crs, feedback
        )
        go_on = reporter(feedback)
        with in_words():
            pairing.read_ground(feedback, go_on)
            for table, before, after in pairing.measured(go_on):
                add_magnetic(table, compass, table["camera_index"], t_utc_s, "bearing_deg")
                if not self._write(output, table, pairing, crs, context, part_of(go_on, before, after)):
                    break
        go_on(1.0)
        pairing.log(feedback)
        output.close("sightlines", context, feedback)
        self._log(output, pairing, feedback)
        return {"OUTPUT": output.id}

    @staticmethod
    def _write(output, table, pairing, crs, context, go_on):
        transform_context = context.transformContext()
        lon1, lat1, lon2, lat2 = pairing.ends(table)
        table.update(pairing.names(table), grid_deg=grid_bearings(lon1, lat1, table["bearing_deg"], crs, transform_context))
        return output.write(table, table["camera_index"], sightlines_of(lon1, lat1, lon2, lat2, crs, transform_context), go_on)

    @staticmethod
    def _log(output, pairing, feedback):
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} sightlines written.").format(n=output.written))
        elif not output.written:
            feedback.pushWarning(tr("No sightlines: {reason}.").format(reason=pairing.why_none()))
        else:
            feedback.pushInfo(
                tr("{n:,} sightlines (cameras: {cameras:,}, subjects: {subjects:,}).").format(
                    n=output.written, cameras=len(pairing.cameras), subjects=len(pairing.subjects)
                )
            )
