"""`site_map`: the map that goes with an application for a permit, a sheet a site."""

from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from qgis.core import QgsProcessingAlgorithm, QgsProcessingException, QgsProcessingOutputNumber, QgsProject

from ..adapters import parameters as take
from ..adapters import refusals, sheet_background, sheet_parameters, sheet_tables, sheet_words
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import size_told, tell_of_the_dark, tell_of_the_sun
from ..adapters.files import made_whole, make_folder, write_whole
from ..adapters.moments import now_utc_s
from ..adapters.progress import reporter
from ..adapters.raster import Raster
from ..adapters.sheet_page import Page
from ..adapters.sheet_print import Pdf, check_whole, pictures
from ..adapters.sheet_sites import Sites
from ..adapters.sheet_sketch import here, sketch
from ..adapters.sheet_template import template_of
from ..adapters.sheet_text import FALLBACK, plain
from ..adapters.sinks import destination_file
from ..adapters.translation import tr
from ..adapters.version import version
from ..charts.sheets import file_name
from ..names import PROVIDER_NAME

LONGEST_TITLE, LONGEST_SITE = 300, 120
NUMBERS = ("POS_ERROR", "ARRIVE_BEFORE", "PACK_UP", "WALK_SPEED")


class SiteMap(Algorithm):
    """A sheet for each site."""

    ID = "site_map"
    GROUP = "stand"
    TITLE = "Site map"
    SUMMARY = "A map for a permit: where people stand and walk, closed ground, coordinates, bearings and a timetable, a sheet a site"
    TAGS = ("permit", "print", "layout", "PDF", "map", "sheet", "closure", "application")
    LAYERS = ("CAMERAS", "SUBJECTS", "STANDPOINTS", "PARKING")
    LAYER_OF_FIELD = {
        "CAMERA_NAME": "CAMERAS",
        "SUBJECT_NAME": "SUBJECTS",
        "WALK_NAME": "WALK",
        "PARKING_NAME": "PARKING",
        "CLOSED_NAME": "CLOSED",
        "CLOSED_FROM": "CLOSED",
        "CLOSED_TO": "CLOSED",
    }

    def flags(self):
        return super().flags() | QgsProcessingAlgorithm.Flag.FlagNoThreading

    def initAlgorithm(self, configuration=None):
        parts = (sheet_parameters.layers, sheet_parameters.words, sheet_parameters.hours, sheet_parameters.print_options)
        for parameter in (parameter for part in parts for parameter in part()):
            self.addParameter(parameter)
        self.addOutput(QgsProcessingOutputNumber("SHEETS", tr("Sheets made")))

    def refusals(self, parameters, context):
        yield from refusals.layers(self, parameters, ("SIGHTLINES", "PATHS", "WALK"), context, refusals.LINES)
        yield from refusals.layers(self, parameters, ("ZONES", "CLOSED"), context, refusals.POLYGONS)
        yield from sheet_tables.refusals(self, parameters, context)
        yield from refusals.zone(parameters)
        yield from sheet_tables.nothing_to_make_sheets_of(self, parameters, context)
        if len(take.text_of(parameters, "TITLE") or "") > LONGEST_TITLE:
            yield tr("TITLE is {n} letters long, and a sheet has room for {most}. Shorten it.").format(
                n=len(take.text_of(parameters, "TITLE")), most=LONGEST_TITLE
            )
        try:
            template_of(self, parameters, context)
        except ValueError as unfit:
            yield str(unfit)
        template, output = take.text_of(parameters, "TEMPLATE"), destination_file(parameters.get("OUTPUT"))
        if template and output and output.resolve() == Path(template).resolve():
            yield tr("OUTPUT: {path} is the TEMPLATE, which would be lost. Choose another name.").format(path=output)

    def prepareAlgorithm(self, parameters, context, feedback):
        if not super().prepareAlgorithm(parameters, context, feedback):
            return False
        self.inputs = sheet_background.inputs_of(self, parameters, context)
        wanted = take.yes_of(self, parameters, "BACKGROUND", context)
        self.background = sheet_background.background_of(context.project(), self.inputs.values()) if wanted else []
        return True

    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        number = {name: take.number_of(self, parameters, name) for name in NUMBERS}
        with in_words():
            tables = sheet_tables.Tables(self, parameters, context, feedback, number["POS_ERROR"])
            limit = self.parameterAsInt(parameters, "MAX_PICTURES", context)
            sites = Sites(self, parameters, context, feedback, tables, number, limit)
            if sites.empty and not feedback.isCanceled():
                raise QgsProcessingException(
                    tr("There is no place to draw. Give CAMERAS, SIGHTLINES, ALIGNMENTS, STANDPOINTS or SUBJECTS that hold one.")
                )
            if feedback.isCanceled():
                return {}
            words = sheet_words.Words(parameters, sites, number["POS_ERROR"], self._facts(), self._dem(context, sites))
            template = template_of(self, parameters, context)
        tell_of_the_dark(feedback)
        if sites.planned is not None:
            tell_of_the_sun(sites.planned.rows["body"].tolist(), feedback)
        printer = Printer(self, parameters, context, sites, words, template)
        try:
            written = printer.run(go_on, feedback)
        finally:
            printer.close()
            self.inputs, self.background = {}, []
        sites.log()
        if written is None:
            feedback.pushInfo(tr("Cancelled: nothing was written to OUTPUT."))
            return {}
        feedback.pushInfo(
            tr("{n:,} sheets on {pages:,} pages in {file}.").format(n=printer.sheets, pages=printer.pages, file=written["OUTPUT"])
        )
        return {**written, "SHEETS": printer.sheets}

    def _facts(self):
        """What goes for all sheets."""
        return [
            (tr("Layers (file written)"), sheet_background.told_of(self.inputs) or tr("none")),
            (tr("Background"), sheet_background.names_of(self.background)),
        ]

    def _dem(self, context, sites):
        """Name and size of cells of the elevation model, or None."""
        if self.dem is None:
            return None
        raster = Raster(self.dem, context.transformContext())
        places = sites.first_place
        least, most = (float(size[0]) for size in raster.extent.grid.cell_m(*places))
        return raster.name, size_told(least, most)


