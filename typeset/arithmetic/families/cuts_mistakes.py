"""The wrong ways to reckon with cuts and pieces."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.cuts_view import (
    CUTS,
    EACH_CUT,
    LENGTH,
    PIECE,
    PIECES,
    TIME,
    WANTED,
    Cutting,
)
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount

_ONE = Amount(Fraction(1))
_FINEST = 100
_SAME, _ONE_MORE = "as many cuts as pieces", "one cut more than pieces"


def mistakes_of(view: Cutting) -> Iterator[MistakenWorking]:
    """Every mistake that these numbers invite; unusable ones are sifted out later."""
    givens = view.problem.givens
    if WANTED in givens:
        yield from _in_proportion(view)
        return
    if CUTS in givens or (TIME in givens and EACH_CUT in givens):
        yield from _from_cuts(view)
    else:
        yield from _from_pieces(view)


def _from_pieces(view: Cutting) -> Iterator[MistakenWorking]:
    """The pieces are known, and a wrong number of cuts follows from them."""
    steps, pieces = _known_pieces(view)
    if view.asked == PIECES:
        wrong = view.problem.answer(PIECES, pieces + 1)
        last = step("And one for the end: {answer}.", _added(pieces), answer=wrong)
        yield MistakenWorking("one piece too many", (*steps, last), {PIECES: wrong})
        return
    wrong_counts = {_SAME: Fraction(pieces), _ONE_MORE: pieces + 1}
    if not view.fewer:
        wrong_counts = {"one cut too few for a ring": pieces - 1}
    for name, cuts in wrong_counts.items():
        text = "{pieces}, so {cuts}."
        told = step(
            text, _one_off(pieces, cuts), pieces=view.pieces_of(pieces), cuts=view.cuts_of(cuts)
        )
        yield from _taken_on(view, name, (*steps, told), cuts)


def _taken_on(
    view: Cutting, name: str, steps: tuple[Step, ...], cuts: Fraction
) -> Iterator[MistakenWorking]:
    """From the wrong number of cuts to what is asked for."""
    if view.asked == CUTS:
        yield MistakenWorking(name, steps, {CUTS: view.problem.answer(CUTS, cuts)})
    elif view.asked == TIME:
        each = view.problem.given(EACH_CUT)
        made = each.like(cuts * each.value)
        told = step("{cuts} at {each} each: {made}.", equation(times(Amount(cuts), each), made),
                    cuts=view.cuts_of(cuts), each=each, made=made)  # fmt: skip
        answer = in_unit(made, view.problem.units[TIME])
        yield MistakenWorking(name, (*steps, told), {TIME: answer})
    elif view.asked == EACH_CUT and cuts:
        time = view.problem.given(TIME)
        made = time.like(time.value / cuts)
        if (made.value * _FINEST).denominator == 1:
            told = step("{time} for {cuts}: {made} each.", equation(over(time, Amount(cuts)), made),
                        time=time, cuts=view.cuts_of(cuts), made=made)  # fmt: skip
            answer = in_unit(made, view.problem.units[EACH_CUT])
            yield MistakenWorking(name, (*steps, told), {EACH_CUT: answer})


def _from_cuts(view: Cutting) -> Iterator[MistakenWorking]:
    """The cuts are known, and a wrong number of pieces follows from them."""
    givens = view.problem.givens
    if CUTS in givens:
        steps: tuple[Step, ...] = ()
        cuts = givens[CUTS].value
    else:
        time, each = view.like(TIME, EACH_CUT), view.like(EACH_CUT, TIME)
        cuts = time.value / each.value
        steps = (step("Divide: {cuts}.", equation(over(time, each), Amount(cuts)),
                      cuts=view.cuts_of(cuts)),)  # fmt: skip
    if view.asked in (CUTS, TIME):
        if view.asked == CUTS:
            answer = view.problem.answer(CUTS, cuts + 1)
            last = step("And one more: {answer}.", _added(cuts), answer=answer)
            yield MistakenWorking(_ONE_MORE, (*steps, last), {CUTS: answer})
            return
        for name, wrong in ((_ONE_MORE, cuts + 1), ("one cut too few", cuts - 1)):
            told = step("{cuts}.", _one_off(cuts, wrong), cuts=view.cuts_of(wrong))
            yield from _taken_on(view, name, (*steps, told), wrong)
        return
    for name, pieces in ((_SAME, cuts if view.fewer else cuts + 1), (_ONE_MORE, cuts - 1)):
        if not view.fewer and name == _SAME:
            name = "one piece too many"
        told = step("{cuts}, so {pieces}.", _one_off(cuts, pieces), cuts=view.cuts_of(cuts),
                    pieces=view.pieces_of(pieces))  # fmt: skip
        yield from _by_pieces(view, name, (*steps, told), pieces)


def _by_pieces(
    view: Cutting, name: str, steps: tuple[Step, ...], pieces: Fraction
) -> Iterator[MistakenWorking]:
    if pieces <= 0:
        return
    if view.asked == PIECES:
        yield MistakenWorking(name, steps, {PIECES: view.problem.answer(PIECES, pieces)})
        return
    known = view.problem.given(LENGTH if view.asked == PIECE else PIECE)
    if view.asked == PIECE:
        made = known.like(known.value / pieces)
        worked = equation(over(known, Amount(pieces)), made)
    else:
        made = known.like(known.value * pieces)
        worked = equation(times(Amount(pieces), known), made)
    if (made.value * _FINEST).denominator != 1:
        return
    text = "Share {known} among {pieces}: {made}." if view.asked == PIECE else (
        "{pieces} of {known}: {made}.")  # fmt: skip
    told = step(text, worked, known=known, pieces=view.pieces_of(pieces), made=made)
    answer = in_unit(made, view.problem.units[view.asked])
    yield MistakenWorking(name, (*steps, told), {view.asked: answer})


def _known_pieces(view: Cutting) -> tuple[tuple[Step, ...], Fraction]:
    givens = view.problem.givens
    if PIECES in givens:
        return (), givens[PIECES].value
    total, part = view.like(LENGTH, PIECE), view.like(PIECE, LENGTH)
    pieces = total.value / part.value
    told = step("Divide: {pieces}.", equation(over(total, part), Amount(pieces)),
                pieces=view.pieces_of(pieces))  # fmt: skip
    return (told,), pieces


def _added(count: Fraction) -> Equation:
    return equation(plus(Amount(count), _ONE), Amount(count + 1))


def _one_off(count: Fraction, wrong: Fraction) -> Equation | None:
    """What leads from the one to the other, which are the same or one apart."""
    if wrong == count:
        return None
    if wrong > count:
        return _added(count)
    return equation(minus(Amount(count), _ONE), Amount(wrong))


def _in_proportion(view: Cutting) -> Iterator[MistakenWorking]:
    """Twice as many pieces, so twice as long."""
    pieces, wanted = view.problem.given(PIECES).value, view.problem.given(WANTED).value
    time, factor = view.problem.given(TIME), wanted / pieces
    made = time.like(time.value * factor)
    if (made.value * _FINEST).denominator != 1:
        return
    each = time.like(time.value / pieces)
    if factor.denominator == 1 or (each.value * _FINEST).denominator != 1:
        steps = [
            step("{wanted} are {factor} times {pieces}, so multiply: {made}.",
                 equation(times(Amount(factor), time), made), wanted=view.pieces_of(wanted),
                 factor=Amount(factor), pieces=view.pieces_of(pieces), made=made)
        ]  # fmt: skip
    else:
        steps = [
            step("{pieces} take {time}, so {each} each.",
                 equation(over(time, Amount(pieces)), each), pieces=view.pieces_of(pieces),
                 time=time, each=each),
            step("{wanted}: {made}.", equation(times(Amount(wanted), each), made),
                 wanted=view.pieces_of(wanted), made=made),
        ]  # fmt: skip
    answer = in_unit(made, view.problem.units[TIME])
    yield MistakenWorking("over-use of proportionality", tuple(steps), {TIME: answer})
