"""Laws that hold for every sentence of the comparing families, angles, shapes and scales, over
random problems; and the guard proved on them. Wording: common practice, no source."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from types import ModuleType
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.arithmetic.families.test_wording_laws import any_of, check_sentence, counted, each_of
from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer
from typeset.arithmetic.equations import minus, plus
from typeset.arithmetic.families import (
    FAMILIES,
    angles_ways,
    compound_shape_ways,
    pair_rows,
    simplest_ratio_ways,
    which_is_larger_products,
    which_is_larger_rates,
)
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.workings import Working
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

Fields = dict[str, Any]
Solve = Callable[..., Solution]

small = st.integers(1, 12)
middle = st.integers(1, 240)
money = st.integers(5, 2500).map(lambda pence: f"£{pence // 100}.{pence % 100:02d}")
length = st.integers(2, 900).map(lambda tenths: f"{tenths // 10}.{tenths % 10} m")
angle = st.integers(1, 150).map(lambda size: f"{size}°")


def compared(first: str, one: Any, second: str, other: Any, compare: str) -> Any:
    """Two or three candidates with the same two amounts."""
    candidate = st.fixed_dictionaries({first: one, second: other})
    two = st.fixed_dictionaries({"terns' crate": candidate, "box": candidate})
    three = st.fixed_dictionaries({"a": candidate, "crates": candidate, "Kofi": candidate})
    return each_of(
        choices=two | three,
        compare=st.just(compare),
        find=any_of("larger", "smaller"),
        called=any_of("", "the better buy", "darker"),
    )


sides = st.integers(1, 40)
many_loaves = counted(st.integers(1, 12).map(lambda count: 60 * count), "loaves")
shares = any_of("1/2", "3/4", "20%", "2/3")
times = any_of("1 h", "75 min", "1 h 30 min")
PROBLEMS: dict[str, st.SearchStrategy[Fields]] = {
    "which is larger": compared(
        "cost", money, "floats", counted(small, "floats"), "cost for floats"
    )
    | compared("blue", small.map(str), "white", small.map(str), "blue to white")
    | compared("crates", counted(small, "crates"), "rope", length, "crates × rope")
    | compared(
        "boxes", counted(small, "boxes"), "loaves", counted(small, "loaves"), "boxes × loaves"
    )
    | compared("share", shares, "loaves", many_loaves, "share of loaves")
    | compared("way", length, "time", times, "way in time"),
    "simplest ratio": each_of(parts=each_of(crates=middle.map(str), boxes=middle.map(str)))
    | each_of(parts=each_of(rope=length, chain=length), find=any_of(None, ["chain", "rope"]))
    | each_of(
        parts=each_of(red=middle.map(str)),
        whole=counted(st.integers(241, 500), "loaves"),
        find=any_of(["red", "green"]),
    )
    | each_of(parts=each_of(a=small.map(str), b=small.map(str), c=small.map(str))),
    "angles": each_of(
        make=any_of("straight line", "full turn", "right angle"),
        angles=each_of(a=angle, b=angle) | each_of(a=angle),
        find=any_of("c", ["c", "d"]),
    )
    | each_of(make=st.just("triangle"), angles=each_of(a=angle, b=angle), find=st.just("c"))
    | each_of(
        make=st.just("crossing lines"), angles=each_of(a=angle), find=any_of("opposite", "next")
    ),
    "compound shape": each_of(
        bottom=st.integers(41, 90).map(lambda n: f"{n} cm"),
        top=sides.map(lambda n: f"{n} cm"),
        left=st.integers(41, 90).map(lambda n: f"{n} cm"),
        step_down=sides.map(lambda n: f"{n}0 mm"),
        find=any_of("area", "perimeter", "right", ["perimeter", "area"]),
    ),
    "scale": each_of(
        scale=any_of("1 cm to 20 km", "2 cm to 5 m", "1:500"),
        map=sides.map(lambda n: f"{n} cm"),
        answer_in=any_of("m", "km"),
    )
    | each_of(scale=any_of("1 cm to 20 km", "1 cm to 4 km"), real=sides.map(lambda n: f"{n} km")),
}
COLON = re.compile(r"(?<=\d) : (?=\d)")


@pytest.mark.parametrize("family", PROBLEMS)
@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=st.data())
def test_every_sentence_reads_well(
    family: str,
    data: st.DataObject,
    solved: Solve,
    told: Callable[[Solution], list[str]],
) -> None:
    fields = {key: value for key, value in data.draw(PROBLEMS[family]).items() if value is not None}
    try:
        solution = solved(family, fields)
    except AmountError as refused:
        assert refused.problem[0].islower() or refused.problem[0] in "'£−0123456789"
        assert refused.remedy
        return
    for sentence in told(solution):
        # A ratio's colon stands between spaces.
        check_sentence(COLON.sub(":", sentence))
    named = {mistake.misconception for mistake in solution.mistakes}
    named |= {refusal.misconception for refusal in solution.refused}
    assert named <= set(MISCONCEPTIONS)


SAMPLES: dict[str, Fields] = {
    "which is larger": {
        "choices": {"a": {"cost": "£9", "floats": "6"}, "b": {"cost": "£11", "floats": "8"}},
        "compare": "cost for floats",
    },
    "simplest ratio": {"parts": {"gulls": "12", "terns": "18"}},
    "angles": {"make": "triangle", "angles": {"a": "65°", "b": "40°"}, "find": "c"},
    "compound shape": {"bottom": "10 m", "left": "8 m", "top": "6 m", "right": "5 m"},
    "scale": {"scale": "2 cm to 5 m", "plan": "7 cm"},
}
CRATES = {
    "choices": {"a": {"crates": "3", "crabs": "24"}, "b": {"crates": "5", "crabs": "15"}},
    "compare": "crates × crabs",
}


def shifted(answers: Mapping[str, AnswerValue]) -> dict[str, AnswerValue]:
    """Another answer of the same sort."""
    changed: dict[str, AnswerValue] = {}
    for name, answer in answers.items():
        match answer:
            case Amount():
                changed[name] = replace(answer, value=answer.value + 1)
            case RatioAnswer(parts=parts):
                changed[name] = RatioAnswer(tuple(reversed(parts)))
            case _:
                changed[name] = NameAnswer("nobody")
    return changed


@pytest.mark.parametrize("structure", SAMPLES)
def test_a_broken_relation_stops(
    structure: str, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    solved(structure, SAMPLES[structure])
    family = type(FAMILIES[structure])
    sound = family.relation
    monkeypatch.setattr(family, "relation", lambda self, problem: shifted(sound(self, problem)))
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])


@pytest.mark.parametrize("structure", SAMPLES)
def test_one_broken_strategy_stops(
    structure: str, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    family = type(FAMILIES[structure])
    sound = family.strategies

    def broken(self: Any, problem: Problem[Any]) -> list[Working]:
        *others, last = sound(self, problem)
        return [*others, replace(last, answers=shifted(last.answers))]

    monkeypatch.setattr(family, "strategies", broken)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])


# A slip inside the reckoning: where, what, and instead of what.
SLIPS: list[tuple[str, Fields, ModuleType, str, Any]] = [
    ("which is larger", SAMPLES["which is larger"], which_is_larger_rates, "times", plus),
    ("which is larger", CRATES, which_is_larger_products, "minus", plus),
    ("simplest ratio", SAMPLES["simplest ratio"], simplest_ratio_ways, "gcd", max),
    ("angles", SAMPLES["angles"], angles_ways, "minus", plus),
    ("compound shape", SAMPLES["compound shape"], compound_shape_ways, "times", plus),
    ("scale", SAMPLES["scale"], pair_rows, "over", minus),
]


@pytest.mark.parametrize(
    ("structure", "fields", "module", "name", "instead"),
    SLIPS,
    ids=[f"{case[0]}: {case[2].__name__.rpartition('.')[2]}.{case[3]}" for case in SLIPS],
)
def test_a_slip_in_the_reckoning_stops(
    structure: str,
    fields: Fields,
    module: ModuleType,
    name: str,
    instead: Any,
    solved: Solve,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    solved(structure, fields)
    monkeypatch.setattr(module, name, instead)
    with pytest.raises(SolvingError):
        solved(structure, fields)


def test_a_slip_in_the_verdict_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    """A scaled amount that is wrong by much names the other one, and the relation does not."""
    brought = which_is_larger_rates._brought_to

    def wrong(*given_: Any) -> Any:
        said, reached = brought(*given_)
        return said, reached.like(1000 / reached.value)

    monkeypatch.setattr(which_is_larger_rates, "_brought_to", wrong)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("which is larger", SAMPLES["which is larger"])
