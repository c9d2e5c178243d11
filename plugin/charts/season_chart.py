"""A season as a picture: nights across, the clock upward from noon to noon, the dark hours, the body's windows and the Moon in them.

A night is a column. Moonlight is a bar in it, as wide as the part of the Moon that is lit; a stroke shows how the band rises from the core.
Under the nights lies the tilt, over the windows' length. Nothing hangs on colour alone: what is usable has an edge, the Moon is striped.
"""

import numpy as np

from .sheets import area, plain, sheet, wrapped

WIDTH_PX, EDGE_PX, LABEL_PX = 1500, 24, 64
TOP_PX, NIGHTS_PX, DATES_PX, TILT_PX, LEGEND_PX, LINE_PX = 64, 576, 30, 104, 40, 21
HOURS_A_DAY, HOUR_STEP = 24, 2
TILTS_DEG = (0, 45, 90)
CASING_PX = 1.6  # around what is usable
BAR = 0.86  # of a column, at full Moon: columns stay apart
STROKE_PX, STROKES_APART_PX, DOT_PX = 20.0, 22.0, 1.7
MONTHS_FROM = 62  # nights: as many, and months are marked; fewer, and dates are
DATES = 12  # marked, at most
TEXT, SMALL = 9.0, 7.5


def draw(chart, heading, caption, words, body, theme):
    """Draw a chart.

    Parameters
    ----------
    chart : plan.season_chart.Chart
    heading : str
    caption : sequence of str
        Lines under the picture; those that are too long for it go on on the next.
    words : dict of str to str
        What the marks mean: `twilight dark window stroke moon` for the legend, as far as they are drawn; `new full turn tilt` beside what
        they name, `turn` with a place for hours.
    body : str
        Whose windows they are.
    theme : Theme

    Returns
    -------
    matplotlib.figure.Figure
    """
    colour = theme.usable or theme.of(body)
    tilted = bool(np.isfinite(chart.tilt_deg[1]).any())
    width = WIDTH_PX - 2 * LABEL_PX
    caption = [line for text in caption for line in wrapped(plain(text, 400), TEXT, width)]
    below = EDGE_PX + LINE_PX * len(caption) + LEGEND_PX + (TILT_PX + DATES_PX if tilted else 0) + DATES_PX
    figure = sheet(WIDTH_PX, TOP_PX + NIGHTS_PX + below, theme.paper)
    nights = area(figure, LABEL_PX, below, width, NIGHTS_PX)
    nights.set(xlim=(0, chart.told.size), ylim=(0, HOURS_A_DAY))
    _hours_of_day(nights, chart, theme)
    _windows(nights, chart, colour, theme)
    _moonlight(nights, chart, words, theme)
    _strokes(nights, chart, width, theme)
    _clock(nights, chart, words, theme)
    _dates(nights, chart, HOURS_A_DAY, theme)
    if tilted:
        strip = area(figure, LABEL_PX, below - TILT_PX - DATES_PX, width, TILT_PX)
        strip.set(xlim=(0, chart.told.size), ylim=(-4, 94))
        _tilts(strip, chart, words, colour, theme)
    _legend(figure, EDGE_PX + LINE_PX * len(caption) + LEGEND_PX / 2, words, colour, theme)
    _write(figure, heading, caption, theme)
    return figure


def _write(figure, heading, caption, theme):
    width, height = figure.get_size_inches() * figure.dpi
    figure.text(LABEL_PX / width, 1 - 24 / height, plain(heading, 130), color=theme.ink, size=13, weight="bold", va="center")
    for i, line in enumerate(reversed(caption)):
        up = (EDGE_PX + LINE_PX * (i + 0.3)) / height
        figure.text(LABEL_PX / width, up, line, color=theme.ink, size=TEXT, va="center")


def corners(left, right, low, high):
    """The corners of boxes, shape (B, 4, 2)."""
    left, right, low, high = np.broadcast_arrays(left, right, low, high)
    return np.stack([np.stack([left, right, right, left], axis=-1), np.stack([low, low, high, high], axis=-1)], axis=-1)


def _fill(axes, vertices, gid, zorder, **look):
    from matplotlib.collections import PolyCollection

    axes.add_collection(PolyCollection(vertices, gid=gid, zorder=zorder, **{"linewidths": 0, **look}), autolim=False)


def _columns(boxes):
    return corners(boxes.column, boxes.column + 1, boxes.low_h, boxes.high_h)


