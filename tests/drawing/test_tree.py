"""Branching trees: one leaf for each combination, and a large tree told in part."""

from __future__ import annotations

from itertools import product

from typeset.arithmetic.figures import BranchingTree, Choice, Mark, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Rule, TextRun
from typeset.quantities.inline import words

SAILS = Choice("sail", ("red", "white", "blue"))
FLAGS = Choice("flag", ("striped", "plain"))
TAILS = Choice("tail", ("long", "short"))


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]


def test_a_small_tree_has_a_leaf_for_every_combination() -> None:
    """The combinations are counted by itertools.product."""
    total = Mark(words("12 kites"), is_given=False)
    drawing = draw_figure(BranchingTree((SAILS, FLAGS, TAILS), total), Show.COMPLETE, 400.0, 12.0)
    ways = list(product(SAILS.options, FLAGS.options, TAILS.options))
    seen = texts(drawing)
    for option in TAILS.options:
        assert seen.count(option) == sum(way[2] == option for way in ways) == 6
    for option in FLAGS.options:
        assert seen.count(option) == len(SAILS.options)
    # One branch leads to every node; they are the lines that end left of a label.
    branches = [s for s in drawing.shapes if isinstance(s, Rule) and s.y1_pt != s.y2_pt]
    straight = 3  # a middle branch may be level: one at each level of this tree at most
    assert 3 + 6 + 12 - straight <= len(branches) <= 3 + 6 + 12
    assert "12 kites" in seen


def test_the_first_step_grows_one_branch() -> None:
    tree = BranchingTree((SAILS, FLAGS), Mark(words("6"), is_given=False))
    seen = texts(draw_figure(tree, Show.FIRST_STEP, 400.0, 12.0))
    assert seen.count("striped") == 1
    assert {"red", "white", "blue", "?"} <= set(seen)


def test_a_large_tree_grows_its_first_branch_and_tells_the_others() -> None:
    stalls = Choice("stall", ("chowder", "crab", "herring", "mussels"))
    drinks = Choice("drink", ("tea", "water", "milk", "cordial"))
    drawing = draw_figure(BranchingTree((stalls, drinks)), Show.COMPLETE, 400.0, 12.0)
    seen = texts(drawing)
    assert "and so on for each of crab, herring and mussels" in seen
    assert seen.count("tea") == 1
    assert "crab" not in seen


def test_many_leaves_are_told_to_the_last() -> None:
    numbers = Choice("number", tuple("0123456789"))
    drawing = draw_figure(BranchingTree((numbers, numbers)), Show.COMPLETE, 400.0, 12.0)
    assert "and so on to 9" in texts(drawing)
    assert "and so on for each of the other 9" in texts(drawing)


def test_the_empty_frame_has_lines_to_write_on() -> None:
    frame = draw_figure(BranchingTree((SAILS, FLAGS)), Show.FRAME, 400.0, 12.0)
    assert texts(frame) == ["sail", "flag"]
    blanks = [s for s in frame.shapes if isinstance(s, Rule) and s.y1_pt == s.y2_pt]
    assert len([blank for blank in blanks if blank.x2_pt - blank.x1_pt >= 50]) == 3
