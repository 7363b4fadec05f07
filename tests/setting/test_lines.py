"""Line breaks: the optimum against every possible way, against first fit, and by its laws."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.random_texts import rich_texts
from typeset.drawing.shapes import Face
from typeset.errors import FitError
from typeset.quantities.inline import Rich, Solid, Words, words
from typeset.setting.boxes import Box, boxes_of
from typeset.setting.lines import (
    STRANDED_COST,
    break_lines,
    first_fit,
    line_width_pt,
    total_cost,
)

SIZE = 12.0
measures = st.floats(80, 480)
ordinary = st.lists(
    st.sampled_from(["a", "I", "the", "gulls", "36", "quay.", "He", "lighthouse", "(terns)", "="]),
    min_size=1,
    max_size=10,
).map(lambda ws: words(" ".join(ws)))


def broken(rich: Rich, measure: float) -> list[str]:
    lines = break_lines(boxes_of(rich, SIZE, Face.REGULAR, measure), measure, SIZE)
    return [" ".join(box.text for box in line) for line in lines]


@settings(max_examples=80, deadline=None)
@given(ordinary, st.floats(60, 200))
def test_no_way_to_break_costs_less(rich: Rich, measure: float) -> None:
    """Against all 2^(n−1) ways, listed with itertools."""
    boxes = boxes_of(rich, SIZE, Face.REGULAR, measure)
    found = total_cost(break_lines(boxes, measure, SIZE), measure, SIZE)
    best = min(
        total_cost(lines, measure, SIZE)
        for lines in every_way(boxes)
        if all(line_width_pt(line) <= measure + 0.01 for line in lines)
    )
    assert found == pytest.approx(best)


def every_way(boxes: tuple[Box, ...]) -> list[list[tuple[Box, ...]]]:
    ways = []
    inner = range(1, len(boxes))
    for count in range(len(boxes)):
        for cuts in combinations(inner, count):
            edges = (0, *cuts, len(boxes))
            ways.append([boxes[a:b] for a, b in pairwise(edges)])
    return ways


@settings(max_examples=100, deadline=None)
@given(rich_texts, measures)
def test_the_laws_of_a_paragraph(rich: Rich, measure: float) -> None:
    boxes = boxes_of(rich, SIZE, Face.REGULAR, measure)
    if any(box.width_pt > measure + 0.01 for box in boxes):
        with pytest.raises(FitError):
            break_lines(boxes, measure, SIZE)
        return
    lines = break_lines(boxes, measure, SIZE)
    # Every box once, whole and in order; none beyond the measure.
    assert tuple(box for line in lines for box in line) == boxes
    assert all(line_width_pt(line) <= measure + 0.011 for line in lines)
    optimum = total_cost(lines, measure, SIZE)
    assert optimum <= total_cost(first_fit(boxes, measure), measure, SIZE) + 1e-6


def test_no_line_ends_in_a_word_that_belongs_to_the_next() -> None:
    text = words("On the harbour wall sat a gull and I saw that it had a fish for a friend. " * 4)
    for measure in range(90, 460, 10):
        for line in broken(text, measure)[:-1]:
            assert line.split()[-1] not in ("a", "I"), (measure, line)


def test_no_line_ends_in_a_number_that_counts_the_next_word() -> None:
    rich = (Words("For every "), Solid(("5",)), Words(" gulls there are "), Solid(("12",)))
    more: Rich = (*rich, Words(" terns on the quay, and "), Solid(("1,250",)), Words(" people. "))
    for measure in range(100, 460, 10):
        for line in broken(more * 3, measure)[:-1]:
            assert not line.split()[-1].replace(",", "").isdigit(), (measure, line)


def test_no_line_begins_or_ends_with_a_sign() -> None:
    rich = words(
        "so 36 ÷ 3 = 12 ropes and 5 × 12 = 60 ropes, which is 60 − 24 = 36 ropes more. " * 2
    )
    for measure in range(120, 460, 10):
        lines = broken(rich, measure)
        assert not any(line.split()[0] in "÷×=−" for line in lines)
        assert not any(line.split()[-1] in "÷×=−" for line in lines)


def test_where_nothing_else_fits_a_stranded_word_is_better_than_an_overflow() -> None:
    rich = words("lighthouse a lighthouses")
    lines = break_lines(boxes_of(rich, SIZE, Face.REGULAR, 68), 68, SIZE)
    assert [[box.text for box in line] for line in lines] == [["lighthouse", "a"], ["lighthouses"]]
    assert total_cost(lines, 68, SIZE) >= STRANDED_COST
    assert all(line_width_pt(line) <= 68.01 for line in lines)


def test_a_short_last_word_gets_company() -> None:
    rich = words("The ferry leaves the quay at noon and comes back to us at six.")
    boxes = boxes_of(rich, SIZE, Face.REGULAR, 1000)
    # As wide as all but the last word: first fit leaves it alone.
    measure = line_width_pt(boxes[:-1]) + 1
    assert [len(line) for line in first_fit(boxes, measure)] == [len(boxes) - 1, 1]
    lines = break_lines(boxes, measure, SIZE)
    assert len(lines) == 2 and len(lines[1]) > 1


def test_a_sentence_does_not_begin_with_a_short_word_at_the_end_of_a_line() -> None:
    rich = words("Kofi hauls the blue kite over the wall. He ties it down again now.")
    boxes = boxes_of(rich, SIZE, Face.REGULAR, 1000)
    he = [box.text for box in boxes].index("He")
    measure = line_width_pt(boxes[: he + 1]) + 1
    assert first_fit(boxes, measure)[0][-1].text == "He"
    assert break_lines(boxes, measure, SIZE)[0][-1].text == "wall."


def test_raggedness_is_shared_among_lines() -> None:
    # First fit fills line 1 and leaves line 2 short before a long word; the optimum evens out.
    rich = words("On it lay a net of rope by old kegs in rows up against lighthousekeepers’ rooms")
    measure = 150.0
    boxes = boxes_of(rich, SIZE, Face.REGULAR, measure)
    greedy = first_fit(boxes, measure)
    best = break_lines(boxes, measure, SIZE)
    assert worst_shortfall(best, measure) < worst_shortfall(greedy, measure)


def test_two_lines_somewhat_short_are_better_than_one_that_is_very_short() -> None:
    # Both ways fall 90 pt short in all: 35 + 55, or 60 + 30.
    widths = (40.0, 20.0, 45.0, 95.0, 30.0)
    boxes = [Box((), width, (), 5.0 if n else 0.0, "quay") for n, width in enumerate(widths)]
    lines = break_lines(boxes, 100, 10)
    assert [[box.width_pt for box in line] for line in lines] == [[40, 20], [45], [95], [30]]


def test_a_sign_between_words_holds_both() -> None:
    rich = words("gulls plus terns = birds on the quay and boats + barges = hulls at sea " * 2)
    for measure in range(160, 460, 10):
        lines = broken(rich, measure)
        assert not any(line.split()[0] in "+=" for line in lines), measure
        assert not any(line.split()[-1] in "+=" for line in lines), measure


def worst_shortfall(lines: tuple[tuple[Box, ...], ...], measure: float) -> float:
    return max(measure - line_width_pt(line) for line in lines[:-1])


def test_a_word_wider_than_the_measure_is_named() -> None:
    word = "Llanfair" * 5
    boxes = boxes_of(words(f"at {word}"), SIZE, Face.REGULAR, 100)
    with pytest.raises(FitError, match=rf"'{word}' is \d+ mm wide at 12 pt .* 35 mm wide"):
        break_lines(boxes, 100, SIZE)


def test_nothing_gives_no_lines() -> None:
    assert break_lines((), 100, SIZE) == ()
