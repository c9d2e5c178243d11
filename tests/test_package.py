"""The staged plugin and the release zip."""

import ast
import hashlib
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import numpy
import pytest

TOP = Path(__file__).resolve().parents[1]
STAGE = TOP / "build" / "stage"
MB = 1_000_000


@pytest.fixture(scope="module")
def names(release):
    with zipfile.ZipFile(release) as archive:
        return archive.namelist()


def test_zip_is_the_same_whenever_and_by_whomever_it_is_made(package, release, tmp_path, monkeypatch):
    """A copy with other file times and rights, made under another umask, gives the same bytes."""
    copy = tmp_path / "plugin"
    shutil.copytree(TOP / "plugin", copy, copy_function=shutil.copyfile, ignore=shutil.ignore_patterns("__pycache__"))
    for path in copy.rglob("*.py"):
        os.utime(path, (1_000_000_000, 1_000_000_000))
        path.chmod(0o755)
    monkeypatch.setattr(package, "PLUGIN", copy)
    umask = os.umask(0o077)
    try:
        package.write_zip(tmp_path / "again.zip")
    finally:
        os.umask(umask)
    assert (tmp_path / "again.zip").read_bytes() == release.read_bytes()


def test_zip_changes_with_its_sources(package, release, tmp_path, monkeypatch):
    copy = tmp_path / "plugin"
    shutil.copytree(TOP / "plugin", copy, ignore=shutil.ignore_patterns("__pycache__"))
    (copy / "names.py").write_text("# changed\n")
    monkeypatch.setattr(package, "PLUGIN", copy)
    package.write_zip(tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() != release.read_bytes()


def test_zip_is_small(release):
    assert 5 * MB < release.stat().st_size < 12 * MB  # the ephemeris alone is 5 MB


def test_zip_holds_what_qgis_needs(names):
    needed = (
        "metadata.txt LICENSE README.md __init__.py plugin.py provider.py names.py data/ephemeris.bsp libs/skyfield/api.py libs/sgp4/api.py"
    )
    needed += " data/zones.npz data/ZONES.md data/wmm2025.cof data/MAGNETIC.md libs/tzdata/zoneinfo/Europe/Lisbon"
    assert {f"skyalidade/{name}" for name in needed.split()} <= set(names)
    assert {name.split("/")[0] for name in names} == {"skyalidade"}


def test_zip_holds_each_librarys_licence(names):
    for library in ("certifi", "jplephem", "sgp4", "skyfield", "tzdata"):
        assert [name for name in names if f"libs/{library}-" in name and "LICENSE" in name]


def test_zip_holds_nothing_else(names):
    unwanted = ("package.py", "/tests/", "/test.py", "/tests.py", ".pyc", "__pycache__", "/.", "numpy")
    assert [name for name in names for word in unwanted if word in name] == []


def test_everything_in_the_zip_is_python_39(release, names):
    """QGIS 3.22 came with Python 3.9 on some systems."""
    with zipfile.ZipFile(release) as archive:
        for name in names:
            if name.endswith(".py"):
                ast.parse(archive.read(name), filename=name, feature_version=(3, 9))


def test_excerpt_is_the_one_that_was_checked(package):
    assert hashlib.sha256((STAGE / "skyalidade" / "data" / "ephemeris.bsp").read_bytes()).hexdigest() == package.EXCERPT_SHA256
    assert package.EXCERPT_SHA256 in (TOP / "plugin" / "data" / "README.md").read_text(encoding="utf-8")


def test_linking_again_changes_nothing(package, tmp_path):
    package.link(tmp_path)
    before = (tmp_path / "skyalidade").stat().st_ino
    package.link(tmp_path)
    assert (tmp_path / "skyalidade").stat().st_ino == before


def test_linking_mends_a_stage_gone_stale(package, tmp_path):
    package.link(tmp_path)
    (tmp_path / "skyalidade" / "gone.py").symlink_to(tmp_path / "nowhere")
    (tmp_path / "skyalidade" / "names.py").unlink()
    package.link(tmp_path)
    assert {path.name for path in (tmp_path / "skyalidade").iterdir()} == {name.split("/")[0] for name in package.contents()}


def test_a_failure_leaves_what_was_there(package, tmp_path):
    file = tmp_path / "skyalidade.zip"
    file.write_text("the last good one")

    def fail():
        with package.made_whole(file) as new:
            new.write_text("half")
            raise OSError("disk full")

    with pytest.raises(OSError, match="disk full"):
        fail()
    assert file.read_text() == "the last good one"
    assert list(tmp_path.iterdir()) == [file]


def test_installed_from_the_zip_the_pure_folders_work_without_qgis(release, tmp_path):
    """In a process that sees neither this checkout nor the user's packages; Skyfield can come from nowhere but the zip."""
    with zipfile.ZipFile(release) as archive:
        archive.extractall(tmp_path)
    program = f"""if True:
        import sys
        sys.path = [path for path in sys.path if {str(sys.prefix)!r} not in path]  # the test environment's packages
        sys.path.append({str(tmp_path)!r})
        import importlib, pkgutil, skyalidade
        for folder in ("sky", "ground", "lens", "plan"):
            package = importlib.import_module(f"skyalidade.{{folder}}")
            for module in pkgutil.iter_modules(package.__path__):
                importlib.import_module(f"skyalidade.{{folder}}.{{module.name}}")
        import skyfield
        from skyalidade.sky.ephemeris import default_ephemeris
        default_ephemeris()
        assert not [name for name in sys.modules if name.split(".")[0] in ("qgis", "osgeo", "PyQt5", "PyQt6")]
        print(skyfield.__file__)
    """
    done = subprocess.run([sys.executable, "-I", "-c", program], cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert Path(done.stdout.strip()).parent == tmp_path / "skyalidade" / "libs" / "skyfield"


def test_a_computer_without_time_zones_finds_them_in_the_package():
    """As on Windows: no folder of zones and nothing installed, here with numpy alone of all packages."""
    program = f"""if True:
        import sys, zoneinfo
        zoneinfo.reset_tzpath(to=[])
        sys.path.append({str(Path(numpy.__file__).parents[1])!r})
        import numpy
        sys.path[-1] = {str(STAGE)!r}
        try:
            zoneinfo.ZoneInfo("Europe/Lisbon")
        except zoneinfo.ZoneInfoNotFoundError:
            print("none")
        from skyalidade.plan import clock
        print(clock.local_text(1821000000.0, ["Europe/Lisbon"], 0))
        import tzdata
        print(tzdata.__file__)
    """
    done = subprocess.run([sys.executable, "-I", "-S", "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    before, text, file = done.stdout.splitlines()
    assert before == "none"
    assert text == "2027-09-15 10:20:00 +01:00"  # 09:20 UTC, summer time (IANA time zone database)
    assert Path(file).is_relative_to(STAGE)


def test_installed_from_the_zip_qgis_lists_every_algorithm(release, tmp_path, qgis_process):
    with zipfile.ZipFile(release) as archive:
        archive.extractall(tmp_path)
    listing = qgis_process("list", plugins=tmp_path).stdout
    for path in (TOP / "plugin" / "algorithms").glob("[a-z]*.py"):
        assert f"skyalidade:{path.stem}\t" in listing


def test_the_plugin_loads_and_leaves_without_a_window():
    """In a QGIS of its own: the one of these tests may have the provider already."""
    program = f"""if True:
        import sys
        from qgis.core import QgsApplication
        application = QgsApplication([], False)
        application.initQgis()
        sys.path.append({str(STAGE)!r})
        import skyalidade
        registry = QgsApplication.processingRegistry()
        plugin = skyalidade.classFactory(None)
        plugin.initProcessing()
        assert registry.providerById("skyalidade").algorithms()
        plugin.unload()
        assert registry.providerById("skyalidade") is None
        plugin.unload()  # QGIS may ask it of a plugin that never came up
        print("left")
    """
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.stdout == "left\n", done.stderr


def test_version_stands_in_one_place_and_the_changelog_tells_of_it():
    metadata = (TOP / "metadata.txt").read_text(encoding="utf-8")
    version = next(line.split("=")[1] for line in metadata.splitlines() if line.startswith("version="))
    assert f"## {version}" in (TOP / "CHANGELOG.md").read_text(encoding="utf-8")
