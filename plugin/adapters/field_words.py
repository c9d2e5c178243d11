"""What a field plan says: of each happening, each alignment and each way, for the page, the waypoints and the calendar alike."""

import numpy as np

from ..plan.clock import local_text
from .planned import is_allowed
from .translation import date_told, localised, tr

MOON_UP_DEG = -0.83  # upper limb on the level horizon, to a hundredth of a degree
MINUTE_S = 60.0
UNKNOWN = "–"

_BODIES = {
    "core": "Milky Way core",
    "arch": "Top of the Milky Way's arch",
    "sun": "Sun",
    "moon": "Moon",
    "pole": "Celestial pole",
    "star": "Star",
    "galactic": "Place on the Milky Way",
}
_HAPPENINGS = {
    "depart": "Leave the car",
    "arrive": "Be at the camera",
    "sunset": "Sunset",
    "civil_dusk": "Civil twilight ends",
    "nautical_dusk": "Nautical twilight ends",
    "astronomical_dusk": "Astronomical twilight ends: full darkness",
    "moonset": "Moonset",
    "moonrise": "Moonrise",
    "astronomical_dawn": "Astronomical twilight begins",
    "nautical_dawn": "Nautical twilight begins",
    "civil_dawn": "Civil twilight begins",
    "sunrise": "Sunrise",
    "start": "{body} comes over {subject}",
    "closest": "{body} closest to the bearing of {subject}",
    "end": "{body} leaves {subject}",
    "leave": "Leave",
    "back": "Back at the car",
}
_SKIES = {
    "day": "daylight",
    "civil": "civil twilight",
    "nautical": "nautical twilight",
    "astronomical": "astronomical twilight",
    "night": "full darkness",
}
_SIDES = {"ahead": "from ahead", "side": "from the side", "behind": "from behind the camera"}
_SIGHTS = {
    "hidden": "The terrain hides the top of {subject} from {camera}.",
    "uncertain": "Whether the terrain hides the top of {subject} from {camera} is uncertain.",
}


def body_name(body):
    """The body as a person calls it; an id that nobody knows as it is."""
    return tr(_BODIES[body]) if body in _BODIES else str(body)


def happening(kind, body="", subject="", is_moment=False):
    """What happens, with the names put in as they are given."""
    sentence = tr("{body} over {subject}") if is_moment and kind == "closest" else tr(_HAPPENINGS[kind])
    return sentence.format(body=body, subject=subject)


def degrees(value):
    """An angle to 0.1°, or a dash."""
    return localised(f"{round(float(value), 1) + 0.0:.1f}°") if np.isfinite(value) else UNKNOWN


def bearing(value):
    """A bearing to 0.1°, 0 to 359.9, or a dash."""
    return degrees(round(float(value), 1) % 360.0) if np.isfinite(value) else UNKNOWN


def metres(value):
    return tr("{m:,.0f} m").format(m=value) if np.isfinite(value) else UNKNOWN


def distance(m):
    """Whole metres, or from 10 km on whole kilometres, for a map."""
    return metres(m) if m < 10_000.0 else tr("{km:,.0f} km").format(km=m / 1000.0)


