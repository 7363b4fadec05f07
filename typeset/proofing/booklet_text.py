"""What the answer booklet must say: for every question its answer, ways, model and mistakes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.answers import AnswerValue, answer_text
from typeset.arithmetic.figures import Show
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
)
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.workings import Step, Working
from typeset.documents.layout import Layout
from typeset.errors import Place
from typeset.proofing.expected import Drawn, Expected, Part, Passage, Value, called, passage, said
from typeset.proofing.story_values import amounts_told, story_passage
from typeset.proofing.twins import answers_told, twins_of
from typeset.quantities.inline import Rich, join, plain, words

_LETTERS = re.compile(r"^\S+")
_WAY_KEYS = ("one way", "another way", "another way")


def expect_booklet(
    solved: SolvedWeek, layout: Layout, about: str, sisters: Sequence[SolvedWeek] = ()
) -> Expected:
    """Everything in the booklet, in the order of reading; `about` stands in its foot line.

    `sisters` are the other versions of the week, easiest first.
    """
    title = said(layout, "booklet", "title")
    passages = [*booklet_head(solved, layout)]
    for lesson in solved.lessons:
        passages.extend(lesson_passages(lesson, layout, sisters))
    return Expected(tuple(passages), f"{title} · {about}")


def booklet_head(solved: SolvedWeek, layout: Layout) -> Iterator[Passage]:
    """What stands before the first lesson."""
    week = solved.week
    names = {"week": week.title, "class": week.class_name}
    yield passage("the title", Part.TITLE, said(layout, "booklet", "title"))
    yield passage("the subtitle", Part.TEXT, said(layout, "booklet", "subtitle", **names))
    yield passage("the introduction", Part.TEXT, said(layout, "booklet", "about"))
    if week.note:
        yield passage("the note", Part.TEXT, week.note, week.place)


def lesson_passages(
    lesson: SolvedLesson, layout: Layout, sisters: Sequence[SolvedWeek] = ()
) -> Iterator[Passage]:
    """The answers of one lesson, from its heading on; `sisters` as for the booklet."""
    return _Lesson(layout, lesson, tuple(sisters)).passages()


@dataclass(frozen=True, slots=True)
class _Lesson:
    layout: Layout
    lesson: SolvedLesson
    sisters: tuple[SolvedWeek, ...] = ()

    def say(self, key: str, **names: str) -> str:
        return said(self.layout, "booklet", key, **names)

    def about(self, number: int) -> str:
        """'Tuesday, question 7': numbers start again every day."""
        return f"{called(self.lesson.lesson)}, question {number}"

    @property
    def place(self) -> Place:
        return self.lesson.lesson.place

    def passages(self) -> Iterator[Passage]:
        lesson = self.lesson.lesson
        heading = self.say("lesson", day=lesson.day, lesson=lesson.title)
        yield passage(f"the heading of {called(lesson)}", Part.HEADING, heading, self.place)
        for stage in self.lesson.stages:
            yield from self.stage(stage)

    def stage(self, stage: SolvedStage) -> Iterator[Passage]:
        match stage:
            case SolvedRecap():
                yield self.heading("recap")
                yield from self.entries(stage.problems)
            case SolvedSpot():
                yield self.heading("spot")
                yield from self.spot(stage)
            case SolvedSort():
                yield self.heading("sort")
                for problem in stage.problems:
                    yield from self.entry(problem, (self.verdict(problem),))
            case SolvedPractise():
                yield self.heading("practise")
                for each in stage.sets:
                    name = said(self.layout, "sheet", "set", letter=each.name)
                    about = f"{called(self.lesson.lesson)}, the heading of set {each.name}"
                    yield passage(about, Part.HEADING, name, self.place)
                    yield from self.entries(each.problems)
            case SolvedExtension():
                yield self.heading("extension", title=stage.content.title)
                yield from self.extension(stage)

    def heading(self, key: str, **names: str) -> Passage:
        text = said(self.layout, "headings", key, **names)
        about = f"{called(self.lesson.lesson)}, the heading '{text}'"
        return replace(passage(about, Part.HEADING, text, self.place), drawn=Drawn.RULE)

    def entries(self, problems: Sequence[SolvedProblem]) -> Iterator[Passage]:
        for problem in problems:
            yield from self.entry(problem)

    def entry(
        self, problem: SolvedProblem, told: tuple[Rich | str, ...] = (), spotted: bool = False
    ) -> Iterator[Passage]:
        """One question: story, answer, what its stage adds, ways, model, mistakes."""
        about, place = self.about(problem.number), problem.content.place
        yield passage(about, Part.NUMBER, str(problem.number), place, keeps=about)
        if self.layout.booklet.stories:
            yield story_passage(problem, about)
        yield self.answers(problem)
        for version, twin in twins_of(self.sisters, self.lesson, problem):
            line = said(
                self.layout,
                "booklet",
                "version answer",
                version=said(self.layout, "versions", version),
                numbers=", ".join(plain(each) for each in amounts_told(twin)),
                answer=answers_told(twin),
            )
            yield passage(about, Part.ANSWER, line, place, keeps=about)
        for each in told:
            yield passage(about, Part.TEXT, each, place, keeps=about)
        ways = problem.solution.workings[: self.layout.booklet.ways]
        for way, key in zip(ways, _WAY_KEYS, strict=False):
            yield from self.way(problem, way, key)
        if self.layout.booklet.models and problem.solution.figure is not None:
            empty = passage(about, Part.FIGURE, "", place, keeps=about)
            figure = problem.solution.figure
            yield replace(empty, figure=figure, show=Show.COMPLETE, may_part=True)
        if not spotted:
            yield from (replace(each, may_part=True) for each in self.mistakes(problem))

    def answers(self, problem: SolvedProblem) -> Passage:
        """'Answer: 60 gulls', with the values that it prints."""
        about, answers = self.about(problem.number), problem.solution.answers
        items: list[tuple[Rich, AnswerValue | None]] = [(words(f"{self.say('answer')}: "), None)]
        for index, (name, answer) in enumerate(answers.items()):
            if len(answers) > 1:
                items.append((words(f"{'; ' if index else ''}{name}: "), None))
            items.append((answer_text(answer), answer))
        rich = join([each for each, _ in items])
        made = passage(about, Part.ANSWER, rich, problem.content.place, keeps=about)
        return replace(made, values=tuple(spans(items)))

    def verdict(self, problem: SolvedProblem) -> Rich:
        kind = problem.solution.kind
        decision = said(self.layout, "choices", kind.decision.name.lower())
        sorts, why = self.say("sorted", decision=decision), self.say("why")
        return (*words(f"{sorts} {why} "), *kind.reason)

    def spot(self, stage: SolvedSpot) -> Iterator[Passage]:
        """The question with its mistake named, told and asked about."""
        right = stage.problem.solution.answers
        # A mistake may answer only some of several questions.
        name = next(each for each in right if each in stage.mistake.answers)
        known = stage.misconception
        shown = self.say(
            "what it shows",
            pupil=stage.pupil,
            shows=known.shows,
            wrong=plain(answer_text(stage.mistake.answers[name])),
            right=plain(answer_text(right[name])),
        )
        told = f"{self.say('the mistake')}: {known.name}. {shown} {self.ask(known.prompt)}"
        yield from self.entry(stage.problem, (told,), spotted=True)

    def ask(self, prompt: str) -> str:
        return self.say("ask", prompt=prompt)

    def way(self, problem: SolvedProblem, way: Working, key: str) -> Iterator[Passage]:
        about, place = self.about(problem.number), problem.content.place
        strategy = way.strategy[:1].lower() + way.strategy[1:]
        yield passage(about, Part.WORKING, self.say(key, strategy=strategy), place, keeps=about)
        for step in way.steps:
            yield from _step(step, about, place)

    def mistakes(self, problem: SolvedProblem) -> Iterator[Passage]:
        about, place = self.about(problem.number), problem.content.place
        mistakes = problem.solution.mistakes[: self.layout.booklet.mistakes]
        if mistakes:
            yield passage(about, Part.TEXT, self.say("listen for"), place, keeps=about)
        for mistake in mistakes:
            known = MISCONCEPTIONS[mistake.misconception]
            wrong = ", ".join(plain(answer_text(each)) for each in mistake.answers.values())
            line = self.say("mistake line", wrong=wrong, shows=known.shows, prompt=known.prompt)
            yield passage(about, Part.TEXT, f"• {line}", place, keeps=about)

    def extension(self, stage: SolvedExtension) -> Iterator[Passage]:
        about, content = self.about(stage.number), stage.content
        yield passage(about, Part.NUMBER, str(stage.number), content.place, keeps=about)
        if self.layout.booklet.stories:
            yield passage(about, Part.STORY, stage.story, content.story.place, keeps=about)
        if stage.hints:
            yield passage(about, Part.TEXT, self.say("hints"), content.place, keeps=about)
        for index, (hint, typed) in enumerate(zip(stage.hints, content.hints, strict=True), 1):
            numbered = (*words(f"{index} "), *hint)
            yield passage(about, Part.TEXT, numbered, typed.place, keeps=about)
        yield from (replace(each, may_part=True) for each in self.notes(stage, about))

    def notes(self, stage: SolvedExtension, about: str) -> Iterator[Passage]:
        """What to look for in an open task."""
        content = stage.content
        if stage.look_for:
            yield passage(about, Part.TEXT, self.say("look for"), content.place, keeps=about)
        for note, typed in zip(stage.look_for, content.look_for, strict=True):
            yield passage(about, Part.TEXT, (*words("• "), *note), typed.place, keeps=about)


def _step(step: Step, about: str, place: Place) -> Iterator[Passage]:
    if step.sentence:
        yield passage(about, Part.WORKING, step.sentence, place, keeps=about)
    if step.equation is not None:
        yield passage(about, Part.WORKING, (step.equation.written(),), place, keeps=about)


def spans(items: Sequence[tuple[Rich, AnswerValue | None]]) -> Iterator[Value]:
    """Where each answer of the line is printed, in words."""
    text, starts = "", []
    for rich, answer in items:
        own = plain(rich)
        if answer is not None:
            starts.append((answer, len(text), len(text) + len(own)))
        text += own
    for answer, start, end in starts:
        first, last = len(text[:start].split()), len(text[:end].split()) - 1
        # What follows the answer within its last word, such as a semicolon.
        trail = len(text[end:]) - len(_LETTERS.sub("", text[end:], count=1))
        yield Value(answer, first, last, 0, trail)
