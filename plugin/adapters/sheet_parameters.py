"""The parameters of `site_map`: what the sheets show, what they say of the people and the plan, and how they are printed."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterFile,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterFolderDestination,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterString,
)

from ..names import PAPERS, TURNS
from . import parameters as take
from .translation import tr

SHEET_BY = "camera"
# what a person writes about the work -> the words before it on the sheet
APPLICANT_BLOCK = {
    "APPLICANT": "Applicant",
    "ACTIVITY": "Activity",
    "GROUP_SIZE": "Group size",
    "VEHICLES": "Vehicles",
    "HOURS": "Dates and hours",
    "LIGHTING": "Lighting used",
    "CONTACT": "Contact",
    "EMERGENCY": "In an emergency",
    "PERMIT_NO": "Permit number",
}
_LONG = ("ACTIVITY", "HOURS", "LIGHTING", "EMERGENCY")
_HINTS = {
    "ACTIVITY": "What is done, such as: night photography from tripods, no structures, nothing left behind.",
    "GROUP_SIZE": "How many people, guides included.",
    "HOURS": "When the ground is used. Blank: arrival and departure of each night are those of the timetable.",
    "LIGHTING": "Lamps and how they are used, such as: red headlamps for walking; no light on the subject.",
    "EMERGENCY": "Whom to call, and until when you want to be back.",
    "PERMIT_NO": "The number that the land manager gave, or 'applied for'.",
}


def sheet_by(parameters):
    """The field by whose values sheets are made, or None for one sheet."""
    return SHEET_BY if "SHEET_BY" not in parameters else take.text_of(parameters, "SHEET_BY")


def layers():
    """What is drawn and told of."""
    line, point = QgsProcessing.SourceType.TypeVectorLine, QgsProcessing.SourceType.TypeVectorPoint
    return [
        _source("SIGHTLINES", tr("Sightlines: the result of sightlines"), [line]),
        take.helped(
            _source("ALIGNMENTS", tr("Alignments: the result of alignments"), [line, point]),
            tr("They fill the timetable. Select the few that are meant, and run on the selected features only."),
        ),
        *take.cameras_and_subjects(optional=True),
        take.field("CAMERA_NAME", tr("Field with the name of a camera"), "CAMERAS"),
        take.field("SUBJECT_NAME", tr("Field with the name of a subject"), "SUBJECTS"),
        take.points("STANDPOINTS", tr("Standpoints: the POINTS of standpoints"), optional=True),
        take.polygons("ZONES", tr("Zones: the ZONES of standpoints, or any ground on which people will stand")),
        _source("PATHS", tr("Paths"), [line]),
        take.helped(
            _source("WALK", tr("Walk in: the lines from the car to the camera"), [line]),
            tr("Drawn either way round. Each camera takes the one that passes by it; it is checked against closed ground and timed."),
        ),
        take.points("PARKING", tr("Parking: where the walk in begins"), optional=True),
        take.field("PARKING_NAME", tr("Field with the name of a parking"), "PARKING"),
        take.field("WALK_NAME", tr("Field with the name of a walk"), "WALK"),
        take.polygons("CLOSED", tr("Closed ground")),
        take.field("CLOSED_NAME", tr("Field with the name of a closure"), "CLOSED"),
        take.helped(
            take.field("CLOSED_FROM", tr("Field with the first day of a closure"), "CLOSED"),
            tr("A date, or MM-DD for each year. Closed on the date of the evening, or of any hour out there, counts as closed."),
        ),
        take.field("CLOSED_TO", tr("Field with the last day of a closure"), "CLOSED"),
        take.advanced(
            take.helped(
                QgsProcessingParameterRasterLayer("DEM", tr("Elevation model by which the results were made"), None, True),
                tr("Only its name and the size of its cells are told: the sheet says by which ground lines were called clear."),
            )
        ),
        take.dem()[1],
    ]


def words():
    """What is said."""
    lines = [
        take.helped(
            _text("SHEET_BY", tr("A sheet for each value of this field; blank: one sheet"), SHEET_BY),
            tr("A field of the layers above, such as camera, subject, night or path. Layers without it are drawn on every sheet."),
        ),
        _text("TITLE", tr("Title of the sheets; blank: Site map")),
    ]
    for name, label in APPLICANT_BLOCK.items():
        parameter = _text(name, tr(label), multi_line=name in _LONG)
        lines.append(take.helped(parameter, tr(_HINTS[name])) if name in _HINTS else parameter)
    return lines


def hours():
    """When to come and go, as in `field_plan`."""
    return [
        take.advanced(take.number("ARRIVE_BEFORE", tr("Be at the camera this long before sunset [min]"), 45, low=0, high=1440)),
        take.advanced(take.number("PACK_UP", tr("Stay this long after the last alignment [min]"), 15, low=0, high=1440)),
        take.advanced(take.length("POS_ERROR", tr("A position in the field is known to"), 3, low=0)),
        take.advanced(take.number("WALK_SPEED", tr("Walking speed [km/h]"), 3, low=0.1, high=20)),
        take.time_zone(),
    ]


def print_options():
    """Paper, scale, and where the sheets go."""
    most = take.max_pictures()
    most.setDescription(tr("Refuse to make more sheets than"))
    return [
        take.helped(take.choice("PAPER", tr("Paper: a4 or letter"), PAPERS, "a4"), _listed(PAPERS)),
        take.helped(take.choice("ORIENTATION", tr("Paper upright (portrait) or across (landscape)"), TURNS, "portrait"), _listed(TURNS)),
        take.helped(
            take.number("SCALE", tr("Scale of the map, 1 to ..."), low=100, high=500_000),
            tr("Blank: the largest usual scale at which cameras and subjects fit. What lies off the map is told."),
        ),
        take.advanced(
            take.helped(
                take.yes("BACKGROUND", tr("Draw the visible layers of the project beneath"), True),
                tr("As they look in the project; the layers given above are left out of it, since they have their own look here."),
            )
        ),
        take.advanced(
            take.helped(
                QgsProcessingParameterFile("TEMPLATE", tr("Layout template of your own"), extension="qpt", optional=True),
                tr("Copy one of those in the plugin's folder 'layouts' and change it. PAPER and ORIENTATION are then the template's."),
            )
        ),
        take.advanced(most),
        QgsProcessingParameterFileDestination("OUTPUT", tr("Sheets"), tr("PDF files (*.pdf)")),
        QgsProcessingParameterFolderDestination("FOLDER", tr("Folder for a file each"), None, True, False),
        QgsProcessingParameterFolderDestination("PICTURES", tr("Folder for pictures (PNG)"), None, True, False),
    ]


def _source(name, label, kinds):
    return QgsProcessingParameterFeatureSource(name, label, kinds, None, True)


def _text(name, label, default=None, multi_line=False):
    return QgsProcessingParameterString(name, label, default, multi_line, True)


def _listed(choices):
    return "; ".join(f"{name}: {tr(sentence)}" for name, sentence in choices.items())
