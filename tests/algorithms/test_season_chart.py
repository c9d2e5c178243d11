"""`season_chart` in QGIS: declaration, refusals, and folders of pictures and a page that hold what the nights tell."""

import re
from pathlib import Path

import pytest
from matplotlib.image import imread
from qgis.core import QgsProcessingException, QgsProcessingOutputHtml, QgsProcessingParameterDefinition, QgsVectorFileWriter, QgsVectorLayer
from qgis.PyQt.QtCore import QDate

from skyalidade.charts import sheets
from skyalidade.names import NIGHT_WINDOWS_FIELDS
from skyalidade.names import THEMES as THEME_NAMES

OCEAN, SYDNEY, ARCTIC, GREENWICH = "PointZ(-33 36 0)", "PointZ(149 -33 0)", "PointZ(24.5 69.6 0)", "PointZ(0 40 0)"
JUNE = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-30"}


@pytest.fixture
def nights(run, layer):
    """A layer of nights: rows of (WKT, name of the site), and what else night_windows takes."""
    kept = []

    def made(*sites, **asked):
        rows = layer([(wkt, name) for wkt, name in sites], fields=["title:string"])
        kept.append(run("night_windows", {"SITES": rows, "SITE_NAME": "title", **JUNE, **asked}))
        return kept[-1].layers["OUTPUT"]

    return made


@pytest.fixture
def drawn(run, tmp_path):
    """A run, and its folder."""

    def outcome(layer, cancel_at=None, **changed):
        folder = tmp_path / "charts"
        return run("season_chart", {"NIGHTS": layer, "FOLDER": str(folder), **changed}, cancel_at), folder

    return outcome


@pytest.fixture
def rows(layer):
    """A layer with the fields of night_windows and rows of its own: texts all, as a table that was edited may be."""

    def made(*told):
        usual = {"site": "Here", "site_id": "1", "body": "core", "night": "2027-06-05", "tz": "UTC", "minutes": "60"}
        usual.update(dusk_loc="2027-06-05 21:00:00 +00:00", dawn_loc="2027-06-06 03:00:00 +00:00", dark_min="360")
        usual.update(start_loc="2027-06-05 22:00:00 +00:00", t_local="2027-06-05 22:30:00 +00:00", end_loc="2027-06-05 23:00:00 +00:00")
        return layer(
            [(one.pop("wkt", OCEAN), *({**usual, **one}.get(name) for name in NIGHT_WINDOWS_FIELDS)) for one in told],
            fields=[f"{name}:string" for name in NIGHT_WINDOWS_FIELDS],
        )

    return made


def texts(path):
    return re.findall(r"<text[^>]*>([^<]*)</text>", path.read_text(encoding="utf-8"))


def stems(folder):
    pictures = sorted(path.stem for path in folder.glob("*.png"))
    assert pictures == sorted(path.stem for path in folder.glob("*.svg"))
    return pictures


# declaration


def test_parameters_and_outputs(algorithm):
    made = algorithm("season_chart")
    definitions = made.parameterDefinitions()
    assert [definition.name() for definition in definitions] == ["NIGHTS", "THEME", "MAX_PICTURES", "FOLDER"]
    assert [d.name() for d in definitions if d.flags() & QgsProcessingParameterDefinition.Flag.FlagAdvanced] == ["MAX_PICTURES"]
    assert [output.name() for output in made.outputDefinitions()] == ["FOLDER", "HTML", "PICTURES"]
    assert isinstance(made.outputDefinition("HTML"), QgsProcessingOutputHtml)  # which QGIS links from its results
    theme = made.parameterDefinition("THEME")
    assert (theme.options(), theme.defaultValue(), theme.usesStaticStrings()) == (list(THEME_NAMES), "print", True)


def test_its_help_holds_the_cautions(algorithm):
    text = algorithm("season_chart").shortHelpString()
    assert "ISO 12312-2" in text
    assert "not alone" in text


# what comes out


