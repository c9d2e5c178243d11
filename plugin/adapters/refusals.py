"""What can be known before a run to be wrong, each as a sentence that says what to do. Generators: nothing wrong yields nothing."""

import math
import os
import re
from pathlib import Path

import numpy as np
from qgis.core import (
    QgsExpression,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterFolderDestination,
    QgsProcessingParameterNumber,
    QgsProperty,
    QgsWkbTypes,
)

from ..names import BODIES
from ..plan import clock
from ..plan.span import ephemeris_span_utc_s
from .clashes import layers_read
from .crs import on_earth
from .databases import database_of
from .moments import date_of, moment, now_utc_s
from .parameters import blank, choice_of, choices_of, fields_of, number_of, plain_number, property_of_features, text_of
from .raster import Raster, files_of, source_of
from .sinks import destination_file, destination_text, unwritable
from .translation import said, tr

WESTMOST_S = 12 * 3600  # where a date lasts longest: UTC-12:00
# what a layer is to hold
POINTS = (QgsWkbTypes.GeometryType.PointGeometry, "points")
LINES = (QgsWkbTypes.GeometryType.LineGeometry, "lines")
POLYGONS = (QgsWkbTypes.GeometryType.PolygonGeometry, "polygons")
ABOVE_GROUND = ("CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE")


def layers(algorithm, parameters, names, context, kind=POINTS):
    """Sources that cannot be read, hold geometries of another kind or have no CRS; optional ones may be blank."""
    wanted, words = kind
    for name in names:
        label = name.lower()
        optional = algorithm.parameterDefinition(name).flags() & QgsProcessingParameterDefinition.Flag.FlagOptional
        if optional and blank(parameters.get(name)):
            continue
        source = algorithm.parameterAsSource(parameters, name, context)
        if source is None:
            yield tr("{name}: there is no layer that can be read. Choose a layer of {kind} for the {label}.").format(
                name=name, label=label, kind=tr(words)
            )
        elif QgsWkbTypes.geometryType(source.wkbType()) not in (wanted, QgsWkbTypes.GeometryType.UnknownGeometry):
            yield tr("{name}: '{layer}' holds {found}, not {kind}. Choose a layer of {kind} for the {label}.").format(
                name=name, layer=source.sourceName(), found=QgsWkbTypes.displayString(source.wkbType()), label=label, kind=tr(words)
            )
        elif not source.sourceCrs().isValid():
            yield tr("{name}: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.").format(
                name=name, layer=source.sourceName()
            )
        elif not on_earth(source.sourceCrs()):
            yield tr(
                "{name}: the CRS of '{layer}' ({crs}) is one of another body than the Earth. Choose another layer, or set its CRS."
            ).format(name=name, layer=source.sourceName(), crs=source.sourceCrs().userFriendlyIdentifier())


def fields(algorithm, parameters, layer_of_field, context):
    """Fields that their layer does not have."""
    for name, layer in layer_of_field.items():
        wanted = fields_of(parameters, name)
        source = algorithm.parameterAsSource(parameters, layer, context) if wanted else None
        for field in wanted:
            if source is not None and source.fields().lookupField(field) < 0:
                yield _no_field(name, layer, field, source)


def _no_field(name, layer, wanted, source):
    return tr("{name}: {layer} has no field '{field}'. Choose one of: {fields}.").format(
        name=name, layer=layer, field=wanted, fields=", ".join(source.fields().names()) or "-"
    )


def numbers(algorithm, parameters, context):
    """Numbers that are none, not finite or out of range, and properties that cannot be read."""
    for definition in algorithm.parameterDefinitions():
        if not isinstance(definition, QgsProcessingParameterNumber):
            continue
        name = definition.name()
        prop = property_of_features(parameters.get(name)) if definition.isDynamic() else None
        if prop is not None:
            yield from _unreadable_property(algorithm, parameters, definition, prop, context)
            continue
        value = plain_number(parameters.get(name))
        if value is None:
            continue
        low, high = definition.minimum(), definition.maximum()
        if not math.isfinite(value):
            yield tr("{name} is '{value}', which is no finite number. Give one, such as {example:g}.").format(
                name=name, value=parameters[name], example=definition.defaultValue() or max(low, 0.0)
            )
        elif value < low and name in ABOVE_GROUND:
            yield tr("{name} is {value:g} m, but it is measured upward from the ground. Give 0 or more.").format(name=name, value=value)
        elif value < low or value > high:
            bounds = tr("at least {low:g}") if high > 1e300 else tr("at most {high:g}") if low < -1e300 else tr("from {low:g} to {high:g}")
            yield tr("{name} is {value:g}. Give a number {bounds}.").format(
                name=name, value=value, bounds=bounds.format(low=low, high=high)
            )


