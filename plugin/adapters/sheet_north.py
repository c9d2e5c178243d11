"""The north arrow of a sheet as an SVG: true north whole, magnetic north a thin needle, the page's upright being the map's grid north."""

INK = "#222222"
NARROW = 24.0  # needles that lean no more than this, in degrees, stand on the foot of a narrow picture; others turn about its middle
LETTER_UP = 16.0  # from the tip to the top of the N


def north_arrow(true_deg, declination_deg):
    """The picture, as SVG.

    Parameters
    ----------
    true_deg : float
        True north, clockwise from the map's upright. [deg]
    declination_deg : float
        Magnetic north, clockwise from true north; nan where it is not known. [deg]
    """
    lean = [abs((deg + 180.0) % 360.0 - 180.0) for deg in (true_deg, true_deg + declination_deg) if deg == deg]
    width, length, middle = (60.0, 66.0, 88.0) if max(lean) <= NARROW else (120.0, 40.0, 60.0)
    x, tip = width / 2.0, middle - length
    shoulder, notch = middle - 0.31 * length, middle - 0.42 * length
    letter = f"M{x - 4.5} {tip - 4} V{tip - LETTER_UP} L{x + 4.5} {tip - 4} V{tip - LETTER_UP}"
    arrow = (
        f'<path d="M{x} {tip} L{x + 8} {shoulder} L{x} {notch} Z" fill="{INK}"/>'
        f'<path d="M{x} {tip} L{x - 8} {shoulder} L{x} {notch} Z" fill="#ffffff" stroke="{INK}" stroke-width="1.2"/>'
        f'<path d="M{x} {notch} V{middle}" stroke="{INK}" stroke-width="1.2"/>'
        f'<path d="{letter}" fill="none" stroke="{INK}" stroke-width="2.4"/>'
    )
    needle = ""
    if declination_deg == declination_deg:
        side = 4.0 if declination_deg >= 0.0 else -4.0
        needle = (
            f'<g transform="rotate({declination_deg:.3f} {x} {middle})">'
            f'<path d="M{x} {middle} V{tip + 4} L{x + side} {tip + 13}" fill="none" stroke="{INK}" stroke-width="0.9"/></g>'
        )
    height = 100.0 if width == 60.0 else width
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}">'
        f'<g transform="rotate({true_deg:.3f} {x} {middle})">{arrow}{needle}</g></svg>'
    )
