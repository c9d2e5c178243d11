"""The release zip, judged as by those who have never met the project: installed without a network, searched for faults of security, and
read for what the oldest Python, numpy and QGIS that it claims do not know.

Each judge is a function that returns complaints, so that it can be shown a fault as well as the zip.
"""

import ast
import configparser
import enum
import importlib
import inspect
import json
import re
import shutil
import sqlite3
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from detect_secrets import SecretsCollection
from detect_secrets.settings import default_settings

TOP = Path(__file__).resolve().parents[1]
NUMPY = json.loads((TOP / "tests" / "authorities" / "numpy_1_20_names.json").read_text())
PYQT6 = json.loads((TOP / "tests" / "authorities" / "pyqt6_names.json").read_text())
# What bandit says of the libraries as their authors wrote them, all of its lowest severity: accepted here, in the open, and nowhere else.
ACCEPTED = {
    ("libs/jplephem/daf.py", "B101"): "an assert on the format of an ephemeris, which is our own file",
    ("libs/skyfield/planetarylib.py", "B101"): "an assert on the format of a kernel that nothing here loads",
}
# flake8-qgis: its experimental guesses at return values (QGS2) know a method by its name alone.
QGIS_RULES = "QGS1,QGS4,F,E9,W6"
ALLOWED_RULES = {
    "adapters/fields.py": "QGS402",  # the one guard by version: QVariant's types only where QMetaType's are not taken
    "plugin.py": "QGS105",  # QGIS hands iface to classFactory
}
MISSING = object()
BINARY = {".bsp", ".npz", ".npy", ".gz", ".png", ".qm"}  # and the files of the zone database, which have no suffix


@pytest.fixture(scope="module")
def installed(release, tmp_path_factory):
    """The zip, unzipped."""
    folder = tmp_path_factory.mktemp("installed")
    with zipfile.ZipFile(release) as archive:
        archive.extractall(folder)
    return folder / "skyalidade"


@pytest.fixture(scope="module")
def own(installed):
    """The Python files that are ours."""
    return [path for path in sorted(installed.rglob("*.py")) if "libs" not in path.relative_to(installed).parts]


# without a network

BLOCKED = """
import socket
def refused(*_): raise OSError("no network in this test")
socket.socket.connect = socket.socket.connect_ex = socket.create_connection = refused
"""


def without_network(folder):
    """The words before a command that take its network away, and the environment that does so where the machine forbids them."""
    for words in (["unshare", "--net"], ["unshare", "--map-root-user", "--net"]):
        if shutil.which("unshare") and subprocess.run([*words, "true"], capture_output=True, check=False).returncode == 0:
            return words, {}
    (folder / "sitecustomize.py").write_text(BLOCKED)
    return [], {"PYTHONPATH": str(folder)}


def test_without_network_means_it(tmp_path):
    words, variables = without_network(tmp_path)
    program = "import socket; socket.create_connection(('192.0.2.1', 80), timeout=5)"  # a documentation address (RFC 5737)
    done = subprocess.run([*words, "/usr/bin/python3", "-c", program], env=variables, capture_output=True, text=True, check=False)
    assert "unreachable" in done.stderr or "no network" in done.stderr


