"""Random searches for a number by its digits, against itertools and string handling."""

from __future__ import annotations

from collections.abc import Callable
from itertools import permutations
from math import prod

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import solved, tried, value_of
from typeset.errors import AmountError

# Each condition as typed, from the digits of the number that is to be found, and as tested.
CONDITIONS: dict[str, tuple[Callable[[str], str], Callable[[str, str], bool]]] = {
    "digit sum": (
        lambda text: str(sum(map(int, text))),
        lambda text, n: sum(map(int, text)) == int(n),
    ),
    "digit product": (
        lambda text: str(prod(map(int, text))),
        lambda text, n: prod(map(int, text)) == int(n),
    ),
    "multiple of": (
        lambda text: str(max(sympy.divisors(int(text))[-2], 2)),
        lambda text, n: int(text) % int(n) == 0,
    ),
    "is": (
        lambda text: "even" if text[-1] in "02468" else "odd",
        lambda text, word: (text[-1] in "02468") == (word == "even"),
    ),
    "tens": (lambda text: text[-2], lambda text, digit: text[-2] == digit),
    "more than": (lambda text: str(int(text) - 7), lambda text, n: int(text) > int(n)),
    "less than": (lambda text: str(int(text) + 5), lambda text, n: int(text) < int(n)),
}


@tried
@given(
    hidden=st.integers(10, 999).map(str),
    keys=st.sets(st.sampled_from(sorted(CONDITIONS)), min_size=2, max_size=4),
    find=st.sampled_from(["number", "greatest", "least"]),
)
def test_digits_of_a_number(hidden: str, keys: set[str], find: str) -> None:
    typed = {key: CONDITIONS[key][0](hidden) for key in keys}
    assume(all(typed[key] != "0" for key in keys - {"tens"}))
    assume("multiple of" not in keys or int(hidden) % int(typed["multiple of"]) == 0)
    length = len(hidden)
    texts = [str(each) for each in range(10 ** (length - 1), 10**length)]
    fitting = [
        int(text) for text in texts if all(CONDITIONS[key][1](text, typed[key]) for key in keys)
    ]
    fields = {"digits": str(length), "find": find, **typed}
    wanted = {"number": len(fitting) == 1}.get(find, len(fitting) > 1)
    try:
        solution = solved("digits of a number", **fields)
    except AmountError as refused:
        assert not wanted or "numbers or fewer to list" in refused.problem
        return
    assert wanted
    expected = {"number": fitting[0], "greatest": max(fitting), "least": min(fitting)}[find]
    assert value_of(solution, "number") == expected


@tried
@given(
    digits=st.lists(st.integers(0, 9), min_size=2, max_size=4),
    find=st.sampled_from(["greatest", "least"]),
)
def test_cards(digits: list[int], find: str) -> None:
    """The rows of the cards by itertools."""
    numbers = {int("".join(map(str, row))) for row in permutations(digits) if row[0]}
    fields = {"using": [str(digit) for digit in digits], "find": find}
    if len(numbers) < 2:
        with pytest.raises(AmountError):
            solved("digits of a number", **fields)
        return
    solution = solved("digits of a number", **fields)
    expected = max(numbers) if find == "greatest" else min(numbers)
    assert value_of(solution, "number") == expected
