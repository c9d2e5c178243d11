"""The rules of the house that no single module can see: who may import whom, and that no algorithm comes without its company.

Each rule is a function that returns complaints, so that it can be shown a fault as well as the plugin.
"""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[1]
PLUGIN = TOP / "plugin"

# What travels with the plugin, and what every QGIS brings. Anything else, a test dependency above all, is not there at run time.
PURE_LIBRARIES = sys.stdlib_module_names | {"numpy", "pyproj", "skyfield", "jplephem"}
QGIS_LIBRARIES = PURE_LIBRARIES | {"qgis", "osgeo", "processing"}
# What the person who runs batches adds to a Python; no other part may ask for it.
BATCH_LIBRARIES = {"dask", "distributed", "psutil", "pyarrow", "pyogrio", "rasterio", "shapely"}  # psutil comes with distributed

# Arrows run one way: algorithms -> adapters, plan; plan -> sky, ground, lens. Everyone may read the names.
MAY_IMPORT = {
    "names": set(),
    "words": set(),
    "libraries": set(),
    "sky": {"names", "words", "libraries"},
    "ground": {"names", "words", "libraries"},
    "lens": {"names", "words", "libraries"},
    "plan": {"names", "words", "libraries", "sky", "ground", "lens"},
    "adapters": {"names", "words", "plan"},
    "charts": {"names"},
    "algorithms": {"names", "plan", "adapters", "charts"},
    "batch": {"names", "plan"},
    "provider": {"names", "adapters", "algorithms"},
    "expressions": {"names", "plan", "adapters"},
    "plugin": {"provider", "expressions", "adapters"},
    "__init__": {"plugin"},
    "package": set(),
}
PURE = {"names", "words", "libraries", "sky", "ground", "lens", "plan"}
# The scripts that make the data beside them need libraries that are not there at run time; they are no part of the package.
MODULES = [path.relative_to(PLUGIN) for path in sorted(PLUGIN.rglob("*.py")) if not path.name.startswith("make_")]
STEMS = sorted(path.stem for path in (PLUGIN / "algorithms").glob("*.py") if not path.stem.startswith("_"))


def part(module):
    """Name the part of the house a module is in: its folder, or itself at the top of the package."""
    return module.parts[0] if len(module.parts) > 1 else module.stem


