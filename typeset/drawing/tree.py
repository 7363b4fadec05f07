"""Branching trees of choices, from left to right; a large tree is drawn in part and told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import prod

from typeset.arithmetic.figures import BranchingTree, Choice, Show
from typeset.drawing.figure_words import tree_words
from typeset.drawing.labels import Label, longest_word_pt, mark_label, wrapped_label
from typeset.drawing.pens import FINE_PT, dot, rule
from typeset.drawing.shapes import Drawing, Face
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.drawing.symbols import text_width_pt
from typeset.errors import FitError

# More leaves than this are not counted by eye; the first branch then stands for the others.
_MOST_LEAVES = 12
_MOST_OPTIONS = 6
_BRANCH_PT = 26.0
_SHORT_BRANCH_PT = 13.0
_STUB_PT = 3.0
_ROW_GAP_PT = 3.0
# A line to write a choice on.
_BLANK_EMS = 4.5
_WRITING_PT = 20.0


@dataclass(slots=True)
class _Node:
    """An option at its level, with the options that follow; or words that tell the rest."""

    level: int
    label: Label
    children: list[_Node]
    is_told: bool = False
    y_pt: float = 0.0


def draw_tree(tree: BranchingTree, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The tree with the name of each choice over its level. Raises FitError, GlyphError."""
    return largest_that_fits(lambda size: _tree(tree, show, width_pt, size), size_pt)


