"""How the band of the Milky Way lies in the sky: tilt at the core, the arch and its top, its feet on the horizon.

All from the vertical and horizontal parts of three directions: g_x toward the core, g_y toward l = 90°, b = 0, g_z toward the galactic
pole. Altitudes here are geometric, as the great circle of the plane is one only without air. Any shape, kept. Angles in degrees.
"""

from dataclasses import dataclass

import numpy as np

from .horizontal import altitude_deg, azimuth_deg, in_turn_deg

ZENITH_LIMIT_DEG = 1.0  # with the core closer than this to the zenith a tilt says nothing


@dataclass(frozen=True)
class Band:
    """The band over a site; every array of one shape.

    Attributes
    ----------
    core_true_deg, core_az_deg : ndarray
        Geometric altitude and azimuth of the core. [deg]
    tilt_deg : ndarray
        Angle of the plane to the horizontal at the core, 0 flat to 90 upright; nan within 1° of zenith or nadir. [deg]
    leans_left : ndarray of bool
        Whether the band rises from the core toward lower azimuth: to the left of one who faces it.
    apex_deg, apex_az, apex_lon : ndarray
        Altitude and azimuth of the arch's top, and its galactic longitude in [0, 360). [deg]
    """

    core_true_deg: np.ndarray
    core_az_deg: np.ndarray
    tilt_deg: np.ndarray
    leans_left: np.ndarray
    apex_deg: np.ndarray
    apex_az: np.ndarray
    apex_lon: np.ndarray

    @property
    def feet_az(self):
        """Azimuths at which the plane meets the level horizon, left and right of the arch's top. [deg]."""
        return in_turn_deg(self.apex_az - 90.0), in_turn_deg(self.apex_az + 90.0)


def band(core_enu, y_enu, pole_enu):
    """The band from topocentric directions.

    Parameters
    ----------
    core_enu, y_enu, pole_enu : ndarray, shape (3, ...)
        East, north, up of g_x, g_y, g_z.

    Returns
    -------
    Band
    """
    core_alt = altitude_deg(*core_enu)
    core_az = azimuth_deg(*core_enu[:2])
    rising = np.where(y_enu[2] < 0.0, -1.0, 1.0)  # which way along the plane goes up from the core
    to_the_right = rising * (y_enu[0] * core_enu[1] - y_enu[1] * core_enu[0])
    tilt = np.degrees(np.arctan2(np.abs(y_enu[2]), np.abs(pole_enu[2])))
    pole_alt = altitude_deg(*pole_enu)
    upper = np.where(pole_enu[2] < 0.0, -1.0, 1.0)
    return Band(
        core_true_deg=core_alt,
        core_az_deg=core_az,
        tilt_deg=np.where(np.abs(core_alt) > 90.0 - ZENITH_LIMIT_DEG, np.nan, tilt),
        leans_left=to_the_right < 0.0,
        apex_deg=90.0 - np.abs(pole_alt),
        apex_az=azimuth_deg(-upper * pole_enu[0], -upper * pole_enu[1]),
        apex_lon=in_turn_deg(np.degrees(np.arctan2(y_enu[2], core_enu[2]))),
    )
