"""Cautions that are said wherever they apply."""

from .translation import tr


def sun_line():
    """What is said wherever a person may come to look at the Sun."""
    return tr(
        "Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter "
        "(ISO 12312-2 for the eye)."
    )


def tell_of_the_sun(bodies, feedback):
    """The Sun line, where the Sun is among the bodies."""
    if "sun" in bodies:
        feedback.pushWarning(sun_line())


def terrain_line(dem, size):
    """What terrain is worth, with the size of the elevation model's cells as it is told."""
    return tr(
        "The terrain is that of '{dem}', in cells of {size} m. Elevation data have errors, and no trees or buildings: "
        "what is clear by them may be hidden. Look from the place by day."
    ).format(dem=dem, size=size)


def size_told(least_m, most_m):
    """The size of cells, in metres, as one number or two."""
    least, most = (f"{size_m:.3g}" for size_m in (least_m, most_m))
    return least if least == most else f"{least} to {most}"


def tell_of_terrain(dem, least_m, most_m, feedback):
    """What terrain is worth: the size of the elevation model's cells where it was used, and what it leaves out."""
    feedback.pushWarning(terrain_line(dem, size_told(least_m, most_m)))


def dark_line():
    """What is said of walking at night."""
    return tr(
        "Walking in the dark: cliffs, tides, water levels, weather, animals. Arrive before dark, not alone, and tell someone. The "
        "result knows nothing of footing, tide or weather."
    )


def permit_line():
    """Who decides where one may be."""
    return tr(
        "A planning aid, not a survey and not a permit: access, closures and night hours are decided by the land manager and local "
        "law. Only the closures of the layers given are known here."
    )


def tell_of_the_dark(feedback):
    """Walking at night, and who decides where one may be."""
    feedback.pushWarning(dark_line())
    feedback.pushWarning(permit_line())
