"""The structure of a tagged file read back: its tree, with what is wrong with it as a tree.

Nothing is taken over from whoever wrote it: the tree is walked through its objects, every key
of which has to be a known one, and set against the marked content that the pages draw.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, TypeAlias

from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject

HEADINGS = ("H1", "H2", "H3", "H4", "H5", "H6")
_TAGS = {"Document", *HEADINGS, "P", "L", "LI", "Lbl", "LBody", "Figure", "Formula", "Span", "Link"}
_TAGS |= {"Form"}
_ROOT_KEYS = {"/Type", "/K", "/ParentTree", "/ParentTreeNextKey"}
_KEYS = {"/Type", "/S", "/P", "/Pg", "/K", "/Alt", "/ActualText", "/A"}
_ATTRIBUTES = {"/O", "/ListNumbering", "/Placement", "/BBox"}
# A page (from 0) and the number of a section on it.
Mark: TypeAlias = tuple[int, int]


@dataclass(slots=True, eq=False)
class ReadElement:
    """An element of the tree; `number` is that of its object in the file.

    `marks` are its own sections, `links` the numbers of the annotations that it holds.
    """

    tag: str
    number: int
    path: tuple[str, ...]
    alt: str = ""
    actual_text: str = ""
    marks: list[Mark] = field(default_factory=list)
    links: list[int] = field(default_factory=list)


@dataclass(slots=True)
class ReadStructure:
    """All elements in the order of the tree, and what is wrong with it."""

    elements: list[ReadElement] = field(default_factory=list)
    # Every section in the order in which it is told.
    sections: list[Mark] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)

    def within(self, first: int, count: int) -> ReadStructure:
        """What is told on `count` pages from `first` (from 0) on, counted from 0 again.

        Elements without a section of their own stay; faults of the whole tree are left out.
        """

        def here(marks: list[Mark]) -> list[Mark]:
            return [(page - first, n) for page, n in marks if first <= page < first + count]

        elements = [
            replace(each, marks=here(each.marks))
            for each in self.elements
            if not each.marks or here(each.marks)
        ]
        return ReadStructure(elements, here(self.sections))

    def on(self, pages: range) -> ReadStructure:
        """What is told on these pages (from 0), which keep their numbers; elements without a
        section there are left out, as are faults of the whole tree."""
        elements = [
            replace(each, marks=here)
            for each in self.elements
            if (here := [mark for mark in each.marks if mark[0] in pages])
        ]
        return ReadStructure(elements, [mark for mark in self.sections if mark[0] in pages])

    @property
    def marks(self) -> dict[Mark, ReadElement]:
        """The element of every section, in the order of the tree."""
        return {mark: each for each in self.elements for mark in each.marks}

    @property
    def numbers(self) -> frozenset[int]:
        """The objects of the file that are elements of the tree."""
        return frozenset(each.number for each in self.elements)


def read_structure(pdf: PdfReader) -> ReadStructure:
    """The tree of the file. Raises what pypdf raises."""
    return _Walk(pdf).read()


class _Walk:
    def __init__(self, pdf: PdfReader) -> None:
        self.pdf = pdf
        self.found = ReadStructure()
        self.pages = {
            page.indirect_reference.idnum: index
            for index, page in enumerate(pdf.pages)
            if page.indirect_reference is not None
        }
        self.seen: set[int] = set()

    def read(self) -> ReadStructure:
        catalogue = _dictionary(self.pdf.trailer["/Root"])
        assert catalogue is not None
        root = _dictionary(catalogue.get("/StructTreeRoot"))
        if root is None:
            self.fault("the file has no structure to be read by")
            return self.found
        self.known(root, _ROOT_KEYS, "the structure")
        own = root.raw_get("/K") if "/K" in root else None
        self.element(own, (), root)
        first = self.found.elements[:1]
        if not first or first[0].tag != "Document":
            self.fault("the structure does not begin with the document")
        self.parents(_dictionary(root.get("/ParentTree")))
        return self.found

    def fault(self, what: str) -> None:
        self.found.faults.append(what)

    def known(self, holder: Mapping[str, Any], keys: set[str], what: str) -> None:
        for key in sorted(set(holder) - keys):
            self.fault(f"{what} holds {key}")

    def element(self, reference: Any, path: tuple[str, ...], parent: Any) -> None:
        """An element and all below it, each once."""
        node = _dictionary(reference)
        number = reference.idnum if isinstance(reference, IndirectObject) else 0
        if node is None or number in self.seen or not number:
            self.fault("an element of the structure is none, or stands in it twice")
            return
        self.seen.add(number)
        tag = str(node.get("/S", "")).lstrip("/")
        if tag not in _TAGS:
            self.fault(f"an element of the structure is a '{tag}'")
        self.known(node, _KEYS, f"an element '{tag}' of the structure")
        if _dictionary(node.get("/P")) != parent:
            self.fault(f"an element '{tag}' of the structure names another parent")
        self.attributes(node, tag)
        made = ReadElement(
            tag,
            number,
            (*path, tag),
            str(node.get("/Alt", "")),
            str(node.get("/ActualText", "")),
        )
        self.found.elements.append(made)
        page = self.page(node)
        for kid in _list(node.raw_get("/K") if "/K" in node else None):
            self.kid(kid, made, page, node)
        # A long file has hundreds of thousands of elements: pypdf would keep them all.
        self.pdf.resolved_objects.pop((reference.generation, number), None)

    def attributes(self, node: DictionaryObject, tag: str) -> None:
        given = node.get("/A")
        attributes = _dictionary(given)
        if attributes is not None:
            self.known(attributes, _ATTRIBUTES, f"an element '{tag}' of the structure")
        elif given is not None:
            self.fault(f"an element '{tag}' of the structure has attributes of an unknown kind")
        if tag == "Figure" and (attributes is None or "/BBox" not in attributes):
            self.fault("a figure of the structure does not say where it is")

    def kid(self, kid: Any, element: ReadElement, page: int | None, node: Any) -> None:
        if isinstance(kid, int):
            self.mark(element, page, kid)
            return
        held = _dictionary(kid)
        kind = None if held is None else held.get("/Type")
        if held is not None and kind == "/MCR":
            self.known(held, {"/Type", "/Pg", "/MCID"}, "a section of the structure")
            self.mark(element, self.page(held), held.get("/MCID"))
        elif held is not None and kind == "/OBJR":
            self.known(held, {"/Type", "/Pg", "/Obj"}, "a link of the structure")
            annotation = held.raw_get("/Obj")
            element.links.append(getattr(annotation, "idnum", 0))
        else:
            self.element(kid, element.path, node)

    def mark(self, element: ReadElement, page: int | None, number: Any) -> None:
        if page is None or not isinstance(number, int):
            self.fault(f"an element '{element.tag}' of the structure is on no page")
        else:
            element.marks.append((page, int(number)))
            self.found.sections.append((page, int(number)))

    def page(self, node: DictionaryObject) -> int | None:
        reference = node.raw_get("/Pg") if "/Pg" in node else None
        return self.pages.get(getattr(reference, "idnum", 0))

    def parents(self, tree: DictionaryObject | None) -> None:
        """The way back, from pages and links to their elements, says the same."""
        numbers = list(_list(tree.get("/Nums"))) if tree is not None else []
        entries = dict(zip(numbers[::2], numbers[1::2], strict=False))
        owners: dict[int, list[int]] = {}
        for (at, _), each in sorted(self.found.marks.items(), key=lambda item: item[0]):
            owners.setdefault(at, []).append(each.number)
        wanted: dict[int, Any] = {}
        for index, page in enumerate(self.pdf.pages):
            key = page.get("/StructParents")
            if not isinstance(key, int):
                self.fault(f"page {index + 1} is left out of the structure")
                continue
            wanted[int(key)] = owners.get(index, [])
        for each in self.found.elements:
            for number in each.links:
                wanted[self.link_key(number)] = each.number
        found = {int(key): _numbers(value) for key, value in entries.items()}
        if found != wanted or (tree is not None and set(tree) != {"/Nums"}):
            self.fault("the structure and its way back from the pages do not agree")

    def link_key(self, number: int) -> int:
        annotation = self.pdf.get_object(number) if number else None
        key = annotation.get("/StructParent") if isinstance(annotation, DictionaryObject) else None
        return int(key) if isinstance(key, int) else -1


def _numbers(value: Any) -> Any:
    """The objects that an entry of the way back names: one, or those of a page in order."""
    target = value.get_object() if isinstance(value, IndirectObject) else value
    if isinstance(target, ArrayObject):
        return [getattr(each, "idnum", 0) for each in list.__iter__(target)]
    return getattr(value, "idnum", 0)


def _dictionary(value: Any) -> DictionaryObject | None:
    target = value.get_object() if isinstance(value, IndirectObject) else value
    return target if isinstance(target, DictionaryObject) else None


def _list(value: Any) -> Iterator[Any]:
    """The entries of an array, references as they are; a single value alone."""
    target = value.get_object() if isinstance(value, IndirectObject) else value
    if isinstance(target, ArrayObject):
        yield from list.__iter__(target)
    elif value is not None:
        yield value
