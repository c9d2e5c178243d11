"""Alignments, or the points of standpoints, as they are read for a field plan: one row a feature."""

from collections import Counter

import numpy as np
from qgis.core import QgsFeatureRequest, QgsProcessingFeatureSource, QgsWkbTypes

from ..plan import clock
from ..plan.span import ephemeris_span_utc_s
from ..plan.standpoints import position_error_deg
from .crs import lon_lat
from .drawn import number_told, place_in, utc_s_told
from .keeping import column_of
from .parameters import text_of
from .points import text_key
from .translation import counted, tr
from .zones import zones_of_sites

NEEDED = ("camera", "subject", "body", "t_utc", "az_deg", "alt_deg", "bearing_deg", "dist_m")
NUMBERS = ("az_deg", "alt_deg", "bearing_deg", "dist_m", "mag_deg", "top_alt_deg", "d_alt_deg", "miss_deg", "moon_deg", "moon_lit")
MOMENTS = ("t_utc", "t_start", "t_end")
TEXTS = ("camera", "camera_id", "subject", "body", "tz", "place", "sight", "sky", "moon_side", "path", "path_id", "heights", "allowed")
NO, YES = ("0", "false", "False"), ("1", "true", "True")  # what `allowed` is read as, whatever the file made of it


def refusals(algorithm, parameters, context):
    """A layer that is no result of alignments or standpoints; a generator of sentences."""
    source = algorithm.parameterAsSource(parameters, "ALIGNMENTS", context)
    if source is None:
        yield tr("ALIGNMENTS: there is no layer that can be read. Choose a result of alignments, or the POINTS of standpoints.")
        return
    missing = [name for name in NEEDED if place_in(source.fields(), name) < 0]
    if missing:
        yield tr("ALIGNMENTS: '{layer}' has no field {fields}. Choose a result of alignments, or the POINTS of standpoints.").format(
            layer=source.sourceName(), fields=", ".join(missing)
        )
    elif QgsWkbTypes.geometryType(source.wkbType()) not in (
        QgsWkbTypes.GeometryType.PointGeometry,
        QgsWkbTypes.GeometryType.LineGeometry,
    ):
        yield tr("ALIGNMENTS: '{layer}' holds {found}. Choose the lines of alignments, or the POINTS of standpoints.").format(
            layer=source.sourceName(), found=QgsWkbTypes.displayString(source.wkbType())
        )
    elif not source.sourceCrs().isValid():
        yield tr("ALIGNMENTS: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.").format(
            layer=source.sourceName()
        )


