"""`season_chart`: the year of a site at a glance, drawn from its night windows: dark hours, windows, Moon and tilt, night by night."""

from collections import Counter
from pathlib import Path

import numpy as np
from qgis.core import (
    QgsProcessingException,
    QgsProcessingOutputHtml,
    QgsProcessingOutputNumber,
    QgsProcessingParameterFolderDestination,
)

from ..adapters import parameters as take
from ..adapters import told_nights
from ..adapters.algorithm import Algorithm, in_words
from ..adapters.cautions import sun_line, tell_of_the_sun
from ..adapters.files import write_whole
from ..adapters.progress import reporter
from ..adapters.translation import date_told, language, localised, said, tr
from ..charts import gallery, season_chart, sheets
from ..charts.themes import THEMES
from ..names import BODIES
from ..names import THEMES as THEME_NAMES
from ..plan.clock import local_text
from ..plan.night_windows import reason_of
from ..plan.season_chart import chart_of
from ..plan.targets import target

PAGE = "season_chart.html"
ENDINGS = (".png", ".svg")
REASONS_TOLD = 3
WITHOUT_PLACE = {"star": "the star", "galactic": "the place on the plane"}  # rows do not tell where these are


class SeasonChart(Algorithm):
    """A picture for each site and body."""

    ID = "season_chart"
    GROUP = "nights"
    TITLE = "Season chart"
    SUMMARY = "A year in one picture, from night windows: every night a column, with its dark hours, window, Moon and the tilt of the band"
    TAGS = ("picture", "year", "season", "calendar", "chart", "Milky Way", "Moon", "darkness", "print")
    LAYERS = ("NIGHTS",)

    def initAlgorithm(self, configuration=None):
        for parameter in (
            take.helped(
                take.points("NIGHTS", tr("Nights: the first result of night_windows")),
                tr("A year of nights reads best. Select some sites and run on the selected features only, if there are many."),
            ),
            take.helped(
                take.choice("THEME", tr("Theme: print or night"), THEME_NAMES, "print"),
                "; ".join(f"{name}: {tr(words)}" for name, words in THEME_NAMES.items()),
            ),
            take.max_pictures(),
            QgsProcessingParameterFolderDestination("FOLDER", tr("Folder for the pictures")),
        ):
            self.addParameter(parameter)
        self.addOutput(QgsProcessingOutputHtml("HTML", tr("Page of the pictures")))
        self.addOutput(QgsProcessingOutputNumber("PICTURES", tr("Pictures drawn")))

    def refusals(self, parameters, context):
        if not sheets.can_draw():
            yield tr(sheets.MISSING)
        yield from told_nights.refusals(self, parameters, context)

    def processAlgorithm(self, parameters, context, feedback):
        limit = self.parameterAsInt(parameters, "MAX_PICTURES", context)
        source = self.parameterAsSource(parameters, "NIGHTS", context)
        at = told_nights.place_in(source.fields(), "site_id")
        self._refuse_too_many(len(source.uniqueValues(at)), limit)  # at least so many, known before the rows are read
        nights = told_nights.ToldNights(self, parameters, context, feedback)
        self._refuse_too_many(nights.pictures, limit)
        folder, go_on = Path(self.parameterAsString(parameters, "FOLDER", context)), reporter(feedback)
        pictures = Pictures(folder, THEMES[take.choice_of(self, parameters, "THEME", context)])
        with in_words():
            for season, done in nights.seasons():
                if not go_on(done):
                    break
                pictures.draw(season)
        page = pictures.gather()
        nights.log(feedback)
        tell_of_the_sun(pictures.bodies, feedback)
        self._log(pictures, nights, feedback)
        return {"FOLDER": str(folder), "HTML": str(page), "PICTURES": len(pictures.entries)}

    @staticmethod
    def _refuse_too_many(pictures, limit):
        if pictures > limit:
            raise QgsProcessingException(
                tr(
                    "This asks for {n:,} pictures, a site each, over MAX_PICTURES ({limit:,}). Select fewer sites and run on the selected "
                    "features only, or raise MAX_PICTURES."
                ).format(n=pictures, limit=limit)
            )

    @staticmethod
    def _log(pictures, nights, feedback):
        drawn = len(pictures.entries)
        if feedback.isCanceled():
            feedback.pushInfo(tr("Cancelled: {n:,} pictures drawn.").format(n=drawn))
        elif not drawn:
            feedback.pushWarning(tr("No pictures: there is no night that can be used."))
        else:
            feedback.pushInfo(
                tr("{n:,} pictures of {sites:,} sites and bodies in {folder}.").format(n=drawn, sites=len(nights), folder=pictures.folder)
            )


