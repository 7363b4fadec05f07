"""What a tagged file claims of itself: PDF/UA-1, its language, its title and nothing more."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any
from xml.etree import ElementTree

from pypdf import PdfReader
from pypdf.generic import DictionaryObject, StreamObject

_UA = "{http://www.aiim.org/pdfua/ns/id/}"
_DC = "{http://purl.org/dc/elements/1.1/}"
_RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
_KNOWN = {
    "{adobe:ns:meta/}xmpmeta",
    *(f"{_RDF}{name}" for name in ("RDF", "Description", "Alt", "li")),
    f"{_UA}part",
    f"{_DC}title",
}
_ATTRIBUTES = {f"{_RDF}about": "", "{http://www.w3.org/XML/1998/namespace}lang": "x-default"}
LANGUAGE = "en-GB"


def check_claims(pdf: PdfReader, title: str) -> Iterator[str]:
    """What is wrong with the claims, in words. Raises what pypdf raises."""
    catalogue = pdf.trailer["/Root"].get_object()
    assert isinstance(catalogue, DictionaryObject)
    marked = catalogue.get("/MarkInfo", {})
    if not marked.get("/Marked") or set(marked) != {"/Marked"}:
        yield "the file does not say that it can be read by its structure"
    if catalogue.get("/Lang") != LANGUAGE:
        yield f"the language of the file is '{catalogue.get('/Lang', '')}'"
    if catalogue.get("/ViewerPreferences", {}).get("/DisplayDocTitle") != True:  # noqa: E712
        yield "a reader shows the name of the file, not its title"
    for number, page in enumerate(pdf.pages, 1):
        if page.get("/Tabs") != "/S":
            yield f"page {number} is not gone through in the order of its structure"
    yield from _check_description(catalogue.get("/Metadata"), title)


def _check_description(stream: Any, title: str) -> Iterator[str]:
    """The second description says the part of the standard, and the title once more."""
    held = stream.get_object() if stream is not None else None
    if not isinstance(held, StreamObject) or held.get("/Subtype") != "/XML":
        yield "the file does not claim to be accessible (PDF/UA-1)"
        return
    text = held.get_data().decode("utf-8", "replace")
    if "<!" in text or text.count("<?") != text.count("<?xpacket") or text.count("<?") != 2:
        yield "the second description of the file holds more than it shows"
        return
    try:
        root = ElementTree.fromstring(text.removeprefix("\ufeff"))
    except ElementTree.ParseError:
        yield "the second description of the file cannot be read"
        return
    yield from _check_fields(root, title)


def _check_fields(root: ElementTree.Element, title: str) -> Iterator[str]:
    for each in root.iter():
        strange = [key for key, value in each.attrib.items() if _ATTRIBUTES.get(key) != value]
        if each.tag not in _KNOWN or strange or (each.tail or "").strip():
            yield f"the second description of the file holds '{each.tag.rpartition('}')[2]}'"
    said = ((each.tag, (each.text or "").strip()) for each in root.iter())
    texts = [(tag, text) for tag, text in said if text]
    if texts != [(f"{_UA}part", "1"), (f"{_RDF}li", title)]:
        told = ", ".join(f"'{text}'" for _, text in texts)
        yield f"the second description of the file says {told[:120]}, not '{title}'"
