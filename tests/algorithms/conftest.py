"""Layers and runs for the tests of algorithms, in the QGIS that pytest-qgis starts."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest
from qgis.core import (
    QgsApplication,
    QgsCoordinateReferenceSystem,
    QgsFeature,
    QgsGeometry,
    QgsProcessingContext,
    QgsProcessingFeedback,
    QgsProject,
    QgsVectorLayer,
)

STAGE = Path(__file__).resolve().parents[2] / "build" / "stage"


class Feedback(QgsProcessingFeedback):
    """Keeps what was said; cancels itself when a share of the run is done."""

    def __init__(self, cancel_at=None):
        super().__init__(False)
        self.said, self.cancel_at, self.shares = [], cancel_at, []
        self.progressChanged.connect(self._progress)

    def _progress(self, percent):
        self.shares.append(percent)
        if self.cancel_at is not None and percent >= self.cancel_at:
            self.cancel()

    def pushInfo(self, text):  # noqa: N802  QGIS's name
        self.said.append(text)

    def pushWarning(self, text):  # noqa: N802
        self.said.append(text)

    def reportError(self, text, fatalError=False):  # noqa: N802, N803
        self.said.append(text)

    @property
    def log(self):
        return "\n".join(self.said)


class Outcome:
    """What a run gave: its layers by parameter, its log."""

    def __init__(self, results, context, feedback):
        self.feedback, self.log = feedback, feedback.log
        self.layers = {name: context.getMapLayer(layer) for name, layer in results.items() if isinstance(layer, str)}
        self.context = context  # owns the layers

    def rows(self, name="OUTPUT"):
        layer = self.layers[name]
        return [dict(zip(layer.fields().names(), feature.attributes())) for feature in layer.getFeatures()]

    def geometries(self, name="OUTPUT"):
        return [feature.geometry() for feature in self.layers[name].getFeatures()]


@pytest.fixture(scope="session")
def provider(qgis_app):
    from skyalidade.plugin import SkyAlidade

    plugin = SkyAlidade(None)
    plugin.initProcessing()
    yield plugin.provider
    plugin.unload()


@pytest.fixture
def algorithm(provider):
    return lambda name: QgsApplication.processingRegistry().createAlgorithmById(f"skyalidade:{name}")


@pytest.fixture
def context():
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    yield context
    context.temporaryLayerStore().removeAllMapLayers()  # pytest lets go of the last test's only after QGIS has ended, too late for a raster


@pytest.fixture
def refusal(algorithm, context):
    """The sentence with which an algorithm refuses parameters; fails when it takes them."""

    def sentence(name, parameters):
        taken, text = algorithm(name).checkParameterValues({**parameters, "OUTPUT": parameters.get("OUTPUT", "TEMPORARY_OUTPUT")}, context)
        assert not taken, "the parameters were accepted"
        return text

    return sentence


@pytest.fixture
def run(algorithm, context):
    """Run an algorithm; its parameters must pass its own check."""
    from skyalidade.names import FIELDS_OF_OUTPUTS

    def outcome(name, parameters, cancel_at=None):
        feedback = Feedback(cancel_at)
        parameters = {"OUTPUT": "memory:", **parameters}
        prepared = algorithm(name)
        taken, text = prepared.checkParameterValues(parameters, context)
        assert taken, text
        # as processing.run calls it; errors are raised, not swallowed
        results = prepared.run(parameters, context, feedback, {}, False)[0]
        outcome = Outcome(results, context, feedback)
        for output, fields in FIELDS_OF_OUTPUTS.get(name, {}).items():
            if outcome.layers.get(output) is not None:
                assert tuple(outcome.layers[output].fields().names()[: len(fields)]) == fields, f"{output} is not as names.py tells"
        return outcome

    return outcome


@pytest.fixture
def layer():
    """Make a memory layer from rows of (WKT, value, value, ...); kept alive until the test ends."""
    kept = []

    def make(rows, crs="EPSG:4326", fields=(), kind="PointZ"):
        made = QgsVectorLayer(f"{kind}?crs={crs}&" + "&".join(f"field={field}" for field in fields), "points", "memory")
        if not crs:
            made.setCrs(QgsCoordinateReferenceSystem())
        features = []
        for wkt, *values in rows:
            feature = QgsFeature(made.fields())
            if wkt is not None:
                feature.setGeometry(wkt if isinstance(wkt, QgsGeometry) else QgsGeometry.fromWkt(wkt))
            feature.setAttributes(values)
            features.append(feature)
        taken, _ = made.dataProvider().addFeatures(features)
        assert taken
        made.updateExtents()
        kept.append(made)
        return made

    return make


@pytest.fixture(scope="session")
def command_line(tmp_path_factory):
    """The real qgis_process with the staged plugin, away from any profile: its program, environment and folder."""
    home = tmp_path_factory.mktemp("home")
    profile = home / "config" / "profiles" / "default" / "QGIS"
    profile.mkdir(parents=True)
    (profile / "QGIS3.ini").write_text("[PythonPlugins]\nskyalidade=true\n", encoding="utf-8")
    binary = shutil.which("qgis_process.bin") or shutil.which("qgis_process")  # Debian 12's qgis_process is a wrapper that fails
    environment = {
        **{name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "VIRTUAL_ENV")},
        "HOME": str(home),
        "XDG_CONFIG_HOME": str(home / ".config"),
        "XDG_RUNTIME_DIR": str(home),
        "QGIS_CUSTOM_CONFIG_PATH": str(home / "config"),
        "QGIS_PLUGINPATH": str(STAGE),
        "QT_QPA_PLATFORM": "offscreen",
    }
    return binary, environment, home


@pytest.fixture(scope="session")
def qgis_process(command_line):
    """Run qgis_process; gives exit code, log and errors."""
    binary, environment, home = command_line

    def process(name, *parameters, environment_too=None, **how):
        return subprocess.run(
            [binary, "run", name if name.endswith(".model3") else f"skyalidade:{name}", "--", *parameters],
            env={**environment, **(environment_too or {})},
            cwd=home,
            capture_output=True,
            text=True,
            check=False,
            timeout=600,  # s; only a run that hangs takes as long
            **how,
        )

    return process
