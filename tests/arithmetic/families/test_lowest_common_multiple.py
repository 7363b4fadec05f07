"""Lowest common multiple: answers by math.lcm, ways, wrong ways, kinds and complaints.

The published items are in tests/published/common-multiples.yaml. Wording: common practice.
"""

from __future__ import annotations

from math import lcm
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.arithmetic.families.test_wording_laws import check_sentence
from tests.arithmetic.random_problems import tried
from typeset.arithmetic.equations import over
from typeset.arithmetic.families import lcm_view, lcm_ways
from typeset.arithmetic.figures import Show
from typeset.arithmetic.kinds import Decision
from typeset.drawing.figures import draw_figure
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

FERRIES: dict[str, Any] = {
    "every": {"north ferry": "12 min", "south ferry": "18 min"},
    "find": "together",
}
CLOCK: dict[str, Any] = {
    **FERRIES,
    "start": "08:00",
    "groups called": "crossings",
    "find": ["next", "north ferry"],
}
PACKS: dict[str, Any] = {
    "packs": {"hooks": "8 hooks", "floats": "6 floats"},
    "find": ["hooks", "floats"],
}
FLAGS: dict[str, Any] = {
    "every": {"red": "4 boats", "blue": "6 boats", "green": "10 boats"},
    "find": "together",
}
BAGS: dict[str, Any] = {
    "packs": {"small bags": "4 shells", "large bags": "6 shells"},
    "left over": "1 shell",
    "find": "each",
}
# By math.lcm: 36 (12 and 18), 24 (8 and 6), 60 (4, 6, 10), 600 (150, 200), 280 (40, 70).
ANSWERS = [
    (FERRIES, ["36 min"]),
    (CLOCK, ["08:36", "3 crossings"]),
    ({**CLOCK, "start": "8:50", "find": "next"}, ["9:26"]),
    ({**CLOCK, "find": "together"}, ["36 min"]),
    ({**CLOCK, "start": "9:00", "every": {"a": "40 min", "b": "1 h 10 min"}, "find": "next"},
     ["13:40"]),
    (PACKS, ["3 packs", "4 packs"]),
    ({**PACKS, "find": ["each", "hooks"]}, ["24", "3 packs"]),
    ({"packs": {"red": "8 floats", "blue": "6 floats"}, "find": "each"}, ["24 floats"]),
    ({**PACKS, "find": "hooks", "answer in": "boxes"}, ["3 boxes"]),
    (FLAGS, ["60 boats"]),
    (BAGS, ["13 shells"]),
    ({**BAGS, "find": ["each", "large bags"], "left over": "3 shells"}, ["15 shells", "2 packs"]),
    ({"every": {"lamps": "1.5 m", "benches": "200 cm"}, "find": "together", "answer in": "m"},
     ["6 m"]),
    ({"every": {"a": "6 days", "b": "12 days"}, "find": ["together", "b"]}, ["12 days", "1 turn"]),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "answers"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, fields: Any, answers: list[str]) -> None:
    assert answers_of(solved("lowest common multiple", fields)) == answers


PLAIN_WAYS = {
    "Listing the multiples",
    "Trying the multiples of the largest",
    "Through the highest common factor",
}
WAYS = [
    (FERRIES, PLAIN_WAYS),
    (CLOCK, PLAIN_WAYS | {"Writing out the timetables"}),
    (PACKS, PLAIN_WAYS),
    # Fifteen fours to write down before 60: too long a list.
    (FLAGS, PLAIN_WAYS - {"Listing the multiples"}),
]


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    assert {each.strategy for each in solved("lowest common multiple", fields).workings} == names


# By hand: each wrong way reckoned on the numbers above.
WRONG = [
    (FERRIES, "product taken as the lowest common multiple", "216 min"),
    (FERRIES, "sum taken as the multiple", "30 min"),
    (FERRIES, "factor and multiple exchanged", "6 min"),
    (FERRIES, "difference taken as the multiple", "6 min"),
    (FERRIES, "largest number taken as the multiple", "18 min"),
    (CLOCK, "product taken as the lowest common multiple", "11:36"),
    (CLOCK, "sum taken as the multiple", "08:30"),
    (CLOCK, "largest number taken as the multiple", "08:18"),
    (PACKS, "product taken as the lowest common multiple", "6 packs"),
    (PACKS, "ratio turned round", "4 packs"),
    (BAGS, "remainder ignored", "12 shells"),
    (BAGS, "remainder added for every kind", "14 shells"),
    (BAGS, "product taken as the lowest common multiple", "25 shells"),
    (PACKS, "step left out", "24 packs"),
]


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved("lowest common multiple", fields))[name] == answer


PRIMES = {**FERRIES, "every": {"a": "7 min", "b": "12 min"}}
REFUSED = [
    (PRIMES, "product taken as the lowest common multiple", "right answer"),
    ({**FERRIES, "every": {"a": "6 min", "b": "12 min"}}, "largest number taken as the multiple",
     "right answer"),
    # No number above 1 goes into both; and a part of a pack is not bought.
    (PRIMES, "factor and multiple exchanged", ""),
    (PACKS, "sum taken as the multiple", ""),
    # The product, 216 minutes on, would be past midnight.
    ({**CLOCK, "start": "22:00"}, "product taken as the lowest common multiple", ""),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: str, why: str) -> None:
    solution = solved("lowest common multiple", fields)
    refused = {each.misconception: each.why for each in solution.refused}
    assert name not in {each.misconception for each in solution.mistakes}
    assert (name in refused) == bool(why)
    assert why in refused.get(name, "")


