"""What a sheet says: its applicant, places, sightlines, timetable, closed ground, data and cautions, as blocks of text and tables."""

import numpy as np

from ..names import PROVIDER_NAME
from ..plan.standpoints import position_error_deg
from . import field_words as words
from .cautions import dark_line, permit_line, sun_line, terrain_line
from .parameters import text_of
from .planned import is_allowed
from .sheet_flow import Heading, Pairs, Paragraph, Table
from .sheet_parameters import APPLICANT_BLOCK
from .translation import date_told, localised, tr

NIGHTS_TOLD, INSIDE_NAMED = 6, 4  # one by one; by name, more by their marks
LONGEST_NAME = 40  # letters beside a mark
KINDS = {"camera": "camera", "standpoint": "standpoint", "subject": "subject", "parking": "parking"}
_SIGHTS = {"clear": "in sight", "hidden": "hidden by terrain", "uncertain": "too close to tell", "": "not tested"}
_INSIDE = {"m": "{m:,.0f} m of it", "m2": "{m:,.0f} m² of it"}
NOTICE = "Applicant's map. Not issued or approved by the land manager."


def notice():
    """What every sheet says first."""
    return tr(NOTICE)


def nights_told(nights):
    """Nights in one line, none as an empty text."""
    if not len(nights):
        return ""
    if len(nights) == 1:
        return tr("Night of {night}").format(night=date_told(nights[0]))
    if len(nights) <= NIGHTS_TOLD:
        return tr("Nights of {nights}").format(nights=", ".join(map(date_told, nights)))
    return tr("{n} nights from {first} to {last}").format(n=len(nights), first=date_told(nights[0]), last=date_told(nights[-1]))


def north_told(north):
    """Declination, convergence and their date."""
    lines = []
    if np.isfinite(north.declination_deg):
        lines.append(
            tr("Magnetic north {deg} {side} of true north ({model}, {date})").format(
                deg=words.degrees(abs(north.declination_deg)),
                side=_side(north.declination_deg),
                model=north.model,
                date=date_told(north.date),
            )
        )
    else:
        lines.append(tr("Magnetic north not known for {date}: the model holds from 2025 to 2030").format(date=date_told(north.date)))
    if abs(north.true_deg) < 0.005:
        lines.append(tr("Grid north is true north here"))
    else:
        lines.append(
            tr("Grid north {deg} {side} of true north").format(deg=localised(f"{abs(north.true_deg):.2f}°"), side=_side(-north.true_deg))
        )
    return "\n".join(lines)


def _side(east_deg):
    return tr("east") if east_deg >= 0.0 else tr("west")


def coordinates(lon_deg, lat_deg):
    """Latitude and longitude to 0.00001°, about a metre."""
    return words.latitude(lat_deg), words.longitude(lon_deg)


