"""Run the main algorithms on the sample reserve and the sample parks and print what a photographer wants to read.

run.sh sets up all it needs and calls it; results go to build/sample, or to the folder given.
"""

import csv
import os
import re
import sqlite3
import subprocess
import sys
import textwrap
import time
from collections import Counter
from contextlib import closing
from pathlib import Path

HERE = Path(__file__).resolve().parent
OUT = HERE.parent / "build" / "sample"

FIRST_NIGHT, LAST_NIGHT = "2027-03-01", "2027-10-31"
EVENING, MORNING = "2027-06-06 21:00:00", "2027-06-07 06:00:00"  # wall clock of the reserve
BODIES = ("core", "arch", "moon", "sun")
HOUR = "2027-06-06 23:30:00"  # of the standpoints
STANDING = ("Drovane Light", "Vennet Ruin")  # the subjects for which the demo tells where to stand
THIN = 0.25  # a Moon lit less than this counts as dark
DUSK_SUN_DEG = (-8.0, 0.0)  # light enough to show the ground under the Moon

HEIGHTS = {
    "CAMERA_NAME": "name",
    "SUBJECT_NAME": "name",
    "CAMERA_HEIGHT": "field:lens_m",
    "SUBJECT_HEIGHT": "field:height_m",
    "SUBJECT_BASE": "field:base_m",
    "SUBJECT_WIDTH": "field:width_m",
}
RESERVE = {
    "CAMERAS": f"{HERE / 'reserve.gpkg'}|layername=cameras",
    "SUBJECTS": f"{HERE / 'reserve.gpkg'}|layername=subjects",
    **HEIGHTS,
    "FACE_FROM": "field:face_from",
    "FACE_TO": "field:face_to",
    "DEM": HERE / "dem.tif",
}
STANDPOINTS = {
    **{name: RESERVE[name] for name in ("SUBJECTS", "SUBJECT_NAME", "SUBJECT_HEIGHT", "SUBJECT_BASE", "FACE_FROM", "FACE_TO", "DEM")},
    "PATHS": f"{HERE / 'reserve.gpkg'}|layername=paths",
    "PATH_NAME": "name",
    "AREA": f"{HERE / 'reserve.gpkg'}|layername=allowed",
    "CLOSED": f"{HERE / 'reserve.gpkg'}|layername=closed",
    "CLOSED_FROM": "closed_from",
    "CLOSED_TO": "closed_to",
    "BODY": "core",
    "TIME": HOUR,
}
TRACK = {
    **{name: value for name, value in STANDPOINTS.items() if not name.startswith(("PATH", "TIME", "BODY"))},
    "BODY": "moon",
    "START": "2027-06-14 21:00:00",
    "END": "2027-06-15 01:30:00",
    "STEP": 10,
    "GAP": 1,
}
SHEETS = {
    **{name: RESERVE[name] for name in ("CAMERAS", "CAMERA_NAME", "SUBJECTS", "SUBJECT_NAME", "DEM")},
    **{name: value for name, value in STANDPOINTS.items() if name.startswith("CLOSED")},
    **dict.fromkeys(("PATHS", "WALK"), STANDPOINTS["PATHS"]),
    "WALK_NAME": "name",
    "CLOSED_NAME": "name",
    "TITLE": "Night photography, Quenmar Reserve",
}
OF_ONE_SECTOR = {"PAIRING": "by_field", "PAIR_FIELD": "sector"}  # cameras and subjects that belong together
PARKS_FILE = HERE / "parks.gpkg"
PARKS = {
    "CAMERAS": f"{PARKS_FILE}|layername=viewpoints",
    "SUBJECTS": f"{PARKS_FILE}|layername=landmarks",
    **HEIGHTS,
    "PAIRING": "by_field",
    "PAIR_FIELD": "park",
}
YEAR = {"FIRST_NIGHT": "2027-01-01", "LAST_NIGHT": "2027-12-31"}
SEASON = {"FIRST_NIGHT": FIRST_NIGHT, "LAST_NIGHT": LAST_NIGHT, "GAP_MIN": 0}
PARK_BODIES = ("core", "moon")

WHERE = """
Quenmar Reserve, an invented island at 36.0° N 33.0° W, nights {first} to {last}, times in {zone}. A night bears the date of its evening;
times after midnight belong to the morning after it."""

SIGHT = """
Of {n} lines from a camera to a subject the terrain leaves {clear} clear and hides {hidden}; {uncertain} pass too close to the ground
to tell. Those of one sector, {pairs}, are searched for alignments in which the body also stands above the terrain skyline."""

