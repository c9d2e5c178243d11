"""Expression functions: what a label, a geometry generator or the field calculator may ask, with an answer that follows the map.

Each is thin: QGIS's values to numbers, one call into `plan.live`, a number back. NULL in is NULL out, what is wrong is an evaluation error.
"""

import math
from datetime import timezone
from functools import lru_cache
from html import escape

from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransformContext,
    QgsExpression,
    QgsExpressionFunction,
    QgsGeometry,
    QgsWkbTypes,
)
from qgis.PyQt import sip

from .adapters.cautions import sun_line
from .adapters.crs import lon_lat
from .adapters.moments import moment
from .adapters.refusals import star_place
from .adapters.translation import said, tr
from .names import BODIES, PROVIDER_NAME
from .plan import live
from .plan.targets import target

PLACED = ("star", "galactic")  # bodies that are told with a place
KEPT = "_skyalidade_functions"
TRANSFORMS = "_project_transform_context"  # the variable in which QGIS hands the project's own to its functions


class Function(QgsExpressionFunction):
    """A function of expressions: once registered it stays until QGIS ends, and has its `answer` while the plugin is loaded, else None.

    Parameters
    ----------
    name : str
    arguments : dict of str to str
        What each argument is, by its name.
    description : str
    examples : dict of str to str
        What an expression gives.
    answer : callable
        Takes the transform context and the values of the arguments, none of them NULL; gives a number or None.
    """

    def __init__(self, name, arguments, description, examples, answer):
        parameters = [QgsExpressionFunction.Parameter(argument) for argument in arguments]
        super().__init__(name, parameters, PROVIDER_NAME, _help(name, arguments, description, examples))
        self.answer = answer
        self._unloaded = f"{name}: " + tr("the plugin Sky Alidade is not loaded. Switch it on in the plugin manager.")

    def func(self, values, context, parent, node):
        answer = self.answer  # once: the plugin may be unloaded while a map is drawn in another thread
        if answer is None:
            parent.setEvalErrorString(self._unloaded)
            return None
        transforms = context.variable(TRANSFORMS) if context is not None else None
        try:
            number = answer(transforms or QgsCoordinateTransformContext(), *values)
        except (ValueError, FileNotFoundError) as wrong:
            parent.setEvalErrorString(f"{self.name()}: {said(wrong)}")
            return None
        return None if number is None or math.isnan(number) else number

    def isDeprecated(self):
        return self.answer is None  # which QGIS does not offer

    def usesGeometry(self, node):
        return False  # no more than its arguments do, and those are asked themselves

    def referencedColumns(self, node):
        return set()


def functions():
    """All functions, new each time."""
    where, when = "make_point(-33, 36), 'EPSG:4326'", "'2027-06-06T01:00:00Z'"
    line = "make_point(-33, 36), make_point(-32.9, 36.1), 'EPSG:4326'"
    over_reserve = "make_point(500000, 3985000), 'EPSG:32625', to_datetime('2027-06-06 23:30:00')"
    return [
        Function(
            "sky_azimuth",
            _arguments("body", "geometry", "crs", "time"),
            tr("Returns the azimuth of a body of the sky, in degrees clockwise from true north.") + " " + sun_line(),
            {f"sky_azimuth('core', {where}, {when})": "151.88", f"sky_azimuth('star:279.23,38.78', {over_reserve})": "66.14"},
            lambda *asked: _direction(*asked)[0],
        ),
        Function(
            "sky_altitude",
            _arguments("body", "geometry", "crs", "time"),
            tr(
                "Returns the altitude of a body's centre above the level horizon, in degrees, as it is seen: with the refraction of "
                "standard air."
            )
            + " "
            + sun_line(),
            {f"sky_altitude('core', {where}, {when})": "19.00"},
            lambda *asked: _direction(*asked)[1],
        ),
        Function(
            "sight_bearing",
            _arguments("camera", "subject", "crs"),
            tr(
                "Returns the true bearing from a camera to a subject: at the camera, in degrees clockwise from true north, along the "
                "WGS 84 ellipsoid. NULL where the two are one place."
            ),
            {f"sight_bearing({line})": "39.05", f"format_number(sight_bearing({line}), 1) || '°'": "'39.0°'"},
            lambda *asked: _sightline(*asked)[0],
        ),
        Function(
            "sight_distance",
            _arguments("camera", "subject", "crs"),
            tr("Returns the distance from a camera to a subject along the WGS 84 ellipsoid, in metres."),
            {f"sight_distance({line})": "14293.82"},
            lambda *asked: _sightline(*asked)[1],
        ),
        Function(
            "band_tilt",
            _arguments("geometry", "crs", "time"),
            tr(
                "Returns the angle of the Milky Way to the horizontal at its core, in degrees, from 0 (flat) to 90 (upright). NULL while "
                "the core is down."
            ),
            {f"band_tilt({where}, {when})": "32.94"},
            _tilt,
        ),
    ]


def _arguments(*names):
    """What arguments are, by name."""
    bodies = "; ".join(f"'{body}': {tr(words)}" for body, words in BODIES.items() if body not in PLACED)
    told = {
        "body": bodies + tr("; 'star:RA,Dec': a fixed place, ICRS in degrees; 'galactic:LON': a place on the galactic plane, in degrees"),
        "geometry": tr("a point, where the camera stands; its Z, if it has one, is the height above sea level in metres"),
        "camera": tr("a point, where the camera stands"),
        "subject": tr("a point, where the subject stands"),
        "crs": tr("the CRS of the points: a text such as 'EPSG:4326', or @layer_crs"),
        "time": tr(
            "a time, or a text such as '2027-06-06T23:30:00-06:00'. Without an offset it is UTC, as it is in the field t_utc and in the "
            "Temporal Controller. A number counts milliseconds of UTC since 1970: epoch(now()) is this moment, while now() alone is what "
            "the computer's clock shows"
        ),
    }
    return {name: told[name] for name in names}


