"""Ways to reckon with a row of posts: its gaps first, post by post, and scaled."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.posts_view import (
    BOTH,
    GAP,
    GAPS,
    LENGTH,
    LOOP,
    NEITHER,
    POSTS,
    WANTED,
    Row,
)
from typeset.arithmetic.methods import Method, is_counted
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.names import listed
from typeset.arithmetic.phrases import as_much
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.quantities.writing import write_plain

# A longer row nobody walks along post by post.
_MOST_WALKED = 12
_ONE = Amount(Fraction(1))


def ways_of(row: Row) -> Iterator[Working]:
    """Every way that suits the numbers; at least two."""
    if WANTED in row.problem.givens:
        yield from _another_row(row)
    elif row.asked in (POSTS, GAPS):
        yield from _counting(row)
    elif row.asked == GAP:
        yield from _one_gap(row)
    else:
        yield from _whole_row(row)


def _counting(row: Row) -> Iterator[Working]:
    length, opening = row.measured(LENGTH)
    gap, more = row.measured(GAP)
    for method in ways_to_divide(Division(length, gap.value, row.gap_noun, grouping=True)):
        told = method.after(*opening, *more)
        if row.asked == GAPS:
            yield told.working({GAPS: row.problem.answer(GAPS, told.result.value)})
            continue
        posts = told.result.value + row.more
        yield told.working(
            {POSTS: row.problem.answer(POSTS, posts)}, _posts_from_gaps(row, told.result.value)
        )
    if length.value / gap.value <= _MOST_WALKED:
        yield _walked(row, length, gap, (*opening, *more))


def _posts_from_gaps(row: Row, gaps: Fraction) -> Step:
    return step(f"{row.why()}: {{posts}}.", _adjusted(gaps, row.more),
                posts=row.so_many(gaps + row.more))  # fmt: skip


def _gaps_from_posts(row: Row, posts: Amount, head: str = "") -> Step:
    gaps = posts.value - row.more
    return step(f"{head}{row.why()}: {{posts}}, {{gaps}}.", _adjusted(posts.value, -row.more),
                posts=row.so_many(posts.value), gaps=row.so_many_gaps(gaps))  # fmt: skip


def _adjusted(count: Fraction, by: int) -> Equation | None:
    """`count + 1 = …`, `count − 1 = …`, or nothing to reckon."""
    if not by:
        return None
    worked = plus(Amount(count), _ONE) if by > 0 else minus(Amount(count), _ONE)
    return equation(worked, Amount(count + by))


def _walked(row: Row, length: Amount, gap: Amount, opening: tuple[Step, ...]) -> Working:
    """Every post by its distance from the start."""
    gaps = int(length.value / gap.value)
    if row.asked == GAPS:
        ends = [write_plain(gap.like(at * gap.value)) for at in range(1, gaps + 1)]
        text = f"Walk along it, one {row.gap_noun.singular} after another: {listed(ends, 'and')}."
        count = row.problem.answer(GAPS, Fraction(gaps))
        steps = (step(text), step("Count them: {gaps}.", gaps=row.so_many_gaps(gaps)))
        return Working("One after another", (*opening, *steps), {GAPS: count})
    first = 1 if row.where == NEITHER else 0
    last = gaps if row.where == BOTH else gaps - 1
    places = [write_plain(gap.like(at * gap.value)) for at in range(first, last + 1)]
    ending = ""
    if row.where == LOOP:
        ending = f" The next would be the first {row.post.singular} again."
    text = f"Walk along it, with {row.post.plural} at {listed(places, 'and')}.{ending}"
    posts = Fraction(len(places))
    steps = (step(text), step("Count them: {posts}.", posts=row.so_many(posts)))
    return Working(
        "One after another", (*opening, *steps), {POSTS: row.problem.answer(POSTS, posts)}
    )


def _one_gap(row: Row) -> Iterator[Working]:
    posts = row.problem.given(POSTS)
    gaps = posts.value - row.more
    first = _gaps_from_posts(row, posts)
    for method in _shared(row, gaps):
        answer, closing = row.finished(method.result)
        yield method.after(first).working({GAP: answer}, *closing)


def _shared(row: Row, gaps: Fraction) -> Iterator[Method]:
    length = row.bare(LENGTH)
    if gaps == 1:
        told = step("One {gap} alone is the whole length: {length}.", gap=row.gap_noun.singular,
                    length=length)  # fmt: skip
        yield Method("One gap alone", (told,), length)
        return
    exact = not is_counted(length)
    yield from ways_to_divide(Division(length, gaps, row.gap_noun, False, exact))


def _whole_row(row: Row) -> Iterator[Working]:
    posts = row.problem.given(POSTS)
    gaps = posts.value - row.more
    first, gap = _gaps_from_posts(row, posts), row.bare(GAP)
    for method in ways_to_multiply(Lots(gaps, gap, row.gap_noun)):
        answer, closing = row.finished(method.result)
        yield method.after(first).working({LENGTH: answer}, *closing)
    if row.more:
        yield _adjusted_row(row, posts, gap)


def _adjusted_row(row: Row, posts: Amount, gap: Amount) -> Working:
    """As if every post had a gap of its own, and then the one too many or too few."""
    rough = gap.like(posts.value * gap.value)
    made = gap.like(rough.value - row.more * gap.value)
    one, space = row.post.singular, row.gap_noun.singular
    steps = [
        step(
            f"As if every {one} had a {space} of its own: {{rough}}.",
            equation(times(Amount(posts.value), gap), rough),
            rough=rough,
        )
    ]
    word = "many" if row.more > 0 else "few"
    text = f"That is one {space} too {word}: {{made}}."
    worked = minus(rough, gap) if row.more > 0 else plus(rough, gap)
    steps.append(step(text, equation(worked, made), made=made))
    answer, closing = row.finished(made)
    return Working("One too many and back", (*steps, *closing), {LENGTH: answer})


def _another_row(row: Row) -> Iterator[Working]:
    """The gaps of both rows; then through one gap, or scaled from row to row."""
    posts, wanted = row.problem.given(POSTS), row.problem.given(WANTED)
    gaps, others = posts.value - row.more, wanted.value - row.more
    first = _gaps_from_posts(row, posts)
    second = step("In the same way {posts}, {gaps}.", _adjusted(wanted.value, -row.more),
                  posts=row.so_many(wanted.value), gaps=row.so_many_gaps(others))  # fmt: skip
    length = row.bare(LENGTH)
    for method in _shared(row, gaps):
        made = length.like(method.result.value * others)
        text = "{others} of {each}: {made}."
        more = step(text, equation(times(Amount(others), method.result), made),
                    others=row.so_many_gaps(others), each=method.result, made=made)  # fmt: skip
        answer, closing = row.finished(made)
        name = f"Through one {row.gap_noun.singular}"
        steps = (first, *method.steps, second, more, *closing)
        yield Working(name, steps, {LENGTH: answer})
    factor = others / gaps
    if factor.denominator == 1 and factor > 1:
        made = length.like(length.value * factor)
        many = plain(as_much(factor, row.gap_noun))
        scaled = step(
            f"That is {many} {row.gap_noun.plural} as before, so {{made}}.",
            equation(times(Amount(factor), length), made),
            made=made,
        )
        text = "{others} are {factor} times {gaps}."
        compared = step(text, equation(over(Amount(others), Amount(gaps)), Amount(factor)),
                        others=row.so_many_gaps(others), factor=Amount(factor),
                        gaps=row.so_many_gaps(gaps))  # fmt: skip
        answer, closing = row.finished(made)
        yield Working("Scale factor", (first, second, compared, scaled, *closing), {LENGTH: answer})
    elif factor > 1:
        rest = others - gaps
        each = length.like(length.value / gaps)
        more_time = each.like(each.value * rest)
        total = length.like(length.value + more_time.value)
        steps = (
            first,
            second,
            step("Those are {rest} more, at {each} each: {more}.",
                 equation(times(Amount(rest), each), more_time), rest=row.so_many_gaps(rest),
                 each=each, more=more_time),
            step("Together: {total}.", equation(plus(length, more_time), total), total=total),
        )  # fmt: skip
        answer, closing = row.finished(total)
        yield Working("The rest added on", (*steps, *closing), {LENGTH: answer})