MILKY_WAY = """
The ten best for the Milky Way (its core, or the top of its low arch) over a subject: Moon down or lit under a quarter first, then the
longest, then the earliest night. One line for a camera, subject and body, at its best, with the number of nights that are as dark."""

MOON_AND_SUN = """
Three each for Moon and Sun, the nearest above a subject's top; for the Moon those in dusk or dawn light (Sun between -8° and 0°) first."""

STAND = """
Where to stand at {time} so that the core of the Milky Way stands over the {subject}, on the paths, in allowed ground and not where
terrain hides the core; "within" is what a position known to 3 m is worth:"""

READING = """
time: the body is closest to the subject's bearing; min: minutes within 3° of it (core), 5° (arch) or 0.5° (Moon, Sun) and above its top
and the terrain skyline; gap: from the subject's top up to the body; tilt: of the band at the core, 90° upright, with the side to which
it rises; Moon: down, or up and so much of it lit."""

UNMET = """
{n} pairs and bodies of {total} have no alignment in the season; unmet.gpkg tells why, such as: {reason}."""

PARKS_WHERE = """
{n} invented parks over the world in one run, the same nights, each park in its own time zone. Most dark nights first: in how many
the core (Moon down or lit under a quarter) and in how many the Moon stands above a landmark's top, and the best of them; a local time
bears the offset from UTC of that hour."""

PARKS_REST = """
The other {n}: {core} see the core over a landmark in a dark night, {moon} the Moon alone, {none} neither; parks.csv has a line for each
that sees one."""

PARKS_UNMET = """
{n} of {total} viewpoints and bodies have no alignment in the season. How many for what kind of reason, and one of them each:"""

PARKS_SEASONS = """
When to go to each park: the month of {year} with most hours of the core above 10° in full darkness with the Moon down, the usable nights
and hours of that month, its Saturday closest to new Moon, the season from its first to its last usable night, and the year's longest
window."""

PARKS_NEVER = """
Without a window all year: {parks}."""

CAUTIONS = """
Sun: never look at it, nor point an optical viewfinder or a long lens at it, without a certified solar filter (ISO 12312-2 for the eye).

Walking in the dark: cliffs, tides, water levels, weather, animals. Arrive before dark, not alone, and tell someone. These results know
nothing of footing, tide or weather.

Terrain: elevation data have errors, and no trees or buildings. The reserve's lie in cells of 10 m; what is clear by them may be hidden. For
the parks no terrain was looked at.

A planning aid, not a survey and not a permit: access, closures (here the layer "closed"), night hours, artificial light, drones, group
size and commercial work are decided by the land manager and local law."""

# heading, width (left-aligned where negative), what stands below it
BEGIN = [
    ("night", -10, lambda row: row["night"]),
    ("time", -5, lambda row: row["t_local"][11:16]),
    ("min", 3, lambda row: f"{minutes(row)}"),
    ("body", -4, lambda row: row["body"]),
    ("camera -> subject", -35, lambda row: f"{row['camera']} -> {row['subject']}"),
    ("bearing", 7, lambda row: f"{row['bearing_deg']:.1f}°"),
    ("alt.", 5, lambda row: f"{row['alt_deg']:.1f}°"),
    ("gap", 5, lambda row: f"{row['d_alt_deg']:.1f}°"),
]
TILT = ("tilt", 9, lambda row: "" if row["tilt_deg"] is None else f"{row['tilt_deg']:.0f}° {row['lean']}")
SUN = ("Sun", 6, lambda row: f"{row['sun_deg']:.1f}°")
END = [("Moon", -8, lambda row: moon(row)), ("nights", 6, lambda row: f"{row['nights']}")]
PARK = [
    ("park", -20, lambda row: row["park"]),
    ("zone", -30, lambda row: row["tz"]),
    ("core", 4, lambda row: f"{row['core_nights']}"),
    ("Moon", 4, lambda row: f"{row['moon_nights']}"),
    ("best night", -10, lambda row: row["night"]),
    ("local time", -12, lambda row: f"{row['t_local'][11:16]} {row['t_local'][20:]}"),
    ("body", -4, lambda row: row["body"]),
    ("bearing", 7, lambda row: f"{row['bearing_deg']:.1f}°"),
    ("alt.", 5, lambda row: f"{row['alt_deg']:.1f}°"),
]
PARKS_SHOWN = 15
PARK_SEASON = [
    ("park", -20, lambda row: row["park"]),
    ("month", -7, lambda row: row["month"]),
    ("nights", 6, lambda row: f"{row['nights']}"),
    ("hours", 5, lambda row: f"{row['hours']:.0f}"),
    ("new Moon", -10, lambda row: (row["new_moon"] or "")[:10]),
    ("season", -14, lambda row: f"{row['first_night'][5:]} to {row['last_night'][5:]}"),
    ("best night", -10, lambda row: row["night"]),
    ("local time", -21, lambda row: f"{row['start_loc'][11:16]} to {row['end_loc'][11:16]} {row['end_loc'][20:]}"),
    ("min", 3, lambda row: f"{minutes(row)}"),
]
WIDTH = 118

