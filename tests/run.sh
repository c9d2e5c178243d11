#!/bin/sh
# Checks the style and runs every test. Arguments go to pytest: sh tests/run.sh tests/sky -k moon
# With --versions first: here, and in two newer Debians with their QGIS; see versions.sh.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
if [ "${1:-}" = --versions ]; then
    shift
    exec sh "$top/tests/versions.sh" "$@"
fi
with_printer=yes
. "$top/tests/setup.sh"
cd "$top"
# Sentences are tested in English and in lines of one width, whatever the computer speaks and however wide its terminal is.
export LC_ALL=C.UTF-8 LANGUAGE= COLUMNS=80

style=0
"$python" -m ruff check || style=1
"$python" -m ruff format --check || style=1
"$python" -P -m pytest "$@"  # -P: the checkout's own folder must not be importable, only the staged plugin
[ $style = 0 ] || { echo "ruff found faults: see above the tests." >&2; exit 1; }
