"""Alignment of expected with printed words, tried against its laws and against difflib."""

from __future__ import annotations

import re
from difflib import SequenceMatcher
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.proofing.align import align

words = st.lists(st.sampled_from(["a", "b", "c", "the", "of", "7", "36"]), max_size=40)
TEXT = "For every 5 gulls on the quay there are 2 terns. How many gulls are there?"
STORY = [match[0] for match in re.finditer(r"\S+", TEXT)]


@given(words)
def test_equal_sequences_match_word_for_word(text: list[str]) -> None:
    assert align(text, text) == list(range(len(text)))


@given(words, words)
@settings(max_examples=60)
def test_matches_are_equal_words_in_rising_order(one: list[str], other: list[str]) -> None:
    matched = align(one, other)
    assert all(at is None or one[i] == other[at] for i, at in enumerate(matched))
    places = [at for at in matched if at is not None]
    assert all(before < after for before, after in pairwise(places))


@given(words, words, words)
@settings(max_examples=60)
def test_what_is_put_in_between_leaves_both_sides_matched(
    head: list[str], middle: list[str], tail: list[str]
) -> None:
    matched = align(head + tail, head + middle + tail)
    assert None not in matched


def test_as_many_words_match_as_difflib_finds_in_a_short_text() -> None:
    # difflib of the standard library is the outside judge here.
    spoilt = [*STORY[:4], "pier", *STORY[5:9], *STORY[11:]]
    blocks = SequenceMatcher(None, STORY, spoilt, autojunk=False).get_matching_blocks()
    found = [at for at in align(STORY, spoilt) if at is not None]
    assert len(found) == sum(block.size for block in blocks)


def test_a_moved_paragraph_leaves_the_rest_in_place() -> None:
    parts = [[f"{name}{i}" for i in range(30)] for name in "pqrst"]
    expected = [word for part in parts for word in part]
    moved = [word for k in (0, 2, 3, 1, 4) for word in parts[k]]
    matched = align(expected, moved)
    missing = [expected[i] for i, at in enumerate(matched) if at is None]
    assert missing == parts[1]


def test_texts_without_anything_in_common_end_soon() -> None:
    assert align(["a"] * 4000, ["b"] * 4000) == [None] * 4000
