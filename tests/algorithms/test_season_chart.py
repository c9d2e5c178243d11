"""`season_chart` in QGIS: declaration, refusals, and folders of pictures that hold what they should."""

import re
from html import unescape
from pathlib import Path

import pytest
from qgis.core import QgsProcessingException

from skyalidade.charts import sheets

NAME = "Camp <b>Ridge</b> & ../Co"
JUNE = {"FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-20"}


@pytest.fixture
def nights(run, layer):
    """The result of night windows for sites with names."""

    def found(*sites, **asked):
        sites = sites or (("PointZ(-33 36.01 100)", NAME),)
        points = layer(list(sites), fields=["name:string(0)"])
        return run("night_windows", {"SITES": points, "SITE_NAME": "name", **JUNE, **asked}).layers["OUTPUT"]

    return found


@pytest.fixture
def drawn(run, tmp_path):
    def outcome(layer, cancel_at=None, **changed):
        folder = tmp_path / "seasons"
        return run("season_chart", {"NIGHTS": layer, "FOLDER": str(folder), **changed}, cancel_at), folder

    return outcome


def texts(path):
    return [unescape(text) for text in re.findall(r"<text[^>]*>([^<]*)</text>", Path(path).read_text(encoding="utf-8"))]


def test_parameters_in_order(algorithm):
    made = algorithm("season_chart")
    assert [definition.name() for definition in made.parameterDefinitions()] == ["NIGHTS", "THEME", "MAX_PICTURES", "FOLDER"]
    assert [output.name() for output in made.outputDefinitions()] == ["FOLDER", "HTML", "PICTURES"]


def test_a_picture_of_each_site(drawn, nights):
    out, folder = drawn(nights(("PointZ(-33 36.01 100)", NAME), ("PointZ(11 47 900)", "Alp")))
    assert "2 pictures in" in out.log
    stems = ["001-camp-b-ridge-b-co-core", "002-alp-core"]
    assert sorted(path.name for path in folder.iterdir()) == sorted([*(s + e for s in stems for e in (".png", ".svg")), "index.html"])
    page = (folder / "index.html").read_text(encoding="utf-8")
    assert "Camp &lt;b&gt;Ridge&lt;/b&gt; &amp; ../Co" in page
    assert "<b>" not in page
    assert "http" not in page
    assert "<script" not in page
    assert "Never look at the Sun" in page
    assert "<th>Nights</th><td>20</td>" in page


def test_what_a_picture_tells(drawn, nights):
    layer = nights()
    rows = [feature["minutes"] for feature in layer.getFeatures()]
    usable = [minutes for minutes in rows if isinstance(minutes, float)]
    assert 0 < len(usable) < 20
    _, folder = drawn(layer)
    told = texts(next(folder.glob("*.svg")))
    assert f"{NAME}: Milky Way core, nights of 2027-06-01 to 2027-06-20" in told
    assert "36.01000° N, 33.00000° W. Hours by the clock of UTC-02:00; it is not changed." in told
    assert f"<th>Nights with a window</th><td>{len(usable)}</td>" in (folder / "index.html").read_text(encoding="utf-8")


def test_clock_changes_are_told(drawn, nights):
    _, folder = drawn(nights(("PointZ(11 47 900)", "Alp"), FIRST_NIGHT="2027-03-20", LAST_NIGHT="2027-04-02"))
    assert "it is changed in the night of 2027-03-27 (+1 h)." in "\n".join(texts(next(folder.glob("*.svg"))))


def test_cancelled_after_a_picture(drawn, nights):
    layer = nights(*((f"PointZ(-33 {36 + i / 100} 100)", f"Site {i}") for i in range(4)))
    out, folder = drawn(layer, cancel_at=20.0)
    count = len(list(folder.glob("*.png")))
    assert 0 < count < 4
    assert out.feedback.said[-1] == f"Cancelled: {count} of 4 pictures drawn."


def test_no_night_no_picture(drawn, nights):
    layer = nights()
    assert layer.dataProvider().deleteFeatures(layer.allFeatureIds())
    out, folder = drawn(layer)
    assert "No pictures: NIGHTS holds no night that can be used." in out.log
    assert (folder / "index.html").is_file()


def test_more_pictures_than_allowed(drawn, nights):
    layer = nights(*((f"PointZ(-33 {36 + i / 100} 100)", f"Site {i}") for i in range(3)))
    with pytest.raises(QgsProcessingException, match=r"3 sites and bodies are more than MAX_PICTURES \(2\). Select fewer"):
        drawn(layer, MAX_PICTURES=2)


def test_more_nights_than_a_chart_has_columns(drawn, nights):
    with pytest.raises(QgsProcessingException, match="has nights over 430 days, more than the 400 of a chart"):
        drawn(nights(FIRST_NIGHT="2027-01-01", LAST_NIGHT="2028-03-05"))


def test_a_layer_that_is_no_result(refusal, layer, tmp_path):
    other = layer([("PointZ(-33 36 0)", "2027-06-06")], fields=["night:string(0)"])
    said = refusal("season_chart", {"NIGHTS": other, "FOLDER": str(tmp_path / "seasons")})
    assert "has no field site, site_id, body, tz" in said
    assert "Choose the OUTPUT of night_windows." in said


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"THEME": "neon"}, "THEME: 'neon' is not known"),
        ({"FOLDER": "/no/such/place/seasons"}, "The folder /no/such/place does not exist"),
        ({"NIGHTS": None}, "NIGHTS"),
    ],
)
def test_refusals(refusal, nights, tmp_path, changed, sentence):
    assert sentence in refusal("season_chart", {"NIGHTS": nights(), "FOLDER": str(tmp_path / "seasons"), **changed})


def test_without_matplotlib(refusal, nights, tmp_path, monkeypatch):
    monkeypatch.setattr(sheets, "find_spec", lambda name: None)
    assert refusal("season_chart", {"NIGHTS": nights(), "FOLDER": str(tmp_path / "seasons")}) == sheets.MISSING
