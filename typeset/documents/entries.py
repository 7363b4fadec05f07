"""One problem in the booklet: its story, answer, two ways, model, and mistakes to listen for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.figures import Figure, Show
from typeset.arithmetic.lessons import SolvedExtension, SolvedProblem
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.variation.wishes import Version
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.documents.composer import Composer
from typeset.documents.versions import numbers_of
from typeset.drawing.figures import draw_figure
from typeset.errors import FitError
from typeset.quantities.inline import Rich, Solid, Words, join, words
from typeset.setting.blocks import Block, Column, cell_width_pt, number_label
from typeset.setting.frames import ListPart, Role
from typeset.setting.natural import Natural
from typeset.setting.pieces import (
    Columns,
    DrawingPiece,
    Indented,
    Listed,
    Piece,
    hanging,
    stack,
    text,
)
from typeset.setting.stretch import TOLERANCE_PT
from typeset.setting.workings import WorkingStep, working

_WAY_KEYS = ("one way", "another way", "another way")
_FIGURE_WIDTH_EMS = 26.0


@dataclass(frozen=True, slots=True)
class Entry:
    """A problem with what its stage adds: the verdict of sorting, or the mistake to spot."""

    problem: SolvedProblem
    is_sorted: bool = False
    spotted: tuple[Rich, ...] = ()
    spotted_name: str = ""
    # The same question in other versions, where its answers differ.
    elsewhere: tuple[tuple[Version, SolvedProblem], ...] = ()


def entry_blocks(composer: Composer, entry: Entry, column: Column) -> Iterator[Block]:
    """The entry: first what answers the question, then what helps with it.

    The two stay on one page, if one holds them.
    """
    problem = entry.problem
    source = problem.content.id
    label = number_label(str(problem.number), column.style, Role.QUESTION, source)
    indent = max(column.spacing.hang * column.style.size_pt, label.width_pt)
    inner = column.narrowed(column.width_pt - indent)
    gap = column.gap(column.spacing.inner)
    answered = stack(tuple(_answer_pieces(composer, entry, inner)), gap)
    before = column.gap(column.spacing.question)
    helping = _help(composer, entry, inner)
    yield Block(
        f"the answer to question {problem.number}",
        hanging(label, answered, indent),
        before,
        keep_with_next=helping is not None and not composer.layout.booklet.may_part,
        may_part=True,
    )
    if helping is not None:
        yield Block(
            f"the help with question {problem.number}",
            Indented(Listed(helping, ListPart.BODY), indent),
            column.gap(column.spacing.paragraph),
        )


def extension_blocks(composer: Composer, stage: SolvedExtension, column: Column) -> Iterator[Block]:
    """The open task with its hints in order, then what to look for."""
    source, style = stage.content.id, column.style
    label = number_label(str(stage.number), style, Role.QUESTION, source)
    indent = max(column.spacing.hang * style.size_pt, label.width_pt)
    inner = column.narrowed(column.width_pt - indent)
    pieces: list[Piece] = []
    if composer.layout.booklet.stories:
        pieces.append(text(stage.story, style, inner.text_pt, Role.QUESTION, source))
    if stage.hints:
        marks = [str(index) for index in range(1, len(stage.hints) + 1)]
        pieces += _listing(composer, "hints", stage.hints, marks, inner, source)
    body = stack(pieces, column.gap(column.spacing.inner))
    yield Block(
        f"the notes on question {stage.number}",
        hanging(label, body, indent),
        column.gap(column.spacing.question),
        keep_with_next=bool(stage.look_for) and not composer.layout.booklet.may_part,
        may_part=True,
    )
    if stage.look_for:
        marks = ["•"] * len(stage.look_for)
        notes = _listing(composer, "look for", stage.look_for, marks, inner, source)
        body = stack(notes, column.gap(column.spacing.inner))
        gap = column.gap(column.spacing.inner)
        within = Indented(Listed(body, ListPart.BODY), indent)
        yield Block(f"what to look for in question {stage.number}", within, gap)


def _listing(
    composer: Composer,
    key: str,
    texts: Sequence[Rich],
    marks: Sequence[str],
    column: Column,
    source: str,
) -> list[Piece]:
    """A heading, and the texts under it, each with its mark."""
    style = column.style
    return [
        text(_bold(composer, key), style, column.width_pt, Role.TEXT, source),
        *(_listed(m, each, column, source) for m, each in zip(marks, texts, strict=True)),
    ]


def _listed(mark: str, rich: Rich, column: Column, source: str) -> Piece:
    label = number_label(mark, column.style, Role.TEXT, source)
    indent = 1.4 * column.style.size_pt
    return hanging(
        label, text(rich, column.style, column.width_pt - indent, Role.TEXT, source), indent
    )


def _bold(composer: Composer, key: str) -> Rich:
    return words(composer.say("booklet", key), bold=True)


def _answer_pieces(composer: Composer, entry: Entry, column: Column) -> Iterator[Piece]:
    """Story, answer, verdict or mistake, and the two ways."""
    problem, style, width = entry.problem, column.style, column.text_pt
    source = problem.content.id
    if composer.layout.booklet.stories:
        yield text(problem.story, style, width, Role.QUESTION, source)
    yield text(_answers(composer, problem), style, width, Role.ANSWER, source)
    for version, twin in entry.elsewhere:
        yield text(_version_answer(composer, version, twin), style, width, Role.ANSWER, source)
    if entry.is_sorted:
        yield text(_verdict(composer, problem), style, width, Role.ANSWER, source)
    if entry.spotted:
        mistake = (*_bold(composer, "the mistake"), *words(f": {entry.spotted_name}. "))
        whole = join([mistake, *entry.spotted], " ")
        yield text(whole, style, width, Role.ANSWER, source)
    if model := _model_beside(composer, problem, column):
        cell = column.narrowed(cell_width_pt(2, column))
        easiest = problem.solution.workings[:1]
        (way,) = _way_cells(composer, easiest, cell, problem, folds=True)
        yield Columns((way, model), column.spacing.column * style.size_pt)
    else:
        yield _ways(composer, problem, column)


def _model_beside(composer: Composer, problem: SolvedProblem, column: Column) -> Piece | None:
    """The model for a place right of the only way that is told; None where another way or
    mistakes take that place, or where it is too wide for it."""
    told, figure = composer.layout.booklet, problem.solution.figure
    if figure is None or not told.models or told.ways > 1 or told.mistakes:
        return None
    width, source = cell_width_pt(2, column), problem.content.id
    model = _model(figure, source, column, beside=True)
    return model if model.width_pt <= width + TOLERANCE_PT else None


def _help(composer: Composer, entry: Entry, column: Column) -> Piece | None:
    """The model at the left, the mistakes to listen for beside it; None where there is neither."""
    problem, told = entry.problem, composer.layout.booklet
    mistakes = () if entry.spotted else problem.solution.mistakes[: told.mistakes]
    stands_beside = _model_beside(composer, problem, column) is not None
    figure = problem.solution.figure if told.models and not stands_beside else None
    if figure is None:
        return _listening(composer, mistakes, column, problem.content.id) if mistakes else None
    model = _model(figure, problem.content.id, column, beside=bool(mistakes))
    if not mistakes:
        return model
    beside = _listening_beside(composer, mistakes, model, column, problem.content.id)
    if beside is not None:
        return beside
    listening = _listening(composer, mistakes, column, problem.content.id)
    return stack((model, listening), column.gap(column.spacing.inner))


def _listening_beside(
    composer: Composer,
    mistakes: Sequence[MistakenWorking],
    model: Piece,
    column: Column,
    source: str,
) -> Piece | None:
    """The mistakes at the right of the model; None where too little room is left for them."""
    gap = column.spacing.column * column.style.size_pt
    rest = column.width_pt - model.width_pt - gap
    if rest < cell_width_pt(2, column) - gap:
        return None
    try:
        listening = _listening(composer, mistakes, column.narrowed(rest), source)
    except FitError:
        # A number with a long unit may be wider than what is left.
        return None
    return Columns((model, listening), gap)


def _model(figure: Figure, source: str, column: Column, beside: bool) -> Piece:
    """The model with its answers, half as wide as the column; wider where its labels need it."""
    size = column.style.size_pt
    half = cell_width_pt(2, column) if beside else column.width_pt
    try:
        drawing = draw_figure(figure, Show.COMPLETE, min(half, _FIGURE_WIDTH_EMS * size), size)
    except FitError:
        drawing = draw_figure(figure, Show.COMPLETE, column.width_pt, size)
    return DrawingPiece(drawing, Role.FIGURE, source)


def _answers(composer: Composer, problem: SolvedProblem) -> Rich:
    """'Answer: 60 gulls', or each answer under its name where several are asked for."""
    answers = problem.solution.answers
    label = composer.say("booklet", "answer")
    if len(answers) == 1:
        (value,) = answers.values()
        return (*words(f"{label}: ", bold=True), *_made_bold(answer_text(value)))
    told = [
        (*words(f"{name}: ", bold=True), *_made_bold(answer_text(value)))
        for name, value in answers.items()
    ]
    return (*words(f"{label}: ", bold=True), *join(told, "; "))


def _version_answer(composer: Composer, version: Version, twin: SolvedProblem) -> Rich:
    """'tern (3 gulls, 24 terns): 8 gulls': the version's numbers and its answer."""
    return composer.rich_with(
        "booklet",
        "version answer",
        version=composer.say("versions", version.value),
        numbers=numbers_of(twin),
        answer=all_answers(twin),
    )


