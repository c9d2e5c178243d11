"""`shadow_track`: where on the ground a body sits at a height over a subject's top, moment by moment."""

from collections import Counter

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.areas import Access
from ..adapters.bearings import compass_of
from ..adapters.cautions import tell_of_the_dark, tell_of_the_sun
from ..adapters.crs import output_crs, transformed, wgs84
from ..adapters.geometries import points_of
from ..adapters.keeping import Kept
from ..adapters.moments import times_of_zones
from ..adapters.pairing import CAMERA_MEASURES, SUBJECT_MEASURES
from ..adapters.progress import part_of, reporter
from ..adapters.scene import Scene
from ..adapters.shapes import Shapes
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.standing import NOT_ALLOWED, REASONS
from ..adapters.targets import targets_of
from ..adapters.translation import counted, tr
from ..adapters.zones import warn_near_other_clocks
from ..names import SHADOW_TRACK_FIELDS, TRACK_LINES_FIELDS
from ..plan.aims import BodyBearing
from ..plan.alignments import Sites
from ..plan.clock import dates, local_text
from ..plan.compass import add_magnetic
from ..plan.conditions import Conditions
from ..plan.lattice import heavens_of, moments_given, standing_at
from ..plan.nights import night_of
from ..plan.outlook import Sky
from ..plan.shadow_track import ShadowTrack, joined


