"""Findings for other programs, and as pictures: the side with the place ringed."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber

from typeset.errors import OutputError
from typeset.proofing import Finding

# Enough to read 9 pt on a screen.
_DOTS_PER_INCH = 110
_MM_PER_INCH = 25.4
_RING_RADIUS_MM = 6.0
# Dark red, thick: seen on any screen, and the picture is never printed as a lesson.
_RING_COLOUR = (176, 0, 32)
_RING_WIDTH_PX = 4


def findings_json(findings: Sequence[Finding]) -> str:
    """The findings as a JSON list; places in millimetres from the top left corner."""
    told = [
        {
            "document": each.document,
            "page": each.page or None,
            "place_mm": [round(length, 1) for length in each.place] if each.place else None,
            "kind": each.kind,
            "what": each.what,
            "should": each.should or None,
            "source": each.source or None,
            "message": each.message,
        }
        for each in findings
    ]
    return json.dumps(told, indent=2, ensure_ascii=False)


def write_pictures(findings: Sequence[Finding], pdfs: dict[str, bytes], to: Path) -> list[Path]:
    """A picture of every side that has findings with a place, each place ringed.

    `pdfs` are the files by name. Raises OutputError where the folder cannot be written.
    """
    try:
        to.mkdir(parents=True, exist_ok=True)
        return list(_pictures(findings, pdfs, to))
    except OSError as error:
        raise OutputError(f"cannot write pictures in {to}: {error.strerror}") from error


def _pictures(findings: Sequence[Finding], pdfs: dict[str, bytes], to: Path) -> Iterator[Path]:
    placed = [each for each in findings if each.page and each.place and each.document in pdfs]
    for document in dict.fromkeys(each.document for each in placed):
        with pdfplumber.open(BytesIO(pdfs[document])) as pdf:
            for number in sorted({each.page for each in placed if each.document == document}):
                if number > len(pdf.pages):
                    continue
                about = [e for e in placed if (e.document, e.page) == (document, number)]
                file = to / f"{Path(document).stem}-page-{number}.png"
                _ringed(pdf.pages[number - 1], about).save(file)
                yield file


def _ringed(page: Any, findings: Sequence[Finding]) -> Any:
    """The page as an image with a ring around every place."""
    from PIL import ImageDraw

    image = page.to_image(resolution=_DOTS_PER_INCH).original.convert("RGB")
    pencil = ImageDraw.Draw(image)
    scale = _DOTS_PER_INCH / _MM_PER_INCH
    for each in findings:
        assert each.place is not None
        x, y, radius = each.place[0] * scale, each.place[1] * scale, _RING_RADIUS_MM * scale
        box = (x - radius, y - radius, x + radius, y + radius)
        pencil.ellipse(box, outline=_RING_COLOUR, width=_RING_WIDTH_PX)
    return image
