"""Text and tables from frame to frame: every word is there, within its frame, and upon no other."""

import numpy as np
import pytest
from qgis.PyQt.QtGui import QFont

from skyalidade.adapters.sheet_flow import Flow, Heading, Pairs, Paragraph, Table
from skyalidade.adapters.sheet_text import Letters, installed, plain

SIZES = (60.0, 40.0), (120.0, 100.0)  # a first frame, and all others [mm]


@pytest.fixture
def flow(qgis_app):
    letters = Letters(QFont("DejaVu Sans"), 7.0)

    def laid(*blocks, sizes=SIZES):
        made = Flow(letters, lambda frame: sizes[min(frame, 1)])
        made.lay(blocks)
        return made

    return laid


def assert_in_order(made, sizes=SIZES):
    """Lines within their frames, and none upon another."""
    for line in made.lines:
        width, height = sizes[min(line.frame, 1)]
        assert line.x >= 0.0
        assert line.y >= 0.0
        assert line.x + line.letters.width_mm(line.text) <= line.x + line.width + 0.1
        assert line.x + line.width <= width + 0.1
        assert line.y + line.letters.line_mm <= height + 0.1
    boxes = np.array(
        [(line.frame, line.x, line.y, line.x + line.letters.width_mm(line.text), line.y + line.letters.line_mm) for line in made.lines]
    )
    for i, (frame, left, top, right, bottom) in enumerate(boxes):
        rest = boxes[i + 1 :]
        both = (rest[:, 0] == frame) & (np.minimum(rest[:, 3], right) - np.maximum(rest[:, 1], left) > 0.1)
        assert not (both & (np.minimum(rest[:, 4], bottom) - np.maximum(rest[:, 2], top) > 0.1)).any()


def said(made):
    return " ".join(line.text for line in made.lines)


def test_forty_rows(flow):
    rows = tuple((f"night {i}", f"{i:02d}:00", "core over a subject of a rather long name") for i in range(40))
    made = flow(Heading("Timetable", "times of a zone"), Table(("Night", "Time", "What"), rows, wide=(2,), right=(1,)))
    assert_in_order(made)
    assert all(f"night {i}" in said(made) for i in range(40))
    assert said(made).count("Night Time What") == made.frames
    assert said(made).count("(continued)") == made.frames - 1


@pytest.mark.parametrize("text", ["x" * 2000, "word " * 600, "東京" * 500, "line\n" * 90])
def test_a_cell_higher_than_a_frame_is_split_and_whole(flow, text):
    made = flow(Table(("A", "B"), (("short", text), ("next", "row")), wide=(1,)), Paragraph(text), Pairs((("Name", text),)))
    assert_in_order(made)
    letters = "".join("".join(line.text for line in made.lines).split())
    assert letters.count("".join(text.split())[:1]) >= 3 * "".join(text.split()).count("".join(text.split())[:1])


def test_a_heading_stays_with_its_first_row(flow):
    for before in range(12):
        made = flow(*[Paragraph("text")] * before, Heading("Head", "rest"), Table(("A", "B"), (("1", "2"),)))
        (head,) = (line.frame for line in made.lines if line.text == "Head")
        (first,) = (line.frame for line in made.lines if line.text == "1")
        assert head == first
        assert_in_order(made)


def test_a_table_too_wide_is_set_smaller_before_words_break(flow):
    heads = tuple(f"Column{i}" for i in range(6))
    rows = (tuple("149.5°" for _ in heads),)
    made = flow(Table(heads, rows), sizes=((72.0, 60.0), (72.0, 60.0)))
    assert {line.text for line in made.lines} == {*heads, "149.5°"}
    assert max(line.letters.size_pt for line in made.lines) < 7.0
    assert_in_order(made, ((72.0, 60.0), (72.0, 60.0)))


