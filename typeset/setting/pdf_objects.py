"""Objects of a PDF file as they are written (ISO 32000-1, 7.3): strings, arrays, dictionaries."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from reportlab.pdfbase.pdfdoc import DummyDoc, PDFString

# So many entries of an array on a line: a file is then not one endless line.
_ON_A_LINE = 10


@lru_cache(maxsize=4096)
def string(text: str) -> str:
    """A text string, in PDFDocEncoding where that has all its letters, else in UTF-16."""
    return str(PDFString(text).format(DummyDoc()).decode("ascii"))


def array(entries: Sequence[str]) -> str:
    """Entries that are written already, as an array."""
    lines = (entries[i : i + _ON_A_LINE] for i in range(0, len(entries), _ON_A_LINE))
    return f"[ {f' {chr(10)}  '.join(' '.join(line) for line in lines)} ]"


def dictionary(entries: Mapping[str, str]) -> str:
    """Entries that are written already, under names that need no escape."""
    return f"<<\n{' '.join(f'/{name} {entry}' for name, entry in entries.items())}\n>>"
