"""The field plan as a page of HTML: a sheet a night and place, for paper and for a dark screen. No scripts, nothing is fetched."""

from html import escape
from itertools import groupby

import numpy as np

from . import field_words as words
from .field_pictures import Strip, dial, look_of
from .translation import date_told, language, tr

# Okabe and Ito's colours for bodies on paper; red alone on the screen, which spares the eyes that are used to the dark.
PAPER = """--ink: #222; --faint: #555; --rule: #aaa; --paper: #fff; --core: #cc79a7; --sun: #d55e00; --moon: #009e73; --line: #222;
  --day: #fff; --civil: #e2e2e2; --nautical: #c4c4c4; --astronomical: #a6a6a6; --night: #888;"""
DARK = """--ink: #ff2020; --faint: #c80000; --rule: #500000; --paper: #000; --core: #ff2020; --sun: #ff2020; --moon: #c80000;
  --line: #ff2020; --day: #500000; --civil: #3a0000; --nautical: #260000; --astronomical: #140000; --night: #000;"""
STYLE = (
    ":root { "
    + DARK
    + " }\n:root:has(#light:checked) { "
    + PAPER
    + " }\n@media print { :root { "
    + PAPER
    + """ } }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 16px/1.4 "DejaVu Sans", Verdana, sans-serif;
  -webkit-print-color-adjust: exact; print-color-adjust: exact; }
body { margin: 0 auto; max-width: 60rem; padding: 0 1rem 2rem; overflow-wrap: anywhere; }
label { display: block; padding: .8rem 0; color: var(--faint); }
section { border-top: 3px solid var(--ink); padding: .8rem 0 2rem; }
header { display: flex; gap: 1rem; justify-content: space-between; align-items: flex-start; }
h1 { font-size: 1.5em; line-height: 1.15; margin: 0 0 .3rem; }
h2 { font-size: 1em; margin: .8em 0 .2em; }
p, ul { margin: .2rem 0; }
ul { padding-inline-start: 1.2rem; }
.night { font-size: 1.15em; }
.faint, small { color: var(--faint); }
.warn { border: 2px solid var(--ink); padding: .2rem .5rem; font-weight: bold; }
.dial { flex: 0 0 8.5rem; width: 8.5rem; }
.strip { width: 100%; display: block; margin: .6rem 0; }
svg text { fill: var(--ink); font-family: inherit; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: start; vertical-align: top; padding: .13em .5em .13em 0; border-bottom: 1px solid var(--rule); }
thead th { font-size: .8em; font-weight: normal; color: var(--faint); }
td.n, th.n { text-align: end; white-space: nowrap; font-variant-numeric: tabular-nums; }
.time { font-size: 1.2em; font-weight: bold; white-space: nowrap; font-variant-numeric: tabular-nums;
  width: 1%; padding-inline-end: 1rem; }
tr.body td { font-weight: bold; }
tr.body small { font-weight: normal; display: block; }
tr.day th { font-size: .8em; color: var(--faint); padding-top: .4em; }
.blanks span { display: inline-block; min-width: 7rem; border-bottom: 1px solid var(--ink); }
.core { --own: var(--core); } .sun { --own: var(--sun); } .moon { --own: var(--moon); } .star { --own: var(--line); }
@media screen and (max-width: 40rem) {
  .times thead { display: none; } .times th, .times td { border: 0; }
  .times tr { display: grid; grid-template-columns: 4.6rem 1fr 1fr 1fr; border-bottom: 1px solid var(--rule); }
  .times .time { width: auto; } .times .time + td { grid-column: 2 / -1; } .times .day th { grid-column: 1 / -1; }
  .times td.n { text-align: start; } .times td.n:nth-of-type(3) { grid-column: 2; }
  .times td.n::before { content: attr(data-of); display: block; font-size: .75rem; font-weight: normal; color: var(--faint); }
  .lines { font-size: .8rem; } .strip text { font-size: 30px; } .dial { flex-basis: 6.5rem; width: 6.5rem; }
}
@page { margin: 10mm; }
@media print {
  html { font-size: 9pt; line-height: 1.25; } body { padding: 0; max-width: none; } label { display: none; }
  section { break-after: page; padding: 1.5mm 0 0; } section:last-of-type { break-after: auto; }
  section.long { font-size: .9em; } section.longest { font-size: .8em; } .cautions { font-size: .9em; }
  tr, .cautions, .blanks, header { break-inside: avoid; } thead { display: table-header-group; }
  .dial { flex-basis: 30mm; width: 30mm; } .time { font-size: 1.1em; }
  section.longest { line-height: 1.2; } .longest th, .longest td { padding-block: .05em; } .longest .dial { flex-basis: 25mm; width: 25mm; }
}
"""
)
LIGHTS = ("day", "civil", "nautical", "astronomical", "night")
DUSKS = ("sunset", "civil_dusk", "nautical_dusk", "astronomical_dusk")  # each ends one of the lights and begins the next
DAWNS = ("sunrise", "civil_dawn", "nautical_dawn", "astronomical_dawn")  # and back
TURNS = {**dict(zip(DUSKS, zip(LIGHTS, LIGHTS[1:]))), **dict(zip(DAWNS, zip(LIGHTS[1:], LIGHTS)))}  # light before, light after
HOUR_S = 3600.0
SHORT_S = 180.0  # a stretch of less is told in one line
SIZES = ((27, "longest"), (21, "long"))  # more lines than this in the tables are set smaller, to stay on one page of paper
HEAD_LETTERS, ROW_LETTERS, LINES_OF_ROW = 45, 60, 4  # in a line of the heading, and of a name in the tables; lines that tell an alignment
MOST_HOURS = 10  # labelled one by one; a longer night gets every other or fewer


