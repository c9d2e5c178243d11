"""Cautions that are said wherever they apply."""

from .translation import tr


def tell_of_the_sun(bodies, feedback):
    """The Sun line, where the Sun is among the bodies."""
    if "sun" in bodies:
        feedback.pushWarning(
            tr(
                "Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter "
                "(ISO 12312-2 for the eye)."
            )
        )
