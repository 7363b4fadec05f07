"""Cuts and pieces: how many cuts make so many pieces, and how long the cutting takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.cuts_mistakes import mistakes_of
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
from typeset.arithmetic.families.cuts_ways import ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount, YesNo
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.methods import check_alike, in_unit, is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit, noun
from typeset.quantities.writing import decimal, say, write, write_plain

# Measures finer than thousandths are not met in these years (national curriculum, Year 6).
_FINEST = 1000
_MOST_DRAWN = 24
# What can be found from what: {givens: what may be asked, the usual first}.
_FITS: dict[frozenset[str], tuple[str, ...]] = {
    frozenset((LENGTH, PIECE)): (CUTS, PIECES),
    frozenset((LENGTH, PIECE, EACH_CUT)): (TIME,),
    frozenset((PIECES,)): (CUTS,),
    frozenset((CUTS,)): (PIECES,),
    frozenset((PIECES, EACH_CUT)): (TIME,),
    frozenset((CUTS, EACH_CUT)): (TIME,),
    frozenset((PIECES, TIME)): (EACH_CUT,),
    frozenset((TIME, EACH_CUT)): (PIECES, CUTS),
    frozenset((PIECES, TIME, WANTED)): (TIME,),
    frozenset((LENGTH, CUTS)): (PIECE,),
    frozenset((PIECE, CUTS)): (LENGTH,),
}


class CutsAndPiecesFields(FamilyFields):
    """`length: 60 m`, `piece: 5 m`, `find: cuts`; `each cut: 2 min` and `find: time`.

    `pieces: 3 pieces`, `time: 4 min`, `wanted: 6 pieces` asks how long cutting into 6 takes.
    `ring: yes` cuts a closed ring, which a first cut only opens.
    """

    length: PositiveAmount | None = None
    piece: PositiveAmount | None = None
    pieces: WholeAmount | None = None
    cuts: WholeAmount | None = None
    each_cut: PositiveAmount | None = Field(default=None, alias="each cut")
    time: PositiveAmount | None = None
    wanted: WholeAmount | None = None
    ring: YesNo = False
    find: Literal["cuts", "pieces", "piece", "length", "time", "each cut"] | None = None


class CutsAndPieces(Family[CutsAndPiecesFields]):
    """pieces = cuts + 1 (a ring: as many); length = pieces × piece; time = cuts × each cut."""

    name = "cuts and pieces"
    fields_model = CutsAndPiecesFields

    def build(self, fields: CutsAndPiecesFields) -> Problem[CutsAndPiecesFields]:
        """The problem; what is not given is asked for."""
        named = {
            LENGTH: fields.length, PIECE: fields.piece, PIECES: fields.pieces, CUTS: fields.cuts,
            EACH_CUT: fields.each_cut, TIME: fields.time, WANTED: fields.wanted,
        }  # fmt: skip
        givens = {name: amount for name, amount in named.items() if amount is not None}
        asked = _asked(fields, givens)
        _check(fields, givens)
        units = MappingProxyType({asked: _unit(asked, fields, givens)})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[CutsAndPiecesFields]) -> Mapping[str, AnswerValue]:
        """The equations of the class, gone through until the unknown is reached."""
        asked = problem.finds[0]
        value = _solved(problem)
        if asked in (CUTS, PIECES):
            _check_whole(problem, value)
            return {asked: problem.answer(asked, value)}
        _check_whole(problem, _solved(problem, PIECES))
        answer = problem.answer(asked, value / problem.units[asked].per_base)
        is_fine = decimal(answer.value) is not None and (answer.value * _FINEST).denominator == 1
        if not is_fine and problem.fields.round_to is None:
            raise AmountError(
                f"'{asked}' would be {write_plain(answer)}",
                "choose numbers that divide exactly, or state a rounding such as "
                "'round to: 1 decimal place'",
            )
        return {asked: answer}

    def strategies(self, problem: Problem[CutsAndPiecesFields]) -> Iterator[Working]:
        """Pieces, then cuts, then what they take; or cut by cut."""
        yield from ways_of(Cutting(problem))

    def mistakes(self, problem: Problem[CutsAndPiecesFields]) -> Iterator[MistakenWorking]:
        """As many cuts as pieces, one more than pieces, and all in proportion."""
        yield from mistakes_of(Cutting(problem))

    def smooth(self, problem: Problem[CutsAndPiecesFields]) -> Mapping[str, AnswerValue]:
        """The answer also where it is not whole, so that the kind shows."""
        asked = problem.finds[0]
        per_base = 1 if asked in (CUTS, PIECES) else problem.units[asked].per_base
        return {asked: problem.answer(asked, _solved(problem) / Fraction(per_base))}

    def reason(self, problem: Problem[CutsAndPiecesFields]) -> Rich | None:
        """Twice as many pieces do not need twice as many cuts."""
        view, given, asked = Cutting(problem), set(problem.givens), problem.finds[0]
        count = _solved(problem, WANTED if WANTED in given else PIECES)
        if given in ({PIECES}, {CUTS}):
            return say(
                "One piece more is just one cut more: {old} need {cuts}, and {new} need {more}.",
                old=view.pieces_of(count),
                cuts=view.cuts_of(count - view.fewer),
                new=view.pieces_of(count + 1),
                more=view.cuts_of(count + 1 - view.fewer),
            )
        # Where cuts (or pieces) are reckoned from cuts (or pieces), everything doubles.
        from_cuts = given in ({CUTS, EACH_CUT}, {TIME, EACH_CUT}) and asked in (CUTS, TIME)
        if view.fewer == 0 or from_cuts or (LENGTH in given and asked == PIECES):
            return None
        return say(
            "Cuts and pieces do not double together: {old} need {cuts}, but {new} need {more}.",
            old=view.pieces_of(count),
            cuts=view.cuts_of(count - 1),
            new=view.pieces_of(2 * count),
            more=view.cuts_of(2 * count - 1),
        )

    def figure(
        self, problem: Problem[CutsAndPiecesFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """What is cut as one bar in equal pieces; a cut stands between each two."""
        return _figure(problem, answers)


def _asked(fields: CutsAndPiecesFields, givens: Mapping[str, Amount]) -> str:
    fits = _FITS.get(frozenset(givens))
    if fits is None and WANTED in givens:
        raise AmountError(
            "'wanted' goes with the pieces and the time of a first cutting",
            "give pieces, time and wanted alone",
        )
    if fits is None:
        raise AmountError(
            "these numbers do not belong together, or they leave nothing to find",
            "give such as length and piece, or pieces and each cut, and what to find",
        )
    if fields.find is not None and fields.find not in fits:
        raise AmountError(f"'{fields.find}' cannot be asked for here", f"write find: {fits[0]}")
    return fields.find or fits[0]


def _check(fields: CutsAndPiecesFields, givens: Mapping[str, Amount]) -> None:
    for pair in ((LENGTH, PIECE), (TIME, EACH_CUT)):
        if alike := [givens[name] for name in pair if name in givens]:
            check_alike(*alike)
    for name in (PIECES, CUTS, WANTED):
        if name in givens and not is_counted(givens[name]):
            raise AmountError(f"'{name}' is a number of things", "write it such as 6 pieces")
    for name in (PIECES, WANTED):
        if name in givens and givens[name].value < 2:
            raise AmountError("one piece needs no cutting", "give at least 2 pieces")
    for name in (TIME, EACH_CUT):
        if name in givens and givens[name].unit.dimension not in (Dimension.TIME, Dimension.MONEY):
            raise AmountError(
                f"'{name}' is a length of time (or a price)", "write it such as 2 min"
            )
    if fields.ring and fields.cuts is not None and fields.cuts.value < 2:
        raise AmountError("one cut only opens a ring", "give at least 2 cuts")


def _unit(asked: str, fields: CutsAndPiecesFields, givens: Mapping[str, Amount]) -> Unit:
    if asked in (CUTS, PIECES):
        one = asked.removesuffix("s")
        return fields.answer_in or noun(one, asked)
    names = (LENGTH, PIECE) if asked in (LENGTH, PIECE) else (TIME, EACH_CUT)
    amount = next(givens[name] for name in names if name in givens)
    if fields.answer_in is not None:
        in_unit(amount, fields.answer_in)
        return fields.answer_in
    return amount.unit


def _solved(problem: Problem[CutsAndPiecesFields], wanted: str = "") -> Fraction:
    """The unknown in base units, by the equations of the family."""
    asked = wanted or problem.finds[0]
    known = {name: amount.base for name, amount in problem.givens.items()}
    fewer = 0 if problem.fields.ring else 1
    if WANTED in known and asked == TIME:
        return known[TIME] / (known[PIECES] - fewer) * (known[WANTED] - fewer)
    if asked in known:
        return known[asked]
    if PIECES in known:
        pieces = known[PIECES]
    elif CUTS in known:
        pieces = known[CUTS] + fewer
    elif LENGTH in known:
        pieces = known[LENGTH] / known[PIECE]
    else:
        pieces = known[TIME] / known[EACH_CUT] + fewer
    cuts = pieces - fewer
    match asked:
        case "pieces":
            return pieces
        case "cuts":
            return cuts
        case "piece":
            return known[LENGTH] / pieces
        case "length":
            return known[PIECE] * pieces
        case "time":
            return known[EACH_CUT] * cuts
        case _:
            return known[TIME] / cuts


def _check_whole(problem: Problem[CutsAndPiecesFields], count: Fraction) -> None:
    """Raises AmountError where the pieces or cuts are not whole, or there are none."""
    if count.denominator == 1 and count > 0 and _solved(problem, PIECES) > 1:
        return
    names = (LENGTH, PIECE) if LENGTH in problem.givens else (TIME, EACH_CUT)
    whole, one = (write_plain(problem.given(name)) for name in names)
    what = "pieces" if LENGTH in problem.givens else "cuts"
    raise AmountError(
        f"{whole} is not a whole number of {what} of {one}", "choose numbers that divide exactly"
    )


def _figure(
    problem: Problem[CutsAndPiecesFields], answers: Mapping[str, AnswerValue]
) -> BarModel | None:
    given = problem.givens
    if {LENGTH, PIECE} <= set(given):
        return _one_piece_marked(problem)
    count = _solved(problem, WANTED if WANTED in given else PIECES)
    if count > _MOST_DRAWN or problem.finds[0] == PIECES:
        return None
    one = answers.get(PIECE) or problem.givens.get(PIECE)
    whole = answers.get(LENGTH) or problem.givens.get(LENGTH)
    mark = total = None
    if isinstance(one, Amount):
        mark = Mark((write(one),), PIECE in problem.givens)
    if isinstance(whole, Amount):
        total = Mark((write(whole),), LENGTH in problem.givens)
    first = Part(Fraction(1), mark)
    parts = (first, *(Part(Fraction(1)) for _ in range(int(count) - 1)))
    return BarModel((Bar("", parts),), (), total)


def _one_piece_marked(problem: Problem[CutsAndPiecesFields]) -> BarModel:
    """One piece marked off on the whole; how many there are is for the pupil to find."""
    length, piece = problem.given(LENGTH), problem.given(PIECE)
    one = Part(piece.base, Mark((write(piece),)))
    rest = Part(length.base - piece.base, dashed=True)
    count = Mark((write(Cutting(problem).pieces_of(_solved(problem, PIECES))),), False)
    pieces = Brace(0, count, 0, 1, below=True)
    return BarModel((Bar("", (one, rest)),), (pieces,), Mark((write(length),)))
