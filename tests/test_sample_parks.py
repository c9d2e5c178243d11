"""The sample parks: what their layer holds, and that a run over all of them tells what Skyfield and the zone database tell.

The parks are invented; what is true of their sky and their clocks is asked of Skyfield, GeographicLib and zoneinfo.
"""

import contextlib
import csv
import importlib.util
import io
import re
import shutil
from collections import Counter
from datetime import datetime, timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
import pytest
import skyfield_places
from geographiclib.geodesic import Geodesic
from osgeo import ogr
from skyfield.almanac import fraction_illuminated
from skyfield.earthlib import refract

from skyalidade.plan.zones import find_zones

TOP = Path(__file__).resolve().parents[1]
SAMPLE = TOP / "sample_project"
STAGE = TOP / "build" / "stage"
SEASON = (datetime(2027, 3, 1, tzinfo=timezone.utc), datetime(2027, 11, 1, tzinfo=timezone.utc))
WIDEST_DEG = {"core": 3.0, "moon": 0.5}  # customary half-widths about the bearing

TOL_AZ_DEG = 0.003  # the moment is stored to the second: in half of one the sky turns 0.0021°, times the secant of the altitude
TOL_ALT_DEG = 0.01  # Skyfield takes Bennett's refraction, the plugin Saemundsson's: 0.2' apart at 10°

# Parks that were put where something is apt to go wrong
ARCTIC, ARCTIC_WEST = "Skarrowell Fells", "Tessarn Tundra"
EQUATOR, FURTHEST_AHEAD = "Thandoril Plain", "Mollivar Atoll"
EAST_LONGITUDE, WEST_LONGITUDE, ACROSS = "Vorrundi Point", "Sarrowen Shore", "Quessary Ridge"  # about the antimeridian
QUARTER_HOUR = "Ymbrel Heights"
REPEATED, SKIPPED = "Cavendral Woods", "Xellamar Pampa"  # parks whose clock does so while the core stands over the landmark
HARD = (ARCTIC, ARCTIC_WEST, EQUATOR, FURTHEST_AHEAD, EAST_LONGITUDE, WEST_LONGITUDE, ACROSS, QUARTER_HOUR, REPEATED, SKIPPED)


