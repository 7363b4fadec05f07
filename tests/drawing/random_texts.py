"""Random texts for the property tests: words of every length, amounts, fractions, equations."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from typeset.quantities.inline import (
    Blank,
    Equals,
    Inline,
    MissingBox,
    Piece,
    Rich,
    Solid,
    Stacked,
    Words,
)

LETTERS = "abcdefghijklmnopqrstuvwxyzAI"
numbers = st.integers(0, 999_999_999).map(lambda n: f"{n:,}")
small_numbers = st.integers(1, 99).map(str)
one_word = st.one_of(
    st.text(LETTERS, min_size=1, max_size=12),
    st.sampled_from(
        ["a", "I", "the", "of", "7", "36", "quay.", "(gulls", "terns)", "‘Ahoy!’", "="]
    ),
)
words_items = st.builds(
    lambda ws, bold, lead, tail: Words(lead + " ".join(ws) + tail, bold),
    st.lists(one_word, max_size=12),
    st.booleans(),
    st.sampled_from(["", " ", ", "]),
    st.sampled_from(["", " ", "? "]),
)
stacked = st.builds(Stacked, small_numbers, small_numbers)
units = st.sampled_from(["", "\u00a0kg", "\u00a0terns", "p", "°"])


@st.composite
def solids(draw: st.DrawFn) -> Solid:
    """An amount or an expression: '£2 3/4', '6 × [ ]'."""
    operand: st.SearchStrategy[Piece] = st.one_of(numbers, stacked, st.just(MissingBox()))
    pieces: list[Piece] = [draw(operand)]
    for _ in range(draw(st.integers(0, 2))):
        pieces += [draw(st.sampled_from(["\u00a0×\u00a0", "\u00a0+\u00a0"])), draw(operand)]
    return Solid((*pieces, draw(units)), draw(st.booleans()))


@st.composite
def equations(draw: st.DrawFn) -> Equals:
    """A chain of two to four sides."""
    sides = draw(st.lists(solids(), min_size=2, max_size=4))
    return Equals(tuple(sides), ("=",) * (len(sides) - 1))


inlines: st.SearchStrategy[Inline] = st.one_of(
    words_items, words_items, solids(), equations(), st.just(Blank(Fraction(4)))
)
rich_texts: st.SearchStrategy[Rich] = st.lists(inlines, max_size=9).map(tuple)
