"""Panoramas: in how many frames a part of the view is taken, and where the head of the tripod points for each.

The view is cut into cells of azimuth and altitude, in rows of equal height; each frame is aimed at the middle of its cell and reaches
beyond it by half the overlap and more. Angles in degrees.
"""

from dataclasses import dataclass

import numpy as np

WIDEST_HALF_STEP_DEG = 75.0  # no frame is asked to hold more to either side
ROUNDING = 1e-9  # of a step


@dataclass(frozen=True)
class Mosaic:
    """Panoramas of P views.

    Attributes
    ----------
    rows : ndarray of int, shape (P,)
    columns : ndarray of int, shape (P, R)
        Frames in each row, from the lowest up; 0 beyond the last row.
    left_az_deg, width_deg, low_alt_deg, height_deg : ndarray, shape (P,)
        What is covered. [deg]
    """

    rows: np.ndarray
    columns: np.ndarray
    left_az_deg: np.ndarray
    width_deg: np.ndarray
    low_alt_deg: np.ndarray
    height_deg: np.ndarray

    @property
    def frames(self):
        """Frames in all, shape (P,)."""
        return self.columns.sum(axis=1)

    def heads(self):
        """Where the head points, frame by frame: rows upward, in each from left to right.

        Returns
        -------
        view, row, column : ndarray of int, shape (F,)
            Index of the view; row and column are numbered from 1.
        az_deg, alt_deg : ndarray, shape (F,)
            [deg]
        """
        view, row = np.nonzero(self.columns)
        count = self.columns[view, row]
        frame = np.repeat(np.arange(count.size), count)
        column = np.arange(frame.size) - np.repeat(np.cumsum(count) - count, count)
        view, row, count = view[frame], row[frame], count[frame]
        az = self.left_az_deg[view] + (column + 0.5) * self.width_deg[view] / count
        alt = self.low_alt_deg[view] + (row + 0.5) * self.height_deg[view] / self.rows[view]
        return view, row + 1, column + 1, az % 360.0, alt


def mosaic(frame, left_az_deg, width_deg, low_alt_deg, high_alt_deg, overlap):
    """Rows and columns for views that are each bounded by azimuths and altitudes.

    Parameters
    ----------
    frame : Frame
    left_az_deg, width_deg : array_like, shape (P,)
        Azimuth of the left side, and how far the view runs to the right of it, up to 360. [deg]
    low_alt_deg, high_alt_deg : array_like, shape (P,)
        Within ±90. [deg]
    overlap : float
        Part of a frame that its neighbour holds too, over 0 and under 1.

    Returns
    -------
    Mosaic

    Notes
    -----
    The step from row to row is field of view x (1 - overlap), and within a row at altitude h that over cos h: common practice, no source.
    Two things that the rule forgets make the step shorter where they must: a tilted frame is narrower, in azimuth, on its side toward the
    horizon (half of the overlap is left there), and its upper and lower edges, straight in the picture, bend toward the horizon at the
    corners (the cell's own corners stay inside).
    """
    left, width, low, high = (
        np.atleast_1d(np.asarray(values, dtype=float)) for values in np.broadcast_arrays(left_az_deg, width_deg, low_alt_deg, high_alt_deg)
    )
    step_deg = frame.fov_h_deg * (1.0 - overlap)
    rows = np.maximum(np.ceil((high - low) / step_deg - ROUNDING), 1.0).astype(int)
    row = np.arange(rows.max(initial=1))
    cell_deg = ((high - low) / rows)[:, np.newaxis]
    bottom_deg = low[:, np.newaxis] + row * cell_deg
    half_step_deg = _half_step_deg(frame, bottom_deg, bottom_deg + cell_deg, overlap)
    columns = np.maximum(np.ceil(width[:, np.newaxis] / (2.0 * half_step_deg) - ROUNDING), 1.0)
    columns = np.where(row < rows[:, np.newaxis], columns, 0.0).astype(int)
    return Mosaic(rows, columns, left, width, low, high - low)


def _half_step_deg(frame, bottom_deg, top_deg, overlap):
    """Half the step in azimuth of frames aimed at the middle of cells between two altitudes."""
    aim = np.radians(np.clip((bottom_deg + top_deg) / 2.0, -90.0, 90.0))
    bottom, top = (np.radians(np.clip(deg, -90.0, 90.0)) for deg in (bottom_deg, top_deg))
    half_fov = np.radians(frame.fov_h_deg / 2.0)
    with np.errstate(divide="ignore", invalid="ignore"):
        by_rule = np.radians(frame.fov_w_deg * (1.0 - overlap) / 2.0) / np.maximum(np.cos(aim), 0.0)
        steps = [by_rule, (1.0 - overlap / 2.0) * _half_azimuth(frame, aim, np.where(aim > 0.0, bottom, top))]
        for altitude, edge in ((top, aim + half_fov), (-bottom, half_fov - aim)):
            # an edge that stands highest in its middle, under the zenith: at an azimuth d from there tan(alt) = tan(edge) cos d
            bends = (altitude > 0.0) & (edge < np.pi / 2.0)
            steps.append(np.where(bends, np.arccos(np.clip(np.tan(altitude) / np.tan(edge), 0.0, 1.0)), np.inf))
    return np.degrees(np.minimum(np.min(steps, axis=0), np.radians(WIDEST_HALF_STEP_DEG)))


def _half_azimuth(frame, aim, altitude):
    """Azimuth from the middle of a frame to its side, at an altitude. [rad]."""
    lean = np.tan(altitude) * frame.half_width * np.sin(aim) / np.hypot(1.0, frame.half_width * np.cos(aim))
    return np.arctan(frame.half_width * np.cos(aim)) + np.arcsin(np.clip(lean, -1.0, 1.0))
