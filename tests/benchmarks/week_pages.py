"""The demonstration week's own pages, composed beforehand, drawn against their floor."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from tests.benchmarks.engines.floor import draw, new_canvas
from tests.benchmarks.engines.ours import plain_shapes
from tests.benchmarks.plain_shapes import PlainShape
from tests.benchmarks.proofing import week_jobs
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import in_alternation
from typeset.drawing.fonts import in_family
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf

_FLOOR, _PLAIN, _TAGGED = "floor: raw reportlab canvas", "without tags", "with tags"
_BOUNDS = {_PLAIN: 1.3, _TAGGED: 1.8}
_ROUNDS = 7


@dataclass(frozen=True, slots=True)
class _Placed:
    """A page for the floor: its height and every shape in its place."""

    height_pt: float
    shapes: tuple[PlainShape, ...]


def week_pages(settings: Settings) -> Section:
    """Lines and pages are broken before the clock runs; what is timed is drawing alone."""
    documents: list[Document] = []
    for job in week_jobs():
        with in_family(job.fonts):
            documents.append(job.compose()[0])
    plain = [replace(document, tagged=False) for document in documents]
    tagged = [replace(document, tagged=True) for document in documents]
    placed = [_placed(document) for document in documents]
    works: dict[str, Callable[[], object]] = {
        _FLOOR: lambda: list(map(_floor, placed)),
        _PLAIN: lambda: list(map(write_pdf, plain)),
        _TAGGED: lambda: list(map(write_pdf, tagged)),
    }
    in_alternation(lambda _: works, 1)
    taken = in_alternation(lambda _: works, settings.rounds(_ROUNDS))
    medians = {name: settings.clock.median_s(each) for name, each in taken.items()}
    floor = medians[_FLOOR]
    rows = [[name, seconds(value), ratio(value, floor)] for name, value in medians.items()]
    bounds = tuple(
        Bound(f"the week's pages drawn {name}, to the floor", bound, medians[name] / floor)
        for name, bound in _BOUNDS.items()
    )
    pages = sum(len(document.pages) for document in documents)
    heads = (f"{pages} pages of the demonstration week, composed already", "time", "to the floor")
    return Section("Drawing the week's pages", table(heads, rows), bounds)


def _placed(document: Document) -> list[_Placed]:
    return [
        _Placed(
            page.height_pt, plain_shapes(shape for item in page.placed for shape in item.shapes)
        )
        for page in document.pages
    ]


def _floor(pages: Sequence[_Placed]) -> bytes:
    canvas = new_canvas()
    for page in pages:
        draw(canvas, page.shapes, page.height_pt)
        canvas.showPage()
    return bytes(canvas.getpdfdata())
