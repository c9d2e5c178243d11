"""The compasses of a run, and the warnings that belong to them."""

import numpy as np

from ..plan.compass import FIRST_YEAR, LAST_YEAR, MODEL, Compass
from .translation import tr

ZONES = {"caution": "{n:,} where it may err by degrees", "blackout": "{n:,} where it is of no use"}


def compass_of(points, first_utc_s, last_utc_s, feedback):
    """The compasses at points during a run; what there is to say of them goes to the log, each thing once.

    Parameters
    ----------
    points : Points
    first_utc_s, last_utc_s : float

    Returns
    -------
    Compass
    """
    compass = Compass(points.lon_deg, points.lat_deg, np.where(np.isfinite(points.z_m), points.z_m, 0.0), first_utc_s, last_utc_s)
    if len(points) and not compass.covered:
        feedback.pushWarning(
            tr("Magnetic bearings are null outside {first:g} to {last:g}, the years for which {model} holds.").format(
                first=FIRST_YEAR, last=LAST_YEAR, model=MODEL
            )
        )
    found = {zone: int((compass.zone == zone).sum()) for zone in ZONES}
    if compass.of_use and any(found.values()):
        feedback.pushWarning(
            tr("Near a magnetic pole a compass needle hardly turns: of {total:,} points {found}. Steer by true bearings there.").format(
                total=len(points), found=", ".join(tr(ZONES[zone]).format(n=count) for zone, count in found.items() if count)
            )
        )
    return compass
