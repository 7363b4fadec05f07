"""The full account of a document's words: each expected one found, each printed one expected."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.proofing.align import align
from typeset.proofing.expected import Passage
from typeset.proofing.figure_text import figure_words
from typeset.proofing.page_marks import Word

# Stands where a figure is expected, equal to no printed word: so the text before and after it
# cannot be found among the figure's own labels.
_FIGURE = "\x00"


@dataclass(frozen=True, slots=True)
class Gap:
    """A stretch where the account does not balance: words that are missing, as (passage, word)
    positions, and printed ones that nothing accounts for. `after` is the passage before it."""

    missing: tuple[tuple[int, int], ...]
    extra: tuple[Word, ...]
    after: int


@dataclass(frozen=True, slots=True)
class FigureGap:
    """A figure whose labels do not balance."""

    passage: int
    missing: tuple[str, ...]
    extra: tuple[Word, ...]


@dataclass(frozen=True, slots=True)
class Account:
    """Where every passage is printed. `found[i]` has a word or None for each word of passage i,
    and for a figure the labels that were found."""

    passages: tuple[Passage, ...]
    found: tuple[tuple[Word | None, ...], ...]
    gaps: tuple[Gap, ...]
    figures: tuple[FigureGap, ...]

    def words_of(self, index: int) -> tuple[Word, ...]:
        """The printed words of a passage."""
        return tuple([word for word in self.found[index] if word is not None])


def take_account(passages: Sequence[Passage], words: Sequence[Word]) -> Account:
    """The words of a document set against the passages that are expected."""
    flat = list(_positions(passages))
    wanted = [passages[i].words[k] if k is not None else _FIGURE for i, k in flat]
    matched = align(wanted, [word.text for word in words])
    found: list[list[Word | None]] = [[None] * len(each.words) for each in passages]
    for (i, k), at in zip(flat, matched, strict=True):
        if k is not None:
            found[i][k] = None if at is None else words[at]
    book = _Book(passages, found)
    for stretch in _stretches(flat, matched, words, len(passages)):
        book.settle(stretch)
    return Account(
        tuple(passages), tuple(tuple(each) for each in found), tuple(book.gaps), tuple(book.figures)
    )


def _positions(passages: Sequence[Passage]) -> Iterator[tuple[int, int | None]]:
    """Every expected word as (passage, word); None for the place of a figure."""
    for index, each in enumerate(passages):
        if each.figure is not None:
            yield index, None
        yield from ((index, word) for word in range(len(each.words)))


@dataclass(frozen=True, slots=True)
class _Stretch:
    """What lies between two matched words: passages `before` to `until` may be concerned."""

    missing: tuple[tuple[int, int], ...]
    printed: tuple[Word, ...]
    before: int
    until: int


def _stretches(
    flat: Sequence[tuple[int, int | None]],
    matched: Sequence[int | None],
    words: Sequence[Word],
    count: int,
) -> Iterator[_Stretch]:
    """Every place where something may lie between matched words, also an empty one."""
    missing: list[tuple[int, int]] = []
    last_printed, last_passage = -1, -1
    for (passage, word), at in zip(flat, matched, strict=True):
        if at is None:
            if word is not None:
                missing.append((passage, word))
            continue
        between = words[last_printed + 1 : at]
        if missing or between or passage > last_passage + 1:
            yield _Stretch(tuple(missing), tuple(between), last_passage, passage)
        missing, last_printed, last_passage = [], at, passage
    rest = words[last_printed + 1 :]
    yield _Stretch(tuple(missing), tuple(rest), last_passage, count)


class _Book:
    """Settles stretches: gives figures their labels, and notes what is left."""

    def __init__(self, passages: Sequence[Passage], found: list[list[Word | None]]) -> None:
        self.passages = passages
        self.found = found
        self.gaps: list[Gap] = []
        self.figures: list[FigureGap] = []

    def settle(self, stretch: _Stretch) -> None:
        """Figures between the two passages take their labels; the rest is a gap."""
        printed = list(stretch.printed)
        for index in range(max(stretch.before, 0), stretch.until):
            if self.passages[index].figure is not None and not self.found[index]:
                printed = self._give(index, printed, bool(stretch.missing))
        if stretch.missing or printed:
            self.gaps.append(Gap(stretch.missing, tuple(printed), max(stretch.before, 0)))

    def _give(self, index: int, printed: list[Word], has_missing: bool) -> list[Word]:
        """The figure's labels among the printed words; what is left of these."""
        passage = self.passages[index]
        assert passage.figure is not None
        wanted = figure_words(passage.figure, passage.show)
        missing, extra_at = wanted.compare([word.text for word in printed])
        extra = set(extra_at)
        self.found[index] = [word for at, word in enumerate(printed) if at not in extra]
        rest = [word for at, word in enumerate(printed) if at in extra]
        # Strokes of a figure that look like a box or a rule are no words of it.
        strangers = [word for word in rest if word.is_text]
        if missing:
            # Among text that is missing too, what is left may belong to either.
            own = () if has_missing else tuple(strangers)
            self.figures.append(FigureGap(index, tuple(missing), own))
            return rest if has_missing else []
        return rest if has_missing else strangers
