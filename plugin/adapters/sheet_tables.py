"""The layers of `site_map` whose rows a sheet tells of, as tables of columns: cameras, subjects, sightlines, alignments, standpoints."""

from collections import Counter

import numpy as np
from qgis.core import QgsFeatureRequest, QgsProcessingFeatureSource
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from . import planned
from .crs import lon_lat
from .drawn import number_told, place_in
from .keeping import column_of
from .parameters import blank, text_of
from .points import read_points, text_key
from .sheet_parameters import SHEET_BY, sheet_by
from .translation import counted, tr

NUMBERS = ("bearing_deg", "mag_deg", "dist_m")
TEXTS = ("camera", "subject", "sight", "allowed")
LINES_NEED = ("camera", "subject", "bearing_deg", "dist_m")
PLACES = ("CAMERAS", "ALIGNMENTS", "SIGHTLINES", "STANDPOINTS", "SUBJECTS")
MADE_BY = {"SIGHTLINES": "sightlines or alignments", "STANDPOINTS": "standpoints (POINTS)"}


def refusals(algorithm, parameters, context):
    """Layers that do not tell what a sheet needs; a generator of sentences."""
    for name, made_by in MADE_BY.items():
        source = algorithm.parameterAsSource(parameters, name, context)
        missing = [field for field in LINES_NEED if source is not None and place_in(source.fields(), field) < 0]
        if missing:
            yield tr("{name}: '{layer}' has no field {fields}. Choose a result of {made_by}.").format(
                name=name, layer=source.sourceName(), fields=", ".join(missing), made_by=tr(made_by)
            )
    if not blank(parameters.get("ALIGNMENTS")):
        yield from planned.refusals(algorithm, parameters, context)


def nothing_to_make_sheets_of(algorithm, parameters, context):
    """No layer that holds a place, or none that has the field by which sheets are made; a generator of sentences."""
    given = {name: algorithm.parameterAsSource(parameters, name, context) for name in PLACES if not blank(parameters.get(name))}
    if not given:
        yield tr("There is nothing to make a sheet of. Give {names}, or several of them.").format(names=", ".join(PLACES))
        return
    field, own = sheet_by(parameters), {"CAMERAS": "camera", "SUBJECTS": "subject"}
    has = any(place_in(source.fields(), field or "") >= 0 or own.get(name) == field for name, source in given.items() if source is not None)
    if field not in (None, SHEET_BY) and not has:
        yield tr("SHEET_BY: none of {names} has a field '{field}'. Choose a field of theirs, or leave it blank for one sheet.").format(
            names=", ".join(given), field=field
        )


