"""From the options to a job and its blocks, and through the run."""

import shutil
from datetime import datetime, timezone
from pathlib import Path

import numpy as np

from ..plan import plots
from ..plan.conditions import Conditions
from ..plan.exposure import middle_height_m, survey, tile_side, tiles
from ..plan.glow import Towns
from ..plan.months import new_moons
from ..plan.night_windows import Places
from ..plan.nights import nights_asked
from ..plan.sky_paths import months_between, sky_paths, step_of
from ..plan.targets import target
from ..plan.zones import find_zones
from .alignments import Alignments
from .arguments import RUN, contradictions, parser
from .blocks import blocks_of
from .cluster import client_of, require_shared
from .exposure import Exposure, TileBlocks, write_mosaic
from .interruption import Interruption
from .layers import LAYER_MARK, files_of
from .nights import Nights
from .partitions import path_of
from .points import output_crs, read_points
from .progress import tell
from .record import mark_of, record_of
from .run import run
from .terrain import Dem, Ground
from .version import version

INPUTS = ("sites", "cameras", "subjects", "towns", "dem")
NIGHTS = {"nights": 365, "alignments": 30, "exposure": 365}  # asked for when the last one is blank
ROW_BYTES = 200  # of a partition: measured 161 for a night, 185 for an alignment
CELL_BYTES = 4
SHOWN_FAILED = 5
SUN_LINE = (
    "Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter "
    "(ISO 12312-2 for the eye)."
)
GROUND_LINE = (
    "The terrain is that of '{dem}', in cells of {size} m. Elevation data have errors, and no trees or buildings: "
    "what is clear by them may be hidden. Look from the place by day."
)


def run_asked(arguments):
    """Do what the arguments ask; gives the exit code.

    Raises
    ------
    ValueError
        With a sentence, where that cannot be done.
    """
    asked = parser().parse_args(arguments)
    for sentence in contradictions(asked):
        raise ValueError(sentence)
    inputs = {name: getattr(asked, name) for name in INPUTS if getattr(asked, name, None)}
    for name, text in inputs.items():
        if not files_of(text) or not all(file.exists() for file in files_of(text)):
            raise ValueError(f"{name.upper()}: {text} is not there.")
        if Path(text).is_dir() and Path(text).resolve() in Path(asked.output).resolve().parents:
            raise ValueError(
                f"OUTPUT: {asked.output} lies in the folder of {name.upper()}, of which the results would become a part. Give another."
            )
    identity = {
        "version": version(),
        "command": asked.command,
        "asked": {name: value for name, value in vars(asked).items() if name not in (*RUN, *INPUTS)},
        "inputs": {name: mark_of(files_of(text), text.partition(LAYER_MARK)[2]) for name, text in inputs.items()},
    }
    record = record_of(Path(asked.output).absolute(), identity, datetime.now(tz=timezone.utc).timestamp())
    job, blocks, need = {"nights": nights, "alignments": alignments, "exposure": exposure}[asked.command](asked, record.begun_utc_s)
    missing = sum(not path_of(record.folder, job.outputs[0], number, job.ending).exists() for number in range(len(blocks)))
    _refuse_full_disk(record.folder, need * missing / len(blocks))
    with Interruption() as interruption, client_of(asked.scheduler, asked.workers) as client:
        interruption.obey()
        record.write()
        require_shared(client, "OUTPUT", record.folder)
        if job.dem is not None:
            require_shared(client, "DEM", job.dem.file)
        tell(f"{len(client.nthreads())} workers, {len(blocks):,} partitions to {record.folder}.")
        if asked.command == "exposure":
            job = job.stored(record.folder)
        outcome = run(client, job, blocks, record.folder, interruption, asked.tries)
    if not outcome.failed and asked.command == "exposure":
        _mosaic(job, blocks, record.folder)
    return _told(outcome, job, record)


def nights(asked, now_utc_s):
    """The job, the blocks and the bytes of files that `nights` asks for."""
    (body,) = targets_of(asked, [asked.body])
    measures = {"CAMERA_HEIGHT": (asked.camera_height, 1.5, 0.0)}
    read = _read("SITES", asked.sites, "site", asked.site_name, measures=measures, keep=asked.keep_fields)
    dem = _dem(asked)
    blocks = _blocks(asked, read.points, now_utc_s, 1.0, dem)
    outputs = ("nights", *(name for name in ("windows", "months") if getattr(asked, name)))
    moons = new_moons(*blocks.span_utc_s) if asked.months and len(read.points) else None
    crs, kept = output_crs(read.crs).to_json_dict(), read.points.kept.schema
    job = Nights(outputs, body, conditions_of(asked), _towns(asked), moons, dem, crs, kept)
    return job, blocks, int(blocks.nights.sum()) * ROW_BYTES


