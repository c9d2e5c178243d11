"""A site's year at a glance: every night its own column, from local noon upward to the next.

Above the nights stands how the band is tilted at the best minute, under them how much of the Moon is lit then.
"""

import numpy as np

from .sheets import area, sheet

WIDTH_PX, NIGHTS_PX, STRIP_PX, GAP_PX = 1400, 660, 70, 12
LEFT_PX, RIGHT_PX, TOP_PX, MONTHS_PX, LINE_PX = 84, 20, 16, 34, 22
HOURS = range(0, 25, 3)
STROKES = 26  # of tilt across the chart, at most
STROKE_PX = 20.0
LEGEND = ("day", "twilight", "dark", "window", "Moon up", "best minute")


def draw(season, caption, legend, theme):
    """Draw a season.

    Parameters
    ----------
    season : plan.season.Season
    caption : sequence of str
        Lines under the chart, the first one larger.
    legend : sequence of str
        What the shades mean, in the order of `LEGEND`.
    theme : Theme

    Returns
    -------
    matplotlib.figure.Figure
    """
    below = MONTHS_PX + LINE_PX * (len(caption) + 2)
    height = TOP_PX + 2 * (STRIP_PX + GAP_PX) + NIGHTS_PX + below
    figure = sheet(LEFT_PX + WIDTH_PX + RIGHT_PX, height, theme.paper)
    moon = area(figure, LEFT_PX, below, WIDTH_PX, STRIP_PX)
    nights = area(figure, LEFT_PX, below + STRIP_PX + GAP_PX, WIDTH_PX, NIGHTS_PX)
    tilt = area(figure, LEFT_PX, below + STRIP_PX + NIGHTS_PX + 2 * GAP_PX, WIDTH_PX, STRIP_PX)
    end = float(season.column[-1] + 1)
    for axes, top in ((moon, 1.0), (nights, 24.0), (tilt, STRIP_PX)):
        axes.set_xlim(0.0, end)
        axes.set_ylim(0.0, top)
    _nights(nights, season, end, theme)
    _moon(moon, season, theme)
    _tilt(tilt, season, end, theme)
    _months(moon, nights, tilt, season, theme)
    _legend(figure, height, below, legend, theme)
    for i, line in enumerate(caption):
        weight, size = ("bold", 12) if i == 0 else ("normal", 10)
        up = (below - MONTHS_PX - LINE_PX * (i + 1.7)) / height
        text = line.replace("$", r"\$")  # a name is no formula
        figure.text(LEFT_PX / (LEFT_PX + WIDTH_PX + RIGHT_PX), up, text, color=theme.ink, size=size, weight=weight, va="center")
    return figure


def _columns(axes, stretches, **how):
    """Stretches as rectangles, a column wide."""
    from matplotlib.collections import PolyCollection

    left, low, high = stretches.T
    corners = np.stack([left, low, left + 1.0, low, left + 1.0, high, left, high], axis=1).reshape(-1, 4, 2)
    axes.add_collection(PolyCollection(corners, **how))


def _nights(axes, season, end, theme):
    day, twilight, dark = theme.season
    axes.fill([0.0, end, end, 0.0], [0.0, 0.0, 24.0, 24.0], color=day, lw=0, zorder=0)
    # edges of their own colour: else the paper would show between columns that are no whole pixels wide
    _columns(axes, season.sun_down, fc=twilight, ec=twilight, lw=0.4, zorder=1, gid="twilight")
    _columns(axes, season.dark, fc=dark, ec=dark, lw=0.4, zorder=2, gid="dark")
    _columns(axes, season.windows, fc=theme.band, ec=theme.band, lw=0.4, zorder=3, gid="window")
    for side in (1, 2):
        axes.hlines(season.windows[:, side], season.windows[:, 0], season.windows[:, 0] + 1.0, color=theme.ink, lw=1.1, zorder=5)
    _columns(axes, season.moon_up, fc="none", ec=theme.moon, lw=0, hatch="////", zorder=4, gid="moon")
    axes.plot(season.column + 0.5, season.best_h, ls="", marker=".", ms=2.5, color=theme.ink, zorder=6)
    for hour in HOURS:
        axes.axhline(hour, color=theme.faint, lw=0.5, zorder=5)
        text = f"{(season.noon_h + hour) % 24:02d}:00"
        axes.annotate(text, (0.0, hour), (-6, 0), textcoords="offset points", color=theme.ink, size=9, ha="right", va="center")


