"""What a careless or a hostile hand puts into dialogs, scripts and layers, as strategies of hypothesis, by the kind of a parameter."""

from datetime import date, datetime, timezone

import numpy as np
from hypothesis import strategies as st
from qgis.core import (
    QgsFeature,
    QgsGeometry,
    QgsPoint,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingParameterBand,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDateTime,
    QgsProcessingParameterEnum,
    QgsProcessingParameterExtent,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterField,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterString,
    QgsProperty,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QDate, QDateTime, Qt, QTime, QVariant

NAMES = [
    "",
    " ",
    "a",
    "nul\0name",
    "n" * 300,
    "שלום <b>&amp;",
    "🌌🏔",
    "'; DROP TABLE x; --",
    "a;b",
    "$x^2$",
    "%s {n} {}",
    "-1",
    "\n\r\t",
    "C:\\x/..",
    None,
]
TEXTS = [*NAMES, "12", "1,5", "nan", "inf", "1e309", "field:height", "field:", "expression:", 'expression:"height" * 2', "expression:1/0"]

# edges of the sky's years, of calendars, of clocks
MOMENTS = [
    *(
        "1990-01-08",
        "1990-01-09T00:00Z",
        "2053-10-08",
        "2053-10-09T00:00:00Z",
        "2052-02-29",
        "2027-02-29",
        "0001-01-01",
        "9999-12-31",
        "-4000-01-01",
    ),
    *(
        "2027-03-28 02:30",
        "2027-10-31 02:30",
        "2027-06-06T24:00",
        "2027-06-06T23:59:60Z",
        "2027-06-06T00:00+14:00",
        "2027-06-06T00:00+99:00",
    ),
    *("now", "2027", "20270606", "1e5", "06/06/2027", "2027-06-06T00:00:00.999999Z", "２０２７-06-06"),
    *(QDate(), QDateTime(), QDate(2027, 6, 6), QDateTime(QDate(2027, 6, 6), QDateTime().time(), Qt.TimeSpec.UTC), QVariant()),
    *(
        date(2027, 6, 6),
        datetime(2027, 6, 6),  # noqa: DTZ001  a wall clock
        datetime(2027, 6, 6, tzinfo=timezone.utc),
        date.min,
        date.max,
        datetime.max,  # noqa: DTZ901
        0,
        1.8e9,
        [],
        {},
    ),
]

NUMBERS = [
    *(
        0,
        -0.0,
        1,
        -1,
        0.5,
        2,
        5,
        20,
        45,
        89.999999,
        90,
        180,
        359.999999,
        360,
        361,
        1e-300,
        5e-324,
        1e-9,
        1e-3,
        100,
        1e4,
        1e6,
        1e9,
        1e18,
        1e300,
    ),
    *(-90, -18, -5, -1e-9, -1e9, float("nan"), float("inf"), float("-inf"), 10**400, True, [], {}, [1], b"1", QVariant(), *TEXTS),
]

PROPERTIES = [
    QgsProperty.fromField("height"),
    QgsProperty.fromField("text"),
    QgsProperty.fromField("none such"),
    *map(
        QgsProperty.fromExpression,
        ("1/0", "sqrt(-1)", '"text"', "'12'", "NULL", "$geometry", "@row_number", "array(1,2)", "now()", '"height"', "10^400", "x y"),
    ),
    QgsProperty.fromValue(3),
    QgsProperty.fromValue("x"),
    QgsProperty(),
]

ZONES = [
    "UTC",
    "utc",
    "Europe/Lisbon",
    "Pacific/Apia",
    "Asia/Kathmandu",
    "UTC+14:00",
    "UTC-12:00",
    "UTC+99:00",
    "Etc/GMT+2",
    "../UTC",
    "EST5EDT",
    "posix/UTC",
]
STARS = ["80,61", "0,90", "360,-90", "80 61", "80;61", "nan,nan", "inf,0", "80,61,1", "80,", ",", "1e2,1e1", "0x10,5", "８０,61"]

CRSS = [
    *("EPSG:4326", "EPSG:3857", "EPSG:32625", "EPSG:4979", "EPSG:4978", "EPSG:3031", "EPSG:3995", "EPSG:2193", "EPSG:27700", "EPSG:5514"),
    *("ESRI:54030", "EPSG:4267", "EPSG:7405", "EPSG:4283", "EPSG:2056", "IAU_2015:49900"),
]


def numbers_of(definition):
    low, high = max(definition.minimum(), -1e9), min(definition.maximum(), 1e9)
    usual = st.sampled_from(NUMBERS) | st.sampled_from([low, high, (low + high) / 2, definition.defaultValue()])
    return usual | st.sampled_from(PROPERTIES) if definition.isDynamic() else usual


def values_of(definition, layers, rasters):
    """Anything that somebody might give for a parameter."""
    kinds = {
        QgsProcessingParameterDateTime: st.sampled_from(MOMENTS),
        QgsProcessingParameterBoolean: st.sampled_from([True, False, "yes", "false", 7, [], QVariant(), None]),
        QgsProcessingParameterBand: st.sampled_from([1, 0, -1, 99, "x", 1.5, QVariant(), []]),
        QgsProcessingParameterExtent: st.sampled_from(
            ["0,1,0,1", "nan,nan,nan,nan", "1,0,1,0", "x", "-33.01,-32.99,35.9,36.1 [EPSG:4326]", 5, []]
        ),
        QgsProcessingParameterFeatureSource: layers,
        QgsProcessingParameterRasterLayer: rasters,
        QgsProcessingParameterField: st.sampled_from(
            ["name", "text", "height", "NAME", "none such", ["name", "name"], [], ["name", "text", "height"], 5, *NAMES]
        ),
    }
    if isinstance(definition, QgsProcessingParameterNumber):
        return numbers_of(definition)
    if isinstance(definition, QgsProcessingParameterEnum):
        ids = definition.options()
        return st.sampled_from([*ids, ids, ids[:2], ",".join(ids[:2]), 0, -1, 99, 1.5, [], [None], True, "", ids[0].upper(), QVariant()])
    if isinstance(definition, QgsProcessingParameterString):
        return st.sampled_from({"TIME_ZONE": ZONES, "STAR": STARS}.get(definition.name(), TEXTS) + NAMES + [5, [], QVariant()])
    for kind, strategy in kinds.items():
        if isinstance(definition, kind):
            return strategy
    return None


# layers

FINITE = st.sampled_from([0.0, -33.0, 36.0, 90.0, -90.0, 180.0, -180.0, 540.0, 5e5, 4e6, 1e30, -1e300, 1e-300]) | st.floats(-200, 200)
COORDINATES = FINITE | st.sampled_from([float("nan"), float("inf"), float("-inf")])
NEAR = st.tuples(st.floats(-33.05, -32.95), st.floats(35.95, 36.05), st.sampled_from([0.0, float("nan"), 10.0, -400.0, 1e6]))
WKTS = {
    "Point": [
        "Point EMPTY",
        "MultiPoint EMPTY",
        "MultiPoint((-33 36), (-33.01 36.01))",
        "MultiPointZ((-33 36 nan))",
        "PointM(-33 36 5)",
        "PointZM(-33 36 5 6)",
    ],
    "LineString": [
        *(
            "LineString EMPTY",
            "LineString(-33 36, -33 36)",
            "LineString(-33 36)",
            "MultiLineString((-33 36, -33.01 36.01), (0 0, 1 1))",
            "LineString(-33 36, -33 nan)",
        ),
        *(
            "CompoundCurve(CircularString(-33 36, -33.01 36.01, -33.02 36))",
            "LineString(-33.02 36.01, -33.0 35.99, -32.98 36.01)",
            "LineString(0 0, 180 0, 0 90)",
        ),
        *("LineString(179.99 36, -179.99 36)", "LineString(-33 36, -33 1e308)", "LineStringZ(-33 36 5, -33.01 36 nan)"),
    ],
    "Polygon": [
        *(
            "Polygon EMPTY",
            "Polygon((-33 36, -33 36, -33 36))",
            "Polygon((-33.1 35.9, -32.9 35.9, -32.9 36.1, -33.1 36.1, -33.1 35.9))",
            "Polygon((-33.1 35.9, -32.9 36.1, -32.9 35.9, -33.1 36.1, -33.1 35.9))",
        ),
        *(
            "MultiPolygon(((0 0, 1 0, 1 1, 0 0)), ((0 0, 1 0, 1 1, 0 0)))",
            "Polygon((-180 -90, 180 -90, 180 90, -180 90, -180 -90))",
            "Polygon((nan nan, 1 1, 2 2, nan nan))",
        ),
        "CurvePolygon(CircularString(-33.1 36, -32.9 36, -33.1 36))",
    ],
}
FIELDS = ("name:string(0,0)", "text:string(0,0)", "height:double", "day:date", "night:date", "when:datetime", "ok:boolean", "n:integer")


@st.composite
def rows(draw, kind):
    geometries = st.sampled_from([None, QgsGeometry(), *map(QgsGeometry.fromWkt, WKTS[kind])])
    if kind == "Point":
        anywhere = st.tuples(COORDINATES, COORDINATES, COORDINATES)
        geometries |= (NEAR | NEAR | anywhere).map(lambda xyz: QgsGeometry(QgsPoint(*xyz)))
    made = []
    for _ in range(draw(st.integers(0, 3))):
        values = [
            draw(st.sampled_from(NAMES)),
            draw(st.sampled_from(TEXTS)),
            draw(st.sampled_from([None, 0.0, 5.0, -5.0, 1e9, float("nan"), float("inf")])),
        ]
        days = [draw(st.sampled_from([None, QDate(2027, 6, 6), QDate(1, 1, 1)])) for _ in range(2)]
        made.append(
            (
                draw(geometries),
                [
                    *values,
                    *days,
                    draw(st.sampled_from([None, QDateTime(QDate(2026, 12, 31), QTime(23, 59, 59, 999), Qt.TimeSpec.UTC)])),
                    draw(st.sampled_from([None, True])),
                    draw(st.sampled_from([None, 7])),
                ],
            )
        )
    return made


@st.composite
def layers(draw, keep):
    """A memory layer of any kind and CRS; `keep` is a list that holds it as long as it is needed."""
    kind = draw(st.sampled_from(["Point", "Point", "Point", "LineString", "Polygon"]))
    suffix = draw(st.sampled_from(["", "Z", "M", "ZM"]))
    crs = draw(st.sampled_from(["EPSG:4326", "EPSG:4326", "EPSG:4326", *CRSS]))
    layer = QgsVectorLayer(
        f"{draw(st.sampled_from(['', 'Multi']))}{kind}{suffix}?crs={crs}&" + "&".join(f"field={field}" for field in FIELDS),
        draw(st.sampled_from(["layer", "🌌", "a;b", ""])),
        "memory",
    )
    features = []
    for geometry, attributes in draw(rows(kind)):
        feature = QgsFeature(layer.fields())
        if geometry is not None:
            feature.setGeometry(geometry)
        feature.setAttributes(attributes)
        features.append(feature)
    layer.dataProvider().addFeatures(features)
    layer.updateExtents()
    keep.append(layer)
    return layer


def sources(keep):
    """Layers, and what is none."""
    none = [
        None,
        "",
        "/no/such.gpkg",
        5,
        [],
        QVariant(),
        QgsProcessingFeatureSourceDefinition("/no/such.gpkg", True),
        "https://example.invalid/x.geojson",
    ]
    return layers(keep) | layers(keep) | layers(keep) | st.sampled_from(none)


# elevation models


def models(folder, write):
    """Files of heights, each wrong in its own way; `write` as `elevation_models.write`."""
    rng = np.random.default_rng(7)
    hills = 200.0 + 40.0 * rng.random((60, 60))
    here = (-33.03, 0.001, 0.0, 36.03, 0.0, -0.001)
    turned = (-33.03, 0.0007, 0.0007, 36.03, 0.0007, -0.0007)
    given = {
        "hills": (hills, here, "EPSG:4326", {}),
        "unknown": (np.full((60, 60), -9999.0), here, "EPSG:4326", {"nodata": -9999.0}),
        "holes": (np.where(rng.random((60, 60)) < 0.5, np.nan, hills), here, "EPSG:4326", {}),
        "one cell": (np.full((1, 1), 5.0), here, "EPSG:4326", {}),
        "one row": (np.full((1, 60), 5.0), here, "EPSG:4326", {}),
        "two by two": (np.full((2, 2), 5.0), (-34, 1.0, 0.0, 37.0, 0.0, -1.0), "EPSG:4326", {}),
        "mountains of the Moon": (hills * 1e7, here, "EPSG:4326", {}),
        "infinite": (np.where(rng.random((60, 60)) < 0.1, np.inf, hills), here, "EPSG:4326", {}),
        "turned": (hills, turned, "EPSG:4326", {}),
        "upside down": (hills, (-33.03, 0.001, 0.0, 35.97, 0.0, 0.001), "EPSG:4326", {}),
        "no place": (hills, None, "EPSG:4326", {}),
        "flat": (hills, (-33.03, 0.0, 0.0, 36.03, 0.0, 0.0), "EPSG:4326", {}),
        "no CRS": (hills, here, "", {}),
        "whole Earth": (np.full((18, 36), 100.0), (-180.0, 10.0, 0.0, 90.0, 0.0, -10.0), "EPSG:4326", {}),
        "at a pole": (hills, (-30_000.0, 1000.0, 0.0, 30_000.0, 0.0, -1000.0), "EPSG:3031", {}),
        "geocentric": (hills, here, "EPSG:4978", {}),
        "furlongs": (hills, here, "EPSG:4326", {"unit": "furlong"}),
    }
    return [write(folder / f"{name}.tif", heights, transform, crs, **how) for name, (heights, transform, crs, how) in given.items()]
