"""`skyline_view`: pictures of what a camera sees at a time: ground, subjects, band, Sun and Moon, with the frame of the lens."""

from pathlib import Path

import numpy as np
from qgis.core import (
    QgsProcessingException,
    QgsProcessingOutputHtml,
    QgsProcessingOutputNumber,
    QgsProcessingParameterFolderDestination,
)

from ..adapters import field_words as words
from ..adapters import lens, refusals
from ..adapters import parameters as take
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_sun
from ..adapters.files import write_whole
from ..adapters.moments import moment, steps_utc_s
from ..adapters.pairing import Pairing
from ..adapters.progress import reporter
from ..adapters.targets import targets_of
from ..adapters.translation import date_told, language, localised, said, tr
from ..adapters.zones import zones_of_sites
from ..charts import gallery, sheets, skyline_view
from ..charts.themes import THEMES
from ..names import THEMES as THEME_NAMES
from ..plan.clock import instants, local_text
from ..plan.framing import Shooting, framing
from ..plan.sightlines import pair_arrays
from ..plan.view import Nights, Scene, azimuths_across, corners_of, ground_of

INDEX = "index.html"
FRAMED = ("az_deg", "alt_deg", "semi_deg", "apex_az", "apex_deg")
LINES = ("dist_m", "bearing_deg", "base_alt_deg", "top_alt_deg", "width_deg")


