"""`standpoints`: where on a path, or on which ground, a subject is seen in the direction that is wanted."""

from typing import NamedTuple, Optional

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.bearings import compass_of
from ..adapters.cautions import tell_of_the_dark, tell_of_the_sun
from ..adapters.crs import output_crs
from ..adapters.keeping import Kept
from ..adapters.moments import nights_of_sites, now_utc_s, times_of_zones
from ..adapters.progress import reporter
from ..adapters.scene import Scene
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.standing import Standing
from ..adapters.targets import conditions_of, targets_of
from ..adapters.translation import tr
from ..adapters.zones import warn_near_other_clocks
from ..names import STANDPOINTS_FIELDS, STRETCHES_FIELDS, ZONES_FIELDS
from ..plan.aims import Bearing, BodyBearing
from ..plan.alignments import Sites
from ..plan.conditions import ANY
from ..plan.lattice import Moments, heavens_of, moments_given, moments_of_nights, standing_at
from ..plan.outlook import Sky
from ..plan.standpoints import Reach, Search

NIGHTS = 30  # asked for when the last one is blank
OF_BODY = ("GAP_MIN", "GAP_MAX", "TIME", "TIME_END", "FIRST_NIGHT", "LAST_NIGHT")
OF_NIGHTS = ("SUN_LIMIT", "SUN_MIN", "LIT_MIN", "LIT_MAX", "TILT_MIN", "TILT_MAX")


class Sought(NamedTuple):
    """What is looked for: the aim, and with a body the sky over it, the moments of each subject and the step between them."""

    aim: object
    sky: Optional[Sky] = None
    moments: Optional[Moments] = None
    step_min: Optional[float] = None
    none: Optional[str] = None  # why there is nothing to look for


