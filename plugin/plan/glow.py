"""Glow of towns toward a direction, by Walker's law: a rule of thumb for how much brighter than nature the sky is there, no measurement.

M. F. Walker, PASP 89, 405 (1977): the light of a town of P people at d km, halfway up the sky on the town's side, adds 0.01 P d^-2.5 of
a natural sky. The law was found for American towns of that time, from some kilometres on; lamps, shields, hills and air make it wrong by
factors.
"""

from dataclasses import dataclass

import numpy as np

from .azimuths import offset_deg
from .pairs import pair_all

REACH_M = 150_000.0
HALF_WIDTH_DEG = 20.0  # to either side of the direction
NEAREST_KM = 1.0  # the law grows beyond sense within a town: nearer ones count as that far
CELLS = 500_000  # directions x towns at once


@dataclass(frozen=True)
class Towns:
    """Places that glow; arrays of shape (T,).

    Attributes
    ----------
    lon_deg, lat_deg : ndarray
        [deg]
    population : ndarray
        Not negative.
    name : ndarray of object
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    population: np.ndarray
    name: np.ndarray


def walker77(population, dist_km):
    """Glow of a town, as a part of a natural sky; see the module. Arrays of any shape."""
    return 0.01 * population * np.maximum(dist_km, NEAREST_KM) ** -2.5


class Glow:
    """The towns about S sites.

    Parameters
    ----------
    lon_deg, lat_deg : ndarray, shape (S,)
        Sites. [deg]
    towns : Towns
        One that stands on a site glows in no direction there.
    """

    def __init__(self, lon_deg, lat_deg, towns):
        blocks = list(pair_all(lon_deg, lat_deg, towns.lon_deg, towns.lat_deg, REACH_M))
        site, town, dist_m, bearing_deg = (
            np.concatenate([getattr(block, name) for block in blocks]) for name in ("camera", "subject", "dist_m", "bearing_deg")
        )
        glow = walker77(towns.population[town], dist_m / 1000.0)
        order = np.lexsort((-glow, site))  # the first that is met is the brightest
        self._glow, self._bearing_deg, self._name = glow[order], bearing_deg[order], towns.name[town[order]]
        self._count = np.bincount(site, minlength=len(lon_deg))
        self._first = np.cumsum(self._count) - self._count

    def toward(self, site, az_deg):
        """Glow in directions, and the name of the town that gives most of it; all of shape (N,).

        Parameters
        ----------
        site : ndarray of int
        az_deg : ndarray
            nan where there is no direction. [deg]

        Returns
        -------
        glow : ndarray
            nan where there is no direction.
        town : ndarray of object
            None where no town lies that way.
        """
        glow, town = np.zeros(len(site)), np.full(len(site), None, dtype=object)
        total = np.cumsum(self._count[site])
        begin = 0
        while begin < len(site):
            before = total[begin] - self._count[site[begin]]
            end = max(int(np.searchsorted(total, before + CELLS, side="right")), begin + 1)
            glow[begin:end], town[begin:end] = self._some(site[begin:end], az_deg[begin:end])
            begin = end
        return np.where(np.isfinite(az_deg), glow, np.nan), town

    def _some(self, site, az_deg):
        count = self._count[site]
        line = np.repeat(np.arange(len(site)), count)
        pair = self._first[site][line] + np.arange(len(line)) - (np.cumsum(count) - count)[line]
        seen = np.abs(offset_deg(self._bearing_deg[pair], az_deg[line])) <= HALF_WIDTH_DEG
        line, pair = line[seen], pair[seen]
        town = np.full(len(site), None, dtype=object)
        lit, brightest = np.unique(line, return_index=True)
        town[lit] = self._name[pair[brightest]]
        return np.bincount(line, self._glow[pair], minlength=len(site)), town