def alignments(asked, now_utc_s):
    """The job, the blocks and the bytes of files that `alignments` asks for."""
    targets = targets_of(asked, asked.bodies)
    keys = (asked.pair_field, asked.pair_field_subject or asked.pair_field) if asked.pairing == "by_field" else (None, None)
    measures = {"CAMERA_HEIGHT": (asked.camera_height, 1.5, 0.0)}
    cameras = _read("CAMERAS", asked.cameras, "camera", asked.camera_name, keys[0], measures, asked.keep_fields)
    measures = {name: (getattr(asked, name.lower()), 0.0, 0.0) for name in ("SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH")}
    measures.update({name: (getattr(asked, name.lower()), np.nan, -360.0) for name in ("FACE_FROM", "FACE_TO")})
    subjects = _read("SUBJECTS", asked.subjects, "subject", asked.subject_name, keys[1], measures).points
    dem = _dem(asked)
    pairs_a_camera = 1 if asked.pairing == "closest" else len(subjects)
    blocks = _blocks(asked, cameras.points, now_utc_s, pairs_a_camera * len(targets), dem)
    outputs = ("alignments", "unmet") if asked.unmet else ("alignments",)
    pairing = (asked.pairing, asked.max_distance, asked.refraction_k)
    about = (blocks.span_utc_s, dem, output_crs(cameras.crs).to_json_dict(), cameras.points.kept.schema)
    job = Alignments(outputs, subjects, targets, conditions_of(asked), *pairing, *about)
    return job, blocks, 0  # how many pairs lie near enough is known only when they are measured


def exposure(asked, now_utc_s):
    """The job, the tiles and the bytes of files, before they are compressed, that `exposure` asks for."""
    (body,) = targets_of(asked, [asked.body])
    dem = _dem(asked)
    ground = Ground(dem)
    grid = ground.extent.grid
    area = plots.area_of(grid, *asked.area) if asked.area else plots.whole(grid)
    if area is None:
        raise ValueError(f"--area does not meet {dem.file}. Give an extent on it, in its CRS, or leave it blank.")
    cell_m = ground.cell_m(area)
    any_zone = nights_asked(*_given_nights(asked), NIGHTS["exposure"], now_utc_s, ["UTC"], np.zeros(1, int))
    cut = tiles(area, tile_side(cell_m[1], len(months_between(*any_zone)) if asked.per_month else 1))
    lon_deg, lat_deg = ground.lon_lat(*plots.middles(grid, cut))
    if not np.isfinite(lon_deg + lat_deg).all():
        raise ValueError(f"DEM: a part of {dem.file} is no place on the Earth. Check its CRS, or give an --area within its map.")
    tell("Looking over the elevation model ...")
    overview = survey(plots.region_for(area, grid, cell_m[0], asked.terrain_radius, asked.skip_near), ground.read)
    ground.close()
    if not np.isfinite(overview.highest_m):
        raise ValueError(f"DEM: {dem.file} knows no height in the area. Give another --area, or another --dem-band.")
    zoned = ([asked.time_zone], np.zeros(len(cut), int)) if asked.time_zone else find_zones(lon_deg, lat_deg)
    nights = nights_asked(*_given_nights(asked), NIGHTS["exposure"], now_utc_s, *zoned)
    places = Places(lon_deg, lat_deg, np.array([middle_height_m(tile, overview) for tile in cut]), *zoned)
    months = months_between(*nights) if asked.per_month else None
    paths = sky_paths(places, body, *nights, conditions_of(asked), months, asked.sky_step or step_of(body))
    bands = [f"{nights[0].min()} to {nights[1].max()}"] if months is None else months.astype(str).tolist()
    how = {"lens_m": asked.camera_height, "skip_m": asked.skip_near, "radius_m": asked.terrain_radius, "refraction_k": asked.refraction_k}
    need = CELL_BYTES * area.rows * area.cols * len(bands)
    return Exposure(dem, overview, how, bands), TileBlocks(area, cut, lon_deg, lat_deg, paths), need


