"""Where results go: whether a file can be written, the room for it, and writing in batches."""

import os
import re
import shutil
from itertools import islice
from pathlib import Path

from qgis.core import (
    QgsFeature,
    QgsFeatureSink,
    QgsProcessingException,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingParameterDefinition,
    QgsProperty,
)

from ..names import FIELDS
from .databases import Spool, database_of
from .fields import columns, qgs_fields
from .keeping import append_kept
from .looks import finish
from .translation import tr

BATCH = 2000  # rows between two looks at the cancel button: well under a second at 25 000 rows a second
NAME_BYTES = 255  # of a file or a folder, on all usual file systems
ROW_BYTES = 600  # of a GeoPackage: measured 270 for a sightline, 580 for an alignment, 290 for a sky position
PLAIN_FILE = re.compile(r"^(?:[A-Za-z]:[\\/]|[\\/.]|[^:]+$)")  # not memory:, postgres:, TEMPORARY_OUTPUT and the like


def destination_text(value):
    """What was given for a destination, as text."""
    if isinstance(value, QgsProcessingOutputLayerDefinition):
        value = value.sink
    if isinstance(value, QgsProperty):
        value = value.staticValue()
    return value.strip() if isinstance(value, str) else ""


def destination_file(value):
    """The path of the file a destination means, or None where it means no file."""
    text = destination_text(value)
    database = re.match(r"^(?:ogr:)?dbname='([^']+)'", text)
    if database:
        return Path(database.group(1))
    if text in ("", "TEMPORARY_OUTPUT") or not PLAIN_FILE.match(text):
        return None
    return Path(text)


def unwritable(path):
    """Why a file cannot be written, in a sentence, or None."""
    if "\0" in str(path):
        return tr("The name of the file holds a sign of code 0, which no file may have. Give another name.")
    if any(len(os.fsencode(part)) > NAME_BYTES for part in path.parts):
        return tr("The name {name}… is longer than {n} bytes. Give a shorter one.").format(name=path.name[:20], n=NAME_BYTES)
    folder = path.parent
    if path.is_dir():
        return tr("{path} is a folder. Give the name of a file in it.").format(path=path)
    if not folder.is_dir():
        return tr("The folder {folder} does not exist. Make it, or choose another one.").format(folder=folder)
    if not os.access(folder, os.W_OK | os.X_OK):
        return tr("The folder {folder} may not be written to. Choose another one.").format(folder=folder)
    if path.exists() and not os.access(path, os.W_OK):
        return tr("The file {path} may not be written to. Choose another name.").format(path=path)
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


class Table:
    """An output layer with fields of `names.py` and then those kept of an input, opened for writing."""

    def __init__(self, algorithm, parameters, name, context, field_names, kept, wkb_type, crs, feedback):
        self.names, self.kept, self.name, self.written = field_names, kept, name, 0
        fields = qgs_fields(field_names)
        renamed = append_kept(fields, kept)
        database = database_of(destination_text(parameters.get(name)))
        self._spool = Spool(database) if database else None

        def open_sink(given):
            flags = QgsFeatureSink.SinkFlag.RegeneratePrimaryKey
            sink, layer_id = algorithm.parameterAsSink(given, name, context, fields, wkb_type, crs, flags)
            optional = algorithm.parameterDefinition(name).flags() & QgsProcessingParameterDefinition.Flag.FlagOptional
            if sink is None and not optional:
                raise QgsProcessingException(algorithm.invalidSinkError(parameters, name))
            return sink, layer_id

        self._make_table = lambda: open_sink(parameters)[1]
        self.sink, self.id = open_sink({**parameters, name: self._spool.path} if database else parameters)
        if self.sink is None:
            return
        if renamed:
            feedback.pushInfo(tr("{name}: kept fields whose names were taken: {renamed}.").format(name=name, renamed=", ".join(renamed)))
        kinds = {FIELDS[field].kind for field in field_names}
        if destination_text(parameters.get(name)).lower().endswith(".shp") and "datetime" in kinds:
            feedback.pushWarning(
                tr("{name}: a Shapefile holds no times of day, only texts and dates. A GeoPackage keeps them.").format(name=name)
            )

    def __bool__(self):
        return bool(self.id)

    def close(self, look, context, feedback, step_min=None):
        """Close the layer, which writes what is still held back, and give it its look: a file of `styles/` by its stem."""
        if not self:
            return
        self.sink = None
        if self._spool is None:
            finish(self.id, look, context, feedback, step_min)
        elif feedback.isCanceled():
            feedback.pushWarning(tr("{name}: cancelled before the table was written; it is as it was.").format(name=self.name))
            self._spool.remove()
            self.id = None
        else:
            self._send(look, context, feedback, step_min)

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
        count, done = len(geometries), 0
        lines = zip(zip(*columns(self.names, table, count), *self.kept.of_rows(point)), geometries)
        while done < count:
            batch = []
            for values, geometry in islice(lines, BATCH):
                feature = QgsFeature()
                feature.setAttributes(list(values))
                feature.setGeometry(geometry)
                batch.append(feature)
            if not self.sink.addFeatures(batch, QgsFeatureSink.Flag.FastInsert):
                raise QgsProcessingException(
                    tr("{name}: writing stopped after {n:,} rows: {error}").format(
                        name=self.name, n=self.written, error=self.sink.lastError()
                    )
                )
            self.written += len(batch)
            done += len(batch)
            if not go_on(done / count):
                return False
        return True
