"""Where results go: whether a file can be written, the room for it, and writing in batches, whole or not at all."""

import gc
import os
import re
import shutil
import sqlite3
from contextlib import contextmanager, suppress
from functools import wraps
from itertools import islice
from pathlib import Path

from osgeo import gdal
from qgis.core import (
    QgsDataSourceUri,
    QgsFeature,
    QgsFeatureSink,
    QgsProcessingException,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingParameterDefinition,
    QgsProperty,
    QgsVectorFileWriter,
)

from ..names import FIELDS
from . import packages
from .databases import Spool, database_of
from .fields import columns, qgs_fields
from .files import Aside
from .gpx import NOT_IN_XML
from .keeping import append_kept
from .looks import finish
from .translation import tr

BATCH = 2000  # rows between two looks at the cancel button: well under a second at 25 000 rows a second
NAME_BYTES = 255  # of a file or a folder, on all usual file systems
ROW_BYTES = 600  # of a GeoPackage: measured 270 for a sightline, 580 for an alignment, 290 for a sky position
FULL_BYTES = 1 << 20  # less room than this is none
BESIDE = ("-wal", "-shm", "-journal")  # files of SQLite that are parts of a GeoPackage
OF_XML = (".kml", ".gml", ".jml", ".ods", ".xlsx", ".xml")  # endings of formats that GDAL writes as XML, whatever is in a text
HALF_A_LETTER = re.compile("[\ud800-\udc7f\udd00-\udfff]")  # of a pair of UTF-16; the rest of these stand for bytes that are no text
PLAIN_FILE = re.compile(r"^(?:[A-Za-z]:[\\/]|[\\/.]|[^:]+$)")  # not memory:, postgres:, TEMPORARY_OUTPUT and the like


def destination_text(value):
    """What was given for a destination, as text."""
    if isinstance(value, QgsProcessingOutputLayerDefinition):
        value = value.sink
    if isinstance(value, QgsProperty):
        value = value.staticValue()
    return value.strip() if isinstance(value, str) else ""


def destination_layer(value):
    """The path of the file a destination means and its table in that file, or None and None where it means no file."""
    text = destination_text(value)
    if text.startswith(("ogr:", "dbname=")):
        text = text[4:] if text.startswith("ogr:") else text
        source = QgsDataSourceUri(text)
        if source.database():
            return Path(source.database()), source.table() or None
    if text in ("", "TEMPORARY_OUTPUT") or not PLAIN_FILE.match(text):
        return None, None
    return Path(text), None


def destination_file(value):
    """The path of the file a destination means, or None where it means no file."""
    return destination_layer(value)[0]


def written_as(path):
    """The path with the ending that QGIS gives it where its own means no format."""
    known = path.suffix.lower().lstrip(".") in QgsVectorFileWriter.supportedFormatExtensions()
    return path if known else path.with_name(path.name + packages.ENDING)


def _aside_of(value):
    """Where the file that a destination means is written until it is whole; None for a GeoPackage, which tells that itself."""
    path, table = destination_layer(value)
    return None if path is None or table or written_as(path).suffix.lower() == packages.ENDING else Aside(path)


@contextmanager
def uncollected():
    """Without Python's search for cycles among what is held: rows have none, and it took an eighth of their time."""
    searching = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if searching:
            gc.enable()


def in_xml(value):
    """A value as a file of XML can hold it: GDAL writes characters that XML has not, and lets a text end the section that it stands in."""
    return NOT_IN_XML.sub("", value).replace("]]>", "]] >") if isinstance(value, str) else value


def unwritable(path):
    """Why a file cannot be written, in a sentence, or None."""
    if "\0" in str(path):
        return tr("The name of the file holds a sign of code 0, which no file may have. Give another name.")
    if HALF_A_LETTER.search(str(path)):
        return tr("The name of the file holds half a letter, which cannot be written. Give another name.")
    if any(len(os.fsencode(part)) > NAME_BYTES for part in path.parts):
        return tr("The name {name}… is longer than {n} bytes. Give a shorter one.").format(name=path.name[:20], n=NAME_BYTES)
    folder = path.parent
    if path.is_dir():
        return tr("{path} is a folder. Give the name of a file in it.").format(path=path)
    if path.exists() and not path.is_file():
        return tr("{path} is a device, not a file. Choose another name.").format(path=path)
    if not folder.is_dir():
        return tr("The folder {folder} does not exist. Make it, or choose another one.").format(folder=folder)
    if not os.access(folder, os.W_OK | os.X_OK):
        return tr("The folder {folder} may not be written to. Choose another one.").format(folder=folder)
    if path.exists() and not os.access(path, os.W_OK):
        return tr("The file {path} may not be written to. Choose another name.").format(path=path)
    if packages.is_locked(path):
        return tr("Another program is writing to {path}. Close it there, or choose another name.").format(path=path)
    return None


