"""Two to four whole numbers by name, of which a common factor or multiple is sought."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Collection, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType
from typing import TypeVar

from typeset.arithmetic.equations import equation
from typeset.arithmetic.fields import FamilyFields
from typeset.arithmetic.methods import check_alike, finest_unit, is_counted
from typeset.arithmetic.names import listed
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension
from typeset.quantities.writing import whole, write_plain

F = TypeVar("F", bound="NamedNumbers")
_MOST_NUMBERS = 4
# Longer lists of multiples are told in part.
_MOST_LISTED = 12
# Larger ones nobody splits into factors in these years.
_LARGEST = 10_000


class NamedNumbers(FamilyFields):
    """Fields that hold amounts by name."""

    @abstractmethod
    def amounts(self) -> Mapping[str, Amount]:
        """The amounts by name, whichever key they stand under."""


def check_names(amounts: Mapping[str, Amount], taken: Collection[str], key: str) -> None:
    """Raises AmountError where the amounts of `key` are too few, too many or badly named."""
    if not 2 <= len(amounts) <= _MOST_NUMBERS:
        raise AmountError(
            f"'{key}' has {len(amounts)} amount{'' if len(amounts) == 1 else 's'}",
            f"give it 2 to {_MOST_NUMBERS}, each with its name",
        )
    for name in amounts:
        if not name.strip() or name in taken:
            raise AmountError(f"'{name}' cannot be a name here", "name a person, thing or colour")


def check_same_kind(amounts: Mapping[str, Amount]) -> None:
    """Raises AmountError where the amounts cannot be compared: lengths with lengths."""
    check_alike(*amounts.values())


def check_whole(amounts: Mapping[str, Amount]) -> None:
    """Raises AmountError for a number that has no factors in these years: a part, a time of
    day, more than ten thousand; and where all are equal."""
    for name, amount in in_one_unit(amounts)[0].items():
        if amount.unit.dimension is Dimension.CLOCK:
            raise AmountError(f"'{name}' is a time of day", "give a length of time, such as 12 min")
        if not amount.is_whole:
            unit = amount.unit.plural or "ones"
            raise AmountError(
                f"'{name}' is {write_plain(amounts[name])}, which is not a whole number of {unit}",
                "write all of them as whole numbers, in a smaller unit where there is one",
            )
        if amount.value > _LARGEST:
            raise AmountError(f"'{name}' is larger than {whole(_LARGEST)}", "choose a smaller one")
        if amount.value < 2:
            raise AmountError(f"'{name}' is only {write_plain(amount)}", "choose at least 2")
    if len({amount.base for amount in amounts.values()}) == 1:
        raise AmountError("all the numbers are the same", "choose numbers that differ")


def in_one_unit(amounts: Mapping[str, Amount]) -> tuple[dict[str, Amount], tuple[Step, ...]]:
    """The amounts in the smallest of their units where all measure one thing, and the steps
    that write them so. Counted things stay as they are."""
    kinds = {amount.unit.dimension for amount in amounts.values()}
    if len(kinds) > 1 or any(is_counted(amount) for amount in amounts.values()):
        return dict(amounts), ()
    unit = finest_unit(*amounts.values())
    changed: dict[str, Amount] = {}
    steps: list[Step] = []
    for name, amount in amounts.items():
        changed[name] = Amount(unit.of_base(amount.base), unit)
        if amount.unit != unit or amount.form is Form.COMPOUND:
            steps.append(
                step(
                    "Write {old} as {new}.",
                    equation(amount, changed[name]),
                    old=amount,
                    new=changed[name],
                )
            )
    return changed, tuple(steps)


def as_in_story(problem: Problem[F]) -> Problem[F]:
    """The problem with the numbers that the author typed, whichever is tried at present.

    For finding the kind: 'what if there were twice as many?' is asked with everything else
    as the story has it, so the story's own numbers have to be known beside the changed one.
    """
    amounts: Mapping[str, Amount] = problem.fields.amounts()
    return replace(problem, givens=MappingProxyType({**problem.givens, **amounts}))


def scale_of(problem: Problem[F], name: str) -> Fraction:
    """How many times the number of the story the one tried at present is."""
    return problem.given(name).base / problem.fields.amounts()[name].base


def number(value: int) -> Amount:
    """A plain number."""
    return Amount(Fraction(value))


def and_list(values: Collection[int]) -> str:
    """'24, 36 and 60'."""
    return listed([whole(value) for value in values], "and")


def comma_list(values: Collection[int]) -> str:
    """'1, 2, 3, 6'."""
    return ", ".join(whole(value) for value in values)


def multiples_to(last: int, of: int) -> str:
    """'12, 24, 36'; a long list with its middle left out."""
    values = list(range(of, last + 1, of))
    if len(values) <= _MOST_LISTED:
        return comma_list(values)
    return f"{comma_list(values[:3])} and so on up to {whole(values[-1])}"


def all_of(count: int) -> str:
    """'both', or 'all of them'."""
    return "both" if count == 2 else "all of them"


def lead(name: str, amounts: Mapping[str, Amount]) -> str:
    """'Red: ' where the unit of an amount does not tell it from the others, else nothing."""
    mine = amounts[name].unit
    others = [amount.unit for other, amount in amounts.items() if other != name]
    return "" if mine.plural and mine not in others else f"{title(name)}: "
