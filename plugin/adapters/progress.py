"""The bar that a person watches, and the cancel button beside it."""


def reporter(feedback, first=0.0, last=1.0):
    """A function that takes how much of a part of the run is done, 0 to 1, and answers whether to go on.

    Parameters
    ----------
    first, last : float
        Which part of the whole run it is, 0 to 1.
    """

    def go_on(fraction=0.0):
        feedback.setProgress(100.0 * (first + (last - first) * fraction))
        return not feedback.isCanceled()

    return go_on


def part_of(go_on, first, last):
    """The same for a part of that part."""
    return lambda fraction: go_on(first + (last - first) * fraction)