def all_answers(problem: SolvedProblem) -> Rich:
    """'24 terns', or each answer under its name where several are asked for."""
    answers = problem.solution.answers
    if len(answers) == 1:
        return answer_text(next(iter(answers.values())))
    return join(
        [(*words(f"{name}: "), *answer_text(value)) for name, value in answers.items()], "; "
    )


def _made_bold(rich: Rich) -> Rich:
    return tuple(
        replace(item, bold=True) if isinstance(item, Words | Solid) else item for item in rich
    )


def _verdict(composer: Composer, problem: SolvedProblem) -> Rich:
    """The group it sorts into, and how one knows."""
    kind = problem.solution.kind
    decision = composer.say("choices", kind.decision.name.lower())
    verdict = composer.say("booklet", "sorted", decision=decision)
    why = composer.say("booklet", "why")
    return (*words(f"{verdict} ", bold=True), *words(f"{why} "), *kind.reason)


def _ways(composer: Composer, problem: SolvedProblem, column: Column) -> Piece:
    """The easiest workings side by side; one under the other where that is too narrow."""
    ways = problem.solution.workings[: composer.layout.booklet.ways]
    count = max(2, len(ways))
    try:
        cells = _way_cells(composer, ways, column.narrowed(cell_width_pt(count, column)), problem)
        return Columns(tuple(cells), column.spacing.column * column.style.size_pt)
    except FitError:
        cells = _way_cells(composer, ways, column, problem, folds=True)
        return stack(cells, column.gap(column.spacing.inner))


