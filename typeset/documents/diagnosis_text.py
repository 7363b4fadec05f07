"""A diagnosis as plain text for the terminal, and the question it is about."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.diagnosis import Diagnosis, Explanation, diagnose
from typeset.arithmetic.lessons import SolvedProblem, SolvedWeek
from typeset.errors import OutputError
from typeset.quantities.inline import plain
from typeset.reading.complaints import nearest


def diagnosis_text(solved: SolvedWeek, lesson: str, question: str, written: str) -> str:
    """What the answer to a question of the week tells.

    Raises OutputError for a lesson or question that the week does not have.
    """
    problem = find_question(solved, lesson, question)
    return "\n".join(_lines(problem, diagnose(problem.solution, written)))


def find_question(solved: SolvedWeek, lesson: str, question: str) -> SolvedProblem:
    """The question of a lesson by its number on the sheet or its id.

    Raises OutputError where there is none, with the nearest there is.
    """
    lessons = {each.lesson.name: each for each in solved.lessons}
    if lesson not in lessons:
        raise OutputError(f"the week has no lesson '{lesson}'; {nearest(lesson, tuple(lessons))}")
    problems = lessons[lesson].problems()
    for each in problems:
        if question in (str(each.number), each.content.id):
            return each
    if question.isdecimal():
        numbers = ", ".join(str(each.number) for each in problems)
        raise OutputError(f"'{lesson}' has no question {question} with an answer; it has {numbers}")
    ids = tuple(each.content.id for each in problems)
    raise OutputError(f"'{lesson}' has no question '{question}'; {nearest(question, ids)}")


def _lines(problem: SolvedProblem, said: Diagnosis) -> Iterator[str]:
    answers = problem.solution.answers
    several = len(answers) > 1
    told = [f"{name}: " * several + plain(answer_text(each)) for name, each in answers.items()]
    yield f"{problem.number}  {plain(problem.story)}"
    yield f"   written: {said.written}"
    yield f"   answer: {'; '.join(told)}"
    note = f" ({said.note})" if said.note else ""
    yield f"   {said.verdict.value}{note}"
    for each in said.explanations:
        yield from _explanation(each)
    if said.verdict.value == "wrong" and not said.explanations:
        yield "   no known mistake leads to this answer; ask the pupil to explain it"


def _explanation(each: Explanation) -> Iterator[str]:
    about = f", for {each.asked}" if each.asked else ""
    if each.is_slip:
        yield f"   a slip perhaps{about}, {each.name}: this pupil {each.shows}."
        return
    yield f"   mistake{about}, {each.name}: this pupil {each.shows}."
    for step in each.steps:
        equation = f"   {step.equation.text()}" if step.equation is not None else ""
        yield f"      {plain(step.sentence)}{equation}"
    if each.prompt:
        yield f"      ask: {each.prompt}"
