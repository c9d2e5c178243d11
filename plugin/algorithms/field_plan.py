"""`field_plan`: the timetable of each night in the field, as a page to print, waypoints to follow and a calendar."""

from collections import Counter

from qgis.core import QgsProcessing, QgsProcessingException, QgsProcessingParameterFeatureSource, QgsProcessingParameterFileDestination

from ..adapters import field_page, planned, refusals
from ..adapters import parameters as take
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_dark, tell_of_the_sun
from ..adapters.field_files import calendar_of, gpx_of
from ..adapters.field_words import utc
from ..adapters.files import write_whole
from ..adapters.moments import now_utc_s
from ..adapters.progress import reporter
from ..adapters.translation import tr
from ..adapters.walks import OnFoot
from ..names import PROVIDER_NAME
from ..plan.field_plan import field_plan

OUTPUTS = ("HTML", "GPX", "CALENDAR")
MOST_ROWS = 5000  # in a plan: some thousand pages


class FieldPlan(Algorithm):
    """A sheet for each night and place."""

    ID = "field_plan"
    GROUP = "nights"
    TITLE = "Field plan"
    SUMMARY = "A timetable for each night in the field: when to leave the car, sunset, darkness, Moon, alignments, and when to be back"
    TAGS = ("timetable", "itinerary", "GPX", "iCalendar", "waypoints", "print", "walk", "safety")
    LAYERS = ("PARKING",)
    LAYER_OF_FIELD = {"PARKING_NAME": "PARKING", "WALK_NAME": "WALK"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.helped(
                QgsProcessingParameterFeatureSource(
                    "ALIGNMENTS",
                    tr("Alignments, or the points of standpoints"),
                    [QgsProcessing.SourceType.TypeVectorLine, QgsProcessing.SourceType.TypeVectorPoint],
                ),
                tr("Select the few that are meant, and run on the selected features only: each night and place gets a sheet."),
            ),
            take.points("PARKING", tr("Parking: where the car stands"), optional=True),
            take.helped(
                QgsProcessingParameterFeatureSource(
                    "WALK", tr("Walks: the lines from the car to the camera"), [QgsProcessing.SourceType.TypeVectorLine], None, True
                ),
                tr("Drawn either way round. Each camera takes the one that passes by it."),
            ),
            take.helped(
                take.number("WALK_SPEED", tr("Walking speed [km/h]"), 3, low=0.1, high=20),
                tr("On the level, with the camera on one's back. Slopes are not known: choose less where it is steep."),
            ),
            take.number("ARRIVE_BEFORE", tr("Be at the camera this long before sunset [min]"), 45, low=0, high=1440),
            take.number("PACK_UP", tr("Stay this long after the last alignment [min]"), 15, low=0, high=1440),
            take.field("PARKING_NAME", tr("Field with the name of a parking"), "PARKING"),
            take.field("WALK_NAME", tr("Field with the name of a walk"), "WALK"),
            take.advanced(take.length("POS_ERROR", tr("A position in the field is known to"), 3, low=0)),
            take.time_zone(),
            self._most_rows(),
            QgsProcessingParameterFileDestination("HTML", tr("Page to print"), tr("HTML files (*.html)"), None, True, True),
            QgsProcessingParameterFileDestination("GPX", tr("Waypoints and walk"), tr("GPX files (*.gpx)"), None, True, False),
            QgsProcessingParameterFileDestination("CALENDAR", tr("Calendar"), tr("iCalendar files (*.ics)"), None, True, False),
        ):
            self.addParameter(parameter)

    @staticmethod
    def _most_rows():
        parameter = take.max_rows()
        parameter.setDefaultValue(MOST_ROWS)
        return parameter

    def refusals(self, parameters, context):
        yield from planned.refusals(self, parameters, context)
        yield from refusals.layers(self, parameters, ("WALK",), context, refusals.LINES)
        yield from refusals.zone(parameters)
        given = {name: str(parameters[name]) for name in OUTPUTS if not take.blank(parameters.get(name))}
        if not given:
            yield tr("Nothing is to be written. Give a file for HTML, GPX or CALENDAR, or several of them.")
        for path, count in Counter(path for path in given.values() if path != QgsProcessing.TEMPORARY_OUTPUT).items():
            if count > 1:
                names = " and ".join(name for name, own in given.items() if own == path)
                yield tr("{names} are the same file, {path}. Give each its own.").format(names=names, path=path)

    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        number = {name: take.number_of(self, parameters, name) for name in ("WALK_SPEED", "ARRIVE_BEFORE", "PACK_UP", "POS_ERROR")}
        with in_words():
            found = planned.Planned(self, parameters, context, feedback, number["POS_ERROR"])
        found.log(feedback)
        most = self.parameterAsInt(parameters, "MAX_ROWS", context)
        if len(found) > most:
            raise QgsProcessingException(
                tr("{n:,} alignments are more than MAX_ROWS ({most:,}). Select the nights that are meant, or raise MAX_ROWS.").format(
                    n=len(found), most=most
                )
            )
        tell_of_the_dark(feedback)
        tell_of_the_sun(found.rows["body"].tolist(), feedback)
        on_foot = OnFoot(self, parameters, context, feedback, found.rows["lon_deg"], found.rows["lat_deg"], number["WALK_SPEED"])
        with in_words():
            hours = (on_foot.walk_min, number["ARRIVE_BEFORE"], number["PACK_UP"])
            plan = field_plan(found.rows, found.zone_names, found.zone_index, *hours)
        written = {name: self.parameterAsFileOutput(parameters, name, context) for name in OUTPUTS}
        written = {name: path for name, path in written.items() if path}
        sections = self._sections(found, plan, on_foot, go_on) if "HTML" in written else []
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: nothing was written."))
            return {}
        made_utc_s = now_utc_s()
        makers = {
            "HTML": lambda: field_page.page(tr("Field plan"), self._made(made_utc_s), sections),
            "GPX": lambda: gpx_of(found, plan, on_foot, made_utc_s),
            "CALENDAR": lambda: calendar_of(found, plan, made_utc_s),
        }
        for name, path in written.items():
            write_whole(path, makers[name]())
        go_on(1.0)
        self._log(found, plan, feedback)
        return written

    @staticmethod
    def _sections(found, plan, on_foot, go_on):
        if not len(found):
            return [field_page.empty(_why_none(found))]
        sheets, sections = field_page.Sheets(found, plan, on_foot), []
        for sheet in range(len(sheets)):
            if not go_on(sheet / len(sheets)):
                break
            sections.append(sheets.section(sheet))
        return sections

    @staticmethod
    def _made(made_utc_s):
        return tr("Made by {provider}, {when}. Bearings are from true north unless called magnetic.").format(
            provider=PROVIDER_NAME, when=utc(made_utc_s)
        )

    @staticmethod
    def _log(found, plan, feedback):
        if not len(found):
            feedback.pushWarning(tr("Nothing to plan: {reason}").format(reason=_why_none(found)))
            return
        dark = int((plan.sheets["dark_out"] | plan.sheets["dark_back"]).sum())
        feedback.pushInfo(
            tr("{n:,} alignments on {sheets:,} sheets, one a night and place; on {dark:,} of them a walk lies in the dark.").format(
                n=len(found), sheets=len(plan.sheets["first"]), dark=dark
            )
        )


def _why_none(found):
    if found.features:
        return tr("No row of the layer can be planned: its rows have no time, no place or no bearing.")
    return tr("The layer holds no alignment.")
