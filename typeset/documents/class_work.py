"""What each pupil of a class list gets: whose sheet, in which version and layout."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.layout import Layout
from typeset.reading.class_list import Pupil


@dataclass(frozen=True, slots=True)
class PupilsSheet:
    """One pupil's sheet of a lesson. `solved` is the week in the pupil's version and numbers."""

    pupil: Pupil
    solved: SolvedWeek
    lesson: SolvedLesson
    layout: Layout


def paper_key(layout: Layout) -> tuple[str, float, float, str]:
    """What sheets must have in common to be printed in one go: the paper, how it lies, and the
    edge that it is turned over."""
    paper = layout.paper
    return paper.name, paper.width_mm, paper.height_mm, layout.backs


def lying(layout: Layout) -> Layout:
    """The same with its paper in landscape, one copy: room for a wide table."""
    return layout.model_copy(update={"copies": 1, "orientation": "landscape"})
