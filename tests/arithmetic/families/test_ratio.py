"""Ratio against sympy, and in every way that a side may be known."""

from __future__ import annotations

from fractions import Fraction

import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.answers import answer_exact, answer_text
from typeset.arithmetic.families.ratio import Ratio
from typeset.arithmetic.figures import BarModel
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain

FAMILY = Ratio()


def solved(parts: dict[str, int], known: dict[str, str], find: list[str]) -> Solution:
    fields = {
        "parts": {name: str(count) for name, count in parts.items()},
        "known": known,
        "find": find,
        "may be cut": "yes",
    }
    return solve(FAMILY, FAMILY.build(FAMILY.fields_model.model_validate(fields)))


@settings(max_examples=60, deadline=None)
@given(
    st.integers(1, 19),
    st.integers(1, 19),
    st.integers(1, 400),
    st.sampled_from(["gulls", "terns", "whole", "difference"]),
)
def test_agrees_with_sympy(gulls: int, terns: int, amount: int, known: str) -> None:
    """gulls : terns = a : b, whole = gulls + terns, difference = |gulls − terns|."""
    if known == "difference" and gulls == terns:
        return
    sides = ["gulls", "terns", "whole"] + (["difference"] if gulls != terns else [])
    find = [side for side in sides if side != known]
    solution = solved({"gulls": gulls, "terns": terns}, {known: str(amount)}, find)
    g, t = sympy.symbols("g t")
    values = {
        "gulls": g,
        "terns": t,
        "whole": g + t,
        "difference": (g - t) * (1 if gulls > terns else -1),
    }
    (found,) = sympy.linsolve([terns * g - gulls * t, values[known] - amount], g, t)
    for side in find:
        expected = values[side].subs({g: found[0], t: found[1]})
        answer = solution.answers[side]
        assert isinstance(answer, Amount)
        assert answer.value == Fraction(int(expected.p), int(expected.q))
    # A side as large as the one that is known needs no working out.
    first = solution.answers[find[0]]
    assert isinstance(first, Amount)
    nothing_to_do = first.value == amount
    assert solution.kind.decision is (Decision.NEITHER if nothing_to_do else Decision.MULTIPLY)


def test_measures_keep_their_unit_and_counts_their_name() -> None:
    paint = solved({"blue paint": 2, "white paint": 3}, {"whole": "10 litres"}, ["blue paint"])
    assert plain(answer_text(paint.answers["blue paint"])) == "4 litres"
    birds = solved({"gulls": 5, "terns": 2}, {"difference": "3"}, ["terns"])
    assert plain(answer_text(birds.answers["terns"])) == "2 terns"


def test_three_sides() -> None:
    boats = solved({"rowing": 3, "sailing": 2, "motor": 7}, {"whole": "96"}, ["motor", "sailing"])
    assert {name: answer_exact(value) for name, value in boats.answers.items()} == {
        "motor": "56",
        "sailing": "16",
    }


def test_the_model_has_a_part_for_every_part() -> None:
    figure = solved({"gulls": 5, "terns": 2}, {"difference": "36"}, ["gulls"]).figure
    assert isinstance(figure, BarModel)
    assert [(bar.name, len(bar.parts)) for bar in figure.bars] == [("gulls", 5), ("terns", 2)]
    assert len({part.size for bar in figure.bars for part in bar.parts}) == 1
