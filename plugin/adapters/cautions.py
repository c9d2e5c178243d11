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


def tell_of_terrain(dem, least_m, most_m, feedback):
    """What terrain is worth: the size of the elevation model's cells where it was used, and what it leaves out."""
    least, most = (f"{size_m:.3g}" for size_m in (least_m, most_m))
    feedback.pushWarning(
        tr(
            "The terrain is that of '{dem}', in cells of {size} m. Elevation data have errors, and no trees or buildings: "
            "what is clear by them may be hidden. Look from the place by day."
        ).format(dem=dem, size=least if least == most else f"{least} to {most}")
    )
