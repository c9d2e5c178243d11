"""What can be asked on the command line: the parameters of the algorithms, written as options, FIRST_NIGHT as --first-night."""

import argparse
import math
import re

import numpy as np

from ..names import BODIES, MOON_RULES, PAIRINGS
from ..plan import clock
from ..plan.relief import FARTHEST_M
from .points import FIELD_PREFIX

RUN = ("output", "scheduler", "workers", "tries", "command")  # what changes nothing of the rows
OVERVIEW = """\
Night windows and alignments of layers, and sky exposure of terrain, that are too large for one desk: without QGIS, in partitions, on the
cores of this machine or on a Dask cluster. Each partition is a file that is there whole or not at all. When a run was ended, give the same
command again: it goes on with the partitions that are missing. Options are the parameters of the Processing algorithms, and mean the same.
"""
LAYER = "GeoParquet file or folder of such, GeoPackage, or another file that OGR reads; FILE|layername=NAME for one layer of several"
PLANNING_AID = "A planning aid, not a survey and not a permit."


def parser():
    """The parser of the command."""
    made = argparse.ArgumentParser(prog="python3 -m skyalidade.batch", description=OVERVIEW, epilog=PLANNING_AID)
    commands = made.add_subparsers(dest="command", required=True, metavar="nights | alignments | exposure")
    for fill, name, inputs, about in (
        (_nights, "nights", "--sites LAYER", "Night windows of sites, as the algorithm night_windows gives them."),
        (_alignments, "alignments", "--cameras LAYER --subjects LAYER", "When bodies stand over subjects, as alignments gives it."),
        (_exposure, "exposure", "--dem RASTER", "Usable minutes a night from each cell of an elevation model, as sky_exposure gives them."),
    ):
        usage = f"{made.prog} {name} {inputs} --output FOLDER [options]"
        fill(commands.add_parser(name, usage=usage, help=about, description=about, epilog=PLANNING_AID))
    return made


def _nights(command):
    options = command.add_argument_group("what is looked at, and what comes out")
    options.add_argument("--sites", required=True, metavar="LAYER", help="the points under the sky: " + LAYER)
    options.add_argument("--site-name", metavar="FIELD", help="field with the name of a site")
    options.add_argument("--windows", action="store_true", help="write every window too, beside the longest of each night")
    options.add_argument("--months", action="store_true", help="write a row a site and month too")
    options.add_argument("--towns", metavar="LAYER", help="towns whose glow is reckoned")
    options.add_argument("--town-population", metavar="FIELD", help="field with the number of people of a town")
    options.add_argument("--town-name", metavar="FIELD", help="field with the name of a town")
    _body(command.add_argument_group("body and nights"), 365)
    _conditions(command.add_argument_group("conditions"), "down")
    _ground(command.add_argument_group("ground"))
    _run(command.add_argument_group("run"), "sites")


