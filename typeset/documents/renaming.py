"""A pupil's sheet as laid out, and the same sheet for others: only the name is set anew.

Nothing else on a sheet depends on whose it is, as long as the name fits on its line and the
foot with the name leaves as much of the page as the foot of the first sheet does. Where that
is not so, the sheet has to be laid out whole.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from typeset.documents.class_work import PupilsSheet
from typeset.documents.composer import Composer
from typeset.documents.name_line import filled_in, name_width_pt
from typeset.documents.numbering import with_feet
from typeset.documents.task_sheet import lay_out_sheet, sheet_frame
from typeset.errors import FitError, GlyphError
from typeset.setting.answer_spaces import SpacePiece
from typeset.setting.frames import Page, Placed
from typeset.setting.pages import PageFrame, PageLayout


@dataclass(frozen=True, slots=True)
class LaidOut:
    """A sheet whose pages are set but have no feet yet, and the frame that has them."""

    sheet: PupilsSheet
    bare: PageLayout
    frame: PageFrame

    def pages(self) -> tuple[Page, ...]:
        """The finished sides of the pupil whose sheet it is."""
        return with_feet(self.bare.pages, self.frame, 0, len(self.bare.pages))


def lay_out(sheet: PupilsSheet) -> LaidOut:
    """The whole sheet. Raises FitError, GlyphError as `compose_task_sheet` does."""
    return LaidOut(
        sheet, *lay_out_sheet(sheet.solved, sheet.lesson, sheet.layout, sheet.pupil.name)
    )


@dataclass(frozen=True, slots=True)
class Model:
    """A laid out sheet that others are made from: `pages` are finished, `line` is the item of
    the name on the first of them."""

    laid_out: LaidOut
    pages: tuple[Page, ...]
    line: Placed

    def pages_for(self, sheet: PupilsSheet) -> tuple[Page, ...] | None:
        """The sides for another pupil, of a sheet like the model's, just as they are when it
        is laid out whole; None where nothing but that can tell."""
        laid_out = self.laid_out
        frame = sheet_frame(Composer(sheet.layout), sheet.solved, sheet.lesson, sheet.pupil.name)
        line = _line(sheet, laid_out.bare.type_size_pt, self.line)
        if line is None or frame.height_pt != laid_out.frame.height_pt:
            return None
        first, *others = laid_out.bare.pages
        first = replace(first, placed=(line, *first.placed[1:]))
        pages = with_feet((first, *others), frame, 0, len(laid_out.bare.pages))
        return tuple(_sharing(*pair) for pair in zip(pages, self.pages, strict=True))


def model_of(laid_out: LaidOut, pages: tuple[Page, ...]) -> Model | None:
    """The sheet, with its finished `pages`, as a model for others; None where its own name,
    set anew, does not give what stands on its first page."""
    first = laid_out.bare.pages[0].placed[:1]
    if not first or first[0] != _line(laid_out.sheet, laid_out.bare.type_size_pt, first[0]):
        return None
    return Model(laid_out, pages, first[0])


def _line(sheet: PupilsSheet, size_pt: float, place: Placed) -> Placed | None:
    """The name line of the sheet where `place` is; None for a name that is longer than the line.

    At the largest size the line has the least room and the name is widest, so that a name
    which fits there never makes a sheet be set smaller.
    """
    try:
        _piece(sheet, sheet.layout.type_size.largest)
        (item,) = _piece(sheet, size_pt).place(place.x_pt, place.y_pt, place.height_pt)
    except (FitError, GlyphError):
        return None
    return replace(item, anchor=place.anchor)


def _piece(sheet: PupilsSheet, size_pt: float) -> SpacePiece:
    composer = Composer(sheet.layout)
    column = composer.column(size_pt)
    label = composer.rich("sheet", "name")
    return filled_in(label, sheet.pupil.name, column, name_width_pt(column))


def _sharing(page: Page, model: Page) -> Page:
    """The page, with the model's own items where they are the same: a class then takes little
    more memory than a sheet and its names."""
    pairs = zip(page.placed, model.placed, strict=True)
    return replace(page, placed=tuple(theirs if own == theirs else own for own, theirs in pairs))
