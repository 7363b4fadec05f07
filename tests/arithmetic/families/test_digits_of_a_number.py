"""Numbers by their digits. Answers by hand, and by plain enumeration of strings beside them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
import sympy

from typeset.arithmetic.families import FAMILIES, digits_of_a_number, digits_ways
from typeset.arithmetic.families.digit_lists import every_row, fits, rows_by, value
from typeset.arithmetic.families.digit_rules import (
    Rule,
    holds,
    numbers_meeting,
    phrase,
    place_rule,
    short_name,
)
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

NAME = "digits of a number"
SWAPPED: dict[str, Any] = {"digits": "2", "digit sum": "11", "turned round": "27 more"}
CARDS: dict[str, Any] = {"using": ["3", "0", "8", "5"], "find": "greatest"}

# 4 + 7 = 11 and 74 − 47 = 27; 36 = 6² = 4 × 9 and 3 + 6 = 9; 62 has 6 = 3 × 2 and 6 − 2 = 4.
ANSWERS = [
    (SWAPPED, "47"),
    ({**SWAPPED, "turned round": "27 less"}, "74"),
    (CARDS, "8,530"),
    ({**CARDS, "find": "least"}, "3,058"),
    ({**CARDS, "is": "odd"}, "8,503"),
    ({"digits": "2", "tens": "3 times ones", "digit difference": "4"}, "62"),
    ({"digits": "2", "digit sum": "9", "multiple of": "4", "is": "square"}, "36"),
    ({"digits": "2", "digit sum": "6", "digit product": "8", "tens": "half the ones"}, "24"),
    ({"digits": "3", "digit sum": "24", "all different": "yes", "find": "least"}, "789"),
    ({"digits": "2", "more than": "40", "less than": "60", "multiple of": "12"}, "48"),
    ({"digits": "2", "is": ["prime", "even"], "find": "number", "tens": "1"}, None),
    ({"digits": "2", "is": "prime", "digit sum": "10", "tens": "3"}, "37"),
    ({"digits": "3", "hundreds": "2 more than ones", "tens": "twice ones", "digit sum": "14"},
     "563"),
    ({"digits": "2", "ones": "0", "digit sum": "7"}, "70"),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "answer"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, told: Any, fields: Any, answer: str | None) -> None:
    if answer is None:
        with pytest.raises(AmountError, match="no number meets"):
            solved(NAME, fields)
        return
    solution = solved(NAME, fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == "neither"
    assert "searched for" in plain(solution.kind.reason)
    assert len(solution.workings) >= 2
    for said in told(solution):
        assert said[0].isupper() or said[0].isdigit(), said
        assert said.endswith("."), said


def test_strategies(solved: Any) -> None:
    assert {way.strategy for way in solved(NAME, SWAPPED).workings} == {
        "Listing by the sum of the digits",
        "Listing by the number turned round",
    }
    assert {way.strategy for way in solved(NAME, CARDS).workings} == {
        "Listing by the digits that there are",
        "Digit by digit from the left",
    }
    # Only one of these leaves a short list.
    solution = solved(NAME, {"digits": "3", "digit sum": "26", "is": "even"})
    assert {way.strategy for way in solution.workings} == {
        "Listing by the sum of the digits",
        "By the first digit",
    }


def test_the_list_is_written_out_and_struck_out(solved: Any) -> None:
    ways = {way.strategy: way for way in solved(NAME, SWAPPED).workings}
    steps = ways["Listing by the sum of the digits"].steps
    assert [plain(each.sentence) for each in steps] == [
        "The digits add up to 11: 29, 38, 47, 56, 65, 74, 83 and 92.",
        "Turned round it is 27 more: only 47 is left.",
        "Check 47: the digits add up to 11.",
        "Check 47: turned round it is 27 more.",
    ]
    assert steps[-1].equation.text() == "74 − 47 = 27"


WRONG = [
    (SWAPPED, "only one condition used", "14"),
    (SWAPPED, "digits turned round", "74"),
    ({"digits": "2", "digit sum": "9", "multiple of": "4", "is": "square"},
     "digits multiplied instead of added", "19"),
    (CARDS, "greatest and least exchanged", "3,058"),
    ({**CARDS, "find": "least"}, "nought put first", "358"),
    ({**CARDS, "is": "odd"}, "only one condition used", "8,530"),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[mistake] == answer


def test_mistakes_that_the_numbers_do_not_show(solved: Any) -> None:
    palindrome = {"digits": "2", "digit sum": "8", "tens": "4"}
    made = {each.misconception for each in solved(NAME, palindrome).mistakes}
    assert "digits turned round" not in made
    # 11 is no product of two digits.
    made = {each.misconception for each in solved(NAME, SWAPPED).mistakes}
    assert "digits multiplied instead of added" not in made


def test_what_the_story_may_mention(solved: Any) -> None:
    problem = solved(NAME, CARDS).problem
    quotes = FAMILIES[NAME].quotes(problem)
    assert plain(quotes["using"].text) == "3, 0, 8 and 5"
    assert plain(quotes["digits"].text) == "4"
    assert quotes["using"].tells == set(problem.givens)
    problem = solved(NAME, SWAPPED).problem
    assert {name: int(each.value) for name, each in problem.givens.items()} == {
        "digit sum": 11,
        "turned round": 27,
    }


COMPLAINTS: list[tuple[dict[str, Any], str]] = [
    ({"digits": "2", "digit sum": "11"}, "one condition is no search"),
    ({"digits": "2", "find": "least"}, "there is no condition"),
    ({"digit sum": "11", "is": "odd"}, "how many digits there are"),
    ({**SWAPPED, "digits": "5"}, "2 to 4 digits are searched"),
    ({"digits": "2", "digit sum": "11", "is": "odd"}, "4 numbers meet all the conditions: 29, 47"),
    ({"digits": "2", "digit sum": "4", "is": "even"}, "2 numbers meet all the conditions: 22, 40"),
    ({**SWAPPED, "is": "even"}, "no number meets all the conditions"),
    ({**SWAPPED, "find": "greatest"}, "only 47 meets the conditions, so it is no greatest"),
    ({**SWAPPED, "is": "primes"}, "'primes' is no sort of number"),
    ({**SWAPPED, "turned round": "27"}, "says nothing of the number turned round"),
    ({**SWAPPED, "turned round": "0 more"}, "says nothing of the number turned round"),
    ({**SWAPPED, "tens": "lucky"}, "'lucky' says nothing of the tens digit"),
    ({**SWAPPED, "tens": "twice tens"}, "compared with itself"),
    ({**SWAPPED, "hundreds": "3"}, "a number of 2 digits has no hundreds digit"),
    ({**SWAPPED, "digit sum": "11 kg"}, "'digit sum' is no plain number"),
    ({**SWAPPED, "multiple of": "1"}, "every number is a multiple of 1"),
    ({**SWAPPED, "digits": "3", "digit difference": "2"}, "only two digits have a difference"),
    ({**CARDS, "using": ["3", "12"]}, "no list of digits"),
    ({**CARDS, "using": ["0", "0"]}, "with 2 to 4 digits"),
    ({**CARDS, "digits": "3"}, "'digits' is not the 4 of 'using'"),
    ({**SWAPPED, "answer in": "kg"}, "has no unit"),
    ({"digits": "3", "is": "odd", "all different": "yes", "find": "least"}, "30 numbers or fewer"),
]


@pytest.mark.parametrize(("fields", "message"), COMPLAINTS)
def test_complaints(solved: Any, fields: Any, message: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved(NAME, fields)
    assert message in caught.value.problem
    assert caught.value.remedy


RULES = [
    *(Rule(kind, kind, n) for kind, n in [("digit sum", 9), ("digit difference", 3),
      ("digit product", 12), ("turned round", -18), ("more than", 47), ("less than", 47),
      ("multiple of", 7)]),
    *(Rule("is", kind) for kind in ("odd", "even", "square", "prime", "all different")),
    Rule("using", "using", digits=(4, 0)),
    *(place_rule(place, text) for place, text in [("tens", "odd"), ("ones", "even"),
      ("tens", "4"), ("tens", "twice ones"), ("ones", "half the tens"),
      ("ones", "2 less than tens"), ("tens", "3 times the ones digit")]),
]  # fmt: skip


@pytest.mark.parametrize("rule", RULES, ids=phrase)
def test_both_ways_to_test_a_condition_agree(rule: Rule) -> None:
    """The relation's arithmetic and the strategies' rows of digits, over all that there are."""
    by_number = [each for each in range(10, 100) if holds(rule, each)]
    assert by_number == [value(row) for row in every_row(2) if fits(rule, row)]
    assert by_number == [value(row) for row in rows_by(rule, 2)]
    assert by_number
    assert short_name(rule)


def test_a_number_that_would_begin_with_nought_is_not_turned_round() -> None:
    rule = Rule("turned round", "turned round", -27)
    assert [each for each in range(10, 100) if holds(rule, each)] == [41, 52, 63, 74, 85, 96]


def test_primes_are_those_of_sympy() -> None:
    rows = rows_by(Rule("is", "prime"), 3)
    assert [value(row) for row in rows] == list(sympy.primerange(100, 1000))


@pytest.mark.parametrize("fields", [SWAPPED, CARDS])
def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any, fields: Any) -> None:
    monkeypatch.setattr(digits_ways, "value", lambda row: int("".join(map(str, row))) + 1)
    with pytest.raises(SolvingError):
        solved(NAME, fields)


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    def one_more(rules: Any, length: int) -> list[int]:
        return [each + 1 for each in numbers_meeting(rules, length)]

    monkeypatch.setattr(digits_of_a_number, "numbers_meeting", one_more)
    with pytest.raises(SolvingError):
        solved(NAME, SWAPPED)


def test_numbers_that_meet_conditions_are_those_that_meet_each_of_them() -> None:
    """Against trying number by number in plain Python; asked twice, since answers are kept."""
    rules = (
        Rule("digit sum", "digit sum", 11),
        Rule("is", "odd", is_told=False),
        Rule("more than", "more than", 40),
    )
    for _ in range(2):
        for length in (2, 3):
            every = range(10 ** (length - 1), 10**length)
            expected = [n for n in every if sum(map(int, str(n))) == 11 and n % 2 and n > 40]
            assert numbers_meeting(rules, length) == expected
    assert numbers_meeting((replace(rules[0], n=18),), 2) == [99]
    assert numbers_meeting((), 2) == [*range(10, 100)]
    assert numbers_meeting((replace(rules[0], n=30),), 2) == []
