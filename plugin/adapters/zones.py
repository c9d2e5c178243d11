"""The time zone of each site: the one named, else the zone of the place; and whose clock may be another one."""

from collections import Counter

import numpy as np

from ..plan.zones import NEAR_M, find_neighbours, find_zones
from .parameters import text_of
from .translation import counted, tr

DAY_S = 86400.0
SHOWN_ZONES, SHOWN_BORDERS, SHOWN_NAMES = 12, 10, 3  # in the log, lest a layer of the world fill it


def zones_of_sites(parameters, lon_deg, lat_deg, feedback):
    """Names of the zones, and for each site which of them holds.

    Parameters
    ----------
    parameters : dict
        Of the algorithm; TIME_ZONE is read.
    lon_deg, lat_deg : ndarray (S,)

    Returns
    -------
    zone_names : list of str
    zone_index : ndarray of int (S,)
    """
    named = text_of(parameters, "TIME_ZONE")
    if named:
        return [named], np.zeros(lon_deg.size, dtype=int)
    if not lon_deg.size:
        return ["UTC"], np.zeros(0, dtype=int)
    zone_names, zone_index = find_zones(lon_deg, lat_deg)
    sites_in = Counter(dict(zip(zone_names, np.bincount(zone_index).tolist())))
    shown = counted({tr("in {zone}").format(zone=zone): count for zone, count in sites_in.most_common(SHOWN_ZONES)})
    feedback.pushInfo(tr("Time zone of each place, as TIME_ZONE is blank: {zones}.").format(zones=_and_more(shown, sites_in, SHOWN_ZONES)))
    return zone_names, zone_index


def warn_near_other_clocks(parameters, points, zone_names, zone_index, first_utc_s, last_utc_s, feedback):
    """One warning about the points that lie so near to another zone, with another clock at some time of the run, that theirs is in doubt.

    Parameters
    ----------
    parameters : dict
        Of the algorithm; where TIME_ZONE names a zone there is no doubt.
    points : Points
    zone_names, zone_index
        As `zones_of_sites` gives them.
    first_utc_s, last_utc_s : float
        Span of the run; clocks are compared once a day.
    """
    if text_of(parameters, "TIME_ZONE") or not len(points):
        return
    days = np.append(np.arange(first_utc_s, last_utc_s, DAY_S), last_utc_s)
    other, _ = find_neighbours(points.lon_deg, points.lat_deg, zone_names, zone_index, days)
    borders = {}
    for i in np.flatnonzero(other != None).tolist():  # noqa: E711  each element is compared
        borders.setdefault((zone_names[zone_index[i]], other[i]), []).append(points.name[i])
    if borders:
        largest = sorted(borders.items(), key=lambda border: -len(border[1]))[:SHOWN_BORDERS]
        feedback.pushWarning(
            tr(
                "{n:,} of {total:,} points lie within {km:g} km of a zone whose clock differs during this run, or where two are in use: "
                "{borders}. Ask which clock holds there; TIME_ZONE sets it."
            ).format(
                n=sum(map(len, borders.values())),
                total=len(points),
                km=NEAR_M / 1000.0,
                borders=_and_more("; ".join(_border(*border) for border in largest), borders, SHOWN_BORDERS),
            )
        )


def _border(zones, names):
    distinct = list(dict.fromkeys(names))
    return tr("{n:,} in {own} near {other} ({names})").format(
        n=len(names), own=zones[0], other=zones[1], names=_and_more(", ".join(distinct[:SHOWN_NAMES]), distinct, SHOWN_NAMES)
    )


def _and_more(text, all_of_them, shown):
    """The text of the first few, and how many there are beside them."""
    return tr("{few} and {n:,} more").format(few=text, n=len(all_of_them) - shown) if len(all_of_them) > shown else text
