"""Which fields a document to fill in must have: one for every room, in the order of reading."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedProblem,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    problems_of,
)
from typeset.documents.layout import Layout
from typeset.proofing.expected import said
from typeset.proofing.sheet_text import after, before
from typeset.quantities.spoken import spoken
from typeset.reading.content import Space

_CHOICES = ("multiply", "add", "both", "neither")
_MONEY = {"£": "pounds", "p": "pence"}


@dataclass(frozen=True, slots=True)
class ExpectedField:
    """A field by its full name, with the words that it is told by.

    `about` is what the rooms of its question are called in the account. A field `ticks` or is
    typed in, on one line or on `several`.
    """

    name: str
    told: str
    about: str
    ticks: bool = False
    several: bool = False


def expect_fields(lesson: SolvedLesson, layout: Layout, day: str = "") -> Iterator[ExpectedField]:
    """The fields of a lesson's sheet; with a `day`, as they are told among other days'."""
    fields = _Fields(lesson, layout, day)
    if layout.sheet.name_and_date:
        for key in ("name", "date"):
            yield fields.own(key)
    for stage in lesson.stages:
        if isinstance(stage, SolvedExtension):
            yield from fields.extension(stage)
        for problem in problems_of(stage):
            yield from fields.question(problem, stage)


@dataclass(frozen=True, slots=True)
class _Fields:
    lesson: SolvedLesson
    layout: Layout
    day: str

    @property
    def file(self) -> str:
        return self.lesson.lesson.name.replace(".", "-")

    def own(self, key: str) -> ExpectedField:
        told = said(self.layout, "sheet", key)
        told = f"{self.day}, {told}" if self.day else told
        return ExpectedField(f"{self.file}.{key}", told, f"the {key} line")

    def of(
        self, number: int, name: str, told: str, ticks: bool = False, several: bool = False
    ) -> ExpectedField:
        begin = f"{self.day}, question" if self.day else "Question"
        path, about = f"{self.file}.q{number}.{name}", f"question {number}"
        return ExpectedField(path, f"{begin} {number}, {told}", about, ticks, several)

    def extension(self, stage: SolvedExtension) -> Iterator[ExpectedField]:
        if stage.content.space is not Space.NONE:
            yield self.of(stage.number, "writing", "room to write", several=True)

    def question(self, problem: SolvedProblem, stage: SolvedStage) -> Iterator[ExpectedField]:
        number = problem.number
        if isinstance(stage, SolvedSort):
            for key in _CHOICES:
                yield self.of(number, key, said(self.layout, "choices", key), ticks=True)
            yield self.of(number, "because", said(self.layout, "sheet", "because"))
            return
        space = problem.content.space or _usual(stage)
        if space is Space.NONE:
            return
        if space is Space.WORKING and problem.content.starter is not None:
            yield self.of(number, "start", "the sentence to finish")
        if _is_worked_in(problem, stage, space):
            yield self.of(number, "working", "working", several=True)
        yield from self.answers(problem)

    def answers(self, problem: SolvedProblem) -> Iterator[ExpectedField]:
        answers = problem.solution.answers
        for place, (name, answer) in enumerate(answers.items(), 1):
            unit = before(answer) or after(answer)
            label = said(self.layout, "sheet", "answer") if len(answers) == 1 else name
            told = "answer" if len(answers) == 1 else f"answer for \u2018{_capital(name)}\u2019"
            if unit and unit.lower() != label.lower():
                told += f" in {_MONEY.get(unit, spoken(unit))}"
            own = "answer" if len(answers) == 1 else f"answer-{place}"
            yield self.of(problem.number, own, told)


def _usual(stage: SolvedStage) -> Space:
    return Space.LINE if isinstance(stage, SolvedRecap) else Space.WORKING


def _is_worked_in(problem: SolvedProblem, stage: SolvedStage, space: Space) -> bool:
    """True where there is room above the answer lines; a model that is begun is drawn in."""
    if space in (Space.LINE, Space.BOX):
        return False
    content = problem.content
    begun = content.show_model and problem.solution.figure is not None
    return not (space is Space.MODEL and begun and not isinstance(stage, SolvedSpot))


def _capital(name: str) -> str:
    return name[:1].upper() + name[1:]
