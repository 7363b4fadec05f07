"""Plants one fault into a good PDF, through pypdf: in what a page draws, or in the file.

Our pages are written one drawing operation a line, so a fault is a change to a list of lines.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from pypdf import PdfReader, PdfWriter
from pypdf.generic import (
    ArrayObject,
    DecodedStreamObject,
    DictionaryObject,
    NameObject,
    NumberObject,
    TextStringObject,
)

Lines = list[str]
# How characters outside ASCII are written in the drawing, by font and character.
Codes = dict[str, dict[str, str]]
_BFCHAR = re.compile(rb"^<([0-9A-F]{2})> <([0-9A-F]{4})>$", re.MULTILINE)
# A run of letters: place, font, size, text.
RUN = re.compile(
    r"^BT 1 0 0 1 (?P<x>\S+) (?P<y>\S+) Tm (?P<font>/F\S+) (?P<size>\S+) Tf \S+ TL "
    r"\((?P<text>.*)\) Tj T\* ET$",
    re.DOTALL,
)
RULE = re.compile(r"^n (\S+) (\S+) m (\S+) (\S+) l S$")
RECT = re.compile(r"^n (\S+) (\S+) (\S+) (\S+) re (S|B|f\*?|B\*?)$")


@dataclass(frozen=True, slots=True)
class Run:
    """A run of letters in the drawing of a page."""

    index: int
    x: float
    y: float
    font: str
    size: float
    text: str

    def line(self, **changes: Any) -> str:
        """The operation that draws it, with changes."""
        now: dict[str, Any] = {
            "x": self.x,
            "y": self.y,
            "font": self.font,
            "size": self.size,
            "text": self.text,
        }
        now |= changes
        return (
            f"BT 1 0 0 1 {now['x']:.5f} {now['y']:.5f} Tm {now['font']} {now['size']} Tf "
            f"{1.2 * float(now['size']):.3f} TL ({now['text']}) Tj T* ET"
        )


def runs_of(lines: Lines) -> list[Run]:
    """All runs of letters of a page, in the order of drawing."""
    found = []
    for index, line in enumerate(lines):
        if match := RUN.match(line):
            x, y, size = float(match["x"]), float(match["y"]), float(match["size"])
            found.append(Run(index, x, y, match["font"], size, match["text"]))
    return found


def rules_of(lines: Lines) -> list[tuple[int, tuple[float, ...]]]:
    """All straight lines: index, and the numbers x1 y1 x2 y2."""
    return [
        (index, tuple(map(float, match.groups())))
        for index, line in enumerate(lines)
        if (match := RULE.match(line))
    ]


def rects_of(lines: Lines) -> list[tuple[int, tuple[float, ...], str]]:
    """All rectangles: index, the numbers x y width height, and how they are painted."""
    return [
        (index, tuple(map(float, match.groups()[:4])), match[5])
        for index, line in enumerate(lines)
        if (match := RECT.match(line))
    ]


def lines_of(page: Any) -> Lines:
    """The drawing of a page, one operation a line."""
    text = page.get_contents().get_data().decode("latin-1")
    return re.split(r"\n(?=BT|EMC|n |q|Q|[-.\d\[]|/)", text.rstrip())


def redraw(pdf: bytes, change: Callable[[list[Lines]], None]) -> bytes:
    """The PDF with its pages' drawings changed in place."""
    writer = PdfWriter(clone_from=BytesIO(pdf))
    pages = [lines_of(page) for page in writer.pages]
    change(pages)
    for page, lines in zip(writer.pages, pages, strict=True):
        stream = DecodedStreamObject()
        stream.set_data("\n".join(lines).encode("latin-1"))
        page[NameObject("/Contents")] = writer._add_object(stream)
    return written(writer)


def codes_of(pdf: bytes) -> Codes:
    """By font as pages call it: '\\\\003' for a minus sign."""
    found: Codes = {}
    for page in PdfReader(BytesIO(pdf)).pages:
        for name, font in page["/Resources"]["/Font"].items():  # type: ignore[index]  # pypdf types no deeper
            table = font.get_object()["/ToUnicode"].get_data()
            found[name] = {
                chr(int(character, 16)): f"\\{int(code, 16):03o}"
                for code, character in _BFCHAR.findall(table)
                if int(code, 16) < 32 or int(code, 16) > 126
            }
    return found


def rebuild(pdf: bytes, change: Callable[[PdfWriter], None]) -> bytes:
    """The PDF with something about the file changed."""
    writer = PdfWriter(clone_from=BytesIO(pdf))
    change(writer)
    return written(writer)


def written(writer: PdfWriter) -> bytes:
    """The file; pypdf's own mark in the description is taken back: it is no planted fault."""
    info = writer._info
    if info is not None and str(info.get("/Producer", "")).startswith("pypdf"):
        writer.add_metadata({"/Producer": "ReportLab PDF Library - (opensource)"})
    _drop_unused(writer)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def _drop_unused(writer: PdfWriter) -> None:
    """Contents that were replaced are not left in the file: that would be a fault of its own."""
    writer.compress_identical_objects(remove_duplicates=False, remove_unreferenced=True)


def add_text(lines: Lines, text: str, before: str = "", **place: Any) -> None:
    """Letters drawn last, in the font of the page's first run."""
    first = runs_of(lines)[0]
    lines.append(
        f"{before}\n" + first.line(text=text, **place) if before else first.line(text=text, **place)
    )


def pick(rng: random.Random, items: list[Any]) -> Any:
    """One of them; a fault that finds nothing to spoil is a mistake of the test."""
    assert items, "nothing to plant the fault in"
    return rng.choice(items)


def stream_object(data: bytes, **entries: Any) -> DecodedStreamObject:
    """A stream with entries such as Type='/EmbeddedFile'."""
    stream = DecodedStreamObject()
    stream.set_data(data)
    for key, value in entries.items():
        stream[NameObject(f"/{key}")] = value
    return stream


def dictionary(**entries: Any) -> DictionaryObject:
    """A PDF dictionary; texts that begin with a slash become names."""
    made = DictionaryObject()
    for key, value in entries.items():
        made[NameObject(f"/{key}")] = _object(value)
    return made


def _object(value: Any) -> Any:
    match value:
        case str() if value.startswith("/"):
            return NameObject(value)
        case str():
            return TextStringObject(value)
        case bool() | None:
            raise TypeError(value)
        case int():
            return NumberObject(value)
        case list():
            return ArrayObject(_object(each) for each in value)
        case _:
            return value