def name(text):
    """A name of the user's, in its own direction of writing."""
    return f"<bdi>{escape(str(text))}</bdi>"


def page(title, made, sheets):
    """The whole page, as bytes.

    Parameters
    ----------
    title, made : str
    sheets : iterable of str
        Sections.
    """
    toggle = f'<label><input type="checkbox" id="light"> {escape(tr("Black on white"))}</label>'
    text = (
        f'<!DOCTYPE html>\n<html lang="{language()}">\n<head>\n<meta charset="utf-8">\n'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n{toggle}\n"
        + "\n".join(sheets)
        + f'\n<p class="faint"><small>{escape(made)}</small></p>\n</body>\n</html>\n'
    )
    return text.encode("utf-8", "replace")


def empty(reason):
    """The only sheet of a plan without any alignment."""
    return f"<section><h1>{escape(tr('Nothing to plan'))}</h1><p>{escape(reason)}</p></section>"


class Sheets:
    """Sheets of a plan as sections of a page.

    Parameters
    ----------
    planned : Planned
    plan : FieldPlan
    on_foot : OnFoot
        With a way for each row.
    """

    def __init__(self, planned, plan, on_foot):
        self._planned, self._plan, self._on_foot = planned, plan, on_foot
        self._rows, self._told = planned.rows, words.Told(planned, plan)
        self._rows_of = np.split(np.argsort(plan.sheet_of_row, kind="stable"), np.cumsum(np.bincount(plan.sheet_of_row))[:-1])
        ends = np.searchsorted(plan.events["sheet"], np.arange(len(self._rows_of) + 1))
        self._events_of = [np.arange(*span) for span in zip(ends[:-1], ends[1:])]

    def __len__(self):
        return len(self._rows_of)

    def section(self, sheet):
        """One sheet."""
        rows = self._rows_of[sheet]
        rows = rows[np.argsort(self._rows["t_utc"][rows], kind="stable")].tolist()
        lines = len(self._shown(sheet)) + len(rows) + len(list(self._warnings(rows))) + self._wrapped(sheet, rows)
        size = next((look for most, look in SIZES if lines > most), "")
        return "\n".join(
            (
                f'<section class="{size}">',
                self._header(sheet, rows),
                *(f'<p class="warn">{escape(sentence)}</p>' for sentence in self._warnings(rows)),
                self._strip(sheet, rows),
                self._timetable(sheet, rows),
                self._sightlines(rows),
                self._walk(sheet),
                self._blanks(sheet),
                self._cautions(rows),
                "</section>",
            )
        )

    def _wrapped(self, sheet, rows):
        """How many lines more long names take, about."""
        told, several = self._told, self._is_many(rows)
        lines = 1.8 * (len(self._stand(sheet)) // HEAD_LETTERS)
        for row in rows:
            letters = len(told.subject(row)) + (len(told.camera(row)) if several else 0)
            lines += LINES_OF_ROW * (letters // ROW_LETTERS)
        return lines

    def _stand(self, sheet):
        """The name of a sheet: of the path, or of the camera."""
        first = self._plan.sheets["first"][sheet]
        return self._rows["path"][first] or self._told.camera(first)

    def _local(self, sheet, t_utc_s):
        zone = self._planned.zone_index[self._plan.sheets["first"][sheet]]
        return words.local(t_utc_s, self._planned.zone_names, zone)

    def _header(self, sheet, rows):
        first = self._plan.sheets["first"][sheet]
        offsets = dict.fromkeys(offset for _, _, offset in self._local(sheet, self._moments(sheet)).tolist())
        zone = " / ".join([words.zone(self._told.zone(first), next(iter(offsets))), *(f"UTC{offset}" for offset in list(offsets)[1:])])
        lines = [
            f'<p class="night">{escape(tr("Night of {night}").format(night=date_told(self._plan.sheets["night"][sheet])))}</p>',
            f"<h1>{name(self._stand(sheet))}</h1>",
        ]
        if not self._is_many(rows):
            lines.append(f"<p>{escape(self._place(first))}</p>")
        lines.append(f"<p>{escape(tr('Times: {zone}').format(zone=zone))}</p>")
        lines.append(f"<p>{escape(self._compass(first))}</p>")
        return f"<header><div>{''.join(lines)}</div>{self._dial(sheet, rows)}</header>"

    def _place(self, row):
        return words.place(self._rows["lon_deg"][row], self._rows["lat_deg"][row])

    def _is_many(self, rows):
        """Whether a sheet holds more than one place."""
        return len({(self._told.camera(row), self._place(row)) for row in rows}) > 1

    def _compass(self, row):
        declination = self._rows["decl_deg"][row]
        if not np.isfinite(declination):
            return tr("Magnetic bearings are not known: the magnetic model holds from 2025 to 2030.")
        side = tr("east") if declination >= 0.0 else tr("west")
        return tr("Magnetic declination {deg} {side}").format(deg=words.degrees(abs(declination)), side=side)

    def _moments(self, sheet):
        return self._plan.events["t_utc_s"][self._events_of[sheet]]

    def _shown(self, sheet):
        """Events that get a line: begin and end of a short stretch do not."""
        events, own = self._plan.events, self._events_of[sheet]
        row = events["row"][own]
        with np.errstate(invalid="ignore"):
            short = (row >= 0) & (self._rows["t_end"][row] - self._rows["t_start"][row] < SHORT_S)
        return own[~short | (events["kind"][own] == "closest")]

    def _warnings(self, rows):
        yield from dict.fromkeys(sentence for row in rows for sentence in self._told.warnings(row))

    # pictures

    def _dial(self, sheet, rows):
        """The sightlines about the camera, and the azimuths over which bodies pass."""
        events, passages = self._plan.events, {row: [] for row in rows}
        for event in self._events_of[sheet].tolist():
            if events["row"][event] >= 0 and np.isfinite(events["az_deg"][event]):
                passages[int(events["row"][event])].append(float(events["az_deg"][event]))
        bearings = list(dict.fromkeys(round(float(self._rows["bearing_deg"][row]), 1) for row in rows))
        looks = ((look_of(self._rows["body"][row]), azimuths) for row, azimuths in passages.items())
        return dial(escape(tr("Bearings of the subjects, true north up")), bearings, looks)

    def _strip(self, sheet, rows):
        """The night from left to right: twilight, Moon, and when bodies stand over subjects."""
        sheets, moments = self._plan.sheets, self._moments(sheet)
        t0 = np.fmin(moments.min(), sheets["sunset"][sheet]) - HOUR_S / 2.0
        t1 = np.fmax(moments.max(), sheets["sunrise"][sheet]) + HOUR_S / 2.0
        strip = Strip(t0, t1)
        for stretch in self._skies(sheet, rows, t0, t1):
            strip.sky(*stretch)
        for stretch in self._moon(sheet, rows, t0, t1):
            strip.moon(*stretch)
        for row in rows:
            strip.alignment(look_of(self._rows["body"][row]), *(self._rows[moment][row] for moment in ("t_start", "t_utc", "t_end")))
        for kind in ("arrive", "leave"):
            strip.coming_or_going(sheets[kind][sheet])
        every_s = HOUR_S * np.ceil((t1 - t0) / HOUR_S / MOST_HOURS)
        hours = np.arange(np.ceil(t0 / every_s) * every_s, t1, every_s)
        for hour, (_, clock, _) in zip(hours.tolist(), self._local(sheet, hours).tolist()):
            strip.hour(hour, clock)
        legend = escape(tr("Daylight, twilight, darkness; the alignments; broken lines: arrive, leave. Bar beneath: the Moon is up."))
        return f'{strip.svg(escape(tr("The night from left to right")))}<p class="faint"><small>{legend}</small></p>'

    def _skies(self, sheet, rows, t0, t1):
        """Stretches of equal light."""
        sheets, told = self._plan.sheets, self._rows["sky"][rows[0]]
        turns = sorted((float(sheets[kind][sheet]), kind) for kind in TURNS if np.isfinite(sheets[kind][sheet]))
        always = told if told in LIGHTS else "day" if sheets["up_at_noon"][sheet] else "night"
        begin, light = t0, TURNS[turns[0][1]][0] if turns else always
        for moment, kind in turns:
            yield begin, moment, light
            begin, light = moment, TURNS[kind][1]
        yield begin, t1, light

    def _moon(self, sheet, rows, t0, t1):
        """Stretches in which the Moon is up."""
        rise, fall = (float(self._plan.sheets[kind][sheet]) for kind in ("moonrise", "moonset"))
        if np.isfinite(rise) and np.isfinite(fall):
            return [(rise, fall)] if rise < fall else [(t0, fall), (rise, t1)]
        if np.isfinite(rise) or np.isfinite(fall):
            return [(rise, t1)] if np.isfinite(rise) else [(t0, fall)]
        return [(t0, t1)] if self._rows["moon_deg"][rows[0]] > words.MOON_UP_DEG else []

    # tables

    def _timetable(self, sheet, rows):
        own = self._shown(sheet)
        several = self._is_many(rows)
        local = self._local(sheet, self._plan.events["t_utc_s"][own]).tolist()
        has_two_clocks = len({offset for _, _, offset in local}) > 1
        numbers = "".join(f'<th class="n">{escape(title)}</th>' for title in self._columns())
        head = f"<th>{escape(tr('Time'))}</th><th>{escape(tr('What'))}</th>{numbers}"
        body = []
        for date, events in groupby(zip(own.tolist(), local), key=lambda happening: happening[1][0]):
            body.append(f'<tr class="day"><th colspan="5">{escape(date_told(date))}</th></tr>')
            for event, (_, clock, offset) in events:
                body.append(self._event(event, f"{clock} {offset}" if has_two_clocks else clock, several))
        return f'<table class="times"><thead><tr>{head}</tr></thead><tbody>{"".join(body)}</tbody></table>'

    @staticmethod
    def _columns():
        return tr("Azimuth, true"), tr("magnetic"), tr("Altitude")

    def _event(self, event, clock, several):
        kind, row, az, alt = (self._plan.events[column][event] for column in ("kind", "row", "az_deg", "alt_deg"))
        time = f'<td class="time">{escape(clock)}</td>'
        if row < 0:
            sheet = self._plan.events["sheet"][event]
            return f'<tr>{time}<td colspan="4">{escape(words.happening(kind))}{self._in_the_dark(kind, sheet)}</td></tr>'
        told = self._told
        sentence = words.happening(kind, escape(told.body(row)), name(told.subject(row)), told.is_moment(row))
        if several and kind in ("start", "closest"):
            sentence = f"{name(told.camera(row))}: {sentence}"
        if kind == "closest":
            more = [text for text in (self._brief(row), told.gap(row), *told.light(row)) if text]
            sentence += f"<small>{escape(' · '.join(more))}</small>" if more else ""
        magnetic = (az - self._rows["decl_deg"][row]) % 360.0
        numbers = (words.bearing(az), words.bearing(magnetic), words.degrees(alt))
        cells = "".join(f'<td class="n" data-of="{escape(title)}">{number}</td>' for title, number in zip(self._columns(), numbers))
        return f'<tr class="{"body" if kind == "closest" else "edge"}">{time}<td>{sentence}</td>{cells}</tr>'

    def _brief(self, row):
        """How long a stretch lasts that has no lines of its own."""
        length_s = self._rows["t_end"][row] - self._rows["t_start"][row]
        return tr("for {s:.0f} s").format(s=length_s) if length_s < SHORT_S else None

    def _in_the_dark(self, kind, sheet):
        """A word beside a walk that lies in the dark."""
        sheets = self._plan.sheets
        dark = (kind == "depart" and sheets["dark_out"][sheet]) or (kind == "leave" and sheets["dark_back"][sheet])
        dark = dark or (kind == "arrive" and sheets["dark_out"][sheet] and not np.isfinite(sheets["depart"][sheet]))
        return f" <small>{escape(tr('in the dark: lamp, known path'))}</small>" if dark else ""

    def _sightlines(self, rows):
        told, table = self._told, self._rows
        distinct, several = {}, self._is_many(rows)
        for row in rows:
            distinct.setdefault((told.camera(row), told.subject(row), round(float(table["bearing_deg"][row]), 3)), row)
        texts = [*([tr("Camera"), tr("Place")] if several else []), tr("Subject")]
        numbers = (tr("Bearing, true"), tr("magnetic"), tr("Distance"), tr("Altitude of its top"))
        head = "".join([*(f"<th>{escape(title)}</th>" for title in texts), *(f'<th class="n">{escape(title)}</th>' for title in numbers)])
        body = []
        for (camera, subject, _), row in distinct.items():
            cells = f"<td>{name(subject)}</td>"
            if several:
                cells = f"<td>{name(camera)}</td><td>{escape(self._place(row))}</td>{cells}"
            numbers = (
                f"{words.bearing(table['bearing_deg'][row])} ± {words.degrees(table['err_deg'][row])}",
                words.bearing(table["mag_deg"][row]),
                words.metres(table["dist_m"][row]),
                words.degrees(table["top_alt_deg"][row]),
            )
            cells += "".join(f'<td class="n">{escape(number)}</td>' for number in numbers)
            body.append(f"<tr>{cells}</tr>")
        title = escape(tr("Sightlines"))
        rows_of_table = "".join(body)
        return f'<h2>{title}</h2><table class="lines"><thead><tr>{head}</tr></thead><tbody>{rows_of_table}</tbody></table>'

    def _walk(self, sheet):
        """The way to the first place, and to the last where it is another."""
        ends = (self._plan.sheets[end][sheet] for end in ("first", "last"))
        ways = dict.fromkeys(" ".join(walk_sentences(self._on_foot, row, name, escape)) for row in ends)
        return f"<h2>{escape(tr('Walk'))}</h2>{''.join(f'<p>{way}</p>' for way in ways)}"

    def _blanks(self, sheet):
        back = self._plan.sheets["back"][sheet]
        until = back if np.isfinite(back) else self._plan.sheets["leave"][sheet]
        ((date, clock, _),) = self._local(sheet, until).tolist()
        sentence = tr("{blank} knows of this and hears from us by {blank} (the plan ends at {date} {clock}); if not, alert: {blank}")
        return f'<p class="blanks">{escape(sentence).format(blank="<span>&nbsp;</span>", date=date_told(date), clock=clock)}</p>'

    def _cautions(self, rows):
        bodies = {self._rows["body"][row] for row in rows}
        has_terrain = any(self._rows["sight"][row] or self._rows["heights"][row] == "dem" for row in rows)
        items = "".join(f"<li>{escape(sentence)}</li>" for sentence in words.cautions(bodies, has_terrain))
        return f'<ul class="cautions">{items}</ul>'


def walk_sentences(on_foot, place, named, plain):
    """How to get from the car to a place, each sentence through `plain` and each name through `named`."""
    ways, walk, parking = on_foot.ways, on_foot.name_of_walk(place), on_foot.name_of_parking(place)
    if walk is not None:
        start = named(parking) if parking is not None else plain(tr("its farther end"))
        sentence = tr("From {parking} along {walk}: {dist}, {time} at {speed:g} km/h. Slopes and rests are not counted.")
        yield plain(sentence).format(
            parking=start,
            walk=named(walk),
            dist=words.metres(ways.length_m[place]),
            time=words.minutes(on_foot.walk_min[place]),
            speed=on_foot.speed_km_h,
        )
        yield from (plain(sentence) for sentence in on_foot.gaps(place))
    elif parking is not None:
        sentence = tr("Nearest parking: {parking}, {dist} off as the crow flies (bearing {bearing}). No walk is known: nor is its time.")
        yield plain(sentence).format(
            parking=named(parking), dist=words.metres(ways.straight_m[place]), bearing=words.bearing(ways.straight_deg[place])
        )
    else:
        yield plain(tr("No way from a car is known: add the time that you need for it."))