def test_unzipped_into_a_clean_profile_it_runs_without_network_or_other_packages(installed, tmp_path):
    """As QGIS's own Python has it: neither this environment's packages nor the user's."""
    profile = tmp_path / "qgis" / "profiles" / "default"
    (profile / "QGIS").mkdir(parents=True)
    (profile / "QGIS" / "QGIS3.ini").write_text("[PythonPlugins]\nskyalidade=true\n")
    shutil.copytree(installed, profile / "python" / "plugins" / "skyalidade")
    sample = shutil.copytree(TOP / "sample_project", tmp_path / "sample", ignore=shutil.ignore_patterns("__pycache__"))
    words, variables = without_network(tmp_path)
    program = shutil.which("qgis_process.bin") or shutil.which("qgis_process")
    environment = {
        "PATH": "/usr/bin:/bin",
        "LANG": "C.UTF-8",
        "HOME": str(tmp_path),
        "PYTHONNOUSERSITE": "1",
        "QT_QPA_PLATFORM": "offscreen",
        "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path / "qgis"),
        **variables,
    }
    inputs = [f"{name}={sample}/reserve.gpkg|layername={name.lower()}" for name in ("CAMERAS", "SUBJECTS")]
    nights = ["FIRST_NIGHT=2027-06-05", "LAST_NIGHT=2027-06-06", f"DEM={sample}/dem.tif", f"OUTPUT={tmp_path}/found.gpkg"]
    done = subprocess.run(
        [*words, program, "run", "skyalidade:alignments", "--", *inputs, *nights],
        env=environment,
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    with sqlite3.connect(tmp_path / "found.gpkg") as found:
        assert found.execute("SELECT count(*), count(mag_deg), count(ground_deg) FROM found").fetchone()[0] > 10


# security


def bandit_faults(folder):
    """(file, rule, severity) of everything that bandit finds, however small."""
    command = [sys.executable, "-m", "bandit", "-q", "-r", folder, "-f", "json"]
    report = json.loads(subprocess.run(command, capture_output=True, text=True, check=False).stdout)
    assert report["errors"] == []
    found = report["results"]
    return {(Path(one["filename"]).relative_to(folder).as_posix(), one["test_id"], one["issue_severity"]) for one in found}


def secret_faults(folder):
    """What looks like a password or a key, in every file that holds text."""
    found = SecretsCollection()
    with default_settings():
        for path in sorted(folder.rglob("*")):
            if path.is_file() and is_text(path):
                found.scan_file(str(path))
    return [f"{file}: {one.type} in line {one.line_number}" for file, one in found]


def is_text(path):
    try:
        return "\0" not in path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return False


def unjustified(source):
    """Marks that silence bandit without naming the rule and a reason."""
    return [line.strip() for line in source.splitlines() if "nosec" in line and not re.search(r"# nosec B\d{3} # \S+", line)]


def test_bandit_finds_nothing_in_the_zip(installed):
    assert bandit_faults(installed) == {(file, rule, "LOW") for file, rule in ACCEPTED}


def test_whoever_silences_bandit_says_why(own):
    assert [(path.name, line) for path in own for line in unjustified(path.read_text(encoding="utf-8"))] == []
    assert unjustified("run(x)  # nosec B608") == ["run(x)  # nosec B608"]


def test_no_secret_in_the_zip(installed):
    assert secret_faults(installed) == []


def test_files_that_are_no_text_are_known(installed):
    strange = [path for path in installed.rglob("*") if path.is_file() and path.suffix not in BINARY and not is_text(path)]
    assert [path for path in strange if "zoneinfo" not in path.parts] == []


def test_faults_of_security_are_seen(tmp_path):
    (tmp_path / "bad.py").write_text("import pickle\nkey = 'AKIA" + "IOSFODNN7EXAMPL1'\npickle.loads(key)\n")
    assert {rule for _, rule, _ in bandit_faults(tmp_path)} == {"B301", "B403"}
    assert any("AWS" in fault for fault in secret_faults(tmp_path))


# the oldest Python and numpy


def python_faults(folder):
    """What Python 3.9 does not know: syntax, modules, functions and arguments."""
    command = [sys.executable, "-c", "import vermin; vermin.main()", "--no-tips", "--violations", "-t=3.9-", "--processes=1", folder]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert "Minimum required versions" in done.stdout or "No known reason" in done.stdout, done.stdout + done.stderr
    return [line for line in done.stdout.splitlines() if re.match(r"(\S+, )?!?\d+\.\d+.*\.py$", line)] if done.returncode else []


def numpy_faults(source):
    """Names of numpy, and arguments of its functions, that numpy 1.20 does not know."""
    tree, modules, faults = ast.parse(source), {}, []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            modules.update((alias.asname or alias.name, alias.name) for alias in node.names if alias.name.split(".")[0] == "numpy")
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module in NUMPY:
            faults += [f"{node.module}.{alias.name}" for alias in node.names if alias.name not in NUMPY[node.module]]
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute):
            module = module_of(node.value, modules)
            if module in NUMPY and f"{module}.{node.attr}" not in NUMPY and node.attr not in NUMPY[module]:
                faults.append(f"{module}.{node.attr}")
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            module, name = module_of(node.func.value, modules), node.func.attr
            known = NUMPY.get(module, {}).get(name)
            faults += [f"{module}.{name}({word.arg}=)" for word in node.keywords if known and word.arg and word.arg not in known]
    return faults


