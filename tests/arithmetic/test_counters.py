"""Counters in rings for few things in equal groups: as many as the problem has, no more told."""

from __future__ import annotations

from typing import Any

import pytest

from tests.arithmetic.random_problems import solved
from typeset.arithmetic.counters import counters_for
from typeset.arithmetic.figures import GroupedObjects
from typeset.quantities.inline import plain


def counters(structure: str, **fields: Any) -> GroupedObjects | None:
    solution = solved(structure, **fields)
    return counters_for(solution.problem, solution.answers)


def test_equal_groups_are_full_rings_and_ask_for_the_total() -> None:
    rings = counters("equal groups", groups={"nets": "5 nets"}, each="6 crabs")
    assert rings is not None
    assert (rings.groups, rings.each, rings.left_over) == (5, 6, 0)
    assert rings.groups_mark.is_given and rings.each_mark.is_given
    assert rings.total is not None
    assert (plain(rings.total.text), rings.total.is_given) == ("30 crabs", False)


def test_sharing_gives_the_rings_and_the_total_and_asks_for_each() -> None:
    rings = counters("sharing", total="23 mackerel", groups="4 buckets", remainder="both")
    assert rings is not None
    assert (rings.groups, rings.each, rings.left_over) == (4, 5, 3)
    assert plain(rings.groups_mark.text) == "4 buckets"
    assert not rings.each_mark.is_given
    assert rings.rest is not None
    assert plain(rings.rest.text) == "3 mackerel"


@pytest.mark.parametrize(
    ("structure", "fields"),
    [
        ("equal groups", {"groups": {"nets": "5 nets"}, "each": "14 crabs"}),
        ("equal groups", {"groups": {"nets": "12 nets"}, "each": "12 crabs"}),
        ("equal groups", {"groups": {"ropes": "5 ropes"}, "each": "6 m"}),
        ("equal groups", {"groups": {"rows": "2 rows", "nets": "3 nets"}, "each": "4 crabs"}),
        ("sharing", {"total": "230 mackerel", "groups": "10 buckets"}),
        ("sharing", {"total": "30 m", "groups": "5 boats"}),
        ("handshakes", {"things": "6 teams"}),
    ],
    ids=["too many in each", "too many", "measured", "groups of groups", "large", "cut", "another"],
)
def test_what_nobody_would_count_one_by_one_has_no_counters(
    structure: str, fields: dict[str, Any]
) -> None:
    assert counters(structure, **fields) is None
