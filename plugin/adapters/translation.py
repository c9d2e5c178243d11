"""Sentences a person reads, in the person's language; ids and field names are never translated."""

from qgis.PyQt.QtCore import QCoreApplication

CONTEXT = "skyalidade"


def tr(sentence):
    """The sentence in the language of the desktop; put numbers in afterwards, with `format`."""
    return QCoreApplication.translate(CONTEXT, sentence)


def counted(reasons):
    """'3 with no geometry, 1 outside the Earth' from a mapping of reason to count."""
    return ", ".join(f"{count:,} {reason}" for reason, count in sorted(reasons.items(), key=lambda item: (-item[1], item[0])) if count)
