"""Makes the documents of a week: compose, write, proof, and only then move into place.

Files are made in a hidden folder beside the place they go to, so that a build that fails or
is interrupted leaves the last good files as they were.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from typeset.arithmetic.lessons import SolvedWeek
from typeset.arithmetic.remarks import remarks_on
from typeset.documents.layout import Layout
from typeset.documents.solved_week import solved_with_layouts
from typeset.errors import OutputError, Remark
from typeset.press.bench import Bench
from typeset.press.building import Build, Result
from typeset.press.job import Job
from typeset.press.kept import Kept
from typeset.press.plan import Wanted, plan_jobs
from typeset.press.print_page import Layouts, lines_of, print_job
from typeset.press.record import RECORD, write_record
from typeset.press.version_check import check_versions
from typeset.reading.content import CORE, END, HOME_PACK, OWN_PROBLEMS, TASK_SHEET


@dataclass(frozen=True, slots=True)
class Order:
    """What is to be made, and where it goes. `progress` is called with every file that is done.

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
    # Called with every line about how to print the files, when they are made.
    printing: Callable[[str], None] = lambda _line: None
    # Where the answers of a home pack go: to its 'end', in a 'separate' file, or 'none'.
    answers: str = END
    # For a named set: the class list, and whether every pupil gets other numbers.
    class_list: Path | None = None
    vary: bool = False
    # True for task sheets to fill in on a screen; home packs always are.
    fields: bool = False
    # How many processes share the work, and where what does not change is kept for another time;
    # without a folder everything is made anew.
    workers: int = 1
    kept: Path | None = None
    # True to make everything anew all the same, and keep that.
    fresh: bool = False


def make_week(order: Order) -> tuple[Result, ...]:
    """The documents of the week, in place where every proof is clean; else nothing is moved.

    Raises ContentError, FitError, GlyphError, LayoutError, OutputError, SolvingError.
    """
    plan = _planned_class(order, order.class_list) if order.class_list else _planned(order)
    core, layouts, kept = (
        plan.core,
        Layouts(plan.core.week, plan.layouts),
        Kept(order.kept, is_read=not order.fresh),
    )
    for each in remarks_on(core):
        order.remark(each)
    with _staging(order.to) as staging:
        bench = Bench(plan.jobs, lambda made: print_job(core, made, layouts), staging, kept)
        build = Build(bench, order.to, core, order.progress)
        results = build.run(order.workers)
        new = [result.made for result in results if not result.is_as_before]
        found = [finding for result in results for finding in result.findings]
        if found and order.pictures is not None:
            from typeset.press.reporting import write_pictures

            pdfs = {made.file: (staging / made.file).read_bytes() for made in new}
            write_pictures(found, pdfs, order.pictures)
        if not found:
            build.keep(results)
            write_record(staging, order.to, core, build.told(results))
            _move(staging, order.to, [*(made.file for made in new), RECORD])
    kept.tidy()
    for line in lines_of(core.week, [result.made for result in results], layouts):
        order.printing(line)
    return results


@dataclass(frozen=True, slots=True)
class _Plan:
    """The week's core, the files to make of it, and the layouts they are made in."""

    core: SolvedWeek
    jobs: tuple[Job, ...]
    layouts: tuple[Layout, ...] = ()


def _planned(order: Order) -> _Plan:
    """The files that the week makes as far as they are wanted."""
    versions, layouts = solved_with_layouts(
        order.folder, order.layouts, order.versions, order.lesson
    )
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
    return _Plan(versions.core, jobs, layouts)


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


def _planned_class(order: Order, class_list: Path) -> _Plan:
    """The files of a class."""
    from typeset.press.class_plan import ClassOrder, plan_class

    layout = order.layouts[0] if order.layouts else None
    wanted = ClassOrder(order.folder, class_list, order.lesson, layout, order.vary)
    return _Plan(*plan_class(wanted))


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