def test_a_picture_of_each_site_and_a_page(drawn, nights):
    out, folder = drawn(nights((OCEAN, "Gannet Point"), (SYDNEY, "Vell & Sons"), (OCEAN, "Gannet Point")))
    names = ["season-001-gannet-point-2027-06-01", "season-002-vell-sons-2027-06-01", "season-003-gannet-point-2027-06-01"]
    assert stems(folder) == names
    assert "3 pictures of 3 sites and bodies in" in out.log
    page = (folder / "season_chart.html").read_text(encoding="utf-8")
    for name in names:
        assert f'<img src="{name}.png"' in page
        assert f'<a href="{name}.svg">' in page
        assert f'<a href="#{name}">' in page
    assert "Vell &amp; Sons: Milky Way core" in page
    for foreign in ("http", "<script", "Vell & Sons", "ISO 12312-2"):
        assert foreign not in page
    assert imread(folder / f"{names[0]}.png").shape[:2] == (952, 1500)


def test_results_name_the_page_and_the_number(algorithm, context, nights, tmp_path):
    from conftest import Feedback

    parameters = {"NIGHTS": nights((OCEAN, "A")), "FOLDER": str(tmp_path / "new")}
    results, fine = algorithm("season_chart").run(parameters, context, Feedback())
    assert fine
    assert results == {"FOLDER": str(tmp_path / "new"), "HTML": str(tmp_path / "new" / "season_chart.html"), "PICTURES": 1}


def test_what_a_picture_tells(drawn, nights):
    """At 36 N 33 W the page of night_windows has 21:43 to 03:07 for 2027-06-05; a sidereal day later the core rises 3 min 56 s earlier."""
    _, folder = drawn(nights((OCEAN, "Gannet Point")))
    told = texts(next(folder.glob("*.svg")))
    assert "Gannet Point: Milky Way core, nights 2027-06-01 to 2027-06-30" in told
    lines = "\n".join(told)
    assert "36.0000° N, 33.0000° W. Clock on the wall of UTC-02:00, upward from 12:00" in lines
    assert "25 of 30 nights have a window, 77 h in all" in lines
    assert "longest: 2027-06-06, 21:39-03:07 (5 h 27 min)." in lines
    counts = re.findall(r"(\d+): (?:Moon up|core)", lines)
    assert sum(map(int, counts)) == 5  # the other nights, each with its reason
    assert "not a survey and not a permit" in lines
    assert {"the core usable, as asked", "dark: Sun under -18°", "new", "full", "00:00", "2027-06-01", "90°"} <= set(told)


def test_the_month_in_the_page(drawn, nights):
    _, folder = drawn(nights((OCEAN, "Gannet Point")))
    page = (folder / "season_chart.html").read_text(encoding="utf-8")
    row = re.search(r"<tr><th>2027-06</th>(.*?)</tr>", page).group(1)
    assert re.findall(r"<td>(.*?)</td>", row) == ["25", "77.2", "2027-06-06", "5 h 27 min", "2027-06-05"]


def test_the_window_is_where_the_row_tells(drawn, nights):
    """A pixel in the window of 2027-06-05 (21:43 to 03:07), one before it and one after: column 5 of 30, an hour is 24 pixels."""
    _, folder = drawn(nights((OCEAN, "Gannet Point")))
    image = imread(next(folder.glob("*.png")))[..., :3]
    column = int(64 + 1372 * 4.25 / 30)
    for hour, usable in ((9.5, False), (9.9, True), (14.9, True), (15.3, False)):
        colour = tuple((255 * image[int(64 + 576 * (1 - hour / 24)), column]).round().astype(int).tolist())
        assert (colour == (0xCC, 0x79, 0xA7)) == usable, hour


def test_the_clock_that_changes(drawn, nights):
    _, folder = drawn(nights((GREENWICH, "Meridian"), FIRST_NIGHT="2027-03-01", LAST_NIGHT="2027-03-31"))
    told = texts(next(folder.glob("*.svg")))
    assert "Clocks change in the night of 2027-03-27 (+1 h)." in "\n".join(told)
    assert "clock +1 h" in told


