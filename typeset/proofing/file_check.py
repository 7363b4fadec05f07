"""The file itself: nothing hidden, nothing that runs, fonts inside, made from this content.

Every object of the file is looked at, also those that no page uses: whatever holds text, and
every stream that is neither page, font nor map of a font, has to be accounted for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from pypdf.generic import (
    ArrayObject,
    ByteStringObject,
    DictionaryObject,
    IndirectObject,
    StreamObject,
    TextStringObject,
)

from typeset.proofing.as_printed import check_as_printed
from typeset.proofing.claims import check_claims
from typeset.proofing.field_check import check_form
from typeset.proofing.field_text import ExpectedField
from typeset.proofing.finding import Finding
from typeset.proofing.form_read import ReadForm, read_form
from typeset.proofing.opened import opened
from typeset.proofing.read_back import Unreadable, told_as_unreadable
from typeset.proofing.structure_read import ReadStructure

# Keys of the catalogue and of pages that need no second look.
_CATALOGUE = {"/Type", "/Pages", "/Lang", "/PageMode", "/PageLayout", "/ViewerPreferences"}
_CATALOGUE |= {"/Version", "/MarkInfo"}
_PAGE = {"/Type", "/Parent", "/MediaBox", "/CropBox", "/Contents", "/Resources", "/Rotate"}
_PAGE |= {"/Trans", "/Count", "/Kids"}
# What leads from place to place.
_LEADS = {"/Outlines", "/PageLabels", "/Annots"}
# What is filled in: checked by what it is (field_check.py), as are the texts of its fields.
_FILLED_IN = {"/AcroForm", "/Annots"}
_OF_FIELDS = ("/T", "/TU", "/DA")
# What a tagged file has besides, and the texts of its structure, which are checked by what they
# say (structure_check.py).
_TAGGED = {"/StructTreeRoot", "/Metadata", "/StructParents", "/Tabs"}
_SPOKEN = ("/Alt", "/ActualText")
# Marked content with nothing in it but its number, and decoration.
_SECTIONS = re.compile(
    rb"(?m)^/(?:[A-Z][A-Za-z0-9]* <</MCID \d+>>|Artifact <</Type /Layout>>"
    rb"|Artifact <</Type /Pagination /Subtype /Footer>>) BDC$"
)
_TOLD = {
    "/OpenAction": "does something when it is opened",
    "/AA": "does something by itself",
    "/Names": "holds names, attachments or scripts",
    "/AcroForm": "holds form fields",
    "/Outlines": "holds bookmarks",
    "/OCProperties": "holds layers that can be hidden",
    "/StructTreeRoot": "holds a second text for screen readers",
    "/Metadata": "holds a second description of itself",
    "/AF": "holds attached files",
    "/Annots": "holds notes, links or form fields",
    "/Perms": "holds permissions",
}
_ACTIONS = {"/JavaScript", "/Launch", "/URI", "/SubmitForm", "/ImportData", "/GoToR", "/GoToE"}
_ACTIONS |= {"/RichMediaExecute", "/Rendition", "/Sound", "/Movie", "/Named", "/Hide"}
_RUNS = {"/JS", "/URI", "/EF", "/RichMedia"}
# Operators that can hide what is drawn, or draw what is not read back as text or lines.
_HIDING = {
    "W": "a clip",
    "W*": "a clip",
    "Do": "a picture or a page within the page",
    "sh": "a shading",
    "BI": "a picture",
    "gs": "transparency",
    "BDC": "marked content",
    "DP": "marked content",
    "BX": "operators that readers may skip",
}
_STRINGS = re.compile(rb"\((?:\\.|[^\\()])*\)|<[0-9A-Fa-f\s]*>", re.DOTALL)
_OPERATORS = re.compile(rb"(?<![/\w])(?:W\*?|Do|sh|BI|gs|BDC|DP|BX)(?![\w*])")
_RENDER_MODE = re.compile(rb"(?<![\w.])([1-7])\s+Tr(?!\w)")
_SQUEEZED = re.compile(rb"(?<![\w.])(-?[\d.]+)\s+Tz(?!\w)")


@dataclass(frozen=True, slots=True)
class FileFacts:
    """What the file must say about itself."""

    title: str
    subject: str
    fingerprint: str
    # True where bookmarks, links and labels are wanted, which are then checked by what they say.
    navigates: bool = False
    # The texts that these may hold.
    texts: frozenset[str] = frozenset()
    # True where the file carries its structure, for screen readers.
    tagged: bool = False
    # The fields to type in, in order; they stand in the structure, so the file is tagged.
    fields: tuple[ExpectedField, ...] = ()


def check_file(data: bytes, name: str, facts: FileFacts) -> Iterator[Finding]:
    """Findings about the structure of the file. Raises Unreadable."""
    yield from check_frame(data, name, facts)
    yield from check_drawings(data, name, facts)


def check_frame(data: bytes, name: str, facts: FileFacts) -> Iterator[Finding]:
    """The same without what is in the drawings of its pages. Raises Unreadable."""
    with told_as_unreadable():
        yield from _File(data, name).check(facts)
        yield from check_as_printed(data, name)


def check_drawings(
    data: bytes, name: str, facts: FileFacts, pages: range | None = None
) -> Iterator[Finding]:
    """Findings about what the drawings of all pages, or of those with an index in `pages`, hide.
    Raises Unreadable."""
    with told_as_unreadable():
        yield from _File(data, name).drawings(facts, pages)


class _File:
    def __init__(self, data: bytes, name: str) -> None:
        self.data = data
        self.name = name
        self.opened = opened(data)
        self.reader = self.opened.reader
        if self.reader.is_encrypted:
            raise Unreadable("it is locked with a password")
        self.accounted: set[int] = set()
        # The objects of the file that are elements of its structure.
        self.elements: frozenset[int] = frozenset()
        self.form = ReadForm()

    def check(self, facts: FileFacts) -> Iterator[Finding]:
        yield from self.frame()
        yield from self.description(facts)
        yield from self.keys(facts)
        yield from self.fonts()
        yield from self.twins()
        if facts.tagged:
            yield from self.claims(facts)
        for page in self.reader.pages:
            self.contents(page)
        yield from self.objects(facts)

    def drawings(self, facts: FileFacts, pages: range | None) -> Iterator[Finding]:
        """Nothing in the drawings of these pages that hides, or that is not read back."""
        for index in pages if pages is not None else range(len(self.reader.pages)):
            yield from self.drawing(index + 1, self.reader.pages[index], facts)

    def finding(self, what: str, should: str = "", kind: str = "hidden", page: int = 0) -> Finding:
        return Finding(self.name, page, None, what, should, "", kind)

    def frame(self) -> Iterator[Finding]:
        """One version of the document, from the file's first byte to its last."""
        if self.data.count(b"startxref") > 1:
            yield self.finding("the file still holds an earlier version of itself")
        if not self.data.startswith(b"%PDF-"):
            yield self.finding("the file does not begin as a PDF", kind="file")
        if self.data.rpartition(b"%%EOF")[2].strip():
            yield self.finding("the file goes on after its end")

    def description(self, facts: FileFacts) -> Iterator[Finding]:
        """Title, subject and fingerprint; nothing else that says anything."""
        info = {str(k): str(v) for k, v in (self.reader.metadata or {}).items()}
        wanted = {
            "/Title": facts.title,
            "/Subject": facts.subject,
            "/Author": "",
            "/Creator": "typeset",
        }
        for key, text in wanted.items():
            if info.get(key, "") != text:
                what = f"the file's {key[1:].lower()} is '{info.get(key, '')}'"
                yield self.finding(what, f"it should be '{text}'")
        made_from = info.get("/Keywords", "")
        if made_from != f"content:{facts.fingerprint}":
            yield self.finding(*_other_content(made_from), kind="file")
        known = {*wanted, "/Keywords", "/Producer", "/CreationDate", "/ModDate", "/Trapped"}
        for key in sorted(set(info) - known):
            yield self.finding(f"the file's description holds '{info[key]}' ({key[1:]})")
        if not info.get("/Producer", "").startswith("ReportLab PDF Library"):
            yield self.finding(f"the file was written by '{info.get('/Producer', '')}'")

    def keys(self, facts: FileFacts) -> Iterator[Finding]:
        """Nothing in the catalogue or on a page that holds or does more than pages."""
        catalogue = self.reader.trailer["/Root"].get_object()
        assert isinstance(catalogue, DictionaryObject)
        leads = (_LEADS if facts.navigates else set()) | (_TAGGED if facts.tagged else set())
        leads |= _FILLED_IN if facts.fields else set()
        for key in sorted(set(catalogue) - _CATALOGUE - leads):
            yield self.finding(f"the file {_TOLD.get(key, f'holds {key}')}")
        for number, page in enumerate(self.reader.pages, 1):
            for key in sorted(set(page) - _PAGE - leads):
                yield self.finding(f"the page {_TOLD.get(key, f'holds {key}')}", page=number)

    def twins(self) -> Iterator[Finding]:
        """No page is shown twice: readers of text skip the second one, printers do not."""
        first: dict[int, int] = {}
        for number, page in enumerate(self.reader.pages, 1):
            reference = page.indirect_reference
            if reference is None:
                continue
            if reference.idnum in first:
                what = f"the page is page {first[reference.idnum]} again"
                yield self.finding(what, "it should stand only once", "order", number)
            first.setdefault(reference.idnum, number)

    def fonts(self) -> Iterator[Finding]:
        """Every font in the file is embedded and can be read back as text."""
        for font in self.dictionaries("/Font"):
            if font.get("/Subtype") in ("/CIDFontType0", "/CIDFontType2"):
                continue
            name = str(font.get("/BaseFont", "without a name")).lstrip("/")
            descriptor = _resolved(font.get("/FontDescriptor"))
            files = ("/FontFile", "/FontFile2", "/FontFile3")
            if descriptor is None or not any(key in descriptor for key in files):
                yield self.finding(f"the font {name} is not in the file", kind="font")
            if "/ToUnicode" not in font:
                yield self.finding(f"the font {name} cannot be read back as text", kind="font")
            self.account_for(font.raw_get("/ToUnicode") if "/ToUnicode" in font else None)
            for key in files:
                if descriptor is not None and key in descriptor:
                    self.account_for(descriptor.raw_get(key))

    def claims(self, facts: FileFacts) -> Iterator[Finding]:
        """A tagged file says so, and its structure is one that is checked."""
        yield from (self.finding(what) for what in check_claims(self.reader, facts.title))
        catalogue = self.reader.trailer["/Root"].get_object()
        assert isinstance(catalogue, DictionaryObject)
        self.account_for(catalogue.raw_get("/Metadata") if "/Metadata" in catalogue else None)
        structure = self.opened.structure
        self.elements = structure.numbers
        yield from self.fields(facts, structure)

    def fields(self, facts: FileFacts, structure: ReadStructure) -> Iterator[Finding]:
        """Exactly the fields that are wanted; without any, no element stands for one."""
        if facts.fields:
            self.form = read_form(self.reader, facts.navigates)
            self.accounted |= self.form.streams
        for what in check_form(self.form, facts.fields, structure):
            yield self.finding(what, kind="field")

    def contents(self, page: DictionaryObject) -> None:
        """The drawing of a page is known."""
        raw = page.raw_get("/Contents") if "/Contents" in page else None
        self.account_for(raw)
        direct = _resolved(raw)
        for each in list.__iter__(direct) if isinstance(direct, ArrayObject) else ():
            self.account_for(each)

    def drawing(self, number: int, page: DictionaryObject, facts: FileFacts) -> Iterator[Finding]:
        """Nothing in a page's drawing that hides, or that is not read back."""
        drawing = page.get_contents() if hasattr(page, "get_contents") else None
        data = _STRINGS.sub(b" ", drawing.get_data()) if drawing is not None else b""
        if facts.tagged:
            data = _SECTIONS.sub(b" ", data)
        for operator in sorted({match.decode() for match in _OPERATORS.findall(data)}):
            what = f"the page uses {_HIDING[operator]} ('{operator}')"
            yield self.finding(what, "what it shows cannot be checked", page=number)
        if _RENDER_MODE.search(data):
            yield self.finding("the page holds text that is drawn without ink", page=number)
        if any(float(value) != 100 for value in _SQUEEZED.findall(data)):
            yield self.finding("the page holds text that is squeezed", kind="font", page=number)

    def account_for(self, reference: Any) -> None:
        if isinstance(reference, IndirectObject):
            self.accounted.add(reference.idnum)

    def objects(self, facts: FileFacts) -> Iterator[Finding]:
        """Every object of the file, used or not."""
        links = {
            each.idnum
            for page in self.reader.pages
            for each in list.__iter__(page.get("/Annots", ArrayObject()))
            if isinstance(each, IndirectObject)
        }
        for number, each in self.every_object:
            if isinstance(each, StreamObject) and number not in self.accounted:
                yield self.finding("the file holds data that belongs to no page and no font")
            held = _held_in(each)
            for path, text in held.texts:
                is_led = path in ("/Title", "/P") and text in facts.texts
                # What a link says is held against the words that it lies on (navigation.py).
                is_led |= path == "/Contents" and facts.navigates and number in links
                if text.strip() and not is_led and not self.is_known(number, path):
                    yield self.finding(f"the file holds the text '{text[:80]}' ({path})")
            for action in held.actions:
                yield self.finding(f"the file can run something ({action})", kind="action")

    def is_known(self, number: int, path: str) -> bool:
        """True for the texts that every file has: its description, language and identifier."""
        info = self.reader.trailer.raw_get("/Info") if "/Info" in self.reader.trailer else None
        if isinstance(info, IndirectObject) and info.idnum == number:
            return path.count("/") == 1
        if number in self.elements and path in _SPOKEN:
            return True
        if number in self.form.texts and path in _OF_FIELDS:
            return True
        return path in ("/Lang", "/CharSet", "/CIDSystemInfo/Registry", "/CIDSystemInfo/Ordering")

    @cached_property
    def every_object(self) -> list[tuple[int, Any]]:
        """All objects by their numbers."""
        at = [
            (number, generation)
            for generation, numbers in self.reader.xref.items()
            for number in numbers
            if generation != 65535
        ]
        at += [(number, 0) for number in self.reader.xref_objStm]
        return [
            (each[0], self.reader.get_object(IndirectObject(*each, self.reader))) for each in at
        ]

    def dictionaries(self, kind: str) -> Iterator[DictionaryObject]:
        for _number, each in self.every_object:
            if isinstance(each, DictionaryObject) and each.get("/Type") == kind:
                yield each