def _way_cells(
    composer: Composer,
    ways: Sequence[Working],
    column: Column,
    problem: SolvedProblem,
    folds: bool = False,
) -> list[Piece]:
    titles = (
        composer.say("booklet", key, strategy=_lowered(way.strategy))
        for way, key in zip(ways, _WAY_KEYS, strict=False)
    )
    return [
        _way(way, title, column, problem.content.id, folds)
        for way, title in zip(ways, titles, strict=False)
    ]


def _way(way: Working, told: str, column: Column, source: str, folds: bool) -> Piece:
    """The title and the steps of a way; with `folds` a sum too long for the column goes on
    under itself."""
    style, width = column.style, column.width_pt
    steps = [
        WorkingStep(step.sentence, step.equation.written() if step.equation else None)
        for step in way.steps
    ]
    pieces = (
        text(words(told, bold=True), style, width, Role.WORKING, source),
        working(steps, style, width, Role.WORKING, source, folds),
    )
    return Natural(stack(pieces, column.gap(column.spacing.inner)))


def _lowered(strategy: str) -> str:
    return strategy[:1].lower() + strategy[1:]


def _listening(
    composer: Composer, mistakes: Sequence[MistakenWorking], column: Column, source: str
) -> Piece:
    """The mistakes to listen for: the wrong answer, what it shows, what to ask."""
    told: list[Piece] = [
        text(_bold(composer, "listen for"), column.style, column.width_pt, Role.TEXT, source)
    ]
    for mistake in mistakes:
        known = MISCONCEPTIONS[mistake.misconception]
        wrong = join([answer_text(value) for value in mistake.answers.values()], ", ")
        line = composer.rich_with(
            "booklet", "mistake line", wrong=wrong, shows=known.shows, prompt=known.prompt
        )
        told.append(_listed("•", line, column, source))
    return Natural(stack(told, column.gap(column.spacing.inner)))
