"""The figures of counting, grouping and inverse proportion: their data agrees with the answer."""

from __future__ import annotations

from itertools import permutations
from math import prod
from typing import Any

import pytest

from tests.arithmetic.random_problems import solved
from typeset.arithmetic.figures import (
    BarModel,
    BranchingTree,
    GroupedObjects,
    JoinedPoints,
    RatioTable,
    TwoWayTable,
)
from typeset.quantities.inline import plain


def figure(structure: str, **fields: Any) -> Any:
    return solved(structure, **fields).figure


def test_handshakes_join_every_point_where_they_can_be_told_apart() -> None:
    joined = figure("handshakes", things="6 teams", **{"answer in": "games"})
    assert isinstance(joined, JoinedPoints)
    assert joined.labels == tuple("ABCDEF")
    assert joined.total is not None
    assert plain(joined.total.text) == "15 games"
    assert not joined.total.is_given
    assert figure("handshakes", things="11 teams") is None


def test_two_meetings_are_not_said_to_be_one_line_each() -> None:
    joined = figure("handshakes", things="6 teams", meetings="2", **{"answer in": "games"})
    assert plain(joined.total.text) == "15 pairs"


@pytest.mark.parametrize(("things", "places"), [(3, 3), (4, 2), (5, 3)])
def test_an_arrangement_is_a_tree_without_repeats(things: int, places: int) -> None:
    tree = figure("arrangements", things=f"{things} boats", places=str(places))
    assert isinstance(tree, BranchingTree)
    assert tree.without_repeats
    left = [len(choice.options) - level for level, choice in enumerate(tree.choices)]
    assert prod(left) == len(list(permutations(range(things), places)))


def test_the_last_cell_of_a_two_way_table_is_the_number_of_ways() -> None:
    table = figure("combinations", choices={"hulls": "3", "sails": "4"})
    assert isinstance(table, TwoWayTable)
    texts = [plain(mark.text) for row in table.cells for mark in row if mark is not None]
    assert texts == [str(number) for number in range(1, 13)]
    assert [mark.is_given for mark in table.cells[0] if mark] == [True] * 4
    assert not any(mark.is_given for row in table.cells[1:] for mark in row if mark)


def test_a_few_things_are_grouped_in_rings_and_the_rest_stands_outside() -> None:
    rings = figure("grouping", total="30 kites", each="4 kites", remainder="round up")
    assert isinstance(rings, GroupedObjects)
    assert (rings.groups, rings.each, rings.left_over) == (7, 4, 2)
    assert not rings.groups_mark.is_given and rings.each_mark.is_given


def test_many_things_are_a_bar_with_what_is_left_over_at_its_end() -> None:
    bar = figure("grouping", total="252 passengers", each="8 passengers", remainder="round up")
    assert isinstance(bar, BarModel)
    assert [part.size for part in bar.bars[0].parts] == [8, 240, 4]
    assert (bar.braces[0].first, bar.braces[0].last) == (0, 1)


@pytest.mark.parametrize(
    ("known", "hours", "wanted", "columns"), [(4, 6, 12, 2), (12, 6, 4, 2), (4, 9, 6, 3)]
)
def test_inverse_proportion_is_a_table_with_opposite_arrows(
    known: int, hours: int, wanted: int, columns: int
) -> None:
    table = figure(
        "inverse proportion",
        together={"painters": f"{known} painters", "time": f"{hours} hours"},
        wanted={"painters": f"{wanted} painters"},
        find="time",
    )
    assert isinstance(table, RatioTable)
    painters, times = (
        [int(plain(mark.text).split()[0]) for mark in row if mark] for row in table.cells
    )
    assert len(painters) == columns
    assert {one * other for one, other in zip(painters, times, strict=True)} == {known * hours}
    signs = {(jump.start, jump.below): plain(jump.mark.text) for jump in table.jumps}
    for start in range(columns - 1):
        over, under = signs[start, False].split(), signs[start, True].split()
        assert over[1] == under[1]
        assert {over[0], under[0]} == {"×", "÷"}