def test_a_table_a_little_too_wide_is_set_smaller_before_rows_break(flow):
    rows = tuple((f"night {i}", "Milky Way core over Drovane Light") for i in range(5))
    wide = flow(Table(("Night", "What"), rows, wide=(1,)), sizes=((100.0, 80.0),) * 2)
    assert {line.letters.size_pt for line in wide.lines} == {7.0}
    needed = 2 * 2.0 + max(line.letters.width_mm(line.text) for line in wide.lines) + wide.letters.width_mm("night 0")
    for part, broken in ((0.96, False), (0.85, True)):
        sizes = ((part * needed, 80.0),) * 2
        made = flow(Table(("Night", "What"), rows, wide=(1,)), sizes=sizes)
        assert len(made.lines) == (2 + 5 * 3 if broken else 2 + 5 * 2)
        assert (max(line.letters.size_pt for line in made.lines) < 7.0) is not broken
        assert_in_order(made, sizes)


def test_a_column_gives_way_that_is_seldom_full(flow):
    """One of twelve rows tells much of the light: it is broken, not what the others say of the subject."""
    rows = tuple(("Milky Way core over a Standing Stone", "dark") for _ in range(11))
    rows += (("Milky Way core over a Standing Stone", "full darkness; Moon up at 3.9°; 24 % lit; its light from behind the camera"),)
    sizes = ((95.0, 120.0),) * 2
    made = flow(Table(("What", "Light"), rows, wide=(0, 1)), sizes=sizes)
    assert sum(line.text == "Milky Way core over a Standing Stone" for line in made.lines) == 12
    assert_in_order(made, sizes)


def test_even_a_table_far_too_wide_loses_nothing(flow):
    heads = tuple(f"Column{i}" for i in range(14))
    made = flow(Table(heads, (heads,)), sizes=((60.0, 200.0), (60.0, 200.0)))
    assert_in_order(made, ((60.0, 200.0), (60.0, 200.0)))
    assert sum(len(line.text) for line in made.lines) == 2 * sum(map(len, heads))


def test_pairs_stand_side_by_side_where_there_is_room(flow):
    rows = tuple((f"Name {i}", f"value {i}") for i in range(5))
    wide = flow(Pairs(rows), sizes=((150.0, 100.0), (150.0, 100.0)))
    narrow = flow(Pairs(rows), sizes=((40.0, 100.0), (40.0, 100.0)))
    assert len({line.x for line in wide.lines}) == 4
    assert len({line.x for line in narrow.lines}) == 2


def test_signs_that_are_not_seen_are_left_out():
    assert plain("a\x00b\u202ec\td  e") == "a b c d e"


def test_a_number_is_not_parted_from_its_unit(qgis_app):
    """Where a translation joins them by a space that does not break."""
    letters = Letters(QFont("DejaVu Sans"), 7.0)
    text = "luz diurna; iluminada al 8\u00a0%"
    lines = letters.lines(text, letters.width_mm(text) - 0.5)
    assert lines == ["luz diurna; iluminada al", "8\u00a0%"]
    assert letters.word_mm("a 8\u00a0%") == letters.width_mm("8\u00a0%")


def test_fitted_text_becomes_smaller_then_ends_in_dots(qgis_app):
    letters = Letters(QFont("DejaVu Sans"), 15.0)
    same, lines = letters.fitted("short", 100.0, 10.0, 5.5)
    assert (same.size_pt, lines) == (15.0, ["short"])
    smaller, lines = letters.fitted("word " * 40, 100.0, 10.0, 5.5)
    assert 5.5 <= smaller.size_pt < 15.0
    assert " ".join(lines) == ("word " * 40).strip()
    least, lines = letters.fitted("word " * 400, 100.0, 10.0, 5.5)
    assert least.size_pt == 5.5
    assert lines[-1].endswith("…")
    assert len(lines) * least.line_mm <= 10.3


@pytest.mark.parametrize(
    ("asked", "given"),
    [("DejaVu Sans", "DejaVu Sans"), ("dejavu sans", "dejavu sans"), ("DejaVu", "DejaVu Sans"), ("No Such Family", "DejaVu Sans")],
)
def test_a_family_that_the_computer_does_not_have_gives_way(qgis_app, asked, given):
    assert installed(QFont(asked)).family() == given


def test_without_the_family_in_reserve_the_font_is_left(qgis_app, monkeypatch):
    monkeypatch.setattr("skyalidade.adapters.sheet_text.FALLBACK", "Nor This One")
    assert installed(QFont("No Such Family")).family() == "No Such Family"
