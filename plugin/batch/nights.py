"""Night windows of a block of sites: the rows that `night_windows` writes."""

from dataclasses import dataclass
from functools import partial
from typing import Optional

import numpy as np
import pyarrow as pa

from ..names import MONTHS_FIELDS, NIGHT_WINDOWS_FIELDS, WINDOWS_FIELDS
from ..plan.conditions import Conditions
from ..plan.glow import Towns
from ..plan.months import months_of
from ..plan.night_windows import Places, find_night_windows, known_height_m
from ..plan.targets import Target
from .partitions import Partition, path_of, points
from .terrain import Dem, Ground, fill_over

FIELDS = {"nights": NIGHT_WINDOWS_FIELDS, "windows": WINDOWS_FIELDS, "months": MONTHS_FIELDS}


@dataclass(frozen=True)
class Nights:
    """What is asked of every block.

    Attributes
    ----------
    outputs : tuple of str
        Of the keys of `FIELDS`, `nights` first.
    new_moon_utc_s : ndarray or None
        None where months are not asked for.
    crs : dict
        That the places are written in, as PROJJSON.
    kept : pyarrow.Schema
    """

    ending, counted = ".parquet", "rows"
    outputs: tuple
    target: Target
    conditions: Conditions
    towns: Optional[Towns]
    new_moon_utc_s: Optional[np.ndarray]
    dem: Optional[Dem]
    crs: dict
    kept: pa.Schema

    def sinks(self, folder, number):
        """Partitions to be filled, by the name of their output."""
        return {name: Partition(path_of(folder, name, number), FIELDS[name], "Point", self.kept, self.crs) for name in self.outputs}

    @staticmethod
    def told(block):
        """Which block it is, in words."""
        return f"{len(block.points):,} sites, from '{block.points.name[0]}'" if len(block.points) else "no sites"

    def fill(self, block, sinks):
        """Write the rows of a block into partitions by the name of their output."""
        if self.dem is None:
            self._fill(sinks, block)
        else:
            fill_over(self._ground, block, partial(self._fill, sinks))

    def _fill(self, sinks, block, relief=None):
        sites = block.points
        lens_dem_m = np.full(len(sites), np.nan)
        if relief is not None:
            lens_dem_m = relief.ground_m(sites.lon_deg, sites.lat_deg) + sites.measures["CAMERA_HEIGHT"]
        heights_m = known_height_m(lens_dem_m, sites.z_m)
        places = Places(sites.lon_deg, sites.lat_deg, heights_m, block.zone_names, block.zone_index, lens_dem_m)
        asked = (places, self.target, block.first_night, block.last_night, self.conditions)
        for found in find_night_windows(*asked, relief=relief, towns=self.towns, threads=1):  # the other cores have workers of their own
            tables = dict(zip(("nights", "windows"), found))
            if "months" in sinks:
                tables["months"] = months_of(tables["nights"], self.new_moon_utc_s)
            for name in self.outputs:
                _write(sinks[name], tables[name], sites)

    def _ground(self, block):
        ground = Ground(self.dem)
        ground.extent.want_around(block.points.lon_deg, block.points.lat_deg, self.dem.radius_m)
        return ground


def _write(sink, table, sites):
    at = table["site"]
    named = {**table, "site": sites.name[at], "site_id": sites.fid[at]}
    sink.write(named, sites.kept.take(at), *points(sites.x[at], sites.y[at]))
