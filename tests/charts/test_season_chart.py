"""The picture of a season: marks where they belong, what is written, and that it can be read without colour and in the dark."""

import os
import re
import subprocess
import sys
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest
from matplotlib.image import imread

from skyalidade.charts import gallery, season_chart, sheets
from skyalidade.charts.themes import THEMES
from skyalidade.plan.season_chart import Boxes, Chart

COUNT = 120
WORDS = {
    "twilight": "half dark",
    "dark": "wholly dark",
    "window": "usable",
    "stroke": "the band",
    "moon": "moonlight",
    "new": "new",
    "full": "full",
    "turn": "clock {hours:+g} h",
    "tilt": "tilt it is",
}
CAPTION = ["First line", "Second line"]
SVG = "{http://www.w3.org/2000/svg}"
# colours of house.md and of the theme, as numbers
PAPER, TWILIGHT, DARK, CORE, MOON = (0xFF,) * 3, (0xF0,) * 3, (0xDA,) * 3, (0xCC, 0x79, 0xA7), (0x00, 0x9E, 0x73)


def boxes(columns, low, high):
    return Boxes(np.asarray(columns), np.broadcast_to(low, len(columns)).astype(float), np.broadcast_to(high, len(columns)).astype(float))


def a_chart(count=COUNT):
    """Twilight 8 to 20, dark 10 to 18, core 12 to 16 in the nights 40 to 59, Moon 11 to 17 in the nights 80 to 89."""
    nights, usable, moonlit = np.arange(count), np.arange(40, 60), np.arange(80, 90)
    told = np.ones(count, dtype=bool)
    told[100:105] = False
    shown = nights[told]
    tilt = np.full((3, count), np.nan)
    tilt[:, usable] = [[20.0], [60.0], [70.0]]
    best = np.stack([usable, np.full(20, 14.0), np.full(20, 60.0), np.ones(20)]).astype(float)
    lit = 0.5 - 0.5 * np.cos(2 * np.pi * (nights - 55) / 60.0)  # new in the nights 55 and 115, full in 25 and 85
    return Chart(
        *(np.datetime64("2027-03-01"), told, 12, boxes(shown, 8, 20), boxes(shown, 10, 18), boxes(moonlit, 11, 17), boxes(usable, 12, 16)),
        *(best, tilt, lit, np.array([[27.0], [1.0]]), -18.0, {}),
    )


def figure_of(chart, theme="print", body="core", heading="Camp Ridge: the core", caption=CAPTION):
    return season_chart.draw(chart, heading, caption, WORDS, body, THEMES[theme])


def pixels(chart, tmp_path, theme="print", body="core"):
    sheets.save(figure_of(chart, theme, body), tmp_path / "chart.png")
    return np.round(255 * imread(tmp_path / "chart.png")[..., :3]).astype(int)


def at(column, hour, count=COUNT):
    """Row and column of the pixel there: nights across 1372 pixels from 64 on, 24 hours upward in 576 from 64 pixels below the top."""
    return int(64 + 576 * (1 - hour / 24)), int(64 + 1372 * column / count)


def colour(image, column, hour):
    return tuple(image[at(column, hour)].tolist())


def by_group(tmp_path, chart, **how):
    """Vertices of what is drawn in an SVG under each id, in pixels from the top left."""
    sheets.save(figure_of(chart, **how), tmp_path / "chart.svg")
    found = {}
    for group in ElementTree.parse(tmp_path / "chart.svg").iter(f"{SVG}g"):
        numbers = [re.findall(r"-?[\d.]+", path.get("d")) for path in group.iter(f"{SVG}path") if path.get("d")]
        found[group.get("id")] = [np.array(values, float).reshape(-1, 2) * 100 / 72 for values in numbers]
    return found


def texts(chart, tmp_path, **how):
    sheets.save(figure_of(chart, **how), tmp_path / "chart.svg")
    return ["".join(text.itertext()) for text in ElementTree.parse(tmp_path / "chart.svg").iter(f"{SVG}text")]


