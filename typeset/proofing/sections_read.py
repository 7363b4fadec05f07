"""What is drawn in each section of marked content of a tagged document."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import groupby

from typeset.proofing.page_marks import Glyph, ReadPage, Stroke
from typeset.proofing.structure_read import Mark


@dataclass(slots=True)
class Section:
    """A section: its letters and strokes, the turn of the first of them in the drawing of its
    page, and the names that it is drawn under, which should be one."""

    mark: Mark
    glyphs: list[Glyph] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    order: int = -1
    tags: set[str] = field(default_factory=set)


def sections_of(pages: Sequence[ReadPage]) -> dict[Mark, Section]:
    """The numbered sections of the pages, page by page in the order of their drawing."""
    found: dict[Mark, Section] = {}
    for page in pages:
        here: dict[int, Section] = {}
        for (tag, mcid), group in groupby(page.glyphs, lambda each: (each.tag, each.mcid)):
            if mcid is not None:
                letters = list(group)
                section = _section(here, page, mcid, tag, letters[0].order)
                section.glyphs.extend(letters)
        for stroke in page.strokes:
            if stroke.mcid is not None:
                section = _section(here, page, stroke.mcid, stroke.tag, stroke.order)
                section.strokes.append(stroke)
        in_turn = sorted(here.values(), key=lambda section: section.order)
        found |= {section.mark: section for section in in_turn}
    return found


def _section(here: dict[int, Section], page: ReadPage, mcid: int, tag: str, order: int) -> Section:
    """The section with this number, told of something drawn in it."""
    section = here.setdefault(mcid, Section((page.number - 1, mcid), order=order))
    section.order = min(section.order, order)
    section.tags.add(tag)
    return section
