"""Where a function of the way along a line passes 0, found for many lines at once."""

import numpy as np

ROOT_M = 1e-7  # last step along the line; what remains is less
ROOT_STEPS = 60


def roots(value, low, high, value_low, value_high, length_m):
    """Where functions that change sign between two places along pieces are 0.

    Parameters
    ----------
    value : callable
        `value(rows, u)`, the function of some rows at places.
    low, high, value_low, value_high : ndarray, shape (K,)
        Places and what the function is there.
    length_m : ndarray, shape (K,)
        Of the pieces. [m]

    Returns
    -------
    ndarray, shape (K,)

    Notes
    -----
    False position after N. Anderson and A. Björck, BIT 13, 253 (1973), with a halving where it does not shrink the bracket.
    """
    low, high, at_low, at_high = (np.array(values, dtype=float) for values in (low, high, value_low, value_high))
    u = np.where(at_low == 0.0, low, high)
    rows = np.flatnonzero((at_low != 0.0) & (at_high != 0.0))
    for step in range(ROOT_STEPS):
        if not rows.size:
            break
        a, b, f_a, f_b = low[rows], high[rows], at_low[rows], at_high[rows]
        with np.errstate(divide="ignore", invalid="ignore"):
            new = b - f_b * (b - a) / (f_b - f_a)
        halve = ~((new > np.minimum(a, b)) & (new < np.maximum(a, b))) | (step % 8 == 7)
        new = np.where(halve, 0.5 * (a + b), new)
        f = value(rows, new)
        crosses = (f >= 0.0) != (f_b >= 0.0)
        with np.errstate(divide="ignore", invalid="ignore"):
            shrink = 1.0 - f / f_b
        shrink = np.where(shrink > 0.0, shrink, 0.5)
        # b is the newest place; a the other end of the bracket, whose value is shrunk where it stays for a second time.
        low[rows], at_low[rows] = np.where(crosses, b, a), np.where(crosses, f_b, f_a * shrink)
        moved_m = np.abs(new - u[rows]) * length_m[rows]
        high[rows], at_high[rows], u[rows] = new, f, new
        rows = rows[~((moved_m < ROOT_M) | (f == 0.0) | (np.abs(low[rows] - new) * length_m[rows] < ROOT_M))]
    return u
