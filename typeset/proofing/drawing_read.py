"""What a page draws, read by pdfminer, which lies under pdfplumber's pages.

pdfplumber makes an object of some twenty attributes for every letter. The proof needs eight of
them, and all but two are the same for the letters of a run: so letters are made here, run by
run, out of the same numbers by the same sums. Text that is not level, and all that is no text,
goes pdfplumber's own way.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import isfinite
from typing import Any, TypeAlias

from pdfminer.layout import LTComponent, LTContainer
from pdfminer.pdfcolor import PDFColorSpace
from pdfminer.pdfdevice import PDFTextSeq
from pdfminer.pdffont import PDFFont, PDFUnicodeNotDefined
from pdfminer.pdfinterp import PDFGraphicState, PDFPageInterpreter
from pdfminer.pdftypes import stream_value
from pdfminer.utils import Matrix, Point, Rect
from pdfplumber.page import Page, PDFPageAggregatorWithMarkedContent

from typeset.proofing.colours_read import rgb_of
from typeset.proofing.operations import operations_of
from typeset.proofing.page_marks import Glyph
from typeset.proofing.places import Box
from typeset.proofing.shapes_read import (
    ASCENT_EMS,
    DESCENT_EMS,
    font_name,
    section_of,
    text_of,
)

# The text of a letter by its code, and its width in ems.
Letters: TypeAlias = dict[int, tuple[str, float]]


@dataclass(slots=True)
class Faces:
    """The letters of a file's fonts, as far as they have been met; shared by its pages."""

    letters: dict[PDFFont, Letters] = field(default_factory=dict)


def drawn_on(page: Page, faces: Faces) -> list[Glyph | LTComponent]:
    """All that the page draws, in order. Raises whatever pdfminer raises.

    A letter that pdfminer has made, and every shape and picture, is as pdfminer gives it; its
    `tag` and `mcid` are those of the marked content that it stands in.
    """
    device = _Device(page, faces)
    _Interpreter(page.pdf.rsrcmgr, device).process_page(page.page_obj)
    drawn: list[Any] = device.get_result()._objs
    if not device.has_pages_within:
        return drawn
    # A page within the page has counted its letters for itself.
    return [
        replace(each, order=at) if isinstance(each, Glyph) else each
        for at, each in enumerate(_flat(drawn))
    ]


def _flat(drawn: list[Any]) -> Iterator[Any]:
    for each in drawn:
        if isinstance(each, LTContainer):
            yield from _flat(each._objs)
        else:
            yield each


class _Interpreter(PDFPageInterpreter):
    """pdfminer's, with drawings of the usual kind taken apart by ourselves."""

    def execute(self, streams: Sequence[object]) -> None:
        """Carry out the operations of a page; a page within the page is left to pdfminer."""
        stream = stream_value(streams[0]) if len(streams) == 1 else None
        if stream is None or stream.objid is None or self.parent_stream_ids:
            super().execute(streams)
            return
        operations = operations_of(stream.get_data())
        if operations is None:
            super().execute(streams)
            return
        self.stream_ids.clear()
        self.stream_ids.add(stream.objid)
        known: dict[str, tuple[Callable[..., None] | None, int]] = {}
        for operator, values in operations:
            if operator not in known:
                known[operator] = self._function(operator)
            function, wanted = known[operator]
            if function is not None and len(values) == wanted and not self.argstack:
                function(*values)
            else:
                self._carry_out(function, wanted, values)

    def _function(self, operator: str) -> tuple[Callable[..., None] | None, int]:
        """What carries out an operator, and how many values it wants; nothing for an unknown."""
        function = getattr(self, f"do_{operator.replace('*', '_a')}", None)
        return function, function.__code__.co_argcount - 1 if function is not None else 0

    def _carry_out(
        self, function: Callable[..., None] | None, wanted: int, values: list[Any]
    ) -> None:
        """An operation that has not its number of values: as in pdfminer, what is too much is
        left for the next, and without enough nothing is done."""
        self.argstack.extend(values)
        taken = self.pop(wanted)
        if function is not None and len(taken) == wanted:
            function(*taken)


class _Device(PDFPageAggregatorWithMarkedContent):
    """Gathers what a page draws; level runs of text as our own letters."""

    def __init__(self, page: Page, faces: Faces) -> None:
        super().__init__(page.pdf.rsrcmgr, pageno=page.page_number, laparams=page.pdf.laparams)
        self.has_pages_within = False
        self._faces = faces
        self._height = float(page.height)
        self._left = page.mediabox[0]

    def begin_figure(self, name: str, bbox: Rect, matrix: Matrix) -> None:
        """A picture, or a page within the page, begins."""
        self.has_pages_within = True
        super().begin_figure(name, bbox, matrix)

    def tag_cur_item(self) -> None:
        """Write down the marked content of what was drawn last."""
        drawn: list[Any] = self.cur_item._objs
        if drawn and isinstance(drawn[-1], Glyph):
            tag, mcid = section_of(self.cur_tag, self.cur_mcid)
            drawn[-1] = replace(drawn[-1], tag=tag, mcid=mcid)
        else:
            super().tag_cur_item()

    def render_string_horizontal(
        self,
        seq: PDFTextSeq,
        matrix: Matrix,
        pos: Point,
        font: PDFFont,
        fontsize: float,
        scaling: float,
        charspace: float,
        wordspace: float,
        rise: float,
        dxscale: float,
        ncs: PDFColorSpace,
        graphicstate: PDFGraphicState,
    ) -> Point:
        """A run of letters; gives where the next one begins."""
        a, b, c, d, e, f = matrix
        if b or c or not isfinite(a + d + e + f + fontsize):
            return super().render_string_horizontal(
                *(seq, matrix, pos, font, fontsize, scaling, charspace, wordspace, rise),
                *(dxscale, ncs, graphicstate),
            )
        (x, y), left = pos, self._left
        # For all letters of the run the same: what LTChar works out for each.
        base_x, base_y = y * c + float(e), y * d + float(f)
        foot = font.get_descent() * fontsize + rise
        low, high = d * foot + base_y, d * (foot + fontsize) + base_y
        size, baseline = abs(high - low), self._height - base_y
        top, bottom = baseline - ASCENT_EMS * size, baseline + DESCENT_EMS * size
        upright = a * d * scaling > 0 and d > 0
        name, colour = font_name(font.fontname), rgb_of(graphicstate.ncolor)
        letters = self._faces.letters.setdefault(font, {})
        drawn: list[Any] = self.cur_item._objs
        order, is_later = len(drawn), False
        for each in seq:
            if isinstance(each, int | float):
                x -= each * dxscale
                is_later = True
                continue
            if not isinstance(each, bytes):
                continue
            tag, mcid = section_of(self.cur_tag, self.cur_mcid) if each else ("", None)
            for code in font.decode(each):
                if is_later:
                    x += charspace
                if code not in letters:
                    letters[code] = self._letter(font, code)
                text, width = letters[code]
                start, wide = x * a + base_x, width * fontsize * scaling
                end = a * wide + start
                ends = (start, end) if start <= end else (end, start)
                box = Box(ends[0] + left, top, ends[1] + left, bottom)
                drawn.append(
                    Glyph(text, box, baseline, size, name, colour, order, upright, tag, mcid)
                )
                order += 1
                x += wide
                if code == 32 and wordspace:
                    x += wordspace
                is_later = True
        return (x, y)

    def _letter(self, font: PDFFont, code: int) -> tuple[str, float]:
        try:
            text = font.to_unichr(code)
        except PDFUnicodeNotDefined:
            text = self.handle_undefined_char(font, code)
        return text_of(text), font.char_width(code)
