"""The picture of a season: every mark on its pixel, all texts, and shades that grey print keeps apart."""

import re

import numpy as np
import pytest
from matplotlib.image import imread

from skyalidade.charts import season_chart, sheets
from skyalidade.charts.themes import THEMES
from skyalidade.plan.season import Season

CAPTION = ["Camp $Ridge$ & <Co>: core", "36° N, clock of UTC-02:00", "A planning aid"]
N = 100  # nights: 14 pixels each
GREY = np.array([0.299, 0.587, 0.114])  # ITU-R BT.601, luma


def stretches(begin, end, columns=range(N)):
    return np.array([[column, begin, end] for column in columns], dtype=float)


def season():
    best = np.full(N, np.nan)
    best[40:60] = 13.0
    lit = np.where(np.isfinite(best), 0.5, np.nan)
    day = np.datetime64("2027-03-01") + np.arange(N)
    shown = stretches(6, 18), stretches(8, 16), stretches(2, 4, range(10)), stretches(11, 15, range(40, 60))
    return Season(day, np.arange(N), *shown, best, np.full(N, 45.0), lit, np.full(N, True), 12)


def drawn(tmp_path, theme="print"):
    figure = season_chart.draw(season(), CAPTION, season_chart.LEGEND, THEMES[theme])
    for ending in ("png", "svg"):
        sheets.save(figure, tmp_path / f"season.{ending}")
    return np.round(255 * imread(tmp_path / "season.png")[..., :3]), (tmp_path / "season.svg").read_text(encoding="utf-8")


def at(column, hour):
    """Row and column of the pixel in the middle of a night at an hour after noon, by the measures of the sheet."""
    return round(16 + 70 + 12 + 660 * (1 - hour / 24)), round(84 + 1400 * (column + 0.5) / N)


def test_size_and_shades_on_their_places(tmp_path):
    image, _ = drawn(tmp_path)
    assert image.shape[:2] == (16 + 2 * (70 + 12) + 660 + 34 + 5 * 22, 84 + 1400 + 20)
    colours = {"day": (20, 5.0), "twilight": (20, 7.0), "dark": (20, 10.0), "window": (50, 12.4)}
    shades = [image[at(*place)] for place in colours.values()]
    wanted = [*THEMES["print"].season, THEMES["print"].band]
    for shade, colour in zip(shades, wanted):
        assert shade.tolist() == [int(colour[i : i + 2], 16) for i in (1, 3, 5)]
    grey = np.array(shades) @ GREY
    assert (np.diff(grey) < -15).all()  # of 255: two neighbours in grey print still differ; chosen, no standard


def test_an_edge_stands_within_a_pixel(tmp_path):
    image, _ = drawn(tmp_path)
    row, column = at(20, 8.0)
    above, below = image[row - 2, column], image[row + 2, column]
    assert above.tolist() == [0xD4] * 3
    assert below.tolist() == [0xEE] * 3


def test_moon_is_hatched_where_it_is_up(tmp_path):
    image, _ = drawn(tmp_path)

    def green(columns, low, high):
        (bottom, left), (top, right) = at(columns[0], low), at(columns[1], high)
        part = image[top:bottom, left:right]
        return ((part[..., 1] - part[..., 0]) > 60).mean()

    assert 0.05 < green((1, 8), 2.3, 3.7) < 0.5
    assert green((20, 30), 2.3, 3.7) == 0.0
    assert green((1, 8), 4.3, 5.7) == 0.0


def test_moon_lit_and_tilt_stand_over_and_under_the_nights(tmp_path):
    image, _ = drawn(tmp_path)
    column = at(50, 0)[1]
    top = 16 + 70 + 12 + 660 + 12
    lit = (image[top : top + 70, column] == [0x00, 0x9E, 0x73]).all(axis=1)
    assert abs(lit.sum() - 35) <= 2  # half of 70 pixels
    band = np.argwhere((np.abs(image[16:86] - [0xCC, 0x79, 0xA7]).sum(axis=2)) < 10)
    assert 84 + 14 * 40 - 20 < band[:, 1].min() < band[:, 1].max() < 84 + 14 * 60 + 20
    first = band[band[:, 1] < band[:, 1].min() + 12]
    assert np.corrcoef(first[:, 0], first[:, 1])[0, 1] > 0.9  # leans to the left: falls to the right, and rows count down


def test_texts(tmp_path):
    _, svg = drawn(tmp_path)
    told = re.findall(r"<text[^>]*>([^<]*)</text>", svg)
    assert {"Camp $Ridge$ &amp; &lt;Co&gt;: core", *CAPTION[1:], *season_chart.LEGEND, "tilt", "Moon lit", "0 %", "100 %"} <= set(told)
    assert {"2027-03", "2027-04", "2027-05", "12:00", "18:00", "00:00", "06:00"} <= set(told)
    assert {"twilight", "dark", "window", "moon", "lit"} <= set(re.findall(r'id="(\w+)"', svg))


def test_night_theme_is_red_on_black(tmp_path):
    image, _ = drawn(tmp_path, "night")
    assert image[..., 1:].max() < 51
    assert image[..., 0].max() > 150


@pytest.mark.parametrize("ending", ["png", "svg"])
def test_the_same_season_gives_the_same_bytes(tmp_path, ending):
    files = []
    for _ in range(2):
        drawn(tmp_path)
        files.append((tmp_path / f"season.{ending}").read_bytes())
    assert files[0] == files[1]
