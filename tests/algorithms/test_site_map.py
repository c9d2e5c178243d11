"""`site_map` in QGIS: declaration, refusals, sheets read back from the PDF, maps measured on paper, awkward texts and places, cancel."""

import errno
import re
import shutil
import threading
import time
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from geographiclib.geodesic import Geodesic
from pyproj import Transformer
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsFillSymbol,
    QgsPalLayerSettings,
    QgsProcessingAlgorithm,
    QgsProcessingException,
    QgsProcessingFeedback,
    QgsProcessingParameterDefinition,
    QgsProject,
    QgsProperty,
    QgsSingleSymbolRenderer,
    QgsSymbolLayer,
    QgsVectorLayerSimpleLabeling,
)
from qgis.PyQt.QtGui import QImage, QPainter

from skyalidade.names import FIELDS, STANDPOINTS_FIELDS

LAYOUTS = Path(__file__).resolve().parents[2] / "plugin" / "layouts"
BLOCK = ["APPLICANT", "ACTIVITY", "GROUP_SIZE", "VEHICLES", "HOURS", "LIGHTING", "CONTACT", "EMERGENCY", "PERMIT_NO"]
LAYERS = ["SIGHTLINES", "ALIGNMENTS", "CAMERAS", "SUBJECTS", "STANDPOINTS", "ZONES", "PATHS", "WALK", "PARKING", "CLOSED", "DEM"]
NOTICE = "Applicant's map. Not issued or approved by the land manager."
MM = 72.0 / 25.4  # points
MEADOW, STONE, LIGHT = (-33.0, 36.01), (-33.0, 36.0), (-32.99, 36.004)  # a camera, a subject due south of it and one to the south-east
NIGHTS = {"FIRST_NIGHT": "2027-06-05", "LAST_NIGHT": "2027-06-06"}
GRAPHIC, IMAGE = 2, 3  # kinds of objects on a page of a PDF
MAP_A4_MM = (15.0, 148.2, 152.5, 262.5)  # left, bottom, right, top of the map on an upright A4 sheet
SAME_LINE_MM = 0.3
KINDS = {"text": "string", "int": "integer", "real": "double", "bool": "boolean", "date": "date", "datetime": "datetime"}


class Pdf:
    """The pages of a PDF, by a parser of its own: letters with their boxes, put together to lines by where they stand."""

    def __init__(self, path):
        self._document = pypdfium2.PdfDocument(str(path))
        self.sizes_mm = [tuple(round(side / MM, 1) for side in page.get_size()) for page in self._document]
        self._letters = [self._read(page.get_textpage()) for page in self._document]
        self.pages = ["\n".join(self._lines(page)) for page in range(len(self._letters))]

    @staticmethod
    def _read(text):
        """Letters that are seen, and their boxes, tight and with all of the font's height: left, bottom, right, top [mm]."""
        letters = [chr(pypdfium2.raw.FPDFText_GetUnicode(text, i)) for i in range(text.count_chars())]
        seen = [i for i, letter in enumerate(letters) if letter.strip()]
        boxes = [[text.get_charbox(i, loose) for i in seen] for loose in (False, True)]
        return [letters[i] for i in seen], *(np.array(own).reshape(-1, 4) / MM for own in boxes)

    def _lines(self, page):
        """The lines of a page from its top, words parted by more than a fifth of their height."""
        letters, _, boxes = self._letters[page]
        order = np.argsort(-boxes[:, 1], kind="stable")
        for own in np.split(order, np.flatnonzero(np.diff(-boxes[order, 1]) > SAME_LINE_MM) + 1):
            own = own[np.argsort(boxes[own, 0], kind="stable")]
            gap = np.append(0.0, boxes[own[1:], 0] - boxes[own[:-1], 2]) > 0.2 * (boxes[own, 3] - boxes[own, 1])
            yield "".join(" " * bool(parted) + letters[i] for parted, i in zip(gap, own.tolist()))

    @property
    def text(self):
        """All of it on one line."""
        return " ".join(" ".join(self.pages).split())

    def letters(self, page):
        """Letters and their tight boxes."""
        return self._letters[page][:2]

    def word(self, page, word):
        """Boxes of a word wherever it stands alone [mm]."""
        text = self._document[page].get_textpage()
        found, search = [], text.search(word, match_whole_word=True)
        while True:
            hit = search.get_next()
            if hit is None:
                return np.array(found) / MM
            boxes = np.array([text.get_charbox(i) for i in range(hit[0], hit[0] + hit[1])])
            found.append((*boxes[:, :2].min(axis=0), *boxes[:, 2:].max(axis=0)))

    def on_map(self, word):
        """Boxes of a word on the map of an upright A4 sheet."""
        left, bottom, right, top = MAP_A4_MM
        return [box for box in self.word(0, word) if left < box[0] and box[2] < right and bottom < box[1] and box[3] < top]

    def images(self, page):
        """How many images a page holds."""
        return len(list(self._document[page].get_objects([IMAGE])))

    def graphics(self, page):
        """Boxes of all paths [mm]."""
        return np.array([own.get_bounds() for own in self._document[page].get_objects([GRAPHIC])]) / MM


@pytest.fixture
def sheets(run, tmp_path):
    """Make sheets; the PDF and the log."""

    def made(cancel_at=None, **asked):
        file = tmp_path / "sheets.pdf"
        outcome = run("site_map", {"OUTPUT": str(file), "TITLE": "A walk in the dark", **asked}, cancel_at)
        pdf = Pdf(file) if file.exists() else None
        return pdf, outcome.log

    return made


@pytest.fixture
def named(layer):
    """A layer of places with names."""

    def made(*rows, **how):
        return layer([(f"Point({lon} {lat})", name) for (lon, lat), name in rows], fields=["name:string(0)"], kind="Point", **how)

    return made


@pytest.fixture
def planned(run, named):
    """Cameras, subjects, their sightlines and their alignments, as a person would make them."""

    def made(cameras=((MEADOW, "Meadow"),), subjects=((STONE, "Stone"),), bodies=("core",), nights=NIGHTS):
        given = {"CAMERAS": named(*cameras), "CAMERA_NAME": "name", "SUBJECTS": named(*subjects), "SUBJECT_NAME": "name"}
        sightlines = run("sightlines", {**given, "DATE": "2027-06-05"}).layers["OUTPUT"]
        aligned = run("alignments", {**given, "BODIES": list(bodies), **nights}).layers["OUTPUT"]
        return {**given, "SIGHTLINES": sightlines, "ALIGNMENTS": aligned}

    return made