def _alignments(command):
    options = command.add_argument_group("who looks at what, and what comes out")
    options.add_argument("--cameras", required=True, metavar="LAYER", help="the points to photograph from: " + LAYER)
    options.add_argument("--subjects", required=True, metavar="LAYER", help="the points to photograph")
    options.add_argument("--camera-name", metavar="FIELD", help="field with the name of a camera")
    options.add_argument("--subject-name", metavar="FIELD", help="field with the name of a subject")
    options.add_argument("--unmet", action="store_true", help="write a row a pair and body without an alignment too, with the reason")
    options.add_argument("--pairing", choices=PAIRINGS, default="all", help="which camera looks at which subject (default: %(default)s)")
    options.add_argument("--pair-field", metavar="FIELD", help="field of the cameras that pairs them (by_field)")
    options.add_argument("--pair-field-subject", metavar="FIELD", help="the same of the subjects; blank: of the same name")
    _number(options, "--max-distance", 50_000.0, "longest sightline [m]", low=0.0)
    _measure(options, "--subject-height", 0.0, "height of the subject's top above its foot [m]")
    _measure(options, "--subject-base", 0.0, "height of the subject's foot above the ground [m]")
    _measure(options, "--subject-width", 0.0, "width of the subject [m]")
    _measure(options, "--face-from", None, "the subject is usable from this bearing, camera to subject, clockwise ... [deg]", -360.0, 360.0)
    _measure(options, "--face-to", None, "... to this bearing [deg]", -360.0, 360.0)
    options = command.add_argument_group("bodies and nights")
    options.add_argument("--bodies", type=_bodies, default=["core"], metavar="ID,ID", help=f"one or several of {', '.join(BODIES)}")
    _places_of_bodies(options)
    _span(options, 30)
    options = command.add_argument_group("conditions")
    _number(
        options,
        "--az-tolerance",
        None,
        "the body is over the subject within this angle to either side [deg]; blank: by the body",
        0.0,
        90.0,
    )
    _number(options, "--alt-max", None, "body at most this high [deg]", -90.0, 90.0)
    _number(options, "--gap-min", None, "body at least this far above the subject's top [deg]", -180.0, 180.0)
    _number(options, "--gap-max", None, "body at most this far above the subject's top [deg]", -180.0, 180.0)
    _number(options, "--sun-min", None, "Sun at least this high, for dusk and dawn [deg]", -90.0, 90.0)
    _number(options, "--lit-min", None, "for the Moon: at least this part lit", 0.0, 1.0)
    _number(options, "--lit-max", None, "for the Moon: at most this part lit", 0.0, 1.0)
    _conditions(options, "any")
    options = command.add_argument_group("ground")
    _ground(options)
    _number(options, "--dem-accuracy", 2.0, "error of the elevation model's heights [m]", low=0.0)
    _run(command.add_argument_group("run"), "cameras")


def _exposure(command):
    options = command.add_argument_group("what is looked at, and what comes out")
    options.add_argument("--dem", required=True, metavar="RASTER", help="elevation model; all workers must see it under this name")
    options.add_argument("--dem-band", type=int, default=1, metavar="N", help="its band (default: %(default)s)")
    about = "in the model's CRS: for which it is told; blank: the whole model"
    options.add_argument("--area", type=_extent, metavar="XMIN,XMAX,YMIN,YMAX", help=about)
    options.add_argument("--per-month", action="store_true", help="a band for each month")
    _body(command.add_argument_group("body and nights"), 365)
    _conditions(command.add_argument_group("conditions"), "down")
    options = command.add_argument_group("ground")
    _number(options, "--camera-height", 1.5, "height of the lens above the ground [m]", low=0.0)
    about = "positions of the body closer together than this are taken as one [deg]; blank: 1, for Sun and Moon 2"
    _number(options, "--sky-step", None, about, 0.0, 15.0)
    _looking(options)
    _workers(command.add_argument_group("run"))


def _body(options, count):
    options.add_argument("--body", choices=BODIES, default="core", help="body of the sky (default: %(default)s)")
    _places_of_bodies(options)
    _span(options, count)


def _places_of_bodies(options):
    options.add_argument("--star", type=_star, metavar="RA,DEC", help="place of the star, ICRS [deg]")
    _number(options, "--galactic-lon", None, "galactic longitude of the place on the Milky Way's plane [deg]", -360.0, 360.0)


def _span(options, count):
    options.add_argument("--first-night", type=_date, metavar="DATE", help="first night, the date of its evening; blank: today")
    options.add_argument("--last-night", type=_date, metavar="DATE", help=f"last night; blank: {count} nights in all")
    options.add_argument("--time-zone", type=_zone, metavar="ZONE", help="such as Europe/Lisbon; blank: the zone of each place")


