"""Run the commands that a document shows, one after the other, in a folder that holds a copy of the sample.

`build/venv/bin/python docs/run_commands.py docs/recipes.md [FOLDER]`; the tests run them too, so that what the documents show works.
"""

import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

TOP = Path(__file__).resolve().parents[1]
STAGE = TOP / "build" / "stage"
# Debian 12's qgis_process is a wrapper that fails; what it wraps works.
SHELL = 'set -e\nqgis_process() { "$QGIS_PROCESS" "$@" || { echo "failed: $*" >&2; exit 1; }; }\npython3() { "$PYTHON" "$@"; }\n'


def blocks(page):
    """The pieces of a document that can be run: [("sh" or "python", text), ...]."""
    return re.findall(r"^```(sh|python)\n(.*?)^```$", page.read_text(encoding="utf-8"), flags=re.M | re.S)


def environment(home):
    """An environment in which QGIS meets a profile that knows nothing but this plugin."""
    settings = home / "profiles" / "default" / "QGIS" / "QGIS3.ini"
    settings.parent.mkdir(parents=True, exist_ok=True)
    settings.write_text("[PythonPlugins]\nskyalidade=true\n[qgis]\nwalForSqlite3=false\n", encoding="utf-8")
    return {
        **{name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "VIRTUAL_ENV")},
        "HOME": str(home),
        "XDG_CONFIG_HOME": str(home),
        "XDG_RUNTIME_DIR": str(home),
        "QGIS_CUSTOM_CONFIG_PATH": str(home),
        "QGIS_PLUGINPATH": str(STAGE),
        "QGIS_PROCESS": os.environ.get("QGIS_PROCESS") or shutil.which("qgis_process.bin") or shutil.which("qgis_process"),
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHON": sys.executable,
    }


def run(page, folder):
    """Run all of a document; what it wrote is in the folder. The text of all runs, or CalledProcessError with it."""
    sample = folder / "sample_project"
    if not sample.exists():
        shutil.copytree(TOP / "sample_project", sample)
    said = []
    with tempfile.TemporaryDirectory() as home:
        for language, text in blocks(page):
            command = ["sh", "-c", SHELL + text] if language == "sh" else [sys.executable, "-c", text]
            done = subprocess.run(command, cwd=folder, env=environment(Path(home)), capture_output=True, text=True, check=False)
            said.append(done.stdout)
            if done.returncode:
                raise subprocess.CalledProcessError(done.returncode, text, "".join(said), done.stderr)
    return "".join(said)


def main(page, folder=None):
    """Run a document and tell what was said."""
    with tempfile.TemporaryDirectory() as own:
        folder = Path(folder or own)
        folder.mkdir(parents=True, exist_ok=True)
        try:
            print(run(Path(page), folder))
        except subprocess.CalledProcessError as wrong:
            sys.exit(f"{wrong.stdout}\n{wrong.stderr}\n{wrong.cmd}\nfailed.")


if __name__ == "__main__":
    main(*sys.argv[1:])