def _unreadable_property(algorithm, parameters, definition, prop, context):
    layer = definition.dynamicLayerParameterName()
    source = algorithm.parameterAsSource(parameters, layer, context)
    if prop.propertyType() == QgsProperty.Type.FieldBasedProperty:
        if source is not None and source.fields().lookupField(prop.field()) < 0:
            yield _no_field(definition.name(), layer, prop.field(), source)
    elif prop.propertyType() == QgsProperty.Type.ExpressionBasedProperty:
        expression = QgsExpression(prop.expressionString())
        if expression.hasParserError():
            yield tr("{name}: the expression {text} cannot be read: {error}").format(
                name=definition.name(), text=prop.expressionString(), error=expression.parserErrorString().strip()
            )


def choices(algorithm, parameters):
    """Ids that an enum does not have."""
    for definition in algorithm.parameterDefinitions():
        value = parameters.get(definition.name())
        if not isinstance(definition, QgsProcessingParameterEnum) or value is None:
            continue
        given = [str(item).strip() for item in (value if isinstance(value, (list, tuple)) else str(value).split(","))]
        unknown = [item for item in given if item not in definition.options()]
        if unknown or not given:
            yield tr("{name}: '{value}' is not known. Choose from: {ids}.").format(
                name=definition.name(), value=", ".join(unknown), ids=", ".join(definition.options())
            )
        elif len(given) > 1 and not definition.allowMultiple():
            yield tr("{name}: '{value}' are several. Choose one of: {ids}.").format(
                name=definition.name(), value=", ".join(given), ids=", ".join(definition.options())
            )


def dem(algorithm, parameters, context):
    """An elevation model without heights that can be read, and distances that leave none of its ground to look at."""
    definition = algorithm.parameterDefinition("DEM")
    if definition is None:
        return
    try:
        source = source_of(algorithm, parameters, context)
        if source is not None:
            Raster(source, context.transformContext())
        elif not definition.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional:
            yield tr("DEM is blank. Choose an elevation model: a raster of heights.")
    except ValueError as unfit:
        yield said(unfit)
    if algorithm.parameterDefinition("TERRAIN_RADIUS") is None:
        return
    near_m, radius_m = (number_of(algorithm, parameters, name) for name in ("SKIP_NEAR", "TERRAIN_RADIUS"))
    if not radius_m > (near_m or 0.0):
        yield tr("TERRAIN_RADIUS is {radius:g} m: no ground lies between SKIP_NEAR ({near:g} m) and it. Give more, such as 40000.").format(
            radius=radius_m, near=near_m or 0.0
        )


def ordered(algorithm, parameters, *pairs):
    """Lower limits above their upper limits."""
    for low_name, high_name in pairs:
        low, high = number_of(algorithm, parameters, low_name), number_of(algorithm, parameters, high_name)
        if low is not None and high is not None and low > high:
            yield tr("{low_name} ({low:g}) is above {high_name} ({high:g}), so nothing can lie between them. Exchange them.").format(
                low_name=low_name, low=low, high_name=high_name, high=high
            )


def zone(parameters):
    """A time zone that nobody knows."""
    name = text_of(parameters, "TIME_ZONE")
    if name:
        try:
            clock.zone(name)
        except ValueError as unknown:
            yield tr("TIME_ZONE: {reason}").format(reason=unknown)


def faces(parameters):
    """One of the two bearings that bound a subject's use without the other."""
    given = {name for name in ("FACE_FROM", "FACE_TO") if not blank(parameters.get(name))}
    if len(given) == 1:
        yield tr("Only {name} is given. Give both FACE_FROM and FACE_TO, or leave both blank.").format(name=given.pop())


