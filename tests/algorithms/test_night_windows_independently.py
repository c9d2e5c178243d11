"""Night windows against a scan of Skyfield's places: every window, the best minute of each, and whether the reasons are true."""

import numpy as np
import pytest
import skyfield_places
from qgis.PyQt.QtCore import QVariant

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