def test_years_have_a_picture_each(drawn, nights):
    _, folder = drawn(nights((OCEAN, "A"), FIRST_NIGHT="2026-12-01", LAST_NIGHT="2028-01-15", MOON="any"))
    assert stems(folder) == ["season-001-a-2026-12-01", "season-002-a-2027-12-01"]


def test_bodies_have_a_picture_each_and_the_sun_its_caution(drawn, nights, run, layer):
    rows = [feature for body in ("core", "sun") for feature in nights((OCEAN, "A"), BODY=body).getFeatures()]
    both = nights((OCEAN, "A"))
    both.dataProvider().truncate()
    both.dataProvider().addFeatures(rows)
    out, folder = drawn(both)
    assert stems(folder) == ["season-001-a-2027-06-01", "season-002-a-2027-06-01"]
    second = "\n".join(texts(folder / "season-002-a-2027-06-01.svg"))
    assert "A: Sun, nights" in second
    for told in (second, (folder / "season_chart.html").read_text(encoding="utf-8"), out.log):
        assert "certified solar filter" in told
    assert "certified solar filter" not in "\n".join(texts(folder / "season-001-a-2027-06-01.svg"))


def test_a_site_without_any_window(drawn, nights):
    _, folder = drawn(nights((ARCTIC, "Fell")))
    lines = "\n".join(texts(next(folder.glob("*.svg"))))
    assert "None of 30 nights has a window." in lines
    assert "30: no darkness this night: the Sun stays above -18°" in lines
    assert "dark: Sun" not in lines


