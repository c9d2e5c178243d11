"""The plugin under test is staged from this checkout and imported by the name under which it is installed."""

import gc
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[1]
STAGE = TOP / "build" / "stage"

subprocess.run([sys.executable, TOP / "plugin" / "package.py", "--link", STAGE], check=True, stdout=subprocess.DEVNULL)
sys.path.insert(0, str(STAGE))

import skyalidade.libraries  # noqa: E402, F401  # the tests' reference is the Skyfield that ships

SESSION = pytest.StashKey()


def pytest_sessionstart(session):
    session.config.stash[SESSION] = session


@pytest.hookimpl(tryfirst=True)
def pytest_sessionfinish():
    """QGIS is closed by now, and crashes when Python lets go of layers that a failed test still holds: let them be."""
    gc.disable()


@pytest.hookimpl(tryfirst=True)
def pytest_unconfigure(config):
    """For the same reason leave with the verdict of the tests at once."""
    if SESSION in config.stash and "qgis.core" in sys.modules:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(int(config.stash[SESSION].exitstatus))


@pytest.fixture(scope="session", autouse=True)
def still_canvas(qgis_canvas):
    """No map behind the tests: pytest-qgis's draws the project in threads, and QGIS crashes when that is cleared meanwhile."""
    qgis_canvas.setRenderFlag(False)


@pytest.fixture(scope="session")
def package():
    """The module `plugin/package.py`."""
    spec = importlib.util.spec_from_file_location("package", TOP / "plugin" / "package.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="session")
def release(package, tmp_path_factory):
    """The release zip."""
    file = tmp_path_factory.mktemp("release") / "skyalidade.zip"
    package.write_zip(file)
    return file


@pytest.fixture
def qgis_process(tmp_path_factory):
    """Run qgis_process for a user who has nothing but this plugin: `qgis_process("run", "skyalidade:sightlines", ...)`."""
    home = tmp_path_factory.mktemp("home")
    settings = home / "qgis" / "profiles" / "default" / "QGIS" / "QGIS3.ini"
    settings.parent.mkdir(parents=True)
    settings.write_text("[PythonPlugins]\nskyalidade=true\n")
    # Debian 12's qgis_process is a wrapper that fails; what it wraps works.
    program = shutil.which("qgis_process.bin") or shutil.which("qgis_process")

    def run(*arguments, plugins=STAGE, **variables):
        user = {"HOME": home, "XDG_CONFIG_HOME": home / ".config", "QGIS_CUSTOM_CONFIG_PATH": home / "qgis", "QGIS_PLUGINPATH": plugins}
        environment = {**os.environ, **user, "QT_QPA_PLATFORM": "offscreen", **variables}
        return subprocess.run([program, *arguments], env=environment, cwd=home, capture_output=True, text=True, check=False)

    return run
