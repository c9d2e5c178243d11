"""Night windows against a scan of Skyfield's places: every window, the best minute of each, and whether the reasons are true."""

import sys
from pathlib import Path

import elevation_models
import numpy as np
import pytest
import skyfield_places
from qgis.PyQt.QtCore import QDateTime, QVariant

sys.path.append(str(Path(__file__).parents[1] / "ground"))
import every_crossing  # noqa: E402
import rough_ground  # noqa: E402

STEP_S = 240.0  # of the scan; straight lines between its places err by under 4 s
NEAR_S = 20.0
GRAZING_DEG = 0.02  # nearer to a limit than this the scan cannot tell
FIRST, NIGHTS = "2026-10-23", 10  # the clocks of Europe go back; dusk of the polar night; the Moon is full and climbs to the north
SITES = ((-33.0, 36.0), (15.6, 78.2), (179.99, -17.0), (100.0, -75.0), (20.0, 66.0))
ASKED = (
    ("core", {"SUN_LIMIT": -12, "ALT_MIN": 2}),
    ("core", {"MOON": "any", "TILT_MIN": 20, "TILT_MAX": 60}),
    ("arch", {"MOON": "any", "SUN_LIMIT": -6, "APEX_MIN": 20, "APEX_MAX": 50, "TILT_MAX": 70}),
    ("core", {"MOON": "any", "SUN_LIMIT": 0, "TILT_MAX": 8}),
    ("moon", {"SUN_LIMIT": 0, "ALT_MIN": 5}),
)


def altitudes(lon, lat, t_utc_s):
    """True altitudes of what the conditions are about, and the Moon's semidiameter. [deg]."""
    observer = skyfield_places.Observer(lon, lat, 0.0, skyfield_places.times(t_utc_s))
    alt, distance_km = {}, None
    for name in ("core", "galactic_y", "galactic_pole", "sun", "moon"):
        alt[name], _, distance_km = observer.altaz(skyfield_places.target(name))
    alt["semi"] = np.degrees(np.arcsin(1737.4 / distance_km))
    return alt


def margins(body, alt, asked):
    """By how much each condition holds; no air. [deg]."""
    tilt = np.degrees(np.arctan2(*(np.abs(np.sin(np.radians(alt[name]))) for name in ("galactic_y", "galactic_pole"))))
    apex = 90.0 - np.abs(alt["galactic_pole"])
    held = {"standing": alt["moon" if body == "moon" else "core"] - asked.get("ALT_MIN", 0.0 if body == "arch" else 10.0)}
    if body == "arch":
        held["standing"] = np.minimum(held["standing"], np.minimum(apex - asked["APEX_MIN"], asked["APEX_MAX"] - apex))
    if "TILT_MAX" in asked:
        inside = np.minimum(tilt - asked.get("TILT_MIN", 0.0), asked["TILT_MAX"] - tilt)
        held["tilt"] = np.minimum(inside, np.minimum(alt["core"], 89.0 - alt["core"]))
    held["dark"] = asked.get("SUN_LIMIT", -18.0) - alt["sun"]
    if body != "moon" and asked.get("MOON") != "any":
        held["moonless"] = -34.0 / 60.0 - alt["semi"] - alt["moon"]
    return held


def holds(t, margin):
    """Begin and end of each time a margin is not negative."""
    change = np.flatnonzero((margin[1:] >= 0.0) != (margin[:-1] >= 0.0))
    passing = t[change] + STEP_S * margin[change] / (margin[change] - margin[change + 1])
    edges = np.concatenate([t[:1] if margin[0] >= 0.0 else [], passing, t[-1:] if margin[-1] >= 0.0 else []])
    return edges.reshape(-1, 2)


def never_together(held, inside, *names):
    """Whether some of the conditions never hold together in a night, grazing cases left open."""
    return not (inside & (np.minimum.reduce([held[name] for name in names]) > GRAZING_DEG)).any()


def is_true(reason, held, inside):
    """Whether what is said of a night is so."""
    shape = [name for name in ("standing", "tilt") if name in held]
    if reason.startswith("no darkness"):
        return never_together(held, inside, "dark")
    if " stays below " in reason or reason.startswith("arch's top is never"):
        return never_together(held, inside, "standing")
    if reason.startswith("the band's tilt is never"):
        return never_together(held, inside, *shape) and not never_together(held, inside, "standing")
    if reason.endswith(" only by day or in twilight"):
        told = shape if "tilt" in reason else ["standing"]
        return never_together(held, inside, *told, "dark") and not never_together(held, inside, *told)
    if reason.endswith(" all night"):
        return never_together(held, inside, "dark", "moonless") and not never_together(held, inside, "dark")
    if reason.startswith("Moon up while"):
        return never_together(held, inside, *shape, "dark", "moonless") and not never_together(held, inside, *shape, "dark")
    return reason.startswith("the window is told with the night beside") and not never_together(held, inside, *held)