def test_hours_of_the_night_stand_in_their_place(tmp_path):
    image = pixels(a_chart(), tmp_path)
    for hour, wanted in ((7.5, PAPER), (8.4, TWILIGHT), (9.7, TWILIGHT), (10.4, DARK), (17.7, DARK), (18.4, TWILIGHT), (20.4, PAPER)):
        assert colour(image, 20.5, hour) == wanted, hour


def test_windows_stand_in_their_place(tmp_path):
    """Within two pixels of their edges, of which an edge of 1.6 pixels is drawn around."""
    image = pixels(replace(a_chart(), best=np.empty((4, 0))), tmp_path)
    is_core = (image[at(0, 24)[0] : at(0, 0)[0]] == CORE).all(axis=2)
    rows, columns = np.nonzero(is_core)
    assert (columns.min(), columns.max() + 1) == pytest.approx((64 + 1372 * 40 / COUNT, 64 + 1372 * 60 / COUNT), abs=2.0)
    assert (rows.min(), rows.max() + 1) == pytest.approx((576 * 8 / 24, 576 * 12 / 24), abs=2.0)
    assert is_core.sum() > 0.95 * (1372 * 20 / COUNT) * (576 * 4 / 24) - 800  # less the lines of the hours and of a month
    above, below = at(50.5, 16), at(50.5, 12)
    for row, column in (above, below):
        assert (image[row - 3 : row + 4, column].sum(axis=1) < 3 * 0x60).any()  # ink, so that grey print has an edge too


def test_a_bar_of_the_moon_is_as_wide_as_the_lit_part(tmp_path):
    chart = a_chart()
    found = by_group(tmp_path, chart)["moon"]
    width = 1372 / COUNT
    assert len(found) == 10
    for column, outline in zip(range(80, 90), found):
        assert np.ptp(outline[:, 0]) == pytest.approx(season_chart.BAR * chart.moon_lit[column] * width, abs=0.01)
        assert outline[:, 0].mean() == pytest.approx(64 + (column + 0.5) * width, abs=0.2 * width)
        assert (outline[:, 1].min(), outline[:, 1].max()) == pytest.approx((64 + 576 * 7 / 24, 64 + 576 * 13 / 24), abs=0.01)
    assert colour(pixels(chart, tmp_path), 85.5, 14.5) == MOON


def test_the_moon_is_seen_in_front_of_a_window(tmp_path):
    chart = a_chart()
    image = pixels(replace(chart, moon=boxes(np.arange(45, 50), 11, 17), moon_lit=np.ones(COUNT), best=np.empty((4, 0))), tmp_path)
    assert colour(image, 47.5, 14.5) == MOON
    assert colour(image, 55.5, 14.5) == CORE


@pytest.mark.parametrize(
    ("tilt", "left", "rise"),
    [(60.0, 1.0, (-10.0, 17.32)), (60.0, -1.0, (10.0, 17.32)), (0.0, 1.0, (-20.0, 0.0)), (90.0, -1.0, (0.0, 20.0))],
)
def test_strokes_lie_as_the_band_does(tmp_path, tilt, left, rise):
    """20 pixels, from the core toward the side to which the band rises: 20 cos 60 = 10, 20 sin 60 = 17.32."""
    chart = a_chart()
    best = chart.best.copy()
    best[2:] = [[tilt], [left]]
    strokes = by_group(tmp_path, replace(chart, best=best))["strokes"]
    assert len(strokes) == 10  # 11.4 pixels a night: every other one
    for stroke in strokes:
        (x, y), (far_x, far_y) = stroke
        assert (far_x - x, y - far_y) == pytest.approx(rise, abs=0.01)
        assert y == pytest.approx(64 + 576 * 10 / 24, abs=0.01)


