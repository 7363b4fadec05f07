"""Which numbers a story prints: the names in its braces, against the problem's own amounts."""

from __future__ import annotations

import re

from typeset.arithmetic.lessons import SolvedProblem
from typeset.proofing.expected import Part, Passage, passage, with_values

_NAME = re.compile(r"\{([^{}]*)\}")


def story_passage(problem: SolvedProblem, about: str) -> Passage:
    """The story of the problem with the values that it prints."""
    story, content = problem.story, problem.content
    given = passage(about, Part.STORY, story, content.story.place, keeps=about)
    names = (" ".join(name.split()) for name in _NAME.findall(content.story.template))
    givens = problem.solution.problem.givens
    return with_values(given, story, [givens.get(name) for name in names])
