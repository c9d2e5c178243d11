"""The picture of a view: marks where they belong, to half a pixel, and all that it is to tell."""

import os
import re
import subprocess
import sys
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest
from gnomonic import picture
from matplotlib.image import imread
from skyfield_places import Observer, target, times

from skyalidade.charts import sheets, skyline_view
from skyalidade.charts.themes import THEMES
from skyalidade.lens.frame import Frame
from skyalidade.plan.targets import target as our_target
from skyalidade.plan.view import Nights, Scene, azimuths_across, corners_of

SITE = (-33.0, 36.0, 250.0)
T_UTC_S = np.datetime64("2027-06-14T01:30:00").astype(float)
CAPTION = ["Camp Ridge, 2027-06-13 23:30", "35.9° N: the core at azimuth 165.2°", "Terrain: cells of 10 m"]
CLOCK = [f"{(22 + (30 + 10 * i) // 60) % 24:02d}:{(30 + 10 * i) % 60:02d}" for i in range(13)]
AWAY = (0.0, 0.0)  # behind the camera


def scene(aim=(178.0, 13.0), portrait=False, focal=20.0, way_s=3600.0):
    frame = Frame(focal, 36.0, 24.0, 6000)
    frame = frame.upright if portrait else frame
    (moment,) = Nights([T_UTC_S], our_target("core"), way_s, pressure_hPa=0.0).over(*SITE)
    moment.columns["body"] = "core"
    az = azimuths_across(frame, *aim)
    ground = [
        (reach, az, low + np.sin(np.radians(az * 7))) for reach, low in ((40_000.0, 1.0), (10_000.0, 0.0), (3200.0, -1.0), (800.0, -3.0))
    ]
    lines = {
        "bearing_deg": np.array([176.0, 195.0]),
        "base_alt_deg": np.array([-1.0, 0.0]),
        "top_alt_deg": np.array([9.0, 6.0]),
        "width_deg": np.array([4.0, 2.0]),
    }
    subjects = list(zip(["Old Tower", "Lone Tree"], corners_of(lines), [False, True]))
    return Scene(frame, *aim, moment, ground, subjects)


def pixels(seen, tmp_path, theme="print"):
    clock = CLOCK if seen.moment.way.shape[1] == len(CLOCK) else ["23:30"]
    figure = skyline_view.draw(seen, CAPTION, clock, THEMES[theme])
    sheets.save(figure, tmp_path / "view.png")
    return np.round(255 * imread(tmp_path / "view.png")[..., :3]).astype(int)


def expected(seen, az_deg, alt_deg):
    """Column and row of a direction, from the top left, by the gnomonic projection and the size of the picture alone."""
    half_width, half_height = (1.15 * side / seen.frame.focal_mm / 2 for side in (seen.frame.width_mm, seen.frame.height_mm))
    scale = 1400 / (2 * max(half_width, half_height))
    x, y = picture(az_deg, alt_deg, seen.aim_az_deg, seen.aim_alt_deg) * scale
    return 64 + round(2 * half_width * scale) / 2 + x, 16 + round(2 * half_height * scale) / 2 - y


def changed(one, other, centre, reach):
    """Middle of the pixels around a place in which two pictures differ."""
    differs = np.abs(one - other).sum(axis=2) > 60
    rows, columns = np.nonzero(differs)
    near = np.hypot(columns + 0.5 - centre[0], rows + 0.5 - centre[1]) < reach
    assert near.sum() > 30
    rows, columns = rows[near] + 0.5, columns[near] + 0.5
    return (columns.min() + columns.max()) / 2, (rows.min() + rows.max()) / 2


@pytest.mark.parametrize("portrait", [False, True], ids=["landscape", "portrait"])
@pytest.mark.parametrize("aim", [(178.0, 13.0), (165.0, 0.0), (190.0, 25.0)])
def test_the_core_stands_in_its_place(tmp_path, aim, portrait, record_property):
    """Skyfield's place of the core without air, by gnomonic projection: within half a pixel."""
    seen = scene(aim, portrait, way_s=0.0)
    alt, az, _ = Observer(*SITE, times(np.array([T_UTC_S]))).altaz(target("core"))
    centre = expected(seen, az[0], alt[0])
    with_core = pixels(seen, tmp_path)
    without = pixels(replace(seen, moment=replace(seen.moment, core=AWAY)), tmp_path)
    found = changed(with_core, without, centre, 13.0)
    record_property("view_px", max(abs(one - other) for one, other in zip(found, centre)))
    assert found == pytest.approx(centre, abs=0.5)


def test_a_subject_stands_in_its_place(tmp_path):
    seen = scene()
    _, corners, _ = seen.subjects[0]
    image, empty = pixels(seen, tmp_path), pixels(replace(seen, subjects=seen.subjects[1:]), tmp_path)
    columns, rows = np.array([expected(seen, *corner) for corner in corners.T]).T
    ink = (image == (0x22, 0x22, 0x22)).all(axis=2) & (np.abs(image - empty).sum(axis=2) > 0)
    ys, xs = np.nonzero(ink)
    inside = (ys > rows.min() - 2) & (ys < rows.max() + 2)
    xs, ys = xs[inside], ys[inside]
    # an edge of 0.8 points in the colour of the paper lies half on the subject
    assert (xs.min(), xs.max() + 1) == pytest.approx((columns.min(), columns.max()), abs=2.0)
    assert (ys.min(), ys.max() + 1) == pytest.approx((rows.min(), rows.max()), abs=2.0)


