"""One page of HTML that gathers pictures with what there is to say of each; it needs nothing from elsewhere."""

from html import escape

STYLE = """
body {{ background: {paper}; color: {ink}; font: 15px/1.5 "DejaVu Sans", "Open Sans", Arial, sans-serif; }}
body {{ margin: 2em auto; max-width: 1100px; }}
h2 {{ margin-top: 2.5em; }} img {{ width: 100%; }} a {{ color: {ink}; }}
table {{ border-collapse: collapse; }} td, th {{ border-bottom: 1px solid {faint}; padding: 2px 14px 2px 0; text-align: left; }}
"""


def page(title, notes, entries, theme, overview=(), language="en"):
    """The page.

    Parameters
    ----------
    title : str
    notes : sequence of str
        What holds for all pictures.
    entries : sequence of (str, str, list of str, dict)
        Of each picture: its file without ending, in the folder of the page; its heading; lines under it; and a table, name to value or to
        a tuple of values.
    theme : Theme
    overview : sequence of (str, value or tuple of values)
        A table over all pictures, its headings first; each further row is of a picture, in their order.
    language : str
        Of the texts.

    Returns
    -------
    str
    """
    style = STYLE.format(paper=theme.paper, ink=theme.ink, faint=theme.faint)
    parts = [
        f'<!DOCTYPE html>\n<html lang="{language}">\n<head><meta charset="utf-8">',
        f"<title>{escape(title)}</title><style>{style}</style></head>\n<body>",
        f"<h1>{escape(title)}</h1>",
        *(f"<p>{escape(note)}</p>" for note in notes),
    ]
    if overview:
        links = [None, *(stem for stem, *_ in entries)]
        parts.append(_table((name, *_cells(value), link) for (name, value), link in zip(overview, links)))
    for stem, heading, lines, table in entries:
        parts.append(f'<h2 id="{stem}">{escape(heading)}</h2>\n<img src="{stem}.png" alt="{escape(heading)}">')
        parts.append(f'<p>{"<br>".join(map(escape, lines))} <a href="{stem}.svg">SVG</a></p>')
        parts.append(_table((name, *_cells(value), None) for name, value in table.items()))
    return "\n".join([*parts, "</body>\n</html>\n"])


def _cells(value):
    return value if isinstance(value, tuple) else (value,)


def _table(rows):
    """A table of rows: name, values, and last the picture to which the name leads, or None."""
    lines = []
    for name, *values, link in rows:
        first = escape(name) if link is None else f'<a href="#{link}">{escape(name)}</a>'
        lines.append(f"<tr><th>{first}</th>{''.join(f'<td>{escape(value)}</td>' for value in values)}</tr>")
    return f"<table>{''.join(lines)}</table>"
