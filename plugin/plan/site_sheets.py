"""What belongs on which sheet: rows of layers gathered by the value of a field, and the places that a sheet tells of.

A table is a dict of columns, shape (N,). `key` holds the value by which sheets are made, as a text or None, and is left out where the
layer has no such field; `camera` and `subject` hold names.
"""

from typing import NamedTuple

import numpy as np

from ..ground.geodesic import direct, inverse

MAKERS = (
    "cameras",
    "alignments",
    "sightlines",
    "standpoints",
    "subjects",
)  # the first of them that has the field says which sheets there are
NAMED = ("cameras", "alignments", "sightlines")  # tables that tell whose sheet it is
STEP = ("lon_deg", "lat_deg", "bearing_deg", "dist_m")
LINE_COLUMNS = ("camera", "subject", *STEP, "mag_deg", "sight")
SAME_PLACE_M = 2.0  # places of one name within this are one: a subject drawn, and the end of a line to it
MARKS = {"camera": "C", "standpoint": "P", "subject": "S", "parking": "K"}


class Sheet(NamedTuple):
    """Rows of each table that belong on a sheet; `key` is None where there is one sheet for all."""

    key: object
    rows: dict


class Places(NamedTuple):
    """Places of a sheet in the order of `MARKS`; `kind` is a key of those, `mark` its letter with a number."""

    kind: np.ndarray
    mark: np.ndarray
    name: np.ndarray
    lon_deg: np.ndarray
    lat_deg: np.ndarray

    def of(self, kind):
        """Places of a kind."""
        return np.flatnonzero(self.kind == kind)


def sheets_of(tables):
    """Gather rows by sheet.

    Parameters
    ----------
    tables : dict of str to dict
        By the names of `MAKERS`; those that are not given are left out.

    Returns
    -------
    sheets : list of Sheet
        In the order in which their values come.
    unused : dict of str to int
        Rows of each table that are on no sheet.

    Notes
    -----
    A table that has the field, and any of the sheets' values in it, gives each sheet its own rows. Of the others a sheet takes what
    belongs to its cameras: rows with their names, and the subjects that its lines lead to; where it has no such names, all.
    """
    keyed = {name: table["key"].tolist() for name, table in tables.items() if "key" in table}
    maker = next((name for name in MAKERS if any(key is not None for key in keyed.get(name, ()))), None)
    keys = list(dict.fromkeys(key for key in keyed.get(maker, ()) if key is not None)) or [None]
    by_key = {name: _index(column) for name, column in keyed.items() if maker is not None and not set(keys).isdisjoint(column)}
    by_camera = {name: _index(tables[name]["camera"].tolist()) for name in NAMED if name in tables}
    used, sheets = {name: np.zeros(_count(table), dtype=bool) for name, table in tables.items()}, []
    for key in keys:
        rows = _rows(key, tables, by_key, by_camera)
        for name, own in rows.items():
            used[name][own] = True
        sheets.append(Sheet(key, rows))
    return sheets, {name: int((~mask).sum()) for name, mask in used.items() if name != "subjects" and not mask.all()}


def _rows(key, tables, by_key, by_camera):
    rows = {name: np.array(index.get(key, ()), dtype=np.int64) for name, index in by_key.items()}
    names = dict.fromkeys(camera for name in NAMED if name in rows for camera in tables[name]["camera"][rows[name]].tolist())
    for name in NAMED:
        if name in tables and name not in rows:
            index = by_camera[name]
            rows[name] = _joined(index.get(camera, ()) for camera in names) if names else np.arange(_count(tables[name]))
    if "standpoints" in tables and "standpoints" not in rows:
        rows["standpoints"] = np.arange(_count(tables["standpoints"]))
    if "subjects" in tables and "subjects" not in rows:
        seen = {
            subject
            for name in ("alignments", "sightlines", "standpoints")
            if name in rows
            for subject in tables[name]["subject"][rows[name]]
        }
        own = tables["subjects"]["subject"].tolist()
        rows["subjects"] = np.array([i for i, subject in enumerate(own) if not seen or subject in seen], dtype=np.int64)
    return rows


def _index(column):
    found = {}
    for row, value in enumerate(column):
        found.setdefault(value, []).append(row)
    return found


def _joined(lists):
    return np.array(sorted(row for rows in lists for row in rows), dtype=np.int64)


def _count(table):
    return len(table["lon_deg"])


