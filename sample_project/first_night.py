"""Run the commands of docs/first-night.md and draw its pictures from what they gave.

Run with a Python that can import QGIS, after run.sh: build/venv/bin/python sample_project/first_night.py [RESULTS] [PICTURES]
"""

import importlib.util
import sys
from pathlib import Path

import gallery
from qgis.core import QgsApplication, QgsProject
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QImage

DOCS = gallery.TOP / "docs"
PAGE = DOCS / "first-night.md"
BENCH, BENCH_SIZE = gallery.SOUTH, (840, 714)
AROUND_THE_RUIN, RUIN_SIZE = (499410.0, 3982128.0, 499670.0, 3982310.0), (840, 588)
VIEW_WIDTH, SEASON_WIDTH = 1000, 1100


def commands_of_documents():
    """docs/run_commands.py, which is no package."""
    spec = importlib.util.spec_from_file_location("run_commands", DOCS / "run_commands.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def narrowed(file, width):
    """A picture of the plugin's, as wide as a page shows it."""
    return QImage(str(file)).scaledToWidth(width, Qt.TransformationMode.SmoothTransformation).convertToFormat(QImage.Format.Format_RGB32)


def draw(results, pictures):
    """A picture for each step."""
    project = QgsProject.instance()
    project.read(str(results / "sample_project" / "reserve.qgz"))
    subjects, cameras, paths, closed = (project.mapLayersByName(name)[0] for name in ("subjects", "cameras", "paths", "closed"))

    narrowed(next((results / "season").glob("*.png")), SEASON_WIDTH).save(str(pictures / "1-which-night.png"))
    image = gallery.drawn_map([subjects, cameras, gallery.result(results, "sightlines")], BENCH, BENCH_SIZE)
    gallery.legend(image)
    gallery.with_fewer_colours(image).save(str(pictures / "2-in-sight.png"), "PNG", 0)
    image = gallery.drawn_map([subjects, cameras, gallery.result(results, "alignments")], BENCH, BENCH_SIZE)
    gallery.with_fewer_colours(image).save(str(pictures / "3-when.png"), "PNG", 0)
    ways = [gallery.result(results, name) for name in ("standpoints", "zones")]
    image = gallery.drawn_map([ways[0], subjects, *ways[1:], paths, closed], AROUND_THE_RUIN, RUIN_SIZE)
    gallery.with_fewer_colours(image).save(str(pictures / "4-where.png"), "PNG", 0)
    narrowed(next((results / "view").glob("*.png")), VIEW_WIDTH).save(str(pictures / "5-view.png"))


def main(results, pictures):
    """Run, then draw, in a QGIS that ends after the last layer is gone."""
    results.mkdir(parents=True, exist_ok=True)
    pictures.mkdir(exist_ok=True)
    print(commands_of_documents().run(PAGE, results))
    application = QgsApplication([], False)
    application.initQgis()
    draw(results, pictures)
    QgsProject.instance().clear()
    application.exitQgis()


if __name__ == "__main__":
    given = [Path(text).resolve() for text in sys.argv[1:]]
    main(*(given + [gallery.TOP / "build" / "first_night", DOCS / "first_night"][len(given) :]))
