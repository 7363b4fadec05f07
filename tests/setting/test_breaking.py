"""Page breaks: the optimum against every possible way, and by its laws."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.setting.random_blocks import ROOM_PT, block_lists, plain_block
from typeset.setting.blocks import Block
from typeset.setting.breaking import (
    Span,
    best_pages,
    fewest_pages,
    may_break_before,
    page_cost,
    page_height,
)
from typeset.setting.stretch import Stretch, fixed


def every_way(blocks: list[Block], pages: int) -> list[tuple[Span, ...]]:
    """All ways that keep the rules, listed with itertools."""
    ways = []
    for cuts in combinations(range(1, len(blocks)), pages - 1):
        edges = (0, *cuts, len(blocks))
        spans = tuple(Span(a, b) for a, b in pairwise(edges))
        if all(is_allowed(blocks, span) for span in spans):
            ways.append(spans)
    return ways


def is_allowed(blocks: list[Block], span: Span) -> bool:
    opens_inside = any(blocks[i].starts_page for i in range(span.first + 1, span.end))
    fits = page_height(blocks, span).least_pt <= ROOM_PT + 0.01
    kept = span.end < len(blocks) and blocks[span.end - 1].keep_with_next
    parted = kept and not blocks[span.end].starts_page
    return fits and not opens_inside and not parted


def cost(blocks: list[Block], spans: tuple[Span, ...], loose_end: bool) -> float:
    return sum(
        page_cost(page_height(blocks, span), ROOM_PT, loose_end and span is spans[-1])
        for span in spans
    )


@settings(max_examples=80, deadline=None)
@given(block_lists(), st.integers(1, 4), st.booleans())
def test_no_way_to_break_costs_less(blocks: list[Block], pages: int, loose_end: bool) -> None:
    ways = every_way(blocks, pages)
    found = best_pages(blocks, ROOM_PT, pages, loose_end)
    if not ways:
        assert found is None
        return
    assert found in ways
    assert cost(blocks, found, loose_end) == pytest.approx(
        min(cost(blocks, way, loose_end) for way in ways)
    )


@settings(max_examples=80, deadline=None)
@given(block_lists(8))
def test_the_fewest_pages_are_the_fewest_of_all_ways(blocks: list[Block]) -> None:
    possible = [n for n in range(1, len(blocks) + 1) if every_way(blocks, n)]
    if possible:
        assert fewest_pages(blocks, ROOM_PT) == possible[0]


def test_blocks_too_tall_for_any_page_count_as_a_page_each() -> None:
    blocks = [plain_block(name, fixed(120)) for name in "abc"]
    assert fewest_pages(blocks, ROOM_PT) == 3


def test_the_gap_before_the_first_block_of_a_page_is_left_out() -> None:
    blocks = [plain_block("a", fixed(30), fixed(9)), plain_block("b", fixed(20), fixed(7))]
    assert page_height(blocks, Span(0, 2)) == fixed(57)
    assert page_height(blocks, Span(1, 2)) == fixed(20)


def test_a_heading_goes_over_the_page_with_what_follows() -> None:
    heading = Block("h", plain_block("h", fixed(10)).piece, keep_with_next=True)
    blocks = [plain_block("a", fixed(80)), heading, plain_block("b", fixed(30))]
    assert best_pages(blocks, ROOM_PT, 2) == (Span(0, 1), Span(1, 3))
    assert not may_break_before(blocks, 2)


def test_evenness_two_pages_alike_rather_than_one_full_and_one_bare() -> None:
    soft = Stretch(15, 20, 40)
    blocks = [plain_block(str(n), soft) for n in range(6)]
    assert best_pages(blocks, ROOM_PT, 2) == (Span(0, 3), Span(3, 6))
    # First fit would put five on the first.
    assert page_height(blocks, Span(0, 6)).least_pt <= ROOM_PT


def test_a_loose_end_lets_the_last_page_be_short() -> None:
    blocks = [plain_block(str(n), fixed(50)) for n in range(3)]
    assert best_pages(blocks, ROOM_PT, 2, loose_end=True) == (Span(0, 2), Span(2, 3))


def test_white_that_nothing_can_fill_is_shared_too() -> None:
    blocks = [plain_block(str(n), fixed(20)) for n in range(4)]
    assert best_pages(blocks, ROOM_PT, 2) == (Span(0, 2), Span(2, 4))


def test_two_pages_a_little_tight_are_better_than_one_very_tight() -> None:
    # Five and five are each half way to the least. Six and four would be nearer to natural
    # in sum (0.67 + 0.25), yet one of them a page with no air.
    blocks = [plain_block(str(n), Stretch(10, 30, 60)) for n in range(10)]
    assert best_pages(blocks, ROOM_PT, 2) == (Span(0, 5), Span(5, 10))