def assert_nothing_cut_or_covered(pdf):
    """Letters stand within the edges of the page, and none upon another one; the map's own labels are placed by QGIS."""
    for page, (width, height) in enumerate(pdf.sizes_mm):
        letters, boxes = pdf.letters(page)
        assert boxes[:, 0].min() > 9.0
        assert boxes[:, 2].max() < width - 9.0
        assert boxes[:, 1].min() > 5.0
        assert boxes[:, 3].max() < height - 5.0
        area = np.prod(boxes[:, 2:] - boxes[:, :2], axis=1)
        for i, (left, bottom, right, top) in enumerate(boxes[:-1].tolist()):
            rest = boxes[i + 1 :]
            high = np.minimum(rest[:, 3], top) - np.maximum(rest[:, 1], bottom)
            common = np.clip(np.minimum(rest[:, 2], right) - np.maximum(rest[:, 0], left), 0.0, None) * np.clip(high, 0.0, None)
            covered = np.flatnonzero(common > 0.3 * np.minimum(area[i], area[i + 1 :]) + 0.02)  # mm2: letters of one word may touch
            assert not covered.size, (page, letters[i], boxes[i], [(letters[i + 1 + j], rest[j]) for j in covered.tolist()])


def test_declaration(algorithm):
    made = algorithm("site_map")
    parameters = {parameter.name(): parameter for parameter in made.parameterDefinitions()}
    assert set(LAYERS + BLOCK) < set(parameters)
    optional = {name for name, own in parameters.items() if own.flags() & QgsProcessingParameterDefinition.Flag.FlagOptional}
    assert set(LAYERS + BLOCK + ["SHEET_BY", "TITLE", "SCALE", "TEMPLATE", "FOLDER", "PICTURES"]) <= optional
    assert parameters["SHEET_BY"].defaultValue() == "camera"
    assert (parameters["PAPER"].options(), parameters["PAPER"].defaultValue()) == (["a4", "letter"], "a4")
    assert (parameters["ORIENTATION"].options(), parameters["ORIENTATION"].defaultValue()) == (["portrait", "landscape"], "portrait")
    assert made.flags() & QgsProcessingAlgorithm.Flag.FlagNoThreading
    assert [output.name() for output in made.outputDefinitions()] == ["OUTPUT", "FOLDER", "PICTURES", "SHEETS"]


# what a sheet says


def test_coordinates_and_bearings_are_those_of_the_layers(sheets, planned):
    given = planned(subjects=((STONE, "Stone"), (LIGHT, "Light")))
    pdf, _ = sheets(**given)
    to_grid = Transformer.from_crs(4326, 32625, always_xy=True)
    for (lon, lat), name in ((MEADOW, "C1 Meadow camera"), (LIGHT, "S1 Light subject"), (STONE, "S2 Stone subject")):
        east, north = to_grid.transform(lon, lat)
        if f"{name} " not in pdf.text:
            name = name.replace("S1", "S2") if "S1" in name else name.replace("S2", "S1")
        assert f"{name} {lat:.5f}° N {-lon:.5f}° W {east:.0f} {north:.0f}" in pdf.text
    for row in given["SIGHTLINES"].getFeatures():
        lon, lat = STONE if row["subject"] == "Stone" else LIGHT
        exact = Geodesic.WGS84.Inverse(MEADOW[1], MEADOW[0], lat, lon)
        bearing, back = exact["azi1"] % 360.0, (exact["azi2"] + 180.0) % 360.0
        told = re.search(rf"{row['subject']} ([\d.]+)° ± ([\d.]+)° ([\d.]+)° ([\d.]+)° ([\d,]+) m not tested", pdf.text).groups()
        shown = [
            f"{bearing:.1f}",
            f"{np.ceil(10.0 * np.degrees(np.arctan(3.0 / exact['s12']))) / 10.0:.1f}",
            f"{back:.1f}",
            f"{row['mag_deg']:.1f}",
        ]
        assert list(told) == [*shown, f"{exact['s12']:,.0f}"]


def test_timetable_is_that_of_the_alignments(sheets, planned):
    given = planned()
    pdf, _ = sheets(**given)
    rows = list(given["ALIGNMENTS"].getFeatures())
    assert len(rows) == 2
    for row in rows:
        begin, closest, end = (rounded(row[name]) for name in ("start_loc", "t_local", "end_loc"))
        assert re.search(
            rf"\d\d:\d\d Milky Way core over Stone {begin} {closest} {end} {row['az_deg']:.1f}° {row['alt_deg']:.1f}°", pdf.text
        )
    assert "Times of UTC-02:00" in pdf.text
    assert "Nights of 2027-06-05, 2027-06-06; hours as in the timetable" in pdf.text


def rounded(local):
    """The minute nearest to a local text."""
    seconds = sum(int(part) * unit for part, unit in zip(local[11:19].split(":"), (3600, 60, 1)))
    minutes = (seconds + 30) // 60
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def test_every_page_says_whose_map_it_is(sheets, planned):
    given = planned(cameras=((MEADOW, "Meadow"), ((-33.002, 36.012), "Ridge")))
    pdf, log = sheets(**given, PERMIT_NO="17/b", APPLICANT="Ada Example", LIGHTING="red lamps only")
    assert len(pdf.pages) == 4
    assert all(NOTICE in page and "Permit 17/b" in page and "A walk in the dark" in page for page in pdf.pages)
    assert ["Sheet 1 of 2" in page for page in pdf.pages] == [True, True, False, False]
    assert ["Page 1 / 2" in page for page in pdf.pages] == [True, False, True, False]
    assert "Meadow · Nights of" in pdf.pages[0]
    assert "Ridge · Nights of" in pdf.pages[2]
    for said in (
        "Ada Example",
        "red lamps only",
        "Walking in the dark",
        "not a survey and not a permit",
        "Made by Sky Alidade",
        "Magnetic north",
    ):
        assert said in pdf.text
    assert "2 sheets on 4 pages" in log
    assert "…" not in pdf.text
    assert_nothing_cut_or_covered(pdf)


@pytest.mark.parametrize(
    ("paper", "turn", "size"),
    [
        ("a4", "portrait", (210.0, 297.0)),
        ("a4", "landscape", (297.0, 210.0)),
        ("letter", "portrait", (215.9, 279.4)),
        ("letter", "landscape", (279.4, 215.9)),
    ],
)
def test_papers(sheets, planned, paper, turn, size):
    pdf, _ = sheets(**planned(), PAPER=paper, ORIENTATION=turn, APPLICANT="Ada Example", ACTIVITY="pictures of the night " * 20)
    assert np.array(pdf.sizes_mm) == pytest.approx(np.array([size] * len(pdf.pages)), abs=0.1)
    assert pdf.text.count("pictures") == 20
    assert_nothing_cut_or_covered(pdf)


def test_forty_rows_go_on_on_further_pages(sheets, planned):
    given = planned(nights={"FIRST_NIGHT": "2027-05-20", "LAST_NIGHT": "2027-06-28"})
    pdf, _ = sheets(**given)
    rows = [(rounded(row["start_loc"]), rounded(row["t_local"]), rounded(row["end_loc"])) for row in given["ALIGNMENTS"].getFeatures()]
    assert len(rows) == 40
    assert all(f"Milky Way core over Stone {' '.join(row)}" in pdf.text for row in rows)
    assert len(pdf.pages) > 2
    assert "(continued)" in pdf.text
    assert pdf.text.count("Be there") == pdf.text.count("Az. Alt.") > 1  # the head of the table again
    assert_nothing_cut_or_covered(pdf)


