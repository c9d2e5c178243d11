"""The view from a tripod as a picture: what the lens sees, in true proportions.

The picture is rectilinear, as the camera's: straight things stay straight, and the lines of equal azimuth and altitude bend.
"""

import numpy as np

from .sheets import area, plain, sheet, wrapped

LONG_SIDE_PX = 1400
EDGE_PX, LABEL_PX, LINE_PX, CORE_PX = 16, 64, 22, 9
STEPS_DEG = (0.5, 1.0, 2.0, 5.0, 10.0, 15.0, 30.0)
LINES = 8  # of a grid across the picture, at most about
WORDS = ("N", "NE", "E", "SE", "S", "SW", "W", "NW", "core", "Sun", "Moon")  # written into the picture
MARK_LABELS = 3  # every third mark on the way of a body is labelled: half an hour


def draw(scene, caption, clock, theme, words=WORDS):
    """Draw a scene.

    Parameters
    ----------
    scene : plan.view.Scene
    caption : sequence of str
        Lines under the picture, the first one larger; those that are too long for its width go on on the next.
    clock : sequence of str
        What the clock shows at the marks on the body's way.
    theme : Theme
    words : sequence of str
        `WORDS` in the language of the reader.

    Returns
    -------
    matplotlib.figure.Figure
    """
    half_width, half_height = scene.half_size
    scale = _scale(scene)
    width, height = round(2.0 * half_width * scale), round(2.0 * half_height * scale)
    across = max(width + LABEL_PX + EDGE_PX, 900)
    lines = list(_caption(caption, across - LABEL_PX - EDGE_PX))
    below = LABEL_PX + LINE_PX * (len(lines) + 1)
    figure = sheet(across, height + EDGE_PX + below, theme.paper)
    axes = area(figure, LABEL_PX, below, width, height)
    axes.set_xlim(-half_width, half_width)
    axes.set_ylim(-half_height, half_height)
    told = dict(zip(WORDS, words))
    _grid(axes, scene, theme, told)
    _band(axes, scene, theme, told)
    _way(axes, scene, theme)
    _discs(axes, scene, theme, told)
    for drawing in (_ground, _subjects, _frame):
        drawing(axes, scene, theme)
    _clock(axes, scene, clock, theme)
    for i, (line, size, weight) in enumerate(lines):
        up = (below - LABEL_PX - LINE_PX * (i + 0.5)) / (height + EDGE_PX + below)
        figure.text(LABEL_PX / across, up, line, color=theme.ink, size=size, weight=weight, va="center")
    return figure


def _caption(caption, room_px):
    """Lines that fit under the picture, each with its size and weight."""
    for i, text in enumerate(caption):
        size, weight = (12, "bold") if i == 0 else (10, "normal")
        for line in wrapped(plain(text, 250), size, room_px, weight):
            yield line, size, weight


def _scale(scene):
    """Pixels to a unit of the picture at distance 1."""
    return LONG_SIDE_PX / (2.0 * max(scene.half_size))


def grid_step_deg(span_deg):
    """Degrees between the lines of a grid across a span."""
    return next((step for step in STEPS_DEG if span_deg / step <= LINES), STEPS_DEG[-1])


def _grid(axes, scene, theme, told):
    half_width, half_height = scene.half_size
    step = grid_step_deg(2.0 * np.degrees(np.arctan(max(half_width, half_height))))
    along = np.arange(-89.0, 89.1, 0.5)
    for az in np.arange(0.0, 360.0, step):
        x, y = scene.at(np.full(along.shape, az), along)
        axes.plot(x, y, color=theme.faint, lw=0.6, zorder=1)
        _label(axes, x, y, -half_height, half_width, (0, -6), _azimuth(az, told), theme, ha="center", va="top")
    round_deg = scene.aim_az_deg + np.arange(-180.0, 180.1, 0.5)
    for alt in np.arange(-90.0 + step, 90.0, step):
        x, y = scene.at(round_deg, np.full(round_deg.shape, alt))
        level = alt == 0.0
        axes.plot(x, y, color=theme.ink if level else theme.faint, lw=1.0 if level else 0.6, ls=(0, (6, 4)) if level else "-", zorder=1)
        _label(axes, y, x, -half_width, half_height, (-6, 0), f"{alt:g}°", theme, ha="right", va="center", swapped=True)


def _label(axes, along, across, edge, limit, offset, text, theme, swapped=False, **how):
    """Write what a line of the grid is where it crosses an edge of the picture."""
    low, high = across[:-1] - edge, across[1:] - edge
    with np.errstate(invalid="ignore"):
        crossing = np.flatnonzero(low * high < 0.0)
    for i in crossing[:1].tolist():
        place = along[i] + (along[i + 1] - along[i]) * low[i] / (low[i] - high[i])
        if abs(place) <= limit:
            at = (edge, place) if swapped else (place, edge)
            axes.annotate(text, at, offset, textcoords="offset points", color=theme.ink, size=9, annotation_clip=False, **how)


def _azimuth(az_deg, told):
    return f"{told[WORDS[int(az_deg // 45.0)]]}\n{az_deg:g}°" if az_deg % 45.0 == 0.0 else f"{az_deg:g}°"


