"""Parking places and drawn walks, as layers say, and the ways found along them."""

import numpy as np

from ..plan.ways import NONE, ON_WALK_M, Walks, Ways, find_ways, walked
from .crs import lon_lat
from .lines import read_lines
from .parameters import blank, text_of
from .points import read_points
from .translation import tr

NOTHING = np.empty(0)


class OnFoot:
    """The ways from cars to places.

    Attributes
    ----------
    ways : plan.ways.Ways
        One a place.
    parking_lon_deg, parking_lat_deg, parking_name, walk_name : ndarray
        Of all parking places and walks. [deg]
    walk_min : ndarray
        One a place; nan where no walk leads there. [min]
    speed_km_h : float
    """

    def __init__(self, algorithm, parameters, context, feedback, lon_deg, lat_deg, speed_km_h):
        self.speed_km_h = speed_km_h
        self.parking_lon_deg, self.parking_lat_deg, self.parking_name = NOTHING, NOTHING, NOTHING.astype(object)
        self.walk_name, self.walks = NOTHING.astype(object), Walks(NOTHING, NOTHING, NOTHING.astype(int), NOTHING.astype(int))
        if not blank(parameters.get("PARKING")):
            self._read_parking(algorithm, parameters, context, feedback)
        if not blank(parameters.get("WALK")):
            self._read_walks(algorithm, parameters, context, feedback)
        places, of_row = np.unique(np.stack([lon_deg, lat_deg]), axis=1, return_inverse=True)
        ways = find_ways(*places, self.parking_lon_deg, self.parking_lat_deg, self.walks)
        self.ways = Ways(*(column[of_row.ravel()] for column in ways))
        self.walk_min = self.ways.length_m * 0.06 / speed_km_h

    def _read_parking(self, algorithm, parameters, context, feedback):
        source = algorithm.parameterAsSource(parameters, "PARKING", context)
        name = text_of(parameters, "PARKING_NAME")
        expressions = algorithm.createExpressionContext(parameters, context, source)
        points = read_points(source, context, expressions, feedback, "parking", name)
        points.log("PARKING", feedback)
        self.parking_lon_deg, self.parking_lat_deg, self.parking_name = points.lon_deg, points.lat_deg, points.name

    def _read_walks(self, algorithm, parameters, context, feedback):
        source = algorithm.parameterAsSource(parameters, "WALK", context)
        name = text_of(parameters, "WALK_NAME")
        lines = read_lines(source, context, algorithm.createExpressionContext(parameters, context, source), feedback, "walk", name)
        lines.log("WALK", feedback)
        part = np.repeat(np.arange(len(lines.path_of_part)), np.diff(lines.part_offsets))
        lon, lat = lon_lat(lines.x, lines.y, lines.crs, context.transformContext())
        self.walk_name, self.walks = lines.name, Walks(lon, lat, part, lines.path_of_part[part])

    def name_of_parking(self, place):
        """Name of the parking of a place, or None."""
        car = self.ways.parking[place]
        return None if car == NONE else self.parking_name[car]

    def name_of_walk(self, place):
        """Name of the walk to a place, or None."""
        walk = self.ways.walk[place]
        return None if walk == NONE else self.walk_name[walk]

    def segments(self, place):
        """The drawn way from the car to a place: pairs of longitudes and latitudes, one a part. [deg]."""
        walk, from_m, to_m = (column[place] for column in (self.ways.walk, self.ways.from_m, self.ways.to_m))
        return [] if walk == NONE else walked(self.walks, int(walk), float(from_m), float(to_m))

    def gaps(self, place):
        """Sentences about ends of the walk that are not where the car or the place is."""
        ways = self.ways
        if ways.off_place_m[place] > ON_WALK_M:
            yield tr("The drawn walk passes {m:,.0f} m from the camera: the rest is counted as the crow flies.").format(
                m=ways.off_place_m[place]
            )
        if ways.off_car_m[place] > ON_WALK_M:
            yield tr("The drawn walk passes {m:,.0f} m from the parking: the rest is counted as the crow flies.").format(
                m=ways.off_car_m[place]
            )