def _other_content(made_from: str) -> tuple[str, str]:
    if not made_from.startswith("content:"):
        return "the file does not say what content it was made from", "make it again"
    return "the content has been changed since this file was made", "make it again"


def _resolved(value: Any) -> Any:
    return value.get_object() if isinstance(value, IndirectObject) else value


@dataclass(frozen=True, slots=True)
class _Held:
    """The texts in an object, each with the keys that lead to it, and what in it runs or leads
    out of the document. Other objects are not entered."""

    texts: list[tuple[str, str]]
    actions: list[str]


def _held_in(value: Any) -> _Held:
    held = _Held([], [])
    within = [("", value)]
    while within:
        path, each = within.pop()
        if isinstance(each, TextStringObject):
            held.texts.append((path, str(each)))
        elif isinstance(each, ByteStringObject):
            held.texts.append((path, each.decode("latin-1")))
        elif isinstance(each, DictionaryObject):
            if each.get("/S") in _ACTIONS:
                held.actions.append(str(each["/S"]))
            held.actions.extend(str(key) for key in each if key in _RUNS)
            within.extend((f"{path}{key}", inner) for key, inner in dict.items(each))
        elif isinstance(each, ArrayObject):
            within.extend((path, inner) for inner in list.__iter__(each))
    return held