def module_of(node, modules):
    """The module of numpy that `np` or `np.linalg` stands for, or None."""
    path = dotted(node)
    if path is None or path[0] not in modules:
        return None
    return ".".join((modules[path[0]], *path[1:]))


def dotted(node):
    """['np', 'linalg'] of np.linalg; None for what is not made of names alone."""
    if isinstance(node, ast.Name):
        return [node.id]
    if isinstance(node, ast.Attribute):
        before = dotted(node.value)
        return None if before is None else [*before, node.attr]
    return None


def test_everything_in_the_zip_runs_on_python_39(installed):
    assert python_faults(installed) == []


def test_what_python_39_does_not_know_is_seen(tmp_path):
    (tmp_path / "young.py").write_text("match 1:\n    case 1:\n        pass\n")
    (tmp_path / "call.py").write_text("print((5).bit_count())\nfrom itertools import pairwise\n")
    (tmp_path / "old.py").write_text("print({} | {}, 'a'.removeprefix('a'))\n")
    assert len(python_faults(tmp_path)) == 2


def test_numpy_120_knows_every_call(installed, own):
    """Methods of arrays are not told by reading; in the libraries only names are asked for, since they ask the version themselves."""
    assert [(path.name, fault) for path in own for fault in numpy_faults(path.read_text(encoding="utf-8"))] == []
    libraries = [path for path in (installed / "libs").rglob("*.py") if path.parts[-2] in ("skyfield", "jplephem")]
    faults = {fault for path in libraries for fault in numpy_faults(path.read_text(encoding="utf-8"))}
    assert faults == set()


@pytest.mark.parametrize(
    ("source", "fault"),
    [
        ("import numpy as np\nnp.unwrap(a, period=6.3)", "numpy.unwrap(period=)"),  # numpy 1.21
        ("import numpy as np\nnp.quantile(a, 0.5, method='lower')", "numpy.quantile(method=)"),  # 1.22
        ("import numpy as np\nnp.trapezoid(a)", "numpy.trapezoid"),  # 2.0
        ("import numpy as np\nnp.linalg.vecdot(a, b)", "numpy.linalg.vecdot"),  # 2.0
        ("from numpy import astype", "numpy.astype"),  # 2.1
        ("import numpy\nnumpy.exceptions.AxisError", "numpy.exceptions"),  # 1.25
    ],
)
def test_a_younger_call_of_numpy_is_seen(source, fault):
    assert numpy_faults(source) == [fault]


# Qt 6


def qgis_style_faults(folder):
    """What flake8 with flake8-qgis finds in our own files."""
    allowed = ",".join(f"{file}:{rule}" for file, rule in ALLOWED_RULES.items())  # from the folder on: a list parted by spaces too
    command = [sys.executable, "-m", "flake8", "--isolated", f"--select={QGIS_RULES}", f"--per-file-ignores={allowed}", "--jobs=1"]
    done = subprocess.run([*command, "--exclude=libs", "."], cwd=folder, capture_output=True, text=True, check=False)
    assert not done.stderr, done.stderr
    return done.stdout.splitlines()


def enum_faults(source):
    """Members of enums that are not named through their enum, as Qt 6 wants it: Qt.AlignLeft for Qt.AlignmentFlag.AlignLeft."""
    tree, known, faults = ast.parse(source), {}, []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.level == 0 and node.module.split(".")[0] in ("qgis", "PyQt5"):
            module = importlib.import_module(node.module)
            known.update((alias.asname or alias.name, getattr(module, alias.name, None)) for alias in node.names)
    for node in ast.walk(tree):
        path = dotted(node) if isinstance(node, ast.Attribute) else None
        if path and path[0] in known:
            owner = known[path[0]]
            for name in path[1:-1]:
                owner = getattr(owner, name, None)
            if isinstance(owner, type) and is_unscoped(owner, getattr(owner, path[-1], None)):
                faults.append(".".join(path))
    return faults


