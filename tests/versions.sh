#!/bin/sh
# Runs the tests in each QGIS that Debian has, one after the other, and prints a table: sh tests/run.sh --versions [pytest's arguments]
# Here first, then in Debian 13 and in Debian's unstable, each in a chroot that is made once in build/versions: some minutes and 4 GB each.
# SUITES="trixie" runs in that one alone.
# Needs root, debootstrap (installed where missing) and Debian's archive as apt knows it.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
cd "$top"
versions=$top/build/versions
suites=${SUITES:-"here trixie sid"}  # QGIS 3.40 and 3.44 in November 2026
mkdir -p "$versions"

[ "$(id -u)" = 0 ] || { echo "Please run this as root: it makes chroots and mounts /proc and /dev in them." >&2; exit 1; }
# What is mounted is seen by this process alone and goes with it, however it ends.
[ -n "${MOUNTS_APART:-}" ] || exec env MOUNTS_APART=yes unshare --mount sh "$0" "$@"
command -v debootstrap >/dev/null || { apt-get update && apt-get install -y --no-install-recommends debootstrap; } >"$versions/apt.log" 2>&1 \
    || { echo "debootstrap is missing and could not be installed: see build/versions/apt.log." >&2; exit 1; }

# The archive, and how this machine reaches it and Python's packages.

archive=$(apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' | grep -v security | head -n 1)
authorities=/etc/ssl/certs/ca-certificates.crt

make() {
    [ -e "$versions/$1/made" ] && return
    echo "Making build/versions/$1 ..."
    rm -rf "${versions:?}/$1"
    debootstrap --variant=minbase --include=ca-certificates "$1" "$versions/$1" "$archive" >"$versions/$1.log" 2>&1 || {
        tail -n 3 "$versions/$1.log" >&2
        return 1
    }
    echo 'Acquire::Check-Valid-Until "false";' >"$versions/$1/etc/apt/apt.conf.d/99expired"  # a copy of the archive may be older than its date
    printf '[global]\ncert = /etc/ssl/outer.crt\n' >"$versions/$1/etc/pip.conf"
    touch "$versions/$1/made"
}

inside() {
    [ "$1" = here ] && { shift; "$@"; return; }
    root=$versions/$1
    shift
    # shellcheck disable=SC2046  (variables without spaces)
    env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LANG=C.UTF-8 CI="${CI:-}" \
        PIP_DEFAULT_TIMEOUT=180 PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_CERT=/etc/ssl/outer.crt SSL_CERT_FILE=/etc/ssl/outer.crt \
        REQUESTS_CA_BUNDLE=/etc/ssl/outer.crt $(env | grep -E '^(PIP_(EXTRA_)?INDEX_URL|PIP_TRUSTED_HOST|https?_proxy|no_proxy)=') \
        chroot "$root" "$@"
}

enter() {
    root=$versions/$1
    for place in proc sys dev; do
        mount --rbind "/$place" "$root/$place" || return 1
    done
    cp -L /etc/resolv.conf /etc/hosts "$root/etc/"
    cp -L "$authorities" "$root/etc/ssl/outer.crt"
    mkdir -p "$root/checkout"
    find "$root/checkout" -mindepth 1 -maxdepth 1 ! -name build -exec rm -rf {} +
    tar --create --exclude ./build --exclude ./.git --exclude __pycache__ . | tar --extract --directory "$root/checkout"
}

# One line of the table from what a run has printed.

about='import sys, numpy; from qgis.core import Qgis; print(Qgis.QGIS_VERSION.split("-")[0], sys.version.split()[0], numpy.__version__)'
row() {
    printf '%-12s %-8s %-8s %-8s %s\n' "$1" $2 "$3"
}

table=$versions/table
: >"$table"
failed=0
judge() {
    name=$1 facts=$2 log=$3 code=$4
    closing=$(grep -E '[0-9]+ (passed|failed|error)' "$log" | tail -n 1 | sed 's/=//g; s/^ *//; s/ *$//')
    [ "$code" = 0 ] || failed=1
    [ "$code" = 0 ] || closing="FAILED: ${closing:-see build/versions/$(basename "$log")}"
    row "$name" "$facts" "$closing" >>"$table"
}

for suite in $suites; do
    log=$versions/$suite.log code=0 facts='? ? ?' checkout=$top
    if [ "$suite" = here ] || { make "$suite" && enter "$suite" && checkout=/checkout; }; then
        echo "Running the tests: $suite ..."
        inside "$suite" sh "$checkout/tests/run.sh" "$@" >"$log" 2>&1 || code=$?
        facts=$(inside "$suite" env QT_QPA_PLATFORM=offscreen /usr/bin/python3 -c "$about" 2>/dev/null || echo '? ? ?')
    else
        code=1
    fi
    judge "$suite" "$facts" "$log" "$code"
done

row "" "QGIS Python numpy" "tests"
cat "$table"
exit $failed
