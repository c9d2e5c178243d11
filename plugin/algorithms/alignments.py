"""`alignments`: the stretches of time in which a body of the sky stands over a subject, seen from a camera."""

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.bearings import compass_of
from ..adapters.cautions import tell_of_the_sun
from ..adapters.crs import output_crs
from ..adapters.geometries import points_of, sightlines_of
from ..adapters.moments import nights_of_sites
from ..adapters.pairing import Pairing
from ..adapters.progress import part_of, reporter
from ..adapters.reasons import Reasons
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.targets import conditions_of, targets_of
from ..adapters.translation import tr
from ..adapters.zones import warn_near_other_clocks, zones_of_sites
from ..names import ALIGNMENTS_FIELDS, UNMET_FIELDS
from ..plan.alignments import Pairs, add_lines, find_alignments
from ..plan.nights import span_utc_s
from ..plan.sightlines import pair_arrays

NIGHTS = 30  # asked for when the last one is blank


class Alignments(Algorithm):
    """A sightline for each stretch of time in which every condition holds."""

    ID = "alignments"
    GROUP = "nights"
    TITLE = "Alignments of sky and subject"
    SUMMARY = "When the Milky Way, the Moon, the Sun or a star stands over a subject, seen from a camera: every stretch of time"
    TAGS = ("Milky Way", "galactic core", "Moon", "Sun", "night", "photography", "bearing", "azimuth")
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
            *take.bodies("core"),
            take.day("FIRST_NIGHT", tr("First night, the date of its evening; blank: today")),
            take.day("LAST_NIGHT", tr("Last night; blank: {n} nights in all").format(n=NIGHTS)),
            *self._where_the_body_stands(),
            *self._light(),
            *take.names_and_heights(),
            *take.pairing(),
            take.advanced(take.terrain_radius()),
            take.skip_near(),
            take.dem_accuracy(),
            take.keep_fields("CAMERAS", tr("Fields of the cameras to keep")),
            take.time_zone(),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Alignments"), QgsProcessing.SourceType.TypeVectorLine),
            QgsProcessingParameterFeatureSink(
                "UNMET", tr("Pairs without an alignment, and why"), QgsProcessing.SourceType.TypeVectorPoint, None, True, False
            ),
        ):
            self.addParameter(parameter)

    @staticmethod
    def _where_the_body_stands():
        return (
            take.helped(
                take.number("AZ_TOLERANCE", tr("The body is over the subject within this angle to either side [°]"), low=0, high=90),
                tr("Blank: core 3°, arch and place on the plane 5°, pole 2°, star 1°, Sun and Moon 0.5°."),
            ),
            take.alt_min(),
            take.number("ALT_MAX", tr("Body at most this high [°]"), low=-90, high=90),
            take.number("GAP_MIN", tr("Body at least this far above the subject's top [°]"), low=-180, high=180),
            take.number("GAP_MAX", tr("Body at most this far above the subject's top [°]"), low=-180, high=180),
            take.use_skyline(),
            *take.band(),
            take.core_alt_min(),
        )

    @staticmethod
    def _light():
        return (
            *take.moon_rule("any"),
            take.sun_limit(),
            take.advanced(take.number("SUN_MIN", tr("Sun at least this high: for dusk and dawn [°]"), low=-90, high=90)),
            take.advanced(take.number("LIT_MIN", tr("For the Moon: at least this part lit, 0 to 1"), low=0, high=1)),
            take.advanced(take.number("LIT_MAX", tr("For the Moon: at most this part lit, 0 to 1"), low=0, high=1)),
        )

    def refusals(self, parameters, context):
        yield from refusals.pairing(self, parameters, context)
        yield from refusals.bodies(self, parameters, context)
        yield from refusals.zone(parameters)
        yield from refusals.nights(parameters)
        tolerance_deg = take.number_of(self, parameters, "AZ_TOLERANCE")
        if tolerance_deg is not None and not 0.0 < tolerance_deg < 90.0:
            yield tr("AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees, or leave it blank.").format(
                value=tolerance_deg
            )
        yield from refusals.conditions(self, parameters)
        yield from self._customs_in_the_way(parameters, context)

    def _customs_in_the_way(self, parameters, context):
        """Limits that were given and leave nothing beside the customary ones of every body asked for."""
        asked = conditions_of(self, parameters, context)
        sentences = []
        for target in targets_of(self, parameters, context):
            sun_limit_deg = target.sun_limit_deg if asked.sun_limit_deg is None else asked.sun_limit_deg
            limits = (
                ("ALT_MIN", asked.alt_min_of(target), "ALT_MAX", asked.alt_max_deg),
                ("APEX_MIN", asked.apex_min_deg, "APEX_MAX", asked.apex_max_of(target)),
                ("SUN_MIN", asked.sun_min_deg, "SUN_LIMIT", None if target.id == "sun" else sun_limit_deg),
            )
            sentences.append(
                [
                    tr(
                        "{low_name} is {low:g} and {high_name} {high:g} for {body} where one is blank: nothing lies between. Give both."
                    ).format(low_name=low_name, low=low, high_name=high_name, high=high, body=target.id)
                    for low_name, low, high_name, high in limits
                    if low is not None and high is not None and low > high
                ]
            )
        if all(sentences):
            yield from sentences[0]

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        with in_words():
            pairing = Pairing(self, parameters, context, feedback)
            cameras, targets = pairing.cameras, targets_of(self, parameters, context)
            zone_names, zone_index = zones_of_sites(parameters, cameras.lon_deg, cameras.lat_deg, feedback)
            first_night, last_night = nights_of_sites(parameters, zone_names, zone_index, NIGHTS)
            span = span_utc_s(cameras.lon_deg, zone_names, zone_index, first_night, last_night)
            warn_near_other_clocks(parameters, cameras, zone_names, zone_index, *span, feedback)
            compass = compass_of(cameras, *span, feedback)
        tell_of_the_sun([target.id for target in targets], feedback)
        nights = int((last_night - first_night).max().astype(int)) + 1 if first_night.size else 0
        self._refuse_too_many(parameters, context, pairing, nights * len(targets), feedback)

        crs = output_crs(self.parameterAsSource(parameters, "CAMERAS", context).sourceCrs())
        output = Table(
            self, parameters, "OUTPUT", context, ALIGNMENTS_FIELDS, cameras.kept, QgsWkbTypes.Type.MultiLineString, crs, feedback
        )
        unmet = Table(self, parameters, "UNMET", context, UNMET_FIELDS, cameras.kept, QgsWkbTypes.Type.Point, crs, feedback)
        conditions = conditions_of(self, parameters, context)
        reasons = Reasons()
        go_on = reporter(feedback)
        with in_words():
            pairing.read_ground(feedback, go_on, skylines=True)
            for table, before, after in pairing.measured(go_on):
                share = part_of(go_on, before, after)
                pairs = Pairs(**pair_arrays(table, pairing.places, zone_names, zone_index))
                nights_of_pair = (night[table["camera_index"]] for night in (first_night, last_night))
                found = find_alignments(pairs, targets, *nights_of_pair, conditions, share, pairing.ground.relief)
                if not self._write(found, table, pairing, compass, output, unmet, reasons, crs, context, go_on):
                    break
        go_on(1.0)
        pairing.log(feedback)
        output.close("alignments", context, feedback)
        unmet.close("unmet", context, feedback)
        self._log(output, unmet, reasons, pairing, targets, nights, feedback)
        return {"OUTPUT": output.id, **({"UNMET": unmet.id} if unmet else {})}

    def _refuse_too_many(self, parameters, context, pairing, rows_a_pair, feedback):
        """A pair has about one passage a body and night."""
        limit = self.parameterAsInt(parameters, "MAX_ROWS", context)
        rows = pairing.most(limit // max(rows_a_pair, 1), feedback) * rows_a_pair
        refuse_too_many(rows, limit, parameters, ["OUTPUT"])

    @staticmethod
    def _write(found, lines, pairing, compass, output, unmet, reasons, crs, context, go_on):
        """Write what was found for a block of pairs; False when cancelled."""
        names = pairing.names(lines)
        for table, without in found:
            shown, row = np.unique(table["pair"], return_inverse=True)
            drawn = sightlines_of(*(end[shown] for end in pairing.ends(lines)), crs, context.transformContext())
            add_lines(table, lines, names, compass)
            camera = lines["camera_index"][table["pair"]]
            if not output.write(table, camera, [drawn[i] for i in row.tolist()], lambda part: go_on()):
                return False
            without.update({name: column[without["pair"]] for name, column in names.items()})
            if not output.written:
                reasons.add(without)
            if unmet:
                camera = lines["camera_index"][without["pair"]]
                if not unmet.write(without, camera, points_of(pairing.cameras.x[camera], pairing.cameras.y[camera]), lambda part: go_on()):
                    return False
        return go_on()

    @staticmethod
    def _log(output, unmet, reasons, pairing, targets, nights, feedback):
        searched = tr("pairs: {pairs:,}, bodies: {bodies}, nights: {nights}").format(
            pairs=pairing.count, bodies=len(targets), nights=nights
        )
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} alignments written ({searched}).").format(n=output.written, searched=searched))
        elif not pairing.count:
            feedback.pushWarning(tr("No alignments: {reason}.").format(reason=pairing.why_none()))
        elif not output.written:
            reasons.log(feedback)
            advice = tr("UNMET tells why for each pair") if unmet else tr("ask for the output UNMET to see why for each pair")
            feedback.pushWarning(tr("No alignments ({searched}): {advice}.").format(searched=searched, advice=advice))
        else:
            feedback.pushInfo(tr("{n:,} alignments ({searched}).").format(n=output.written, searched=searched))
