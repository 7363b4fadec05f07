"""What lessons need care with: every word must have a text in the layout's letter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.documents.layout import Layout
from typeset.errors import Complaint, ContentError
from typeset.reading.complaints import nearest, shown
from typeset.reading.content import Extension, Lesson, Week
from typeset.reading.tree import Scalar


def check_cautions(week: Week, layouts: Sequence[Layout]) -> None:
    """Raises ContentError with a complaint for every word that a layout has no text for."""
    complaints: list[Complaint] = []
    for layout in layouts:
        known = tuple(layout.wording["cautions"])
        for word in (each for lesson in week.lessons for each in cautions_of(lesson)):
            if word.text not in known:
                problem = f"the layout '{layout.name}' has no caution called {shown(word.text)}"
                complaints.append(Complaint(word.place, problem, nearest(word.text, known)))
    if complaints:
        raise ContentError(complaints)


def cautions_of(lesson: Lesson) -> Iterator[Scalar]:
    """All that a lesson and its open tasks name, each with its place."""
    yield from lesson.cautions
    for stage in lesson.stages:
        if isinstance(stage, Extension):
            yield from stage.cautions
