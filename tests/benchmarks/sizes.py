"""How large the files are, and how many font subsets each holds."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import cast

from pypdf import PdfReader
from pypdf.generic import DictionaryObject, NumberObject

from tests.benchmarks.one_make import fresh_order
from tests.benchmarks.processes import WEEK
from tests.benchmarks.report import Section, Settings, table
from typeset.press.making import make_week
from typeset.reading.content import HOME_PACK


@dataclass(frozen=True, slots=True)
class _Size:
    file: str
    pages: int
    kilobytes: float
    subsets: int


def sizes(_settings: Settings) -> Section:
    """The files of the demonstration week, and its home pack with fields."""
    with TemporaryDirectory() as told:
        folder = Path(told)
        make_week(fresh_order(folder=WEEK, to=folder))
        make_week(fresh_order(folder=WEEK, to=folder, only=HOME_PACK))
        found = [_size(file) for file in sorted(folder.glob("*.pdf"))]
    rows = [
        [f"`{each.file}`", f"{each.pages}", f"{each.kilobytes:.0f} kB",
         f"{each.kilobytes / each.pages:.1f} kB", f"{each.subsets}"]
        for each in found
    ]  # fmt: skip
    return Section("Sizes", table(("file", "pages", "size", "a page", "font subsets"), rows))


def _size(file: Path) -> _Size:
    reader = PdfReader(file)
    return _Size(file.name, len(reader.pages), file.stat().st_size / 1000, _embedded(reader))


def _embedded(reader: PdfReader) -> int:
    """The fonts in the file: every descriptor with a TrueType font (ISO 32000-1, table 122)."""
    count = 0
    for number in range(1, cast("NumberObject", reader.trailer["/Size"])):
        each = reader.get_object(number)
        count += isinstance(each, DictionaryObject) and "/FontFile2" in each
    return count