def register():
    """Register all functions, or give those of a plugin that was unloaded their answers back; they are to be handed to `unregister`.

    QGIS is never asked to take one off its list: an expression that has been read, such as that of a label of the open project, knows its
    function by the place in the list. The next function would answer in its stead, that of another plugin too, and behind the last one
    QGIS crashes.
    """
    staying, answering = _staying(), []
    for function in functions():
        stays = staying.get(function.name())
        if stays is None:
            if QgsExpression.registerFunction(function):
                sip.transferto(function, None)  # not to be deleted with Python either
                staying[function.name()] = function
                answering.append(function)
        elif stays.answer is None:  # else another copy of the plugin runs
            stays.answer = function.answer
            answering.append(stays)
    return answering


def _staying():
    """The functions on QGIS's list, which holds no reference to them: kept by QGIS's class, which outlives a plugin that is loaded anew."""
    if not hasattr(QgsExpression, KEPT):
        setattr(QgsExpression, KEPT, {})
    return getattr(QgsExpression, KEPT)


def unregister(registered):
    """Take the answers of functions away; they stay on QGIS's list."""
    for function in registered:
        function.answer = None


# what the functions answer


def _direction(transforms, body, geometry, crs, time):
    place = _place(transforms, geometry, crs)
    return live.direction(_target(body), *place, _utc_s(time)) if place else (None, None)


def _tilt(transforms, geometry, crs, time):
    place = _place(transforms, geometry, crs)
    return live.tilt_deg(*place, _utc_s(time)) if place else None


def _sightline(transforms, camera, subject, crs):
    ends = [_place(transforms, point, crs) for point in (camera, subject)]
    return live.sightline(*ends[0][:2], *ends[1][:2]) if all(ends) else (None, None)


# how values are read


@lru_cache
def _target(body):
    name, _, place = str(body).partition(":")
    if name == "star" and place:
        return target(name, star=star_place(place))
    if name == "galactic" and place:
        return target(name, galactic_lon_deg=_number(place))
    if name in BODIES and name not in PLACED and not place:
        return target(name)
    known = [*(name for name in BODIES if name not in PLACED), "star:279.23,38.78", "galactic:80"]
    raise ValueError(tr("'{body}' is no body. Choose from: {known}.").format(body=body, known=", ".join(known)))


def _number(text):
    try:
        number = float(text)
        if not math.isfinite(number):
            raise ValueError(text)
        return number
    except ValueError:
        raise ValueError(tr("'{text}' is no number of degrees. Write it as in galactic:80.").format(text=text)) from None


def _place(transforms, geometry, crs):
    """Longitude, latitude and height of a point, the height 0 where it has none; None for an empty one."""
    if not isinstance(geometry, QgsGeometry):
        raise ValueError(tr("'{value}' is no geometry. Give a point, such as $geometry.").format(value=geometry))
    if geometry.isEmpty():
        return None
    if geometry.type() != QgsWkbTypes.GeometryType.PointGeometry or geometry.constGet().partCount() != 1:
        raise ValueError(
            tr("{kind} is not one point. Take one of it, such as centroid($geometry).").format(
                kind=QgsWkbTypes.displayString(geometry.wkbType())
            )
        )
    point = next(geometry.vertices())
    (lon,), (lat,) = lon_lat([point.x()], [point.y()], _crs(crs), transforms)
    if math.isnan(lon):
        raise ValueError(
            tr("{x:g}, {y:g} is no place in {crs}. Check the CRS.").format(x=point.x(), y=point.y(), crs=_crs(crs).userFriendlyIdentifier())
        )
    return float(lon), float(lat), point.z() if math.isfinite(point.z()) else 0.0


def _crs(crs):
    known = crs if isinstance(crs, QgsCoordinateReferenceSystem) else QgsCoordinateReferenceSystem(str(crs))  # QGIS keeps those it has met
    if not known.isValid():
        raise ValueError(tr("'{crs}' is no CRS. Give one such as 'EPSG:4326', @layer_crs or @project_crs.").format(crs=crs))
    return known


def _utc_s(time):
    """Seconds of UTC of what an expression calls a time."""
    if isinstance(time, (int, float)):
        return time / 1000.0
    try:
        given = moment(time)
    except ValueError:
        raise ValueError(
            tr("'{value}' is no time. Write it as 2027-06-06T23:30:00Z, or with an offset such as -06:00; without one it is UTC.").format(
                value=time
            )
        ) from None
    return (given if given.tzinfo else given.replace(tzinfo=timezone.utc)).timestamp()


# what the help of expressions shows, in the form that QGIS gives that of its own functions


def _help(name, arguments, description, examples):
    listed = ",".join(f'<span class="argument">{argument}</span>' for argument in arguments)
    rows = "".join(f'<tr><td class="argument">{argument}</td><td>{escape(what)}</td></tr>' for argument, what in arguments.items())
    shown = "".join(f"<li><code>{escape(code)}</code> &rarr; <code>{escape(result)}</code></li>\n" for code, result in examples.items())
    return (
        f"<h3>{tr('function {name}').format(name=name)}</h3>\n"
        f'<div class="description"><p>{escape(description)}</p></div>'
        f'<h4>{tr("Syntax")}</h4>\n<div class="syntax">\n<code><span class="functionname">{name}</span>({listed})</code></div>\n'
        f'<h4>{tr("Arguments")}</h4>\n<div class="arguments">\n<table>{rows}</table>\n</div>\n'
        f'<h4>{tr("Examples")}</h4>\n<div class="examples">\n<ul>\n{shown}</ul>\n</div>\n'
    )
