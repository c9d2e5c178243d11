"""The documents hold: pages are as the plugin is, every field is explained, every link leads somewhere, every example could be run."""

import importlib.util
import os
import re
import shlex
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from qgis.core import (
    QgsExpression,
    QgsExpressionContext,
    QgsExpressionContextUtils,
    QgsFeature,
    QgsGeometry,
    QgsProcessingModelAlgorithm,
    QgsVectorLayer,
)

TOP = Path(__file__).resolve().parents[1]
DOCS = TOP / "docs"
RENEW = "Run: build/venv/bin/python docs/make_pages.py --write"
WRITTEN = [folder for folder in TOP.iterdir() if folder.is_dir() and folder.name != "build" and not folder.name.startswith(".")]
MARKDOWN = sorted([*TOP.glob("*.md"), *(path for folder in WRITTEN for path in folder.rglob("*.md"))])
KINDS = {"text": "text", "int": "whole number", "real": "number", "bool": "yes or no", "date": "date", "datetime": "time, UTC"}
OF_OTHERS = {"QGIS_PLUGINPATH", "QT_QPA_PLATFORM", "FIELDS_OF_OUTPUTS", "TOL_ARCSEC"}  # names in capitals that are no parameters
MOST_PICTURE_BYTES = 300_000  # a page with pictures opens at once, and the checkout stays small


def loaded(file):
    """A script of the checkout as a module."""
    spec = importlib.util.spec_from_file_location(file.stem, file)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


make_pages = loaded(DOCS / "make_pages.py")
ALGORITHMS = {kind.ID: kind().create() for kind in make_pages.ALGORITHMS}
MODELS = {file.stem for file in (TOP / "plugin" / "models").glob("*.model3")}
WITH_BODY = [name for name, made in ALGORITHMS.items() if made.parameterDefinition("BODY") or made.parameterDefinition("BODIES")]


def name_of(path):
    return path.relative_to(TOP).as_posix()


# pages that are made


@pytest.fixture(scope="module")
def wanted():
    return make_pages.wanted()


@pytest.mark.parametrize("name", ALGORITHMS)
def test_a_page_is_as_its_algorithm(name, wanted):
    page = make_pages.page(name)
    written, _, _ = page.read_text(encoding="utf-8").partition(make_pages.MARK)
    for heading in ("## Parameters", "## Outputs"):
        assert heading not in written, f"{name_of(page)} has a heading '{heading}' of its own, but that part is made. Remove it. {RENEW}"
    assert page.read_text(encoding="utf-8") == wanted[page], f"{name_of(page)} is out of date. {RENEW}"


def test_a_page_out_of_date_is_seen(wanted, tmp_path, monkeypatch, capsys):
    page = make_pages.page("sightlines")
    copy = tmp_path / "docs" / "algorithms" / page.name
    copy.parent.mkdir(parents=True)
    copy.write_text(page.read_text(encoding="utf-8").replace("| 50 000 |", "| 40 000 |"), encoding="utf-8")
    monkeypatch.setattr(make_pages, "wanted", lambda: {copy: wanted[page]})
    monkeypatch.setattr(make_pages, "DOCS", tmp_path / "docs")
    assert make_pages.main(write=False)
    assert capsys.readouterr().out == "docs/algorithms/sightlines.md is out of date\n"
    assert not make_pages.main(write=True)
    assert copy.read_text(encoding="utf-8") == page.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ALGORITHMS)
def test_outputs_are_listed_with_their_fields(name):
    from skyalidade.names import FIELDS, FIELDS_OF_OUTPUTS

    made = ALGORITHMS[name]
    sinks = {one.name() for one in made.destinationParameterDefinitions() if one.type() == "sink"}
    listed = FIELDS_OF_OUTPUTS.get(name, {})
    assert listed.keys() == sinks, f"names.py: FIELDS_OF_OUTPUTS of {name}"
    assert {field for fields in listed.values() for field in fields} <= FIELDS.keys()


def test_every_field_is_explained_with_its_type():
    from skyalidade.names import FIELDS

    told = make_pages.meanings()
    assert [name for name in FIELDS if name not in told] == [], "docs/nomenclature.md, Fields, does not explain them"
    assert [name for name in told if name not in FIELDS] == [], "docs/nomenclature.md explains fields that are not there"
    wrong = {name: told[name][0] for name, field in FIELDS.items() if told[name][0].split(",")[0] != KINDS[field.kind].split(",")[0]}
    assert wrong == {}
    units = {name: re.search(r"\[(\S+?)(?: true)?\]", field.alias) for name, field in FIELDS.items() if field.kind == "real"}
    wrong = {name: told[name][0] for name, unit in units.items() if told[name][0] != (f"number, {unit[1]}" if unit else "number")}
    assert wrong == {}


