"""Errors of a pydantic model, told with places in a teacher's words."""

from pathlib import Path
from typing import Annotated, Literal

import pytest
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import PydanticCustomError

from typeset.reading.complaints import complaints_of, likely, nearest, quoted
from typeset.reading.tree import Keyed, bare
from typeset.reading.yaml_reader import parse_yaml


def _starts_with_a_digit(text: str) -> str:
    if text[:1].isdigit():
        return text
    problem, remedy = f"'{text}' is not an amount", "write a number"
    raise PydanticCustomError("amount", "{problem}", {"problem": problem, "remedy": remedy})


def _refuse_bells(text: str) -> str:
    if text == "bells":
        raise ValueError("bells cannot be shared")
    return text


AmountText = Annotated[str, AfterValidator(_starts_with_a_digit)]


class Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)


class Inner(Strict):
    rope: AmountText
    cost: AmountText = "1"


class Example(Strict):
    groups: AmountText
    each: AmountText = "1"
    answer_in: AmountText = Field(default="1", alias="answer in")
    find: Literal["each", "left over"] = "each"
    parts: dict[str, AmountText] = Field(default={}, min_length=1)
    known: AmountText | dict[str, AmountText] = "1"
    steps: list[AmountText] = []
    together: Inner | None = None
    share: Annotated[str, AfterValidator(_refuse_bells)] = ""
    count: int = Field(default=3, ge=2, le=9)


KEYS = ("groups", "each", "answer in", "find", "parts", "known", "steps", "together")

# What is typed, and every complaint about it.
CASES = [
    ("each: 3", ["1:1: the key 'groups' is missing; add 'groups: …'"]),
    ("grops: 3", ["1:1: unknown key 'grops'; did you mean 'groups'?"]),
    (
        "groups: 3\nzebra: 4",
        [
            "2:1: unknown key 'zebra'; the keys here are 'groups', 'each', 'answer in', 'find', "
            "'parts', 'known', 'steps' and 'together'"
        ],
    ),
    (
        "groups: six\neach: five\nanswer in: litres",
        [
            "1:9: 'six' is not an amount; write a number",
            "2:7: 'five' is not an amount; write a number",
            "3:12: 'litres' is not an amount; write a number",
        ],
    ),
    ("groups:", ["1:8: 'groups' is empty; write a number"]),
    ("groups: [3]", ["1:9: 'groups' must be a text, not a list; write a text after the colon"]),
    (
        "groups: {3 crates}",
        [
            "1:9: 'groups' must be a text, not keys with values; put the whole text in "
            "quotation marks"
        ],
    ),
    ("groups: 3\nfind: lft over", ["2:7: 'find' cannot be 'lft over'; did you mean 'left over'?"]),
    ("groups: 3\nfind: all", ["2:7: 'find' cannot be 'all'; write 'each' or 'left over'"]),
    ("groups: 3\nfind: ''", ["2:7: 'find' is empty; write a text after the colon"]),
    (
        "groups: 3\nparts: [gulls]",
        [
            "2:8: 'parts' must be keys with values, not a list; write lines such as "
            "'key: value' there"
        ],
    ),
    ("groups: 3\nparts: {}", ["2:8: 'parts' is empty"]),
    ("groups: 3\nparts:\n  gulls: x", ["3:10: 'x' is not an amount; write a number"]),
    # A union: one complaint, from the branch that fits what was typed.
    ("groups: 3\nknown: x", ["2:8: 'x' is not an amount; write a number"]),
    ("groups: 3\nknown: {gulls: x}", ["2:16: 'x' is not an amount; write a number"]),
    ("groups: 3\nknown: [x]", ["2:8: 'known' must be a text or keys with values, not a list"]),
    (
        "groups: 3\nsteps: [1, {a: b}, x, '']",
        [
            "2:12: item 2 of 'steps' must be a text, not keys with values; put the whole text in "
            "quotation marks",
            "2:20: 'x' is not an amount; write a number",
            "2:23: item 4 of 'steps' is empty; write a number",
        ],
    ),
    (
        "groups: 3\ntogether: {cost: 3, string: 4}",
        [
            "2:11: the key 'rope' is missing in 'together'; add 'rope: …'",
            "2:21: unknown key 'string'",
        ],
    ),
    ("groups: 3\nshare: bells", ["2:8: bells cannot be shared"]),
    ("groups: 3\ncount: many", ["2:8: 'count' must be a whole number, not 'many'"]),
    ("groups: 3\ncount: 1", ["2:8: 'count' must be at least 2"]),
    ("groups: 3\ncount: 10", ["2:8: 'count' must be at most 9"]),
]


@pytest.mark.parametrize(("typed", "expected"), CASES, ids=[typed for typed, _told in CASES])
def test_complaints_of_a_model(typed: str, expected: list[str]) -> None:
    root = parse_yaml(typed, Path("f.yaml")).root
    assert isinstance(root, Keyed)
    with pytest.raises(ValidationError) as caught:
        Example.model_validate(bare(root))
    complaints = sorted(complaints_of(caught.value, root, KEYS))
    assert [str(each).removeprefix("f.yaml:") for each in complaints] == expected


def test_nearest_word_or_all_of_them() -> None:
    known = ("sharing", "grouping", "ratio")
    assert nearest("sharring", known) == "did you mean 'sharing'?"
    assert nearest("SHARING", known) == "did you mean 'sharing'?"
    assert nearest("zebra", known) == "write 'sharing', 'grouping' or 'ratio'"
    assert nearest("zebra", ()) == ""
    assert likely("raito", known) == "ratio"
    assert likely("r", known) is None


def test_words_in_a_list() -> None:
    assert quoted(()) == ""
    assert quoted(("a",)) == "'a'"
    assert quoted(("a", "b")) == "'a' and 'b'"
    assert quoted(("a", "b", "c"), "or") == "'a', 'b' or 'c'"
