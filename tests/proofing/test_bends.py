"""Bends against the circle that four of them draw."""

from __future__ import annotations

from math import hypot

import pytest

from typeset.proofing.bends import bends_of

# A quarter of a circle as one Bézier curve; its radius is right to 0.03 % (known widely, from
# memory: 4/3 × (√2 − 1)).
KAPPA = 0.5522847
QUARTER = [("m", (1.0, 0.0)), ("c", (1.0, KAPPA), (KAPPA, 1.0), (0.0, 1.0))]


def test_every_point_of_a_quarter_circle_lies_on_it() -> None:
    points = bends_of(QUARTER)
    assert len(points) == 7
    assert (points[0], points[-1]) == ((1.0, 0.0), (0.0, 1.0))
    assert all(hypot(x, y) == pytest.approx(1, abs=0.0003) for x, y in points)
    # The straight way between its ends would pass much nearer to the centre.
    assert hypot(0.5, 0.5) < 0.71


def test_a_straight_path_has_no_bends_and_a_closed_one_ends_where_it_began() -> None:
    assert bends_of([("m", (0.0, 0.0)), ("l", (3.0, 4.0))]) == ()
    assert bends_of(None) == ()
    assert bends_of([*QUARTER, ("l", (0.0, 0.0)), ("h",)])[-2:] == ((0.0, 0.0), (1.0, 0.0))
