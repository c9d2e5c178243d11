"""Sightlines: what the line from a camera to its subject amounts to in metres and degrees.

Arrays of cameras (C,) and subjects (S,) and the pairs of them (P,) go in; a table of columns (P,) by their field names comes out.
Heights are in metres above sea level or the ellipsoid (which of the two does not matter, if it is the same for both points).
"""

from dataclasses import dataclass, fields

import numpy as np

from ..ground.curvature import REFRACTION_K, altitude_deg, radius_in_azimuth
from ..lens.angular_size import angular_height_deg, angular_width_deg
from ..words import Sentence

FROM_DEM, FROM_Z, LEVEL = "dem", "z", "level"  # where the heights of a pair come from
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
    dem_m : array_like
        Ground by an elevation model, in its own datum; nan where it does not reach. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    lens_m: np.ndarray = 1.5
    z_m: np.ndarray = np.nan
    dem_m: np.ndarray = np.nan

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
    z_m, dem_m : array_like
        Ground, as for `Cameras`. [m]
    """

    lon_deg: np.ndarray
    lat_deg: np.ndarray
    height_m: np.ndarray = 0.0
    base_m: np.ndarray = 0.0
    width_m: np.ndarray = 0.0
    face_from_deg: np.ndarray = np.nan
    face_to_deg: np.ndarray = np.nan
    z_m: np.ndarray = np.nan
    dem_m: np.ndarray = np.nan

    def __post_init__(self):
        _fill(self, "subjects", ("height_m", "base_m"))
        half = np.isnan(self.face_from_deg) != np.isnan(self.face_to_deg)
        if half.any():
            raise ValueError(
                Sentence(
                    "{n} of {total} subjects have only one of the two bearings between which they may be seen: give both, or leave both "
                    "blank.",
                    n=int(half.sum()),
                    total=half.size,
                )
            )


def sightlines(cameras, subjects, pairs, refraction_k=REFRACTION_K, relief=None, progress=None):
    """Measure sightlines.

    Parameters
    ----------
    cameras : Cameras
    subjects : Subjects
    pairs : PairBlock
        P pairs of them.
    refraction_k : float
        Coefficient of terrestrial refraction.
    relief : Relief, optional
        The ground between them, by the model that `dem_m` comes from.
    progress : callable, optional
        Takes the part of the lines that is followed over the ground, 0 to 1; False from it ends the work, and the result is None.

    Returns
    -------
    table : dict of str to ndarray, (Q,)
        Columns by field name: `dist_m bearing_deg back_deg cam_z_m base_z_m top_z_m base_alt_deg top_alt_deg width_deg height_deg
        heights`, and `camera_index`, `subject_index`. With `heights` `level` all `*_z_m` are nan. With a relief also
        `visible sight block_m clear_m hidden_m`, None and nan but where `heights` is `dem`.
    left_out : dict of str to int
        `NOT_FACING`: P - Q pairs whose bearing is not among those of the subject.

    Notes
    -----
    The heights of a pair have one source: the elevation model if it reaches both ends, else those of the points if both are finite
    and not both 0, else the same ground height for both. Width is horizontal, so an angle of bearing.
    """
    facing = is_facing(pairs.bearing_deg, subjects.face_from_deg[pairs.subject], subjects.face_to_deg[pairs.subject])
    camera, subject = pairs.camera[facing], pairs.subject[facing]
    dist, bearing = pairs.dist_m[facing], pairs.bearing_deg[facing]
    heights, camera_ground, subject_ground = _grounds(cameras, subjects, camera, subject)
    lens_z = camera_ground + cameras.lens_m[camera]
    base_z = subject_ground + subjects.base_m[subject]
    top_z = base_z + subjects.height_m[subject]
    radius = radius_in_azimuth(cameras.lat_deg[camera], bearing)
    base_alt, top_alt = (altitude_deg(dist, z - lens_z, radius, refraction_k, lens_z) for z in (base_z, top_z))
    table = {
        "camera_index": camera,
        "subject_index": subject,
        "dist_m": dist,
        "bearing_deg": bearing,
        "back_deg": pairs.back_deg[facing],
        **{name: np.where(heights == LEVEL, np.nan, z) for name, z in (("cam_z_m", lens_z), ("base_z_m", base_z), ("top_z_m", top_z))},
        "base_alt_deg": base_alt,
        "top_alt_deg": top_alt,
        "width_deg": angular_width_deg(subjects.width_m[subject], dist),
        "height_deg": angular_height_deg(base_alt, top_alt),
        "heights": heights,
    }
    if relief is not None:
        ends = (cameras.lon_deg[camera], cameras.lat_deg[camera], lens_z, subjects.lon_deg[subject], subjects.lat_deg[subject])
        seen = _seen(relief, heights == FROM_DEM, *ends, base_z, top_z, progress=progress)
        if seen is None:
            return None
        table.update(seen)
    skipped = int(facing.size - facing.sum())
    return table, {NOT_FACING: skipped} if skipped else {}


def _grounds(cameras, subjects, camera, subject):
    """Where the heights of pairs come from, and the ground at both ends; 0 where it is taken as level."""
    dem, z = ((getattr(cameras, name)[camera], getattr(subjects, name)[subject]) for name in ("dem_m", "z_m"))
    from_dem = np.isfinite(dem[0]) & np.isfinite(dem[1])
    from_z = np.isfinite(z[0]) & np.isfinite(z[1]) & ((z[0] != 0.0) | (z[1] != 0.0))
    heights = np.where(from_dem, FROM_DEM, np.where(from_z, FROM_Z, LEVEL)).astype(object)
    return (heights, *(np.where(from_dem, dem[end], np.where(from_z, z[end], 0.0)) for end in (0, 1)))


def _seen(relief, known, *ends, progress):
    """Columns that tell what the ground lets the lens see, where the heights at both ends are known by it; None when told not to go on."""
    columns = {name: np.full(known.shape, np.nan) for name in ("block_m", "clear_m", "hidden_m")}
    columns.update({name: np.full(known.shape, None, dtype=object) for name in ("visible", "sight")})
    seen = relief.lines_of_sight(*(end[known] for end in ends), progress=progress)
    if seen is None:
        return None
    for name, column in columns.items():
        column[known] = getattr(seen, name)
    return columns


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
    lens_dem, lens_z = (ground[camera] + cameras.lens_m[camera] for ground in (cameras.dem_m, cameras.z_m))
    return {
        "lon_deg": cameras.lon_deg[camera],
        "lat_deg": cameras.lat_deg[camera],
        "height_m": np.where(np.isfinite(lens_dem), lens_dem, np.where(np.isfinite(lens_z), lens_z, 0.0)),
        "lens_dem_m": lens_dem,
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
                Sentence(
                    "{n} of {total} {what} have no {name} of 0 or more: it is measured upward. Correct them, or leave them out.",
                    n=int(bad.sum()),
                    total=bad.size,
                    what=what,
                    name=name,
                )
            )
