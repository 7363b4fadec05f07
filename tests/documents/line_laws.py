"""The laws of lines on finished pages: none too wide, no bad ending that could be helped."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from tests.documents.page_boxes import HAIR_PT, Sheet, area_of, named
from typeset.drawing.fonts import width_pt
from typeset.drawing.shapes import TextRun
from typeset.setting.frames import Page, Placed, Role

_TOLD_IN_LINES = (Role.QUESTION, Role.INSTRUCTION, Role.TEXT, Role.TITLE, Role.HEADING)
_ARTICLES = {"a", "A", "I"}
_SIGNS = {"=", "+", "−", "×", "÷", "<", ">", "–"}


def line_laws(sheet: Sheet, page: Page) -> Iterator[str]:
    """No line wider than its measure; no more bad line endings than there must be."""
    for item in page.placed:
        if item.role not in _TOLD_IN_LINES or not item.reads_as:
            continue
        measure = _measure_pt(sheet, item)
        if item.width_pt > measure + HAIR_PT:
            yield f"{named(item)} is {item.width_pt:.1f} pt wide, its measure {measure:.1f}"
        lines = _lines_of(item)
        bad = sum(_is_bad_break(above, below) for above, below in pairwise(lines))
        if bad and lines and bad > (least := _fewest_bad_breaks(item, lines, measure)):
            yield f"{named(item)} has {bad} bad line endings, not {least}: {lines}"


def _measure_pt(sheet: Sheet, item: Placed) -> float:
    """From where the text begins to the right margin, or the layout's longest line."""
    right = area_of(sheet.layout).right - item.x_pt
    longest = sheet.layout.longest_line
    if longest is None or item.role in (Role.TITLE,) or _is_stage_heading(sheet, item):
        return right
    return min(right, longest * _character_pt(sheet.pages.type_size_pt))


def _is_stage_heading(sheet: Sheet, item: Placed) -> bool:
    size = max(shape.size_pt for shape in item.shapes if isinstance(shape, TextRun))
    return item.role is Role.HEADING and size > sheet.pages.type_size_pt


def _character_pt(size_pt: float) -> float:
    """The layout's average character: over English as it runs on a sheet."""
    english = (
        "For every gull on the quay there are two terns, and the ferry carries 24 passengers. "
        "How many of them are left over when the last boat has gone?"
    )
    return width_pt(english, size_pt) / len(english)


def _lines_of(item: Placed) -> list[list[str]]:
    """The words of each line; none where symbols or fractions stand among the letters."""
    if not all(isinstance(shape, TextRun) for shape in item.shapes):
        return []
    lines: dict[float, list[TextRun]] = {}
    for shape in item.shapes:
        assert isinstance(shape, TextRun)
        lines.setdefault(round(shape.y_pt, 3), []).append(shape)
    ordered = [lines[y] for y in sorted(lines)]
    texts = [
        "".join(run.text for run in sorted(line, key=lambda run: run.x_pt)) for line in ordered
    ]
    # What must not part is joined by no-break spaces in what the item reads as.
    boxes = item.reads_as.split(" ")
    found: list[list[str]] = []
    for text in texts:
        line: list[str] = []
        while boxes and len(" ".join([*line, _plain(boxes[0])])) <= len(text):
            line.append(_plain(boxes.pop(0)))
        found.append(line)
        if " ".join(line) != text:
            return []
    return [] if boxes else found


def _plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def _is_bad_break(above: Sequence[str], below: Sequence[str]) -> bool:
    last = above[-1].lstrip("(‘“'\"[")
    digits = last.replace(",", "").replace(".", "")
    return (
        last in _ARTICLES | _SIGNS
        or below[0] in _SIGNS
        or (digits.isdigit() and last[-1].isdigit())
    )


def _fewest_bad_breaks(item: Placed, lines: Sequence[Sequence[str]], measure_pt: float) -> int:
    """How few bad breaks there can be, over all ways to break."""
    run = next(shape for shape in item.shapes if isinstance(shape, TextRun))
    boxes = [word for line in lines for word in line]
    widths = [width_pt(word, run.size_pt, run.face) for word in boxes]
    space = width_pt(" ", run.size_pt, run.face)
    best = [0] + [len(boxes)] * len(boxes)
    for end in range(1, len(boxes) + 1):
        cost = end < len(boxes) and _is_bad_break([boxes[end - 1]], [boxes[end]])
        width = -space
        for start in range(end - 1, -1, -1):
            width += widths[start] + space
            if width > measure_pt:
                break
            best[end] = min(best[end], best[start] + cost)
    return best[len(boxes)]
