"""`framing`: what a lens makes of a sightline and of a body in the sky: whether it fits, how large it is, shutter, focus, panorama."""

import numpy as np
from qgis.core import (
    QgsProcessing,
    QgsProcessingException,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsWkbTypes,
)

from ..adapters import drawn, lens, refusals
from ..adapters import parameters as take
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_sun
from ..adapters.crs import output_crs
from ..adapters.geometries import points_of, rings_of
from ..adapters.pairing import Pairing
from ..adapters.progress import part_of, reporter
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.skies import Skies
from ..adapters.translation import tr
from ..names import FRAMING_FIELDS, HEADS_FIELDS
from ..plan.drawing import wedges
from ..plan.framing import framing

BEYOND_SUBJECT = 1.25  # how far a field of view is drawn, as a part of the distance of its subject
ROWS_AT_ONCE, HEADS_AT_ONCE = 2000, 10_000  # framed, drawn and written in a part of the second that a person waits after a cancel


def in_pieces(tables):
    """Tables of sightlines cut up, each with the part of the work before and after it, 0 to 1."""
    for table, before, after in tables:
        count = table["camera_index"].size
        for first in range(0, count, ROWS_AT_ONCE):
            last = min(first + ROWS_AT_ONCE, count)
            ends = (before + (after - before) * row / count for row in (first, last))
            yield ({name: column[first:last] for name, column in table.items()}, *ends)


