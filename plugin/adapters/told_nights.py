"""Nights as a layer of `night_windows` tells them, site by site and body by body."""

from collections import Counter
from dataclasses import dataclass

import numpy as np
from qgis.core import NULL

from ..names import BODIES
from ..plan import clock
from ..plan.season_chart import MOMENTS, years
from .drawn import number_told, place_in
from .moments import date_of, moment
from .parameters import blank
from .points import read_points, text_key
from .translation import counted, tr

# the text of a moment, which every kind of file keeps whole: wall clock and offset
TEXTS = dict(zip(MOMENTS, ("dusk_loc", "dawn_loc", "start_loc", "t_local", "end_loc")))
NUMBERS = ("minutes", "dark_min", "tilt_start", "tilt_deg", "tilt_end")
WHO = ("site", "site_id", "body")
NEEDED = (*WHO, "night", "tz", *TEXTS.values(), *NUMBERS, "lean", "reason")


def refusals(algorithm, parameters, context):
    """Fields without which rows are no nights; a generator of sentences."""
    source = algorithm.parameterAsSource(parameters, "NIGHTS", context)
    missing = [name for name in NEEDED if place_in(source.fields(), name) < 0]
    if missing:
        yield tr("NIGHTS: '{layer}' has no field {fields}. Choose the nights that night_windows gives.").format(
            layer=source.sourceName(), fields=", ".join(missing)
        )


@dataclass(frozen=True)
class Season:
    """Nights of one site and body, each once and in order: `rows` as `plan.season_chart.chart_of` takes them, and `reason`."""

    site: str
    body: str
    zone_name: str
    lon_deg: float
    lat_deg: float
    rows: dict


class ToldNights:
    """The rows of a layer of nights, by site and body; a site is a name, an id and a place."""

    def __init__(self, algorithm, parameters, context, feedback):
        self.source = algorithm.parameterAsSource(parameters, "NIGHTS", context)
        fields = self.source.fields()
        keep = [fields.at(place_in(fields, name)).name() for name in NEEDED]
        expressions = algorithm.createExpressionContext(parameters, context, self.source)
        self._points = read_points(self.source, context, expressions, feedback, "site", keep=keep)
        self._points.log("NIGHTS", feedback)
        self._columns = dict(zip(NEEDED, self._points.kept.columns)) if len(self._points) else {}
        self.skipped = Counter()
        self._groups = self._grouped()

    def _grouped(self):
        """The row of each night of each site and body, in the order in which the layer first names them."""
        groups = {}
        if len(self._points):
            who = zip(*(self._columns[name].tolist() for name in WHO), self._points.x.tolist(), self._points.y.tolist())
            for row, (site, site_id, body, x, y) in enumerate(who):
                groups.setdefault((text_key(site), text_key(site_id), text_key(body), x, y), []).append(row)
        by_night = {who: self._nights(rows) for who, rows in groups.items()}
        return {who: nights for who, nights in by_night.items() if nights}

    def __len__(self):
        return len(self._groups)

    @property
    def pictures(self):
        """How many pictures of a year at most they fill."""
        return sum(int(years(np.array(list(nights)))[-1]) + 1 for nights in self._groups.values())

    def seasons(self):
        """Each `Season`, a year at most, of which a night can be used, with the part of the rows before it."""
        done = 0
        for (site, site_id, body, *_), rows in self._groups.items():
            zone_name = self._zone_name(rows)
            nights = np.array(list(rows))
            year = years(nights) if zone_name else np.empty(0)
            for k in np.unique(year).tolist():
                told = [self._told(rows[night], night) for night in nights[year == k]]
                told = [columns for columns in told if columns]
                if told:
                    name = site or f"site {site_id or '?'}"
                    at = rows[nights[0]]
                    columns = {key: _column([columns[key] for columns in told]) for key in told[0]}
                    place = float(self._points.lon_deg[at]), float(self._points.lat_deg[at])
                    yield Season(name, body if body in BODIES else "", zone_name, *place, columns), done / len(self._points)
                done += int((year == k).sum())

    def _nights(self, rows):
        """The row of each night, in order; the first where a night is told twice."""
        found = {}
        for row in rows:
            value = self._columns["night"][row]
            try:
                night = None if blank(value) else date_of(value.replace("/", "-") if isinstance(value, str) else value)
            except ValueError:
                night = None
            if night is None:
                self.skipped[tr("whose night is no date")] += 1
            elif night in found:
                self.skipped[tr("that tell a night of a site again")] += 1
            else:
                found[night] = row
        return dict(sorted(found.items()))

    def _zone_name(self, rows):
        """The time zone of the first of some nights that tells one, or None if it is none."""
        names = (text_key(self._columns["tz"][row]) for row in rows.values())
        name = next((name for name in names if name), "")
        try:
            clock.zone(name)
        except ValueError:
            self.skipped[tr("whose tz is no time zone")] += len(rows)
            return None
        return name

    def _told(self, row, night):
        """What a row tells, or None where a moment of it cannot be read."""
        told = {"night": night, "lean": text_key(self._columns["lean"][row]), "reason": text_key(self._columns["reason"][row])}
        told.update({name: number_told(self._columns[name][row]) for name in NUMBERS})
        try:
            told.update({name: _utc_s(self._columns[text][row]) for name, text in TEXTS.items()})
        except ValueError:
            self.skipped[tr("with a local time that cannot be read")] += 1
            return None
        return told

    def log(self, feedback):
        """Tell of rows that could not be used."""
        if self.skipped:
            feedback.pushWarning(tr("NIGHTS: skipped rows {reasons}.").format(reasons=counted(self.skipped)))


def _utc_s(value):
    """The moment of a local text with its offset, nan where there is none. [s of UTC]."""
    if value is None or value == NULL or value == "":
        return np.nan
    told = moment(str(value))
    if told.tzinfo is None:
        raise ValueError(value)
    return told.timestamp()


def _column(values):
    if isinstance(values[0], (float, np.datetime64)):
        return np.array(values)
    column = np.empty(len(values), dtype=object)
    column[:] = values
    return column
