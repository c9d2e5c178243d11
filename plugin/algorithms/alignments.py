"""`alignments`: the stretches of time in which a body of the sky stands over a subject, seen from a camera."""

from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm
from ..adapters.translation import tr
from ..names import MOON_RULES

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
    }

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.cameras_and_subjects(),
            *take.bodies("core"),
            take.evening("FIRST_NIGHT", tr("First night, the date of its evening; blank: today")),
            take.evening("LAST_NIGHT", tr("Last night; blank: {n} nights in all").format(n=NIGHTS)),
            *self._where_the_body_stands(),
            *self._light(),
            *take.names_and_heights(),
            *take.pairing(),
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
            take.helped(
                take.number("ALT_MIN", tr("Body at least this high above the level horizon [°]"), low=-90, high=90),
                tr("Blank: 10° for the core and a place on the plane, 0° for the rest. For the arch it is the core's."),
            ),
            take.number("ALT_MAX", tr("Body at most this high [°]"), low=-90, high=90),
            take.number("GAP_MIN", tr("Body at least this far above the subject's top [°]"), low=-180, high=180),
            take.number("GAP_MAX", tr("Body at most this far above the subject's top [°]"), low=-180, high=180),
            take.advanced(take.number("TILT_MIN", tr("Milky Way tilted at least this much, 0 flat to 90 upright [°]"), low=0, high=90)),
            take.advanced(take.number("TILT_MAX", tr("Milky Way tilted at most this much [°]"), low=0, high=90)),
            take.advanced(take.number("APEX_MIN", tr("Top of the Milky Way's arch at least this high [°]"), low=0, high=90)),
            take.advanced(
                take.helped(
                    take.number("APEX_MAX", tr("Top of the Milky Way's arch at most this high [°]"), low=0, high=90),
                    tr("Blank: 60° for the body arch, since higher its direction swings; no limit for other bodies."),
                )
            ),
            take.advanced(take.number("CORE_ALT_MIN", tr("For the arch: the core at least this high [°]"), 0, low=-90, high=90)),
        )

    @staticmethod
    def _light():
        return (
            take.helped(
                take.choice("MOON", tr("Moon: any, down or down_or_thin"), MOON_RULES, "any"),
                "; ".join(f"{name}: {tr(sentence)}" for name, sentence in MOON_RULES.items()),
            ),
            take.advanced(
                take.number("MOON_LIT_MAX", tr("The Moon is thin while less than this part is lit, 0 to 1"), 0.25, low=0, high=1)
            ),
            take.helped(
                take.number("SUN_LIMIT", tr("Sun at most this high, without refraction [°]"), low=-90, high=90),
                tr("Blank: -18°, full darkness, for all bodies but Sun and Moon. -12° lets the last of twilight in."),
            ),
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
        yield from refusals.ordered(
            self,
            parameters,
            ("ALT_MIN", "ALT_MAX"),
            ("GAP_MIN", "GAP_MAX"),
            ("TILT_MIN", "TILT_MAX"),
            ("APEX_MIN", "APEX_MAX"),
            ("SUN_MIN", "SUN_LIMIT"),
            ("LIT_MIN", "LIT_MAX"),
        )
