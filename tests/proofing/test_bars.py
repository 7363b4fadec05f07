"""Bar models read back as rectangles: drawn ones agree with their data, altered ones do not."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.drawing.test_bar_model import GULLS, models
from tests.proofing.making import made_week
from typeset.arithmetic.figures import Bar, BarModel, Part, Show
from typeset.documents.layout import Layout
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import TextRun, moved
from typeset.errors import FitError
from typeset.proofing.account import take_account
from typeset.proofing.bars import check_bars
from typeset.proofing.checks import Proof, owners_of
from typeset.proofing.expected import Part as PassagePart
from typeset.proofing.expected import Passage
from typeset.proofing.finding import Finding
from typeset.proofing.read_back import read_document
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf

MM = 72 / 25.4
SHOWN = st.sampled_from([Show.FIRST_STEP, Show.COMPLETE])


@cache
def layout() -> Layout:
    return made_week().layout


def findings(drawn: BarModel, wanted: BarModel, show: Show, width: float) -> list[Finding]:
    """What the check says of one model drawn where another is wanted. Raises FitError."""
    drawing = draw_figure(drawn, show, width, 12.0)
    shapes = (
        TextRun(50.0, 60.0, "1", 12.0),
        *(moved(shape, 60.0, 70.0) for shape in drawing.shapes),
    )
    page = Page(210 * MM, 297 * MM, (Placed(Role.FIGURE, 0, 0, 1, 1, shapes),))
    document = read_document(write_pdf(Document("Quay", "", (page,), 12)), "quay.pdf")
    passages = (
        Passage("question 1", PassagePart.NUMBER, ("1",), keeps="question 1"),
        Passage("question 1", PassagePart.FIGURE, (), keeps="question 1", figure=wanted, show=show),
    )
    account = take_account(passages, document.words)
    proof = Proof(document, account, layout(), 12.0, owners_of(account))
    return list(check_bars(proof))


@given(models(largest=12, most=6), SHOWN, st.sampled_from([300.0, 440.0]))
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_model_agrees_with_its_own_data(model: BarModel, show: Show, width: float) -> None:
    try:
        told = findings(model, model, show, width)
    except FitError:
        assume(False)
    assert told == []


@given(models(largest=20_000, most=5), SHOWN)
@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_broken_scale_is_understood(model: BarModel, show: Show) -> None:
    try:
        told = findings(model, model, show, 440.0)
    except FitError:
        assume(False)
    assert told == []


def _with_bar(bar: Bar) -> BarModel:
    return replace(GULLS, bars=(bar, GULLS.bars[1]))


GULL_BAR = GULLS.bars[0]
WIDE = Part(Fraction(3, 2), GULL_BAR.parts[0].mark)


@pytest.mark.parametrize(
    ("altered", "told"),
    [
        (_with_bar(Bar("gulls", (*GULL_BAR.parts, GULL_BAR.parts[0]))), "bars of 6 and 2 parts"),
        (replace(GULLS, bars=GULLS.bars[:1], braces=GULLS.braces[:1]), "bars of 5 parts"),
        (_with_bar(Bar("gulls", (WIDE, *GULL_BAR.parts[1:]))), "not in the proportion"),
        (replace(GULLS, bars=GULLS.bars[::-1], braces=()), "bars of 2 and 5 parts"),
        (
            replace(GULLS, braces=(replace(GULLS.braces[0], last=3), *GULLS.braces[1:])),
            "no brace over the parts that '60' belongs to",
        ),
    ],
    ids=["a part more", "a bar less", "a part wider", "bars exchanged", "a brace too short"],
)
def test_another_model_is_found(altered: BarModel, told: str) -> None:
    text = "\n".join(map(str, findings(altered, GULLS, Show.COMPLETE, 440.0)))
    assert told in text
