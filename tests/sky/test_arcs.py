"""Sets of stretches against the same sets as true and false at sampled moments."""

import numpy as np
import pytest

from skyalidade.sky import arcs

ROWS, LOW, HIGH = 40, 1000.0, 2000.0
SAMPLES = np.random.default_rng(424242).uniform(LOW, HIGH, 3000)


def random_set(seed):
    """For each row up to five stretches; now and then none, the whole span, or one that touches an end of it."""
    rng = np.random.default_rng(seed)
    rows, starts, ends = [], [], []
    for row in range(ROWS):
        edges = np.sort(rng.uniform(LOW, HIGH, 2 * rng.integers(0, 6)))
        if len(edges) and rng.random() < 0.2:
            edges[0] = LOW
        if len(edges) and rng.random() < 0.2:
            edges[-1] = HIGH
        if rng.random() < 0.1:
            edges = np.array([LOW, HIGH])
        rows += [row] * (len(edges) // 2)
        starts += edges[::2].tolist()
        ends += edges[1::2].tolist()
    return arcs.Arcs(np.array(rows, int), np.array(starts), np.array(ends), np.full(ROWS, LOW), np.full(ROWS, HIGH))


def sampled(held):
    """True and false by row and moment, the plain way."""
    inside = np.zeros((ROWS, len(SAMPLES)), bool)
    for row, start, end in zip(held.row, held.start, held.end):
        inside[row] |= (start <= SAMPLES) & (end >= SAMPLES)
    return inside


def is_in_order(held):
    """Rows ascend, stretches of a row are apart and in order, none is empty or leaves the span."""
    same = held.row[1:] == held.row[:-1]
    assert (np.diff(held.row) >= 0).all()
    assert (held.end[:-1][same] < held.start[1:][same]).all()
    assert (held.start < held.end).all()
    assert (held.start >= LOW).all()
    assert (held.end <= HIGH).all()


@pytest.mark.parametrize("seed", range(10))
@pytest.mark.parametrize(
    ("combine", "plain"),
    [
        (lambda a, b, c: arcs.every(a, b, c), lambda a, b, c: a & b & c),
        (lambda a, b, c: arcs.either(a, b, c), lambda a, b, c: a | b | c),
        (lambda a, b, c: arcs.outside(a), lambda a, b, c: ~a),
        (lambda a, b, c: arcs.alike(a, b), lambda a, b, c: a == b),
        (lambda a, b, c: arcs.every(arcs.either(a, arcs.outside(b)), c), lambda a, b, c: (a | ~b) & c),
        (lambda a, b, c: arcs.every(a), lambda a, b, c: a),
    ],
    ids=["every", "either", "outside", "alike", "nested", "one"],
)
def test_as_with_true_and_false(combine, plain, seed):
    sets = [random_set(100 * seed + k) for k in range(3)]
    found = combine(*sets)
    is_in_order(found)
    assert (sampled(found) == plain(*map(sampled, sets))).all()


def test_contains():
    held = random_set(7)
    row = np.random.default_rng(8).integers(0, ROWS, len(SAMPLES))
    assert held.contains(row, SAMPLES).tolist() == sampled(held)[row, np.arange(len(SAMPLES))].tolist()


def test_take_may_repeat_and_reorder_rows():
    held, index = random_set(9), np.array([5, 5, 0, 39, 17])
    taken = held.take(index)
    for new, old in enumerate(index):
        assert taken.start[taken.row == new].tolist() == held.start[held.row == old].tolist()
        assert taken.end[taken.row == new].tolist() == held.end[held.row == old].tolist()
    assert len(taken.low) == len(taken.high) == 5


def test_counts_and_keep():
    held = random_set(10)
    assert held.counts().tolist() == [(held.row == row).sum() for row in range(ROWS)]
    long = held.end - held.start > 100.0
    assert held.keep(long).start.tolist() == held.start[long].tolist()


def test_touching_stretches_become_one():
    low, high = np.array([0.0]), np.array([10.0])
    first = arcs.Arcs(np.array([0]), np.array([1.0]), np.array([4.0]), low, high)
    second = arcs.Arcs(np.array([0]), np.array([4.0]), np.array([6.0]), low, high)
    joined = arcs.either(first, second)
    assert (joined.start.tolist(), joined.end.tolist()) == ([1.0], [6.0])
    assert len(arcs.every(first, second)) == 0  # a moment is not a stretch


def test_always_and_of_all_rows():
    low, high = np.array([0.0, 5.0, 20.0]), np.array([10.0, 9.0, 30.0])
    whole = arcs.always(low, high)
    assert (whole.start.tolist(), whole.end.tolist()) == (low.tolist(), high.tolist())
    assert len(arcs.outside(whole)) == 0
    same = arcs.of_all_rows(np.array([2.0, 8.0]), np.array([6.0, 25.0]), low, high)
    assert list(zip(same.row.tolist(), same.start.tolist(), same.end.tolist())) == [
        *((0, 2.0, 6.0), (0, 8.0, 10.0)),
        *((1, 5.0, 6.0), (1, 8.0, 9.0)),
        (2, 20.0, 25.0),
    ]


def test_no_rows_and_no_stretches():
    none = arcs.Arcs(np.zeros(0, int), np.zeros(0), np.zeros(0), np.zeros(0), np.zeros(0))
    assert len(arcs.outside(none)) == 0
    empty = arcs.Arcs(np.zeros(0, int), np.zeros(0), np.zeros(0), np.array([0.0, 1.0]), np.array([5.0, 6.0]))
    assert arcs.outside(empty).row.tolist() == [0, 1]
    assert empty.contains(np.array([0, 1]), np.array([2.0, 2.0])).tolist() == [False, False]


def test_long_spans_keep_their_milliseconds():
    """63 years in thousands of rows: the number that sorts them all must still tell times apart."""
    rows = 5000
    low, high = np.full(rows, 6.3e8), np.full(rows, 2.6e9)
    start = np.full(rows, 2.5e9)
    held = arcs.Arcs(np.arange(rows), start, start + 0.01, low, high)
    other = arcs.Arcs(np.arange(rows), start + 0.004, start + 1.0, low, high)
    both = arcs.every(held, other)
    assert both.row.tolist() == list(range(rows))
    assert both.start == pytest.approx(start + 0.004, abs=1e-6)
    assert both.end == pytest.approx(start + 0.01, abs=1e-6)
