"""Clock faces for the support version show what is known and nothing else."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.arithmetic.random_problems import solved
from typeset.arithmetic.clock_faces import clocks_for
from typeset.quantities.inline import plain

KNOWN = {"start": "21:40", "end": "0:15", "duration": "2 h 35 min"}


@pytest.mark.parametrize("asked", KNOWN)
def test_what_is_asked_is_not_shown(asked: str) -> None:
    given = {name: text for name, text in KNOWN.items() if name != asked}
    extra = {"next_day": "yes"} if asked == "duration" else {}
    solution = solved("elapsed time", find=asked, **given, **extra)
    clocks = clocks_for(solution.problem, solution.answers)
    assert clocks is not None
    start, end = clocks.faces
    assert clocks.between is not None and start.mark is not None and end.mark is not None
    shown = {
        "start": start.mark.is_given,
        "end": end.mark.is_given,
        "duration": clocks.between.is_given,
    }
    assert shown == {name: name != asked for name in KNOWN}
    assert (start.hands_given, end.hands_given) == (asked != "start", asked != "end")
    # 21:40 is 580 minutes after twelve, 0:15 is 15.
    assert (start.at, end.at) == (Fraction(580), Fraction(15))
    assert plain(clocks.between.text).replace("\u00a0", " ") == "2 h 35 min"


def test_other_problems_have_no_clocks() -> None:
    solution = solved("equal groups", groups="3 crates", each="4 floats")
    assert clocks_for(solution.problem, solution.answers) is None


def test_a_chain_of_times_has_no_clocks() -> None:
    solution = solved(
        "elapsed time", start="9:40", durations={"crossing": "45 min", "wait": "20 min"}, find="end"
    )
    assert clocks_for(solution.problem, solution.answers) is None
