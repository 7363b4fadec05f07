"""Looks a class list over before anything is made of it: layouts, letters, versions."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.name_line import why_not_printed
from typeset.documents.versions import Versions
from typeset.drawing.fonts import in_family
from typeset.errors import Complaint, ContentError, GlyphError, LayoutError
from typeset.press.version_check import alike_versions
from typeset.reading.class_list import ClassList, Pupil, read_class_list
from typeset.reading.content import CORE


def check_pupils(file: Path, usual: Layout, folder: Path) -> tuple[ClassList, dict[int, Layout]]:
    """The list, and the layout of each pupil by number; `usual` where the list names none.

    Raises ContentError with every complaint about the list, OutputError where it cannot be read.
    """
    layouts: dict[int, Layout] = {}
    # A class has a few layouts and many pupils.
    named = cache(lambda name: find_layout(name, folder))

    def check(pupil: Pupil) -> Iterator[Complaint]:
        try:
            layout = named(pupil.layout) if pupil.layout else usual
        except LayoutError as error:
            yield Complaint(pupil.place, str(error))
            return
        layouts[pupil.number] = layout
        yield from _about_name(pupil, layout)

    return read_class_list(file, check), layouts


def list_complaints(file: Path) -> tuple[Complaint, ...]:
    """What can be said of the list where the week is wrong too, so that its layouts are not
    known. Raises OutputError."""
    try:
        read_class_list(file)
    except ContentError as error:
        return error.complaints
    return ()


def _about_name(pupil: Pupil, layout: Layout) -> Iterator[Complaint]:
    """Whether the name can be printed; the line tells whose it is."""
    try:
        with in_family(layout.fonts):
            why = why_not_printed(pupil.name, layout)
    except GlyphError as error:
        # The message names the character; the name that it is needed in says nothing more.
        problem = str(error).split(", needed in")[0]
        yield Complaint(pupil.place, f"{problem} for the name", "write it in another way")
        return
    if why:
        yield Complaint(pupil.place, why, "shorten it to a first name or initials")


def check_variation(versions: Versions, pupils: ClassList, lesson: str | None) -> None:
    """Raises ContentError for every pupil with a version that has no other numbers than the
    core, so that it would be the same sheet under another mark."""
    alike = alike_versions(versions, lesson)
    where = f"'{lesson}'" if lesson else "the week"
    complaints = [
        Complaint(
            pupil.place,
            f"no number of {where} differs in the version '{pupil.version}'",
            f"give problems '{pupil.version}:' numbers of their own, or write '{CORE}' here",
        )
        for pupil in pupils.pupils
        if pupil.version in alike
    ]
    if complaints:
        raise ContentError(complaints)
