"""A result of `night_windows` as it is read for a chart: the nights of each site and body."""

from collections import Counter, defaultdict
from dataclasses import dataclass

import numpy as np
from qgis.core import QgsFeatureRequest, QgsProcessingException, QgsProcessingFeatureSource

from ..names import BODIES
from ..plan import clock
from ..plan.season import TIMES
from .crs import lon_lat
from .drawn import number_told, place_in, utc_s_told
from .keeping import column_of
from .moments import date_of
from .parameters import blank
from .points import text_key
from .translation import counted, tr

NUMBERS = ("minutes", "tilt_deg", "moon_lit", "dark_min")
TEXTS = ("site", "site_id", "body", "tz", "lean")
NEEDED = ("night", *TEXTS, *TIMES, *NUMBERS)
MOST_NIGHTS = 400  # in a chart: more columns than that could not be told apart


@dataclass(frozen=True)
class SiteNights:
    """A site under a body: who, where, by which clock, and its nights as `plan.season` takes them, with `minutes`."""

    name: str
    body: str
    zone: str
    place: str
    nights: dict

    @property
    def body_told(self):
        """The body as a person reads it; a name that the plugin does not know stays."""
        return BODIES.get(self.body, self.body)


def refusals(algorithm, parameters, context):
    """A layer that is no result of night windows; a generator of sentences."""
    source = algorithm.parameterAsSource(parameters, "NIGHTS", context)
    missing = [name for name in NEEDED if place_in(source.fields(), name) < 0]
    if missing:
        yield tr("NIGHTS: '{layer}' has no field {fields}. Choose the OUTPUT of night_windows.").format(
            layer=source.sourceName(), fields=", ".join(missing)
        )


def read(algorithm, parameters, context, feedback):
    """The nights of each site and body, in the order of the layer; what cannot be used is told.

    Raises
    ------
    QgsProcessingException
        A site has more than `MOST_NIGHTS`.
    """
    source = algorithm.parameterAsSource(parameters, "NIGHTS", context)
    at = {name: place_in(source.fields(), name) for name in NEEDED}
    found, skipped = defaultdict(list), Counter()
    for feature in source.getFeatures(QgsFeatureRequest(), QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
        if feedback.isCanceled():
            return []
        geometry, attributes = feature.geometry(), feature.attributes()
        told = {name: attributes[place] for name, place in at.items()}
        night, zone = _night(told["night"]), text_key(told["tz"])
        if geometry.isNull() or geometry.isEmpty():
            skipped[tr("with no geometry")] += 1
        elif night is None:
            skipped[tr("with no date in night")] += 1
        elif not _is_zone(zone):
            skipped[tr("with no time zone in tz")] += 1
        else:
            point = geometry.vertexAt(0)
            key = (*(text_key(told[name]) or "" for name in ("site", "site_id", "body")), zone, point.x(), point.y())
            numbers = [number_told(told[name]) for name in NUMBERS]
            found[key].append((night, *numbers, *(_moment(told[name]) for name in TIMES), text_key(told["lean"])))
    if skipped:
        feedback.pushWarning(tr("NIGHTS: skipped {reasons}.").format(reasons=counted(skipped)))
    if not found:
        return []
    lon, lat = lon_lat([key[4] for key in found], [key[5] for key in found], source.sourceCrs(), context.transformContext())
    return [_site(key, rows, *place) for (key, rows), *place in zip(found.items(), lon.tolist(), lat.tolist())]


def _site(key, rows, lon_deg, lat_deg):
    name, site_id, body, zone = key[:4]
    name = name or tr("site {id}").format(id=site_id)
    columns = list(zip(*rows))
    nights = {"night": np.array(columns[0], dtype="datetime64[D]"), "lean": column_of(columns[-1])}
    nights.update((name, np.array(column, dtype=float)) for name, column in zip((*NUMBERS, *TIMES), columns[1:-1]))
    span = int((nights["night"].max() - nights["night"].min()).astype(int)) + 1
    if span > MOST_NIGHTS:
        raise QgsProcessingException(
            tr("'{site}' has nights over {n:,} days, more than the {most} of a chart. Select those of one year.").format(
                site=name, n=span, most=MOST_NIGHTS
            )
        )
    place = f"{abs(lat_deg):.5f}° {'S' if lat_deg < 0 else 'N'}, {abs(lon_deg):.5f}° {'W' if lon_deg < 0 else 'E'}"
    if not np.isfinite(lat_deg):
        place = tr("Place not known")
    return SiteNights(name, body, zone, place, nights)


def _night(value):
    try:
        return None if blank(value) else date_of(value)
    except ValueError:
        return None


def _moment(value):
    try:
        return utc_s_told(value)
    except ValueError:
        return np.nan


def _is_zone(name):
    try:
        return name is not None and bool(clock.zone(name))
    except ValueError:
        return False
