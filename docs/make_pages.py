"""The part of each algorithm's page that the plugin can tell of itself: its parameters, its outputs and their fields.

`build/venv/bin/python docs/make_pages.py --write` renews docs/algorithms/*.md; without --write it names the pages that are out of date.
What a person wrote stands above the mark and is left alone; all below it is made here. What fields mean is told by docs/nomenclature.md.
"""

import re
import sys
from pathlib import Path

DOCS = Path(__file__).resolve().parent
sys.path.append(str(DOCS.parent / "build" / "stage"))

from qgis.core import QgsProcessing, QgsProcessingParameterDateTime, QgsProcessingParameterDefinition, QgsProcessingParameterNumber  # noqa: E402

from skyalidade.names import FIELDS_OF_OUTPUTS  # noqa: E402
from skyalidade.provider import ALGORITHMS  # noqa: E402

MARK = "<!-- Below this line the page is made by docs/make_pages.py --write. Write above it. -->"
FLAG = QgsProcessingParameterDefinition.Flag
TYPE = QgsProcessing.SourceType
GEOMETRIES = {TYPE.TypeVectorPoint: "points", TYPE.TypeVectorLine: "lines", TYPE.TypeVectorPolygon: "polygons"}
TAKES = {"raster": "raster layer", "boolean": "yes or no", "string": "text"}  # other kinds are called as QGIS calls them
GIVES = {"outputHtml": "page of HTML", "outputFile": "file", "outputFolder": "folder", "outputNumber": "number", "outputRaster": "raster"}
NO_BOUND = 1e300  # QGIS's own number for a bound that is not there


def shown(number):
    """A number as a person writes it: 20 000 000, 0.13, 1.5."""
    return f"{number:,.10g}".replace(",", " ") if abs(number) < 1e9 else f"{number:g}"


def cell(text):
    """Text for a cell of a table, each NAME_OF_A_PARAMETER or name_of_a_field in it set as code, and not in quotes besides."""
    text = re.sub(r"(?<![\w`/])([A-Za-z]+[0-9]*(?:_[A-Za-z0-9]+)+)(?![\w`])", r"`\1`", " ".join(text.split()))
    text = re.sub(r"'(`\w+`)'", r"\1", text)
    return text.replace("|", "\\|")


def takes(parameter):
    """What kind of value a parameter takes."""
    kind = parameter.type()
    if kind in ("source", "sink"):
        types = parameter.dataTypes() if kind == "source" else [parameter.dataType()]
        return " or ".join(GEOMETRIES.get(one, "features") for one in types)
    if kind == "enum":
        several = "; several allowed" if parameter.allowMultiple() else ""
        return ", ".join(f"`{option}`" for option in parameter.options()) + several
    if kind == "field":
        return f"field{'s' if parameter.allowMultiple() else ''} of `{parameter.parentLayerParameterName()}`"
    if kind == "datetime":
        return {QgsProcessingParameterDateTime.Type.Date: "date", QgsProcessingParameterDateTime.Type.Time: "time of day"}.get(
            parameter.dataType(), "date and time"
        )
    if isinstance(parameter, QgsProcessingParameterNumber):
        return number_taken(parameter)
    return TAKES.get(kind, kind)


def number_taken(parameter):
    """The bounds of a number, and whether each feature may bring its own."""
    low, high = parameter.minimum(), parameter.maximum()
    bounds = [shown(low)] if low > -NO_BOUND else []
    bounds += [shown(high)] if high < NO_BOUND else []
    words = "number" if parameter.dataType() == QgsProcessingParameterNumber.Type.Double else "whole number"
    words = "metres" if parameter.type() == "distance" else words
    if len(bounds) == 2:
        words += f", {bounds[0]} to {bounds[1]}"
    elif bounds:
        words += f", at {'least' if low > -NO_BOUND else 'most'} {bounds[0]}"
    return f"{words}; may be data-defined" if parameter.isDynamic() else words


def left_out(parameter):
    """What holds where a parameter is not given."""
    default = parameter.defaultValue()
    if default in (None, ""):
        return "blank" if parameter.flags() & FLAG.FlagOptional else "must be given"
    if isinstance(default, bool):
        return "yes" if default else "no"
    if isinstance(default, (int, float)):
        return shown(default)
    return ", ".join(f"`{one}`" for one in (default if isinstance(default, list) else [default]))


