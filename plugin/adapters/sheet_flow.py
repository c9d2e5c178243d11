"""Blocks of text and tables laid out one below the other, from frame to frame: where each line goes. Nothing is cut, nothing overlaps.

Lengths are in mm, from the upper left corner of a frame.
"""

import math
from dataclasses import dataclass, field, replace

from .translation import tr

GAP, PAD, SPACE = 2.0, 0.45, 2.0  # between columns, above and below the lines of a row, above a heading
STRONG, THIN = 0.35, 0.1  # rules
WORD_MM = 26.0  # a longer word is broken where its column is narrow
NARROW_MM = 11.0  # a column of marks, which is left so where there is room
LEAST_MM = 8.0  # of a column, where a table is too wide for its frame
SMALLEST = 0.8  # of the letters' size, to which a table is set smaller before its words are broken
ONE_LINE_PT = 6.4  # size to which it is set smaller where each row then takes one line


@dataclass(frozen=True)
class Heading:
    """A line in bold above what follows."""

    text: str
    rest: str = ""  # beside it, in the common letters


@dataclass(frozen=True)
class Paragraph:
    text: str
    bold: bool = False


@dataclass(frozen=True)
class Table:
    """Rows of cells; `wide` are the columns whose text may be broken, `right` those that stand at their right edge."""

    headings: tuple
    rows: tuple
    wide: tuple = ()
    right: tuple = ()


@dataclass(frozen=True)
class Pairs:
    """Names in bold with what is said of them, in two pairs of columns where there is room."""

    rows: tuple


@dataclass(frozen=True)
class Line:
    """A line of text with its upper left corner and the width it may fill."""

    frame: int
    x: float
    y: float
    width: float
    text: str
    letters: object
    right: bool = False


@dataclass(frozen=True)
class Rule:
    frame: int
    x: float
    y: float
    width: float
    thickness: float


@dataclass
class Flow:
    """Lays blocks out.

    Parameters
    ----------
    letters : sheet_text.Letters
        Of the text.
    sizes : callable
        Width and height of the frame with a number, 0 and on.
    """

    letters: object
    sizes: object
    lines: list = field(default_factory=list)
    rules: list = field(default_factory=list)
    frame: int = 0
    y: float = 0.0

    def __post_init__(self):
        self.bold = self.letters.as_bold()

    @property
    def frames(self):
        """How many frames are used."""
        return 1 + max((own.frame for own in (*self.lines, *self.rules)), default=0)

    def lay(self, blocks):
        """Lay out blocks; a heading stays with the first row of what it heads, where a frame has room for both."""
        for group in _headed(blocks):
            if self.y and self._is_parted(group) and not self._is_parted(group, self.frame + 1):
                self.frame, self.y = self.frame + 1, 0.0
            for block in group:
                self._block(block)

    def _block(self, block):
        if isinstance(block, Heading):
            self._heading(block)
        elif isinstance(block, Paragraph):
            self._paragraph(block)
        elif isinstance(block, Table):
            self._table(block)
        else:
            self._pairs(block)

    def _is_parted(self, group, frame=None):
        """Whether the beginning of a group, as far as its first row, would run over the end of its frame."""
        trial = Flow(self.letters, self.sizes)
        trial.frame, trial.y = (self.frame, self.y) if frame is None else (frame, 0.0)
        begin = trial.frame
        for block in group:
            if isinstance(block, Pairs):
                before = len(trial.lines)
                trial._pairs(block)
                return trial.lines[before].frame != begin
            trial._block(replace(block, rows=block.rows[:1]) if isinstance(block, Table) else block)
            if isinstance(block, Table):
                break
        return trial.frame != begin

    @property
    def _size(self):
        return self.sizes(self.frame)

    def _ask(self, height):
        """Go on in the next frame where there is no room; True where it did."""
        if self.y + height <= self._size[1] or self.y == 0.0:
            return False
        self.frame, self.y = self.frame + 1, 0.0
        return True

    def _heading(self, block):
        self.y += SPACE if self.y else 0.0
        width = self._size[0]
        self._write(self.bold.lines(block.text, width), self.bold, 0.0, width)
        if block.rest:
            self._write(self.letters.lines(block.rest, width), self.letters, 0.0, width)
        self.y += 0.6

    def _write(self, lines, letters, x, width):
        for line in lines:
            self._ask(letters.line_mm)
            self.lines.append(Line(self.frame, x, self.y, width, line, letters))
            self.y += letters.line_mm

    def _paragraph(self, block):
        letters = self.bold if block.bold else self.letters
        self._write(letters.lines(block.text, self._size[0]), letters, 0.0, self._size[0])
        self.y += 0.6

    def _pairs(self, block):
        width = self._size[0]
        values = [value for _, value in block.rows]
        longest = max((self.letters.width_mm(value) for value in values), default=0.0)
        names = max((self.bold.width_mm(name) for name, _ in block.rows), default=0.0) + GAP
        half = (width - GAP) / 2.0
        columns = 2 if names + 20.0 <= half and longest <= 2.5 * half else 1
        per_column = -(-len(block.rows) // columns)
        own = (width - GAP * (columns - 1)) / columns
        for first in range(per_column):
            some = [block.rows[first + column * per_column] for column in range(columns) if first + column * per_column < len(block.rows)]
            cells, x = [], 0.0
            for name, value in some:
                cells.append((x, names - GAP, [name], self.bold, False))
                cells.append((x + names, own - names, self.letters.lines(value, own - names), self.letters, False))
                x += own + GAP
            self._row(cells, self.letters.line_mm)
            self.rules.append(Rule(self.frame, 0.0, self.y, width, THIN))
        self.y += 0.6

    def _row(self, cells, step):
        """A row of cells: x, width, lines, letters, whether at the right; `step` from line to line. Higher than a frame it is split."""
        while cells:
            height = 2 * PAD + step * max(len(lines) for _, _, lines, _, _ in cells)
            self._ask(min(height, self._size[1]))
            room = int((self._size[1] - self.y - 2 * PAD) / step)
            rest = []
            for x, width, lines, letters, right in cells:
                for number, line in enumerate(lines[:room]):
                    self.lines.append(Line(self.frame, x, self.y + PAD + number * step, width, line, letters, right))
                rest.append((x, width, lines[room:], letters, right))
            self.y += min(height, 2 * PAD + step * room)
            cells = rest if any(lines for _, _, lines, _, _ in rest) else []

    def _table(self, block):
        columns = self._columns(block)
        self._head(block, columns)
        for row in block.rows:
            cells = columns.cells(row, block.right)
            if self._ask(columns.height(cells)):
                columns = self._columns(block)
                self.lines.append(Line(self.frame, 0.0, self.y, self._size[0], tr("(continued)"), self.letters))
                self.y += self.letters.line_mm
                self._head(block, columns)
                cells = columns.cells(row, block.right)
            self._row(cells, columns.letters.line_mm)
            self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], THIN))
        self.y += 0.6

    def _head(self, block, columns):
        cells = columns.cells(block.headings, block.right, columns.bold)
        self._ask(columns.height(cells) + 2 * columns.letters.line_mm)
        self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], STRONG))
        self._row(cells, columns.bold.line_mm)
        self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], STRONG / 2.0))

    def _columns(self, block):
        """The columns of a table in this frame, in letters a little smaller where then no row is broken, or else no word."""
        letters, whole = self.letters, self._size[0] + GAP
        columns, gaps = Columns(block, letters, whole), GAP * len(block.headings)
        one_line, words = (0.99 * (whole - gaps) / (width - gaps) for width in (columns.natural, columns.need))  # less, for whole pixels
        if one_line < 0.99 and letters.size_pt * one_line >= ONE_LINE_PT:
            columns = Columns(block, letters.in_size(letters.size_pt * one_line), whole)
        elif columns.need > whole:
            columns = Columns(block, letters.in_size(letters.size_pt * max(SMALLEST, words)), whole)
        return columns


