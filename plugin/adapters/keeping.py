"""Fields of an input that are carried over into a result, beside its own."""

import re
from dataclasses import dataclass, field

import numpy as np
from qgis.core import QgsField

from ..names import free_name, short
from .translation import tr

TAKEN_BY_FILES = ("fid", "geom")  # columns that a GeoPackage makes itself


@dataclass
class Kept:
    """Fields as they are in the input, and for each of them a column of values, one a point."""

    fields: list = field(default_factory=list)
    columns: list = field(default_factory=list)

    def of_rows(self, point):
        """The columns for rows that belong to these points."""
        return [column[point].tolist() for column in self.columns]


def column_of(values):
    """An array of any values, lists among them."""
    column = np.empty(len(values), dtype=object)
    for i, value in enumerate(values):
        column[i] = value
    return column


def append_kept(fields, kept, in_xml=False):
    """Add kept fields to those of a result; a name that is taken gets a number, one that a file of XML cannot hold loses its signs.

    Names stay different within the ten letters that a Shapefile keeps; `_2` is what QGIS's own algorithms put behind a name.

    Returns
    -------
    list of str
        What became of the names that were taken.
    """
    taken = {short(other) for other in [*fields.names(), *TAKEN_BY_FILES]}
    renamed = []
    for original in kept.fields:
        wanted = re.sub(r"\W|^(?=\d)", "_", original.name()) if in_xml else original.name()
        free = free_name(wanted, taken)
        taken.add(short(free))
        renamed += [tr("{field} is {new}").format(field=original.name(), new=free)] if free != original.name() else []
        copy = QgsField(original)
        copy.setName(free)
        fields.append(copy)
    return renamed
