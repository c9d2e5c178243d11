"""Layouts printed: as pages of a PDF whose text stays text, and as pictures."""

import errno
from os import SEEK_END

from qgis.core import Qgis, QgsLayoutExporter, QgsLayoutRenderContext
from qgis.PyQt.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QSizeF
from qgis.PyQt.QtGui import QPageLayout, QPageSize, QPainter, QPdfWriter

from .translation import tr

END, END_BYTES = b"%%EOF", 64
DPI, PICTURE_DPI, INCH_MM = 300, 150, 25.4


class Pdf:
    """A PDF to which layouts are printed one after the other."""

    def __init__(self, path, title, creator):
        self._writer = QPdfWriter(str(path))
        self._writer.setResolution(DPI)
        self._writer.setTitle(title)
        self._writer.setCreator(creator)
        self._painter = None

    def add(self, page, go_on):
        """Print the pages of a `sheet_page.Page`; False where it was told to stop.

        Raises
        ------
        OSError
            The file cannot be written.
        """
        prepare(page.layout, DPI)
        exporter = QgsLayoutExporter(page.layout)
        for number in range(page.pages):
            if not go_on():
                return False
            self._turn(page.layout.pageCollection().page(number))
            exporter.renderPage(self._painter, number)
            page.paint(self._painter, number, DPI / INCH_MM)
        return True

    def _turn(self, page):
        size = page.rect()  # in millimetres, whatever unit the template has for it
        paper = QPageSize(QSizeF(size.width(), size.height()), QPageSize.Unit.Millimeter, "", QPageSize.SizeMatchPolicy.ExactMatch)
        self._writer.setPageLayout(QPageLayout(paper, QPageLayout.Orientation.Portrait, QMarginsF(0.0, 0.0, 0.0, 0.0)))
        if self._painter is None:
            self._painter = QPainter()
            begun = self._painter.begin(self._writer)
        else:
            begun = self._writer.newPage()
        if not begun:
            raise OSError(errno.EIO, tr("the system does not let it be written"))

    def close(self):
        """Finish the file."""
        if self._painter is not None and self._painter.isActive():
            self._painter.end()


def check_whole(path):
    """Raise OSError where a PDF has no end: the disk was full."""
    with open(path, "rb") as file:
        file.seek(-min(END_BYTES, file.seek(0, SEEK_END)), SEEK_END)
        if END not in file.read():
            raise OSError(errno.ENOSPC, tr("the file is not whole; the disk may be full"))


def prepare(layout, dpi):
    """Have a layout drawn for print."""
    context = layout.renderContext()
    context.setDpi(dpi)
    context.setTextRenderFormat(Qgis.TextRenderFormat.AlwaysText)
    context.setFlag(QgsLayoutRenderContext.Flag.FlagAntialiasing, True)
    context.setFlag(QgsLayoutRenderContext.Flag.FlagUseAdvancedEffects, True)


def pictures(page):
    """The pages of a `sheet_page.Page` as PNG, one after the other."""
    prepare(page.layout, PICTURE_DPI)
    exporter = QgsLayoutExporter(page.layout)
    for number in range(page.pages):
        image = exporter.renderPageToImage(number, dpi=PICTURE_DPI)
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        page.paint(painter, number, PICTURE_DPI / INCH_MM)
        painter.end()
        content = QByteArray()
        file = QBuffer(content)
        file.open(QIODevice.OpenModeFlag.WriteOnly)
        image.save(file, "PNG")
        yield content.data()
