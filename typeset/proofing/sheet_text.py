"""What a task sheet must say, from its title to its last unit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.answers import AnswerValue, WithRemainder, answer_text
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
from typeset.documents.layout import Layout
from typeset.errors import Place
from typeset.proofing.expected import Drawn, Expected, Part, Passage, passage, said
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE
from typeset.proofing.story_values import story_passage
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, plain
from typeset.quantities.units import Dimension
from typeset.reading.class_list import Pupil
from typeset.reading.content import CORE, LAST_WEEK, Space

_CHOICES = ("multiply", "add", "both", "neither")


def expect_sheet(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout, pupil: Pupil | None = None
) -> Expected:
    """Everything on the sheet of this lesson, in the order of reading, with the pupil's name
    where it is a named one."""
    sheet = _Sheet(layout, lesson, pupil)
    names = {
        "week": solved.week.title,
        "class": solved.week.class_name,
        "day": lesson.lesson.day,
        "lesson": lesson.lesson.title,
        "version": mark_of(solved, layout),
    }
    foot = said(layout, "sheet", "foot", **names)
    named = said(layout, "sheet", "named foot", pupil=pupil.name, foot=foot) if pupil else foot
    return Expected(
        passages=tuple(sheet.passages()),
        foot_left=named,
        first_foot=foot,
        secrets=tuple(secrets_of(lesson)),
    )


def mark_of(solved: SolvedWeek, layout: Layout) -> str:
    """What tells the sheet from its sisters; empty where it has none."""
    if solved.version.value == CORE and solved.week.versions == (CORE,):
        return ""
    return said(layout, "versions", solved.version.value)


def secrets_of(lesson: SolvedLesson) -> Iterator[tuple[str, str]]:
    """The answers of a lesson, each with the question that it belongs to."""
    for problem in lesson.problems():
        for answer in problem.solution.answers.values():
            yield f"question {problem.number}", plain(answer_text(answer))


@dataclass(frozen=True, slots=True)
class _Sheet:
    layout: Layout
    lesson: SolvedLesson
    pupil: Pupil | None = None

    def say(self, key: str, **names: str) -> str:
        return said(self.layout, "sheet", key, **names)

    def passages(self) -> Iterator[Passage]:
        """Name and date, title and aim, then stage after stage."""
        lesson, shows = self.lesson.lesson, self.layout.sheet
        for key in ("name", "date") if shows.name_and_date or self.pupil else ():
            yield self.to_fill_in(key)
        yield passage("the title", Part.TITLE, lesson.title, lesson.place)
        if shows.aim:
            aim = f"{self.say('aim')}: {lesson.aim}"
            yield passage("the aim", Part.TEXT, aim, lesson.place)
        for stage in self.lesson.stages:
            yield from self.stage(stage)

    def to_fill_in(self, key: str) -> Passage:
        """A line to fill in; the name line is filled in where the sheet is a pupil's own."""
        if key == "name" and self.pupil:
            text = f"{self.say(key)} {self.pupil.name}"
            return passage("the name line", Part.TEXT, text, self.pupil.place)
        return passage(f"the {key} line", Part.ROOM, f"{self.say(key)} {WRITING_RULE}")

    def stage(self, stage: SolvedStage) -> Iterator[Passage]:
        match stage:
            case SolvedRecap():
                yield from self.opening("recap", self.look_back(stage))
                yield from self.questions(stage.problems, Space.LINE)
            case SolvedSpot():
                yield from self.opening("spot", self.instruct("spot", pupil=stage.pupil))
                yield from self.spot(stage)
            case SolvedSort():
                yield from self.opening("sort", self.instruct("sort"))
                for problem in stage.problems:
                    yield from self.sorted_question(problem)
            case SolvedPractise():
                yield from self.opening("practise", self.instruct("practise"))
                for each in stage.sets:
                    name = self.say("set", letter=each.name)
                    yield self.heading(f"the heading of set {each.name}", name)
                    yield from self.questions(each.problems, Space.WORKING)
            case SolvedExtension():
                title = stage.content.title
                yield from self.opening("extension", self.instruct("extension"), title=title)
                yield from self.extension(stage)

    def opening(self, key: str, instruction: str, **names: str) -> Iterator[Passage]:
        """The heading of a stage, and what to do in it."""
        text = said(self.layout, "headings", key, **names)
        heading = self.heading(f"the heading '{text}'", text)
        yield replace(heading, drawn=Drawn.RULE)
        yield passage(f"the instruction under '{text}'", Part.TEXT, instruction, self.place)

    def heading(self, about: str, text: str) -> Passage:
        return passage(about, Part.HEADING, text, self.place)

    @property
    def place(self) -> Place:
        return self.lesson.lesson.place

    def instruct(self, key: str, **names: str) -> str:
        return said(self.layout, "instructions", key, **names)

    def look_back(self, stage: SolvedRecap) -> str:
        if not stage.titles:
            return self.instruct("recap first")
        quoted = [title if title == LAST_WEEK else f"\u2018{title}\u2019" for title in stage.titles]
        several = f"{', '.join(quoted[:-1])} and {quoted[-1]}"
        return self.instruct("recap", lessons=several if quoted[1:] else quoted[0])

    def questions(self, problems: Sequence[SolvedProblem], usual: Space) -> Iterator[Passage]:
        for problem in problems:
            yield from self.question(problem)
            if problem.content.show_model and problem.solution.figure is not None:
                yield self.figure(problem)
            yield from self.begun(problem, usual)
            yield from self.room(problem, usual)

    def begun(self, problem: SolvedProblem, usual: Space) -> Iterator[Passage]:
        """A sentence for the pupil to finish."""
        starter = problem.content.starter
        if starter is not None and (problem.content.space or usual) is Space.WORKING:
            about = f"question {problem.number}"
            text = f"{starter or self.say('starter')} {WRITING_RULE}"
            yield passage(about, Part.ROOM, text, problem.content.place, keeps=about)

    def question(self, problem: SolvedProblem) -> Iterator[Passage]:
        about = f"question {problem.number}"
        number, place = str(problem.number), problem.content.story.place
        yield passage(about, Part.NUMBER, number, place, keeps=about)
        yield story_passage(problem, about)

    def figure(self, problem: SolvedProblem) -> Passage:
        about = f"question {problem.number}"
        empty = passage(about, Part.FIGURE, "", problem.content.place, keeps=about)
        return Passage(
            about,
            Part.FIGURE,
            (),
            empty.source,
            about,
            figure=problem.solution.figure,
            show=Show.FIRST_STEP,
        )

    def room(self, problem: SolvedProblem, usual: Space) -> Iterator[Passage]:
        """The answer lines: label, rule or box, unit."""
        space = problem.content.space or usual
        if space is Space.NONE:
            return
        about, answers = f"question {problem.number}", problem.solution.answers
        rule = OPEN_BOX if space is Space.BOX else WRITING_RULE
        for name, answer in answers.items():
            label = self.say("answer") if len(answers) == 1 else name[:1].upper() + name[1:]
            text = f"{label} {before(answer)} {rule} {after(answer)}"
            yield passage(about, Part.ROOM, text, problem.content.place, keeps=about)

    def spot(self, stage: SolvedSpot) -> Iterator[Passage]:
        """The story, the wrong working of the pupil, and room for the right one."""
        yield from self.question(stage.problem)
        about, place = f"question {stage.problem.number}", stage.problem.content.place
        lines: list[str | Rich] = [self.say("working by", pupil=stage.pupil)]
        for step in stage.mistake.steps:
            lines.append(step.sentence)
            if step.equation is not None:
                lines.append((step.equation.written(),))
        for line in lines:
            working = passage(about, Part.WORKING, line, place, keeps=about)
            yield replace(working, drawn=Drawn.FRAME)
        yield from self.begun(stage.problem, Space.WORKING)
        yield from self.room(stage.problem, Space.WORKING)

    def sorted_question(self, problem: SolvedProblem) -> Iterator[Passage]:
        """The story, the boxes to tick, and a line for the reason."""
        yield from self.question(problem)
        about, place = f"question {problem.number}", problem.content.place
        choices = (said(self.layout, "choices", key) for key in _CHOICES)
        ticks = " ".join(f"{OPEN_BOX} {choice}" for choice in choices)
        yield passage(about, Part.ROOM, ticks, place, keeps=about)
        because = f"{self.say('because')} {WRITING_RULE}"
        yield passage(about, Part.ROOM, because, place, keeps=about)

    def extension(self, stage: SolvedExtension) -> Iterator[Passage]:
        about, place = f"question {stage.number}", stage.content.place
        yield passage(about, Part.NUMBER, str(stage.number), place, keeps=about)
        yield passage(about, Part.STORY, stage.story, stage.content.story.place, keeps=about)


def before(answer: AnswerValue) -> str:
    """What stands before the rule: the pound sign of a sum of a pound or more."""
    return "£" if _is_money(answer) and not _is_pence(answer) else ""


def after(answer: AnswerValue) -> str:
    """What stands after the rule: the unit, always of many, so that it gives nothing away."""
    if isinstance(answer, WithRemainder):
        many = answer.groups.unit.plural
        return f"{many} and some left over" if many else ""
    if not isinstance(answer, Amount):
        return ""
    if _is_money(answer):
        return "p" if _is_pence(answer) else ""
    return answer.unit.plural


def _is_money(answer: AnswerValue) -> bool:
    return isinstance(answer, Amount) and answer.unit.dimension is Dimension.MONEY


def _is_pence(answer: AnswerValue) -> bool:
    return isinstance(answer, Amount) and answer.value < 1
