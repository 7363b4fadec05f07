"""Versions that would be the core's sheets under another mark."""

from __future__ import annotations

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.versions import Versions
from typeset.errors import Complaint, ContentError
from typeset.quantities.inline import plain


def check_versions(versions: Versions, lesson: str | None) -> None:
    """Raises ContentError for a version that has no other numbers than the core."""
    where = f"'{lesson}'" if lesson else "the week"
    complaints = [
        Complaint(
            versions.core.week.place,
            f"no number of {where} differs in the version '{version}'",
            f"give problems '{version}:' numbers of their own, or leave it out",
        )
        for version in alike_versions(versions, lesson)
    ]
    if complaints:
        raise ContentError(complaints)


def alike_versions(versions: Versions, lesson: str | None) -> tuple[str, ...]:
    """The versions whose stories are the core's, in a lesson or in the whole week."""
    core = _stories(versions.core, lesson)
    return tuple(week.version.value for week in versions.others if _stories(week, lesson) == core)


def _stories(solved: SolvedWeek, lesson: str | None) -> list[str]:
    return [
        plain(problem.story)
        for each in solved.lessons
        if lesson in (None, each.lesson.name)
        for problem in each.problems()
    ]
