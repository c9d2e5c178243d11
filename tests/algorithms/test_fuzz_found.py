"""What hostile runs found, each as an example: values that ended in an error of Python, in memory without end or in a wrong number."""

import numpy as np
import pytest
from qgis.core import QgsProcessingException

CAMERA, SUBJECT = "PointZ(-33 36 10)", "PointZ(-33 35.99 30)"


@pytest.fixture
def pair(layer):
    return {"CAMERAS": layer([(CAMERA,)]), "SUBJECTS": layer([(SUBJECT,)])}


@pytest.mark.parametrize("value", [10**400, -(10**400), str(10**400)], ids=["large", "large below 0", "text"])
def test_whole_number_beyond_all_decimals(refusal, pair, value):
    assert "CAMERA_HEIGHT is " in refusal("sightlines", {**pair, "CAMERA_HEIGHT": value})


@pytest.mark.parametrize("bodies", [["core", "moon"], "core,moon"], ids=["list", "text"])
def test_several_bodies_where_one_is_wanted(refusal, layer, bodies):
    sentence = refusal("night_windows", {"SITES": layer([(CAMERA,)]), "BODY": bodies})
    assert sentence.startswith("BODY: 'core, moon' are several. Choose one of: core, arch, sun")


YEARS = {"START": "2030-01-01T00:00Z", "END": "2049-12-31T00:00Z"}


@pytest.mark.parametrize("step_min", [5e-324, 1e-9, 0.1])
def test_times_without_number_are_refused_before_they_fill_the_memory(run, layer, step_min):
    with pytest.raises(QgsProcessingException, match=r"times lie a STEP of .* min apart .*, over 20,000,000. Give a longer STEP."):
        run("sky_positions", {"SITES": layer([(CAMERA,)]), **YEARS, "STEP": step_min})


@pytest.mark.parametrize("step_min", [5e-324, 1e-9, 0.01])
def test_moments_of_nights_without_number(run, layer, step_min):
    paths = layer([("LineString(-33.02 36.005, -32.98 36.01)",)], kind="LineString")
    asked = {"BODY": "core", "FIRST_NIGHT": "2030-01-01", "LAST_NIGHT": "2049-12-31", "STEP": step_min, "POINTS": "memory:"}
    with pytest.raises(QgsProcessingException, match=r"subjects and times would have to be looked at, a STEP of .* min apart"):
        run("standpoints", {"SUBJECTS": layer([(SUBJECT,)]), "PATHS": paths, **asked})


@pytest.mark.parametrize("step_deg", [5e-324, 1e-9])
def test_azimuths_without_number(refusal, layer, tmp_path, step_deg):
    import elevation_models as dem

    model = dem.write(tmp_path / "flat.tif", np.zeros((9, 9)), (-33.005, 0.001, 0.0, 36.005, 0.0, -0.001), "EPSG:4326")
    sentence = refusal("terrain_horizon", {"SITES": layer([(CAMERA,)]), "DEM": model, "AZ_STEP": step_deg})
    assert sentence == f"AZ_STEP is {step_deg:g}: too many azimuths to be held. Give 0.0001 or more, such as 1."


@pytest.mark.parametrize("focal_mm", [20_000, 5e8, 1e300])
def test_a_lens_so_long_that_its_panoramas_have_no_end(refusal, pair, focal_mm):
    sentence = refusal("framing", {**pair, "FOCAL_MM": focal_mm})
    assert sentence.startswith(f"FOCAL_MM is {focal_mm:g}: the frame would be ")


def test_a_page_is_not_put_in_the_place_of_a_device(refusal, layer):
    """As root a rename would have replaced it for every program of the computer."""
    fields = ["camera:string", "subject:string", "body:string", "t_utc:datetime"]
    fields += [f"{name}:double" for name in ("az_deg", "alt_deg", "bearing_deg", "dist_m")]
    sentence = refusal("field_plan", {"ALIGNMENTS": layer([], fields=fields), "HTML": "/dev/null", "OUTPUT": None})
    assert sentence == "HTML: /dev/null is a device, not a file. Choose another name."


def test_a_file_whose_name_is_no_text(tmp_path):
    """Names on Linux are bytes; what is no UTF-8 among them reaches Python as lone surrogates."""
    from skyalidade.adapters.files import write_whole

    page = tmp_path / "plan\udcff.html"
    write_whole(page, b"new")
    assert page.read_bytes() == b"new"


def test_skylines_beyond_what_a_course_can_tell(refusal, layer, tmp_path):
    """At 10 000 km the ways over the model were so far from the geodesics that near skylines were wrong by 5°."""
    import elevation_models as dem

    model = dem.write(tmp_path / "flat.tif", np.zeros((9, 9)), (-33.005, 0.001, 0.0, 36.005, 0.0, -0.001), "EPSG:4326")
    sentence = refusal("terrain_horizon", {"SITES": layer([(CAMERA,)]), "DEM": model, "TERRAIN_RADIUS": 1e7})
    assert sentence == "TERRAIN_RADIUS is 1e+07. Give a number from 0 to 300000."
