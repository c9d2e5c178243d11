"""The project of the sample reserve: it opens without a word, follows a dragged camera, steps through a night, prints, holds the models."""

import importlib
import os
import re
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from qgis.core import (
    Qgis,
    QgsApplication,
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsDateTimeRange,
    QgsExpression,
    QgsExpressionContext,
    QgsExpressionContextUtils,
    QgsGeometry,
    QgsLayoutExporter,
    QgsMapRendererCustomPainterJob,
    QgsMapSettings,
    QgsPointXY,
    QgsProcessingModelAlgorithm,
    QgsProject,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QDateTime, QSize, Qt
from qgis.PyQt.QtGui import QColor, QImage, QPainter
from skyfield_places import Observer, target, times

from skyalidade.adapters.models import FILES

pytestmark = pytest.mark.usefixtures("qgis_processing")  # the provider of models that projects hold

SAMPLE = Path(__file__).resolve().parents[2] / "sample_project"
FILES_OF_PROJECT = ("reserve.qgz", "reserve.gpkg", "found.gpkg", "dem.tif")
HOLDS = {"cameras", "subjects", "paths", "allowed", "closed", "alignments", "relief", "ground"}
SKY_TIME = "2027-06-07T01:30:00"  # UTC; the layout says half past eleven, two hours behind
CORE_COLOUR, SIGHTLINE_COLOUR = "#cc79a7", "#222222"


@pytest.fixture
def project(provider, tmp_path):
    """A copy of the sample, opened as QGIS opens it; `heard` is what was said."""
    for name in FILES_OF_PROJECT:
        shutil.copy(SAMPLE / name, tmp_path)
    project, heard = QgsProject.instance(), []

    def listen(text, tag, level):
        if level in (Qgis.MessageLevel.Warning, Qgis.MessageLevel.Critical):
            heard.append(f"{tag}: {text}")

    QgsApplication.messageLog().messageReceived.connect(listen)
    assert project.read(str(tmp_path / "reserve.qgz"))
    project.heard = heard
    yield project
    QgsApplication.messageLog().messageReceived.disconnect(listen)
    project.clear()


def layer_of(project, name):
    (layer,) = project.mapLayersByName(name)
    return layer


def drawn(project, folder, name="map", moments=None):
    """A picture of the visible layers, in a frame of the Temporal Controller if moments are given."""
    settings = QgsMapSettings()
    settings.setLayers(project.layerTreeRoot().checkedLayers())
    settings.setDestinationCrs(project.crs())
    settings.setExtent(project.viewSettings().defaultViewExtent())
    settings.setOutputSize(QSize(700, 800))
    context = QgsExpressionContext(QgsExpressionContextUtils.globalProjectLayerScopes(None))
    if moments:
        settings.setIsTemporal(True)
        settings.setTemporalRange(QgsDateTimeRange(*(QDateTime.fromString(moment, Qt.DateFormat.ISODate) for moment in moments)))
        context.appendScope(QgsExpressionContextUtils.mapSettingsScope(settings))
    settings.setExpressionContext(context)
    image = QImage(settings.outputSize(), QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    QgsMapRendererCustomPainterJob(settings, painter).renderSynchronously()
    painter.end()
    image.save(str(folder / f"{name}.png"))  # to look at where a test fails
    return image


def pixels(image, colour):
    """How many pixels have a colour, but for smoothing."""
    bits = image.constBits()
    bits.setsize(image.sizeInBytes())
    red, green, blue = QColor(colour).red(), QColor(colour).green(), QColor(colour).blue()
    values = np.frombuffer(bytes(bits), dtype=np.uint8).reshape(-1, 4)[:, :3].astype(int)
    return int((np.abs(values - [blue, green, red]).max(axis=1) < 6).sum())


def expressions_of(layer):
    """Expressions of the live cameras: what lines are made of, and what is written along them."""
    made = [part.geometryExpression() for part in layer.renderer().symbol().symbolLayers() if part.layerType() == "GeometryGenerator"]
    (words,) = [rule.settings() for rule in layer.labeling().rootRule().children() if rule.settings().geometryGeneratorEnabled]
    return made, words


def values(layer, project, expression, **variables):
    """What an expression gives for each camera, by name."""
    prepared = QgsExpression(expression)
    assert not prepared.hasParserError(), prepared.parserErrorString()
    context = QgsExpressionContext(QgsExpressionContextUtils.globalProjectLayerScopes(layer))
    for name, value in variables.items():
        context.lastScope().setVariable(name, value)
    given = {}
    for feature in layer.getFeatures():
        context.setFeature(feature)
        given[feature["name"]] = prepared.evaluate(context)
        assert not prepared.hasEvalError(), prepared.evalErrorString()
    return given


def lon_lat(point):
    way = QgsCoordinateTransform(
        QgsCoordinateReferenceSystem("EPSG:32625"), QgsCoordinateReferenceSystem("EPSG:4326"), QgsProject.instance()
    )
    place = way.transform(QgsPointXY(point.x(), point.y()))
    return place.x(), place.y()


def line_of(start, end):
    (lon1, lat1), (lon2, lat2) = lon_lat(start), lon_lat(end)
    return Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2)


def test_it_opens_without_a_word(project, tmp_path):
    layers = project.mapLayers().values()
    assert {layer.name() for layer in layers} == HOLDS
    assert all(layer.isValid() for layer in layers)
    picture = drawn(project, tmp_path)
    assert pixels(picture, SIGHTLINE_COLOUR) > 500
    assert pixels(picture, CORE_COLOUR) > 500
    assert project.error() == ""
    assert project.heard == []


def test_cameras_know_the_place_of_the_subject_they_face(project):
    subjects = {feature["name"]: feature.geometry().asPoint() for feature in layer_of(project, "subjects").getFeatures()}
    for camera in layer_of(project, "cameras").getFeatures():
        at = subjects[camera["faces"]]
        assert (camera["faces_e"], camera["faces_n"]) == pytest.approx((at.x(), at.y()), abs=1e-6)


def test_bearings_beside_the_lines_are_geographiclibs_and_follow_a_dragged_camera(project):
    layer = layer_of(project, "cameras")
    _, words = expressions_of(layer)
    assert words.isExpression
    subjects = {feature["name"]: feature.geometry().asPoint() for feature in layer_of(project, "subjects").getFeatures()}

    def assert_told(told):
        for camera in layer.getFeatures():
            true = line_of(camera.geometry().asPoint(), subjects[camera["faces"]])
            bearing, dist = re.fullmatch(r"(\d+\.\d)°  ([\d,]+) m", told[camera["name"]]).groups()
            assert float(bearing) == pytest.approx(true["azi1"] % 360, abs=0.0501)  # the digit shown
            assert float(dist.replace(",", "")) == pytest.approx(true["s12"], abs=0.501)

    before = values(layer, project, words.fieldName)
    assert_told(before)
    assert layer.startEditing()
    camera = next(layer.getFeatures())
    moved = QgsGeometry(camera.geometry())
    moved.translate(120.0, -35.0)
    layer.changeGeometry(camera.id(), moved)
    try:
        after = values(layer, project, words.fieldName)
        assert_told(after)
        assert [name for name in after if after[name] != before[name]] == [camera["name"]]
    finally:
        layer.rollBack()


@pytest.mark.parametrize(("moment", "given"), [(SKY_TIME, {}), ("2027-06-07T03:00:00", {"map_start_time": "2027-06-07T03:00:00Z"})])
def test_the_ray_of_the_core_points_where_skyfield_sees_it(project, moment, given):
    layer = layer_of(project, "cameras")
    made, _ = expressions_of(layer)
    rays = values(layer, project, made[0], **given)
    when = times(np.datetime64(moment).astype("datetime64[s]").astype(float))
    for camera in layer.getFeatures():
        start, end = (rays[camera["name"]].vertexAt(i) for i in (0, 1))
        lon, lat = lon_lat(start)
        _, az, _ = Observer(lon, lat, camera.geometry().constGet().z(), when).altaz(target("core"))
        assert line_of(start, end)["azi1"] % 360 == pytest.approx(az, abs=0.001)  # deg: the grid turns by less over 700 m


def test_the_ray_is_not_drawn_while_the_core_is_down(project):
    made, _ = expressions_of(layer_of(project, "cameras"))
    assert set(values(layer_of(project, "cameras"), project, made[0], map_start_time="2027-06-07T12:00:00Z").values()) == {None}


ALONE = """
import sys
from qgis.core import Qgis, QgsApplication, QgsMapRendererParallelJob, QgsMapSettings, QgsProject
from qgis.PyQt.QtCore import QSize
application = QgsApplication([], False)
application.initQgis()
heard = []
QgsApplication.messageLog().messageReceived.connect(lambda text, tag, level: level == Qgis.MessageLevel.Info or heard.append(text))
project = QgsProject.instance()
assert project.read(sys.argv[1])
settings = QgsMapSettings()
settings.setLayers(project.layerTreeRoot().checkedLayers())
settings.setDestinationCrs(project.crs())
settings.setExtent(project.viewSettings().defaultViewExtent())
settings.setOutputSize(QSize(700, 800))
job = QgsMapRendererParallelJob(settings)
job.start()
job.waitForFinished()
job.renderedImage().save(sys.argv[2])
print(sorted(layer.name() for layer in project.mapLayers().values() if layer.isValid()), heard, job.errors())
project.clear()
application.exitQgis()
"""


def test_without_the_plugin_it_still_opens_and_draws(tmp_path):
    for name in FILES_OF_PROJECT:
        shutil.copy(SAMPLE / name, tmp_path)
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        [sys.executable, "-c", ALONE, str(tmp_path / "reserve.qgz"), str(tmp_path / "map.png")],
        env={**environment, "QT_QPA_PLATFORM": "offscreen", "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
        timeout=600,
    )
    assert done.stdout.strip() == f"{sorted(HOLDS)} [] []", done.stderr
    picture = QImage(str(tmp_path / "map.png")).convertToFormat(QImage.Format.Format_RGB32)
    assert pixels(picture, SIGHTLINE_COLOUR) > 500
    assert pixels(picture, CORE_COLOUR) == 0


def packed(file):
    """What a packed project holds."""
    with zipfile.ZipFile(file) as project:
        return project.read("reserve.qgs").decode()


@pytest.mark.skipif(Qgis.QGIS_VERSION_INT >= 32400, reason="the project is made by QGIS 3.22: newer ones write other XML")
def test_it_is_as_it_would_be_made_now(tmp_path):
    """With the styles, models and words of the plugin as they are."""
    shutil.copytree(SAMPLE, tmp_path / "sample_project")
    (tmp_path / "plugin").symlink_to(SAMPLE.parent / "plugin")
    done = subprocess.run(
        [sys.executable, str(tmp_path / "sample_project" / "project.py")],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    made, there = (packed(folder / "reserve.qgz").splitlines() for folder in (tmp_path / "sample_project", SAMPLE))
    differs = [pair for pair in zip(made, there) if pair[0] != pair[1]]
    assert (differs[:3], len(made)) == ([], len(there)), "run sample_project/project.py with QGIS 3.22"


WHILE_DRAWN = """
import sys
from qgis.core import QgsApplication, QgsExpressionContext, QgsExpressionContextUtils, QgsMapRendererParallelJob, QgsMapSettings, QgsProject
from qgis.PyQt.QtCore import QSize
application = QgsApplication([], False)
application.initQgis()
from skyalidade.plugin import SkyAlidade
plugin = SkyAlidade(None)
plugin.initProcessing()
project = QgsProject.instance()
assert project.read(sys.argv[1])
settings = QgsMapSettings()
settings.setLayers(project.layerTreeRoot().checkedLayers())
settings.setDestinationCrs(project.crs())
settings.setExtent(project.viewSettings().defaultViewExtent())
settings.setOutputSize(QSize(350, 400))
settings.setExpressionContext(QgsExpressionContext(QgsExpressionContextUtils.globalProjectLayerScopes(None)))

def drawn(meanwhile=lambda: None):
    job = QgsMapRendererParallelJob(settings)
    job.start()
    meanwhile()
    job.waitForFinished()
    return job.renderedImage()

drawn()
for turn in range(4):
    drawn(plugin.unload)
    drawn().save(f"{sys.argv[2]}/without_{turn}.png")
    drawn(plugin.initProcessing)
    drawn().save(f"{sys.argv[2]}/with_{turn}.png")
project.clear()
plugin.unload()
application.exitQgis()
print('ended')
"""


def test_it_is_drawn_while_the_plugin_goes_and_comes(tmp_path):
    """Unloaded in the midst of drawing, by threads that evaluate its functions, and loaded again: QGIS lives, and the lines are back."""
    for name in FILES_OF_PROJECT:
        shutil.copy(SAMPLE / name, tmp_path)
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-X", "faulthandler", "-c", WHILE_DRAWN, str(tmp_path / "reserve.qgz"), str(tmp_path)],
        env={**environment, "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.stdout == "ended\n", done.stderr
    core = {
        state: [
            pixels(QImage(str(picture)).convertToFormat(QImage.Format.Format_RGB32), CORE_COLOUR) for picture in tmp_path.glob(f"{state}_*")
        ]
        for state in ("with", "without")
    }
    assert core["without"] == [0] * 4
    assert len(core["with"]) == 4
    assert min(core["with"]) > 100


def test_it_is_ready_for_the_temporal_controller(project, tmp_path):
    alignments = layer_of(project, "alignments")
    times_of = alignments.temporalProperties()
    assert times_of.isActive()
    assert (times_of.startField(), times_of.endField()) == ("t_start", "t_end")
    assert alignments.attributeAlias(alignments.fields().lookupField("t_utc")) == "Time (UTC)"
    span = project.timeSettings().temporalRange()
    assert any(span.contains(feature["t_utc"]) for feature in alignments.getFeatures())
    project.layerTreeRoot().findLayer(alignments).setItemVisibilityChecked(True)
    over = next(row for row in alignments.getFeatures() if row["body"] == "core" and row["sight"] == "clear" and row["dist_m"] > 1500)
    begin = over["t_start"].toString("yyyy-MM-ddTHH:mm:ss") + "Z"
    end = over["t_end"].toString("yyyy-MM-ddTHH:mm:ss") + "Z"
    within, by_day = (
        drawn(project, tmp_path, "frame", moments) for moments in ((begin, end), ("2027-06-07T12:00:00Z", "2027-06-07T12:10:00Z"))
    )
    assert pixels(within, CORE_COLOUR) > pixels(by_day, CORE_COLOUR) + 300
    assert pixels(by_day, CORE_COLOUR) == 0


def test_its_alignments_are_what_the_plugin_finds(project, monkeypatch, tmp_path):
    monkeypatch.syspath_prepend(str(SAMPLE))  # the script imports its neighbour
    found = importlib.import_module("found")
    monkeypatch.setattr(found, "FOUND", tmp_path / "again.gpkg")
    (tmp_path / "copy").mkdir()
    found.find(tmp_path / "copy")
    again = QgsVectorLayer(f"{found.FOUND}|layername=alignments", "again", "ogr")
    new, old = ([feature.attributes()[1:] for feature in layer.getFeatures()] for layer in (again, layer_of(project, "alignments")))
    assert len(new) == len(old) == 48
    for mine, kept in zip(new, old):
        assert all(alike(a, b) for a, b in zip(mine, kept))


def alike(a, b):
    """Numbers but for the last digits, which hang on the processor; moments to the second they are rounded to."""
    if isinstance(a, float):
        return a == pytest.approx(b, abs=1e-6)
    if isinstance(a, QDateTime):
        return abs(a.secsTo(b)) <= 1
    return a == b or isinstance(a, str) and a[:2] == b[:2] == "20"


def test_the_layout_prints(project, tmp_path):
    (layout,) = project.layoutManager().printLayouts()
    sheet = layout.itemById("map")
    assert np.isfinite(sheet.scale())
    assert sheet.scale() == pytest.approx(44_200, rel=0.02)  # 8.4 km on 190 mm
    how = QgsLayoutExporter.ImageExportSettings()
    how.dpi = 80
    file = tmp_path / "layout.png"
    assert QgsLayoutExporter(layout).exportToImage(str(file), how) == QgsLayoutExporter.ExportResult.Success
    picture = QImage(str(file)).convertToFormat(QImage.Format.Format_RGB32)
    assert (picture.width(), picture.height()) == pytest.approx((661, 935), abs=2)  # A4
    assert pixels(picture, SIGHTLINE_COLOUR) > 500
    texts = [item.text() for item in layout.items() if hasattr(item, "text")]
    assert any("not a permit" in text and "invented" in text for text in texts)


def test_the_models_in_it_are_the_plugins(project):
    held = QgsApplication.processingRegistry().providerById("project").algorithms()
    kept = []
    for file in FILES:
        model = QgsProcessingModelAlgorithm()
        model.fromFile(str(file))
        kept.append(model)
    assert sorted(model.name() for model in held) == sorted(model.name() for model in kept)
    assert all(model.canExecute()[0] for model in held)
    by_name = {model.name(): model.toVariant() for model in held}
    assert all(by_name[model.name()]["children"] == model.toVariant()["children"] for model in kept)
