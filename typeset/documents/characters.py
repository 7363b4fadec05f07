"""Characters that the typeface lacks, told with the place where they were typed."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, problems_of
from typeset.errors import GlyphError, Place
from typeset.quantities.inline import Rich, words
from typeset.setting.paragraphs import TextStyle, natural_width_pt

# Which characters a typeface holds does not depend on its size.
_ANY = TextStyle(12.0)


def check_characters(lesson: SolvedLesson) -> None:
    """Raises GlyphError with a line for every text of the lesson that cannot be drawn."""
    found: list[str] = []
    for place, text in _texts(lesson):
        try:
            natural_width_pt(text, _ANY)
        except GlyphError as error:
            found.append(f"{place}: {error}")
    if found:
        raise GlyphError("\n".join(found))


def _texts(lesson: SolvedLesson) -> Iterator[tuple[Place, Rich]]:
    """What the author typed, in the order of the file, with where it begins."""
    content = lesson.lesson
    yield content.place, words(f"{content.title} {content.aim}")
    for stage in lesson.stages:
        for problem in problems_of(stage):
            yield problem.content.story.place, problem.story
            if problem.content.starter:
                yield problem.content.place, words(problem.content.starter)
            if problem.hint is not None and problem.content.hint is not None:
                yield problem.content.hint.place, problem.hint
        if isinstance(stage, SolvedExtension):
            yield stage.content.place, words(stage.content.title)
            yield stage.content.story.place, stage.story
            for typed, told in (
                *zip(stage.content.hints, stage.hints, strict=True),
                *zip(stage.content.look_for, stage.look_for, strict=True),
            ):
                yield typed.place, told