class Words:
    """The words of a run's sheets.

    Parameters
    ----------
    parameters : dict
        Of the algorithm.
    sites : Sites
    facts : sequence of (str, str)
        What goes for all sheets: names, and what is said of them, of the data.
    dem : (str, str) or None
        Name and cell size of the elevation model. [m]
    """

    def __init__(self, parameters, sites, position_error_m, facts, dem):
        self._parameters, self._sites, self._error_m, self._facts, self._dem = parameters, sites, position_error_m, facts, dem
        self._told = words.Told(sites.planned, sites.plan) if sites.plan is not None else None

    def blocks(self, site, off_map):
        """All that stands beneath the map of a sheet; `off_map` holds the marks of places beyond its edge."""
        yield from self._applicant(site)
        yield from self._places(site, off_map)
        yield from self._lines(site)
        yield from self._closed(site)
        yield from self._timetable(site)
        yield from self._data(site)
        yield from self._cautions(site)

    # who and what

    def _applicant(self, site):
        rows = []
        for name, label in APPLICANT_BLOCK.items():
            value = text_of(self._parameters, name) or ""
            if name == "HOURS" and not value and len(site.nights):
                value = tr("{nights}; hours as in the timetable").format(nights=nights_told(site.nights))
            rows.append((tr(label), value))
        yield Heading(tr("Application"))
        yield Pairs(tuple(rows))

    # where

    def _places(self, site, off_map):
        places = site.places
        rows = []
        for i, (kind, mark, name) in enumerate(zip(places.kind, places.mark, places.name)):
            lat, lon = coordinates(float(places.lon_deg[i]), float(places.lat_deg[i]))
            told = tr("{name} (beyond the map's edge)").format(name=name) if mark in off_map else name
            rows.append((mark, told, tr(KINDS[kind]), lat, lon, f"{site.x[i]:.0f}", f"{site.y[i]:.0f}"))
        yield Heading(tr("Places"), tr("WGS 84; grid coordinates of {zone}, in metres").format(zone=_zone_told(site)))
        heads = "", tr("Name"), tr("What"), tr("Latitude"), tr("Longitude"), tr("Easting"), tr("Northing")
        yield Table(heads, tuple(rows), wide=(1,), right=(3, 4, 5, 6))

    def _lines(self, site):
        rows = list(self._sight_rows(site))
        yield Heading(
            tr("Bearings and distances"),
            tr(
                "Clockwise from true north at the camera, along the geodesic; ± is, at most, what a position known to {m:g} m is worth"
            ).format(m=self._error_m),
        )
        if not rows:
            yield Paragraph(tr("No sightlines were given for this sheet."))
            return
        heads = tr("From"), tr("To"), tr("Bearing, true"), tr("Back"), tr("Magnetic"), tr("Distance"), tr("Line of sight")
        yield Table(heads, tuple(rows), wide=(0, 1, 6), right=(2, 3, 4, 5))

    def _sight_rows(self, site):
        marks = {}
        for mark, kind, name in zip(site.places.mark, site.places.kind, site.places.name):
            marks.setdefault(("subject" if kind == "subject" else "camera", name), mark)
        told = set()
        for lines in (site.lines, site.standing):
            for i in range(len(lines.get("camera", ()))):
                camera, subject, dist_m = lines["camera"][i], lines["subject"][i], float(lines["dist_m"][i])
                bearing = float(lines["bearing_deg"][i])
                line = camera, subject, words.bearing(bearing), words.metres(dist_m)
                if line in told:  # a standpoint, from which alignments were found too
                    continue
                told.add(line)
                yield (
                    f"{marks.get(('camera', camera), '')} {_short(camera)}".strip(),
                    f"{marks.get(('subject', subject), '')} {_short(subject)}".strip(),
                    f"{words.bearing(bearing)} ± {words.degrees(np.ceil(10.0 * position_error_deg(self._error_m, dist_m)) / 10.0)}",
                    words.bearing(lines["back_deg"][i]),
                    words.bearing(lines["mag_deg"][i]),
                    words.metres(dist_m),
                    tr(_SIGHTS.get(lines["sight"][i], _SIGHTS[""])),
                )

    # when

    def _timetable(self, site):
        if not site.rows.size:
            given = self._sites.planned is not None
            yield Heading(tr("Timetable"))
            yield Paragraph(
                tr("No alignment falls on this sheet: there are no times to tell.")
                if given
                else tr("No alignments were given: there are no times to tell.")
            )
            return
        sites = self._sites
        local = {name: self._local(site, name) for name in ("t_start", "t_utc", "t_end")}
        zones = dict.fromkeys(
            words.zone(sites.planned.zone_names[sites.planned.zone_index[row]], offset)
            for row, (_, _, offset) in zip(site.rows.tolist(), local["t_utc"])
        )
        yield Heading(
            tr("Timetable"),
            tr("Times of {zones}; a night bears the date of its evening, times after midnight belong to the next morning").format(
                zones=" / ".join(zones)
            ),
        )
        yield from self._walking(site)
        heads = tr("Night"), tr("Be there"), tr("What"), tr("Begins"), tr("Closest"), tr("Ends"), tr("Az."), tr("Alt."), tr("Light")
        yield Table((*heads, tr("Leave")), tuple(self._rows(site, local, len(zones) > 1)), wide=(2, 8), right=(6, 7))

    def _local(self, site, name):
        planned = self._sites.planned
        return words.local(planned.rows[name][site.rows], planned.zone_names, planned.zone_index[site.rows]).tolist()

    def _rows(self, site, local, has_offsets):
        plan, planned = self._sites.plan, self._sites.planned
        at = {row: i for i, row in enumerate(site.rows.tolist())}
        order = site.rows[np.lexsort([planned.rows["t_utc"][site.rows], plan.sheet_of_row[site.rows]])].tolist()
        before = None
        for row in order:
            sheet = int(plan.sheet_of_row[row])
            night, arrive, leave = "", "", ""
            if sheet != before:
                zone = planned.zone_index[plan.sheets["first"][sheet]]
                ends = words.local(np.array([plan.sheets[name][sheet] for name in ("arrive", "leave")]), planned.zone_names, zone)
                night, arrive, leave = date_told(plan.sheets["night"][sheet]), ends[0][1], ends[1][1]
                if has_offsets:
                    night += f" {local['t_utc'][at[row]][2]}"
            before = sheet
            begin, closest, end = (local[name][at[row]][1] for name in ("t_start", "t_utc", "t_end"))
            az, alt = planned.rows["az_deg"][row], planned.rows["alt_deg"][row]
            light = "; ".join(self._told.light(row))
            yield night, arrive, self._what(site, row), begin, closest, end, words.bearing(az), words.degrees(alt), light, leave

    def _what(self, site, row):
        what = tr("{body} over {subject}").format(body=self._told.body(row), subject=self._told.subject(row))
        cameras = {self._told.camera(own) for own in site.rows.tolist()}
        return f"{self._told.camera(row)}: {what}" if len(cameras) > 1 else what

    def _walking(self, site):
        """How long the walks take, and when their ends lie in the dark."""
        on_foot, plan = self._sites.on_foot, self._sites.plan
        told = []
        for place, _ in site.walks:
            index = self._sites.place_index(site, place)
            told.append(
                tr("{walk} to {mark}: {length}, {time} at {speed:g} km/h, each way, before being there and after leaving.").format(
                    walk=on_foot.name_of_walk(index),
                    mark=site.places.mark[place],
                    length=words.metres(on_foot.ways.length_m[index]),
                    time=words.minutes(on_foot.walk_min[index]),
                    speed=on_foot.speed_km_h,
                )
            )
            told += on_foot.gaps(index)
        own = np.unique(plan.sheet_of_row[site.rows])
        dark = int((plan.sheets["dark_out"][own] | plan.sheets["dark_back"][own]).sum())
        if dark:
            told.append(tr("On {dark} of {n} nights people come or go in the dark.").format(dark=dark, n=len(own)))
        if told:
            yield Paragraph(" ".join(told))

    # may we

    def _closed(self, site):
        dated = (
            tr("On the dates of the timetable, evening and morning") if len(site.days) else tr("No dates are known: every season counts")
        )
        yield Heading(tr("Closed ground"), dated if self._sites.closures_known else "")
        yield from self._not_allowed(site)
        if not self._sites.closures_known:
            yield Paragraph(tr("No layer of closed ground was given: nothing was checked."))
            return
        inside = {}
        for mark, name, finding in site.findings:
            if finding.inside:
                inside.setdefault(finding.closure.name, []).append((mark, name))
        for closure, those in inside.items():
            named = len(those) <= INSIDE_NAMED
            what = ", ".join(f"{mark} {name}" if named or not mark[-1].isdigit() else mark for mark, name in those)
            yield Paragraph(tr("INSIDE closed ground ({closure}): {what}").format(closure=closure, what=what), bold=True)
        if not self._sites.walks_known:
            yield Paragraph(tr("No walk was given: the way in was not checked."))
        elif not site.walks:
            yield Paragraph(tr("No drawn walk passes within 500 m: the way in was not checked."))
        elif any(any(self._sites.on_foot.gaps(self._sites.place_index(site, place))) for place, _ in site.walks):
            yield Paragraph(tr("Of a walk only the drawn part was checked."))
        rows = tuple((mark, name, *_found(finding)) for mark, name, finding in site.findings)
        heads = "", tr("Name"), tr("Against closed ground"), tr("Distance"), tr("Closure"), tr("Closed")
        yield Table(heads, rows, wide=(1, 4, 5), right=(3,))

    @staticmethod
    def _not_allowed(site):
        """Standpoints that their own layer does not allow."""
        told = zip(site.standing.get("camera", ()), site.standing.get("allowed", ()))
        for name in dict.fromkeys(name for name, allowed in told if is_allowed(allowed) is False):
            yield Paragraph(tr("NOT ALLOWED, as the layer of standpoints says: {name}").format(name=name), bold=True)

    # by what

    def _data(self, site):
        yield Heading(tr("Data"))
        rows = [
            (
                tr("Datum and grid"),
                tr("WGS 84 (EPSG:4326), to 0.00001° (1 m); {zone} (EPSG:{epsg}), metres").format(zone=_zone_told(site), epsg=site.epsg),
            ),
            (tr("Magnetic north"), tr("{model} for {date}").format(model=site.north.model, date=date_told(site.north.date))),
            (
                tr("Elevation model"),
                tr("{name}, cells of {size} m").format(name=self._dem[0], size=self._dem[1]) if self._dem else tr("none named"),
            ),
            *self._facts,
        ]
        yield Pairs(tuple(rows))

    def _cautions(self, site):
        yield Heading(tr("Cautions"))
        bodies = set() if self._sites.planned is None else set(self._sites.planned.rows["body"][site.rows].tolist())
        if "sun" in bodies:
            yield Paragraph(sun_line(), bold=True)
        yield Paragraph(dark_line())
        yield Paragraph(permit_line())
        yield Paragraph(
            tr(
                "Artificial light, drones, group size and commercial work are decided by them too; where the work needs a licensed guide, "
                "surveyor or engineer, their word stands."
            )
        )
        if self._dem:
            yield Paragraph(terrain_line(*self._dem))


