"""Problems that pupils make up: what they are given to choose from."""

from __future__ import annotations

from typeset.reading.content import OwnProblems
from typeset.reading.keys import opened
from typeset.reading.problems import Desk
from typeset.reading.tree import Node

USUAL_FRAMES = 2
# Two to a side, on at most two sheets of paper: nobody makes up more in a lesson.
MOST_FRAMES = 8


def read_own_problems(node: Node, desk: Desk) -> OwnProblems | None:
    """What stands after 'own problems'; what is wrong is added to the desk's complaints."""
    keys = opened(node, "'own problems'", desk.complaints)
    if keys is None:
        return None
    keys.expect(("title", "story", "quantities"), ("frames", "id"))
    return OwnProblems(
        id=desk.take_id(keys, f"{desk.lesson}-own-problems"),
        title=keys.text("title"),
        story=keys.story("story"),
        fields=keys.node.only(("quantities",)),
        frames=keys.whole_number("frames", 1, MOST_FRAMES) or USUAL_FRAMES,
        nouns=desk.nouns,
        place=keys.node.place,
    )