def test_the_version_to_cite_is_the_version():
    version = re.search(r"^version=(.+)$", (TOP / "metadata.txt").read_text(encoding="utf-8"), flags=re.M)[1]
    assert re.search(r"^version: (.+)$", (DOCS / "CITATION.cff").read_text(encoding="utf-8"), flags=re.M)[1] == version
    assert re.findall(r"version\W+(\d[\d.]*\d)", (DOCS / "citing.md").read_text(encoding="utf-8")) == [version, version]


# every algorithm has its place


def test_the_index_names_every_page():
    linked = {(DOCS / link).resolve() for link in re.findall(r"\]\(([^()\s#]+)", (DOCS / "README.md").read_text(encoding="utf-8"))}
    pages = {page.resolve() for page in DOCS.rglob("*.md")} - {(DOCS / "README.md").resolve()}
    assert pages - linked == set()


@pytest.mark.parametrize("page", ["README.md", "docs/README.md"])
def test_no_algorithm_is_left_out(page):
    text = (TOP / page).read_text(encoding="utf-8")
    assert [name for name in ALGORITHMS if f"algorithms/{name}.md" not in text] == []


@pytest.mark.parametrize("name", WITH_BODY)
def test_who_may_choose_the_sun_is_warned(name):
    written = make_pages.page(name).read_text(encoding="utf-8").partition(make_pages.MARK)[0]
    assert "ISO 12312-2" in written


def models():
    for file in (TOP / "plugin" / "models").glob("*.model3"):
        model = QgsProcessingModelAlgorithm()
        assert model.fromFile(str(file))
        yield model


@pytest.mark.parametrize("page", MARKDOWN, ids=name_of)
def test_pages_name_parameters_that_there_are(page):
    there = {one.name() for made in (*ALGORITHMS.values(), *models()) for one in (*made.parameterDefinitions(), *made.outputDefinitions())}
    text = re.sub(r"^```.*?^```$", "", page.read_text(encoding="utf-8"), flags=re.M | re.S)
    named = {word for code in re.findall(r"`([^`\n]+)`", text) for word in re.findall(r"\b[A-Z][A-Z0-9]*_[A-Z0-9_]+\b", code)}
    assert named - there - OF_OTHERS == set()


# links


def without_code(text):
    """Markdown without its blocks and pieces of code, in which brackets are no links and # is no heading."""
    text = re.sub(r"^```.*?^```$", "", text, flags=re.M | re.S)
    return re.sub(r"`[^`\n]*`", lambda piece: "x" * len(piece[0]), text)


def anchors(page):
    """The anchors that a page of Markdown has: its headings in small letters, words joined by dashes."""
    text = re.sub(r"^```.*?^```$", "", page.read_text(encoding="utf-8"), flags=re.M | re.S)
    found = set()
    for heading in re.findall(r"^#{1,6} (.+)$", text, flags=re.M):
        anchor = re.sub(r"[^\w\- ]", "", heading.strip().lower()).replace(" ", "-")
        number = 1
        while anchor in found:  # a heading that comes again gets a number
            anchor = re.sub(r"(-\d+)?$", f"-{number}", anchor, count=1)
            number += 1
        found.add(anchor)
    return found


def dead_links(page):
    """Links of a page that lead nowhere."""
    for target in re.findall(r"\]\(([^()\s]+)\)", without_code(page.read_text(encoding="utf-8"))):
        if re.match(r"[a-z]+:", target):
            continue
        path, _, anchor = target.partition("#")
        to = (page.parent / path).resolve() if path else page
        if not to.exists():
            yield f"{target}: there is no such file"
        elif anchor and (to.suffix != ".md" or anchor not in anchors(to)):
            yield f"{target}: there is no such heading"


@pytest.mark.parametrize("page", MARKDOWN, ids=name_of)
def test_links_lead_somewhere(page):
    assert list(dead_links(page)) == []


