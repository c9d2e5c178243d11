"""`skyline_view` in QGIS: declaration, refusals, and folders of pictures that hold what they should."""

import re
from pathlib import Path

import elevation_models as dem
import pytest
from matplotlib.image import imread
from qgis.core import QgsProcessingException

from skyalidade.charts import sheets
from skyalidade.names import THEMES as THEME_NAMES

CAMERA, SUBJECT = "PointZ(-33 36.01 100)", "PointZ(-33 36 105)"
START = "2027-06-06T03:30:00Z"


@pytest.fixture
def given(layer, tmp_path):
    """Parameters of a run, and some of them changed."""

    def parameters(cameras=(CAMERA,), **changed):
        layers = {"CAMERAS": layer([(wkt,) for wkt in cameras]), "SUBJECTS": layer([(SUBJECT,)])}
        return {**layers, "SUBJECT_HEIGHT": 60, "SUBJECT_WIDTH": 30, "START": START, "FOLDER": str(tmp_path / "views"), **changed}

    return parameters


@pytest.fixture
def drawn(run, given):
    """A run, and its folder."""

    def outcome(cancel_at=None, **changed):
        parameters = given(**changed)
        out = run("skyline_view", parameters, cancel_at)
        return out, Path(parameters["FOLDER"])

    return outcome


def texts(path):
    return re.findall(r"<text[^>]*>([^<]*)</text>", path.read_text(encoding="utf-8"))


def test_parameters_in_order(algorithm):
    made = algorithm("skyline_view")
    assert [definition.name() for definition in made.parameterDefinitions()] == [
        *("CAMERAS", "SUBJECTS", "DEM", "DEM_BAND", "BODY", "STAR", "GALACTIC_LON", "START", "END", "STEP", "TIME_ZONE"),
        *("PRESET", "FOCAL_MM", "ORIENTATION", "SENSOR_W_MM", "SENSOR_H_MM", "PIXELS_W", "AIM", "LEVEL", "THEME", "WAY"),
        *("CAMERA_NAME", "SUBJECT_NAME", "CAMERA_HEIGHT", "SUBJECT_HEIGHT", "SUBJECT_BASE", "SUBJECT_WIDTH", "FACE_FROM", "FACE_TO"),
        *("PAIRING", "PAIR_FIELD", "PAIR_FIELD_SUBJECT", "MAX_DISTANCE", "TERRAIN_RADIUS", "SKIP_NEAR", "DEM_ACCURACY", "REFRACTION_K"),
        *("PRESSURE", "TEMPERATURE", "MAX_PICTURES", "FOLDER"),
    ]
    assert [output.name() for output in made.outputDefinitions()] == ["FOLDER", "HTML", "PICTURES"]


def test_a_picture_of_each_camera_and_time(drawn):
    out, folder = drawn(cameras=(CAMERA, "PointZ(-33.002 36.01 100)"), END="2027-06-06T04:30:00Z", STEP=30)
    assert "6 pictures in" in out.log
    stems = sorted(path.stem for path in folder.glob("*.png"))
    assert stems == sorted(path.stem for path in folder.glob("*.svg"))
    assert stems == [
        *("001-camera-1-2027-06-06-0130", "002-camera-1-2027-06-06-0200", "003-camera-1-2027-06-06-0230"),
        *("004-camera-2-2027-06-06-0130", "005-camera-2-2027-06-06-0200", "006-camera-2-2027-06-06-0230"),
    ]
    page = (folder / "index.html").read_text(encoding="utf-8")
    for stem in stems:
        assert f'<img src="{stem}.png"' in page
    assert "http" not in page  # nothing from elsewhere
    assert "<script" not in page
    assert "Never look at the Sun" in page


