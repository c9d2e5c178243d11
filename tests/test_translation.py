"""Languages: nothing a person reads escapes translation, Spanish is complete, and what machines read is the same in every language."""

import ast
import itertools
import pickle
import re
import string
import sys
from datetime import datetime
from pathlib import Path

import icalendar
import numpy as np
import pytest
from qgis.core import (
    QgsApplication,
    QgsCategorizedSymbolRenderer,
    QgsExpression,
    QgsFeature,
    QgsGeometry,
    QgsProcessingContext,
    QgsProcessingFeedback,
    QgsSettings,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QCoreApplication, QTranslator

from skyalidade import names
from skyalidade.adapters import field_words, fields, looks, translation
from skyalidade.adapters.translation import counted, date_told, day_told, localised, said, tr
from skyalidade.plan import night_windows, targets
from skyalidade.plan.clock import instants
from skyalidade.plan.conditions import DOWN, Conditions
from skyalidade.plan.unmet import between
from skyalidade.plugin import SkyAlidade
from skyalidade.words import Opening, Sentence

PLUGIN = Path(__file__).resolve().parents[1] / "plugin"
sys.path.insert(0, str(PLUGIN / "i18n"))

import make_translations as made  # noqa: E402
from make_qm import compiled, elf_hash  # noqa: E402

SPANISH = PLUGIN / "i18n" / "skyalidade_es.ts"
TEXTS = made.texts()
CAMERAS = ["Point (-33 36)", "Point (-33.01 36.01)"]
SUBJECTS = ["Point (-33.002 35.99)"]
NIGHTS = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-03", "AZ_TOLERANCE": 20}


def speak(language):
    """Set the language of QGIS as its options do."""
    settings = QgsSettings()
    settings.setValue("locale/overrideFlag", bool(language))
    settings.setValue("locale/userLocale", language)
    translation.install()


@pytest.fixture
def spanish(qgis_app):
    speak("es_ES")
    yield
    speak("")
    translation.remove()


@pytest.fixture(scope="module")
def plugin(qgis_app):
    running = SkyAlidade(None)
    running.initProcessing()
    yield running
    running.unload()


@pytest.fixture
def algorithms(plugin):
    """All algorithms of ours, made in the language of the moment."""
    registry = QgsApplication.processingRegistry()
    return lambda: {name.split(":")[1]: registry.createAlgorithmById(name) for name in ids()}


def ids():
    provider = QgsApplication.processingRegistry().providerById(names.PROVIDER_ID)
    return sorted(algorithm.id() for algorithm in provider.algorithms())


def layer(points):
    made_layer = QgsVectorLayer("Point?crs=EPSG:4326", "points", "memory")
    features = []
    for wkt in points:
        feature = QgsFeature()
        feature.setGeometry(QgsGeometry.fromWkt(wkt))
        features.append(feature)
    made_layer.dataProvider().addFeatures(features)
    return made_layer


def run(algorithm, parameters):
    context, feedback = QgsProcessingContext(), QgsProcessingFeedback(False)
    taken, sentence = algorithm.checkParameterValues(parameters, context)
    assert taken, sentence
    results, _ = algorithm.run(parameters, context, feedback, {}, False)
    return results, context, feedback.textLog()


# complete


def test_the_spanish_translation_is_complete():
    assert list(made.stale()) == []


def holes(text):
    return sorted((name, form, how or "") for _, name, form, how in string.Formatter().parse(text) if name is not None)


def test_translations_have_the_same_places_for_numbers():
    told = made.read(SPANISH)
    assert [text for text, spoken in told.items() if holes(text) != holes(spoken)] == []
    assert [text for text, spoken in told.items() if spoken != spoken.strip() and text == text.strip()] == []


def test_translations_are_not_english():
    """Whole sentences that are the same in both languages were forgotten."""
    assert [text for text, spoken in made.read(SPANISH).items() if text == spoken and re.search(r"[a-z]{3,} [a-z]{3,}", text)] == []


IDENTIFIER = re.compile(r"\b(?:[A-Z][A-Z0-9]*_[A-Z0-9_]+|[a-z]+_[a-z_]+)\b")


def test_identifiers_are_kept():
    """Names of parameters, fields and choices, with an underscore in them, stand in the translation too."""
    told = made.read(SPANISH)
    assert [
        text for text, spoken in told.items() if set(IDENTIFIER.findall(re.sub("{[^}]*}", "", text))) - set(IDENTIFIER.findall(spoken))
    ] == []


def asked_of_night_windows():
    """Every kind of sentence that night_windows may give as a reason."""
    limits = [(None, 60.0), (10.5, None), (-1.0, 30.0)]
    for body in names.BODIES:
        body_asked = targets.target(body, (279.23, 38.78), -80.5)
        for (tilt, apex), moon in itertools.product(itertools.product([(None, None), *limits], repeat=2), (DOWN, "down_or_thin")):
            asked = Conditions(
                alt_min_deg=12.5,
                sun_limit_deg=-15.5,
                tilt_min_deg=tilt[0],
                tilt_max_deg=tilt[1],
                apex_min_deg=apex[0],
                apex_max_deg=apex[1],
                moon=moon,
            )
            for name in night_windows.ASKED_IN_ORDER:
                if (name != "tilt" or tilt != (None, None)) and (name != "apex" or apex != (None, None)):
                    yield night_windows._sentence(name, body_asked, asked)


def test_reasons_read_from_a_table_are_told_in_spanish(spanish):
    """A table holds them in English; what a chart tells of them is what was meant."""
    reasons = list(asked_of_night_windows())
    assert len({reason.pattern for reason in reasons}) > 8
    for reason in reasons:
        again = night_windows.reason_of(str.__str__(reason))
        assert said(again) == said(reason) != str(reason)
    assert (
        said(night_windows.reason_of("core is above 10.5° only by day or in twilight"))
        == "núcleo: por encima de 10,5° solo de día o en el crepúsculo"
    )
    assert night_windows.reason_of("somebody's own words") == "somebody's own words"


def test_a_text_without_translation_is_told(tmp_path, monkeypatch):
    """The check itself: a source text more, and the file falls behind."""
    module = tmp_path / "adapters" / "new.py"
    module.parent.mkdir()
    module.write_text('tr("Brand new")\ntr(f"not found")\nSentence("{n} too", n=1)\npattern = "A" if x else "B"\n')
    monkeypatch.setattr(made, "PLUGIN", tmp_path)
    assert set(made.texts()) == {"Brand new", "{n} too", "A", "B"}
    assert f"{SPANISH.name}: not translated: Brand new" in list(made.stale())


# nothing escapes


PROSE = re.compile(r"[A-Za-z]{2,}[,;:]? [a-z]{2,}")
MARKUP = re.compile(r"<|\{ |^ ?(?:SELECT|DELETE|UPDATE|AND) |\bdata_type = ")  # HTML, style sheets and SQL
# module -> what in it reads like prose and is none
NO_PROSE = {
    "adapters/field_files.py": "name of the product in a calendar",
    "adapters/looks.py": "QGIS's name of a storage",
    "adapters/sinks.py": "what the system says of a full disk",
    "adapters/translation.py": "form of a date",
    "charts/season_chart.py": "word of matplotlib",
    "charts/skyline_view.py": "word of matplotlib",
    "plan/conditions.py": "ids of conditions",
    "plan/elevations.py": "units as files write them",
    "plan/night_windows.py": "ids of conditions",
    "sky/bodies.py": "id of a direction",
}
COMMANDS = ("batch/", "package.py")  # command lines speak English


def prose(tree):
    """Texts of a module that read like sentences and are not given to be translated; docstrings apart."""
    left = set()
    for node in ast.walk(tree):
        if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef)) and node.body and isinstance(node.body[0], ast.Expr):
            left.add(id(node.body[0].value))
        marked = isinstance(node, ast.Call) and getattr(node.func, "id", "") in (*made.MARKS, "AssertionError")
        left |= {id(inner) for inner in ast.walk(node)} if marked else set()
    for node in ast.walk(tree):
        text = node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""
        if id(node) not in left and PROSE.search(text) and not MARKUP.search(text):
            yield text


