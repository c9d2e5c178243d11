"""Read the names of PyQt6 and how many arguments they take out of its wheel, without running it, into pyqt6_names.json.

    pip download --no-deps --only-binary :all: --python-version 3.10 --platform manylinux_2_34_x86_64 PyQt6==6.12.0
    python3 tests/authorities/pyqt6_names.py pyqt6-6.12.0-cp310-abi3-manylinux_2_34_x86_64.whl

A class is {"": its bases, name: what it is}; a function is [fewest, most] arguments over all its forms, self not counted, with null for
any number; null is anything else, as the member of an enum.
"""

import ast
import hashlib
import json
import re
import sys
import zipfile
from pathlib import Path

SHA256 = "1922bf7440310845a4fd06f4242288084dc26cf682a67e561b115570a8def3d1"
MODULES = ("QtCore", "QtGui", "QtSvg", "QtWidgets", "QtXml", "sip")


def parsed(stub):
    """A stub as Python takes it: some lines say `*args, /`, which it does not."""
    return ast.parse("\n".join(line.replace(", /", "") if re.search(r"\*\w", line) else line for line in stub.splitlines()))


def arguments(function, in_class):
    """(fewest, most) that one form takes."""
    given = function.args
    static = any(isinstance(mark, ast.Name) and mark.id == "staticmethod" for mark in function.decorator_list)
    named = len(given.posonlyargs) + len(given.args) - (in_class and not static)
    fewest = named - len(given.defaults) + sum(default is None for default in given.kw_defaults)
    return fewest, float("inf") if given.vararg or given.kwarg else named + len(given.kwonlyargs)


def known(body, in_class=False):
    """The public names of a module or class."""
    found = {}
    for node in body:
        if isinstance(node, ast.ClassDef):
            found[node.name] = {"": [ast.unparse(base) for base in node.bases], **known(node.body, True)}
        elif isinstance(node, ast.FunctionDef) and (not node.name.startswith("_") or node.name == "__init__"):
            few, many = arguments(node, in_class)
            before = found.get(node.name) or (few, many)
            found[node.name] = min(few, before[0]), max(many, before[1])
        elif isinstance(node, ast.AnnAssign):
            found[node.target.id] = None
        elif isinstance(node, ast.Assign):
            found.update((target.id, None) for target in node.targets if isinstance(target, ast.Name))
    return dict(sorted(found.items()))


def plain(thing):
    """Without infinity, which JSON does not have."""
    if isinstance(thing, dict):
        return {name: plain(of) for name, of in thing.items()}
    return [thing[0], None if thing[1] == float("inf") else thing[1]] if isinstance(thing, tuple) else thing


def written(found):
    """JSON with a line for each class."""
    modules = []
    for module, names in found.items():
        lines = ",\n".join(f"  {json.dumps(name)}: {json.dumps(plain(of), separators=(',', ':'))}" for name, of in names.items())
        modules.append(f' "{module}": {{\n{lines}\n }}')
    return "{\n" + ",\n".join(modules) + "\n}\n"


def main():
    wheel = Path(sys.argv[1])
    if hashlib.sha256(wheel.read_bytes()).hexdigest() != SHA256:
        sys.exit("That is not the wheel that was read.")
    with zipfile.ZipFile(wheel) as archive:
        found = {module: known(parsed(archive.read(f"PyQt6/{module}.pyi").decode()).body) for module in MODULES}
    Path(__file__).with_suffix(".json").write_text(written(found))


if __name__ == "__main__":
    main()