class Framing(Algorithm):
    """A field of view for each sightline."""

    ID = "framing"
    GROUP = "sight"
    TITLE = "Framing"
    SUMMARY = (
        "Whether a subject and a body of the sky fit the lens, how large the subject is in the picture, the longest shutter without star "
        "trails, where to focus, and the frames of a panorama"
    )
    TAGS = ("lens", "focal length", "field of view", "panorama", "shutter", "NPF", "hyperfocal", "focus", "photography")
    LAYER_OF_FIELD = {"CAMERA_NAME": "CAMERAS", "SUBJECT_NAME": "SUBJECTS", "PAIR_FIELD": "CAMERAS", "PAIR_FIELD_SUBJECT": "SUBJECTS"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.cameras_and_subjects(optional=True),
            take.helped(
                QgsProcessingParameterFeatureSource(
                    "SIGHTLINES",
                    tr("Or sightlines: a result of sightlines or alignments, in place of cameras and subjects"),
                    [QgsProcessing.SourceType.TypeVectorLine],
                    None,
                    True,
                ),
                tr("Alignments bring their own body and time."),
            ),
            *lens.lens(),
            *take.body("core"),
            take.helped(
                take.instant("TIME", tr("Time; blank: that of each sightline, or no body at all"), optional=True),
                tr("With an offset or Z that instant, else the clock of TIME_ZONE."),
            ),
            take.time_zone(),
            *lens.aim(),
            *lens.room(),
            *lens.sharpness(),
            take.helped(
                take.length("REACH", tr("Draw the field of view as far as this; blank: a quarter farther than the subject"), low=0),
                tr("Its sides are those of the frame on the level horizon."),
            ),
            *take.dem(),
            *take.names_and_heights(),
            *take.pairing(),
            take.skip_near(),
            take.dem_accuracy(),
            take.keep_fields("CAMERAS", tr("Fields of the cameras, or of the sightlines, to keep")),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Fields of view"), QgsProcessing.SourceType.TypeVectorPolygon),
            QgsProcessingParameterFeatureSink(
                "HEADS", tr("Head positions of the panoramas"), QgsProcessing.SourceType.TypeVectorPoint, None, True, False
            ),
        ):
            self.addParameter(parameter)

    @staticmethod
    def _is_drawn(parameters):
        return not take.blank(parameters.get("SIGHTLINES"))

    def refusals(self, parameters, context):
        is_drawn = self._is_drawn(parameters)
        if is_drawn and not all(take.blank(parameters.get(name)) for name in ("CAMERAS", "SUBJECTS")):
            yield tr("SIGHTLINES and CAMERAS or SUBJECTS are given. Give either the sightlines, or the cameras and their subjects.")
        elif is_drawn:
            yield from refusals.layers(self, parameters, ("SIGHTLINES",), context, refusals.LINES)
            yield from drawn.refusals(self, parameters, context)
            yield from refusals.fields(self, parameters, {"KEEP_FIELDS": "SIGHTLINES"}, context)
        else:
            for name in ("CAMERAS", "SUBJECTS"):
                if take.blank(parameters.get(name)):
                    yield tr("{name} is blank. Choose cameras and subjects, or SIGHTLINES.").format(name=name)
            yield from refusals.layers(self, parameters, ("CAMERAS", "SUBJECTS"), context)
            yield from refusals.fields(self, parameters, {"KEEP_FIELDS": "CAMERAS"}, context)
            yield from refusals.pairing(self, parameters, context)
        yield from lens.refusals(self, parameters, context)
        yield from refusals.bodies(self, parameters, context, "BODY")
        yield from refusals.zone(parameters)
        yield from refusals.moments(parameters, "TIME")
        if take.number_of(self, parameters, "REACH") == 0:
            yield tr("REACH is 0. Give the metres that the field of view is to be drawn, such as 2000, or leave it blank.")
        if take.blank(parameters.get("TIME")) and not (is_drawn and drawn.has_times(self, parameters, context)):
            for name, choice in (("PANORAMA", "arch"), ("AIM", "body")):
                if take.choice_of(self, parameters, name, context) == choice:
                    yield tr("{name} is {choice}, but TIME is blank, and without a time nothing stands in the sky. Give TIME.").format(
                        name=name, choice=choice
                    )

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        with in_words():
            lines = (drawn.Drawn if self._is_drawn(parameters) else Pairing)(self, parameters, context, feedback)
            limit = self.parameterAsInt(parameters, "MAX_ROWS", context)
            refuse_too_many(lines.most(limit, feedback), limit, parameters, ["OUTPUT"])
            shooting = lens.shooting_of(self, parameters, context)
            skies = Skies(self, parameters, feedback, lines)
        tell_of_the_sun([target.id for target in skies.targets], feedback)

        first = "SIGHTLINES" if self._is_drawn(parameters) else "CAMERAS"
        crs = output_crs(self.parameterAsSource(parameters, first, context).sourceCrs())
        kept, polygon, point = lines.cameras.kept, QgsWkbTypes.Type.MultiPolygon, QgsWkbTypes.Type.Point
        output = Table(self, parameters, "OUTPUT", context, FRAMING_FIELDS, kept, polygon, crs, feedback)
        heads = Table(self, parameters, "HEADS", context, HEADS_FIELDS, kept, point, crs, feedback)
        reach_m = take.number_of(self, parameters, "REACH")
        go_on = reporter(feedback)
        with in_words():
            lines.read_ground(feedback, go_on)
            for table, before, after in in_pieces(lines.measured(go_on)):
                skies.add_to(table)
                framed, mosaic = framing(table, table, lines.cameras.lat_deg[table["camera_index"]], shooting)
                table.update(framed, **lines.names(table))
                if not self._write(output, table, lines, reach_m, crs, context, part_of(go_on, before, after)):
                    break
                if not self._write_heads(heads, table, mosaic, lines, limit, go_on):
                    break
        go_on(1.0)
        lines.log(feedback)
        output.close("framing", context, feedback)
        heads.close("heads", context, feedback)
        skies.log(feedback)
        self._log(output, heads, lines, feedback)
        return {"OUTPUT": output.id, **({"HEADS": heads.id} if heads else {})}

    @staticmethod
    def _write(output, table, lines, reach_m, crs, context, go_on):
        """Write fields of view; False when cancelled."""
        at, cameras = table["camera_index"], lines.cameras
        far_m = BEYOND_SUBJECT * table["dist_m"] if reach_m is None else np.full(at.size, reach_m)
        rings = wedges(cameras.lon_deg[at], cameras.lat_deg[at], table["left_az"], table["right_az"], far_m)
        return output.write(table, at, rings_of(*rings, crs, context.transformContext()), go_on)

    @staticmethod
    def _write_heads(heads, table, mosaic, lines, limit, go_on):
        """Write where the head points for each frame of a panorama, if that is asked for; False when cancelled."""
        if not heads:
            return True
        shots = heads.written + int(mosaic.frames.sum())
        if shots > limit:
            raise QgsProcessingException(
                tr(
                    "The panoramas would take {n:,} frames and more, above MAX_ROWS ({limit:,}). Take a shorter lens, or raise MAX_ROWS."
                ).format(n=shots, limit=limit)
            )
        view, row, column, az_deg, alt_deg = mosaic.heads()
        for first in range(0, view.size, HEADS_AT_ONCE):
            some = slice(first, first + HEADS_AT_ONCE)
            rows = {name: table[name][view[some]] for name in HEADS_FIELDS if name in table}
            rows.update(pano_row=row[some], pano_col=column[some], head_az=az_deg[some], head_alt=alt_deg[some])
            at = table["camera_index"][view[some]]
            if not heads.write(rows, at, points_of(lines.cameras.x[at], lines.cameras.y[at]), lambda part: go_on()):
                return False
        return True

    @staticmethod
    def _log(output, heads, lines, feedback):
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} fields of view written.").format(n=output.written))
        elif not output.written:
            feedback.pushWarning(tr("No fields of view: {reason}.").format(reason=lines.why_none()))
        else:
            told = tr("{n:,} fields of view.") if not heads else tr("{n:,} fields of view, {heads:,} head positions.")
            feedback.pushInfo(told.format(n=output.written, heads=heads.written))
