"""Draw the pictures of docs/gallery from what the demo wrote.

Run with a Python that can import QGIS, after run.sh: build/venv/bin/python sample_project/gallery.py [RESULTS] [PICTURES]
"""

import os
import shutil
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["GDAL_PAM_ENABLED"] = "NO"  # no statistics file beside the DEM

import numpy as np
from qgis.core import (
    QgsApplication,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsProcessingContext,
    QgsProcessingFeedback,
    QgsProject,
    QgsRasterLayer,
    QgsRectangle,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QPointF, QRectF, QSize, Qt
from qgis.PyQt.QtGui import QColor, QFont, QImage, QPainter, QPen, QPolygonF

HERE = Path(__file__).resolve().parent
TOP = HERE.parent
sys.path.insert(0, str(TOP / "build" / "stage"))
DPI = 110
ISLAND, ISLAND_SIZE = (496400.0, 3980900.0, 504000.0, 3990500.0), (840, 1061)
NORTH, NORTH_SIZE = (496600.0, 3984300.0, 502600.0, 3989600.0), (840, 742)
SOUTH, SOUTH_SIZE = (498150.0, 3980950.0, 501150.0, 3983500.0), (1000, 850)
SITE = "Ferrick Hollow"
SHEET_SITE, SHEET_NIGHT, SHEET_WIDTH = "Fold Pasture", "2027-06-05", 990
HOUR, YEAR = "2027-06-06 23:30:00", ("2027-01-01", "2027-12-31")
COLOURS = 96  # of a map: shaded ground needs no more, and the file is a third as large

INK, GREY, PAPER, GROUND = "#222222", "#6E6E6E", "#FFFFFF", "#D3C8B4"
SKYLINE, CORE, STANDPOINT = "#F0E442", "#CC79A7", "#0072B2"
SHADES = ("#3A372F", "#49463C", "#58554A", "#686558", "#77746A")  # of the steepest ground, of which there is little
CORE_INK = "#8c4f71"  # for text, as in the styles
WINDS = {"N": 0, "NE": 45, "E": 90, "SE": 135, "S": 180, "SW": 225, "W": 270, "NW": 315, "N ": 360}
PLOT, PLOT_SIZE, TOP_DEG, BOTTOM_DEG = QRectF(55, 50, 1110, 330), (1200, 440), 30.0, -3.0


def result(folder, name, where=""):
    """A result of the demo in the look that came with it."""
    layer = QgsVectorLayer(str(folder / f"{name}.gpkg"), name, "ogr")
    if not layer.isValid():
        sys.exit(f"{folder / name}.gpkg is not there. Run sample_project/run.sh first.")
    layer.loadDefaultStyle()
    layer.setSubsetString(where)
    return layer


def drawn_map(layers, view, size):
    """Layers over the project's ground."""
    project = QgsProject.instance()
    ground = [layer for layer in project.layerTreeRoot().layerOrder() if layer.name() in ("ground", "relief")]
    settings = QgsMapSettings()
    for layer in layers:
        layer.styleManager().setCurrentStyle("plain")  # where there is one: cameras without the lines that follow them
    settings.setLayers([*layers, *ground])
    settings.setDestinationCrs(project.crs())
    settings.setExtent(QgsRectangle(*view))
    settings.setOutputDpi(DPI)
    settings.setOutputSize(QSize(*size))
    settings.setLabelingEngineSettings(project.labelingEngineSettings())
    settings.setFlag(QgsMapSettings.Flag.UseRenderingOptimization, False)
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    return job.renderedImage()


def begun(image, points):
    """A painter with the font of the pictures."""
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    font = QFont("DejaVu Sans")
    font.setPixelSize(points)
    painter.setFont(font)
    return painter


def legend(image):
    """What the lines of a map of sightlines mean, in its lower left corner."""
    painter = begun(image, 13)
    lines = [("in sight", 2.4, None), ("too close to the ground to tell", 2.4, [4, 0.8]), ("hidden by terrain", 1.3, [3, 4])]
    box = QRectF(10, image.height() - 88, 290, 78)
    painter.fillRect(box, QColor(255, 255, 255, 225))
    for row, (text, width, dash) in enumerate(lines):
        y = box.top() + 18 + 22 * row
        pen = QPen(QColor(INK), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        if dash:
            pen.setDashPattern(dash)
        painter.setPen(pen)
        painter.drawLine(QPointF(box.left() + 10, y), QPointF(box.left() + 58, y))
        painter.setPen(QColor(INK))
        painter.drawText(QPointF(box.left() + 68, y + 5), text)
    painter.end()


def at(az_deg, alt_deg):
    """A direction's place on the plot."""
    right, down = az_deg / 360.0, (TOP_DEG - alt_deg) / (TOP_DEG - BOTTOM_DEG)
    return QPointF(PLOT.left() + right * PLOT.width(), PLOT.top() + down * PLOT.height())


def drawn_skyline(profile, positions):
    """The skyline over azimuth, and where the core stands against it through a night."""
    image = QImage(QSize(*PLOT_SIZE), QImage.Format.Format_RGB32)
    image.fill(QColor(PAPER))
    painter = begun(image, 13)
    axes(painter)
    rows = sorted((row["az_deg"], row["ground_deg"]) for row in profile.getFeatures())
    line = [at(az, ground) for az, ground in [*rows, (360.0, rows[0][1])]]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(GROUND))
    painter.drawPolygon(QPolygonF([at(0, BOTTOM_DEG), *line, at(360, BOTTOM_DEG)]))
    for colour, width in ((INK, 4.0), (SKYLINE, 2.0)):
        painter.setPen(QPen(QColor(colour), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
        painter.drawPolyline(QPolygonF(line))
    for row in positions.getFeatures():
        core(painter, row)
    highest = max(rows, key=lambda row: row[1])
    painter.setPen(QColor(INK))
    painter.drawText(at(*highest) + QPointF(-52, -10), f"{highest[1]:.1f}° at {highest[0]:.0f}°")
    painter.drawText(
        QPointF(PLOT.left(), 28), f"{SITE}: the terrain skyline, and the Milky Way's core in the night of 2027-06-06 (UTC-02:00)"
    )
    painter.end()
    return image


def axes(painter):
    """Altitudes and winds."""
    for alt in range(0, int(TOP_DEG) + 1, 10):
        painter.setPen(QPen(QColor("#D0D0D0"), 1))
        painter.drawLine(at(0, alt), at(360, alt))
        painter.setPen(QColor(GREY))
        painter.drawText(
            QRectF(0, at(0, alt).y() - 10, PLOT.left() - 8, 20), Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, f"{alt}°"
        )
    for name, az in WINDS.items():
        painter.setPen(QPen(QColor("#D0D0D0"), 1))
        painter.drawLine(at(az, BOTTOM_DEG), at(az, TOP_DEG))
        painter.setPen(QColor(GREY))
        below = QRectF(at(az, 0).x() - 40, PLOT.bottom() + 8, 80, 20)
        painter.drawText(below, Qt.AlignmentFlag.AlignHCenter, f"{name.strip()} {az % 360}°")


def core(painter, row):
    """A dot where the core stands, open where the ground hides it, with the time at whole hours."""
    place, seen = at(row["az_deg"], row["alt_deg"]), row["alt_deg"] > row["ground_deg"]
    if row["alt_deg"] < BOTTOM_DEG:
        return
    painter.setPen(QPen(QColor(CORE if not seen else PAPER), 1.5))
    painter.setBrush(QColor(CORE) if seen else Qt.BrushStyle.NoBrush)
    painter.drawEllipse(place, 5, 5)
    if row["t_local"][14:16] == "00":
        painter.setPen(QColor(CORE_INK))
        painter.drawText(place + QPointF(-48 if row["az_deg"] < 180 else 12, -4), row["t_local"][11:16])


def with_fewer_colours(image):
    """A map in the colours it holds most of, and those of the styles."""
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    bits = image.constBits()
    bits.setsize(image.sizeInBytes())
    alike = np.frombuffer(bits, dtype="<u4") & 0xFFFCFCFC
    colours, count = np.unique(alike, return_counts=True)
    most = colours[np.argsort(count)[-COLOURS:]].tolist()
    table = [QColor(name).rgb() for name in (INK, PAPER, SKYLINE, STANDPOINT, CORE, CORE_INK, *SHADES)] + most
    return image.convertToFormat(QImage.Format.Format_Indexed8, table, Qt.ImageConversionFlag.ThresholdDither)


def chart(name, folder, **parameters):
    """Run an algorithm of the plugin; the first picture in a folder."""
    from skyalidade.provider import ALGORITHMS

    (algorithm,) = (made for made in ALGORITHMS if name == made.ID)
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    _, done = algorithm().create().run(parameters, context, QgsProcessingFeedback())
    if not done:
        sys.exit(f"{name} failed.")
    return min(folder.glob("*.png"), default=None)


def charts(sample, pictures):
    """What the plugin draws itself: the view of a camera, and the year of a site."""
    layer = f"{sample / 'reserve.gpkg'}|layername="
    site = f"{layer}cameras|subset=name = '{SITE}'"
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        sight = {
            "CAMERAS": site,
            "SUBJECTS": f"{layer}subjects",
            "CAMERA_NAME": "name",
            "SUBJECT_NAME": "name",
            "DEM": str(sample / "dem.tif"),
        }
        measures = {"SUBJECT_HEIGHT": "field:height_m", "SUBJECT_WIDTH": "field:width_m", "MAX_DISTANCE": 5000}
        view = chart("skyline_view", folder / "view", **sight, **measures, START=HOUR, FOCAL_MM=20, FOLDER=str(folder / "view"))
        shutil.copy(view, pictures / "view.png")
        nights = str(folder / "nights.gpkg")
        chart("night_windows", folder, SITES=site, SITE_NAME="name", FIRST_NIGHT=YEAR[0], LAST_NIGHT=YEAR[1], OUTPUT=nights)
        shutil.copy(chart("season_chart", folder / "year", NIGHTS=nights, FOLDER=str(folder / "year")), pictures / "season.png")


def exposure(sample):
    """Hours of a June night in which the core is up, dark and clear of the ridges, over the ground of the island."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        nights = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-30"}
        chart("sky_exposure", folder, DEM=str(sample / "dem.tif"), **nights, OUTPUT=str(folder / "exposure.tif"))
        raster = QgsRasterLayer(str(folder / "exposure.tif"), "exposure")
        image = drawn_map([raster], ISLAND, ISLAND_SIZE)
        painter = begun(image, 13)
        steps = raster.renderer().legendSymbologyItems()
        box = QRectF(10, image.height() - 24 - 22 * len(steps), 116, 14 + 22 * len(steps))
        painter.fillRect(box, QColor(255, 255, 255, 225))
        for row, (text, colour) in enumerate(reversed(steps)):
            swatch = QRectF(box.left() + 10, box.top() + 7 + 22 * row, 34, 22)
            painter.fillRect(swatch, colour)
            painter.setPen(QColor(INK))
            painter.drawText(QPointF(swatch.right() + 10, swatch.center().y() + 5), text)
        painter.end()
    return image


def sheet(sample, results, pictures):
    """The sheet of a site for a permit, its first page."""
    layer = f"{sample / 'reserve.gpkg'}|layername="
    chosen = f"camera = '{SHEET_SITE}' AND night = '{SHEET_NIGHT}' AND body = 'core'"
    given = {
        "ALIGNMENTS": f"{results / 'alignments.gpkg'}|subset={chosen}",
        "CAMERAS": f"{layer}cameras|subset=name = '{SHEET_SITE}'",
        "CAMERA_NAME": "name",
        "SUBJECTS": f"{layer}subjects",
        "SUBJECT_NAME": "name",
        **dict.fromkeys(("PATHS", "WALK"), f"{layer}paths"),
        "WALK_NAME": "name",
        "CLOSED": f"{layer}closed",
        "CLOSED_NAME": "name",
        "CLOSED_FROM": "closed_from",
        "CLOSED_TO": "closed_to",
        "DEM": str(sample / "dem.tif"),
        "TITLE": "Night photography, Quenmar Reserve",
        "APPLICANT": "Ada Example, Example Nightscapes",
        "ACTIVITY": "Night landscapes from tripods; nothing is built, flown or left behind",
        "GROUP_SIZE": "6, and 1 guide",
        "VEHICLES": "2, at the harbour",
        "LIGHTING": "Red headlamps for walking; no light on the subject",
        "CONTACT": "ada@example.org",
        "EMERGENCY": "Reserve office; overdue after 04:00",
        "PERMIT_NO": "applied for",
    }
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        first = chart("site_map", folder / "png", **given, OUTPUT=str(folder / "sheet.pdf"), PICTURES=str(folder / "png"))
        image = QImage(str(first)).scaledToWidth(SHEET_WIDTH, Qt.TransformationMode.SmoothTransformation)
        with_fewer_colours(image).save(str(pictures / "site_map.png"), "PNG", 0)


def draw(sample, results, pictures):
    """All pictures."""
    project = QgsProject.instance()
    project.read(str(sample / "reserve.qgz"))
    names = [project.mapLayersByName(name)[0] for name in ("subjects", "cameras")]
    image = drawn_map([*names, result(results, "sightlines")], ISLAND, ISLAND_SIZE)
    legend(image)
    with_fewer_colours(image).save(str(pictures / "sightlines.png"), "PNG", 0)
    ways = [result(results, name) for name in ("standpoints", "stretches", "track_lines")]
    around = [project.mapLayersByName(name)[0] for name in ("paths", "allowed", "closed")]
    image = drawn_map([ways[0], names[0], *ways[1:], result(results, "zones"), *around], SOUTH, SOUTH_SIZE)
    with_fewer_colours(image).save(str(pictures / "standpoints.png"), "PNG", 0)
    here = f"site = '{SITE}'"
    profile = result(results, "profile", here)
    names[1].setSubsetString(f"name = '{SITE}'")
    image = drawn_map([names[1], profile, result(results, "skyline", here)], NORTH, NORTH_SIZE)
    with_fewer_colours(image).save(str(pictures / "skyline_map.png"), "PNG", 0)
    drawn_skyline(profile, result(results, "sky_positions", f"{here} AND body = 'core'")).save(str(pictures / "skyline.png"))
    with_fewer_colours(exposure(sample)).save(str(pictures / "exposure.png"), "PNG", 0)
    charts(sample, pictures)
    sheet(sample, results, pictures)


def main(results, pictures):
    """Draw, in a QGIS that ends after the last layer is gone."""
    application = QgsApplication([], False)
    application.initQgis()
    with tempfile.TemporaryDirectory() as folder:  # a copy, as QGIS leaves its mark in a GeoPackage that it reads
        draw(Path(shutil.copytree(HERE, Path(folder, "sample"))), results, pictures)
        QgsProject.instance().clear()
    application.exitQgis()


if __name__ == "__main__":
    given = [Path(text) for text in sys.argv[1:]]
    main(*(given + [TOP / "build" / "sample", TOP / "docs" / "gallery"][len(given) :]))