def test_what_a_picture_tells(drawn):
    """Place, time with zone, body, bearing, lens, and that no ground was looked at."""
    _, folder = drawn()
    told = texts(next(folder.glob("*.svg")))
    assert "camera 1, 2027-06-06 01:30:00 -02:00 (UTC-02:00)" in told
    lines = "\n".join(told)
    assert "36.01000° N, 33.00000° W: the core at azimuth 186.7°, altitude 24.7°" in lines
    assert re.search(r"subject 1 bears 180\.0° at 1,1\d\d m\. 24 mm, 36 x 24 mm \(landscape\), aimed at azimuth .*: all fits\.", lines)
    assert "No elevation model here: the horizon is level" in lines
    assert {"S", "180°", "0°", "01:00", "02:00", "core", "subject 1"} <= set(told)


def test_ground_and_its_cells_are_told(drawn, tmp_path):
    ground = dem.write(tmp_path / "dem.tif", *dem.around(lambda east, north: 100.0 + 0.0 * east, 20_000, 100))
    out, folder = drawn(DEM=ground)
    lines = "\n".join(texts(next(folder.glob("*.svg"))))
    assert re.search(r"Terrain: 'dem', cells of 100 m, known to \d+\.\d km", lines)
    assert "Elevation data have errors" in out.log


def test_size_follows_the_camera(drawn):
    for orientation, taller in (("landscape", False), ("portrait", True)):
        _, folder = drawn(ORIENTATION=orientation)
        height, width = imread(next(folder.glob("*.png"))).shape[:2]
        assert (height > width) is taller


def test_night_theme_is_red_on_black(drawn):
    _, folder = drawn(THEME="night")
    image = imread(next(folder.glob("*.png")))[..., :3]
    assert image[..., 1:].max() < 0.2
    assert "#000000" in (folder / "index.html").read_text(encoding="utf-8")
    assert set(THEME_NAMES) == {"print", "night"}


def test_cancelled_after_a_picture(drawn):
    out, folder = drawn(cancel_at=10.0, END="2027-06-06T05:30:00Z", STEP=10)
    count = len(list(folder.glob("*.png")))
    assert 0 < count < 13
    assert out.feedback.said[-1] == f"Cancelled: {count} of 13 pictures drawn."
    assert (folder / "index.html").is_file()


def test_no_pair_no_picture(drawn):
    out, _ = drawn(MAX_DISTANCE=10)
    assert "No pictures: 1 farther apart than MAX_DISTANCE." in out.log


def test_more_pictures_than_allowed(drawn):
    cameras = [f"PointZ(-33 {36.01 + i / 1e5} 100)" for i in range(3000)]
    with pytest.raises(QgsProcessingException, match=r"up to 3,000 pictures \(cameras: 3,000\), more than MAX_PICTURES \(100\)"):
        drawn(cameras=cameras)


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"START": None}, "START is blank"),
        ({"START": "2061-03-04T00:00Z"}, "lies after the ephemeris"),
        ({"END": "2027-06-05T00:00Z"}, "Exchange them"),
        ({"STEP": 0}, "STEP is 0"),
        ({"FOCAL_MM": 0}, "FOCAL_MM is 0. Give a number greater than 0, such as 24."),
        ({"SENSOR_W_MM": -1}, "SENSOR_W_MM is -1. Give a number"),
        ({"PIXELS_W": 0}, "PIXELS_W is 0"),
        ({"THEME": "neon"}, "THEME: 'neon' is not known"),
        ({"FOLDER": "/no/such/place/views"}, "The folder /no/such/place does not exist"),
        ({"DEM": "/no/such/dem.tif"}, "DEM"),
        ({"BODY": "galactic"}, "BODY holds galactic"),
    ],
)
def test_refusals(refusal, given, changed, sentence):
    assert sentence in refusal("skyline_view", given(**changed))


def test_without_matplotlib(refusal, given, monkeypatch):
    monkeypatch.setattr(sheets, "find_spec", lambda name: None)
    assert refusal("skyline_view", given()) == sheets.MISSING


def test_a_folder_that_is_there_is_added_to(drawn, tmp_path):
    (tmp_path / "views").mkdir()
    (tmp_path / "views" / "mine.txt").write_text("kept")
    _, folder = drawn()
    assert (folder / "mine.txt").read_text() == "kept"
    assert len(list(folder.glob("*.png"))) == 1