def test_tilts_stand_in_their_place(tmp_path):
    """From 20 to 70 degrees on a strip of 104 pixels from -4 to 94."""
    outlines = by_group(tmp_path, a_chart())["tilts"]
    assert len(outlines) == 20
    for outline in outlines:
        assert np.ptp(outline[:, 1]) == pytest.approx(104 * 50 / 98, abs=0.01)


def test_nights_not_told_are_hatched_and_empty(tmp_path):
    found = by_group(tmp_path, a_chart())
    assert len(found["twilight"]) == COUNT - 5
    assert "untold" in found
    assert "untold" not in by_group(tmp_path, replace(a_chart(), told=np.ones(COUNT, dtype=bool)))


def test_what_is_written(tmp_path):
    told = texts(a_chart(), tmp_path)
    for text in ("Camp Ridge: the core", *CAPTION, "half dark", "wholly dark", "usable", "the band", "moonlight", "tilt it is"):
        assert told.count(text) == 1, text
    assert [told.count(text) for text in ("12:00", "00:00", "22:00", "0°", "45°", "90°")] == [4, 2, 2, 2, 2, 2]
    assert [told.count(text) for text in ("2027-03", "2027-04", "2027-05", "2027-06")] == [1, 1, 1, 1]
    assert (told.count("new"), told.count("full"), told.count("clock +1 h")) == (2, 2, 1)


def test_hours_are_those_of_the_foot(tmp_path):
    told = texts(replace(a_chart(), foot_h=15), tmp_path)
    assert (told.count("15:00"), told.count("01:00"), told.count("12:00")) == (4, 2, 0)


def test_words_that_are_not_given_are_not_explained(tmp_path):
    chart = replace(a_chart(), dark=boxes([], 0, 0))
    figure = season_chart.draw(chart, "", [], {name: text for name, text in WORDS.items() if name != "dark"}, "moon", THEMES["print"])
    sheets.save(figure, tmp_path / "chart.svg")
    assert "wholly dark" not in (tmp_path / "chart.svg").read_text(encoding="utf-8")


def test_without_tilts_there_is_no_strip(tmp_path):
    chart = a_chart()
    flat = replace(chart, tilt_deg=np.full((3, COUNT), np.nan), best=chart.best * [[1], [1], [np.nan], [1]])
    assert "tilt it is" not in texts(flat, tmp_path)
    assert pixels(chart, tmp_path).shape[0] - pixels(flat, tmp_path).shape[0] == 104 + 30


def test_size(tmp_path):
    assert pixels(a_chart(), tmp_path).shape == (64 + 576 + 30 + 104 + 30 + 40 + 2 * 21 + 24, 1500, 3)


def test_the_legend_and_captions_are_inside(tmp_path):
    figure = figure_of(a_chart(), caption=["x" * 1000, "y"], heading="z" * 1000)
    figure.canvas.draw()
    for text in [*figure.texts, *(text for axes in figure.axes for text in axes.texts)]:
        extent = text.get_window_extent(figure.canvas.get_renderer())
        assert extent.x0 >= 0, text
        assert "x" in text.get_text() or "z" in text.get_text() or extent.x1 <= 1500, text
        assert 0 <= extent.y0 < extent.y1 <= figure.bbox.height, text


def test_without_colour_everything_still_differs(tmp_path):
    """Grey by the weights of ITU-R BT.601: a fifth of the way from black to white between a window, the dark and twilight's neighbours."""
    image = pixels(replace(a_chart(), best=np.empty((4, 0))), tmp_path) @ [0.299, 0.587, 0.114]
    window, dark, twilight, day, moon = (
        image[at(*place)] for place in ((50.5, 14.5), (20.5, 14.5), (20.5, 9.5), (20.5, 5.5), (85.5, 14.5))
    )
    assert day - twilight > 10  # a step that print keeps
    assert twilight - dark > 15
    assert dark - window > 50
    assert window - moon > 30