class StoppedError(Exception):
    """The run was cancelled while a file was being made."""


class Printer:
    """Draws the sheets of a run one after the other and prints each to all that is asked for."""

    def __init__(self, algorithm, parameters, context, sites, words, template):
        self._sites, self._words, self._template = sites, words, template
        self._transform_context, self._background = context.transformContext(), algorithm.background
        self._scale = take.number_of(algorithm, parameters, "SCALE")
        self._title = plain(take.text_of(parameters, "TITLE") or tr("Site map"))
        self._permit = plain(take.text_of(parameters, "PERMIT_NO") or "")
        self._output = algorithm.parameterAsFileOutput(parameters, "OUTPUT", context)
        given = [name for name in ("FOLDER", "PICTURES") if not take.blank(parameters.get(name))]
        self._folders = {name: Path(algorithm.parameterAsString(parameters, name, context)) for name in given}
        self._made = sheet_words.made(now_utc_s(), version())
        self.sheets, self.pages, self._undrawable, self._missing_fonts = 0, 0, set(), set()
        self._project, self._folder = QgsProject(), TemporaryDirectory()
        self._wide = sheet_background.without_labels(self._background) or sheet_background.world()
        self._project.addMapLayers([*self._background, *self._wide], False)

    def run(self, go_on, feedback):
        """Make all sheets; the outputs by parameter, or None where it was told to stop."""
        for folder in self._folders.values():
            make_folder(folder)
        try:
            with self._pdf(self._output) as pdf:
                for index in range(len(self._sites)):
                    if not go_on(index / len(self._sites)):
                        raise StoppedError
                    self._sheet(index, pdf, go_on)
        except StoppedError:
            return None
        go_on(1.0)
        if self._missing_fonts:
            feedback.pushWarning(
                tr("The template asks for the font {fonts}, which this computer has not: {fallback} is taken.").format(
                    fonts=", ".join(sorted(self._missing_fonts)), fallback=FALLBACK
                )
            )
        if self._undrawable:
            feedback.pushWarning(
                tr("No font of this computer draws {letters}: they are boxes on the sheets. Install one that has them.").format(
                    letters=" ".join(sorted(self._undrawable))
                )
            )
        return {"OUTPUT": self._output, **{name: str(folder) for name, folder in self._folders.items()}}

    def close(self):
        """Let go of the layers and their project."""
        self._project.clear()
        self._folder.cleanup()
        self._project, self._background, self._wide = None, [], []

    @contextmanager
    def _pdf(self, path):
        with made_whole(path) as part:
            pdf = Pdf(part, self._title, f"{PROVIDER_NAME} {version()}")
            try:
                yield pdf
            finally:
                pdf.close()
            check_whole(part)

    def _sheet(self, index, pdf, go_on):
        """Draw a sheet and print it."""
        site = self._sites.site(index)
        if site is None:
            return
        page = Page(self._template, self._project, Path(self._folder.name))
        try:
            self._fill(page, site, go_on)
            self._print(page, site, pdf, go_on)
        finally:
            for layer in page.own:
                self._project.removeMapLayer(layer)
            page.close()

    def _print(self, page, site, pdf, go_on):
        """Print a page to all that is asked for."""
        self.sheets += 1
        self.pages += page.pages
        self._missing_fonts.update(page.missing_fonts)
        self._undrawable.update(page.undrawable())
        stem = f"sheet-{site.number:03d}-{file_name(site.name, 'site')}"
        _to_pdf(pdf, page, go_on)
        if "FOLDER" in self._folders:
            with self._pdf(self._folders["FOLDER"] / f"{stem}.pdf") as own:
                _to_pdf(own, page, go_on)
        if "PICTURES" in self._folders:
            for number, picture in enumerate(pictures(page), start=1):
                if not go_on():
                    raise StoppedError
                write_whole(self._folders["PICTURES"] / f"{stem}-{number}.png", picture)

    def _fill(self, page, site, go_on):
        page.place(site, self._scale)
        paper = page.extent, page.scale / 1000.0
        own = sketch(site, page.font, self._transform_context, *paper)
        if page.is_crowded(own):
            own = sketch(site, page.font, self._transform_context, *paper, named=False)
        there = here(site, page.font, self._transform_context)
        page.own = [*own, there]
        self._project.addMapLayers(page.own, False)
        page.draw(site, own, there, self._background, self._wide, go_on)
        page.write(self._words.blocks(site, page.off_map), self._variables(site, page))

    def _variables(self, site, page):
        """What labels of a template may say."""
        nights = sheet_words.nights_told(site.nights)
        name = plain(site.name)
        name = name if len(name) <= LONGEST_SITE else name[: LONGEST_SITE - 1] + "…"
        return {
            "title": self._title,
            "site": " · ".join(text for text in (name, nights) if text),
            "count": tr("Sheet {n} of {count}").format(n=site.number, count=site.count),
            "permit": tr("Permit {number}").format(number=self._permit) if self._permit else "",
            "notice": sheet_words.notice(),
            "north": sheet_words.north_told(site.north),
            "scale": sheet_words.scale_told(page.scale, page.grid_m, site),
            "overview": sheet_words.overview_told(page.graticule_deg),
            "made": self._made,
            "page_word": tr("Page"),
        }


def _to_pdf(pdf, page, go_on):
    if not pdf.add(page, go_on):
        raise StoppedError
