"""Sentences of the pure folders: said in English, and told in another language where a person reads them."""


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
        made = super().__new__(cls, pattern.format(**parts))
        made.pattern, made.parts = pattern, parts
        return made