KINDS = [
    (
        FERRIES,
        Decision.MULTIPLY,
        "They come together at a multiple of both: 36 min is 3 times 12 min and 2 times 18 min, "
        "and nothing less will do. So this one multiplies or divides.",
    ),
    (PACKS, Decision.MULTIPLY, "24 is 3 times 8 and 4 times 6"),
    (FLAGS, Decision.MULTIPLY, "60 is 15 times 4, 10 times 6 and 6 times 10"),
    (BAGS, Decision.BOTH, "12 is 3 times 4 and 2 times 6, and nothing less will do. Then add 1"),
    (CLOCK, Decision.BOTH, "That is then added to 08:00. So this one needs both."),
    ({**CLOCK, "find": "together"}, Decision.MULTIPLY, "multiplies or divides"),
]


@pytest.mark.parametrize(("fields", "decision", "reason"), KINDS)
def test_kind(solved: Any, fields: Any, decision: Decision, reason: str) -> None:
    kind = solved("lowest common multiple", fields).kind
    assert kind.decision is decision
    assert reason in plain(kind.reason)


def test_a_broken_way_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    """A shared factor that is not the highest; an addition on the clock that takes off."""
    monkeypatch.setattr(lcm_ways, "gcd", lambda one, other: 2)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("lowest common multiple", FERRIES)
    monkeypatch.undo()
    monkeypatch.setattr(lcm_view, "plus", over)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("lowest common multiple", CLOCK)


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(lcm_view.Lcm, "lowest", lambda self: 2 * lcm(*self.counts))
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("lowest common multiple", FERRIES)


def test_number_line(solved: Any) -> None:
    """Jumps of one ferry over the line, of the other under it, both to 08:36."""
    figure = solved("lowest common multiple", CLOCK).figure
    assert [int(tick.at) for tick in figure.ticks] == [0, 12, 18, 24, 36]
    over = [(jump.start, jump.end) for jump in figure.jumps if not jump.below]
    under = [(jump.start, jump.end) for jump in figure.jumps if jump.below]
    assert (over, under) == ([(0, 1), (1, 3), (3, 4)], [(0, 2), (2, 4)])
    assert "08:36" not in draw_figure(figure, Show.FIRST_STEP, 480, 11).reads_as
    complete = draw_figure(figure, Show.COMPLETE, 480, 11).reads_as
    assert "jumps of 12 min (north ferry) over it" in complete and "08:36" in complete
    assert solved("lowest common multiple", FLAGS).figure is None
    mixed = solved(
        "lowest common multiple", {**CLOCK, "every": {"a": "4 h", "b": "90 min"}, "find": "next"}
    )
    assert "4 h from 08:00" in draw_figure(mixed.figure, Show.FIRST_STEP, 480, 11).reads_as


COMPLAINTS = [
    ({"find": "next"}, "nobody says when they begin"),
    ({"start": "30 min"}, "not a time of day"),
    ({"start": "23:50", "find": "next"}, "after midnight"),
    ({"every": {"a": "12 m", "b": "18 m"}, "start": "08:00"}, "a length of time"),
    ({"every": {"a": "12 min", "b": "18 m"}}, "cannot be put together"),
    ({"every": {"a": "12 min", "b": "720 s"}}, "all the numbers are the same"),
    ({"every": {"start": "12 min", "b": "18 min"}}, "cannot be a name"),
    ({"every": None}, "belong to one key"),
    ({"find": "each"}, "unknown name 'each'"),
    ({"answer in": "kg"}, "cannot be given in kg"),
    ({"find": "south ferry", "answer in": "kg"}, "not measured in kg"),
    ({"left over": "1 min"}, "'left over' belongs to packs"),
    ({**BAGS, "every": None, "left over": "4 shells"}, "would fill another pack of 4 shells"),
    ({**BAGS, "every": None, "find": "large bags"}, "'left over' belongs to packs"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    fields = {name: value for name, value in {**FERRIES, **changed}.items() if value is not None}
    with pytest.raises(AmountError) as caught:
        solved("lowest common multiple", fields)
    assert message in str(caught.value)
    assert caught.value.remedy


@tried
@given(
    counts=st.lists(st.integers(2, 30), min_size=2, max_size=3, unique=True),
    unit=st.sampled_from(["crates", "min", "m", ""]),
    is_packs=st.booleans(),
)
def test_every_sentence_reads_well(
    solved: Any, told: Any, counts: list[int], unit: str, is_packs: bool
) -> None:
    names = ("red", "blue", "green")[: len(counts)]
    amounts = {name: f"{count} {unit}".strip() for name, count in zip(names, counts, strict=True)}
    key, first = ("packs", "each") if is_packs else ("every", "together")
    fields = {key: amounts, "find": [first, *names], "groups called": "boxes"}
    if unit == "min" and not is_packs:
        fields |= {"start": "00:00", "find": "next" if lcm(*counts) < 24 * 60 else "together"}
    solution = solved("lowest common multiple", fields)
    for sentence in told(solution):
        check_sentence(sentence)
    assert solution.workings
    assert solution.mistakes or solution.refused