class SkylineView(Algorithm):
    """A picture for each camera and time."""

    ID = "skyline_view"
    GROUP = "sight"
    TITLE = "Skyline view"
    SUMMARY = (
        "Pictures of what the camera sees: terrain, subjects, the Milky Way's band, Sun and Moon in true proportions, with the lens's frame"
    )
    TAGS = ("picture", "view", "skyline", "Milky Way", "lens", "frame", "photography")
    LAYERS = ("CAMERAS", "SUBJECTS")
    LAYER_OF_FIELD = {"CAMERA_NAME": "CAMERAS", "SUBJECT_NAME": "SUBJECTS", "PAIR_FIELD": "CAMERAS", "PAIR_FIELD_SUBJECT": "SUBJECTS"}

    def initAlgorithm(self, configuration=None):
        for parameter in (
            *take.cameras_and_subjects(),
            *take.dem(),
            *take.body("core"),
            take.instant("START", tr("First time")),
            take.instant("END", tr("Last time; blank: the first time alone"), optional=True),
            take.number("STEP", tr("Step between times [min]"), 30, low=0),
            take.time_zone(),
            *lens.lens(),
            *lens.aim(),
            take.choice("THEME", tr("Theme: print or night"), THEME_NAMES, "print"),
            take.number("WAY", tr("Draw the body's way this long before and after [min]"), 60, low=0, high=720),
            *take.names_and_heights(),
            *take.pairing(),
            take.advanced(take.terrain_radius()),
            take.skip_near(),
            take.dem_accuracy(),
            take.refraction_k(),
            *take.air(),
            take.max_pictures(),
            QgsProcessingParameterFolderDestination("FOLDER", tr("Folder for the pictures")),
        ):
            self.addParameter(parameter)
        self.addOutput(QgsProcessingOutputHtml("HTML", tr("Page of the pictures")))
        self.addOutput(QgsProcessingOutputNumber("PICTURES", tr("Pictures drawn")))

    def refusals(self, parameters, context):
        if not sheets.can_draw():
            yield tr(sheets.MISSING)
        yield from refusals.pairing(self, parameters, context)
        if take.blank(parameters.get("START")):
            yield tr("START is blank. Give the first time, such as 2027-06-06 23:30:00.")
        yield from refusals.zone(parameters)
        yield from refusals.moments(parameters, "START", "END")
        yield from refusals.times_in_order(parameters)
        if not take.number_of(self, parameters, "STEP") > 0:
            yield tr("STEP is 0. Give the minutes between two times, such as 30.")
        yield from refusals.bodies(self, parameters, context, "BODY")
        yield from lens.refusals(self, parameters, context)

    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        with in_words():
            pairing = Pairing(self, parameters, context, feedback)
            (target,) = targets_of(self, parameters, context, "BODY")
            zone_names, zone_index = zones_of_sites(parameters, pairing.cameras.lon_deg, pairing.cameras.lat_deg, feedback)
            times = self._times(parameters, zone_names, feedback)
            self._refuse_too_many(parameters, context, pairing, zone_index, times)
            how = [take.number_of(self, parameters, name) for name in ("PRESSURE", "TEMPERATURE")]
            way_s = 60.0 * take.number_of(self, parameters, "WAY")
            nights = [Nights(moments, target, way_s, *how) for moments in times]
            frame = lens.frame_from(self, parameters, context)
            aim = take.choice_of(self, parameters, "AIM", context), take.yes_of(self, parameters, "LEVEL", context)
            shooting = Shooting(frame, aim=aim[0], level=aim[1])
            tell_of_the_sun([target.id], feedback)
            pairing.read_ground(feedback, go_on, skylines=True)
            lines = self._lines_of_cameras(pairing, go_on)
        self._easel = Easel(self, parameters, context, frame, target, pairing)
        total = sum(times[zone_index[camera]].size for camera in lines)
        with in_words():
            for camera, table in lines.items():
                zone = zone_names, zone_index[camera]
                if not self._draw(camera, table, nights[zone_index[camera]], shooting, zone, pairing, total, go_on):
                    break
        go_on(1.0)
        pairing.log(feedback)
        page = self._easel.gather()
        self._log(total, pairing, feedback)
        return {"FOLDER": str(self._easel.folder), "HTML": str(page), "PICTURES": len(self._easel.entries)}

    def _times(self, parameters, zone_names, feedback):
        """The times in each zone: they differ where the clock on the wall was given."""
        first, notes = instants(moment(parameters["START"]), zone_names)
        last, more = (first, []) if take.blank(parameters.get("END")) else instants(moment(parameters["END"]), zone_names)
        for note in [*notes, *more]:
            feedback.pushWarning(said(note))
        if (last < first).any():
            raise QgsProcessingException(tr("END is before START. Exchange them, or mind their offsets from UTC."))
        step_min = take.number_of(self, parameters, "STEP")
        return [steps_utc_s(begin, end, step_min) for begin, end in zip(first.tolist(), last.tolist())]

    def _refuse_too_many(self, parameters, context, pairing, zone_index, times):
        pictures, limit = int(sum(times[zone].size for zone in zone_index)), self.parameterAsInt(parameters, "MAX_PICTURES", context)
        if pictures > limit:
            raise QgsProcessingException(
                tr(
                    "This may draw up to {n:,} pictures (cameras: {cameras:,}), more than MAX_PICTURES ({limit:,}). Choose fewer cameras "
                    "or times, or raise MAX_PICTURES."
                ).format(n=pictures, cameras=len(pairing.cameras), limit=limit)
            )

    @staticmethod
    def _lines_of_cameras(pairing, go_on):
        """Sightlines by camera, in the order of cameras, the nearest subject first."""
        tables = list(pairing.measured(lambda part=None: go_on()))
        if not tables:
            return {}
        whole = {name: np.concatenate([table[name] for table, _, _ in tables]) for name in tables[0][0]}
        order = np.lexsort([whole["dist_m"], whole["camera_index"]])
        cameras, first = np.unique(whole["camera_index"][order], return_index=True)
        return {
            camera: {name: column[rows] for name, column in whole.items()}
            for camera, rows in zip(cameras.tolist(), np.split(order, first[1:].tolist()))
        }

    def _draw(self, camera, table, nights, shooting, zone, pairing, total, go_on):
        """Draw the pictures of a camera; False when cancelled."""
        zone_names, zone_index = zone
        seen = pair_arrays(table, pairing.places, zone_names, np.full(len(pairing.cameras), zone_index))
        place = seen["lon_deg"][0], seen["lat_deg"][0]
        names, corners = pairing.names(table)["subject"], corners_of(table)
        sight = table.get("sight", np.full(names.shape, None))
        subjects = list(zip(names.tolist(), corners, (sight == "hidden").tolist()))
        one = {name: table[name][:1] for name in LINES}
        for moment_over in nights.over(*place, seen["height_m"][0]):
            columns = {name: np.array([moment_over.columns[name]]) for name in FRAMED}
            framed, _ = framing(one, columns, np.array([place[1]]), shooting)
            aim = float(framed["aim_az"][0]), float(framed["aim_alt"][0])
            ground = ground_of(pairing.ground.relief, *place, seen["lens_dem_m"][0], azimuths_across(shooting.frame, *aim))
            scene = Scene(shooting.frame, *aim, moment_over, ground, subjects)
            clock = [text[11:16] for text in local_text(moment_over.way[0], zone_names, zone_index)]
            told = local_text(np.array([moment_over.t_utc_s]), zone_names, zone_index)[0], zone_names[zone_index]
            self._easel.draw(scene, camera, one, framed, names[0], clock, told)
            if not go_on(len(self._easel.entries) / total):
                return False
        return True

    def _log(self, total, pairing, feedback):
        drawn = len(self._easel.entries)
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} of {total:,} pictures drawn.").format(n=drawn, total=total))
        elif not drawn:
            feedback.pushWarning(tr("No pictures: {reason}.").format(reason=pairing.why_none()))
        else:
            feedback.pushInfo(tr("{n:,} pictures in {folder}.").format(n=drawn, folder=self._easel.folder))