class Standpoints(Algorithm):
    """A point for each place on a path from which a subject is seen in the direction wanted."""

    ID = "standpoints"
    GROUP = "stand"
    TITLE = "Standpoints on paths"
    SUMMARY = (
        "Where to stand on a path, or on which ground, so that a subject lies in a bearing, or under the Milky Way, the Moon or the Sun"
    )
    TAGS = ("path", "bearing", "azimuth", "Milky Way", "galactic core", "Moon", "Sun", "viewpoint", "photography", "where to stand")
    LAYERS = ("SUBJECTS",)
    LAYER_OF_FIELD = {
        "SUBJECT_NAME": "SUBJECTS",
        "PATH_NAME": "PATHS",
        "KEEP_FIELDS": "PATHS",
        "CLOSED_FROM": "CLOSED",
        "CLOSED_TO": "CLOSED",
    }

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("SUBJECTS", tr("Subjects: the points to photograph")),
            take.lines("PATHS", tr("Paths: the lines to stand on")),
            *self._aim(),
            take.helped(
                take.number("AZ_TOLERANCE", tr("In the direction wanted within this angle to either side [°]"), 0.5, low=0, high=90),
                tr("For STRETCHES and ZONES, and for ends and bends of a path that come near the direction and do not reach it."),
            ),
            take.length("MIN_DISTANCE", tr("Stand at least this far from the subject"), 0, low=0),
            take.length("MAX_DISTANCE", tr("Stand at most this far from the subject"), 5000, low=0),
            *take.allowed_ground(),
            take.number("GAP_MIN", tr("Body at least this far above the subject's top [°]"), low=-180, high=180),
            take.number("GAP_MAX", tr("Body at most this far above the subject's top [°]"), low=-180, high=180),
            take.alt_min(),
            take.number("ALT_MAX", tr("Body at most this high [°]"), low=-90, high=90),
            *self._light(),
            take.field("PATH_NAME", tr("Field with the name of a path"), "PATHS"),
            take.field("SUBJECT_NAME", tr("Field with the name of a subject"), "SUBJECTS"),
            take.camera_height("PATHS"),
            *take.subject_measures(),
            take.keep_fields("PATHS", tr("Fields of the paths to keep")),
            take.advanced(take.length("POS_ERROR", tr("A position in the field is known to"), 3, low=0)),
            *take.dem(),
            take.advanced(take.terrain_radius()),
            take.skip_near(),
            take.dem_accuracy(),
            take.use_skyline(),
            take.time_zone(),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("POINTS", tr("Standpoints"), QgsProcessing.SourceType.TypeVectorPoint),
            QgsProcessingParameterFeatureSink(
                "STRETCHES", tr("Parts of the paths within tolerance"), QgsProcessing.SourceType.TypeVectorLine, None, True, False
            ),
            QgsProcessingParameterFeatureSink(
                "ZONES", tr("Ground within tolerance"), QgsProcessing.SourceType.TypeVectorPolygon, None, True, False
            ),
        ):
            self.addParameter(parameter)

    @staticmethod
    def _aim():
        return (
            take.helped(
                take.number("BEARING", tr("True bearing, looking from the camera to the subject [°]"), low=-360, high=360),
                tr("Give this, or BODY: alone with nights, or with TIME."),
            ),
            *take.body(),
            take.helped(
                take.instant("TIME", tr("The body at this time"), optional=True),
                tr("The wall clock at the subject, or a time with its offset from UTC. Blank: nights."),
            ),
            take.instant("TIME_END", tr("... and every STEP until this time"), optional=True),
            take.day("FIRST_NIGHT", tr("Without TIME: first night, the date of its evening; blank: today")),
            take.day("LAST_NIGHT", tr("Last night; blank: {n} nights in all").format(n=NIGHTS)),
            take.number("STEP", tr("Step between times [min]"), 15, low=0),
        )

    @staticmethod
    def _light():
        return (
            *take.moon_rule("any"),
            take.sun_limit(),
            take.advanced(take.number("SUN_MIN", tr("Sun at least this high: for dusk and dawn [°]"), low=-90, high=90)),
            take.advanced(take.number("LIT_MIN", tr("For the Moon: at least this part lit, 0 to 1"), low=0, high=1)),
            take.advanced(take.number("LIT_MAX", tr("For the Moon: at most this part lit, 0 to 1"), low=0, high=1)),
            *take.band(),
            take.core_alt_min(),
        )

    # what can be known before

    def refusals(self, parameters, context):
        yield from refusals.layers(self, parameters, ("PATHS",), context, refusals.LINES)
        yield from refusals.layers(self, parameters, ("AREA", "CLOSED"), context, refusals.POLYGONS)
        yield from self._unclear_aim(parameters)
        yield from refusals.bodies(self, parameters, context, "BODY")
        yield from refusals.zone(parameters)
        yield from refusals.moments(parameters, "TIME", "TIME_END")
        yield from refusals.times_in_order(parameters, "TIME", "TIME_END")
        yield from refusals.nights(parameters)
        yield from refusals.conditions(self, parameters)
        yield from refusals.ordered(self, parameters, ("MIN_DISTANCE", "MAX_DISTANCE"))
        tolerance_deg, most_m, step_min = (take.number_of(self, parameters, name) for name in ("AZ_TOLERANCE", "MAX_DISTANCE", "STEP"))
        if not 0.0 < tolerance_deg < 90.0:
            yield tr("AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees.").format(value=tolerance_deg)
        if not most_m > 0.0:
            yield tr("MAX_DISTANCE is 0 and lets nothing through. Give the metres within which to stand, such as 5000.")
        if not step_min > 0.0:
            yield tr("STEP is 0. Give the minutes between two times, such as 15.")

    def _unclear_aim(self, parameters):
        """Not exactly one direction."""
        given = {name: not take.blank(parameters.get(name)) for name in ("BEARING", "BODY", *OF_BODY)}
        if given["BEARING"] and given["BODY"]:
            yield tr("BEARING and BODY are both given, and each is a direction. Leave one of them blank.")
        elif not given["BEARING"] and not given["BODY"]:
            yield tr("No direction is given. Give BEARING, a true bearing from camera to subject, or BODY with TIME or with nights.")
        elif given["BEARING"] and any(given[name] for name in OF_BODY):
            named = ", ".join(name for name in OF_BODY if given[name])
            yield tr(
                "BEARING is given, and beside it {names}, which belong to a body. Leave them blank, or give BODY in place of BEARING."
            ).format(names=named)
        elif given["TIME_END"] and not given["TIME"]:
            yield tr("TIME_END is given without TIME. Give the first time too.")
        elif given["TIME"] and (given["FIRST_NIGHT"] or given["LAST_NIGHT"]):
            yield tr("TIME and nights are both given. Leave TIME blank, or FIRST_NIGHT and LAST_NIGHT.")

    # the run

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        with in_words():
            scene = Scene(self, parameters, context, feedback)
            scene.read_paths()
            sought = self._sought(parameters, context, scene, feedback)
            compass = self._compass(scene, sought, feedback)
        tell_of_the_dark(feedback)
        tell_of_the_sun(take.choices_of(self, parameters, "BODY", context), feedback)
        reach = Reach(*(take.number_of(self, parameters, name) for name in ("AZ_TOLERANCE", "MIN_DISTANCE", "MAX_DISTANCE")))
        self._refuse_too_many(parameters, context, scene, sought, reach)
        crs, kept = output_crs(scene.crs), scene.lines.kept
        points = Table(self, parameters, "POINTS", context, STANDPOINTS_FIELDS, kept, QgsWkbTypes.Type.Point, crs, feedback)
        parts = Table(self, parameters, "STRETCHES", context, STRETCHES_FIELDS, kept, QgsWkbTypes.Type.MultiLineString, crs, feedback)
        zones = Table(self, parameters, "ZONES", context, ZONES_FIELDS, Kept(), QgsWkbTypes.Type.MultiPolygon, crs, feedback)
        none = scene.nobody() or sought.none
        standing = Standing(self, parameters, context, scene, sought, reach, compass, crs)
        if not none:
            with in_words():
                standing.write(points, parts, zones, go_on)
        go_on(1.0)
        scene.ground.log(feedback)
        for table, look in ((points, "standpoints"), (parts, "stretches"), (zones, "zones")):
            table.close(look, context, feedback, sought.step_min)
        standing.log(points, parts, zones, none, feedback)
        return {name: table.id for name, table in (("POINTS", points), ("STRETCHES", parts), ("ZONES", zones)) if table}

    def _sought(self, parameters, context, scene, feedback):
        """The direction, and the moments at which it is wanted."""
        bearing_deg = take.number_of(self, parameters, "BEARING")
        if bearing_deg is not None:
            return Sought(Bearing(bearing_deg))
        (target,) = targets_of(self, parameters, context, "BODY")
        conditions, step_min = conditions_of(self, parameters, context), take.number_of(self, parameters, "STEP")
        subjects, at_time = scene.subjects, not take.blank(parameters.get("TIME"))
        if not len(subjects):
            return Sought(None, none=scene.nobody())
        sites = Sites(subjects.lon_deg, subjects.lat_deg, np.where(np.isfinite(subjects.z_m), subjects.z_m, 0.0))
        if at_time:
            times = times_of_zones(parameters, "TIME", "TIME_END", step_min, scene.zone_names, feedback)
            moments = moments_given(times, scene.zone_index)
            heavens = heavens_of(target, moments.t_utc_s.min(), moments.t_utc_s.max())
            moments, none = self._standing(sites, target, moments, conditions, heavens, feedback)
            self._tell_what_is_not_asked(parameters, context, feedback)
        else:
            nights = nights_of_sites(parameters, scene.zone_names, scene.zone_index, NIGHTS)
            moments = moments_of_nights(sites, scene.zone_names, scene.zone_index, *nights, target, conditions, 60.0 * step_min)
            none = None if moments.t_utc_s.size else tr("in these nights {body} never meets the conditions").format(body=target.phrase)
            feedback.pushInfo(
                tr("{n:,} moments every {step:g} min in which the conditions hold at one of the subjects.").format(
                    n=moments.t_utc_s.size, step=step_min
                )
            )
            heavens = heavens_of(target, moments.t_utc_s.min(), moments.t_utc_s.max()) if not none else None
        if none:
            return Sought(None, none=none, step_min=step_min)
        span = moments.t_utc_s.min(), moments.t_utc_s.max()
        warn_near_other_clocks(parameters, subjects, scene.zone_names, scene.zone_index, *span, feedback)
        sky = Sky(target, moments.t_utc_s, heavens, conditions)
        return Sought(BodyBearing(target, moments.t_utc_s, heavens), sky, moments, step_min)

    @staticmethod
    def _standing(sites, target, moments, conditions, heavens, feedback):
        """The moments without those at which the body cannot be used, and why none is left."""
        standing = standing_at(sites, target, moments.t_utc_s, conditions, heavens)
        lost = moments.asked & ~standing.usable
        if not lost.any():
            return moments, None
        where = tr("{name} stands at {alt}").format(name=target.phrase, alt=_range(standing.alt_deg[lost]))
        if target.is_arch:
            where += tr(" and the core at {alt}").format(alt=_range(standing.core_alt[lost]))
        sentence = tr("{where} of altitude, below the horizon or outside the limits asked").format(where=where)
        feedback.pushWarning(
            tr("{lost:,} of {all:,} subjects and times are left out: {sentence}.").format(
                lost=int(lost.sum()), all=int(moments.asked.sum()), sentence=sentence
            )
        )
        asked = moments.asked & standing.usable
        return moments._replace(asked=asked), None if asked.any() else sentence

    def _tell_what_is_not_asked(self, parameters, context, feedback):
        given = [name for name in OF_NIGHTS if not take.blank(parameters.get(name))]
        given += ["MOON"] if take.choice_of(self, parameters, "MOON", context) != ANY else []
        if given:
            feedback.pushWarning(tr("{names}: for nights only. The times given are taken as they are.").format(names=", ".join(given)))

    @staticmethod
    def _compass(scene, sought, feedback):
        span = (now_utc_s(),) * 2 if sought.moments is None else (sought.moments.t_utc_s.min(), sought.moments.t_utc_s.max())
        return compass_of(scene.subjects, *span, feedback)

    def _refuse_too_many(self, parameters, context, scene, sought, reach):
        limit = self.parameterAsInt(parameters, "MAX_ROWS", context)
        moments = 1 if sought.moments is None else int(sought.moments.asked.sum(axis=1).max(initial=0))
        most = len(scene.subjects) * len(scene.lines) * moments
        if most > limit and not sought.none:
            most = Search(scene.paths, scene.places, sought.aim, reach).pairs() * moments
        refuse_too_many(most, limit, parameters, ["POINTS"])


def _range(deg):
    """Angles from the least to the greatest, as they are shown."""
    low, high = (f"{round(float(end), 1) + 0.0:.1f}°" for end in (deg.min(), deg.max()))  # no -0.0
    return low if low == high else tr("{low} to {high}").format(low=low, high=high)