class ShadowTracks(Algorithm):
    """A point for each crossing, and lines that join the first ones."""

    ID = "shadow_track"
    GROUP = "stand"
    TITLE = "Shadow tracks"
    SUMMARY = (
        "Where on the ground the Milky Way, the Moon or the Sun sits at a height over a subject's top: how the standpoint moves with it"
    )
    TAGS = ("shadow", "ground track", "Milky Way", "galactic core", "Moon", "Sun", "photography", "where to stand")
    LAYERS = ("SUBJECTS",)
    LAYER_OF_FIELD = {"SUBJECT_NAME": "SUBJECTS", "CLOSED_FROM": "CLOSED", "CLOSED_TO": "CLOSED"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("SUBJECTS", tr("Subjects: the points to photograph")),
            *take.body("core"),
            take.instant("START", tr("First time")),
            take.instant("END", tr("Last time; blank: the first time alone"), optional=True),
            take.number("STEP", tr("Step between times [min]"), 5, low=0),
            take.helped(
                take.number("GAP", tr("The body's centre this far above the subject's top [°]"), 0, low=-90, high=90),
                tr("0: where the tip of the shadow of the top falls, at the height of the lens."),
            ),
            take.length("MAX_DISTANCE", tr("Stand at most this far from the subject"), 5000, low=0),
            *take.allowed_ground(),
            take.field("SUBJECT_NAME", tr("Field with the name of a subject"), "SUBJECTS"),
            take.camera_height("SUBJECTS"),
            *take.subject_measures(),
            *take.dem(),
            take.skip_near(),
            take.dem_accuracy(),
            take.time_zone(),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Shadow track"), QgsProcessing.SourceType.TypeVectorPoint),
            QgsProcessingParameterFeatureSink(
                "LINES", tr("Lines of the track"), QgsProcessing.SourceType.TypeVectorLine, None, True, False
            ),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        yield from refusals.layers(self, parameters, ("AREA", "CLOSED"), context, refusals.POLYGONS)
        yield from refusals.bodies(self, parameters, context, "BODY")
        if take.blank(parameters.get("START")):
            yield tr("START is blank. Give the first time, such as 2027-06-06 23:30:00.")
        yield from refusals.zone(parameters)
        yield from refusals.moments(parameters, "START", "END")
        yield from refusals.times_in_order(parameters)
        step_min, most_m = (take.number_of(self, parameters, name) for name in ("STEP", "MAX_DISTANCE"))
        if not step_min > 0.0:
            yield tr("STEP is 0. Give the minutes between two times, such as 5.")
        if not most_m > 0.0:
            yield tr("MAX_DISTANCE is 0 and lets nothing through. Give the metres within which to stand, such as 5000.")

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        step_min = take.number_of(self, parameters, "STEP")
        with in_words():
            scene = Scene(self, parameters, context, feedback, {**SUBJECT_MEASURES, **CAMERA_MEASURES})
            access = Access(self, parameters, context, feedback, scene.crs)
            (target,) = targets_of(self, parameters, context, "BODY")
            times = times_of_zones(parameters, "START", "END", step_min, scene.zone_names, feedback)
            moments = moments_given(times, scene.zone_index)
            span = min(own[0] for own in times), max(own[-1] for own in times)
            warn_near_other_clocks(parameters, scene.subjects, scene.zone_names, scene.zone_index, *span, feedback)
            compass = compass_of(scene.subjects, *span, feedback)
        tell_of_the_dark(feedback)
        tell_of_the_sun([target.id], feedback)
        limit = self.parameterAsInt(parameters, "MAX_ROWS", context)
        refuse_too_many(int(moments.asked.sum()), limit, parameters, ["OUTPUT"])

        crs = output_crs(scene.crs)
        output = Table(self, parameters, "OUTPUT", context, SHADOW_TRACK_FIELDS, Kept(), QgsWkbTypes.Type.Point, crs, feedback)
        lines = Table(self, parameters, "LINES", context, TRACK_LINES_FIELDS, Kept(), QgsWkbTypes.Type.MultiLineString, crs, feedback)
        run = _Run(self, parameters, context, scene, access, target, moments, times, compass, crs)
        if len(scene.subjects):
            with in_words():
                run.write(output, lines, go_on)
        go_on(1.0)
        scene.ground.log(feedback)
        output.close("shadow_track", context, feedback, step_min)
        lines.close("track_lines", context, feedback)
        run.log(output, lines, feedback)
        return {"OUTPUT": output.id, **({"LINES": lines.id} if lines else {})}


class _Run:
    """What is written, and what was left out."""

    def __init__(self, algorithm, parameters, context, scene, access, target, moments, times, compass, crs):
        self._scene, self._access, self._target, self._moments, self._times = scene, access, target, moments, times
        self._compass, self._crs, self._transform_context = compass, crs, context.transformContext()
        self._keep_closed = take.yes_of(algorithm, parameters, "KEEP_CLOSED", context)
        names = ("GAP", "MAX_DISTANCE", "REFRACTION_K", "PRESSURE", "TEMPERATURE")
        self._number = {name: take.number_of(algorithm, parameters, name) for name in names}
        self.left_out, self.low_deg, self.without = Counter(), None, 0

    def write(self, output, lines, go_on):
        """Follow all tracks, and write to those of the tables that are asked for."""
        scene, number, t_utc_s = self._scene, self._number, self._moments.t_utc_s
        subjects = scene.subjects
        conditions = Conditions(pressure_hPa=number["PRESSURE"], temperature_C=number["TEMPERATURE"])
        heavens = heavens_of(self._target, t_utc_s.min(), t_utc_s.max())
        sites = Sites(subjects.lon_deg, subjects.lat_deg, np.where(np.isfinite(subjects.z_m), subjects.z_m, 0.0))
        standing = standing_at(sites, self._target, t_utc_s, conditions, heavens)
        asked = self._moments.asked & standing.usable
        if not asked.all():
            self.low_deg = standing.alt_deg[self._moments.asked & ~standing.usable]
        scene.read_ground(go_on)
        if scene.ground.stopped:
            return
        aim, sky = BodyBearing(self._target, t_utc_s, heavens), Sky(self._target, t_utc_s, heavens, conditions)
        lens_m = subjects.measures["CAMERA_HEIGHT"]
        track = ShadowTrack(
            scene.places, aim, sky, lens_m, number["GAP"], number["MAX_DISTANCE"], scene.ground.relief, number["REFRACTION_K"]
        )
        firsts, share = [], part_of(go_on, scene.ground.begin, 1.0)
        for table, left_out, done in track.blocks(asked):
            self.left_out.update(left_out)
            table = self._complete(table)
            x, y = transformed(table["lon_deg"], table["lat_deg"], wgs84(), self._crs, self._transform_context)
            if not output.write(table, table["subject_index"], points_of(x, y), lambda part: go_on()):
                return
            firsts.append({name: table[name][table["order"] == 1] for name in ("subject_index", "moment", "order", "lon_deg", "lat_deg")})
            if not share(done):
                return
        self.without = int(asked.sum()) - sum(own["moment"].size for own in firsts)
        if lines and firsts:
            self._write_lines(lines, {name: np.concatenate([own[name] for own in firsts]) for name in firsts[0]}, go_on)

    def _complete(self, table):
        """The rows in allowed ground, with all columns."""
        scene, subject = self._scene, table["subject"]
        t_utc_s, zone = self._moments.t_utc_s[table["moment"]], scene.zone_index[subject]
        night = night_of(t_utc_s, table["lon_deg"], scene.zone_names, zone)[0]
        number = self._access.sets_of(night, dates(t_utc_s, scene.zone_names, zone))
        x, y = transformed(table["lon_deg"], table["lat_deg"], wgs84(), scene.crs, self._transform_context)
        allowed = self._access.allows(x, y, number)
        table.update(allowed=allowed, t_utc=t_utc_s, subject_index=subject)
        if not self._keep_closed and not allowed.all():
            self.left_out[NOT_ALLOWED] += int((~allowed).sum())
            table = {name: values[allowed] for name, values in table.items()}
        subject, zone = table["subject_index"], scene.zone_index[table["subject_index"]]
        table.update(
            scene.names(subject),
            t_local=local_text(table["t_utc"], scene.zone_names, zone),
            tz=np.asarray(scene.zone_names, dtype=object)[zone],
        )
        add_magnetic(table, self._compass, subject, table["t_utc"], "bearing_deg")
        return table

    def _write_lines(self, lines, firsts, go_on):
        scene = self._scene
        zone_of_run = {i: zone for zone in range(len(self._times)) for i in np.flatnonzero(scene.zone_index == zone).tolist()}
        rows = []
        for i in np.unique(firsts["subject_index"]).tolist():  # the moments of a zone are its own
            own = {name: values[firsts["subject_index"] == i] for name, values in firsts.items()}
            own["subject"] = own["subject_index"]
            steps = np.searchsorted(self._times[zone_of_run[i]], self._moments.t_utc_s)
            rows += [{name: values[line] for name, values in own.items()} for line in joined(own, steps)]
        if not rows:
            return
        subject = np.array([row["subject_index"][0] for row in rows])
        zone, ends = scene.zone_index[subject], {}
        for name, local, at in (("t_start", "start_loc", 0), ("t_end", "end_loc", -1)):
            ends[name] = self._moments.t_utc_s[np.array([row["moment"][at] for row in rows])]
            ends[local] = local_text(ends[name], scene.zone_names, zone)
        table = {
            **scene.names(subject),
            **ends,
            "body": np.full(subject.size, self._target.id, dtype=object),
            "tz": np.asarray(scene.zone_names, dtype=object)[zone],
        }
        lon, lat = (np.concatenate([row[name] for row in rows]) for name in ("lon_deg", "lat_deg"))
        offsets = np.cumsum([0, *(row["lon_deg"].size for row in rows)])
        shapes = Shapes(wgs84(), self._crs, self._transform_context)
        lines.write(table, subject, shapes.lines(_going_on(lon, offsets), lat, offsets), lambda part: go_on())

    def log(self, output, lines, feedback):
        """What was found and left out."""
        if self.low_deg is not None:
            feedback.pushWarning(
                tr(
                    "{n:,} subjects and times are left out: {body} stands at {low:.1f}° to {high:.1f}° then, below the horizon, or as an "
                    "arch too high or without its core."
                ).format(n=self.low_deg.size, body=self._target.phrase, low=self.low_deg.min(), high=self.low_deg.max())
            )
        if self.left_out:
            reasons = {tr(REASONS[reason]): count for reason, count in self.left_out.items()}
            feedback.pushInfo(tr("Places left out: {reasons}.").format(reasons=counted(reasons)))
        if self.without:
            feedback.pushInfo(
                tr(
                    "{n:,} subjects and times have no first place within MAX_DISTANCE ({most:,.0f} m) and allowed ground: the shadow is "
                    "longer, or falls elsewhere."
                ).format(n=self.without, most=self._number["MAX_DISTANCE"])
            )
        found = tr("{n:,} places").format(n=output.written) + (tr(", {n:,} lines").format(n=lines.written) if lines else "")
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {found} written.").format(found=found))
        elif not output.written:
            feedback.pushWarning(tr("No places."))
        else:
            feedback.pushInfo(tr("{found}.").format(found=found))


def _going_on(lon_deg, offsets):
    """Longitudes that go on over the antimeridian within each line."""
    start = np.repeat(lon_deg[offsets[:-1]], np.diff(offsets))
    return lon_deg - 360.0 * np.rint((lon_deg - start) / 360.0)