def _conditions(options, moon):
    _number(options, "--alt-min", None, "body at least this high [deg]; blank: 10 for core and galactic, else 0", -90.0, 90.0)
    for name, what in (("tilt", "Milky Way tilted"), ("apex", "top of the Milky Way's arch")):
        _number(options, f"--{name}-min", None, f"{what} at least this much [deg]", 0.0, 90.0)
        _number(options, f"--{name}-max", None, f"{what} at most this much [deg]", 0.0, 90.0)
    _number(options, "--core-alt-min", 0.0, "for the arch: the core at least this high [deg]", -90.0, 90.0)
    options.add_argument("--moon", choices=MOON_RULES, default=moon, help="what the Moon may do (default: %(default)s)")
    _number(options, "--moon-lit-max", 0.25, "the Moon is thin while less than this part is lit", 0.0, 1.0)
    _number(options, "--sun-limit", None, "Sun at most this high [deg]; blank: -18, for Sun and Moon no limit", -90.0, 90.0)
    _number(options, "--pressure", None, "air pressure [hPa]; blank: standard air at the site's height; 0: no refraction", 0.0, 1200.0)
    _number(options, "--temperature", 10.0, "air temperature [deg C]", -100.0, 70.0)


def _ground(options):
    _measure(options, "--camera-height", 1.5, "height of the lens above the ground [m]")
    options.add_argument("--dem", metavar="RASTER", help="elevation model; blank: ground is not looked at")
    options.add_argument("--dem-band", type=int, default=1, metavar="N", help="its band (default: %(default)s)")
    yes_or_no = argparse.BooleanOptionalAction
    options.add_argument("--use-skyline", action=yes_or_no, default=True, help="the body must stand above the terrain skyline")
    _looking(options)


def _looking(options):
    _number(options, "--terrain-radius", 40_000.0, "look for the terrain skyline as far as [m]", low=0.0, high=FARTHEST_M)
    _number(options, "--skip-near", None, "pass over terrain nearer than [m]; blank: two cells", low=0.0)
    _number(options, "--refraction-k", 0.13, "how much of the Earth's curvature the air undoes", -1.0, 1.0)


def _run(options, points):
    options.add_argument("--keep-fields", type=_fields, default=[], metavar="FIELD;FIELD", help="fields to carry along")
    options.add_argument("--block", type=_count, metavar="N", help=f"{points} in a partition; blank: for some 200 000 rows")
    _workers(options)


def _workers(options):
    options.add_argument("--output", required=True, metavar="FOLDER", help="for the partitions; all workers must see it under this name")
    options.add_argument("--scheduler", metavar="ADDRESS", help="of a Dask scheduler, or its scheduler file; blank: this machine's cores")
    options.add_argument("--workers", type=_count, metavar="N", help="of this machine; blank: one a core")
    options.add_argument("--tries", type=_count, default=3, metavar="N", help="of a partition that fails (default: %(default)s)")


def _number(options, name, default, about, low=-math.inf, high=math.inf):
    told = "" if default is None else f" (default: {default:g})"
    options.add_argument(name, type=_between(low, high), default=default, metavar="X", help=about + told)


def _measure(options, name, default, about, low=0.0, high=math.inf):
    told = "" if default is None else f" (default: {default:g})"
    about = f"{about}, or {FIELD_PREFIX}NAME to take it from a field{told}"
    options.add_argument(name, type=_measured(low, high), default=default, metavar="X", help=about)


# how texts are read; argparse shows the sentence of an ArgumentTypeError


def _between(low, high):
    def read(text):
        try:
            number = float(text)
        except ValueError:
            number = math.nan
        if not (math.isfinite(number) and low <= number <= high):
            bounds = f" from {low:g} to {high:g}" if math.isfinite(high) else f" of at least {low:g}" if math.isfinite(low) else ""
            raise argparse.ArgumentTypeError(f"'{text}' is not a number{bounds}")
        return number

    return read


