"""The laws of wording, for the families of time and measures, over random problems.

`solve` itself raises where a strategy and the relation disagree, where an equation is untrue or
where no step comes to the answer, so every problem here also tries the guard.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError

Fields = dict[str, Any]
NOUNS = {
    "post": "posts", "gap": "gaps", "lamp": "lamps", "floor": "floors", "flight": "flights",
    "cut": "cuts", "piece": "pieces", "loaf": "loaves", "box": "boxes", "day": "days",
    "week": "weeks", "hour": "hours", "minute": "minutes", "mile": "miles", "foot": "feet",
    "litre": "litres", "kite": "kites", "lot": "lots",
}  # fmt: skip
PLURAL_OF_ONE = re.compile(
    rf"(?<![\d.,/:−] )(?<![\d.,/:−])1[ \u00a0](?:{'|'.join(NOUNS.values())})\b"
)
SINGULAR_OF_MANY = re.compile(
    rf"(?<![\d.,/:])(?:\d[\d,]*\d|[02-9])[ \u00a0](?:{'|'.join(NOUNS)})\b(?! to| more)"
)


def counted(numbers: st.SearchStrategy[int], one: str) -> st.SearchStrategy[str]:
    return numbers.map(lambda count: f"{count} {one if count == 1 else NOUNS[one]}")


def each_of(**fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Fields]:
    return st.fixed_dictionaries({key.replace("_", " "): value for key, value in fields.items()})


def any_of(*values: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(values)


clock = st.integers(0, 287).map(lambda fives: f"{fives // 12}:{fives % 12 * 5:02d}")
lasting = st.integers(1, 90).map(lambda fives: f"{5 * fives} min") | st.builds(
    lambda hours, fives: f"{hours} h {5 * fives} min", st.integers(1, 30), st.integers(1, 11)
)
metres = st.integers(1, 300).map(lambda count: f"{count} m")
ends = any_of("both ends", "one end", "neither end", "round a loop")
small = st.integers(1, 20)
PROBLEMS: dict[str, st.SearchStrategy[Fields]] = {
    "elapsed time": each_of(start=clock, duration=lasting)
    | each_of(end=clock, duration=lasting)
    | each_of(start=clock, end=clock, next_day=any_of("yes", "no"))
    | each_of(start=clock, end=clock, days_later=any_of("1", "2", "5"))
    | each_of(start=clock, durations=each_of(crossing=lasting, waiting=lasting))
    | each_of(end=clock, durations=each_of(crossing=lasting, the_walk=lasting, tour=lasting))
    | each_of(start=clock, end=clock, durations=each_of(crossing=lasting), find=any_of("tour")),
    "posts and gaps": each_of(
        length=metres, gap=small.map(lambda n: f"{n} m"), posts_at=ends,
        find=any_of("posts", "gaps"),
    )
    | each_of(length=metres, posts=counted(small, "lamp"), posts_at=ends)
    | each_of(gap=metres, posts=counted(small, "lamp"), posts_at=ends)
    | each_of(
        posts=small.map(str), wanted=small.map(str), posts_at=ends,
        length=small.map(lambda n: f"{2 * n} min"), posts_called=any_of("floors"),
        gaps_called=any_of("flights"),
    ),
    "cuts and pieces": each_of(length=metres, piece=small.map(lambda n: f"{n} m"),
                               find=any_of("cuts", "pieces"), ring=any_of("yes", "no"))
    | each_of(length=metres, piece=any_of("50 cm", "25 cm", "2 m"),
              each_cut=any_of("1 min", "3 min"))
    | each_of(pieces=counted(small, "loaf"), time=small.map(lambda n: f"{n} min"),
              wanted=counted(small, "loaf"))
    | each_of(pieces=counted(small, "loaf")) | each_of(cuts=counted(small, "cut"))
    | each_of(time=metres.map(lambda text: text.replace("m", "min")), each_cut=any_of("2 min")),
    "sharing with exchange": each_of(
        total=metres | st.integers(1, 60).map(lambda n: f"£{n}") | lasting
        | counted(small, "week") | counted(small, "day"),
        groups=counted(st.integers(2, 12), "kite"),
    ),
    "unit conversion": each_of(
        amount=metres | st.integers(1, 900).map(lambda n: f"{n / 100:.2f} m"),
        answer_in=any_of("cm", "km", "mm"),
    )
    | each_of(amount=counted(small, "week") | counted(small, "day") | counted(small, "hour"),
              answer_in=any_of("days", "hours", "minutes"))
    | each_of(amount=lasting, answer_in=any_of("min", "h"))
    | each_of(amount=counted(small, "foot"), answer_in=any_of("inches", "yards"))
    | each_of(amount=st.integers(50, 400).map(lambda n: f"{n} min"), mixed_units=any_of("yes"))
    | each_of(amount=metres, answer_in=any_of("cm", "km"), times=counted(small, "box"))
    | each_of(amount=metres, answer_in=any_of("cm"), shared_among=counted(small, "box"))
    | each_of(amount=metres, answer_in=any_of("cm"), more=any_of("35 cm", "1.5 m"))
    | each_of(amount=metres, answer_in=any_of("cm"), less=any_of("35 cm", "1.5 m"))
    | each_of(amount=counted(small, "mile"), answer_in=any_of("km"),
              together=each_of(miles=any_of("5 miles"), kilometres=any_of("8 km"))),
}  # fmt: skip


@pytest.mark.parametrize("family", PROBLEMS)
@settings(
    max_examples=80,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=st.data())
def test_every_sentence_reads_well(
    family: str,
    data: st.DataObject,
    solved: Callable[..., Solution],
    told: Callable[[Solution], list[str]],
) -> None:
    fields = data.draw(PROBLEMS[family])
    try:
        solution = solved(family, fields)
    except AmountError as refused:
        assert refused.remedy
        return
    for sentence in told(solution):
        check_sentence(sentence)
    named = {mistake.misconception for mistake in solution.mistakes}
    named |= {refusal.misconception for refusal in solution.refused}
    assert named <= set(MISCONCEPTIONS)


def check_sentence(sentence: str) -> None:
    assert re.match(r"[A-Z0-9£−]", sentence), f"no capital: {sentence}"
    assert sentence[-1] in ".?", f"no full stop: {sentence}"
    assert "  " not in sentence, f"two spaces: {sentence}"
    assert not re.search(r"[{}]| [.,:?]|\.\.", sentence), f"stray sign: {sentence}"
    assert not PLURAL_OF_ONE.search(sentence), f"plural of one: {sentence}"
    assert not SINGULAR_OF_MANY.search(sentence), f"singular of many: {sentence}"


@pytest.mark.parametrize("bad", ["no capital.", "That is 1 cuts.", "It takes 12 minute."])
def test_the_law_can_fail(bad: str) -> None:
    with pytest.raises(AssertionError):
        check_sentence(bad)
