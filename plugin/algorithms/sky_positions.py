"""`sky_positions`: where bodies stand in the sky over points, at one time or through a span of time."""

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterFeatureSink, QgsWkbTypes

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.bearings import compass_of
from ..adapters.cautions import tell_of_the_sun
from ..adapters.crs import output_crs
from ..adapters.geometries import points_of
from ..adapters.moments import times_of_zones
from ..adapters.progress import part_of, reporter
from ..adapters.relief import Ground
from ..adapters.sinks import Table, refuse_too_many, whole_or_none
from ..adapters.sites import lenses_over, read_sites
from ..adapters.targets import targets_of
from ..adapters.translation import tr
from ..adapters.zones import warn_near_other_clocks, zones_of_sites
from ..names import SKY_POSITIONS_FIELDS
from ..plan.alignments import Sites
from ..plan.compass import add_magnetic
from ..plan.positions import sky_positions


class SkyPositions(Algorithm):
    """A point for each site, body and time."""

    ID = "sky_positions"
    GROUP = "sky"
    TITLE = "Sky positions"
    SUMMARY = (
        "Azimuth and altitude of the Milky Way's core and arch, the Sun, the Moon or a star over points, at a time or through a span of it"
    )
    TAGS = ("azimuth", "altitude", "Milky Way", "galactic core", "Sun", "Moon", "twilight", "star")
    LAYERS = ("SITES",)
    LAYER_OF_FIELD = {"SITE_NAME": "SITES", "KEEP_FIELDS": "SITES"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("SITES", tr("Sites: the points under the sky")),
            *take.dem(),
            *take.bodies("core"),
            take.instant("START", tr("First time")),
            take.instant("END", tr("Last time; blank: the first time alone"), optional=True),
            take.number("STEP", tr("Step between times [min]"), 10, low=0),
            take.time_zone(),
            take.field("SITE_NAME", tr("Field with the name of a site"), "SITES"),
            take.advanced(take.camera_height("SITES")),
            take.advanced(take.terrain_radius()),
            take.skip_near(),
            take.keep_fields("SITES", tr("Fields of the sites to keep")),
            take.refraction_k(),
            *take.air(),
            take.max_rows(),
            QgsProcessingParameterFeatureSink("OUTPUT", tr("Sky positions"), QgsProcessing.SourceType.TypeVectorPoint),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        if take.blank(parameters.get("START")):
            yield tr("START is blank. Give the first time, such as 2027-06-06 23:30:00.")
        yield from refusals.zone(parameters)
        yield from refusals.moments(parameters, "START", "END")
        yield from refusals.times_in_order(parameters)
        if not take.number_of(self, parameters, "STEP") > 0:
            yield tr("STEP is 0. Give the minutes between two times, such as 10.")
        yield from refusals.bodies(self, parameters, context)

    @whole_or_none
    def processAlgorithm(self, parameters, context, feedback):
        sites = read_sites(self, parameters, context, feedback)
        with in_words():
            ground = Ground(self, parameters, context)
            targets = targets_of(self, parameters, context)
            zone_names, zone_index = zones_of_sites(parameters, sites.lon_deg, sites.lat_deg, feedback)
            step_min = take.number_of(self, parameters, "STEP")
            times_of_zone = times_of_zones(parameters, "START", "END", step_min, zone_names, feedback)
            span = min(times[0] for times in times_of_zone), max(times[-1] for times in times_of_zone)
            warn_near_other_clocks(parameters, sites, zone_names, zone_index, *span, feedback)
            compass = compass_of(sites, *span, feedback)
        tell_of_the_sun([target.id for target in targets], feedback)
        rows = sum(int((zone_index == zone).sum()) * times.size for zone, times in enumerate(times_of_zone)) * len(targets)
        refuse_too_many(rows, self.parameterAsInt(parameters, "MAX_ROWS", context), parameters, ["OUTPUT"])

        go_on = reporter(feedback)
        with in_words():
            lens_dem_m = lenses_over(ground, sites, feedback, go_on)
        crs = output_crs(self.parameterAsSource(parameters, "SITES", context).sourceCrs())
        output = Table(self, parameters, "OUTPUT", context, SKY_POSITIONS_FIELDS, sites.kept, QgsWkbTypes.Type.Point, crs, feedback)
        geometries = points_of(sites.x, sites.y)
        share = part_of(go_on, ground.begin, 1.0)
        for table in self._tables(parameters, sites, ground, lens_dem_m, zone_names, zone_index, times_of_zone, targets, go_on):
            at = table["site"]
            table.update(site=sites.name[at], site_id=sites.fid[at])
            add_magnetic(table, compass, at, table["t_utc"], "az_deg")
            of_all = part_of(share, output.written / rows, (output.written + at.size) / rows)
            if not output.write(table, at, [geometries[i] for i in at.tolist()], of_all):
                break
        go_on(1.0)
        ground.log(feedback)
        output.close("sky_positions", context, feedback, step_min)
        self._log(output, sites, targets, times_of_zone, rows, feedback)
        return {"OUTPUT": output.id}

    def _tables(self, parameters, sites, ground, lens_dem_m, zone_names, zone_index, times_of_zone, targets, go_on):
        """Blocks of rows; `site` is the row of the site among all."""
        if ground.stopped:
            return
        pressure_hPa, temperature_C = (take.number_of(self, parameters, name) for name in ("PRESSURE", "TEMPERATURE"))
        heights_m = np.where(np.isfinite(lens_dem_m), lens_dem_m, np.where(np.isfinite(sites.z_m), sites.z_m, 0.0))
        begin_of_zone = np.array([times[0] for times in times_of_zone])
        begin_of_site = begin_of_zone[zone_index]
        for begin in dict.fromkeys(begin_of_site.tolist()):  # sites with the same times at once, in the order of their first
            those = np.flatnonzero(begin_of_site == begin)
            times = times_of_zone[zone_index[those[0]]]
            places = Sites(sites.lon_deg[those], sites.lat_deg[those], heights_m[those])
            asked = (places, zone_names, zone_index[those], targets, times, pressure_hPa, temperature_C)
            with in_words():
                for table in sky_positions(*asked, ground.relief, lens_dem_m[those], lambda part: go_on()):
                    table["site"] = those[table["site"]]
                    yield table

    @staticmethod
    def _log(output, sites, targets, times_of_zone, rows, feedback):
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} of {total:,} positions written.").format(n=output.written, total=rows))
        elif not rows:
            feedback.pushWarning(tr("No positions: there is no point that can be used."))
        else:
            feedback.pushInfo(
                tr("{n:,} positions (sites: {sites:,}, bodies: {bodies}, times: {times:,}).").format(
                    n=output.written, bodies=len(targets), sites=len(sites), times=max(times.size for times in times_of_zone)
                )
            )
