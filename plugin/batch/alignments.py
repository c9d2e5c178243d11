"""Alignments of a block of cameras with all subjects: the rows that `alignments` writes."""

from dataclasses import dataclass, replace
from functools import partial
from typing import Optional

import numpy as np
import pyarrow as pa
import pyproj

from ..names import ALIGNMENTS_FIELDS, UNMET_FIELDS
from ..plan.alignments import Pairs, add_lines, find_alignments
from ..plan.compass import Compass
from ..plan.conditions import Conditions
from ..plan.drawing import drawn_wkb
from ..plan.pairs import cut_up, pair_by
from ..plan.sightlines import Cameras, Subjects, pair_arrays, sightlines
from .partitions import Partition, lines, path_of, points
from .points import WGS84, Points, transformed
from .terrain import Dem, Ground, fill_over

FIELDS = {"alignments": (ALIGNMENTS_FIELDS, "MultiLineString"), "unmet": (UNMET_FIELDS, "Point")}
PAIRS_AT_ONCE = 25_000
SUBJECT_MEASURES = ("SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO")


@dataclass(frozen=True)
class Alignments:
    """What is asked of every block.

    Attributes
    ----------
    outputs : tuple of str
        Of the keys of `FIELDS`, `alignments` first.
    span_utc_s : (float, float)
        Of the whole run: between its ends the declination goes straight.
    crs : dict
        That the lines are written in, as PROJJSON.
    kept : pyarrow.Schema
    """

    ending, counted = ".parquet", "rows"
    outputs: tuple
    subjects: Points
    targets: list
    conditions: Conditions
    pairing: str
    max_distance_m: float
    refraction_k: float
    span_utc_s: tuple
    dem: Optional[Dem]
    crs: dict
    kept: pa.Schema

    def sinks(self, folder, number):
        """Partitions to be filled, by the name of their output."""
        return {name: Partition(path_of(folder, name, number), *FIELDS[name], self.kept, self.crs) for name in self.outputs}

    @staticmethod
    def told(block):
        """Which block it is, in words."""
        return f"{len(block.points):,} cameras, from '{block.points.name[0]}'" if len(block.points) else "no cameras"

    def fill(self, block, sinks):
        """Write the rows of a block into partitions by the name of their output."""
        if self.dem is None:
            self._fill(sinks, block)
        else:
            fill_over(self._ground, block, partial(self._fill, sinks))

    def _fill(self, sinks, block, relief=None):
        cameras = block.points
        places = Cameras(cameras.lon_deg, cameras.lat_deg, cameras.measures["CAMERA_HEIGHT"], cameras.z_m)
        subjects = self.subjects
        seen = Subjects(subjects.lon_deg, subjects.lat_deg, *(subjects.measures[name] for name in SUBJECT_MEASURES), subjects.z_m)
        if relief is not None:
            places, seen = (replace(ends, dem_m=relief.ground_m(ends.lon_deg, ends.lat_deg)) for ends in (places, seen))
        height_m = np.where(np.isfinite(cameras.z_m), cameras.z_m, 0.0)
        compass = Compass(cameras.lon_deg, cameras.lat_deg, height_m, *self.span_utc_s)
        for pairs in cut_up(self._pairs(cameras), PAIRS_AT_ONCE):
            measured, _ = sightlines(places, seen, pairs, self.refraction_k, relief)
            asked = Pairs(**pair_arrays(measured, places, block.zone_names, block.zone_index))
            nights = (night[measured["camera_index"]] for night in (block.first_night, block.last_night))
            for table, without in find_alignments(asked, self.targets, *nights, self.conditions, relief=relief):
                add_lines(table, measured, self._names(cameras, measured), compass)
                self._write(sinks["alignments"], table, measured, cameras)
                if "unmet" in sinks:
                    without.update({name: column[without["pair"]] for name, column in self._names(cameras, measured).items()})
                    camera = measured["camera_index"][without["pair"]]
                    sinks["unmet"].write(without, cameras.kept.take(camera), *points(cameras.x[camera], cameras.y[camera]))

    def _pairs(self, cameras):
        return pair_by(self.pairing, cameras, self.subjects, self.max_distance_m)

    def _ground(self, block):
        cameras, subjects = block.points, self.subjects
        ground = Ground(self.dem)
        ground.extent.want_around(cameras.lon_deg, cameras.lat_deg, self.dem.radius_m)
        for pairs in self._pairs(cameras):  # not under subjects that no camera of this block looks at
            camera, subject = pairs.camera, pairs.subject
            ends = (cameras.lon_deg[camera], cameras.lat_deg[camera], subjects.lon_deg[subject], subjects.lat_deg[subject])
            ground.extent.want_around(*ends[2:])
            ground.extent.want_along(*ends)
        return ground

    def _names(self, cameras, measured):
        camera, subject = measured["camera_index"], measured["subject_index"]
        return {
            "camera": cameras.name[camera],
            "camera_id": cameras.fid[camera],
            "subject": self.subjects.name[subject],
            "subject_id": self.subjects.fid[subject],
        }

    def _write(self, sink, table, measured, cameras):
        shown, row = np.unique(table["pair"], return_inverse=True)
        camera, subject = measured["camera_index"][shown], measured["subject_index"][shown]
        ends = (cameras.lon_deg[camera], cameras.lat_deg[camera], self.subjects.lon_deg[subject], self.subjects.lat_deg[subject])
        crs = pyproj.CRS.from_json_dict(self.crs)
        drawn = drawn_wkb(*ends, lambda lon, lat: transformed(lon, lat, pyproj.CRS(WGS84), crs), crs.is_geographic)
        sink.write(table, cameras.kept.take(measured["camera_index"][table["pair"]]), *lines(drawn, row))
