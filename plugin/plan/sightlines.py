"""Sightlines: what the line from a camera to its subject amounts to in metres and degrees.

Arrays of cameras (C,) and subjects (S,) and the pairs of them (P,) go in; a table of columns (P,) by their field names comes out.
Heights are in metres above sea level or the ellipsoid (which of the two does not matter, if it is the same for both points).
"""

from dataclasses import dataclass, fields

import numpy as np

from ..ground.curvature import REFRACTION_K, altitude_deg, radius_in_azimuth
from ..lens.angular_size import angular_height_deg, angular_width_deg

FROM_Z, LEVEL = "z", "level"  # where the heights of a pair come from
NOT_FACING = "not_facing"  # pairs left out: the camera stands where the subject is of no use


@dataclass(frozen=True)
class Cameras:
    """Where pictures are taken from; arrays (C,), or one number for all.

    Attributes
    ----------
    lon_deg, lat_deg : array_like
        The tripod. [deg]
    lens_m : array_like
        Lens above the ground. [m]
    z_m : array_like
        Ground; nan where unknown. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    lens_m: np.ndarray = 1.5
    z_m: np.ndarray = np.nan

    def __post_init__(self):
        _fill(self, "cameras", ("lens_m",))


@dataclass(frozen=True)
class Subjects:
    """What stands in the foreground; arrays (S,), or one number for all.

    Attributes
    ----------
    lon_deg, lat_deg : array_like
        The middle of the foot. [deg]
    height_m : array_like
        Top above the foot. [m]
    base_m : array_like
        Foot, or sill, above the ground. [m]
    width_m : array_like
        Across the line of sight; nan where unknown. [m]
    face_from_deg, face_to_deg : array_like
        Bearings from camera to subject, clockwise from the first to the second, under which the subject is of use; nan: all. [deg]
    z_m : array_like
        Ground; nan where unknown. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    height_m: np.ndarray = 0.0
    base_m: np.ndarray = 0.0
    width_m: np.ndarray = 0.0
    face_from_deg: np.ndarray = np.nan
    face_to_deg: np.ndarray = np.nan
    z_m: np.ndarray = np.nan

    def __post_init__(self):
        _fill(self, "subjects", ("height_m", "base_m"))
        half = np.isnan(self.face_from_deg) != np.isnan(self.face_to_deg)
        if half.any():
            raise ValueError(
                f"{half.sum()} of {half.size} subjects have only one of the two bearings between which they may be seen: "
                "give both, or leave both blank."
            )


def sightlines(cameras, subjects, pairs, refraction_k=REFRACTION_K):
    """Measure sightlines.

    Parameters
    ----------
    cameras : Cameras
    subjects : Subjects
    pairs : PairBlock
        P pairs of them.
    refraction_k : float
        Coefficient of terrestrial refraction.

    Returns
    -------
    table : dict of str to ndarray, (Q,)
        Columns by field name: `dist_m bearing_deg back_deg cam_z_m base_z_m top_z_m base_alt_deg top_alt_deg width_deg height_deg
        heights`, and `camera_index`, `subject_index`. With `heights` `level` all `*_z_m` are nan.
    left_out : dict of str to int
        `NOT_FACING`: P - Q pairs whose bearing is not among those of the subject.

    Notes
    -----
    The heights of a pair have one source: those of the points if both are finite and not both 0, else the same ground height
    for both. Width is horizontal, so an angle of bearing.
    """
    facing = is_facing(pairs.bearing_deg, subjects.face_from_deg[pairs.subject], subjects.face_to_deg[pairs.subject])
    camera, subject = pairs.camera[facing], pairs.subject[facing]
    dist, bearing = pairs.dist_m[facing], pairs.bearing_deg[facing]
    camera_ground, subject_ground = cameras.z_m[camera], subjects.z_m[subject]
    from_z = np.isfinite(camera_ground) & np.isfinite(subject_ground) & ((camera_ground != 0.0) | (subject_ground != 0.0))
    lens_z = np.where(from_z, camera_ground, 0.0) + cameras.lens_m[camera]
    base_z = np.where(from_z, subject_ground, 0.0) + subjects.base_m[subject]
    top_z = base_z + subjects.height_m[subject]
    radius = radius_in_azimuth(cameras.lat_deg[camera], bearing)
    base_alt, top_alt = (altitude_deg(dist, z - lens_z, radius, refraction_k, lens_z) for z in (base_z, top_z))
    table = {
        "camera_index": camera,
        "subject_index": subject,
        "dist_m": dist,
        "bearing_deg": bearing,
        "back_deg": pairs.back_deg[facing],
        "cam_z_m": np.where(from_z, lens_z, np.nan),
        "base_z_m": np.where(from_z, base_z, np.nan),
        "top_z_m": np.where(from_z, top_z, np.nan),
        "base_alt_deg": base_alt,
        "top_alt_deg": top_alt,
        "width_deg": angular_width_deg(subjects.width_m[subject], dist),
        "height_deg": angular_height_deg(base_alt, top_alt),
        "heights": np.where(from_z, FROM_Z, LEVEL).astype(object),
    }
    skipped = int(facing.size - facing.sum())
    return table, {NOT_FACING: skipped} if skipped else {}