class Pictures:
    """The pictures of a folder, and what the page that gathers them tells of each."""

    def __init__(self, folder, theme):
        self.folder, self.theme, self.entries, self.overview, self.bodies = folder, theme, [], [], set()
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as failed:
            raise QgsProcessingException(
                tr("The folder {folder} cannot be made: {reason}").format(folder=folder, reason=failed.strerror)
            ) from failed

    def draw(self, season):
        """Draw the nights of a season, a year at most, and write them as PNG and SVG."""
        chart = chart_of(season.rows, season.zone_name, season.lon_deg, season.lat_deg)
        who = season.site if not season.body else f"{season.site}: {tr(BODIES[season.body])}"
        heading = tr("{who}, nights {first} to {last}").format(who=who, first=date_told(chart.nights[0]), last=date_told(chart.nights[-1]))
        summary = Summary(season, chart)
        lines = [self._clock(season, chart), summary.usable(), summary.unusable(), *self._cautions(season, chart)]
        figure = season_chart.draw(chart, heading, lines, self._words(season, chart), season.body, self.theme)
        stem = f"season-{len(self.entries) + 1:03d}-{sheets.file_name(season.site, 'site')}-{chart.nights[0]}"
        for ending in ENDINGS:
            write_whole(self.folder / (stem + ending), sheets.rendered(figure, ending))
        self.entries.append((stem, heading, lines, summary.months()))
        self.overview.append((who, (date_told(chart.nights[0]), *summary.cells())))
        self.bodies.add(season.body)

    @staticmethod
    def _body(season):
        if not season.body:
            return tr("the body")
        return tr(WITHOUT_PLACE.get(season.body) or target(season.body).phrase)

    def _words(self, season, chart):
        """What stands beside marks that are drawn, and below them."""
        words = {
            "twilight": tr("twilight"),
            "window": tr("{body} usable, as asked").format(body=self._body(season)),
            "moon": tr("Moon up: the wider the bar, the more of it is lit"),
            "new": tr("new"),
            "full": tr("full"),
            "turn": tr("clock {hours:+g} h"),
            "tilt": tr(
                "Tilt of the band: 0° flat, 90° upright. Dot: at a window's best minute; tick: at its start; bar: from these to its end"
            ),
        }
        if chart.dark.column.size:
            words["dark"] = tr("dark: Sun under {limit:.3g}°").format(limit=chart.sun_limit_deg)
            if not np.isfinite(chart.sun_limit_deg):
                words["dark"] = tr("dark")
        if np.isfinite(chart.best[2]).any():
            words["stroke"] = tr("how the band rises from the core (the dot) at the best minute")
        return words

    @staticmethod
    def _clock(season, chart):
        lat, lon = season.lat_deg, season.lon_deg
        told = tr(
            "{lat:.4f}° {ns}, {lon:.4f}° {ew}. Clock on the wall of {zone}, upward from {foot:02d}:00; a night bears its evening's date."
        )
        line = told.format(
            lat=abs(lat),
            ns=tr("S") if lat < 0 else tr("N"),
            lon=abs(lon),
            ew=tr("W") if lon < 0 else tr("E"),
            zone=season.zone_name,
            foot=chart.foot_h,
        )
        turns = ", ".join(
            tr("{night} ({hours:+g} h)").format(night=date_told(chart.nights[int(column)]), hours=hours)
            for column, hours in chart.turns.T.tolist()
        )
        return f"{line} {tr('Clocks change in the night of {nights}.').format(nights=turns)}" if turns else line

    @staticmethod
    def _cautions(season, chart):
        missing = int((~chart.told).sum())
        if missing:
            yield tr("{n:,} nights are not in the layer: hatched.").format(n=missing)
        if season.body == "sun":
            yield sun_line()
        yield tr(
            "A planning aid, not a survey and not a permit: it knows nothing of clouds, closures, access or footing. "
            "Arrive before dark, not alone."
        )

    def gather(self):
        """Write the page of all pictures; its path."""
        notes = [
            tr("Every night is a column, from noon up to noon by the clock on the wall; the hour that clocks skip in spring is empty."),
            tr("Access, closures and night hours are decided by the land manager and local law. Walking in the dark is dangerous."),
        ]
        if "sun" in self.bodies:
            notes.append(sun_line())
        heads = tr("Site and body"), (tr("first night"), tr("nights with a window"), tr("hours"), tr("season"), tr("longest window"))
        page = self.folder / PAGE
        overview = [heads, *self.overview] if self.overview else []
        write_whole(
            page, gallery.page(tr("Season charts"), notes, self.entries, self.theme, overview, language()).encode("utf-8", "replace")
        )
        return page


