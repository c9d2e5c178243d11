"""Parameters that several algorithms take, each with the sentence a person reads, and how their values are read."""

import math

from qgis.core import (
    NULL,
    QgsProcessing,
    QgsProcessingParameterBand,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDateTime,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterDistance,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterField,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameters,
    QgsProcessingParameterString,
    QgsProperty,
    QgsPropertyDefinition,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import QDate, QDateTime

from ..names import BODIES, MOON_RULES, PAIRINGS
from ..plan.relief import FARTHEST_M
from .translation import tr

MAX_ROWS_DEFAULT = 20_000_000
DOUBLE = QgsProcessingParameterNumber.Type.Double
METRES, _ = QgsUnitTypes.decodeDistanceUnit("meters")
DECIMALS = {"widget_wrapper": {"decimals": 3}}  # millimetres and thousandths of a degree
# texts that stand for a property of each feature where only text can be given, as on a command line
FIELD_PREFIX, EXPRESSION_PREFIX = "field:", "expression:"


def advanced(parameter):
    """The parameter, kept out of the way of a first run."""
    parameter.setFlags(parameter.flags() | QgsProcessingParameterDefinition.Flag.FlagAdvanced)
    return parameter


def helped(parameter, sentence):
    """The parameter with a sentence that appears when one rests on it."""
    parameter.setHelp(sentence)
    return parameter


def points(name, label, optional=False):
    return QgsProcessingParameterFeatureSource(name, label, [QgsProcessing.SourceType.TypeVectorPoint], None, optional)


def lines(name, label):
    return QgsProcessingParameterFeatureSource(name, label, [QgsProcessing.SourceType.TypeVectorLine])


def polygons(name, label):
    return QgsProcessingParameterFeatureSource(name, label, [QgsProcessing.SourceType.TypeVectorPolygon], None, True)


def field(name, label, layer):
    return QgsProcessingParameterField(name, label, parentLayerParameterName=layer, optional=True)


def keep_fields(layer, label):
    """Fields to carry over."""
    return QgsProcessingParameterField("KEEP_FIELDS", label, parentLayerParameterName=layer, allowMultiple=True, optional=True)


def number(name, label, default=None, low=None, high=None, optional=None):
    """A decimal number; without a default it may stay blank."""
    return _bounded(
        QgsProcessingParameterNumber(name, label, DOUBLE, default, default is None if optional is None else optional), low, high
    )


def length(name, label, default=None, low=None, high=None):
    """A length in metres, which a person may give in another unit beside it; without a default it may stay blank."""
    parameter = QgsProcessingParameterDistance(name, label, default, "", default is None)
    parameter.setDefaultUnit(METRES)
    return _bounded(parameter, low, high)


def _bounded(parameter, low, high):
    parameter.setMetadata(DECIMALS)
    if low is not None:
        parameter.setMinimum(low)
    if high is not None:
        parameter.setMaximum(high)
    return parameter


def of_each(parameter, layer):
    """The number, which may be taken from each feature of a layer."""
    name, label = parameter.name(), parameter.description()
    parameter.setIsDynamic(True)
    parameter.setDynamicPropertyDefinition(QgsPropertyDefinition(name, label, QgsPropertyDefinition.StandardPropertyTemplate.Double))
    parameter.setDynamicLayerParameterName(layer)
    return parameter


def choice(name, label, ids, default, several=False):
    return QgsProcessingParameterEnum(name, label, list(ids), several, default, usesStaticStrings=True)


def yes(name, label, default):
    return QgsProcessingParameterBoolean(name, label, default)


def text(name, label):
    return QgsProcessingParameterString(name, label, None, False, True)


def instant(name, label, optional=False):
    return QgsProcessingParameterDateTime(name, label, QgsProcessingParameterDateTime.Type.DateTime, None, optional)


def day(name, label):
    return QgsProcessingParameterDateTime(name, label, QgsProcessingParameterDateTime.Type.Date, None, True)


def cameras_and_subjects(optional=False):
    """Who looks and at what."""
    return [
        points("CAMERAS", tr("Cameras: the points to photograph from"), optional),
        points("SUBJECTS", tr("Subjects: the points to photograph"), optional),
    ]


def camera_height(layer):
    return of_each(length("CAMERA_HEIGHT", tr("Height of the lens above the ground"), 1.5, low=0), layer)


def names_and_heights():
    """What the points are called, how high they stand and how wide."""
    return [
        field("CAMERA_NAME", tr("Field with the name of a camera"), "CAMERAS"),
        field("SUBJECT_NAME", tr("Field with the name of a subject"), "SUBJECTS"),
        camera_height("CAMERAS"),
        *subject_measures(),
    ]


def subject_measures():
    """How high subjects stand, how wide they are, and from where they are of use."""
    measures = [
        length("SUBJECT_HEIGHT", tr("Height of the subject's top above its foot"), 0, low=0),
        advanced(length("SUBJECT_BASE", tr("Height of the subject's foot, or of a window's sill, above the ground"), 0, low=0)),
        advanced(length("SUBJECT_WIDTH", tr("Width of the subject"), 0, low=0)),
        advanced(number("FACE_FROM", tr("Subject is usable from this bearing, camera to subject, clockwise ... [°]"), low=-360, high=360)),
        advanced(number("FACE_TO", tr("... to this bearing [°]; both blank: from all sides"), low=-360, high=360)),
    ]
    return [of_each(measure, "SUBJECTS") for measure in measures]


def pairing():
    """Which camera looks at which subject."""
    return [
        helped(choice("PAIRING", tr("Pair cameras and subjects: all, by_field or closest"), PAIRINGS, "all"), _listed(PAIRINGS)),
        advanced(field("PAIR_FIELD", tr("Field of the cameras that pairs them (by_field)"), "CAMERAS")),
        advanced(field("PAIR_FIELD_SUBJECT", tr("Field of the subjects that pairs them; blank: of the same name (by_field)"), "SUBJECTS")),
        length("MAX_DISTANCE", tr("Longest sightline"), 50_000, low=0),
    ]


def allowed_ground():
    """Where one may stand."""
    return [
        polygons("AREA", tr("Area in which one may stand")),
        polygons("CLOSED", tr("Closed ground, never stood on")),
        advanced(
            helped(
                field("CLOSED_FROM", tr("Field with the first day of a closure"), "CLOSED"),
                tr("A date, or MM-DD for each year. Closed on the date of the evening or of the moment counts as closed."),
            )
        ),
        advanced(field("CLOSED_TO", tr("Field with the last day of a closure"), "CLOSED")),
        advanced(
            helped(
                QgsProcessingParameterBoolean("KEEP_CLOSED", tr("Keep what is not allowed, marked as such"), False),
                tr("On: kept with the field allowed false. Off: dropped, and counted in the log."),
            )
        ),
    ]


def bodies(default):
    return [
        helped(choice("BODIES", tr("Bodies of the sky, one or several"), BODIES, [default], several=True), _listed(BODIES)),
        *_places_of_bodies(),
    ]


def body(default=None):
    """One body; without a default it may stay blank."""
    label = tr("Body of the sky") if default else tr("Body of the sky, in place of BEARING")
    parameter = choice("BODY", label, BODIES, default)
    if default is None:
        parameter.setFlags(parameter.flags() | QgsProcessingParameterDefinition.Flag.FlagOptional)
    return [helped(parameter, _listed(BODIES)), *_places_of_bodies()]


def _listed(choices):
    return "; ".join(f"{name}: {tr(sentence)}" for name, sentence in choices.items())


def _places_of_bodies():
    return [
        advanced(text("STAR", tr("Place of the star: right ascension and declination, ICRS, as 'RA,Dec' [°]"))),
        advanced(number("GALACTIC_LON", tr("Galactic longitude of the place on the Milky Way's plane [°]"), low=-360, high=360)),
    ]


def moon_rule(default):
    """What the Moon may do while the body is wanted."""
    return [
        helped(choice("MOON", tr("Moon: any, down or down_or_thin"), MOON_RULES, default), _listed(MOON_RULES)),
        advanced(number("MOON_LIT_MAX", tr("The Moon is thin while less than this part is lit, 0 to 1"), 0.25, low=0, high=1)),
    ]


def core_alt_min():
    return advanced(number("CORE_ALT_MIN", tr("For the arch: the core at least this high [°]"), 0, low=-90, high=90))


def sun_limit():
    return helped(
        number("SUN_LIMIT", tr("Sun at most this high, without refraction [°]"), low=-90, high=90),
        tr("Blank: -18°, full darkness, for all bodies but Sun and Moon. -12° lets the last of twilight in."),
    )


def alt_min():
    return helped(
        number("ALT_MIN", tr("Body at least this high above the level horizon [°]"), low=-90, high=90),
        tr("Blank: 10° for the core and a place on the plane, 0° for the rest. For the arch it is the core's."),
    )


def band():
    """How the Milky Way is to lie."""
    return [
        advanced(number("TILT_MIN", tr("Milky Way tilted at least this much, 0 flat to 90 upright [°]"), low=0, high=90)),
        advanced(number("TILT_MAX", tr("Milky Way tilted at most this much [°]"), low=0, high=90)),
        advanced(number("APEX_MIN", tr("Top of the Milky Way's arch at least this high [°]"), low=0, high=90)),
        advanced(
            helped(
                number("APEX_MAX", tr("Top of the Milky Way's arch at most this high [°]"), low=0, high=90),
                tr("Blank: 60° for the body arch, since higher its direction swings; no limit for other bodies."),
            )
        ),
    ]


def time_zone():
    return helped(
        text("TIME_ZONE", tr("Time zone, such as Europe/Lisbon; blank: the zone of each site")),
        tr("Blank: looked up from the place, offline; on the open sea the nautical zone of the longitude, such as UTC-02:00."),
    )


def air():
    return [
        advanced(
            helped(
                number(
                    "PRESSURE", tr("Air pressure at the site [hPa]; blank: standard air at its height; 0: no refraction"), low=0, high=1200
                ),
                tr("Refraction lifts what is seen, 0.5° at the horizon."),
            )
        ),
        advanced(number("TEMPERATURE", tr("Air temperature at the site [°C]"), 10, low=-100, high=70)),
    ]


def refraction_k():
    return advanced(
        number("REFRACTION_K", tr("Terrestrial refraction: how much of the Earth's curvature the air undoes"), 0.13, low=-1, high=1)
    )


def dem(optional=True):
    """The elevation model and its band."""
    blank_means = tr("; blank: ground is not looked at") if optional else ""
    return [
        helped(
            QgsProcessingParameterRasterLayer("DEM", tr("Elevation model, a raster file") + blank_means, None, optional),
            tr("Heights in the unit that the file tells, else in metres; in any CRS. Only the part that is needed is read."),
        ),
        advanced(QgsProcessingParameterBand("DEM_BAND", tr("Band of the elevation model that holds the heights"), 1, "DEM", True)),
    ]


def terrain_radius():
    return length("TERRAIN_RADIUS", tr("Look for the terrain skyline as far as"), 40_000, low=0, high=FARTHEST_M)


def skip_near():
    return advanced(
        helped(
            length("SKIP_NEAR", tr("Pass over terrain nearer to the camera than this; blank: two cells of the elevation model"), low=0),
            tr("Within a cell or two of the tripod an elevation model knows nothing of what stands in the way."),
        )
    )


def dem_accuracy():
    return advanced(
        helped(
            length("DEM_ACCURACY", tr("Heights of the elevation model are good to"), 2, low=0),
            tr("A line of sight that clears the terrain, or is blocked, by less than this is uncertain."),
        )
    )


def use_skyline():
    return helped(
        yes("USE_SKYLINE", tr("The body must stand above the terrain skyline (with an elevation model)"), True),
        tr("Off: the skyline is told in ground_deg, but is no condition."),
    )


def max_rows():
    return advanced(
        helped(
            QgsProcessingParameterNumber(
                "MAX_ROWS", tr("Refuse to write more rows than"), QgsProcessingParameterNumber.Type.Integer, MAX_ROWS_DEFAULT, False, 1
            ),
            tr("A guard against a run that fills the disk."),
        )
    )


def max_pictures():
    return advanced(
        QgsProcessingParameterNumber(
            "MAX_PICTURES", tr("Refuse to draw more pictures than"), QgsProcessingParameterNumber.Type.Integer, 100, False, 1
        )
    )


# how values are read


def blank(value):
    """Whether nothing was given: omitted, empty, or the null that QGIS passes for it."""
    if isinstance(value, (QDate, QDateTime)):
        return not value.isValid()
    return value is None or value == NULL or (isinstance(value, str) and not value.strip())


def property_of_features(value):
    """The property a parameter takes from each feature, or None where it is a plain value.

    Command lines have no way to write a property before QGIS 3.24: there 'field:NAME' and 'expression:...' stand for it.
    """
    if isinstance(value, QgsProperty):
        return value if value.propertyType() != QgsProperty.Type.StaticProperty else None
    if isinstance(value, str) and value.startswith(FIELD_PREFIX):
        return QgsProperty.fromField(value[len(FIELD_PREFIX) :])
    if isinstance(value, str) and value.startswith(EXPRESSION_PREFIX):
        return QgsProperty.fromExpression(value[len(EXPRESSION_PREFIX) :])
    return None


def plain_number(value):
    """The number a plain value stands for, NaN where it is none, None where nothing was given."""
    if isinstance(value, QgsProperty):
        value = value.staticValue()
    if blank(value):
        return None
    try:
        return float(value)
    except (TypeError, ValueError, OverflowError):
        return math.nan


def number_of(algorithm, parameters, name):
    """The number given, else the parameter's default, which may be None."""
    given = plain_number(parameters.get(name))
    return plain_number(algorithm.parameterDefinition(name).defaultValue()) if given is None else given


def text_of(parameters, name):
    """The text given, or None."""
    value = parameters.get(name)
    return None if blank(value) else str(value).strip()


def fields_of(parameters, name):
    """The fields named, each once, in the order given: a list, or one text with semicolons."""
    value = parameters.get(name)
    given = value if isinstance(value, (list, tuple)) else [] if blank(value) else str(value).split(";")
    return list(dict.fromkeys(text for text in (str(item).strip() for item in given) if text))


def choices_of(algorithm, parameters, name, context):
    """The ids chosen of an enum, each once, in the order given."""
    chosen = QgsProcessingParameters.parameterAsEnumStrings(algorithm.parameterDefinition(name), parameters, context)
    return list(dict.fromkeys(chosen))


def choice_of(algorithm, parameters, name, context):
    return QgsProcessingParameters.parameterAsEnumString(algorithm.parameterDefinition(name), parameters, context)


def yes_of(algorithm, parameters, name, context):
    return algorithm.parameterAsBool(parameters, name, context)
