"""Laws that hold for every sentence of the one-operation families, over random problems.

`solve` itself raises where a strategy and the relation disagree or an equation is untrue, so
every problem here also tries the guard. Wording: common practice, no source.
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
    "crates": "crate",
    "floats": "float",
    "loaves": "loaf",
    "boxes": "box",
    "terns": "tern",
    "buses": "bus",
    "people": "person",
    "parts": "part",
    "rows": "row",
    "squares": "square",
    "lots": "lot",
    "groups": "group",
    "shares": "share",
    "ways": "way",
    "orders": "order",
    "pairs": "pair",
    "ones": "one",
    "tens": "ten",
    "hundreds": "hundred",
}
PLURAL_OF_ONE = re.compile(rf"(?<![\d.,/:−])1[ \u00a0](?:{'|'.join(NOUNS)})\b")
SINGULAR_OF_MANY = re.compile(
    rf"(?<![\d.,/])(?:\d[\d,]*\d|[02-9])[ \u00a0](?:{'|'.join(NOUNS.values())})\b(?! to| more)"
)

small, middle = st.integers(2, 12), st.integers(2, 240)
money = st.integers(5, 2500).map(lambda pence: f"£{pence // 100}.{pence % 100:02d}")
length = st.integers(2, 900).map(lambda tenths: f"{tenths // 10}.{tenths % 10} m")


def counted(numbers: st.SearchStrategy[int], noun: str) -> st.SearchStrategy[str]:
    one = NOUNS.get(noun, noun)
    return numbers.map(lambda count: f"{count} {one if count == 1 else noun}")


def each_of(**fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Fields]:
    return st.fixed_dictionaries({key.replace("_", " "): value for key, value in fields.items()})


def any_of(*values: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(values)


ones = st.integers(1, 99)
PROBLEMS: dict[str, st.SearchStrategy[Fields]] = {
    "equal groups": each_of(
        groups=counted(st.integers(2, 60), "crates"),
        each=counted(middle, "floats") | money | length,
    )
    | each_of(
        groups=each_of(crates=counted(small, "crates"), boxes=counted(small, "boxes")),
        each=counted(small, "floats"),
    ),
    "sharing": each_of(
        total=counted(middle, "loaves") | money | length,
        groups=counted(small, "people"),
        remainder=any_of("none", "left over", "both", "as a fraction", "as a decimal"),
        find=any_of("each", "left over"),
    ),
    "grouping": each_of(
        total=counted(st.integers(20, 2000), "people"),
        each=counted(st.integers(2, 40), "people"),
        find=any_of("groups", "left over", "short"),
        remainder=any_of("none", "round up", "round down", "both"),
        groups_called=any_of("buses", "boxes"),
    )
    | each_of(
        total=st.integers(2, 20).map(lambda count: f"{count} kg"),
        each=st.integers(1, 40).map(lambda count: f"{count}0 g"),
        answer_in=any_of("boxes"),
        remainder=any_of("none", "round up", "round down"),
    ),
    "times as many": each_of(
        smaller=counted(middle, "terns") | length,
        times=small.map(str),
        find=any_of("larger", "difference", "total"),
    )
    | each_of(larger=counted(middle, "terns") | money, times=any_of("2", "3", "4", "2.5"))
    | each_of(smaller=counted(small, "terns"), larger=counted(middle, "terns")),
    "combinations": each_of(
        choices=each_of(boxes=small.map(str), crates=counted(small, "crates"))
        | each_of(boxes=small.map(str), loaves=small.map(str), terns=small.map(str)),
    ),
    "arrangements": each_of(things=counted(st.integers(3, 6), "boxes"))
    | each_of(things=st.integers(3, 6).map(str), places=any_of("2", "3")),
    "handshakes": each_of(things=counted(st.integers(3, 15), "people"))
    | each_of(things=counted(st.integers(3, 15), "people"), meetings=any_of("2", "3")),
    "part whole": each_of(parts=each_of(red=counted(ones, "floats"), blue=counted(ones, "floats")))
    | each_of(
        parts=each_of(red=counted(ones, "floats"), blue=counted(ones, "floats")),
        whole=counted(st.integers(50, 300), "floats"),
        find=any_of("green"),
    )
    | each_of(parts=each_of(a=length, b=money | length)),
    "change": each_of(start=counted(middle, "terns"), increase=counted(ones, "terns"))
    | each_of(start=counted(middle, "terns"), end=counted(middle, "terns"))
    | each_of(end=counted(middle, "terns"), decrease=counted(ones, "terns"))
    | each_of(
        start=st.integers(-20, 20).map(lambda degrees: f"{degrees} °C"),
        decrease=small.map(lambda degrees: f"{degrees} °C"),
    ),
    "comparison": each_of(smaller=counted(ones, "terns"), larger=counted(middle, "terns"))
    | each_of(smaller=length | money, difference=length | money)
    | each_of(
        larger=counted(middle, "terns"),
        difference=counted(ones, "terns"),
        names=st.just({"larger": "the gulls' rock", "smaller": "the terns' rock"}),
    ),
    "rectangle": each_of(
        length=length, width=length, find=any_of("area", "perimeter", ["area", "perimeter"])
    )
    | each_of(area=middle.map(lambda a: f"{a} cm²"), width=small.map(lambda w: f"{w} cm"))
    | each_of(
        perimeter=middle.map(lambda p: f"{p} cm"),
        length=small.map(lambda w: f"{w} cm"),
        find=any_of("width", "area"),
    ),
}


@pytest.mark.parametrize("family", PROBLEMS)
@settings(
    max_examples=50,
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
        assert refused.problem[0].islower() or refused.problem[0] in "'£−0123456789"
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


@pytest.mark.parametrize(
    "bad",
    [
        "no capital.",
        "No stop",
        "Two  spaces.",
        "A {name}.",
        "That is 1 crates.",
        "That is 12 crate.",
        "There are 0 loaf.",
    ],
)
def test_the_law_can_fail(bad: str) -> None:
    with pytest.raises(AssertionError):
        check_sentence(bad)


@pytest.mark.parametrize(
    "good",
    ["1 crate: 12 floats.", "1/2 loaf each.", "1 3/4 loaves each.", "0.5 loaf.", "21 terns."],
)
def test_the_law_lets_good_sentences_pass(good: str) -> None:
    check_sentence(good)
