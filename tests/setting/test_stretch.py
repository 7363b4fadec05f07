from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from typeset.setting.stretch import Stretch, fixed, tallest, total

lengths = st.floats(0, 500)
stretches = st.tuples(lengths, lengths, lengths).map(lambda t: Stretch(*sorted(t)))


def test_looseness_zero_one_two_is_least_natural_greatest() -> None:
    stretch = Stretch(10, 20, 60)
    assert [stretch.at(t) for t in (0, 0.5, 1, 1.5, 2)] == [10, 15, 20, 40, 60]


@pytest.mark.parametrize(
    ("height", "looseness"), [(5, 0), (10, 0), (15, 0.5), (20, 1), (40, 1.5), (60, 2), (90, 2)]
)
def test_looseness_of_a_height(height: float, looseness: float) -> None:
    assert Stretch(10, 20, 60).looseness(height) == looseness


def test_what_cannot_stretch_is_natural_only_at_its_height() -> None:
    assert fixed(30).looseness(30) == 1
    assert fixed(30).looseness(29) == 0
    assert fixed(30).looseness(31) == 2


@given(stretches, st.floats(0, 2))
def test_the_height_at_a_looseness_has_that_height_again(s: Stretch, looseness: float) -> None:
    height = s.at(looseness)
    assert s.least_pt - 1e-9 <= height <= s.greatest_pt + 1e-9
    assert s.at(s.looseness(height)) == pytest.approx(height, abs=0.011)


@given(st.lists(stretches, min_size=1, max_size=5), st.floats(0, 2))
def test_parts_at_one_looseness_fill_their_total(parts: list[Stretch], looseness: float) -> None:
    assert sum(p.at(looseness) for p in parts) == pytest.approx(total(parts).at(looseness))


def test_side_by_side_is_as_tall_as_the_tallest_in_each() -> None:
    assert tallest((Stretch(1, 5, 6), Stretch(2, 3, 9))) == Stretch(2, 5, 9)
