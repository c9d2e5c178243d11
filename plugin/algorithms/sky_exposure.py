"""`sky_exposure`: for how many minutes a night a body can be used from each cell of an elevation model."""

import time

import numpy as np
from qgis.core import QgsProcessingException, QgsProcessingParameterExtent, QgsProcessingParameterRasterDestination

from ..adapters import parameters as take
from ..adapters import refusals
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_dark, tell_of_the_sun
from ..adapters.minutes_file import MinutesFile, show
from ..adapters.moments import nights_of_sites
from ..adapters.plots import Plot
from ..adapters.progress import part_of, reporter
from ..adapters.targets import targets_of
from ..adapters.translation import tr
from ..adapters.zones import zones_of_sites
from ..plan.conditions import Conditions
from ..plan.exposure import exposure, sky_over, survey, windows_for
from ..plan.night_windows import Places, out_of_reach
from ..plan.nights import span_utc_s
from ..plan.sky_paths import months_between, sky_paths, step_of

NIGHTS = 365  # asked for when the last one is blank
SURVEYED, SOLVED = 0.08, 0.1  # of the progress bar: after looking over the model, after the sky of all tiles
ASKED = {
    "alt_min_deg": "ALT_MIN",
    **{f"{name}_{end}_deg": f"{name}_{end}".upper() for name in ("tilt", "apex") for end in ("min", "max")},
    "core_alt_min_deg": "CORE_ALT_MIN",
    "sun_limit_deg": "SUN_LIMIT",
    "moon_lit_max": "MOON_LIT_MAX",
    "pressure_hPa": "PRESSURE",
    "temperature_C": "TEMPERATURE",
}


