"""The line at the foot of every page: what the page belongs to, and which page of how many."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.documents.layout import Layout
from typeset.proofing.account import take_account
from typeset.proofing.expected import Expected, Part, passage, said
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadDocument, ReadPage, Word
from typeset.proofing.places import MM_PT
from typeset.proofing.telling import tell_account

# A foot of several lines: each is nearer to the next than the last line of the page's text
# is to it, by the white between them (letters, then 5 mm of white less a little).
_LETTERS_EMS = 0.96
_WHITE_PT = 10.0


def foot_of(page: ReadPage, layout: Layout, size_pt: float) -> list[Word]:
    """What stands on the last line over the bottom margin or below it, and close above that."""
    edge = page.height_pt - layout.margins.bottom * MM_PT
    texts = [word for word in page.words if word.is_text]
    top = max((word.baseline for word in texts), default=0.0)
    if top <= edge - size_pt:
        return []
    for baseline in sorted({word.baseline for word in texts}, reverse=True):
        is_near = top - baseline < _LETTERS_EMS * size_pt + _WHITE_PT
        if not is_near and baseline <= edge - size_pt:
            break
        top = baseline
    return [word for word in texts if word.baseline >= top]


def body_words(
    document: ReadDocument, layout: Layout, size_pt: float, has_foot: bool = True
) -> tuple[Word, ...]:
    """All words but those at the foot."""
    if not has_foot:
        return document.words
    found: list[Word] = []
    for page in document.pages:
        foot = {id(word) for word in foot_of(page, layout, size_pt)}
        found.extend(word for word in page.words if id(word) not in foot)
    return tuple(found)


def check_feet(
    document: ReadDocument,
    expected: Expected,
    layout: Layout,
    size_pt: float,
    counted: tuple[int, int],
) -> Iterator[Finding]:
    """Findings about the foot of every page, where it has one.

    `counted` are how many pages stand before these, and how many there are in all.
    """
    if expected.foot_left is None:
        return
    for page in document.pages:
        words = foot_of(page, layout, size_pt)
        yield from _check_foot(words, (page.number, *counted), document.name, expected, layout)


def _check_foot(
    words: Sequence[Word],
    page_of: tuple[int, int, int],
    name: str,
    expected: Expected,
    layout: Layout,
) -> Iterator[Finding]:
    page, before, pages = page_of
    right = said(layout, "sheet", "page", page=str(before + page), pages=str(pages))
    is_first = page == 1 and expected.first_foot is not None
    left = expected.first_foot if is_first else expected.foot_left
    passages = (
        passage("the foot line", Part.FOOT, left or ""),
        passage("the page number", Part.FOOT, right),
    )
    for each in tell_account(take_account(passages, words), name, expected.secrets):
        yield each if each.page else _on_page(each, page)


def _on_page(finding: Finding, page: int) -> Finding:
    return Finding(
        finding.document,
        page,
        finding.place,
        finding.what,
        finding.should,
        finding.source,
        finding.kind,
    )
