"""Placing labels: the row is an optimum, rows and levels keep clear of each other."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.drawing.boxes import segments
from typeset.drawing.labels import Label
from typeset.drawing.pens import line
from typeset.drawing.placing import CLEAR_PT, Span, one_row, place_levels, place_rows
from typeset.errors import FitError


def label(width: float, height: float = 12.0) -> Label:
    return Label("x" * round(width), (), width, height, height / 2)


items = st.lists(
    st.tuples(st.floats(0.0, 300.0), st.floats(1.0, 60.0)), min_size=1, max_size=9
).map(sorted)


@given(items)
@settings(max_examples=60, deadline=None)
def test_a_row_is_in_order_clear_and_inside(row: list[tuple[float, float]]) -> None:
    wanted, widths = [x for x, _ in row], [w for _, w in row]
    centres = one_row(wanted, widths, 0.0, 300.0)
    needed = sum(widths) + CLEAR_PT * (len(widths) - 1)
    assert (centres is None) == (needed > 300.0 + 1e-6)
    if centres is None:
        return
    edges = [(c - w / 2, c + w / 2) for c, w in zip(centres, widths, strict=True)]
    assert edges[0][0] >= -1e-6
    assert edges[-1][1] <= 300.0 + 1e-6
    assert all(b[0] - a[1] >= CLEAR_PT - 1e-6 for a, b in pairwise(edges))


@given(items, st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_no_other_row_moves_its_labels_less(
    row: list[tuple[float, float]], chance: random.Random
) -> None:
    """The least sum of squares: every small change that keeps the rules costs as much or more."""
    wanted, widths = [x for x, _ in row], [w for _, w in row]
    centres = one_row(wanted, widths, 0.0, 300.0)
    if centres is None:
        return

    def cost(places: list[float]) -> float:
        return sum((a - b) ** 2 for a, b in zip(places, wanted, strict=True))

    for _ in range(30):
        low, high = sorted((chance.randrange(len(row)), chance.randrange(len(row))))
        step = chance.uniform(-5.0, 5.0)
        other = [c + step if low <= i <= high else c for i, c in enumerate(centres)]
        edges = [(c - w / 2, c + w / 2) for c, w in zip(other, widths, strict=True)]
        allowed = (
            edges[0][0] >= 0
            and edges[-1][1] <= 300
            and all(b[0] - a[1] >= CLEAR_PT for a, b in pairwise(edges))
        )
        assert not allowed or cost(other) >= cost(centres) - 1e-6


def test_labels_that_fit_stay_where_they_are_wanted() -> None:
    assert one_row([20.0, 80.0], [10.0, 10.0], 0.0, 100.0) == pytest.approx([20.0, 80.0])


def test_two_that_collide_part_evenly() -> None:
    assert one_row([50.0, 50.0], [10.0, 10.0], 0.0, 100.0) == pytest.approx([43.0, 57.0])


@given(items)
@settings(max_examples=60, deadline=None)
def test_leaders_of_several_rows_never_cross_and_never_meet_a_label(
    row: list[tuple[float, float]],
) -> None:
    anchors, labels = [x for x, _ in row], [label(w) for _, w in row]
    rows = place_rows(anchors, labels, 0.0, 300.0, always_lead=True)
    boxes = [
        (s.centre_pt - s.label.width_pt / 2, s.near_pt, s.centre_pt + s.label.width_pt / 2)
        for s in rows.spots
    ]
    for one, spot in enumerate(rows.spots):
        assert spot.leader[0] == (anchors[one], 0.0)
        assert spot.leader[-1] == (spot.centre_pt, spot.near_pt)
        for (x1, y1), (x2, y2) in segments(line(spot.leader)):
            for part in range(21):
                x, y = x1 + (x2 - x1) * part / 20, y1 + (y2 - y1) * part / 20
                for left, near, right in boxes:
                    assert not (left < x < right and near + 1e-6 < y < near + 12.0 - 1e-6)
    # At every height the leaders stand in the order of their anchors.
    for a, b in pairwise(rows.spots):
        for height in range(round(min(a.near_pt, b.near_pt))):
            assert _at(a.leader, height) <= _at(b.leader, height) + 1e-6


def _at(leader: tuple[tuple[float, float], ...], height: float) -> float:
    for (x1, y1), (x2, y2) in pairwise(leader):
        if y1 <= height <= y2:
            return x2 if y1 == y2 else x1 + (x2 - x1) * (height - y1) / (y2 - y1)
    return leader[-1][0]


def test_a_label_wider_than_the_room_is_an_error() -> None:
    with pytest.raises(FitError, match="wider column"):
        place_rows([10.0], [label(120.0)], 0.0, 100.0)


def test_short_spans_lie_nearest_and_neighbours_share_a_level() -> None:
    spans = [Span(0, 90, label(20)), Span(0, 40, label(10)), Span(40, 90, label(10))]
    assert [level.level for level in place_levels(spans, 0.0, 90.0)] == [1, 0, 0]


def test_legs_keep_off_labels_that_lie_nearer() -> None:
    wide = Span(30, 50, label(60), legs=True)
    long = Span(20, 200, label(20), legs=True)
    levels = place_levels([wide, long], 0.0, 220.0)
    # The wide label hangs over the long span's leg, so it has to lie outside.
    assert [level.level for level in levels] == [1, 0]
