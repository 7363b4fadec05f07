"""A named set: the sheets of a lesson for a whole class, in the order of its list.

Printed on both sides of the paper, every sheet begins on a front: a white side is added where
a sheet has an odd number of sides, so that nobody's sheet stands on another's back.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.names import listed
from typeset.documents.class_work import Kind, PupilsSheet, kind_of
from typeset.documents.grid import Grid, on_papers
from typeset.documents.layout import Layout
from typeset.documents.renaming import Model, lay_out, model_of
from typeset.documents.wording import phrase
from typeset.quantities.inline import plain
from typeset.setting.frames import Document, Duplex, Page
from typeset.setting.pages import PageLayout

# More notes than these tell a teacher nothing new.
_MOST_NOTES = 3


def compose_named_set(sheets: Sequence[PupilsSheet], layout: Layout) -> tuple[Document, PageLayout]:
    """The finished file of all sheets, which are of one lesson and on one kind of paper.

    `layout` is the week's own and gives the file its title; no name is in it.
    Raises FitError, GlyphError as the sheets do.
    """
    made = list(_all(sheets))
    single = [page for each in made for page in _on_whole_papers(each.pages)]
    first = sheets[0]
    pages = _cut_and_stacked(single, first.layout) if first.layout.copies > 1 else tuple(single)
    long_edge = first.layout.backs == "long edge"
    size_pt = min(each.size_pt for each in made)
    document = Document(
        title=f"{first.lesson.lesson.title} – {phrase(layout.wording, 'class', 'set')}",
        subject=first.solved.week.title,
        pages=pages,
        type_size_pt=size_pt,
        fingerprint=first.solved.week.fingerprint,
        duplex=Duplex.LONG_EDGE if long_edge else Duplex.SHORT_EDGE,
    )
    notes = _notes([each.notes for each in made])
    return document, PageLayout(pages, size_pt, (), (), notes)


@dataclass(frozen=True, slots=True)
class _Made:
    """A finished sheet: its sides, the size of its type, and the notes about it."""

    pages: tuple[Page, ...]
    size_pt: float
    notes: tuple[str, ...]


def _all(sheets: Sequence[PupilsSheet]) -> Iterator[_Made]:
    """Every sheet in order. The first of each kind is laid out whole; the others of its kind
    get its sides with their own names, where that gives the very same."""
    counts = Counter(kind_of(each) for each in sheets)
    models: dict[Kind, Model | None] = {}
    for sheet in sheets:
        kind = kind_of(sheet)
        model = models.get(kind)
        pages = model.pages_for(sheet) if model is not None else None
        laid_out = model.laid_out if model is not None and pages is not None else lay_out(sheet)
        if pages is None:
            pages = laid_out.pages()
            if counts[kind] > 1 and kind not in models:
                models[kind] = model_of(laid_out, pages)
        yield _Made(pages, laid_out.bare.type_size_pt, laid_out.bare.notes)


def _on_whole_papers(pages: Sequence[Page]) -> Iterator[Page]:
    """The sides of a sheet, and a white one where the last paper would have no back."""
    yield from pages
    if len(pages) % 2:
        yield Page(pages[-1].width_pt, pages[-1].height_pt, ())


def _cut_and_stacked(pages: Sequence[Page], layout: Layout) -> tuple[Page, ...]:
    """Small pages side by side so that they are in order again when the pile has been cut and
    the right-hand half laid under the left-hand one; every back lies behind its front.

    Landscape paper turned over its short edge keeps its top; where the printer turns it over
    the long edge, the backs lie upside down.
    """
    grid, turned = Grid(layout.paper, layout.copies, 1), layout.backs == "long edge"
    leaves: list[tuple[Page | None, Page | None]] = [*zip(pages[::2], pages[1::2], strict=True)]
    high = -(-len(leaves) // layout.copies)
    leaves += [(None, None)] * (high * layout.copies - len(leaves))
    sides: list[Page] = []
    for index in range(high):
        together = leaves[index::high]
        sides += on_papers([front for front, _ in together], grid)
        (back,) = on_papers([back for _, back in reversed(together)], grid, cuts=False)
        sides.append(replace(back, upside_down=turned))
    return tuple(sides)


def _notes(of_sheets: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """The notes about the sheets, each once, with how many sheets it is about."""
    counts: dict[str, int] = {}
    for notes in of_sheets:
        for note in notes:
            counts[note] = counts.get(note, 0) + 1
    told = [f"{note} ({_sheets(count)})" for note, count in counts.items()]
    rest = len(told) - _MOST_NOTES
    return (*told[:_MOST_NOTES], *([f"and {rest} more notes like these"] if rest > 0 else []))


def same_for_all(sheets: Sequence[PupilsSheet]) -> list[str]:
    """What a teacher should know who wants other numbers for every pupil: the questions that
    all pupils with the same version have alike."""
    told: dict[tuple[str, int], list[str]] = {}
    for each in sheets:
        for problem in each.lesson.problems():
            key = (each.solved.version.value, problem.number)
            told.setdefault(key, []).append(plain(problem.story))
    alike = {
        number
        for (_, number), stories in told.items()
        if len(stories) > 1 and len(set(stories)) == 1
    }
    if not alike:
        return []
    numbers = listed([str(number) for number in sorted(alike)], "and")
    what = f"question {numbers} has" if len(alike) == 1 else f"questions {numbers} have"
    return [f"{what} the same numbers on every sheet of a version; ranges would vary them"]


def _sheets(count: int) -> str:
    return "on 1 sheet" if count == 1 else f"on {count} sheets"