KEPT = ["night", "t_local", "body", "camera", "subject", "nights", "moon_side"]  # columns of best.csv, as they are
PARK_KEPT = ["park", "tz", "core_nights", "moon_nights", "night", "t_local", "body", "camera", "subject", "moon_side"]  # of parks.csv
ROUNDED = {
    "minutes": 2,
    "bearing_deg": 3,
    "alt_deg": 3,
    "d_alt_deg": 3,
    "ground_deg": 2,
    "tilt_deg": 2,
    "sun_deg": 2,
    "moon_lit": 3,
}  # and to so many digits


def in_words(row):
    """A standpoint as one would tell it."""
    sight = {"clear": "clear", "hidden": "hidden by terrain", "uncertain": "too close to the ground to tell", None: "sight not tested"}[
        row["sight"]
    ]
    return (
        f"{row['path']}, {row['chain_m']:.1f} m from its start, bearing {row['bearing_deg']:.1f}° (within {row['err_deg']:.1f}°), "
        f"{row['dist_m']:.0f} m away, top at {row['top_alt_deg']:.1f}°, the core {row['d_alt_deg']:.1f}° above it, {sight}"
    )


def minutes(row):
    """Length of the stretch, as it is shown and ranked."""
    return round(row["minutes"])


def moon(row):
    """The Moon at the row's moment, in words."""
    lit = f"{100 * row['moon_lit']:.0f}%"
    return f"{lit} lit" if row["body"] == "moon" else "down" if row["moon_side"] is None else f"up, {lit}"


def dark(row):
    """Whether the Moon is down, or thin."""
    return row["moon_side"] is None or row["moon_lit"] < THIN


def darkest_longest_first(row):
    return not dark(row), -minutes(row), row["night"], row["t_utc"]


def dusk_nearest_first(row):
    low, high = DUSK_SUN_DEG
    in_dusk = row["body"] == "moon" and low <= row["sun_deg"] <= high
    return not in_dusk, round(row["d_alt_deg"], 1), row["night"], row["t_utc"]


def best(rows, bodies, order, count):
    """The first rows in an order, one for a camera, subject and body, each with the number of nights that are as good by its first rule."""
    rows = [row for row in rows if row["body"] in bodies]
    nights, chosen = {}, {}
    for row in sorted(rows, key=order):
        key = row["camera"], row["subject"], row["body"]
        nights.setdefault((key, order(row)[0]), set()).add(row["night"])
        chosen.setdefault(key, row)
    first = list(chosen.items())[:count]
    return [dict(row, nights=len(nights[key, order(row)[0]])) for key, row in first]


def core_first(row):
    if row["body"] == "core":
        return False, *darkest_longest_first(row)
    return True, *dusk_nearest_first(row)


def best_of_parks(rows, park_of):
    """The best row of each park, with its nights; most dark nights of the core first. `park_of` tells the park of a camera's id."""
    rows_of = {}
    for row in rows:
        rows_of.setdefault(park_of[row["camera_id"]], []).append(row)
    chosen = []
    for park, own in rows_of.items():
        core_nights = {row["night"] for row in own if row["body"] == "core" and dark(row)}
        moon_nights = {row["night"] for row in own if row["body"] == "moon"}
        chosen.append(dict(min(own, key=core_first), park=park, core_nights=len(core_nights), moon_nights=len(moon_nights)))
    return sorted(chosen, key=lambda row: (-row["core_nights"], -row["moon_nights"], row["park"]))


def seasons_of_parks(months, nights):
    """For each park its best month and its longest window, of whichever viewpoint; and the commonest reason of parks without any."""
    by_hours, by_length = {}, {}
    for row in months:
        by_hours.setdefault(row["park"], []).append(row)
    for row in nights:
        by_length.setdefault(row["park"], []).append(row)
    seasons, never = [], {}
    for park, own in sorted(by_length.items()):
        if all(row["minutes"] is None for row in own):
            never[park] = Counter(row["reason"].split(":")[0] for row in own).most_common(1)[0][0]
            continue
        longest = max(own, key=lambda row: row["minutes"] or 0.0)
        seasons.append({**longest, **max(by_hours[park], key=lambda row: row["hours"])})
    return seasons, never


