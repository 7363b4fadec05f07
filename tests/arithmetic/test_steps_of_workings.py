"""A step is a value, though its sentence is put together only when it is read."""

from __future__ import annotations

import pickle
from dataclasses import FrozenInstanceError

import pytest

from typeset.arithmetic.equations import equation, plus
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, number
from typeset.quantities.inline import plain
from typeset.quantities.units import noun
from typeset.quantities.writing import say

KITES = Amount(number(12).value, noun("kite", "kites"))
SUM = equation(plus(number(5), number(7)), number(12))


def test_the_sentence_is_the_template_with_its_values() -> None:
    made = step("Together {count}.", SUM, count=KITES)
    assert made.sentence == say("Together {count}.", count=KITES)
    assert plain(made.sentence) == "Together 12 kites."
    assert made.sentence is made.sentence
    assert made.equation is SUM


def test_steps_that_say_the_same_are_equal() -> None:
    made = step("Together {count}.", SUM, count=KITES)
    typed = Step(say("Together {count}.", count=KITES), SUM)
    assert (made, hash(made), repr(made)) == (typed, hash(typed), repr(typed))
    assert made != step("Together {count}.", count=KITES)
    assert made != step("In all {count}.", SUM, count=KITES)
    assert made != "Together 12 kites."


def test_a_step_never_changes() -> None:
    with pytest.raises(FrozenInstanceError):
        step("Add.").equation = SUM


def test_a_step_can_be_sent_to_another_process() -> None:
    made = step("Together {count}.", SUM, count=KITES)
    again = pickle.loads(pickle.dumps(made))
    assert again == made
    assert repr(again) == repr(made)
