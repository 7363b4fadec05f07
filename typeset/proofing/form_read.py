"""The form of a file read back: its fields, and what is wrong with them as objects.

Every key has to be a known one, so that nothing runs, nothing is filled in, and nothing stands
in an appearance.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, StreamObject

from typeset.proofing.places import Box

_FORM_KEYS = {"/Fields", "/DA", "/DR"}
_NODE_KEYS = {"/T", "/Kids", "/Parent"}
_FIELD_KEYS = {"/Type", "/Subtype", "/FT", "/T", "/TU", "/Rect", "/F", "/StructParent", "/AP"}
_FIELD_KEYS |= {"/Parent"}
_TYPED_KEYS, _TICKED_KEYS = {"/DA", "/Ff"}, {"/V", "/AS"}
_LOOKS = {"/Type", "/Subtype", "/BBox", "/Resources", "/Length", "/Filter"}
# Printed with its page, and on several lines (ISO 32000-1, tables 165 and 228).
_PRINTED, _SEVERAL = 4, 1 << 12
_TYPE = re.compile(r"/(\w+) (\d+(?:\.\d+)?) Tf 0 g")
_LEAST_TYPE_PT = 8.0
_NOTHING_TYPED = re.compile(rb"\s*/Tx\s+BMC\s+EMC\s*")
# Strokes alone: a tick holds no letters.
_STROKES = re.compile(rb"(?:[-\d.]+\s+|[qQwmlS]\s*)*")
_MOST_DEEP = 8


@dataclass(frozen=True, slots=True)
class ReadField:
    """A field as read back; `page` counts from 1, `number` is that of its object."""

    name: str
    told: str
    ticks: bool
    several: bool
    page: int
    box: Box
    number: int


@dataclass(slots=True)
class ReadForm:
    """All fields in the order of the pages, and what is wrong with them.

    `texts` are the objects that hold names and tooltips, `streams` the appearances.
    """

    fields: list[ReadField] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    texts: set[int] = field(default_factory=set)
    streams: set[int] = field(default_factory=set)

    def within(self, first: int, count: int) -> ReadForm:
        """The fields of `count` pages from `first` (from 0) on, their pages counted anew."""
        return ReadForm(
            [
                replace(each, page=each.page - first)
                for each in self.fields
                if first < each.page <= first + count
            ]
        )


def read_form(pdf: PdfReader, links: bool = False) -> ReadForm:
    """The form of the file; with `links`, these may lie on its pages, too (see navigation.py).

    Raises what pypdf raises.
    """
    return _Walk(pdf, links).read()


class _Walk:
    def __init__(self, pdf: PdfReader, links: bool) -> None:
        self.pdf = pdf
        self.links = links
        self.found = ReadForm()
        # The full name of every field by the number of its object.
        self.names: dict[int, str] = {}
        self.fonts: set[str] = set()

    def fault(self, what: str) -> None:
        self.found.faults.append(what)

    def read(self) -> ReadForm:
        catalogue: Any = self.pdf.trailer["/Root"].get_object()
        reference = catalogue.raw_get("/AcroForm") if "/AcroForm" in catalogue else None
        form = _dictionary(reference)
        if form is None:
            self.fault("the file has no form to fill in")
            return self.found
        self.found.texts.add(_number(reference))
        self.known(form, _FORM_KEYS, "the form")
        self.resources(_dictionary(form.get("/DR")))
        self.type(form, "the form")
        for each in _list(form.get("/Fields")):
            self.node(each, "", None)
        self.pages()
        return self.found

    def resources(self, held: DictionaryObject | None) -> None:
        fonts = _dictionary(held.get("/Font")) if held is not None else None
        if held is None or set(held) != {"/Font"} or fonts is None:
            self.fault("the form has no face for what is typed, or more than that")
            return
        self.fonts = {key.lstrip("/") for key in fonts}

    def known(self, holder: DictionaryObject, keys: set[str], what: str) -> None:
        for key in sorted(set(holder) - keys):
            self.fault(f"{what} holds {key}")

    def node(self, reference: Any, path: str, parent: Any) -> None:
        """A field, or a part of names with fields below."""
        number, node = _number(reference), _dictionary(reference)
        if node is None or not number or number in self.found.texts or path.count(".") > _MOST_DEEP:
            self.fault("a field of the form is none, or stands in it twice")
            return
        self.found.texts.add(number)
        own = str(node.get("/T", ""))
        name = f"{path}.{own}" if path else own
        if not own or "." in own:
            self.fault(f"a field is called '{name}'")
        if _dictionary(node.get("/Parent")) != parent:
            self.fault(f"the field '{name}' names another parent")
        if "/Kids" not in node:
            self.names[number] = name
            return
        self.known(node, _NODE_KEYS, f"the part '{name}' of the form")
        for each in _list(node.get("/Kids")):
            self.node(each, name, node)

    def pages(self) -> None:
        """The fields as they lie on the pages; every one of the form lies on one."""
        for number, page in enumerate(self.pdf.pages, 1):
            height = float(page.mediabox.height)
            for each in _list(page.get("/Annots")):
                name = self.names.pop(_number(each), None)
                held = _dictionary(each)
                if self.links and held is not None and held.get("/Subtype") == "/Link":
                    continue
                if name is None or held is None:
                    self.fault("something on a page is no field of the form")
                else:
                    self.field(held, name, (number, height, _number(each)))
        for name in self.names.values():
            self.fault(f"the field '{name}' lies on no page")

    def field(self, held: DictionaryObject, name: str, at: tuple[int, float, int]) -> None:
        page, height, number = at
        about, ticks = f"the field '{name}'", held.get("/FT") == "/Btn"
        self.known(held, _FIELD_KEYS | (_TICKED_KEYS if ticks else _TYPED_KEYS), about)
        if held.get("/Subtype") != "/Widget" or held.get("/FT") not in ("/Tx", "/Btn"):
            self.fault(f"{about} is of an unknown kind")
        if held.get("/F") != _PRINTED:
            self.fault(f"{about} is not printed as it is shown")
        flags = held.get("/Ff", 0)
        if flags not in (0, _SEVERAL):
            self.fault(f"{about} has the flags {flags}")
        if ticks and (held.get("/V"), held.get("/AS")) != ("/Off", "/Off"):
            self.fault(f"{about} is ticked already")
        if not ticks:
            self.type(held, about)
        self.looks(held, about, ticks)
        box = _box(held.get("/Rect"), height)
        if box is None:
            self.fault(f"{about} lies nowhere")
            return
        told, several = str(held.get("/TU", "")), flags == _SEVERAL
        self.found.fields.append(ReadField(name, told, ticks, several, page, box, number))

    def type(self, holder: DictionaryObject, about: str) -> None:
        """The face and size of what is typed: a face of the form, black, of a readable size."""
        match = _TYPE.fullmatch(str(holder.get("/DA", "")))
        if match is None or match[1] not in self.fonts or float(match[2]) < _LEAST_TYPE_PT:
            self.fault(f"{about} sets what is typed by '{holder.get('/DA', '')}'")

    def looks(self, held: DictionaryObject, about: str, ticks: bool) -> None:
        """Its own appearance, and nothing in it."""
        appearance = _dictionary(held.get("/AP"))
        given = appearance.raw_get("/N") if appearance is not None and "/N" in appearance else None
        if appearance is None or set(appearance) != {"/N"}:
            self.fault(f"{about} has an appearance of an unknown kind")
            return
        states = _dictionary(given) if ticks else None
        if ticks and (states is None or set(states) != {"/Ticked", "/Off"}):
            self.fault(f"{about} has an appearance of an unknown kind")
            return
        for key in states or ("",):
            reference = states.raw_get(key) if states is not None else given
            self.look(reference, about, {"": _NOTHING_TYPED, "/Ticked": _STROKES}.get(key))

    def look(self, reference: Any, about: str, wanted: re.Pattern[bytes] | None) -> None:
        """One appearance; where nothing is `wanted` it is empty."""
        number, stream = _number(reference), _dictionary(reference)
        if number in self.found.streams:
            self.fault(f"{about} shares its appearance with another")
        if not isinstance(stream, StreamObject):
            self.fault(f"{about} has no appearance")
            return
        self.found.streams.add(number)
        self.known(stream, _LOOKS, f"the appearance of {about}")
        resources = _dictionary(stream.get("/Resources"))
        data = stream.get_data()
        right = wanted.fullmatch(data) if wanted is not None else not data.strip()
        if not right or resources:
            self.fault(f"{about} shows something already")


def _box(corners: Any, page_height_pt: float) -> Box | None:
    """The place from the page's top left corner."""
    held = corners.get_object() if isinstance(corners, IndirectObject) else corners
    if not isinstance(held, ArrayObject) or len(held) != 4:
        return None
    x1, y1, x2, y2 = (float(each) for each in held)
    high = page_height_pt
    return Box(min(x1, x2), high - max(y1, y2), max(x1, x2), high - min(y1, y2))


def _number(reference: Any) -> int:
    return reference.idnum if isinstance(reference, IndirectObject) else 0


def _dictionary(value: Any) -> DictionaryObject | None:
    target = value.get_object() if isinstance(value, IndirectObject) else value
    return target if isinstance(target, DictionaryObject) else None


def _list(value: Any) -> Iterator[Any]:
    """The entries of an array, references as they are."""
    target = value.get_object() if isinstance(value, IndirectObject) else value
    if isinstance(target, ArrayObject):
        yield from list.__iter__(target)
