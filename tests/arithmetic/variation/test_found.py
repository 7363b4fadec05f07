"""What is kept of a problem just drawn is for that problem alone, and little is kept."""

from __future__ import annotations

import gc
from dataclasses import replace

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import solve
from typeset.arithmetic.variation.found import kept_for_solving, trial_of
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.vary import vary
from typeset.arithmetic.variation.wishes import Wish

CRATES = "structure: equal groups\ngroups: 4 crates\neach: 12 floats\nstory: A\n"


def test_a_drawn_problem_is_solved_as_anew(typed: Typed) -> None:
    drawn = vary(typed(CRATES), Wish.NEW, "pupil")
    trial = trial_of(drawn)
    assert trial is not None and trial.content is drawn
    anew = Trial(drawn)
    again = solve(FAMILIES[drawn.structure], anew.problem)
    assert trial.solution.answers == again.answers
    assert trial.solution.workings == again.workings
    assert trial.solution.mistakes == again.mistakes


def test_an_equal_problem_is_not_the_same(typed: Typed) -> None:
    trial = Trial(typed(CRATES))
    content = kept_for_solving(trial)
    assert trial_of(replace(content)) is None
    assert trial_of(content) is trial
    assert trial_of(content) is None


def test_a_problem_at_the_place_of_one_long_gone_is_unknown(typed: Typed) -> None:
    content = typed(CRATES)
    for number in range(400):
        own = replace(content, id=f"crates-{number}")
        assert trial_of(own) is None
        kept_for_solving(Trial(own))
        del own
        if number % 100 == 0:
            gc.collect()


def test_few_are_kept(typed: Typed) -> None:
    contents = [replace(typed(CRATES), id=f"crates-{number}") for number in range(300)]
    for each in contents:
        kept_for_solving(Trial(each))
    assert sum(trial_of(each) is not None for each in contents) < 200
