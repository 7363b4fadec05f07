"""What a document is proofed against."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from typeset.arithmetic.lessons import SolvedLesson
from typeset.documents.layout import Layout
from typeset.proofing.expected import Expected
from typeset.proofing.file_check import FileFacts
from typeset.proofing.papers import Papers, Whole
from typeset.proofing.promises import Promise


@dataclass(frozen=True, slots=True)
class Order:
    """All that must be true of a document. `layout` is that of one page of it.

    `least_pt` is the smallest body type; `sides` is None where any number will do.
    """

    name: str
    expected: Expected
    facts: FileFacts
    layout: Layout
    least_pt: float
    sides: int | None = None
    promises: tuple[Promise, ...] = ()
    nouns: Mapping[str, str] = field(default_factory=dict)
    papers: Papers | None = None
    has_columns: bool = False
    # Where the pages are a part of a document whose feet count all: so many stand before them,
    # of so many; 0 where they are the whole.
    pages_before: int = 0
    pages_in_all: int = 0
    # True where what is of the whole file is looked at by itself (see parts.py).
    is_part: bool = False
    # The size that the stories stand in, where it is known; else it is that of most of them.
    story_pt: float | None = None

    @property
    def lies_on(self) -> Papers:
        """How the pages lie on the papers: one a side, unless something else is said."""
        return self.papers or Whole(self.layout)


def nouns_of(lessons: Iterable[SolvedLesson]) -> dict[str, str]:
    """The authors' own singulars and plurals."""
    return {
        singular: plural
        for lesson in lessons
        for problem in lesson.problems()
        for singular, plural in problem.content.nouns.items()
    }
