"""Fields to type in: every room to answer in gets one, named after its question.

Nothing is ever filled in, and a tooltip says only what is printed beside the room.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson
from typeset.quantities.spoken import spoken
from typeset.setting.frames import Field, Page, Placed, Room

# What a room is for, where that is not simply its name or its label.
_TOLD = {"start": "the sentence to finish", "writing": "room to write", "working": "working"}
_MONEY = {"£": "pounds", "p": "pence"}


def with_fields(
    pages: Sequence[Page], lesson: SolvedLesson, size_pt: float, day: str = ""
) -> tuple[Page, ...]:
    """The pages of a lesson with a field on every room; `size_pt` is for what is typed.

    With a `day` the tooltips begin with it, where several lessons share a document.
    """
    return _Namer(pages, lesson, size_pt, day).pages()


class _Namer:
    """Names rooms by lesson, question and what they are for."""

    def __init__(
        self, pages: Sequence[Page], lesson: SolvedLesson, size_pt: float, day: str
    ) -> None:
        self.given = pages
        self.lesson = lesson
        self.size_pt = size_pt
        self.day = day
        self.numbers = dict(_numbers(lesson))
        # How many rooms want each name, and how many have got one.
        self.wanted = Counter(
            self.path(item, room) for page in pages for item in page.placed for room in item.rooms
        )
        self.got: Counter[str] = Counter()

    def pages(self) -> tuple[Page, ...]:
        """The pages again, with their fields."""
        return tuple(
            replace(page, placed=tuple(self.item(item) for item in page.placed))
            for page in self.given
        )

    def item(self, item: Placed) -> Placed:
        """The item with a field on each of its rooms."""
        return replace(item, fields=tuple(self.field(item, room) for room in item.rooms))

    def field(self, item: Placed, room: Room) -> Field:
        path = self.path(item, room)
        self.got[path] += 1
        several = self.wanted[path] > 1
        return Field(
            room.kind,
            f"{path}-{self.got[path]}" if several else path,
            self.tooltip(item, room, several),
            item.x_pt + room.x_pt,
            item.y_pt + room.y_pt,
            room.width_pt,
            room.height_pt,
            self.size_pt,
            room.several_lines,
        )

    def path(self, item: Placed, room: Room) -> str:
        """'tuesday.q4.answer', or 'tuesday.name' for what belongs to no question."""
        number = self.numbers.get(item.source)
        # A full stop would part the name in two.
        lesson = self.lesson.lesson.name.replace(".", "-")
        return f"{lesson}.q{number}.{room.name}" if number else f"{lesson}.{room.name}"

    def tooltip(self, item: Placed, room: Room, several: bool) -> str:
        """'Question 4, answer in gulls'."""
        number = self.numbers.get(item.source)
        parts = [self.day] if self.day else []
        if number:
            parts += [f"question {number}", _told(room, several)]
        else:
            parts.append(room.label)
        text = ", ".join(parts)
        return text[:1].upper() + text[1:]


def _numbers(lesson: SolvedLesson) -> Iterator[tuple[str, int]]:
    """The number of every question by the id of its problem."""
    for problem in lesson.problems():
        yield problem.content.id, problem.number
    for stage in lesson.stages:
        if isinstance(stage, SolvedExtension):
            yield stage.content.id, stage.number


def _told(room: Room, several: bool) -> str:
    if room.name != "answer":
        return _TOLD.get(room.name, room.label)
    what = f"answer for \u2018{room.label}\u2019" if several else "answer"
    unit = _MONEY.get(room.unit, spoken(room.unit))
    return f"{what} in {unit}" if unit and unit.lower() != room.label.lower() else what
