"""Every figure can be told without being drawn, in the words of its drawing."""

from __future__ import annotations

from fractions import Fraction
from typing import get_args

from typeset.arithmetic.figures import Bar, BarModel, Figure, Mark, Part, Show
from typeset.drawing.figure_reading import _WORDS, figure_reading
from typeset.drawing.figures import draw_figure
from typeset.drawing.symbols import SYMBOLS
from typeset.quantities.inline import words
from typeset.quantities.spoken import SYMBOL_NAMES


def test_every_kind_of_figure_has_words() -> None:
    assert set(_WORDS) == set(get_args(Figure))


def test_every_drawn_sign_has_a_name() -> None:
    """A letter that the face lacks is drawn, and a listener is told what it is."""
    assert set(SYMBOL_NAMES) == SYMBOLS


def test_a_bar_model_is_told_as_it_is_drawn() -> None:
    """The other figures are compared over random data in test_figures.py."""
    part = Part(Fraction(1), Mark(words("12"), is_given=False))
    model = BarModel((Bar("gulls", (part, part)),))
    for show in Show:
        assert figure_reading(model, show) == draw_figure(model, show, 300.0, 12.0).reads_as
    assert "12" in figure_reading(model, Show.COMPLETE)
    assert "12" not in figure_reading(model, Show.FIRST_STEP)
