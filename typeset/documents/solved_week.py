"""A folder of content read, held against its layouts, and solved in every version wanted.

Nothing of setting, proofing or writing PDFs is loaded for it, so that a check comes at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.cautions import check_cautions
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.versions import Versions
from typeset.reading.week import read_week


def solved_with_layouts(
    folder: Path,
    layouts: Sequence[str],
    versions: Sequence[str] = (),
    lesson: str | None = None,
) -> tuple[Versions, tuple[Layout, ...]]:
    """The week solved in its own versions and those asked for, and its layout or those asked
    for instead, each once; of the week one lesson only, where that is named.

    Raises ContentError with every complaint, LayoutError, OutputError, SolvingError.
    """
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
    solved = tuple(solve_week(week, version, lesson) for version in others)
    return Versions(solve_week(week, only=lesson), solved), found
