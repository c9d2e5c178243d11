"""Layout templates: which one a run takes, and what it must hold so that sheets can be made of it."""

from pathlib import Path

from qgis.core import QgsLayoutItem, QgsLayoutItemLabel, QgsLayoutItemMap, QgsPrintLayout, QgsProject, QgsReadWriteContext
from qgis.PyQt.QtXml import QDomDocument

from .parameters import choice_of, text_of
from .translation import tr

LAYOUTS = Path(__file__).parent.parent / "layouts"
NOTICE = "@sheet_notice"
PAGES = 2  # the sheet, and what each further page of it looks like
BODIES = ("body", "body_continued")  # where text goes, on either


def template_of(algorithm, parameters, context):
    """The template that a run takes.

    Returns
    -------
    QDomDocument

    Raises
    ------
    ValueError
        With a sentence, where no sheets can be made of it.
    """
    own = text_of(parameters, "TEMPLATE")
    paper, turn = (choice_of(algorithm, parameters, name, context) for name in ("PAPER", "ORIENTATION"))
    path = Path(own) if own else LAYOUTS / f"site_map_{paper}_{turn}.qpt"
    document = QDomDocument()
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as failed:
        reason = getattr(failed, "strerror", None) or tr("it is no text")
        raise ValueError(tr("TEMPLATE: {path} cannot be read: {reason}.").format(path=path, reason=reason)) from failed
    document.setContent(text)
    if document.documentElement().tagName() != "Layout":
        raise ValueError(
            tr("TEMPLATE: {path} is no layout template of QGIS. Copy one of those in {folder}.").format(path=path, folder=LAYOUTS)
        )
    if own:
        _check(document, path)
    return document


def loaded(document, project):
    """A layout made of a template."""
    layout = QgsPrintLayout(project)
    layout.loadFromTemplate(document, QgsReadWriteContext())
    return layout


def _check(document, path):
    project = QgsProject()
    layout = loaded(document, project)
    try:
        reason = _unfit(layout, path)
    finally:
        del layout  # before its project
    if reason:
        raise ValueError(reason)


def _unfit(layout, path):
    """Why no sheets can be made of a layout, or None."""
    items = {item.id(): item for item in layout.items() if isinstance(item, QgsLayoutItem) and item.id()}
    missing = [name for name in ("map", *BODIES) if name not in items]
    if missing:
        return tr("TEMPLATE: {path} has no item with the id {ids}. Copy one of those in {folder}, and keep these items.").format(
            path=path, ids=", ".join(missing), folder=LAYOUTS
        )
    if not isinstance(items["map"], QgsLayoutItemMap) or not all(isinstance(items[name], QgsLayoutItemLabel) for name in BODIES):
        return tr("TEMPLATE: in {path} 'map' must be a map, 'body' and 'body_continued' labels.").format(path=path)
    if layout.pageCollection().pageCount() != PAGES or [items[name].page() for name in BODIES] != [0, 1]:
        return tr("TEMPLATE: {path} must have two pages, the sheet with 'body', and its further pages with 'body_continued'.").format(
            path=path
        )
    labels = [item for item in layout.items() if isinstance(item, QgsLayoutItemLabel)]
    if {label.page() for label in labels if NOTICE in label.text() and label.isVisible()} != {0, 1}:
        return tr("TEMPLATE: {path} must show [% {notice} %] in a label on both pages: no sheet goes without it.").format(
            path=path, notice=NOTICE
        )
    return None
