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


# The file that was opened last, known by all its bytes: the proof looks at one after another.
@lru_cache(maxsize=1)
def opened(data: bytes) -> Opened:
    """The file with these bytes."""
    return Opened(data)
