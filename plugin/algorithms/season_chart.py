"""`season_chart`: a picture of each site's year from night windows: darkness, windows, Moon and tilt, every night its own column."""

import re
from pathlib import Path

import numpy as np
from qgis.core import (
    QgsProcessingException,
    QgsProcessingOutputHtml,
    QgsProcessingOutputNumber,
    QgsProcessingParameterFolderDestination,
    QgsProcessingParameterNumber,
)

from ..adapters import parameters as take
from ..adapters import year_of_nights
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import tell_of_the_sun
from ..adapters.progress import reporter
from ..adapters.translation import tr
from ..charts import gallery, season_chart, sheets
from ..charts.themes import THEMES
from ..names import THEMES as THEME_NAMES
from ..plan.season import clock_changes, season

INDEX = "index.html"


class SeasonChart(Algorithm):
    """A picture for each site and body."""

    ID = "season_chart"
    GROUP = "nights"
    TITLE = "Season chart"
    SUMMARY = "The year of each site in one picture: dark hours, the windows of the body, Moon and tilt, every night its own column"
    TAGS = ("picture", "year", "season", "Milky Way", "darkness", "Moon", "calendar")
    LAYERS = ("NIGHTS",)

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.points("NIGHTS", tr("Nights: a result of night windows")),
            take.choice("THEME", tr("Theme: print or night"), THEME_NAMES, "print"),
            take.advanced(
                QgsProcessingParameterNumber(
                    "MAX_PICTURES", tr("Refuse to draw more pictures than"), QgsProcessingParameterNumber.Type.Integer, 100, False, 1
                )
            ),
            QgsProcessingParameterFolderDestination("FOLDER", tr("Folder for the pictures")),
        ):
            self.addParameter(parameter)
        self.addOutput(QgsProcessingOutputHtml("HTML", tr("Page of the pictures")))
        self.addOutput(QgsProcessingOutputNumber("PICTURES", tr("Pictures drawn")))

    def refusals(self, parameters, context):
        if not sheets.can_draw():
            yield tr(sheets.MISSING)
        yield from year_of_nights.refusals(self, parameters, context)

    def processAlgorithm(self, parameters, context, feedback):
        go_on = reporter(feedback)
        with in_words():
            sites = year_of_nights.read(self, parameters, context, feedback)
        limit = self.parameterAsInt(parameters, "MAX_PICTURES", context)
        if len(sites) > limit:
            raise QgsProcessingException(
                tr("{n:,} sites and bodies are more than MAX_PICTURES ({limit:,}). Select fewer sites, or raise MAX_PICTURES.").format(
                    n=len(sites), limit=limit
                )
            )
        tell_of_the_sun([site.body for site in sites], feedback)
        folder = Path(self.parameterAsString(parameters, "FOLDER", context))
        folder.mkdir(parents=True, exist_ok=True)
        theme, entries = THEMES[take.choice_of(self, parameters, "THEME", context)], []
        with in_words():
            for site in sites:
                if not go_on(len(entries) / len(sites)):
                    break
                entries.append(_drawn(site, f"{len(entries) + 1:03d}-{_slug(site.name)}-{_slug(site.body)}", folder, theme))
        page = folder / INDEX
        page.write_text(gallery.page(tr("Seasons"), _notes(), entries, theme), encoding="utf-8")
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} of {total:,} pictures drawn.").format(n=len(entries), total=len(sites)))
        elif not sites:
            feedback.pushWarning(tr("No pictures: NIGHTS holds no night that can be used."))
        else:
            feedback.pushInfo(tr("{n:,} pictures in {folder}.").format(n=len(entries), folder=folder))
        return {"FOLDER": str(folder), "HTML": str(page), "PICTURES": len(entries)}


def _drawn(site, stem, folder, theme):
    """Draw a site's year and write it, as PNG and SVG; its entry on the page."""
    year = season(site.nights, site.zone)
    changes = clock_changes(year.day, site.zone)
    heading = tr("{site}: {body}, nights of {first} to {last}").format(
        site=site.name, body=site.body_told, first=year.day[0], last=year.day[-1]
    )
    shifts = ", ".join(f"{day} ({shift_h:+g} h)" for day, shift_h in changes)
    lines = [
        tr("{place}. Hours by the clock of {zone}; {changes}.").format(
            place=site.place,
            zone=site.zone,
            changes=tr("it is changed in the night of {shifts}").format(shifts=shifts) if changes else tr("it is not changed"),
        ),
        tr(
            "Longest window of each night, under the limits of Sun, Moon and altitude with which the nights were searched. No clouds, "
            "no access. A planning aid, not a permit."
        ),
    ]
    legend = [tr(text) for text in season_chart.LEGEND]
    figure = season_chart.draw(year, [heading, *lines], legend, theme)
    for ending in (".png", ".svg"):
        sheets.save(figure, folder / (stem + ending))
    return stem, heading, lines, _table(site, year)


def _table(site, year):
    minutes = np.nan_to_num(site.nights["minutes"])
    with_window = np.flatnonzero(minutes > 0.0)
    table = {
        tr("Nights"): f"{year.day.size:,}",
        tr("Nights with a window"): f"{with_window.size:,}",
        tr("Hours of the longest windows"): f"{minutes.sum() / 60.0:,.0f} h",
    }
    if with_window.size:
        best = with_window[np.argmax(minutes[with_window])]
        nights = site.nights["night"][with_window]
        table[tr("First and last night with a window")] = f"{nights.min()}, {nights.max()}"
        table[tr("Longest window")] = f"{site.nights['night'][best]}, {minutes[best]:.0f} min"
    return table


def _notes():
    return [
        tr("Access, closures and night hours are decided by the land manager; walking in the dark is dangerous."),
        tr("Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter."),
    ]


def _slug(text):
    """A name as files bear it everywhere."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")[:40] or "site"
