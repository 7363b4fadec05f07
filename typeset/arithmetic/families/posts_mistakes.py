"""The wrong ways to reckon with a row of posts."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.posts_view import GAP, GAPS, LENGTH, POSTS, WANTED, Row
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form

_ONE = Amount(Fraction(1))
_FINEST = 100


def mistakes_of(row: Row) -> Iterator[MistakenWorking]:
    """Every mistake that these numbers invite; unusable ones are sifted out later."""
    if WANTED in row.problem.givens:
        yield from _in_proportion(row)
    elif row.asked in (POSTS, GAPS):
        yield from _miscounted(row)
    else:
        yield from _wrong_gaps(row)


def _miscounted(row: Row) -> Iterator[MistakenWorking]:
    length, gap = row.bare(LENGTH), row.bare(GAP)
    gaps = length.value / gap.value
    divided = equation(over(length, gap), Amount(gaps))
    counts = {
        "one post too few": 0 if row.more > 0 else -1,
        "one post too many": 0 if row.more < 0 else 1,
        "end post counted the wrong way": -row.more,
    }
    if row.asked == GAPS:
        counts = {"gaps counted as posts": 1}
    if not row.more:
        counts.pop("end post counted the wrong way", None)
    else:
        counts.pop("one post too many" if row.more > 0 else "one post too few", None)
    first = step("Divide: {count}.", divided, count=Amount(gaps))
    for name, by in counts.items():
        answer = row.problem.answer(row.asked, gaps + by)
        last = step("So {answer}.", answer=answer)
        if by:
            text = "Add one for the end" if by > 0 else "Take one off for the end"
            worked = plus(Amount(gaps), _ONE) if by > 0 else minus(Amount(gaps), _ONE)
            told = equation(worked, Amount(gaps + by))
            last = step(f"{text}: {{answer}}.", told, answer=answer)
        yield MistakenWorking(name, (first, last), {row.asked: answer})


def _wrong_gaps(row: Row) -> Iterator[MistakenWorking]:
    """As many gaps as posts, or the one put on where it has to be taken off."""
    posts = row.problem.given(POSTS).value
    counts: dict[str, tuple[Fraction, Step | None]] = {"posts counted as gaps": (posts, None)}
    if row.more:
        wrong = posts + row.more
        worked = plus(Amount(posts), _ONE) if row.more > 0 else minus(Amount(posts), _ONE)
        told = step("{gaps} between {posts}.", equation(worked, Amount(wrong)),
                    gaps=row.so_many_gaps(wrong), posts=row.so_many(posts))  # fmt: skip
        counts["end post counted the wrong way"] = (wrong, told)
    for name, (gaps, opening) in counts.items():
        yield from _with_gaps(row, name, gaps, opening)


def _with_gaps(
    row: Row, name: str, gaps: Fraction, opening: Step | None
) -> Iterator[MistakenWorking]:
    if gaps <= 0:
        return
    if row.asked == GAP:
        length = row.bare(LENGTH)
        made = length.like(length.value / gaps)
        worked = equation(over(length, Amount(gaps)), made)
        text = "Divide by {count}: {made}."
    else:
        gap = row.bare(GAP)
        made = gap.like(gap.value * gaps)
        worked = equation(times(Amount(gaps), gap), made)
        text = "{count} times {gap}: {made}."
    if (made.value * _FINEST).denominator != 1:
        return
    answer, closing = row.finished(made)
    count = Amount(gaps) if opening is not None else row.so_many(gaps)
    told = {"count": count, "made": made} | ({"gap": row.bare(GAP)} if row.asked == LENGTH else {})
    only = step(text, worked, **told)
    steps = (*((opening,) if opening is not None else ()), only, *closing)
    yield MistakenWorking(name, steps, {row.asked: answer})


def _in_proportion(row: Row) -> Iterator[MistakenWorking]:
    """Twice as many posts, so twice as long."""
    posts, wanted = row.problem.given(POSTS), row.problem.given(WANTED)
    length, factor = row.bare(LENGTH), wanted.value / posts.value
    made = length.like(length.value * factor)
    if (made.value * _FINEST).denominator != 1:
        return
    answer, closing = row.finished(made)
    each = length.like(length.value / posts.value)
    if factor.denominator == 1 or (each.value * _FINEST).denominator != 1:
        told = Amount(factor, form=Form.AUTO)
        steps = [
            step("{wanted} are {factor} times {posts}, so multiply: {made}.",
                 equation(times(told, length), made), wanted=row.so_many(wanted.value),
                 factor=told, posts=row.so_many(posts.value), made=made)
        ]  # fmt: skip
    else:
        steps = [
            step("{posts}: {length}, so {each} each.",
                 equation(over(length, Amount(posts.value)), each), posts=row.so_many(posts.value),
                 length=length, each=each),
            step("{wanted}: {made}.", equation(times(Amount(wanted.value), each), made),
                 wanted=row.so_many(wanted.value), made=made),
        ]  # fmt: skip
    yield MistakenWorking("over-use of proportionality", (*steps, *closing), {LENGTH: answer})
