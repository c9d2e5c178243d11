"""The time zone of each site: the one named, else the zone that ships keep at its longitude."""

import numpy as np

from ..plan import clock
from .parameters import text_of
from .translation import tr


def zones_of_sites(parameters, lon_deg, feedback):
    """Names of the zones, and for each site which of them holds.

    Parameters
    ----------
    parameters : dict
        Of the algorithm; TIME_ZONE is read.
    lon_deg : ndarray (S,)

    Returns
    -------
    zone_names : list of str
    zone_index : ndarray of int (S,)
    """
    named = text_of(parameters, "TIME_ZONE")
    if named:
        return [named], np.zeros(lon_deg.size, dtype=int)
    if not lon_deg.size:
        return ["UTC"], np.zeros(0, dtype=int)
    names, index = np.unique(clock.nautical_zone(lon_deg).astype(str), return_inverse=True)
    feedback.pushInfo(
        tr(
            "TIME_ZONE is blank: local times are those of the nautical zone of each site's longitude ({zones}), without daylight saving. "
            "Name a zone to have the local clock."
        ).format(zones=", ".join(names.tolist()))
    )
    return names.tolist(), index
