"""New numbers for comparisons, ratios, angles, shapes and scales."""

from __future__ import annotations

from textwrap import dedent

import pytest

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.numbers_typed import numbers_in
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.vary import vary
from typeset.arithmetic.variation.wishes import Wish
from typeset.reading.tree import bare

PROBLEMS = {
    "bags": """\
        structure: which is larger
        choices: {small: {floats: 6, cost: £9}, large: {floats: 8, cost: £11}}
        compare: cost for floats
        find: smaller
        story: A
        """,
    "birds": "structure: simplest ratio\nparts: {gulls: 12, terns: 18}\nstory: A",
    "pennant": "structure: angles\nmake: triangle\nangles: {a: 65°, b: 40°}\nfind: c\nstory: A",
    "beams": """\
        structure: angles
        make: full turn
        angles: {north: 90°, west: 60°}
        find: [small, wide]
        how many: {small: 3}
        multiples: {wide: 2}
        story: A
        """,
    "deck": """\
        structure: compound shape
        bottom: 10 m
        left: 8 m
        top: 6 m
        right: 5 m
        story: A
        """,
    "chart": "structure: scale\nscale: 1 cm to 20 km\nreal: 250 km\nfind: map\nstory: A",
}


@pytest.mark.parametrize("name", PROBLEMS)
def test_new_numbers_are_like_the_old_ones(name: str, typed: Typed) -> None:
    content = typed(dedent(PROBLEMS[name]))
    before, now = Trial(content), Trial(vary(content, Wish.NEW, 1))
    assert now.why_no_sense() == ""
    assert now.answers != before.answers
    assert now.solution.kind.decision is before.solution.kind.decision
    drawn, typed_before = (
        [each.amount.value for each in numbers_in(each.content)] for each in (now, before)
    )
    assert drawn != typed_before


@pytest.mark.parametrize("wish", [Wish.NEW, Wish.EASIER, Wish.HARDER])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_counts_and_multiples_of_angles_are_words_of_the_story(
    wish: Wish, seed: int, typed: Typed
) -> None:
    fields = bare(vary(typed(dedent(PROBLEMS["beams"])), wish, seed).fields)
    assert fields["how many"] == {"small": "3"}
    assert fields["multiples"] == {"wide": "2"}


def test_the_scale_itself_stays(typed: Typed) -> None:
    fields = bare(vary(typed(PROBLEMS["chart"]), Wish.NEW, 2).fields)
    assert fields["scale"] == "1 cm to 20 km"
    assert fields["real"] != "250 km"
