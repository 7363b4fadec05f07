"""The picture of a grouping: counters in rings where they can be counted, else a bar."""

from __future__ import annotations

from typeset.arithmetic.division import Division
from typeset.arithmetic.figures import Bar, BarModel, Brace, Figure, GroupedObjects, Mark, Part
from typeset.arithmetic.methods import is_counted
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write

# What can still be counted one by one at a glance (our own limits).
_MOST_GROUPS = 12
_MOST_EACH = 12
_MOST_COUNTERS = 48


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
    return (
        is_counted(division.total)
        and bool(division.rest)
        and division.by.denominator == division.total.value.denominator == 1
        and 1 <= division.quotient <= _MOST_GROUPS
        and division.by <= _MOST_EACH
        and division.total.value <= _MOST_COUNTERS
    )
