"""The fields that a structure's problem has in a content file, and how they are checked.

A family declares them as a pydantic model; keys are the words a teacher types, so a name
with a space is an alias ('answer in'). Amounts are read with the author's own nouns, which
come in the validation context under 'nouns'.
"""

from __future__ import annotations

from typing import Annotated, Any, TypeAlias

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, ValidationInfo
from pydantic_core import CoreSchema, PydanticCustomError
from pydantic_core.core_schema import is_instance_schema

from typeset.arithmetic.rounding import Rounding, read_rounding
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.nouns import counted
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import Unit, unit_named


def refuse(problem: str, remedy: str = "") -> PydanticCustomError:
    """A complaint about a field, with what would be right: `raise refuse(...)`."""
    return PydanticCustomError("amount", "{problem}", {"problem": problem, "remedy": remedy})


def _read_amount(value: Any, info: ValidationInfo) -> Any:
    if not isinstance(value, str):
        return value
    try:
        return parse_amount(value, _nouns(info))
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None


def _read_unit(value: Any, info: ValidationInfo) -> Any:
    """'kg' or 'floats': a measure, or the plural of what is counted."""
    if not isinstance(value, str):
        return value
    if not value.strip() or any(character.isdecimal() for character in value):
        raise refuse(f"'{value}' is not a unit", "write one such as kg, cm², £ or gulls")
    return unit_named(value) or counted(value, False, _nouns(info))


def _nouns(info: ValidationInfo) -> dict[str, str]:
    context = info.context if isinstance(info.context, dict) else {}
    return dict(context.get("nouns", {}))


def _positive(amount: Amount) -> Amount:
    if amount.value <= 0:
        raise refuse("the number must be more than 0", "write a number from 1 up")
    return amount


def _whole(amount: Amount) -> Amount:
    if not amount.is_whole:
        raise refuse("the number must be whole", "write a whole number")
    return amount


class Read:
    """Marks a type of ours as one that a reader before it makes from a text.

    Left to itself, pydantic would describe every field of the type, once for each use of it, and
    take keys with values for one.
    """

    @staticmethod
    def __get_pydantic_core_schema__(source: type, _handler: object) -> CoreSchema:
        return is_instance_schema(source)


AnyAmount: TypeAlias = Annotated[Amount, Read, BeforeValidator(_read_amount)]
PositiveAmount: TypeAlias = Annotated[AnyAmount, AfterValidator(_positive)]
WholeAmount: TypeAlias = Annotated[AnyAmount, AfterValidator(_whole), AfterValidator(_positive)]
UnitField: TypeAlias = Annotated[Unit, Read, BeforeValidator(_read_unit)]


def _read_yes_no(value: Any) -> Any:
    answers = {"yes": True, "no": False}
    if isinstance(value, str) and value not in answers:
        raise refuse(f"'{value}' is neither yes nor no", "write yes or no")
    return answers[value] if isinstance(value, str) else value


YesNo: TypeAlias = Annotated[bool, BeforeValidator(_read_yes_no)]


def _read_rounding(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    try:
        return read_rounding(value)
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None


class FamilyFields(BaseModel):
    """What every structure may have besides its own fields."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        populate_by_name=True,
        arbitrary_types_allowed=True,
        # Built when the first problem is read, since a part of a model is never read alone.
        defer_build=True,
    )

    # The unit of the answer where the givens do not say it: 'kg', 'floats'.
    answer_in: UnitField | None = Field(default=None, alias="answer in")
    # Counted things may be cut (half an onion), so a part of one is an answer.
    may_be_cut: YesNo = Field(default=False, alias="may be cut")
    # 'the nearest 10 m', '2 decimal places': the answer is rounded at the end, halves up.
    round_to: Annotated[Rounding, Read, BeforeValidator(_read_rounding)] | None = Field(
        default=None, alias="round to"
    )
    # Facts that are not in the story (7 days in a week), by name.
    facts: dict[str, AnyAmount] = Field(default_factory=dict)

    @classmethod
    def keys(cls) -> tuple[str, ...]:
        """The keys as a teacher types them."""
        return tuple(field.alias or name for name, field in cls.model_fields.items())
