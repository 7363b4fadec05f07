"""What every check works with: the document as read, the account, and the layout's promises."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from typeset.documents.layout import Layout
from typeset.proofing.account import Account
from typeset.proofing.expected import Part, Passage
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadDocument, Word
from typeset.proofing.places import MM_PT, Box

# More findings of one kind on one page are counted, not listed.
_MOST_A_PAGE = 5


@dataclass(frozen=True, slots=True)
class Proof:
    """A document being proofed. `least_pt` is the smallest body type that the layout allows."""

    document: ReadDocument
    account: Account
    layout: Layout
    least_pt: float
    # For each word (page, order) the index of its passage.
    owners: dict[tuple[int, int], int] = field(default_factory=dict)
    # Questions may stand beside each other, down one column and then down the next.
    has_columns: bool = False
    # The size that the stories stand in, where it is known.
    story_pt: float | None = None

    def passage_of(self, word: Word) -> Passage | None:
        """The passage that the word belongs to; None for one that nothing accounts for."""
        index = self.owners.get((word.page, word.order))
        return None if index is None else self.account.passages[index]

    def part_of(self, word: Word) -> Part | None:
        """What the word is to its reader."""
        passage = self.passage_of(word)
        return passage.part if passage is not None else None

    def finding(
        self, page: int, box: Box | None, what: str, should: str = "", kind: str = "wording"
    ) -> Finding:
        """A finding at a place of a page."""
        place = box.place_mm if box is not None else None
        return Finding(self.document.name, page, place, what, should, "", kind)

    def about_word(self, word: Word, what: str, should: str, kind: str) -> Finding:
        """A finding about a word, with the line of the content that it comes from."""
        passage = self.passage_of(word)
        source = passage.source if passage is not None else ""
        return Finding(self.document.name, word.page, word.box.place_mm, what, should, source, kind)


def owners_of(account: Account) -> dict[tuple[int, int], int]:
    """The passage of every word that was found."""
    return {
        (word.page, word.order): index
        for index in range(len(account.passages))
        for word in account.words_of(index)
    }


def few(findings: Iterable[Finding]) -> Iterator[Finding]:
    """The first findings of each page; a last one says how many more there are."""
    counts: dict[int, int] = {}
    last: dict[int, Finding] = {}
    for each in findings:
        counts[each.page] = counts.get(each.page, 0) + 1
        last[each.page] = each
        if counts[each.page] <= _MOST_A_PAGE:
            yield each
    for page, count in counts.items():
        if count > _MOST_A_PAGE:
            more = f"{count - _MOST_A_PAGE} more findings like these"
            yield Finding(last[page].document, page, None, more, "", "", last[page].kind)


def in_mm(points: float) -> str:
    """A length for a finding: '3.4 mm'."""
    return f"{points / MM_PT:.1f} mm"
