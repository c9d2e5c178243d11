"""Cameras and subjects as two layers and the parameters about them say, and the pairs of them, block by block."""

from collections import Counter
from dataclasses import replace

from ..plan import pairs
from ..plan.sightlines import NOT_FACING, Cameras, Subjects, sightlines
from .parameters import choice_of, fields_of, number_of, text_of
from .points import measures_of, read_points
from .relief import Ground
from .translation import counted, tr

PAIRS_AT_ONCE = 25_000  # drawn and written in well under a second, which is what a person waits for after a cancel

# name of the parameter -> least value
CAMERA_MEASURES = {"CAMERA_HEIGHT": 0.0}
SUBJECT_MEASURES = {"SUBJECT_HEIGHT": 0.0, "SUBJECT_BASE": 0.0, "SUBJECT_WIDTH": 0.0, "FACE_FROM": -360.0, "FACE_TO": -360.0}

REASONS = {
    pairs.COINCIDENT: "with the camera on its subject",
    pairs.TOO_FAR: "farther apart than MAX_DISTANCE",
    pairs.CAMERA_WITHOUT_KEY: "cameras whose PAIR_FIELD is blank",
    pairs.SUBJECT_WITHOUT_KEY: "subjects whose PAIR_FIELD is blank",
    pairs.CAMERA_WITHOUT_PARTNER: "cameras whose PAIR_FIELD no subject has",
    pairs.SUBJECT_WITHOUT_PARTNER: "subjects whose PAIR_FIELD no camera has",
    NOT_FACING: "outside FACE_FROM to FACE_TO",
    pairs.CAMERA_WITHOUT_NEAR_SUBJECT: "cameras with no subject within MAX_DISTANCE",
}

SOURCES = {
    "dem": "pairs from the DEM",
    "z": "pairs from the Z of both points",
    "level": "pairs taken as level, as not both points have a Z",
}


def read_cameras(algorithm, parameters, context, feedback):
    """The layer CAMERAS."""
    keep = fields_of(parameters, "KEEP_FIELDS")
    return _read(algorithm, parameters, context, feedback, "CAMERAS", "CAMERA_NAME", "PAIR_FIELD", CAMERA_MEASURES, "camera", keep)


def read_subjects(algorithm, parameters, context, feedback):
    """The layer SUBJECTS."""
    key = "PAIR_FIELD_SUBJECT" if text_of(parameters, "PAIR_FIELD_SUBJECT") else "PAIR_FIELD"
    return _read(algorithm, parameters, context, feedback, "SUBJECTS", "SUBJECT_NAME", key, SUBJECT_MEASURES, "subject")


def _read(algorithm, parameters, context, feedback, layer, name, key, least, fallback_name, keep=()):
    source = algorithm.parameterAsSource(parameters, layer, context)
    by_field = choice_of(algorithm, parameters, "PAIRING", context) == "by_field"
    read = read_points(
        source,
        context,
        algorithm.createExpressionContext(parameters, context, source),
        feedback,
        fallback_name,
        text_of(parameters, name),
        text_of(parameters, key) if by_field else None,
        measures_of(algorithm, parameters, least),
        keep,
    )
    read.log(layer, feedback)
    return read


def places_of(subjects):
    """Subjects as the pure folders take them, from points with `SUBJECT_MEASURES`."""
    return Subjects(subjects.lon_deg, subjects.lat_deg, *(subjects.measures[name] for name in SUBJECT_MEASURES), subjects.z_m)


