"""Read the names and parameters of numpy 1.20 out of its wheel, without running it, into numpy_1_20_names.json.

    pip download --no-deps --only-binary :all: --python-version 3.9 --platform manylinux2010_x86_64 numpy==1.20.3
    python3 tests/authorities/numpy_1_20_names.py numpy-1.20.3-cp39-cp39-manylinux_2_12_x86_64.manylinux2010_x86_64.whl

Names stand in numpy's own stubs, parameters in its Python sources; of what is written in C only the name is known.
"""

import ast
import hashlib
import json
import sys
import zipfile
from pathlib import Path

SHA256 = "5d050e1e4bc9ddb8656d7b4f414557720ddcca23a5b88dd7cff65e847864c400"
STUBS = {"numpy": "numpy/__init__.pyi", "numpy.linalg": "numpy/linalg/__init__.pyi", "numpy.fft": "numpy/fft/__init__.pyi"}
SOURCES = {
    "numpy": ("numpy/core/fromnumeric.py", "numpy/core/numeric.py", "numpy/core/shape_base.py", "numpy/core/function_base.py")
    + ("numpy/core/multiarray.py", "numpy/lib/function_base.py", "numpy/lib/arraysetops.py", "numpy/lib/shape_base.py")
    + ("numpy/lib/stride_tricks.py", "numpy/lib/index_tricks.py", "numpy/lib/nanfunctions.py", "numpy/lib/twodim_base.py")
    + ("numpy/lib/type_check.py", "numpy/lib/npyio.py", "numpy/lib/arraypad.py", "numpy/core/einsumfunc.py"),
    "numpy.linalg": ("numpy/linalg/linalg.py",),
    "numpy.fft": ("numpy/fft/_pocketfft.py",),
}


def names(tree):
    """What a stub defines or passes on."""
    for node in tree.body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)):
            yield node.name
        elif isinstance(node, ast.AnnAssign):
            yield node.target.id
        elif isinstance(node, ast.Assign):
            yield from (target.id for target in node.targets if isinstance(target, ast.Name))
        elif isinstance(node, ast.ImportFrom):
            yield from (alias.asname for alias in node.names if alias.asname)
        elif isinstance(node, ast.If):  # what depends on the version of Python
            yield from names(node)


def parameters(tree):
    """Each public function of a source with its parameters, or None where it takes any."""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            given = node.args
            named = [argument.arg for argument in (*given.posonlyargs, *given.args, *given.kwonlyargs)]
            yield node.name, None if given.kwarg else named


def written(found):
    """JSON with a line for each name."""
    modules = []
    for module, known in found.items():
        lines = ",\n".join(f"  {json.dumps(name)}: {json.dumps(of)}" for name, of in known.items())
        modules.append(f' "{module}": {{\n{lines}\n }}')
    return "{\n" + ",\n".join(modules) + "\n}\n"


def main():
    wheel = Path(sys.argv[1])
    if hashlib.sha256(wheel.read_bytes()).hexdigest() != SHA256:
        sys.exit("That is not the wheel that was read.")
    found = {}
    with zipfile.ZipFile(wheel) as archive:
        for module, stub in STUBS.items():
            known = {name for name in names(ast.parse(archive.read(stub))) if not name.startswith("_")}
            signatures = {}
            for source in SOURCES[module]:
                signatures.update((name, of) for name, of in parameters(ast.parse(archive.read(source))) if name in known)
            found[module] = {name: signatures.get(name) for name in sorted(known)}
    Path(__file__).with_suffix(".json").write_text(written(found))


if __name__ == "__main__":
    main()
