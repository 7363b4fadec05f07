"""The whole make of the demonstration week, proof included, against bare extraction; and what
of it is the proof."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.bare_reading import two_readers
from tests.benchmarks.one_make import fresh_order
from tests.benchmarks.processes import WEEK, run_python
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import Clock, Took, in_alternation, timed
from typeset.documents.solved_week import solved_with_layouts
from typeset.drawing.fonts import in_family
from typeset.press.job import Job
from typeset.press.making import make_week
from typeset.press.plan import Wanted, plan_jobs
from typeset.reading.content import CORE, END
from typeset.setting.pdf import write_pdf

_MAKE, _BARE = "whole make, proof included", "bare pdfplumber, two workers"
_BOUND = 1.25
_ABOUT = (
    "*Cold* is a process from its start to its end, *warm* a second make in one process; nothing "
    "is left of earlier makes. Extraction is words, letters and rectangles of the same files.\n"
)
_WARM_ROUNDS, _COLD_ROUNDS = 3, 3


def proofing(settings: Settings) -> Section:
    """Cold, warm, and in parts."""
    clock = settings.clock
    with TemporaryDirectory() as told:
        folders = _Folders(Path(told))
        made = folders.next()
        make_week(fresh_order(folder=WEEK, to=made))
        with two_readers() as readers:
            warm_works: dict[str, Callable[[], object]] = {
                _MAKE: lambda: make_week(fresh_order(folder=WEEK, to=folders.next())),
                _BARE: lambda: readers.read(made),
            }
            warm = in_alternation(lambda _: warm_works, settings.rounds(_WARM_ROUNDS))
        bare = ["-m", "tests.benchmarks.bare_reading", str(made)]
        cold_works: dict[str, Callable[[], object]] = {
            _MAKE: lambda: run_python(make_command(WEEK, folders.next()), folders.next()),
            _BARE: lambda: run_python(bare),
        }
        cold = in_alternation(lambda _: cold_works, settings.rounds(_COLD_ROUNDS))
        parts = _parts()
    rows: list[list[str]] = []
    bounds: list[Bound] = []
    for how, taken in (("cold", cold), ("warm", warm)):
        whole, least = clock.median_s(taken[_MAKE]), clock.median_s(taken[_BARE])
        rows.append([how, seconds(whole), seconds(least), ratio(whole, least)])
        bounds.append(Bound(f"{_MAKE}, {how}, to {_BARE}", _BOUND, whole / least))
    heads = ("the demonstration week", _MAKE, _BARE, "ratio")
    text = "\n".join((_ABOUT, table(heads, rows), _parts_table(clock, parts)))
    return Section("Making and proofing", text, tuple(bounds))


def make_command(week: Path, to: Path) -> list[str]:
    """`typeset make` of the week into a folder."""
    return ["-m", "typeset", "make", str(week), "--to", str(to)]


class _Folders:
    """New folders, one after the other."""

    def __init__(self, within: Path) -> None:
        self.within = within
        self.numbers = count(1)

    def next(self) -> Path:
        """The next one, not there yet."""
        return self.within / f"made-{next(self.numbers)}"


def week_jobs() -> tuple[Job, ...]:
    """The files that the demonstration week makes."""
    versions, layouts = solved_with_layouts(WEEK, ())
    week = versions.core.week
    wanted = Wanted(week.makes, week.versions, packs=(CORE,), answers=END, of_lesson=False)
    return plan_jobs(versions, layouts, wanted)


def _parts() -> dict[str, Took]:
    """Setting, drawing and proofing of all files one after the other, in this process."""
    jobs = week_jobs()
    pdfs: list[bytes] = []
    return {
        "reading and solving": timed(lambda: solved_with_layouts(WEEK, ())),
        "setting and drawing": timed(lambda: pdfs.extend(map(_made, jobs))),
        "proofing": timed(lambda: _proofed(jobs, pdfs)),
    }


def _made(job: Job) -> bytes:
    with in_family(job.fonts):
        return write_pdf(job.compose()[0])


def _proofed(jobs: Sequence[Job], pdfs: Sequence[bytes]) -> None:
    for job, pdf in zip(jobs, pdfs, strict=True):
        with in_family(job.fonts):
            findings = job.proof(pdf)
        if findings:
            raise RuntimeError(f"{job.file}: {findings[0]}")


def _parts_table(clock: Clock, parts: dict[str, Took]) -> str:
    making = clock.of(parts["setting and drawing"])
    rows = [[name, seconds(clock.of(t)), ratio(clock.of(t), making)] for name, t in parts.items()]
    return table(("in one process, one after the other", "time", "to setting and drawing"), rows)