def _moon(axes, season, theme):
    """How much of the Moon is lit, as a column of its own."""
    known = np.isfinite(season.moon_lit)
    lit = np.stack([season.column[known], np.zeros(known.sum()), season.moon_lit[known]], axis=1)
    _columns(axes, lit, fc=theme.moon, ec=theme.moon, lw=0.4, gid="lit")
    for share, text, side in ((0.0, "0 %", "bottom"), (0.5, "Moon lit", "center"), (1.0, "100 %", "top")):
        axes.annotate(text, (0.0, share), (-6, 0), textcoords="offset points", color=theme.ink, size=8, ha="right", va=side)


def _tilt(axes, season, end, theme):
    """Strokes that lie as the band does."""
    known = np.flatnonzero(np.isfinite(season.tilt_deg) & np.isfinite(season.best_h))
    step = max(int(np.ceil(known.size / STROKES)), 1)
    px = end / WIDTH_PX
    for i in known[step // 2 :: step].tolist():
        tilt = np.radians(season.tilt_deg[i])
        run, rise = STROKE_PX * np.cos(tilt) * (-1.0 if season.leans_left[i] else 1.0) * px, STROKE_PX * np.sin(tilt)
        x, y = season.column[i] + 0.5, STRIP_PX / 2.0
        axes.plot([x - run, x + run], [y - rise, y + rise], color=theme.band, lw=3.0, solid_capstyle="round", gid="tilt")
    axes.annotate("tilt", (0.0, STRIP_PX / 2.0), (-6, 0), textcoords="offset points", color=theme.ink, size=9, ha="right", va="center")


def _months(moon, nights, tilt, season, theme):
    """The firsts of months, through all strips."""
    first, last = season.day[0], season.day[-1]
    starts = np.arange(first.astype("datetime64[M]"), last.astype("datetime64[M]") + 1)
    for month in starts:
        x = float((month.astype("datetime64[D]") - first).astype(int))
        if x > 0.0:
            for axes in (moon, nights, tilt):
                axes.axvline(x, color=theme.faint, lw=0.7, zorder=5)
        middle = np.clip(x + 15.0, 0.0, float(season.column[-1] + 1)) if starts.size > 1 else season.column[-1] / 2.0
        if x + 15.0 > 0.0:
            moon.annotate(str(month), (middle, 0.0), (0, -6), textcoords="offset points", color=theme.ink, size=9, ha="center", va="top")


def _legend(figure, height, below, legend, theme):
    from matplotlib.patches import Rectangle

    day, twilight, dark = theme.season
    width = LEFT_PX + WIDTH_PX + RIGHT_PX
    looks = ({"fc": day}, {"fc": twilight}, {"fc": dark}, {"fc": theme.band}, {"fc": "none", "hatch": "////"}, {"fc": "none"})
    y = (below - MONTHS_PX - LINE_PX * 0.5) / height
    for i, (text, look) in enumerate(zip(legend, looks)):
        x = (LEFT_PX + 230.0 * i) / width
        edge = theme.moon if "hatch" in look else theme.ink
        box = Rectangle((x, y - 7.0 / height), 24.0 / width, 14.0 / height, ec=edge, lw=0.8, transform=figure.transFigure, **look)
        figure.add_artist(box)
        if i == len(LEGEND) - 1:
            figure.text(x + 12.0 / width, y, "•", color=theme.ink, size=9, ha="center", va="center")
        figure.text(x + 32.0 / width, y, text, color=theme.ink, size=9, va="center")
