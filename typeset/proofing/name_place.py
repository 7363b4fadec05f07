"""Where a pupil's name stands in the drawing of a page, to tell whether another page draws the
same with another name.

A page that has been proofed, and one that is drawn by the same operations in the same frame
but for the text of one of them, can differ only in the letters of that text. They stand where
the others stood, in the same font, size and colour, and are read by the same map of the font;
so it is enough that they say what they should, and end where nothing else begins.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from pdfminer.pdffont import PDFFont, PDFUnicodeNotDefined
from pdfminer.psparser import PSLiteral

from typeset.documents.layout import Layout
from typeset.proofing.operations import Operation, operations_of
from typeset.proofing.page_marks import Glyph, ReadPage
from typeset.proofing.places import MM_PT, Box, around
from typeset.proofing.shapes_read import text_of

# A text of a drawing that holds nothing unusual (see `operations`, which leaves others alone).
_TEXT = re.compile(rb"\((?:[^()\\]++|\\(?:[0-3][0-7]{2}|[()\\nrtbf]))*+\)")
# What our pages are drawn with. All of it sets or draws at once: none spaces letters out, moves
# them off the line, hides them, or looks back at what was drawn before.
_STATE = {"cm", "g", "G", "rg", "RG", "w", "d"}
_LINES = {"n", "m", "l", "c", "re", "h", "S", "f", "f*", "B", "B*"}
_LETTERS = {"BT", "ET", "Tm", "Tf", "TL", "Tj", "T*"}
_USUAL = _STATE | _LINES | _LETTERS
# What may follow a text so that nothing depends on where it ends.
_ENDS = frozenset({"T*", "Tm", "ET"})
# Letters and what joins them: a name of these is read as nothing but a name.
_PLAIN_NAME = re.compile(r"[^\W\d_](?:[^\W\d_]|[ .'\u2019-])*", re.UNICODE)
# White that is left between the end of a name and what stands beside it.
_LEAST_WHITE_EMS = 1.0
_SLACK_PT = 0.01


def is_plain(name: str) -> bool:
    """True for a name of letters, with spaces, hyphens, apostrophes and stops."""
    return _PLAIN_NAME.fullmatch(name) is not None


@dataclass(frozen=True, slots=True)
class NamePlace:
    """The place of a text with a name: the drawing before and after that text, what stands
    behind it of the same line of reading, and the room it has (from its left, in points)."""

    before: bytes
    after: bytes
    rest: str
    font: PDFFont
    size_pt: float
    room_pt: float

    def says(self, drawing: bytes, line: str) -> bool:
        """True where the drawing is the one that was proofed with another text in this place,
        which together with the `rest` says the `line`, and has room."""
        end = len(drawing) - len(self.after)
        written = drawing[len(self.before) : end]
        if (
            len(self.before) > end
            or not drawing.startswith(self.before)
            or not drawing.endswith(self.after)
            or not _TEXT.fullmatch(written)
        ):
            return False
        letters = _letters_of(_bytes_of(written), self.font)
        if letters is None or not line.endswith(self.rest):
            return False
        text, width_ems = letters
        wanted = line[: len(line) - len(self.rest)]
        return text == wanted and width_ems * self.size_pt <= self.room_pt


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A text of a drawing: where it is written, what it holds and says, its font and size.

    So many letters are drawn before it; `is_loose` is true where nothing depends on its end.
    """

    span: tuple[int, int]
    codes: bytes
    text: str
    width_ems: float
    font: PDFFont
    size_pt: float
    letters_before: int
    is_loose: bool