def _hours_of_day(axes, chart, theme):
    """Day as paper, twilight, and dark hours; nights that no row tells of hatched."""
    twilight, dark = theme.hours
    _fill(axes, _columns(chart.sun_down), "twilight", 1, facecolors=twilight, antialiaseds=False)
    _fill(axes, _columns(chart.dark), "dark", 1.1, facecolors=dark, antialiaseds=False)
    missing = np.flatnonzero(~chart.told)
    if missing.size:
        _fill(axes, corners(missing, missing + 1, 0, HOURS_A_DAY), "untold", 1.2, facecolors="none", edgecolors=theme.faint, hatch="////")


def _moonlight(axes, chart, words, theme):
    """Bars as wide as the part of the Moon that is lit, over windows too; new and full Moon are named above."""
    moon, half = chart.moon, 0.5 * BAR * chart.moon_lit[chart.moon.column]
    middle = moon.column + 0.5
    _fill(axes, corners(middle - half, middle + half, moon.low_h, moon.high_h), "moon", 4.2, facecolors=theme.moonlight, snap=False)
    for name, columns in zip(("new", "full"), chart.new_and_full):
        for column in columns.tolist():
            at = (column + 0.5, HOURS_A_DAY)
            axes.annotate(
                words[name], at, (0, 3), textcoords="offset points", color=theme.ink, size=SMALL, ha="center", annotation_clip=False
            )


def _windows(axes, chart, colour, theme):
    """Windows with an edge around all that touch: drawn wider in its colour first, then in their own."""
    vertices, points = _columns(chart.window), 72 / axes.figure.dpi
    _fill(axes, vertices, "edge", 4, facecolors=theme.edge, edgecolors=theme.edge, linewidths=2 * CASING_PX * points)
    _fill(axes, vertices, "window", 4.1, facecolors=colour, antialiaseds=False)


def apart(places, least):
    """Which of ascending places to mark so that no two marks are closer than a least distance."""
    marked = []
    for i, place in enumerate(places.tolist()):
        if not marked or place - places[marked[-1]] >= least:
            marked.append(i)
    return np.array(marked, dtype=int)


def _strokes(axes, chart, width_px, theme):
    """The band as it rises from the core, a dot, at the best minute of some of the windows."""
    from matplotlib.collections import LineCollection

    best = chart.best[:, np.isfinite(chart.best[2])]
    x_px, y_px = width_px / chart.told.size, NIGHTS_PX / HOURS_A_DAY
    best = best[:, apart(best[0] * x_px, STROKES_APART_PX)]
    column, core_h, tilt_deg, left = best
    tilt = np.radians(tilt_deg)
    core = np.stack([column + 0.5, core_h], axis=-1)
    far = core + STROKE_PX * np.stack([-left * np.cos(tilt) / x_px, np.sin(tilt) / y_px], axis=-1)
    lines = np.stack([core, far], axis=1)
    axes.add_collection(LineCollection(lines, colors=theme.paper, linewidths=3.0, zorder=5, capstyle="round"), autolim=False)
    axes.add_collection(LineCollection(lines, colors=theme.ink, linewidths=1.3, zorder=5.1, gid="strokes"), autolim=False)
    axes.plot(*core.T, ls="", marker="o", ms=2 * DOT_PX * 72 / axes.figure.dpi, mfc=theme.ink, mew=0, zorder=5.2)


def _on_both_sides(axes, text, y, count, theme):
    """A number at its height, left and right of the nights."""
    for x, side, shift in ((0, "right", -6), (count, "left", 6)):
        axes.annotate(
            text,
            (x, y),
            (shift, 0),
            textcoords="offset points",
            color=theme.ink,
            size=TEXT,
            ha=side,
            va="center",
            annotation_clip=False,
        )


def _clock(axes, chart, words, theme):
    """Hours on both sides, midnight stronger, and where clocks are put forward or back."""
    count = chart.told.size
    for hour in range(0, HOURS_A_DAY + 1, HOUR_STEP):
        shown = (chart.foot_h + hour) % 24
        axes.axhline(hour, color=theme.ink if shown == 0 else theme.faint, lw=0.9 if shown == 0 else 0.5, zorder=3)
        _on_both_sides(axes, f"{shown:02d}:00", hour, count, theme)
    for column, hours in chart.turns.T.tolist():
        axes.plot([column, column], [0, HOURS_A_DAY], color=theme.ink, lw=0.9, ls=(0, (2, 3)), zorder=3.1, gid="turn")
        told = words["turn"].format(hours=hours)
        side = "left" if column < count / 2 else "right"
        shift = 4 if side == "left" else -4
        axes.annotate(told, (column, 0), (shift, 5), textcoords="offset points", color=theme.ink, size=SMALL, ha=side, zorder=6)


