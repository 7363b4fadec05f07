"""Which documents a week makes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.versions import Versions
from typeset.errors import OutputError
from typeset.press.job import Job
from typeset.press.keys import stem_of
from typeset.press.planner import Planner
from typeset.reading.complaints import nearest
from typeset.reading.content import (
    ANSWER_BOOKLET,
    DOCUMENTS,
    HOME_PACK,
    TASK_SHEET,
    VERSIONS,
)


@dataclass(frozen=True, slots=True)
class Wanted:
    """What of a week is to be made. `lesson` None stands for all."""

    kinds: tuple[str, ...] = DOCUMENTS
    versions: tuple[str, ...] = VERSIONS
    lesson: str | None = None
    # The versions of a home pack, and where its answers are; None for every way.
    packs: tuple[str, ...] = VERSIONS
    answers: str | None = None
    # True for the booklet of a lesson alone, False for that of the week, None for both.
    of_lesson: bool | None = None
    # True for task sheets to fill in on a screen, False for those to print, None for both.
    fields: bool | None = False


def plan_jobs(
    versions: Versions, layouts: Sequence[Layout], wanted: Wanted = Wanted()
) -> tuple[Job, ...]:
    """The files of the week in order, in every layout, as far as they are wanted.

    Raises OutputError for a lesson that the week does not have.
    """
    check_lesson(versions.core, wanted.lesson)
    jobs = (job for layout in layouts for job in Planner(versions, layout, stem_of(layout)).jobs())
    return tuple(job for job in jobs if _is_wanted(job, wanted))


def check_lesson(solved: SolvedWeek, lesson: str | None) -> None:
    """Raises OutputError for a lesson that the week does not have; None stands for all."""
    names = tuple(each.name for each in solved.week.lessons)
    if lesson is not None and lesson not in names:
        raise OutputError(f"the week has no lesson '{lesson}'; {nearest(lesson, names)}")


def _is_wanted(job: Job, wanted: Wanted) -> bool:
    return (
        job.kind in wanted.kinds
        and (job.kind != TASK_SHEET or job.version in wanted.versions)
        and (job.kind != TASK_SHEET or wanted.fields in (None, job.fields))
        and (job.kind != HOME_PACK or _is_wanted_pack(job, wanted))
        and (job.kind != ANSWER_BOOKLET or wanted.of_lesson in (None, bool(job.lesson)))
        and wanted.lesson in (None, job.lesson)
    )


def _is_wanted_pack(job: Job, wanted: Wanted) -> bool:
    return job.version in wanted.packs and wanted.answers in (None, job.answers)
