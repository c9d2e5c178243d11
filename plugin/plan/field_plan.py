"""Field plans: the timetable of a night at a place, from when to leave the car until being back at it.

From alignments, one a row, to sheets: a sheet is a night at one place, with all its alignments. Everything is computed in UTC; the Sun and
the Moon are those of the place of the sheet's first alignment. Moments are s of UTC, nan where there is none.
"""

from typing import NamedTuple

import numpy as np

from ..ground.geodesic import direct
from ..sky.bodies import SUN
from ..sky.ephemeris import DAY_S, default_ephemeris
from ..sky.horizontal import Sites
from . import circumstances, nights
from .conditions import Circumstances, Heavens
from .night_windows import SUNRISE_ALT_DEG
from .places import places
from .span import ephemeris_span_utc_s
from .targets import target

TWILIGHT_DEG = {"civil": -6.0, "nautical": -12.0, "astronomical": -18.0}  # geometric altitude of the Sun's centre at which each ends
PLACED = ("core", "arch", "sun", "moon", "pole")  # bodies whose place follows from their id alone
# What can stand in a timetable, in the order of those that fall together.
SKY_KINDS = (
    *("sunset", "civil_dusk", "nautical_dusk", "astronomical_dusk"),
    *("moonset", "moonrise"),
    *("astronomical_dawn", "nautical_dawn", "civil_dawn", "sunrise"),
)
ROW_KINDS = ("start", "closest", "end")
KINDS = ("depart", "arrive", *SKY_KINDS, *ROW_KINDS, "leave", "back")


class FieldPlan(NamedTuple):
    """Sheets, in the order of their nights and then as the rows come, and what happens on them.

    Attributes
    ----------
    sheets : dict of str to ndarray, shape (S,)
        `night` (datetime64[D]), `first` and `last` (rows that begin and end it), `noon_utc_s`, `up_at_noon` (whether the Sun is up
        then), a moment for each of `SKY_KINDS` and for `depart arrive leave back`, `sunless` (no sunset to go by: arrival is counted from
        the first alignment), `dark_out`, `dark_back` (whether the walk lies in the dark, civil twilight over).
    sheet_of_row : ndarray of int, shape (N,)
    events : dict of str to ndarray, shape (E,)
        In the order of sheets and time: `sheet`, `t_utc_s`, `kind` (one of `KINDS`), `row` (-1 where it belongs to none), and where the
        body stands: `az_deg`, `alt_deg`.
    """

    sheets: dict
    sheet_of_row: np.ndarray
    events: dict


def field_plan(rows, zone_names, zone_index, walk_min, arrive_before_min, pack_up_min):
    """Plan nights in the field.

    Parameters
    ----------
    rows : dict of str to ndarray, shape (N,)
        Alignments: `lon_deg lat_deg` of the camera, `stand` (key of the place: rows of a night that share it share a sheet), `body` (id),
        `t_utc t_start t_end` [s of UTC; nan for t_start and t_end where only a moment is known], `az_deg alt_deg` of the body.
    zone_names : sequence of str
    zone_index : ndarray of int, shape (N,)
        Zone of each row.
    walk_min : ndarray, shape (N,)
        From the car to the camera; nan where not known. [min]
    arrive_before_min : float
        Before sunset, or before the first alignment where that begins with the Sun up or there is no sunset. [min]
    pack_up_min : float
        After the end of the last alignment. [min]

    Returns
    -------
    FieldPlan

    Raises
    ------
    ValueError
        A moment outside the ephemeris.
    """
    start = np.where(np.isfinite(rows["t_start"]), rows["t_start"], rows["t_utc"])
    end = np.where(np.isfinite(rows["t_end"]), rows["t_end"], rows["t_utc"])
    night, noon_utc_s = nights.night_of(rows["t_utc"], rows["lon_deg"], zone_names, zone_index)
    sheet_of_row, first, last = _sheets(night, rows["stand"], start, end)
    sheets = {"night": night[first], "first": first, "last": last, "noon_utc_s": noon_utc_s[first]}
    begin, finish = start[first], np.full(len(first), -np.inf)
    np.maximum.at(finish, sheet_of_row, end)
    sky = _Sky(rows["lon_deg"][first], rows["lat_deg"][first], sheets["noon_utc_s"]) if len(first) else None
    if sky is not None:
        sheets.update(sky.moments())
        sheets.update(_hours(sheets, sky, begin, finish, walk_min[first], walk_min[last], arrive_before_min, pack_up_min))
    return FieldPlan(sheets, sheet_of_row, _events(rows, sheets, sheet_of_row))