def is_unscoped(owner, member):
    """Whether a member of an enum hangs on a class that is not its enum: as Python's enums, or as those of sip, which are numbers."""
    kind = type(member)
    if isinstance(member, enum.Enum):
        return not issubclass(owner, enum.Enum)
    return isinstance(member, int) and vars(owner).get(kind.__name__) is kind


def pyqt6_faults(source):
    """What PyQt6 does not have: a name, a call with as many arguments, or a function that a class imported here had in PyQt5."""
    tree, known, classes, faults = ast.parse(source), {}, [], []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("qgis.PyQt"):
            module = node.module[len("qgis.PyQt.") :]
            names = PYQT6.get(module, {}) if module else PYQT6
            known.update((alias.asname or alias.name, names[alias.name]) for alias in node.names if alias.name in names)
            faults += [f"{node.module}.{alias.name}" for alias in node.names if alias.name not in names]
            classes += [getattr(importlib.import_module(node.module), alias.name, None) for alias in node.names]
    gone = only_pyqt5(classes)
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute):
            path = dotted(node)
            if path and path[0] in known:
                owner = of_pyqt6(known[path[0]], path[1:-1])
                faults += [".".join(path)] if isinstance(owner, dict) and of_pyqt6(owner, path[-1:]) is MISSING else []
            elif node.attr in gone:
                faults.append(node.attr)
        elif isinstance(node, ast.Call):
            path = dotted(node.func)
            taken = of_pyqt6(known[path[0]], path[1:]) if path and path[0] in known else MISSING
            if isinstance(taken, dict):
                taken = of_pyqt6(taken, ["__init__"])
            given = len(node.args) + len(node.keywords)
            if isinstance(taken, list) and not any(isinstance(one, ast.Starred) for one in node.args):
                fewest, most = taken
                faults += [] if fewest <= given <= (given if most is None else most) else [f"{'.'.join(path)}({given} arguments)"]
    return faults


def of_pyqt6(thing, path):
    """What a path of names leads to within a class of PyQt6, by its bases too."""
    for name in path:
        if not isinstance(thing, dict):
            return MISSING
        thing = thing[name] if name in thing else inherited(thing, name)
    return thing


def inherited(thing, name):
    for base in thing[""]:
        module, _, kind = base.rpartition(".")
        for names in [PYQT6[module.split(".")[-1]]] if module.split(".")[-1] in PYQT6 else PYQT6.values():
            found = of_pyqt6(names[kind], [name]) if isinstance(names.get(kind), dict) else MISSING
            if found is not MISSING:
                return found
    return MISSING


def only_pyqt5(classes):
    """Functions of classes that PyQt5 has here, and nothing of PyQt6 is called so: exec_, and what Qt 6 has dropped."""

    def names(thing):
        return set(thing).union(*(names(inner) for inner in thing.values() if isinstance(inner, dict)))

    functions = {name for kind in classes for name in dir(kind) if inspect.isroutine(getattr(kind, name, None))}
    return {name for name in functions if not name.startswith("_")} - names(PYQT6) | {"exec_"}


def test_flake8_qgis_finds_nothing(installed):
    assert qgis_style_faults(installed) == []


def test_every_enum_is_scoped(own):
    scripts = [*own, *(TOP / "sample_project").glob("*.py")]
    assert [(path.name, fault) for path in scripts for fault in enum_faults(path.read_text(encoding="utf-8"))] == []


def test_pyqt6_has_every_name_of_qt(own):
    """But for QVariant.Type, of which QGIS before 3.38 makes fields: a branch that Qt 6 does not reach."""
    scripts = [*own, *(TOP / "sample_project").glob("*.py")]
    faults = {(path.name, fault) for path in scripts for fault in pyqt6_faults(path.read_text(encoding="utf-8"))}
    assert faults == {("fields.py", "QVariant.Type")}


