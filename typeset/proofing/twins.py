"""The same question in other versions of a week."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.answers import answer_exact, answer_text
from typeset.arithmetic.lessons import SolvedLesson, SolvedProblem, SolvedWeek
from typeset.quantities.inline import plain


def twins_of(
    sisters: Sequence[SolvedWeek], lesson: SolvedLesson, problem: SolvedProblem
) -> Iterator[tuple[str, SolvedProblem]]:
    """The version and the question of this number, for every version with another answer."""
    for week in sisters:
        for own in week.lessons:
            if own.lesson.name != lesson.lesson.name:
                continue
            for twin in own.problems():
                if twin.number == problem.number and _exact(twin) != _exact(problem):
                    yield week.version.value, twin


def answers_told(problem: SolvedProblem) -> str:
    """'24 terns', or each answer under its name where there are several."""
    answers = problem.solution.answers
    told = [plain(answer_text(value)) for value in answers.values()]
    if len(told) == 1:
        return told[0]
    return "; ".join(f"{name}: {text}" for name, text in zip(answers, told, strict=True))


def _exact(problem: SolvedProblem) -> list[str]:
    """The answers in their base units, so that 0.5 m and 50 cm are the same."""
    return [
        answer_exact(value) if not hasattr(value, "base_value") else str(value.base_value)
        for value in problem.solution.answers.values()
    ]
