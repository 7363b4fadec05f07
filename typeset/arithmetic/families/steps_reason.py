"""Why a chain of steps is of its kind, told with its own operations."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.equations import OF, PLUS
from typeset.arithmetic.formulas.explaining import Line
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.phrases import the, title
from typeset.quantities.inline import Rich, join
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, say

_MULTIPLYING = {
    TIMES: "you multiply",
    DIVIDE: "you divide",
    OF: "you take a fraction",
    "quotient": "you divide",
    "remainder": "you divide and look at what is left",
    "round up": "you divide",
    "round down": "you divide",
    "hcf": "you look for the largest number that divides all",
    "lcm": "you look for the smallest multiple of all",
}
_ADDING = {PLUS: "you add", MINUS: "you subtract", "difference": "you subtract"}
_BOTH = {"mean": "you add and then divide"}


def chain_reason(lines: Sequence[Line], decision: Decision) -> Rich | None:
    """One line of each sort that the decision names; None where the lines do not bear it out."""
    wanted = {
        Decision.MULTIPLY: (_MULTIPLYING,),
        Decision.ADD: (_ADDING,),
        Decision.BOTH: (_MULTIPLYING, _ADDING),
    }.get(decision, ())
    if decision is Decision.BOTH and any(line.sign in _BOTH for line in lines):
        wanted = (_BOTH,)
    told = [
        (lines.index(line), _sentence(line, verbs[line.sign]))
        for verbs in wanted
        if (line := next((each for each in lines if each.sign in verbs), None)) is not None
    ]
    if not told or len(told) < len(wanted):
        return None
    return join([sentence for _index, sentence in sorted(told, key=lambda each: each[0])], " ")


def _sentence(line: Line, verb: str) -> Rich:
    begin = f"For {the(line.name)} {verb}" if line.name else title(verb)
    if line.equation is None:
        return say(f"{begin}.")
    return say(f"{begin}: {{equation}}.", equation=(line.equation.written(),))