def _sheets(night, stand, start, end):
    """Sheet of each row, and the rows that begin and end each sheet."""
    if not len(stand):
        nothing = np.empty(0, dtype=np.int64)
        return nothing, nothing, nothing
    _, first_seen, of_stand = np.unique(stand.astype(str), return_index=True, return_inverse=True)
    in_order = np.argsort(np.argsort(first_seen))[of_stand.ravel()]
    _, sheet_of_row = np.unique(night.astype(np.int64) * len(first_seen) + in_order, return_inverse=True)
    sheet_of_row = sheet_of_row.ravel()
    count = sheet_of_row.max() + 1
    first, last = np.empty((2, count), dtype=np.int64)
    backward, forward = np.lexsort([-start, sheet_of_row]), np.lexsort([end, sheet_of_row])
    first[sheet_of_row[backward]] = backward  # the last written holds: the earliest start, the latest end
    last[sheet_of_row[forward]] = forward
    return sheet_of_row, first, last


def _hours(sheets, sky, begin, finish, walk_out_min, walk_back_min, arrive_before_min, pack_up_min):
    """When to be where."""
    sunless = sky.sun_up(begin) | ~(sheets["sunset"] <= begin)
    arrive = np.where(sunless, begin, sheets["sunset"]) - 60.0 * arrive_before_min
    leave = finish + 60.0 * pack_up_min
    hours = {"depart": arrive - 60.0 * walk_out_min, "arrive": arrive, "leave": leave, "back": leave + 60.0 * walk_back_min}
    dark = {name: ~sky.light_enough(np.where(np.isfinite(moment), moment, arrive)) for name, moment in hours.items()}
    dark["back"] = np.where(np.isfinite(hours["back"]), dark["back"], dark["leave"])
    return {**hours, "sunless": sunless, "dark_out": dark["depart"] | dark["arrive"], "dark_back": dark["leave"] | dark["back"]}


class _Sky:
    """Sun and Moon over S places, each on its own night."""

    def __init__(self, lon_deg, lat_deg, noon_utc_s):
        self.ephemeris = default_ephemeris()
        self.noon_utc_s = noon_utc_s
        begin, end = ephemeris_span_utc_s()
        # Two days more on either side: an alignment may begin before its night does, and the walk to it earlier still.
        low = np.maximum(noon_utc_s - 2.0 * DAY_S, begin)
        high = np.minimum(noon_utc_s + 3.0 * DAY_S, end)
        heavens = Heavens(circumstances.NEEDED, low.min(), high.max())
        sites, air = Sites(lon_deg, lat_deg), circumstances.Air(np.zeros(len(lon_deg)))
        span = (self.ephemeris.tt_from_utc(edge) for edge in (low, high))
        self.shared = Circumstances(heavens, sites, air, *span)

    def _sun(self, alt_deg):
        return self.shared.above(SUN, alt_deg)

    def sun_up(self, t_utc_s):
        """Whether the Sun is up at a moment of each place."""
        return self._holds(self._sun(SUNRISE_ALT_DEG), t_utc_s)

    def light_enough(self, t_utc_s):
        """Whether one sees where one walks: civil twilight, or day."""
        return self._holds(self._sun(TWILIGHT_DEG["civil"]), t_utc_s)

    def _holds(self, held, t_utc_s):
        return held.contains(np.arange(len(self.noon_utc_s)), self.ephemeris.tt_from_utc(t_utc_s))

    def moments(self):
        """The first end of daylight, the last begin of it, the first rise and set of the Moon in each night."""
        found = {"up_at_noon": self.sun_up(self.noon_utc_s)}
        stages = {"sunset": ("sunrise", SUNRISE_ALT_DEG)}
        stages.update({f"{name}_dusk": (f"{name}_dawn", alt_deg) for name, alt_deg in TWILIGHT_DEG.items()})
        for dusk, (dawn, alt_deg) in stages.items():
            light = self._sun(alt_deg)
            found[dusk] = self._first(light.row, light.end, light.end < light.high[light.row])
            found[dawn] = self._last(light.row, light.start, light.start > light.low[light.row])
        up = self.shared.moon_up()
        found["moonrise"] = self._first(up.row, up.start, up.start > up.low[up.row])
        found["moonset"] = self._first(up.row, up.end, up.end < up.high[up.row])
        return found

    def _first(self, place, tt_s, known):
        return self._last(place[::-1], tt_s[::-1], known[::-1])

    def _last(self, place, tt_s, known):
        """Of moments in order the last in each night, nan where there is none."""
        t_utc_s = self.ephemeris.utc_from_tt(tt_s)
        since_noon = t_utc_s - self.noon_utc_s[place]
        tonight = known & (since_noon >= 0.0) & (since_noon < DAY_S)
        found = np.full(len(self.noon_utc_s), np.nan)
        found[place[tonight]] = t_utc_s[tonight]
        return found