def lines_of(tables, rows):
    """The sightlines of a sheet, each pair of camera and subject once: those of the layer of sightlines first, then of alignments.

    Returns
    -------
    dict of str to ndarray
        `camera subject lon_deg lat_deg bearing_deg back_deg mag_deg dist_m sight`, and `end_lon_deg end_lat_deg`.
    """
    parts = [{name: tables[table][name][rows[table]] for name in LINE_COLUMNS} for table in ("sightlines", "alignments") if table in rows]
    lines = {name: np.concatenate([part[name] for part in parts]) if parts else np.empty(0) for name in LINE_COLUMNS}
    lines = _each_once(lines, ("camera", "subject"))
    end_lon, end_lat, back = direct(*(lines[name].astype(float) for name in STEP))
    return {**lines, "end_lon_deg": end_lon, "end_lat_deg": end_lat, "back_deg": back}


def standing_of(tables, rows):
    """The standpoints of a sheet, as lines: the columns of `lines_of` but the ends, and `allowed`; none where there are no standpoints."""
    if "standpoints" not in rows:
        return {}
    own = {name: tables["standpoints"][name][rows["standpoints"]] for name in (*LINE_COLUMNS, "allowed")}
    _, _, back = direct(*(own[name].astype(float) for name in STEP))
    return {**own, "back_deg": back}


def _each_once(table, names):
    """Rows of a table without those whose names, and begin, have been met before."""
    seen, kept = set(), []
    columns = [table[name].tolist() for name in names] + [
        np.round(table[name].astype(float), 5).tolist() for name in ("lon_deg", "lat_deg")
    ]
    for row, key in enumerate(zip(*columns)):
        if key not in seen:
            seen.add(key)
            kept.append(row)
    return {name: column[kept] for name, column in table.items()}


def places_of(tables, rows, lines):
    """The places of a sheet, each once.

    Parameters
    ----------
    tables, rows
        As in `Sheet`.
    lines : dict
        Of `lines_of`.

    Returns
    -------
    Places
    """
    found = {kind: {} for kind in MARKS}
    begins = tuple(lines[name] for name in ("camera", "lon_deg", "lat_deg"))
    standing = _named(tables, rows, "standpoints", "camera")
    subjects = (
        _named(tables, rows, "subjects", "subject"),
        tuple(lines[name] for name in ("subject", "end_lon_deg", "end_lat_deg")),
        _looked_at(tables, rows),
    )
    _add(found["camera"], *_named(tables, rows, "cameras", "camera"))
    _add(found["standpoint"], *standing, found["camera"])
    _add(found["camera"], *begins, found["standpoint"])  # where lines begin that lead from a standpoint there is no other camera
    for columns in subjects:
        _add(found["subject"], *columns)
    return _marked(found)


def with_parking(places, name, lon_deg, lat_deg):
    """The places of a sheet, and parking places behind them."""
    found = {kind: {} for kind in MARKS}
    columns = zip(places.kind.tolist(), places.name.tolist(), places.lon_deg.tolist(), places.lat_deg.tolist())
    for kind, own, lon, lat in columns:
        found[kind].setdefault(own, []).append((lon, lat))
    _add(found["parking"], name, lon_deg, lat_deg)
    return _marked(found)


def _marked(found):
    """Places by kind and name, with their marks."""
    order = [(kind, name, *place) for kind in MARKS for name, places in found[kind].items() for place in places]
    of_kind = {kind: [row for row, own in enumerate(order) if own[0] == kind] for kind in MARKS}
    mark = np.empty(len(order), dtype=object)
    for kind, own in of_kind.items():
        mark[own] = [f"{MARKS[kind]}{number}" for number in range(1, len(own) + 1)]
    kinds, names, lon, lat = zip(*order) if order else ((), (), (), ())
    return Places(
        np.array(kinds, dtype=object), mark, np.array(names, dtype=object), np.array(lon, dtype=float), np.array(lat, dtype=float)
    )


def _looked_at(tables, rows):
    """Names and places of the subjects at which standpoints look."""
    if "standpoints" not in rows:
        return np.empty(0, dtype=object), np.empty(0), np.empty(0)
    own = {name: tables["standpoints"][name][rows["standpoints"]] for name in LINE_COLUMNS}
    lon, lat, _ = direct(*(own[name].astype(float) for name in STEP))
    return own["subject"], lon, lat


def _named(tables, rows, table, name):
    if table not in rows:
        return np.empty(0, dtype=object), np.empty(0), np.empty(0)
    return tuple(tables[table][column][rows[table]] for column in (name, "lon_deg", "lat_deg"))


def _add(found, names, lon_deg, lat_deg, beside=None):
    """Add places by name, where none of that name nearer than `SAME_PLACE_M` is there yet, nor among others."""
    for name, lon, lat in zip(names.tolist(), lon_deg.tolist(), lat_deg.tolist()):
        same = [*found.get(name, ()), *(beside or {}).get(name, ())]
        if not same or inverse(*np.transpose(same), lon, lat)[2].min() > SAME_PLACE_M:
            found.setdefault(name, []).append((lon, lat))
