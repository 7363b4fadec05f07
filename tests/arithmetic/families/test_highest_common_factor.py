"""Highest common factor: answers by math.gcd, ways, wrong ways, kinds and complaints.

The published items are in tests/published/common-factors.yaml. Wording: common practice.
"""

from __future__ import annotations

from math import gcd
from typing import Any

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from tests.arithmetic.families.test_wording_laws import check_sentence
from tests.arithmetic.random_problems import tried
from typeset.arithmetic.equations import times
from typeset.arithmetic.families import hcf_view, hcf_ways
from typeset.arithmetic.families.hcf_ways import factors_of, primes_of
from typeset.arithmetic.figures import Show
from typeset.arithmetic.kinds import Decision
from typeset.drawing.figures import draw_figure
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

SETS: dict[str, Any] = {
    "identical sets": {"red": "48 red floats", "blue": "36 blue floats"},
    "groups called": "bundles",
    "find": ["sets", "red", "blue"],
}
ROPES: dict[str, Any] = {
    "equal pieces": {"blue rope": "84 cm", "red rope": "60 cm"},
    "find": ["each", "pieces"],
}
THREE: dict[str, Any] = {
    "equal pieces": {"red": "1.2 m", "blue": "90 cm", "green": "150 cm"},
    "find": "each",
    "answer in": "m",
}
MIXED: dict[str, Any] = {
    "equal pieces": {"marigolds": "72 marigolds", "daisies": "48 daisies"},
    "groups called": "rows",
    "find": ["each", "daisies"],
}
KITS: dict[str, Any] = {
    "identical sets": {"rope": "48 m", "hooks": "36 hooks"},
    "groups called": "kits",
    "find": ["sets", "rope", "hooks"],
}
FLOOR: dict[str, Any] = {
    "square tiles": {"length": "84 cm", "width": "60 cm"},
    "find": ["each", "tiles"],
}
# By math.gcd: 12 (48 and 36), 12 (84 and 60), 30 (120, 90, 150), 24 (72 and 48), 6 (30 and 42).
ANSWERS = [
    (SETS, ["12 bundles", "4 red floats", "3 blue floats"]),
    ({**SETS, "find": "red"}, ["4 red floats"]),
    ({**SETS, "find": "sets", "answer in": "bags"}, ["12 bags"]),
    (ROPES, ["12 cm", "12 pieces"]),
    ({**ROPES, "find": ["blue rope", "red rope"]}, ["7 pieces", "5 pieces"]),
    (THREE, ["0.3 m"]),
    (MIXED, ["24", "2 rows"]),
    (KITS, ["12 kits", "4 m", "3 hooks"]),
    (FLOOR, ["12 cm", "35 tiles"]),
    ({**FLOOR, "find": ["length", "tiles"], "groups called": "mats"}, ["7 mats", "35 mats"]),
    ({"identical sets": {"hooks": "30", "weights": "42"}, "find": "sets"}, ["6 sets"]),
    ({"equal pieces": {"a": "12 m", "b": "36 m"}, "find": "each"}, ["12 m"]),
]


@pytest.mark.parametrize(("fields", "answers"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, fields: Any, answers: list[str]) -> None:
    assert answers_of(solved("highest common factor", fields)) == answers


TWO_WAYS = {
    "Listing all the factors",
    "Trying the factors of the smallest",
    "Dividing out step by step",
    "Taking away again and again",
    "Prime factors",
}
WAYS = [
    (SETS, TWO_WAYS),
    (THREE, TWO_WAYS - {"Taking away again and again"}),
    # Too many factors to list, too many to try, and hundreds of differences to take.
    (
        {"equal pieces": {"a": "5040 mm", "b": "22 mm"}, "find": "each"},
        {"Trying the factors of the smallest", "Dividing out step by step", "Prime factors"},
    ),
]


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    assert {each.strategy for each in solved("highest common factor", fields).workings} == names


def test_primes_come_after_two_other_ways(solved: Any) -> None:
    """Prime factors are taught last, so the booklet's two ways are others."""
    for fields, _names in WAYS[:2]:
        ranked = [each.strategy for each in solved("highest common factor", fields).workings]
        assert "Prime factors" not in ranked[:2]


# By hand: each wrong way reckoned on the numbers above.
WRONG = [
    (SETS, "common factor, not the greatest", "6 bundles"),
    (SETS, "factor and multiple exchanged", "144 bundles"),
    (SETS, "smallest number taken as the factor", "36 bundles"),
    (SETS, "number of groups and size of a group exchanged", "7 bundles"),
    ({**SETS, "find": "red"}, "common factor, not the greatest", "8 red floats"),
    ({**SETS, "find": "red"}, "number of groups and size of a group exchanged", "12 red floats"),
    (ROPES, "common factor, not the greatest", "6 cm"),
    (FLOOR, "adding instead of multiplying", "12 tiles"),
    ({**FLOOR, "find": "tiles"}, "common factor, not the greatest", "140 tiles"),
    ({**FLOOR, "find": "tiles"}, "number of groups and size of a group exchanged", "12 tiles"),
    (ROPES, "subtracting instead of dividing", "24 cm"),
    (SETS, "adding instead of dividing", "84 bundles"),
    ({**ROPES, "find": "red rope"}, "number of groups and size of a group exchanged", "12 pieces"),
]


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved("highest common factor", fields))[name] == answer


