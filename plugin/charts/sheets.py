"""Sheets to draw on: figures of matplotlib in whole pixels, and the files they become."""

import re
from importlib.util import find_spec
from io import BytesIO

DPI = 100
MISSING = "Pictures are drawn with matplotlib, which this Python has not. Install it (Debian: python3-matplotlib), then run again."


def can_draw():
    """Whether matplotlib is there; it is not loaded for that."""
    return find_spec("matplotlib") is not None


def sheet(width_px, height_px, colour):
    """An empty figure.

    Raises
    ------
    ValueError
        Where there is no matplotlib.
    """
    if not can_draw():
        raise ValueError(MISSING)
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(width_px / DPI, height_px / DPI), dpi=DPI, facecolor=colour)
    FigureCanvasAgg(figure)
    return figure


def area(figure, left_px, bottom_px, width_px, height_px):
    """Axes without ticks or edges on a part of a figure, the pixel its measure."""
    width, height = figure.get_size_inches() * DPI
    axes = figure.add_axes([left_px / width, bottom_px / height, width_px / width, height_px / height])
    axes.set_axis_off()
    return axes


def file_name(text, otherwise):
    """A name from anywhere as part of the name of a file, on every system: letters, digits and dashes, in no other folder."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")[:40] or otherwise


def plain(text, longest=80):
    """A name from anywhere as one line to draw: no signs that steer the drawing, none that cannot be shown, not without end."""
    line = " ".join("".join(letter if letter.isprintable() else " " for letter in text).split())
    line = line if len(line) <= longest else line[: longest - 1] + "…"
    return line.replace("$", r"\$")  # between two of them matplotlib would read a formula


def wrapped(line, size, room_px, weight="normal"):
    """A text to draw as lines no wider than a room, broken between words; a word that is wider stands alone. Size in points."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import text_to_path

    font = FontProperties(size=size, weight=weight)
    lines = []
    for word in line.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        width, _, _ = text_to_path.get_text_width_height_descent(longer.replace(r"\$", "$"), font, False)
        if lines and width * DPI / 72.0 <= room_px:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def rendered(figure, ending):
    """The bytes of a figure's file, `.png` or `.svg`; the same figure gives the same ones."""
    from matplotlib import rc_context

    file = BytesIO()
    with rc_context({"svg.fonttype": "none", "svg.hashsalt": "skyalidade"}):  # text of an SVG stays text
        metadata = {"Date": None} if ending == ".svg" else {"Software": None}
        figure.savefig(file, format=ending[1:], dpi=DPI, facecolor=figure.get_facecolor(), metadata=metadata)
    return file.getvalue()


def save(figure, path):
    """Write a figure as the ending of a path says."""
    path.write_bytes(rendered(figure, path.suffix))