def test_at_night_there_is_red_alone(tmp_path):
    image = pixels(a_chart(), tmp_path, "night")
    assert image[..., 0].max() > 190
    assert image[..., 1:].max() <= 40  # so little green and blue that eyes stay used to the dark
    assert np.median(image[..., 0]) < 60
    steps = [image[at(*place)][0] for place in ((20.5, 5.5), (20.5, 9.5), (20.5, 14.5), (85.5, 14.5), (41.5, 14.5))]
    assert (np.diff(steps) > 15).all()  # day, twilight, dark, Moon, window


@pytest.mark.parametrize("count", [1, 2, 30, 62, 63, 366])
def test_any_number_of_nights(tmp_path, count):
    chart = a_chart(366)
    boxed = {name: getattr(chart, name) for name in ("sun_down", "dark", "moon", "window")}
    kept = {
        name: Boxes(*(values[held.column < count] for values in (held.column, held.low_h, held.high_h))) for name, held in boxed.items()
    }
    few = replace(chart, told=chart.told[:count], tilt_deg=chart.tilt_deg[:, :count], moon_lit=chart.moon_lit[:count], **kept)
    told = texts(replace(few, best=chart.best[:, chart.best[0] < count]), tmp_path)
    assert ("2027-03-01" in told) == (count <= 62)
    assert ("2027-03" in told) == (count > 62)


def test_dates_are_few_and_in_order():
    nights = np.datetime64("2027-01-30") + np.arange(366)
    columns, written = season_chart.marked_dates(nights)
    assert written[0] == "2027-02"  # two days of January leave no room for its name
    assert nights[columns].astype("datetime64[D]").astype(str)[0] == "2027-02-01"
    columns, written = season_chart.marked_dates(nights[:40])
    assert 10 <= columns.size <= 12


def test_marks_keep_apart():
    assert season_chart.apart(np.array([0.0, 3.0, 9.0, 10.0, 25.0]), 10.0).tolist() == [0, 3, 4]
    assert season_chart.apart(np.array([]), 10.0).tolist() == []


def test_the_same_chart_gives_the_same_bytes():
    for ending in (".png", ".svg"):
        assert sheets.rendered(figure_of(a_chart()), ending) == sheets.rendered(figure_of(a_chart()), ending)


@pytest.mark.parametrize("name", ["$x$ and y", r"$\frac{$", "5 $", "a\nb\tc\x07", "<b>&amp;\"'", "𝒳 Ωmega Ž"])
def test_names_are_drawn_as_they_are(tmp_path, name):
    """No formula, no line of its own, no mark-up."""
    told = texts(a_chart(), tmp_path, heading=name)
    assert " ".join("".join(letter if letter.isprintable() else " " for letter in name).split()) in told


def test_long_names_are_cut():
    assert sheets.plain("n" * 200) == "n" * 79 + "…"


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\Windows\\..", "c-windows"),
        ("Čeřínek", "e-nek"),
        ("..", "site"),
        ("a" * 300, "a" * 40),
        ("CON", "con"),
    ],
)
def test_names_of_files_lead_nowhere(name, file):
    assert sheets.file_name(name, "site") == file


def test_a_page_tells_what_is_in_it_and_nothing_else():
    entries = [("season-001-a", "<i>One</i>", ["a & b"], {"Month": ("nights", "hours"), "2027-06": ("25", "<7>")})]
    page = gallery.page("T<", ["n<"], entries, THEMES["print"], [("Site", ("nights",)), ("<i>One</i>", ("25",))])
    assert '<a href="#season-001-a">&lt;i&gt;One&lt;/i&gt;</a>' in page
    assert '<h2 id="season-001-a">' in page
    assert "<tr><th>2027-06</th><td>25</td><td>&lt;7&gt;</td></tr>" in page
    for foreign in ("<i>", "<script", "http", "<7>", "a & b"):
        assert foreign not in page


def test_matplotlib_is_not_loaded_before_a_picture_is_drawn():
    code = "import sys, skyalidade.charts.season_chart; sys.exit('matplotlib' in sys.modules)"
    assert (
        subprocess.run([sys.executable, "-c", code], env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}, check=False).returncode
        == 0
    )
