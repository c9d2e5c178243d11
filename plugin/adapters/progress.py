"""The bar that a person watches, and the cancel button beside it."""


def reporter(feedback):
    """A function that takes how much is done, 0 to 1 (nothing where that is not known), and answers whether to go on."""

    def go_on(fraction=None):
        if fraction is not None:
            feedback.setProgress(100.0 * fraction)
        return not feedback.isCanceled()

    return go_on


def part_of(go_on, first, last):
    """The same for a part of the work that begins and ends at these fractions of the whole."""
    return lambda fraction: go_on(first + (last - first) * fraction)