def is_facing(bearing_deg, face_from_deg, face_to_deg):
    """Whether bearings lie in a sector that runs clockwise from one bearing to another, ends included.

    Parameters
    ----------
    bearing_deg : array_like
        [deg]
    face_from_deg, face_to_deg : array_like
        Any turn, as -30 to 30 or 330 to 30; nan for both: every bearing; a whole turn, as 0 to 360: every bearing. [deg]

    Returns
    -------
    ndarray of bool
    """
    start, end = np.asarray(face_from_deg, dtype=float), np.asarray(face_to_deg, dtype=float)
    span = end - start
    every = np.isnan(span) | (np.abs(span) >= 360.0)
    beyond = (np.asarray(bearing_deg, dtype=float) - start) % 360.0
    return every | (beyond <= span % 360.0) | (beyond >= 360.0)  # the remainder of -1e-15 is 360


def pair_arrays(table, cameras, zone_names, zone_index):
    """Sightlines as the search for alignments takes them.

    Parameters
    ----------
    table : dict
        As `sightlines` gives it, Q rows.
    cameras : Cameras
        Those of the table.
    zone_names : sequence of str
    zone_index : array_like of int, (C,)
        Zone of each camera.

    Returns
    -------
    dict
        The arguments of `alignments.Pairs`, arrays (Q,). The lens stands at height 0 where that of its ground is unknown; it
        sets no more than the standard pressure.
    """
    camera = table["camera_index"]
    lens_z = cameras.z_m[camera] + cameras.lens_m[camera]
    return {
        "lon_deg": cameras.lon_deg[camera],
        "lat_deg": cameras.lat_deg[camera],
        "height_m": np.where(np.isfinite(lens_z), lens_z, 0.0),
        "bearing_deg": table["bearing_deg"],
        "base_alt_deg": table["base_alt_deg"],
        "top_alt_deg": table["top_alt_deg"],
        "zone_names": zone_names,
        "zone_index": np.asarray(zone_index)[camera],
    }


def _fill(points, what, from_ground_up):
    """Spread single numbers over all points; refuse what must not lie below the ground."""
    names = [field.name for field in fields(points)]
    arrays = np.broadcast_arrays(*[np.atleast_1d(np.asarray(getattr(points, name), dtype=float)) for name in names])
    for name, values in zip(names, arrays):
        object.__setattr__(points, name, values)
        bad = ~((values >= 0.0) & np.isfinite(values))
        if name in from_ground_up and bad.any():
            raise ValueError(
                f"{bad.sum()} of {bad.size} {what} have no {name} of 0 or more: it is measured upward. Correct them, or leave them out."
            )