def test_no_alignments(sheets, planned):
    given = planned()
    without = {name: layer for name, layer in given.items() if name != "ALIGNMENTS"}
    assert "No alignments were given: there are no times to tell." in sheets(**without)[0].text
    given["ALIGNMENTS"].dataProvider().truncate()
    pdf, log = sheets(**given)
    assert "No alignment falls on this sheet: there are no times to tell." in pdf.text
    assert "1 sheets" in log


# the map on paper


def grid_on_paper(pdf, step):
    """How far apart, in mm, the numbers of neighbouring lines of the grid stand on the bottom of the map."""
    eastings = sorted({int(word) for word in re.findall(r"\b\d{6}\b", pdf.pages[0]) if int(word) % step == 0})
    boxes = [pdf.word(0, str(east)) for east in eastings]
    middles = {east: (box[:, 0] + box[:, 2]).min() / 2.0 for east, box in zip(eastings, boxes) if len(box)}
    return np.diff([middles[east] for east in sorted(middles)])


def test_scale_bar_and_grid_are_as_long_as_the_scale_says(sheets, planned):
    """The bar of 400 m at 1:10,000 is 40 mm long, and lines of the grid, 200 m apart, stand 20 mm apart."""
    pdf, _ = sheets(**planned(), SCALE=10_000)
    assert "1 : 10,000; grid every 200 m" in pdf.text
    assert grid_on_paper(pdf, 200) == pytest.approx(20.0, abs=0.15)  # mm: a letter is placed to a dot of 300 an inch
    (end,) = pdf.word(0, "400")
    (zero,) = [box for box in pdf.word(0, "0") if abs(box[1] - end[1]) < 0.5]
    assert (end[0] + end[2] - zero[0] - zero[2]) / 2.0 == pytest.approx(40.0, abs=0.4)
    bars = pdf.graphics(0)
    lengths = bars[:, 2] - bars[:, 0]
    box = (np.abs(bars[:, 1] - bars[:, 3]) < 2.5) & (np.abs(bars[:, 0] - (zero[0] + zero[2]) / 2.0) < 1.0) & (bars[:, 1] < zero[1])
    assert np.abs(lengths[box] - 20.0).min() < 0.35  # a segment, its pen included
    assert lengths[box].max() == pytest.approx(40.3, abs=0.4)  # both


def test_scale_bar_in_kilometres(sheets, planned):
    """At 1:100,000 a segment of 20 mm is 2 km."""
    pdf, _ = sheets(**planned(), SCALE=100_000)
    (end,) = [box for box in pdf.word(0, "4 km") if box[1] < MAP_A4_MM[1]]
    half, zero = (next(box for box in pdf.word(0, word) if abs(box[1] - end[1]) < 0.5 and box[2] < end[2]) for word in ("2", "0"))
    assert (half[0] + half[2] - zero[0] - zero[2]) / 2.0 == pytest.approx(20.0, abs=0.4)
    assert "grid every 2 km" in pdf.text
    assert grid_on_paper(pdf, 2000) == pytest.approx(20.0, abs=0.15)


def test_scale_that_fits(sheets, planned):
    """Camera and subject, 1110 m apart, upon a map 114 mm high of which 80 % are free: 1 to 12,133, so 1:12,500."""
    pdf, _ = sheets(**planned())
    assert "1 : 12,500" in pdf.text


def test_a_far_subject_is_told_not_fitted(sheets, planned):
    pdf, _ = sheets(**planned(subjects=((STONE, "Stone"), ((-32.5, 36.0), "Far Light"))))
    assert "Far Light (beyond the map's edge)" in pdf.text
    assert "Stone (beyond" not in pdf.text


def test_a_scale_that_leaves_the_subject_out(sheets, planned):
    pdf, _ = sheets(**planned(), SCALE=1000)
    assert "1 : 1,000" in pdf.text
    assert "Stone (beyond the map's edge)" in pdf.text


def test_every_place_has_its_mark_on_the_map(sheets, planned):
    around = [Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 30.0 * i + 5.0, (1500, 900, 400, 2500)[i % 4]) for i in range(12)]
    pdf, _ = sheets(**planned(subjects=[((place["lon2"], place["lat2"]), f"Standing Stone {i}") for i, place in enumerate(around)]))
    assert all(len(pdf.on_map(mark)) == 1 for mark in ("C1", *(f"S{i}" for i in range(1, 13))))  # beyond the edge: beside an arrowhead


def test_names_that_would_stand_on_each_other_give_way_to_marks(sheets, planned):
    """Nine subjects side by side, 90 m from one to the next; three of them have room for their names."""
    around = [Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 150.0 + 6.0 * i, 900.0) for i in range(9)]
    subjects = [((place["lon2"], place["lat2"]), f"Standing Stone {i}") for i, place in enumerate(around)]
    pdf, _ = sheets(**planned(subjects=subjects))
    assert pdf.on_map("Standing") == []
    assert all(len(pdf.on_map(f"S{i}")) == 1 for i in range(1, 10))
    assert_nothing_cut_or_covered(pdf)
    pdf, _ = sheets(**planned(subjects=subjects[::4]))
    assert len(pdf.on_map("Standing")) == 3


def test_a_sightline_that_leaves_the_map_tells_where_it_leads(sheets, planned):
    far = Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 170.0, 30_000.0)
    pdf, _ = sheets(**planned(subjects=(((far["lon2"], far["lat2"]), "Light"),)))
    assert "to S1 Light, 30 km" in pdf.text
    ((_, bottom, _, _),) = pdf.on_map("Light")
    assert bottom < MAP_A4_MM[1] + 15.0  # at the lower edge, as the line runs south
    assert "1 : 5,000" in pdf.text


def test_many_sightlines_do_not_wipe_each_other_out(run, planned, tmp_path):
    """Thirty lines that meet: where they stand less than half a millimetre apart all is dark, not white by their casings."""
    cameras = [((MEADOW[0] + 2e-4 * i, MEADOW[1]), f"Place {i}") for i in range(-15, 15)]
    given = {**planned(cameras=cameras), "SHEET_BY": "", "SCALE": 12_500}
    run("site_map", {**given, "OUTPUT": str(tmp_path / "x.pdf"), "PICTURES": str(tmp_path / "png")})
    image = QImage(str(next((tmp_path / "png").glob("*-1.png"))))
    dots = image.width() / 210.0  # to a millimetre
    left, right, row = (int(mm * dots) for mm in (MAP_A4_MM[0], MAP_A4_MM[2], 297.0 - (MAP_A4_MM[1] + 33.0)))
    dark = [x for x in range(left + 2, right) if image.pixelColor(x, row).lightness() < 110]
    assert dark[-1] - dark[0] > 8.0 * dots
    assert len(dark) > 0.8 * (dark[-1] - dark[0])


def test_a_scale_at_which_all_fits_shows_all(sheets, planned):
    pdf, _ = sheets(**planned(), SCALE=12_500)
    assert "beyond the map's edge" not in pdf.text
    assert len(pdf.on_map("C1")) == len(pdf.on_map("S1")) == 1