def _measured(low, high):
    def read(text):
        if text.startswith("expression:"):
            raise argparse.ArgumentTypeError(f"expressions need QGIS. Write a field with the number and give {FIELD_PREFIX}NAME")
        return text if text.startswith(FIELD_PREFIX) else _between(low, high)(text)

    return read


def _count(text):
    if not (text.isdecimal() and int(text) > 0):
        raise argparse.ArgumentTypeError(f"'{text}' is not a whole number of 1 or more")
    return int(text)


def _date(text):
    try:
        if not re.fullmatch(r"\d{4}-\d\d-\d\d", text):
            raise ValueError(text)
        return str(np.datetime64(text, "D"))
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is no date. Write it as 2027-06-06") from None


def _zone(text):
    try:
        clock.zone(text)
    except ValueError as unknown:
        raise argparse.ArgumentTypeError(str(unknown)) from unknown
    return text


def _star(text):
    try:
        ra_deg, dec_deg = (float(number) for number in text.split(","))
        if not (0.0 <= ra_deg <= 360.0 and -90.0 <= dec_deg <= 90.0):
            raise ValueError(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"'{text}' is no place. Write right ascension (0 to 360) and declination (-90 to 90), such as 279.23,38.78"
        ) from None
    return [ra_deg, dec_deg]


def _extent(text):
    try:
        x_min, x_max, y_min, y_max = (float(number) for number in text.split(","))
        if not (math.isfinite(x_min + x_max + y_min + y_max) and x_min < x_max and y_min < y_max):
            raise ValueError(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is no extent. Write four numbers: least x, greatest x, least y, greatest y") from None
    return [x_min, x_max, y_min, y_max]


def _bodies(text):
    chosen = list(dict.fromkeys(part.strip() for part in text.split(",")))
    unknown = [body for body in chosen if body not in BODIES]
    if unknown:
        raise argparse.ArgumentTypeError(f"'{', '.join(unknown)}' is not known. Choose from {', '.join(BODIES)}")
    return chosen


def _fields(text):
    return list(dict.fromkeys(part.strip() for part in text.split(";") if part.strip()))


def contradictions(asked):
    """Sentences about options that leave nothing together, or want each other."""
    told = vars(asked)
    for low, high in (*((f"{name}_min", f"{name}_max") for name in ("alt", "gap", "tilt", "apex", "lit")), ("sun_min", "sun_limit")):
        if told.get(low) is not None and told.get(high) is not None and told[low] > told[high]:
            yield f"{_option(low)} is above {_option(high)}, so nothing can lie between them. Exchange them."
    if told.get("az_tolerance") is not None and not 0.0 < asked.az_tolerance < 90.0:
        yield f"--az-tolerance is {asked.az_tolerance:g}. Give more than 0 and less than 90, or leave it blank."
    if told.get("first_night") and told.get("last_night") and asked.last_night < asked.first_night:
        yield f"--last-night ({asked.last_night}) is before --first-night ({asked.first_night}). Exchange them."
    for pair in (("towns", "town_population"), ("face_from", "face_to")):
        given = [name for name in pair if told.get(name) is not None]
        if len(given) == 1:
            yield f"Only {_option(given[0])} is given. Give both {_option(pair[0])} and {_option(pair[1])}, or leave both blank."
    if told.get("pairing") == "by_field" and not asked.pair_field:
        yield "--pairing is by_field, but --pair-field is blank. Name the field of the cameras that pairs them."
    if told.get("terrain_radius") is not None and not asked.terrain_radius > (asked.skip_near or 0.0):
        yield "--terrain-radius leaves no ground beyond --skip-near. Give more, such as 40000."
    if told.get("sky_step") == 0.0:
        yield "--sky-step is 0. Give the degrees between two positions of the body, such as 1, or leave it blank."
    if told.get("max_distance") == 0.0:
        yield "--max-distance is 0, which no sightline is shorter than. Give the longest one in metres, such as 50000."


def _option(name):
    return "--" + name.replace("_", "-")
