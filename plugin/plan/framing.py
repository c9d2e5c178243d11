"""Framing: what a lens makes of a sightline and of a body in the sky, one row a picture.

Angles in degrees. A subject is upright and stands square to its sightline. A body is wanted in a picture only while it is above the
level horizon: where it is down, the frame is aimed at the subject.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..lens import focus, panorama, shutter
from ..lens.angular_size import distance_of_width_m
from ..lens.frame import FULL_FRAME_COC_MM, SENSORS, Frame
from ..lens.projection import Extent, around, centred_aim, directions, extent, in_camera
from ..sky.horizontal import in_turn_deg
from .alignments import place_against
from .azimuths import offset_deg

SUBJECT, BODY, BETWEEN = "subject", "body", "between"  # what the camera is aimed at
PAIR, ARCH = "pair", "arch"  # what a panorama is to hold
ONCE, TWICE = "once", "twice"  # how often to focus
SUBJECT_SHAPES, BODY_SHAPES = slice(0, 4), slice(4, 5)  # of what is to be in the picture
SIDES = ((np.minimum, -1.0), (np.maximum, 1.0))
BAND_HALF_WIDTH_DEG = 10.0  # of the bright band on either side of the plane, about; common practice, no source


@dataclass(frozen=True)
class Shooting:
    """How the pictures are taken.

    Attributes
    ----------
    frame : Frame
    f_number : float
    shutter_s : float, optional
        The longest by the NPF rule if None. [s]
    coc_mm : float, optional
        Circle of confusion; 0.030 on 24 x 36 mm, by the diagonal on others, if None. [mm]
    star_blur_px : float
        Blur of stars that is still sharp. [px]
    focus_m : float, optional
        Distance focused on; that of the subject if None. [m]
    aim : str
        `SUBJECT`, `BODY` or `BETWEEN`.
    level : bool
        The camera stays level and is aimed in azimuth alone.
    margin : float
        Part of the frame that is kept free on each side.
    panorama : str
        `PAIR` or `ARCH`.
    overlap : float
        Part of a frame that its neighbour holds too.
    """

    frame: Frame
    f_number: float = 2.8
    shutter_s: Optional[float] = None
    coc_mm: Optional[float] = None
    star_blur_px: float = 2.0
    focus_m: Optional[float] = None
    aim: str = BETWEEN
    level: bool = False
    margin: float = 0.05
    panorama: str = PAIR
    overlap: float = 0.3


def frame_of(preset, focal_mm, width_mm=None, height_mm=None, pixels_w=None, portrait=False):
    """The frame of a lens on a sensor.

    Parameters
    ----------
    preset : str
        One of `SENSORS`.
    focal_mm : float
    width_mm, height_mm, pixels_w : float, optional
        In place of those of the preset; the sensor held level.
    portrait : bool
        Held upright.

    Returns
    -------
    Frame
    """
    given = (width_mm, height_mm, pixels_w)
    frame = Frame(focal_mm, *(usual if own is None else own for own, usual in zip(given, SENSORS[preset])))
    return frame.upright if portrait else frame


def framing(lines, body, lat_deg, shooting):
    """Frame pictures.

    Parameters
    ----------
    lines : dict of str to ndarray, shape (P,)
        Sightlines: `dist_m bearing_deg base_alt_deg top_alt_deg width_deg`. Where `base_alt_deg` is nan only the top is known.
    body : dict of str to ndarray, shape (P,)
        `az_deg alt_deg semi_deg apex_az apex_deg`; nan where there is no body.
    lat_deg : ndarray, shape (P,)
        Latitude of the cameras. [deg]
    shooting : Shooting

    Returns
    -------
    table : dict of str to ndarray, shape (P,)
        Columns by field name.
    mosaic : Mosaic
        The panoramas of P views.
    """
    frame, has_body = shooting.frame, np.isfinite(body["az_deg"])
    radius_deg = np.nan_to_num(body["semi_deg"])
    is_up = has_body & (np.nan_to_num(body["alt_deg"], nan=-90.0) + radius_deg >= 0.0)
    shapes, radii = _shapes(lines, body, np.where(is_up, radius_deg, 0.0), is_up)
    aim_az, aim_alt = _aim(lines, body, is_up, shapes, radii, shooting)
    extents = extent(in_camera(shapes, aim_az, aim_alt), radii)
    of_subject, of_body, of_both = (
        around(Extent(*(side[some] for side in extents))) for some in (SUBJECT_SHAPES, BODY_SHAPES, slice(None))
    )
    subject_fits = frame.holds(of_subject, shooting.margin)
    body_fits = frame.holds(of_body, shooting.margin) & is_up
    fits = subject_fits & (body_fits | ~has_body)
    view = _view(lines, body, is_up, shooting.panorama)
    if shooting.panorama == PAIR:  # what fits needs one frame, aimed as it is
        view = [np.where(fits, single, wide) for single, wide in zip((aim_az, 0.0, aim_alt, aim_alt), view)]
    mosaic = panorama.mosaic(frame, *view, shooting.overlap)
    half_az = frame.half_azimuth_deg(aim_alt)
    table = {
        "d_az_deg": offset_deg(body["az_deg"], lines["bearing_deg"]),
        "d_alt_deg": body["alt_deg"] - lines["top_alt_deg"],
        "place": _place(lines, body, has_body),
        **{name: np.full(aim_az.shape, getattr(frame, name)) for name in ("focal_mm", "fov_w_deg", "fov_h_deg")},
        "aim_az": aim_az,
        "aim_alt": aim_alt,
        "left_az": in_turn_deg(aim_az - half_az),
        "right_az": in_turn_deg(aim_az + half_az),
        "subj_fits": subject_fits.astype(object),
        "body_fits": np.where(has_body, body_fits, None),
        "fits": fits.astype(object),
        "fit_mm": np.where(is_up | ~has_body, frame.longest_focal_mm(of_both, shooting.margin), np.nan),
        **_sizes(of_subject, frame, np.isfinite(lines["base_alt_deg"])),
        "pano_rows": mosaic.rows,
        "pano_cols": mosaic.columns.max(axis=1),
        "pano_shots": mosaic.frames,
        **_stars(aim_az, aim_alt, lat_deg, shooting),
        **_sharpness(lines["dist_m"], shooting),
        **_disc_distances(lines, body["semi_deg"]),
    }
    return table, mosaic


def _shapes(lines, body, radius_deg, is_up):
    """Corners of the subject and the body, shape (3, 5, P), and their radii, shape (5, P); the subject again where no body is up."""
    bearing, half_width = np.radians(lines["bearing_deg"]), np.tan(np.radians(lines["width_deg"]) / 2.0)
    foot_alt = np.where(np.isfinite(lines["base_alt_deg"]), lines["base_alt_deg"], lines["top_alt_deg"])
    corners = [
        np.stack([np.sin(bearing) + side * np.cos(bearing), np.cos(bearing) - side * np.sin(bearing), np.tan(np.radians(alt))])
        for alt in (foot_alt, lines["top_alt_deg"])
        for side in (-half_width, half_width)
    ]
    sky = np.where(is_up, directions(body["az_deg"], body["alt_deg"]), corners[-1])
    radii = np.zeros((len(corners) + 1, len(bearing)))
    radii[-1] = radius_deg
    return np.stack([*corners, sky], axis=1), radii


def _place(lines, body, has_body):
    """Where the body stands against the subject; without its foot that is known only above its top."""
    place = place_against(body["alt_deg"], lines["base_alt_deg"], lines["top_alt_deg"])
    return np.where(has_body & (np.isfinite(lines["base_alt_deg"]) | (place == "above")), place, None)


def _aim(lines, body, is_up, shapes, radii, shooting):
    """Azimuth and altitude at which the camera is aimed."""
    d_az = np.where(is_up, offset_deg(body["az_deg"], lines["bearing_deg"]), 0.0)
    middle_alt = np.where(np.isfinite(lines["base_alt_deg"]), (lines["base_alt_deg"] + lines["top_alt_deg"]) / 2.0, lines["top_alt_deg"])
    body_alt = np.where(is_up, body["alt_deg"], middle_alt)
    if shooting.aim == BETWEEN:
        return centred_aim(shapes, radii, lines["bearing_deg"] + d_az / 2.0, (middle_alt + body_alt) / 2.0, shooting.level)
    aim_az, aim_alt = centred_aim(shapes[:, SUBJECT_SHAPES], radii[SUBJECT_SHAPES], lines["bearing_deg"], middle_alt, shooting.level)
    if shooting.aim == BODY:
        aim_az = np.where(is_up, body["az_deg"], aim_az)
        aim_alt = np.where(is_up & (not shooting.level), body["alt_deg"], aim_alt)
    return aim_az, aim_alt


def _view(lines, body, is_up, wanted):
    """What a panorama is to hold: azimuth of its left side, width, lowest and highest altitude."""
    foot_alt = np.where(np.isfinite(lines["base_alt_deg"]), lines["base_alt_deg"], lines["top_alt_deg"])
    low, high, half_width = foot_alt, lines["top_alt_deg"], lines["width_deg"] / 2.0
    if wanted == ARCH:
        middle, half_sky, sky_low, sky_high = _arch(body)
        known = np.isfinite(middle)
    else:
        semi = np.nan_to_num(body["semi_deg"])
        middle, known, sky_low, sky_high = body["az_deg"], is_up, body["alt_deg"] - semi, body["alt_deg"] + semi
        half_sky = _half_azimuth_of_disc(semi, body["alt_deg"])
    offset = np.where(known, offset_deg(middle, lines["bearing_deg"]), 0.0)
    left, right = (np.where(known, edge(side * half_width, offset + side * half_sky), side * half_width) for edge, side in SIDES)
    low, high = np.where(known, np.minimum(low, sky_low), low), np.where(known, np.maximum(high, sky_high), high)
    return lines["bearing_deg"] + left, np.minimum(right - left, 360.0), np.maximum(low, -90.0), np.minimum(high, 90.0)


def _arch(body):
    """Azimuth of the arch's top, azimuths from there to where the band ends on the horizon, lowest and highest altitude of the band."""
    apex = np.radians(body["apex_deg"])
    with np.errstate(divide="ignore", invalid="ignore"):
        slant = np.arcsin(np.clip(np.sin(np.radians(BAND_HALF_WIDTH_DEG)) / np.sin(apex), 0.0, 1.0))
    return body["apex_az"], 90.0 + np.degrees(slant), 0.0, body["apex_deg"] + BAND_HALF_WIDTH_DEG


