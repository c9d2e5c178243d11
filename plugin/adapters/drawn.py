"""Sightlines that are drawn already: a layer of lines as `sightlines` or `alignments` make it, in place of cameras and subjects."""

from collections import Counter

import numpy as np
from qgis.core import NULL, QgsFeatureRequest, QgsProcessingFeatureSource
from qgis.PyQt.QtCore import QDateTime, Qt

from ..names import SHORT
from ..plan.clock import instants
from ..plan.sightlines import Cameras
from .crs import lon_lat
from .keeping import Kept, column_of
from .moments import moment
from .parameters import fields_of
from .points import Points, text_key
from .translation import counted, tr

NEEDED = ("bearing_deg", "dist_m", "top_alt_deg")
WELCOME = ("base_alt_deg", "width_deg", "cam_z_m")
TEXTS = ("camera", "subject", "heights", "sight", "body")
IDS = ("camera_id", "subject_id")
WHO = ("camera", "camera_id", "subject", "subject_id")
LINES_AT_ONCE = 25_000


def place_in(fields, name):
    """Where a field of the contract stands, also by the ten letters that a Shapefile keeps; -1 where it is not there."""
    whole = fields.lookupField(name)
    return fields.lookupField(name[:SHORT]) if whole < 0 else whole


def refusals(algorithm, parameters, context):
    """Fields without which lines are no sightlines; a generator of sentences."""
    source = algorithm.parameterAsSource(parameters, "SIGHTLINES", context)
    missing = [name for name in NEEDED if place_in(source.fields(), name) < 0]
    if missing:
        yield tr("SIGHTLINES: '{layer}' has no field {fields}. Choose a result of sightlines or alignments.").format(
            layer=source.sourceName(), fields=", ".join(missing)
        )


def has_times(algorithm, parameters, context):
    """Whether the layer tells a time of each line."""
    return place_in(algorithm.parameterAsSource(parameters, "SIGHTLINES", context).fields(), "t_utc") >= 0