class Pairing:
    """The pairs that the parameters ask for, measured block by block, and a count of what was left out.

    Attributes
    ----------
    cameras, subjects : Points
    places : plan.sightlines.Cameras
        The cameras as the pure folders take them.
    ground : Ground
    count : int
        Pairs given so far.
    """

    def __init__(self, algorithm, parameters, context, feedback):
        self.cameras, self.subjects = (read(algorithm, parameters, context, feedback) for read in (read_cameras, read_subjects))
        cameras, subjects = self.cameras, self.subjects
        self.kind = choice_of(algorithm, parameters, "PAIRING", context)
        self.max_distance_m, self.refraction_k = (number_of(algorithm, parameters, name) for name in ("MAX_DISTANCE", "REFRACTION_K"))
        self.places = Cameras(cameras.lon_deg, cameras.lat_deg, cameras.measures["CAMERA_HEIGHT"], cameras.z_m)
        self._subjects = places_of(subjects)
        self.left_out, self.sources, self.count = Counter(), Counter(), 0
        self.ground = Ground(algorithm, parameters, context)

    def read_ground(self, feedback, go_on, skylines=False):
        """Read the elevation model, if one is given, under the sightlines, and around the cameras as far as their skylines."""
        if not self.ground.given:
            return
        cameras, subjects, extent = self.cameras, self.subjects, self.ground.extent
        if skylines:
            extent.want_around(cameras.lon_deg, cameras.lat_deg, self.ground.radius_m)
        extent.want_pairs(cameras, subjects, self._blocks(), go_on)
        self.ground.read(go_on)
        if not self.ground.stopped:
            self.places = replace(self.places, dem_m=self.ground.under("CAMERAS", cameras.lon_deg, cameras.lat_deg, feedback))
            self._subjects = replace(self._subjects, dem_m=self.ground.under("SUBJECTS", subjects.lon_deg, subjects.lat_deg, feedback))

    def measured(self, go_on):
        """Tables of sightlines, with the part of the work before and after each, 0 to 1; no more of them once it was cancelled."""
        if self.ground.stopped:
            return
        before = begin = self.ground.begin
        for block in pairs.cut_up(self._blocks(), PAIRS_AT_ONCE):
            asked = (self.places, self._subjects, block, self.refraction_k, self.ground.relief)
            found = sightlines(*asked, progress=lambda part: go_on())
            if found is None:
                return
            table, not_facing = found
            after = begin + (1.0 - begin) * block.done
            self.left_out.update(block.left_out)
            self.left_out.update(not_facing)
            self.sources.update(table["heights"].tolist())
            self.count += table["camera_index"].size
            yield table, before, after
            before = after

    def _blocks(self):
        return pairs.pair_by(self.kind, self.cameras, self.subjects, self.max_distance_m)

    def most(self, limit, feedback):
        """How many pairs there may be; counted, which takes longer, only where they may be more than a limit."""
        most = len(self.cameras) * (1 if self.kind == "closest" else len(self.subjects))
        if most <= limit:
            return most
        found = 0
        for block in self._blocks():
            found += block.camera.size
            if found > limit or feedback.isCanceled():
                break
        return found

    def names(self, table):
        """The columns that tell who is who in a table of sightlines."""
        camera, subject = table["camera_index"], table["subject_index"]
        return {
            "camera": self.cameras.name[camera],
            "camera_id": self.cameras.fid[camera],
            "subject": self.subjects.name[subject],
            "subject_id": self.subjects.fid[subject],
        }

    def ends(self, table):
        """Longitude and latitude of both ends of the sightlines of a table."""
        camera, subject, cameras, subjects = table["camera_index"], table["subject_index"], self.cameras, self.subjects
        return cameras.lon_deg[camera], cameras.lat_deg[camera], subjects.lon_deg[subject], subjects.lat_deg[subject]

    def log(self, feedback):
        """Tell how many pairs there were, where their heights come from, and why others are not among them."""
        feedback.pushInfo(tr("{n:,} pairs of camera and subject.").format(n=self.count))
        if self.sources:
            shown = {tr(SOURCES[source]): count for source, count in self.sources.items()}
            feedback.pushInfo(tr("Heights: {sources}.").format(sources=counted(shown)))
        if self.left_out:
            reasons = {tr(REASONS[reason]): count for reason, count in self.left_out.items()}
            feedback.pushInfo(tr("Left out: {reasons}.").format(reasons=counted(reasons)))
        self.ground.log(feedback)

    def why_none(self):
        """The reason for having no pair at all."""
        if not len(self.cameras):
            return tr("there is no camera that can be used")
        if not len(self.subjects):
            return tr("there is no subject that can be used")
        return counted({tr(REASONS[reason]): count for reason, count in self.left_out.items()})
