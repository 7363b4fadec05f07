"""Which numbers a story prints: the names in its braces, against the problem's own amounts."""

from __future__ import annotations

import re
from collections.abc import Iterator

from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.lessons import SolvedProblem
from typeset.proofing.expected import Part, Passage, passage, with_values
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.writing import write

_NAME = re.compile(r"\{([^{}]*)\}")


def story_passage(problem: SolvedProblem, about: str) -> Passage:
    """The story of the problem with the values that it prints."""
    story, content = problem.story, problem.content
    given = passage(about, Part.STORY, story, content.story.place, keeps=about)
    return with_values(given, story, list(_amounts(problem)))


def _amounts(problem: SolvedProblem) -> Iterator[Amount | None]:
    """What the items of the story print that are not running words, in order."""
    solved, content = problem.solution.problem, problem.content
    quotes = FAMILIES[content.structure].quotes(solved)
    for name in names_in(content.story.template):
        if name in quotes:
            yield from quotes[name].amounts
        else:
            yield solved.givens.get(name)


def names_in(template: str) -> Iterator[str]:
    """The names in the braces of a story, in order."""
    return (" ".join(braced.split()) for braced in _NAME.findall(template))


def amounts_told(problem: SolvedProblem) -> Iterator[Rich]:
    """What the story prints at the names in its braces, in order."""
    solved, content = problem.solution.problem, problem.content
    quotes = FAMILIES[content.structure].quotes(solved)
    for name in names_in(content.story.template):
        if name in quotes:
            yield quotes[name].text
        elif name in solved.givens:
            yield (write(solved.givens[name]),)