def _short(name):
    """A name, or its begin where it is long: the table of places has all of it, by the mark before it."""
    return name if len(name) <= LONGEST_NAME else name[: LONGEST_NAME - 1].rstrip() + "…"


def _zone_told(site):
    return (
        tr("WGS 84 / UTM zone {zone}").format(zone=site.zone)
        if not site.zone.startswith("UPS")
        else tr("WGS 84 / {zone}").format(zone=site.zone)
    )


def _found(finding):
    """What was found, how far away, which closure and when it is closed."""
    if finding.closure is None:
        return tr("outside"), tr("over {km:g} km").format(km=20), words.UNKNOWN, words.UNKNOWN
    name, when = finding.closure.name, finding.closure.when
    if finding.inside:
        length = words.UNKNOWN
        if finding.unit:
            length = tr(_INSIDE[finding.unit]).format(m=finding.length) if finding.length >= 0.5 else tr("touches it")
        return tr("INSIDE"), length, name, when
    return tr("outside"), words.metres(finding.dist_m), name, when


def scale_told(denominator, grid_m, site):
    """Scale and grid in two lines."""
    length = tr("{km:g} km").format(km=grid_m / 1000.0) if grid_m >= 1000.0 else tr("{m:g} m").format(m=grid_m)
    return tr("1 : {scale:,.0f}; grid every {length}\n{zone}").format(scale=denominator, length=length, zone=_zone_told(site))


def overview_told(graticule_deg):
    """The lines of an overview."""
    if not graticule_deg:
        return ""
    lon, lat = graticule_deg
    sentence = tr("Lines every {lat:g}°") if lon == lat else tr("Lines every {lat:g}° lat., {lon:g}° lon.")
    return sentence.format(lat=lat, lon=lon)


def made(made_utc_s, version):
    """By what and when a sheet was made."""
    return tr("Made by {provider} {version}, {when}").format(provider=PROVIDER_NAME, version=version, when=words.utc(made_utc_s))
