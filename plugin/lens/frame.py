"""The frame: what a lens and a sensor take in.

Lengths on the sensor in millimetres, angles in degrees. A frame is as the camera is held: its width lies level, also upright. Lenses are
rectilinear; a fisheye takes in more.
"""

from dataclasses import dataclass

import numpy as np

from ..words import Sentence

FULL_FRAME_MM = (36.0, 24.0)  # what a crop factor is reckoned from
FULL_FRAME_DIAGONAL_MM = float(np.hypot(*FULL_FRAME_MM))
FULL_FRAME_COC_MM = 0.030  # circle of confusion; common practice, no source
# id -> width, height [mm] and pixels along the width, of sensors as they are common; of no maker
SENSORS = {
    "full_frame": (36.0, 24.0, 6000),
    "crop_1_5": (24.0, 16.0, 6000),
    "four_thirds": (17.3, 13.0, 5200),
    "medium": (44.0, 33.0, 8300),
}


@dataclass(frozen=True)
class Frame:
    """A lens before a sensor.

    Attributes
    ----------
    focal_mm : float
        Focal length. [mm]
    width_mm, height_mm : float
        Of the sensor, as the camera is held. [mm]
    pixels_w : float
        Along the width.
    """

    focal_mm: float
    width_mm: float
    height_mm: float
    pixels_w: float

    def __post_init__(self):
        for name, value in vars(self).items():
            if not (np.isfinite(value) and value > 0.0):
                raise ValueError(Sentence("The frame's {name} is {value}: give a number greater than 0.", name=name, value=value))

    @property
    def upright(self):
        """The same camera, turned by a right angle."""
        return Frame(self.focal_mm, self.height_mm, self.width_mm, self.pixels_h)

    @property
    def pixels_h(self):
        """Pixels along the height; pixels are square."""
        return self.pixels_w * self.height_mm / self.width_mm

    @property
    def pixel_mm(self):
        """Spacing of the pixels. [mm]."""
        return self.width_mm / self.pixels_w

    @property
    def focal_px(self):
        """Focal length in pixels: what turns lengths in the picture at distance 1 into pixels."""
        return self.focal_mm / self.pixel_mm

    @property
    def half_width(self):
        """Half the width of the picture at distance 1."""
        return self.width_mm / self.focal_mm / 2.0

    @property
    def half_height(self):
        """Half the height of the picture at distance 1."""
        return self.height_mm / self.focal_mm / 2.0

    @property
    def crop(self):
        """Crop factor, by the diagonals."""
        return FULL_FRAME_DIAGONAL_MM / float(np.hypot(self.width_mm, self.height_mm))

    @property
    def fov_w_deg(self):
        """Field of view across the middle. [deg]."""
        return field_of_view_deg(self.width_mm, self.focal_mm)

    @property
    def fov_h_deg(self):
        """Field of view from bottom to top. [deg]."""
        return field_of_view_deg(self.height_mm, self.focal_mm)

    def holds(self, extent, margin=0.0):
        """Whether shapes lie within the frame.

        Parameters
        ----------
        extent : Extent
            Of the shapes, in the picture at distance 1.
        margin : float
            Part of the width and of the height that is kept free on each side, 0 to under 0.5.

        Returns
        -------
        ndarray of bool
        """
        half_width, half_height = (half * (1.0 - 2.0 * margin) for half in (self.half_width, self.half_height))
        across = (extent.left >= -half_width) & (extent.right <= half_width)
        return across & (extent.low >= -half_height) & (extent.high <= half_height)

    def longest_focal_mm(self, extent, margin=0.0):
        """Focal length at which shapes would just fit this sensor, aimed as it is; nan where none does. [mm]."""
        far_x = np.maximum(np.abs(extent.left), np.abs(extent.right))
        far_y = np.maximum(np.abs(extent.low), np.abs(extent.high))
        with np.errstate(divide="ignore"):
            focal_mm = (0.5 - margin) * np.minimum(self.width_mm / far_x, self.height_mm / far_y)
        return np.where(np.isfinite(focal_mm) & (focal_mm > 0.0), focal_mm, np.nan)

    def half_azimuth_deg(self, aim_alt_deg):
        """Azimuths from the middle of the frame to its sides, where it is nearest to the level horizon.

        Parameters
        ----------
        aim_alt_deg : array_like
            Altitude at which the camera is aimed. [deg]

        Returns
        -------
        ndarray
            On the horizon where the frame holds it, else along its lower edge (its upper one, aimed below). [deg]
        """
        alt = np.radians(aim_alt_deg)
        y = np.clip(-np.tan(alt), -self.half_height, self.half_height)
        return np.degrees(np.arctan2(self.half_width, np.cos(alt) - y * np.sin(alt)))


def field_of_view_deg(sensor_mm, focal_mm):
    """Angle that a length of the sensor takes in, the lens focused far. [deg]."""
    return np.degrees(2.0 * np.arctan(np.asarray(sensor_mm, dtype=float) / (2.0 * np.asarray(focal_mm, dtype=float))))