MODULES = [path.relative_to(PLUGIN).as_posix() for path in sorted(PLUGIN.rglob("*.py")) if not path.name.startswith("make_")]


@pytest.mark.parametrize("module", [module for module in MODULES if not module.startswith(COMMANDS)])
def test_every_sentence_is_given_to_be_translated(module):
    found = [text for text in prose(ast.parse((PLUGIN / module).read_text(encoding="utf-8"))) if text not in TEXTS]
    assert bool(found) == (module in NO_PROSE), found


def test_a_sentence_that_escapes_is_found():
    source = 'feedback.pushInfo("Nothing was found.")\nfeedback.pushInfo(tr("Nothing was lost."))\nraise ValueError(f"{n} rows are bad")\n'
    assert list(prose(ast.parse(source))) == ["Nothing was found.", " rows are bad"]


class Listener(QTranslator):
    """Hears every text that is looked up."""

    def __init__(self):
        super().__init__()
        self.heard = set()

    def isEmpty(self):  # noqa: N802
        return False

    def translate(self, context, source, disambiguation=None, n=-1):
        if context == names.PROVIDER_ID:
            self.heard.add(source)
        return ""


def test_what_is_looked_up_is_in_the_template(algorithms, tmp_path):
    """Texts that reach tr by way of a name: a table that `make_translations.py` does not know would be missed here."""
    listener = Listener()
    QCoreApplication.installTranslator(listener)
    try:
        for algorithm in algorithms().values():
            algorithm.displayName(), algorithm.shortDescription(), algorithm.tags(), algorithm.group(), algorithm.shortHelpString()
        fields.qgs_fields(names.FIELDS)
        made_layer = layer(CAMERAS)
        for style in sorted((PLUGIN / "styles").glob("*.qml")):
            looks.dress(made_layer, style.stem)
        found = run(algorithms()["alignments"], {"CAMERAS": layer(CAMERAS), "SUBJECTS": layer(SUBJECTS), **NIGHTS, "OUTPUT": "memory:"})
        rows = found[1].getMapLayer(found[0]["OUTPUT"])
        run(algorithms()["field_plan"], {"ALIGNMENTS": rows, "HTML": str(tmp_path / "plan.html"), "GPX": "", "CALENDAR": ""})
    finally:
        QCoreApplication.removeTranslator(listener)
    assert len(listener.heard) > 500
    assert sorted({text for text in listener.heard if text} - set(TEXTS)) == []


