"""Do the pages of an engine hold what the sheets say? Words, answer boxes, bars and braces.

Read with pdfplumber and held against the data, so that nobody is fast by leaving something out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

import pdfplumber

from tests.benchmarks.sheets import BOX_PT, PROBLEMS_A_SHEET, Problem, Sheet

# Strokes may be counted in or out of a box's size.
_NEAR_PT = 1.5


class LeftOutError(Exception):
    """A page does not hold what its sheet says."""


@dataclass(frozen=True, slots=True)
class Held:
    """What a page holds."""

    words: Counter[str]
    boxes: int
    bars: int
    braces: int


def check_pages(engine: str, pdf: bytes, sheets: Sequence[Sheet], step: int = 1) -> None:
    """Every page, or every so manieth. Raises LeftOutError for the first that differs."""
    with pdfplumber.open(BytesIO(pdf)) as read:
        if len(read.pages) != len(sheets):
            raise LeftOutError(f"{engine}: {len(read.pages)} pages for {len(sheets)} sheets")
        for page, sheet in list(zip(read.pages, sheets, strict=True))[::step]:
            found, wanted = _held(page), _wanted(sheet)
            page.close()
            if found != wanted:
                raise LeftOutError(f"{engine}, {sheet.heading}: {_difference(found, wanted)}")


def _held(page: Any) -> Held:
    words = Counter(str(word["text"]) for word in page.extract_words())
    sizes = [(float(rect["width"]), float(rect["height"])) for rect in page.rects]
    boxes = sum(_is_box(size) for size in sizes)
    return Held(words, boxes, len(sizes) - boxes, len(page.curves))


def _is_box(size: tuple[float, float]) -> bool:
    return all(abs(a - b) < _NEAR_PT for a, b in zip(size, BOX_PT, strict=True))


def _wanted(sheet: Sheet) -> Held:
    models = [problem.model for problem in sheet.problems if problem.model is not None]
    bars = sum(count for model in models for _, count in model.bars)
    texts = (sheet.heading, *(text for each in sheet.problems for text in _texts(each)))
    words = Counter(word for text in texts for word in text.split())
    return Held(words, PROBLEMS_A_SHEET, bars, len(models))


def _texts(problem: Problem) -> Iterator[str]:
    yield from (problem.number, problem.story, "Answer", problem.unit)
    if problem.model is not None:
        yield f"{problem.model.total}"
        for name, count in problem.model.bars:
            yield from (name, *[f"{problem.model.part}"] * count)


def _difference(found: Held, wanted: Held) -> str:
    lacks, more = wanted.words - found.words, found.words - wanted.words
    counts = [f"{h.boxes} boxes, {h.bars} bars, {h.braces} braces" for h in (found, wanted)]
    return f"lacks {dict(lacks)}, has {dict(more)}; {counts[0]} instead of {counts[1]}"
