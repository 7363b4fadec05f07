"""Writes a document's structure into its PDF: marked content, the tree, and what it claims.

reportlab draws pages but knows nothing of tags (5.1); the pieces that PDF/UA-1 asks for are
put in by its own plain objects: ISO 32000-1, 14.6 to 14.8, and ISO 14289-1, clause 7.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from xml.sax.saxutils import escape

from reportlab.pdfbase.pdfdoc import (
    XMP,
    LinkAnnotation,
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFString,
)

from typeset.setting.form_fields import FormWriter
from typeset.setting.frames import Document
from typeset.setting.structure import ARTIFACT, Element, Mark, Marked, Section

_LAYOUT = "/Artifact <</Type /Layout>> BDC"
_FOOTER = "/Artifact <</Type /Pagination /Subtype /Footer>> BDC"
# ISO 32000-1, table 165: the annotation is printed with its page.
_PRINTED = 4
_XMP = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
    xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
   <pdfuaid:part>1</pdfuaid:part>
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
  </rdf:Description>
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""


class _TaggedLink(LinkAnnotation):  # type: ignore[misc]  # reportlab is not typed
    """A link that names its element in the tree."""

    permitted = (*LinkAnnotation.permitted, "StructParent")


def claim(canvas: Any, document: Document) -> None:
    """What the file says of itself: marked, PDF/UA-1, and its title once more."""
    metadata = _XMP.format(title=escape(document.title)).encode()
    catalogue = canvas._doc.Catalog
    catalogue.MarkInfo = PDFDictionary({"Marked": "true"})
    catalogue.Metadata = XMP(creator=lambda _document: metadata)


@contextmanager
def marked_section(canvas: Any, section: Section) -> Iterator[None]:
    """What is drawn meanwhile is this section."""
    if section.tag == ARTIFACT:
        canvas._code.append(_FOOTER if section.is_foot else _LAYOUT)
    else:
        canvas._code.append(f"/{section.tag} <</MCID {section.number}>> BDC")
    yield
    canvas._code.append("EMC")


class TagWriter:
    """Keeps the keys of pages and links, and writes the tree when all pages are drawn."""

    def __init__(self, canvas: Any) -> None:
        self.canvas = canvas
        self.next_key = 0
        # What each key of the parent tree stands for: a page, or the element of a link.
        self.pages: dict[int, int] = {}
        self.links: dict[int, Element] = {}
        # The link annotations with their pages, by the element that they belong to.
        self.annotations: dict[Element, tuple[Any, Any]] = {}
        self.form: FormWriter | None = None

    def link(self, marked: Marked, box: tuple[float, ...]) -> None:
        """The link of an item as an annotation that belongs to its element."""
        canvas, item = self.canvas, marked.item
        assert marked.link is not None
        key = self._key()
        annotation = _TaggedLink(
            Rect=box,
            Contents=item.reads_as,
            Destination=canvas._bookmarkReference(item.leads_to),
            Border="[0 0 0]",
            F=_PRINTED,
            StructParent=key,
        )
        canvas._addAnnotation(annotation)
        self._belongs(marked.link, key)

    def fields(self, marked: Marked, page_height_pt: float) -> None:
        """The fields of an item, each as an annotation of an element of its own."""
        for field, element in marked.forms:
            if self.form is None:
                self.form = FormWriter(self.canvas)
            key = self._key()
            self.form.add(field, page_height_pt, key)
            self._belongs(element, key)

    def _belongs(self, element: Element, key: int) -> None:
        """The annotation that was added last belongs to the element."""
        canvas = self.canvas
        self.links[key] = element
        self.annotations[element] = (canvas._annotationrefs[-1], canvas._doc.thisPageRef())

    def end_page(self) -> None:
        """Call after a page is shown: it gets its key, and tabs go in the order of reading."""
        pages = self.canvas._doc.Pages.pages
        page, key = pages[-1], self._key()
        # reportlab writes no key of a page but those on its list.
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents = key
        page.Tabs = PDFName("S")
        self.pages[key] = len(pages) - 1

    def _key(self) -> int:
        self.next_key += 1
        return self.next_key - 1

    def end(self, root: Element) -> None:
        """Write the tree, and which element every section of a page belongs to."""
        tree = _Tree(self.canvas._doc, self.annotations)
        top = PDFDictionary({"Type": PDFName("StructTreeRoot")})
        reference = tree.document.Reference(top)
        top["K"] = tree.element(root, reference)
        top["ParentTree"] = tree.document.Reference(self._parents(tree))
        top["ParentTreeNextKey"] = self.next_key
        tree.document.Catalog.StructTreeRoot = top
        if self.form is not None:
            self.form.end()

    def _parents(self, tree: _Tree) -> Any:
        numbers: list[Any] = []
        for key in range(self.next_key):
            numbers.append(key)
            if key in self.links:
                numbers.append(tree.references[self.links[key]])
            else:
                owners = PDFArray(tree.owners.get(self.pages[key], []))
                numbers.append(tree.document.Reference(owners))
        return PDFDictionary({"Nums": PDFArray(numbers)})


class _Tree:
    """Turns elements into objects of the file, parents before children."""

    def __init__(self, document: Any, annotations: dict[Element, tuple[Any, Any]]) -> None:
        self.document = document
        self.annotations = annotations
        self.references: dict[Element, Any] = {}
        # For every page the element of each of its sections, in the order of their numbers.
        self.owners: dict[int, list[Any]] = {}

    def element(self, element: Element, parent: Any) -> Any:
        """The element with all below it; gives the reference to it."""
        # Its type may be left out (table 323), which makes a tagged page a tenth smaller.
        made = PDFDictionary({"S": PDFName(element.tag)})
        reference = self.document.Reference(made)
        self.references[element] = reference
        made["P"] = parent
        first = next((each for each in element.children if isinstance(each, Mark)), None)
        if first is not None:
            made["Pg"] = self._page(first.page)
        if element.alt:
            made["Alt"] = PDFString(element.alt)
        if element.actual_text:
            made["ActualText"] = PDFString(element.actual_text)
        if (attributes := self._attributes(element, first)) is not None:
            made["A"] = attributes
        made["K"] = PDFArray(list(self._children(element, reference, first)))
        return reference

    def _children(self, element: Element, reference: Any, first: Mark | None) -> Iterator[Any]:
        for child in element.children:
            if isinstance(child, Element):
                yield self.element(child, reference)
                continue
            owners = self.owners.setdefault(child.page, [])
            assert child.number == len(owners), "the tree is in the order of drawing"
            owners.append(reference)
            if first is not None and child.page == first.page:
                yield child.number
            else:
                page = self._page(child.page)
                yield PDFDictionary({"Type": PDFName("MCR"), "Pg": page, "MCID": child.number})
        if element in self.annotations:
            annotation, page = self.annotations[element]
            yield PDFDictionary({"Type": PDFName("OBJR"), "Obj": annotation, "Pg": page})

    def _attributes(self, element: Element, first: Mark | None) -> Any:
        if element.tag == "L" and element.numbering:
            owner = {"O": PDFName("List"), "ListNumbering": PDFName(element.numbering)}
            return PDFDictionary(owner)
        if element.tag == "Figure" and element.item is not None and first is not None:
            item, height = element.item, self.document.Pages.pages[first.page].pageheight
            top = height - item.y_pt
            box = (item.x_pt, top - item.height_pt, item.x_pt + item.width_pt, top)
            return PDFDictionary(
                {
                    "O": PDFName("Layout"),
                    "Placement": PDFName("Block"),
                    "BBox": PDFArray([round(edge, 2) for edge in box]),
                }
            )
        return None

    def _page(self, index: int) -> Any:
        return self.document.Reference(self.document.Pages.pages[index])