@pytest.mark.parametrize("page", sorted(path.name for path in (PLUGIN / "help").glob("*.html")))
def test_help_is_there_in_spanish_with_the_same_names(page):
    english, told = ((PLUGIN / "help" / folder / page).read_text(encoding="utf-8") for folder in ("", "es"))
    tags = re.compile(r"</?\w+>")
    assert tags.findall(english) == tags.findall(told)
    identifiers = re.compile(r"<[bi]>((?:[a-z]+_|[A-Z])[A-Za-z0-9_, ]*)</[bi]>")
    known = {*names.FIELDS, *re.findall(r"[A-Z][A-Z0-9_]{2,}", english)}
    for shown in identifiers.findall(english):
        if shown in known:
            assert shown in identifiers.findall(told)


# the binary form


def test_the_binary_form_is_read_by_qt(qgis_app, tmp_path):
    """Qt itself finds every text again."""
    file = tmp_path / "es.qm"
    file.write_bytes(compiled(SPANISH))
    translator = QTranslator()
    assert translator.load(str(file))
    told = made.read(SPANISH)
    assert len(told) > 1000
    QCoreApplication.installTranslator(translator)
    try:
        assert {text: QCoreApplication.translate(names.PROVIDER_ID, text) for text in told} == told
        assert QCoreApplication.translate(names.PROVIDER_ID, "never said") == "never said"
        assert QCoreApplication.translate("another context", "Sky exposure") == "Sky exposure"
    finally:
        QCoreApplication.removeTranslator(translator)