def parameter_row(parameter):
    sentence = parameter.description() + (f". {parameter.help()}" if parameter.help() else "")
    return f"| `{parameter.name()}` | {cell(sentence)} | {takes(parameter)} | {left_out(parameter)} |"


def parameters(algorithm):
    """The tables of parameters: those that one sees at once, and the advanced ones."""
    given = [one for one in algorithm.parameterDefinitions() if not one.isDestination() and not one.flags() & FLAG.FlagHidden]
    yield "## Parameters"
    for folded, heading in ((False, None), (True, "### Advanced parameters")):
        rows = [parameter_row(one) for one in given if bool(one.flags() & FLAG.FlagAdvanced) == folded]
        if rows:
            yield from ("", heading) if heading else ()
            yield from ("", "| Name | What it is | Takes | If left out |", "|---|---|---|---|", *rows)


def meanings():
    """What docs/nomenclature.md says of each field: its type with the unit, and its meaning, with links that hold from docs/algorithms."""
    table = (DOCS / "nomenclature.md").read_text(encoding="utf-8").split("\n## Fields\n")[1]
    told = {}
    for line in table.splitlines():
        if not line.startswith("| `"):
            continue
        names, kinds, meaning = (part.strip() for part in re.split(r"(?<!\\)\|", line)[1:4])
        names, kinds = re.findall(r"`(\w+)`", names), kinds.split("; ")
        for index, name in enumerate(names):
            told[name] = kinds[min(index, len(kinds) - 1)], from_algorithms(meaning)
    return told


def from_algorithms(text):
    """A text of docs/ with its links as they are from docs/algorithms/."""
    text = re.sub(r"\]\(#", "](../nomenclature.md#", text)
    text = re.sub(r"\]\(algorithms/", "](", text)
    return re.sub(r"\]\((?!\.\./nomenclature|\w+\.md|https?:)", "](../", text)


def given(output, destination):
    """What kind of thing an output is."""
    if destination and destination.type() == "sink":
        return takes(destination)
    if destination and output.type() == "outputFile":
        return f"{destination.defaultFileExtension().upper()} file"
    return GIVES.get(output.type(), output.type())


def outputs(algorithm, told):
    """What comes out: each output, and the fields of its rows."""
    yield "## Outputs"
    fields_of = FIELDS_OF_OUTPUTS.get(algorithm.name(), {})
    for output in algorithm.outputDefinitions():
        destination = algorithm.parameterDefinition(output.name())
        kind = given(output, destination)
        optional = ", if asked for" if destination and destination.flags() & FLAG.FlagOptional else ""
        label = destination.description() if destination else output.description()
        sentence = f" {cell(destination.help())}" if destination and destination.help() else ""
        yield from ("", f"**`{output.name()}`**: {cell(label)} ({kind}{optional}).{sentence}")
        names = fields_of.get(output.name(), ())
        if names:
            missing = [name for name in names if name not in told]
            if missing:
                sys.exit(f"docs/nomenclature.md does not explain {', '.join(missing)}: add them to its table of fields.")
            rows = [f"| `{name}` | {told[name][0]} | {told[name][1]} |" for name in names]
            yield from ("", "| Field | Type | Meaning |", "|---|---|---|", *rows)


def made_part(algorithm, told):
    """All that stands below the mark."""
    return "\n".join((MARK, "", *parameters(algorithm), "", *outputs(algorithm, told), ""))


def page(name):
    return DOCS / "algorithms" / f"{name}.md"


def wanted():
    """Each page as it ought to be: {path: text}."""
    told, pages = meanings(), {}
    for kind in ALGORITHMS:
        algorithm = kind().create()
        path = page(algorithm.name())
        written = (path.read_text(encoding="utf-8") if path.exists() else f"# {algorithm.displayName()}\n").split(MARK)[0].rstrip()
        pages[path] = f"{written}\n\n{made_part(algorithm, told)}"
    return pages


def main(write):
    """Renew the pages, or name those that are out of date."""
    old = {path: text for path, text in wanted().items() if not path.exists() or path.read_text(encoding="utf-8") != text}
    for path, text in old.items():
        if write:
            path.write_text(text, encoding="utf-8")
        print(f"{path.relative_to(DOCS.parent)} {'is renewed' if write else 'is out of date'}")
    return bool(old) and not write


if __name__ == "__main__":
    sys.exit(main("--write" in sys.argv[1:]))