@dataclass(frozen=True, slots=True)
class Drawing:
    """The drawing of a page that has been read; `font` finds its fonts by their names."""

    drawing: bytes
    page: ReadPage
    layout: Layout
    font: Callable[[str], PDFFont | None]

    def place_of(self, line: str, name: str, label: str | None) -> NamePlace | None:
        """Where the text with the name stands that begins the `line` of reading; None where
        that cannot be told for certain.

        With a `label` it is the second text of the page, after that; without, the only one.
        """
        start = line.find(name)
        if start < 0 or line.count(name) > 1 or not is_plain(name):
            return None
        drawn = list(self._texts())
        if label is not None:
            fits = drawn[1:2] if [each.text for each in drawn[:2]] == [label, line] else []
        else:
            fits = [
                each
                for each in drawn
                if line.startswith(each.text) and len(each.text) >= start + len(name)
            ]
        return self._place(fits[0], line) if len(fits) == 1 and fits[0].is_loose else None

    def _texts(self) -> Iterator[_Drawn]:
        """The texts of the drawing in turn; not all of them where it holds anything unusual."""
        operations = operations_of(self.drawing) or []
        if not all(_is_usual(each) for each in operations):
            return
        spans = (each.span() for each in _TEXT.finditer(self.drawing))
        font, size, before = None, 0.0, 0
        following = (operator for operator, _ in (*operations[1:], ("ET", [])))
        for (operator, values), after in zip(operations, following, strict=True):
            if operator == "Tf":
                font, size = self.font(str(values[0].name)), float(values[1])
            elif operator == "Tj":
                span = next(spans, None)
                letters = _letters_of(values[0], font) if font is not None else None
                if span is None or font is None or letters is None:
                    return
                yield _Drawn(span, values[0], *letters, font, size, before, after in _ENDS)
                before += len(values[0])

    def _place(self, drawn: _Drawn, line: str) -> NamePlace | None:
        """The place of this text; None where it was not read as it is written."""
        start, end = drawn.letters_before, drawn.letters_before + len(drawn.codes)
        glyphs = self.page.glyphs[start:end]
        if "".join(each.text for each in glyphs) != drawn.text:
            return None
        box = around(each.box for each in glyphs)
        if abs(drawn.width_ems * drawn.size_pt - box.width) > _SLACK_PT:
            return None
        before, after = self.drawing[: drawn.span[0]], self.drawing[drawn.span[1] :]
        room = self._limit_pt(box, glyphs) - box.left + _SLACK_PT
        rest = line[len(drawn.text) :]
        return NamePlace(before, after, rest, drawn.font, drawn.size_pt, room)

    def _limit_pt(self, box: Box, own: Sequence[Glyph]) -> float:
        """How far right the text may reach: not near to anything that stands on its height, and
        not into the margin, but always as far as the one that was proofed."""
        whole = Box(0.0, 0.0, self.page.width_pt, self.page.height_pt)
        mine = {each.order for each in own}
        others = [
            *(each.box for each in self.page.glyphs if each.order not in mine),
            *(each.box for each in self.page.strokes if not each.box.covers(whole)),
            *self.page.images,
        ]
        beside = [
            each.left
            for each in others
            if each.top <= box.bottom and each.bottom >= box.top and each.right >= box.left
        ]
        margin = self.page.width_pt - self.layout.margins.right * MM_PT
        white = _LEAST_WHITE_EMS * own[0].size_pt
        return max(box.right, min([margin, *(left - white for left in beside)]))


def _is_usual(operation: Operation) -> bool:
    """True for an operation of our pages that has the values that it wants."""
    operator, values = operation
    if operator == "Tf":
        name, size = values if len(values) == 2 else (None, None)
        return isinstance(name, PSLiteral) and isinstance(size, int | float)
    if operator == "Tj":
        return len(values) == 1 and isinstance(values[0], bytes)
    return operator in _USUAL


def _bytes_of(written: bytes) -> bytes:
    """What a text in brackets holds."""
    operations = operations_of(written + b" Tj")
    return operations[0][1][0] if operations else b""


def _letters_of(codes: bytes, font: PDFFont) -> tuple[str, float] | None:
    """What the codes say in this font, and how wide they are in ems; None where the font does
    not tell, or a letter takes more than one code."""
    if font.is_multibyte():
        return None
    try:
        text = "".join(text_of(font.to_unichr(code)) for code in codes)
    except PDFUnicodeNotDefined:
        return None
    return text, sum(font.char_width(code) for code in codes)
