"""A digest of all that decides how pages read, look and behave.

Objects are told by what they hold: their keys and values, streams unpacked, wherever they stand
in the file. A page is told by its own entries and those that it inherits, with all that hangs on
them (drawing, fonts, annotations), and by what the structure tells of it.
"""

from __future__ import annotations

from hashlib import sha256
from typing import Any

from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, StreamObject

from typeset.proofing.opened import Opened, opened
from typeset.proofing.structure_read import ReadStructure

# Where an object stands among others, and how a stream is packed: what these lead to is looked
# at with the whole file.
_NOT_OWN = {"/Parent", "/StructParents", "/StructParent", "/Length", "/Filter", "/DecodeParms"}
_MOST_DEEP = 20


def signature_of(data: bytes, pages: range) -> str:
    """The digest of the pages with these indices (from 0), in hexadecimal figures.

    Pages that cannot be read have one that no others have.
    """
    try:
        file = opened(data)
        teller = _Teller(file)
        told = [teller.page(index) for index in pages]
        # A file without a structure has none to tell.
        told.append(_told_of(file.told_on(pages)))
    except Exception:
        # A damaged or foreign file can make the reader fail in any way.
        told = [b"cannot be read", data]
    return _digest(*told).hex()


class _Teller:
    """Tells objects by what they hold."""

    def __init__(self, file: Opened) -> None:
        self.reader = file.reader
        # Digests of objects from which no way leads back outwards, by their numbers.
        self.known = file.digests
        self.ways_back = 0
        self.pages = {
            page.indirect_reference.idnum: index
            for index, page in enumerate(self.reader.pages)
            if page.indirect_reference is not None
        }

    def page(self, index: int) -> bytes:
        """A page with all that hangs on it."""
        return self.told(self.reader.pages[index], ())

    def told(self, value: Any, around: tuple[int, ...]) -> bytes:
        """A value; `around` are the objects that it was reached through."""
        if isinstance(value, IndirectObject):
            return self.reference(value, around)
        if isinstance(value, DictionaryObject):
            entries = (
                part
                for key in sorted(set(value) - _NOT_OWN)
                for part in (key.encode(), self.told(value.raw_get(key), around))
            )
            names = repr(_names_around(value)).encode()
            drawn = value.get_data() if isinstance(value, StreamObject) else b""
            kind = b"stream" if isinstance(value, StreamObject) else b"dictionary"
            return _digest(kind, names, drawn, *entries)
        if isinstance(value, ArrayObject):
            return _digest(b"array", *(self.told(each, around) for each in list.__iter__(value)))
        return f"{type(value).__name__} {value!r}".encode()

    def reference(self, value: IndirectObject, around: tuple[int, ...]) -> bytes:
        """The object that is meant; a page by its index, and one that holds this value by how
        far outwards it is."""
        number = value.idnum
        if number in self.pages:
            return b"page %d" % self.pages[number]
        if number in around:
            self.ways_back += 1
            return b"outwards %d" % (len(around) - around.index(number))
        if number in self.known:
            return self.known[number]
        before = self.ways_back
        told = self.told(value.get_object(), (*around, number))
        if self.ways_back == before:
            self.known[number] = told
        return told


def _names_around(field: DictionaryObject) -> list[str]:
    """What a field of a form is called by the fields that it belongs to."""
    names: list[str] = []
    above = field.get("/Parent")
    while isinstance(above, DictionaryObject) and "/T" in above and len(names) < _MOST_DEEP:
        names.append(str(above["/T"]))
        above = above.get("/Parent")
    return names


def _told_of(here: ReadStructure) -> bytes:
    """What the structure tells of pages, whatever the numbers of its objects."""
    told = [
        (each.tag, each.path, each.alt, each.actual_text, each.marks, len(each.links))
        for each in here.elements
    ]
    return repr((told, here.sections)).encode()


def _digest(*parts: bytes) -> bytes:
    """Of the parts, each with its length, so that nothing can pass from one to the next."""
    made = sha256()
    for part in parts:
        made.update(b"%d " % len(part))
        made.update(part)
    return made.digest()
