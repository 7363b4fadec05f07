"""What drawn numbers must fulfil: the phrases after 'such that', as a teacher says them."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction
from itertools import combinations
from typing import TypeAlias

from typeset.arithmetic.answers import RatioAnswer, WithRemainder
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.variation.columns import (
    has_carrying,
    has_exchanging,
    is_within_tables,
)
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.wishes import Wish
from typeset.errors import AmountError, Complaint, Place
from typeset.quantities.amount import Amount
from typeset.quantities.parsing import is_measure, parse_amount
from typeset.reading.complaints import likely, nearest, quoted, shown
from typeset.reading.content import DIFFERENT_FROM
from typeset.reading.tree import Scalar

Test: TypeAlias = Callable[[Trial], bool]
# The numbers of a problem whatever they count, so that two sets can be compared.
NumberSet: TypeAlias = tuple[tuple[str, Fraction], ...]

_COMMON_CHUNK = "Through a common chunk"


class Cost(IntEnum):
    """What must be known of a set before the condition can be asked; dearer ones come later."""

    NUMBERS = 0
    ANSWERS = 1
    WORKING = 2
    KIND = 3
    SOLUTION = 4


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition with the words that the author used for it. `best_by` is a strategy asked for."""

    words: str
    cost: Cost
    test: Test
    place: Place | None = None
    best_by: str = ""


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """What conditions may speak of beside the problem: the sets used by earlier lessons.

    `used` gives, by lesson, the number sets of its problems by structure.
    """

    used: Mapping[str, Callable[[str], frozenset[NumberSet]]]


NOWHERE = Elsewhere({})


def read_conditions(
    phrases: Sequence[Scalar], elsewhere: Elsewhere, complaints: list[Complaint]
) -> tuple[Condition, ...]:
    """The conditions of these phrases; what is wrong with one is added to `complaints`."""
    found: list[Condition] = []
    for phrase in phrases:
        try:
            found.append(_read(phrase, elsewhere))
        except AmountError as error:
            complaints.append(Complaint(phrase.place, error.problem, error.remedy))
    return tuple(found)


def number_set(trial: Trial) -> NumberSet:
    """The numbers of the problem in their base units, smallest first."""
    amounts = trial.problem.givens.values()
    return tuple(sorted((each.unit.dimension.value, each.base) for each in amounts))


def can_be_shown(mistake: str) -> Condition:
    """That the mistake gives a plausible wrong answer. Where the structure has no such mistake
    the numbers are not to blame, and whoever wants it complains."""

    def test(trial: Trial) -> bool:
        return mistake not in {each.misconception for each in trial.solution.refused}

    return Condition(f"{mistake} can be shown", Cost.SOLUTION, test)


def _read(phrase: Scalar, elsewhere: Elsewhere) -> Condition:
    text = " ".join(phrase.text.split())
    for pattern, _example, reader in _PHRASES:
        if match := pattern.fullmatch(text):
            cost, test = reader(match, elsewhere)
            best_by = match["strategy"] if "strategy" in match.re.groupindex else ""
            if reader is _common_chunk:
                best_by = _COMMON_CHUNK
            return Condition(text, cost, test, phrase.place, best_by)
    raise AmountError(f"unknown condition {shown(text)}", _nearest_phrase(text))


def _nearest_phrase(text: str) -> str:
    examples = [example for _pattern, example, _reader in _PHRASES]
    numberless = {re.sub(r"\d[\d.,]*", "5", example): example for example in examples}
    meant = likely(re.sub(r"[£]?\d[\d.,]*p?", "5", text), numberless)
    return f"did you mean '{numberless[meant]}'?" if meant else f"write {quoted(examples, 'or')}"


_Read: TypeAlias = tuple[Cost, Test]


