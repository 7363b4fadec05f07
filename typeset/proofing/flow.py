"""The page reads as the text does: down, never back up, questions whole, headings followed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from typeset.proofing.checks import Proof
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Word
from typeset.proofing.places import MM_PT, around
from typeset.proofing.regions import parts_of, question_groups

# A fraction's own line of reading lies a quarter of an em over its baseline.
_SAME_LINE_EMS = 0.6
# Lines of a paragraph are at most so much further apart than the leading, for fractions.
_FARTHEST_LEADINGS = 2.0
_PARAGRAPHS = (Part.STORY, Part.TEXT, Part.TITLE, Part.HEADING, Part.ANSWER)
_SLACK_PT = 1.0
_NEARLY = 0.75


def check_flow(proof: Proof) -> Iterator[Finding]:
    """Findings about lines out of place, split questions and headings left alone."""
    yield from _lines(proof)
    yield from _splits(proof)
    yield from _sequence(proof)
    yield from _headings(proof)


def _lines(proof: Proof) -> Iterator[Finding]:
    """The lines of a paragraph follow each other."""
    for index, passage in enumerate(proof.account.passages):
        if passage.part not in _PARAGRAPHS:
            continue
        for before, after in pairwise(proof.account.words_of(index)):
            if before.page == after.page and not _follows(proof, before, after):
                what = f"'{after.text}' stands away from the words before it in {passage.about}"
                yield proof.about_word(after, what, "", "order")
                break


def _follows(proof: Proof, before: Word, after: Word) -> bool:
    size = max(before.size_pt, after.size_pt)
    down = after.baseline - before.baseline
    if abs(down) <= _SAME_LINE_EMS * size:
        return after.box.left > before.box.left
    return 0 < down <= _FARTHEST_LEADINGS * proof.layout.leading * size


def _splits(proof: Proof) -> Iterator[Finding]:
    """No question stands on two pages, but where it may part: if the layout lets it, or it is
    higher than a page."""
    for about, indices in question_groups(proof.account.passages):
        parts = parts_of(proof.account, indices)
        may_part = proof.layout.booklet.may_part or _too_high(proof, parts)
        for part in parts if may_part else (indices,):
            words = _words(proof, part)
            pages = sorted({word.page for word in words})
            if len(pages) > 1:
                first = next(word for word in words if word.page != words[0].page)
                what = f"{about} is split over pages {' and '.join(map(str, pages))}"
                yield proof.about_word(first, what, "", "order")


def _too_high(proof: Proof, parts: Sequence[Sequence[int]]) -> bool:
    """True where the parts of a question together are higher than a page has room for.

    What is drawn may reach beyond its words, and a heading may have to stand with them, so
    nearly as high counts.
    """
    found = [words for part in parts if (words := _words(proof, part))]
    heights = [around(word.box for word in words).height for words in found]
    margins = proof.layout.margins
    room = proof.layout.page.height_mm - margins.top - margins.bottom
    return sum(heights) > _NEARLY * room * MM_PT


def _sequence(proof: Proof) -> Iterator[Finding]:
    """Each question stands wholly below the one before it, or in a later column, or page."""
    groups = [
        (about, words)
        for about, indices in question_groups(proof.account.passages)
        if (words := _words(proof, indices))
    ]
    for (earlier, above), (about, below) in pairwise(groups):
        page = below[0].page
        if page < above[-1].page:
            yield proof.about_word(below[0], f"{about} stands before {earlier}", "", "order")
            continue
        same = [word.box for word in above if word.page == page]
        here = around(word.box for word in below if word.page == page)
        is_next_column = proof.has_columns and same and here.left > around(same).right
        if same and here.top < around(same).bottom - _SLACK_PT and not is_next_column:
            what = f"{about} begins beside or above the end of {earlier}"
            yield proof.about_word(below[0], what, "", "order")


def _headings(proof: Proof) -> Iterator[Finding]:
    """What a heading heads stands on its page."""
    passages = proof.account.passages
    for index, passage in enumerate(passages[:-1]):
        if passage.part is not Part.HEADING:
            continue
        own, following = (proof.account.words_of(each) for each in (index, index + 1))
        if own and following and own[0].page != following[0].page:
            what = f"{passage.about} is the last thing on its page"
            yield proof.about_word(own[0], what, "it belongs with what follows", "order")


def _words(proof: Proof, indices: Sequence[int]) -> list[Word]:
    return [word for index in indices for word in proof.account.words_of(index)]