@pytest.mark.parametrize(
    ("source", "fault"),
    [
        ("from qgis.PyQt.QtGui import QFontDatabase\nQFontDatabase().families()", "QFontDatabase(0 arguments)"),
        ("from qgis.PyQt.QtWidgets import QAction", "qgis.PyQt.QtWidgets.QAction"),  # in QtGui
        ("from qgis.PyQt.QtCore import Qt as Q\nQ.AlignLeft", "Q.AlignLeft"),
        ("from qgis.PyQt.QtCore import Qt\nQt.ItemDataRole.BackgroundColorRole", "Qt.ItemDataRole.BackgroundColorRole"),
        ("from qgis.PyQt.QtCore import QDateTime\nQDateTime.fromTime_t(0)", "QDateTime.fromTime_t"),
        ("from qgis.PyQt.QtCore import QDateTime\nmoment.toTime_t()", "toTime_t"),
        ("dialog.exec_()", "exec_"),
    ],
)
def test_what_pyqt6_does_not_have_is_seen(source, fault):
    assert pyqt6_faults(source) == [fault]


def test_what_pyqt6_has_is_let_be():
    source = """
from qgis.PyQt import sip
from qgis.PyQt.QtCore import QDateTime, QTimer, Qt
from qgis.PyQt.QtGui import QFont, QFontDatabase, QImage, QPdfWriter
QFontDatabase.families(), QFont("a", 12, QFont.Weight.Bold), QImage.Format.Format_RGB32, QPdfWriter.staticMetaObject, sip.isdeleted(1)
QDateTime.fromString("a", Qt.DateFormat.ISODate).toString(), QTimer.singleShot(1, print), QTimer(*given)
"""
    assert pyqt6_faults(source) == []


def test_what_qt_6_would_not_take_is_seen(tmp_path):
    (tmp_path / "bad.py").write_text("from PyQt5.QtCore import Qt\n\nprint(Qt.AlignmentFlag.AlignLeft)\n")
    assert ["QGS103" in fault for fault in qgis_style_faults(tmp_path)] == [True]
    source = """
from qgis.core import QgsMapLayer, QgsProcessing as P
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QImage
good = Qt.AlignmentFlag.AlignLeft, P.SourceType.TypeVectorLine, QgsMapLayer.StyleCategory.Symbology, QImage.fromData, P.TEMPORARY_OUTPUT
bad = Qt.AlignLeft, P.TypeVectorLine, QgsMapLayer.Symbology, QImage.Format_ARGB32
"""
    assert enum_faults(source) == ["Qt.AlignLeft", "P.TypeVectorLine", "QgsMapLayer.Symbology", "QImage.Format_ARGB32"]


# what it claims


def test_the_metadata_tell_what_the_format_asks_for():
    """The table of metadata in QGIS's PyQGIS Cookbook (from memory): what must be there, and that each value is its own line's."""
    parser = configparser.ConfigParser()
    parser.read(TOP / "metadata.txt", encoding="utf-8")
    general = dict(parser["general"])
    asked = "name qgisminimumversion description about version author email homepage repository tracker tags category icon changelog"
    assert [key for key in asked.split() if not general.get(key)] == []
    assert "\n" not in general["description"]
    assert {general[key] for key in ("experimental", "deprecated", "server")} == {"False"}
    assert general["changelog"].startswith(general["version"])
    if "example.org" in general["homepage"]:
        assert "placeholders" in general["about"]  # who installs it is not sent to an address where nobody is


def test_the_metadata_claim_what_ran(installed, release):
    lines = (installed / "metadata.txt").read_text(encoding="utf-8").splitlines()
    claims = dict(line.split("=", 1) for line in lines if re.match(r"\w+=", line))
    assert (claims["qgisMinimumVersion"], claims["qgisMaximumVersion"]) == ("3.22", "3.99")
    assert "supportsQt6" not in claims
    assert (installed / claims["icon"]).is_file()
    assert (installed / "LICENSE").read_text(encoding="utf-8") == (TOP / "LICENSE").read_text(encoding="utf-8")
    with zipfile.ZipFile(release) as archive:
        assert archive.testzip() is None
        assert {info.external_attr >> 16 for info in archive.infolist()} == {0o100644}  # plain files, none of them executable