class Columns:
    """The columns of a table: as wide as their text where there is room, else those give way that may.

    Parameters
    ----------
    block : Table
    letters : sheet_text.Letters
    whole : float
        Width of all, with a gap behind each.

    Attributes
    ----------
    widths : list of float
    natural, need : float
        Widths in which no row and no word is broken.
    """

    def __init__(self, block, letters, whole):
        self.letters, self.bold = letters, letters.as_bold()
        natural, least = [], []
        for column, heading in enumerate(block.headings):
            texts = [line for row in block.rows for line in row[column].splitlines()]
            longest = max(map(letters.width_mm, texts), default=0.0)
            words = min(max(map(letters.word_mm, texts), default=0.0), WORD_MM)
            natural.append(GAP + max(self.bold.width_mm(heading), longest))
            least.append(GAP + max(self.bold.word_mm(heading), words if column in block.wide else longest))
        self.natural, self.need = sum(natural), sum(least)
        if sum(natural) <= whole:
            takers = sum(width > NARROW_MM for width in natural) or len(natural)
            spare = (whole - sum(natural)) / takers
            self.widths = [width + spare * (width > NARROW_MM or takers == len(natural)) for width in natural]
        elif self.need <= whole:
            self.widths = min(_shares(least, natural, whole), key=lambda widths: self._lines(block, widths))
        else:
            wanted = [max(LEAST_MM, width) for width in least]
            self.widths = [width * whole / sum(wanted) for width in wanted]

    def _lines(self, block, widths):
        """How many lines the rows take, about, with widths of columns."""
        return sum(
            max(math.ceil(self.letters.width_mm(text) / max(width - GAP, 1.0)) for text, width in zip(row, widths)) for row in block.rows
        )

    def cells(self, row, right, letters=None):
        """A row of texts as cells."""
        letters, cells, x = letters or self.letters, [], 0.0
        for column, (text, width) in enumerate(zip(row, self.widths)):
            cells.append((x, width - GAP, letters.lines(text, width - GAP), letters, column in right))
            x += width
        return cells

    def height(self, cells):
        """Height of a row of cells."""
        return 2 * PAD + self.letters.line_mm * max(len(lines) for _, _, lines, _, _ in cells)


def _headed(blocks):
    """Blocks in groups that begin with a heading each."""
    group = []
    for block in blocks:
        if isinstance(block, Heading) and group:
            yield group
            group = []
        group.append(block)
    if group:
        yield group


def _shares(least, natural, whole):
    """Ways to fill a whole: the widest give way all, or all but one of them that is as wide as its text."""
    yield _capped(least, natural, whole)
    for column, width in enumerate(natural):
        own = [width if i == column else few for i, few in enumerate(least)]
        if width > least[column] and sum(own) <= whole:
            yield _capped(own, natural, whole)


def _capped(least, natural, whole):
    """Widths that fill a whole: of those that may give way the widest do, down to a common width or to their least."""
    low, high = 0.0, max(natural)
    for _ in range(40):
        cap = (low + high) / 2.0
        widths = [max(few, min(most, cap)) for few, most in zip(least, natural)]
        low, high = (cap, high) if sum(widths) <= whole else (low, cap)
    return [max(few, min(most, low)) for few, most in zip(least, natural)]
