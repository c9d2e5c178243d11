"""The two drawings on a sheet of a field plan, as SVG in the colours of the page: the dial of bearings and the strip of the night."""

import numpy as np

LOOK = {"core": "core", "arch": "core", "galactic": "core", "sun": "sun", "moon": "moon"}  # body -> class of the page; the rest are stars
RING, PASSAGE, SUBJECT = 46.0, 51.0, 34.0  # radii on the dial
MANY, APART_DEG = 12, 12.0
LEAST_SWEEP_DEG = 2.0  # a shorter passage is drawn as long as this
STRIP_W, STRIP_H = 1000.0, 92.0
SKY_Y, SKY_H, MOON_Y, MOON_H, TEXT_Y, TICK_END = 4, 40, 50, 7, 84, 60
TEXT_MARGIN = 30.0  # nearer to an end of the strip an hour is not labelled


def look_of(body):
    """Class of the page that gives a body its colour."""
    return LOOK.get(body, "star")


def dial(label, bearings_deg, passages):
    """Where subjects lie, true north up, and, outside, over which azimuths bodies pass.

    Parameters
    ----------
    label : str
        Already escaped, as all texts here.
    bearings_deg : sequence of float
        Of the subjects; of those that lie together one is marked, and many are drawn thin.
    passages : iterable of (str, list of float)
        Look of the body, and its azimuths in the order of time. [deg]
    """
    parts = [f'<circle r="{RING:g}" fill="none" stroke="var(--faint)"/>']
    for az in range(0, 360, 30):
        inner = RING - (6.0 if az % 90 == 0 else 3.0)
        parts.append(f'<line y1="-{RING:g}" y2="-{inner:g}" stroke="var(--faint)" transform="rotate({az})"/>')
    parts.append('<text y="-29" font-size="10" text-anchor="middle">N</text>')
    for look, azimuths in passages:
        parts += [_passage(look, one, other) for one, other in zip(azimuths, azimuths[1:] or azimuths)]
    marked = []
    for bearing in bearings_deg:
        x, y = _on_ring(SUBJECT, bearing)
        parts.append(f'<line x2="{x:.1f}" y2="{y:.1f}" stroke="var(--line)" stroke-width="{1.5 if len(bearings_deg) <= MANY else 0.5}"/>')
        if all(abs((bearing - other + 180.0) % 360.0 - 180.0) >= APART_DEG for other in marked):
            marked.append(bearing)
            parts.append(f'<path d="M{x - 4.0:.1f} {y + 4.0:.1f}h8l-4 -8z" fill="var(--line)"/>')  # a triangle on its foot
    parts.append('<rect x="-4" y="-4" width="8" height="8" fill="var(--paper)" stroke="var(--line)" stroke-width="1.5"/>')
    return f'<svg class="dial" viewBox="-58 -58 116 116" role="img" aria-label="{label}">{"".join(parts)}</svg>'


def _on_ring(radius, az_deg):
    return radius * np.sin(np.radians(az_deg)), -radius * np.cos(np.radians(az_deg))


def _passage(look, one_deg, other_deg):
    """A stroke from one azimuth to another, the short way."""
    sweep = (other_deg - one_deg + 180.0) % 360.0 - 180.0
    if abs(sweep) < LEAST_SWEEP_DEG:
        one_deg, sweep = one_deg + (sweep - LEAST_SWEEP_DEG) / 2.0, LEAST_SWEEP_DEG
    (x1, y1), (x2, y2) = (_on_ring(PASSAGE, az) for az in (one_deg, one_deg + sweep))
    path = f"M{x1:.1f} {y1:.1f}A{PASSAGE:g} {PASSAGE:g} 0 0 {int(sweep > 0.0)} {x2:.1f} {y2:.1f}"
    return f'<path class="{look}" d="{path}" fill="none" stroke="var(--own)" stroke-width="5"/>'


class Strip:
    """A night from left to right, between two moments; things are drawn in the order in which they are added."""

    def __init__(self, first_utc_s, last_utc_s):
        self._first, self._span, self._parts = first_utc_s, last_utc_s - first_utc_s, []

    def _x(self, t_utc_s):
        return STRIP_W * min(max((t_utc_s - self._first) / self._span, 0.0), 1.0)

    def _bar(self, first, last, y, height, look):
        x = self._x(first)
        self._parts.append(f'<rect x="{x:.1f}" y="{y}" width="{max(self._x(last) - x, 0.0):.1f}" height="{height}" {look}/>')

    def sky(self, first, last, light):
        """A stretch of one light, such as `nautical`."""
        self._bar(first, last, SKY_Y, SKY_H, f'fill="var(--{light})"')

    def moon(self, first, last):
        """A stretch in which the Moon is up."""
        self._bar(first, last, MOON_Y, MOON_H, 'fill="var(--moon)"')

    def alignment(self, look, first, closest, last):
        """A stretch in which a body stands over a subject; of a mere moment first and last are nan."""
        if np.isfinite(first) and np.isfinite(last):
            self._bar(first, last, SKY_Y + 6, SKY_H - 12, f'class="{look}" fill="var(--own)"')
        self._upright(closest, SKY_Y, SKY_Y + SKY_H, 'stroke="var(--paper)" stroke-width="6"')  # a casing: in the dark all is of one red
        self._upright(closest, SKY_Y, SKY_Y + SKY_H, 'stroke="var(--ink)" stroke-width="2"')

    def coming_or_going(self, t_utc_s):
        """A broken line."""
        self._upright(t_utc_s, SKY_Y, SKY_Y + SKY_H, 'stroke="var(--ink)" stroke-width="2" stroke-dasharray="4 4"')

    def hour(self, t_utc_s, clock):
        """A tick and the time beneath it."""
        self._upright(t_utc_s, SKY_Y + SKY_H, TICK_END, 'stroke="var(--faint)"')
        x = self._x(t_utc_s)
        if TEXT_MARGIN < x < STRIP_W - TEXT_MARGIN:
            self._parts.append(f'<text x="{x:.1f}" y="{TEXT_Y}" font-size="20" text-anchor="middle">{clock}</text>')

    def _upright(self, t_utc_s, top, foot, look):
        x = self._x(t_utc_s)
        self._parts.append(f'<line x1="{x:.1f}" x2="{x:.1f}" y1="{top}" y2="{foot}" {look}/>')

    def svg(self, label):
        """The drawing; `label` already escaped."""
        frame = f'<rect x="0.5" y="{SKY_Y}" width="{STRIP_W - 1.0:g}" height="{SKY_H}" fill="none" stroke="var(--faint)"/>'
        view = f'viewBox="0 0 {STRIP_W:g} {STRIP_H:g}"'
        return f'<svg class="strip" {view} role="img" aria-label="{label}">{"".join(self._parts)}{frame}</svg>'
