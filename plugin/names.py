"""Names that others rely on: ids of the provider, algorithms and bodies, and the fields of every output.

An id or field name, once published, is never renamed and never translated; labels and aliases are for people and may be improved.
Field names carry their unit and are unique within their first ten characters, so that a Shapefile keeps them.
"""

from dataclasses import dataclass

PROVIDER_ID = "skyalidade"
PROVIDER_NAME = "Sky Alidade"

# body id -> what a person reads
BODIES = {
    "core": "Milky Way core",
    "arch": "Milky Way arch (its top)",
    "sun": "Sun",
    "moon": "Moon",
    "pole": "Celestial pole above the horizon",
    "star": "Star or other fixed place (STAR)",
    "galactic": "Place on the galactic plane (GALACTIC_LON)",
}

PAIRINGS = {
    "all": "every camera with every subject",
    "by_field": "cameras and subjects with the same value in a field",
    "closest": "each camera with its closest subject",
}

MOON_RULES = {
    "any": "Moon up or down",
    "down": "Moon down",
    "down_or_thin": "Moon down, or lit less than MOON_LIT_MAX",
}

# what a camera is built around -> what a person reads; the numbers are in lens/frame.py
SENSORS = {
    "full_frame": "24 x 36 mm, 6000 pixels wide",
    "crop_1_5": "16 x 24 mm (crop 1.5), 6000 pixels wide",
    "four_thirds": "13 x 17.3 mm (4/3), 5200 pixels wide",
    "medium": "33 x 44 mm (medium format), 8300 pixels wide",
}

ORIENTATIONS = {"landscape": "the long side level", "portrait": "upright"}

PAPERS = {"a4": "210 x 297 mm", "letter": "8.5 x 11 in"}

TURNS = {"portrait": "upright", "landscape": "across"}

AIMS = {
    "between": "at the middle between subject and body",
    "subject": "at the subject",
    "body": "at the body",
}

THEMES = {"print": "dark on white, for paper", "night": "red on black, for reading in the dark"}

PANORAMAS = {"pair": "subject and body", "arch": "the whole arch of the Milky Way, and the subject"}


@dataclass(frozen=True)
class Field:
    """One column: its name, the kind of value it holds and what a person reads above it."""

    name: str
    kind: str  # text, int, real, bool, date or datetime (UTC)
    alias: str


