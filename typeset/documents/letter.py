"""The letter to the families, from the layout's own wording.

The wording is a plain text: a line that begins with # is a heading, one with - an item of a
list, and an empty line ends a paragraph.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, SolvedWeek
from typeset.arithmetic.names import listed
from typeset.documents.composer import HEADING_SCALE, TITLE_SCALE, Composer
from typeset.quantities.inline import Rich, words
from typeset.reading.content import END, NONE, SEPARATE
from typeset.setting.blocks import Block, Column, number_label, text_block
from typeset.setting.frames import Role
from typeset.setting.pieces import hanging, text

_BULLET_EMS = 1.1


class Answers(Enum):
    """Where the answers of a home pack are."""

    END = END
    SEPARATE = SEPARATE
    NONE = NONE


class _Kind(Enum):
    HEADING = "# "
    ITEM = "- "
    PARAGRAPH = ""


@dataclass(frozen=True, slots=True)
class _Part:
    """A heading, a paragraph or an item of a list."""

    kind: _Kind
    text: str


def letter_blocks(
    composer: Composer, solved: SolvedWeek, answers: Answers, column: Column
) -> Iterator[Block]:
    """Title and letter. Raises GlyphError, LayoutError."""
    style = column.style.scaled(TITLE_SCALE).bold()
    title = composer.rich("home", "title", week=solved.week.title)
    piece = text(title, style, column.width_pt, Role.TITLE)
    yield Block("the title", piece, keep_with_next=True, anchor="letter")
    for part in _parts(_letter(composer, solved, answers)):
        yield _block(part, column)


def _letter(composer: Composer, solved: SolvedWeek, answers: Answers) -> str:
    """The text of the letter with its names filled in."""
    return composer.say(
        "home",
        "letter",
        week=solved.week.title,
        **{"class": solved.week.class_name},
        aims="\n".join(_aims(composer, solved)),
        cautions="\n".join(_cautions(composer, solved)),
        answers=answers.value,
    )


def _aims(composer: Composer, solved: SolvedWeek) -> Iterator[str]:
    for each in solved.lessons:
        lesson = each.lesson
        names = {"day": lesson.day, "lesson": lesson.title, "aim": lesson.aim}
        yield composer.say("home", "aim line", **names)


def _cautions(composer: Composer, solved: SolvedWeek) -> Iterator[str]:
    """A line for each caution that a lesson names, in the order of the layout's texts."""
    for word in composer.layout.wording["cautions"]:
        places = [p for each in solved.lessons for p in _places(composer, each, word)]
        if places:
            caution = composer.say("cautions", word)
            where = listed(places, "and")
            yield composer.say("home", "caution line", where=where, caution=caution)


def _places(composer: Composer, solved: SolvedLesson, word: str) -> Iterator[str]:
    """Where in a lesson care is needed: throughout, or with its open task."""
    day = solved.lesson.day
    if word in {each.text for each in solved.lesson.cautions}:
        yield composer.say("home", "caution place", day=day, number="")
        return
    for stage in solved.stages:
        if isinstance(stage, SolvedExtension) and word in {e.text for e in stage.content.cautions}:
            yield composer.say("home", "caution place", day=day, number=str(stage.number))


def _parts(letter: str) -> Iterator[_Part]:
    """The letter line by line; lines of a paragraph or an item are joined."""
    open_part: _Part | None = None
    for line in (*letter.splitlines(), ""):
        line = line.strip()
        kind = next(each for each in _Kind if line.startswith(each.value))
        if open_part is not None and _ends(open_part, line, kind):
            yield open_part
            open_part = None
        if line:
            own = line.removeprefix(kind.value)
            open_part = _Part(kind, own) if open_part is None else _joined(open_part, own)


def _ends(part: _Part, line: str, kind: _Kind) -> bool:
    """True where the next line is no longer of this part; a heading has one line."""
    return part.kind is _Kind.HEADING or not line or kind is not _Kind.PARAGRAPH


def _joined(part: _Part, line: str) -> _Part:
    return _Part(part.kind, f"{part.text} {line}")


def _block(part: _Part, column: Column) -> Block:
    rich = words(part.text)
    match part.kind:
        case _Kind.HEADING:
            style = column.style.scaled(HEADING_SCALE).bold()
            piece = text(rich, style, column.width_pt, Role.HEADING)
            gap = column.gap(column.spacing.heading)
            return Block(f"the heading '{part.text}'", piece, gap, keep_with_next=True)
        case _Kind.ITEM:
            return item_block(part.text, "•", rich, column)
        case _Kind.PARAGRAPH:
            return text_block(part.text[:20], rich, column)


def item_block(name: str, mark: str, rich: Rich, column: Column) -> Block:
    """An item of a list behind its mark."""
    label = number_label(mark, column.style, Role.TEXT)
    indent = max(_BULLET_EMS * column.style.size_pt, label.width_pt)
    body = text(rich, column.style, column.text_pt - indent, Role.TEXT)
    return Block(name[:20], hanging(label, body, indent), column.gap(column.spacing.inner))
