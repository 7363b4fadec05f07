"""Writes a document's structure into its PDF: marked content, the tree, and what it claims.

reportlab draws pages but knows nothing of tags (5.1); the pieces that PDF/UA-1 asks for are
put in by its own plain objects: ISO 32000-1, 14.6 to 14.8, and ISO 14289-1, clause 7.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any
from xml.sax.saxutils import escape

from reportlab.pdfbase.pdfdoc import (
    XMP,
    LinkAnnotation,
    PDFDictionary,
    PDFName,
    PDFObject,
)

from typeset.setting.content import Pen, number
from typeset.setting.form_fields import FormWriter
from typeset.setting.frames import Document
from typeset.setting.pdf_objects import array, dictionary, string
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


def draw_section(pen: Pen, section: Section) -> None:
    """The section, marked as what belongs to an element or as decoration. Raises GlyphError."""
    if section.tag == ARTIFACT:
        pen.code.append(_FOOTER if section.is_foot else _LAYOUT)
    else:
        pen.code.append(f"/{section.tag} <</MCID {section.number}>> BDC")
    pen.draw(section.shapes)
    pen.code.append("EMC")


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
        document = self.canvas._doc
        tree = _Tree(document, self.annotations)
        top = PDFDictionary({"Type": PDFName("StructTreeRoot")})
        reference = document.Reference(top)
        top["K"] = tree.element(root, tree.told(reference))
        top["ParentTree"] = document.Reference(self._parents(tree))
        top["ParentTreeNextKey"] = self.next_key
        document.Catalog.StructTreeRoot = top
        if self.form is not None:
            self.form.end()

    def _parents(self, tree: _Tree) -> Any:
        numbers: list[str] = []
        for key in range(self.next_key):
            numbers.append(str(key))
            if key in self.links:
                numbers.append(tree.references[self.links[key]])
            else:
                owners = _Written(array(tree.owners.get(self.pages[key], [])))
                numbers.append(tree.told(tree.document.Reference(owners)))
        return _Written(dictionary({"Nums": array(numbers)}))


class _Written(PDFObject):  # type: ignore[misc]  # reportlab is not typed
    """An object of the file that is already as it will stand there."""

    def __init__(self, text: str = "") -> None:
        self.text = text

    def format(self, _document: Any) -> bytes:
        """Its bytes."""
        return self.text.encode("ascii")


class _Tree:
    """Turns elements into objects of the file, parents before children.

    A week has thousands of them, so they are written straight away: reportlab's dictionaries
    are formatted key by key and took as long as all that is drawn.
    """

    def __init__(self, document: Any, annotations: dict[Element, tuple[Any, Any]]) -> None:
        self.document = document
        self.annotations = annotations
        self.references: dict[Element, str] = {}
        # For every page the element of each of its sections, in the order of their numbers.
        self.owners: dict[int, list[str]] = {}
        self.pages: dict[int, str] = {}

    def told(self, reference: Any) -> str:
        """A reference as it stands in the file: '12 0 R'."""
        return str(reference.format(self.document).decode("ascii"))

    def element(self, element: Element, parent: str) -> str:
        """The element with all below it; gives the reference to it."""
        made = _Written()
        reference = self.told(self.document.Reference(made))
        self.references[element] = reference
        first = next((each for each in element.children if isinstance(each, Mark)), None)
        # Its type may be left out (table 323), which makes a tagged page a tenth smaller.
        entries = {
            "A": self._attributes(element, first),
            "ActualText": string(element.actual_text) if element.actual_text else "",
            "Alt": string(element.alt) if element.alt else "",
            "K": array(list(self._children(element, reference, first))),
            "P": parent,
            "Pg": self._page(first.page) if first is not None else "",
            "S": f"/{element.tag}",
        }
        made.text = dictionary({key: entry for key, entry in entries.items() if entry})
        return reference

    def _children(self, element: Element, reference: str, first: Mark | None) -> Iterator[str]:
        for child in element.children:
            if isinstance(child, Element):
                yield self.element(child, reference)
                continue
            owners = self.owners.setdefault(child.page, [])
            assert child.number == len(owners), "the tree is in the order of drawing"
            owners.append(reference)
            if first is not None and child.page == first.page:
                yield str(child.number)
            else:
                page = self._page(child.page)
                yield dictionary({"MCID": str(child.number), "Pg": page, "Type": "/MCR"})
        if element in self.annotations:
            annotation, page = (self.told(each) for each in self.annotations[element])
            yield dictionary({"Obj": annotation, "Pg": page, "Type": "/OBJR"})

    def _attributes(self, element: Element, first: Mark | None) -> str:
        if element.tag == "L" and element.numbering:
            return dictionary({"ListNumbering": f"/{element.numbering}", "O": "/List"})
        if element.tag == "Figure" and element.item is not None and first is not None:
            item, height = element.item, self.document.Pages.pages[first.page].pageheight
            top = height - item.y_pt
            box = (item.x_pt, top - item.height_pt, item.x_pt + item.width_pt, top)
            edges = array([number(round(edge, 2)) for edge in box])
            return dictionary({"BBox": edges, "O": "/Layout", "Placement": "/Block"})
        return ""

    def _page(self, index: int) -> str:
        if index not in self.pages:
            page = self.document.Pages.pages[index]
            self.pages[index] = self.told(self.document.Reference(page))
        return self.pages[index]
