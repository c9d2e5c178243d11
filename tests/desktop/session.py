"""What a person does, done inside a QGIS window: QGIS is started with `--code` and this file.

It opens the sample project and every dialog of the plugin, runs alignments, switches the plugin off and on, and leaves pictures and
`verdict.json` in the folder that SKYALIDADE_PICTURES names. It judges nothing: test_desktop.py reads the verdict.
"""

import json
import os
import traceback
from pathlib import Path

import processing
from qgis.core import Qgis, QgsApplication, QgsExpression, QgsExpressionContext, QgsExpressionContextUtils, QgsProject, QgsRenderContext
from qgis.PyQt.QtCore import QTimer
from qgis.PyQt.QtWidgets import QGroupBox, QScrollArea
from qgis.utils import iface, loadPlugin, plugins, startPlugin, unloadPlugin

PICTURES = Path(os.environ["SKYALIDADE_PICTURES"])
PROJECT = Path(os.environ["SKYALIDADE_PROJECT"])
SETTLE_MS = 150  # for what is drawn in the next turns of the event loop
POINT = "make_point(-33.0, 36.0)"
EXPRESSIONS = {
    "sky_azimuth": f"sky_azimuth('core', {POINT}, 'EPSG:4326', '2027-06-06T23:30:00Z')",
    "sky_altitude": f"sky_altitude('core', {POINT}, 'EPSG:4326', '2027-06-06T23:30:00Z')",
    "sight_bearing": f"sight_bearing({POINT}, make_point(-33.0, 36.1), 'EPSG:4326')",
    "sight_distance": f"sight_distance({POINT}, make_point(-33.0, 36.1), 'EPSG:4326')",
    "band_tilt": f"band_tilt({POINT}, 'EPSG:4326', '2027-06-06T23:30:00Z')",
}

verdict = {"messages": [], "dialogs": {}}


def heard(text, tag, level):
    if level in (Qgis.MessageLevel.Warning, Qgis.MessageLevel.Critical):
        verdict["messages"].append(f"{tag}: {text}")


def picture(widget, name):
    widget.grab().save(str(PICTURES / f"{name}.png"))


def algorithms():
    provider = QgsApplication.processingRegistry().providerById("skyalidade")
    return provider.algorithms() if provider else []


def bar():
    """The texts of the message bar."""
    return [item.text() for item in iface.messageBar().items()]


def until(true):
    """Wait for a state; after a minute, or what a busy machine makes of it, go on without."""
    for _ in range(600):
        if true():
            return
        yield 100


def drawn():
    """Wait until the map is there."""
    yield 500
    while iface.mapCanvas().isDrawing():
        yield 100


def open_project():
    verdict["opened"] = iface.addProject(str(PROJECT))
    yield from drawn()
    layers = QgsProject.instance().mapLayers().values()
    verdict["layers"] = {layer.name(): layer.isValid() for layer in layers}
    verdict["bar"] = bar()
    picture(iface.mainWindow(), "project")


def open_dialogs():
    for algorithm in algorithms():
        dialog = processing.createAlgorithmDialog(algorithm.id(), {})
        if dialog is None:
            verdict["dialogs"][algorithm.name()] = None
            continue
        dialog.resize(1100, 800)
        dialog.show()
        yield from until(dialog.windowHandle().isExposed)
        yield SETTLE_MS
        contents = max((area.widget() for area in dialog.findChildren(QScrollArea) if area.widget()), key=lambda widget: widget.height())
        boxes = [box for box in dialog.findChildren(QGroupBox) if box.isVisible() and box.property("collapsed") is not None]
        verdict["dialogs"][algorithm.name()] = {
            "title": dialog.windowTitle(),
            "folded": [box.property("collapsed") for box in boxes],
            "width": contents.width(),
            "seen": contents.parentWidget().width(),
        }
        picture(dialog, f"dialog_{algorithm.name()}")
        for box in boxes:
            box.setProperty("collapsed", False)
        yield SETTLE_MS
        picture(contents, f"parameters_{algorithm.name()}")
        for box in boxes:
            box.setProperty("collapsed", True)  # QGIS would remember it for the next dialog
        dialog.close()
        dialog.deleteLater()
        yield 0