def kinds_of_reasons(rows):
    """Reasons for a body that are alike but for their numbers: how many, and the first of each; the commonest first."""
    kinds = [(row["body"], re.sub(r"\d+(\.\d+)?", "#", row["reason"].split(":")[0])) for row in rows]
    first = dict(zip(reversed(kinds), reversed(rows)))
    return [(count, first[kind]) for kind, count in Counter(kinds).most_common()]


def table(rows, columns):
    """Lines of a plain table."""
    cells = [[heading for heading, _, _ in columns]] + [[show(row) for _, _, show in columns] for row in rows]
    widths = [width for _, width, _ in columns]
    return ["  ".join(f"{text:{'<' if width < 0 else '>'}{abs(width)}}" for text, width in zip(line, widths)).rstrip() for line in cells]


def say(text):
    """Print sentences, a paragraph after an empty line, within the width of a table."""
    for paragraph in text.split("\n\n"):
        print("\n" + textwrap.fill(" ".join(paragraph.split()), WIDTH))


def write_csv(rows, kept, file):
    """Some columns of the rows."""
    with open(file, "w", newline="", encoding="utf-8") as stream:
        out = csv.writer(stream)
        out.writerow([*kept, *ROUNDED])
        for row in rows:
            rounded = [None if row[name] is None else round(row[name], digits) for name, digits in ROUNDED.items()]
            out.writerow([row[name] for name in kept] + rounded)


def read(file, layer=None):
    """The rows of a GeoPackage's layer, or of the only one with geometries; each a dict."""
    with closing(sqlite3.connect(file)) as connection:
        connection.row_factory = sqlite3.Row
        if layer is None:
            (layer,) = connection.execute("SELECT table_name FROM gpkg_geometry_columns").fetchone()
        return [dict(row) for row in connection.execute(f'SELECT * FROM "{layer}"')]


def call(algorithm, parameters):
    """Run an algorithm through qgis_process; what it said."""
    words = [f"--{name}={value}" for name, value in parameters.items()]
    done = subprocess.run(
        [os.environ["QGIS_PROCESS"], "run", f"skyalidade:{algorithm}", *words],
        capture_output=True,
        text=True,
        errors="replace",
        check=False,
    )
    if done.returncode:
        sys.exit(f"failed.\n{done.stdout}\n{done.stderr}")
    return done.stdout


def run(out, algorithm, parameters, **outputs):
    """Run an algorithm and tell how it went; its rows."""
    print(f"  {algorithm:<15}", end="", flush=True)
    begun = time.monotonic()
    files = {name: out / f"{stem}.gpkg" for name, stem in outputs.items()}
    for file in files.values():
        file.unlink(missing_ok=True)
    call(algorithm, {**parameters, **files})
    first = next(iter(files.values()))
    rows = read(first)
    print(f"{len(rows):>7,} rows in {time.monotonic() - begun:4.1f} s   {os.path.relpath(first)}", flush=True)
    return rows


def sheets(out):
    """A sheet of each camera for the land manager, with the alignments of one night."""
    print(f"  {'site_map':<15}", end="", flush=True)
    begun, file = time.monotonic(), out / "sheets.pdf"
    said = call("site_map", {**SHEETS, "ALIGNMENTS": f"{out / 'alignments.gpkg'}|subset=night = '{HOUR[:10]}'", "OUTPUT": file})
    count = re.search(r"([\d,]+) sheets on", said).group(1)
    print(f"{count:>7} sheets in {time.monotonic() - begun:3.1f} s   {os.path.relpath(file)}", flush=True)


