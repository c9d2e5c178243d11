"""The map of a sheet: its zone of grid coordinates, a scale that maps bear, and round lengths for its grid and its scale bar."""

import numpy as np

SOUTHMOST_DEG, NORTHMOST_DEG = -80.0, 84.0  # of UTM; nearer to the poles its sister, UPS, holds
UPS_EPSG = {True: 5041, False: 5042}  # north, south; eastings first
UTM_EPSG = {True: 32600, False: 32700}
# Zones that are wider than 6° of longitude: the south-west of Norway, and Svalbard: south, north, west, east [deg], zone.
WIDENED = (
    (56.0, 64.0, 3.0, 12.0, 32),
    *((72.0, 84.0, *zone) for zone in ((0.0, 9.0, 31), (9.0, 21.0, 33), (21.0, 33.0, 35), (33.0, 42.0, 37))),
)
SCALES = np.outer(10.0 ** np.arange(2, 8), (1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 7.5)).ravel()
ROUND = (1.0, 2.0, 5.0, 10.0)
M_PER_DEG, WIDEST_DEG = 111_320.0, 30.0  # of latitude; between meridians at a pole


def grid_zone(lon_deg, lat_deg):
    """The zone of UTM, or of UPS near the poles, in which a place has its coordinates.

    Parameters
    ----------
    lon_deg, lat_deg : float
        The place; longitude any turn. [deg]

    Returns
    -------
    epsg : int
        Of the projected CRS on WGS 84.
    name : str
        Such as `25N`; `UPS north`, `UPS south`.

    Notes
    -----
    NGA.SIG.0012_2.0.0_UTMUPS (2014), from memory: 80°S to 84°N, with the widened zones of Norway and Svalbard; the equator is north.
    """
    north = lat_deg >= 0.0
    if not SOUTHMOST_DEG <= lat_deg <= NORTHMOST_DEG:
        return UPS_EPSG[north], f"UPS {'north' if north else 'south'}"
    lon = (lon_deg + 180.0) % 360.0 - 180.0
    zone = int((lon + 180.0) // 6.0) + 1
    for south, top, west, east, wide in WIDENED:
        if south <= lat_deg and (lat_deg < top or top == NORTHMOST_DEG) and west <= lon < east:
            zone = wide
    return UTM_EPSG[north] + zone, f"{zone}{'N' if north else 'S'}"


def usual_scale(least):
    """The denominator of the largest usual scale that is no larger than 1 to `least`."""
    fits = SCALES[least * (1.0 - 1e-9) <= SCALES]
    return float(fits[0]) if fits.size else float(least)


def round_length(length):
    """The longest of 1, 2, 5, 10, 20 ... that is no longer than a length."""
    power = 10.0 ** np.floor(np.log10(length) + 1e-12)
    return float(power * max(step for step in ROUND if step * power <= length * (1.0 + 1e-9)))


def framed(x, y, width, height, margin):
    """Centre of a map on which places are shown, and the least denominator of its scale.

    Parameters
    ----------
    x, y : ndarray
        Grid coordinates of what is to be seen; one place at least. [m]
    width, height : float
        Of the map on paper. [m]
    margin : float
        Part of the map, on each side, that stays free.

    Returns
    -------
    x, y, denominator : float
        The denominator is 0 where there is one place alone.
    """
    x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    free = 1.0 - 2.0 * margin
    need = max(np.ptp(x) / (width * free), np.ptp(y) / (height * free))
    return float((x.min() + x.max()) / 2.0), float((y.min() + y.max()) / 2.0), float(need)


def clear_of_ends(low, high, step, free_low, free_high):
    """How far to move an axis of a map, at least, so that no line of its grid stands too near to either end; a line may leave the map.

    Parameters
    ----------
    low, high : float
        The ends.
    step : float
        From line to line.
    free_low, free_high : float
        What stays free of lines, inside each end; together less than `step`.

    Returns
    -------
    float
        To be added to both ends.
    """
    hair = 1e-6 * step
    ways = [0.0]
    for end, inner, outer in ((low, -free_low, hair), (high, free_high, -hair)):
        line = step * np.floor(end / step)
        ways += [at + aside - end for at in (line, line + step) for aside in (inner, outer)]
    ways.sort(key=abs)
    return float(next((way for way in ways if _is_clear(low + way, high + way, step, free_low - hair, free_high - hair)), 0.0))


def _is_clear(low, high, step, free_low, free_high):
    return np.ceil(low / step) * step - low >= free_low and high - np.floor(high / step) * step >= free_high


def graticule(length_m, lat_deg):
    """Round intervals of longitude and latitude that are no longer than a length, on the ground about a latitude. [deg]."""
    lat = round_length(length_m / M_PER_DEG)
    shrunk = np.cos(np.radians(lat_deg))
    return (WIDEST_DEG if lat >= WIDEST_DEG * shrunk / 2.0 else round_length(length_m / M_PER_DEG / shrunk)), lat