def test_what_is_drawn_is_no_image(sheets, planned):
    assert sheets(**planned())[0].images(0) == 0


@pytest.mark.parametrize("lon", np.arange(-33.0, -32.98, 0.004).tolist())
def test_numbers_of_the_grid_keep_within_the_map(sheets, named, lon):
    pdf, _ = sheets(CAMERAS=named(((lon, 36.01), "Meadow")), CAMERA_NAME="name")
    eastings = [box for word in set(re.findall(r"\b\d{6}\b", pdf.pages[0])) for box in pdf.word(0, word)]
    assert max(box[2] for box in eastings if box[3] > MAP_A4_MM[1] - 6.0) < MAP_A4_MM[2] + 0.5
    _, boxes = pdf.letters(0)
    northings = boxes[(boxes[:, 2] < MAP_A4_MM[0]) & (boxes[:, 3] > MAP_A4_MM[1]) & (boxes[:, 3] < MAP_A4_MM[3] + 6.0)]
    assert northings[:, 3].max() < MAP_A4_MM[3] + 0.5


# awkward texts


AWKWARD = ["[% 1 + 1 %] & <b>bold</b>", "%1 @layout_name [%@project_home%]", "שלום עולם", "東京の夜", "a\x00b\u202edne", "x" * 200]


@pytest.mark.parametrize("name", AWKWARD)
def test_names_and_texts_are_shown_as_they_are(sheets, planned, layer, name):
    closed = layer(
        [("Polygon((-33.001 36.009,-33.001 36.011,-32.999 36.011,-33.001 36.009))", name)], fields=["why:string(0)"], kind="Polygon"
    )
    given = planned(cameras=((MEADOW, name),), subjects=((STONE, name),))
    texts = dict.fromkeys(BLOCK, name)
    pdf, log = sheets(**given, **texts, CLOSED=closed, CLOSED_NAME="why", TITLE=name)
    shown = "".join(letter for letter in name if letter.isprintable() and not letter.isspace())
    said = "".join("".join(pdf.pages).split())
    if not name.isascii():  # right to left a parser may give either way
        assert set(shown) <= set(said) or "No font of this computer draws" in log
    else:
        assert said.count(shown) >= 8
        heads = ["".join(page[: page.index(NOTICE)].split()) for page in pdf.pages]
        assert len(name) > 100 or [head.count(shown) for head in heads] == [3] * len(heads)  # title, permit, site: a long one goes on
    assert "1 sheets" in log
    assert_nothing_cut_or_covered(pdf)


def test_names_written_from_right_to_left_do_not_turn_sentences_round(sheets, planned):
    given = planned(cameras=((MEADOW, "שלום"), ((-33.002, 36.012), "Ridge")))
    pdf, _ = sheets(**given, SHEET_BY="")
    page = next(i for i, text in enumerate(pdf.pages) if "Milky" in text)
    names = [box for letter, box in zip(*pdf.letters(page)) if letter == "ש"]
    in_one_line = [(name[2], word[0]) for name in names for word in pdf.word(page, "Milky") if abs(name[1] - word[1]) < 2.0]
    assert in_one_line
    assert all(end < begin for end, begin in in_one_line)


def test_long_names_are_whole_among_the_places_and_short_beside_their_marks(sheets, planned):
    name = "The place by the water where the old keepers' path leaves the road"
    pdf, _ = sheets(**planned(subjects=((STONE, name),)))
    assert f"S1 {name} subject" in pdf.text
    assert "C1 Meadow S1 The place by the water where the old ke… 180.0°" in pdf.text


def test_a_title_of_300_letters(sheets, planned, refusal, tmp_path):
    given = planned()
    title = ("Night photography of the reserve, " * 9)[:300]
    pdf, _ = sheets(**given, TITLE=title)
    assert all("".join(title.split()) in "".join(page.split()) for page in pdf.pages)
    assert_nothing_cut_or_covered(pdf)
    sentence = refusal("site_map", {**given, "TITLE": title + "x", "OUTPUT": str(tmp_path / "x.pdf")})
    assert sentence == "TITLE is 301 letters long, and a sheet has room for 300. Shorten it."


def test_a_font_that_is_not_there(sheets, planned, tmp_path):
    own = tmp_path / "own.qpt"
    text = (LAYOUTS / "site_map_a4_portrait.qpt").read_text(encoding="utf-8")
    own.write_text(text.replace("DejaVu Sans", "No Such Letters"), encoding="utf-8")
    pdf, log = sheets(**planned(), TEMPLATE=str(own))
    assert "The template asks for the font No Such Letters, which this computer has not" in log
    assert "C1 Meadow camera" in pdf.text


def test_letters_that_no_font_has(sheets, planned):
    _, log = sheets(**planned(cameras=((MEADOW, "\U00013000"),)))  # an Egyptian hieroglyph: no font that comes with QGIS has it
    assert "No font of this computer draws \U00013000" in log


# awkward places


@pytest.mark.parametrize(
    ("camera", "subject", "zone", "epsg"),
    [
        ((179.999, -16.8), (-179.995, -16.8), "UTM zone 60S", 32760),
        ((-179.999, 65.0), (179.99, 65.003), "UTM zone 1N", 32601),
        ((10.0, 86.0), (10.1, 86.005), "UPS north", 5041),
        ((100.0, -89.99), (-80.0, -89.99), "UPS south", 5042),
    ],
)
def test_at_the_antimeridian_and_near_the_poles(sheets, planned, layer, camera, subject, zone, epsg):
    d = 1.0 if abs(camera[1]) > 80.0 else 0.003
    lon, lat = camera
    ring = ((lon - d, lat - 0.001), (lon + d, lat - 0.001), (lon + d, lat + 0.001), (lon - d, lat + 0.001), (lon - d, lat - 0.001))
    closed = layer([(f"Polygon(({','.join(f'{x} {y}' for x, y in ring)}))",)], kind="Polygon")
    pdf, _ = sheets(**planned(cameras=((camera, "Here"),), subjects=((subject, "There"),)), CLOSED=closed)
    east, north = Transformer.from_crs(4326, epsg, always_xy=True).transform(*camera)
    assert f"{zone} (EPSG:{epsg})" in pdf.text
    assert f"{east:.0f} {north:.0f}" in pdf.text
    dist = Geodesic.WGS84.Inverse(camera[1], camera[0], subject[1], subject[0])["s12"]
    assert f"{dist:,.0f} m not tested" in pdf.text
    assert "beyond the map's edge" not in pdf.text
    assert "…" not in pdf.text
    assert "INSIDE closed ground (closure 1): C1 Here" in pdf.text
    labels = [pdf.word(0, word) for word in ("Here", "There")]
    assert all(len(boxes) >= 3 for boxes in labels)  # on the map, and in the tables


# closed ground


def square(lon, lat, half):
    west, east, south, north = lon - half, lon + half, lat - half, lat + half
    return f"Polygon(({west} {south},{east} {south},{east} {north},{west} {north},{west} {south}))"