def _half_azimuth_of_disc(semi_deg, alt_deg):
    """Azimuths from the middle of a disc to its side. [deg]."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.degrees(np.arcsin(np.clip(np.sin(np.radians(semi_deg)) / np.cos(np.radians(alt_deg)), 0.0, 1.0)))


def _sizes(of_subject, frame, has_foot):
    """How large the subject is in the picture; its height is not known without its foot."""
    with np.errstate(invalid="ignore"):
        width, height = of_subject.right - of_subject.left, np.where(has_foot, of_subject.high - of_subject.low, np.nan)
    share = height / (2.0 * frame.half_height)
    sizes = {"subj_h_pct": 100.0 * share, "subj_h_px": height * frame.focal_px, "subj_w_px": width * frame.focal_px}
    return {name: np.where(np.isfinite(size), size, np.nan) for name, size in sizes.items()}


def _stars(aim_az, aim_alt, lat_deg, shooting):
    """How long the shutter may stay open, and what trails it leaves."""
    frame = shooting.frame
    fastest_deg = shutter.fastest_declination_deg(frame, aim_az, aim_alt, lat_deg)
    npf_s = shutter.rule_npf_s(frame.focal_mm, shooting.f_number, 1000.0 * frame.pixel_mm, fastest_deg)
    shutter_s = npf_s if shooting.shutter_s is None else np.full(npf_s.shape, shooting.shutter_s)
    return {
        "fast_dec": fastest_deg,
        "rule500_s": np.full(npf_s.shape, shutter.rule_of_500_s(frame.focal_mm, frame.crop)),
        "npf_s": npf_s,
        "shutter_s": shutter_s,
        "trail_px": shutter.trail_px(frame, aim_az, aim_alt, lat_deg, shutter_s),
    }


def _sharpness(dist_m, shooting):
    """Where to focus, and what is sharp then: the stars rule, and the subject is the nearest that must be sharp."""
    frame, f_number = shooting.frame, shooting.f_number
    coc_mm = FULL_FRAME_COC_MM / frame.crop if shooting.coc_mm is None else shooting.coc_mm
    focus_m = dist_m if shooting.focus_m is None else np.full(dist_m.shape, shooting.focus_m)
    near_m, far_m = focus.sharp_limits_m(frame.focal_mm, f_number, coc_mm, focus_m)
    star_m = focus.hyperfocal_m(frame.focal_mm, f_number, shooting.star_blur_px * frame.pixel_mm)
    sharp_m, _ = focus.sharp_limits_m(frame.focal_mm, f_number, coc_mm, star_m)
    everywhere = np.ones(dist_m.shape)
    return {
        "hyper_m": focus.hyperfocal_m(frame.focal_mm, f_number, coc_mm) * everywhere,
        "focus_m": focus_m,
        "blur_px": focus.star_blur_mm(frame.focal_mm, f_number, focus_m) / frame.pixel_mm,
        "near_m": near_m,
        "far_m": np.where(np.isfinite(far_m), far_m, np.nan),
        "star_m": star_m * everywhere,
        "sharp_m": sharp_m * everywhere,
        "focus": np.where(dist_m >= sharp_m, ONCE, TWICE).astype(object),
    }


def _disc_distances(lines, semi_deg):
    """From where the disc of Sun or Moon is as wide, and as high, as the subject."""
    width_m = 2.0 * lines["dist_m"] * np.tan(np.radians(lines["width_deg"]) / 2.0)
    height_m = lines["dist_m"] * (np.tan(np.radians(lines["top_alt_deg"])) - np.tan(np.radians(lines["base_alt_deg"])))
    far = {"disc_w_m": width_m, "disc_h_m": height_m}
    return {name: np.where(size_m > 0.0, distance_of_width_m(size_m, 2.0 * semi_deg), np.nan) for name, size_m in far.items()}