def test_hash():
    """Names and hashes of the System V ABI's own table, from memory; Qt, which reads what was hashed here, is the test above."""
    assert {name: elf_hash(name.encode()) for name in ("exit", "printf", "syscall")} == {
        "exit": 0x0006CF04,
        "printf": 0x077905A6,
        "syscall": 0x0B09985C,
    }
    assert elf_hash(b"") == 1  # as Qt has it


def test_the_stage_holds_the_binary_form():
    assert (Path(translation.__file__).parent.parent / "i18n" / "skyalidade_es.qm").stat().st_size > 100_000
    assert not list((Path(translation.__file__).parent.parent / "i18n").glob("*.ts"))


# spoken


@pytest.mark.parametrize(
    ("language", "name"),
    [
        ("es_ES.UTF-8", "Alineaciones de cielo y motivo"),
        ("de_DE.UTF-8", "Alignments of"),
    ],
)
def test_qgis_process_speaks_the_language_of_the_computer(qgis_process, language, name):
    told = qgis_process("help", "skyalidade:alignments", LANG=language, LC_ALL=language, LANGUAGE="")
    assert told.returncode == 0, told.stderr
    assert name in told.stdout
    assert ("Rumbo" in told.stdout or "rumbo" in told.stdout) == language.startswith("es")
    assert "CAMERAS" in told.stdout
    assert ("Cámaras: los puntos desde los que se fotografía" in told.stdout) == language.startswith("es")


def test_a_run_in_spanish_has_the_same_names_and_values(algorithms):
    """Only what is told differs: names of fields, and every value, fallback names and reasons among them, are the same."""
    parameters = {"CAMERAS": layer(CAMERAS), "SUBJECTS": layer(SUBJECTS), **NIGHTS, "BODIES": ["core", "moon", "pole"]}
    told, logs = [], []
    for language in ("", "es_ES"):
        speak(language)
        results, context, log = run(algorithms()["alignments"], {**parameters, "OUTPUT": "memory:", "UNMET": "memory:"})
        tables = [context.getMapLayer(results[name]) for name in ("OUTPUT", "UNMET")]
        told.append([[table.fields().names(), *([*map(str, row.attributes())] for row in table.getFeatures())] for table in tables])
        logs.append(log)
    speak("")
    translation.remove()
    assert told[0] == told[1]
    assert len(told[0][0]) > 3
    assert len(told[0][1]) > 1
    assert "pares de cámara y motivo" in logs[1]
    assert "pairs of camera and subject" in logs[0]
    assert "camera 1" in told[1][0][1]


def test_enums_and_names_of_parameters_are_never_translated(algorithms, spanish):
    for algorithm in algorithms().values():
        for definition in algorithm.parameterDefinitions():
            assert re.fullmatch(r"[A-Z][A-Z0-9_]*", definition.name())
            if hasattr(definition, "options"):
                assert all(option.isascii() for option in definition.options())


def test_every_label_is_spanish(algorithms, spanish):
    english = {text for text in TEXTS if re.search(r"[a-z]{3,} [a-z]{3,}", text)}
    for algorithm in algorithms().values():
        shown = [algorithm.displayName(), algorithm.shortDescription(), algorithm.group(), *algorithm.tags()]
        shown += [text for definition in algorithm.parameterDefinitions() for text in (definition.description(), definition.help())]
        assert [text for text in shown if text in english] == []


def test_sentences_of_the_pure_folders(spanish):
    with pytest.raises(ValueError, match="does not exist in Europe/Madrid") as wrong:
        instants(datetime(2027, 3, 28, 2, 30), ["Europe/Madrid"])  # noqa: DTZ001  a wall clock
    assert said(wrong.value).startswith("2027-03-28 02:30:00 no existe en Europe/Madrid: los relojes la saltan")
    assert said(between(None, 12.5)) == "por debajo de 12,5°"
    reason = Opening("{who} is never seen {height} in these nights.", who=Sentence("the core"), height=between(10, 20))
    assert reason == "The core is never seen between 10° and 20° in these nights."
    assert said(reason) == "El núcleo no se ve nunca entre 10° y 20° en estas noches."
    assert tr("{name}: {reason}").format(name="X", reason=wrong.value).startswith("X: 2027-03-28 02:30:00 no existe")
    assert said("a layer's own words") == "a layer's own words"


