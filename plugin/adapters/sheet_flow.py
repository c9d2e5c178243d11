"""Blocks of text and tables laid out one below the other, from frame to frame: where each line goes. Nothing is cut, nothing overlaps.

Lengths are in mm, from the upper left corner of a frame.
"""

from dataclasses import dataclass, field, replace

from .translation import tr

GAP, PAD, SPACE = 2.4, 0.45, 2.0  # between columns, above and below the lines of a row, above a heading
STRONG, THIN = 0.35, 0.1  # rules
WORD_MM = 26.0  # a longer word is broken where its column is narrow
NARROW_MM = 11.0  # a column of marks, which is left so where there is room
LEAST_MM = 8.0  # of a column, where a table is too wide for its frame


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
        """Whether the beginning of a group would run over the end of its frame."""
        trial = Flow(self.letters, self.sizes)
        trial.frame, trial.y = (self.frame, self.y) if frame is None else (frame, 0.0)
        begin = trial.frame
        for block in group:
            trial._block(replace(block, rows=block.rows[:1]) if isinstance(block, (Table, Pairs)) else block)
            if isinstance(block, (Table, Pairs)):
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
            self._row(cells)
            self.rules.append(Rule(self.frame, 0.0, self.y, width, THIN))
        self.y += 0.6

    def _row(self, cells):
        """A row of cells: x, width, lines, letters, whether at the right. Split by lines where it is higher than a frame."""
        step = self.letters.line_mm
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
        widths = self._widths(block)
        self._head(block, widths)
        for row in block.rows:
            lines = self._cells(row, block, widths, self.letters)
            height = 2 * PAD + self.letters.line_mm * max(len(own) for _, _, own, _, _ in lines)
            if self._ask(height):
                widths = self._widths(block)
                self.lines.append(Line(self.frame, 0.0, self.y, self._size[0], tr("(continued)"), self.letters))
                self.y += self.letters.line_mm
                self._head(block, widths)
                lines = self._cells(row, block, widths, self.letters)
            self._row(lines)
            self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], THIN))
        self.y += 0.6

    def _head(self, block, widths):
        cells = self._cells(block.headings, block, widths, self.bold)
        self._ask(2 * PAD + self.bold.line_mm * (2 + max(len(own) for _, _, own, _, _ in cells)))
        self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], STRONG))
        self._row(cells)
        self.rules.append(Rule(self.frame, 0.0, self.y, self._size[0], STRONG / 2.0))

    @staticmethod
    def _cells(row, block, widths, letters):
        cells, x = [], 0.0
        for column, (text, width) in enumerate(zip(row, widths)):
            cells.append((x, width - GAP, letters.lines(text, width - GAP), letters, column in block.right))
            x += width
        return cells

    def _widths(self, block):
        """Widths of columns, gaps included: as wide as their text where there is room, else the wide ones give way."""
        whole, count = self._size[0] + GAP, len(block.headings)
        natural, least = [], []
        for column in range(count):
            texts = [row[column] for row in block.rows]
            head = self.bold.word_mm(block.headings[column])
            natural.append(
                GAP
                + max(
                    [
                        self.bold.width_mm(block.headings[column]),
                        *(max(map(self.letters.width_mm, text.splitlines()), default=0.0) for text in texts),
                    ]
                )
            )
            words = max([head, *(min(self.letters.word_mm(text), WORD_MM) for text in texts)])
            longest = max([head, *map(self.letters.width_mm, texts)])
            least.append(GAP + (words if column in block.wide else longest))
        if sum(natural) <= whole:
            takers = sum(width > NARROW_MM for width in natural) or count
            spare = (whole - sum(natural)) / takers
            return [width + spare * (width > NARROW_MM or takers == count) for width in natural]
        if sum(least) <= whole:
            return _capped(least, natural, whole)
        words = [GAP + max([LEAST_MM, *(min(self.letters.word_mm(row[column]), WORD_MM) for row in block.rows)]) for column in range(count)]
        return [width * whole / sum(words) for width in words]


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


def _capped(least, natural, whole):
    """Widths that fill a whole: of those that may give way the widest do, down to a common width or to their least."""
    low, high = 0.0, max(natural)
    for _ in range(40):
        cap = (low + high) / 2.0
        widths = [max(few, min(most, cap)) for few, most in zip(least, natural)]
        low, high = (cap, high) if sum(widths) <= whole else (low, cap)
    return [max(few, min(most, low)) for few, most in zip(least, natural)]
