"""What is drawn about a text stands where it should: a heavy rule over it, or a frame around it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from typeset.proofing.checks import Proof
from typeset.proofing.edges import text_area
from typeset.proofing.expected import Drawn
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadPage, Stroke, Word
from typeset.proofing.places import around
from typeset.proofing.print_quality import LEAST_LINE_CONTRAST, WHITE, contrast

# The rule over the heading of a stage, and the least that survives a copier.
_RULE_PT, _FRAME_PT = 2.0, 0.45
_SLACK_PT = 0.5
# How far a rule may stand over its heading, in sizes of its letters.
_OVER = 1.2


def check_furniture(proof: Proof) -> Iterator[Finding]:
    """A finding for every rule over a heading and every frame that is not as it should be."""
    indices = [i for i, each in enumerate(proof.account.passages) if each.drawn is not None]
    for index in indices:
        words = _words(proof, (index,))
        if words and proof.account.passages[index].drawn is Drawn.RULE:
            page = _page(proof, words[0])
            if not any(_is_over(proof, page, stroke, words) for stroke in page.strokes):
                should = f"a rule of {_RULE_PT:g} pt over all of the column"
                yield _finding(proof, words, "has no heavy rule over it", should)
    framed = [i for i in indices if proof.account.passages[i].drawn is Drawn.FRAME]
    for _, group in groupby(framed, key=lambda i: proof.account.passages[i].keeps):
        words = _words(proof, tuple(group))
        if words and not _is_framed(_page(proof, words[0]), words):
            yield _finding(proof, words, "has no frame around it", "a frame around all of it")


def _words(proof: Proof, indices: Sequence[int]) -> list[Word]:
    """The words of these passages that stand on the page of the first."""
    words = [word for index in indices for word in proof.account.words_of(index)]
    return [word for word in words if word.page == words[0].page]


def _page(proof: Proof, word: Word) -> ReadPage:
    return next(page for page in proof.document.pages if page.number == word.page)


def _is_over(proof: Proof, page: ReadPage, stroke: Stroke, words: Sequence[Word]) -> bool:
    head = around([word.box for word in words])
    column = head if proof.has_columns else text_area(proof, page)
    return (
        stroke.shape == "line"
        and stroke.is_level
        and not stroke.dashed
        and stroke.thickness_pt >= _RULE_PT - 0.05
        and contrast(stroke.ink, WHITE) >= LEAST_LINE_CONTRAST
        and 0 <= head.top - stroke.box.bottom <= _OVER * words[0].size_pt
        and stroke.box.left <= column.left + _SLACK_PT
        and stroke.box.right >= column.right - _SLACK_PT
    )


def _is_framed(page: ReadPage, words: Sequence[Word]) -> bool:
    inside = around([word.box for word in words])
    return any(
        stroke.shape == "rect"
        and stroke.stroked
        and not stroke.dashed
        and stroke.thickness_pt >= _FRAME_PT
        and contrast(stroke.ink, WHITE) >= LEAST_LINE_CONTRAST
        and stroke.box.covers(inside)
        for stroke in page.strokes
    )


def _finding(proof: Proof, words: Sequence[Word], what: str, should: str) -> Finding:
    return proof.about_word(
        words[0], f"what begins with '{words[0].text}' {what}", should, "figure"
    )
