"""The demonstration week is what it should show: enough problems, two ways each, real decoys."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedPractise,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedWeek,
)
from typeset.reading.week import read_week

# Subjects that our content keeps clear of.
KEPT_OUT = re.compile(r"\b(cup ?cakes?|cakes?|school trips?|swimming|years old|T-shirts?)\b", re.I)


@pytest.fixture(scope="module")
def solved(demonstration_week: Path) -> SolvedWeek:
    return solve_week(read_week(demonstration_week))


def test_five_days_and_at_least_sixty_problems(solved: SolvedWeek) -> None:
    days = [lesson.lesson.day for lesson in solved.lessons]
    assert days == ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"]
    assert sum(len(lesson.problems()) for lesson in solved.lessons) >= 60


def test_every_day_has_every_stage(solved: SolvedWeek) -> None:
    wanted = [SolvedRecap, SolvedSpot, SolvedSort, SolvedPractise, SolvedExtension]
    for lesson in solved.lessons:
        assert [type(stage) for stage in lesson.stages] == wanted


def test_every_problem_can_be_solved_in_two_ways(solved: SolvedWeek) -> None:
    alone = [
        problem.content.id
        for lesson in solved.lessons
        for problem in lesson.problems()
        if len(problem.solution.workings) < 2
    ]
    assert alone == []


def test_every_sort_needs_thought(solved: SolvedWeek) -> None:
    for lesson in solved.lessons:
        (sort,) = (stage for stage in lesson.stages if isinstance(stage, SolvedSort))
        decisions = {problem.solution.kind.decision for problem in sort.problems}
        assert len(decisions) >= 3
        assert {Decision.MULTIPLY, Decision.NEITHER} <= decisions


def test_the_strategies_that_the_numbers_are_chosen_for_are_easiest(solved: SolvedWeek) -> None:
    easiest = {
        problem.solution.workings[0].strategy
        for lesson in solved.lessons
        for problem in lesson.problems()
        if problem.content.structure == "proportion"
    }
    chosen = {"Scaling up", "Through a common chunk", "A little too much, then take off"}
    assert chosen <= easiest


def test_it_says_that_it_is_invented(solved: SolvedWeek) -> None:
    assert "invented" in solved.week.note


def test_subjects_that_are_kept_out(demonstration_week: Path) -> None:
    for file in demonstration_week.glob("*.yaml"):
        assert KEPT_OUT.findall(file.read_text(encoding="utf-8")) == []
