"""Pages that are laid out first and numbered later, as parts of a longer document."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from typeset.setting.frames import Page
from typeset.setting.pages import PageFrame, no_furniture


def footless(frame: PageFrame) -> PageFrame:
    """The same area without its foot line."""
    return replace(frame, furniture=no_furniture)


def with_feet(pages: Sequence[Page], frame: PageFrame, first: int, count: int) -> tuple[Page, ...]:
    """The pages with the foot lines of the frame: pages `first` (from 0) and on, of `count`."""
    return tuple(
        replace(page, placed=(*page.placed, *frame.furniture(index, count)))
        for index, page in enumerate(pages, first)
    )


def stage_anchor(lesson: str, index: int) -> str:
    """The name of the place where a stage begins, for bookmarks."""
    return f"{lesson}/{index + 1}"
