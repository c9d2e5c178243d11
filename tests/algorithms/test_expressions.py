"""Expression functions: what they answer by independent libraries, what they make of NULL and of what is wrong, and their help."""

import os
import re
import subprocess
import sys

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsExpression,
    QgsExpressionContext,
    QgsExpressionContextScope,
    QgsExpressionContextUtils,
    QgsGeometry,
    QgsPointXY,
    QgsProject,
)
from skyfield_places import Observer, target, times
from skyfield_scan import seen

pytestmark = pytest.mark.usefixtures("provider")

NAMES = ["band_tilt", "sight_bearing", "sight_distance", "sky_altitude", "sky_azimuth"]
OVER = "make_point(-33, 36), 'EPSG:4326'"
NIGHT = "'2027-06-06T01:00:00Z'"
TOL_DEG = 0.05 / 3600  # the Moon's: a cubic between nodes an eighth of a day apart
TOL_BEARING_DEG = 1e-6  # coordinates pass through a projection


@pytest.fixture
def asked():
    """Evaluate an expression, with variables: its value and its error."""

    def value_and_error(text, **variables):
        context = QgsExpressionContext(QgsExpressionContextUtils.globalProjectLayerScopes(None))
        context.appendScope(QgsExpressionContextScope())
        for name, value in variables.items():
            context.lastScope().setVariable(name, value)
        expression = QgsExpression(text)
        assert not expression.hasParserError(), expression.parserErrorString()
        value = expression.evaluate(context)
        return value, expression.evalErrorString()

    return value_and_error


@pytest.fixture
def value(asked):
    def value_of(text, **variables):
        found, error = asked(text, **variables)
        assert error == ""
        return found

    return value_of


# True


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:32625", "EPSG:3857", "EPSG:3035"])
def test_places_are_skyfields_in_any_crs(value, crs):
    lon, lat, height_m = -33.0, 36.0, 480.0
    way = QgsCoordinateTransform(QgsCoordinateReferenceSystem("EPSG:4326"), QgsCoordinateReferenceSystem(crs), QgsProject.instance())
    point = way.transform(QgsPointXY(lon, lat))
    sky = Observer(lon, lat, height_m, times(np.datetime64("2027-06-14T23:30:00").astype(float)))
    for body in ("core", "moon", "sun"):
        given = f"'{body}', make_point({point.x()!r}, {point.y()!r}, {height_m}), '{crs}', '2027-06-14T23:30:00Z'"
        alt, az, _ = sky.altaz(target(body))
        assert value(f"sky_azimuth({given})") == pytest.approx(az, abs=TOL_DEG / np.cos(np.radians(alt)))
        assert value(f"sky_altitude({given})") == pytest.approx(seen(alt, height_m, None, 10.0), abs=TOL_DEG)


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:32625", "EPSG:3857"])
def test_sightlines_are_geographiclibs_never_planar(value, crs):
    ends = [(-32.9, 36.0), (-33.02, 36.05)]
    way = QgsCoordinateTransform(QgsCoordinateReferenceSystem("EPSG:4326"), QgsCoordinateReferenceSystem(crs), QgsProject.instance())
    points = [QgsGeometry.fromPointXY(way.transform(QgsPointXY(*end))) for end in ends]
    true = Geodesic.WGS84.Inverse(*ends[0][::-1], *ends[1][::-1])
    given = {"camera": points[0], "subject": points[1], "crs": crs}
    assert value("sight_bearing(@camera, @subject, @crs)", **given) == pytest.approx(true["azi1"] % 360, abs=TOL_BEARING_DEG)
    assert value("sight_distance(@camera, @subject, @crs)", **given) == pytest.approx(true["s12"], abs=0.001)


def test_a_sightline_over_the_antimeridian(value):
    true = Geodesic.WGS84.Inverse(-16.8, 179.99, -16.75, -179.98)
    line = "make_point(179.99, -16.8), make_point(-179.98, -16.75), 'EPSG:4326'"
    assert value(f"sight_bearing({line})") == pytest.approx(true["azi1"] % 360, abs=1e-9)
    assert value(f"sight_distance({line})") == pytest.approx(true["s12"], abs=1e-6)


TIMES = [
    "'2027-06-06T01:00:00Z'",
    "'2027-06-06 01:00'",
    "'2027-06-05T19:00:00-06:00'",
    "to_datetime('2027-06-06 01:00:00')",
    "to_datetime('2027-06-05T19:00:00-06:00')",
    "epoch(to_datetime('2027-06-06T01:00:00Z'))",
]
ELSEWHERE = """
import sys
from qgis.core import QgsApplication, QgsExpression
application = QgsApplication([], False)
application.initQgis()
from skyalidade.expressions import register
kept = register()
for text in sys.argv[1:]:
    print(QgsExpression(text).evaluate())
"""


