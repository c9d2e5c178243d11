"""Which part of an elevation model a run needs, before any of it is read."""

from ..ground.terrain import BLOCK, Grid, load
from .relief import Relief

BLOCK_BYTES = 4 * (BLOCK + 1) ** 2
AT_PLACE_M = 1.0  # the cells about a place


class Extent:
    """Blocks of an elevation model, collected from what asks for them.

    Parameters
    ----------
    rows, cols, transform, to_map
        As in `ground.terrain.Grid`.

    Raises
    ------
    ValueError
        As from there.
    """

    def __init__(self, rows, cols, transform, to_map):
        self.grid = Grid(rows, cols, transform, to_map)
        self._blocks = self.grid.blocks_around([], [], AT_PLACE_M)

    @property
    def count(self):
        """Blocks wanted so far."""
        return int(self._blocks.sum())

    @property
    def bytes(self):
        """Memory that they would take."""
        return (self.count + 1) * BLOCK_BYTES

    @property
    def is_whole(self):
        """Whether there is nothing left to ask for."""
        return bool(self._blocks.all())

    def want_around(self, lon_deg, lat_deg, radius_m=AT_PLACE_M):
        """Ask for the ground within a radius of places, shape (N,). [deg], [m]."""
        if not self.is_whole:
            self._blocks |= self.grid.blocks_around(lon_deg, lat_deg, radius_m)

    def want_along(self, lon1_deg, lat1_deg, lon2_deg, lat2_deg):
        """Ask for the ground under lines from places to others, shape (N,). [deg]."""
        if not self.is_whole:
            self._blocks |= self.grid.blocks_along(lon1_deg, lat1_deg, lon2_deg, lat2_deg)

    def want_pairs(self, cameras, subjects, blocks, go_on=lambda: True):
        """Ask for the ground at cameras and subjects, and under the lines between pairs of them.

        Parameters
        ----------
        cameras, subjects : objects with `lon_deg`, `lat_deg`
        blocks : iterable of plan.pairs.PairBlock
        go_on : callable, optional
            False from it ends the asking.
        """
        for points in (cameras, subjects):
            self.want_around(points.lon_deg, points.lat_deg)
        for block in blocks:
            if self.is_whole or not go_on():
                break
            camera, subject = block.camera, block.subject
            self.want_along(cameras.lon_deg[camera], cameras.lat_deg[camera], subjects.lon_deg[subject], subjects.lat_deg[subject])

    def relief(self, read, progress=None, **how):
        """Read what is wanted.

        Parameters
        ----------
        read, progress
            As for `ground.terrain.load`.
        **how
            As for `Relief`.

        Returns
        -------
        Relief or None
            None when the reading was ended.
        """
        terrain = load(self.grid, self._blocks, read, progress)
        return None if terrain is None else Relief(terrain, **how)