def _events(rows, sheets, sheet_of_row):
    """What happens on each sheet while somebody is out."""
    where = bodies_at_ends(rows)
    of_row = np.arange(len(sheet_of_row))
    parts = [
        (sheet_of_row, rows[moment], np.full(len(of_row), KINDS.index(kind)), of_row, where[f"az_{kind}"], where[f"alt_{kind}"])
        for kind, moment in zip(ROW_KINDS, ("t_start", "t_utc", "t_end"))
    ]
    index = np.arange(len(sheets["first"]))
    nowhere = np.full(len(index), np.nan)
    if len(index):
        out = np.fmin(sheets["depart"], sheets["arrive"]), np.fmax(sheets["leave"], sheets["back"])
        for kind in ("depart", "arrive", *SKY_KINDS, "leave", "back"):
            moment = sheets[kind]
            with np.errstate(invalid="ignore"):
                shown = np.where((moment >= out[0]) & (moment <= out[1]), moment, np.nan)
            parts.append((index, shown, np.full(len(index), KINDS.index(kind)), np.full(len(index), -1), nowhere, nowhere))
    columns = [np.concatenate(column) for column in zip(*parts)]
    known = np.isfinite(columns[1])
    order = np.flatnonzero(known)[np.lexsort([columns[2][known], columns[1][known], columns[0][known]])]
    sheet, t_utc_s, kind, row, az_deg, alt_deg = (column[order] for column in columns)
    kinds = np.array(KINDS, dtype=object)[kind.astype(int)]
    return {"sheet": sheet, "t_utc_s": t_utc_s, "kind": kinds, "row": row, "az_deg": az_deg, "alt_deg": alt_deg}


def bodies_at_ends(rows):
    """Where the body of each row stands at its begin and end, and where the row tells that it stands at its moment.

    Parameters
    ----------
    rows : dict
        As for `field_plan`.

    Returns
    -------
    dict of str to ndarray, shape (N,)
        `az_start alt_start az_closest alt_closest az_end alt_end`; nan for bodies whose place does not follow from their id. [deg]
    """
    ids = np.array([body if body in PLACED else "" for body in rows["body"].tolist()], dtype=object)
    known = sorted(set(ids.tolist()) - {""})
    which = np.array([known.index(body) if body else -1 for body in ids.tolist()], dtype=int)
    sites = Sites(rows["lon_deg"], rows["lat_deg"])
    found = {"az_closest": rows["az_deg"], "alt_closest": rows["alt_deg"]}
    for end in ("start", "end"):
        seen = places(sites, rows[f"t_{end}"], [target(body) for body in known], which)
        found[f"az_{end}"], found[f"alt_{end}"] = seen["az_deg"], seen["alt_deg"]
    return found


def subject_places(rows):
    """Where the subjects of rows stand, by bearing and distance: longitude, latitude, shape (N,). [deg]."""
    lon, lat, _ = direct(rows["lon_deg"], rows["lat_deg"], rows["bearing_deg"], rows["dist_m"])
    return lon, lat