@pytest.mark.parametrize("time", TIMES)
def test_a_moment_may_be_told_in_many_ways(value, time):
    assert value(f"sky_azimuth('core', {OVER}, {time})") == value(f"sky_azimuth('core', {OVER}, {TIMES[0]})")


def test_a_moment_does_not_hang_on_the_computers_clock(value):
    questions = [f"sky_azimuth('core', {OVER}, {time})" for time in TIMES]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "QT_QPA_PLATFORM": "offscreen", "TZ": "Asia/Kolkata"}
    done = subprocess.run(
        [sys.executable, "-c", ELSEWHERE, *questions], env=environment, capture_output=True, text=True, check=False, timeout=600
    )
    assert done.stdout.split() == [str(value(questions[0]))] * len(TIMES), done.stderr


def test_bodies_with_a_place(value):
    assert value(f"sky_azimuth('galactic:0', {OVER}, {NIGHT})") == pytest.approx(value(f"sky_azimuth('core', {OVER}, {NIGHT})"), abs=1e-9)
    assert value(f"sky_altitude('star:266.40499,-28.93617', {OVER}, {NIGHT})") == pytest.approx(
        value(f"sky_altitude('core', {OVER}, {NIGHT})"), abs=1e-5
    )


def test_arguments_by_name_and_a_crs_itself(value):
    by_name = "sky_azimuth(time:=@time, crs:=@crs, geometry:=@place, body:='core')"
    given = {
        "time": "2027-06-06T01:00:00Z",
        "crs": QgsCoordinateReferenceSystem("EPSG:4326"),
        "place": QgsGeometry.fromWkt("Point (-33 36)"),
    }
    assert value(by_name, **given) == value(f"sky_azimuth('core', {OVER}, {NIGHT})")


def test_without_a_context():
    assert QgsExpression(f"sky_azimuth('core', {OVER}, {NIGHT})").evaluate() == pytest.approx(151.88, abs=0.01)  # astropy: 151.88


# NULL, and what is wrong


@pytest.mark.parametrize(
    "text",
    [
        f"sky_azimuth(NULL, {OVER}, {NIGHT})",
        f"sky_altitude('core', NULL, 'EPSG:4326', {NIGHT})",
        f"sky_altitude('core', make_point(-33, 36), NULL, {NIGHT})",
        f"sky_azimuth('core', {OVER}, NULL)",
        f"sky_azimuth('core', {OVER}, @map_start_time)",
        f"sky_azimuth('core', geom_from_wkt('Point EMPTY'), 'EPSG:4326', {NIGHT})",
        f"band_tilt(NULL, 'EPSG:4326', {NIGHT})",
        f"band_tilt({OVER}, '2027-06-06T12:00:00Z')",  # the core is down
        "sight_bearing(NULL, make_point(1, 2), 'EPSG:4326')",
        "sight_distance(make_point(1, 2), geom_from_wkt('Point EMPTY'), 'EPSG:4326')",
        "sight_bearing(make_point(1, 2), make_point(1, 2), 'EPSG:4326')",  # no bearing on the spot
    ],
)
def test_null_is_answered_with_null(value, text):
    assert value(text) is None


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (f"sky_azimuth('venus', {OVER}, {NIGHT})", "'venus' is no body. Choose from: core, arch, sun"),
        (f"sky_azimuth('star', {OVER}, {NIGHT})", "star:279.23,38.78"),
        (f"sky_azimuth('star:279', {OVER}, {NIGHT})", "right ascension (0 to 360) and declination"),
        (f"sky_azimuth('galactic:east', {OVER}, {NIGHT})", "Write it as in galactic:80"),
        (f"sky_azimuth('galactic:nan', {OVER}, {NIGHT})", "Write it as in galactic:80"),
        (f"sky_altitude('core', 'Point (1 2)', 'EPSG:4326', {NIGHT})", "is no geometry. Give a point"),
        (f"sky_altitude('core', geom_from_wkt('LineString (1 2, 3 4)'), 'EPSG:4326', {NIGHT})", "centroid($geometry)"),
        (f"sky_altitude('core', geom_from_wkt('MultiPoint ((1 2), (3 4))'), 'EPSG:4326', {NIGHT})", "MultiPoint is not one point"),
        (f"band_tilt(make_point(-33, 136), 'EPSG:4326', {NIGHT})", "is no place in EPSG:4326"),
        (f"band_tilt(make_point(-33, 36), 'the map', {NIGHT})", "'the map' is no CRS. Give one such as 'EPSG:4326', @layer_crs"),
        (f"band_tilt(make_point(-33, 36), '', {NIGHT})", "is no CRS"),
        (f"band_tilt({OVER}, 'tonight')", "'tonight' is no time. Write it as 2027-06-06T23:30:00Z"),
        (f"band_tilt({OVER}, to_interval('1 day'))", "is no time"),
        (f"band_tilt({OVER}, '2061-03-04')", "Choose dates between"),
    ],
)
def test_what_is_wrong_is_told_in_a_sentence_that_names_the_function(asked, text, sentence):
    found, error = asked(text)
    assert found is None
    assert error.startswith(text.split("(")[0] + ": ")
    assert sentence in error


