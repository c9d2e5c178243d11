# Sets up everything that the tests and the demo need. Their run.sh source it, with $top the top of the checkout; it leaves
# $python, the Python to use, and an environment in which QGIS meets neither the user's home nor a profile.
# What is made once lies in build/; what QGIS writes goes to a folder that is removed at the end.

build=$top/build
system_python=/usr/bin/python3  # QGIS's own; another python3 may stand before it on PATH
venv=$build/venv
mkdir -p "$build"
unset PYTHONPATH PYTHONHOME
export PYTHONNOUSERSITE=1

# Debian's packages, where they are missing.

has_module() {
    "$system_python" -c 'import importlib.util, sys; sys.exit(importlib.util.find_spec(sys.argv[1]) is None)' "$1" 2>/dev/null
}

missing=
command -v qgis_process >/dev/null || missing="$missing qgis"
has_module qgis || missing="$missing python3-qgis"
has_module ensurepip || missing="$missing python3-venv"
command -v Xvfb >/dev/null || missing="$missing xvfb"  # a screen for the desktop's test
if [ "${with_printer:-no}" = yes ]; then
    command -v chromium >/dev/null || missing="$missing chromium"  # prints the field plan
fi

install() {
    as_root=
    [ "$(id -u)" = 0 ] || as_root=sudo
    command -v apt-get >/dev/null && command -v ${as_root:-env} >/dev/null || return 1
    echo "Installing$missing: a few minutes ..."
    { $as_root apt-get update && $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $missing; } \
        >"$build/apt.log" 2>&1 || { tail -n 3 "$build/apt.log" >&2; return 1; }
}

if [ -n "$missing" ] && ! install; then
    echo "Please install these packages (Debian's names), then run this again:$missing." >&2
    exit 1
fi

# A virtual environment that sees QGIS and keeps the system's numpy, without which QGIS's own GDAL would break.

made_for=$({ echo "$venv"; "$system_python" -c 'import numpy, sys; print(sys.version, numpy.__version__)'; cat "$top/tests/requirements.txt"; } | cksum)
if [ "$(cat "$venv/made-for" 2>/dev/null)" != "$made_for" ]; then
    echo "Making build/venv ..."
    rm -rf "$venv"
    "$system_python" -m venv --system-site-packages "$venv"
    "$system_python" -c 'import numpy; print(f"numpy=={numpy.__version__}")' >"$build/constraints.txt"
    "$venv/bin/python" -m pip install --quiet --no-cache-dir --constraint "$build/constraints.txt" --requirement "$top/tests/requirements.txt"
    echo "$made_for" >"$venv/made-for"
fi
python=$venv/bin/python

"$python" "$top/plugin/package.py" --link "$build/stage" >/dev/null

# A home of its own for QGIS, with the plugin switched on. Only now: pip was to find the user's configuration.

home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
export HOME="$home" XDG_CONFIG_HOME="$home/.config" XDG_DATA_HOME="$home/.local/share" XDG_CACHE_HOME="$home/.cache" XDG_RUNTIME_DIR="$home"
export QGIS_CUSTOM_CONFIG_PATH="$home/qgis" QGIS_PLUGINPATH="$build/stage" QT_QPA_PLATFORM=offscreen
mkdir -p "$XDG_CONFIG_HOME" "$XDG_DATA_HOME" "$XDG_CACHE_HOME" "$QGIS_CUSTOM_CONFIG_PATH/profiles/default/QGIS"
# Without a write-ahead log: it would leave its mark in the sample's own GeoPackages.
printf '[PythonPlugins]\nskyalidade=true\n[qgis]\nwalForSqlite3=false\n' >"$QGIS_CUSTOM_CONFIG_PATH/profiles/default/QGIS/QGIS3.ini"

# Debian 12's qgis_process is a wrapper that fails; what it wraps works.
QGIS_PROCESS=$(command -v qgis_process.bin || command -v qgis_process)
# Debian's pyproj, run from a virtual environment, does not find its data by itself.
PROJ_DATA=${PROJ_DATA:-/usr/share/proj}
export QGIS_PROCESS PROJ_DATA
