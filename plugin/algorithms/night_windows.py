"""`night_windows`: for each site and night when the sky is dark, the Moon away and the body where it is wanted, and why not."""

from collections import Counter

from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_sun
from ..adapters.crs import output_crs
from ..adapters.geometries import points_of
from ..adapters.moments import nights_of_sites
from ..adapters.progress import part_of, reporter
from ..adapters.relief import Ground
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.sites import lenses_over, read_sites
from ..adapters.targets import targets_of
from ..adapters.towns import town_refusals, towns_of
from ..adapters.translation import tr
from ..adapters.zones import warn_near_other_clocks, zones_of_sites
from ..names import MONTHS_FIELDS, NIGHT_WINDOWS_FIELDS, WINDOWS_FIELDS
from ..plan.conditions import Conditions
from ..plan.months import months_of, new_moons
from ..plan.night_windows import Places, find_night_windows, known_height_m, out_of_reach
from ..plan.nights import span_utc_s

NIGHTS = 365  # asked for when the last one is blank
REASONS_TOLD = 5


class NightWindows(Algorithm):
    """A row for each site and night, if asked for each window, and each month."""

    ID = "night_windows"
    GROUP = "nights"
    TITLE = "Night windows"
    SUMMARY = "When it is dark, the Moon away and the Milky Way high, for each site and night: sunset to sunrise, windows, best months"
    TAGS = ("Milky Way", "galactic core", "darkness", "twilight", "moonrise", "moonset", "sunset", "sunrise", "new moon", "season")
    LAYERS = ("SITES",)
    LAYER_OF_FIELD = {"SITE_NAME": "SITES", "KEEP_FIELDS": "SITES", "TOWN_POPULATION": "TOWNS", "TOWN_NAME": "TOWNS"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("SITES", tr("Sites: the points under the sky")),
            *take.dem(),
            *take.body("core"),
            take.day("FIRST_NIGHT", tr("First night, the date of its evening; blank: today")),
            take.day("LAST_NIGHT", tr("Last night; blank: {n} nights in all").format(n=NIGHTS)),
            take.alt_min(),
            take.use_skyline(),
            *take.band(),
            take.core_alt_min(),
            *take.moon_rule("down"),
            take.sun_limit(),
            take.points("TOWNS", tr("Towns whose glow is reckoned"), optional=True),
            take.field("TOWN_POPULATION", tr("Field with the number of people of a town"), "TOWNS"),
            take.field("TOWN_NAME", tr("Field with the name of a town"), "TOWNS"),
            take.field("SITE_NAME", tr("Field with the name of a site"), "SITES"),
            take.advanced(take.camera_height("SITES")),
            take.advanced(take.terrain_radius()),
            take.skip_near(),
            take.keep_fields("SITES", tr("Fields of the sites to keep")),
            take.time_zone(),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Nights"), QgsProcessing.SourceType.TypeVectorPoint),
            self._more("WINDOWS", tr("Every window")),
            self._more("MONTHS", tr("Months")),
        ):
            self.addParameter(parameter)

    @staticmethod
    def _more(name, label):
        return QgsProcessingParameterFeatureSink(name, label, QgsProcessing.SourceType.TypeVectorPoint, None, True, False)

    def refusals(self, parameters, context):
        yield from town_refusals(self, parameters, context)
        yield from refusals.bodies(self, parameters, context, "BODY")
        yield from refusals.zone(parameters)
        yield from refusals.nights(parameters)
        yield from refusals.ordered(self, parameters, ("TILT_MIN", "TILT_MAX"), ("APEX_MIN", "APEX_MAX"))
        (target,) = targets_of(self, parameters, context, "BODY")
        asked = self._conditions(parameters, context)
        if asked.apex_min_deg is not None and asked.apex_max_deg is None and asked.apex_min_deg > (asked.apex_max_of(target) or 90.0):
            yield tr(
                "APEX_MIN is {low:g}, but APEX_MAX is blank, which means {high:g} for {body}: nothing lies between. Give both."
            ).format(low=asked.apex_min_deg, high=asked.apex_max_of(target), body=target.id)

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        sites = read_sites(self, parameters, context, feedback)
        towns = towns_of(self, parameters, context, feedback)
        with in_words():
            ground = Ground(self, parameters, context)
            (target,) = targets_of(self, parameters, context, "BODY")
            zone_names, zone_index = zones_of_sites(parameters, sites.lon_deg, sites.lat_deg, feedback)
            first_night, last_night = nights_of_sites(parameters, zone_names, zone_index, NIGHTS)
            span = span_utc_s(sites.lon_deg, zone_names, zone_index, first_night, last_night)
            warn_near_other_clocks(parameters, sites, zone_names, zone_index, *span, feedback)
        tell_of_the_sun([target.id], feedback)
        rows = int((last_night - first_night).astype(int).sum()) + len(sites)
        refuse_too_many(rows, self.parameterAsInt(parameters, "MAX_ROWS", context), parameters, ["OUTPUT", "WINDOWS"])

        go_on = reporter(feedback)
        with in_words():
            lens_dem_m = lenses_over(ground, sites, feedback, go_on)
        crs = output_crs(self.parameterAsSource(parameters, "SITES", context).sourceCrs())
        outputs = {
            name: Table(self, parameters, name, context, fields, sites.kept, QgsWkbTypes.Type.Point, crs, feedback)
            for name, fields in (("OUTPUT", NIGHT_WINDOWS_FIELDS), ("WINDOWS", WINDOWS_FIELDS), ("MONTHS", MONTHS_FIELDS))
        }
        heights_m = known_height_m(lens_dem_m, sites.z_m)
        places = Places(sites.lon_deg, sites.lat_deg, heights_m, zone_names, zone_index, lens_dem_m)
        conditions = self._conditions(parameters, context)
        told = Told()
        share, points = part_of(go_on, ground.begin, 1.0), points_of(sites.x, sites.y)
        with in_words():
            moons = new_moons(*span) if outputs["MONTHS"] and len(sites) else None
            asked = (places, target, first_night, last_night, conditions, share, ground.relief, towns)
            for found in () if ground.stopped else find_night_windows(*asked):
                told.add(found[0])
                if not self._write(*found, moons, sites, points, outputs, rows, share):
                    break
        go_on(1.0)
        for name, look in (("OUTPUT", "night_windows"), ("WINDOWS", "windows"), ("MONTHS", "months")):
            outputs[name].close(look, context, feedback)
        ground.log(feedback)
        self._log(told, outputs, sites, target, conditions, span, feedback)
        return {name: output.id for name, output in outputs.items() if output or name == "OUTPUT"}

    def _conditions(self, parameters, context):
        """What is asked, blanks left to the customs of the body."""
        asked = {
            "alt_min_deg": "ALT_MIN",
            **{f"{name}_{end}_deg": f"{name}_{end}".upper() for name in ("tilt", "apex") for end in ("min", "max")},
            "core_alt_min_deg": "CORE_ALT_MIN",
            "sun_limit_deg": "SUN_LIMIT",
            "moon_lit_max": "MOON_LIT_MAX",
            "pressure_hPa": "PRESSURE",
            "temperature_C": "TEMPERATURE",
        }
        numbers = {condition: take.number_of(self, parameters, name) for condition, name in asked.items()}
        moon, use_skyline = take.choice_of(self, parameters, "MOON", context), take.yes_of(self, parameters, "USE_SKYLINE", context)
        return Conditions(moon=moon, use_skyline=use_skyline, **numbers)

    @staticmethod
    def _write(table, windows, moons, sites, points, outputs, rows, share):
        """Write what was found for some sites; False when cancelled."""

        def write(name, found, go_on):
            at = found["site"]
            named = {**found, "site": sites.name[at], "site_id": sites.fid[at]}
            return outputs[name].write(named, at, [points[i] for i in at.tolist()], go_on)

        before = outputs["OUTPUT"].written
        if not write("OUTPUT", table, part_of(share, before / rows, (before + table["site"].size) / rows)):
            return False
        if outputs["WINDOWS"] and not write("WINDOWS", windows, lambda part: share((before + table["site"].size) / rows)):
            return False
        if not outputs["MONTHS"]:
            return True
        return write("MONTHS", months_of(table, moons), lambda part: share((before + table["site"].size) / rows))

    @staticmethod
    def _log(told, outputs, sites, target, conditions, span, feedback):
        searched = tr("sites: {sites:,}, nights: {nights:,}").format(sites=len(sites), nights=outputs["OUTPUT"].written)
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} nights written.").format(n=outputs["OUTPUT"].written))
            return
        if not len(sites):
            feedback.pushWarning(tr("No nights: there is no point that can be used."))
            return
        for reason, count in told.reasons.most_common(REASONS_TOLD):
            feedback.pushInfo(tr("{n:,} nights without a window: {reason}.").format(n=count, reason=reason))
        if not told.seen:
            with in_words():
                sentence = out_of_reach(target, conditions, sites.lat_deg, *span)
            if sentence:
                feedback.pushWarning(sentence)
        if told.windows:
            feedback.pushInfo(tr("{n:,} nights with a window ({searched}).").format(n=told.windows, searched=searched))
        else:
            feedback.pushWarning(tr("No night has a window ({searched}): the field reason tells why.").format(searched=searched))


class Told:
    """How many nights have a window, how many for each reason have none, and whether the body stands as high as is asked in any."""

    def __init__(self):
        self.windows, self.reasons, self.seen = 0, Counter(), False

    def add(self, table):
        """Count the rows of a table."""
        reasons = [reason for reason in table["reason"].tolist() if reason is not None]
        self.reasons.update(reasons)
        self.windows += table["site"].size - len(reasons)
        self.seen = self.seen or bool(table["seen"].any())