def seconds(row, *names):
    return [row[name].toMSecsSinceEpoch() / 1000.0 for name in names]


@pytest.fixture(scope="module", params=SITES, ids=lambda site: "{}E {}N".format(*site))
def scanned(request):
    lon, lat = request.param
    noon = np.datetime64(FIRST).astype("datetime64[s]").astype(float) + 43200.0 - 240.0 * lon
    t = noon + STEP_S * np.arange(-86400.0 / STEP_S, (NIGHTS + 1) * 86400.0 / STEP_S + 1.0)
    return lon, lat, noon, t, altitudes(lon, lat, t)


@pytest.mark.parametrize(("body", "asked"), ASKED, ids=lambda value: value if isinstance(value, str) else "")
def test_a_scan_finds_the_same_windows_bests_and_reasons(run, layer, scanned, body, asked):
    lon, lat, noon, t, alt = scanned
    last = str(np.datetime64(FIRST) + NIGHTS - 1)
    nights = {"FIRST_NIGHT": FIRST, "LAST_NIGHT": last, "PRESSURE": 0, "SITES": layer([(f"PointZ({lon} {lat} 0)",)])}
    out = run("night_windows", {"BODY": body, **asked, **nights, "WINDOWS": "memory:"})
    held = margins(body, alt, asked)
    every = np.minimum.reduce(list(held.values()))
    scan = holds(t, every)
    windows = {row["night"].toString("yyyy-MM-dd"): [] for row in out.rows()}
    for row in out.rows("WINDOWS"):
        windows[row["night"].toString("yyyy-MM-dd")].append(seconds(row, "t_start", "t_utc", "t_end"))
    best_of = alt["core" if body == "arch" else body]
    found = [window for night in windows.values() for window in night]
    noons = noon + 86400.0 * np.arange(-1, NIGHTS + 2)

    # every one of the scan, whole or cut at the noons, and no other
    pieces = []
    for begin, end in scan:
        cuts = noons[(noons > begin) & (noons < end)] if end - begin > 86400.0 else []
        pieces += list(zip([begin, *cuts], [*cuts, end]))
    lengthy = [piece for piece in pieces if piece[1] - piece[0] > 4.0 * STEP_S and noon < piece[0] and piece[1] < noons[-2]]
    for begin, end in lengthy:
        assert [window for window in found if abs(window[0] - begin) < NEAR_S and abs(window[2] - end) < NEAR_S]
    for start, _, end in found:
        inside = (t > start + NEAR_S) & (t < end - NEAR_S)
        assert (every[inside] > -GRAZING_DEG).all()

    for number, (row, its) in enumerate(zip(out.rows(), windows.values())):
        night = (t >= noons[number + 1]) & (t < noons[number + 2])
        assert (row["reason"] in (None, QVariant())) == bool(its)
        if not its:
            assert is_true(row["reason"], held, night), row["reason"]
        for start, best, end in its:
            assert start <= best <= end
            assert noons[number + 1] - 1.0 <= best <= noons[number + 2] + 1.0
            reached = altitudes(lon, lat, np.array([best]))["core" if body == "arch" else body][0]
            within = best_of[(t >= start) & (t <= end)]
            assert within.max(initial=-90.0) <= reached + 0.003  # deg in half a second, as times are told
        longest = max(its, key=lambda window: window[2] - window[0], default=None)
        if longest is not None:
            assert seconds(row, "t_start", "t_utc", "t_end") == longest


def test_the_scan_knows_long_moons_and_all_kinds_of_reasons(run, layer):
    """The cases above hold what they are meant for: pieces cut at noon with the highest Moon inside, and these sentences."""
    sites, reasons = layer([(f"PointZ({lon} {lat} 0)",) for lon, lat in SITES]), set()
    for body, asked in ASKED:
        nights = {"FIRST_NIGHT": FIRST, "LAST_NIGHT": "2026-11-01", "PRESSURE": 0, "SITES": sites}
        out = run("night_windows", {"BODY": body, **asked, **nights})
        reasons |= {row["reason"] for row in out.rows()} - {None, QVariant()}
    whole = [row for row in out.rows() if row["site_id"] == 2 and row["minutes"] == pytest.approx(1440.0)]
    assert len([row for row in whole if row["t_utc"] not in (row["t_start"], row["t_end"])]) > 4
    for words in ("no darkness", "stays below", "is never", "tilt is never", "only by day", "all night", "Moon up while"):
        assert [reason for reason in reasons if words in reason], words


# however layers are put together


