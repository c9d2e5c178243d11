#!/usr/bin/env python3
"""Stage the plugin for development, or make its release zip.

python3 plugin/package.py --link DIR    DIR/skyalidade, made of links into this checkout
python3 plugin/package.py --zip FILE    the zip that QGIS installs

Both add what the checkout does not hold: the pure-Python libraries and the ephemeris excerpt. They are taken once from pinned wheels and
kept in build/, so that a second run is quick and needs no network. Any Python that has pip and numpy will do.
"""

import argparse
import contextlib
import hashlib
import io
import os
import re
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

NAME = "skyalidade"
TOP = Path(__file__).resolve().parents[1]
PLUGIN = TOP / "plugin"
CACHE = TOP / "build"

LIBRARIES = """\
certifi==2026.10.19.post1 --hash=sha256:1324c476b4811eff41a8bc2122cd0bbd4d9c7234c725446d99ab1612b3a7fdd2
jplephem==2.24 --hash=sha256:2de15608a0f13010a71a0a8af8765646d5884402006dac0dd7639d7db13629ac
sgp4==2.27 --hash=sha256:5f3f5716649988b638fbe7fcda592830e0956f548ca273b93cfa5f75917b9087
skyfield==1.55 --hash=sha256:9f98964855067460c94aa81a337194136f4a97a62ba8bbbfac1b8556f2b66ad4
tzdata==2026.6 --hash=sha256:0a10eec6e13ef16b627fabed9a5f2ba61a62b1c67f327305f4e7e412a70b4aec
"""
# Not needed to run: the libraries' tests with their data, their commands, and what only an installer reads. Licences and METADATA stay.
LEFT_OUT = re.compile(
    r"(^|/)tests?(/|\.py$)|^sgp4/(tcppver\.out|SGP4-VER\.TLE)$|^jplephem/(ascii|commandline|excerpter|__main__)\.py$"
    r"|\.dist-info/(RECORD|WHEEL|top_level\.txt|entry_points\.txt)$"
)
# Cut from the copy that travels: nothing here reads XML of strangers, and who scans the zip shall find no way to.
CUT = {"sgp4/omm.py": r"^import xml\.etree\.ElementTree as ET\n|^def parse_xml\(file\):\n(?:[ \t]+.*\n)+"}
CUT_NOTE = "# Sky Alidade has cut parse_xml from this copy of sgp4.\n"

EPHEMERIS = "skyfield-data==7.0.0 --hash=sha256:4279f999f7f8c5ef5d8bf1b714f301a0844ae5df3a3f0d23610b20d8789073f5"
EPHEMERIS_MEMBER = "skyfield_data/data/de421.bsp"
# Barycentres of Earth-Moon, Jupiter and Saturn, then Sun, Moon, Earth. Jupiter and Saturn only bend light, but Skyfield asks for them.
EXCERPT_TARGETS = {3, 5, 6, 10, 301, 399}
EXCERPT_JD = (2447892.5, 2471184.5)  # 1990-01-01 to 2053-10-09, where DE421 ends
EXCERPT_SHA256 = "704ac199105442c7f833cc48f87755565ca94b0ea3ece5f530e4607c94ec23c9"

JUNK = re.compile(r"^\.|^__pycache__$|\.pyc$|~$|^make_\w+\.py$")  # names that are never part of the plugin; a maker is no part


def sha256(data):
    return hashlib.sha256(data).hexdigest()


