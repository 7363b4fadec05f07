"""Number sentences with a box.

8 + 4 = box + 5 and its wrong answers 12 and 17: Falkner, Levi and Carpenter 1999, Teaching
Children Mathematics 6 (from memory). The other answers by hand.
"""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.equations import plus
from typeset.arithmetic.families import FAMILIES, missing_number_ways
from typeset.arithmetic.families.number_sentence import box_value, read_sentence
from typeset.arithmetic.figures import BarModel
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

NAME = "missing number"

ANSWERS = [
    ("7 × _ + 5 = 47", "6", "both"),
    ("_ − 18 = 25", "43", "add or subtract"),
    ("36 ÷ ? = 4", "9", "multiply or divide"),
    ("□ + 8 = 15 + 6", "13", "add or subtract"),
    ("8 + 4 = _ + 5", "7", "add or subtract"),
    ("45 - __ = 20", "25", "add or subtract"),
    ("6 x 8 = _ * 4", "12", "multiply or divide"),
    ("(_ + 3) × 4 = 60", "12", "both"),
    ("2.5 + _ = 6.1", "3.6", "add or subtract"),
    ("1/2 + _ = 3/4", "1/4", "add or subtract"),
    ("60 ÷ (_ − 2) = 12", "7", "both"),
    ("100 – 37 = [ ] – 40", "103", "add or subtract"),
    ("30 ÷ 5 = 24 ÷ _", "4", "multiply or divide"),
    ("24 ÷ 6 = _ ÷ 3", "12", "multiply or divide"),
    ("1,000 = 256 + _", "744", "add or subtract"),
    ("20 − 2 × _ = 8", "6", "both"),
]


@pytest.mark.parametrize(("sentence", "answer", "kind"), ANSWERS)
def test_answers(
    solved: Any, answers_of: Any, told: Any, sentence: str, answer: str, kind: str
) -> None:
    solution = solved(NAME, {"sentence": sentence})
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == kind
    assert len(solution.workings) >= 2
    for said in told(solution):
        assert said[0].isupper() or said[0].isdigit(), said
        assert said.endswith("."), said


WAYS = [
    ("8 + 4 = _ + 5", "Keeping both sides equal"),
    ("6 × 8 = _ × 4", "Keeping both sides equal"),
    ("36 ÷ _ = 4", "A table fact"),
    ("_ ÷ 4 = 9", "A table fact"),
    ("8 + _ = 15", "A number bond"),
    ("256 + _ = 1000", "Counting up"),
    ("7 × _ + 5 = 47", "Trial and improvement"),
]


@pytest.mark.parametrize(("sentence", "strategy"), WAYS)
def test_strategies(solved: Any, sentence: str, strategy: str) -> None:
    ways = {way.strategy for way in solved(NAME, {"sentence": sentence}).workings}
    assert ways >= {strategy, "Inverse operations"}


WRONG = [
    ("8 + 4 = _ + 5", "equals taken as do it now", "12"),
    ("8 + 4 = _ + 5", "all numbers added", "17"),
    ("_ + 8 = 15 + 6", "equals taken as do it now", "7"),
    ("_ − 18 = 25", "operation repeated instead of inverted", "7"),
    ("36 ÷ _ = 4", "subtraction or division turned round", "144"),
    ("45 − _ = 20", "subtraction or division turned round", "65"),
    ("(_ + 3) × 4 = 60", "undone in the wrong order", "14 1/4"),
    ("7 × _ + 5 = 47", "step left out", "42"),
]


@pytest.mark.parametrize(("sentence", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, sentence: str, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, {"sentence": sentence}))[mistake] == answer


def test_untidy_mistakes_are_not_made(solved: Any) -> None:
    # 47 ÷ 7 never ends as a decimal, so no pupil would go on with it.
    solution = solved(NAME, {"sentence": "7 × _ + 5 = 47"})
    assert "undone in the wrong order" not in {each.misconception for each in solution.mistakes}
    solution = solved(NAME, {"sentence": "_ + 6 = 6 + 7"})
    refused = {each.misconception for each in solution.refused}
    made = {each.misconception for each in solution.mistakes}
    assert "equals taken as do it now" not in made | refused


