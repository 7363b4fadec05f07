"""content/every-structure/: one problem of every family, solved, and made without a finding."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.lessons import SolvedWeek
from typeset.press.making import Order, make_week
from typeset.reading.week import read_week

CONTENT = Path(__file__).parents[1] / "content" / "every-structure"


@pytest.fixture(scope="module")
def week() -> SolvedWeek:
    return solve_week(read_week(CONTENT))


def test_every_structure_is_there(week: SolvedWeek) -> None:
    assert {problem.content.structure for problem in week.lessons[0].problems()} == set(FAMILIES)


def test_nearly_all_are_solved_in_two_ways(week: SolvedWeek) -> None:
    """A rounded share of money has one way alone: its parts are no whole pence."""
    alone = [
        problem.content.story.template
        for problem in week.lessons[0].problems()
        if len(problem.solution.workings) < 2
    ]
    assert len(alone) <= 1


def test_every_mistake_and_figure_has_a_place_in_print(tmp_path: Path) -> None:
    results = make_week(Order(CONTENT, tmp_path))
    assert [finding for result in results for finding in result.findings] == []
