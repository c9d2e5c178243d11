"""Tables of a PostgreSQL: looked at before the work, written when all is computed, and marked as whole last of all."""

import re
import shutil
import tempfile
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from qgis.core import (
    QgsDataSourceUri,
    QgsException,
    QgsFeature,
    QgsFeatureSink,
    QgsProcessingException,
    QgsProviderConnectionException,
    QgsProviderRegistry,
    QgsVectorLayer,
)

from ..names import PROVIDER_ID, PROVIDER_NAME
from .translation import tr

DESTINATION = re.compile(r"^(?:postgres|postgis):(?://)?(.*)$", re.DOTALL)
FAILED = (QgsException, QgsProviderConnectionException, QgsProcessingException)  # for Python none of them is a kind of another
BATCH = 200  # rows that QGIS sends as one transaction: what is counted as written is in the table


@dataclass(frozen=True)
class Database:
    """A table that a result is to be written to, as QGIS names it: a data source, without 'postgres://'."""

    uri: str

    @property
    def table(self):
        """The table as a person reads it: schema, name and database, never a password."""
        source = QgsDataSourceUri(self.uri)
        named = f"{source.schema() or 'public'}.{source.table()}"
        return f"{named} ({source.database() or source.service()})"

    def rows(self, sql):
        """What the database answers; an exception of FAILED where it does not."""
        metadata = QgsProviderRegistry.instance().providerMetadata("postgres")
        return metadata.createConnection(self.uri, {}).executeSql(sql)

    def unwritable(self):
        """Why the table cannot be made, in a sentence, or None."""
        source = QgsDataSourceUri(self.uri)
        schema = source.schema() or "public"
        try:
            allowed = self.rows(f"SELECT has_schema_privilege(oid, 'CREATE') FROM pg_namespace WHERE nspname = {quoted(schema)}")  # nosec B608 # quoted
            has_postgis = self.rows("SELECT 1 FROM pg_extension WHERE extname = 'postgis'")
        except FAILED:  # its own words hold the password
            return tr(
                "The database of the table {table} does not answer. Look whether it runs and whether the connection is right."
            ).format(table=self.table)
        if not source.table():
            return tr("The database {database} is named without a table. Name one.").format(database=source.database())
        if not allowed:
            return tr("The schema {schema} does not exist. Make it, or choose another one.").format(schema=schema)
        if not allowed[0][0]:
            return tr("No table may be made in the schema {schema} by this user. Choose another one.").format(schema=schema)
        if not has_postgis:
            return tr("The database of the table {table} has no PostGIS. Run CREATE EXTENSION postgis in it.").format(table=self.table)
        return None

    def is_of(self, layer):
        """Whether a layer is read from this table."""
        return layer is not None and layer.providerType() == "postgres" and _place(layer.source()) == _place(self.uri)

    def unmark(self):
        """Take the look of an older table of this name away, so that a part of a new one never looks whole."""
        if self.rows("SELECT 1 FROM pg_tables WHERE tablename = 'layer_styles' AND schemaname = 'public'"):
            self.rows(f"DELETE FROM public.layer_styles WHERE {self._styled()} AND stylename = {quoted(PROVIDER_NAME)}")  # nosec B608 # quoted

    def mark(self, count):
        """Write into the table's comment that it is whole."""
        told = tr("{provider}: {n:,} rows, whole.").format(provider=PROVIDER_NAME, n=count)
        self.rows(f"COMMENT ON TABLE {self._name()} IS {quoted(told)}")

    def count(self):
        return int(self.rows(f"SELECT count(*) FROM {self._name()}")[0][0])  # nosec B608 # quoted

    def _name(self):
        source = QgsDataSourceUri(self.uri)
        return ".".join('"{}"'.format(part.replace('"', '""')) for part in (source.schema() or "public", source.table()))

    def _styled(self):
        source = QgsDataSourceUri(self.uri)
        wanted = {"f_table_schema": source.schema() or "public", "f_table_name": source.table()}
        return " AND ".join(f"{column} = {quoted(value)}" for column, value in wanted.items())


