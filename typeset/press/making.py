"""Makes the documents of a week: compose, write, proof, and only then move into place.

Files are made in a hidden folder beside the place they go to, so that a build that fails or
is interrupted leaves the last good files as they were.
"""

from __future__ import annotations

import shutil
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.arithmetic.remarks import remarks_on
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.cautions import check_cautions
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.versions import Versions
from typeset.drawing.fonts import in_family
from typeset.errors import OutputError, Remark
from typeset.press.class_plan import ClassOrder, plan_class
from typeset.press.plan import Job, Wanted, plan_jobs
from typeset.press.print_page import print_job
from typeset.press.record import RECORD, Made, with_earlier, write_record
from typeset.press.reporting import write_pictures
from typeset.press.version_check import check_versions
from typeset.proofing import Finding
from typeset.reading.content import CORE, END, HOME_PACK, OWN_PROBLEMS, TASK_SHEET
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf


@dataclass(frozen=True, slots=True)
class Result:
    """A document that was made, with what was noticed while making it."""

    made: Made
    type_size_pt: float
    seconds: float
    notes: tuple[str, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Order:
    """What is to be made, and where it goes. `progress` is called with every file begun.

    Without `layouts` the week's own is taken, without `only` or `versions` what the week says.
    """

    folder: Path
    to: Path
    lesson: str | None = None
    only: str | None = None
    layouts: tuple[str, ...] = ()
    versions: tuple[str, ...] = ()
    # Where pictures of sides with findings go; None for none.
    pictures: Path | None = None
    progress: Callable[[str, int], None] = lambda _file, _count: None
    # Called with every remark on the content, before anything is made.
    remark: Callable[[Remark], None] = lambda _remark: None
    # Where the answers of a home pack go: to its 'end', in a 'separate' file, or 'none'.
    answers: str = END
    # For a named set: the class list, and whether every pupil gets other numbers.
    class_list: Path | None = None
    vary: bool = False
    # True for task sheets to fill in on a screen; home packs always are.
    fields: bool = False


def make_week(order: Order) -> tuple[Result, ...]:
    """The documents of the week, in place where every proof is clean; else nothing is moved.

    Raises ContentError, FitError, GlyphError, LayoutError, OutputError, SolvingError.
    """
    core, jobs = _planned_class(order, order.class_list) if order.class_list else _planned(order)
    for each in remarks_on(core):
        order.remark(each)
    with _staging(order.to) as staging:
        count = len(jobs) + 1
        results = [_make(job, staging, order.progress, count) for job in jobs]
        told = with_earlier(order.to, core, [result.made for result in results])
        jobs = (*jobs, print_job(core, told))
        results.append(_make(jobs[-1], staging, order.progress, count))
        found = [finding for result in results for finding in result.findings]
        if found and order.pictures is not None:
            pdfs = {job.file: (staging / job.file).read_bytes() for job in jobs}
            write_pictures(found, pdfs, order.pictures)
        if not found:
            page = results[-1].made
            others = (each for each in told if each.file != page.file)
            write_record(staging, order.to, core, [*others, page])
            _move(staging, order.to, [*(job.file for job in jobs), RECORD])
    return tuple(results)


def _planned(order: Order) -> tuple[SolvedWeek, tuple[Job, ...]]:
    """The week's core, and the files that it makes as far as they are wanted."""
    versions, layouts = solved_with_layouts(order.folder, order.layouts, order.versions)
    week = versions.core.week
    check_versions(versions, order.lesson)
    kinds = (order.only,) if order.only else week.makes
    packs = order.versions or (CORE,)
    sheets = order.versions or week.versions
    of_lesson = order.lesson is not None
    if order.fields:
        _check_fields(kinds, layouts)
    wanted = Wanted(
        kinds, sheets, order.lesson, packs, order.answers, of_lesson, fields=order.fields
    )
    jobs = plan_jobs(versions, layouts, wanted)
    if not jobs:
        raise OutputError(_nothing_of(kinds, order.lesson))
    return versions.core, jobs


def _check_fields(kinds: Sequence[str], layouts: Sequence[Layout]) -> None:
    """Raises OutputError where there is no sheet that can be filled in on a screen."""
    if TASK_SHEET not in kinds:
        raise OutputError("--fields is for task sheets, and none are made (a home pack has them)")
    copied = next((each.name for each in layouts if each.copies > 1), None)
    if copied is not None:
        raise OutputError(
            f"the layout '{copied}' sets copies side by side, to be cut apart; leave out --fields "
            "or name another layout"
        )


def _nothing_of(kinds: Sequence[str], lesson: str | None) -> str:
    """Why there is nothing to make: a week's own file for one lesson, or content that is not
    there."""
    where = f"the lesson '{lesson}'" if lesson else "the week"
    what = f"{where} gives no {' or '.join(kinds)}"
    if HOME_PACK in kinds and lesson:
        return f"{what}; a home pack is for the whole week, so leave out --lesson"
    if OWN_PROBLEMS in kinds:
        return f"{what}; write 'own problems:' into a lesson"
    return f"{what}; leave out --lesson or ask for something else"


def _planned_class(order: Order, class_list: Path) -> tuple[SolvedWeek, tuple[Job, ...]]:
    """The week's core, and the files of a class."""
    layout = order.layouts[0] if order.layouts else None
    return plan_class(ClassOrder(order.folder, class_list, order.lesson, layout, order.vary))


def solved_with_layouts(
    folder: Path, layouts: Sequence[str], versions: Sequence[str] = ()
) -> tuple[Versions, tuple[Layout, ...]]:
    """The week solved in its own versions and those asked for, and its layout or those asked
    for instead, each once."""
    week = read_week(folder)
    found = tuple(
        find_layout(name, week.folder) for name in dict.fromkeys(layouts or (week.layout,))
    )
    check_cautions(week, found)
    others = tuple(
        version
        for version in Version
        if version is not Version.CORE and version.value in (*week.versions, *versions)
    )
    solved = tuple(solve_week(week, version) for version in others)
    return Versions(solve_week(week), solved), found


def _make(job: Job, staging: Path, progress: Callable[[str, int], None], count: int) -> Result:
    progress(job.file, count)
    start = time.perf_counter()
    with in_family(job.fonts):
        document, pages = job.compose()
        pdf = write_pdf(document)
        (staging / job.file).write_bytes(pdf)
        findings = tuple(job.proof(pdf))
    made = Made(job.file, job.kind, job.lesson, job.version, job.layout, len(document.pages))
    return Result(made, pages.type_size_pt, time.perf_counter() - start, pages.notes, findings)


@contextmanager
def _staging(to: Path) -> Iterator[Path]:
    """A hidden folder beside the files' place, gone afterwards whatever happens."""
    try:
        to.mkdir(parents=True, exist_ok=True)
        staging = Path(tempfile.mkdtemp(prefix=".making-", dir=to))
    except OSError as error:
        raise OutputError(f"cannot write in {to}: {error.strerror}") from error
    try:
        yield staging
    except OSError as error:
        raise OutputError(f"cannot write in {to}: {error.strerror}") from error
    finally:
        shutil.rmtree(staging, ignore_errors=True)


def _move(staging: Path, to: Path, files: list[str]) -> None:
    for file in files:
        (staging / file).replace(to / file)
