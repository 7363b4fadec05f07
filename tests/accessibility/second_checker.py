"""A checker of tagged PDF without Java, written for these tests alone, on pypdf.

It shares no code with the program, nor with its proof: it parses the content of every page
operator by operator and walks the objects by itself. Its rules are those of ISO 14289-1 as the
Matterhorn Protocol 1.1 lists them (PDF Association; both from memory), as far as a machine can
tell, with the checkpoint's number; 'own' marks rules of ours.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from io import BytesIO
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

from pypdf import PdfReader
from pypdf.generic import ArrayObject, ContentStream, DictionaryObject, IndirectObject

_PAINTS = {b"Tj", b"TJ", b"'", b'"', b"S", b"s", b"f", b"F", b"f*", b"B", b"B*", b"b", b"b*"}
_PAINTS |= {b"sh", b"Do", b"INLINE IMAGE"}
_STANDARD = {"Document", "Part", "Sect", "P", "H1", "H2", "H3", "H4", "H5", "H6", "L", "LI"}
_STANDARD |= {"Lbl", "LBody", "Table", "TR", "TH", "TD", "Figure", "Formula", "Span", "Link"}
_STANDARD |= {"Form", "Note"}
# Which parents some elements need (ISO 32000-1, 14.8.4.3).
_WITHIN = {"LI": {"L"}, "Lbl": {"LI", "Note"}, "LBody": {"LI"}, "TR": {"Table"}}
_WITHIN |= {"TH": {"TR"}, "TD": {"TR"}}
_CHILDREN = {"L": {"LI"}, "LI": {"Lbl", "LBody"}, "Table": {"TR"}, "TR": {"TH", "TD"}}
_PART = "{http://www.aiim.org/pdfua/ns/id/}part"
_TITLE = "{http://purl.org/dc/elements/1.1/}title"
_ROWS = re.compile(rb"^<([0-9A-Fa-f]{2})> <([0-9A-Fa-f]{4,})>$", re.MULTILINE)


@dataclass(slots=True)
class _Node:
    """An element with what it holds: sections as (page, number), annotations, elements."""

    tag: str
    number: int
    entry: DictionaryObject
    marks: list[tuple[int, int]] = field(default_factory=list)
    objects: list[int] = field(default_factory=list)
    below: list[_Node] = field(default_factory=list)

    def every(self) -> Iterator[_Node]:
        yield self
        for each in self.below:
            yield from each.every()


def failures(pdf: bytes) -> list[str]:
    """Every rule that the file breaks, each with where."""
    return list(dict.fromkeys(_Checker(PdfReader(BytesIO(pdf))).run()))


class _Checker:
    def __init__(self, pdf: PdfReader) -> None:
        # pypdf's types say little of what a file may hold.
        self.pdf: Any = pdf
        self.root: Any = pdf.trailer["/Root"].get_object()
        self.pages = {_number(page.indirect_reference): i for i, page in enumerate(pdf.pages)}
        # In the order in which the content has them.
        self.drawn: list[tuple[int, int, str]] = []
        # In the order in which the tree has them.
        self.told: list[tuple[int, int]] = []

    def run(self) -> Iterator[str]:
        yield from self.catalogue()
        for index, page in enumerate(self.pdf.pages):
            yield from self.page(index, page)
        top = self.root.get("/StructTreeRoot")
        if top is None:
            yield "01-005 there is no structure tree"
            return
        held = top.get("/K")
        nodes = [self.node(each) for each in (held if isinstance(held, ArrayObject) else [held])]
        if [node.tag for node in nodes] != ["Document"]:
            yield "own: the root is one Document"
        for node in nodes:
            yield from self.tree(node, "StructTreeRoot")
        every = [each for node in nodes for each in node.every()]
        yield from self.headings(every)
        yield from self.sections(every)
        yield from self.parents(every, top)
        yield from self.annotations(every)

    def catalogue(self) -> Iterator[str]:
        if not self.root.get("/Lang"):
            yield "11-006 there is no language"
        info = self.root.get("/MarkInfo", {})
        if not info.get("/Marked"):
            yield "06-001 the file is not marked"
        if info.get("/Suspects"):
            yield "06-002 the marks are suspect"
        if not self.root.get("/ViewerPreferences", {}).get("/DisplayDocTitle"):
            yield "07-001 the title is not displayed"
        described = self.root.get("/Metadata")
        if described is None:
            yield "06-003 there is no XMP"
            return
        root = ElementTree.fromstring(described.get_object().get_data())
        if [each.text for each in root.iter(_PART)] != ["1"]:
            yield "05-001 the XMP does not claim part 1"
        titles = ["".join(each.itertext()).strip() for each in root.iter(_TITLE)]
        if titles != [str((self.pdf.metadata or {}).get("/Title", ""))] or not titles[0]:
            yield "06-004 the XMP has no title, or another than the file"

    def page(self, index: int, page: Any) -> Iterator[str]:
        where = f"on page {index + 1}"
        if page.get("/Tabs") != "/S":
            yield f"28-008 tabs do not follow the structure {where}"
        if not isinstance(page.get("/StructParents"), int):
            yield f"01-005 the page has no key to the structure {where}"
        fonts = {name: font.get_object() for name, font in page["/Resources"]["/Font"].items()}
        yield from (f"{each} {where}" for each in self.content(index, page, fonts))

    def content(self, index: int, page: Any, fonts: dict[str, Any]) -> Iterator[str]:
        """Operator by operator: what is painted stands in exactly one section."""
        stack: list[str] = []
        numbers: set[int] = set()
        font, codes = "", {name: _codes(each) for name, each in fonts.items()}
        for operands, operator in ContentStream(page.get_contents(), self.pdf).operations:
            if operator in (b"BDC", b"BMC"):
                tag = str(operands[0]).lstrip("/")
                entry = operands[1] if len(operands) > 1 else {}
                number = entry.get("/MCID") if isinstance(entry, DictionaryObject) else None
                if stack:
                    yield "own: a section within a section"
                if number is None and tag != "Artifact":
                    yield "01-005 a section without a number"
                if number is not None:
                    if number in numbers:
                        yield "01-005 two sections of one number"
                    numbers.add(int(number))
                    self.drawn.append((index, int(number), tag))
                stack.append(tag)
            elif operator == b"EMC":
                if not stack:
                    yield "01-005 a section ends that never began"
                stack = stack[:-1]
            elif operator == b"Tf":
                font = str(operands[0])
            if operator in _PAINTS and not stack:
                yield "01-005 something is painted outside every section"
            if operator in (b"Tj", b"TJ"):
                yield from _unreadable(operands[0], fonts.get(font), codes.get(font, {}))
        if stack:
            yield "01-005 a section does not end"

    def node(self, reference: Any, page: int = -1) -> _Node:
        entry: Any = reference.get_object()
        made = _Node(str(entry.get("/S", "")).lstrip("/"), _number(reference), entry)
        own = self._page_of(entry, page)
        held = entry.get("/K", ArrayObject())
        for kid in list.__iter__(held) if isinstance(held, ArrayObject) else [held]:
            below: Any = kid.get_object() if isinstance(kid, IndirectObject) else kid
            if isinstance(below, int):
                made.marks.append((own, int(below)))
                self.told.append(made.marks[-1])
            elif below.get("/Type") == "/MCR":
                made.marks.append((self._page_of(below, own), int(below["/MCID"])))
                self.told.append(made.marks[-1])
            elif below.get("/Type") == "/OBJR":
                made.objects.append(_number(below.raw_get("/Obj")))
            else:
                made.below.append(self.node(kid, own))
        return made

    def _page_of(self, entry: Any, otherwise: int) -> int:
        return self.pages[_number(entry.raw_get("/Pg"))] if "/Pg" in entry else otherwise

    def tree(self, node: _Node, parent: str) -> Iterator[str]:
        """The element and all below it, by their kinds."""
        tag, entry = node.tag, node.entry
        if tag not in _STANDARD:
            yield f"02-001 '{tag}' is no standard element"
        if parent not in _WITHIN.get(tag, {parent}):
            yield f"09-004 {tag} stands within {parent}"
        allowed = _CHILDREN.get(tag)
        if allowed is not None and (node.marks or {each.tag for each in node.below} - allowed):
            yield f"09-004 {tag} holds something that does not belong there"
        if tag == "Figure" and not (entry.get("/Alt") or entry.get("/ActualText")):
            yield "13-004 a figure has no alternative text"
        if tag == "Formula" and not (entry.get("/Alt") or entry.get("/ActualText")):
            yield "17-002 a formula has no alternative text"
        if tag == "Figure" and not _has_box(entry):
            yield "own: a figure does not say where it is"
        if tag == "TH" and "/Scope" not in entry.get("/A", {}):
            yield "15-003 a header cell does not say of what"
        if not node.marks and not node.objects and not node.below:
            yield f"own: {tag} is empty"
        for each in node.below:
            yield from self.tree(each, tag)

    def headings(self, every: list[_Node]) -> Iterator[str]:
        levels = [int(each.tag[1]) for each in every if re.fullmatch("H[1-6]", each.tag)]
        if levels[:1] != [1]:
            yield "14-002 the first heading is not H1"
        for one, other in pairwise(levels):
            if other > one + 1:
                yield f"14-003 H{other} follows H{one}"

    def sections(self, every: list[_Node]) -> Iterator[str]:
        owners = {mark: node for node in every for mark in node.marks}
        if len(owners) != len(self.told):
            yield "01-005 a section stands twice in the tree"
        for index, number, tag in self.drawn:
            owner = owners.get((index, number))
            if owner is None:
                yield f"01-005 a section on page {index + 1} is not in the tree"
            elif owner.tag != tag:
                yield f"own: a section of {owner.tag} is drawn as {tag}"
        drawn = [(index, number) for index, number, _ in self.drawn]
        if set(self.told) - set(drawn):
            yield "01-005 the tree names a section that is not drawn"
        elif self.told != drawn:
            yield "own (09-001): the tree goes another way than the pages"

    def parents(self, every: list[_Node], top: Any) -> Iterator[str]:
        """Every key leads back to the element, or the elements of the page in order."""
        numbers = list(list.__iter__(top["/ParentTree"]["/Nums"]))
        keys_of = map(int, numbers[::2])
        entries: dict[Any, Any] = dict(zip(keys_of, numbers[1::2], strict=True))
        keys = [page.get("/StructParents") for page in self.pdf.pages]
        keys += [each.get("/StructParent") for _, each in self._annotations()]
        if len(set(keys)) != len(keys):
            yield "01-005 two things share a key to the structure"
        for index, page in enumerate(self.pdf.pages):
            own = {m[1]: each.number for each in every for m in each.marks if m[0] == index}
            found = entries.get(page.get("/StructParents"))
            back = [_number(each) for each in list.__iter__(found.get_object())] if found else []
            if back != [own[number] for number in sorted(own)]:
                yield f"01-005 the way back from page {index + 1} leads elsewhere"
        for node in every:
            for number in node.objects:
                key = self.pdf.get_object(number).get("/StructParent")
                if _number(entries.get(key)) != node.number:
                    yield "28-010 the way back from a link leads elsewhere"

    def annotations(self, every: list[_Node]) -> Iterator[str]:
        owned = {number: each.tag for each in every for number in each.objects}
        for number, each in self._annotations():
            wanted = {"/Link": "Link", "/Widget": "Form"}.get(str(each.get("/Subtype")))
            if owned.get(number) != wanted:
                yield f"28-002 a {each.get('/Subtype')} is not in a {wanted}"
            if each.get("/Subtype") == "/Link" and not each.get("/Contents"):
                yield "28-012 a link does not say where it leads"
            if each.get("/Subtype") == "/Widget" and not each.get("/TU"):
                yield "28-005 a field does not say what it is for"

    def _annotations(self) -> Iterator[tuple[int, Any]]:
        for page in self.pdf.pages:
            for each in list.__iter__(page.get("/Annots", ArrayObject())):
                yield _number(each), each.get_object()


def _number(reference: Any) -> int:
    return reference.idnum if isinstance(reference, IndirectObject) else 0


def _has_box(entry: Any) -> bool:
    attributes = entry.get("/A")
    return attributes is not None and len(attributes.get_object().get("/BBox", ())) == 4


def _codes(font: Any) -> dict[int, str]:
    """What each code of a font means, by its map to Unicode."""
    if "/ToUnicode" not in font:
        return {}
    rows = _ROWS.findall(font["/ToUnicode"].get_object().get_data())
    return {int(a, 16): bytes.fromhex(b.decode()).decode("utf-16-be") for a, b in rows}


def _unreadable(shown: Any, font: Any, codes: dict[int, str]) -> Iterator[str]:
    if font is None:
        yield "31-009 letters are shown in a font that is not there"
        return
    descriptor = font.get("/FontDescriptor", {}).get_object()
    if not any(key in descriptor for key in ("/FontFile", "/FontFile2", "/FontFile3")):
        yield "31-009 a font is not embedded"
    data = getattr(shown, "original_bytes", None) or str(shown).encode("latin-1")
    if any(codes.get(code, "\0") == "\0" for code in data):
        yield "31-027 a letter cannot be read as text"
