"""What a page draws as the operators of its content stream (ISO 32000-1, 8.5 and 9.4).

reportlab's canvas could write them, but makes an object for each piece of text and formats each
number anew: half of the time of a finished file. Fonts remain its own: it embeds subsets of
them and says which code stands for which letter.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Any

from reportlab.pdfbase import pdfmetrics

from typeset.drawing.fonts import drawable, width_pt
from typeset.drawing.shapes import Colour, Face, Path, Rect, Rule, Shape, TextRun
from typeset.setting.pdf_fonts import font_name

# As reportlab's canvas has it. No line of ours is broken by a reader, so it moves nothing.
_LEADING_EMS = 1.2
# Bytes that a string in brackets holds as they are; others are written as octal numbers.
_PLAIN = frozenset(range(32, 127)) - frozenset(b"()\\")
_PATH_OPERATORS = {"M": "m", "L": "l", "C": "c"}


@lru_cache(maxsize=16384)
def number(value: float) -> str:
    """A number in a content stream: six figures at most behind the point, no needless nought."""
    size = abs(value)
    if size <= 1e-7:
        return "0"
    places = 6 if size < 10 else 5 if size < 100 else 4 if size < 1000 else 3
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return text[1:] if text.startswith("0.") else text


class Letters:
    """The letters of a face in one file: how each is written between brackets."""

    def __init__(self, canvas: Any, face: Face) -> None:
        self.face = face
        self.document = canvas._doc
        self.font = pdfmetrics.getFont(font_name(face))
        # A letter of the first subset by its code point. Only a text in a rare script, or in
        # very many letters, needs others.
        self.written: dict[int, str] = {}
        self.known: set[str] = set()
        self.name = ""
        self.needs_more = False

    def shown(self, text: str, size: str) -> str:
        """The operators that choose the face and show the text. Raises GlyphError."""
        if not self.known.issuperset(text):
            self._learn(text)
        if text and not self.needs_more:
            return f"{self.name} {size} ({text.translate(self.written)}) Tj"
        return " ".join(self._pieces(text, size))

    def _learn(self, text: str) -> None:
        width_pt(text, 1.0, self.face)  # raises GlyphError
        for letter in text:
            if letter in self.known:
                continue
            ((subset, code),) = self.font.splitString(drawable(letter), self.document)
            self.needs_more |= subset > 0
            self.written[ord(letter)] = _escaped(code)
            self.known.add(letter)
        self.name = self._subset_name(0)

    def _pieces(self, text: str, size: str) -> Iterable[str]:
        for subset, codes in self.font.splitString(drawable(text), self.document):
            yield f"{self._subset_name(subset)} {size} ({_escaped(codes)}) Tj"

    def _subset_name(self, subset: int) -> str:
        return str(self.font.getSubsetInternalName(subset, self.document))


def _escaped(codes: bytes) -> str:
    return "".join(chr(c) if c in _PLAIN else _escape(c) for c in codes)


def _escape(code: int) -> str:
    return f"\\{chr(code)}" if code in b"()\\" else f"\\{code:03o}"


class Pen:
    """Draws the shapes of a page from its top left corner into a list of operators; sets width,
    dash and colours only when they change."""

    def __init__(self, letters: dict[Face, Letters], page_height_pt: float) -> None:
        self.letters = letters
        self.top_pt = page_height_pt
        self.code: list[str] = []
        self.fill: Colour | None = None
        self.stroke: Colour | None = None
        self.thickness_pt: float | None = None
        # None until it is first set: an unbroken line is ().
        self.dash_pt: Sequence[float] | None = None

    def draw(self, shapes: Sequence[Shape]) -> None:
        """The shapes, one after the other. Raises GlyphError."""
        for shape in shapes:
            if isinstance(shape, TextRun):
                self._letters(shape)
            elif isinstance(shape, Rule):
                self._rule(shape)
            elif isinstance(shape, Rect):
                self._rect(shape)
            else:
                self._path(shape)

    def _letters(self, run: TextRun) -> None:
        if run.colour != self.fill:
            self._fill(run.colour)
        shown = self.letters[run.face].shown(run.text, _size(run.size_pt))
        x, y = number(run.x_pt), number(self.top_pt - run.y_pt)
        self.code.append(f"BT 1 0 0 1 {x} {y} Tm {shown} T* ET")

    def _rule(self, rule: Rule) -> None:
        self._stroke(rule.colour, rule.thickness_pt, rule.dash_pt)
        top = self.top_pt
        start = f"{number(rule.x1_pt)} {number(top - rule.y1_pt)}"
        end = f"{number(rule.x2_pt)} {number(top - rule.y2_pt)}"
        self.code.append(f"n {start} m {end} l S")

    def _rect(self, rect: Rect) -> None:
        if rect.thickness_pt > 0:
            self._stroke(rect.stroke, rect.thickness_pt, rect.dash_pt)
        if rect.fill is not None and rect.fill != self.fill:
            self._fill(rect.fill)
        foot = self.top_pt - rect.y_pt - rect.height_pt
        corner = f"{number(rect.x_pt)} {number(foot)}"
        size = f"{number(rect.width_pt)} {number(rect.height_pt)}"
        self.code.append(f"n {corner} {size} re {_painted(rect)}")

    def _path(self, path: Path) -> None:
        if path.thickness_pt > 0:
            self._stroke(path.stroke, path.thickness_pt, None)
        if path.fill is not None and path.fill != self.fill:
            self._fill(path.fill)
        top = self.top_pt
        drawn = ["n"]
        for command, *numbers in path.steps:
            ends = [
                number(top - float(each)) if index % 2 else number(float(each))
                for index, each in enumerate(numbers)
            ]
            drawn.append(f"{' '.join(ends)} {_PATH_OPERATORS[str(command)]}")
        self.code.append(" ".join(drawn))
        self.code.append(_painted(path))

    def _stroke(
        self, colour: Colour, thickness_pt: float, dash_pt: tuple[float, float] | None
    ) -> None:
        if colour != self.stroke:
            self.stroke = colour
            self.code.append(_coloured(colour, "G", "RG"))
        if thickness_pt != self.thickness_pt:
            self.thickness_pt = thickness_pt
            self.code.append(f"{number(thickness_pt)} w")
        dash = dash_pt or ()
        if dash != self.dash_pt:
            self.dash_pt = dash
            self.code.append(f"[{' '.join(map(number, dash))}] 0 d")

    def _fill(self, colour: Colour) -> None:
        self.fill = colour
        self.code.append(_coloured(colour, "g", "rg"))


@lru_cache(maxsize=256)
def _size(size_pt: float) -> str:
    return f"{number(size_pt)} Tf {number(size_pt * _LEADING_EMS)} TL"


def _coloured(colour: Colour, grey: str, rgb: str) -> str:
    # Greys stay greys in the file: a printer then uses its black ink alone.
    if colour[0] == colour[1] == colour[2]:
        return f"{number(colour[0])} {grey}"
    return f"{' '.join(map(number, colour))} {rgb}"


def _painted(shape: Rect | Path) -> str:
    """The operator that strokes and fills a path, by the even-odd rule."""
    if shape.thickness_pt > 0:
        return "S" if shape.fill is None else "B*"
    return "n" if shape.fill is None else "f*"
