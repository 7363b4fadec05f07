"""Copies of a page side by side on one paper: the first is proofed, the others are like it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from typeset.documents.layout import Layout
from typeset.proofing.cells import Cells, cells_of, check_cuts, check_within
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.places import Box

_SLACK_PT = 0.05
# A mark's box, and all else that can be seen of it.
_Seen: TypeAlias = tuple[Box, tuple[object, ...]]


def first_copy(document: ReadDocument, layout: Layout) -> ReadDocument:
    """The document as the first copies alone are; the whole where there is one copy."""
    if layout.copies == 1:
        return document
    cells = Cells(layout.copies, 1)
    return ReadDocument(document.name, tuple(cells_of(page, cells)[0] for page in document.pages))


def check_copies(document: ReadDocument, layout: Layout) -> Iterator[Finding]:
    """Findings about papers whose copies differ, or which show no line to cut along."""
    if layout.copies == 1:
        return
    yield from check_within(document)
    cells = Cells(layout.copies, 1)
    for page in document.pages:
        first, *others = cells_of(page, cells)
        for other in others:
            yield from _compare(first, other, document.name)
        yield from check_cuts(page, cells, document.name)


def _compare(one: ReadPage, other: ReadPage, name: str) -> Iterator[Finding]:
    """The first place where two copies differ, in letters or in lines."""
    letters = _first_difference(_letters(one), _letters(other))
    place = letters or _first_difference(_lines(one), _lines(other))
    if place is not None:
        what = "the copies side by side are not alike here"
        yield Finding(name, one.number, place.place_mm, what, "the same on each", "", "wording")


def _letters(page: ReadPage) -> list[_Seen]:
    return [(g.box, (g.text, g.size_pt, g.font, g.colour)) for g in page.glyphs]


def _lines(page: ReadPage) -> list[_Seen]:
    # What is only filled has no line, whatever thickness was set before it.
    return [
        (s.box, (s.shape, s.thickness_pt if s.stroked else 0.0, s.ink, s.fill, s.dashed))
        for s in page.strokes
    ]


def _first_difference(one: Sequence[_Seen], other: Sequence[_Seen]) -> Box | None:
    for (box, seen), (other_box, other_seen) in zip(one, other, strict=False):
        if seen != other_seen or not _alike(box, other_box):
            return box
    if len(one) == len(other):
        return None
    longer = one if len(one) > len(other) else other
    return longer[min(len(one), len(other))][0]


def _alike(one: Box, other: Box) -> bool:
    edges = ("left", "top", "right", "bottom")
    return all(abs(getattr(one, edge) - getattr(other, edge)) < _SLACK_PT for edge in edges)