def imported(source, module):
    """Yield what a module imports: ("numpy", None) for a library, (None, "sky") for a part of the plugin."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from ((alias.name.split(".")[0], None) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            yield node.module.split(".")[0], None
        elif isinstance(node, ast.ImportFrom):
            package = (*module.parent.parts, "")[: len(module.parts) - node.level]
            path = [name for name in (*package, *(node.module or "").split(".")) if name]
            yield from ((None, path[0]) for _ in node.names) if path else ((None, alias.name) for alias in node.names)


def import_faults(source, module):
    here = part(module)
    libraries = PURE_LIBRARIES if here in PURE else QGIS_LIBRARIES
    if here == "batch":
        libraries = PURE_LIBRARIES | BATCH_LIBRARIES
    if here == "package":
        libraries = PURE_LIBRARIES | {"make_qm"}  # beside it in the checkout, when it runs as a script
    if here == "charts":
        libraries = PURE_LIBRARIES | {"matplotlib"}
    faults = []
    for library, other in imported(source, module):
        if library and library not in libraries:
            faults.append(f"{module} imports {library}")
        if other and other != here and other not in MAY_IMPORT[here]:
            faults.append(f"{module}: {here} may not import {other}")
    return faults


def company_faults(stem, top):
    company = [f"plugin/help/{stem}.html", f"docs/algorithms/{stem}.md", f"tests/algorithms/test_{stem}.py"]
    return [f"{stem} lacks {name}" for name in company if not (top / name).is_file()]


def ruff_faults(source, module):
    """Judge a source text as if it stood in a file of the checkout."""
    command = [sys.executable, "-m", "ruff", "check", "--output-format=concise", f"--stdin-filename={module}", "-"]
    return subprocess.run(command, input=source, cwd=TOP, capture_output=True, text=True, check=False).stdout


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_imports(module):
    assert import_faults((PLUGIN / module).read_text(encoding="utf-8"), module) == []


@pytest.mark.parametrize(
    ("module", "source", "fault"),
    [
        ("sky/bodies.py", "from qgis.core import QgsPointXY", "imports qgis"),
        ("ground/dem.py", "def read():\n    import osgeo.gdal", "imports osgeo"),
        ("names.py", "from PyQt5 import QtCore", "imports PyQt5"),
        ("plan/alignments.py", "import astropy.time", "imports astropy"),
        ("plan/alignments.py", "from skyalidade.sky import bodies", "imports skyalidade"),
        ("plan/alignments.py", "from plugin import names", "imports plugin"),
        ("sky/bodies.py", "from ..plan import nights", "sky may not import plan"),
        ("sky/bodies.py", "from .. import plan", "sky may not import plan"),
        ("lens/frames.py", "from ..adapters.crs import to_wgs84", "lens may not import adapters"),
        ("plan/nights.py", "from ..algorithms import _nights", "plan may not import algorithms"),
        ("adapters/crs.py", "from ..sky import bodies", "adapters may not import sky"),
        ("algorithms/sightlines.py", "from ..ground.geodesic import inverse", "algorithms may not import ground"),
        ("names.py", "from .sky import bodies", "names may not import sky"),
        ("charts/views.py", "import qgis", "imports qgis"),
        ("charts/views.py", "from ..plan import view", "charts may not import plan"),
        ("plan/view.py", "import matplotlib", "imports matplotlib"),
        ("plan/nights.py", "import dask", "imports dask"),
        ("adapters/sinks.py", "import pyarrow", "imports pyarrow"),
        ("batch/work.py", "from qgis.core import QgsFeature", "imports qgis"),
        ("batch/terrain.py", "from osgeo import gdal", "imports osgeo"),
        ("batch/nights.py", "from ..adapters.sites import read_sites", "batch may not import adapters"),
        ("batch/nights.py", "from ..sky import arcs", "batch may not import sky"),
    ],
)
def test_a_forbidden_import_is_seen(module, source, fault):
    assert [fault in line for line in import_faults(source, Path(module))] == [True]


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("sky/bodies.py", "import numpy as np\nfrom . import times\nfrom .times import DAY_S\nfrom ..names import BODIES"),
        ("plan/alignments.py", "from ..sky.crossings import crossings\nfrom .. import names"),
        ("algorithms/sightlines.py", "from qgis.core import QgsFeature\nfrom ..plan.sightlines import sightlines"),
        ("plugin.py", "from .provider import SkyAlidadeProvider"),
    ],
)
def test_a_proper_import_is_let_pass(module, source):
    assert import_faults(source, Path(module)) == []


@pytest.mark.parametrize("stem", STEMS or ["no algorithm at all"])
def test_every_algorithm_has_help_page_and_test(stem):
    assert company_faults(stem, TOP) == []


def test_a_missing_companion_is_seen(tmp_path):
    (tmp_path / "docs" / "algorithms").mkdir(parents=True)
    (tmp_path / "docs" / "algorithms" / "sightlines.md").touch()
    assert company_faults("sightlines", tmp_path) == [
        "sightlines lacks plugin/help/sightlines.html",
        "sightlines lacks tests/algorithms/test_sightlines.py",
    ]


@pytest.mark.parametrize("folder", ["sky", "ground", "lens", "plan"])
@pytest.mark.parametrize(
    ("source", "rule"),
    [
        ('"""Times."""\n\n\ndef night(t_utc):\n    return t_utc\n', "D103"),  # a public function without a docstring
        ('"""Times."""\n\nfrom datetime import datetime\n\nNOW = datetime.now()\n', "DTZ005"),  # a naive datetime
    ],
)
def test_ruff_is_set_to_see(folder, source, rule):
    assert rule in ruff_faults(source, f"plugin/{folder}/times.py")


def test_ruff_lets_units_keep_their_case():
    source = '"""Air."""\n\n\ndef density(pressure_hPa):\n    """[kg/m3]."""\n    return pressure_hPa\n'
    assert "All checks passed" in ruff_faults(source, "plugin/sky/air.py")
