"""`terrain_horizon`: how high the ground stands against the sky around points, in every direction."""

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.crs import output_crs
from ..adapters.geometries import places_of, rings_of
from ..adapters.progress import part_of, reporter
from ..adapters.relief import Ground
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.sites import lenses_over, read_sites
from ..adapters.translation import tr
from ..names import PROFILE_FIELDS, SKYLINE_FIELDS
from ..plan.terrain_horizon import azimuths_deg, terrain_horizon

FINEST_STEP_DEG = 0.0001  # less than half an arcsecond
WIDEST_STEP_DEG = 120.0  # three corners to a skyline


class TerrainHorizon(Algorithm):
    """A point for each site and azimuth, where the skyline stands; and a polygon of them."""

    ID = "terrain_horizon"
    GROUP = "sight"
    TITLE = "Terrain horizon"
    SUMMARY = (
        "How high the terrain stands against the sky around points, direction by direction, and where the ground is that makes the skyline"
    )
    TAGS = ("skyline", "horizon", "terrain", "elevation model", "DEM", "azimuth", "altitude")
    LAYERS = ("SITES",)
    LAYER_OF_FIELD = {"SITE_NAME": "SITES", "KEEP_FIELDS": "SITES"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("SITES", tr("Sites: the points to look from")),
            *take.dem(optional=False),
            take.camera_height("SITES"),
            take.helped(
                take.number("AZ_STEP", tr("Step between azimuths, from north clockwise [°]"), 1, low=0, high=WIDEST_STEP_DEG),
                tr("A summit narrower than the step may fall between two azimuths."),
            ),
            take.terrain_radius(),
            take.skip_near(),
            take.field("SITE_NAME", tr("Field with the name of a site"), "SITES"),
            take.keep_fields("SITES", tr("Fields of the sites to keep")),
            take.refraction_k(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("PROFILE", tr("Points on the skyline"), QgsProcessing.SourceType.TypeVectorPoint),
            QgsProcessingParameterFeatureSink(
                "SKYLINE", tr("Skylines, as polygons"), QgsProcessing.SourceType.TypeVectorPolygon, None, True, False
            ),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        step_deg = take.number_of(self, parameters, "AZ_STEP")
        if not step_deg > 0:
            yield tr("AZ_STEP is 0. Give the degrees between two azimuths, such as 1.")
        elif step_deg < FINEST_STEP_DEG:
            yield tr("AZ_STEP is {step:g}: too many azimuths to be held. Give {least:g} or more, such as 1.").format(
                step=step_deg, least=FINEST_STEP_DEG
            )

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        sites = read_sites(self, parameters, context, feedback)
        az_deg = azimuths_deg(take.number_of(self, parameters, "AZ_STEP"))
        refuse_too_many(len(sites) * az_deg.size, self.parameterAsInt(parameters, "MAX_ROWS", context), parameters, ["PROFILE"])
        go_on = reporter(feedback)
        with in_words():
            ground = Ground(self, parameters, context)
            lens_m = lenses_over(ground, sites, feedback, go_on)

        crs = output_crs(self.parameterAsSource(parameters, "SITES", context).sourceCrs())
        profile = Table(self, parameters, "PROFILE", context, PROFILE_FIELDS, sites.kept, QgsWkbTypes.Type.Point, crs, feedback)
        skyline = Table(self, parameters, "SKYLINE", context, SKYLINE_FIELDS, sites.kept, QgsWkbTypes.Type.MultiPolygon, crs, feedback)
        known = np.flatnonzero(np.isfinite(lens_m))
        places = (values[known] for values in (sites.lon_deg, sites.lat_deg, lens_m))
        share = part_of(go_on, ground.begin, 1.0)
        with in_words():
            for table in () if ground.stopped else terrain_horizon(*places, az_deg, ground.relief, share):
                if not self._write(table, sites, known, lens_m, profile, skyline, crs, context, go_on):
                    break
        go_on(1.0)
        profile.close("terrain_horizon", context, feedback)
        skyline.close("skyline", context, feedback)
        ground.log(feedback)
        self._log(profile, known, az_deg, feedback)
        return {"PROFILE": profile.id, **({"SKYLINE": skyline.id} if skyline else {})}

    @staticmethod
    def _write(table, sites, known, lens_m, profile, skyline, crs, context, go_on):
        """Write what was found around some sites; False when cancelled."""
        lon_deg, lat_deg = table.pop("lon_deg"), table.pop("lat_deg")
        at = known[table["site"]]
        rows = {name: column.ravel() for name, column in table.items()}
        rows.update(site=sites.name[at.ravel()], site_id=sites.fid[at.ravel()])
        seen = np.isfinite(rows["ground_deg"])
        places = (np.where(seen, values.ravel(), np.nan) for values in (lon_deg, lat_deg))
        if not profile.write(rows, at.ravel(), places_of(*places, crs, context.transformContext()), lambda part: go_on()):
            return False
        if not skyline:
            return True
        at = at[:, 0]
        one_each = {"site": sites.name[at], "site_id": sites.fid[at], "cam_z_m": lens_m[at]}
        return skyline.write(one_each, at, rings_of(lon_deg, lat_deg, crs, context.transformContext()), lambda part: go_on())

    @staticmethod
    def _log(profile, known, az_deg, feedback):
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} points on skylines written.").format(n=profile.written))
        elif not known.size:
            feedback.pushWarning(tr("No skyline: there is no site on ground whose height the DEM knows."))
        else:
            feedback.pushInfo(
                tr("{n:,} points on skylines (sites: {sites:,}, azimuths: {azimuths:,}).").format(
                    n=profile.written, sites=known.size, azimuths=az_deg.size
                )
            )
