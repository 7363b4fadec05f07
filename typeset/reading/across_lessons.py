"""What only shows when the lessons of a week lie side by side: recaps and repeated ids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from typeset.errors import Complaint, Place
from typeset.reading.complaints import quoted
from typeset.reading.content import DIFFERENT_FROM, Extension, Lesson, ProblemContent, Recap
from typeset.reading.keys import plain_key
from typeset.reading.stages import problems_of


def check_across_lessons(lessons: Sequence[Lesson]) -> list[Complaint]:
    """Complaints about ids that two lessons share and recaps that do not look back."""
    by_name = {lesson.name: lesson for lesson in lessons}
    recaps = [stage for lesson in lessons for stage in lesson.stages if isinstance(stage, Recap)]
    return [
        *_repeated_ids(lessons),
        *(each for recap in recaps for each in _strangers(recap, by_name)),
    ]


def needs_earlier(lesson: Lesson) -> bool:
    """True where numbers of this lesson are drawn from, or kept apart from, an earlier one's."""
    return any(
        (isinstance(stage, Recap) and stage.count > 0)
        or any(_looks_aside(problem) for problem in problems_of(stage))
        for stage in lesson.stages
    )


def _looks_aside(problem: ProblemContent) -> bool:
    others = [other.such_that for other in (problem.support, problem.stretch) if other]
    phrases = (phrase for each in (problem.such_that, *others) for phrase in each)
    return any(DIFFERENT_FROM in plain_key(phrase.text).lower() for phrase in phrases)


def _repeated_ids(lessons: Sequence[Lesson]) -> Iterator[Complaint]:
    first: dict[str, tuple[str, Place]] = {}
    for lesson in lessons:
        for name, place in _ids(lesson):
            owner, where = first.setdefault(name, (lesson.name, place))
            if owner != lesson.name:
                problem = f"the id '{name}' stands twice; it is first in {where.file.name}"
                remedy = "give one of them another id"
                yield Complaint(place, f"{problem}, line {where.line}", remedy)


def _ids(lesson: Lesson) -> Iterator[tuple[str, Place]]:
    for stage in lesson.stages:
        if isinstance(stage, Extension):
            yield stage.id, stage.place
        for problem in problems_of(stage):
            yield problem.id, problem.place


def _strangers(recap: Recap, by_name: Mapping[str, Lesson]) -> Iterator[Complaint]:
    """A complaint for every problem of a structure that the lessons looked back at lack.

    A lesson that could not be read may hold any structure, so nothing is said then.
    """
    if not recap.looks_back_at or any(name not in by_name for name in recap.looks_back_at):
        return
    known = dict.fromkeys(
        problem.structure
        for name in recap.looks_back_at
        for stage in by_name[name].stages
        for problem in problems_of(stage)
    )
    words = {_word(structure) for structure in known}
    for problem in recap.problems:
        if problem.structure and _word(problem.structure) not in words:
            yield _stranger(problem, quoted(recap.looks_back_at), tuple(known))


def _stranger(problem: ProblemContent, lessons: str, known: Sequence[str]) -> Complaint:
    text = f"this recap looks back at {lessons}, where no problem is '{problem.structure}'"
    remedy = f"there is {quoted(known)}" if known else ""
    return Complaint(problem.structure_place or problem.place, text, remedy)


def _word(structure: str) -> str:
    return plain_key(structure).lower()
