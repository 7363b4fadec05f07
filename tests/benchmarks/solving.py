"""How fast problems are solved, and numbers drawn for them; prints two tables.

    python -m tests.benchmarks.solving

Solving is all that `solve_week` does for numbers that are fixed: both ways to the answer, every
strategy and mistake, the kind and its reason, the demand, and the guard over all of it. The
mixed lesson has the problems of both demonstration weeks one after another, each time round
with numbers of its own, so that no two are the same; times by its length show the growth.

Drawing is timed problem by problem in each version of the weeks: the author's own ranges and
conditions (core), easier and harder numbers found (support, stretch), and other numbers of the
same size for a pupil of the class (pupil). All times are of one core, in process time; solving
is the best of several runs, with the collector of rubbish off as in the standard library's
timeit (the command line lets it look seldom).
"""

from __future__ import annotations

import gc
import statistics
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import islice
from pathlib import Path
from typing import Any
from unittest.mock import patch

from typeset.arithmetic.building import solve_lesson, solve_week
from typeset.arithmetic.variation import weeks
from typeset.arithmetic.variation.vary import vary
from typeset.arithmetic.variation.weeks import vary_week
from typeset.arithmetic.variation.wishes import Version, Wish
from typeset.errors import ContentError
from typeset.reading.content import Lesson, Practise, PractiseSet, ProblemContent, Week
from typeset.reading.stages import problems_of
from typeset.reading.week import read_week

CONTENT = Path(__file__).parents[2] / "content"
WEEKS = ("harbour-festival", "every-structure")
# The shortest mixed lesson, and how many times as long the others are.
SHORTEST = 60
TIMES = (1, 2, 4, 8)
ROUNDS = 5


def tables() -> str:
    """Both tables in Markdown."""
    read = {name: read_week(CONTENT / name) for name in WEEKS}
    fixed = {name: replace(week, lessons=vary_week(week).lessons) for name, week in read.items()}
    rows = ["| solved | problems | CPU ms | problems a second |", "|---|---|---|---|"]
    for name, week in fixed.items():
        count = sum(1 for _ in _problems(week))
        rows.append(_row(name, count, _best_s(partial(solve_week, week))))
    for lesson in _mixed_lessons(fixed[WEEKS[0]], [*map(_problems, fixed.values())]):
        count = len(problems_of(lesson.stages[0]))
        best = _best_s(partial(solve_lesson, lesson))
        rows.append(_row(f"mixed lesson of {count}", count, best))
    rows += ["", "| drawn | problems | median ms | worst ms | slowest |", "|---|---|---|---|---|"]
    for name, week in read.items():
        for version in Version:
            rows.append(_drawn_row(f"{name}, {version.value}", _draws(week, version)))
        rows.append(_drawn_row(f"{name}, pupil", _pupils_draws(fixed[name])))
    return "\n".join(rows) + "\n"


def _row(name: str, count: int, best_s: float) -> str:
    return f"| {name} | {count} | {1000 * best_s:,.0f} | {count / best_s:,.0f} |"


def _drawn_row(name: str, took: dict[str, float]) -> str:
    slowest = max(took, key=lambda each: took[each])
    middle = statistics.median(took.values())
    return (
        f"| {name} | {len(took)} | {1000 * middle:.1f} | {1000 * took[slowest]:.0f} "
        f"| {slowest.splitlines()[0]} |"
    )


def _best_s(work: Callable[[], object]) -> float:
    return min(_took_s(work) for _ in range(ROUNDS))


def _took_s(work: Callable[[], object]) -> float:
    gc.collect()
    gc.disable()
    try:
        start = time.process_time()
        work()
        return time.process_time() - start
    finally:
        gc.enable()


def _problems(week: Week) -> Iterator[ProblemContent]:
    for lesson in week.lessons:
        for stage in lesson.stages:
            yield from problems_of(stage)


def _mixed_lessons(week: Week, sources: Sequence[Iterator[ProblemContent]]) -> Iterator[Lesson]:
    """Lessons of rising length; the longer begin with the problems of the shorter."""
    first = week.lessons[0]
    many = [*islice(_endless([each for every in sources for each in every]), SHORTEST * TIMES[-1])]
    for each in TIMES:
        problems = tuple(many[: SHORTEST * each])
        stage = Practise((PractiseSet("A", problems, first.place),), first.place)
        yield replace(first, stages=(stage,), own_problems=None)


def _endless(problems: Sequence[ProblemContent]) -> Iterator[ProblemContent]:
    """The problems in turn; from the second time round with other numbers where there are."""
    yield from problems
    turn = 1
    while True:
        for each in problems:
            yield _renewed(each, turn)
        turn += 1


def _renewed(content: ProblemContent, turn: int) -> ProblemContent:
    # Conditions that speak of other lessons mean nothing in this one.
    alone = replace(content, id=f"{content.id}-{turn}", such_that=(), support=None, stretch=None)
    try:
        return vary(alone, Wish.NEW, turn)
    except ContentError:
        return alone


def _draws(week: Week, version: Version) -> dict[str, float]:
    """Seconds by problem that the draws of its numbers in this version take, all together."""
    took: dict[str, float] = {}

    def timed(content: ProblemContent, *rest: Any) -> ProblemContent:
        start = time.process_time()
        try:
            return vary(content, *rest)
        finally:
            spent = time.process_time() - start
            name = f"{content.id} ({content.structure})\n{content.place}"
            took[name] = took.get(name, 0) + spent

    with patch.object(weeks, "vary", timed):
        vary_week(week, version)
    return took


def _pupils_draws(week: Week) -> dict[str, float]:
    """Seconds by problem that other numbers of the same size for one pupil take."""
    return {
        f"{each.id} ({each.structure})": _took_s(partial(_renewed, each, 1))
        for each in _problems(week)
    }


if __name__ == "__main__":
    sys.stdout.write(tables())