def marked_dates(nights):
    """Columns at which dates are marked, and what is written there: months of a long span, days of a short one."""
    if nights.size > MONTHS_FROM:
        month = nights.astype("datetime64[M]")
        columns = np.flatnonzero(np.append(True, month[1:] != month[:-1]))
        if columns.size > 1 and columns[1] < nights.size / 30:
            columns = columns[1:]  # too little of the first month is in it to write its name there
        return columns, np.datetime_as_string(month[columns])
    columns = np.arange(0, nights.size, int(np.ceil(nights.size / DATES)))
    return columns, np.datetime_as_string(nights[columns])


def _dates(axes, chart, top, theme):
    for column, text in zip(*(marks.tolist() for marks in marked_dates(chart.nights))):
        axes.plot([column, column], [0, top], color=theme.faint, lw=0.5, zorder=3)
        axes.annotate(
            text, (column, 0), (2, -6), textcoords="offset points", color=theme.ink, size=TEXT, va="top", annotation_clip=False, zorder=6
        )
    right = chart.told.size
    axes.plot([0, right, right, 0, 0], [0, 0, top, top, 0], color=theme.ink, lw=0.9, zorder=3.2, clip_on=False)


def _tilts(axes, chart, words, colour, theme):
    """The tilt of the band in each window: a tick at its start, a dot at its best minute, a bar from the least that is told to the most."""
    from matplotlib.collections import LineCollection

    count = chart.told.size
    known = np.flatnonzero(np.isfinite(chart.tilt_deg).all(axis=0))
    told = chart.tilt_deg[:, known]
    start, best, _ = told
    _fill(axes, corners(known, known + 1, told.min(axis=0), told.max(axis=0)), "tilts", 2, facecolors=colour, antialiaseds=False)
    ticks = np.stack([np.stack([known, start], axis=-1), np.stack([known + 1, start], axis=-1)], axis=1)
    axes.add_collection(LineCollection(ticks, colors=theme.edge, linewidths=1.0, zorder=4), autolim=False)
    for size, shade in ((5.0, theme.paper), (3.0, theme.edge)):
        axes.plot(known + 0.5, best, ls="", marker="o", ms=size, mfc=shade, mew=0, zorder=4.1)
    for tilt in TILTS_DEG:
        axes.plot([0, count], [tilt, tilt], color=theme.faint, lw=0.5, zorder=3)
        _on_both_sides(axes, f"{tilt}°", tilt, count, theme)
    axes.annotate(words["tilt"], (0, 0), (0, -9), textcoords="offset points", color=theme.ink, size=TEXT, va="top", zorder=6)


def _legend(figure, up_px, words, colour, theme):
    """What the marks mean, in one row."""
    width, height = figure.get_size_inches() * figure.dpi
    axes = area(figure, 0, up_px - LEGEND_PX / 2, width, LEGEND_PX)
    axes.set(xlim=(0, width), ylim=(-LEGEND_PX / 2, LEGEND_PX / 2))
    twilight, dark = theme.hours
    patches = {
        "twilight": {"facecolors": twilight, "edgecolors": theme.faint, "linewidths": 0.6},
        "dark": {"facecolors": dark, "edgecolors": theme.faint, "linewidths": 0.6},
        "window": {"facecolors": colour, "edgecolors": theme.edge, "linewidths": 1.2},
        "stroke": None,
        "moon": {"facecolors": theme.moonlight},
    }
    at = float(LABEL_PX)
    for name in [name for name in patches if name in words]:
        look = patches[name]
        if name == "stroke":
            axes.plot([at + 20, at + 8], [-6, 8], color=theme.ink, lw=1.3)
            axes.plot([at + 20], [-6], marker="o", ms=3, mfc=theme.ink, mew=0)
        elif name == "moon":
            half = 0.5 * BAR * 4 * np.array([0.1, 0.3, 0.5, 0.7, 0.9, 1.0])
            middle = at + 4 * np.arange(6) + 2
            _fill(axes, corners(middle - half, middle + half, -7, 7), "key", 2, **look)
        else:
            _fill(axes, corners(np.array([at]), at + 24, -7, 7), "key", 2, **look)
        text = axes.text(at + 31, 0, plain(words[name], 200), color=theme.ink, size=TEXT, va="center")
        at = text.get_window_extent(figure.canvas.get_renderer()).x1 + 22