def _place(uri):
    """Where a table lies, whoever asks and for what."""
    source = QgsDataSourceUri(uri)
    host = "localhost" if source.host() in ("", "127.0.0.1", "::1") else source.host()
    return source.service(), host, source.port() or "5432", source.database(), source.schema() or "public", source.table()


def quoted(text):
    """A text as SQL holds it."""
    return "'{}'".format(text.replace("'", "''"))


def database_of(text):
    """The table that a destination means, or None where it means no table of a PostgreSQL."""
    found = DESTINATION.match(text)
    return Database(found.group(1)) if found else None


class Spool:
    """The rows of a result in a file of their own until all of them are computed; the file stays where the table cannot be written.

    Attributes
    ----------
    sent : bool
        Whether all were computed, so that they are worth keeping.
    """

    def __init__(self, database):
        self.database, self.total, self.sent = database, 0, False
        self._folder = tempfile.mkdtemp(prefix=f"{PROVIDER_ID}-")
        self.path = str(Path(self._folder, "rows.gpkg"))

    def send(self, make_table, name, feedback):
        """Write all rows to the table that `make_table` makes; its id, or None when cancelled on the way.

        Raises
        ------
        QgsProcessingException
            With the table and the rows that are in it.
        """
        self.sent = True
        layer = QgsVectorLayer(self.path, "rows", "ogr")
        self.total, written, rows = layer.featureCount(), 0, layer.getFeatures()
        try:
            self.database.unmark()
            make_table()
        except FAILED:
            raise self._stopped(name, 0, tr("it could not be made.")) from None
        table = QgsVectorLayer(self.database.uri, "table", "postgres")
        provider, order = table.dataProvider(), [layer.fields().indexOf(field.name()) for field in table.fields()]
        while batch := [_in_order(feature, order) for feature in islice(rows, BATCH)]:
            if feedback.isCanceled():
                feedback.pushWarning(self._part(name, written, tr("cancelled.")))
                self.remove()
                return None
            if not provider.addFeatures(batch, QgsFeatureSink.Flag.FastInsert)[0]:
                raise self._stopped(name, written, provider.lastError() or " ".join(provider.errors()))
            written += len(batch)
        self._look_again(name, written)
        self.remove()
        return f"postgres://{self.database.uri}"

    def mark(self, feedback):
        """Tell in the table's comment that it is whole; that it cannot be told is no reason to lose the rows."""
        try:
            self.database.mark(self.total)
        except FAILED:
            feedback.pushWarning(
                tr("All rows are in the table {table}, but it could not be marked as whole.").format(table=self.database.table)
            )

    def remove(self):
        """Take the file away."""
        shutil.rmtree(self._folder, ignore_errors=True)

    def _look_again(self, name, written):
        """Count the rows in the table: of a connection that was lost and found, a part may be missing that it had acknowledged."""
        try:
            found = self.database.count()
        except FAILED:
            raise self._stopped(name, written, tr("the connection was lost before they could be counted.")) from None
        if found != self.total:
            raise self._stopped(name, found, tr("the connection was lost for a while."))

    def _part(self, name, written, error):
        return tr("{name}: writing to the table {table} stopped after {n:,} of {total:,} rows: {error} The table is not whole.").format(
            name=name, table=self.database.table, n=written, total=self.total, error=error.strip()
        )

    def _stopped(self, name, written, error):
        kept = tr("All rows are kept in the file {path}: load them into the database, or run again.").format(path=self.path)
        return QgsProcessingException(f"{self._part(name, written, error)} {kept}")


def _in_order(feature, order):
    """A row of the file as the table takes it, which gives the id."""
    attributes = feature.attributes()
    row = QgsFeature()
    row.setAttributes([attributes[at] if at >= 0 else None for at in order])
    row.setGeometry(feature.geometry())
    return row
