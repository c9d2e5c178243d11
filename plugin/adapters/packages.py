"""GeoPackages that results are written to: whether another program holds one, and the mark, written last, that a layer is whole.

QGIS writes a new file in one transaction: of a run that is killed it holds no layer. A table in a GeoPackage that is there already is
written a part at a time, and a part looks like a whole. So the layer's description, which every reader of GeoPackages shows, says "not
whole" from the moment that the table is made, and "whole" when the last row is in it.
"""

import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Optional

from ..names import PROVIDER_NAME
from .translation import tr

ENDING = ".gpkg"
MAGIC = b"SQLite format 3\0"
PATIENCE_S = 5.0  # with another program that writes something small meanwhile
OF_TABLE = "data_type = 'features' AND (:table IS NULL OR lower(table_name) = lower(:table))"


def is_locked(path):
    """Whether another program is writing to a database of SQLite, which a GeoPackage is; False of any other file."""
    path = Path(path)
    try:
        with path.open("rb") as file:
            if file.read(len(MAGIC)) != MAGIC:
                return False
        with closing(_opened(path, 0.0)) as database:
            database.execute("BEGIN IMMEDIATE")
            database.execute("ROLLBACK")
    except sqlite3.OperationalError as failed:
        return "locked" in str(failed)
    except (OSError, sqlite3.DatabaseError):
        return False
    return False


def _opened(path, patience_s):
    return sqlite3.connect(path.resolve().as_uri() + "?mode=rw", timeout=patience_s, uri=True, isolation_level=None)


@dataclass(frozen=True)
class Layer:
    """A layer of a GeoPackage; `table` is None where it is the only one of its file."""

    path: Path
    table: Optional[str] = None

    def begin(self):
        """Say that it is not whole, and take away the look that an older table of this name had when it was."""
        self._describe(tr("{provider}: being written, not whole.").format(provider=PROVIDER_NAME))
        with closing(_opened(self.path, PATIENCE_S)) as database:
            if database.execute("SELECT 1 FROM sqlite_master WHERE name = 'layer_styles'").fetchone():
                database.execute(
                    "DELETE FROM layer_styles WHERE lower(f_table_name) = lower(?) AND styleName = ?", (self.table, PROVIDER_NAME)
                )

    def end(self, count, cancelled):
        """Say how many rows it holds, and that it is whole; or that it is not, where the run was cancelled."""
        told = tr("{provider}: {n:,} rows, then cancelled, not whole.") if cancelled else tr("{provider}: {n:,} rows, whole.")
        self._describe(told.format(provider=PROVIDER_NAME, n=count))

    def drop(self):
        """Take the table out of its file."""
        from osgeo import gdal

        file = gdal.OpenEx(str(self.path), gdal.OF_VECTOR | gdal.OF_UPDATE)
        if file is not None:
            file.ExecuteSQL('DROP TABLE "{}"'.format(self.table.replace('"', '""')))

    def _describe(self, text):
        with closing(_opened(self.path, PATIENCE_S)) as database:
            database.execute(f"UPDATE gpkg_contents SET description = :text WHERE {OF_TABLE}", {"text": text, "table": self.table})  # nosec B608 # of constants
