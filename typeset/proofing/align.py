"""Two word sequences aligned: which expected word is which printed one.

Words that stand in runs of three which occur once in both sequences are anchors (the idea of
patience sorting: the longest rising run of anchors is kept); between anchors the standard
library's matcher does the rest. So a whole booklet is aligned in linear time where it is right,
and a moved question does not pull everything after it out of place.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Sequence
from difflib import SequenceMatcher

_RUN = 3
# Without a single anchor, stretches longer than this have nothing to do with each other.
_LONGEST = 1500


def align(expected: Sequence[str], printed: Sequence[str]) -> list[int | None]:
    """For every expected word the position of the printed one, or None; positions rise."""
    matched: list[int | None] = [None] * len(expected)
    work = [(0, len(expected), 0, len(printed))]
    while work:
        a, b, c, d = work.pop()
        while a < b and c < d and expected[a] == printed[c]:
            matched[a] = c
            a, c = a + 1, c + 1
        while a < b and c < d and expected[b - 1] == printed[d - 1]:
            b, d = b - 1, d - 1
            matched[b] = d
        if a == b or c == d:
            continue
        anchors = _anchors(expected[a:b], printed[c:d])
        if anchors:
            work.extend(_between(anchors, (a, b, c, d), matched))
        elif b - a <= _LONGEST and d - c <= _LONGEST:
            _match_short(expected, printed, (a, b, c, d), matched)
    return matched


def _between(
    anchors: Sequence[tuple[int, int]],
    span: tuple[int, int, int, int],
    matched: list[int | None],
) -> list[tuple[int, int, int, int]]:
    """Marks the anchors' words as matched; gives the stretches between them."""
    a, b, c, d = span
    stretches = []
    start, from_printed = a, c
    for one, other in anchors:
        stretches.append((start, a + one, from_printed, c + other))
        matched[a + one] = c + other
        start, from_printed = a + one + 1, c + other + 1
    stretches.append((start, b, from_printed, d))
    return stretches


def _anchors(one: Sequence[str], other: Sequence[str]) -> list[tuple[int, int]]:
    """First words of runs that occur once in both, in rising order in both."""
    mine, theirs = _once(one), _once(other)
    pairs = [(mine[run], theirs[run]) for run in mine if run in theirs]
    return _longest_rising(sorted(pairs))


def _once(words: Sequence[str]) -> dict[tuple[str, ...], int]:
    """Runs that occur once, with their positions."""
    runs = list(zip(*(words[start:] for start in range(_RUN)), strict=False))
    counts = Counter(runs)
    return {run: index for index, run in enumerate(runs) if counts[run] == 1}


def _longest_rising(pairs: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """The longest selection whose second positions rise too."""
    tops: list[int] = []
    ends: list[int] = []
    before: list[int | None] = []
    for index, (_, second) in enumerate(pairs):
        place = bisect_left(tops, second)
        before.append(ends[place - 1] if place else None)
        if place == len(tops):
            tops.append(second)
            ends.append(index)
        else:
            tops[place], ends[place] = second, index
    chosen: list[tuple[int, int]] = []
    at = ends[-1] if ends else None
    while at is not None:
        chosen.append(pairs[at])
        at = before[at]
    return chosen[::-1]


def _match_short(
    expected: Sequence[str],
    printed: Sequence[str],
    span: tuple[int, int, int, int],
    matched: list[int | None],
) -> None:
    a, b, c, d = span
    matcher = SequenceMatcher(None, expected[a:b], printed[c:d], autojunk=False)
    for one, other, size in matcher.get_matching_blocks():
        for step in range(size):
            matched[a + one + step] = c + other + step
