"""The formula parser against sympy's own reading, and its complaints."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.formulas.parsing import parse_formula
from typeset.arithmetic.formulas.plan import TypedStep, check_used, plan_of, split_step
from typeset.arithmetic.formulas.tree import names_in, written
from typeset.arithmetic.formulas.whole import value_of_whole
from typeset.errors import AmountError
from typeset.quantities.amount import number

NAMES = ("a", "b", "cost of tickets", "cost", "left-over rope", "Kofi's share")

SAME = [
    ("a x b", "a × b"),
    ("a * b / cost", "a × b ÷ cost"),
    ("a-b–cost", "a − b − cost"),
    ("(a)", "a"),
    ("a - (b - cost)", "a − (b − cost)"),
    ("(a - b) - cost", "a − b − cost"),
    ("a + (b + cost)", "a + b + cost"),
    ("a × (b ÷ cost)", "a × (b ÷ cost)"),
    ("cost of tickets of cost", "cost of tickets of cost"),
    ("a of b × cost", "a of b × cost"),
    ("a of (b + cost)", "a of (b + cost)"),
    ("left-over rope - a", "left-over rope − a"),
    ("Kofi's share + a", "Kofi's share + a"),
    ("round up (a ÷ b)", "round up(a, b)"),
    ("round up(a, b)", "round up(a, b)"),
    ("mean(a, b, cost) - a", "mean(a, b, cost) − a"),
    ("larger of(a, b)", "larger of(a, b)"),
]


@pytest.mark.parametrize(("text", "meaning"), SAME)
def test_reading(text: str, meaning: str) -> None:
    formula = parse_formula(text, NAMES)
    assert written(formula) == meaning
    assert written(parse_formula(meaning, NAMES)) == meaning


LETTERS = dict(zip("pqrst", (2, 3, 5, 7, 11), strict=True))


def formulas() -> st.SearchStrategy[str]:
    leaves = st.sampled_from(sorted(LETTERS))
    return st.recursive(
        leaves,
        lambda inner: st.one_of(
            st.tuples(inner, st.sampled_from(["+", "-", "*", "/"]), inner).map(" ".join),
            inner.map(lambda text: f"({text})"),
        ),
        max_leaves=7,
    )


@settings(max_examples=120, deadline=None)
@given(text=formulas())
def test_against_sympy(text: str) -> None:
    """Precedence, brackets and writing back agree with sympy's reading of the same text."""
    amounts = {name: number(value) for name, value in LETTERS.items()}
    symbols = {name: sympy.Integer(value) for name, value in LETTERS.items()}
    expected = sympy.sympify(text, locals=symbols)
    formula = parse_formula(text, LETTERS)
    if not expected.is_finite:
        with pytest.raises(AmountError, match="divided by 0"):
            value_of_whole(formula, amounts)
        return
    assert value_of_whole(formula, amounts).base == Fraction(int(expected.p), int(expected.q))
    again = parse_formula(written(formula), LETTERS)
    assert value_of_whole(again, amounts) == value_of_whole(formula, amounts)


COMPLAINTS = [
    ("", "there is nothing after '='"),
    ("a ×", "has nothing after '×' before the end"),
    ("× a", "begins with '×'"),
    ("a + × b", "has nothing after '+' before '×'"),
    ("a b", "has no sign between 'a' and 'b'"),
    ("(a + b", "a '(' that is never closed"),
    ("(a + b cost)", "has no sign between 'b' and 'cost'"),
    ("a + b)", "a ')' without a '('"),
    ("a, b", "a comma outside a function"),
    ("()", "has nothing after '(' before ')'"),
    ("2 × a", "'2' is a bare number"),
    ("£3.50 × a", "'£3.50' is a bare number"),
    ("15% of a", "'15%' is a bare number"),
    ("costs + a", "did you mean 'cost'?"),
    ("cost of tickts", "unknown name 'tickts'"),
    ("quotint(a, b)", "did you mean 'quotient'?"),
    ("a & b", "'&' cannot stand in"),
    ("quotient(a)", "quotient is given 1 amounts; give it 2"),
    ("hcf(a)", "give it 2 to 4"),
    ("mean(a, b", "has no ')' after mean("),
    ("round up(a + b)", "round up rounds a division"),
    ("round down(a)", "such as round down(people ÷ seats)"),
    ("(" * 30 + "a" + ")" * 30, "too many brackets"),
    ("a + " * 100 + "a", "more than 300 characters"),
]


@pytest.mark.parametrize(("text", "message"), COMPLAINTS)
def test_complaints(text: str, message: str) -> None:
    with pytest.raises(AmountError) as caught:
        parse_formula(text, NAMES)
    assert message in str(caught.value)


def plan(*steps: str) -> Any:
    return plan_of(tuple(split_step(each) for each in steps), ("tickets", "price", "paid"))


PLAN_COMPLAINTS = [
    (("cost tickets × price",), "has no '='"),
    (("cost = price = paid",), "more than one '='"),
    (("change = paid − cost", "cost = tickets × price"), "used in 'change' before it is made"),
    (("cost = cost + price",), "is made from itself"),
    (("cost = tickets × price", "cost = paid − price"), "is made twice"),
    (("paid = tickets × price",), "a quantity of the story already"),
    (("2 = tickets × price",), "cannot be the name of a step"),
    (("mean = tickets × price",), "cannot be the name of a step"),
    (("cost = price",), "only copies 'price'"),
]


@pytest.mark.parametrize(("steps", "message"), PLAN_COMPLAINTS)
def test_plan_complaints(steps: tuple[str, ...], message: str) -> None:
    with pytest.raises(AmountError) as caught:
        plan(*steps)
    assert message in str(caught.value)


def test_used() -> None:
    made = plan("cost = tickets × price", "rest = paid − cost")
    givens = ("tickets", "price", "paid")
    check_used(made, givens, (), ("rest",))
    for finds, needless, message in (
        (("cost",), (), "the step 'rest' is never used"),
        (("rust",), (), "did you mean 'rest'"),
        (("rest",), ("paid",), "so it is needed"),
        (("rest",), ("pay",), "unknown name 'pay'"),
    ):
        with pytest.raises(AmountError, match=message):
            check_used(made, givens, needless, finds)
    with pytest.raises(AmountError, match=r"write 'not needed: \[dogs\]'"):
        check_used(made, (*givens, "dogs"), (), ("rest",))


def test_a_typed_step_keeps_the_authors_sentence() -> None:
    (made,) = plan_of(
        (TypedStep("cost", "tickets × price", "The tickets cost this."),), ("tickets", "price")
    )
    assert made.say == "The tickets cost this."


def test_steps_read_before_are_read_anew_with_other_names() -> None:
    """Plans are kept: the same formula is refused or read otherwise where other names are known."""
    step = (TypedStep("cost", "price of ropes × crates", ""),)
    (made,) = plan_of(step, ("price of ropes", "crates"))
    assert [*names_in(made.formula)] == ["price of ropes", "crates"]
    (again,) = plan_of(step, ("price of ropes", "crates"))
    assert again == made
    for _ in range(2):
        with pytest.raises(AmountError, match="unknown name"):
            plan_of(step, ("crates", "ropes"))
    (other,) = plan_of(step, ("price", "ropes", "crates"))
    assert [*names_in(other.formula)] == ["price", "ropes", "crates"]
