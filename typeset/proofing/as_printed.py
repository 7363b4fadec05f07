"""What comes out of a printer is what was read back: fonts, ink, paper, wishes, nothing between.

The other checks look at what a reader of PDFs is told; these look for what would make paper
differ from it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from pypdf import PdfReader

from typeset.proofing.finding import Finding
from typeset.proofing.font_programs import check_programs
from typeset.proofing.opened import opened
from typeset.proofing.plain_ink import check_ink

# What holds any bytes: streams, and texts in brackets.
_HELD = re.compile(rb"stream\r?\n.*?endstream|\((?:\\.|[^\\()])*\)", re.DOTALL)
# Any remark but those that every file of ours has: its version, a line of other bytes, who wrote
# it, and its end.
_REMARK = re.compile(
    rb"%(?!%?EOF|PDF-|[\x80-\xff]{4}[\r\n]|[^\n]{0,5}ReportLab [Gg]enerated PDF document)"
)
_SLACK_PT = 0.5
# ISO 32000-1, table 150: the title in the window, the true size, the edge to turn over.
_SCALING, _DUPLEX = "/PrintScaling", "/Duplex"
_WISHES = {"/DisplayDocTitle", _SCALING, _DUPLEX}
_EDGES = {"/DuplexFlipLongEdge", "/DuplexFlipShortEdge"}


def check_as_printed(data: bytes, name: str) -> Iterator[Finding]:
    """Findings about whatever would be printed otherwise. Raises what pypdf raises."""
    reader = opened(data).reader
    for what in check_programs(reader):
        yield Finding(name, 0, None, what, "", "", "font")
    yield from _wishes(reader, name)
    yield from _pages(reader, name)
    if _REMARK.search(_HELD.sub(b"", data)):
        what = "the file holds a remark between its objects"
        yield Finding(name, 0, None, what, "", "", "hidden")


def _wishes(reader: PdfReader, name: str) -> Iterator[Finding]:
    preferences: Any = reader.root_object.get("/ViewerPreferences", {})
    wishes = {str(key): str(value) for key, value in preferences.get_object().items()}
    for key in sorted(set(wishes) - _WISHES):
        what = f"the file asks the printer for {key[1:]} {wishes[key]}"
        yield Finding(name, 0, None, what, "", "", "page")
    if wishes.get(_SCALING) != "/None":
        what = f"the file asks for the scaling '{wishes.get(_SCALING, '').lstrip('/')}'"
        yield Finding(name, 0, None, what, "none: it is printed at its own size", "", "page")
    if _DUPLEX in wishes and wishes[_DUPLEX] not in _EDGES:
        what = f"the file asks the printer for '{wishes[_DUPLEX].lstrip('/')}'"
        yield Finding(name, 0, None, what, "both sides of the paper", "", "page")


def asked_edge(data: bytes) -> str:
    """The edge that the printer is asked to turn the paper over; empty for none."""
    preferences: Any = opened(data).reader.root_object.get("/ViewerPreferences", {})
    return str(preferences.get_object().get(_DUPLEX, "")).lstrip("/")


def check_edge(data: bytes, name: str, is_long: bool) -> Iterator[Finding]:
    """A finding where the printer is not asked for both sides, turned over that edge."""
    wanted, asked = f"DuplexFlip{'Long' if is_long else 'Short'}Edge", asked_edge(data)
    if asked != wanted:
        what = f"the file asks the printer for '{asked or 'one side'}'"
        yield Finding(name, 0, None, what, wanted, "", "page")


def _pages(reader: PdfReader, name: str) -> Iterator[Finding]:
    """Every page is as large as the first, the white ones too, and drawn in plain ink."""
    first: tuple[float, float] | None = None
    for number, page in enumerate(reader.pages, 1):
        size = float(page.mediabox.width), float(page.mediabox.height)
        first = first or size
        if any(abs(one - other) > _SLACK_PT for one, other in zip(size, first, strict=True)):
            what = "this page is not as large as the first one"
            yield Finding(name, number, None, what, "", "", "page")
        if tuple(page.cropbox) != tuple(page.mediabox):
            what = "the page is cropped when it is shown"
            yield Finding(name, number, None, what, "", "", "page")
        drawing = page.get_contents()
        for what in check_ink(drawing.get_data()) if drawing is not None else ():
            yield Finding(name, number, None, f"the page {what}", "", "", "hidden")