class Drawn:
    """Sightlines of a layer, with what they tell, as `Pairing` gives those of cameras and subjects.

    Attributes
    ----------
    cameras : Points
        Where the lines begin, one a line.
    places : plan.sightlines.Cameras
        The same, as the pure folders take them; the lens at `cam_z_m`.
    t_utc_s : ndarray, shape (L,)
        Moments of the lines; nan where they tell none. [s of UTC]
    body : ndarray of object, shape (L,)
        Ids of bodies, or None.
    """

    def __init__(self, algorithm, parameters, context, feedback):
        source = algorithm.parameterAsSource(parameters, "SIGHTLINES", context)
        self.layer, self.features, self.skipped = source.sourceName(), 0, Counter()
        fields = source.fields()
        self._at = {name: place_in(fields, name) for name in (*NEEDED, *WELCOME, *TEXTS, *IDS, "t_utc")}
        keep_at = [fields.lookupField(name) for name in fields_of(parameters, "KEEP_FIELDS")]
        rows = list(self._read(source, keep_at, feedback))
        names = (*NEEDED, *WELCOME, *TEXTS, *IDS)
        x, y, t_utc_s, kept, *told = list(zip(*rows)) if rows else [()] * (4 + len(names))
        lon, lat = lon_lat(x, y, source.sourceCrs(), context.transformContext())
        usable = np.isfinite(lon)
        self.skipped.update({tr("with no place on the Earth"): int((~usable).sum())})
        told = dict(zip(names, told))
        self._told = {name: np.array(told[name], dtype=float)[usable] for name in (*NEEDED, *WELCOME)}
        self._told.update({name: column_of(told[name])[usable] for name in TEXTS})
        self._told.update({name: np.array(told[name], dtype=np.int64)[usable] for name in IDS})
        self.t_utc_s, self.body = np.array(t_utc_s, dtype=float)[usable], self._told.pop("body")
        lens_z, camera, camera_id = self._told.pop("cam_z_m"), self._told["camera"], self._told["camera_id"]
        x, y = (np.array(values, dtype=float)[usable] for values in (x, y))
        kept = Kept([fields.at(i) for i in keep_at], [column_of(values)[usable] for values in zip(*kept)])
        self.cameras = Points(x, y, lon[usable], lat[usable], lens_z, camera_id, camera, camera, {}, kept=kept)
        self.places = Cameras(lon[usable], lat[usable], 0.0, lens_z)

    def _read(self, source, keep_at, feedback):
        """Begin, moment, kept values, numbers, texts and ids of each line that can be used."""
        for feature in source.getFeatures(QgsFeatureRequest(), QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
            if feedback.isCanceled():
                return
            self.features += 1
            geometry, attributes = feature.geometry(), feature.attributes()
            if geometry.isNull() or geometry.isEmpty():
                self.skipped[tr("with no geometry")] += 1
                continue
            told = {name: attributes[at] if at >= 0 else None for name, at in self._at.items()}
            numbers = [number_told(told[name]) for name in (*NEEDED, *WELCOME)]
            reason = _unfit(*numbers)
            if reason:
                self.skipped[reason] += 1
                continue
            begin = geometry.vertexAt(0)
            texts = [text_key(told[name]) for name in TEXTS]
            ids = [feature.id() if told[name] in (None, NULL) else int(told[name]) for name in IDS]
            kept = [attributes[i] for i in keep_at]
            yield (begin.x(), begin.y(), utc_s_told(told["t_utc"]), kept, *numbers, *texts, *ids)

    @property
    def count(self):
        """Lines that can be used."""
        return len(self.cameras)

    def most(self, limit, feedback):
        """How many there are."""
        return self.count

    def read_ground(self, feedback, go_on):
        """Nothing: the lines tell of heights themselves."""

    def measured(self, go_on):
        """Tables of sightlines, with the part of the work before and after each, 0 to 1."""
        for first in range(0, self.count, LINES_AT_ONCE):
            index = np.arange(first, min(first + LINES_AT_ONCE, self.count))
            table = {"camera_index": index, **{name: column[index] for name, column in self._told.items() if name not in WHO}}
            table["width_deg"] = np.nan_to_num(table["width_deg"])
            table["height_deg"] = table["top_alt_deg"] - table["base_alt_deg"]
            yield table, first / self.count, (index[-1] + 1) / self.count

    def names(self, table):
        """The columns that tell who is who."""
        return {name: self._told[name][table["camera_index"]] for name in WHO}

    def log(self, feedback):
        """Tell what was read, and what the lines do not tell."""
        feedback.pushInfo(tr("SIGHTLINES: {n:,} lines from {total:,} features.").format(n=self.count, total=self.features))
        if sum(self.skipped.values()):
            feedback.pushWarning(tr("SIGHTLINES: skipped {reasons}.").format(reasons=counted(self.skipped)))
        if self._at["base_alt_deg"] < 0:
            feedback.pushWarning(
                tr("SIGHTLINES has no base_alt_deg: each subject is taken as its top alone, and whether its foot fits is not known.")
            )
        if self._at["width_deg"] < 0:
            feedback.pushWarning(tr("SIGHTLINES has no width_deg: each subject is taken as having no width."))

    def why_none(self):
        """The reason for having no line at all."""
        return tr("there is no sightline that can be used")


def number_told(value):
    try:
        return np.nan if value is None or value == NULL else float(value)
    except (TypeError, ValueError):
        return np.nan


def _unfit(bearing_deg, dist_m, top_alt_deg, base_alt_deg, width_deg, _):
    """Why the numbers of a line cannot be used, or None."""
    if not np.isfinite([bearing_deg, dist_m, top_alt_deg]).all():
        return tr("whose bearing_deg, dist_m or top_alt_deg is blank")
    low_deg, width_deg = np.nan_to_num([base_alt_deg, width_deg])
    if not (dist_m > 0.0 and low_deg > -90.0 and top_alt_deg < 90.0 and 0.0 <= width_deg < 180.0) or base_alt_deg > top_alt_deg:
        return tr("whose dist_m, altitudes or width_deg no subject has")
    return None


def utc_s_told(value):
    """A time of a column that holds UTC, whatever the file made of it; nan where there is none. [s]."""
    if value is None or value == NULL:
        return np.nan
    if isinstance(value, QDateTime) and value.isValid() and value.timeSpec() == Qt.TimeSpec.LocalTime:
        value = QDateTime(value.date(), value.time(), Qt.TimeSpec.UTC)
    if isinstance(value, str):
        value = value.replace("/", "-")  # as a Shapefile holds it: 2027/06/06 00:48:16.000
    return instants(moment(value), ["UTC"])[0][0]