class Easel:
    """Where pictures are drawn: a folder, a theme, and what is told under each."""

    def __init__(self, algorithm, parameters, context, frame, target, pairing):
        self.folder = Path(algorithm.parameterAsString(parameters, "FOLDER", context))
        self.folder.mkdir(parents=True, exist_ok=True)
        self.theme = THEMES[take.choice_of(algorithm, parameters, "THEME", context)]
        self.entries = []
        orientation = take.choice_of(algorithm, parameters, "ORIENTATION", context)
        focal, sides = localised(f"{frame.focal_mm:g}"), localised(f"{frame.width_mm:g} x {frame.height_mm:g}")
        self._lens = f"{focal} mm, {sides} mm ({orientation})"
        self._target, self._pairing, self._dem = target, pairing, algorithm.dem

    def draw(self, scene, camera, line, framed, subject, clock, told):
        """Draw a scene and write it, as PNG and SVG."""
        t_local, zone = told
        name, columns = self._pairing.cameras.name[camera], scene.moment.columns
        columns["body"] = self._target.id
        heading = f"{name}, {date_told(t_local)} ({zone})"
        fits = {True: tr("all fits"), False: tr("does not fit")}[framed["fits"][0]]
        lines = [
            tr("{place}: {body} at azimuth {az:.1f}°, altitude {alt:.1f}°; Moon lit {lit:.0f} %, {moon:.1f}° high; Sun {sun:.1f}°").format(
                place=self._place(camera),
                body=self._target.phrase,
                az=columns["az_deg"],
                alt=columns["alt_deg"],
                lit=100.0 * columns["moon_lit"],
                moon=columns["moon_deg"],
                sun=columns["sun_deg"],
            ),
            tr("{subject} bears {bearing:.1f}° at {dist:,.0f} m. {lens}, aimed at azimuth {az:.1f}°, altitude {alt:.1f}°: {fits}.").format(
                subject=subject,
                bearing=line["bearing_deg"][0] % 360.0,
                dist=line["dist_m"][0],
                lens=self._lens,
                az=scene.aim_az_deg,
                alt=scene.aim_alt_deg,
                fits=fits,
            ),
            self._ground(scene, camera),
        ]
        figure = skyline_view.draw(scene, [heading, *lines], clock, self.theme, [tr(word) for word in skyline_view.WORDS])
        stem = f"{len(self.entries) + 1:03d}-{sheets.file_name(name, 'camera')}-{t_local[:16].replace(' ', '-').replace(':', '')}"
        for ending in (".png", ".svg"):
            write_whole(self.folder / (stem + ending), sheets.rendered(figure, ending))
        self.entries.append((stem, heading, lines, self._table(scene, framed)))

    def _place(self, camera):
        lon, lat = self._pairing.cameras.lon_deg[camera], self._pairing.cameras.lat_deg[camera]
        return words.place(lon, lat)

    def _ground(self, scene, camera):
        """What the skyline is worth."""
        if not np.isfinite(scene.ground[0][0]):
            return tr("No elevation model here: the horizon is level, hills are not shown. A planning aid, not a survey and not a permit.")
        cells = self._pairing.ground.relief.terrain.cell_m(self._pairing.cameras.lon_deg[camera], self._pairing.cameras.lat_deg[camera])
        return tr(
            "Terrain: '{dem}', cells of {size:.3g} m, known to {reach:.1f} km, no trees or buildings. "
            "A planning aid, not a survey and not a permit."
        ).format(dem=self._dem.name, size=float(np.max(cells)), reach=scene.ground[0][0] / 1000.0)

    @staticmethod
    def _table(scene, framed):
        columns = scene.moment.columns
        return {
            tr("Body less bearing"): _told("{:.1f}°", framed["d_az_deg"][0]),
            tr("Body above the subject's top"): _told("{:.1f}°", framed["d_alt_deg"][0]),
            tr("Subject's height in the frame"): _told("{:.1f} %", framed["subj_h_pct"][0]),
            tr("Longest focal length at which all fits"): _told("{:.0f} mm", np.floor(framed["fit_mm"][0])),
            tr("Tilt of the band at the core"): _told("{:.0f}°", columns["tilt_deg"]),
            tr("Top of the arch"): tr("azimuth {az:.1f}°, altitude {alt:.1f}°").format(az=columns["apex_az"], alt=columns["apex_deg"]),
        }

    def gather(self):
        """Write the page of all pictures; its path."""
        notes = [
            tr("Access, closures and night hours are decided by the land manager; walking in the dark is dangerous."),
            tr("Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter."),
        ]
        page = self.folder / INDEX
        write_whole(
            page, gallery.page(tr("Skyline views"), notes, self.entries, self.theme, language=language()).encode("utf-8", "replace")
        )
        return page


def _told(form, value):
    """A number as it is read, a dash where it is not known."""
    return localised(form.format(value)) if np.isfinite(value) else "-"