@contextlib.contextmanager
def made_whole(path):
    """Give a name to build under, and move the result to `path` once it is complete: nobody meets a half-made one."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=path.parent, prefix=".making-") as scratch:
        new = Path(scratch, "new")
        yield new
        if path.is_dir():
            path.rename(Path(scratch, "old"))  # a folder cannot be replaced in one step; the old one goes with the scratch folder
        new.replace(path)


def wheels(pins):
    """Download pinned wheels unless build/ has them; return their paths."""
    store = CACHE / "wheels"
    wanted = re.findall(r"sha256:(\w+)", pins)

    def found():
        return {sha256(path.read_bytes()): path for path in store.glob("*.whl")}

    if not set(wanted) <= set(found()):
        store.mkdir(parents=True, exist_ok=True)
        requirements = store / "requirements.txt"
        requirements.write_text(pins)
        # The tags take pure Python only. A fixed --python-version makes the choice the same whatever Python runs this.
        tags = ["--only-binary=:all:", "--platform=any", "--implementation=py", "--abi=none", "--python-version=3.11"]
        pip = [sys.executable, "-m", "pip", "download", "--quiet", "--no-cache-dir", "--no-deps", "--require-hashes", *tags]
        if subprocess.run([*pip, f"--dest={store}", f"--requirement={requirements}"], check=False).returncode:
            sys.exit(f"pip could not fetch the pinned libraries. Go online and take a Python that has pip (this one: {sys.executable}).")
    return [found()[digest] for digest in wanted]


def libraries():
    """Return the folder of the pure-Python libraries, unpacked from their wheels the first time."""
    folder = CACHE / f"libs-{sha256((LIBRARIES + LEFT_OUT.pattern + repr(CUT) + CUT_NOTE).encode())[:12]}"
    if not folder.exists():
        with made_whole(folder) as new:
            for wheel in wheels(LIBRARIES):
                with zipfile.ZipFile(wheel) as archive:
                    archive.extractall(new, [name for name in archive.namelist() if not LEFT_OUT.search(name)])
            for name, pattern in CUT.items():
                source = (new / name).read_text(encoding="utf-8")
                (new / name).write_bytes((CUT_NOTE + re.sub(pattern, "", source, flags=re.MULTILINE)).encode())
    return folder


def ephemeris():
    """Return the ephemeris excerpt, cut the first time."""
    file = CACHE / f"ephemeris-{EXCERPT_SHA256[:12]}.bsp"
    if not file.exists():
        whole_wheels = [wheel for wheel in wheels(LIBRARIES) if wheel.name.startswith("jplephem-")]
        sys.path[:0] = map(str, whole_wheels)  # the cutter does not travel; first, since its version is written into the excerpt
        from jplephem.daf import DAF
        from jplephem.excerpter import write_excerpt
        from jplephem.spk import SPK

        (wheel,) = wheels(EPHEMERIS)
        with zipfile.ZipFile(wheel) as archive:
            whole = SPK(DAF(io.BytesIO(archive.read(EPHEMERIS_MEMBER))))
        segments = [(name, values) for name, values in whole.daf.summaries() if values[2] in EXCERPT_TARGETS]
        excerpt = io.BytesIO()
        write_excerpt(whole, excerpt, *EXCERPT_JD, segments)
        if sha256(excerpt.getvalue()) != EXCERPT_SHA256:
            sys.exit(f"The ephemeris excerpt is not the expected one: its sha256 is {sha256(excerpt.getvalue())}.")
        with made_whole(file) as new:
            new.write_bytes(excerpt.getvalue())
    return file


def translations(source):
    """Return the binary form of a language's translations, made when they have changed."""
    file = CACHE / f"{source.stem}-{sha256(source.read_bytes())[:12]}.qm"
    if not file.exists():
        sys.path.insert(0, str(PLUGIN / "i18n"))
        from make_qm import compiled

        with made_whole(file) as new:
            new.write_bytes(compiled(source))
    return file


def contents():
    """Map each part's name inside the package to the file or folder that it comes from."""

    def entries(folder):
        return [path for path in folder.iterdir() if not JUNK.search(path.name)]

    parts = {path.name: path for path in entries(PLUGIN) if path.name not in ("data", "i18n", "package.py")}
    parts.update({f"data/{path.name}": path for path in entries(PLUGIN / "data")})
    parts["data/ephemeris.bsp"] = ephemeris()
    parts.update({f"i18n/{path.stem}.qm": translations(path) for path in (PLUGIN / "i18n").glob(f"{NAME}_*.ts")})
    parts["libs"] = libraries()
    parts["metadata.txt"] = TOP / "metadata.txt"
    parts["LICENSE"] = TOP / "LICENSE"
    return parts


def link(folder):
    """Make `folder`/skyalidade of links; leave it alone where it already is what it should be."""
    stage = folder / NAME
    wanted = {name: str(source) for name, source in contents().items()}
    links = [path for pattern in ("*", "data/*", "i18n/*") for path in stage.glob(pattern) if path.is_symlink()]
    if {path.relative_to(stage).as_posix(): os.readlink(path) for path in links} != wanted:
        with made_whole(stage) as new:
            for folder_of_links in ("data", "i18n"):
                (new / folder_of_links).mkdir(parents=True)
            for name, source in wanted.items():
                (new / name).symlink_to(source)
    print(f"{stage}: links to the checkout")


def write_zip(file):
    """Write the release zip: the same bytes for the same sources, whenever and by whomever it is made."""
    members = {}
    for name, source in contents().items():
        for path in [source] if source.is_file() else source.rglob("*"):
            inner = path.relative_to(source)
            if path.is_file() and not any(JUNK.search(part) for part in inner.parts):
                members[f"{NAME}/{name}/{inner.as_posix()}" if inner.parts else f"{NAME}/{name}"] = path
    with made_whole(file) as new, zipfile.ZipFile(new, "w") as archive:
        for name in sorted(members):
            info = zipfile.ZipInfo(name, date_time=(1980, 1, 1, 0, 0, 0))  # the zip format's zero
            info.create_system = 3  # Unix, so that the next line means something
            info.external_attr = 0o100644 << 16
            info.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(info, members[name].read_bytes(), compresslevel=9)
    print(f"{file}: {len(members)} files, {file.stat().st_size / 1e6:.1f} MB")


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    task = parser.add_mutually_exclusive_group(required=True)
    task.add_argument("--link", metavar="DIR", help="make DIR/skyalidade of links to this checkout")
    task.add_argument("--zip", metavar="FILE", help="write the release zip")
    chosen = parser.parse_args()
    if chosen.link:
        link(Path(chosen.link).absolute())
    else:
        write_zip(Path(chosen.zip).absolute())


if __name__ == "__main__":
    main()
