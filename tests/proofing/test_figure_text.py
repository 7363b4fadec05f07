"""The words of figures: what is drawn of any figure is what its data promises, and no more.

The figures and their drawing are the outside here: random figures of every kind are drawn, put
into a PDF, read back, and their labels set against the expectation.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.drawing.test_bar_model import models
from tests.drawing.test_figures import KINDS
from typeset.arithmetic.figures import Bar, BarModel, Brace, Figure, Mark, Part, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import moved
from typeset.errors import FitError
from typeset.proofing.figure_text import FigureWords, figure_words
from typeset.proofing.read_back import read_document
from typeset.quantities.inline import words
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf

MM = 72 / 25.4


def printed(figure: Figure, show: Show, width: float, size: float) -> list[str]:
    """The words of the drawn figure as they are read back. Raises FitError."""
    drawing = draw_figure(figure, show, width, size)
    shapes = tuple(moved(shape, 50.0, 60.0) for shape in drawing.shapes)
    item = Placed(Role.FIGURE, 50, 60, drawing.width_pt, drawing.height_pt, shapes)
    page = Page(210 * MM, 297 * MM, (item,))
    pdf = write_pdf(Document("Quay", "", (page,), size))
    return [word.text for word in read_document(pdf, "quay.pdf").words if word.is_text]


@pytest.mark.parametrize("kind", [*KINDS, "bar model"])
@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_what_is_drawn_is_what_the_data_promises(kind: str, data: st.DataObject) -> None:
    figure = data.draw(models(largest=12, most=6) if kind == "bar model" else KINDS[kind])
    show = data.draw(st.sampled_from(Show))
    try:
        found = printed(figure, show, data.draw(st.sampled_from([240.0, 480.0])), 12.0)
    except FitError:
        return
    missing, extra = figure_words(figure, show).compare(found)
    assert (missing, [found[at] for at in extra]) == ([], [])


def test_equal_parts_may_be_told_together_or_one_by_one() -> None:
    parts = (Part(Fraction(1), Mark(words("12"))),) * 3
    wanted = figure_words(BarModel((Bar("gulls", parts),)), Show.COMPLETE)
    for good in (["gulls", "12", "12", "12"], ["3", "×", "12", "gulls"]):
        assert wanted.compare(good) == ([], [])
    missing, extra = wanted.compare(["gulls", "12", "12"])
    assert (missing, extra) == (["12"], [])
    missing, extra = wanted.compare(["gulls", "4", "×", "12"])
    assert (missing, extra) == (["3"], [1])


def test_what_is_asked_is_a_question_mark_in_the_first_step() -> None:
    asked = Mark(words("60"), is_given=False)
    model = BarModel((Bar("gulls", (Part(Fraction(1)),)),), (Brace(0, asked),))
    assert figure_words(model, Show.FIRST_STEP).required == (("gulls",), ("?",))
    assert figure_words(model, Show.COMPLETE).required == (("gulls",), ("60",))
    assert figure_words(model, Show.FRAME).required == (("gulls",),)


def test_allowed_words_may_be_left_out_or_repeated() -> None:
    wanted = FigureWords((("red",),), allowed=frozenset({"so", "on"}))
    assert wanted.compare(["red", "so", "so"]) == ([], [])
    assert wanted.compare(["red", "75"]) == ([], [1])


def test_the_words_of_a_label_stand_together_in_their_order() -> None:
    parts = (Part(Fraction(1), Mark(words("4 h 45 min"))), Part(Fraction(1), Mark(words("30 min"))))
    wanted = figure_words(BarModel((Bar("night ferry", parts),)), Show.COMPLETE)
    good = ["30", "min", "4", "h", "45", "min", "night", "ferry"]
    assert wanted.compare(good) == ([], [])
    mixed = ["30", "min", "4", "45", "h", "min", "night", "ferry"]
    assert wanted.compare(mixed) == (["4 h 45 min"], [])
    apart = ["night", "30", "min", "4", "h", "45", "min", "ferry"]
    assert wanted.compare(apart) == (["night ferry"], [])
