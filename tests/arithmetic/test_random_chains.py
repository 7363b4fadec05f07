"""Random chains of comparisons and changes against sympy; both addends against itertools."""

from __future__ import annotations

from itertools import product

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import middle, root, solved, tried, value_of
from typeset.errors import AmountError

_PEOPLE = ("Nell", "Rhys", "Idris", "Asha", "Kofi")


@tried
@given(
    ways=st.lists(st.tuples(st.integers(0, 3), middle, st.booleans()), min_size=2, max_size=4),
    known=middle,
    data=st.data(),
)
def test_chain_of_comparisons(
    ways: list[tuple[int, int, bool]], known: int, data: st.DataObject
) -> None:
    x = {name: sympy.Symbol(name) for name in _PEOPLE[: len(ways) + 1]}
    total = sympy.Symbol("total")
    comparisons, equations = {}, [sum(x.values()) - total]
    for index, (at, by, is_more) in enumerate(ways):
        who, than = _PEOPLE[index + 1], _PEOPLE[min(at, index)]
        comparisons[who] = {"more" if is_more else "fewer": f"{by} shells", "than": than}
        equations.append(x[who] - x[than] - (by if is_more else -by))
    given_name = data.draw(st.sampled_from([*x, "total"]))
    amount = known * (5 if given_name == "total" else 1)
    equations.append({**x, "total": total}[given_name] - amount)
    asked = data.draw(st.sampled_from([name for name in (*x, "total") if name != given_name]))
    reference = root({**x, "total": total}[asked], *equations)
    values = [root(each, *equations) for each in x.values()]
    fields = {
        "comparisons": comparisons, "known": {given_name: f"{amount} shells"}, "find": asked
    }  # fmt: skip
    if min(values) < 0 or reference.denominator != 1:
        with pytest.raises(AmountError):
            solved("chain of comparisons", **fields)
        return
    assert value_of(solved("chain of comparisons", **fields), asked) == reference


@tried
@given(
    ways=st.lists(st.tuples(middle, st.booleans()), min_size=2, max_size=5),
    one=middle,
    other=middle,
    data=st.data(),
)
def test_changes_in_a_row(
    ways: list[tuple[int, bool]], one: int, other: int, data: st.DataObject
) -> None:
    names = ["start", *(f"change {letter}" for letter in "abcde"[: len(ways)]), "end"]
    x = {name: sympy.Symbol(name) for name in names}
    asked = data.draw(st.sampled_from(names))
    signs = {name: 1 if is_up else -1 for name, (_by, is_up) in zip(names[1:-1], ways, strict=True)}
    known = {"start": one, "end": other}
    known |= {name: by for name, (by, _is_up) in zip(names[1:-1], ways, strict=True)}
    known.pop(asked)
    moves = sum(sign * x[name] for name, sign in signs.items())
    equations = [x["start"] + moves - x["end"], *(x[name] - each for name, each in known.items())]
    values = {name: root(each, *equations) for name, each in x.items()}
    reached = [values["start"]]
    for name, sign in signs.items():
        reached.append(reached[-1] + sign * values[name])
    words = {1: "increase", -1: "decrease"}
    fields: dict[str, object] = {
        "changes": {
            name: words[sign] if name == asked else {words[sign]: f"{known[name]} people"}
            for name, sign in signs.items()
        }
    }
    fields |= {end: f"{known[end]} people" for end in ("start", "end") if end != asked}
    if min(*reached, values[asked]) < 0:
        with pytest.raises(AmountError):
            solved("changes in a row", **fields)
        return
    assert value_of(solved("changes in a row", **fields), asked) == values[asked]


@tried
@given(whole=st.integers(2, 30), may_be_empty=st.booleans(), which=st.booleans())
def test_both_addends(whole: int, may_be_empty: bool, which: bool) -> None:
    pairs = {
        pair if which else tuple(sorted(pair))
        for pair in product(range(0 if may_be_empty else 1, whole + 1), repeat=2)
        if sum(pair) == whole
    }
    solution = solved(
        "both addends",
        whole=f"{whole} shells",
        may_be_empty="yes" if may_be_empty else "no",
        which_is_which="yes" if which else "no",
    )
    assert value_of(solution, "ways") == len(pairs)