def reserve(out):
    """Seven runs on the reserve, two tables, and where to stand."""
    print("Sky Alidade on the sample reserve:")
    lines = run(out, "sightlines", RESERVE, OUTPUT="sightlines")
    bodies = {"BODIES": ",".join(BODIES)}
    found = run(out, "alignments", {**RESERVE, **OF_ONE_SECTOR, **SEASON, **bodies}, OUTPUT="alignments", UNMET="unmet")
    sites = {"SITES": RESERVE["CAMERAS"], "SITE_NAME": "name", "CAMERA_HEIGHT": HEIGHTS["CAMERA_HEIGHT"], "DEM": RESERVE["DEM"]}
    run(out, "sky_positions", {**sites, **bodies, "START": EVENING, "END": MORNING, "STEP": 10}, OUTPUT="sky_positions")
    run(out, "terrain_horizon", sites, PROFILE="profile", SKYLINE="skyline")
    stand = run(out, "standpoints", STANDPOINTS, POINTS="standpoints", STRETCHES="stretches", ZONES="zones")
    run(out, "shadow_track", TRACK, OUTPUT="shadow_track", LINES="track_lines")
    sheets(out)

    milky_way = best(found, ("core", "arch"), darkest_longest_first, 10)
    moon_and_sun = [row for body in ("moon", "sun") for row in best(found, (body,), dusk_nearest_first, 3)]
    write_csv(milky_way + moon_and_sun, KEPT, out / "best.csv")

    unmet = read(out / "unmet.gpkg")
    pairs = {(row["camera"], row["subject"]) for row in found + unmet}
    sight = Counter(row["sight"] for row in lines)
    say(WHERE.format(first=FIRST_NIGHT, last=LAST_NIGHT, zone=" and ".join(sorted({row["tz"] for row in found}))))
    say(SIGHT.format(n=len(lines), pairs=len(pairs), **{name: sight[name] for name in ("clear", "hidden", "uncertain")}))
    say(MILKY_WAY)
    print("", *table(milky_way, [*BEGIN, TILT, *END]), sep="\n")
    say(MOON_AND_SUN)
    print("", *table(moon_and_sun, [*BEGIN, SUN, *END]), sep="\n")
    say(READING)
    for subject in STANDING:
        say(STAND.format(time=HOUR[:16], subject=subject))
        for row in stand:
            if row["subject"] == subject:
                print(textwrap.fill(in_words(row), WIDTH, initial_indent="  ", subsequent_indent="    "))
    if unmet:
        say(UNMET.format(n=len(unmet), total=len(pairs) * len(BODIES), reason=unmet[0]["reason"].rstrip(".")))


def parks(out):
    """One run over all parks, and a table of the most promising."""
    print("\nSky Alidade on the sample parks:")
    bodies = {"BODIES": ",".join(PARK_BODIES)}
    found = run(out, "alignments", {**PARKS, **SEASON, **bodies}, OUTPUT="parks_alignments", UNMET="parks_unmet")
    park_of = {row["fid"]: row["park"] for row in read(PARKS_FILE, "viewpoints")}
    chosen = best_of_parks(found, park_of)
    write_csv(chosen, PARK_KEPT, out / "parks.csv")

    total = len(set(park_of.values()))
    say(PARKS_WHERE.format(n=total))
    print("", *table(chosen[:PARKS_SHOWN], PARK), sep="\n")
    rest = chosen[PARKS_SHOWN:]
    core = sum(row["core_nights"] > 0 for row in rest)
    say(PARKS_REST.format(n=total - len(chosen[:PARKS_SHOWN]), core=core, moon=len(rest) - core, none=total - len(chosen)))
    unmet = read(out / "parks_unmet.gpkg")
    if unmet:
        say(PARKS_UNMET.format(n=len(unmet), total=len(park_of) * len(PARK_BODIES)))
        for count, row in kinds_of_reasons(unmet):
            print(textwrap.fill(f"{count:>4}  {row['camera']}: {row['reason']}", WIDTH, subsequent_indent=" " * 6))


def park_seasons(out):
    """One run over all nights of a year, and the best month and night of each park."""
    sites = {"SITES": PARKS["CAMERAS"], "SITE_NAME": "name", "KEEP_FIELDS": "park"}
    nights = run(out, "night_windows", {**sites, **YEAR}, OUTPUT="parks_nights", MONTHS="parks_months")
    seasons, never = seasons_of_parks(read(out / "parks_months.gpkg"), nights)
    say(PARKS_SEASONS.format(year=YEAR["FIRST_NIGHT"][:4]))
    print("", *table(seasons, PARK_SEASON), sep="\n")
    if never:
        say(PARKS_NEVER.format(parks=", ".join(f"{park} ({reason})" for park, reason in never.items())))


def main(out):
    """The reserve, the parks, and the cautions."""
    if "QGIS_PROCESS" not in os.environ:
        sys.exit("Start it with: sh sample_project/run.sh")
    sys.stdout.reconfigure(errors="replace")
    out.mkdir(parents=True, exist_ok=True)
    reserve(out)
    parks(out)
    print()
    park_seasons(out)
    say(CAUTIONS)


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else OUT)
