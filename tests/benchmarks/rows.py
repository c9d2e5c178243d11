"""How long rows take end to end, from layers to a closed GeoPackage, beside the bare cost of building and writing the same rows."""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[1])]
import conftest  # noqa: E402, F401  stages the plugin

# isort: split
import numpy as np  # noqa: E402
from qgis.core import (  # noqa: E402
    Qgis,
    QgsApplication,
    QgsCoordinateTransformContext,
    QgsFeature,
    QgsFeatureSink,
    QgsFields,
    QgsGeometry,
    QgsPoint,
    QgsProcessingContext,
    QgsProcessingFeedback,
    QgsProcessingUtils,
    QgsVectorFileWriter,
    QgsVectorLayer,
)
from telling import Ratio, Section, in_turn, number  # noqa: E402

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
CAMERAS, SUBJECTS, SITES, TIMES = 400, 250, 1000, 100
NIGHT_SITES = 300
PROCESS_SITES = 1000  # through qgis_process; enough that its start, about 3 s, is not what is measured
KEPT = ["park", "stop", "walk_km"]
BATCH = 2000  # rows handed to the sink at once, as the plugin does
REPEATS = 3  # of each, in turn; the quickest counts
MOST_RATIO = 2.0


def points(count, seed):
    """A layer of points within some 20 km."""
    layer = QgsVectorLayer("PointZ?crs=EPSG:4326&field=name:string&field=park:string&field=stop:integer&field=walk_km:double", "", "memory")
    rng, features = np.random.default_rng(seed), []
    for i, (east, north) in enumerate(rng.uniform(0.0, 0.2, (count, 2)).tolist()):
        feature = QgsFeature(layer.fields())
        feature.setGeometry(QgsGeometry(QgsPoint(-33.0 + east, 36.0 + north, 10.0)))
        feature.setAttributes([f"place {i}", "Quenmar", i, east])
        features.append(feature)
    layer.dataProvider().addFeatures(features)
    return layer


def runs():
    """The runs measured: id of the algorithm and its parameters, but for the output."""
    pairs = {"CAMERAS": points(CAMERAS, 1), "SUBJECTS": points(SUBJECTS, 2), "CAMERA_NAME": "name"}
    times = {"SITES": points(SITES, 3), "SITE_NAME": "name", "START": "2027-06-06T00:00Z", "END": "2027-06-06T16:30Z", "STEP": 10}
    nights = {"SITES": points(NIGHT_SITES, 4), "SITE_NAME": "name", "FIRST_NIGHT": "2027-01-01", "LAST_NIGHT": "2027-12-31"}
    return {
        "sightlines": ("sightlines", pairs),
        "sightlines, fields kept": ("sightlines", {**pairs, "KEEP_FIELDS": KEPT}),
        "sky positions": ("sky_positions", times),
        "night windows": ("night_windows", nights),
    }


def end_to_end_s(algorithm, parameters, path):
    """A whole run: layers read, rows worked out and written, the file closed with its style in it. [s]."""
    made = QgsApplication.processingRegistry().createAlgorithmById(f"skyalidade:{algorithm}")
    context = QgsProcessingContext()
    context.setTransformContext(QgsCoordinateTransformContext())
    path.unlink(missing_ok=True)
    start = time.perf_counter()
    _, finished = made.run({**parameters, "OUTPUT": str(path)}, context, QgsProcessingFeedback(False))
    assert finished
    return time.perf_counter() - start


def process_s(sites, path):
    """The whole command `qgis_process run skyalidade:night_windows`, from the start of QGIS to its end. [s]."""
    path.unlink(missing_ok=True)
    command = shutil.which("qgis_process.bin") or shutil.which("qgis_process")
    asked = [f"SITES={sites}", "SITE_NAME=name", "FIRST_NIGHT=2027-01-01", "LAST_NIGHT=2027-12-31", f"OUTPUT={path}"]
    with tempfile.TemporaryDirectory() as home:
        profile = Path(home, "profiles", "default", "QGIS")
        profile.mkdir(parents=True)
        Path(profile, "QGIS3.ini").write_text("[PythonPlugins]\nskyalidade=true\n", encoding="ascii")
        plugins = str(Path(sys.modules["skyalidade"].__file__).parents[1])
        environment = {**os.environ, "QGIS_CUSTOM_CONFIG_PATH": home, "QGIS_PLUGINPATH": plugins, "HOME": home, "XDG_RUNTIME_DIR": home}
        start = time.perf_counter()
        told = subprocess.run(
            [command, "run", "skyalidade:night_windows", "--", *asked], env=environment, capture_output=True, text=True, check=False
        )
        taken_s = time.perf_counter() - start
    assert told.returncode == 0, told.stderr
    return taken_s


