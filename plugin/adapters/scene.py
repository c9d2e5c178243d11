"""Subjects, and the paths or the ground from which they are to be photographed, as the layers and the parameters about them say."""

from dataclasses import replace

from ..plan.paths import Paths
from .areas import Access
from .crs import lon_lat
from .lines import read_lines
from .pairing import CAMERA_MEASURES, SUBJECT_MEASURES, measures_of, places_of
from .parameters import fields_of, number_of, text_of
from .points import read_points
from .relief import Ground
from .translation import tr
from .zones import zones_of_sites


class Scene:
    """What a run is about.

    Attributes
    ----------
    subjects : Points
    places : plan.sightlines.Subjects
        The subjects as the pure folders take them.
    zone_names, zone_index
        Time zone of each subject.
    ground : Ground
    """

    def __init__(self, algorithm, parameters, context, feedback, measures=SUBJECT_MEASURES):
        self._algorithm, self._parameters, self._context, self._feedback = algorithm, parameters, context, feedback
        source = algorithm.parameterAsSource(parameters, "SUBJECTS", context)
        self.crs = source.sourceCrs()
        self.subjects = read_points(
            source,
            context,
            algorithm.createExpressionContext(parameters, context, source),
            feedback,
            "subject",
            text_of(parameters, "SUBJECT_NAME"),
            measures=measures_of(algorithm, parameters, measures),
        )
        self.subjects.log("SUBJECTS", feedback)
        self.places = places_of(self.subjects)
        self.zone_names, self.zone_index = zones_of_sites(parameters, self.subjects.lon_deg, self.subjects.lat_deg, feedback)
        self.ground = Ground(algorithm, parameters, context)
        self.max_distance_m = number_of(algorithm, parameters, "MAX_DISTANCE")

    def read_paths(self):
        """Read the layer PATHS, and where one may stand on it: attributes `lines`, `paths`, `access`."""
        source = self._algorithm.parameterAsSource(self._parameters, "PATHS", self._context)
        self.lines = read_lines(
            source,
            self._context,
            self._algorithm.createExpressionContext(self._parameters, self._context, source),
            self._feedback,
            "path",
            text_of(self._parameters, "PATH_NAME"),
            measures_of(self._algorithm, self._parameters, CAMERA_MEASURES),
            fields_of(self._parameters, "KEEP_FIELDS"),
        )
        self.lines.log("PATHS", self._feedback)
        lines, transform_context = self.lines, self._context.transformContext()

        def to_wgs84(x, y):
            return lon_lat(x, y, lines.crs, transform_context)

        self.paths = Paths(lines.x, lines.y, lines.part_offsets, lines.path_of_part, to_wgs84, lines.z_m)
        self.access = Access(self._algorithm, self._parameters, self._context, self._feedback, lines.crs)

    def read_ground(self, go_on, skylines_m=0.0):
        """Read the elevation model, if one is given, as far as cameras may stand and, from there, as their skylines reach."""
        if not self.ground.given:
            return
        subjects = self.subjects
        self.ground.extent.want_around(subjects.lon_deg, subjects.lat_deg, self.max_distance_m + skylines_m)
        self.ground.read(go_on)
        if not self.ground.stopped:
            dem_m = self.ground.under("SUBJECTS", subjects.lon_deg, subjects.lat_deg, self._feedback)
            self.places = replace(self.places, dem_m=dem_m)

    def names(self, subject, path=None):
        """The columns that tell who is who."""
        columns = {"subject": self.subjects.name[subject], "subject_id": self.subjects.fid[subject]}
        if path is not None:
            columns.update(path=self.lines.name[path], path_id=self.lines.fid[path])
        return columns

    def nobody(self):
        """Why there is nothing to look for, or None."""
        if not len(self.subjects):
            return tr("there is no subject that can be used")
        if not len(self.lines):
            return tr("there is no path that can be used")
        return None