def test_distances_to_closed_ground(sheets, planned, layer):
    """Against the edge of the polygon, dense points on it and GeographicLib; a metre is what is told."""
    closed = layer([(square(-33.02, 36.0, 0.005), "Nesting cliff")], fields=["name:string(0)"], kind="Polygon")
    pdf, _ = sheets(**planned(), CLOSED=closed, CLOSED_NAME="name")
    edge = [(lon, lat) for lon in np.linspace(-33.025, -33.015, 401) for lat in (35.995, 36.005)]
    edge += [(lon, lat) for lat in np.linspace(35.995, 36.005, 401) for lon in (-33.025, -33.015)]
    nearest = min(Geodesic.WGS84.Inverse(MEADOW[1], MEADOW[0], lat, lon)["s12"] for lon, lat in edge)
    told = re.search(r"C1 Meadow outside ([\d,]+) m Nesting cliff always", pdf.text)
    assert float(told.group(1).replace(",", "")) == pytest.approx(nearest, abs=1.0)


@pytest.mark.parametrize(
    ("first", "last", "inside"),
    [
        ("06-01", "06-05", True),  # the evening of the first night
        ("06-07", "06-07", True),  # the morning after the last one
        ("06-08", "12-31", False),
        ("2027-01-01", "2027-06-04", False),
        ("2026-01-01", "2028-01-01", True),
        (None, None, True),
        ("soon", None, True),
    ],
)
def test_closures_by_the_sheet_s_dates(sheets, planned, layer, first, last, inside):
    fields = ["name:string(0)", "a:string(0)", "b:string(0)"]
    closed = layer([(square(*MEADOW, 0.001), "Nests", first, last)], fields=fields, kind="Polygon")
    pdf, log = sheets(**planned(), CLOSED=closed, CLOSED_NAME="name", CLOSED_FROM="a", CLOSED_TO="b")
    assert ("INSIDE closed ground (Nests): C1 Meadow" in pdf.text) is inside
    assert ("C1 Meadow outside over 20 km" in pdf.text) is not inside
    assert ("Closed at other times" in pdf.text) is not inside
    assert ("Closed on these dates" in pdf.text) is inside
    assert ("cannot be read; they are taken as always closed: features 1" in log) is (first == "soon")


def test_the_walk_is_checked_and_timed(sheets, planned, layer):
    """2 km of walk due west of the camera, 400 m of which lie in closed ground; at 3 km/h that is 40 min, and a car at its end."""
    west = Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 270.0, 2000.0)
    near, far = (Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 270.0, dist)["lon2"] for dist in (800.0, 1200.0))
    walk = layer([(f"LineString({west['lon2']} {west['lat2']},{MEADOW[0]} {MEADOW[1]})", "Way")], fields=["n:string(0)"], kind="LineString")
    car = layer([(f"Point({west['lon2']} {west['lat2']})", "Gate")], fields=["n:string(0)"], kind="Point")
    ring = f"Polygon(({far} 36.0,{near} 36.0,{near} 36.02,{far} 36.02,{far} 36.0))"
    closed = layer([(ring, "Marsh")], fields=["n:string(0)"], kind="Polygon")
    walks = {"WALK": walk, "WALK_NAME": "n", "PARKING": car, "PARKING_NAME": "n", "CLOSED": closed, "CLOSED_NAME": "n"}
    pdf, _ = sheets(**planned(), **walks)
    assert "Way to C1: 2,000 m, 40 min at 3 km/h, each way" in pdf.text
    assert "INSIDE closed ground (Marsh): Walk Way, to C1" in pdf.text
    assert "Walk Way, to C1 INSIDE 400 m of it Marsh always" in pdf.text
    assert "C1 Meadow outside 800 m Marsh always" in pdf.text
    assert "K1 Gate parking" in pdf.text


def test_a_walk_that_ends_short_of_the_camera(sheets, planned, layer):
    """200 m are not drawn: they are told, counted, and not checked."""
    near, far = (Geodesic.WGS84.Direct(MEADOW[1], MEADOW[0], 270.0, dist) for dist in (200.0, 1000.0))
    walk = layer(
        [(f"LineString({far['lon2']} {far['lat2']},{near['lon2']} {near['lat2']})", "Way")], fields=["n:string"], kind="LineString"
    )
    closed = layer([(square(-33.02, 36.0, 0.005),)], kind="Polygon")
    pdf, _ = sheets(**planned(), WALK=walk, WALK_NAME="n", CLOSED=closed)
    assert "Way to C1: 1,000 m, 20 min at 3 km/h" in pdf.text
    assert "The drawn walk passes 200 m from the camera: the rest is counted as the crow flies." in pdf.text
    assert "Of a walk only the drawn part was checked." in pdf.text


def test_a_walk_that_touches_closed_ground(sheets, planned, layer):
    walk = layer([(f"LineString(-33.02 36.01,{MEADOW[0]} {MEADOW[1]})", "Way")], fields=["n:string"], kind="LineString")
    closed = layer(
        [("Polygon((-33.01 36.0100005,-33.011 36.0,-33.009 36.0,-33.01 36.0100005))", "Marsh")], fields=["n:string"], kind="Polygon"
    )
    pdf, _ = sheets(**planned(), WALK=walk, WALK_NAME="n", CLOSED=closed, CLOSED_NAME="n")
    assert "Walk Way, to C1 INSIDE touches it Marsh" in pdf.text


def test_many_places_in_one_closure_are_told_in_one_line(sheets, named, layer):
    many = named(*(((-33.0 + 1e-3 * i, 36.01), f"Place {i}") for i in range(8)))
    closed = layer([(square(*MEADOW, 0.1), "Whole reserve")], fields=["n:string"], kind="Polygon")
    pdf, _ = sheets(CAMERAS=many, CAMERA_NAME="name", SHEET_BY="", CLOSED=closed, CLOSED_NAME="n")
    assert "INSIDE closed ground (Whole reserve): C1, C2, C3, C4, C5, C6, C7, C8 " in pdf.text
    assert pdf.text.count("Place 3 INSIDE – Whole reserve") == 1


def test_closed_ground_about_every_place_of_a_sheet(sheets, planned, layer):
    """Two cameras 90 km apart on one sheet: the second stands in closed ground that lies far from the first."""
    far = (-32.0, 36.01)
    given = planned(cameras=((MEADOW, "Meadow"), (far, "Ridge")), subjects=((STONE, "Stone"),))
    closed = layer([(square(*far, 0.001), "Nests")], fields=["n:string(0)"], kind="Polygon")
    pdf, _ = sheets(**given, CLOSED=closed, CLOSED_NAME="n", SHEET_BY="")
    assert "INSIDE closed ground (Nests): C2 Ridge" in pdf.text
    assert "C1 Meadow outside over 20 km" in pdf.text


def test_places_too_far_apart_for_a_sheet(sheets, planned):
    given = planned(cameras=((MEADOW, "Meadow"), ((-28.0, 36.0), "Ridge")))
    with pytest.raises(QgsProcessingException, match=r"The places of sheet '-' lie more than 200 km apart.*Choose a SHEET_BY"):
        sheets(**given, SHEET_BY="")