def pairing(algorithm, parameters, context):
    """Pairing that leaves nothing, or by a field without the field."""
    yield from faces(parameters)
    if number_of(algorithm, parameters, "MAX_DISTANCE") == 0:
        yield tr("MAX_DISTANCE is 0, which no sightline is shorter than. Give the longest one in metres, such as 50000.")
    if choice_of(algorithm, parameters, "PAIRING", context) != "by_field":
        return
    wanted = text_of(parameters, "PAIR_FIELD")
    if not wanted:
        yield tr("PAIRING is by_field, but no field is named. Choose PAIR_FIELD, a field of the cameras.")
    elif not text_of(parameters, "PAIR_FIELD_SUBJECT"):
        source = algorithm.parameterAsSource(parameters, "SUBJECTS", context)
        if source is not None and source.fields().lookupField(wanted) < 0:
            yield tr("SUBJECTS has no field '{field}'. Choose PAIR_FIELD_SUBJECT, the field that matches PAIR_FIELD.").format(field=wanted)


def star_place(text):
    """Right ascension and declination from 'RA,Dec'; ValueError with a sentence when they are not there."""
    numbers_given = re.split(r"\s*[,;]\s*|\s+", text.strip())
    try:
        ra_deg, dec_deg = (float(number) for number in numbers_given)
        if not (0.0 <= ra_deg <= 360.0 and -90.0 <= dec_deg <= 90.0):
            raise ValueError(text)
    except ValueError:
        raise ValueError(
            tr("STAR is '{text}'. Write right ascension (0 to 360) and declination (-90 to 90) in degrees, such as 279.23,38.78.").format(
                text=text
            )
        ) from None
    return ra_deg, dec_deg


def conditions(algorithm, parameters):
    """Lower limits of conditions above their upper ones."""
    limits = [(f"{name}_MIN", f"{name}_MAX") for name in ("ALT", "GAP", "TILT", "APEX", "LIT")]
    yield from ordered(algorithm, parameters, *limits, ("SUN_MIN", "SUN_LIMIT"))


def bodies(algorithm, parameters, context, name="BODIES"):
    """A star or a place on the plane that is asked for and not given, or given and malformed."""
    chosen = choices_of(algorithm, parameters, name, context)
    star = text_of(parameters, "STAR")
    if star:
        try:
            star_place(star)
        except ValueError as malformed:
            yield said(malformed)
    elif "star" in chosen:
        yield tr("{name} holds star ({shown}), but STAR is blank. Give its place, such as STAR=279.23,38.78.").format(
            name=name, shown=tr(BODIES["star"])
        )
    if "galactic" in chosen and number_of(algorithm, parameters, "GALACTIC_LON") is None:
        yield tr(
            "{name} holds galactic, but GALACTIC_LON is blank. Give the galactic longitude in degrees, such as GALACTIC_LON=80."
        ).format(name=name)


def moments(parameters, *names):
    """Times that cannot be read, that the clock of the zone skips or that the ephemeris does not reach."""
    zone_name = text_of(parameters, "TIME_ZONE")
    for name in names:
        if not blank(parameters.get(name)):
            try:
                given = moment(parameters[name])
                t_utc_s = clock.instants(given, [zone_name or "UTC"])[0][0]
                yield from outside_ephemeris(name, t_utc_s, str(given))
            except ValueError as malformed:
                yield f"{name}: {said(malformed)}"


def times_in_order(parameters, first_name="START", last_name="END"):
    """A last time before the first, where both are told in the same way."""
    if blank(parameters.get(first_name)) or blank(parameters.get(last_name)):
        return
    first, last = moment(parameters[first_name]), moment(parameters[last_name])
    if (first.tzinfo is None) == (last.tzinfo is None) and last < first:
        yield tr("{last_name} ({last}) is before {first_name} ({first}). Exchange them.").format(
            first_name=first_name, last_name=last_name, first=first, last=last
        )


def dates(parameters, *names):
    """Dates that cannot be read."""
    for name in names:
        if not blank(parameters.get(name)):
            try:
                date_of(parameters[name])
            except ValueError as malformed:
                yield f"{name}: {said(malformed)}"


