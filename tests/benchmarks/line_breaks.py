"""The line-breaker against first fit on the demonstration week; prints a table.

    python -m tests.benchmarks.line_breaks

Every story, instruction, sentence of a working, reason, hint and note of the week is broken both
ways, at the type sizes of our layouts, in their measures: that of a question's text and that of
half a booklet's column. Over all lines of a paragraph but its last are summed:

- what is empty: (measure − line in ems)²; first fit is near the least here, since it leaves
  what is empty to the last line;
- how ragged the edge looks: (longest line of the paragraph − line in ems)²;

and the worst line is the one that falls short of the measure most. A stub is a last line of one
short word, or hardly longer.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import TypeAlias

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedExtension, SolvedSpot, SolvedWeek
from typeset.documents.composer import Composer
from typeset.documents.layout_files import find_layout, layout_names
from typeset.drawing.shapes import Face
from typeset.errors import FitError
from typeset.quantities.inline import Rich, words
from typeset.reading.week import read_week
from typeset.setting.blocks import cell_width_pt
from typeset.setting.boxes import Box, boxes_of
from typeset.setting.lines import break_lines, first_fit, line_width_pt

WEEK = Path(__file__).parents[2] / "content" / "harbour-festival"
SIZES_PT = (12.0, 13.0, 14.0, 18.0, 24.0)
Lines: TypeAlias = Sequence[Sequence[Box]]
Breaker: TypeAlias = Callable[[Sequence[Box], float, float], Lines]
_NUMBER = re.compile(r"[(‘“]*(\d[\d,.]*)?\d")
_SHORT_LETTERS = 4
_STUB_EMS = 3.0


@dataclass(slots=True)
class Count:
    """What is counted over all paragraphs of one size."""

    lines: int = 0
    empty: float = 0.0
    ragged: float = 0.0
    worst_ems: float = 0.0
    stranded: int = 0
    parted: int = 0
    stubs: int = 0

    def add(self, lines: Lines, measure_pt: float, size_pt: float) -> None:
        """One paragraph."""
        self.lines += len(lines)
        longest_pt = max((line_width_pt(line) for line in lines), default=0.0)
        for line in lines[:-1]:
            shortfall = (measure_pt - line_width_pt(line)) / size_pt
            self.empty += shortfall**2
            self.ragged += ((longest_pt - line_width_pt(line)) / size_pt) ** 2
            self.worst_ems = max(self.worst_ems, shortfall)
        for above, _below in pairwise(lines):
            self.stranded += above[-1].text in ("a", "A", "I")
            self.parted += _NUMBER.fullmatch(above[-1].text) is not None
        self.stubs += len(lines) > 1 and _is_stub(lines[-1], size_pt)


def _is_stub(line: Sequence[Box], size_pt: float) -> bool:
    """A last line of one short word, or hardly longer."""
    alone = len(line) == 1 and len(line[0].text.strip(".,?!’”)")) <= _SHORT_LETTERS
    return alone or line_width_pt(line) < _STUB_EMS * size_pt


def table() -> str:
    """The table in Markdown: two rows a size, first fit above the optimum."""
    solved = solve_week(read_week(WEEK))
    texts = list(_texts(solved))
    rows = [
        "| size | way | lines | empty | ragged | worst line | 'a', 'I' stranded "
        "| numbers parted | stubs |",
        "|---|---|---|---|---|---|---|---|---|",
    ]
    for size in SIZES_PT:
        for name, breaker in (("first fit", _greedy), ("optimum", break_lines)):
            count = _counted(texts, size, breaker)
            rows.append(
                f"| {size:g} pt | {name} | {count.lines:,} | {count.empty:,.0f} em² "
                f"| {count.ragged:,.0f} em² "
                f"| {count.worst_ems:.1f} em | {count.stranded} | {count.parted} | {count.stubs} |"
            )
    return "\n".join(rows) + "\n"


def _greedy(boxes: Sequence[Box], measure_pt: float, _size_pt: float) -> Lines:
    return first_fit(boxes, measure_pt)


def _counted(texts: Sequence[Rich], size_pt: float, breaker: Breaker) -> Count:
    count = Count()
    for measure in _measures_pt(size_pt):
        for text in texts:
            boxes = boxes_of(text, size_pt, Face.REGULAR, measure)
            try:
                break_lines(boxes, measure, size_pt)
            except FitError:
                # A word wider than half a column at 24 pt: no way of breaking has it.
                continue
            count.add(breaker(boxes, measure, size_pt), measure, size_pt)
    return count


def _measures_pt(size_pt: float) -> list[float]:
    """The widths that texts are set in at this size, each once."""
    measures: set[float] = set()
    for name in layout_names():
        column = Composer(find_layout(name, WEEK)).column(size_pt)
        question = column.narrowed(column.width_pt - column.spacing.hang * size_pt)
        measures |= {round(question.text_pt, 2), round(cell_width_pt(2, question), 2)}
    return sorted(measures)


def _texts(solved: SolvedWeek) -> Iterator[Rich]:
    layout = find_layout(solved.week.layout, WEEK)
    yield from (words(text) for text in layout.wording["instructions"].values())
    for lesson in solved.lessons:
        yield words(lesson.lesson.aim)
        for problem in lesson.problems():
            yield problem.story
            yield problem.solution.kind.reason
            for working in problem.solution.workings:
                yield from (step.sentence for step in working.steps if step.sentence)
        for stage in lesson.stages:
            if isinstance(stage, SolvedExtension):
                yield from (stage.story, *stage.hints, *stage.look_for)
            if isinstance(stage, SolvedSpot):
                yield from (step.sentence for step in stage.mistake.steps if step.sentence)


if __name__ == "__main__":
    sys.stdout.write(table())