FIELDS = {
    field.name: field
    for field in (
        # who
        Field("camera", "text", "Camera"),
        Field("camera_id", "int", "Camera id"),
        Field("subject", "text", "Subject"),
        Field("subject_id", "int", "Subject id"),
        Field("site", "text", "Site"),
        Field("site_id", "int", "Site id"),
        Field("path", "text", "Path"),
        Field("path_id", "int", "Path id"),
        # the body and its time
        Field("body", "text", "Body"),
        Field("night", "date", "Night (date of its evening)"),
        Field("t_utc", "datetime", "Time (UTC)"),
        Field("t_local", "text", "Time (local)"),
        Field("tz", "text", "Time zone"),
        Field("t_start", "datetime", "Start (UTC)"),
        Field("start_loc", "text", "Start (local)"),
        Field("t_end", "datetime", "End (UTC)"),
        Field("end_loc", "text", "End (local)"),
        Field("minutes", "real", "Length [min]"),
        Field("az_deg", "real", "Azimuth [° true]"),
        Field("alt_deg", "real", "Altitude of the body, apparent [°]"),
        Field("semi_deg", "real", "Semidiameter [°]"),
        # the standpoint
        Field("chain_m", "real", "Distance along the path from its start [m]"),
        Field("from_m", "real", "Along the path, from [m]"),
        Field("to_m", "real", "Along the path, to [m]"),
        Field("target_deg", "real", "Bearing wanted [° true]"),
        Field("miss_deg", "real", "Bearing less the one wanted [°]"),
        Field("err_deg", "real", "Error of the bearing by that of the position [°]"),
        Field("bearing_min", "real", "Bearings, clockwise from [° true]"),
        Field("bearing_max", "real", "Bearings, clockwise to [° true]"),
        Field("allowed", "bool", "In the area and not in closed ground"),
        # the night
        Field("sunset", "datetime", "Sunset (UTC)"),
        Field("sunset_loc", "text", "Sunset (local)"),
        Field("t_dusk", "datetime", "Dark from (UTC)"),
        Field("dusk_loc", "text", "Dark from (local)"),
        Field("t_dawn", "datetime", "Dark until (UTC)"),
        Field("dawn_loc", "text", "Dark until (local)"),
        Field("sunrise", "datetime", "Sunrise (UTC)"),
        Field("srise_loc", "text", "Sunrise (local)"),
        Field("moonrise", "datetime", "Moonrise (UTC)"),
        Field("mrise_loc", "text", "Moonrise (local)"),
        Field("moonset", "datetime", "Moonset (UTC)"),
        Field("mset_loc", "text", "Moonset (local)"),
        Field("az_start", "real", "Azimuth of the body at the start [° true]"),
        Field("az_end", "real", "Azimuth of the body at the end [° true]"),
        Field("tilt_start", "real", "Tilt of the band at the start [°]"),
        Field("tilt_end", "real", "Tilt of the band at the end [°]"),
        Field("dark_min", "real", "Darkness of the night [min]"),
        Field("clear_min", "real", "Darkness without Moon [min]"),
        Field("glow", "real", "Glow of towns toward the body, of the natural sky"),
        Field("glow_town", "text", "Town that glows most"),
        # the month
        Field("month", "text", "Month"),
        Field("nights", "int", "Usable nights"),
        Field("hours", "real", "Hours of all windows [h]"),
        Field("best_night", "date", "Night of the longest window"),
        Field("best_min", "real", "Longest window [min]"),
        Field("first_night", "date", "First usable night of the season"),
        Field("last_night", "date", "Last usable night of the season"),
        Field("new_moon", "text", "Saturdays of new-moon weekends"),
        # the sightline
        Field("dist_m", "real", "Distance [m]"),
        Field("bearing_deg", "real", "Bearing, camera to subject [° true]"),
        Field("back_deg", "real", "Back bearing, subject to camera [° true]"),
        Field("mag_deg", "real", "Magnetic bearing [°]"),
        Field("decl_deg", "real", "Magnetic declination, east positive [°]"),
        Field("grid_deg", "real", "Grid bearing [°]"),
        Field("cam_z_m", "real", "Height of the lens [m]"),
        Field("base_z_m", "real", "Height of the subject's foot [m]"),
        Field("top_z_m", "real", "Height of the subject's top [m]"),
        Field("base_alt_deg", "real", "Altitude of the subject's foot [°]"),
        Field("top_alt_deg", "real", "Altitude of the subject's top [°]"),
        Field("width_deg", "real", "Width of the subject [°]"),
        Field("height_deg", "real", "Height of the subject [°]"),
        Field("visible", "bool", "Top in line of sight"),
        Field("sight", "text", "Line of sight"),
        Field("block_m", "real", "Distance to the least clearance [m]"),
        Field("clear_m", "real", "Least clearance [m]"),
        Field("hidden_m", "real", "Hidden part of the subject [m]"),
        Field("heights", "text", "Source of heights"),
        # the body over the subject
        Field("d_az_deg", "real", "Body less bearing [°]"),
        Field("d_alt_deg", "real", "Body above the subject's top [°]"),
        Field("place", "text", "Body against the subject"),
        Field("ground_deg", "real", "Altitude of the terrain skyline [°]"),
        Field("z_m", "real", "Height of the ground [m]"),
        Field("order", "int", "Crossing, counted outward"),
        Field("reach_m", "real", "Ground known as far as [m]"),
        # the light
        Field("sun_deg", "real", "Altitude of the Sun, geometric [°]"),
        Field("sky", "text", "Darkness of the sky"),
        Field("moon_deg", "real", "Altitude of the Moon, geometric [°]"),
        Field("moon_az", "real", "Azimuth of the Moon [° true]"),
        Field("moon_lit", "real", "Lit fraction of the Moon"),
        Field("moon_sep", "real", "Body to Moon [°]"),
        Field("moon_side", "text", "Moonlight comes from"),
        Field("moon_mag", "real", "Brightening by moonlight [mag/arcsec²]"),
        # the band
        Field("core_alt", "real", "Altitude of the core, apparent [°]"),
        Field("tilt_deg", "real", "Tilt of the band at the core [°]"),
        Field("lean", "text", "Side to which the band rises"),
        Field("apex_deg", "real", "Altitude of the arch's top, geometric [°]"),
        Field("apex_az", "real", "Azimuth of the arch's top [° true]"),
        Field("apex_lon", "real", "Galactic longitude of the arch's top [°]"),
        # the picture
        Field("focal_mm", "real", "Focal length [mm]"),
        Field("fov_w_deg", "real", "Field of view across [°]"),
        Field("fov_h_deg", "real", "Field of view, bottom to top [°]"),
        Field("aim_az", "real", "Aim: azimuth [° true]"),
        Field("aim_alt", "real", "Aim: altitude [°]"),
        Field("left_az", "real", "Left side on the horizon [° true]"),
        Field("right_az", "real", "Right side on the horizon [° true]"),
        Field("subj_fits", "bool", "Subject fits"),
        Field("body_fits", "bool", "Body fits"),
        Field("fits", "bool", "All fits"),
        Field("fit_mm", "real", "Longest focal length at which all fits [mm]"),
        Field("subj_h_pct", "real", "Subject's height in the frame [%]"),
        Field("subj_h_px", "real", "Subject's height [px]"),
        Field("subj_w_px", "real", "Subject's width [px]"),
        Field("pano_rows", "int", "Panorama: rows"),
        Field("pano_cols", "int", "Panorama: columns, of the longest row"),
        Field("pano_shots", "int", "Panorama: frames in all"),
        Field("pano_row", "int", "Row, from the lowest up"),
        Field("pano_col", "int", "Column, from the left"),
        Field("head_az", "real", "Head: azimuth [° true]"),
        Field("head_alt", "real", "Head: altitude [°]"),
        # its stars and its sharpness
        Field("fast_dec", "real", "Declination of the fastest star [°]"),
        Field("rule500_s", "real", "Longest shutter by the rule of 500 [s]"),
        Field("npf_s", "real", "Longest shutter by the NPF rule [s]"),
        Field("shutter_s", "real", "Shutter [s]"),
        Field("trail_px", "real", "Longest star trail [px]"),
        Field("hyper_m", "real", "Hyperfocal distance [m]"),
        Field("focus_m", "real", "Focus [m]"),
        Field("blur_px", "real", "Blur of stars at that focus [px]"),
        Field("near_m", "real", "Sharp from, at that focus [m]"),
        Field("far_m", "real", "Sharp to, at that focus; null: without end [m]"),
        Field("star_m", "real", "Nearest focus that keeps stars sharp [m]"),
        Field("sharp_m", "real", "Sharp from, at the nearest focus that keeps stars sharp [m]"),
        Field("focus", "text", "Focus once, or twice and blend"),
        Field("disc_w_m", "real", "Distance at which the disc is as wide as the subject [m]"),
        Field("disc_h_m", "real", "Distance at which the disc is as high as the subject [m]"),
        # why not
        Field("az_from", "real", "Azimuths reached, from [° true]"),
        Field("az_to", "real", "Azimuths reached, to [° true]"),
        Field("reason", "text", "Reason"),
    )
}