def test_a_multipoint_of_one_part_is_a_point(value):
    multi = value(f"sky_azimuth('core', geom_from_wkt('MultiPoint ((-33 36))'), 'EPSG:4326', {NIGHT})")
    assert multi == value(f"sky_azimuth('core', {OVER}, {NIGHT})")


# Registered, and what a person reads


def registered():
    return {function.name(): function for function in QgsExpression.Functions() if "Sky Alidade" in function.groups()}


COME_AND_GO = """
import gc, sys
from qgis.core import QgsApplication, QgsExpression, QgsExpressionFunction
application = QgsApplication([], False)
application.initQgis()

class Neighbour(QgsExpressionFunction):
    def func(self, values, context, parent, node):
        return 'the neighbour'

def loaded():
    # as QGIS does it: the modules of the plugin that was unloaded are forgotten
    for name in [name for name in sys.modules if name.split('.')[0] == 'skyalidade']:
        del sys.modules[name]
    gc.collect()
    from skyalidade.plugin import SkyAlidade
    plugin = SkyAlidade(None)
    plugin.initProcessing()
    return plugin

plugin = loaded()
neighbour = Neighbour('neighbour', 0, 'another plugin', '')
assert QgsExpression.registerFunction(neighbour)
read_before = [QgsExpression(text) for text in (*sys.argv[1:], 'neighbour()')]

def tell():
    offered = [function for function in QgsExpression.Functions() if 'Sky Alidade' in function.groups() and not function.isDeprecated()]
    print(*sorted(function.name() for function in offered))
    for expression in (*read_before, QgsExpression(sys.argv[1])):
        print(expression.evaluate(), expression.evalErrorString())

tell()
plugin.unload()
tell()
plugin = loaded()
tell()
another = loaded()  # a second copy beside it, which finds the functions taken
another.unload()
tell()
plugin.unload()
tell()
application.exitQgis()
"""
UNLOADED = "the plugin Sky Alidade is not loaded. Switch it on in the plugin manager."


def in_a_qgis_of_its_own(script, *arguments):
    """What a script printed, as lines; not in the QGIS of these tests, whose functions it would take away."""
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "QT_QPA_PLATFORM": "offscreen"}
    command = [sys.executable, "-X", "faulthandler", "-c", script, *map(str, arguments)]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout.splitlines()


def test_they_come_and_go_with_the_plugin(value):
    """An expression that was read before the plugin went gets a sentence: no crash, and never another function's answer."""
    assert sorted(registered()) == NAMES
    texts = ["sight_bearing(make_point(-33, 36), make_point(-33, 37), 'EPSG:4326')", f"band_tilt({OVER}, {NIGHT})"]
    bearing, tilt = (f"{value(text)} " for text in texts)
    here = [" ".join(NAMES), bearing, tilt, "the neighbour ", bearing]
    away = ["", f"None sight_bearing: {UNLOADED}", f"None band_tilt: {UNLOADED}", "the neighbour ", f"None sight_bearing: {UNLOADED}"]
    assert in_a_qgis_of_its_own(COME_AND_GO, *texts) == [*here, *away, *here, *here, *away]


@pytest.mark.parametrize("name", NAMES)
def test_help_has_qgis_form_and_its_examples_hold(value, name):
    text, own = registered()[name].helpText(), QgsExpression.helpText("azimuth")
    marks = re.compile(r"<[^>]+>")
    assert set(marks.findall(text)) == set(marks.findall(own))
    arguments = [parameter.name() for parameter in registered()[name].parameters()]
    assert re.findall(r'<tr><td class="argument">(\w+)</td>', text) == arguments
    assert ("solar filter" in text) == name.startswith("sky")
    examples = re.findall(r"<li><code>(.*?)</code> &rarr; <code>(.*?)</code></li>", text)
    assert examples
    for code, result in examples:
        found = value(code.replace("&#x27;", "'").replace("&quot;", '"'))
        if result.startswith("&#x27;"):
            assert found == result[6:-6]
        else:
            assert found == pytest.approx(float(result), abs=0.5 * 10.0 ** -len(result.split(".")[1]))  # the digits shown


def test_they_ask_for_no_more_of_a_feature_than_their_arguments_do():
    expression = QgsExpression('sight_bearing(geom_from_wkt("a"), geom_from_wkt("b"), @layer_crs)')
    assert not expression.needsGeometry()
    assert expression.referencedColumns() == {"a", "b"}