REFUSED = [
    (SETS, "subtracting instead of dividing", "right answer"),
    (ROPES, "number of groups and size of a group exchanged", "right answer"),
    (ANSWERS[-1][0], "smallest number taken as the factor", "right answer"),
    # 7 is prime, so no smaller factor but 1 is shared.
    (
        {"equal pieces": {"a": "21 m", "b": "49 m"}, "find": "each"},
        "common factor, not the greatest",
        "",
    ),
    ({**SETS, "find": "red"}, "factor and multiple exchanged", ""),
    # Metres and hooks do not add up.
    (KITS, "number of groups and size of a group exchanged", ""),
]


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: str, why: str) -> None:
    solution = solved("highest common factor", fields)
    refused = {each.misconception: each.why for each in solution.refused}
    assert name not in {each.misconception for each in solution.mistakes}
    assert (name in refused) == bool(why)
    assert why in refused.get(name, "")


KINDS = [
    (
        SETS,
        Decision.MULTIPLY,
        "The bundles are all alike and use everything up, so their number has to go exactly into "
        "48 and into 36. The greatest number that does is 12. So this one multiplies or divides.",
    ),
    ({**SETS, "find": "red"}, Decision.MULTIPLY, "into 48 and into 36"),
    ({**ROPES, "find": "each"}, Decision.MULTIPLY, "the length of one has to go exactly into 84"),
    (MIXED, Decision.MULTIPLY, "what is in one has to go exactly into 72 and into 48"),
    (FLOOR, Decision.MULTIPLY, "the side of one has to go exactly into 84 cm and into 60 cm"),
    ({**FLOOR, "find": "tiles"}, Decision.MULTIPLY, "The tiles are squares and cover everything"),
    # The pieces of both ropes are added up in the end.
    (ROPES, Decision.BOTH, "The pieces are then added up. So this one needs both."),
]


@pytest.mark.parametrize(("fields", "decision", "reason"), KINDS)
def test_kind(solved: Any, fields: Any, decision: Decision, reason: str) -> None:
    kind = solved("highest common factor", fields).kind
    assert kind.decision is decision
    assert reason in plain(kind.reason).replace("\u00a0", " ")


@tried
@given(count=st.integers(1, 5000))
def test_factors_and_primes_by_sympy(count: int) -> None:
    assert list(factors_of(count)) == sympy.divisors(count)
    assert list(primes_of(count)) == sympy.factorint(count, multiple=True)


def test_a_broken_way_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    """A list of factors broken off too soon; a division that multiplies."""
    monkeypatch.setattr(hcf_ways, "factors_of", lambda count: factors_of(count)[:3])
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("highest common factor", SETS)
    monkeypatch.undo()
    monkeypatch.setattr(hcf_view, "over", times)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("highest common factor", SETS)


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(hcf_view.Hcf, "greatest", lambda self: gcd(*self.counts) // 2)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("highest common factor", SETS)


def test_bars(solved: Any) -> None:
    """One bundle is marked off in each bar, and the answer shows only when complete."""
    figure = solved("highest common factor", SETS).figure
    assert [[int(part.size) for part in bar.parts] for bar in figure.bars] == [[4, 44], [3, 33]]
    first_step = draw_figure(figure, Show.FIRST_STEP, 480, 11).reads_as
    assert "48 red floats" in first_step and " 4" not in first_step.replace(" 48", "")
    assert solved("highest common factor", {**ROPES, "equal pieces": MANY}).figure is None


# 1,300 cm in pieces of 13 cm: a hundred parts, which nobody could count.
MANY = {"blue rope": "1300 cm", "red rope": "1313 cm"}


COMPLAINTS = [
    ({"identical sets": {"red": "24 floats", "blue": "35 floats"}}, "no common factor but 1"),
    ({"identical sets": {"red": "24 floats"}}, "has 1 amount"),
    ({"identical sets": {"sets": "24 floats", "blue": "36 floats"}}, "cannot be a name"),
    ({"identical sets": {"red": "1 float", "blue": "36 floats"}}, "is only 1 float"),
    ({"identical sets": {"red": "20000", "blue": "36"}}, "larger than 10,000"),
    ({"find": "pieces"}, "unknown name 'pieces'"),
    ({"answer in": "kg"}, "sets and pieces are not measured in kg"),
    ({"identical sets": None}, "belong to one key"),
    ({"identical sets": None, "square tiles": {"a": "6 m", "b": "4 m", "c": "8 m"}}, "two sides"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    fields = {name: value for name, value in {**SETS, **changed}.items() if value is not None}
    with pytest.raises(AmountError) as caught:
        solved("highest common factor", fields)
    assert message in str(caught.value)
    assert caught.value.remedy


@tried
@given(
    counts=st.lists(st.integers(1, 30), min_size=2, max_size=3, unique=True),
    factor=st.integers(2, 20),
    unit=st.sampled_from(["crates", "m", ""]),
    key=st.sampled_from(["identical sets", "equal pieces", "square tiles"]),
)
def test_every_sentence_reads_well(
    solved: Any, told: Any, counts: list[int], factor: int, unit: str, key: str
) -> None:
    names = ("red", "blue", "green")[: 2 if key == "square tiles" else len(counts)]
    amounts = {
        name: f"{count * factor} {unit}".strip() for name, count in zip(names, counts, strict=False)
    }
    first = "sets" if key == "identical sets" else "each"
    solution = solved(
        "highest common factor", {key: amounts, "find": [first, *names], "groups called": "boxes"}
    )
    for sentence in told(solution):
        check_sentence(sentence)
    assert len(solution.workings) >= 2
    assert solution.mistakes
