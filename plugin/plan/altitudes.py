"""When a body stands highest within stretches of time. Times in s of TT.

Altitude rises fastest a quarter of a turn before the meridian and falls fastest a quarter after it; between the two its rate only falls,
so that it has one highest value there, or none near the poles, where a body that drifts north or south may only rise or only fall. At the
meridian itself the drift alone is left: cut there, two turning points of a circumpolar Moon would hide in one piece.
"""

import numpy as np

from ..sky.bodies import PoleDirection

CUTS = 3  # half a turn from each other, at most so many in a stretch of a day
WITHIN_S = 0.05  # in which no altitude changes by 1e-6" about its highest
STEPS = 60


def highest(body, motion, row, start, end):
    """Moments at which a body stands highest, the first if several.

    Parameters
    ----------
    body : sky body
    motion : Motion
        Of the body over R sites.
    row : ndarray of int, shape (N,)
        Site of each stretch.
    start, end : ndarray, shape (N,)
        Stretches of at most a day. [s of TT]

    Returns
    -------
    ndarray, shape (N,)
        [s of TT]
    """
    if isinstance(body, PoleDirection) or not len(row):
        return start.copy()
    lon = np.radians(motion.sites.lon_deg[row])
    first = np.ceil((motion.hour_angle(start) + lon) / np.pi - 0.5)
    cuts = motion.time_of_hour_angle((first[:, None] + 0.5 + np.arange(CUTS)) * np.pi - lon[:, None])
    edges = np.concatenate([start[:, None], np.clip(cuts, start[:, None], end[:, None]), end[:, None]], axis=1)
    rate = _rate(motion, row[:, None], edges)
    line, piece = np.nonzero((rate[:, :-1] > 0.0) & (rate[:, 1:] <= 0.0))
    tops = _root(motion, row[line], edges[line, piece], edges[line, piece + 1], rate[line, piece], rate[line, piece + 1])

    every = np.arange(len(row))
    line, t_s = np.concatenate([every, line, every]), np.concatenate([start, tops, end])
    order = np.lexsort((t_s, -_sine(motion, row[line], t_s), line))
    return t_s[order[np.searchsorted(line[order], every)]]


def _sine(motion, row, tt_s):
    """Sine of the geometric altitude."""
    vector = motion.enu(row, tt_s)
    return vector[2] / np.sqrt((vector * vector).sum(axis=0))


def _rate(motion, row, tt_s):
    """What has the sign of the altitude's rate."""
    vector, rate = motion.meridian_frame(row, tt_s, rates=True)
    sin_lat, cos_lat = motion.sites.sin_lat[row], motion.sites.cos_lat[row]
    up, d_up = (cos_lat * meridian + sin_lat * axis for meridian, _, axis in (vector, rate))
    along = sum(x * dx for x, dx in zip(vector, rate)) / sum(x * x for x in vector)
    return d_up - up * along


def _root(motion, row, low, high, at_low, at_high):
    """Where the rate passes from above 0 at `low` to 0 or less at `high`: false position, the Illinois way."""
    low, high, at_low, at_high = (values.copy() for values in (low, high, at_low, at_high))
    t_s, rose = high.copy(), np.zeros(len(high), dtype=np.int8)  # rose: 1 or -1 by the sign of the last rate
    active = np.nonzero(high - low > WITHIN_S)[0]
    for _ in range(STEPS):
        if not len(active):
            break
        now = high[active] - at_high[active] * (high[active] - low[active]) / (at_high[active] - at_low[active])
        rate = _rate(motion, row[active], now)
        side = np.where(rate > 0.0, 1, -1)
        for here, (edge, value, other) in {1: (low, at_low, at_high), -1: (high, at_high, at_low)}.items():
            moved = active[side == here]
            edge[moved], value[moved] = now[side == here], rate[side == here]
            other[moved[rose[moved] == here]] *= 0.5  # an end that stays twice would stay for long
        rose[active] = side
        settled = np.abs(now - t_s[active]) < WITHIN_S
        t_s[active] = now
        active = active[~settled]
    return t_s
