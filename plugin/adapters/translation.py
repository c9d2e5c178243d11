"""Sentences a person reads, in the person's language, with numbers and dates as written there; ids and field names are never translated."""

import re
import string
from numbers import Real
from pathlib import Path

from qgis.core import QgsApplication
from qgis.PyQt.QtCore import QCoreApplication, QDate, QLocale, QTranslator

from ..names import PROVIDER_ID
from ..words import Sentence

CONTEXT = PROVIDER_ID
I18N = Path(__file__).parent.parent / "i18n"
ENGLISH = "en"
ISO_DATE = re.compile(r"\b\d{4}-\d{2}-\d{2}\b")
LEAP_YEAR = 2000  # in which every month and day that can be is

_spoken = {"language": ENGLISH, "locale": None, "translator": None}  # the locale is None where texts and numbers are as in the sources


class Told(str):
    """A sentence in another language; numbers and sentences of the pure folders that are put in are told in it too."""

    def format(self, *parts, **named):
        return _LOCAL.vformat(self, parts, named)


class _Local(string.Formatter):
    def format_field(self, value, form):
        if isinstance(value, Real):
            return localised(super().format_field(value, form))
        return said(value) if isinstance(value, (Sentence, Exception)) else super().format_field(value, form)


_LOCAL = _Local()


def install():
    """Speak the language of QGIS, if there is a translation into it; else English."""
    remove()
    name = QgsApplication.locale()
    language = name.replace("-", "_").split("_")[0]
    translator = QTranslator()
    if translator.load(str(I18N / f"{PROVIDER_ID}_{language}.qm")):
        QCoreApplication.installTranslator(translator)
        _spoken.update(language=language, locale=QLocale(name), translator=translator)


def remove():
    """Speak English again."""
    if _spoken["translator"] is not None:
        QCoreApplication.removeTranslator(_spoken["translator"])
    _spoken.update(language=ENGLISH, locale=None, translator=None)


def language():
    """The language spoken, such as `en`."""
    return _spoken["language"]


def tr(sentence):
    """The sentence in the language of the desktop; put numbers in afterwards, with `format`."""
    told = QCoreApplication.translate(CONTEXT, sentence)
    # a mere text where nothing is put in: Qt would not know a text of another class in a QVariant
    return told if _spoken["locale"] is None or "{" not in told else Told(told)


def said(sentence):
    """A sentence of the pure folders, or the error that holds it, in the language of the desktop."""
    if isinstance(sentence, Exception):
        sentence = sentence.args[0] if len(sentence.args) == 1 else str(sentence)
    if not isinstance(sentence, Sentence):
        return str(sentence)
    return sentence.opened(tr(sentence.pattern).format(**sentence.parts))


def localised(number):
    """A number that Python wrote, such as '1,234.5', as readers of the language write it."""
    locale = _spoken["locale"]
    if locale is None:
        return number
    signs = {",": locale.groupSeparator(), ".": locale.decimalPoint()}
    return "".join(signs.get(letter, letter) for letter in number)


def date_told(text):
    """A date such as 2027-06-06, or a text with such dates, for a person; in English as it is, which all can read and sort."""
    locale = _spoken["locale"]
    if locale is None:
        return str(text)
    return ISO_DATE.sub(lambda found: locale.toString(QDate.fromString(found[0], "yyyy-MM-dd"), "d MMM yyyy"), str(text))


def day_told(month, day):
    """A day of every year for a person; in English as layers hold it, 03-01."""
    locale = _spoken["locale"]
    return f"{month:02d}-{day:02d}" if locale is None else locale.toString(QDate(LEAP_YEAR, month, day), "d MMM")


def counted(reasons):
    """'3 with no geometry, 1 outside the Earth' from a mapping of reason to count."""
    told = (f"{localised(f'{count:,}')} {said(reason)}" for reason, count in sorted(reasons.items(), key=_most_first) if count)
    return ", ".join(told)


def _most_first(reason_and_count):
    reason, count = reason_and_count
    return -count, reason