SIGHTLINES_FIELDS = (
    *("camera", "camera_id", "subject", "subject_id", "dist_m", "bearing_deg", "back_deg", "mag_deg", "decl_deg", "grid_deg"),
    *("cam_z_m", "base_z_m", "top_z_m", "base_alt_deg", "top_alt_deg", "width_deg", "height_deg"),
    *("visible", "sight", "block_m", "clear_m", "hidden_m", "heights"),
)

ALIGNMENTS_FIELDS = (
    *("camera", "camera_id", "subject", "subject_id", "body", "night", "t_utc", "t_local", "tz"),
    *("t_start", "start_loc", "t_end", "end_loc", "minutes"),
    *("az_deg", "alt_deg", "semi_deg", "bearing_deg", "mag_deg", "decl_deg", "d_az_deg", "top_alt_deg", "d_alt_deg", "place"),
    *("ground_deg", "sight", "heights", "sun_deg", "sky", "moon_deg", "moon_az", "moon_lit", "moon_sep", "moon_side", "moon_mag"),
    *("core_alt", "tilt_deg", "lean", "apex_deg", "apex_az", "apex_lon", "dist_m"),
)

UNMET_FIELDS = ("camera", "camera_id", "subject", "subject_id", "body", "bearing_deg", "az_from", "az_to", "reason")

SKY_POSITIONS_FIELDS = (
    *("site", "site_id", "body", "t_utc", "t_local", "tz", "az_deg", "alt_deg", "semi_deg", "mag_deg", "ground_deg"),
    *("sun_deg", "sky", "moon_deg", "moon_lit", "moon_sep", "core_alt", "tilt_deg", "lean", "apex_deg", "apex_az", "apex_lon"),
)

PROFILE_FIELDS = ("site", "site_id", "az_deg", "ground_deg", "dist_m", "z_m", "reach_m")

SKYLINE_FIELDS = ("site", "site_id", "cam_z_m")

_BODY_OVER_STANDPOINT = (
    *("body", "night", "t_utc", "t_local", "tz", "az_deg", "alt_deg", "d_alt_deg", "place", "ground_deg"),
    *("tilt_deg", "lean", "apex_deg", "sun_deg", "moon_deg", "moon_lit"),
)

STANDPOINTS_FIELDS = (
    *("subject", "subject_id", "path", "path_id", "camera", "chain_m", "bearing_deg", "target_deg", "miss_deg", "err_deg", "mag_deg"),
    *("dist_m", "top_alt_deg", "visible", "sight", "clear_m", "allowed", "heights", *_BODY_OVER_STANDPOINT),
)