def through_qgis_process(folder):
    """Rows, fields, and seconds of a command with many sites, and bare."""
    sites, whole, bare = Path(folder, "sites.gpkg"), Path(folder, "process.gpkg"), Path(folder, "bare.gpkg")
    context = QgsCoordinateTransformContext()
    options = QgsVectorFileWriter.SaveVectorOptions()
    QgsVectorFileWriter.writeAsVectorFormatV3(points(PROCESS_SITES, 5), str(sites), context, options)
    process_s(sites, whole)  # not counted, as with the others
    rows = rows_of(whole)
    taken = in_turn({"plugin": lambda: process_s(sites, whole), "bare": lambda: bare_s(bare, rows)}, REPEATS)
    return {"rows": len(rows[3]), "fields": len(rows[0]), **taken}


def bare_s(path, rows):
    """Features built of values and WKB that are ready, written in batches to the same kind of sink, the file closed. [s]."""
    fields, wkb_type, crs, values = rows
    path.unlink(missing_ok=True)
    start = time.perf_counter()
    sink, _ = QgsProcessingUtils.createFeatureSink(str(path), QgsProcessingContext(), fields, wkb_type, crs)
    for first in range(0, len(values), BATCH):
        batch = []
        for attributes, wkb in values[first : first + BATCH]:
            feature, geometry = QgsFeature(), QgsGeometry()
            feature.setAttributes(attributes)
            geometry.fromWkb(wkb)
            feature.setGeometry(geometry)
            batch.append(feature)
        assert sink.addFeatures(batch, QgsFeatureSink.Flag.FastInsert)
    del sink
    return time.perf_counter() - start


def rows_of(path):
    """What a run has written: fields, type, CRS, and of each row its values and WKB; without the numbers that a GeoPackage adds itself."""
    layer = QgsVectorLayer(str(path), "", "ogr")
    fields = QgsFields()
    for field in list(layer.fields())[1:]:
        fields.append(field)
    rows = [(feature.attributes()[1:], feature.geometry().asWkb().data()) for feature in layer.getFeatures()]
    return fields, layer.wkbType(), layer.crs(), rows


def measure():
    """For each run its rows, fields, and times end to end and bare.

    Returns
    -------
    dict of str to dict
    """
    application = QgsApplication.instance()
    if application is None:
        application = QgsApplication([], False)
        application.initQgis()
    from skyalidade.plugin import SkyAlidade  # Qt's resources and the registry stand only now

    plugin = SkyAlidade(None)
    plugin.initProcessing()
    measured = {}
    with tempfile.TemporaryDirectory() as folder:
        whole, bare = Path(folder, "whole.gpkg"), Path(folder, "bare.gpkg")
        for label, run in runs().items():
            end_to_end_s(*run, whole)  # not counted: boundaries of zones, ephemeris, code
            rows = rows_of(whole)
            works = {"plugin": lambda run=run: end_to_end_s(*run, whole), "bare": lambda rows=rows: bare_s(bare, rows)}
            measured[label] = {"rows": len(rows[3]), "fields": len(rows[0]), **in_turn(works, REPEATS)}
        measured["night windows, the whole command `qgis_process`"] = through_qgis_process(folder)
    plugin.unload()
    return measured


def version():
    return Qgis.QGIS_VERSION.split("-")[0]


NOTES = """- End to end is a whole run of the algorithm in QGIS {qgis}: points read, transformed and paired, time zones and declinations
  looked up, rows worked out, lines drawn along geodesics, all written, the style saved beside them; of the command, QGIS's own
  start and end too.
- Bare is the same rows, with their values and geometries (WKB) ready in memory, made into features and written to a GeoPackage through
  the same sink, in batches of {batch}: the least that an algorithm in Python can take.
"""


def section():
    ratios = [
        Ratio(f"{label}, {number(run['rows'])} of {run['fields']} fields", run["plugin"], "bare writing", run["bare"], at_most=MOST_RATIO)
        for label, run in measure().items()
    ]
    return Section("Rows", "from layers to a closed GeoPackage", ratios, NOTES.format(qgis=version(), batch=BATCH))


def test_ratio():
    """Only when this file is named to pytest: a timed test in the common run would fail on a busy machine."""
    for label, run in measure().items():
        assert run["plugin"].best_s / run["bare"].best_s <= MOST_RATIO, label


if __name__ == "__main__":
    from report import tell

    tell(section())