def test_crooked_closures_are_repaired(sheets, planned, layer):
    lon, lat = MEADOW
    corners = [(lon - 0.002, lat - 0.001), (lon + 0.002, lat + 0.001), (lon + 0.002, lat - 0.001), (lon - 0.002, lat + 0.001)]
    bow = ",".join(f"{x} {y}" for x, y in [*corners, corners[0]])
    pdf, log = sheets(**planned(), CLOSED=layer([(f"Polygon(({bow}))",)], kind="Polygon"))
    assert "CLOSED: 1 polygons were not valid and have been repaired" in log
    assert "INSIDE closed ground (closure 1): C1 Meadow" in pdf.text  # where the bow's halves touch


def test_nothing_known_of_closures(sheets, planned):
    assert "No layer of closed ground was given: nothing was checked." in sheets(**planned())[0].text


# other layers


def test_standpoints_and_zones(sheets, layer, named):
    values = {"subject": "Stone", "camera": "Track 413 m", "bearing_deg": 180.0, "mag_deg": 189.0, "dist_m": 1000.0, "sight": "clear"}
    points = layer(
        [("Point(-33 36.01)", *(values.get(name) for name in STANDPOINTS_FIELDS))],
        fields=[f"{name}:{KINDS[FIELDS[name].kind]}" for name in STANDPOINTS_FIELDS],
        kind="Point",
    )
    zones = layer([(square(-33.0, 36.01, 0.0005),)], kind="Polygon")
    closed = layer([(square(-32.9990, 36.01, 0.00075),)], kind="Polygon")
    assert "NOT ALLOWED" not in sheets(STANDPOINTS=points)[0].text
    points.dataProvider().changeAttributeValues({1: {points.fields().lookupField("allowed"): False}})
    pdf, _ = sheets(STANDPOINTS=points, ZONES=zones, CLOSED=closed)
    east, north = Transformer.from_crs(4326, 32625, always_xy=True).transform(-33.0, 36.01)
    assert f"P1 Track 413 m standpoint 36.01000° N 33.00000° W {east:.0f} {north:.0f}" in pdf.text
    assert re.search(r"P1 Track 413 m S1 Stone 180\.0° ± 0\.2° 0\.0° 189\.0° 1,000 m in sight", pdf.text)
    area, _ = Geodesic.WGS84.Polygon(), None
    for lat, lon in ((36.0095, -32.99975), (36.0095, -32.9995), (36.0105, -32.9995), (36.0105, -32.99975)):
        area.AddPoint(lat, lon)
    told = re.search(r"Zones 1 in all INSIDE ([\d,]+) m² of it", pdf.text)
    assert float(told.group(1).replace(",", "")) == pytest.approx(abs(area.Compute()[2]), rel=2e-3)
    assert "Zone to stand in" in pdf.text
    assert "NOT ALLOWED, as the layer of standpoints says: Track 413 m" in pdf.text


def test_zones_of_other_subjects_are_on_other_sheets(sheets, named, layer):
    """Of two standpoints each has its own zone, and a zone far longer than the map does not shrink it."""
    fields = [f"{name}:{KINDS[FIELDS[name].kind]}" for name in STANDPOINTS_FIELDS]
    values = {"bearing_deg": 180.0, "mag_deg": 189.0, "dist_m": 1000.0}
    points = layer(
        [
            (f"Point({lon} 36.01)", *({**values, "subject": subject, "camera": camera}.get(name) for name in STANDPOINTS_FIELDS))
            for lon, subject, camera in ((-33.0, "Stone", "East Track"), (-33.05, "Light", "West Track"))
        ],
        fields=fields,
        kind="Point",
    )
    strips = [
        (f"Polygon(({lon} 36.01,{lon} 36.4,{lon + 0.001} 36.4,{lon} 36.01))", of) for lon, of in ((-33.0, "Stone"), (-33.05, "Light"))
    ]
    zones = layer(strips, fields=["subject:string(0)"], kind="Polygon")
    closed = layer([(square(-33.0, 36.1, 0.01), "Moor")], fields=["n:string(0)"], kind="Polygon")
    pdf, _ = sheets(STANDPOINTS=points, ZONES=zones, CLOSED=closed, CLOSED_NAME="n")
    east, west = (" ".join(page.split()) for page in pdf.pages if "Places" in page)
    assert "1 : 12,500" in east
    assert "1 : 12,500" in west
    whole = " ".join(pdf.text.split("Sheet 2 of 2")[0].split())
    assert "Zones 1 in all INSIDE" in whole
    assert pdf.text.count("INSIDE closed ground (Moor): Zones 1 in all") == 1  # the western zone lies outside
    lines = re.findall(r"P1 East Track S1 Stone 180\.0°", pdf.text)
    assert len(lines) == 1


def test_a_standpoint_with_alignments_has_one_line(sheets, planned, layer):
    given = planned()
    row = next(given["SIGHTLINES"].getFeatures())
    values = {name: row[name] for name in ("camera", "subject", "bearing_deg", "mag_deg", "dist_m")}
    fields = [f"{name}:{KINDS[FIELDS[name].kind]}" for name in STANDPOINTS_FIELDS]
    points = layer([("Point(-33 36.01)", *(values.get(name) for name in STANDPOINTS_FIELDS))], fields=fields, kind="Point")
    pdf, _ = sheets(**given, STANDPOINTS=points)
    assert len(re.findall(r"C1 Meadow S1 Stone 180\.0°", pdf.text)) == 1


def test_sheets_by_night_and_one_for_all(sheets, planned):
    given = planned(cameras=((MEADOW, "Meadow"), ((-33.002, 36.012), "Ridge")))
    pdf, log = sheets(**given, SHEET_BY="night")
    assert "2 sheets" in log
    assert "2027-06-05 · Night of 2027-06-05" in pdf.pages[0]
    assert "Meadow: Milky Way core over" in pdf.text
    assert "1 sheets" in sheets(**given, SHEET_BY="")[1]


def test_names_that_do_not_match_are_told(sheets, planned):
    given = planned()
    _, log = sheets(**{**given, "CAMERA_NAME": None})
    assert "Rows that belong to no sheet: 2 of ALIGNMENTS, 1 of SIGHTLINES. Cameras are known by their names" in log


def test_each_a_file_and_pictures(run, planned, tmp_path):
    given = planned(cameras=((MEADOW, "Meadow"), ((-33.002, 36.012), "Ridge/../../x")))
    folders = {"FOLDER": str(tmp_path / "each"), "PICTURES": str(tmp_path / "png")}
    (tmp_path / "each").mkdir()
    run("site_map", {**given, **folders, "OUTPUT": str(tmp_path / "each" / "all.pdf")})
    assert sorted(path.name for path in (tmp_path / "each").iterdir()) == ["all.pdf", "sheet-001-meadow.pdf", "sheet-002-ridge-x.pdf"]
    assert len(Pdf(tmp_path / "each" / "all.pdf").pages) == 4
    assert len(Pdf(tmp_path / "each" / "sheet-001-meadow.pdf").pages) == 2
    pictures = sorted(path.name for path in (tmp_path / "png").iterdir())
    assert pictures == ["sheet-001-meadow-1.png", "sheet-001-meadow-2.png", "sheet-002-ridge-x-1.png", "sheet-002-ridge-x-2.png"]
    assert all((tmp_path / "png" / name).read_bytes().startswith(b"\x89PNG") for name in pictures)


