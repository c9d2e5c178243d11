"""The bodies and conditions asked for, as the pure folders take them."""

from ..plan.conditions import Conditions
from ..plan.targets import target
from .parameters import choice_of, choices_of, number_of, text_of, yes_of
from .refusals import star_place


def targets_of(algorithm, parameters, context, name="BODIES"):
    """Bodies in the order of a parameter."""
    return [target_of(algorithm, parameters, body) for body in choices_of(algorithm, parameters, name, context)]


def target_of(algorithm, parameters, body):
    """A body by its id; ValueError with a sentence where there is none, or its place is wanting."""
    place = text_of(parameters, "STAR")
    star = star_place(place) if place else None
    return target(body, star=star, galactic_lon_deg=number_of(algorithm, parameters, "GALACTIC_LON"))


# attribute of plan.conditions.Conditions -> parameter
ASKED = {
    "az_tolerance_deg": "AZ_TOLERANCE",
    **{f"{name}_{end}_deg": f"{name}_{end}".upper() for name in ("alt", "gap", "tilt", "apex") for end in ("min", "max")},
    "core_alt_min_deg": "CORE_ALT_MIN",
    "sun_limit_deg": "SUN_LIMIT",
    "sun_min_deg": "SUN_MIN",
    "moon_lit_max": "MOON_LIT_MAX",
    "lit_min": "LIT_MIN",
    "lit_max": "LIT_MAX",
    "pressure_hPa": "PRESSURE",
    "temperature_C": "TEMPERATURE",
}


def conditions_of(algorithm, parameters, context):
    """What is asked, blanks left to the customs of each body."""
    numbers = {condition: number_of(algorithm, parameters, name) for condition, name in ASKED.items()}
    moon, use_skyline = choice_of(algorithm, parameters, "MOON", context), yes_of(algorithm, parameters, "USE_SKYLINE", context)
    return Conditions(moon=moon, use_skyline=use_skyline, **numbers)
