"""Draws one set of numbers that fits, each fitting set as likely as the others.

Sets are tried in an order by chance, and the first that fits is taken: that is a fair draw
among all that fit, without solving them all. Where there are too many sets to put in order,
they are picked one by one, and the draw is fair among those that would be picked.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import prod
from typing import TypeAlias

from typeset.arithmetic.variation.choices import typed
from typeset.arithmetic.variation.conditions import Condition, Cost
from typeset.arithmetic.variation.dice import Dice
from typeset.arithmetic.variation.numbers_typed import Choice, Path, with_texts
from typeset.arithmetic.variation.trial import Trial
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.reading.content import ProblemContent

NumbersAt: TypeAlias = Mapping[Path, Amount]

# So many sets are put into an order by chance as a whole.
_MOST_IN_ORDER = 4000
# So many sets are looked at; for so many of these the workings are written out (under a
# millisecond each), and so many are solved whole (some milliseconds each).
MOST_TRIES = 4000
MOST_WORKED = 1200
MOST_SOLVED = 120
# So many trials of one search are remembered.
_MOST_KEPT = 4000


@dataclass(slots=True)
class Limits:
    """What may still be spent on a draw."""

    tries: int = MOST_TRIES
    worked: int = MOST_WORKED
    solved: int = MOST_SOLVED


def count_of(choices: Sequence[Choice]) -> int:
    """How many sets there are."""
    return prod(len(each.values) for each in choices)


def sets_of(choices: Sequence[Choice], dice: Dice) -> Iterator[NumbersAt]:
    """Every set once in an order by chance; of very many, some without a repeat."""
    count = count_of(choices)
    if count <= _MOST_IN_ORDER:
        yield from (_set_at(choices, each) for each in dice.shuffled(range(count)))
        return
    seen: set[int] = set()
    for _ in range(MOST_TRIES):
        each = dice.below(count)
        if each not in seen:
            seen.add(each)
            yield _set_at(choices, each)


def _set_at(choices: Sequence[Choice], number: int) -> dict[Path, Amount]:
    """The set of this number: the digits of the number say which value each choice takes."""
    numbers: dict[Path, Amount] = {}
    for choice in choices:
        number, at = divmod(number, len(choice.values))
        numbers[choice.path] = choice.values[at]
    return numbers


class Trials:
    """The sets of one problem tried so far: a search comes by many of them more than once."""

    def __init__(self, content: ProblemContent) -> None:
        self.content = content
        self._tried: dict[tuple[tuple[Path, int, int, int], ...], Trial] = {}
        self._texts: dict[tuple[Path, int, int, int], str] = {}

    def of(self, numbers: NumbersAt) -> Trial:
        """The trial of this set. What an amount looks like counts as well: £2.50, not £2.5."""
        # Two whole numbers are found faster than a fraction, whose hash is reckoned anew.
        key = tuple(
            (path, each.value.numerator, each.value.denominator, each.places)
            for path, each in numbers.items()
        )
        trial = self._tried.get(key)
        if trial is None:
            trial = Trial(with_texts(self.content, self._typed(numbers, key)))
            if len(self._tried) < _MOST_KEPT:
                self._tried[key] = trial
        return trial

    def _typed(
        self, numbers: NumbersAt, key: Sequence[tuple[Path, int, int, int]]
    ) -> dict[Path, str]:
        """The texts of the set; the same few numbers come in many sets."""
        texts: dict[Path, str] = {}
        for (path, amount), known in zip(numbers.items(), key, strict=True):
            text = self._texts.get(known)
            if text is None:
                text = self._texts[known] = typed(amount)
            texts[path] = text
        return texts


def fitting(
    trials: Trials,
    sets: Iterable[NumbersAt],
    conditions: Sequence[Condition],
    limits: Limits,
) -> Iterator[Trial]:
    """Those of the sets that make sense and fulfil every condition, in order."""
    for numbers in sets:
        if min(limits.tries, limits.worked, limits.solved) <= 0:
            return
        limits.tries -= 1
        trial = trials.of(numbers)
        if fits(trial, conditions, limits):
            yield trial


def fits(trial: Trial, conditions: Sequence[Condition], limits: Limits) -> bool:
    """True where the set makes sense and fulfils the conditions, cheapest asked first."""
    try:
        if not _hold(conditions, Cost.NUMBERS, trial):
            return False
        _ = trial.answers
        if not _hold(conditions, Cost.ANSWERS, trial):
            return False
        limits.worked -= 1
        if not _hold(conditions, Cost.WORKING, trial):
            return False
        limits.solved -= 1
        if not _hold(conditions, Cost.KIND, trial):
            return False
        _ = trial.solution
        return _hold(conditions, Cost.SOLUTION, trial)
    except (AmountError, ZeroDivisionError):
        return False


def _hold(conditions: Sequence[Condition], cost: Cost, trial: Trial) -> bool:
    return all(trial.verdict(each.test) for each in conditions if each.cost is cost)
