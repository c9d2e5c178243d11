"""Nights gathered by site and month: how many can be used, for how long, the best of them, and the weekends at new Moon."""

import numpy as np

from ..sky import moonlight
from ..sky.bodies import MOON, SUN
from ..sky.ephemeris import DAY_S, default_ephemeris
from ..sky.tables import tracks

SATURDAY = 2  # days since 1970-01-01, a Thursday, modulo 7
HALF_WEEK_S = 3.5 * DAY_S
SEASON_GAP_NIGHTS = 45  # so many nights without use end a season: more than the Moon takes away


def new_moons(first_utc_s, last_utc_s):
    """Moments of new Moon within half a week of a span, as far as the ephemeris reaches. [s of UTC]."""
    ephemeris = default_ephemeris()
    span = max(first_utc_s - HALF_WEEK_S, ephemeris.first_utc_s), min(last_utc_s + HALF_WEEK_S, ephemeris.last_utc_s)
    made = tracks([MOON, SUN], *span)
    return ephemeris.utc_from_tt(moonlight.new_moons(made[MOON], made[SUN], *ephemeris.tt_from_utc(span)))


def months_of(table, new_moon_utc_s):
    """A row a site and month of a table of `plan.night_windows.find_night_windows`; see `by_month`."""
    night = (table[name] for name in ("site", "night", "noon_utc_s"))
    return by_month(*night, np.nan_to_num(table["minutes"]), table["all_min"], new_moon_utc_s)


def by_month(site, night, noon_utc_s, longest_min, all_min, new_moon_utc_s):
    """A row a site and month.

    Parameters
    ----------
    site : ndarray of int, shape (N,)
        Ascending.
    night : ndarray of datetime64[D], shape (N,)
        Names of the nights, ascending within a site.
    noon_utc_s : ndarray, shape (N,)
        Noon at which each begins. [s of UTC]
    longest_min, all_min : ndarray, shape (N,)
        Its longest window, and all of them; 0 where it cannot be used. [min]
    new_moon_utc_s : ndarray, shape (K,)
        In order. [s of UTC]

    Returns
    -------
    dict of str to ndarray
        Columns of `names.MONTHS_FIELDS`, `site` as given. A season is a run of usable nights without a gap of more than 45 nights; the one
        told is that of the month's best night.
    """
    month = night.astype("datetime64[M]")
    begins = np.ones(len(site), dtype=bool)
    begins[1:] = (site[1:] != site[:-1]) | (month[1:] != month[:-1])
    of = np.cumsum(begins) - 1
    first = np.nonzero(begins)[0]
    usable = longest_min > 0.0
    best = np.lexsort((-longest_min, of))[first]  # of equals the earliest: the sort is stable
    used = usable[best]
    season_first, season_last = _seasons(site, night, usable)
    nothing = np.datetime64("NaT", "D")
    return {
        "site": site[first],
        "month": np.datetime_as_string(month[first]).astype(object),
        "nights": np.bincount(of, usable).astype(int),
        "hours": np.bincount(of, all_min) / 60.0,
        "best_night": np.where(used, night[best], nothing),
        "best_min": np.where(used, longest_min[best], np.nan),
        "first_night": np.where(used, season_first[best], nothing),
        "last_night": np.where(used, season_last[best], nothing),
        "new_moon": _new_moon_weekends(night, noon_utc_s, new_moon_utc_s, of, len(first)),
    }


def _seasons(site, night, usable):
    """First and last night of the season of each usable night; NaT for the others."""
    first, last = np.full((2, len(night)), np.datetime64("NaT", "D"))
    used = np.nonzero(usable)[0]
    if len(used):
        begins = np.ones(len(used), dtype=bool)
        gap = (night[used][1:] - night[used][:-1]).astype(int)
        begins[1:] = (site[used][1:] != site[used][:-1]) | (gap > SEASON_GAP_NIGHTS)
        ends = np.append(begins[1:], True)
        season = np.cumsum(begins) - 1
        first[used], last[used] = night[used][begins][season], night[used][ends][season]
    return first, last


def _new_moon_weekends(night, noon_utc_s, new_moon_utc_s, of, months):
    """Dates of the Saturdays closest to a new Moon, joined by commas; None in months without one."""
    texts = np.full(months, None, dtype=object)
    saturday = np.nonzero(night.astype(np.int64) % 7 == SATURDAY)[0]
    midnight = noon_utc_s[saturday] + DAY_S / 2
    around = np.concatenate([[-np.inf], new_moon_utc_s, [np.inf]])
    later = np.searchsorted(around, midnight)
    saturday = saturday[np.minimum(midnight - around[later - 1], around[later] - midnight) <= HALF_WEEK_S]
    dates = np.datetime_as_string(night[saturday]).astype(object)
    again = np.zeros(len(saturday), dtype=bool)
    again[1:] = of[saturday[1:]] == of[saturday[:-1]]
    texts[of[saturday[~again]]] = dates[~again]
    texts[of[saturday[again]]] += ", " + dates[again]
    return texts