def test_a_dead_link_is_seen(tmp_path):
    (tmp_path / "other.md").write_text("# Other page\n\n## Twice\n\n## Twice\n", encoding="utf-8")
    page = tmp_path / "page.md"
    page.write_text(
        "[a](gone.md) [b](other.md#other-page) [c](other.md#gone) [d](#here) ![e](gone.png) [f](https://example.org)\n"
        "[g](other.md#twice-1) `[h](code.md)`\n\n```sh\n[i](block.md)\n```\n",
        encoding="utf-8",
    )
    assert [link.split(":")[0] for link in dead_links(page)] == ["gone.md", "other.md#gone", "#here", "gone.png"]


@pytest.mark.parametrize("picture", sorted(DOCS.rglob("*.png")), ids=name_of)
def test_pictures_are_small_and_shown(picture):
    assert picture.stat().st_size <= MOST_PICTURE_BYTES
    assert any(picture.name in page.read_text(encoding="utf-8") for page in MARKDOWN)


# examples


def commands(page):
    """The runs of algorithms that a page shows: [(algorithm, [(name, value), ...]), ...]."""
    for block in re.findall(r"^```sh\n(.*?)^```$", page.read_text(encoding="utf-8"), flags=re.M | re.S):
        for line in block.replace("\\\n", " ").splitlines():
            words = shlex.split(line, comments=True)
            for place, word in enumerate(words):
                if word.startswith("skyalidade:"):
                    given = [one.lstrip("-").partition("=")[::2] for one in words[place + 1 :] if "=" in one]
                    yield word.split(":")[1], given


def example_faults(name, given):
    """What an example asks of an algorithm that it does not have."""
    if name in MODELS:
        return []  # QGIS refuses what a model does not have, and every example of them is run
    if name not in ALGORITHMS:
        return [f"there is no algorithm {name}"]
    made = ALGORITHMS[name]
    definitions = {one.name(): one for one in made.parameterDefinitions()}
    faults = [f"{name} has no parameter {parameter}" for parameter, _ in given if parameter not in definitions]
    for parameter, value in given:
        definition = definitions.get(parameter)
        if definition is not None and definition.type() == "enum" and not set(value.split(",")) <= set(definition.options()):
            faults.append(f"{parameter} has no choice {value}")
    missing = [one.name() for one in made.parameterDefinitions() if make_pages.left_out(one) == "must be given"]
    return faults + [f"{one} is not given" for one in missing if one not in dict(given)]


@pytest.mark.parametrize("page", [page for page in MARKDOWN if list(commands(page))], ids=name_of)
def test_examples_ask_for_what_is_there(page):
    assert [fault for name, given in commands(page) for fault in example_faults(name, given)] == []


def test_a_wrong_example_is_seen(tmp_path):
    page = tmp_path / "page.md"
    page.write_text(
        "```sh\nqgis_process run skyalidade:night_windows -- SITES=a.gpkg BODY=venus \\\n    NIGHTS=3 OUTPUT=b.gpkg\n"
        "qgis_process run skyalidade:nights -- SITES=a.gpkg\nqgis_process run skyalidade:sightlines -- CAMERAS=a.gpkg OUTPUT=b.gpkg\n```\n",
        encoding="utf-8",
    )
    assert [example_faults(*one) for one in commands(page)] == [
        ["night_windows has no parameter NIGHTS", "BODY has no choice venus"],
        ["there is no algorithm nights"],
        ["SUBJECTS is not given"],
    ]


# runs


def rows(file, where):
    """Rows of the only layer of a GeoPackage."""
    with closing(sqlite3.connect(file)) as connection:
        connection.row_factory = sqlite3.Row
        (layer,) = connection.execute("SELECT table_name FROM gpkg_geometry_columns").fetchone()
        return connection.execute(f'SELECT * FROM "{layer}" WHERE {where}').fetchall()


