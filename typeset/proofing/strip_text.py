"""What the marking strips must say: each question's number and what is right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.answers import AnswerValue, answer_text
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedProblem,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
    problems_of,
)
from typeset.documents.layout import Layout
from typeset.proofing.booklet_text import spans
from typeset.proofing.expected import Expected, Part, Passage, called, passage, said
from typeset.proofing.twins import answers_told, twins_of
from typeset.quantities.inline import Rich, join, words
from typeset.reading.content import VERSIONS

# An adult's eyes, beside a pile of sheets: as small as a booklet may be.
LEAST_STRIP_PT = 9.0


def expect_strips(
    solved: SolvedWeek, layout: Layout, sisters: Sequence[SolvedWeek] = ()
) -> Expected:
    """Everything on the strips, in the order of reading; `sisters` are other versions."""
    strips = (_Strip(layout, solved, lesson, tuple(sisters)) for lesson in solved.lessons)
    return Expected(tuple(each for strip in strips for each in strip.passages()), None)


@dataclass(frozen=True, slots=True)
class _Strip:
    layout: Layout
    solved: SolvedWeek
    lesson: SolvedLesson
    sisters: tuple[SolvedWeek, ...]

    def passages(self) -> Iterator[Passage]:
        lesson = self.lesson.lesson
        title = said(self.layout, "strip", "lesson", day=lesson.day, lesson=lesson.title)
        yield passage(
            f"the title of the strip of {called(lesson)}", Part.HEADING, title, lesson.place
        )
        for stage in self.lesson.stages:
            if isinstance(stage, SolvedExtension):
                yield self.number(stage.number)
                told = said(self.layout, "strip", "open")
                yield passage(self.about(stage.number), Part.ANSWER, told, stage.content.place)
                continue
            for problem in problems_of(stage):
                yield self.number(problem.number)
                yield self.line(stage, problem)

    def about(self, number: int) -> str:
        return f"{called(self.lesson.lesson)}, question {number}"

    def number(self, number: int) -> Passage:
        about = self.about(number)
        return passage(about, Part.NUMBER, str(number), self.lesson.lesson.place, keeps=about)

    def line(self, stage: SolvedStage, problem: SolvedProblem) -> Passage:
        """What is right, with the values that it prints."""
        items: list[tuple[Rich, AnswerValue | None]] = []
        if isinstance(stage, SolvedSort):
            decision = problem.solution.kind.decision.name.lower()
            items.append((words(f"{said(self.layout, 'choices', decision)}; "), None))
        items.extend(self.answers(problem))
        if isinstance(stage, SolvedSpot):
            name = stage.misconception.name
            told = said(self.layout, "strip", "mistake", mistake=name)
            items.append((words(f"; {told}"), None))
        about = self.about(problem.number)
        rich = join([each for each, _ in items])
        made = passage(about, Part.ANSWER, rich, problem.content.place, keeps=about)
        return replace(made, values=tuple(spans(items)))

    def answers(self, problem: SolvedProblem) -> Sequence[tuple[Rich, AnswerValue | None]]:
        """The answers with their values; those of all versions where they differ."""
        twins = dict(twins_of(self.sisters, self.lesson, problem))
        if twins:
            every = twins | {self.solved.version.value: problem}
            told = [
                said(
                    self.layout,
                    "strip",
                    "version answer",
                    version=said(self.layout, "versions", version),
                    answer=answers_told(every[version]),
                )
                for version in VERSIONS
                if version in every
            ]
            return [(words("; ".join(told)), None)]
        answers = problem.solution.answers
        items: list[tuple[Rich, AnswerValue | None]] = []
        for index, (name, answer) in enumerate(answers.items()):
            if len(answers) > 1:
                items.append((words(f"{'; ' if index else ''}{name}: "), None))
            items.append((answer_text(answer), answer))
        return items
