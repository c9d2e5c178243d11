#!/usr/bin/env python3
"""Bring the translations up to date with the texts of the plugin.

python3 plugin/i18n/make_translations.py            renew the template and every language; what is new in them is unfinished
python3 plugin/i18n/make_translations.py --check    exit 1, with the texts, where a language is not complete

The texts are read from the sources: what `tr`, `Sentence` and `Opening` are called with, the tables named below whose texts reach `tr` by
way of a name, the words in the legends of styles, and the models. Any Python will do.
"""

import argparse
import ast
import re
import sys
from pathlib import Path
from xml.etree import ElementTree
from xml.sax.saxutils import escape

I18N = Path(__file__).resolve().parent
PLUGIN = I18N.parent
CONTEXT = "skyalidade"
MARKS = ("tr", "Sentence", "Opening")  # what a text is given to, as it stands or by the name of PATTERN
PATTERN = "pattern"
# module -> tables of texts: every text that is a value in them, or, in a class, an attribute of that name
TABLES = {
    "names.py": ("BODIES", "PAIRINGS", "MOON_RULES", "SENSORS", "ORIENTATIONS", "PAPERS", "TURNS", "AIMS", "THEMES", "PANORAMAS"),
    "adapters/algorithm.py": ("GROUPS",),
    "adapters/bearings.py": ("ZONES",),
    "adapters/field_words.py": ("_BODIES", "_HAPPENINGS", "_SKIES", "_SIDES", "_SIGHTS"),
    "adapters/looks.py": ("LABEL_BODIES", "OTHER_BODIES", "LABEL_WORDS"),
    "adapters/pairing.py": ("REASONS", "SOURCES"),
    "adapters/parameter_help.py": ("HELP", "OWN"),
    "adapters/refusals.py": ("POINTS", "LINES", "POLYGONS"),
    "adapters/sheet_parameters.py": ("APPLICANT_BLOCK", "_HINTS"),
    "adapters/sheet_symbols.py": ("SIGHTS",),
    "adapters/sheet_tables.py": ("MADE_BY",),
    "adapters/sheet_words.py": ("KINDS", "_SIGHTS", "_INSIDE", "NOTICE"),
    "adapters/standing.py": ("REASONS", "HEIGHTS"),
    "algorithms/season_chart.py": ("WITHOUT_PLACE",),
    "charts/sheets.py": ("MISSING",),
    "charts/skyline_view.py": ("WORDS",),
    "plan/night_windows.py": ("REASONS",),
    "plan/unmet.py": ("LIMITS",),
}
OF_CLASSES = ("TITLE", "SUMMARY", "TAGS")  # of every algorithm
ALIAS = 2  # place of the alias in names.Field(name, kind, alias)
LEGEND = {"category", "range", "rule"}  # elements of a style whose label a person reads


def texts():
    """All texts, each with the file in which it is met first."""
    found = {}
    for path in sorted(PLUGIN.rglob("*.py")):
        if not path.name.startswith("make_") and path.name != "package.py":
            name = path.relative_to(PLUGIN).as_posix()
            for text in texts_of_module(ast.parse(path.read_text(encoding="utf-8")), name):
                found.setdefault(text, name)
    for path in sorted(PLUGIN.glob("styles/*.qml")):
        for text in texts_of_style(path):
            found.setdefault(text, path.relative_to(PLUGIN).as_posix())
    for path in sorted(PLUGIN.glob("models/*.model3")):
        for text in texts_of_model(path):
            found.setdefault(text, path.relative_to(PLUGIN).as_posix())
    return found


def texts_of_module(tree, name):
    """Texts of a module in the order in which they stand."""
    tables = TABLES.get(name, ())
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args:
            if node.func.id in MARKS:
                yield from constants(node.args[0]) if isinstance(node.args[0], (ast.Constant, ast.IfExp)) else ()
            elif node.func.id == "Field" and name == "names.py":
                yield from constants(node.args[ALIAS])
        elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and node.targets[0].id == PATTERN:
            yield from constants(node.value)
        elif isinstance(node, ast.ClassDef) and name.startswith("algorithms/"):
            for child in node.body:
                if isinstance(child, ast.Assign) and child.targets[0].id in OF_CLASSES:
                    yield from constants(child.value)
    for child in tree.body:
        if isinstance(child, ast.Assign) and isinstance(child.targets[0], ast.Name) and child.targets[0].id in tables:
            yield from constants(child.value)


