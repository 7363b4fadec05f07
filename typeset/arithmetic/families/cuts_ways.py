"""Ways to reckon with cuts and pieces: pieces first, then cuts, then what they take."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.cuts_view import (
    CUT,
    CUTS,
    EACH_CUT,
    LENGTH,
    PIECE,
    PIECES,
    TIME,
    WANTED,
    Cutting,
)
from typeset.arithmetic.methods import conversion, is_counted
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.names import listed
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit
from typeset.quantities.writing import write_plain

# Longer rows nobody cuts one by one in a working.
_MOST_WALKED = 12
_ONE = Amount(Fraction(1))


@dataclass(frozen=True, slots=True)
class Counted:
    """A way to a number of pieces or cuts."""

    name: str
    steps: tuple[Step, ...]
    count: Fraction


def ways_of(view: Cutting) -> Iterator[Working]:
    """Every way that suits the numbers; at least two."""
    if WANTED in view.problem.givens:
        yield from _another_cutting(view)
    elif view.asked == CUTS:
        for way in _cuts(view):
            yield Working(way.name, way.steps, {CUTS: view.problem.answer(CUTS, way.count)})
    elif view.asked == PIECES:
        for way in _pieces(view):
            yield Working(way.name, way.steps, {PIECES: view.problem.answer(PIECES, way.count)})
    elif view.asked == TIME:
        yield from _time(view)
    elif view.asked == EACH_CUT:
        yield from _shared(view, TIME, next(_cuts(view)), CUT.singular)
    elif view.asked == PIECE:
        yield from _shared(view, LENGTH, next(_pieces(view)), view.piece_noun.singular)
    else:
        yield from _length(view)


def _pieces(view: Cutting) -> Iterator[Counted]:
    """The pieces: given, from the cuts, or from the lengths."""
    givens = view.problem.givens
    if PIECES in givens:
        yield Counted("", (), givens[PIECES].value)
    elif LENGTH in givens and PIECE in givens:
        yield from _divided(view, LENGTH, PIECE, view.piece_noun)
        yield from _laid_out(view)
    else:
        for way in _cuts(view):
            count = way.count + view.fewer
            told = step(_more(view), _adjusted(way.count, view.fewer), cuts=view.cuts_of(way.count),
                        pieces=view.pieces_of(count))  # fmt: skip
            yield Counted(way.name or "One more than the cuts", (*way.steps, told), count)
        if CUTS in givens:
            yield from _pattern(view, givens[CUTS].value + view.fewer, PIECES)


def _more(view: Cutting) -> str:
    if not view.fewer:
        return f"{view.why()}: {{pieces}}."
    return f"Every cut makes one more of the {view.piece_noun.plural}, and there was one to " \
           f"begin with: {{pieces}}."  # fmt: skip


def _cuts(view: Cutting) -> Iterator[Counted]:
    """The cuts: given, from the pieces, or from the time."""
    givens = view.problem.givens
    if CUTS in givens:
        yield Counted("", (), givens[CUTS].value)
    elif TIME in givens and EACH_CUT in givens:
        yield from _divided(view, TIME, EACH_CUT, CUT)
    else:
        for way in _pieces(view):
            count = way.count - view.fewer
            told = step(f"{view.why()}: {{cuts}}.", _adjusted(way.count, -view.fewer),
                        cuts=view.cuts_of(count))  # fmt: skip
            yield Counted(way.name or "One fewer than the pieces", (*way.steps, told), count)
        if PIECES in givens:
            yield from _pattern(view, givens[PIECES].value, CUTS)


def _pattern(view: Cutting, pieces: Fraction, asked: str) -> Iterator[Counted]:
    """1 cut, 2 pieces; 2 cuts, 3 pieces; and so on."""
    first = Fraction(2 if view.fewer else 1)
    shown = [first + at for at in range(3) if first + at < pieces]
    told = [f"{write_plain(view.cuts_of(each - view.fewer))}, {write_plain(view.pieces_of(each))}"
            for each in shown]  # fmt: skip
    reached = "{cuts}, {pieces}."
    text = f"Try it: {'; '.join(told)}. In the same way {reached}" if told else f"Try it: {reached}"
    last = step(text, cuts=view.cuts_of(pieces - view.fewer), pieces=view.pieces_of(pieces))
    yield Counted("A short one first", (last,), pieces - (view.fewer if asked == CUTS else 0))


def _adjusted(count: Fraction, by: int) -> Equation | None:
    if not by:
        return None
    worked = plus(Amount(count), _ONE) if by > 0 else minus(Amount(count), _ONE)
    return equation(worked, Amount(count + by))


def _divided(view: Cutting, whole: str, one: str, group: Unit) -> Iterator[Counted]:
    total, part = view.like(whole, one), view.like(one, whole)
    opening = [
        each for name, amount in ((whole, total), (one, part))
        for each in conversion(view.problem.given(name), amount.unit)[1]
    ]  # fmt: skip
    for method in ways_to_divide(Division(total, part.value, group, grouping=True)):
        yield Counted(method.name, (*opening, *method.steps), method.result.value)


def _laid_out(view: Cutting) -> Iterator[Counted]:
    """The pieces by where each of them ends."""
    total, part = view.like(LENGTH, PIECE), view.like(PIECE, LENGTH)
    count = int(total.value / part.value)
    if count > _MOST_WALKED or total.value != count * part.value:
        return
    ends = [write_plain(part.like(at * part.value)) for at in range(1, count + 1)]
    told = step(f"The {view.piece_noun.plural} end at {listed(ends, 'and')}: {{pieces}}.",
                pieces=view.pieces_of(count))  # fmt: skip
    yield Counted("One after another", (told,), Fraction(count))


def _time(view: Cutting) -> Iterator[Working]:
    each = view.problem.given(EACH_CUT)
    first = True
    for way in _cuts(view):
        methods = ways_to_multiply(Lots(way.count, each, CUT)) if first else iter(())
        plain = Lots(way.count, each, CUT)
        if not first:
            told = step("{cuts} at {each} each: {total}.", plain.product(way.count),
                        cuts=view.cuts_of(way.count), each=each, total=plain.total)  # fmt: skip
            yield _finished(view, way.name, (*way.steps, told), plain.total)
        for method in methods:
            yield _finished(view, method.name, (*way.steps, *method.steps), method.result)
        first = False
    if view.fewer and CUTS not in view.problem.givens:
        yield _one_too_many(view, each)


def _one_too_many(view: Cutting, each: Amount) -> Working:
    way = next(_pieces(view))
    rough = each.like(way.count * each.value)
    total = each.like(rough.value - each.value)
    one = view.piece_noun.singular
    steps = (
        *way.steps,
        step(f"As if every {one} needed a cut of its own: {{rough}}.",
             equation(times(Amount(way.count), each), rough), rough=rough),
        step("That is one cut too many: {total}.", equation(minus(rough, each), total),
             total=total),
    )  # fmt: skip
    return _finished(view, "One too many and back", steps, total)


def _shared(view: Cutting, whole: str, way: Counted, one: str) -> Iterator[Working]:
    total = view.problem.given(whole)
    group = CUT if one == CUT.singular else view.piece_noun
    if way.count == 1:
        only = step("One cut takes it all: {total}.", total=total)
        yield _finished(view, "One cut alone", (*way.steps, only), total)
        return
    exact = not is_counted(total)
    for method in ways_to_divide(Division(total, way.count, group, False, exact)):
        yield _finished(view, method.name, (*way.steps, *method.steps), method.result)


def _length(view: Cutting) -> Iterator[Working]:
    way, piece = next(_pieces(view)), view.problem.given(PIECE)
    for method in ways_to_multiply(Lots(way.count, piece, view.piece_noun)):
        yield _finished(view, method.name, (*way.steps, *method.steps), method.result)


def _another_cutting(view: Cutting) -> Iterator[Working]:
    """The cuts of both; then through one cut, or scaled."""
    pieces, wanted = view.problem.given(PIECES).value, view.problem.given(WANTED).value
    cuts, others = pieces - view.fewer, wanted - view.fewer
    time = view.problem.given(TIME)
    opening = (
        step(f"{view.why()}: {{pieces}}, {{cuts}}.", _adjusted(pieces, -view.fewer),
             pieces=view.pieces_of(pieces), cuts=view.cuts_of(cuts)),
        step("In the same way {pieces}, {cuts}.", _adjusted(wanted, -view.fewer),
             pieces=view.pieces_of(wanted), cuts=view.cuts_of(others)),
    )  # fmt: skip
    each = time.like(time.value / cuts)
    total = time.like(each.value * others)
    one = step("One cut takes {each}.", equation(over(time, Amount(cuts)), each) if cuts > 1
               else None, each=each)  # fmt: skip
    worked = equation(times(Amount(others), each), total)
    told = step("{cuts}: {total}.", worked, cuts=view.cuts_of(others), total=total)
    yield _finished(view, "Through one cut", (*opening, one, told), total)
    yield _compared(view, opening, (cuts, others), (time, each))


def _compared(
    view: Cutting,
    opening: Sequence[Step],
    counts: tuple[Fraction, Fraction],
    times_: tuple[Amount, Amount],
) -> Working:
    """By how many times more cuts there are, or by how many more or fewer."""
    cuts, others = counts
    time, each = times_
    factor = others / cuts
    if factor.denominator == 1 and cuts > 1:
        made = time.like(time.value * factor)
        steps = (
            step("{others} are {factor} times {cuts}.",
                 equation(over(Amount(others), Amount(cuts)), Amount(factor)),
                 others=view.cuts_of(others), factor=Amount(factor), cuts=view.cuts_of(cuts)),
            step("So it takes {factor} times as long: {made}.",
                 equation(times(Amount(factor), time), made), factor=Amount(factor), made=made),
        )  # fmt: skip
        return _finished(view, "Scale factor", (*opening, *steps), made)
    gap = max(others - cuts, cuts - others)
    change = time.like(each.value * gap)
    is_more = others > cuts
    made = time.like(time.value + (change.value if is_more else -change.value))
    word = "more" if is_more else "fewer"
    worked = plus(time, change) if is_more else minus(time, change)
    steps = (
        step(f"That is {{gap}} {word}, at {{each}} each: {{change}}.",
             equation(times(Amount(gap), each), change), gap=view.cuts_of(gap), each=each,
             change=change),
        step("So it takes {made}.", equation(worked, made), made=made),
    )  # fmt: skip
    return _finished(view, "The difference in cuts", (*opening, *steps), made)


def _finished(view: Cutting, name: str, steps: Sequence[Step], made: Amount) -> Working:
    """The way carried into the unit of the answer."""
    answer, closing = conversion(made, view.problem.units[view.asked])
    return Working(name, (*steps, *closing), {view.asked: answer})
