"""The pure-Python libraries that travel with the plugin: importing this module makes Skyfield importable."""

import sys
from pathlib import Path

FOLDER = str(Path(__file__).parent / "libs")

if FOLDER not in sys.path:
    sys.path.append(FOLDER)  # last: it may never hide a library of QGIS or of another plugin
