"""Which stretch of which page belongs to what: found again from the account."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.proofing.account import Account
from typeset.proofing.expected import Part, Passage
from typeset.proofing.page_marks import ReadPage, Stroke
from typeset.proofing.places import Box

# What is drawn for a question may rise a little over the letters of its first line.
_RISE_PT = 2.0


@dataclass(frozen=True, slots=True)
class Region:
    """All that belongs to one question: its passages by index, and its part of the page."""

    about: str
    passages: tuple[int, ...]
    page: ReadPage
    box: Box

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """The strokes that are drawn within."""
        return tuple(
            stroke
            for stroke in self.page.strokes
            if stroke.box.top >= self.box.top - _RISE_PT and stroke.box.bottom <= self.box.bottom
        )


def question_regions(account: Account, pages: Sequence[ReadPage]) -> Iterator[Region]:
    """The regions of all questions whose words were found on one page, and of the two parts of
    one that stands on two pages since it is higher than one."""
    starts = _starts(account)
    for about, indices in question_groups(account.passages):
        for part in parts_of(account, indices):
            words = [word for index in part for word in account.words_of(index)]
            if not words or len({word.page for word in words}) != 1:
                continue
            page = pages[words[0].page - pages[0].number]
            # What is carried over begins its page, above its first word if it is a drawing.
            top = min(word.box.top for word in words) if part[0] == indices[0] else 0.0
            below = [
                y
                for owner, number, y in starts
                if owner != about and number == page.number and y > top
            ]
            bottom = min([page.height_pt, *below])
            yield Region(about, part, page, Box(0.0, top, page.width_pt, bottom))


def parts_of(account: Account, indices: Sequence[int]) -> tuple[tuple[int, ...], ...]:
    """The passages of a question as one part; as two where what may part is on a later page."""
    stays = tuple(index for index in indices if not account.passages[index].may_part)
    parts = tuple(index for index in indices if account.passages[index].may_part)
    first, then = (
        {word.page for index in each for word in account.words_of(index)} for each in (stays, parts)
    )
    if first and then and min(then) > max(first):
        return (stays, parts)
    return (tuple(indices),)


def question_groups(passages: Sequence[Passage]) -> Iterator[tuple[str, tuple[int, ...]]]:
    """The passages of each question, in order."""
    found: dict[str, list[int]] = {}
    for index, each in enumerate(passages):
        if each.keeps:
            found.setdefault(each.keeps, []).append(index)
    for about, indices in found.items():
        yield about, tuple(indices)


def _starts(account: Account) -> list[tuple[str, int, float]]:
    """Owner, page and top of every heading, instruction and question number that was found."""
    starts = []
    for index, each in enumerate(account.passages):
        words = account.words_of(index)
        if words and (each.part is Part.NUMBER or not each.keeps):
            top = min(word.box.top for word in words if word.page == words[0].page)
            starts.append((each.keeps, words[0].page, top))
    return starts
