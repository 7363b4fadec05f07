"""A check told as a working: it begins with an answer, so it must not pass for a way to it."""

from __future__ import annotations

from dataclasses import replace

from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.workings import Working


def told_after(check: Working, solving: Working) -> Working:
    """The check; where it is easier than solving, the solving is told before it."""
    if demand_of(check) > demand_of(solving):
        return check
    return replace(check, steps=(*solving.steps, *check.steps))