def nights(parameters):
    """Nights that cannot be read, stand in the wrong order or lie outside the ephemeris."""
    yield from dates(parameters, "FIRST_NIGHT", "LAST_NIGHT")
    given = {name: date_of(parameters[name]) for name in ("FIRST_NIGHT", "LAST_NIGHT") if not blank(parameters.get(name))}
    first, last = given.get("FIRST_NIGHT"), given.get("LAST_NIGHT")
    if first is not None and last is not None and last < first:
        yield tr("LAST_NIGHT ({last}) is before FIRST_NIGHT ({first}). Exchange them.").format(first=first, last=last)
    if first is None and last is not None and last < np.datetime64(int(now_utc_s() - WESTMOST_S), "s").astype("datetime64[D]"):
        yield tr("LAST_NIGHT ({last}) has passed, and FIRST_NIGHT is blank, which means today. Give FIRST_NIGHT too.").format(last=last)
    for name, date in given.items():
        yield from outside_ephemeris(name, date.astype("datetime64[s]").astype(float), str(date))


def outside_ephemeris(name, t_utc_s, shown):
    """A time that the ephemeris does not reach."""
    begin_utc_s, end_utc_s = ephemeris_span_utc_s()
    first, last = (str(np.datetime64(int(end), "s"))[:10] for end in (begin_utc_s, end_utc_s))
    if t_utc_s < begin_utc_s:
        yield tr("{name} ({shown}) lies before the ephemeris (begins {first}). Choose a later date.").format(
            name=name, shown=shown, first=first
        )
    elif t_utc_s > end_utc_s:
        yield tr("{name} ({shown}) lies after the ephemeris (ends {last}). Choose an earlier date.").format(
            name=name, shown=shown, last=last
        )


def outputs(algorithm, parameters):
    """Files and folders that could not be written."""
    for definition in algorithm.destinationParameterDefinitions():
        given = parameters.get(definition.name())
        path = destination_file(given) or _path_of(definition, given)
        if path and isinstance(definition, QgsProcessingParameterFolderDestination) and os.path.isdir(path):
            path = path / "picture.png"  # one that is not there is made, like a file, in a folder that is
        reason = unwritable(path) if path else None
        if reason:
            yield tr("{name}: {reason}").format(name=definition.name(), reason=reason)


def _path_of(definition, given):
    """The path that is given for a file or a folder, which is one whatever signs it holds; None where none is given."""
    text = destination_text(given)
    kinds = QgsProcessingParameterFileDestination, QgsProcessingParameterFolderDestination
    return Path(text) if isinstance(definition, kinds) and text not in ("", "TEMPORARY_OUTPUT") else None


def databases(algorithm, parameters, context):
    """Tables of databases that could not be written, or from which the run reads."""
    for definition in algorithm.destinationParameterDefinitions():
        name = definition.name()
        database = database_of(destination_text(parameters.get(name)))
        if database is None:
            continue
        for source, layer in layers_read(algorithm, parameters, context):
            if database.is_of(layer):
                yield tr("{name}: the table {table} is the layer of {layer}, which would be lost. Give another name.").format(
                    name=name, table=database.table, layer=source
                )
        reason = database.unwritable()
        if reason:
            yield tr("{name}: {reason}").format(name=name, reason=reason)


def geotiff(parameters, output):
    """A raster in a format other than GeoTIFF, the one that is written."""
    path = destination_file(parameters.get(output))
    if path and path.suffix.lower() not in (".tif", ".tiff"):
        yield tr("{output}: {path} is no GeoTIFF. Give it a name that ends in .tif.").format(output=output, path=path)


def own_input(algorithm, parameters, context, output):
    """A raster that would be written over a file from which the elevation model is read, such as a part of a mosaic."""
    path, source = destination_file(parameters.get(output)), source_of(algorithm, parameters, context)
    if path and path.exists() and any(os.path.exists(file) and os.path.samefile(path, file) for file in files_of(source)):
        yield tr("{output}: the elevation model is read from {path}, which would be lost. Choose another name.").format(
            output=output, path=path
        )