def test_sentences_travel_between_processes():
    sentence = Opening("{who} stays {where} {n:.1f}", who=Sentence("the core"), where="{in braces}", n=2.0)
    again = pickle.loads(pickle.dumps(sentence))
    assert (again, again.pattern, again.parts, type(again)) == (sentence, sentence.pattern, sentence.parts, Opening)
    assert again == "The core stays {in braces} 2.0"


def test_a_reason_in_a_table_is_plain_english(spanish):
    values = np.array([Sentence("{n} rows", n=3), None, "text"], dtype=object)
    column = fields.columns(["reason"], {"reason": values}, 3)[0]
    assert column == ["3 rows", None, "text"]
    assert {type(value) for value in column} == {str, type(None)}


# numbers and dates


@pytest.mark.parametrize(
    ("language", "number", "whole", "date", "place"),
    [
        ("es_ES", "1.234,5 m", "1.234", "6 jun. 2027", "12,34500° N; 3,50000° O"),
        ("es_MX", "1,234.5 m", "1,234", "6 jun. 2027", "12.34500° N; 3.50000° O"),
        ("en_GB", "1,234.5 m", "1,234", "2027-06-06", "12.34500° N, 3.50000° W"),
        ("de_DE", "1,234.5 m", "1,234", "2027-06-06", "12.34500° N, 3.50000° W"),  # no translation: all of it as in the sources
    ],
)
def test_numbers_and_dates_as_readers_write_them(qgis_app, language, number, whole, date, place):
    speak(language)
    try:
        assert localised("1,234.5 m") == number
        assert tr("{m:,.0f} m").format(m=1234.4) == f"{whole} m"
        assert re.sub(r"\.", "", date_told("2027-06-06")) == re.sub(r"\.", "", date)  # whether a month has a dot is Qt's affair
        assert field_words.place(-3.5, 12.345) == place
        assert field_words.coordinates(-3.5, 12.345) == "12.34500° N, 3.50000° W"
        assert counted({"x": 1234}) == f"{whole} x"
    finally:
        speak("")
        translation.remove()


@pytest.mark.parametrize(("language", "day"), [("es_ES", "1 mar"), ("en_GB", "03-01"), ("de_DE", "03-01")])
def test_a_day_of_every_year_is_not_taken_for_another(qgis_app, language, day):
    """In Spanish 03-01 would be the third of January."""
    speak(language)
    try:
        assert day_told(3, 1).rstrip(".") == day
    finally:
        speak("")
        translation.remove()


def test_a_text_is_of_a_class_that_qt_knows(spanish):
    """Where nothing is put in, and when all is put in: Qt would show nothing of another class in a label's expression."""
    assert type(tr("Field plan")) is str
    assert type(tr("{n:,} fields of view.").format(n=1)) is str
    assert type(said(Sentence("the core"))) is str


def test_texts_that_are_put_in_stay_as_they_are(spanish):
    assert tr("{name}: {reason}").format(name="a 1,234.5 layer", reason="{n}") == "a 1,234.5 layer: {n}"
    assert tr("{n:,} sightlines (cameras: {cameras:,}, subjects: {subjects:,}).").format(n=np.int64(12345), cameras=2, subjects=True) == (
        "12.345 líneas de visión (cámaras: 2, motivos: 1)."
    )


@pytest.fixture
def plan(algorithms, tmp_path):
    """The files of a field plan, in the language of the moment."""

    def written(language):
        found = run(algorithms()["alignments"], {"CAMERAS": layer(CAMERAS), "SUBJECTS": layer(SUBJECTS), **NIGHTS, "OUTPUT": "memory:"})
        rows = found[1].getMapLayer(found[0]["OUTPUT"])
        paths = {name: tmp_path / f"{language}.{name.lower()}" for name in ("HTML", "GPX", "CALENDAR")}
        run(algorithms()["field_plan"], {"ALIGNMENTS": rows, **{name: str(path) for name, path in paths.items()}})
        return {name: path.read_text(encoding="utf-8") for name, path in paths.items()}

    return written


