"""Remarks on a solved week: worth a look, never an error, never a reason to stop.

Content beyond the year group's curriculum, sets of practice that do not grow harder, and tasks
that may need care at home.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from typeset.arithmetic.cautions import suggestions
from typeset.arithmetic.curriculum import beyond_year
from typeset.arithmetic.demand import demand_of_set
from typeset.arithmetic.lessons import SolvedLesson, SolvedPractise, SolvedProblem, SolvedWeek
from typeset.arithmetic.names import listed
from typeset.errors import Remark
from typeset.reading.content import Practise

_SOURCE = "national curriculum, 2013"


def remarks_on(solved: SolvedWeek) -> tuple[Remark, ...]:
    """Every remark on the week, in the order of its files and lines."""
    found: list[Remark] = []
    for lesson in solved.lessons:
        year = lesson.lesson.year or solved.week.year
        if year is not None:
            found += _beyond(lesson, year)
        found += _sets_out_of_order(lesson)
        found += _care(lesson)
    order = {lesson.lesson.place.file: index for index, lesson in enumerate(solved.lessons)}
    return tuple(sorted(found, key=lambda each: (order.get(each.place.file, 0), each.place)))


def _beyond(lesson: SolvedLesson, year: int) -> Iterator[Remark]:
    """What many questions of a lesson share (ratio, say) is said once, at the first of them."""
    sharing: dict[str, list[SolvedProblem]] = {}
    for problem in lesson.problems():
        for words in beyond_year(problem.solution, year):
            sharing.setdefault(words, []).append(problem)
    for words, problems in sharing.items():
        numbers = listed([str(each.number) for each in problems], "and")
        questions = "question" if len(problems) == 1 else "questions"
        text = f"{questions} {numbers}, for Year {year}: {words} ({_SOURCE})"
        yield Remark(problems[0].content.place, text)


def _care(lesson: SolvedLesson) -> Iterator[Remark]:
    """What families may have to be told to take care with."""
    for each in suggestions(lesson):
        wanted = ", ".join(each.cautions)
        text = (
            f"question {each.number} speaks of '{each.word}'; if it may lead pupils to try it, "
            f"write 'cautions: [{wanted}]', so that the letter to the families says so"
        )
        yield Remark(each.place, text)


def _sets_out_of_order(lesson: SolvedLesson) -> Iterator[Remark]:
    """A set that is easier than the one before it, told at the place of the set."""
    for stage, content in zip(lesson.stages, lesson.lesson.stages, strict=False):
        if not isinstance(stage, SolvedPractise) or not isinstance(content, Practise):
            continue
        typed = {each.name: each for each in content.sets}
        for first, second in pairwise(stage.sets):
            scores = [
                demand_of_set([each.solution.demand for each in one.problems])
                for one in (first, second)
            ]
            if scores[1] < scores[0]:
                text = f"set {second.name} is easier than set {first.name}, which comes before it"
                yield Remark(typed[second.name].place, text)
