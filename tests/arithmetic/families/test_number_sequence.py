"""Number sequences: answers by formula, ways, wrong ways, kinds and complaints.

The published items are in tests/published/number-sequences.yaml. Wording: common practice.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.arithmetic.families.test_wording_laws import check_sentence
from tests.arithmetic.random_problems import tried
from typeset.arithmetic.equations import minus
from typeset.arithmetic.families import sequence_position_ways, sequence_ways
from typeset.arithmetic.families.sequence_view import Sequence
from typeset.arithmetic.figures import Show
from typeset.arithmetic.kinds import Decision
from typeset.drawing.figures import draw_figure
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

ROWS: dict[str, Any] = {
    "terms": ["5 floats", "8 floats", "11 floats"],
    "terms called": "rows",
    "position": "10",
    "find": "term",
}
NEXT = {**ROWS, "position": None, "find": ["fourth", "fifth"]}
WHICH = {**ROWS, "position": None, "value": "50 floats", "find": "position"}
IS_IT = {**WHICH, "find": "in the sequence"}
NETS: dict[str, Any] = {
    "terms": ["1 net", "3 nets", "6 nets", "10 nets"],
    "rule": "growing step",
    "position": "8",
    "find": "term",
}
TERNS: dict[str, Any] = {
    "terms": ["3 terns", "6 terns", "12 terns"],
    "rule": "multiply",
    "terms called": "days",
    "position": "6",
    "find": "term",
}
FALLING: dict[str, Any] = {"terms": ["50 kg", "46 kg", "42 kg"], "find": "eighth"}
TABLE = {**ROWS, "terms": ["5", "10", "15"], "position": "20"}


def typed(fields: dict[str, Any], **changed: Any) -> dict[str, Any]:
    """The fields without those that are None."""
    return {name: value for name, value in {**fields, **changed}.items() if value is not None}


# By formula: 3n + 2, n(n + 1)/2, 3 × 2^(n − 1), 54 − 4n, 5n, n².
ANSWERS = [
    (ROWS, ["32 floats"]),
    (NEXT, ["14 floats", "17 floats"]),
    (WHICH, ["16"]),
    (IS_IT, ["yes"]),
    ({**IS_IT, "value": "51 floats"}, ["no"]),
    (NETS, ["36 nets"]),
    ({**NETS, "position": "20"}, ["210 nets"]),
    ({**NETS, "position": None, "value": "36 nets", "find": "position"}, ["8"]),
    ({**NETS, "position": None, "value": "37 nets", "find": "in the sequence"}, ["no"]),
    ({**NETS, "terms": ["1", "4", "9", "16"], "position": "20"}, ["400"]),
    (TERNS, ["96 terns"]),
    ({**TERNS, "position": None, "value": "96 terns", "find": "position"}, ["6"]),
    ({**TERNS, "position": None, "value": "100 terns", "find": "in the sequence"}, ["no"]),
    ({**TERNS, "terms": ["80 cm", "40 cm", "20 cm"], "position": "5"}, ["5 cm"]),
    (FALLING, ["22 kg"]),
    ({**FALLING, "value": "2 kg", "find": "position"}, ["13"]),
    # To nothing and below it.
    ({"terms": ["16", "8", "0"], "value": "-8", "find": "position"}, ["4"]),
    (TABLE, ["100"]),
    ({"terms": ["£1.50", "£2.25", "£3"], "position": "20", "find": "term"}, ["£15.75"]),
    ({"terms": ["1.5 m", "200 cm", "2.5 m"], "position": "12", "find": "term", "answer in": "m"},
     ["7 m"]),
    ({"terms": ["2", "2.5", "3"], "find": "fourth"}, ["3.5"]),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "answers"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, fields: Any, answers: list[str]) -> None:
    assert answers_of(solved("number sequence", typed(fields))) == answers


FAR = {"All the steps at once", "From the last one told", "One step before the first"}
BACK = {"How many steps from the first", "How many steps from the last one told"}
WAYS = [
    (ROWS, FAR | {"Counting on step by step"}),
    ({**ROWS, "position": "30"}, FAR),
    (NEXT, {"Counting on step by step", "All the steps at once"}),
    (TABLE, {"The place times the step", "All the steps at once", "From the last one told"}),
    (WHICH, BACK),
    ({**WHICH, "value": "20 floats"}, BACK | {"Counting on until it comes"}),
    (NETS, {"Counting on step by step", "Adding up all the steps", "The steps in pairs"}),
    ({**NETS, "position": "20"}, {"The steps in pairs", "Equal steps and what they grow by"}),
    ({**NETS, "position": None, "value": "36 nets", "find": "position"},
     {"Counting on until it comes", "Adding up the steps"}),
    (TERNS, {"Multiplying step by step", "All the multiplying at once"}),
    ({**TERNS, "position": None, "value": "96 terns", "find": "position"},
     {"Counting on until it comes", "Going back to the first"}),
    (FALLING, FAR | {"Counting back step by step"}),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    workings = solved("number sequence", typed(fields)).workings
    assert {each.strategy for each in workings} == names


# By hand: each wrong way reckoned on the numbers above.
WRONG = [
    (ROWS, "over-use of proportionality", "40 floats"),
    (ROWS, "as many steps as terms", "35 floats"),
    (ROWS, "starting number forgotten", "30 floats"),
    (NEXT, "starting number forgotten", "12 floats"),
    (WHICH, "steps counted instead of terms", "15"),
    ({**WHICH, "value": "44 floats"}, "over-use of proportionality", "12"),
    ({**WHICH, "terms": ["6 floats", "9 floats", "12 floats"], "value": "51 floats"},
     "starting number forgotten", "17"),
    (IS_IT, "starting number forgotten", "no"),
    (NETS, "same step kept", "26 nets"),
    (NETS, "step given as the term", "8 nets"),
    (NETS, "as many steps as terms", "45 nets"),
    (TERNS, "same step kept", "30 terns"),
    (TERNS, "factor counted instead of repeated", "30 terns"),
    (TERNS, "over-use of proportionality", "24 terns"),
    ({**TERNS, "position": None, "value": "96 terns", "find": "position"}, "same step kept", "17"),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved("number sequence", typed(fields)))[name] == answer


REFUSED = [
    (TABLE, "over-use of proportionality", "right answer"),
    (TABLE, "starting number forgotten", "right answer"),
    ({**IS_IT, "value": "52 floats"}, "starting number forgotten", "right answer"),
    # One step on, nobody counts a step too many; where terms fall, nobody scales up.
    ({**NEXT, "find": "fourth"}, "as many steps as terms", ""),
    (FALLING, "over-use of proportionality", ""),
    (ROWS, "same step kept", ""),
]


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: str, why: str) -> None:
    solution = solved("number sequence", typed(fields))
    refused = {each.misconception: each.why for each in solution.refused}
    assert name not in {each.misconception for each in solution.mistakes}
    assert (name in refused) == bool(why)
    assert why in refused.get(name, "")


KINDS = [
    (
        ROWS,
        Decision.BOTH,
        "Equal steps of 3 floats can be multiplied, but row 1 has 5 floats already, and that "
        "counts only once. So this one needs both.",
    ),
    (NEXT, Decision.ADD, "Each row has 3 floats more than the one before, so go on adding"),
    (FALLING, Decision.ADD, "4 kg less than the one before, so go on taking off 4 kg."),
    (WHICH, Decision.BOTH, "What lies between 5 floats and 50 floats is divided into equal steps"),
    (IS_IT, Decision.BOTH, "row 1 has to be counted too"),
    (TABLE, Decision.MULTIPLY, "Every row is its number times 5, right from the first."),
    (NETS, Decision.BOTH, "they grow by 1 each time: they have to be added up"),
    ({**NETS, "position": None, "find": "fifth"}, Decision.ADD, "they cannot simply be multiplied"),
    ({**NETS, "position": None, "value": "36 nets", "find": "position"}, Decision.ADD, "added up"),
    (TERNS, Decision.MULTIPLY, "Each day has twice as many as the one before, again and again."),
    ({**TERNS, "position": None, "find": "fourth"}, Decision.MULTIPLY, "twice as many"),
    ({**TERNS, "position": None, "value": "96 terns", "find": "position"}, Decision.MULTIPLY, ""),
]


@pytest.mark.parametrize(("fields", "decision", "reason"), KINDS)
def test_kind(solved: Any, fields: Any, decision: Decision, reason: str) -> None:
    kind = solved("number sequence", typed(fields)).kind
    assert kind.decision is decision
    assert reason in plain(kind.reason)


def test_a_broken_way_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    """Steps that are taken off instead of added; a place one too far on."""
    monkeypatch.setattr(sequence_ways, "plus", minus)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("number sequence", ROWS)
    monkeypatch.undo()
    sound = sequence_position_ways.position_answers
    monkeypatch.setattr(
        sequence_position_ways, "position_answers", lambda view, at: sound(view, at + 1)
    )
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("number sequence", typed(WHICH))


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    sound = Sequence.at
    monkeypatch.setattr(Sequence, "at", lambda self, position: sound(self, position + 1))
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved("number sequence", ROWS)


FIGURES = [
    (NETS, "1, 3, 6, 10, an empty box, an empty box, an empty box, ?"),
    (ROWS, "5, 8, 11, ?; steps …"),
    (WHICH, "5, 8, 11, 50; steps …"),
    # As the story writes them, though the working is in minutes.
    (
        {"terms": ["1 h 20 min", "1 h 40 min", "2 h"], "find": "fourth"},
        "1 h 20 min, 1 h 40 min, 2 h, ?",
    ),
]


@pytest.mark.parametrize(("fields", "words"), FIGURES)
def test_boxes(solved: Any, fields: Any, words: str) -> None:
    figure = solved("number sequence", typed(fields)).figure
    assert draw_figure(figure, Show.FIRST_STEP, 480, 11).reads_as.endswith(words)
    assert "is" in draw_figure(figure, Show.COMPLETE, 480, 11).reads_as


def test_no_box_says_whether_a_value_is_a_term(solved: Any) -> None:
    assert solved("number sequence", typed(IS_IT)).figure is None


COMPLAINTS = [
    ({"terms": ["5 floats", "8 floats"]}, "tell 3 to 6 terms"),
    ({"terms": ["5", "8", "12"]}, "do not follow the rule 'same step'; change a term"),
    ({"terms": ["1", "3", "6", "10"]}, "write rule: growing step"),
    ({"terms": ["1", "2", "4"]}, "write rule: multiply"),
    ({"terms": ["1", "3", "6"], "rule": "growing step"}, "tell 4 to 6 terms"),
    ({"terms": ["1 m", "3 kg", "5 m"]}, "cannot be put together"),
    ({"terms": ["8:00", "8:20", "8:40"]}, "time of day"),
    ({"position": None}, "'term' needs a position"),
    ({"position": "3"}, "is told already"),
    ({"position": "2000"}, "too far for this rule"),
    ({"find": "fourth"}, "'position' is not asked about"),
    ({"find": "second", "position": None}, "both given and asked for"),
    ({"find": "position", "position": None}, "'position' needs a value"),
    ({"value": "50 floats"}, "needs no 'value'"),
    ({"value": "51 floats", "position": None, "find": "position"}, "is no term of this sequence"),
    ({"value": "8 floats", "position": None, "find": "position"}, "comes before the last term"),
    ({"value": "90000 floats", "position": None, "find": "position"}, "lies too far on"),
    ({"value": "50 kg", "position": None, "find": "position"}, "cannot be given in floats"),
    ({"find": "tern"}, "did you mean 'term'"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved("number sequence", typed(ROWS, **changed))
    assert message in str(caught.value)
    assert caught.value.remedy


def row_of(rule: str, first: int, gap: int, count: int) -> list[int]:
    """The first terms of a rule."""
    if rule == "multiply":
        return [first * (gap + 1) ** at for at in range(count)]
    if rule == "growing step":
        return [first + gap * at * (at + 1) // 2 for at in range(count)]
    return [first + gap * at for at in range(count)]


@tried
@given(
    rule=st.sampled_from(["same step", "growing step", "multiply"]),
    first=st.integers(1, 30),
    gap=st.integers(1, 9),
    unit=st.sampled_from(["crates", "cm", ""]),
    goal=st.sampled_from([{"position": "9", "find": "term"}, {"find": ["fifth", "sixth"]},
                          {"find": "position"}, {"find": "in the sequence"}]),
)  # fmt: skip
def test_every_sentence_reads_well(
    solved: Any, told: Any, rule: str, first: int, gap: int, unit: str, goal: dict[str, Any]
) -> None:
    row = row_of(rule, first, gap, 9)
    terms = [f"{value} {'crate' if (unit, value) == ('crates', 1) else unit}" for value in row[:4]]
    fields = {"terms": [term.strip() for term in terms], "rule": rule, "terms called": "boxes"}
    if goal["find"] == "position":
        fields["value"] = f"{row[-1]} {unit}".strip()
    elif goal["find"] == "in the sequence":
        fields["value"] = f"{row[-1] + 1} {unit}".strip()
    solution = solved("number sequence", fields | goal)
    for sentence in told(solution):
        check_sentence(sentence)
    assert len(solution.workings) >= 2