def run_alignments():
    """Two layers chosen, two bodies, and one night so that the picture is the same tomorrow; then the button."""
    layers = {layer.name(): layer.id() for layer in QgsProject.instance().mapLayers().values()}
    chosen = {"CAMERAS": layers["cameras"], "SUBJECTS": layers["subjects"], "BODIES": ["core", "moon"]}
    night = {"FIRST_NIGHT": "2027-06-15", "LAST_NIGHT": "2027-06-15"}
    dialog = processing.createAlgorithmDialog("skyalidade:alignments", {**chosen, **night})
    done = []
    dialog.algorithmFinished.connect(lambda successful, results: done.append(successful))
    dialog.show()
    yield SETTLE_MS
    before = set(QgsProject.instance().mapLayers())
    dialog.runButton().click()
    while not done:
        yield 100
    yield from until(lambda: set(QgsProject.instance().mapLayers()) > before)  # the layer is loaded after the algorithm has ended
    verdict["run"] = done[0]
    picture(dialog, "run_alignments")
    dialog.close()
    new = [layer for key, layer in QgsProject.instance().mapLayers().items() if key not in before]
    verdict["results"] = [told_of(layer) for layer in new]
    yield from drawn()
    picture(iface.mainWindow(), "alignments")


def told_of(layer):
    temporal = layer.temporalProperties()
    symbols = layer.renderer().symbols(QgsRenderContext())
    return {
        "name": layer.name(),
        "bodies": sorted({feature["body"] for feature in layer.getFeatures()}),
        "renderer": layer.renderer().type(),
        "colours": sorted({part.color().name() for symbol in symbols for part in symbol.symbolLayers()}),
        "labels": layer.labelsEnabled(),
        "temporal": [temporal.isActive(), temporal.startField(), temporal.endField()],
        "alias": layer.attributeAlias(layer.fields().indexOf("t_utc")),
    }


def make_a_sheet():
    """A site map over the project's own layers, by the button; it is drawn in the window's own thread."""
    layers = {layer.name(): layer.id() for layer in QgsProject.instance().mapLayers().values()}
    chosen = {"CAMERAS": layers["cameras"], "CAMERA_NAME": "name", "SUBJECTS": layers["subjects"], "SUBJECT_NAME": "name"}
    files = {"OUTPUT": str(PICTURES / "sheet.pdf"), "PICTURES": str(PICTURES / "sheets")}
    dialog = processing.createAlgorithmDialog("skyalidade:site_map", {**chosen, "SHEET_BY": "", **files})
    done = []
    dialog.algorithmFinished.connect(lambda successful, results: done.append(successful))
    dialog.show()
    yield SETTLE_MS
    dialog.runButton().click()
    while not done:
        yield 100
    verdict["sheet"] = done[0]
    picture(dialog, "run_site_map")
    dialog.close()


def values():
    context = QgsExpressionContext()
    context.appendScope(QgsExpressionContextUtils.globalScope())
    found = {}
    for name, text in EXPRESSIONS.items():
        expression = QgsExpression(text)
        value = expression.evaluate(context)
        found[name] = expression.parserErrorString() or expression.evalErrorString() or value
    return found


def evaluate():
    verdict["expressions"] = values()
    yield 0


def unload_and_load():
    """Switch the plugin off and on, as the plugin manager does, under a map that is drawn with its functions."""
    iface.mapCanvas().refreshAllLayers()
    yield 50
    verdict["unloaded"] = unloadPlugin("skyalidade")
    yield from drawn()
    iface.mapCanvas().refreshAllLayers()
    yield from drawn()
    picture(iface.mainWindow(), "unloaded")
    verdict["away"] = {"expressions": values(), "algorithms": len(algorithms())}
    verdict["loaded"] = loadPlugin("skyalidade") and startPlugin("skyalidade")
    iface.mapCanvas().refreshAllLayers()
    yield from drawn()
    picture(iface.mainWindow(), "loaded")
    verdict["back"] = {"expressions": values(), "algorithms": len(algorithms())}


def session():
    verdict["version"] = Qgis.QGIS_VERSION
    verdict["plugin"] = getattr(plugins.get("skyalidade"), "__module__", None)
    verdict["algorithms"] = [algorithm.name() for algorithm in algorithms()]
    iface.mainWindow().resize(1380, 880)
    yield 1000
    for part in (open_project, open_dialogs, evaluate, make_a_sheet, run_alignments, unload_and_load):
        yield from part()


def step(steps):
    """Go on to the next pause, and come back after it."""
    try:
        pause_ms = next(steps)
    except StopIteration:
        leave()
    except Exception:
        verdict["error"] = traceback.format_exc()
        leave()
    else:
        QTimer.singleShot(pause_ms, lambda: step(steps))


def leave():
    (PICTURES / "verdict.json").write_text(json.dumps(verdict, indent=1))
    os._exit(0)  # quit() asks about unsaved layers, and crashes in some versions


QgsApplication.messageLog().messageReceived.connect(heard)
running = session()
QTimer.singleShot(0, lambda: step(running))
