"""Pages read back: what was set comes back as the same words, whatever fractions are in it."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings

from tests.drawing.random_texts import rich_texts
from typeset.errors import FitError, GlyphError
from typeset.proofing.expected import rich_words
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE, Word
from typeset.proofing.read_back import read_document
from typeset.quantities.inline import Blank, MissingBox, Rich, Solid, Stacked, Words, join, words
from typeset.setting.frames import Document, Page, Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pdf import write_pdf
from typeset.setting.pieces import text

MM = 72 / 25.4
HALF = Stacked("1", "2")


def read_back(rich: Rich, size_pt: float = 12, measure: float = 430) -> tuple[Word, ...]:
    piece = text(rich, TextStyle(size_pt), measure, Role.QUESTION)
    page = Page(210 * MM, 297 * MM, piece.place(60, 60, piece.height.natural_pt))
    pdf = write_pdf(Document("Terns", "Quay", (page,), size_pt))
    return read_document(pdf, "terns.pdf").words


def told(rich: Rich, size_pt: float = 12) -> list[str]:
    return [word.text for word in read_back(rich, size_pt)]


@pytest.mark.parametrize("size", [9, 12, 14, 18, 36])
@pytest.mark.parametrize(
    ("pieces", "expected"),
    [
        ((Stacked("3", "4"),), ["3/4"]),
        (("2", Stacked("3", "4"), "\u00a0kg"), ["2", "3/4", "kg"]),
        (("(", HALF, ")"), ["(1/2)"]),
        (("£", HALF, ","), ["£1/2,"]),
        (("\u2212", HALF), ["\u22121/2"]),
        ((Stacked("1,250", "3,000"),), ["1,250/3,000"]),
        ((HALF, "\u00a0+\u00a0", Stacked("1", "3"), "\u00a0=\u00a0", Stacked("5", "6")),
         ["1/2", "+", "1/3", "=", "5/6"]),
        (("10", Stacked("11", "12"), "."), ["10", "11/12."]),
    ],
)  # fmt: skip
def test_stacked_fractions_come_back(
    pieces: tuple[str | Stacked, ...], expected: list[str], size: float
) -> None:
    assert told((Solid(pieces),), size) == expected


def test_a_fraction_in_a_story_is_one_word_among_others() -> None:
    rich = (Words("Take "), Solid(("2", HALF, "\u00a0m")), Words(", then rest."))
    assert told(rich) == ["Take", "2", "1/2", "m,", "then", "rest."]
    fraction = read_back(rich)[2]
    assert fraction.is_fraction
    assert fraction.least_pt == pytest.approx(9.6)


def test_rules_and_boxes_stand_among_the_words() -> None:
    rich = (
        Solid(("6\u00a0×\u00a0", MissingBox(), "\u00a0=\u00a072")),
        Words(" or "),
        Blank(Fraction(5)),
    )
    assert told(rich) == ["6", "×", OPEN_BOX, "=", "72", "or", WRITING_RULE]
    assert rich_words(rich) == tuple(told(rich))


def test_figures_over_a_long_rule_are_no_fraction() -> None:
    assert told((*words("7"), Blank(Fraction(20)), *words("8"))) == ["7", WRITING_RULE, "8"]


@given(rich_texts)
@settings(max_examples=40, deadline=None)
def test_any_text_comes_back_as_it_was_meant(rich: Rich) -> None:
    # A blank of four ems is shorter than a rule to write an answer on: not a word here.
    kept = [(item,) for item in rich if not isinstance(item, Blank)]
    rich = join(kept, " ")
    try:
        found = told(rich)
    except (FitError, GlyphError):
        assume(False)
    assert found == list(rich_words(rich))
