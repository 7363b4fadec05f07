"""Every condition with numbers that fulfil it and numbers that do not (worked out by hand)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.conditions import (
    _PHRASES,
    Condition,
    Elsewhere,
    can_be_shown,
    counts_for,
    number_set,
    read_conditions,
)
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.wishes import Wish
from typeset.errors import Complaint, Place
from typeset.reading.tree import Scalar

HERE = Place(Path("monday.yaml"), 1, 1)
EQUAL = "structure: equal groups\ngroups: {} crates\neach: {} floats\nstory: A"
GROUPING = "structure: grouping\ntotal: {} people\neach: {} people\nremainder: {}\nstory: A"
EXACT = "structure: grouping\ntotal: 48 people\neach: 8 people\nstory: A"
CHANGE = "structure: change\nstart: {} mackerel\ndecrease: {} mackerel\nstory: A"
SHARING = "structure: sharing\ntotal: {}\ngroups: {} pieces\nstory: A"
ROPE = (
    "structure: proportion\ntogether: {{rope: {} m, cost: £{}}}\nwanted: {{rope: {} m}}\n"
    "find: cost\nstory: A"
)
PART = "structure: part whole\nparts: {{red: {} kites, green: {} kites}}\nfind: whole\nstory: A"

# phrase, a problem that fulfils it, one that does not
CASES = [
    ("the answer is whole", SHARING.format("50 m", 5), SHARING.format("50 m", 8)),
    ("the answer is between 20 and 60", EQUAL.format(5, 12), EQUAL.format(5, 13)),
    ("the answer is between £2 and £6", ROPE.format(2, 3, 4), ROPE.format(2, 3, 6)),
    ("the answer is at least 60", EQUAL.format(5, 12), EQUAL.format(5, 11)),
    ("the answer is at most 60", EQUAL.format(5, 12), EQUAL.format(5, 13)),
    ("the answer is at most 5 kg", SHARING.format("40 kg", 8), SHARING.format("48 kg", 8)),
    # A measure of another kind is no answer to it.
    ("the answer is at most 5 kg", SHARING.format("40 kg", 8), SHARING.format("40 m", 10)),
    ("no carrying", PART.format(23, 45), PART.format(27, 45)),
    ("no exchanging", CHANGE.format(386, 142), CHANGE.format(386, 149)),
    # 7 × 40 and 7 × 8 do not carry, but short multiplication does.
    ("no carrying", EQUAL.format(3, 23), EQUAL.format(7, 48)),
    ("within the tables", EQUAL.format(7, 8), EQUAL.format(7, 14)),
    ("demand 0 to 6.5", EQUAL.format(7, 8), EQUAL.format(17, 48)),
    ("the common chunk is needed", ROPE.format(4, 6, 14), ROPE.format(4, 6, 12)),
    ("best by scaling up", ROPE.format(4, 6, 12), ROPE.format(4, 6, 14)),
    ("each number different", EQUAL.format(7, 8), EQUAL.format(8, 8)),
    (
        "remainder ignored can be shown",
        GROUPING.format(50, 8, "round up"),
        GROUPING.format(50, 8, "round down"),
    ),
    ("a remainder is left", GROUPING.format(50, 8, "both"), EXACT),
    (
        "a remainder is left",
        GROUPING.format(50, 8, "round down"),
        SHARING.format("50 m", 8),
    ),
    ("no remainder", EXACT, GROUPING.format(50, 8, "both")),
]


def read(phrase: str, elsewhere: Elsewhere | None = None) -> tuple[Condition, list[Complaint]]:
    complaints: list[Complaint] = []
    found = read_conditions([Scalar(phrase, HERE)], elsewhere or Elsewhere({}), complaints)
    return (found[0] if found else Condition("", 0, bool)), complaints  # type: ignore[arg-type]


@pytest.mark.parametrize(("phrase", "good", "bad"), CASES)
def test_a_condition_holds_or_not(phrase: str, good: str, bad: str, typed: Typed) -> None:
    condition, complaints = read(phrase)
    assert complaints == []
    assert condition.test(Trial(typed(good)))
    assert not condition.test(Trial(typed(bad)))


def test_every_phrase_has_a_case_and_its_example_is_read() -> None:
    lessons = Elsewhere({"monday": lambda _structure: frozenset()})
    for pattern, example, _reader in _PHRASES:
        condition, complaints = read(example, lessons)
        assert (condition.words, complaints) == (example, [])
        is_tried = any(pattern.fullmatch(phrase) for phrase, _good, _bad in CASES)
        assert is_tried or example == "different from monday"


def test_different_from_another_lesson(typed: Typed) -> None:
    monday = Trial(typed(EQUAL.format(5, 12)))
    lessons = Elsewhere({"monday": lambda _structure: frozenset([number_set(monday)])})
    condition, _complaints = read("different from Monday", lessons)
    assert condition.test(Trial(typed(EQUAL.format(5, 13))))
    assert not condition.test(Trial(typed(EQUAL.format(5, 12))))
    _condition, complaints = read("different from munday", lessons)
    assert [each.remedy for each in complaints] == ["did you mean 'monday'?"]


def test_a_mistake_of_another_structure_is_not_the_numbers_fault(typed: Typed) -> None:
    trial = Trial(typed(EQUAL.format(5, 12)))
    assert can_be_shown("one post too few").test(trial)
    assert can_be_shown("adding instead of multiplying").test(trial)
    # 2 + 2 is 2 × 2.
    twos = Trial(typed(EQUAL.format(2, 2)))
    assert not can_be_shown("adding instead of multiplying").test(twos)


def test_which_conditions_count_for_other_versions() -> None:
    assert counts_for("no carrying", Wish.EASIER)
    assert not counts_for("no carrying", Wish.HARDER)
    assert not counts_for("demand 3 to 5", Wish.EASIER)
    assert counts_for("demand 3 to 5", Wish.NEW)
    assert counts_for("the answer is whole", Wish.HARDER)