class Summary:
    """A season in numbers."""

    def __init__(self, season, chart):
        self._chart, self._zone_name, rows = chart, season.zone_name, season.rows
        minutes = np.nan_to_num(rows["minutes"])
        self._usable, self._total, self._hours = int((minutes > 0).sum()), minutes.size, minutes.sum() / 60.0
        best = int(np.argmax(minutes))
        self._longest = {name: rows[name][best] for name in ("night", "t_start", "t_end")}, minutes[best]
        self._reasons = Counter(reason for reason in rows["reason"].tolist() if reason)
        best_month = int(np.argmax(np.nan_to_num(chart.months["best_min"])))
        first, last = (date_told(chart.months[name][best_month]) for name in ("first_night", "last_night"))
        self._season = tr("{first} to {last}").format(first=first, last=last)

    def _window(self):
        """The longest window, in words."""
        row, minutes = self._longest
        start, end = local_text(np.array([row["t_start"], row["t_end"]]), [self._zone_name], 0)
        return f"{date_told(row['night'])}, {start[11:16]}-{end[11:16]} ({_duration(minutes)})"

    def usable(self):
        """A line about nights with a window."""
        if not self._usable:
            return tr("None of {total:,} nights has a window.").format(total=self._total)
        return tr(
            "{n:,} of {total:,} nights have a window, {hours:.0f} h in all (of each night the longest); season {season}; longest: {window}."
        ).format(n=self._usable, total=self._total, hours=self._hours, season=self._season, window=self._window())

    def unusable(self):
        """A line about the others."""
        told = "; ".join(
            f"{localised(f'{count:,}')}: {said(reason_of(reason))}" for reason, count in self._reasons.most_common(REASONS_TOLD)
        )
        return tr("Why nights have no window, the most frequent reasons: {reasons}.").format(reasons=told or "-")

    def cells(self):
        """Its cells of the overview."""
        if not self._usable:
            return localised(f"0 / {self._total:,}"), "-", "-", "-"
        return localised(f"{self._usable:,} / {self._total:,}"), f"{self._hours:.0f}", self._season, self._window()

    def months(self):
        """A table, a row a month."""
        months = self._chart.months
        table = {tr("Month"): (tr("nights with a window"), tr("hours"), tr("best night"), tr("its window"), tr("Saturdays at new Moon"))}
        names = ("month", "nights", "hours", "best_night", "best_min", "new_moon")
        for month, nights, hours, night, minutes, moons in zip(*(months[name].tolist() for name in names)):
            best = ("-", "-") if night is None else (date_told(night), _duration(minutes))
            table[month] = (f"{nights}", localised(f"{hours:.1f}"), *best, date_told(moons or "-"))
        return table


def _duration(minutes):
    hours, rest = divmod(int(minutes + 0.5), 60)
    return f"{hours} h {rest:02d} min"
