"""Copies of a page side by side on one paper: the first is proofed, the others are like it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from typeset.documents.layout import Layout
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Glyph, ReadDocument, ReadPage, Stroke
from typeset.proofing.places import MM_PT, Box
from typeset.proofing.words import words_of

# What a printer cannot show, with room for the rounding of numbers in the file.
_SLACK_PT = 0.05
_LEAST_CUT_SHARE = 0.8


def first_copy(document: ReadDocument, layout: Layout) -> ReadDocument:
    """The document as the left copies alone are; the whole where there is one copy."""
    if layout.copies == 1:
        return document
    return ReadDocument(
        document.name, tuple(_copy(page, 0, layout.copies) for page in document.pages)
    )


def check_copies(document: ReadDocument, layout: Layout) -> Iterator[Finding]:
    """Findings about papers whose copies differ, or which show no line to cut along."""
    if layout.copies == 1:
        return
    for page in document.pages:
        first = _copy(page, 0, layout.copies)
        for index in range(1, layout.copies):
            yield from _compare(first, _copy(page, index, layout.copies), document.name)
        yield from _check_cut(page, layout, document.name)


def _copy(page: ReadPage, index: int, copies: int) -> ReadPage:
    """One copy as a page of its own: what stands in its share of the paper, moved to its left."""
    width = page.width_pt / copies
    left = index * width
    glyphs = tuple(_moved_glyph(g, left) for g in page.glyphs if _in(g.box, left, width))
    strokes = tuple(
        _moved_stroke(stroke, left, width)
        for stroke in page.strokes
        if not _is_cut(stroke, page, copies)
        and (_in(stroke.box, left, width) or stroke.box.width > 1.5 * width)
    )
    images = tuple(_moved(box, left) for box in page.images if _in(box, left, width))
    return replace(
        page,
        width_pt=width,
        glyphs=glyphs,
        strokes=strokes,
        words=words_of(glyphs, strokes, page.number),
        images=images,
    )


def _in(box: Box, left_pt: float, width_pt: float) -> bool:
    return left_pt <= box.centre[0] < left_pt + width_pt


def _moved(box: Box, left_pt: float) -> Box:
    return Box(box.left - left_pt, box.top, box.right - left_pt, box.bottom)


def _moved_glyph(glyph: Glyph, left_pt: float) -> Glyph:
    return replace(glyph, box=_moved(glyph.box, left_pt))


def _moved_stroke(stroke: Stroke, left_pt: float, width_pt: float) -> Stroke:
    """The stroke moved; one over the whole paper (its tint) is cut to this copy's share."""
    if stroke.box.width > 1.5 * width_pt:
        return replace(stroke, box=Box(0.0, stroke.box.top, width_pt, stroke.box.bottom))
    points = tuple((x - left_pt, y) for x, y in stroke.points)
    return replace(stroke, box=_moved(stroke.box, left_pt), points=points)


def _is_cut(stroke: Stroke, page: ReadPage, copies: int) -> bool:
    """True for a dashed upright line between two copies."""
    places = (page.width_pt * index / copies for index in range(1, copies))
    return (
        stroke.is_upright
        and stroke.dashed
        and any(abs(stroke.box.left - x) < _SLACK_PT + 0.5 for x in places)
    )


def _check_cut(page: ReadPage, layout: Layout, name: str) -> Iterator[Finding]:
    cuts = [stroke for stroke in page.strokes if _is_cut(stroke, page, layout.copies)]
    long_enough = [c for c in cuts if c.box.height > _LEAST_CUT_SHARE * page.height_pt]
    if len(long_enough) < layout.copies - 1:
        what = "there is no line to cut the copies apart along"
        should = f"a dashed line {page.width_pt / layout.copies / MM_PT:.0f} mm from the left"
        yield Finding(name, page.number, None, what, should, "", "page")


def _compare(one: ReadPage, other: ReadPage, name: str) -> Iterator[Finding]:
    """The first place where two copies differ, in letters or in lines."""
    place = _first_difference(
        [(g.text, g.box, g.size_pt, g.font, g.colour) for g in one.glyphs],
        [(g.text, g.box, g.size_pt, g.font, g.colour) for g in other.glyphs],
    ) or _first_difference(
        [(s.shape, s.box, s.thickness_pt, s.ink, s.fill) for s in one.strokes],
        [(s.shape, s.box, s.thickness_pt, s.ink, s.fill) for s in other.strokes],
    )
    if place is not None:
        what = "the copies side by side are not alike here"
        should = "the same on each"
        yield Finding(name, one.number, place.place_mm, what, should, "", "wording")


def _first_difference(
    one: Sequence[tuple[object, ...]], other: Sequence[tuple[object, ...]]
) -> Box | None:
    for mine, theirs in zip(one, other, strict=False):
        if not _alike(mine, theirs):
            box = mine[1]
            return box if isinstance(box, Box) else None
    longer = one if len(one) > len(other) else other
    if len(one) != len(other):
        box = longer[min(len(one), len(other))][1]
        return box if isinstance(box, Box) else None
    return None


def _alike(mine: tuple[object, ...], theirs: tuple[object, ...]) -> bool:
    return all(_same(a, b) for a, b in zip(mine, theirs, strict=True))


def _same(one: object, other: object) -> bool:
    if isinstance(one, Box) and isinstance(other, Box):
        edges = zip(
            (one.left, one.top, one.right, one.bottom),
            (other.left, other.top, other.right, other.bottom),
            strict=True,
        )
        return all(abs(a - b) < _SLACK_PT for a, b in edges)
    return one == other