class Planned:
    """The rows of a layer that can be planned.

    Attributes
    ----------
    rows : dict of str to ndarray, shape (N,)
        As `plan.field_plan` takes them, with the other columns that the layer tells, `err_deg` and `decl_deg`; `also` holds the values
        of one more field as they are, if the layer has it.
    zone_names : list of str
    zone_index : ndarray of int, shape (N,)
    """

    def __init__(self, algorithm, parameters, context, feedback, position_error_m, also=None):
        source = algorithm.parameterAsSource(parameters, "ALIGNMENTS", context)
        self.features, self.skipped = 0, Counter()
        self._at = {name: place_in(source.fields(), name) for name in dict.fromkeys((*NEEDED, *NUMBERS, *MOMENTS, *TEXTS))}
        self._also_at = place_in(source.fields(), also) if also else -1
        read = list(self._read(source, feedback))
        columns = list(zip(*read)) if read else [()] * (3 + len(NUMBERS) + len(MOMENTS) + len(TEXTS))
        lon, lat = lon_lat(columns[0], columns[1], source.sourceCrs(), context.transformContext())
        usable = np.isfinite(lon)
        self.skipped[tr("with no place on the Earth")] += int((~usable).sum())
        numbers = [np.array(column, dtype=float)[usable] for column in columns[2 : 2 + len(NUMBERS) + len(MOMENTS)]]
        texts = [column_of(column)[usable] for column in columns[2 + len(numbers) :]]
        self.rows = rows = {"lon_deg": (lon[usable] + 180.0) % 360.0 - 180.0, "lat_deg": lat[usable]}
        rows.update(zip((*NUMBERS, *MOMENTS), numbers))
        rows.update(zip((*TEXTS, "also"), texts))
        rows["stand"] = column_of([_stand(*key) for key in zip(*(rows[name] for name in ("path", "path_id", "camera", "camera_id")))])
        rows["err_deg"] = position_error_deg(position_error_m, rows["dist_m"])
        rows["decl_deg"] = (rows["bearing_deg"] - rows["mag_deg"] + 180.0) % 360.0 - 180.0
        self.zone_names, self.zone_index = self._zones(parameters, feedback)

    def __len__(self):
        return len(self.rows["lon_deg"])

    def _read(self, source, feedback):
        """Place, numbers, moments, texts and the value of the field beside them of each feature that can be used."""
        span_utc_s = ephemeris_span_utc_s()
        for feature in source.getFeatures(QgsFeatureRequest(), QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks):
            if feedback.isCanceled():
                return
            self.features += 1
            geometry, attributes = feature.geometry(), feature.attributes()
            if geometry.isNull() or geometry.isEmpty():
                self.skipped[tr("with no geometry")] += 1
                continue
            told = {name: attributes[at] if at >= 0 else None for name, at in self._at.items()}
            numbers = [number_told(told[name]) for name in NUMBERS]
            moments = [_moment(told[name]) for name in MOMENTS]
            reason = _unfit(dict(zip(NUMBERS, numbers)), *moments, span_utc_s)
            if reason:
                self.skipped[reason] += 1
                continue
            camera = geometry.vertexAt(0)
            texts = [text_key(told[name]) for name in TEXTS]
            yield (camera.x(), camera.y(), *numbers, *moments, *texts, attributes[self._also_at] if self._also_at >= 0 else None)

    def _zones(self, parameters, feedback):
        """The zone that TIME_ZONE names, else the one that each row tells, else that of the place."""
        lon, lat, told = (self.rows[name] for name in ("lon_deg", "lat_deg", "tz"))
        known = {name for name in set(told.tolist()) - {None} if _is_zone(name)}
        if text_of(parameters, "TIME_ZONE"):
            return zones_of_sites(parameters, lon, lat, feedback)
        zones = column_of([name if name in known else None for name in told.tolist()])
        blank = zones == None  # noqa: E711  each element is compared
        if blank.any():
            names, index = zones_of_sites(parameters, lon[blank], lat[blank], feedback)
            zones[blank] = np.asarray(names, dtype=object)[index]
        names = sorted(set(zones.tolist()))
        return names or ["UTC"], np.array([names.index(name) for name in zones.tolist()], dtype=int)

    def log(self, feedback):
        """Tell what was read and what was left out, by reason."""
        feedback.pushInfo(tr("ALIGNMENTS: {n:,} rows from {total:,} features.").format(n=len(self), total=self.features))
        if sum(self.skipped.values()):
            feedback.pushWarning(tr("ALIGNMENTS: skipped {reasons}.").format(reasons=counted(self.skipped)))


def is_allowed(value):
    """What the field `allowed` says: True, False, or None where it says nothing."""
    return False if value in NO else True if value in YES else None


def _stand(path, path_id, camera, camera_id):
    """What rows of one place share: standpoints their path, alignments their camera."""
    return repr(("path", path, path_id) if path is not None else ("camera", camera, camera_id))


def _is_zone(name):
    try:
        clock.zone(name)
    except ValueError:
        return False
    return True


def _moment(value):
    try:
        return utc_s_told(value)
    except ValueError:
        return np.nan


def _unfit(told, t_utc_s, t_start_s, t_end_s, span_utc_s):
    """Why a row cannot be planned, or None."""
    if not np.isfinite(t_utc_s):
        return tr("with no time in t_utc (standpoints in a BEARING belong to no night)")
    if not span_utc_s[0] <= t_utc_s <= span_utc_s[1]:
        return tr("whose t_utc lies outside the years of the ephemeris")
    if not (np.isfinite(told["bearing_deg"]) and told["dist_m"] > 0.0):
        return tr("whose bearing_deg or dist_m is blank")
    if t_start_s > t_utc_s or t_end_s < t_utc_s:
        return tr("whose t_start, t_utc and t_end are not in that order")
    return None