def test_the_night_theme_is_red(drawn, nights):
    _, folder = drawn(nights((OCEAN, "A")), THEME="night")
    image = imread(next(folder.glob("*.png")))
    assert image[..., 0].max() > 0.7
    assert image[..., 1:3].max() < 0.16
    assert "background: #000000" in (folder / "season_chart.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("form", ["GPKG", "CSV", "ESRI Shapefile"])
def test_nights_out_of_a_file(drawn, nights, tmp_path, context, form):
    """The same picture as from memory; files keep dates and texts in ways of their own."""
    made = nights((OCEAN, "Gannet Point"))
    path = tmp_path / f"nights.{ {'GPKG': 'gpkg', 'CSV': 'csv'}.get(form, 'shp') }"
    options = QgsVectorFileWriter.SaveVectorOptions()
    options.driverName = form
    options.layerOptions = ["GEOMETRY=AS_WKT"] if form == "CSV" else []
    QgsVectorFileWriter.writeAsVectorFormatV3(made, str(path), context.transformContext(), options)
    layer = QgsVectorLayer(
        str(path) if form != "CSV" else f"{path.as_uri()}?type=csv&wktField=WKT&crs=EPSG:4326",
        "nights",
        "delimitedtext" if form == "CSV" else "ogr",
    )
    assert layer.isValid()
    _, folder = drawn(made)
    from_memory = (folder / "season-001-gannet-point-2027-06-01.svg").read_bytes()
    drawn(layer)
    assert (folder / "season-001-gannet-point-2027-06-01.svg").read_bytes() == from_memory


def test_on_the_command_line(nights, tmp_path, context, qgis_process):
    options = QgsVectorFileWriter.SaveVectorOptions()
    QgsVectorFileWriter.writeAsVectorFormatV3(nights((OCEAN, "A")), str(tmp_path / "nights.gpkg"), context.transformContext(), options)
    done = qgis_process("season_chart", f"NIGHTS={tmp_path / 'nights.gpkg'}", "THEME=night", f"FOLDER={tmp_path / 'out'}")
    assert done.returncode == 0, done.stderr
    assert "season_chart.html" in done.stdout
    assert stems(tmp_path / "out") == ["season-001-a-2027-06-01"]


# bad input


def test_names_lead_to_no_other_folder(drawn, nights, tmp_path):
    before = set(tmp_path.rglob("*"))
    _, folder = drawn(nights((OCEAN, "../../escaped"), (OCEAN, "/etc/$HOME$<script>"), (SYDNEY, "..")))
    assert stems(folder) == ["season-001-escaped-2027-06-01", "season-002-etc-home-script-2027-06-01", "season-003-site-2027-06-01"]
    assert all(path.parent == folder for path in set(tmp_path.rglob("*")) - before - {folder})
    page = (folder / "season_chart.html").read_text(encoding="utf-8")
    assert "<script" not in page
    assert "/etc/$HOME$&lt;script&gt;" in page
    assert "/etc/$HOME$&lt;script&gt;: Milky Way core, nights 2027-06-01 to 2027-06-30" in texts(folder / f"{stems(folder)[1]}.svg")


def test_a_layer_that_holds_no_nights_is_refused(refusal, layer):
    sentence = refusal("season_chart", {"NIGHTS": layer([(OCEAN, "A")], fields=["site:string"]), "FOLDER": "TEMPORARY_OUTPUT"})
    assert sentence.startswith("NIGHTS: 'points' has no field site_id, body, night, tz, ")
    assert sentence.endswith("Choose the nights that night_windows gives.")


@pytest.mark.parametrize("which", ["MONTHS", "WINDOWS"])
def test_the_other_results_of_night_windows_are_refused(refusal, run, layer, which):
    out = run("night_windows", {"SITES": layer([(OCEAN,)]), **JUNE, which: "memory:"})
    assert "Choose the nights that night_windows gives." in refusal(
        "season_chart", {"NIGHTS": out.layers[which], "FOLDER": "TEMPORARY_OUTPUT"}
    )


def test_lines_are_refused(refusal, layer):
    lines = layer([("LineString(-33 36, -33 35)",)], kind="LineString")
    assert "holds LineString, not points" in refusal("season_chart", {"NIGHTS": lines, "FOLDER": "TEMPORARY_OUTPUT"})


def test_an_unknown_theme_is_refused(refusal, nights):
    assert "THEME: 'pink' is not known. Choose from: print, night." in refusal(
        "season_chart", {"NIGHTS": nights((OCEAN, "A")), "THEME": "pink"}
    )


def test_a_folder_that_cannot_be_made_is_refused(refusal, nights, tmp_path):
    given = {"NIGHTS": nights((OCEAN, "A")), "FOLDER": str(tmp_path / "no" / "such" / "folder")}
    assert f"FOLDER: The folder {tmp_path / 'no' / 'such'} does not exist." in refusal("season_chart", given)


def test_a_file_in_place_of_the_folder_says_so(drawn, nights, tmp_path):
    (tmp_path / "charts").write_text("I was here first")
    with pytest.raises(QgsProcessingException, match="cannot be made"):
        drawn(nights((OCEAN, "A")))
    assert (tmp_path / "charts").read_text() == "I was here first"


def test_without_matplotlib_the_sentence_says_what_to_do(refusal, nights, monkeypatch):
    made = nights((OCEAN, "A"))
    monkeypatch.setattr(sheets, "find_spec", lambda name: None)
    assert "Install it" in refusal("season_chart", {"NIGHTS": made, "FOLDER": "TEMPORARY_OUTPUT"})


def test_too_many_sites_are_refused_with_the_number_and_nothing_is_written(drawn, nights, tmp_path):
    made = nights(*((f"PointZ({x} 36 0)", f"Site {x}") for x in range(5)), FIRST_NIGHT="2027-06-01", LAST_NIGHT="2027-06-02")
    with pytest.raises(QgsProcessingException, match=r"5 pictures, a site each, over MAX_PICTURES \(4\)\. Select fewer sites"):
        drawn(made, MAX_PICTURES=4)
    assert not (tmp_path / "charts").exists()
    assert len(stems(drawn(made, MAX_PICTURES=5)[1])) == 5


def test_thousands_of_sites_are_refused_before_they_are_read(drawn, rows):
    made = rows(*({"site_id": str(i)} for i in range(3000)))
    with pytest.raises(QgsProcessingException, match="3,000 pictures"):
        drawn(made)


def test_years_count_as_pictures(drawn, nights):
    made = nights((OCEAN, "A"), FIRST_NIGHT="2026-12-01", LAST_NIGHT="2027-12-31")
    with pytest.raises(QgsProcessingException, match="2 pictures"):
        drawn(made, MAX_PICTURES=1)


def test_an_empty_layer_is_a_result_with_a_reason(drawn, nights):
    out, folder = drawn(nights())
    assert out.feedback.said[-1] == "No pictures: there is no night that can be used."
    assert "<h1>" in (folder / "season_chart.html").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("bad", "reason"),
    [
        ({"night": "soon"}, "1 whose night is no date"),
        ({"night": None}, "1 whose night is no date"),
        ({"night": "2027-06-05"}, "1 that tell a night of a site again"),
        ({"start_loc": "half past nine", "night": "2027-06-06"}, "1 with a local time that cannot be read"),
        ({"start_loc": "2027-06-06 22:00:00", "night": "2027-06-06"}, "1 with a local time that cannot be read"),  # no offset
        ({"site_id": "2", "tz": "Mars/Olympus"}, "1 whose tz is no time zone"),
        ({"site_id": "2", "tz": None}, "1 whose tz is no time zone"),
    ],
)
def test_rows_that_cannot_be_used_are_counted_by_reason(drawn, rows, bad, reason):
    out, folder = drawn(rows({}, bad))
    assert f"NIGHTS: skipped rows {reason}." in out.log
    assert stems(folder) == ["season-001-here-2027-06-05"]