class Tables:
    """Tables by the names of `plan.site_sheets.MAKERS`, each only where its layer is given.

    Attributes
    ----------
    tables : dict of str to dict
        As `plan.site_sheets.sheets_of` takes them.
    alignments : Planned or None
        The rows of the table of alignments, with all that they tell.
    """

    def __init__(self, algorithm, parameters, context, feedback, position_error_m):
        self._algorithm, self._parameters, self._context, self._feedback = algorithm, parameters, context, feedback
        self._key_field = sheet_by(parameters)
        self.tables, self.alignments = {}, None
        for name, column in (("CAMERAS", "camera"), ("SUBJECTS", "subject")):
            if not blank(parameters.get(name)):
                self.tables[name.lower()] = self._points(name, column)
        if not blank(parameters.get("ALIGNMENTS")):
            self.tables["alignments"] = self._alignments(position_error_m)
        for name in ("SIGHTLINES", "STANDPOINTS"):
            if not blank(parameters.get(name)):
                self.tables[name.lower()] = self._told(name)

    def _source(self, name):
        return self._algorithm.parameterAsSource(self._parameters, name, self._context)

    def key_at(self, source):
        """Where the field by which sheets are made stands in a layer, -1 where it is not there."""
        return place_in(source.fields(), self._key_field) if self._key_field else -1

    def _points(self, name, column):
        source = self._source(name)
        name_field, singular = text_of(self._parameters, f"{name[:-1]}_NAME"), name[:-1].lower()
        expressions = self._algorithm.createExpressionContext(self._parameters, self._context, source)
        key_at = self.key_at(source)
        keep = [source.fields().at(key_at).name()] if key_at >= 0 else []
        points = read_points(source, self._context, expressions, self._feedback, singular, name_field, keep=keep)
        points.log(name, self._feedback)
        table = {column: points.name, "lon_deg": (points.lon_deg + 180.0) % 360.0 - 180.0, "lat_deg": points.lat_deg}
        if self._key_field == column:  # the name decides, whatever the field of that name holds
            table["key"] = points.name
        elif keep:
            table["key"] = column_of([key_text(value) for value in points.kept.columns[0]] if len(points) else [])
        return table

    def _alignments(self, position_error_m):
        self.alignments = planned.Planned(
            self._algorithm, self._parameters, self._context, self._feedback, position_error_m, also=self._key_field
        )
        self.alignments.log(self._feedback)
        rows = dict(self.alignments.rows)
        table = {name: rows[name] for name in (*NUMBERS, *TEXTS, "lon_deg", "lat_deg")}
        if place_in(self._source("ALIGNMENTS").fields(), self._key_field or "") >= 0:
            table["key"] = column_of([key_text(value) for value in rows["also"].tolist()])
        return _with_names(table)

    def _told(self, name):
        """Rows of a layer of sightlines or standpoints."""
        source, skipped = self._source(name), Counter()
        at = {field: place_in(source.fields(), field) for field in (*NUMBERS, *TEXTS)}
        key_at, features, read = self.key_at(source), 0, []
        for feature in source.getFeatures(QgsFeatureRequest(), QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
            if self._feedback.isCanceled():
                break
            features += 1
            geometry, attributes = feature.geometry(), feature.attributes()
            numbers = [number_told(attributes[at[field]]) if at[field] >= 0 else np.nan for field in NUMBERS]
            reason = _unfit(geometry, *numbers)
            if reason:
                skipped[reason] += 1
                continue
            begin = geometry.vertexAt(0)
            texts = [text_key(attributes[at[field]]) if at[field] >= 0 else None for field in TEXTS]
            read.append((begin.x(), begin.y(), key_text(attributes[key_at]) if key_at >= 0 else None, *numbers, *texts))
        columns = list(zip(*read)) if read else [()] * (3 + len(NUMBERS) + len(TEXTS))
        lon, lat = lon_lat(columns[0], columns[1], source.sourceCrs(), self._context.transformContext())
        usable = np.isfinite(lon)
        skipped[tr("with no place on the Earth")] += int((~usable).sum())
        table = {"lon_deg": (lon[usable] + 180.0) % 360.0 - 180.0, "lat_deg": lat[usable]}
        table.update({field: np.array(column, dtype=float)[usable] for field, column in zip(NUMBERS, columns[3:])})
        table.update({field: column_of(column)[usable] for field, column in zip(TEXTS, columns[3 + len(NUMBERS) :])})
        if key_at >= 0:
            table["key"] = column_of(columns[2])[usable]
        self._feedback.pushInfo(
            tr("{label}: {n:,} rows from {total:,} features.").format(label=name, n=len(table["lon_deg"]), total=features)
        )
        if sum(skipped.values()):
            self._feedback.pushWarning(tr("{label}: skipped {reasons}.").format(label=name, reasons=counted(skipped)))
        return _with_names(table)


def key_text(value):
    """A value of the field by which sheets are made, as a text; None where it is blank."""
    if isinstance(value, (QDate, QDateTime)):
        return value.toString(Qt.DateFormat.ISODate) or None
    return text_key(value)


def _with_names(table):
    """The table with words where a name is blank, and '' for a sight that is not told."""
    for name, word in (("camera", tr("camera")), ("subject", tr("subject")), ("sight", "")):
        table[name] = column_of([value or word for value in table[name].tolist()])
    return table


def _unfit(geometry, bearing_deg, _, dist_m):
    """Why a row cannot be used, or None."""
    if geometry.isNull() or geometry.isEmpty():
        return tr("with no geometry")
    if not (np.isfinite(bearing_deg) and dist_m > 0.0):
        return tr("whose bearing_deg or dist_m is blank")
    return None
