"""Tells why no numbers fit: which condition excludes most, and what would do without one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from typeset.arithmetic.names import listed
from typeset.arithmetic.variation.choices import typed
from typeset.arithmetic.variation.conditions import Condition
from typeset.arithmetic.variation.dice import Dice
from typeset.arithmetic.variation.numbers_typed import Choice, with_numbers
from typeset.arithmetic.variation.search import NumbersAt, count_of, sets_of
from typeset.arithmetic.variation.trial import Trial
from typeset.errors import AmountError, Complaint
from typeset.reading.complaints import likely, quoted
from typeset.reading.content import ProblemContent

# So many sets are solved whole to find out what excludes them.
_MOST_LOOKED_AT = 150


@dataclass(frozen=True, slots=True)
class _Verdict:
    """What is against one set: conditions by their number; or that it makes no sense."""

    numbers: NumbersAt
    fails: tuple[int, ...]
    no_sense: str
    best: str


def nothing_fits(
    content: ProblemContent,
    choices: Sequence[Choice],
    conditions: Sequence[Condition],
) -> Complaint:
    """The complaint about a problem whose ranges and conditions no set fulfils.

    It looks at sets of its own, so that it says the same however long the search was.
    """
    sets = islice(sets_of(choices, Dice("why nothing fits")), _MOST_LOOKED_AT)
    verdicts = [_judged(content, numbers, conditions) for numbers in sets]
    nonsense = [each for each in verdicts if each.no_sense]
    counts = Counter(at for each in verdicts for at in each.fails)
    worst, failing = max(counts.items(), key=lambda item: (item[1], -item[0]), default=(0, 0))
    # A condition that all the rest fail is to blame, however few make sense.
    if not failing or len(nonsense) > failing != len(verdicts) - len(nonsense):
        return _no_sense(content, choices, verdicts, nonsense)
    condition = conditions[worst]
    place = condition.place or (choices[0].place if choices else content.place)
    if not choices:
        problem = f"these numbers fail '{condition.words}'"
    else:
        of = _how_many(choices, len(verdicts))
        rest = f"{len(nonsense)} make no sense and " if nonsense else ""
        problem = f"no numbers fit: {of}, {rest}{failing} fail '{condition.words}'"
    return Complaint(place, problem, _remedy(choices, condition, worst, verdicts))


def _judged(
    content: ProblemContent, numbers: NumbersAt, conditions: Sequence[Condition]
) -> _Verdict:
    trial = Trial(with_numbers(content, numbers))
    no_sense = trial.why_no_sense()
    if no_sense:
        return _Verdict(numbers, (), no_sense, "")
    fails = tuple(at for at, each in enumerate(conditions) if not _holds(each, trial))
    return _Verdict(numbers, fails, "", trial.solution.workings[0].strategy)


def _holds(condition: Condition, trial: Trial) -> bool:
    try:
        return condition.test(trial)
    except AmountError:
        return False


def _how_many(choices: Sequence[Choice], looked_at: int) -> str:
    count = count_of(choices)
    if count <= looked_at:
        return f"of {count} number sets" if count > 1 else "of 1 number set"
    return f"of {looked_at} number sets tried (there are {count:,})"


def _no_sense(
    content: ProblemContent,
    choices: Sequence[Choice],
    verdicts: Sequence[_Verdict],
    nonsense: Sequence[_Verdict],
) -> Complaint:
    reason, _count = Counter(each.no_sense for each in nonsense).most_common(1)[0]
    place = choices[0].place if choices else content.place
    told = f"{len(nonsense)} make no sense (such as: {reason})"
    remedy = _widen(choices)
    return Complaint(place, f"no numbers fit: {_how_many(choices, len(verdicts))}, {told}", remedy)


def _remedy(
    choices: Sequence[Choice], condition: Condition, worst: int, verdicts: Sequence[_Verdict]
) -> str:
    found = sorted({each.best for each in verdicts if each.best})
    if condition.best_by and condition.best_by.lower() not in {each.lower() for each in found}:
        meant = likely(condition.best_by, found)
        ways = f"the easiest {'way' if len(found) == 1 else 'ways'} found: {quoted(found)}"
        return f"did you mean 'best by {meant}'?" if meant else ways
    if not choices:
        return "loosen it, or choose other numbers"
    without = [each.numbers for each in verdicts if each.fails == (worst,)]
    remedy = f"loosen it, or {_widen(choices)}"
    if without:
        remedy += f"; without it {_told(choices, without[0])} would do"
    return remedy


def _widen(choices: Sequence[Choice]) -> str:
    names = list(dict.fromkeys(f"'{each.name}'" for each in choices))
    return f"widen {listed(names)}"


def _told(choices: Sequence[Choice], numbers: NumbersAt) -> str:
    """'each' 12 floats and 'groups' 5 crates."""
    return listed([f"'{each.name}' {typed(numbers[each.path])}" for each in choices], "and")
