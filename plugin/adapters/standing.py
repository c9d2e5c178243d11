"""The rows of a search for standpoints: points, stretches and zones, cut to allowed ground, with what is seen from them."""

from collections import Counter
from itertools import islice

import numpy as np

from ..plan import stretches
from ..plan.clock import dates, local_text
from ..plan.compass import add_magnetic
from ..plan.nights import night_of
from ..plan.outlook import Outlook
from ..plan.standpoints import NOT_FACING, TOO_FAR, TOO_NEAR, Search, position_error_deg
from ..plan.zones_of_ground import POLE_PART, Zones
from .crs import transformed
from .geometries import points_of
from .moments import now_utc_s
from .parameters import number_of, yes_of
from .progress import part_of
from .shapes import Shapes
from .translation import counted, tr

ROWS_AT_ONCE = 1000  # looked at over the ground between two looks at the cancel button
RUNS_AT_ONCE = 2000
ZONES_AT_ONCE = 50
ZONES_SHARE = 0.3  # of the run, where they are asked for
NOT_ALLOWED, OTHER_GAP, BEHIND = "not_allowed", "other_gap", "behind"
REASONS = {
    TOO_NEAR: "nearer than MIN_DISTANCE",
    TOO_FAR: "farther than MAX_DISTANCE",
    NOT_FACING: "outside FACE_FROM to FACE_TO",
    NOT_ALLOWED: "outside AREA or in closed ground",
    OTHER_GAP: "with the body outside GAP_MIN to GAP_MAX",
    BEHIND: "with the body behind the terrain",
}
HEIGHTS = {"dem": "from the DEM", "z": "from the Z of path and subject", "level": "taken as level"}
SEEN_TOLD = 5  # pairs of subject and path whose bearings are told where nothing is found


