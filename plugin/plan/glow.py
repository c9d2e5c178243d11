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
BLOCK_PAIRS = 200_000  # sites x towns looked at at once: half a second of a person who waits for a cancel


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
        self._lon_deg, self._lat_deg, self._towns = lon_deg, lat_deg, towns

    def toward(self, site, az_deg, go_on=lambda: True):
        """Glow in directions, and the name of the town that gives most of it; all of shape (N,).

        Parameters
        ----------
        site : ndarray of int
        az_deg : ndarray
            nan where there is no direction. [deg]
        go_on : callable
            Asked several times a second; False from it ends the work, and what is given then is not whole.

        Returns
        -------
        glow : ndarray
            nan where there is no direction.
        town : ndarray of object
            None where no town lies that way.
        """
        glow, town = np.zeros(len(site)), np.full(len(site), None, dtype=object)
        order = np.argsort(site, kind="stable")
        sites, first, count = np.unique(site[order], return_index=True, return_counts=True)
        towns = (self._towns.lon_deg, self._towns.lat_deg)
        for block in pair_all(self._lon_deg[sites], self._lat_deg[sites], *towns, REACH_M, BLOCK_PAIRS):  # all of a site in one block
            if not go_on():
                break
            about = _About(block, self._towns)
            for some in about.in_parts(first, count):
                lines = order[some]
                glow[lines], town[lines] = about.toward(np.searchsorted(sites, site[lines]), az_deg[lines])
        return np.where(np.isfinite(az_deg), glow, np.nan), town


class _About:
    """The towns about some sites, those of a `PairBlock`, the brightest of each first."""

    def __init__(self, block, towns):
        glow = walker77(towns.population[block.subject], block.dist_m / 1000.0)
        order = np.lexsort((-glow, block.camera))
        self._glow, self._bearing_deg, self._name = glow[order], block.bearing_deg[order], towns.name[block.subject[order]]
        self._sites, self._first, self._count = np.unique(block.camera, return_index=True, return_counts=True)

    def in_parts(self, first, count):
        """Ranges of directions, those of a site from its `first` on so many, that are worked on at once; arrays by site."""
        numbers = np.concatenate([np.arange(begin, begin + many) for begin, many in zip(first[self._sites], count[self._sites])] or [[]])
        towns = np.cumsum(np.repeat(self._count, count[self._sites]))
        return np.split(numbers.astype(np.int64), np.flatnonzero(np.diff(towns // CELLS)) + 1) if numbers.size else []

    def toward(self, site, az_deg):
        """Glow in directions from sites, and the name of the brightest town there."""
        at = np.searchsorted(self._sites, site)
        count = self._count[at]
        line = np.repeat(np.arange(len(site)), count)
        pair = self._first[at][line] + np.arange(len(line)) - (np.cumsum(count) - count)[line]
        seen = np.abs(offset_deg(self._bearing_deg[pair], az_deg[line])) <= HALF_WIDTH_DEG
        line, pair = line[seen], pair[seen]
        town = np.full(len(site), None, dtype=object)
        lit, brightest = np.unique(line, return_index=True)
        town[lit] = self._name[pair[brightest]]
        return np.bincount(line, self._glow[pair], minlength=len(site)), town