def test_background_is_the_project_s_without_what_is_given(sheets, planned, layer):
    given = planned()
    woods = layer([(square(*MEADOW, 0.002),)], kind="Polygon")
    woods.setName("woods")
    project = QgsProject.instance()
    project.addMapLayers([woods.clone(), given["CAMERAS"]])
    try:
        assert "Background woods" in sheets(**given)[0].text
        assert "Background none" in sheets(**given, BACKGROUND=False)[0].text
    finally:
        project.removeMapLayers([own.id() for own in project.mapLayers().values() if own.name() == "woods"])
        project.takeMapLayer(given["CAMERAS"])


@pytest.fixture
def ground_of_project(layer):
    """Layers of the project, with names as labels."""
    woods = layer([(square(*MEADOW, 0.01), "Wood")], fields=["name:string(0)"], kind="Polygon")
    villages = layer([("Point(-33.002 36.006)", "Village")], fields=["name:string(0)"], kind="Point")
    for own in (woods, villages):
        settings = QgsPalLayerSettings()
        settings.fieldName = "name"
        own.setLabeling(QgsVectorLayerSimpleLabeling(settings))
        own.setLabelsEnabled(True)
    copies = [own.clone() for own in (villages, woods)]
    QgsProject.instance().addMapLayers(copies)
    yield copies
    QgsProject.instance().removeMapLayers([own.id() for own in copies])


@pytest.mark.parametrize("crs", ["EPSG:4326", "EPSG:3857"])
def test_labels_stay_text_over_layers_with_opacity(sheets, planned, ground_of_project, crs):
    QgsProject.instance().setCrs(QgsCoordinateReferenceSystem(crs))
    ground_of_project[1].setOpacity(0.5)
    pdf, _ = sheets(**planned())
    assert pdf.images(0) > 0
    assert all(len(pdf.on_map(word)) == 1 for word in ("C1", "Meadow", "Stone", "Village"))


def test_own_labels_stay_text_over_layers_that_blend(sheets, planned, ground_of_project):
    ground_of_project[1].setBlendMode(QPainter.CompositionMode.CompositionMode_Multiply)
    pdf, _ = sheets(**planned())
    assert all(len(pdf.on_map(word)) == 1 for word in ("C1", "Meadow", "Stone"))
    assert pdf.on_map("Village") == []  # part of the image of the ground


def test_nothing_of_a_map_is_drawn_beyond_its_frame(run, planned, ground_of_project, tmp_path):
    """The wood is larger than the map: the paper about the frame is white."""
    run("site_map", {**planned(), "OUTPUT": str(tmp_path / "x.pdf"), "PICTURES": str(tmp_path / "png")})
    image = QImage(str(next((tmp_path / "png").glob("*-1.png"))))
    dots = image.width() / 210.0
    middle = int((297.0 - sum(MAP_A4_MM[1::2]) / 2.0) * dots)
    assert image.pixelColor(int((MAP_A4_MM[2] + 1.5) * dots), middle).lightness() > 250
    assert image.pixelColor(int((MAP_A4_MM[2] - 1.5) * dots), middle).lightness() < 250


def test_cancelled_while_a_map_is_drawn(algorithm, context, planned, layer, tmp_path):
    """A background that takes far longer: stopped soon after the wish, and nothing is written."""
    slow = layer([(square(*MEADOW, 1e-4 * (i + 1)),) for i in range(4000)], kind="Polygon")
    symbol = QgsFillSymbol.createSimple({})
    effort = "1 + 0 * array_length(array_foreach(generate_series(1, 2000), @element * 2))"
    symbol.symbolLayer(0).setDataDefinedProperty(QgsSymbolLayer.Property.PropertyStrokeWidth, QgsProperty.fromExpression(effort))
    slow.setRenderer(QgsSingleSymbolRenderer(symbol))
    given, file, feedback = planned(), tmp_path / "sheets.pdf", QgsProcessingFeedback(False)
    copy = slow.clone()
    QgsProject.instance().addMapLayer(copy)
    wished = []
    timer = threading.Timer(1.5, lambda: (wished.append(time.process_time()), feedback.cancel()))
    timer.start()
    try:
        algorithm("site_map").run({**given, "OUTPUT": str(file)}, context, feedback, {}, False)
    finally:
        timer.cancel()
        QgsProject.instance().removeMapLayer(copy.id())
    assert wished, "it was over before it could be cancelled"
    # of the processor, which others on a busy machine do not lengthen: 0.2 to 0.4 s, of 44 s that the page takes
    assert time.process_time() - wished[0] < 3.0
    assert list(tmp_path.iterdir()) == []


# templates


def test_a_template_of_one_s_own(sheets, planned, tmp_path):
    own = tmp_path / "own.qpt"
    text = (LAYOUTS / "site_map_letter_landscape.qpt").read_text(encoding="utf-8")
    own.write_text(text.replace("[% @sheet_count %]", "Own words: [% @sheet_count %]"), encoding="utf-8")
    pdf, _ = sheets(**planned(), TEMPLATE=str(own))
    assert "Own words: Sheet 1 of 1" in pdf.pages[0]
    assert pdf.sizes_mm[0] == (279.4, 215.9)


def test_a_template_in_other_units_and_turned(sheets, planned, tmp_path):
    """Sizes in centimetres, the map turned: the map is upright and as large as its frame all the same."""
    own = tmp_path / "own.qpt"
    text = (LAYOUTS / "site_map_a4_portrait.qpt").read_text(encoding="utf-8")
    in_cm = re.sub(r'size="([\d.]+),([\d.]+),mm"', lambda found: f'size="{float(found[1]) / 10},{float(found[2]) / 10},cm"', text)
    assert in_cm != text
    assert in_cm.count('mapRotation="0"') == 2
    own.write_text(in_cm.replace('mapRotation="0"', 'mapRotation="30"'), encoding="utf-8")
    pdf, _ = sheets(**planned(), SCALE=10_000, TEMPLATE=str(own))
    assert grid_on_paper(pdf, 200) == pytest.approx(20.0, abs=0.15)
    assert_nothing_cut_or_covered(pdf)


def test_a_sheet_that_is_a_little_too_long_keeps_to_one_page(sheets, named):
    pdf, _ = sheets(CAMERAS=named((MEADOW, "Meadow")), CAMERA_NAME="name")
    assert len(pdf.pages) == 1
    assert "their word stands." in pdf.text
    assert_nothing_cut_or_covered(pdf)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ('id="body_continued"', 'id="other"', "has no item with the id body_continued"),
        ('id="map"', 'id="other"', "has no item with the id map"),
        ("[% @sheet_notice %]", "approved!", "must show [% @sheet_notice %] in a label on both pages: no sheet goes without it."),
        ("<Layout ", "<Composer ", "is no layout template of QGIS"),
    ],
)
def test_templates_that_will_not_do(refusal, planned, tmp_path, old, new, sentence):
    own = tmp_path / "own.qpt"
    text = (LAYOUTS / "site_map_a4_portrait.qpt").read_text(encoding="utf-8")
    assert old in text
    own.write_text(text.replace(old, new), encoding="utf-8")
    assert sentence in refusal("site_map", {**planned(), "TEMPLATE": str(own), "OUTPUT": str(tmp_path / "x.pdf")})


