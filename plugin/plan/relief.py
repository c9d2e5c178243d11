"""The ground as a plan takes it: heights under points, and what stands in the way.

One `Relief` serves a run. It counts what its rays met, so that the run can say what its answers are worth.
"""

from collections import Counter
from dataclasses import dataclass, field
from typing import Optional

import numpy as np

from ..ground import sight, skyline
from ..ground.curvature import REFRACTION_K
from ..ground.terrain import Terrain

FARTHEST_M = 300_000.0  # of ground looked for: on a longer way a parabola is no geodesic, 0.03° off at 500 km and 5° at 10 000
RAYS, AT_RADIUS, CUT_SHORT = "rays", "at_radius", "cut_short"  # what is counted


@dataclass(frozen=True)
class Relief:
    """A terrain and how to look over it.

    Attributes
    ----------
    terrain : Terrain
    radius_m : float
        How far a skyline is looked for. [m]
    skip_near_m : float, optional
        Ground nearer to the lens than this is passed over; two cells if None. [m]
    accuracy_m : float
        Of the terrain's heights. [m]
    refraction_k : float
        Coefficient of terrestrial refraction.
    met : Counter
        Rays of skylines so far; those whose skyline stands at the radius, and those that left the known heights before it.
    """

    terrain: Terrain
    radius_m: float = 40_000.0
    skip_near_m: Optional[float] = None
    accuracy_m: float = 2.0
    refraction_k: float = REFRACTION_K
    met: Counter = field(default_factory=Counter)

    def ground_m(self, lon_deg, lat_deg):
        """Height of the ground at places, nan where it is not known. [m]."""
        return self.terrain.height_m(lon_deg, lat_deg)

    def lines_of_sight(self, lon1_deg, lat1_deg, lens_m, lon2_deg, lat2_deg, base_m, top_m, progress=None):
        """Lines of sight from lenses to subjects, shape (P,), as `sight.lines_of_sight`."""
        ends = (lon1_deg, lat1_deg, lens_m, lon2_deg, lat2_deg, base_m, top_m)
        return sight.lines_of_sight(self.terrain, *ends, self.skip_near_m, self.accuracy_m, self.refraction_k, progress)

    def skyline(self, lon_deg, lat_deg, lens_m, az_deg, progress=None):
        """Skyline seen from lenses, as `skyline.skyline`; arguments broadcast."""
        seen = skyline.skyline(
            self.terrain, lon_deg, lat_deg, lens_m, az_deg, self.radius_m, self.skip_near_m, self.refraction_k, progress=progress
        )
        if seen is not None:
            self.met[RAYS] += seen.reach_m.size
            self.met[AT_RADIUS] += int(np.count_nonzero(seen.at_radius))
            self.met[CUT_SHORT] += int(np.count_nonzero(~(seen.reach_m >= self.radius_m)))
        return seen
