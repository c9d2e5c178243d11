"""Text on a sheet: how long it is, where its lines break, and what no font of the computer can draw.

Lines are broken here, not by the layout, so that every version of QGIS breaks them at the same place and none is cut.
"""

from qgis.PyQt.QtCore import QPointF, Qt
from qgis.PyQt.QtGui import QFont, QFontInfo, QFontMetricsF, QTextLayout, QTextOption

FALLBACK = "DejaVu Sans"
SCALE = 20.0  # pixels to a point: fine enough that hinting does not round widths
POINT_MM = 25.4 / 72.0
SLACK = 1.03  # a printer's font is up to this much wider than measured
NO_LIGATURES = 0.05  # pixels between letters: without any Qt joins f and i, and who searches the PDF does not find them
TOGETHER = "\u00a0"  # a space at which no line is broken
ROUNDING_MM = 0.05  # a column as wide as its text must not break it
READING = Qt.LayoutDirection.LeftToRight  # of sentences; a name that begins one and is written the other way does not turn it round
LEADING = 1.22  # from line to line, of the size of the letters


def plain(text):
    """A text as one line without signs that cannot be shown, or that turn the direction of others."""
    shown = "".join(letter if letter.isprintable() or letter == TOGETHER else " " for letter in text)
    return " ".join(word for word in shown.split(" ") if word)


def is_installed(family):
    """Whether the computer draws a family of fonts by itself, not another in its place."""
    return QFontInfo(QFont(family)).family().split(" [")[0].lower() == family.lower()


def installed(font):
    """The font, or DejaVu Sans where the computer has none of its family."""
    if is_installed(font.family()) or not is_installed(FALLBACK):
        return font
    other = QFont(font)
    other.setFamily(FALLBACK)
    return other


class Letters:
    """A font in a size.

    Attributes
    ----------
    font : QFont
    size_pt : float
    line_mm : float
        From line to line.
    """

    def __init__(self, font, size_pt, bold=False):
        self.font, self.size_pt, self.bold = QFont(font), size_pt, bold
        self.font.setPointSizeF(size_pt)
        self.font.setBold(bold)
        self.line_mm = size_pt * LEADING * POINT_MM
        self._ruler = QFont(self.font)
        self._ruler.setLetterSpacing(QFont.SpacingType.AbsoluteSpacing, NO_LIGATURES)
        self._ruler.setPixelSize(int(round(size_pt * SCALE)))
        self._metrics = QFontMetricsF(self._ruler)

    def in_size(self, size_pt):
        return Letters(self.font, size_pt, self.bold)

    def as_bold(self):
        return Letters(self.font, self.size_pt, True)

    def width_mm(self, text):
        """Width of one line."""
        return self._metrics.horizontalAdvance(text) / SCALE * POINT_MM * SLACK

    def word_mm(self, text):
        """Width of the longest word."""
        return max((self.width_mm(word) for word in text.split(" ")), default=0.0)

    def lines(self, text, width_mm):
        """The lines of a text within a width: broken between words, within them where they are longer than a line."""
        broken = []
        for paragraph in text.splitlines():
            broken += self._broken(plain(paragraph), width_mm)
        return broken or [""]

    def _broken(self, paragraph, width_mm):
        if self.width_mm(paragraph) <= width_mm + ROUNDING_MM:
            return [paragraph]
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        option.setTextDirection(READING)
        layout = QTextLayout(paragraph, self._ruler)
        layout.setTextOption(option)
        layout.beginLayout()
        lines = []
        encoded = paragraph.encode("utf-16-le")  # Qt counts in halves of letters
        while True:
            line = layout.createLine()
            if not line.isValid():
                break
            line.setLineWidth(max(width_mm / POINT_MM / SLACK * SCALE, 1.0))
            line.setPosition(QPointF(0.0, 0.0))
            first = 2 * line.textStart()
            lines.append(encoded[first : first + 2 * line.textLength()].decode("utf-16-le", "replace").strip())
        layout.endLayout()
        return lines

    def fitted(self, text, width_mm, height_mm, least_pt):
        """Letters small enough, and the lines, that a text fits into a box; where it does not even in the least size its end is dots."""
        size_pt = self.size_pt
        while True:
            letters = self.in_size(size_pt)
            lines, room = letters.lines(text, width_mm), max(1, int(height_mm / letters.line_mm + 0.05))
            if len(lines) <= room or size_pt <= least_pt:
                return letters, lines[:room] if len(lines) <= room else letters.elided(lines, room, width_mm)
            size_pt = max(least_pt, size_pt - 0.5)

    def elided(self, lines, room, width_mm):
        """The first lines, the last of them ending in dots."""
        last = " ".join(lines[room - 1 :])
        while last and self.width_mm(last + "…") > width_mm:
            last = last[:-1]
        return [*lines[: room - 1], last.rstrip() + "…"]

    def paint(self, painter, x_mm, y_mm, width_mm, text, right=False):
        """Paint one line, its upper left corner or, to the right, its upper right one, given; the painter's unit is the millimetre."""
        painter.save()
        painter.translate(x_mm, y_mm)
        painter.scale(POINT_MM / SCALE, POINT_MM / SCALE)
        painter.setFont(self._ruler)
        painter.setLayoutDirection(READING)
        left = width_mm / POINT_MM * SCALE - self._metrics.horizontalAdvance(text) if right else 0.0
        painter.drawText(QPointF(left, self._metrics.ascent()), text)
        painter.restore()

    def undrawable(self, text):
        """Letters of a text for which the computer has no font, in the order in which they come."""
        return [letter for letter in dict.fromkeys(text) if ord(letter) > 0x7F and letter.isprintable() and not self._is_drawn(letter)]

    def _is_drawn(self, letter):
        layout = QTextLayout(letter, self._ruler)
        layout.beginLayout()
        layout.createLine()
        layout.endLayout()
        return all(index != 0 for run in layout.glyphRuns() for index in run.glyphIndexes())
