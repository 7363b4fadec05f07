"""A file taken apart into its objects once, for all who look at these."""

from __future__ import annotations

from functools import cached_property, lru_cache
from io import BytesIO

from pypdf import PdfReader

from typeset.proofing.structure_read import ReadStructure, read_structure


class Opened:
    """The objects of a file; whoever uses them leaves them as they are.

    Raises what pypdf raises, at any time.
    """

    def __init__(self, data: bytes) -> None:
        # What was told of objects for a signature, by their numbers (signature.py).
        self.digests: dict[int, bytes] = {}
        self.reader = PdfReader(BytesIO(data))
        if not self.reader.is_encrypted:
            # A file whose pages cannot be found is never kept: pypdf would find none the second
            # time, and say nothing.
            len(self.reader.pages)

    @cached_property
    def structure(self) -> ReadStructure:
        """The structure of a tagged file."""
        return read_structure(self.reader)

    def told_on(self, pages: range) -> ReadStructure:
        """What the structure tells on these pages (from 0), without a search through all of it;
        see `ReadStructure.on`."""
        found = [self._told[page] for page in pages if page in self._told]
        elements = sorted({at for own, _ in found for at in own})
        sections = sorted(at for _, own in found for at in own)
        whole = self.structure
        return ReadStructure(
            [whole.elements[at] for at in elements], [whole.sections[at] for at in sections]
        ).on(pages)

    @cached_property
    def _told(self) -> dict[int, tuple[list[int], list[int]]]:
        """For every page the elements and the sections that are told there, by their turn."""
        told: dict[int, tuple[list[int], list[int]]] = {}
        for at, each in enumerate(self.structure.elements):
            for page in {page for page, _ in each.marks}:
                told.setdefault(page, ([], []))[0].append(at)
        for at, (page, _) in enumerate(self.structure.sections):
            told.setdefault(page, ([], []))[1].append(at)
        return told


# The file that was opened last, known by all its bytes: the proof looks at one after another.
@lru_cache(maxsize=1)
def opened(data: bytes) -> Opened:
    """The file with these bytes."""
    return Opened(data)
