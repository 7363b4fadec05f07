"""The three changes: each is tried out here as the message says it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings

from tests.setting.random_blocks import ROOM_PT, block_lists, plain_block
from typeset.setting.advice import too_few_blocks, too_long, too_tall
from typeset.setting.blocks import Block, Saving
from typeset.setting.breaking import fewest_pages
from typeset.setting.stretch import fixed

MM = 72 / 25.4


def block(name: str, height: float, *savings: Saving) -> Block:
    plain = plain_block(name, fixed(height))
    return Block(name, plain.piece, optional=True, savings=savings)


def changes(blocks: list[Block], sides: int) -> list[str]:
    said = str(too_long(blocks, ROOM_PT, sides, 12))
    return re.split(r"; (?=\(\d\))", said.split("What would help most: ")[1])


def test_the_message_names_sides_needed_and_the_smallest_size() -> None:
    said = str(too_long([block(n, 60) for n in "abc"], ROOM_PT, 2, 12))
    assert said.startswith("this needs 3 sides and not 2, even at 12 pt, the smallest size")


def test_changes_that_are_enough_come_first_the_smallest_before_the_others() -> None:
    blocks = [block("question 1", 50), block("question 2", 40), block("question 3", 25)]
    assert changes(blocks, 1) == [
        "(1) ask for 2 sides",
        "(2) leave out question 3 (saves 9 mm: then it fits)",
        "(3) leave out question 2 (saves 14 mm: then it fits)",
    ]


def test_a_smaller_space_is_proposed_before_a_question_is_lost() -> None:
    saving = Saving("give question 1 2 lines to work on, not 3", 8 * MM)
    more = Saving("give question 1 1 line to work on, not 3", 16 * MM)
    blocks = [block("question 1", 60, saving, more), block("question 2", 60)]
    assert changes(blocks, 1)[1] == (
        "(2) give question 1 2 lines to work on, not 3 (saves 8 mm: then it fits)"
    )


def test_where_no_single_change_is_enough_the_fewest_together_are_named() -> None:
    blocks = [block(f"question {n}", 45) for n in range(1, 6)]
    assert changes(blocks, 1)[1] == (
        "(2) leave out question 1, question 2 and question 3 (saves 48 mm: then it fits)"
    )
    assert changes(blocks, 1)[2].endswith("helps, but is not enough alone)")


def test_of_changes_that_are_not_enough_the_largest_is_named() -> None:
    heights = {"question 1": 45, "question 2": 70, "question 3": 55, "question 4": 60}
    blocks = [block(name, height) for name, height in heights.items()]
    assert changes(blocks, 1)[2] == (
        "(3) leave out question 2 (saves 25 mm: helps, but is not enough alone)"
    )


@settings(max_examples=80, deadline=None)
@given(block_lists(9))
def test_what_is_said_to_fit_fits(blocks: list[Block]) -> None:
    needed = fewest_pages(blocks, ROOM_PT)
    if needed < 2:
        return
    for change in changes(blocks, needed - 1):
        if found := re.match(r"\(\d\) leave out (.*) \(saves", change):
            gone = set(re.split(r", | and ", found[1]))
            rest = [b for b in blocks if b.name not in gone]
            fits = fewest_pages(rest, ROOM_PT) <= needed - 1
            assert fits == ("then it fits" in change)


def test_a_group_taller_than_a_page_is_named_with_what_it_lacks() -> None:
    heading = Block("the heading", plain_block("h", fixed(20)).piece, keep_with_next=True)
    saving = Saving("give question 1 1 line to work on, not 3", 16 * MM)
    error = too_tall([heading, block("question 1", 90, saving)], ROOM_PT, 12)
    assert str(error) == (
        "the heading with question 1 must stand on one page, and at 12 pt is 39 mm high: 4 mm more "
        "than a page holds; shorten its text, or give question 1 1 line to work on, not 3 "
        "(saves 16 mm)"
    )
    assert too_tall([heading, block("question 1", 80)], ROOM_PT, 12) is None
    # What is not enough alone is asked for together with a shorter text.
    little = too_tall([heading, block("question 1", 90, replace(saving, saves_pt=5))], ROOM_PT, 12)
    assert "shorten its text, and give question 1" in str(little)


@pytest.mark.parametrize(
    ("count", "words"), [(1, "there is only 1 part that"), (2, "there are only 2 parts that")]
)
def test_too_few_blocks_for_the_sides(count: int, words: str) -> None:
    error = too_few_blocks([block(str(n), 10) for n in range(count)], 3)
    assert str(error).startswith("3 sides cannot be filled: " + words)
