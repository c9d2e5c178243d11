#!/bin/sh
# Runs the plugin on the sample reserve and prints the best alignments. Results go to build/sample.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
. "$top/tests/setup.sh"
cd "$top"
"$python" sample_project/demo.py
