"""The demonstration week in a fresh process, timed in parts; not called by hand.

    python -m tests.benchmarks.one_week parts      reading and solving, setting and drawing, proof
    python -m tests.benchmarks.one_week plain      its pages drawn without tags, and their floor
    python -m tests.benchmarks.one_week tagged     with tags

Prints a line of JSON, read by `week_in_process`. Each is timed the first time that this process
does it, so that nothing is gained by what it remembers of the same pages.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace

from tests.benchmarks.engines.floor import draw, new_canvas
from tests.benchmarks.engines.ours import composed, plain_shapes
from tests.benchmarks.one_make import import_all
from tests.benchmarks.plain_shapes import PlainShape
from tests.benchmarks.processes import WEEK, run_python
from tests.benchmarks.sheets import make_sheets
from tests.benchmarks.timing import Took, timed
from typeset.documents.solved_week import solved_with_layouts
from typeset.drawing.fonts import in_family
from typeset.press.job import Job
from typeset.press.plan import Wanted, plan_jobs
from typeset.reading.content import CORE, END
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf

FLOOR, PLAIN, TAGGED, PARTS = "floor", "plain", "tagged", "parts"
_SHEETS_TO_WARM_UP = 3


def week_in_process(what: str) -> dict[str, Took]:
    """What each part took, in a fresh process. Raises RuntimeError where it fails."""
    told = json.loads(run_python(["-m", "tests.benchmarks.one_week", what]))
    return {name: Took(**took) for name, took in told.items()}


def main(what: str) -> None:
    """Measures, and prints what it took."""
    import_all()
    taken = _parts() if what == PARTS else _drawn(what == TAGGED)
    sys.stdout.write(json.dumps({name: asdict(took) for name, took in taken.items()}) + "\n")


def _parts() -> dict[str, Took]:
    """One file after the other, in this process."""
    jobs: list[Job] = []
    pdfs: list[bytes] = []
    return {
        "reading and solving": timed(lambda: jobs.extend(_jobs())),
        "setting and drawing": timed(lambda: pdfs.extend(map(_made, jobs))),
        "proofing": timed(lambda: _proofed(jobs, pdfs)),
    }


def _jobs() -> tuple[Job, ...]:
    """The files that the week makes."""
    versions, layouts = solved_with_layouts(WEEK, ())
    week = versions.core.week
    wanted = Wanted(week.makes, week.versions, packs=(CORE,), answers=END, of_lesson=False)
    return plan_jobs(versions, layouts, wanted)


def _made(job: Job) -> bytes:
    with in_family(job.fonts):
        return write_pdf(job.compose()[0])


def _proofed(jobs: Sequence[Job], pdfs: Sequence[bytes]) -> None:
    for job, pdf in zip(jobs, pdfs, strict=True):
        with in_family(job.fonts):
            findings = job.proof(pdf)
        if findings:
            raise RuntimeError(f"{job.file}: {findings[0]}")


@dataclass(frozen=True, slots=True)
class _Placed:
    """A page for the floor: its height and every shape in its place."""

    height_pt: float
    shapes: tuple[PlainShape, ...]


def _drawn(is_tagged: bool) -> dict[str, Took]:
    """The pages are composed before, and drawn once each way; fonts are read before, too."""
    documents = [replace(_composed(job), tagged=is_tagged) for job in _jobs()]
    placed = [_placed(document) for document in documents]
    others = replace(composed(make_sheets(_SHEETS_TO_WARM_UP, 1)), tagged=is_tagged)
    write_pdf(others)
    _floor(_placed(others))
    return {
        FLOOR: timed(lambda: list(map(_floor, placed))),
        TAGGED if is_tagged else PLAIN: timed(lambda: list(map(write_pdf, documents))),
    }


def _composed(job: Job) -> Document:
    with in_family(job.fonts):
        return job.compose()[0]


def _placed(document: Document) -> list[_Placed]:
    shapes = ((s for item in page.placed for s in item.shapes) for page in document.pages)
    return [
        _Placed(page.height_pt, plain_shapes(of_page))
        for page, of_page in zip(document.pages, shapes, strict=True)
    ]


def _floor(pages: Sequence[_Placed]) -> bytes:
    canvas = new_canvas()
    for page in pages:
        draw(canvas, page.shapes, page.height_pt)
        canvas.showPage()
    return bytes(canvas.getpdfdata())


if __name__ == "__main__":
    main(sys.argv[1])
