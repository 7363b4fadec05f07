"""Chains of operations. Answers by hand; the published item stands in tests/published."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.equations import PLUS, times
from typeset.arithmetic.families import FAMILIES, number_chain
from typeset.arithmetic.families.number_chain import read_link
from typeset.arithmetic.families.trying import Trying, try_and_improve
from typeset.arithmetic.figures import BarModel, SequenceBoxes
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import number
from typeset.quantities.inline import plain
from typeset.quantities.writing import MINUS

NAME = "think of a number"
PAPER: dict[str, Any] = {"operations": ["halve", "add 6", "divide by 3"], "result": "4.5"}
ON: dict[str, Any] = {"operations": ["multiply by 4", "add 7", "halve"], "start": "9"}
BETWEEN: dict[str, Any] = {"operations": ["double", "add _"], "start": "9", "result": "31"}
SHELLS: dict[str, Any] = {"operations": ["halve", "subtract 5 shells"], "result": "12 shells"}

# By hand: (15 ÷ 2 + 6) ÷ 3 = 4.5; (36 + 7) ÷ 2; 18 + 13 = 31; 17 − 5 = 12.
ANSWERS = [
    (PAPER, "15", "both"),
    (ON, "21 1/2", "both"),
    (BETWEEN, "13", "both"),
    (SHELLS, "34 shells", "both"),
    ({"operations": ["add 8", "take away 3"], "result": "12"}, "7", "add or subtract"),
    ({"operations": ["treble", "divide by 4"], "result": "6"}, "8", "multiply or divide"),
    ({"operations": "double", "start": "2.5 kg"}, "5 kg", "multiply or divide"),
    ({"operations": ["divide by ?"], "start": "36", "result": "4"}, "9", "multiply or divide"),
    ({"operations": ["subtract _", "double"], "start": "£9", "result": "£5"}, "£6.50", "both"),
    ({"operations": ["add 2", "add 3"], "result": "9"}, "4", "add or subtract"),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, fields: Any, answer: str, kind: str) -> None:
    solution = solved(NAME, fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == kind
    assert len(solution.workings) >= 2


def test_strategies(solved: Any) -> None:
    assert {way.strategy for way in solved(NAME, PAPER).workings} == {
        "Undoing from the end",
        "Writing the inverse chain, then checking",
        "Trial and improvement",
    }
    assert {way.strategy for way in solved(NAME, ON).workings} == {"Step by step", "In one line"}


# By hand, each wrong way on the numbers above.
WRONG = [
    (PAPER, "operations done forwards on the result", "2.75"),
    (PAPER, "undone in the wrong order", "9"),
    (PAPER, "operation repeated instead of inverted", "39"),
    (ON, "operations undone instead of done", "2 3/4"),
    (ON, "step left out", "43"),
    (ON, "operations in another order", "32"),
    (BETWEEN, "other operations ignored", "22"),
    (BETWEEN, "operation repeated instead of inverted", "26 1/2"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[mistake] == answer


def test_mistakes_that_the_numbers_do_not_show(solved: Any) -> None:
    # Doubling and trebling may be undone in either order.
    solution = solved(NAME, {"operations": ["double", "treble"], "result": "24"})
    refused = {each.misconception: each.why for each in solution.refused}
    assert "right answer" in refused["undone in the wrong order"]


def test_the_story_may_quote_the_chain(solved: Any) -> None:
    problem = solved(NAME, PAPER).problem
    quote = FAMILIES[NAME].quotes(problem)["operations"]
    assert plain(quote.text) == "halve it, add 6, then divide the result by 3"
    assert quote.tells == {"add", "divide"}
    assert list(problem.givens) == ["result", "add", "divide"]
    problem = solved(NAME, {"operations": ["add 2", "halve", "add _"], "start": "4", "result": "9"})
    quote = FAMILIES[NAME].quotes(problem.problem)["operations"]
    assert plain(quote.text) == "add 2, halve the result, then add [ ]"
    assert quote.amounts == (number(2), None)


def test_a_name_for_each_of_two_additions(solved: Any) -> None:
    solution = solved(NAME, {"operations": ["add 2", "add 3"], "result": "9"})
    assert list(solution.problem.givens) == ["result", "add", "second add"]


def test_the_figure_has_the_whole_chain(solved: Any) -> None:
    figure = solved(NAME, PAPER).figure
    assert isinstance(figure, SequenceBoxes)
    assert [plain(term.text) for term in figure.terms] == ["15", "7.5", "13.5", "4.5"]
    assert [term.is_given for term in figure.terms] == [False, False, False, True]
    assert [plain(each.text) for each in figure.steps if each] == ["÷ 2", "+ 6", "÷ 3"]


def test_a_bar_of_equal_parts_where_it_fits(solved: Any) -> None:
    solution = solved(NAME, {"operations": ["treble", "add 6"], "result": "27"})
    assert "A bar of equal parts" in {way.strategy for way in solution.workings}
    assert isinstance(solution.figure, BarModel)
    assert [int(part.size) for part in solution.figure.bars[0].parts] == [7, 7, 7, 6]
    below = solved(NAME, {"operations": ["treble", "add 6"], "result": "3"})
    assert isinstance(below.figure, SequenceBoxes)


COMPLAINTS = [
    ({"operations": ["add 3"]}, "one number has to be asked for"),
    ({"operations": ["add 3"], "start": "2", "result": "5"}, "one number has to be asked for"),
    ({"operations": [], "start": "2"}, "a chain has 1 to 6 operations"),
    ({"operations": ["add 1"] * 7, "start": "2"}, "a chain has 1 to 6 operations"),
    ({"operations": ["add 3 kg"], "start": "2 shells"}, "does not go with 2 shells"),
    ({"operations": ["add _"], "start": "2 kg", "result": "5 m"}, "not in one unit"),
    ({"operations": ["halve", "add 1"], "start": "5 shells"}, "on the way the number would be"),
    ({"operations": ["add _"], "start": "9", "result": "4"}, "no number above 0"),
    ({"operations": ["double"], "start": "9", "answer in": "kg"}, "answer is not in kg"),
    ({"operations": ["double"], "start": "9 kg", "answer in": "g"}, "another unit"),
]


@pytest.mark.parametrize(("fields", "message"), COMPLAINTS)
def test_complaints(solved: Any, fields: Any, message: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved(NAME, fields)
    assert message in caught.value.problem
    assert caught.value.remedy


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("grow by 3", "'grow by 3' is no operation"),
        ("multiply by 1", "needs a plain number other than 1"),
        ("multiply by 3 kg", "needs a plain number other than 1"),
        ("add 0", "does not take a number above 0"),
    ],
)
def test_what_is_no_operation(solved: Any, typed: str, message: str) -> None:
    with pytest.raises(AmountError, match=message):
        read_link(typed, {})
    with pytest.raises(ValidationError, match=message):
        solved(NAME, {"operations": [typed], "start": "2"})
    with pytest.raises(ValidationError, match="not a list"):
        solved(NAME, {"operations": {"add": "3"}, "start": "2"})


def test_a_broken_undoing_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    broken = {**number_chain.INVERSE, PLUS: PLUS, MINUS: MINUS}
    monkeypatch.setattr(number_chain, "INVERSE", broken)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(NAME, PAPER)


def test_tries_are_near_and_sensible() -> None:
    tried = try_and_improve(Trying(lambda each: times(each, number(7)), number(84), number(1)))
    assert tried is not None
    answer, steps = tried
    assert answer == number(12)
    assert [plain(each.sentence) for each in steps] == [
        "Try 10: that gives 70, which is too little.",
        "Then try 14: that gives 98, which is too much.",
        "Now try 12, which lies between: that gives 84, and it fits.",
    ]
    assert try_and_improve(Trying(lambda each: each, number("1/3"), number(1))) is None


def test_sentences(solved: Any, told: Any) -> None:
    for fields, _answer, _kind in ANSWERS:
        for said in told(solved(NAME, fields)):
            assert said[0].isupper() or said[0].isdigit(), said
            assert said.endswith("."), said
