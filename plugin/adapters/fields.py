"""The fields of `names.py` as QGIS fields, and columns of arrays as values that QGIS can write."""

import numpy as np
from qgis.core import Qgis, QgsField, QgsFields
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from ..names import FIELDS
from ..words import Sentence
from .translation import tr

# QgsField takes a QMetaType from QGIS 3.38 on and warns of the older QVariant; the one place where versions differ.
if Qgis.QGIS_VERSION_INT >= 33800:
    from qgis.PyQt.QtCore import QMetaType

    TYPES = {
        "text": QMetaType.Type.QString,
        "int": QMetaType.Type.LongLong,
        "real": QMetaType.Type.Double,
        "bool": QMetaType.Type.Bool,
        "date": QMetaType.Type.QDate,
        "datetime": QMetaType.Type.QDateTime,
    }
else:
    from qgis.PyQt.QtCore import QVariant

    TYPES = {
        "text": QVariant.Type.String,
        "int": QVariant.Type.LongLong,
        "real": QVariant.Type.Double,
        "bool": QVariant.Type.Bool,
        "date": QVariant.Type.Date,
        "datetime": QVariant.Type.DateTime,
    }


AS_THEY_ARE = {str, bool, int, type(None)}  # kinds of values that QGIS takes
EPOCH = QDateTime.fromMSecsSinceEpoch(0, Qt.TimeSpec.UTC)  # to add to: four times as quick as making each from nothing


def qgs_fields(names):
    """QGIS fields of those names, in the order of the names, with their aliases."""
    fields = QgsFields()
    for name in names:
        field = QgsField(name, TYPES[FIELDS[name].kind])
        field.setAlias(tr(FIELDS[name].alias))
        fields.append(field)
    return fields


def _real(values):
    column = np.asarray(values, dtype=float)
    known = np.isfinite(column)
    if known.all():
        return column.tolist()
    column = column.astype(object)
    column[~known] = None
    return column.tolist()


def _datetime(seconds_utc):
    """Whole seconds, rounded: QGIS 3.22 would cut the fraction off."""
    distinct, where = np.unique(np.floor(np.asarray(seconds_utc, dtype=float) + 0.5), return_inverse=True)
    known = np.isfinite(distinct)  # what is not sorts to the end
    times = [*map(EPOCH.addSecs, distinct[known].astype(np.int64).tolist()), *[None] * int((~known).sum())]
    return [times[i] for i in where.tolist()]


def _date(days):
    column = np.asarray(days, dtype="datetime64[D]")
    distinct, where = np.unique(column, return_inverse=True)
    dates = [None if day is None else QDate(day.year, day.month, day.day) for day in distinct.tolist()]
    return [dates[i] for i in where.tolist()]


def _objects(values):
    column = np.asarray(values, dtype=object).tolist()
    if AS_THEY_ARE.issuperset(map(type, column)):
        return column
    # value != value: a NaN among them; a sentence of the pure folders is written as it is, in English, like all values
    return [None if value is None or value != value else str(value) if isinstance(value, Sentence) else value for value in column]


_COLUMN = {
    "text": _objects,
    "bool": _objects,
    "int": lambda values: np.asarray(values).tolist(),
    "real": _real,
    "date": _date,
    "datetime": _datetime,
}


def columns(names, table, count):
    """Columns of values in the order of the names; a name the table does not hold is null in every row.

    Parameters
    ----------
    names : sequence of str
        Keys of `names.FIELDS`.
    table : mapping of str to array_like (count,)
        Times are seconds of UTC since 1970, nights datetime64; NaN, NaT and None are null.
    count : int
        Rows asked for.
    """
    nothing = [None] * count
    return [_COLUMN[FIELDS[name].kind](table[name]) if table.get(name) is not None else nothing for name in names]
