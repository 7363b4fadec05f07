"""Nothing overlaps: text with text, lines through text, boxes over text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from typeset.arithmetic.figures import BarModel
from typeset.proofing.checks import Proof, few
from typeset.proofing.edges import is_tint
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadPage, Stroke, Word
from typeset.proofing.places import Box

# Boxes of letters are a little larger than their ink.
_SLACK_PT = 0.5
# How far a letter may reach into the next one (kerning), in ems.
_KERNING_EMS = 0.12
# A short line as wide as a sign, a spot as high as a point at a large size; how close they are.
_SIGN_PT, _SPOT_PT, _REACH_EMS = 14.0, 4.0, 0.8


def check_overlaps(proof: Proof) -> Iterator[Finding]:
    """A finding for every pair that meets where it should not."""
    for page in proof.document.pages:
        yield from few(_check_page(proof, page))


def _check_page(proof: Proof, page: ReadPage) -> Iterator[Finding]:
    words = [word for word in page.words if word.is_text]
    for one, other in overlapping(words):
        what = f"'{one.text}' and '{other.text}' are printed over each other"
        yield proof.about_word(one, what, "", "overlap")
    strokes = [
        (stroke.box.left, stroke.box.top, stroke.box.right, stroke.box.bottom, stroke)
        for stroke in page.strokes
        if not is_tint(proof, page, stroke)
    ]
    yield from _added(proof, words, page.strokes)
    for word in words:
        if _is_squeezed(word):
            what = f"the letters of '{word.text}' are printed over each other"
            yield proof.about_word(word, what, "", "overlap")
        box = word.box
        near = [
            stroke
            for left, top, right, bottom, stroke in strokes
            if top < box.bottom and box.top < bottom and left < box.right and box.left < right
        ]
        for stroke in near:
            if told := _meet(word, stroke):
                yield proof.about_word(word, told, "", "overlap")


def overlapping(words: Sequence[Word]) -> Iterator[tuple[Word, Word]]:
    """Pairs of words whose letters meet; a sweep from the top of the page to its foot."""
    boxes = [(word.box.shrunk(_SLACK_PT), word) for word in words]
    boxes.sort(key=lambda each: each[0].top)
    for index, (box, word) in enumerate(boxes):
        bottom, left, right = box.bottom, box.left, box.right
        for at in range(index + 1, len(boxes)):
            lower, other = boxes[at]
            if lower.top >= bottom:
                break
            if left < lower.right and lower.left < right and box.overlaps(lower):
                yield word, other


def _added(proof: Proof, words: Sequence[Word], strokes: Sequence[Stroke]) -> Iterator[Finding]:
    """Short lines and spots close to words, which would be read as signs or points."""
    bars = frozenset().union(*(word.bars for word in words))
    small = [s for s in strokes if _is_small(s) and s.order not in bars]
    for stroke in small:
        for word in words:
            if _is_close(word, stroke) and not _has_marks(proof, word):
                what = f"a small mark is drawn beside '{word.text}'"
                yield proof.about_word(word, what, "", "overlap")
                break


def _has_marks(proof: Proof, word: Word) -> bool:
    """True for the labels of a figure that has marks of its own: scales, lines, dots."""
    passage = proof.passage_of(word)
    if passage is None or passage.part is not Part.FIGURE:
        return False
    return not isinstance(passage.figure, BarModel)


def _is_small(stroke: Stroke) -> bool:
    is_plain = stroke.shape == "line" or (stroke.shape == "rect" and stroke.filled)
    return is_plain and stroke.box.width < _SIGN_PT and stroke.box.height < _SPOT_PT


def _is_close(word: Word, stroke: Stroke) -> bool:
    """Within the height of the word's letters, and no further from them than a letter."""
    box, reach = stroke.box, _REACH_EMS * word.size_pt
    x, y = box.centre
    within = word.box.left - reach < x < word.box.right + reach
    return within and word.box.top < y < word.box.bottom


def _is_squeezed(word: Word) -> bool:
    if word.is_fraction:
        return False
    return any(
        after.box.left < before.box.right - _KERNING_EMS * before.size_pt
        for before, after in pairwise(word.glyphs)
    )


def _meet(word: Word, stroke: Stroke) -> str | None:
    if stroke.order in word.bars:
        return None
    if stroke.filled and stroke.order > word.order and _covers_letters(word, stroke):
        return f"'{word.text}' is hidden behind something"
    if stroke.stroked and any(_crosses(_letters(word), a, b) for a, b in _edges(stroke)):
        return f"a line runs through '{word.text}'"
    return None


def _letters(word: Word) -> Box:
    """Where its ink is: the figures of a fraction have no tails."""
    box = word.box
    foot = max(glyph.baseline for glyph in word.glyphs) if word.is_fraction else box.bottom
    return Box(box.left, box.top, box.right, foot)


def _covers_letters(word: Word, stroke: Stroke) -> bool:
    if stroke.shape == "rect":
        # Half of a letter can make another one.
        return any(stroke.box.overlaps(glyph.box.shrunk(_SLACK_PT)) for glyph in word.glyphs)
    return any(stroke.box.holds(*glyph.box.centre) for glyph in word.glyphs)


def _edges(stroke: Stroke) -> Iterator[tuple[tuple[float, float], tuple[float, float]]]:
    if stroke.shape == "rect":
        box = stroke.box
        corners = (
            (box.left, box.top),
            (box.right, box.top),
            (box.right, box.bottom),
            (box.left, box.bottom),
        )
        yield from pairwise((*corners, corners[0]))
    else:
        yield from pairwise(stroke.bends or stroke.points)


def _crosses(box: Box, start: tuple[float, float], end: tuple[float, float]) -> bool:
    """True where the straight line enters the box: clipped to it, a stretch remains.

    The method is Liang and Barsky's (ACM Transactions on Graphics 3, 1984, from memory).
    """
    inner = box.shrunk(_SLACK_PT)
    low, high = 0.0, 1.0
    (x, y), dx, dy = start, end[0] - start[0], end[1] - start[1]
    for step, room in (
        (-dx, x - inner.left),
        (dx, inner.right - x),
        (-dy, y - inner.top),
        (dy, inner.bottom - y),
    ):
        if step == 0:
            if room <= 0:
                return False
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    return low < high
