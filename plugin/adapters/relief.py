"""The ground of a run: what the elevation model says under points and between them, and what there is to say of it."""

from pathlib import Path

import numpy as np
from qgis.core import QgsApplication, QgsProcessingException

from ..plan.relief import AT_RADIUS, CUT_SHORT, RAYS
from .cautions import tell_of_terrain
from .parameters import number_of
from .progress import part_of
from .raster import Raster
from .translation import counted, tr

# argument of plan.relief.Relief -> parameter
HOW = {"radius_m": "TERRAIN_RADIUS", "skip_near_m": "SKIP_NEAR", "accuracy_m": "DEM_ACCURACY", "refraction_k": "REFRACTION_K"}
READING_SHARE = 0.1  # of a run: the rest of its progress bar belongs to the work
MEMORY_SHARE = 0.5  # of what is free
MEMORY = Path("/proc/meminfo")


class Ground:
    """The elevation model of a run, if one is given: what is wanted of it is asked for, then read at once, then used.

    Attributes
    ----------
    given : bool
        Whether there is one.
    relief : plan.relief.Relief or None
        Once it is read.

    Raises
    ------
    ValueError
        With a sentence, where no heights can be read.
    """

    def __init__(self, algorithm, parameters, context):
        self.relief, self._cells_m = None, []
        self._raster = None if algorithm.dem is None else Raster(algorithm.dem, context.transformContext())
        self.given = self._raster is not None
        self._how = {
            name: number_of(algorithm, parameters, parameter) for name, parameter in HOW.items() if algorithm.parameterDefinition(parameter)
        }

    @property
    def extent(self):
        """What is wanted of it: `plan.extent.Extent`."""
        return self._raster.extent

    @property
    def radius_m(self):
        """How far skylines are looked for. [m]."""
        return self._how["radius_m"]

    @property
    def begin(self):
        """The part of the run that reading it takes, 0 to 1."""
        return READING_SHARE if self.given else 0.0

    @property
    def stopped(self):
        """Whether there is one and it is not read: after `read`, because that was cancelled."""
        return self.given and self.relief is None

    def read(self, go_on):
        """Read what is wanted.

        Raises
        ------
        QgsProcessingException
            Where it would fill the memory.
        """
        _refuse_to_fill_memory(self._raster.name, self.extent)
        self.relief = self.extent.relief(self._raster.read, part_of(go_on, 0.0, READING_SHARE), **self._how)

    def under(self, label, lon_deg, lat_deg, feedback):
        """Heights of the ground under points, nan where it is not known, and a warning of how many those are. [m]."""
        if self.relief is None:
            return np.full(np.shape(lon_deg), np.nan)
        terrain = self.relief.terrain
        ground_m = self.relief.ground_m(lon_deg, lat_deg)
        covered = terrain.covers(*terrain.position(lon_deg, lat_deg))
        known = np.isfinite(ground_m)
        if known.any():
            self._cells_m += [cell[known] for cell in terrain.cell_m(lon_deg, lat_deg)]
        if not known.all():
            why = {tr("outside it"): int((~covered).sum()), tr("on ground of no known height"): int((covered & ~known).sum())}
            feedback.pushWarning(
                tr("{label}: the DEM tells nothing of {n:,} of {total:,} points: {why}.").format(
                    label=label, n=int((~known).sum()), total=known.size, why=counted(why)
                )
            )
        return ground_m

    def log(self, feedback):
        """Tell what was used of the elevation model, and what its answers are worth."""
        if self.relief is None:
            return
        self._log_heights(feedback)
        met = self.relief.met
        if met[AT_RADIUS]:
            feedback.pushWarning(
                tr("Skylines: {n:,} of {total:,} rays find their highest ground at TERRAIN_RADIUS ({radius:,.0f} m). Raise it.").format(
                    n=met[AT_RADIUS], total=met[RAYS], radius=self.radius_m
                )
            )
        if met[CUT_SHORT]:
            feedback.pushWarning(
                tr("Skylines: {n:,} of {total:,} rays end with the DEM, or where it has a gap, before TERRAIN_RADIUS.").format(
                    n=met[CUT_SHORT], total=met[RAYS]
                )
            )

    def _log_heights(self, feedback):
        raster = self._raster
        unit = raster.unit_told or tr("metres, as no known unit is told")
        feedback.pushInfo(
            tr("DEM '{name}': {mb:,.0f} MB of it in memory; heights in {unit}.").format(
                name=raster.name, mb=self.extent.bytes / 1e6, unit=unit
            )
        )
        raster.warn_of_impossible(feedback)
        if self._cells_m:
            cells_m = np.concatenate(self._cells_m)
            tell_of_terrain(raster.name, cells_m.min(), cells_m.max(), feedback)


def _refuse_to_fill_memory(name, extent):
    free = _free_bytes()
    if free is not None and extent.bytes > MEMORY_SHARE * free:
        raise QgsProcessingException(
            tr(
                "What is wanted of the DEM '{name}' takes {need:,.0f} MB of memory, more than half of the {free:,.0f} MB free. Take fewer "
                "points, a shorter TERRAIN_RADIUS or MAX_DISTANCE, or a DEM of larger cells."
            ).format(name=name, need=extent.bytes / 1e6, free=free / 1e6)
        )


def _free_bytes():
    """Memory that is free, or on systems that do not tell, half of what there is; None where that is not told either."""
    if MEMORY.exists():
        lines = dict(line.split(":") for line in MEMORY.read_text(encoding="ascii").splitlines() if ":" in line)
        return 1024 * int(lines["MemAvailable"].split()[0])
    if hasattr(QgsApplication, "systemMemoryMb"):  # QGIS 3.26
        return 500_000 * QgsApplication.systemMemoryMb()
    return None
