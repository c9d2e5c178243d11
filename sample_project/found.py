"""Find the alignments that the project shows, found.gpkg: three nights of the reserve, each camera with the subjects of its sector.

Run with a Python that can import QGIS and the staged plugin, after build.py: PYTHONPATH=build/stage python3 sample_project/found.py
The same bytes each time with the same QGIS.
"""

import os
import shutil
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["GDAL_PAM_ENABLED"] = "NO"  # no statistics file beside the DEM

import demo
from osgeo import gdal
from qgis.core import QgsApplication, QgsProcessingContext, QgsProcessingFeedback, QgsProject, QgsVectorFileWriter

from skyalidade.plugin import SkyAlidade

HERE = Path(__file__).resolve().parent
FOUND = HERE / "found.gpkg"
NIGHTS = {"FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-07", "GAP_MIN": 0, "BODIES": ["core", "arch"]}
DATA_DATE = "2027-01-01T00:00:00.000Z"  # written into the GeoPackage in place of the moment of the run


def find(folder):
    """Run `alignments` over a copy of the reserve: QGIS leaves its mark in a GeoPackage that it opens. Keep what was found."""
    copy = shutil.copy(HERE / "reserve.gpkg", folder)
    layers = {name: f"{copy}|layername={name.lower()}" for name in ("CAMERAS", "SUBJECTS")}
    asked = {**demo.RESERVE, **demo.OF_ONE_SECTOR, **NIGHTS, **layers, "DEM": str(demo.RESERVE["DEM"]), "OUTPUT": "memory:"}
    context = QgsProcessingContext()
    algorithm = QgsApplication.processingRegistry().createAlgorithmById("skyalidade:alignments")
    results, done = algorithm.run(asked, context, QgsProcessingFeedback())
    if not done:
        sys.exit("The run failed: see what is written above.")
    gdal.SetConfigOption("OGR_CURRENT_DATE", DATA_DATE)
    FOUND.unlink(missing_ok=True)
    options = QgsVectorFileWriter.SaveVectorOptions()
    options.driverName, options.layerName = "GPKG", "alignments"
    found = context.getMapLayer(results["OUTPUT"])
    error, text, *_ = QgsVectorFileWriter.writeAsVectorFormatV3(found, str(FOUND), QgsProject.instance().transformContext(), options)
    if error != QgsVectorFileWriter.WriterError.NoError:
        sys.exit(text)


def main():
    """In a QGIS that ends after the last layer is gone."""
    application = QgsApplication([], False)
    application.initQgis()
    plugin = SkyAlidade(None)
    plugin.initProcessing()
    with tempfile.TemporaryDirectory() as folder:
        find(folder)
    plugin.unload()
    application.exitQgis()


if __name__ == "__main__":
    main()
