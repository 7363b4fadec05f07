"""Problems as typed: the keys that all of them share; the rest belongs to their structure."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from typeset.errors import Complaint, Place
from typeset.reading.complaints import shown
from typeset.reading.content import OtherNumbers, ProblemContent, Space
from typeset.reading.keys import Keys, opened
from typeset.reading.tree import Node, Scalar

COMMON_KEYS = (
    *("id", "structure", "story", "space", "lines", "model", "hint", "starter"),
    *("such that", "support", "stretch"),
)
# What every version of a problem has in common.
_SAME_IN_ALL = ("id", "structure", "space", "lines", "model", "support", "stretch")
# More conditions than this nobody can keep in mind.
_MOST_CONDITIONS = 12
SPACES = tuple(space.value for space in Space)
# More ruled lines than a side of A4 holds at any size we set.
MOST_LINES = 40
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,39}", re.ASCII)


@dataclass(slots=True)
class Desk:
    """What is at hand while one lesson is read: its name, its week's words, its complaints."""

    lesson: str
    nouns: Mapping[str, str]
    # The lessons before this one; None where the week is not known.
    earlier: tuple[str, ...] | None
    complaints: list[Complaint]
    problem_count: int = 0
    ids: dict[str, Place] = field(default_factory=dict)

    def take_id(self, keys: Keys, default: str) -> str:
        """The id that the author gave, or the default; complains of a bad or repeated one."""
        given = keys.text("id")
        place = keys.place("id")
        if given and not _ID.fullmatch(given):
            remedy = "use up to 40 letters, digits and hyphens"
            self.complaints.append(Complaint(place, f"{shown(given)} cannot be an id", remedy))
        chosen = given or default
        if chosen in self.ids:
            line = self.ids[chosen].line
            problem = f"the id '{chosen}' stands twice; it is first in line {line}"
            self.complaints.append(Complaint(place, problem, "give one of them another id"))
        self.ids.setdefault(chosen, place)
        return chosen


def read_problems(keys: Keys, desk: Desk) -> tuple[ProblemContent, ...]:
    """The problems of the list `problems`, in order."""
    read = (read_problem(item, desk) for item in keys.items("problems"))
    return tuple(problem for problem in read if problem is not None)


def read_problem(node: Node, desk: Desk) -> ProblemContent | None:
    """One problem, or None where it is no problem at all. Keys of its structure stay untouched."""
    desk.problem_count += 1
    keys = opened(node, "a problem", desk.complaints)
    if keys is None:
        return None
    slips = keys.expect_among_others(("structure", "story"))
    return ProblemContent(
        id=desk.take_id(keys, f"{desk.lesson}-{desk.problem_count}"),
        structure=keys.text("structure"),
        story=keys.story("story"),
        fields=keys.node.without((*COMMON_KEYS, *slips)),
        place=keys.node.place,
        nouns=desk.nouns,
        space=read_space(keys),
        lines=keys.whole_number("lines", 1, MOST_LINES),
        show_model=keys.yes("model"),
        hint=keys.story("hint") if keys.node.get("hint") else None,
        starter=keys.text("starter") or None,
        structure_place=keys.place("structure"),
        such_that=read_conditions(keys),
        support=_read_other_numbers(keys, "support"),
        stretch=_read_other_numbers(keys, "stretch"),
        has_own_id=keys.node.get("id") is not None,
    )


def read_conditions(keys: Keys) -> tuple[Scalar, ...]:
    """The phrases after 'such that', one or a list."""
    phrases = keys.texts("such that") if keys.node.get("such that") else ()
    if len(phrases) > _MOST_CONDITIONS:
        problem = f"'such that' has more than {_MOST_CONDITIONS} conditions"
        keys.complaints.append(Complaint(keys.place("such that"), problem, "take some off"))
    return phrases


def _read_other_numbers(keys: Keys, version: str) -> OtherNumbers | None:
    """What stands after 'support' or 'stretch': new values of the problem's own keys."""
    node = keys.node.get(version)
    if node is None:
        return None
    inner = opened(node, f"'{version}'", keys.complaints)
    if inner is None:
        return None
    for entry in inner.node:
        if entry.key in _SAME_IN_ALL:
            problem = f"'{entry.key}' cannot be another one in '{version}'"
            remedy = "give only numbers, a story or conditions that are other ones"
            keys.complaints.append(Complaint(entry.place, problem, remedy))
    return OtherNumbers(
        fields=inner.node.without((*_SAME_IN_ALL, "such that", "story", "hint")),
        place=inner.node.place,
        such_that=read_conditions(inner),
        story=inner.story("story") if inner.node.get("story") else None,
        hint=inner.story("hint") if inner.node.get("hint") else None,
    )


def read_space(keys: Keys) -> Space | None:
    """What the pupil is given to answer in; None leaves it to the layout."""
    word = keys.word("space", SPACES)
    return Space(word) if word else None
