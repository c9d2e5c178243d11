"""The north arrow of a sheet as an SVG: true north whole, magnetic north a thin needle, the page's upright being the map's grid north."""

import base64

WIDTH, HEIGHT, FOOT_Y, TRUE_LENGTH, MAGNETIC_LENGTH = 60.0, 100.0, 88.0, 64.0, 60.0
INK = "#222222"


def north_arrow(true_deg, declination_deg):
    """The picture's path, which holds the picture itself.

    Parameters
    ----------
    true_deg : float
        True north, clockwise from the map's upright. [deg]
    declination_deg : float
        Magnetic north, clockwise from true north; nan where it is not known. [deg]
    """
    x, tip = WIDTH / 2.0, FOOT_Y - TRUE_LENGTH
    arrow = (
        f'<path d="M{x} {tip} L{x + 8} {FOOT_Y - 20} L{x} {FOOT_Y - 27} Z" fill="{INK}"/>'
        f'<path d="M{x} {tip} L{x - 8} {FOOT_Y - 20} L{x} {FOOT_Y - 27} Z" fill="#ffffff" stroke="{INK}" stroke-width="1.2"/>'
        f'<path d="M{x} {FOOT_Y - 27} V{FOOT_Y}" stroke="{INK}" stroke-width="1.2"/>'
        f'<path d="M{x - 4.5} {tip - 4} V{tip - 16} L{x + 4.5} {tip - 4} V{tip - 16}" fill="none" stroke="{INK}" stroke-width="2.4"/>'
    )
    needle = ""
    if declination_deg == declination_deg:
        tip = FOOT_Y - MAGNETIC_LENGTH
        side = 4.0 if declination_deg >= 0.0 else -4.0
        needle = (
            f'<g transform="rotate({declination_deg:.3f} {x} {FOOT_Y})"><path d="M{x} {FOOT_Y} V{tip} L{x + side} {tip + 9}" fill="none" '
            f'stroke="{INK}" stroke-width="0.9"/></g>'
        )
    picture = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{HEIGHT}" viewBox="0 0 {WIDTH} {HEIGHT}">'
        f'<g transform="rotate({true_deg:.3f} {x} {FOOT_Y})">{arrow}{needle}</g></svg>'
    )
    return "base64:" + base64.b64encode(picture.encode("ascii")).decode("ascii")