class SkyExposure(Algorithm):
    """A raster of usable minutes a night, or a band for each month."""

    ID = "sky_exposure"
    GROUP = "nights"
    TITLE = "Sky exposure"
    SUMMARY = "For how many minutes a night the body stands clear of the ridges in the dark, from each cell of an elevation model"
    TAGS = ("raster", "elevation model", "DEM", "terrain", "skyline", "Milky Way", "galactic core", "shadow", "visibility", "month")

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.dem(optional=False),
            *take.body("core"),
            take.day("FIRST_NIGHT", tr("First night, the date of its evening; blank: today")),
            take.day("LAST_NIGHT", tr("Last night; blank: {n} nights in all").format(n=NIGHTS)),
            take.helped(
                take.yes("PER_MONTH", tr("A band for each month"), False),
                tr("Off: one band, the mean of all nights. On: the mean of the nights of each month, in bands named such as 2027-06."),
            ),
            take.alt_min(),
            *take.band(),
            take.core_alt_min(),
            *take.moon_rule("down"),
            take.sun_limit(),
            take.helped(
                QgsProcessingParameterExtent("AREA", tr("Area for which it is told; blank: the whole elevation model"), None, True),
                tr("Ground outside it still hides what it hides."),
            ),
            take.length("CAMERA_HEIGHT", tr("Height of the lens above the ground"), 1.5, low=0),
            take.terrain_radius(),
            take.advanced(
                take.helped(
                    take.number("SKY_STEP", tr("Positions of the body closer together than this are taken as one [°]"), low=0, high=15),
                    tr("Blank: 1° of its daily turn, 4 minutes; 2° for Sun and Moon, which take many more positions."),
                )
            ),
            take.skip_near(),
            take.time_zone(),
            take.refraction_k(),
            *take.air(),
            QgsProcessingParameterRasterDestination("OUTPUT", tr("Usable minutes a night")),
        ):
            self.addParameter(parameter)

    def refusals(self, parameters, context):
        yield from refusals.bodies(self, parameters, context, "BODY")
        yield from refusals.zone(parameters)
        yield from refusals.nights(parameters)
        yield from refusals.ordered(self, parameters, ("TILT_MIN", "TILT_MAX"), ("APEX_MIN", "APEX_MAX"))
        if take.number_of(self, parameters, "SKY_STEP") == 0:
            yield tr("SKY_STEP is 0. Give the degrees between two positions of the body, such as 1, or leave it blank.")
        yield from refusals.geotiff(parameters, "OUTPUT")
        yield from refusals.own_input(self, parameters, context, "OUTPUT")

    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        path = self.parameterAsOutputLayer(parameters, "OUTPUT", context)
        (target,) = targets_of(self, parameters, context, "BODY")
        conditions = self._conditions(parameters, context)
        with in_words():
            per_month = take.yes_of(self, parameters, "PER_MONTH", context)
            any_zone = nights_of_sites(parameters, ["UTC"], np.zeros(1, int), NIGHTS)
            plot = Plot(self, parameters, context, len(months_between(*any_zone)) if per_month else 1)
            overview = survey(plot.region, plot.raster.read, part_of(go_on, 0.0, SURVEYED))
            if overview is None:
                return self._cancelled(feedback)
            if not np.isfinite(overview.highest_m):
                raise QgsProcessingException(
                    tr("DEM: '{name}' knows no height in the area. Choose another AREA, or another DEM_BAND.").format(name=plot.raster.name)
                )
            zone_names, zone_index = zones_of_sites(parameters, plot.lon_deg, plot.lat_deg, feedback)
            nights = nights_of_sites(parameters, zone_names, zone_index, NIGHTS)
            places = Places(plot.lon_deg, plot.lat_deg, plot.heights_m(overview), zone_names, zone_index)
            months = months_between(*nights) if per_month else None
            step_deg = take.number_of(self, parameters, "SKY_STEP") or step_of(target)
            paths = sky_paths(places, target, *nights, conditions, months, step_deg, part_of(go_on, SURVEYED, SOLVED))
        if paths is None:
            return self._cancelled(feedback)
        tell_of_the_sun([target.id], feedback)
        bands = [tr("{first} to {last}").format(first=nights[0].min(), last=nights[1].max())] if months is None else months.astype(str)
        made = MinutesFile(path, plot.area.rows, plot.area.cols, plot.transform, plot.crs, bands)
        began = time.perf_counter()
        try:
            with in_words():
                whole = self._write(made, plot, overview, paths, part_of(go_on, SOLVED, 1.0))
            if not whole:
                return self._cancelled(feedback)
            made.finish()
        finally:
            made.drop()
        show(path, context)
        self._log(plot, paths, step_deg, time.perf_counter() - began, feedback)
        if not any(len(sky.az_deg) for sky in paths):
            self._tell_of_nothing(target, conditions, places, span_utc_s(plot.lon_deg, zone_names, zone_index, *nights), feedback)
        return {"OUTPUT": path}

    def _conditions(self, parameters, context):
        """What is asked, blanks left to the customs of the body."""
        numbers = {condition: take.number_of(self, parameters, name) for condition, name in ASKED.items()}
        return Conditions(moon=take.choice_of(self, parameters, "MOON", context), **numbers)

    @staticmethod
    def _write(made, plot, overview, paths, go_on):
        """Work out and write the tiles; False when cancelled."""
        for number, (tile, path) in enumerate(zip(plot.tiles, paths)):
            share = part_of(go_on, number / len(paths), (number + 1) / len(paths))
            sky = sky_over(plot.raster.extent.grid, plot.lon_deg[number], plot.lat_deg[number], path, **plot.how)
            minutes = exposure(tile, windows_for(tile, sky, overview, plot.raster.read), sky, share) if share(0.0) else None
            if minutes is None:
                return False
            made.write(tile.row - plot.area.row, tile.col - plot.area.col, minutes)
        return True

    @staticmethod
    def _cancelled(feedback):
        feedback.pushInfo(tr("Cancelled: nothing is written."))
        return {}

    @staticmethod
    def _log(plot, paths, step_deg, seconds, feedback):
        plot.log(feedback)
        tell_of_the_dark(feedback)
        positions = sum(len(sky.az_deg) for sky in paths) / len(paths)
        cells = plot.area.rows * plot.area.cols
        feedback.pushInfo(
            tr(
                "{n:,} positions of the body, {step:g}° of its daily turn apart: when it rises over a ridge or sinks behind one is told to "
                "{minutes:.0f} minutes, half of that on average."
            ).format(n=round(positions), step=step_deg, minutes=2.0 * step_deg)
        )
        feedback.pushInfo(
            tr("{cells:,} cells in {tiles:,} tiles; {rate:.1f} million cells and positions a second.").format(
                cells=cells, tiles=len(paths), rate=cells * positions / max(seconds, 1e-3) / 1e6
            )
        )

    @staticmethod
    def _tell_of_nothing(target, conditions, places, span, feedback):
        with in_words():
            sentence = out_of_reach(target, conditions, places.lat_deg, *span)
        feedback.pushWarning(sentence or tr("No night has a minute in which all conditions hold: the raster holds 0 everywhere."))