def refuse_too_many(count, algorithm_limit, parameters, outputs):
    """Stop before anything is written when the rows would be more than asked for or than the disk holds.

    Raises
    ------
    QgsProcessingException
        With the number.
    """
    if count > algorithm_limit:
        raise QgsProcessingException(
            tr("This may write up to {n:,} rows, more than MAX_ROWS ({limit:,}). Ask for less, or raise MAX_ROWS.").format(
                n=int(count), limit=int(algorithm_limit)
            )
        )
    for output in outputs:
        path = destination_file(parameters.get(output))
        free = shutil.disk_usage(path.parent).free if path and path.parent.is_dir() else None
        if free is not None and count * ROW_BYTES > free:
            raise QgsProcessingException(
                tr("This may write up to {n:,} rows, {need:,} MB, but {folder} has {free:,} MB left. Ask for less.").format(
                    n=int(count), need=int(count * ROW_BYTES // 1_000_000), folder=path.parent, free=free // 1_000_000
                )
            )


@contextmanager
def failures():
    """What GDAL tells to have gone wrong meanwhile, in its words: a list that is filled."""
    told = []
    gdal.PushErrorHandler(lambda severity, number, text: told.append(text) if severity >= gdal.CE_Failure else None)
    try:
        yield told
    finally:
        gdal.PopErrorHandler()


def whole_or_none(process):
    """Of an algorithm's run that fails, take away what was written: a part would look like a result."""

    @wraps(process)
    def run(algorithm, parameters, context, feedback):
        algorithm.tables = []
        try:
            return process(algorithm, parameters, context, feedback)
        except Exception:
            for table in algorithm.tables:
                table.drop()
            raise

    return run


class Table:
    """An output layer with fields of `names.py` and then those kept of an input, opened for writing."""

    def __init__(self, algorithm, parameters, name, context, field_names, kept, wkb_type, crs, feedback):
        self.names, self.kept, self.name, self.written = field_names, kept, name, 0
        self._file = self._layer = None
        self._whole = False
        fields = qgs_fields(field_names)
        database = database_of(destination_text(parameters.get(name)))
        self._spool = Spool(database) if database else None
        self._aside = _aside_of(parameters.get(name))
        self._in_xml = bool(self._aside) and self._aside.path.suffix.lower() in OF_XML
        renamed = append_kept(fields, kept, self._in_xml)

        def open_sink(given):
            flags = QgsFeatureSink.SinkFlag.RegeneratePrimaryKey
            try:
                sink, layer_id = algorithm.parameterAsSink(given, name, context, fields, wkb_type, crs, flags)
            except QgsProcessingException as failed:  # its sentence names the file as it is until it is whole
                told = str(failed).replace(str(self._aside.part), str(self._aside.path)) if self._aside else str(failed)
                raise QgsProcessingException(told) from None
            optional = algorithm.parameterDefinition(name).flags() & QgsProcessingParameterDefinition.Flag.FlagOptional
            if sink is None and not optional:
                raise QgsProcessingException(algorithm.invalidSinkError(parameters, name))
            return sink, layer_id

        self._make_table = lambda: open_sink(parameters)[1]
        algorithm.tables.append(self)
        self.sink, self.id = open_sink({**parameters, name: self._way(parameters.get(name))})
        if self.sink is None:
            return
        self._open(*destination_layer(parameters.get(name)))
        if renamed:
            feedback.pushInfo(tr("{name}: kept fields whose names were taken: {renamed}.").format(name=name, renamed=", ".join(renamed)))
        kinds = {FIELDS[field].kind for field in field_names}
        if destination_text(parameters.get(name)).lower().endswith(".shp") and "datetime" in kinds:
            feedback.pushWarning(
                tr("{name}: a Shapefile holds no times of day, only texts and dates. A GeoPackage keeps them.").format(name=name)
            )

    def __bool__(self):
        return bool(self.id)

    def _way(self, given):
        """The destination under which the rows are written until they are whole."""
        if self._spool:
            return self._spool.path
        if not self._aside:
            return given
        if not isinstance(given, QgsProcessingOutputLayerDefinition):
            return str(self._aside.part)
        way = QgsProcessingOutputLayerDefinition(given)
        way.sink = QgsProperty.fromValue(str(self._aside.part))
        return way

    def _open(self, path, table):
        """Know the file that is written to, and say in a GeoPackage that was there that the new table is not whole."""
        self._file = None if path is None or self._spool else Path(self.id.split("|layername=")[0])
        self._layer = packages.Layer(self._file, table) if self._file and self._file.suffix.lower() == packages.ENDING else None
        if self._layer and table:
            try:
                self._layer.begin()
            except sqlite3.Error as failed:
                raise self._stopped(str(failed)) from failed

    def close(self, look, context, feedback, step_min=None):
        """Close the layer, which writes what is still held back, and give it its look: a file of `styles/` by its stem.

        Raises
        ------
        QgsProcessingException
            Where what was held back could not be written.
        """
        if not self:
            return
        with failures() as told:
            self.sink = None
            if not told and not self._has_room() and not self._reads_back():
                told.append(tr("the rows cannot be read back"))
        if told:
            raise self._stopped(told[0])
        if self._aside:
            self._give_names(context)
        if self._spool is None:
            finish(self.id, look, context, feedback, step_min)
            self._mark(feedback)
        elif feedback.isCanceled():
            feedback.pushWarning(tr("{name}: cancelled before the table was written; it is as it was.").format(name=self.name))
            self._spool.remove()
            self.id = None
        else:
            self._send(look, context, feedback, step_min)

    def _give_names(self, context):
        """Let the files of a layer that is whole take the place that was named, also in what QGIS is to load."""
        self._aside.give_names()
        loaded, way = context.layersToLoadOnCompletion(), self.id
        self.id = way.replace(str(self._aside.part), str(self._aside.path), 1)
        self._file = Path(self.id.split("|layername=")[0])
        if self._layer:  # QGIS took the ending for none, and added its own
            self._layer = packages.Layer(self._file, self._layer.table)
        if way in loaded:
            loaded[self.id] = loaded.pop(way)
            context.setLayersToLoadOnCompletion(loaded)

    def drop(self):
        """Take away what was written, unless it is whole."""
        waits = self._aside or (self._spool if self._spool and not self._spool.sent else None)
        if waits and not self._whole:
            with failures():
                self.sink = None
            waits.remove()
            return
        if self._file is None or self._whole:
            return
        with failures():  # one has been told
            self.sink = None
            if self._layer and self._layer.table:
                with suppress(RuntimeError):  # where another plugin has switched GDAL's exceptions on; its description says what it is
                    self._layer.drop()
                return
        for ending in ("", *BESIDE):
            part = self._file.with_name(self._file.name + ending)
            if part.exists():
                part.unlink()

    def _mark(self, feedback):
        self._whole = True
        if self._layer is None:
            return
        try:
            self._layer.end(self.written, feedback.isCanceled())
        except sqlite3.Error as failed:
            feedback.pushWarning(
                tr("{name}: all rows are written, but {path} could not be marked as whole: {reason}.").format(
                    name=self.name, path=self._file, reason=failed
                )
            )

    def _has_room(self):
        return self._file is None or shutil.disk_usage(self._file.parent).free >= FULL_BYTES

    def _reads_back(self):
        """Whether all rows can be read from the file, of which some formats do not tell when the disk was full."""
        try:
            file = gdal.OpenEx(str(self._file), gdal.OF_VECTOR)
            layer = file.GetLayerByName(self._layer.table) if file and self._layer and self._layer.table else file and file.GetLayer(0)
            return layer is not None and sum(1 for _ in layer) == self.written
        except RuntimeError:  # where another plugin has switched GDAL's exceptions on
            return False

    def _stopped(self, error):
        full = not self._has_room() or any(words in error for words in ("disk is full", "No space left"))
        reason = tr("the disk is full. Make room, or write elsewhere") if full else error
        stopped = tr("{name}: writing stopped after {n:,} rows: {error}.").format(name=self.name, n=self.written, error=reason.rstrip("."))
        return QgsProcessingException(" ".join([stopped, tr("What was written is taken away.")] if self._file else [stopped]))

    def _send(self, look, context, feedback, step_min):
        """Write what was computed to the table of a database; the look and the mark that tell that it is whole come last."""
        self.id = self._spool.send(self._make_table, self.name, feedback)
        if self:
            finish(self.id, look, context, feedback, step_min)
            self._spool.mark(feedback)

    def write(self, table, point, geometries, go_on):
        """Write rows; `geometries` holds one a row, `point` the index of the one, among those read, whose fields it keeps.

        `go_on` is told after each batch which part of these rows is written, 0 to 1, and answers whether to go on.
        False when it answered no.
        """
        with uncollected():
            return self._write(table, point, geometries, go_on)

    def _write(self, table, point, geometries, go_on):
        count, done = len(geometries), 0
        values = (*columns(self.names, table, count), *self.kept.of_rows(point))
        if self._in_xml:
            values = [[in_xml(value) for value in column] for column in values]
        lines = zip(zip(*values), geometries)
        while done < count:
            batch = []
            for values, geometry in islice(lines, BATCH):
                feature = QgsFeature()
                feature.setAttributes(list(values))
                feature.setGeometry(geometry)
                batch.append(feature)
            with failures() as told:
                taken = self.sink.addFeatures(batch, QgsFeatureSink.Flag.FastInsert)
            if told or not taken:
                raise self._stopped(self.sink.lastError() or "; ".join(told))
            self.written += len(batch)
            done += len(batch)
            if not go_on(done / count):
                return False
        return True