def test_the_moon_is_as_large_as_it_is(tmp_path):
    (moment,) = Nights([T_UTC_S], our_target("moon"), 0.0, pressure_hPa=0.0).over(*SITE)
    moment.columns["body"] = "moon"
    seen = replace(scene(focal=200.0), aim_az_deg=moment.moon[0], aim_alt_deg=moment.moon[1], moment=moment, subjects=[], ground=[])
    seen = replace(seen, ground=[(np.nan, azimuths_across(seen.frame, *moment.moon), np.full(900, -1.0))])
    image = pixels(seen, tmp_path)
    green = (image == (0x00, 0x9E, 0x73)).all(axis=2)
    width_px = 2.0 * np.tan(np.radians(moment.moon_semi_deg)) * 1400 / (2 * 1.15 * seen.frame.half_width)
    centre = expected(seen, *moment.moon)
    ys, xs = np.nonzero(green)
    near = np.hypot(xs - centre[0], ys - centre[1]) < width_px
    assert ys[near].max() - ys[near].min() == pytest.approx(width_px, abs=4.0)  # its limb is a line of 0.8 points
    lit = near.sum() / (np.pi / 4 * width_px**2)
    assert lit == pytest.approx(moment.columns["moon_lit"], abs=0.06)


@pytest.mark.parametrize("theme", THEMES)
def test_what_is_written(tmp_path, theme):
    sheets.save(skyline_view.draw(scene(), CAPTION, CLOCK, THEMES[theme]), tmp_path / "view.svg")
    texts = re.findall(r"<text[^>]*>([^<]*)</text>", (tmp_path / "view.svg").read_text(encoding="utf-8"))
    for text in (*CAPTION, "Old Tower", "Lone Tree", "core", "0°", "15°", "150°", "S", "23:00", "00:00"):
        assert text in texts
    assert "23:30" not in texts  # the moment itself stands in the caption


def test_a_caption_too_long_for_the_picture_goes_on_on_the_next_line(tmp_path):
    """In an upright picture of a lens, which is narrow: nothing is cut, nothing runs over the edge."""
    long = (
        "Terrain: '"
        + "a model with a long name " * 3
        + "', cells of 10 m, known to 5.1 km, no trees or buildings. A planning aid, not a survey: it costs $5 and $6."
    )
    figure = skyline_view.draw(scene(portrait=True), [*CAPTION, long], CLOCK, THEMES["print"])
    texts = figure.texts[len(CAPTION) :]
    assert len(texts) > 1
    assert " ".join(text.get_text() for text in texts).replace(r"\$", "$") == long
    renderer = figure.canvas.get_renderer()
    edges = [text.get_window_extent(renderer) for text in figure.texts]
    assert max(edge.x1 for edge in edges) <= figure.bbox.x1
    assert min(edge.y0 for edge in edges) >= 0.0


def test_at_night_there_is_red_alone(tmp_path):
    image = pixels(scene(), tmp_path, "night")
    assert image[..., 0].max() > 200
    assert image[..., 1:].max() <= 40  # so little green and blue that eyes stay used to the dark
    assert np.median(image[..., 0]) < 60


def test_on_paper_there_is_white(tmp_path):
    image = pixels(scene(), tmp_path)
    assert image.shape[1] == 64 + 1400 + 16
    assert ((image == 255).all(axis=2)).mean() > 0.3


def test_ground_is_shaded_far_to_near_and_hides_what_is_behind(tmp_path):
    seen = scene(way_s=0.0)
    image = pixels(seen, tmp_path)
    az = 185.0
    far, *_, near = (np.interp(az, *layer[1:]) for layer in seen.ground)
    for alt, shade in (((far + np.interp(az, *seen.ground[1][1:])) / 2, "#DADADA"), (near - 2.0, "#7C7C7C")):
        column, row = (int(value) for value in expected(seen, az, alt))
        assert "#{:02X}{:02X}{:02X}".format(*image[row, column]) == shade


@pytest.mark.parametrize("name", ["$x$ and y", r"$\frac{$", "a\nb\tc\x07", "<b>&amp;"])
def test_names_are_drawn_as_they_are(tmp_path, name):
    """No formula, which may not even be one, no line of its own, no mark-up."""
    seen = scene()
    named = replace(seen, subjects=[(name, *seen.subjects[0][1:])])
    sheets.save(skyline_view.draw(named, [name, *CAPTION[1:]], CLOCK, THEMES["print"]), tmp_path / "view.svg")
    told = ["".join(text.itertext()) for text in ElementTree.parse(tmp_path / "view.svg").iter("{http://www.w3.org/2000/svg}text")]
    assert told.count(" ".join(name.replace("\x07", " ").split())) == 2


def test_the_same_scene_gives_the_same_files(tmp_path):
    for ending in ("png", "svg"):
        files = []
        for name in ("one", "two"):
            sheets.save(skyline_view.draw(scene(), CAPTION, CLOCK, THEMES["print"]), tmp_path / f"{name}.{ending}")
            files.append((tmp_path / f"{name}.{ending}").read_bytes())
        assert files[0] == files[1]


@pytest.mark.parametrize(("span", "step"), [(3.0, 0.5), (60.0, 10.0), (84.0, 15.0), (120.0, 15.0), (179.0, 30.0)])
def test_lines_of_the_grid_are_few_and_round(span, step):
    assert skyline_view.grid_step_deg(span) == step


def test_matplotlib_is_not_loaded_before_a_picture_is_drawn():
    code = "import sys, skyalidade.charts.skyline_view, skyalidade.charts.sheets; sys.exit('matplotlib' in sys.modules)"
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    assert subprocess.run([sys.executable, "-c", code], env=environment, check=False).returncode == 0


def test_without_matplotlib_the_sentence_says_what_to_do(monkeypatch):
    monkeypatch.setattr(sheets, "find_spec", lambda name: None)
    with pytest.raises(ValueError, match="Install it"):
        sheets.sheet(100, 100, "white")