@pytest.mark.parametrize(
    ("typed", "set_as"),
    [
        ("7 x ? + 5 = 47", "7 × [ ] + 5 = 47"),
        ("( _+3)*4=60", "([ ] + 3) × 4 = 60"),
        ("(2 × 3) + _ = 10", "2 × 3 + [ ] = 10"),
        ("1000 - _ = 2 1/2", "1,000 − [ ] = 2 1/2"),
    ],
)
def test_the_story_quotes_the_sentence(solved: Any, typed: str, set_as: str) -> None:
    solution = solved(NAME, {"sentence": typed})
    quote = FAMILIES[NAME].quotes(solution.problem)["sentence"]
    assert plain(quote.text) == set_as
    assert quote.tells == set(solution.problem.givens)


COMPLAINTS = [
    ("7 × _ + 5", "one equals sign"),
    ("7 = _ = 5", "one equals sign"),
    ("7 + 3 = 10", "one box"),
    ("_ + _ = 10", "one box"),
    ("_ = 10", "2 to 8 numbers"),
    ("1 + 1 + 1 + 1 + 1 + 1 + 1 + _ = 9 + 1", "2 to 8 numbers"),
    ("_ = 3 + 7", "stands alone"),
    ("7 kg + _ = 9 kg", "'k' does not belong"),
    ("7 3 + _ = 9", "without a sign between"),
    ("7 + + _ = 9", "a number is missing"),
    ("(7 + _ = 9", "a bracket is not closed"),
    ("7 + _) = 9", "without a sign between"),
    ("7 + _ = ", "2 to 8 numbers"),
    ("7 + _ + 2 = ", "a number is missing"),
]


@pytest.mark.parametrize(("sentence", "message"), COMPLAINTS)
def test_what_is_no_sentence(solved: Any, sentence: str, message: str) -> None:
    with pytest.raises(AmountError) as caught:
        read_sentence(sentence)
    assert message in caught.value.problem
    assert caught.value.remedy
    with pytest.raises(ValidationError):
        solved(NAME, {"sentence": sentence})


@pytest.mark.parametrize(
    ("sentence", "message"),
    [
        ("3 + _ = 2", "the number in the box would be −1"),
        ("0 × _ = 2", "no number fits"),
        ("0 × _ = 0 × 5", "every number fits"),
        ("_ × 0 + 5 = 5", "every number fits"),
        ("0 ÷ _ = 0 + 0", "every number fits"),
    ],
)
def test_sentences_without_one_answer(solved: Any, sentence: str, message: str) -> None:
    with pytest.raises(AmountError, match=message):
        solved(NAME, {"sentence": sentence})


def test_the_only_number_must_not_divide_by_nought() -> None:
    # (box × 0) ÷ box would be 0 for any number but this one.
    with pytest.raises(AmountError, match="no number fits"):
        box_value(read_sentence("4 ÷ (_ − 2) = 0 × 3"))
    with pytest.raises(AmountError, match="the only number for the box would divide by 0"):
        box_value(read_sentence("0 ÷ (_ − 2) = 3 − 1"))


def test_figures(solved: Any) -> None:
    def sizes(sentence: str) -> list[list[str]]:
        figure = solved(NAME, {"sentence": sentence}).figure
        assert isinstance(figure, BarModel)
        return [[str(part.size) for part in bar.parts] for bar in figure.bars]

    assert sizes("_ − 18 = 25") == [["18", "25"]]
    assert sizes("45 − _ = 20") == [["25", "20"]]
    assert sizes("8 + 4 = _ + 5") == [["8", "4"], ["7", "5"]]
    assert solved(NAME, {"sentence": "7 × _ + 5 = 47"}).figure is None


def test_a_broken_inverse_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(missing_number_ways, "minus", plus)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(NAME, {"sentence": "7 × _ + 5 = 47"})
