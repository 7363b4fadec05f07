"""A document to fill in has exactly the fields that its rooms need, and each lies on its room."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, zip_longest

from typeset.proofing.checks import Proof, few, in_mm
from typeset.proofing.expected import Part
from typeset.proofing.field_text import ExpectedField
from typeset.proofing.finding import Finding
from typeset.proofing.form_read import ReadField, ReadForm
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE, Word
from typeset.proofing.places import MM_PT, Box
from typeset.proofing.promises import Promise
from typeset.proofing.regions import question_regions
from typeset.proofing.structure_read import ReadStructure

_SLACK_PT = 1.0
_NARROWEST_MM = 40.0


def check_form(
    form: ReadForm, expected: Sequence[ExpectedField], structure: ReadStructure
) -> Iterator[str]:
    """What is wrong with the fields of a file, in words: each once, in order, rightly told."""
    yield from form.faults
    for field, wanted in zip_longest(form.fields, expected):
        if wanted is None:
            yield f"the field '{field.name}' belongs to nothing"
        elif field is None or field.name != wanted.name:
            yield f"where the field '{wanted.name}' should be there is {_named(field)}"
            break
        elif field.told != wanted.told:
            yield f"the field '{field.name}' is told as '{field.told[:80]}', not '{wanted.told}'"
        elif (field.ticks, field.several) != (wanted.ticks, wanted.several):
            yield f"the field '{field.name}' is of another kind than its room"
    led = [number for each in structure.elements if each.tag == "Form" for number in each.links]
    if led != [field.number for field in form.fields]:
        yield "a screen reader goes through the fields in another order than they lie"
    if any(len(each.links) != 1 or each.marks for each in structure.elements if each.tag == "Form"):
        yield "an element 'Form' of the structure does not stand for one field"


def _named(field: ReadField | None) -> str:
    return "none" if field is None else f"'{field.name}'"


def check_field_places(
    proof: Proof, expected: Sequence[ExpectedField], promises: Sequence[Promise]
) -> Iterator[Finding]:
    """Findings about where the fields lie."""
    if proof.document.form is not None:
        check = _Places(proof, proof.document.form.fields, promises)
        yield from few(check.apart())
        yield from few(check.over_rooms({each.name: each for each in expected}))


class _Places:
    def __init__(
        self, proof: Proof, fields: Sequence[ReadField], promises: Sequence[Promise]
    ) -> None:
        self.proof = proof
        self.fields = fields
        self.promises = {each.about: each for each in promises}
        pages, account = proof.document.pages, proof.account
        self.regions = {each.about: each for each in question_regions(account, pages)}
        # The rules and boxes of each question that no field has taken yet.
        self.blanks: dict[str, list[Word]] = {}
        for index, passage in enumerate(account.passages):
            if passage.part is Part.ROOM:
                words = (w for w in account.words_of(index) if w.text in (WRITING_RULE, OPEN_BOX))
                self.blanks.setdefault(passage.about, []).extend(words)

    def finding(self, field: ReadField, what: str, should: str = "") -> Finding:
        told = f"the field '{field.name}' {what}"
        return self.proof.finding(field.page, field.box, told, should, "space")

    def apart(self) -> Iterator[Finding]:
        """Within the page, over no words and over no other field."""
        for one, other in combinations(self.fields, 2):
            if one.page == other.page and one.box.overlaps(other.box):
                yield self.finding(one, f"lies over the field '{other.name}'")
        for each in self.fields:
            page = self.proof.document.pages[each.page - self.proof.document.pages[0].number]
            if not Box(0.0, 0.0, page.width_pt, page.height_pt).covers(each.box):
                yield self.finding(each, "lies outside the page")
            inside = each.box.shrunk(_SLACK_PT)
            covered = [w for w in page.words if w.is_text and w.box.overlaps(inside)]
            if covered:
                yield self.finding(each, f"lies over '{covered[0].text}'")

    def over_rooms(self, expected: dict[str, ExpectedField]) -> Iterator[Finding]:
        for each in self.fields:
            wanted = expected.get(each.name)
            if wanted is None:
                continue
            yield from self.room(each, wanted) if wanted.several else self.blank(each, wanted)

    def blank(self, field: ReadField, wanted: ExpectedField) -> Iterator[Finding]:
        """On one rule, or in one box, of its own question."""
        blanks = self.blanks.get(wanted.about, [])
        own = next((word for word in blanks if _lies_on(field, word)), None)
        if own is None:
            yield self.finding(field, f"does not lie on a room of {wanted.about}")
        else:
            blanks.remove(own)

    def room(self, field: ReadField, wanted: ExpectedField) -> Iterator[Finding]:
        """Within its question, and as high as the room for working is promised."""
        region, promise = self.regions.get(wanted.about), self.promises.get(wanted.about)
        if region is None or region.page.number != field.page or not region.box.covers(field.box):
            yield self.finding(field, f"does not lie on a room of {wanted.about}")
        elif promise is not None and field.box.height < promise.least_mm * MM_PT - _SLACK_PT:
            least = in_mm(promise.least_mm * MM_PT)
            yield self.finding(field, f"is {in_mm(field.box.height)} high", f"at least {least}")
        elif field.box.width < _NARROWEST_MM * MM_PT:
            least = in_mm(_NARROWEST_MM * MM_PT)
            yield self.finding(field, f"is {in_mm(field.box.width)} wide", f"at least {least}")


def _lies_on(field: ReadField, blank: Word) -> bool:
    if field.page != blank.page:
        return False
    own, box = field.box, blank.box
    edges = [own.left - box.left, own.right - box.right, own.bottom - box.bottom]
    if blank.text == OPEN_BOX:
        edges.append(own.top - box.top)
    return all(abs(edge) <= _SLACK_PT for edge in edges)