def _mosaic(job, blocks, folder):
    ground = Ground(job.dem)
    transform = plots.transform_from(ground.extent.grid, blocks.area.row, blocks.area.col)
    write_mosaic(folder, blocks.area, blocks.tiles, transform, ground.wkt, job.bands)
    ground.close()


def targets_of(asked, bodies):
    """The bodies asked for, with what is to be said of them."""
    if "sun" in bodies:
        tell(SUN_LINE)
    return [target(body, star=asked.star, galactic_lon_deg=asked.galactic_lon) for body in bodies]


def conditions_of(asked):
    """What is asked, blanks left to the customs of each body."""
    units = {"pressure": "pressure_hPa", "temperature": "temperature_C", "moon_lit_max": "moon_lit_max"}
    units.update(lit_min="lit_min", lit_max="lit_max", moon="moon", use_skyline="use_skyline")
    angles = ("az_tolerance", "alt_min", "alt_max", "gap_min", "gap_max", "tilt_min", "tilt_max", "apex_min", "apex_max")
    units.update({name: f"{name}_deg" for name in (*angles, "core_alt_min", "sun_limit", "sun_min")})
    told = vars(asked)
    return Conditions(**{condition: told[name] for name, condition in units.items() if name in told})


def _read(option, text, fallback_name, name=None, key=None, measures=None, keep=()):
    read = read_points(option, text, fallback_name, name, key, measures, keep)
    for sentence in read.sentences(option):
        tell(sentence)
    return read


def _blocks(asked, points, now_utc_s, rows_a_night, dem):
    about = (NIGHTS[asked.command], now_utc_s, rows_a_night, asked.block)
    return blocks_of(points, asked.time_zone, *_given_nights(asked), *about, by_place=dem is not None)


def _given_nights(asked):
    return (None if night is None else np.datetime64(night, "D") for night in (asked.first_night, asked.last_night))


def _dem(asked):
    if not asked.dem:
        return None
    how = {"radius_m": asked.terrain_radius, "skip_near_m": asked.skip_near, "refraction_k": asked.refraction_k}
    if asked.command == "alignments":
        how["accuracy_m"] = asked.dem_accuracy
    dem = Dem(str(Path(asked.dem).absolute()), asked.dem_band, how)
    ground = Ground(dem)
    least, most = (f"{size_m:.3g}" for size_m in ground.cell_m())
    tell(GROUND_LINE.format(dem=ground.name, size=least if least == most else f"{least} to {most}"))
    ground.close()
    return dem


def _towns(asked):
    if not asked.towns:
        return None
    people = {"TOWN_POPULATION": (f"field:{asked.town_population}", 0.0, 0.0)}
    towns = _read("TOWNS", asked.towns, "town", asked.town_name, measures=people).points
    return Towns(towns.lon_deg, towns.lat_deg, towns.measures["TOWN_POPULATION"], towns.name)


def _refuse_full_disk(folder, need):
    free = shutil.disk_usage(next(there for there in (folder, *folder.parents) if there.exists())).free
    if need > free:
        raise ValueError(f"OUTPUT: what is missing takes some {need / 1e6:,.1f} MB, but {folder} has {free / 1e6:,.1f} MB left. Make room.")


def _told(outcome, job, record):
    """Say what came of it; gives the exit code."""
    rows = ", ".join(f"{count:,} {job.counted} of {name}" for name, count in outcome.rows.items())
    done = outcome.partitions - len(outcome.failed)
    rate = outcome.rows[job.outputs[0]] / max(outcome.seconds, 1e-9)
    tell(
        f"{done:,} of {outcome.partitions:,} partitions are there, {outcome.resumed:,} of them from before. This time {rows} in "
        f"{outcome.seconds:.1f} s: {rate:,.0f} a second."
    )
    if outcome.failed:
        shown = "; ".join(f"{number} ({reason})" for number, reason in list(outcome.failed.items())[:SHOWN_FAILED])
        more = f" and {len(outcome.failed) - SHOWN_FAILED:,} more" if len(outcome.failed) > SHOWN_FAILED else ""
        raise ValueError(f"{len(outcome.failed):,} partitions failed: {shown}{more}. When that is mended, give the same command again.")
    record.write(finished=datetime.now(tz=timezone.utc).isoformat(timespec="seconds"), partitions=outcome.partitions)
    return 0
