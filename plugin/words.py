"""Sentences of the pure folders: said in English, and told in another language where a person reads them."""

import numpy as np


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
