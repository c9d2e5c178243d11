"""QGIS as a person has it: its window under Xvfb, a clean profile, and the plugin unzipped into it from the release zip.

The window is opened once and driven by session.py; pictures of all that was seen stay in build/desktop.
"""

import contextlib
import json
import os
import shutil
import signal
import subprocess
import zipfile
from pathlib import Path

import pytest
from qgis.PyQt.QtGui import QImage

TOP = Path(__file__).resolve().parents[2]
PICTURES = TOP / "build" / "desktop"
LIMIT_S = 900  # it takes 15 s on a quiet machine
# what QGIS tells on its own account: it looks for a font in the network, and names the version of every project older than itself
QGIS_OWN = ("Open Sans font installation failed", "Network: Host github.com", "This project file was saved by QGIS version 3.22")
# what a person without the tests' environment has
KEPT = {"PATH", "LANG", "LC_ALL", "TMPDIR"}


@contextlib.contextmanager
def screen():
    """A display of its own, whose number the server itself chooses: two that are begun at once do not meet."""
    told, tell = os.pipe()
    command = ["Xvfb", "-displayfd", str(tell), "-screen", "0", "1400x900x24", "-nolisten", "tcp"]
    server = subprocess.Popen(command, pass_fds=[tell], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    os.close(tell)
    try:
        with os.fdopen(told) as number:
            display = number.readline().strip()
        assert display, "Xvfb did not start"
        yield f":{display}"
    finally:
        server.kill()
        server.wait()


def in_a_window(home, pictures, archive):
    """Start QGIS with the zip installed, let session.py do its work, and return its verdict and what QGIS wrote to the terminal."""
    profile = home / "profiles" / "profiles" / "default"
    (profile / "python" / "plugins").mkdir(parents=True)
    with zipfile.ZipFile(archive) as content:
        content.extractall(profile / "python" / "plugins")
    (profile / "QGIS").mkdir()
    (profile / "QGIS" / "QGIS3.ini").write_text("[PythonPlugins]\nskyalidade=true\n[qgis]\nwalForSqlite3=false\n")
    sample = home / "sample"
    shutil.copytree(TOP / "sample_project", sample, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.rmtree(pictures, ignore_errors=True)
    pictures.mkdir(parents=True)
    home.chmod(0o700)  # as a runtime folder must be
    user = {"HOME": home, "XDG_CONFIG_HOME": home / ".config", "XDG_DATA_HOME": home / ".local", "XDG_CACHE_HOME": home / ".cache"}
    asked = {"SKYALIDADE_PICTURES": pictures, "SKYALIDADE_PROJECT": sample / "reserve.qgz"}
    environment = {name: value for name, value in os.environ.items() if name in KEPT}
    environment.update({name: str(value) for name, value in {**user, **asked, "XDG_RUNTIME_DIR": home}.items()})
    options = ["--nologo", "--noversioncheck", "--profiles-path", home / "profiles", "--profile", "default"]
    session = Path(__file__).with_name("session.py")
    command = ["qgis", *options, "--code", session]
    verdict, terminal = pictures / "verdict.json", pictures / "terminal.txt"
    with terminal.open("w") as written, screen() as display:
        # in a process group of its own: `qgis` is a script in some systems, which alone would leave QGIS behind
        how = {"env": {**environment, "DISPLAY": display}, "cwd": home, "stdout": written, "stderr": subprocess.STDOUT}
        started = subprocess.Popen(command, **how, start_new_session=True)
        try:
            started.wait(LIMIT_S)
        except subprocess.TimeoutExpired:
            os.killpg(started.pid, signal.SIGKILL)
            started.wait()
            pytest.fail(
                f"QGIS waited {LIMIT_S} s for a person, as it does where a plugin cannot be loaded:\n{terminal.read_text()[-4000:]}"
            )
    assert verdict.is_file(), f"QGIS ended without a verdict (exit {started.returncode}):\n{terminal.read_text()[-4000:]}"
    return json.loads(verdict.read_text()), terminal.read_text()


def faults(verdict, terminal):
    """What Python, QGIS or the session complained of."""
    told = [text for text in (*verdict["messages"], *verdict["bar"]) if not any(own in text for own in QGIS_OWN)]
    told += [verdict["error"]] if "error" in verdict else []
    return told + [line for line in terminal.splitlines() if "Traceback" in line or "Error:" in line]


@pytest.fixture(scope="module")
def seen(release, tmp_path_factory):
    return in_a_window(tmp_path_factory.mktemp("desktop"), PICTURES, release)


@pytest.fixture(scope="module")
def verdict(seen):
    return seen[0]


def stems():
    return {path.stem for path in (TOP / "plugin" / "algorithms").glob("[a-z]*.py")}


def test_nothing_complains(seen):
    assert faults(*seen) == []


def test_the_plugin_comes_up_with_every_algorithm(verdict):
    assert verdict["plugin"] == "skyalidade.plugin"
    assert stems() <= set(verdict["algorithms"])


def test_every_dialog_opens_with_its_advanced_parameters_folded(verdict):
    assert set(verdict["dialogs"]) == set(verdict["algorithms"])
    assert [name for name, dialog in verdict["dialogs"].items() if not (dialog and dialog["title"])] == []
    assert [name for name, dialog in verdict["dialogs"].items() if not all(dialog["folded"])] == []
    assert verdict["dialogs"]["alignments"]["folded"] == [True]


def test_no_dialog_is_wider_than_its_window(verdict):
    assert [name for name, dialog in verdict["dialogs"].items() if dialog["width"] > dialog["seen"]] == []


def test_the_sample_project_opens(verdict):
    assert verdict["opened"]
    assert {"cameras", "subjects", "paths", "allowed", "closed", "ground"} <= set(verdict["layers"])
    assert all(verdict["layers"].values())


def test_alignments_arrive_styled_and_ready_to_be_played(verdict):
    assert verdict["run"]
    (result,) = verdict["results"]
    assert result["bodies"] == ["core", "moon"]  # both that were chosen: QGIS 3.22 prints '' for them in its log
    assert result["renderer"] == "categorizedSymbol"
    assert {"#cc79a7", "#009e73"} <= set(result["colours"])
    assert result["labels"]
    assert result["temporal"] == [True, "t_start", "t_end"]
    assert result["alias"] == "Time (UTC)"


def test_a_sheet_is_made_over_the_project(verdict):
    """The map of all cameras: its background is the project's, whose relief is multiplied over the ground."""
    assert verdict["sheet"]
    assert (PICTURES / "sheet.pdf").read_bytes().startswith(b"%PDF")
    image = QImage(str(next((PICTURES / "sheets").glob("*-1.png"))))
    dots = image.width() / 210.0
    colours = {image.pixelColor(int(x * dots), int(y * dots)).name() for x in range(18, 150, 3) for y in range(38, 146, 3)}
    assert len(colours) > 200


def test_expressions_know_the_functions(verdict):
    values = verdict["expressions"]
    assert len(values) == 5
    assert all(isinstance(value, float) for value in values.values()), values
    assert values["sight_bearing"] == pytest.approx(0.0, abs=1e-9)  # due north [deg]


def test_the_plugin_is_switched_off_and_on_under_a_map_that_uses_it(verdict):
    """QGIS lives: there would be no verdict otherwise."""
    assert verdict["unloaded"]
    assert verdict["away"]["algorithms"] == 0
    assert all(
        str(value).endswith("the plugin Sky Alidade is not loaded. Switch it on in the plugin manager.")
        for value in verdict["away"]["expressions"].values()
    )
    assert verdict["loaded"]
    assert verdict["back"] == {"expressions": verdict["expressions"], "algorithms": len(verdict["algorithms"])}


def test_pictures_show_something(verdict):
    """An empty window would be one colour, and its file small."""
    pictures = {path.stem: path.stat().st_size for path in PICTURES.glob("*.png")}
    assert {f"dialog_{name}" for name in verdict["algorithms"]} <= set(pictures)
    assert {"project", "alignments", "run_alignments"} <= set(pictures)
    assert [name for name, size in pictures.items() if size < 8_000] == []


@pytest.mark.parametrize(
    ("verdict", "terminal"),
    [
        ({"messages": ["Python error: NameError: name 'ruin' is not defined"], "bar": []}, ""),
        ({"messages": [], "bar": ["The layer cameras could not be found"]}, ""),
        ({"messages": [], "bar": [], "error": "Traceback ..."}, ""),
        ({"messages": [], "bar": []}, "Traceback (most recent call last):"),
        ({"messages": [], "bar": []}, "ModuleNotFoundError: No module named 'ruin'"),
    ],
)
def test_a_complaint_is_seen(verdict, terminal):
    assert len(faults(verdict, terminal)) == 1