class Standing:
    """What is written, and what was left out.

    Parameters
    ----------
    scene : Scene
    sought
        With `aim`, `sky`, `moments`.
    reach : plan.standpoints.Reach
    compass : Compass
        At the subjects.
    crs : QgsCoordinateReferenceSystem
        Of the outputs.
    """

    def __init__(self, algorithm, parameters, context, scene, sought, reach, compass, crs):
        self._scene, self._sought, self._reach, self._compass, self._crs = scene, sought, reach, compass, crs
        self._transform_context = context.transformContext()
        self._shapes = Shapes(scene.lines.crs, crs, self._transform_context)
        self._keep_closed, self._use_skyline = (yes_of(algorithm, parameters, name, context) for name in ("KEEP_CLOSED", "USE_SKYLINE"))
        names = ("POS_ERROR", "GAP_MIN", "GAP_MAX", "REFRACTION_K", "TERRAIN_RADIUS")
        self._number = {name: number_of(algorithm, parameters, name) for name in names}
        self._now_utc_s = now_utc_s()
        self._lens_m = scene.lines.measures["CAMERA_HEIGHT"]
        self._zone_lens_m = float(np.median(self._lens_m)) if len(self._lens_m) else 0.0
        self.left_out, self.heights, self.near_pole = Counter(), Counter(), 0

    def write(self, points, parts, zones, go_on):
        """Search, and write to those of the tables that are asked for."""
        scene, sought = self._scene, self._sought
        with_skyline = sought.sky is not None
        scene.read_ground(go_on, self._number["TERRAIN_RADIUS"] if with_skyline else 0.0)
        if scene.ground.stopped:
            return
        self._search = Search(scene.paths, scene.places, sought.aim, self._reach, None if sought.moments is None else sought.moments.asked)
        gaps = self._number["GAP_MIN"], self._number["GAP_MAX"]
        self._outlook = Outlook(scene.places, scene.ground.relief, self._number["REFRACTION_K"], sought.sky, *gaps)
        begin, end = scene.ground.begin, 1.0 - ZONES_SHARE * bool(zones)
        before = begin
        for runs, done in self._search.blocks():
            after = begin + (end - begin) * done
            share = part_of(go_on, before, after)
            if not share(0.0) or points and not self._write_points(points, runs, share):
                return
            for some in _pieces(runs) if parts else ():
                if not self._write_stretches(parts, some, share):
                    return
            before = after
        if zones:
            self._write_zones(zones, part_of(go_on, end, 1.0))

    # what goes with a row

    def _moments(self, subject, moment, lon_deg):
        """Columns of the moments of rows, and the night and the date that decide what is closed."""
        if self._sought.moments is None:
            never = np.full(subject.size, np.datetime64("NaT", "D"))
            return {}, never, never
        zone_names, zone = self._scene.zone_names, self._scene.zone_index[subject]
        t_utc_s = self._sought.moments.t_utc_s[moment]
        night = night_of(t_utc_s, lon_deg, zone_names, zone)[0]
        columns = {
            "body": np.full(subject.size, self._sought.sky.target.id, dtype=object),
            "night": night,
            "t_utc": t_utc_s,
            "t_local": local_text(t_utc_s, zone_names, zone),
            "tz": np.asarray(zone_names, dtype=object)[zone],
        }
        return columns, night, dates(t_utc_s, zone_names, zone)

    # points

    def _write_points(self, points, runs, go_on):
        found, left_out = self._search.points(runs)
        self.left_out.update(left_out)
        count = found["subject"].size
        for first in range(0, count, ROWS_AT_ONCE):
            table, geometries = self._complete({name: values[first : first + ROWS_AT_ONCE] for name, values in found.items()})
            if geometries and not points.write(table, table["path_index"], geometries, lambda part: go_on(0.0)):
                return False
            if not go_on(0.0):
                return False
        return True

    def _complete(self, table):
        """The rows that are kept, with all columns, and their points."""
        paths, subject, lon = self._search.paths, table["subject"], table["lon_deg"]
        x, y = paths.map_at(table["piece"], table["u"])
        moments, night, day = self._moments(subject, table["moment"], lon)
        allowed = self._scene.access.allows(x, y, self._scene.access.sets_of(night, day))
        table.update(moments, allowed=allowed, x=x, y=y)
        table = self._kept(table, allowed | self._keep_closed, NOT_ALLOWED)
        z_m = paths.height_m(table["piece"], table["u"])
        self._outlook.add_to(table, self._lens_m[table["path"]], z_m)
        table = self._kept(table, self._outlook.is_within_gap(table), OTHER_GAP)
        self._outlook.add_ground(table)
        if "ground_deg" in table and self._use_skyline:
            table = self._kept(table, ~(table["alt_deg"] < table["ground_deg"]), BEHIND)
        return self._named(table)

    def _kept(self, table, mask, reason):
        if mask.all():
            return table
        self.left_out[reason] += int((~mask).sum())
        return {name: values[mask] for name, values in table.items()}

    def _named(self, table):
        self.heights.update(table["heights"].tolist())
        subject, path, chain_m = table["subject"], table["path"], table["chain_m"]
        t_utc_s = table.get("t_utc", np.full(subject.size, self._now_utc_s))
        add_magnetic(table, self._compass, subject, t_utc_s, "bearing_deg")
        camera = np.empty(subject.size, dtype=object)
        camera[:] = [f"{self._scene.lines.name[p]} {m:.0f} m" for p, m in zip(path.tolist(), chain_m.tolist())]
        table.update(err_deg=position_error_deg(self._number["POS_ERROR"], table["dist_m"]), camera=camera, path_index=path)
        table.update(self._scene.names(subject, path))
        x, y = transformed(table["x"], table["y"], self._scene.lines.crs, self._crs, self._transform_context)
        if self._crs.isGeographic():
            x = (x + 180.0) % 360.0 - 180.0
        return table, points_of(x, y)

    # stretches

    def _write_stretches(self, parts, runs, go_on):
        search, outlook, paths = self._search, self._outlook, self._search.paths
        cell_m = outlook.cell_m()
        conditions = outlook.gap_conditions(paths, self._lens_m)
        spans = stretches.spans_within(search, runs, conditions, None if cell_m is None else 0.5 * cell_m)
        moments, night, day = self._moments(spans.subject, spans.moment, paths.lon_deg[spans.piece])
        cut = self._cut(spans, self._scene.access.sets_of(night, day), go_on)
        if cut is None:
            return False
        spans, allowed = cut
        joined = stretches.join(paths, spans, allowed)
        table = stretches.table_of(search, spans, joined)
        subject, path = table["subject"], table["path"]
        table.update(self._moments(subject, table["moment"], paths.lon_deg[spans.piece[joined.first]])[0])
        table.update(self._scene.names(subject, path), allowed=allowed[joined.first])
        x, y = paths.map_at(joined.piece, joined.u)
        geometries = self._shapes.lines(x, y, joined.offsets)
        return not geometries or parts.write(table, path, geometries, lambda part: go_on(0.0))

    def _cut(self, spans, numbers, go_on):
        """Spans cut to allowed ground, and whether each is; all of them kept where what is closed is to be kept. None when cancelled."""
        access, paths = self._scene.access, self._search.paths
        if not access.given:
            return spans, np.ones(spans.piece.size, dtype=bool)
        ends = [np.stack(paths.map_at(spans.piece, u), axis=1).tolist() for u in (spans.u0, spans.u1)]
        row, share0, share1, allowed = [], [], [], []
        for i, (start, end, number) in enumerate(zip(*ends, numbers.tolist())):
            if i % ROWS_AT_ONCE == 0 and not go_on(0.0):
                return None
            edge = 0.0
            for low, high in [*access.parts((start, end), number), (1.0, 1.0)]:
                pieces = [(edge, low, False)] if self._keep_closed else []
                for begin, stop, free in [*pieces, (low, high, True)]:
                    if stop > begin:
                        row.append(i)
                        share0.append(begin)
                        share1.append(stop)
                        allowed.append(free)
                edge = high
        row = np.array(row, dtype=np.int64)
        span, length = spans.take(row), (spans.u1 - spans.u0)[row]
        u0, u1 = (
            np.where(share == whole, exact, span.u0 + share * length)
            for share, whole, exact in ((np.array(share0), 0.0, span.u0), (np.array(share1), 1.0, span.u1))
        )
        return span._replace(u0=u0, u1=u1), np.array(allowed, dtype=bool)

    # zones

    def _write_zones(self, zones, go_on):
        count, asked = len(self._scene.subjects), self._search.asked
        subject, moment = (np.arange(count), np.zeros(count, dtype=np.int64)) if asked is None else np.nonzero(asked)
        for first in range(0, subject.size, ZONES_AT_ONCE):
            some = slice(first, first + ZONES_AT_ONCE)
            part = part_of(go_on, first / subject.size, min(first + ZONES_AT_ONCE, subject.size) / subject.size)
            if not self._write_some_zones(zones, subject[some], moment[some], part):
                return

    def _write_some_zones(self, zones, subject, moment, go_on):
        scene, aim = self._scene, self._sought.aim
        ground = Zones(scene.places, aim, self._reach, subject, moment)
        near_pole = ground.near_pole()
        if near_pole.any():
            self.near_pole += int(near_pole.sum())
            subject, moment = subject[~near_pole], moment[~near_pole]
            ground = Zones(scene.places, aim, self._reach, subject, moment)
        lon, lat = scene.places.lon_deg[subject], scene.places.lat_deg[subject]
        if self._outlook.has_gap:
            rings = ground.narrowed(self._outlook.gap_holds(self._zone_lens_m), self._outlook.cell_m(), lambda: go_on(0.0))
        else:
            rings = ground.rings()
        moments, night, day = self._moments(subject, moment, lon)
        number = scene.access.sets_of(night, day)
        row, allowed, geometries = [], [], []
        for zone, polygon in zip(*self._shapes.polygons(rings)):
            kept, other = scene.access.split(polygon, number[zone])
            for shape, free in ((kept, True), (other, False)) if self._keep_closed else ((kept, True),):
                if not shape.isEmpty():
                    row.append(zone)
                    allowed.append(free)
                    geometries.append(self._shapes.to_target(shape))
            if not go_on(0.0):
                return False
        row = np.array(row, dtype=np.int64)
        table = {name: values[row] for name, values in moments.items()}
        table.update(scene.names(subject[row]), target_deg=aim.at(lon, lat, moment)[row], allowed=np.array(allowed, dtype=bool))
        return not geometries or zones.write(table, row, geometries, lambda part: go_on(part))

    # the log

    def log(self, points, parts, zones, none, feedback):
        """What was found and left out; where nothing was found, why, and which bearings the paths do cover."""
        if self.left_out:
            reasons = {tr(REASONS[reason]): count for reason, count in self.left_out.items()}
            feedback.pushInfo(tr("Places left out: {reasons}.").format(reasons=counted(reasons)))
        if self.near_pole:
            feedback.pushWarning(
                tr(
                    "ZONES: {n:,} left out, as MAX_DISTANCE reaches over {part:.0f} % of the way from subject to pole, where one bearing "
                    "bounds no ground. Choose a smaller MAX_DISTANCE, or BODY in place of BEARING."
                ).format(n=self.near_pole, part=100.0 * POLE_PART)
            )
        if self.heights:
            shown = {tr(HEIGHTS[source]): count for source, count in self.heights.items()}
            feedback.pushInfo(tr("Heights: {sources}.").format(sources=counted(shown)))
        others = [
            tr("{n:,} {what}").format(n=table.written, what=what)
            for table, what in ((parts, tr("stretches of path")), (zones, tr("zones of ground")))
            if table
        ]
        found = ", ".join([tr("{n:,} standpoints").format(n=points.written), *others])
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {found} written.").format(found=found))
        elif none:
            feedback.pushWarning(tr("No standpoints: {reason}.").format(reason=none))
        elif not points.written:
            for sentence in [] if self.left_out else self._bearings_seen():
                feedback.pushInfo(sentence)
            feedback.pushWarning(tr("No standpoints ({found}).").format(found=found))
        else:
            feedback.pushInfo(tr("{found}.").format(found=found))

    def _bearings_seen(self):
        """Sentences about the bearings that paths do cover, and the ones wanted."""
        wanted = self._wanted()
        seen = list(islice(self._search.bearings_seen(), SEEN_TOLD + 1))
        for subject, path, az_from, az_to in seen[:SEEN_TOLD]:
            names = self._scene.names(subject, path)
            yield tr("{path} sees {subject} at bearings from {az_from:.1f}° clockwise to {az_to:.1f}°; wanted: {wanted}.").format(
                path=names["path"], subject=names["subject"], az_from=az_from, az_to=az_to, wanted=wanted
            )
        if len(seen) > SEEN_TOLD:
            yield tr("... and so on, for more pairs of path and subject.")
        if not seen:
            yield tr("No path comes within MAX_DISTANCE ({most:,.0f} m) of a subject.").format(most=self._reach.max_distance_m)

    def _wanted(self):
        """The direction wanted at the first subject, in words."""
        places, asked = self._scene.places, self._search.asked
        moment = np.zeros(1, dtype=np.int64) if asked is None else np.flatnonzero(asked.any(axis=0))
        bearing = self._sought.aim.at(np.full(moment.size, places.lon_deg[0]), np.full(moment.size, places.lat_deg[0]), moment)
        if moment.size == 1:
            return tr("{bearing:.1f}°").format(bearing=bearing[0])
        return tr("{first:.1f}° to {last:.1f}° from the first time to the last").format(first=bearing[0], last=bearing[-1])


def _pieces(runs):
    """Runs, so many at a time, that no stretch is torn."""
    ends = np.append(np.flatnonzero(~runs.joined) + 1, runs.joined.size)
    edges = np.unique(np.append(ends[np.searchsorted(ends, np.arange(0, runs.joined.size, RUNS_AT_ONCE))], [0, runs.joined.size]))
    for first, last in zip(edges[:-1].tolist(), edges[1:].tolist()):
        yield runs.take(slice(first, last))
