"""What the sheet for the pupils' own problems must say, and the rooms that it must give."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek, ToldOwnProblems
from typeset.documents.layout import Layout
from typeset.proofing.expected import Expected, Part, Passage, passage, said, with_values
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE
from typeset.proofing.promises import Promise
from typeset.proofing.story_values import names_in
from typeset.reading.content import Space

# The least lines for a question, and for an answer beside a model as high.
_QUESTION_LINES, _ANSWER_LINES = 2, 4


def expect_own_problems(solved: SolvedWeek, lesson: SolvedLesson, layout: Layout) -> Expected:
    """Everything on the sheet, in the order of reading. There are no answers to keep secret."""
    names = {
        "week": solved.week.title,
        "class": solved.week.class_name,
        "day": lesson.lesson.day,
        "lesson": lesson.lesson.title,
        "version": "",
    }
    foot = said(layout, "sheet", "foot", **names)
    passages = tuple(_passages(lesson.own, layout)) if lesson.own else ()
    return Expected(passages, foot)


def _passages(own: ToldOwnProblems, layout: Layout) -> Iterator[Passage]:
    content = own.content
    for key in ("name", "date") if layout.sheet.name_and_date else ():
        line = f"{said(layout, 'sheet', key)} {WRITING_RULE}"
        yield passage(f"the {key} line", Part.ROOM, line)
    yield passage("the title", Part.TITLE, content.title, content.place)
    story = passage("the story", Part.STORY, own.story, content.story.place)
    amounts = [own.amounts[name] for name in names_in(content.story.template)]
    yield with_values(story, own.story, amounts)
    about = said(layout, "own", "about", count=str(content.frames))
    yield passage("what to do", Part.TEXT, about, content.place)
    for number in range(1, content.frames + 1):
        yield from _frame(number, own, layout)


def _frame(number: int, own: ToldOwnProblems, layout: Layout) -> Iterator[Passage]:
    """The heading of a problem, and what stands over each of its rooms."""
    place = own.content.place
    heading = said(layout, "own", "frame", number=str(number))
    yield passage(f"the heading of problem {number}", Part.HEADING, heading, place)
    for key in ("question", "model", "answer", "hard"):
        about = _about(key, number)
        yield passage(about, Part.NUMBER, said(layout, "own", key), place, keeps=about)
    about = _about("hard", number)
    choices = (said(layout, "own", key) for key in ("easy", "middling", "tricky"))
    ticks = " ".join(f"{OPEN_BOX} {choice}" for choice in choices)
    yield passage(about, Part.ROOM, ticks, place, keeps=about)
    because = f"{said(layout, 'own', 'because')} {WRITING_RULE}"
    yield passage(about, Part.ROOM, because, place, keeps=about)


def promised_frames(lesson: SolvedLesson, layout: Layout) -> Iterator[Promise]:
    """The rooms of every problem."""
    spaces, page_mm = layout.answer_spaces, layout.page.height_mm
    question = spaces.least_lines(_QUESTION_LINES, page_mm)
    answer = spaces.least_lines(_ANSWER_LINES, page_mm)
    for number in range(1, (lesson.own.content.frames if lesson.own else 0) + 1):
        for key, rows in (("question", question), ("answer", answer)):
            least = rows * spaces.ruled_mm
            yield Promise(_about(key, number), Space.LINES, rows, least)
        yield Promise(_about("model", number), Space.MODEL, 0, answer * spaces.ruled_mm)
        yield Promise(_about("hard", number), Space.LINE, 0, spaces.line_mm, sorts=True)


def sides_of_frames(lesson: SolvedLesson) -> int:
    """Two problems to a side."""
    frames = lesson.own.content.frames if lesson.own else 0
    return (frames + 1) // 2


def _about(key: str, number: int) -> str:
    return f"problem {number}, {key}"