@pytest.fixture(scope="module")
def first_night(tmp_path_factory):
    """What the commands of the first night gave, and the pictures drawn from it."""
    results, pictures = tmp_path_factory.mktemp("results"), tmp_path_factory.mktemp("pictures")
    command = [sys.executable, TOP / "sample_project" / "first_night.py", results, pictures]
    done = subprocess.run(
        command, env={**os.environ, "QT_QPA_PLATFORM": "offscreen"}, capture_output=True, encoding="utf-8", errors="replace", check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return results, pictures


def test_the_first_night_has_its_pictures(first_night):
    kept = {picture.name for picture in (DOCS / "first_night").glob("*.png")} - {"dialog.png"}  # that one needs a window
    assert {picture.name for picture in first_night[1].glob("*.png")} == kept
    assert kept <= set(re.findall(r"\(first_night/([\w-]+\.png)\)", (DOCS / "first-night.md").read_text(encoding="utf-8")))


def test_the_first_night_tells_what_its_commands_gave(first_night):
    results, _ = first_night
    text = (DOCS / "first-night.md").read_text(encoding="utf-8")

    (month,) = rows(results / "months.gpkg", "site = 'Fold Pasture' AND month = '2027-06'")
    assert f"{month['nights']} nights, {month['hours']:.0f} hours" in text
    assert month["new_moon"] == "2027-06-05"
    (night,) = rows(results / "nights.gpkg", "site = 'Fold Pasture' AND night = '2027-06-05'")
    assert f"from {night['start_loc'][11:16]} to {night['end_loc'][11:16]}" in text

    told = rows(results / "alignments.gpkg", "camera = 'Fold Pasture' ORDER BY t_utc")
    for row in told:
        start, best, end = (row[name][11:16] for name in ("start_loc", "t_local", "end_loc"))
        numbers = f"{row['bearing_deg']:.1f} | {row['alt_deg']:.1f} | {row['d_alt_deg']:.1f} | {row['tilt_deg']:.0f}"
        assert f"| {row['subject']} | {start} | **{best}** | {end} | {numbers} |" in text
    assert len(told) == 2

    plan = " ".join(re.sub(r"<[^>]+>", " ", (results / "plan.html").read_text(encoding="utf-8")).split())
    places = rows(results / "standpoints.gpkg", "path = 'Bench Path' AND subject = 'Vennet Ruin' ORDER BY t_utc")
    for row in places:
        angles = " | ".join(f"{row[name]:.1f}°" for name in ("az_deg", "mag_deg", "alt_deg"))
        assert f"| {row['t_local'][11:16]} | {row['camera']}: core {row['d_alt_deg']:.1f}° above the ruin | {angles} |" in text
    assert len(places) == 4
    for time, what in (
        ("18:01", "Leave the car"),
        ("19:26", "Sunset"),
        ("20:44", "Moonset"),
        ("01:45", "Leave"),
        ("02:26", "Back at the car"),
    ):
        assert f"{time} {what}" in plan
        assert f"| {time} | {what.lower()}" in text


@pytest.mark.parametrize("page", ["recipes.md", "models.md", *(f"algorithms/{name}.md" for name in ALGORITHMS)])
def test_every_example_runs(tmp_path, page):
    loaded(DOCS / "run_commands.py").run(DOCS / page, tmp_path)
    assert all(rows(file, "1") for file in tmp_path.glob("*.gpkg"))


def test_a_recipe_that_fails_is_seen(tmp_path):
    page = tmp_path / "page.md"
    page.write_text(
        "```sh\nqgis_process run skyalidade:sightlines -- CAMERAS=gone.gpkg SUBJECTS=gone.gpkg OUTPUT=o.gpkg\n```\n", encoding="utf-8"
    )
    with pytest.raises(subprocess.CalledProcessError):
        loaded(DOCS / "run_commands.py").run(page, tmp_path)


# expressions


@pytest.fixture
def functions(qgis_app):
    """The plugin's functions in expressions."""
    from skyalidade.plugin import SkyAlidade

    running = SkyAlidade(None)
    running.initProcessing()
    yield
    running.unload()


def expressions(page):
    return re.findall(r"^```\n(.*?)^```$", page.read_text(encoding="utf-8"), flags=re.M | re.S)


@pytest.mark.parametrize("text", expressions(DOCS / "expressions.md"), ids=lambda text: text[:12])
def test_every_expression_gives_something(functions, text):
    layer = QgsVectorLayer("Point?crs=EPSG:32625&field=faces_e:double&field=faces_n:double&field=bearing_deg:double", "cameras", "memory")
    camera = QgsFeature(layer.fields())
    camera.setGeometry(QgsGeometry.fromWkt("Point (499565 3982275)"))
    camera.setAttributes([499545.0, 3982145.0, 188.7])
    context = QgsExpressionContext()
    context.appendScope(QgsExpressionContextUtils.layerScope(layer))
    context.setFeature(camera)
    expression = QgsExpression(text)
    given = expression.evaluate(context)
    assert not expression.hasEvalError(), expression.evalErrorString()
    assert given is not None
    if text.startswith("format_number"):
        assert given == "188.7°"
