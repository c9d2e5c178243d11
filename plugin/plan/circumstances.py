"""What a table tells of a moment: where the body stands, how dark it is, where the Moon is, how the band lies.

From topocentric vectors (east, north, up on axis 0, any further shape) to columns, keyed by the names of `names.FIELDS`. Angles in degrees;
nan and None where a value has no meaning.
"""

import numpy as np

from ..sky import galactic, moonlight, refraction
from ..sky.bodies import CORE, GALACTIC_POLE, GALACTIC_Y, MOON, SUN, Body
from ..sky.horizontal import altitude_deg, azimuth_deg

OF_BAND = (CORE, GALACTIC_Y, GALACTIC_POLE)  # bodies whose vectors tell how the band lies
NEEDED = (SUN, MOON, *OF_BAND)  # bodies whose vectors the columns are made from
SKY_LIMITS_DEG = (-18.0, -12.0, -6.0, -0.8333)  # the Sun's centre, geometric: almanacs' twilights, and the upper limb in refraction
MOONRISE_ALT_DEG = -34.0 / 60.0  # upper limb, level horizon: the almanacs' refraction
DARK_ENOUGH_SUN_DEG = -12.0  # with the Sun higher the sky is not the dark one on which moonlight is reckoned
SKY_STAGES = np.array(["night", "astronomical", "nautical", "civil", "day"], dtype=object)


class Air:
    """The air over sites, for refraction.

    Parameters
    ----------
    height_m : ndarray
        Of the sites. [m]
    pressure_hPa : float, optional
        The same at all sites; standard air at each site's height if left out, no refraction if 0. [hPa]
    temperature_C : float
        [degree Celsius]
    """

    def __init__(self, height_m, pressure_hPa=None, temperature_C=refraction.STANDARD_TEMPERATURE_C):
        if pressure_hPa is None:
            self.pressure_hPa = refraction.standard_pressure(height_m)
        else:
            self.pressure_hPa = np.full(np.shape(height_m), float(pressure_hPa))
        self.temperature_C = temperature_C

    def take(self, index):
        """The air at an index array, mask or broadcasting slice."""
        air = object.__new__(Air)
        air.pressure_hPa, air.temperature_C = self.pressure_hPa[index], self.temperature_C
        return air

    def apparent(self, alt_true_deg):
        """Altitudes as seen. [deg]."""
        return refraction.apparent_altitude(alt_true_deg, self.pressure_hPa, self.temperature_C)

    def true(self, alt_apparent_deg):
        """Geometric altitudes of what is seen at altitudes, kept within ±90. [deg]."""
        return np.clip(
            refraction.true_altitude_of_apparent(np.clip(alt_apparent_deg, -90.0, 90.0), self.pressure_hPa, self.temperature_C), -90, 90
        )


def light_and_band(vectors, lit, air):
    """Columns that depend on place and time alone.

    Parameters
    ----------
    vectors : dict of body to ndarray, shape (3, ...)
        For each of `NEEDED`.
    lit : ndarray
        Lit fraction of the Moon, broadcast with the vectors.
    air : Air
        Broadcast likewise.

    Returns
    -------
    columns : dict of str to ndarray
        `sun_deg sky moon_deg moon_az moon_lit core_alt tilt_deg lean apex_deg apex_az apex_lon`.
    """
    sun_deg = altitude_deg(*vectors[SUN])
    return {
        "sun_deg": sun_deg,
        "sky": SKY_STAGES[np.searchsorted(SKY_LIMITS_DEG, sun_deg, side="left")],
        "moon_deg": altitude_deg(*vectors[MOON]),
        "moon_az": azimuth_deg(*vectors[MOON][:2]),
        "moon_lit": np.broadcast_to(lit, sun_deg.shape),
        **band_of(vectors, air),
    }


def band_of(vectors, air):
    """Columns of the band alone, `core_alt tilt_deg lean apex_deg apex_az apex_lon`, from the vectors of `OF_BAND`."""
    band = galactic.band(vectors[CORE], vectors[GALACTIC_Y], vectors[GALACTIC_POLE])
    core_alt = air.apparent(band.core_true_deg)
    tilted = (core_alt >= 0.0) & np.isfinite(band.tilt_deg)
    return {
        "core_alt": core_alt,
        "tilt_deg": np.where(tilted, band.tilt_deg, np.nan),
        "lean": np.where(tilted, np.where(band.leans_left, "left", "right").astype(object), None),
        "apex_deg": band.apex_deg,
        "apex_az": band.apex_az,
        "apex_lon": band.apex_lon,
    }


def place_of(target, vectors, columns, air):
    """Columns of one target.

    Parameters
    ----------
    target : Target
    vectors : dict of body to ndarray, shape (3, ...)
        With the target's body, and the Moon.
    columns : dict of str to ndarray
        From `light_and_band`.
    air : Air

    Returns
    -------
    columns : dict of str to ndarray
        `az_deg alt_deg semi_deg moon_sep`.
    """
    az_deg, alt_true_deg = direction_of(target, vectors, columns)
    if target.is_arch:
        az, alt = np.radians(az_deg), np.radians(alt_true_deg)
        vector = np.stack([np.sin(az) * np.cos(alt), np.cos(az) * np.cos(alt), np.sin(alt)])
    else:
        vector = vectors[target.body]
    has_disc = isinstance(target.body, Body)
    return {
        "az_deg": az_deg,
        "alt_deg": air.apparent(alt_true_deg),
        "semi_deg": moonlight.semidiameter_deg(vector, target.body.radius_km) if has_disc else np.full(az_deg.shape, np.nan),
        "moon_sep": moonlight.separation_deg(vector, vectors[MOON]),
    }


def direction_of(target, vectors, columns):
    """Azimuth and geometric altitude of a target, `columns` those of `band_of`. [deg]."""
    if target.is_arch:
        return columns["apex_az"], columns["apex_deg"]
    vector = vectors[target.body]
    return azimuth_deg(*vector[:2]), altitude_deg(*vector)


def moonlight_of(target, columns, moon_semi_deg):
    """Columns about the Moon's light on one target.

    Parameters
    ----------
    target : Target
    columns : dict of str to ndarray
        From `light_and_band` and `place_of`.
    moon_semi_deg : ndarray
        The Moon's semidiameter. [deg]

    Returns
    -------
    columns : dict of str to ndarray
        `moon_up`, whether its upper limb is above the horizon, and `moon_mag`: 0 with the Moon down; nan for Sun and Moon themselves, for
        what is down or behind the Moon's disc, and with the Sun above -12°.
    """
    moon_up = columns["moon_deg"] + moon_semi_deg > MOONRISE_ALT_DEG
    known = (columns["alt_deg"] >= 0.0) & (columns["moon_sep"] > moon_semi_deg) & (columns["sun_deg"] <= DARK_ENOUGH_SUN_DEG)
    if isinstance(target.body, Body):
        known = np.zeros_like(known)
    sep_deg = np.maximum(columns["moon_sep"], moon_semi_deg)
    added_mag = moonlight.brightening_mag(columns["moon_lit"], sep_deg, columns["moon_deg"], columns["alt_deg"])
    return {"moon_up": moon_up, "moon_mag": np.where(known, np.where(moon_up, added_mag, 0.0), np.nan)}
