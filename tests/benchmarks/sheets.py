"""Equal sheets as plain data, for every engine to set: problems, answer boxes, bar models.

Everything is invented. Sheets of one seed are alike in their build and differ in their numbers;
every round of the benchmark takes another seed, so that an engine which remembers what it set
before gains nothing. Nothing of `typeset` is imported here: an engine is started with no more
than it needs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from tests.benchmarks.plain_shapes import PlainFigure, PlainShape

PROBLEMS_A_SHEET = 8
MODELS_A_SHEET = 2

TYPE_SIZE_PT = 11.0
LEADING = 1.35
PAPER_PT = (595.276, 841.890)
MARGIN_PT = 48.0
INDENT_PT = 24.2
COLUMN_PT = PAPER_PT[0] - 2 * MARGIN_PT
MODEL_PT = 330.0
BOX_PT = (39.685, 24.094)

_NAMES = ("Asha", "Tomasz", "Imogen", "Kofi", "Leila", "Rhys", "Yuki", "Odette", "Femi", "Nell")
# A story, what is counted, and whether a bar model belongs to it.
_STORIES = (
    (
        "{who} ties {a} bows into the tail of every kite. On the green {b} kites are waiting for "
        "the wind, and all of them have a tail. How many bows has {who} tied?",
        "bows",
    ),
    (
        "The ferry crosses to the island {a} times a day with {b} passengers on board. In the "
        "evening {c} more come over by rowing boat. How many people is that?",
        "people",
    ),
    (
        "On the harbour wall sit terns and gulls in flocks of {a}. There are three flocks of "
        "terns and five flocks of gulls. How many birds has {who} counted altogether?",
        "birds",
    ),
    (
        "The chandler cuts a rope of {b} m into pieces of {a} m for the boats at the quay and "
        "keeps what is left over. How many whole pieces can {who} carry away?",
        "pieces",
    ),
    (
        "There are {b} stairs up to the lamp of the lighthouse. {who} has gone up {a} of them, "
        "rests, and goes up {c} more. How many stairs are there still to climb?",
        "stairs",
    ),
    (
        "{who} sells chowder at the market: two ladles of {a} to the small pots and four ladles "
        "of {a} to the large ones. How many spoonfuls have gone when all is sold?",
        "spoonfuls",
    ),
    (
        "A net is {a} knots wide and {b} knots long. {who} has mended {c} of its knots since the "
        "morning and counts what is left. How many knots does the whole net have?",
        "knots",
    ),
    (
        "Along the quay stand {b} market stalls. Every stall has {a} lanterns, but {c} lanterns "
        "have gone out in the rain. How many lanterns are alight when {who} comes by?",
        "lanterns",
    ),
)
# By the place of the story: the names of the bars, and how many parts each has.
_MODELS = {2: (("terns", 3), ("gulls", 5)), 5: (("small", 2), ("large", 4))}


@dataclass(frozen=True, slots=True)
class Model:
    """A bar model: bars with so many equal parts of one value, and a brace with their total."""

    bars: tuple[tuple[str, int], ...]
    part: int

    @property
    def total(self) -> int:
        """The value of all parts."""
        return self.part * sum(count for _, count in self.bars)


@dataclass(frozen=True, slots=True)
class Problem:
    """A numbered story of two lines, with a box for the answer and the unit after it."""

    number: str
    story: str
    unit: str
    model: Model | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page."""

    heading: str
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Material:
    """What an engine may be given: the sheets, the figure of each bar model in order, drawn
    already (only our own engine draws them itself), and for the floor every shape in its place.
    """

    sheets: tuple[Sheet, ...]
    figures: tuple[PlainFigure, ...] = ()
    placed: tuple[tuple[PlainShape, ...], ...] = ()


def make_sheets(count: int, seed: int) -> tuple[Sheet, ...]:
    """So many sheets; the same ones for the same seed."""
    dice = Random(seed)
    return tuple(_sheet(index, dice) for index in range(count))


def models_of(sheets: Sequence[Sheet]) -> list[Model]:
    """The bar models of all sheets in order."""
    return [p.model for sheet in sheets for p in sheet.problems if p.model is not None]


def _sheet(index: int, dice: Random) -> Sheet:
    problems: list[Problem] = []
    for place, (story, unit) in enumerate(_STORIES):
        a, b, c = dice.randint(12, 49), dice.randint(52, 98), dice.randint(11, 48)
        told = story.format(who=dice.choice(_NAMES), a=a, b=b, c=c)
        model = Model(_MODELS[place], a) if place in _MODELS else None
        problems.append(Problem(f"{place + 1}", told, unit, model))
    return Sheet(f"Harbour festival, sheet {index + 1}", tuple(problems))


# Where the box of an answer begins in the column, and the air after label and box.
BOX_LEFT_PT = COLUMN_PT - 17 * TYPE_SIZE_PT
BOX_GAP_PT = 5.5
# Down from the top of the box to the baseline of its label.
BOX_BASELINE_PT = BOX_PT[1] - 0.21 * TYPE_SIZE_PT
# White after parts of a problem, and after a problem.
PART_GAP_PT = 4.0
PROBLEM_GAP_PT = 8.0
