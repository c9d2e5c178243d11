"""The sky over sightlines: which body each is to be seen with, at which time, where that stands, and what a compass shows then."""

import numpy as np

from ..plan.alignments import Sites
from ..plan.clock import instants, local_text
from ..plan.compass import add_magnetic
from ..plan.places import places
from ..plan.sightlines import pair_arrays
from .bearings import compass_of
from .moments import moment, now_utc_s
from .parameters import blank, number_of, text_of
from .targets import target_of
from .translation import said, tr
from .zones import warn_near_other_clocks, zones_of_sites


class Skies:
    """Bodies and times of sightlines: those that BODY and TIME give, else those that the lines bring, else none.

    Attributes
    ----------
    targets : list of Target
        Empty where there is no time at all.
    down : int
        Sightlines so far whose body is below the level horizon.
    """

    def __init__(self, algorithm, parameters, feedback, lines):
        cameras = lines.cameras
        self._lines, self.down = lines, 0
        self._air = [number_of(algorithm, parameters, name) for name in ("PRESSURE", "TEMPERATURE")]
        self._zone_names, self._zone_index = zones_of_sites(parameters, cameras.lon_deg, cameras.lat_deg, feedback)
        self._t_utc_s, body = self._asked(parameters, feedback)
        ids, self._which = np.unique(body, return_inverse=True)
        has_time = np.isfinite(self._t_utc_s)
        self.targets = [target_of(algorithm, parameters, name) for name in ids.tolist()] if has_time.any() else []
        times = self._t_utc_s[has_time] if has_time.any() else np.array([now_utc_s()])
        span = times.min(), times.max()
        if has_time.any():
            warn_near_other_clocks(parameters, cameras, self._zone_names, self._zone_index, *span, feedback)
        self._compass = compass_of(cameras, *span, feedback)

    def _asked(self, parameters, feedback):
        """Time and id of the body of each camera."""
        count = len(self._lines.cameras)
        body = np.full(count, text_of(parameters, "BODY") or "core")
        if not blank(parameters.get("TIME")):
            times, notes = instants(moment(parameters["TIME"]), self._zone_names)
            for note in notes:
                feedback.pushWarning(said(note))
            return times[self._zone_index], body
        t_utc_s, own = getattr(self._lines, "t_utc_s", np.full(count, np.nan)), getattr(self._lines, "body", np.full(count, None))
        return t_utc_s, np.where(own == None, body, own).astype(str)  # noqa: E711  each element is compared

    def add_to(self, table):
        """Add body, time, place and magnetic bearing to a table of sightlines: the columns that `plan.framing` takes among them."""
        at = table["camera_index"]
        seen = pair_arrays(table, self._lines.places, self._zone_names, self._zone_index)
        t_utc_s, has_time = self._t_utc_s[at], np.isfinite(self._t_utc_s[at])
        sites = Sites(*(seen[name] for name in ("lon_deg", "lat_deg", "height_m")))
        table.update(places(sites, t_utc_s, self.targets, self._which[at], *self._air))
        table["t_utc"] = t_utc_s
        table["t_local"] = local_text(t_utc_s, self._zone_names, seen["zone_index"])
        table["tz"] = np.asarray(self._zone_names, dtype=object)[seen["zone_index"]]
        ids = np.array([target.id for target in self.targets] or [None], dtype=object)
        table["body"] = np.where(has_time, ids[np.minimum(self._which[at], ids.size - 1)], None)
        add_magnetic(table, self._compass, at, np.where(has_time, t_utc_s, now_utc_s()), "bearing_deg")
        self.down += int((table["alt_deg"] + np.nan_to_num(table["semi_deg"]) < 0.0).sum())

    def log(self, feedback):
        """Tell of bodies that are down."""
        if self.down:
            feedback.pushWarning(
                tr("{n:,} sightlines whose body is below the horizon at that time: the camera is aimed at the subject.").format(n=self.down)
            )