def test_a_field_plan_in_spanish(plan, spanish):
    page = plan("es")["HTML"]
    assert '<html lang="es">' in page
    assert "Noche del " in page
    assert re.search(r"\d+,\d°", page)
    assert not re.search(r">[^<]*\d\.\d°", page)
    for english in ("Night", "Sunset", "twilight", "Walk", "bearing", "planning aid"):
        assert english not in re.sub(r"<style>.*?</style>|<[^>]*>", "", page, flags=re.DOTALL)


def test_machine_formats_are_the_same_in_spanish(plan, qgis_app):
    """Coordinates, times, kinds and keys of waypoints and events; only names and descriptions are told in the language."""
    texts = []
    for language in ("", "es_ES"):
        speak(language)
        texts.append(plan(language or "en"))
    speak("")
    translation.remove()
    bare = [re.sub(r"<(name|desc|time)>.*?</\1>", "", text["GPX"], flags=re.DOTALL) for text in texts]
    assert bare[0] == bare[1]
    events = [list(icalendar.Calendar.from_ical(text["CALENDAR"]).walk("VEVENT")) for text in texts]
    for one, other in zip(*events):
        for key in ("UID", "DTSTART", "DTEND", "GEO", "LOCATION"):
            assert one[key].to_ical() == other[key].to_ical()
    assert "sobre" in str(events[1][0]["SUMMARY"])


# legends


@pytest.mark.parametrize(
    "style", [path.stem for path in sorted((PLUGIN / "styles").glob("*.qml")) if 'type="categorizedSymbol"' in path.read_text("utf-8")]
)
def test_legends_are_told_in_spanish(qgis_app, spanish, style):
    """Words are translated, the values that they stand for are not."""
    dressed, plain = layer(CAMERAS), layer(CAMERAS)
    looks.dress(dressed, style)
    plain.loadNamedStyle(str(PLUGIN / "styles" / f"{style}.qml"), looks.PARTS)
    assert isinstance(plain.renderer(), QgsCategorizedSymbolRenderer)
    told = made.read(SPANISH)
    for one, other in zip(dressed.renderer().categories(), plain.renderer().categories()):
        assert one.value() == other.value()
        assert one.label() == told.get(other.label(), other.label())
        assert one.label() != other.label() or not re.search(r"[a-z]{3,} [a-z]{3,}", other.label())


def label_of(layer_dressed):
    return layer_dressed.labeling().settings().fieldName


TEXT = re.compile(r"'(?:[^']|'')*'")  # in an expression


def words_of(layer_dressed):
    """The texts of its labels' expression that hold a word."""
    return {text for text in TEXT.findall(label_of(layer_dressed)) if re.search("[A-Za-z]{2}", text)}


@pytest.mark.parametrize(
    "style", [path.stem for path in sorted((PLUGIN / "styles").glob("*.qml")) if "<labeling" in path.read_text("utf-8")]
)
def test_labels_of_the_map_are_told_in_spanish(qgis_app, spanish, style):
    """Every word in an expression but ids, units and the form of a date; what is asked of the fields is the same."""
    dressed, plain = layer(CAMERAS), layer(CAMERAS)
    looks.dress(dressed, style)
    plain.loadNamedStyle(str(PLUGIN / "styles" / f"{style}.qml"), looks.PARTS)
    kept = {*(f"'{name}'" for name in names.BODIES), "' mm'", "'yyyy-MM-dd'"}
    assert words_of(plain).intersection(words_of(dressed)) - kept == set()
    assert not QgsExpression(label_of(dressed)).hasParserError()
    assert QgsExpression(label_of(dressed)).referencedColumns() == QgsExpression(label_of(plain)).referencedColumns()