def test_a_template_is_not_written_over(refusal, planned, tmp_path):
    own = tmp_path / "own.qpt"
    shutil.copy(LAYOUTS / "site_map_a4_portrait.qpt", own)
    sentence = refusal("site_map", {**planned(), "TEMPLATE": str(own), "OUTPUT": str(own)})
    assert sentence == f"OUTPUT: {own} is the TEMPLATE, which would be lost. Choose another name."


def test_no_template_there(refusal, planned, tmp_path):
    sentence = refusal("site_map", {**planned(), "TEMPLATE": "/no/such.qpt", "OUTPUT": str(tmp_path / "x.pdf")})
    assert "TEMPLATE: /no/such.qpt cannot be read: No such file or directory." in sentence


# refusals


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"OUTPUT": "/no/such/folder/x.pdf"}, "OUTPUT: The folder /no/such/folder does not exist."),
        ({"FOLDER": "/no/such/folder"}, "FOLDER: The folder /no/such does not exist."),
        ({"TIME_ZONE": "Europe/Atlantis"}, "TIME_ZONE: There is no time zone"),
        ({"SHEET_BY": "colour"}, "SHEET_BY: none of CAMERAS, ALIGNMENTS, SIGHTLINES, SUBJECTS has a field 'colour'."),
        ({"SCALE": 10}, "SCALE is 10. Give a number from 100 to 500000."),
        ({"PAPER": "a0"}, "PAPER: 'a0' is not known. Choose from: a4, letter."),
        ({"WALK_SPEED": 0}, "WALK_SPEED is 0."),
        ({"CAMERA_NAME": "nickname"}, "CAMERA_NAME: CAMERAS has no field 'nickname'"),
    ],
)
def test_refusals(refusal, planned, tmp_path, asked, sentence):
    assert sentence in refusal("site_map", {**planned(), "OUTPUT": str(tmp_path / "x.pdf"), **asked})


@pytest.mark.parametrize("name", ["OUTPUT", "FOLDER", "PICTURES"])
def test_a_folder_that_may_not_be_written_to(refusal, planned, tmp_path, monkeypatch, name):
    monkeypatch.setattr("skyalidade.adapters.sinks.os.access", lambda path, mode: "locked" not in str(path))  # as for anybody but root
    (tmp_path / "locked").mkdir()
    asked = {"OUTPUT": str(tmp_path / "x.pdf"), name: str(tmp_path / "locked" / "x.pdf")}
    assert f"{name}: The folder {tmp_path / 'locked'} may not be written to." in refusal("site_map", {**planned(), **asked})


def test_nothing_given(refusal, tmp_path):
    assert "There is nothing to make a sheet of. Give CAMERAS, ALIGNMENTS" in refusal("site_map", {"OUTPUT": str(tmp_path / "x.pdf")})


def test_layers_of_other_kinds(refusal, planned, named, tmp_path):
    points, out = named((MEADOW, "Meadow")), {"OUTPUT": str(tmp_path / "x.pdf")}
    given = planned()
    assert "PATHS: 'points' holds Point, not lines" in refusal("site_map", {**given, **out, "PATHS": points})
    assert "CLOSED: 'points' holds Point, not polygons" in refusal("site_map", {**given, **out, "CLOSED": points})
    assert "STANDPOINTS: 'points' has no field camera, subject" in refusal("site_map", {**given, **out, "STANDPOINTS": points})
    assert "ALIGNMENTS: 'points' has no field" in refusal("site_map", {**given, **out, "ALIGNMENTS": points})
    lines = given["SIGHTLINES"]
    assert "CAMERAS: 'OUTPUT' holds MultiLineString, not points" in refusal("site_map", {**given, **out, "CAMERAS": lines}).replace(
        lines.name(), "OUTPUT"
    )


def test_no_place_at_all(sheets, layer):
    empty = layer([], fields=["name:string(0)"], kind="Point")
    with pytest.raises(QgsProcessingException, match="There is no place to draw"):
        sheets(CAMERAS=empty)


def test_too_many_sheets(sheets, named):
    many = named(*((MEADOW, f"Place {number}") for number in range(4)))
    with pytest.raises(QgsProcessingException, match=r"This asks for 4 sheets, over MAX_PICTURES \(3\)"):
        sheets(CAMERAS=many, CAMERA_NAME="name", MAX_PICTURES=3)


# whole or not at all


def test_a_disk_that_fails_leaves_what_was_there(run, planned, tmp_path, monkeypatch):
    file = tmp_path / "sheets.pdf"
    file.write_text("before")

    def fail(*paths):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("skyalidade.adapters.files.os.replace", fail)
    with pytest.raises(QgsProcessingException, match=r"sheets.pdf could not be written: No space left on device"):
        run("site_map", {**planned(), "OUTPUT": str(file)})
    assert [path.name for path in tmp_path.iterdir()] == ["sheets.pdf"]
    assert file.read_text() == "before"


def test_a_folder_that_goes_away(run, planned, tmp_path, monkeypatch):
    folder = tmp_path / "gone"
    folder.mkdir()
    given = planned()
    from skyalidade.adapters import sheet_sites

    before = sheet_sites.Sites.site

    def site(self, index):
        shutil.rmtree(folder)
        return before(self, index)

    monkeypatch.setattr(sheet_sites.Sites, "site", site)
    with pytest.raises(QgsProcessingException, match=r"sheets.pdf could not be written"):
        run("site_map", {**given, "OUTPUT": str(folder / "sheets.pdf")})


def test_cancelled(sheets, named, tmp_path):
    many = named(*((MEADOW, f"Place {number}") for number in range(8)))
    pdf, log = sheets(cancel_at=30, CAMERAS=many, CAMERA_NAME="name")
    assert pdf is None
    assert "Cancelled: nothing was written" in log
    assert list(tmp_path.iterdir()) == []


def test_on_the_command_line(qgis_process, run, layer, tmp_path):
    cameras = layer([("Point(-33 36.01)",)], kind="Point")
    subjects = layer([("Point(-33 36)",)], kind="Point")
    lines = tmp_path / "lines.gpkg"
    run("sightlines", {"CAMERAS": cameras, "SUBJECTS": subjects, "OUTPUT": str(lines)})
    file = tmp_path / "sheet.pdf"
    done = qgis_process("site_map", f"SIGHTLINES={lines}", "TITLE=By command", f"OUTPUT={file}")
    assert done.returncode == 0, done.stderr
    assert "By command" in Pdf(file).pages[0]
    assert "1 sheets on" in done.stdout
