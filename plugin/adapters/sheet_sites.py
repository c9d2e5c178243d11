"""The sites of a run, a sheet each: who and what is on it, when, on which ground, and how that stands to closed ground."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsGeometry, QgsLineString, QgsPoint, QgsProcessingException, QgsWkbTypes

from ..plan.clock import dates
from ..plan.compass import MODEL, Compass
from ..plan.field_plan import field_plan
from ..plan.map_sheet import grid_zone
from ..plan.site_sheets import lines_of, places_of, sheets_of, standing_of, with_parking
from ..plan.ways import NONE
from .closed_ground import REACH_M, Checked, closures_of
from .crs import transformed, wgs84
from .geometries import grid_bearings
from .moments import now_utc_s
from .sheet_ground import Ground
from .translation import counted, tr
from .walks import OnFoot

LINE, POLYGON = QgsWkbTypes.GeometryType.LineGeometry, QgsWkbTypes.GeometryType.PolygonGeometry
GROUNDS = {"ZONES": (POLYGON, ()), "PATHS": (LINE, ()), "CLOSED": (POLYGON, ("CLOSED_NAME", "CLOSED_FROM", "CLOSED_TO"))}
FARTHEST_M = 200_000.0  # from the first place of a sheet to all others: a grid that holds them both holds no more
EVENTS_OUT = ("depart", "arrive", "leave", "back")


@dataclass(frozen=True)
class North:
    """Where the norths lie at a site: degrees east of the map's grid north, and magnetic north of true north, with the model's date."""

    true_deg: float
    declination_deg: float
    date: str
    model: str


@dataclass(frozen=True)
class Site:
    """A sheet: what stands on it.

    Attributes
    ----------
    number, count : int
        Of all sheets.
    name : str
    places : plan.site_sheets.Places
    lines, standing : dict
        Of `plan.site_sheets.lines_of` and `standing_of`.
    rows : ndarray of int
        Of the alignments.
    nights : ndarray of datetime64[D]
    days : ndarray of datetime64[D]
        On which people are out; none where no alignment tells.
    epsg, zone : int, str
        Of the map's grid.
    crs : QgsCoordinateReferenceSystem
    x, y : ndarray
        Of the places, on the grid. [m]
    north : North
    grounds : dict of str to list of sheet_ground.Shape
    closures : list of closed_ground.Closure
    walks : list of (int, QgsGeometry)
        Place and the drawn way to it, on the grid.
    findings : list of (str, str, closed_ground.Finding)
        Mark, name, and what was found.
    """

    number: int
    count: int
    name: str
    places: object
    lines: dict
    standing: dict
    rows: np.ndarray
    nights: np.ndarray
    days: np.ndarray
    epsg: int
    zone: str
    crs: object
    x: np.ndarray
    y: np.ndarray
    north: North
    grounds: dict
    closures: list
    walks: list
    findings: list


class Sites:
    """All sheets of a run.

    Attributes
    ----------
    planned : Planned or None
        The alignments.
    plan : plan.field_plan.FieldPlan or None
        Of the alignments.
    on_foot : OnFoot
        Ways to the rows of the alignments, and then to the places of each sheet.
    """

    def __init__(self, algorithm, parameters, context, feedback, tables, number, limit):
        self._context, self._feedback = context, feedback
        self._tables, self.planned, self._number = tables.tables, tables.alignments, number
        self.sheets, unused = sheets_of(self._tables)
        _refuse_too_many(len(self.sheets), limit)
        if sum(unused.values()):
            reasons = {tr("of {table}").format(table=name.upper()): count for name, count in unused.items()}
            feedback.pushWarning(
                tr(
                    "Rows that belong to no sheet: {reasons}. Cameras are known by their names: give CAMERA_NAME as in the run "
                    "that made them."
                ).format(reasons=counted(reasons))
            )
        self._lines = [lines_of(self._tables, sheet.rows) for sheet in self.sheets]
        self._places = [places_of(self._tables, sheet.rows, lines) for sheet, lines in zip(self.sheets, self._lines)]
        self._first_place = np.cumsum([self._aligned, *(len(places.name) for places in self._places)])
        self._grounds = {name: Ground(algorithm, parameters, name, *how, context) for name, how in GROUNDS.items()}
        self._keys = {sheet.key for sheet in self.sheets}
        self.undated = set()
        self.on_foot = OnFoot(algorithm, parameters, context, feedback, *self._everywhere(), number["WALK_SPEED"])
        self.plan = self._planned()

    def __len__(self):
        return len(self.sheets)

    @property
    def _aligned(self):
        return 0 if self.planned is None else len(self.planned)

    def _everywhere(self):
        """Longitudes and latitudes of the rows of alignments and of all places. [deg]."""
        rows = {"lon_deg": [], "lat_deg": []} if self.planned is None else self.planned.rows
        return (
            np.concatenate([rows[name], *(getattr(places, name) for places in self._places)]).astype(float)
            for name in ("lon_deg", "lat_deg")
        )

    def _planned(self):
        if self.planned is None or not len(self.planned):
            return None
        hours = self.on_foot.walk_min[: self._aligned], self._number["ARRIVE_BEFORE"], self._number["PACK_UP"]
        return field_plan(self.planned.rows, self.planned.zone_names, self.planned.zone_index, *hours)

    @property
    def first_place(self):
        """Longitude and latitude of the first place of all, shape (1,). [deg]."""
        places = next(places for places in self._places if len(places.name))
        return places.lon_deg[:1], places.lat_deg[:1]

    @property
    def empty(self):
        """Whether no sheet has a place."""
        return not any(len(places.name) for places in self._places)

    def site(self, index):
        """One of them; None where it has no place on the Earth."""
        sheet, places, lines = self.sheets[index], self._places[index], self._lines[index]
        if not len(places.name):
            return None
        places = self._with_parking(index, places)
        rows = sheet.rows.get("alignments", np.empty(0, dtype=np.int64))
        nights, days = self._days(rows)
        lon, lat = float(places.lon_deg[0]), float(places.lat_deg[0])
        epsg, zone = grid_zone(lon, lat)
        crs = QgsCoordinateReferenceSystem(f"EPSG:{epsg}")
        x, y = self._on_grid(places.lon_deg, places.lat_deg, crs)
        walks = self._walks(index, crs)
        reach_m = REACH_M + self._farthest(x[places.kind != "subject"], y[places.kind != "subject"], x[0], y[0], walks, sheet.key)
        grounds = {name: self._near(name, sheet.key, lon, lat, reach_m, crs) for name in self._grounds}
        grounds["ZONES"] = self._of_subjects(grounds["ZONES"], places)
        closures = closures_of(grounds["CLOSED"], days, self.undated)
        return Site(
            number=index + 1,
            count=len(self.sheets),
            name=sheet.key or (places.name[0] if len(places.name) == 1 else ""),
            places=places,
            lines=lines,
            standing=standing_of(self._tables, sheet.rows),
            rows=rows,
            nights=nights,
            days=days,
            epsg=epsg,
            zone=zone,
            crs=crs,
            x=x,
            y=y,
            north=self._north(lon, lat, nights, crs),
            grounds=grounds,
            closures=closures,
            walks=walks,
            findings=self._findings(index, walks, grounds["ZONES"], Checked(closures, crs, self._context.transformContext())),
        )

    def place_index(self, site, place):
        """Where a place of a sheet stands among those of `on_foot`."""
        return int(self._first_place[site.number - 1]) + place

    def _with_parking(self, index, places):
        """The places, and where the cars of those who stand there are."""
        on_foot, first = self.on_foot, int(self._first_place[index])
        standing = first + np.flatnonzero(places.kind != "subject")
        used = np.unique(on_foot.ways.parking[standing])
        used = used[used != NONE].astype(int)
        return with_parking(places, on_foot.parking_name[used], on_foot.parking_lon_deg[used], on_foot.parking_lat_deg[used])

    def _days(self, rows):
        """Nights of alignments, and the days on which anybody is out."""
        none = np.empty(0, dtype="datetime64[D]")
        if not rows.size:
            return none, none
        sheets, planned = self.plan.sheets, self.planned
        own = np.unique(self.plan.sheet_of_row[rows])
        nights, zone = sheets["night"][own], planned.zone_index[sheets["first"][own]]
        out = np.array([nights, *(dates(sheets[event][own], planned.zone_names, zone) for event in EVENTS_OUT)])
        days = [np.arange(known.min(), known.max() + 1) for known in (column[~np.isnat(column)] for column in out.T)]
        return np.unique(nights), np.unique(np.concatenate(days))

    def _north(self, lon, lat, nights, crs):
        moment = nights[0].astype("datetime64[s]").astype(float) if nights.size else now_utc_s()
        place = np.array([lon]), np.array([lat])
        declination = Compass(*place, np.zeros(1), moment, moment).declination_deg(np.zeros(1, dtype=int), np.array([moment]))[0]
        true_deg = grid_bearings(*place, np.zeros(1), crs, self._context.transformContext())[0]
        date = str(np.datetime64(int(moment), "s"))[:10]
        return North(float((true_deg + 180.0) % 360.0 - 180.0), float(declination), date, MODEL)

    @staticmethod
    def _farthest(x, y, x0, y0, walks, key):
        """How far the standing places and ways of a sheet lie from its first place. [m]."""
        boxes = [way.boundingBox() for _, way in walks]
        x = np.concatenate([[x0], x, *([box.xMinimum(), box.xMaximum()] for box in boxes)])
        y = np.concatenate([[y0], y, *([box.yMinimum(), box.yMaximum()] for box in boxes)])
        far_m = float(max(np.abs(x - x0).max(), np.abs(y - y0).max()) * np.sqrt(2.0))
        if not far_m <= FARTHEST_M:
            raise QgsProcessingException(
                tr(
                    "The places of sheet '{sheet}' lie more than {km:g} km apart, which no site map shows. Choose a SHEET_BY that gives "
                    "each site a sheet, such as camera."
                ).format(sheet=key or "-", km=FARTHEST_M / 1000.0)
            )
        return far_m

    def _near(self, name, key, lon, lat, reach_m, crs):
        ground = self._grounds[name]
        shapes = ground.near(lon, lat, reach_m, crs)
        if not ground.keyed or self._keys.isdisjoint(ground.keys()):
            return shapes
        return [shape for shape in shapes if shape.key == key]

    def _of_subjects(self, zones, places):
        """Zones of a sheet's own subjects, where they tell of which they are."""
        everywhere = {name for some in self._places for name in some.name[some.kind == "subject"].tolist()}
        if everywhere.isdisjoint(self._grounds["ZONES"].subjects()):
            return zones
        own = {None, *places.name[places.kind == "subject"].tolist()}
        return [zone for zone in zones if zone.subject in own]

    def _walks(self, index, crs):
        """The drawn ways to cameras and standpoints, each once, on the grid."""
        places, found, seen = self._places[index], [], set()
        for place in np.flatnonzero(places.kind != "subject").tolist():
            parts = self.on_foot.segments(int(self._first_place[index]) + place)
            lines = []
            for lon, lat in parts:
                x, y = self._on_grid(lon, lat, crs)
                lines.append(QgsLineString([QgsPoint(*xy) for xy in zip(x.tolist(), y.tolist())]))
            geometry = QgsGeometry.collectGeometry([QgsGeometry(line) for line in lines])
            if lines and geometry.asWkt(1) not in seen:
                seen.add(geometry.asWkt(1))
                found.append((place, geometry))
        return found

    def _on_grid(self, lon_deg, lat_deg, crs):
        return transformed(lon_deg, lat_deg, wgs84(), crs, self._context.transformContext())

    def _findings(self, index, walks, zones, checked):
        """Each standing place and way, and all zones together, against closed ground."""
        if not self.closures_known:
            return []
        places, found = self._places[index], []
        for place in np.flatnonzero(places.kind != "subject").tolist():
            found.append((places.mark[place], places.name[place], checked.place(*self._place(places, place))))
        for place, way in walks:
            name = self.on_foot.name_of_walk(int(self._first_place[index]) + place)
            told = tr("{walk}, to {mark}").format(walk=name, mark=places.mark[place])
            found.append((tr("Walk"), told, checked.shape(way, *self._place(places, place))))
        if zones:
            together = QgsGeometry.unaryUnion([zone.geometry for zone in zones])
            found.append((tr("Zones"), tr("{n:,} in all").format(n=len(zones)), checked.shape(together, *self._place(places, 0))))
        return found

    @staticmethod
    def _place(places, place):
        return float(places.lon_deg[place]), float(places.lat_deg[place])

    @property
    def closures_known(self):
        """Whether a layer of closed ground is given."""
        return self._grounds["CLOSED"].given

    @property
    def walks_known(self):
        """Whether a layer of walks is given."""
        return len(self.on_foot.walks) > 0

    def log(self):
        """Tell of ground that was not as it should be."""
        for name, ground in self._grounds.items():
            if ground.crooked:
                self._feedback.pushWarning(
                    tr("{label}: {n:,} polygons were not valid and have been repaired; look at them.").format(label=name, n=ground.crooked)
                )
            if ground.lost:
                self._feedback.pushWarning(
                    tr("{label}: {n:,} shapes have no place on the grid of a sheet's map and are left out.").format(
                        label=name, n=ground.lost
                    )
                )
        if self.undated:
            self._feedback.pushWarning(
                tr("CLOSED: the season of {n:,} polygons cannot be read; they are taken as always closed: features {ids}.").format(
                    n=len(self.undated), ids=", ".join(map(str, sorted(self.undated)[:5]))
                )
            )


def _refuse_too_many(sheets, limit):
    if sheets > limit:
        raise QgsProcessingException(
            tr(
                "This asks for {n:,} sheets, over MAX_PICTURES ({limit:,}). Select fewer features, choose another SHEET_BY, or raise "
                "MAX_PICTURES."
            ).format(n=sheets, limit=limit)
        )