def constants(node):
    """Texts in an expression; of a table its values alone."""
    if isinstance(node, ast.Constant):
        if isinstance(node.value, str) and node.value:
            yield node.value
    elif isinstance(node, ast.Dict):
        for value in node.values:
            yield from constants(value)
    elif isinstance(node, ast.IfExp):
        yield from constants(node.body)
        yield from constants(node.orelse)
    elif isinstance(node, ast.Call):
        for value in [*node.args, *(keyword.value for keyword in node.keywords)]:
            yield from constants(value)
    elif isinstance(node, (ast.Tuple, ast.List)):
        for value in node.elts:
            yield from constants(value)


def texts_of_model(path):
    """The name of a model, what its parameters and outputs are called, and its help."""
    model = ElementTree.parse(path).getroot()
    yield model.find("./Option[@name='model_name']").get("value")
    for option in model.iterfind("./Option[@name='parameterDefinitions']/Option/Option[@name='description']"):
        yield option.get("value")
    for option in model.iterfind("./Option[@name='children']/Option/Option[@name='outputs']/Option"):
        yield option.get("name")
    for option in model.iterfind("./Option[@name='help']/Option"):
        if option.get("value"):
            yield option.get("value")


def texts_of_style(path):
    """Words of a legend."""
    for element in ElementTree.parse(path).iter():
        label = element.get("label", "")
        if element.tag in LEGEND and re.search(r"[^\W\d_]", label):
            yield label


def read(path):
    """The finished translations of a file, by their source."""
    known = {}
    if path.exists():
        for message in ElementTree.parse(path).iter("message"):
            translation = message.find("translation")
            if translation.get("type") is None and translation.text:
                known[message.findtext("source")] = translation.text
    return known


def document(found, known, language=None):
    """A file of translations as Qt's own tools write it, without the lines of the sources, which change with every edit."""
    head = f' language="{language}"' if language else ""
    lines = ['<?xml version="1.0" encoding="utf-8"?>', "<!DOCTYPE TS>", f'<TS version="2.1"{head} sourcelanguage="en">']
    lines += ["<context>", f"    <name>{CONTEXT}</name>"]
    for text, name in found.items():
        told = f"<translation>{escape(known[text])}</translation>" if text in known else '<translation type="unfinished"></translation>'
        lines += ["    <message>", f'        <location filename="../{name}"/>', f"        <source>{escape(text)}</source>"]
        lines += [f"        {told}", "    </message>"]
    return "\n".join([*lines, "</context>", "</TS>", ""])


def languages():
    """The files of all languages, by language."""
    return {path.stem.split("_", 1)[1]: path for path in sorted(I18N.glob("skyalidade_*.ts"))}


def stale():
    """Sentences about files that are not what the sources want."""
    found = texts()
    for language, path in languages().items():
        known = read(path)
        yield from (f"{path.name}: not translated: {text}" for text in found if text not in known)
        if path.read_text(encoding="utf-8") != document(found, known, language):
            yield f"{path.name} is not up to date."
    template = I18N / "skyalidade.ts"
    if not template.exists() or template.read_text(encoding="utf-8") != document(found, {}):
        yield f"{template.name} is not up to date."


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--check", action="store_true", help="change nothing; tell what is missing")
    if parser.parse_args().check:
        faults = list(stale())
        sys.exit("\n".join([*faults, "Run: python3 plugin/i18n/make_translations.py"]) if faults else 0)
    found = texts()
    (I18N / "skyalidade.ts").write_text(document(found, {}), encoding="utf-8")
    for language, path in languages().items():
        known = read(path)
        path.write_text(document(found, known, language), encoding="utf-8")
        print(f"{path.name}: {len(found)} texts, {sum(text not in known for text in found)} unfinished")


if __name__ == "__main__":
    main()
