"""The bodies asked for, as the pure folders take them."""

from ..plan.targets import target
from .parameters import choices_of, number_of, text_of
from .refusals import star_place


def targets_of(algorithm, parameters, context, name="BODIES"):
    """Bodies in the order of a parameter."""
    place = text_of(parameters, "STAR")
    star = star_place(place) if place else None
    galactic_lon_deg = number_of(algorithm, parameters, "GALACTIC_LON")
    return [target(body, star=star, galactic_lon_deg=galactic_lon_deg) for body in choices_of(algorithm, parameters, name, context)]
