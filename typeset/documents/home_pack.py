"""The home pack: letter, contents, the week's sheets and their answers, as one document.

Each sheet is laid out by itself, exactly as it is printed alone; then the pages of all parts
are put one after another and numbered through.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedPractise,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
)
from typeset.documents.answer_booklet import Answers as AnswerBlocks
from typeset.documents.answer_booklet import answers_anchor
from typeset.documents.composer import (
    TITLE_SCALE,
    Composer,
    stage_heading,
)
from typeset.documents.fields import with_fields
from typeset.documents.layout import Layout
from typeset.documents.letter import Answers, letter_blocks
from typeset.documents.numbering import footless, stage_anchor, with_feet
from typeset.documents.task_sheet import lay_out_sheet
from typeset.documents.versions import Versions, version_mark
from typeset.errors import FitError
from typeset.quantities.inline import words
from typeset.setting.blocks import Block, Column, Spacing, text_block
from typeset.setting.frames import Bookmark, Document, Numbering, Page, PageLabels, Role
from typeset.setting.linked import Linked
from typeset.setting.pages import Compose, PageFrame, PageLayout, fill_sides, flow
from typeset.setting.paragraphs import natural_width_pt
from typeset.setting.pieces import hanging, text
from typeset.setting.stretch import Stretch

ANSWERS_ANCHOR = "answers"
CONTENTS_ANCHOR = "contents"
LETTER_ANCHOR = "letter"
# A letter is read on one side; lines closer than a pupils' sheet has them.
_LETTER_LEADING = 1.35
_LETTER_SPACING = Spacing(
    inner=Stretch(0.12, 0.4, 0.7),
    paragraph=Stretch(0.35, 0.7, 1.1),
    heading=Stretch(0.7, 1.2, 2.0),
)
_TO_TEXT_EMS = 1.2


@dataclass(frozen=True, slots=True)
class _Part:
    """Pages without feet, and the frame that has them."""

    layout: PageLayout
    frame: PageFrame

    @property
    def sides(self) -> int:
        return len(self.layout.pages)


def compose_home_pack(
    solved: SolvedWeek, layout: Layout, answers: Answers, fields: bool = False
) -> tuple[Document, PageLayout]:
    """The pack of a week in one version, with the answers at its end where they are wanted;
    with `fields` its sheets can be typed in.

    Raises FitError where a sheet finds no room, GlyphError.
    """
    layout = layout.for_home()
    pack = _Pack(Composer(layout), solved, answers)
    sheets = [_Part(*lay_out_sheet(solved, each, layout)) for each in solved.lessons]
    if fields:
        sheets = [_filled_in(*each) for each in zip(sheets, solved.lessons, strict=True)]
    back = [pack.answers_part()] if answers is Answers.END else []
    front = pack.front(sheets)
    parts = [front, *sheets, *back]
    pages = _numbered_through(parts)
    document = Document(
        title=pack.title(),
        subject=solved.week.title,
        pages=pages,
        type_size_pt=min(part.layout.type_size_pt for part in sheets),
        fingerprint=solved.week.fingerprint,
        tagged=True,
        bookmarks=(*pack.bookmarks(), *(pack.answer_bookmarks() if back else ())),
        labels=_labels(front, sheets, back),
    )
    return document, _as_one(parts, document)


def compose_home_answers(solved: SolvedWeek, layout: Layout) -> tuple[Document, PageLayout]:
    """The answers of the pack as a file of their own. Raises FitError, GlyphError."""
    pack = _Pack(Composer(layout.for_home()), solved, Answers.SEPARATE)
    part = pack.answers_part()
    document = Document(
        title=f"{pack.title()} – {pack.composer.say('home', 'answers').lower()}",
        subject=solved.week.title,
        pages=_numbered_through([part]),
        type_size_pt=part.layout.type_size_pt,
        fingerprint=solved.week.fingerprint,
        tagged=True,
        bookmarks=tuple(pack.answer_bookmarks()),
    )
    return document, _as_one([part], document)


def _filled_in(sheet: _Part, lesson: SolvedLesson) -> _Part:
    """The sheet with fields to type in, told apart by their day."""
    size_pt = sheet.layout.type_size_pt
    pages = with_fields(sheet.layout.pages, lesson, size_pt, lesson.lesson.day)
    return replace(sheet, layout=replace(sheet.layout, pages=pages))


def _numbered_through(parts: Sequence[_Part]) -> tuple[Page, ...]:
    """The pages of all parts with feet that count them through."""
    count = sum(part.sides for part in parts)
    pages: list[Page] = []
    for part in parts:
        pages += with_feet(part.layout.pages, part.frame, len(pages), count)
    return tuple(pages)


def _labels(front: _Part, sheets: Sequence[_Part], back: Sequence[_Part]) -> tuple[PageLabels, ...]:
    """i, ii for the letter, 1, 2 … for the sheets, A-1, A-2 … for the answers."""
    first_answer = front.sides + sum(sheet.sides for sheet in sheets)
    labels = [PageLabels(0, numbering=Numbering.ROMAN), PageLabels(front.sides)]
    return (*labels, *([PageLabels(first_answer, "A-")] if back else []))


def _as_one(parts: Sequence[_Part], document: Document) -> PageLayout:
    fills = tuple(fill for part in parts for fill in part.layout.fills)
    looseness = tuple(each for part in parts for each in part.layout.looseness)
    return PageLayout(document.pages, document.type_size_pt, fills, looseness)


def _on_one_side(compose: Compose, frame: PageFrame, size_pt: float) -> PageLayout:
    """On one side where that can be, its lines closer if need be; else on as many as it takes."""
    flowing = flow(compose, frame, size_pt)
    if len(flowing.pages) == 1:
        return flowing
    try:
        return fill_sides(compose, frame, 1, (size_pt,))
    except FitError:
        return flowing


@dataclass(frozen=True, slots=True)
class _Pack:
    """The parts of a pack that are its own, and what leads to where."""

    composer: Composer
    solved: SolvedWeek
    answers: Answers

    @property
    def mark(self) -> str:
        return version_mark(self.composer.layout, self.solved)

    @property
    def letter_size_pt(self) -> float:
        """A little larger than what adults look up, and never larger than the sheets."""
        layout = self.composer.layout
        return min(layout.type_size.smallest, layout.booklet.size_pt + 1.0)

    def title(self) -> str:
        """What the file calls itself."""
        title = self.composer.say("home", "title", week=self.solved.week.title)
        return f"{title} ({self.mark})" if self.mark else title

    def foot(self, key: str) -> str:
        week = self.solved.week
        names = {"week": week.title, "class": week.class_name, "version": self.mark}
        return self.composer.say("home", key, **names)

    def front(self, sheets: Sequence[_Part]) -> _Part:
        """Letter and contents; the contents tell pages, which depend on how many these take."""
        frame = self.composer.frame(self.foot("foot"), self.letter_size_pt)
        sides = 1
        part = self._front_before(sheets, sides, frame)
        while part.sides > sides:
            sides = part.sides
            part = self._front_before(sheets, sides, frame)
        return part

    def _front_before(self, sheets: Sequence[_Part], sides: int, frame: PageFrame) -> _Part:
        """The same where it is taken to have so many sides."""

        def blocks(size_pt: float) -> list[Block]:
            column = self.composer.column(size_pt, _LETTER_LEADING, _LETTER_SPACING)
            letter = letter_blocks(self.composer, self.solved, self.answers, column)
            return [*letter, *self.contents(sheets, sides, column)]

        return _Part(_on_one_side(blocks, footless(frame), self.letter_size_pt), frame)

    def contents(self, sheets: Sequence[_Part], sides: int, column: Column) -> Iterator[Block]:
        """A line for every sheet, and one for the answers, each leading there."""
        heading = self.composer.rich("home", "contents")
        yield replace(stage_heading("the contents", heading, column), anchor=CONTENTS_ANCHOR)
        lines: list[tuple[int, str, str]] = []
        page = sides + 1
        for lesson, sheet in zip(self.solved.lessons, sheets, strict=True):
            lines.append((page, self.lesson_line(lesson), lesson.lesson.name))
            page += sheet.sides
        if self.answers is Answers.END:
            lines.append((page, self.composer.say("home", "answers"), ANSWERS_ANCHOR))
        pages = [self.composer.rich("home", "contents page", page=str(n)) for n, _, _ in lines]
        bold = column.style.bold()
        widest = max(natural_width_pt(each, bold) for each in pages) + 0.1
        indent = widest + _TO_TEXT_EMS * column.style.size_pt
        for index, ((_, line, anchor), number) in enumerate(zip(lines, pages, strict=True)):
            label = text(number, bold, widest, Role.TEXT)
            body = text(words(line), column.style, column.width_pt - indent, Role.TEXT)
            piece = Linked(hanging(label, body, indent), anchor)
            gap, is_last = column.gap(column.spacing.inner), index == len(lines) - 1
            yield Block(f"the line of {line}", piece, gap, keep_with_next=not is_last)

    def lesson_line(self, lesson: SolvedLesson) -> str:
        """'Tuesday: More terns than gulls'."""
        names = {"day": lesson.lesson.day, "lesson": lesson.lesson.title}
        return self.composer.say("home", "contents line", **names)

    def answers_part(self) -> _Part:
        """The answers, shorter than the adults' booklet tells them, from a new side on."""
        composer, size_pt = self.composer, self.composer.layout.booklet.size_pt
        frame = composer.frame(self.foot("answers foot"), size_pt)
        answers = AnswerBlocks(composer, self.solved, Versions(self.solved))

        def blocks(size: float) -> list[Block]:
            column = answers.column(size)
            style = column.style.scaled(TITLE_SCALE).bold()
            title = text(composer.rich("home", "answers"), style, column.width_pt, Role.TITLE)
            about = composer.rich("home", "answers about")
            return [
                Block("the title", title, keep_with_next=True, anchor=ANSWERS_ANCHOR),
                text_block("the introduction", about, column),
                *answers.lessons(column, own_sides=False),
            ]

        return _Part(flow(blocks, footless(frame), size_pt), frame)

    def bookmarks(self) -> Iterator[Bookmark]:
        """The letter, the contents, and each sheet with its stages below it."""
        title = self.composer.say("home", "title", week=self.solved.week.title)
        yield Bookmark(title, LETTER_ANCHOR)
        yield Bookmark(self.composer.say("home", "contents"), CONTENTS_ANCHOR)
        for lesson in self.solved.lessons:
            name = lesson.lesson.name
            yield Bookmark(self.lesson_line(lesson), name)
            for index, stage in enumerate(lesson.stages):
                yield Bookmark(self.stage_name(stage), stage_anchor(name, index), 1)

    def answer_bookmarks(self) -> Iterator[Bookmark]:
        """The answers, with each lesson below."""
        yield Bookmark(self.composer.say("home", "answers"), ANSWERS_ANCHOR)
        for lesson in self.solved.lessons:
            yield Bookmark(self.lesson_line(lesson), answers_anchor(lesson), 1)

    def stage_name(self, stage: SolvedStage) -> str:
        """The heading of the stage on the sheet."""
        match stage:
            case SolvedRecap():
                return self.composer.say("headings", "recap")
            case SolvedSpot():
                return self.composer.say("headings", "spot")
            case SolvedSort():
                return self.composer.say("headings", "sort")
            case SolvedPractise():
                return self.composer.say("headings", "practise")
            case SolvedExtension():
                return self.composer.say("headings", "extension", title=stage.content.title)