def _tree(tree: BranchingTree, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    columns = _columns(tree, width_pt, size_pt)
    heads = _put_heads(sketch, tree, columns, size_pt)
    if show is Show.FRAME:
        bottom = _draw_blanks(sketch, tree.choices[0], columns[0], heads, size_pt)
        sketch.room_to(bottom + _WRITING_PT * 2)
        return sketch.finished(tree_words(tree, show))
    nodes = list(_grown(_Growth(tree, show, columns, width_pt, size_pt), 0, ()))
    bottom = _settle(nodes, heads)
    _draw_branches(sketch, (_STUB_PT, _middle(nodes)), nodes, columns)
    total = mark_label(tree.total, show, size_pt)
    if total is not None:
        sketch.put(total, columns[-1][0], bottom + _ROW_GAP_PT)
    return sketch.finished(tree_words(tree, show))


def _columns(tree: BranchingTree, width_pt: float, size_pt: float) -> list[tuple[float, float]]:
    """The left edge and width of each level; names wrap where all cannot have their length, and
    branches are shorter where even that is not enough.

    Raises FitError where a level's longest word has no room.
    """
    count = len(tree.choices)
    texts = [text for choice in tree.choices for text in _texts(choice)]
    natural = [max(text_width_pt(t, size_pt, Face.BOLD) for t in _texts(c)) for c in tree.choices]
    least = [max(longest_word_pt(t, size_pt, Face.BOLD) for t in _texts(c)) for c in tree.choices]
    for branch in (_BRANCH_PT, _SHORT_BRANCH_PT):
        room = width_pt - count * branch - _STUB_PT
        if sum(least) <= room:
            return _lefts(_shared(natural, least, room), branch)
    longest = max((word for text in texts for word in text.split()), key=len)
    raise FitError(
        f"{count} levels of choices need {sum(least):.0f} pt for their words and have "
        f"{room:.0f} pt of {width_pt:.0f} pt; a shorter word than '{longest}', smaller type or a "
        "wider column would help"
    )


def _shared(natural: Sequence[float], least: Sequence[float], room_pt: float) -> list[float]:
    """Every level its length where all fit; else the narrow ones keep theirs and the wide ones
    share the rest, none less than its longest word."""
    low, high = 0.0, max(natural)
    if sum(natural) <= room_pt:
        return list(natural)
    for _ in range(40):
        limit = (low + high) / 2
        widths = _limited(natural, least, limit)
        low, high = (limit, high) if sum(widths) <= room_pt else (low, limit)
    return _limited(natural, least, low)


def _limited(natural: Sequence[float], least: Sequence[float], limit: float) -> list[float]:
    return [max(need, min(all_, limit)) for all_, need in zip(natural, least, strict=True)]


def _lefts(widths: Sequence[float], branch_pt: float) -> list[tuple[float, float]]:
    lefts, x = [], _STUB_PT
    for width in widths:
        x += branch_pt
        lefts.append((x, width + 0.01))
        x += width
    return lefts


def _texts(choice: Choice) -> tuple[str, ...]:
    return (*choice.options, choice.name) if choice.name else choice.options


def _put_heads(
    sketch: Sketch, tree: BranchingTree, columns: Sequence[tuple[float, float]], size_pt: float
) -> float:
    """The choices' names; the y below which the tree may start."""
    heads = [
        (wrapped_label(choice.name, size_pt, width, Face.BOLD), left)
        for choice, (left, width) in zip(tree.choices, columns, strict=True)
        if choice.name
    ]
    for head, left in heads:
        sketch.put(head, left, -head.height_pt)
    return 2 * _ROW_GAP_PT if heads else 0.0


@dataclass(frozen=True, slots=True)
class _Growth:
    """What the growing of a tree needs to know."""

    tree: BranchingTree
    show: Show
    columns: Sequence[tuple[float, float]]
    width_pt: float
    size_pt: float

    def options(self, level: int, taken: Sequence[str]) -> tuple[str, ...]:
        """What there is to choose from; without repeats, what the branch has not taken yet."""
        options = self.tree.choices[level].options
        if not self.tree.without_repeats:
            return options
        return tuple(option for option in options if option not in taken)

    def leaves(self, level: int, taken: Sequence[str]) -> int:
        """How many leaves there are from this level on."""
        lost = range(len(taken), len(taken) + len(self.tree.choices) - level)
        counts = [len(choice.options) for choice in self.tree.choices[level:]]
        if self.tree.without_repeats:
            counts = [count - less for count, less in zip(counts, lost, strict=True)]
        return prod(counts)


def _grown(growth: _Growth, level: int, taken: tuple[str, ...]) -> Iterator[_Node]:
    """The nodes of a level. Where all leaves would be too many, the first option grows and
    the others are told; the first step grows the first option only."""
    choices = growth.tree.choices
    if level == len(choices):
        return
    left, room = growth.columns[level]
    size_pt, width_pt = growth.size_pt, growth.width_pt
    options = growth.options(level, taken)
    is_leaf = level == len(choices) - 1
    is_whole = growth.leaves(level, taken) <= _MOST_LEAVES
    shown = options[: _drawn(options)] if is_leaf else options if is_whole else options[:1]
    for index, option in enumerate(shown):
        grows = growth.show is Show.COMPLETE or index == 0
        children = list(_grown(growth, level + 1, (*taken, option))) if grows else []
        yield _Node(level, wrapped_label(option, size_pt, room), children)
    rest = options[len(shown) :]
    if rest:
        words = _rest_words(rest, is_leaf)
        yield _Node(level, wrapped_label(words, size_pt, width_pt - left), [], is_told=True)


def _drawn(options: Sequence[str]) -> int:
    """How many leaves of one branch are drawn: all of them, or a few before the rest is told."""
    return len(options) if len(options) <= _MOST_OPTIONS else 3


def _rest_words(rest: Sequence[str], is_leaf: bool) -> str:
    if is_leaf:
        return f"and so on to {rest[-1]}"
    if len(rest) == 1:
        return f"and so on for {rest[0]}"
    if len(rest) > _MOST_OPTIONS:
        return f"and so on for each of the other {len(rest)}"
    return f"and so on for each of {', '.join(rest[:-1])} and {rest[-1]}"


def _settle(nodes: Sequence[_Node], top: float) -> float:
    """Sets each node's height on the page, leaves from top to bottom; the y of the bottom."""
    for node in nodes:
        bottom = _settle(node.children, top) if node.children else top
        own = node.label.level_height_pt + _ROW_GAP_PT
        middle = _middle(node.children) if node.children else top + own / 2
        # A name of several lines may need more than its branches do.
        node.y_pt = max(middle, top + own / 2)
        top = max(bottom, node.y_pt + own / 2)
    return top


def _middle(nodes: Sequence[_Node]) -> float:
    return (nodes[0].y_pt + nodes[-1].y_pt) / 2


def _draw_branches(
    sketch: Sketch,
    start: tuple[float, float],
    nodes: Sequence[_Node],
    columns: Sequence[tuple[float, float]],
) -> None:
    """Slanting lines run in the strip before each level only, so they meet no label."""
    sketch.add(dot(start[0], start[1], 1.6))
    for node in nodes:
        left, width = columns[node.level]
        sketch.put(node.label, left, node.y_pt - node.label.middle_pt)
        end = (left - _STUB_PT, node.y_pt)
        sketch.add(rule(start, end, FINE_PT, dashed=node.is_told))
        if node.children:
            joint = (left + width + _STUB_PT, node.y_pt)
            leave = left + node.label.width_pt + _STUB_PT
            if joint[0] - leave > 1:
                sketch.add(rule((leave, node.y_pt), joint))
            _draw_branches(sketch, joint, node.children, columns)


def _draw_blanks(
    sketch: Sketch, choice: Choice, column: tuple[float, float], top: float, size_pt: float
) -> float:
    """The root, with a line to write on for each option of the first choice (at most a few)."""
    count = min(len(choice.options), _MOST_OPTIONS)
    left, width = column
    height = count * 2 * _WRITING_PT
    root = (_STUB_PT, top + height / 2)
    sketch.add(dot(*root, 1.6))
    right = min(left + max(width, _BLANK_EMS * size_pt), sketch.width_pt)
    for index in range(count):
        y = top + (index + 0.5) * 2 * _WRITING_PT
        sketch.add(rule(root, (left - _STUB_PT, y)), rule((left, y), (right, y)))
    return top + height - _WRITING_PT