def _whole(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.ANSWERS, answers_are_whole


def answers_are_whole(trial: Trial) -> bool:
    """True where no answer has a part of a unit; money counts in pounds."""
    return all(_is_whole(each) for each in trial.answers.values())


def _is_whole(answer: object) -> bool:
    match answer:
        case Amount():
            return answer.is_whole
        case WithRemainder(groups=groups, rest=rest):
            return groups.is_whole and rest.is_whole
        case RatioAnswer(parts=parts):
            return all(part.denominator == 1 for part in parts)
        case _:
            return True


def _between(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    low, high = _bound(match["low"]), _bound(match["high"])
    return Cost.ANSWERS, lambda trial: _all_answers(
        trial, lambda answer: _at_least(answer, low) and _at_least(answer, high, most=True)
    )


def _at_least_read(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    low = _bound(match["low"])
    return Cost.ANSWERS, lambda trial: _all_answers(trial, lambda each: _at_least(each, low))


def _at_most_read(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    high = _bound(match["high"])
    return Cost.ANSWERS, lambda trial: _all_answers(
        trial, lambda each: _at_least(each, high, most=True)
    )


def _bound(text: str) -> Amount:
    return parse_amount(text)


def _all_answers(trial: Trial, fits: Callable[[Amount], bool]) -> bool:
    amounts = (
        each.groups if isinstance(each, WithRemainder) else each for each in trial.answers.values()
    )
    return all(fits(each) for each in amounts if isinstance(each, Amount))


def _at_least(answer: Amount, bound: Amount, most: bool = False) -> bool:
    """A bound without a measure is one in the unit of the answer."""
    if is_measure(bound) and bound.unit.dimension is not answer.unit.dimension:
        return False
    mine, theirs = answer.value, bound.value
    if is_measure(bound):
        mine, theirs = answer.base, bound.base
    return mine <= theirs if most else mine >= theirs


def _no_carrying(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.WORKING, lambda trial: not any(map(has_carrying, trial.expected))


def _no_exchanging(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.WORKING, lambda trial: not any(map(has_exchanging, trial.expected))


def _within_tables(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.WORKING, lambda trial: all(map(is_within_tables, trial.expected))


def _demand(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    low, high = Fraction(match["low"]), Fraction(match["high"])
    if high < low:
        raise AmountError(f"'{match[0]}' does not go up", f"write 'demand {high} to {low}'")
    return Cost.WORKING, lambda trial: low <= trial.demand <= high


def _best_by(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.WORKING, _is_best_by(match["strategy"])


def _common_chunk(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.WORKING, _is_best_by(_COMMON_CHUNK)


def _is_best_by(strategy: str) -> Test:
    wanted = strategy.lower()
    return lambda trial: trial.easiest.strategy.lower() == wanted


def _all_different(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.NUMBERS, numbers_are_different


def numbers_are_different(trial: Trial) -> bool:
    """True where no two numbers of the problem are written alike; a pupil sees the digits."""
    amounts = trial.problem.givens.values()
    return all(one.value != other.value for one, other in combinations(amounts, 2))


def _different_from(match: re.Match[str], elsewhere: Elsewhere) -> _Read:
    name = match["lesson"]
    known = {each.lower(): each for each in elsewhere.used}
    if name.lower() not in known:
        remedy = nearest(name, tuple(elsewhere.used)) or "there is no lesson before this one"
        raise AmountError(f"{shown(name)} is no earlier lesson of this week", remedy)
    used = elsewhere.used[known[name.lower()]]
    return Cost.NUMBERS, lambda trial: number_set(trial) not in used(trial.content.structure)


def _can_be_shown(match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    known = {each.lower(): each for each in MISCONCEPTIONS}
    wanted = known.get(match["mistake"].lower())
    if wanted is None:
        remedy = nearest(match["mistake"], tuple(MISCONCEPTIONS))
        raise AmountError(f"there is no mistake called {shown(match['mistake'])}", remedy)
    return (
        Cost.SOLUTION,
        lambda trial: wanted in {each.misconception for each in trial.solution.mistakes},
    )


def _rest(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.ANSWERS, lambda trial: trial.leaves_rest


def _no_rest(_match: re.Match[str], _elsewhere: Elsewhere) -> _Read:
    return Cost.ANSWERS, lambda trial: not trial.leaves_rest


_Reader: TypeAlias = Callable[[re.Match[str], Elsewhere], _Read]


def _phrase(pattern: str, example: str, reader: _Reader) -> tuple[re.Pattern[str], str, _Reader]:
    return re.compile(pattern, re.IGNORECASE | re.ASCII), example, reader


_NUMBER = r"\d{1,6}(?:\.\d{1,3})?"
# Each phrase with an example of it, as messages and the README show it.
_PHRASES = (
    _phrase(r"(?:the|every) answers? (?:is|are) whole", "the answer is whole", _whole),
    _phrase(
        r"the answer is between (?P<low>.+) and (?P<high>.+)",
        "the answer is between 20 and 60",
        _between,
    ),
    _phrase(r"the answer is at least (?P<low>.+)", "the answer is at least 20", _at_least_read),
    _phrase(r"the answer is at most (?P<high>.+)", "the answer is at most 60", _at_most_read),
    _phrase(r"no carrying", "no carrying", _no_carrying),
    _phrase(r"no exchanging", "no exchanging", _no_exchanging),
    _phrase(r"within the tables", "within the tables", _within_tables),
    _phrase(rf"demand (?P<low>{_NUMBER}) to (?P<high>{_NUMBER})", "demand 3 to 5", _demand),
    _phrase(r"the common chunk is needed", "the common chunk is needed", _common_chunk),
    _phrase(r"best by (?P<strategy>.+)", "best by Scaling up", _best_by),
    _phrase(r"each number (?:is )?different", "each number different", _all_different),
    _phrase(rf"{DIFFERENT_FROM} (?P<lesson>.+)", f"{DIFFERENT_FROM} monday", _different_from),
    _phrase(r"(?P<mistake>.+) can be shown", "remainder ignored can be shown", _can_be_shown),
    _phrase(r"a remainder is left", "a remainder is left", _rest),
    _phrase(r"no remainder(?: is left)?", "no remainder", _no_rest),
)
_BOUNDS_SIZE = re.compile(r"demand |the answer is (?:between|at) ", re.IGNORECASE)
_KEEPS_EASY = re.compile(r"no carrying|no exchanging|within the tables", re.IGNORECASE)


def counts_for(words: str, wish: Wish) -> bool:
    """True where a condition of a problem also counts for its easier or harder version.

    Bounds of demand and size are those of their own version; what keeps numbers easy says
    nothing of a harder one.
    """
    if wish in (Wish.EASIER, Wish.HARDER) and _BOUNDS_SIZE.match(words):
        return False
    return wish is not Wish.HARDER or not _KEEPS_EASY.match(words)