def minutes(value):
    """A length of time in whole minutes, such as '1 h 05 min'."""
    whole = int(np.ceil(value - 1e-9))
    return tr("{h} h {m:02} min").format(h=whole // 60, m=whole % 60) if whole >= 60 else tr("{m} min").format(m=whole)


def place(lon_deg, lat_deg):
    """Latitude and longitude to a metre, for a reader."""
    return tr("{lat}, {lon}").format(lat=latitude(lat_deg), lon=longitude(lon_deg))


def latitude(lat_deg):
    """To a metre, for a reader."""
    return localised(f"{abs(lat_deg):.5f}° ") + (tr("N") if lat_deg >= 0 else tr("S"))


def longitude(lon_deg):
    """To a metre, for a reader."""
    return localised(f"{abs(lon_deg):.5f}° ") + (tr("E") if lon_deg >= 0 else tr("W"))


def coordinates(lon_deg, lat_deg):
    """Latitude and longitude to a metre, alike in every language, for what programs read too."""
    return f"{abs(lat_deg):.5f}° {'N' if lat_deg >= 0 else 'S'}, {abs(lon_deg):.5f}° {'E' if lon_deg >= 0 else 'W'}"


def local(t_utc_s, zone_names, zone_index):
    """Date, time to the minute and offset of each moment, shape (N, 3) of texts; dashes where there is none."""
    nearest = np.floor(np.asarray(t_utc_s, dtype=float) / MINUTE_S + 0.5) * MINUTE_S
    texts = local_text(nearest, zone_names, zone_index).ravel()
    rows = [(UNKNOWN,) * 3 if text is None else (text[:10], text[11:16], text[20:]) for text in texts.tolist()]
    return np.array(rows, dtype=object).reshape(-1, 3)


def zone(zone_name, offset):
    """A zone with its offset, said once where the name is the offset."""
    return zone_name if zone_name == f"UTC{offset}" else f"{zone_name}, UTC{offset}"


def utc(t_utc_s):
    """A moment of UTC to the minute."""
    date, time, _ = local(t_utc_s, ["UTC"], 0)[0]
    return f"{date_told(date)} {time} UTC"


class Told:
    """The rows of a plan in words.

    Parameters
    ----------
    planned : Planned
    plan : FieldPlan
    """

    def __init__(self, planned, plan):
        self._rows, self._names, self._index = planned.rows, planned.zone_names, planned.zone_index
        self._local = {name: local(self._rows[name], self._names, self._index) for name in ("t_start", "t_utc", "t_end")}
        self.night = plan.sheets["night"][plan.sheet_of_row] if len(planned) else None

    def camera(self, row):
        return self._rows["camera"][row] or tr("camera")

    def subject(self, row):
        return self._rows["subject"][row] or tr("subject")

    def body(self, row):
        return body_name(self._rows["body"][row] or tr("body"))

    def is_moment(self, row):
        """Whether only a moment is known, no stretch of time."""
        return not (np.isfinite(self._rows["t_start"][row]) and np.isfinite(self._rows["t_end"][row]))

    def zone(self, row):
        return self._names[self._index[row]]

    def aim(self, row):
        """Where the subject lies, in one line."""
        rows = self._rows
        return tr("bearing {true} true, {magnetic} magnetic; distance {dist}").format(
            true=bearing(rows["bearing_deg"][row]), magnetic=bearing(rows["mag_deg"][row]), dist=metres(rows["dist_m"][row])
        )

    def gap(self, row):
        """Where the body stands against the subject's top, or None."""
        gap_deg = self._rows["d_alt_deg"][row]
        if not np.isfinite(gap_deg):
            return None
        sentence = tr("{deg} above its top") if gap_deg >= 0.0 else tr("{deg} below its top")
        return sentence.format(deg=degrees(abs(gap_deg)))

    def light(self, row):
        """Darkness and Moon, each said where the layer tells it."""
        rows = self._rows
        if rows["sky"][row] in _SKIES:
            yield tr(_SKIES[rows["sky"][row]])
        moon_deg, lit = rows["moon_deg"][row], rows["moon_lit"][row]
        if rows["body"][row] == "moon":
            if np.isfinite(lit):
                yield tr("{lit:.0f} % lit").format(lit=100.0 * lit)
        elif np.isfinite(moon_deg) and moon_deg <= MOON_UP_DEG:
            yield tr("Moon down")
        elif np.isfinite(moon_deg):
            yield tr("Moon up at {deg}").format(deg=degrees(moon_deg))
            if np.isfinite(lit):
                yield tr("{lit:.0f} % lit").format(lit=100.0 * lit)
            if rows["moon_side"][row] in _SIDES:
                yield tr("its light {side}").format(side=tr(_SIDES[rows["moon_side"][row]]))

    def where(self, row):
        """Where the body stands, how dark it is and what the Moon does, in one line."""
        az, decl, alt = (self._rows[column][row] for column in ("az_deg", "decl_deg", "alt_deg"))
        place = tr("azimuth {true} true, {magnetic} magnetic, altitude {alt}").format(
            true=bearing(az), magnetic=bearing((az - decl) % 360.0), alt=degrees(alt)
        )
        return "; ".join(text for text in (place, self.gap(row), *self.light(row)) if text)

    def warnings(self, row):
        """Sentences about a place that should not be stood on, or a subject that may not be seen."""
        if is_allowed(self._rows["allowed"][row]) is False:
            yield tr("{camera} lies in closed ground, or outside the area allowed.").format(camera=self.camera(row))
        if self._rows["sight"][row] in _SIGHTS:
            yield tr(_SIGHTS[self._rows["sight"][row]]).format(camera=self.camera(row), subject=self.subject(row))

    def when(self, row):
        """The night and the stretch of time, or the moment, in one line, in the site's zone."""
        date, time, offset = self._local["t_utc"][row]
        moment = tr("{date} {time} ({zone})").format(date=date_told(date), time=time, zone=zone(self.zone(row), offset))
        if self.is_moment(row):
            return moment
        (_, begin, _), (_, end, _) = (self._local[name][row] for name in ("t_start", "t_end"))
        return tr("{begin} to {end}, closest {moment}").format(begin=begin, end=end, moment=moment)


def cautions(bodies, has_terrain):
    """What must be said on every plan, the Sun's and the terrain's lines where they apply."""
    if "sun" in bodies:
        yield tr(
            "Sun: never look at it, nor point an optical viewfinder or a long lens at it, without a certified solar filter "
            "(ISO 12312-2 for the eye)."
        )
    yield tr(
        "Walking in the dark: cliffs, tides, water levels, weather, animals. Not alone; tell someone. This plan knows nothing of footing, "
        "tide or weather."
    )
    yield tr(
        "A planning aid, not a survey and not a permit: access, closures, night hours, artificial light and group size are decided by the "
        "land manager and local law."
    )
    if has_terrain:
        yield tr("Terrain is that of an elevation model, with its errors, without trees or buildings. Look from the place by day.")
