"""The picture of a grouping: counters in rings where they can be counted, else a bar."""

from __future__ import annotations

from typeset.arithmetic.counters import can_be_counted
from typeset.arithmetic.division import Division
from typeset.arithmetic.figures import Bar, BarModel, Brace, Figure, GroupedObjects, Mark, Part
from typeset.arithmetic.methods import is_counted
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write


def grouping_figure(division: Division, total: Amount, each: Amount) -> Figure:
    """Rings of counters with what is left over outside them; or one group marked off on the
    total, and what is left over at its end. How many groups there are is the question."""
    if _can_be_counted(division):
        return GroupedObjects(
            groups=int(division.quotient),
            each=int(division.by),
            groups_mark=Mark((write(division.said(division.quotient)),), is_given=False),
            each_mark=Mark((write(each),)),
            left_over=int(division.rest),
            rest=_rest(division),
            total=Mark((write(total),)),
        )
    one = Part(division.by, Mark((write(each),)))
    parts: tuple[Part, ...] = (one,)
    if division.quotient > 1:
        parts = (one, Part((division.quotient - 1) * division.by, dashed=True))
    count = Mark((write(division.said(division.quotient)),), is_given=False)
    groups = Brace(0, count, 0, len(parts) - 1, below=True)
    if division.rest:
        parts = (*parts, Part(division.rest, _rest(division), shaded=True))
    return BarModel((Bar("", parts),), (groups,), Mark((write(total),)))


def _rest(division: Division) -> Mark | None:
    if not division.rest:
        return None
    return Mark((write(division.part(division.rest)),), is_given=False)


def _can_be_counted(division: Division) -> bool:
    """True for things, not measures, few enough, of which some are left over."""
    few = can_be_counted(division.quotient, division.by, division.total.value)
    return is_counted(division.total) and bool(division.rest) and few
