"""A solved week as plain data for other programs: exact values as strings, never as floats."""

from __future__ import annotations

from typing import Any

from typeset.arithmetic.answers import AnswerValue, answer_exact, answer_text, answer_unit
from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, SolvedProblem, SolvedWeek
from typeset.arithmetic.workings import Step
from typeset.quantities.inline import plain
from typeset.quantities.writing import decimal


def week_data(solved: SolvedWeek) -> dict[str, Any]:
    """The week as dictionaries, lists and strings, ready for `json.dumps`."""
    return {
        "week": solved.week.title,
        "fingerprint": solved.week.fingerprint,
        "lessons": [_lesson(lesson) for lesson in solved.lessons],
    }


def _lesson(solved: SolvedLesson) -> dict[str, Any]:
    open_tasks = [stage for stage in solved.stages if isinstance(stage, SolvedExtension)]
    return {
        "lesson": solved.lesson.title,
        "file": solved.lesson.place.file.name,
        "day": solved.lesson.day,
        "problems": [_problem(problem) for problem in solved.problems()],
        "open tasks": [
            {"id": task.content.id, "number": task.number, "story": plain(task.story)}
            for task in open_tasks
        ],
    }


def _problem(problem: SolvedProblem) -> dict[str, Any]:
    solution = problem.solution
    answers = [_answer(name, value) for name, value in solution.answers.items()]
    return {
        "id": problem.content.id,
        "number": problem.number,
        "structure": problem.content.structure,
        "story": plain(problem.story),
        "drawn": dict(problem.content.drawn),
        "answer": answers[0] if len(answers) == 1 else answers,
        "kind": solution.kind.decision.value,
        "reason": plain(solution.kind.reason),
        "demand": decimal(solution.demand) or str(solution.demand),
        "workings": [
            {"strategy": working.strategy, "steps": [_step(step) for step in working.steps]}
            for working in solution.workings
        ],
        "mistakes": [
            {
                "name": mistake.misconception,
                "answer": [_answer(name, value) for name, value in mistake.answers.items()],
                "steps": [_step(step) for step in mistake.steps],
            }
            for mistake in solution.mistakes
        ],
    }


def _answer(name: str, value: AnswerValue) -> dict[str, str]:
    return {
        "name": name,
        "value": answer_exact(value),
        "unit": answer_unit(value),
        "text": plain(answer_text(value)),
    }


def _step(step: Step) -> dict[str, str | None]:
    equation = step.equation.text() if step.equation is not None else None
    return {"sentence": plain(step.sentence), "equation": equation}
