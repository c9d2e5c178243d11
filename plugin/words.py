"""Sentences of the pure folders: said in English, and told in another language where a person reads them."""

import re
import string
from functools import cache

import numpy as np

NUMBER = r"-?\d[\d.]*(?:e[+-]\d+)?"  # as a form such as g writes it


class Sentence(str):
    """An English sentence that remembers its pattern and what was put in.

    Parameters
    ----------
    pattern : str
        With places such as `{n:,}`, as `str.format` takes them. `plugin/i18n/make_translations.py` finds it.
    **parts
        What is put in; a part may be a sentence itself.
    """

    def __new__(cls, pattern, **parts):
        made = super().__new__(cls, cls.opened(pattern.format(**parts)))
        made.pattern, made.parts = pattern, parts
        return made

    @staticmethod
    def opened(text):
        """The text as it stands in a table or a log."""
        return text

    def __getnewargs_ex__(self):
        return (self.pattern,), self.parts  # so that it can be sent to another process


class Opening(Sentence):
    """A sentence that begins with what is put in, and so with a capital."""

    @staticmethod
    def opened(text):
        """The text with a capital."""
        return text[:1].upper() + text[1:]


def one(sentence):
    """A sentence as numpy puts it into an array of objects whole: else it would become a mere text."""
    held = np.empty((), dtype=object)
    held[()] = sentence
    return held


def recognised(text, patterns):
    """The sentence that reads as a text, so that it can be told in another language.

    Parameters
    ----------
    text : str
        As a table holds it.
    patterns : iterable of str
        Of the sentences that it may be; of their parts too, which must be recognised in turn. A part with a form, such as `{n:g}`, is a
        number.

    Returns
    -------
    Sentence
        Or the text itself, where none of them reads so.
    """
    patterns = tuple(patterns)
    for pattern in patterns:
        found = _reading(pattern).fullmatch(text)
        if found:
            forms = {name: form for _, name, form, _ in string.Formatter().parse(pattern) if name}
            parts = {name: float(part) if forms[name] else recognised(part, patterns) for name, part in found.groupdict().items()}
            sentence = Sentence(pattern, **parts)
            if sentence == text and all(isinstance(part, (float, Sentence)) for part in parts.values()):
                return sentence
    return text


@cache
def _reading(pattern):
    """A pattern as an expression that finds its parts in a text."""
    pieces = string.Formatter().parse(pattern)
    return re.compile(
        "".join(re.escape(plain) + (f"(?P<{name}>{NUMBER if form else '.+?'})" if name else "") for plain, name, form, _ in pieces)
    )
