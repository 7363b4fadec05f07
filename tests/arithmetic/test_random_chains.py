"""Random chains of comparisons against sympy."""

from __future__ import annotations

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
