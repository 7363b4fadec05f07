"""Mistakes that a pupil could make, and those that nobody would.

The bounds are common practice, no source; thousandths and twelfths as the finest parts are the
national curriculum's (mathematics programmes of study, Year 5 and Year 6).
"""

from __future__ import annotations

from fractions import Fraction
from types import SimpleNamespace
from typing import Any

import pytest

from typeset.arithmetic.equations import Equation, Remainder, equation, over
from typeset.arithmetic.sense import is_unwieldy, why_not_usable
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.parsing import parse_amount

_PROBLEM: Any = SimpleNamespace(fields=SimpleNamespace(may_be_cut=False, round_to=None))


def amount(text: str) -> Amount:
    return parse_amount(text, {})


def why(wrong: str | Amount, right: str, name: str = "reversal", through: Any = None) -> str:
    reached = amount(wrong) if isinstance(wrong, str) else wrong
    steps = (step("So.", through),) if through is not None else ()
    mistake = MistakenWorking(name, steps, {"it": reached})
    return why_not_usable(mistake, _PROBLEM, {"it": amount(right)})


@pytest.mark.parametrize(
    ("wrong", "right", "fault"),
    [
        ("126 boxes", "6 boxes", "more than 20 times the right answer"),
        ("120 boxes", "6 boxes", ""),
        ("2 m", "45 m", "less than a 20th of the right answer"),
        ("3 m", "45 m", ""),
        ("300%", "30%", "more than the whole"),
        ("90%", "30%", ""),
        ("200%", "120%", ""),
        ("5/13", "1/2", "too unwieldy a number"),
        ("5/12", "1/2", ""),
        ("5/26", "1/13", "too unwieldy a number"),
        ("2/13", "1/13", ""),
        ("1.2345 m", "2 m", "too unwieldy a number"),
        ("1.234 m", "2 m", ""),
        ("6 2/3 h", "5 h", "too unwieldy a number"),
        ("6 1/2 h", "5 h", ""),
        ("6 2/3 h", "4 1/3 h", ""),
        ("0 boxes", "5 boxes", "nothing at all"),
        ("5 boxes", "5 boxes", "the right answer"),
        ("-5 boxes", "5 boxes", "less than nothing"),
    ],
)
def test_what_nobody_would_answer(wrong: str, right: str, fault: str) -> None:
    said = why(wrong, right)
    assert fault in said
    assert bool(said) == bool(fault)


@pytest.mark.parametrize("name", ["unit not converted", "factor and multiple exchanged"])
def test_some_mistakes_are_known_by_their_size(name: str) -> None:
    assert why("4,700 boxes", "7 boxes", name) == ""
    assert "20 times" in why("4,700 boxes", "7 boxes")


@pytest.mark.parametrize(
    ("through", "fault"),
    [
        (equation(over(amount("7"), amount("13")), Amount(Fraction(7, 13))), "go through 7/13"),
        (equation(over(amount("7"), amount("8")), Amount(Fraction(7, 8))), ""),
        (
            Equation((over(amount("1 g"), amount("4 g")), Remainder(amount("0"), amount("1 g")))),
            "0 remainder 1 g",
        ),
        (
            Equation((over(amount("5 g"), amount("4 g")), Remainder(amount("1"), amount("1 g")))),
            "",
        ),
    ],
)
def test_no_pupil_goes_on_from_there(through: Equation, fault: str) -> None:
    said = why("7 boxes", "6 boxes", through=through).replace("\u00a0", " ")
    assert fault in said
    assert bool(said) == bool(fault)


def test_a_decimal_is_as_fine_as_thousandths() -> None:
    assert is_unwieldy(Amount(Fraction(1, 3), form=Form.DECIMAL))
    assert is_unwieldy(Amount(Fraction(1, 16), form=Form.DECIMAL))
    assert not is_unwieldy(Amount(Fraction(1, 8), form=Form.DECIMAL))