def test_points_without_geometry_are_counted(drawn, rows):
    out, folder = drawn(rows({}, {"wkt": None, "night": "2027-06-06"}))
    assert "NIGHTS: skipped 1 with no geometry." in out.log
    assert len(stems(folder)) == 1


def test_blanks_in_a_row_are_no_hindrance(drawn, rows):
    blank = dict.fromkeys(("site", "body", "minutes", "dusk_loc", "dawn_loc", "start_loc", "t_local", "end_loc", "dark_min"))
    _, folder = drawn(rows(blank))
    assert stems(folder) == ["season-001-site-1-2027-06-05"]
    assert "site 1, nights 2027-06-05 to 2027-06-05" in texts(next(folder.glob("*.svg")))


def test_nights_that_were_taken_out_are_told(drawn, nights):
    made = nights((OCEAN, "A"))
    gone = [feature.id() for feature in made.getFeatures() if QDate(2027, 6, 10) <= feature["night"] <= QDate(2027, 6, 14)]
    made.dataProvider().deleteFeatures(gone)
    _, folder = drawn(made)
    assert "5 nights are not in the layer: hatched." in texts(next(folder.glob("*.svg")))


def test_nights_beyond_the_ephemeris_say_so(drawn, rows):
    late = {name: f"2060-06-05 2{hour}:00:00 +00:00" for name, hour in (("start_loc", 1), ("t_local", 2), ("end_loc", 3))}
    with pytest.raises(QgsProcessingException, match="ephemeris"):
        drawn(rows({"night": "2060-06-05", **late}))


def test_cancel(drawn, nights):
    made = nights(*((f"PointZ({x} 36 0)", f"Site {x}") for x in range(6)), FIRST_NIGHT="2027-06-01", LAST_NIGHT="2027-06-03")
    out, folder = drawn(made, cancel_at=40)
    assert 0 < len(stems(folder)) < 6
    assert f"Cancelled: {len(stems(folder))} pictures drawn." in out.log
    assert (folder / "season_chart.html").read_text(encoding="utf-8").count("<img") == len(stems(folder))
    assert not [path for path in Path(folder).iterdir() if path.name.startswith(".")]