def _band(axes, scene, theme, told):
    plane, *edges = (scene.at(*line) for line in scene.moment.band)
    for edge in edges:
        axes.plot(*edge, color=theme.band, lw=0.9, ls=(0, (4, 3)), zorder=2)
    axes.fill(*_between(*edges), color=theme.band, alpha=0.18, lw=0, zorder=2)
    axes.plot(*plane, color=theme.band, lw=1.6, zorder=2)
    core = scene.at(*scene.moment.core)
    turn = np.linspace(0.0, 2.0 * np.pi, 73)
    ring = core[:, np.newaxis] + CORE_PX / _scale(scene) * np.stack([np.cos(turn), np.sin(turn)])
    axes.fill(*ring, fc=theme.paper, ec=theme.band, lw=2.4, zorder=3, gid="core")  # no marker: those are moved to whole pixels
    _name(axes, core, told["core"], theme.band)


def _between(one, other):
    """The outline of what lies between two closed lines, in the part of them that is ahead."""
    one, other = one[:, :-1], other[:, :-1]  # the last point is the first
    known = np.isfinite(one).all(axis=0) & np.isfinite(other).all(axis=0)
    first = int(np.argmax(known & ~np.roll(known, 1)))
    one, other = (np.roll(line, -first, axis=1)[:, : int(known.sum())] for line in (one, other))
    return np.concatenate([one, other[:, ::-1]], axis=1)


def _way(axes, scene, theme):
    colour = theme.of(scene.moment.columns["body"])
    x, y = scene.at(*scene.moment.way[1:])
    axes.plot(x, y, color=colour, lw=1.2, marker="|", ms=8, mew=1.2, zorder=3)


def _clock(axes, scene, clock, theme):
    half_width, half_height = scene.half_size
    x, y = scene.at(*scene.moment.way[1:])
    middle = len(clock) // 2
    for i, text in enumerate(clock):
        seen = abs(x[i]) < half_width and abs(y[i]) < half_height
        if seen and i != middle and (i - middle) % MARK_LABELS == 0:
            axes.annotate(text, (x[i], y[i]), (0, -9), textcoords="offset points", color=theme.ink, size=8, ha="center", va="top", zorder=6)


def _discs(axes, scene, theme, told):
    turn = np.linspace(0.0, 2.0 * np.pi, 121)
    for centre, semi, colour, name in (
        (scene.moment.sun, scene.moment.sun_semi_deg, theme.sun, "Sun"),
        (scene.moment.moon, scene.moment.moon_semi_deg, theme.moon, "Moon"),
    ):
        limb = scene.at(*scene.on_disc(centre, semi, np.cos(turn), np.sin(turn)))
        if not np.isfinite(limb).all():
            continue
        if name == "Sun":
            axes.fill(*limb, color=colour, lw=0, zorder=3, gid="sun")
        else:
            axes.fill(*limb, fc=theme.paper, ec=colour, lw=0.8, zorder=3, gid="moon")
            axes.fill(*scene.at(*scene.moment.lit_part), color=colour, lw=0, zorder=3)
        _name(axes, scene.at(*centre), told[name], colour)


def _ground(axes, scene, theme):
    """Ground, far to near: what lies under the skyline of a distance lies within it, or is hidden by what does."""
    _, half_height = scene.half_size
    shades = theme.ground if len(scene.ground) > 1 else theme.ground[-2:-1]
    for (_, az_deg, alt_deg), shade in zip(scene.ground, shades):
        x, y = scene.at(az_deg, alt_deg)
        axes.fill_between(x, y, np.minimum(y, -2.0 * half_height), color=shade, lw=0, zorder=4)
    _, az_deg, alt_deg = scene.ground[0]
    axes.plot(*scene.at(az_deg, alt_deg), color=theme.ink, lw=0.9, zorder=4, gid="skyline")


def _subjects(axes, scene, theme):
    for name, corners, hidden in scene.subjects:
        outline = scene.at(*corners)
        if not np.isfinite(outline).all():
            continue
        if hidden:
            axes.fill(*outline, fill=False, ec=theme.ink, lw=1.2, ls=(0, (4, 3)), zorder=5)
        else:
            axes.fill(*outline, fc=theme.subject, ec=theme.paper, lw=0.8, zorder=5)
        _name(axes, outline[:, 2:].mean(axis=1), name, theme.ink)


def _name(axes, place, text, colour):
    if axes.viewLim.contains(*place):
        axes.annotate(plain(text), place, (0, 10), textcoords="offset points", color=colour, size=9, ha="center", va="bottom", zorder=6)


def _frame(axes, scene, theme):
    half_width, half_height = scene.frame.half_width, scene.frame.half_height
    x, y = (half * np.array(signs) for half, signs in ((half_width, (-1, 1, 1, -1, -1)), (half_height, (-1, -1, 1, 1, -1))))
    axes.plot(x, y, color=theme.paper, lw=3.2, zorder=7)
    axes.plot(x, y, color=theme.ink, lw=1.6, zorder=7, gid="frame")
