"""Numbers of a raster as heights of the ground: in metres, and nan where they tell none."""

import numpy as np

FOOT_M, SURVEY_FOOT_M = 0.3048, 1200.0 / 3937.0
# what bands call their unit, in lower case
UNITS_M = {
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1.0),
    **dict.fromkeys(("ft", "foot", "feet", "international foot"), FOOT_M),
    **dict.fromkeys(("us-ft", "ftus", "us survey foot", "us survey feet", "foot_us"), SURVEY_FOOT_M),
    "cm": 0.01,
    "dm": 0.1,
}
# No ground lies lower or higher; files that do not declare what stands for no height mostly write -9999, or a number beyond these.
LOWEST_M, HIGHEST_M, UNDECLARED = -12_000.0, 9_000.0, -9999.0


def no_ground_has(heights):
    """Tell which heights [m], an array of any shape, no ground has: mostly numbers that stand for none; nan is not among them."""
    return (heights == UNDECLARED) | (heights < LOWEST_M) | (heights > HIGHEST_M)


def heights_m(numbers, scale=None, offset=None, no_data=(), unit_m=1.0):
    """Heights that numbers of a raster stand for.

    Parameters
    ----------
    numbers : ndarray of float, shape (rows, cols)
        nan where the file itself tells none.
    scale, offset : float, optional
        What the numbers are multiplied by, and what is added then.
    no_data : iterable of (float, float)
        Ranges of values, ends included, that stand for no height.
    unit_m : float
        Length of the unit of the values. [m]

    Returns
    -------
    heights : ndarray, shape (rows, cols)
        nan where not known. [m]
    impossible : int
        How many of them no ground has: those are nan too.
    """
    heights = numbers * (1.0 if scale is None else scale) + (offset or 0.0)
    for low, high in no_data:
        heights[(heights >= low) & (heights <= high)] = np.nan
    heights *= unit_m
    impossible = (numbers == UNDECLARED) | no_ground_has(heights)
    heights[impossible] = np.nan
    return heights, int(impossible.sum())