STRETCHES_FIELDS = (
    *("subject", "subject_id", "path", "path_id", "from_m", "to_m", "bearing_min", "bearing_max", "target_deg", "allowed"),
    *("body", "night", "t_utc", "t_local", "tz"),
)

ZONES_FIELDS = ("subject", "subject_id", "target_deg", "allowed", "body", "night", "t_utc", "t_local", "tz")

_WINDOW_FIELDS = (
    *("t_start", "start_loc", "t_end", "end_loc", "minutes", "t_utc", "t_local", "az_deg", "alt_deg", "az_start", "az_end"),
    *("tilt_start", "tilt_deg", "tilt_end", "lean", "apex_deg", "apex_az", "moon_lit", "moon_mag", "glow", "glow_town"),
)

NIGHT_WINDOWS_FIELDS = (
    *("site", "site_id", "body", "night", "tz", "sunset", "sunset_loc", "t_dusk", "dusk_loc", "t_dawn", "dawn_loc", "sunrise", "srise_loc"),
    *("moonrise", "mrise_loc", "moonset", "mset_loc", *_WINDOW_FIELDS, "dark_min", "clear_min", "reason"),
)

WINDOWS_FIELDS = ("site", "site_id", "body", "night", "tz", *_WINDOW_FIELDS)

MONTHS_FIELDS = ("site", "site_id", "month", "nights", "hours", "best_night", "best_min", "first_night", "last_night", "new_moon")

FRAMING_FIELDS = (
    *("camera", "camera_id", "subject", "subject_id", "dist_m", "bearing_deg", "mag_deg", "decl_deg"),
    *("base_alt_deg", "top_alt_deg", "width_deg", "height_deg", "sight", "heights"),
    *("body", "t_utc", "t_local", "tz", "az_deg", "alt_deg", "semi_deg", "d_az_deg", "d_alt_deg", "place"),
    *("focal_mm", "fov_w_deg", "fov_h_deg", "aim_az", "aim_alt", "left_az", "right_az"),
    *("subj_fits", "body_fits", "fits", "fit_mm", "subj_h_pct", "subj_h_px", "subj_w_px", "pano_rows", "pano_cols", "pano_shots"),
    *("fast_dec", "rule500_s", "npf_s", "shutter_s", "trail_px"),
    *("hyper_m", "focus_m", "blur_px", "near_m", "far_m", "star_m", "sharp_m", "focus", "disc_w_m", "disc_h_m"),
)

HEADS_FIELDS = (
    *("camera", "camera_id", "subject", "subject_id", "body", "t_utc", "t_local", "tz"),
    *("pano_row", "pano_col", "head_az", "head_alt"),
)

SHADOW_TRACK_FIELDS = (
    *("subject", "subject_id", "body", "t_utc", "t_local", "tz", "az_deg", "alt_deg", "bearing_deg", "mag_deg", "dist_m", "z_m"),
    *("visible", "sight", "order", "allowed", "heights"),
)

TRACK_LINES_FIELDS = ("subject", "subject_id", "body", "t_start", "start_loc", "t_end", "end_loc", "tz")

# algorithm id -> output -> the fields of its rows, before those that are kept of an input
FIELDS_OF_OUTPUTS = {
    "sightlines": {"OUTPUT": SIGHTLINES_FIELDS},
    "alignments": {"OUTPUT": ALIGNMENTS_FIELDS, "UNMET": UNMET_FIELDS},
    "night_windows": {"OUTPUT": NIGHT_WINDOWS_FIELDS, "WINDOWS": WINDOWS_FIELDS, "MONTHS": MONTHS_FIELDS},
    "sky_positions": {"OUTPUT": SKY_POSITIONS_FIELDS},
    "standpoints": {"POINTS": STANDPOINTS_FIELDS, "STRETCHES": STRETCHES_FIELDS, "ZONES": ZONES_FIELDS},
    "shadow_track": {"OUTPUT": SHADOW_TRACK_FIELDS, "LINES": TRACK_LINES_FIELDS},
    "terrain_horizon": {"PROFILE": PROFILE_FIELDS, "SKYLINE": SKYLINE_FIELDS},
    "framing": {"OUTPUT": FRAMING_FIELDS, "HEADS": HEADS_FIELDS},
}


SHORT = 10  # letters that a Shapefile keeps of a name


def free_name(name, taken):
    """The name, or the name with a number, cut where its end would not be seen."""
    free, number = name, 1
    while short(free) in taken:
        number += 1
        tail = f"_{number}"
        free = name + tail if short(name + tail) not in taken else name[: SHORT - len(tail)] + tail
    return free


def short(name):
    """What is left of a name where names are short."""
    return name[:SHORT].lower()
