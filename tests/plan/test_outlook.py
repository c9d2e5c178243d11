"""What is seen from standpoints, held against the straight line through the Earth and astropy; no air, which neither of them has."""

import astropy_places
import numpy as np
import pytest
import walks
from test_standpoints import JUNE_NIGHT_S, laid, near
from walks import UTM

from skyalidade.plan import stretches
from skyalidade.plan.aims import BodyBearing
from skyalidade.plan.conditions import Conditions
from skyalidade.plan.lattice import heavens_of
from skyalidade.plan.outlook import Outlook, Sky
from skyalidade.plan.sightlines import Subjects
from skyalidade.plan.standpoints import Reach, Search
from skyalidade.plan.targets import target

UTM_E, UTM_N = walks.PLACES[UTM]
TOL_DEG = 0.01  # promised of an altitude
NO_AIR = Conditions(pressure_hPa=0.0)


def scene(body, moments, seed=4, **of_subject):
    """Standpoints on a walk in hills, each vertex at a height of its own."""
    x, y = walks.wander(seed, 60, 60.0)
    path = laid(x, y)
    path.z_m[:] = 200.0 + 80.0 * np.sin(path.chain_m / 150.0)
    subjects = Subjects(*near(np.mean(x) + 300.0, np.mean(y) - 250.0), height_m=24.0, base_m=3.0, z_m=260.0, **of_subject)
    heavens = heavens_of(target(body), min(moments), max(moments))
    search = Search(path, subjects, BodyBearing(target(body), moments, heavens), Reach(1.0))
    return search, Sky(target(body), moments, heavens, NO_AIR)


def points(search):
    tables = [search.points(runs)[0] for runs, _ in search.blocks()]
    return {name: np.concatenate([table[name] for table in tables]) for name in tables[0]}


@pytest.mark.parametrize("body", ["core", "moon", "sun"])
def test_the_altitudes_of_top_and_body(body):
    """Top of the subject by Earth-fixed trigonometry, body by astropy, at each standpoint."""
    moments = JUNE_NIGHT_S + {"core": 0.0, "moon": 15.0 * 3600.0, "sun": 9.0 * 3600.0}[body] + 2400.0 * np.arange(9)
    search, sky = scene(body, moments)
    table = points(search)
    outlook = Outlook(search.subjects, None, 0.0, sky)
    outlook.add_to(table, np.full(table["u"].size, 1.5), search.paths.height_m(table["piece"], table["u"]))
    assert set(table["heights"]) == {"z"}
    assert table["u"].size > 2
    for i in range(table["u"].size):
        lon, lat, lens = table["lon_deg"][i], table["lat_deg"][i], table["cam_z_m"][i]
        _, top = walks.direction_deg(lon, lat, lens, search.subjects.lon_deg[0], search.subjects.lat_deg[0], 260.0 + 3.0 + 24.0)
        with astropy_places.offline():
            site = astropy_places.location(lon, lat, lens)
            alt, az = astropy_places.altaz(body, astropy_places.frame(moments[table["moment"][i]], site))
        assert table["top_alt_deg"][i] == pytest.approx(top, abs=TOL_DEG)
        assert table["alt_deg"][i] == pytest.approx(alt, abs=TOL_DEG)
        assert table["d_alt_deg"][i] == pytest.approx(alt - top, abs=TOL_DEG)
        assert table["az_deg"][i] == pytest.approx(az, abs=0.001)
        assert table["place"][i] == ("above" if alt > top else "behind" if alt >= table["base_alt_deg"][i] else "below")


def test_a_gap_keeps_places_and_ends_stretches_where_the_body_stands_so_high_over_the_top():
    moments = JUNE_NIGHT_S + 600.0 * np.arange(6)
    search, sky = scene("core", moments)
    lens_m = np.array([1.5])
    free, held = Outlook(search.subjects, None, 0.13, sky), Outlook(search.subjects, None, 0.13, sky, 6.0, 14.0)
    table = points(search)
    for outlook in (free, held):
        outlook.add_to(table, np.full(table["u"].size, 1.5), search.paths.height_m(table["piece"], table["u"]))
    assert free.is_within_gap(table).all()
    within = held.is_within_gap(table)
    assert 0 < within.sum() < within.size
    np.testing.assert_array_equal(within, (table["d_alt_deg"] >= 6.0) & (table["d_alt_deg"] <= 14.0))

    cut = checked = 0
    for runs, _ in search.blocks():
        whole = stretches.spans_within(search, runs)
        spans = stretches.spans_within(search, runs, held.gap_conditions(search.paths, lens_m), 5.0)
        for u in (spans.u0, spans.u1):
            lon, lat = search.paths.at(spans.piece, u)
            gap = held.gap_deg(spans.moment, spans.subject, lon, lat, 1.5, search.paths.height_m(spans.piece, u))
            assert np.all((gap > 6.0 - 1e-4) & (gap < 14.0 + 1e-4))
            cut += np.sum((np.abs(gap - 6.0) < 1e-4) | (np.abs(gap - 14.0) < 1e-4))
        middle = 0.5 * (whole.u0 + whole.u1)
        lon, lat = search.paths.at(whole.piece, middle)
        inside = np.abs(held.gap_deg(whole.moment, whole.subject, lon, lat, 1.5, search.paths.height_m(whole.piece, middle)) - 10.0) < 4.0
        kept = set(zip(spans.moment.tolist(), spans.piece.tolist()))
        assert {(m, p) for m, p, yes in zip(whole.moment.tolist(), whole.piece.tolist(), inside) if yes} <= kept
        checked += inside.sum()
    assert checked > 0
    assert cut > 0


def test_heights_that_only_one_end_has_count_for_neither():
    search, sky = scene("core", [JUNE_NIGHT_S])
    table = points(search)
    outlook = Outlook(search.subjects, None, 0.0, sky)
    outlook.add_to(table, np.full(table["u"].size, 1.5), np.full(table["u"].size, np.nan))
    assert set(table["heights"]) == {"level"}
    expected = np.degrees(np.arctan((27.0 - 1.5) / table["dist_m"]))
    np.testing.assert_allclose(table["top_alt_deg"], expected, atol=0.01)
    assert np.isnan(table["cam_z_m"]).all()
    assert outlook.cell_m() is None
