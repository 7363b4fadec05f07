"""The page that says what was made, how much paper it takes, and how to print it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.composer import TITLE_SCALE, Composer, stage_heading
from typeset.documents.layout import Layout
from typeset.documents.print_list import (
    PrintedFile,
    Printing,
    how,
    kind_name,
    printings,
    say,
    told_file,
)
from typeset.quantities.inline import words
from typeset.setting.blocks import Block, Column, Spacing, cell_width_pt, text_block
from typeset.setting.frames import Document, Role
from typeset.setting.pages import PageLayout, flow
from typeset.setting.paragraphs import natural_width_pt
from typeset.setting.pieces import Columns, text
from typeset.setting.stretch import Stretch

# The largest of these at which all is on one page.
_SIZES_PT = (11.0, 10.5, 10.0, 9.5, 9.0)
_LEADING = 1.3
_COLUMNS = 2
_SPACING = Spacing(
    paragraph=Stretch(0.4, 0.6, 0.6),
    question=Stretch(0.4, 0.5, 0.5),
    heading=Stretch(1.0, 1.6, 1.6),
)


def compose_how_to_print(
    solved: SolvedWeek, files: Sequence[PrintedFile], layout: Layout
) -> tuple[Document, PageLayout]:
    """The finished page about these files, or as many as so many files need.

    Raises GlyphError.
    """
    layout = layout.for_booklet()
    composer = Composer(layout)
    foot = f"{say(layout, 'title')} · {solved.week.title}"
    page = _Page(composer, solved, printings(files))
    for size_pt in _SIZES_PT:
        pages = flow(page.blocks, composer.frame(foot, size_pt), size_pt)
        if len(pages.pages) == 1:
            break
    document = Document(
        title=f"{solved.week.title} – {say(layout, 'title').lower()}",
        subject=solved.week.title,
        pages=pages.pages,
        type_size_pt=pages.type_size_pt,
        fingerprint=solved.week.fingerprint,
    )
    return document, pages


class _Page:
    """The blocks of the page at any type size."""

    def __init__(self, composer: Composer, solved: SolvedWeek, groups: Sequence[Printing]) -> None:
        self.composer = composer
        self.solved = solved
        self.groups = groups

    def blocks(self, size_pt: float) -> list[Block]:
        """Title, what holds for all, then the files by the way they are printed."""
        column = self.composer.column(size_pt, _LEADING, _SPACING)
        style = column.style.scaled(TITLE_SCALE).bold()
        title = text(words(self.say("title")), style, column.width_pt, Role.TITLE)
        blocks = [
            Block("the title", title, keep_with_next=True),
            text_block("what holds for all", words(self.say("about")), column),
        ]
        for group in self.groups:
            blocks.extend(self._group(group, column))
        return blocks

    def _group(self, group: Printing, column: Column) -> Iterator[Block]:
        layout = self.composer.layout
        heading = kind_name(group.kind, layout)
        yield stage_heading(f"the heading '{heading}'", words(heading), column)
        yield _kept(text_block("how to print them", words(how(group, layout)), column))
        yield from self._files(group, column)

    def _files(self, group: Printing, column: Column) -> Iterator[Block]:
        """The files in as many columns as the longest name leaves room for."""
        told = [words(told_file(each, self.composer.layout)) for each in group.files]
        widest = max(natural_width_pt(each, column.style) for each in told)
        fitting = (n for n in range(_COLUMNS, 1, -1) if widest <= cell_width_pt(n, column))
        columns = next(fitting, 1)
        cells = [text(each, column.style, cell_width_pt(columns, column)) for each in told]
        between = column.spacing.column * column.style.size_pt
        for start in range(0, len(cells), columns):
            row = Columns(tuple(cells[start : start + columns]), between)
            yield Block("files", row, column.gap(column.spacing.question))

    def say(self, key: str) -> str:
        """A text of the layout's wording."""
        return say(self.composer.layout, key)


def _kept(block: Block) -> Block:
    return replace(block, keep_with_next=True)