def module_of(name):
    """A script of the sample project, which is no package."""
    spec = importlib.util.spec_from_file_location(f"sample_{name}", SAMPLE / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def layers_of(file):
    """Rows of each layer: attributes, with "lon", "lat", "z" and "fid"."""
    package = ogr.Open(str(file))
    found = {}
    for layer in (package.GetLayer(i) for i in range(package.GetLayerCount())):
        assert layer.GetSpatialRef().GetAuthorityCode(None) == "4326"
        assert layer.GetGeomType() == ogr.wkbPoint25D
        found[layer.GetName()] = [
            dict(feature.items(), fid=feature.GetFID(), **dict(zip(("lon", "lat", "z"), feature.GetGeometryRef().GetPoint())))
            for feature in layer
        ]
    return found


@pytest.fixture(scope="module")
def layers():
    return layers_of(SAMPLE / "parks.gpkg")


@pytest.fixture(scope="module")
def viewpoints(layers):
    return {row["fid"]: row for row in layers["viewpoints"]}


@pytest.fixture(scope="module")
def landmarks(layers):
    return {row["fid"]: row for row in layers["landmarks"]}


@pytest.fixture(scope="module")
def first_viewpoint(layers):
    """The viewpoint for which a park was placed, by the park's name."""
    return {row["park"]: row for row in reversed(layers["viewpoints"])}


# What the layer holds


def test_every_park_has_viewpoints_and_a_landmark(layers):
    viewpoints, landmarks = (Counter(row["park"] for row in layers[name]) for name in ("viewpoints", "landmarks"))
    assert len(landmarks) == 40
    assert set(landmarks.values()) == {1}
    assert viewpoints.keys() == landmarks.keys()
    assert set(viewpoints.values()) == {1, 2}
    names = [row["name"] for rows in layers.values() for row in rows]
    assert len(set(names)) == len(names)


def test_measures_are_those_of_things(layers):
    for row in layers["viewpoints"]:
        assert 1.0 <= row["lens_m"] <= 1.8, row["name"]
    for row in layers["landmarks"]:
        assert 2.0 <= row["height_m"] <= 60.0, row["name"]
        assert 0.0 <= row["base_m"] < row["height_m"], row["name"]
        assert 1.0 <= row["width_m"] <= 50.0, row["name"]


def test_landmarks_are_in_sight_of_their_viewpoints(layers):
    landmark_of = {row["park"]: row for row in layers["landmarks"]}
    for row in layers["viewpoints"]:
        landmark = landmark_of[row["park"]]
        dist_m = Geodesic.WGS84.Inverse(row["lat"], row["lon"], landmark["lat"], landmark["lon"])["s12"]
        assert 390.0 < dist_m < 2450.0, row["name"]  # a few metres less and more than drawn, on a sphere
        assert abs(landmark["z"] - row["z"]) < 0.07 * dist_m, row["name"]


def test_parks_are_all_over_the_world(layers, first_viewpoint):
    lat, lon = (np.array([row[name] for row in first_viewpoint.values()]) for name in ("lat", "lon"))
    for hemisphere in (lat > 0, lat < 0, lon > 0, lon < 0):
        assert hemisphere.sum() >= 15
    for park in (ARCTIC, ARCTIC_WEST):
        assert first_viewpoint[park]["lat"] > 66.57
    assert first_viewpoint[EQUATOR]["lat"] == 0.0
    assert (first_viewpoint[EAST_LONGITUDE]["lon"], first_viewpoint[WEST_LONGITUDE]["lon"]) == (179.9, -179.9)
    (landmark,) = [row for row in layers["landmarks"] if row["park"] == ACROSS]
    assert first_viewpoint[ACROSS]["lon"] > 179.9
    assert -180.0 < landmark["lon"] < -179.9
    assert all(-180.0 <= row["lon"] < 180.0 for rows in layers.values() for row in rows)


def test_clocks_are_of_every_sort(first_viewpoint):
    begin, end = SEASON
    offsets, changes = set(), Counter()
    for row in first_viewpoint.values():
        zone = ZoneInfo(row["zone"])
        hours = [(begin + timedelta(days=day)).astimezone(zone).utcoffset() for day in range((end - begin).days)]
        offsets.update(hours)
        changes.update("skipped" if after > before else "repeated" for before, after in zip(hours, hours[1:]) if after != before)
    minutes = {offset // timedelta(minutes=1) for offset in offsets}
    assert {14 * 60, 5 * 60 + 45, -11 * 60, 0} <= minutes
    assert len({offset for offset in minutes if offset % 60 == 30}) >= 3
    assert min(changes["skipped"], changes["repeated"]) >= 5
    assert changes.total() >= 15


def test_places_lie_in_the_zones_they_were_chosen_for(layers, first_viewpoint):
    zone_of = {park: row["zone"] for park, row in first_viewpoint.items()}
    rows = layers["viewpoints"] + layers["landmarks"]
    names, index = find_zones([row["lon"] for row in rows], [row["lat"] for row in rows])
    assert [names[i] for i in index] == [zone_of[row["park"]] for row in rows]


def test_builder_makes_the_same_bytes(tmp_path, layers):
    builder = module_of("parks")
    files = [tmp_path / "a.gpkg", tmp_path / "b.gpkg"]
    for file in files:
        builder.main(file)
    assert files[0].read_bytes() == files[1].read_bytes()
    assert layers_of(files[0]) == layers  # the committed file may come from another version of GDAL


# How the demo chooses


def found(**changed):
    row = {"camera_id": 1, "body": "core", "night": "2027-06-01", "t_utc": "2027-06-02T01:00:00", "minutes": 20.0}
    return {**row, "moon_side": None, "moon_lit": 0.5, "sun_deg": -30.0, "d_alt_deg": 5.0, **changed}


def test_parks_with_most_dark_nights_come_first():
    bright = {"moon_side": "ahead", "moon_lit": 0.9, "minutes": 90.0}
    rows = [
        *(found(camera_id=1, night=f"2027-06-0{day}", **bright) for day in range(1, 6)),
        found(camera_id=1, night="2027-06-08"),
        found(camera_id=2, night="2027-06-03", minutes=9.0),
        found(camera_id=3, night="2027-06-02", minutes=10.0),
        found(camera_id=3, night="2027-06-02", minutes=8.0),
        found(camera_id=4, body="moon", d_alt_deg=2.0),
        found(camera_id=4, body="moon", night="2027-06-07", sun_deg=-3.0),
    ]
    lines = module_of("demo").best_of_parks(rows, {1: "one", 2: "two", 3: "two", 4: "three"})
    assert [(line["park"], line["core_nights"], line["moon_nights"], line["night"]) for line in lines] == [
        ("two", 2, 0, "2027-06-02"),
        ("one", 1, 0, "2027-06-08"),
        ("three", 0, 2, "2027-06-07"),
    ]


def test_reasons_are_counted_by_kind():
    texts = ["Bearing 12.3° is never reached: the core ...", "The core is low.", "Bearing 7° is never reached: the core ..."]
    rows = [{"body": "core", "reason": text} for text in texts] + [{"body": "moon", "reason": "Bearing 1.0° is never reached: ..."}]
    assert module_of("demo").kinds_of_reasons(rows) == [(2, rows[0]), (1, rows[1]), (1, rows[3])]


# What a run over all parks tells


@pytest.fixture(scope="module")
def demo_run(tmp_path_factory):
    """One run of the demo over the parks for a user who has nothing but this plugin: what it printed and its folder."""
    home, out = tmp_path_factory.mktemp("home"), tmp_path_factory.mktemp("parks")
    settings = home / "qgis" / "profiles" / "default" / "QGIS" / "QGIS3.ini"
    settings.parent.mkdir(parents=True)
    settings.write_text("[PythonPlugins]\nskyalidade=true\n[qgis]\nwalForSqlite3=false\n")  # no mark left in the sample
    program = shutil.which("qgis_process.bin") or shutil.which("qgis_process")  # Debian 12's qgis_process is a wrapper that fails
    user = {"HOME": home, "XDG_CONFIG_HOME": home / ".config", "QGIS_CUSTOM_CONFIG_PATH": home / "qgis", "QGIS_PLUGINPATH": STAGE}
    printed = io.StringIO()
    with pytest.MonkeyPatch.context() as patch, contextlib.redirect_stdout(printed):
        for name, value in {**user, "QGIS_PROCESS": program, "QT_QPA_PLATFORM": "offscreen", "TZ": "America/Los_Angeles"}.items():
            patch.setenv(name, str(value))
        demo = module_of("demo")
        demo.parks(out)
        demo.park_seasons(out)
    return printed.getvalue(), out


@pytest.fixture(scope="module")
def rows(demo_run):
    return module_of("demo").read(demo_run[1] / "parks_alignments.gpkg")


@pytest.fixture(scope="module")
def unmet(demo_run):
    return module_of("demo").read(demo_run[1] / "parks_unmet.gpkg")


def utc_of(text):
    """The moment of "2027-06-12 23:04:31 -06:00"."""
    return datetime.strptime(text, "%Y-%m-%d %H:%M:%S %z")


def stored(text):
    """The moment of a UTC column."""
    return datetime.fromisoformat(text[:19]).replace(tzinfo=timezone.utc)


def local(moment, zone):
    """A moment as zoneinfo has it on the wall, with its offset."""
    text = moment.astimezone(ZoneInfo(zone)).strftime("%Y-%m-%d %H:%M:%S %z")
    return f"{text[:-2]}:{text[-2:]}"


def skyfields(viewpoint, moments):
    """Skyfield's observer at the lens."""
    times = skyfield_places.times(np.array([moment.timestamp() for moment in moments]))
    return skyfield_places.Observer(viewpoint["lon"], viewpoint["lat"], viewpoint["z"] + viewpoint["lens_m"], times)


def apparent(alt_deg, viewpoint):
    """Altitudes with Skyfield's refraction, in standard air at the lens and 10 °C."""
    pressure = 1010.0 * (1 - 0.0065 * (viewpoint["z"] + viewpoint["lens_m"]) / 288.15) ** 5.25588  # ICAO Doc 7488
    return refract(alt_deg, 10.0, pressure)


def turn(az_deg, bearing_deg):
    """From a bearing to an azimuth, within [-180, 180)."""
    return (az_deg - bearing_deg + 180.0) % 360.0 - 180.0


def of_park(rows, viewpoints, park, body=None):
    return [row for row in rows if viewpoints[row["camera_id"]]["park"] == park and body in (None, row["body"])]


def test_cameras_meet_only_the_landmark_of_their_park(rows, unmet, viewpoints, landmarks):
    met, without = ({(row["camera_id"], row["subject_id"], row["body"]) for row in some} for some in (rows, unmet))
    assert len(met | without) == len(met) + len(without) == 2 * len(viewpoints)  # each answered once
    assert all(viewpoints[camera]["park"] == landmarks[subject]["park"] for camera, subject, _ in met | without)


def test_bearings_are_geographiclibs(rows, viewpoints, landmarks):
    checked = {(row["camera_id"], row["subject_id"]): row for row in rows}
    assert len(checked) > 50
    for (camera, subject), row in checked.items():
        start, end = viewpoints[camera], landmarks[subject]
        true = Geodesic.WGS84.Inverse(start["lat"], start["lon"], end["lat"], end["lon"])
        assert row["bearing_deg"] == pytest.approx(true["azi1"] % 360, abs=1e-9), row["camera"]
        assert row["dist_m"] == pytest.approx(true["s12"], abs=1e-6), row["camera"]


def test_every_park_keeps_its_own_clock(rows, viewpoints):
    """All moments of all rows, each as zoneinfo shows it in the zone for which the park was placed."""
    for row in rows:
        zone = viewpoints[row["camera_id"]]["zone"]
        assert row["tz"] == zone
        for utc, text in (("t_utc", "t_local"), ("t_start", "start_loc"), ("t_end", "end_loc")):
            assert row[text] == local(stored(row[utc]), zone)


def night_of(moment, viewpoint):
    """Date on the wall at the mean solar noon before a moment."""
    ahead = timedelta(hours=viewpoint["lon"] / 15.0)
    noon = (moment + ahead - timedelta(hours=12)).replace(hour=12, minute=0, second=0, microsecond=0) - ahead
    return noon.astimezone(ZoneInfo(viewpoint["zone"])).date().isoformat()


def test_nights_begin_at_solar_noon_and_bear_its_date(rows, viewpoints):
    """At 179.9° and -179.9° the same clock is read, and noon falls a day apart in UTC."""
    second = timedelta(seconds=1)  # to which moments are stored: one may be rounded across noon
    for row in rows:
        moment, viewpoint = stored(row["t_utc"]), viewpoints[row["camera_id"]]
        assert row["night"] in {night_of(moment - second, viewpoint), night_of(moment + second, viewpoint)}, row


@pytest.mark.parametrize("park", HARD)
def test_skyfield_sees_the_body_over_the_landmark(rows, viewpoints, park):
    """A handful of each park's rows, each moment taken from its local text alone."""
    checked = 0
    for body in WIDEST_DEG:
        own = of_park(rows, viewpoints, park, body)
        for row in own[:: len(own) // 5 + 1]:
            viewpoint = viewpoints[row["camera_id"]]
            sky = skyfields(viewpoint, [utc_of(row["t_local"])])
            alt, az, _ = (values[0] for values in sky.altaz(skyfield_places.target(body)))
            tol = TOL_AZ_DEG / np.cos(np.radians(alt))
            assert abs(turn(row["az_deg"], az)) < tol
            assert abs(turn(az, row["bearing_deg"])) < WIDEST_DEG[body] + tol
            if alt > 5:  # below, the formulas of refraction differ more
                assert row["alt_deg"] == pytest.approx(apparent(alt, viewpoint), abs=TOL_ALT_DEG)
            if body == "core":
                assert sky.altaz(skyfield_places.target("sun"))[0][0] < -18 + TOL_AZ_DEG
            checked += 1
    assert checked >= 4


@pytest.mark.parametrize(
    ("park", "change", "before", "after"),
    [  # in New South Wales at 3:00 of the first Sunday of April, in Chile at the end of the first Saturday of September
        (REPEATED, datetime(2027, 4, 3, 16, tzinfo=timezone.utc), "+11:00", "+10:00"),
        (SKIPPED, datetime(2027, 9, 5, 4, tzinfo=timezone.utc), "-04:00", "-03:00"),
    ],
)
def test_the_night_in_which_the_clock_changes(rows, viewpoints, park, change, before, after):
    (row,) = [row for row in of_park(rows, viewpoints, park, "core") if stored(row["t_start"]) < change < stored(row["t_end"])]
    start, end = utc_of(row["start_loc"]), utc_of(row["end_loc"])
    assert (row["start_loc"][-6:], row["end_loc"][-6:]) == (before, after)
    assert (end - start) / timedelta(minutes=1) == pytest.approx(row["minutes"], abs=1 / 60)
    # the body was over the landmark all the while, through the hour that the wall shows twice or never
    moments = [start + (end - start) * share for share in np.linspace(0.0, 1.0, 25)]
    _, az, _ = skyfields(viewpoints[row["camera_id"]], moments).altaz(skyfield_places.target("core"))
    off = np.abs(turn(az, row["bearing_deg"]))
    assert off.max() < 3.0 + 2 * TOL_AZ_DEG
    assert off[[0, -1]] == pytest.approx(3.0, abs=2 * TOL_AZ_DEG)  # and not before nor after


def test_one_night_on_both_sides_of_the_antimeridian(rows, viewpoints):
    """Nights of one name hold one passage of the core: from one park to the other is a minute of the Earth's turn, not a day."""
    passages, bearings = [], []
    for park in (EAST_LONGITUDE, WEST_LONGITUDE):
        own = [row for row in of_park(rows, viewpoints, park, "core") if row["minutes"] > 30]
        passages.append({row["night"]: (utc_of(row["start_loc"]), utc_of(row["end_loc"])) for row in own})
        bearings.append(own[0]["bearing_deg"])
    assert abs(bearings[0] - bearings[1]) < 0.3
    east, west = passages
    both = east.keys() & west.keys()
    assert len(both) > 90
    for night in both:
        assert max(east[night][0], west[night][0]) < min(east[night][1], west[night][1]), night


def test_a_sightline_across_the_antimeridian_is_drawn_in_two(demo_run, viewpoints, landmarks):
    layer = ogr.Open(str(demo_run[1] / "parks_alignments.gpkg"))
    drawn = {
        feature["camera_id"]: (feature["subject_id"], feature.GetGeometryRef().Clone()) for feature in layer.GetLayer("parks_alignments")
    }
    crossing = {camera for camera, (subject, _) in drawn.items() if viewpoints[camera]["lon"] * landmarks[subject]["lon"] < -(179.0**2)}
    assert ACROSS in {viewpoints[camera]["park"] for camera in crossing}
    for camera, (_, shape) in drawn.items():
        parts = [shape.GetGeometryRef(i).GetEnvelope() for i in range(shape.GetGeometryCount())]
        assert len(parts) == 1 + (camera in crossing), viewpoints[camera]["name"]
        assert max(east - west for west, east, _, _ in parts) < 0.2  # none goes round the Earth
        if camera in crossing:
            assert max(east for _, east, _, _ in parts) == 180.0
            assert min(west for west, _, _, _ in parts) == -180.0


def test_reasons_are_true(unmet, viewpoints):
    """Where the core or the Moon is said never to stand over a landmark, Skyfield does not see it there either."""
    assert len(unmet) > 15
    for row in unmet:
        step, count = {"core": (timedelta(minutes=1), 1440), "moon": (timedelta(minutes=6), 245 * 240)}[row["body"]]
        viewpoint = viewpoints[row["camera_id"]]
        alt, az, _ = skyfields(viewpoint, [SEASON[0] + step * i for i in range(count)]).altaz(skyfield_places.target(row["body"]))
        alt = apparent(alt, viewpoint)
        high = alt > {"core": 10.0, "moon": 0.0}[row["body"]]
        if "never seen above" in row["reason"]:
            assert not high.any(), row
        else:
            assert "is never reached" in row["reason"]
            assert f"Bearing {row['bearing_deg']:.1f}°" in row["reason"]
            assert np.abs(turn(az[high], row["bearing_deg"])).min() > WIDEST_DEG[row["body"]], row


# What is printed

LINE = re.compile(
    r"^(\S.{19})  (\S+) +(\d+) +(\d+)  (2027-\d\d-\d\d)  (\d\d:\d\d) ([+-]\d\d:\d\d)  (core|moon) +([\d.]+)° +([\d.]+)°$", re.MULTILINE
)


def test_page_is_short_and_explains_itself(demo_run):
    printed, _ = demo_run
    assert max(len(line) for line in printed.splitlines() if ".gpkg" not in line) <= 120
    assert len(LINE.findall(printed)) == 15
    assert "The other 25: 18 see the core over a landmark in a dark night, 7 the Moon alone, 0 neither" in " ".join(printed.split())
    assert "is never seen above 10°" in printed
    assert "is never reached" in printed


def test_printed_lines_hold_in_skyfield(demo_run, first_viewpoint, viewpoints, rows):
    """Each line from its text alone: the zone's clock, the core over a landmark of the park, and the Sun's depth."""
    for park, zone, _, _, night, time, offset, body, bearing, alt in LINE.findall(demo_run[0]):
        assert zone == first_viewpoint[park.strip()]["zone"]
        after_midnight = timedelta(days=time < "12:00")
        wall = datetime.fromisoformat(f"{night} {time}{offset}") + after_midnight
        assert wall.astimezone(ZoneInfo(zone)).utcoffset() == wall.utcoffset()
        looking = {row["camera_id"] for row in of_park(rows, viewpoints, park.strip()) if f"{row['bearing_deg']:.1f}" == bearing}
        (viewpoint,) = (viewpoints[camera] for camera in looking)
        sky = skyfields(viewpoint, [wall + timedelta(seconds=30)])  # minutes are cut off
        true_alt, az, _ = (values[0] for values in sky.altaz(skyfield_places.target(body)))
        half_minute = 0.13 / np.cos(np.radians(true_alt))
        assert float(alt) == pytest.approx(apparent(true_alt, viewpoint), abs=0.13 + 0.05 + TOL_ALT_DEG)
        assert abs(turn(az, float(bearing))) < 3.0 + half_minute
        assert sky.altaz(skyfield_places.target("sun"))[0][0] < -18 + 0.13


def test_dark_nights_are_skyfields(demo_run, first_viewpoint, rows, viewpoints):
    """How many nights have the core over the landmark of one park, the Moon down or thin, counted in steps of Skyfield's."""
    viewpoint, row = first_viewpoint[REPEATED], of_park(rows, viewpoints, REPEATED, "core")[0]
    assert {other["camera_id"] for other in of_park(rows, viewpoints, REPEATED)} == {viewpoint["fid"]}
    step, nights, steps = timedelta(minutes=2), 245, 420
    first = SEASON[0] + timedelta(hours=7)  # in the evening there; the night lasts less than these fourteen hours
    moments = [first + timedelta(days=night) + i * step for night in range(nights) for i in range(steps)]
    sky = skyfields(viewpoint, moments)
    alt, az, _ = sky.altaz(skyfield_places.target("core"))
    off = np.abs(turn(az, row["bearing_deg"]))
    over = (off <= 3) & (apparent(alt, viewpoint) >= max(10.0, row["top_alt_deg"]))
    over &= sky.altaz(skyfield_places.target("sun"))[0] <= -18
    moon_down = sky.altaz(skyfield_places.target("moon"))[0] < -0.83  # with the limb and the air
    thin = fraction_illuminated(skyfield_places.kernel(), "moon", sky.at.t) < 0.25
    closest = np.where(over, off, np.inf).reshape(nights, steps).argmin(axis=1) + steps * np.arange(nights)
    dark = over[closest] & (moon_down | thin)[closest]
    (printed,) = [int(line[2]) for line in LINE.findall(demo_run[0]) if line[0].strip() == REPEATED]
    assert printed == pytest.approx(dark.sum(), abs=2)  # nights that hang on a step


SEASON_LINE = re.compile(
    r"^(\S.{19})  2027-\d\d +(\d+) +(\d+)  (?:2027-\d\d-\d\d| {10})  \d\d-\d\d to \d\d-\d\d  (2027-\d\d-\d\d)  "
    r"(\d\d:\d\d) to (\d\d:\d\d) ([+-]\d\d:\d\d) +(\d+)$",
    re.MULTILINE,
)


def test_a_best_month_and_night_for_each_park(demo_run, viewpoints):
    """Every park has a line or is named as one without a window; those are too far north for the core to climb to 10 degrees."""
    printed = " ".join(demo_run[0].split())
    told = {line[0].strip() for line in SEASON_LINE.findall(demo_run[0])}
    never = re.findall(r"(\w+(?: \w+)*) \(core stays below 10°\)", printed.split("Without a window all year: ")[1])
    assert told | set(never) == {row["park"] for row in viewpoints.values()}
    for park in never:
        assert min(row["lat"] for row in viewpoints.values() if row["park"] == park) > 90 - 10 - 29.1  # declination of the core


def test_best_nights_hold_in_skyfield(demo_run, viewpoints):
    """Just inside of each printed window the core is above 10 degrees in the dark with the Moon down; just outside something ends it."""
    for park, nights, hours, night, start, end, offset, minutes in SEASON_LINE.findall(demo_run[0]):
        day = timedelta(days=1)
        begin, finish = (datetime.fromisoformat(f"{night} {time}{offset}") for time in (start, end))
        begin, finish = begin + day * (start < "12:00"), finish + day * (end < "12:00")
        assert (finish - begin) / timedelta(minutes=1) == pytest.approx(float(minutes), abs=1.5)  # minutes of the clock are cut off
        assert 0 < int(hours) <= int(nights) * float(minutes) / 60
        own = [row for row in viewpoints.values() if row["park"] == park.strip()]
        minute = timedelta(minutes=1)
        depths = []
        for viewpoint in own:
            sky = skyfields(viewpoint, [begin - minute, begin + minute, finish - minute, finish + 2 * minute])
            core, sun, moon = (sky.altaz(skyfield_places.target(body))[0] for body in ("core", "sun", "moon"))
            depths.append(np.minimum.reduce([apparent(core, viewpoint) - 10.0, -18.0 - sun, -0.83 - moon]))
        assert any((depth[1:3] > 0.0).all() and (depth[[0, 3]] < 0.0).all() for depth in depths), park


def test_a_line_for_each_park_is_kept(demo_run, viewpoints):
    with open(demo_run[1] / "parks.csv", newline="", encoding="utf-8") as stream:
        kept = list(csv.DictReader(stream))
    assert {row["park"] for row in kept} == {row["park"] for row in viewpoints.values()}
    assert len(kept) == 40
    order = [(int(row["core_nights"]), int(row["moon_nights"])) for row in kept]
    assert order == sorted(order, reverse=True)
    assert all((row["body"] == "core") == (nights > 0) for row, (nights, _) in zip(kept, order))
