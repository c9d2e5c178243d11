"""Times and nights as parameters bring them: texts, Qt's or Python's dates, with an offset or without."""

import re
from datetime import date, datetime, time, timezone

import numpy as np
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from ..plan import clock
from ..plan.nights import nights_asked
from .parameters import MAX_ROWS_DEFAULT, blank
from .translation import said, tr

_MOMENT = re.compile(r"(\d{4}-\d\d-\d\d)(?:[T ](\d\d:\d\d)(:\d\d)?(?:[.,](\d{1,9}))?)?\s*(Z|[+-]\d\d(?::?\d\d)?)?", re.IGNORECASE)

MAX_STEPS = MAX_ROWS_DEFAULT  # from the first to the last: each would be a row


def moment(value):
    """What a parameter of time says: an aware datetime where it carries an offset or Z, else a naive one, the wall clock somewhere.

    A QDateTime in local time is what a person set in a dialog: a wall clock, never the computer's own zone.

    Raises
    ------
    ValueError
        With a sentence for the person, when the value is no time.
    """
    if isinstance(value, QDateTime) and value.isValid():
        return _of_qt(value)
    if isinstance(value, QDate) and value.isValid():
        return datetime.combine(value.toPyDate(), time())
    if isinstance(value, datetime):
        return value
    if isinstance(value, date):
        return datetime.combine(value, time())
    return _of_text(str(value))


def _of_qt(value):
    if value.timeSpec() == Qt.TimeSpec.LocalTime:
        clock = value.time()
        return datetime.combine(value.date().toPyDate(), time(clock.hour(), clock.minute(), clock.second(), clock.msec() * 1000))
    return datetime.fromtimestamp(value.toMSecsSinceEpoch() / 1000.0, tz=timezone.utc)


def _of_text(text):
    found = _MOMENT.fullmatch(text.strip())
    try:
        if not found:
            raise ValueError(text)
        day, minutes, seconds, fraction, offset = found.groups()
        offset = (offset or "").upper().replace("Z", "+00:00").replace(":", "")
        offset = f"{offset[:3]}:{offset[3:] or '00'}" if offset else ""
        return datetime.fromisoformat(f"{day}T{minutes or '00:00'}{seconds or ':00'}.{(fraction or '0')[:6]:0<6}{offset}")
    except ValueError:
        raise ValueError(
            tr(
                "'{text}' is no time. Write it as 2027-06-06 23:30:00, with Z or an offset such as -06:00 if it is not the local clock."
            ).format(text=text)
        ) from None


def date_of(value):
    """A date, such as that of an evening, as datetime64[D].

    Raises
    ------
    ValueError
        With a sentence for the person, when the value is no date.
    """
    try:
        return np.datetime64(moment(value).date(), "D")
    except ValueError:
        raise ValueError(tr("'{text}' is no date. Write it as 2027-06-06.").format(text=value)) from None


def now_utc_s():
    """This moment, seconds of UTC since 1970."""
    return datetime.now(tz=timezone.utc).timestamp()


def date_utc_s(parameters, name):
    """The moment at which the date that a parameter gives begins in UTC, this moment where it is blank. [s of UTC]."""
    return now_utc_s() if blank(parameters.get(name)) else date_of(parameters[name]).astype("datetime64[s]").astype(float)


def nights_of_sites(parameters, zone_names, zone_index, count):
    """First and last night at each site, blanks filled: from today at the site, `count` nights in all.

    Returns
    -------
    first, last : ndarray of datetime64[D] (S,)
    """
    first, last = (None if blank(parameters.get(name)) else date_of(parameters[name]) for name in ("FIRST_NIGHT", "LAST_NIGHT"))
    return nights_asked(first, last, count, now_utc_s(), zone_names, zone_index)


def steps_utc_s(first_utc_s, last_utc_s, step_min):
    """Moments from the first on, up to the last, a step apart. [s of UTC]

    Raises
    ------
    ValueError
        Where there are so many that they would fill the memory before they could be counted.
    """
    step_s = 60.0 * step_min
    count = np.floor((last_utc_s - first_utc_s) / step_s + 1e-9) + 1.0  # a last moment that is a whole number of steps away counts
    if count > MAX_STEPS:
        raise ValueError(
            tr("{n:.3g} times lie a STEP of {step:g} min apart from the first to the last, over {most:,}. Give a longer STEP.").format(
                n=count, step=step_min, most=MAX_STEPS
            )
        )
    return first_utc_s + step_s * np.arange(max(int(count), 0))


def times_of_zones(parameters, first_name, last_name, step_min, zone_names, feedback):
    """The times that two parameters and a step mean in each zone: they differ where the clock on the wall was given.

    Returns
    -------
    list of ndarray
        [s of UTC]

    Raises
    ------
    ValueError
        With a sentence for the person.
    """
    first, notes = clock.instants(moment(parameters[first_name]), zone_names)
    last, more = (first, []) if blank(parameters.get(last_name)) else clock.instants(moment(parameters[last_name]), zone_names)
    for note in [*notes, *more]:
        feedback.pushWarning(said(note))
    if (last < first).any():
        raise ValueError(
            tr("{last} is before {first}. Exchange them, or mind their offsets from UTC.").format(last=last_name, first=first_name)
        )
    return [steps_utc_s(begin, end, step_min) for begin, end in zip(first.tolist(), last.tolist())]
