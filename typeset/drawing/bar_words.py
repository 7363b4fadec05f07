"""A bar model told in words, for a listener and for a screen reader.

Nothing is told that the state of the figure does not show.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part, Show
from typeset.drawing.labels import shown_text
from typeset.quantities.inline import plain


def seen_words(mark: Mark | None, show: Show) -> str | None:
    """The text of a mark as far as this state shows it."""
    seen = shown_text(mark, show)
    return None if seen is None else plain(seen[0])


def bar_model_words(model: BarModel, show: Show) -> str:
    """The alternative text. The model's own sentence comes first for the complete figure."""
    names = ", ".join(bar.name for bar in model.bars if bar.name)
    if show is Show.FRAME:
        return f"Empty bar model to draw in: {names}" if names else "Empty bar model to draw in"
    told = [_bar_words(bar, show) for bar in model.bars]
    told += [_brace_words(model, brace, show) for brace in model.braces]
    total = seen_words(model.total, show)
    if total is not None:
        told.append(f"altogether {total}")
    own = f"{model.reads_as} " if show is Show.COMPLETE and model.reads_as else ""
    return f"{own}Bar model: {'; '.join(clause for clause in told if clause)}"


def _bar_words(bar: Bar, show: Show) -> str:
    name = f"{bar.name}, " if bar.name else ""
    return name + ", ".join(_run_words(bar, show))


def _run_words(bar: Bar, show: Show) -> Iterator[str]:
    """Neighbouring parts of one size and text are told together."""

    def looks(part: Part) -> tuple[object, ...]:
        return part.size, seen_words(part.mark, show), part.dashed

    for (_size, text, dashed), run in groupby(bar.parts, key=looks):
        count = len(list(run))
        parts = f"{count} equal parts" if count > 1 else "one part"
        parts += ", dashed" if dashed else ""
        each = " each" if count > 1 else ""
        yield f"{parts}{each} {text}" if text is not None else parts


def _brace_words(model: BarModel, brace: Brace, show: Show) -> str:
    text = seen_words(brace.mark, show)
    if text is None:
        return ""
    bar = model.bars[brace.bar]
    if brace.gap_to is not None:
        one, other = bar.name or "the bar", model.bars[brace.gap_to].name or "the other bar"
        return f"the difference of {one} and {other} is {text}"
    owner = f" of {bar.name}" if bar.name and len(model.bars) > 1 else ""
    count = brace.last - brace.first + 1
    if count == len(bar.parts):
        return f"all{owner} is {text}"
    if count == 1:
        return f"part {brace.first + 1}{owner} is {text}"
    return f"parts {brace.first + 1} to {brace.last + 1}{owner} are {text}"
