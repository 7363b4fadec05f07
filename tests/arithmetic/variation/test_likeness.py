"""What other numbers must have in common with the old ones: each condition by an example."""

from __future__ import annotations

import pytest

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.likeness import likeness, not_the_numbers_of, other_answers
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.wishes import Wish

RATIO = """\
structure: ratio
parts: {{gulls: {}, terns: {}}}
known: {{difference: 12}}
find: gulls
story: A
"""
LAST = "structure: part whole\nparts: {{red: {} kites, green: {} kites}}\nfind: whole\nstory: A"
CUT = "structure: sharing\ntotal: {} m\ngroups: {} pieces\nstory: A"
BOXES = """\
structure: steps
quantities: {{jars: {} jars, box: {} jars}}
steps: [boxes = round up(jars ÷ box)]
find: boxes
answer in: boxes
story: A
"""
# condition, source, other numbers that are like it, others that are not
CASES = [
    ("the larger number stays the larger", LAST.format(8, 5), LAST.format(9, 2), LAST.format(5, 8)),
    ("as simple a ratio", RATIO.format(5, 2), RATIO.format(7, 3), RATIO.format(6, 2)),
    ("as much a remainder as before", BOXES.format(50, 8), BOXES.format(60, 9), BOXES.format(9, 3)),
    ("answers no finer than before", CUT.format(15, 2), CUT.format(9, 2), CUT.format(9, 4)),
    ("the answer stays whole", CUT.format(12, 3), CUT.format(15, 3), CUT.format(15, 2)),
    ("the same decision", CUT.format(12, 3), BOXES.format(12, 3), LAST.format(12, 3)),
]  # fmt: skip


@pytest.mark.parametrize(("name", "source", "like", "unlike"), CASES, ids=[c[0] for c in CASES])
def test_a_likeness(name: str, source: str, like: str, unlike: str, typed: Typed) -> None:
    conditions = {each.words: each for each in likeness(Trial(typed(source)), Wish.NEW)}
    assert conditions[name].test(Trial(typed(like)))
    assert not conditions[name].test(Trial(typed(unlike)))


def test_every_likeness_has_a_case(typed: Typed) -> None:
    sources = (Trial(typed(source)) for _name, source, _like, _unlike in CASES)
    known = {each.words for source in sources for each in likeness(source, Wish.NEW)}
    assert known == {name for name, *_rest in CASES}


def test_only_harder_prices_may_have_other_pence(typed: Typed) -> None:
    tickets = "structure: equal groups\ngroups: {} tickets\neach: {}\nstory: A"
    source, other = (Trial(typed(tickets.format(*each))) for each in ((3, "£4.50"), (3, "£4.57")))
    finer = "answers no finer than before"
    told = {
        wish: next(each for each in likeness(source, wish) if each.words == finer).test(other)
        for wish in (Wish.NEW, Wish.HARDER)
    }
    assert told == {Wish.NEW: False, Wish.HARDER: True}


def test_other_numbers_and_other_answers(typed: Typed) -> None:
    source = Trial(typed(LAST.format(8, 5)))
    (other,) = other_answers(source)
    # 7 + 6 is 13 too; and 5 + 8 are the same numbers turned round.
    assert not other.test(Trial(typed(LAST.format(7, 6))))
    assert other.test(Trial(typed(LAST.format(7, 5))))
    assert not_the_numbers_of(source).test(Trial(typed(LAST.format(7, 6))))
    assert not not_the_numbers_of(source).test(Trial(typed(LAST.format(5, 8))))


def test_where_nothing_changes_the_answer_may_be_the_old_one(typed: Typed) -> None:
    lamps = """\
structure: unchanging
together: {lanterns: 3 lanterns, time: 6 hours}
wanted: {lanterns: 48 lanterns}
find: time
story: A
"""
    assert other_answers(Trial(typed(lamps))) == []


@pytest.mark.parametrize("problem", [source for _name, source, _like, _unlike in CASES])
def test_the_easiest_working_is_the_first_of_the_solution(problem: str, typed: Typed) -> None:
    trial = Trial(typed(problem))
    assert trial.easiest == trial.solution.workings[0]
    assert trial.demand == trial.solution.demand
