"""A solved week as plain text for the terminal: answers, workings, reasons, mistakes."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, SolvedProblem, SolvedWeek
from typeset.arithmetic.workings import Step
from typeset.documents.ranking_text import ranking_lines
from typeset.quantities.inline import plain


def week_text(solved: SolvedWeek) -> str:
    """Every lesson's solutions, one after the other."""
    return "\n".join(line for lesson in solved.lessons for line in _lesson(lesson))


def _lesson(solved: SolvedLesson) -> Iterator[str]:
    lesson = solved.lesson
    yield f"{lesson.day}: {lesson.title}" if lesson.day else lesson.title
    yield ""
    for problem in solved.problems():
        yield from _problem(problem)
        yield ""
    for stage in solved.stages:
        if isinstance(stage, SolvedExtension):
            yield f"{stage.number}  {plain(stage.story)}"
            yield from (f"   look for: {plain(note)}" for note in stage.look_for)
            yield ""
    yield from ranking_lines(solved)
    yield ""


def drawn_text(problem: SolvedProblem) -> str:
    """The numbers that were drawn for the problem: 'groups 5 crates, each 42 floats'."""
    return ", ".join(f"{name} {amount}" for name, amount in problem.content.drawn)


def _problem(problem: SolvedProblem) -> Iterator[str]:
    solution = problem.solution
    yield f"{problem.number}  {plain(problem.story)}"
    if problem.content.drawn:
        yield f"   drawn: {drawn_text(problem)}"
    several = len(solution.answers) > 1
    told = [
        f"{name}: {plain(answer_text(value))}" if several else plain(answer_text(value))
        for name, value in solution.answers.items()
    ]
    yield f"   answer: {'; '.join(told)}"
    yield f"   kind: {solution.kind.decision.value}. {plain(solution.kind.reason)}"
    for working in solution.workings:
        yield f"   {working.strategy}"
        yield from _steps(working.steps)
    for mistake in solution.mistakes:
        wrong = ", ".join(plain(answer_text(value)) for value in mistake.answers.values())
        yield f"   mistake, {mistake.misconception}: {wrong}"
        yield from _steps(mistake.steps)


def _steps(steps: tuple[Step, ...]) -> Iterator[str]:
    for step in steps:
        equation = f"   {step.equation.text()}" if step.equation is not None else ""
        yield f"      {plain(step.sentence)}{equation}"
