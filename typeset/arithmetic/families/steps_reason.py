"""Why a chain of steps is of its kind, told with its own operations."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.equations import OF, PLUS
from typeset.arithmetic.formulas.explaining import Line
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.phrases import is_thing, the, title
from typeset.quantities.inline import Rich, join
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, say

MULTIPLYING = {
    TIMES: "you multiply",
    DIVIDE: "you divide",
    OF: "you take a part",
    "quotient": "you divide",
    "remainder": "you divide and look at what is left",
    "round up": "you divide and round up",
    "round down": "you divide and round down",
    "hcf": "you look for the largest number that divides all",
    "lcm": "you look for the smallest multiple of all",
    "mean": "you add and then divide",
}
_ADDING = {
    PLUS: "you add",
    MINUS: "you subtract",
    "difference": "you subtract",
    "mean": "you add and then divide",
}
_WANTED = {
    Decision.MULTIPLY: (MULTIPLYING,),
    Decision.ADD: (_ADDING,),
    Decision.BOTH: (MULTIPLYING, _ADDING),
}
# As many lines are told one by one; of a longer chain one line for each verb.
_MOST_LINES = 4


def chain_reason(lines: Sequence[Line], decision: Decision) -> Rich | None:
    """Every operation that the decision names, in order; None where the lines do not bear it
    out."""
    wanted = _WANTED.get(decision, ())
    if not wanted or not all(any(line.sign in verbs for line in lines) for verbs in wanted):
        return None
    verb_of = {sign: verb for verbs in wanted for sign, verb in verbs.items()}
    told = [line for line in lines if line.sign in verb_of]
    if len(told) > _MOST_LINES:
        first = {verb_of[line.sign]: line for line in reversed(told)}
        told = [line for line in told if first[verb_of[line.sign]] is line]
    return join([_sentence(line, verb_of[line.sign]) for line in told], " ")


def _sentence(line: Line, verb: str) -> Rich:
    begin = title(verb)
    if line.name:
        is_named = is_thing(line.name)
        begin = f"For {the(line.name)} {verb}" if is_named else f"{title(line.name)}: {verb}"
    if line.equation is None:
        return say(f"{begin}.")
    return say(f"{begin}: {{equation}}.", equation=(line.equation.written(),))
