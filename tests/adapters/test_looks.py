"""Styles load, cover what the results hold, and are found again in the file."""

import gc
import re
import sqlite3
from contextlib import closing
from xml.etree import ElementTree

import pytest
from qgis.core import (
    Qgis,
    QgsCoordinateReferenceSystem,
    QgsDateTimeRange,
    QgsExpression,
    QgsExpressionContext,
    QgsExpressionContextUtils,
    QgsFeature,
    QgsFeatureRequest,
    QgsFeatureSink,
    QgsGeometry,
    QgsMapRendererSequentialJob,
    QgsMapSettings,
    QgsPalLayerSettings,
    QgsProcessingContext,
    QgsProcessingFeedback,
    QgsProcessingUtils,
    QgsProject,
    QgsRectangle,
    QgsVectorLayer,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QDate, QDateTime, QSize
from qgis.PyQt.QtGui import QColor

from skyalidade import names
from skyalidade.adapters import looks
from skyalidade.adapters.fields import qgs_fields

LINE, POINT, POLYGON = QgsWkbTypes.Type.MultiLineString, QgsWkbTypes.Type.Point, QgsWkbTypes.Type.MultiPolygon
RESULTS = {
    "sightlines": (names.SIGHTLINES_FIELDS, LINE),
    "alignments": (names.ALIGNMENTS_FIELDS, LINE),
    "unmet": (names.UNMET_FIELDS, POINT),
    "sky_positions": (names.SKY_POSITIONS_FIELDS, POINT),
    "terrain_horizon": (names.PROFILE_FIELDS, POINT),
    "skyline": (names.SKYLINE_FIELDS, POLYGON),
    "standpoints": (names.STANDPOINTS_FIELDS, POINT),
    "stretches": (names.STRETCHES_FIELDS, LINE),
    "zones": (names.ZONES_FIELDS, POLYGON),
    "night_windows": (names.NIGHT_WINDOWS_FIELDS, POINT),
    "windows": (names.WINDOWS_FIELDS, POINT),
    "months": (names.MONTHS_FIELDS, POINT),
    "framing": (names.FRAMING_FIELDS, POLYGON),
    "heads": (names.HEADS_FIELDS, POINT),
    "shadow_track": (names.SHADOW_TRACK_FIELDS, POINT),
    "track_lines": (names.TRACK_LINES_FIELDS, LINE),
}
RASTER = "sky_exposure"  # told with its algorithm
OF_BODIES = ["alignments", "unmet", "sky_positions"]
INK, CORE, SUN, MOON, SKYLINE, STAND = "#222222", "#CC79A7", "#D55E00", "#009E73", "#F0E442", "#0072B2"
MAIN_COLOUR = {  # the core's for the others
    **dict.fromkeys(("sightlines", "framing", "heads", "months"), INK),
    "terrain_horizon": SKYLINE,
    "skyline": SKYLINE,
    **dict.fromkeys(("standpoints", "stretches", "zones", "shadow_track", "track_lines"), STAND),
}
OF_ONE_SYMBOL = ("terrain_horizon", "skyline", "heads", "windows", "months")
TIMELESS = ("sightlines", "unmet", "framing", "terrain_horizon", "skyline", "heads", "months")
OKABE_ITO = {"#000000", "#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7"}
UTM = "EPSG:32625"
ROW = {
    "camera": "West Bench Gate",
    "camera_id": 3,
    "subject": "Drovane Light",
    "subject_id": 1,
    "site": "West Bench Gate",
    "site_id": 3,
    "body": "core",
    "night": QDate(2027, 6, 5),
    "t_utc": QDateTime(2027, 6, 6, 1, 41, 59),
    "t_local": "2027-06-05 23:41:59 -02:00",
    "t_start": QDateTime(2027, 6, 6, 1, 30, 0),
    "t_end": QDateTime(2027, 6, 6, 1, 50, 0),
    "minutes": 20.0,
    "az_deg": 182.42,
    "alt_deg": 21.34,
    "bearing_deg": 182.38,
    "dist_m": 1240.4,
    "ground_deg": 12.345,
    "focal_mm": 24.0,
    "fits": True,
    "fit_mm": 49.96,
    "pano_row": 2,
    "pano_col": 3,
    "head_az": 359.96,
    "head_alt": 38.71,
    "reason": "Bearing 182.4° is never reached.",
    "path": "Rim Path",
    "chain_m": 412.6,
    "from_m": 402.1,
    "to_m": 431.4,
    "order": 1,
    "start_loc": "2027-06-05 23:30:00 -02:00",
    "end_loc": "2027-06-05 23:50:00 -02:00",
    "target_deg": 182.38,
}
ALONG = {
    LINE: "MultiLineString((500000 3985000, 500000 3983760))",
    POINT: "Point(500000 3985000)",
    POLYGON: "MultiPolygon(((499000 3984000, 501000 3984000, 500000 3986000, 499000 3984000)))",
}


class Feedback(QgsProcessingFeedback):
    def __init__(self):
        super().__init__(False)
        self.warnings = []

    def pushWarning(self, text):  # noqa: N802  QGIS's name
        self.warnings.append(text)


def written(destination, look, rows, context, crs=UTM, wkt=None):
    """Write rows as an algorithm does; the id of the layer."""
    field_names, wkb_type = RESULTS[look]
    fields = qgs_fields(field_names)
    sink, layer_id = QgsProcessingUtils.createFeatureSink(destination, context, fields, wkb_type, QgsCoordinateReferenceSystem(crs))
    for row in rows:
        feature = QgsFeature(fields)
        feature.setAttributes([row.get(name) for name in field_names])
        feature.setGeometry(QgsGeometry.fromWkt(wkt or ALONG[wkb_type]))
        assert sink.addFeature(feature, QgsFeatureSink.Flag.FastInsert)
    return layer_id  # the sink is closed here, with its last reference


def file_of(path, look, rows=(ROW,), **where):
    return written(str(path), look, rows, QgsProcessingContext(), **where)


@pytest.fixture
def context(qgis_app):
    return QgsProcessingContext()


@pytest.fixture
def dressed(context):
    """A temporary layer in its look."""

    def layer(look, *changes, step_min=None, **where):
        rows = [{**ROW, **change} for change in changes or ({},)]
        made = context.temporaryLayerStore().mapLayer(written("memory:", look, rows, context, **where))
        looks.dress(made, look, step_min)
        return made

    return layer


def settings_of(layer, half_m=1600, crs=UTM, when=None):
    settings = QgsMapSettings()
    settings.setLayers([layer])
    settings.setDestinationCrs(QgsCoordinateReferenceSystem(crs))
    centre = layer.extent().center()
    settings.setExtent(QgsRectangle.fromCenterAndSize(centre, 2 * half_m, 2 * half_m))
    settings.setOutputSize(QSize(400, 400))
    settings.setOutputDpi(192)  # a thin line is then wider than the softened edge of a pixel
    settings.setBackgroundColor(QColor("white"))
    if when:
        settings.setIsTemporal(True)
        settings.setTemporalRange(QgsDateTimeRange(*when))
    context = QgsExpressionContext()
    context.appendScope(QgsExpressionContextUtils.globalScope())
    context.appendScope(QgsExpressionContextUtils.mapSettingsScope(settings))
    settings.setExpressionContext(context)
    return settings


def pixels(layer, colour, **how):
    """Where on the map, from its centre in pixels, right and down, a colour stands."""
    return spots(settings_of(layer, **how), colour)


def drawn(settings):
    """The map without labels."""
    (layer,) = settings.layers()
    layer.setLabelsEnabled(False)
    job = QgsMapRendererSequentialJob(settings)
    job.start()
    job.waitForFinished()
    layer.setLabelsEnabled(True)
    return job.renderedImage()


def spots(settings, colour):
    image, wanted = drawn(settings), QColor(colour).rgb()
    return [(x - 200, y - 200) for x in range(400) for y in range(400) if image.pixel(x, y) == wanted]


def ink(layer):
    """How much is drawn on the white map, in pixels of black; softened edges count as what they cover."""
    image = drawn(settings_of(layer))
    return sum(255 - QColor(image.pixel(x, y)).lightness() for x in range(400) for y in range(400)) / 255


def context_of(layer, **how):
    """What an expression meets while the layer is drawn, at its first row."""
    context = QgsExpressionContext(settings_of(layer, **how).expressionContext())
    context.appendScope(QgsExpressionContextUtils.layerScope(layer))
    context.setFields(layer.fields())
    context.setFeature(next(layer.getFeatures()))
    return context


def label(layer, **how):
    expression = QgsExpression(layer.labeling().settings().fieldName)
    return expression.evaluate(context_of(layer, **how))


def expressions(look):
    """Every expression of a style file."""
    root = ElementTree.parse(looks.STYLES / f"{look}.qml").getroot()
    for option in root.iter("Option"):
        if option.get("name") == "expression":
            yield option.get("value")
    for text in root.iter("text-style"):
        yield text.get("fieldName")


def test_every_style_belongs_to_a_result():
    assert {path.name for path in looks.STYLES.iterdir()} == {f"{look}.qml" for look in (*RESULTS, RASTER)}


@pytest.mark.parametrize("look", RESULTS)
def test_a_style_loads_without_complaint(look, dressed, qgis_app):
    complaints = []

    def heard(text, tag, level):
        complaints.append((tag, text))

    qgis_app.messageLog().messageReceived[str, str, Qgis.MessageLevel].connect(heard)
    try:
        layer = dressed(look)
        message, read = layer.loadNamedStyle(str(looks.STYLES / f"{look}.qml"), looks.PARTS)
        pixels(layer, INK)
    finally:
        qgis_app.messageLog().messageReceived[str, str, Qgis.MessageLevel].disconnect(heard)
    assert read, message
    assert complaints == []
    assert layer.renderer().type() == ("singleSymbol" if look in OF_ONE_SYMBOL else "categorizedSymbol")
    assert layer.labelsEnabled()


@pytest.mark.parametrize("look", RESULTS)
def test_expressions_hold_on_every_row_with_and_without_a_frame_of_time(look, dressed):
    layer = dressed(look)
    for how in ({}, {"when": (QDateTime(2027, 6, 6, 1, 40, 0), QDateTime(2027, 6, 6, 1, 50, 0))}):
        for text in expressions(look):
            expression, context = QgsExpression(text), context_of(layer, **how)
            assert expression.prepare(context), expression.parserErrorString()
            expression.evaluate(context)
            assert not expression.hasEvalError(), f"{text}: {expression.evalErrorString()}"
            assert expression.referencedColumns() - {QgsFeatureRequest.ALL_ATTRIBUTES} <= set(RESULTS[look][0])


@pytest.mark.parametrize("look", OF_BODIES)
def test_a_category_for_every_body(look, dressed):
    assert [category.value() for category in dressed(look).renderer().categories()] == list(names.BODIES)


def test_a_category_for_every_line_of_sight(dressed):
    assert [category.value() for category in dressed("sightlines").renderer().categories()] == ["clear", "uncertain", "hidden", ""]


@pytest.mark.parametrize("look", OF_BODIES)
@pytest.mark.parametrize(("body", "colour"), [("core", CORE), ("arch", CORE), ("galactic", CORE), ("sun", SUN), ("moon", MOON)])
def test_bodies_have_their_colours(look, body, colour, dressed):
    assert pixels(dressed(look, {"body": body}), colour)


@pytest.mark.parametrize("look", RESULTS)
def test_colours_are_grey_or_of_the_colour_blind_safe_set(look):
    texts = re.findall(r'k="(?:outline_|line_)?color" v="(\d+,\d+,\d+)', (looks.STYLES / f"{look}.qml").read_text(encoding="utf-8"))
    colours = [QColor(*map(int, text.split(","))) for text in texts]
    assert colours
    assert {colour.name() for colour in colours if colour.saturation()} <= OKABE_ITO


@pytest.mark.parametrize(("look", "colour"), [("sightlines", INK), ("alignments", CORE)])
def test_what_is_hidden_is_dashed_and_uncertain_lies_between(look, colour, dressed):
    clear, uncertain, hidden, untested = (dressed(look, {"sight": s}) for s in ("clear", "uncertain", "hidden", None))
    assert all(pixels(layer, colour) for layer in (clear, uncertain, hidden, untested))
    assert ink(clear) > ink(uncertain) > ink(hidden)
    assert ink(untested) == ink(clear)


@pytest.mark.parametrize("look", ["standpoints", "stretches", "zones", "shadow_track"])
def test_ground_that_is_not_allowed_is_grey(look, dressed):
    allowed, unknown, closed = ({"allowed": value} for value in (True, None, False))
    assert pixels(dressed(look, allowed), STAND)
    assert pixels(dressed(look, unknown), STAND)
    assert not pixels(dressed(look, closed), STAND)
    assert pixels(dressed(look, closed), "#6E6E6E")


def test_what_does_not_fit_is_dashed(dressed):
    whole, dashed = (len(pixels(dressed("framing", {"fits": fits}), INK)) for fits in (True, False))
    assert whole > dashed > 0


def test_dots_of_a_skyline_grow_with_its_altitude(dressed):
    low, middle, high = (len(pixels(dressed("terrain_horizon", {"ground_deg": deg}), SKYLINE)) for deg in (-3.0, 8.0, 40.0))
    assert 0 < low < middle < high


def test_bodies_over_one_subject_lie_side_by_side(dressed):
    layer = dressed("alignments", *({"body": body} for body in names.BODIES))
    for colour in (CORE, SUN, MOON, "#E69F00", "#56B4E9"):
        assert len(pixels(layer, colour)) > 100


@pytest.mark.parametrize(
    ("look", "change", "shown"),
    [
        ("sightlines", {}, "Drovane Light  182.4°  1,240 m"),
        ("sightlines", {"bearing_deg": 359.96}, "Drovane Light  0.0°  1,240 m"),
        ("alignments", {}, "core 182.4°  23:41\n2027-06-05"),
        ("alignments", {"body": "moon"}, "Moon 182.4°  23:41\n2027-06-05"),
        ("alignments", {"body": "galactic", "bearing_deg": 359.96}, "plane 0.0°  23:41\n2027-06-05"),
        ("unmet", {}, "Bearing 182.4° is never reached."),
        ("sky_positions", {}, "23:41"),
        ("terrain_horizon", {}, "12.3°"),
        ("skyline", {}, "skyline from West Bench Gate"),
        ("standpoints", {}, "Rim Path 413 m\nDrovane Light 182.4°\n2027-06-05 23:41"),
        ("standpoints", {"t_local": None, "bearing_deg": 359.96}, "Rim Path 413 m\nDrovane Light 0.0°"),
        ("stretches", {}, "402 to 431 m"),
        ("zones", {}, "Drovane Light 182.4° 23:41"),
        ("zones", {"t_local": None}, "Drovane Light 182.4°"),
        ("framing", {}, "Drovane Light  24 mm\nfits, up to 49 mm"),
        ("framing", {"fits": False, "focal_mm": 85.0}, "Drovane Light  85 mm\ndoes not fit, would at 49 mm"),
        ("framing", {"fits": False, "fit_mm": None}, "Drovane Light  24 mm\ndoes not fit"),
        ("heads", {}, "2/3  0.0°  38.7° up"),
        ("shadow_track", {}, "Drovane Light 23:41\n182.4° 1,240 m"),
        ("track_lines", {}, "Drovane Light 23:30 to 23:50"),
    ],
)
def test_labels(look, change, shown, dressed):
    assert label(dressed(look, change)) == shown


def test_a_frame_of_less_than_an_hour_tells_all_of_a_position(dressed):
    frame = QDateTime(2027, 6, 6, 1, 40, 0), QDateTime(2027, 6, 6, 1, 50, 0)
    assert label(dressed("sky_positions"), when=frame) == "core 182.4°\n21.3° up  23:41"


def test_over_many_nights_the_longest_stretch_is_labelled(dressed):
    layer = dressed("alignments", {"minutes": 20.0}, {"minutes": 31.0}, {"minutes": 25.0}, {"body": "sun", "minutes": 3.0})
    settings = layer.labeling().settings()  # held, since its properties live in it
    shown = QgsExpression(settings.dataDefinedProperties().property(QgsPalLayerSettings.Property.Show).expressionString())
    answers = {}
    for when in (None, (QDateTime(2027, 6, 5, 12, 0, 0), QDateTime(2027, 6, 6, 12, 0, 0))):
        context = context_of(layer, when=when)
        answers[when] = []
        for feature in layer.getFeatures():
            context.setFeature(feature)
            answers[when].append(bool(shown.evaluate(context)))
    assert list(answers.values()) == [[False, True, False, True], [True, True, True, True]]


@pytest.mark.parametrize(
    ("lon", "az_deg", "right", "down"),
    [(0, 0.0, 0, -1), (0, 90.0, 1, 0), (90, 0.0, -1, 0), (90, 90.0, 0, -1), (180, 0.0, 0, 1), (-90, 180.0, -1, 0)],
)
def test_directions_are_true_on_any_map(lon, az_deg, right, down, dressed):
    # the Arctic on a polar map (EPSG:3995: the pole in the middle, Greenwich downward), where true north points any way
    layer = dressed("sky_positions", {"az_deg": az_deg, "alt_deg": 0.0}, crs="EPSG:4326", wkt=f"Point({lon} 80)")
    settings = settings_of(layer, crs="EPSG:3995")
    centre = settings.layerToMapCoordinates(layer, layer.extent().center())
    settings.setExtent(QgsRectangle.fromCenterAndSize(centre, 2e5, 2e5))
    dot = spots(settings, CORE)
    reach = 12 / 25.4 * settings.outputDpi()
    x, y = (sum(values) / len(dot) for values in zip(*dot))
    assert (x / reach, y / reach) == pytest.approx((right, down), abs=0.05)


def test_a_body_below_the_horizon_is_not_on_the_dial(dressed):
    assert pixels(dressed("sky_positions", {"alt_deg": 0.5}), CORE)
    assert not pixels(dressed("sky_positions", {"alt_deg": -0.5}), CORE)


@pytest.mark.parametrize("look", RESULTS)
def test_aliases(look, dressed):
    layer = dressed(look)
    assert [layer.attributeAlias(i) for i in range(layer.fields().count())] == [names.FIELDS[name].alias for name in RESULTS[look][0]]


def test_only_what_has_times_is_temporal(dressed):
    stretches, instants = dressed("alignments").temporalProperties(), dressed("sky_positions", step_min=7.5).temporalProperties()
    assert stretches.isActive()
    assert stretches.mode() == Qgis.VectorTemporalMode.FeatureDateTimeStartAndEndFromFields
    assert (stretches.startField(), stretches.endField()) == ("t_start", "t_end")
    assert instants.isActive()
    assert instants.mode() == Qgis.VectorTemporalMode.FeatureDateTimeInstantFromField
    assert (instants.startField(), instants.fixedDuration()) == ("t_utc", 7.5)
    for look in TIMELESS:
        assert not dressed(look).temporalProperties().isActive()


@pytest.mark.parametrize(
    ("look", "minute", "seen"),
    [("alignments", 29, False), ("alignments", 31, True), ("alignments", 51, False)]
    + [("sky_positions", 40, False), ("sky_positions", 43, True), ("sky_positions", 48, True), ("sky_positions", 50, False)],
)
def test_the_temporal_controller_shows_what_holds(look, minute, seen, dressed):
    frame = QDateTime(2027, 6, 6, 1, minute, 0), QDateTime(2027, 6, 6, 1, minute, 30)
    assert bool(pixels(dressed(look, step_min=7.5), CORE, when=frame)) == seen


@pytest.mark.parametrize("look", RESULTS)
def test_a_geopackage_opened_later_has_its_look(look, context, tmp_path):
    feedback = Feedback()
    looks.finish(file_of(tmp_path / "result.gpkg", look), look, context, feedback, step_min=5)
    assert feedback.warnings == []
    layer = QgsVectorLayer(str(tmp_path / "result.gpkg"), "later", "ogr")
    layer.loadDefaultStyle()  # as the desktop does with every layer that is added
    assert layer.labelsEnabled()
    assert layer.labeling().settings().fieldName == list(expressions(look))[-1]
    aliases = [names.FIELDS[name].alias for name in RESULTS[look][0]]
    assert [layer.attributeAlias(layer.fields().indexOf(name)) for name in RESULTS[look][0]] == aliases
    assert layer.temporalProperties().isActive() == (look not in TIMELESS)
    assert pixels(layer, MAIN_COLOUR.get(look, CORE))


def styles_in(file):
    with closing(sqlite3.connect(file)) as connection:
        return connection.execute("SELECT f_table_name, styleName, useAsDefault FROM layer_styles ORDER BY id").fetchall()


def test_a_style_is_renewed_and_those_of_others_are_left_alone(context, tmp_path):
    file = tmp_path / "result.gpkg"
    layer_id = file_of(file, "alignments")
    layer = QgsVectorLayer(str(file), "other", "ogr")
    layer.saveStyleToDatabase("somebody's own", "", False, "")
    for _ in range(2):
        looks.finish(layer_id, "alignments", context, Feedback())
    assert styles_in(file) == [("result", "somebody's own", 0), ("result", "Sky Alidade", 1)]


def test_two_layers_of_one_database_keep_each_their_look(context, tmp_path):
    file = tmp_path / "results.gpkg"
    for table, look in (("lines", "sightlines"), ("sky", "sky_positions")):
        layer_id = written(f"ogr:dbname='{file}' table=\"{table}\" (geom)", look, [ROW], QgsProcessingContext())
        looks.finish(layer_id, look, context, Feedback())
    assert styles_in(file) == [("lines", "Sky Alidade", 1), ("sky", "Sky Alidade", 1)]


def test_a_database_that_takes_no_style_gives_a_warning(context, tmp_path):
    file = tmp_path / "result.gpkg"
    layer_id = file_of(file, "alignments")
    with closing(sqlite3.connect(file)) as connection:
        connection.execute("CREATE TABLE layer_styles (id INTEGER PRIMARY KEY, f_table_name TEXT)")  # not what QGIS expects
        connection.execute("CREATE TRIGGER full BEFORE INSERT ON layer_styles BEGIN SELECT RAISE(ABORT, 'no'); END")
        connection.commit()
    feedback = Feedback()
    looks.finish(layer_id, "alignments", context, feedback)
    assert [str(file) in warning and "could not be saved" in warning for warning in feedback.warnings] == [True]
    assert QgsVectorLayer(str(file), "later", "ogr").featureCount() == 1


@pytest.mark.parametrize("name", ["result.geojson", "result.shp", "result.csv", "result.fgb"])
def test_other_files_are_left_as_they_are(name, context, tmp_path):
    layer_id = file_of(tmp_path / name, "alignments")
    feedback = Feedback()
    looks.finish(layer_id, "alignments", context, feedback)
    assert feedback.warnings == []
    assert not list(tmp_path.glob("*.qml"))


def test_a_shapefile_keeps_aliases_by_ten_characters(context, tmp_path):
    layer = QgsVectorLayer(file_of(tmp_path / "result.shp", "sightlines"), "shp", "ogr")
    looks.dress(layer, "sightlines")
    assert layer.attributeAlias(layer.fields().indexOf("bearing_de")) == "Bearing, camera to subject [° true]"


def test_a_temporary_layer_is_dressed_where_it_lies(context):
    layer_id = written("memory:", "sky_positions", [ROW], context)
    looks.finish(layer_id, "sky_positions", context, Feedback(), step_min=5)
    layer = context.temporaryLayerStore().mapLayer(layer_id)
    assert layer.labelsEnabled()
    assert layer.temporalProperties().fixedDuration() == 5


@pytest.mark.parametrize("name", ["result.gpkg", "result.fgb"])
def test_a_file_is_dressed_when_the_desktop_loads_it(name, context, tmp_path):
    layer_id = file_of(tmp_path / name, "sky_positions")
    details = QgsProcessingContext.LayerDetails("Sky positions", QgsProject.instance(), "OUTPUT")
    context.addLayerToLoadOnCompletion(layer_id, details)
    looks.finish(layer_id, "sky_positions", context, Feedback(), step_min=5)
    gc.collect()  # QGIS holds no reference: what nobody else holds is gone now
    layer = QgsProcessingUtils.mapLayerFromString(layer_id, context)
    context.layerToLoadOnCompletionDetails(layer_id).postProcessor().postProcessLayer(layer, context, Feedback())
    assert layer.labelsEnabled()
    assert layer.temporalProperties().isActive()
    assert layer.temporalProperties().fixedDuration() == 5


def test_nothing_to_load_needs_no_look(context, tmp_path):
    looks.finish(str(tmp_path / "gone.gpkg"), "alignments", context, Feedback())