def told(*outcomes):
    """Rows of all outcomes, by output, site and moment; numbers apart from texts. Moments in s."""
    rows = []
    for out in outcomes:
        for sink in ("OUTPUT", "WINDOWS", "MONTHS"):
            for row in out.rows(sink):
                values = [
                    seconds(row, name)[0] if isinstance(value, QDateTime) and value.isValid() else value for name, value in row.items()
                ]
                numbers = [value for value in values if isinstance(value, float)]
                when = row["month"] if sink == "MONTHS" else row["night"].toString("yyyy-MM-dd")
                rows.append((sink, row["site"], when, len(numbers), numbers))
    return sorted(rows)


@pytest.mark.parametrize("body", ["core", "moon", "arch"])
def test_rows_are_the_same_however_sites_are_put_together(run, layer, body):
    """Backwards, each alone, and with longitudes turned round the Earth."""

    def outcome(sites, turned_deg=0.0):
        points = layer([(f"PointZ({lon + turned_deg!r} {lat} 10)", f"{lon}") for lon, lat in sites], fields=["name:string"])
        nights = {"FIRST_NIGHT": FIRST, "LAST_NIGHT": "2026-11-05", "WINDOWS": "memory:", "MONTHS": "memory:"}
        return run("night_windows", {"SITES": points, "SITE_NAME": "name", "BODY": body, **nights})

    whole = told(outcome(SITES))
    for others in ([outcome(SITES[::-1])], [outcome([site]) for site in SITES], [outcome(SITES, 360.0)], [outcome(SITES, -360.0)]):
        theirs = told(*others)
        assert [row[:4] for row in theirs] == [row[:4] for row in whole]
        ours, other = (np.concatenate([row[4] for row in rows]) for rows in (whole, theirs))
        # Moments are told in whole seconds, and a rounding may fall either way; about the highest a second is worth 0.004°.
        off = np.abs(other - ours)
        assert (off <= np.where(np.abs(ours) > 1e6, 1.0, 5e-3)).all()


# over real ground


@pytest.mark.parametrize("body", ["core", "moon"])
def test_windows_lie_where_every_crossing_of_the_ground_lets_the_body_be_seen(run, layer, tmp_path, body):
    """Three places in the mountains: a scan by Skyfield, over skylines that know every crossing of the ground, finds the same minutes."""
    ground = rough_ground.jacksboro()
    model = elevation_models.write(tmp_path / "mountains.tif", ground.heights_m, ground.transform, "EPSG:4326")
    sites = np.array([-84.25, 36.59]) + np.random.default_rng(5).uniform(-0.08, 0.08, (3, 2))
    asked = {"MOON": "any", "SUN_LIMIT": -6, "ALT_MIN": 0, "PRESSURE": 0, "CAMERA_HEIGHT": 1.6, "DEM": model, "BODY": body}
    points = layer([(f"Point({lon!r} {lat!r})",) for lon, lat in sites.tolist()], kind="Point")
    out = run("night_windows", {"SITES": points, "FIRST_NIGHT": "2027-06-01", "LAST_NIGHT": "2027-06-10", **asked, "WINDOWS": "memory:"})
    hidden = 0
    for number, (lon, lat) in enumerate(sites):
        lens_m = every_crossing.height_m(ground, *every_crossing.cells(ground, np.array([lon]), np.array([lat])))[0] + 1.6
        noon = np.datetime64("2027-06-01").astype("datetime64[s]").astype(float) + 43200.0 - 240.0 * lon
        t = noon + STEP_S * np.arange(10 * 86400.0 / STEP_S)
        observer = skyfield_places.Observer(lon, lat, float(lens_m), skyfield_places.times(t))
        alt, az, _ = observer.altaz(skyfield_places.target(body))
        sun, _, _ = observer.altaz(skyfield_places.target("sun"))
        rays = np.arange(60.0, 300.5, 0.5)
        skyline, _, _ = every_crossing.skyline(ground, lon, lat, lens_m, rays, 40_000.0, 186.0, 0.13)
        over = alt - np.interp(az, rays, skyline)
        margin = np.minimum(np.minimum(over, alt), -6.0 - sun)
        told = np.zeros(t.shape, dtype=bool)
        for row in out.rows("WINDOWS"):
            if row["site_id"] == number + 1:
                start, end = seconds(row, "t_start", "t_end")
                told |= (t >= start) & (t <= end)
        sure = (np.abs(margin) > 0.1) & (az > 60.0) & (az < 300.0)  # deg: between rays, and of ground within 200 m
        np.testing.assert_array_equal(told[sure], margin[sure] > 0.0)
        hidden += (sure & (over < 0.0) & (alt > 0.0) & (sun < -6.0)).sum()
    assert hidden > 100
