"""The room that a question gives: what the author asks for, or what its stage is used to."""

from __future__ import annotations

from dataclasses import replace
from math import ceil

from typeset.arithmetic.answers import AnswerValue, WithRemainder
from typeset.arithmetic.lessons import SolvedProblem
from typeset.documents.composer import Composer
from typeset.drawing.shapes import Drawing
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, words
from typeset.quantities.units import Dimension
from typeset.reading.content import Space
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind

_KINDS = {
    Space.LINE: SpaceKind.LINE,
    Space.WORKING: SpaceKind.WORKING,
    Space.LINES: SpaceKind.LINES,
    Space.SQUARES: SpaceKind.SQUARES,
    Space.MODEL: SpaceKind.BAR_MODEL,
    Space.BOX: SpaceKind.LINE,
}
# How much further than its least a room may grow, in lines, to fill a side.
_MORE_NATURAL = 1
_MORE_GREATEST = 4


def answer_space_of(
    composer: Composer, problem: SolvedProblem, usual: Space, started: Drawing | None = None
) -> AnswerSpace | None:
    """The space for the answers of a problem; None where the author wants none."""
    space = problem.content.space or usual
    if space is Space.NONE:
        return None
    rows = rows_of(composer, space, problem.content.lines)
    if starts_sentence(problem, space):
        # The sentence that is begun is the first line of the working.
        rows = Rows(max(1, rows.least - 1), max(1, rows.natural - 1), rows.greatest - 1)
    return room_of(
        composer,
        _KINDS[space],
        rows,
        _answer_lines(composer, problem, boxed=space is Space.BOX),
        started,
    )


def starts_sentence(problem: SolvedProblem, space: Space) -> bool:
    """True where the pupil's first sentence is begun: in room to work in."""
    return problem.content.starter is not None and space is Space.WORKING


def starter_of(composer: Composer, problem: SolvedProblem, usual: Space) -> AnswerSpace | None:
    """The sentence to finish before the room, where there is one."""
    if not starts_sentence(problem, problem.content.space or usual):
        return None
    own = problem.content.starter
    label = words(own) if own else composer.rich("sheet", "starter")
    line = room_of(
        composer, SpaceKind.LINE, Rows(), (AnswerLine(label=label, long=True, name="start"),)
    )
    # It takes the place of a line of the room, so it is no lower than one.
    return replace(line, line_mm=max(line.line_mm, line.ruled_mm))


def room_of(
    composer: Composer,
    kind: SpaceKind,
    rows: Rows,
    answers: tuple[AnswerLine, ...],
    started: Drawing | None = None,
) -> AnswerSpace:
    """A space by the measures of the layout."""
    spaces = composer.layout.answer_spaces
    return AnswerSpace(
        kind,
        rows,
        answers,
        square_mm=spaces.square_mm,
        ruled_mm=spaces.ruled_mm,
        line_mm=spaces.line_mm,
        started=started,
    )


def rows_of(composer: Composer, space: Space, lines: int | None) -> Rows:
    """At least the lines asked for, or the layout's least.

    An author counts in lines of the usual height; where the layout's are higher, no room need
    take more than a good part of a side.
    """
    spaces = composer.layout.answer_spaces
    least = spaces.least_lines(lines, composer.layout.page.height_mm)
    if space is Space.MODEL and lines is None:
        least = max(1, ceil(spaces.bar_model_mm / spaces.ruled_mm))
    return Rows(least, least + _MORE_NATURAL, least + _MORE_GREATEST)


def _answer_lines(
    composer: Composer, problem: SolvedProblem, boxed: bool
) -> tuple[AnswerLine, ...]:
    answers = problem.solution.answers
    return tuple(
        AnswerLine(
            label=_label(composer, name, len(answers)),
            before=words("£") if _is_pounds(answer) else (),
            after=_unit_after(answer),
            boxed=boxed,
        )
        for name, answer in answers.items()
    )


def _label(composer: Composer, name: str, count: int) -> Rich:
    """'Answer', or the name of what is asked for where several are."""
    if count == 1:
        return composer.rich("sheet", "answer")
    return words(name[:1].upper() + name[1:])


def _is_pounds(answer: AnswerValue) -> bool:
    return isinstance(answer, Amount) and _is_money(answer) and not _is_pence(answer)


def _is_money(answer: Amount) -> bool:
    return answer.unit.dimension is Dimension.MONEY


def _is_pence(answer: Amount) -> bool:
    return answer.value < 1


def _unit_after(answer: AnswerValue) -> Rich:
    """The unit printed after the rule, always of many, so that it gives nothing away."""
    match answer:
        case Amount() if _is_money(answer):
            return words("p") if _is_pence(answer) else ()
        case Amount(unit=unit):
            return words(unit.plural) if unit.plural else ()
        case WithRemainder(groups=groups):
            return words(f"{groups.unit.plural} and some left over") if groups.unit.plural else ()
        case _:
            return ()
